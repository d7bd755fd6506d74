// Field descriptions of counterbalance.
import type { Fields, OutFields } from "../../../solver/index.js"
import { movingPivotField, pointField, tiltFields, weightField } from "../fields.js"
import type { Counterbalance, CounterbalanceInput } from "./types.js"

const stiffness = { kind: "forcePerLength", symbol: "k_g", label: "stiffness", min: 0, max: 1e7, typical: ["100 N/m", "2000 N/m"] } as const
const freeLength = { kind: "length", symbol: "x_0", label: "free length", min: 0, max: 20, typical: ["0 mm", "60 mm"], default: 0 } as const

const elementField: Fields<CounterbalanceInput>["element"] = {
  kind: "variant",
  label: "element",
  of: {
    spring: {
      label: "an extension spring",
      fields: {
        stiffness: { ...stiffness, default: null },
        coil: {
          kind: "group",
          label: "helical spring",
          fields: {
            wire: { kind: "length", symbol: "d_w", label: "wire diameter", min: "0.01 mm", max: 0.1, typical: ["0.8 mm", "2 mm"] },
            meanDiameter: { kind: "length", symbol: "D_m", label: "mean coil diameter", min: "0.1 mm", max: 1, typical: ["8 mm", "16 mm"] },
            activeCoils: { kind: "number", symbol: "N_a", label: "active coils", min: 0.1, max: 10000, typical: [10, 60] },
            shearModulus: {
              kind: "pressure",
              symbol: "G",
              label: "shear modulus",
              min: 1e6,
              max: 1e12,
              typical: ["69 GPa", "80 GPa"],
              default: "79.3 GPa",
            },
          },
          default: null,
        },
        freeLength,
        preload: { kind: "force", symbol: "F_0", label: "initial tension", min: 0, max: 1e5, typical: ["0 N", "10 N"], default: 0 },
      },
      either: [{ exactlyOne: ["stiffness", "coil"] }],
    },
    cord: { label: "an elastic cord", fields: { stiffness, freeLength } },
    "gas-strut": {
      label: "a gas strut",
      fields: {
        extendedLength: { kind: "length", symbol: "x_1", label: "extended length", min: "1 mm", max: 5, typical: ["150 mm", "400 mm"] },
        stroke: { kind: "length", symbol: "s_1", label: "stroke", min: "0.1 mm", max: 5, typical: ["50 mm", "150 mm"] },
        force: { kind: "force", symbol: "F_1", label: "force extended", min: 0, max: 1e5, typical: ["50 N", "300 N"] },
        progression: { kind: "ratio", symbol: "p_1", label: "progression", min: 1, max: 3, typical: [1.2, 1.5], default: 1.3 },
      },
    },
  },
}

export const input: Fields<CounterbalanceInput> = {
  element: elementField,
  hinge: { ...pointField("hinge", "h"), default: { x: 0, y: 0 } },
  fixedPivot: pointField("fixed end", "b"),
  movingPivot: movingPivotField("moving end", ["30 mm", "150 mm"], ["-45 deg", "45 deg"]),
  masses: { kind: "list", label: "masses on the arm", of: weightField, min: 1, max: 50 },
  armAngle: {
    kind: "group",
    label: "arm angle",
    fields: {
      low: { kind: "angle", symbol: "theta_1", label: "arm angle low", min: -7, max: 7, typical: ["-80 deg", "-40 deg"] },
      high: { kind: "angle", symbol: "theta_2", label: "arm angle high", min: -7, max: 7, typical: ["20 deg", "80 deg"] },
    },
  },
  ...tiltFields,
}

export const output: OutFields<Counterbalance> = {
  stiffness: { kind: "forcePerLength", symbol: "k", label: "stiffness" },
  idealStiffness: { kind: "forcePerLength", symbol: "k_i", label: "ideal zero-free-length stiffness" },
  idealDeviation: { kind: "angle", symbol: "gamma", label: "fixed end off the ideal" },
  maxGravityMoment: { kind: "moment", symbol: "M_u", label: "largest moment of the weights" },
  maxUnbalancedMoment: { kind: "moment", symbol: "M_a", label: "largest unbalanced moment" },
  maxUnbalancedAngle: { kind: "angle", symbol: "theta_r", label: "arm angle of the largest unbalanced moment" },
  unbalancedMoment: { kind: "moment", symbol: "M_r", label: "unbalanced moment at that arm angle" },
  offloadShare: { kind: "ratio", symbol: "eta", label: "share of the moment balanced", unit: "%" },
  maxTiltedUnbalancedMoment: { kind: "moment", symbol: "M_l", label: "largest unbalanced moment when leaning" },
  maxForce: { kind: "force", symbol: "T_max", label: "maximum force" },
  storedEnergy: { kind: "energy", symbol: "W", label: "stored energy" },
  poses: {
    kind: "list",
    label: "poses over the swing",
    of: {
      kind: "group",
      label: "pose",
      fields: {
        angle: { kind: "angle", label: "arm angle" },
        length: { kind: "length", label: "length" },
        force: { kind: "force", label: "pull" },
        gravityMoment: { kind: "moment", label: "moment of the weights" },
        balanceMoment: { kind: "moment", label: "moment of the element" },
        unbalancedMoment: { kind: "moment", label: "unbalanced moment" },
      },
    },
  },
}
