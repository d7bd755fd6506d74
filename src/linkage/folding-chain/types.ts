// A chain of segments that one driver folds and spreads.
import type { Angle, Length, Mass, Ratio } from "../../quantity/index.js"
import type { SiOf, Transmits } from "../../solver/index.js"

/** One segment of the chain, from its own joint outward. */
export interface ChainSegmentInput {
  /** Joint to joint; for the last one, joint to tip. [L_s; 1 mm to 10 m] */
  length: Length
  /** Depth across, for the space it takes up. [b_s; 0 to 5 m; default 0] */
  width?: Length
  /** Mass of a segment [m_s; 0 to 100 kg; default 0] */
  mass?: Mass
  /** Where its centre of gravity lies, as a share of the length from its own joint. [k_s; 0 to 1; default 0.5] */
  centreShare?: Ratio
  /** Angle from the segment before it, or from the x axis for the first one, with the chain folded. [alpha_s; −401.07° to 401.07°] */
  foldedAngle: Angle
  /** Turn of its joint for one turn of the driver; negative where it turns the other way. [n_s; −20 to 20] */
  ratio: number
  /** Share of the driver's travel after which its joint begins to turn. [p_s; 0 to 99 %; default 0] */
  startsAt?: Ratio
  /** Share of the driver's travel after which its joint stands still. [p_e; 1 to 100 %; default 100 %] */
  endsAt?: Ratio
  /** Lever arm of the rod, cable or gear that turns its joint; 0 leaves its force on the pin out. [R_s; 0 to 1 m; default 0] */
  driveRadius?: Length
}

/** Input of {@link foldingChain}. */
export interface FoldingChainInput {
  /** Segments from the frame outward [list of 1 to 12] */
  segments: readonly ChainSegmentInput[]
  /** Turn of the driver from folded to spread [phi_t; 0.1° to 700 rad] */
  driverTravel: Angle
  /** Share of the travel at which the loads are asked for. [p; 0 to 1; default 1] */
  position?: Ratio
  /** Mass at the tip [m_t; 0 to 100 kg; default 0] */
  tipMass?: Mass
  /** Lean of the frame in the plane of the chain; positive turns it counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  frameTilt?: Angle
  /** Tilt of the plane in which the chain folds: 0 upright, a quarter turn level. [tau; −90° to 90°; default 0] */
  planeTilt?: Angle
  /** Coefficient of friction of the joints' pins. [mu; 0 to 1; default 0] */
  pinFriction?: number
  /** Diameter of the pins [d_p; 0 to 100 mm; default 0] */
  pinDiameter?: Length
}

/** One joint at the position asked for. */
export interface ChainJoint {
  /** Place of the joint. [m] */
  readonly x: number
  /** Y [m] */
  readonly y: number
  /** Angle from the segment before [rad] */
  readonly angle: number
  /** Turn for one turn of the driver at this position; 0 while it stands still. [number] */
  readonly ratio: number
  /** Moment in the plane that holds everything outward of it, counter-clockwise. [N m] */
  readonly gravityMoment: number
  /** Moment across the plane that its hinge must bear. [N m] */
  readonly sideMoment: number
  /** Weight that its pin carries. [N] */
  readonly pinLoad: number
  /** Moment its drive must give while the chain spreads. [N m] */
  readonly spreadMoment: number
  /** Moment its drive must give while the chain folds. [N m] */
  readonly foldMoment: number
  /** Larger force of the two in its rod or cable; null where it has no lever arm. [N] */
  readonly driveForce: number | null
}

/** The chain at one place of the driver's travel. */
export interface ChainPose {
  /** Turn of the driver [rad] */
  readonly driverAngle: number
  /** Tip, x [m] */
  readonly tipX: number
  /** Tip, y [m] */
  readonly tipY: number
  /** Moment that holds it [N m] */
  readonly effort: number
  /** Moment while spreading [N m] */
  readonly spreadEffort: number
  /** Moment while folding [N m] */
  readonly foldEffort: number
  /** Inertia [kg m²] */
  readonly inertia: number
}

/** A box around the chain. */
export interface ChainBox {
  /** Along x [m] */
  readonly width: number
  /** Along y [m] */
  readonly height: number
}

/** Result of {@link foldingChain}; origin at the first joint. */
export interface FoldingChain {
  /** Every joint follows the driver spreading and folding, held by rods, gears or cables in pairs: `both-ways`. [text] */
  readonly transmits: Transmits
  /** Tip, x [x_t; m] */
  readonly tipX: number
  /** Tip, y [y_t; m] */
  readonly tipY: number
  /** Travel of the tip along x for a turn of the driver. [x_r; m] */
  readonly tipRateX: number
  /** Travel of the tip per radian of the driver, y [y_r; m] */
  readonly tipRateY: number
  /** Moment at the driver that holds the chain, friction left out; positive where it must be held up. [T; N m] */
  readonly effort: number
  /** Moment at the driver while the chain spreads against friction. [T_s; N m] */
  readonly spreadEffort: number
  /** Moment at the driver while it folds: what still has to hold back, or negative where it must be pulled in. [T_f; N m] */
  readonly foldEffort: number
  /** Inertia felt at the driver. [J; kg m²] */
  readonly inertia: number
  /** Change of that inertia for a turn of the driver. [J_r; kg m²] */
  readonly inertiaSlope: number
  /** Force of the frame on the first joint, along x. [F_x; N] */
  readonly reactionX: number
  /** Force of the frame, y [F_y; N] */
  readonly reactionY: number
  /** Moment of the frame on the chain, in its plane. [M_0; N m] */
  readonly reactionMoment: number
  /** Largest size of the effort over the travel, in either direction. [T_m; N m] */
  readonly maxEffort: number
  /** Largest distance of any corner from the first joint over the travel. [r_m; m] */
  readonly maxReach: number
  /** Joints [list] */
  readonly joints: readonly ChainJoint[]
  /** Numbers of the joints in the order in which they begin to turn while spreading. [list, each number] */
  readonly spreadOrder: readonly number[]
  /** Box around the folded chain. [group] */
  readonly folded: ChainBox
  /** Box around the spread chain. [group] */
  readonly spread: ChainBox
  /** Box around all poses. [group] */
  readonly swept: ChainBox
  /** Travel [list] */
  readonly poses: readonly ChainPose[]
}

/** Hazards and limits of validity that go with an answer of {@link foldingChain}. */
export type FoldingChainCaution = "effort-reverses" | "falls-unpowered" | "hinge-bends" | "joints-in-turn" | "pinch" | "tip-sweeps"

export type Si = SiOf<FoldingChainInput>
