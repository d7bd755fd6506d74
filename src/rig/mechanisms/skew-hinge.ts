// An arm on a hinge axis in any direction, turned by a shaft.
import type { Angle } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { turnedByShaft } from "./hinged.js"
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
  return turnedByShaft({
    start: si.startAngle,
    hinge: arm.hinge,
    axis: arm.axis,
    add: (state, swing) => addSkewArm(state, arm, swing, 1, 0),
    line: (swing) => skewLine(arm, swing, 1),
    reaction: (swing, down) => skewReaction(arm, swing, down, [0, 0, 0]),
  })
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
