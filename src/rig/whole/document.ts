// The second edition of a rig's document: any number of motions on one tree of power.
import type { Angle, Length, Time } from "../../quantity/index.js"
import type { LinearActuatorDrive } from "../drives/linear-actuator.js"
import type { HingeMechanism } from "../mechanisms/hinge.js"
import type { TurnedArm } from "../mechanisms/turned-arm.js"
import type { PowerTree } from "../supply/document.js"
import type { DrumElement } from "../transmissions/drum.js"

/** Something told apart by its type. */
export interface Typed {
  type: string
}

/** The drives that a document may name. */
export type RigDrive = LinearActuatorDrive
/** The elements of a transmission that a document may name. */
export type RigTransmission = DrumElement
/** The mechanisms that a document may name. */
export type RigMechanism = HingeMechanism | TurnedArm

/** Where a mechanism sits on the wearer, and which way it faces. */
export interface Mount {
  /** Ahead of the hips; negative behind. */
  forward?: Length
  /** Left of the middle; negative to the right. */
  left?: Length
  /** Above the ground, wearer standing. */
  height?: Length
  /** Direction of its outward axis, from straight ahead towards the left: 90° is a wing's, 0° a jaw's, 180° a tail's. */
  heading?: Angle
  /** By how much its upward axis leans from plumb about its outward axis. */
  tilt?: Angle
}

/** What every mechanism has beside its own fields. */
export interface Moved<T extends Typed> {
  name: string
  /** Like ones, moved alike. */
  count?: number
  /** Whether half of them are on the other side of the body, as in a mirror. */
  mirrored?: boolean
  /** Whether the drive's forward travel makes its coordinate smaller, as a cable that is wound in. */
  reversed?: boolean
  mount?: Mount
  /** Elements of its own, behind those that all mechanisms of the motion share. */
  transmission?: readonly T[]
}

/** What is wanted of a motion. */
export interface Wanted {
  /** Time that the way out may take, and the way back; left out, the same. */
  duration?: Time | null
  backDuration?: Time | null
  /** Travel wanted of its first mechanism, as an angle. */
  swing?: Angle | null
  /** Whether it must stay where it is without power. */
  holds?: boolean
}

/** One motion: a drive, what transmits, what moves. */
export interface Motion<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism> {
  name: string
  drive: D & {
    /** Like drives that share the work. */
    count?: number
  }
  /** Elements between the drive and all its mechanisms, in order. */
  transmission?: readonly T[]
  mechanisms: readonly (M & Moved<T>)[]
  /** Bus that the drive connects to. */
  bus?: string | null
  wanted?: Wanted
}

/** How the wearer stands and what blows while a motion is judged. */
export interface Stance {
  /** Lean forward and lean to the left. */
  leanForward?: Angle
  leanLeft?: Angle
}

/** A whole wearable of any kind. */
export interface Rig<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism> {
  /** Version of the document's form: 2. */
  version: 2
  name: string
  note?: string
  motions: readonly Motion<D, T, M>[]
  power?: PowerTree | null
  stance?: Stance
}
