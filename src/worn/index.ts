export { type BodyDimension, type BodyDimensionInput, type BodyLength, bodyDimension } from "./body/body-dimension.js"
export { type BodySegment, type BodySegments, type BodySegmentsInput, bodySegments } from "./body/body-segments.js"
export type { Handling } from "./body/data-reach.js"
export type { SegmentTable } from "./body/data-segments.js"
export { type SurveyDimension, survey } from "./body/data-survey.js"
export { type Reach, type ReachInput, reach } from "./body/reach.js"
export { type ContactSeverity, type ContactSeverityInput, contactSeverity } from "./contact/contact-severity/index.js"
export type { BodyRegion } from "./contact/data-contact.js"
export type { CrushPart } from "./contact/data-gaps.js"
export { burnTemperature, type TouchMaterial } from "./contact/data-touch.js"
export { type CrushFinding, type GapBar, type MovingPose, type PinchGap, type PinchGapInput, pinchGap } from "./contact/pinch-gap/index.js"
export { type TouchLimit, type TouchTemperature, type TouchTemperatureInput, touchTemperature } from "./contact/touch-temperature/index.js"
export type { Joint } from "./effort/data-endurance.js"
export type { HeatClothing } from "./effort/data-heat.js"
export { type Terrain, terrainFactor } from "./effort/data-metabolic.js"
export { type Endurance, type EnduranceInput, type EnduranceReading, endurance } from "./effort/endurance.js"
export { type HeatStress, type HeatStressInput, heatStress } from "./effort/heat-stress/index.js"
export {
  type MetabolicRate,
  type MetabolicRateInput,
  type MetabolicReading,
  metabolicRate,
} from "./effort/metabolic-rate/index.js"
export {
  type PartWorn,
  type WearActivity,
  type WearPart,
  type WearSchedule,
  type WearScheduleInput,
  wearSchedule,
} from "./effort/wear-schedule/index.js"
export { usualWalkingSpeed } from "./effort/wear-schedule/strain.js"
export type { FirstLimit, MaxRig, Rest } from "./effort/wear-schedule/types.js"
export {
  type CarriedLoad,
  type CarriedLoadInput,
  carriedLoad,
  type GuidanceReading,
  type PoseCarried,
  type RigPose,
} from "./load/carried-load/index.js"
export { carriedLoadSideView } from "./load/carried-load/view.js"
export type { Coupling, LiftDuration, Lifter } from "./load/data-lift.js"
export { type LiftLimit, type LiftLimitInput, liftLimit } from "./load/lift-limit.js"
export { type StrapPressure, type StrapPressureInput, strapPressure } from "./load/strap-pressure/index.js"
export { type PassageKind, type PassagePlace, passagePlaces } from "./surroundings/data-access.js"
export { beaufortForce, beaufortScale, beaufortSpeed, type PanelShape } from "./surroundings/data-wind.js"
export { type Overturning, type OverturningInput, overturning, type WindFrom } from "./surroundings/overturning/index.js"
export {
  type OwnPlace,
  type PackedSize,
  type Passage,
  type PassageInput,
  type PlaceFinding,
  passage,
  type WornEnvelope,
} from "./surroundings/passage/index.js"
export { type WindLoad, type WindLoadInput, windLoad } from "./surroundings/wind-load.js"
export { wearerFields } from "./wearer.js"
