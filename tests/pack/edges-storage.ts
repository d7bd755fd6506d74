import { packStorage } from "../../src/pack/index.js"
import type { CautionRow, Edges } from "../helpers/edges.js"

const DAY = 86400
const days = (duration: number, more: object = {}) => ({ duration: duration * DAY, ...more })
const row = (code: string, severity: CautionRow["severity"], shown: object, notShown: object): CautionRow => ({
  code,
  severity,
  solver: packStorage,
  shown: { ...shown },
  notShown: { ...notShown },
})
/** Share of a full charge that goes in a month by the higher figure, in the first day more, and its temperature. */
const most: Record<string, readonly [day: number, month: number, from: number, ten: number]> = {
  lithium: [0, 0.05, 20, 2],
  "lead-sealed": [0, 1 / 30, 20, 2],
  "lead-flooded": [0, (0.04 * 365) / 7 / 12, 80 / 3, 2],
  nickel: [0.2, 0.15, 20, Math.sqrt(3)],
  "nickel-low-loss": [0, 0.3 / 12, 20, Math.sqrt(3)],
  alkaline: [0, 0.03 / 12, 20, 2],
}
/** Two, five and twenty-five percent a year at 70, 85 and 100 °F. */
function alkaline(celsius: number): number {
  const fahrenheit = 1.8 * celsius + 32
  if (fahrenheit < 70) return 2 ** ((fahrenheit - 70) / 18)
  if (fahrenheit < 85) return 2.5 ** ((fahrenheit - 70) / 15)
  return fahrenheit < 100 ? 2.5 * 5 ** ((fahrenheit - 85) / 15) : 12.5 * 2 ** ((fahrenheit - 100) / 18)
}
/** When it is empty: the days walked through in hundredths. */
function emptyTime(si: {
  cells: string
  storageTemperature: number
  circuitCurrent: number
  capacity: number
  startStateOfCharge: number
}) {
  const [day, month, from, ten] = most[si.cells] as readonly [number, number, number, number]
  const factor = si.cells === "alkaline" ? alkaline(si.storageTemperature) : ten ** ((si.storageTemperature - from) / 10)
  let [left, time] = [si.startStateOfCharge, 0]
  const slot = 0.01
  for (;;) {
    const loss = factor * ((month * 12 * slot) / 365 + (time < 1 - 1e-9 ? day * slot : 0)) + (si.circuitCurrent * DAY * slot) / si.capacity
    if (left <= loss) return (time + (slot * left) / loss) * DAY
    left -= loss
    time += slot
  }
}

/** The example has 5.2 Ah of lithium at 60 %, 50 µA: 0.187458 % of it a day go at most. */
export const edges: Edges = {
  cautions: [
    { code: "faulty-cell", severity: "note", solver: packStorage, shown: {}, notShown: null },
    row("battery-fire", "warning", { cells: "lithium" }, { cells: "nickel" }),
    row("runs-empty", "warning", days(321), days(319)),
    row("runs-empty", "warning", days(454, { cells: "lead-sealed" }), days(450, { cells: "lead-sealed" })),
    row("runs-empty", "warning", days(77.8, { cells: "nickel" }), days(77.2, { cells: "nickel" })),
    // two years at 86 °F: 3 %·2.5·5^(1/15) each
    row(
      "runs-empty",
      "warning",
      days(730, { cells: "alkaline", storageTemperature: 30, startStateOfCharge: 0.1666, circuitCurrent: 0 }),
      days(730, { cells: "alkaline", storageTemperature: 30, startStateOfCharge: 0.1674, circuitCurrent: 0 }),
    ),
    row("top-up", "caution", days(214), days(213)),
    row("top-up", "caution", days(38.9, { cells: "nickel" }), days(38.6, { cells: "nickel" })),
    // half a year up to 25 °C, and half of it at 35 °C
    row("top-up", "caution", days(183, { cells: "lead-sealed" }), days(182, { cells: "lead-sealed" })),
    row(
      "top-up",
      "caution",
      days(91.5, { cells: "lead-sealed", storageTemperature: 35 }),
      days(91, { cells: "lead-sealed", storageTemperature: 35 }),
    ),
    row("top-up", "caution", days(0.1, { startStateOfCharge: 0.2 }), days(0.1, { startStateOfCharge: 0.2015 })),
    row("top-up", "caution", days(300, { cells: "lead-flooded" }), days(300, { cells: "alkaline" })),
    // 8.1333 % a year: 5 % by the square root of 0.378 years
    row("ages-in-storage", "caution", days(138.5), days(137.5)),
  ],
  refusals: [],
  faults: [],
  numbers: {
    "packStorage.runs-empty.emptyTime": emptyTime,
    "packStorage.top-up.cellVoltage": () => 2.05,
  },
}
