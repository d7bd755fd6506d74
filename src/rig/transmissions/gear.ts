// Gears on their shafts, stage by stage.
import { input as trainFields } from "../../drive/gear-train/fields.js"
import { solve as trainOf } from "../../drive/gear-train/kernel.js"
import { type GearStage, gearTrain } from "../../drive/index.js"
import type { Moment, MomentOfInertia, RotationalStiffness } from "../../quantity/index.js"
import type { Fields, SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { rigid, type Transmission, type TransmissionMember } from "./transmission.js"

/** What any gears of a motion have beside their teeth. */
export interface GearParts {
  /** Torque that bearings, seals and grease take at the input, load or none. [T_d; 0 to 10000 N m; default 0] */
  dragTorque?: Moment
  /** Moment of inertia on the input shaft. [J_0; 0 to 1000 kg m²; default 0] */
  inputInertia?: MomentOfInertia
  /** Torque at the output shaft that turns it by an angle, the input held. [k_t; 0.01 to 1e8 N m/rad; optional] */
  rotationalStiffness?: RotationalStiffness | null
  /** Torque that the output shaft may not pass, by the maker of the gears. [T_max; 0.1 mN m to 100000 N m; optional] */
  maxTorque?: Moment | null
}

/** Gears in stages. */
export interface GearElement extends GearParts {
  type: "gear"
  /** Stages, from the drive to the load. [list of 1 to 8] */
  stages: readonly GearStage[]
}

export const gearParts: Fields<GearParts> = {
  dragTorque: trainFields.dragTorque,
  inputInertia: trainFields.inputInertia,
  rotationalStiffness: {
    kind: "rotationalStiffness",
    symbol: "k_t",
    label: "torsional stiffness at the output",
    min: 0.01,
    max: 1e8,
    typical: [20, 2000],
    default: null,
  },
  maxTorque: {
    kind: "moment",
    symbol: "T_max",
    label: "largest torque at the output",
    min: 1e-4,
    max: 1e5,
    typical: [1, 50],
    default: null,
  },
}

/** Stages as an element of a transmission. */
export function gearsOf(stages: SiOf<GearElement>["stages"], parts: SiOf<GearParts>): Transmission {
  const input = { stages, dragTorque: 0, inputSpeed: null, inputInertia: parts.inputInertia, loadInertia: 0, tipRadius: null }
  const train = trainOf({ ...input, torque: 1 })
  // above zero where a stage locks and has to be driven with the load
  const letDown = trainOf({ ...input, torque: -1 }).inputTorque * train.ratio
  const ratio = (train.reverses ? -1 : 1) / train.ratio
  return {
    ...rigid,
    takes: "angle",
    gives: "angle",
    out: (travel) => ratio * travel,
    ratio: () => ratio,
    forward: train.efficiency,
    // a product of shares, never above 1
    backward: train.backwardEfficiency ?? 0,
    unlocking: Math.max(0, letDown),
    selfLocking: train.selfLocking,
    drag: parts.dragTorque,
    transmits: train.transmits,
    backlash: train.backlash,
    compliance: parts.rotationalStiffness === null ? 0 : 1 / parts.rotationalStiffness,
    inertia: train.inertiaAtInput,
    strength: parts.maxTorque,
  }
}

/** Gears. */
export const gear: TransmissionMember<GearElement> = {
  type: "gear",
  label: "gears",
  fields: { stages: trainFields.stages, ...gearParts },
  check: ({ stages }) => domainFaults(gearTrain, { stages, torque: 0 }),
  build: (si) => gearsOf(si.stages, si),
}
