import { describe, expect, it } from "vitest"
import { InputError } from "../../src/solver/index.js"
import { type StudyProgress, studyWorker, sweep } from "../../src/study/index.js"
import * as wire from "../../src/wire/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { cone, stairs } from "./made.js"

const run = { current: "4 A", length: "3 m", awg: 20, sourceVoltage: "12 V" } as const

describe("sweep", () => {
  it("asks every combination, the last axis changing first, each as the solver itself answers", async () => {
    const table = await sweep(voltageDrop, run, { awg: [18, 20, 22], length: { from: "1 m", to: "300 cm", count: 3 } })
    expect(table.inputs.awg).toEqual([18, 18, 18, 20, 20, 20, 22, 22, 22])
    expect(table.inputs.length).toEqual([1, 2, 3, 1, 2, 3, 1, 2, 3])
    table.inputs.awg.forEach((awg, i) => {
      const alone = voltageDrop({ ...run, awg, length: table.inputs.length[i] as number })
      expect(table.outputs.drop[i]).toBe(alone.drop)
      expect(table.outputs.loadVoltage[i]).toBe(alone.loadVoltage)
    })
    expect(table.refused).toEqual(Array(9).fill(null))
    expect(table.columns.map((c) => c.role).slice(0, 3)).toEqual(["input", "input", "output"])
  })
  it("reaches into groups and lists and leaves the rest alone", async () => {
    const table = await sweep(cone, cone.example, { "rings.1.mass": ["1 kg", "2 kg"], "at.height": [1, 2] }, { outputs: ["sum", "each.1"] })
    expect(table.outputs.sum).toEqual([5 + 1 + 1, 5 + 1 + 2, 5 + 2 + 1, 5 + 2 + 2])
    expect(table.outputs["each.1"]).toEqual([1, 1, 2, 2])
    expect(Object.keys(table.outputs)).toEqual(["sum", "each.1"])
  })
  it("keeps refusals and faults between fields as codes, with the reason of the first", async () => {
    const table = await sweep(stairs, { x: 0, a: 1 }, { x: { from: -3, to: 3, count: 7 } })
    expect(table.refused).toEqual(["inconsistent", null, null, null, null, "too-steep", "too-steep"])
    expect(table.outputs.y).toEqual([null, -2, -1, 0, 1, null, null])
    expect(Object.keys(table.reasons).sort()).toEqual(["inconsistent", "too-steep"])
    expect(table.reasons["too-steep"]).toContain("too steep at 2")
  })
  it("spaces ranges evenly or by equal ratios, whole numbers once each, the ends exactly", async () => {
    const ratio = await sweep(stairs, { x: 1, a: 1 }, { a: { from: 0.3, to: 24.3, count: 5, spacing: "logarithmic" } })
    expect(ratio.inputs.a[0]).toBe(0.3)
    expect(ratio.inputs.a[4]).toBe(24.3)
    for (const [i, a] of ratio.inputs.a.entries()) expect(a).toBeCloseTo(0.3 * 3 ** i, 12)
    const down = await sweep(stairs, { x: 1, a: 1 }, { x: { from: 1, to: 0, count: 3 } })
    expect(down.inputs.x).toEqual([1, 0.5, 0])
    const whole = await sweep(stairs, { x: 1, a: 1 }, { n: { from: 2, to: 9 } })
    expect(whole.inputs.n).toEqual([2, 3, 4, 5, 6, 7, 8, 9])
    const few = await sweep(stairs, { x: 1, a: 1 }, { n: { from: 2, to: 4, count: 50 } })
    expect(few.inputs.n).toEqual([2, 3, 4])
    expect((await sweep(stairs, { x: 1, a: 1 }, { a: { from: 1, to: 2 } })).count).toBe(21)
  })
  it("names every fault of base, axes and outputs at once", async () => {
    const bad = sweep(
      stairs,
      { x: 1, a: 1 },
      // @ts-expect-error none of these are the solver's own
      { q: [1], a: { from: 0, to: 1, spacing: "logarithmic", steps: 3 }, x: [9, "1 kg"], n: [] },
      { outputs: ["z"] },
    )
    await expect(bad).rejects.toThrow(InputError)
    const error = (await bad.catch((e: unknown) => e)) as InputError
    expect(error.issues.map(({ code, path }) => `${code} ${path.join("/")}`)).toEqual([
      "unknown-key axes/q",
      "unknown-key axes/a/steps",
      "too-small axes/a/from",
      "too-large axes/x/0",
      "wrong-unit axes/x/1",
      "too-few axes/n",
      "unknown-key outputs/0",
    ])
    const base = (await sweep(stairs, { x: 99, a: 1 }, { a: [1] }).catch((e: unknown) => e)) as InputError
    expect(base.issues.map(({ path }) => path.join("/"))).toEqual(["base/x"])
  })
  it.each([
    [{ a: { from: 1, to: 1 } }, "inconsistent axes/a"],
    [{ a: { from: 1, to: 2, count: 1 } }, "wrong-type axes/a/count"],
    [{ a: { from: 1, to: 2, count: 2.5 } }, "wrong-type axes/a/count"],
    [{ x: { from: -1, to: 1, spacing: "logarithmic" } }, "inconsistent axes/x/spacing"],
    [{ a: { from: 1, to: 2, spacing: "odd" } }, "not-a-choice axes/a/spacing"],
    [{ a: 3 }, "wrong-type axes/a"],
    [{}, "too-few axes"],
    [null, "wrong-type axes"],
    [{ spare: [null] }, "wrong-type axes/spare/0"],
    [{ x: { from: -1, to: 1, count: 2000 }, a: { from: 1, to: 2, count: 2000 } }, "too-many axes"],
  ])("a faulty axis %o is told: %s", async (axes, fault) => {
    const error = (await sweep(stairs, { x: 1, a: 1 }, axes as never).catch((e: unknown) => e)) as InputError
    expect(error.issues.map(({ code, path }) => `${code} ${path.join("/")}`)).toEqual([fault])
  })
  it("a value that the rules between fields forbid with the base is told, not solved", async () => {
    const error = (await sweep(voltageDrop, run, { area: ["1 mm2"] }).catch((e: unknown) => e)) as InputError
    expect(error.issues).toMatchObject([{ code: "inconsistent" }])
  })
  it("is written as comma-separated values and as JSON", async () => {
    const table = await sweep(stairs, { x: 0, a: 1 }, { x: [-3, 0.1, 3], word: ["one, two"] })
    expect(table.csv()).toBe(
      'x (m),word,y (m),said,refused\r\n-3,"one, two",,,inconsistent\r\n0.1,"one, two",0.1,"one, two ""quoted""",\r\n3,"one, two",,,too-steep\r\n',
    )
    const plain = JSON.parse(JSON.stringify(table))
    expect(plain).toMatchObject({ solver: "stairs", count: 3, inputs: { x: [-3, 0.1, 3] }, refused: ["inconsistent", null, "too-steep"] })
    expect(Object.keys(plain)).toEqual(["solver", "count", "inputs", "outputs", "refused", "reasons"])
  })
  it("spread over a pool it answers the same, from plain data", async () => {
    const work = studyWorker({ ...wire, somethingElse: 3 })
    let tasks = 0
    const pool = { run: async (task: object) => structuredClone(work(structuredClone(task) as never)) as unknown, tasks: () => tasks++ }
    const axes = { length: { from: "1 m", to: "30 m", count: 40 }, awg: [14, 18, 22, 26] } as const
    const alone = await sweep(voltageDrop, run, axes)
    const spread = await sweep(voltageDrop, run, axes, { pool })
    expect(JSON.stringify(spread)).toBe(JSON.stringify(alone))
    expect(() => work({ solver: "somethingElse", base: {}, inputs: [], columns: [], outputs: [] })).toThrow(RangeError)
    expect(() => work({ solver: "toString", base: {}, inputs: [], columns: [], outputs: [] })).toThrow(RangeError)
  })
  it("stops at a signal with its reason, alone and over a pool, and tells how far it is", async () => {
    const stopped = AbortSignal.abort("enough")
    await expect(sweep(stairs, { x: 0, a: 1 }, { a: [1, 2] }, { signal: stopped })).rejects.toBe("enough")
    const control = new AbortController()
    const axes = { x: { from: -1, to: 1, count: 1000 }, a: { from: 1, to: 2, count: 900 } } as const
    const long = sweep(stairs, { x: 0, a: 1 }, axes, { signal: control.signal })
    setTimeout(() => control.abort("later"), 5)
    await expect(long).rejects.toBe("later")
    const other = new AbortController()
    const never = sweep(stairs, { x: 0, a: 1 }, { a: [1, 2] }, { signal: other.signal, pool: { run: () => new Promise(() => {}) } })
    other.abort("now")
    await expect(never).rejects.toBe("now")
    const told: StudyProgress[] = []
    await sweep(stairs, { x: 0, a: 1 }, { a: [1, 2, 3] }, { onProgress: (p) => told.push(p) })
    expect(told.at(-1)).toEqual({ done: 3, of: 3 })
  })
  it("a worker's own failure is the sweep's", async () => {
    const pool = { run: () => Promise.reject(new Error("thread lost")) }
    await expect(sweep(stairs, { x: 0, a: 1 }, { a: [1, 2] }, { pool })).rejects.toThrow("thread lost")
  })
})
