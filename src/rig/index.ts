export type { RigAssessment, RigFinding } from "./check/assess.js"
export type { CheckSeverity, CheckVerdict, Relation } from "./check/finding.js"
export type {
  RigBudget,
  RigFormedPart,
  RigPart,
  RigPinch,
  RigSpar,
  RigVenue,
  RigWearer,
} from "./document/sections.js"
export type { Drive, DriveLine, DriveMember, Travel } from "./drives/drive.js"
export type { Mechanism, MechanismMember, MechanismPose as PoseInSpace, MechanismState, Reaction, Triple } from "./mechanisms/mechanism.js"
export type { Frame, Moving } from "./mechanisms/moving.js"
export type { MassSpread } from "./mechanisms/spread.js"
export { perform } from "./perform/index.js"
export type {
  BusTrace,
  EventType,
  MotionTrace,
  Perform,
  PerformCaution,
  PerformEnergy,
  PerformEvent,
  PerformInput,
  PerformRefusal,
  PlayedStep,
  SourceTrace,
  Stage,
  StageGust,
  StageSteps,
} from "./perform/types.js"
export type { Move, MoveCaution, MoveInput, MoveRefusal, WayEnergy, WayMove, WayPoint, WayStep } from "./run/move-types.js"
export type { QuickMove } from "./run/quick.js"
export type {
  BankSource,
  Bus,
  CellSource,
  ConstantPowerLoad,
  ControllerLoad,
  LightsLoad,
  MainsSource,
  PowerLoad,
  PowerSource,
  PowerTree,
  ResistiveLoad,
  SupplyConverter,
  SupplyEfficiency,
  SupplyRun,
} from "./supply/document.js"
export type { Transmission, TransmissionMember } from "./transmissions/transmission.js"
export type {
  DayOut,
  Documents,
  Motion,
  Mount,
  Moved,
  Posture,
  ProgrammeStep,
  Rig,
  RigDrive,
  RigMechanism,
  RigTransmission,
  Typed,
  Wanted,
  WornSections,
} from "./whole/document.js"
export type { DriveDuty, FixedThings } from "./whole/motion-sections.js"
export { assessRig, type Carrying, move, type PartsOf, quickMove, type RigKit, readRig, rigWith, writeRig } from "./whole/rig-with.js"
