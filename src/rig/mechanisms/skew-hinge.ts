// An arm on a hinge axis in any direction, turned by a shaft.
import type { Angle } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Mechanism, MechanismMember } from "./mechanism.js"
import { addSkewArm, type SkewArm, skewArmFaults, skewArmFields, skewArmOf, skewLine, skewReaction } from "./skew-arm.js"

/** An arm on a skew hinge, on the shaft that turns it. */
export interface SkewHingeMechanism extends SkewArm {
  type: "skew-hinge"
  /** Swing at the start, from the pose in which masses and tip are stated. [theta_1; −360° to 360°; default 0] */
  startAngle?: Angle
}

/** Coordinate: the swing, right-handed about the axis. */
function build(si: SiOf<SkewHingeMechanism>): Mechanism {
  const arm = skewArmOf(si)
  return {
    travel: "angle",
    start: si.startAngle,
    low: Number.NEGATIVE_INFINITY,
    high: Number.POSITIVE_INFINITY,
    deadPoints: [],
    shows: "angle",
    at(q, state) {
      addSkewArm(state, arm, q, 1, 0)
    },
    pose(q) {
      const { from, tip, tipRate, mass, centre } = skewLine(arm, q, 1)
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
    reactions: (q, _effort, down) => [{ name: "hinge", force: skewReaction(arm, q, down, [0, 0, 0]) }],
  }
}

/** An arm on a skew hinge, turned by a shaft. */
export const skewHingeMechanism: MechanismMember<SkewHingeMechanism> = {
  type: "skew-hinge",
  label: "arm on a hinge axis in any direction, turned by a shaft",
  fields: {
    ...skewArmFields,
    startAngle: {
      kind: "angle",
      symbol: "theta_1",
      label: "swing at the start",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-60 deg", "20 deg"],
      default: 0,
    },
  },
  check: skewArmFaults,
  build,
}
