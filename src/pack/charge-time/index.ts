import { type Caution, caution, type Issue, inconsistent, type Solver, solver } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { chargeRateLimit, temperatureLimitSource } from "../data.js"
import { packCautions, packFields, packResistanceSteps } from "../fields.js"
import { curveFaults, curveField } from "../open-circuit.js"
import {
  CELL_SHEETS,
  CHARGE_TIMES,
  LEAD_CHARGE_TIMES,
  LEAD_CHARGING,
  LITHIUM_SAFETY,
  NICKEL_SHEETS,
  PACK_SHEETS,
  TEMPERATURE_LIMITS,
} from "../sources.js"
import { chargeTolerance, highestChargeVoltage, nickelChargeFactor, solve } from "./kernel.js"
import {
  type ChargeTimeInput,
  changeOverByBisection,
  endByBisection,
  heatByQuadrature,
  storedByQuadrature,
  tailByQuadrature,
} from "./problem.js"
import type { ChargeTime, ChargeTimeCaution, ChargeTimeRefusal, Si } from "./types.js"

export type { ChargeTime } from "./types.js"

function check(si: Si): Issue[] {
  const faults = curveFaults(si.openCircuitCurve)
  const { chargeCurrent, terminationCurrent, cellChargeVoltage } = si
  if (terminationCurrent !== null && !(terminationCurrent < chargeCurrent))
    faults.push(
      inconsistent(["terminationCurrent"], "{terminationCurrent current}", "less than the charging current, {chargeCurrent current}", {
        terminationCurrent,
        chargeCurrent,
      }),
    )
  if (cellChargeVoltage !== null && si.chemistry === "nimh")
    faults.push(inconsistent(["cellChargeVoltage"], "a charge voltage", "none: nickel cells are charged by their current alone"))
  else if (cellChargeVoltage !== null && cellChargeVoltage > highestChargeVoltage(si))
    faults.push(
      inconsistent(["cellChargeVoltage"], "{cellChargeVoltage voltage}", "not far above the {full voltage} of this chemistry", {
        cellChargeVoltage,
        full: chemistries[si.chemistry].cellFullVoltage,
      }),
    )
  return faults
}

function rateFaults(si: Si): Caution<ChargeTimeCaution>[] {
  const { coldestCharge, lithiumIon } = chemistries[si.chemistry]
  const rate = si.chargeCurrent / ((si.cellCapacity * si.parallel) / 3600)
  const allowed = chargeRateLimit(si.chemistry, si.cellTemperature)
  const source = lithiumIon ? temperatureLimitSource : si.chemistry === "nimh" ? NICKEL_SHEETS : LEAD_CHARGING
  if (coldestCharge !== null && si.cellTemperature < coldestCharge)
    return [
      caution(
        "cold-charge",
        "warning",
        "Below {coldest temperature °C} cells of this kind must not be charged at the usual rate: they take up little, gas and can vent. Warm them first.",
        si.chemistry === "nimh" ? NICKEL_SHEETS : LEAD_CHARGE_TIMES,
        { coldest: coldestCharge },
      ),
    ]
  if (allowed === 0)
    return [
      caution(
        "too-hot-to-charge",
        "warning",
        "At {given.cellTemperature temperature °C} the strictest makers forbid charging, and none in the sun or under padding is safe: let the cells cool to {hottest temperature °C} or less, unless the datasheet of your own cell says more.",
        lithiumIon ? CELL_SHEETS : TEMPERATURE_LIMITS,
        { "given.cellTemperature": si.cellTemperature, hottest: si.chemistry === "lead" ? 50 : 45 },
      ),
    ]
  return rate > allowed
    ? [
        caution(
          "charge-rate",
          "warning",
          "{rate} times the capacity per hour is above the {allowed} that ordinary cells of this kind take at this temperature: they heat, and can vent. Only the datasheet of your own cell can allow more.",
          source,
          { rate, allowed },
        ),
      ]
    : []
}

function cautions(si: Si, out: ChargeTime): Caution<ChargeTimeCaution>[] {
  const stated = Math.max(si.cellChargeVoltage ?? 0, si.openCircuitCurve?.at(-1)?.voltage ?? 0) * si.series
  const found: Caution<ChargeTimeCaution>[] = [...packCautions({ ...si, cellCutOffVoltage: null }, stated), ...rateFaults(si)]
  const { cellFullVoltage: fullVoltage, lithiumIon } = chemistries[si.chemistry]
  const highest = fullVoltage + chargeTolerance(si.chemistry)
  if (si.cellChargeVoltage !== null && si.cellChargeVoltage > highest + 1e-9)
    found.push(
      lithiumIon
        ? caution(
            "over-charge",
            "warning",
            "More than {highest voltage} a cell over-charges it, which can set it on fire. Use a charger made for this chemistry and number of cells in series.",
            si.chemistry === "lfp" ? PACK_SHEETS : LITHIUM_SAFETY,
            { highest },
          )
        : caution(
            "over-charge",
            "warning",
            "More than {highest voltage} a cell makes a lead battery gas: hydrogen that a spark explodes, heat, and acid mist. Use a charger made for sealed lead, in the open air.",
            LEAD_CHARGING,
            { highest },
          ),
    )
  if (out.likelyDuration)
    found.push(
      caution(
        "charge-time-is-minimum",
        "note",
        "One resistance makes the last part too short: by datasheets expect {likelyDuration.low time} to {likelyDuration.high time}. Charge off the body, watched, on something that does not burn.",
        CHARGE_TIMES,
        { "likelyDuration.low": out.likelyDuration.low, "likelyDuration.high": out.likelyDuration.high },
      ),
    )
  if (si.chemistry === "lead")
    found.push(
      caution(
        "lead-tail",
        "caution",
        "{minDuration time} leaves out the last part, which no stronger charger shortens: datasheets print 16 h from empty and 10 h from half. Charge in the open air, away from sparks.",
        LEAD_CHARGE_TIMES,
        { minDuration: out.minDuration },
      ),
    )
  const rate = si.chargeCurrent / ((si.cellCapacity * si.parallel) / 3600)
  if (si.chemistry === "nimh" && rate < 0.1)
    found.push(
      caution(
        "slow-nickel",
        "note",
        "Below a tenth of the capacity per hour nickel cells take up less still: {minDuration time} is at least, and they may never fill.",
        NICKEL_SHEETS,
        { minDuration: out.minDuration },
      ),
    )
  return found
}

const { cellCutOffVoltage: _, ...chargeFields } = packFields

/**
 * How long a charger takes that gives a constant current, then holds a constant voltage.
 *
 * Formula: constant current I until E + I·R = V_ch, t₁ = Q·(s_c − s₀)/I; then the voltage V_ch is held and the current
 * (V_ch − E)/R falls until it is I_e, t₂ = Q·R·∫ds/(V_ch − E). Q = n_p·Q_c, E = n_s·U, R = r_c·k_T·n_s/n_p + R_l, V_ch
 * n_s times the cell's charge voltage, I_e the stopping current, s₀ the charge at the start. Nickel-metal hydride takes
 * a constant current only, for 1.6 times charge over current at 0.1 of the capacity per hour and 1.2 times at 1 (in
 * between by the logarithm of the rate).
 *
 * Valid as a lower limit: polarisation makes the last part longer. Datasheets of lithium cells print 20 min (from empty) to
 * 2 h more than charge over current, given as the likely range. Lead-acid is calculated the same way, to 2.42 V a cell,
 * and takes far longer (a caution says how long).
 *
 * **Inputs**
 * - `series`: cells in series [n_s; whole 1 to 200]
 * - `parallel`: cells in parallel [n_p; whole 1 to 200]
 * - `chemistry`: cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc]
 * - `cellCapacity`: capacity of one cell [Q_c; 1 mAh to 1000 Ah]
 * - `cellResistance`: resistance of one cell [r_c; 0 to 100 Ω]
 * - `interconnectResistance`: interconnect resistance (links and leads) [R_l; 0 to 100 Ω; default 0]
 * - `cellTemperature`: cell temperature [T; −40 to 80 °C; default 25 °C]
 * - `chargeCurrent`: charging current [I; 1 mA to 1000 A]
 * - `startStateOfCharge`: state of charge at the start [s_0; 0 to 100 %; default 0]
 * - `cellChargeVoltage`: charge voltage of a cell [V_c; 10 mV to 20 V; optional]
 * - `terminationCurrent`: termination current [I_e; 0.1 mA to 1000 A; optional]
 * - `openCircuitCurve`: open-circuit curve of a cell [list of 2 to 2000; optional]
 *   - `stateOfCharge`: state of charge [s_u; 0 to 1]
 *   - `voltage`: open-circuit voltage [U_u; 10 mV to 20 V]
 *
 * **Results**
 *
 * `minDuration`: minimum charging time [t; s]; `constantCurrentDuration`: time at constant current [t_1; s];
 * `constantVoltageDuration`: time at constant voltage [t_2; s]; `changeOverStateOfCharge`: state of charge at the
 * change-over [s_c; as a fraction]; `endStateOfCharge`: state of charge at the end [s_e; as a fraction]; `energy`:
 * energy put in [W; J]; `heat`: heat in the resistance [W_h; J]; `simpleDuration`: simple duration: charge over
 * current [t_s; s]; `durationRatio`: minimum time over charge over current [k_o; as a fraction]; `likelyDuration`:
 * charging time to expect by datasheets [group].
 *
 * **Symbols of the working**
 *
 * Q: capacity of the pack [C]; k_T: resistance at this temperature against 25 °C; R: resistance of the pack [Ω];
 * nickel: 1 for nickel-metal hydride; lithium: 1 for lithium; s_b: the same by bisection of E + I·R against the charge
 * voltage; k_n: charge put in over charge gained; t_q: the same by quadrature of Q·R/(V − E) [s]; s_f: charge at which
 * the current has fallen to the stopping current, by bisection; W_q: heat by quadrature of current squared [J]; W_s:
 * energy stored, by quadrature of the open-circuit voltage [J]; k_w: charge put in for each that is kept.
 *
 * **Sources**
 * - Lithium cell datasheets (21700 of 4.0 and 5.0 Ah, 18650 of 2.6 Ah, 26650 LFP, polymer of 1.3 and 6 Ah), charging
 *   times at 0.2 to 1.5 times the capacity per hour: 20 min to 2 h over charge over current
 * - Nickel metal hydride handbook, individual data sheets, 2005, standard and rapid charge, 0 to 45 and 0 to 40 °C
 * - 12 V 5 Ah AGM battery data sheet, charging table: 16 h from empty, 10 h from half
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-cold`, `not-rechargeable`, `insufficient-voltage` or `already-full`
 * @example
 * ```ts
 * import { chargeTime, genericCells } from 'alula/pack'
 * const { cellCapacity, cellResistance } = genericCells['18650-standard']
 * const night = chargeTime({ series: 3, parallel: 2, cellCapacity, cellResistance, chargeCurrent: '2 A' })
 * night.minDuration / 3600 // => 2.696
 * night.likelyDuration?.high // => 16560
 * ```
 */
export const chargeTime: Solver<ChargeTimeInput, ChargeTime, ChargeTimeRefusal, ChargeTimeCaution> = /* @__PURE__ */ solver<
  ChargeTimeInput,
  ChargeTime,
  ChargeTimeRefusal,
  ChargeTimeCaution
>("chargeTime", "How long charging takes", solve, () => ({
  input: {
    ...chargeFields,
    chargeCurrent: { kind: "current", symbol: "I", label: "charging current", min: "1 mA", max: 1000, typical: [0.5, 6] },
    startStateOfCharge: {
      kind: "ratio",
      symbol: "s_0",
      label: "state of charge at the start",
      min: 0,
      max: 1,
      typical: [0, 0.6],
      unit: "%",
      default: 0,
    },
    cellChargeVoltage: {
      kind: "voltage",
      symbol: "V_c",
      label: "charge voltage of a cell",
      min: "10 mV",
      max: 20,
      typical: [3.6, 4.2],
      default: null,
    },
    terminationCurrent: {
      kind: "current",
      symbol: "I_e",
      label: "termination current",
      min: "0.1 mA",
      max: 1000,
      typical: [0.05, 0.4],
      default: null,
    },
    openCircuitCurve: curveField,
  },
  output: {
    minDuration: { kind: "time", symbol: "t", label: "minimum charging time" },
    constantCurrentDuration: { kind: "time", symbol: "t_1", label: "time at constant current" },
    constantVoltageDuration: { kind: "time", symbol: "t_2", label: "time at constant voltage" },
    changeOverStateOfCharge: { kind: "ratio", symbol: "s_c", label: "state of charge at the change-over", unit: "%" },
    endStateOfCharge: { kind: "ratio", symbol: "s_e", label: "state of charge at the end", unit: "%" },
    energy: { kind: "energy", symbol: "W", label: "energy put in", unit: "Wh" },
    heat: { kind: "energy", symbol: "W_h", label: "heat in the resistance", unit: "Wh" },
    simpleDuration: { kind: "time", symbol: "t_s", label: "simple duration: charge over current" },
    durationRatio: { kind: "ratio", symbol: "k_o", label: "minimum time over charge over current" },
    likelyDuration: {
      kind: "group",
      label: "charging time to expect by datasheets",
      fields: {
        low: { kind: "time", symbol: "t_l", label: "minimum to expect by datasheets" },
        high: { kind: "time", symbol: "t_m", label: "maximum to expect by datasheets" },
      },
    },
  },
  example: { series: 3, parallel: 2, cellCapacity: "2.6 Ah", cellResistance: "80 mohm", chargeCurrent: "2 A", startStateOfCharge: 0.1 },
  formulae: [
    { symbol: "Q", kind: "charge", meaning: "capacity of the pack", is: "Q_c * n_p" },
    ...packResistanceSteps,
    { symbol: "nickel", kind: "number", meaning: "1 for nickel-metal hydride", given: (si) => (si.chemistry === "nimh" ? 1 : 0) },
    { symbol: "lithium", kind: "number", meaning: "1 for lithium", given: (si) => (chemistries[si.chemistry].lithiumIon ? 1 : 0) },
    { symbol: "t_s", meaning: "charge over current", is: "Q * (1 - s_0) / I" },
    { solved: "s_c", meaning: "charge at the change-over" },
    {
      symbol: "s_b",
      kind: "ratio",
      meaning: "the same by bisection of E + I·R against the charge voltage",
      given: (si) => changeOverByBisection(si),
    },
    { left: "s_c", right: "s_b", meaning: "change-over where E + I·R reaches the charge voltage", within: 1e-8, when: "nickel == 0" },
    { left: "s_c", right: "1", meaning: "no change-over: charged at constant current", when: "nickel == 1" },
    { symbol: "t_1", meaning: "time at constant current", is: "Q * (s_c - s_0) / I", when: "nickel == 0" },
    {
      symbol: "k_n",
      kind: "number",
      meaning: "charge put in over charge gained",
      given: (si) => nickelChargeFactor(si.chargeCurrent / ((si.cellCapacity * si.parallel) / 3600)),
      source: NICKEL_SHEETS,
    },
    { symbol: "t_1", meaning: "time at constant current", is: "k_n * t_s", when: "nickel == 1" },
    { solved: "s_e", meaning: "charge at the end" },
    { solved: "t_2", meaning: "time at constant voltage" },
    { symbol: "t_q", kind: "time", meaning: "the same by quadrature of Q·R/(V − E)", given: (si, out) => tailByQuadrature(si, out) },
    { left: "t_2", right: "t_q", meaning: "time at constant voltage against quadrature", within: 1e-7 },
    {
      symbol: "s_f",
      kind: "ratio",
      meaning: "charge at which the current has fallen to the stopping current, by bisection",
      given: (si, out) => endByBisection(si, out),
    },
    { left: "s_e", right: "s_f", meaning: "it stops at the stopping current", within: 1e-8 },
    { symbol: "t", meaning: "time", is: "t_1 + t_2" },
    { symbol: "k_o", meaning: "time against charge over current", is: "t / t_s" },
    { solved: "W_h", meaning: "heat in the resistance" },
    { symbol: "W_q", kind: "energy", meaning: "heat by quadrature of current squared", given: (si, out) => heatByQuadrature(si, out) },
    { left: "W_h + 1e-9 J", right: "W_q + 1e-9 J", meaning: "heat against quadrature", within: 1e-7 },
    {
      symbol: "W_s",
      kind: "energy",
      meaning: "energy stored, by quadrature of the open-circuit voltage",
      given: (si, out) => storedByQuadrature(si, out),
    },
    {
      symbol: "k_w",
      kind: "number",
      meaning: "charge put in for each that is kept",
      given: (si, out) => (si.chemistry === "nimh" ? out.durationRatio : 1),
    },
    { symbol: "W", meaning: "energy put in", is: "W_s * k_w + W_h" },
    {
      symbol: "t_l",
      meaning: "to expect, at least",
      is: "max(t, t_s + 20 minutes * (1 - s_0))",
      when: "lithium == 1",
      source: CHARGE_TIMES,
    },
    { symbol: "t_m", meaning: "to expect, at most", is: "max(t, t_s + 2 hours)", when: "lithium == 1", source: CHARGE_TIMES },
  ],
  sources: [CHARGE_TIMES, NICKEL_SHEETS, LEAD_CHARGE_TIMES],
  check,
  cautions,
}))
