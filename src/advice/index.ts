export { type Catalogue, type CataloguePart, readCatalogue } from "./catalogue.js"
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
export type { Choice, ChosenPart, ChosenValue, GoalReached } from "./search/choice.js"
export { type Rejection, type Search, search, searchSize } from "./search/index.js"
export type { PartPlace, SearchGoal, SearchKeep, SearchRequest, Vary, VaryFamily, VaryRange, VaryValues } from "./search/request.js"
export type { SearchOptions, SearchProgress } from "./search/run.js"
