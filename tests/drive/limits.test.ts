import { expect, it } from "vitest"
import { dcMotor, dutyCycle, gearTrain, hobbyServo, linearActuator, powerScrew } from "../../src/drive/index.js"
import type { AnyFields } from "../../src/solver/index.js"
import { limitsOf } from "../helpers/field-limits.js"

const solvers = { dcMotor, dutyCycle, gearTrain, hobbyServo, linearActuator, powerScrew }

/** Our own choice, no source: the range each field is documented and answered for, and the default its comment names. */
const limits: Readonly<Record<keyof typeof solvers, readonly string[]>> = {
  dcMotor: [
    "ratedVoltage: min 10 mV, max 1000, default null",
    "noLoadSpeed: min 0.01, max 1e5 rpm, default null",
    "noLoadCurrent: min 0, max 1000, default 0",
    "loadTorque: min 0.00001, max 1000000, default null",
    "loadSpeed: min 0, max 1e5 rpm, default null",
    "loadCurrent: min 0.1 mA, max 10000, default null",
    "backEmfConstant: above 0.000001, max 1000, default null",
    "resistance: above 0.000001, max 1000000, default null",
    "voltage: min 10 mV, max 1000",
    "torque: min 0, max 1000000",
    "windingTemperature: min -50, max 200, default 20",
    "datasheetTemperature: min -50, max 200, default 20",
  ],
  dutyCycle: [
    "ratedDuty: min 0.001, max 1",
    "ratedRun: min 1 s, max 10 h",
    "timeConstant: min 10 s, max 100 h, default 15 min",
    "restTimeConstant: min 10 s, max 100 h, default null",
    "run: min 0.1 s, max 10 h",
    "rest: min 0, max 100 h",
    "currentShare: min 0.01, max 5, default 1",
    "limitTemperature: min 0, max 250, default 80",
    "ratedAmbient: min -40, max 100, default 25",
    "ambient: min -40, max 100, default 25",
  ],
  gearTrain: [
    "stages: min 1, max 8",
    "stages.drivingTeeth: min 1, max 1000",
    "stages.drivenTeeth: min 6, max 1000",
    "stages.path: default sun-to-carrier",
    "stages.planets: min 1, max 8, default 3",
    "stages.meshEfficiency: min 0.5, max 1, default 0.97",
    "stages.leadAngle: min 0.5 deg, max 45 deg, default null",
    "stages.friction: min 0, max 0.6, default null",
    "stages.wormEfficiency: min 0.05, max 1, default null",
    "stages.pressureAngle: min 0, max 30 deg, default 20 deg",
    "stages.module: min 0.1 mm, max 20 mm, default null",
    "stages.backlash: min 0, max 10 deg, default 0",
    "stages.inertia: min 0, max 1000, default 0",
    "torque: min -100000, max 100000",
    "dragTorque: min 0, max 10000, default 0",
    "inputSpeed: min 0, max 1e5 rpm, default null",
    "inputInertia: min 0, max 1000, default 0",
    "loadInertia: min 0, max 100000, default 0",
    "tipRadius: min 1 mm, max 20, default null",
  ],
  hobbyServo: [
    "firstVoltage: min 1, max 60",
    "firstStallTorque: min 0.00001, max 1000",
    "firstTime: min 1 ms, max 60",
    "secondVoltage: min 1, max 60, default null",
    "secondStallTorque: min 0.00001, max 1000, default null",
    "secondTime: min 1 ms, max 60, default null",
    "stallCurrent: min 0.1 mA, max 200, default null",
    "idleCurrent: min 0, max 10, default 10 mA",
    "voltage: min 0.5, max 60",
    "torque: min 0, max 1000",
    "angle: min 0, max 100 rev, default null",
    "holdShare: min 0.01, max 1, default 0.3",
  ],
  linearActuator: [
    "ratedVoltage: min 10 mV, max 1000",
    "noLoadSpeed: min 0.01 mm/s, max 10",
    "noLoadCurrent: min 0, max 1000",
    "ratedForce: min 1 mN, max 1000 kN",
    "ratedSpeed: min 0.01 mm/s, max 10",
    "ratedCurrent: min 0.1 mA, max 1000",
    "voltage: min 10 mV, max 1000",
    "force: min -1000 kN, max 1000 kN",
    "stroke: min 1 mm, max 10, default null",
    "holdingForce: min 0, max 1000 kN, default null",
    "windingTemperature: min -50, max 200, default 20",
    "datasheetTemperature: min -50, max 200, default 20",
  ],
  powerScrew: [
    "force: min 1 mN, max 1000 kN",
    "majorDiameter: min 1 mm, max 1",
    "pitch: min 0.1 mm, max 1",
    "starts: min 1, max 20, default 1",
    "flankAngle: min 0, max 90 deg, default 0",
    "threadFriction: min 0, max 1, default null",
    "threadEfficiency: min 1 %, max 1, default null",
    "collarFriction: min 0, max 1, default 0",
    "collarDiameter: min 0, max 2, default 0",
    "speed: min 0, max 10, default null",
  ],
}

it.each(Object.keys(solvers) as (keyof typeof solvers)[])(
  "%s keeps our own limits and defaults of its fields, changed only on purpose",
  (name) => {
    expect(limitsOf(solvers[name].input as unknown as AnyFields)).toEqual(limits[name])
  },
)
