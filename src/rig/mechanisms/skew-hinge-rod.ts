// An arm on a hinge axis in any direction, moved by a rod or cable with a ball joint at each end.
import type { Length } from "../../quantity/index.js"
import { type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { poseOnRod } from "./hinged.js"
import type { Mechanism, MechanismMember, Triple } from "./mechanism.js"
import { turningPart } from "./moving.js"
import {
  addSkewArm,
  lineTo,
  placeAt,
  type SkewArm,
  skewArmFaults,
  skewArmFields,
  skewArmOf,
  skewLine,
  skewPointOf,
  skewReaction,
} from "./skew-arm.js"
import { plus, type SpacePoint, scaled, spacePoint, tripleOf } from "./triple.js"

/** An arm on a skew hinge with its rod or cable. */
export interface SkewHingeRodMechanism extends SkewArm {
  type: "skew-hinge-rod"
  /** Fixed pivot [group] */
  fixedPivot: SpacePoint
  /** Rod's end on the arm, before any swing. [group] */
  movingPivot: SpacePoint
  /** Which way a longer rod turns the arm about its axis. [right-handed or left-handed; default right-handed] */
  assembly?: "right-handed" | "left-handed"
  /** Length of rod or cable between the pivots at the start; left out, that of the drive's own rod. [L_1; 1 mm to 6 m; optional] */
  startLength?: Length | null
}

/** Lever arm below which a rod has none, m². */
const NO_REACH = 1e-9

/** The line of the rod as the arm swings. */
function rodOf(si: SiOf<SkewHingeRodMechanism>) {
  const arm = skewArmOf(si)
  const pivot = skewPointOf(arm, si.movingPivot)
  const fixed = tripleOf(si.fixedPivot)
  return { arm, pivot, fixed, line: lineTo(pivot, fixed) }
}

/** Coordinate: the length between the pivots. */
function build(si: SiOf<SkewHingeRodMechanism>): Mechanism {
  const { arm, pivot, fixed, line } = rodOf(si)
  const { square, reach, phase } = line
  const branch = si.assembly === "right-handed" ? 1 : -1
  const shortest = Math.sqrt(Math.max(0, square - 2 * reach))
  const longest = Math.sqrt(square + 2 * reach)
  /** Swing at a length; half angles keep their digits near dead points. */
  const swingAt = (q: number) => {
    const off = Math.max(0, (q - shortest) * (q + shortest))
    const left = Math.max(0, (longest - q) * (longest + q))
    return phase + branch * 2 * Math.atan2(Math.sqrt(off), Math.sqrt(left))
  }
  const leverAt = (q: number, swing: number) => (reach * Math.sin(swing - phase)) / q
  /** Swing for 1 of q, and its slope. */
  const turnsAt = (q: number, swing: number) => {
    const lever = leverAt(q, swing)
    const slope = (reach * Math.cos(swing - phase) - lever * lever) / q
    return { rate: 1 / lever, bend: -slope / lever ** 3 }
  }
  return {
    travel: "length",
    start: si.startLength,
    low: shortest,
    high: longest,
    deadPoints: [shortest, longest],
    shows: "angle",
    at(q, state) {
      const swing = swingAt(q)
      const { rate, bend } = turnsAt(q, swing)
      addSkewArm(state, arm, swing, rate, bend)
    },
    carries(q) {
      const swing = swingAt(q)
      return turningPart(arm.axis, swing, arm.hinge, turnsAt(q, swing), ["hinge"])
    },
    pose(q) {
      const swing = swingAt(q)
      return poseOnRod(skewLine(arm, swing, 1 / leverAt(q, swing)), fixed, placeAt(pivot, Math.cos(swing), Math.sin(swing)), swing)
    },
    reactions(q, effort, down) {
      const swing = swingAt(q)
      const at = placeAt(pivot, Math.cos(swing), Math.sin(swing))
      const pushed: Triple = scaled(plus(at, fixed, -1), effort / q)
      return [
        { name: "hinge", force: skewReaction(arm, swing, down, pushed) },
        { name: "fixed pivot", force: scaled(pushed, -1) },
        { name: "moving pivot", force: pushed },
      ]
    },
  }
}

function check(si: SiOf<SkewHingeRodMechanism>): Issue[] {
  const faults = skewArmFaults(si)
  if (faults.length > 0) return faults
  return rodOf(si).line.reach > NO_REACH
    ? []
    : [
        inconsistent(
          ["movingPivot"],
          "a rod that only points at the axis",
          "both ends of the rod off the axis, where its length can turn the arm",
        ),
      ]
}

/** An arm on a skew hinge, moved by a rod or cable. */
export const skewHingeRod: MechanismMember<SkewHingeRodMechanism> = {
  type: "skew-hinge-rod",
  label: "arm on a hinge axis in any direction, moved by a rod or cable",
  fields: {
    ...skewArmFields,
    fixedPivot: spacePoint("fixed pivot", "b"),
    movingPivot: spacePoint("moving pivot", "p"),
    assembly: {
      kind: "choice",
      label: "which way a longer rod turns it",
      options: { "right-handed": "right-handed about the axis", "left-handed": "left-handed about the axis" },
      default: "right-handed",
    },
    startLength: {
      kind: "length",
      symbol: "L_1",
      label: "length between the pivots at the start",
      min: "1 mm",
      max: 6,
      typical: ["0.1 m", "0.6 m"],
      default: null,
    },
  },
  check,
  build,
}
