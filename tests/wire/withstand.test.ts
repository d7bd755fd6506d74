import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { conductorSize, fuseCoordination, harness, voltageDrop, wireHeating } from "../../src/wire/index.js"
import {
  aloneInAir,
  currentAt,
  guards,
  inAir,
  largestFuse,
  ratedCurrentOf,
  shortCurrent,
  timeTo,
  withstands,
} from "../../src/wire/withstand.js"
import { film, heated, inStillAir, perMetre, largestFuse as secondFuse } from "./second.js"

const solid = (awg: number) => ({ awg, area: null, material: "copper" as const, stranding: "solid" as const })

/**
 * Conductor temperature by finite volumes: a copper core, shells of insulation that store heat too (1.4 MJ/(m³·K), a usual
 * figure for PVC), a surface in still air; explicit steps.
 */
function finiteVolumes(awg: number, current: number, seconds: number, from: number, shells = 6, storage = 1.4e6): number {
  const size = solid(awg)
  const radius = (0.127e-3 * 92 ** ((36 - awg) / 39)) / 2
  const wall = 0.4e-3
  const edges = Array.from({ length: shells + 1 }, (_, i) => radius + (wall * i) / shells)
  const ring = (i: number) => Math.PI * ((edges[i + 1] as number) ** 2 - (edges[i] as number) ** 2)
  const middle = (i: number) => ((edges[i] as number) + (edges[i + 1] as number)) / 2
  const t = new Array<number>(shells).fill(from)
  let core = from
  const coreHeat = 3.45e6 * Math.PI * radius ** 2
  // half the smallest cell's own time constant
  const step = Math.min(0.25 * ((wall / shells) ** 2 / (0.17 / storage)), (0.1 * coreHeat) / (2 * Math.PI * 0.17))
  const steps = Math.ceil(seconds / step)
  const h = seconds / steps
  const outer = edges[shells] as number
  for (let k = 0; k < steps; k++) {
    const flows = [(2 * Math.PI * 0.17 * (core - (t[0] as number))) / Math.log(middle(0) / radius)]
    for (let i = 0; i + 1 < shells; i++)
      flows.push((2 * Math.PI * 0.17 * ((t[i] as number) - (t[i + 1] as number))) / Math.log(middle(i + 1) / middle(i)))
    const last = t[shells - 1] as number
    // the surface itself, between the last shell's middle and the air
    const toSurface = Math.log(outer / middle(shells - 1)) / (2 * Math.PI * 0.17)
    let surface = last
    for (let j = 0; j < 6; j++) {
      const out = 1 / (2 * Math.PI * outer * film(2 * outer, 25, Math.max(surface, 25.001), 0.9))
      surface = 25 + ((last - 25) * out) / (out + toSurface)
    }
    flows.push((last - surface) / toSurface)
    core += (h * (current ** 2 * perMetre(size, core) - (flows[0] as number))) / coreHeat
    for (let i = 0; i < shells; i++) t[i] = (t[i] as number) + (h * ((flows[i] as number) - (flows[i + 1] as number))) / (storage * ring(i))
  }
  return core
}

describe("what a wire bears", () => {
  it("at its short-time limit from the start it bears what holds it there for good, and next to that from just below", () => {
    const wire = { ...inAir(solid(20)), insulationRating: 200 }
    // insulation for 200 °C may reach 200 °C in a fault, and is there already when it is fully loaded
    for (const seconds of [0.01, 1, 5]) {
      expect(shortCurrent(wire, seconds, 200, 200)).toBe(currentAt(wire, 200))
      expect(shortCurrent(wire, seconds, 200, 230)).toBe(currentAt(wire, 200))
      for (const below of [1e-13, 1e-9, 1e-6]) {
        const near = shortCurrent(wire, seconds, 200, 200 - below)
        expect(near).toBeGreaterThanOrEqual(currentAt(wire, 200))
        expect(near).toBeLessThan(currentAt(wire, 200) * (1 + (100 * below) / seconds + 1e-12))
      }
    }
  })
  it("finds the current of a short fault and the surface of a wire for any wire, laid any way, from any start", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -3, max: 40 }),
        fc.double({ min: 1e-3, max: 5, noNaN: true }),
        fc.double({ min: -40, max: 300, noNaN: true }),
        fc.double({ min: 70, max: 350, noNaN: true }),
        fc.constantFrom("free-air" as const, "bundle" as const, "padding" as const),
        fc.double({ min: 1e-3, max: 20, noNaN: true }),
        (awg, seconds, from, limit, arrangement, insulation) => {
          const wire = {
            ...inAir(solid(awg)),
            arrangement,
            wires: arrangement === "free-air" ? 1 : 7,
            insulationThickness: insulation / 1000,
          }
          const current = shortCurrent(wire, seconds, limit, from)
          // by the time each current takes: just below it is still under the limit in time, just above it is not
          if (Math.max(from, 25) < limit - 1e-6) {
            expect(timeTo(wire, current * (1 - 1e-6), from, limit)).toBeGreaterThanOrEqual(seconds)
            expect(timeTo(wire, current * (1 + 1e-6), from, limit)).toBeLessThanOrEqual(seconds)
          } else expect(current).toBe(currentAt(wire, limit))
        },
      ),
      { numRuns: 60 },
    )
  })
  it("lays a wire of which only the size is known as wireHeating does by default", () => {
    const { current, awg, area, material, stranding, faultCurrent, faultTemperatureLimit, ...laid } = wireHeating.read({
      current: 1,
      awg: 20,
    })
    expect(aloneInAir).toEqual(laid)
  })

  it("times a heated conductor as Runge–Kutta steps of the same lump do", () => {
    fc.assert(
      fc.property(fc.integer({ min: 16, max: 30 }), fc.double({ min: 1.6, max: 6, noNaN: true }), (awg, times) => {
        const wire = inAir(solid(awg))
        const current = times * ratedCurrentOf(wire)
        const seconds = timeTo(wire, current, 80, 160)
        expect(heated(solid(awg), inStillAir, current, seconds, 80)).toBeCloseTo(160, 4)
      }),
      { numRuns: 12, seed: 41 },
    )
  })

  it.each([
    [30, 7],
    [26, 12],
    [22, 25],
    [18, 60],
  ])("never says that AWG %i at %f A lasts longer than it does with finite volumes, whose insulation stores heat", (awg, current) => {
    const seconds = timeTo(inAir(solid(awg)), current, 25, 160)
    expect(seconds).toBeLessThan(5)
    const real = finiteVolumes(awg, current, seconds, 25)
    expect(real).toBeLessThan(160)
    // and with next to no heat in the insulation both are one
    const light = finiteVolumes(awg, current, seconds, 25, 3, 5e3)
    expect(Math.abs(light - 160)).toBeLessThan(0.02 * 135)
  })

  it("is the adiabatic law for short faults and the heat balance for long ones", () => {
    const wire = inAir(solid(20))
    const area = (Math.PI / 4) * (0.127e-3 * 92 ** (16 / 39)) ** 2 * 1e6
    // k = 226·√ln(394.5/314.5) = 107.6 A·√s/mm² from 80 to 160 °C
    const k = 226 * Math.sqrt(Math.log((234.5 + 160) / (234.5 + 80)))
    expect(shortCurrent(wire, 0.01, 160) / ((k * area) / Math.sqrt(0.01))).toBeCloseTo(1, 2)
    expect(shortCurrent(wire, 1e5, 160) / currentAt(wire, 160)).toBeCloseTo(1, 6)
    expect(timeTo(wire, currentAt(wire, 160) * 0.999, 80, 160)).toBe(Number.POSITIVE_INFINITY)
    expect(timeTo(wire, 50, 170, 160)).toBe(0)
    const most = shortCurrent(wire, 5, 160)
    expect([withstands(wire, most * 0.9999, 5, 160), withstands(wire, most * 1.0001, 5, 160)]).toEqual([true, false])
    // a millisecond past 5 s it is no short fault: the rating holds
    const rated = ratedCurrentOf(wire)
    expect([withstands(wire, rated * 1.01, 5, 160), withstands(wire, rated * 1.01, 5.001, 160)]).toEqual([true, false])
    expect(withstands(wire, rated, Number.POSITIVE_INFINITY, 160)).toBe(true)
    // from the air's temperature it has longer than from the rating, where it has no time left
    const cold = timeTo(wire, rated * 1.4, 25, 80)
    expect(cold).toBeGreaterThan(5)
    expect(heated(solid(20), inStillAir, rated * 1.4, cold, 25)).toBeCloseTo(80, 4)
    expect([0.99, 1.01].map((share) => withstands(wire, rated * 1.4, cold * share, 160, 25))).toEqual([true, false])
  })

  it("finds the largest fuse where one of its two rules ends, whichever comes first", () => {
    const ruled = new Set<string>()
    for (const [awg, limit] of [
      [40, 160],
      [28, 160],
      [12, 160],
      [36, 100],
      [24, 90],
    ] as const) {
      const wire = inAir(solid(awg))
      const most = largestFuse(wire, limit)
      expect(most / secondFuse(solid(awg), inStillAir, 80, limit)).toBeCloseTo(1, 6)
      const [inside, outside] = [guards(most * 0.9999, wire, limit), guards(most * 1.0001, wire, limit)]
      expect(inside).toEqual({ long: true, overload: true })
      ruled.add(outside.long ? "overload" : "long")
    }
    expect([...ruled].sort()).toEqual(["long", "overload"])
  })

  it("knows a wire that melts before its insulation's rating is reached: thick walls of a good conductor", () => {
    const finned = { ...inAir(solid(30)), insulationThickness: 0.02, insulationConductivity: 10, insulationRating: 300 }
    const melts = 10244 * 0.0100262 ** 1.5
    expect(ratedCurrentOf(finned)).toBeGreaterThan(melts)
    expect(largestFuse(finned, 350)).toBeLessThan(melts / 1.34)
    const out = fuseCoordination({
      fuseRating: 9,
      current: 1,
      awg: 30,
      insulationThickness: "20 mm",
      insulationConductivity: 10,
      insulationRating: 300,
    })
    expect(out.protectsWire).toBe(false)
    expect(out.maxFuseRating).toBeCloseTo(out.fusingCurrent / 1.35, 9)
  })
})

describe("the one rule, asked by every solver", () => {
  const codes = (out: { readonly cautions: readonly { readonly code: string }[] }) => out.cautions.map((c) => c.code)

  it("is not silent on 20 A through AWG 30", () => {
    const out = voltageDrop({ current: 20, length: 1, awg: 30 })
    expect(codes(out)).toEqual(expect.arrayContaining(["wire-burns", "fumes"]))
    expect(codes(voltageDrop({ current: 2, length: 1, awg: 30 }))).toEqual([])
  })

  it("compares fuse and wire in a harness: 30 A on AWG 28", () => {
    const net = (rating: number, wires: object[] = []) =>
      harness({
        sources: [{ name: "pack", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.05 }],
        fuses: [{ name: "main", from: "p", to: "f", fuseRating: rating }],
        wires: [{ name: "out", from: "f", to: "a", length: 1, awg: 28 }, ...wires] as never,
        currentLoads: [{ name: "lamp", from: "a", to: "0", current: 0.5 }],
      })
    expect(codes(net(30))).toContain("fuse-above-wire")
    expect(codes(net(2))).not.toContain("fuse-above-wire")
  })

  it("finds the fuse that limits each wire: out by the widest way, back by the load it returns from, reversed fuses alike", () => {
    const pick = (flip: boolean, branch: number, shared = 12) =>
      harness({
        sources: [{ name: "pack", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.05 }],
        fuses: [
          { name: "main", from: flip ? "bus" : "p", to: flip ? "p" : "bus", fuseRating: 15 },
          { name: "branch", from: flip ? "leg" : "bus", to: flip ? "bus" : "leg", fuseRating: branch },
        ],
        wires: [
          { name: "bus bar", from: "bus", to: "far", length: 1, awg: 12 },
          { name: "leg out", from: "leg", to: "lamp", length: 1, awg: 24 },
          { name: "leg back", from: "return", to: "star", length: 1, awg: 24 },
          { name: "motor back", from: "motor", to: "star", length: 1, awg: 12 },
          { name: "trunk", from: "star", to: "0", length: 1, awg: shared },
        ],
        currentLoads: [
          { name: "lamp", from: "lamp", to: "return", current: 0.3 },
          { name: "motor", from: "far", to: "motor", current: 1 },
        ],
      }).cautions.filter((c) => c.code === "fuse-above-wire")
    for (const flip of [false, true]) {
      expect(pick(flip, 2)).toEqual([])
      // the branch fuse alone is what guards the thin pair, out and back
      expect(pick(flip, 10).map((c) => [c.values.fuse, c.values.more])).toEqual([["branch", " (the worst of 2)"]])
      // the shared way back carries the motor's fault, so the main fuse is its guard
      expect(pick(flip, 2, 24).map((c) => [c.values.fuse, c.values.wire, c.values.more])).toEqual([["main", "trunk", ""]])
    }
  })

  it("counts a fuse in the way back, and the larger of two ways that lead to one wire", () => {
    const wires = [{ name: "w", from: "b", to: "c", length: 1, awg: 24 }]
    const source = { name: "pack", positive: "p", negative: "0", sourceVoltage: 12, sourceResistance: 0.05 }
    const back = harness({
      sources: [source],
      fuses: [
        { name: "out", from: "p", to: "a", fuseRating: 20 },
        { name: "home", from: "b", to: "l", fuseRating: 2 },
      ],
      wires: wires.map((w) => ({ ...w, to: "0" })),
      currentLoads: [{ name: "lamp", from: "a", to: "l", current: 0.5 }],
    })
    expect(codes(back)).not.toContain("fuse-above-wire")
    const two = harness({
      sources: [source],
      fuses: [
        { name: "small", from: "p", to: "b", fuseRating: 2 },
        { name: "large", from: "p", to: "b", fuseRating: 20 },
      ],
      wires,
      currentLoads: [{ name: "lamp", from: "c", to: "0", current: 0.5 }],
    })
    expect(two.cautions.filter((c) => c.code === "fuse-above-wire").map((c) => c.values.fuse)).toEqual(["large"])
  })

  it("sizes no wire that the coordination of the same fuse and place then condemns, and the reverse", () => {
    let [sized, refused] = [0, 0]
    fc.assert(
      fc.property(
        fc.record({
          current: fc.double({ min: 0.05, max: 20, noNaN: true }),
          fuseRating: fc.double({ min: 0.1, max: 60, noNaN: true }),
          arrangement: fc.constantFrom("free-air" as const, "bundle" as const, "padding" as const),
          ambientTemperature: fc.double({ min: -20, max: 45, noNaN: true }),
          insulationRating: fc.constantFrom(70, 80, 105, 200),
        }),
        ({ current, fuseRating, arrangement, ambientTemperature, insulationRating }) => {
          const laid = { arrangement, ambientTemperature, insulationRating, wires: arrangement === "free-air" ? 1 : 3 }
          const out = conductorSize.si(conductorSize.read({ ...laid, current, fuseRating, length: 0.1, sourceVoltage: 24 }))
          if (isNoSolution(out)) {
            refused++
            return
          }
          sized++
          const pair = (awg: number) => fuseCoordination({ ...laid, awg, fuseRating, current })
          const chosen = pair(out.awg as number)
          expect([chosen.protectsWire, chosen.survivesOverload]).toEqual([true, true])
          const thinner = out.candidates.at(-2)
          if (thinner?.fails.includes("fuse")) {
            const { protectsWire, survivesOverload } = pair(thinner.awg as number)
            expect(protectsWire && survivesOverload).toBe(false)
          }
        },
      ),
      { numRuns: 60, seed: 43 },
    )
    expect(sized).toBeGreaterThan(40)
    expect(refused).toBeLessThan(20)
  })

  it("suggests no rating that it then rejects, whatever the wire's own datasheet claims", () => {
    let suggested = 0
    fc.assert(
      fc.property(
        fc.record({
          current: fc.double({ min: 0.1, max: 15, noNaN: true }),
          awg: fc.integer({ min: 12, max: 36 }),
          datasheetAmpacity: fc.option(fc.double({ min: 0.5, max: 500, noNaN: true })),
          meltingIntegral: fc.constantFrom(20, 200),
        }),
        (input) => {
          const pulse = { peakInrushCurrent: 20, inrushDuration: 0.05 }
          const { suggestedFuseRating } = fuseCoordination({ ...input, ...pulse, fuseRating: 1 })
          if (suggestedFuseRating === null) return
          suggested++
          expect(fuseCoordination({ ...input, ...pulse, fuseRating: suggestedFuseRating }).coordinated).toBe(true)
        },
      ),
      { numRuns: 120, seed: 44 },
    )
    expect(suggested).toBeGreaterThan(15)
  })

  it("does not believe a wire rating above what the place allows, nor one above the fusing current", () => {
    const out = fuseCoordination({ fuseRating: 30, current: 4, awg: 30, datasheetAmpacity: 400 })
    expect(out.sustainedFuseCurrent).toBeGreaterThan(out.fusingCurrent)
    expect([out.protectsWire, out.coordinated]).toEqual([false, false])
    expect(out.continuousCurrent).toBeLessThan(out.fusingCurrent)
    const modest = fuseCoordination({ fuseRating: 3, current: 1, awg: 20, datasheetAmpacity: 5 })
    expect(modest.maxFuseRating).toBeCloseTo(5 / 1.35, 12)
  })

  it("starts under padding from the skin, not the air: in the cold it warns of touch too", () => {
    const at = (ambient: number, current: number) => wireHeating({ current, awg: 24, arrangement: "padding", ambientTemperature: ambient })
    expect(at(-20, 0).surfaceTemperature).toBe(35)
    expect(at(-20, 3).surfaceTemperature).toBeCloseTo(at(35, 3).surfaceTemperature, 9)
    expect(at(40, 0).surfaceTemperature).toBe(40)
    expect(codes(at(-20, 3))).toContain("burns")
    expect(
      wireHeating({ current: 0, awg: 24, arrangement: "padding", ambientTemperature: 0, skinTemperature: 30 }).conductorTemperature,
    ).toBe(30)
    // in the open the skin has no say
    expect(wireHeating({ current: 0, awg: 24, ambientTemperature: -20 }).conductorTemperature).toBe(-20)
  })
})
