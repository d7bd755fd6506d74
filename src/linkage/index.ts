export type { Transmits } from "../solver/index.js"
export {
  type Bungee,
  type BungeeCaution,
  type BungeeInput,
  type BungeeRefusal,
  bungee,
  type CordReading,
  drawBungee,
} from "./bungee/index.js"
export {
  type CableQuadrant,
  type CableQuadrantCaution,
  type CableQuadrantInput,
  type CableQuadrantRefusal,
  cableQuadrant,
  cableQuadrantPicture,
  type QuadrantPose,
  type ReturnCable,
  type ReturnSpring,
} from "./cable-quadrant/index.js"
export {
  type CamDrive,
  type CamDriveCaution,
  type CamDriveInput,
  type CamDriveRefusal,
  type CamExtremes,
  type CamLaw,
  camDrive,
  camDrivePicture,
} from "./cam-drive/index.js"
export { flapDragMoment } from "./fan/flap-drag.js"
export {
  type FanPose,
  type TetheredFan,
  type TetheredFanCaution,
  type TetheredFanInput,
  type TetheredFanRefusal,
  tetheredFan,
} from "./fan/tethered-fan/index.js"
export {
  distanceAt as threadLength,
  evenThreads,
  FAN_STEPS,
  type FanGeometry,
  type FanJam,
  fanAngles,
  fanForces,
  followerAngle,
  followerRate,
  restAngle,
  threadLevers,
  vaneGap,
} from "./fan/tethered-fan/pose.js"
export {
  type ChainBox,
  type ChainJoint,
  type ChainPose,
  type ChainSegmentInput,
  type FoldingChain,
  type FoldingChainCaution,
  type FoldingChainInput,
  foldingChain,
  foldingChainPicture,
} from "./folding-chain/index.js"
export { jointAngle as chainJointAngle, jointRatio as chainJointRatio } from "./folding-chain/kernel.js"
export type { FourBarLinks } from "./four-bar/fields.js"
export { type FourBar, type FourBarCaution, type FourBarInput, type FourBarRefusal, fourBar } from "./four-bar/four-bar.js"
export {
  type FourBarLimits,
  type FourBarLimitsCaution,
  type FourBarLimitsInput,
  type FourBarLimitsRefusal,
  fourBarLimits,
} from "./four-bar/four-bar-limits.js"
export {
  chebyshevPoints,
  type Freudenstein,
  type FreudensteinCaution,
  type FreudensteinInput,
  type FreudensteinRefusal,
  freudenstein,
} from "./four-bar/freudenstein.js"
export { type Grashof, type GrashofCaution, type GrashofInput, type GrashofRefusal, grashof } from "./four-bar/grashof.js"
export { type Assembly, closedPose, type FourBarPose, fourBarPose, fourBarRates, fourBarToggles } from "./four-bar/pose.js"
export {
  type CouplerPose,
  type CouplerPoseInput,
  centrePoint,
  circlePoint,
  type FourBarSynthesis,
  type FourBarSynthesisCaution,
  type FourBarSynthesisInput,
  type FourBarSynthesisRefusal,
  fourBarSynthesis,
  fourBarSynthesisPicture,
  type PivotRegionInput,
  type SynthesisedFourBar,
  type SynthesisTally,
} from "./four-bar-synthesis/index.js"
export {
  drawGasSpring,
  type ExtensionSpeed,
  type GasSpring,
  type GasSpringCaution,
  type GasSpringInput,
  gasForce,
  gasSpring,
  gasWork,
} from "./gas-spring/index.js"
export {
  balanceLever,
  type CordElement,
  type Counterbalance,
  type CounterbalanceCaution,
  type CounterbalanceInput,
  type CounterbalancePose,
  type CounterbalanceRefusal,
  coilStiffness,
  counterbalance,
  type SpringElement,
  type StrutElement,
} from "./hinge/counterbalance/index.js"
export type { HingeSpringInput, HingeWeightInput, MovingPivotInput, PointInput } from "./hinge/fields.js"
export {
  type HingeGeometry,
  hingeAngleAt,
  hingeLengthAt,
  hingeLengthRange,
  hingeLeverAt,
  hingePinAt,
  type Point,
  wrapAngle,
} from "./hinge/geometry.js"
export {
  type HingeActuator,
  type HingeActuatorCaution,
  type HingeActuatorInput,
  type HingeActuatorRefusal,
  type HingePose,
  hingeActuator,
} from "./hinge/hinge-actuator/index.js"
export {
  gravityMomentAt,
  type HingeLoads,
  type HingeMass,
  type HingeSpring,
  type HingeStatics,
  hingeStaticsAt,
  springAt,
  springEnergy,
  springTension,
  standardGravity,
} from "./hinge/load.js"
export {
  type FrontPoint,
  type KeepOutInput,
  type PlaceActuator,
  type PlaceActuatorCaution,
  type PlaceActuatorInput,
  type PlaceActuatorRefusal,
  placeActuator,
  type RegionInput,
  type WorstBuild,
} from "./hinge/place-actuator/index.js"
export type { Factors } from "./lu.js"
export {
  type LatchPose,
  type LatchSide,
  type OverCentreLatch,
  type OverCentreLatchCaution,
  type OverCentreLatchInput,
  type OverCentreLatchRefusal,
  overCentreLatch,
  overCentreLatchPicture,
} from "./over-centre-latch/index.js"
export type {
  CarriedPoint,
  LinkageActuator,
  LinkageBar,
  LinkageCrank,
  LinkageLoad,
  LinkagePoint,
  LinkageSlider,
  LinkageTorque,
  MechanismInput,
  MechanismSi,
} from "./planar/data.js"
export type { Driver as MechanismDriver, Model as MechanismModel, Row as MechanismRow } from "./planar/model.js"
export { mechanismMotion } from "./planar/motion.js"
export type { MotionRefusal, PlanarLinkage, PlanarLinkageCaution, PlanarLinkageRefusal } from "./planar/output.js"
export { type LinkageMass, type PlanarLinkageInput, planarLinkage } from "./planar/planar-linkage.js"
export { driverEfforts, multipliers, type Pose as MechanismPose, pointRates } from "./planar/solve.js"
export { type PoseLine, type PosePicture, poseSvg, poseText } from "./pose-picture.js"
export { type Scissor, type ScissorCaution, type ScissorInput, type ScissorRefusal, scissor } from "./scissor/index.js"
export { servoPushrod } from "./servo/servo-pushrod/index.js"
export type { ServoPushrod, ServoPushrodCaution, ServoPushrodInput, ServoPushrodRefusal } from "./servo/servo-pushrod/kernel.js"
export { neutral as pushrodNeutral } from "./servo/servo-pushrod/kernel.js"
export {
  type BodyDirectionInput,
  type BodyPointInput,
  type SkewHinge,
  type SkewHingeCaution,
  type SkewHingeInput,
  type SkewHingeMassInput,
  type SkewHingePose,
  skewHinge,
  skewHingePicture,
} from "./skew-hinge/index.js"
export { type SliderCrank, type SliderCrankCaution, type SliderCrankInput, type SliderCrankRefusal, sliderCrank } from "./slider-crank.js"
export { type SliderCrankGeometry, sliderAt, sliderLimits } from "./slider-crank-geometry.js"
export type { BodyVector } from "./space.js"
export {
  type SweptEnvelope,
  type SweptEnvelopeCaution,
  type SweptEnvelopeInput,
  type SweptEnvelopeRefusal,
  sweptEnvelope,
} from "./swept-envelope/index.js"
export type { OutlineCorner } from "./swept-envelope/outline.js"
