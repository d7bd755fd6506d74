// Field descriptions of winch, and the faults between them.
import { bandField, type Either, type Fields, type Issue, inconsistent, type OutFields, type SiOf } from "../../solver/index.js"
import type { Winch, WinchInput, WinchLayer } from "./types.js"

export const input: Fields<WinchInput> = {
  pull: { kind: "force", symbol: "F", label: "pull in the line", min: "10 mN", max: 1e6, typical: [20, 300] },
  drumDiameter: { kind: "length", symbol: "D", label: "bare drum", min: "3 mm", max: 5, typical: ["20 mm", "60 mm"] },
  lineDiameter: { kind: "length", symbol: "d", label: "line", min: "0.1 mm", max: "100 mm", typical: ["1 mm", "3 mm"] },
  lineType: { kind: "choice", label: "kind of line", options: { "wire-rope": "wire rope", "fibre-rope": "fibre rope or cord" } },
  drumWidth: {
    kind: "length",
    symbol: "W",
    label: "width between the flanges",
    min: "0.5 mm",
    max: 10,
    typical: ["10 mm", "40 mm"],
    default: null,
  },
  turnsPerLayer: {
    kind: "number",
    symbol: "n_g",
    label: "turns in one layer",
    whole: true,
    min: 1,
    max: 10000,
    typical: [5, 20],
    default: null,
  },
  layerRise: {
    kind: "ratio",
    symbol: "e",
    label: "rise of a layer against the line",
    min: 0.8,
    max: 1,
    typical: [0.866, 1],
    default: 1,
  },
  lineLength: { kind: "length", symbol: "L", label: "line on the drum, wound in", min: "10 mm", max: 500, typical: [2, 6] },
  travel: { kind: "length", symbol: "s", label: "line paid out", min: "1 mm", max: 500, typical: [0.3, 1.5] },
  flangeDiameter: {
    kind: "length",
    symbol: "D_f",
    label: "flanges",
    min: "4 mm",
    max: 10,
    typical: ["150 mm", "250 mm"],
    default: null,
  },
  lineStrength: {
    kind: "force",
    symbol: "F_b",
    label: "breaking force of the line",
    min: 0.1,
    max: 1e7,
    typical: [500, 4000],
    default: null,
  },
  lineFriction: { kind: "number", symbol: "mu", label: "friction of line on drum", min: 0, max: 1, typical: [0.08, 0.2], default: 0.1 },
  efficiency: {
    kind: "ratio",
    symbol: "eta",
    label: "efficiency winding in",
    min: 0.3,
    max: 1,
    typical: [0.85, 0.98],
    default: 0.95,
    unit: "%",
  },
  backwardEfficiency: {
    kind: "ratio",
    symbol: "eta_g",
    label: "efficiency, load pulling out",
    min: 0.05,
    max: 1,
    typical: [0.8, 0.98],
    default: null,
    unit: "%",
  },
  dragTorque: { kind: "moment", symbol: "T_d", label: "drag at the drum", min: 0, max: 1e5, typical: [0, 0.1], default: 0 },
  torque: { kind: "moment", symbol: "T", label: "torque at the drum", min: 1e-4, max: 1e7, typical: [10, 60], default: null },
  speed: {
    kind: "angularSpeed",
    symbol: "omega",
    label: "speed of the drum",
    min: 1e-3,
    max: "10000 rpm",
    typical: ["5 rpm", "60 rpm"],
    default: null,
    unit: "rpm",
  },
  holdingTorque: {
    kind: "moment",
    symbol: "T_c",
    label: "torque that a brake holds at the drum",
    min: 1e-4,
    max: 1e7,
    typical: [1, 30],
    default: null,
  },
}

export const either: readonly Either<"drumWidth" | "turnsPerLayer">[] = [{ exactlyOne: ["drumWidth", "turnsPerLayer"] }]

const layer: OutFields<WinchLayer> = {
  layer: { kind: "number", label: "layer" },
  radius: { kind: "length", label: "radius" },
  raiseTorque: { kind: "moment", label: "torque to wind in" },
  lowerTorque: { kind: "moment", label: "torque to pay out" },
  holdingTorque: { kind: "moment", label: "torque to hold" },
  liftingPull: { kind: "force", label: "pull it winds in" },
  loweringPull: { kind: "force", label: "pull it lets out" },
  lineSpeed: { kind: "speed", label: "speed of the line" },
}

export const output: OutFields<Winch> = {
  transmits: { kind: "text", label: "transmits" },
  turnsPerLayer: { kind: "number", symbol: "n", label: "turns in one layer" },
  outerLayer: { kind: "number", symbol: "N_w", label: "outer layer, wound in" },
  innerLayer: { kind: "number", symbol: "N_p", label: "inner layer, paid out" },
  woundTurns: { kind: "number", symbol: "t_w", label: "turns on the drum, wound in" },
  safetyTurns: { kind: "number", symbol: "t_s", label: "turns left on the drum" },
  drumTurns: { kind: "number", symbol: "t", label: "turns for the travel" },
  woundDiameter: { kind: "length", symbol: "D_w", label: "diameter over the line" },
  capacity: { kind: "length", symbol: "L_c", label: "line that fits" },
  diameterRatio: { kind: "number", symbol: "lambda", label: "drum and line against line" },
  raiseTorque: { kind: "moment", symbol: "T_R", label: "torque to wind in" },
  lowerTorque: { kind: "moment", symbol: "T_L", label: "torque to pay out" },
  requiredHoldingTorque: { kind: "moment", symbol: "T_h", label: "torque to hold" },
  holdingSafetyFactor: { kind: "number", symbol: "S_h", label: "safety factor, holding" },
  liftingPull: bandField("force", "pull at the torque given", {
    symbols: ["F_o", "F_i"],
    labels: ["pull, outer layer", "pull, inner layer"],
  }),
  lineSpeed: bandField("speed", "speed of the line", {
    symbols: ["v_i", "v_o"],
    labels: ["speed of the line, inner layer", "speed of the line, outer layer"],
  }),
  duration: { kind: "time", symbol: "t_m", label: "time for the travel" },
  raisePower: { kind: "power", symbol: "P", label: "power to wind in" },
  loadWork: { kind: "energy", symbol: "E_l", label: "work on the load" },
  raiseWork: { kind: "energy", symbol: "E_R", label: "work to wind in" },
  lowerWork: { kind: "energy", symbol: "E_L", label: "work to pay out" },
  raiseLoss: { kind: "energy", symbol: "Q_R", label: "lost winding in" },
  lowerLoss: { kind: "energy", symbol: "Q_L", label: "lost paying out" },
  bentStrengthShare: { kind: "ratio", symbol: "k_b", label: "strength left on the drum", unit: "%" },
  lineSafetyFactor: { kind: "number", symbol: "S_l", label: "safety factor of the line" },
  stallSafetyFactor: { kind: "number", symbol: "S_s", label: "safety factor of the line, stalled" },
  fixingPull: { kind: "force", symbol: "F_x", label: "pull on the line's fixing" },
  paidOut: { kind: "group", label: "paid out", fields: layer },
  woundIn: { kind: "group", label: "wound in", fields: layer },
  layers: { kind: "list", label: "layers on the way", of: { kind: "group", label: "layer", fields: layer } },
}

export function check(si: SiOf<WinchInput>): Issue[] {
  const { drumDiameter, lineDiameter, drumWidth, flangeDiameter, lineLength, travel } = si
  const faults: Issue[] = []
  if (travel > lineLength)
    faults.push(inconsistent(["travel"], "{travel length}", "at most the {lineLength length} of line on the drum", { travel, lineLength }))
  if (drumWidth !== null && drumWidth < lineDiameter)
    faults.push(
      inconsistent(["drumWidth"], "{drumWidth length}", "at least one line of {lineDiameter length}", { drumWidth, lineDiameter }),
    )
  if (flangeDiameter !== null && flangeDiameter < drumDiameter + 2 * lineDiameter)
    faults.push(
      inconsistent(["flangeDiameter"], "{flangeDiameter length}", "at least the drum and one layer of line, {oneLayer length}", {
        flangeDiameter,
        oneLayer: drumDiameter + 2 * lineDiameter,
      }),
    )
  return faults
}
