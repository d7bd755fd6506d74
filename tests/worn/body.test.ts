import { erf } from "mathjs"
import { describe, expect, it } from "vitest"
import { centreHeight, type SegmentTable, segmentRows, upperBodies, winterCompounds } from "../../src/worn/body/data-segments.js"
import { type BodyLength, bodyDimension, bodySegments, survey } from "../../src/worn/index.js"

const tables = Object.keys(segmentRows) as SegmentTable[]

describe("bodySegments by second routes", () => {
  it("fractions add up to one (to the digits printed) in every table, masses to the body", () => {
    for (const table of tables)
      for (const bodyMass of [40, 60, 120]) {
        const out = bodySegments({ bodyMass, stature: 1.7, table })
        const total = out.segments.reduce((sum, s) => sum + s.count * s.mass, 0)
        expect(Math.abs(total / bodyMass - 1)).toBeLessThan(table === "de-leva-female" ? 1.01e-4 : 1e-12)
        expect(out.trunkMass + 2 * out.armMass + 2 * out.legMass).toBeCloseTo(total, 10)
      }
  })

  it("the low back lies within 1.5 % of stature of one height, by navel in one source's tables and by hip crest in the other's", () => {
    const heights = tables.map((t) => upperBodies[t].hipHeight + upperBodies[t].backHeight)
    expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(0.015)
    // L4-L5 stands at the crest of the hip bone, in the open survey 0.61 of stature
    for (const table of tables) expect(upperBodies[table].backMass).toBeLessThan(upperBodies[table].upperMass)
  })

  it("de Leva's trunk put together from its parts has the trunk's own mass, centre and radii", () => {
    for (const table of ["de-leva-female", "de-leva-male"] as const) {
      const { segments, trunkParts } = bodySegments({ bodyMass: 65, stature: 1.7, table })
      const trunk = segments.find((s) => s.name === "trunk") as (typeof segments)[number]
      const mass = trunkParts.reduce((sum, p) => sum + p.mass, 0)
      const height = trunkParts.reduce((sum, p) => sum + p.mass * p.height, 0) / mass
      const inertia = trunkParts.reduce((sum, p) => sum + (p.transverse as number) + p.mass * (p.height - height) ** 2, 0)
      expect(mass / trunk.mass).toBeCloseTo(1, 3)
      // centre within 1 % of the trunk's length, inertia within 4 %: each part's rounding and curvature
      expect(Math.abs(height - trunk.height) / trunk.length).toBeLessThan(0.01)
      expect(Math.abs(inertia / (trunk.transverse as number) - 1)).toBeLessThan(0.04)
    }
  })

  it("Winter's leg put together from thigh, leg and foot has the whole leg's mass, and its centre within 2 % of its length", () => {
    const parts = segmentRows.winter.filter((r) => ["thigh", "leg", "foot"].includes(r.name))
    const mass = parts.reduce((sum, r) => sum + r.mass, 0)
    const height = parts.reduce((sum, r) => sum + r.mass * centreHeight(r), 0) / mass
    const { mass: whole, centre } = winterCompounds.totalLeg
    expect(mass).toBeCloseTo(whole, 12)
    expect(Math.abs((0.53 - height) / (0.53 - 0.039) - centre)).toBeLessThan(0.02)
  })

  it("centre of mass by many slices: each segment cut into a thousand with its own first two moments", () => {
    for (const table of tables) {
      const { segments, centreHeight: height } = bodySegments({ bodyMass: 70, stature: 1.75, table })
      let [mass, moment] = [0, 0]
      for (const s of segments) {
        // a linear density along the segment that has its centre where the table says
        const c = s.name === "foot" ? 0.5 : s.centre / s.length
        for (let i = 0; i < 1000; i++) {
          const u = (i + 0.5) / 1000
          const slice = (s.count * s.mass * (1 + (12 * c - 6) * (u - 0.5))) / 1000
          mass += slice
          moment += slice * (s.name === "foot" ? s.height : s.height + s.centre - u * s.length)
        }
      }
      expect(Math.abs(moment / mass / height - 1)).toBeLessThan(1e-6)
    }
  })

  it("scales: twice the mass, twice the inertia; stature to the second power", () => {
    const [a, b, c] = [
      bodySegments({ bodyMass: 50, stature: 1.5 }),
      bodySegments({ bodyMass: 100, stature: 1.5 }),
      bodySegments({ bodyMass: 50, stature: 1.8 }),
    ]
    a.segments.forEach((s, i) => {
      expect((b.segments[i]?.transverse as number) / (s.transverse as number)).toBeCloseTo(2, 12)
      expect((c.segments[i]?.transverse as number) / (s.transverse as number)).toBeCloseTo(1.44, 12)
    })
    expect(a.centreRatio).toBe(c.centreRatio)
  })
})

describe("bodyDimension by second routes", () => {
  const lengths = (Object.keys(survey) as (keyof typeof survey)[]).filter((k): k is BodyLength => k !== "bodyMass")

  it("deviates by bisection on an independent error function", () => {
    let worst = 0
    for (let k = 1; k <= 99; k++) {
      let [low, high] = [-3, 3]
      for (let i = 0; i < 100; i++) {
        const middle = (low + high) / 2
        if ((1 + (erf(middle / Math.SQRT2) as number)) / 2 > k / 100) high = middle
        else low = middle
      }
      const out = bodyDimension({ sex: "male", dimension: "span", percentile: k / 100 })
      worst = Math.max(worst, Math.abs(out.deviates - low))
    }
    expect(worst).toBeLessThan(1e-12)
  })

  it("the normal curve lies within 0.21 standard deviations of the measured 5th, 50th and 95th percentiles, heights within 0.093 (how far the survey itself is from normal)", () => {
    for (const sex of ["female", "male"] as const)
      for (const dimension of lengths) {
        const off = ([0.05, 0.5, 0.95] as const).map((percentile) => {
          const out = bodyDimension({ sex, dimension, percentile })
          const measured = percentile === 0.05 ? out.p5 : percentile === 0.5 ? out.p50 : out.p95
          return Math.abs(out.value - measured) / out.standardDeviation
        })
        expect(Math.max(...off), `${sex} ${dimension}`).toBeLessThan(/Height|stature/.test(dimension) ? 0.093 : 0.21)
      }
  })

  it("with the mean stature given it is the mean, with less spread; stature itself is then known", () => {
    const all = bodyDimension({ sex: "female", dimension: "shoulder-height", percentile: 0.95 })
    const known = bodyDimension({ sex: "female", dimension: "shoulder-height", percentile: 0.95, stature: 1.62847 })
    expect(known.mean).toBeCloseTo(all.mean, 12)
    expect(known.standardDeviation).toBeLessThan(0.25 * all.standardDeviation)
    expect(bodyDimension({ sex: "male", dimension: "stature", percentile: 0.3, stature: 1.8 }).value).toBeCloseTo(1.8, 12)
  })

  it("rises with the percentile, and warns of tails and of weak correlation", () => {
    for (const dimension of lengths) {
      let before = 0
      for (let k = 1; k <= 99; k += 7) {
        const { value } = bodyDimension({ sex: "female", dimension, percentile: k / 100 })
        expect(value).toBeGreaterThan(before)
        before = value
      }
    }
    const codes = bodyDimension({ sex: "male", dimension: "across-back", percentile: 0.99, stature: 1.95 }).cautions.map((c) => c.code)
    expect(codes).toEqual(["army-sample", "tail", "weak-correlation", "outside-range"])
  })
})
