import { describe, expect, it } from "vitest"
import { planarLinkage, type SweptEnvelope, type SweptEnvelopeInput, sweptEnvelope } from "../../src/linkage/index.js"
import { lehmer } from "./random.js"

const wing: SweptEnvelopeInput = {
  pivots: [
    { name: "O", x: 0, y: 0 },
    { name: "Q", x: 0.06, y: 0 },
  ],
  points: [
    { name: "A", x: 0.0078, y: 0.0443 },
    { name: "B", x: 0.0697, y: 0.0491 },
    { name: "C", x: 0.1, y: 0.15 },
    { name: "D", x: 0.3, y: 0.2 },
  ],
  bars: [
    { from: "O", to: "A" },
    { from: "A", to: "B" },
    { from: "Q", to: "B" },
  ],
  carried: [
    { point: "C", from: "A", to: "B" },
    { point: "D", from: "Q", to: "B" },
  ],
  cranks: [{ from: "O", to: "A", end: 2.4 }],
  halfWidth: 0.02,
  duration: 3,
  tip: "D",
  steps: 20,
  strips: 16,
}

/** Whether a point is inside an outline, by counting crossings. */
function isInside(outline: SweptEnvelope["outline"], x: number, y: number): boolean {
  let inside = false
  outline.forEach((p, i) => {
    const after = outline[i + 1]
    const q = after && after.part === p.part ? after : (outline.find((c) => c.part === p.part) as typeof p)
    if (p.y > y !== q.y > y && x < p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y)) inside = !inside
  })
  return inside
}

describe("sweptEnvelope", () => {
  it("knows a turning arm by heart", () => {
    const random = lehmer(37)
    for (let k = 0; k < 14; k++) {
      const [length, start, turn, width] = [random.real(0.1, 3), random.real(-3, 3), random.real(0.2, 3), random.real(0, 0.2)]
      const arm: SweptEnvelopeInput = {
        pivots: [{ name: "hip", x: 0, y: 0 }],
        points: [{ name: "tip", x: length * Math.cos(start), y: length * Math.sin(start) }],
        bars: [{ from: "hip", to: "tip" }],
        cranks: [{ from: "hip", to: "tip", end: start + turn }],
        halfWidth: width,
        duration: 2,
        tip: "tip",
        steps: 20,
        grid: 40,
      }
      const out = sweptEnvelope(arm)
      const angles = [start, start + turn]
      for (let q = Math.ceil(start / (Math.PI / 2)); (q * Math.PI) / 2 < start + turn; q++) angles.push((q * Math.PI) / 2)
      const [xs, ys] = [angles.map((a) => length * Math.cos(a)), angles.map((a) => length * Math.sin(a))]
      const exact = [Math.min(0, ...xs) - width, Math.max(0, ...xs) + width, Math.min(0, ...ys) - width, Math.max(0, ...ys) + width]
      const found = [out.left, out.right, out.bottom, out.top]
      // never inside the truth, and outside it by no more than the allowance
      found.forEach((value, i) => {
        const outside = (i % 2 ? 1 : -1) * (value - (exact[i] as number))
        expect(outside).toBeGreaterThan(-1e-12)
        expect(outside).toBeLessThan(out.errorEstimate + 1e-12)
      })
      expect(out.errorEstimate).toBeLessThan(length * 3e-4)
      // it sweeps a sector: its area, and no more than a rim of the allowances
      if (width < 0.05) {
        const thin = sweptEnvelope({ ...arm, halfWidth: 0 })
        const sector = (turn * length ** 2) / 2
        expect(thin.outlineArea).toBeGreaterThan(sector * (1 - 1e-12))
        expect(thin.outlineArea).toBeLessThan(sector + (thin.errorEstimate + thin.outlineAllowance) * (2 + turn) * length * 1.1)
      }
      expect(out.peakTipSpeed).toBeCloseTo((length * turn) / 2, 9)
      expect(out.tipPath).toBeLessThanOrEqual(length * turn)
      expect(out.tipPath / (length * turn)).toBeGreaterThan(0.9999)
    }
  })

  it("lets nothing of the mechanism out of outline, limits or profile, between its poses either", () => {
    const out = sweptEnvelope(wing)
    const random = lehmer(43)
    let nearest = 1
    for (let k = 0; k < 100; k++) {
      const start = Math.atan2(0.0443, 0.0078)
      const { pivots, points, bars, carried } = wing
      const pose = planarLinkage({
        pivots,
        points,
        bars,
        carried: carried ?? [],
        cranks: [{ from: "O", to: "A", end: start + (2.4 - start) * random.real(0, 1) }],
      })
      const at = (name: string) => pose.points.find((p) => p.name === name) as (typeof pose.points)[number]
      for (const [a, b] of [
        ["O", "A"],
        ["A", "B"],
        ["A", "C"],
        ["B", "C"],
        ["Q", "B"],
        ["Q", "D"],
        ["B", "D"],
      ] as const) {
        const t = random.real(0, 1)
        const [x, y] = [at(a).x + t * (at(b).x - at(a).x), at(a).y + t * (at(b).y - at(a).y)]
        expect(isInside(out.outline, x, y)).toBe(true)
        // and so is what stands out around it
        const turn = random.real(0, 2 * Math.PI)
        expect(isInside(out.outline, x + 0.02 * Math.cos(turn), y + 0.02 * Math.sin(turn))).toBe(true)
        const strip = out.profile.find((s) => x >= s.from && x <= s.to) as (typeof out.profile)[number]
        expect(y + 0.02).toBeLessThanOrEqual((strip.top as number) + 1e-9)
        expect(y - 0.02).toBeGreaterThanOrEqual((strip.bottom as number) - 1e-9)
        nearest = Math.min(nearest, (strip.top as number) - y - 0.02)
      }
    }
    // and the profile is not merely a wide box: it comes close to what passes beneath it
    expect(nearest).toBeLessThan(out.sweptHeight / 25)
  })

  it("holds a thin arm that moves far from pose to pose, in narrow strips too, and leaves the bay of a folding pair empty", () => {
    const random = lehmer(47)
    const arm = (steps: number): SweptEnvelopeInput => ({
      pivots: [{ name: "hip", x: 0, y: 0 }],
      points: [{ name: "tip", x: 1, y: 0 }],
      bars: [{ from: "hip", to: "tip" }],
      cranks: [{ from: "hip", to: "tip", end: 4.5 }],
      duration: 2,
      tip: "tip",
      steps,
      strips: 150,
    })
    for (const steps of [1, 2, 4, 20]) {
      const out = sweptEnvelope(arm(steps))
      for (let k = 0; k < 150; k++) {
        const [r, t] = [random.real(0, 1), random.real(0, 4.5)]
        const [x, y] = [r * Math.cos(t), r * Math.sin(t)]
        expect(isInside(out.outline, x, y)).toBe(true)
        const strip = out.profile.find((s) => x >= s.from && x <= s.to) as (typeof out.profile)[number]
        expect(y).toBeLessThanOrEqual((strip.top as number) + 1e-9)
        expect(y).toBeGreaterThanOrEqual((strip.bottom as number) - 1e-9)
      }
      if (steps < 20) continue
      // nothing is claimed in the open quarter, nor farther out than the allowances
      for (let k = 0; k < 150; k++) {
        const [r, t] = [random.real(0.3, 1), random.real(4.75, 6)]
        expect(isInside(out.outline, r * Math.cos(t), r * Math.sin(t))).toBe(false)
      }
      for (const c of out.outline) expect(Math.hypot(c.x, c.y)).toBeLessThan(1 + out.errorEstimate + out.outlineAllowance)
    }
  })

  it("draws parts that nothing joins apart", () => {
    const out = sweptEnvelope({
      pivots: [
        { name: "left", x: 0, y: 0 },
        { name: "right", x: 1, y: 0 },
      ],
      points: [
        { name: "a", x: 0, y: 0.3 },
        { name: "b", x: 1, y: 0.3 },
      ],
      bars: [
        { from: "left", to: "a" },
        { from: "right", to: "b" },
      ],
      cranks: [
        { from: "left", to: "a", end: 2 },
        { from: "right", to: "b", end: 1 },
      ],
      duration: 1,
      tip: "b",
    })
    expect(new Set(out.outline.map((c) => c.part)).size).toBe(2)
    expect(isInside(out.outline, 0.5, 0.1)).toBe(false)
  })

  it("has sizes folded, half way and raised equal to those of the single poses, and tip speeds to the path's slope", () => {
    const out = sweptEnvelope(wing)
    const first = sweptEnvelope({ ...wing, cranks: [{ from: "O", to: "A", end: Math.atan2(0.0443, 0.0078) + 1e-9 }] })
    expect(first.spanRaised).toBeCloseTo(out.spanFolded, 7)
    expect(first.heightMid).toBeCloseTo(out.heightFolded, 7)
    const fine = sweptEnvelope({ ...wing, steps: 200 })
    const h = 3 / 400
    fine.tip.slice(1, -1).forEach((p, i) => {
      const [a, b] = [fine.tip[i], fine.tip[i + 2]] as [typeof p, typeof p]
      expect(Math.hypot(b.x - a.x, b.y - a.y) / (2 * h)).toBeCloseTo(p.speed, 4)
    })
    expect(fine.errorEstimate).toBeLessThan(out.errorEstimate / 90)
  })

  it("is as wide and high as the parts: a metre of arm, level and upright, half its width all round", () => {
    const out = sweptEnvelope({
      pivots: [{ name: "hip", x: 0, y: 0 }],
      points: [{ name: "tip", x: 1, y: 0 }],
      bars: [{ from: "hip", to: "tip" }],
      cranks: [{ from: "hip", to: "tip", start: 0, end: Math.PI / 2 }],
      halfWidth: 0.05,
      duration: 2,
      tip: "tip",
      steps: 6,
    })
    expect([out.spanFolded, out.heightFolded, out.spanRaised, out.heightRaised].map((x) => Number(x.toFixed(9)))).toEqual([
      1.1, 0.1, 0.1, 1.1,
    ])
    expect([out.spanMid, out.heightMid].map((x) => Number(x.toFixed(9)))).toEqual([0.807106781, 0.807106781])
  })
})
