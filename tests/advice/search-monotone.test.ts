import { describe, expect, it } from "vitest"
import { members } from "../../src/advice/search/members.js"
import { starved, starves } from "../../src/advice/search/monotone.js"
import { checks, findingsOf } from "../../src/rig/check/assess.js"
import { assessRig, type Rig } from "../../src/rig/index.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import { withValue } from "../../src/study/place.js"
import { creature } from "../helpers/rigs.js"
import { moth } from "./search-shelf.js"

type Keys = readonly (string | number)[]

/** Places of a document that a pattern means, with the number there. */
function placesOf(value: unknown, pattern: readonly string[], keys: Keys = []): { keys: Keys; value: number }[] {
  const [key, ...rest] = pattern
  if (key === undefined) return typeof value === "number" ? [{ keys, value }] : []
  if (key === "[]") return (value as readonly unknown[]).flatMap((one, i) => placesOf(one, rest, [...keys, i]))
  return typeof value === "object" && value !== null
    ? placesOf((value as Readonly<Record<string, unknown>>)[key], rest, [...keys, key])
    : []
}

const asked = checks.filter(({ id }) => starved.includes(id))
/** What each check found, by check and subject: the time or share found, infinite where something stops it. */
function found(rig: RigSi): Map<string, { value: number; short: boolean }> {
  const { findings } = findingsOf(members, rig, asked)
  return new Map(
    findings.map(({ id, subject, value, verdict }) => [
      `${id} ${id === "supply-carries" ? "" : subject}`,
      {
        value: id === "controller-voltage" ? -(value ?? Number.NEGATIVE_INFINITY) : (value ?? Number.POSITIVE_INFINITY),
        short: verdict === "falls short",
      },
    ]),
  )
}

/** Steps for the worse of a number: many times its size, so that in the end something stops. */
const worse = (key: string, way: "up" | "down", value: number): number[] => {
  if (key === "awg") return [value + 2, value + 6, Math.min(40, value + 14)]
  if (key === "parallel") return value > 1 ? [value - 1] : []
  const by = way === "up" ? [1.2, 3, 20] : [0.8, 0.3, 0.05]
  return key === "contacts" ? by.map((b) => Math.round(value * b + 1)) : by.map((b) => value * b + (way === "up" ? 0.01 : 0))
}

describe("fields that take voltage from what runs", () => {
  it.each<[string, Rig]>([
    ["the moth on cells", moth],
    ["legs on one bank", creature("umbrella-legs")],
    ["a dragon on a converter", creature("four-bar-dragon")],
  ])("never make it faster, nor mend what falls short: %s", (_, rig) => {
    const si = assessRig.read(rig) as unknown as RigSi
    let tried = 0
    for (const [path, way] of Object.entries(starves))
      for (const { keys, value } of placesOf(si, path.replaceAll("[]", ".[]").split("."))) {
        let before = found(si)
        for (const next of worse(String(keys.at(-1)), way, value)) {
          const after = found(withValue(si, keys, next))
          for (const [name, was] of before) {
            const is = after.get(name)
            if (!is) continue
            tried++
            if (was.short) expect(is.short, `${name} after ${path} ${next}`).toBe(true)
            if (name.startsWith("duration") && Number.isFinite(is.value))
              expect(is.value, name).toBeGreaterThanOrEqual(was.value * (1 - 1e-6))
          }
          before = after
        }
      }
    expect(tried).toBeGreaterThan(40)
  })
})
