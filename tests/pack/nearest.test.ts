import { chargeTime, packSize, packUnderLoad, parallelSharing, powerBank, runtime } from "../../src/pack/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["insufficient-power", packUnderLoad, { power: "900 W" }],
  ["insufficient-current", packUnderLoad, { power: null, current: "200 A" }],
  ["insufficient-current", parallelSharing, { current: "900 A" }],
  ["insufficient-current", powerBank, { power: "40 W" }],
  ["insufficient-current", powerBank, { power: null, current: "4 A" }],
  ["insufficient-current", powerBank, { power: null, current: "4 A", loadVoltage: "12 V" }],
  ["too-cold", chargeTime, { cellTemperature: -5 }],
  ["already-full", chargeTime, { startStateOfCharge: 1 }],
  ["already-full", chargeTime, { startStateOfCharge: 1, chemistry: "nimh" }],
  ["insufficient-voltage", chargeTime, { cellChargeVoltage: "2.4 V" }],
  ["insufficient-voltage", runtime, { pattern: [{ current: "60 A" }] }],
  ["insufficient-power", runtime, { cellCutOffVoltage: "0.5 V", pattern: [{ power: "500 W" }] }],
  ["depleted", runtime, { startStateOfCharge: 0, cellCutOffVoltage: "0.1 V", pattern: [{ power: "0.1 W" }] }],
  ["no-candidate", packSize, { maxMass: "50 g" }],
])
