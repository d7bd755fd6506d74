import { describe, expect, it } from "vitest"
import { type MotorDriverInput, motorDriver } from "../../src/converter/index.js"

/** Numbers between two ends, evenly spread by a multiplicative generator (Lehmer, 48271 modulo 2³¹ − 1). */
function lehmer(seed: number) {
  let state = seed
  return (low: number, high: number) => {
    state = (state * 48271) % 2147483647
    return low + ((high - low) * state) / 2147483647
  }
}

type Driver = {
  supplyVoltage: number
  current: number
  windingResistance: number
  standbyCurrent: number
  bridge: { type: "mosfet"; switchResistance: number; warmFactor: number }
  switching: { frequency: number; duty: number; riseTime: number; deadTime: number; diodeDrop: number }
}
const drawn = (of: ReturnType<typeof lehmer>): Driver => ({
  supplyVoltage: of(8, 24),
  current: of(0.3, 4),
  windingResistance: of(0.5, 3),
  standbyCurrent: of(0, 0.02),
  bridge: { type: "mosfet", switchResistance: of(0.01, 0.3), warmFactor: of(1, 1.6) },
  switching: { frequency: of(5e3, 4e4), duty: of(0.6, 1), riseTime: of(0, 1e-6), deadTime: of(0, 5e-7), diodeDrop: of(0.6, 1.2) },
})

/**
 * One period of a bridge, stepped: its output falls and rises in straight lines at the motor's current, the lower switch and then
 * the other path carry the current, a diode does in the dead times. Each switch's own voltage times current is its heat.
 */
function period(si: Driver) {
  const { frequency, duty, riseTime, deadTime, diodeDrop } = si.switching
  const ohms = si.bridge.switchResistance * si.bridge.warmFactor
  const whole = 1 / frequency
  const steps = 1000
  let [heat, volts] = [0, 0]
  // conducting: two switches in the path, whichever pair it is
  for (let k = 0; k < steps; k++) {
    const on = (k + 0.5) / steps < duty
    heat += (2 * ohms * si.current ** 2 * whole) / steps
    volts += (((on ? si.supplyVoltage : 0) - 2 * ohms * si.current) * whole) / steps
  }
  // edges: the switch that closes or opens stands the whole supply, falling away, at the full current
  for (const _ of ["rise", "fall"])
    for (let k = 0; k < steps; k++) heat += (si.supplyVoltage * (1 - (k + 0.5) / steps) * si.current * riseTime) / steps
  for (const _ of ["before", "after"]) heat += diodeDrop * si.current * deadTime
  return { heat: heat / whole, volts: volts / whole }
}

describe("motorDriver", () => {
  it("warms and drops as a period of its switches stepped through does, and loses nothing else", () => {
    const of = lehmer(61)
    for (let k = 0; k < 60; k++) {
      const si = drawn(of)
      const out = motorDriver(si)
      const one = period(si)
      expect(Math.abs(out.conductionLoss + out.switchingLoss - one.heat)).toBeLessThan(1e-9 * one.heat + 1e-12)
      // the duty falls between two steps
      expect(Math.abs(out.motorVoltage - one.volts)).toBeLessThan(si.supplyVoltage / 900)
      expect(out.supplyCurrent * si.supplyVoltage).toBeCloseTo(out.motorPower + out.heat, 9)
      expect(out.heat).toBeCloseTo(one.heat + si.supplyVoltage * si.standbyCurrent, 9)
      expect(out.efficiency * out.supplyCurrent * si.supplyVoltage).toBeCloseTo(out.motorPower, 9)
    }
  })

  it("starts, brakes and reverses with the current that Kirchhoff's loop lets through, found by halving", () => {
    const of = lehmer(62)
    for (let k = 0; k < 60; k++) {
      const bipolar = k % 2 === 0
      const { switching: _, ...own } = drawn(of)
      const si: MotorDriverInput & Driver = {
        ...own,
        ...(bipolar ? { bridge: { type: "bipolar", totalDrop: of(0.5, 3) } } : {}),
      } as never
      const out = motorDriver(si)
      const bridge = si.bridge as { totalDrop?: number; switchResistance?: number; warmFactor?: number }
      const takes = (i: number) => bridge.totalDrop ?? 2 * (bridge.switchResistance as number) * (bridge.warmFactor as number) * i
      const loop = (driving: number) => {
        if (driving <= takes(0)) return 0
        let [low, high] = [0, 1e4]
        for (let n = 0; n < 80; n++) {
          const middle = (low + high) / 2
          if (driving - middle * si.windingResistance - takes(middle) > 0) low = middle
          else high = middle
        }
        return low
      }
      // turning as at this load, the motor stands against what it gets
      const turning = Math.max(0, si.supplyVoltage - takes(si.current) - si.current * si.windingResistance)
      expect(out.startCurrent as number).toBeCloseTo(loop(si.supplyVoltage), 6)
      expect(out.brakingCurrent as number).toBeCloseTo(loop(turning), 6)
      expect(out.reversingCurrent as number).toBeCloseTo(loop(si.supplyVoltage + turning), 6)
    }
  })

  it("tells nothing of what it was not given", () => {
    const plain = motorDriver({ supplyVoltage: 12, current: 1, bridge: { type: "mosfet", switchResistance: 0.1 } })
    expect(plain.drop).toBeCloseTo(0.28, 12)
    expect([plain.switchingLoss, plain.standbyPower]).toEqual([0, 0])
    expect([plain.chipTemperature, plain.utilisation, plain.startCurrent, plain.brakingCurrent, plain.reversingCurrent]).toEqual([
      null,
      null,
      null,
      null,
      null,
    ])
    const full = motorDriver(motorDriver.example)
    expect(full.chipTemperature).toBeCloseTo(25 + 35 * full.heat, 12)
    expect(full.utilisation).toBeCloseTo(2 / 3, 12)
  })
})
