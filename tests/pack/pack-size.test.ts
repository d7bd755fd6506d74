import { describe, expect, it } from "vitest"
import { cellPack, chemistries, genericCells, openCircuitVoltage, packSize, packUnderLoad } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { rateShare } from "./edge-numbers.js"

const catalogue = Object.entries(genericCells).map(([name, cell], i) => ({ name, ...cell, cellPrice: 2 + i }))
const needs = { cells: catalogue, minVoltage: 9, maxVoltage: 15, peakCurrent: 8, energy: 40 * 3600 }

interface Tried {
  readonly transportLimit?: number
  readonly meanCurrent?: number
  readonly capacityShare?: number
  readonly resistanceRatio?: number
  readonly startStateOfCharge?: number
}
/** Tries every number in series and parallel of every cell, at 25 °C, each at the rate that it would have. */
function byTryingAll(input: typeof needs & Tried, mostParallel: number) {
  const { meanCurrent = input.peakCurrent, capacityShare = 1, resistanceRatio = 1, startStateOfCharge = 1 } = input
  let best: { name: string; series: number; parallel: number; mass: number } | null = null
  for (const { name, ...cell } of input.cells) {
    const { cellFullVoltage: fullVoltage, cellNominalVoltage, cellCutOffVoltage: cutOffVoltage } = chemistries[cell.chemistry]
    const open = openCircuitVoltage(cell.chemistry, 0.2)
    for (let series = 1; series * fullVoltage <= input.maxVoltage * (1 + 1e-12); series++)
      for (let parallel = 1; parallel <= mostParallel; parallel++) {
        const energy = series * parallel * cellNominalVoltage * cell.cellCapacity
        const aged = capacityShare * cell.cellCapacity
        const usable = 0.8 * startStateOfCharge * capacityShare * rateShare(cell.chemistry, (3600 * meanCurrent) / (parallel * aged))
        if (energy * usable < input.energy || parallel * cell.cellMaxCurrent < input.peakCurrent) continue
        if (input.transportLimit !== undefined && energy > input.transportLimit) continue
        const low = series * (open - (input.peakCurrent * cell.cellResistance * resistanceRatio) / parallel)
        if (low < input.minVoltage || low < series * cutOffVoltage) continue
        const mass = series * parallel * cell.cellMass
        if (!best || mass < best.mass - 1e-12) best = { name, series, parallel, mass }
      }
  }
  return best
}

describe("packSize", () => {
  it("finds what trying every pack finds, over many needs", () => {
    let found = 0
    for (const peakCurrent of [1, 5, 20, 60])
      for (const wattHours of [5, 40, 150])
        for (const [minVoltage, maxVoltage] of [
          [4.5, 6],
          [9, 13],
          [18, 26],
          [3, 40],
        ] as const) {
          const input = { ...needs, peakCurrent, energy: wattHours * 3600, minVoltage, maxVoltage, maxParallel: 30 }
          const out = packSize.si(packSize.read(input))
          const brute = byTryingAll(input, 30)
          if (!brute) {
            expect(isNoSolution(out)).toBe(true)
            continue
          }
          if (isNoSolution(out)) throw new Error(`${out.message}; but ${JSON.stringify(brute)}`)
          found++
          expect(out.mass).toBeCloseTo(brute.mass, 9)
          expect([out.bestCell, out.series, out.parallel]).toEqual([brute.name, brute.series, brute.parallel])
        }
    expect(found).toBeGreaterThan(15)
  })

  it("finds it for aged lead and nickel that stood for a while, by the mean current", () => {
    let found = 0
    for (const wattHours of [3, 20, 90])
      for (const meanCurrent of [0.3, 2, 7])
        for (const age of [{}, { capacityShare: 0.8, resistanceRatio: 1.7, startStateOfCharge: 0.75 }]) {
          const cells = catalogue.filter((cell) => cell.chemistry === "lead" || cell.chemistry === "nimh")
          const input = { ...needs, cells, energy: wattHours * 3600, meanCurrent, maxVoltage: 16, minVoltage: 8.5, ...age }
          const all = packSize.si(packSize.read(input))
          const brute = byTryingAll(input, 50)
          if (isNoSolution(all) || !brute) throw new Error("should be answered")
          found++
          expect([all.bestCell, all.series, all.parallel]).toEqual([brute.name, brute.series, brute.parallel])
        }
    expect(found).toBe(18)
  })

  it("offers the temperature at which makers allow a discharge, from below freezing too", () => {
    const refusal = packSize.si(packSize.read({ ...needs, cells: catalogue.slice(0, 1), cellTemperature: -30 }))
    if (!isNoSolution(refusal)) throw new Error("should refuse")
    expect(refusal.nearest.cellTemperature).toBeGreaterThanOrEqual(-20)
    expect(refusal.nearest.cellTemperature).toBeLessThan(-19.9)
    expect(refusal.shortBy).toBeCloseTo(10, 1)
  })

  it("puts as many in series as the load stands where few may stand side by side", () => {
    for (const maxParallel of [1, 2, 3])
      for (const wattHours of [20, 80, 140]) {
        const input = { ...needs, peakCurrent: 1, energy: wattHours * 3600, minVoltage: 3, maxVoltage: 60, maxParallel }
        const brute = byTryingAll(input, maxParallel)
        const out = packSize.attempt(input)
        const { bestCell: name, series, parallel } = out.ok ? out.value : { bestCell: out.error.message, series: 0, parallel: 0 }
        expect({ name, series, parallel }).toEqual({ name: brute?.name, series: brute?.series, parallel: brute?.parallel })
      }
  })

  it("says of every cell and number in series why it is not the answer", () => {
    const out = packSize(needs)
    expect(out.candidates.slice(1).every((c) => c.lostBy !== "")).toBe(true)
    for (const { name } of catalogue)
      expect([...out.candidates.map((c) => c.name), ...out.rejected.map((l) => l.name)], name).toContain(name)
    expect(out.rejected.every((l) => l.reason.length > 10)).toBe(true)
  })

  it("keeps to carriage and mass limits, and ranks by what is asked", () => {
    const light = packSize({ ...needs, transportEnergyLimit: 100 * 3600 })
    expect(light.candidates.every((c) => c.energy <= 100 * 3600)).toBe(true)
    const byCost = packSize({ ...needs, rankBy: "price" }).candidates.map((c) => c.price as number)
    expect([...byCost].sort((a, b) => a - b)).toEqual(byCost)
    const refusal = packSize.si(packSize.read({ ...needs, maxMass: 0.05 }))
    if (!isNoSolution(refusal)) throw new Error("should refuse")
    expect(refusal.noSolution).toBe("no-candidate")
    const again = packSize.si(packSize.read({ ...needs, maxMass: (refusal.nearest.maxMass as number) * 1.000001 }))
    expect(isNoSolution(again)).toBe(false)
  })

  it("tells of each pack what the plain pack solvers tell", () => {
    const { candidates } = packSize({ ...needs, maxVoltage: 26 })
    expect(candidates.length).toBeGreaterThan(5)
    for (const { name, series, parallel, ...choice } of candidates) {
      const { cellPrice, name: _, ...cell } = catalogue.find((c) => c.name === name) as (typeof catalogue)[number]
      const pack = cellPack({ ...cell, series, parallel, cellPrice })
      const { chemistry, cellCapacity, cellResistance, cellMaxCurrent } = cell
      const low = packUnderLoad({
        chemistry,
        cellCapacity,
        cellResistance,
        cellMaxCurrent,
        series,
        parallel,
        stateOfCharge: 0.2,
        current: needs.peakCurrent,
      })
      const told = [
        choice.cellCount,
        choice.nominalVoltage,
        choice.energy,
        choice.mass,
        choice.price,
        choice.minTerminalVoltage,
        choice.cellUtilisation,
      ]
      const plain = [pack.cellCount, pack.nominalVoltage, pack.energy, pack.mass, pack.price, low.terminalVoltage, low.cellUtilisation]
      told.forEach((value, i) => {
        expect(value as number, `${name} ${i}`).toBeCloseTo(plain[i] as number, 9)
      })
    }
  })

  it("takes a number in series that just reaches the greatest voltage, dust of rounding aside", () => {
    const [cell] = catalogue.filter((c) => c.name === "18650-standard")
    for (let series = 1; series <= 15; series++) {
      const input = { ...needs, cells: [cell as (typeof catalogue)[number]], minVoltage: 3.3 * series, maxVoltage: 4.2 * series }
      expect(packSize(input).series, `${series} cells`).toBe(series)
      expect(packSize.attempt({ ...input, minVoltage: 3.4 * series, maxVoltage: 4.2 * series - 1e-6 }).ok).toBe(false)
    }
  })

  it("offers where nothing fits a change that does work, wherever one limit alone is to blame", () => {
    let [refused, offered] = [0, 0]
    for (const [peakCurrent, wattHours] of [
      [5, 400],
      [60, 20],
      [400, 20],
    ] as const)
      for (const [minVoltage, maxVoltage] of [
        [3, 3.2],
        [4.5, 5],
        [11, 12.7],
      ] as const)
        for (const more of [{}, { maxMass: 0.02 }, { transportEnergyLimit: 3600 }, { cellTemperature: 70 }, { maxParallel: 2 }]) {
          const input = { ...needs, peakCurrent, energy: wattHours * 3600, minVoltage, maxVoltage, ...more }
          const out = packSize.si(packSize.read(input))
          if (!isNoSolution(out)) continue
          refused++
          // limits as loose as can be, one at a time, without the solver's own search
          const loose = [
            { minVoltage: 0.01 },
            { maxVoltage: 500 },
            { peakCurrent: 0.01 },
            { energy: 10 },
            { cellTemperature: 25 },
            { maxParallel: 200 },
          ]
          const lifted = [...loose, { maxMass: null }, { transportEnergyLimit: null }].some(
            (one) => packSize.attempt({ ...input, ...one }).ok,
          )
          expect(Object.keys(out.nearest).length, JSON.stringify({ ...input, cells: 0 })).toBe(lifted ? 1 : 0)
          expect(out.shortBy).toBeGreaterThan(0)
          for (const [key, value] of Object.entries(out.nearest)) {
            offered++
            const tried = packSize.attempt({ ...input, [key]: value })
            expect(tried.ok, `${key} = ${value} in ${JSON.stringify({ ...input, cells: 0 })}`).toBe(true)
          }
        }
    expect(refused).toBeGreaterThan(40)
    expect(offered).toBeGreaterThan(12)
  })

  it("keeps to a cell's own least voltage", () => {
    const [cell] = catalogue.filter((c) => c.name === "18650-power")
    const low = (cellCutOffVoltage: number | null) =>
      packSize.attempt({
        ...needs,
        cells: [{ ...(cell as (typeof catalogue)[number]), cellCutOffVoltage }],
        minVoltage: 6,
        maxVoltage: 8.4,
      })
    // at a fifth of its charge a cell has 3.4754 V and sags below that under the load
    expect([low(3.3).ok, low(3.48).ok]).toEqual([true, false])
  })
})
