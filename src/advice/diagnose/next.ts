// Which reading to take next: what it is expected to tell between the explanations, for the trouble of taking it.
import type { Built } from "./built.js"
import { noiseAbout } from "./chance.js"
import { meters, type NumberType } from "./meters.js"
import { type ReadingSi, type Showing, showing, taken } from "./predict.js"
import { builtWith, type Explanation, type Task } from "./weigh.js"

/** A reading not taken yet, and what it is worth. */
export interface Worth {
  readonly reading: ReadingSi
  /** Expected information, bits: 1 settles an even choice between two. */
  readonly bits: number
  readonly minutes: number
  /** What each explanation says it will show. */
  readonly shows: readonly number[]
}

/** Every reading of a number that a rig allows. */
export function possible(built: Built): readonly ReadingSi[] {
  const found: ReadingSi[] = []
  const own = { uncertainty: null } as const
  const { power, motions } = built
  const runs = power?.buses.filter((bus) => bus.run !== null).map((bus) => bus.name) ?? []
  for (const { si, model } of motions) {
    const motion = si.name
    for (const way of ["out", "back"] as const) {
      found.push({ type: "time", motion, way, value: 0, ...own })
      for (const { name } of si.mechanisms) found.push({ type: "force", motion, way, mechanism: name, place: 0.5, value: 0, ...own })
    }
    const shows = model.parts[0]?.mechanism.shows === "length" ? "reach" : "swing"
    found.push({ type: shows, motion, value: 0, ...own })
    const at = { motion, way: "out", during: "moving", value: 0, ...own } as const
    found.push({ type: "current", at: null, ...at })
    for (const source of power?.sources ?? []) found.push({ type: "voltage", at: source.name, side: "output", ...at })
    for (const bus of power?.buses ?? []) {
      found.push({ type: "voltage", at: bus.name, side: "output", ...at })
      if (bus.converter) found.push({ type: "voltage", at: bus.name, side: "input", ...at })
    }
    for (const along of runs) found.push({ type: "voltage-drop", along, ...at })
  }
  const rest = { motion: null, way: "out", during: "rest", value: 0, ...own } as const
  for (const { name } of [...(power?.sources ?? []), ...(power?.buses ?? [])])
    found.push({ type: "voltage", at: name, side: "output", ...rest })
  for (const source of power?.sources ?? [])
    if (source.type === "cells")
      found.push(
        { type: "cell-resistance", source: source.name, value: 0, ...own },
        { type: "cell-temperature", source: source.name, value: 0, uncertainty: 2 },
      )
  return found
}

/** What a reading is of, whatever its value. */
const keyOf = (reading: ReadingSi, first: string) => {
  const { value: _, uncertainty: __, ...rest } = reading as ReadingSi & { value?: unknown; uncertainty?: unknown }
  const motion = "motion" in reading ? (reading.motion ?? first) : null
  const still = "during" in reading && reading.during === "rest"
  return JSON.stringify(Object.entries({ ...rest, motion: still ? null : motion, ...(still ? { way: "out" } : {}) }).sort())
}

/** Explanations that are told apart, and the chance below which none counts. */
const TOLD = 6
const SETUP = 4

/** The reading that tells most for its minutes; null where none tells enough to be worth taking. */
export function nextReading(task: Task, explanations: readonly Explanation[]): Worth | null {
  const told = explanations.slice(0, TOLD)
  const [best] = told
  if (!best || told.length < 2) return null
  const first = task.planned.motions[0]?.si.name ?? ""
  const done = new Set(task.taken.list.map((one) => keyOf(one, first)))
  const list = possible(task.planned).filter((one) => !done.has(keyOf(one, first)))
  if (!list.length) return null
  const shown = told.map((one) => showing(one.built, list, task.asked))
  const valued = withValues(list, shown[0] as Showing)
  const { deviations } = noiseAbout(best.built, taken(valued, task.planned), task.strayings, task.asked)
  const weights = told.map((one) => Math.exp((best.score - one.score) / 2))
  const sum = weights.reduce((a, b) => a + b, 0)
  const spreads = told.map((one) => spreadOf(task, one, list))
  let found: Worth | null = null
  let most = 0
  list.forEach((reading, i) => {
    const shows = shown.map((one) => one.values[i] as number)
    const sigmas = spreads.map((spread) => Math.hypot(deviations[i] as number, spread[i] as number))
    const bits = information(
      weights.map((w) => w / sum),
      shows,
      sigmas,
    )
    const { minutes } = meters[reading.type as NumberType]
    if (bits / (minutes + SETUP) > most) {
      most = bits / (minutes + SETUP)
      found = { reading: valued[i] as ReadingSi, bits, minutes, shows }
    }
  })
  return found && (found as Worth).bits > 0.05 ? found : null
}

const withValues = (list: readonly ReadingSi[], { values }: Showing): readonly ReadingSi[] =>
  list.map((one, i) => {
    const value = values[i] as number
    return "value" in one ? ({ ...one, value: Number.isFinite(value) ? value : 0 } as ReadingSi) : one
  })

/** How far a reading still strays with the sizes of an explanation as they are known. */
function spreadOf(task: Task, one: Explanation, list: readonly ReadingSi[]): Float64Array {
  const base = showing(one.built, list, task.asked).values
  const spread = new Float64Array(list.length)
  one.faults.forEach((fault, k) => {
    const width = one.widths[k] as number
    const sizes = one.sizes.map((s, i) => (i === k ? Math.min(fault.range[1], s + width) : s))
    const built = builtWith(task, one.faults, sizes)
    if (!built) return
    const moved = showing(built, list, task.asked).values
    moved.forEach((v, i) => {
      const off = v - (base[i] as number)
      if (Number.isFinite(off)) spread[i] = Math.hypot(spread[i] as number, off)
    })
  })
  return spread
}

/** Entropy, bits. */
const entropy = (shares: readonly number[]) => shares.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0)

/** What a reading is expected to tell between explanations: whether it can be read at all, and then its value. */
function information(weights: readonly number[], shows: readonly number[], sigmas: readonly number[]): number {
  const read = weights.filter((_, i) => Number.isFinite(shows[i]))
  const can = read.reduce((a, b) => a + b, 0)
  const whether = entropy([can, 1 - can])
  if (!(can > 0)) return whether
  const [means, widths] = [shows, sigmas].map((list) => list.filter((_, i) => Number.isFinite(shows[i]))) as [number[], number[]]
  const low = Math.min(...means.map((m, i) => m - 5 * (widths[i] as number)))
  const high = Math.max(...means.map((m, i) => m + 5 * (widths[i] as number)))
  // fine enough for the narrowest of them, within reason
  const points = Math.min(600, Math.max(60, Math.ceil((3 * (high - low)) / Math.min(...widths))))
  const step = (high - low) / points
  let told = 0
  for (let k = 0; k <= points; k++) {
    const x = low + k * step
    const each = means.map((m, i) => {
      const s = widths[i] as number
      return (((read[i] as number) / can) * Math.exp(-((x - m) ** 2) / (2 * s * s))) / (s * Math.sqrt(2 * Math.PI))
    })
    const all = each.reduce((a, b) => a + b, 0)
    if (all > 0)
      each.forEach((p, i) => {
        if (p > 0) told += step * p * Math.log2(p / all / ((read[i] as number) / can))
      })
  }
  return whether + can * Math.max(0, told)
}
