// What goes in and what comes out.

import type { Angle, Length, Ratio } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Plastic } from "../data.js"
import type { HeatCaution } from "../forming-window.js"

/** Input of {@link tubeBend}. */
export interface TubeBendInput {
  /** Outside diameter [D; 1 to 300 mm] */
  outsideDiameter: Length
  /** Wall [s_w; 0.1 to 50 mm] */
  wall: Length
  /** Radius of the bend, to the centreline of the tube. [R; 1 mm to 100 m] */
  radius: Length
  /** Angle of the bend, from straight. [theta; 1° to 360°] */
  angle: Angle
  /** Plastic [one of 12 words; default pvc] */
  material?: Plastic
  /** What holds the tube round from inside. [empty or filled; default empty] */
  support?: "empty" | "filled"
  /** Whether it is bent hot. [yes or no; default yes] */
  hot?: boolean
  /** Part of the angle lost on release; left out, 3 % hot and 50 % cold. [q_given; 0 to 0.9; optional] */
  springback?: Ratio | null
  /** Largest ovality to accept: difference of the diameters over the round one. [o_max; 0.01 to 0.2; default 0.08] */
  ovalityLimit?: Ratio
  /** Along one leg, from its end to where legs are measured. [A_leg; 1 mm to 100 m; optional] */
  legA?: Length | null
  /** The same along the other leg. [B_leg; 1 mm to 100 m; optional] */
  legB?: Length | null
  /**
   * Where legs are measured to: a corner of the two legs (below 175°), the back of the bend (from 90° on), or where it
   * begins. [backs, centrelines, insides, bend or straight; default backs]
   */
  legMeasure?: "backs" | "centrelines" | "insides" | "bend" | "straight"
}

/** Reasons for which {@link tubeBend} can refuse. */
export type TubeBendRefusal = "does-not-fit" | "kinks" | "too-tight"

/** Hazards and limits that an answer of {@link tubeBend} can carry. */
export type TubeBendCaution =
  | "cold-bend"
  | "hot-sand"
  | "legs-meet"
  | "no-corner"
  | "needs-support"
  | "shrinks"
  | "tight-radius"
  | "try-one"
  | HeatCaution

/** Result of {@link tubeBend}. */
export interface TubeBend {
  /** Strain of the outermost fibre (the innermost is shortened as much). [epsilon; as a fraction] */
  readonly fibreStrain: number
  /** Wall left at the outside of the bend. [s_out; m] */
  readonly outerWall: number
  /** Wall at the inside of the bend. [s_in; m] */
  readonly innerWall: number
  /** Thinning at the outside, as a fraction of the wall. [n_thin; as a fraction] */
  readonly thinning: number
  /** Ovality of an empty tube; null where it is held round. [o; as a fraction] */
  readonly ovality: number | null
  /** Radius at which an empty tube kinks. [R_kink; m] */
  readonly kinkRadius: number
  /** Minimum radius to plan with when empty. [R_empty; m] */
  readonly minRadiusEmpty: number
  /** Minimum radius to plan with when filled. [R_filled; m] */
  readonly minRadiusFilled: number
  /** Minimum radius when bent cold; null where no maker publishes one. [R_cold; m] */
  readonly minRadiusCold: number | null
  /** Whether the radius is at least the minimum that applies. [yes or no] */
  readonly wideEnough: boolean
  /**
   * Minimum field-bend radius of PVC conduit of this size or the next larger, bent without a one-shot bender; null for
   * other plastics and larger tubes. [R_conduit; m]
   */
  readonly minConduitRadius: number | null
  /** Length of the bend along its centreline. [l_dev; m] */
  readonly developedLength: number
  /** Length to heat: the bend and a diameter at each end. [l_heat; m] */
  readonly heatedLength: number
  /** From the tangent point to the corner of the centrelines; null from 175° on. [l_set; m] */
  readonly setback: number | null
  /** Corner to corner less along the bend; null from 175° on. [l_gain; m] */
  readonly gain: number | null
  /**
   * From the tangent point, along a leg, to a square line on the back of the bend; null below 90°, where the other leg
   * reaches further. [l_take; m]
   */
  readonly takeUp: number | null
  /** Straight part of leg A and of leg B, where the legs are given. [l_A; m] */
  readonly straightA: number | null
  /** Straight of leg B [l_B; m] */
  readonly straightB: number | null
  /** Length to cut, where the legs are given. [l_cut; m] */
  readonly cutLength: number | null
  /** Both legs as measured, less the cut length. [l_more; m] */
  readonly legGain: number | null
  /** Part of the angle lost on release. [q; as a fraction] */
  readonly springback: number
  /** Angle to bend to in the jig. [theta_jig; rad] */
  readonly jigAngle: number
  /** Centreline radius in the jig [R_jig; m] */
  readonly jigRadius: number
}

export type Si = SiOf<TubeBendInput>
