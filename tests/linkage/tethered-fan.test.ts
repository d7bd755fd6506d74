import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { fanAngles, fanForces, standardGravity, tetheredFan } from "../../src/linkage/index.js"
import { between } from "./uniform.js"

/** Fans with even threads, shared and separate pivots, and a share of the driver's sweep. */
const fans = fc
  .record({
    vanes: fc.integer({ min: 2, max: 9 }),
    length: between(0.3, 0.9),
    rootWidth: between(0.01, 0.06),
    tipWidth: between(0.03, 0.2),
    mass: between(0.01, 0.3),
    centre: between(0.1, 0.3),
    pitch: fc.oneof(fc.constant(0), between(0, 0.02)),
    pitchAngle: between(-1.5, 0.5),
    attachRadius: between(0.08, 0.15),
    foldedAngle: between(-1.4, -0.8),
    foldedStep: between(0, 0.03),
    openAngle: between(0.3, 1.2),
    spanShare: between(0.4, 0.9),
    returnMoment: between(0, 0.1),
    frameTilt: between(-0.3, 0.3),
    share: between(0, 1),
  })
  .map(({ spanShare, share, ...fan }) => ({
    ...fan,
    span: spanShare * (fan.openAngle - fan.foldedAngle),
    driverAngle: fan.foldedAngle + share * (fan.openAngle - fan.foldedAngle),
  }))

interface Vec {
  readonly x: number
  readonly y: number
}
const along = (from: Vec, r: number, angle: number): Vec => ({ x: from.x + r * Math.cos(angle), y: from.y + r * Math.sin(angle) })
const apart = (a: Vec, b: Vec) => Math.hypot(a.x - b.x, a.y - b.y)
const pivot = (fan: { pitch: number; pitchAngle: number }, i: number) => along({ x: 0, y: 0 }, i * fan.pitch, fan.pitchAngle)

describe("tetheredFan against other routes", () => {
  it("each vane lies as low as its stop and its thread allow, found by walking up from the stop", () => {
    let worst = 0
    let taut = 0
    fc.assert(
      fc.property(fans, (fan) => {
        const outcome = tetheredFan.attempt(fan)
        if (!outcome.ok) return
        const { angles, threads } = outcome.value
        let leader = fan.driverAngle
        for (let i = 1; i < fan.vanes; i++) {
          const end = along(pivot(fan, i - 1), fan.attachRadius, leader)
          const reaches = (angle: number) => apart(end, along(pivot(fan, i), fan.attachRadius, angle)) <= (threads[i - 1] as number)
          const rest = fan.foldedAngle - i * fan.foldedStep
          let [low, high] = [rest, rest]
          if (!reaches(rest)) {
            taut++
            while (!reaches(high)) high += 1e-2
            low = high - 1e-2
            for (let k = 0; k < 60; k++) {
              const middle = (low + high) / 2
              if (reaches(middle)) high = middle
              else low = middle
            }
          }
          worst = Math.max(worst, Math.abs(high - (angles[i] as number)))
          leader = angles[i] as number
        }
      }),
      { numRuns: 60 },
    )
    expect(taut).toBeGreaterThan(40)
    expect(worst).toBeLessThan(1e-9)
  })

  it("opens evenly: all threads taut and one step between neighbours", () => {
    let worst = 0
    fc.assert(
      fc.property(fans, (fan) => {
        const outcome = tetheredFan.attempt({ ...fan, driverAngle: null })
        if (!outcome.ok) return
        outcome.value.angles.forEach((angle, i) => {
          worst = Math.max(worst, Math.abs(angle - (fan.openAngle - (i * fan.span) / (fan.vanes - 1))))
        })
      }),
      { numRuns: 60 },
    )
    expect(worst).toBeLessThan(1e-9)
  })

  it("shared pivot: a vane trails by twice the arc sine of thread over twice the radius", () => {
    const fan = tetheredFan({ ...tetheredFan.example, pitch: 0, driverAngle: null, threads: [0.02, 0.03, 0.01, 0.04, 0.025] })
    fan.threads.forEach((thread, i) => {
      expect((fan.angles[i] as number) - (fan.angles[i + 1] as number)).toBeCloseTo(2 * Math.asin(thread / 0.2), 12)
    })
  })

  it("driver moment is the derivative of the fan's energy (virtual work)", () => {
    let worst = 0
    let compared = 0
    fc.assert(
      fc.property(fans, (fan) => {
        const outcome = tetheredFan.attempt(fan)
        if (!outcome.ok) return
        const { threads, driverMoment } = outcome.value
        const energy = (driver: number) => {
          const pose = fanAngles(fan, threads, driver)
          if (!("angles" in pose)) return null
          const height = pose.angles.reduce((sum, angle) => sum + Math.sin(angle + fan.frameTilt), 0)
          const drawn = pose.angles.slice(1).reduce((sum, angle) => sum + angle, 0)
          return { value: standardGravity * fan.mass * fan.centre * height + fan.returnMoment * drawn, taut: pose.taut.join() }
        }
        const h = 1e-5
        const [a, b] = [energy(fan.driverAngle - h), energy(fan.driverAngle + h)]
        // a thread that comes taut between the two poses has no derivative there
        if (!a || !b || a.taut !== b.taut) return
        compared++
        const scale = fan.vanes * (standardGravity * fan.mass * fan.centre + fan.returnMoment) * Math.max(1, ...outcome.value.tensions)
        worst = Math.max(worst, Math.abs((b.value - a.value) / (2 * h) - driverMoment) / scale)
      }),
      { numRuns: 80 },
    )
    expect(compared).toBeGreaterThan(40)
    expect(worst).toBeLessThan(1e-6)
  })

  it("gaps are those of the corners' coordinates", () => {
    let worst = 0
    fc.assert(
      fc.property(fans, (fan) => {
        const outcome = tetheredFan.attempt(fan)
        if (!outcome.ok) return
        const { angles, tipGaps } = outcome.value
        tipGaps.forEach((gap, i) => {
          const [a, b] = [angles[i] as number, angles[i + 1] as number]
          const left = along(along(pivot(fan, i), fan.length, a), fan.tipWidth / 2, a - Math.PI / 2)
          const right = along(along(pivot(fan, i + 1), fan.length, b), fan.tipWidth / 2, b + Math.PI / 2)
          const normal = (a + b) / 2 + Math.PI / 2
          const met = (left.x - right.x) * Math.cos(normal) + (left.y - right.y) * Math.sin(normal)
          worst = Math.max(worst, Math.abs(met - gap))
        })
      }),
      { numRuns: 60 },
    )
    expect(worst).toBeLessThan(1e-12)
  })

  it("cover is the first number of vanes whose tips overlap enough", () => {
    const base = { ...tetheredFan.example, pitch: 0, foldedStep: 0, driverAngle: null, overlap: "5 mm" } as const
    const { vanes } = tetheredFan(base).cover
    if (vanes === null) throw new Error("no number of vanes covers")
    expect(tetheredFan({ ...base, vanes }).maxTipGap).toBeLessThanOrEqual(-0.005)
    expect(tetheredFan({ ...base, vanes: vanes - 1 }).maxTipGap).toBeGreaterThan(-0.005)
    // half the step at which the overlap is just reached, in closed form for a shared pivot
    const [length, width] = [0.6, 0.13]
    const most = 2 * (Math.atan(width / (2 * length)) - Math.asin(0.005 / Math.hypot(2 * length, width)))
    expect(vanes).toBe(1 + Math.ceil((80 * Math.PI) / 180 / most))
    expect(tetheredFan({ ...base, tipWidth: 0 }).cover.vanes).toBeNull()
    // the gap named is that of a fan built so, on a row of pivots as long
    const row = { ...base, pitch: "8 mm" } as const
    const { cover } = tetheredFan(row)
    const built = tetheredFan({
      ...row,
      vanes: cover.vanes as number,
      pitch: (0.008 * (tetheredFan.example.vanes - 1)) / ((cover.vanes as number) - 1),
    })
    expect(built.maxTipGap).toBeCloseTo(cover.tipGap as number, 12)
  })

  it("adds up mass and moment of the vanes", () => {
    const fan = tetheredFan({ ...tetheredFan.example, pitch: 0, frameTilt: 0, driverAngle: null })
    expect(fan.totalMass).toBeCloseTo(0.36, 12)
    const moment = fan.angles.reduce((sum, angle) => sum + standardGravity * 0.06 * 0.25 * Math.cos(angle), 0)
    expect(fan.fanMoment).toBeCloseTo(moment, 12)
  })
})

describe("tetheredFan refuses and warns", () => {
  it("a thread too short for its vane to follow, and by how much", () => {
    const outcome = tetheredFan.attempt({ ...tetheredFan.example, pitch: 0.02, threads: [0.01, 0.03, 0.03, 0.03, 0.03] })
    if (outcome.ok || !("noSolution" in outcome.error)) throw new Error("answered")
    expect(outcome.error.noSolution).toBe("thread-too-short")
    expect(outcome.error.shortBy).toBeGreaterThan(0)
    expect(outcome.error.at.vane).toBe(2)
  })

  it("a count of threads that does not fit, and a span that opens below the stop", () => {
    const bad = tetheredFan.attempt({ ...tetheredFan.example, threads: [0.03] })
    expect(!bad.ok && bad.error.message).toContain("threads")
    const wide = tetheredFan.attempt({ ...tetheredFan.example, span: 3 })
    expect(!wide.ok && wide.error.message).toContain("span")
  })

  it("warns of vanes that fall forward past upright", () => {
    const past = { ...tetheredFan.example, openAngle: "170 deg", span: "80 deg", returnMoment: 0, driverAngle: null } as const
    const fan = tetheredFan(past)
    expect(fan.staysTaut).toBe(false)
    expect(fan.cautions.map((c) => c.code)).toContain("vanes-fall-forward")
    expect(tetheredFan({ ...past, returnMoment: 1 }).staysTaut).toBe(true)
  })

  it("has a thread as long as both arms together slack", () => {
    const fan = { vanes: 2, pitch: 0, pitchAngle: 0, attachRadius: 0.1, foldedAngle: -1, foldedStep: 3.5 }
    expect(fanAngles(fan, [0.2], -0.5)).toEqual({ angles: [-0.5, -4.5], taut: [false] })
    expect(fanAngles(fan, [0.1999], -0.5)).toMatchObject({ taut: [true] })
  })

  it("names the shortest of uneven threads", () => {
    const out = tetheredFan({ ...tetheredFan.example, pitch: "3 mm", pitchAngle: "60 deg", span: "8 deg", driverAngle: null })
    const [shortest] = [...out.threads].sort((a, b) => a - b) as [number]
    expect(Math.max(...out.threads)).toBeGreaterThan(1.02 * shortest)
    expect(out.cautions.find((c) => c.code === "short-threads")?.values?.shortest).toBe(shortest)
  })

  it("has no tension on slack threads", () => {
    const pose = fanAngles({ vanes: 3, pitch: 0, pitchAngle: 0, attachRadius: 0.1, foldedAngle: -1, foldedStep: 0 }, [0.05, 0.05], -0.9)
    if (!("angles" in pose)) throw new Error("jams")
    expect(pose.taut).toEqual([false, false])
    expect(
      fanForces(
        { vanes: 3, pitch: 0, pitchAngle: 0, attachRadius: 0.1, foldedAngle: -1, foldedStep: 0 },
        pose,
        { mass: 1, centre: 1, returnMoment: 0 },
        0,
      ).tensions,
    ).toEqual([0, 0])
  })

  it("names the largest moment of the sweep, not the first or the last", () => {
    // a heavy vane swung from hanging through level to near upright needs most at level
    const out = tetheredFan({
      ...tetheredFan.example,
      foldedAngle: "-80 deg",
      openAngle: "80 deg",
      span: "20 deg",
      driverAngle: null,
      frameTilt: 0,
    })
    for (const pose of out.sweep) expect(Math.abs(pose.driverMoment)).toBeLessThanOrEqual(out.peakDriverMoment + 1e-12)
    expect(out.peakDriverMoment).toBeGreaterThan(1.05 * Math.abs(out.sweep.at(-1)?.driverMoment as number))
    expect(Math.abs(out.peakDriverAngle)).toBeLessThan(0.4)
  })
})
