// A brushed motor by its datasheet, its gears in the datasheet or stage by stage behind it, as a drive.
import { motorSheetFields } from "../../drive/dc-motor/fields.js"
import { stageField, input as trainFields } from "../../drive/gear-train/fields.js"
import { solve as trainOf } from "../../drive/gear-train/kernel.js"
import { dcMotor, type GearStage, gearmotor, motorConstants } from "../../drive/index.js"
import type {
  Angle,
  AngularSpeed,
  BackEmfConstant,
  Current,
  Moment,
  MomentOfInertia,
  Ratio,
  Resistance,
  Voltage,
} from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { type Drive, type DriveMember, unlockingBySheet } from "./drive.js"

/** A geared motor. Give two points of its datasheet, or back-emf constant and resistance where it prints those. */
export interface GearmotorDrive {
  type: "gearmotor"
  /** Angle that the output shaft turns between its end stops; it starts at the first. [theta_t; 0.1° to 1000 rev] */
  travel: Angle
  /** Voltage of the datasheet's points, or the one the motor is sold for. [V_r; 10 mV to 1000 V] */
  ratedVoltage: Voltage
  /** No-load speed [n_0; 0.572958 °/s to 100000 rpm; optional] */
  noLoadSpeed?: AngularSpeed | null
  /** No-load current [I_0; 0 to 1000 A; default 0] */
  noLoadCurrent?: Current
  /** Torque of the second point [T_1; 0.01 mN m to 1000000 N m; optional] */
  loadTorque?: Moment | null
  /** Speed at that torque; 0 for stall. [n_1; 0 to 100000 rpm; optional] */
  loadSpeed?: AngularSpeed | null
  /** Current of the second point [I_1; 0.1 mA to 10000 A; optional] */
  loadCurrent?: Current | null
  /** Back-emf constant [k_0; above 1e−6 to 1000 V s/rad; optional] */
  backEmfConstant?: BackEmfConstant | null
  /** Resistance [R_0; above 1 µΩ to 1000 kΩ; optional] */
  windingResistance?: Resistance | null
  /**
   * Gears behind the shaft that the datasheet is for, from the motor to the load; none where it is for the geared
   * output. [list of 0 to 8; default none]
   */
  stages?: readonly GearStage[]
  /** Torque that these gears' bearings and grease take at the shaft of the datasheet, load or none. [T_d; 0 to 10000 N m; default 0] */
  dragTorque?: Moment
  /** Moment of inertia about the shaft of the datasheet. [J_0; 0 to 1000 kg m²; default 0] */
  rotorInertia?: MomentOfInertia
  /**
   * Share of a helping torque that reaches the shaft of the datasheet; left out, that of the stages, or none. [eta_g; 0
   * to 100 %; optional]
   */
  backwardEfficiency?: Ratio | null
  /**
   * Torque it holds without power: a brake, or as the datasheet says; left out, what stages that lock hold, or none.
   * [T_hold; 0 to 100000 N m; optional]
   */
  holdingTorque?: Moment | null
  /** Torque at its output that its datasheet allows for long. [T_r; 0.01 mN m to 100000 N m; optional] */
  ratedTorque?: Moment | null
  /** Current that its driver lets through. [I_max; 1 mA to 1000 A; optional] */
  currentLimit?: Current | null
  /** Whether it is switched on and off, or its driver ramps it. [on-off or ramp; default on-off] */
  control?: "on-off" | "ramp"
  /** Current that its driver draws while the motor stands still. [I_s; 0 to 10 A; default 0] */
  standbyCurrent?: Current
}

type Si = SiOf<GearmotorDrive>

/** The datasheet as the domain's solvers take it: constants are printed without the voltage of points. */
const sheetOf = ({
  ratedVoltage,
  noLoadSpeed,
  noLoadCurrent,
  loadTorque,
  loadSpeed,
  loadCurrent,
  backEmfConstant,
  windingResistance,
}: Si) => ({
  ratedVoltage: backEmfConstant === null ? ratedVoltage : null,
  noLoadSpeed,
  noLoadCurrent,
  loadTorque,
  loadSpeed,
  loadCurrent,
  backEmfConstant,
  windingResistance,
})

type Own = Pick<
  Drive,
  "effortConstant" | "backEmfConstant" | "frictionCurrent" | "inertia" | "backwardEfficiency" | "unlocking" | "holdingEffort"
>

function build(si: Si): Drive {
  const { torqueConstant, backEmfConstant, windingResistance } = motorConstants(sheetOf(si))
  const own: Own = {
    effortConstant: torqueConstant,
    backEmfConstant,
    frictionCurrent: si.noLoadCurrent + si.dragTorque / torqueConstant,
    inertia: si.rotorInertia,
    backwardEfficiency: si.backwardEfficiency ?? 0,
    unlocking: (si.backwardEfficiency ?? 0) > 0 ? 0 : unlockingBySheet(torqueConstant, backEmfConstant),
    holdingEffort: si.holdingTorque ?? 0,
  }
  return {
    ...(si.stages.length ? behindGears(si, own) : own),
    travel: "angle",
    low: 0,
    high: si.travel,
    windingResistance,
    circuitCurrent: 0,
    lineAt: null,
    minVoltage: 0,
    currentLimit: si.currentLimit,
    ratedVoltage: si.ratedVoltage,
    ratedEffort: si.ratedTorque,
    control: si.control,
    standbyCurrent: si.standbyCurrent,
  }
}

/** A motor's own figures as they stand at the output of its stages. */
function behindGears(si: Si, own: Own): Own {
  const input = { stages: si.stages, dragTorque: 0, inputSpeed: null, inputInertia: si.rotorInertia, loadInertia: 0, tipRadius: null }
  const { ratio, efficiency, backwardEfficiency, inertiaAtOutput, selfLocking } = trainOf({ ...input, torque: 1 })
  // above zero where the motor has to let a helping load down
  const { inputTorque } = trainOf({ ...input, torque: -1 })
  return {
    effortConstant: own.effortConstant * ratio * efficiency,
    backEmfConstant: own.backEmfConstant * ratio,
    frictionCurrent: own.frictionCurrent,
    inertia: inertiaAtOutput,
    backwardEfficiency: si.backwardEfficiency ?? backwardEfficiency ?? 0,
    unlocking: (si.backwardEfficiency ?? 0) > 0 ? 0 : Math.max(0, inputTorque * ratio * efficiency),
    holdingEffort: si.holdingTorque ?? (selfLocking ? Number.POSITIVE_INFINITY : 0),
  }
}

const { default: _, ...ratedVoltage } = motorSheetFields.ratedVoltage

/** A geared motor. */
export const gearmotorDrive: DriveMember<GearmotorDrive> = {
  type: "gearmotor",
  label: "geared motor",
  fields: {
    travel: {
      kind: "angle",
      symbol: "theta_t",
      label: "angle turned between the end stops",
      min: "0.1 deg",
      max: "1000 rev",
      typical: ["30 deg", "20 rev"],
    },
    ...motorSheetFields,
    ratedVoltage,
    stages: { kind: "list", label: "stages behind the datasheet's shaft, from motor to load", min: 0, max: 8, of: stageField, default: [] },
    dragTorque: trainFields.dragTorque,
    rotorInertia: {
      kind: "momentOfInertia",
      symbol: "J_0",
      label: "inertia at the datasheet's shaft",
      min: 0,
      max: 1000,
      typical: [0, 1e-5],
      default: 0,
    },
    backwardEfficiency: { kind: "ratio", symbol: "eta_g", label: "efficiency, load driving", min: 0, max: 1, default: null, unit: "%" },
    holdingTorque: { kind: "moment", symbol: "T_hold", label: "torque held without power", min: 0, max: 1e5, default: null },
    ratedTorque: { kind: "moment", symbol: "T_r", label: "torque allowed for long", min: 1e-5, max: 1e5, default: null },
    currentLimit: { kind: "current", symbol: "I_max", label: "current limit of the driver", min: "1 mA", max: 1000, default: null },
    control: {
      kind: "choice",
      label: "control",
      options: { "on-off": "switched on and off", ramp: "ramped by its driver" },
      default: "on-off",
    },
    standbyCurrent: { kind: "current", symbol: "I_s", label: "current of the driver at rest", min: 0, max: 10, default: 0 },
  },
  either: [
    {
      exactlyOne: [
        ["backEmfConstant", "windingResistance"],
        ["noLoadSpeed", "loadTorque", "loadSpeed", "loadCurrent"],
      ],
    },
  ],
  check(si) {
    const asked = { ...sheetOf(si), terminalVoltage: si.ratedVoltage, torque: 0 }
    return si.stages.length ? domainFaults(gearmotor, { ...asked, stages: si.stages }) : domainFaults(dcMotor, asked)
  },
  build,
}
