// What a four-bar is designed for, and what comes out.
import type { Angle, Length } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Assembly } from "../four-bar/pose.js"
import type { Point } from "../hinge/geometry.js"

/** A place and direction that the coupler shall take: where its own origin is and how far it is turned. */
export interface CouplerPoseInput {
  /** Place of the coupler's origin. [x_p; −20 to 20 m] */
  x: Length
  /** Y of the coupler's origin [y_p; −20 to 20 m] */
  y: Length
  /** Direction of the coupler's own x axis. [alpha_p; −401.07° to 401.07°] */
  angle: Angle
}

/** A rectangle in which pivots may be. */
export interface PivotRegionInput {
  /** Minimum x. [−20 to 20 m] */
  left: Length
  /** Maximum x. [−20 to 20 m] */
  right: Length
  /** Minimum y. [−20 to 20 m] */
  bottom: Length
  /** Maximum y. [−20 to 20 m] */
  top: Length
}

/** Input of {@link fourBarSynthesis}. */
export interface FourBarSynthesisInput {
  /** Two or three poses of the coupler, in the order in which it shall pass them. [list of 2 to 3] */
  poses: readonly CouplerPoseInput[]
  /** Where the frame can carry the two fixed pivots. [group] */
  fixedPivotRegion: PivotRegionInput
  /** Where the coupler can carry its two pins, in its own axes. [group] */
  movingPivotRegion: PivotRegionInput
  /** Distance between the fixed pivots that are tried; with two poses also between the pins tried along their line. [s; 0.1 mm to 10 m] */
  step: Length
  /** Which of the linkages that pass is the best. [best-transmission or smallest; default best-transmission] */
  objective?: "best-transmission" | "smallest"
  /** Way in which the input link turns from the first pose to the last. [either, counter-clockwise or clockwise; default either] */
  turns?: "either" | "counter-clockwise" | "clockwise"
  /** Lengths that every link must keep to, the distance of the fixed pivots included. [group; optional, with a default of its own] */
  linkLengths?: {
    /** Shortest link allowed [L_l; 0.1 mm to 10 m] */
    low: Length
    /** Longest link allowed [L_h; 1 mm to 20 m] */
    high: Length
  }
  /** Transmission angle that must be kept all the way from the first pose to the last. [mu_l; 0.1° to 89°; default 40°] */
  transmissionLimit?: Angle
  /** How many linkages are listed, the best first. [n_l; whole 1 to 50; default 5] */
  listed?: number
}

/** A linkage that passes all poses in order on one branch. */
export interface SynthesisedFourBar {
  /** Fixed pivot of the input link [group] */
  readonly inputPivot: Point
  /** Fixed pivot of the output link [group] */
  readonly outputPivot: Point
  /** Pin of the input link, in the coupler's axes [group] */
  readonly inputPin: Point
  /** Pin of the output link, in the coupler's axes [group] */
  readonly outputPin: Point
  /** Distance of the fixed pivots [m] */
  readonly ground: number
  /** Input link [m] */
  readonly input: number
  /** Coupler, pin to pin. [m] */
  readonly coupler: number
  /** Output link [m] */
  readonly output: number
  /** How it is put together, as `fourBar` takes it. [text] */
  readonly branch: Assembly
  /** Direction from input pivot to output pivot [rad] */
  readonly groundAngle: number
  /** Angles of the input link at the poses, from that direction, running on in order. [list, each rad] */
  readonly inputAngles: readonly number[]
  /** Turn of the input link from the first pose to the last, counter-clockwise positive. [rad] */
  readonly inputTravel: number
  /** Minimum transmission angle on the way from the first pose to the last. [rad] */
  readonly minTransmissionAngle: number
  /** Sum of the four lengths. [m] */
  readonly size: number
  /** The coupler's origin as `fourBar`'s coupler point: distance from the input pin. [m] */
  readonly pointRadius: number
  /** Its angle from the coupler's line. [rad] */
  readonly pointAngle: number
  /** Direction of the coupler's own x axis from the coupler's line. [rad] */
  readonly axisAngle: number
}

/** Result of {@link fourBarSynthesis}; the numbers at its top are those of the best linkage, the first one listed. */
export interface FourBarSynthesis {
  /** Minimum transmission angle of the best linkage between the first pose and the last. [mu; rad] */
  readonly minTransmissionAngle: number
  /** Sum of its four lengths [L_s; m] */
  readonly size: number
  /** Distance of its fixed pivots [d; m] */
  readonly ground: number
  /** Its input link [a; m] */
  readonly input: number
  /** Its coupler, pin to pin [b; m] */
  readonly coupler: number
  /** Its output link [c; m] */
  readonly output: number
  /** Turn of its input link from the first pose to the last. [Delta; rad] */
  readonly inputTravel: number
  /** Linkages that pass, best first [list] */
  readonly solutions: readonly SynthesisedFourBar[]
  /** What became of everything tried. [group] */
  readonly tried: SynthesisTally
}

/** Reasons for which {@link fourBarSynthesis} refuses. */
export type FourBarSynthesisRefusal = "no-candidate" | "poor-transmission"

/** Hazards and limits of validity that go with an answer of {@link fourBarSynthesis}. */
export type FourBarSynthesisCaution = "path-between-poses" | "pinch" | "poor-transmission"

/** Pairs of links by what became of them. */
export interface SynthesisTally {
  /** Links from a fixed pivot to a pin that stay rigid through all poses. [number] */
  readonly links: number
  /** Pairs of an input and an output link. [number] */
  readonly pairs: number
  /** Pairs whose ground or coupler is too short or too long. [number] */
  readonly outOfLength: number
  /** Pairs that would have to be taken apart between two poses. [number] */
  readonly changeBranch: number
  /** Pairs that pass the poses in another order, or the other way round than asked. [number] */
  readonly outOfOrder: number
  /** Pairs that fall below the transmission limit. [number] */
  readonly poorTransmission: number
  /** Pairs that pass. [number] */
  readonly passed: number
}

export type Si = SiOf<FourBarSynthesisInput>
