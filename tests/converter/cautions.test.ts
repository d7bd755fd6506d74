import { boostStage, constantPowerPoint, converterLimit, startUp, usbSupply } from "../../src/converter/index.js"
import { cautionTests } from "../helpers/cautions.js"

cautionTests([
  // half of 180 W; 5 W in 0.2 ohm are 5 A
  ["near-collapse", constantPowerPoint, { power: "91 W" }, { power: "89 W" }],
  ["hot-line", constantPowerPoint, { power: "56 W" }, { power: "54 W" }],
  ["oscillation", constantPowerPoint, { capacitance: "1 uF" }, { capacitance: "100 uF" }],
  ["hiccup", converterLimit, { inputCurrentLimit: null, sourceResistance: "0.5 ohm" }, {}],
  ["output-collapsed", converterLimit, { outputCurrentLimit: "1.4 A" }, { outputCurrentLimit: "1.6 A" }],
  ["straight-through", converterLimit, { loadCurrent: "3 A" }, {}],
  ["outside-curve", converterLimit, { loadCurrent: "1.6 A" }, { loadCurrent: "1.5 A" }],
  ["outside-curve", converterLimit, { loadCurrent: "0.1 A" }, { loadCurrent: "0.2 A" }],
  // limit 1.965 A as in the example; 85 % duty at 5 V is 33.3 V before the losses
  ["switch-limit", boostStage, { outputCurrent: "2 A" }, { outputCurrent: "1.9 A" }],
  ["long-duty", boostStage, { outputVoltage: "32 V" }, { outputVoltage: "30 V" }],
  ["resting-current", boostStage, { outputCurrent: "0.01 A" }, {}],
  ["brown-out", startUp, { resetBelow: "5 V" }, { resetBelow: "3 V" }],
  ["never-starts", startUp, { loadTorque: "50 mN m" }, {}],
  ["jerks", startUp, { currentLimit: "3 A", limitAction: "hiccup", onTime: "3 ms", offTime: "1 ms", loadTorque: "4 mN m" }, {}],
  ["times-vary", startUp, { limitAction: "latch" }, { limitAction: "hold" }],
  ["beyond-promise", usbSupply, { current: "3.01 A" }, { current: "3 A" }],
  ["hot-connector", usbSupply, { current: "3.01 A" }, { current: "3.01 A", markedCable: true }],
  ["hot-connector", usbSupply, { current: "3.01 A" }, { current: "2 A" }],
  ["enumerate", usbSupply, { standard: "usb2" }, {}],
  ["auto-off", usbSupply, { current: "90 mA" }, { current: "110 mA" }],
  ["low-voltage", usbSupply, { cableLength: null }, { current: "0.5 A" }],
  ["twelve-volts", usbSupply, { standard: "pd-5V" }, {}],
  ["negotiated-voltage", usbSupply, { standard: "pd-9V", ratedPower: "20 W", current: "1 A" }, { standard: "pd-5V", ratedPower: "20 W" }],
])
