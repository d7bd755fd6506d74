// The hobby servo of the rig against drive.hobbyServo, which answers torque by torque from the datasheet's own lines.
import { describe, expect, it } from "vitest"
import { hobbyServo } from "../../../src/drive/index.js"
import type { Drive, DriveLine } from "../../../src/rig/drives/drive.js"
import { type HobbyServoDrive, hobbyServoDrive } from "../../../src/rig/drives/hobby-servo.js"
import { isNoSolution, type SiOf } from "../../../src/solver/index.js"
import { between, built, readMember, samples, seeded } from "../members.js"

// the jaw of the lantern moth; figures invented
const jaw = {
  fromAngle: "-10 deg",
  toAngle: "50 deg",
  firstVoltage: "4.8 V",
  firstStallTorque: "9 kgf cm",
  firstTime: "0.2 s",
  secondVoltage: "6 V",
  secondStallTorque: "11 kgf cm",
  secondTime: "0.16 s",
  stallCurrent: "2 A",
}
const lineAt = (drive: Drive, voltage: number): DriveLine => {
  const line = { effortConstant: 0, backEmfConstant: 0, windingResistance: 0, frictionCurrent: 0 }
  drive.lineAt?.(voltage, line)
  return line
}
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)
const asked = ({ type: _, fromAngle: __, toAngle: ___, holdingTorque, backwardEfficiency, inertia, ...sheet }: SiOf<HobbyServoDrive>) =>
  sheet

describe("hobby servo", () => {
  const random = seeded(4860)
  const drawn = [...samples<Drive>(hobbyServoDrive, 60, random)].map(({ si, made }) => ({ si: si as SiOf<HobbyServoDrive>, made }))

  it("has effort, rate and current of the datasheet's servo at both voltages and elsewhere, moving and holding", () => {
    let worst = 0
    let judged = 0
    for (const { si, made } of drawn)
      for (const voltage of [
        si.firstVoltage,
        si.secondVoltage ?? si.firstVoltage,
        made.minVoltage + between(random, 0.05, 1.5) * si.firstVoltage,
      ]) {
        const line = lineAt(made, voltage)
        const [stallCurrent, stall] = [
          voltage / line.windingResistance,
          line.effortConstant * (voltage / line.windingResistance - line.frictionCurrent),
        ]
        for (const share of [0, 0.3, 0.9]) {
          const torque = share * stall
          const out = hobbyServo.si({ ...asked(si), terminalVoltage: voltage, torque, angle: null })
          if (isNoSolution(out)) throw new Error(out.message)
          const current = line.frictionCurrent + torque / line.effortConstant
          const rate = (voltage - current * line.windingResistance) / line.backEmfConstant
          const held = made.standbyCurrent + stallCurrent * (torque / stall) ** 2
          judged++
          worst = Math.max(
            worst,
            off(stall, out.stallTorque),
            off(rate, out.speed),
            off(current, out.movingCurrent as number),
            off(stallCurrent, out.stallCurrent as number),
            off(held, out.holdingCurrent as number),
          )
        }
      }
    expect(judged).toBeGreaterThan(500)
    expect(worst).toBeLessThan(1e-10)
  })

  it("gives back the columns as they are printed", () => {
    const made = built<Drive>(hobbyServoDrive, jaw)
    for (const [voltage, torque, time] of [
      [4.8, 9, 0.2],
      [6, 11, 0.16],
    ] as const) {
      const line = lineAt(made, voltage)
      const stall = line.effortConstant * (voltage / line.windingResistance - line.frictionCurrent)
      const free = (voltage - line.frictionCurrent * line.windingResistance) / line.backEmfConstant
      expect(stall / 0.0980665).toBeCloseTo(torque, 10)
      expect(Math.PI / 3 / free).toBeCloseTo(time, 12)
    }
    expect(made.ratedVoltage).toBe(6)
    expect([made.low, made.high].map((a) => (a * 180) / Math.PI).map(Math.round)).toEqual([-10, 50])
    // the share of stall that is usually let hold for long, at the lower voltage
    expect(made.ratedEffort).toBeCloseTo(0.3 * 9 * 0.0980665, 12)
    expect([made.control, made.standbyCurrent]).toEqual(["position-servo", 0.01])
  })

  it("does nothing at its minimum voltage and below, where the domain's servo has no torque, speed or current left", () => {
    let refused = 0
    for (const { si, made } of drawn) {
      const at = (voltage: number) => hobbyServo.si({ ...asked(si), terminalVoltage: voltage, torque: 0, angle: null })
      const above = at(made.minVoltage * (1 + 1e-6) + 1e-6)
      expect(isNoSolution(above)).toBe(false)
      if (!(made.minVoltage > 0)) continue
      const below = at(made.minVoltage * (1 - 1e-6))
      if (isNoSolution(below)) refused++
      // where torque and speed are left, its stall current has come down to what its circuit draws
      else expect(below.stallCurrent).toBeLessThanOrEqual(si.idleCurrent)
    }
    expect(refused).toBeGreaterThan(5)
  })

  it("asks for the stall current, and for one that brings the power of its torque and speed", () => {
    const { stallCurrent: _, ...without } = jaw
    expect(readMember(hobbyServoDrive, without).issues.map((one) => [one.code, one.path[0]])).toEqual([["missing", "stallCurrent"]])
    // 9 kgf·cm at 60° in 0.2 s are 4.622 W as stall torque times free speed; 4.8 V bring that with (I − 10 mA)² / I = 0.963 A / 1.05
    const enough = 0.9369
    const issues = (current: number) =>
      readMember(hobbyServoDrive, { ...jaw, secondVoltage: null, secondStallTorque: null, secondTime: null, stallCurrent: current }).issues
    expect(issues(enough * 1.001)).toEqual([])
    expect(issues(enough * 0.998).map((one) => one.path)).toEqual([["stallCurrent"]])
  })

  it("is told angles in the way it turns", () => {
    expect(readMember(hobbyServoDrive, { ...jaw, toAngle: "-10 deg" }).issues.map((one) => one.path)).toEqual([["toAngle"]])
    expect(readMember(hobbyServoDrive, { ...jaw, toAngle: "-9.9 deg" }).issues).toEqual([])
  })

  it("tells a datasheet's own faults in the domain's words", () => {
    const paths = (more: object) => readMember(hobbyServoDrive, { ...jaw, ...more }).issues.map((one) => one.path[0])
    expect(paths({ secondVoltage: "4.8 V" })).toEqual(["secondVoltage"])
    expect(paths({ secondTime: null })).toEqual(["secondTime"])
    expect(paths({ secondStallTorque: "8 kgf cm" })).toEqual(["secondStallTorque"])
    expect(paths({ stallCurrent: "5 mA" })).toEqual(["stallCurrent"])
  })
})
