/**
 * Verbs that act on any solver, because a solver describes itself: what if, what must this be.
 *
 * @packageDocumentation
 */

export type { Axes, Axis, Spacing, Span } from "./axes.js"
export type { PlainPath } from "./outputs.js"
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
export {
  type PointsPart,
  type PointsTask,
  type StudyOptions,
  type StudyPool,
  type StudyProgress,
  type StudySignal,
  studyWorker,
  type Told,
} from "./run.js"
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
export { type SweepOptions, sweep } from "./sweep.js"
export type { SiAt, SweepTable, TableColumn } from "./table.js"
