// Laws that every drive keeps, whatever its file: the index is walked.
import { describe, expect, it } from "vitest"
import type { AnyDriveMember, Drive, DriveLine } from "../../../src/rig/drives/drive.js"
import { drives } from "../../../src/rig/drives/index.js"
import { currentFor, rateFor } from "../../../src/rig/run/motion-model.js"
import { between, descriptionFaults, type Random, samples, seeded } from "../members.js"

const SAMPLES = 80
const names = ["effortConstant", "backEmfConstant", "windingResistance", "frictionCurrent", "circuitCurrent"] as const

/** Its line at a voltage, written over another so that nothing may be left as it was. */
function lineOf(drive: Drive, voltage: number): DriveLine {
  const line: DriveLine = {
    effortConstant: Number.NaN,
    backEmfConstant: Number.NaN,
    windingResistance: Number.NaN,
    frictionCurrent: Number.NaN,
    circuitCurrent: Number.NaN,
  }
  if (drive.lineAt) drive.lineAt(voltage, line)
  else for (const name of names) line[name] = drive[name]
  return line
}

describe.each(Object.entries(drives) as [string, AnyDriveMember][])("drive %s", (key, member) => {
  const random: Random = seeded(20261130)
  const drawn = samples<Drive>(member as never, SAMPLES, random)

  it("is described in full", () => expect(descriptionFaults(key, member as never)).toEqual([]))

  it("has a travel, and figures that are figures", () => {
    for (const { made, document } of drawn) {
      const label = JSON.stringify(document)
      expect(["length", "angle"]).toContain(made.travel)
      expect(["on-off", "ramp", "position-servo"]).toContain(made.control)
      expect(made.high, label).toBeGreaterThan(made.low)
      for (const name of ["effortConstant", "backEmfConstant", "windingResistance", "ratedVoltage"] as const) {
        expect(made[name], `${name} of ${label}`).toBeGreaterThan(0)
        expect(made[name], `${name} of ${label}`).toBeLessThan(Number.POSITIVE_INFINITY)
      }
      for (const name of ["frictionCurrent", "circuitCurrent", "inertia", "minVoltage", "unlocking", "standbyCurrent"] as const) {
        expect(made[name], `${name} of ${label}`).toBeGreaterThanOrEqual(0)
        expect(made[name], `${name} of ${label}`).toBeLessThan(Number.POSITIVE_INFINITY)
      }
      expect(made.holdingEffort, label).toBeGreaterThanOrEqual(0)
      expect(made.backwardEfficiency, label).toBeGreaterThanOrEqual(0)
      expect(made.backwardEfficiency, label).toBeLessThanOrEqual(1)
      expect(made.unlocking * made.backwardEfficiency, label).toBe(0)
      if (made.currentLimit !== null) expect(made.currentLimit, label).toBeGreaterThan(0)
      if (made.ratedEffort !== null) expect(made.ratedEffort, label).toBeGreaterThan(0)
      expect(made.minVoltage, label).toBeLessThan(made.ratedVoltage)
    }
  })

  it("has at its rated voltage the line of its record, and above its minimum voltage one that moves", () => {
    for (const { made, document } of drawn) {
      const label = JSON.stringify(document)
      const rated = lineOf(made, made.ratedVoltage)
      for (const name of names) expect(Math.abs(rated[name] / made[name] - 1) || 0, `${name} of ${label}`).toBeLessThan(1e-12)
      if (!made.lineAt) continue
      for (const share of [1e-3, 0.01, 0.3, 1, 2]) {
        const voltage = made.minVoltage + share * made.ratedVoltage
        const line = lineOf(made, voltage)
        for (const name of names) expect(line[name], `${name} at ${voltage} V of ${label}`).toBeGreaterThanOrEqual(0)
        expect(line.effortConstant, label).toBeGreaterThan(0)
        expect(voltage - line.frictionCurrent * line.windingResistance, label).toBeGreaterThan(0)
      }
    }
  })

  it("gives no more work than it takes, against the load and with it", () => {
    for (const { made, document } of drawn)
      for (const share of [0.3, 0.8, 1, 1.1]) {
        const voltage = made.minVoltage + share * (made.ratedVoltage - made.minVoltage)
        const line = lineOf(made, voltage)
        const stall = line.effortConstant * (voltage / line.windingResistance - line.frictionCurrent)
        if (!(stall > 0)) continue
        for (const effort of [between(random, 0, stall), -between(random, 0, stall)]) {
          const current = currentFor(made, effort, line)
          const rate = rateFor(voltage, current, line)
          if (!(rate > 0)) continue
          const lost = voltage * current - effort * rate
          // datasheets are printed to two or three figures: their constants may cross by 5 %
          expect(lost, JSON.stringify(document)).toBeGreaterThanOrEqual(-0.05 * Math.abs(effort * rate))
        }
      }
  })
})
