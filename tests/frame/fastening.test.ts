import { describe, expect, it } from "vitest"
import { cords, fastening, frameMaterials, knots, ties } from "../../src/frame/index.js"

const kilograms = (newtons: number) => newtons / 9.80665

describe("fastening", () => {
  // the lists as printed, typed a second time
  it("holds cable ties, cords and knots to their published lists", () => {
    expect(Object.entries(ties).map(([width, n]) => [width, Number(kilograms(n).toFixed(3))])).toEqual([
      ["2.5 mm", 8],
      ["3.6 mm", 18.2],
      ["4.8 mm", 22.2],
      ["7.6 mm", 54.4],
      ["9 mm", 79.4],
      ["12.7 mm", 114],
    ])
    expect(Object.values(cords).map((n) => Math.round(kilograms(n)))).toEqual([100, 200, 295, 550, 750, 1150, 1400])
    expect(Object.values(knots).map((k) => k.share)).toEqual([0.75, 0.75, 0.7, 0.6, 0.45])
  })

  it("is as strong as every part of it borne by a free body of its own: strands cut one by one", () => {
    // a cut between both parts goes through two strands of every turn; each may carry its breaking load times its knot
    for (const turns of [1, 3, 7])
      for (const knot of Object.keys(knots) as (keyof typeof knots)[]) {
        let borne = 0
        for (let strand = 0; strand < 2 * turns; strand++) borne += 295 * 9.80665 * knots[knot].share
        const out = fastening({ force: borne / 4, joint: { type: "lashed", turns, cord: "4 mm", knot } })
        expect(out.capacity).toBeCloseTo(borne, 6)
        expect(out.safetyFactor).toBeCloseTo(4, 9)
      }
  })

  it("glue on wood is no stronger than the wood beside it, on metal as strong as on steel", () => {
    const lap = (material: "softwood" | "plywood" | "osb" | "steel" | "aluminium-6061") =>
      fastening({ force: 100, joint: { type: "glued", material, overlap: 0.02, width: 0.05 } })
    for (const material of ["softwood", "plywood", "osb"] as const)
      expect(lap(material).capacity).toBeCloseTo((frameMaterials[material].shear as number) * 0.001, 9)
    for (const material of ["steel", "aluminium-6061"] as const) expect(lap(material).capacity).toBeCloseTo(13_000, 6)
    const out = lap("steel")
    expect(out.glueStress).toBeCloseTo(1e5, 6)
    // strength over stress is the same margin
    expect(13e6 / (out.glueStress as number)).toBeCloseTo(out.safetyFactor, 9)
  })

  it("screws hold by the square of the wood's density, by diameter and by length, and six tenths along the grain", () => {
    const screw = (more: object) =>
      fastening({ force: 10, joint: { type: "screwed", diameter: 0.004, threadLength: 0.02, woodDensity: 400, ...more } }).capacity
    expect(screw({ woodDensity: 800 }) / screw({})).toBeCloseTo(4, 9)
    expect(screw({ diameter: 0.008 }) / screw({})).toBeCloseTo(2, 9)
    expect(screw({ threadLength: 0.05 }) / screw({})).toBeCloseTo(2.5, 9)
    expect(screw({ grain: "end" }) / screw({})).toBeCloseTo(0.6, 9)
    expect(screw({ screws: 6 }) / screw({})).toBeCloseTo(6, 9)
    expect(screw({ woodDensity: undefined })).toBeCloseTo(screw({ woodDensity: frameMaterials.softwood.density[0] }), 9)
  })

  it("judges an allowable load by one, a breaking load by three", () => {
    const codes = (input: Parameters<typeof fastening>[0]) => fastening(input).cautions.map((c) => c.code)
    const screw = { type: "screwed", diameter: 0.004, threadLength: 0.025 } as const
    const { capacity } = fastening({ force: 1, joint: screw })
    expect(codes({ force: capacity / 1.5, joint: screw })).not.toContain("thin-margin")
    expect(codes({ force: capacity * 1.1, joint: screw })).toContain("above-allowable")
    expect(codes({ force: 100, joint: { type: "tied", tieWidth: "4.8 mm" } })).toContain("thin-margin")
  })
})
