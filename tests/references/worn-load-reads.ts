import type { Check, ReferenceRow } from "../helpers/references.js"

/** Row inputs that are numbers, by name. */
export type Num<K extends string> = Readonly<Record<K, number>>
/** Row inputs that are lists of numbers, by name. */
export type Nums<K extends string> = Readonly<Record<K, readonly number[]>>

/** A check that declares the inputs it reads. */
export function reads<I>(check: (inputs: I, row: ReferenceRow) => Readonly<Record<string, unknown>>): Check {
  return (inputs, row) => check(inputs as unknown as I, row)
}

/** A check of a table: the row has no inputs. */
export function table(values: Readonly<Record<string, unknown>>): Check {
  return () => values
}
