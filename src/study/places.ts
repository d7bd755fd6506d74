// What an input can change and a result tells, listed by path: what a form, a study or an adviser walks.
import type { Kind } from "../quantity/index.js"
import type { AnyField, AnyFields, AnyOutField, AnyOutFields, Path, Solver } from "../solver/index.js"
import { limitOf } from "../solver/read.js"
import { type AnySolver, readBase, studyError } from "./place.js"

interface At {
  /** Names joined by points, entries of lists counted from 0: `wires.0.length`. */
  readonly path: string
  readonly keys: Path
  /** Its label, behind those of the groups and entries it lies in. */
  readonly label: string
}

/** A number of an input. */
export interface NumberPlace extends At {
  readonly kind: Kind | "number"
  readonly symbol: string
  /** Unit its description shows it in; null where it is chosen by magnitude. */
  readonly unit: string | null
  /** Lowest and highest value allowed, in SI; whether the ends themselves are. */
  readonly low: number
  readonly high: number
  readonly allowsLow: boolean
  readonly allowsHigh: boolean
  /** Range that a maker's values usually lie in, in SI. */
  readonly typical: readonly [low: number, high: number] | null
  readonly whole: boolean
  /** The input's own value, in SI; null where it gives none. */
  readonly value: number | null
}

/** A choice of an input. */
export interface ChoicePlace extends At {
  readonly kind: "choice"
  /** The words with their labels. */
  readonly options: Readonly<Record<string, string>>
  readonly value: string | null
}

/** A yes or no of an input. */
export interface FlagPlace extends At {
  readonly kind: "flag"
  readonly value: boolean | null
}

/** A text of an input. */
export interface TextPlace extends At {
  readonly kind: "text"
  /** Minimum and maximum number of characters. */
  readonly min: number
  readonly max: number
  readonly value: string | null
}

/** A value of an input that a study can change. */
export type InputPlace = NumberPlace | ChoicePlace | FlagPlace | TextPlace

/** Whether a place holds a number. */
export function isNumberPlace(place: InputPlace): place is NumberPlace {
  return place.kind !== "choice" && place.kind !== "flag" && place.kind !== "text"
}

type Numeric = Extract<AnyField, { symbol: string }>

/** A number's description with its limits in SI. */
export function numberPlace(at: At, field: Numeric, value: number | null): NumberPlace {
  const [min, above, max, below] = (["min", "above", "max", "below"] as const).map((name) => limitOf(field, name))
  const typical = field.typical?.map((end) => limitOf({ ...field, min: end } as Numeric, "min") as number)
  return {
    ...at,
    kind: field.kind,
    symbol: field.symbol,
    unit: "unit" in field ? (field.unit ?? null) : null,
    low: min ?? above ?? Number.NEGATIVE_INFINITY,
    high: max ?? below ?? Number.POSITIVE_INFINITY,
    allowsLow: above === undefined,
    allowsHigh: below === undefined,
    typical: typical ? [typical[0] as number, typical[1] as number] : null,
    whole: field.kind === "number" && "whole" in field && field.whole === true,
    value,
  }
}

function within(fields: AnyFields, values: unknown, keys: Path, label: string): InputPlace[] {
  return Object.entries(fields).flatMap(([key, field]) =>
    below(field, (values as Readonly<Record<string, unknown>>)[key], [...keys, key], label ? `${label}, ${field.label}` : field.label),
  )
}

function below(field: AnyField, value: unknown, keys: Path, label: string): InputPlace[] {
  const at: At = { path: keys.join("."), keys, label }
  const given = value ?? null
  switch (field.kind) {
    case "group":
      return given === null ? [] : within(field.fields, given, keys, label)
    case "variant":
      return given === null ? [] : within(field.of[(given as { readonly type: string }).type]?.fields ?? {}, given, keys, label)
    case "list":
      return ((given ?? []) as readonly unknown[]).flatMap((entry, i) => below(field.of, entry, [...keys, i], `${label} ${i + 1}`))
    case "choice":
      return [{ ...at, kind: "choice", options: field.options, value: given as string | null }]
    case "flag":
      return [{ ...at, kind: "flag", value: given as boolean | null }]
    case "text":
      return [{ ...at, kind: "text", min: field.min, max: field.max, value: given as string | null }]
    default:
      return [numberPlace(at, field as Numeric, given as number | null)]
  }
}

/**
 * Every value of an input that can be changed, in the order of the descriptions: those of lists entry by entry, of a variant
 * those of its type. Values that are not given stand with null.
 *
 * @param base - an input, quantities in any unit
 * @throws InputError naming every fault of the base
 */
export function inputPlaces<In, Out>(solver: Solver<In, Out>, base: In): readonly InputPlace[] {
  const read = readBase(solver as AnySolver, base)
  if (!read.ok) throw studyError("inputPlaces", solver, read.issues)
  return placesIn(solver as AnySolver, read.value)
}

/** {@link inputPlaces} of an input that was read. */
export function placesIn(solver: AnySolver, si: object): readonly InputPlace[] {
  return within(solver.input as AnyFields, si, [], "")
}

/** A value of a result. */
export interface OutputPlace extends At {
  readonly kind: Kind | "number" | "flag" | "text"
  /** Symbol in the formulae; null where it has none. */
  readonly symbol: string | null
  readonly unit: string | null
  readonly value: number | boolean | string | null
}

function resultBelow(field: AnyOutField, value: unknown, keys: Path, label: string): OutputPlace[] {
  if (field.kind === "group") return value === null || value === undefined ? [] : resultWithin(field.fields, value, keys, label)
  if (field.kind === "list")
    return ((value ?? []) as readonly unknown[]).flatMap((entry, i) => resultBelow(field.of, entry, [...keys, i], `${label} ${i + 1}`))
  return [
    {
      path: keys.join("."),
      keys,
      label,
      kind: field.kind,
      symbol: "symbol" in field ? (field.symbol ?? null) : null,
      unit: "unit" in field ? (field.unit ?? null) : null,
      value: (value ?? null) as OutputPlace["value"],
    },
  ]
}

function resultWithin(fields: AnyOutFields, values: unknown, keys: Path, label: string): OutputPlace[] {
  return Object.entries(fields).flatMap(([key, field]) =>
    resultBelow(
      field,
      (values as Readonly<Record<string, unknown>>)[key],
      [...keys, key],
      label ? `${label}, ${field.label}` : field.label,
    ),
  )
}

/**
 * Every value of a result by path: those of lists entry by entry, those that are missing with null.
 *
 * @param result - what the solver, or its `.si`, answered
 */
export function outputPlaces<In, Out>(solver: Solver<In, Out>, result: Out): readonly OutputPlace[] {
  return resultWithin(solver.output as AnyOutFields, result, [], "")
}
