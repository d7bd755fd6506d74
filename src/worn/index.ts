export type { BodyDimensionCaution } from "./body/body-dimension.js"
export { type BodyDimension, type BodyDimensionInput, type BodyLength, bodyDimension } from "./body/body-dimension.js"
export type { BodySegmentsCaution } from "./body/body-segments.js"
export { type BodySegment, type BodySegments, type BodySegmentsInput, bodySegments } from "./body/body-segments.js"
export type { Handling } from "./body/data-reach.js"
export type { SegmentTable } from "./body/data-segments.js"
export { type SurveyDimension, survey } from "./body/data-survey.js"
export type { ReachCaution, ReachRefusal } from "./body/reach.js"
export { type Reach, type ReachInput, reach } from "./body/reach.js"
export { type ContactSeverity, type ContactSeverityInput, contactSeverity } from "./contact/contact-severity/index.js"
export type { ContactSeverityCaution } from "./contact/contact-severity/types.js"
export type { BodyRegion } from "./contact/data-contact.js"
export type { CrushPart } from "./contact/data-gaps.js"
export { burnTemperature, type TouchMaterial } from "./contact/data-touch.js"
export { type CrushFinding, type GapBar, type MovingPose, type PinchGap, type PinchGapInput, pinchGap } from "./contact/pinch-gap/index.js"
export type { PinchGapCaution } from "./contact/pinch-gap/types.js"
export { type TouchLimit, type TouchTemperature, type TouchTemperatureInput, touchTemperature } from "./contact/touch-temperature/index.js"
export type { TouchTemperatureCaution } from "./contact/touch-temperature/types.js"
export type { Joint } from "./effort/data-endurance.js"
export type { HeatClothing } from "./effort/data-heat.js"
export { type Terrain, terrainFactor } from "./effort/data-metabolic.js"
export type { EnduranceCaution, EnduranceRefusal } from "./effort/endurance.js"
export { type Endurance, type EnduranceInput, type EnduranceReading, endurance } from "./effort/endurance.js"
export { type HeatStress, type HeatStressInput, heatStress } from "./effort/heat-stress/index.js"
export type { HeatStressCaution } from "./effort/heat-stress/types.js"
export {
  type MetabolicRate,
  type MetabolicRateInput,
  type MetabolicReading,
  metabolicRate,
} from "./effort/metabolic-rate/index.js"
export type { MetabolicRateCaution, MetabolicRateRefusal } from "./effort/metabolic-rate/types.js"
export {
  type PartWorn,
  type WearActivity,
  type WearPart,
  type WearSchedule,
  type WearScheduleInput,
  wearSchedule,
} from "./effort/wear-schedule/index.js"
export { usualWalkingSpeed } from "./effort/wear-schedule/strain.js"
export type { FirstLimit, MaxRig, Rest, WearScheduleCaution, WearScheduleRefusal } from "./effort/wear-schedule/types.js"
export { type Breakaway, type BreakawayInput, breakaway } from "./load/breakaway/index.js"
export type { BreakawayCaution, BreakawayRefusal } from "./load/breakaway/types.js"
export {
  type CarriedLoad,
  type CarriedLoadInput,
  carriedLoad,
  type GuidanceReading,
  type PoseCarried,
  type RigPose,
} from "./load/carried-load/index.js"
export type { CarriedLoadCaution, CarriedLoadRefusal } from "./load/carried-load/types.js"
export { carriedLoadSideView } from "./load/carried-load/view.js"
export type { Coupling, LiftDuration, Lifter } from "./load/data-lift.js"
export type { LiftLimitCaution, LiftLimitRefusal } from "./load/lift-limit/index.js"
export { type LiftLimit, type LiftLimitInput, liftLimit } from "./load/lift-limit/index.js"
export { type SlungLoad, type SlungLoadInput, slungLoad } from "./load/slung-load/index.js"
export type { SlungLoadCaution, SlungLoadRefusal } from "./load/slung-load/types.js"
export { type StrapPressure, type StrapPressureInput, strapPressure } from "./load/strap-pressure/index.js"
export type { StrapPressureCaution, StrapPressureRefusal } from "./load/strap-pressure/types.js"
export { type WalkingLoad, type WalkingLoadInput, walkingLoad } from "./load/walking-load/index.js"
export type { WalkingLoadCaution } from "./load/walking-load/types.js"
export { type PassageKind, type PassagePlace, passagePlaces } from "./surroundings/data-access.js"
export { beaufortForce, beaufortScale, beaufortSpeed, type PanelShape } from "./surroundings/data-wind.js"
export { type Overturning, type OverturningInput, overturning, type WindFrom } from "./surroundings/overturning/index.js"
export type { OverturningCaution, OverturningRefusal } from "./surroundings/overturning/types.js"
export {
  type OwnPlace,
  type PackedSize,
  type Passage,
  type PassageInput,
  type PlaceFinding,
  passage,
  type WornEnvelope,
} from "./surroundings/passage/index.js"
export type { PassageCaution } from "./surroundings/passage/types.js"
export type { GustCaution } from "./surroundings/wind-cautions.js"
export type { WindLoadCaution } from "./surroundings/wind-load.js"
export { type WindLoad, type WindLoadInput, windLoad } from "./surroundings/wind-load.js"
export { wearerFields } from "./wearer.js"
