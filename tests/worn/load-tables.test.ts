import { describe, expect, it } from "vitest"
import { handParts, jointLimits, shoulderBreadth } from "../../src/worn/body/data-reach.js"
import { type SegmentTable, segmentRows } from "../../src/worn/body/data-segments.js"
import { survey, surveyCount } from "../../src/worn/body/data-survey.js"
import {
  exhaustionTime,
  jointTorques,
  nioshShares,
  nioshTime,
  powerLaws,
  recoveryTime,
  workPart,
} from "../../src/worn/effort/data-endurance.js"
import { lightestWalker, metabolicSamples, oxygenEnergy, placementCosts, terrains } from "../../src/worn/effort/data-metabolic.js"
import { couplingTable, frequencyTable, liftRange, loadConstant, referenceMasses, teamShares } from "../../src/worn/load/data-lift.js"
import { backCompressionLimit, headMoment, lightWearer, loadGuidance, publishedShare, stability } from "../../src/worn/load/data-load.js"
import {
  childStraps,
  heavierShoulder,
  hipBeltShare,
  strapPressureLimit,
  testedBeltTensions,
  testedWidths,
} from "../../src/worn/load/data-straps.js"

// second copies, typed from the sources named, so that one cell a few per cent off is seen

describe("tables of the loads a body carries", () => {
  it("surfaces underfoot (Soule and Goldman 1972)", () => {
    expect(Object.fromEntries(Object.entries(terrains).map(([k, t]) => [k, t.factor]))).toEqual({
      hard: 1.0,
      "dirt-road": 1.1,
      "light-brush": 1.2,
      "heavy-brush": 1.5,
      swamp: 1.8,
      "loose-sand": 2.1,
      "soft-snow": 1.1,
    })
  })

  it("places of a load (Soule and Goldman 1969), at 67, 80 and 93 m/min", () => {
    const { speeds, ...costs } = placementCosts
    expect(speeds.map((v) => Math.round(v * 60))).toEqual([67, 80, 93])
    expect(costs).toEqual({ head: [1.3, 1, 1.3], handsLight: [1, 1.3, 1.9], handsHeavy: [2, 1.8, 1.8], feet: [4.2, 5.8, 6.2] })
  })

  it("ranges of the walking equations: speed in m/s, grade, share of body mass, terrain factor", () => {
    const ranges = Object.fromEntries(
      Object.entries(metabolicSamples).map(([name, s]) => [
        name,
        [...s.speed.map((v) => Number(v.toFixed(4))), ...s.grade, s.share, s.terrain],
      ]),
    )
    expect(ranges).toEqual({
      pandolf: [0, 1.34, -0.12, 0.25, 0.7, true],
      looney2019: [0, 1.96, -0.4, 0.45, 0.2, false],
      looney2022: [0.45, 1.97, 0, 0, 0.66, true],
      acsm: [0.8333, 1.6667, 0, 0.45, 0.2, false],
      minimumMechanics: [0.4, 1.6, -0.105, 0.158, 0.31, false],
      givoniGoldman: [0.7, 2.5, 0, 0.25, 0.7, true],
    })
    // 5.0 kcal of 4184 J, 80 lb to the nearest kilogram
    expect([oxygenEnergy, lightestWalker]).toEqual([5 * 4184, Math.round(80 * 0.45359237)])
  })

  it("power laws of holding time (Frey Law and Avin 2010; Kamon 1981)", () => {
    expect(Object.fromEntries(Object.entries(powerLaws).map(([k, { b0, b1 }]) => [k, [b0, b1]]))).toEqual({
      general: [11.4, -2.42],
      ankle: [34.71, -2.06],
      knee: [19.38, -1.88],
      trunk: [22.69, -2.27],
      shoulder: [14.86, -1.83],
      elbow: [17.98, -2.21],
      "hand-grip": [33.55, -1.61],
    })
    expect(jointTorques.backExtension).toEqual({ male: 240, female: 130 })
  })

  it("aerobic shares for 1, 2 and 8 h (Waters and others 1993), met by the time that runs between them", () => {
    expect(nioshShares).toEqual([
      { upTo: 3600, share: 0.5 },
      { upTo: 7200, share: 0.4 },
      { upTo: 28800, share: 0.33 },
    ])
    expect([0.5, 0.4, 0.33].map((share) => nioshTime(share) / 3600)).toEqual([1, 2, 8])
    expect([workPart, recoveryTime, exhaustionTime(1)]).toEqual([1 / 3, 1333, 180])
  })

  it("lifting: multipliers of tables 5 and 7, constant and range (Waters and others 1994), reference masses (ISO 11228-1)", () => {
    const rates = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]
    expect(frequencyTable.short).toEqual({
      rates,
      factors: [1.0, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31, 0.28],
      below: 12,
    })
    expect(frequencyTable.medium).toEqual({
      rates: rates.slice(0, 14),
      factors: [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0.23, 0.21],
      below: 10,
    })
    expect(frequencyTable.long).toEqual({
      rates: rates.slice(0, 12),
      factors: [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13],
      below: 8,
    })
    expect(Object.fromEntries(Object.entries(couplingTable).map(([k, c]) => [k, [c.below, c.above]]))).toEqual({
      good: [1, 1],
      fair: [0.95, 1],
      poor: [0.9, 0.9],
    })
    expect([loadConstant, liftRange.reach, liftRange.height, liftRange.asymmetry / Math.PI]).toEqual([23, 0.63, 1.75, 0.75])
    expect(Object.values(referenceMasses).map((r) => r.mass)).toEqual([15, 25, 20, 20, 15])
    // guidance of the Health and Safety Executive, L23, paragraph 120
    expect(teamShares).toEqual([1, 2 / 3, 1 / 2])
  })

  it("guidance on the share of body mass, low back, head and balance", () => {
    expect(loadGuidance.map((g) => g.massShare)).toEqual([0.1, 0.15, 0.2, 0.3, 0.45])
    expect([20, 44.999, 45, 120].map(publishedShare)).toEqual([0.1, 0.1, 0.15, 0.15])
    expect([lightWearer, backCompressionLimit, headMoment]).toEqual([45, 3400, 1.34])
    expect([stability.foreAft, stability.sideToSide].map((a) => (a * 180) / Math.PI)).toEqual([12.5, 16])
  })

  it("straps", () => {
    expect(childStraps).toEqual({ share: [0.1, 0.2, 0.3], right: [98, 153, 170], left: [46, 92, 90] })
    // right over both, mean of the three loads, to a twentieth
    const mean = childStraps.right.reduce<number>((sum, r, i) => sum + r / (r + (childStraps.left[i] as number)), 0) / 3
    expect(Math.abs(mean - heavierShoulder)).toBeLessThan(0.01)
    expect([strapPressureLimit, hipBeltShare, testedBeltTensions.low, testedBeltTensions.high]).toEqual([14000, 0.3, 30, 120])
    expect(testedWidths).toEqual({ widths: [0.05, 0.06, 0.07, 0.08], best: 0.08 })
  })

  it("reach: joints (AAOS 1965), shoulder breadth of the survey's women", () => {
    expect([jointLimits.elbow, jointLimits.behind].map((a) => Math.round((a * 180) / Math.PI))).toEqual([150, 45])
    expect(Math.abs(shoulderBreadth / (365.35 / 1628.47) - 1)).toBeLessThan(5e-4)
    expect(handParts).toEqual({ press: 1, grip: 0.5 })
  })

  /** Mass, centre and three radii in per cent, length over stature in mm of the samples' own stature. */
  const deLeva = {
    head: [6.68, 58.94, 33, 35.9, 31.8, 200.2, 6.94, 59.76, 36.2, 37.6, 31.2, 203.3],
    trunk: [42.57, 41.51, 35.7, 33.9, 17.1, 529.3, 43.46, 44.86, 37.2, 34.7, 19.1, 531.9],
    "upper trunk": [15.45, 20.77, 74.6, 50.2, 71.8, 142.5, 15.96, 29.99, 71.6, 45.4, 65.9, 170.7],
    "middle trunk": [14.65, 45.12, 43.3, 35.4, 41.5, 205.3, 16.33, 45.02, 48.2, 38.3, 46.8, 215.5],
    "lower trunk": [12.47, 49.2, 43.3, 40.2, 44.4, 181.5, 11.17, 61.15, 61.5, 55.1, 58.7, 145.7],
    "upper arm": [2.55, 57.54, 27.8, 26, 14.8, 275.1, 2.71, 57.72, 28.5, 26.9, 15.8, 281.7],
    forearm: [1.38, 45.59, 26.1, 25.7, 9.4, 264.3, 1.62, 45.74, 27.6, 26.5, 12.1, 268.9],
    hand: [0.56, 74.74, 53.1, 45.4, 33.5, 78, 0.61, 79, 62.8, 51.3, 40.1, 86.2],
    thigh: [14.78, 36.12, 36.9, 36.4, 16.2, 368.5, 14.16, 40.95, 32.9, 32.9, 14.9, 422.2],
    shank: [4.81, 44.16, 27.1, 26.7, 9.3, 432.3, 4.33, 44.59, 25.5, 24.9, 10.3, 434],
    foot: [1.29, 40.14, 29.9, 27.9, 13.9, 228.3, 1.37, 44.15, 25.7, 24.5, 12.4, 258.1],
  }
  it("de Leva, table 4, women of 1735 and men of 1741 mm", () => {
    for (const [i, [table, stature]] of (
      [
        ["de-leva-female", 1735],
        ["de-leva-male", 1741],
      ] as const
    ).entries())
      for (const [name, cells] of Object.entries(deLeva)) {
        const r = segmentRows[table].find((one) => one.name === name)
        const read = [r?.mass, r?.centre, r?.sagittal, r?.transverse, r?.longitudinal].map((v) => Number((100 * (v as number)).toFixed(2)))
        expect([...read, Number(((r?.length as number) * stature).toFixed(1))], `${table} ${name}`).toEqual(cells.slice(6 * i, 6 * i + 6))
      }
    expect(segmentRows["de-leva-male"].filter((r) => r.count === 2).map((r) => r.name)).toEqual([
      "upper arm",
      "forearm",
      "hand",
      "thigh",
      "shank",
      "foot",
    ])
  })

  it("Winter, table 4.1", () => {
    expect(segmentRows.winter.map((r) => [r.name, r.count, r.mass, r.centre, r.transverse])).toEqual([
      ["trunk, head and neck", 1, 0.578, 0.34, 0.503],
      ["pelvis", 1, 0.142, 0.105, null],
      ["upper arm", 2, 0.028, 0.436, 0.322],
      ["forearm", 2, 0.016, 0.43, 0.303],
      ["hand", 2, 0.006, 0.506, 0.297],
      ["thigh", 2, 0.1, 0.433, 0.323],
      ["leg", 2, 0.0465, 0.433, 0.302],
      ["foot", 2, 0.0145, 0.5, 0.475],
    ])
  })

  it("each table's heights run on: a segment begins where the one above it ends", () => {
    for (const table of Object.keys(segmentRows) as SegmentTable[]) {
      const row = (name: string) => segmentRows[table].find((r) => r.name === name)
      for (const chain of [
        ["upper arm", "forearm", "hand"],
        ["thigh", table === "winter" ? "leg" : "shank"],
      ])
        chain.slice(1).forEach((name, i) => {
          const above = row(chain[i] as string)
          expect(row(name)?.top).toBeCloseTo((above?.top as number) - (above?.length as number), 12)
        })
      const shin = row(table === "winter" ? "leg" : "shank")
      expect((shin?.top as number) - (shin?.length as number)).toBeCloseTo(0.039, 12)
      expect(row("foot")?.top).toBeCloseTo(0.0195, 12)
    }
  })

  it("the survey: mean, deviation, 5th, 50th, 95th percentile and correlation with stature, women then men, in mm", () => {
    const copy: Readonly<Record<keyof typeof survey, readonly number[]>> = {
      bodyMass: [67.76, 10.98, 51.3, 66.8, 87.1, 0.533, 85.52, 14.22, 64.4, 84.6, 110.7, 0.469],
      stature: [1628.47, 64.2, 1525, 1626, 1740, 1, 1756.21, 68.55, 1648, 1755, 1870, 1],
      "shoulder-height": [1335.1, 58.08, 1242, 1332, 1433.8, 0.972, 1440.74, 63.29, 1339, 1439, 1546, 0.967],
      "axilla-height": [1239.03, 55.8, 1149, 1236, 1333, 0.968, 1329.08, 59.52, 1234, 1328, 1427, 0.969],
      "suprasternale-height": [1329.69, 57.18, 1236.2, 1326.5, 1427.8, 0.981, 1438.59, 61.25, 1341, 1437, 1540, 0.981],
      "neck-height": [1395.67, 59.52, 1300.2, 1393, 1498, 0.984, 1517.3, 63.28, 1416, 1517, 1622.9, 0.984],
      "tenth-rib-height": [1056.26, 50.01, 976, 1054, 1140, 0.939, 1120.67, 53.61, 1034, 1119, 1211, 0.925],
      "iliac-crest-height": [995.73, 49.69, 918, 993, 1079.8, 0.915, 1061.63, 52.02, 977, 1061, 1148, 0.909],
      "trochanter-height": [845.35, 44.68, 774.2, 844, 919, 0.858, 900.93, 49.17, 824, 899, 985, 0.85],
      "wrist-height": [794.19, 38.19, 732.2, 794, 860, 0.854, 847.51, 41.66, 780, 847, 917, 0.856],
      "biacromial-breadth": [365.35, 18.3, 335, 365, 396, 0.566, 415.68, 19.16, 384, 415, 447, 0.532],
      "bideltoid-breadth": [450.32, 28.69, 406, 450, 499, 0.359, 510.42, 32.51, 459, 509, 567, 0.313],
      "chest-breadth": [269.33, 18.58, 241, 268, 302, 0.346, 289.44, 18.28, 261, 289, 320, 0.342],
      "chest-depth": [247.4, 27.34, 205, 245, 295.8, 0.23, 253.85, 26.25, 211, 253, 298, 0.22],
      "hip-breadth": [353.84, 26.67, 311, 353, 400, 0.387, 345.73, 24.17, 308, 344, 387, 0.383],
      "across-back": [373.36, 29.83, 326.2, 373, 423, 0.248, 430.85, 35.25, 374, 430, 491, 0.184],
      "waist-back-length": [425.4, 26.39, 384, 424.5, 470, 0.504, 477.61, 27.73, 433, 477, 524, 0.535],
      "chest-circumference": [946.86, 82.7, 824.2, 940, 1094, 0.26, 1058.71, 87.44, 922, 1056, 1207, 0.247],
      "waist-circumference": [860.91, 99.93, 710, 852, 1040, 0.229, 940.58, 111.71, 768, 937, 1130.9, 0.208],
      "head-breadth": [147.77, 5.19, 140, 147, 156, 0.156, 154.33, 5.53, 146, 154, 163, 0.075],
      "head-length": [189.82, 7.45, 178, 190, 202, 0.358, 199.5, 7.02, 188, 200, 211, 0.369],
      "head-circumference": [561.12, 19.36, 532, 560, 597, 0.315, 574.37, 16.05, 548, 574, 601, 0.343],
      span: [1660.29, 82.97, 1529, 1657, 1802.8, 0.819, 1814.15, 84.63, 1680, 1812, 1956.9, 0.823],
      "thumbtip-reach": [744.01, 42.75, 674.2, 742, 816, 0.671, 811.93, 43.68, 742, 811, 886, 0.691],
      "overhead-reach-sitting": [1309.74, 62.41, 1207, 1309, 1413, 0.81, 1426.68, 67.71, 1316, 1426, 1540, 0.792],
      "foot-length": [246.29, 12.44, 226, 246, 267.8, 0.722, 271.18, 13.1, 250, 271, 293, 0.718],
      "foot-breadth": [92.71, 4.78, 85, 93, 101, 0.412, 101.86, 5.23, 94, 102, 111, 0.45],
      "ball-of-foot-length": [182.05, 9.64, 167, 182, 198, 0.688, 200.94, 10.47, 184, 201, 218, 0.666],
    }
    for (const [name, row] of Object.entries(survey)) expect([...row.female, ...row.male], name).toEqual(copy[name as keyof typeof survey])
    expect(surveyCount).toEqual({ female: 1986, male: 4082 })
  })
})
