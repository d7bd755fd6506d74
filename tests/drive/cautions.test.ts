import { dutyCycle, hobbyServo, linearActuator } from "../../src/drive/index.js"
import { cautionTests } from "../helpers/cautions.js"

cautionTests([
  ["must-rest", dutyCycle, { rest: "120 s" }, { rest: "140 s" }],
  ["longer-run", dutyCycle, { run: "121 s" }, { run: "119 s" }],
  ["far-over-rated", dutyCycle, { currentShare: 1.51 }, { currentShare: 1.49 }],
  ["over-voltage", hobbyServo, { voltage: "6.05 V" }, { voltage: "6 V" }],
  ["extrapolated", hobbyServo, { voltage: "4.7 V" }, { voltage: "4.8 V" }],
  // 0.3 of 10 kgf·cm
  ["cannot-hold", hobbyServo, { torque: "3.01 kgf cm" }, { torque: "2.99 kgf cm" }],
  ["supply-for-stall", hobbyServo, {}, { stallCurrent: null }],
  // two ampere beyond friction give 500 N at 2.2 A; an efficient screw lets a heavy load push back
  [
    "runs-away",
    linearActuator,
    { noLoadSpeed: "0.1 m/s", ratedSpeed: "80 mm/s", noLoadCurrent: 1, ratedCurrent: 3, ratedForce: 163, force: -400 },
    {},
  ],
])
