// What planarLinkage takes besides the mechanism.
import type { Acceleration, Angle, Length, Mass, MomentOfInertia } from "../../quantity/index.js"
import type { Fields, SiOf } from "../../solver/index.js"
import type { MechanismInput } from "./data.js"
import { mechanismFields } from "./fields.js"

/** A mass on a bar: its own, or something it carries. */
export interface LinkageMass {
  /** Ends of the bar that carries it. [text of 1 to 100 characters] */
  readonly from: string
  /** Other end of that bar. [text of 1 to 100 characters] */
  readonly to: string
  /** Mass. [m; 0 to 1000 kg] */
  readonly mass: Mass
  /** Distance of its centre along the bar from `from`; the middle where left out. [u_m; −100 to 100 m; optional] */
  readonly along?: Length | null
  /** Distance of its centre to the left of the bar. [w_m; −100 to 100 m; default 0] */
  readonly across?: Length
  /**
   * Moment of inertia about its own centre; that of a slender bar from pin to pin where left out, 0 for a small weight.
   * [I_m; 0 to 1000000 kg m²; optional]
   */
  readonly inertia?: MomentOfInertia | null
}

/** Input of {@link planarLinkage}. */
export interface PlanarLinkageInput extends MechanismInput {
  /** Masses of bars and of what they carry; their weight and inertia load every pose. [list of 0 to 200; default none] */
  masses?: readonly LinkageMass[]
  /** Gravity in the plane of the mechanism: 0 for one that lies flat. [g_p; 0 to 20 m/s²; default 9.80665 m/s²] */
  gravity?: Acceleration
  /** Lean of the frame; positive turns it counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  frameTilt?: Angle
  /** Coefficient of friction at the pins. [mu; 0 to 1; default 0] */
  pinFriction?: number
  /** Diameter of the pins. [d_p; 0 to 200 mm; default 0] */
  pinDiameter?: Length
  /** Settings of the motion that are listed between start and end; with 0 the end alone is answered. [n; whole 0 to 720; default 0] */
  steps?: number
  /** Point whose path is wanted. [text of 1 to 100 characters; optional] */
  trace?: string | null
}

/** The input in SI. */
export type Si = SiOf<PlanarLinkageInput>

export const planarFields = (): Fields<PlanarLinkageInput> => ({
  ...mechanismFields,
  masses: {
    kind: "list",
    label: "masses of the bars",
    min: 0,
    max: 200,
    default: [],
    of: {
      kind: "group",
      label: "mass",
      fields: {
        from: { kind: "text", label: "from point", min: 1, max: 100 },
        to: { kind: "text", label: "to point", min: 1, max: 100 },
        mass: { kind: "mass", symbol: "m", label: "mass", min: 0, max: 1000, typical: ["20 g", "1 kg"] },
        along: { kind: "length", symbol: "u_m", label: "centre along the bar", min: "-100 m", max: "100 m", default: null },
        across: { kind: "length", symbol: "w_m", label: "centre to the left of the bar", min: "-100 m", max: "100 m", default: 0 },
        inertia: { kind: "momentOfInertia", symbol: "I_m", label: "inertia about its centre", min: 0, max: 1e6, default: null },
      },
    },
  },
  gravity: { kind: "acceleration", symbol: "g_p", label: "gravity in the plane", min: 0, max: 20, typical: [0, 9.80665], default: 9.80665 },
  frameTilt: {
    kind: "angle",
    symbol: "lambda",
    label: "lean of the frame",
    min: -3.2,
    max: 3.2,
    typical: ["-30 deg", "30 deg"],
    default: 0,
  },
  pinFriction: {
    kind: "number",
    symbol: "mu",
    label: "coefficient of friction at the pins",
    min: 0,
    max: 1,
    typical: [0, 0.3],
    default: 0,
  },
  pinDiameter: { kind: "length", symbol: "d_p", label: "pin diameter", min: 0, max: 0.2, typical: ["0 mm", "6 mm"], default: 0 },
  steps: {
    kind: "number",
    symbol: "n",
    label: "steps listed of the motion",
    whole: true,
    min: 0,
    max: 720,
    typical: [0, 24],
    default: 0,
  },
  trace: { kind: "text", label: "point to trace", min: 1, max: 100, default: null },
})
