import { describe, expect, it } from "vitest"
import { fourBarPose } from "../../src/linkage/four-bar/pose.js"
import { placeActuator, planarLinkage, servoPushrod, sweptEnvelope } from "../../src/linkage/index.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

describe("branches of mechanisms", () => {
  it("sees two parallelograms on one crank lie flat together, whichever way and in whatever steps they are driven", () => {
    for (const sign of [1, -1])
      for (const steps of [0, 1, 2, 7]) {
        const start = 0.4 * sign
        const pin = (x: number) => ({ x: x + 0.04 * Math.cos(start), y: 0.04 * Math.sin(start) })
        const both = planarLinkage.attempt({
          pivots: [
            { name: "O", x: 0, y: 0 },
            { name: "Q", x: 0.1, y: 0 },
            { name: "R", x: 0.17, y: 0 },
          ],
          points: [
            { name: "A", ...pin(0) },
            { name: "B", ...pin(0.1) },
            { name: "C", ...pin(0.17) },
          ],
          bars: [
            { from: "O", to: "A" },
            { from: "A", to: "B" },
            { from: "Q", to: "B" },
            { from: "A", to: "C" },
            { from: "R", to: "C" },
          ],
          cranks: [{ from: "O", to: "A", end: -start }],
          steps,
        })
        expect(refusalOf(both).noSolution).toBe("singular")
      }
  })

  it("assembles six-bars whose every pin is sketched up to 20 mm off, at lengths that fit", () => {
    const random = lehmer(3)
    let assembled = 0
    while (assembled < 25) {
      const [d, a, b, c, t] = [0.1, 0.035, random.real(0.09, 0.12), random.real(0.07, 0.1), random.real(-2, 2)]
      const off = () => random.real(-0.02, 0.02)
      const A = { x: a * Math.cos(t), y: a * Math.sin(t) }
      const f = Math.hypot(d - A.x, A.y)
      const u = (f * f + b * b - c * c) / (2 * f)
      if (!(b > Math.abs(u))) continue
      const h = Math.sqrt(b * b - u * u)
      const B = { x: A.x + (u * (d - A.x) + h * A.y) / f, y: A.y + (h * (d - A.x) - u * A.y) / f }
      const R = { x: 0.2, y: 0.02 }
      const g = Math.hypot(R.x - B.x, R.y - B.y)
      const bars = [a, b, c, g * random.real(0.55, 0.9), g * random.real(0.55, 0.9)]
      const out = planarLinkage({
        pivots: [
          { name: "O", x: 0, y: 0 },
          { name: "Q", x: d, y: 0 },
          { name: "R", ...R },
        ],
        points: [
          { name: "A", x: A.x + off(), y: A.y + off() },
          { name: "B", x: B.x + off(), y: B.y + off() },
          { name: "E", x: (B.x + R.x) / 2 + off(), y: (B.y + R.y) / 2 + 0.04 + off() },
        ],
        bars: ["OA", "AB", "QB", "BE", "RE"].map((pair, i) => ({ from: pair.charAt(0), to: pair.charAt(1), length: bars[i] as number })),
        cranks: [{ from: "O", to: "A", start: t }],
      })
      out.bars.forEach((bar, i) => {
        expect(bar.length).toBeCloseTo(bars[i] as number, 11)
      })
      assembled++
    }
  })

  it("keeps a slider as far off its line, left or right, as it is sketched", () => {
    for (const off of [0.03, -0.03]) {
      const out = planarLinkage({
        pivots: [
          { name: "O", x: 0, y: 0.5 },
          { name: "S", x: 0, y: 0 },
          { name: "T", x: 1, y: 0 },
        ],
        points: [
          { name: "A", x: 0.1, y: 0.5 },
          { name: "P", x: 0.4, y: off },
        ],
        bars: [{ from: "O", to: "A" }],
        cranks: [{ from: "O", to: "A" }],
        sliders: [{ point: "P", from: "S", to: "T" }],
        actuators: [{ from: "S", to: "P", end: Math.hypot(0.5, off) }],
      })
      const p = out.points.find((point) => point.name === "P")
      expect(p?.x).toBeCloseTo(0.5, 12)
      expect(p?.y).toBeCloseTo(off, 12)
      expect(out.sliders[0]?.position).toBeCloseTo(0.5, 12)
    }
  })

  it("follows links of up to 99 m on a 2 cm crank round a whole turn, either way, where the circles of closed form meet", () => {
    for (const long of [10, 99])
      for (const way of [1, -1]) {
        const at = (angle: number) => {
          const pose = fourBarPose(0.05, 0.02, long, long, angle, "open")
          if (typeof pose === "number") throw new Error("turns fully")
          return pose
        }
        const out = planarLinkage({
          pivots: [
            { name: "O", x: 0, y: 0 },
            { name: "Q", x: 0.05, y: 0 },
          ],
          points: [
            { name: "A", ...at(1).inputPin },
            { name: "B", ...at(1).outputPin },
          ],
          bars: [
            { from: "O", to: "A", length: 0.02 },
            { from: "A", to: "B", length: long },
            { from: "Q", to: "B", length: long },
          ],
          cranks: [{ from: "O", to: "A", start: 1, end: 1 + way * 2 * Math.PI }],
          steps: 8,
          trace: "B",
        })
        out.path.forEach((p, i) => {
          const { x, y } = at(1 + (way * i * Math.PI) / 4).outputPin
          // rounding of a metre, as much as links 0.03 apart in 99 blow it up
          expect(Math.hypot(p.x - x, p.y - y)).toBeLessThan(1e-14 * long * long)
        })
      }
  })
})

describe("envelopes with few steps", () => {
  it("holds a rocker that turns sharply near its dead point, asked for two poses", () => {
    const arm = {
      pivots: [
        { name: "O", x: 0, y: 0 },
        { name: "Q", x: 0.1, y: 0 },
      ],
      points: [
        { name: "A", x: 0.0375, y: 0.06495 },
        { name: "B", x: 0.0757, y: 0.0814 },
      ],
      bars: [
        { from: "O", to: "A", length: 0.075 },
        { from: "A", to: "B", length: 0.045 },
        { from: "Q", to: "B", length: 0.085 },
      ],
      cranks: [{ from: "O", to: "A", end: 1.64 }],
    }
    const out = sweptEnvelope({ ...arm, duration: 2, tip: "B", steps: 1 })
    const ys: number[] = []
    for (let k = 0; k <= 60; k++) {
      const end = 1.64 - 0.55 * (k / 60) ** 4
      const b = planarLinkage({ ...arm, cranks: [{ from: "O", to: "A", end }] }).points.find((p) => p.name === "B")
      ys.push(b?.y as number)
      expect(b?.x).toBeLessThanOrEqual(out.right)
      expect(b?.x).toBeGreaterThanOrEqual(out.left)
    }
    expect(Math.max(...ys)).toBeLessThanOrEqual(out.top)
    expect(Math.min(...ys)).toBeGreaterThanOrEqual(out.bottom)
    expect(out.tip).toHaveLength(3)
  })
})

describe("inputs beyond the trade", () => {
  it("refuses a horn turned by 1e17 radians at once", () => {
    const outcome = servoPushrod.attempt({ ...servoPushrod.example, servoHornAngle: 1e17 })
    expect(!outcome.ok && outcome.error.message).toContain("servoHornAngle")
  })
  it("searches on for a placement within a rating that lies between bound and best", () => {
    const loose = { ...placeActuator.example, frontPoints: 0, gapLimit: 0.3, maxBoxes: 400 }
    const first = placeActuator({ ...loose, ratedForce: 1e4 })
    const ratedForce = first.peakForce * 0.9999
    expect(first.forceBound as number).toBeLessThan(ratedForce)
    const best = placeActuator({ ...placeActuator.example, frontPoints: 0, gapLimit: 1e-4, ratedForce: 1e4 }).peakForce
    const outcome = placeActuator.attempt({ ...loose, ratedForce })
    // a placement is found, or it is proved that there is none
    if (outcome.ok) expect(outcome.value.peakForce).toBeLessThanOrEqual(ratedForce)
    else expect(best).toBeGreaterThan(ratedForce)
  })
})
