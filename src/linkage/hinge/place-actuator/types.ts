// What goes in and what comes out.
import type { Angle, Force, Length, Ratio } from "../../../quantity/index.js"
import type { SiOf } from "../../../solver/index.js"
import type { HingeSpringInput, HingeWeightInput, PointInput } from "../fields.js"

/** A rectangle in which a pivot may be. */
export interface RegionInput {
  /** Region of the fixed pivot, minimum x or region of the moving pivot, minimum x [−20 to 20 m] */
  left: Length
  /** Region of the fixed pivot, maximum x or region of the moving pivot, maximum x [−20 to 20 m] */
  right: Length
  /** Region of the fixed pivot, minimum y or region of the moving pivot, minimum y [−20 to 20 m] */
  bottom: Length
  /** Region of the fixed pivot, maximum y or region of the moving pivot, maximum y [−20 to 20 m] */
  top: Length
}

/** A part of body or frame, seen from the side. */
export interface KeepOutInput {
  /** Its corners in order, either way round. [list of 3 to 50] */
  corners: readonly PointInput[]
}

/** Input of {@link placeActuator}. */
export interface PlaceActuatorInput {
  /** Hinge of the arm, in the wearer's vertical plane. [group; optional, with a default of its own] */
  hinge?: PointInput
  /** Length of the actuator between its pivots when retracted. [L_r; 1 mm to 20 m] */
  retractedLength: Length
  /** Stroke; all of it is used. [S; 1 mm to 10 m] */
  stroke: Length
  /** Force the actuator is rated for, pushing and pulling alike. [F_r; 1 mN to 1000 kN] */
  ratedForce: Force
  /** Masses on the arm [list of 1 to 50] */
  masses: readonly HingeWeightInput[]
  /** Usual lean of the wearer; positive turns the frame counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  frameTilt?: Angle
  /** The wearer may lean this much either way from there. [Lambda; 0 to 91.6732°; default 0] */
  tiltEitherWay?: Angle
  /** Masses on the arm at other times, in place of those: the wing with its fan open. [list of 1 to 50; optional] */
  otherMasses?: readonly HingeWeightInput[] | null
  /** Springs and elastic cords between the frame and the arm. [list of 1 to 20; optional] */
  springs?: readonly HingeSpringInput[] | null
  /**
   * Weight at its largest over weight at rest, as `walkingFactor` gives it; as it swings above, so it swings below,
   * down to nothing. [k_w; 1 to 5; default 1]
   */
  loadFactor?: number
  /** Force of a gust square to the arm, from either side. [F_g; 0 to 100 kN; default 0] */
  gustForce?: Force
  /** Where on the arm the gust works, from the hinge. [r_g; 0 to 20 m; default 0] */
  gustRadius?: Length
  /**
   * Every pivot, seen from the hinge, may be built this far off along the line to the hinge and as far across it. [d_p;
   * 0 to 50 mm; default 0]
   */
  pivotTolerance?: Length
  /** The retracted and the extended length may each come out this much longer or shorter. [d_l; 0 to 50 mm; default 0] */
  lengthTolerance?: Length
  /** Parts of body and frame that the actuator must keep clear of over the whole motion. [list of 1 to 20; optional] */
  keepOut?: readonly KeepOutInput[] | null
  /** Width of the actuator, square to its line: half of it is kept from every such part. [w_a; 0 to 1 m; default 0] */
  actuatorWidth?: Length
  /** Where the fixed pivot may be, in the wearer's vertical plane. [group] */
  fixedPivotRegion: RegionInput
  /** Where the moving pivot may be, seen from the hinge along the arm: x along the arm, y to its left. [group] */
  movingPivotRegion: RegionInput
  /** Arm angles at which the clockwise (lower) end of the swing may lie. [group] */
  lowAngle: {
    /** Minimum angle. [t_1; −401.07° to 401.07°] */
    from: Angle
    /** Maximum angle. [t_2; −401.07° to 401.07°] */
    to: Angle
  }
  /** Swing wanted at least. [sigma_w; 0.1° to 177.617°] */
  swing: Angle
  /** Swing allowed at most; no limit where left out. [sigma_m; 0.1° to 183.346°; optional] */
  maxSwing?: Angle | null
  /** What the best placement is best at. [min-force or max-swing; default min-force] */
  objective?: "min-force" | "max-swing"
  /** Which way of the actuator raises the arm. [either, extending or retracting; default either] */
  raisedBy?: "either" | "extending" | "retracting"
  /** Minimum lever arm allowed over the stroke. [l_1; 0 to 10 m; default 0] */
  minLever?: Length
  /** Maximum lever arm allowed over the stroke; no limit where left out. [l_2; 0.1 mm to 10 m; optional] */
  maxLever?: Length | null
  /** Minimum transmission angle allowed over the stroke. [tau_w; 0 to 85.9437°; default 0] */
  minTransmissionAngle?: Angle
  /** Length to keep from a dead point at either end of the stroke. [c_w; 0 to 1 m; default 1 mm] */
  minDeadPointMargin?: Length
  /** Gap at which the search may stop. [epsilon; 0.01 to 50 %; default 1 %] */
  gapLimit?: Ratio
  /** Most search boxes in one search. [n_b; whole 10 to 200000; default 20000] */
  maxBoxes?: number
  /** Points of the front of swing against force; 0 leaves it out. [n_f; whole 0 to 20; default 5] */
  frontPoints?: number
}

/** Result of {@link placeActuator}. */
export interface PlaceActuator {
  /** Fixed pivot, in the wearer's vertical plane. [group] */
  readonly fixedPivot: {
    /** Outward [x_b; m] */
    readonly x: number
    /** Up [y_b; m] */
    readonly y: number
  }
  /** Pivot on the arm, as hingeActuator takes it. [group] */
  readonly movingPivot: {
    /** From the hinge [r; m] */
    readonly radius: number
    /** From the arm [beta; rad] */
    readonly angle: number
  }
  /** Moving pivot, along the arm [x_p; m] */
  readonly movingPivotX: number
  /** Moving pivot, to its left [y_p; m] */
  readonly movingPivotY: number
  /** Whether extending or retracting raises the arm. [text] */
  readonly raisedBy: string
  /** Distance hinge–fixed pivot. [D; m] */
  readonly fixedPivotDistance: number
  /** Arm angle at the clockwise end of the swing. [theta_l; rad] */
  readonly lowAngle: number
  /** Arm angle at the counter-clockwise end of the swing. [theta_h; rad] */
  readonly highAngle: number
  /** Swing [sigma; rad] */
  readonly swing: number
  /** Largest holding force over the stroke under the worst load, pivots and lengths as drawn. [F_max; N] */
  readonly peakForce: number
  /** Extension at which it is needed. [s_p; m] */
  readonly peakForceExtension: number
  /** Arm angle at which it is needed. [theta_p; rad] */
  readonly peakForceAngle: number
  /** Minimum lever arm over the stroke. [l_min; m] */
  readonly minLever: number
  /** Minimum transmission angle over the stroke. [tau_min; rad] */
  readonly minTransmissionAngle: number
  /** Length left to the nearer dead point. [c; m] */
  readonly deadPointMargin: number
  /** The worst that the tolerances allow; as drawn where there are none. [group] */
  readonly worstBuild: WorstBuild
  /** Force rating over the peak force of the worst build; null where nothing is to be held. [n] */
  readonly safetyFactor: number | null
  /** Proved: no allowed placement needs less peak force than this at its worst build. Null when seeking the most swing. [F_b; N] */
  readonly forceBound: number | null
  /** Proved: no allowed placement within the force rating swings more than this. Null when seeking the minimum force. [sigma_b; rad] */
  readonly swingBound: number | null
  /** By what fraction the best could at most be beaten. [g_a; as a fraction] */
  readonly gap: number
  /** Whether that is within the gap asked for. [yes or no] */
  readonly certified: boolean
  /** Search boxes, all searches together. [number] */
  readonly iterations: number
  /** Distance of best and bound. [number] */
  readonly residual: number
  /** Placements no other beats in both swing and force, by rising swing. [list] */
  readonly front: readonly FrontPoint[]
}

/** The worst of all builds within the tolerances. */
export interface WorstBuild {
  /** Largest holding force of any build. [F_v; N] */
  readonly peakForce: number
  /** Distance of the fixed pivot from the hinge in that build. [D_v; m] */
  readonly fixedPivotDistance: number
  /** Distance of the moving pivot from the hinge in that build. [r_v; m] */
  readonly movingPivotRadius: number
  /** Length of the actuator at which that force is needed. [L_v; m] */
  readonly length: number
  /** Arm angle at which it is needed. [theta_v; rad] */
  readonly angle: number
  /** No build swings less. [sigma_v; rad] */
  readonly swing: number
  /** Minimum lever arm of any build. [l_v; m] */
  readonly minLever: number
  /** Minimum transmission angle of any build. [tau_v; rad] */
  readonly minTransmissionAngle: number
  /** Length left to the nearer dead point in any build. [c_v; m] */
  readonly deadPointMargin: number
}

/** Reasons for which {@link placeActuator} refuses. */
export type PlaceActuatorRefusal =
  | "insufficient-force"
  | "insufficient-swing"
  | "limits-exclude-all"
  | "low-end-out-of-range"
  | "no-candidate"
  | "parts-in-the-way"
  | "regions-too-far"
  | "regions-too-near"
  | "undecided"

/** Hazards and limits of validity that go with an answer of {@link placeActuator}. */
export type PlaceActuatorCaution =
  | "falls-unpowered"
  | "gap-not-closed"
  | "near-dead-point"
  | "pinch"
  | "poor-transmission"
  | "stored-energy"
  | "thin-margin"

/** One placement of the front. */
export interface FrontPoint {
  /** Swing [rad] */
  readonly swing: number
  /** Peak force [N] */
  readonly peakForce: number
  /** Swing asked for at this point. [rad] */
  readonly minSwing: number
  /** Proved: no allowed placement with at least that swing needs less peak force. [N] */
  readonly forceBound: number
  /** Fixed pivot, outward [m] */
  readonly fixedPivotX: number
  /** Fixed pivot, up [m] */
  readonly fixedPivotY: number
  /** Moving pivot, along the arm [m] */
  readonly movingPivotX: number
  /** Moving pivot to the left of the arm. [m] */
  readonly movingPivotY: number
}

export type Si = SiOf<PlaceActuatorInput>
