// The wearer is described once: wherever a solver asks for a body, its limits are those of wearerFields, or it is listed here.
import { describe, expect, it } from "vitest"
import type { AnyFields } from "../../src/solver/index.js"
import { carriedLoad, wearerFields } from "../../src/worn/index.js"
import { solvers } from "../helpers/solvers.js"

interface Range {
  readonly kind: string
  readonly min?: unknown
  readonly max?: unknown
  readonly default?: unknown
}

/** Every field of one of these names, wherever it lies in an input. */
function named(fields: AnyFields, at: string): [place: string, name: string, field: Range][] {
  return Object.entries(fields).flatMap(([name, field]): [string, string, Range][] => {
    const place = `${at}.${name}`
    if (name in wearerFields) return [[place, name, field as Range]]
    const inner = field.kind === "list" ? field.of : field
    if (inner.kind === "group") return named(inner.fields, place)
    if (inner.kind === "variant") return Object.values(inner.of).flatMap((member) => named(member.fields, place))
    return []
  })
}

const places = solvers.flatMap(({ id, solver }) => named(solver.input as unknown as AnyFields, id))
const ranges = (field: Range) => `${String(field.min)} to ${String(field.max)}`
const shared = wearerFields as unknown as Readonly<Record<string, Range>>

/** Ranges of their own, each with its reason. */
const own: readonly (readonly [place: RegExp, range: string, reason: string])[] = [
  [/^worn\.bodyDimension\.stature$/, "1.3 to 2.2", "a straight line through measured adults says nothing of children"],
  [/^worn\.(windLoad|overturning)\.walkingSpeed$/, "0 to 10", "speed against the air, on wheels as well"],
  [/\.wind\.walkingSpeed$/, "0 to 10", "the rig's wind is that of windLoad"],
  [/^worn\.(metabolicRate|overturning)\.rigMass$/, "0 to 150", "a walker or a panel's bearer without a rig is judged as well"],
  [/^frame\.naturalFrequency\.stepRate$/, "0.5 to 4", "a part may be shaken by slow steps and by a run as well"],
]
const ownRange = (place: string) => own.find(([pattern]) => pattern.test(place))?.[1]

describe("the wearer's fields", () => {
  it.each(places)("%s has the shared limits, or its reason", (place, name, field) => {
    expect(field.kind).toBe(shared[name]?.kind)
    expect(ranges(field)).toBe(ownRange(place) ?? ranges(shared[name] as Range))
  })

  it("the list of reasons names places that are there and differ", () => {
    for (const [pattern, range] of own) {
      const found = places.filter(([place]) => pattern.test(place))
      expect(found.length, String(pattern)).toBeGreaterThan(0)
      for (const [place, name] of found) expect(range, place).not.toBe(ranges(shared[name] as Range))
    }
  })

  it("steps by default as people on floors do, wherever a default is given (Pachi and Ji 2005: 2.0 Hz)", () => {
    const given = places.flatMap(([, name, field]) => (name === "stepRate" && field.default !== null ? [field.default] : []))
    expect(given.length).toBeGreaterThan(2)
    expect(new Set(given)).toEqual(new Set([2]))
    expect(carriedLoad.sources.some((s) => s.by === "A. Pachi, T. Ji")).toBe(true)
  })
})
