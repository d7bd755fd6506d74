import ts from "typescript"
import { describe, expect, it } from "vitest"
import type { Edit, Fault } from "../../scripts/faults/fault.js"
import { interval, sample } from "../../scripts/faults/interval.js"
import { optionsOf } from "../../scripts/faults/options.js"
import { tally } from "../../scripts/faults/report.js"
import { marked, switched } from "../../scripts/faults/switches.js"
import type { Outcome } from "../../scripts/faults/trial.js"

describe("the interval of a share", () => {
  // R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine 17 (1998), table I, method 3 (score)
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %d in %d is the published one", (hits, of, low, high) => {
    const found = interval(hits, of)
    expect(Math.abs(found[0] - low)).toBeLessThanOrEqual(0.00005)
    expect(Math.abs(found[1] - high)).toBeLessThanOrEqual(0.00005)
  })

  it.each([
    [170, 200],
    [200, 200],
    [0, 200],
    [3, 7],
  ])("of %d in %d ends where the share lies 1.96 standard errors of the end away", (hits, of) => {
    for (const end of interval(hits, of)) {
      const off = Math.abs(hits / of - end)
      expect(Math.abs(off - 1.959963984540054 * Math.sqrt((end * (1 - end)) / of))).toBeLessThan(1e-12)
    }
  })
})

describe("a sample", () => {
  const items = Array.from({ length: 10 }, (_, i) => i)
  it("is the same for the same seed and another for another, without repeats", () => {
    expect(sample(items, 4, 7)).toEqual(sample(items, 4, 7))
    expect(sample(items, 10, 7)).not.toEqual(sample(items, 10, 8))
    expect(new Set(sample(items, 10, 7)).size).toBe(10)
    expect(sample(items, 99, 7)).toHaveLength(10)
  })
  it("takes each item equally often", () => {
    const counts = items.map(() => 0)
    const draws = 4000
    for (let seed = 0; seed < draws; seed++) for (const item of sample(items, 3, seed)) (counts[item] as number)++
    // 3 in 10 of the draws, give or take four standard deviations
    const deviation = Math.sqrt(draws * 0.3 * 0.7)
    for (const count of counts) expect(Math.abs(count - draws * 0.3)).toBeLessThan(4 * deviation)
  })
})

describe("the 5 % that may be argued equivalent", () => {
  const outcome = (n: number, end: Outcome["end"]): Outcome => ({
    fault: { n, id: `${n}`, key: `k${n}`, file: "f", line: 1, kind: "sign", before: "", after: "", edits: [] },
    end,
    by: null,
    failure: null,
    time: 0,
  })
  const outcomes = Array.from({ length: 40 }, (_, i) => outcome(i, i < 30 ? "killed" : "survived"))
  const argued = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => ({ fault: `k${from + i}`, reason: "" }))
  it("leave the base", () => {
    expect(tally(outcomes, argued(30, 32))).toMatchObject({ tried: 40, killed: 30, equivalent: 2, beyond: 0, share: 30 / 38 })
  })
  it("and no more than 5 %, however many are argued", () => {
    expect(tally(outcomes, argued(30, 40))).toMatchObject({ equivalent: 2, beyond: 8, share: 30 / 38 })
  })
  it("a fault that is noticed counts as noticed, whatever is argued", () => {
    expect(tally(outcomes, argued(0, 10))).toMatchObject({ killed: 30, equivalent: 0, share: 30 / 40 })
  })
})

describe("switches in a text", () => {
  const fault = (n: number, ...edits: Edit[]): Fault => ({
    n,
    id: "",
    key: "",
    file: "",
    line: 1,
    kind: "sign",
    before: "",
    after: "",
    edits,
  })
  const at = (text: string, part: string, form: Edit["form"], to: string, from = 0): Edit => {
    const start = text.indexOf(part, from)
    return { start, end: start + part.length, form, text: to, isPure: form !== "effect" }
  }
  const js = (text: string) => ts.transpileModule(text, { compilerOptions: { target: ts.ScriptTarget.ES2022 } }).outputText
  const run = (text: string, n: number): unknown => new Function("$n", js(text))(n)

  const text =
    "const a = 6, b = 2\nlet c = a - b * 2\nc += b\nconst list = [a, b]\nif (a > 9) return [0]\nreturn [c, list.length, { a, b }.a]"
  const faults = [
    fault(1, at(text, "a - b * 2", "expression", "a + b * 2")),
    fault(2, at(text, "b * 2", "expression", "b")),
    fault(3, at(text, "c += b", "effect", "c -= b")),
    fault(4, at(text, "b", "element", "", text.indexOf("[a, b]"))),
    fault(5, at(text, "a", "shorthand", "b", text.indexOf("{ a")), at(text, "b", "shorthand", "a", text.indexOf("{ a"))),
    fault(6, at(text, "a > 9", "expression", "a > 5"), at(text, "return [0]", "statement", "")),
  ]
  it.each([
    [0, [4, 2, 6]],
    [1, [12, 2, 6]],
    [2, [6, 2, 6]],
    [3, [0, 2, 6]],
    [4, [4, 1, 6]],
    [5, [4, 2, 2]],
    [6, [4, 2, 6]],
  ])("give with fault %d what its text says", (n, expected) => expect(run(switched(text, faults), n)).toEqual(expected))

  it("mark what would make a difference, and only that, without making one", () => {
    const hits = new Uint8Array(20)
    const marks = marked(text, [...faults, fault(7, at(text, "b * 2", "expression", "b + 2"))], [])
    expect(new Function("$h", js(marks))(hits)).toEqual([4, 2, 6])
    // 7: with b = 2, b + 2 is b * 2
    expect([...hits.keys()].filter((n) => hits[n])).toEqual([1, 2, 3, 4, 5, 6])
  })
})

describe("the command line", () => {
  it("asks for all of the three kinds that may not survive when --all stands alone", () => {
    expect(optionsOf(["wire", "--all"])).toMatchObject({ modules: ["wire"], all: ["caution", "refusal", "between"] })
    expect(optionsOf(["--all", "wire"])).toMatchObject({ modules: ["wire"], all: ["caution", "refusal", "between"] })
    expect(optionsOf(["--all", "sign,cell", "wire"])).toMatchObject({ modules: ["wire"], all: ["sign", "cell"] })
  })
  it("names what it cannot read", () => {
    expect(() => optionsOf(["wire", "--sample", "many"])).toThrow("--sample many")
    expect(() => optionsOf(["wire", "--kind", "typo"])).toThrow("no kind typo")
  })
})
