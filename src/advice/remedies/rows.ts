// What a row of the table of adjustables is, and the ladders of values that it gives for a document.
import type { RigSi } from "../../rig/whole/faults.js"
import { expand, namesAlong, valueAt } from "./paths.js"
import { type Shown, type Steps, stepped, tellValue } from "./steps.js"

/** What a change asks of its maker: turning something, a small part, a new part, rebuilding, or asking less of the rig. */
export type Work = "setting" | "small part" | "new part" | "rebuilding" | "asking less"

/** The same from the lightest on. */
export const works: readonly Work[] = ["setting", "small part", "new part", "rebuilding", "asking less"]

/** One value of a document, as it is to stand there. */
export interface Setting {
  /** Path in the document, such as `power.buses[0].run.awg`. */
  readonly path: string
  readonly value: unknown
}

/** One change: values that go together, and how they are told. */
export interface Rung {
  readonly settings: readonly Setting[]
  readonly was: string
  readonly becomes: string
  /** What the part costs beyond what was there; null where nobody said. */
  readonly price?: number | null
}

/** Changes of one thing in one direction, the nearest first. */
export interface Ladder {
  /** Row that it comes from. */
  readonly name: string
  /** What the values are of: `for the wire to wings`. */
  readonly of: string
  readonly work: Work
  readonly rungs: readonly Rung[]
  /** Whether the best may lie between the ends. */
  readonly peaked: boolean
}

/** What a row may ask of the rig beside the document. */
export interface RowRig {
  readonly si: RigSi
  /** Time out and back of a motion, s, the worst of all conditions; null where it is stopped. */
  readonly cycle: (index: number) => number | null
}

/** A row: which values it steps, and how. */
export interface Row {
  readonly name: string
  /** Paths that it changes; `[]` stands for every entry of a list. */
  readonly paths: readonly string[]
  ladders(rig: RowRig): readonly Ladder[]
}

type Names = readonly string[]

interface NumberRow extends Shown {
  readonly name: string
  readonly path: string
  /** What it is of, by the names along its path, the nearest first. */
  readonly of: (names: Names) => string
  readonly steps: Steps
  readonly work: Work
  readonly peaked?: boolean
  /** Words round a value: `AWG 16`. */
  readonly say?: (text: string) => string
  /** Whether it is a count. */
  readonly whole?: boolean
  /** Value that one left out stands for. */
  readonly absent?: number
  /** Whether it counts here. */
  readonly when?: (group: Readonly<Record<string, unknown>>) => boolean
}

const parentOf = (path: string) => path.slice(0, path.lastIndexOf("."))

/** Entries that are alike in every mechanism of a motion are changed together. */
const alike = (path: string, names: Names, value: number) =>
  `${path.replace(/mechanisms\[\d+\]/, "mechanisms[]")}|${/masses\[/.test(path) ? names[0] : ""}|${value}`

/** A row of one number. */
export function numberRow(row: NumberRow): Row {
  const { name, path: pattern, of, steps, work, whole = false, peaked = false, say = (text: string) => text, absent, when } = row
  return {
    name,
    paths: [pattern],
    ladders: ({ si }) => {
      const groups = new Map<string, { readonly value: number; readonly paths: string[]; readonly names: Names }>()
      for (const path of expand(si, pattern)) {
        const stated = valueAt(si, path)
        const value = stated === null ? absent : stated
        if (typeof value !== "number" || !(when?.(valueAt(si, parentOf(path)) as Readonly<Record<string, unknown>>) ?? true)) continue
        const names = namesAlong(si, path)
        const key = alike(path, names, value)
        const known = groups.get(key)
        if (known) known.paths.push(path)
        else groups.set(key, { value, paths: [path], names })
      }
      return [...groups.values()].flatMap(({ value, paths, names }) => {
        const was = say(tellValue(row, value).text)
        // told for all of them by the motion's name
        const [first, ...rest] = names
        const shared = paths.length > 1 && rest.length ? [first as string, `all ${paths.length} parts of ${names.at(-1)}`] : names
        return stepped(value, steps, whole)
          .filter((side) => side.length)
          .map((side): Ladder => {
            const rungs = side.map((one): Rung => {
              const { text, value: told } = tellValue(row, one)
              return { settings: paths.map((path) => ({ path, value: told })), was, becomes: say(text) }
            })
            return { name, of: of(shared), work, peaked, rungs: rungs.filter(({ becomes }) => becomes !== was) }
          })
      })
    },
  }
}

/** A part whose figures change together. */
export interface Figure extends Shown {
  readonly field: string
  /** Power of the factor that it goes with. */
  readonly by: number
}

interface FiguresRow {
  readonly name: string
  /** Pattern of the part. */
  readonly at: string
  readonly type?: string
  readonly figures: readonly Figure[]
  readonly factors: readonly number[]
  /** Fields that are told; all change. */
  readonly tells: readonly string[]
  readonly of: (names: Names) => string
  readonly work: Work
  readonly peaked?: boolean
}

/** A row of a part whose figures go together, such as a drive geared otherwise. */
export function figuresRow({ name, at, type, figures, factors, tells, of, work, peaked = false }: FiguresRow): Row {
  return {
    name,
    paths: figures.map(({ field }) => `${at}.${field}`),
    ladders: ({ si }) =>
      expand(si, at).flatMap((path): Ladder[] => {
        const part = valueAt(si, path) as Readonly<Record<string, unknown>> | null | undefined
        if (!part || (type && part.type !== type)) return []
        const here = figures.flatMap((figure) => {
          const value = part[figure.field]
          return typeof value === "number" && value !== 0 ? [{ ...figure, value }] : []
        })
        if (!here.some(({ field }) => tells.includes(field))) return []
        const text = (factor: number) =>
          here
            .filter(({ field }) => tells.includes(field))
            .map((figure) => tellValue(figure, figure.value * factor ** figure.by).text)
            .join(" and ")
        const rung = (factor: number): Rung => ({
          settings: here.map((figure) => ({
            path: `${path}.${figure.field}`,
            value: tellValue(figure, figure.value * factor ** figure.by).value,
          })),
          was: text(1),
          becomes: text(factor),
        })
        const sides = [factors.filter((f) => f > 1).sort((a, b) => a - b), factors.filter((f) => f < 1).sort((a, b) => b - a)]
        return sides
          .filter((side) => side.length)
          .map((side) => ({ name, of: of(namesAlong(si, path)), work, peaked, rungs: side.map(rung) }))
      }),
  }
}

interface ChoiceRow {
  readonly name: string
  readonly path: string
  /** Words in the order in which they are tried from the present one on. */
  readonly order: readonly string[]
  readonly words?: Readonly<Record<string, string>>
  readonly of: (names: Names) => string
  readonly work: Work
}

/** A row of a choice. */
export function choiceRow({ name, path: pattern, order, words = {}, of, work }: ChoiceRow): Row {
  return {
    name,
    paths: [pattern],
    ladders: ({ si }) =>
      expand(si, pattern).flatMap((path): Ladder[] => {
        const now = valueAt(si, path)
        if (typeof now !== "string" || !order.includes(now)) return []
        const rungs = order.slice(order.indexOf(now) + 1).map((word) => ({
          settings: [{ path, value: word }],
          was: words[now] ?? now,
          becomes: words[word] ?? word,
        }))
        return rungs.length ? [{ name, of: of(namesAlong(si, path)), work, peaked: false, rungs }] : []
      }),
  }
}
