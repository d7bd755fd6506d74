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
