import type { Kind, KindOf, Quantity, UnitsOf } from "../quantity/index.js"
import type { Either } from "./either.js"

/** The lower end of a range: `min` is allowed itself, `above` is not. */
export type Low<Limit> = { readonly above: Limit; readonly min?: never } | { readonly min: Limit; readonly above?: never }

/** The upper end of a range: `max` is allowed itself, `below` is not. */
export type High<Limit> = { readonly below: Limit; readonly max?: never } | { readonly max: Limit; readonly below?: never }

/** A quantity: what it is, its symbol in the formulae, and both its limits. */
export type QuantityField<K extends Kind = Kind> = QuantityPart<K> & Low<Quantity<K>> & High<Quantity<K>>

interface QuantityPart<K extends Kind> {
  readonly kind: K
  /** Symbol in the formulae. */
  readonly symbol: string
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  /** Range a maker's values usually lie in. */
  readonly typical?: readonly [Quantity<K>, Quantity<K>]
  /** Unit to show it in; chosen by magnitude when left out. */
  readonly unit?: UnitsOf[K]
}

/** A plain number: a count, an exponent, a coefficient; both its limits given. */
export type NumberField = NumberPart & Low<number> & High<number>

interface NumberPart {
  readonly kind: "number"
  readonly symbol: string
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  readonly whole?: boolean
  readonly typical?: readonly [number, number]
}

/** One of a closed set of words, each with a label. */
export interface ChoiceField<T extends string = string> {
  readonly kind: "choice"
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  readonly options: Readonly<Record<T, string>>
}

/** Yes or no. */
export interface FlagField {
  readonly kind: "flag"
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
}

/** Free text, such as a name. */
export interface TextField {
  readonly kind: "text"
  readonly label: string
  /** Minimum and maximum number of characters. */
  readonly min: number
  readonly max: number
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
}

/** A list of like things. */
export interface ListField<T = unknown> {
  readonly kind: "list"
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  readonly of: Field<T>
  /** Minimum and maximum number of entries. */
  readonly min: number
  readonly max: number
}

/** A group of named fields. */
export interface GroupField<T = unknown> {
  readonly kind: "group"
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  readonly fields: Fields<T>
  /** Which of its fields stand for one another. */
  readonly either?: readonly Either<Nullable<T>>[]
}

/** Names of the fields whose absence is an answer of its own. */
export type Nullable<T> = { readonly [K in keyof T]-?: null extends T[K] ? K & string : never }[keyof T]

/** The fields of one member of a variant, beside its `type`. */
export interface Member<T> {
  readonly label: string
  readonly fields: Fields<T>
  readonly either?: readonly Either<Nullable<T>>[]
}

/** One of several sets of fields, told apart by the word in `type`. */
export interface VariantField<T extends { readonly type: string } = { readonly type: string }> {
  readonly kind: "variant"
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  readonly of: { readonly [W in T["type"]]: Member<Omit<Extract<T, { readonly type: W }>, "type">> }
}

/** The description that fits a property of type T. */
export type Field<T> = unknown extends T ? AnyField : FieldOf<Exclude<T, null | undefined>>

type FieldOf<T> = [number] extends [T]
  ? [KindOf<T>] extends [never]
    ? NumberField
    : QuantityField<KindOf<T>>
  : [T] extends [boolean]
    ? FlagField
    : [T] extends [string]
      ? [string] extends [T]
        ? TextField
        : ChoiceField<T>
      : [T] extends [readonly (infer E)[]]
        ? ListField<E>
        : [T] extends [{ readonly type: string }]
          ? [IsUnion<T>] extends [true]
            ? VariantField<T>
            : GroupField<T>
          : GroupField<T>

type IsUnion<T, Whole = T> = T extends unknown ? ([Whole] extends [T] ? false : true) : never

/** Optional properties carry a default (`null` where absence is itself an answer); others have none. */
type DefaultFor<T, K extends keyof T> =
  Record<never, never> extends Pick<T, K> ? { readonly default: Exclude<T[K], undefined> } : { readonly default?: never }

/** One description for every property of T, checked against its type. */
export type Fields<T> = { readonly [K in keyof T]-?: Field<T[K]> & DefaultFor<T, K> }

/** A field as the engine reads it, whatever it describes. */
export type AnyField = (
  | (Omit<QuantityPart<Kind>, "typical" | "unit"> & {
      readonly min?: unknown
      readonly max?: unknown
      readonly above?: unknown
      readonly below?: unknown
      readonly typical?: readonly [unknown, unknown]
      readonly unit?: string
    })
  | (NumberPart & { readonly min?: number; readonly max?: number; readonly above?: number; readonly below?: number })
  | ChoiceField
  | FlagField
  | TextField
  | { readonly kind: "list"; readonly label: string; readonly of: AnyField; readonly min: number; readonly max: number }
  | ({ readonly kind: "group" } & AnyGroup)
  | { readonly kind: "variant"; readonly label: string; readonly of: Readonly<Record<string, AnyGroup>> }
) & { readonly default?: unknown; readonly help?: string; readonly section?: string }

/** A set of fields with its rules, as the engine reads it. */
export interface AnyGroup {
  readonly label: string
  readonly fields: AnyFields
  readonly either?: readonly Either[]
}

/** Fields by name, as the engine reads them. */
export type AnyFields = Readonly<Record<string, AnyField>>

type SiValue<T> = (null extends T ? null : never) | SiPart<Exclude<T, null | undefined>>
type SiPart<T> = [T] extends [never]
  ? never
  : [number] extends [T]
    ? number
    : [T] extends [string | boolean]
      ? T
      : [T] extends [readonly (infer E)[]]
        ? readonly SiValue<E>[]
        : SiOf<T>

/** The input in SI: every quantity a number, every default filled. */
export type SiOf<T> = { readonly [K in keyof T]-?: SiValue<T[K]> }

/** What a result's number is, for printing, bridging and teaching. */
export interface OutQuantity {
  readonly kind: Kind | "number"
  readonly symbol?: string
  readonly label: string
  /** More than the label says, for forms. */
  readonly help?: string
  /** Heading under which a form shows it. */
  readonly section?: string
  readonly unit?: string
}

/** A word or a sentence of a result. */
export type OutText = Omit<TextField, "min" | "max">

/** The description that fits a result property of type T. */
export type OutField<T> = OutFieldOf<Exclude<T, null | undefined>>
type OutFieldOf<T> = [T] extends [number]
  ? OutQuantity
  : [T] extends [boolean]
    ? FlagField
    : [T] extends [string]
      ? OutText
      : [T] extends [readonly (infer E)[]]
        ? { readonly kind: "list"; readonly label: string; readonly of: OutField<E> }
        : { readonly kind: "group"; readonly label: string; readonly fields: OutFields<T> }

/** One description for every property of a result. */
export type OutFields<T> = { readonly [K in keyof T]-?: OutField<T[K]> }

/** A result field as the engine reads it. */
export type AnyOutField =
  | OutQuantity
  | FlagField
  | OutText
  | { readonly kind: "list"; readonly label: string; readonly of: AnyOutField }
  | { readonly kind: "group"; readonly label: string; readonly fields: AnyOutFields }

/** Result fields by name, as the engine reads them. */
export type AnyOutFields = Readonly<Record<string, AnyOutField>>

/** Options of a choice field made from a table's keys. */
export function optionsFrom<K extends string>(
  table: Readonly<Record<K, unknown>>,
  label: (key: K) => string = (key) => key,
): Readonly<Record<K, string>> {
  return Object.fromEntries((Object.keys(table) as K[]).map((key) => [key, label(key)])) as Record<K, string>
}

/** A set of fields without some of them. */
export function without<T extends object, K extends keyof T>(fields: T, ...names: readonly K[]): Omit<T, K> {
  return Object.fromEntries(Object.entries(fields).filter(([name]) => !names.includes(name as K))) as Omit<T, K>
}
