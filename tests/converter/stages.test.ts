import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { boostStage, buckStage, type StageInput } from "../../src/converter/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const inputs = fc.record({
  low: fc.double({ min: 2.5, max: 9, noNaN: true }),
  step: fc.double({ min: 1.3, max: 4, noNaN: true }),
  outputCurrent: fc.double({ min: 0.005, max: 3, noNaN: true }),
  inductance: fc.double({ min: 1e-6, max: 47e-6, noNaN: true }),
  frequency: fc.double({ min: 1e5, max: 2e6, noNaN: true }),
  diodeVoltage: fc.double({ min: 0, max: 0.6, noNaN: true }),
  switchVoltage: fc.double({ min: 0, max: 0.3, noNaN: true }),
  switchCurrentLimit: fc.double({ min: 0.2, max: 8, noNaN: true }),
  limitType: fc.constantFrom("peak" as const, "valley" as const),
})
type Random = typeof inputs extends fc.Arbitrary<infer T> ? T : never
const kinds = {
  boost: {
    solver: boostStage,
    of: ({ low, step, ...rest }: Random): StageInput => ({ ...rest, inputVoltage: low, outputVoltage: low * step }),
  },
  buck: {
    solver: buckStage,
    of: ({ low, step, ...rest }: Random): StageInput => ({ ...rest, inputVoltage: low * step + 1, outputVoltage: low }),
  },
}

/** One period of inductor current stepped through in time: where it ends, and what it delivers. */
function period(kind: "boost" | "buck", si: ReturnType<typeof boostStage.read>, duty: number, start: number) {
  const steps = 5000
  const drop = si.diodeVoltage as number
  const rise = kind === "boost" ? si.inputVoltage - si.switchVoltage : si.inputVoltage - si.switchVoltage - si.outputVoltage
  const fall = kind === "boost" ? si.outputVoltage + drop - si.inputVoltage : si.outputVoltage + drop
  let [i, sum, square, out, outSquare, into, peak] = [start, 0, 0, 0, 0, 0, start]
  for (const on of [true, false]) {
    const share = (on ? duty : 1 - duty) / steps
    for (let k = 0; k < steps; k++) {
      const next = Math.max(0, i + ((on ? rise : -fall) / si.inductance) * (share / si.frequency))
      const mid = (i + next) / 2
      const delivered = kind === "boost" && on ? 0 : mid
      sum += mid * share
      square += mid ** 2 * share
      out += delivered * share
      outSquare += delivered ** 2 * share
      into += (kind === "boost" || on ? mid : 0) * share
      i = next
      peak = Math.max(peak, i)
    }
  }
  return { end: i, mean: sum, rms: Math.sqrt(square), out, capacitor: Math.sqrt(Math.max(0, outSquare - out ** 2)), into, peak }
}

describe.each(["boost", "buck"] as const)("%sStage", (kind) => {
  const { solver, of } = kinds[kind]

  it("closes its period and delivers its output when stepped through in time, current resting or not", () => {
    const modes = new Set<boolean>()
    let worst = 0
    fc.assert(
      fc.property(inputs, (random) => {
        const si = solver.read(of(random))
        const out = solver.si(si)
        if (isNoSolution(out)) throw new Error(out.message)
        modes.add(out.continuous)
        const run = period(kind, si, out.duty, out.valleyCurrent)
        const near = (a: number, b: number) => {
          worst = Math.max(worst, Math.abs(a - b) / out.peakCurrent)
        }
        near(run.end, out.valleyCurrent)
        near(run.mean, out.inductorCurrent)
        near(run.rms, out.rmsCurrent)
        near(run.out, si.outputCurrent)
        near(run.into, out.inputCurrent)
        near(run.peak, out.peakCurrent)
        near(run.capacitor, out.capacitorCurrent)
      }),
      { numRuns: 60, seed: 41 },
    )
    expect([...modes].sort()).toEqual([false, true])
    expect(worst).toBeLessThan(1e-5)
  })

  it("meets its switch limit exactly at the greatest output it names", () => {
    fc.assert(
      fc.property(inputs, (random) => {
        const input = of(random)
        const { maxOutputCurrent } = solver(input)
        const at = solver({ ...input, outputCurrent: maxOutputCurrent as number })
        expect((input.limitType === "peak" ? at.peakCurrent : at.valleyCurrent) / random.switchCurrentLimit).toBeCloseTo(1, 9)
      }),
      { numRuns: 200, seed: 42 },
    )
  })

  it("loses nothing without drops, and as much as the efficiency says where that is given", () => {
    fc.assert(
      fc.property(inputs, fc.double({ min: 0.7, max: 0.98, noNaN: true }), (random, efficiency) => {
        const input = of(random)
        expect(solver({ ...input, diodeVoltage: 0, switchVoltage: 0 }).estimatedEfficiency).toBeCloseTo(1, 9)
        const taken = solver.attempt({ ...input, diodeVoltage: null, switchVoltage: 0, efficiency })
        if (taken.ok) expect(taken.value.estimatedEfficiency).toBeCloseTo(efficiency, 9)
      }),
      { numRuns: 200, seed: 43 },
    )
  })

  it("has no jump where the current just rests", () => {
    fc.assert(
      fc.property(inputs, (random) => {
        const input = of(random)
        const { boundaryCurrent } = solver(input)
        const [below, above] = [1 - 1e-9, 1 + 1e-9].map((part) => solver({ ...input, outputCurrent: boundaryCurrent * part }))
        expect([below?.continuous, above?.continuous]).toEqual([false, true])
        for (const key of ["duty", "peakCurrent", "rmsCurrent", "capacitorCurrent", "inputCurrent"] as const)
          expect((below?.[key] as number) / (above?.[key] as number)).toBeCloseTo(1, 6)
      }),
      { numRuns: 100, seed: 44 },
    )
  })
})

describe("stages refuse what they are not", () => {
  const plain = { outputCurrent: 1, inductance: 1e-5, frequency: 5e5 }

  it("takes no input above its output for a step-up, whatever the losses", () => {
    const refused = (inputVoltage: number, outputVoltage: number, more: object = {}) => {
      const out = boostStage.attempt({ ...plain, inputVoltage, outputVoltage, ...more })
      return !out.ok && "noSolution" in out.error && out.error.shortBy > 0
    }
    // losses of a tenth would let 12.5 V pass for an input below 12 V / 0.9
    expect([refused(12.5, 12), refused(12, 12), refused(11.99, 12)]).toEqual([true, true, false])
    expect([refused(12.2, 12, { diodeVoltage: 0.5 }), refused(11.9, 12, { diodeVoltage: 0.5 })]).toEqual([true, false])
  })

  it("offers nothing outside the fields' own limits", () => {
    for (const [inputVoltage, outputVoltage, efficiency] of [
      [900, 1000, 0.5],
      [500, 1000, 0.05],
      [20, 18, 0.5],
    ] as const) {
      const input = { ...plain, inputVoltage, outputVoltage, efficiency }
      const out = buckStage.attempt(input)
      if (out.ok || !("noSolution" in out.error)) throw new Error("should refuse")
      expect(out.error.shortBy).toBeGreaterThan(0)
      const nearest = Object.entries(out.error.nearest)
      expect(nearest.length).toBeGreaterThan(0)
      for (const [key, value] of nearest) expect(buckStage.attempt({ ...input, [key]: value }).ok, key).toBe(true)
    }
  })

  it("suggests an inductance with the losses in its duty, above makers' formula without them", () => {
    const input = { inputVoltage: 5, outputVoltage: 12, ...plain, efficiency: 0.9, rippleRatio: 0.3 }
    const out = boostStage(input)
    // V_in·(V_out − V_in)/(ripple·f·V_out), the ripple being that share of the mean input current V_out·I/(η·V_in)
    const mean = (12 * 1) / (0.9 * 5)
    const makers = (5 * (12 - 5)) / (0.3 * mean * 5e5 * 12)
    const lossy = (5 * (1 - (5 * 0.9) / 12)) / (0.3 * mean * 5e5)
    expect(out.suggestedInductance / lossy).toBeCloseTo(1, 9)
    expect(out.suggestedInductance).toBeGreaterThan(makers)
  })

  it("step-up below its input, step-down above it", () => {
    const input = { inputVoltage: 12, outputVoltage: 5, outputCurrent: 1, inductance: 1e-5, frequency: 5e5 }
    const up = boostStage.attempt(input)
    expect(!up.ok && "noSolution" in up.error && up.error.noSolution).toBe("input-too-high")
    const down = buckStage.attempt({ ...input, inputVoltage: 5, outputVoltage: 12 })
    expect(!down.ok && "noSolution" in down.error && down.error.noSolution).toBe("insufficient-voltage")
  })
})
