// Reads what is asked of a search into a plan, or tells every fault of it.
import { assessRig } from "../../rig/index.js"
import type { RigSi } from "../../rig/whole/faults.js"
import { type AnyFields, InputError, type Issue, issue, type Path } from "../../solver/index.js"
import { shown, unknownKey } from "../../solver/issue.js"
import { readInput } from "../../solver/read.js"
import { type AnySolver, ruleFaults, valueAt, withValue } from "../../study/place.js"
import { parseCatalogue } from "../catalogue.js"
import { type CatalogueSi, readVary } from "./axes.js"
import type { Axis, Plan, PlanGoal } from "./plan.js"
import type { SearchGoal } from "./request.js"

const solver = assessRig as unknown as AnySolver

const under = (root: Path, found: readonly Issue[]): Issue[] =>
  found.map(({ code, path, received, expected }) => issue(code, [...root, ...path], received, expected))

const keepFields = {
  price: { kind: "number", symbol: "c_max", label: "maximum price of all parts", min: 0.01, max: 1e7, default: null },
  mass: { kind: "mass", symbol: "m_max", label: "maximum mass of everything carried", min: "0.1 g", max: 100, default: null },
  duration: { kind: "time", symbol: "t_max", label: "maximum time out and back", min: "1 ms", max: "2 h", default: null },
  hours: { kind: "time", symbol: "t_day", label: "minimum time on one charge", min: "1 min", max: "48 h", default: null },
  unmade: {
    kind: "list",
    label: "checks that need not be made",
    min: 0,
    max: 100,
    default: [],
    of: { kind: "text", label: "check", min: 1, max: 100 },
  },
} as unknown as AnyFields

interface KeepSi {
  readonly price: number | null
  readonly mass: number | null
  readonly duration: number | null
  readonly hours: number | null
  readonly unmade: readonly string[]
}

const words = ["price", "mass", "duration", "hours"] as const

function readGoals(given: unknown, rig: RigSi, issues: Issue[]): PlanGoal[] {
  const list = given === undefined ? (["price", "mass"] satisfies readonly SearchGoal[]) : given
  if (!Array.isArray(list) || list.length === 0) {
    issues.push(issue("wrong-type", ["goals"], shown(given), "a list of at least one goal"))
    return []
  }
  const motions = rig.motions.map((m) => m.name)
  return list.flatMap((goal: unknown, i): PlanGoal[] => {
    const path = ["goals", i]
    if (typeof goal === "object" && goal !== null && "duration" in goal) {
      const { duration: motion } = goal as { readonly duration: unknown }
      if (typeof motion === "string" && motions.includes(motion)) return [{ type: "duration", motion }]
      issues.push(issue("inconsistent", [...path, "duration"], shown(motion), `one of ${motions.map((n) => `'${n}'`).join(", ")}`))
      return []
    }
    const type = words.find((word) => word === goal)
    if (type) return [{ type, motion: null }]
    issues.push(issue("not-a-choice", path, shown(goal), `one of ${words.join(", ")}, or the duration of a motion by its name`))
    return []
  })
}

/** Faults of parts without a price where prices count. */
function unpriced(axes: readonly Axis[], catalogue: CatalogueSi): Issue[] {
  const families = new Set(axes.map((axis) => axis.family))
  return catalogue.parts.flatMap((part, i) =>
    families.has(part.family) && part.price === null
      ? [issue("missing", ["catalogue", "parts", i, "price"], "nothing", "a price: it counts in this search")]
      : [],
  )
}

/** Faults of what an axis brings into the document on its own: what may not be given together. */
function clashes(rig: RigSi, axes: readonly Axis[], vary: readonly unknown[]): Issue[] {
  return axes.flatMap((axis, a) =>
    axis.members.flatMap((member) => {
      const changed = member.puts.reduce<object>((doc, { keys, value }) => withValue(doc, keys, value), rig)
      return ruleFaults(solver, changed, []).map((fault) =>
        issue(fault.code, ["vary", vary.indexOf(vary[a])], `'${member.name}': ${fault.message}`, "what may stand in the document"),
      )
    }),
  )
}

/** Faults of two axes that write the same field. */
function overlaps(axes: readonly Axis[]): Issue[] {
  const text = (keys: Path) => keys.join(".")
  return axes.flatMap((axis, a) => {
    const before = new Map(axes.slice(0, a).flatMap((one, b) => (one.members[0]?.puts ?? []).map((put) => [text(put.keys), b] as const)))
    const again = (axis.members[0]?.puts ?? []).find((put) => before.has(text(put.keys)))
    return again
      ? [
          issue(
            "inconsistent",
            ["vary", a, "at"],
            `${text(again.keys)}, which vary[${before.get(text(again.keys))}] changes too`,
            "a place of its own",
          ),
        ]
      : []
  })
}

/** Faults of numbers of a listed part that another axis exchanges. */
function exchanged(axes: readonly Axis[]): Issue[] {
  return axes.flatMap((axis, a) =>
    axis.keys.flatMap(([list, entry], k) => {
      const by = list === "parts" ? axes.findIndex(({ row }) => row !== null && row.index === entry) : -1
      return by < 0
        ? []
        : [issue("inconsistent", ["vary", a, "at"], `${axis.at[k]}, a part that vary[${by}] exchanges`, "a part that stays in the list")]
    }),
  )
}

/** Faults of numbers that lie within a part which some of its family do not have. */
function beneath(axes: readonly Axis[]): Issue[] {
  return axes.flatMap((axis, a) =>
    axis.family !== null
      ? []
      : axis.keys.flatMap((keys) =>
          axes.flatMap((other) =>
            other.members.flatMap((member) => {
              const put = member.puts.find((one) => one.keys.length < keys.length && one.keys.every((key, i) => key === keys[i]))
              return put && valueAt(put.value, keys.slice(put.keys.length)) === undefined
                ? [
                    issue(
                      "inconsistent",
                      ["vary", a, "at"],
                      `${axis.at[0]}, which '${member.name}' does not have`,
                      "a field of every part tried there",
                    ),
                  ]
                : []
            }),
          ),
        ),
  )
}

/** Puts rig and request together; throws one InputError that names every fault of them. */
export function readPlan(rig: unknown, request: unknown): Plan & { readonly currency: string } {
  const issues: Issue[] = []
  let document: RigSi | null = null
  try {
    document = assessRig.read(rig as never) as unknown as RigSi
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    issues.push(...under(["rig"], error.issues))
  }
  const asked = (typeof request === "object" && request !== null ? request : {}) as Readonly<Record<string, unknown>>
  const known = ["catalogue", "vary", "goals", "keep"]
  for (const key of Object.keys(asked)) if (!known.includes(key)) issues.push(unknownKey([key], key, known))
  const catalogue = parseCatalogue(asked.catalogue)
  if ("issues" in catalogue) issues.push(...under(["catalogue"], catalogue.issues))
  const keep = readInput(keepFields, asked.keep ?? {})
  if (!keep.ok) issues.push(...under(["keep"], keep.issues))
  if (!Array.isArray(asked.vary) || asked.vary.length === 0)
    issues.push(issue(asked.vary === undefined ? "missing" : "wrong-type", ["vary"], shown(asked.vary), "a list of what may be changed"))
  if (!document || "issues" in catalogue || !keep.ok || !Array.isArray(asked.vary)) throw new InputError("search", issues)
  const base = document
  const goals = readGoals(asked.goals, base, issues)
  const limits = keep.si as KeepSi
  const axes = readVary(solver, base, catalogue.si, asked.vary, issues)
  if (!issues.length) issues.push(...overlaps(axes), ...exchanged(axes), ...beneath(axes), ...clashes(base, axes, asked.vary))
  const ownLimit = base.budget?.price ?? null
  if (goals.some((goal) => goal.type === "price") || limits.price !== null || ownLimit !== null)
    issues.push(...unpriced(axes, catalogue.si))
  if (goals.some((goal) => goal.type === "hours") || limits.hours !== null)
    for (const key of ["hours", "moves"] as const)
      if (base.day[key] === null) issues.push(issue("missing", ["rig", "day", key], "nothing", "what the day asks for: hours are a goal"))
  if (!base.parts.length && !axes.some((axis) => axis.row))
    issues.push(issue("missing", ["rig", "parts"], "nothing", "what is carried, with its mass and price"))
  if (issues.length) throw new InputError("search", issues)
  const tighter = (a: number | null, b: number | null) => (a === null ? b : b === null ? a : Math.min(a, b))
  const price = tighter(limits.price, ownLimit)
  const mass = tighter(limits.mass, base.budget?.mass ?? null)
  const limited = price === null && mass === null && !base.budget ? base : { ...base, budget: { parts: null, ...base.budget, price, mass } }
  return {
    rig: limited as RigSi,
    axes,
    goals,
    keep: { duration: limits.duration, hours: limits.hours, unmade: limits.unmade },
    wary: [],
    written: writtenBy(axes),
    currency: catalogue.si.currency,
  }
}

/** Paths that some axis writes, as findings name them. */
const writtenBy = (axes: readonly Axis[]): string[] => [
  ...new Set(axes.flatMap((axis) => axis.members.flatMap((member) => member.puts.map((put) => pathOf(put.keys))))),
]

/** A path as findings name what is missing. */
const pathOf = (keys: Path): string => keys.map((key, i) => (typeof key === "number" ? `[${key}]` : i ? `.${key}` : key)).join("")
