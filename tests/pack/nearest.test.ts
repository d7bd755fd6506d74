import { chargeTime, packUnderLoad, parallelSharing, powerBank, runtime, sizePack } from "../../src/pack/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["too-much-power", packUnderLoad, { power: "900 W" }],
  ["no-such-current", packUnderLoad, { power: null, current: "200 A" }],
  ["no-such-current", parallelSharing, { current: "900 A" }],
  ["port-overloaded", powerBank, { power: "40 W" }],
  ["port-overloaded", powerBank, { power: null, current: "4 A" }],
  ["port-overloaded", powerBank, { power: null, current: "4 A", loadVoltage: "12 V" }],
  ["too-cold-to-charge", chargeTime, { temperature: -5 }],
  ["already-full", chargeTime, { startCharge: 1 }],
  ["already-full", chargeTime, { startCharge: 1, chemistry: "nimh" }],
  ["charge-voltage-too-low", chargeTime, { chargeVoltage: "2.4 V" }],
  ["cut-off-at-start", runtime, { pattern: [{ current: "60 A" }] }],
  ["too-much-power", runtime, { cutOffVoltage: "0.5 V", pattern: [{ power: "500 W" }] }],
  ["empty", runtime, { startCharge: 0, cutOffVoltage: "0.1 V", pattern: [{ power: "0.1 W" }] }],
  ["no-pack-fits", sizePack, { maxMass: "50 g" }],
])
