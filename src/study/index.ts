/**
 * Verbs that act on any solver, because a solver describes itself: what if, what must this be, what moves it, how sure am I, what is best, what do my
 * readings say.
 *
 * @packageDocumentation
 */

export type { OutputLimit } from "./asked.js"
export type { Axes, Axis, Spacing, Span } from "./axes.js"
export type { Refusal } from "./bench.js"
export { type Fit, type FitOptions, type Fitted, type FittedReading, fit, type Reading, type Untold } from "./fit.js"
export { type Design, type Nearest, type OptimizeOptions, type Optimum, optimize } from "./optimize.js"
export type { PlainPath } from "./outputs.js"
export type { StudyPool, StudySignal } from "./pace.js"
export type { PathTo, ResultAt, Sort, ValueAt } from "./paths.js"
export {
  type ChoicePlace,
  type FlagPlace,
  type InputPlace,
  inputPlaces,
  isNumberPlace,
  type NumberPlace,
  type OutputPlace,
  outputPlaces,
  type TextPlace,
} from "./places.js"
export type { Allowed, AllowedValues } from "./ranges.js"
export {
  type PointsPart,
  type PointsTask,
  type StudyOptions,
  type StudyProgress,
  studyWorker,
  type Told,
} from "./run.js"
export {
  type Estimate,
  type Influence,
  type OutputSensitivity,
  type Sensitivity,
  type SensitivityOptions,
  sensitivity,
} from "./sensitivity.js"
export { solveFor } from "./solve-for/index.js"
export type {
  MetStretch,
  RefusedStretch,
  SeriesRow,
  SolvedFor,
  SolveHit,
  SolveJump,
  SolveTarget,
  StretchEdge,
  Varied,
  VariedRow,
  WantedOfAxes,
  WantedOfInput,
  WantedOfRows,
} from "./solve-for/types.js"
export type { Spread, Spreads } from "./spread.js"
export { type SweepOptions, sweep } from "./sweep.js"
export type { SiAt, SweepTable, TableColumn } from "./table.js"
export {
  type Chance,
  type LimitChance,
  type OutputSpread,
  type Percentile,
  type Uncertainty,
  type UncertaintyOptions,
  uncertainty,
} from "./uncertainty.js"
export type { Extreme, Worst } from "./worst.js"
