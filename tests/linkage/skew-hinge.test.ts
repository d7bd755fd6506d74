import { describe, expect, it } from "vitest"
import { poseSvg, poseText, type SkewHingeInput, skewHinge, skewHingePicture } from "../../src/linkage/index.js"
import { solveLinear } from "../../src/numeric/index.js"
import { derivative } from "./difference.js"
import { lehmer } from "./random.js"

const g = 9.80665
type Vector = readonly [forward: number, left: number, up: number]
type Quaternion = readonly [w: number, x: number, y: number, z: number]
interface Body {
  readonly forward: number
  readonly left: number
  readonly up: number
}
interface Hinge extends SkewHingeInput {
  readonly hinge: Body
  readonly axis: Body
  readonly masses: readonly (Body & { readonly mass: number })[]
  readonly tip: Body
  readonly swing: number
  readonly swingFrom: number
  readonly swingTo: number
  readonly forwardLean: number
  readonly leftLean: number
  readonly pinFriction: number
  readonly pinDiameter: number
  readonly bearingSpan: number
  readonly driveRadius: number
}
const list = ({ forward, left, up }: Body): Vector => [forward, left, up]
const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

/** Hamilton's product. */
const times = ([a, b, c, d]: Quaternion, [e, f, h, i]: Quaternion): Quaternion => [
  a * e - b * f - c * h - d * i,
  a * f + b * e + c * i - d * h,
  a * h - b * i + c * e + d * f,
  a * i + b * h - c * f + d * e,
]

/** A place turned about the hinge by a quaternion. */
function turned(si: Hinge, point: Body, angle: number): Vector {
  const [x, y, z] = list(si.axis)
  const norm = Math.hypot(x, y, z)
  const s = Math.sin(angle / 2) / norm
  const q: Quaternion = [Math.cos(angle / 2), s * x, s * y, s * z]
  const r = minus(list(point), list(si.hinge))
  const [, a, b, c] = times(times(q, [0, ...r]), [q[0], -q[1], -q[2], -q[3]])
  return [a + si.hinge.forward, b + si.hinge.left, c + si.hinge.up]
}

/** Height of a place over the ground with the trunk leaning: forward about the left axis first, then to the left. */
function heightOf(si: Hinge, [f, l, u]: Vector): number {
  const [cf, sf, cl, sl] = [Math.cos(si.forwardLean), Math.sin(si.forwardLean), Math.cos(si.leftLean), Math.sin(si.leftLean)]
  // the body rolled to its left, then the whole tipped forward
  const rolled = u * cl - l * sl
  return rolled * cf - f * sf
}
const potential = (si: Hinge, swing: number) => si.masses.reduce((sum, m) => sum + m.mass * g * heightOf(si, turned(si, m, swing)), 0)

function hingeOf(random: ReturnType<typeof lehmer>): Hinge {
  const point = (): Body => ({ forward: random.real(-0.5, 0.5), left: random.real(-0.5, 0.8), up: random.real(-0.5, 0.5) })
  return {
    hinge: point(),
    axis: { forward: random.real(-1, 1), left: random.real(-1, 1), up: random.real(-1, 1) },
    masses: [1, 2, 3].map(() => ({ mass: random.real(0, 0.5), ...point() })),
    tip: point(),
    swing: random.real(-3, 3),
    swingFrom: random.real(-2, 0),
    swingTo: random.real(0.1, 3),
    forwardLean: random.real(-0.5, 0.5),
    leftLean: random.real(-0.5, 0.5),
    pinFriction: random.real(0, 0.4),
    pinDiameter: random.real(0.002, 0.01),
    bearingSpan: random.real(0.02, 0.1),
    driveRadius: random.sign() > 0 ? 0 : random.real(0.01, 0.05),
  }
}

describe("by quaternions and energies", () => {
  it("puts the tip where a quaternion puts it, and holds with the slope of the potential energy", () => {
    const random = lehmer(14)
    for (let k = 0; k < 60; k++) {
      const si = hingeOf(random)
      const out = skewHinge(si)
      const [f, l, u] = turned(si, si.tip, si.swing)
      expect([out.tipForward, out.tipLeft, out.tipUp]).toEqual([expect.closeTo(f, 12), expect.closeTo(l, 12), expect.closeTo(u, 12)])
      const [slope] = derivative((d) => [potential(si, si.swing + d)], 1e-4) as [number]
      expect(out.effort).toBeCloseTo(slope, 7)
      const speeds = derivative((d) => si.masses.flatMap((m) => [...turned(si, m, si.swing + d)]), 1e-4)
      const inertia = si.masses.reduce((sum, m, i) => sum + m.mass * speeds.slice(3 * i, 3 * i + 3).reduce((s, v) => s + v * v, 0), 0)
      expect(out.inertia).toBeCloseTo(inertia, 8)
      // what an acceleration of the body does: mass times travel per turn, by direction
      const per = [0, 1, 2].map((i) => si.masses.reduce((sum, m, k) => sum + m.mass * (speeds[3 * k + i] as number), 0))
      expect(list(out.perAcceleration)).toEqual(per.map((x) => expect.closeTo(x, 8)))
      const tip = minus([f, l, u], list(si.hinge))
      expect(out.frontReach).toBeCloseTo(Math.hypot(tip[1], tip[2]), 12)
      expect(Math.cos(out.frontAngle) * out.frontReach).toBeCloseTo(tip[1], 12)
      expect(Math.sin(out.frontAngle) * out.frontReach).toBeCloseTo(tip[2], 12)
      expect(out.tipAhead).toBeCloseTo(tip[0], 12)
    }
  })

  it("finds the largest holding moment of the whole swing", () => {
    const random = lehmer(15)
    for (let k = 0; k < 12; k++) {
      const si = hingeOf(random)
      const out = skewHinge(si)
      let largest = 0
      for (let i = 0; i <= 1000; i++)
        largest = Math.max(largest, Math.abs(skewSlope(si, si.swingFrom + ((si.swingTo - si.swingFrom) * i) / 1000)))
      expect(out.maxEffort).toBeCloseTo(largest, 4)
      expect(Math.max(...out.path.map((p) => Math.abs(p.effort)))).toBeLessThanOrEqual(out.maxEffort + 1e-12)
      expect(out.path.at(-1)?.swing).toBeCloseTo(si.swingTo, 12)
    }
  })
})

const skewSlope = (si: Hinge, swing: number) => (potential(si, swing + 1e-5) - potential(si, swing - 1e-5)) / 2e-5

describe("by free bodies", () => {
  it("loads its two bearings as the six equations of balance say, and rubs by them", () => {
    const random = lehmer(16)
    for (let k = 0; k < 40; k++) {
      const si = hingeOf(random)
      const out = skewHinge(si)
      const norm = Math.hypot(...list(si.axis))
      const e = list(si.axis).map((x) => x / norm) as unknown as Vector
      const down = [0, 1, 2].map((i) => -heightOf(si, [0, 1, 2].map((j) => (i === j ? 1 : 0)) as unknown as Vector)) as unknown as Vector
      const [fx, fy, fz, mx, my, mz] = si.masses.reduce<number[]>(
        (sum, m) => {
          const [rx, ry, rz] = minus(turned(si, m, si.swing), list(si.hinge))
          const [wx, wy, wz] = down.map((d) => m.mass * g * d) as [number, number, number]
          return [wx, wy, wz, ry * wz - rz * wy, rz * wx - rx * wz, rx * wy - ry * wx].map((x, i) => x + (sum[i] as number))
        },
        [0, 0, 0, 0, 0, 0],
      ) as [number, number, number, number, number, number]
      // unknown: forces p and q on the bearings at ± half the span, q without a part along the axis, and the drive's moment t
      const h = si.bearingSpan / 2
      const [ex, ey, ez] = e
      const rows = [
        [1, 0, 0, 1, 0, 0, 0],
        [0, 1, 0, 0, 1, 0, 0],
        [0, 0, 1, 0, 0, 1, 0],
        [0, -h * ez, h * ey, 0, h * ez, -h * ey, ex],
        [h * ez, 0, -h * ex, -h * ez, 0, h * ex, ey],
        [-h * ey, h * ex, 0, h * ey, -h * ex, 0, ez],
        [0, 0, 0, ex, ey, ez, 0],
      ]
      const found = solveLinear(rows, [-fx, -fy, -fz, -mx, -my, -mz, 0]) as number[]
      const [p, q, drive] = [found.slice(0, 3), found.slice(3, 6), found[6] as number]
      const along = p.reduce((sum, x, i) => sum + x * (e[i] as number), 0)
      const across = (v: number[]) =>
        Math.hypot(...v.map((x, i) => x - v.reduce((s, y, j) => s + y * (e[j] as number), 0) * (e[i] as number)))
      expect(out.effort).toBeCloseTo(drive, 9)
      expect(out.bearingLoad).toBeCloseTo(across(p) + across(q), 9)
      expect(out.thrust).toBeCloseTo(Math.abs(along), 9)
      expect(list(out.reaction)).toEqual([-fx, -fy, -fz].map((x) => expect.closeTo(x, 9)))
      expect(list(out.moment)).toEqual([-mx, -my, -mz].map((x) => expect.closeTo(x, 9)))
      expect([out.reactionForce, out.reactionMoment]).toEqual([
        expect.closeTo(Math.hypot(fx, fy, fz), 9),
        expect.closeTo(Math.hypot(mx, my, mz), 9),
      ])
      const rub = (moment: number) =>
        ((si.pinFriction * si.pinDiameter) / 2) *
        (across(p) + across(q) + Math.abs(along) + (si.driveRadius ? Math.abs(moment) / si.driveRadius : 0))
      expect(out.turningEffort - out.effort).toBeCloseTo(rub(out.turningEffort), 9)
      expect(out.effort - out.returningEffort).toBeCloseTo(rub(out.returningEffort), 9)
    }
  })

  it("is a plain hinge with its axis forward: weight times level arm, and nothing with its axis upright", () => {
    const part = { masses: [{ mass: 0.4, forward: 0, left: 0.3, up: 0 }], tip: { forward: 0, left: 0.7, up: 0 }, swing: 1, swingTo: 1.2 }
    const plain = skewHinge({ ...part, axis: { forward: 1, left: 0, up: 0 } })
    expect(plain.effort).toBeCloseTo(0.4 * g * 0.3 * Math.cos(1), 12)
    expect(plain.maxEffort).toBeCloseTo(0.4 * g * 0.3, 12)
    expect(plain.frontAngle).toBeCloseTo(1, 12)
    expect(plain.swingRadius).toBeCloseTo(0.7, 12)
    const upright = skewHinge({ ...part, axis: { forward: 0, left: 0, up: 5 } })
    expect(upright.maxEffort).toBeCloseTo(0, 12)
    expect(upright.tipAhead).toBeCloseTo(-0.7 * Math.sin(1), 12)
  })
})

it("mirrors left for right: the axis turns over as a moment does", () => {
  const si = skewHinge.read(skewHinge.example) as unknown as Hinge
  const flip = <T extends Body>(p: T): T => ({ ...p, left: -p.left })
  const other = skewHinge({
    ...si,
    hinge: flip(si.hinge),
    axis: { forward: -si.axis.forward, left: si.axis.left, up: -si.axis.up },
    masses: si.masses.map(flip),
    tip: flip(si.tip),
    leftLean: -si.leftLean,
  })
  const one = skewHinge(si)
  expect(other.tipLeft).toBeCloseTo(-one.tipLeft, 12)
  for (const key of [
    "tipForward",
    "tipUp",
    "effort",
    "turningEffort",
    "returningEffort",
    "maxEffort",
    "bearingLoad",
    "thrust",
    "inertia",
    "frontReach",
  ] as const)
    expect(other[key], key).toBeCloseTo(one[key], 12)
})

it("says whether the tip stands forward of its hinge or behind it", () => {
  const door = {
    axis: { forward: 0, left: 0, up: 1 },
    masses: [{ mass: 0.4, forward: 0, left: 0.3, up: 0 }],
    tip: { forward: 0, left: 0.7, up: 0 },
  }
  const where = (swing: number) =>
    skewHinge({ ...door, swing, swingTo: 1 }).cautions.find((c) => c.code === "not-seen-from-front")?.values.where
  expect([where(-1), where(0), where(1)]).toEqual(["forward of", undefined, "behind"])
})

it("is drawn from the front and from the left", () => {
  const si = skewHinge.read(skewHinge.example)
  const out = skewHinge(skewHinge.example)
  const last = (from: "front" | "left") => skewHingePicture(si, from).lines[2]?.points.at(-1)
  expect(last("front")).toEqual({ x: out.tipLeft, y: out.tipUp })
  expect(last("left")).toEqual({ x: -out.tipForward, y: out.tipUp })
  expect(poseSvg(skewHingePicture(si)).match(/<path /g)).toHaveLength(4)
  expect(poseText(skewHingePicture(si, "left"))).toContain("from the wearer's left")
})
