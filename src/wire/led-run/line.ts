import { solveLinear } from "../../numeric/index.js"
import type { Current, Length, Resistance, ResistancePerLength, Temperature, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import { type ConductorDescription, resistance20, temperatureFactor } from "../conductor.js"

/** A point at which a {@link LedRunInput} is fed. */
export interface LedFeed {
  /** Distance from the start of the run. [x_f; 0 to 1000 m] */
  position: Length
  /** Voltage at the far end of the feeder's source. [E_f; 10 mV to 1000 V] */
  sourceVoltage: Voltage
  /** Resistance of the feeder, out and back (half each), source included. [R_f; 0 to 100 Ω; default 0] */
  feederResistance?: Resistance
}

/** Input of {@link ledRun}. Give the conductor as `awg`, as `area` or as `trackResistance`. */
export interface LedRunInput extends ConductorDescription {
  /** Length of the run [L; 1 mm to 1000 m] */
  length: Length
  /** Current of all its lights together at the brightness meant. [I; 0.1 mA to 1000 A] */
  current: Current
  /** Lights in equal sections, each at its section's end; null spreads the load evenly along the run. [n; whole 1 to 5000; optional] */
  lightCount?: number | null
  /** Resistance per length of one conductor of the run (a strip's copper track). [r_1; 0.001 mΩ/m to 1000 Ω/m; optional] */
  trackResistance?: ResistancePerLength | null
  /** Conductor temperature [T; −50 to 200 °C; default 20 °C] */
  conductorTemperature?: Temperature
  /** Points at which it is fed: one end, both, or anywhere along it. [list of 1 to 50] */
  feeds: readonly LedFeed[]
  /** Voltage below which the lights dim visibly. [V_d; 10 mV to 1000 V; optional] */
  dimVoltage?: Voltage | null
}

/** Voltage at one place of the run. */
export interface LedPoint {
  /** Distance from the start [m] */
  readonly position: number
  /** Voltage [V] */
  readonly voltage: number
}

/** A stretch of the run, m from its start. */
export interface LedStretch {
  /** From [m] */
  readonly from: number
  /** Coordinate to. [m] */
  readonly to: number
}

/** State of one feed. */
export interface LedFeedState {
  /** Distance from the start [m] */
  readonly position: number
  /** Current it gives; negative where the run feeds back into it. [I_f; A] */
  readonly current: number
  /** Voltage where it joins the run. [V] */
  readonly voltage: number
}

/** Result of {@link ledRun}. */
export interface LedRun {
  /** Lowest voltage at any light. [V_low; V] */
  readonly minVoltage: number
  /** Where that is, m from the start. [x_low; m] */
  readonly minVoltagePosition: number
  /** Highest feed voltage less the lowest light's. [U; V] */
  readonly maxDrop: number
  /** Loop resistance per length, both conductors. [r_l; Ω/m] */
  readonly loopResistance: number
  /** Feeds [list] */
  readonly feeds: readonly LedFeedState[]
  /** Largest current in the run's own conductors. [I_max; A] */
  readonly maxCurrent: number
  /** Power of the lights [P_l; W] */
  readonly loadPower: number
  /** Heat in the run's conductors. [P_r; W] */
  readonly runHeat: number
  /** Heat in the feeders [P_f; W] */
  readonly feederHeat: number
  /** Voltage along the run: at every light, or at even steps of an even load. [list] */
  readonly profile: readonly LedPoint[]
  /** Stretches below `dimVoltage`. [list] */
  readonly dimmed: readonly LedStretch[]
  /** Part of the run below `dimVoltage`; null without one. [d; as a fraction] */
  readonly dimmedShare: number | null
}

/** Reasons for which {@link ledRun} refuses. */
export type LedRunRefusal = "insufficient-voltage"

/** Hazards and limits of validity that go with an answer of {@link ledRun}. */
export type LedRunCaution =
  | "burns"
  | "constant-current"
  | "dim"
  | "fumes"
  | "fuse-each-feed"
  | "source-fed-back"
  | "thin-wire"
  | "touch-voltage"
  | "wire-burns"
  | "wire-overloaded"

type Si = SiOf<LedRunInput>

/** A span between break points: current at its left end, rightwards, and the voltage there. */
export interface Span {
  readonly start: number
  readonly length: number
  readonly current: number
  readonly voltage: number
}

export interface Run {
  readonly r: number
  /** Evenly spread load, A/m; 0 where the lights are taken one by one. */
  readonly spread: number
  readonly spans: readonly Span[]
  readonly currents: readonly number[]
  readonly order: readonly Si["feeds"][number][]
}

/** Resistance per length of one conductor, warm, Ω/m. */
export const singleResistance = (si: Si): number =>
  (si.trackResistance === null ? resistance20(si) : si.trackResistance) * temperatureFactor(si.material, si.conductorTemperature)

function lightsOf(si: Si): { x: number; current: number }[] {
  const { lightCount, length, current } = si
  if (lightCount === null) return []
  return Array.from({ length: lightCount }, (_, k) => ({
    x: k + 1 === lightCount ? length : ((k + 1) * length) / lightCount,
    current: current / lightCount,
  }))
}

/** Feed currents from the voltages at the feeds (nodal analysis along the line), then the spans. */
export function runOf(si: Si): Run {
  const r = 2 * singleResistance(si)
  const lights = lightsOf(si)
  const spread = si.lightCount === null ? si.current / si.length : 0
  const order = [...si.feeds].sort((a, b) => a.position - b.position)
  const m = order.length
  const matrix = order.map(() => new Array<number>(m).fill(0))
  const rhs = order.map((f) => f.sourceVoltage)
  // what each feed must give to its surroundings: R·(its share of the load) + R/(r·ℓ)·(differences)
  order.forEach((feed, j) => {
    const before = order[j - 1]
    const after = order[j + 1]
    let share = 0
    const from = before?.position ?? 0
    const to = after?.position ?? si.length
    const left = feed.position - from
    const right = to - feed.position
    share += spread * (before ? left / 2 : left) + spread * (after ? right / 2 : right)
    for (const { x, current } of lights) {
      if (x === feed.position) share += current
      else if (x < feed.position && (before === undefined || x > from)) share += before ? (current * (x - from)) / left : current
      else if (x > feed.position && (after === undefined || x < to)) share += after ? (current * (to - x)) / right : current
    }
    const row = matrix[j] as number[]
    row[j] = 1
    rhs[j] = feed.sourceVoltage - feed.feederResistance * share
    if (before) {
      row[j] = (row[j] as number) + feed.feederResistance / (r * left)
      row[j - 1] = -feed.feederResistance / (r * left)
    }
    if (after) {
      row[j] = (row[j] as number) + feed.feederResistance / (r * right)
      row[j + 1] = -feed.feederResistance / (r * right)
    }
  })
  // each row is dominated by its diagonal, so there is always a solution
  const volts = solveLinear(matrix, rhs) as number[]
  const between = order.slice(1).map((feed, j) => {
    const before = order[j] as Si["feeds"][number]
    const gap = feed.position - before.position
    const reaction = lights
      .filter((l) => l.x > before.position && l.x < feed.position)
      .reduce((sum, l) => sum + (l.current * (feed.position - l.x)) / gap, (spread * gap) / 2)
    return reaction + ((volts[j] as number) - (volts[j + 1] as number)) / (r * gap)
  })
  const places = [...new Set([0, si.length, ...order.map((f) => f.position), ...lights.map((l) => l.x)])].sort((a, b) => a - b)
  const spans: Span[] = []
  const first = order[0] as Si["feeds"][number]
  const byPlace = new Map(lights.map((l) => [l.x, l.current]))
  const lightAt = (x: number) => byPlace.get(x) ?? 0
  // the start lets no current in; from each feed on the current is known afresh
  places.slice(0, -1).forEach((start, k) => {
    const length = (places[k + 1] as number) - start
    const j = order.findIndex((f) => f.position === start)
    const last = spans[k - 1]
    let current: number
    if (j >= 0 && j < m - 1) current = between[j] as number
    else if (j === m - 1) current = spread * (si.length - start) + lights.filter((l) => l.x > start).reduce((sum, l) => sum + l.current, 0)
    else current = last === undefined ? 0 : last.current - spread * last.length - lightAt(start)
    spans.push({ start, length, current, voltage: 0 })
  })
  // voltages outwards from the first feed
  const anchor = places.indexOf(first.position)
  const at = new Array<number>(places.length).fill(0)
  at[anchor] = volts[0] as number
  const fall = (k: number) => r * ((spans[k] as Span).current * (spans[k] as Span).length - (spread * (spans[k] as Span).length ** 2) / 2)
  for (let k = anchor; k < spans.length; k++) at[k + 1] = (at[k] as number) - fall(k)
  for (let k = anchor - 1; k >= 0; k--) at[k] = (at[k + 1] as number) + fall(k)
  const currents = order.map((feed) => {
    const k = places.indexOf(feed.position)
    const right = spans[k]?.current ?? 0
    const before = spans[k - 1]
    const left = before === undefined ? 0 : before.current - spread * before.length
    return right - left + lightAt(feed.position)
  })
  return { r, spread, spans: spans.map((s, k) => ({ ...s, voltage: at[k] as number })), currents, order }
}

const voltageIn = (run: Run, span: Span, s: number) => span.voltage - run.r * (span.current * s - (run.spread * s ** 2) / 2)

interface Lowest {
  readonly span: number
  readonly s: number
  readonly voltage: number
}

/** What the kernel found on its way, for the formulae. */
export interface LedTrace {
  readonly run: Run
  readonly low: Lowest
}

/** Lowest point: in an even load where the current changes sign, otherwise at a light. */
export function lowest(si: Si, run: Run): Lowest {
  let best = { span: 0, s: 0, voltage: Number.POSITIVE_INFINITY }
  const lit = new Set(lightsOf(si).map((l) => l.x))
  run.spans.forEach((span, k) => {
    const inner = run.spread > 0 ? span.current / run.spread : -1
    for (const s of [0, span.length, inner]) {
      if (!(s >= 0 && s <= span.length)) continue
      const end = s === span.length ? (run.spans[k + 1]?.start ?? si.length) : span.start + s
      if (run.spread === 0 && si.lightCount !== null && !lit.has(end)) continue
      const voltage = voltageIn(run, span, s)
      if (voltage < best.voltage) best = { span: k, s, voltage }
    }
  })
  return best
}

/** Voltage at every light, or at even steps of an even load. */
export function profileOf(si: Si, run: Run): LedPoint[] {
  const at = (x: number) => {
    const span = run.spans.findLast((s) => s.start <= x) ?? (run.spans[0] as Span)
    return { position: x, voltage: voltageIn(run, span, x - span.start) }
  }
  return si.lightCount === null ? Array.from({ length: 61 }, (_, k) => at((si.length * k) / 60)) : lightsOf(si).map((l) => at(l.x))
}

/** Stretches below a voltage: roots of each span's parabola, or the sections of the lights that are below. */
export function dimmedOf(si: Si, run: Run, limit: number, profile: readonly LedPoint[]): LedStretch[] {
  const found: { from: number; to: number }[] = []
  const add = (from: number, to: number) => {
    const last = found.at(-1)
    if (!(to > from)) return
    if (last && from - last.to <= 1e-9 * si.length) last.to = to
    else found.push({ from, to })
  }
  if (si.lightCount !== null) {
    const section = si.length / si.lightCount
    for (const p of profile) if (p.voltage < limit) add(p.position - section, p.position)
    return found
  }
  for (const span of run.spans) {
    const [a, b, c] = [(run.r * run.spread) / 2, -run.r * span.current, span.voltage - limit]
    const square = b ** 2 - 4 * a * c
    // the sum of like signs first, so that neither root is a difference of near equals
    const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(Math.max(0, square))) / 2
    const cuts = square > 0 && a > 0 ? [q / a, ...(q === 0 ? [] : [c / q])] : []
    const stops = [0, ...cuts.filter((s) => s > 0 && s < span.length).sort((x, y) => x - y), span.length]
    for (let k = 0; k + 1 < stops.length; k++) {
      const [p, q] = [stops[k] as number, stops[k + 1] as number]
      if (voltageIn(run, span, (p + q) / 2) < limit) add(span.start + p, span.start + q)
    }
  }
  return found
}

/** Spans from the first feed to the lowest light, each with its sign, for the working. */
export function wayDown({ run, low }: LedTrace): { sign: number; current: number; length: number }[] {
  const start = (run.order[0] as Si["feeds"][number]).position
  const anchor = run.spans.findIndex((s) => s.start === start)
  const first = anchor < 0 ? run.spans.length : anchor
  const way: { sign: number; current: number; length: number }[] = []
  for (let k = first; k < low.span; k++)
    way.push({ sign: 1, current: (run.spans[k] as Span).current, length: (run.spans[k] as Span).length })
  const last = run.spans[low.span] as Span
  if (low.span >= first) way.push({ sign: 1, current: last.current, length: low.s })
  else {
    for (let k = first - 1; k > low.span; k--)
      way.push({ sign: -1, current: (run.spans[k] as Span).current, length: (run.spans[k] as Span).length })
    // back from the span's right end to s: all of it less its first part
    way.push({ sign: -1, current: last.current, length: last.length }, { sign: 1, current: last.current, length: low.s })
  }
  return way
}
