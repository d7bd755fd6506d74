import { describe, expect, it } from "vitest"
import { type Kind, kinds, readQuantity } from "../../src/quantity/index.js"
import { InputError, type Issue, type IssueCode } from "../../src/solver/index.js"
import { lantern } from "./lantern.js"

/** The faults of an input. */
function faults(input: unknown): readonly Issue[] {
  const outcome = lantern.attempt(input)
  return outcome.ok ? [] : (outcome.error as InputError).issues
}
const codes = (input: unknown) => faults(input).map((i) => `${i.path.join(".")}: ${i.code}`)
const good = { height: 0.4 }

describe("each code of a fault", () => {
  const cases: Readonly<Record<IssueCode, readonly [input: unknown, path: readonly (string | number)[]]>> = {
    missing: [{}, ["height"]],
    "unknown-key": [{ ...good, hieght: 3 }, ["hieght"]],
    "wrong-type": [{ ...good, hung: "yes" }, ["hung"]],
    "wrong-unit": [{ height: "4 kg" }, ["height"]],
    "not-a-number": [{ height: "tall" }, ["height"]],
    "not-finite": [{ height: Number.NaN }, ["height"]],
    "too-small": [{ height: "99 mm" }, ["height"]],
    "too-large": [{ height: 3.01 }, ["height"]],
    "not-whole": [{ ...good, ribs: 3.5 }, ["ribs"]],
    "not-a-choice": [{ ...good, rib: "bone" }, ["rib"]],
    "too-few": [{ ...good, lamps: [] }, ["lamps"]],
    "too-many": [{ ...good, lamps: [{ at: 0 }, { at: 0 }, { at: 0 }] }, ["lamps"]],
    inconsistent: [{ ...good, pole: { length: "50 mm" } }, ["pole", "grip"]],
  }
  it.each(Object.entries(cases))("%s", (code, [input, path]) => {
    const [first, ...others] = faults(input)
    expect(others).toEqual([])
    expect(first).toMatchObject({ code, path })
    expect(first?.message).toBe(
      `${path.map((p, i) => (typeof p === "number" ? `[${p}]` : i ? `.${p}` : p)).join("")}: expected ${first?.expected}, received ${first?.received}`,
    )
  })
  it("wrong-type, at every sort of field", () => {
    for (const [key, values] of Object.entries({
      height: [true, {}, [], null, () => 1, 3n],
      ribs: ["3", null, {}, true, 3n],
      hung: [0, "true", null],
      name: [3, null, {}],
      lamps: [{}, "a", 3, null, new Set()],
      pole: ["a", 3, []],
    }))
      for (const value of values) expect(codes({ ...good, [key]: value }), `${key} ${typeof value}`).toEqual([`${key}: wrong-type`])
    for (const input of [undefined, null, 3, "text", [], true]) expect(faults(input)).toHaveLength(1)
  })
  it("not-finite, for NaN and both infinities, bare, in text and behind a fraction's bar", () => {
    for (const value of [
      Number.NaN,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      "1e999 m",
      "-1e999 m",
      "1/0 m",
      "0/0 m",
      { Meters: Number.NaN },
    ])
      expect(codes({ height: value })).toEqual(["height: not-finite"])
    expect(codes({ ...good, ribs: Number.POSITIVE_INFINITY })).toEqual(["ribs: not-finite"])
  })
})

describe("limits", () => {
  // a step of one unit in the last place outside, and the limit itself
  const up = (x: number) => x + 2 ** (Math.floor(Math.log2(Math.abs(x))) - 52)
  const down = (x: number) => x - 2 ** (Math.floor(Math.log2(Math.abs(x))) - 52)
  it.each([
    ["min in a unit", { height: 0.1 }, { height: down(0.1) }, "too-small"],
    ["min in the unit given", { height: "100 mm" }, { height: "99.99999999999 mm" }, "too-small"],
    ["max", { height: 1, air: 40 }, { height: 1, air: up(40) }, "too-large"],
    ["max in another unit", { height: 1, air: "313.15 K" }, { height: 1, air: "104.1 degF" }, "too-large"],
    ["min of a temperature", { height: 1, air: -30 }, { height: 1, air: -30.000001 }, "too-small"],
    ["above", { height: 1, skin: Number.MIN_VALUE }, { height: 1, skin: 0 }, "too-small"],
    ["below in a unit", { height: 1, skin: down(2) }, { height: 1, skin: "2000 g" }, "too-large"],
    ["above for a number", { height: 1, share: 1e-300 }, { height: 1, share: 0 }, "too-small"],
    ["below for a number", { height: 1, share: 1 - 2 ** -53 }, { height: 1, share: 1 }, "too-large"],
    ["min of a whole number", { height: 1, ribs: 3 }, { height: 1, ribs: 2 }, "too-small"],
    ["max of a whole number", { height: 1, ribs: 12 }, { height: 1, ribs: 13 }, "too-large"],
    ["fewest entries", { height: 1, lamps: [{ at: 0 }] }, { height: 1, lamps: [] }, "too-few"],
    ["most entries", { height: 1, lamps: [{ at: 0 }, { at: 1 }] }, { height: 1, lamps: [{ at: 0 }, { at: 1 }, { at: 2 }] }, "too-many"],
  ] as const)("%s: taken at the limit, refused a step outside", (_, inside, outside, code) => {
    expect(faults(inside)).toEqual([])
    expect(faults(outside).map((i) => i.code)).toEqual([code])
  })
  it("are named as the description writes them", () => {
    expect(faults({ height: "99 mm" })[0]).toMatchObject({ expected: "at least 100 mm", received: "'99 mm'" })
    expect(faults({ height: 1, skin: 2 })[0]).toMatchObject({ expected: "less than 2 kg", received: "2" })
  })
})

describe("an input's faults", () => {
  it("are all listed, in one error, in the order of the fields, unknown names last", () => {
    const input = {
      height: "4 kg",
      ribs: 2.5,
      rib: "bone",
      lamps: [{ at: -1 }, { lumens: Number.NaN, colour: "red" }],
      pole: { length: "x", grip: "3 A" },
      hue: 3,
    }
    expect(codes(input)).toEqual([
      "height: wrong-unit",
      "ribs: too-small",
      "rib: not-a-choice",
      "lamps.0.at: too-small",
      "lamps.1.at: missing",
      "lamps.1.lumens: not-finite",
      "lamps.1.colour: unknown-key",
      "pole.length: not-a-number",
      "pole.grip: wrong-unit",
      "hue: unknown-key",
    ])
    let thrown: unknown
    try {
      lantern(input as never)
    } catch (error) {
      thrown = error
    }
    expect(thrown).toBeInstanceOf(InputError)
    const error = thrown as InputError
    expect(error.name).toBe("InputError")
    expect(error.solver).toBe("lantern")
    expect(error.message).toContain("lantern: 10 faults in the input")
    for (const { message } of error.issues) expect(error.message).toContain(message)
    expect(error.message).toContain("lamps[1].lumens: expected a finite number, received NaN")
    expect(JSON.parse(JSON.stringify(error))).toEqual({ name: "InputError", solver: "lantern", issues: error.issues })
    expect(() => lantern.read(input)).toThrow(InputError)
  })
  it("say what was probably meant, within two edits and never by a wild guess", () => {
    const told = (key: string) => faults({ ...good, [key]: 1 })[0]?.expected
    expect(told("hieght")).toBe("a known name (did you mean 'height'?)")
    expect(told("Ribs")).toBe("a known name (did you mean 'ribs'?)")
    expect(told("lampss")).toBe("a known name (did you mean 'lamps'?)")
    expect(told("zz")).not.toContain("did you mean")
    expect(told("sprocket")).toBe("one of height, skin, air, ribs, share, rib, hung, name, lamps, pole")
  })
  it("do not come from keys that are there but undefined", () => {
    expect(faults({ ...good, hieght: undefined, skin: undefined, pole: undefined })).toEqual([])
    expect(lantern.read({ ...good, skin: undefined })).toEqual(lantern.read(good))
    expect(codes({ height: undefined })).toEqual(["height: missing"])
  })
  it("never take a name of Object's for a key, an option or a unit", () => {
    for (const name of ["toString", "constructor", "__proto__", "hasOwnProperty", "valueOf"]) {
      expect(codes(JSON.parse(`{ "height": 1, "${name}": 3 }`)), name).toEqual([`${name}: unknown-key`])
      expect(codes({ ...good, rib: name }), name).toEqual(["rib: not-a-choice"])
      expect(codes({ height: `3 ${name}` }), name).toEqual(["height: wrong-unit"])
    }
    // what an input inherits is not given
    expect(codes(Object.create({ height: 1 }))).toEqual(["height: missing"])
    expect(codes({ ...good, pole: Object.create({ length: 1 }) })).toEqual(["pole.length: missing"])
  })
  it("include the holes of a sparse list", () => {
    const lamps = [{ at: 1 }]
    lamps.length = 2
    expect(codes({ ...good, lamps })).toEqual(["lamps.1: missing"])
  })
  it("are told without printing whole worlds", () => {
    expect(faults({ height: "x".repeat(500) })[0]?.received).toHaveLength(42)
    expect(faults({ height: Symbol("s") })[0]?.received).toBe("a symbol")
    expect(faults({ height: () => 1 })[0]?.received).toBe("a function")
  })
  it("are told apart from a default's own: a default is read like an input", () => {
    expect(lantern.read(good)).toEqual({
      height: 0.4,
      skin: 0.05,
      air: 20,
      ribs: 6,
      share: 0.5,
      rib: "cane",
      hung: false,
      name: "moth",
      lamps: [{ at: 0.05, lumens: 80 }],
      pole: null,
    })
    expect(lantern.read({ ...good, pole: { length: "1 yd" } }).pole).toEqual({ length: 0.9144, grip: 0.1 })
  })
})

describe("a text", () => {
  it("of any length is read or refused at once", () => {
    const long = 20_000
    for (const text of [
      `1${" ".repeat(long)}x\ny`,
      `${"1".repeat(long)}\nx`,
      `${" ".repeat(long)}1`,
      `1 ${"1".repeat(long)}x`,
      `1/${"1".repeat(long)}x`,
      "m".repeat(long),
    ])
      expect(typeof readQuantity("length", text), text.slice(0, 5)).toBe("object")
  })
  it("with a line break inside the unit has a wrong unit, white space around is no matter", () => {
    expect(codes({ height: "1 m\nm" })).toEqual(["height: wrong-unit"])
    expect(lantern.read({ height: " \t0.5  m\n" }).height).toBe(0.5)
  })
  it("names the units a kind has in its fault", () => {
    for (const kind of Object.keys(kinds) as Kind[]) {
      const read = readQuantity(kind, "3 parsecs")
      for (const unit of Object.keys(kinds[kind].units)) expect((read as { expected: string }).expected).toContain(unit)
    }
  })
})
