import { describe, it } from "vitest"
import { fourBar, fourBarLimits, grashof, scissor, servoPushrod, sliderCrank } from "../../src/linkage/index.js"
import { expectNearestWorks } from "../helpers/nearest.js"
import type { AnySolver } from "../helpers/solvers.js"

const refusals: readonly (readonly [solver: unknown, input: Readonly<Record<string, unknown>>, reason: string])[] = [
  [grashof, { coupler: "300 mm" }, "cannot-close"],
  [fourBarLimits, { ground: "260 mm" }, "cannot-close"],
  [fourBar, { input: "75 mm", coupler: "45 mm", output: "85 mm", inputAngle: "170 deg" }, "cannot-close"],
  [sliderCrank, { coupler: "15 mm", offset: 0, crankAngle: "80 deg" }, "cannot-close"],
  [scissor, { tilt: "90 deg", driverForce: "80 N" }, "stall"],
  [servoPushrod, { servoHorn: "25 mm", flapHorn: "20 mm", travelTo: "90 deg", servoTorque: null }, "binding"],
  [servoPushrod, { servoHorn: "25 mm", flapHorn: "20 mm", travelFrom: "-90 deg", travelTo: "10 deg", servoTorque: null }, "binding"],
  [servoPushrod, { servoTorque: "0.01 N m" }, "stall"],
]

describe("what a refusal names as nearest works", () => {
  it.each(refusals)("refusal %#", (solver, input, reason) => {
    expectNearestWorks(solver as AnySolver, { ...(solver as AnySolver).example, ...input }, reason)
  })
})
