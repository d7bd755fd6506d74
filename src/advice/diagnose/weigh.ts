import { goldenMinimum } from "../../numeric/index.js"
import type { RigDocument } from "../../rig/document/document.js"
import type { SiOf } from "../../solver/index.js"
import { type Built, type Fault, type FaultName, faults } from "./faults.js"
import { type MeasureName, measures, type Showing, showing, type WarmPart } from "./measures.js"

type Si = SiOf<RigDocument>

/** A measure taken, SI, with its uncertainty. */
export interface Reading {
  readonly name: MeasureName
  readonly value: number
  readonly uncertainty: number
}

/** Readings of a built rig. */
export interface Readings {
  readonly list: readonly Reading[]
  readonly warmest: WarmPart | null
  /** How far parts stray from their datasheets, as a fraction. */
  readonly spread: number
}

/** An explanation: one fault or two, their sizes and how well they fit. */
export interface Explanation {
  readonly faults: readonly FaultName[]
  readonly sizes: readonly number[]
  /** Σ((measured − predicted)/uncertainty)². */
  readonly misfit: number
  /** Misfit plus what the sizes and the number of faults cost in plausibility (−2 ln). */
  readonly score: number
  readonly shows: Showing
}

const HOPELESS = 1e6

/** What a rig as planned, or with faults of some sizes, would show. */
export function built(rig: Si, names: readonly FaultName[], sizes: readonly number[]): Built {
  return names.reduce((b, name, i) => faults[name].apply(b, sizes[i] as number), { rig, shortfall: 0 } as Built)
}

/** Uncertainty of a reading and of the plan it is held against, together. */
export function uncertaintyOf(reading: Reading, spread: number): number {
  return Math.hypot(reading.uncertainty, measures[reading.name].strays ? spread * reading.value : 0)
}

function misfitOf(shows: Showing, readings: Readings): number {
  let sum = 0
  for (const reading of readings.list) sum += ((reading.value - shows.values[reading.name]) / uncertaintyOf(reading, readings.spread)) ** 2
  if (readings.warmest) {
    // a hand tells the warmest part only where it is clearly so: a soft penalty, never more than a clear miss
    const most = Math.max(...Object.values(shows.heat))
    sum += Math.min(9, 2 * Math.log(most / Math.max(shows.heat[readings.warmest], most * 1e-6)))
  }
  return sum
}

function explanation(rig: Si, readings: Readings, names: readonly FaultName[], sizes: readonly number[]): Explanation | null {
  const shows = showing(built(rig, names, sizes))
  if (!shows) return null
  const misfit = misfitOf(shows, readings)
  const cost = names.reduce((sum, name, i) => sum + ((sizes[i] as number) / faults[name].usual) ** 2 - 2 * Math.log(faults[name].prior), 0)
  // each fault has to earn its place: two at once are met about one time in twenty (common practice, no source)
  return { faults: names, sizes, misfit, score: misfit + cost + 6 * Math.max(0, names.length - 1), shows }
}

/** Best size of one fault, the others held. */
function bestSize(rig: Si, readings: Readings, names: readonly FaultName[], sizes: readonly number[], which: number, points = 14): number {
  const { range } = faults[names[which] as FaultName] as Fault
  const score = (size: number) =>
    explanation(
      rig,
      readings,
      names,
      sizes.map((s, i) => (i === which ? size : s)),
    )?.score ?? HOPELESS
  const [low, high] = range
  // finer near nothing, where most faults are
  const at = (u: number) => (low < 0 ? low + (high - low) * u : high * u ** 2)
  let [best, least] = [0, score(0)]
  let index = -1
  for (let i = 0; i <= points; i++) {
    const s = score(at(i / points))
    if (s < least) {
      least = s
      best = at(i / points)
      index = i
    }
  }
  if (index < 0) return 0
  const refined = goldenMinimum(score, at(Math.max(0, (index - 1) / points)), at(Math.min(1, (index + 1) / points)), 1e-5)
  return score(refined) <= least ? refined : best
}

/** Every single fault that applies, each at its best size, most plausible first. */
export function singleFaults(rig: Si, readings: Readings): Explanation[] {
  return (Object.keys(faults) as FaultName[])
    .filter((name) => faults[name].applies(rig))
    .flatMap((name) => explanation(rig, readings, [name], [bestSize(rig, readings, [name], [0], 0)]) ?? [])
    .sort((a, b) => a.score - b.score)
}

/** Pairs of faults, each size fitted in turn, most plausible first. */
export function faultPairs(rig: Si, readings: Readings, singles: readonly Explanation[]): Explanation[] {
  const names = singles.map((s) => s.faults[0] as FaultName)
  const sizeOf = new Map(singles.map((s) => [s.faults[0] as FaultName, s.sizes[0] as number]))
  const found: Explanation[] = []
  names.forEach((first, i) => {
    for (const second of names.slice(i + 1)) {
      const pair = [first, second] as const
      let sizes: number[] = [sizeOf.get(first) as number, 0]
      let one = explanation(rig, readings, pair, sizes)
      for (let round = 0; round < 20; round++) {
        const before = one?.score ?? HOPELESS
        for (const which of [1, 0]) {
          const size = bestSize(rig, readings, pair, sizes, which, 10)
          sizes = sizes.map((s, k) => (k === which ? size : s))
        }
        one = explanation(rig, readings, pair, sizes)
        if (before - (one?.score ?? HOPELESS) < 0.01) break
      }
      if (one && sizes.every((s) => s !== 0)) found.push(one)
    }
  })
  return found.sort((a, b) => a.score - b.score)
}

/** The rig as planned, held against the readings. */
export function asPlanned(rig: Si, readings: Readings): Explanation | null {
  return explanation(rig, readings, [], [])
}

/** The measure not taken yet that would best tell two explanations apart for the trouble it takes. */
export function tellingMeasure(
  a: Showing,
  b: Showing,
  taken: readonly MeasureName[],
  spread: number,
): { readonly name: MeasureName; readonly apart: number } | null {
  let best: { name: MeasureName; apart: number; worth: number } | null = null
  for (const name of Object.keys(measures) as MeasureName[]) {
    if (taken.includes(name)) continue
    const { usual, effort } = measures[name]
    const [x, y] = [a.values[name], b.values[name]]
    const apart = Math.abs(x - y) / Math.hypot(usual, measures[name].strays ? spread * Math.max(Math.abs(x), Math.abs(y)) : 0)
    // beyond four times its uncertainty a measure tells no more: the cheaper one wins
    const worth = Math.min(apart, 4) / effort
    if (!best || worth > best.worth) best = { name, apart, worth }
  }
  return best && best.apart > 0.5 ? { name: best.name, apart: best.apart } : null
}
