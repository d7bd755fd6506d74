import { expect, it } from "vitest"
import { boostStage, buckStage, constantPowerPoint, converterLimit, startUp, usbSupply } from "../../src/converter/index.js"
import type { AnyFields } from "../../src/solver/index.js"
import { limitsOf } from "../helpers/field-limits.js"

const solvers = { boostStage, buckStage, constantPowerPoint, converterLimit, startUp, usbSupply }

/** The range each field is documented and answered for, and the default its comment names: changed only on purpose. */
const limits: Readonly<Record<keyof typeof solvers, readonly string[]>> = {
  boostStage: [
    "inputVoltage: min 10 mV, max 1000",
    "outputVoltage: min 10 mV, max 1000",
    "outputCurrent: min 1 uA, max 1000",
    "inductance: min 1 nH, max 10000",
    "frequency: min 1, max 1000000000",
    "inductanceTolerance: min 0, max 0.9, default 0",
    "efficiency: min 0.05, max 1, default 90 %",
    "diodeVoltage: min 0, max 100, default null",
    "switchVoltage: min 0, max 100, default 0",
    "switchCurrentLimit: min 0.1 mA, max 1000, default null",
    "limitType: default peak",
    "rippleRatio: min 0.01, max 2, default 30 %",
  ],
  buckStage: [
    "inputVoltage: min 10 mV, max 1000",
    "outputVoltage: min 10 mV, max 1000",
    "outputCurrent: min 1 uA, max 1000",
    "inductance: min 1 nH, max 10000",
    "frequency: min 1, max 1000000000",
    "inductanceTolerance: min 0, max 0.9, default 0",
    "efficiency: min 0.05, max 1, default 90 %",
    "diodeVoltage: min 0, max 100, default null",
    "switchVoltage: min 0, max 100, default 0",
    "switchCurrentLimit: min 0.1 mA, max 1000, default null",
    "limitType: default peak",
    "rippleRatio: min 0.01, max 2, default 30 %",
  ],
  constantPowerPoint: [
    "sourceVoltage: min 10 mV, max 1000",
    "sourceResistance: min 1 uohm, max 1000000",
    "power: min 0.000001, max 100000",
    "inductance: min 0, max 1, default 1 uH",
    "capacitance: min 1e-12, max 100, default null",
  ],
  converterLimit: [
    "outputVoltage: min 10 mV, max 1000",
    "loadCurrent: min 0, max 1000",
    "sourceVoltage: min 10 mV, max 1000",
    "sourceResistance: min 0, max 1000, default 0",
    "inputCurrentLimit: min 0.1 mA, max 1000, default null",
    "outputCurrentLimit: min 0.1 mA, max 1000, default null",
    "efficiency: min 1, max 1000",
    "efficiency.outputCurrent: min 0, max 1000",
    "efficiency.efficiency: min 1 %, max 1",
    "quiescentCurrent: min 0, max 100, default 0",
    "minInputVoltage: min 0, max 1000, default 0",
    "maxInputVoltage: min 10 mV, max 1000, default null",
    "topology: default null",
  ],
  startUp: [
    "sourceVoltage: min 10 mV, max 1000",
    "sourceResistance: min 0, max 1000, default 0",
    "currentLimit: min 0.1 mA, max 1000, default null",
    "limitAction: default hold",
    "onTime: min 0, max 100, default 10 ms",
    "offTime: min 0, max 1000, default 300 ms",
    "motors: min 1, max 100, default 1",
    "windingResistance: min 1 mohm, max 10000",
    "backEmfConstant: min 0.00001, max 100",
    "inertia: min 1e-10, max 1000",
    "loadTorque: min 0, max 1000",
    "resetVoltage: min 10 mV, max 1000, default null",
  ],
  usbSupply: [
    "loadCurrent: min 0.1 mA, max 10",
    "ratedPower: min 0.1 W, max 240, default null",
    "cableMarked: default false",
    "cableLength: min 0, max 100, default null",
    "conductorResistance: min 0.000001, max 10, default 0.0909",
    "contacts: min 0, max 100, default 4",
    "contactResistance: min 0, max 10, default 30 mohm",
  ],
}

it.each(Object.keys(solvers) as (keyof typeof solvers)[])("%s keeps the limits and defaults of its fields", (name) => {
  expect(limitsOf(solvers[name].input as unknown as AnyFields)).toEqual(limits[name])
})
