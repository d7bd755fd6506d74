import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { startUp, type UsbStandard, usbPromises, usbSupply } from "../../src/converter/index.js"

type Si = ReturnType<typeof startUp.read>

/** Rotor and supply stepped through in time: when 95 % of the running speed is reached, or null within `most` seconds. */
function stepped(si: Si, most: number): { time: number | null; lowest: number } {
  const one = {
    r: si.windingResistance + si.motors * si.sourceResistance,
    limit: (si.currentLimit ?? Number.POSITIVE_INFINITY) / si.motors,
  }
  const stall = si.sourceVoltage / one.r
  const goal = (0.95 * ((stall - si.loadTorque / si.backEmfConstant) * one.r)) / si.backEmfConstant
  if (!(goal > 0)) return { time: null, lowest: 0 }
  const dt = (si.inertia * one.r) / si.backEmfConstant ** 2 / 4000
  let [t, w, over, off, lowest] = [0, 0, 0, 0, si.sourceVoltage]
  // a start counts once its current has left the limit: a supply that switches off again has not started it
  let reached: number | null = null
  while (t < most) {
    const want = (si.sourceVoltage - si.backEmfConstant * w) / one.r
    let current = want
    if (off > 0) {
      off -= dt
      current = 0
    } else if (want > one.limit) {
      if (si.limitAction === "hold") current = one.limit
      else {
        over += dt
        if (over > si.onTime) {
          if (si.limitAction === "latch") return { time: null, lowest: 0 }
          over = 0
          off = si.offTime
          reached = null
        }
      }
    } else over = 0
    // a supply that is off feeds nothing, whatever the coasting motors give back
    lowest = off > 0 ? 0 : Math.min(lowest, current * si.windingResistance + si.backEmfConstant * w)
    // midpoint of the back-EMF over the step
    const rate = (i: number) => (si.backEmfConstant * i - si.loadTorque) / si.inertia
    const half = w + (dt / 2) * rate(current)
    const mid =
      off > 0
        ? 0
        : Math.min(si.limitAction === "hold" ? one.limit : Number.POSITIVE_INFINITY, (si.sourceVoltage - si.backEmfConstant * half) / one.r)
    w = Math.max(0, w + dt * rate(mid))
    t += dt
    if (w >= goal && off <= 0) reached ??= t
    if (reached !== null && (si.limitAction === "hold" || want <= one.limit)) return { time: reached, lowest }
  }
  return { time: null, lowest }
}

const cases = fc.record({
  sourceVoltage: fc.double({ min: 6, max: 24, noNaN: true }),
  sourceResistance: fc.double({ min: 0.02, max: 0.6, noNaN: true }),
  currentLimit: fc.double({ min: 0.8, max: 12, noNaN: true }),
  limitAction: fc.constantFrom("hold" as const, "hiccup" as const, "latch" as const),
  onTime: fc.double({ min: 0.001, max: 0.03, noNaN: true }),
  offTime: fc.double({ min: 0.0005, max: 0.02, noNaN: true }),
  motors: fc.integer({ min: 1, max: 3 }),
  windingResistance: fc.double({ min: 0.8, max: 5, noNaN: true }),
  backEmfConstant: fc.double({ min: 0.01, max: 0.04, noNaN: true }),
  inertia: fc.double({ min: 5e-7, max: 8e-6, noNaN: true }),
  loadTorque: fc.double({ min: 0.001, max: 0.02, noNaN: true }),
})

describe("startUp", () => {
  it("agrees with the rotor stepped through in time: whether, and when", () => {
    const met = new Map<string, number>()
    let worst = 0
    fc.assert(
      fc.property(cases, (input) => {
        const si = startUp.read(input)
        const out = startUp(input)
        // a start within a thousandth of its switch-off cannot be told by stepping
        if (out.overLimitDuration !== null && Math.abs(out.overLimitDuration / si.onTime - 1) < 0.01) return
        if (out.tries > 1 && out.tries > 40) return
        const run = stepped(si, Math.max(40 * out.timeConstant, 3 * (out.startDuration ?? 0)))
        met.set(out.outcome, (met.get(out.outcome) ?? 0) + 1)
        expect(run.time !== null, `${out.outcome} after ${out.tries} tries`).toBe(out.starts)
        if (out.startDuration !== null && run.time !== null)
          worst = Math.max(worst, Math.abs(run.time - out.startDuration) / (out.startDuration + out.tries * out.timeConstant))
        if (out.outcome !== "stalls") expect(Math.abs(run.lowest - out.minVoltage), out.outcome).toBeLessThan(0.01 * si.sourceVoltage)
      }),
      { numRuns: 250, seed: 51 },
    )
    for (const outcome of ["starts", "starts-limited", "starts-after-hiccups", "stalls", "hiccups", "latches-off"])
      expect(met.get(outcome) ?? 0, outcome).toBeGreaterThan(2)
    expect(worst).toBeLessThan(2e-3)
  })

  it("says when something else on the supply resets", () => {
    const sunk = startUp({ ...startUp.example, resetVoltage: 9 })
    expect([sunk.resets, sunk.cautions.some((c) => c.code === "brown-out")]).toEqual([true, true])
    expect(startUp({ ...startUp.example, resetVoltage: 2 }).resets).toBe(false)
    // the motors' own sag stays above 3 V, but a supply that switches off takes everything with it
    for (const limitAction of ["hiccup", "latch"] as const)
      expect(startUp({ ...startUp.example, limitAction, onTime: 0, resetVoltage: 3 })).toMatchObject({ minVoltage: 0, resets: true })
  })

  it("gives no running current to motors that never run, and none above a limit that is held", () => {
    const { example } = startUp
    // 10 mN m at 20 mV s/rad are 0.5 A a motor, 1 A for both
    expect(startUp({ ...example, currentLimit: "1.01 A" }).runningCurrent).toBeCloseTo(1, 12)
    expect(startUp({ ...example, currentLimit: "0.99 A" }).runningCurrent).toBeNull()
    fc.assert(
      fc.property(cases, (input) => {
        const out = startUp(input)
        expect(out.runningCurrent === null).toBe(!out.starts)
        if (out.runningCurrent !== null && input.limitAction === "hold")
          expect(out.runningCurrent).toBeLessThanOrEqual(input.currentLimit * (1 + 1e-12))
      }),
      { numRuns: 200, seed: 52 },
    )
  })

  it("advises more current only where more current would help", () => {
    const text = (input: object) => startUp({ ...startUp.example, ...input }).cautions.find((c) => c.code === "never-starts")?.message
    expect(text({ limitAction: "latch", onTime: 0 })).toMatch(/supply of more than/)
    expect(text({ loadTorque: 5 })).not.toMatch(/supply of more than/)
  })
})

describe("usbSupply", () => {
  it("offers each Power Delivery voltage only above its power, and never more than the power rating", () => {
    for (const [type, promise] of Object.entries(usbPromises)) {
      if (promise.abovePower === null) continue
      for (let ratedPower = 5; ratedPower <= 240; ratedPower += 2.5) {
        const outcome = usbSupply.attempt({ type, loadCurrent: 1, ratedPower, cableMarked: true, cableLength: 0.5 })
        expect(outcome.ok, `${type} at ${ratedPower} W`).toBe(ratedPower > promise.abovePower)
        if (outcome.ok) expect(outcome.value.promisedPower).toBeLessThanOrEqual(ratedPower * (1 + 1e-12))
      }
    }
  })

  it("offers nothing above 20 V through a cable that is not marked", () => {
    for (const type of ["pd-20V", "pd-28V", "pd-36V", "pd-48V"] as const) {
      const outcome = usbSupply.attempt({ type, loadCurrent: 1, ratedPower: 240, cableLength: 0.5 })
      expect(outcome.ok, type).toBe(type === "pd-20V")
      if (!outcome.ok) expect("noSolution" in outcome.error && outcome.error.noSolution).toBe("needs-marked-cable")
    }
  })

  it("lets a marked cable carry 5 A from 20 V up and no more than 3 A below, and any other 3 A everywhere", () => {
    const promised = (standard: UsbStandard, markedCable: boolean) =>
      usbSupply({ type: standard, loadCurrent: 0.1, ratedPower: 240, cableMarked: markedCable }).promisedCurrent
    for (const standard of ["pd-5V", "pd-9V", "pd-15V"] as const)
      expect([promised(standard, true), promised(standard, false)], standard).toEqual([3, 3])
    expect([promised("pd-20V", true), promised("pd-20V", false)]).toEqual([5, 3])
    expect([promised("pd-28V", true), promised("pd-36V", true), promised("pd-48V", true)]).toEqual([5, 5, 5])
  })

  it("takes a cable at the most that USB 2.0 allows its gauge, not at pure copper", () => {
    // table 6-7: 2.08 m of AWG 24; pure copper of that gauge has 84.2 mohm/m
    const { maxCableLength } = usbSupply({ type: "usb2", loadCurrent: 0.5 })
    expect(Math.abs((maxCableLength as number) - 2.08)).toBeLessThan(0.015)
    expect(usbSupply.read({ type: "usb2", loadCurrent: 0.5 }).conductorResistance / 0.0842).toBeGreaterThan(1.075)
  })

  it("loses exactly its 0.25 V over the greatest length, and warns past the promise", () => {
    const port = usbSupply({ type: "usb2", loadCurrent: 0.5, conductorResistance: 0.232 })
    const there = usbSupply({ type: "usb2", loadCurrent: 0.5, conductorResistance: 0.232, cableLength: port.maxCableLength })
    expect(there.cableDrop).toBeCloseTo(0.25, 12)
    expect(usbSupply({ type: "usb2", loadCurrent: 0.9 }).cautions.map((c) => c.code)).toContain("over-current")
  })
})
