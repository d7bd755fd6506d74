export {
  type HingeGeometry,
  hingeAngleAt,
  hingeLengthAt,
  hingeLengthRange,
  hingeLeverAt,
  hingePinAt,
  type Point,
  wrapAngle,
} from "./hinge.js"
