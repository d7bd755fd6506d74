// The kernel: SI numbers in, values or a refusal out.
import { type Root, theRoot } from "../../numeric/index.js"
import { isNoSolution, type NoSolution, type SiOf } from "../../solver/index.js"
import { conditionOf } from "../condition.js"
import { frameMaterials } from "../data-materials.js"
import { sectionOf } from "../section.js"
import type { NaturalFrequency, NaturalFrequencyInput, NaturalFrequencyRefusal } from "./types.js"

/** sin x·cosh x − cos x·sinh x over cosh x; by its power series where the terms would cancel. */
function tipTerm(x: number): number {
  if (x > 0.5) return Math.sin(x) - Math.cos(x) * Math.tanh(x)
  const fourth = x ** 4
  return (((2 / 3) * x ** 3) / Math.cosh(x)) * (1 - (fourth / 210) * (1 - (fourth / 1980) * (1 - fourth / 8190)))
}

/**
 * Root `mode` (1, 2, 3) of 1 + cos x·cosh x − μ·x·(sin x·cosh x − cos x·sinh x) = 0, the frequency equation of a clamped
 * bar with a tip mass of μ times its own.
 */
export function cantileverRoot(massRatio: number, mode: 1 | 2 | 3): Root {
  const f = (x: number) => 1 / Math.cosh(x) + Math.cos(x) - massRatio * x * tipTerm(x)
  // between the roots of the clamped-pinned bar (heavy tip) and those of the clamped-free one (bare tip)
  const ends = { 1: [1e-6, 1.8752], 2: [3.9266, 4.6942], 3: [7.0685, 7.8549] } as const
  const [low, high] = ends[mode]
  // f changes sign there for every mass ratio from 0 to 1e15
  return theRoot(f, low, high, 1e-16, "mode of a cantilever")
}

/** Mass per length with everything carried, at the light (0) or heavy (1) end of the density. */
export function massPerLengthOf(si: SiOf<NaturalFrequencyInput>, end: 0 | 1 = 1): number {
  const own = si.material === null ? 0 : frameMaterials[si.material].density[end] * (sectionOf(si.section).weightArea ?? 0)
  return (si.massPerLength ?? own) + si.addedMass
}

/** Magnification of a steady shake at r times the natural frequency. */
export function magnification(ratio: number, damping: number): number {
  return 1 / Math.hypot(1 - ratio ** 2, 2 * damping * ratio)
}

export function solve(si: SiOf<NaturalFrequencyInput>): NaturalFrequency | NoSolution<NaturalFrequencyRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const { secondMoment } = sectionOf(si.section)
  const massPerLength = massPerLengthOf(si)
  const mass = massPerLength * si.length
  const massRatio = si.tipMass / mass
  const [first, second, third] = [cantileverRoot(massRatio, 1), cantileverRoot(massRatio, 2), cantileverRoot(massRatio, 3)]
  const minMassPerLength = massPerLengthOf(si, 0)
  const light = cantileverRoot(si.tipMass / (minMassPerLength * si.length), 1)
  const pace = (modulus: number, perLength: number) => Math.sqrt((modulus * secondMoment) / perLength) / (2 * Math.PI * si.length ** 2)
  const low = pace(condition.modulus, massPerLength)
  const [frequency, maxFrequency] = [first.x ** 2 * low, light.x ** 2 * pace(condition.maxModulus, minMassPerLength)]
  // the harmonic may meet any frequency in the range: take the one nearest to it
  const shaken = (harmonic: number) => {
    const shake = harmonic * si.stepRate
    return magnification(shake / Math.min(Math.max(shake, frequency), maxFrequency), si.damping)
  }
  const [one, two] = [shaken(1), shaken(2)]
  return {
    massPerLength,
    minMassPerLength,
    massRatio,
    firstRoot: first.x,
    firstRootLight: light.x,
    secondRoot: second.x,
    thirdRoot: third.x,
    frequency,
    maxFrequency,
    secondFrequency: second.x ** 2 * low,
    thirdFrequency: third.x ** 2 * low,
    estimate: Math.sqrt((3 * condition.modulus * secondMoment) / (si.length ** 3 * (si.tipMass + (33 / 140) * mass))) / (2 * Math.PI),
    stepRatio: frequency / si.stepRate,
    amplification: Math.max(one, two),
    harmonic: two > one ? 2 : 1,
    iterations: first.iterations + second.iterations + third.iterations + light.iterations,
    residual: first.residual,
  }
}
