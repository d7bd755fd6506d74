// The hobby servo of the rig against drive.hobbyServo, which answers torque by torque from the datasheet's own lines.
import { describe, expect, it } from "vitest"
import { hobbyServo } from "../../../src/drive/index.js"
import type { Drive, DriveLine } from "../../../src/rig/drives/drive.js"
import { type HobbyServoDrive, hobbyServoDrive } from "../../../src/rig/drives/hobby-servo.js"
import { currentFor, rateFor } from "../../../src/rig/run/motion-model.js"
import { isNoSolution, type SiOf } from "../../../src/solver/index.js"
import { between, built, readMember, samples, seeded, spread } from "../members.js"

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
  const line = { effortConstant: 0, backEmfConstant: 0, windingResistance: 0, frictionCurrent: 0, circuitCurrent: 0 }
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
          line.circuitCurrent + voltage / line.windingResistance,
          line.effortConstant * (voltage / line.windingResistance - line.frictionCurrent),
        ]
        for (const share of [0, 0.3, 0.9]) {
          const torque = share * stall
          const out = hobbyServo.si({ ...asked(si), terminalVoltage: voltage, torque, angle: null })
          if (isNoSolution(out)) throw new Error(out.message)
          const wound = line.frictionCurrent + torque / line.effortConstant
          const current = line.circuitCurrent + wound
          const rate = (voltage - wound * line.windingResistance) / line.backEmfConstant
          const held = made.standbyCurrent + (stallCurrent - line.circuitCurrent) * (torque / stall) ** 2
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

  it("does nothing at its minimum voltage and below, where the domain's servo has no torque or speed left", () => {
    let refused = 0
    for (const { si, made } of drawn) {
      const at = (voltage: number) => hobbyServo.si({ ...asked(si), terminalVoltage: voltage, torque: 0, angle: null })
      const above = at(made.minVoltage * (1 + 1e-6) + 1e-6)
      expect(isNoSolution(above)).toBe(false)
      if (!(made.minVoltage > 0)) continue
      const below = at(made.minVoltage * (1 - 1e-6))
      expect(isNoSolution(below)).toBe(true)
      refused++
    }
    expect(refused).toBeGreaterThan(5)
  })

  it("gives no more work than its supply brings beyond circuit and winding, at any voltage and effort, with the load and against it", () => {
    const draw = seeded(20261129)
    const broken: string[] = []
    let judged = 0
    for (let tries = 0; tries < 2000; tries++) {
      const firstVoltage = spread(draw, 1, 30)
      const [ratio, stallCurrent] = [spread(draw, 1.02, 2), spread(draw, 0.01, 20)]
      const [firstStallTorque, firstTime] = [spread(draw, 0.01, 100), spread(draw, 0.02, 1)]
      const idleCurrent = Math.min(10, stallCurrent * spread(draw, 1e-4, 0.95))
      const both = draw() < 0.7
      const document = {
        ...jaw,
        ...{ firstVoltage, firstStallTorque, firstTime, stallCurrent, idleCurrent, backwardEfficiency: draw() },
        secondVoltage: both ? firstVoltage * ratio : null,
        secondStallTorque: both ? firstStallTorque * between(draw, 1, ratio ** 2) : null,
        secondTime: both ? firstTime / between(draw, 1, ratio ** 2) : null,
      }
      const { si, issues } = readMember(hobbyServoDrive, document)
      if (issues.length) continue
      const sheet = si as SiOf<HobbyServoDrive>
      const made = hobbyServoDrive.build(sheet) as Drive
      // a winding that takes beside the circuit what the datasheet says for stall
      const winding = sheet.firstVoltage / (sheet.stallCurrent - sheet.idleCurrent)
      const printed = (voltage: number, torque: number, time: number) => ((torque * Math.PI) / 3 / time) * (winding / voltage ** 2)
      const columns = Math.max(
        printed(sheet.firstVoltage, sheet.firstStallTorque, sheet.firstTime),
        both ? printed(sheet.secondVoltage as number, sheet.secondStallTorque as number, sheet.secondTime as number) : 0,
      )
      const low = Math.max(made.minVoltage, 1e-3)
      for (const voltage of [low * 1.0001, between(draw, low, sheet.firstVoltage), between(draw, low, 60), 60]) {
        if (!(voltage > made.minVoltage)) continue
        const line = lineAt(made, voltage)
        const stall = line.effortConstant * (voltage / line.windingResistance - line.frictionCurrent)
        // what is printed to two or three figures may be taken as it stands, and up to 5 % of it between the columns
        const isBetween = voltage > sheet.firstVoltage && voltage < (sheet.secondVoltage ?? 0)
        const most = Math.max(1, isBetween ? 1.05 : columns)
        for (const effort of [0, 1e-3, draw(), 1 - 1e-3, -draw(), -1].map((share) => share * stall)) {
          const current = currentFor(made, effort, line)
          const beyond = current - sheet.idleCurrent
          const given = voltage * beyond - beyond ** 2 * winding
          const work = effort * rateFor(voltage, current, line)
          judged++
          const slack = 1e-9 * (Math.abs(work) + Math.abs(given) + voltage * sheet.idleCurrent)
          if (!(work <= given * (work > 0 ? most : 1) + slack)) broken.push(JSON.stringify({ document, voltage, effort }))
        }
      }
    }
    expect(broken).toEqual([])
    expect(judged).toBeGreaterThan(5000)
  })

  it("draws at stall what its circuit draws at any voltage and its winding in proportion, and never more torque or speed than in proportion beside its columns", () => {
    const line = lineAt(built<Drive>(hobbyServoDrive, { ...jaw, idleCurrent: "0.2 A" }), 2.4)
    // 0.2 A and half of the 1.8 A that 4.8 V bring
    expect(line.circuitCurrent + 2.4 / line.windingResistance).toBeCloseTo(1.1, 12)
    // half of 9 kgf·cm, and half of 60° in 0.2 s: on the line of both columns 5 kgf·cm would be left
    expect((line.effortConstant * 2.4) / line.windingResistance / 0.0980665).toBeCloseTo(4.5, 10)
    expect(Math.PI / 3 / (2.4 / line.backEmfConstant)).toBeCloseTo(0.4, 12)
  })

  it("is a fault where torque and speed between its columns take more power than its stall current brings", () => {
    // twice the voltage, no more torque, four times the speed: in the middle 3/4 of torque and 3/2 of speed in proportion, 1.125 of the columns' power
    const like = { firstVoltage: 4, firstStallTorque: 1, secondVoltage: 8, secondStallTorque: 1, idleCurrent: 0, stallCurrent: 1 }
    const issues = (share: number) => {
      const firstTime = Math.PI / 3 / (4 * share)
      return readMember(hobbyServoDrive, { ...jaw, ...like, firstTime, secondTime: firstTime / 4 }).issues
    }
    expect(issues(1.05 / 1.126).map((one) => one.path)).toEqual([])
    const [fault, ...more] = issues(1.05 / 1.124)
    expect([fault?.path, more.length]).toEqual([["stallCurrent"], 0])
    expect(fault?.received).toContain("5.33 V")
  })

  it("asks for the stall current, and for one that brings the power of its torque and speed", () => {
    const { stallCurrent: _, ...without } = jaw
    expect(readMember(hobbyServoDrive, without).issues.map((one) => [one.code, one.path[0]])).toEqual([["missing", "stallCurrent"]])
    // 9 kgf·cm at 60° in 0.2 s are 4.6213 W as stall torque times free speed; 4.8 V bring that with 0.9628 A beside the circuit's 10 mA
    const enough = 0.01 + 0.96277 / 1.05
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
