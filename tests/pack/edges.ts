import {
  airTravel,
  cellPack,
  chargeTime,
  packSize,
  packUnderLoad,
  parallelSharing,
  peukert,
  powerBank,
  runtime,
} from "../../src/pack/index.js"
import type { CautionRow, Change, Edges } from "../helpers/edges.js"
import { numbers } from "./edge-numbers.js"

const nmcCell = {
  name: "A",
  chemistry: "nmc",
  cellCapacity: 9360,
  cellResistance: 0.08,
  cellMass: 0.045,
  cellMaxCurrent: 7.8,
  cellPrice: 4,
}
const cell = (more: object): Change => ({ cells: [{ ...nmcCell, ...more }] })
const lead = { ...nmcCell, chemistry: "lead", cellMaxCurrent: 30, cellResistance: 0.01, cellCapacity: 1e5 }
const two = [12, 12].map((openCircuitVoltage) => ({ openCircuitVoltage, resistance: 0.1, capacity: 9000 }))
const strings = (second: object, more: object = {}) => ({
  current: 0,
  voltageSpan: 2.7,
  strings: [two[0], { ...two[1], ...second }],
  ...more,
})

/** Rows of what goes with any pack, for each solver that builds one; `set` puts cell values into the solver's input. */
export function packRows(solver: unknown, set: (more: object) => object, extra: object = {}): CautionRow[] {
  const row = (code: string, shown: object, notShown: object): CautionRow => ({
    code,
    severity: "warning",
    solver,
    shown: { ...extra, ...shown },
    notShown: { ...extra, ...notShown },
  })
  return [
    row("lithium-battery", set({ chemistry: "nmc" }), set({ chemistry: "nimh" })),
    row("nickel-battery", set({ chemistry: "nimh" }), set({ chemistry: "nmc" })),
    row("lead-battery", set({ chemistry: "lead" }), set({ chemistry: "nmc" })),
    row("cold-charge", { cellTemperature: -0.0005 }, { cellTemperature: 0 }),
    row("hot-cells", { cellTemperature: 60.1 }, { cellTemperature: 60 }),
    row("too-cold-to-use", { cellTemperature: -20.1 }, { cellTemperature: -20 }),
  ]
}
export const plain = (more: object) => more
/** Below freezing lithium is refused by chargeTime; the other kinds are below. */
const charged = packRows(chargeTime, plain).filter((r) => !["cold-charge", "too-cold-to-use"].includes(r.code))
// where makers forbid use the catalogue's cells give nothing, and packSize refuses
const sized = packRows(packSize, cell, { minVoltage: 5, peakCurrent: 1, energy: 36000 }).filter(
  (r) => !["hot-cells", "too-cold-to-use"].includes(r.code),
)

/** Where each caution, refusal and fault of the module begins, and what its numbers are. */
export const edges: Edges = {
  cautions: [
    ...packRows(cellPack, plain),
    ...packRows(packUnderLoad, plain, { power: 1 }),
    ...packRows(runtime, plain, { pattern: [{ power: 1 }] }),
    ...charged,
    ...sized,
    ...(
      [
        [cellPack, (more: object) => ({ ...more })],
        [packUnderLoad, (more: object) => ({ power: 0.1, ...more })],
        [runtime, (more: object) => ({ pattern: [{ power: 0.1 }], ...more })],
        [packSize, (more: object) => ({ minVoltage: 5, peakCurrent: 0.1, energy: 3600, ...cell(more) })],
      ] as const
    ).map(
      ([solver, set]): CautionRow => ({
        code: "alkaline-battery",
        severity: "warning",
        solver,
        shown: set({ chemistry: "alkaline" }),
        notShown: set({ chemistry: "nmc" }),
      }),
    ),
    {
      code: "too-cold-to-use",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellTemperature: -20.1 },
      notShown: { chemistry: "lead", cellTemperature: -20 },
    },
    // eight cells in series, 33.6 V full, are lighter than two rows of seven; 200 kJ want more than one row of seven gives
    {
      code: "touch-voltage",
      severity: "warning",
      solver: packSize,
      shown: { ...cell({}), minVoltage: 18.6, maxVoltage: 33.65, peakCurrent: 1, energy: 2e5 },
      notShown: { ...cell({}), minVoltage: 18.6, maxVoltage: 33.55, peakCurrent: 1, energy: 2e5 },
    },
    // 8 A of a cell of 8 Ah
    {
      code: "nickel-rate",
      severity: "warning",
      solver: packSize,
      shown: cell({ chemistry: "nimh", cellMaxCurrent: 30, cellResistance: 0.001, cellCapacity: 3600 * 7.97 }),
      notShown: cell({ chemistry: "nimh", cellMaxCurrent: 30, cellResistance: 0.001, cellCapacity: 3600 * 8.03 }),
    },
    // 4.2 V a cell: 33.6 V and 29.4 V; 30 V are 4.286 V for seven of them
    { code: "touch-voltage", severity: "warning", solver: cellPack, shown: { series: 8 }, notShown: { series: 7 } },
    {
      code: "touch-voltage",
      severity: "warning",
      solver: cellPack,
      shown: { series: 7, cellFullVoltage: 4.29 },
      notShown: { series: 7, cellFullVoltage: 4.28 },
    },
    // what is stated counts where it is more than the chemistry's
    {
      code: "touch-voltage",
      severity: "warning",
      solver: packUnderLoad,
      shown: { openCircuitVoltage: 30.1 },
      notShown: { openCircuitVoltage: 30 },
    },
    ...[runtime, chargeTime].map((solver) => {
      const curve = (voltage: number) => [3, voltage].map((u, stateOfCharge) => ({ stateOfCharge, voltage: u }))
      const seven = solver === runtime ? { series: 7, pattern: [{ power: 1 }] } : { series: 7 }
      const row: CautionRow = {
        code: "touch-voltage",
        severity: "warning",
        solver,
        shown: { ...seven, openCircuitCurve: curve(4.29) },
        notShown: { ...seven, openCircuitCurve: curve(4.28) },
      }
      return row
    }),
    {
      code: "touch-voltage",
      severity: "warning",
      solver: chargeTime,
      shown: { series: 7, cellChargeVoltage: 4.29 },
      notShown: { series: 7, cellChargeVoltage: 4.28 },
    },
    { code: "touch-voltage", severity: "warning", solver: packUnderLoad, shown: { series: 8 }, notShown: { series: 7 } },
    { code: "touch-voltage", severity: "warning", solver: runtime, shown: { series: 8 }, notShown: { series: 7 } },
    { code: "touch-voltage", severity: "warning", solver: chargeTime, shown: { series: 8 }, notShown: { series: 7 } },
    {
      code: "touch-voltage",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 30.1 }),
      notShown: strings({ openCircuitVoltage: 30 }),
    },
    // of nickel, 65 °C; of lead, 50 °C
    {
      code: "hot-cells",
      severity: "warning",
      solver: cellPack,
      shown: { chemistry: "nimh", cellTemperature: 65.1 },
      notShown: { chemistry: "nimh", cellTemperature: 65 },
    },
    {
      code: "hot-cells",
      severity: "warning",
      solver: cellPack,
      shown: { chemistry: "lead", cellTemperature: 50.1 },
      notShown: { chemistry: "lead", cellTemperature: 50 },
    },
    {
      code: "deep-discharge",
      severity: "warning",
      solver: cellPack,
      shown: { cellCutOffVoltage: 2.49 },
      notShown: { cellCutOffVoltage: 2.5 },
    },
    {
      code: "deep-discharge",
      severity: "warning",
      solver: packUnderLoad,
      shown: { cellCutOffVoltage: 2.49 },
      notShown: { cellCutOffVoltage: 2.5 },
    },
    {
      code: "deep-discharge",
      severity: "warning",
      solver: runtime,
      shown: { cellCutOffVoltage: 2.49 },
      notShown: { cellCutOffVoltage: 2.5 },
    },
    {
      code: "deep-discharge",
      severity: "warning",
      solver: packSize,
      shown: cell({ cellCutOffVoltage: 2.49 }),
      notShown: cell({ cellCutOffVoltage: 2.5 }),
    },
    { code: "unequal-strings", severity: "warning", solver: cellPack, shown: { parallel: 2 }, notShown: { parallel: 1 } },
    // 2·(18720 C − g) is 5 % of 3·g at 17414 C
    {
      code: "weak-group",
      severity: "warning",
      solver: cellPack,
      shown: { groupCapacities: [18720, 18720, 17400] },
      notShown: { groupCapacities: [18720, 18720, 17430] },
    },
    {
      code: "limit-by-temperature",
      severity: "caution",
      solver: cellPack,
      shown: { cellTemperature: 45 },
      notShown: { cellTemperature: 44.9 },
    },
    {
      code: "limit-by-temperature",
      severity: "caution",
      solver: cellPack,
      shown: { cellTemperature: 5 },
      notShown: { cellTemperature: 5.04 },
    },
    {
      code: "charge-limit-by-temperature",
      severity: "warning",
      solver: cellPack,
      shown: { cellTemperature: 15 },
      notShown: { cellTemperature: 15.1 },
    },
    {
      code: "charge-limit-by-temperature",
      severity: "warning",
      solver: cellPack,
      shown: { cellTemperature: 45.1 },
      notShown: { cellTemperature: 45 },
    },
    // 10.8 V: 100 Wh are 9.259 Ah, 4.63 Ah a cell
    { code: "air-travel", severity: "note", solver: cellPack, shown: { cellCapacity: 16700 }, notShown: { cellCapacity: 16640 } },
    // 7.5 V left of 11.1516 V in 0.12 ohm are 30.43 A
    {
      code: "below-cut-off",
      severity: "warning",
      solver: packUnderLoad,
      shown: { power: null, current: 30.6 },
      notShown: { power: null, current: 30.3 },
    },
    // two cells of 7.8 A; half of 11.15 V²/(4·0.12 ohm)
    {
      code: "over-current",
      severity: "warning",
      solver: packUnderLoad,
      shown: { power: null, current: 15.65 },
      notShown: { power: null, current: 15.55 },
    },
    {
      code: "over-current",
      severity: "warning",
      solver: packUnderLoad,
      shown: { power: null, current: 2.61, cellTemperature: 0 },
      notShown: { power: null, current: 2.59, cellTemperature: 0 },
    },
    { code: "near-collapse", severity: "caution", solver: packUnderLoad, shown: { power: 130 }, notShown: { power: 129 } },
    // 5.2 Ah: a tenth per hour is 0.52 A, once per hour 5.2 A
    ...[packUnderLoad, runtime].flatMap((solver): CautionRow[] =>
      (["lead", "nimh"] as const).map((chemistry) => {
        const at = (current: number) => ({
          chemistry,
          cellResistance: 0.001,
          ...(solver === runtime ? { pattern: [{ current }] } : { power: null, current }),
        })
        // nine tenths: by one current, of lead at 0.10625 of it per hour
        const limit = chemistry === "nimh" ? 5.2 : solver === runtime ? 0.10625 * 5.2 : 0.52
        return {
          code: chemistry === "lead" ? "lead-rate" : "nickel-rate",
          severity: "warning",
          solver,
          shown: at(1.004 * limit),
          notShown: at(0.996 * limit),
        }
      }),
    ),
    // 8 A are 0.10625 of 75.29 Ah
    {
      code: "lead-rate",
      severity: "warning",
      solver: packSize,
      shown: { cells: [{ ...lead, cellCapacity: 3600 * 75.1 }] },
      notShown: { cells: [{ ...lead, cellCapacity: 3600 * 75.5 }] },
    },
    { code: "optimistic", severity: "note", solver: runtime, shown: {}, notShown: null },
    // 2 A of two cells, the current being constant
    {
      code: "over-current",
      severity: "warning",
      solver: runtime,
      shown: { pattern: [{ current: 4 }], cellMaxCurrent: 1.99 },
      notShown: { pattern: [{ current: 4 }], cellMaxCurrent: 2.01 },
    },
    // 20 W in 0.75 ohm collapse at 2·√15 = 7.746 V, with half of that left: 1.291 V a cell
    {
      code: "collapse",
      severity: "caution",
      solver: runtime,
      shown: { cellResistance: 0.5, cellCutOffVoltage: 1.285, pattern: [{ power: 20 }] },
      notShown: { cellResistance: 0.5, cellCutOffVoltage: 1.297, pattern: [{ power: 20 }] },
    },
    { code: "cold", severity: "caution", solver: runtime, shown: { cellTemperature: -0.0005 }, notShown: { cellTemperature: 0 } },
    {
      code: "alkaline-rate",
      severity: "caution",
      solver: runtime,
      shown: { chemistry: "alkaline", pattern: [{ power: 0.1 }] },
      notShown: { chemistry: "nmc", pattern: [{ power: 0.1 }] },
    },
    {
      code: "cold-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellTemperature: -10.1 },
      notShown: { chemistry: "lead", cellTemperature: -10 },
    },
    {
      code: "cold-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "nimh", cellTemperature: -0.0005 },
      notShown: { chemistry: "nimh", cellTemperature: 0 },
    },
    {
      code: "too-hot-to-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { cellTemperature: 45.1 },
      notShown: { cellTemperature: 45 },
    },
    {
      code: "too-hot-to-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellTemperature: 50.1 },
      notShown: { chemistry: "lead", cellTemperature: 50 },
    },
    // 5.2 Ah: a half, and three tenths, per hour
    { code: "charge-rate", severity: "warning", solver: chargeTime, shown: { chargeCurrent: 2.61 }, notShown: { chargeCurrent: 2.59 } },
    {
      code: "charge-rate",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", chargeCurrent: 1.565 },
      notShown: { chemistry: "lead", chargeCurrent: 1.555 },
    },
    {
      code: "charge-rate",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "nimh", chargeCurrent: 5.21 },
      notShown: { chemistry: "nimh", chargeCurrent: 5.19 },
    },
    {
      code: "over-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { cellChargeVoltage: 4.21 },
      notShown: { cellChargeVoltage: 4.2 },
    },
    {
      code: "over-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellChargeVoltage: 2.455 },
      notShown: { chemistry: "lead", cellChargeVoltage: 2.45 },
    },
    // 30 mV/K for six cells: at 40 °C 2.375 V; none less is asked for up to 35 °C; in the cold 2.55 V at 5 °C
    {
      code: "over-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellTemperature: 40, cellChargeVoltage: 2.38 },
      notShown: { chemistry: "lead", cellTemperature: 40, cellChargeVoltage: 2.374 },
    },
    {
      code: "over-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellTemperature: 35.001, cellChargeVoltage: 2.449 },
      notShown: { chemistry: "lead", cellTemperature: 35, cellChargeVoltage: 2.449 },
    },
    {
      code: "over-charge",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "lead", cellTemperature: 5, cellChargeVoltage: 2.552 },
      notShown: { chemistry: "lead", cellTemperature: 5, cellChargeVoltage: 2.548 },
    },
    // 5.2 Ah: up to three tenths, 1.56 A
    {
      code: "nickel-timer",
      severity: "caution",
      solver: chargeTime,
      shown: { chemistry: "nimh", chargeCurrent: 1.559 },
      notShown: { chemistry: "nimh", chargeCurrent: 1.561 },
    },
    {
      code: "nickel-end",
      severity: "warning",
      solver: chargeTime,
      shown: { chemistry: "nimh", chargeCurrent: 1.561 },
      notShown: { chemistry: "nimh", chargeCurrent: 1.559 },
    },
    {
      code: "charge-time-is-minimum",
      severity: "note",
      solver: chargeTime,
      shown: { chemistry: "nmc" },
      notShown: { chemistry: "lead" },
    },
    { code: "lead-tail", severity: "caution", solver: chargeTime, shown: { chemistry: "lead" }, notShown: { chemistry: "nmc" } },
    {
      code: "slow-nickel",
      severity: "note",
      solver: chargeTime,
      shown: { chemistry: "nimh", chargeCurrent: 0.518 },
      notShown: { chemistry: "nimh", chargeCurrent: 0.522 },
    },
    {
      code: "battery-fire",
      severity: "warning",
      solver: parallelSharing,
      shown: { strings: two },
      notShown: { strings: two.slice(0, 1) },
    },
    {
      code: "unequal-charge",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 12.051 }),
      notShown: strings({ openCircuitVoltage: 12.049 }),
    },
    // 6 A over two like strings; 0.4 V over two of 0.1 ohm are 2 A
    {
      code: "over-current",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ maxCurrent: 2.99 }, { current: 6 }),
      notShown: strings({ maxCurrent: 3.01 }, { current: 6 }),
    },
    {
      code: "over-charge",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 11.6, maxChargeCurrent: 1.99 }),
      notShown: strings({ openCircuitVoltage: 11.6, maxChargeCurrent: 2.01 }),
    },
    // at 10 °C two fifths of the rated charge current, at 0 °C a sixth of the discharge current
    {
      code: "over-charge",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 11.6, maxChargeCurrent: 4.98 }, { cellTemperature: 10 }),
      notShown: strings({ openCircuitVoltage: 11.6, maxChargeCurrent: 5.02 }, { cellTemperature: 10 }),
    },
    {
      code: "over-current",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ maxCurrent: 17.95 }, { current: 6, cellTemperature: 0 }),
      notShown: strings({ maxCurrent: 18.05 }, { current: 6, cellTemperature: 0 }),
    },
    {
      code: "cold-charge",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 11.6 }, { cellTemperature: -0.0005 }),
      notShown: strings({ openCircuitVoltage: 11.6 }, { cellTemperature: 0 }),
    },
    {
      code: "too-hot-to-charge",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 11.6 }, { cellTemperature: 45.1 }),
      notShown: strings({ openCircuitVoltage: 11.6 }, { cellTemperature: 45 }),
    },
    {
      code: "too-hot-to-charge",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 11.95 }, { cellTemperature: 50.1, chemistry: "lead" }),
      notShown: strings({ openCircuitVoltage: 12 }, { cellTemperature: 50.1, chemistry: "lead" }),
    },
    {
      code: "not-rechargeable",
      severity: "warning",
      solver: parallelSharing,
      shown: strings({ openCircuitVoltage: 11.95 }, { chemistry: "alkaline" }),
      notShown: strings({ openCircuitVoltage: 12 }, { chemistry: "alkaline" }),
    },
    {
      code: "unequal-resistance",
      severity: "caution",
      solver: parallelSharing,
      shown: strings({ resistance: 0.1205 }),
      notShown: strings({ resistance: 0.1195 }),
    },
    {
      code: "unequal-resistance",
      severity: "caution",
      solver: parallelSharing,
      shown: strings({ resistance: 0.083 }),
      notShown: strings({ resistance: 0.0837 }),
    },
    { code: "span-taken", severity: "note", solver: parallelSharing, shown: { voltageSpan: null }, notShown: { voltageSpan: 2.7 } },
    // 6 A of 5.1 Ah
    { code: "beyond-empty", severity: "caution", solver: parallelSharing, shown: { laterTime: 3065 }, notShown: { laterTime: 3055 } },
    {
      code: "lead-only",
      severity: "note",
      solver: peukert,
      shown: { exponent: 1.051, secondCapacity: null, secondDuration: null },
      notShown: { exponent: 1.049, secondCapacity: null, secondDuration: null },
    },
    { code: "below-rated", severity: "caution", solver: peukert, shown: { current: 1.99 }, notShown: { current: 2.005 } },
    { code: "exponent-not-constant", severity: "caution", solver: peukert, shown: { current: 40.1 }, notShown: { current: 39.9 } },
    // 0.1 A, and 0.8 of 3 A, at 5 V
    { code: "switches-off", severity: "caution", solver: powerBank, shown: { power: 0.498 }, notShown: { power: 0.502 } },
    { code: "near-port-limit", severity: "caution", solver: powerBank, shown: { power: 12.05 }, notShown: { power: 11.95 } },
    { code: "boost-peaks", severity: "caution", solver: powerBank, shown: { loadVoltage: 12 }, notShown: { loadVoltage: null } },
    { code: "touch-voltage", severity: "warning", solver: powerBank, shown: { terminalVoltage: 30.1 }, notShown: { terminalVoltage: 30 } },
    { code: "touch-voltage", severity: "warning", solver: powerBank, shown: { loadVoltage: 30.1 }, notShown: { loadVoltage: 30 } },
    { code: "lithium-battery", severity: "warning", solver: powerBank, shown: {}, notShown: null },
    { code: "rules-change", severity: "warning", solver: airTravel, shown: {}, notShown: null },
    { code: "battery-fire", severity: "warning", solver: airTravel, shown: { type: "lithium-ion" }, notShown: { type: "lead" } },
    { code: "home-made", severity: "warning", solver: airTravel, shown: { type: "lithium-ion" }, notShown: { type: "dry" } },
    {
      code: "medical-only",
      severity: "warning",
      solver: airTravel,
      shown: { type: "lithium-metal", lithiumMass: 2.01e-3 },
      notShown: { type: "lithium-metal", lithiumMass: 2e-3 },
    },
    {
      code: "medical-only",
      severity: "warning",
      solver: airTravel,
      shown: { type: "lithium-metal", lithiumMass: 8e-3 },
      notShown: { type: "lithium-metal", lithiumMass: 8.01e-3 },
    },
    {
      code: "spares-in-cabin",
      severity: "warning",
      solver: airTravel,
      shown: { carriedAs: "spare" },
      notShown: { carriedAs: "in-device" },
    },
    {
      code: "power-bank-on-board",
      severity: "warning",
      solver: airTravel,
      shown: { carriedAs: "power-bank" },
      notShown: { carriedAs: "spare" },
    },
    { code: "non-spillable-only", severity: "warning", solver: airTravel, shown: { type: "lead" }, notShown: { type: "dry" } },
    { code: "terminals-covered", severity: "caution", solver: airTravel, shown: { type: "dry" }, notShown: { type: "lead" } },
    { code: "terminals-covered", severity: "caution", solver: airTravel, shown: { type: "nickel" }, notShown: { type: "lead" } },
  ],
  refusals: [
    // 11.1516² V²/(4·0.12 ohm) = 259.08 W; 92.93 A
    { code: "insufficient-power", solver: packUnderLoad, refused: { power: 260 }, answered: { power: 258.5 } },
    {
      code: "insufficient-current",
      solver: packUnderLoad,
      refused: { power: null, current: 93.2 },
      answered: { power: null, current: 92.7 },
    },
    // 12 V over two strings of 0.1 ohm
    {
      code: "insufficient-current",
      solver: parallelSharing,
      refused: strings({}, { current: 240.1 }),
      answered: strings({}, { current: 239.9 }),
    },
    { code: "insufficient-current", solver: powerBank, refused: { power: 15.05 }, answered: { power: 15 } },
    {
      code: "insufficient-current",
      solver: powerBank,
      refused: { power: null, current: 3.01 },
      answered: { power: null, current: 3 },
    },
    {
      code: "not-rechargeable",
      solver: chargeTime,
      refused: { chemistry: "alkaline" },
      answered: { chemistry: "nmc" },
      noNearest: "no change of a number makes an alkaline cell chargeable",
    },
    { code: "too-cold", solver: chargeTime, refused: { cellTemperature: -0.0005 }, answered: { cellTemperature: 0 } },
    {
      code: "already-full",
      solver: chargeTime,
      refused: { chemistry: "nimh", startStateOfCharge: 1 },
      answered: { chemistry: "nimh", startStateOfCharge: 0.995 },
    },
    { code: "already-full", solver: chargeTime, refused: { startStateOfCharge: 1 }, answered: { startStateOfCharge: 0.995 } },
    // an empty cell of 2.5199 V and 0.26 A in 40 mohm a cell
    { code: "insufficient-voltage", solver: chargeTime, refused: { cellChargeVoltage: 2.528 }, answered: { cellChargeVoltage: 2.533 } },
    {
      code: "no-load",
      solver: runtime,
      refused: { pattern: [{ current: 1e-9 }] },
      answered: { pattern: [{ current: 1.005e-9 }] },
      noNearest: "which step should draw, and what, is the maker's to say",
    },
    // (12.5829 − 7.5) V in 0.12 ohm
    {
      code: "insufficient-voltage",
      solver: runtime,
      refused: { pattern: [{ current: 42.5 }] },
      answered: { pattern: [{ current: 42.3 }] },
    },
    // 12.5829² V²/(4·0.12 ohm) = 329.85 W
    {
      code: "insufficient-power",
      solver: runtime,
      refused: { cellCutOffVoltage: 0.5, pattern: [{ power: 331 }] },
      answered: { cellCutOffVoltage: 0.5, pattern: [{ power: 329 }] },
    },
    {
      code: "depleted",
      solver: runtime,
      refused: { cellCutOffVoltage: 0.5, startStateOfCharge: 0, pattern: [{ power: 0.1 }] },
      answered: { cellCutOffVoltage: 0.5, startStateOfCharge: 0.001, pattern: [{ power: 0.1 }] },
    },
    // 3S2P of 45 g a cell is the lightest
    { code: "no-candidate", solver: packSize, refused: { ...cell({}), maxMass: 0.269 }, answered: { ...cell({}), maxMass: 0.2701 } },
  ],
  faults: [
    { solver: cellPack, path: "cellCutOffVoltage", faulty: { cellCutOffVoltage: 4.2 }, sound: { cellCutOffVoltage: 4.19 } },
    { solver: packUnderLoad, path: "cellCutOffVoltage", faulty: { cellCutOffVoltage: 4.2 }, sound: { cellCutOffVoltage: 4.19 } },
    { solver: runtime, path: "cellCutOffVoltage", faulty: { cellCutOffVoltage: 4.2 }, sound: { cellCutOffVoltage: 4.19 } },
    {
      solver: cellPack,
      path: "groupCapacities",
      faulty: { groupCapacities: [18720, 18720] },
      sound: { groupCapacities: [18720, 18720, 18720] },
    },
    { solver: packUnderLoad, path: "power", faulty: { current: 1 }, sound: { current: null } },
    { solver: parallelSharing, path: "loadResistance", faulty: { loadResistance: 5 }, sound: { loadResistance: null } },
    { solver: powerBank, path: "power", faulty: { current: 1 }, sound: { current: null } },
    { solver: powerBank, path: "loadVoltage", faulty: { loadVoltage: 5 }, sound: { loadVoltage: 5.04 } },
    {
      solver: runtime,
      path: "pattern.0.power",
      faulty: { pattern: [{ current: 1, power: 1 }] },
      sound: { pattern: [{ current: 1, power: null }] },
    },
    ...[runtime, chargeTime].flatMap((solver) => {
      const curve = (s: readonly number[], u: readonly number[]) => ({
        openCircuitCurve: s.map((stateOfCharge, i) => ({ stateOfCharge, voltage: u[i] as number })),
      })
      return [
        { solver, path: "openCircuitCurve", faulty: curve([0, 0.5, 1], [3, 3.7, 3.7]), sound: curve([0, 0.5, 1], [3, 3.69, 3.7]) },
        {
          solver,
          path: "openCircuitCurve",
          faulty: curve([0, 0.5, 0.5, 1], [3, 3.6, 3.7, 4]),
          sound: curve([0, 0.5, 0.504, 1], [3, 3.6, 3.7, 4]),
        },
        { solver, path: "openCircuitCurve", faulty: curve([0, 0.996], [3, 4.1]), sound: curve([0, 1], [3, 4.1]) },
        { solver, path: "openCircuitCurve", faulty: curve([0.0005, 1], [3, 4.1]), sound: curve([0, 1], [3, 4.1]) },
      ]
    }),
    { solver: chargeTime, path: "terminationCurrent", faulty: { terminationCurrent: 2 }, sound: { terminationCurrent: 1.99 } },
    { solver: chargeTime, path: "cellChargeVoltage", faulty: { cellChargeVoltage: 4.63 }, sound: { cellChargeVoltage: 4.61 } },
    {
      solver: chargeTime,
      path: "cellChargeVoltage",
      faulty: { chemistry: "nimh", cellChargeVoltage: 1.4 },
      sound: { chemistry: "nimh", cellChargeVoltage: null },
    },
    { solver: peukert, path: "secondCapacity", faulty: { exponent: 1.2 }, sound: { exponent: null } },
    { solver: peukert, path: "secondDuration", faulty: { secondDuration: null }, sound: { secondDuration: 18000 } },
    // at 40 Ah the exponent would be 1
    { solver: peukert, path: "secondCapacity", faulty: { secondCapacity: 144100 }, sound: { secondCapacity: 143900 } },
    { solver: airTravel, path: "carriedAs", faulty: { type: "dry", carriedAs: "power-bank" }, sound: { type: "dry", carriedAs: "spare" } },
    {
      solver: airTravel,
      path: "lithiumMass",
      faulty: { type: "lithium-metal", lithiumMass: null },
      sound: { type: "lithium-metal", lithiumMass: 1e-3 },
    },
    {
      solver: airTravel,
      path: "nominalVoltage",
      faulty: { type: "lead", energy: 2e5, nominalVoltage: null },
      sound: { type: "lead", energy: 2e5, nominalVoltage: 10.8 },
    },
    { solver: airTravel, path: "energy", faulty: { capacity: null }, sound: { capacity: 18720 } },
    // 56.16 Wh, 5 % more
    { solver: airTravel, path: "energy", faulty: { energy: 212600 }, sound: { energy: 212000 } },
    { solver: airTravel, path: "energy", faulty: { energy: 191800 }, sound: { energy: 192200 } },
    {
      solver: packSize,
      path: "cells.1.name",
      faulty: { cells: [nmcCell, { ...nmcCell, name: "A" }] },
      sound: { cells: [nmcCell, { ...nmcCell, name: "B" }] },
    },
    {
      solver: packSize,
      path: "cells.0.cellCutOffVoltage",
      faulty: cell({ cellCutOffVoltage: 4.2 }),
      sound: cell({ cellCutOffVoltage: 4.19 }),
    },
    { solver: packSize, path: "minVoltage", faulty: { minVoltage: 15 }, sound: { minVoltage: 14.9 } },
    {
      solver: packSize,
      path: "rankBy",
      faulty: { ...cell({ cellPrice: null }), rankBy: "price" },
      sound: { ...cell({ cellPrice: null }), rankBy: "mass" },
    },
  ],
  numbers,
}
