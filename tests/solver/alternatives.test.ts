import { describe, expect, it } from "vitest"
import { type Either, eitherFaults, eitherHolds, namesIn } from "../../src/solver/either.js"
import type { InputError } from "../../src/solver/index.js"
import { solvers } from "../helpers/solvers.js"
import { type LampInput, lamp } from "./lamp.js"

const messages = (input: unknown): readonly string[] => {
  const outcome = lamp.attempt(input)
  return outcome.ok ? [] : (outcome.error as InputError).issues.map((i) => i.message)
}
const good = lamp.example
/** Every set of rules in the descriptions of all solvers, however deep. */
function rulesIn(part: unknown): (readonly Either[])[] {
  if (typeof part !== "object" || part === null) return []
  return Object.entries(part).flatMap(([key, value]) =>
    key === "either" && Array.isArray(value) && value.length ? [value as Either[]] : rulesIn(value),
  )
}

const changed = (change: object) => messages({ ...good, ...change })

describe("fields that stand for one another", () => {
  it("are told when none, too many or half of one is given", () => {
    expect(messages(good)).toEqual([])
    expect(changed({ current: undefined })).toEqual(["current: expected one of current, power or resistance, received nothing"])
    expect(changed({ power: "3 W" })).toEqual(["power: expected only one of current, power or resistance, received current and power"])
    expect(changed({ duty: null })).toEqual(["duty: expected either duty or on with period, received nothing"])
    expect(changed({ duty: null, on: 3 })).toEqual(["period: expected period together with on, received nothing"])
    expect(changed({ on: 3 })).toEqual(["on: expected either duty or on with period, not both, received duty and on"])
    expect(changed({ duty: undefined, on: 3, period: 4 })).toEqual([])
    expect(changed({ front: 1 })).toEqual(["back: expected back together with front, received nothing"])
    expect(changed({ front: 1, back: 1 })).toEqual([])
    expect(changed({ oil: 1 })).toEqual([])
    expect(changed({ oil: 1, gas: 1 })).toEqual(["gas: expected either oil or gas, not both, received oil and gas"])
    expect(changed({ low: null })).toEqual(["low: expected at least one of low or high, received nothing"])
    expect(changed({ high: 12 })).toEqual([])
    expect(changed({ hysteresis: 0.1 })).toEqual([
      "hysteresis: expected hysteresis only beside low with high or oil, received hysteresis alone",
    ])
    expect(changed({ hysteresis: 0.1, high: 5 })).toEqual([])
    expect(changed({ hysteresis: 0.1, oil: 1 })).toEqual([])
    expect(changed({ wall: { ...good.wall, stone: 3 } })).toEqual([
      "wall.stone: expected either wood or stone, not both, received wood and stone",
    ])
    expect(changed({ light: { type: "strip", length: 1, perMetre: 3, cutAt: 1, cutEvery: 1 } })).toEqual([
      "light.cutEvery: expected either cutAt or cutEvery, not both, received cutAt and cutEvery",
    ])
  })
  it("are judged alike with and without telling the fault, for every set of fields of every solver", () => {
    const all = [...solvers.flatMap(({ solver }) => [solver.either, ...rulesIn(solver.input)]), lamp.either, ...rulesIn(lamp.input)]
    const sets = all.filter((rules) => rules.length > 0)
    expect(sets.length).toBeGreaterThan(20)
    for (const rules of sets as (readonly Either[])[]) {
      const names = [...new Set(namesIn(rules))]
      const { bitOf, holds } = eitherHolds(rules)
      expect(names.length).toBeLessThan(16)
      for (let set = 0; set < 2 ** names.length; set++) {
        const given = names.filter((_, i) => set & (1 << i))
        const bits = given.reduce((sum, name) => sum | bitOf(name), 0)
        if (holds(bits) !== (eitherFaults(rules, (name) => given.includes(name)).length === 0))
          expect.fail(`${JSON.stringify(rules)}: ${given}`)
      }
    }
  })
  it("are judged by what was given, right or wrong, and all at once with every other fault", () => {
    expect(
      changed({ current: "3 kg", power: "3 m", low: undefined, front: 9, wall: { ...good.wall, name: "" } }).map((m) => m.split(":")[0]),
    ).toEqual(["current", "power", "front", "wall.name", "power", "back", "low"])
  })
  it("let what is certain otherwise be told at once, and nothing that mending could change", () => {
    expect(changed({ duty: undefined, on: 5, period: 4, current: undefined }).map((m) => m.split(":")[0])).toEqual(["current", "on"])
    // leaving the pair out mends both
    expect(changed({ on: 5, period: 4 }).map((m) => m.split(":")[0])).toEqual(["on"])
    expect(changed({ light: { ...good.light, cutAt: 5 }, wall: undefined }).map((m) => m.split(":")[0])).toEqual(["wall", "light.cutAt"])
    expect(changed({ light: { ...good.light, length: "x", cutAt: 5 } }).map((m) => m.split(":")[0])).toEqual(["light.length"])
  })
  it("are each told once where two rules find the same place", () => {
    const rules = [{ exactlyOne: ["a", "b"] }, { atLeastOne: ["a", "c"] }] as const
    expect(eitherFaults(rules, () => false).map(({ name }) => name)).toEqual(["a"])
  })
})

describe("a variant", () => {
  it("is read by its type, and only that member's faults are told", () => {
    expect(lamp.read(good).light).toEqual({ type: "strip", length: 2, perMetre: 10, cutAt: null, cutEvery: null })
    expect(lamp.read({ ...good, hook: { type: "ring", diameter: "30 mm" } }).hook).toEqual({ type: "ring", diameter: 0.03 })
    expect(lamp.read(good).hook).toBeNull()
    expect(changed({ light: { type: "bulb", power: "200 W", length: 3 } })).toEqual([
      "light.power: expected at most 100 W, received '200 W'",
      "light.length: expected no length with type 'bulb' (it goes with 'strip'), received 'length'",
    ])
    expect(changed({ light: { type: "flame", wicks: 1.5, wiks: 2 } }).at(-1)).toBe(
      "light.wiks: expected a known name (did you mean 'wicks'?), received 'wiks'",
    )
    expect(changed({ light: { type: "flame", wicks: 1, typ: "flame" } })).toHaveLength(1)
  })
  it("says which types there are, and the one probably meant", () => {
    expect(changed({ light: { length: 3 } })).toEqual(["light.type: expected one of bulb, strip, flame, received nothing"])
    expect(changed({ light: { type: "stripe", nonsense: 3 } })).toEqual([
      "light.type: expected one of bulb, strip, flame (did you mean 'strip'?), received 'stripe'",
    ])
    for (const type of ["toString", "constructor", "__proto__", 3, null, {}])
      expect(
        changed({ light: { type } }).map((m) => m.split(":")[0]),
        String(type),
      ).toEqual(["light.type"])
    expect(changed({ light: Object.create({ type: "bulb", power: 3 }) })).toHaveLength(1)
    for (const light of [3, "bulb", [], true, null]) expect(changed({ light })[0]).toMatch(/^light: expected an object with a type/)
    expect(changed({ light: undefined })).toEqual(["light: expected light, received nothing"])
  })
  it("is read in lists, each entry by its own type", () => {
    const others = [{ type: "bulb", power: "5 W" }, { type: "flame" }, { type: "lamp" }]
    expect(changed({ others }).map((m) => m.split(":")[0])).toEqual(["others[1].wicks", "others[2].type"])
  })
  it("is narrowed by its type in the kernel", () => {
    const si = lamp.read(good as LampInput)
    expect(si.light.type === "strip" ? si.light.length : null).toBe(2)
  })
})
