import { describe, expect, it } from "vitest"
import { type Kind, kinds } from "../../src/quantity/index.js"
import { errorsOf } from "../helpers/compiled.js"

const head = `
import type { StandardSchemaV1 } from "@standard-schema/spec"
import type { Angle, Area, Charge, Current, KindOf, Length, Mass, Quantity, Ratio, Temperature, TemperatureDifference, Volume } from "../src/quantity/index.js"
import type { Attempt, Definition, Fields, GroupField, NoSolution, OutFields, Result, SiOf, Solver } from "../src/solver/index.js"
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false
declare const meters: { readonly Meters: number }
declare const celsius: { readonly DegreesCelsius: number; readonly Kelvins: number; readonly SolarTemperatures: number }
declare const solving: Solver<{ /** Size. */ size: Length; turns?: number }, { readonly area: number }>
`.trim()

/** What must hold of the types; a line that must not compile ends in the codes of the errors it must give. */
const pieces: Readonly<Record<string, string>> = {
  "a length takes metres, a unit of length in every spelling, fractions and objects by shape": `
const list: Length[] = [0.1, -2, "4 in", "4in", "100 mm", "2.5e-3 km", "-3 ft", "1/4 in", "1 1/2 in", "12 µm", meters]`,
  "fractions keep to a length's units": `
const a: Length = "1/4 kg" // 2322
const b: Length = "1 1/2 A" // 2322`,
  "a unit of another kind does not compile": `
const a: Length = "4 kg" // 2322
const b: Mass = "4 in" // 2322
const c: Current = "4 V" // 2322
const d: Charge = "2.6 A" // 2322
const e: Area = "4 in" // 2322
const f: Angle = "4 rpm" // 2322
const g: Temperature = "80 %" // 2322
const h: Ratio = "80 K" // 2322`,
  "no unit, no number, an unknown unit or the wrong type does not compile": `
const a: Length = "4" // 2322
const b: Length = "in" // 2322
const c: Length = "four in" // 2322
const d: Length = "4 inches" // 2322
const e: Length = true // 2322
const f: Length = null // 2322
const g: Length = { Kilograms: 3 } // 2353
const h: Length = "" // 2322`,
  "a temperature is no difference, as a string of degrees or as an object": `
const a: Temperature = "20 degC"
const b: Temperature = "20 °C"
const c: Temperature = celsius
const d: TemperatureDifference = "20 K"
const e: TemperatureDifference = "20 degC" // 2322
const f: TemperatureDifference = celsius // 2322`,
  "a kind without a unitsnet-js class takes no such object": `
const a: Quantity<"damping"> = "3 N s/m"
const b: Quantity<"damping"> = meters // 2322`,
  "a text that is only a string at compile time is not taken for a quantity": `
declare const text: string
const a: Length = text // 2322`,
  "the kind of a property is told from its type, null and undefined put aside": `
const a: Same<KindOf<Length>, "length"> = true
const b: Same<KindOf<Temperature>, "temperature"> = true
const c: Same<KindOf<TemperatureDifference>, "temperatureDifference"> = true
const d: Same<KindOf<Volume>, "volume"> = true
const e: [KindOf<number>] extends [never] ? true : false = true
const f: Same<KindOf<Length>, "mass"> = true // 2322`,
  "SiOf makes every quantity a number, fills defaults, keeps null, words, flags, lists and groups": `
interface In {
  size: Length
  hot?: Temperature
  spare?: Current | null
  count: number
  metal: "copper" | "tin"
  dry?: boolean
  name: string
  wires: readonly { length: Length; awg?: number | null }[]
  limits: readonly Length[]
  nested: { deep: { mass?: Mass } }
}
const same: Same<
  SiOf<In>,
  {
    readonly size: number
    readonly hot: number
    readonly spare: number | null
    readonly count: number
    readonly metal: "copper" | "tin"
    readonly dry: boolean
    readonly name: string
    readonly wires: readonly SiOf<{ length: Length; awg?: number | null }>[]
    readonly limits: readonly number[]
    readonly nested: SiOf<{ deep: { mass?: Mass } }>
  }
> = true
declare const si: SiOf<In>
const awg: number | null | undefined = si.wires[0]?.awg
const mass: number = si.nested.deep.mass
const no: string = si.size // 2322
si.count = 3 // 2540
const none: number = si.spare // 2322`,
  "a description's kind must be that of the property": `
const good: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", min: "1 mm", max: 3 } }
const kind: Fields<{ size: Length }> = { size: { kind: "current", symbol: "a", label: "size", min: 0, max: 9 } } // 2322
const plain: Fields<{ size: Length }> = { size: { kind: "number", symbol: "a", label: "size", min: 0, max: 9 } } // 2322
const quantity: Fields<{ size: number }> = { size: { kind: "length", symbol: "a", label: "size", min: 0, max: 9 } } // 2322
const flag: Fields<{ dry: boolean }> = { dry: { kind: "text", label: "dry", min: 0, max: 9 } } // 2322
const text: Fields<{ name: string }> = { name: { kind: "flag", label: "name" } } // 2322
const list: Fields<{ sizes: readonly Length[] }> = { sizes: { kind: "list", label: "sizes", min: 0, max: 9, of: { kind: "mass", symbol: "m", label: "m", min: 0, max: 9 } } } // 2322
const group: Fields<{ at: { x: Length } }> = { at: { kind: "group", label: "at", fields: { x: { kind: "time", symbol: "x", label: "x", min: 0, max: 9 } } } } // 2322`,
  "limits, typical values, defaults and the unit shown are of the field's kind": `
const a: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", min: "1 kg", max: 9 } } // 2322
const b: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", typical: [1, "2 A"], min: 0, max: 9 } } // 2322
const c: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", unit: "kg", min: 0, max: 9 } } // 2322
const d: Fields<{ size?: Length }> = { size: { kind: "length", symbol: "a", label: "size", default: "3 V", min: 0, max: 9 } } // 2322
const e: Fields<{ n: number }> = { n: { kind: "number", symbol: "n", label: "n", whole: true, above: "1 m", max: 9 } } // 2322`,
  "a missing description is an error, and so is one too many": `
const missing: Fields<{ size: Length; count: number }> = { size: { kind: "length", symbol: "a", label: "size", min: 0, max: 9 } } // 2741
const extra: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", min: 0, max: 9 }, count: { kind: "number", symbol: "n", label: "n", min: 0, max: 9 } } // 2353
const symbol: Fields<{ size: Length }> = { size: { kind: "length", label: "size", min: 0, max: 9 } } // 2322
const label: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", min: 0, max: 9 } } // 2322`,
  "a choice offers exactly the union's members": `
type In = { metal: "copper" | "tin" }
const good: Fields<In> = { metal: { kind: "choice", label: "metal", options: { copper: "copper", tin: "tin" } } }
const fewer: Fields<In> = { metal: { kind: "choice", label: "metal", options: { copper: "copper" } } } // 2741
const more: Fields<In> = { metal: { kind: "choice", label: "metal", options: { copper: "copper", tin: "tin", lead: "lead" } } } // 2353
const free: Fields<In> = { metal: { kind: "text", label: "metal", min: 0, max: 9 } } // 2322
const closed: Fields<{ name: string }> = { name: { kind: "choice", label: "name", options: { a: "a" } } } // 2322`,
  "an optional property carries a default, a required one none": `
const good: Fields<{ size?: Length }> = { size: { kind: "length", symbol: "a", label: "size", default: "3 mm", min: 0, max: 9 } }
const without: Fields<{ size?: Length }> = { size: { kind: "length", symbol: "a", label: "size", min: 0, max: 9 } } // 2322
const required: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", default: 3, min: 0, max: 9 } } // 2322
const nullable: Fields<{ size?: Length | null }> = { size: { kind: "length", symbol: "a", label: "size", default: null, min: 0, max: 9 } }
const none: Fields<{ size?: Length }> = { size: { kind: "length", symbol: "a", label: "size", default: null, min: 0, max: 9 } } // 2322`,
  "a number, quantity, text or list without a lower and an upper limit is an error, and so are two of one sort": `
const low: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", max: 3 } } // 2322
const high: Fields<{ size: Length }> = { size: { kind: "length", symbol: "a", label: "size", above: 0 } } // 2322
const none: Fields<{ n: number }> = { n: { kind: "number", symbol: "n", label: "n" } } // 2322
const open: Fields<{ n: number }> = { n: { kind: "number", symbol: "n", label: "n", above: 0, below: 1 } }
const twice: Fields<{ n: number }> = { n: { kind: "number", symbol: "n", label: "n", min: 0, above: 0, max: 1 } } // 2322
const text: Fields<{ name: string }> = { name: { kind: "text", label: "name", min: 1 } } // 2322
const list: Fields<{ sizes: readonly boolean[] }> = { sizes: { kind: "list", label: "sizes", max: 3, of: { kind: "flag", label: "b" } } } // 2322`,
  "rules between fields name fields that may be left out": `
type In = { a?: Length | null; b?: number | null; c: number; d?: number }
const length = { kind: "length", symbol: "a", label: "a", min: 0, max: 9, default: null } as const
const number = { kind: "number", symbol: "b", label: "b", min: 0, max: 9 } as const
const fields: Fields<In> = { a: length, b: { ...number, default: null }, c: number, d: { ...number, default: 1 } }
const good: GroupField<In> = { kind: "group", label: "g", fields, either: [{ exactlyOne: ["a", "b"] }, { together: ["a", "b"] }, { given: "a", needs: ["b"] }, { atMostOne: ["a", ["a", "b"]] }] }
const needed: GroupField<In> = { kind: "group", label: "g", fields, either: [{ exactlyOne: ["a", "c"] }] } // 2322
const filled: GroupField<In> = { kind: "group", label: "g", fields, either: [{ together: ["a", "d"] }] } // 2322
const other: GroupField<In> = { kind: "group", label: "g", fields, either: [{ given: "a", needs: ["z"] }] } // 2322`,
  "a variant describes every member and each member's own fields, and is narrowed by its type": `
type Light = { type: "bulb"; size: Length } | { type: "flame"; wicks: number; draught?: Current | null }
const size = { kind: "length", symbol: "a", label: "size", min: 0, max: 9 } as const
const wicks = { kind: "number", symbol: "w", label: "wicks", min: 1, max: 9 } as const
const draught = { kind: "current", symbol: "I", label: "draught", min: 0, max: 9, default: null } as const
const bulb = { label: "bulb", fields: { size } } as const
const good: Fields<{ light: Light }> = { light: { kind: "variant", label: "light", of: { bulb, flame: { label: "flame", fields: { wicks, draught } } } } }
const fewer: Fields<{ light: Light }> = { light: { kind: "variant", label: "light", of: { bulb } } } // 2741
const lacking: Fields<{ light: Light }> = { light: { kind: "variant", label: "light", of: { bulb, flame: { label: "flame", fields: { wicks } } } } } // 2741
const wrong: Fields<{ light: Light }> = { light: { kind: "variant", label: "light", of: { bulb: { label: "bulb", fields: { size: draught } }, flame: { label: "flame", fields: { wicks, draught } } } } } // 2322
const flat: Fields<{ light: Light }> = { light: { kind: "group", label: "light", fields: { size } } } // 2322
declare const si: SiOf<{ light: Light }>
const metres: number = si.light.type === "bulb" ? si.light.size : si.light.wicks
si.light.size // 2339`,
  "a result's description fits the result": `
type Out = { readonly size: number; readonly dry: boolean; readonly word: string; readonly list: readonly { readonly x: number }[]; readonly at: number | null }
const good: OutFields<Out> = {
  size: { kind: "length", symbol: "a", label: "size" },
  dry: { kind: "flag", label: "dry" },
  word: { kind: "text", label: "word" },
  list: { kind: "list", label: "list", of: { kind: "group", label: "entry", fields: { x: { kind: "number", label: "x" } } } },
  at: { kind: "time", label: "at" },
}
const missing: OutFields<{ readonly a: number; readonly b: number }> = { a: { kind: "time", label: "a" } } // 2741
const flag: OutFields<{ readonly a: number }> = { a: { kind: "flag", label: "a" } } // 2322
const number: OutFields<{ readonly a: boolean }> = { a: { kind: "time", label: "a" } } // 2322`,
  "calls are checked: keys, kinds, results that can't be written": `
const out = solving({ size: "4 in" })
const area: number = out.area
out.area = 3 // 2540
solving({}) // 2345
solving({ size: "4 kg" }) // 2322
solving({ size: "4 in", sise: 3 }) // 2353
solving({ size: "4 in", turns: "3" }) // 2322
const refused: boolean = "noSolution" in solving.si({ size: 1, turns: 1 })
solving.si({ size: "4 in", turns: 1 }) // 2322
solving.si({ size: 1 }) // 2345
const tried: Attempt<{ readonly area: number }> = solving.attempt({ anything: true })
if (tried.ok) tried.value.area.toFixed()
else tried.value // 2339
const either: { readonly area: number } | NoSolution = solving.si(solving.read({ size: 1 }))`,
  "a solver is a Standard Schema of the published interface, with its input and output types": `
const schema: StandardSchemaV1<{ size: Length; turns?: number }, { readonly size: number; readonly turns: number }> = solving
const input: Same<StandardSchemaV1.InferInput<typeof solving>, { size: Length; turns?: number }> = true
const output: Same<StandardSchemaV1.InferOutput<typeof solving>, SiOf<{ size: Length; turns?: number }>> = true
const wrong: StandardSchemaV1<{ size: Mass }, { readonly size: string }> = solving // 2322`,
}

/** The errors a piece says it gives, `line:code`. */
const announced = (text: string): string[] =>
  text.split("\n").flatMap((line, i) => {
    const codes = / \/\/ ([\d ]+)$/.exec(line)?.[1]?.split(" ") ?? []
    return codes.map((code) => `${i + 1}:${code}`)
  })

describe("types", () => {
  // one program over all pieces: loading the standard library is most of the time
  const texts = Object.values(pieces).map((code) => `${head}\n${code.trim()}`)
  const units = (Object.keys(kinds) as Kind[]).map((kind) => {
    const spec = kinds[kind]
    const tokens = [...Object.keys(spec.units), ...spec.show.map(([unit]) => unit)].filter(Boolean)
    return `${head}\nconst all: Quantity<${JSON.stringify(kind)}>[] = ${JSON.stringify(tokens.flatMap((t) => [`3 ${t}`, `1/4 ${t}`]))}`
  })
  const [got, accepted] = ((all) => [all.slice(0, texts.length), all.slice(texts.length)])(errorsOf([...texts, ...units]))

  it.each(Object.keys(pieces).map((name, i) => [name, i] as const))("%s", (_, i) => {
    expect(got[i]).toEqual(announced(texts[i]!))
  })
  it("every unit that is read or shown at run time compiles for its kind", () => {
    expect(accepted).toEqual(units.map(() => []))
  })
})
