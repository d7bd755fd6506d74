import { goldenMinimum, type Root, theRoot } from "../../numeric/index.js"
import { type Body, conduct, type Drive, type Layer, type Response } from "../conduction.js"
import { type Plastic, plastics } from "../data.js"

/** Stefan–Boltzmann constant, W/(m²·K⁴) (CODATA 2018). */
export const STEFAN_BOLTZMANN = 5.670374419e-8

/** Dry loose sand at 300 K (Incropera and others, table A.3). */
export const drySand: { readonly conductivity: number; readonly density: number; readonly specificHeat: number } = {
  conductivity: 0.27,
  density: 1515,
  specificHeat: 800,
}

/** What the part is, as far as heat goes. */
export interface Part {
  readonly shape: "sheet" | "rod" | "tube"
  readonly thickness: number | null
  readonly outsideDiameter: number | null
  readonly filling: "empty" | "dry-sand"
  readonly faces: number
}

/**
 * Which end of the spread of the plastic's properties: `slow` and `fast` for its core, `skin` for a surface that follows the film
 * soonest. Late on the way the surface of the `fast` plastic is ahead of it.
 */
export type Variant = "usual" | "slow" | "fast" | "skin"

/** Conductivity, density and specific heat to calculate with. */
export interface Properties {
  readonly conductivity: number
  readonly density: number
  readonly specificHeat: number
}

/** Properties of a plastic at one end of their spread, heat of melting spread over the rise; given values stand as they are. */
export function propertiesOf(
  plastic: Plastic,
  given: { readonly conductivity: number | null; readonly density: number | null; readonly specificHeat: number | null },
  rise: number,
  variant: Variant,
): Properties {
  const data = plastics[plastic]
  const more = ({ usual: "value", slow: "high", fast: "low", skin: "low" } as const)[variant]
  const less = ({ usual: "value", slow: "low", fast: "high", skin: "low" } as const)[variant]
  return {
    conductivity: given.conductivity ?? data.conductivity[less],
    density: given.density ?? data.density[more],
    specificHeat: given.specificHeat ?? data.specificHeat[more] + data.melting[more] / Math.max(rise, 1),
  }
}

/** Length of the Biot number: half a sheet heated from both faces, all of one heated from one, radius, or wall of an empty tube. */
export function heatPath({ shape, thickness, outsideDiameter, filling, faces }: Part): number {
  if (shape === "sheet") return (thickness as number) / (faces === 2 ? 2 : 1)
  return shape === "tube" && filling === "empty" ? (thickness as number) : (outsideDiameter as number) / 2
}

/** A part under a film: its response at the spots that matter. */
export interface Heated {
  readonly response: Response
  /** Spots of the plastic, as indices into the response; the coldest of them is the core. */
  readonly plastic: readonly number[]
  /** Its surfaces, the last one facing the source. */
  readonly surfaces: readonly number[]
  /** Temperatures that drive it. */
  drive(outside: number): Drive
}

/** Sets a part under films, with given starting temperatures; `like` is the same part with another heat capacity, where it is known. */
export function heated(
  part: Part,
  { conductivity, density, specificHeat }: Properties,
  film: number,
  backFilm: number,
  start: number,
  room: number,
  sand: number,
  like: Heated | null = null,
): Heated {
  const layer = (thickness: number): Layer => ({ thickness, conductivity, heatCapacity: density * specificHeat })
  const round = part.shape !== "sheet"
  const radius = (part.outsideDiameter ?? 0) / 2
  const bore = part.shape === "tube" ? radius - (part.thickness as number) : 0
  const filled = part.shape === "tube" && part.filling === "dry-sand"
  const length = heatPath(part)
  const body: Body = {
    shape: round ? "cylinder" : "plane",
    start: round && !filled ? bore : 0,
    layers: filled
      ? [
          { thickness: bore, conductivity: drySand.conductivity, heatCapacity: drySand.density * drySand.specificHeat },
          layer(radius - bore),
        ]
      : [layer(round ? radius - bore : length)],
    inside: round || part.faces === 2 ? 0 : backFilm,
    outside: film,
  }
  const points = filled ? [bore, (bore + radius) / 2, radius, 0] : round ? [bore, radius] : [0, length]
  return {
    response: like && !filled ? like.response.withHeatCapacity(density * specificHeat) : conduct(body, points),
    plastic: filled ? [0, 1, 2] : [0, 1],
    surfaces: filled ? [0, 2] : part.shape === "rod" || (!round && part.faces === 2) ? [1] : [0, 1],
    drive: (outside) => ({ outside, inside: room, initial: filled ? [sand, start] : [start] }),
  }
}

/** When the core arrives, and what the surfaces met on the way. */
export interface Arrival {
  readonly time: number
  readonly hottest: number
  readonly hottestTime: number
  readonly hottestSpot: number
  readonly coreSpot: number
  readonly iterations: number
  readonly residual: number
}

const extreme = (values: readonly number[], spots: readonly number[], pick: 1 | -1): number =>
  spots.reduce((best, s) => (pick * (values[s] as number) > pick * (values[best] as number) ? s : best), spots[0] as number)

/** Warmest that the coldest spot ever gets. */
export function peakCore(part: Heated, outside: number, swings: boolean): number {
  const drive = part.drive(outside)
  const steady = Math.min(...part.plastic.map((p) => part.response.steady(p, drive)))
  if (!swings) return steady
  return Math.max(steady, ...scanTimes(part.response, drive).map((t) => Math.min(...spotValues(part, t, drive))))
}

/** A grid of times from the first stir of the core to long after the slowest mode, for temperatures that pass a peak. */
function scanTimes(response: Response, drive: Drive): number[] {
  const from = Math.log(response.crossing * EARLIEST)
  const to = Math.max(settledLog(response, drive), Math.log(response.crossing * 20))
  return Array.from({ length: SCANS }, (_, i) => Math.exp(from + ((to - from) * i) / (SCANS - 1)))
}
const SCANS = 96
/** Share of the crossing time before which a core stays as it was. */
const EARLIEST = 2e-4
const spotValues = (part: Heated, time: number, drive: Drive): number[] => {
  const all = part.response.at(time, drive)
  return part.plastic.map((p) => all[p] as number)
}

const LOST = "time at which a temperature is met"

/**
 * Root of a function of log time that changes sign once between `low` and `high`, or null where it does not. The bracket is
 * walked to from the body's own time scale, since the series is dear at times far shorter than the answer.
 */
export function rootInTime(f: (log: number) => number, low: number, high: number, scale: number): Root | null {
  const step = Math.log(8)
  let here = Math.min(high, Math.max(low, Math.log(scale) - step))
  let value = f(here)
  const late = f(high)
  if (value === 0) return { x: here, residual: 0, iterations: 0 }
  const up = value > 0 === late > 0 ? -1 : 1
  for (;;) {
    const next = Math.min(high, Math.max(low, here + up * step))
    if (next === here) return null
    const there = f(next)
    if (there > 0 !== value > 0 || there === 0) return theRoot(f, Math.min(here, next), Math.max(here, next), 1e-15, LOST)
    here = next
    value = there
  }
}

/** First time (log) at which f, below 0 at the start, gets to 0. */
function firstPassing(response: Response, drive: Drive, f: (log: number) => number, low: number, swings: boolean): Root | null {
  const high = settledLog(response, drive)
  if (!swings) return f(high) >= 0 ? rootInTime(f, low, high, response.crossing) : null
  // preheated sand: temperatures pass a peak, so the first passing is looked for along a grid
  if (f(low) >= 0) return { x: low, residual: 0, iterations: 0 }
  const logs = [low, ...scanTimes(response, drive).map(Math.log)].filter((l) => l >= low)
  for (let i = 1; i < logs.length; i++)
    if (f(logs[i] as number) >= 0) return theRoot(f, logs[i - 1] as number, logs[i] as number, 1e-15, LOST)
  return null
}

/** Log of a time so long after the slowest mode that nothing changes any more. */
function settledLog(response: Response, drive: Drive): number {
  const slowest = response.series(response.crossing * 10, 0, drive).rates[0] as number
  return Math.log(Math.max(response.crossing, 40 / slowest))
}

/** First time at which the coldest spot of the plastic is at `target`, or null where it never is. */
export function coreTime(
  part: Heated,
  outside: number,
  target: number,
  swings: boolean,
): { readonly time: number; readonly iterations: number; readonly residual: number } | null {
  const drive = part.drive(outside)
  const { response } = part
  const core = (log: number) => Math.min(...spotValues(part, Math.exp(log), drive)) - target
  const found = firstPassing(response, drive, core, Math.log(response.crossing * EARLIEST), swings)
  return found && { time: Math.exp(found.x), iterations: found.iterations, residual: Math.abs(found.residual) }
}

const surfaceAt = (part: Heated, drive: Drive, time: number) => {
  const values = part.response.at(time, drive)
  const spot = extreme(values, part.surfaces, 1)
  return { spot, value: values[spot] as number }
}

/** First time at which the hottest surface passes `limit`, and where; null where it never does. */
export function surfaceTime(part: Heated, outside: number, limit: number, swings: boolean): { time: number; spot: number } | null {
  const drive = part.drive(outside)
  const over = (log: number) => surfaceAt(part, drive, Math.exp(log)).value - limit
  const passed = firstPassing(part.response, drive, over, Math.log(part.response.crossing * 1e-9), swings)
  if (!passed) return null
  const time = Math.exp(passed.x)
  return { time, spot: surfaceAt(part, drive, time).spot }
}

/**
 * When the coldest spot of the plastic is at `target`, and what the surfaces meet on the way; null where it never is.
 *
 * @param swings - preheated filling: temperatures may pass a peak, so time is searched rather than bracketed
 */
export function arrival(part: Heated, outside: number, target: number, swings: boolean): Arrival | null {
  const found = coreTime(part, outside, target, swings)
  if (!found) return null
  const drive = part.drive(outside)
  const { response } = part
  const { time } = found
  const surface = (log: number) => surfaceAt(part, drive, Math.exp(log)).value
  let hottestTime = time
  if (swings) {
    const times = [...scanTimes(response, drive).filter((t) => t < time), time]
    let best = 0
    times.forEach((t, i) => {
      if (surface(Math.log(t)) > surface(Math.log(times[best] as number))) best = i
    })
    const [from, to] = [times[Math.max(0, best - 1)] as number, times[Math.min(times.length - 1, best + 1)] as number]
    const top = Math.exp(goldenMinimum((log) => -surface(log), Math.log(from), Math.log(to), 1e-9))
    hottestTime = surface(Math.log(top)) > surface(Math.log(times[best] as number)) ? top : (times[best] as number)
  }
  const hottest = surfaceAt(part, drive, hottestTime)
  return {
    time,
    hottest: hottest.value,
    hottestTime,
    hottestSpot: hottest.spot,
    coreSpot: extreme(response.at(time, drive), part.plastic, -1),
    iterations: found.iterations,
    residual: found.residual,
  }
}
