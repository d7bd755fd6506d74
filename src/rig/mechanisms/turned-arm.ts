// An arm turned by a shaft on its own hinge.
import type { Angle } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { type Arm, addArm, armFields, armLine, armOf, hingeReaction } from "./arm.js"
import { turnedByShaft } from "./hinged.js"
import type { Mechanism, MechanismMember } from "./mechanism.js"

/** An arm on the shaft that turns it. */
export interface TurnedArm extends Arm {
  type: "turned-arm"
  /** Angle of the arm at the start, counter-clockwise from outward. [theta_1; −360° to 360°] */
  startAngle: Angle
}

function build(si: SiOf<TurnedArm>): Mechanism {
  const arm = armOf(si)
  return turnedByShaft({
    start: si.startAngle,
    hinge: [arm.hinge.x, arm.hinge.y, 0],
    axis: [0, 0, 1],
    add: (state, angle) => addArm(state, arm, angle, 1, 0),
    line: (angle) => armLine(arm, angle, 1),
    reaction: (angle, down) => hingeReaction(arm, angle, down, [0, 0, 0]),
  })
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
