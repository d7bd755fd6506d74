export type { Transmits } from "../solver/index.js"
export {
  type BeltDrive,
  type BeltDriveCaution,
  type BeltDriveInput,
  type BeltDriveRefusal,
  beltDrive,
  drawBeltDrive,
  type FlatBelt,
  type RoundBelt,
  type ToothedBelt,
  type VBelt,
} from "./belt-drive/index.js"
export {
  type Cable,
  type CableCaution,
  type CableConstruction,
  type CableInput,
  type CablePulley,
  type CableRefusal,
  type CableSpan,
  cable,
  cableConstructions,
  drawCable,
  type PulleyRoute,
  type SheathBend,
  type SheathedRoute,
} from "./cable/index.js"
export { type ChainDrive, type ChainDriveCaution, type ChainDriveInput, chainDrive, drawChainDrive } from "./chain-drive/index.js"
export { type DcMotorInput, type MotorConstants, motorConstants } from "./dc-motor/constants.js"
export { type DcMotor, type DcMotorCaution, type DcMotorRefusal, dcMotor } from "./dc-motor/index.js"
export { type DutyCycle, type DutyCycleCaution, type DutyCycleInput, dutyCycle } from "./duty-cycle.js"
export {
  type AbsorberStop,
  drawEndStop,
  type EndStop,
  type EndStopCaution,
  type EndStopInput,
  type EndStopRefusal,
  endStop,
  type SpringStop,
} from "./end-stop/index.js"
export {
  type GearStage,
  type GearStageResult,
  type GearTrain,
  type GearTrainCaution,
  type GearTrainInput,
  gearTrain,
  type PlanetaryPath,
  type PlanetaryStage,
  type SpurStage,
  type WormStage,
} from "./gear-train/index.js"
export { type Gearmotor, type GearmotorCaution, type GearmotorInput, type GearmotorRefusal, gearmotor } from "./gearmotor/index.js"
export { type HobbyServo, type HobbyServoCaution, type HobbyServoInput, type HobbyServoRefusal, hobbyServo } from "./hobby-servo.js"
export {
  type ActuatorConstants,
  type ActuatorRating,
  actuatorConstants,
  actuatorCurrent,
  actuatorSpeed,
  warmedConstants,
  windingFactor,
} from "./linear-actuator/constants.js"
export {
  type LinearActuator,
  type LinearActuatorCaution,
  type LinearActuatorInput,
  type LinearActuatorRefusal,
  linearActuator,
} from "./linear-actuator/index.js"
export {
  drawMotionProfile,
  type LimitedMove,
  type MotionProfile,
  type MotionProfileCaution,
  type MotionProfileInput,
  type MoveTorques,
  motionProfile,
  type TimedMove,
} from "./motion-profile/index.js"
export { type PowerScrew, type PowerScrewCaution, type PowerScrewInput, type PowerScrewRefusal, powerScrew } from "./power-screw.js"
export { type ServoSheet, servoNoLoadSpeed, servoStallTorque } from "./servo-sheet.js"
export { drawWinch, type Winch, type WinchCaution, type WinchInput, type WinchLayer, type WinchRefusal, winch } from "./winch/index.js"
