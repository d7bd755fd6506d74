import { describe, expect, it } from "vitest"
import { skewHinge, standardGravity } from "../../../src/linkage/index.js"
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { skewHingeMechanism } from "../../../src/rig/mechanisms/skew-hinge.js"
import { skewHingeRod } from "../../../src/rig/mechanisms/skew-hinge-rod.js"
import { heldEffort } from "./crank-route.js"
import { drawMechanisms, placesIn, randomNumbers } from "./draw.js"
import { cordEnergy, holdsMechanism, type SecondRoute, stateAt } from "./second-route.js"

interface Spot {
  readonly x: number
  readonly y: number
  readonly z: number
}
interface SkewPart {
  readonly hinge: Spot
  readonly axis: Spot
  readonly tip: Spot
  readonly masses: readonly (Spot & { mass: number })[]
  readonly panels: readonly { area: number; centre: Spot; normal: Spot }[]
  readonly springs: readonly { stiffness: number; freeLength: number; fixedPivot: Spot; movingPivot: Spot }[]
  readonly hingeFriction: number
}

/** A turn by a unit quaternion, multiplied out: no cross products, no Rodrigues. */
function turnedBy(axis: Spot, angle: number, v: Triple): Triple {
  const length = Math.sqrt(axis.x ** 2 + axis.y ** 2 + axis.z ** 2)
  const half = Math.sin(angle / 2) / length
  const [w, i, j, k] = [Math.cos(angle / 2), half * axis.x, half * axis.y, half * axis.z]
  return [
    (1 - 2 * (j * j + k * k)) * v[0] + 2 * (i * j - k * w) * v[1] + 2 * (i * k + j * w) * v[2],
    2 * (i * j + k * w) * v[0] + (1 - 2 * (i * i + k * k)) * v[1] + 2 * (j * k - i * w) * v[2],
    2 * (i * k - j * w) * v[0] + 2 * (j * k + i * w) * v[1] + (1 - 2 * (i * i + j * j)) * v[2],
  ]
}
const triple = (p: Spot): Triple => [p.x, p.y, p.z]
function swung(si: SkewPart, angle: number, p: Spot): Triple {
  const t = turnedBy(si.axis, angle, [p.x - si.hinge.x, p.y - si.hinge.y, p.z - si.hinge.z])
  return [si.hinge.x + t[0], si.hinge.y + t[1], si.hinge.z + t[2]]
}

function skewRoute(si: SkewPart, swing: (q: number) => number): SecondRoute {
  return {
    masses: (q) => si.masses.map((m) => ({ mass: m.mass, at: swung(si, swing(q), m) })),
    energy: (q) =>
      si.springs.reduce(
        (sum, s) => sum + cordEnergy(s.stiffness, s.freeLength, triple(s.fixedPivot), swung(si, swing(q), s.movingPivot)),
        0,
      ),
    panels: (q) =>
      si.panels.map((p) => {
        const length = Math.hypot(p.normal.x, p.normal.y, p.normal.z)
        const n = turnedBy(si.axis, swing(q), triple(p.normal))
        return { area: p.area, at: swung(si, swing(q), p.centre), normal: [n[0] / length, n[1] / length, n[2] / length] }
      }),
    rubs: (q) => [{ moment: si.hingeFriction, turn: swing(q) }],
  }
}

/** The swing at which the pivots stand apart by a length, by Newton's method from a guess, to the last digit. */
function swingFor(si: SkewPart & { fixedPivot: Spot; movingPivot: Spot }, length: number, guess: number): number {
  const gap = (swing: number) =>
    Math.hypot(...swung(si, swing, si.movingPivot).map((v, i) => v - (triple(si.fixedPivot)[i] as number))) - length
  let swing = guess
  for (let k = 0; k < 30; k++) swing -= gap(swing) / ((gap(swing + 1e-6) - gap(swing - 1e-6)) / 2e-6)
  return swing
}

const changesForm = (mechanism: Mechanism, q: number, h: number) =>
  new Set([-10, -2, 0, 2, 10].map((k) => stateAt(mechanism, q + k * h).form)).size > 1

describe("skew hinges against turns by quaternions", () => {
  it("turned by a shaft: 20 drawn", () => {
    const random = randomNumbers(12)
    for (const { mechanism, si } of drawMechanisms(skewHingeMechanism, 20, 61).found)
      for (const q of placesIn(mechanism, 3, random))
        if (!changesForm(mechanism, q, 1e-3))
          holdsMechanism(
            mechanism,
            skewRoute(si as unknown as SkewPart, (at) => at),
            q,
            1e-3,
          )
  })
  it("moved by a rod: 20 drawn, the swing by Newton's method", () => {
    const random = randomNumbers(13)
    for (const { mechanism, si } of drawMechanisms(skewHingeRod, 20, 62).found) {
      const part = si as unknown as SkewPart & { fixedPivot: Spot; movingPivot: Spot; assembly: string }
      for (const q of placesIn(mechanism, 3, random)) {
        const h = 2e-4 * (mechanism.high - mechanism.low)
        if (changesForm(mechanism, q, h)) continue
        const { shown } = mechanism.pose(q)
        const swing = (at: number) => swingFor(part, at, shown)
        expect(swing(q)).toBeCloseTo(shown, 8)
        expect(Math.sign(swing(q + h) - swing(q - h))).toBe(part.assembly === "right-handed" ? 1 : -1)
        holdsMechanism(mechanism, skewRoute(part, swing), q, h, 1e-5)
      }
    }
  })
  it("ends where no swing brings the pivots farther apart or closer", () => {
    for (const { mechanism, si } of drawMechanisms(skewHingeRod, 20, 63).found) {
      const part = si as unknown as SkewPart & { fixedPivot: Spot; movingPivot: Spot }
      const gaps = Array.from({ length: 20000 }, (_, k) =>
        Math.hypot(...swung(part, (k * Math.PI) / 1e4, part.movingPivot).map((v, i) => v - (triple(part.fixedPivot)[i] as number))),
      )
      expect(mechanism.low).toBeCloseTo(Math.min(...gaps), 5)
      expect(mechanism.high).toBeCloseTo(Math.max(...gaps), 5)
    }
  })
  it("pins: forces add up to nothing, and moments about the axis where the drive holds it", () => {
    const random = randomNumbers(14)
    for (const member of [skewHingeMechanism, skewHingeRod])
      for (const { mechanism, si } of drawMechanisms(member as typeof skewHingeRod, 20, 64).found) {
        const part = si as unknown as SkewPart & { fixedPivot?: Spot; movingPivot?: Spot }
        const [q] = placesIn(mechanism, 1, random) as [number]
        const down: Triple = [4 * random() - 2, -standardGravity, 4 * random() - 2]
        const effort = heldEffort(stateAt(mechanism, q), down)
        const { shown } = mechanism.pose(q)
        const force = new Map(mechanism.reactions(q, effort, down).map((r) => [r.name, r.force]))
        const loads = part.masses.map((m) => ({ at: swung(part, shown, m), force: down.map((g) => g * m.mass) }))
        for (const s of part.springs) {
          const at = swung(part, shown, s.movingPivot)
          const away = triple(s.fixedPivot).map((v, i) => v - (at[i] as number))
          const length = Math.hypot(...away)
          loads.push({ at, force: away.map((v) => (v * Math.max(0, s.stiffness * (length - s.freeLength))) / length) })
        }
        if (part.movingPivot) loads.push({ at: swung(part, shown, part.movingPivot), force: [...(force.get("moving pivot") as Triple)] })
        const size = loads.reduce((sum, l) => sum + Math.hypot(...l.force), 0)
        for (const axis of [0, 1, 2])
          expect(
            Math.abs(loads.reduce((sum, l) => sum + (l.force[axis] as number), 0) - (force.get("hinge")?.[axis] as number)),
          ).toBeLessThan(1e-8 * size)
        const a = triple(part.axis).map((v) => v / Math.hypot(...triple(part.axis))) as [number, number, number]
        const about = loads.reduce((sum, l) => {
          const r = [l.at[0] - part.hinge.x, l.at[1] - part.hinge.y, l.at[2] - part.hinge.z] as const
          const f = l.force as [number, number, number]
          return sum + a[0] * (r[1] * f[2] - r[2] * f[1]) + a[1] * (r[2] * f[0] - r[0] * f[2]) + a[2] * (r[0] * f[1] - r[1] * f[0])
        }, 0)
        expect(Math.abs(about + (mechanism.travel === "angle" ? effort : 0))).toBeLessThan(1e-7 * size)
        if (part.movingPivot)
          for (const axis of [0, 1, 2])
            expect((force.get("fixed pivot")?.[axis] as number) + (force.get("moving pivot")?.[axis] as number)).toBe(0)
      }
  })
  it("agrees with skewHinge: effort, inertia, tip and acceleration effect of its own example", () => {
    const answer = skewHinge({ ...skewHinge.example, pinFriction: 0, driveRadius: 0 } as Parameters<typeof skewHinge>[0])
    // any right-handed frame: x forward, y left, z up
    const mm = (f: number, l: number, u: number) => ({ x: f / 1000, y: l / 1000, z: u / 1000 })
    const mechanism = skewHingeMechanism.build({
      type: "skew-hinge",
      hinge: mm(-60, 120, 150),
      axis: { x: 0.9, y: -0.3, z: 0.4 },
      tip: mm(-160, 900, 80),
      masses: [
        { name: "frame", mass: 0.35, ...mm(-80, 350, 160) },
        { name: "lantern", mass: 0.12, ...mm(-140, 700, 120) },
      ],
      panels: [],
      springs: [],
      hingeFriction: 0,
      startAngle: 0,
    }) as Mechanism
    const q = (35 * Math.PI) / 180
    const [f, l] = [(8 * Math.PI) / 180, (3 * Math.PI) / 180]
    const down: Triple = [Math.sin(f), Math.cos(f) * Math.sin(l), -Math.cos(f) * Math.cos(l)].map(
      (v) => v * standardGravity,
    ) as unknown as Triple
    const state = stateAt(mechanism, q)
    expect(heldEffort(state, down)).toBeCloseTo(answer.effort, 10)
    expect(state.inertia).toBeCloseTo(answer.inertia, 12)
    expect([state.massX, state.massY, state.massZ].map((v) => v.toFixed(10))).toEqual(
      [answer.perAcceleration.forward, answer.perAcceleration.left, answer.perAcceleration.up].map((v) => v.toFixed(10)),
    )
    const [x, y, z] = mechanism.pose(q).tip
    expect(Math.hypot(x - answer.tipForward, y - answer.tipLeft, z - answer.tipUp)).toBeLessThan(1e-12)
  })
})
