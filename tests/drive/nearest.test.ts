import { describe, it } from "vitest"
import { dcMotor, hobbyServo, linearActuator, powerScrew } from "../../src/drive/index.js"
import { expectNearestWorks } from "../helpers/nearest.js"
import type { AnySolver } from "../helpers/solvers.js"

const refusals: readonly (readonly [solver: unknown, input: Readonly<Record<string, unknown>>, reason: string])[] = [
  [dcMotor, { voltage: "0.1 V" }, "cannot-start"],
  [dcMotor, { torque: "5 N m" }, "stall"],
  [linearActuator, { force: "2 kN" }, "stall"],
  [hobbyServo, { torque: "2 N m" }, "stall"],
  [hobbyServo, { secondStallTorque: "20 kgf cm", voltage: "2 V", torque: "0.2 N m" }, "cannot-start"],
  [powerScrew, { pitch: "4 mm", starts: 8, threadFriction: 0.9 }, "jams"],
]

describe("what a refusal names as nearest works", () => {
  it.each(refusals)("refusal %#", (solver, input, reason) => {
    expectNearestWorks(solver as AnySolver, { ...(solver as AnySolver).example, ...input }, reason)
  })
})
