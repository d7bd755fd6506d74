import { describe, expect, it } from "vitest"
import { envelopeOf } from "../../src/linkage/hinge/place-actuator/envelope.js"
import { gravityMomentAt, type PlaceActuator, placeActuator, springAt } from "../../src/linkage/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { asDrawn, built, builtOut, extremes, forceAt, nearestPart, type Off } from "./placement-builds.js"
import { type Anchors, anchorsAt, branchesOf, type Problem } from "./placement-problems.js"
import { lehmer } from "./random.js"

const springs = [
  { fixedPivot: { x: "-15 mm", y: "140 mm" }, radius: "70 mm", stiffness: "300 N/m", freeLength: "75 mm", preload: "6 N" },
] as const
const part = {
  corners: [
    { x: -0.02, y: -0.15 },
    { x: 0.03, y: -0.15 },
    { x: 0.03, y: -0.12 },
    { x: -0.02, y: -0.12 },
  ],
}
const loose = {
  ...placeActuator.example,
  frontPoints: 0,
  maxBoxes: 20000,
  ratedForce: "2 kN",
  swing: "45 deg",
  lowAngle: { from: "-85 deg", to: "-40 deg" },
} as const
const crooked = { ...loose, pivotTolerance: "1 mm", lengthTolerance: "1 mm" } as const
const cases = {
  "a crooked bracket": crooked,
  "a crooked bracket above the hinge, raised by retracting": {
    ...crooked,
    raisedBy: "retracting",
    fixedPivotRegion: { left: "-100 mm", right: "20 mm", bottom: "50 mm", top: "280 mm" },
    movingPivotRegion: { left: "10 mm", right: "140 mm", bottom: "-30 mm", top: "60 mm" },
    lowAngle: { from: "-15 deg", to: "30 deg" },
  },
  "a spring that goes slack, gusts, steps and another load": {
    ...crooked,
    springs: [{ ...springs[0], freeLength: "120 mm" }],
    loadFactor: 1.4,
    gustForce: "5 N",
    gustRadius: "0.5 m",
    otherMasses: [{ mass: "1 kg", radius: "0.6 m", angle: "-5 deg" }],
    tiltEitherWay: "10 deg",
  },
  "tolerance, spring and a part in the way": { ...crooked, springs, keepOut: [part], actuatorWidth: "24 mm" },
} as const

interface Answered {
  readonly p: Problem
  readonly out: PlaceActuator
  readonly at: Anchors
}
const known = new Map<object, Answered>()
const answered = (input: object): Answered => {
  const found = known.get(input) ?? solved(input)
  known.set(input, found)
  return found
}
const solved = (input: object): Answered => {
  const p = placeActuator.read(input as typeof placeActuator.example)
  const out = placeActuator.si(p)
  if (isNoSolution(out)) throw new Error(out.message)
  return {
    p,
    out,
    at: { base: out.fixedPivot, pin: { x: out.movingPivotX, y: out.movingPivotY }, branch: out.raisedBy === "extending" ? 1 : -1 },
  }
}
const random = lehmer(77)
const anyOff = (): Off => {
  const real = () => random.real(-1, 1)
  return { distance: real(), radius: real(), baseTurn: real(), pinTurn: real(), retracted: real(), extended: real() }
}

describe.each(Object.entries(cases))("placeActuator: %s", (_, input) => {
  const { p, out, at } = answered(input)

  it("is certified, and every build keeps every limit within the worst force, judged by hingeActuator's own balance", () => {
    expect(out.certified).toBe(true)
    expect(out.gap).toBeLessThanOrEqual(0.01 + 1e-9)
    let worst = 0
    for (const off of [asDrawn, ...extremes, ...Array.from({ length: 24 }, anyOff)]) {
      const one = builtOut(p, at, off)
      if (one === null) throw new Error(`a limit is broken by ${JSON.stringify(off)}`)
      expect(one.swing).toBeGreaterThanOrEqual(out.worstBuild.swing - 1e-9)
      // leans in steps may pass over the worst one, never above it
      expect(one.force).toBeLessThanOrEqual(out.worstBuild.peakForce * (1 + 2e-5))
      worst = Math.max(worst, one.force)
    }
    // and the worst one is no worse than some build really is
    expect(worst).toBeGreaterThan(out.worstBuild.peakForce * 0.98)
    const drawn = builtOut(p, at, asDrawn)
    expect(drawn?.force).toBeLessThanOrEqual(out.peakForce * (1 + 1e-9))
    expect(drawn?.force).toBeGreaterThan(out.peakForce * 0.995)
  })

  it("is not beaten by a grid of placements with their worst corners, nor by random ones", () => {
    const worstOf = (one: Anchors): number => {
      let worst = 0
      for (const off of extremes) {
        const here = builtOut(p, one, off, 5)
        if (here === null) return Number.POSITIVE_INFINITY
        worst = Math.max(worst, here.force)
        if (worst > 3 * out.worstBuild.peakForce) return worst
      }
      const room =
        p.keepOut === null
          ? Number.POSITIVE_INFINITY
          : Math.min(nearestPart(p, one, asDrawn, 12), nearestPart(p, one, extremes[0] as Off, 12))
      return room < p.actuatorWidth / 2 ? Number.POSITIVE_INFINITY : worst
    }
    let compared = 0
    const near = ({ left, right, bottom, top }: Problem["fixedPivotRegion"], x: number, y: number) => ({
      x: Math.min(right, Math.max(left, x + random.real(-0.02, 0.02))),
      y: Math.min(top, Math.max(bottom, y + random.real(-0.02, 0.02))),
    })
    const shares = Array.from({ length: 4 ** 4 }, (_, i) => [0, 1, 2, 3].map((k) => (Math.floor(i / 4 ** k) % 4) / 3))
    const placements = [
      ...shares.flatMap((share) => branchesOf(p).map((branch) => anchorsAt(p, share as [number, number, number, number], branch))),
      ...Array.from(
        { length: 80 },
        (): Anchors => ({
          base: near(p.fixedPivotRegion, at.base.x, at.base.y),
          pin: near(p.movingPivotRegion, at.pin.x, at.pin.y),
          branch: at.branch,
        }),
      ),
    ]
    for (const one of placements) {
      const worst = worstOf(one)
      if (worst === Number.POSITIVE_INFINITY) continue
      compared++
      expect(worst).toBeGreaterThanOrEqual((out.forceBound as number) * (1 - 1e-3))
    }
    expect(compared).toBeGreaterThan(3)
  })
})

describe("placeActuator's worst build", () => {
  it("needs its force where it says so", () => {
    for (const input of Object.values(cases)) {
      const { p, out, at } = answered(input)
      const { worstBuild: w } = out
      const e = p.pivotTolerance
      expect(Math.abs(w.fixedPivotDistance - out.fixedPivotDistance)).toBeLessThanOrEqual(e * (1 + 1e-9))
      expect(Math.abs(w.movingPivotRadius - out.movingPivot.radius)).toBeLessThanOrEqual(e * (1 + 1e-9))
      expect(w.length).toBeGreaterThanOrEqual(p.retractedLength - p.lengthTolerance - 1e-12)
      expect(w.length).toBeLessThanOrEqual(p.retractedLength + p.stroke + p.lengthTolerance + 1e-12)
      // a triangle of those three sides, turned to the angle
      const turned = Math.acos(
        (w.fixedPivotDistance ** 2 + w.movingPivotRadius ** 2 - w.length ** 2) / (2 * w.fixedPivotDistance * w.movingPivotRadius),
      )
      const base = Math.atan2(at.base.y - p.hinge.y, at.base.x - p.hinge.x)
      const g = {
        ...built(p, at, asDrawn),
        fixedPivot: {
          x: p.hinge.x + w.fixedPivotDistance * Math.cos(base),
          y: p.hinge.y + w.fixedPivotDistance * Math.sin(base),
        },
        movingPivot: { radius: w.movingPivotRadius, angle: base + at.branch * turned - w.angle },
      }
      expect(forceAt(p, g, w.angle, 201) / w.peakForce).toBeCloseTo(1, 4)
    }
  })

  it("is what is drawn where nothing may be off, and costs more force the more may be", () => {
    const { out } = answered(loose)
    expect(out.worstBuild.peakForce).toBeCloseTo(out.peakForce, 9)
    expect(out.worstBuild.swing).toBeCloseTo(out.swing, 12)
    expect(out.worstBuild.minLever).toBeCloseTo(out.minLever, 12)
    expect(out.worstBuild.minTransmissionAngle).toBeCloseTo(out.minTransmissionAngle, 9)
    expect(out.worstBuild.deadPointMargin).toBe(out.deadPointMargin)
    let before = out.forceBound as number
    for (const e of [0.0005, 0.001, 0.002]) {
      const next = answered({ ...loose, pivotTolerance: e, lengthTolerance: e }).out
      expect(next.worstBuild.peakForce).toBeGreaterThan(before)
      before = next.forceBound as number
    }
  })

  it("swings most within the force, whatever the build", () => {
    const { p, out, at } = answered({ ...crooked, objective: "max-swing", ratedForce: "400 N", gapLimit: 0.05 })
    expect(out.worstBuild.peakForce).toBeLessThanOrEqual(400 * (1 + 1e-5))
    expect(out.swingBound as number).toBeLessThanOrEqual(out.worstBuild.swing * 1.0501)
    for (const off of extremes) expect(builtOut(p, at, off)?.swing).toBeGreaterThanOrEqual(out.worstBuild.swing - 1e-9)
    // the least swing of the corners is all but the one stated
    expect(Math.min(...extremes.map((off) => builtOut(p, at, off)?.swing ?? 0))).toBeLessThan(out.worstBuild.swing * 1.01)
  })

  it("keeps the rod clear of the part in every build, where the nearest placement without it does not", () => {
    const input = cases["tolerance, spring and a part in the way"]
    const { p, at } = answered(input)
    for (const off of [asDrawn, ...extremes.slice(0, 16)])
      expect(nearestPart(p, at, off, 20)).toBeGreaterThanOrEqual(p.actuatorWidth / 2 - 1e-6)
    const free = answered({ ...input, keepOut: null })
    const [rod, moved] = [nearestPart(p, free.at, asDrawn, 20), nearestPart(p, at, asDrawn, 20)]
    expect(rod).toBeLessThan(moved)
  })
})

describe("placeActuator's low end", () => {
  it("may be written in another turn, for either goal and either way round", () => {
    const input = { ...loose, ratedForce: "400 N", maxBoxes: 4000, lowAngle: { from: "-75 deg", to: "-60 deg" } } as const
    const turned = { from: "285 deg", to: "300 deg" } as const
    for (const objective of ["min-force", "max-swing"] as const) {
      const [one, other] = [answered({ ...input, objective }).out, answered({ ...input, objective, lowAngle: turned }).out]
      expect(one.certified && other.certified).toBe(true)
      for (const [out, whole] of [
        [one, 0],
        [other, 2 * Math.PI],
      ] as const) {
        expect(out.lowAngle - whole).toBeGreaterThanOrEqual((-75 * Math.PI) / 180 - 1e-9)
        expect(out.lowAngle - whole).toBeLessThanOrEqual((-60 * Math.PI) / 180 + 1e-9)
      }
      if (objective === "min-force") {
        expect(one.peakForce).toBeGreaterThanOrEqual((other.forceBound as number) * (1 - 1e-9))
        expect(other.peakForce).toBeGreaterThanOrEqual((one.forceBound as number) * (1 - 1e-9))
      } else {
        expect(one.swing).toBeLessThanOrEqual((other.swingBound as number) + 1e-9)
        expect(other.swing).toBeLessThanOrEqual((one.swingBound as number) + 1e-9)
      }
    }
  })
})

describe("the envelope of an arm's loads", () => {
  it("holds the moments of all loads over any range, and is reached", () => {
    // every combination of what the remainders switch comes up in some of these
    for (let n = 0; n < 112; n += 7) {
      const pullsOnly = random.sign() === 1
      const hinge = { x: random.real(-0.1, 0.1), y: random.real(-0.1, 0.1) }
      const spring = () => ({
        fixedPivot: { x: random.real(-0.2, 0.2), y: random.real(0.05, 0.3) },
        radius: random.real(0.02, 0.15),
        angle: random.real(-3, 3),
        stiffness: random.real(10, 900),
        freeLength: random.real(0.02, 0.3),
        preload: random.real(0, 8),
        pullsOnly,
      })
      const mass = () => ({ mass: random.real(0.1, 3), radius: random.real(0.1, 1), angle: random.real(-3, 3) })
      const loads = {
        hinge,
        massSets: n % 2 ? [[mass(), mass()], [mass()]] : [[mass()]],
        factors: n % 3 ? [1.4, 0.6] : [1],
        gustMoment: random.real(0, 3),
        springs: n % 4 ? [spring(), spring()] : [],
        frameTilt: random.real(-0.5, 0.5),
        tiltEitherWay: n % 5 ? random.real(0, 0.4) : 0,
      }
      const envelope = envelopeOf(loads)
      const brute = (angle: number) => {
        let worst = 0
        for (const masses of loads.massSets)
          for (const factor of loads.factors)
            for (const gust of [1, -1])
              for (let i = 0; i <= 16; i++) {
                const lean = loads.frameTilt + loads.tiltEitherWay * (i / 8 - 1)
                let moment = factor * gravityMomentAt(masses, angle, lean) + gust * loads.gustMoment
                for (const one of loads.springs) moment -= springAt(hinge, one, angle).moment
                worst = Math.max(worst, Math.abs(moment))
              }
        return worst
      }
      const top = envelope.most(0, 7)
      for (let k = 0; k < 12; k++) {
        const from = random.real(-7, 7)
        const to = from + ([1e-4, 0.003, 0.04, 0.3, 2, 7][k % 6] as number) * random.real(0.1, 1)
        const [least, most, reached] = [envelope.least(from, to), envelope.most(from, to), envelope.reached(from, to)]
        let [low, high] = [Number.POSITIVE_INFINITY, 0]
        for (let i = 0; i <= 30; i++) {
          const angle = from + ((to - from) * i) / 30
          const here = brute(angle)
          expect(envelope.at(angle)).toBeGreaterThanOrEqual(here * (1 - 1e-9))
          expect(envelope.at(angle)).toBeLessThanOrEqual(here + 1e-3 * top)
          const worst = envelope.worst(angle)
          expect(worst.size).toBeCloseTo(envelope.at(angle), 9)
          low = Math.min(low, envelope.at(angle))
          high = Math.max(high, envelope.at(angle))
        }
        expect(least).toBeLessThanOrEqual(low * (1 + 1e-9))
        expect(most).toBeGreaterThanOrEqual(high * (1 - 1e-9))
        expect(reached).toBeLessThanOrEqual(most * (1 + 1e-9))
        expect(reached).toBeGreaterThan(high * (1 - 1e-3) - 1e-3 * top)
        // samples this close together say how tight the limits are
        if (loads.springs.length === 0 && to - from < 0.3) {
          expect(least).toBeGreaterThan(low - 0.02 * top)
          expect(most).toBeLessThan(high + 1e-3 * top)
        }
      }
    }
  })
})
