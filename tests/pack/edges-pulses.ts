import { runtime } from "../../src/pack/index.js"
import type { CautionRow, Edges } from "../helpers/edges.js"

/** A move of some seconds, then a minute of two amperes; two cells in parallel of 7.8 A, or 12 A for 10 s. */
const moved = (current: number, duration: number, rest = 60, more: object = {}) => ({
  cellMaxCurrent: 7.8,
  cellPulseCurrent: 12,
  cellPulseDuration: 10,
  pattern: [
    { current, duration },
    { current: 2, duration: rest },
  ],
  ...more,
})
const row = (code: string, severity: CautionRow["severity"], shown: object, notShown: object): CautionRow => ({
  code,
  severity,
  solver: runtime,
  shown: { ...shown },
  notShown: { ...notShown },
})

export const edges: Edges = {
  cautions: [
    row("pulse", "caution", moved(15.65, 8), moved(15.55, 8)),
    row("over-pulse", "warning", moved(24.1, 8), moved(23.9, 8)),
    row("pulse-too-long", "warning", moved(20, 10.04), moved(20, 9.96)),
    // (10² A²·t + 1 A²·5 s)/(t + 5 s) = 7.8² A² at 7.6405 s
    row("pulse-heat", "warning", moved(20, 7.67, 5), moved(20, 7.61, 5)),
  ],
  refusals: [],
  faults: [
    {
      solver: runtime,
      path: "cellPulseCurrent",
      faulty: moved(20, 8, 60, { cellPulseCurrent: 7.79 }),
      sound: moved(20, 8, 60, { cellPulseCurrent: 7.8 }),
    },
    {
      solver: runtime,
      path: "cellPulseDuration",
      faulty: moved(20, 8, 60, { cellPulseDuration: null }),
      sound: moved(20, 8, 60, { cellPulseDuration: 10 }),
    },
    {
      solver: runtime,
      path: "cellPulseCurrent",
      faulty: moved(20, 8, 60, { cellMaxCurrent: null }),
      sound: moved(20, 8, 60, { cellMaxCurrent: 7.8 }),
    },
  ],
  numbers: {},
}
