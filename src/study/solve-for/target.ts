// The target of `solveFor`, read: what each result is worth.
import { type AnyField, type Issue, issue } from "../../solver/index.js"
import { shown } from "../../solver/issue.js"
import { outputAt } from "../outputs.js"
import { type AnySolver, type Found, readAt } from "../place.js"
import type { Told } from "../run.js"

/** A target over results. */
export interface ReadTarget {
  /** Path of the result's value; null where being answered is all that is asked. */
  readonly output: string | null
  readonly relation: "equals" | "atMost" | "atLeast" | "is" | "answers"
  readonly value: Told
}

const relations = ["equals", "atMost", "atLeast", "is"] as const

const fault = (code: Issue["code"], path: readonly string[], received: string, expected: string) =>
  ({ ok: false, issues: [issue(code, ["target", ...path], received, expected)] }) as const

/** Reads a target by the descriptions of the solver's results. */
export function readTarget(solver: AnySolver, target: unknown): Found<ReadTarget> {
  if (typeof target !== "object" || target === null) return fault("wrong-type", [], shown(target), "an output and what it has to be")
  const given = target as Readonly<Record<string, unknown>>
  const keys = Object.keys(given).filter((key) => given[key] !== undefined)
  const unknown = keys.find((key) => key !== "output" && key !== "answers" && !relations.includes(key as never))
  if (unknown !== undefined) return fault("unknown-key", [unknown], shown(unknown), "one of output, equals, atMost, atLeast, is, answers")
  if (keys.length === 1 && given.answers === true) return { ok: true, value: { output: null, relation: "answers", value: null } }
  const named = relations.filter((key) => keys.includes(key))
  const [relation] = named
  if (relation === undefined || named.length > 1 || given.answers !== undefined)
    return fault("inconsistent", [], keys.join(", ") || "nothing", "an output with one of equals, atMost, atLeast, is; or answers: true")
  const output = outputAt(solver, given.output, ["target", "output"])
  if (!output.ok) return output
  const { path, kind, label } = output.value
  const value = given[relation]
  if (relation === "is") {
    const wanted = kind === "flag" ? "boolean" : kind === "text" ? "string" : null
    if (wanted === null) return fault("inconsistent", ["is"], shown(value), `equals, atMost or atLeast: ${label} is a number`)
    if (typeof value !== wanted) return fault("wrong-type", ["is"], shown(value), kind === "flag" ? "true or false" : "a word")
    return { ok: true, value: { output: path, relation, value: value as Told } }
  }
  if (kind === "flag" || kind === "text") return fault("inconsistent", [relation], shown(value), `is: ${label} is no number`)
  // as the input fields read it, in any unit, whatever its size
  const field = { kind, symbol: "", label } as AnyField
  const read = readAt({ path, keys: [], field, value: null }, value, ["target", relation])
  return read.ok ? { ok: true, value: { output: path, relation, value: read.value as number } } : read
}

/** How far a result's number is from the target's: negative below it. */
export const offOf = (target: ReadTarget, told: Told): number | null =>
  typeof told === "number" && typeof target.value === "number" ? told - target.value : null

/** Whether a result meets a target; a value asked for is met within what a result's own digits are good for. */
export function meets(target: ReadTarget, told: Told): boolean {
  const off = offOf(target, told)
  switch (target.relation) {
    case "answers":
      return true
    case "is":
      return told === target.value
    case "atMost":
      return off !== null && off <= 0
    case "atLeast":
      return off !== null && off >= 0
    default:
      return off !== null && Math.abs(off) <= 1e-9 * Math.abs(target.value as number)
  }
}
