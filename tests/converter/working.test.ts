import { boostStage, buckStage, constantPowerPoint, converterLimit, startUp, usbSupply } from "../../src/converter/index.js"
import { any, type WorkingCase, workingTests } from "../helpers/working.js"

const stage = { outputCurrent: 1, inductance: 1e-5, frequency: 5e5, switchVoltage: 0.1, inductanceTolerance: 0.2 }
const limit = {
  outputVoltage: 12,
  loadCurrent: 1,
  sourceVoltage: 5,
  sourceResistance: 0.2,
  efficiency: [{ outputCurrent: 1, efficiency: 0.9 }],
}
const motor = { sourceVoltage: 12, windingResistance: 2, backEmfConstant: 0.02, inertia: 8e-7, loadTorque: 0.01 }

/** Inputs far from the solvers' own examples. */
const cases: readonly WorkingCase[] = [
  ["20 V through a marked cable", any(usbSupply), { type: "pd-20V", ratedPower: 120, cableMarked: true, loadCurrent: 4 }],
  ["20 V through any cable", any(usbSupply), { type: "pd-20V", ratedPower: 100, loadCurrent: 2, cableLength: 1.2 }],
  ["15 V, bound by its power", any(usbSupply), { type: "pd-15V", ratedPower: 30, cableMarked: true, loadCurrent: 1, contacts: 0 }],
  ["28 V", any(usbSupply), { type: "pd-28V", ratedPower: 140, cableMarked: true, loadCurrent: 4 }],
  ["data port", any(usbSupply), { type: "usb2", loadCurrent: 0.4, cableLength: 3, conductorResistance: 0.2 }],
  ["resting current", any(boostStage), { ...stage, inputVoltage: 5, outputVoltage: 12, outputCurrent: 0.02, diodeVoltage: 0.4 }],
  ["step-up, valley limit", any(boostStage), { ...stage, inputVoltage: 5, outputVoltage: 9, switchCurrentLimit: 3, limitType: "valley" }],
  ["step-up, low peak limit", any(boostStage), { ...stage, inputVoltage: 5, outputVoltage: 9, switchCurrentLimit: 0.2, diodeVoltage: 0.3 }],
  [
    "step-down, resting current",
    any(buckStage),
    { ...stage, inputVoltage: 12, outputVoltage: 5, outputCurrent: 0.02, switchCurrentLimit: 2 },
  ],
  ["step-down, valley limit", any(buckStage), { ...stage, inputVoltage: 24, outputVoltage: 5, switchCurrentLimit: 2, limitType: "valley" }],
  ["at the limit", any(constantPowerPoint), { sourceVoltage: 5, sourceResistance: 0.25, power: 25, inductance: 2e-6 }],
  ["nothing binds", any(converterLimit), { ...limit, loadCurrent: 0.2, quiescentCurrent: 0.01 }],
  ["source power binds", any(converterLimit), { ...limit, loadCurrent: 4 }],
  ["least input binds", any(converterLimit), { ...limit, minInputVoltage: 4.5, loadCurrent: 2 }],
  ["output limit binds", any(converterLimit), { ...limit, outputCurrentLimit: 0.5, inputCurrentLimit: 4 }],
  ["buck", any(converterLimit), { ...limit, outputVoltage: 3.3, topology: "buck", loadCurrent: 0.3 }],
  ["no limit", any(startUp), motor],
  ["held", any(startUp), { ...motor, currentLimit: 2, motors: 2, sourceResistance: 0.2 }],
  [
    "hiccups that come to an end",
    any(startUp),
    { ...motor, currentLimit: 3, limitAction: "hiccup", onTime: 3e-3, offTime: 1e-3, loadTorque: 4e-3 },
  ],
  ["stays off", any(startUp), { ...motor, currentLimit: 2, limitAction: "latch", onTime: 1e-4 }],
  ["stalls", any(startUp), { ...motor, loadTorque: 0.2 }],
]

workingTests(cases)
