// How much of an answer rests on what nobody said: values that a document left to their defaults.
import type { AnyField, AnyFields } from "../solver/index.js"

/** Numbers and choices of a document, and how many of them were left to their defaults. */
export interface Defaults {
  readonly taken: number
  readonly of: number
}

type Part = Readonly<Record<string, unknown>>
const isPart = (value: unknown): value is Part => typeof value === "object" && value !== null
const is = (value: unknown) => value !== undefined && value !== null

function count(field: AnyField, value: unknown, found: { taken: number; of: number }): void {
  if (field.kind === "text" || field.kind === "flag") return
  // left out for good: nothing stands in its place
  if (!is(value) && !is(field.default)) return
  const here = is(value) ? value : field.default
  if (field.kind === "list") {
    if (Array.isArray(here)) for (const one of here) count(field.of, one, found)
  } else if (field.kind === "group") {
    if (isPart(here)) countAll(field.fields, here, found)
  } else if (field.kind === "variant") {
    if (isPart(here)) countAll(field.of[String(here.type)]?.fields ?? {}, here, found)
  } else {
    found.of++
    if (!is(value)) found.taken++
  }
}

function countAll(fields: AnyFields, document: Part, found: { taken: number; of: number }): void {
  for (const key in fields) count(fields[key] as AnyField, document[key], found)
}

/** Counts what a document left to its defaults, in all sections that it has. */
export function defaultsOf(fields: AnyFields, document: Part): Defaults {
  const found = { taken: 0, of: 0 }
  countAll(fields, document, found)
  return found
}
