export {
  type Catalogue,
  type CatalogueActuator,
  type CatalogueCell,
  type CatalogueConverter,
  type CataloguePart,
  type CataloguePlacement,
  type CatalogueSpring,
  type CatalogueWire,
  readCatalogue,
} from "./catalogue.js"
export type { FaultName } from "./diagnose/faults.js"
export { type Candidate, type Diagnosis, type DiagnosisInput, diagnose, diagnosis, type NextMeasure } from "./diagnose/index.js"
export type { Measured, MeasuredAngle, MeasuredCurrent, MeasuredForce, MeasuredTime, MeasuredVoltage } from "./diagnose/measured.js"
export type { MeasureName, WarmPart } from "./diagnose/measures.js"
export type { SearchGoals } from "./search/goals.js"
export { type Search, search } from "./search/index.js"
export type { Choice, Rejection } from "./search/report.js"
export type { CancelSignal, SearchOptions, SearchPool, SearchProgress } from "./search/run.js"
