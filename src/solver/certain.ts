// All faults at once: what is already certain between fields, though some fields are faulty themselves.
import { readQuantity } from "../quantity/index.js"
import { type Either, eitherFaults } from "./either.js"
import type { Issue } from "./errors.js"
import type { AnyField, AnyFields, AnyGroup } from "./fields.js"
import type { Path } from "./issue.js"
import { limitOf, type Open, readInput } from "./read.js"

/** Most values tried for one faulty place. */
const MOST = 8

/** Values (SI) that a field could have had: its limits, a usual value, each of its words, and groups made of such. */
function samples(field: AnyField): readonly unknown[] {
  switch (field.kind) {
    case "choice":
      return Object.keys(field.options)
    case "flag":
      return [true, false]
    case "text":
      return ["a", "b"].map((letter) => letter.repeat(Math.max(1, field.min)))
    case "list": {
      const count = Math.max(1, field.min)
      return samples(field.of).map((one) => Array.from({ length: count }, () => one))
    }
    case "group":
      return samplesOfGroup(field)
    case "variant":
      return Object.entries(field.of).flatMap(([type, member]) => samplesOfGroup(member).map((one) => ({ type, ...(one as object) })))
    default: {
      const numeric = field as Extract<AnyField, { symbol: string }>
      const si = (value: unknown) => (numeric.kind === "number" ? value : readQuantity(numeric.kind, value))
      const usual = (numeric.typical ?? []).map(si)
      const limits = (["min", "above", "max", "below"] as const).map((name) => limitOf(numeric, name))
      return [...usual, ...limits].filter((value) => typeof value === "number")
    }
  }
}

const at = <T>(values: readonly T[], index: number): T => values[index % values.length] as T

function samplesOfGroup({ fields, either = [] }: Omit<AnyGroup, "label">): readonly unknown[] {
  // once for all runs: deep groups would else be worked out anew at every level
  const entries = Object.entries(fields).map(([key, field]) => [key, field, samples(field)] as const)
  const optional = entries.filter(([, field]) => field.default === null).map(([key]) => key)
  const filled = (run: number, given: ReadonlySet<string>) =>
    Object.fromEntries(
      entries.map(([key, field, values]) => [
        key,
        field.default === null && !given.has(key) ? null : values.length ? at(values, run) : undefined,
      ]),
    )
  return Array.from({ length: MOST }, (_, run) => {
    // what has to be given is found by mending the breaches of giving nothing, one after another
    const given = new Set<string>()
    for (let step = 0; step < optional.length; step++) {
      const [first] = eitherFaults(either, (name) => given.has(name))
      if (!first) break
      const way = at(first.ways, run)
      for (const name of way.give) given.add(name)
      for (const name of way.leave) given.delete(name)
    }
    const one = filled(run, given)
    return readInput(fields, one, either).ok ? one : undefined
  }).filter((one) => one !== undefined)
}

function valueAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>((so, part) => (so as Readonly<Record<string | number, unknown>> | null | undefined)?.[part], value)
}

function placed(value: unknown, path: Path, put: unknown): unknown {
  const [head, ...rest] = path
  if (head === undefined) return put
  const copy: Record<string | number, unknown> | unknown[] = Array.isArray(value) ? [...value] : { ...(value as object) }
  ;(copy as Record<string | number, unknown>)[head] = placed(valueAt(value, [head]), rest, put)
  return copy
}

/** Sets an open place right, each run in another way; null where no way is known. */
type Mend = (si: unknown, run: number) => unknown

function mender(one: Open): Mend {
  if ("field" in one) {
    const values = samples(one.field)
    return (si, run) => (values.length ? placed(si, one.path, at(values, run)) : null)
  }
  return (si, run) => {
    const { give, leave } = at(one.ways, run)
    let so = si
    for (const name of leave) so = placed(so, [...one.path, name], null)
    for (const name of give) {
      const place = [...one.path, name]
      if (valueAt(so, place) !== null && valueAt(so, place) !== undefined) continue
      const values = samples(one.fields[name] as AnyField)
      if (values.length === 0) return null
      so = placed(so, place, at(values, run))
    }
    return so
  }
}

/** Whether a path leads into what a faulty place was set right with: of that nothing was said. */
const inside = ({ path, ...open }: Open, of: Path) => "field" in open && of.length > path.length && path.every((part, i) => part === of[i])

/**
 * Faults between fields that stand whatever the faulty fields are set right to: found by trying values for each and
 * keeping the faults that never change.
 */
export function certainFaults(
  fields: AnyFields,
  either: readonly Either[] | undefined,
  partly: unknown,
  open: readonly Open[],
  check: (si: never) => readonly Issue[],
): readonly Issue[] {
  if (typeof partly !== "object" || partly === null) return []
  const menders = open.map(mender)
  let standing: readonly Issue[] | null = null
  let judged = 0
  for (let run = 0; run < (open.length ? MOST : 1); run++) {
    const si = menders.reduce<unknown>((so, mend) => (so === null ? null : mend(so, run)), partly)
    // two breaches mended at once can make a third: only whole inputs are judged
    if (si === null || !readInput(fields, si, either).ok) continue
    judged++
    const now = check(si as never).filter((one) => !open.some((place) => inside(place, one.path)))
    standing = standing === null ? now : standing.filter((one) => now.some(({ message }) => message === one.message))
    if (standing.length === 0) return []
  }
  // one trial alone makes nothing certain
  return judged > 1 || open.length === 0 ? (standing ?? []) : []
}
