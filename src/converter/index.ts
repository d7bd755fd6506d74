export {
  type ConstantPowerPoint,
  type ConstantPowerPointCaution,
  type ConstantPowerPointInput,
  type ConstantPowerPointRefusal,
  constantPowerPoint,
} from "./constant-power.js"
export {
  type ControllerSupply,
  type ControllerSupplyCaution,
  type ControllerSupplyInput,
  controllerSupply,
  type DirectFeed,
  type LinearFeed,
  type SignalLine,
  type SwitchingFeed,
} from "./controller-supply/index.js"
export { type ConverterLimit, type ConverterLimitCaution, type ConverterLimitRefusal, converterLimit } from "./converter-limit/index.js"
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
export {
  type BipolarBridge,
  type BridgeSwitching,
  type MosfetBridge,
  type MotorDriver,
  type MotorDriverCaution,
  type MotorDriverInput,
  type MotorDriverRefusal,
  motorDriver,
} from "./motor-driver/index.js"
export { type BoostStage, type BoostStageCaution, type BoostStageInput, type BoostStageRefusal, boostStage } from "./stage/boost-stage.js"
export { type BuckStage, type BuckStageCaution, type BuckStageInput, type BuckStageRefusal, buckStage } from "./stage/buck-stage.js"
export type { StageInput, StageResult } from "./stage/fields.js"
export { type LimitAction, type StartUp, type StartUpCaution, type StartUpInput, startUp } from "./start-up/index.js"
export { type UsbSupply, type UsbSupplyCaution, type UsbSupplyInput, type UsbSupplyRefusal, usbSupply } from "./usb-supply/index.js"
