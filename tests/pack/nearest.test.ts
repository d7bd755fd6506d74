import { describe, it } from "vitest"
import { chargeTime, packUnderLoad, parallelSharing, powerBank } from "../../src/pack/index.js"
import { expectNearestWorks } from "../helpers/nearest.js"
import type { AnySolver } from "../helpers/solvers.js"

const refusals: readonly (readonly [solver: unknown, input: Readonly<Record<string, unknown>>, reason: string])[] = [
  [packUnderLoad, { power: "900 W" }, "too-much-power"],
  [packUnderLoad, { power: null, current: "200 A" }, "no-such-current"],
  [parallelSharing, { current: "900 A" }, "no-such-current"],
  [powerBank, { power: "40 W" }, "port-overloaded"],
  [powerBank, { power: null, current: "4 A" }, "port-overloaded"],
  [powerBank, { power: null, current: "4 A", loadVoltage: "12 V" }, "port-overloaded"],
  [chargeTime, { temperature: -5 }, "too-cold-to-charge"],
]

describe("what a refusal names as nearest works", () => {
  it.each(refusals)("refusal %#", (solver, input, reason) => {
    expectNearestWorks(solver as AnySolver, { ...(solver as AnySolver).example, ...input }, reason)
  })
})
