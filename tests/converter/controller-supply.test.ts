import { describe, expect, it } from "vitest"
import { type ControllerSupplyInput, controllerSupply } from "../../src/converter/index.js"

/** Numbers between two ends, evenly spread by a multiplicative generator (Lehmer, 48271 modulo 2³¹ − 1). */
function lehmer(seed: number) {
  let state = seed
  return (low: number, high: number) => {
    state = (state * 48271) % 2147483647
    return low + ((high - low) * state) / 2147483647
  }
}

type Feed =
  | { type: "direct" }
  | { type: "linear"; outputVoltage: number; dropout: number }
  | { type: "switching"; outputVoltage: number; minInputVoltage: number; efficiency: number }

/** What the feed takes from the supply at a voltage, and gives the controller. */
function fed(feed: Feed, current: number, bus: number): { takes: number; gives: number } {
  if (feed.type === "direct") return { takes: current, gives: bus }
  if (feed.type === "linear") return { takes: current, gives: Math.max(0, Math.min(feed.outputVoltage, bus - feed.dropout)) }
  const on = bus >= feed.minInputVoltage
  return { takes: on ? (feed.outputVoltage * current) / feed.efficiency / bus : 0, gives: on ? feed.outputVoltage : 0 }
}

/** Supply found from above: the voltage is let down from open circuit until the source gives what is taken at it. */
function settled(open: number, resistance: number, motors: number, feed: Feed, current: number) {
  const steps = 200000
  for (let k = 0; k <= steps; k++) {
    const bus = open * (1 - k / steps)
    const { takes, gives } = fed(feed, current, bus)
    if ((open - bus) / resistance >= motors + takes) return { bus, gives, step: open / steps }
  }
  return { bus: 0, gives: 0, step: open / steps }
}

const drawn = (of: ReturnType<typeof lehmer>, type: Feed["type"]) => {
  const feed: Feed =
    type === "direct"
      ? { type }
      : type === "linear"
        ? { type, outputVoltage: of(4.9, 5.2), dropout: of(0.3, 2) }
        : { type, outputVoltage: of(4.9, 5.2), minInputVoltage: of(5.5, 6.5), efficiency: of(0.75, 0.95) }
  return {
    sourceVoltage: { low: of(6.5, 11), high: of(12, 13) },
    sourceResistance: of(0.05, 0.3),
    motorCurrent: of(0, 15),
    controllerCurrent: of(0.05, 0.6),
    feed,
    supplyWindow: { low: of(4.4, 4.8), high: of(13, 16) },
    resetVoltage: of(2.7, 4.3),
  } satisfies ControllerSupplyInput
}

describe("controllerSupply", () => {
  it("settles where a source let down from open circuit first gives what is taken, motors at rest and starting", () => {
    const of = lehmer(71)
    let off = 0
    for (const type of ["direct", "linear", "switching"] as const)
      for (let k = 0; k < 25; k++) {
        const si = drawn(of, type)
        const out = controllerSupply(si)
        for (const [motors, bus, controller] of [
          [0, out.restVoltage, out.controllerRestVoltage],
          [si.motorCurrent, out.dipVoltage, out.controllerDipVoltage],
        ] as const) {
          const found = settled(si.sourceVoltage.low, si.sourceResistance, motors, si.feed, si.controllerCurrent)
          if (type === "switching" && found.gives === 0) off++
          // close to its lowest input a step of the search decides whether the converter is on
          if (si.feed.type === "switching" && Math.abs(found.bus - si.feed.minInputVoltage) < 0.1) continue
          expect(Math.abs(bus - found.bus)).toBeLessThan(3 * found.step)
          expect(Math.abs(controller - found.gives)).toBeLessThan(3 * found.step)
        }
        expect(out.resetMargin).toBeCloseTo(out.controllerDipVoltage - si.resetVoltage, 12)
        expect(out.lowMargin).toBeCloseTo(out.controllerDipVoltage - si.supplyWindow.low, 12)
        const most = type === "direct" ? si.sourceVoltage.high : (si.feed as { outputVoltage: number }).outputVoltage
        expect(out.highMargin).toBeCloseTo(si.supplyWindow.high - most, 12)
      }
    expect(off).toBeGreaterThan(3)
  })

  it("resets just above the motor current it names, not just below", () => {
    const of = lehmer(72)
    let met = 0
    for (const type of ["direct", "linear", "switching"] as const)
      for (let k = 0; k < 20; k++) {
        const si = drawn(of, type)
        const { maxMotorCurrent } = controllerSupply(si)
        if (maxMotorCurrent < 0.1 || maxMotorCurrent > 0.95 * (si.sourceVoltage.low / si.sourceResistance)) continue
        met++
        expect(controllerSupply({ ...si, motorCurrent: maxMotorCurrent * 0.999 }).resetMargin, type).toBeGreaterThanOrEqual(-1e-9)
        expect(controllerSupply({ ...si, motorCurrent: maxMotorCurrent * 1.001 }).resetMargin, type).toBeLessThan(0)
      }
    expect(met).toBeGreaterThan(30)
  })

  it("reads a signal as long as a moved ground leaves both its levels on their side, whichever end is moved", () => {
    const of = lehmer(73)
    const si = drawn(of, "linear")
    for (let k = 0; k < 40; k++) {
      const signal = {
        highOutput: of(2.9, 3.3),
        lowOutput: of(0, 0.4),
        highThreshold: of(2, 2.6),
        lowThreshold: of(0.6, 1),
        groundResistance: of(0, 0.15),
      }
      const out = controllerSupply({ ...si, motorCurrent: 8, signal })
      const moved = 8 * signal.groundResistance
      // seen from the receiver, what is sent moves up or down by what its ground moves
      const read = [moved, -moved].every(
        (shift) => signal.highOutput + shift >= signal.highThreshold && signal.lowOutput + shift <= signal.lowThreshold,
      )
      expect((out.signalHighMargin as number) >= 0 && (out.signalLowMargin as number) >= 0).toBe(read)
      expect(out.groundShift).toBeCloseTo(moved, 12)
    }
    const plain = controllerSupply(si)
    expect([plain.groundShift, plain.signalHighMargin, plain.signalLowMargin]).toEqual([null, null, null])
  })
})
