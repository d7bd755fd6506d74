// An arm on the output link of a four-bar linkage, its input link turned by a shaft.
import type { Assembly } from "../../linkage/index.js"
import type { Angle, Length } from "../../quantity/index.js"
import { inconsistent, type SiOf } from "../../solver/index.js"
import { type Arm, armFields, armOf, type MassOnArm, type MovingPivot, massList, type PlanePoint, pivotOnArm, planePoint } from "./arm.js"
import { bodyOf } from "./body.js"
import { crankedArm } from "./cranked-arm.js"
import type { MechanismMember } from "./mechanism.js"

/** An arm on the output link of a four-bar linkage. */
export interface FourBarMechanism extends Arm {
  type: "four-bar"
  /** Fixed pivot of the input link. [group] */
  inputPivot: PlanePoint
  /** Driven link, pin to pin. [a; 1 mm to 2 m] */
  input: Length
  /** Floating link, pin to pin. [b; 1 mm to 4 m] */
  coupler: Length
  /** Where the coupler takes hold of the arm: its distance from the hinge is the length of the output link. [group] */
  movingPivot: MovingPivot
  /** How it is put together: `open` has the moving pivot left of the line from input pin to hinge. [open or crossed; default open] */
  assembly?: Assembly
  /** Angle of the input link at the start, counter-clockwise from outward. [theta_1; −360° to 360°] */
  startAngle: Angle
  /** Masses on the input link, from its fixed pivot. [list of 0 to 60; default none] */
  inputMasses?: readonly MassOnArm[]
  /** Masses on the coupler, from the input pin; angles are from the line to the moving pivot. [list of 0 to 60; default none] */
  couplerMasses?: readonly MassOnArm[]
}

/** Coordinate: the angle of the input link, counter-clockwise from outward. */
const build = (si: SiOf<FourBarMechanism>) =>
  crankedArm({
    arm: armOf(si),
    pivot: si.inputPivot,
    crank: si.input,
    coupler: si.coupler,
    movingPivot: si.movingPivot,
    assembly: si.assembly,
    start: si.startAngle,
    zero: 0,
    crankBody: bodyOf(si.inputMasses),
    couplerBody: bodyOf(si.couplerMasses),
    names: { pivot: "input pivot", crank: "input link", coupler: "coupler", pin: "input pin" },
  })

/** An arm on a four-bar linkage. */
export const fourBarMechanism: MechanismMember<FourBarMechanism> = {
  type: "four-bar",
  label: "arm on a four-bar linkage",
  fields: {
    ...armFields,
    inputPivot: planePoint("input pivot", "x_a", "y_a"),
    input: { kind: "length", symbol: "a", label: "input link", min: "1 mm", max: 2, typical: ["20 mm", "40 mm"] },
    coupler: { kind: "length", symbol: "b", label: "coupler", min: "1 mm", max: 4, typical: ["100 mm", "160 mm"] },
    movingPivot: pivotOnArm,
    assembly: {
      kind: "choice",
      label: "how it is put together",
      options: { open: "open: moving pivot left of the line from input pin to hinge", crossed: "crossed: moving pivot right of it" },
      default: "open",
    },
    startAngle: {
      kind: "angle",
      symbol: "theta_1",
      label: "angle of the input link at the start",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-180 deg", "180 deg"],
    },
    inputMasses: { ...massList("masses on the input link", "m_a", "distance from the input pivot"), default: [] },
    couplerMasses: { ...massList("masses on the coupler", "m_b", "distance from the input pin"), default: [] },
  },
  check: ({ hinge: at, inputPivot }) =>
    at.x === inputPivot.x && at.y === inputPivot.y
      ? [inconsistent(["inputPivot"], "the place of the hinge", "a pivot apart from the hinge")]
      : [],
  build,
}
