import { describe, expect, it } from "vitest"
import { inputPlaces, isNumberPlace, type OutputSensitivity, type Sensitivity, type Spread, sensitivity } from "../../src/study/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { referenceRows } from "../helpers/references.js"
import { each, made } from "./functions.js"

type Figures = Readonly<Record<string, ReturnType<typeof JSON.parse>>>
const row = (id: string) => referenceRows("study").find((one) => one.id === id) as { readonly inputs: Figures; readonly expected: Figures }
const uniform = (low: number, high: number): Spread<number> => ({ type: "uniform", low, high })

async function indices(f: (x: readonly number[]) => number, spreads: readonly Spread<number>[], samples: number) {
  const at = spreads.map(() => 1)
  const answer: Sensitivity = await sensitivity(
    made(f, at),
    { x: at },
    { outputs: ["f"], vary: each(spreads.length, (i) => spreads[i] as Spread<number>), samples },
  )
  return answer.outputs[0] as OutputSensitivity
}

/** Every printed index lies within the interval that its estimate states; of twenty such intervals one may miss by its own width. */
function held(told: OutputSensitivity, first: readonly number[], total: readonly number[] | null): void {
  let [missed, count] = [0, 0]
  told.inputs.forEach(({ path, first: s, total: t }) => {
    const i = Number(path.slice(2))
    for (const [estimate, printed] of [
      [s, first[i]],
      [t, total?.[i]],
    ] as const) {
      if (printed === undefined || !estimate) continue
      count++
      const half = (estimate.high - estimate.low) / 2
      expect(Math.abs(estimate.value - printed), `${path}: ${estimate.value} ± ${half} against ${printed}`).toBeLessThan(2 * half + 1e-6)
      if (estimate.low > printed || estimate.high < printed) missed++
      // an interval as wide as the whole would hold anything
      expect(half, path).toBeLessThan(0.08)
    }
  })
  expect(missed).toBeLessThanOrEqual(Math.ceil(0.2 * count))
}

const gFunction = (a: readonly number[]) => (x: readonly number[]) =>
  x.reduce((p, v, i) => (p * (Math.abs(4 * v - 2) + (a[i] as number))) / (1 + (a[i] as number)), 1)

describe("shares of the variance meet the printed ones within their own intervals", () => {
  it("of Sobol's g function of eight inputs (sens-sobol-g8-first, -total)", async () => {
    const a = row("sens-sobol-g8-first").inputs.a as number[]
    held(
      await indices(
        gFunction(a),
        a.map(() => uniform(0, 1)),
        4096,
      ),
      row("sens-sobol-g8-first").expected.S,
      row("sens-sobol-g8-total").expected.ST,
    )
  })
  it("of that of six inputs (sens-sobol-g6-indices, -variance)", async () => {
    const { inputs, expected } = row("sens-sobol-g6-indices")
    const told = await indices(
      gFunction(inputs.a),
      (inputs.a as number[]).map(() => uniform(0, 1)),
      4096,
    )
    held(told, expected.S, expected.ST)
    expect((told.deviation as number) ** 2).toBeCloseTo(row("sens-sobol-g6-variance").expected.variance, 2)
  })
  it("of a bore hole's flow, all inputs uniform (sens-borehole-uniform-indices, -moments)", async () => {
    const { inputs, expected } = row("sens-borehole-uniform-indices")
    const [low, high] = [inputs.lower, inputs.upper] as unknown as [number[], number[]]
    const told = await indices(
      ([rw, r, tu, hu, tl, hl, l, kw]) => {
        const log = Math.log((r as number) / (rw as number))
        const under =
          log * (1 + (2 * (l as number) * (tu as number)) / (log * (rw as number) ** 2 * (kw as number)) + (tu as number) / (tl as number))
        return (2 * Math.PI * (tu as number) * ((hu as number) - (hl as number))) / under
      },
      low.map((v, i) => uniform(v, high[i] as number)),
      4096,
    )
    held(told, expected.S, expected.ST)
    const moments = row("sens-borehole-uniform-moments").expected as { mean_m3_yr: number; variance_m6_yr2: number }
    expect(Math.abs((told.mean as number) / moments.mean_m3_yr - 1)).toBeLessThan(0.005)
    expect(Math.abs((told.deviation as number) ** 2 / moments.variance_m6_yr2 - 1)).toBeLessThan(0.02)
    // the ranking is what a maker reads
    expect(told.inputs[0]?.path).toBe("x.0")
    expect(new Set(told.inputs.slice(1, 4).map(({ path }) => path))).toEqual(new Set(["x.3", "x.5", "x.6"]))
  })
  it("of a push-pull circuit (sens-otl-circuit)", async () => {
    const { inputs, expected } = row("sens-otl-circuit")
    const [low, high] = [inputs.lower, inputs.upper] as unknown as [number[], number[]]
    const told = await indices(
      (x) => {
        const [rb1, rb2, rf, rc1, rc2, beta] = x as [number, number, number, number, number, number]
        const gain = beta * (rc2 + 9)
        return (
          ((12 * rb2) / (rb1 + rb2) + 0.74) * (gain / (gain + rf)) + (11.35 * rf) / (gain + rf) + (0.74 * rf * gain) / ((gain + rf) * rc1)
        )
      },
      low.map((v, i) => uniform(v, high[i] as number)),
      2048,
    )
    held(told, expected.S, expected.ST)
  })
  it("of a linear model of normal inputs, and of a product (sens-linear-normal, sens-linear-uniform, sens-product-two-uniform)", async () => {
    const { coefficients, sd } = row("sens-linear-normal").inputs as unknown as { coefficients: number[]; sd: number[] }
    const linear = await indices(
      (x) => x.reduce((s, v, i) => s + v * (coefficients[i] as number), 0),
      sd.map((deviation) => ({ type: "normal", mean: 0, deviation }) as const),
      2048,
    )
    held(linear, row("sens-linear-normal").expected.S, row("sens-linear-normal").expected.S)
    const even = row("sens-linear-uniform")
    const slopes = even.inputs.coefficients as number[]
    held(
      await indices(
        (x) => x.reduce((s, v, i) => s + v * (slopes[i] as number), 0),
        slopes.map(() => uniform(0, 1)),
        2048,
      ),
      even.expected.S,
      even.expected.S,
    )
    const product = row("sens-product-two-uniform").expected
    held(await indices(([u, v]) => (u as number) * (v as number), [uniform(0, 1), uniform(0, 1)], 2048), product.S, product.ST)
  })
})

describe("slopes", () => {
  it("are the derivatives of a function that has them, and elasticities its exponents", async () => {
    const power = made((x) => 3 * (x[0] as number) ** 2 * (x[1] as number) ** -0.5 + 0 * (x[2] as number), [2, 4, 5])
    const { outputs } = await sensitivity(power, { x: [2, 4, 5] }, { outputs: ["f"], samples: 0 })
    const by = Object.fromEntries(outputs[0]!.inputs.map((input) => [input.path, input]))
    expect(by["x.0"]?.slope).toBeCloseTo(6, 6)
    expect(by["x.0"]?.elasticity).toBeCloseTo(2, 6)
    expect(by["x.1"]?.elasticity).toBeCloseTo(-0.5, 6)
    expect(by["x.2"]).toMatchObject({ slope: 0, elasticity: 0, isSmooth: true, first: null, total: null })
    expect(outputs[0]!.inputs.map(({ path }) => path)).toEqual(["x.0", "x.1", "x.2"])
  })
  it("say where there is a kink, one side only, or nothing", async () => {
    const kink = made((x) => Math.abs((x[0] as number) - 1) + (x[0] as number), [1])
    const told = (await sensitivity(kink, { x: [1] }, { outputs: ["f"], samples: 0 })).outputs[0]!.inputs[0]!
    expect(told.isSmooth).toBe(false)
    expect(told.sentence).toContain("kink")
    const edge = made((x) => ((x[0] as number) > 1 ? null : 2 * (x[0] as number)), [1])
    const one = (await sensitivity(edge, { x: [1] }, { outputs: ["f"], samples: 0 })).outputs[0]!.inputs[0]!
    expect(one.slope).toBeCloseTo(2, 9)
    expect(one.isSmooth).toBeNull()
    const none = await sensitivity(
      made(() => null, [1]),
      { x: [1] },
      { outputs: ["f"], samples: 8 },
    )
    expect(none.outputs[0]).toMatchObject({ value: null, mean: null, inputs: [{ slope: null, first: null }] })
    expect(none.refused).toMatchObject([{ code: "no-value", example: { "x.0": expect.any(Number) } }])
    expect(none.refused[0]?.count).toBe(none.tried)
  })
  it("of a real solver agree with differences of its own answers, and are told in words", async () => {
    const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const
    const told = await sensitivity(voltageDrop, run, { outputs: ["drop"], vary: ["length", "current"], samples: 64 })
    const length = told.outputs[0]!.inputs.find(({ path }) => path === "length")!
    const drop = (metres: number) => voltageDrop({ ...run, length: metres }).drop
    expect(length.slope).toBeCloseTo((drop(3.001) - drop(2.999)) / 0.002, 6)
    expect(length.sentence).toMatch(/^100 mm more .*: \d.* more /)
    expect(told.outputs[0]!.sentence).toMatch(/moved most by|moved by/)
  })
})

describe("what the samples do not tell is not told", () => {
  const ask = (f: Parameters<typeof made>[0], samples: number) =>
    sensitivity(made(f, [1, 1]), { x: [1, 1] }, { outputs: ["f"], vary: ["x.0", "x.1"], samples })
  it("without samples or without answers nothing is said to vary or not", async () => {
    const slopes = (await ask((x) => x[0] as number, 0)).outputs[0]!
    expect(slopes.sentence).toContain("no samples were drawn")
    const none = (await ask((x) => ((x[0] as number) === 1 ? 1 : null), 64)).outputs[0]!
    expect(none.sentence).toContain("too few samples have an answer to tell what moves it")
    expect(none.sentence).toContain("Only 0 of 64 samples")
    const level = (await ask(() => 3, 64)).outputs[0]!
    expect(level.sentence).toBe("Value does not vary with these inputs.")
  })
  it("samples left out for want of an answer are told beside the shares", async () => {
    const half = (await ask((x) => ((x[0] as number) > 1.05 ? null : 2 * (x[0] as number) + (x[1] as number)), 512)).outputs[0]!
    expect(half.sentence).toMatch(/Only \d+ of 512 samples have an answer throughout; these alone count here/)
  })
  it("no share without an interval of numbers", async () => {
    for (let few = 0; few < 40; few++) {
      const told = await ask((x) => (((x[0] as number) * 31 + few / 40) % 1 < 0.55 ? (x[0] as number) + (x[1] as number) : null), 16)
      for (const { first, total } of told.outputs[0]!.inputs)
        for (const one of [first, total])
          if (one) for (const figure of Object.values(one)) expect(Number.isFinite(figure), JSON.stringify(one)).toBe(true)
    }
  })
  it("a temperature is varied by its usual range: a share of it would hang on where its zero lies", async () => {
    const run = { ...voltageDrop.example, conductorTemperature: "30 °C" } as typeof voltageDrop.example
    const told = await sensitivity(voltageDrop, run, { outputs: ["drop"], vary: ["conductorTemperature"], samples: 0 })
    const place = inputPlaces(voltageDrop, run)
      .filter(isNumberPlace)
      .find(({ path }) => path === "conductorTemperature")!
    const [from, to] = place.typical ?? [place.low, place.high]
    expect(told.outputs[0]!.inputs[0]!.high - 30).toBeCloseTo((to - from) / 10, 9)
  })
  it("paths given as nothing, or twice, are faults", async () => {
    for (const vary of [null, [], {}, ["length", "length"]])
      await expect(sensitivity(voltageDrop, voltageDrop.example, { vary: vary as never })).rejects.toMatchObject({
        issues: [{ path: ["vary"] }],
      })
  })
})

describe("what is asked", () => {
  it("is everything a base gives where nothing is said, ranked for every number of the result", async () => {
    const told = await sensitivity(voltageDrop, voltageDrop.example, { samples: 16 })
    expect(told.outputs.map(({ path }) => path)).toContain("drop")
    for (const { inputs } of told.outputs) {
      const totals = inputs.map(({ total }) => total?.value ?? 0)
      expect(totals).toEqual([...totals].sort((a, b) => b - a))
    }
  })
  it("is the same for one seed and another for another", async () => {
    const ask = (seed: number) => sensitivity(voltageDrop, voltageDrop.example, { outputs: ["drop"], samples: 32, seed })
    expect(await ask(3)).toEqual(await ask(3))
    expect(await ask(3)).not.toEqual(await ask(4))
  })
  it("is refused with every fault at once", async () => {
    const wrong = sensitivity(voltageDrop, voltageDrop.example, { outputs: ["drip" as "drop"], vary: ["lenght" as "length"], samples: -1 })
    await expect(wrong).rejects.toMatchObject({
      name: "InputError",
      issues: [{ path: ["outputs", 0] }, { path: ["vary", 0] }, { path: ["samples"] }],
    })
  })
})
