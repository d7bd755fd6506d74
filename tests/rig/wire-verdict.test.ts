import { describe, expect, it } from "vitest"
import { type Found, lacking, verdictOf, worstOf } from "../../src/rig/assess/finding.js"
import { findings } from "../../src/rig/assess/index.js"
import { assess, moveTime, type RigDocument } from "../../src/rig/index.js"
import { caution, commonPractice, type SiOf } from "../../src/solver/index.js"
import { conductorSize, fuseCoordination, harness, voltageDrop, wireHeating } from "../../src/wire/index.js"
import { demo } from "../helpers/rigs.js"
import { currentFor, flow, inStillAir, largestFuse, settles } from "../wire/second.js"

type Si = SiOf<RigDocument>

const gauge = (awg: number) => ({ awg, area: null, material: "copper" as const, stranding: "solid" })
const has = (out: { readonly cautions: readonly { readonly code: string }[] }, ...codes: string[]) =>
  out.cautions.some((c) => codes.includes(c.code))

/** Pack, fuse, wire and a load of that current. */
const net = (awg: number, current: number, fuseRating: number) =>
  harness({
    sources: [{ name: "pack", positive: "p", negative: "0", sourceVoltage: 100, sourceResistance: 0 }],
    fuses: [{ name: "main", from: "p", to: "f", fuseRating }],
    wires: [{ name: "out", from: "f", to: "a", length: 0.1, awg }],
    currentLoads: [{ name: "wing", from: "a", to: "0", current }],
  })
const sized = (current: number, fuseRating: number | null) => conductorSize({ current, length: 0.05, sourceVoltage: 100, fuseRating })
const fails = (awg: number, current: number, fuseRating: number | null, rule: string) => {
  const found = sized(current, fuseRating).candidates.find((c) => c.awg === awg)
  if (!found) throw new Error(`AWG ${awg} was not looked at`)
  return found.fails.split(",").includes(rule)
}

/** Whether the wire bears the current for good, alone in still air: what each of the solvers says. */
const bearing = (awg: number, current: number) => ({
  voltageDrop: !has(voltageDrop({ current, length: 1, awg }), "wire-overloaded", "wire-burns"),
  wireHeating: wireHeating({ current, awg }).bears && !has(wireHeating({ current, awg }), "over-rating"),
  conductorSize: !fails(awg, current, null, "temperature"),
  fuseCoordination: fuseCoordination({ fuseRating: current / 1.35, current: current / 2, awg }).protectsWire,
  harness: !has(net(awg, current, 1000), "wire-overloaded", "wire-burns"),
})
const everyone = (answers: object) => [...new Set(Object.values(answers))]

describe("one rule for what a wire bears, at its threshold by a second calculation", () => {
  const gauges = [30, 26, 22, 18, 14]

  it.each(gauges)("AWG %i for good: five solvers say yes just below and no just above", (awg) => {
    const rated = currentFor(gauge(awg), inStillAir, 80)
    expect(everyone(bearing(awg, rated * (1 - 1e-7)))).toEqual([true])
    expect(everyone(bearing(awg, rated * (1 + 1e-7)))).toEqual([false])
  })

  it.each(gauges)("AWG %i behind a fuse: sizing, coordination and harness agree on both sides of the largest", (awg) => {
    const largest = largestFuse(gauge(awg), inStillAir, 80, 160)
    const guarded = (fuse: number) => {
      const pair = fuseCoordination({ fuseRating: fuse, current: fuse / 2, awg })
      return {
        fuseCoordination: pair.protectsWire && pair.survivesOverload,
        conductorSize: !fails(awg, fuse / 2, fuse, "fuse"),
        harness: !has(net(awg, fuse / 2, fuse), "fuse-above-wire"),
      }
    }
    expect(everyone(guarded(largest * (1 - 1e-6)))).toEqual([true])
    expect(everyone(guarded(largest * (1 + 1e-6)))).toEqual([false])
  })

  it.each(gauges)("AWG %i against skin: all warn from 43 °C of surface on", (awg) => {
    let [low, high] = [25, 80]
    for (let k = 0; k < 60; k++) {
      const mid = (low + high) / 2
      if (flow(gauge(awg), inStillAir, mid).surface < 43) low = mid
      else high = mid
    }
    const warm = currentFor(gauge(awg), inStillAir, low)
    const warns = (current: number) => ({
      voltageDrop: has(voltageDrop({ current, length: 1, awg }), "burns"),
      wireHeating: has(wireHeating({ current, awg }), "burns"),
      fuseCoordination: has(fuseCoordination({ fuseRating: current, current, awg }), "burns"),
      harness: has(net(awg, current, 1000), "burns"),
      // of conductorSize the size chosen speaks: the thinnest, for its own current
      ...(awg === 30 ? { conductorSize: has(sized(current, null), "burns") } : {}),
    })
    expect(everyone(warns(warm * (1 - 1e-6)))).toEqual([false])
    expect(everyone(warns(warm * (1 + 1e-6)))).toEqual([true])
    // and go on warning of it where the insulation is past its rating too
    const { conductorSize: _, ...overloaded } = warns(currentFor(gauge(awg), inStillAir, 80) * 1.02)
    expect(everyone(overloaded)).toEqual([true])
  })

  it("is the rig's too: the same wire at the rig's own current, just below and just above", () => {
    const doc = assess.read(demo("lantern-moth-cells"))
    const [awg, insulation] = [30, 80]
    const hinged = doc.hinged as NonNullable<Si["hinged"]>
    const wiring = doc.wiring as NonNullable<Si["wiring"]>
    const loaded = (factor: number): Si => ({
      ...doc,
      hinged: {
        ...hinged,
        actuator: { ...hinged.actuator, noLoadCurrent: 0.35 * factor, ratedCurrent: 0.8 * factor },
      },
      wiring: { ...wiring, source: { ...wiring.source, awg, area: null, temperature: 25 }, insulation },
    })
    const asked = (factor: number) => {
      const found = findings(loaded(factor), "wire-heat")[0]?.found
      if (found?.value == null || found.margin === null) throw new Error(`no verdict at ${factor}`)
      return { temperature: found.value, bears: found.margin >= 0 }
    }
    // actuators that draw more and more
    let [low, high] = [0.5, 1]
    while (asked(high).temperature < 80) [low, high] = [high, high * 1.3]
    for (let k = 0; k < 16; k++) {
      const mid = (low + high) / 2
      if (asked(mid).temperature < 80) low = mid
      else high = mid
    }
    for (const factor of [low, high]) {
      const rig = asked(factor)
      const current = currentFor(gauge(awg), inStillAir, rig.temperature)
      expect(everyone({ ...bearing(awg, current), rig: rig.bears })).toEqual([factor === low])
    }
  })
})

describe("the rig's wires", () => {
  const doc = assess.read(demo("lantern-moth-cells"))
  const hinged = doc.hinged as NonNullable<Si["hinged"]>
  const wiring = doc.wiring as NonNullable<Si["wiring"]>
  const of = (rig: Si, id: string): Found => {
    const found = findings(rig, id)[0]?.found
    if (!found) throw new Error(`no finding of ${id}`)
    return found
  }
  const wired = (change: Partial<NonNullable<Si["wiring"]>>): Si => ({ ...doc, wiring: { ...wiring, ...change } })
  const run = (awg: number) => ({ ...wiring.source, awg, area: null })

  it("are judged in the air round them, whatever temperature their resistance is taken at", () => {
    for (const [temperature, ambientTemperature] of [
      [25, 25],
      [90, 25],
      [150, 25],
      [25, 60],
    ] as const) {
      const rig = wired({ source: { ...run(24), temperature }, insulation: 90, ambientTemperature })
      const current = moveTime.si(rig)
      if ("noSolution" in current) throw new Error(current.message)
      const place = { ...inStillAir, ambientTemperature }
      expect(of(rig, "wire-heat").value).toBeCloseTo(settles(gauge(24), place, current.raise.peakSourceCurrent), 6)
    }
    const hot = of(wired({ ambientTemperature: 90, insulation: 90 }), "wire-heat")
    expect([verdictOf(hot), hot.why]).toEqual([
      "falls short",
      "The air round the wires is at 90 °C and their insulation is good to 90 °C: it bears no current at all there.",
    ])
    expect(verdictOf(of(wired({ ambientTemperature: 90, insulation: 90 }), "fuse"))).toBe("falls short")
  })

  it.each(["cell-current", "sag", "wire-drop", "wire-heat", "fuse", "switch", "peak-force", "stall-margin", "pin", "duty"])(
    "%s is judged by the worse direction: the same whichever end is called raised",
    (id) => {
      const turned: Si = { ...doc, hinged: { ...hinged, raised: hinged.raised === "extended" ? "retracted" : "extended" } }
      const [one, other] = [of(doc, id), of(turned, id)]
      expect(one.value).not.toBeNull()
      expect(other.margin).toBeCloseTo(one.margin as number, 9)
    },
  )

  it("behind the fuse without a converter are all protected by it, the thin run to the actuators too", () => {
    expect(verdictOf(of(wired({ source: run(20), load: run(20) }), "fuse"))).not.toBe("falls short")
    const thin = of(wired({ source: run(20), load: run(32) }), "fuse")
    expect(verdictOf(thin)).toBe("falls short")
    expect(thin.why).toContain("the wire to the actuators")
  })

  it("together are what fails, then what cannot be told, then what has least left, with every caution once", () => {
    const warned = (code: string) => caution(code, "warning", "Mind it.", commonPractice)
    const left = (margin: number, ...codes: string[]): Found => ({ ...lacking("x"), missing: null, margin, cautions: codes.map(warned) })
    expect(worstOf([left(0.2, "a"), left(-0.1, "b"), lacking("wiring")])).toEqual({ ...left(-0.1), cautions: [warned("b"), warned("a")] })
    for (const margin of [0, 1e-9, 0.5]) {
      expect(worstOf([left(margin), lacking("wiring")]).missing).toBe("wiring")
      expect(worstOf([lacking("wiring"), left(margin)]).missing).toBe("wiring")
    }
    expect(worstOf([left(0.5, "a"), left(0.3, "a")])).toEqual(left(0.3, "a"))
  })
})
