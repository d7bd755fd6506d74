import { describe, expect, it } from "vitest"
import { foldingChain, standardGravity } from "../../../src/linkage/index.js"
import { foldingChainMechanism } from "../../../src/rig/mechanisms/folding-chain.js"
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { heldEffort, rodMasses } from "./crank-route.js"
import { drawMechanisms, placesIn, randomNumbers } from "./draw.js"
import { holdsMechanism, type Point, type SecondRoute, stateAt } from "./second-route.js"

interface ChainPart {
  readonly hinge: Point
  readonly driverTravel: number
  readonly tipMass: number
  readonly segments: readonly {
    length: number
    mass: number
    centreShare: number
    foldedAngle: number
    ratio: number
    startsAt: number
    endsAt: number
    area: number
    jointFriction: number
  }[]
}

type V = readonly [number, number]

/** Turn of a joint from folded: the part of the driver's turn that lies within its own share of it. */
function turned(si: ChainPart, i: number, q: number): number {
  const s = si.segments[i] as ChainPart["segments"][number]
  const [from, to] = [s.startsAt * si.driverTravel, s.endsAt * si.driverTravel]
  return s.ratio * (q <= from ? 0 : q >= to ? to - from : q - from)
}

/** Joints and directions: each segment's direction is the one before it, multiplied by its own turn as complex numbers. */
function bones(si: ChainPart, q: number): readonly { from: V; way: V }[] {
  let [x, y]: V = [si.hinge.x, si.hinge.y]
  let [c, s]: V = [1, 0]
  return si.segments.map((segment, i) => {
    const turn = segment.foldedAngle + turned(si, i, q)
    ;[c, s] = [c * Math.cos(turn) - s * Math.sin(turn), c * Math.sin(turn) + s * Math.cos(turn)]
    const from: V = [x, y]
    ;[x, y] = [x + segment.length * c, y + segment.length * s]
    return { from, way: [c, s] as V }
  })
}
const along = ({ from, way }: { from: V; way: V }, by: number): V => [from[0] + by * way[0], from[1] + by * way[1]]

function chainRoute(si: ChainPart): SecondRoute {
  return {
    masses: (q) => {
      const all = bones(si, q)
      const rods = si.segments.flatMap((s, i) => {
        const bone = all[i] as (typeof all)[number]
        const centre = s.centreShare * s.length
        return rodMasses(s.mass, along(bone, centre - s.length / 2), along(bone, centre + s.length / 2))
      })
      const last = si.segments.length - 1
      const tip = along(all[last] as (typeof all)[number], si.segments[last]?.length ?? 0)
      return [...rods, { mass: si.tipMass, at: [tip[0], tip[1], 0] }]
    },
    panels: (q) =>
      bones(si, q).map((bone, i) => {
        const s = si.segments[i] as ChainPart["segments"][number]
        const [x, y] = along(bone, s.length / 2)
        return { area: s.area, at: [x, y, 0] as Triple, normal: [-bone.way[1], bone.way[0], 0] as Triple }
      }),
    rubs: (q) => si.segments.map((s, i) => ({ moment: s.jointFriction, turn: turned(si, i, q) })),
  }
}

describe("folding chain", () => {
  const drawn = drawMechanisms(foldingChainMechanism, 20, 101).found
  it("moves its segments as complex numbers multiplied say", () => {
    const random = randomNumbers(23)
    let [held, still] = [0, 0]
    for (const { mechanism, si } of drawn)
      for (const q of placesIn(mechanism, 3, random)) {
        const h = 2e-4 * mechanism.high
        if (new Set([-10, -2, 0, 2, 10].map((k) => stateAt(mechanism, q + k * h).form)).size > 1) continue
        if (stateAt(mechanism, q).inertia === 0) still++
        held++
        holdsMechanism(mechanism, chainRoute(si as unknown as ChainPart), q, h, 3e-6)
      }
    expect(held).toBeGreaterThan(40)
    expect(still).toBeLessThan(held / 2)
  })
  it("each pin carries the weight outward of it", () => {
    for (const { mechanism, si } of drawn) {
      const part = si as unknown as ChainPart
      const forces = mechanism.reactions(0, 0, [1, -10, 2])
      expect(forces.map((r) => r.name)).toEqual(mechanism.pose(0).pins.map((p) => p.name))
      forces.forEach(({ force }, i) => {
        const outward = part.segments.slice(i).reduce((sum, s) => sum + s.mass, part.tipMass)
        expect(force[0]).toBeCloseTo(outward, 9)
        expect(force[1]).toBeCloseTo(-10 * outward, 9)
        expect(force[2]).toBeCloseTo(2 * outward, 9)
      })
    }
  })
  it("agrees with foldingChain: effort, inertia and its slope, tip", () => {
    const segments = [
      { length: 0.3, mass: 0.2, centreShare: 0.5, foldedAngle: 1.2, ratio: 0.6, startsAt: 0, endsAt: 0.8 },
      { length: 0.4, mass: 0.15, centreShare: 0.4, foldedAngle: -2.5, ratio: 1.1, startsAt: 0.2, endsAt: 1 },
      { length: 0.25, mass: 0.08, centreShare: 0.6, foldedAngle: 2.8, ratio: -0.7, startsAt: 0.3, endsAt: 1 },
    ]
    const mechanism = foldingChainMechanism.build({
      type: "folding-chain",
      hinge: { x: 0, y: 0 },
      segments: segments.map((s) => ({ ...s, width: 0, area: 0, jointFriction: 0 })),
      driverTravel: 2.2,
      tipMass: 0.05,
    }) as Mechanism
    const tilt = 0.2
    for (const position of [0.1, 0.25, 0.6, 0.9]) {
      const out = foldingChain({ segments, driverTravel: 2.2, position, tipMass: 0.05, frameTilt: tilt })
      const state = stateAt(mechanism, 2.2 * position)
      const down: Triple = [-standardGravity * Math.sin(tilt), -standardGravity * Math.cos(tilt), 0]
      expect(heldEffort(state, down)).toBeCloseTo(out.effort, 10)
      expect(state.inertia).toBeCloseTo(out.inertia, 12)
      expect(state.inertiaSlope).toBeCloseTo(out.inertiaSlope, 12)
      const { tip } = mechanism.pose(2.2 * position)
      expect(Math.hypot(tip[0] - out.tipX, tip[1] - out.tipY)).toBeLessThan(1e-12)
    }
  })
})
