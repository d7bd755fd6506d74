import { type FaultName, faults } from "../../src/advice/diagnose/faults.js"
import { type MeasureName, measures, showing } from "../../src/advice/diagnose/measures.js"
import { built } from "../../src/advice/diagnose/weigh.js"
import type { RigDocument } from "../../src/rig/index.js"
import type { SiOf } from "../../src/solver/index.js"

/** A seeded generator (mulberry32) with normal deviates (Box–Muller). */
export function random(seed: number): { uniform: () => number; normal: () => number } {
  let state = seed >>> 0
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  return { uniform, normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()) }
}

/** How far parts stray from their datasheets in the synthetic builds, as the diagnosis assumes by default. */
export const SPREAD = 0.02

/** Readings of a rig with faults, each with the noise of an ordinary tool and of parts; null where it does not move. */
export function synthetic(
  rig: SiOf<RigDocument>,
  names: readonly FaultName[],
  sizes: readonly number[],
  taken: readonly MeasureName[],
  normal: () => number,
): { name: MeasureName; value: number; uncertainty: number }[] | null {
  const shows = showing(built(rig, names, sizes))
  if (!shows) return null
  return taken.map((name) => {
    const { usual, strays } = measures[name]
    return { name, uncertainty: usual, value: Math.max(0, shows.values[name] * (1 + (strays ? SPREAD * normal() : 0)) + usual * normal()) }
  })
}

/** A fault of noticeable size: half to twice its usual one, either way where it can go either way. */
export function noticeable(name: FaultName, uniform: () => number): number {
  const { usual, range } = faults[name]
  const size = usual * (0.5 + 1.5 * uniform())
  return range[0] < 0 && uniform() < 0.5 ? -size : size
}
