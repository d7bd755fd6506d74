import { chargeTime, packUnderLoad, parallelSharing, powerBank } from "../../src/pack/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["too-much-power", packUnderLoad, { power: "900 W" }],
  ["no-such-current", packUnderLoad, { power: null, current: "200 A" }],
  ["no-such-current", parallelSharing, { current: "900 A" }],
  ["port-overloaded", powerBank, { power: "40 W" }],
  ["port-overloaded", powerBank, { power: null, current: "4 A" }],
  ["port-overloaded", powerBank, { power: null, current: "4 A", loadVoltage: "12 V" }],
  ["too-cold-to-charge", chargeTime, { temperature: -5 }],
])
