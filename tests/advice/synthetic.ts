// Builds of three creatures by a model that has nothing of the rig's: bodies cut free and moved on in time by Runge and Kutta's
// fourth-order step, the supply by halving an interval of voltages, parts that stray, meters with a gain error of their own.
import type { RigReading } from "../../src/advice/index.js"
import { resistanceFactor } from "../../src/pack/index.js"
import { angleAt, type Creature, type Plant, pinFrom, rad, winchStart, winchTurn } from "./creatures.js"

const g = 9.80665

/** A seeded generator (mulberry32), even between 0 and 1, and of standard deviation 1 (even too: no bell curve). */
export function random(seed: number): { uniform: () => number; even: () => number; pick: <T>(list: readonly T[]) => T } {
  let state = seed >>> 0
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return { uniform, even: () => Math.sqrt(12) * (uniform() - 0.5), pick: (list) => list[Math.floor(uniform() * list.length)]! }
}

/** What the supply gives at the drive's terminals for a current that answers to the voltage there. */
function supply(p: Plant, amps: (volts: number) => number) {
  const ohms = (p.series ? p.series * p.cellOhms * resistanceFactor("nmc", p.celsius) : p.cellOhms) + p.runOhms
  const inside = ohms - p.runOhms
  const open = (p.series ? p.series * p.cellVolts : p.bankVolts) - p.diodeVolts
  const out = (volts: number) => amps(volts) + p.loadAmps + (p.leakOhms ? volts / p.leakOhms : 0)
  const shown = (volts: number, input: number, i: number) => ({
    volts,
    input,
    source: open + p.diodeVolts - inside * i,
    amps: i,
    out: amps(volts),
  })
  // a supply without a converter: the voltage at which the line gives what the drive takes
  if (!p.setVolts) {
    let [low, high] = [0, open]
    for (let k = 0; k < 40; k++) {
      const v = (low + high) / 2
      if ((open - v) / ohms > out(v)) low = v
      else high = v
    }
    return shown(low, low, (open - low) / ohms)
  }
  // the input current for some watts: the smaller of both, or none
  const input = (watts: number) => {
    const [b, c] = [open - ohms * p.ownAmps, watts]
    const under = b * b - 4 * ohms * c
    return under < 0 ? Number.POSITIVE_INFINITY : p.ownAmps + (b - Math.sqrt(under)) / (2 * ohms)
  }
  const limit = p.bankLimit || Number.POSITIVE_INFINITY
  const taken = (v: number) => input((v * Math.max(0, out(v))) / p.efficiency)
  const all = taken(p.setVolts)
  if (Number.isFinite(all) && all <= limit) {
    const i = all
    return shown(p.setVolts, open - ohms * i, i)
  }
  let [low, high] = [0, p.setVolts]
  for (let k = 0; k < 40; k++) {
    const v = (low + high) / 2
    if (Number.isFinite(taken(v)) && taken(v) <= limit) low = v
    else high = v
  }
  const i = taken(low)
  return shown(low, open - ohms * i, i)
}

/** Moment of an arm's weight and what pulls at it, about its hinge, against a rising angle. */
function weightMoment(p: Plant, angle: number): number {
  let moment = p.cloth
  for (const { mass, radius, angle: off } of p.masses) moment += p.massFactor * mass * g * radius * Math.cos(angle + off + p.bend)
  return moment
}

const frictionMoment = (p: Plant, share: number) => p.hingeMoment + p.armLength * (p.tipFriction + p.growingFriction * Math.max(0, share))

/** Moment arm of the rod's or line's force about the hinge, from the vectors of both. */
function momentArm(c: Creature, p: Plant, angle: number): number {
  const [rx, ry] = [p.lever * Math.cos(angle + c.pinAngle), p.lever * Math.sin(angle + c.pinAngle)]
  const [ux, uy] = [c.hinge[0] + rx - c.fixed[0], c.hinge[1] + ry - c.fixed[1]]
  return (rx * uy - ry * ux) / Math.hypot(ux, uy)
}

/** One way of one build. */
export interface Run {
  readonly time: number
  readonly stoppedAt: number | null
  readonly swing: number
  readonly volts: number
  readonly source: number
  readonly input: number
  readonly amps: number
  readonly drive: number
}

/** Moves a build out or back, by time steps. */
export function run(c: Creature, p: Plant, way: 1 | -1): Run {
  // a rod or a drum only comes to its own end: the angles there follow from where it takes hold
  const [from, to] = ends(c, p)
  const [start, end] = way === 1 ? [from, to] : [to, from]
  const across = end - start
  const dir = Math.sign(across)
  const per = (angle: number) => {
    if (c.kind === "servo") return 1
    const arm = Math.abs(momentArm(c, p, angle))
    return c.kind === "rod" ? arm : arm / p.drumRadius
  }
  const perDrive = c.kind === "winch" ? 1 : c.rig.motions[0]!.mechanisms[0]!.count! / p.drives || 1
  /** Effort that one drive's output needs at an angle, moving. */
  const need = (angle: number) => {
    const moment = dir * weightMoment(p, angle) + frictionMoment(p, (angle - from) / (to - from))
    const effort = (perDrive * moment) / per(angle)
    if (c.kind !== "winch") return effort
    return effort > 0 ? effort / p.drumShare : effort * p.drumShare
  }
  const drives = p.drives
  const amps = (rate: number) => (volts: number) => drives * (p.idleAmps + (volts - p.emf * rate) / p.winding)
  // an inertia that a slow move does not feel, and that steps of this length carry
  const inertia = ((p.push * p.emf) / p.winding) * 2.5 * c.step
  const gain = (angle: number, rate: number) => {
    const { volts } = supply(p, amps(rate))
    const current = (volts - p.emf * rate) / p.winding
    const effort = need(angle)
    const asked = effort > 0 ? effort : -effort * p.unlocking
    return (p.push * (current - p.frictionAmps) - asked) / inertia
  }
  const slow = (rate: number, angle: number) => (dir * Math.max(0, rate)) / per(angle)
  // slack: the drive turns without a load and nothing follows
  const idling = p.slack
    ? (winchTurn * p.slack * p.emf) / (supply(p, () => p.drives * p.frictionAmps).volts - p.frictionAmps * p.winding)
    : 0
  let [angle, rate, time] = [start, 0, 0]
  const sums = { volts: 0, source: 0, input: 0, amps: 0, drive: 0 }
  const stopAt = start + across * p.blockedAt
  const h = c.step
  let idle = 0
  while (time < 400 * h * 100) {
    if (dir * (angle - stopAt) >= 0) break
    const k1 = gain(angle, rate)
    const v1 = slow(rate, angle)
    const k2 = gain(angle + (h / 2) * v1, rate + (h / 2) * k1)
    const v2 = slow(rate + (h / 2) * k1, angle + (h / 2) * v1)
    const k3 = gain(angle + (h / 2) * v2, rate + (h / 2) * k2)
    const v3 = slow(rate + (h / 2) * k2, angle + (h / 2) * v2)
    const k4 = gain(angle + h * v3, rate + h * k3)
    const v4 = slow(rate + h * k3, angle + h * v3)
    const meter = supply(p, amps(rate))
    sums.volts += meter.volts
    sums.source += meter.source
    sums.input += meter.input
    sums.amps += meter.amps
    sums.drive += meter.out
    const before = angle
    angle += (h / 6) * (v1 + 2 * v2 + 2 * v3 + v4)
    rate = Math.max(0, rate + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4))
    time += h
    idle = Math.abs(angle - before) < 1e-7 * Math.abs(across) ? idle + 1 : 0
    if (idle > 40)
      return {
        ...means(sums, time / h),
        time: Number.POSITIVE_INFINITY,
        stoppedAt: (angle - start) / across,
        swing: Math.abs(angle - start),
      }
    if (dir * (angle - stopAt) >= 0) time -= h * ((angle - stopAt) / (angle - before))
  }
  return { ...means(sums, time / h), time: time + idling, stoppedAt: null, swing: Math.abs(stopAt - start) }
}

const means = <T extends Record<string, number>>(sums: T, n: number): T =>
  Object.fromEntries(Object.entries(sums).map(([k, v]) => [k, v / Math.max(1, Math.ceil(n - 1e-9))])) as T

/** Angles of an arm at both ends of its drive's travel, wherever its rod takes hold. */
function ends(c: Creature, p: Plant): readonly [number, number] {
  if (c.kind === "servo" || (p.lever === c.plant.lever && p.drumRadius === c.plant.drumRadius && p.slack === 0)) return [c.from, c.to]
  const apart = (angle: number) =>
    Math.hypot(
      c.hinge[0] + p.lever * Math.cos(angle + c.pinAngle) - c.fixed[0],
      c.hinge[1] + p.lever * Math.sin(angle + c.pinAngle) - c.fixed[1],
    )
  if (c.kind === "rod")
    return [angleAt(c.fixed, c.hinge, p.lever, c.pinAngle, 0.155), angleAt(c.fixed, c.hinge, p.lever, c.pinAngle, 0.255)]
  // the line is as long as it was made: it begins at the planned length, and what is wound in is missing there
  const at = (length: number) => {
    let [low, high] = [-89 * rad, 89 * rad]
    for (let k = 0; k < 60; k++) {
      const mid = (low + high) / 2
      if (apart(mid) > length) low = mid
      else high = mid
    }
    return low
  }
  return [at(pinFrom(winchStart)), at(pinFrom(winchStart) - winchTurn * (1 - p.slack) * p.drumRadius)]
}

/** Pull at the tip to move an arm slowly through a place of its drive's way. */
function pull(c: Creature, p: Plant, way: 1 | -1, place: number): number {
  const middle = placeOf(c, p, place)
  const [from, to] = ends(c, p)
  const dir = way * Math.sign(to - from)
  return Math.abs((dir * weightMoment(p, middle) + frictionMoment(p, (middle - from) / (to - from))) / p.armLength)
}

/** Angle at which the drive is at a share of its way. */
function placeOf(c: Creature, p: Plant, share: number): number {
  const [from, to] = ends(c, p)
  if (c.kind === "servo") return from + share * (to - from)
  const apart = (angle: number) =>
    Math.hypot(
      c.hinge[0] + p.lever * Math.cos(angle + c.pinAngle) - c.fixed[0],
      c.hinge[1] + p.lever * Math.sin(angle + c.pinAngle) - c.fixed[1],
    )
  const wanted = apart(from) + share * (apart(to) - apart(from))
  let [low, high] = [from, to]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (apart(mid) > wanted === apart(from) > wanted) low = mid
    else high = mid
  }
  return low
}

/** A build of good parts that stray a few per cent. */
export function strayed(p: Plant, even: () => number): Plant {
  const by = (share: number) => 1 + share * even()
  return {
    ...p,
    cellVolts: p.cellVolts + 0.02 * even(),
    cellOhms: p.cellOhms * by(p.series ? 0.08 : 0),
    celsius: p.celsius + 2 * even(),
    runOhms: p.runOhms * by(0.06) + 0.004 * (even() + 1),
    setVolts: p.setVolts * by(0.01),
    efficiency: Math.min(1, p.efficiency * (p.setVolts ? by(0.02) : 1)),
    bankVolts: p.bankVolts * by(0.01),
    bankLimit: p.bankLimit * by(0.04),
    emf: p.emf * by(0.03),
    push: p.push * by(0.03),
    winding: p.winding * by(0.04),
    frictionAmps: p.frictionAmps * by(0.12) + 0.005 * (even() + 1) * (12 / p.winding / 3),
    drumShare: p.drumRadius ? Math.min(0.99, p.drumShare * by(0.02)) : 1,
    massFactor: by(0.02),
    hingeMoment: p.hingeMoment * by(0.2),
    tipFriction: 0.05 * (even() + 1),
  }
}

/** Everything an ordinary maker's tools show of a build: voltmeter, ammeter and scale each with a gain of its own. */
export function readings(c: Creature, p: Plant, even: () => number, noise = 1): RigReading[] | null {
  const out = run(c, p, 1)
  const back = run(c, p, -1)
  const [volt, amp, scale] = [1 + noise * 0.005 * even(), 1 + noise * 0.02 * even(), 1 + noise * 0.015 * even()]
  const U = (v: number) => Math.max(0, v * volt + noise * Math.hypot(0.02, 0.002 * v) * even())
  const I = (v: number) => Math.max(0, v * amp + noise * Math.hypot(0.02, 0.005 * v) * even())
  const F = (v: number) => Math.max(0, v * scale + noise * Math.hypot(0.2, 0.02 * v) * even())
  const rest = supply(p, () => p.drives * p.idleAmps)
  const { motion, source, bus } = c
  const still = [
    { type: "voltage", at: source, during: "rest", value: U(rest.source) },
    ...[0.2, 0.8].flatMap((place) => [
      { type: "force", motion, place, value: F(pull(c, p, 1, place)) } as const,
      { type: "force", motion, way: "back", place, value: F(pull(c, p, -1, place)) } as const,
    ]),
    ...(p.setVolts ? [{ type: "voltage", at: bus, during: "rest", value: U(rest.volts) } as const] : []),
    ...(p.series
      ? ([
          {
            type: "cell-resistance",
            source,
            value: p.cellOhms * resistanceFactor("nmc", p.celsius) * (1 + noise * 0.06 * even()) + noise * 0.001 * even(),
          },
          { type: "cell-temperature", source, value: p.celsius + noise * 2 * even() },
        ] as const)
      : []),
  ] satisfies RigReading[]
  if (out.stoppedAt !== null) {
    const stalled = supply(p, (v) => p.drives * (p.idleAmps + v / p.winding))
    const standing = [
      { type: "voltage", at: bus, motion, during: "stalled", value: U(stalled.volts) },
      { type: "current", motion, during: "stalled", value: I(stalled.out) },
    ] satisfies RigReading[]
    return out.stoppedAt < 0.02
      ? [...still, ...standing, { type: "does-not-move", motion }]
      : [...still, ...standing, { type: "stops-at", motion, share: Math.min(1, Math.max(0, out.stoppedAt + noise * 0.02 * even())) }]
  }
  if (back.stoppedAt !== null) return null
  const drop = out.source - out.input
  return [
    { type: "time", motion, value: out.time + noise * c.clock * even(), uncertainty: c.clock },
    { type: "time", motion, way: "back", value: back.time + noise * c.clock * even(), uncertainty: c.clock },
    { type: "swing", motion, value: out.swing + noise * 0.026 * even() },
    { type: "voltage", at: source, value: U(out.source) },
    { type: "voltage", at: bus, value: U(out.volts) },
    { type: "voltage-drop", along: bus, value: Math.max(0, drop * volt + noise * Math.hypot(0.01, 0.01 * drop) * even()) },
    { type: "current", motion, value: I(out.drive) },
    { type: "current", motion, way: "back", value: I(back.drive) },
    { type: "current", at: source, value: I(out.amps) },
    ...still,
  ]
}
