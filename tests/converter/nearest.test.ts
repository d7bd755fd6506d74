import { boostStage, buckStage, constantPowerPoint, converterLimit, usbSupply } from "../../src/converter/index.js"
import { nearestTests } from "../helpers/nearest.js"

nearestTests([
  ["input-too-high", boostStage, { outputVoltage: "4 V" }],
  ["input-too-high", boostStage, { outputVoltage: "4.8 V", diodeVoltage: "0.1 V" }],
  ["input-too-high", boostStage, { switchVoltage: "5.2 V" }],
  ["insufficient-voltage", buckStage, { inputVoltage: "5 V" }],
  ["insufficient-power", constantPowerPoint, { power: "200 W" }],
  ["insufficient-voltage", converterLimit, { minInputVoltage: "8 V" }],
  ["input-too-high", converterLimit, { maxInputVoltage: "4 V" }],
  ["not-offered", usbSupply, { type: "pd-15V", ratedPower: "27 W" }],
  ["insufficient-voltage", usbSupply, { cableLength: "40 m" }],
])
