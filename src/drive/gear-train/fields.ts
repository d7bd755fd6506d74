// Field descriptions of gearTrain, and the faults between them.
import { type Field, type Fields, type Issue, inconsistent, type OutFields, type SiOf } from "../../solver/index.js"
import { planetTeeth } from "./kernel.js"
import type { GearStage, GearTrain, GearTrainInput } from "./types.js"

const teeth = (symbol: string, label: string, min: number, typical: readonly [number, number]) =>
  ({ kind: "number", symbol, label, whole: true, min, max: 1000, typical }) as const
const meshEfficiency = {
  kind: "ratio",
  symbol: "eta_m",
  label: "efficiency of one mesh",
  min: 0.5,
  max: 1,
  typical: [0.9, 0.99],
  default: 0.97,
  unit: "%",
} as const
const every = {
  pressureAngle: {
    kind: "angle",
    symbol: "alpha",
    label: "pressure angle",
    min: 0,
    max: "30 deg",
    typical: ["14.5 deg", "25 deg"],
    default: "20 deg",
    unit: "deg",
  },
  module: { kind: "length", symbol: "m_n", label: "module", min: "0.1 mm", max: "20 mm", typical: ["0.3 mm", "2 mm"], default: null },
  backlash: {
    kind: "angle",
    symbol: "beta_s",
    label: "play at the stage's output",
    min: 0,
    max: "10 deg",
    typical: [0, "1 deg"],
    default: 0,
  },
  inertia: { kind: "momentOfInertia", symbol: "J_s", label: "inertia turning with it", min: 0, max: 1000, typical: [0, 1e-5], default: 0 },
} as const

/** A worm and its wheel, shared with what else takes one. */
export const wormFields = {
  drivingTeeth: teeth("z_1", "starts of the worm", 1, [1, 4]),
  drivenTeeth: teeth("z_2", "teeth of the wheel", 6, [20, 60]),
  leadAngle: {
    kind: "angle",
    symbol: "gamma",
    label: "lead angle of the worm",
    min: "0.5 deg",
    max: "45 deg",
    typical: ["2 deg", "25 deg"],
    unit: "deg",
  },
  friction: { kind: "number", symbol: "mu", label: "friction of the worm", min: 0, max: 0.6, typical: [0.03, 0.15], default: null },
  wormEfficiency: {
    kind: "ratio",
    symbol: "eta_w",
    label: "efficiency of the worm, driving",
    min: 0.05,
    max: 1,
    typical: [0.3, 0.8],
    default: null,
    unit: "%",
  },
  ...every,
} as const

/** One stage, shared with what else takes a train. */
export const stageField: Field<GearStage> = {
  kind: "variant",
  label: "stage",
  of: {
    spur: {
      label: "spur gears",
      fields: {
        drivingTeeth: teeth("z_1", "teeth of the driving gear", 1, [12, 24]),
        drivenTeeth: teeth("z_2", "teeth of the driven gear", 6, [40, 80]),
        meshEfficiency,
        ...every,
      },
    },
    planetary: {
      label: "planetary gears",
      fields: {
        drivingTeeth: teeth("z_S", "teeth of the sun", 1, [12, 24]),
        drivenTeeth: teeth("z_R", "teeth of the ring", 6, [40, 80]),
        path: {
          kind: "choice",
          label: "path through it",
          options: {
            "sun-to-carrier": "sun drives the carrier, ring held",
            "carrier-to-sun": "carrier drives the sun, ring held",
            "ring-to-carrier": "ring drives the carrier, sun held",
            "carrier-to-ring": "carrier drives the ring, sun held",
            "sun-to-ring": "sun drives the ring, carrier held",
            "ring-to-sun": "ring drives the sun, carrier held",
          },
          default: "sun-to-carrier",
        },
        planets: { kind: "number", symbol: "N_p", label: "planets", whole: true, min: 1, max: 8, typical: [3, 4], default: 3 },
        meshEfficiency,
        ...every,
      },
    },
    worm: {
      label: "worm and wheel",
      fields: wormFields,
      either: [{ exactlyOne: ["friction", "wormEfficiency"] }],
    },
  },
}

export const input: Fields<GearTrainInput> = {
  stages: { kind: "list", label: "stages, from motor to load", min: 1, max: 8, of: stageField },
  torque: { kind: "moment", symbol: "T", label: "torque at the output", min: -1e5, max: 1e5, typical: [-2, 5] },
  dragTorque: { kind: "moment", symbol: "T_d", label: "drag at the input", min: 0, max: 1e4, typical: [0, 0.005], default: 0 },
  inputSpeed: {
    kind: "angularSpeed",
    symbol: "omega_1",
    label: "speed of the input",
    min: 0,
    max: "1e5 rpm",
    typical: ["1000 rpm", "10000 rpm"],
    default: null,
    unit: "rpm",
  },
  inputInertia: {
    kind: "momentOfInertia",
    symbol: "J_0",
    label: "inertia on the input",
    min: 0,
    max: 1000,
    typical: [0, 1e-5],
    default: 0,
  },
  loadInertia: { kind: "momentOfInertia", symbol: "J_L", label: "inertia of the load", min: 0, max: 1e5, typical: [0, 1], default: 0 },
  tipRadius: { kind: "length", symbol: "R", label: "radius of the tip", min: "1 mm", max: 20, typical: [0.2, 1], default: null },
}

export const output: OutFields<GearTrain> = {
  transmits: { kind: "text", label: "transmits" },
  ratio: { kind: "number", symbol: "i", label: "ratio" },
  reverses: { kind: "flag", label: "output turns the other way" },
  efficiency: { kind: "ratio", symbol: "eta", label: "efficiency, load against the motion", unit: "%" },
  backwardEfficiency: { kind: "ratio", symbol: "eta_b", label: "efficiency, load driving", unit: "%" },
  locksAtFriction: { kind: "flag", label: "locks at the friction given" },
  selfLocking: { kind: "flag", label: "locks with half of it" },
  inputTorque: { kind: "moment", symbol: "T_1", label: "torque at the input" },
  returnTorque: { kind: "moment", symbol: "T_r", label: "torque at the input, motion reversed" },
  backDriveTorque: { kind: "moment", symbol: "T_b", label: "torque that drives it back" },
  housingTorque: { kind: "moment", symbol: "T_h", label: "torque on the mounting" },
  inertiaAtInput: { kind: "momentOfInertia", symbol: "J_1", label: "inertia at the input" },
  inertiaAtOutput: { kind: "momentOfInertia", symbol: "J_2", label: "inertia at the output" },
  backlash: { kind: "angle", symbol: "beta", label: "play at the output", unit: "deg" },
  tipPlay: { kind: "length", symbol: "s", label: "play at the tip" },
  outputSpeed: { kind: "angularSpeed", symbol: "omega_2", label: "speed of the output", unit: "rpm" },
  inputPower: { kind: "power", symbol: "P_1", label: "power in" },
  outputPower: { kind: "power", symbol: "P_2", label: "power out" },
  heat: { kind: "power", symbol: "P_h", label: "heat in the gears" },
  stages: {
    kind: "list",
    label: "stages",
    of: {
      kind: "group",
      label: "stage",
      fields: {
        ratio: { kind: "number", label: "ratio" },
        efficiency: { kind: "ratio", label: "efficiency", unit: "%" },
        backwardEfficiency: { kind: "ratio", label: "efficiency, load driving", unit: "%" },
        drivingTorque: { kind: "moment", label: "torque at the driving shaft" },
        drivenTorque: { kind: "moment", label: "torque at the driven shaft" },
        heldTorque: { kind: "moment", label: "torque on the member held" },
        toothForce: { kind: "force", label: "force at the teeth" },
        shaftForce: { kind: "force", label: "force on the shafts" },
        fewestTeeth: { kind: "number", label: "fewest teeth without undercut" },
        backlashShare: { kind: "ratio", label: "part of the play at the output", unit: "%" },
      },
    },
  },
}

/** Faults of a list of stages, found under `stages`. */
export function stageFaults(stages: SiOf<GearTrainInput>["stages"]): Issue[] {
  return stages.flatMap((stage, k) => {
    if (stage.type !== "planetary") return []
    const { drivingTeeth: sun, drivenTeeth: ring, planets } = stage
    if (!(ring > sun + 2))
      return [
        inconsistent(
          ["stages", k, "drivenTeeth"],
          "a ring of {ring} teeth",
          "at least three teeth more than the sun's {sun}, for a planet between them",
          { ring, sun },
        ),
      ]
    const planet = planetTeeth(stage)
    if (planets > 1 && !((sun + planet) * Math.sin(Math.PI / planets) > planet + 2))
      return [
        inconsistent(["stages", k, "planets"], "{planets} planets", "fewer planets: these touch each other round a sun of {sun} teeth", {
          planets,
          sun,
        }),
      ]
    return []
  })
}

export const check = (si: SiOf<GearTrainInput>): Issue[] => stageFaults(si.stages)
