// What goes in and what comes out.
import type { Frequency, Length, Mass, Ratio } from "../../../quantity/index.js"
import type { SiOf } from "../../../solver/index.js"

/** Where the rig's centre of mass is in one pose, the wearer standing upright. */
export interface RigPose {
  /** Name of the pose. [text of 1 to 100 characters] */
  name: string
  /** Ahead of the vertical through the hip joints; negative behind. [x; −3 to 3 m] */
  forward: Length
  /** Left of the wearer's middle; negative right. [y; −3 to 3 m; default 0] */
  left?: Length
  /** Height above the ground. [z; 0 to 6 m] */
  up: Length
}

/** Input of {@link carriedLoad}. */
export interface CarriedLoadInput {
  /** Wearer's body mass, undressed. [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Wearer's stature. [H; 800 mm to 2.5 m] */
  stature: Length
  /** Mass of the rig, all of it. [m_r; 10 g to 150 kg] */
  rigMass: Mass
  /** Centre of mass of the rig in each pose; the first is the one to compare with (stowed). [list of 1 to 1000] */
  poses: readonly RigPose[]
  /**
   * Share of body mass not to exceed; the published share for the wearer counts where it is lower or none is given.
   * [q_l; 0.01 to 1; optional]
   */
  shareLimit?: Ratio | null
  /** Steps a second while walking. [f_s; 1 to 2.8 Hz; default 2 Hz] */
  stepRate?: Frequency
  /** Lever arm of the back muscles at the low back. [d_m; 30 to 100 mm; default 60 mm] */
  muscleLeverArm?: Length
  /** Distance between the middles of the feet. [s; 50 mm to 1.2 m; default 200 mm] */
  footSpacing?: Length
}

/** How one pose is carried. */
export interface PoseCarried {
  /** Name [text] */
  readonly name: string
  /** Forward lean of the trunk that balances, rad (negative backwards): the largest over the segment tables. [rad] */
  readonly trunkLean: number
  /** The smallest over the segment tables. [rad] */
  readonly minTrunkLean: number
  /** Centre of mass of wearer and rig, standing upright: ahead of the hips, left of the middle, above the ground. [m] */
  readonly forward: number
  /** Common centre left of the middle [m] */
  readonly left: number
  /** Common centre above the ground [m] */
  readonly up: number
  /** Moment about the hips standing upright; positive where the rig pulls backwards. [N m] */
  readonly hipMoment: number
  /** Moment about the low back standing upright, and leaning in balance. [N m] */
  readonly backMoment: number
  /** Low-back moment, leaning [N m] */
  readonly backMomentLeaning: number
  /** Moment about the middle; positive to the left. [N m] */
  readonly sideMoment: number
  /** Share of the whole weight on the left foot. [as a fraction] */
  readonly leftShare: number
}

/** What one guideline says about the load. */
export interface GuidanceReading {
  /** Who [text] */
  readonly who: string
  /** Its share of body mass. [as a fraction] */
  readonly massShare: number
  /** The mass it comes to for this wearer. [kg] */
  readonly mass: number
  /** Exceeded [yes or no] */
  readonly exceeded: boolean
}

/** Reasons for which {@link carriedLoad} can refuse. */
export type CarriedLoadRefusal = "cannot-balance" | "tips-sideways"

/** Hazards and limits that an answer of {@link carriedLoad} can carry. */
export type CarriedLoadCaution =
  | "back-compression"
  | "large-lean"
  | "lean-is-balance"
  | "limit-is-posture"
  | "limit-raised"
  | "lopsided"
  | "near-tipping"
  | "over-limit"
  | "pose-changes-lean"
  | "small-wearer"
  | "sway-grows"
  | "take-it-off"

/** Result of {@link carriedLoad}. */
export interface CarriedLoad {
  /** Load over body mass. [q; as a fraction] */
  readonly massShare: number
  /**
   * Share of body mass that counts as the limit: the published one for the wearer (15 %, below 45 kg 10 %), or a lower
   * one given. [q_a; as a fraction]
   */
  readonly shareLimit: number
  /** Mass that the limit comes to. [m_l; kg] */
  readonly massAtLimit: number
  /** Mass left under the limit; negative where it is exceeded. [m_m; kg] */
  readonly massMargin: number
  /** Largest lean needed in any pose, either way. [phi; rad] */
  readonly maxTrunkLean: number
  /** Lean between the poses that differ most. [phi_d; rad] */
  readonly trunkLeanRange: number
  /** Largest moment about the hips standing upright. [M_h; N m] */
  readonly hipMoment: number
  /** Largest moment about the low back, upright or leaning. [M_b; N m] */
  readonly backMoment: number
  /** Largest moment about the low back while leaning in balance: what the back holds for hours. [M_l; N m] */
  readonly backMomentLeaning: number
  /** Pull of the back muscles that holds the larger one. [F_b; N] */
  readonly backForce: number
  /** Compression of the low back by that pull and the weight above. [F_c; N] */
  readonly backCompression: number
  /** Largest moment to one side. [M_s; N m] */
  readonly sideMoment: number
  /** Largest share of the whole weight on one foot. [q_f; as a fraction] */
  readonly maxFootShare: number
  /** Farthest the common centre of mass moves, level, from the first pose. [d_c; m] */
  readonly centreShift: number
  /** Highest it rises over the first pose. [d_z; m] */
  readonly centreRise: number
  /** Peak force of the rig on the body while walking. [F_p; N] */
  readonly peakForce: number
  /** Pose that needs the largest lean. [text] */
  readonly maxLeanPose: string
  /** Poses [list] */
  readonly poses: readonly PoseCarried[]
  /** Published guidance [list] */
  readonly guidance: readonly GuidanceReading[]
  /** Unbalanced moment about the hips in balance, against that of the weights, largest of all poses and tables. [number] */
  readonly residual: number
}

export interface Balance {
  readonly lean: number
  readonly backLeaning: number
  readonly residual: number
}

export type Pose = SiOf<CarriedLoadInput>["poses"][number]
