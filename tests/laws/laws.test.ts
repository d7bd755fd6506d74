import { Ajv2020 } from "ajv/dist/2020.js"
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import type { AnyField, AnyFields, AnyOutField, AnyOutFields } from "../../src/solver/index.js"
import { InputError, isNoSolution, NoSolutionError } from "../../src/solver/index.js"
import { workingOfSi } from "../../src/working/index.js"
import { inOtherUnits, inputs, leaves, replaced } from "../helpers/arbitrary.js"
import { crossedBands, scalarsOf } from "../helpers/bands.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"
import { bookkeeping } from "../helpers/spikes.js"

/** Runs per law; solvers whose one call takes long get fewer, so that the suite stays usable. */
const RUNS = 60
const slow: Readonly<Record<string, number>> = { "linkage.placeActuator": 20, "rig.perform": 10, "advice.diagnosis": 10 }

function frozen<T>(value: T): T {
  if (typeof value === "object" && value !== null) {
    for (const part of Object.values(value)) frozen(part)
    Object.freeze(value)
  }
  return value
}

function everyNumber(value: unknown, path = ""): { path: string; value: number }[] {
  if (typeof value === "number") return [{ path, value }]
  if (typeof value !== "object" || value === null) return []
  return Object.entries(value).flatMap(([key, part]) => everyNumber(part, `${path}.${key}`))
}

/** Checks that a result property is what its description says it is. */
function describedFault(field: AnyOutField | undefined, value: unknown, path: string): string | null {
  if (!field) return `${path} is not described`
  if (value === null) return null
  if (field.kind === "group") return describedFaults(field.fields, value as Record<string, unknown>, path)
  if (field.kind === "list")
    return Array.isArray(value)
      ? (value.map((v, i) => describedFault(field.of, v, `${path}[${i}]`)).find(Boolean) ?? null)
      : `${path} is no list`
  const type = field.kind === "flag" ? "boolean" : field.kind === "text" ? "string" : "number"
  return typeof value === type ? null : `${path} is a ${typeof value}, described as ${field.kind}`
}
function describedFaults(fields: AnyOutFields, value: Readonly<Record<string, unknown>>, path = "result"): string | null {
  return (
    [...new Set([...Object.keys(fields), ...Object.keys(value)])]
      .map((key) => (key in value ? describedFault(fields[key], value[key], `${path}.${key}`) : `${path}.${key} is missing`))
      .find(Boolean) ?? null
  )
}

/** Paths of numbers that lack a limit, or whose lower one only excludes zero. */
function unlimited(fields: AnyFields, path = ""): string[] {
  const within = (field: AnyField, at: string): string[] => {
    if (field.kind === "group") return unlimited(field.fields, `${at}.`)
    if (field.kind === "list") return within(field.of, `${at}[]`)
    if (field.kind === "variant") return Object.entries(field.of).flatMap(([type, member]) => unlimited(member.fields, `${at}.${type}.`))
    if (!("symbol" in field)) return []
    const { min, max, above, below } = field as Readonly<Record<"min" | "max" | "above" | "below", unknown>>
    return (min ?? above) === undefined || (max ?? below) === undefined || above === 0 ? [at] : []
  }
  return Object.entries(fields).flatMap(([key, field]) => within(field, path + key))
}

/** Below the smallest normal number digits are lost one by one. */
const SMALLEST_NORMAL = 2 ** -1022
const close = (a: number, b: number, floor: number) =>
  Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) + Math.max(floor, SMALLEST_NORMAL)

describe.each(solvers)("laws: $id", ({ id, solver }: { id: string; solver: AnySolver }) => {
  const fields = solver.input as unknown as AnyFields
  const example = solver.example as Record<string, unknown>
  // made when first used, so that a faulty definition fails its own laws only
  const arbitrary = fc.constant(null).chain(() => inputs(fields, example, solver.either))
  const runs = slow[id] ?? RUNS

  it("cannot be changed through its description", () => {
    const loose = (value: unknown, path: string): string[] =>
      typeof value !== "object" || value === null
        ? []
        : [...(Object.isFrozen(value) ? [] : [path]), ...Object.entries(value).flatMap(([key, part]) => loose(part, `${path}.${key}`))]
    const { input, either, output, example, formulae, sources } = solver
    expect(loose({ input, either, output, example, formulae, sources }, "").slice(1)).toEqual([])
  })

  it("answers its own example, and the same through every door", () => {
    const outcome = solver.attempt(example)
    if (!outcome.ok) throw outcome.error
    expect(solver(example)).toEqual(outcome.value)
    const { cautions: _, ...values } = outcome.value
    expect(solver.si(solver.read(example))).toEqual(values)
    expect(solver["~standard"].validate(example)).toEqual({ value: solver.read(example) })
  })

  it("is pure, finite or refused, frozen and JSON-clean, for random inputs", () => {
    let answered = 0
    let refusedInput = 0
    fc.assert(
      fc.property(arbitrary, (input) => {
        const first = solver.attempt(frozen(input))
        const second = solver.attempt(input)
        if (!first.ok) {
          expect(first.error instanceof InputError || first.error instanceof NoSolutionError, String(first.error)).toBe(true)
          if (first.error instanceof InputError) refusedInput++
          else {
            expect(first.error.message).not.toMatch(/NaN|Infinity|undefined/)
            for (const { path, value } of everyNumber(first.error.toJSON())) expect(Number.isFinite(value), `refusal${path}`).toBe(true)
          }
          expect(second.ok).toBe(false)
          return
        }
        answered++
        expect(second.ok && second.value).toEqual(first.value)
        for (const { path, value } of everyNumber(first.value)) {
          expect(Number.isFinite(value), `result${path} is ${value}`).toBe(true)
        }
        expect(JSON.parse(JSON.stringify(first.value))).toEqual(JSON.parse(JSON.stringify({ ...first.value })))
        expect(Object.isFrozen(first.value)).toBe(true)
        const { cautions, ...values } = first.value
        expect(describedFaults(solver.output as unknown as AnyOutFields, values)).toBeNull()
        expect(crossedBands(solver.output as unknown as AnyOutFields, values)).toEqual([])
        for (const c of cautions) expect(c.message && c.source && c.code).toBeTruthy()
      }),
      { numRuns: runs },
    )
    // a suite that only ever met refusals would prove nothing
    expect(answered, `${answered} of ${runs} random inputs answered, ${refusedInput} refused as input`).toBeGreaterThanOrEqual(runs / 5)
  })

  it("has both limits on every number, and none that merely keeps off zero: dividing by next to nothing overflows", () => {
    expect(unlimited(fields)).toEqual([])
  })

  it("gives one answer in any unit", () => {
    fc.assert(
      fc.property(arbitrary, fc.infiniteStream(fc.nat(1e6)), (input, stream) => {
        const mixed = inOtherUnits(fields, input, (count) => (stream.next().value as number) % count)
        const [plain, other] = [solver.attempt(input), solver.attempt(mixed)]
        const isFault = [plain, other].some((o) => !o.ok && o.error instanceof InputError)
        // rounding in the last place may put a value at a limit just outside it
        if (isFault) return
        const [a, b] = [solver.read(input), solver.read(mixed)]
        const [x, y] = [everyNumber(a), everyNumber(b)]
        expect(y.map((n) => n.path)).toEqual(x.map((n) => n.path))
        x.forEach(({ path, value }, i) => {
          expect(close(value, y[i]?.value as number, 1e-12 * Math.max(300, Math.abs(value))), path).toBe(true)
        })
        // the kernel sees only SI: the same SI numbers give the very same answer
        const again = solver.attempt(b)
        expect(again.ok).toBe(other.ok)
        if (other.ok && again.ok) expect(again.value).toEqual(other.value)
      }),
      { numRuns: runs },
    )
  })

  it("meets bad input with one InputError that names the place", () => {
    const bad: Record<string, unknown[]> = {
      number: [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, "3", {}, [], true],
      quantity: [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, "plenty", "3 parsecs", "", "1/0 m", {}, [], true],
      choice: ["nonsense", 3, {}, "toString"],
      flag: ["yes", 1],
      text: [3, {}, true],
      list: [3, "a", {}],
      group: [3, "a", []],
    }
    for (const { field, path } of leaves(fields, example)) {
      const values = bad[field.kind] ?? (bad.quantity as unknown[])
      for (const value of [...values, ...(field.default === null ? [] : [null])]) {
        const outcome = solver.attempt(replaced(example, path, value))
        expect(outcome.ok, `${path.join(".")} = ${String(value)}`).toBe(false)
        if (outcome.ok) continue
        expect(outcome.error).toBeInstanceOf(InputError)
        expect(
          (outcome.error as InputError).issues.some((i) => path.every((part, k) => i.path[k] === part)),
          `${path.join(".")} = ${String(value)}: ${outcome.error.message}`,
        ).toBe(true)
      }
      if (field.default === undefined && typeof path.at(-1) === "string") {
        const outcome = solver.attempt(replaced(example, path, undefined))
        expect(!outcome.ok && (outcome.error as InputError).issues.some((i) => i.code === "missing"), `${path.join(".")} left out`).toBe(
          true,
        )
      }
    }
    for (const odd of [undefined, null, 3, "text", [], { ...example, sprocket: 1 }]) {
      const outcome = solver.attempt(odd)
      expect(!outcome.ok && outcome.error instanceof InputError).toBe(true)
    }
  })

  it("has a JSON Schema that takes what the solver takes", () => {
    const ajv = new Ajv2020({ strict: false })
    const validate = ajv.compile(solver.jsonSchema())
    fc.assert(
      fc.property(arbitrary, fc.infiniteStream(fc.nat(1e6)), (input, stream) => {
        for (const one of [input, inOtherUnits(fields, input, (count) => (stream.next().value as number) % count)]) {
          // what is read is taken: nothing has to be solved for that
          try {
            solver.read(one as Record<string, unknown>)
          } catch (error) {
            if (error instanceof InputError) continue
            throw error
          }
          expect(validate(one), JSON.stringify(validate.errors)).toBe(true)
        }
      }),
      { numRuns: Math.min(runs, 20) },
    )
    expect(validate({ ...example, sprocket: 1 })).toBe(false)
  })

  it("works out by its formulae, in units, to the kernel's numbers", () => {
    const text = JSON.stringify(solver.formulae)
    for (const step of solver.formulae) {
      if ("solved" in step)
        expect(
          solver.formulae.some(
            (s) => "left" in s && new RegExp(`(^|[^A-Za-z0-9_])${step.solved}($|[^A-Za-z0-9_])`).test(`${s.left} ${s.right}`),
          ),
          `no equation proves ${step.solved}`,
        ).toBe(true)
    }
    expect(text).not.toContain("TODO")
    let worked = 0
    fc.assert(
      fc.property(arbitrary, (input) => {
        const outcome = solver.attempt(input)
        if (!outcome.ok) return
        worked++
        const si = solver.read(input)
        const out = solver.si(si)
        if (isNoSolution(out)) throw new Error("attempt answered, si refused")
        const { values, steps } = workingOfSi(solver, si)
        const scale: Record<string, number> = {}
        for (const step of steps) {
          for (const v of [step.value].flat())
            scale[step.quantity] = Math.max(scale[step.quantity] ?? (step.quantity === "temperature" ? 300 : 0), Math.abs(v))
          if (step.kind === "equation") {
            const promised = solver.formulae.find((s) => "left" in s && `${s.left} = ${s.right}` === step.formula) as { within?: number }
            expect(step.value, `${step.formula}: ${step.numbers}`).toBeLessThanOrEqual(promised.within ?? 1e-9)
          }
        }
        for (const { key, field, value } of scalarsOf(solver.output as unknown as AnyOutFields, out)) {
          const { symbol } = field
          if (key.includes(".") && !symbol) continue
          // a number may be null exactly where its formula does not apply
          if (value === null && symbol) expect(values[symbol], `${key} is null, and ${symbol} is worked out`).toBeUndefined()
          if (typeof value !== "number" || bookkeeping.includes(key)) continue
          expect(symbol, `${key} has no symbol`).toBeTruthy()
          const reckoned = values[symbol as string]
          expect(reckoned, `${key} (${symbol}) is worked out by no step`).toBeDefined()
          // what cancels between like quantities is compared at the scale of those quantities
          const floor = 1e-12 * (scale[field.kind] ?? 0)
          expect(close(value, reckoned as number, floor), `${key}: kernel ${value}, working ${reckoned}`).toBe(true)
        }
      }),
      { numRuns: Math.min(runs, 40) },
    )
    expect(worked).toBeGreaterThan(0)
  })
})
