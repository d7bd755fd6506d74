import { expect, it } from "vitest"
import { dcMotor, dutyCycle, hobbyServo, linearActuator, powerScrew } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

/** On the very edge: numbers that arithmetic hits exactly, where "above" and "at least" part. */
type Any = { attempt(input: unknown): { ok: boolean; value?: { cautions: readonly { code: string }[] }; error?: unknown }; example: object }
const codes = (solver: unknown, input: object): string[] => {
  const outcome = (solver as Any).attempt(input)
  if (!outcome.ok || !outcome.value) throw outcome.error
  return outcome.value.cautions.map((c) => c.code)
}
const faults = (solver: unknown, input: object): string[] => {
  const outcome = (solver as Any).attempt(input)
  const issues = (outcome.error as { issues?: readonly { path: readonly string[] }[] } | undefined)?.issues ?? []
  return issues.map((i) => i.path.join("."))
}
const refusal = (solver: unknown, input: object) => {
  const outcome = (solver as Any).attempt(input)
  const error = outcome.error as { noSolution: string; nearest: Record<string, number> } | undefined
  return { code: error?.noSolution, nearest: error?.nearest }
}

// k = 1 V·s/rad and R = 1 Ω, in whole numbers
const plain = { backEmfConstant: 1, windingResistance: 1, noLoadCurrent: 0, terminalVoltage: 12, torque: 1 }
const points = {
  ratedVoltage: 2,
  noLoadSpeed: 2,
  noLoadCurrent: 0,
  loadTorque: 1,
  loadSpeed: 1,
  loadCurrent: 1,
  terminalVoltage: 2,
  torque: 1,
}
// 1 N/A, 1 V·s/m and 1 Ω
const rod = {
  ratedVoltage: 2,
  noLoadSpeed: 2,
  noLoadCurrent: 0,
  ratedForce: 1,
  ratedSpeed: 1,
  ratedCurrent: 1,
  terminalVoltage: 2,
  force: 1,
}
const servo = { firstVoltage: 5, firstStallTorque: 1, firstTime: 0.2, terminalVoltage: 5, torque: 0.1, idleCurrent: 0 }
const screw = { force: 1000, majorDiameter: 0.016, pitch: 0.004 }

it("dcMotor", () => {
  expect(codes(dcMotor, { ...points, terminalVoltage: 1.1 * 2 })).not.toContain("over-voltage")
  // a quarter of 12 A
  expect(codes(dcMotor, { ...plain, torque: 3 })).not.toContain("heavy-load")
  expect(codes(dcMotor, { ...plain, torque: 3.0001 })).toContain("heavy-load")
  expect(codes(dcMotor, points)).not.toContain("datasheet-rounding")
  // just balanced it stands still, and answers
  const still = dcMotor({ ...plain, torque: 12 })
  expect([still.speed, still.current, still.mechanicalPower, still.efficiency]).toEqual([0, 12, 0, 0])
  expect(dcMotor({ ...plain, noLoadCurrent: 12, torque: 0 }).speed).toBe(0)
  expect(dcMotor({ ...plain, torque: 0 }).efficiency).toBeNull()
  // 13 A by the torque are 13 V, a thousandth more is offered, and a thousandth less than the stall torque of 12 N·m
  const { code, nearest } = refusal(dcMotor, { ...plain, torque: 13 })
  expect(code).toBe("insufficient-torque")
  expect(nearest?.terminalVoltage).toBeCloseTo(13.013, 12)
  expect(nearest?.torque).toBeCloseTo(11.988, 12)
  const start = refusal(dcMotor, { ...plain, noLoadCurrent: 13, torque: 0 })
  expect(start.code).toBe("insufficient-voltage")
  expect(start.nearest?.terminalVoltage).toBeCloseTo(13.013, 12)
  expect(faults(dcMotor, { ...points, loadTorque: 1.05 })).toEqual([])
  expect(faults(dcMotor, { ...points, loadTorque: 1.06 })).toEqual(["loadTorque"])
  expect(faults(dcMotor, { ...points, loadSpeed: 2 })).toEqual(["loadSpeed"])
  expect(faults(dcMotor, { ...points, noLoadCurrent: 1 })).toEqual(["loadCurrent"])
})

it("linearActuator", () => {
  expect(codes(linearActuator, { ...rod, terminalVoltage: 1.1 * 2 })).not.toContain("over-voltage")
  expect(codes(linearActuator, rod)).not.toContain("over-current")
  expect(codes(linearActuator, rod)).not.toContain("over-force")
  const idle = linearActuator({ ...rod, force: 0 })
  expect([idle.current, idle.efficiency]).toEqual([0, null])
  expect(idle.cautions.map((c) => c.code)).not.toContain("runs-away")
  const { code, nearest } = refusal(linearActuator, { ...rod, force: 2 })
  expect(code).toBe("insufficient-force")
  expect(nearest?.force).toBeCloseTo(1.998, 12)
  expect(nearest?.terminalVoltage).toBeCloseTo(2.002, 12)
  // half of the work lost: friction just holds, no load drives it back
  const half = linearActuator({ ...rod, ratedForce: 0.5, force: 0.25 })
  expect([half.screwEfficiency, half.backDriveForce, half.shortedBackDriveSpeed]).toEqual([0.5, null, 0])
  for (const force of [1, -1]) {
    expect(linearActuator({ ...rod, force, holdingForce: 1 }).selfLocking).toBe(true)
    expect(codes(linearActuator, { ...rod, force, holdingForce: 1 })).not.toContain("falls-unpowered")
    expect(linearActuator({ ...rod, force, holdingForce: 0.999 }).selfLocking).toBe(false)
  }
  expect(faults(linearActuator, { ...rod, ratedSpeed: 2 })).toEqual(["ratedSpeed"])
  expect(faults(linearActuator, { ...rod, noLoadCurrent: 1 })).toEqual(["ratedCurrent"])
  expect(faults(linearActuator, { ...rod, ratedForce: 1.001 })).toEqual(["ratedForce"])
})

it("hobbyServo", () => {
  expect(codes(hobbyServo, { ...servo, terminalVoltage: 5 * 1.001 })).not.toContain("over-voltage")
  expect(codes(hobbyServo, { ...servo, terminalVoltage: 5.006 })).toContain("over-voltage")
  expect(codes(hobbyServo, { ...servo, terminalVoltage: 5 * 0.999 })).not.toContain("extrapolated")
  expect(codes(hobbyServo, { ...servo, terminalVoltage: 4.994 })).toContain("extrapolated")
  expect(codes(hobbyServo, { ...servo, torque: 0.3, holdingShare: 1 })).not.toContain("cannot-hold")
  expect(codes(hobbyServo, { ...servo, torque: 0.301, holdingShare: 1 })).toContain("cannot-hold")
  expect(refusal(hobbyServo, { ...servo, torque: 1 }).code).toBe("insufficient-torque")
  const two = { ...servo, secondStallTorque: 1, secondTime: 0.2 }
  expect(faults(hobbyServo, { ...two, secondVoltage: 5 * 1.01 })).toEqual(["secondVoltage"])
  expect(faults(hobbyServo, { ...two, secondVoltage: 5.06 })).toEqual([])
})

it("dutyCycle", () => {
  const duty = { ratedDuty: 0.1, ratedRunDuration: 120, runDuration: 120, restDuration: 1080 }
  expect(dutyCycle(duty)).toMatchObject({ sustained: true, runsBeforeRest: null, maxRunDuration: 120 })
  expect(faults(dutyCycle, { ...duty, temperatureLimit: 26.02 })).toEqual([])
  expect(faults(dutyCycle, { ...duty, ambientTemperature: 78.98 })).toEqual([])
  // at the rated duty it ends at its limit, and at that of 51 °C bare metal does not burn yet
  expect(codes(dutyCycle, { ...duty, temperatureLimit: 51.5 })).toContain("burns")
  expect(codes(dutyCycle, { ...duty, temperatureLimit: 50.9 })).not.toContain("burns")
})

it("powerScrew", () => {
  const slope = 0.004 / (Math.PI * 0.014)
  expect(powerScrew({ ...screw, threadFriction: 2 * slope }).selfLocking).toBe(false)
  // half of the work lost in the thread: it neither turns back nor holds
  const half = powerScrew({ ...screw, screwEfficiency: 0.5 })
  expect([half.threadLowerTorque, half.threadSelfLocking, half.selfLocking]).toEqual([0, false, false])
  expect(half.cautions.map((c) => c.code)).toContain("thread-not-self-locking")
  expect(half.cautions.map((c) => c.code)).not.toContain("held-by-collar")
  expect(codes(powerScrew, { ...screw, starts: 4, threadFriction: 0.2 })).not.toContain("steep-thread")
  expect(faults(powerScrew, { ...screw, pitch: 0.9 * 0.016, threadFriction: 0.1 })).toEqual(["pitch"])
  expect(faults(powerScrew, { ...screw, pitch: 0.899 * 0.016, threadFriction: 0.1 })).toEqual([])
  // the friction offered leaves a thousandth
  const jammed = { ...screw, starts: 20, flankAngle: 1, threadFriction: 0.9 }
  const offered = refusal(powerScrew, jammed).nearest?.threadFriction as number
  const out = powerScrew.si(powerScrew.read({ ...jammed, threadFriction: offered }))
  if (isNoSolution(out)) throw new Error(out.message)
  expect((offered / Math.cos(0.5)) * Math.tan(out.leadAngle)).toBeCloseTo(0.999, 12)
})
