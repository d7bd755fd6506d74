// An arm turned by a shaft on its own hinge.
import type { Angle } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { type Arm, addArm, armFields, armLine, armOf, hingeReaction } from "./arm.js"
import type { Mechanism, MechanismMember } from "./mechanism.js"

/** An arm on the shaft that turns it. */
export interface TurnedArm extends Arm {
  type: "turned-arm"
  /** Angle of the arm at the start, counter-clockwise from outward. [theta_1; −360° to 360°] */
  startAngle: Angle
}

/** Coordinate: the arm's own angle. */
function build(si: SiOf<TurnedArm>): Mechanism {
  const arm = armOf(si)
  return {
    travel: "angle",
    start: si.startAngle,
    low: Number.NEGATIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    deadPoints: [],
    shows: "angle",
    at(q, state) {
      addArm(state, arm, q, 1, 0)
    },
    pose(q) {
      const { from, tip, tipRate, mass, centre } = armLine(arm, q, 1)
      return {
        parts: [{ name: "arm", points: [from, tip], closed: false }],
        pins: [{ name: "hinge", at: from }],
        tip,
        tipRate,
        mass,
        centre,
        shown: q,
      }
    },
    // a shaft turns it with a moment: no force on the hinge
    reactions: (q, _effort, down) => [{ name: "hinge", force: hingeReaction(arm, q, down, [0, 0, 0]) }],
  }
}

/** An arm turned by a shaft. */
export const turnedArm: MechanismMember<TurnedArm> = {
  type: "turned-arm",
  label: "arm turned by a shaft",
  fields: {
    ...armFields,
    startAngle: {
      kind: "angle",
      symbol: "theta_1",
      label: "angle of the arm at the start",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-70 deg", "20 deg"],
    },
  },
  build,
}
