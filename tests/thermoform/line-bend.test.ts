import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { type LineBendInput, lineBend } from "../../src/thermoform/index.js"

const sheet = { material: "pmma-cast", thickness: 0.003, insideRadius: 0.008, angle: 1.1 } satisfies LineBendInput
const angles = [0.05, 0.6, 1.2, Math.PI / 2, 2.2, 2.9]

/** Where two lines, each a point and a direction, meet: distances from the points along them. */
function meeting(p: readonly [number, number], u: readonly [number, number], q: readonly [number, number], v: readonly [number, number]) {
  const cross = u[0] * v[1] - u[1] * v[0]
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
  return [(dx * v[1] - dy * v[0]) / cross, (dx * u[1] - dy * u[0]) / cross] as const
}

describe("lineBend", () => {
  it("cuts so that both legs come out as measured, at any angle: the bent sheet drawn and its faces made to meet", () => {
    for (const angle of angles)
      for (const neutralShare of [0.3, 0.5]) {
        const { insideRadius: r, thickness: s } = sheet
        const [a, b] = [0.9, 1.3]
        for (const [legMeasure, side] of [
          ["outside", 1],
          ["inside", 0],
        ] as const) {
          const out = lineBend({ ...sheet, angle, neutralShare, legMeasure, legA: a, legB: b })
          // leg A along x with its inner face at y = 0 and the bend turning upwards from x = 0, centre at (0, r)
          const inner = [-(out.straightA as number), -side * s] as const
          const end = (distance: number) =>
            [
              (r + side * s) * Math.sin(angle) + distance * Math.cos(angle),
              r - (r + side * s) * Math.cos(angle) + distance * Math.sin(angle),
            ] as const
          const [alongA, alongB] = meeting(inner, [1, 0], end(out.straightB as number), [-Math.cos(angle), -Math.sin(angle)])
          expect(alongA).toBeCloseTo(a, 10)
          expect(alongB).toBeCloseTo(b, 10)
          // the neutral fibre walked in small steps
          let walked = (out.straightA as number) + (out.straightB as number)
          const at = (i: number) => [
            (r + neutralShare * s) * Math.sin((angle * i) / 2000),
            (r + neutralShare * s) * Math.cos((angle * i) / 2000),
          ]
          for (let i = 0; i < 2000; i++)
            walked += Math.hypot((at(i + 1)[0] as number) - (at(i)[0] as number), (at(i + 1)[1] as number) - (at(i)[1] as number))
          expect(walked).toBeCloseTo(out.flatLength as number, 7)
          expect((out.heaterLine as number) - (out.straightA as number)).toBeCloseTo(
            (walked - (out.straightA as number) - (out.straightB as number)) / 2,
            7,
          )
          if (legMeasure === "outside") expect(a + b - (out.deduction as number)).toBeCloseTo(out.flatLength as number, 12)
          expect(out.softWidth - out.bendLength).toBeCloseTo(2 * s, 15)
        }
      }
  })

  it("measures to the back of the bend as far as its outline reaches, and to where it begins", () => {
    for (const angle of [Math.PI / 2, 2, 3, Math.PI]) {
      const outline = Array.from({ length: 20001 }, (_, i) => (sheet.insideRadius + sheet.thickness) * Math.sin((angle * i) / 20000))
      const back = lineBend({ ...sheet, angle, legMeasure: "bend", legA: 0.2, legB: 0.3 })
      expect(0.2 - (back.straightA as number)).toBeCloseTo(Math.max(...outline), 9)
      const begins = lineBend({ ...sheet, angle, legMeasure: "straight", legA: 0.2, legB: 0.3 })
      expect([begins.straightA, begins.straightB]).toEqual([0.2, 0.3])
    }
    const { outsideSetback, insideSetback, deduction } = lineBend({ ...sheet, angle: "176 deg" })
    expect([outsideSetback, insideSetback, deduction]).toEqual([null, null, null])
  })

  it("stretches the outer face as the lengths of its arc and the neutral fibre's say", () => {
    for (const angle of angles)
      for (const neutralShare of [0.25, 0.5, 0.6]) {
        const out = lineBend({ ...sheet, angle, neutralShare })
        expect((angle * (sheet.insideRadius + sheet.thickness)) / out.bendLength - 1).toBeCloseTo(out.outerStrain, 12)
      }
  })

  it("warms beside the band as finite volumes of a sheet cooling on both faces do at rest", () => {
    for (const [material, k] of [
      ["pmma-cast", 0.19],
      ["pvc-foam", 0.08],
      ["hdpe", 0.45],
    ] as const)
      for (const thickness of [0.001, 0.003, 0.01]) {
        const { spreadLength } = lineBend({ ...sheet, material, thickness })
        // cells of a fin held at 1 at its root, solved from its far end: conductance between neighbours, film of 10 on both faces
        const cells = 4000
        const dx = (12 * spreadLength) / cells
        let gain = 0
        const ratios: number[] = []
        for (let i = cells - 1; i >= 1; i--) {
          const link = (k * thickness) / dx
          // heat into cell i = what its film loses and what the next takes
          const ratio = link / (link + 20 * dx + gain)
          gain = link * (1 - ratio)
          ratios[i] = ratio
        }
        let excess = 1
        for (let i = 1; i * dx <= spreadLength; i++) excess *= ratios[i] as number
        expect(excess).toBeCloseTo(Math.exp(-1), 2)
      }
  })

  it("refuses a leg shorter than its bend, and each nearest value works alone", () => {
    let offered = 0
    for (const legMeasure of ["outside", "inside", "bend"] as const)
      for (const angle of [1.6, 2.2, 2.9])
        for (const legs of [
          { legA: 0.004, legB: 0.3 },
          { legA: 0.3, legB: 0.004 },
          { legA: 0.005, legB: 0.006 },
        ]) {
          const input = { ...sheet, angle, legMeasure, ...legs }
          const outcome = lineBend.attempt(input)
          if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
          expect(outcome.error.noSolution).toBe("does-not-fit")
          expect(outcome.error.shortBy).toBeGreaterThan(0)
          const nearest = Object.entries(outcome.error.nearest)
          if (nearest.length) offered++
          for (const [key, value] of nearest) expect(lineBend.attempt({ ...input, [key]: value }).ok, `${key} ${value}`).toBe(true)
        }
    expect(offered).toBeGreaterThan(20)
  })

  it("asks three gauges and twenty of border of expanded PVC, and of the rest the trade's two and none", () => {
    const foam = lineBend({ ...sheet, material: "pvc-foam" })
    expect([foam.minRadius, foam.minBorder, foam.wideEnough]).toEqual([3 * 0.003, 20 * 0.003, false])
    const { minRadius, minBorder, wideEnough } = lineBend(sheet)
    expect([minRadius, minBorder, wideEnough]).toEqual([0.006, null, true])
    expect(lineBend({ ...sheet, insideRadius: 0.006 }).wideEnough).toBe(true)
    expect(lineBend({ ...sheet, insideRadius: 0.00599 }).wideEnough).toBe(false)
  })
})
