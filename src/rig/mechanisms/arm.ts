// An arm that turns about a hinge: what it carries, described once for every mechanism that has arms.
import { type HingeSpring, springAt } from "../../linkage/index.js"
import type { Angle, Area, ForcePerLength, Length, Mass, Moment } from "../../quantity/index.js"
import type { Fields, GroupField, SiOf } from "../../solver/index.js"
import type { MechanismState, Triple } from "./mechanism.js"

/** A point in the plane of a mechanism: x outward, y up. */
export interface PlanePoint {
  x: Length
  y: Length
}

/** A mass on an arm. */
export interface MassOnArm {
  name: string
  mass: Mass
  radius: Length
  angle?: Angle
}

/** A flat panel along an arm, square to the plane in which it turns. */
export interface PanelOnArm {
  area: Area
  /** Distance of its centre from the hinge. */
  radius: Length
}

/** An extension spring or elastic cord between the frame and an arm. */
export interface SpringOnArm {
  stiffness: ForcePerLength
  freeLength: Length
  fixedPivot: PlanePoint
  radius: Length
  angle?: Angle
}

/** An arm on a hinge. */
export interface Arm {
  /** Place of the hinge in the mechanism's own frame. */
  hinge?: PlanePoint
  /** How far its outline reaches from the hinge: what must pass doors, and what strikes. */
  length: Length
  masses: readonly MassOnArm[]
  panels?: readonly PanelOnArm[]
  springs?: readonly SpringOnArm[]
  /** Friction moment of the hinge, whichever way it turns. */
  hingeFriction?: Moment
}

/** A described point of a plane. */
export const planePoint = (label: string, x: string, y: string): GroupField<PlanePoint> => ({
  kind: "group",
  label,
  fields: {
    x: { kind: "length", symbol: x, label: `${label}, outward`, min: -5, max: 5 },
    y: { kind: "length", symbol: y, label: `${label}, upward`, min: -5, max: 5 },
  },
})

/** Descriptions of an arm's fields. */
export const armFields: Fields<Arm> = {
  hinge: { ...planePoint("hinge", "x_h", "y_h"), default: { x: 0, y: 0 } },
  length: { kind: "length", symbol: "l_a", label: "length of the arm", min: "1 mm", max: 5 },
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
        mass: { kind: "mass", symbol: "m_i", label: "mass", min: "0.1 g", max: 50 },
        radius: { kind: "length", symbol: "r_i", label: "distance from the hinge", min: 0, max: 5 },
        angle: { kind: "angle", symbol: "phi_i", label: "angle from the arm", min: "-360 deg", max: "360 deg", default: 0 },
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
        area: { kind: "area", symbol: "A_p", label: "area", min: 0, max: 4 },
        radius: { kind: "length", symbol: "r_A", label: "distance of its centre from the hinge", min: 0, max: 5 },
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
        stiffness: { kind: "forcePerLength", symbol: "k_s", label: "stiffness", min: 0.01, max: 1e6 },
        freeLength: { kind: "length", symbol: "L_s", label: "free length", min: 0, max: 5 },
        fixedPivot: planePoint("spring's fixed end", "x_s", "y_s"),
        radius: { kind: "length", symbol: "r_s", label: "spring's arm end from the hinge", min: "1 mm", max: 5 },
        angle: { kind: "angle", symbol: "phi_s", label: "spring's arm end from the arm", min: "-360 deg", max: "360 deg", default: 0 },
      },
    },
  },
  hingeFriction: { kind: "moment", symbol: "M_f", label: "hinge friction", min: 0, max: 100, default: 0 },
}

/** An arm ready to be asked. */
export interface ArmModel {
  readonly hinge: { readonly x: number; readonly y: number }
  readonly length: number
  /** Mass, first moments along and across the arm, kg and kg·m, and inertia about the hinge, kg·m². */
  readonly mass: number
  readonly along: number
  readonly across: number
  readonly inertia: number
  /** Σ A·r of its panels, m³. */
  readonly panel: number
  readonly friction: number
  readonly springs: readonly HingeSpring[]
}

/** An arm from its document part. */
export function armOf(si: SiOf<Arm>): ArmModel {
  let [mass, along, across, inertia, panel] = [0, 0, 0, 0, 0]
  for (const m of si.masses) {
    mass += m.mass
    along += m.mass * m.radius * Math.cos(m.angle)
    across += m.mass * m.radius * Math.sin(m.angle)
    inertia += m.mass * m.radius ** 2
  }
  for (const p of si.panels) panel += p.area * p.radius
  return {
    hinge: si.hinge,
    length: si.length,
    mass,
    along,
    across,
    inertia,
    panel,
    friction: si.hingeFriction,
    springs: si.springs.map((s) => ({ ...s, preload: 0, pullsOnly: true })),
  }
}

/**
 * Adds to a state what an arm asks that stands at an angle (rad) and turns by `rate` (rad for 1 of q), `bend` the rate's own
 * slope.
 */
export function addArm(state: MechanismState, arm: ArmModel, angle: number, rate: number, bend: number): void {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  // ∂r/∂θ of the mass centre, times the mass
  state.massX += rate * -(arm.along * s + arm.across * c)
  state.massY += rate * (arm.along * c - arm.across * s)
  state.windX += rate * arm.panel * s
  state.windY -= rate * arm.panel * c
  for (const spring of arm.springs) {
    const { moment, length } = springAt(arm.hinge, spring, angle)
    state.springs -= rate * moment
    state.form = 2 * state.form + (length > spring.freeLength ? 1 : 0)
  }
  state.frictionDry += arm.friction * Math.abs(rate)
  state.inertia += arm.inertia * rate * rate
  state.inertiaSlope += 2 * arm.inertia * rate * bend
}

/** Outline of an arm at an angle, and its tip with ∂r/∂q. */
export function armLine(arm: ArmModel, angle: number, rate: number) {
  const { x, y } = arm.hinge
  const [dx, dy] = [arm.length * Math.cos(angle), arm.length * Math.sin(angle)]
  const from: Triple = [x, y, 0]
  const tip: Triple = [x + dx, y + dy, 0]
  const tipRate: Triple = [-dy * rate, dx * rate, 0]
  return { from, tip, tipRate }
}

/** Force of an arm's hinge on the frame: its weight and springs, and what its drive pushes it with, N. */
export function hingeReaction(arm: ArmModel, angle: number, down: Triple, pushed: Triple): Triple {
  let [fx, fy, fz] = [arm.mass * down[0] + pushed[0], arm.mass * down[1] + pushed[1], arm.mass * down[2] + pushed[2]]
  for (const spring of arm.springs) {
    const pull = springAt(arm.hinge, spring, angle)
    fx += pull.x
    fy += pull.y
  }
  return [fx, fy, fz]
}
