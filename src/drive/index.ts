export {
  type ActuatorConstants,
  type ActuatorRating,
  actuatorConstants,
  actuatorCurrent,
  actuatorSpeed,
  warmedConstants,
  windingFactor,
} from "./actuator-constants.js"
