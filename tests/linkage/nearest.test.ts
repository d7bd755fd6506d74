import { fourBar, fourBarLimits, grashof, scissor, servoPushrod, sliderCrank } from "../../src/linkage/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["cannot-close", grashof, { coupler: "300 mm" }],
  ["cannot-close", fourBarLimits, { ground: "260 mm" }],
  ["cannot-close", fourBar, { input: "75 mm", coupler: "45 mm", output: "85 mm", inputAngle: "170 deg" }],
  ["cannot-close", sliderCrank, { coupler: "15 mm", offset: 0, crankAngle: "80 deg" }],
  ["stall", scissor, { tilt: "90 deg", driverForce: "80 N" }],
  ["binding", servoPushrod, { servoHorn: "25 mm", flapHorn: "20 mm", travelTo: "90 deg", servoTorque: null }],
  ["binding", servoPushrod, { servoHorn: "25 mm", flapHorn: "20 mm", travelFrom: "-90 deg", travelTo: "10 deg", servoTorque: null }],
  ["stall", servoPushrod, { servoTorque: "0.01 N m" }],
])
