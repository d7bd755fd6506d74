// A motion by free bodies: places by vectors, sums of moments, the drive's line and the supply, stepped in time. Nothing of src/rig.
import { openCircuitVoltage, resistanceFactor } from "../../../src/pack/index.js"

type V3 = readonly [number, number, number]
const cross = (a: V3, b: V3): V3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
const dot = (a: V3, b: V3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const add = (a: V3, b: V3, k = 1): V3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]]
/** Turned about a unit axis (Rodrigues). */
const turned = (v: V3, axis: V3, angle: number): V3 =>
  add(add([0, 0, 0], v, Math.cos(angle)), add(add([0, 0, 0], cross(axis, v), Math.sin(angle)), axis, dot(axis, v) * (1 - Math.cos(angle))))

/** What is said of a mechanism, SI; the second route reads it itself. */
export interface Part {
  readonly name: string
  readonly type: "hinge" | "turned-arm"
  readonly count?: number
  readonly mirrored?: boolean
  readonly reversed?: boolean
  readonly mount?: { readonly heading?: number; readonly tilt?: number }
  readonly transmission?: readonly Element[]
  readonly length: number
  readonly hinge?: { readonly x: number; readonly y: number }
  readonly masses: readonly { readonly name: string; readonly mass: number; readonly radius: number; readonly angle?: number }[]
  readonly springs?: readonly {
    readonly stiffness: number
    readonly freeLength: number
    readonly fixedPivot: { readonly x: number; readonly y: number }
    readonly radius: number
    readonly angle?: number
  }[]
  readonly hingeFriction?: number
  readonly fixedPivot?: { readonly x: number; readonly y: number }
  readonly movingPivot?: { readonly radius: number; readonly angle: number }
  readonly axisOffset?: number
  readonly assembly?: "counter-clockwise" | "clockwise"
  readonly startLength?: number
  readonly startAngle?: number
}

export type Element =
  | { readonly type: "drum"; readonly drumDiameter: number; readonly lineDiameter: number; readonly efficiency?: number }
  | { readonly type: "plain-gear"; readonly reduction: number; readonly turnsRound?: boolean; readonly efficiency?: number }

export type DrivePart = { readonly count?: number } & (
  | {
      readonly type: "linear-actuator"
      readonly retractedLength: number
      readonly stroke: number
      readonly ratedVoltage: number
      readonly noLoadSpeed: number
      readonly noLoadCurrent: number
      readonly ratedForce: number
      readonly ratedSpeed: number
      readonly ratedCurrent: number
      readonly backwardEfficiency?: number
    }
  | {
      readonly type: "shaft-motor"
      readonly turn: number
      readonly torqueConstant: number
      readonly backEmfConstant: number
      readonly windingResistance: number
      readonly frictionCurrent?: number
      readonly backwardEfficiency?: number
      readonly unlocking?: number
    }
)

export interface MotionPart {
  readonly name: string
  readonly bus?: string
  readonly drive: DrivePart
  readonly transmission?: readonly Element[]
  readonly mechanisms: readonly Part[]
}

/** Voltage at the drive's bus for a current there; null where the supply has none. */
export type Volts = (amps: number) => number | null

export type Halt = "cannot-close" | "slack" | "insufficient-effort" | "insufficient-power"

/** Straight line of a drive, and its span. */
function lineOf(drive: DrivePart) {
  if (drive.type === "shaft-motor")
    return {
      span: drive.turn,
      start: 0,
      k: drive.torqueConstant,
      e: drive.backEmfConstant,
      winding: drive.windingResistance,
      idle: drive.frictionCurrent ?? 0,
      backward: drive.backwardEfficiency ?? 0,
      unlocking: drive.unlocking ?? 0,
      rated: 12,
    }
  const { ratedVoltage: u, noLoadSpeed: v0, noLoadCurrent: i0, ratedForce, ratedSpeed: v1, ratedCurrent: i1 } = drive
  // the datasheet's two points as two linear equations: u = i·R + v·e
  const det = i0 * v1 - i1 * v0
  const [winding, e, k] = [(u * (v1 - v0)) / det, (u * (i0 - i1)) / det, ratedForce / (i1 - i0)]
  const backward = drive.backwardEfficiency ?? 0
  // a screw that wastes more than half of the work locks itself and has to be driven down
  return {
    span: drive.stroke,
    start: drive.retractedLength,
    k,
    e,
    winding,
    idle: i0,
    backward,
    unlocking: backward > 0 ? 0 : Math.max(0, 1 - 2 * (k / e)),
    rated: u,
  }
}

/** Where an arm stands, as a direction; null where the rod cannot close. */
function armAt(part: Part, q: number): number | null {
  if (part.type === "turned-arm") return q
  const h = part.hinge ?? { x: 0, y: 0 }
  const f = part.fixedPivot as { x: number; y: number }
  const p = part.movingPivot as { radius: number; angle: number }
  const reach = Math.sqrt(q * q + (part.axisOffset ?? 0) ** 2)
  const [dx, dy] = [f.x - h.x, f.y - h.y]
  const apart = Math.sqrt(dx * dx + dy * dy)
  const along = (apart * apart + p.radius ** 2 - reach * reach) / (2 * apart)
  const rest = p.radius ** 2 - along ** 2
  if (rest < 0) return null
  const off = Math.sqrt(rest) * (part.assembly === "clockwise" ? -1 : 1)
  return Math.atan2((along * dy + off * dx) / apart, (along * dx - off * dy) / apart) - p.angle
}

/** Moment that the drive must bring about the hinge, in the sense of its turn `sense`, against weights, cords and friction. */
function momentAt(part: Part, angle: number, sense: number, up: V3, mirrored: boolean): number {
  const { heading = Math.PI / 2, tilt = 0 } = part.mount ?? {}
  const x = turned([1, 0, 0], [0, 0, 1], heading)
  const y = turned([0, 0, 1], x, tilt)
  const axis = cross(x, y)
  // a mirrored mechanism sees gravity in a mirror
  const pull: V3 = mirrored ? [-9.80665 * up[0], 9.80665 * up[1], -9.80665 * up[2]] : [-9.80665 * up[0], -9.80665 * up[1], -9.80665 * up[2]]
  const place = (radius: number, at: number): V3 => add(add([0, 0, 0], x, radius * Math.cos(at)), y, radius * Math.sin(at))
  let moment = 0
  for (const m of part.masses) {
    const r = place(m.radius, angle + (m.angle ?? 0))
    moment += m.mass * dot(cross(r, pull), axis)
  }
  const h = part.hinge ?? { x: 0, y: 0 }
  for (const s of part.springs ?? []) {
    const r = place(s.radius, angle + (s.angle ?? 0))
    const anchor = add(add([0, 0, 0], x, s.fixedPivot.x - h.x), y, s.fixedPivot.y - h.y)
    const line = add(anchor, r, -1)
    const length = Math.sqrt(dot(line, line))
    const tension = s.stiffness * Math.max(0, length - s.freeLength)
    if (tension > 0) moment += dot(cross(r, add([0, 0, 0], line, tension / length)), axis)
  }
  return -sense * moment
}

/** Lever of a rod's force about the hinge: of the line through both pins, on which its two forces lie. */
function leverAt(part: Part, angle: number, q: number): number {
  const h = part.hinge ?? { x: 0, y: 0 }
  const f = part.fixedPivot as { x: number; y: number }
  const p = part.movingPivot as { radius: number; angle: number }
  const r: V3 = [p.radius * Math.cos(angle + p.angle), p.radius * Math.sin(angle + p.angle), 0]
  const line: V3 = [h.x + r[0] - f.x, h.y + r[1] - f.y, 0]
  const apart = Math.sqrt(dot(line, line))
  // the pins' line carries force·apart/q, its share along the rod the force
  return (cross(r, line)[2] / apart) * (apart / q)
}

/** Travel that comes out of a chain. */
const through = (chain: readonly Element[], travel: number) =>
  chain.reduce(
    (x, e) => (e.type === "drum" ? (x * (e.drumDiameter + e.lineDiameter)) / 2 : (x * (e.turnsRound ? -1 : 1)) / e.reduction),
    travel,
  )

/** Effort at a chain's input for a force or moment at its output; null where a line is slack. `way`: of the chain's input. */
function into(chain: readonly Element[], effort: number, way: number): number | null {
  let now = effort
  const ways = chain.map((_, i) => way * chain.slice(0, i).reduce((w, e) => (e.type === "plain-gear" && e.turnsRound ? -w : w), 1))
  for (let i = chain.length - 1; i >= 0; i--) {
    const e = chain[i] as Element
    const per = e.type === "drum" ? (e.drumDiameter + e.lineDiameter) / 2 : 1 / e.reduction
    // winding in, the line's tension is what resists; paying out, what helps
    if (e.type === "drum" && now * (ways[i] as number) < -1e-12) return null
    const eta = e.efficiency ?? (e.type === "drum" ? 0.95 : 1)
    now = now > 0 ? (now * per) / eta : now * per * eta
  }
  return now
}

/** Rate of a motion's drive at a travel from its start, or what halts it there. */
export function rateAt(motion: MotionPart, way: 1 | -1, up: V3, volts: Volts, travel: number): number | Halt {
  const line = lineOf(motion.drive)
  const chain = motion.transmission ?? []
  const common = through(chain, travel)
  const round = Math.sign(through(chain, 1))
  let sum = 0
  for (const part of motion.mechanisms) {
    const own = part.transmission ?? []
    const sign = part.reversed ? -1 : 1
    const q = (part.startLength ?? part.startAngle ?? line.start) + sign * through(own, common)
    const angle = armAt(part, q)
    if (angle === null) return "cannot-close"
    const lever = part.type === "hinge" ? leverAt(part, angle, q) : 1
    const sense = way * round * Math.sign(through(own, 1)) * sign * Math.sign(lever)
    const halves = part.mirrored ? [false, true] : [false]
    for (const mirrored of halves) {
      const moment = momentAt(part, angle, sense, up, mirrored) + (part.hingeFriction ?? 0)
      const effort = into(own, moment / Math.abs(lever), way * round)
      if (effort === null) return "slack"
      sum += ((part.count ?? 1) / halves.length) * effort
    }
  }
  const total = into(chain, sum, way)
  if (total === null) return "slack"
  const drives = motion.drive.count ?? 1
  const one = total / drives
  const amps =
    one >= 0 ? line.idle + one / line.k : line.idle + (one * line.backward) / Math.max(line.k, line.e) + (-one * line.unlocking) / line.k
  const v = volts(drives * amps)
  if (v === null || v <= 0) return "insufficient-power"
  const rate = (v - amps * line.winding) / line.e
  return rate > 0 ? rate : "insufficient-effort"
}

export const spanOf = (motion: MotionPart) => lineOf(motion.drive).span
export const ratedOf = (motion: MotionPart) => lineOf(motion.drive).rated

/** The most a motion's drives draw, either way, W aside: looked for in fine steps. */
export function mostAmps(motion: MotionPart, up: V3): number {
  let most = 0
  const seen: Volts = (amps) => {
    most = Math.max(most, amps)
    return 1e6
  }
  for (const way of [1, -1] as const) for (let i = 0; i <= 4000; i++) rateAt(motion, way, up, seen, (spanOf(motion) * i) / 4000)
  return most
}

/** What a stepped move ends with. */
export type Stepped = { readonly duration: number } | { readonly halt: Halt; readonly travel: number }

/** Steps a motion in time (classical Runge–Kutta); halts are looked for before, in 3000 places, and bisected. */
export function step(motion: MotionPart, way: 1 | -1, up: V3, volts: Volts, steps = 700): Stepped {
  const span = spanOf(motion)
  const at = (done: number) => (way === 1 ? done : span - done)
  const look = (done: number) => rateAt(motion, way, up, volts, at(Math.min(span, Math.max(0, done))))
  for (let i = 0; i <= 3000; i++) {
    if (typeof look((span * i) / 3000) === "number") continue
    let [low, high] = [(span * Math.max(0, i - 1)) / 3000, (span * i) / 3000]
    for (let k = 0; k < 50 && i > 0; k++) {
      const mid = (low + high) / 2
      if (typeof look(mid) === "number") low = mid
      else high = mid
    }
    return { halt: look(high) as Halt, travel: at(high) }
  }
  const speed = (done: number) => look(done) as number
  const gain = (done: number, h: number) => {
    const a = speed(done)
    const b = speed(done + (h * a) / 2)
    const c = speed(done + (h * b) / 2)
    const d = speed(done + h * c)
    return (h * (a + 2 * b + 2 * c + d)) / 6
  }
  // a first guess of the time by the mean pace sets the step
  let slow = 0
  for (let i = 0; i < 20; i++) slow += span / 20 / speed((span * (i + 0.5)) / 20)
  const h = slow / steps
  let [done, time] = [0, 0]
  for (;;) {
    const gained = gain(done, h)
    if (done + gained >= span) {
      let [low, high] = [0, h]
      for (let i = 0; i < 50; i++) {
        const mid = (low + high) / 2
        if (done + gain(done, mid) < span) low = mid
        else high = mid
      }
      return { duration: time + high }
    }
    done += gained
    time += h
  }
}

/** The vertical in the wearer's axes (forward, left, up): square to what is level seen from the side and from behind. */
export function vertical(leanForward: number, leanLeft: number): V3 {
  const u = cross([Math.cos(leanForward), 0, Math.sin(leanForward)], [0, Math.cos(leanLeft), Math.sin(leanLeft)])
  const size = Math.sqrt(dot(u, u))
  return [u[0] / size, u[1] / size, u[2] / size]
}

/** Copper out and back: 58 MS/m at 20 °C, 0.393 % more for each kelvin (IEC 60028), area by the gauge's own formula. */
export function runOhms(run: { length: number; awg: number; contacts?: number; contactResistance?: number; temperature?: number }): number {
  const area = (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - run.awg) / 39)) ** 2
  return (
    (2 * run.length * (1 + 0.00393 * ((run.temperature ?? 25) - 20))) / 58e6 / area + (run.contacts ?? 0) * (run.contactResistance ?? 5e-3)
  )
}

/** A pack's open voltage and resistance. */
export function packOf(pack: {
  chemistry: "nmc" | "lfp"
  series: number
  parallel: number
  cellResistance: number
  stateOfCharge?: number
  extraResistance?: number
  temperature?: number
}): { open: number; ohms: number } {
  return {
    open: pack.series * openCircuitVoltage(pack.chemistry, pack.stateOfCharge ?? 0.8),
    ohms:
      ((pack.series * pack.cellResistance) / pack.parallel) * resistanceFactor(pack.chemistry, pack.temperature ?? 25) +
      (pack.extraResistance ?? 0),
  }
}

/** What hangs on a bus beside the drives. */
export interface Hung {
  readonly amps: number
  readonly siemens: number
  readonly watts: number
}

/** Upper voltage of a bus behind a resistance: V = E − R·(I + G·V + P/V), a quadratic. */
export function behind(open: number, ohms: number, amps: number, hung: Hung): number | null {
  const [a, b, c] = [1 + ohms * hung.siemens, open - ohms * (amps + hung.amps), ohms * hung.watts]
  const under = b * b - 4 * a * c
  if (under < 0 || (b <= 0 && hung.watts > 0)) return null
  return c === 0 ? b / a : (b + Math.sqrt(under)) / (2 * a)
}

export interface Step {
  readonly output: number
  readonly efficiency: readonly { readonly outputCurrent: number; readonly efficiency: number }[]
  readonly idle: number
  readonly least: number
  readonly most: number | null
}

/** A bus behind a converter, by bisection on the power it takes in and on its output. */
export function behindStep(open: number, ohms: number, spec: Step, far: number, amps: number, hung: Hung): number | null {
  const eta = (i: number) => {
    const list = spec.efficiency
    const k = list.findIndex((p) => p.outputCurrent >= i)
    if (k === 0) return (list[0] as { efficiency: number }).efficiency
    if (k < 0) return (list.at(-1) as { efficiency: number }).efficiency
    const [p, q] = [list[k - 1], list[k]] as [(typeof list)[number], (typeof list)[number]]
    return p.efficiency + ((q.efficiency - p.efficiency) * (i - p.outputCurrent)) / (q.outputCurrent - p.outputCurrent)
  }
  const out = (v: number) => {
    const bus = behind(v, far, amps, hung)
    if (bus === null) return null
    return { bus, amps: amps + hung.amps + hung.siemens * bus + (hung.watts > 0 ? hung.watts / bus : 0) }
  }
  // input power grows with the current taken up to the limit, the minimum voltage, or half of the open voltage
  const most = Math.min(
    spec.most ?? Number.POSITIVE_INFINITY,
    ohms > 0 ? Math.min((open - spec.least) / ohms, (open + ohms * spec.idle) / (2 * ohms)) : Number.POSITIVE_INFINITY,
  )
  const power = (i: number) => (open - ohms * i) * (i - spec.idle)
  const full = out(spec.output)
  if (full && power(most) >= (spec.output * full.amps) / eta(full.amps)) return full.bus
  // held: the output falls until the power balances
  let [low, high] = [0, spec.output]
  for (let k = 0; k < 70; k++) {
    const mid = (low + high) / 2
    const there = out(mid)
    if (there && there.bus > 0 && (mid * there.amps) / eta(there.amps) <= power(most)) low = mid
    else if (there === null || there.bus <= 0) low = mid
    else high = mid
  }
  const there = out(low)
  return there && there.bus > 0 ? there.bus : null
}
