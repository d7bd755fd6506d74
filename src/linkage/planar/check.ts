import { fill, type Issue, inconsistent, issue, type Values } from "../../solver/index.js"
import type { MechanismSi } from "./data.js"
import type { Si } from "./input.js"
import { bodiesOf, bodyOf } from "./model.js"

/** A fault about names that the input gives at these keys of one entry: `received` says them as `{from}`. */
function named(list: string, i: number, key: string, received: string, expected: string, item: object, more: Values = {}): Issue {
  const values: Record<string, string | number> = { ...more }
  const at = (name: string) => `${list}.${i}.${name}`
  const text: string = received.replace(/\{(\w+)\}/g, (_, name: string) => {
    values[at(name)] = String((item as Record<string, unknown>)[name])
    return `{${at(name)}}`
  })
  return { ...issue("inconsistent", [list, i, key], fill(text, values), fill(expected, values)), values }
}

/** Faults of a mechanism's lists: unknown and repeated names, bars of no length, lines that no body holds. */
export function mechanismFaults(si: MechanismSi): readonly Issue[] {
  const found: Issue[] = []
  const all = [...si.pivots, ...si.points]
  const at = new Map<string, number>()
  all.forEach((p, i) => {
    if (!at.has(p.name)) at.set(p.name, i)
    const isPivot = i < si.pivots.length
    if (at.get(p.name) !== i)
      found.push(named(isPivot ? "pivots" : "points", isPivot ? i : i - si.pivots.length, "name", "'{name}' twice", "a name of its own", p))
  })
  const known = (list: string, i: number, item: object, keys: readonly string[]) => {
    let sound = true
    for (const key of keys) {
      const name = (item as Record<string, unknown>)[key]
      if (typeof name === "string" && !at.has(name)) {
        found.push(named(list, i, key, `'{${key}}'`, "a point ({names})", item, { names: [...at.keys()].join(", ") }))
        sound = false
      }
    }
    const { from, to } = item as { from?: string; to?: string }
    if (sound && from !== undefined && to !== undefined) {
      const [a, b] = [all[at.get(from) as number], all[at.get(to) as number]]
      if (a && b && a.x === b.x && a.y === b.y) {
        found.push(inconsistent([list, i, "to"], "both points at one place", "two points apart"))
        sound = false
      }
    }
    return sound
  }
  const ends = ["from", "to"]
  let sound = true
  si.bars.forEach((bar, i) => {
    const here = known("bars", i, bar, ends)
    sound = here && sound
    if (here && (at.get(bar.from) as number) < si.pivots.length && (at.get(bar.to) as number) < si.pivots.length)
      found.push(inconsistent(["bars", i, "to"], "a bar between two pivots", "a bar with an end that moves"))
  })
  si.carried.forEach((one, i) => {
    const here = known("carried", i, one, ["point", ...ends])
    sound = here && sound
    if (!here) return
    const isOnBar = si.bars.some((b) => (b.from === one.from && b.to === one.to) || (b.from === one.to && b.to === one.from))
    if (!isOnBar) found.push(named("carried", i, "from", "'{from}' and '{to}'", "the two ends of a bar", one))
    if ((at.get(one.point) as number) < si.pivots.length || one.point === one.from || one.point === one.to)
      found.push(named("carried", i, "point", "'{point}'", "a moving point other than the bar's ends", one))
  })
  si.sliders.forEach((one, i) => {
    sound = known("sliders", i, one, ["point", ...ends]) && sound
    if (one.point === one.from || one.point === one.to)
      found.push(named("sliders", i, "point", "'{point}'", "a point other than those of the line", one))
  })
  si.cranks.forEach((one, i) => {
    sound = known("cranks", i, one, [...ends, "referenceFrom", "referenceTo"]) && sound
  })
  si.actuators.forEach((one, i) => {
    sound = known("actuators", i, one, ends) && sound
  })
  si.loads.forEach((one, i) => {
    known("loads", i, one, ["point"])
  })
  si.torques.forEach((one, i) => {
    sound = known("torques", i, one, ends) && sound
  })
  if (found.length || !sound) return found
  const bodies = bodiesOf(si, at)
  const held = (list: string, i: number, item: object, [a, b]: readonly [string, string] = ["from", "to"]) => {
    const [from, to] = [a, b].map((key) => (item as Record<string, string>)[key]) as [string, string]
    if (bodyOf(bodies, si.pivots.length, at.get(from) as number, at.get(to) as number) === null)
      found.push(named(list, i, a, `'{${a}}' and '{${b}}'`, "two points of one bar, or two pivots", item))
  }
  si.sliders.forEach((one, i) => {
    held("sliders", i, one)
  })
  si.cranks.forEach((one, i) => {
    held("cranks", i, one)
    if (one.referenceFrom !== null && one.referenceTo !== null) {
      if (one.referenceFrom === one.referenceTo) found.push(named("cranks", i, "referenceTo", "'{referenceTo}' twice", "two points", one))
      else held("cranks", i, one, ["referenceFrom", "referenceTo"])
    }
  })
  si.torques.forEach((one, i) => {
    held("torques", i, one)
  })
  return found
}

/** Faults of masses: names that are no points, or not the two ends of one bar. */
export function massFaults(si: Pick<Si, "pivots" | "points" | "bars" | "masses">): readonly Issue[] {
  const names = [...si.pivots, ...si.points].map((p) => p.name)
  return si.masses.flatMap((one, i) => {
    const unknown = (["from", "to"] as const).find((key) => !names.includes(one[key]))
    if (unknown) return [named("masses", i, unknown, `'{${unknown}}'`, "a point ({names})", one, { names: names.join(", ") })]
    const isOnBar = si.bars.some((b) => (b.from === one.from && b.to === one.to) || (b.from === one.to && b.to === one.from))
    return isOnBar ? [] : [named("masses", i, "from", "'{from}' and '{to}'", "the two ends of a bar", one)]
  })
}
