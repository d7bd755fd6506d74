import { motionProfile } from "../../src/drive/index.js"
import type { Edges } from "../helpers/edges.js"

const timing = (change: object) => ({ timing: { type: "duration", duration: "2 s", ...change } })

export const edges: Edges = {
  cautions: [
    { code: "pinch", severity: "warning", solver: motionProfile, shown: {}, notShown: null },
    // 60° in 2 s by thirds: π/3 / (2·2/3) = 0.785 rad/s, 0.25 m/s at 318.3 mm
    { code: "strike", severity: "warning", solver: motionProfile, shown: { tipRadius: 0.319 }, notShown: { tipRadius: 0.318 } },
    { code: "load-drives", severity: "warning", solver: motionProfile, shown: { loadTorque: 0.501 }, notShown: { loadTorque: 0.5 } },
    { code: "load-drives", severity: "warning", solver: motionProfile, shown: { loadTorque: -0.501 }, notShown: { loadTorque: -0.5 } },
    {
      code: "sudden-start",
      severity: "note",
      solver: motionProfile,
      shown: timing({}),
      notShown: timing({ jerkShare: 0.01 }),
    },
  ],
  refusals: [],
  faults: [
    {
      path: "timing.decelerationShare",
      solver: motionProfile,
      faulty: timing({ accelerationShare: 0.4, decelerationShare: 0.601 }),
      sound: timing({ accelerationShare: 0.4, decelerationShare: 0.6 }),
    },
  ],
  numbers: {},
}
