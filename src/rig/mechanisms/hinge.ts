// An arm on a hinge, moved by a rod or a cable between a fixed pivot and a pivot on the arm.
import { hingeAngleAt, hingeLengthRange, hingePinAt } from "../../linkage/index.js"
import type { Length } from "../../quantity/index.js"
import { inconsistent, type SiOf } from "../../solver/index.js"
import {
  type Arm,
  addArm,
  armFields,
  armLine,
  armOf,
  hingeReaction,
  type MovingPivot,
  type PlanePoint,
  pivotOnArm,
  planePoint,
} from "./arm.js"
import { poseOnRod } from "./hinged.js"
import type { Mechanism, MechanismMember, Triple } from "./mechanism.js"
import { turningPart } from "./moving.js"

/** A hinge with its rod or cable. */
export interface HingeMechanism extends Arm {
  type: "hinge"
  /** Fixed pivot [group] */
  fixedPivot: PlanePoint
  /** Moving pivot [group] */
  movingPivot: MovingPivot
  /** Distance by which the rod's axis misses its fixed pivot. [e; 0 to 200 mm; default 0] */
  axisOffset?: Length
  /**
   * Side of the line hinge–fixed pivot the moving pivot is on: counter-clockwise means that a longer rod raises the
   * arm. [counter-clockwise or clockwise; default counter-clockwise]
   */
  assembly?: "counter-clockwise" | "clockwise"
  /** Length of rod or cable between the pivots at the start; left out, that of the drive's own rod. [L_1; 1 mm to 6 m; optional] */
  startLength?: Length | null
}

/** Coordinate: the length between the pivots, along the rod. */
function build(si: SiOf<HingeMechanism>): Mechanism {
  const arm = armOf(si)
  const { hinge, fixedPivot, movingPivot, axisOffset, assembly } = si
  const geometry = { hinge, fixedPivot, movingPivot, axisOffset }
  const branch = assembly === "counter-clockwise" ? 1 : -1
  const { shortest, longest } = hingeLengthRange(geometry)
  const [cx, cy] = [hinge.x - fixedPivot.x, hinge.y - fixedPivot.y]
  const angleAt = (q: number) => hingeAngleAt(geometry, q, branch) ?? Number.NaN
  /** dL/dθ and its slope, by virtual work. */
  const leverAt = (q: number, angle: number) => {
    const rx = movingPivot.radius * Math.cos(angle + movingPivot.angle)
    const ry = movingPivot.radius * Math.sin(angle + movingPivot.angle)
    const lever = (rx * cy - ry * cx) / q
    return { lever, slope: (-(rx * cx + ry * cy) - lever * lever) / q }
  }
  return {
    travel: "length",
    start: si.startLength,
    low: shortest,
    high: longest,
    deadPoints: [shortest, longest],
    shows: "angle",
    at(q, state) {
      const angle = angleAt(q)
      const { lever, slope } = leverAt(q, angle)
      addArm(state, arm, angle, 1 / lever, -slope / lever ** 3)
    },
    pose(q) {
      const angle = angleAt(q)
      const { lever } = leverAt(q, angle)
      const pin = hingePinAt(geometry, angle)
      return poseOnRod(armLine(arm, angle, 1 / lever), [fixedPivot.x, fixedPivot.y, 0], [pin.x, pin.y, 0], angle)
    },
    carries(q) {
      const angle = angleAt(q)
      const { lever, slope } = leverAt(q, angle)
      return turningPart([0, 0, 1], angle, [hinge.x, hinge.y, 0], { rate: 1 / lever, bend: -slope / lever ** 3 }, ["hinge"])
    },
    reactions(q, effort, down) {
      const angle = angleAt(q)
      const pin = hingePinAt(geometry, angle)
      const share = effort / q
      // an actuator pinned at both ends pushes along the line of its pins
      const pushed: Triple = [share * (pin.x - fixedPivot.x), share * (pin.y - fixedPivot.y), 0]
      return [
        { name: "hinge", force: hingeReaction(arm, angle, down, pushed) },
        { name: "fixed pivot", force: [-pushed[0], -pushed[1], 0] },
        { name: "moving pivot", force: pushed },
      ]
    },
  }
}

/** An arm on a hinge, moved by a rod or cable. */
export const hinge: MechanismMember<HingeMechanism> = {
  type: "hinge",
  label: "arm on a hinge, moved by a rod or cable",
  fields: {
    ...armFields,
    fixedPivot: planePoint("fixed pivot", "x_a", "y_a"),
    movingPivot: pivotOnArm,
    axisOffset: { kind: "length", symbol: "e", label: "axis offset of the rod", min: 0, max: 0.2, typical: [0, "5 mm"], default: 0 },
    assembly: {
      kind: "choice",
      label: "side of the moving pivot",
      options: { "counter-clockwise": "counter-clockwise", clockwise: "clockwise" },
      default: "counter-clockwise",
    },
    startLength: {
      kind: "length",
      symbol: "L_1",
      label: "length between the pivots at the start",
      min: "1 mm",
      max: 6,
      typical: ["0.1 m", "0.3 m"],
      default: null,
    },
  },
  check({ hinge: at, fixedPivot, movingPivot, axisOffset }) {
    if (at.x === fixedPivot.x && at.y === fixedPivot.y)
      return [inconsistent(["fixedPivot"], "the place of the hinge", "a fixed pivot apart from the hinge")]
    const farthest = Math.hypot(at.x - fixedPivot.x, at.y - fixedPivot.y) + movingPivot.radius
    return axisOffset < farthest
      ? []
      : [
          inconsistent(["axisOffset"], "{axisOffset length}", "less than {farthest length}, the farthest that the pivots come apart", {
            axisOffset,
            farthest,
          }),
        ]
  },
  build,
}
