// An arm that turns about a hinge: what it carries, described once for every mechanism that has arms.
import { type HingeSpring, springAt } from "../../linkage/index.js"
import type { Angle, Area, ForcePerLength, Length, Mass, Moment } from "../../quantity/index.js"
import type { Fields, GroupField, ListField, SiOf } from "../../solver/index.js"
import { addBody, bodyOf, massCentre, type PlaneBody, weightMoment } from "./body.js"
import { cordFields, cordOf } from "./cord.js"
import type { MechanismState, Triple } from "./mechanism.js"

/** A point in the plane of a mechanism: x outward, y up. */
export interface PlanePoint {
  /**
   * Hinge, outward or spring's fixed end, outward or fixed pivot, outward or input pivot, outward or servo shaft,
   * outward or crank pivot, outward or base of the array, outward or pivot of the driven vane, outward or first joint,
   * outward [−5 to 5 m]
   */
  x: Length
  /**
   * Hinge, upward or spring's fixed end, upward or fixed pivot, upward or input pivot, upward or servo shaft, upward or
   * crank pivot, upward or base of the array, upward or pivot of the driven vane, upward or first joint, upward [−5 to
   * 5 m]
   */
  y: Length
}

/** Where a rod or link takes hold of an arm. */
export interface MovingPivot {
  /** Moving pivot from the hinge [r_p; 1 mm to 2 m] */
  radius: Length
  /** Moving pivot from the arm [phi_p; −360° to 360°] */
  angle: Angle
}

/** A mass on an arm. */
export interface MassOnArm {
  /** Part [text of 1 to 100 characters] */
  name: string
  /** Mass [0.1 g to 50 kg] */
  mass: Mass
  /**
   * Distance from the hinge or distance from the input pivot or distance from the input pin or distance from the crank
   * pivot or distance from its pivot [r_i; 0 to 5 m]
   */
  radius: Length
  /** Angle from the part's own line [phi_i; −360° to 360°; default 0] */
  angle?: Angle
}

/** A flat panel along an arm, square to the plane in which it turns. */
export interface PanelOnArm {
  /** Area [A_p; 0 to 4 m²] */
  area: Area
  /** Distance of its centre from the hinge. [r_A; 0 to 5 m] */
  radius: Length
}

/** An extension spring or elastic cord between the frame and an arm. */
export interface SpringOnArm {
  /** Stiffness [k_s; 0.01 N/m to 1000 N/mm] */
  stiffness: ForcePerLength
  /** Free length [L_s; 0 to 5 m] */
  freeLength: Length
  /** Spring's fixed end [group] */
  fixedPivot: PlanePoint
  /** Spring's arm end from the hinge [r_s; 1 mm to 5 m] */
  radius: Length
  /** Spring's arm end from the arm [phi_s; −360° to 360°; default 0] */
  angle?: Angle
}

/** An arm on a hinge. */
export interface Arm {
  /** Place of the hinge in the mechanism's own frame. [group; optional, with a default of its own] */
  hinge?: PlanePoint
  /** How far its outline reaches from the hinge: what must pass doors, and what strikes. [l_a; 1 mm to 5 m] */
  length: Length
  /** Masses on the arm [list of 1 to 60] */
  masses: readonly MassOnArm[]
  /** Panels on the arm [list of 0 to 20; default none] */
  panels?: readonly PanelOnArm[]
  /** Helper springs [list of 0 to 10; default none] */
  springs?: readonly SpringOnArm[]
  /** Friction moment of the hinge, whichever way it turns. [M_f; 0 to 100 N m; default 0] */
  hingeFriction?: Moment
}

/** A described point of a plane. */
export const planePoint = (label: string, x: string, y: string): GroupField<PlanePoint> => ({
  kind: "group",
  label,
  fields: {
    x: { kind: "length", symbol: x, label: `${label}, outward`, min: -5, max: 5, typical: ["-80 mm", "80 mm"] },
    y: { kind: "length", symbol: y, label: `${label}, upward`, min: -5, max: 5, typical: ["-250 mm", "-50 mm"] },
  },
})

/** A described list of masses on a link. */
export const massList = (label: string, symbol: string, distance: string, min = 0): ListField<MassOnArm> => ({
  kind: "list",
  label,
  min,
  max: 60,
  of: {
    kind: "group",
    label: "mass",
    fields: {
      name: { kind: "text", label: "part", min: 1, max: 100 },
      mass: { kind: "mass", symbol, label: "mass", min: "0.1 g", max: 50, typical: ["50 g", "1 kg"] },
      radius: { kind: "length", symbol: "r_i", label: distance, min: 0, max: 5, typical: ["50 mm", "0.9 m"] },
      angle: {
        kind: "angle",
        symbol: "phi_i",
        label: "angle from the part's own line",
        min: "-360 deg",
        max: "360 deg",
        typical: ["-20 deg", "20 deg"],
        default: 0,
      },
    },
  },
})

/** Where a rod or link takes hold of an arm. */
export const pivotOnArm: GroupField<MovingPivot> = {
  kind: "group",
  label: "moving pivot",
  fields: {
    radius: { kind: "length", symbol: "r_p", label: "moving pivot from the hinge", min: "1 mm", max: 2, typical: ["25 mm", "0.2 m"] },
    angle: {
      kind: "angle",
      symbol: "phi_p",
      label: "moving pivot from the arm",
      min: "-360 deg",
      max: "360 deg",
      typical: ["-40 deg", "40 deg"],
    },
  },
}

/** Descriptions of an arm's fields. */
export const armFields: Fields<Arm> = {
  hinge: { ...planePoint("hinge", "x_h", "y_h"), default: { x: 0, y: 0 } },
  length: { kind: "length", symbol: "l_a", label: "length of the arm", min: "1 mm", max: 5, typical: ["0.2 m", "1.2 m"] },
  masses: massList("masses on the arm", "m_i", "distance from the hinge", 1),
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
        radius: {
          kind: "length",
          symbol: "r_A",
          label: "distance of its centre from the hinge",
          min: 0,
          max: 5,
          typical: ["0.1 m", "0.8 m"],
        },
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
        fixedPivot: planePoint("spring's fixed end", "x_s", "y_s"),
        radius: {
          kind: "length",
          symbol: "r_s",
          label: "spring's arm end from the hinge",
          min: "1 mm",
          max: 5,
          typical: ["30 mm", "0.3 m"],
        },
        angle: {
          kind: "angle",
          symbol: "phi_s",
          label: "spring's arm end from the arm",
          min: "-360 deg",
          max: "360 deg",
          typical: ["-30 deg", "30 deg"],
          default: 0,
        },
      },
    },
  },
  hingeFriction: { kind: "moment", symbol: "M_f", label: "hinge friction", min: 0, max: 100, typical: [0, "0.3 N m"], default: 0 },
}

/** An arm ready to be asked: a body about its hinge. */
export interface ArmModel extends PlaneBody {
  readonly hinge: { readonly x: number; readonly y: number }
  readonly length: number
  /** Σ A·r of its panels, m³. */
  readonly panel: number
  readonly friction: number
  /** Steady moment against a rising angle, N·m. */
  readonly steady: number
  readonly springs: readonly HingeSpring[]
}

/** An arm from its document part. */
export function armOf(si: SiOf<Arm>): ArmModel {
  let panel = 0
  for (const p of si.panels) panel += p.area * p.radius
  return {
    ...bodyOf(si.masses),
    hinge: si.hinge,
    length: si.length,
    panel,
    friction: si.hingeFriction,
    steady: 0,
    springs: si.springs.map(cordOf),
  }
}

/**
 * Adds to a state what an arm asks that stands at an angle (rad) and turns by `rate` (rad for 1 of q), `bend` the rate's own
 * slope.
 */
export function addArm(state: MechanismState, arm: ArmModel, angle: number, rate: number, bend: number): void {
  addBody(state, arm, angle, 0, 0, 0, 0, rate, bend)
  state.windX += rate * arm.panel * Math.sin(angle)
  state.springs += rate * arm.steady
  state.windY -= rate * arm.panel * Math.cos(angle)
  for (const spring of arm.springs) {
    const { moment, length } = springAt(arm.hinge, spring, angle)
    state.springs -= rate * moment
    state.form = 2 * state.form + (length > spring.freeLength ? 1 : 0)
  }
  state.frictionDry += arm.friction * Math.abs(rate)
}

/** Moment about its hinge of an arm's weight, springs and steady pull, counter-clockwise. */
export function armMoment(arm: ArmModel, angle: number, down: Triple): number {
  let moment = weightMoment(arm, angle, down) - arm.steady
  for (const spring of arm.springs) moment += springAt(arm.hinge, spring, angle).moment
  return moment
}

/** Outline of an arm at an angle, and its tip with ∂r/∂q. */
export function armLine(arm: ArmModel, angle: number, rate: number) {
  const { x, y } = arm.hinge
  const [dx, dy] = [arm.length * Math.cos(angle), arm.length * Math.sin(angle)]
  const from: Triple = [x, y, 0]
  const tip: Triple = [x + dx, y + dy, 0]
  const tipRate: Triple = [-dy * rate, dx * rate, 0]
  return { from, tip, tipRate, ...massCentre([{ body: arm, x, y, angle }]) }
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
