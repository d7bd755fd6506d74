import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type BreakawayInput, breakaway } from "../../src/worn/index.js"
import { limitsOf } from "../helpers/field-limits.js"
import { between } from "./draws.js"

const degree = Math.PI / 180
const base = { place: "neck", bodyRadius: 0.057, bandWidth: 0.03, partingTension: { low: 4, high: 6 } } as const

/**
 * One side of a band laid as a polygon over a round body, for 1 N at the breakaway. Each corner is a free body on the edge of
 * slipping towards the pull (+x): the body's push leans from the corner's radius by the angle of friction, and the triangle of
 * the three forces gives the next tension. Also the sum of all pushes along the pull.
 */
function polygon(psi: number, gamma: number, friction: number, corners: number) {
  const lean = Math.atan(friction)
  const start = (Math.PI - gamma) / 2
  const wrap = Math.max(0, psi - start)
  const turn = wrap / corners
  let [tension, push, mostLean] = [1, 0, 0]
  for (let i = 0; i < corners; i++) {
    const at = start + wrap - (i + 0.5) * turn
    // towards the pull the band runs along (sin, −cos) of its place on the circle
    const next = turn === 0 ? tension : (tension * Math.cos(lean - turn / 2)) / Math.cos(lean + turn / 2)
    const x = next * Math.sin(at - turn / 2) - tension * Math.sin(at + turn / 2)
    const y = -next * Math.cos(at - turn / 2) + tension * Math.cos(at + turn / 2)
    const inward = -(x * Math.cos(at) + y * Math.sin(at))
    const along = x * Math.sin(at) - y * Math.cos(at)
    if (turn > 0) mostLean = Math.max(mostLean, Math.abs(along / inward - friction))
    push += x
    tension = next
  }
  return { tension, push, mostLean }
}

describe("breakaway", () => {
  it("agrees with a polygon of corners on the edge of slipping, whose pushes add up to the pull", () => {
    let worst = 0
    for (const psi of [30, 90, 120, 150, 180])
      for (const gamma of [0, 20, 75, 160])
        for (const friction of [0, 0.31, 0.9, 1.5]) {
          const out = breakaway({ ...base, breakawayAngle: psi * degree, pullOpening: gamma * degree, friction })
          const chain = polygon(psi * degree, gamma * degree, friction, 8000)
          expect(chain.mostLean).toBeLessThan(1e-6)
          worst = Math.max(worst, Math.abs(chain.tension / out.tensionRatio - 1))
          // across the body the breakaway itself pulls square to the catch: all of the pull comes from the body
          if (psi === 180) worst = Math.max(worst, Math.abs((2 * 6 * chain.push) / out.pull.high - 1))
        }
    expect(worst).toBeLessThan(1e-6)
  })

  it("the pull on the wearer is what the catch takes from both sides, added as vectors", () => {
    for (const gamma of [0, 40, 90, 160]) {
      const out = breakaway({ ...base, pullOpening: gamma * degree, friction: 0 })
      const half = (gamma * degree) / 2
      const [along, aside] = [1, -1].reduce(([x, y], side) => [x + 6 * Math.cos(half), y + side * 6 * Math.sin(half)] as [number, number], [
        0, 0,
      ] as [number, number])
      expect(out.pull.high).toBeCloseTo(Math.hypot(along, aside), 12)
      expect(out.besidePull).toBe(out.pull.high)
    }
  })

  it("a breakaway of the required tension parts at the 25 N of EN 71-1, whatever the wrap, friction and opening", () => {
    fc.assert(
      fc.property(between(0, Math.PI), between(0, 160 * degree), between(0, 1.5), (breakawayAngle, pullOpening, friction) => {
        const given = { ...base, breakawayAngle, pullOpening, friction }
        const needed = breakaway(given).requiredPartingTension as number
        if (needed < 0.5) return
        const at = breakaway({ ...given, partingTension: { low: needed, high: needed } })
        expect(at.pull.high).toBeCloseTo(25, 9)
        expect(at.pullUtilisation).toBeCloseTo(1, 12)
        const stiffer = breakaway({ ...given, partingTension: { low: needed, high: needed * 1.001 } })
        expect(stiffer.withinLimits).toBe(false)
      }),
    )
  })

  it("never parts more easily with more friction, further round or with a stronger breakaway; never presses more when wider", () => {
    const free = { ...base, wornTension: 2 }
    const rising = (values: readonly number[]) => {
      values.slice(1).forEach((v, i) => {
        expect(v).toBeGreaterThanOrEqual(values[i] as number)
      })
    }
    const steps = Array.from({ length: 60 }, (_, i) => i / 59)
    const pull = (more: Partial<BreakawayInput>) => breakaway({ ...free, ...more }).pull.high
    rising(steps.map((s) => pull({ friction: 1.5 * s })))
    rising(steps.map((s) => pull({ breakawayAngle: s * Math.PI })))
    rising(steps.map((s) => pull({ partingTension: { low: 4, high: 4 + 100 * s } })))
    rising(steps.map((s) => breakaway({ ...free, bandWidth: 0.3 - 0.29 * s }).pressure))
    rising(steps.map((s) => breakaway({ ...free, bodyRadius: 0.3 - 0.27 * s }).peakPressure))
  })

  it("a neck is held to 30 mmHg (Macias and others 2008) and 25 N, other places to 14 kPa only", () => {
    const at = (place: "neck" | "shoulder" | "waist") => breakaway({ ...base, place })
    expect(at("neck").pressureLimit).toBeCloseTo(3999.66, 6)
    expect([at("shoulder").pressureLimit, at("waist").pressureLimit]).toEqual([14000, 14000])
    expect([at("neck").pullLimit, at("shoulder").pullLimit, at("waist").requiredPartingTension]).toEqual([25, null, null])
    // exactly at both limits is within them
    const edge = { ...base, friction: 0, partingTension: { low: 12.5, high: 12.5 } }
    expect([breakaway(edge).withinLimits, breakaway({ ...edge, partingTension: { low: 12.5, high: 12.51 } }).withinLimits]).toEqual([
      true,
      false,
    ])
    expect([breakaway({ ...edge, wornTension: 6.83 }).withinLimits, breakaway({ ...edge, wornTension: 6.85 }).withinLimits]).toEqual([
      true,
      false,
    ])
    expect(breakaway({ ...edge, wornTension: 5 }).wornUtilisation).toBeCloseTo(0.4, 12)
    expect(breakaway(edge).wornUtilisation).toBe(0)
  })

  it("limits and defaults of its fields", () => {
    expect(limitsOf(breakaway.input)).toEqual([
      "bodyRadius: min 20 mm, max 300 mm",
      "bandWidth: min 1 mm, max 300 mm",
      "wornTension: min 0, max 300, default 0",
      "partingTension.low: min 0.5, max 1000",
      "partingTension.high: min 0.5, max 1000",
      "breakawayAngle: min 0, max 180°, default 180°",
      "pullOpening: min 0, max 160°, default 0",
      // cotton on the chest at rest: Temel and others 2022
      "friction: min 0, max 1.5, default 0.9",
      "stature: min 0.8, max 2.5, default null",
    ])
  })
})
