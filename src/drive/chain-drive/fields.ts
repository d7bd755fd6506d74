// Field descriptions of chainDrive, and the fault between its sprockets and shafts.
import { type Fields, type Issue, inconsistent, type OutFields, type SiOf } from "../../solver/index.js"
import { tipDiameter } from "./kernel.js"
import type { ChainDrive, ChainDriveInput } from "./types.js"

const teeth = (symbol: string, label: string) =>
  ({ kind: "number", symbol, label, whole: true, min: 6, max: 300, typical: [15, 45] }) as const

export const input: Fields<ChainDriveInput> = {
  pitch: { kind: "length", symbol: "p", label: "pitch", min: "2 mm", max: "150 mm", typical: ["4 mm", "9.525 mm"] },
  drivingTeeth: teeth("z_1", "teeth of the driving sprocket"),
  drivenTeeth: teeth("z_2", "teeth of the driven sprocket"),
  centreDistance: {
    kind: "length",
    symbol: "C",
    label: "distance between the shafts",
    min: "10 mm",
    max: 50,
    typical: ["180 mm", "500 mm"],
  },
  torque: { kind: "moment", symbol: "T", label: "torque at the driven shaft", min: -1e6, max: 1e6, typical: [-5, 10] },
  inputSpeed: {
    kind: "angularSpeed",
    symbol: "omega_1",
    label: "speed of the driving shaft",
    min: 0,
    max: "10000 rpm",
    typical: ["20 rpm", "600 rpm"],
    default: null,
    unit: "rpm",
  },
  shockFactor: { kind: "number", symbol: "K", label: "jolts against the steady pull", min: 1, max: 5, typical: [1, 2], default: 1.5 },
  linearDensity: {
    kind: "linearDensity",
    symbol: "q",
    label: "mass of a length of chain",
    min: 0,
    max: 100,
    typical: [0.05, 0.5],
    default: 0,
  },
  breakingForce: { kind: "force", symbol: "F_b", label: "breaking force", min: 1, max: 1e8, typical: [2000, 10000], default: null },
  efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", min: 0.5, max: 1, typical: [0.9, 0.98], default: 0.96, unit: "%" },
  backwardEfficiency: {
    kind: "ratio",
    symbol: "eta_g",
    label: "efficiency, load driving",
    min: 0.3,
    max: 1,
    typical: [0.85, 0.98],
    default: null,
    unit: "%",
  },
}

export const output: OutFields<ChainDrive> = {
  transmits: { kind: "text", label: "transmits" },
  ratio: { kind: "number", symbol: "i", label: "ratio" },
  drivingDiameter: { kind: "length", symbol: "D_1", label: "pitch circle, driving sprocket" },
  drivenDiameter: { kind: "length", symbol: "D_2", label: "pitch circle, driven sprocket" },
  exactLinks: { kind: "number", symbol: "X_0", label: "links at the distance asked for" },
  links: { kind: "number", symbol: "X", label: "links" },
  length: { kind: "length", symbol: "L", label: "length of the chain" },
  fittingDistance: { kind: "length", symbol: "C_f", label: "distance at which it fits" },
  smallWrap: { kind: "angle", symbol: "theta", label: "wrap on the smaller sprocket", unit: "deg" },
  speedRipple: { kind: "ratio", symbol: "delta", label: "rise and fall of its speed", unit: "%" },
  inputTorque: { kind: "moment", symbol: "T_1", label: "torque at the driving shaft" },
  returnTorque: { kind: "moment", symbol: "T_r", label: "torque at the driving shaft, motion reversed" },
  pull: { kind: "force", symbol: "F", label: "mean pull" },
  peakPull: { kind: "force", symbol: "F_p", label: "peak pull" },
  centrifugalTension: { kind: "force", symbol: "F_c", label: "centrifugal part" },
  workingTension: { kind: "force", symbol: "F_w", label: "working tension" },
  safetyFactor: { kind: "number", symbol: "S", label: "safety factor" },
  shaftForce: { kind: "force", symbol: "F_s", label: "force on each shaft" },
  chainSpeed: { kind: "speed", symbol: "v", label: "speed of the chain" },
  outputSpeed: { kind: "angularSpeed", symbol: "omega_2", label: "speed of the driven shaft", unit: "rpm" },
  inputPower: { kind: "power", symbol: "P_1", label: "power in" },
  outputPower: { kind: "power", symbol: "P_2", label: "power out" },
  heat: { kind: "power", symbol: "P_h", label: "heat" },
}

export function check(si: SiOf<ChainDriveInput>): Issue[] {
  const tips = (tipDiameter(si.pitch, si.drivingTeeth) + tipDiameter(si.pitch, si.drivenTeeth)) / 2
  if (si.centreDistance > tips) return []
  return [
    inconsistent(["centreDistance"], "{centreDistance length}", "more than {tips length}, where the sprockets' teeth touch", {
      centreDistance: si.centreDistance,
      tips,
    }),
  ]
}
