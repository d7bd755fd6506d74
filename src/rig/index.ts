export type { Verdict } from "./assess/finding.js"
export { type Assessment, assess, type Finding } from "./assess/index.js"
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
export { posePicture } from "./motion/picture.js"
export { type MoveTime, moveTime } from "./move/move-time/index.js"
export { moveText } from "./move/report.js"
export type { EnergyAccount, Move, MovePoint, WaterfallStep } from "./move/summary.js"
