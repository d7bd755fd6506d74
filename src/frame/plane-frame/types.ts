// What planeFrame takes and gives back.
import type { Force, ForcePerLength, Length, Moment, RotationalStiffness, Temperature, Time } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { MaterialCaution } from "../condition.js"
import type { HandlingCase } from "../data-loads.js"
import type { FrameSystem, SolvedFrame } from "../frame-system.js"
import type { MaterialChoice } from "../material-choice.js"
import type { SectionInput } from "../section.js"

/** A place where members meet or are held. */
export interface FrameNode {
  /** Name [text of 1 to 60 characters] */
  name: string
  /** Place to the right. [x_i; −20 to 20 m] */
  x: Length
  /** Place upwards. [y_i; −20 to 20 m] */
  y: Length
}

/** Holds a node in place and lets it turn. */
export interface PinnedSupport {
  type: "pinned"
  /** Node that it holds. [text of 1 to 60 characters] */
  node: string
}
/** Holds a node in place and against turning. */
export interface ClampedSupport {
  type: "clamped"
  /** Node that it holds. [text of 1 to 60 characters] */
  node: string
}
/** Holds a node in one way, and lets it slide and turn. */
export interface RollerSupport {
  type: "roller"
  /** Node that it holds. [text of 1 to 60 characters] */
  node: string
  /** Way in which it holds. [up-down or sideways; default up-down] */
  holds?: "up-down" | "sideways"
}
/** Gives with the force on it: a strap, foam, a bracket. */
export interface SpringSupport {
  type: "spring"
  /** Node that it holds. [text of 1 to 60 characters] */
  node: string
  /** Force sideways for each length that it gives; free where left out. [k_x; 10 N/m to 1000000 N/mm; optional] */
  sidewaysStiffness?: ForcePerLength | null
  /** Force up or down for each length that it gives; free where left out. [k_y; 10 N/m to 1000000 N/mm; optional] */
  upStiffness?: ForcePerLength | null
  /** Moment for each angle that it turns; free to turn where left out. [k_t; 0.1 to 1e9 N m/rad; optional] */
  turningStiffness?: RotationalStiffness | null
}
/** How a node is held. */
export type FrameSupport = PinnedSupport | ClampedSupport | RollerSupport | SpringSupport

/** How a member is joined to a node. */
export type FrameJoint = "rigid" | "pinned"

/** A straight member between two nodes. */
export interface FrameMember extends MaterialChoice {
  /** Name [text of 1 to 60 characters] */
  name: string
  /** Node at its start. [text of 1 to 60 characters] */
  from: string
  /** Node at its end. [text of 1 to 60 characters] */
  to: string
  /** How it is joined at its start. [rigid or pinned; default rigid] */
  startJoint?: FrameJoint
  /** How it is joined at its end. [rigid or pinned; default rigid] */
  endJoint?: FrameJoint
  /** Section, its height in the plane of the frame; of another shape give second moment, fibre and area. [group] */
  section: SectionInput
}

/** Which way a load on a member points: down or to the right on the page, across the member (to the right of the way from start to end) or along it. */
export type LoadDirection = "down" | "right" | "across" | "along"

/** A load at a node. */
export interface NodeLoad {
  type: "node"
  /** Node that it acts on. [text of 1 to 60 characters] */
  node: string
  /** Force to the right. [F_x; −10 to 10 kN; default 0] */
  right?: Force
  /** Force upwards. [F_y; −10 to 10 kN; default 0] */
  up?: Force
  /** Moment, counter-clockwise. [C_n; −10000 to 10000 N m; default 0] */
  moment?: Moment
}
/** A force on a member. */
export interface MemberForce {
  type: "force"
  /** Member that it acts on. [text of 1 to 60 characters] */
  member: string
  /** Force [P_i; −10 to 10 kN] */
  force: Force
  /** Distance from the member's start. [a_i; 0 to 60 m] */
  position: Length
  /** Way it points. [down, right, across or along; default down] */
  direction?: LoadDirection
}
/** A load spread along a member, running straight from one value to another; per length of the member. */
export interface MemberSpread {
  type: "spread"
  /** Member that it acts on. [text of 1 to 60 characters] */
  member: string
  /** Load per length at its start. [q_i; −10 to 10 N/mm] */
  startLoad: ForcePerLength
  /** Load per length at its end. [q_j; −10 to 10 N/mm] */
  endLoad: ForcePerLength
  /** Where it starts, from the member's start. [s_i; 0 to 60 m] */
  start: Length
  /** Where it ends. [e_i; 0 to 60 m] */
  end: Length
  /** Way it points. [down, right, across or along; default down] */
  direction?: LoadDirection
}
/** A moment on a member. */
export interface MemberMoment {
  type: "moment"
  /** Member that it acts on. [text of 1 to 60 characters] */
  member: string
  /** Moment, counter-clockwise. [C_i; −10000 to 10000 N m] */
  moment: Moment
  /** Distance from the member's start. [b_i; 0 to 60 m] */
  position: Length
}
/** What bears on a frame: at a node or along a member. */
export type FrameLoad = NodeLoad | MemberForce | MemberSpread | MemberMoment

/** Input of {@link planeFrame}. */
export interface PlaneFrameInput {
  /** Nodes [list of 2 to 40] */
  nodes: readonly FrameNode[]
  /** Members [list of 1 to 60] */
  members: readonly FrameMember[]
  /** Supports [list of 1 to 40] */
  supports: readonly FrameSupport[]
  /** Loads [list of 0 to 200; default none] */
  loads?: readonly FrameLoad[]
  /** Temperature of the members: plastics in the sun or near lamps are hotter than the air. [T; −40 to 200 °C; default 23 °C] */
  materialTemperature?: Temperature
  /** How long the load stands without a rest, for creep. [t_l; 0 to 1000 h; default 0] */
  duration?: Time
  /** Whether the members' own weight is added, the page standing upright. [yes or no; default yes] */
  countsOwnWeight?: boolean
  /** How it is handled; multiplies every load. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** How a node moves, with the softest of every material. */
export interface NodeMove {
  /** Name [text] */
  readonly name: string
  /** Movement to the right. [m] */
  readonly right: number
  /** Movement upwards. [m] */
  readonly up: number
  /** Turn, counter-clockwise; null where only ends meet that are free to turn. [rad] */
  readonly turn: number | null
}
/** What a support exerts on the frame, with the softest of every material; null where it does not hold that way. */
export interface SupportForce {
  /** Node that it holds. [text] */
  readonly node: string
  /** Force to the right. [N] */
  readonly right: number | null
  /** Force upwards. [N] */
  readonly up: number | null
  /** Moment, counter-clockwise. [N m] */
  readonly moment: number | null
}
/** What a member carries: the largest of each over its length, and over the soft and stiff ends of every material's range. */
export interface MemberForces {
  /** Name [text] */
  readonly name: string
  /** Length [m] */
  readonly length: number
  /** Largest pull along it; 0 where it is only pushed. [N] */
  readonly maxPull: number
  /** Largest push along it; 0 where it is only pulled. [N] */
  readonly maxPush: number
  /** Largest shear force, without its sign. [N] */
  readonly maxShearForce: number
  /** Largest bending moment; positive where the side to the right of the way from start to end is stretched. [N m] */
  readonly maxMoment: number
  /** Where that is, from its start. [m] */
  readonly maxMomentPosition: number
  /** Largest movement across it, without its sign. [m] */
  readonly maxDeflection: number
  /** Stress of pull or push and bending, the largest of each added. [Pa] */
  readonly stress: number
  /** Shear stress at the neutral axis; null for a section given by its figures. [Pa] */
  readonly shearStress: number | null
  /** Strength against stress, the lower of both; null where no strength is known or nothing stresses it. [number] */
  readonly safetyFactor: number | null
  /** Local buckling stress of a thin round wall over its stress; null where it does not apply. [number] */
  readonly wallSafetyFactor: number | null
}

/** Result of {@link planeFrame}. */
export interface PlaneFrame {
  /** How every node moves. [list] */
  readonly nodes: readonly NodeMove[]
  /** What every support exerts. [list] */
  readonly supports: readonly SupportForce[]
  /** What every member carries. [list] */
  readonly members: readonly MemberForces[]
  /** Lowest safety factor of the members; null where none is known. [n_s] */
  readonly safetyFactor: number | null
  /** Member with the lowest safety factor; empty where none is known. [text] */
  readonly weakest: string
  /** How near the whole frame is to buckling in its plane; null where nothing is pushed. [group] */
  readonly stability: {
    /** Buckling load over load [number] */ readonly bucklingFactor: number
  } | null
  /** Farthest movement of a node. [u_x; m] */
  readonly maxDisplacement: number
  /** Own weight, before the factor of handling. [W_o; N] */
  readonly weight: number
  /** Factor of handling on every load. [k_m] */
  readonly loadFactor: number
}

/** Reasons for which {@link planeFrame} refuses. */
export type PlaneFrameRefusal = "too-hot" | "unstable"

/** Hazards and limits of validity that go with an answer of {@link planeFrame}. */
export type PlaneFrameCaution =
  | MaterialCaution
  | "bends-far"
  | "buckles"
  | "collapse"
  | "in-its-plane"
  | "lifts-off"
  | "modulus-above-published"
  | "no-material"
  | "rigid-clamp"
  | "second-order"
  | "standing-still"
  | "strength-unknown"
  | "thin-margin"
  | "wall-buckling"
  | "weight-unknown"

export type Si = SiOf<PlaneFrameInput>
export type SiMember = Si["members"][number]
/** A frame solved at one end of its materials' ranges. */
export interface SolvedAt {
  readonly system: FrameSystem
  readonly frame: SolvedFrame
}
/** What the kernel found on its way, for cautions, formulae and picture. */
export interface PlaneFrameTrace {
  readonly soft: SolvedAt
  /** Movements of the nodes where the farthest is. */
  readonly farthest: SolvedFrame["moves"]
}
