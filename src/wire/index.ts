export {
  awgArea,
  awgDiameter,
  type Conductor,
  type ConductorCaution,
  type ConductorDescription,
  type ConductorInput,
  conductor,
} from "./conductor.js"
export {
  type ConductorSize,
  type ConductorSizeCaution,
  type ConductorSizeInput,
  type ConductorSizeRefusal,
  conductorSize,
  type SizeCandidate,
} from "./conductor-size/index.js"
export {
  bladeFuse,
  bladeRatings,
  type ConductorMetal,
  type ContactKind,
  contactKinds,
  type Metal,
  metals,
  type NominalConductor,
  nominalConductors,
  type PulseShape,
  preeceConstants,
  pulseFractions,
  pulseShapes,
  type Stranding,
} from "./data.js"
export type { FuseCoordination, FuseCoordinationCaution, FuseCoordinationInput } from "./fuse-coordination/fields.js"
export { fuseCoordination, pulseFraction } from "./fuse-coordination/index.js"
export { harness } from "./harness/index.js"
export type {
  Harness,
  HarnessBranch,
  HarnessCaution,
  HarnessContact,
  HarnessCurrentLoad,
  HarnessFuse,
  HarnessInput,
  HarnessLoad,
  HarnessNode,
  HarnessPowerLoad,
  HarnessRefusal,
  HarnessResistanceLoad,
  HarnessSource,
  HarnessSupply,
  HarnessSwitch,
  HarnessWire,
} from "./harness/types.js"
export type { Arrangement, Laid } from "./laid.js"
export { ledRun } from "./led-run/index.js"
export type {
  LedFeed,
  LedFeedState,
  LedPoint,
  LedRun,
  LedRunCaution,
  LedRunInput,
  LedRunRefusal,
  LedStretch,
} from "./led-run/line.js"
export { bundledCurrent } from "./limits.js"
export {
  type ContactCategory,
  type ContactRating,
  contactCategories,
  type DriverBehind,
  type EmergencyStopSwitch,
  type LimitSwitch,
  type MotorRelay,
  type MotorSwitch,
  type MotorSwitching,
  type MotorSwitchingCaution,
  type MotorSwitchingInput,
  type MotorSwitchingRefusal,
  motorSwitching,
  type ReversingSwitch,
  type StoppedPart,
} from "./motor-switching/index.js"
export { type HoldTable, holdTables, publishedShare } from "./resettable-fuse/data.js"
export {
  type HoldPoint,
  type ResettableFuse,
  type ResettableFuseCaution,
  type ResettableFuseInput,
  resettableFuse,
} from "./resettable-fuse/index.js"
export { type VoltageDrop, type VoltageDropCaution, type VoltageDropInput, voltageDrop } from "./voltage-drop.js"
export { type WireHeating, type WireHeatingCaution, type WireHeatingInput, type WireHeatingRefusal, wireHeating } from "./wire-heating.js"
export { adiabaticConstant, adiabaticFactor, fusingCurrent } from "./withstand.js"
