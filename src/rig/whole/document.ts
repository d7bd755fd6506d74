// The second edition of a rig's document: any number of motions on one tree of power.
import type { Angle, Length, Ratio, Temperature, Time } from "../../quantity/index.js"
import type { RigSections, RigSpar } from "../document/sections.js"
import type { drives } from "../drives/index.js"
import type { mechanisms } from "../mechanisms/index.js"
import type { PowerTree } from "../supply/document.js"
import type { transmissions } from "../transmissions/index.js"
import type { DriveDuty, FixedThings } from "./motion-sections.js"

/** Something told apart by its type. */
export interface Typed {
  type: string
}

/** What a document says of each member of a list. */
export type Documents<M extends Readonly<Record<string, { readonly document?: Typed }>>> = NonNullable<M[keyof M]["document"]>

/** The drives that a document may name. */
export type RigDrive = Documents<typeof drives>
/** The elements of a transmission that a document may name. */
export type RigTransmission = Documents<typeof transmissions>
/** The mechanisms that a document may name. */
export type RigMechanism = Documents<typeof mechanisms>

/** Where a mechanism sits on the wearer, and which way it faces. */
export interface Mount {
  /** Ahead of the hips; negative behind. [f_m; −2 to 2 m; default 0] */
  forward?: Length
  /** Left of the middle; negative to the right. [l_m; −3 to 3 m; default 0] */
  left?: Length
  /** Above the ground, wearer standing. [h_m; 0 to 4 m; default 1.3 m] */
  height?: Length
  /**
   * Direction of its outward axis, from straight ahead towards the left: 90° is a wing's, 0° a jaw's, 180° a tail's.
   * [psi_m; −360° to 360°; default 90°]
   */
  heading?: Angle
  /** By how much its upward axis leans from plumb about its outward axis. [tau_m; −180° to 180°; default 0] */
  tilt?: Angle
}

/** What every mechanism has beside its own fields. */
export interface Moved<T extends Typed> {
  /** Name of the mechanism [text of 1 to 100 characters] */
  name: string
  /** Like ones, moved alike. [n_m; whole 1 to 100; default 1] */
  count?: number
  /** Whether half of them are on the other side of the body, as in a mirror. [yes or no; default no] */
  mirrored?: boolean
  /** Whether the drive's forward travel makes its coordinate smaller, as a cable that is wound in. [yes or no; default no] */
  reversed?: boolean
  /** Where it sits and which way it faces [group; optional, with a default of its own] */
  mount?: Mount
  /** Elements of its own, behind those that all mechanisms of the motion share. [list of 0 to 12; default none] */
  transmission?: readonly T[]
  /** Fixed things it moves past, in its own plane: a frame, a rail, the wearer's outline. [group; optional] */
  pinch?: FixedThings | null
}

/** What is wanted of a motion. */
export interface Wanted {
  /** Time that the way out may take, and the way back; left out, the same. [t_w; 1 ms to 1 h; optional] */
  duration?: Time | null
  /** Time back [t_b; 1 ms to 1 h; optional] */
  backDuration?: Time | null
  /** Travel wanted of its first mechanism, as an angle. [theta_w; 0.01° to 36000°; optional] */
  swing?: Angle | null
  /** Length that its first mechanism must reach, such as a scissor array's. [s_w; 1 mm to 100 m; optional] */
  span?: Length | null
  /** Whether it must stay where it is without power. [yes or no; default no] */
  holds?: boolean
}

/** One motion: a drive, what transmits, what moves. */
export interface Motion<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism> {
  /** Name of the motion [text of 1 to 100 characters] */
  name: string
  /** Drive [by its type: linear-actuator, gearmotor or hobby-servo] */
  drive: D & {
    /** Like drives that share the work. [n_d; whole 1 to 50; default 1] */
    count?: number
  }
  /** Elements between the drive and all its mechanisms, in order. [list of 0 to 12; default none] */
  transmission?: readonly T[]
  /** Mechanisms [list of 1 to 60] */
  mechanisms: readonly (M & Moved<T>)[]
  /** Bus that the drive connects to. [text of 1 to 100 characters; optional] */
  bus?: string | null
  /**
   * Motion that carries it, drive and all; left out, the body does. Its mounts say where it sits while the part that
   * carries it shows an angle of 0: straight outward, or before any swing. Put its drive's own mass among the masses of
   * that part. [text of 1 to 100 characters; optional]
   */
  on?: string | null
  /** Mechanism of that motion that it sits on; left out, its first. [text of 1 to 100 characters; optional] */
  onMechanism?: string | null
  /** What is wanted [group; optional, with a default of its own] */
  wanted?: Wanted
  /** Duty that its drive is rated for. [group; optional] */
  duty?: DriveDuty | null
  /** Spar of one of its arms. [group; optional] */
  spar?: RigSpar | null
  /** Pin of its hinges. [group; optional] */
  pin?: RigSections["pin"]
}

/** How far the wearer leans: the motions are judged upright too, and leaning to the other side. */
export interface Posture {
  /** Lean forward and lean to the left. [alpha_f; −60° to 60°; default 0] */
  leanForward?: Angle
  /** Lean to the left [alpha_l; −60° to 60°; default 0] */
  leanLeft?: Angle
}

/** Whoever wears it, and everything around that the wings, jaws or tails meet. */
export type WornSections = Pick<
  RigSections,
  "wearer" | "parts" | "formed" | "straps" | "schedule" | "heat" | "wind" | "stance" | "venue" | "reach" | "contact" | "budget"
>

/** The day out, as far as it decides under what the rig is judged. */
export interface DayOut {
  /** Charge kept in reserve: the rig must still move with that much left. [z_r; 0 to 0.9; default 0.2] */
  reserve?: Ratio
  /** Coldest temperature of the cells. [T_min; −20 to 60 °C; optional] */
  coldest?: Temperature | null
  /** How long the rig is out on one charge, and how often each motion goes out and back meanwhile. [t_day; 1 min to 48 h; optional] */
  hours?: Time | null
  /** Times that each motion goes out and back [n_moves; whole 0 to 10000; optional] */
  moves?: number | null
  /** Whether it has to go by air. [yes or no; default no] */
  flies?: boolean
}

/** One step of what the rig does on stage. */
export interface ProgrammeStep {
  /** When it begins, from the start of the programme. [t_p; 0 to 24 h] */
  at: Time
  /** Motion that moves [text of 1 to 100 characters] */
  motion: string
  /** Where to: 0 is the start of its drive's travel, 1 the end. [s_p; 0 to 1] */
  to: Ratio
}

/** A whole wearable of any kind. */
export interface Rig<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism> extends WornSections {
  /** Version of the document's form: 2. [n_doc; whole 2 to 2] */
  version: 2
  /** Name of the rig [text of 1 to 100 characters] */
  name: string
  /** Note [text of 0 to 5000 characters; default empty] */
  note?: string
  /** Motions [list of 1 to 40] */
  motions: readonly Motion<D, T, M>[]
  /** Power [group; optional] */
  power?: PowerTree | null
  /** How the wearer leans [group; optional, with a default of its own] */
  posture?: Posture
  /** The day out [group; optional, with a default of its own] */
  day?: DayOut
  /** What moves when; motions that it names run together only where it lets them. [list of 0 to 200; default none] */
  programme?: readonly ProgrammeStep[]
}
