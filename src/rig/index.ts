export type { Verdict } from "./assess/finding.js"
export { type Assessment, assess, type Finding } from "./assess/index.js"
export type { RigAssessment, RigFinding } from "./check/assess.js"
export type { CheckSeverity, CheckVerdict, Relation } from "./check/finding.js"
export type {
  ArmMass,
  HelperSpring,
  HingedArms,
  RigActuator,
  RigBank,
  RigBrief,
  RigConverter,
  RigDocument,
  RigEfficiencyPoint,
  RigMovingPivot,
  RigPack,
  RigPoint,
  RigRun,
  RigWiring,
} from "./document/document.js"
export { rigFields } from "./document/fields.js"
export { RIG_VERSION, readRig, writeRig } from "./document/read.js"
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
} from "./document/sections.js"
export type { Drive, DriveLine, DriveMember, Travel } from "./drives/drive.js"
export type { Mechanism, MechanismMember, MechanismPose as PoseInSpace, MechanismState, Reaction, Triple } from "./mechanisms/mechanism.js"
export { type MoveTime, moveTime } from "./move/move-time/index.js"
export type { EnergyAccount, Move, MovePoint, WaterfallStep } from "./move/summary.js"
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
export type { Move as MotionMove, MoveCaution, MoveInput, MoveRefusal, WayEnergy, WayMove, WayPoint, WayStep } from "./run/move-types.js"
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
export { assessRig, type Carrying, move, type PartsOf, quickMove, type RigKit, rigWith } from "./whole/rig-with.js"
