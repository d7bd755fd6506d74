// The generator of comments, piece by piece: what it says of a field, and how it parts a hand's words from its own.
import { describe, expect, it } from "vitest"
import { solverBlock } from "../../scripts/facts/block.js"
import { handwritten, linesOf, propertyComment, solverComment } from "../../scripts/facts/comment.js"
import { differences } from "../../scripts/facts/places.js"
import { inputFacts, resultFacts, tailOf } from "../../scripts/facts/tail.js"
import { type AnyField, type AnyOutField, bandField, commonPractice } from "../../src/solver/index.js"
import * as wire from "../../src/wire/index.js"
import { root } from "../helpers/packed.js"

const field = (rest: object): AnyField => ({ label: "thing", ...rest }) as AnyField
const quantity = (kind: string, rest: object) => field({ kind, symbol: "q", ...rest })

describe("the tail of an input", () => {
  it.each<[string, AnyField]>([
    ["[q; 0 to 100 Ω; default 5 mΩ]", quantity("resistance", { min: 0, max: 100, default: "5 mohm" })],
    ["[q; −50 to 200 °C; default 20 °C]", quantity("temperature", { min: -50, max: 200, default: 20 })],
    ["[q; −180° to 180°]", quantity("angle", { min: -Math.PI, max: "180 deg" })],
    ["[q; 0 to 90°]", quantity("angle", { min: 0, max: Math.PI / 2 })],
    ["[q; −45° to 0°]", quantity("angle", { min: "-45 deg", max: 0 })],
    ["[q; 1 mm to 100 m]", quantity("length", { min: "1 mm", max: 100 })],
    ["[q; above 0 to 1000 mm²; optional]", quantity("area", { above: 0, max: "1000 mm2", default: null })],
    ["[q; 0 to below 1]", quantity("ratio", { min: 0, below: 1 })],
    ["[q; 0.01 to 100 %; default 3 %]", quantity("ratio", { min: "0.01 %", max: 1, default: 0.03 })],
    ["[q; 0.1 to 10 W/(m²·K)]", quantity("heatTransferCoefficient", { min: 0.1, max: 10 })],
    ["[q; 1 to 10 in]", quantity("length", { min: 0.0254, max: 0.254, unit: "in" })],
    ["[n; whole 1 to 24; default 2]", field({ kind: "number", symbol: "n", whole: true, min: 1, max: 24, default: 2 })],
    ["[copper or aluminium; default copper]", field({ kind: "choice", options: { copper: "", aluminium: "" }, default: "copper" })],
    ["[one of 9 words]", field({ kind: "choice", options: Object.fromEntries([..."abcdefghi"].map((w) => [w, w])) })],
    ["[yes or no; default no]", field({ kind: "flag", default: false })],
    ["[text of 1 to 80 characters]", field({ kind: "text", min: 1, max: 80 })],
    ["[list of 1 to 5, each q, 0 to 2 A]", field({ kind: "list", of: quantity("current", { min: 0, max: 2 }), min: 1, max: 5 })],
    ["[list of at most 5; default none]", field({ kind: "list", of: field({ kind: "group", fields: {} }), max: 5, default: [] })],
    ["[group; optional]", field({ kind: "group", fields: {}, default: null })],
    ["[by its type: lamp or motor]", field({ kind: "variant", of: { lamp: { fields: {} }, motor: { fields: {} } } })],
  ])("%s", (text, given) => expect(tailOf(inputFacts(given))).toBe(text))
})

describe("the tail of a result", () => {
  it.each<[string, object]>([
    ["[U; V]", { kind: "voltage", symbol: "U" }],
    // a result is SI, whatever unit it is shown in
    ["[A; m²]", { kind: "area", symbol: "A", unit: "mm²" }],
    ["[W/(m·K)]", { kind: "thermalConductivity" }],
    ["[u; as a fraction]", { kind: "ratio", symbol: "u", unit: "%" }],
    ["[n]", { kind: "number", symbol: "n" }],
    ["[yes or no]", { kind: "flag" }],
    ["[list, each t, s]", { kind: "list", of: { kind: "time", symbol: "t", label: "" } }],
    ["[F_l to F_h; N]", bandField("force", "load", { symbols: ["F_l", "F_h"] })],
    ["[s]", bandField("time", "wait")],
    ["[group]", { kind: "group", fields: { low: { kind: "text", label: "from" }, high: { kind: "text", label: "to" } } }],
    ["[group]", { kind: "group", fields: { ...bandField("time", "wait").fields, usual: { kind: "time", label: "usual" } } }],
  ])("%s", (text, given) => expect(tailOf(resultFacts({ label: "thing", ...given } as AnyOutField))).toBe(text))
})

describe("a property's comment", () => {
  const written = (old: string | undefined) => propertyComment(old, "length one way", "[L; 0 to 2 m]", "  ")
  it("is the label where no hand wrote, and follows it when the label or a limit changes", () => {
    expect(written(undefined)).toBe("/** Length one way [L; 0 to 2 m] */")
    expect(written("/** Length of the run [L; 0 to 1 m] */")).toBe("/** Length one way [L; 0 to 2 m] */")
  })
  it("keeps a hand's sentence, with the tail behind it", () => {
    expect(written("/** From source to load. */")).toBe("/** From source to load. [L; 0 to 2 m] */")
    expect(written("/** From source to load. [L; 0 to 1 m] */")).toBe("/** From source to load. [L; 0 to 2 m] */")
    expect(handwritten("/** Uses `a[0]`. [L; 0 to 1 m] */")).toBe("Uses `a[0]`.")
  })
  it("breaks long lines, and is the same written twice", () => {
    const long = `/** ${"One word after another. ".repeat(12).trim()}\n   *\n   * A second paragraph. */`
    const once = written(long)
    expect(once.split("\n").every((line) => line.length <= 120)).toBe(true)
    expect(written(once)).toBe(once)
    expect(handwritten(once).split("\n\n")).toHaveLength(2)
  })
})

describe("a solver's comment", () => {
  const block = solverBlock({
    title: "Resistance of a run",
    input: { length: quantity("length", { label: "length", min: 0, max: 2 }) },
    either: [{ exactlyOne: ["area", "awg"] }, { together: ["a", "b"] }, { given: "c", needs: ["a"] }],
    output: { resistance: { kind: "resistance", symbol: "R", label: "resistance" } },
    formulae: [
      { symbol: "r", kind: "resistancePerLength", is: "1 ohm/m", meaning: "resistance per length" },
      { symbol: "R", is: "r * q", meaning: "resistance" },
    ],
    sources: [commonPractice, commonPractice],
  })
  const old = "/**\n * What it does.\n *\n * Formula: R = r·L.\n *\n * @function\n * @example\n * ```ts\n * use() // => 1\n * ```\n */"
  it("lists inputs with their rules, results, symbols between them, and each source once", () => {
    expect(block).toEqual([
      "**Inputs**",
      "- `length`: length [q; 0 to 2 m]",
      "- exactly one of `area` and `awg`",
      "- `a` and `b` only together",
      "- `c` only beside `a`",
      "",
      "**Results**",
      "",
      "`resistance`: resistance [R; Ω].",
      "",
      "**Symbols of the working**",
      "",
      "r: resistance per length [Ω/m].",
      "",
      "**Sources**",
      "- common practice, no source",
    ])
  })
  it("keeps what a hand wrote and the tags, and is the same written twice", () => {
    const once = solverComment(old, block)
    const lines = linesOf(once)
    expect(lines.slice(0, 5)).toEqual(["What it does.", "", "Formula: R = r·L.", "", "**Inputs**"])
    expect(lines.slice(-6)).toEqual(["", "@function", "@example", "```ts", "use() // => 1", "```"])
    expect(solverComment(once, block)).toBe(once)
    expect(linesOf(solverComment(once, ["**Inputs**", "- other"]))).toContain("- other")
    expect(linesOf(solverComment(once, ["**Inputs**", "- other"]))).not.toContain("- `length`: length [q; 0 to 2 m]")
  })
})

describe("a described field", () => {
  it("that is no property of the type is refused: the compiler does not compare what a function returns key by key", () => {
    const stray = { ...wire.voltageDrop.input, ribbon: { kind: "flag", label: "ribbon", default: false } }
    const voltageDrop = new Proxy(wire.voltageDrop, { get: (of, key) => (key === "input" ? stray : Reflect.get(of, key)) })
    expect(() => differences(root, { wire: { ...wire, voltageDrop } })).toThrow("wire.voltageDrop.ribbon is described")
  }, 60_000)
})
