// A scissor array, driven by a rod across its base or along the way it extends.
import { springTension } from "../../linkage/index.js"
import type { Angle, Area, Force, ForcePerLength, Length, Mass } from "../../quantity/index.js"
import { inconsistent, type SiOf } from "../../solver/index.js"
import { type PlanePoint, planePoint } from "./arm.js"
import { cordFields, cordOf } from "./cord.js"
import type { Mechanism, MechanismMember, Triple } from "./mechanism.js"

/** A spring or elastic cord drawn across between the base joints. */
export interface SpringAcross {
  /** Stiffness [k_s; 0.01 N/m to 1000 N/mm] */
  stiffness: ForcePerLength
  /** Free length [L_s; 0 to 5 m] */
  freeLength: Length
}

/** A scissor array and its rod. */
export interface ScissorMechanism {
  type: "scissor"
  /** The base joint that stands still, or the middle of the base where none does. [group; optional, with a default of its own] */
  base?: PlanePoint
  /** Direction in which it extends, counter-clockwise from outward. [beta; −360° to 360°; default 0] */
  direction?: Angle
  /** Cells: crossed pairs of arms, one after the other. [n; whole 1 to 200] */
  cells: number
  /** One arm, end pin to end pin; the pair is pinned at the middle. [L; 1 mm to 5 m] */
  armLength: Length
  /**
   * Base joint that stands still, seen the way it extends: none (both move alike), the left or the right one. [centre,
   * left or right; default centre]
   */
  fixedJoint?: "centre" | "left" | "right"
  /** Whether the rod lies across between the base joints, or along the array from the middle of its base. [across or along] */
  rod: "across" | "along"
  /** How many cells a rod along the array spans; half a cell to a middle pin. All of them where left out. [n_r; 0.5 to 200; optional] */
  drivenCells?: number | null
  /** Mass carried at the tip. [m_t; 0 to 50 kg; default 0] */
  tipMass?: Mass
  /** Mass of all arms together, spread evenly. [m_a; 0.1 g to 50 kg] */
  armsMass: Mass
  /** Area that the tip holds square to the way it extends. [A_f; 0 to 4 m²; default 0] */
  frontArea?: Area
  /** Springs across the base [list of 0 to 10; default none] */
  springs?: readonly SpringAcross[]
  /** Friction of the whole array, as it is felt at the rod. [F_f; 0 to 1000 N; default 0] */
  friction?: Force
  /** Length of rod or cable between its pins at the start; left out, that of the drive's own rod. [L_1; 1 mm to 1000 m; optional] */
  startLength?: Length | null
}

const sides = { centre: 0, right: 1, left: -1 } as const

/** Coordinate: the length of the rod, pin to pin. */
function build(si: SiOf<ScissorMechanism>): Mechanism {
  const { base, direction, cells: n, armLength: l, tipMass, armsMass, frontArea } = si
  const isAcross = si.rod === "across"
  const side = sides[si.fixedJoint]
  const reach = (si.drivenCells ?? n) * l
  const mass = tipMass + armsMass
  const [ex, ey] = [Math.cos(direction), Math.sin(direction)]
  // left of the way it extends
  const [fx, fy] = [-ey, ex]
  const springs = si.springs.map(cordOf)
  // inertia about the way an arm's angle changes: along the array, across it, and of the arms' own turning
  const lengthwise = (tipMass * n ** 2 + (armsMass * (4 * n ** 2 - 1)) / 12) * l ** 2
  const sideways = (mass * side ** 2 * l ** 2) / 4
  const turning = (armsMass * l ** 2) / 12
  const angleAt = (q: number) => {
    const left = Math.sqrt(Math.max(0, isAcross ? (l - q) * (l + q) : (reach - q) * (reach + q)))
    return isAcross ? Math.atan2(left, q) : Math.atan2(q, left)
  }
  /** Turn of the arms for 1 of q. */
  const rateAt = (c: number, s: number) => (isAcross ? -1 / (l * s) : 1 / (reach * c))
  /** Middle of the array so far along it. */
  const middleAt = (along: number, spread: number): Triple => {
    const across = (side * spread) / 2
    return [base.x + along * ex + across * fx, base.y + along * ey + across * fy, 0]
  }
  const beside = ([x, y]: Triple, across: number): Triple => [x + across * fx, y + across * fy, 0]
  return {
    travel: "length",
    start: si.startLength,
    low: 0,
    high: isAcross ? l : reach,
    deadPoints: [isAcross ? l : reach],
    shows: "length",
    at(q, state) {
      const angle = angleAt(q)
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      const rate = rateAt(c, s)
      const bend = isAcross ? (-rate * rate * c) / s : (rate * rate * s) / c
      const along = rate * l * c * n
      const across = (-rate * side * l * s) / 2
      const momentum = (tipMass + armsMass / 2) * along
      state.massX += momentum * ex + mass * across * fx
      state.massY += momentum * ey + mass * across * fy
      state.windX -= frontArea * along * ex
      state.windY -= frontArea * along * ey
      const inertia = lengthwise * c * c + sideways * s * s + turning
      state.inertia += inertia * rate * rate
      state.inertiaSlope += 2 * (sideways - lengthwise) * s * c * rate ** 3 + 2 * inertia * rate * bend
      for (const spring of springs) {
        state.springs -= springTension(spring, l * c) * l * s * rate
        state.form = 2 * state.form + (l * c > spring.freeLength ? 1 : 0)
      }
      state.frictionDry += si.friction
    },
    pose(q) {
      const angle = angleAt(q)
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      const rate = rateAt(c, s)
      const [step, spread] = [l * s, l * c]
      const joints = Array.from({ length: n + 1 }, (_, i) => {
        const middle = middleAt(i * step, spread)
        return { left: beside(middle, spread / 2), right: beside(middle, -spread / 2) }
      })
      const tip = middleAt(n * step, spread)
      const middle = middleAt(((tipMass + armsMass / 2) * n * step) / mass, spread)
      const [along, across] = [rate * l * c * n, (-rate * side * l * s) / 2]
      const [first] = joints as [(typeof joints)[number]]
      const root = middleAt(0, spread)
      const rod = isAcross ? [first.left, first.right] : [root, middleAt((reach / l) * step, spread)]
      return {
        parts: [
          ...joints.slice(1).flatMap((next, i) => [
            { name: "arm", points: [joints[i]?.left ?? root, next.right], closed: false },
            { name: "arm", points: [joints[i]?.right ?? root, next.left], closed: false },
          ]),
          { name: "rod", points: rod, closed: false },
        ],
        pins: [
          { name: "left base joint", at: first.left },
          { name: "right base joint", at: first.right },
        ],
        tip,
        tipRate: [along * ex + across * fx, along * ey + across * fy, 0],
        mass,
        centre: middle,
        shown: n * step,
      }
    },
    reactions(q, effort, down) {
      const angle = angleAt(q)
      const [step, spread] = [l * Math.sin(angle), l * Math.cos(angle)]
      const [along, across] = [down[0] * ex + down[1] * ey, down[0] * fx + down[1] * fy]
      // weight that hangs out sideways pulls one base joint and pushes the other
      const couple = ((tipMass + armsMass / 2) * n * step * across) / spread
      const push = (mass * along + (isAcross ? 0 : effort)) / 2
      const held = { left: side === 0 ? 0.5 : side < 0 ? 1 : 0, right: side === 0 ? 0.5 : side > 0 ? 1 : 0 }
      const joint = (lengthwiseForce: number, share: number): Triple => {
        const sidewaysForce = share * mass * across
        return [lengthwiseForce * ex + sidewaysForce * fx, lengthwiseForce * ey + sidewaysForce * fy, (mass * down[2]) / 2]
      }
      const rod: Triple = isAcross ? [effort * fx, effort * fy, 0] : [effort * ex, effort * ey, 0]
      return [
        { name: "left base joint", force: joint(push - couple, held.left) },
        { name: "right base joint", force: joint(push + couple, held.right) },
        // across the base the rod's two ends push on the array alone
        ...(isAcross ? [] : [{ name: "rod's base", force: [-rod[0], -rod[1], 0] as Triple }]),
        { name: "rod", force: rod },
      ]
    },
  }
}

/** A scissor array. */
export const scissorMechanism: MechanismMember<ScissorMechanism> = {
  type: "scissor",
  label: "scissor array, driven by a rod",
  fields: {
    base: { ...planePoint("base of the array", "x_b", "y_b"), default: { x: 0, y: 0 } },
    direction: {
      kind: "angle",
      symbol: "beta",
      label: "direction in which it extends",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-90 deg", "90 deg"],
      default: 0,
    },
    cells: { kind: "number", symbol: "n", label: "cells", whole: true, min: 1, max: 200, typical: [2, 8] },
    armLength: { kind: "length", symbol: "L", label: "arm, end pin to end pin", min: "1 mm", max: 5, typical: ["60 mm", "300 mm"] },
    fixedJoint: {
      kind: "choice",
      label: "base joint that stands still",
      options: { centre: "none: both move alike", left: "the left one", right: "the right one" },
      default: "centre",
    },
    rod: {
      kind: "choice",
      label: "how the rod lies",
      options: { across: "across, between the base joints", along: "along, from the middle of the base" },
    },
    drivenCells: {
      kind: "number",
      symbol: "n_r",
      label: "cells that a rod along it spans",
      min: 0.5,
      max: 200,
      typical: [0.5, 2],
      default: null,
    },
    tipMass: { kind: "mass", symbol: "m_t", label: "mass at the tip", min: 0, max: 50, typical: ["50 g", "1 kg"], default: 0 },
    armsMass: { kind: "mass", symbol: "m_a", label: "mass of all arms", min: "0.1 g", max: 50, typical: ["0.1 kg", "2 kg"] },
    frontArea: { kind: "area", symbol: "A_f", label: "area square to its way", min: 0, max: 4, typical: [0, "0.1 m2"], default: 0 },
    springs: {
      kind: "list",
      label: "springs across the base",
      min: 0,
      max: 10,
      default: [],
      of: {
        kind: "group",
        label: "spring",
        fields: {
          stiffness: cordFields.stiffness,
          // a base is narrower than an arm is long
          freeLength: { ...cordFields.freeLength, typical: ["20 mm", "0.2 m"] },
        },
      },
    },
    friction: {
      kind: "force",
      symbol: "F_f",
      label: "friction of the array at the rod",
      min: 0,
      max: 1000,
      typical: [0, "20 N"],
      default: 0,
    },
    startLength: {
      kind: "length",
      symbol: "L_1",
      label: "length of the rod at the start",
      min: "1 mm",
      max: 1000,
      typical: ["20 mm", "0.2 m"],
      default: null,
    },
  },
  check: ({ rod, drivenCells, cells }) => {
    if (drivenCells === null) return []
    if (rod === "across")
      return [
        inconsistent(["drivenCells"], "{drivenCells} with a rod across the base", "left out: only a rod along the array spans cells", {
          drivenCells,
        }),
      ]
    return drivenCells <= cells
      ? []
      : [inconsistent(["drivenCells"], "{drivenCells}", "at most the {cells} cells of the array", { drivenCells, cells })]
  },
  build,
}
