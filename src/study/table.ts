// A sweep's table: columns, and the forms in which it leaves the program.
import { plainText } from "../drawing/index.js"
import { type Kind, kinds } from "../quantity/index.js"
import type { PathTo, ResultAt, ValueAt } from "./paths.js"
import type { Told } from "./run.js"

/** The type of a value in SI: of a quantity its number. */
export type SiAt<In, P extends string> = [number] extends [ValueAt<In, P>] ? number : ValueAt<In, P>

/** What a column of a table holds. */
export interface TableColumn {
  readonly path: string
  readonly label: string
  /** Whether the study put it in, or the solver answered it. */
  readonly role: "input" | "output"
  readonly kind: string
  /** Unit of its numbers: always the SI unit; empty for plain numbers, ratios, words and flags. */
  readonly unit: string
  readonly values: readonly Told[]
}

/**
 * A sweep's points as columns, all of one length, in SI numbers.
 *
 * @typeParam P - inputs that were changed
 * @typeParam O - values of the result that were kept
 */
export interface SweepTable<In, Out, P extends PathTo<In>, O extends PathTo<Out>> {
  readonly solver: string
  /** Number of points. */
  readonly count: number
  /** What was put in, by path. */
  readonly inputs: { readonly [K in P]: readonly SiAt<In, K>[] }
  /** What was answered, by path; null where the point was refused, or the result has no such value. */
  readonly outputs: { readonly [K in O]: readonly ResultAt<Out, K>[] }
  /** Code of each point's refusal, `inconsistent` where its fields do not go together; null where it was answered. */
  readonly refused: readonly (string | null)[]
  /** The message of the first refusal of each code. */
  readonly reasons: Readonly<Record<string, string>>
  /** The same with what describes it: first the inputs, then the outputs. */
  readonly columns: readonly TableColumn[]
  /** The table as comma-separated values (RFC 4180): a line of names with units, then one for each point; refusals last. */
  csv(): string
}

/** The SI unit of a kind, as its numbers are written. */
export function siUnit(kind: string): string {
  return Object.hasOwn(kinds, kind) ? kinds[kind as Kind].si : ""
}

function cell(value: Told): string {
  if (value === null) return ""
  if (typeof value !== "string") return String(value)
  const text = plainText(value)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Lines of comma-separated values, each ended as RFC 4180 has it. */
export function csvOf(columns: readonly TableColumn[], refused: readonly (string | null)[]): string {
  const names = [...columns.map(({ path, unit }) => (unit ? `${path} (${unit})` : path)), "refused"]
  const rows = refused.map((code, i) => [...columns.map(({ values }) => cell(values[i] as Told)), cell(code)])
  return [names.map(cell), ...rows].map((row) => `${row.join(",")}\r\n`).join("")
}
