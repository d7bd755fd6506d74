import { inspect } from "node:util"
import { describe, expect, it } from "vitest"
import {
  type Band,
  bandField,
  display,
  displayNumber,
  fieldsOf,
  InputError,
  isNoSolution,
  NoSolutionError,
  optionsFrom,
  refuse,
  solver,
} from "../../src/solver/index.js"
import { lantern } from "./lantern.js"

const lit = lantern({ height: "400 mm", air: 36, hung: true, lamps: [{ at: "2 in", lumens: 200 }, { at: 0 }], pole: { length: 2 } })

describe("a band", () => {
  const made = solver<{ n: number }, { readonly push: Band | null; readonly share: Band }>(
    "made",
    "made",
    ({ n }) => ({ push: n > 0 ? { low: n, high: 2 * n } : null, share: { low: 0.25, high: 0.5 } }),
    () => ({
      input: { n: { kind: "number", symbol: "n", label: "n", min: 0, max: 1e6 } },
      output: {
        push: bandField("force", "push", { symbols: ["F_l", "F_h"] }),
        share: bandField("ratio", "share", { labels: ["share, rested", "share, tired"], unit: "%" }),
      },
      example: { n: 1 },
      formulae: [],
      sources: [],
    }),
  )
  it("is printed with a label of its own at each end, and not where there is none", () => {
    expect(display(made({ n: 10 })).split("\n")).toEqual([
      "push",
      "  push, minimum  10 N",
      "  push, maximum  20 N",
      "share",
      "  share, rested  25 %",
      "  share, tired   50 %",
    ])
    expect(display(made({ n: 0 }))).not.toContain("push")
  })
})

describe("a result", () => {
  it("is frozen all through, parts of a table included", () => {
    const walk = (value: unknown): void => {
      if (typeof value !== "object" || value === null) return
      expect(Object.isFrozen(value)).toBe(true)
      for (const part of Object.values(value)) walk(part)
    }
    walk(lit)
    expect(() => {
      ;(lit as { volume: number }).volume = 1
    }).toThrow(TypeError)
  })
  it("is frozen below a part that came frozen", () => {
    const inner = { deep: { list: [1] } }
    const made = solver<{ n: number }, { readonly at: { readonly deep: { readonly list: readonly number[] } } }>(
      "made",
      "made",
      () => ({ at: Object.freeze(inner) }),
      () => ({
        input: { n: { kind: "number", symbol: "n", label: "n", min: -1e6, max: 1e6 } },
        output: {
          at: {
            kind: "group",
            label: "at",
            fields: {
              deep: { kind: "group", label: "deep", fields: { list: { kind: "list", label: "l", of: { kind: "number", label: "l" } } } },
            },
          },
        },
        example: { n: 1 },
        formulae: [],
        sources: [],
      }),
    )
    expect(Object.isFrozen(made({ n: 1 }).at.deep.list)).toBe(true)
  })
  it("is plain data: JSON gives it back, and nothing else shows", () => {
    expect(JSON.parse(JSON.stringify(lit))).toEqual({
      volume: 0.4 ** 3 * 0.5,
      air: 36,
      heights: [0.1, 0.2],
      lamps: [
        { at: 2 * 0.0254, bright: true },
        { at: 0, bright: false },
      ],
      pole: { length: 2 },
      note: "moth",
      hung: true,
      cautions: [
        {
          code: "hot",
          severity: "warning",
          message: "Too hot for wax.",
          source: { title: "common practice, no source", verified: "practice" },
          values: {},
        },
      ],
    })
    expect(Object.keys(lit)).toEqual(["volume", "air", "heights", "lamps", "pole", "note", "hung", "cautions"])
    expect(structuredClone({ ...lit })).toEqual({ ...lit })
  })
  it("prints with units, in Node's console as through display()", () => {
    expect(display(lit).split("\n")).toEqual([
      "volume            32 L",
      "air               36 °C",
      "heights  100 mm, 200 mm",
      "lamps (2)",
      "       at  bright",
      "  50.8 mm     yes",
      "     0 mm      no",
      "pole",
      "  length  2 m",
      "note              moth",
      "hung from a line  yes",
      "",
      "warning: Too hot for wax. [common practice, no source]",
    ])
    expect(inspect(lit)).toBe(display(lit))
    expect(fieldsOf(lit)).toBe(lantern.output)
  })
  it("prints nothing for a group that is not there, and shortens long lists", () => {
    const text = display(lantern({ height: 0.4 }))
    expect(text).not.toContain("pole")
    const [first, ...others] = display(
      solver<{ n: number }, { readonly list: readonly number[]; readonly none: readonly number[]; readonly x: number | null }>(
        "long",
        "long",
        () => ({ list: Array.from({ length: 30 }, (_, i) => i / 1000), none: [], x: null }),
        () => ({
          input: { n: { kind: "number", symbol: "n", label: "n", min: -1e6, max: 1e6 } },
          output: {
            list: { kind: "list", label: "list", of: { kind: "length", label: "l", unit: "mm" } },
            none: { kind: "list", label: "none of", of: { kind: "length", label: "l" } },
            x: { kind: "length", label: "x" },
          },
          example: { n: 1 },
          formulae: [],
          sources: [],
        }),
      )({ n: 1 }),
    ).split("\n")
    expect(first).toBe("list  0 mm, 1 mm, 2 mm, …, 29 mm")
    expect(others).toEqual(["none of  none", "x  —"])
  })
  it("prints lists of entries as tables, long ones by their beginning and end, what is too wide entry by entry", () => {
    const rows = (n: number, note: string) =>
      solver<{ n: number }, { readonly legs: readonly { readonly foot: string; readonly long: number }[] }>(
        "legs",
        "legs",
        () => ({ legs: Array.from({ length: n }, (_, i) => ({ foot: `${i + 1}${note}`, long: (i + 8) / 1000 })) }),
        () => ({
          input: { n: { kind: "number", symbol: "n", label: "n", min: 0, max: 10 } },
          output: {
            legs: {
              kind: "list",
              label: "legs",
              of: {
                kind: "group",
                label: "leg",
                fields: { foot: { kind: "text", label: "foot" }, long: { kind: "length", label: "long", unit: "mm" } },
              },
            },
          },
          example: { n: 1 },
          formulae: [],
          sources: [],
        }),
      )({ n: 1 })
    expect(display(rows(3, ""))).toBe(["legs (3)", "  foot   long", "  1      8 mm", "  2      9 mm", "  3     10 mm"].join("\n"))
    const long = display(rows(40, "")).split("\n")
    expect(long).toHaveLength(12)
    expect(long.slice(-3)).toEqual(["  8     15 mm", "  … 31 more, then", "  40    47 mm"])
    expect(display(rows(12, "")).split("\n")).toHaveLength(14)
    expect(display(rows(1, "x".repeat(120)))).toMatch(/^legs \(1\)\n {2}1\.\n {5}foot {2}1x+\n {5}long {2}8 mm$/)
    expect(display(rows(0, ""))).toBe("legs (0)")
  })
  it("of anything else is not displayed", () => {
    expect(() => display({ volume: 1 })).toThrow(TypeError)
    expect(fieldsOf({})).toBeUndefined()
  })
  it("shows numbers by their kind and unit", () => {
    expect(displayNumber({ kind: "number" }, 1234567)).toBe("1234567")
    expect(displayNumber({ kind: "angle" }, Math.PI)).toBe("180°")
    expect(displayNumber({ kind: "length", unit: "in" }, 0.0254)).toBe("1 in")
  })
})

describe("a refusal", () => {
  const asked = () => lantern({ height: 3 })
  it("is thrown by the call, returned by the kernel and by attempt()", () => {
    expect(asked).toThrow(NoSolutionError)
    const bare = lantern.si(lantern.read({ height: 3 }))
    expect(isNoSolution(bare)).toBe(true)
    const tried = lantern.attempt({ height: 3 })
    expect(!tried.ok && tried.error).toBeInstanceOf(NoSolutionError)
    expect(isNoSolution(lantern.si(lantern.read({ height: 1 })))).toBe(false)
    for (const other of [null, undefined, 3, "noSolution"]) expect(isNoSolution(other)).toBe(false)
  })
  it("is data: reason, sentence, where, how far off, the nearest that works", () => {
    try {
      asked()
      expect.unreachable()
    } catch (error) {
      const data = JSON.parse(JSON.stringify(error)) as object
      expect(data).toEqual({
        name: "NoSolutionError",
        solver: "lantern",
        noSolution: "too-tall",
        message: "lantern: A lantern of this height falls over by 1 m.",
        at: { height: 3 },
        shortBy: 1,
        nearest: { height: 2 },
        values: {},
      })
      expect(error instanceof Error && error.stack).toContain("NoSolutionError")
    }
    expect(refuse("a", "b", 1)).toEqual({ noSolution: "a", message: "b", shortBy: 1, at: {}, nearest: {}, values: {} })
  })
  it("names a value that really works", () => {
    const tried = lantern.attempt({ height: 3 })
    if (tried.ok || tried.error instanceof InputError) throw new Error("not refused")
    expect(lantern.attempt({ height: tried.error.nearest.height }).ok).toBe(true)
  })
})

describe("a solver", () => {
  it("is one frozen function that carries its description", () => {
    expect(lantern.name).toBe("lantern")
    expect(Object.isFrozen(lantern)).toBe(true)
    expect(lantern.title).toBe("How much a lantern holds")
  })
  it("cannot be changed through its description", () => {
    const list = lantern.input.lamps.default as { at: string }[]
    expect(() => list.push({ at: "80 mm" })).toThrow(TypeError)
    expect(() => Object.assign(list[0]!, { at: "80 mm" })).toThrow(TypeError)
    expect(lantern({ height: 0.4 }).lamps).toEqual([{ at: 0.05, bright: false }])
    const { fields } = lantern.input.pole as unknown as { fields: { grip: { default: string } } }
    expect(() => Object.assign(fields.grip, { default: "1 m" })).toThrow(TypeError)
    expect(() => Object.assign(lantern.example, { height: 1 })).toThrow(TypeError)
    const printed = fieldsOf(lantern({ height: 0.4 }))!
    expect(() => Object.assign(printed.volume!, { unit: "mL" })).toThrow(TypeError)
  })
  it("validates as a Standard Schema does", () => {
    const standard = lantern["~standard"]
    expect([standard.version, standard.vendor]).toEqual([1, "alula"])
    expect(standard.validate({ height: "16 in" })).toEqual({ value: lantern.read({ height: "16 in" }) })
    const refused = standard.validate({ height: "16 kg", pole: { length: "x" } })
    expect("issues" in refused && refused.issues.map((i) => i.path)).toEqual([["height"], ["pole", "length"]])
  })
  it("asks the cross-field check only about inputs whose fields are sound", () => {
    const tried = lantern.attempt({ height: "4 kg", pole: { length: 0.01 } })
    expect(!tried.ok && (tried.error as InputError).issues.map((i) => i.code)).toEqual(["wrong-unit"])
  })
  it("makes options of a table's keys", () => {
    expect(optionsFrom({ a: 1, b: 2 })).toEqual({ a: "a", b: "b" })
    expect(optionsFrom({ a: 1, b: 2 }, (k) => k.toUpperCase())).toEqual({ a: "A", b: "B" })
  })
})
