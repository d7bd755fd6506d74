import { endStop } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

const spring = (change: object) => ({ stop: { type: "spring", stiffness: "20 N/mm", travel: "12 mm", returnedShare: 0.5, ...change } })
/** Where the energy of motion is used up: ½·k·x² − F·x − E = 0, by halving. */
function yields(si: { inertia: number; speed: number; drivingTorque: number; stopRadius: number; stop: { stiffness: number } }): number {
  let [low, high] = [0, 1]
  const left = (x: number) => (si.inertia * si.speed ** 2) / 2 + (si.drivingTorque / si.stopRadius) * x - (si.stop.stiffness * x ** 2) / 2
  while (left(high) > 0) high *= 2
  for (let k = 0; k < 200; k++) {
    const middle = (low + high) / 2
    if (left(middle) > 0) low = middle
    else high = middle
  }
  return low
}

export const edges: Edges = {
  cautions: [
    { code: "pinch", severity: "warning", solver: endStop, shown: {}, notShown: null },
    { code: "rigid-arm", severity: "note", solver: endStop, shown: {}, notShown: null },
    // 0.112 J and 62.5 N on 20 N/mm: 7.705 mm and 154.1 N
    { code: "over-force", severity: "warning", solver: endStop, shown: { ratedForce: 153.8 }, notShown: { ratedForce: 154.4 } },
    {
      code: "snap-back",
      severity: "warning",
      solver: endStop,
      // without a push the speed comes back by the root of the share: half from a quarter on
      shown: { drivingTorque: 0, ...spring({ returnedShare: 0.2505 }) },
      notShown: { drivingTorque: 0, ...spring({ returnedShare: 0.25 }) },
    },
    { code: "drive-pushes", severity: "caution", solver: endStop, shown: { drivingTorque: 0.0001 }, notShown: { drivingTorque: 0 } },
  ],
  refusals: [
    {
      code: "bottoms-out",
      solver: endStop,
      refused: spring({ travel: "7.68 mm" }),
      answered: spring({ travel: "7.73 mm" }),
    },
    {
      code: "bottoms-out",
      solver: endStop,
      refused: spring({ travel: "6.2 mm" }),
      answered: spring({ travel: "7.73 mm" }),
      apart: "where the push alone yields the whole travel, no speed is slow enough",
      noNearest: "the push alone would take it to the end",
    },
  ],
  faults: [],
  numbers: {
    "endStop.bottoms-out.shortBy": (si) => yields(si) - si.stop.travel,
    "endStop.bottoms-out.at.stoppingLength": yields,
  },
}
