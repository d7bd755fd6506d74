// Values that a refusal offers: each was put into the input alone, read as any input is, and answered.
import type { Either } from "./either.js"
import { isNoSolution, type NoSolution } from "./errors.js"
import type { AnyField, AnyFields, SiOf } from "./fields.js"
import { fill } from "./message.js"
import { readInput } from "./read.js"
import type { Solver } from "./solver.js"

/** A number of an input that may be changed to make it answer: its path (`threads.2`, `strut.stroke`), and between which values. */
export interface Knob {
  readonly path: string
  readonly from: number
  readonly to: number
}

/** The number at a path of an input. */
function numberAt(si: unknown, path: string): number | null {
  const value = path.split(".").reduce<unknown>((part, key) => (part as Record<string, unknown> | null)?.[key], si)
  return typeof value === "number" ? value : null
}

/** The input with the number at a path replaced. */
export function withNumber<T>(si: T, path: string, value: number): T {
  const [key, ...rest] = path.split(".") as [string, ...string[]]
  const old = (si as Record<string, unknown>)[key]
  const put = rest.length ? withNumber(old, rest.join("."), value) : value
  if (Array.isArray(si)) return si.map((item, i) => (String(i) === key ? put : item)) as T
  return { ...si, [key]: put }
}

/** Whether a value answers: put at its path into the input, alone, it is within its field's limits, goes with the rest and is solved. */
type Answers = (path: string, value: number) => boolean

const answersIn =
  <Si>(si: Si, read: (changed: Si) => Si | null, kernel: (changed: Si) => unknown): Answers =>
  (path, value) => {
    const changed = read(withNumber(si, path, value))
    return changed !== null && !isNoSolution(kernel(changed))
  }

const those = (offered: Readonly<Record<string, number>>, answers: Answers): Record<string, number> =>
  Object.fromEntries(Object.entries(offered).filter(([path, value]) => answers(path, value)))

/** An answer as it is, a refusal with only those of its nearest values that answer. */
export function tried<Si extends object, Out, Code extends string>(
  outcome: Out | NoSolution<Code>,
  si: Si,
  fields: object,
  kernel: (si: Si) => Out | NoSolution,
  check: (si: Si) => readonly unknown[] = () => [],
  either: readonly Either[] = [],
): Out | NoSolution<Code> {
  if (!isNoSolution(outcome)) return outcome
  const read = (changed: Si) => {
    const { ok, si: value } = readInput(fields as AnyFields, changed, either) as { readonly ok: boolean; readonly si: Si }
    return ok && check(value).length === 0 ? value : null
  }
  return { ...outcome, nearest: those(outcome.nearest, answersIn(si, read, kernel)) }
}

/** Steps outward from the value given, each this much farther than the last, from a ten-thousandth of the range on. */
const OUTWARD = 28
const HALVINGS = 24

/**
 * A refusal with the nearest values that answer, said in its message too: of `offered`, those that do; and between the ends of
 * a knob the nearest one, looked for.
 */
export function withNearest<In, Out, Code extends string>(
  refusal: NoSolution<Code>,
  solver: Solver<In, Out>,
  kernel: (si: SiOf<In>) => Out | NoSolution,
  si: SiOf<In>,
  offered: Readonly<Record<string, number>>,
  knobs: readonly Knob[] = [],
): NoSolution<Code> {
  const read = (changed: SiOf<In>) => {
    const outcome = solver["~standard"].validate(changed)
    return "value" in outcome ? outcome.value : null
  }
  const answers = answersIn(si, read, kernel)
  const nearest = those(offered, answers)
  for (const { path, from, to } of knobs) {
    const given = numberAt(si, path)
    if (given === null || path in nearest) continue
    const found = outward(given, from, to, (value) => answers(path, value))
    if (found !== null) nearest[path] = found
  }
  return { ...refusal, nearest, message: refusal.message + hint(solver.input as unknown as AnyFields, nearest) }
}

/** The field at a path of an input; of a variant, that of the member which has it. */
function fieldAt(fields: AnyFields, path: string): AnyField | undefined {
  const [first, ...rest] = path.split(".") as [string, ...string[]]
  return rest.reduce<AnyField | undefined>((field, key) => {
    if (field?.kind === "variant") return Object.values(field.of).find((member) => key in member.fields)?.fields[key]
    return field?.kind === "group" ? field.fields[key] : field?.kind === "list" ? field.of : undefined
  }, fields[first])
}

/** A sentence that says the nearest values in words; nothing where there is none. */
function hint(fields: AnyFields, nearest: Readonly<Record<string, number>>): string {
  const parts = Object.keys(nearest).flatMap((path) => {
    const field = fieldAt(fields, path)
    if (!field || !("symbol" in field)) return []
    const unit = field.kind === "angle" ? " °" : ""
    return [`${field.label} {${path}${field.kind === "number" ? "" : ` ${field.kind}${unit}`}}`]
  })
  return parts.length ? fill(` Changed alone, about one of these would do: ${parts.join("; ")}.`, nearest) : ""
}

/** The value nearest to `given`, between two ends, that works: looked for in growing steps to both sides, then by halving. */
function outward(given: number, from: number, to: number, works: (value: number) => boolean): number | null {
  const range = to - from
  let last = 0
  for (let k = 0; k <= OUTWARD; k++) {
    const off = range * 10 ** (-4 + (4 * k) / OUTWARD)
    const inside = [given + off, given - off].filter((value) => value >= from && value <= to)
    const hit = inside.find(works)
    if (hit !== undefined) {
      let [good, bad] = [hit, given + Math.sign(hit - given) * last]
      for (let i = 0; i < HALVINGS; i++) {
        const middle = (good + bad) / 2
        if (works(middle)) good = middle
        else bad = middle
      }
      return good
    }
    last = off
  }
  return null
}
