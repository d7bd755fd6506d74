// Field descriptions of gearmotor beside those of motor and gears, and the faults between them.
import type { Fields, Issue, OutFields, SiOf } from "../../solver/index.js"
import { sheetFaults } from "../dc-motor/constants.js"
import { dcMotor } from "../dc-motor/index.js"
import { stageFaults, input as trainInput, output as trainOutput } from "../gear-train/fields.js"
import type { Gearmotor, GearmotorInput } from "./types.js"

/** Made when asked for: the motor's own descriptions are. */
export function inputFields(): Fields<GearmotorInput> {
  const { torque: _, ...sheet } = dcMotor.input
  return {
    ...sheet,
    stages: trainInput.stages,
    torque: { kind: "moment", symbol: "T", label: "torque at the output", min: -1e5, max: 1e5, typical: [-1, 3] },
    dragTorque: { kind: "moment", symbol: "T_d", label: "drag at the motor", min: 0, max: 1e4, typical: [0, 0.002], default: 0 },
    rotorInertia: {
      kind: "momentOfInertia",
      symbol: "J_0",
      label: "inertia of the rotor",
      min: 0,
      max: 1000,
      typical: [1e-7, 1e-5],
      default: 0,
    },
    loadInertia: { kind: "momentOfInertia", symbol: "J_L", label: "inertia of the load", min: 0, max: 1e5, typical: [0, 1], default: 0 },
  }
}

export const output: OutFields<Gearmotor> = {
  transmits: { kind: "text", label: "transmits" },
  ratio: { kind: "number", symbol: "i", label: "ratio" },
  speed: { kind: "angularSpeed", symbol: "omega_2", label: "speed of the output", unit: "rpm" },
  motorSpeed: { kind: "angularSpeed", symbol: "omega_m", label: "speed of the motor", unit: "rpm" },
  motorTorque: { kind: "moment", symbol: "T_m", label: "torque at the motor" },
  returnTorque: { kind: "moment", symbol: "T_r", label: "torque at the motor, motion reversed" },
  current: { kind: "current", symbol: "I", label: "current" },
  electricalPower: { kind: "power", symbol: "P_e", label: "power taken" },
  mechanicalPower: { kind: "power", symbol: "P_2", label: "power to the load" },
  windingHeat: { kind: "power", symbol: "P_w", label: "heat in the winding" },
  motorFrictionHeat: { kind: "power", symbol: "P_f", label: "heat by friction in the motor" },
  gearHeat: { kind: "power", symbol: "P_g", label: "heat in the gears" },
  efficiency: { kind: "ratio", symbol: "eta_t", label: "efficiency, motor and gears", unit: "%" },
  gearEfficiency: { kind: "ratio", symbol: "eta", label: "efficiency of the gears", unit: "%" },
  torqueConstant: { kind: "torqueConstant", symbol: "k_T", label: "torque constant" },
  backEmfConstant: { kind: "backEmfConstant", symbol: "k_E", label: "back-emf constant" },
  windingResistance: { kind: "resistance", symbol: "R_w", label: "winding resistance" },
  noLoadSpeed: { kind: "angularSpeed", symbol: "omega_f", label: "no-load speed of the output", unit: "rpm" },
  stallTorque: { kind: "moment", symbol: "T_st", label: "stall torque at the output" },
  stallCurrent: { kind: "current", symbol: "I_st", label: "stall current" },
  maxEfficiencyTorque: { kind: "moment", symbol: "T_be", label: "torque of best efficiency" },
  maxEfficiency: { kind: "ratio", symbol: "eta_be", label: "best efficiency", unit: "%" },
  backDriveTorque: { kind: "moment", symbol: "T_b", label: "torque that drives it back" },
  shortedBackDriveSpeed: { kind: "angularSpeed", symbol: "omega_b", label: "back-drive speed, leads shorted", unit: "rpm" },
  locksAtFriction: { kind: "flag", label: "gears lock at the friction given" },
  selfLocking: { kind: "flag", label: "gears lock with half of it" },
  inertiaAtOutput: { kind: "momentOfInertia", symbol: "J_2", label: "inertia at the output" },
  rotorShare: { kind: "ratio", symbol: "s_r", label: "rotor's share of the inertia", unit: "%" },
  startAcceleration: { kind: "angularAcceleration", symbol: "alpha_2", label: "acceleration from rest" },
  timeConstant: { kind: "time", symbol: "tau", label: "mechanical time constant" },
  stages: trainOutput.stages,
}

export const check = (si: SiOf<GearmotorInput>): Issue[] => [...sheetFaults(si), ...stageFaults(si.stages)]
