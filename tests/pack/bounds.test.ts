import { describe, expect, it } from "vitest"
import {
  chargeTime,
  nickelChargeFactor,
  openCircuitVoltage,
  packSize,
  packUnderLoad,
  parallelSharing,
  powerBank,
  runtime,
} from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import type { AnySolver } from "../helpers/solvers.js"
import { any } from "../helpers/working.js"

const refusalOf = (solver: AnySolver, input: object) => {
  const out = solver.si(solver.read(input))
  return isNoSolution(out) ? out : null
}
const pack = { series: 3, parallel: 2, cellCapacity: 9360, cellResistance: 0.08 }
const cell = { name: "A", cellCapacity: 9360, cellResistance: 0.05, cellMass: 0.048, cellMaxCurrent: 7.8 }
const needs = { cells: [cell], minVoltage: 9, maxVoltage: 13, peakCurrent: 8, energy: 144000 }
const strings = [12, 12.2].map((openCircuitVoltage) => ({ openCircuitVoltage, resistance: 0.1, capacity: 9000 }))

describe("what is offered instead lies at the very edge: a fiftieth nearer to what was asked does not do", () => {
  it.each([
    ["power", any(packUnderLoad), { ...pack, power: 900 }],
    ["current", any(packUnderLoad), { ...pack, current: 200 }],
    ["current", any(parallelSharing), { strings, current: 300 }],
    ["power", any(powerBank), { ratedCapacity: 36000, power: 40 }],
    ["power", any(powerBank), { ratedCapacity: 36000, power: 40, loadVoltage: 12 }],
    ["current", any(powerBank), { ratedCapacity: 36000, current: 4, loadVoltage: 12 }],
    ["startStateOfCharge", any(chargeTime), { ...pack, chargeCurrent: 2, startStateOfCharge: 1, cellChargeVoltage: 4.1 }],
    ["cellChargeVoltage", any(chargeTime), { ...pack, chargeCurrent: 2, cellChargeVoltage: 2.4 }],
    ["maxMass", any(packSize), { ...needs, maxMass: 0.1 }],
    ["transportEnergyLimit", any(packSize), { ...needs, transportEnergyLimit: 30 * 3600 }],
    ["maxParallel", any(packSize), { ...needs, peakCurrent: 15, maxParallel: 1 }],
    ["energy", any(packSize), { ...needs, maxMass: 0.29, energy: 165000 }],
    ["peakCurrent", any(packSize), { ...needs, maxMass: 0.29, peakCurrent: 16 }],
    ["cellTemperature", any(packSize), { ...needs, cellTemperature: 61, minVoltage: 7 }],
    ["maxVoltage", any(packSize), { ...needs, maxVoltage: 12.4 }],
    ["minVoltage", any(packSize), { ...needs, minVoltage: 10.6 }],
  ] as const)("%s", (key, solver, input) => {
    const refused = refusalOf(solver, input)
    const offered = refused?.nearest[key] as number
    expect(refusalOf(solver, { ...input, [key]: offered })).toBeNull()
    const asked = (input as unknown as Record<string, number>)[key] as number
    const nearer = key === "maxParallel" ? offered - 1 : offered * (asked > offered ? 1.02 : 0.98)
    expect(refusalOf(solver, { ...input, [key]: nearer })).not.toBeNull()
  })

  it("of a runtime: no hundredth less of charge, no string fewer", () => {
    const input = { ...pack, startStateOfCharge: 0.1, cellCutOffVoltage: 3, pattern: [{ current: 14 }] }
    const { nearest } = refusalOf(any(runtime), input) as { nearest: Record<string, number> }
    const code = (more: object) => refusalOf(any(runtime), { ...input, ...more })?.noSolution ?? "answered"
    const { startStateOfCharge, parallel } = nearest as { startStateOfCharge: number; parallel: number }
    expect([code({ startStateOfCharge }), code({ startStateOfCharge: startStateOfCharge - 0.01 })]).toEqual([
      "answered",
      "insufficient-voltage",
    ])
    expect([code({ parallel }), code({ parallel: parallel - 1 })]).toEqual(["answered", "insufficient-voltage"])
  })
})

describe("packSize says why", () => {
  const single = (more: object) => packSize({ ...needs, cells: [cell, { ...cell, name: "good", cellMass: 0.02 }], ...more })
  const reason = (more: object, series = 3) => single(more).rejected.find((l) => l.name === "A" && l.series === series)?.reason
  it("by how much a pack fails", () => {
    // 40 Wh over 0.8 · 3 · 3.6 V · 2.6 Ah are 1.78: two in parallel, six cells of 48 g
    expect(reason({ maxMass: 0.25 })).toMatch(/^3S2P \(energy sets the 2\) weighs 288 g, 38 g too much$/)
    expect(reason({}, 2)).toMatch(/^2 in series have 6.95 V at 20 % charge.* minimum voltage of 9 V$/)
    const other = { cells: [cell, { ...cell, name: "good", cellCapacity: 20000, cellMaxCurrent: 30, cellResistance: 0.01 }] }
    expect(reason({ ...other, maxParallel: 1 })).toMatch(/^needs 2 in parallel for energy, more than 1$/)
    expect(reason({ ...other, maxParallel: 2, peakCurrent: 20 })).toMatch(/^needs 3 in parallel for current, more than 2$/)
    const small = { cells: [cell, { ...cell, name: "good", cellCapacity: 5000, cellMaxCurrent: 30 }], energy: 40000 }
    expect(reason({ ...small, transportEnergyLimit: 50 * 3600 })).toMatch(/holds 56.2 Wh, over the 50 Wh for carriage$/)
  })

  it("ranks equal masses by fewer cells, whichever comes first", () => {
    const big = { ...cell, name: "big", cellCapacity: 2 * 9360, cellMass: 0.096, cellMaxCurrent: 15.6, cellResistance: 0.025 }
    for (const cells of [
      [cell, big],
      [big, cell],
    ]) {
      const out = packSize({ ...needs, cells })
      expect(out.candidates.map((c) => [c.name, c.cellCount, c.lostBy === ""])).toEqual([
        ["big", 3, true],
        ["A", 6, false],
      ])
      expect(out.candidates[1]?.mass).toBeCloseTo(out.mass, 12)
    }
  })

  it("offers the change that is smallest in proportion, with a pack that it frees as the reason", () => {
    const refused = (more: object) => refusalOf(any(packSize), { ...needs, ...more })
    // six cells of 48 g, 288 g: 3 % more mass; three would want the energy of 22.5 Wh
    const byMass = refused({ maxMass: 0.28 })
    expect(Object.keys(byMass?.nearest ?? {})).toEqual(["maxMass"])
    expect(byMass?.shortBy).toBeCloseTo(0.008, 3)
    // 0.8 · 3 · 3.6 · 2.6 Ah = 22.46 Wh from three cells: half a hundredth less energy, or twice the mass
    const byEnergy = refused({ maxMass: 0.15, energy: 22.6 * 3600, peakCurrent: 5 })
    expect(Object.keys(byEnergy?.nearest ?? {})).toEqual(["energy"])
    expect(byEnergy?.nearest.energy as number).toBeCloseTo(22.464 * 3600, -2)
    const weak = { ...cell, name: "weak", cellResistance: 10, cellMass: 3 }
    expect(refused({ cells: [weak, cell], maxMass: 0.28 })?.message).toMatch(/; A, for one: 3S2P.*weighs/)
  })
})

describe("ends of a range", () => {
  it("nickel takes 1.6 times at a tenth of the capacity per hour and 1.2 times at one, and so beyond", () => {
    expect([0.01, 0.1, Math.sqrt(0.1), 1, 1.2, 5].map(nickelChargeFactor)).toEqual(
      [1.6, 1.6, 1.4, 1.2, 1.2, 1.2].map((x) => expect.closeTo(x, 12)),
    )
  })
  it("no charge is below empty or above full", () => {
    for (const chemistry of ["nmc", "lco", "lead"] as const) {
      expect(openCircuitVoltage(chemistry, 1.02)).toBe(openCircuitVoltage(chemistry, 1))
      expect(openCircuitVoltage(chemistry, -0.02)).toBe(openCircuitVoltage(chemistry, 0))
    }
    // Chen and Rincón-Mora's formula: 3.685 − 1.031 empty; 3.685 + 0.2156 − 0.1178 + 0.3201 full
    expect([openCircuitVoltage("lco", 0), openCircuitVoltage("lco", 1)]).toEqual([expect.closeTo(2.654, 12), expect.closeTo(4.1029, 9)])
  })
})

describe("runtime on a straight curve, where the time is a plain integral", () => {
  const [capacity, resistance] = [18000, 0.4]
  const on = (low: number, high: number, load: object) =>
    runtime({
      series: 1,
      parallel: 1,
      cellCapacity: capacity,
      cellResistance: resistance,
      cellCutOffVoltage: 0.01,
      openCircuitCurve: [
        { stateOfCharge: 0, voltage: low },
        { stateOfCharge: 1, voltage: high },
      ],
      pattern: [load],
    }).runtime
  /** ∫ Q/I ds by Simpson's rule. */
  const simpson = (low: number, high: number, current: (emf: number) => number) => {
    const n = 20000
    let sum = 0
    for (let k = 0; k <= n; k++) sum += (k === 0 || k === n ? 1 : k % 2 ? 4 : 2) / current(low + ((high - low) * k) / n)
    return (capacity * sum) / (3 * n)
  }
  const loads = [
    ["current", { current: 1.2 }, () => 1.2],
    ["resistance", { loadResistance: 2 }, (emf: number) => emf / 2.4],
    ["power", { power: 3.8 }, (emf: number) => (emf - Math.sqrt(emf ** 2 - 4 * 0.4 * 3.8)) / 0.8],
  ] as const
  it.each(loads)("steep: %s", (_, load, current) => {
    expect(on(2.5, 4.2, load) / simpson(2.5, 4.2, current)).toBeCloseTo(1, 9)
  })
  it.each(loads)("all but flat: %s", (_, load, current) => {
    expect(on(3.7, 3.7 + 1e-7, load) / (capacity / current(3.7))).toBeCloseTo(1, 7)
  })
})

describe("the course of a runtime", () => {
  it.each([
    ["round by round", 1],
    ["by the mean of short rounds", 0.02],
  ])("%s: every moment's voltage, current and charge go together", (_, scale) => {
    const pattern = [
      { name: "raise", duration: 2 * scale, power: 45 },
      { duration: 8 * scale, power: 4 },
    ]
    const out = runtime({ ...pack, pattern })
    expect(out.errorEstimate > 0).toBe(scale < 1)
    expect(out.pattern.map((l) => l.name)).toEqual(["raise", "step 2"])
    for (const { stateOfCharge, voltage, current } of out.history) {
      expect(voltage + current * 0.12).toBeCloseTo(3 * openCircuitVoltage("nmc", stateOfCharge), 9)
      const power = voltage * current
      expect(Math.min(Math.abs(power - 45), scale < 1 ? 99 : Math.abs(power - 4))).toBeLessThan(1e-9 * 45)
    }
    const times = out.history.map((h) => h.time)
    expect([...times].sort((a, b) => a - b)).toEqual(times)
    expect(times.at(-1)).toBeCloseTo(out.runtime, 6)
  })
})
