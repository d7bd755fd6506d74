// An arm that swings about an axis in any direction: what it carries, for the mechanisms that turn it.
import { springTension } from "../../linkage/index.js"
import type { Area, ForcePerLength, Length, Mass, Moment } from "../../quantity/index.js"
import { type Fields, type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { cordFields, cordOf } from "./cord.js"
import type { MechanismState, Triple } from "./mechanism.js"
import { type Masses, massesIn, turningPart } from "./moving.js"
import { pointSpread, spreadSum } from "./spread.js"
import { cross, dot, plus, type SpaceDirection, type SpacePoint, scaled, size, spaceDirection, spacePoint, tripleOf } from "./triple.js"

/** A mass where it is before any swing. */
export interface MassInSpace extends SpacePoint {
  /** Part [text of 1 to 100 characters] */
  name: string
  /** Mass [m_i; 0.1 g to 50 kg] */
  mass: Mass
}

/** A flat panel on the arm, where it is before any swing. */
export interface PanelInSpace {
  /** Area [A_p; 0 to 4 m²] */
  area: Area
  /** Panel's centre [group] */
  centre: SpacePoint
  /** Direction square to the panel. [group] */
  normal: SpaceDirection
}

/** An extension spring or elastic cord between the frame and the arm. */
export interface SpringInSpace {
  /** Stiffness [k_s; 0.01 N/m to 1000 N/mm] */
  stiffness: ForcePerLength
  /** Free length [L_s; 0 to 5 m] */
  freeLength: Length
  /** Spring's fixed end [group] */
  fixedPivot: SpacePoint
  /** Its end on the arm, before any swing. [group] */
  movingPivot: SpacePoint
}

/** An arm on a skew hinge. Masses, tip and pivots are stated where they are before any swing. */
export interface SkewArm {
  /** A point of the axis. [group; optional, with a default of its own] */
  hinge?: SpacePoint
  /** Direction of the axis; the swing turns right-handed about it. [group] */
  axis: SpaceDirection
  /** Point of the arm farthest out: what must pass doors, and what strikes. [group] */
  tip: SpacePoint
  /** Masses on the arm [list of 1 to 60] */
  masses: readonly MassInSpace[]
  /** Panels on the arm [list of 0 to 20; default none] */
  panels?: readonly PanelInSpace[]
  /** Helper springs [list of 0 to 10; default none] */
  springs?: readonly SpringInSpace[]
  /** Friction moment of the hinge, whichever way it turns. [M_f; 0 to 100 N m; default 0] */
  hingeFriction?: Moment
}

/** Descriptions of a skew arm's fields. */
export const skewArmFields: Fields<SkewArm> = {
  hinge: { ...spacePoint("hinge", "h"), default: { x: 0, y: 0, z: 0 } },
  axis: spaceDirection("axis", "a"),
  tip: spacePoint("tip", "t"),
  masses: {
    kind: "list",
    label: "masses on the arm",
    min: 1,
    max: 60,
    of: {
      kind: "group",
      label: "mass",
      fields: {
        name: { kind: "text", label: "part", min: 1, max: 100 },
        mass: { kind: "mass", symbol: "m_i", label: "mass", min: "0.1 g", max: 50, typical: ["50 g", "1 kg"] },
        ...spacePoint("mass", "i").fields,
      },
    },
  },
  panels: {
    kind: "list",
    label: "panels on the arm",
    min: 0,
    max: 20,
    default: [],
    of: {
      kind: "group",
      label: "panel",
      fields: {
        area: { kind: "area", symbol: "A_p", label: "area", min: 0, max: 4, typical: ["0.01 m2", "0.3 m2"] },
        centre: spacePoint("panel's centre", "A"),
        normal: spaceDirection("square to the panel", "n"),
      },
    },
  },
  springs: {
    kind: "list",
    label: "helper springs",
    min: 0,
    max: 10,
    default: [],
    of: {
      kind: "group",
      label: "helper spring",
      fields: {
        ...cordFields,
        fixedPivot: spacePoint("spring's fixed end", "s"),
        movingPivot: spacePoint("spring's arm end", "e"),
      },
    },
  },
  hingeFriction: { kind: "moment", symbol: "M_f", label: "hinge friction", min: 0, max: 100, typical: [0, "0.3 N m"], default: 0 },
}

/** A vector that swings: steady + cos θ · level + sin θ · quarter. */
export interface Swinging {
  readonly steady: Triple
  readonly level: Triple
  readonly quarter: Triple
}

export const placeAt = ({ steady, level, quarter }: Swinging, c: number, s: number): Triple => [
  steady[0] + c * level[0] + s * quarter[0],
  steady[1] + c * level[1] + s * quarter[1],
  steady[2] + c * level[2] + s * quarter[2],
]

/** A cord between a fixed point and a point of the arm: length² = square − 2·reach·cos(θ − phase). */
export interface SwingingLine {
  readonly square: number
  readonly reach: number
  readonly phase: number
}

interface SwingingSpring extends SwingingLine {
  readonly spring: Parameters<typeof springTension>[0]
  readonly from: Triple
  readonly end: Swinging
}

interface SwingingPanel {
  readonly area: number
  readonly normal: Swinging
  /** Part of the normal along the way its centre goes, for a swing of 1: the same at every swing. */
  readonly across: number
}

/** A skew arm ready to be asked. */
export interface SkewArmModel {
  readonly hinge: Triple
  readonly axis: Triple
  readonly mass: number
  /** First moment of its masses about the hinge, kg·m. */
  readonly first: Swinging
  /** Its masses about its own origin, before any swing. */
  readonly masses: Masses
  /** Inertia about the axis, kg·m². */
  readonly inertia: number
  readonly tip: Swinging
  readonly friction: number
  readonly springs: readonly SwingingSpring[]
  readonly panels: readonly SwingingPanel[]
}

/** A direction or a place from the hinge, as it swings about an axis (Rodrigues). */
function swinging(axis: Triple, v: Triple, from: Triple = [0, 0, 0]): Swinging {
  const along = scaled(axis, dot(axis, v))
  return { steady: plus(from, along), level: plus(v, along, -1), quarter: cross(axis, v) }
}

/** The line between a fixed point and a point of the arm. */
export function lineTo(end: Swinging, fixed: Triple): SwingingLine {
  const away = plus(fixed, end.steady, -1)
  const [level, quarter] = [dot(away, end.level), dot(away, end.quarter)]
  return { square: dot(end.level, end.level) + dot(away, away), reach: Math.hypot(level, quarter), phase: Math.atan2(quarter, level) }
}

export const skewPointOf = (model: SkewArmModel, point: { readonly x: number; readonly y: number; readonly z: number }): Swinging =>
  swinging(model.axis, plus(tripleOf(point), model.hinge, -1), model.hinge)

/** A skew arm from its document part. */
export function skewArmOf(si: SiOf<SkewArm>): SkewArmModel {
  const direction = tripleOf(si.axis)
  const axis = scaled(direction, 1 / size(direction))
  const hinge = tripleOf(si.hinge)
  const swing = (point: Triple) => swinging(axis, plus(point, hinge, -1), hinge)
  let first: Triple = [0, 0, 0]
  let [mass, inertia] = [0, 0]
  let about: Masses = { mass: 0, first: [0, 0, 0], spread: pointSpread(0, [0, 0, 0]) }
  for (const m of si.masses) {
    const from = plus(tripleOf(m), hinge, -1)
    mass += m.mass
    first = plus(first, from, m.mass)
    const across = cross(axis, from)
    inertia += m.mass * dot(across, across)
    about = {
      mass,
      first: plus(about.first, tripleOf(m), m.mass),
      spread: spreadSum(about.spread, pointSpread(m.mass, tripleOf(m))),
    }
  }
  return {
    hinge,
    axis,
    mass,
    masses: about,
    inertia,
    first: swinging(axis, first),
    tip: swing(tripleOf(si.tip)),
    friction: si.hingeFriction,
    springs: si.springs.map((s) => {
      const [from, end] = [tripleOf(s.fixedPivot), swing(tripleOf(s.movingPivot))]
      return { ...lineTo(end, from), spring: cordOf(s), from, end }
    }),
    panels: si.panels.map((p) => {
      const square = tripleOf(p.normal)
      const normal = scaled(square, 1 / size(square))
      return { area: p.area, normal: swinging(axis, normal), across: dot(normal, cross(axis, plus(tripleOf(p.centre), hinge, -1))) }
    }),
  }
}

/** Parts of a direction below which it has none. */
const NO_DIRECTION = 1e-3

/** Faults of directions that point nowhere. */
export function skewArmFaults(si: SiOf<SkewArm>): Issue[] {
  const points = (at: { readonly x: number; readonly y: number; readonly z: number }) => Math.hypot(at.x, at.y, at.z) >= NO_DIRECTION
  const nowhere = (path: (string | number)[]) => inconsistent(path, "parts that are all next to nothing", "a direction")
  return [
    ...(points(si.axis) ? [] : [nowhere(["axis"])]),
    ...si.panels.flatMap((p, i) => (points(p.normal) ? [] : [nowhere(["panels", i, "normal"])])),
  ]
}

/** Adds to a state what a skew arm asks at a swing (rad) that turns by `rate` for 1 of q, `bend` the rate's own slope. */
export function addSkewArm(state: MechanismState, arm: SkewArmModel, swing: number, rate: number, bend: number): void {
  const [c, s] = [Math.cos(swing), Math.sin(swing)]
  const { level, quarter } = arm.first
  state.massX += rate * (c * quarter[0] - s * level[0])
  state.massY += rate * (c * quarter[1] - s * level[1])
  state.massZ += rate * (c * quarter[2] - s * level[2])
  for (const { area, normal, across } of arm.panels) {
    const load = rate * area * across
    state.windX -= load * (normal.steady[0] + c * normal.level[0] + s * normal.quarter[0])
    state.windY -= load * (normal.steady[1] + c * normal.level[1] + s * normal.quarter[1])
    state.windZ -= load * (normal.steady[2] + c * normal.level[2] + s * normal.quarter[2])
  }
  for (const { square, reach, phase, spring } of arm.springs) {
    const length = Math.sqrt(Math.max(0, square - 2 * reach * Math.cos(swing - phase)))
    // ends that coincide leave no direction to pull in
    if (length > 0) state.springs += (rate * springTension(spring, length) * reach * Math.sin(swing - phase)) / length
    state.form = 2 * state.form + (length > spring.freeLength ? 1 : 0)
  }
  state.frictionDry += arm.friction * Math.abs(rate)
  state.inertia += arm.inertia * rate * rate
  state.inertiaSlope += 2 * arm.inertia * rate * bend
}

/** Axis, arm and tip at a swing, ∂r/∂q of the tip, and all masses' centre. */
export function skewLine(arm: SkewArmModel, swing: number, rate: number) {
  const [c, s] = [Math.cos(swing), Math.sin(swing)]
  const { level, quarter } = arm.tip
  const tipRate: Triple = [
    rate * (c * quarter[0] - s * level[0]),
    rate * (c * quarter[1] - s * level[1]),
    rate * (c * quarter[2] - s * level[2]),
  ]
  const centre = plus(arm.hinge, placeAt(arm.first, c, s), 1 / arm.mass)
  const { frame } = turningPart(arm.axis, swing, arm.hinge, { rate, bend: 0 }, [])
  return { from: arm.hinge, tip: placeAt(arm.tip, c, s), tipRate, mass: arm.mass, centre, spread: massesIn(frame, arm.masses).spread }
}

/** Force of a skew arm's hinge on the frame: weight, springs and what its drive pushes it with, N. */
export function skewReaction(arm: SkewArmModel, swing: number, down: Triple, pushed: Triple): Triple {
  const [c, s] = [Math.cos(swing), Math.sin(swing)]
  let force = plus(pushed, down, arm.mass)
  for (const { from, end, spring } of arm.springs) {
    const pull = plus(from, placeAt(end, c, s), -1)
    const length = size(pull)
    if (length > 0) force = plus(force, pull, springTension(spring, length) / length)
  }
  return force
}
