export {
  type BeamCouple,
  type BeamCurve,
  type BeamExtreme,
  type BeamForce,
  type BeamProblem,
  type BeamSpread,
  type BeamState,
  beamCurve,
} from "./beam/curve.js"
export { type Beam, type BeamCaution, type BeamRefusal, beam, linearLimit } from "./beam/index.js"
export { type BeamInput, type BeamSupport, beamProblem, type MomentLoad, type PointLoad, type SpreadLoad } from "./beam/loads.js"
export { type Elastica, elastica } from "./bending-rod/elastica.js"
export { type BendingRod, type BendingRodCaution, type BendingRodInput, type BendingRodRefusal, bendingRod } from "./bending-rod/index.js"
export {
  type Column,
  type ColumnCaution,
  type ColumnInput,
  type ColumnRefusal,
  column,
  eulerStress,
  johnsonStress,
  transitionSlenderness,
} from "./column/index.js"
export { type Condition, type ConditionInput, conditionOf } from "./condition.js"
export {
  type BeamPlace,
  type BeamRest,
  type BeamSpan,
  type ClampedRest,
  type ContinuousBeam,
  type ContinuousBeamCaution,
  type ContinuousBeamInput,
  type ContinuousBeamRefusal,
  continuousBeam,
  type PinnedRest,
  type SpringRest,
} from "./continuous-beam/index.js"
export { type Bolt, type BoltClass, type BoltSize, type BoltStrength, boltClasses, bolts, threadStressArea } from "./data-bolts.js"
export { type ColumnEnds, type ColumnEndsData, columnEnds } from "./data-columns.js"
export { datasheets } from "./data-datasheets.js"
export { pvcDerating } from "./data-derating.js"
export { dropFactor, type HandlingCase, handlingCases, type MotionData, walkingFactor } from "./data-loads.js"
export { type FrameMaterial, type FrameMaterialData, frameMaterials } from "./data-materials.js"
export { meanWall, type Pipe, type PipeSize, pipes } from "./data-pipes.js"
export type { Datasheet } from "./datasheet.js"
export { type CordSize, cords, type GluedMaterial, type Knot, knots, type TieWidth, ties } from "./fastening/data.js"
export {
  type Fastening,
  type FasteningCaution,
  type FasteningInput,
  fastening,
  type GluedJoint,
  type LashedJoint,
  type ScrewedJoint,
  type TiedJoint,
} from "./fastening/index.js"
export { type HandlingLoad, type HandlingLoadCaution, type HandlingLoadInput, handlingLoad } from "./handling-load.js"
export {
  type BodyPart,
  type MassProperties,
  type MassPropertiesCaution,
  type MassPropertiesInput,
  massOf,
  massProperties,
} from "./mass-properties.js"
export type { MaterialChoice } from "./material-choice.js"
export { creepFactor, stiffnessFactor, strengthFactor } from "./material-factors.js"
export {
  type BentMember,
  type MemberSize,
  type MemberSizeCaution,
  type MemberSizeInput,
  type MemberSizeRefusal,
  memberSize,
  type PushedMember,
  type RectangularSearch,
  type RoundSearch,
  type SizeLookedAt,
  type StockSearch,
  type StockSize,
} from "./member-size/index.js"
export {
  cantileverRoot,
  type HoldingActuator,
  type MassAlong,
  magnification,
  type NaturalFrequency,
  type NaturalFrequencyCaution,
  type NaturalFrequencyInput,
  type NaturalFrequencyRefusal,
  naturalFrequency,
} from "./natural-frequency/index.js"
export { type PinJoint, type PinJointCaution, type PinJointRefusal, pinJoint } from "./pin-joint/index.js"
export type { HolePlace, PinJointInput } from "./pin-joint/parts.js"
export {
  type ClampedSupport,
  drawPlaneFrame,
  type FrameJoint,
  type FrameLoad,
  type FrameMember,
  type FrameNode,
  type FrameSupport,
  type LoadDirection,
  type MemberForce,
  type MemberForces,
  type MemberMoment,
  type MemberSpread,
  type NodeLoad,
  type NodeMove,
  type PinnedSupport,
  type PlaneFrame,
  type PlaneFrameCaution,
  type PlaneFrameInput,
  type PlaneFrameRefusal,
  planeFrame,
  type RollerSupport,
  type SpringSupport,
  type SupportForce,
} from "./plane-frame/index.js"
export { type Section, type SectionInput, type ShapeInput, sectionOf } from "./section.js"
export { type CylinderBuckling, cylinderBuckling } from "./thin-wall.js"
export { type HoledMember, throughHole } from "./through-hole.js"
export {
  shearModulusOf,
  type TubeSection,
  type TubeSectionCaution,
  type TubeSectionInput,
  type TubeSectionRefusal,
  tubeSection,
} from "./tube-section/index.js"
