import { describe, expect, it } from "vitest"
import { solver } from "../../src/solver/index.js"
import { type PointsTask, type Spread, type StudyPool, studyWorker, uncertainty } from "../../src/study/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { referenceRows } from "../helpers/references.js"
import { each, made } from "./functions.js"
import { stairs } from "./made.js"

const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const
const line = made((x) => 2 * (x[0] as number) + (x[1] as number), [1, 1])
const base = { x: [1, 1] }
type Loose = Parameters<typeof uncertainty<{ x: readonly number[] }, { readonly f: number; readonly g: number }>>[2]

describe("spreads", () => {
  it.each([
    ["3 ± 0.5", [2.5, 3.5]],
    ["± 0.5", [0.5, 1.5]],
    ["2 ± 10 %", [1.8, 2.2]],
    ["2 +/- 1", [1, 3]],
  ])("a tolerance written %s lies between its ends, evenly", async (text, [low, high]) => {
    const { outputs } = await uncertainty(line, base, { "x.0": text } as Loose, { outputs: ["f"], samples: 4096, within: 0 })
    const { worst, percentiles, mean } = outputs[0]!
    expect(worst?.low.value).toBeCloseTo(2 * low! + 1, 9)
    expect(worst?.high.value).toBeCloseTo(2 * high! + 1, 9)
    expect(worst?.high.at["x.0"]).toBeCloseTo(high!, 12)
    expect(mean).toBeCloseTo(low! + high! + 1, 4)
    // a tenth of the way at a tenth of the share
    expect(percentiles.find((p) => p.share === 0.05)?.value).toBeCloseTo(2 * (low! + 0.05 * (high! - low!)) + 1, 2)
  })
  it("read units of their own, and differences of temperature as such", async () => {
    const told = await uncertainty(
      voltageDrop,
      run,
      { length: "3 m ± 10 cm", conductorTemperature: "30 °C ± 9 °F" },
      { outputs: ["drop"], within: 0, samples: 64 },
    )
    const at = told.outputs[0]!.worst!.high.at
    expect(at.length).toBeCloseTo(3.1, 12)
    expect(at.conductorTemperature).toBeCloseTo(35, 9)
  })
  it("of a temperature are no share of it, and no tolerance is below nothing", async () => {
    for (const tolerance of ["30 °C ± 10 %", "30 °C ± -5 °C", "30 °C ± −5 °C"])
      await expect(uncertainty(voltageDrop, run, { conductorTemperature: tolerance as "± 1 K" }), tolerance).rejects.toMatchObject({
        issues: [{ path: ["spreads", "conductorTemperature"] }],
      })
  })
  it("of a whole number hold each of them alike, both ends too", async () => {
    const told = await uncertainty(stairs, { x: 1, a: 2 }, { n: "3 ± 1" }, { limits: { y: { atMost: 9 } }, samples: 4096, within: 0 })
    expect(told.unanswered.share).toBe(0)
    const seen = solver<{ n: number }, { readonly is: number }>(
      "seen",
      "Whether it is the least",
      ({ n }) => ({ is: n === 2 ? 1 : 0 }),
      () => ({
        input: { n: { kind: "number", symbol: "n", label: "count", whole: true, min: 0, max: 9 } },
        output: { is: { kind: "number", symbol: "i", label: "is" } },
        example: { n: 3 },
        formulae: [],
        sources: [],
      }),
    )
    const low = await uncertainty(seen, { n: 3 }, { n: "3 ± 1" }, { limits: { is: { atLeast: 1 } }, samples: 4096, within: 0 })
    expect(low.limits[0]!.chance.share).toBeCloseTo(1 / 3, 2)
  })
  it("tell every fault at once, each at its place", async () => {
    const wrong = {
      "x.0": "1 plus 2",
      "x.1": { type: "triangular", low: 3, high: 2, mode: 7 },
      "x.7": "± 1",
    } as unknown as Loose
    await expect(
      uncertainty(line, base, wrong, { within: 3, correlations: [{ between: ["x.0", "x.9"], coefficient: 2 }] }),
    ).rejects.toMatchObject({
      name: "InputError",
      issues: expect.arrayContaining([
        expect.objectContaining({ path: ["spreads", "x.0"] }),
        expect.objectContaining({ path: ["spreads", "x.1"], code: "inconsistent" }),
        expect.objectContaining({ path: ["spreads", "x.7"] }),
        expect.objectContaining({ path: ["within"] }),
        expect.objectContaining({ path: ["correlations", 0, "between", 1] }),
        expect.objectContaining({ path: ["correlations", 0, "coefficient"] }),
      ]),
    })
    for (const [spread, at] of [
      [{ type: "normal" }, "deviation"],
      [{ type: "normal", deviation: -1 }, "deviation"],
      [{ type: "uniform", low: 1 }, "high"],
      [{ type: "lognormal", factor: 0.5 }, "factor"],
      [{ type: "lognormal", factor: 2, median: -1 }, "median"],
      [{ type: "beta" }, "type"],
      [{ type: "uniform", low: 1, high: 2, mode: 1 }, undefined],
      [{ type: "uniform", low: 0, high: 1e13 }, "high"],
    ] as const) {
      const asked = uncertainty(line, base, { "x.0": spread } as unknown as Loose)
      await expect(asked, JSON.stringify(spread)).rejects.toMatchObject({
        issues: [{ path: at ? ["spreads", "x.0", at] : ["spreads", "x.0"] }],
      })
    }
  })
  it("that cannot all be correlated so are refused", async () => {
    const three = made((x) => x[0] as number, [1, 1, 1])
    const asked = uncertainty(
      three,
      { x: [1, 1, 1] },
      each(3, () => "± 0.1" as const),
      {
        correlations: [
          { between: ["x.0", "x.1"], coefficient: 0.9 },
          { between: ["x.1", "x.2"], coefficient: 0.9 },
          { between: ["x.0", "x.2"], coefficient: -0.9 },
        ],
      },
    )
    await expect(asked).rejects.toMatchObject({ issues: [{ path: ["correlations"], code: "inconsistent" }] })
  })
  it("of two normal inputs that vary together add as they should", async () => {
    const normal = { type: "normal", mean: 0, deviation: 1 } as const
    for (const coefficient of [0.8, -0.8]) {
      const { outputs } = await uncertainty(
        made((x) => (x[0] as number) + (x[1] as number), [0, 0]),
        { x: [0, 0] },
        each(2, () => normal),
        {
          outputs: ["f"],
          samples: 2 ** 14,
          within: 0,
          worst: false,
          correlations: [{ between: ["x.0", "x.1"], coefficient }],
        },
      )
      expect(outputs[0]!.deviation).toBeCloseTo(Math.sqrt(2 + 2 * coefficient), 2)
    }
  })
  it("of uniform inputs stay uniform when they are correlated", async () => {
    const { outputs } = await uncertainty(
      made((x) => x[1] as number, [0.5, 0.5]),
      { x: [0.5, 0.5] },
      each(2, () => ({ type: "uniform", low: 0, high: 1 }) as const),
      {
        outputs: ["f"],
        samples: 2 ** 14,
        within: 0,
        worst: false,
        correlations: [{ between: ["x.0", "x.1"], coefficient: 0.9 }],
      },
    )
    expect(outputs[0]!.deviation).toBeCloseTo(Math.sqrt(1 / 12), 2)
    for (const { share, value } of outputs[0]!.percentiles) expect(value).toBeCloseTo(share, 1)
  })
})

describe("chances", () => {
  it("hold the true one in as many of a hundred runs as they say", async () => {
    // x0 + 2 x1 of two uniform inputs is at most 1 in a quarter of all cases
    const both = made((x) => (x[0] as number) + 2 * (x[1] as number), [0.5, 0.5])
    let held = 0
    for (let seed = 0; seed < 100; seed++) {
      const { limits } = await uncertainty(
        both,
        { x: [0.5, 0.5] },
        each(2, () => ({ type: "uniform", low: 0, high: 1 }) as const),
        {
          limits: { f: { atMost: 1 } },
          samples: 256,
          within: 0,
          seed,
          worst: false,
        },
      )
      const { low, high } = limits[0]!.chance
      if (low <= 0.25 && high >= 0.25) held++
    }
    expect(held).toBeGreaterThanOrEqual(95)
  })
  it("count an input without an answer, or beyond its limits, as one that meets nothing, and never leave it out", async () => {
    const half = made((x) => ((x[0] as number) > 0 ? null : 1), [0])
    const told = await uncertainty(
      half,
      { x: [0] },
      { "x.0": { type: "uniform", low: -1, high: 1 } },
      { limits: { f: { atLeast: 0 } }, samples: 1024, within: 0 },
    )
    expect(told.limits[0]!.chance.share).toBeCloseTo(0.5, 2)
    expect(told.unanswered.share).toBeCloseTo(0.5, 2)
    expect(told.refused).toMatchObject([{ code: "no-value" }])
    expect(told.refused[0]!.count).toBe(Math.round(told.unanswered.share * told.samples))
    expect(told.outputs[0]!.answered + told.refused[0]!.count).toBe(told.samples)
    expect(told.sentence).toContain("50 %")
    expect(told.outputs[0]!.sentence).toMatch(/in nine of ten of the 512 cases out of 1.?024 that have it/)
    const wide = await uncertainty(
      made(() => 1, [0]),
      { x: [0] },
      { "x.0": { type: "normal", mean: 1e12, deviation: 1 } },
      { outputs: ["f"], samples: 1024, within: 0 },
    )
    expect(wide.refused).toMatchObject([{ code: "outside-limits" }])
    expect(wide.unanswered.share).toBeCloseTo(0.5, 2)
  })
  it("of several limits together are those of inputs that meet all", async () => {
    const pair = made((x) => [x[0] as number, x[1] as number] as const, [0.5, 0.5])
    const told = await uncertainty(
      pair,
      { x: [0.5, 0.5] },
      each(2, () => ({ type: "uniform", low: 0, high: 1 }) as const),
      {
        limits: { f: { atMost: 0.5 }, g: { atLeast: 0.2, atMost: 0.6 } },
        samples: 4096,
        within: 0,
      },
    )
    expect(told.limits.map(({ chance }) => chance.share)).toEqual([expect.closeTo(0.5, 2), expect.closeTo(0.4, 2)])
    expect(told.together?.share).toBeCloseTo(0.2, 2)
    expect(told.limits[1]!.sentence).toMatch(/at least 0.2 and at most 0.6/)
  })
  it("end the study when they are known well enough, and say so when they are not", async () => {
    const ask = (within: number, samples: number) =>
      uncertainty(line, base, { "x.0": "1 ± 0.5" } as Loose, { limits: { f: { atMost: 3 } }, within, samples, worst: false })
    const rough = await ask(0.05, 100_000)
    expect(rough.isSure).toBe(true)
    expect(rough.samples).toBe(1024)
    const fine = await ask(0.01, 100_000)
    expect(fine.samples).toBe(16_384)
    expect((fine.limits[0]!.chance.high - fine.limits[0]!.chance.low) / 2).toBeLessThan(0.01)
    const short = await ask(0.01, 2000)
    expect(short).toMatchObject({ isSure: false, samples: 2000 })
    expect(short.sentence).toContain("more samples")
  })
})

describe("published chances and percentiles lie within the intervals that are told", () => {
  const inputsOf = (id: string) => referenceRows("study").find((row) => row.id === id)!
  const run = async (f: (x: readonly number[]) => number, spreads: readonly Spread<number>[], limits?: { f: { atLeast: number } }) => {
    const at = spreads.map(() => 1)
    return uncertainty(
      made(f, at),
      { x: at },
      each(spreads.length, (i) => spreads[i] as Spread<number>),
      {
        outputs: ["f"],
        ...(limits && { limits }),
        samples: 2 ** 13,
        within: 0,
        worst: false,
      },
    )
  }
  const normal = (mean: number, deviation: number): Spread<number> => ({ type: "normal", mean, deviation })
  const even = (deviation: number): Spread<number> => ({ type: "uniform", low: -deviation * Math.sqrt(3), high: deviation * Math.sqrt(3) })
  const states: Readonly<
    Record<string, readonly [(x: readonly number[]) => number, (given: ReturnType<typeof JSON.parse>) => readonly Spread<number>[]]>
  > = {
    "unc-reliability-cantilever": [
      ([w, h]) => 6000 / 325 - ((12 / 8) * 6000 ** 4 * ((w as number) / 1e6)) / (26000 * (h as number) ** 3),
      (given) => [normal(given.load_mean_N_m2, given.load_sd_N_m2), normal(given.depth_mean_mm, given.depth_sd_mm)],
    ],
    "unc-reliability-convex": [
      ([a, b]) => 0.1 * ((a as number) - (b as number)) ** 2 - ((a as number) + (b as number)) / Math.SQRT2 + 2.5,
      () => [normal(0, 1), normal(0, 1)],
    ],
    "unc-reliability-hypersphere": [
      ([a, b]) => 1 - (a as number) ** 3 - (b as number) ** 3,
      ({ mean, sd }) => [normal(mean, sd), normal(mean, sd)],
    ],
    "unc-reliability-oscillator": [
      ([m, c1, c2, r, f, t]) => {
        const w = Math.sqrt(((c1 as number) + (c2 as number)) / (m as number))
        return 3 * (r as number) - Math.abs(((2 * (f as number)) / ((m as number) * w * w)) * Math.sin((w * (t as number)) / 2))
      },
      ({ mean, sd }) => (mean as number[]).map((m, i) => normal(m, sd[i])),
    ],
  }
  it.each(Object.keys(states))("%s", async (id) => {
    const [state, spreads] = states[id]!
    const { inputs, expected } = inputsOf(id)
    const told = await run(state, spreads(inputs), { f: { atLeast: 0 } })
    const { low, high } = told.limits[0]!.chance
    const printed = expected.pf as number
    expect(printed, `${1 - high} to ${1 - low}`).toBeGreaterThan(1 - high)
    expect(printed, `${1 - high} to ${1 - low}`).toBeLessThan(1 - low)
    expect((high - low) / printed).toBeLessThan(0.8)
  })
  it.each([
    ["unc-s1-normal-sum", (given: ReturnType<typeof JSON.parse>) => Array.from({ length: given.inputs }, () => normal(0, given.sd))],
    ["unc-s1-rectangular-sum", (given: ReturnType<typeof JSON.parse>) => Array.from({ length: given.inputs }, () => even(given.sd))],
    ["unc-s1-dominant-rectangular", (given: ReturnType<typeof JSON.parse>) => (given.sd as number[]).map(even)],
    ["unc-s1-dominant-rectangular-exact", (given: ReturnType<typeof JSON.parse>) => (given.sd as number[]).map(even)],
  ])("%s", async (id, spreads) => {
    const { inputs, expected, tolerance } = inputsOf(id)
    const told = await run((x) => x.reduce((s, v) => s + v, 0), spreads(inputs))
    const top = told.outputs[0]!.percentiles.find(({ share }) => share === 0.975)!
    const half = expected.half_width_95 as number
    expect(half).toBeGreaterThan(top.low as number)
    expect(half).toBeLessThan(top.high as number)
    expect(((top.high as number) - (top.low as number)) / half).toBeLessThan(0.06)
    if (typeof expected.u === "number") expect(Math.abs(told.outputs[0]!.deviation! - expected.u)).toBeLessThan(tolerance!.value)
  })
})

describe("worst cases", () => {
  it("lie at corners of a box, inside it, or where many inputs pull together", async () => {
    const inside = made((x) => -((x[0] as number) ** 2) - (x[1] as number) ** 2, [0, 0])
    const hill = await uncertainty(
      inside,
      { x: [0, 0] },
      each(2, () => ({ type: "uniform", low: -1, high: 2 }) as const),
      { outputs: ["f"], samples: 64 },
    )
    expect(hill.outputs[0]!.worst?.high.value).toBeCloseTo(0, 6)
    expect(hill.outputs[0]!.worst?.low.value).toBeCloseTo(-8, 9)
    const signs = Array.from({ length: 12 }, (_, i) => (i % 3 ? 1 : -1) * (1 + i))
    const many = made(
      (x) => x.reduce((sum, v, i) => sum + v * (signs[i] as number), 0),
      signs.map(() => 0),
    )
    const wide = await uncertainty(
      many,
      { x: signs.map(() => 0) },
      each(12, () => ({ type: "uniform", low: -1, high: 1 }) as const),
      { outputs: ["f"], samples: 64 },
    )
    expect(wide.outputs[0]!.worst?.high.value).toBeCloseTo(78, 9)
    expect(wide.outputs[0]!.worst?.low.value).toBeCloseTo(-78, 9)
  })
  it("meet brute force over a fine grid of a real solver's box", async () => {
    const told = await uncertainty(voltageDrop, run, { length: "3 m ± 5 %", current: "4 A ± 10 %" }, { outputs: ["drop"], samples: 64 })
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let i = 0; i <= 20; i++)
      for (let j = 0; j <= 20; j++) {
        const { drop } = voltageDrop({ ...run, length: 2.85 + 0.015 * i, current: 3.6 + 0.04 * j })
        low = Math.min(low, drop)
        high = Math.max(high, drop)
      }
    expect(told.outputs[0]!.worst?.low.value).toBeCloseTo(low, 12)
    expect(told.outputs[0]!.worst?.high.value).toBeCloseTo(high, 12)
  })
})

describe("how it is run", () => {
  it("is stopped by a signal, before and on the way, and tells how far it is", async () => {
    const stopped = AbortSignal.abort(new Error("enough"))
    await expect(uncertainty(line, base, { "x.0": "± 0.1" } as Loose, { signal: stopped })).rejects.toThrow("enough")
    const control = new AbortController()
    const slow = made(
      (x) => {
        for (let i = 0; i < 20_000; i++) Math.sin(i)
        return x[0] as number
      },
      [1],
    )
    let reports = 0
    const running = uncertainty(slow, { x: [1] }, { "x.0": "1 ± 0.1" } as Loose, {
      within: 0,
      signal: control.signal,
      onProgress: ({ done, of }) => {
        expect(done).toBeLessThanOrEqual(of)
        if (++reports === 2) control.abort(new Error("no more"))
      },
    })
    await expect(running).rejects.toThrow("no more")
  })
  it("over a pool gives the same answer, refusals and all, and is stopped there too", async () => {
    const some = made((x) => ((x[0] as number) > 1.4 ? null : (x[0] as number) * (x[1] as number)), [1, 1], "some")
    const work = studyWorker({ some })
    let handed = 0
    const pool: StudyPool = {
      run: async (task) => {
        const nth = handed++
        await new Promise((resolve) => setTimeout(resolve, (nth * 7) % 3))
        return structuredClone(work(structuredClone(task) as PointsTask))
      },
    }
    const spreads = each(2, () => "1 ± 0.5" as const)
    const options = { limits: { f: { atMost: 1.2 } }, samples: 2048 }
    expect(await uncertainty(some, base, spreads, { ...options, pool })).toEqual(await uncertainty(some, base, spreads, options))
    expect(handed).toBeGreaterThan(8)
    const control = new AbortController()
    const running = uncertainty(some, base, spreads, { ...options, pool, signal: control.signal })
    control.abort(new Error("no more"))
    await expect(running).rejects.toThrow("no more")
  })
  it.each(["a stop", "a worker that fails"])("after %s hands nothing more to a pool, and tells nothing more", async (what) => {
    const some = made((x) => x[0] as number, [1, 1], "some")
    const work = studyWorker({ some })
    const control = new AbortController()
    let [handed, told] = [0, 0]
    const pool: StudyPool = {
      run: async (task) => {
        const nth = handed++
        await new Promise((resolve) => setTimeout(resolve, 5))
        if (nth === 3 && what === "a stop") control.abort(new Error("no more"))
        if (nth === 3) throw new Error("no more")
        return work(task as PointsTask)
      },
    }
    const options = { outputs: ["f"] as const, samples: 2048, within: 0, pool, signal: control.signal, onProgress: () => told++ }
    await expect(uncertainty(some, base, { "x.0": "1 ± 0.5" } as Loose, options)).rejects.toThrow("no more")
    const [then, so] = [handed, told]
    expect(handed).toBeLessThan(32)
    await new Promise((resolve) => setTimeout(resolve, 150))
    expect([handed, told]).toEqual([then, so])
  })
})
