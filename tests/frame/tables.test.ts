import { describe, expect, it } from "vitest"
import {
  boltClasses,
  bolts,
  columnEnds,
  datasheets,
  frameMaterials,
  handlingCases,
  pipes,
  pvcDerating,
  walkingFactor,
} from "../../src/frame/index.js"

const MPa = 1e6
const inch = 25.4
const psi = 4.4482216152605 / 0.0254 ** 2
const fahrenheit = (t: number) => ((t - 32) * 5) / 9

describe("tables against copies typed from their sources", () => {
  it("Schedule 40 pipe: outside diameter and wall, inches (ASME B36.10M), PVC tolerances (ASTM D1785)", () => {
    const copy: Record<string, readonly [number, number, (number | null)?, (number | null)?]> = {
      "1/8": [0.405, 0.068],
      "3/8": [0.675, 0.091],
      "1/2": [0.84, 0.109, 0.004, 0.02],
      "3/4": [1.05, 0.113, 0.004, 0.02],
      "1": [1.315, 0.133, 0.005, 0.02],
      "1-1/4": [1.66, 0.14, 0.005, 0.02],
      "1-1/2": [1.9, 0.145, 0.006, 0.02],
      "2": [2.375, 0.154, 0.006, 0.02],
      "2-1/2": [2.875, 0.203, 0.007, 0.024],
      "3": [3.5, 0.216, 0.008, 0.026],
      "4": [4.5, 0.237, 0.009, 0.028],
    }
    expect(Object.keys(pipes).sort()).toEqual(Object.keys(copy).sort())
    for (const [size, pipe] of Object.entries(pipes)) {
      const [od, wall, odTolerance = null, wallTolerance = null] = copy[size] as readonly [number, number, number?, number?]
      const shown = [pipe.outsideDiameter, pipe.wall, pipe.diameterTolerance, pipe.wallTolerance].map((x) =>
        x === null ? null : Number(((x * 1000) / inch).toPrecision(9)),
      )
      expect(shown, size).toEqual([od, wall, odTolerance, wallTolerance])
      expect(pipe.label).toContain(size)
    }
  })

  it("bolts: diameter, coarse pitch (ISO 261), nominal stress area (ISO 898-1, table 4)", () => {
    const copy = { M3: [3, 0.5, 5.03], M4: [4, 0.7, 8.78], M5: [5, 0.8, 14.2], M6: [6, 1, 20.1], M8: [8, 1.25, 36.6], M10: [10, 1.5, 58] }
    const shown = Object.fromEntries(
      Object.entries(bolts).map(([size, b]) => [
        size,
        [b.diameter * 1e3, b.pitch * 1e3, b.stressArea * 1e6].map((x) => Number(x.toPrecision(9))),
      ]),
    )
    expect(shown).toEqual(copy)
  })

  it("bolt classes: tensile and proof strength, N/mm² (ISO 898-1, table 3; ISO 3506-1), share in shear (EN 1993-1-8, table 3.4)", () => {
    const copy = {
      "4.6": [400, 225, 0.6],
      "5.6": [500, 280, 0.6],
      "8.8": [800, 580, 0.6],
      "10.9": [1000, 830, 0.5],
      "A2-70": [700, 450, 0.5],
    }
    expect(
      Object.fromEntries(Object.entries(boltClasses).map(([name, c]) => [name, [c.tensile / MPa, c.proof / MPa, c.shearRatio]])),
    ).toEqual(copy)
  })

  it("end constants: theory, conservative, recommended (Shigley, table 4-2; theory by exact roots)", () => {
    expect(Object.fromEntries(Object.entries(columnEnds).map(([name, c]) => [name, [c.theory, c.design, c.recommended]]))).toEqual({
      "pinned-pinned": [1, 1, 1],
      "fixed-free": [0.25, 0.25, 0.25],
      "fixed-pinned": [2.046, 1, 1.2],
      "fixed-fixed": [4, 1, 1.2],
    })
  })

  it("PVC pipe when warm: 73 to 140 °F (industrial pipe chart)", () => {
    const copy = { 73: 1, 80: 0.88, 90: 0.75, 110: 0.51, 120: 0.4, 130: 0.31, 140: 0.22 }
    expect(pvcDerating.map(([t, f]) => [Math.round((t * 9) / 5 + 32), f])).toEqual(Object.entries(copy).map(([t, f]) => [Number(t), f]))
  })

  it("walking: design values of the four harmonics at 2 steps a second (CCIP-016, table 4.3), and the ways of handling", () => {
    expect(walkingFactor(2)).toBeCloseTo(1 + 0.41 * 1.05 + (0.069 + 0.0056 * 4) + (0.033 + 0.0064 * 6) + (0.013 + 0.0065 * 8), 12)
    expect(walkingFactor(2.8)).toBeCloseTo(1 + 0.56 + (0.069 + 0.0056 * 5.6) + (0.033 + 0.0064 * 8.4) + (0.013 + 0.0065 * 11.2), 12)
    expect([handlingCases.still.factor, handlingCases.sudden.factor, handlingCases.stumble.factor]).toEqual([1, 2, 3])
    expect(handlingCases.walking.factor).toBeCloseTo(1.81036, 10)
  })

  // [modulus, strength] N/mm², density kg/m³, Poisson's ratio, shear N/mm², limit and deflection temperature °C, shares left by creep
  const materials: Record<string, readonly unknown[]> = {
    "aluminium-6061": [68900, 71700, 241.3, 276, 2700, 2700, 0.33, null, 100, null, null],
    steel: [200000, 210000, 220, 370, 7850, 7850, 0.292, null, 200, null, null],
    "pvc-pipe": [2482, 2965, 48.26, 51.37, 1400, 1420, 0.38, null, 60, 70, [0.1, 1, 438000, 0.486]],
    abs: [2300, 2352, 44, 45.03, 1020, 1080, null, null, 77, 77, [0.1, 1, 1000, 0.5]],
    petg: [2137, 2200, 53, 53.1, 1270, 1270, null, null, 69, 69, [0.1, 1, 1000, 0.5]],
    polycarbonate: [2344, 2400, 57.9, 66, 1200, 1200, null, null, 115, 128, [0.1, 1, 1, 0.916667, 1000, 0.791667]],
    acrylic: [3240, 3300, 60.67, 69, 1190, 1190, null, null, 71, 71, [0.1, 1, 1000, 0.5]],
    hips: [1330, 2627, 17.09, 31.16, 1040, 1040, null, null, 70, 70, [0.1, 1, 1000, 0.5]],
    "printed-pla": [2315, 4000, 35, 65, 1240, 1240, null, null, 50, 55, [0.1, 1, 1000, 0.5]],
    "carbon-pultruded": [127000, 134000, 1370, 1650, 1500, 1600, null, 41.3, 80, null, null],
    "carbon-wrapped": [63500, 67000, 685, 825, 1500, 1600, null, 41.3, 80, null, null],
    "glass-pultruded": [12400, 41400, 172, 827, 1700, 2000, null, 20, 80, null, null],
    softwood: [5400, 11000, 16, 24, 310, 420, null, 3.2, 50, null, [0.1, 1, 1000, 0.555556]],
    plywood: [6861, 12737, 37.6, 65.74, 450, 700, null, 2, 50, null, [0.1, 1, 1000, 0.5]],
    mdf: [2100, 2700, 18, 23, 700, 800, null, 0.55, 50, null, [0.1, 1, 1000, 0.5]],
    chipboard: [1500, 1800, 10.5, 11, 640, 700, null, 0.3, 50, null, [0.1, 1, 1000, 0.5]],
    osb: [1400, 6280, 7.4, 42.5, 590, 800, null, 0.3, 50, null, [0.1, 1, 1000, 0.5]],
  }
  const brittle = [
    "acrylic",
    "printed-pla",
    "carbon-pultruded",
    "carbon-wrapped",
    "glass-pultruded",
    "softwood",
    "plywood",
    "mdf",
    "chipboard",
    "osb",
  ]

  it("materials: every cell", () => {
    const round = (x: number) => Number(x.toPrecision(6))
    const shown = Object.fromEntries(
      Object.entries(frameMaterials).map(([name, m]) => [
        name,
        [
          ...[...m.modulus, ...m.strength].map((x) => round(x / MPa)),
          ...m.density,
          m.poisson,
          m.shear === null ? null : round(m.shear / MPa),
          m.limit,
          m.hdt,
          m.creep === null ? null : m.creep.flatMap(([log, left]) => [round(10 ** log), round(left)]),
        ],
      ]),
    )
    expect(shown).toEqual(materials)
    expect(
      Object.entries(frameMaterials)
        .filter(([, m]) => m.brittle)
        .map(([name]) => name),
    ).toEqual(brittle)
    expect(
      Object.entries(frameMaterials)
        .filter(([, m]) => m.splits)
        .map(([name]) => name),
    ).toEqual(["carbon-pultruded", "carbon-wrapped", "glass-pultruded"])
    expect(Object.values(frameMaterials).filter((m) => m.derating !== null)).toEqual([frameMaterials["pvc-pipe"]])
  })

  it("no safe end is one supplier's typical value: ranges of plastics and boards reach down to the least that is published", () => {
    const figures = (sheet: string) => (datasheets[sheet] as { figures: Record<string, number> }).figures
    // high-impact polystyrene: 2480 to 4520 psi, 193 000 to 381 000 psi, 160 to 189 °F (ASTM D638, D790, D648)
    const hips = figures("hips-range")
    expect([hips.minTensile, hips.maxTensile].map((x) => Math.round((x as number) / psi))).toEqual([2480, 4520])
    expect([hips.minFlexuralModulus, hips.maxFlexuralModulus].map((x) => Math.round((x as number) / psi))).toEqual([193000, 381000])
    expect([hips.minDtul, hips.maxDtul]).toEqual([160, 189].map(fahrenheit))
    expect(frameMaterials.hips.strength[0]).toBeLessThanOrEqual(hips.minTensile as number)
    expect(frameMaterials.hips.modulus[0]).toBeLessThanOrEqual(hips.minFlexuralModulus as number)
    expect(frameMaterials.hips.hdt as number).toBeLessThanOrEqual(hips.minDtul as number)
    // PLA across its layers: 35 to 45 N/mm²
    expect(frameMaterials["printed-pla"].strength[0]).toBeLessThanOrEqual(35 * MPa)
    // chipboard P2 over 13 to 25 mm (EN 312): modulus 1800 to 1500 N/mm²
    expect(figures("chipboard-en312-p2")).toEqual({ modulusTo13mm: 1800 * MPa, modulusTo25mm: 1500 * MPa })
    expect(frameMaterials.chipboard.modulus).toEqual([1500 * MPa, 1800 * MPa])
    // oriented strandboard across, over 18 to 25 mm: 7.4 N/mm² characteristic (EN 12369-1), modulus 1400 least (EN 300)
    expect(figures("osb-3-design")).toEqual({
      bendingMinor: 7.4 * MPa,
      planarShear: MPa,
      modulusMinor: 1980 * MPa,
      minModulusMinor: 1400 * MPa,
    })
    expect(frameMaterials.osb.strength[0]).toBeLessThanOrEqual(7.4 * MPa)
    expect(frameMaterials.osb.modulus[0]).toBeLessThanOrEqual(1400 * MPa)
    // polycarbonate sheet: yield 8400 psi, modulus 340 000 psi, 275 °F
    const pc = figures("pc-sheet")
    expect([pc.tensileYield, pc.tensileModulus, pc.flexuralModulus].map((x) => Math.round((x as number) / psi))).toEqual([
      8400, 340000, 340000,
    ])
    expect(pc.dtul264psi).toBe(fahrenheit(275))
    expect(frameMaterials.polycarbonate.strength[0]).toBeLessThanOrEqual(8400 * psi)
    // pultruded tube is a profile, not a rod: 172 N/mm² and 12.4 kN/mm² at the least
    expect(frameMaterials["glass-pultruded"].strength[0]).toBeLessThanOrEqual(172 * MPa)
    expect(frameMaterials["glass-pultruded"].modulus[0]).toBeLessThanOrEqual(12400 * MPa)
    for (const [name, m] of Object.entries(frameMaterials)) expect(m.strength[0], name).toBeLessThan(m.strength[1])
  })
})
