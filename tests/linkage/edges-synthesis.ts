import { fourBarSynthesis } from "../../src/linkage/index.js"
import type { Edges } from "../helpers/edges.js"
import { bestTransmission, linksOf } from "./synthesis-brute.js"

const region = (right: number, top: number) => ({ left: -0.08, right, bottom: 0.04, top })
const pins = (right: number, top: number) => ({ left: -0.1, right, bottom: -0.1, top })
const poses = (x: number) => [
  { x: 0, y: 0, angle: 0 },
  { x, y: 0, angle: 0 },
]
const twoPivots = (angle: number) => ({
  poses: [
    { x: 0, y: 0, angle: 0 },
    { x: "40 mm", y: "18 mm", angle: "20 deg" },
    { x: "72 mm", y: "48 mm", angle },
  ],
  fixedPivotRegion: { left: -0.06, right: -0.02, bottom: 0.04, top: 0.04 },
  step: 0.04,
  transmissionLimit: 0.05,
})

export const edges: Edges = {
  cautions: [
    { solver: fourBarSynthesis, code: "path-between-poses", severity: "note", shown: {}, notShown: null },
    { solver: fourBarSynthesis, code: "pinch", severity: "warning", shown: {}, notShown: null },
    {
      solver: fourBarSynthesis,
      code: "poor-transmission",
      severity: "caution",
      // two fixed pivots alone: the pair's minimum passes 40 degrees as the last pose is turned
      shown: twoPivots(0.821),
      notShown: twoPivots(0.8205),
    },
  ],
  refusals: [
    { solver: fourBarSynthesis, code: "poor-transmission", refused: { transmissionLimit: 1.188 }, answered: { transmissionLimit: 1.187 } },
    {
      solver: fourBarSynthesis,
      code: "no-candidate",
      refused: { linkLengths: { low: 0.01, high: 0.01995 } },
      answered: { linkLengths: { low: 0.01, high: 0.0201 } },
      noNearest: "what becomes of other pivots is not known without searching there",
    },
  ],
  faults: [
    {
      solver: fourBarSynthesis,
      path: "fixedPivotRegion.right",
      faulty: { fixedPivotRegion: region(-0.0801, 0.14) },
      sound: { fixedPivotRegion: region(-0.08, 0.14) },
    },
    {
      solver: fourBarSynthesis,
      path: "fixedPivotRegion.top",
      faulty: { fixedPivotRegion: region(0.06, 0.0399) },
      sound: { fixedPivotRegion: region(0.06, 0.04) },
    },
    {
      solver: fourBarSynthesis,
      path: "movingPivotRegion.right",
      faulty: { movingPivotRegion: pins(-0.1001, 0.12) },
      sound: { movingPivotRegion: pins(-0.1, 0.12) },
    },
    {
      solver: fourBarSynthesis,
      path: "movingPivotRegion.top",
      faulty: { movingPivotRegion: pins(0.12, -0.1001) },
      sound: { movingPivotRegion: pins(0.12, -0.1) },
    },
    {
      solver: fourBarSynthesis,
      path: "linkLengths.high",
      faulty: { linkLengths: { low: 0.1, high: 0.1 } },
      sound: { linkLengths: { low: 0.1, high: 0.1001 } },
    },
    { solver: fourBarSynthesis, path: "poses.1", faulty: { poses: poses(0) }, sound: { poses: poses(1e-3) } },
    // 140 mm hold 24 places until the step exceeds 140/23 mm, and 23 by 17 are 391
    { solver: fourBarSynthesis, path: "step", faulty: { step: 0.006086 }, sound: { step: 0.00609 } },
  ],
  numbers: {
    "fourBarSynthesis.poor-transmission.shortBy": (si) => si.transmissionLimit - bestTransmission(si),
    "fourBarSynthesis.poor-transmission.best": (si) => bestTransmission(si),
    "fourBarSynthesis.poor-transmission.at.pairs": (si) => linksOf(si).length * (linksOf(si).length - 1),
    "fourBarSynthesis.no-candidate.shortBy": () => 1,
    "fourBarSynthesis.no-candidate.at.pairs": (si) => linksOf(si).length * (linksOf(si).length - 1),
    "fourBarSynthesis.step.links": (si) =>
      (Math.floor((si.fixedPivotRegion.right - si.fixedPivotRegion.left) / si.step + 1e-9) + 1) *
      (Math.floor((si.fixedPivotRegion.top - si.fixedPivotRegion.bottom) / si.step + 1e-9) + 1),
    "fourBarSynthesis.step.most": () => 400,
  },
}
