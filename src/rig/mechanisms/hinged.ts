// What arms on a hinge have in common, whichever way its axis points: turned by a shaft, or moved by a rod.
import type { Mechanism, MechanismPose, MechanismState, Triple } from "./mechanism.js"
import { turningPart } from "./moving.js"

/** Outline of an arm, its tip with ∂r/∂q, and where its mass is. */
type ArmLine = Pick<MechanismPose, "tip" | "tipRate" | "mass" | "centre" | "spread"> & { readonly from: Triple }

/** An arm on the shaft that turns it. Coordinate: the arm's own angle. */
export const turnedByShaft = (arm: {
  readonly start: number
  add(state: MechanismState, angle: number): void
  line(angle: number): ArmLine
  /** Force of its hinge on the frame at rest. */
  reaction(angle: number, down: Triple): Triple
  /** A point of its axis, and the axis. */
  readonly hinge: Triple
  readonly axis: Triple
}): Mechanism => ({
  travel: "angle",
  start: arm.start,
  low: Number.NEGATIVE_INFINITY,
  high: Number.POSITIVE_INFINITY,
  deadPoints: [],
  shows: "angle",
  at(q, state) {
    arm.add(state, q)
  },
  pose(q) {
    const { from, ...rest } = arm.line(q)
    return {
      ...rest,
      parts: [{ name: "arm", points: [from, rest.tip], closed: false }],
      pins: [{ name: "hinge", at: from }],
      shown: q,
    }
  },
  carries: (q) => turningPart(arm.axis, q, arm.hinge, { rate: 1, bend: 0 }, ["hinge"]),
  // a shaft turns it with a moment: no force on the hinge
  reactions: (q, _effort, down) => [{ name: "hinge", force: arm.reaction(q, down) }],
})

/** An arm at an angle, moved by a rod from a fixed pivot to one on the arm. */
export const poseOnRod = ({ from, ...rest }: ArmLine, fixed: Triple, moving: Triple, shown: number): MechanismPose => ({
  ...rest,
  parts: [
    { name: "arm", points: [from, rest.tip], closed: false },
    { name: "rod", points: [fixed, moving], closed: false },
  ],
  pins: [
    { name: "hinge", at: from },
    { name: "fixed pivot", at: fixed },
    { name: "moving pivot", at: moving },
  ],
  shown,
})
