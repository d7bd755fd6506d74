import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import {
  type BendTemplateInput,
  bendTemplate,
  bendTemplatePages,
  bendTemplateSvg,
  type TubeBendInput,
  tubeBend,
} from "../../src/thermoform/index.js"

interface Xy {
  readonly x: number
  readonly y: number
}
const apart = (a: Xy, b: Xy) => Math.hypot(a.x - b.x, a.y - b.y)
const lengthOf = (points: readonly Xy[]) => points.slice(1).reduce((sum, p, i) => sum + apart(p, points[i] as Xy), 0)
/** Radius of the circle through three points. */
function circumradius(a: Xy, b: Xy, c: Xy): number {
  const cross = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
  return (apart(a, b) * apart(b, c) * apart(c, a)) / (2 * Math.abs(cross))
}

/** Distance of a point from the chord between two others. */
function offChord(p: Xy, a: Xy, b: Xy): number {
  const share = Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / apart(a, b) ** 2))
  return apart(p, { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) })
}

const tube: TubeBendInput & { outsideDiameter: number; wall: number; radius: number; angle: number } = {
  outsideDiameter: 0.0267,
  wall: 0.0029,
  radius: 0.25,
  angle: 1.1,
  support: "filled",
}

describe("tubeBend", () => {
  it("strains, thins and lengthens as the bent tube's own geometry says", () => {
    for (const radius of [0.1, 0.25, 0.8, 5])
      for (const angle of [0.1, 1, 2.5]) {
        const out = tubeBend({ ...tube, radius, angle })
        const outer = angle * (radius + tube.outsideDiameter / 2)
        expect(outer / (angle * radius) - 1).toBeCloseTo(out.fibreStrain, 12)
        // volume of a strip of wall is kept: wall times its new length is wall times the old
        expect(out.outerWall * outer).toBeCloseTo(tube.wall * angle * radius, 15)
        expect(out.innerWall * angle * (radius - tube.outsideDiameter / 2)).toBeCloseTo(tube.wall * angle * radius, 15)
        expect(1 - out.outerWall / tube.wall).toBeCloseTo(out.thinning, 12)
      }
  })

  it("calls a radius wide enough from the least one that applies on, and none where no maker bends cold", () => {
    const { outsideDiameter } = tube
    const enough = (change: object) => tubeBend({ ...tube, ...change }).wideEnough
    // filled: five diameters; cold PVC: 300 diameters, from a strain of 1/600
    expect([enough({ radius: 4.999 * outsideDiameter }), enough({ radius: 5.001 * outsideDiameter })]).toEqual([false, true])
    expect([enough({ radius: 299 * outsideDiameter, hot: false }), enough({ radius: 301 * outsideDiameter, hot: false })]).toEqual([
      false,
      true,
    ])
    expect(enough({ radius: 50, hot: false, material: "abs" })).toBe(false)
    const { minRadiusEmpty } = tubeBend({ ...tube, support: "empty" })
    expect([0.999, 1.001].map((k) => enough({ support: "empty", radius: k * minRadiusEmpty }))).toEqual([false, true])
  })

  it("flattens and kinks as the energy of a flattened thin tube says (least energy found by search)", () => {
    // energy per length of a tube bent to curvature c and flattened by z, divided by E·π·r³·t/2 (Brazier, 1927)
    const { outsideDiameter: d, wall: t } = tube
    const r = (d - t) / 2
    const energy = (c: number, z: number) => c * c * (1 - 1.5 * z) + (0.75 * t * t * z * z) / (r ** 4 * (1 - 0.16))
    const flattening = (c: number) => {
      let [low, high] = [0, 2]
      for (let i = 0; i < 200; i++) {
        const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
        if (energy(c, a) < energy(c, b)) high = b
        else low = a
      }
      return (low + high) / 2
    }
    for (const radius of [0.2, 0.4, 1]) {
      const { ovality } = tubeBend({ ...tube, radius, support: "empty" })
      // Dmax − Dmin over the round one: twice the flattening of each diameter
      expect((2 * flattening(1 / radius)) / (ovality as number)).toBeCloseTo(1, 6)
    }
    const moment = (c: number) => c * (1 - 1.5 * flattening(c))
    let [best, most] = [0, 0]
    for (let c = 2; c < 40; c += 0.005)
      if (moment(c) > most) {
        most = moment(c)
        best = c
      }
    expect(best * tubeBend(tube).kinkRadius).toBeCloseTo(1, 2)
  })

  it("cuts so that both legs come out: the bent centreline walked in the plane", () => {
    for (const angle of [0.3, 1, Math.PI / 2, 2.4]) {
      const legs = { legA: 1.5, legB: 2 }
      const out = tubeBend({ ...tube, angle, ...legs })
      expect((out.straightA as number) + out.developedLength + (out.straightB as number)).toBeCloseTo(out.cutLength as number, 12)
      // walk along leg A, round the bend, and along leg B; the backs of the legs meet at a corner legA from the first end
      const h = tube.outsideDiameter / 2
      const a = out.straightA as number
      const end = {
        x: a + tube.radius * Math.sin(angle) + (out.straightB as number) * Math.cos(angle),
        y: tube.radius * (1 - Math.cos(angle)) + (out.straightB as number) * Math.sin(angle),
      }
      // back of leg A: y = −h; back of leg B: through end + h·(sin, −cos), along (cos, sin)
      const back = { x: end.x + h * Math.sin(angle), y: end.y - h * Math.cos(angle) }
      const step = (-h - back.y) / Math.sin(angle)
      const corner = back.x + step * Math.cos(angle)
      expect(corner).toBeCloseTo(legs.legA, 9)
      expect(-step).toBeCloseTo(legs.legB, 9)
      expect((out.setback as number) * 2 - out.developedLength).toBeCloseTo(out.gain as number, 12)
    }
  })

  it("measures legs to any corner, to the back of the bend and to where it begins: the outline of the bent tube sampled", () => {
    const h = tube.outsideDiameter / 2
    for (const angle of [0.3, 1.2, Math.PI / 2, 2.4, 3, Math.PI, 4, 6]) {
      const begins = tubeBend({ ...tube, angle, legMeasure: "straight", legA: 1.5, legB: 2 })
      expect([begins.straightA, begins.straightB]).toEqual([1.5, 2])
      expect(begins.cutLength).toBeCloseTo(3.5 + angle * tube.radius, 12)
      expect(begins.legGain).toBeCloseTo(-angle * tube.radius, 12)
      // furthest that the outline of the bend reaches along leg A from the tangent point, and where it is widest
      const outline = Array.from({ length: 20001 }, (_, i) => (tube.radius + h) * Math.sin((angle * i) / 20000))
      if (angle < Math.PI / 2) expect(begins.takeUp).toBeNull()
      else {
        expect(begins.takeUp).toBeCloseTo(Math.max(...outline), 7)
        const back = tubeBend({ ...tube, angle, legMeasure: "bend", legA: 1.5, legB: 2 })
        expect(back.straightA).toBeCloseTo(1.5 - (begins.takeUp as number), 12)
        expect(back.legGain).toBeCloseTo(3.5 - (back.cutLength as number), 12)
      }
      if (angle >= (175 / 180) * Math.PI) {
        expect([begins.setback, begins.gain]).toEqual([null, null])
        continue
      }
      for (const [legMeasure, side] of [
        ["backs", 1],
        ["centrelines", 0],
        ["insides", -1],
      ] as const) {
        const { straightA } = tubeBend({ ...tube, angle, legMeasure, legA: 10, legB: 10 })
        // lines beside both legs, on the outer, middle or inner side, are made to meet
        const [px, py] = [
          tube.radius * Math.sin(angle) + side * h * Math.sin(angle),
          tube.radius * (1 - Math.cos(angle)) - side * h * Math.cos(angle),
        ]
        const corner = px + ((-side * h - py) / Math.sin(angle)) * Math.cos(angle)
        expect((straightA as number) + corner).toBeCloseTo(10, 9)
      }
    }
  })

  it("warns where legs bent past 180° would pass through each other: distances of points along both", () => {
    let [meet, clear] = [0, 0]
    for (let deg = 181; deg < 360; deg += 11)
      for (const [a, b] of [
        [0.05, 0.05],
        [0.2, 0.6],
        [0.9, 0.3],
        [1.5, 1.5],
      ] as const) {
        const angle = (deg * Math.PI) / 180
        const out = tubeBend({ ...tube, angle, legMeasure: "straight", legA: a, legB: b })
        let least = Number.POSITIVE_INFINITY
        for (let i = 0; i <= 160; i++)
          for (let j = 0; j <= 160; j++) {
            const [s, t] = [(a * i) / 160, (b * j) / 160]
            const [x, y] = [tube.radius * Math.sin(angle) + t * Math.cos(angle), tube.radius * (1 - Math.cos(angle)) + t * Math.sin(angle)]
            least = Math.min(least, Math.hypot(x + s, y))
          }
        // the grid's own coarseness
        if (Math.abs(least - tube.outsideDiameter) < 0.009) continue
        const shown = out.cautions.some((c) => c.code === "legs-meet")
        expect(shown, `${deg}° ${a} ${b}: ${least}`).toBe(least < tube.outsideDiameter)
        if (shown) meet++
        else clear++
      }
    expect(meet).toBeGreaterThan(10)
    expect(clear).toBeGreaterThan(10)
  })

  it("strains less the wider the bend, and springs back to the asked angle", () => {
    let last = Number.POSITIVE_INFINITY
    for (let radius = 0.1; radius < 3; radius *= 1.3) {
      const out = tubeBend({ ...tube, radius, springback: 0.07 })
      expect(out.fibreStrain).toBeLessThan(last)
      last = out.fibreStrain
      expect(out.jigAngle * (1 - 0.07)).toBeCloseTo(tube.angle, 12)
      expect(out.jigAngle * out.jigRadius).toBeCloseTo(out.developedLength, 12)
    }
  })

  it("refuses what folds, kinks or has no leg left, and its nearest value works", () => {
    for (const [change, code] of [
      [{ radius: 0.01 }, "too-tight"],
      [{ radius: 0.06, support: "empty" }, "kinks"],
      [{ legA: 0.05, legB: 1 }, "does-not-fit"],
    ] as const) {
      const outcome = tubeBend.attempt({ ...tube, ...change })
      if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
      expect(outcome.error.noSolution).toBe(code)
      expect(outcome.error.shortBy).toBeGreaterThan(0)
      expect(tubeBend.attempt({ ...tube, ...change, ...outcome.error.nearest }).ok).toBe(true)
    }
  })

  it("offers only what was tried: every value named works alone, over bends that are refused in every way", () => {
    let [refused, offered] = [0, 0]
    for (const support of ["empty", "filled"] as const)
      for (const outsideDiameter of [0.01, 0.0267, 0.06, 0.3])
        for (const wall of [0.0005, 0.003, 0.02])
          for (const radius of [0.004, 0.02, 0.09, 0.4, 3])
            for (const angle of [0.3, 1.5, 2.9])
              for (const legs of [{}, { legA: 0.05, legB: 1 }, { legA: 1, legB: 0.05 }, { legA: 0.2, legB: 0.2 }]) {
                const input = { outsideDiameter, wall, radius, angle, support, ...legs }
                const outcome = tubeBend.attempt(input)
                if (outcome.ok || !(outcome.error instanceof NoSolutionError)) continue
                refused++
                expect(outcome.error.shortBy).toBeGreaterThan(0)
                const nearest = Object.entries(outcome.error.nearest)
                if (nearest.length) offered++
                else expect(legs, `${JSON.stringify(input)}: ${outcome.error.message}`).not.toEqual({})
                for (const [key, value] of nearest) expect(tubeBend.attempt({ ...input, [key]: value }).ok, `${key} ${value}`).toBe(true)
              }
    expect(refused).toBeGreaterThan(300)
    expect(offered / refused).toBeGreaterThan(0.6)
  })

  it("asks for support past 30°, warns of cold bends and of hot sand", () => {
    const codes = (change: Partial<TubeBendInput>) => tubeBend({ ...tube, ...change }).cautions.map((c) => c.code)
    expect(codes({ support: "empty", angle: "31 deg" })).toContain("needs-support")
    expect(codes({ support: "empty", angle: "29 deg" })).not.toContain("needs-support")
    expect(codes({ hot: false })).toContain("cold-bend")
    expect(codes({})).toEqual(expect.arrayContaining(["hot-sand", "hydrogen-chloride"]))
  })
})

const arc = { shape: "arc", outsideDiameter: 0.0267, radius: 0.25, angle: 1.2, springback: 0.04, straightRun: 0.08 } as const
/** A parabola-like rib through points, in metres. */
const rib: BendTemplateInput & { points: { x: number; y: number }[]; outsideDiameter: number } = {
  shape: "curve",
  outsideDiameter: 0.02,
  points: Array.from({ length: 9 }, (_, i) => ({ x: i * 0.1, y: 0.25 * Math.sin(i * 0.35) })),
  side: "right",
}

describe("bendTemplate", () => {
  it("lays an arc's edge on the circle of the jig, to the error it promises", () => {
    const out = bendTemplate(arc)
    const bend = out.edge.slice(1, -1)
    const radius = 0.25 * 0.96 - 0.0267 / 2
    expect(out.minEdgeRadius).toBeCloseTo(radius, 12)
    for (let i = 2; i < bend.length; i++) expect(circumradius(bend[i - 2] as Xy, bend[i - 1] as Xy, bend[i] as Xy)).toBeCloseTo(radius, 9)
    const widest = Math.max(...bend.slice(1).map((p, i) => apart(p, bend[i] as Xy)))
    // sagitta of the longest chord
    expect(widest ** 2 / (8 * radius)).toBeLessThan(5e-5)
    // heading of the run in and the run out differ by the jig's turn
    const heading = (a: Xy, b: Xy) => Math.atan2(b.y - a.y, b.x - a.x)
    const n = out.edge.length
    const turn = heading(out.edge[n - 2] as Xy, out.edge[n - 1] as Xy) - heading(out.edge[0] as Xy, out.edge[1] as Xy)
    expect(turn).toBeCloseTo(1.2 / 0.96, 9)
    expect(out.chord).toBeCloseTo(apart(out.edge[0] as Xy, out.edge[n - 1] as Xy), 12)
  })

  it("keeps tube length and the tube's half width beside the centreline", () => {
    for (const input of [arc, rib]) {
      const out = bendTemplate(input)
      const straight = 2 * (input === arc ? 0.08 : 0.06)
      // chords are shorter than their arcs by less than 1 in 10⁴ at these steps
      expect(lengthOf(out.centreline) / (out.length + straight)).toBeGreaterThan(0.9998)
      expect(lengthOf(out.centreline)).toBeLessThanOrEqual(out.length + straight + 1e-12)
      out.edge.forEach((p, i) => {
        expect(apart(p, out.centreline[i] as Xy)).toBeCloseTo((input.outsideDiameter as number) / 2, 12)
      })
    }
  })

  it("passes a free curve through its points when nothing springs back", () => {
    const out = bendTemplate({ ...rib, springback: 0, straightRun: 0 })
    const first = out.centreline[0] as Xy
    const start = rib.points[0] as Xy
    for (const p of rib.points) {
      const asked = { x: p.x - start.x + first.x, y: p.y - start.y + first.y }
      // to the chords between stations; a chord lies off its arc by a sagitta, step² / 8 radii, and arcs stand in for steps whose
      // curvature changes, by 2 / radius within 0.1 m at most: they drift by step² / 12 of that a metre
      const steps = out.centreline.slice(1).map((c, i) => [out.centreline[i] as Xy, c] as const)
      const longest = Math.max(...steps.map(([c, e]) => apart(c, e)))
      expect(Math.min(...steps.map(([c, e]) => offChord(asked, c, e)))).toBeLessThan(
        (longest ** 2 / out.minRadius) * (1 / 8 + (out.length * 2) / 0.1 / 12),
      )
    }
  })

  it("springs back to the asked curve: what the jig's chords turn, times 1 − q, is what those of the curve turn", () => {
    const [asked, jig] = [
      bendTemplate({ ...rib, springback: 0, straightRun: 0 }),
      bendTemplate({ ...rib, springback: 0.1, straightRun: 0 }),
    ]
    const turned = ({ centreline: c }: typeof asked, i: number) => {
      const heading = (k: number) => Math.atan2((c[k + 1] as Xy).y - (c[k] as Xy).y, (c[k + 1] as Xy).x - (c[k] as Xy).x)
      return heading(i) - heading(0)
    }
    for (let i = 10; i < asked.centreline.length - 1; i += 10) expect(turned(jig, i) * 0.9, `chord ${i}`).toBeCloseTo(turned(asked, i), 9)
    expect(jig.length).toBeCloseTo(asked.length, 12)
  })

  /**
   * A cubic spline through points a turn θ apart on a circle: its second derivative at point k is off by e(k)·θ² of itself, where
   * ½e(k−1) + 2e(k) + ½e(k+1) = −¼ and nothing is off at the ends, whose second derivative is that of the circle.
   */
  const offFirst = (count: number): number => {
    // by shooting from the end, where the system is linear in the first unknown
    const last = (e1: number) => {
      let [before, here] = [0, e1]
      for (let k = 1; k < count - 1; k++) [before, here] = [here, 2 * (-0.25 - 2 * here) - before]
      return here
    }
    return last(0) / (last(0) - last(1))
  }

  it("bends on to its ends: points on a circle keep angle and radius to the error of a cubic spline, turning left and right", () => {
    expect(offFirst(3)).toBeCloseTo(-1 / 8, 12)
    // many points: twelfths, and the root of ½ + 2z + ½z² = 0 beside an end
    expect(offFirst(12)).toBeCloseTo(-(1 + 2 - Math.sqrt(3)) / 12, 6)
    for (const [radius, step, count] of [
      [0.4, 0.08, 16],
      [0.25, 0.2, 8],
      [0.3, 0.3, 4],
      [0.3, 0.5, 3],
    ] as const)
      for (const hand of [1, -1]) {
        const points = Array.from({ length: count }, (_, i) => ({
          x: radius * Math.sin(i * step),
          y: hand * radius * (1 - Math.cos(i * step)),
        }))
        const out = bendTemplate({ ...rib, points, side: hand > 0 ? "left" : "right", springback: 0, straightRun: 0 })
        const turn = step * (count - 1)
        const e = offFirst(count)
        // heading at an end: ∫(θ − t)·[t(θ − t)/2 + e·θ·t] dt/θ = (1/24 + e/6)·θ³ too far round; θ² of it is the next order
        const ahead = (1 / 24 + e / 6) * step ** 3
        expect(Math.abs(turn - hand * out.turn - 2 * ahead)).toBeLessThan(step ** 2 * 2 * ahead)
        // sharpest beside the ends; between points the curvature falls by ½θ² a step, and 480 stations may miss the peak by half of one
        const missed = (count - 1) / 480 / 4
        expect(Math.abs((out.minRadius / radius - 1) / step ** 2 - e)).toBeLessThan(missed + step ** 2 / 10)
        // off the circle by at most θ²/8 of the second derivative's error, ⅛ + ¼ of θ²
        expect(Math.abs(out.length / (radius * turn) - 1)).toBeLessThan((3 / 64) * step ** 4 * (1 + step ** 2))
        expect(out.minEdgeRadius).toBeCloseTo(out.minRadius - 0.01, 12)
        // ends of the edge: on their own circle, moved along it by the half width times the heading's error
        const chord = 2 * ((radius - 0.01) * Math.sin(turn / 2) + 0.01 * ahead * Math.cos(turn / 2))
        expect(Math.abs(out.chord - chord)).toBeLessThan(0.02 * ahead * step ** 2 + (3 / 64) * step ** 4 * radius * turn)
      }
  })

  it("is the mirror image of itself: a curve, its side and its turn change hands", () => {
    const mirrored = rib.points.map(({ x, y }) => ({ x, y: -y }))
    const [one, other] = [bendTemplate(rib), bendTemplate({ ...rib, points: mirrored, side: "left" })]
    expect(other.turn).toBeCloseTo(-one.turn, 12)
    expect(other.jigTurn).toBeCloseTo(-one.jigTurn, 12)
    for (const key of ["minRadius", "minJigRadius", "minEdgeRadius", "length", "chord", "width", "height"] as const)
      expect(other[key], key).toBeCloseTo(one[key], 12)
    const top = Math.max(...one.edge.map((p) => p.y), ...one.centreline.map((p) => p.y))
    one.edge.forEach((p, i) => {
      expect((other.edge[i] as Xy).x).toBeCloseTo(p.x, 12)
      expect((other.edge[i] as Xy).y).toBeCloseTo(top - p.y, 12)
    })
    // and run the other way
    const back = bendTemplate({ ...rib, points: [...rib.points].reverse(), side: "left" })
    expect(back.turn).toBeCloseTo(-one.turn, 9)
    expect(back.length).toBeCloseTo(one.length, 9)
  })

  it("goes round a quarter between straights as a cubic spline does: past the radius by its overshoot at a jump of curvature", () => {
    const turn = Math.PI / 12
    // straights in the arc's own chords, so that all steps are alike
    const step = 0.4 * Math.sin(turn / 2)
    const corner = Array.from({ length: 7 }, (_, i) => ({ x: 0.2 * Math.sin(i * turn), y: 0.2 * (1 - Math.cos(i * turn)) }))
    const points = [
      ...[4, 3, 2, 1].map((i) => ({ x: -i * step, y: 0 })),
      ...corner,
      ...[1, 2, 3, 4].map((i) => ({ x: 0.2, y: 0.2 + i * step })),
    ]
    for (const hand of [1, -1]) {
      const out = bendTemplate({ ...rib, points: points.map(({ x, y }) => ({ x, y: hand * y })), springback: 0, straightRun: 0 })
      // half the jump at the joint, dying away by z = √3 − 2 a step; what is left of it at the last step tilts the ends
      const z = 2 - Math.sqrt(3)
      expect(Math.abs(hand * out.turn - Math.PI / 2)).toBeLessThan((turn * z ** 3) / 6)
      // beside the joint the curvature is 1 + z/2 of the arc's, and the spline's own θ²/12 more
      expect(Math.abs(out.minRadius / (0.2 / (1 + z / 2 + turn ** 2 / 12)) - 1)).toBeLessThan(turn ** 2 / 10)
      // off the path by κ·step²/16 at most over two steps at each joint
      expect(Math.abs(out.length - 8 * step - 0.1 * Math.PI)).toBeLessThan((2 * 0.2 * turn ** 3) / 8)
    }
  })

  it("offers a thinner tube where a curve is tighter than the tube", () => {
    const points = Array.from({ length: 9 }, (_, i) => ({ x: 0.05 * Math.sin(i * 0.2), y: 0.05 * (1 - Math.cos(i * 0.2)) }))
    const [fits, folds] = [0.09, 0.1].map((outsideDiameter) =>
      bendTemplate.attempt({ ...rib, points, outsideDiameter: outsideDiameter, springback: 0.03 }),
    )
    expect(fits?.ok).toBe(true)
    if (!folds || folds.ok || !(folds.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(Object.keys(folds.error.nearest)).toEqual(["outsideDiameter"])
    expect(
      bendTemplate({ ...rib, points, springback: 0.03, outsideDiameter: folds.error.nearest.outsideDiameter as number }).minEdgeRadius,
    ).toBeGreaterThan(0)
  })

  it("refuses a curve tighter than the tube", () => {
    const outcome = bendTemplate.attempt({ ...arc, radius: 0.013 })
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(outcome.error.noSolution).toBe("too-tight")
    expect(bendTemplate.attempt({ ...arc, ...outcome.error.nearest }).ok).toBe(true)
  })

  it("draws at true scale: millimetres measured in the SVG are those of the edge", () => {
    for (const input of [arc, rib]) {
      const text = bendTemplateSvg(input, "rib <3>")
      const size = /viewBox="0 0 ([\d.]+) ([\d.]+)" width="([\d.]+)mm" height="([\d.]+)mm"/.exec(text)
      expect(size).not.toBeNull()
      const [, w, h, pw, ph] = (size as RegExpExecArray).map(Number) as [number, number, number, number, number]
      expect(pw).toBeCloseTo(w, 2)
      expect(ph).toBeCloseTo(h, 2)
      expect(text).toContain("rib &#60;3&#62;")
      const path = /<path d="([^"]+)"/.exec(text)?.[1] as string
      const points = path
        .slice(1)
        .split("L")
        .map((p) => p.split(" ").map(Number))
        .map(([x, y]) => ({ x: x as number, y: y as number }))
      const out = bendTemplate(input)
      expect(points).toHaveLength(out.edge.length)
      expect(apart(points[0] as Xy, points[points.length - 1] as Xy)).toBeCloseTo(out.chord * 1000, 2)
      expect(Math.max(...points.map((p) => p.x)) - Math.min(...points.map((p) => p.x))).toBeCloseTo(out.width * 1000, 2)
      for (const p of points) expect(p.x >= 0 && p.x <= w && p.y >= 0 && p.y <= h).toBe(true)
      // the scale bar
      expect(text).toMatch(/x1="12" y1="[\d.]+" x2="112"/)
    }
  })

  it("cuts the drawing into pages that fit together: every cross falls on itself, every point is on some page", () => {
    const whole = bendTemplateSvg(arc, "rib")
    const [, w, h] = (/viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(whole) as RegExpExecArray).map(Number) as [number, number, number]
    const pages = bendTemplatePages(arc, "rib", { width: 150, height: 120, overlap: 12 })
    const shifts = pages.map((p) => {
      expect(p).toContain('viewBox="0 0 150 120" width="150mm" height="120mm"')
      const [, x, y] = (/translate\((-?[\d.]+) (-?[\d.]+)\)/.exec(p) as RegExpExecArray).map(Number) as [number, number, number]
      return { x: -x, y: -y }
    })
    for (let x = 0; x <= w; x += 5)
      for (let y = 0; y <= h; y += 5) expect(shifts.some((s) => x >= s.x && x <= s.x + 150 && y >= s.y && y <= s.y + 120)).toBe(true)
    // neighbours share a strip of the overlap's width, and a page more would not be needed
    const xs = [...new Set(shifts.map((s) => s.x))].sort((a, b) => a - b)
    for (let i = 1; i < xs.length; i++) expect((xs[i] as number) - (xs[i - 1] as number)).toBe(138)
    expect(xs[xs.length - 1] as number).toBeLessThan(w)
    // each cross is drawn on at least two pages, wholly
    const crosses = [...(pages[0] as string).matchAll(/M([\d.]+) ([\d.]+)h6M/g)].map((m) => ({ x: Number(m[1]) + 3, y: Number(m[2]) }))
    expect(crosses.length).toBeGreaterThan(3)
    for (const c of crosses)
      expect(
        shifts.filter((s) => c.x - 3 >= s.x && c.x + 3 <= s.x + 150 && c.y - 3 >= s.y && c.y + 3 <= s.y + 120).length,
      ).toBeGreaterThanOrEqual(2)
    expect(() => bendTemplatePages(arc, "rib", { width: 20, overlap: 12 })).toThrow(RangeError)
    // pages of a stamp's size are refused by their number, not by running out of memory
    expect(() => bendTemplatePages(arc, "rib", { width: 1, height: 1, overlap: 0 })).toThrow(/pages of 1 × 1 mm; at most 400/)
    expect(() => bendTemplatePages({ ...arc, radius: 100, angle: 3 }, "rib")).toThrow(RangeError)
  })
})
