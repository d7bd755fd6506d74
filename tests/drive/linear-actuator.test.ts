import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { actuatorConstants, linearActuator, powerScrew, windingFactor } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const sheet = { ratedVoltage: 12, noLoadSpeed: 0.012, noLoadCurrent: 0.8, ratedForce: 500, ratedSpeed: 0.009, ratedCurrent: 3 }
const read = (more: object) => linearActuator.read({ ...sheet, terminalVoltage: 12, force: 0, ...more })
const solved = (more: object) => {
  const out = linearActuator.si(read(more))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

describe("linearActuator", () => {
  it("gives back both datasheet points at the datasheet's voltage", () => {
    expect(off(solved({ force: 0 }).speed, 0.012)).toBeLessThan(1e-12)
    expect(off(solved({ force: 0 }).current, 0.8)).toBeLessThan(1e-12)
    expect(off(solved({ force: 500 }).speed, 0.009)).toBeLessThan(1e-12)
    expect(off(solved({ force: 500 }).current, 3)).toBeLessThan(1e-12)
  })

  it("has the constants and currents that a general linear solve gives (mathjs), over its range", () => {
    let worst = 0
    for (const noLoadSpeed of [0.004, 0.02, 0.2])
      for (const share of [0.3, 0.7, 0.95])
        for (const noLoadCurrent of [0, 0.3, 1.5])
          for (const ratedCurrent of [1.8, 6])
            for (const terminalVoltage of [9, 12, 24]) {
              const rating = { ratedVoltage: 12, noLoadSpeed, noLoadCurrent, ratedForce: 1, ratedSpeed: noLoadSpeed * share, ratedCurrent }
              const c = actuatorConstants(rating)
              const [[R], [kV]] = lusolve(
                [
                  [noLoadCurrent, noLoadSpeed],
                  [ratedCurrent, noLoadSpeed * share],
                ],
                [12, 12],
              ) as [[number], [number]]
              worst = Math.max(worst, off(c.windingResistance, R), off(c.backEmfConstant, kV))
              // unknowns I, v: I·R + kV·v = V and kF·I = F + kF·I0
              if (terminalVoltage / R < noLoadCurrent) continue
              const force = 0.6 * (terminalVoltage / R - noLoadCurrent) * c.forceConstant
              const [[I], [v]] = lusolve(
                [
                  [R, kV],
                  [c.forceConstant, 0],
                ],
                [terminalVoltage, force + c.forceConstant * noLoadCurrent],
              ) as [[number], [number]]
              const out = linearActuator.si(linearActuator.read({ ...rating, terminalVoltage, force }))
              if (isNoSolution(out)) throw new Error(out.message)
              worst = Math.max(worst, off(out.current, I), off(out.speed, v))
            }
    expect(worst).toBeLessThan(1e-11)
  })

  it("closes the energy account, with every loss at least zero, lifting or lowering", () => {
    for (let force = -900; force <= 1200; force += 50) {
      const out = linearActuator.si(read({ force }))
      if (isNoSolution(out)) continue
      expect(off(out.electricalPower, out.mechanicalPower + out.windingHeat + out.frictionHeat)).toBeLessThan(1e-9)
      expect(out.frictionHeat).toBeGreaterThan(-1e-12)
    }
  })

  it("stalls just above the stall force, saying what voltage would move it", () => {
    const { stallForce } = solved({ force: 100 })
    expect(isNoSolution(linearActuator.si(read({ force: stallForce * 0.999999 })))).toBe(false)
    const refusal = linearActuator.si(read({ force: stallForce * 1.1 }))
    if (!isNoSolution(refusal)) throw new Error("should stall")
    expect(refusal.noSolution).toBe("insufficient-force")
    expect(solved({ force: stallForce * 1.1, terminalVoltage: refusal.nearest.terminalVoltage }).speed).toBeGreaterThan(0)
    expect(solved({ force: refusal.nearest.force }).speed).toBeGreaterThan(0)
  })

  it("drives back as a screw of the same efficiency does", () => {
    // lowering torque over raising torque of a screw whose friction is the same both ways
    for (const screwEfficiency of [0.2, 0.45, 0.55, 0.8]) {
      const kV = (12 * 2) / (0.1 * 3 - 0.08 * 1)
      const free = { ...sheet, noLoadSpeed: 0.1, ratedSpeed: 0.08, noLoadCurrent: 1, ratedCurrent: 3, ratedForce: kV * screwEfficiency * 2 }
      const out = linearActuator.si(linearActuator.read({ ...free, terminalVoltage: 12, force: -100 }))
      const screw = powerScrew.si(powerScrew.read({ force: 100, majorDiameter: 0.01, pitch: 0.002, starts: 1, screwEfficiency }))
      if (isNoSolution(out) || isNoSolution(screw)) throw new Error("both should answer")
      const extra = (out.current - out.frictionCurrent) * out.forceConstant
      expect(off(extra / 100, screw.lowerTorque / screw.raiseTorque)).toBeLessThan(1e-9)
      expect(out.backDriveForce === null).toBe(screwEfficiency <= 0.5)
    }
  })

  it("is driven back, by the estimate, from the back-drive force on", () => {
    const kV = 24 / (0.1 * 3 - 0.08)
    const free = { ...sheet, noLoadSpeed: 0.1, ratedSpeed: 0.08, noLoadCurrent: 1, ratedCurrent: 3, ratedForce: kV * 1.5 }
    const at = (force: number) =>
      linearActuator.si(linearActuator.read({ ...free, terminalVoltage: 12, force })) as ReturnType<typeof solved>
    const hold = at(-10).backDriveForce as number
    expect(at(-hold * 0.999).shortedBackDriveSpeed).toBe(0)
    expect(at(-hold * 1.01).shortedBackDriveSpeed).toBeGreaterThan(0)
  })

  it("slows when hot by the copper factor", () => {
    // 100 K above 20 °C adds 39.3 % (0.00393/K), by hand
    expect(windingFactor(120)).toBeCloseTo(1.393, 12)
    const [cold, hot] = [solved({ force: 400 }), solved({ force: 400, windingTemperature: 120 })]
    expect(hot.current).toBe(cold.current)
    expect(off(hot.windingResistance / cold.windingResistance, 1.393)).toBeLessThan(1e-12)
    expect(hot.speed).toBeLessThan(cold.speed)
  })

  it("says which point is the wrong way round, and that two points lie too close", () => {
    const said = (more: object) => {
      const outcome = linearActuator.attempt({ ...sheet, terminalVoltage: 12, force: 0, ...more })
      return outcome.ok ? "" : outcome.error.message
    }
    expect(said({ ratedSpeed: 0.013 })).toMatch(/less than the no-load speed of 12 mm\/s/)
    expect(said({ ratedSpeed: 0.0119999999999999 })).toMatch(/too close together/)
    expect(said({ ratedSpeed: 0.009 })).toBe("")
  })

  it("has no efficiency where nothing is drawn or lifted", () => {
    const free = { ...sheet, noLoadCurrent: 0 }
    expect(linearActuator({ ...free, terminalVoltage: 12, force: 0 }).efficiency).toBeNull()
    expect(linearActuator({ ...free, terminalVoltage: 12, force: 100 }).efficiency).toBeGreaterThan(0)
    expect(linearActuator({ ...free, terminalVoltage: 12, force: -100 }).efficiency).toBeNull()
  })

  it("refuses a sheet that makes energy", () => {
    const outcome = linearActuator.attempt({ ...sheet, ratedForce: 50000, terminalVoltage: 12, force: 0 })
    expect(!outcome.ok && outcome.error.message).toMatch(/units of force/)
  })

  it("promises no holding from two datasheet points, whatever they are (the printed current alone changed nothing but the estimate)", () => {
    for (let ratedCurrent = 1.1; ratedCurrent < 9; ratedCurrent += 0.1)
      for (const force of [-400, 0, 300]) {
        const outcome = linearActuator.attempt({ ...sheet, ratedCurrent, terminalVoltage: 12, force })
        if (!outcome.ok) continue
        expect(outcome.value.selfLocking).toBe(false)
        expect(outcome.value.holdingForce).toBeNull()
        expect(outcome.value.cautions.find((c) => c.code === "holding-unknown")?.severity).toBe("warning")
      }
  })

  it("holds what the maker states, pushed or pulled, and not a newton more", () => {
    const at = (force: number) => linearActuator({ ...sheet, terminalVoltage: 12, force, holdingForce: 400 })
    for (const force of [-400, 400]) expect(at(force).selfLocking).toBe(true)
    for (const force of [-401, 401]) {
      expect(at(force).selfLocking).toBe(false)
      expect(at(force).cautions.map((c) => c.code)).toContain("falls-unpowered")
    }
  })

  it("warns of a load that the estimate drives back even where the maker states that it holds", () => {
    const kV = 24 / (0.1 * 3 - 0.08)
    const free = { ...sheet, noLoadSpeed: 0.1, ratedSpeed: 0.08, noLoadCurrent: 1, ratedCurrent: 3, ratedForce: kV * 1.5 }
    const codes = (force: number) => linearActuator({ ...free, terminalVoltage: 12, force, holdingForce: 9000 }).cautions.map((c) => c.code)
    for (const sign of [-1, 1]) {
      expect(codes(sign * 170)).toContain("back-driven")
      expect(codes(sign * 1)).not.toContain("back-driven")
    }
  })

  it("warns of reversed current above the rated one as of forward current", () => {
    const kV = 24 / (0.1 * 3 - 0.08)
    const free = { ...sheet, noLoadSpeed: 0.1, ratedSpeed: 0.08, noLoadCurrent: 1, ratedCurrent: 3, ratedForce: kV * 1.9 }
    const out = linearActuator({ ...free, terminalVoltage: 12, force: -1000 })
    expect(out.current).toBeLessThan(-3)
    expect(out.cautions.map((c) => c.code)).toEqual(expect.arrayContaining(["over-current", "runs-away"]))
  })

  it("offers, where it stalls, no voltage that it would warn of, and falls short by a positive amount however hot it is", () => {
    for (let windingTemperature = -50; windingTemperature <= 200; windingTemperature += 10)
      for (let force = 500; force <= 1e6; force *= 2) {
        const refusal = linearActuator.si(read({ force, windingTemperature }))
        if (!isNoSolution(refusal)) continue
        expect(refusal.shortBy).toBeGreaterThan(0)
        for (const [key, value] of Object.entries(refusal.nearest)) {
          const tried = linearActuator.attempt({ ...sheet, terminalVoltage: 12, force, windingTemperature, [key]: value })
          expect(tried.ok).toBe(true)
          if (tried.ok && key === "voltage") expect(tried.value.cautions.map((c) => c.code)).not.toContain("over-voltage")
        }
      }
  })
})
