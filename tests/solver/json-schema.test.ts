import { Ajv2020 } from "ajv/dist/2020.js"
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type Kind, kinds, readQuantity } from "../../src/quantity/index.js"
import { type AnyFields, objectSchema } from "../../src/solver/index.js"
import { lantern } from "./lantern.js"

const ajv = new Ajv2020({ strict: false })
const signs: readonly (readonly [plain: RegExp, ...signs: string[]])[] = [
  [/2/, "²"],
  [/3/, "³"],
  [/4/, "⁴"],
  [/u(?=[mAFHo])/, "µ", "μ"],
  [/ohm/, "Ω"],
  [/deg/, "°"],
  [/ /, "·"],
  [/\/(\w+)\/K$/, "/($1·K)", "/($1 K)"],
]

/** Every way of writing a unit with other signs for some of its letters. */
function spellings(unit: string): readonly string[] {
  let all = [unit]
  for (const [plain, ...others] of signs) all = [...new Set(all.flatMap((u) => [u, ...others.map((sign) => u.replace(plain, sign))]))]
  return all
}

describe("the JSON Schema", () => {
  it.each(Object.keys(kinds) as Kind[])("takes a %s in every spelling that is read", (kind) => {
    const fields = { q: { kind, symbol: "q", label: "q" } } as unknown as AnyFields
    const validate = ajv.compile(objectSchema(fields))
    const texts = Object.keys(kinds[kind].units).flatMap((unit) =>
      spellings(unit).flatMap((u) => ["3 ", "3", "-1 1/2 ", "1/4 ", "+2.5e-3 ", " .5  ", "3. ", "1½ ", "−¾ "].map((n) => n + u)),
    )
    texts.push("3 inches", "3 Amps", '2 ft 3 1/2"', "1 h 30 min", "5lb4oz", "-2'3½″", "90 rev/min", "2 d 3 s", "3 in 2 ft")
    const read = texts.filter((text) => typeof readQuantity(kind, text) === "number")
    expect(read.length).toBeGreaterThan(texts.length / 3)
    expect(read.filter((text) => !validate({ q: text }))).toEqual([])
    // and no text whose unit is not read: only a nought under the bar is beyond a pattern
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.nat(20),
        fc.constantFrom("x", "", " ", "/", "2", "²", "K", "(", "-", "e", "½", "'", "s", "⁄", "·"),
        (text, at, sign) => {
          const other = text.slice(0, at) + sign + text.slice(at + 1)
          if (typeof readQuantity(kind, other) === "number") expect(validate({ q: other }), other).toBe(true)
          else if (validate({ q: other })) expect(readQuantity(kind, other), other).toMatchObject({ code: "not-finite" })
        },
      ),
      { numRuns: 300 },
    )
  })
  it("says what is required, what stands for what is left out, and which words and counts are allowed", () => {
    const schema = lantern.jsonSchema() as { required: string[]; properties: Record<string, Record<string, unknown>>; title: string }
    expect(schema).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      title: "lantern",
      description: "How much a lantern holds",
      type: "object",
      required: ["height"],
      additionalProperties: false,
    })
    const { ribs, share, rib, hung, name, lamps, pole, skin } = schema.properties
    expect(ribs).toEqual({ type: "integer", minimum: 3, maximum: 12, title: "ribs", default: 6, order: 3 })
    expect(share).toMatchObject({ type: "number", exclusiveMinimum: 0, exclusiveMaximum: 1 })
    const words = ["cane", "fibreglass"].map((word) => expect.objectContaining({ const: word, title: expect.any(String) }))
    expect(rib).toMatchObject({ oneOf: words, default: "cane" })
    expect(hung).toMatchObject({ type: "boolean" })
    expect(name).toMatchObject({ type: "string", minLength: 0, maxLength: 40 })
    expect(lamps).toMatchObject({ type: "array", minItems: 1, maxItems: 2, items: { type: "object", required: ["at"] } })
    expect(pole).toMatchObject({ anyOf: [{ type: "object", required: ["length"] }, { type: "null" }], default: null })
    expect(skin).toMatchObject({ default: "50 g", anyOf: [{ type: "number", exclusiveMinimum: 0 }, { type: "string" }] })
  })
  it("is JSON, and its own defaults and example satisfy it", () => {
    const schema = lantern.jsonSchema()
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema)
    const validate = ajv.compile(schema)
    expect(validate(lantern.example)).toBe(true)
    const { properties } = schema as { properties: Record<string, { default?: unknown }> }
    const filled = Object.fromEntries(Object.entries(properties).flatMap(([key, p]) => ("default" in p ? [[key, p.default]] : [])))
    expect(validate({ ...lantern.example, ...filled }), JSON.stringify(validate.errors)).toBe(true)
    expect(validate({ ...lantern.example, ribs: 2 })).toBe(false)
    expect(validate({ ...lantern.example, pole: {} })).toBe(false)
  })
})
