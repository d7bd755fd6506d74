import { breakaway } from "../../src/worn/index.js"
import type { CautionRow, Edges } from "../helpers/edges.js"

const always = (code: string, severity: CautionRow["severity"]): CautionRow => ({
  solver: breakaway,
  code,
  severity,
  shown: {},
  notShown: null,
})
const parts = (low: number, high: number) => ({ partingTension: { low, high } })
const waist = { place: "waist", wornTension: 5 }

/** Peak of four harmonics at 2 steps a second, summed by hand from CCIP-016's table: 1 + 0.4305 + 0.0914 + 0.0714 + 0.065. */
const peak = 1.6583

/** Thresholds of what is said about a band that has to part. */
export const edges: Edges = {
  cautions: [
    always("take-it-off", "warning"),
    always("throat", "warning"),
    always("try-it", "note"),
    { solver: breakaway, code: "young-wearer", severity: "warning", shown: { stature: 1.34 }, notShown: { stature: 1.341 } },
    { solver: breakaway, code: "young-wearer", severity: "warning", shown: {}, notShown: { place: "shoulder" } },
    // two sides of 12.5 N
    { solver: breakaway, code: "over-pull", severity: "warning", shown: parts(8, 12.51), notShown: parts(8, 12.5) },
    // two sides of 29.42 N
    { solver: breakaway, code: "artery-force", severity: "warning", shown: parts(8, 29.43), notShown: parts(8, 29.41) },
    {
      solver: breakaway,
      code: "artery-force",
      severity: "warning",
      shown: parts(8, 40),
      notShown: { ...parts(8, 40), place: "waist" },
    },
    // 3999.66 Pa on 57 by 30 mm: 6.839 N
    { solver: breakaway, code: "over-pressure", severity: "warning", shown: { wornTension: 6.845 }, notShown: { wornTension: 6.835 } },
    {
      solver: breakaway,
      code: "over-pressure",
      severity: "warning",
      shown: { place: "waist", bandWidth: 0.00624, wornTension: 5 },
      notShown: { place: "waist", bandWidth: 0.00629, wornTension: 5 },
    },
    {
      solver: breakaway,
      code: "friction-holds",
      severity: "caution",
      shown: { breakawayAngle: "90.1 deg" },
      notShown: { breakawayAngle: "90 deg" },
    },
    { solver: breakaway, code: "friction-holds", severity: "caution", shown: { pullOpening: "0.05 deg" }, notShown: {} },
    {
      solver: breakaway,
      code: "parts-while-walking",
      severity: "caution",
      shown: { ...waist, ...parts(5 * peak - 0.01, 12) },
      notShown: { ...waist, ...parts(5 * peak + 0.01, 12) },
    },
    { solver: breakaway, code: "no-pull-limit", severity: "note", shown: { place: "waist" }, notShown: {} },
    { solver: breakaway, code: "no-pull-limit", severity: "note", shown: { place: "shoulder" }, notShown: {} },
  ],
  refusals: [{ solver: breakaway, code: "parts-at-once", refused: { wornTension: 8.01 }, answered: { wornTension: 8 } }],
  faults: [{ solver: breakaway, path: "partingTension.low", faulty: parts(12.01, 12), sound: parts(12, 12) }],
  numbers: {
    "breakaway.young-wearer.young": () => 1.34,
    "breakaway.throat.throatRelease": () => 25,
    "breakaway.artery-force.artery": () => 6 * 9.80665,
    "breakaway.parts-while-walking.peak": () => peak,
    "breakaway.parts-at-once.shortBy": (si) => si.wornTension - si.partingTension.low,
  },
}
