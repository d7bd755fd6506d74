// The kernel: SI numbers in, values or a refusal out.
import { type Root, theRoot } from "../../numeric/index.js"
import { isNoSolution, type NoSolution, type SiOf } from "../../solver/index.js"
import { conditionOf } from "../condition.js"
import { frameMaterials } from "../data-materials.js"
import { sectionOf } from "../section.js"
import { type Bar, barRoot, shapeOf } from "./modes.js"
import type { NaturalFrequency, NaturalFrequencyInput, NaturalFrequencyRefusal, NaturalFrequencyTrace } from "./types.js"

type Si = SiOf<NaturalFrequencyInput>

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
export function massPerLengthOf(si: Si, end: 0 | 1 = 1): number {
  const own = si.material === null ? 0 : frameMaterials[si.material].density[end] * (sectionOf(si.section).weightArea ?? 0)
  return (si.massPerLength ?? own) + si.addedMass
}

/** Magnification of a steady shake at r times the natural frequency. */
export function magnification(ratio: number, damping: number): number {
  return 1 / Math.hypot(1 - ratio ** 2, 2 * damping * ratio)
}

/** How far the root gives for a newton metre and a newton, 1/(N·m) and m/N; 0 where rigid. */
export function rootGives({ rootTurningStiffness, rootStiffness, actuator }: Si): { readonly turning: number; readonly sinking: number } {
  const of = (stiffness: number | null) => (stiffness === null ? 0 : 1 / stiffness)
  return {
    // one after the other: the moment that turns the bracket also stretches the actuator
    turning: of(rootTurningStiffness) + (actuator === null ? 0 : 1 / (actuator.stiffness * actuator.leverArm ** 2)),
    sinking: of(rootStiffness),
  }
}

/** The member at one modulus and mass per length, in its own units. */
export function barOf(si: Si, modulus: number, perLength: number): Bar {
  const bending = modulus * sectionOf(si.section).secondMoment
  const { turning, sinking } = rootGives(si)
  const mass = perLength * si.length
  return {
    turning: (turning * bending) / si.length,
    sinking: (sinking * bending) / si.length ** 3,
    lumps: [...si.masses.map((m) => ({ at: m.position / si.length, mass: m.mass / mass })), { at: 1, mass: si.tipMass / mass }],
  }
}

/** Whether springs or masses along it ask for more than the equation of the clamped bar with a tip mass. */
export const isGeneral = ({ rootTurningStiffness, rootStiffness, actuator, masses }: Si): boolean =>
  rootTurningStiffness !== null || rootStiffness !== null || actuator !== null || masses.length > 0

/** First frequency as a spring and a lump, Hz: every mass counts by the shape that a force at the tip bends and tilts the member to. */
function springAndLump(si: Si, bending: number, perLength: number, { turning, sinking }: Bar): number {
  const [p0, p1, p2, p3] = [sinking, turning, 1 / 2, -1 / 6] as const
  const give = 1 / 3 + turning + sinking
  const share = (x: number) => (p0 + p1 * x + p2 * x ** 2 + p3 * x ** 3) / give
  // the square of that shape over the length
  const own =
    (p0 ** 2 +
      p0 * p1 +
      (p1 ** 2 + 2 * p0 * p2) / 3 +
      (p0 * p3 + p1 * p2) / 2 +
      (p2 ** 2 + 2 * p1 * p3) / 5 +
      (p2 * p3) / 3 +
      p3 ** 2 / 7) /
    give ** 2
  const lumped = si.masses.reduce((sum, m) => sum + m.mass * share(m.position / si.length) ** 2, 0)
  const mass = si.tipMass + lumped + own * perLength * si.length
  return Math.sqrt(bending / (si.length ** 3 * give * mass)) / (2 * Math.PI)
}

export function solve(si: Si, trace?: Partial<NaturalFrequencyTrace>): NaturalFrequency | NoSolution<NaturalFrequencyRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const { secondMoment } = sectionOf(si.section)
  const massPerLength = massPerLengthOf(si)
  const minMassPerLength = massPerLengthOf(si, 0)
  const massRatio = si.tipMass / (massPerLength * si.length)
  const [soft, stiff] = [barOf(si, condition.modulus, massPerLength), barOf(si, condition.maxModulus, minMassPerLength)]
  const general = isGeneral(si)
  const root = (bar: Bar, mode: 1 | 2 | 3, tip: number): Root => (general ? barRoot(bar, mode) : cantileverRoot(tip, mode))
  const [first, second, third] = [root(soft, 1, massRatio), root(soft, 2, massRatio), root(soft, 3, massRatio)]
  const light = root(stiff, 1, si.tipMass / (minMassPerLength * si.length))
  if (trace && general) {
    const shapes = {
      x_1: shapeOf(soft, first.x).stretches,
      x_2: shapeOf(soft, second.x).stretches,
      x_3: shapeOf(soft, third.x).stretches,
      x_u: shapeOf(stiff, light.x).stretches,
    }
    Object.assign(trace, { shapes } satisfies NaturalFrequencyTrace)
  }
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
    massPerLength: { low: minMassPerLength, high: massPerLength },
    massRatio,
    rootTurning: soft.turning,
    rootSinking: soft.sinking,
    firstRoot: { low: light.x, high: first.x },
    secondRoot: second.x,
    thirdRoot: third.x,
    frequency: { low: frequency, high: maxFrequency },
    secondFrequency: second.x ** 2 * low,
    thirdFrequency: third.x ** 2 * low,
    estimate: springAndLump(si, condition.modulus * secondMoment, massPerLength, soft),
    stepRatio: frequency / si.stepRate,
    amplification: Math.max(one, two),
    harmonic: two > one ? 2 : 1,
    iterations: first.iterations + second.iterations + third.iterations + light.iterations,
    residual: first.residual,
  }
}
