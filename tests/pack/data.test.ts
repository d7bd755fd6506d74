import { describe, expect, it } from "vitest"
import {
  capacityFactor,
  cellPack,
  chemistries,
  curveOf,
  genericCellSources,
  genericCells,
  openCircuitVoltage,
  resistanceFactor,
} from "../../src/pack/index.js"
import { referenceRows } from "../helpers/references.js"

const rows = referenceRows("pack")
const row = (id: string) => {
  const found = rows.find((r) => r.id === id)
  if (!found) throw new Error(`no row ${id}`)
  return found
}

describe("chemistries and cells", () => {
  it.each(["ocv-dense21-21700-a", "ocv-dense21-18650-power", "ocv-dense21-21700-power"])(
    "keeps its stated tolerance to another published cell between 15 and 95 % charge: %s",
    (id) => {
      const { inputs, expected } = row(id)
      const charges = inputs.soc as unknown as readonly number[]
      const voltages = expected.ocv_V as readonly number[]
      const worst = Math.max(
        ...charges.map((s, i) => (s < 0.15 || s > 0.95 ? 0 : Math.abs(openCircuitVoltage("nmc", s) - (voltages[i] as number)))),
      )
      expect(worst).toBeLessThan(chemistries.nmc.curveTolerance)
      expect(worst).toBeGreaterThan(0.001)
    },
  )

  it("follows a cobalt formula's curve in straight lines to 0.05 mV, ends included", () => {
    const table = curveOf("lco")
    let worst = 0
    for (let i = 1; i < table.length; i++) {
      const [[a, u], [b, v]] = [table[i - 1] as readonly [number, number], table[i] as readonly [number, number]]
      worst = Math.max(worst, Math.abs((u + v) / 2 - openCircuitVoltage("lco", (a + b) / 2)))
    }
    expect(worst).toBeLessThan(5e-5)
    expect([table[0]?.[0], table.at(-1)?.[0]]).toEqual([0, 1])
  })

  it("holds the −10 °C acceptance figure of temp-liion-minus10", () => {
    const [minimum] = row("temp-liion-minus10").expected.capacity_fraction_min as readonly number[]
    expect(capacityFactor("nmc", -10)).toBe(minimum)
  })

  it("raises resistance in the cold by the Arrhenius law: doubling every so many kelvins, 1 at 25 °C", () => {
    expect(resistanceFactor("nmc", 25)).toBe(1)
    // by hand: exp(20000/8.314·(1/253.15 − 1/298.15)) = 4.20
    expect(resistanceFactor("nmc", -20)).toBeCloseTo(4.2, 1)
    for (let t = -40; t < 80; t += 5) expect(resistanceFactor("nmc", t)).toBeGreaterThan(resistanceFactor("nmc", t + 5))
  })

  it("keeps the 2.6 Ah cell to the figures of its one sheet, its least voltage among them", () => {
    // cell table of the 14.8 V 2600 mAh pack: items 3.1, 3.2 (25 mohm at 1 kHz, doubled), 3.6, 3.7, 3.8, 3.12
    expect(genericCells["18650-standard"]).toEqual({
      chemistry: "nmc",
      cellCapacity: 2.6 * 3600,
      cellResistance: 2 * 0.025,
      cellMass: 0.048,
      cellMaxCurrent: 7.8,
      cellMaxChargeCurrent: 1.3,
      cellCutOffVoltage: 2.75,
    })
    expect(cellPack({ series: 3, parallel: 1, ...genericCells["18650-standard"] }).cutOffVoltage).toBeCloseTo(8.25, 12)
    for (const [name, cell] of Object.entries(genericCells))
      expect(cell.cellCutOffVoltage, name).toBeGreaterThanOrEqual(chemistries[cell.chemistry].cellCutOffVoltage)
  })

  it("has a source for every generic cell, and cells within the 18650 envelope of published sheets", () => {
    expect(Object.keys(genericCellSources)).toEqual(Object.keys(genericCells))
    const envelope = row("pb-pack-cell-18650-envelope").expected as Readonly<Record<string, number>>
    for (const name of ["18650-standard", "18650-power"] as const) {
      const milliampereHours = genericCells[name].cellCapacity / 3.6
      expect(milliampereHours).toBeGreaterThanOrEqual(envelope.min_capacity_mAh as number)
      expect(milliampereHours).toBeLessThanOrEqual(envelope.max_capacity_mAh as number)
      expect(genericCells[name].cellResistance).toBeLessThanOrEqual((envelope.ac_resistance_max_mohm as number) / 1000)
    }
  })
})
