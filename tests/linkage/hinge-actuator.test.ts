import fc from "fast-check"
import { describe, expect, it } from "vitest"
import {
  type HingeGeometry,
  type HingeLoads,
  hingeActuator,
  hingeAngleAt,
  hingeLengthAt,
  hingeLeverAt,
  hingePinAt,
  hingeStaticsAt,
  springAt,
  springEnergy,
  standardGravity,
  wrapAngle,
} from "../../src/linkage/index.js"
import { integrate, solveLinear } from "../../src/numeric/index.js"
import { highest } from "./highest.js"
import { geometries, lengthOf, loads } from "./hinge-arms.js"

describe("the hinged arm's kernel", () => {
  it("has a lever arm that is the central difference of its length, and an angle that gives the length back", () => {
    let worstLever = 0
    let worstLength = 0
    fc.assert(
      fc.property(geometries, ({ g, share, branch }) => {
        const length = lengthOf(g, share)
        const angle = hingeAngleAt(g, length, branch)
        if (angle === null) throw new Error("does not close inside its own range")
        worstLength = Math.max(worstLength, Math.abs(hingeLengthAt(g, angle) - length) / length)
        const step = 1e-5
        const slope = (hingeLengthAt(g, angle + step) - hingeLengthAt(g, angle - step)) / (2 * step)
        // the difference quotient's own error grows where the length is short
        worstLever = Math.max(worstLever, (Math.abs(slope - hingeLeverAt(g, angle)) * length ** 2) / g.movingPivot.radius)
        expect(Math.sign(hingeLeverAt(g, angle))).toBe(branch)
      }),
      { numRuns: 600 },
    )
    expect(worstLength).toBeLessThan(1e-11)
    expect(worstLever).toBeLessThan(1e-8)
  })

  it("finds the same pin as the intersection of two circles", () => {
    let worst = 0
    fc.assert(
      fc.property(geometries, ({ g, share, branch }) => {
        const length = lengthOf(g, share)
        const pin = hingePinAt(g, hingeAngleAt(g, length, branch) as number)
        const q = Math.hypot(length, g.axisOffset)
        const [dx, dy] = [g.fixedPivot.x - g.hinge.x, g.fixedPivot.y - g.hinge.y]
        const d = Math.hypot(dx, dy)
        const along = (g.movingPivot.radius ** 2 - q ** 2 + d ** 2) / (2 * d)
        const across = branch * Math.sqrt(g.movingPivot.radius ** 2 - along ** 2)
        const met = { x: g.hinge.x + (along * dx - across * dy) / d, y: g.hinge.y + (along * dy + across * dx) / d }
        worst = Math.max(worst, Math.hypot(met.x - pin.x, met.y - pin.y))
      }),
      { numRuns: 600 },
    )
    expect(worst).toBeLessThan(1e-10)
  })

  it("cannot close outside its range", () => {
    const g: HingeGeometry = {
      hinge: { x: 0, y: 0 },
      fixedPivot: { x: 0, y: -0.2 },
      movingPivot: { radius: 0.05, angle: 0 },
      axisOffset: 0,
    }
    expect(hingeAngleAt(g, 0.2501, 1)).toBeNull()
    expect(hingeAngleAt(g, 0.1499, 1)).toBeNull()
    expect(hingeAngleAt(g, Number.NaN, 1)).toBeNull()
    expect(hingeAngleAt(g, 0.25, 1)).toBeCloseTo(Math.PI / 2, 7)
  })

  it("writes angles above −π and up to π", () => {
    for (const turns of [-2, -1, 0, 1, 5]) {
      expect(wrapAngle(0.3 + turns * 2 * Math.PI)).toBeCloseTo(0.3, 12)
    }
    expect(wrapAngle(Math.PI)).toBe(Math.PI)
    expect(wrapAngle(-Math.PI)).toBe(Math.PI)
  })
})

describe("hingeActuator against other routes", () => {
  it("virtual work agrees with free-body equilibrium of the arm, solved as three equations", () => {
    let worst = 0
    fc.assert(
      fc.property(geometries, loads, ({ g, share, branch }, load) => {
        const angle = hingeAngleAt(g, lengthOf(g, share), branch) as number
        const statics = hingeStaticsAt(g, load, angle)
        const pin = hingePinAt(g, angle)
        // unknowns: force between the actuator's pins, hinge force outward and up; moments about the frame's origin
        const q = Math.hypot(pin.x - g.fixedPivot.x, pin.y - g.fixedPivot.y)
        const [ux, uy] = [(pin.x - g.fixedPivot.x) / q, (pin.y - g.fixedPivot.y) / q]
        let [fx, fy, moment] = [0, 0, 0]
        const push = (x: number, y: number, px: number, py: number) => {
          fx += px
          fy += py
          moment += x * py - y * px
        }
        for (const w of load.masses) {
          const weight = (load.loadFactor ?? 1) * standardGravity * w.mass
          push(
            g.hinge.x + w.radius * Math.cos(angle + w.angle),
            g.hinge.y + w.radius * Math.sin(angle + w.angle),
            -weight * Math.sin(load.frameTilt),
            -weight * Math.cos(load.frameTilt),
          )
        }
        const { force: gust, radius: reach } = load.gust as NonNullable<HingeLoads["gust"]>
        // square to the arm, clockwise about the hinge
        push(
          g.hinge.x + reach * Math.cos(angle),
          g.hinge.y + reach * Math.sin(angle),
          gust * Math.cos(angle - Math.PI / 2),
          gust * Math.sin(angle - Math.PI / 2),
        )
        for (const spring of load.springs) {
          const end = {
            x: g.hinge.x + spring.radius * Math.cos(angle + spring.angle),
            y: g.hinge.y + spring.radius * Math.sin(angle + spring.angle),
          }
          const at = springAt(g.hinge, spring, angle)
          push(end.x, end.y, at.x, at.y)
        }
        const solved = solveLinear(
          [
            [ux, 1, 0],
            [uy, 0, 1],
            [pin.x * uy - pin.y * ux, -g.hinge.y, g.hinge.x],
          ],
          [-fx, -fy, -moment],
        )
        if (solved === null) throw new Error("singular")
        const [between_, rx, ry] = solved as unknown as [number, number, number]
        const thrust = (between_ * statics.length) / q
        const scale = Math.abs(thrust) + Math.hypot(fx, fy) + 1
        worst = Math.max(
          worst,
          Math.abs(thrust - statics.force) / scale,
          Math.abs(rx - statics.reaction.x) / scale,
          Math.abs(ry - statics.reaction.y) / scale,
        )
      }),
      { numRuns: 400 },
    )
    expect(worst).toBeLessThan(1e-9)
  })

  it("moving forces satisfy the friction balance found by bisection", () => {
    let worst = 0
    fc.assert(
      fc.property(geometries, loads, ({ g, share, branch }, load) => {
        const angle = hingeAngleAt(g, lengthOf(g, share), branch) as number
        const s = hingeStaticsAt(g, load, angle)
        if (s.locked || Math.abs(s.lever) < 1.5 * load.frictionRadius) return
        const pin = hingePinAt(g, angle)
        const [ux, uy] = [(pin.x - g.fixedPivot.x) / s.length, (pin.y - g.fixedPivot.y) / s.length]
        for (const way of [1, -1]) {
          // extra push x: the lever moment it adds less what the pin takes
          const left = (x: number) =>
            Math.abs(s.lever) * x -
            load.frictionRadius * Math.hypot(x * way * ux - s.reaction.x, x * way * uy - s.reaction.y, load.bearingLoad as number)
          let [low, high] = [0, 1]
          while (left(high) < 0) high *= 2
          for (let i = 0; i < 70; i++) {
            const mid = (low + high) / 2
            if (left(mid) < 0) low = mid
            else high = mid
          }
          const expected = s.force + way * low
          const got = way === 1 ? s.extendForce : s.retractForce
          worst = Math.max(worst, Math.abs(got - expected) / (Math.abs(expected) + Math.abs(s.force) + 1))
        }
      }),
      { numRuns: 250 },
    )
    expect(worst).toBeLessThan(1e-10)
  })

  it("work of the actuator over the stroke is what weights and springs gain", () => {
    const input = hingeActuator.read(hingeActuator.example)
    const g: HingeGeometry = input
    const load: HingeLoads = { masses: input.masses, springs: input.springs ?? [], frameTilt: input.frameTilt, frictionRadius: 0 }
    const angleAt = (s: number) => hingeAngleAt(g, input.retractedLength + s, 1) as number
    const work = integrate((s) => hingeStaticsAt(g, load, angleAt(s)).force, 0, input.stroke)
    const energy = (angle: number) =>
      standardGravity * load.masses.reduce((sum, w) => sum + w.mass * w.radius * Math.sin(angle + w.angle + load.frameTilt), 0) +
      load.springs.reduce((sum, spring) => sum + springEnergy(spring, springAt(g.hinge, spring, angle).length), 0)
    const gained = energy(angleAt(input.stroke)) - energy(angleAt(0))
    expect(Math.abs(work.value - gained) / Math.abs(gained)).toBeLessThan(1e-8)
  })

  it("a zero-free-length spring from straight above balances at every pose", () => {
    const arm = hingeActuator({
      fixedPivot: { x: -0.04, y: -0.25 },
      movingPivot: { radius: 0.055, angle: -Math.PI / 2 },
      retractedLength: 0.2,
      stroke: 0.08,
      masses: [{ mass: 1.2, radius: 0.45 }],
      springs: [{ fixedPivot: { x: 0, y: 0.1 }, radius: 0.06, stiffness: (standardGravity * 1.2 * 0.45) / (0.06 * 0.1), freeLength: 0 }],
    })
    expect(arm.requiredHoldingForce).toBeLessThan(1e-10)
  })
})

describe("hingeActuator refuses and warns", () => {
  const plain = {
    fixedPivot: { x: 0, y: -0.2 },
    movingPivot: { radius: 0.05 },
    retractedLength: 0.18,
    stroke: 0.04,
    masses: [{ mass: 1, radius: 0.4 }],
  } as const

  it("names the dead point a stroke runs into, by how much, and the nearest length that works", () => {
    const outcome = hingeActuator.attempt({ ...plain, retractedLength: 0.22 })
    if (outcome.ok || !("noSolution" in outcome.error)) throw new Error("answered")
    expect(outcome.error.noSolution).toBe("dead-point")
    expect(outcome.error.shortBy).toBeCloseTo(0.01, 5)
    expect(outcome.error.at.extension).toBeCloseTo(0.03, 9)
    expect(hingeActuator.attempt({ ...plain, retractedLength: outcome.error.nearest.retractedLength as number }).ok).toBe(true)
    const apart = hingeActuator.attempt({ ...plain, retractedLength: 0.3 })
    expect(!apart.ok && "noSolution" in apart.error && apart.error.noSolution).toBe("cannot-close")
  })

  it("refuses a lever arm inside the friction circle", () => {
    const outcome = hingeActuator.attempt({ ...plain, pinFriction: 1, hingePinDiameter: 0.12, stroke: 0.01 })
    if (outcome.ok || !("noSolution" in outcome.error)) throw new Error("answered")
    expect(outcome.error.noSolution).toBe("jammed")
    // lever arm retracted, where it is least: D·r·sin φ over the length, φ by the law of cosines; a thousandth clear of it
    const phi = Math.acos((0.2 ** 2 + 0.05 ** 2 - 0.18 ** 2) / (2 * 0.2 * 0.05))
    const lever = (0.2 * 0.05 * Math.sin(phi)) / 0.18
    expect(outcome.error.nearest.hingePinDiameter).toBeCloseTo(2 * lever * 0.999, 9)
    expect(outcome.error.nearest.pinFriction).toBeCloseTo((2 * lever * 0.999) / 0.12, 9)
    // on a dead point nothing moves it, friction or none
    const g: HingeGeometry = {
      hinge: { x: 0, y: 0 },
      fixedPivot: { x: -0.2, y: 0 },
      movingPivot: { radius: 0.05, angle: 0 },
      axisOffset: 0,
    }
    const none: HingeLoads = { masses: [], springs: [], frameTilt: 0, frictionRadius: 0 }
    expect(hingeStaticsAt(g, none, 0).locked).toBe(true)
    expect(hingeStaticsAt(g, none, 0.01).locked).toBe(false)
  })

  it("warns of a load that falls, of springs and of pinch points", () => {
    const codes = (input: Parameters<typeof hingeActuator>[0]) => hingeActuator(input).cautions.map((c) => c.code)
    expect(codes(plain)).toEqual(expect.arrayContaining(["pinch", "holding-unknown"]))
    expect(codes({ ...plain, holdingForce: 1 })).toContain("falls-unpowered")
    expect(codes({ ...plain, holdingForce: 1e4 })).not.toContain("falls-unpowered")
    const { requiredHoldingForce } = hingeActuator(plain)
    expect(codes({ ...plain, holdingForce: 1.9 * requiredHoldingForce })).toContain("thin-holding-margin")
    expect(codes({ ...plain, holdingForce: 2.1 * requiredHoldingForce })).not.toContain("thin-holding-margin")
    const springs = [{ fixedPivot: { x: 0, y: 0.3 }, radius: 0.05, stiffness: 100, freeLength: 0.05 }]
    expect(codes({ ...plain, springs })).toContain("stored-energy")
    expect(codes({ ...plain, axisOffset: 0.01 })).toContain("side-load")
  })

  it("moves nothing when frame, hinge and anchors are all shifted together", () => {
    const here = hingeActuator(plain)
    const there = hingeActuator({ ...plain, hinge: { x: 0.3, y: 1 }, fixedPivot: { x: 0.3, y: 0.8 } })
    expect(there.peakForce).toBeCloseTo(here.peakForce, 9)
    expect(there.angle).toBeCloseTo(here.angle, 12)
  })

  it("holds at any lean with the force named for the worst, and no less would do", () => {
    const two = {
      ...plain,
      extension: 0.01,
      masses: [
        { mass: 1.2, radius: 0.5 },
        { mass: 0.3, radius: 0.9, angle: 0.3 },
      ],
    }
    const most = hingeActuator(two).anyTiltForce
    const worst = highest((lean) => Math.abs(hingeActuator({ ...two, frameTilt: lean }).force), -Math.PI, Math.PI, 120)
    expect(worst / most).toBeLessThanOrEqual(1 + 1e-12)
    expect(worst / most).toBeGreaterThan(1 - 1e-5)
  })
})
