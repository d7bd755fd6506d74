export { type BodyDimension, type BodyDimensionInput, type BodyLength, bodyDimension } from "./body-dimension.js"
export { type BodySegment, type BodySegments, type BodySegmentsInput, bodySegments } from "./body-segments.js"
export {
  type CarriedLoad,
  type CarriedLoadInput,
  carriedLoad,
  type GuidanceReading,
  type PoseCarried,
  type RigPose,
} from "./carried-load.js"
export { carriedLoadSideView } from "./carried-load-view.js"
export { type ContactSeverity, type ContactSeverityInput, contactSeverity } from "./contact-severity.js"
export { type PassageKind, type PassagePlace, passagePlaces } from "./data-access.js"
export type { BodyRegion } from "./data-contact.js"
export type { Joint } from "./data-endurance.js"
export type { CrushPart } from "./data-gaps.js"
export type { HeatClothing } from "./data-heat.js"
export type { Coupling, LiftDuration, Lifter } from "./data-lift.js"
export { type Terrain, terrainFactor } from "./data-metabolic.js"
export type { Handling } from "./data-reach.js"
export type { SegmentTable } from "./data-segments.js"
export { type SurveyDimension, survey } from "./data-survey.js"
export { burnTemperature, type TouchMaterial } from "./data-touch.js"
export { beaufortForce, beaufortScale, beaufortSpeed, type PanelShape } from "./data-wind.js"
export { type Endurance, type EnduranceInput, type EnduranceReading, endurance } from "./endurance.js"
export { type HeatStress, type HeatStressInput, heatStress } from "./heat-stress.js"
export { type LiftLimit, type LiftLimitInput, liftLimit } from "./lift-limit.js"
export {
  type MetabolicRate,
  type MetabolicRateInput,
  type MetabolicReading,
  metabolicRate,
} from "./metabolic-rate.js"
export {
  type OwnPlace,
  type PackedSize,
  type Passage,
  type PassageInput,
  type PlaceFinding,
  passage,
  type WornEnvelope,
} from "./passage.js"
export { type CrushFinding, type GapBar, type MovingPose, type PinchGap, type PinchGapInput, pinchGap } from "./pinch-gap.js"
export { type Reach, type ReachInput, reach } from "./reach.js"
export { type StrapPressure, type StrapPressureInput, strapPressure } from "./strap-pressure.js"
export { type TipOver, type TipOverInput, tipOver, type WindFrom } from "./tip-over.js"
export { type TouchLimit, type TouchTemperature, type TouchTemperatureInput, touchTemperature } from "./touch-temperature.js"
export {
  type PartWorn,
  type WearActivity,
  type WearPart,
  type WearSchedule,
  type WearScheduleInput,
  wearSchedule,
} from "./wear-schedule.js"
export { type FirstLimit, type HeaviestLoad, type Rest, usualWalkingSpeed } from "./wear-strain.js"
export { type WindLoad, type WindLoadInput, windLoad } from "./wind-load.js"
