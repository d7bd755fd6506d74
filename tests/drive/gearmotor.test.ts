import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { dcMotor, type Gearmotor, type GearmotorInput, gearmotor, gearTrain } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const answer = (input: GearmotorInput): Gearmotor | null => {
  const out = gearmotor.si(gearmotor.read(input))
  return isNoSolution(out) ? null : out
}
const near = (a: number | null, b: number, size = Math.abs(b)) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(1e-9 * size + 1e-12)
/** Evenly spread, both ends included. */
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 14, numRuns: 120 }

const stages = fc.oneof(
  fc.constant([{ type: "spur" as const, drivingTeeth: 15, drivenTeeth: 60 }]),
  fc.constant([
    { type: "planetary" as const, drivingTeeth: 12, drivenTeeth: 48, meshEfficiency: 0.9, inertia: 2e-7 },
    { type: "spur" as const, drivingTeeth: 14, drivenTeeth: 42, inertia: 1e-6 },
  ]),
  fc.constant([{ type: "worm" as const, drivingTeeth: 1, drivenTeeth: 30, leadAngle: 0.09, friction: 0.12 }]),
)
const motors = fc.record({
  backEmfConstant: between(0.005, 0.05),
  windingResistance: between(0.3, 5),
  noLoadCurrent: between(0, 0.4),
  terminalVoltage: between(3, 24),
  windingTemperature: between(0, 120),
  stages,
  torque: between(-4, 4),
  dragTorque: between(0, 0.001),
  rotorInertia: between(1e-7, 1e-5),
  loadInertia: between(0, 0.5),
})
const sheetOf = ({ backEmfConstant, windingResistance, noLoadCurrent, terminalVoltage, windingTemperature }: Record<string, unknown>) =>
  ({ backEmfConstant, windingResistance, noLoadCurrent, terminalVoltage, windingTemperature }) as {
    backEmfConstant: number
    windingResistance: number
    noLoadCurrent: number
    terminalVoltage: number
    windingTemperature: number
  }

describe("gearmotor", () => {
  it("balances voltage, torque and power in every part, with the load against it and helping", () => {
    let [against, helped, returned] = [0, 0, 0]
    fc.assert(
      fc.property(motors, (input) => {
        const out = answer(input)
        if (!out) return
        const { terminalVoltage: voltage, noLoadCurrent, backEmfConstant: k } = input
        // the winding: copper gains 0.00393 for each kelvin (IEC 60028)
        const r = input.windingResistance * (1 + 0.00393 * (input.windingTemperature - 20))
        near(voltage, out.current * r + k * out.motorSpeed)
        // the rotor: electromagnetic torque against friction and the gears
        near(k * out.current, k * noLoadCurrent + out.motorTorque, k)
        near(out.windingHeat, out.current ** 2 * r)
        near(out.motorFrictionHeat, k * noLoadCurrent * out.motorSpeed, voltage)
        expect(out.gearHeat).toBeGreaterThanOrEqual(-1e-9)
        const lost = out.windingHeat + out.motorFrictionHeat + out.gearHeat
        near(out.electricalPower, out.mechanicalPower + lost, Math.abs(out.mechanicalPower) + lost)
        near(out.mechanicalPower, input.torque * out.speed, 100)
        near(out.motorSpeed, out.speed * out.ratio)
        // each stage hands on no more power than it gets
        let speed = out.motorSpeed
        for (const s of out.stages) {
          expect(s.drivingTorque * speed - (s.drivenTorque * speed) / s.ratio).toBeGreaterThanOrEqual(-1e-9)
          speed /= s.ratio
        }
        if (input.torque >= 0) {
          against++
          near(out.efficiency, out.mechanicalPower / out.electricalPower, 1)
        } else {
          helped++
          expect(out.efficiency).toBeNull()
        }
        if (out.current < 0) returned++
        expect(gearmotor(input).cautions.some((c) => c.code === "returns-current")).toBe(out.current < 0)
      }),
      seeded,
    )
    expect(
      [against, helped, returned].every((n) => n > 8),
      `${against} ${helped} ${returned}`,
    ).toBe(true)
  })

  it("stands at its stall torque, runs free at its no-load speed, and does best at its best torque", () => {
    fc.assert(
      fc.property(motors, (input) => {
        const out = answer({ ...input, torque: 0 })
        if (!out) return
        near(out.noLoadSpeed, out.speed, 1e3)
        const held = answer({ ...input, torque: out.stallTorque * (1 - 1e-9) }) as Gearmotor
        expect(Math.abs(held.speed)).toBeLessThan(1e-6 * out.speed + 1e-9)
        expect(answer({ ...input, torque: out.stallTorque * 1.001 })).toBeNull()
        const at = (torque: number) => (answer({ ...input, torque }) as Gearmotor).efficiency as number
        near(at(out.maxEfficiencyTorque), out.maxEfficiency, 1)
        if (out.maxEfficiencyTorque > 1e-6)
          for (const beside of [0.98, 1.02])
            if (out.maxEfficiencyTorque * beside < out.stallTorque)
              expect(at(out.maxEfficiencyTorque * beside)).toBeLessThanOrEqual(out.maxEfficiency + 1e-12)
      }),
      seeded,
    )
  })

  it("is driven back at the torque where an unpowered motor just turns, and slows to the speed that its own current brakes", () => {
    let braked = 0
    fc.assert(
      fc.property(motors, (input) => {
        const out = answer(input)
        if (!out) return
        const sheet = sheetOf(input)
        const friction = sheet.backEmfConstant * sheet.noLoadCurrent
        // torque that reaches the motor shaft from a load of this size, all but the motor's own friction taken off
        const reaches = (torque: number) => -gearTrain({ stages: input.stages, torque: -torque, dragTorque: input.dragTorque }).inputTorque
        if (out.backDriveTorque === null) {
          expect(reaches(Math.abs(input.torque) + 1)).toBeLessThanOrEqual(0)
          expect(out.shortedBackDriveSpeed).toBe(0)
          return
        }
        near(reaches(out.backDriveTorque), friction, 1e-3)
        const spare = reaches(Math.abs(input.torque)) - friction
        // a generator on a short: run the motor's own kernel at the voltage that makes up for the winding's drop
        if (spare > 1e-6) {
          braked++
          const winding = dcMotor({ ...sheet, torque: 0 }).windingResistance
          near(sheet.backEmfConstant * out.shortedBackDriveSpeed * out.ratio, (spare / sheet.backEmfConstant) * winding, 10)
        } else if (spare < -1e-6) expect(out.shortedBackDriveSpeed).toBe(0)
      }),
      seeded,
    )
    expect(braked).toBeGreaterThan(10)
  })

  it("starts, and settles with its time constant, as stepped through time", () => {
    for (const [torque, dragTorque, noLoadCurrent] of [
      [0, 0, 0],
      [0.8, 0.0004, 0.2],
    ] as const) {
      const input = {
        ...{
          backEmfConstant: 0.012,
          windingResistance: 1.2,
          noLoadCurrent,
          terminalVoltage: 12,
          torque,
          dragTorque,
          rotorInertia: 2e-6,
          loadInertia: 0.02,
        },
        stages: [
          { type: "planetary" as const, drivingTeeth: 12, drivenTeeth: 48, inertia: 3e-6, meshEfficiency: torque ? 0.9 : 1 },
          { type: "spur" as const, drivingTeeth: 14, drivenTeeth: 42, inertia: 5e-5, meshEfficiency: torque ? 0.9 : 1 },
        ],
      }
      const out = answer(input) as Gearmotor
      // Newton for each shaft, tooth forces handed on stage by stage: solved for the acceleration that closes them
      const shortfall = (speed: number, acceleration: number) => {
        const [first, second] = out.stages as [(typeof out.stages)[0], (typeof out.stages)[0]]
        const load = torque + 0.02 * acceleration
        const middle = (load + 5e-5 * acceleration) / (second.ratio * second.efficiency)
        const front = (middle + 3e-6 * acceleration * second.ratio) / (first.ratio * first.efficiency)
        const motor = 0.012 * ((12 - 0.012 * speed * out.ratio) / 1.2 - noLoadCurrent)
        return motor - dragTorque - 2e-6 * acceleration * out.ratio - front
      }
      const accelerationAt = (speed: number) => {
        const [a, b] = [shortfall(speed, 0), shortfall(speed, 1)]
        return a / (a - b)
      }
      near(out.startAcceleration, accelerationAt(0))
      let [speed, time] = [0, 0]
      let sixtyThree = 0
      const step = out.timeConstant / 2000
      while (time < 14 * out.timeConstant) {
        const half = speed + (step / 2) * accelerationAt(speed)
        speed += step * accelerationAt(half)
        time += step
        if (!sixtyThree && speed >= out.speed * (1 - Math.exp(-1))) sixtyThree = time
      }
      expect(Math.abs(speed / out.speed - 1)).toBeLessThan(1e-4)
      if (torque === 0) expect(Math.abs(sixtyThree / out.timeConstant - 1)).toBeLessThan(2e-3)
    }
  })

  it("carries rotor, gears and load as one kinetic energy", () => {
    fc.assert(
      fc.property(motors, (input) => {
        const out = answer(input)
        if (!out) return
        let energy = (input.rotorInertia * out.motorSpeed ** 2) / 2
        const rotor = energy
        let speed = out.motorSpeed
        out.stages.forEach((stage, k) => {
          const s = input.stages[k] as object
          speed /= stage.ratio
          energy += ((("inertia" in s ? s.inertia : 0) as number) * speed ** 2) / 2
        })
        energy += (input.loadInertia * speed ** 2) / 2
        near((out.inertiaAtOutput * out.speed ** 2) / 2, energy)
        near(out.rotorShare * energy, rotor, energy)
      }),
      seeded,
    )
  })
})
