// A motion as one mass on its drive's coordinate: what it asks at a place and rate, and how it is accelerated by an effort of its motor.

import type { DriveLine } from "../drives/drive.js"
import { emptyState, type Triple } from "../mechanisms/mechanism.js"
import type { MotionModel, MovedPart } from "../run/motion-model.js"
import type { Transmission } from "../transmissions/transmission.js"

/** Way of a motion: out or back. */
export type Sense = 1 | -1

/** What acts on everything that is worn, in the wearer's axes: as in `Surroundings`, at an instant. */
export interface Pull {
  readonly lift: Triple
  readonly wind: Triple
}

/** An element of a chain at the place looked at last. */
interface Link {
  readonly element: Transmission
  /** Range of its input over the whole travel, and whether its ratio is the same all over. */
  readonly range: number
  readonly constant: boolean
  ratio: number
  /** Slope of its input over the drive's travel, and the slope of that. */
  rho: number
  bend: number
}

interface Body {
  readonly part: MovedPart
  readonly links: readonly Link[]
  /** Slope of its coordinate over the drive's travel, and the slope of that. */
  rho: number
  bend: number
  /** Effort that holds it at rest, friction left out. */
  holds: number
}

/** A motion ready to be asked at a place, by {@link stand}, and then at any rate and acceleration. */
export interface Machine {
  readonly motion: MotionModel
  readonly links: readonly Link[]
  readonly bodies: readonly Body[]
  /** Inertia of one drive with which it is followed, kg or kg·m² at its output; more than its datasheet's where that is too little. */
  inertia: number
  /** Rate without load at the rated voltage: the scale of rates. */
  readonly fastest: number
  /** Answer of {@link asks}: effort at one drive's output and at its motor, both against the motion, and their slopes over the acceleration. */
  output: number
  outputSlope: number
  motor: number
  motorSlope: number
  /** Smallest pull in its lines; negative where one is slack; infinite without any. */
  tightness: number
}

/**
 * A motor brings itself to speed in no less than this, s: the inertia of drives whose datasheet prints none or less. Brushed
 * motors take 5 to 30 ms, so that it is too small for all of them and still follows in few steps. Common practice, no source.
 */
export const QUICKEST_START = 1e-3

/**
 * Gears that lock and let a load down take more effort the more the load pushes: with too little inertia in front of them they
 * chatter. Real drives have plenty, since it goes with the square of their ratio; they are followed with this many times what it takes.
 */
const SMOOTH = 1.1

/** Step of differences of a ratio, against the range of the element's input. */
const STEP = 2e-5

function linksOf(chain: readonly Transmission[], from: readonly number[]): Link[] {
  let ends = from
  return chain.map((element) => {
    const range = Math.max(...ends) - Math.min(...ends)
    const [first = 0] = ends
    const ratio = element.ratio(first)
    const constant = ends.every((x) => !(x >= element.low && x <= element.high) || element.ratio(x) === ratio)
    const link = { element, range, constant, ratio, rho: 1, bend: 0 }
    ends = ends.map((x) => (x >= element.low && x <= element.high ? element.out(x) : Number.NaN)).filter((x) => !Number.isNaN(x))
    if (ends.length === 0) ends = [0]
    return link
  })
}

/** A motion as a machine. */
export function machineOf(motion: MotionModel): Machine {
  const { drive, span, chain, parts } = motion
  const places = Array.from({ length: 33 }, (_, i) => (span * i) / 32)
  const links = linksOf(chain, places)
  const after = places.flatMap((x) => {
    let y = x
    for (const element of chain) {
      if (!(y >= element.low && y <= element.high)) return []
      y = element.out(y)
    }
    return [y]
  })
  const least = (QUICKEST_START * drive.backEmfConstant ** 2) / drive.windingResistance
  const machine: Machine = {
    motion,
    links,
    // scratch of its own: the same motion may be ridden elsewhere
    bodies: parts.map((part) => ({
      part: { ...part, state: emptyState() },
      links: linksOf(part.own, after.length ? after : [0]),
      rho: 1,
      bend: 0,
      holds: 0,
    })),
    inertia: Math.max(drive.inertia, least),
    fastest: Math.max(1e-9, (drive.ratedVoltage - drive.frictionCurrent * drive.windingResistance) / drive.backEmfConstant),
    output: 0,
    outputSlope: 0,
    motor: 0,
    motorSlope: 0,
    tightness: Number.POSITIVE_INFINITY,
  }
  for (const x of places.filter((_, i) => i < after.length))
    for (const way of [1, -1] as const) {
      stand(machine, x, STILL)
      asks(machine, drive, 0, way, -1e12)
      if (machine.motorSlope < 0) machine.inertia = Math.max(machine.inertia, -SMOOTH * machine.motorSlope)
    }
  return machine
}

const STILL: Pull = { lift: [0, 0, 0], wind: [0, 0, 0] }

/** Slope of an element's ratio at its input: none across a kink. */
function ratioSlope({ element, constant, range }: Link, x: number): number {
  if (constant) return 0
  const h = STEP * range
  let [low, high] = [element.low, element.high]
  for (const kink of element.kinks) {
    if (kink <= x) low = Math.max(low, kink)
    else high = Math.min(high, kink)
  }
  if (x - h > low && x + h < high) return (element.ratio(x + h) - element.ratio(x - h)) / (2 * h)
  const s = x - h > low ? -h : h
  return (-3 * element.ratio(x) + 4 * element.ratio(x + s) - element.ratio(x + 2 * s)) / (2 * s)
}

let outX = 0
let outRho = 1
let outBend = 0

function along(links: readonly Link[], x: number, rho: number, bend: number): void {
  outX = x
  outRho = rho
  outBend = bend
  for (let i = 0; i < links.length; i++) {
    const link = links[i] as Link
    const { element } = link
    link.rho = outRho
    link.bend = outBend
    link.ratio = element.ratio(outX)
    outBend = outBend * link.ratio + outRho * outRho * ratioSlope(link, outX)
    outRho *= link.ratio
    outX = element.out(outX)
  }
}

const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Puts a machine at a travel of its drive. */
export function stand(machine: Machine, x: number, { lift, wind }: Pull): void {
  along(machine.links, x, 1, 0)
  const [y, rho, bend] = [outX, outRho, outBend]
  for (let i = 0; i < machine.bodies.length; i++) {
    const body = machine.bodies[i] as Body
    const { part } = body
    along(body.links, y, rho, bend)
    body.rho = part.sign * outRho
    body.bend = part.sign * outBend
    const { state, frame, mechanism } = part
    const q = part.start + part.sign * outX
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
    mechanism.at(Math.min(mechanism.high, Math.max(mechanism.low, q)), state)
    const { x: ax, y: ay, z: az } = frame
    body.holds =
      state.springs +
      state.massX * dot(lift, ax) +
      state.massY * dot(lift, ay) +
      state.massZ * dot(lift, az) +
      state.windX * dot(wind, ax) +
      state.windY * dot(wind, ay) +
      state.windZ * dot(wind, az)
  }
}

let effort = 0
let slope = 0

/** Brings `effort` and its slope from the output of a chain to its input, both against the motion. */
function inward(machine: Machine, links: readonly Link[], way: Sense, v: number, acceleration: number): void {
  for (let i = links.length - 1; i >= 0; i--) {
    const { element, ratio, rho, bend } = links[i] as Link
    const r = Math.abs(ratio)
    if (element.transmits !== "both-ways") machine.tightness = Math.min(machine.tightness, way * Math.sign(rho) * Math.sign(ratio) * effort)
    const share = effort > 0 ? r / element.forward : r * (element.backward - element.unlocking)
    // the way of its input tells the sign of what its own inertia asks
    const turned = way * Math.sign(rho)
    effort = element.drag + effort * share + element.inertia * (Math.abs(rho) * acceleration + turned * bend * v * v)
    slope = slope * share + element.inertia * Math.abs(rho)
  }
}

/**
 * What a machine asks at the place it stands, at a rate v, on a way, with an acceleration along that way: at the output of one
 * drive, and of its motor, friction included.
 */
export function asks(machine: Machine, line: DriveLine, v: number, way: Sense, acceleration: number): void {
  const { motion, links, bodies } = machine
  const { drive, drives } = motion
  machine.tightness = Number.POSITIVE_INFINITY
  let sum = 0
  let sums = 0
  for (let i = 0; i < bodies.length; i++) {
    const { part, links: own, rho, bend, holds } = bodies[i] as Body
    const { state, count } = part
    const s = way * Math.sign(rho)
    const inert = state.inertia * Math.abs(rho)
    const dynamic = state.inertia * bend * v * v + (state.inertiaSlope * rho * rho * v * v) / 2
    const against = s * (holds + dynamic) + inert * acceleration + state.frictionDry
    const through = against > 0 ? 1 / Math.max(0, 1 - state.frictionShare) : 1 / (1 + state.frictionShare)
    effort = against === 0 ? 0 : against * through
    slope = inert * through
    inward(machine, own, way, v, acceleration)
    sum += count * effort
    sums += count * slope
  }
  effort = sum
  slope = sums
  inward(machine, links, way, v, acceleration)
  machine.output = effort / drives
  machine.outputSlope = slope / drives
  // gears of the drive itself: its effort constant tells what they take driving, its record what comes back
  const { effortConstant: k, backEmfConstant: e, frictionCurrent } = line
  const share = machine.output > 0 ? e / k : (drive.backwardEfficiency * e) / Math.max(k, e) - (drive.unlocking * e) / k
  machine.motor = e * frictionCurrent + machine.output * share
  machine.motorSlope = machine.outputSlope * share
}

/**
 * Acceleration of a machine with an effort of its motor (towards growing travel), moving on a way; null where its gears jam: no
 * acceleration has any balance.
 */
export function accelerates(machine: Machine, line: DriveLine, v: number, way: Sense, motor: number): number | null {
  let a = 0
  // what is asked rises with the acceleration in straight pieces: Newton from the right of the root takes them one by one
  for (let k = 0; k < 60; k++) {
    asks(machine, line, v, way, a)
    const left = machine.motor + machine.inertia * a - way * motor
    if (!(left < Number.POSITIVE_INFINITY)) return null
    if (k > 0 && Math.abs(left) <= 1e-14 * (Math.abs(machine.motor) + Math.abs(motor) + machine.inertia * Math.abs(a))) return way * a
    const rises = machine.motorSlope + machine.inertia
    if (!(rises > 0)) {
      if (left <= 0 && k > 0) return way * a
      // on the falling side: gears that lock are held by what they hold up
      a = Math.max(2 * Math.abs(a), 1e-3 * machine.fastest) * 4
      if (!(a < 1e15)) return null
      continue
    }
    const next = a - left / rises
    if (Math.abs(next - a) <= 1e-14 * (Math.abs(a) + Math.abs(next)) + 1e-300) return way * next
    a = next
  }
  return way * a
}

/** Energy of motion of all its drives and what they move, at the place it stands. */
export function kineticOf({ motion, links, bodies, inertia }: Machine, v: number): number {
  let all = 0
  for (const { element, rho } of links) all += element.inertia * rho * rho
  for (const { part, links: own, rho } of bodies) {
    let one = part.state.inertia * rho * rho
    for (const link of own) one += link.element.inertia * link.rho * link.rho
    all += part.count * one
  }
  return ((motion.drives * inertia + all) * v * v) / 2
}

/** By what the rate changes where a ratio does: it goes over within part of a turn, and no energy is lost. */
export function acrossKink(machine: Machine, before: number, behind: number, pull: Pull): number {
  stand(machine, before, pull)
  const energy = kineticOf(machine, 1)
  stand(machine, behind, pull)
  return Math.sqrt(energy / kineticOf(machine, 1))
}

/** Power against weights, springs and wind, of all it moves, at the place it stands. */
export function liftingPower({ bodies }: Machine, v: number): number {
  let power = 0
  for (const { part, rho, holds } of bodies) power += part.count * holds * rho
  return power * v
}

/** Power that goes into motion, of all it moves but its drives, at a rate and acceleration (towards growing travel). */
export function inertialPower({ links, bodies }: Machine, v: number, a: number): number {
  let power = 0
  const chain = (list: readonly Link[], count: number) => {
    for (const { element, rho, bend } of list) power += count * element.inertia * (rho * a + bend * v * v) * rho * v
  }
  chain(links, 1)
  for (const { part, links: own, rho, bend } of bodies) {
    const { inertia, inertiaSlope } = part.state
    power += part.count * (inertia * (rho * a + bend * v * v) + (inertiaSlope * rho * rho * v * v) / 2) * rho * v
    chain(own, part.count)
  }
  return power
}

/** Rate of the fastest tip of what it moves for a rate of 1 of its drive, m/s, at a travel. */
export function tipPerRate(machine: Machine, x: number, pull: Pull): number {
  stand(machine, x, pull)
  along(machine.links, x, 1, 0)
  const y = outX
  let most = 0
  for (const { part, links: own, rho } of machine.bodies) {
    along(own, y, 1, 0)
    const q = part.start + part.sign * outX
    const { mechanism } = part
    const pose = mechanism.pose(Math.min(mechanism.high, Math.max(mechanism.low, q)))
    const per = Math.abs(rho) * Math.hypot(...pose.tipRate)
    if (Number.isFinite(per)) most = Math.max(most, per)
  }
  return most
}
