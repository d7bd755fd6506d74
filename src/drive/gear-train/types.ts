// What gearTrain takes and gives back.
import type { Angle, AngularSpeed, Length, Moment, MomentOfInertia, Ratio } from "../../quantity/index.js"
import type { Transmits } from "../../solver/index.js"

/** Way through a planetary stage: what drives, and what is driven; the third member stands still. */
export type PlanetaryPath = "sun-to-carrier" | "carrier-to-sun" | "ring-to-carrier" | "carrier-to-ring" | "sun-to-ring" | "ring-to-sun"

/** What every stage of a gear train has. */
interface AnyStage {
  /** Pressure angle, in the normal section. [alpha; 0 to 30°; default 20°] */
  pressureAngle?: Angle
  /** Module (pitch diameter over teeth), for the forces at the teeth. [m_n; 0.1 to 20 mm; optional] */
  module?: Length | null
  /** Play of this stage at its own output shaft, its input held. [beta_s; 0 to 10°; default 0] */
  backlash?: Angle
  /** Moment of inertia of what turns with this stage's output shaft, about that shaft. [J_s; 0 to 1000 kg m²; default 0] */
  inertia?: MomentOfInertia
}

/** A pair of spur gears. */
export interface SpurStage extends AnyStage {
  /** Spur gears. */
  type: "spur"
  /** Teeth of the driving gear [z_1; whole 1 to 1000] */
  drivingTeeth: number
  /** Teeth of the driven gear [z_2; whole 6 to 1000] */
  drivenTeeth: number
  /** Efficiency of one mesh [eta_m; 50 to 100 %; default 97 %] */
  meshEfficiency?: Ratio
}

/** A sun, a ring and the planets between them on a carrier; one of the three is held. */
export interface PlanetaryStage extends AnyStage {
  /** Planetary gears. */
  type: "planetary"
  /** Teeth of the sun, whichever member drives. [z_S; whole 1 to 1000] */
  drivingTeeth: number
  /** Teeth of the ring, whichever member is driven. [z_R; whole 6 to 1000] */
  drivenTeeth: number
  /**
   * What drives and what is driven; the third member is held. [sun-to-carrier, carrier-to-sun, ring-to-carrier,
   * carrier-to-ring, sun-to-ring or ring-to-sun; default sun-to-carrier]
   */
  path?: PlanetaryPath
  /** Planets that share the load. [N_p; whole 1 to 8; default 3] */
  planets?: number
  /** Efficiency of one mesh; a planetary stage has two in series. [eta_m; 50 to 100 %; default 97 %] */
  meshEfficiency?: Ratio
}

/** A worm and its wheel. Give its friction or its efficiency. */
export interface WormStage extends AnyStage {
  /** Worm and wheel. */
  type: "worm"
  /** Starts of the worm. [z_1; whole 1 to 1000] */
  drivingTeeth: number
  /** Teeth of the wheel [z_2; whole 6 to 1000] */
  drivenTeeth: number
  /** Lead angle on the pitch cylinder. [gamma; 0.5° to 45°] */
  leadAngle: Angle
  /** Friction coefficient between worm and wheel. [mu; 0 to 0.6; optional] */
  friction?: number | null
  /** Efficiency with the worm driving, as a datasheet prints it. [eta_w; 5 to 100 %; optional] */
  wormEfficiency?: Ratio | null
}

/** One stage of a gear train. */
export type GearStage = SpurStage | PlanetaryStage | WormStage

/** Input of {@link gearTrain}. */
export interface GearTrainInput {
  /** Stages, from the motor to the load. [list of 1 to 8] */
  stages: readonly GearStage[]
  /** Torque at the output shaft: positive against the motion, negative where the load helps it. [T; −100000 to 100000 N m] */
  torque: Moment
  /** Torque that bearings, seals and grease take at the input shaft, load or none. [T_d; 0 to 10000 N m; default 0] */
  dragTorque?: Moment
  /** Speed of the input shaft. [omega_1; 0 to 100000 rpm; optional] */
  inputSpeed?: AngularSpeed | null
  /** Moment of inertia on the input shaft, such as the motor's rotor. [J_0; 0 to 1000 kg m²; default 0] */
  inputInertia?: MomentOfInertia
  /** Moment of inertia of the load, about the output shaft. [J_L; 0 to 100000 kg m²; default 0] */
  loadInertia?: MomentOfInertia
  /** Distance from the output shaft at which play is wanted: the tip of the arm. [R; 1 mm to 20 m; optional] */
  tipRadius?: Length | null
}

/** What one stage does. */
export interface GearStageResult {
  /** Turns of its driving shaft for one of its driven shaft. [number] */
  readonly ratio: number
  /** Efficiency with the load against the motion. [as a fraction] */
  readonly efficiency: number
  /** Efficiency with the load driving; below zero where the stage locks. [as a fraction] */
  readonly backwardEfficiency: number
  /** Torque at its driving shaft. [N m] */
  readonly drivingTorque: number
  /** Torque at its driven shaft. [N m] */
  readonly drivenTorque: number
  /** Torque on the member of a planetary stage that is held; null for other stages. [N m] */
  readonly heldTorque: number | null
  /** Force along the pitch circle on one tooth pair (on the worm wheel; per planet); null without a module. [N] */
  readonly toothForce: number | null
  /** Force of a spur pair on its shafts; null for other stages and without a module. [N] */
  readonly shaftForce: number | null
  /**
   * Fewest teeth of the smaller of two standard gears that mesh without undercut; null for a worm, and below a pressure
   * angle of 10°. [number]
   */
  readonly fewestTeeth: number | null
  /** Part of the play at the train's output that this stage causes. [as a fraction] */
  readonly backlashShare: number
}

/** Result of {@link gearTrain}. */
export interface GearTrain {
  /** Shafts hand on torque whichever of them drives, so far as no stage locks: `both-ways`. [text] */
  readonly transmits: Transmits
  /** Turns of the input for one of the output. [i] */
  readonly ratio: number
  /** Whether the output turns the other way; null where a worm crosses the axes. [yes or no] */
  readonly reverses: boolean | null
  /** Efficiency with the load against the motion, drag left out. [eta; as a fraction] */
  readonly efficiency: number
  /** Efficiency with the load driving the input shaft; null where the train locks. [eta_b; as a fraction] */
  readonly backwardEfficiency: number | null
  /** Whether a stage locks at the friction given. [yes or no] */
  readonly locksAtFriction: boolean
  /** Whether a stage still locks with half of that friction. [yes or no] */
  readonly selfLocking: boolean
  /** Torque needed at the input shaft; below zero where the load drives it. [T_1; N m] */
  readonly inputTorque: number
  /** The same with the motion reversed under the same load: its other direction. [T_r; N m] */
  readonly returnTorque: number
  /** Torque at the output that turns the train backwards with nothing but its own drag against it; null where it locks. [T_b; N m] */
  readonly backDriveTorque: number | null
  /** Torque that the mounting holds, in the sense of the input's rotation; null where a worm crosses the axes. [T_h; N m] */
  readonly housingTorque: number | null
  /** Moment of inertia of everything, felt at the input shaft. [J_1; kg m²] */
  readonly inertiaAtInput: number
  /** The same, felt at the output shaft. [J_2; kg m²] */
  readonly inertiaAtOutput: number
  /** Play at the output shaft. [beta; rad] */
  readonly backlash: number
  /** Play at the tip. [s; m] */
  readonly tipPlay: number | null
  /** Speed of the output shaft. [omega_2; rad/s] */
  readonly outputSpeed: number | null
  /** Power into the input shaft; below zero where it comes back. [P_1; W] */
  readonly inputPower: number | null
  /** Power given to the load; below zero where the load gives it. [P_2; W] */
  readonly outputPower: number | null
  /** Heat in gears and bearings. [P_h; W] */
  readonly heat: number | null
  /** The stages, one by one. [list] */
  readonly stages: readonly GearStageResult[]
}

/** Hazards and limits of validity that go with an answer of {@link gearTrain}. */
export type GearTrainCaution =
  | "drawn-in"
  | "strength-not-judged"
  | "back-driven"
  | "thin-holding-margin"
  | "worm-start"
  | "undercut"
  | "uneven-planets"
