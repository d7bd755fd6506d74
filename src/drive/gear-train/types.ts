// What gearTrain takes and gives back.
import type { Angle, AngularSpeed, Length, Moment, MomentOfInertia, Ratio } from "../../quantity/index.js"

/** Way through a planetary stage: what drives, and what is driven; the third member stands still. */
export type PlanetaryPath = "sun-to-carrier" | "carrier-to-sun" | "ring-to-carrier" | "carrier-to-ring" | "sun-to-ring" | "ring-to-sun"

/** One stage of a gear train. */
export interface GearStage {
  /** Kind of stage. */
  type: "spur" | "planetary" | "worm"
  /** Teeth of the driving gear; of the sun in a planetary stage; starts of a worm. */
  drivingTeeth: number
  /** Teeth of the driven gear; of the ring in a planetary stage; of the worm wheel. */
  drivenTeeth: number
  /** Planetary: what drives and what is driven; the third member is held. */
  path?: PlanetaryPath
  /** Planetary: planets that share the load. */
  planets?: number
  /** Spur and planetary: efficiency of one mesh. A planetary stage has two in series. */
  meshEfficiency?: Ratio
  /** Worm: lead angle on the pitch cylinder. */
  leadAngle?: Angle | null
  /** Worm: friction coefficient between worm and wheel. */
  friction?: number | null
  /** Worm: efficiency with the worm driving, as a datasheet prints it, in place of the friction. */
  wormEfficiency?: Ratio | null
  /** Pressure angle, in the normal section. */
  pressureAngle?: Angle
  /** Module (pitch diameter over teeth), for the forces at the teeth. */
  module?: Length | null
  /** Play of this stage at its own output shaft, its input held. */
  backlash?: Angle
  /** Moment of inertia of what turns with this stage's output shaft, about that shaft. */
  inertia?: MomentOfInertia
}

/** Input of {@link gearTrain}. */
export interface GearTrainInput {
  /** Stages, from the motor to the load. */
  stages: readonly GearStage[]
  /** Torque at the output shaft: positive against the motion, negative where the load helps it. */
  torque: Moment
  /** Torque that bearings, seals and grease take at the input shaft, load or none. */
  dragTorque?: Moment
  /** Speed of the input shaft. */
  inputSpeed?: AngularSpeed | null
  /** Moment of inertia on the input shaft, such as the motor's rotor. */
  inputInertia?: MomentOfInertia
  /** Moment of inertia of the load, about the output shaft. */
  loadInertia?: MomentOfInertia
  /** Distance from the output shaft at which play is wanted: the tip of the arm. */
  tipRadius?: Length | null
}

/** What one stage does. */
export interface GearStageResult {
  /** Turns of its driving shaft for one of its driven shaft. */
  readonly ratio: number
  /** Efficiency with the load against the motion. */
  readonly efficiency: number
  /** Efficiency with the load driving; below zero where the stage locks. */
  readonly backwardEfficiency: number
  /** Torque at its driving shaft, N·m. */
  readonly drivingTorque: number
  /** Torque at its driven shaft, N·m. */
  readonly drivenTorque: number
  /** Torque on the member of a planetary stage that is held, N·m; null for other stages. */
  readonly heldTorque: number | null
  /** Force along the pitch circle on one tooth pair (on the worm wheel; per planet), N; null without a module. */
  readonly toothForce: number | null
  /** Force of a spur pair on its shafts, N; null for other stages and without a module. */
  readonly shaftForce: number | null
  /** Fewest teeth of the smaller of two standard gears that mesh without undercut; null for a worm, and below a pressure angle of 10°. */
  readonly fewestTeeth: number | null
  /** Part of the play at the train's output that this stage causes. */
  readonly backlashShare: number
}

/** Result of {@link gearTrain}. */
export interface GearTrain {
  /** Turns of the input for one of the output. */
  readonly ratio: number
  /** Whether the output turns the other way; null where a worm crosses the axes. */
  readonly reverses: boolean | null
  /** Efficiency with the load against the motion, drag left out. */
  readonly efficiency: number
  /** Efficiency with the load driving the input shaft; null where the train locks. */
  readonly backwardEfficiency: number | null
  /** Whether a stage locks at the friction given. */
  readonly locksAtFriction: boolean
  /** Whether a stage still locks with half of that friction. */
  readonly selfLocking: boolean
  /** Torque needed at the input shaft, N·m; below zero where the load drives it. */
  readonly inputTorque: number
  /** Torque at the output that turns the train backwards with nothing but its own drag against it, N·m; null where it locks. */
  readonly backDriveTorque: number | null
  /** Torque that the mounting holds, in the sense of the input's rotation, N·m; null where a worm crosses the axes. */
  readonly housingTorque: number | null
  /** Moment of inertia of everything, felt at the input shaft, kg·m². */
  readonly inertiaAtInput: number
  /** The same, felt at the output shaft, kg·m². */
  readonly inertiaAtOutput: number
  /** Play at the output shaft, rad. */
  readonly backlash: number
  /** Play at the tip, m. */
  readonly tipPlay: number | null
  /** Speed of the output shaft, rad/s. */
  readonly outputSpeed: number | null
  /** Power into the input shaft, W; below zero where it comes back. */
  readonly inputPower: number | null
  /** Power given to the load, W; below zero where the load gives it. */
  readonly outputPower: number | null
  /** Heat in gears and bearings, W. */
  readonly heat: number | null
  /** The stages, one by one. */
  readonly stages: readonly GearStageResult[]
}
