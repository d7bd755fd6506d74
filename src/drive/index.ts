export { type DcMotorInput, type MotorConstants, motorConstants } from "./dc-motor/constants.js"
export { type DcMotor, dcMotor } from "./dc-motor/index.js"
export { type DutyCycle, type DutyCycleInput, dutyCycle } from "./duty-cycle.js"
export {
  type GearStage,
  type GearStageResult,
  type GearTrain,
  type GearTrainInput,
  gearTrain,
  type PlanetaryPath,
} from "./gear-train/index.js"
export { type HobbyServo, type HobbyServoInput, hobbyServo } from "./hobby-servo.js"
export {
  type ActuatorConstants,
  type ActuatorRating,
  actuatorConstants,
  actuatorCurrent,
  actuatorSpeed,
  warmedConstants,
  windingFactor,
} from "./linear-actuator/constants.js"
export { type LinearActuator, type LinearActuatorInput, linearActuator } from "./linear-actuator/index.js"
export { type PowerScrew, type PowerScrewInput, powerScrew } from "./power-screw.js"
