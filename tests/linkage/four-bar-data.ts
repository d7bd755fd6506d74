// A four-bar as planarLinkage takes it.
import { fourBarPose } from "../../src/linkage/four-bar/pose.js"
import type { MechanismInput } from "../../src/linkage/index.js"

/** Ground d, input a, coupler b, output c, sketched at one input angle; null where it does not close there. */
export function fourBarData(d: number, a: number, b: number, c: number, angle: number, branch: "open" | "crossed"): MechanismInput | null {
  const pose = fourBarPose(d, a, b, c, angle, branch)
  if (typeof pose === "number") return null
  return {
    pivots: [
      { name: "O", x: 0, y: 0 },
      { name: "Q", x: d, y: 0 },
    ],
    points: [
      { name: "A", ...pose.inputPin },
      { name: "B", ...pose.outputPin },
    ],
    bars: [
      { name: "input", from: "O", to: "A", length: a },
      { name: "coupler", from: "A", to: "B", length: b },
      { name: "output", from: "Q", to: "B", length: c },
    ],
  }
}
