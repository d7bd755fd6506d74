import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { counterbalance, hingeActuator, standardGravity } from "../../src/linkage/index.js"
import { integrate } from "../../src/numeric/index.js"
import { InputError, withNumber } from "../../src/solver/index.js"
import { highest } from "./highest.js"
import { between } from "./uniform.js"

/** Arms with an extension spring of random make. */
const arms = fc.record({
  fixedPivot: fc.record({ x: between(-0.1, 0.1), y: between(0.02, 0.3) }),
  hinge: fc.record({ x: between(-0.2, 0.2), y: between(-0.5, 0) }),
  movingPivot: fc.record({ radius: between(0.02, 0.15), angle: between(-1, 1) }),
  masses: fc.array(fc.record({ mass: between(0.1, 2), radius: between(0.1, 0.8), angle: between(-0.3, 0.3) }), {
    minLength: 1,
    maxLength: 3,
  }),
  armAngle: fc.record({ low: between(-1.4, -0.2), high: between(0, 1.4) }),
  element: fc.record({
    type: fc.constant("spring" as const),
    stiffness: between(50, 2000),
    freeLength: between(0, 0.3),
    preload: between(0, 10),
  }),
  frameTilt: between(-0.4, 0.4),
})

describe("counterbalance against other routes", () => {
  it("moments are derivatives of the energies, by central difference", () => {
    let worst = 0
    fc.assert(
      fc.property(arms, (arm) => {
        const h = 1e-6
        const lengthAt = (angle: number) =>
          Math.hypot(
            arm.hinge.x + arm.movingPivot.radius * Math.cos(angle + arm.movingPivot.angle) - arm.fixedPivot.x,
            arm.hinge.y + arm.movingPivot.radius * Math.sin(angle + arm.movingPivot.angle) - arm.fixedPivot.y,
          )
        const height = (angle: number) =>
          standardGravity * arm.masses.reduce((sum, w) => sum + w.mass * w.radius * Math.sin(angle + w.angle + arm.frameTilt), 0)
        const stored = (angle: number) => {
          const stretch = Math.max(0, lengthAt(angle) - arm.element.freeLength)
          return arm.element.preload * stretch + (arm.element.stiffness * stretch ** 2) / 2
        }
        for (const pose of counterbalance(arm).poses) {
          // at the free length the initial tension sets in at once: no derivative there
          if (Math.abs(pose.length - arm.element.freeLength) < 1e-5) continue
          const gravity = (height(pose.angle + h) - height(pose.angle - h)) / (2 * h)
          const spring = -(stored(pose.angle + h) - stored(pose.angle - h)) / (2 * h)
          const scale = 1 + Math.abs(gravity) + stored(pose.angle)
          worst = Math.max(worst, Math.abs(gravity - pose.gravityMoment) / scale, Math.abs(spring - pose.balanceMoment) / scale)
        }
      }),
      { numRuns: 80 },
    )
    expect(worst).toBeLessThan(1e-7)
  })

  it("agrees with hingeActuator carrying the same spring", () => {
    const arm = counterbalance.read(counterbalance.example)
    const out = counterbalance(counterbalance.example)
    if (arm.element.type !== "spring") throw new Error("the example has a spring")
    const actuated = hingeActuator({
      fixedPivot: { x: 0, y: -0.25 },
      movingPivot: { radius: 0.06, angle: -1.2 },
      retractedLength: 0.22,
      stroke: 0.03,
      masses: arm.masses,
      frameTilt: arm.frameTilt,
      springs: [
        {
          fixedPivot: arm.fixedPivot,
          radius: arm.movingPivot.radius,
          angle: arm.movingPivot.angle,
          stiffness: out.stiffness as number,
          freeLength: arm.element.freeLength,
          preload: arm.element.preload,
        },
      ],
    })
    const here = counterbalance({ ...counterbalance.example, armAngle: { low: actuated.angle, high: actuated.angle + 0.1 } }).poses[0]
    expect(here?.gravityMoment).toBeCloseTo(actuated.gravityMoment, 10)
    expect(here?.balanceMoment).toBeCloseTo(actuated.springMoment, 10)
  })

  it("balances exactly at every angle and any fitting place, without free length", () => {
    let worst = 0
    fc.assert(
      fc.property(arms, between(0.05, 0.3), (arm, height) => {
        const [x, y] = arm.masses.reduce(
          ([sx, sy], w) => [sx + w.mass * w.radius * Math.cos(w.angle), sy + w.mass * w.radius * Math.sin(w.angle)],
          [0, 0],
        )
        const up = Math.PI / 2 - arm.frameTilt - Math.atan2(y, x) + arm.movingPivot.angle
        const placed = {
          ...arm,
          element: { type: "spring" as const, stiffness: 1 },
          fixedPivot: { x: arm.hinge.x + height * Math.cos(up), y: arm.hinge.y + height * Math.sin(up) },
        }
        const { idealStiffness, idealDeviation } = counterbalance(placed)
        const balanced = counterbalance({ ...placed, element: { type: "spring", stiffness: idealStiffness } })
        worst = Math.max(worst, balanced.maxUnbalancedMoment / balanced.maxGravityMoment, Math.abs(idealDeviation))
      }),
      { numRuns: 80 },
    )
    expect(worst).toBeLessThan(1e-10)
  })

  it("the worst lean is that of a scan, fine about its worst", () => {
    let worst = 0
    fc.assert(
      fc.property(arms, between(0, 0.6), (arm, tiltEitherWay) => {
        const out = counterbalance({ ...arm, tiltEitherWay })
        const residualAt = (part: number) => counterbalance({ ...arm, frameTilt: arm.frameTilt + tiltEitherWay * part }).maxUnbalancedMoment
        const scan = highest(residualAt, -1, 1, 40)
        expect(scan).toBeLessThanOrEqual(out.maxTiltedUnbalancedMoment * (1 + 1e-9))
        worst = Math.max(worst, (out.maxTiltedUnbalancedMoment - scan) / (out.maxTiltedUnbalancedMoment + out.maxGravityMoment))
      }),
      { numRuns: 12 },
    )
    expect(worst).toBeLessThan(1e-5)
  })

  it("a gas strut stores the area under its force", () => {
    const arm = counterbalance({
      element: { type: "gas-strut", extendedLength: 0.3, stroke: 0.1, force: 120, progression: 1.4 },
      fixedPivot: { x: 0.02, y: -0.24 },
      movingPivot: { radius: 0.08 },
      masses: [{ mass: 2, radius: 0.4 }],
      armAngle: { low: -0.6, high: 0.5 },
    })
    const shortest = Math.min(...arm.poses.map((pose) => pose.length))
    const area = integrate(
      (x) => {
        // a gas of 0.35 m of the rod's room, so that the whole stroke takes it to 1.4 times its pressure
        const room = 0.35
        return (120 * room) / (room - (0.3 - x))
      },
      shortest,
      0.3,
    )
    expect(arm.storedEnergy).toBeCloseTo(area.value, 9)
    expect(arm.stiffness).toBeNull()
    for (const pose of arm.poses) expect(pose.force).toBeLessThan(0)
    // pushing from below it carries weight
    expect(arm.poses.every((pose) => pose.balanceMoment > 0)).toBe(true)
  })
})

describe("counterbalance refuses and warns", () => {
  it("a strut that does not reach, by how much and what would", () => {
    const base = {
      element: { type: "gas-strut", extendedLength: 0.25, stroke: 0.05, force: 100 },
      fixedPivot: { x: 0.02, y: -0.24 },
      movingPivot: { radius: 0.08 },
      masses: [{ mass: 2, radius: 0.4 }],
      armAngle: { low: -0.6, high: 0.5 },
    } as const
    const outcome = counterbalance.attempt(base)
    if (outcome.ok || !("noSolution" in outcome.error)) throw new Error("answered")
    expect(outcome.error.noSolution).toBe("out-of-reach")
    expect(outcome.error.shortBy).toBeGreaterThan(0)
    const { nearest } = outcome.error
    expect(Object.keys(nearest)).not.toHaveLength(0)
    for (const [path, value] of Object.entries(nearest)) expect(counterbalance.attempt(withNumber(base, path, value)).ok, path).toBe(true)
  })

  it("both or neither of stiffness and coil", () => {
    const { element } = counterbalance.example
    const both = counterbalance.attempt({ ...counterbalance.example, element: { ...element, stiffness: 100 } })
    expect(!both.ok && both.error.message).toContain("coil")
    expect(counterbalance.attempt({ ...counterbalance.example, element: { type: "spring" } }).ok).toBe(false)
  })

  it("tells the faults of the element that was meant, and no others", () => {
    const outcome = counterbalance.attempt({ ...counterbalance.example, element: { type: "gas-strut", stroke: "2 kg" } })
    if (outcome.ok || !(outcome.error instanceof InputError)) throw new Error("answered")
    expect(outcome.error.issues.map((issue) => issue.path.join("."))).toEqual(["element.extendedLength", "element.stroke", "element.force"])
  })

  it("warns of stored energy, of a worse balance and of the lean", () => {
    const codes = (change: object) => counterbalance({ ...counterbalance.example, ...change }).cautions.map((c) => c.code)
    expect(codes({})).toEqual(expect.arrayContaining(["pinch", "stored-energy", "falls-unpowered"]))
    expect(codes({ fixedPivot: { x: 0, y: -0.3 } })).toContain("makes-worse")
    expect(codes({ element: { type: "cord", stiffness: 100 } })).toContain("cord-is-not-a-spring")
    expect(
      counterbalance({
        fixedPivot: { x: 0, y: 0.1 },
        movingPivot: { radius: 0.06 },
        masses: [{ mass: 1, radius: 0.5 }],
        armAngle: { low: -1, high: 1 },
        element: { type: "spring", stiffness: (standardGravity * 0.5) / 0.006 },
        tiltEitherWay: 0.3,
      }).cautions.map((c) => c.code),
    ).toContain("lean-spoils-balance")
  })
})
