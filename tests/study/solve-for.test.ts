import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { InputError } from "../../src/solver/index.js"
import { solveFor } from "../../src/study/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { cone, curve, stairs } from "./made.js"

const roots = async (f: (x: number) => number, from: number, to: number, target: number, count?: number) =>
  solveFor(
    curve(f),
    { x: 1 },
    { vary: "x", among: { from, to, ...(count === undefined ? {} : { count }) }, target: { output: "y", equals: target } },
  )
const near = (found: readonly { readonly value: number }[], wanted: readonly number[], digits = 10) => {
  expect(found.map((hit) => hit.value)).toHaveLength(wanted.length)
  for (const [i, hit] of found.entries()) expect(hit.value).toBeCloseTo(wanted[i] as number, digits)
}

describe("solveFor on a number", () => {
  it("finds every root of constructed polynomials, those that cross, and no other", async () => {
    await fc.assert(
      fc.asyncProperty(fc.uniqueArray(fc.integer({ min: -39, max: 39 }), { minLength: 1, maxLength: 7 }), async (tenths) => {
        const places = tenths.map((t) => t / 10 + 0.0137).sort((a, b) => a - b)
        const found = await roots((x) => places.reduce((product, at) => product * (x - at), 1), -4, 4, 0)
        near(found.hits, places, 9)
        expect([found.nearMisses, found.jumps, found.refusals, found.stretches]).toEqual([[], [], [], []])
      }),
      { numRuns: 60 },
    )
  })
  it("finds them where tries stand on the roots themselves, and at the ends of the range", async () => {
    near((await roots((x) => x * (x - 1) * (x + 1), -1, 1, 0)).hits, [-1, 0, 1])
    near((await roots(Math.sin, 0, 2 * Math.PI, 0)).hits, [0, Math.PI, 2 * Math.PI], 12)
  })
  it("tells a touching root and a turn short of the value as near misses, a turn past it as two roots", async () => {
    const touch = await roots((x) => (x - 0.303) ** 2, -1, 1, 0)
    expect(touch.hits).toEqual([])
    near(touch.nearMisses, [0.303], 6)
    expect(touch.nearMisses[0]?.off).toBeLessThan(1e-12)
    const short = await roots((x) => (x - 0.303) ** 2 + 1e-4, -1, 1, 0)
    expect(short.hits).toEqual([])
    expect(short.nearMisses[0]?.off).toBeCloseTo(1e-4, 12)
    expect(short.nearest?.output).toBeCloseTo(1e-4, 12)
    // far narrower than the step of 0.01
    near((await roots((x) => (x - 0.303) ** 2 - 1e-8, -1, 1, 0)).hits, [0.303 - 1e-4, 0.303 + 1e-4])
    expect((await roots((x) => (x - 0.303) ** 2 - 1e-8, -1, 1, 0)).nearest).toBeNull()
    expect((await roots((x) => x ** 2 + 5, -1, 1, 0)).nearMisses).toHaveLength(0)
  })
  it("tells poles and leaps over the value apart from roots", async () => {
    const tangent = await roots((x) => Math.tan(x) - x, 0.5, 20, 0, 801)
    // first positive solutions of tan x = x, Abramowitz and Stegun, table 4.19
    near(tangent.hits, [4.49340946, 7.72525184, 10.90412166, 14.06619391, 17.22075527], 7)
    near(
      tangent.jumps.map(({ low }) => ({ value: low })),
      [0.5, 1.5, 2.5, 3.5, 4.5, 5.5].map((n) => n * Math.PI),
    )
    const step = await roots((x) => (x < 0.123 ? -1 : 2), -1, 1, 0.5)
    expect(step.hits).toEqual([])
    expect(step.jumps).toMatchObject([{ below: -1, above: 2 }])
    expect(step.jumps[0]?.high).toBeCloseTo(0.123, 12)
    expect(Math.abs(step.nearest?.off as number)).toBeCloseTo(1.5, 12)
  })
  it("takes steep and flat crossings for roots", async () => {
    near((await roots(Math.cbrt, -1, 1.3, 0)).hits, [0], 12)
    near((await roots((x) => Math.sign(x - 0.2) * Math.sqrt(Math.abs(x - 0.2)), -1, 1, 0)).hits, [0.2], 12)
    near((await roots((x) => (x - 0.2) ** 3, -1, 1, 0)).hits, [0.2], 4)
    near((await roots((x) => 1e-9 * (x - 0.2), -1, 1, 0)).hits, [0.2])
    near((await roots((x) => 1e9 + (x - 0.2), -1, 1, 1e9)).hits, [0.2], 6)
  })
  it("tells refusals with their ends, and what lies beside and between them", async () => {
    const found = await roots((x) => (Math.abs(x - 0.5) < 0.2 ? Number.NaN : x - 0.4), -1, 1, 0)
    expect(found.hits).toEqual([])
    expect(found.refusals).toMatchObject([{ code: "undefined-there" }])
    expect(found.refusals[0]?.from).toBeCloseTo(0.3, 10)
    expect(found.refusals[0]?.to).toBeCloseTo(0.7, 10)
    // a gap narrower than the step, met while a root is closed in on
    const gap = await roots((x) => (Math.abs(x - 0.305) < 1e-3 ? Number.NaN : x - 0.3048), -1, 1, 0)
    expect([gap.hits, gap.jumps]).toEqual([[], []])
    expect(gap.refusals[0]?.from).toBeCloseTo(0.304, 10)
    expect(gap.refusals[0]?.to).toBeCloseTo(0.306, 10)
    const beside = await roots((x) => (Math.abs(x - 0.305) < 1e-3 ? Number.NaN : x - 0.3062), -1, 1, 0)
    near(beside.hits, [0.3062])
    const line = await solveFor(
      stairs,
      { x: 0, a: 2 },
      { vary: "x", among: { from: -4, to: 4 }, target: { output: "y", equals: "300 cm" } },
    )
    near(line.hits, [1.5])
    expect(line.refusals.map(({ code }) => code)).toEqual(["inconsistent", "too-steep"])
    expect(line.refusals[0]?.to).toBeCloseTo(-2, 10)
  })
  it("tells a stretch at the value itself", async () => {
    const found = await roots((x) => Math.min(Math.max(x, -0.25), 0.5), -1, 1, 0.5)
    expect(found.hits).toEqual([])
    expect(found.stretches).toMatchObject([{ high: 1, lowEdge: "target", highEdge: "range" }])
    expect(found.stretches[0]?.low).toBeCloseTo(0.5, 12)
  })
  it("gives the stretches that keep a limit, both ends tried, and why each ends", async () => {
    const wave = await solveFor(curve(Math.sin), { x: 1 }, { vary: "x", among: { from: 0, to: 7 }, target: { output: "y", atLeast: 0.5 } })
    expect(wave.stretches).toMatchObject([
      { lowEdge: "target", highEdge: "target" },
      { lowEdge: "target", highEdge: "range", high: 7 },
    ])
    const [first, second] = wave.stretches
    expect(first?.low).toBeCloseTo(Math.PI / 6, 12)
    expect(first?.high).toBeCloseTo((5 * Math.PI) / 6, 12)
    expect(second?.low).toBeCloseTo((13 * Math.PI) / 6, 12)
    for (const x of [first?.low, first?.high, second?.low]) expect(Math.sin(x as number)).toBeGreaterThanOrEqual(0.5)
    // a stretch far narrower than the step
    const thin = await solveFor(
      curve((x) => (x - 0.303) ** 2),
      { x: 1 },
      { vary: "x", among: { from: -1, to: 1 }, target: { output: "y", atMost: 1e-8 } },
    )
    expect(thin.stretches).toHaveLength(1)
    expect(thin.stretches[0]?.low).toBeCloseTo(0.303 - 1e-4, 10)
    const answers = await solveFor(stairs, { x: 0, a: 2 }, { vary: "x", among: { from: -4, to: 4 }, target: { answers: true } })
    expect(answers.stretches).toMatchObject([{ lowEdge: "refusal", highEdge: "refusal" }])
    expect(answers.stretches[0]?.high).toBeCloseTo(1.5, 12)
    const word = await solveFor(stairs, { x: 0, a: 2 }, { vary: "x", among: { from: 1, to: 4 }, target: { output: "said", is: "nothing" } })
    expect(word.stretches).toMatchObject([{ low: 1, lowEdge: "range", highEdge: "refusal" }])
    const none = await solveFor(stairs, { x: 0, a: 2 }, { vary: "x", target: { output: "y", atLeast: "20 m" } })
    expect(none.stretches).toEqual([])
    expect(none.nearest?.value).toBeCloseTo(1.5, 10)
  })
  it("looks through the usual range where none is stated, and says its step", async () => {
    const found = await solveFor(stairs, { x: 0, a: 2 }, { vary: "x", target: { output: "y", equals: 1 } })
    near(found.hits, [0.5])
    expect(found.looked).toMatchObject({ low: -5, high: 5 })
    expect(found.looked?.step).toBeCloseTo(0.05, 12)
    expect(found.evaluations).toBeGreaterThan(201)
  })
  it("comes back to the value that an answer was made from", async () => {
    const base = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const
    await fc.assert(
      fc.asyncProperty(fc.double({ min: 0.2, max: 8, noNaN: true }), async (length) => {
        const { drop } = voltageDrop({ ...base, length })
        const found = await solveFor(voltageDrop, base, {
          vary: "length",
          among: { from: 0.1, to: 9, count: 11 },
          target: { output: "drop", equals: drop },
        })
        near(found.hits, [length], 9)
      }),
      { numRuns: 20 },
    )
  })
})

describe("solveFor on what can be counted", () => {
  const base = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const
  it("tries every entry of a series, in the order given", async () => {
    const gauges = [24, 22, 20, 18, 16, 14, 12]
    const target = { output: "drop", atMost: "0.4 V" } as const
    const found = await solveFor(voltageDrop, base, { vary: "awg", among: gauges, target })
    expect(found.hits.map((hit) => hit.value)).toEqual(gauges.filter((awg) => voltageDrop({ ...base, awg }).drop <= 0.4))
    expect(found.hits.length).toBeGreaterThan(0)
    expect(found.hits.length).toBeLessThan(gauges.length)
    expect(found.looked).toBeNull()
    const none = await solveFor(voltageDrop, base, { vary: "awg", among: [24, 22, 20], target: { output: "drop", atMost: "1 mV" } })
    expect([none.hits, none.nearest?.value]).toEqual([[], 20])
  })
  it("tries every whole number and every choice where none are stated", async () => {
    const found = await solveFor(cone, cone.example, { vary: "at.side", target: { output: "sum", equals: 8 } })
    expect(found.hits.map((hit) => hit.value)).toEqual(["left", "right"])
    const whole = await solveFor(stairs, { x: 1, a: 1 }, { vary: "n", target: { answers: true } })
    expect(whole.hits).toHaveLength(50)
  })
  it("tries combinations and rows, each told by path", async () => {
    const all = await solveFor(cone, cone.example, {
      varyAll: { "rings.0.mass": [1, 2, 3], "rings.1.mass": [1, 2, 3] },
      target: { output: "sum", equals: 5 },
    })
    expect(all.hits.map((hit) => hit.value)).toEqual([
      { "rings.0.mass": 1, "rings.1.mass": 3 },
      { "rings.0.mass": 2, "rings.1.mass": 2 },
      { "rings.0.mass": 3, "rings.1.mass": 1 },
    ])
    const rack = await solveFor(cone, cone.example, {
      rows: [
        { "rings.0.mass": "1 kg", "at.height": "1 m" },
        { "rings.0.mass": "2000 g", "at.height": "2 m" },
      ],
      target: { output: "sum", atLeast: 5 },
    })
    expect(rack.hits).toEqual([{ value: { "rings.0.mass": 2, "at.height": 2 }, output: 6, off: 1 }])
  })
  it("tells refused entries of a series by their code", async () => {
    const found = await solveFor(stairs, { x: 1, a: 1 }, { vary: "x", among: [-3, -2.5, 0, 1, 2, 3], target: { output: "y", atLeast: 0 } })
    expect(found.hits.map((hit) => hit.value)).toEqual([0, 1])
    expect(found.refusals).toMatchObject([
      { from: -3, to: -2.5, code: "inconsistent" },
      { from: 2, to: 3, code: "too-steep" },
    ])
  })
})

describe("solveFor's arguments", () => {
  const target = { output: "y", equals: 1 }
  it.each([
    [{ vary: "q", target }, ["unknown-key vary"]],
    [{ vary: "x", target: { output: "z", equals: 1 } }, ["unknown-key target/output"]],
    [{ vary: "x", target: { output: "y", equals: "1 kg" } }, ["wrong-unit target/equals"]],
    [{ vary: "x", target: { output: "y", is: "steep" } }, ["inconsistent target/is"]],
    [{ vary: "x", target: { output: "said", equals: 3 } }, ["inconsistent target/equals"]],
    [{ vary: "x", target: { output: "said", is: 3 } }, ["wrong-type target/is"]],
    [{ vary: "x", target: { output: "y" } }, ["inconsistent target"]],
    [{ vary: "x", target: { output: "y", equals: 1, atMost: 2 } }, ["inconsistent target"]],
    [{ vary: "x", target: { output: "y", near: 1 } }, ["unknown-key target/near"]],
    [{ vary: "x", target: { answers: false } }, ["inconsistent target"]],
    [{ vary: "x" }, ["wrong-type target"]],
    [{ target }, ["inconsistent "]],
    [{ vary: "x", varyAll: { a: [1] }, target }, ["inconsistent "]],
    [{ varyAll: { a: [1] }, among: [1], target }, ["inconsistent "]],
    [{ vary: "x", step: 3, target }, ["unknown-key step"]],
    [{ vary: "word", target }, ["missing among"]],
    [{ vary: "x", among: [1, 99], target }, ["too-large among/1"]],
    [{ vary: "x", among: { from: 1, to: 99 }, target }, ["too-large among/to"]],
    [{ vary: "q", target: { output: "z", equals: 1 } }, ["unknown-key vary", "unknown-key target/output"]],
    [{ rows: [], target }, ["wrong-type rows"]],
    [{ rows: [{ x: 1 }, { a: 1 }], target }, ["inconsistent rows/1"]],
    [{ rows: [{ x: 1 }, 3, { x: "3 kg" }], target }, ["wrong-type rows/1", "wrong-unit rows/2/x"]],
  ])("%o: %s", async (wanted, faults) => {
    const error = (await solveFor(stairs, { x: 1, a: 1 }, wanted as never).catch((e: unknown) => e)) as InputError
    expect(error).toBeInstanceOf(InputError)
    expect(error.issues.map(({ code, path }) => `${code} ${path.join("/")}`)).toEqual(faults)
  })
  it("a signal stops it", async () => {
    const signal = AbortSignal.abort("enough")
    await expect(solveFor(stairs, { x: 1, a: 1 }, { vary: "x", target: { answers: true } }, { signal })).rejects.toBe("enough")
  })
})
