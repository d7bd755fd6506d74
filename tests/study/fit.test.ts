import { describe, expect, it } from "vitest"
import { normalQuantile, seeded } from "../../src/numeric/index.js"
import { fit as fitTo } from "../../src/study/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { each, made } from "./functions.js"

/** A line through points: f at x₂ is x₀ + x₁ x₂. */
const line = made((x) => (x[0] as number) + (x[1] as number) * (x[2] as number), [1, 1, 0])
const base = { x: [1, 1, 0] }
const reading = (at: number, value: number, deviation?: number) => ({
  of: "f" as const,
  value,
  at: { "x.2": at },
  ...(deviation === undefined ? {} : { deviation }),
})

describe("readings of a line", () => {
  // a textbook case by hand: y = 1, 3, 2, 5 at 0, 1, 2, 3 gives 1.1 + 1.1 x, residual squares 2.7
  const four = [
    [0, 1],
    [1, 3],
    [2, 2],
    [3, 5],
  ] as const
  it("give its least-squares values and their deviations as the closed forms do", async () => {
    const told = await fitTo(line, base, { vary: ["x.0", "x.1"], readings: four.map(([x, y]) => reading(x, y)) })
    const [a, b] = told.inputs
    expect(a?.value).toBeCloseTo(1.1, 6)
    expect(b?.value).toBeCloseTo(1.1, 6)
    expect(told.scatter).toBeCloseTo(Math.sqrt(2.7 / 2), 6)
    // s² (Σx²/n)/Sxx and s²/Sxx, Sxx = 5
    expect(a?.deviation).toBeCloseTo(Math.sqrt((1.35 * 14) / 4 / 5), 6)
    expect(b?.deviation).toBeCloseTo(Math.sqrt(1.35 / 5), 6)
    // Student's t of two degrees of freedom, 4.303 in any table
    expect(((b?.high as number) - (b?.low as number)) / 2 / (b?.deviation as number)).toBeCloseTo(4.303, 3)
    expect(told.freedom).toBe(2)
    expect(told.cannotTell).toEqual([])
    expect(told.readings.map(({ residual }) => residual)).toEqual([-0.1, 0.8, -1.3, 0.6].map((v) => expect.closeTo(v, 6)))
  })
  it("with known deviations weigh by them, and say when they lie farther off than that", async () => {
    const told = await fitTo(line, base, { vary: ["x.0", "x.1"], readings: four.map(([x, y]) => reading(x, y, 0.1)) })
    expect(told.inputs[1]?.deviation).toBeCloseTo(0.1 / Math.sqrt(5), 6)
    expect(told.scatter).toBeCloseTo(Math.sqrt(2.7 / 2) / 0.1, 4)
    expect(told.sentence).toContain("something else is at work")
  })
  it("hold the true values in as many of a hundred draws as they say", async () => {
    const random = seeded(11)
    let held = 0
    for (let n = 0; n < 100; n++) {
      const readings = [0, 1, 2, 3, 4, 5].map((x) => reading(x, 2 + 0.5 * x + 0.3 * normalQuantile(random())))
      const told = await fitTo(line, base, { vary: ["x.0", "x.1"], readings, starts: 0 })
      const slope = told.inputs[1]!
      if ((slope.low as number) <= 0.5 && (slope.high as number) >= 0.5) held++
    }
    // 95 of a hundred: fewer than 88 or more than 100 would come less than once in 400
    expect(held).toBeGreaterThanOrEqual(88)
  })
})

describe("what readings cannot tell", () => {
  it("is named: two inputs of which only the sum shows, one that shows nowhere", async () => {
    const same = await fitTo(line, base, { vary: ["x.0", "x.1"], readings: [reading(1, 3), reading(1, 3.1), reading(1, 2.9)] })
    expect(same.cannotTell).toMatchObject([{ paths: ["x.0", "x.1"] }])
    expect(same.cannotTell[0]?.sentence).toContain("cannot tell")
    expect(same.inputs[0]).toMatchObject({ deviation: null, low: null, high: null })
    const blind = await fitTo(line, base, { vary: ["x.0", "x.1"], readings: [reading(0, 3), reading(0, 3.1), reading(0, 2.9)] })
    expect(blind.cannotTell).toMatchObject([{ paths: ["x.1"], sentence: expect.stringContaining("do not show") }])
  })
  it("is named too where it shows so little that one is tied to the other", async () => {
    const near = await fitTo(line, base, { vary: ["x.0", "x.1"], readings: [reading(10, 21), reading(10.1, 21.3), reading(10.2, 21.1)] })
    expect(near.cannotTell).toMatchObject([{ paths: ["x.0", "x.1"] }])
  })
  it("as many readings as unknowns leave nothing to check with", async () => {
    const told = await fitTo(line, base, { vary: ["x.0", "x.1"], readings: [reading(0, 1), reading(1, 3)] })
    expect(told).toMatchObject({ freedom: 0, scatter: null })
    expect(told.inputs[0]?.deviation).toBeNull()
    expect(told.sentence).toContain("none is left to check with")
  })
  it("a value at the end of its range says that the best may lie beyond", async () => {
    const told = await fitTo(line, base, { vary: { "x.0": { from: 0, to: 2 } }, readings: [reading(0, 5), reading(0, 5.1)] })
    expect(told.inputs[0]).toMatchObject({ value: 2, isAtEnd: true })
    expect(told.inputs[0]?.sentence).toContain("may lie beyond")
  })
})

describe("readings of a real solver", () => {
  const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const
  it("give back the input they were made with, at several settings", async () => {
    const drop = (current: number) => voltageDrop({ ...run, length: 2.2, current }).drop
    const told = await fitTo(voltageDrop, run, {
      vary: ["length"],
      readings: [1, 2, 4].map((current) => ({ of: "drop" as const, value: drop(current), at: { current } })),
    })
    expect(told.inputs[0]?.value).toBeCloseTo(2.2, 6)
    expect(told.isSettled).toBe(true)
  })
  it("every fault of the arguments is told at once", async () => {
    const wrong = {
      vary: ["awg", "lenght"],
      readings: [
        { of: "drop", value: "3 kg" },
        { of: "drip", value: 1, deviation: 0 },
        { of: "drop", value: 1, at: { current: "-1 kg" } },
      ],
    } as never
    await expect(fitTo(voltageDrop, run, wrong)).rejects.toMatchObject({
      issues: expect.arrayContaining([
        expect.objectContaining({ path: ["vary", 1] }),
        expect.objectContaining({ path: ["readings", 0, "value"] }),
        expect.objectContaining({ path: ["readings", 1, "of"] }),
        expect.objectContaining({ path: ["readings", 2, "at", "current"] }),
      ]),
    })
    const mixed = [
      { of: "drop" as const, value: 1, deviation: 0.1 },
      { of: "drop" as const, value: 1 },
    ]
    await expect(fitTo(voltageDrop, run, { vary: ["length"], readings: mixed })).rejects.toMatchObject({
      issues: [{ path: ["readings"], code: "inconsistent" }],
    })
    const twice = [{ of: "drop" as const, value: 1, at: { length: 1 } }]
    await expect(fitTo(voltageDrop, run, { vary: ["length"], readings: twice })).rejects.toMatchObject({ issues: [{ path: ["readings"] }] })
  })
  it("where nothing answers, that is the error", async () => {
    await expect(
      fitTo(
        made(() => null, [1]),
        { x: [1] },
        { vary: each(1, () => undefined) as never, readings: [{ of: "f", value: 1 }] },
      ),
    ).rejects.toMatchObject({
      name: "InputError",
      issues: [{ path: ["vary"], received: expect.stringContaining("There is no value here") }],
    })
  })
  it("settings and ranges that are none are faults, never passed over", async () => {
    const one = [{ of: "drop" as const, value: 1 }]
    for (const [wrong, path] of [
      [{ vary: ["length"], readings: [{ ...one[0], at: null }] }, ["readings", 0, "at"]],
      [{ vary: ["length"], readings: [{ ...one[0], at: { awg: null } }] }, ["readings", 0, "at", "awg"]],
      [{ vary: { length: "2 m" }, readings: one }, ["vary", "length"]],
      [{ vary: { length: { form: "1 m" } }, readings: one }, ["vary", "length"]],
      [{ vary: { length: { from: null, to: "3 m" } }, readings: one }, ["vary", "length", "from"]],
      [{ vary: ["length", "length"], readings: one }, ["vary"]],
    ] as const)
      await expect(fitTo(voltageDrop, run, wrong as never), JSON.stringify(wrong)).rejects.toMatchObject({
        name: "InputError",
        issues: [{ path }],
      })
  })
})
