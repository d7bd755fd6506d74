import { boostStage, buckStage, constantPowerPoint, converterLimit, usbSupply } from "../../src/converter/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["not-a-step-up", boostStage, { outputVoltage: "4 V" }],
  ["not-a-step-up", boostStage, { outputVoltage: "4.8 V", diodeVoltage: "0.1 V" }],
  ["not-a-step-up", boostStage, { switchVoltage: "5.2 V" }],
  ["not-a-step-down", buckStage, { inputVoltage: "5 V" }],
  ["power-beyond-source", constantPowerPoint, { power: "200 W" }],
  ["input-too-low", converterLimit, { minimumInput: "8 V" }],
  ["input-too-high", converterLimit, { maximumInput: "4 V" }],
  ["not-offered", usbSupply, { standard: "pd-15V", ratedPower: "27 W" }],
  ["cable-too-thin", usbSupply, { cableLength: "40 m" }],
])
