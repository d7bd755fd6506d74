import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { wireHeating } from "../../src/wire/index.js"

type Si = ReturnType<typeof wireHeating.read>

/** Surface coefficient, written apart from the source's: Churchill–Chu and radiation. */
function film(d: number, ta: number, ts: number, e: number): number {
  const mean = (ta + ts) / 2 + 273.15
  const mu = (1.716e-5 * Math.sqrt(mean / 273.15) * mean) / 273.15 / ((mean + 110.4) / 383.55)
  const density = 101325 / 287.05 / mean
  const grashof = (9.80665 * (ts - ta) * d * d * d) / mean / (mu / density) ** 2
  const pr = 707 / 1000
  const nu = (0.6 + (0.387 * (grashof * pr) ** (1 / 6)) / (1 + (0.559 / pr) ** 0.5625) ** (8 / 27)) ** 2
  const [s, a] = [ts + 273.15, ta + 273.15]
  return (nu * 0.0263 * (mean / 300) ** 0.865) / d + (ts === ta ? 0 : (e * 5.670374419e-8 * (s ** 4 - a ** 4)) / (ts - ta))
}

/** Steady conductor temperature by nested bisection of the two heat balances. */
function byBisection(si: Si, alpha: number, rho: number): number | null {
  const area = (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - (si.awg as number)) / 39)) ** 2
  const n = si.arrangement === "free-air" ? 1 : si.wires
  const bare = 2 * Math.sqrt(area / Math.PI)
  const wire = bare + 2 * si.insulationThickness
  const outer = n > 1 ? wire * 1.2 * Math.sqrt(n) : wire
  const inside = Math.log(wire / bare) / si.insulationConductivity / 2 / Math.PI + (n > 1 ? n / si.bundleConductivity / 4 / Math.PI : 0)
  // without current the wire is as warm as what it lies against: the air, or the skin where that is warmer
  const start = si.arrangement === "padding" && si.ambientTemperature < si.skinTemperature ? si.skinTemperature : si.ambientTemperature
  const z = outer / 2 + si.paddingThickness + si.paddingConductivity / si.paddingSurface
  const given = (ts: number) =>
    si.arrangement === "padding"
      ? ((ts - start) * Math.PI * si.paddingConductivity) / Math.log((8 * z) / Math.PI / outer)
      : Math.PI * outer * film(outer, start, ts, si.emissivity) * (ts - start)
  const made = (tc: number) => (si.current ** 2 * rho * (1 + alpha * (tc - 20))) / area
  // for a conductor temperature, the surface at which what flows in flows out; then whether more is made than that
  const flow = (tc: number) => {
    let [a, b] = [start, tc]
    for (let k = 0; k < 200; k++) {
      const mid = (a + b) / 2
      if (given(mid) * inside < n * (tc - mid)) a = mid
      else b = mid
    }
    return given(a) / n
  }
  let [low, high] = [start, 300]
  if (made(high) > flow(high)) return null
  for (let k = 0; k < 200; k++) {
    const mid = (low + high) / 2
    if (made(mid) > flow(mid)) low = mid
    else high = mid
  }
  return low
}

const cases = fc
  .record({
    current: fc.double({ min: 0.2, max: 15, noNaN: true }),
    awg: fc.integer({ min: 10, max: 28 }),
    arrangement: fc.constantFrom("free-air" as const, "bundle" as const, "padding" as const),
    wires: fc.integer({ min: 1, max: 30 }),
    ambientTemperature: fc.double({ min: -10, max: 60, noNaN: true }),
    insulationThickness: fc.double({ min: 1e-4, max: 2e-3, noNaN: true }),
    emissivity: fc.double({ min: 0, max: 1, noNaN: true }),
    paddingThickness: fc.double({ min: 1e-3, max: 0.05, noNaN: true }),
  })
  // alone in air there is one wire
  .map((c) => (c.arrangement === "free-air" ? { ...c, wires: 1 } : c))

describe("wireHeating", () => {
  it("agrees with nested bisection of separately written heat balances, to 1e-7 K", () => {
    let [worst, answered, refused] = [0, 0, 0]
    fc.assert(
      fc.property(cases, (input) => {
        const si = wireHeating.read(input)
        const out = wireHeating.si(si)
        const other = byBisection(si, 0.00393, 1 / 58e6)
        if (isNoSolution(out) || other === null) {
          expect(isNoSolution(out)).toBe(other === null)
          refused++
          return
        }
        answered++
        worst = Math.max(worst, Math.abs(out.conductorTemperature - other))
      }),
      { numRuns: 100, seed: 31 },
    )
    expect([answered > 50, refused > 5]).toEqual([true, true])
    expect(worst).toBeLessThan(1e-7)
  })

  it("is where a time-stepped conductor settles, and starts as fast as it says", () => {
    const input = { current: 9, awg: 20, ambientTemperature: 20, insulationThickness: 0.4e-3 } as const
    const out = wireHeating(input)
    const area = 5.176e-7
    // all of the wire's heat capacity is taken to be the metal's: the steady state does not depend on it
    let t = 20
    for (let k = 0; k < 4000; k++) {
      const r = (1 / 58e6 / area) * (1 + 0.00393 * (t - 20))
      const surface = t - 9 ** 2 * r * (Math.log(1.6118e-3 / 0.8118e-3) / (2 * Math.PI * 0.17))
      const shed = Math.PI * 1.6118e-3 * film(1.6118e-3, 20, Math.max(20, surface), 0.9) * (Math.max(20, surface) - 20)
      const rate = (9 ** 2 * r - shed) / (3.45e6 * area)
      if (k === 0) expect(out.initialHeatingRate).toBeCloseTo(rate, 2)
      t += 0.05 * rate
    }
    expect(t).toBeCloseTo(out.conductorTemperature, 2)
  })

  it("carries its rated current to exactly its rating, and less of everything with a thicker wire", () => {
    fc.assert(
      fc.property(cases, (input) => {
        const rated = wireHeating({ ...input, current: 0.1, insulationRating: 90 }).ampacity
        expect(wireHeating({ ...input, current: rated, insulationRating: 90 }).conductorTemperature).toBeCloseTo(90, 6)
        const thicker = wireHeating({ ...input, awg: input.awg - 2, current: rated, insulationRating: 90 })
        expect(thicker.conductorTemperature).toBeLessThan(90)
      }),
      { numRuns: 200, seed: 32 },
    )
  })

  it.each([
    [14, 35],
    [12, 40],
    [10, 55],
    [8, 80],
  ])("AWG %i alone in air at 30 °C reaches 90 °C within 12 %% of NEC table 310.17's %i A [from memory]", (awg, amps) => {
    const out = wireHeating({
      awg,
      current: 1,
      ambientTemperature: 30,
      insulationRating: 90,
      insulationThickness: "0.8 mm",
      stranding: "stranded",
    })
    expect(Math.abs(out.ampacity / amps - 1)).toBeLessThan(0.12)
  })

  it.each([
    [14, 31.2],
    [12, 40],
    [10, 55],
  ])(
    "AWG %i alone in air at 50 °C reaches 105 °C within 5 %% of the single-wire rating %f A [42L load manual, 2014, table 7-1]",
    (awg, amps) => {
      expect(Math.abs(wireHeating({ awg, current: 1, ambientTemperature: 50, insulationRating: 105 }).ampacity / amps - 1)).toBeLessThan(
        0.05,
      )
    },
  )

  it.each([
    [22, 3],
    [20, 4],
    [18, 6],
    [16, 7],
    [12, 13],
    [10, 17],
  ])(
    "bundle of 33 size %i, a fifth of them loaded: %f A of AC 43.13-1B table 11-9 lies between all loaded and the fifth alone",
    (awg, amps) => {
      const bundled = (wires: number) =>
        wireHeating({ awg, current: 1, ambientTemperature: 70, insulationRating: 105, arrangement: "bundle", wires }).ampacity
      expect(bundled(33)).toBeLessThan(amps)
      expect(bundled(7)).toBeGreaterThan(amps)
    },
  )

  it.each([
    [2, 0.94],
    [3, 0.89],
    [4, 0.83],
    [5, 0.76],
  ])(
    "never promises a bundle of %i loaded wires more than %f of the single wire's current [42L load manual, 2014, table 7-1]",
    (wires, factor) => {
      const rated = (arrangement: "free-air" | "bundle") =>
        wireHeating({
          awg: 16,
          current: 1,
          ambientTemperature: 50,
          insulationRating: 105,
          arrangement,
          wires: arrangement === "bundle" ? wires : 1,
        }).ampacity
      expect(rated("bundle") / rated("free-air")).toBeLessThan(factor)
    },
  )

  it("times a short fault as the adiabatic constant says: 90 A for 0.4 s needs 0.49 mm² from 70 to 160 °C at k = 115", () => {
    // Basic Electrical Installation Work, protective conductors: S = √(I²t)/k
    const area = (Math.sqrt(90 ** 2 * 0.4) / 115) * 1e-6
    const out = wireHeating({
      area,
      current: 0,
      ambientTemperature: 70,
      insulationRating: 71,
      faultCurrent: 90,
      faultTemperatureLimit: 160,
    })
    expect(Math.abs((out.faultDuration as number) - 0.4)).toBeLessThan(0.4 * 0.01)
  })

  it("takes several wires only where they lie together: alone in air they would count as one", () => {
    const three = wireHeating.attempt({ awg: 20, current: 4, wires: 3 })
    expect(!three.ok && "issues" in three.error && three.error.issues.map((issue) => issue.path.join("."))).toEqual(["wires"])
    expect(wireHeating({ awg: 20, current: 4, wires: 3, arrangement: "bundle" }).conductorTemperature).toBeGreaterThan(
      wireHeating({ awg: 20, current: 4 }).conductorTemperature,
    )
  })

  it("refuses what burns and names the current it could carry; warns of touch and rating", () => {
    const refusal = wireHeating.attempt({ current: 30, awg: 24, arrangement: "padding" })
    expect(!refusal.ok && "noSolution" in refusal.error && refusal.error.noSolution).toBe("thermal-runaway")
    if (refusal.ok || !("nearest" in refusal.error)) return
    const most = wireHeating({ current: refusal.error.nearest.current as number, awg: 24, arrangement: "padding" })
    expect(most.conductorTemperature).toBeCloseTo(80, 6)
    expect(wireHeating({ current: 12, awg: 22 }).cautions.map((c) => c.code)).toEqual(expect.arrayContaining(["burns", "over-rating"]))
  })
})
