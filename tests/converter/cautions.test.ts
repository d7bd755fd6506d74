import { boostStage, constantPowerPoint, converterLimit, startUp, usbSupply } from "../../src/converter/index.js"
import { cautionTests } from "../helpers/cautions.js"

cautionTests([
  // half of 180 W; 5 W in 0.2 ohm are 5 A
  ["near-collapse", constantPowerPoint, { power: "91 W" }, { power: "89 W" }],
  ["burns", constantPowerPoint, { power: "56 W" }, { power: "54 W" }],
  ["oscillation", constantPowerPoint, { capacitance: "1 uF" }, { capacitance: "100 uF" }],
  ["hiccup", converterLimit, { inputCurrentLimit: null, sourceResistance: "0.5 ohm" }, {}],
  ["output-collapsed", converterLimit, { outputCurrentLimit: "1.4 A" }, { outputCurrentLimit: "1.6 A" }],
  ["straight-through", converterLimit, { loadCurrent: "3 A" }, {}],
  ["outside-range", converterLimit, { loadCurrent: "1.6 A" }, { loadCurrent: "1.5 A" }],
  ["outside-range", converterLimit, { loadCurrent: "0.1 A" }, { loadCurrent: "0.2 A" }],
  // limit 1.965 A as in the example; 85 % duty at 5 V is 33.3 V before the losses
  ["switch-limit", boostStage, { outputCurrent: "2 A" }, { outputCurrent: "1.9 A" }],
  ["long-duty", boostStage, { outputVoltage: "32 V" }, { outputVoltage: "30 V" }],
  ["resting-current", boostStage, { outputCurrent: "0.01 A" }, {}],
  ["brown-out", startUp, { resetVoltage: "5 V" }, { resetVoltage: "3 V" }],
  ["never-starts", startUp, { loadTorque: "50 mN m" }, {}],
  ["jerks", startUp, { currentLimit: "3 A", limitAction: "hiccup", onTime: "3 ms", offTime: "1 ms", loadTorque: "4 mN m" }, {}],
  ["times-vary", startUp, { limitAction: "latch" }, { limitAction: "hold" }],
  ["over-current", usbSupply, { loadCurrent: "3.01 A" }, { loadCurrent: "3 A" }],
  ["overheating", usbSupply, { loadCurrent: "3.01 A" }, { loadCurrent: "3.01 A", cableMarked: true }],
  ["overheating", usbSupply, { loadCurrent: "3.01 A" }, { loadCurrent: "2 A" }],
  ["enumerate", usbSupply, { type: "usb2" }, {}],
  ["auto-off", usbSupply, { loadCurrent: "90 mA" }, { loadCurrent: "110 mA" }],
  ["low-voltage", usbSupply, { cableLength: null }, { loadCurrent: "0.5 A" }],
  ["twelve-volts", usbSupply, { type: "pd-5V" }, {}],
  ["negotiated-voltage", usbSupply, { type: "pd-9V", ratedPower: "20 W", loadCurrent: "1 A" }, { type: "pd-5V", ratedPower: "20 W" }],
])
