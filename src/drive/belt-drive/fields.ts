// Field descriptions of beltDrive, and the fault between its pulleys and shafts.
import { type Fields, type Issue, inconsistent, type OutFields, type SiOf } from "../../solver/index.js"
import { runOf } from "./kernel.js"
import type { BeltDrive, BeltDriveInput } from "./types.js"

const pulleys = {
  drivingDiameter: { kind: "length", symbol: "d_1", label: "driving pulley", min: "2 mm", max: 10, typical: ["15 mm", "60 mm"] },
  drivenDiameter: { kind: "length", symbol: "d_2", label: "driven pulley", min: "2 mm", max: 10, typical: ["20 mm", "90 mm"] },
  friction: { kind: "number", symbol: "mu", label: "friction of belt on pulley", min: 0.01, max: 1.5, typical: [0.2, 0.5], default: 0.3 },
} as const
const groove = (min: string, initial: string) =>
  ({
    kind: "angle",
    symbol: "beta",
    label: "whole angle of the groove",
    min: min as "20 deg",
    max: "180 deg",
    typical: ["34 deg", "60 deg"],
    default: initial as "38 deg",
    unit: "deg",
  }) as const
const teeth = (symbol: string, label: string) =>
  ({ kind: "number", symbol, label, whole: true, min: 6, max: 1000, typical: [18, 60] }) as const
const crossed = { kind: "flag", label: "crosses over", default: false } as const

export const input: Fields<BeltDriveInput> = {
  belt: {
    kind: "variant",
    label: "belt",
    of: {
      toothed: {
        label: "toothed belt",
        fields: {
          pitch: { kind: "length", symbol: "p", label: "pitch", min: "0.5 mm", max: "50 mm", typical: ["2 mm", "5 mm"] },
          drivingTeeth: teeth("z_1", "teeth of the driving pulley"),
          drivenTeeth: teeth("z_2", "teeth of the driven pulley"),
        },
      },
      flat: { label: "flat belt", fields: { ...pulleys, crossed } },
      v: { label: "V-belt", fields: { ...pulleys, grooveAngle: groove("20 deg", "38 deg") } },
      round: { label: "round belt", fields: { ...pulleys, grooveAngle: groove("20 deg", "180 deg"), crossed } },
    },
  },
  centreDistance: {
    kind: "length",
    symbol: "C",
    label: "distance between the shafts",
    min: "5 mm",
    max: 50,
    typical: ["120 mm", "400 mm"],
  },
  pretension: { kind: "force", symbol: "F_0", label: "pretension of each strand", min: "1 mN", max: 1e6, typical: [40, 200] },
  torque: { kind: "moment", symbol: "T", label: "torque at the driven shaft", min: -1e6, max: 1e6, typical: [-0.5, 0.8] },
  inputSpeed: {
    kind: "angularSpeed",
    symbol: "omega_1",
    label: "speed of the driving shaft",
    min: 0,
    max: "1e5 rpm",
    typical: ["60 rpm", "3000 rpm"],
    default: null,
    unit: "rpm",
  },
  linearDensity: {
    kind: "linearDensity",
    symbol: "q",
    label: "mass of a length of belt",
    min: 0,
    max: 100,
    typical: [0.005, 0.1],
    default: 0,
  },
  efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", min: 0.5, max: 1, typical: [0.9, 0.98], default: 0.95, unit: "%" },
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
  creep: { kind: "ratio", symbol: "s", label: "creep", min: 0, max: 0.2, typical: [0, 0.02], default: 0, unit: "%" },
}

export const output: OutFields<BeltDrive> = {
  transmits: { kind: "text", label: "transmits" },
  ratio: { kind: "number", symbol: "i", label: "ratio" },
  reverses: { kind: "flag", label: "driven shaft turns the other way" },
  length: { kind: "length", symbol: "L", label: "length of the belt" },
  beltTeeth: { kind: "number", symbol: "z_b", label: "teeth of the belt" },
  fittingDistance: { kind: "length", symbol: "C_f", label: "distance at which it fits" },
  drivingWrap: { kind: "angle", symbol: "theta_1", label: "wrap on the driving pulley", unit: "deg" },
  drivenWrap: { kind: "angle", symbol: "theta_2", label: "wrap on the driven pulley", unit: "deg" },
  teethInMesh: { kind: "number", symbol: "z_m", label: "teeth in mesh" },
  inputTorque: { kind: "moment", symbol: "T_1", label: "torque at the driving shaft" },
  returnTorque: { kind: "moment", symbol: "T_r", label: "torque at the driving shaft, motion reversed" },
  pull: { kind: "force", symbol: "F", label: "pull" },
  maxPull: { kind: "force", symbol: "F_m", label: "largest pull" },
  maxTorque: { kind: "moment", symbol: "T_m", label: "largest torque" },
  utilisation: { kind: "ratio", symbol: "u", label: "pull against the largest", unit: "%" },
  slipMargin: { kind: "force", symbol: "F_l", label: "pull left before it slips" },
  requiredPretension: { kind: "force", symbol: "F_n", label: "pretension needed" },
  tightTension: { kind: "force", symbol: "F_t", label: "tight strand" },
  slackTension: { kind: "force", symbol: "F_s", label: "slack strand" },
  centrifugalTension: { kind: "force", symbol: "F_c", label: "centrifugal part" },
  shaftForce: { kind: "force", symbol: "F_w", label: "force on each shaft" },
  beltSpeed: { kind: "speed", symbol: "v", label: "speed of the belt" },
  outputSpeed: { kind: "angularSpeed", symbol: "omega_2", label: "speed of the driven shaft", unit: "rpm" },
  inputPower: { kind: "power", symbol: "P_1", label: "power in" },
  outputPower: { kind: "power", symbol: "P_2", label: "power out" },
  heat: { kind: "power", symbol: "P_h", label: "heat" },
}

export function check(si: SiOf<BeltDriveInput>): Issue[] {
  const { r1, r2 } = runOf(si)
  if (si.centreDistance > 1.001 * (r1 + r2)) return []
  return [
    inconsistent(["centreDistance"], "{centreDistance length}", "more than the pulleys' radii together, {radii length}: they would touch", {
      centreDistance: si.centreDistance,
      radii: r1 + r2,
    }),
  ]
}
