import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { drawMotionProfile, type MotionProfile, type MotionProfileInput, motionProfile } from "../../src/drive/index.js"
import { readXml, type XmlElement } from "../drawing/xml.js"

const solved = (input: MotionProfileInput): MotionProfile => motionProfile.si(motionProfile.read(input)) as MotionProfile
const near = (a: number | null, b: number, relative = 1e-9) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(relative * Math.abs(b) + 1e-12)
/** Evenly spread, both ends included. */
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 15, numRuns: 60 }

const duration = fc
  .record({
    duration: between(0.3, 8),
    accelerationShare: between(0.05, 0.6),
    left: between(0.05, 1),
    jerkShare: fc.option(between(0.05, 1)),
  })
  .map(({ left, accelerationShare, ...rest }) => ({
    type: "duration" as const,
    ...rest,
    accelerationShare,
    decelerationShare: (1 - accelerationShare) * left,
  }))
const limits = fc.record({
  type: fc.constant("limits" as const),
  maxSpeed: between(0.2, 6),
  maxAcceleration: between(0.5, 30),
  jerkTime: fc.option(between(0.01, 0.6)),
})
const moves = fc.record({
  swing: between(0.05, 6),
  timing: fc.oneof(duration, limits),
  inertia: between(0.01, 2),
  loadTorque: between(-6, 6),
  frictionTorque: between(0, 2),
  restDuration: between(0, 5),
  holdsAtRest: fc.boolean(),
})

/** Acceleration of a ramp through its time: up, level and down, by its jerk alone. */
function acceleration(out: MotionProfile, timing: MotionProfileInput["timing"], t: number): number {
  const jerkTime = (time: number) => {
    if (timing.type === "duration") return ((timing.jerkShare as number | null) ?? 0) * (time / 2)
    const given = (timing.jerkTime as number | null) ?? 0
    return Math.min(given, time / 2)
  }
  const ramp = (s: number, time: number, peak: number) => {
    const rounded = jerkTime(time)
    return rounded === 0 ? peak : peak * Math.min(1, s / rounded, (time - s) / rounded)
  }
  if (t < out.accelerationTime) return ramp(t, out.accelerationTime, out.peakAcceleration)
  const s = t - out.accelerationTime - out.cruiseTime
  return s < 0 ? 0 : -ramp(s, out.decelerationTime, out.peakDeceleration)
}

/** The equations of motion stepped from rest, over pieces that end where a ramp does. */
function stepped(input: MotionProfileInput, load: number) {
  const out = solved(input)
  const { inertia, frictionTorque } = input as { inertia: number; frictionTorque: number }
  let [angle, speed, squares, work, fastest, strongest] = [0, 0, 0, 0, 0, 0]
  const ends = [0, out.accelerationTime, out.accelerationTime + out.cruiseTime, out.duration]
  for (let piece = 0; piece < 3; piece++) {
    const [from, to] = [ends[piece] as number, ends[piece + 1] as number]
    const n = 2000
    const h = (to - from) / n
    for (let k = 0; k < n; k++) {
      const a = acceleration(out, input.timing, from + (k + 0.5) * h)
      const torque = inertia * a + load + frictionTorque
      angle += speed * h + (a * h ** 2) / 2
      work += torque * (speed * h + (a * h ** 2) / 2)
      speed += a * h
      squares += torque ** 2 * h
      fastest = Math.max(fastest, speed)
      strongest = Math.max(strongest, Math.abs(torque))
    }
  }
  return { angle, speed, squares, work, fastest, strongest }
}

describe("motionProfile", () => {
  it("gets from rest to rest over the swing as stepped through time, with its torques, work and heat, out and back", () => {
    fc.assert(
      fc.property(moves, (input) => {
        const out = solved(input)
        let [squares, strongest] = [0, 0]
        for (const [way, load] of [
          [out.out, input.loadTorque],
          [out.back, -input.loadTorque],
        ] as const) {
          const s = stepped(input, load)
          near(s.angle, input.swing, 2e-5)
          expect(Math.abs(s.speed)).toBeLessThan(2e-5 * out.peakSpeed)
          near(s.fastest, out.peakSpeed, 2e-5)
          near(way.rmsTorque, Math.sqrt(s.squares / out.duration), 1e-4)
          expect(Math.abs(way.work - s.work)).toBeLessThan(2e-4 * (Math.abs(s.work) + out.peakEnergy))
          expect(Math.abs(way.peakTorque - s.strongest)).toBeLessThan(0.03 * s.strongest + 1e-9)
          // what goes in is what the load and friction take
          near(way.work, load * input.swing + out.frictionHeat)
          squares += s.squares
          strongest = Math.max(strongest, s.strongest)
        }
        const held = input.holdsAtRest ? Math.max(0, Math.abs(input.loadTorque) - input.frictionTorque) : 0
        near(out.rmsTorque, Math.sqrt((squares + 2 * input.restDuration * held ** 2) / (2 * (out.duration + input.restDuration))), 1e-4)
        expect(Math.abs(out.peakTorque - strongest)).toBeLessThan(0.03 * strongest + 1e-9)
        near(out.peakEnergy, (input.inertia * out.peakSpeed ** 2) / 2)
      }),
      seeded,
    )
  })

  it("keeps its limits, and no move within them is quicker", () => {
    let [short, tiny, steady] = [0, 0, 0]
    fc.assert(
      fc.property(between(0.01, 8), limits, (swing, timing) => {
        const out = solved({ swing, timing, inertia: 1 })
        const jerk = timing.jerkTime ? timing.maxAcceleration / timing.jerkTime : Number.POSITIVE_INFINITY
        expect(out.peakSpeed).toBeLessThanOrEqual(timing.maxSpeed * (1 + 1e-9))
        expect(out.peakAcceleration).toBeLessThanOrEqual(timing.maxAcceleration * (1 + 1e-9))
        if (out.peakJerk !== null) expect(out.peakJerk).toBeLessThanOrEqual(jerk * (1 + 1e-9))
        // bang-bang: full jerk, or none, at every instant but where speed or acceleration stand at their limits
        if (out.cruiseTime > 0) {
          steady++
          near(out.peakSpeed, timing.maxSpeed)
          expect(out.shortened).toBe(false)
        }
        if (out.shortened) {
          short++
          expect(out.peakSpeed).toBeLessThan(timing.maxSpeed)
          expect(out.cruiseTime).toBe(0)
        }
        if (out.peakJerk !== null) near(out.peakJerk, jerk)
        const rounded = timing.jerkTime ? Math.min(timing.jerkTime, out.accelerationTime / 2) : 0
        if (out.accelerationTime > 2 * rounded * (1 + 1e-9)) near(out.peakAcceleration, timing.maxAcceleration)
        else tiny++
        near(out.accelerationTime, out.decelerationTime)
      }),
      { ...seeded, numRuns: 200 },
    )
    expect(
      [short, tiny, steady].every((n) => n > 10),
      `${short} ${tiny} ${steady}`,
    ).toBe(true)
  })

  it("is the mirror image of itself: a load the other way changes out and back, ramps changed over turn the move round", () => {
    fc.assert(
      fc.property(moves, (input) => {
        const [out, turned] = [solved(input), solved({ ...input, loadTorque: -input.loadTorque })]
        expect(turned.out).toEqual(out.back)
        expect(turned.back).toEqual(out.out)
        expect(turned.rmsTorque).toBeCloseTo(out.rmsTorque, 10)
        const { timing } = input
        if (timing.type !== "duration") return
        const reversed = solved({
          ...input,
          timing: { ...timing, accelerationShare: timing.decelerationShare, decelerationShare: timing.accelerationShare },
        })
        near(reversed.peakAcceleration, out.peakDeceleration)
        near(reversed.rmsTorque, out.rmsTorque)
        near(reversed.peakSpeed, out.peakSpeed)
      }),
      seeded,
    )
  })

  it("draws torque out and back, and the speed, from the first to the last instant", () => {
    const si = motionProfile.read(motionProfile.example)
    const svg = drawMotionProfile(si)
    expect(svg).toContain("<svg")
    for (const text of ["out", "back", "speed (to scale)", "Torque through the move"]) expect(svg).toContain(text)
    expect(svg).not.toMatch(/NaN|Infinity/)
    const paths: string[] = []
    const walk = (e: XmlElement) => {
      if (e.name === "path") paths.push(e.attributes.get("d") as string)
      e.children.forEach(walk)
    }
    walk(readXml(svg))
    const lines = paths.map((d) => (d.match(/-?[\d.]+,-?[\d.]+|-?[\d.]+ -?[\d.]+/g) ?? []).map((p) => p.split(/[ ,]/).map(Number)))
    const curves = lines.filter((points) => points.length > 100)
    expect(curves).toHaveLength(3)
    // the speed starts and ends at the same height, highest in the middle; torque out lies above torque back
    const [out, back, speed] = curves as [number[][], number[][], number[][]]
    expect(speed[0]?.[1]).toBeCloseTo(speed.at(-1)?.[1] as number, 6)
    expect(speed[80]?.[1] as number).toBeLessThan(speed[0]?.[1] as number)
    out.forEach((point, k) => {
      expect(point[1] as number).toBeLessThan(back[k]?.[1] as number)
    })
  })
})
