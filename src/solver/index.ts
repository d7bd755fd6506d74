export { type Band, type BandField, type BandWords, bandAcross, bandField, bandOf } from "./band.js"
export { resultToUnitsNet } from "./bridge.js"
export { type Caution, caution, type Severity } from "./caution.js"
export { display, displayNumber, fieldsOf } from "./display.js"
export { type Alternative, type Either, namesIn } from "./either.js"
export { InputError, type Issue, type IssueCode, isNoSolution, type NoSolution, NoSolutionError, refuse } from "./errors.js"
export {
  type AnyField,
  type AnyFields,
  type AnyGroup,
  type AnyOutField,
  type AnyOutFields,
  type ChoiceField,
  type Field,
  type Fields,
  type FlagField,
  type GroupField,
  type High,
  type ListField,
  type Low,
  type Member,
  type Nullable,
  type NumberField,
  type OutField,
  type OutFields,
  type OutQuantity,
  type OutText,
  optionsFrom,
  type QuantityField,
  type SiOf,
  type TextField,
  type VariantField,
  without,
} from "./fields.js"
export type { Equation, Formula, Given, Solved, Step } from "./formulae.js"
export { inconsistent, issue, type Path, pathText } from "./issue.js"
export type { JsonSchema } from "./json.js"
export { objectSchema } from "./json-schema.js"
export { fill, type NamesOf, type Values, type ValuesFor } from "./message.js"
export { type Knob, tried, withNearest, withNumber } from "./nearest.js"
export { type Attempt, type Definition, type Kernel, type Result, type Solver, solver } from "./solver.js"
export { at, citation, commonPractice, type Source } from "./source.js"
export type { Transmits } from "./transmits.js"
