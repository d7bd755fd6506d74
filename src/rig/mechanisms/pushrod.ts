// An arm moved by a servo over horn, rod and the arm's own horn.
import { pushrodNeutral } from "../../linkage/index.js"
import type { Angle, Length, Mass, Moment } from "../../quantity/index.js"
import { inconsistent, type SiOf } from "../../solver/index.js"
import { type Arm, armFields, armOf, type MovingPivot, type PlanePoint, pivotOnArm, planePoint } from "./arm.js"
import { bodyOf, rodBody } from "./body.js"
import { crankedArm } from "./cranked-arm.js"
import type { MechanismMember } from "./mechanism.js"

/** A servo's horn, a rod and an arm: the rod is cut to fit with both at neutral. */
export interface PushrodMechanism extends Arm {
  type: "pushrod"
  /** Shaft of the servo. [group] */
  servoPivot: PlanePoint
  /** Servo horn, shaft to rod pin. [a; 1 mm to 1 m] */
  servoHorn: Length
  /** Angle of the servo horn at neutral, counter-clockwise from outward. [theta_n; −360° to 360°] */
  servoHornAngle: Angle
  /** Rod pin on the arm: the arm's own horn. [group] */
  movingPivot: MovingPivot
  /** Angle of the arm at neutral, counter-clockwise from outward. [psi_n; −360° to 360°] */
  neutralAngle: Angle
  /** Turn of the servo from neutral at the start. [delta_1; −170° to 170°; default −45°] */
  startAngle?: Angle
  /** Mass of the rod [m_b; 0 to 5 kg; default 0] */
  rodMass?: Mass
  /** Moment on the hinge against a rising angle of the arm: cloth, elastic, a steady pull. [M_h; −100 to 100 N m; default 0] */
  hingeMoment?: Moment
}

/** Angles of both horns at neutral from the line shaft to hinge, and its length. */
function neutralOf({ hinge, servoPivot, servoHorn, servoHornAngle, movingPivot, neutralAngle }: SiOf<PushrodMechanism>) {
  const line = Math.atan2(hinge.y - servoPivot.y, hinge.x - servoPivot.x)
  return pushrodNeutral({
    pivotDistance: Math.hypot(hinge.x - servoPivot.x, hinge.y - servoPivot.y),
    servoHorn,
    flapHorn: movingPivot.radius,
    servoHornAngle: servoHornAngle - line,
    flapHornAngle: neutralAngle + movingPivot.angle - line,
  })
}

/** Coordinate: turn of the servo from neutral, counter-clockwise. */
function build(si: SiOf<PushrodMechanism>) {
  const { rod, branch } = neutralOf(si)
  return crankedArm({
    arm: { ...armOf(si), steady: si.hingeMoment },
    pivot: si.servoPivot,
    crank: si.servoHorn,
    coupler: rod,
    movingPivot: si.movingPivot,
    assembly: branch,
    start: si.startAngle,
    zero: si.servoHornAngle,
    crankBody: bodyOf([]),
    couplerBody: rodBody(si.rodMass, rod),
    names: { pivot: "servo shaft", crank: "servo horn", coupler: "rod", pin: "horn pin" },
  })
}

/** An arm moved by a servo over a rod. */
export const pushrod: MechanismMember<PushrodMechanism> = {
  type: "pushrod",
  label: "arm moved by a servo horn and a rod",
  fields: {
    ...armFields,
    servoPivot: planePoint("servo shaft", "x_s", "y_s"),
    servoHorn: { kind: "length", symbol: "a", label: "servo horn", min: "1 mm", max: 1, typical: ["12 mm", "25 mm"] },
    servoHornAngle: {
      kind: "angle",
      symbol: "theta_n",
      label: "servo horn at neutral",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-20 deg", "20 deg"],
    },
    movingPivot: pivotOnArm,
    neutralAngle: {
      kind: "angle",
      symbol: "psi_n",
      label: "angle of the arm at neutral",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-20 deg", "20 deg"],
    },
    startAngle: {
      kind: "angle",
      symbol: "delta_1",
      label: "turn of the servo from neutral at the start",
      min: "-170 deg",
      max: "170 deg",
      typical: ["-30 deg", "0 deg"],
      default: "-45 deg",
    },
    rodMass: { kind: "mass", symbol: "m_b", label: "mass of the rod", min: 0, max: 5, typical: [0, "30 g"], default: 0 },
    hingeMoment: {
      kind: "moment",
      symbol: "M_h",
      label: "moment against a rising angle of the arm",
      min: -100,
      max: 100,
      typical: [0, "0.2 N m"],
      default: 0,
    },
  },
  check(si) {
    if (si.hinge.x === si.servoPivot.x && si.hinge.y === si.servoPivot.y)
      return [inconsistent(["servoPivot"], "the place of the hinge", "a shaft apart from the hinge")]
    return neutralOf(si).rod > 0
      ? []
      : [inconsistent(["servoHornAngle"], "a horn pin on the arm's own", "an angle that leaves room for a rod between the pins")]
  },
  build,
}
