import { describe, expect, it } from "vitest"
import { type FoldingChainInput, foldingChain, foldingChainPicture, poseSvg, poseText } from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"

const g = 9.80665
interface Spot {
  readonly x: number
  readonly y: number
}
const dist = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y)
interface Segment {
  readonly length: number
  readonly width: number
  readonly mass: number
  readonly centreShare: number
  readonly foldedAngle: number
  readonly ratio: number
  readonly startsAt: number
  readonly endsAt: number
  readonly driveRadius: number
}
interface Chain extends FoldingChainInput {
  readonly segments: readonly Segment[]
  readonly driverTravel: number
  readonly position: number
  readonly tipMass: number
  readonly frameTilt: number
  readonly planeTilt: number
  readonly pinFriction: number
  readonly pinDiameter: number
}

function chainOf(random: ReturnType<typeof lehmer>): Chain {
  const count = 1 + Math.floor(random.real(0, 4.999))
  return {
    segments: Array.from({ length: count }, () => ({
      length: random.real(0.05, 0.4),
      width: random.real(0, 0.1),
      mass: random.real(0, 0.3),
      centreShare: random.real(0, 1),
      foldedAngle: random.real(-3, 3),
      ratio: random.real(-2, 2),
      startsAt: random.real(0, 0.3),
      endsAt: random.real(0.7, 1),
      driveRadius: random.sign() > 0 ? 0 : random.real(0.01, 0.05),
    })),
    driverTravel: random.real(0.5, 3),
    position: random.real(0.31, 0.69),
    tipMass: random.real(0, 0.1),
    frameTilt: random.real(-1, 1),
    planeTilt: random.real(-1.5, 1.5),
    pinFriction: random.real(0, 0.4),
    pinDiameter: random.real(0, 0.01),
  }
}

/** Masses of a chain with the driver turned by an angle: places by a walk of complex numbers, and the energies that follow. */
function placesAt(chain: Chain, driver: number) {
  let [x, y, direction] = [0, 0, 0]
  const found: { x: number; y: number; mass: number; spin: number; direction: number; joint: number }[] = []
  const share = driver / chain.driverTravel
  chain.segments.forEach((s, joint) => {
    direction += s.foldedAngle + s.ratio * chain.driverTravel * (Math.min(Math.max(share, s.startsAt), s.endsAt) - s.startsAt)
    const [ux, uy] = [Math.cos(direction), Math.sin(direction)]
    found.push({
      x: x + s.centreShare * s.length * ux,
      y: y + s.centreShare * s.length * uy,
      mass: s.mass,
      spin: (s.mass * s.length ** 2) / 12,
      direction,
      joint,
    })
    x += s.length * ux
    y += s.length * uy
  })
  found.push({ x, y, mass: chain.tipMass, spin: 0, direction, joint: chain.segments.length - 1 })
  return found
}

const potential = (chain: Chain, driver: number) =>
  placesAt(chain, driver).reduce(
    (sum, p) => sum + p.mass * g * Math.cos(chain.planeTilt) * (p.x * Math.sin(chain.frameTilt) + p.y * Math.cos(chain.frameTilt)),
    0,
  )

/** Inertia from the kinetic energy of small finite steps of the driver. */
function inertiaAt(chain: Chain, driver: number): number {
  const rates = derivative((d) => placesAt(chain, d + driver).flatMap((p) => [p.x, p.y, p.direction]), 1e-4)
  return placesAt(chain, driver).reduce((sum, p, i) => {
    const [vx, vy, w] = rates.slice(3 * i, 3 * i + 3) as [number, number, number]
    return sum + p.mass * (vx ** 2 + vy ** 2) + p.spin * w ** 2
  }, 0)
}

describe("against energies", () => {
  it("holds with the slope of the potential energy, and feels the kinetic energy of a slow turn", () => {
    const random = lehmer(31)
    for (let k = 0; k < 60; k++) {
      const chain = chainOf(random)
      const out = foldingChain(chain)
      const driver = chain.position * chain.driverTravel
      const [slope] = derivative((d) => [potential(chain, driver + d)], 1e-4) as [number]
      expect(out.effort).toBeCloseTo(slope, 7)
      expect(out.inertia).toBeCloseTo(inertiaAt(chain, driver), 8)
      const [change] = derivative((d) => [inertiaAt(chain, driver + d)], 1e-3) as [number]
      expect(out.inertiaSlope).toBeCloseTo(change, 5)
      const tip = placesAt(chain, driver).at(-1) as { x: number; y: number }
      expect([out.tipX, out.tipY]).toEqual([expect.closeTo(tip.x, 12), expect.closeTo(tip.y, 12)])
      const [rateX, rateY] = derivative((d) => {
        const at = placesAt(chain, driver + d).at(-1) as { x: number; y: number }
        return [at.x, at.y]
      }, 1e-4) as [number, number]
      expect([out.tipRateX, out.tipRateY]).toEqual([expect.closeTo(rateX, 7), expect.closeTo(rateY, 7)])
    }
  })

  it("puts the work of spreading into height and friction, and gets back by folding what friction leaves", () => {
    const chain = { ...chainOf(lehmer(5)), pinFriction: 0.3, pinDiameter: 0.008 }
    const smooth = { ...chain, segments: chain.segments.map((s) => ({ ...s, startsAt: 0, endsAt: 1 })) } as Chain
    const steps = 100
    let [out, back, lost] = [0, 0, 0]
    for (let k = 0; k < steps; k++) {
      const at = foldingChain({ ...smooth, position: (k + 0.5) / steps })
      const turn = smooth.driverTravel / steps
      out += at.spreadEffort * turn
      back += at.foldEffort * turn
      for (const joint of at.joints)
        lost +=
          Math.abs(joint.ratio) *
          turn *
          (Math.abs(joint.spreadMoment - joint.gravityMoment) + Math.abs(joint.foldMoment - joint.gravityMoment))
      // the drive's force adds to the load of the pin, each way
      at.joints.forEach((joint, i) => {
        const R = (smooth.segments[i] as Segment).driveRadius
        for (const [moment, way] of [
          [joint.spreadMoment, 1],
          [joint.foldMoment, -1],
        ] as const) {
          const friction = 0.3 * 0.004 * (joint.pinLoad + (R ? Math.abs(moment) / R : 0))
          expect(moment - joint.gravityMoment).toBeCloseTo(way * Math.sign(joint.ratio) * friction, 12)
        }
      })
    }
    const rise = potential(smooth, smooth.driverTravel) - potential(smooth, 0)
    expect(out - back).toBeCloseTo(lost, 10)
    expect((out + back) / 2).toBeGreaterThan(rise - lost)
    expect(out).toBeGreaterThan(rise)
    expect(back).toBeLessThan(rise)
  })
})

describe("against free bodies", () => {
  it("bears at every joint what balances the segments outward of it, one after the other from the tip", () => {
    const random = lehmer(8)
    for (let k = 0; k < 40; k++) {
      const chain = chainOf(random)
      const out = foldingChain(chain)
      const all = placesAt(chain, chain.position * chain.driverTravel)
      const [gx, gy, gz] = [
        -g * Math.cos(chain.planeTilt) * Math.sin(chain.frameTilt),
        -g * Math.cos(chain.planeTilt) * Math.cos(chain.frameTilt),
        -g * Math.sin(chain.planeTilt),
      ]
      // force and moment handed inward by the segment farther out, at its joint
      let [fx, fy, fz, mx, my, mz] = [0, 0, 0, 0, 0, 0]
      for (let i = chain.segments.length - 1; i >= 0; i--) {
        const joint = out.joints[i] as (typeof out.joints)[number]
        const next = out.joints[i + 1] ?? { x: out.tipX, y: out.tipY }
        const [ax, ay] = [next.x - joint.x, next.y - joint.y]
        mx += ay * fz
        my += -ax * fz
        mz += ax * fy - ay * fx
        for (const p of all.filter((q) => q.joint === i)) {
          const [bx, by] = [p.x - joint.x, p.y - joint.y]
          mx += by * p.mass * gz
          my += -bx * p.mass * gz
          mz += bx * p.mass * gy - by * p.mass * gx
          fx += p.mass * gx
          fy += p.mass * gy
          fz += p.mass * gz
        }
        expect(joint.gravityMoment).toBeCloseTo(-mz, 10)
        expect(joint.sideMoment).toBeCloseTo(Math.hypot(mx, my), 10)
        expect(joint.pinLoad).toBeCloseTo(Math.hypot(fx, fy, fz), 10)
      }
      expect([out.reactionX, out.reactionY, out.reactionMoment]).toEqual([
        expect.closeTo(-fx, 10),
        expect.closeTo(-fy, 10),
        expect.closeTo(-mz, 10),
      ])
    }
  })

  it("is the two-link arm of the textbooks: m₁·k₁² + m₂·(L₁² + k₂² + 2·L₁·k₂·cos q₂) and the rods' own", () => {
    const [m1, m2, L1, L2, q2] = [0.4, 0.3, 0.25, 0.2, 0.8]
    const arm = foldingChain({
      segments: [
        { length: L1, mass: m1, foldedAngle: 0.2, ratio: 1 },
        { length: L2, mass: m2, foldedAngle: q2, ratio: 0 },
      ],
      driverTravel: 1,
      position: 0,
    })
    const own = (m1 * L1 ** 2 + m2 * L2 ** 2) / 12
    expect(arm.inertia).toBeCloseTo(own + (m1 * L1 ** 2) / 4 + m2 * (L1 ** 2 + L2 ** 2 / 4 + L1 * L2 * Math.cos(q2)), 12)
  })
})

describe("folding", () => {
  const chain = foldingChain.read(foldingChain.example) as unknown as Chain

  it("mirrors left for right: the same efforts with every angle and ratio turned over and x reversed", () => {
    const mirrored = foldingChain({
      ...chain,
      frameTilt: -chain.frameTilt,
      segments: chain.segments.map((s, i) => ({ ...s, foldedAngle: i ? -s.foldedAngle : Math.PI - s.foldedAngle, ratio: -s.ratio })),
    })
    const plain = foldingChain(chain)
    expect(mirrored.tipX).toBeCloseTo(-plain.tipX, 12)
    for (const key of ["tipY", "effort", "spreadEffort", "foldEffort", "inertia", "inertiaSlope", "maxReach", "maxEffort"] as const)
      expect(mirrored[key], key).toBeCloseTo(plain[key], 12)
    expect(mirrored.swept.width).toBeCloseTo(plain.swept.width, 12)
  })

  it("turns its joints in the order asked for, and keeps a joint still outside its share", () => {
    const turns = { ...chain, segments: chain.segments.map((s, i) => ({ ...s, startsAt: [0.5, 0, 0.25][i] as number, endsAt: 1 })) }
    const at = (position: number) => foldingChain({ ...turns, position })
    expect(at(0).spreadOrder).toEqual([2, 3, 1])
    expect(at(0.2).joints.map((j) => j.ratio)).toEqual([0, 1.9, 0])
    expect(at(0.25).joints.map((j) => j.ratio)).toEqual([0, 1.9, -1.8])
    expect(at(1).joints.map((j) => j.ratio)).toEqual([-0.9, 1.9, -1.8])
    expect(at(0.4).joints[0]?.angle).toBe(chain.segments[0]?.foldedAngle)
    const early = foldingChain({ ...turns, segments: turns.segments.map((s) => ({ ...s, startsAt: 0, endsAt: 0.5 })), position: 1 })
    expect(early.joints.map((j) => j.ratio)).toEqual([0, 0, 0])
  })

  it("takes up the space of its corners: a lone strip is its own length and width", () => {
    const strip = foldingChain({ segments: [{ length: 0.3, width: 0.1, mass: 0.1, foldedAngle: 0, ratio: 1 }], driverTravel: Math.PI / 2 })
    expect([strip.folded.width, strip.folded.height]).toEqual([expect.closeTo(0.3, 12), expect.closeTo(0.1, 12)])
    expect([strip.spread.width, strip.spread.height]).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.3, 12)])
    expect(strip.maxReach).toBeCloseTo(Math.hypot(0.3, 0.05), 12)
    // a quarter turn: the far corners reach their radius along x and y on the way, the near ones stand half a width behind
    expect(strip.swept.width).toBeCloseTo(Math.hypot(0.3, 0.05) + 0.05, 3)
    expect(strip.joints[0]?.driveForce).toBeNull()
    expect(strip.maxEffort).toBeCloseTo(0.1 * g * 0.15, 12)
  })

  it("draws every segment folded, spread and as asked for", () => {
    const picture = foldingChainPicture(foldingChain.read(foldingChain.example))
    expect(picture.lines.map((line) => line.style)).toEqual([...new Array(6).fill("earlier"), ...new Array(3).fill("part"), "path"])
    expect(poseSvg(picture).match(/Z"/g)).toHaveLength(9)
    expect(poseText(picture)).toMatch(/█[\s\S]*O/)
    // each segment is the rectangle of its own length and width
    const sides = picture.lines.slice(0, 9).map(({ points }) => points.map((p, i) => dist(p, points[(i + 1) % points.length] as Spot)))
    const { segments } = foldingChain.read(foldingChain.example)
    sides.forEach((four, i) => {
      const { length, width } = segments[i % 3] as Segment
      expect([...four].sort((a, b) => a - b)).toEqual([width, width, length, length].map((side) => expect.closeTo(side, 12)))
    })
  })

  it("tells each joint's angle from the segment before it, the first from the frame", () => {
    const shares = chain.segments.map((s) => {
      const share = Math.min(1, Math.max(0, (chain.position - s.startsAt) / (s.endsAt - s.startsAt)))
      return s.foldedAngle + s.ratio * chain.driverTravel * (s.endsAt - s.startsAt) * share
    })
    const joints = foldingChain(chain).joints.map((j) => j.angle)
    expect(joints).toEqual(shares.map((angle) => expect.closeTo(angle, 12)))
  })
})
