// Every verb on every solver there is, on inputs drawn at random: what a study says must hold whatever the solver.
import "../helpers/seed.js"
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type AnyFields, type Either, isNoSolution } from "../../src/solver/index.js"
import { numbersOf } from "../../src/study/asked.js"
import { fit as fitTo, optimize, sensitivity, uncertainty } from "../../src/study/index.js"
import type { AnySolver } from "../../src/study/place.js"
import { isNumberPlace, type NumberPlace, placesIn } from "../../src/study/places.js"
import { inputs } from "../helpers/arbitrary.js"
import { solvers } from "../helpers/solvers.js"

/** A value a little up and down, within its field's limits. */
const beside = ({ value, low, high }: NumberPlace): readonly [number, number] => {
  const at = value as number
  const off = Math.abs(at) * 0.02
  const inside = (v: number) => Math.min(high - Math.abs(high) * 1e-9, Math.max(low + Math.abs(low) * 1e-9, v))
  return [Math.min(at, inside(at - off)), Math.max(at, inside(at + off))]
}

describe.each(solvers.map(({ id, solver }) => [id, solver] as const))("%s", (_, solver) => {
  const any = solver as unknown as AnySolver
  const drawn = fc.sample(inputs(solver.input as unknown as AnyFields, solver.example, solver.either as unknown as readonly Either[]), 4)
  const base = drawn.find((input) => solver.attempt(input).ok) ?? solver.example
  const si = solver.read(base)
  const numbers = placesIn(any, si).filter(isNumberPlace)
  const varied = numbers
    .filter((place) => place.value !== null && place.value !== 0 && !place.whole && beside(place)[0] < beside(place)[1])
    .slice(0, 2)
  const asked = numbersOf(any)
    .slice(0, 2)
    .map(({ path }) => path)
  const at = (path: string, out: object) =>
    path.split(".").reduce<unknown>((part, key) => (part as Record<string, unknown> | null)?.[key], out)
  const spreads = Object.fromEntries(
    varied.map((place) => {
      const [low, high] = beside(place)
      return [place.path, { type: "uniform", low, high }]
    }),
  ) as never

  // a table asked by words alone: the verbs that vary numbers say that there is none
  if (varied.length === 0) {
    it("has no number to vary, and is told so", async () => {
      expect(numbers.filter(({ value }) => value !== null && value !== 0)).toEqual([])
      const moved = await sensitivity(solver, base)
      expect(moved.outputs.length).toBeGreaterThan(0)
      for (const { inputs: influences, sentence } of moved.outputs) {
        expect(influences).toEqual([])
        expect(sentence).toContain("there is no number among the inputs to vary")
      }
      const none = { issues: [{ path: ["spreads"] }] }
      await expect(uncertainty(solver, base, {})).rejects.toMatchObject(none)
    })
    return
  }

  it("answers sensitivity and uncertainty with what hangs together", async () => {
    expect(asked).not.toEqual([])
    const moved = await sensitivity(solver, base, { outputs: asked, vary: varied.map(({ path }) => path), samples: 8 })
    for (const { inputs: influences, value, path } of moved.outputs) {
      const own = solver.si(si)
      const here = isNoSolution(own) ? null : (at(path, own) ?? null)
      expect(value).toBe(here)
      expect(influences.map((one) => one.path).sort()).toEqual(varied.map((one) => one.path).sort())
      for (const { slope, elasticity, first, total, sentence } of influences) {
        for (const number of [slope, elasticity, ...[first, total].flatMap((one) => (one ? Object.values(one) : []))])
          expect(number === null || Number.isFinite(number)).toBe(true)
        expect(sentence).not.toMatch(/NaN|Infinity|undefined|\{/)
      }
    }
    const told = await uncertainty(solver, base, spreads, { outputs: asked, samples: 16, within: 0, worst: varied.length < 2 })
    for (const { answered, percentiles, worst, sentence } of told.outputs) {
      expect(answered).toBeLessThanOrEqual(told.samples)
      const values = percentiles.map((p) => p.value)
      expect(values).toEqual([...values].sort((a, b) => a - b))
      if (worst) expect(worst.low.value).toBeLessThanOrEqual(worst.high.value)
      expect(sentence).not.toMatch(/NaN|Infinity|undefined|\{/)
    }
    expect(told.refused.reduce((sum, { count }) => sum + count, 0)).toBe(Math.round(told.unanswered.share * told.samples))
  })

  it("answers optimize as brute force does, and fit no worse than where it began", async () => {
    const [place] = varied as [NumberPlace]
    const [goal] = asked as [string]
    const [low, high] = beside(place)
    const values = [low, (low + high) / 2, high]
    const best = await optimize(solver, base, { vary: { [place.path]: values }, minimize: [goal] })
    const tried = values.map((value) => solver.attempt(putIn(si, place.path, value)))
    const goals = tried.flatMap((one) => (one.ok && typeof at(goal, one.value) === "number" ? [at(goal, one.value) as number] : []))
    expect(best.best?.outputs[goal] ?? null).toBe(goals.length > 0 ? Math.min(...goals) : null)
    const own = solver.si(si)
    const read = isNoSolution(own) ? null : at(goal, own)
    if (typeof read !== "number") return
    const answer = await fitTo(solver, base, {
      vary: { [place.path]: { from: low, to: high } },
      readings: [{ of: goal, value: read }],
      starts: 0,
    })
    expect(Math.abs(answer.readings[0]?.residual as number)).toBeLessThanOrEqual(1e-9 * Math.abs(read))
  })
})

function putIn<T>(si: T, path: string, value: number): T {
  const [key, ...rest] = path.split(".") as [string, ...string[]]
  const own = (si as Record<string, unknown>)[key]
  const put = rest.length > 0 ? putIn(own, rest.join("."), value) : value
  if (Array.isArray(si)) return si.map((one, i) => (String(i) === key ? put : one)) as T
  return { ...si, [key]: put }
}
