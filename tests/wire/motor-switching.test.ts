import { describe, expect, it } from "vitest"
import type { NoSolutionError } from "../../src/solver/index.js"
import { contactCategories, harness, type MotorSwitch, motorSwitching } from "../../src/wire/index.js"

/** Numbers between two ends, evenly spread by a multiplicative generator (Lehmer, 48271 modulo 2³¹ − 1). */
function lehmer(seed: number) {
  let state = seed
  return (low: number, high: number) => {
    state = (state * 48271) % 2147483647
    return low + ((high - low) * state) / 2147483647
  }
}
type Draw = ReturnType<typeof lehmer>
const kinds = Object.keys(contactCategories) as (keyof typeof contactCategories)[]
const plain = (of: Draw) => ({
  contacts: Math.floor(of(1, 3.99)),
  contactResistance: of(0, 0.1),
  ratedCurrent: of(1, 20),
  ratedVoltage: of(12, 60),
  category: kinds[Math.floor(of(0, kinds.length - 1e-9))] as keyof typeof contactCategories,
})
/** A chain of an emergency stop, a reversing switch and two limit switches with diodes. */
const row = (of: Draw): MotorSwitch[] => [
  { type: "emergency-stop", ...plain(of) },
  { type: "reversing-switch", ...plain(of) },
  { type: "limit-switch", ...plain(of), diodeDrop: of(0.4, 1) },
  { type: "limit-switch", ...plain(of), diodeDrop: of(0.4, 1) },
]
const drawn = (of: Draw) => ({
  supplyVoltage: of(8, 24),
  runningCurrent: of(0.3, 2.5),
  stallCurrent: of(3, 15),
  inductance: of(1e-4, 5e-3),
  switches: row(of),
  emergencyStop: "opens-supply" as const,
  holdsUnpowered: true,
})

describe("motorSwitching", () => {
  it("drops what a network of the same contacts drops, and with a diode in place of a limit switch", () => {
    const of = lehmer(71)
    for (let k = 0; k < 40; k++) {
      const si = drawn(of)
      const out = motorSwitching(si)
      /** The row between supply and motor; the switch at `open` is replaced by its diode, a source of its drop against the current. */
      const network = (open: number | null) => {
        const at = (i: number) => (i === si.switches.length ? "motor" : `n${i}`)
        const diode = open === null ? null : (si.switches[open] as { diodeDrop: number })
        return harness({
          sources: [
            { name: "supply", positive: "n0", negative: "0", sourceVoltage: si.supplyVoltage },
            ...(diode && open !== null
              ? [{ name: "diode", positive: at(open), negative: at(open + 1), sourceVoltage: diode.diodeDrop }]
              : []),
          ],
          switches: si.switches.flatMap((s, i) =>
            i === open
              ? []
              : [{ name: `s${i}`, from: at(i), to: at(i + 1), resistance: (s.contacts as number) * (s.contactResistance as number) }],
          ),
          currentLoads: [{ name: "motor", from: "motor", to: "0", current: si.runningCurrent }],
        }).loads[0] as { voltage: number }
      }
      expect(out.motorVoltage).toBeCloseTo(network(null).voltage, 9)
      expect(out.drop).toBeCloseTo(si.supplyVoltage - network(null).voltage, 9)
      expect(out.heat).toBeCloseTo((si.supplyVoltage - network(null).voltage) * si.runningCurrent, 9)
      const ends = [2, 3].map((open) => si.supplyVoltage - network(open).voltage)
      expect(out.endDrop).toBeCloseTo(Math.max(...ends), 9)
    }
  })

  it("starts, reverses and brakes with the currents that a winding stepped through time comes to", () => {
    const of = lehmer(72)
    for (let k = 0; k < 20; k++) {
      const si = drawn(of)
      const out = motorSwitching({ ...si, whenOpened: "brakes" })
      const resistance = si.supplyVoltage / si.stallCurrent
      /** Current of the winding at rest after a long time at this voltage, by the trapezoidal rule. */
      const settle = (voltage: number, backEmf: number, from: number) => {
        const step = si.inductance / resistance / 20
        let current = from
        for (let n = 0; n < 2000; n++) {
          const middle = ((2 * si.inductance) / step - resistance) * current + 2 * (voltage - backEmf)
          current = middle / ((2 * si.inductance) / step + resistance)
        }
        return current
      }
      // the speed at which it takes the running current, found by halving
      let [low, high] = [0, si.supplyVoltage]
      for (let n = 0; n < 60; n++) {
        const middle = (low + high) / 2
        if (settle(si.supplyVoltage, middle, 0) > si.runningCurrent) low = middle
        else high = middle
      }
      expect(out.startCurrent).toBeCloseTo(settle(si.supplyVoltage, 0, 0), 7)
      expect(out.reversingCurrent).toBeCloseTo(-settle(-si.supplyVoltage, low, si.runningCurrent), 6)
      expect(out.brakingCurrent).toBeCloseTo(-settle(0, low, si.runningCurrent), 6)
    }
  })

  it("takes at least the field's energy in an arc of any voltage, and nearly that in one far above the supply", () => {
    const of = lehmer(73)
    for (let k = 0; k < 10; k++) {
      const si = drawn(of)
      const { fieldEnergy, timeConstant, switchedCurrent } = motorSwitching(si)
      // reversed at speed it turns, and the supply with it drives on
      const resistance = si.supplyVoltage / si.stallCurrent
      expect(timeConstant).toBeCloseTo(si.inductance / resistance, 12)
      const arc = (voltage: number, driving: number) => {
        const step = (si.inductance * switchedCurrent) / voltage / 4000
        let [current, energy] = [switchedCurrent, 0]
        while (current > 0) {
          const next = current + (step * (driving - voltage - resistance * current)) / si.inductance
          energy += (voltage * (current + Math.max(0, next)) * step) / 2
          current = next
        }
        return energy
      }
      const driving = si.supplyVoltage + (si.supplyVoltage - si.runningCurrent * resistance)
      expect(arc(1.5 * driving, driving)).toBeGreaterThan(fieldEnergy as number)
      expect(arc(1000 * driving, driving) / (fieldEnergy as number)).toBeCloseTo(1, 2)
    }
  })

  it("leaves at the driver the voltage that a winding swings its capacitance to", () => {
    const of = lehmer(74)
    for (let k = 0; k < 10; k++) {
      const si = drawn(of)
      const inputCapacitance = of(1e-4, 2e-3)
      const { pumpedVoltage, switchedCurrent } = motorSwitching({ ...si, driver: { inputCapacitance, voltageLimit: 1000 } })
      // symplectic steps of winding into capacitance until the current is nought
      const step = Math.sqrt(si.inductance * inputCapacitance) / 20000
      let [current, voltage] = [switchedCurrent, si.supplyVoltage]
      while (current > 0) {
        current -= (step * voltage) / si.inductance
        voltage += (step * current) / inputCapacitance
      }
      expect(voltage / (pumpedVoltage as number)).toBeCloseTo(1, 3)
      // energy of motion counts as the field's does
      const more = motorSwitching({ ...si, inductance: null, driver: { inputCapacitance, voltageLimit: 1000, returnedEnergy: 0.5 } })
      expect((inputCapacitance * ((more.pumpedVoltage as number) ** 2 - si.supplyVoltage ** 2)) / 2).toBeCloseTo(0.5, 9)
    }
  })

  it("stops a part where slowing evenly leaves it, and lets coils and driver wait", () => {
    const { moving: _, ...rest } = motorSwitching.example
    const out = motorSwitching({ ...rest, moving: { tipSpeed: 0.7, reactionDuration: 0.9, stoppingDuration: 0.5 } })
    let [way, t] = [0, 0]
    for (const step = 1e-5; t < 1.4; t += step) way += (t < 0.9 ? 0.7 : 0.7 * (1 - (t - 0.9) / 0.5)) * step
    expect(out.runOn).toBeCloseTo(way, 4)
    expect(out.standbyPower).toBeCloseTo(12 * (0.08 + 0.005), 12)
  })

  it("limits what it has to switch to what a driver in the chain gives, and says nothing of what it was not told", () => {
    const base = drawn(lehmer(75))
    const limited = motorSwitching({ ...base, stallCurrent: 10, runningCurrent: 1, currentLimit: 6 })
    expect([limited.startCurrent, limited.reversingCurrent, limited.switchedCurrent]).toEqual([6, 6, 6])
    const { inductance: _, ...bare } = base
    const out = motorSwitching({ ...bare, switches: [{ type: "emergency-stop", ...plain(lehmer(76)) }] })
    const { reversingCurrent, brakingCurrent, endDrop, timeConstant, fieldEnergy, arcUtilisation, pumpedVoltage, runOn } = out
    expect([reversingCurrent, brakingCurrent, endDrop, timeConstant, fieldEnergy, arcUtilisation, pumpedVoltage, runOn]).toEqual(
      Array.from({ length: 8 }, () => null),
    )
    expect(out.standbyPower).toBe(0)
  })

  it("names a running current that it answers, and no larger one, whether contacts or a diode take the supply", () => {
    const of = lehmer(77)
    const seen = { diode: 0, contacts: 0 }
    for (let k = 0; k < 60; k++) {
      const base = { ...drawn(of), runningCurrent: 2.5, supplyVoltage: of(1, 3) }
      const switches = base.switches.map((s) => ({ ...s, contactResistance: of(0.1, 0.5) * (k % 2 && s.type === "limit-switch" ? 10 : 1) }))
      const ask = (change: object) => motorSwitching.attempt({ ...base, switches, ...change })
      const outcome = ask({})
      if (outcome.ok) throw new Error("not refused")
      const { nearest, noSolution } = outcome.error as NoSolutionError
      expect(noSolution).toBe("insufficient-voltage")
      const runningCurrent = nearest.runningCurrent as number
      const answered = ask({ runningCurrent })
      if (!answered.ok) throw new Error(answered.error.message)
      const { drop, endDrop } = answered.value
      if ((endDrop as number) > drop) seen.diode++
      else seen.contacts++
      expect(ask({ runningCurrent: runningCurrent * (1 + 1e-6) }).ok).toBe(false)
    }
    expect([seen.diode > 5, seen.contacts > 5]).toEqual([true, true])
  })
})
