import { polynomialRoot } from "mathjs"
import { describe, expect, it } from "vitest"
import { type Chemistry, cellPack, chemistries, genericCells, openCircuitVoltage, packUnderLoad } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { working } from "../../src/working/index.js"

const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)
const cell = genericCells["18650-standard"]
const load = (more: object) =>
  packUnderLoad.si(packUnderLoad.read({ series: 3, parallel: 2, cellCapacity: 9360, cellResistance: 0.08, ...more }))
const loaded = (more: object) => {
  const out = load(more)
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}

/** A pack wired cell by cell: groups in parallel, then groups in series, each with its own source and resistance. */
function wiredCellByCell(series: number, parallel: number, emf: number, resistance: number) {
  let [voltage, total] = [0, 0]
  for (let group = 0; group < series; group++) {
    let conductance = 0
    let short = 0
    for (let k = 0; k < parallel; k++) {
      conductance += 1 / resistance
      short += emf / resistance
    }
    voltage += short / conductance
    total += 1 / conductance
  }
  return { voltage, resistance: total }
}

describe("cellPack", () => {
  it("equals the pack put together cell by cell (Thévenin), over its range", () => {
    let worst = 0
    for (const series of [1, 2, 3, 7, 14])
      for (const parallel of [1, 2, 5, 20]) {
        const pack = cellPack({ ...cell, series, parallel })
        const wired = wiredCellByCell(series, parallel, 3.6, cell.cellResistance)
        worst = Math.max(worst, off(pack.nominalVoltage, wired.voltage), off(pack.resistance, wired.resistance))
      }
    expect(worst).toBeLessThan(1e-12)
  })

  it("keeps the energy of its cells however they are joined", () => {
    const energies = [
      [1, 12],
      [2, 6],
      [3, 4],
      [12, 1],
    ].map(([series, parallel]) => cellPack({ ...cell, series: series as number, parallel: parallel as number }).energy)
    for (const energy of energies) expect(off(energy, 12 * 3.6 * cell.cellCapacity)).toBeLessThan(1e-12)
  })

  it("lets parallel cells alone add current, and cuts it in the cold", () => {
    expect(cellPack({ ...cell, series: 4, parallel: 1 }).maxCurrent).toBe(7.8)
    expect(cellPack({ ...cell, series: 1, parallel: 3 }).maxCurrent).toBeCloseTo(23.4, 12)
    expect(cellPack({ ...cell, series: 1, parallel: 1, cellTemperature: 0 }).maxCurrent).toBeCloseTo(1.3, 12)
  })

  it("cuts the charge current by temperature: none below freezing and when hot, a part in the cold", () => {
    const at = (temperature: number, more: object = {}) =>
      cellPack({ ...cell, cellCutOffVoltage: null, series: 1, parallel: 2, cellTemperature: temperature, ...more }).maxChargeCurrent
    // bands of the cell's own sheet: 0.1, 0.2 and 0.5 of the capacity per hour, of which 1.3 A is the last
    expect([at(-0.1), at(0), at(5), at(5.1), at(15), at(15.1), at(45)]).toEqual(
      [0, 0.52, 0.52, 1.04, 1.04, 2.6, 2.6].map((a) => expect.closeTo(a, 12)),
    )
    expect(at(45.1)).toBe(0)
    // nickel: 0.3 of the capacity per hour from 0 to 5 °C where 1 is the rapid rate, lead: none below -10 °C
    expect(at(2, { chemistry: "nimh" })).toBeCloseTo(0.78, 12)
    expect([at(-11, { chemistry: "lead" }), at(-10, { chemistry: "lead" })]).toEqual([0, 2.6])
    expect(at(25, { chemistry: "alkaline" })).toBe(0)
  })

  it("allows no current above the temperature at which makers forbid use", () => {
    const at = (chemistry: Chemistry, temperature: number) =>
      cellPack({ ...cell, chemistry, series: 1, parallel: 1, cellTemperature: temperature, cellCutOffVoltage: null }).maxCurrent
    for (const chemistry of ["nmc", "lco", "lfp"] as const) {
      expect(at(chemistry, 60), chemistry).toBeGreaterThan(0)
      expect(at(chemistry, 60.1), chemistry).toBe(0)
      expect(at(chemistry, 70), chemistry).toBe(0)
    }
    expect([at("nimh", 65), at("nimh", 65.1)]).toEqual([7.8, 0])
    expect([at("nmc", -20), at("nmc", -20.1)]).toEqual([expect.closeTo(1.3, 12), 0])
  })

  it("stops at its weakest group, by kernel and by formulae, and warns of it", () => {
    const input = { ...cell, series: 3, parallel: 2, groupCapacities: ["5.2 Ah", "4.4 Ah", "5 Ah"] as const }
    const out = cellPack(input)
    expect([out.capacity / 3600, out.strandedCharge / 3600]).toEqual([4.4, expect.closeTo(1.4, 12)])
    expect(out.cautions.map((c) => c.code)).toContain("weak-group")
    const { values } = working(cellPack, input)
    expect([values.Q, values.Q_s]).toEqual([expect.closeTo(out.capacity, 9), expect.closeTo(out.strandedCharge, 9)])
    expect(cellPack.attempt({ ...input, series: 4 }).ok).toBe(false)
  })

  it("warns of frost, of unequal strings and of lithium", () => {
    const codes = cellPack({ ...cell, series: 3, parallel: 2, cellTemperature: -5 }).cautions.map((c) => c.code)
    expect(codes).toEqual(expect.arrayContaining(["lithium-battery", "cold-charge", "unequal-strings", "limit-by-temperature"]))
  })
})

describe("packUnderLoad", () => {
  it("draws for a constant power the smaller root that mathjs finds", () => {
    let worst = 0
    for (const stateOfCharge of [0, 0.1, 0.5, 0.9, 1])
      for (const power of [0.1, 1, 10, 60, 115]) {
        const out = loaded({ stateOfCharge, power })
        const roots = polynomialRoot(power, -out.openCircuitVoltage, out.resistance).map(Number)
        worst = Math.max(worst, off(out.current, Math.min(...roots)))
      }
    expect(worst).toBeLessThan(1e-10)
  })

  it("balances energy for every load", () => {
    for (const one of [{ current: 5 }, { power: 40 }, { loadResistance: 3 }]) {
      const out = loaded({ ...one, stateOfCharge: 0.4 })
      expect(off(out.openCircuitVoltage * out.current, out.power + out.heat)).toBeLessThan(1e-12)
    }
  })

  it("never sags more with more in parallel", () => {
    for (const one of [{ current: 5 }, { power: 20 }, { loadResistance: 3 }]) {
      let before = Number.POSITIVE_INFINITY
      for (let parallel = 1; parallel <= 30; parallel++) {
        const { sag } = loaded({ ...one, parallel })
        expect(sag).toBeLessThanOrEqual(before)
        before = sag
      }
    }
  })

  it("measures the cell current against what the temperature leaves of its limit", () => {
    const cold = loaded({ current: 5, cellMaxCurrent: 7.8, cellTemperature: 0 })
    expect(cold.cellUtilisation).toBeCloseTo(2.5 / 1.3, 12)
    expect(loaded({ current: 5, cellMaxCurrent: 7.8 }).cellUtilisation).toBeCloseTo(2.5 / 7.8, 12)
    expect(loaded({ current: 5, cellMaxCurrent: 7.8, cellTemperature: 65 }).cellUtilisation).toBeNull()
  })

  it("refuses more than the greatest power, and names it", () => {
    const refusal = load({ power: 5000, stateOfCharge: 0.5 })
    if (!isNoSolution(refusal)) throw new Error("should refuse")
    expect(refusal.noSolution).toBe("insufficient-power")
    const most = refusal.nearest.power as number
    expect(refusal.message).toContain(`${most.toPrecision(3)} W`)
    expect(refusal.shortBy).toBeCloseTo(5000 - most, 6)
    // a scan of currents finds no greater power
    const { openCircuitVoltage: emf, resistance } = loaded({ power: most * 0.999999 })
    let best = 0
    for (let i = 0; i <= 20000; i++) {
      const current = ((emf / resistance) * i) / 20000
      best = Math.max(best, current * (emf - current * resistance))
    }
    expect(best).toBeLessThanOrEqual(most * (1 + 1e-12))
    expect(best).toBeGreaterThan(most * (1 - 1e-6))
    expect(isNoSolution(load({ power: most }))).toBe(false)
    expect(isNoSolution(load({ power: most * 1.0001 }))).toBe(true)
  })

  it("has curves that rise with charge, inside each chemistry's window", () => {
    for (const [name, { cellFullVoltage: fullVoltage }] of Object.entries(chemistries)) {
      let before = 0
      for (let s = 0; s <= 1.0001; s += 0.005) {
        const voltage = openCircuitVoltage(name as keyof typeof chemistries, Math.min(1, s))
        expect(voltage, `${name} at ${s}`).toBeGreaterThan(before)
        before = voltage
      }
      expect(before, name).toBeLessThanOrEqual(fullVoltage + 1e-9)
    }
  })
})
