import type { Angle, Force, ForcePerLength, Length, Mass } from "../../quantity/index.js"
import type { Fields } from "../../solver/index.js"

/** A point in the wearer's vertical plane: x outward, y up. */
export interface PointInput {
  /** Distance outward. [−20 to 20 m] */
  x: Length
  /** Height. [−20 to 20 m] */
  y: Length
}

/** A pivot on the arm, seen from the hinge. */
export interface MovingPivotInput {
  /** Distance from the hinge. [r; 0.1 mm to 20 m] */
  radius: Length
  /** Angle from the arm. [beta; −572.958° to 572.958°; default 0] */
  angle?: Angle
}

/** A mass carried by the arm. */
export interface HingeWeightInput {
  /** Mass [0 to 200 kg] */
  mass: Mass
  /** Distance of its centre of gravity from the hinge. [0 to 20 m] */
  radius: Length
  /** Angle from the arm to the line hinge–centre of gravity. [−572.958° to 572.958°; default 0] */
  angle?: Angle
}

/** A spring or elastic cord from a fixed point to a point on the arm. */
export interface HingeSpringInput {
  /** Fixed end, in the wearer's vertical plane. [group] */
  fixedPivot: PointInput
  /** Distance of the moving end from the hinge. [r_s; 0 to 20 m] */
  radius: Length
  /** Angle from the arm to the line hinge–moving end. [a_s; −572.958° to 572.958°; default 0] */
  angle?: Angle
  /** Stiffness [k_s; 0 to 10000 N/mm] */
  stiffness: ForcePerLength
  /** Length between its ends when unloaded. [l_s; 0 to 20 m] */
  freeLength: Length
  /** Tension at which it begins to stretch: the initial tension of a close-wound extension spring. [F_s; 0 to 100 kN; default 0] */
  preload?: Force
  /** Whether it only pulls and goes slack (cord, extension spring), or also pushes. [yes or no; default yes] */
  pullsOnly?: boolean
}

/** Describes a point; `symbol` names its coordinates in the formulae (x_h and y_h for `h`). */
export const pointField = (label: string, symbol: string): { kind: "group"; label: string; fields: Fields<PointInput> } => ({
  kind: "group",
  label,
  fields: {
    x: { kind: "length", symbol: `x_${symbol}`, label: `${label}, outward`, min: -20, max: 20, typical: ["-150 mm", "150 mm"] },
    y: { kind: "length", symbol: `y_${symbol}`, label: `${label}, up`, min: -20, max: 20, typical: ["-300 mm", "0 mm"] },
  },
})

/** Describes a pivot on the arm: r and β in the formulae. */
export const movingPivotField = (
  label: string,
  radius: [`${number} mm`, `${number} mm`],
  angle: [`${number} deg`, `${number} deg`],
): { kind: "group"; label: string; fields: Fields<MovingPivotInput> } => ({
  kind: "group",
  label,
  fields: {
    radius: { kind: "length", symbol: "r", label: `${label} from the hinge`, min: "0.1 mm", max: 20, typical: radius },
    angle: { kind: "angle", symbol: "beta", label: `angle from the arm to the ${label}`, min: -10, max: 10, typical: angle, default: 0 },
  },
})

/** Describes one mass on the arm. */
export const weightField: { kind: "group"; label: string; fields: Fields<HingeWeightInput> } = {
  kind: "group",
  label: "mass",
  fields: {
    mass: { kind: "mass", symbol: "m_w", label: "mass", min: 0, max: 200, typical: ["50 g", "3 kg"] },
    radius: { kind: "length", symbol: "r_w", label: "distance from the hinge", min: 0, max: 20, typical: ["50 mm", "1 m"] },
    angle: { kind: "angle", symbol: "a_w", label: "angle from the arm", min: -10, max: 10, typical: ["-20 deg", "20 deg"], default: 0 },
  },
}

/** Describes one spring. */
export const springField: { kind: "group"; label: string; fields: Fields<HingeSpringInput> } = {
  kind: "group",
  label: "spring",
  fields: {
    fixedPivot: pointField("fixed end", "s"),
    radius: { kind: "length", symbol: "r_s", label: "moving end from the hinge", min: 0, max: 20, typical: ["20 mm", "150 mm"] },
    angle: {
      kind: "angle",
      symbol: "a_s",
      label: "angle from the arm to the moving end",
      min: -10,
      max: 10,
      typical: ["-45 deg", "45 deg"],
      default: 0,
    },
    stiffness: { kind: "forcePerLength", symbol: "k_s", label: "stiffness", min: 0, max: 1e7, typical: ["20 N/m", "1000 N/m"] },
    freeLength: { kind: "length", symbol: "l_s", label: "free length", min: 0, max: 20, typical: ["20 mm", "150 mm"] },
    preload: { kind: "force", symbol: "F_s", label: "initial tension", min: 0, max: 1e5, typical: ["0 N", "10 N"], default: 0 },
    pullsOnly: { kind: "flag", label: "only pulls", default: true },
  },
}

/** Lean of the frame, and how far it may lean from there to either side. */
export const tiltFields = {
  frameTilt: {
    kind: "angle",
    symbol: "lambda",
    label: "lean of the wearer",
    min: -3.2,
    max: 3.2,
    typical: ["-15 deg", "15 deg"],
    default: 0,
  },
  tiltEitherWay: {
    kind: "angle",
    symbol: "Lambda",
    label: "lean either way",
    min: 0,
    max: 1.6,
    typical: ["0 deg", "20 deg"],
    default: 0,
  },
} as const satisfies Fields<{ frameTilt?: Angle; tiltEitherWay?: Angle }>

/** Weight while walking, and a gust on the arm. */
export const gustFields = {
  loadFactor: {
    kind: "number",
    symbol: "k_w",
    label: "weight while walking over weight at rest",
    min: 1,
    max: 5,
    typical: [1, 1.9],
    default: 1,
  },
  gustForce: { kind: "force", symbol: "F_g", label: "gust square to the arm", min: 0, max: 1e5, typical: ["0 N", "20 N"], default: 0 },
  gustRadius: { kind: "length", symbol: "r_g", label: "gust from the hinge", min: 0, max: 20, typical: ["0.2 m", "1 m"], default: 0 },
} as const satisfies Fields<{ loadFactor?: number; gustForce?: Force; gustRadius?: Length }>
