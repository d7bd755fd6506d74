import { describe, expect, it } from "vitest"
import { type DcMotorInput, dcMotor, linearActuator, motorConstants } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const sheet = { ratedVoltage: 12, noLoadSpeed: 10, noLoadCurrent: 0.2, loadTorque: 3.2, loadSpeed: 0, loadCurrent: 5.5 }
const solved = (more: Partial<DcMotorInput>) => {
  const out = dcMotor.si(dcMotor.read({ ...sheet, terminalVoltage: 12, torque: 0, ...more }))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

describe("dcMotor", () => {
  it("settles where the equations of motion settle, over voltages and torques", () => {
    let worst = 0
    for (const terminalVoltage of [6, 9, 12, 18])
      for (const share of [0, 0.2, 0.5, 0.9]) {
        const { torqueConstant, backEmfConstant, windingResistance } = motorConstants(
          dcMotor.read({ ...sheet, terminalVoltage, torque: 0 }),
        )
        const torque = share * torqueConstant * (terminalVoltage / windingResistance - 0.2)
        const out = solved({ terminalVoltage, torque })
        // armature and rotor followed in time: L·di/dt = V − R·i − k_E·n, J·dn/dt = k_T·(i − I0) − T
        const [inductance, inertia, h] = [0.02, 0.02, 2e-4]
        let [i, n] = [0, 0]
        for (let k = 0; k < 60000; k++) {
          i += (h * (terminalVoltage - windingResistance * i - backEmfConstant * n)) / inductance
          n += (h * (torqueConstant * (i - 0.2) - torque)) / inertia
        }
        worst = Math.max(worst, off(i, out.current), Math.abs(n - out.speed) / out.noLoadSpeed)
      }
    expect(worst).toBeLessThan(1e-9)
  })

  it("finds the torque of best efficiency and of greatest power that a scan finds", () => {
    const { stallTorque, maxEfficiencyTorque, maxEfficiency, maxPower } = solved({})
    const scan = Array.from({ length: 20000 }, (_, k) => solved({ torque: (stallTorque * (k + 0.5)) / 20000 }))
    const efficiencies = scan.map((out) => out.efficiency as number)
    const best = Math.max(...efficiencies)
    expect(off(best, maxEfficiency)).toBeLessThan(1e-6)
    expect(off((stallTorque * (efficiencies.indexOf(best) + 0.5)) / 20000, maxEfficiencyTorque)).toBeLessThan(1e-3)
    expect(off(Math.max(...scan.map((out) => out.mechanicalPower)), maxPower)).toBeLessThan(1e-6)
  })

  it("is the linear actuator on a drum of one metre", () => {
    const turning = solved({ loadSpeed: 4, torque: 1.1, terminalVoltage: 10 })
    const sliding = linearActuator.si(
      linearActuator.read({
        ratedVoltage: 12,
        noLoadSpeed: 10,
        noLoadCurrent: 0.2,
        ratedForce: 3.2,
        ratedSpeed: 4,
        ratedCurrent: 5.5,
        terminalVoltage: 10,
        force: 1.1,
      }),
    )
    if (isNoSolution(sliding)) throw new Error(sliding.message)
    expect(off(turning.speed, sliding.speed)).toBeLessThan(1e-12)
    expect(off(turning.current, sliding.current)).toBeLessThan(1e-12)
  })

  it("closes the energy account and reads one motor in any unit of torque", () => {
    for (const torque of [0, 0.5, 1.5, 3]) {
      const out = solved({ torque })
      expect(off(out.electricalPower, out.mechanicalPower + out.windingHeat + out.frictionHeat)).toBeLessThan(1e-12)
      expect(out.frictionHeat).toBeGreaterThanOrEqual(-1e-12)
    }
    const inKgf = dcMotor({ ...sheet, loadTorque: `${3.2 / 0.0980665} kgf cm` as "32 kgf cm", terminalVoltage: 12, torque: 1 })
    expect(off(inKgf.stallTorque, solved({ torque: 1 }).stallTorque)).toBeLessThan(1e-8)
  })

  it("stalls beyond the stall torque and says so; refuses a sheet that makes energy", () => {
    const { stallTorque } = solved({})
    const refusal = dcMotor.si(dcMotor.read({ ...sheet, terminalVoltage: 12, torque: stallTorque * 1.01 }))
    expect(isNoSolution(refusal) && refusal.noSolution).toBe("insufficient-torque")
    if (!isNoSolution(refusal)) throw new Error("should stall")
    expect(solved({ torque: refusal.nearest.torque as number }).speed).toBeGreaterThan(0)
    expect(solved({ torque: stallTorque * 1.01, terminalVoltage: refusal.nearest.terminalVoltage as number }).speed).toBeGreaterThan(0)
    const outcome = dcMotor.attempt({ ...sheet, loadTorque: 320, terminalVoltage: 12, torque: 0 })
    expect(!outcome.ok && outcome.error.message).toMatch(/check the units/)
  })

  it("runs a hot winding slower by the copper factor, and is free at no torque", () => {
    // 100 K above 20 °C adds 39.3 % (0.00393/K), by hand; no-load speed at the sheet's voltage is the sheet's
    const [cold, hot] = [solved({ torque: 1 }), solved({ torque: 1, windingTemperature: 120 })]
    expect(hot.windingResistance / cold.windingResistance).toBeCloseTo(1.393, 12)
    expect(hot.speed).toBeLessThan(cold.speed)
    expect(solved({ torque: 0 }).noLoadSpeed).toBeCloseTo(10, 12)
    expect(solved({ torque: 0 }).speed).toBeCloseTo(10, 12)
    expect(hot.stallTorque).toBeLessThan(cold.stallTorque)
  })

  it("says which point is the wrong way round, and that two points lie too close", () => {
    const said = (loadSpeed: number) => {
      const outcome = dcMotor.attempt({ ...sheet, loadSpeed, terminalVoltage: 12, torque: 0 })
      return outcome.ok ? "" : outcome.error.message
    }
    expect(said(10.5)).toMatch(/less than the no-load speed of 95\.5 rpm/)
    expect(said(9.9999999999999)).toMatch(/too close together/)
    expect(said(0)).toBe("")
  })

  it("warns of 48 V on a 12 V datasheet, and not of 13 V", () => {
    const codes = (voltage: number) => dcMotor({ ...sheet, terminalVoltage: voltage, torque: 0.1 }).cautions.map((c) => c.code)
    expect(codes(48)).toContain("over-voltage")
    expect(codes(13)).not.toContain("over-voltage")
    expect(codes(11)).not.toContain("over-voltage")
  })

  it("falls short by a positive amount wherever it refuses, and offers only what answers within the datasheet's voltage", () => {
    for (const noLoadCurrent of [0, 0.2, 5])
      for (const terminalVoltage of [1e-6, 0.3, 12, 1000])
        for (let torque = 0; torque < 1e6; torque = torque * 3 + 0.5) {
          const input = { ...sheet, noLoadCurrent, terminalVoltage, torque }
          const outcome = dcMotor.attempt(input)
          if (outcome.ok || !("noSolution" in outcome.error)) continue
          expect(outcome.error.shortBy).toBeGreaterThan(0)
          for (const [key, value] of Object.entries(outcome.error.nearest)) {
            expect(dcMotor.attempt({ ...input, [key]: value }).ok, `${key} ${value}`).toBe(true)
            if (key === "voltage") expect(value).toBeLessThanOrEqual(1.1 * 12)
          }
        }
  })

  it("warns of heavy loads, hot windings and stall values drawn out", () => {
    const codes = (more: Partial<DcMotorInput>) =>
      dcMotor({ ...sheet, terminalVoltage: 12, torque: 0.1, ...more }).cautions.map((c) => c.code)
    const { stallCurrent, torqueConstant } = solved({})
    const quarter = (0.25 * stallCurrent - 0.2) * torqueConstant
    expect(codes({ torque: quarter * 1.01 })).toContain("heavy-load")
    expect(codes({ torque: quarter * 0.99 })).not.toContain("heavy-load")
    expect(codes({ windingTemperature: 126 })).toContain("overheating")
    expect(codes({ windingTemperature: 124 })).not.toContain("overheating")
    expect(codes({})).toContain("extrapolated")
  })
})
