export { type Catalogue, type CataloguePart, readCatalogue } from "./catalogue.js"
export {
  type AssessingKit,
  type ChangedMotion,
  type ChangedNumber,
  type ChangedVerdict,
  type Comparison,
  compare,
} from "./compare/index.js"
export {
  type Candidate,
  type Departure,
  type Diagnosis,
  type DiagnosisCaution,
  type DiagnosisInput,
  type DiagnosisOutcome,
  type DiagnosisRefusal,
  diagnose,
  diagnosis,
  type NextReading,
} from "./diagnose/index.js"
export type {
  CellResistanceReading,
  CellTemperatureReading,
  CurrentReading,
  DoesNotMove,
  DropReading,
  ForceReading,
  OneSideSlower,
  OnMotion,
  ReachReading,
  RigReading,
  SlowInTheCold,
  SoundReading,
  StopsAt,
  SwingReading,
  SwitchesOff,
  TimeReading,
  VoltageReading,
  WarmPart,
  WhenPowered,
  WrongWay,
} from "./diagnose/readings.js"
export type { RemedyCatalogue, RemedyConverter, RemedyDrive, RemedyPart, RemedyWire } from "./remedies/catalogue.js"
export {
  type Compromise,
  type MendedFinding,
  type Remedies,
  type RemediesOptions,
  type Remedy,
  type RemedyChange,
  remedies,
  type Unmended,
  withChanges,
} from "./remedies/index.js"
export type { Setting, Work } from "./remedies/rows.js"
export type { AllowedPath } from "./remedies/table.js"
export type { Choice, ChosenPart, ChosenValue, GoalReached } from "./search/choice.js"
export { type Rejection, type Search, search, searchSize } from "./search/index.js"
export type { PartPlace, SearchGoal, SearchKeep, SearchRequest, Vary, VaryFamily, VaryRange, VaryValues } from "./search/request.js"
export type { SearchOptions, SearchProgress } from "./search/run.js"
