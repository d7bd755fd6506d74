import { describe, expect, it } from "vitest"
import { solver } from "../../src/solver/index.js"
import { optimize } from "../../src/study/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { referenceRows } from "../helpers/references.js"
import { limited } from "../numeric/published.js"
import { each, made } from "./functions.js"
import { cone } from "./made.js"

const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const

describe("lists are tried to the end", () => {
  it("and the best is the one that brute force finds, proved", async () => {
    const awg = [12, 14, 16, 18, 20, 22, 24, 26]
    const length = [1, 2, 3]
    const told = await optimize(voltageDrop, run, { vary: { awg, length }, maximize: ["drop"], subjectTo: { drop: { atMost: "0.5 V" } } })
    const all = awg.flatMap((a) => length.map((l) => ({ awg: a, length: l, drop: voltageDrop({ ...run, awg: a, length: l }).drop })))
    const best = all.filter(({ drop }) => drop <= 0.5).sort((a, b) => b.drop - a.drop)[0]!
    expect(told.best?.inputs).toEqual({ awg: best.awg, length: best.length })
    expect(told.best?.outputs.drop).toBe(best.drop)
    expect(told).toMatchObject({ isProved: true, tried: 24, searches: null, nearest: null })
    expect(told.sentence).toContain("proved: all 24 choices were tried")
  })
  it("of words and flags too, and whole numbers of a range", async () => {
    const told = await optimize(voltageDrop, run, {
      vary: { material: ["copper", "aluminium"], awg: { from: 10, to: 30 } },
      minimize: ["drop"],
    })
    expect(told.best?.inputs).toEqual({ material: "copper", awg: 10 })
    expect(told.tried).toBe(42)
  })
  it("the front of two goals is the one that brute force finds", async () => {
    const two = made(
      (x) => [((x[0] as number) - 3) ** 2 + (x[1] as number), ((x[0] as number) - 7) ** 2 - (x[1] as number)] as const,
      [5, 0],
    )
    const told = await optimize(
      two,
      { x: [5, 0] },
      { vary: each(2, (i) => ({ from: i ? -2 : 0, to: i ? 2 : 10 })) as never, minimize: ["f", "g"], budget: 2000 },
    )
    // whole numbers are not asked for here: a search, so its points must lie on the true front x between 3 and 7
    expect(told.isProved).toBe(false)
    for (const { inputs } of told.front) {
      expect(inputs["x.0"] as number).toBeGreaterThan(2.9)
      expect(inputs["x.0"] as number).toBeLessThan(7.1)
    }
    const list = [-2, -1, 0, 1, 2]
    const grid = Array.from({ length: 11 }, (_, i) => i)
    const proved = await optimize(two, { x: [5, 0] }, { vary: { "x.0": grid, "x.1": list }, minimize: ["f", "g"] })
    const all = grid.flatMap((a) => list.map((b) => ({ f: (a - 3) ** 2 + b, g: (a - 7) ** 2 - b })))
    const wanted = all.filter((one) => !all.some((other) => other.f <= one.f && other.g <= one.g && (other.f < one.f || other.g < one.g)))
    expect(new Set(proved.front.map(({ outputs }) => `${outputs.f},${outputs.g}`))).toEqual(new Set(wanted.map(({ f, g }) => `${f},${g}`)))
    expect(proved.isProved).toBe(true)
    expect(proved.sentence).toContain("nearest to the best of each")
  })
})

describe("ranges are searched", () => {
  it.each(["opt-g06", "opt-three-bar-truss"])("published minima with limits: %s", async (id) => {
    const problem = limited[id]!
    const { expected } = referenceRows("study").find((one) => one.id === id)!
    const solver = made(
      (x) => [problem.value(x), Math.max(...problem.limits(x))] as const,
      problem.box.map(([low]) => low),
    )
    const told = await optimize(
      solver,
      { x: problem.box.map(([low]) => low) },
      {
        vary: each(problem.box.length, (i) => ({ from: problem.box[i]![0], to: problem.box[i]![1] })),
        minimize: ["f"],
        subjectTo: { g: { atMost: 0 } },
      },
    )
    expect(Math.abs(told.best!.outputs.f! / (expected.f_min as number) - 1)).toBeLessThan(1e-6)
    expect(told.best!.outputs.g).toBeLessThanOrEqual(0)
    expect(told.isProved).toBe(false)
    expect(told.searches?.begun).toBeGreaterThan(0)
    expect(told.sentence).toContain("found, not proved")
  })
  it("refusals are limits: the best lies beside the edge of what answers", async () => {
    const edge = made((x) => ((x[0] as number) < 2 ? null : (x[0] as number)), [3])
    const told = await optimize(edge, { x: [3] }, { vary: { "x.0": { from: 0, to: 5 } }, minimize: ["f"], budget: 4000 })
    expect(told.best!.outputs.f).toBeGreaterThanOrEqual(2)
    expect(told.best!.outputs.f).toBeLessThan(2 + 1e-5)
    expect(told.refused[0]).toMatchObject({ code: "no-value" })
  })
  it("points of a front lie on the true one, end to end (opt-schaffer-1)", async () => {
    const schaffer = made((x) => [(x[0] as number) ** 2, ((x[0] as number) - 2) ** 2] as const, [9])
    const told = await optimize(schaffer, { x: [9] }, { vary: { "x.0": { from: -10, to: 10 } }, minimize: ["f", "g"], budget: 2000 })
    const row = referenceRows("study").find(({ id }) => id === "opt-schaffer-1")!
    const front = told.front.map(({ outputs }) => [outputs.f as number, outputs.g as number] as const).sort((a, b) => a[0] - b[0])
    // the front is x from 0 to 2: points pass its ends by no more than a thousandth of the range searched
    for (const { inputs } of told.front) expect(Math.abs((inputs["x.0"] as number) - 1)).toBeLessThan(1.02)
    // the space between the front and (4, 4) is nearly all of the printed one
    let volume = 0
    front.forEach(([f, g], i) => {
      volume += ((front[i + 1]?.[0] ?? 4) - f) * (4 - g)
    })
    expect(volume / (row.expected.hypervolume as number)).toBeGreaterThan(0.98)
    expect(volume / (row.expected.hypervolume as number)).toBeLessThanOrEqual(1)
  })
})

describe("whole numbers of a long range", () => {
  it("are the only ones asked for, each as often as any other, and no more of them than the budget", async () => {
    const asked: number[] = []
    const count = solver<{ n: number }, { readonly f: number }>(
      "count",
      "A count",
      ({ n }) => {
        asked.push(n)
        return { f: (n - 31_415) ** 2 }
      },
      () => ({
        input: { n: { kind: "number", symbol: "n", label: "count", whole: true, min: 0, max: 1_000_000 } },
        output: { f: { kind: "number", symbol: "f", label: "value" } },
        example: { n: 5 },
        formulae: [],
        sources: [],
      }),
    )
    const told = await optimize(count, { n: 5 }, { vary: { n: { from: 0, to: 100_000 } }, minimize: ["f"], budget: 3000 })
    expect(asked.filter((n) => !Number.isInteger(n) || n < 0 || n > 100_000)).toEqual([])
    expect(told.best?.inputs.n).toBe(31_415)
    expect(told.tried).toBeLessThanOrEqual(3000)
  })
})

describe("the budget", () => {
  it.each([8, 9, 20, 50, 137, 1000])("of %d inputs is never overdrawn, for one goal or two", async (budget) => {
    const bowl = made((x) => [x.reduce((s, v) => s + (v - 0.3) ** 2, 0), x.reduce((s, v) => s + (v + 0.3) ** 2, 0)] as const, [0, 0, 0])
    const vary = each(3, () => ({ from: -1, to: 1 }))
    for (const minimize of [["f"], ["f", "g"]] as const) {
      const told = await optimize(bowl, { x: [0, 0, 0] }, { vary, minimize, budget })
      expect(told.tried).toBeLessThanOrEqual(budget)
      expect(told.best).not.toBeNull()
    }
  })
})

describe("what cannot be", () => {
  it("says so of a limit on a value that the result has not, without a number in its place", async () => {
    const bare = solver<{ x: number }, { readonly f: number; readonly h: number | null }>(
      "bare",
      "One value",
      ({ x }) => ({ f: x, h: null }),
      () => ({
        input: { x: { kind: "number", symbol: "x", label: "x", min: 0, max: 9 } },
        output: { f: { kind: "number", symbol: "f", label: "value" }, h: { kind: "number", symbol: "h", label: "height" } },
        example: { x: 1 },
        formulae: [],
        sources: [],
      }),
    )
    const told = await optimize(bare, { x: 1 }, { vary: { x: [1, 2] }, minimize: ["f"], subjectTo: { h: { atMost: 3 } } })
    expect(told.nearest).toEqual({ inputs: { x: 1 }, outputs: { f: 1, h: null }, passes: ["its result has no height"] })
  })
  it("a value of null, a group and a choice of nothing are faults", async () => {
    for (const [vary, path] of [
      [{ length: [null] }, ["vary", "length", 0]],
      [{ length: { from: null, to: 2 } }, ["vary", "length", "from"]],
      [{ length: undefined }, ["vary"]],
    ] as const)
      await expect(optimize(voltageDrop, run, { vary, minimize: ["drop"] } as never)).rejects.toMatchObject({ issues: [{ path }] })
    const group = { vary: { at: [{ height: 1 }] }, minimize: ["sum"] } as never
    await expect(optimize(cone, cone.example, group)).rejects.toMatchObject({ issues: [{ path: ["vary", "at"] }] })
  })
  it("is told with the one that comes nearest", async () => {
    const told = await optimize(voltageDrop, run, {
      vary: { awg: [20, 22, 24] },
      minimize: ["drop"],
      subjectTo: { drop: { atMost: "1 mV" } },
    })
    expect(told.best).toBeNull()
    expect(told.front).toEqual([])
    expect(told.nearest?.inputs).toEqual({ awg: 20 })
    expect(told.nearest?.passes[0]).toMatch(/at most 1 mV allowed/)
    const nothing = await optimize(
      made(() => null, [1]),
      { x: [1] },
      { vary: { "x.0": [1, 2] }, minimize: ["f"] },
    )
    expect(nothing).toMatchObject({ best: null, nearest: null, refused: [{ code: "no-value", count: 2 }] })
    expect(nothing.sentence).toContain("None of 2 tried has an answer")
  })
  it("is refused with every fault at once", async () => {
    const wrong = {
      vary: { awg: [], length: { from: "3 m", to: "1 m" }, material: { from: 1, to: 2 } },
      subjectTo: { drop: {}, nothing: { atMost: 1 } },
    } as never
    await expect(optimize(voltageDrop, run, wrong)).rejects.toMatchObject({
      issues: [
        { path: ["vary", "awg"] },
        { path: ["vary", "length"], code: "inconsistent" },
        { path: ["vary", "material"] },
        { path: ["minimize"], code: "missing" },
        { path: ["subjectTo", "drop"], code: "missing" },
        { path: ["subjectTo", "nothing"], code: "unknown-key" },
      ],
    })
  })
  it("is stopped by a signal", async () => {
    await expect(
      optimize(voltageDrop, run, { vary: { awg: [20] }, minimize: ["drop"], signal: AbortSignal.abort(new Error("stop")) }),
    ).rejects.toThrow("stop")
  })
})
