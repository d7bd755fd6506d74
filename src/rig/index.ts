export { type Assessment, assess, type Finding } from "./assess.js"
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
export { type Candidate, type Diagnosis, type DiagnosisInput, diagnose, diagnosis, type NextMeasure } from "./diagnose.js"
export type {
  ArmMass,
  EfficiencyPoint,
  HelperSpring,
  HingedArms,
  RigActuator,
  RigBank,
  RigBrief,
  RigConverter,
  RigDocument,
  RigPack,
  RigPoint,
  RigRun,
  RigWiring,
} from "./document.js"
export { rigFields } from "./document-fields.js"
export type { FaultName } from "./faults.js"
export type { Verdict } from "./finding.js"
export type { Measured, MeasuredAngle, MeasuredCurrent, MeasuredForce, MeasuredTime, MeasuredVoltage } from "./measured.js"
export type { MeasureName, WarmPart } from "./measures.js"
export { moveText } from "./move-report.js"
export type { CurvePoint, EnergyAccount, Move, WaterfallStep } from "./move-summary.js"
export { type MoveTime, moveTime } from "./move-time.js"
export { posePicture } from "./pose-picture.js"
export { RIG_VERSION, readRig, writeRig } from "./read.js"
export { type Report, report } from "./report.js"
export { type Search, search } from "./search.js"
export type { SearchGoals } from "./search-goals.js"
export type { Choice, Rejection } from "./search-report.js"
export type { CancelSignal, SearchOptions, SearchPool, SearchProgress } from "./search-run.js"
export type {
  RigBudget,
  RigDay,
  RigFlaps,
  RigFormedPart,
  RigMount,
  RigPart,
  RigPinch,
  RigScissor,
  RigSpar,
  RigStarting,
  RigVenue,
  RigWearer,
} from "./sections.js"
