import { describe, expect, it } from "vitest"
import type { Length, Temperature, Voltage } from "../../src/quantity/index.js"
import { caution, InputError, NoSolutionError, refuse, type Solver, type Step, solver } from "../../src/solver/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import {
  type WorkedStep,
  working,
  workingHtml,
  workingMarkdown,
  workingOfSi,
  workingText,
  worksheetHtml,
  worksheetMarkdown,
} from "../../src/working/index.js"

interface CubeInput {
  /** Edge. */
  edge: Length
  /** Edges of further cubes. */
  others?: readonly { edge: Length }[]
  /** Voltage, where there is one. */
  voltage?: Voltage | null
  /** Air. */
  air?: Temperature
  /** What it is made of. */
  made?: "card" | "foil"
  /** Whether it is open at the top. */
  open?: boolean
}
interface Cube {
  readonly volume: number
  readonly edge: number
}
type CubeStep = Step<Parameters<Solver<CubeInput, Cube>["si"]>[0], Cube>

/** A solver made for a test, with the formulae given: a cube, and the edge back from its volume. */
const cube = (formulae: readonly CubeStep[]): Solver<CubeInput, Cube> =>
  solver<CubeInput, Cube>(
    "cube",
    "What a cube holds",
    ({ edge }) => (edge > 1 ? refuse("too-big", "More than a metre.", edge - 1) : { volume: edge ** 3, edge: Math.cbrt(edge ** 3) }),
    () => ({
      input: {
        edge: { kind: "length", symbol: "a", label: "edge", min: 0, max: 1000 },
        others: {
          kind: "list",
          label: "others",
          min: 0,
          max: 9,
          of: {
            kind: "group",
            label: "cube",
            fields: { edge: { kind: "length", symbol: "b", label: "edge of another", min: 0, max: 1000 } },
          },
          default: [{ edge: "10 mm" }, { edge: "20 mm" }],
        },
        voltage: { kind: "voltage", symbol: "U", label: "voltage", min: 0, max: 1000, default: null },
        air: { kind: "temperature", symbol: "T", label: "air", min: 0, max: 1000, default: 20 },
        made: { kind: "choice", label: "made of", options: { card: "card", foil: "foil" }, default: "card" },
        open: { kind: "flag", label: "open", default: false },
      },
      output: { volume: { kind: "volume", symbol: "V", label: "volume" }, edge: { kind: "length", symbol: "c", label: "edge" } },
      example: { edge: "200 mm" },
      formulae,
      sources: [{ title: "made for a test", verified: "practice" }],
    }),
  )

const volume: CubeStep = {
  symbol: "V",
  is: "a^3",
  meaning: "volume of the cube",
  source: { title: "Elements", by: "Euclid", where: "book XI", verified: "practice" },
}
const stepOf = (steps: readonly WorkedStep[], symbol: string) => steps.find((s) => s.symbol === symbol) as WorkedStep

describe("the working of a voltage drop", () => {
  // 20 AWG by ASTM B258: d = 0.127 mm · 92^((36 − 20)/39), A = π/4 · d²; copper by IEC 60028: 1/58 Ω·mm²/m, 0.00393 1/K
  const d = 0.127e-3 * 92 ** (16 / 39)
  const area = (Math.PI / 4) * d ** 2
  const warm = (1 / 58e6 / area) * (1 + 0.00393 * 30)
  const { title, steps, values } = working(voltageDrop, {
    current: "4 A",
    length: "1.2 m",
    awg: 20,
    conductorTemperature: "50 degC",
    contacts: 4,
    sourceVoltage: "12 V",
  })

  it("gives each step the value reckoned by hand", () => {
    expect(title).toBe("How much voltage a run of wire loses")
    const byHand = {
      I: 4,
      L: 1.2,
      T: 50,
      n: 2,
      k: 4,
      R_1: 0.005,
      U_s: 12,
      A: area,
      R_w: warm * 2 * 1.2,
      R_c: 0.02,
      R: warm * 2.4 + 0.02,
      U: 4 * (warm * 2.4 + 0.02),
      u: (4 * (warm * 2.4 + 0.02)) / 12,
      U_l: 12 - 4 * (warm * 2.4 + 0.02),
      P: 16 * (warm * 2.4 + 0.02),
    }
    for (const [symbol, value] of Object.entries(byHand)) expect(values[symbol], symbol).toBeCloseTo(value, 10)
    // a figure to hold the hand itself to: 33.31 Ω/km, the handbooks' value for 20 AWG copper at 20 °C
    expect((1 / 58e6 / area) * 1000).toBeCloseTo(33.31, 1)
  })
  it("says what each step is: formula, numbers put in, value with its unit, source, TeX", () => {
    expect(stepOf(steps, "U")).toEqual({
      kind: "formula",
      meaning: "voltage lost",
      symbol: "U",
      formula: "I * R",
      numbers: `(4 A) * (${Number((warm * 2.4 + 0.02).toPrecision(5))} Ω)`,
      taken: "I * R",
      operands: { I: "(4 A)", R: `(${Number((warm * 2.4 + 0.02).toPrecision(5))} Ω)` },
      inSi: "0.4375 V",
      value: values.U,
      shown: "0.4375 V",
      quantity: "voltage",
      source: null,
      tex: expect.stringMatching(/^ ?U = +I\\cdot R$/),
    })
    expect(stepOf(steps, "I")).toMatchObject({ kind: "given", formula: "", numbers: "", shown: "4 A", tex: "" })
    const formulae = steps.filter((s) => s.kind === "formula")
    expect(formulae.map((s) => s.symbol)).toEqual(expect.arrayContaining(["A", "R_w", "R_c", "R", "U", "u", "U_l", "P"]))
    expect(stepOf(steps, "A").tex, "an area, no ampere").toMatch(/^A = /)
    expect(stepOf(steps, "T").inSi).toBe("323.15 K")
    for (const step of formulae) {
      expect(step.tex.length, step.symbol).toBeGreaterThan(step.symbol.length)
      expect(step.numbers).not.toMatch(/\b[A-Z]_|undefined|NaN|[\uE000\uE001]/)
    }
    expect(stepOf(steps, "r").numbers, "temperatures stand in kelvins").toContain("323.15 K")
    expect(steps.some((s) => s.source?.includes("B258"))).toBe(true)
  })
  it("leaves out the steps whose condition does not hold", () => {
    const bare = working(voltageDrop, { current: 4, length: 1.2, area: "0.5 mm2" })
    expect(bare.steps.map((s) => s.symbol)).not.toContain("U_l")
    expect(bare.values).not.toHaveProperty("u")
  })
})

describe("steps", () => {
  it("take lists as arrays, choices, flags and presence as conditions", () => {
    const made = cube([
      volume,
      { symbol: "W", is: "sum(map(b, f(x) = x^3))", meaning: "all others", kind: "volume" },
      { symbol: "E", is: "2 .* b", meaning: "each other, doubled", kind: "length" },
      { symbol: "F", is: "a", meaning: "only for foil", kind: "length", when: 'equalText(made, "foil")' },
      { symbol: "G", is: "a", meaning: "only when open", kind: "length", when: "open" },
      { symbol: "H", is: "U", meaning: "only with a voltage", kind: "voltage", when: "has_voltage" },
      {
        symbol: "N",
        kind: "number",
        meaning: "how many others",
        given: ({ others }) => others.length,
        source: { title: "counted", verified: "practice" },
      },
    ])
    const plain = working(made, { edge: "200 mm" })
    expect(plain.values.W).toBeCloseTo(1e-6 + 8e-6, 15)
    expect(plain.values.E).toEqual([0.02, 0.04])
    expect(stepOf(plain.steps, "E").shown).toBe("[20 mm, 40 mm]")
    expect(plain.values.N).toBe(2)
    expect(["F", "G", "H"].filter((s) => s in plain.values)).toEqual([])
    const all = working(made, { edge: "200 mm", made: "foil", open: true, voltage: "9 V" })
    expect(all.values).toMatchObject({ F: 0.2, G: 0.2, H: 9 })
  })
  it("reckon temperatures in kelvins and give them back in °C", () => {
    const made = cube([volume, { symbol: "T_2", is: "T * 1.1", meaning: "a tenth hotter", kind: "temperature" }])
    const { values, steps } = working(made, { edge: 0.1 })
    expect(values.T_2).toBeCloseTo(293.15 * 1.1 - 273.15, 9)
    expect(stepOf(steps, "T_2").numbers).toBe("(293.15 K) * 1.1")
  })
  it("take an unknown from the solver and prove it by its equation", () => {
    const made = cube([volume, { solved: "c", meaning: "edge back" }, { left: "c^3", right: "V", meaning: "the edge gives the volume" }])
    const { steps } = working(made, { edge: "200 mm" })
    expect(steps.filter((s) => s.kind === "solved")).toMatchObject([{ symbol: "c", value: 0.2, shown: "200 mm" }])
    const proof = steps.at(-1) as WorkedStep
    expect(proof).toMatchObject({ kind: "equation", formula: "c^3 = V", symbol: "" })
    expect(proof.value).toBeLessThan(1e-15)
    expect(proof.tex).toContain("=")
    const wrong = working(cube([volume, { solved: "c", meaning: "edge back" }, { left: "c^3", right: "2 * V", meaning: "not so" }]), {
      edge: 0.2,
    })
    expect(wrong.steps.at(-1)?.value).toBeCloseTo(0.5, 12)
  })
  it("fail where an equation's sides differ in dimension", () => {
    const made = cube([volume, { solved: "c", meaning: "edge back" }, { left: "c^2", right: "V", meaning: "nonsense" }])
    expect(() => working(made, { edge: 0.2 })).toThrow(/[Uu]nits do not match/)
  })
})

describe("independence from the kernel", () => {
  it("shows a wrong formula: the working does not follow the kernel", () => {
    const { values } = working(cube([{ ...volume, is: "a^3 * 1.001" }]), { edge: "200 mm" })
    expect(values.V).toBeCloseTo(0.008 * 1.001, 12)
    expect(Math.abs((values.V as number) / 0.008 - 1)).toBeGreaterThan(1e-4)
  })
  it.each([
    ["a power too few", "a^2"],
    ["a number where a volume is due", "3"],
    ["a voltage where a volume is due", "U"],
  ])("stops at a wrong dimension: %s", (_, is) => {
    expect(() => working(cube([{ ...volume, is }]), { edge: 0.2, voltage: 9 })).toThrow()
  })
  it("stops at a unit where a plain number is due, and at sums of unlike quantities", () => {
    expect(() => working(cube([volume, { symbol: "x", is: "a", meaning: "no number", kind: "number" }]), { edge: 0.2 })).toThrow(TypeError)
    expect(() => working(cube([{ ...volume, is: "a + V_0", kind: "volume" }]), { edge: 0.2 })).toThrow()
    expect(() => working(cube([{ symbol: "y", is: "a + U", meaning: "nonsense", kind: "length" }]), { edge: 0.2, voltage: 9 })).toThrow(
      /[Uu]nits do not match/,
    )
  })
  it("takes a quotient of like units for a plain number", () => {
    expect(
      working(cube([volume, { symbol: "x", is: "a / (10 mm)", meaning: "edges", kind: "number" }]), { edge: 0.2 }).values.x,
    ).toBeCloseTo(20, 12)
  })
})

describe("an input that has no working", () => {
  const made = cube([volume])
  it("fails as the solver does", () => {
    expect(() => working(made, { edge: "3 kg" as never })).toThrow(InputError)
    expect(() => working(made, { edge: 3 })).toThrow(NoSolutionError)
    expect(() => workingOfSi(made, made.read({ edge: 3 }))).toThrow(/More than a metre/)
  })
})

describe("rendering", () => {
  const made = cube([volume, { solved: "c", meaning: "edge back" }, { left: "c^3", right: "V", meaning: "the edge gives the volume" }])
  const worked = working(made, { edge: "200 mm" })
  it("as text: given values, then numbered steps with formula, numbers, value and source", () => {
    const lines = workingText(worked).split("\n")
    expect(lines[0]).toBe("What a cube holds")
    expect(lines[1]).toBe("Given")
    expect(lines[2]).toBe("  a = 200 mm = 0.2 m  (edge)")
    const from = lines.indexOf("Working")
    expect(lines.slice(from + 1)).toEqual([
      "  1. volume of the cube",
      "     V = a^3",
      "       = (0.2 m) ^ 3",
      "       = 0.008 m³ = 8 L",
      "     source: Euclid: Elements, book XI",
      "  2. edge back",
      "     equation: c^3 = V",
      "     answer: c = 0.2 m = 200 mm  (found by iteration)",
      "     check: step 3",
      "  3. the edge gives the volume",
      "     c^3 = V",
      "     check: (0.2 m) ^ 3 = (0.008 m³)",
      "     comes to 0.008 m³ = 0.008 m³",
    ])
  })
  it("as Markdown: a table of what is given, a numbered list with TeX", () => {
    const text = workingMarkdown(worked)
    expect(text.split("\n")[0]).toBe("## What a cube holds")
    const rows = text.split("\n").filter((l) => l.startsWith("|"))
    expect(rows[2]).toBe("| $a$ | 200 mm = 0.2 m | edge |  |")
    expect(new Set(rows.map((r) => r.split("|").length))).toEqual(new Set([6]))
    expect(text.match(/^\d+\. /gm)).toEqual(["1. ", "2. ", "3. "])
    expect(text).toMatch(/\$\$.*V.* = .*a.*\^\{3\}\$\$/)
    // a formula, the equation of what was found by iteration, and the same with its check
    expect(text.match(/\$\$/g)).toHaveLength(6)
    expect(text).toContain("(Euclid: Elements, book XI)")
    // what stands under a numbered step is indented to stay part of it
    for (const line of text.slice(text.indexOf("1. ")).split("\n")) expect(line).toMatch(/^(\d+\. | {3}|\s*$)/)
  })
})

describe("for a class", () => {
  const runs = working(
    cube([
      volume,
      { symbol: "rho_w", kind: "length", meaning: "a tenth of a millimetre for each edge", is: "0.1 mm * a / (1 m)" },
      { symbol: "W", is: "made_so ? V : 2 * V".replace("made_so", 'equalText(made, "card")'), meaning: "what counts", kind: "volume" },
    ]),
    { edge: "200 mm" },
  )
  it("as HTML: symbols are variables, units upright, everything closed", () => {
    const html = workingHtml(runs)
    expect(html).toContain('<msup><mrow><mi mathvariant="italic">a</mi></mrow><mrow><mn>3</mn></mrow></msup>')
    expect(html).toContain('<msub><mi mathvariant="italic">ρ</mi><mi mathvariant="normal">w</mi></msub>')
    expect(html).toContain('<mi mathvariant="normal">mm</mi>')
    expect(html).toContain("<mtext>(0.2 m)</mtext>")
    for (const page of [html, worksheetHtml(runs)]) {
      const open: string[] = []
      for (const [, close, name] of page.matchAll(/<(\/?)([a-z0-9]+)[^>]*>/g)) {
        if (close) expect(open.pop()).toBe(name)
        else open.push(name as string)
      }
      expect(open).toEqual([])
    }
  })
  it("follows of a condition only what holds, and says of a unit what it is in SI", () => {
    expect(stepOf(runs.steps, "W")).toMatchObject({ taken: "V", numbers: "(0.008 m³)" })
    expect(workingText(runs)).toContain("       here V\n")
    expect(stepOf(runs.steps, "rho_w").numbers).toBe("0.1 (0.001 m) * (0.2 m) / (1 m)")
  })
  it("as a sheet: what is given stands, the numbers of the steps are left out, the answers stand apart", () => {
    for (const sheet of [worksheetMarkdown(runs), worksheetHtml(runs)]) {
      const [asked, answers] = sheet.split("Answers") as [string, string]
      expect(asked).toContain("200 mm = 0.2 m")
      expect(asked).toContain("V = a ^ 3 = (______ m) ^ 3 = ______ m³")
      expect(asked).not.toContain("0.008")
      expect(asked).not.toContain("8 L")
      expect(answers).toContain("V = (0.2 m) ^ 3 = 0.008 m³ = 8 L")
    }
  })
})

describe("what a kernel found on its way", () => {
  interface Found {
    root: number
  }
  let solved = 0
  const rootOf = (area: number) => {
    solved++
    return Math.sqrt(area)
  }
  const square = solver<{ area: number }, { readonly side: number }, string, string, Found>(
    "square",
    "The side of a square",
    ({ area }, trace) => {
      const root = rootOf(area)
      if (trace) trace.root = root
      return { side: root }
    },
    () => ({
      input: { area: { kind: "number", symbol: "A", label: "area", min: 0, max: 100 } },
      output: { side: { kind: "number", symbol: "s", label: "side" } },
      example: { area: 9 },
      formulae: [
        { symbol: "r", kind: "number", meaning: "root found", given: (_si, _out, { root }) => root as number },
        { symbol: "s", meaning: "side", is: "r" },
      ],
      sources: [{ title: "made for a test", verified: "practice" }],
      cautions: (_si, _out, { root }) => (root === 3 ? [caution("three", "note", "It is three.")] : []),
    }),
  )
  it("reaches its cautions and its formulae, so that it is found once", () => {
    solved = 0
    expect(square({ area: 9 }).cautions.map(({ code }) => code)).toEqual(["three"])
    expect(solved).toBe(1)
    expect(stepOf(working(square, { area: 9 }).steps, "r").value).toBe(3)
    expect(solved).toBe(2)
  })
})
