import { type Chemistry, chemistries, packHealth } from "../../src/pack/index.js"
import type { CautionRow, Edges } from "../helpers/edges.js"
import { packNumbers } from "./edge-numbers.js"
import { packRows, plain } from "./edges.js"

const row = (code: string, severity: CautionRow["severity"], shown: object, notShown: object): CautionRow => ({
  code,
  severity,
  solver: packHealth,
  shown: { ...shown },
  notShown: { ...notShown },
})
/** Five amperes for the two cells in parallel are 2.6 Ah and 5.2 Ah. */
const hourly = (si: { ratedCellCapacity: number; parallel: number }) => (si.ratedCellCapacity * si.parallel) / 3600
const read = (si: { lightVoltage: number; heavyVoltage: number; lightCurrent: number; heavyCurrent: number }) =>
  (si.lightVoltage - si.heavyVoltage) / (si.heavyCurrent - si.lightCurrent)

/** The example reads 0.13 ohm, give or take 9.02 mohm, and 75 % of the printed capacity. */
export const edges: Edges = {
  cautions: [
    ...packRows(packHealth, plain),
    row("alkaline-battery", "warning", { chemistry: "alkaline" }, { chemistry: "nmc" }),
    row("touch-voltage", "warning", { series: 8 }, { series: 7 }),
    // 29.9 V at 1 A and 29.5 V at 5 A are 30 V without load
    row("touch-voltage", "warning", { lightVoltage: 29.93, heavyVoltage: 29.5 }, { lightVoltage: 29.87, heavyVoltage: 29.5 }),
    // without load about 0.13 V more: three cells of 2.5 to 4.2 V, give or take 20 mV and 1 A through 9.02 mohm
    row("unlikely-voltage", "warning", { lightVoltage: 12.505, heavyVoltage: 11.98 }, { lightVoltage: 12.495, heavyVoltage: 11.98 }),
    row("unlikely-voltage", "warning", { lightVoltage: 7.335, heavyVoltage: 6.82 }, { lightVoltage: 7.345, heavyVoltage: 6.82 }),
    // 120 % and the band of 2.33 % under it are 23,001 s; 92.68 mohm are a fifth of 463 mohm
    row("unlikely-figures", "warning", { dischargeDuration: 23050 }, { dischargeDuration: 22950 }),
    row("unlikely-figures", "warning", { newCellResistance: 0.465 }, { newCellResistance: 0.462 }),
    // 2/√3/4 A·√(2·a² + (0.13 ohm·0.02)²·26 A²) is a fifth of 0.13 ohm at 62.99 mV
    row("reading-too-coarse", "caution", { voltageUncertainty: 0.0632 }, { voltageUncertainty: 0.0628 }),
    // 5.2 Ah: once, a half and twice that per hour; and a fifth
    row("other-loads", "note", { heavyCurrent: 2.59 }, { heavyCurrent: 2.61 }),
    row("other-loads", "note", { heavyCurrent: 10.42 }, { heavyCurrent: 10.38 }),
    row("other-loads", "note", { lightCurrent: 2.085 }, { lightCurrent: 2.075 }),
    row("test-temperature", "caution", { cellTemperature: 14.95 }, { cellTemperature: 15 }),
    row("test-temperature", "caution", { cellTemperature: 25.1 }, { cellTemperature: 25 }),
    // the band of 2.36 % reaches up to 80 % at 14,631 s, and down to it at 15,337 s
    row("worn-capacity", "warning", { dischargeDuration: 14600 }, { dischargeDuration: 14660 }),
    row("cannot-tell", "note", { dischargeDuration: 14660 }, { dischargeDuration: 14600 }),
    row("cannot-tell", "note", { dischargeDuration: 15310 }, { dischargeDuration: 15365 }),
    // 86.67 mohm a cell, less 6.01 mohm, are twice 40.33 mohm; 92.68 mohm are twice 46.34 mohm
    row("worn-resistance", "warning", { newCellResistance: 0.0402 }, { newCellResistance: 0.0404 }),
    row("cannot-tell", "note", { newCellResistance: 0.0404 }, { newCellResistance: 0.0402 }),
    row("cannot-tell", "note", { newCellResistance: 0.0462 }, { newCellResistance: 0.0464 }),
  ],
  refusals: [
    {
      code: "links-exceed-reading",
      solver: packHealth,
      refused: { interconnectResistance: 0.1303 },
      answered: { interconnectResistance: 0.1297 },
    },
  ],
  faults: [
    { solver: packHealth, path: "heavyCurrent", faulty: { heavyCurrent: 1.097 }, sound: { heavyCurrent: 1.102 } },
    { solver: packHealth, path: "heavyVoltage", faulty: { heavyVoltage: 11.42 }, sound: { heavyVoltage: 11.38 } },
    { solver: packHealth, path: "dischargeDuration", faulty: { dischargeDuration: null }, sound: { dischargeDuration: 14040 } },
  ],
  numbers: {
    ...packNumbers("packHealth", (si, out) => ({ ...si, openCircuitVoltage: out.openCircuitVoltage })),
    "packHealth.other-loads.light": (si) => hourly(si) / 5,
    "packHealth.other-loads.heavy": hourly,
    "packHealth.unlikely-voltage.lowest": (si) => si.series * chemistries[si.chemistry as Chemistry].cellCutOffVoltage,
    "packHealth.unlikely-voltage.highest": (si) => si.series * chemistries[si.chemistry as Chemistry].cellFullVoltage,
    "packHealth.worn-capacity.limit": () => 0.8,
    "packHealth.links-exceed-reading.at.resistance": read,
    "packHealth.links-exceed-reading.shortBy": (si) => si.interconnectResistance - 0.99 * read(si),
  },
}
