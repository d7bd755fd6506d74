// What a four-bar is designed for, and what comes out.
import type { Angle, Length } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Branch } from "../four-bar-pose.js"

/** A place and direction that the coupler shall take: where its own origin is and how far it is turned. */
export interface CouplerPoseInput {
  /** Place of the coupler's origin. */
  x: Length
  /** Coordinate y. */
  y: Length
  /** Direction of the coupler's own x axis. */
  angle: Angle
}

/** A rectangle in which pivots may be. */
export interface PivotRegionInput {
  /** Least x. */
  left: Length
  /** Greatest x. */
  right: Length
  /** Least y. */
  bottom: Length
  /** Greatest y. */
  top: Length
}

/** Input of {@link fourBarSynthesis}. */
export interface FourBarSynthesisInput {
  /** Two or three poses of the coupler, in the order in which it shall pass them. */
  poses: readonly CouplerPoseInput[]
  /** Where the frame can carry the two fixed pivots. */
  fixedPivots: PivotRegionInput
  /** Where the coupler can carry its two pins, in its own axes. */
  movingPivots: PivotRegionInput
  /** Distance between the fixed pivots that are tried; with two poses also between the pins tried along their line. */
  step: Length
  /** Which of the linkages that pass is the best. */
  seek?: "best-transmission" | "smallest"
  /** Way in which the input link turns from the first pose to the last. */
  turns?: "either" | "counter-clockwise" | "clockwise"
  /** Lengths that every link must keep to, the distance of the fixed pivots included. */
  linkLengths?: {
    /** Shortest. */
    low: Length
    /** Longest. */
    high: Length
  }
  /** Transmission angle that must be kept all the way from the first pose to the last. */
  transmissionLimit?: Angle
  /** How many linkages are listed, the best first. */
  listed?: number
}

/** A linkage that passes all poses in order on one branch. */
export interface SynthesisedFourBar {
  /** Fixed pivot of the input link, m. */
  readonly inputPivot: { readonly x: number; readonly y: number }
  /** Fixed pivot of the output link, m. */
  readonly outputPivot: { readonly x: number; readonly y: number }
  /** Pin of the input link on the coupler, in the coupler's axes, m. */
  readonly inputPin: { readonly x: number; readonly y: number }
  /** Pin of the output link on the coupler, in the coupler's axes, m. */
  readonly outputPin: { readonly x: number; readonly y: number }
  /** Distance of the fixed pivots, m. */
  readonly ground: number
  /** Input link, m. */
  readonly input: number
  /** Coupler, pin to pin, m. */
  readonly coupler: number
  /** Output link, m. */
  readonly output: number
  /** How it is put together, as `fourBar` takes it. */
  readonly branch: Branch
  /** Direction from the input pivot to the output pivot, rad. */
  readonly groundAngle: number
  /** Angles of the input link at the poses, from that direction, running on in order, rad. */
  readonly inputAngles: readonly number[]
  /** Turn of the input link from the first pose to the last, counter-clockwise positive, rad. */
  readonly inputTravel: number
  /** Least transmission angle on the way from the first pose to the last, rad. */
  readonly minTransmission: number
  /** Sum of the four lengths, m. */
  readonly size: number
  /** The coupler's origin as `fourBar`'s coupler point: distance from the input pin, m. */
  readonly pointRadius: number
  /** Its angle from the coupler's line, rad. */
  readonly pointAngle: number
  /** Direction of the coupler's own x axis from the coupler's line, rad. */
  readonly axisAngle: number
}

/** Result of {@link fourBarSynthesis}; the numbers at its top are those of the best linkage, the first one listed. */
export interface FourBarSynthesis {
  /** Least transmission angle of the best linkage between the first pose and the last, rad. */
  readonly minTransmission: number
  /** Sum of its four lengths, m. */
  readonly size: number
  /** Distance of its fixed pivots, m. */
  readonly ground: number
  /** Its input link, m. */
  readonly input: number
  /** Its coupler, pin to pin, m. */
  readonly coupler: number
  /** Its output link, m. */
  readonly output: number
  /** Turn of its input link from the first pose to the last, rad. */
  readonly inputTravel: number
  /** The best linkages, best first. */
  readonly solutions: readonly SynthesisedFourBar[]
  /** What became of everything tried. */
  readonly tried: SynthesisTally
}

/** Pairs of links by what became of them. */
export interface SynthesisTally {
  /** Links from a fixed pivot to a pin that stay rigid through all poses. */
  readonly links: number
  /** Pairs of an input and an output link. */
  readonly pairs: number
  /** Pairs whose ground or coupler is too short or too long. */
  readonly outOfLength: number
  /** Pairs that would have to be taken apart between two poses. */
  readonly changeBranch: number
  /** Pairs that pass the poses in another order, or the other way round than asked. */
  readonly outOfOrder: number
  /** Pairs that fall below the transmission limit. */
  readonly poorTransmission: number
  /** Pairs that pass. */
  readonly passed: number
}

export type Si = SiOf<FourBarSynthesisInput>
