export { type BoostStage, type BoostStageInput, boostStage } from "./boost-stage.js"
export { type BuckStage, type BuckStageInput, buckStage } from "./buck-stage.js"
export { type ConstantPowerPoint, type ConstantPowerPointInput, constantPowerPoint } from "./constant-power.js"
export { type ConverterLimit, type ConverterLimitInput, converterLimit, type EfficiencyPoint } from "./converter-limit.js"
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
export type { StageInput, StageResult } from "./stage-fields.js"
