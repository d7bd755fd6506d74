export {
  type CarriedLoad,
  type CarriedLoadInput,
  carriedLoad,
  type GuidanceReading,
  type PoseCarried,
  type RigPose,
} from "./carried-load.js"
export { type ContactSeverity, type ContactSeverityInput, contactSeverity } from "./contact-severity.js"
export type { BodyRegion } from "./data-contact.js"
export type { CrushPart } from "./data-gaps.js"
export { burnTemperature, type TouchMaterial } from "./data-touch.js"
export { beaufortForce, beaufortScale, beaufortSpeed, type PanelShape } from "./data-wind.js"
export {
  type MetabolicRate,
  type MetabolicRateInput,
  type MetabolicReading,
  metabolicRate,
  terrainFactor,
} from "./metabolic-rate.js"
export { type Bar, type CrushFinding, type MovingPose, type PinchGap, type PinchGapInput, pinchGap } from "./pinch-gap.js"
export { type StrapPressure, type StrapPressureInput, strapPressure } from "./strap-pressure.js"
export { type TipOver, type TipOverInput, tipOver, type WindFrom } from "./tip-over.js"
export { type TouchLimit, type TouchTemperature, type TouchTemperatureInput, touchTemperature } from "./touch-temperature.js"
export { type WindLoad, type WindLoadInput, windLoad } from "./wind-load.js"
