// Inputs with faults put in: what a reader, a JSON Schema and a zod schema must agree about.
import fc from "fast-check"
import { type Kind, kinds } from "../../src/quantity/index.js"
import type { AnyField, AnyFields, Either } from "../../src/solver/index.js"
import { inOtherUnits, inputs, replaced } from "./arbitrary.js"

export type Path = readonly (string | number)[]

type Place = { readonly path: Path; readonly field: AnyField }
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value)

/** Every place of an input, groups and lists among them, as far as it has the shape described. */
function places(fields: AnyFields, input: unknown, path: Path = []): readonly Place[] {
  const below = (field: AnyField, value: unknown, at: Path): readonly Place[] => [
    { path: at, field },
    ...(field.kind === "group" ? places(field.fields, value, at) : []),
    ...(field.kind === "variant" && isObject(value) ? places(field.of[String(value.type)]?.fields ?? {}, value, at) : []),
    ...(field.kind === "list" && Array.isArray(value) ? value.flatMap((v, i) => below(field.of, v, [...at, i])) : []),
  ]
  return isObject(input) ? Object.entries(fields).flatMap(([key, field]) => below(field, input[key], [...path, key])) : []
}

const junk: readonly unknown[] = [
  ...[undefined, null, true, false, 0, -0, 1, -1, 3.5, 1e9, -1e9, 1e300, Number.MIN_VALUE, Number.NaN, Number.POSITIVE_INFINITY, 3n],
  ...["", "x", "3", "plenty", "3 parsecs", "3 m", "1/4 in", "-1 1/2 in", "4 kg", "20 degC", "68 °F", "293 K", "12 V", "1/0 m", "1e999 A"],
  ...["80 %", "3 mm²", "5 N·m", "2 W/(m·K)", "10 ppm/K", "5 °", "1e-3 Ω", "3 Ω·mm²/m", "3\nm", " 3  m ", "3 toString", ".5 A", "+5. s"],
  ...[
    {},
    [],
    [1],
    [[]],
    { x: 1 },
    { Meters: 3 },
    { Meters: Number.NaN },
    { DegreesCelsius: 3, Kelvins: 276.15, SolarTemperatures: 0 },
    { Kelvins: 4 },
  ],
]

/** One fault (or odd but sound value) put into an input. */
type Corruption = { readonly at: number; readonly how: number; readonly junk: unknown; readonly step: number }
const corruption: fc.Arbitrary<Corruption> = fc.record({
  at: fc.nat(1e6),
  how: fc.nat(16),
  junk: fc.oneof(
    fc.constantFrom(...junk),
    fc.double(),
    fc.string(),
    fc.double({ noNaN: true }).map((x) => `${x} m`),
  ),
  step: fc.constantFrom(0, 1e-12, -1e-12, 0.5, -0.5, 1e3, -1e3),
})

/** The word with one letter less, one more, one other, or a capital. */
const misspelt = (word: string, at: number) =>
  [word.slice(1), `${word}s`, `${word.slice(0, -1)}x`, word.toUpperCase(), `${word} `, "toString"][at % 6] as string

/** A text of a quantity just below or above a limit, in the SI unit; a nought or a small negative one among them. */
function beyond(field: Extract<AnyField, { symbol: string }>, at: number, step: number): unknown {
  const limit = [field.min, field.above, field.max, field.below].filter((l) => l !== undefined)[at % 2]
  if (field.kind === "number") return typeof limit === "number" ? limit + step : "3"
  const unit = kinds[field.kind as Kind].si
  if (unit === "") return limit
  if (typeof limit !== "number") return `${["0", "-0", "-0.0", "0/5", "-1e-3", "1e-12", "1/2", "-1/4"][at % 8]} ${unit}`
  return `${limit + step} ${unit}`
}

/** A value that a field could have, so that it is given where its fellows are too. */
function someValue(field: AnyField): unknown {
  if (field.kind === "flag") return true
  if (field.kind === "choice") return Object.keys(field.options)[0]
  if (field.kind === "text") return "a name"
  if (field.kind === "list") return []
  if (field.kind === "group" || field.kind === "variant") return {}
  return field.typical?.[0] ?? field.min ?? field.max
}

function corrupt(fields: AnyFields, input: unknown, { at, how, junk, step }: Corruption): unknown {
  const all = places(fields, input)
  const place = all[at % all.length]!
  const { path, field } = place
  const value = path.reduce((v, key) => (v as Record<string | number, unknown> | undefined)?.[key], input as unknown)
  if (how === 0) return replaced(input, path, undefined)
  if (how === 1) return { ...(input as object), [["sprocket", "toString", "constructor", "Length", ""][at % 5]!]: junk }
  if (how === 2 && isObject(value)) return replaced(input, path, { ...value, sprocket: junk })
  if (how === 3 && Array.isArray(value))
    return replaced(
      input,
      path,
      at % 2 ? [] : Array.from({ length: (field as { max?: number }).max ?? 3 }, () => value[0]).concat([value[0]]),
    )
  if (how <= 5 && typeof value === "number") return replaced(input, path, value + step * Math.max(1, Math.abs(value)))
  if (how === 6 && "min" in field && field.kind !== "list") return replaced(input, path, field.min)
  if (how === 7 && "above" in field) return replaced(input, path, field.above)
  if (how === 8 && "max" in field && field.kind !== "list") return replaced(input, path, field.max)
  if ((how === 9 || how === 10) && typeof value === "string" && !("symbol" in field)) return replaced(input, path, misspelt(value, at))
  if (how === 10 && field.kind === "variant" && isObject(value)) {
    const other = Object.values(field.of)[at % Object.keys(field.of).length]?.fields ?? {}
    const [key, stray] = Object.entries(other)[at % Math.max(1, Object.keys(other).length)] ?? ["type", undefined]
    return replaced(input, [...path, key], stray ? someValue(stray) : misspelt(String(value.type), at))
  }
  if (how === 11 && "symbol" in field) return replaced(input, path, beyond(field, at, step))
  if (how >= 12 && field.default === null) return replaced(input, path, value === undefined || value === null ? someValue(field) : null)
  if (how === 13 && field.kind === "text") return replaced(input, path, "x".repeat((field.max ?? 50) + (at % 2)))
  return replaced(input, path, junk)
}

/** Inputs by a description, some sound, most with up to three faults; quantities in any unit in half of them. */
export function faultyInputs(
  fields: AnyFields,
  example: Readonly<Record<string, unknown>>,
  either: readonly Either[],
): fc.Arbitrary<unknown> {
  return fc
    .tuple(
      inputs(fields, example, either),
      fc.boolean(),
      fc.infiniteStream(fc.nat(1e6)),
      fc.array(corruption, { minLength: 0, maxLength: 3 }),
    )
    .map(([sound, isMixed, stream, corruptions]) => {
      const start = isMixed ? inOtherUnits(fields, sound, (count) => (stream.next().value as number) % count) : sound
      return corruptions.reduce<unknown>((value, one) => corrupt(fields, value, one), start)
    })
}
