import type { ActuatorConstants } from "../../drive/index.js"
import { goldenMinimum } from "../../numeric/index.js"
import type { HingedArms } from "../../rig/document/document.js"
import { armModel } from "../../rig/motion/arms.js"
import { constantsOf, type Direction, type MoveModel, opposingForce } from "../../rig/move/move.js"
import { type Circuit, stiff } from "../../rig/power/circuit.js"
import type { SiOf } from "../../solver/index.js"

/** Places along the stroke at which a move is looked at, as moveTime does. */
const SAMPLES = 160

// Gauss–Legendre, eight points: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 25.4
const NODES = [
  [0.183434642495649805, 0.362683783378361983],
  [0.525532409916328986, 0.313706645877887287],
  [0.796666477413626739, 0.222381034453374471],
  [0.960289856497536232, 0.101228536290376259],
].flatMap(([x, w]) => [
  [-(x as number), w as number],
  [x as number, w as number],
]) as readonly (readonly [number, number])[]

/** Nodes of a quadrature over the stroke: weights in m, and the current of all actuators together, A. */
interface Rule {
  readonly weights: Float64Array
  readonly currents: Float64Array
}

/**
 * A move one way as the supply sees it: force, and with it current, by rod position. What the supply
 * then gives does not change either, so one profile serves every supply.
 */
export interface Profile {
  readonly constants: ActuatorConstants
  readonly count: number
  /** Current of all actuators together at a rod position, A. */
  currentAt(stroke: number): number
  /** Currents at evenly spread positions, A. */
  readonly currents: Float64Array
  /** Maximum and minimum of all currents, A. */
  readonly greatest: number
  readonly least: number
  /** Maximum force against the motion at one rod, and maximum force either way, N; sought between the samples too. */
  readonly peakForce: number
  readonly heldForce: number
  readonly rules: Rule[]
  /** Positions at which the profile itself bends, with both ends of the stroke. */
  readonly edges: readonly number[]
  readonly byVoltage: Map<number, number | null>
}

/** What the linkage of one choice of actuator, place and spring does. */
export interface Mechanics {
  readonly swing: number
  /** Minimum angle between rod and lever, at an end of the stroke, rad. */
  readonly rodAngle: number
  readonly raise: Profile
  readonly lower: Profile
}

/** Why a linkage cannot be. */
export type LinkageFault = "cannot-close" | "dead-point"

/** Works out both profiles of a rig's arms. */
export function mechanicsOf(arms: SiOf<HingedArms>): Mechanics | LinkageFault {
  const arm = armModel(arms)
  const stroke = arms.actuator.stroke
  const angles: number[] = []
  let first: number | null = null
  for (let i = 0; i <= SAMPLES; i++) {
    const angle = arm.angleAt((stroke * i) / SAMPLES)
    if (angle === null) return "cannot-close"
    const lever = arm.leverAt(angle)
    first ??= lever
    if (!(lever * first > 0)) return "dead-point"
    angles.push(angle)
  }
  const model: MoveModel = { arms, arm, constants: constantsOf(arms), circuit: stiff(arms.actuator.ratedVoltage), breaks: [] }
  const up: Direction = arms.raised === "retracted" ? -1 : 1
  return {
    swing: Math.abs((angles[SAMPLES] as number) - (angles[0] as number)),
    rodAngle: Math.min(rodAngleAt(arms, angles[0] as number), rodAngleAt(arms, angles[SAMPLES] as number)),
    raise: profileOf(model, up),
    lower: profileOf(model, up === 1 ? -1 : 1),
  }
}

/** Angle between rod and lever, 0 at a dead point and π/2 where the rod pushes square to the lever, rad. */
function rodAngleAt({ hinge, fixedPivot, movingPivot }: SiOf<HingedArms>, angle: number): number {
  const [rx, ry] = [movingPivot.radius * Math.cos(angle + movingPivot.angle), movingPivot.radius * Math.sin(angle + movingPivot.angle)]
  const [qx, qy] = [hinge.x + rx - fixedPivot.x, hinge.y + ry - fixedPivot.y]
  return Math.atan2(Math.abs(rx * qy - ry * qx), Math.abs(rx * qx + ry * qy))
}

function profileOf(model: MoveModel, direction: Direction): Profile {
  const { arm, arms, constants } = model
  const stroke = arms.actuator.stroke
  const angleAt = (s: number) => arm.angleAt(s) ?? Number.NaN
  const forceAt = (s: number) => {
    const angle = angleAt(s)
    return opposingForce(model, angle, arm.leverAt(angle), direction)
  }
  const currentOf = (force: number) => arms.count * (constants.frictionCurrent + Math.max(0, force) / constants.forceConstant)
  const currentAt = (s: number) => currentOf(forceAt(s))
  const currents = new Float64Array(SAMPLES + 1)
  const step = stroke / SAMPLES
  let [top, bottom] = [0, 0]
  const forces = Array.from({ length: SAMPLES + 1 }, (_, i) => forceAt((stroke * i) / SAMPLES))
  for (const [i, force] of forces.entries()) {
    currents[i] = currentOf(force)
    if (force > (forces[top] as number)) top = i
    if (force < (forces[bottom] as number)) bottom = i
  }
  /** An extreme force, sought between the samples too: the sample's own, or one further out beside it. */
  const extreme = (i: number, sign: 1 | -1): number => {
    const beside = goldenMinimum((s) => -sign * forceAt(s), Math.max(0, (i - 1) * step), Math.min(stroke, (i + 1) * step), 1e-9)
    return sign * Math.max(sign * (forces[i] as number), sign * forceAt(beside))
  }
  const peakForce = extreme(top, 1)
  const bends = [
    ...changes((s) => forceAt(s) > 0, stroke),
    ...(arms.spring ? changes((s) => arm.springStretchAt(angleAt(s)) > 0, stroke) : []),
  ]
  return {
    constants,
    count: arms.count,
    currentAt,
    currents,
    greatest: currentOf(peakForce),
    least: currents.reduce((a, b) => Math.min(a, b)),
    peakForce,
    heldForce: Math.max(Math.abs(peakForce), Math.abs(extreme(bottom, -1))),
    rules: [],
    edges: [0, ...bends.sort((a, b) => a - b), stroke],
    byVoltage: new Map(),
  }
}

/** Positions along the stroke at which a yes turns to a no or back. */
function changes(holds: (stroke: number) => boolean, stroke: number): number[] {
  const found: number[] = []
  let before = holds(0)
  for (let i = 1; i <= SAMPLES; i++) {
    const here = holds((stroke * i) / SAMPLES)
    if (here !== before) found.push(between(holds, before, (stroke * (i - 1)) / SAMPLES, (stroke * i) / SAMPLES))
    before = here
  }
  return found
}

/** Where a yes/no changes between two places, to the last digits. */
function between(holds: (x: number) => boolean, atLow: boolean, low: number, high: number): number {
  let [a, b] = [low, high]
  for (;;) {
    const mid = (a + b) / 2
    if (!(mid > a && mid < b)) return mid
    if (holds(mid) === atLow) a = mid
    else b = mid
  }
}

function ruleOf(profile: Profile, edges: readonly number[], level: number): Rule {
  const panels = 2 ** level
  const size = (edges.length - 1) * panels * NODES.length
  const rule = { weights: new Float64Array(size), currents: new Float64Array(size) }
  let at = 0
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1] as number, edges[i] as number]
    const half = (to - from) / panels / 2
    for (let k = 0; k < panels; k++)
      for (const [x, w] of NODES) {
        rule.weights[at] = w * half
        rule.currents[at] = profile.currentAt(from + half * (2 * k + 1 + x))
        at++
      }
  }
  return rule
}

/** Agreement of one level of panels with the next at which an integral counts as found. */
const AGREEMENT = 1e-10
const DEEPEST = 14

/**
 * Integral over the stroke of a function of the current, by Gauss's rule on panels halved until two
 * levels agree; null where the function has no value somewhere.
 */
function overStroke(profile: Profile, splits: readonly number[], f: (current: number) => number | null): number | null {
  const edges = splits.length ? [...profile.edges, ...splits].sort((a, b) => a - b) : profile.edges
  let before = Number.NaN
  for (let level = 0; level <= DEEPEST; level++) {
    let rule = splits.length ? undefined : profile.rules[level]
    if (!rule) {
      rule = ruleOf(profile, edges, level)
      // deep levels are for moves that all but stall: not worth their room
      if (!splits.length && level < 5) profile.rules[level] = rule
    }
    let sum = 0
    for (let i = 0; i < rule.weights.length; i++) {
      const value = f(rule.currents[i] as number)
      if (value === null) return null
      sum += (rule.weights[i] as number) * value
    }
    if (Math.abs(sum - before) <= AGREEMENT * Math.abs(sum)) return sum
    before = sum
  }
  return before
}

/** Seconds of a move on a supply of fixed voltage and no resistance: nothing the voltage passes through can make it shorter. */
export function leastTime(profile: Profile, voltage: number): number | null {
  const known = profile.byVoltage.get(voltage)
  if (known !== undefined) return known
  const { constants, count, greatest } = profile
  const time =
    voltage - (greatest / count) * constants.windingResistance > 0
      ? overStroke(profile, [], (current) => constants.backEmfConstant / (voltage - (current / count) * constants.windingResistance))
      : null
  profile.byVoltage.set(voltage, time)
  return time
}

/** Total currents at which a supply changes form: where a limit starts or ends to bind, and bends of the efficiency curve. */
interface Bends {
  readonly limits: readonly number[]
  readonly curve: readonly number[]
}

const none: Bends = { limits: [], curve: [] }

function bendsOf(profile: Profile, circuit: Circuit, breaks: readonly number[]): Bends {
  if (!breaks.length) return none
  const { least, greatest } = profile
  const curve = breaks.filter((b) => b > least && b < greatest)
  const edges = [least, ...curve, greatest]
  const limits: number[] = []
  const binds = (current: number) => (circuit(current)?.limitedBy ?? "none") !== "none"
  for (let i = 1; i < edges.length; i++) {
    const [low, high] = [edges[i - 1] as number, edges[i] as number]
    // along one straight piece η = a + b·I the demand V·I/η only rises or only falls
    const [atLow, atHigh] = [binds(low), binds(high)]
    if (atLow !== atHigh) limits.push(between(binds, atLow, low, high))
    if (atHigh && i < edges.length - 1) limits.push(high)
  }
  return { limits, curve }
}

/** Positions at which the current passes through given values. */
function crossings(profile: Profile, values: readonly number[]): number[] {
  const stroke = profile.edges[profile.edges.length - 1] as number
  return values.flatMap((value) => {
    const found: number[] = []
    for (let i = 1; i <= SAMPLES; i++) {
      const [a, b] = [profile.currents[i - 1] as number, profile.currents[i] as number]
      if (a > value === b > value) continue
      found.push(between((s) => profile.currentAt(s) > value, a > value, (stroke * (i - 1)) / SAMPLES, (stroke * i) / SAMPLES))
    }
    return found
  })
}

/** Current of all actuators together when each is asked for a multiple of the move's maximum force, A. */
export function loadedCurrent({ constants, count, peakForce }: Profile, factor: number): number {
  return count * (constants.frictionCurrent + (factor * Math.max(0, peakForce)) / constants.forceConstant)
}

/** Whether the rod still moves at a total current on a supply. */
export function doesMove({ constants, count }: Profile, circuit: Circuit, current: number): boolean {
  const point = circuit(current)
  return point !== null && point.voltage - (current / count) * constants.windingResistance > 0
}

/** Why a supply does not carry a move. */
export type SupplyFault = "no-supply" | "stall"

/** Seconds of a move on a supply, or why there are none. `breaks` are the currents at which its efficiency curve bends. */
export function travelTime(profile: Profile, circuit: Circuit, breaks: readonly number[]): number | SupplyFault {
  const { constants, count, greatest } = profile
  const slowness = (current: number): number | null => {
    const point = circuit(current)
    if (!point) return null
    const left = point.voltage - (current / count) * constants.windingResistance
    return left > 0 ? constants.backEmfConstant / left : null
  }
  if (slowness(greatest) === null) return circuit(greatest) ? "stall" : "no-supply"
  const splits = breaks.length ? crossings(profile, bendsOf(profile, circuit, breaks).limits) : []
  return overStroke(profile, splits, slowness) ?? "stall"
}

/** Charge a move draws from the source, C; the move must be one that {@link travelTime} has an answer for. */
export function drawnCharge(profile: Profile, circuit: Circuit, breaks: readonly number[]): number {
  const { constants, count } = profile
  const { limits, curve } = bendsOf(profile, circuit, breaks)
  const drawn = overStroke(profile, crossings(profile, [...new Set([...limits, ...curve])]), (current) => {
    const point = circuit(current)
    if (!point) return null
    return (point.sourceCurrent * constants.backEmfConstant) / (point.voltage - (current / count) * constants.windingResistance)
  })
  return drawn ?? Number.POSITIVE_INFINITY
}

/** Maximum current from the source during a move, A. */
export function peakDrawn(profile: Profile, circuit: Circuit): number {
  let peak = circuit(profile.greatest)?.sourceCurrent ?? 0
  for (const current of profile.currents) peak = Math.max(peak, circuit(current)?.sourceCurrent ?? 0)
  return peak
}
