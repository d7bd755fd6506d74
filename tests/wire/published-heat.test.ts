import { describe, expect, it } from "vitest"
import { layFactor } from "../../src/wire/data.js"
import {
  bladeFuse,
  bladeRatings,
  contactKinds,
  metals,
  nominalConductors,
  preeceConstants,
  pulseFractions,
  pulseShapes,
  wireHeating,
} from "../../src/wire/index.js"
import { referenceRows } from "../helpers/references.js"
import { nominalOhms } from "./second.js"

const rated = (awg: number, ambient: number, rating: number) =>
  wireHeating({ awg, current: 0.1, ambientTemperature: ambient, insulationRating: rating }).ampacity

describe("published currents of wires", () => {
  const factors = referenceRows("wire").filter((r) => r.id.startsWith("ambient-base45") || r.id.startsWith("iec-ambient"))
  it.each(factors)("$id: loses current with warm air as the published factors do, within 0.06", (row) => {
    const top = (row.inputs.conductor_degC ?? 70) as number
    const base = row.id.startsWith("iec") ? 30 : 45
    const published = row.expected.factor as number[]
    ;(row.inputs.air_degC as number[]).forEach((air, i) => {
      expect(Math.abs(rated(14, air, top) / rated(14, base, top) - (published[i] as number)), `${air} °C`).toBeLessThan(0.06)
    })
  })
})

describe("tables against a second copy", () => {
  it("IEC 60228, tables 2 and 3", () => {
    expect(nominalConductors.map((n) => [n.area, n.class2, n["class2-tinned"], n.class5, n["class5-tinned"]])).toEqual(nominalOhms)
  })
  it("IEC 60028, IEC 60889, IEC 60364-5-54 table A.54.1: resistivity, coefficient, density, heat capacity, β", () => {
    expect(Object.entries(metals).map(([k, m]) => [k, m.resistivity, m.coefficient, m.density, m.heatCapacity, m.beta])).toEqual([
      ["copper", 1 / 58e6, 0.00393, 8890, 3.45e6, 234.5],
      ["aluminium", 28.264e-9, 0.00403, 2703, 2.5e6, 228],
    ])
  })
  it("ASTM B8: 2 % for the lay", () => expect(layFactor).toBe(1.02))
  it("ISO 8820-3: opening times and ratings", () => {
    expect([bladeFuse.holds, bladeFuse.long, bladeFuse.overload]).toEqual([
      { multiple: 1.1, shortest: 100 * 3600 },
      { multiple: 1.35, shortest: 0.75, longest: 600 },
      { multiple: 2, shortest: 0.15, longest: 5 },
    ])
    expect([bladeFuse.longMultiple, bladeFuse.largest]).toEqual([1.35, 40])
    expect(bladeRatings).toEqual([1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40])
  })
  it("Fuseology, page 12: pulse shapes and how many a fuse outlives", () => {
    expect(Object.entries(pulseShapes).map(([k, v]) => [k, v.factor])).toEqual([
      ["square", 1],
      ["half-sine", 1 / 2],
      ["triangle", 1 / 3],
      ["parabola", 1 / 5],
      ["exponential", 1 / 2],
    ])
    expect(pulseFractions.map((p) => [p.pulses, p.fraction])).toEqual([
      [100, 0.48],
      [1000, 0.38],
      [10000, 0.29],
      [100000, 0.22],
    ])
  })
  it("Preece's constants as printed", () => expect(preeceConstants).toEqual({ copper: 10244, aluminium: 7585, tin: 1642 }))
  it("contacts as their datasheets print them", () => {
    expect(Object.entries(contactKinds).map(([k, c]) => [k, c.current, c.resistance])).toEqual([
      ["wire-to-board-2.5mm", 3, 0.02],
      ["subminiature-toggle", null, 0.05],
      ["miniature-toggle-silver", null, 0.01],
      ["miniature-toggle-gold", null, 0.02],
    ])
  })
})
