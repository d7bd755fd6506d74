import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { drawEndStop, type EndStop, type EndStopInput, endStop } from "../../src/drive/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import { readXml } from "../drawing/xml.js"

const solved = (input: EndStopInput): EndStop => {
  const out = endStop.si(endStop.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const near = (a: number | null, b: number, relative = 1e-9) =>
  expect(Math.abs((a as number) - b), `${a} for ${b}`).toBeLessThanOrEqual(relative * Math.abs(b) + 1e-12)
/** Evenly spread, both ends included. */
const between = (min: number, max: number) => fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
const seeded = { seed: 16, numRuns: 80 }

const common = {
  inertia: between(0.01, 2),
  speed: between(0.2, 6),
  drivingTorque: between(0, 20),
  stopRadius: between(0.03, 0.4),
  mass: between(0.2, 4),
  centreRadius: between(0.05, 0.8),
  strikeRate: between(0, 1),
  ratedForce: between(50, 5000),
}
const springs = fc.record({
  ...common,
  stop: fc.record({ type: fc.constant("spring" as const), stiffness: between(5e3, 2e5), returnedShare: between(0, 1) }),
})
const absorbers = fc.record({
  ...common,
  stop: fc.record({ type: fc.constant("absorber" as const), stroke: between(0.005, 0.05), absorberEfficiency: between(0.3, 1) }),
})

/** J·ω′ = T − F·r, stepped from the blow to standstill: what the stop gives at each way is `force`. */
function stepped(input: EndStopInput, force: (x: number) => number, step: number) {
  const { inertia, drivingTorque, stopRadius } = input as { inertia: number; drivingTorque: number; stopRadius: number }
  const turn = (angle: number) => (drivingTorque - force(angle * stopRadius) * stopRadius) / inertia
  let [angle, speed, time, peak] = [0, input.speed as number, 0, 0]
  for (let n = 0; n < 400_000; n++) {
    const half = angle + (speed * step) / 2
    const slowed = speed + turn(half) * step
    peak = Math.max(peak, force(half * stopRadius))
    if (slowed <= 0) {
      const part = speed / (speed - slowed)
      return { angle: half + (slowed * step) / 2, time: time + part * step, peak }
    }
    angle = half + (slowed * step) / 2
    speed = slowed
    time += step
  }
  throw new Error("does not stop")
}

describe("endStop", () => {
  it("stops on a spring as the equation of motion stepped through time does, the drive still pushing", () => {
    fc.assert(
      fc.property(springs, (input) => {
        const out = solved(input)
        const s = stepped(input, (x) => input.stop.stiffness * x, out.stoppingTime / 3000)
        near(out.stoppingAngle, s.angle, 2e-3)
        near(out.stoppingTime, s.time, 2e-3)
        near(out.peakForce, s.peak, 2e-3)
        near(out.stoppingLength, out.stoppingAngle * input.stopRadius)
      }),
      seeded,
    )
  })

  it("stops in an absorber within its stroke and at even deceleration, its peak above the mean by its efficiency", () => {
    fc.assert(
      fc.property(absorbers, (input) => {
        const out = solved(input)
        const s = stepped(input, () => out.meanForce, out.stoppingTime / 3000)
        near(s.angle * input.stopRadius, input.stop.stroke, 2e-3)
        near(s.time, out.stoppingTime, 2e-3)
        near(out.meanForce, out.peakForce * input.stop.absorberEfficiency)
        expect(out.reboundSpeed).toBe(0)
        expect(out.stoppingLength).toBe(input.stop.stroke)
      }),
      seeded,
    )
  })

  it("loses no energy: motion and push go into the stop, and what the spring returns, less the push, throws it back", () => {
    fc.assert(
      fc.property(fc.oneof(springs, absorbers), (input) => {
        const out = solved(input)
        near(out.kineticEnergy, (input.inertia * input.speed ** 2) / 2)
        near(out.drivingWork, input.drivingTorque * out.stoppingAngle)
        near(out.energy, out.kineticEnergy + out.drivingWork)
        near(out.meanForce * out.stoppingLength, out.energy)
        near(out.meanHeat, out.energy * input.strikeRate)
        near(out.restForce * input.stopRadius, input.drivingTorque)
        near(out.effectiveMass * input.stopRadius ** 2, input.inertia)
        near(out.utilisation, out.peakForce / input.ratedForce)
        // the arm as a free body at the peak: it slows by what stop and drive do about the hinge, its mass by stop and hinge
        near(input.inertia * out.peakDeceleration, out.peakForce * input.stopRadius - input.drivingTorque, 1e-6)
        const hinge = out.peakForce - input.mass * (out.peakDeceleration * input.centreRadius)
        near(out.hingeForce, Math.abs(hinge), 1e-6)
        if (input.stop.type === "absorber") return
        near((input.stop.stiffness * out.stoppingLength ** 2) / 2, out.energy)
        const returned = input.stop.returnedShare * out.energy - out.drivingWork
        near((input.inertia * out.reboundSpeed ** 2) / 2, Math.max(0, returned), 1e-6)
      }),
      seeded,
    )
  })

  it("throws an elastic arm back as fast as it came, and hits no hinge at the centre of percussion", () => {
    fc.assert(
      fc.property(springs, (input) => {
        near(solved({ ...input, stop: { ...input.stop, returnedShare: 1 } }).reboundSpeed, input.speed, 1e-6)
        // J/(m·r_c) from the hinge
        const stopRadius = input.inertia / (input.mass * input.centreRadius)
        if (stopRadius > 50 || stopRadius < 0.01) return
        const free = solved({ ...input, stopRadius, drivingTorque: 0 })
        expect(free.hingeForce as number).toBeLessThan(1e-9 * free.peakForce)
        expect(solved({ ...input, mass: null }).hingeForce).toBeNull()
      }),
      seeded,
    )
  })

  it("offers a speed that just does not bottom out", () => {
    let offered = 0
    fc.assert(
      fc.property(springs, between(0.2, 0.99), (input, part) => {
        const travel = solved(input).stoppingLength * part
        const tight = { ...input, stop: { ...input.stop, travel } }
        const out = endStop.si(endStop.read(tight))
        if (!isNoSolution(out)) throw new Error("should bottom out")
        near(out.shortBy, travel / part - travel)
        const { speed } = out.nearest
        if (speed === undefined) return
        offered++
        const slower = solved({ ...tight, speed })
        expect(slower.stoppingLength / travel).toBeGreaterThan(0.99)
        expect(slower.stoppingLength).toBeLessThanOrEqual(travel)
      }),
      seeded,
    )
    expect(offered).toBeGreaterThan(20)
  })

  it("draws a triangle for a spring and a level line for an absorber, above the drive's push, and nothing where it bottoms out", () => {
    const draw = (stop: EndStopInput["stop"]) => drawEndStop(endStop.read({ ...endStop.example, stop }))
    const spring = draw({ type: "spring", stiffness: 20000 }) as string
    const absorber = draw({ type: "absorber", stroke: 0.01 }) as string
    for (const svg of [spring, absorber]) {
      expect(readXml(svg).name).toBe("svg")
      expect(svg).toContain("drive")
      expect(svg).not.toMatch(/NaN|Infinity/)
    }
    expect(absorber).toContain("stop, mean")
    expect(spring).not.toContain("stop, mean")
    expect(draw({ type: "spring", stiffness: 20000, travel: 0.001 })).toBeNull()
  })
})
