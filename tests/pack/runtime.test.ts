import { describe, expect, it } from "vitest"
import { type Chemistry, capacityFactor, openCircuitVoltage, type Runtime, resistanceFactor, runtime } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const base = { series: 3, parallel: 2, cellCapacity: 9360, cellResistance: 0.08 }
const solved = (more: object): Runtime => {
  const out = runtime.si(runtime.read({ ...base, ...more }))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

type Draw = (emf: number, resistance: number) => number
const constantCurrent =
  (current: number): Draw =>
  () =>
    current
const loadResistance =
  (load: number): Draw =>
  (emf, resistance) =>
    emf / (resistance + load)
/** Smaller root of the textbook quadratic, where the solver uses another form of it. */
const constantPower =
  (power: number): Draw =>
  (emf, resistance) =>
    (emf - Math.sqrt(emf ** 2 - 4 * resistance * power)) / (2 * resistance)

interface Course {
  readonly time: number
  readonly charge: number
  readonly given: number
  readonly heat: number
  readonly left: number
}

/** Steps through time with Heun's method, knowing nothing of the curve's pieces. */
function fineSteps(
  chemistry: Chemistry,
  temperature: number,
  pattern: readonly { readonly duration: number; readonly draw: Draw }[],
  cutOff: number,
  step: number,
): Course {
  const capacity = 9360 * 2 * capacityFactor(chemistry, temperature)
  const resistance = (0.08 * resistanceFactor(chemistry, temperature) * 3) / 2
  const emfAt = (s: number) => 3 * openCircuitVoltage(chemistry, s)
  let [s, time, given, heat] = [1, 0, 0, 0]
  for (;;)
    for (const { duration, draw } of pattern) {
      const count = Math.max(1, Math.round(duration / step))
      const h = duration / count
      for (let i = 0; i < count; i++) {
        const emf = emfAt(s)
        const current = draw(emf, resistance)
        if (current > 0 && (!(emf - current * resistance > cutOff) || s <= 0))
          return { time, charge: capacity * (1 - s), given, heat, left: s }
        const later = draw(emfAt(s - (current * h) / capacity), resistance)
        const mean = (current + later) / 2
        const next = s - (mean * h) / capacity
        given += mean * h * ((emf + emfAt(next)) / 2 - mean * resistance)
        heat += mean ** 2 * resistance * h
        s = next
        time += h
      }
    }
}

describe("runtime", () => {
  const single: readonly [string, object, Draw, number][] = [
    ["current", { current: 4 }, constantCurrent(4), 0.5],
    ["power", { power: 40 }, constantPower(40), 0.5],
    ["resistance", { loadResistance: 3 }, loadResistance(3), 0.5],
  ]
  for (const chemistry of ["nmc", "lfp", "lco"] as const)
    for (const temperature of [25, -10])
      for (const [name, step, draw, h] of single)
        it(`follows fine steps of time: ${chemistry} at ${temperature} °C, constant ${name}`, () => {
          const out = solved({ chemistry, cellTemperature: temperature, cellCutOffVoltage: 2.9, pattern: [step] })
          const fine = fineSteps(chemistry, temperature, [{ duration: 1000, draw }], 8.7, h)
          // the stepping itself is good to about a step in the few thousand it takes
          expect(off(out.runtime, fine.time)).toBeLessThan((1.5 * h) / fine.time + 1e-5)
          expect(off(out.deliveredEnergy, fine.given)).toBeLessThan((1.5 * h) / fine.time + 1e-4)
          expect(off(out.heat, fine.heat)).toBeLessThan((3 * h) / fine.time + 1e-4)
        })

  it("follows fine steps of time through a pattern with rests, to the same round", () => {
    const pattern = [{ duration: 25, power: 45 }, { duration: 60 }, { duration: 300, current: 0.8 }, { duration: 40, loadResistance: 8 }]
    const out = solved({ pattern })
    const fine = fineSteps(
      "nmc",
      25,
      [
        { duration: 25, draw: constantPower(45) },
        { duration: 60, draw: constantCurrent(0) },
        { duration: 300, draw: constantCurrent(0.8) },
        { duration: 40, draw: loadResistance(8) },
      ],
      7.5,
      0.05,
    )
    expect(Math.abs(out.runtime - fine.time)).toBeLessThan(0.2)
    // stepping may stop one step of 0.05 s late, at the current of the end
    const lastStep = 0.05 * out.endCurrent
    expect(Math.abs(out.deliveredEnergy - fine.given)).toBeLessThan(lastStep * out.endVoltage + 1e-6 * out.deliveredEnergy)
    expect(Math.abs(out.heat - fine.heat)).toBeLessThan(lastStep * out.endCurrent * 0.12 + 1e-6 * out.heat)
    expect(Math.abs(out.endStateOfCharge - fine.left)).toBeLessThan(lastStep / 18720 + 1e-7)
    expect(out.pattern[1]?.charge).toBe(0)
  })

  it("gives the same by following the mean of very many short rounds, to its error estimate", () => {
    const at = (scale: number) =>
      solved({
        pattern: [
          { duration: 2 * scale, power: 45 },
          { duration: 8 * scale, power: 4 },
        ],
      })
    const [followed, meaned] = [at(1), at(0.05)]
    expect(followed.errorEstimate).toBe(0)
    expect(meaned.errorEstimate).toBe(0.5)
    expect(Math.abs(followed.runtime - meaned.runtime)).toBeLessThan(10 + 0.5)
    expect(off(followed.deliveredEnergy, meaned.deliveredEnergy)).toBeLessThan(2e-3)
    expect(off(followed.heat, meaned.heat)).toBeLessThan(2e-3)
  })

  it("lasts as long as charge over current where nothing sags", () => {
    const out = solved({ cellResistance: 0, pattern: [{ current: 2 }], cellCutOffVoltage: 0.1 })
    expect(off(out.runtime, (9360 * 2) / 2)).toBeLessThan(1e-12)
    expect([out.endedBy, out.endStateOfCharge, out.rmsCurrent]).toEqual(["depleted", 0, null])
  })

  it("closes the energy account and lasts longer the smaller the load", () => {
    let before = 0
    for (const power of [200, 120, 60, 30, 10, 1]) {
      const out = solved({ pattern: [{ power }] })
      expect(out.runtime).toBeGreaterThan(before)
      before = out.runtime
      const account = out.history.at(-1)
      expect(account?.stateOfCharge).toBe(out.endStateOfCharge)
      expect(
        off(
          out.pattern.reduce((sum, l) => sum + l.energy, 0),
          out.deliveredEnergy,
        ),
      ).toBeLessThan(1e-12)
    }
  })

  it("ends by collapse where power runs out before voltage", () => {
    const out = solved({ cellResistance: 0.9, cellCutOffVoltage: 0.5, pattern: [{ power: 20 }] })
    expect(out.endedBy).toBe("collapse")
    // at the end E² = 4·R·P
    const emf = out.endVoltage + out.endCurrent * ((0.9 * 3) / 2)
    expect(off(emf ** 2, 4 * ((0.9 * 3) / 2) * 20)).toBeLessThan(1e-6)
  })

  it("refuses a power it cannot give, a load that cuts off at once, and no load at all", () => {
    const code = (more: object) => {
      const out = runtime.si(runtime.read({ ...base, ...more }))
      return isNoSolution(out) ? out.noSolution : "answered"
    }
    expect(code({ cellCutOffVoltage: 0.5, pattern: [{ power: 5000 }] })).toBe("insufficient-power")
    expect(code({ pattern: [{ power: 300 }], startStateOfCharge: 0.02 })).toBe("insufficient-voltage")
    expect(code({ pattern: [{ duration: 60 }] })).toBe("no-load")
    expect(code({ pattern: [{ power: 1 }], startStateOfCharge: 0 })).not.toBe("answered")
  })

  it("names changes that do run where it refuses, and the load it could give", () => {
    const refused = (more: object) => {
      const out = runtime.si(runtime.read({ ...base, ...more }))
      if (!isNoSolution(out)) throw new Error("should refuse")
      expect(out.shortBy).toBeGreaterThan(0)
      for (const [key, value] of Object.entries(out.nearest)) expect(solved({ ...more, [key]: value }).runtime, key).toBeGreaterThan(0)
      return out
    }
    const weak = { startStateOfCharge: 0.1 }
    const cut = refused({ ...weak, pattern: [{ current: 60 }] })
    expect(Object.keys(cut.nearest)).toEqual(["parallel"])
    const most = cut.at.greatestCurrent as number
    expect(solved({ ...weak, pattern: [{ current: most * 0.999 }] }).runtime).toBeGreaterThan(0)
    expect(isNoSolution(runtime.si(runtime.read({ ...base, ...weak, pattern: [{ current: most * 1.001 }] })))).toBe(true)
    // a load that a fuller pack carries is offered the charge from which it does
    const low = refused({ startStateOfCharge: 0.03, pattern: [{ current: 15 }] })
    expect(low.nearest.startStateOfCharge).toBeGreaterThan(0.03)
    const collapsing = refused({ cellCutOffVoltage: 0.5, pattern: [{ power: 5000 }] })
    expect(collapsing.noSolution).toBe("insufficient-power")
    const power = (collapsing.at.maxPower as number) * 0.999
    expect(solved({ cellCutOffVoltage: 0.5, pattern: [{ power }] }).endedBy).toBe("collapse")
    expect(refused({ startStateOfCharge: 0, pattern: [{ power: 1e-6 }], cellCutOffVoltage: 0.1 }).noSolution).toBe("depleted")
  })

  it("answers a day of tiny pieces without hanging", () => {
    const out = solved({
      pattern: [{ duration: 0.01, current: 0.02 }, { duration: 0.01 }],
    })
    expect(out.runtime).toBeGreaterThan(1e6)
  })
})

describe("runtime's cautions on what it does not know", () => {
  it("says that lead and nickel give less at a high rate", () => {
    const codes = (more: object) => runtime({ ...base, pattern: [], ...more }).cautions.map((c) => c.code)
    // nine tenths are left at 0.10625 of 5.2 Ah per hour, 0.5525 A, and of nickel at 5.2 A
    expect(codes({ chemistry: "lead", pattern: [{ current: 0.557 }] })).toContain("lead-rate")
    expect(codes({ chemistry: "lead", pattern: [{ current: 0.547 }] })).not.toContain("lead-rate")
    expect(codes({ chemistry: "nimh", cellResistance: 0.01, pattern: [{ current: 5.3 }] })).toContain("nickel-rate")
    expect(codes({ chemistry: "nimh", cellResistance: 0.01, pattern: [{ current: 5.1 }] })).not.toContain("nickel-rate")
    expect(codes({ pattern: [{ current: 5.3 }] })).not.toContain("lead-rate")
  })
})

describe("runtime's caution on cell current", () => {
  it("comes when the end of the discharge, not its start, asks too much of a cell", () => {
    const input = { ...base, pattern: [{ power: 60 }] }
    const out = solved(input)
    const between = (out.startCurrent + out.endCurrent) / 2 / base.parallel
    const codes = (maxCurrent: number) => runtime({ ...input, cellMaxCurrent: maxCurrent }).cautions.map((c) => c.code)
    expect(codes(between)).toContain("over-current")
    expect(codes(out.endCurrent / base.parallel + 0.01)).not.toContain("over-current")
  })
})
