import type { Length } from "../../../quantity/index.js"
import type { Fields } from "../../../solver/index.js"
import { gustFields, pointField, springField, tiltFields, weightField } from "../fields.js"
import type { PlaceActuatorInput } from "./types.js"

/** Describes a rectangle; `x` and `y` are the usual ranges of its edges, lower then upper. */
const regionField = (
  label: string,
  symbol: string,
  x: readonly [Length, Length, Length, Length],
  y: readonly [Length, Length, Length, Length],
) => ({
  kind: "group" as const,
  label,
  fields: {
    left: {
      kind: "length" as const,
      symbol: `x_${symbol}1`,
      label: `${label}, minimum x`,
      min: -20,
      max: 20,
      typical: [x[0], x[1]] as const,
    },
    right: {
      kind: "length" as const,
      symbol: `x_${symbol}2`,
      label: `${label}, maximum x`,
      min: -20,
      max: 20,
      typical: [x[2], x[3]] as const,
    },
    bottom: {
      kind: "length" as const,
      symbol: `y_${symbol}1`,
      label: `${label}, minimum y`,
      min: -20,
      max: 20,
      typical: [y[0], y[1]] as const,
    },
    top: {
      kind: "length" as const,
      symbol: `y_${symbol}2`,
      label: `${label}, maximum y`,
      min: -20,
      max: 20,
      typical: [y[2], y[3]] as const,
    },
  },
})

/** Describes one mass on the arm at other times. */
const otherWeightField = {
  ...weightField,
  fields: {
    mass: { ...weightField.fields.mass, symbol: "m_o" },
    radius: { ...weightField.fields.radius, symbol: "r_o" },
    angle: { ...weightField.fields.angle, symbol: "a_o" },
  },
} as typeof weightField

const cornerField = pointField("corner", "k")

/** Input of a placement. */
export const placeFields = (): Fields<PlaceActuatorInput> => ({
  hinge: { ...pointField("hinge", "h"), default: { x: 0, y: 0 } },
  retractedLength: { kind: "length", symbol: "L_r", label: "retracted length", min: "1 mm", max: 20, typical: ["150 mm", "180 mm"] },
  stroke: { kind: "length", symbol: "S", label: "stroke", min: "1 mm", max: 10, typical: ["40 mm", "60 mm"] },
  ratedForce: { kind: "force", symbol: "F_r", label: "force rating", min: "1 mN", max: 1e6, typical: ["200 N", "1000 N"] },
  masses: { kind: "list", label: "masses on the arm", of: weightField, min: 1, max: 50 },
  otherMasses: { kind: "list", label: "masses on the arm at other times", of: otherWeightField, min: 1, max: 50, default: null },
  springs: { kind: "list", label: "springs", of: springField, min: 1, max: 20, default: null },
  ...gustFields,
  ...tiltFields,
  pivotTolerance: {
    kind: "length",
    symbol: "d_p",
    label: "tolerance of the pivots",
    min: 0,
    max: "50 mm",
    typical: ["0 mm", "1 mm"],
    default: 0,
  },
  lengthTolerance: {
    kind: "length",
    symbol: "d_l",
    label: "tolerance of the actuator's lengths",
    min: 0,
    max: "50 mm",
    typical: ["0 mm", "1 mm"],
    default: 0,
  },
  keepOut: {
    kind: "list",
    label: "parts to keep clear of",
    of: {
      kind: "group",
      label: "part",
      fields: { corners: { kind: "list", label: "corners", of: cornerField, min: 3, max: 50 } },
    },
    min: 1,
    max: 20,
    default: null,
  },
  actuatorWidth: {
    kind: "length",
    symbol: "w_a",
    label: "width of the actuator",
    min: 0,
    max: 1,
    typical: ["0 mm", "30 mm"],
    default: 0,
  },
  fixedPivotRegion: regionField(
    "region of the fixed pivot",
    "B",
    ["-120 mm", "-80 mm", "10 mm", "40 mm"],
    ["-300 mm", "-250 mm", "-60 mm", "-40 mm"],
  ),
  movingPivotRegion: regionField(
    "region of the moving pivot",
    "P",
    ["0 mm", "20 mm", "120 mm", "160 mm"],
    ["-70 mm", "-50 mm", "20 mm", "40 mm"],
  ),
  lowAngle: {
    kind: "group",
    label: "lower end of the swing",
    fields: {
      from: { kind: "angle", symbol: "t_1", label: "minimum", min: -7, max: 7, typical: ["-80 deg", "-70 deg"] },
      to: { kind: "angle", symbol: "t_2", label: "maximum", min: -7, max: 7, typical: ["-65 deg", "-55 deg"] },
    },
  },
  swing: { kind: "angle", symbol: "sigma_w", label: "swing wanted", min: "0.1 deg", max: 3.1, typical: ["40 deg", "80 deg"] },
  maxSwing: {
    kind: "angle",
    symbol: "sigma_m",
    label: "swing allowed",
    min: "0.1 deg",
    max: 3.2,
    typical: ["90 deg", "120 deg"],
    default: null,
  },
  objective: {
    kind: "choice",
    label: "search for",
    options: { "min-force": "the minimum peak force", "max-swing": "the maximum swing within the force rating" },
    default: "min-force",
  },
  raisedBy: {
    kind: "choice",
    label: "arm is raised by",
    options: { either: "either way", extending: "extending", retracting: "retracting" },
    default: "either",
  },
  minLever: {
    kind: "length",
    symbol: "l_1",
    label: "minimum lever arm allowed",
    min: 0,
    max: 10,
    typical: ["0 mm", "15 mm"],
    default: 0,
  },
  maxLever: {
    kind: "length",
    symbol: "l_2",
    label: "maximum lever arm allowed",
    min: "0.1 mm",
    max: 10,
    typical: ["80 mm", "150 mm"],
    default: null,
  },
  minTransmissionAngle: {
    kind: "angle",
    symbol: "tau_w",
    label: "minimum transmission angle allowed",
    min: 0,
    max: 1.5,
    typical: ["0 deg", "25 deg"],
    default: 0,
  },
  minDeadPointMargin: {
    kind: "length",
    symbol: "c_w",
    label: "length to keep from dead points",
    min: 0,
    max: 1,
    typical: ["0 mm", "3 mm"],
    default: "1 mm",
  },
  gapLimit: {
    kind: "ratio",
    symbol: "epsilon",
    label: "gap to stop at",
    min: "0.01 %",
    max: "50 %",
    typical: ["1 %", "5 %"],
    default: "1 %",
  },
  maxBoxes: {
    kind: "number",
    symbol: "n_b",
    label: "boxes at most",
    whole: true,
    min: 10,
    max: 200000,
    typical: [2000, 20000],
    default: 20000,
  },
  frontPoints: { kind: "number", symbol: "n_f", label: "points of the front", whole: true, min: 0, max: 20, typical: [0, 5], default: 5 },
})
