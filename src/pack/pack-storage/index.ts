import { bandField, optionsFrom, type Solver, solver } from "../../solver/index.js"
import { LEAD_STORAGE, LITHIUM_STORAGE, STANDING_LOSSES } from "../sources.js"
import { cautions } from "./cautions.js"
import { DAY, standingCells, standingFactor, yearlyAgeing } from "./data.js"
import { solve } from "./kernel.js"
import type { PackStorage, PackStorageCaution, PackStorageInput, Si } from "./types.js"

export type { PackStorage, PackStorageInput } from "./types.js"

const factorOf = (si: Si, end: "low" | "high") => standingFactor(si.cells, si.storageTemperature, standingCells[si.cells][end].temperature)

/**
 * What is left in a pack that stood for weeks or months, and by when it has to be charged again.
 *
 * Formula: a range from the lower to the higher published figure, L = k_T·(d·min(1, t/24 h) + p·t), with d the share of a full charge
 * that goes in the first day (ordinary nickel), p that which goes evenly in a time, and k_T what the temperature makes of it:
 * twice for each 10 K, three times for 20 K of nickel, alkaline along its own three points. A circuit takes I_0·t/Q.
 * Charge left s = s_0 − L − I_0·t/Q, not under 0. Lithium ages by a·√(t/year), with a by temperature and charge.
 *
 * Valid for sound cells at a steady mean temperature, since makers draw the loss straight; hot days cost more than cool nights
 * save, so give the warmer figure where the place swings. The answer is the `startStateOfCharge` of `runtime` and `packSize`, and
 * `capacityShare` theirs.
 *
 * **Inputs**
 * - `cells`: kind of cells [lithium, lead-sealed, lead-flooded, nickel, nickel-low-loss or alkaline; default lithium]
 * - `capacity`: capacity of the pack [Q; 1 mAh to 10000 Ah]
 * - `duration`: time that it stands [t; 0 to 730 d]
 * - `startStateOfCharge`: state of charge at the start [s_0; 0 to 100 %; default 100 %]
 * - `storageTemperature`: temperature of the place [T; −20 to 60 °C; default 20 °C]
 * - `circuitCurrent`: current of the circuit [I_0; 0 to 1 A; default 0]
 * - `minStateOfCharge`: state of charge to charge again at [s_1; 0 to 100 %; default 20 %]
 *
 * **Results**
 *
 * `stateOfCharge`: state of charge left [s_l to s_h; as a fraction]; `selfDischarge`: self-discharge [L_l to L_h; as a
 * fraction]; `circuitShare`: taken by the circuit [L_c; as a fraction]; `topUpInterval`: charge or replace within
 * [t_u; s]; `capacityShare`: capacity left for good [h; as a fraction].
 *
 * **Symbols of the working**
 *
 * d_l: lost in the first day, at least; d_h: lost in the first day, at most; p_l: lost in a day after it, at least;
 * p_h: lost in a day after it, at most; k_l: what the temperature makes of the lower figure; k_h: what the temperature
 * makes of the higher figure; z: charge to lose; b: lost in a day after the first; t_z: time to lose it [s]; lead: 1
 * for lead; k_25: loss against 25 °C; a: loss of capacity in a year.
 *
 * **Sources**
 * - Battery University (Cadex) and others: BU-802b, What does elevated self-discharge do, and encyclopaedic tables of
 *   self-discharge, 2 to 3 % a month of lithium-ion, 5 % of polymer; the loss doubles with every 10 °C; discard a
 *   battery that loses 30 % in 24 h
 * - 12 V sealed lead-acid battery data sheets of 4, 5 and 28 Ah, self-discharge: 91, 82 and 64 % are left after 3, 6
 *   and 12 months at 25 °C; 80 and 60 % after 6 and 12 at 20 °C
 * - A maker's page on lead-acid discharge, and an encyclopaedic table of self-discharge, 4 % a week at 80 °F; 4 to 6 %
 *   a month
 * - User's manual of a nickel-metal hydride battery pack; BU-802b, 10 to 20 % in the first 24 h, then 10 to 15 % a
 *   month; three times as much at 40 as at 20 °C
 * - Makers' claims for nickel-metal hydride cells with low self-discharge, 70 to 85 % left after a year at 20 °C (not
 *   verified against the document)
 * - Answers on the self-discharge of alkaline cells, at most 2, 5 and 25 % a year at 70, 85 and 100 °F; 3 % a year on
 *   another page
 * - Tables of the recoverable capacity of lithium-ion after a year of storage, after Battery University (Cadex), full:
 *   94, 80 and 65 % at 0, 25 and 40 °C, 60 % after 3 months at 60 °C; 40 % charged: 98, 96, 85 and 75 %; by the square
 *   root of time
 * - Battery University (Cadex): BU-403, Charging lead acid, as quoted by a charging page: a topping charge every 6
 *   months, to stay above 2.05 V a cell
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { packStorage } from 'alula/pack'
 * const winter = packStorage({ cells: 'lead-sealed', capacity: '5 Ah', duration: '182.5 d', storageTemperature: '25 degC' })
 * winter.stateOfCharge.high // => 0.82
 * winter.topUpInterval / 86400 // => 182.5
 * ```
 */
export const packStorage: Solver<PackStorageInput, PackStorage, never, PackStorageCaution> = /* @__PURE__ */ solver<
  PackStorageInput,
  PackStorage,
  never,
  PackStorageCaution
>("packStorage", "What is left in a pack that stood", solve, () => ({
  input: {
    cells: {
      kind: "choice",
      label: "kind of cells",
      options: optionsFrom(standingCells, (key) => standingCells[key].label),
      default: "lithium",
    },
    capacity: { kind: "charge", symbol: "Q", label: "capacity of the pack", min: "1 mAh", max: "10000 Ah", typical: ["1 Ah", "20 Ah"] },
    duration: { kind: "time", symbol: "t", label: "time that it stands", min: 0, max: "730 d", typical: ["1 d", "365 d"], unit: "d" },
    startStateOfCharge: {
      kind: "ratio",
      symbol: "s_0",
      label: "state of charge at the start",
      min: 0,
      max: 1,
      typical: [0.3, 1],
      unit: "%",
      default: 1,
    },
    storageTemperature: {
      kind: "temperature",
      symbol: "T",
      label: "temperature of the place",
      min: -20,
      max: 60,
      typical: [0, 40],
      default: 20,
    },
    circuitCurrent: { kind: "current", symbol: "I_0", label: "current of the circuit", min: 0, max: 1, typical: [0, "200 uA"], default: 0 },
    minStateOfCharge: {
      kind: "ratio",
      symbol: "s_1",
      label: "state of charge to charge again at",
      min: 0,
      max: 1,
      typical: [0.1, 0.3],
      unit: "%",
      default: 0.2,
    },
  },
  output: {
    stateOfCharge: bandField("ratio", "state of charge left", {
      symbols: ["s_l", "s_h"],
      labels: ["state of charge by the higher loss", "state of charge by the lower loss"],
      unit: "%",
    }),
    selfDischarge: bandField("ratio", "self-discharge", {
      symbols: ["L_l", "L_h"],
      labels: ["lower published loss", "higher published loss"],
      unit: "%",
    }),
    circuitShare: { kind: "ratio", symbol: "L_c", label: "taken by the circuit", unit: "%" },
    topUpInterval: { kind: "time", symbol: "t_u", label: "charge or replace within", unit: "d" },
    capacityShare: { kind: "ratio", symbol: "h", label: "capacity left for good", unit: "%" },
  },
  example: {
    cells: "lithium",
    capacity: "5.2 Ah",
    duration: "180 d",
    startStateOfCharge: 0.6,
    storageTemperature: 20,
    circuitCurrent: "50 uA",
  },
  formulae: [
    { symbol: "d_l", kind: "ratio", meaning: "lost in the first day, at least", given: (si) => standingCells[si.cells].low.firstDay },
    { symbol: "d_h", kind: "ratio", meaning: "lost in the first day, at most", given: (si) => standingCells[si.cells].high.firstDay },
    { symbol: "p_l", kind: "ratio", meaning: "lost in a day after it, at least", given: (si) => standingCells[si.cells].low.rate * DAY },
    { symbol: "p_h", kind: "ratio", meaning: "lost in a day after it, at most", given: (si) => standingCells[si.cells].high.rate * DAY },
    {
      symbol: "k_l",
      kind: "number",
      meaning: "what the temperature makes of the lower figure",
      given: (si) => factorOf(si, "low"),
      source: STANDING_LOSSES,
    },
    {
      symbol: "k_h",
      kind: "number",
      meaning: "what the temperature makes of the higher figure",
      given: (si) => factorOf(si, "high"),
      source: STANDING_LOSSES,
    },
    { symbol: "L_l", meaning: "lower loss", is: "k_l * (d_l * min(1, t / (24 hour)) + p_l * t / (24 hour))" },
    { symbol: "L_h", meaning: "higher loss", is: "k_h * (d_h * min(1, t / (24 hour)) + p_h * t / (24 hour))" },
    { symbol: "L_c", meaning: "taken by the circuit", is: "I_0 * t / Q" },
    { symbol: "s_l", meaning: "charge left by the higher loss", is: "max(0, s_0 - L_h - L_c)" },
    { symbol: "s_h", meaning: "charge left by the lower loss", is: "max(0, s_0 - L_l - L_c)" },
    { symbol: "z", kind: "number", meaning: "charge to lose", is: "max(0, s_0 - s_1)" },
    { symbol: "b", kind: "number", meaning: "lost in a day after the first", is: "k_h * p_h + I_0 * (24 hour) / Q" },
    {
      symbol: "t_z",
      kind: "time",
      meaning: "time to lose it",
      is: "(24 hour) * min(z / (k_h * d_h + b), 1) + (24 hour) * max(0, z - k_h * d_h - b) / b",
    },
    {
      symbol: "lead",
      kind: "number",
      meaning: "1 for lead",
      given: (si) => (si.cells === "lead-sealed" || si.cells === "lead-flooded" ? 1 : 0),
    },
    { symbol: "k_25", kind: "number", meaning: "loss against 25 °C", given: (si) => standingFactor(si.cells, si.storageTemperature, 25) },
    {
      symbol: "t_u",
      meaning: "charge or replace within",
      is: "min(t_z, (4380 hour) / max(1, k_25))",
      when: "lead == 1",
    },
    { symbol: "t_u", meaning: "charge or replace within", is: "t_z", when: "lead == 0" },
    {
      symbol: "a",
      kind: "ratio",
      meaning: "loss of capacity in a year",
      given: (si) => yearlyAgeing(si.startStateOfCharge, si.storageTemperature),
      source: LITHIUM_STORAGE,
    },
    {
      symbol: "h",
      meaning: "capacity left",
      is: "max(0, 1 - a * sqrt(t / (8760 hour)))",
      when: 'equalText(cells, "lithium")',
      source: LITHIUM_STORAGE,
    },
  ],
  sources: [...new Set([...Object.values(standingCells).flatMap((kind) => kind.sources), LITHIUM_STORAGE, LEAD_STORAGE])],
  cautions,
}))
