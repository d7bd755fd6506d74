// The geared motor of the rig against drive.dcMotor and drive.gearmotor, which answer torque by torque.
import { describe, expect, it } from "vitest"
import { dcMotor, gearmotor } from "../../../src/drive/index.js"
import type { Drive } from "../../../src/rig/drives/drive.js"
import { type GearmotorDrive, gearmotorDrive } from "../../../src/rig/drives/gearmotor.js"
import { currentFor } from "../../../src/rig/run/motion-model.js"
import { isNoSolution, type SiOf } from "../../../src/solver/index.js"
import { built, readMember, samples, seeded } from "../members.js"

// motors of the lantern moth's winch and neck; figures invented
const sheet = {
  travel: "3 rev",
  ratedVoltage: "12 V",
  noLoadSpeed: "100 rpm",
  noLoadCurrent: "0.2 A",
  loadTorque: "34 kgf cm",
  loadSpeed: "0 rpm",
  loadCurrent: "5.5 A",
}
const worm = { type: "worm", drivingTeeth: 1, drivenTeeth: 30, leadAngle: "4 deg", friction: 0.1 }
const spur = { type: "spur", drivingTeeth: 15, drivenTeeth: 45 }
const motor = { travel: "90 deg", ratedVoltage: "12 V", backEmfConstant: 0.02, windingResistance: "1.5 ohm", noLoadCurrent: "0.15 A" }
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

const rateOf = (made: Drive, voltage: number, current: number) => (voltage - current * made.windingResistance) / made.backEmfConstant

/** A motor's datasheet as the domain's solvers take it. */
const printed = (si: SiOf<GearmotorDrive>) => ({
  ratedVoltage: si.backEmfConstant === null ? si.ratedVoltage : null,
  noLoadSpeed: si.noLoadSpeed,
  noLoadCurrent: si.noLoadCurrent,
  loadTorque: si.loadTorque,
  loadSpeed: si.loadSpeed,
  loadCurrent: si.loadCurrent,
  backEmfConstant: si.backEmfConstant,
  windingResistance: si.windingResistance,
  windingTemperature: 20,
  datasheetTemperature: 20,
})

describe("geared motor", () => {
  const random = seeded(1212)
  const drawn = samples<Drive>(gearmotorDrive, 200, random).map(({ si, made }) => ({ si: si as SiOf<GearmotorDrive>, made }))

  it("goes with current and speed of the domain's motor against every load it moves", () => {
    let [worst, plain, geared] = [0, 0, 0]
    for (const { si, made } of drawn) {
      const stall = made.effortConstant * (si.ratedVoltage / made.windingResistance - made.frictionCurrent)
      if (!(stall > 0)) continue
      for (const share of [0, 0.3, 0.9]) {
        const torque = share * stall
        const asked = { ...printed(si), terminalVoltage: si.ratedVoltage, torque }
        const out = si.stages.length
          ? gearmotor.si({ ...asked, stages: si.stages, dragTorque: si.dragTorque, rotorInertia: si.rotorInertia, loadInertia: 0 })
          : si.dragTorque > 0
            ? null
            : dcMotor.si(asked)
        if (out === null) continue
        if (isNoSolution(out)) throw new Error(out.message)
        if ("ratio" in out) geared++
        else plain++
        const current = currentFor(made, torque)
        worst = Math.max(worst, off(current, out.current), off(rateOf(made, si.ratedVoltage, current), out.speed))
        if ("inertiaAtOutput" in out) worst = Math.max(worst, Math.abs(made.inertia - out.inertiaAtOutput) / (out.inertiaAtOutput || 1))
      }
    }
    expect(Math.min(plain, geared)).toBeGreaterThan(60)
    expect(worst).toBeLessThan(1e-9)
  })

  it("goes with the domain's gearmotor where the load helps: gears that give back, and gears that lock and have to be driven", () => {
    const kinds = { locking: 0, returning: 0 }
    for (const stages of [[spur], [spur, spur], [worm], [spur, worm], [worm, spur], [{ ...worm, leadAngle: "20 deg" }, spur]])
      for (const dragTorque of [0, 0.002]) {
        const made = built<Drive>(gearmotorDrive, { ...motor, stages, dragTorque })
        const { si } = readMember(gearmotorDrive, { ...motor, stages, dragTorque })
        const given = si as SiOf<GearmotorDrive>
        for (const torque of [-0.05, -0.5, -2]) {
          const asked = {
            ...printed(given),
            terminalVoltage: 12,
            torque,
            stages: given.stages,
            dragTorque,
            rotorInertia: 0,
            loadInertia: 0,
          }
          const out = gearmotor.si(asked)
          if (isNoSolution(out)) throw new Error(out.message)
          const current = currentFor(made, torque)
          // constants as printed: torque and back-emf constant are one number, and the domain's rule is the seam's
          expect(off(current, out.current)).toBeLessThan(1e-10)
          expect(off(rateOf(made, 12, current), out.speed)).toBeLessThan(1e-10)
          kinds[made.unlocking > 0 ? "locking" : "returning"]++
          if (made.unlocking > 0) expect(current).toBeGreaterThan(made.frictionCurrent)
        }
      }
    expect(Math.min(kinds.locking, kinds.returning)).toBeGreaterThan(9)
  })

  it("stands still at the datasheet's stall point and at its own stops", () => {
    const made = built<Drive>(gearmotorDrive, sheet)
    expect(made.effortConstant * (12 / made.windingResistance - made.frictionCurrent)).toBeCloseTo(34 * 0.0980665, 10)
    expect(12 / made.windingResistance).toBeCloseTo(5.5, 12)
    expect([made.low, made.high]).toEqual([0, 6 * Math.PI])
    // 100 rpm and 0.2 A without load
    expect(rateOf(made, 12, 0.2)).toBeCloseTo((100 * 2 * Math.PI) / 60, 10)
  })

  it("holds what is said of it, or what stages lock with half of their friction, and else nothing", () => {
    const held = (more: object) => built<Drive>(gearmotorDrive, { ...motor, ...more }).holdingEffort
    expect(held({})).toBe(0)
    expect(held({ stages: [spur] })).toBe(0)
    // tan 4° = 0.0699: half of 0.1 over cos 20° does not hold it, half of 0.2 does
    expect(held({ stages: [worm] })).toBe(0)
    expect(held({ stages: [{ ...worm, friction: 0.2 }] })).toBe(Number.POSITIVE_INFINITY)
    expect(held({ stages: [{ ...worm, friction: 0.2 }], holdingTorque: "3 N m" })).toBe(3)
    expect(held({ holdingTorque: "2 N m" })).toBe(2)
  })

  it("locks by its datasheet alone where less than half of the motor's work comes out", () => {
    // 34 kgf·cm against 12 V, 5.3 A and 100 rpm: 3.33 N·m of 6.31 N·m, so just above half
    expect(built<Drive>(gearmotorDrive, sheet).unlocking).toBe(0)
    const weak = built<Drive>(gearmotorDrive, { ...sheet, loadTorque: "17 kgf cm" })
    // current for 1 N·m without friction, and what friction adds to it on the way up: it takes as much on the way down
    const ideal = 1 / weak.backEmfConstant
    const friction = 1 / weak.effortConstant - ideal
    expect(weak.unlocking / weak.effortConstant).toBeCloseTo(friction - ideal, 12)
    expect(weak.unlocking).toBeGreaterThan(0.4)
    expect(built<Drive>(gearmotorDrive, { ...sheet, loadTorque: "17 kgf cm", backwardEfficiency: 0.3 }).unlocking).toBe(0)
  })

  it("tells faults of datasheet and stages at their place", () => {
    const paths = (more: object) => readMember(gearmotorDrive, { ...sheet, ...more }).issues.map((one) => one.path.join("."))
    expect(paths({})).toEqual([])
    expect(paths({ loadSpeed: "100 rpm" })).toEqual(["loadSpeed"])
    expect(paths({ loadCurrent: "0.2 A" })).toEqual(["loadCurrent"])
    expect(paths({ loadTorque: "340 kgf cm" })).toEqual(["loadTorque"])
    expect(paths({ stages: [{ type: "planetary", drivingTeeth: 12, drivenTeeth: 14 }] })).toEqual(["stages.0.drivenTeeth"])
    expect(paths({ backEmfConstant: 0.02 }).length).toBeGreaterThan(0)
    expect(paths({ loadTorque: null })).toEqual(["loadTorque"])
  })
})
