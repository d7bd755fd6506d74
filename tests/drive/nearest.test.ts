import { dcMotor, hobbyServo, linearActuator, powerScrew } from "../../src/drive/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["cannot-start", dcMotor, { voltage: "0.1 V" }],
  ["stall", dcMotor, { torque: "5 N m" }],
  ["stall", linearActuator, { force: "2 kN" }],
  ["stall", hobbyServo, { torque: "2 N m" }],
  ["cannot-start", hobbyServo, { secondStallTorque: "20 kgf cm", voltage: "2 V", torque: "0.2 N m" }],
  ["jams", powerScrew, { pitch: "4 mm", starts: 8, threadFriction: 0.9 }],
])
