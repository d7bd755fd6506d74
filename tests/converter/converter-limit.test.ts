import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  type ConverterLimitInput,
  type ConverterSpec,
  constantPowerPoint,
  converterLimit,
  converterOutput,
  type SourceLine,
} from "../../src/converter/index.js"
import { isNoSolution, NoSolutionError } from "../../src/solver/index.js"
import { netlistsOf } from "../helpers/netlists.js"

/** Efficiency by scanning the stated points, written apart from the source's own reading. */
function etaOf(curve: ConverterSpec["efficiency"], load: number): number {
  const i = curve.findIndex((p) => p.outputCurrent >= load)
  if (i === 0) return (curve[0] as { efficiency: number }).efficiency
  if (i < 0) return (curve.at(-1) as { efficiency: number }).efficiency
  const [a, b] = [curve[i - 1], curve[i]] as [{ outputCurrent: number; efficiency: number }, { outputCurrent: number; efficiency: number }]
  return (a.efficiency * (b.outputCurrent - load) + b.efficiency * (load - a.outputCurrent)) / (b.outputCurrent - a.outputCurrent)
}

/** Greatest output voltage, at most the set one, found by scanning and refining the input current. */
function byScan(spec: ConverterSpec, source: SourceLine, load: number): number | null {
  const allowed = (i: number) => source.sourceVoltage - source.sourceResistance * i >= spec.minInputVoltage - 1e-12
  const given = (i: number) =>
    (source.sourceVoltage - source.sourceResistance * i) * (i - spec.quiescentCurrent) * etaOf(spec.efficiency, load)
  if (!allowed(spec.quiescentCurrent) || source.sourceVoltage > spec.maxInputVoltage) return null
  if (spec.outputCurrentLimit !== null && load > spec.outputCurrentLimit) return 0
  let [low, high] = [spec.quiescentCurrent, Math.min(spec.inputCurrentLimit ?? 1e4, 1e4)]
  if (high <= low) return null
  let best = 0
  // the power is a parabola in the current: the best allowed point closes in from a coarse scan
  for (let round = 0; round < 14; round++) {
    const n = 200
    const points = Array.from({ length: n + 1 }, (_, k) => low + ((high - low) * k) / n).filter(allowed)
    const top = points.reduce((a, b) => (given(b) > given(a) ? b : a), points[0] as number)
    best = Math.max(best, given(top))
    const step = (high - low) / n
    ;[low, high] = [Math.max(low, top - step), Math.min(high, top + step)]
  }
  return load === 0 ? spec.outputVoltage : Math.min(spec.outputVoltage, best / load)
}

const specs = fc.record({
  outputVoltage: fc.double({ min: 1, max: 30, noNaN: true }),
  inputCurrentLimit: fc.option(fc.double({ min: 0.05, max: 8, noNaN: true })),
  outputCurrentLimit: fc.option(fc.double({ min: 0.5, max: 8, noNaN: true }), { freq: 2 }),
  efficiency: fc.constantFrom(
    [{ outputCurrent: 0.5, efficiency: 0.9 }],
    [
      { outputCurrent: 0, efficiency: 0.4 },
      { outputCurrent: 0.3, efficiency: 0.92 },
      { outputCurrent: 3, efficiency: 0.8 },
    ],
  ),
  quiescentCurrent: fc.double({ min: 0, max: 0.06, noNaN: true }),
  minInputVoltage: fc.double({ min: 0, max: 5, noNaN: true }),
  maxInputVoltage: fc.constantFrom(12, 40),
})
const sources = fc.record({
  sourceVoltage: fc.double({ min: 2, max: 15, noNaN: true }),
  sourceResistance: fc.double({ min: 0.01, max: 2, noNaN: true }),
})

describe("converterOutput", () => {
  it("agrees with a scan over every input current, all limits, to 1e-9", () => {
    let worst = 0
    const met = new Set<string>()
    fc.assert(
      fc.property(specs, sources, fc.double({ min: 0, max: 6, noNaN: true }), (spec, source, load) => {
        const point = converterOutput(spec, source, load)
        const scan = byScan(spec, source, load)
        if (scan === null || point === null) {
          // an input so poor that nothing comes out: both say so
          expect(point).toBeNull()
          expect(scan ?? 0).toBeLessThan(1e-9)
          return
        }
        met.add(point.limitedBy)
        worst = Math.max(worst, Math.abs(point.outputVoltage - scan) / spec.outputVoltage)
      }),
      { numRuns: 2000, seed: 4 },
    )
    expect([...met].sort()).toEqual(["input-current", "input-voltage", "none", "output-current", "source-power"])
    expect(worst).toBeLessThan(1e-9)
  })

  it("balances energy and gives less the more it is asked for, wherever an input bound holds it down", () => {
    fc.assert(
      fc.property(specs, sources, fc.double({ min: 0.01, max: 6, noNaN: true }), (spec, source, load) => {
        const point = converterOutput({ ...spec, outputCurrentLimit: null }, source, load)
        if (point === null) return
        const into = point.inputVoltage * (point.inputCurrent - spec.quiescentCurrent)
        expect(point.outputVoltage * load).toBeCloseTo(point.efficiency * into, 9)
        expect(source.sourceVoltage - source.sourceResistance * point.inputCurrent).toBeCloseTo(point.inputVoltage, 9)
        if (spec.efficiency.length > 1) return
        const more = converterOutput({ ...spec, outputCurrentLimit: null }, source, load * 1.1)
        expect(more?.outputVoltage).toBeLessThanOrEqual(point.outputVoltage * (1 + 1e-12))
        if (point.limitedBy !== "none") expect((more?.outputVoltage as number) * 1.1).toBeCloseTo(point.outputVoltage, 9)
      }),
      { numRuns: 500, seed: 5 },
    )
  })
})

describe("converterLimit", () => {
  const base = {
    outputVoltage: 12,
    loadCurrent: 1,
    sourceVoltage: 5.1,
    sourceResistance: 0.1,
    inputCurrentLimit: 2.4,
    efficiency: [
      { outputCurrent: 0.1, efficiency: 0.8 },
      { outputCurrent: 0.5, efficiency: 0.92 },
      { outputCurrent: 2, efficiency: 0.8 },
    ],
  } as const

  it("names the load current up to which the set voltage holds: just below it holds, just above it falls", () => {
    for (const inputCurrentLimit of [0.15, 0.4, 0.9, 2.4, 9]) {
      const { fullVoltageCurrent } = converterLimit({ ...base, inputCurrentLimit })
      const at = (part: number) => converterLimit({ ...base, inputCurrentLimit, loadCurrent: (fullVoltageCurrent as number) * part })
      expect(at(1 - 1e-9).limitedBy).toBe("none")
      expect(at(1 + 1e-9).limitedBy).not.toBe("none")
    }
  })

  it.each([
    ["input-too-high", { maxInputVoltage: 5 }, 0.1],
    ["insufficient-voltage", { minInputVoltage: 5.5 }, 0.4],
    ["insufficient-current", { quiescentCurrent: 3 }, 0.6],
  ])("refuses with %s and says by how much", (code, change, shortBy) => {
    const outcome = converterLimit.attempt({ ...base, ...change })
    expect(!outcome.ok && outcome.error).toBeInstanceOf(NoSolutionError)
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) return
    expect(outcome.error.noSolution).toBe(code)
    expect(outcome.error.shortBy).toBeCloseTo(shortBy, 9)
  })

  it("never lets a step-down put out more than stands at its input, nor a step-up less", () => {
    const five = { outputVoltage: 5, loadCurrent: 0.5, sourceVoltage: 4.12, efficiency: [{ outputCurrent: 1, efficiency: 0.9 }] } as const
    const code = (input: object) => {
      const out = converterLimit.attempt({ ...five, ...input })
      return out.ok ? "answered" : "noSolution" in out.error ? out.error.noSolution : "input"
    }
    expect(code({ topology: "buck" })).toBe("cannot-boost")
    expect(code({ topology: "boost" })).toBe("answered")
    expect(code({ topology: "boost", sourceVoltage: 5.01 })).toBe("cannot-buck")
    expect([code({ topology: "buck-boost" }), code({ topology: "buck-boost", sourceVoltage: 12 })]).toEqual(["answered", "answered"])
    // without a kind it answers, and says what it took for granted
    const way = (sourceVoltage: number) =>
      converterLimit({ ...five, sourceVoltage }).cautions.find((c) => c.code === "type-assumed")?.values.way
    expect([way(4.12), way(12)]).toEqual(["up", "down"])
    expect(converterLimit({ ...five, topology: "boost" }).cautions.map((c) => c.code)).not.toContain("type-assumed")
  })

  it("counts the drop-out of a step-down among what ends its set voltage", () => {
    const input = {
      ...base,
      outputVoltage: 5,
      loadCurrent: 0.1,
      sourceVoltage: 5.5,
      sourceResistance: 0.4,
      inputCurrentLimit: 9,
      topology: "buck",
    } as const
    const { fullVoltageCurrent } = converterLimit(input)
    const at = (part: number) => converterLimit.attempt({ ...input, loadCurrent: (fullVoltageCurrent as number) * part })
    const below = at(1 - 1e-9)
    if (!below.ok) throw below.error
    expect(below.value.inputVoltage).toBeCloseTo(5, 6)
    expect(at(1 + 1e-6).ok).toBe(false)
  })

  it("warns of hot parts and of touch, whatever it is asked for", () => {
    const codes = (input: object) => converterLimit({ ...base, ...input }).cautions.map((c) => c.code)
    // a tenth of 10.1 W and of 9.9 W is a watt either way, less and more
    const one = { inputCurrentLimit: null, sourceResistance: 0, efficiency: [{ outputCurrent: 1, efficiency: 10 / 11 }] }
    expect(codes({ ...one, outputVoltage: 10.1 })).toContain("burns")
    expect(codes({ ...one, outputVoltage: 9.9 })).not.toContain("burns")
    expect(codes({ outputVoltage: 30.1 })).toContain("touch-voltage")
    expect(codes({ outputVoltage: 30 })).not.toContain("touch-voltage")
  })

  it("warns where a step-up cannot fall below its input", () => {
    const sunk = converterLimit({ ...base, loadCurrent: 5 })
    expect(sunk.outputVoltage).toBeLessThan(sunk.inputVoltage)
    expect(sunk.cautions.map((c) => c.code)).toContain("straight-through")
  })
})

describe("converterLimit against a general-purpose circuit simulator", () => {
  it.each(netlistsOf("converterLimit"))("$file: $about [$tool]", ({ input, results }) => {
    const fed = converterLimit(input as ConverterLimitInput)
    expect(Math.abs(fed.inputVoltage - (results.in as number))).toBeLessThan(1e-9)
    expect(Math.abs(fed.outputVoltage - (results.out as number))).toBeLessThan(1e-9)
  })
})

describe("constantPowerPoint", () => {
  it("agrees with bisection of E = V + R·P/V above and below the half voltage, over its range", () => {
    let worst = 0
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.05, max: 100, noNaN: true }),
        fc.double({ min: 1e-3, max: 0.999, noNaN: true }),
        (E, R, part) => {
          const P = (part * E ** 2) / (4 * R)
          const point = constantPowerPoint({ sourceVoltage: E, sourceResistance: R, power: P })
          const bisect = (low: number, high: number) => {
            const f = (v: number) => v + (R * P) / v - E
            let [a, b] = [low, high]
            for (let k = 0; k < 200; k++) {
              const mid = (a + b) / 2
              if (f(mid) > 0 === f(b) > 0) b = mid
              else a = mid
            }
            return a
          }
          worst = Math.max(
            worst,
            Math.abs(bisect(E / 2, E) / point.terminalVoltage - 1),
            Math.abs(bisect(E * 1e-9, E / 2) / point.unstableVoltage - 1),
          )
        },
      ),
      { numRuns: 500, seed: 6 },
    )
    expect(worst).toBeLessThan(1e-9)
  })

  it("refuses more than E²/(4R) and names the greatest power", () => {
    const outcome = constantPowerPoint.si({ sourceVoltage: 5, sourceResistance: 0.25, power: 30, inductance: 0, capacitance: null })
    expect(isNoSolution(outcome) && outcome.nearest.power).toBe(25)
    expect(isNoSolution(outcome) && outcome.message).toContain("25 W")
    const limit = constantPowerPoint({ sourceVoltage: 5, sourceResistance: 0.25, power: 25 })
    expect([limit.atLimit, limit.terminalVoltage]).toEqual([true, 2.5])
  })

  it("says stable exactly where a time-stepped L–C circuit settles", () => {
    const [E, R, P, L] = [12, 0.2, 60, 5e-6]
    const least = constantPowerPoint({ sourceVoltage: E, sourceResistance: R, power: P, inductance: L }).minCapacitance
    for (const factor of [0.8, 1.25]) {
      const C = least * factor
      const point = constantPowerPoint({ sourceVoltage: E, sourceResistance: R, power: P, inductance: L, capacitance: C })
      let [i, v] = [point.current, point.terminalVoltage + 1e-3]
      const f = (i: number, v: number) => [(E - R * i - v) / L, (i - P / v) / C] as const
      const h = 0.02 * Math.sqrt(L * C)
      let late = 0
      for (let n = 0; n < 40000; n++) {
        const [a1, b1] = f(i, v)
        const [a2, b2] = f(i + (h / 2) * a1, v + (h / 2) * b1)
        const [a3, b3] = f(i + (h / 2) * a2, v + (h / 2) * b2)
        const [a4, b4] = f(i + h * a3, v + h * b3)
        i += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4)
        v += (h / 6) * (b1 + 2 * b2 + 2 * b3 + b4)
        if (n > 30000) late = Math.max(late, Math.abs(v - point.terminalVoltage))
        if (late > 0.1) break
      }
      expect(point.stable).toBe(factor > 1)
      expect(late < 1e-3).toBe(point.stable)
    }
  })
})
