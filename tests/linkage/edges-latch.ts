import { type OverCentreLatchInput, overCentreLatch } from "../../src/linkage/index.js"
import type { SiOf } from "../../src/solver/index.js"
import type { Edges } from "../helpers/edges.js"

/** Moment of spring and load at an angle, by the places of pin and anchor. */
function momentAt(si: SiOf<OverCentreLatchInput>, angle: number): number {
  const [x, y] = [-si.movingPivotRadius * Math.cos(angle), -si.movingPivotRadius * Math.sin(angle)]
  const length = Math.hypot(si.fixedPivotDistance - x, y)
  const pull = length <= si.freeLength ? 0 : si.preload + si.springRate * (length - si.freeLength)
  return (x * -y - y * (si.fixedPivotDistance - x)) * (pull / length) + si.loadMoment
}

export const edges: Edges = {
  cautions: [
    { solver: overCentreLatch, code: "pinch", severity: "warning", shown: {}, notShown: null },
    { solver: overCentreLatch, code: "snaps-over", severity: "warning", shown: {}, notShown: null },
    { solver: overCentreLatch, code: "stored-energy", severity: "warning", shown: {}, notShown: null },
    // three degrees past the dead centre, and past where a load moves the snap-over point to
    {
      solver: overCentreLatch,
      code: "trips-by-little",
      severity: "caution",
      shown: { loadMoment: 0, counterStop: "2.99 deg" },
      notShown: { loadMoment: 0, counterStop: "3.01 deg" },
    },
    {
      solver: overCentreLatch,
      code: "trips-by-little",
      severity: "caution",
      shown: { clockwiseStop: 0.1305 },
      notShown: { clockwiseStop: 0.1315 },
    },
  ],
  refusals: [
    { solver: overCentreLatch, code: "does-not-hold", refused: { loadMoment: 0.2125 }, answered: { loadMoment: 0.2117 } },
    { solver: overCentreLatch, code: "does-not-hold", refused: { loadMoment: -0.315 }, answered: { loadMoment: -0.3138 } },
  ],
  faults: [
    { solver: overCentreLatch, path: "movingPivotRadius", faulty: { movingPivotRadius: "60 mm" }, sound: { movingPivotRadius: "59.9 mm" } },
    { solver: overCentreLatch, path: "freeLength", faulty: { freeLength: "80 mm" }, sound: { freeLength: "79.9 mm" } },
  ],
  numbers: {
    "overCentreLatch.does-not-hold.shortBy": (si) => Math.max(momentAt(si, -si.clockwiseStop), -momentAt(si, si.counterStop), 1e-9),
    "overCentreLatch.trips-by-little.past": (si, out) => Math.min(si.counterStop - out.snapAngle, out.snapAngle + si.clockwiseStop),
    "overCentreLatch.freeLength.longest": (si) => si.fixedPivotDistance + si.movingPivotRadius,
  },
}
