// A motion put together: drive, transmission and mechanisms on one coordinate, and the effort that the drive must give.
import { standardGravity } from "../../linkage/index.js"
import type { Drive, DriveLine } from "../drives/drive.js"
import { emptyState, type Mechanism, type MechanismState, type Triple } from "../mechanisms/mechanism.js"
import type { Transmission } from "../transmissions/transmission.js"
import type { BuiltMotion, RigSi } from "../whole/faults.js"

/** Way of a motion: out, with its drive's coordinate growing, or back. */
export type Way = 1 | -1

/** What acts on a motion beside its drive, in the wearer's axes: forward, left, up. */
export interface Surroundings {
  /** Pull that weights resist, m/s²: gravity's opposite, as the body leans and steps. */
  readonly lift: Triple
  /** Wind pressure towards each axis, Pa. */
  readonly wind: Triple
}

/** Surroundings of a body that leans, at rest. */
export function standing({ leanForward, leanLeft }: { readonly leanForward: number; readonly leanLeft: number }, factor = 1): Surroundings {
  const g = standardGravity * factor
  // a body that leans forward sees the vertical tip back in its own axes, and one that leans left sees it tip right
  const [f, l] = [-Math.tan(leanForward), -Math.tan(leanLeft)]
  const size = Math.hypot(f, l, 1)
  return { lift: [(g * f) / size, (g * l) / size, g / size], wind: [0, 0, 0] }
}

/** Axes of a mechanism's own frame in the wearer's. */
export interface Frame {
  readonly at: Triple
  readonly x: Triple
  readonly y: Triple
  readonly z: Triple
}

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

const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** One mechanism of a motion, like ones together. */
export interface MovedPart {
  readonly name: string
  readonly mechanism: Mechanism
  readonly own: readonly Transmission[]
  readonly count: number
  readonly sign: 1 | -1
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
      start: mechanism.start ?? drive.low,
      frame: frameOf(one.mount, mirrored),
      state: emptyState(),
      effort: 0,
    })
    return one.mirrored ? [part(one.count / 2, false), part(one.count / 2, true)] : [part(one.count, false)]
  })
  return { name: motion.name, drive, drives: motion.drive.count, chain: whole(built.chain), parts, span: drive.high - drive.low }
}

/** What keeps a motion from passing a place. */
export type Trouble =
  | "none"
  | "cannot-close"
  | "dead-point"
  | "jammed"
  | "slack"
  | "insufficient-effort"
  | "no-supply"
  | "insufficient-power"

/** Effort at one place of a motion; written anew by every call. */
export interface EffortState {
  /** Effort against the motion at one drive's output; negative where the load helps. */
  effort: number
  /** Which form the equations have here. */
  form: number
  trouble: Trouble
  /** Mechanism or element that the trouble is with, and by how much it is short there. */
  at: string
  shortBy: number
  /** Smallest pull or push in its lines and buffers, negative where one is slack; infinite without any. */
  tightness: number
  /** Inertia at one drive's output, drive included, and its slope. */
  inertia: number
}

export const effortState = (): EffortState => ({ effort: 0, form: 0, trouble: "none", at: "", shortBy: 0, tightness: 0, inertia: 0 })

/** Forms told apart by one number. */
const mixed = (form: number, next: number) => (form * 131 + next + 1) % 1000003

/** Effort at the input of an element for one at its output, both against the motion. */
export const atInput = (element: Transmission, ratio: number, effort: number): number =>
  element.drag + (effort > 0 ? (effort * ratio) / element.forward : effort * ratio * (element.backward - element.unlocking))

/** Effort at the input of a chain for one at its output, both against the motion; tells where a line goes slack. */
function back(chain: readonly Transmission[], ratios: Float64Array, from: number, effort: number, way: number, found: EffortState): number {
  let e = effort
  // which way each element's input goes: an element that turns the motion round turns those behind it too
  let forward = way
  for (let i = 0; i < chain.length; i++) forward *= Math.sign(ratios[from + i] as number)
  for (let i = chain.length - 1; i >= 0; i--) {
    const element = chain[i] as Transmission
    const ratio = Math.abs(ratios[from + i] as number)
    forward *= Math.sign(ratios[from + i] as number)
    if (element.transmits !== "both-ways") {
      found.tightness = Math.min(found.tightness, forward * e)
      if (forward * e < -1e-12 && found.trouble === "none") {
        found.trouble = "slack"
        found.shortBy = -forward * e
      }
    }
    found.form = mixed(found.form, e > 0 ? 1 : 0)
    e = atInput(element, ratio, e)
  }
  return e
}

/** A model's scratch: slopes of its elements. */
const scratch = new WeakMap<MotionModel, Float64Array>()

function ratiosOf(model: MotionModel): Float64Array {
  let ratios = scratch.get(model)
  if (!ratios) {
    ratios = new Float64Array(model.chain.length + Math.max(0, ...model.parts.map((p) => p.own.length)))
    scratch.set(model, ratios)
  }
  return ratios
}

/** Effort towards growing q that holds a mechanism at rest. */
function holds(state: MechanismState, { x, y, z }: Frame, { lift, wind }: Surroundings): number {
  return (
    state.springs +
    state.massX * dot(lift, x) +
    state.massY * dot(lift, y) +
    state.massZ * dot(lift, z) +
    state.windX * dot(wind, x) +
    state.windY * dot(wind, y) +
    state.windZ * dot(wind, z)
  )
}

/** Effort at its own coordinate that holds one mechanism at rest, friction left out. */
export function staticHolds({ mechanism, state, frame }: MovedPart, q: number, around: Surroundings): number {
  reset(state)
  mechanism.at(q, state)
  return holds(state, frame, around)
}

/** Walks a chain at a travel of its input: slopes into `ratios`, product and inertia into `walk`; false where it cannot follow. */
function follow(
  chain: readonly Transmission[],
  ratios: Float64Array,
  from: number,
  travel: number,
  walk: Walk,
  found: EffortState,
): boolean {
  walk.out = travel
  walk.ratio = 1
  walk.inertia = 0
  for (let i = 0; i < chain.length; i++) {
    const element = chain[i] as Transmission
    const x = walk.out
    const r = element.ratio(x)
    if (!(x >= element.low && x <= element.high) || r === 0) {
      found.trouble = r === 0 ? "dead-point" : "cannot-close"
      found.shortBy = Math.max(element.low - x, x - element.high, 0)
      return false
    }
    ratios[from + i] = r
    for (let k = 0; k < element.kinks.length; k++) if (x > (element.kinks[k] as number)) found.form = mixed(found.form, i + k)
    walk.inertia += element.inertia * walk.ratio * walk.ratio
    walk.out = element.out(x)
    walk.ratio *= r
  }
  return true
}

interface Walk {
  out: number
  ratio: number
  /** Inertia of its elements, at its input. */
  inertia: number
}
const shared: Walk = { out: 0, ratio: 1, inertia: 0 }
const behind: Walk = { out: 0, ratio: 1, inertia: 0 }

/** Whether a mechanism has a dead point between its start and a coordinate: it may start or end there, never pass. */
function passes({ mechanism, start }: MovedPart, q: number, found: EffortState): boolean {
  for (const dead of mechanism.deadPoints)
    if ((start - dead) * (q - dead) < 0) {
      found.trouble = "dead-point"
      found.shortBy = Math.abs(q - dead)
      return true
    }
  return false
}

/** Adds up what all mechanisms of a motion ask of one drive at a travel, on a way. */
export function effortAt(model: MotionModel, travel: number, way: Way, around: Surroundings, found: EffortState): void {
  const { chain, parts, drive, drives } = model
  const ratios = ratiosOf(model)
  found.trouble = "none"
  found.form = 0
  found.at = ""
  found.shortBy = 0
  found.tightness = Number.POSITIVE_INFINITY
  if (!follow(chain, ratios, 0, travel, shared, found)) {
    found.at = "the transmission"
    return
  }
  const common = shared.ratio
  let [sum, inertia] = [0, 0]
  const dir = way * Math.sign(common)
  for (const part of parts) {
    const { mechanism, own, state, frame, sign } = part
    found.at = part.name
    if (!follow(own, ratios, chain.length, shared.out, behind, found)) return
    const { ratio } = behind
    const q = part.start + sign * behind.out
    if (passes(part, q, found)) return
    if (!(q >= mechanism.low && q <= mechanism.high)) {
      found.trouble = "cannot-close"
      found.shortBy = Math.max(mechanism.low - q, q - mechanism.high)
      return
    }
    reset(state)
    mechanism.at(q, state)
    found.form = mixed(found.form, state.form)
    const hold = holds(state, frame, around)
    const s = dir * Math.sign(ratio) * sign
    const against = s * hold + state.frictionDry
    if (against > 0 && state.frictionShare >= 1) {
      found.trouble = "jammed"
      found.shortBy = against
      return
    }
    const effort = against > 0 ? against / (1 - state.frictionShare) : against / (1 + state.frictionShare)
    if (!Number.isFinite(effort)) {
      found.trouble = "dead-point"
      return
    }
    found.form = mixed(found.form, against > 0 ? 1 : 0)
    part.effort = s * effort
    sum += part.count * (own.length ? back(own, ratios, chain.length, effort, dir, found) : effort)
    if (found.trouble !== "none") return
    inertia += part.count * (state.inertia * ratio * ratio + behind.inertia)
  }
  found.at = ""
  const total = back(chain, ratios, 0, sum, way, found)
  if (found.trouble !== "none") {
    found.at = "the transmission"
    return
  }
  found.effort = total / drives
  found.inertia = drive.inertia + (inertia * common * common + shared.inertia) / drives
  found.form = mixed(found.form, total > 0 ? 1 : 0)
}

function reset(state: MechanismState): void {
  state.springs = 0
  state.massX = 0
  state.massY = 0
  state.massZ = 0
  state.windX = 0
  state.windY = 0
  state.windZ = 0
  state.frictionDry = 0
  state.frictionShare = 0
  state.inertia = 0
  state.inertiaSlope = 0
  state.form = 0
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

/** Current of one drive on a line of its own for an effort against its motion; what helps lessens it, or has to be unlocked. */
export function currentFor(drive: Drive, effort: number, line: DriveLine = drive): number {
  const { effortConstant, backEmfConstant, frictionCurrent, circuitCurrent } = line
  const free = circuitCurrent + frictionCurrent
  if (effort >= 0) return free + effort / effortConstant
  return (
    free + (effort * drive.backwardEfficiency) / Math.max(effortConstant, backEmfConstant) - (effort * drive.unlocking) / effortConstant
  )
}

/** Rate of one drive at a voltage and the current that it draws, m/s or rad/s. */
export const rateFor = (voltage: number, current: number, line: DriveLine): number =>
  (voltage - (current - line.circuitCurrent) * line.windingResistance) / line.backEmfConstant
