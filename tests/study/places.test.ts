import { describe, expect, it } from "vitest"
import type { Area, Length } from "../../src/quantity/index.js"
import { InputError, type Solver, solver } from "../../src/solver/index.js"
import { inputPlaces, outputPlaces } from "../../src/study/index.js"
import { placeAt, readAt, valueAt, withValue } from "../../src/study/place.js"
import { solvers } from "../helpers/solvers.js"

interface Lantern {
  height: Length
  ribs: number
  paper?: Area | null
  frame: { type: "hoop"; across: Length } | { type: "box"; width: Length; colour: "red" | "blue" }
  lamps: readonly { power: number; dimmed?: boolean }[]
}
const lantern: Solver<Lantern, { readonly light: number; readonly lamps: readonly { readonly share: number }[] }> = solver<
  Lantern,
  { readonly light: number; readonly lamps: readonly { readonly share: number }[] }
>(
  "lantern",
  "Light of a lantern",
  ({ lamps }) => {
    const light = lamps.reduce((sum, lamp) => sum + lamp.power, 0)
    return { light, lamps: lamps.map(({ power }) => ({ share: power / light })) }
  },
  () => ({
    input: {
      height: { kind: "length", symbol: "h", label: "height", above: 0, max: "3 m", typical: ["20 cm", "50 cm"], unit: "mm" },
      ribs: { kind: "number", symbol: "n", label: "ribs", whole: true, min: 3, below: 40 },
      paper: { kind: "area", symbol: "A", label: "paper", min: "1 cm2", max: "9 m2", default: null },
      frame: {
        kind: "variant",
        label: "frame",
        of: {
          hoop: { label: "hoop", fields: { across: { kind: "length", symbol: "d", label: "across", min: "1 cm", max: "1 m" } } },
          box: {
            label: "box",
            fields: {
              width: { kind: "length", symbol: "w", label: "width", min: "1 cm", max: "1 m" },
              colour: { kind: "choice", label: "colour", options: { red: "red", blue: "blue" } },
            },
          },
        },
      },
      lamps: {
        kind: "list",
        label: "lamp",
        min: 1,
        max: 9,
        of: {
          kind: "group",
          label: "lamp",
          fields: {
            power: { kind: "number", symbol: "P", label: "power", above: 0, max: 9 },
            dimmed: { kind: "flag", label: "dimmed", default: false },
          },
        },
      },
    },
    output: {
      light: { kind: "number", symbol: "Phi", label: "light" },
      lamps: {
        kind: "list",
        label: "lamp",
        of: { kind: "group", label: "lamp", fields: { share: { kind: "ratio", label: "share" } } },
      },
    },
    example: { height: "30 cm", ribs: 8, frame: { type: "box", width: "12 cm", colour: "red" }, lamps: [{ power: 1 }, { power: 3 }] },
    formulae: [],
    sources: [],
  }),
)
const base = lantern.example
const si = lantern.read(base)

describe("places", () => {
  it("of an input are listed with kind, limits in SI, label and value", () => {
    const places = inputPlaces(lantern, base)
    expect(places.map((place) => [place.path, place.label, place.value])).toEqual([
      ["height", "height", 0.3],
      ["ribs", "ribs", 8],
      ["paper", "paper", null],
      ["frame.width", "frame, width", 0.12],
      ["frame.colour", "frame, colour", "red"],
      ["lamps.0.power", "lamp 1, power", 1],
      ["lamps.0.dimmed", "lamp 1, dimmed", false],
      ["lamps.1.power", "lamp 2, power", 3],
      ["lamps.1.dimmed", "lamp 2, dimmed", false],
    ])
    expect(places[0]).toMatchObject({
      kind: "length",
      unit: "mm",
      low: 0,
      allowsLow: false,
      high: 3,
      allowsHigh: true,
      typical: [0.2, 0.5],
    })
    expect(places[1]).toMatchObject({ kind: "number", unit: null, low: 3, allowsLow: true, high: 40, allowsHigh: false, whole: true })
    expect(places[2]).toMatchObject({ kind: "area", low: 1e-4, high: 9, typical: null })
    expect(places[4]).toMatchObject({ kind: "choice", options: { red: "red", blue: "blue" } })
  })
  it("of a result are listed too", () => {
    expect(outputPlaces(lantern, lantern(base)).map(({ path, label, kind, value }) => [path, label, kind, value])).toEqual([
      ["light", "light", "number", 4],
      ["lamps.0.share", "lamp 1, share", "ratio", 0.25],
      ["lamps.1.share", "lamp 2, share", "ratio", 0.75],
    ])
  })
  it("a faulty base is told with every fault, under base", () => {
    const bad = { ...base, ribs: 2.5, height: "4 kg" } as never
    expect(() => inputPlaces(lantern, bad)).toThrow(InputError)
    try {
      inputPlaces(lantern, bad)
    } catch (error) {
      expect((error as InputError).issues.map(({ path, code }) => [path.join("."), code])).toEqual([
        ["base.height", "wrong-unit"],
        ["base.ribs", "too-small"],
      ])
      expect((error as InputError).solver).toBe("inputPlaces(lantern)")
    }
  })
  it.each([
    ["hieght", "unknown-key", "did you mean 'height'"],
    ["frame.across", "unknown-key", "one of width, colour"],
    ["lamps.2.power", "unknown-key", "which has 2"],
    ["lamps.-1.power", "unknown-key", "which has 2"],
    // put in under that name it would stand beside the entries, and nothing would vary
    ["lamps.01.power", "unknown-key", "which has 2"],
    ["lamps.1e0.power", "unknown-key", "which has 2"],
    ["height.x", "unknown-key", "nothing behind height"],
    ["constructor", "unknown-key", "one of"],
    ["paper.x", "inconsistent", "which the base does not give"],
    ["", "wrong-type", "a path of the input"],
    [3, "wrong-type", "a path of the input"],
  ])("a path that leads nowhere, %s, is told with where it was written", (path, code, text) => {
    const found = placeAt(lantern, si, path, ["vary"])
    expect(found.ok).toBe(false)
    if (!found.ok) {
      expect(found.issues).toMatchObject([{ code, path: ["vary"] }])
      expect(found.issues[0]?.message).toContain(text)
    }
  })
  it("a value is read in any unit, within the field's own limits, and told with where it was written", () => {
    const place = placeAt(lantern, si, "frame.width", ["vary"])
    if (!place.ok) throw new Error("no place")
    expect(readAt(place.value, "1 ft", ["to"])).toEqual({ ok: true, value: 0.3048 })
    expect(readAt(place.value, "1 mm", ["to"])).toMatchObject({ ok: false, issues: [{ code: "too-small", path: ["to"] }] })
    expect(readAt(place.value, "1 kg", ["axes", "frame.width", 3])).toMatchObject({
      ok: false,
      issues: [{ code: "wrong-unit", path: ["axes", "frame.width", 3] }],
    })
  })
  it.each(solvers.map(({ id, solver }) => [id, solver] as const))(
    "of %s: each is found by its path, and a value put there stands alone",
    (_, any) => {
      const read = any.read(any.example)
      const text = JSON.stringify(read)
      const places = inputPlaces(any, any.example)
      // of a whole rig's hundreds some thirty, evenly among them
      const each = Math.ceil(places.length / 30)
      for (const { path, keys, value } of places.filter((_place, i) => i % each === 0)) {
        expect(placeAt(any, read, path, ["vary"])).toMatchObject({ ok: true, value: { path, keys, value } })
        const changed = withValue(read, keys, "put")
        expect(valueAt(changed, keys)).toBe("put")
        expect(JSON.stringify(withValue(changed, keys, valueAt(read, keys)))).toBe(text)
      }
      expect(JSON.stringify(read)).toBe(text)
    },
  )
})
