export { type ConstantPowerPoint, type ConstantPowerPointInput, constantPowerPoint } from "./constant-power.js"
export { type ConverterLimit, converterLimit } from "./converter-limit/index.js"
export type { ConverterLimitInput, EfficiencyPoint } from "./converter-limit/problem.js"
export { type UsbPromise, type UsbStandard, usbLimits, usbPromises } from "./data.js"
export {
  type ConverterPoint,
  type ConverterSpec,
  converterOutput,
  efficiencyAt,
  type InputBound,
  inputBound,
  type LimitedBy,
  type SourceLine,
} from "./limit.js"
export { type BoostStage, type BoostStageInput, boostStage } from "./stage/boost-stage.js"
export { type BuckStage, type BuckStageInput, buckStage } from "./stage/buck-stage.js"
export type { StageInput, StageResult } from "./stage/fields.js"
export { type LimitAction, type StartUp, type StartUpInput, startUp } from "./start-up/index.js"
export { type UsbSupply, type UsbSupplyInput, usbSupply } from "./usb-supply/index.js"
