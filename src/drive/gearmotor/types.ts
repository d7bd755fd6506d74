// What gearmotor takes and gives back.
import type { Moment, MomentOfInertia } from "../../quantity/index.js"
import type { Transmits } from "../../solver/index.js"
import type { DcMotorInput } from "../dc-motor/constants.js"
import type { DcMotorCaution } from "../dc-motor/index.js"
import type { GearStage, GearStageResult, GearTrainCaution } from "../gear-train/types.js"

/** Input of {@link gearmotor}: a motor's datasheet at its own shaft, and the gears behind it. */
export interface GearmotorInput extends Omit<DcMotorInput, "torque"> {
  /** Gears, from the motor to the load. [list of 1 to 8] */
  stages: readonly GearStage[]
  /** Torque at the output shaft: positive against the motion, negative where the load helps it. [T; −100000 to 100000 N m] */
  torque: Moment
  /** Torque that the gears' bearings and grease take at the motor shaft, load or none. [T_d; 0 to 10000 N m; default 0] */
  dragTorque?: Moment
  /** Moment of inertia of the rotor. [J_0; 0 to 1000 kg m²; default 0] */
  rotorInertia?: MomentOfInertia
  /** Moment of inertia of the load about the output shaft. [J_L; 0 to 100000 kg m²; default 0] */
  loadInertia?: MomentOfInertia
}

/** Result of {@link gearmotor}. */
export interface Gearmotor {
  /** Gears hand on torque whichever shaft drives, so far as no stage locks: `both-ways`. [text] */
  readonly transmits: Transmits
  /** Turns of the motor for one of the output. [i] */
  readonly ratio: number
  /** Speed of the output shaft. [omega_2; rad/s] */
  readonly speed: number
  /** Speed of the motor [omega_m; rad/s] */
  readonly motorSpeed: number
  /** Torque at the motor shaft; below zero where the load drives it. [T_m; N m] */
  readonly motorTorque: number
  /** The same with the motion reversed under the same load: its other direction. [T_r; N m] */
  readonly returnTorque: number
  /** Current; below zero where it is returned to the supply. [I; A] */
  readonly current: number
  /** Power taken [P_e; W] */
  readonly electricalPower: number
  /** Power given to the load; below zero where the load gives it. [P_2; W] */
  readonly mechanicalPower: number
  /** Heat in the winding [P_w; W] */
  readonly windingHeat: number
  /** Heat by friction in the motor. [P_f; W] */
  readonly motorFrictionHeat: number
  /** Heat in the gears [P_g; W] */
  readonly gearHeat: number
  /** Power given to the load against power taken; null where the load helps. [eta_t; as a fraction] */
  readonly efficiency: number | null
  /** Efficiency of the gears with the load against the motion, drag left out. [eta; as a fraction] */
  readonly gearEfficiency: number
  /** Torque constant [k_T; N m/A] */
  readonly torqueConstant: number
  /** Back-emf constant [k_E; V s/rad] */
  readonly backEmfConstant: number
  /** Winding resistance [R_w; Ω] */
  readonly windingResistance: number
  /** Speed of the output shaft without load. [omega_f; rad/s] */
  readonly noLoadSpeed: number
  /** Torque at the output at standstill, winding warm. [T_st; N m] */
  readonly stallTorque: number
  /** Stall current [I_st; A] */
  readonly stallCurrent: number
  /** Torque at the output at which efficiency is best. [T_be; N m] */
  readonly maxEfficiencyTorque: number
  /** Best efficiency [eta_be; as a fraction] */
  readonly maxEfficiency: number
  /** Torque at the output that turns the motor without power, leads open; null where the gears lock. [T_b; N m] */
  readonly backDriveTorque: number | null
  /** Speed at which a load of this size turns the output back, leads joined. [omega_b; rad/s] */
  readonly shortedBackDriveSpeed: number
  /** Whether the gears lock at the friction given. [yes or no] */
  readonly locksAtFriction: boolean
  /** Whether they still lock with half of that friction. [yes or no] */
  readonly selfLocking: boolean
  /** Moment of inertia of rotor, gears and load, felt at the output shaft. [J_2; kg m²] */
  readonly inertiaAtOutput: number
  /** The rotor's part of it. [s_r; as a fraction] */
  readonly rotorShare: number
  /**
   * Acceleration of the output shaft from rest, full voltage put on at once; null where the load helps, and without
   * inertia. [alpha_2; rad/s²]
   */
  readonly startAcceleration: number | null
  /** Time in which 63 % of a change of speed is made, friction left out. [tau; s] */
  readonly timeConstant: number
  /** The stages, one by one. [list] */
  readonly stages: readonly GearStageResult[]
}

/** Why {@link gearmotor} can refuse. */
export type GearmotorRefusal = "insufficient-torque" | "insufficient-voltage" | "jammed"

/** Hazards and limits of validity that go with an answer of {@link gearmotor}: the motor's, the gears', and those of both together. */
export type GearmotorCaution = DcMotorCaution | GearTrainCaution | "runs-away" | "returns-current"
