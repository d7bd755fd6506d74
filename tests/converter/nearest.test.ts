import { describe, it } from "vitest"
import { boostStage, buckStage, constantPowerPoint, converterLimit, usbSupply } from "../../src/converter/index.js"
import { expectNearestWorks } from "../helpers/nearest.js"
import type { AnySolver } from "../helpers/solvers.js"

const refusals: readonly (readonly [solver: unknown, input: Readonly<Record<string, unknown>>, reason: string])[] = [
  [boostStage, { outputVoltage: "4 V" }, "not-a-step-up"],
  [boostStage, { outputVoltage: "4.8 V", diodeVoltage: "0.1 V" }, "not-a-step-up"],
  [boostStage, { switchVoltage: "5.2 V" }, "not-a-step-up"],
  [buckStage, { inputVoltage: "5 V" }, "not-a-step-down"],
  [constantPowerPoint, { power: "200 W" }, "power-beyond-source"],
  [converterLimit, { minimumInput: "8 V" }, "input-too-low"],
  [converterLimit, { maximumInput: "4 V" }, "input-too-high"],
  [usbSupply, { standard: "pd-15V", ratedPower: "27 W" }, "not-offered"],
  [usbSupply, { cableLength: "40 m" }, "cable-too-thin"],
]

describe("what a refusal names as nearest works", () => {
  it.each(refusals)("refusal %#", (solver, input, reason) => {
    expectNearestWorks(solver as AnySolver, { ...(solver as AnySolver).example, ...input }, reason)
  })
})
