import { describe, expect, it } from "vitest"
import { compiledPieces } from "../helpers/pieces.js"

const head = `
import type { Current, Length, Mass } from "../src/quantity/index.js"
import { inputPlaces, type PathTo, type ResultAt, solveFor, sweep, type ValueAt } from "../src/study/index.js"
import { voltageDrop } from "../src/wire/voltage-drop.js"
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false
type Light = { type: "bulb"; size: Length } | { type: "flame"; wicks: number; draught?: Current | null }
interface In {
  size: Length
  spare?: Current | null
  count?: number
  metal: "copper" | "tin"
  dry?: boolean
  name: string
  wires: readonly { length: Length; type: "solid" | "stranded" }[]
  limits: readonly Length[]
  nested: { deep: { mass?: Mass } } | null
  light: Light
  version: 2
}
interface Out {
  readonly drop: number
  readonly verdict: "holds" | "fails"
  readonly legs: readonly { readonly length: number | null; readonly tight: boolean }[]
}
`

/** What must hold of the types; a line that must not compile ends in the codes of the errors it must give. */
const pieces: Readonly<Record<string, string>> = {
  "paths lead to values, through groups, lists, lists of lists and variants, and nowhere else": `
const good: PathTo<In>[] = ["size", "spare", "count", "metal", "dry", "name", "wires.0.length", "wires.12.type", "limits.3", "nested.deep.mass", "light.size", "light.wicks", "light.draught"]
const a: PathTo<In> = "sizes" // 2820
const b: PathTo<In> = "wires.length" // 2322
const c: PathTo<In> = "wires.first.length" // 2322
const d: PathTo<In> = "nested.deep" // 2322
const e: PathTo<In> = "light.flame.wicks" // 2322
const f: PathTo<In> = "size.Meters" // 2322
const g: PathTo<In> = "wires" // 2322`,
  "the type that tells a member is no value, one that is a choice is": `
const a: PathTo<In> = "light.type" // 2322
const b: PathTo<In, "word"> = "wires.0.type"
const c: PathTo<In> = "version" // 2322`,
  "paths are told apart by what lies at them": `
const a: Same<PathTo<In, "number">, "size" | "spare" | "count" | \`wires.\${number}.length\` | \`limits.\${number}\` | "nested.deep.mass" | "light.size" | "light.wicks" | "light.draught"> = true
const b: Same<PathTo<In, "flag">, "dry"> = true
const c: Same<PathTo<In, "word">, "metal" | "name" | \`wires.\${number}.type\`> = true
const d: PathTo<In, "number"> = "metal" // 2322`,
  "a value at a path is of its kind": `
const a: ValueAt<In, "size"> = "4 in"
const b: ValueAt<In, "size"> = "4 kg" // 2322
const c: ValueAt<In, "wires.2.length"> = "4 A" // 2322
const d: ValueAt<In, "light.draught"> = "40 mA"
const e: ValueAt<In, "light.draught"> = null // 2322
const f: ValueAt<In, "metal"> = "lead" // 2322
const g: ValueAt<In, "wires.0.type"> = "solid"
const h: ValueAt<In, "count"> = "3 m" // 2322
const i: ValueAt<In, "nested.deep.mass"> = "3 kg"`,
  "results have paths too, with null where a value may be missing": `
const good: PathTo<Out>[] = ["drop", "verdict", "legs.0.length", "legs.7.tight"]
const a: PathTo<Out> = "legs.0.lenght" // 2322
const b: Same<ResultAt<Out, "legs.0.length">, number | null> = true
const c: Same<ResultAt<Out, "verdict">, "holds" | "fails" | null> = true`,
  "a sweep takes only the solver's own inputs, with values of their kinds, and its own outputs": `
const run = { current: "4 A", length: "3 m", awg: 20 } as const
const good = await sweep(voltageDrop, run, { length: ["1 ft", 2], awg: { from: 10, to: 20 } }, { outputs: ["drop", "loadVoltage"] })
const drops: readonly (number | null)[] = good.outputs.drop
const lengths: readonly number[] = good.inputs.length
good.outputs.loss // 2339
good.inputs.current // 2339
sweep(voltageDrop, run, { lenght: ["1 ft"] }) // 2561
sweep(voltageDrop, run, { length: ["1 kg"] }) // 2322
sweep(voltageDrop, run, { length: { from: "1 m", to: "3 kg" } }) // 2322
sweep(voltageDrop, run, { awg: [18] }, { outputs: ["dorp"] }) // 2322
sweep(voltageDrop, { current: "4 A" }, { awg: [18] }) // 2345`,
  "solveFor varies only the solver's own inputs towards values of its own results": `
const run = { current: "4 A", length: "3 m", awg: 20 } as const
const far = await solveFor(voltageDrop, run, { vary: "length", target: { output: "drop", equals: "1 V" } })
const metres: number | undefined = far.hits[0]?.value
const metal = await solveFor(voltageDrop, run, { vary: "material", target: { output: "drop", atMost: 1 } })
const word: "copper" | "aluminium" | "copper-clad-aluminium" | "tinned-copper" | undefined = metal.hits[0]?.value as "copper"
const two = await solveFor(voltageDrop, run, { varyAll: { awg: [18, 20], current: ["3 A"] }, target: { answers: true } })
const pair: { readonly awg: number; readonly current: number } | undefined = two.hits[0]?.value
solveFor(voltageDrop, run, { vary: "lenght", target: { answers: true } }) // 2769
solveFor(voltageDrop, run, { vary: "length", among: ["1 kg"], target: { answers: true } }) // 2769
solveFor(voltageDrop, run, { vary: "length", target: { output: "dorp", equals: 1 } }) // 2769
solveFor(voltageDrop, run, { vary: "length", target: { output: "drop", is: "big" } }) // 2769
solveFor(voltageDrop, run, { varyAll: { awg: ["1 kg"] }, target: { answers: true } }) // 2769`,
  "a solver's base is its input": `
inputPlaces(voltageDrop, { current: "4 A", length: "3 m", awg: 20 })
inputPlaces(voltageDrop, { current: "4 A", length: "3 kg", awg: 20 }) // 2322`,
}

describe("paths as types", () => {
  it.each(compiledPieces(head, pieces))("$name", ({ announced, got }) => {
    expect(got).toEqual(announced)
  })
})
