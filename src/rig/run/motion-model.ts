// A motion put together: drive, transmission and mechanisms on one coordinate, and the effort that the drive must give.
import { standardGravity } from "../../linkage/index.js"
import type { Drive, DriveLine } from "../drives/drive.js"
import type { MechanismState, Triple } from "../mechanisms/mechanism.js"
import type { Frame } from "../mechanisms/moving.js"
import { dot } from "../mechanisms/triple.js"
import type { Transmission } from "../transmissions/transmission.js"
import { partsAt, type Stand } from "./carrying.js"
import type { MotionModel, MovedPart } from "./motion-parts.js"

export { coordinatesAt, type MotionModel, type MovedPart, motionModel, slopesAt } from "./motion-parts.js"

/** Way of a motion: out, with its drive's coordinate growing, or back. */
export type Way = 1 | -1

/** What acts on a motion beside its drive, in the wearer's axes: forward, left, up. */
export interface Surroundings {
  /** Pull that weights resist, m/s²: gravity's opposite, as the body leans and steps. */
  readonly lift: Triple
  /** Wind pressure towards each axis, Pa. */
  readonly wind: Triple
  /** Where the motions stand that carry it or that it carries; left out, each at the start of its own travel. */
  readonly stand?: Stand
}

/** How a body leans, and where the motions stand that carry others or are carried. */
export interface Stance {
  readonly leanForward: number
  readonly leanLeft: number
  readonly stand?: Stand
}

/** Surroundings of a body that leans, at rest. */
export function standing({ leanForward, leanLeft, stand = null }: Stance, factor = 1): Surroundings {
  const g = standardGravity * factor
  // a body that leans forward sees the vertical tip back in its own axes, and one that leans left sees it tip right
  const [f, l] = [-Math.tan(leanForward), -Math.tan(leanLeft)]
  const size = Math.hypot(f, l, 1)
  return { lift: [(g * f) / size, (g * l) / size, g / size], wind: [0, 0, 0], stand }
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

/** Parts of a motion as they stand and are laden in some surroundings. */
export const placedParts = ({ parts, tie }: MotionModel, { stand = null }: Surroundings): readonly MovedPart[] =>
  tie ? partsAt(tie, stand) : parts

/** A motion as it stands and is laden in some surroundings, whichever it is asked in. */
export function placedModel(model: MotionModel, around: Surroundings): MotionModel {
  const { tie, ...plain } = model
  return tie ? { ...plain, parts: placedParts(model, around).map((part) => ({ ...part })) } : model
}

/** Adds up what all mechanisms of a motion ask of one drive at a travel, on a way. */
export function effortAt(model: MotionModel, travel: number, way: Way, around: Surroundings, found: EffortState): void {
  const { chain, drive, drives, parts } = model
  const placed = placedParts(model, around)
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
  for (let i = 0; i < placed.length; i++) {
    const part = placed[i] as MovedPart
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
    ;(parts[i] as MovedPart).effort = s * effort
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
