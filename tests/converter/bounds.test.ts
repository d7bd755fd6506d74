import { describe, expect, it } from "vitest"
import { boostStage, buckStage, constantPowerPoint, converterLimit, startUp, usbSupply } from "../../src/converter/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import type { AnySolver } from "../helpers/solvers.js"
import { any } from "../helpers/working.js"

const refusalOf = (solver: AnySolver, input: object) => {
  const out = solver.si(solver.read(input))
  return isNoSolution(out) ? out : null
}
const limit = { outputVoltage: 12, loadCurrent: 0.1, sourceVoltage: 5, efficiency: [{ outputCurrent: 1, efficiency: 0.9 }] }
const stage = { outputCurrent: 1, inductance: 1e-5, frequency: 5e5 }

describe("what is offered instead lies at the very edge: a hundredth nearer to what was asked does not do", () => {
  it.each([
    ["power", any(constantPowerPoint), { sourceVoltage: 5, sourceResistance: 0.25, power: 30 }],
    ["sourceResistance", any(constantPowerPoint), { sourceVoltage: 5, sourceResistance: 0.25, power: 30 }],
    ["sourceVoltage", any(converterLimit), { ...limit, minInputVoltage: 6, sourceResistance: 0.5, quiescentCurrent: 0.2 }],
    ["sourceVoltage", any(converterLimit), { ...limit, maxInputVoltage: 4.5 }],
    ["sourceVoltage", any(converterLimit), { ...limit, outputVoltage: 6, sourceResistance: 0.5, topology: "buck" }],
    ["sourceVoltage", any(converterLimit), { ...limit, outputVoltage: 4, sourceResistance: 0.5, topology: "boost" }],
    ["outputVoltage", any(boostStage), { ...stage, inputVoltage: 5, outputVoltage: 4 }],
    ["inputVoltage", any(buckStage), { ...stage, inputVoltage: 4, outputVoltage: 5, diodeVoltage: 0.4, switchVoltage: 0.2 }],
    ["ratedPower", any(usbSupply), { type: "pd-15V", ratedPower: 20, loadCurrent: 1 }],
    ["ratedPower", any(usbSupply), { type: "pd-36V", ratedPower: 100, loadCurrent: 1, cableMarked: true }],
    ["loadCurrent", any(usbSupply), { type: "usb2", loadCurrent: 2, cableLength: 30, conductorResistance: 0.1 }],
  ] as const)("%s", (key, solver, input) => {
    const refused = refusalOf(solver, input)
    const offered = refused?.nearest[key] as number
    expect(refusalOf(solver, { ...input, [key]: offered })).toBeNull()
    const asked = (input as Record<string, unknown>)[key] as number
    expect(refusalOf(solver, { ...input, [key]: offered * (asked > offered ? 1.01 : 0.99) })).not.toBeNull()
  })
})

describe("exactly at a limit", () => {
  const code = (solver: AnySolver, input: object) => refusalOf(solver, input)?.noSolution ?? "answered"
  it.each([
    // the greatest input voltage is allowed: what is wrong here is the current
    ["insufficient-current", any(converterLimit), { ...limit, maxInputVoltage: 5, inputCurrentLimit: 1, quiescentCurrent: 1 }],
    ["answered", any(converterLimit), { ...limit, maxInputVoltage: 5 }],
    ["answered", any(converterLimit), { ...limit, minInputVoltage: 5 }],
    // all of the source falls in its own resistance
    ["insufficient-voltage", any(converterLimit), { ...limit, sourceResistance: 1, quiescentCurrent: 5 }],
    // a step-down may be fully on, a step-up fully off
    ["answered", any(converterLimit), { ...limit, outputVoltage: 5, topology: "buck" }],
    ["answered", any(converterLimit), { ...limit, outputVoltage: 5, topology: "boost" }],
    ["answered", any(converterLimit), { ...limit, outputCurrentLimit: 0.1 }],
    ["input-too-high", any(boostStage), { ...stage, inputVoltage: 5, outputVoltage: 5 }],
    ["insufficient-voltage", any(buckStage), { ...stage, inputVoltage: 5, outputVoltage: 5, diodeVoltage: 0, switchVoltage: 0 }],
    // 4.75 V at the port, all of it lost in one contact
    ["insufficient-voltage", any(usbSupply), { type: "usb2", loadCurrent: 1, cableLength: 0, contacts: 1, contactResistance: 4.75 }],
    // USB Power Delivery: 15 V is for sources above 27 W
    ["not-offered", any(usbSupply), { type: "pd-15V", ratedPower: 27, loadCurrent: 1 }],
    // 20 V goes through any cable
    ["answered", any(usbSupply), { type: "pd-20V", ratedPower: 60, loadCurrent: 1 }],
  ] as const)("%s", (expected, solver, input) => {
    expect(code(solver, input)).toBe(expected)
  })

  it("the converter's own current comes off its input limit", () => {
    // 10 V behind 1 ohm give most at 5 A; a limit of 5.02 A leaves 4.97 A beside 50 mA of its own
    const input = { ...limit, sourceVoltage: 10.05, sourceResistance: 1, quiescentCurrent: 0.05, inputCurrentLimit: 5.02, loadCurrent: 3 }
    const out = converterLimit(input)
    expect(out.limitedBy).toBe("input-current")
    expect(out.inputCurrent).toBeCloseTo(5.02, 12)
    expect(out.outputPower).toBeCloseTo(0.9 * 4.97 * (10.05 - 5.02), 9)
  })

  it("what is missing is counted in the unit asked for", () => {
    // 6 V through 2 ohm, at least 5 V: half an ampere reaches the input, the converter itself wants 0.5 A
    const room = refusalOf(any(converterLimit), {
      ...limit,
      sourceVoltage: 6,
      sourceResistance: 2,
      minInputVoltage: 5,
      quiescentCurrent: 0.5,
    })
    expect(room?.at.room).toBeCloseTo(0.5, 12)
    const narrow = { ...limit, sourceVoltage: 6, sourceResistance: 2, minInputVoltage: 4, quiescentCurrent: 0.8, inputCurrentLimit: 0.7 }
    expect(refusalOf(any(converterLimit), narrow)?.shortBy).toBeCloseTo(0.1, 12)
    // nothing reaches the input, for which no least voltage is stated: a thousandth above 5 V would
    const none = refusalOf(any(converterLimit), { ...limit, sourceResistance: 1, quiescentCurrent: 5 })
    expect(none?.shortBy).toBeCloseTo(0.005, 12)
  })

  it("a motor whose load takes all of its standing torque does not run", () => {
    // 12 V / 2 ohm · 0.02 = 0.12 N·m
    const motor = { sourceVoltage: 12, windingResistance: 2, backEmfConstant: 0.02, inertia: 8e-7, loadTorque: 0.12 }
    expect(startUp(motor)).toMatchObject({ outcome: "stalls", runningSpeed: null, startDuration: null })
    // a limit of just the standing current never acts; one of just the load's current turns nothing
    expect(startUp({ ...motor, loadTorque: 0.01, currentLimit: 6 }).outcome).toBe("starts")
    expect(startUp({ ...motor, loadTorque: 0.01, currentLimit: 0.5 }).outcome).toBe("stalls")
    // exactly at the reset voltage nothing resets
    expect(startUp({ ...motor, loadTorque: 0.01, sourceResistance: 1, resetVoltage: 8 }).resets).toBe(false)
  })
})

describe("a supply that tries again and again", () => {
  // without load and wait each try carries on where the last ended: as many tries as the overload lasts on-times
  const motor = { sourceVoltage: 12, windingResistance: 2, backEmfConstant: 0.02, inertia: 8e-7, loadTorque: 0, currentLimit: 3 }
  const overload = ((8e-7 * 2) / 0.02 ** 2) * Math.log(6 / 3)
  const withTries = (tries: number) => startUp({ ...motor, limitAction: "hiccup", offTime: 0, onTime: overload / (tries - 0.5) })
  it("counts its tries, and the time they take", () => {
    for (const tries of [2, 17, 400]) {
      const out = withTries(tries)
      expect([out.outcome, out.tries]).toEqual(["starts-after-hiccups", tries])
      // 95 % of the speed: a twentieth of the standing current
      expect(out.startDuration).toBeCloseTo(((8e-7 * 2) / 0.02 ** 2) * Math.log(20), 9)
    }
  })
  it("is given up as soon as a wait takes what a try gave", () => {
    // 10 mN·m on 8e-7 kg·m² take 12.5 rad/s in a millisecond; a try of 0.1 ms gives under 14
    const out = startUp({ ...motor, loadTorque: 0.01, limitAction: "hiccup", onTime: 1e-4, offTime: 1e-3 })
    expect([out.outcome, out.starts]).toEqual(["hiccups", false])
    expect(out.tries).toBeLessThan(1000)
  })
  it("is given up after ten thousand tries", () => {
    expect([withTries(9990), withTries(10010)].map((out) => [out.outcome, out.tries])).toEqual([
      ["starts-after-hiccups", 9990],
      ["hiccups", 10000],
    ])
  })
})
