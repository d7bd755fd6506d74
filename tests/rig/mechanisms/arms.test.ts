import { describe, expect, it } from "vitest"
import { standardGravity } from "../../../src/linkage/index.js"
import { hinge } from "../../../src/rig/mechanisms/hinge.js"
import { emptyState, type Mechanism, type MechanismPose, type Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { turnedArm } from "../../../src/rig/mechanisms/turned-arm.js"
import { built } from "../members.js"
import { type Drawn, drawMechanisms, placesIn, randomNumbers } from "./draw.js"
import { type ArmPart, armRoute, holdsMechanism, type Point, type SecondRoute, stateAt } from "./second-route.js"

/** The moving pivot by intersecting two circles with vectors: r about the hinge, the pivots' distance about the fixed one. */
function hingeDirection(si: Drawn): (q: number) => readonly [number, number] {
  const {
    hinge: h,
    fixedPivot: f,
    movingPivot: p,
    axisOffset: e,
    assembly,
  } = si as unknown as {
    hinge: Point
    fixedPivot: Point
    movingPivot: { radius: number; angle: number }
    axisOffset: number
    assembly: string
  }
  return (q) => {
    const [dx, dy] = [f.x - h.x, f.y - h.y]
    const d2 = dx * dx + dy * dy
    const along = (d2 + p.radius ** 2 - (q * q + e * e)) / 2
    const off = Math.sqrt(p.radius ** 2 * d2 - along ** 2) * (assembly === "counter-clockwise" ? 1 : -1)
    const [px, py] = [(along * dx - off * dy) / d2, (along * dy + off * dx) / d2]
    // turned back from the pivot to the arm
    const [c, s] = [Math.cos(p.angle), Math.sin(p.angle)]
    return [(px * c + py * s) / p.radius, (py * c - px * s) / p.radius]
  }
}

const angleOf = (direction: (q: number) => readonly [number, number]) => {
  const turn = (q: number) => Math.atan2(direction(q)[1], direction(q)[0])
  return turn
}

describe("hinge and turned arm against places found by vectors", () => {
  it("hinge: two circles intersected, 20 drawn", () => {
    const random = randomNumbers(3)
    for (const { mechanism, si } of drawMechanisms(hinge, 20, 21).found) {
      const direction = hingeDirection(si)
      const turn = angleOf(direction)
      for (const q of placesIn(mechanism, 3, random)) {
        // the turn by its own unwrapped angle near q
        const route = armRoute(si as unknown as ArmPart, direction, (at) => {
          const away = turn(at) - turn(q)
          return away - 2 * Math.PI * Math.round(away / (2 * Math.PI))
        })
        const h = 2e-4 * (mechanism.high - mechanism.low)
        if (springsTurnTaut(mechanism, q, h)) continue
        holdsMechanism(mechanism, route, q, h, 3e-6)
      }
    }
  })
  it("turned arm: a rotation matrix, 20 drawn", () => {
    const random = randomNumbers(4)
    for (const { mechanism, si } of drawMechanisms(turnedArm, 20, 22).found) {
      const route = armRoute(
        si as unknown as ArmPart,
        (q) => [Math.cos(q), Math.sin(q)],
        (q) => q,
      )
      for (const q of placesIn(mechanism, 3, random)) if (!springsTurnTaut(mechanism, q, 1e-3)) holdsMechanism(mechanism, route, q, 1e-3)
    }
  })
})

/** Whether a cord comes taut within the steps of a difference. */
function springsTurnTaut(mechanism: Mechanism, q: number, h: number): boolean {
  return new Set([-10, -2, 0, 2, 10].map((k) => stateAt(mechanism, q + k * h).form)).size > 1
}

describe("forces on the pins", () => {
  it("hinge and turned arm: forces and moments of the free body add up to nothing where the drive holds it", () => {
    const random = randomNumbers(6)
    for (const member of [hinge, turnedArm])
      for (const { mechanism, si } of drawMechanisms(member as typeof hinge, 20, 31).found) {
        const arm = si as unknown as ArmPart
        for (const q of placesIn(mechanism, 2, random)) {
          const down: Triple = [3 * random() - 1, -standardGravity, random()]
          const state = stateAt(mechanism, q)
          const effort = state.springs - down[0] * state.massX - down[1] * state.massY - down[2] * state.massZ
          const reactions = mechanism.reactions(q, effort, down)
          const force = (name: string) => reactions.find((r) => r.name === name)?.force ?? [0, 0, 0]
          const pose = mechanism.pose(q)
          const angle = Math.atan2(pose.tip[1] - arm.hinge.y, pose.tip[0] - arm.hinge.x)
          const rod = force("moving pivot")
          const pin = pose.pins.find((p) => p.name === "moving pivot")?.at ?? pose.tip
          // on the arm: the frame at the hinge, the rod, weights, cords
          const loads: { at: Triple; force: Triple }[] = [
            { at: [arm.hinge.x, arm.hinge.y, 0], force: force("hinge").map((f) => -f) as unknown as Triple },
            { at: pin, force: rod },
          ]
          const spot = (radius: number, off: number): Triple => [
            arm.hinge.x + radius * Math.cos(angle + off),
            arm.hinge.y + radius * Math.sin(angle + off),
            0,
          ]
          for (const m of arm.masses) loads.push({ at: spot(m.radius, m.angle), force: down.map((g) => m.mass * g) as unknown as Triple })
          for (const s of arm.springs) {
            const at = spot(s.radius, s.angle)
            const [dx, dy] = [s.fixedPivot.x - at[0], s.fixedPivot.y - at[1]]
            const length = Math.hypot(dx, dy)
            const pull = Math.max(0, s.stiffness * (length - s.freeLength))
            loads.push({ at, force: [(pull * dx) / length, (pull * dy) / length, 0] })
          }
          const size = loads.reduce((sum, l) => sum + Math.hypot(...l.force), 0)
          for (const axis of [0, 1, 2])
            expect(Math.abs(loads.reduce((sum, l) => sum + (l.force[axis] as number), 0))).toBeLessThanOrEqual(1e-9 * size)
          const turned = loads.reduce((sum, l) => sum + (l.at[0] - arm.hinge.x) * l.force[1] - (l.at[1] - arm.hinge.y) * l.force[0], 0)
          // a shaft gives its moment without a force
          const shaft = mechanism.travel === "angle" ? effort : 0
          expect(Math.abs(turned + shaft)).toBeLessThanOrEqual(1e-8 * size)
          if (mechanism.travel === "length")
            for (const axis of [0, 1, 2]) expect((force("fixed pivot")[axis] as number) + (rod[axis] as number)).toBe(0)
        }
      }
  })
})

describe("several mechanisms on one drive", () => {
  it("nine feathers, unlike, ask together what one model of all their masses does", () => {
    const feathers = Array.from({ length: 9 }, (_, i) => ({
      hinge: { x: 0.02 * i, y: -0.01 * i },
      length: 0.5 + 0.03 * i,
      masses: [{ name: "feather", mass: 0.03 + 0.002 * i, radius: 0.2 + 0.02 * i, angle: 0.01 * i }],
      panels: [{ area: 0.02, radius: 0.25 + 0.01 * i }],
      springs: [{ stiffness: 40 + i, freeLength: 0.05, fixedPivot: { x: 0.05, y: -0.3 }, radius: 0.06, angle: 0 }],
      hingeFriction: 0.004 * i,
      startAngle: -1 + 0.12 * i,
    }))
    const built = feathers.map((si) => turnedArm.build({ type: "turned-arm", ...si }) as Mechanism)
    for (const travel of [0, 0.4, 1.1]) {
      const sum = emptyState()
      for (const m of built) m.at((m.start as number) + travel, sum)
      // all masses in one list, each turned by its own matrix
      const all: SecondRoute = {
        masses: (q) => feathers.flatMap((f) => route(f).masses(f.startAngle + q)),
        energy: (q) => feathers.reduce((total, f) => total + (route(f).energy?.(f.startAngle + q) ?? 0), 0),
        panels: (q) => feathers.flatMap((f) => route(f).panels?.(f.startAngle + q) ?? []),
        rubs: (q) => feathers.map((f) => ({ moment: f.hingeFriction, turn: q })),
      }
      const together: Mechanism = {
        ...(built[0] as Mechanism),
        at: (q, state) => {
          for (const m of built) m.at((m.start as number) + q, state)
        },
        pose: (q) => {
          const poses = built.map((m) => m.pose((m.start as number) + q))
          const mass = poses.reduce((total, p) => total + p.mass, 0)
          const centre = [0, 1, 2].map((axis) => poses.reduce((total, p) => total + (p.mass * (p.centre[axis] as number)) / mass, 0))
          return { ...(poses[0] as MechanismPose), mass, centre: centre as unknown as Triple }
        },
      }
      holdsMechanism(together, all, travel, 1e-3)
      expect(sum.inertia).toBeCloseTo(
        feathers.reduce((total, f) => total + (f.masses[0]?.mass ?? 0) * (f.masses[0]?.radius ?? 0) ** 2, 0),
        12,
      )
    }
  })
  it("hinge: a rod whose axis misses its pivot by more than the pivots come apart is a fault, at 200 mm", () => {
    const document = {
      length: "0.4 m",
      masses: [{ name: "wing", mass: 0.5, radius: 0.3 }],
      fixedPivot: { x: 0, y: -0.15 },
      axisOffset: 0.2,
    }
    const withHorn = (radius: number) => built<Mechanism>(hinge, { ...document, movingPivot: { radius, angle: 0 } })
    expect(() => withHorn(0.0499)).toThrow(/axisOffset/)
    const { low, high } = withHorn(0.0501)
    // a right-angled triangle of offset and rod spans the pivots at their farthest
    expect(low).toBe(0)
    expect(high).toBeCloseTo(Math.sqrt(0.2001 ** 2 - 0.2 ** 2), 12)
  })
  it("nine equal feathers ask nine times what one asks, on rods as on a shaft", () => {
    const [one] = drawMechanisms(hinge, 1, 41).found
    const { mechanism } = one as NonNullable<typeof one>
    const q = mechanism.low + 0.4 * (mechanism.high - mechanism.low)
    const single = stateAt(mechanism, q)
    const sum = emptyState()
    for (let i = 0; i < 9; i++) mechanism.at(q, sum)
    for (const key of ["springs", "massX", "massY", "windX", "windY", "frictionDry", "inertia", "inertiaSlope"] as const)
      expect(sum[key]).toBeCloseTo(9 * single[key], 9)
  })
})

const route = (f: ArmPart): SecondRoute =>
  armRoute(
    f,
    (q) => [Math.cos(q), Math.sin(q)],
    (q) => q,
  )
