import { describe, expect, it } from "vitest"
import { type Kind, kinds, quantityPattern, readQuantity } from "../../src/quantity/index.js"
import { InputError, type Issue, type IssueCode } from "../../src/solver/index.js"
import { nearestWord } from "../../src/solver/near.js"
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

describe("what people type", () => {
  const metres = (text: string) => readQuantity("length", text)
  it("is read in inches and feet, with their signs, words, fractions and both together", () => {
    const inch = 0.0254
    const texts: Readonly<Record<string, number>> = {
      '4"': 4,
      "4 inches": 4,
      "4 Inch": 4,
      "4'": 48,
      "2 ft 3 in": 27,
      "2'3\"": 27,
      "2 feet 3 1/2 inches": 27.5,
      "-2 ft 3 in": -27,
      "1½ in": 1.5,
      "½″": 0.5,
      "−½ in": -0.5,
      "1 ½ in": 1.5,
    }
    for (const [text, inches] of Object.entries(texts)) expect(metres(text), text).toBeCloseTo(inches * inch, 12)
    expect(readQuantity("time", "1 h 30 min")).toBe(5400)
    expect(readQuantity("mass", "5 lb 4 oz")).toBeCloseTo(5.25 * 0.45359237, 12)
  })
  it.each([
    ["current", "4 amps", 4],
    ["voltage", "12 Volts", 12],
    ["charge", "2 amp hours", 7200],
    ["angle", "180 degrees", Math.PI],
    ["angularSpeed", "30 rev/min", Math.PI],
    ["temperature", "20 C", 20],
    ["temperature", "68 F", 20],
    ["volume", "2 litres", 0.002],
  ] as const)("is read in words: %s, %s", (kind, text, si) => {
    expect(readQuantity(kind, text)).toBeCloseTo(si, 12)
  })
  it("is refused where it could mean two things, with the spelling that works", () => {
    expect(faults({ height: "0,5 m" })[0]).toMatchObject({ code: "wrong-unit", expected: "'0.5 m' (a point for decimals)" })
    expect(faults({ height: "1,200 mm" })[0]?.expected).toContain("'1.200 mm' or '1200 mm'")
    for (const text of ["3 in 2 ft", "2 ft 2 ft", "2 ft - 3 in", "2 ft +3 in", "2 ft 3", "ft 3 in"])
      expect(typeof metres(text), text).toBe("object")
    expect(readQuantity("temperature", "20 degrees")).toMatchObject({ code: "wrong-unit" })
    expect(metres("1e308 km")).toMatchObject({ code: "not-finite" })
  })
  it("takes time in proportion to its length, read or matched by the schema, whatever it is", () => {
    const long = ["1".repeat(1e5), `3${" ".repeat(1e5)}z`, `3 ${"/(".repeat(5e4)}`, `3 m${" ".repeat(1e5)}z`, "2 ft ".repeat(2e4)]
    const patterns = (Object.keys(kinds) as Kind[]).map((kind) => new RegExp(quantityPattern(kind)))
    for (const text of long) {
      const began = performance.now()
      for (const kind of Object.keys(kinds) as Kind[]) expect(typeof readQuantity(kind, text)).toBe("object")
      for (const pattern of patterns) expect(pattern.test(text)).toBe(false)
      expect(performance.now() - began).toBeLessThan(5000)
    }
  })
})

describe("the door", () => {
  it("tells limits with their unit, also where they are written as bare numbers", () => {
    expect(faults({ height: "4 m" })[0]?.expected).toBe("at most 3 m")
    expect(faults({ ...good, air: 50 })[0]?.expected).toBe("at most 40 degC")
  })
  it("suggests the word of the trade that is known here", () => {
    expect(nearestWord("LiFePO4", ["nmc", "lfp"])).toBe("lfp")
    expect(nearestWord("Lithium-ion", ["lfp", "nmc"])).toBe("nmc")
    expect(nearestWord("aluminum", ["copper", "aluminium"])).toBe("aluminium")
    expect(nearestWord("gauge", ["area", "awg"])).toBe("awg")
    expect(nearestWord("sprocket", ["area", "awg"])).toBeNull()
    expect(faults({ ...good, rib: "fiberglass" })[0]?.expected).toContain("did you mean 'fibreglass'?")
  })
  it("lets a document name its schema, at its root and as a text only", () => {
    expect(faults({ ...good, $schema: "./lantern.json" })).toEqual([])
    expect(codes({ ...good, $schema: 3 })).toEqual(["$schema: unknown-key"])
    expect(codes({ ...good, pole: { length: 1, $schema: "x" } })).toEqual(["pole.$schema: unknown-key"])
  })
  it("meets a getter or a proxy that throws with an InputError that says where", () => {
    const getter = Object.defineProperty({ ...good }, "air", {
      enumerable: true,
      get: () => {
        throw new Error("gone")
      },
    })
    expect(codes(getter)).toEqual(["air: wrong-type"])
    const proxy = new Proxy(
      {},
      {
        ownKeys: () => {
          throw new Error("no keys")
        },
      },
    )
    expect(faults(proxy).at(-1)?.message).toContain("no keys")
    expect(() => lantern(getter as never)).toThrow(InputError)
  })
  it("lists what is certain between fields though other fields are faulty, and nothing that is not", () => {
    const inconsistent = { pole: { length: "50 mm" } }
    expect(codes({ ...good, ...inconsistent })).toEqual(["pole.grip: inconsistent"])
    expect(codes({ ...good, air: "4 kg", ribs: 99, ...inconsistent })).toEqual([
      "air: wrong-unit",
      "ribs: too-large",
      "pole.grip: inconsistent",
    ])
    // a fault whose sentence would name a value that nobody gave is not told
    expect(codes({ height: "4 kg", ...inconsistent })).toEqual(["height: wrong-unit"])
    expect(codes({ ...good, pole: { length: "x" } })).toEqual(["pole.length: not-a-number"])
  })
})
