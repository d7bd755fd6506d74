import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { overturning, windLoad } from "../../src/worn/index.js"
import { between } from "./draws.js"

/** Pressure on thin strips of a swinging panel, added up one by one (midpoint rule). */
function strips(i: { u: number; swing: number; span: number; chord: number; drag: number; density: number }, count = 2000) {
  let [force, moment] = [0, 0]
  const width = i.span / count
  for (let k = 0; k < count; k++) {
    const r = (k + 0.5) * width
    const one = 0.5 * i.density * i.drag * (i.u + i.swing * r) ** 2 * i.chord * width
    force += one
    moment += one * r
  }
  return { force, moment }
}

describe("windLoad", () => {
  it("agrees with adding up strips over its whole range", () => {
    let worst = 0
    fc.assert(
      fc.property(
        between(0.05, 5),
        between(0.05, 5),
        between(0.1, 40),
        between(0, 10),
        between(0, 50),
        between(1, 3),
        (span, chord, wind, walking, swing, gustFactor) => {
          const load = windLoad({
            span,
            chord,
            windSpeed: wind,
            walkingSpeed: walking,
            swingSpeed: swing,
            gustFactor,
            panels: 3,
            elevation: 0.7,
            hingeHeight: 1.2,
          })
          const own = strips({ u: gustFactor * wind + walking, swing, span, chord, drag: load.drag.high, density: 1.225 })
          worst = Math.max(worst, Math.abs(load.force.high / own.force - 1), Math.abs(load.hingeMoment.high / own.moment - 1))
          const ground = 3 * (own.force * 1.2 + own.moment * Math.sin(0.7))
          worst = Math.max(worst, Math.abs(load.groundMoment / ground - 1), Math.abs((load.totalForce * load.forceHeight) / ground - 1))
        },
      ),
      { numRuns: 150 },
    )
    // the midpoint rule misses by at most 1/(2·n²) of the moment (all swing, no wind): 1.25e-7 at 2000 strips
    expect(worst).toBeLessThan(1.3e-7)
    expect(worst).toBeGreaterThan(0)
  })

  it("law: more wind, walking, swing, span or chord is never less load", () => {
    fc.assert(
      fc.property(between(0.1, 4), between(0.1, 4), between(0, 35), between(0, 1), (span, chord, windSpeed, more) => {
        const base = { span, chord, windSpeed, swingSpeed: 1 }
        const now = windLoad(base)
        for (const worse of [
          { ...base, windSpeed: windSpeed + more },
          { ...base, walkingSpeed: 1.4 + more },
          { ...base, swingSpeed: 1 + more },
          { ...base, panels: 3 },
        ]) {
          const next = windLoad(worse)
          expect(next.totalForce).toBeGreaterThanOrEqual(now.totalForce)
          expect(next.hingeMoment.high).toBeGreaterThanOrEqual(now.hingeMoment.high)
          expect(next.beaufort).toBeGreaterThanOrEqual(now.beaufort)
        }
        // growing a panel evenly keeps its shape and coefficient
        const grown = windLoad({ ...base, span: span * (1 + more / 4), chord: chord * (1 + more / 4) })
        expect(grown.force.high).toBeGreaterThanOrEqual(now.force.high * (1 - 1e-12))
      }),
      { numRuns: 150 },
    )
  })

  it("adds wind and walking before squaring", () => {
    const both = windLoad({ span: 1, chord: 1, windSpeed: 4, walkingSpeed: 3, gustFactor: 1 }).force.high
    const apart =
      windLoad({ span: 1, chord: 1, windSpeed: 4, walkingSpeed: 0, gustFactor: 1 }).force.high +
      windLoad({ span: 1, chord: 1, windSpeed: 0, walkingSpeed: 3 }).force.high
    expect(both / apart).toBeCloseTo(49 / 25, 12)
  })

  it("shows the spread of the published coefficients and loads by the highest", () => {
    for (const ratio of [1, 2, 5, 10, 20, 29.9, 30.1, 200]) {
      const load = windLoad({ span: 0.01 * ratio, chord: 0.01, windSpeed: 10 })
      expect(load.drag.low).toBeLessThan(load.drag.high)
      expect(load.force.low / load.force.high).toBeCloseTo(load.drag.low / load.drag.high, 12)
      expect(load.drag.high).toBeGreaterThanOrEqual(1.28)
      expect(load.drag.low).toBeGreaterThanOrEqual(1.14)
      expect(load.drag.high).toBeLessThanOrEqual(2)
    }
    expect(windLoad({ span: 0.5, chord: 0.5, windSpeed: 5 }).cautions.map((c) => c.code)).toContain("drag-spread")
  })

  it("a panel hung down mirrors one held up about the height of its hinge", () => {
    for (const raise of [0.1, 0.7, 1.2]) {
      const [up, down] = [raise, -raise].map((r) => windLoad({ span: 0.9, chord: 0.5, windSpeed: 6, swingSpeed: 1, elevation: r })) as [
        ReturnType<typeof windLoad>,
        ReturnType<typeof windLoad>,
      ]
      expect(up.force).toEqual(down.force)
      expect(up.forceHeight + down.forceHeight).toBeCloseTo(2 * 1.35, 12)
      expect(up.groundMoment + down.groundMoment).toBeCloseTo(2 * 1.35 * up.totalForce, 9)
      expect(up.groundMoment).toBeGreaterThan(down.groundMoment)
    }
  })

  it("is the same whichever side of the panel is longer", () => {
    expect(windLoad({ span: 0.3, chord: 2.4, windSpeed: 8 }).drag.high).toBe(windLoad({ span: 2.4, chord: 0.3, windSpeed: 8 }).drag.high)
  })

  it("warns of wind that is dangerous to people", () => {
    const codes = (wind: number, gustFactor = 1.66) =>
      windLoad({ span: 0.9, chord: 0.5, windSpeed: wind, gustFactor }).cautions.map((c) => c.code)
    expect(codes(4)).not.toContain("uncomfortable-wind")
    expect(codes(5)).toContain("uncomfortable-wind")
    expect(codes(12.1)).toContain("dangerous-gust")
    expect(codes(12.1, 1.2)).toContain("low-gust-factor")
    expect(windLoad({ span: 0.9, chord: 0.5, windSpeed: 3, dragCoefficient: 1.1 }).cautions.map((c) => c.code)).toContain(
      "drag-below-published",
    )
    expect(codes(0)).toContain("not-a-clearance")
  })

  it("refuses a panel that reaches below the ground", () => {
    expect(() => windLoad({ span: 1, chord: 0.5, windSpeed: 3, hingeHeight: 0.5, elevation: "-60 deg" })).toThrow(/below the ground/)
  })
})

interface Draw {
  bodyMass: number
  rigMass: number
  dragArea: number
  forceHeight: number
  windSpeed: number
  windFrom: "front" | "behind" | "side"
}
const draws: fc.Arbitrary<Draw> = fc.record({
  bodyMass: between(20, 250),
  rigMass: between(0, 100),
  dragArea: between(0.01, 50),
  forceHeight: between(0.1, 10),
  windSpeed: between(0, 40),
  windFrom: fc.constantFrom("front", "behind", "side"),
})

/**
 * Free-body route: the ground's push N at the point p (from the weight's line, towards the lee side) must balance weight and
 * the wind on the rig. Both equations are solved for p, which must stay within the edge.
 */
function pressPoint(i: Draw, speed: number): number {
  const push = (i.bodyMass + i.rigMass) * 9.80665
  const force = 0.5 * 1.225 * i.dragArea * speed ** 2
  return (force * i.forceHeight) / push
}

/** Kinetic pressure against that of the 15 m/s gust published as the limit of a person alone. */
const bodyPart = (speed: number) => speed ** 2 / 225

describe("overturning", () => {
  it("agrees with the free body: at tipWind the rig's push and the body's own limit use up what there is", () => {
    let worst = 0
    let open = 0
    fc.assert(
      fc.property(draws, between(0.4, 0.9), between(1, 2.5), (i, usableShare, safetyFactor) => {
        const given = { ...i, usableShare, safetyFactor }
        const tip = overturning(given)
        const u = 1.66 * i.windSpeed + 1.4
        const now = pressPoint(i, u)
        const off = (a: number, b: number) => Math.abs(a / b - 1)
        worst = Math.max(
          worst,
          off(now / tip.usableEdgeDistance, tip.rigUtilisation),
          off(now / tip.edgeDistance, tip.rigUtilisationRigid),
          off(tip.usableEdgeDistance, usableShare * tip.edgeDistance),
        )
        worst = Math.max(
          worst,
          off(bodyPart(u), tip.bodyUtilisation),
          off(bodyPart(u) + (safetyFactor * now) / tip.usableEdgeDistance, tip.utilisation),
        )
        worst = Math.max(worst, off((1.66 * tip.bodyWindSpeed + 1.4) / 15, 1))
        if (tip.tipWindSpeedRigid) worst = Math.max(worst, off(pressPoint(i, 1.66 * tip.tipWindSpeedRigid + 1.4), tip.edgeDistance))
        if (tip.tipWindSpeed > 0) {
          open++
          const at = 1.66 * tip.tipWindSpeed + 1.4
          worst = Math.max(worst, Math.abs(bodyPart(at) + (safetyFactor * pressPoint(i, at)) / tip.usableEdgeDistance - 1))
        } else expect(bodyPart(1.4) + (safetyFactor * pressPoint(i, 1.4)) / tip.usableEdgeDistance).toBeGreaterThanOrEqual(1 - 1e-9)
        // the published share and factor are held against the wind as well, whatever is given
        const published = overturning(i)
        expect(published.tipWindSpeed).toBe(published.publishedTipWindSpeed)
        expect(tip.publishedTipWindSpeed).toBe(published.tipWindSpeed)
        expect(tip.foldWindSpeed).toBe(Math.min(tip.tipWindSpeed, published.tipWindSpeed, 10))
        // and standing on edgeNeeded holds this very wind
        const needed = tip.requiredEdgeDistance
        expect(needed === null).toBe(tip.bodyUtilisation >= 1)
        if (needed !== null && needed >= 1e-5 && needed <= 2)
          worst = Math.max(worst, Math.abs(overturning({ ...given, edgeDistance: needed }).utilisation - 1))
      }),
      { numRuns: 150 },
    )
    expect(open).toBeGreaterThan(20)
    expect(worst).toBeLessThan(1e-9)
  })

  it("a person without a rig is judged by the published limits alone, not by the stance", () => {
    const bare = { bodyMass: 70, rigMass: 0, dragArea: 0, forceHeight: 0, windSpeed: 5 } as const
    const tip = overturning(bare)
    expect([tip.windMoment, tip.rigUtilisation, tip.tipWindSpeedRigid]).toEqual([0, 0, null])
    // a 3 s gust of 15 m/s, of which walking takes 1.4
    expect(tip.tipWindSpeed).toBeCloseTo((15 - 1.4) / 1.66, 12)
    expect(tip.fold).toBe(false)
    expect(overturning({ ...bare, walkingSpeed: 0, gustFactor: 1, windSpeed: 9.9 }).fold).toBe(false)
    expect(overturning({ ...bare, walkingSpeed: 0, gustFactor: 1, windSpeed: 10 }).fold).toBe(true)
    // the body's own drag is told beside it, and decides nothing
    expect(tip.bodyMoment).toBeCloseTo(0.5 * 1.225 * 0.84 * 0.56 * 1.7 * (1.66 * 5 + 1.4) ** 2, 9)
    expect(overturning({ ...bare, bodyDragArea: 2 }).foldWindSpeed).toBe(tip.foldWindSpeed)
  })

  it("wind from behind mirrors wind from the front", () => {
    fc.assert(
      fc.property(draws, between(0.1, 0.9), between(-0.05, 0.05), (i, heelShare, weightOffset) => {
        const stance = { footLength: 0.26, stagger: 0.3, heelShare, weightOffset }
        const mirrored = { ...stance, heelShare: 1 - heelShare, weightOffset: -weightOffset }
        const front = overturning.attempt({ ...i, ...stance, windFrom: "front" })
        const behind = overturning.attempt({ ...i, ...mirrored, windFrom: "behind" })
        expect(front.ok).toBe(behind.ok)
        if (!front.ok || !behind.ok) return
        expect(behind.value.edgeDistance).toBeCloseTo(front.value.edgeDistance, 12)
        expect(behind.value.foldWindSpeed).toBeCloseTo(front.value.foldWindSpeed, 9)
      }),
      { numRuns: 100 },
    )
  })

  it("law: more wind, more gust, more panel or a higher force never make it safer; more stance never less safe", () => {
    fc.assert(
      fc.property(draws, between(0, 5), (i, more) => {
        const now = overturning(i)
        const worse = [
          { ...i, windSpeed: Math.min(40, i.windSpeed + more) },
          { ...i, gustFactor: Math.min(3, 1.66 + more) },
          { ...i, dragArea: Math.min(50, i.dragArea + more) },
          { ...i, forceHeight: Math.min(10, i.forceHeight + more) },
          { ...i, walkingSpeed: 1.4 + more },
        ]
        for (const one of worse) {
          const next = overturning(one)
          expect(next.rigUtilisation).toBeGreaterThanOrEqual(now.rigUtilisation)
          expect(next.foldWindSpeed).toBeLessThanOrEqual(now.foldWindSpeed)
          expect(Number(next.fold)).toBeGreaterThanOrEqual(Number(now.fold))
        }
        const wider = overturning({ ...i, stagger: more / 5, stanceWidth: 0.3 + more / 5 })
        expect(wider.foldWindSpeed).toBeGreaterThanOrEqual(now.foldWindSpeed)
        expect(wider.rigUtilisation).toBeLessThanOrEqual(now.rigUtilisation)
      }),
      { numRuns: 200 },
    )
  })

  it("takes the safe side of the spread", () => {
    fc.assert(
      fc.property(draws, (i) => {
        const tip = overturning(i)
        expect(tip.foldWindSpeed).toBeLessThanOrEqual(tip.tipWindSpeedRigid as number)
        expect(tip.foldWindSpeed).toBeLessThanOrEqual(10)
        if (!tip.fold) expect(tip.utilisation).toBeLessThanOrEqual(1 + 1e-9)
      }),
      { numRuns: 200 },
    )
  })

  it("takes windLoad's drag area and force height", () => {
    const wings = windLoad({ span: 0.9, chord: 0.5, windSpeed: 6 })
    const tip = overturning({
      bodyMass: 62,
      rigMass: 8,
      dragArea: wings.dragArea,
      forceHeight: wings.forceHeight,
      windSpeed: 6,
    })
    expect(tip.windMoment).toBeCloseTo(wings.groundMoment, 9)
  })

  it("says so where walking alone is too much, and never reads as permission", () => {
    const held = overturning({ bodyMass: 40, rigMass: 10, dragArea: 20, forceHeight: 3, windSpeed: 0, walkingSpeed: 3 })
    expect(held.tipWindSpeed).toBe(0)
    expect(held.fold).toBe(true)
    expect(held.cautions.map((c) => c.code)).toEqual(expect.arrayContaining(["never-open", "fold-now", "not-a-clearance"]))
    expect(overturning(overturning.example).cautions.map((c) => c.code)).toContain("stance")
    const bold = overturning({ ...overturning.example, usableShare: 0.9, safetyFactor: 1 }).cautions.map((c) => c.code)
    expect(bold).toEqual(expect.arrayContaining(["usable-share", "safety-factor"]))
    expect(overturning({ ...overturning.example, rigMass: 18 }).cautions.map((c) => c.code)).toContain("loaded-sway")
  })

  it("measures the edge by where the wind comes from: heels, toes, or half the stance to the side", () => {
    const stance = { footLength: 0.25, stagger: 0.15, stanceWidth: 0.44, heelShare: 0.4, weightOffset: 0.02 }
    const edge = (from: "front" | "behind" | "side") => overturning({ ...overturning.example, ...stance, windFrom: from }).edgeDistance
    expect(edge("front")).toBeCloseTo(0.4 * 0.4 + 0.02, 12)
    expect(edge("behind")).toBeCloseTo(0.6 * 0.4 - 0.02, 12)
    expect(edge("front") + edge("behind")).toBeCloseTo(0.25 + 0.15, 12)
    expect(edge("side")).toBeCloseTo(0.22, 12)
  })

  it("refuses weight outside the feet", () => {
    expect(() => overturning({ ...overturning.example, weightOffset: -0.2 })).toThrow(/outside the feet/)
  })
})
