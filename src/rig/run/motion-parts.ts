// A motion put together: its drive, what transmits, and its mechanisms where they sit on the wearer.
import type { Drive } from "../drives/drive.js"
import { emptyState, type Mechanism, type MechanismState, type Triple } from "../mechanisms/mechanism.js"
import type { Frame } from "../mechanisms/moving.js"
import type { Transmission } from "../transmissions/transmission.js"
import type { BuiltMotion, RigSi } from "../whole/faults.js"

/** Frame of a mount, mirrored to the other side or not. */
export function frameOf(mount: RigSi["motions"][number]["mechanisms"][number]["mount"], mirrored: boolean): Frame {
  const [ch, sh] = [Math.cos(mount.heading), Math.sin(mount.heading)]
  const [ct, st] = [Math.cos(mount.tilt), Math.sin(mount.tilt)]
  const side = mirrored ? -1 : 1
  const of = (f: number, l: number, u: number): Triple => [f, side * l, u]
  return {
    at: of(mount.forward, mount.left, mount.height),
    x: of(ch, sh, 0),
    // plumb is up; a tilt turns it towards the plane's own normal
    y: of(st * sh, -st * ch, ct),
    z: of(ct * sh, -ct * ch, -st),
  }
}

/** One mechanism of a motion, like ones together. */
export interface MovedPart {
  readonly name: string
  readonly mechanism: Mechanism
  readonly own: readonly Transmission[]
  readonly count: number
  readonly sign: 1 | -1
  /** Whether it is the other side's, as in a mirror. */
  readonly mirrored: boolean
  /** Its coordinate while the drive is at the start. */
  readonly start: number
  readonly frame: Frame
  readonly state: MechanismState
  /** Effort that it is given towards growing q at the place looked at last. */
  effort: number
}

/** A motion ready to be asked. */
export interface MotionModel {
  readonly name: string
  readonly drive: Drive
  readonly drives: number
  readonly chain: readonly Transmission[]
  readonly parts: readonly MovedPart[]
  /** Travel of the drive. */
  readonly span: number
  /** What carries it and what it carries; left out where it sits on the body and nothing is mounted on it. */
  readonly tie?: Tie
}

/** One part of one motion, by their places. */
export interface Seat {
  readonly motion: number
  readonly part: number
}

/** Motions mounted on motions: who carries whom. */
export interface Carrying {
  /** Every motion as it is by itself, its mechanisms where the document says that they sit. */
  readonly motions: readonly MotionModel[]
  /** What carries each part of each motion; null on the body. */
  readonly seats: readonly (readonly (Seat | null)[])[]
  /** What rides on each part, and how many of it on each of a part's like ones. */
  readonly riders: readonly (readonly (readonly (Seat & { readonly each: number })[])[])[]
}

/** A motion's place among those that carry or are carried. */
export interface Tie {
  readonly carrying: Carrying
  readonly index: number
}

/** A motion from its built members; they must all be there. */
export function motionModel(motion: RigSi["motions"][number], built: BuiltMotion): MotionModel {
  const { drive } = built
  if (!drive) throw new RangeError("A motion without a drive: its faults are found before.")
  const whole = <T>(list: readonly (T | null)[]) => list.filter((one): one is T => one !== null)
  const parts = motion.mechanisms.flatMap((one, i): MovedPart[] => {
    const { mechanism, own } = built.parts[i] as BuiltMotion["parts"][number]
    if (!mechanism) return []
    const part = (count: number, mirrored: boolean): MovedPart => ({
      name: one.name,
      mechanism,
      own: whole(own),
      count,
      sign: one.reversed ? -1 : 1,
      mirrored,
      start: mechanism.start ?? drive.low,
      frame: frameOf(one.mount, mirrored),
      state: emptyState(),
      effort: 0,
    })
    return one.mirrored ? [part(one.count / 2, false), part(one.count / 2, true)] : [part(one.count, false)]
  })
  return { name: motion.name, drive, drives: motion.drive.count, chain: whole(built.chain), parts, span: drive.high - drive.low }
}

/** Coordinate of each mechanism at a travel of the drive. */
export function coordinatesAt({ chain, parts }: MotionModel, travel: number): readonly number[] {
  let x = travel
  for (const element of chain) x = element.out(x)
  return parts.map(({ own, start, sign }) => {
    let y = x
    for (const element of own) y = element.out(y)
    return start + sign * y
  })
}

/** Slope of each mechanism's coordinate over the drive's travel. */
export function slopesAt({ chain, parts }: MotionModel, travel: number): readonly number[] {
  let [x, slope] = [travel, 1]
  for (const element of chain) {
    slope *= element.ratio(x)
    x = element.out(x)
  }
  return parts.map(({ own, sign }) => {
    let [y, all] = [x, sign * slope]
    for (const element of own) {
      all *= element.ratio(y)
      y = element.out(y)
    }
    return all
  })
}
