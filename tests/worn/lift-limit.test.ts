import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { liftLimit } from "../../src/worn/index.js"

const grid = (from: number, to: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
const KG = 0.45359237

/** The equation in the manual's US units: pounds and inches. */
function pounds(h: number, v1: number, v2: number, turn: number): number {
  const d = Math.max(Math.abs(v2 - v1), 10)
  return 51 * (10 / Math.max(h, 10)) * (1 - 0.0075 * Math.abs(v1 - 30)) * (0.82 + 1.8 / d) * (1 - 0.0032 * turn)
}

describe("liftLimit by second routes", () => {
  it("agrees with the manual's pound and inch form to its rounded constants, over the whole range", () => {
    let worst = 0
    for (const h of grid(10, 24.8, 8))
      for (const v1 of grid(0, 68, 8))
        for (const v2 of grid(0, 68, 8))
          for (const turn of grid(0, 135, 5)) {
            const out = liftLimit({
              rigMass: 5,
              startHeight: `${v1} in`,
              endHeight: `${v2} in`,
              startReach: `${h} in`,
              startTurn: `${turn} deg`,
              coupling: "good",
            })
            worst = Math.max(worst, Math.abs((pounds(h, v1, v2, turn) * KG) / out.startLimit - 1))
          }
    // 51 lb for 23 kg (0.6 %), 10 in for 25 cm (1.6 %), 30 in and 0.0075/in for 75 cm and 0.003/cm (1.2 %), 1.8 in for 4.5 cm (0.2 %)
    expect(worst).toBeLessThan(1.006 * 1.016 * 1.012 * 1.002 - 1)
    expect(worst).toBeGreaterThan(0.001)
  })

  it("a farther, more turned, more frequent or worse held lift never has a higher limit", () => {
    const limit = (change: object) => liftLimit({ rigMass: 9, startHeight: 0.6, endHeight: 1.3, startReach: 0.4, ...change }).massLimit
    const falling = (values: number[]) =>
      values.slice(1).forEach((v, i) => {
        expect(v).toBeLessThanOrEqual((values[i] as number) + 1e-12)
      })
    falling(grid(0.1, 0.63, 50).map((startReach) => limit({ startReach })))
    falling(grid(0, 2.35, 50).map((startTurn) => limit({ startTurn })))
    falling(grid(0.2, 12, 100).map((liftRate) => limit({ liftRate })))
    falling((["good", "fair", "poor"] as const).map((coupling) => limit({ coupling })))
    falling((["short", "medium", "long"] as const).map((duration) => limit({ duration, liftRate: 3 })))
    falling(grid(0.75, 1.75, 40).map((endHeight) => limit({ startHeight: 0.75, endHeight })))
  })

  it("swapping start and end keeps the lower limit, and load over limit is the index", () => {
    for (const [a, b] of [
      [0.1, 1.2],
      [0.8, 1.6],
    ] as const) {
      const up = liftLimit({ rigMass: 8, startHeight: a, endHeight: b, startReach: 0.3, endReach: 0.5, endTurn: 0.4 })
      const down = liftLimit({ rigMass: 8, startHeight: b, endHeight: a, startReach: 0.5, endReach: 0.3, startTurn: 0.4 })
      expect(up.massLimit).toBeCloseTo(down.massLimit, 12)
      expect(up.liftingIndex * up.massLimit).toBeCloseTo(8, 12)
    }
  })

  it("counts people as the guidance shares a lift (L23, paragraph 120): 26.7 kg for two who lift 20 kg each, 30 kg for three", () => {
    // held at 25 cm and hip height the limit is 23 kg, and the reference mass of these lifters 20 kg
    const people = (rigMass: number) =>
      liftLimit({ rigMass, startHeight: 0.75, endHeight: 0.75, startReach: 0.25, coupling: "good", lifter: "men-other" }).peopleCount
    expect([0.01, 20, 20.01, 26.66, 26.68, 29.99, 30.01, 150].map(people)).toEqual([1, 1, 2, 2, 3, 3, null, null])
  })

  it("refuses what the tables do not cover, and keeps lifting apart from wearing", () => {
    const often = liftLimit.attempt({ rigMass: 5, startHeight: 0.3, endHeight: 1, startReach: 0.3, liftRate: 13 })
    if (often.ok || !(often.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(often.error.nearest.liftRate).toBe(12)
    expect(often.error.shortBy).toBe(1)
    expect(liftLimit.attempt({ rigMass: 5, startHeight: 0.3, endHeight: 1, startReach: 0.3, liftRate: 12 }).ok).toBe(true)
    for (const beyond of [{ startReach: 0.64 }, { startHeight: 1.76 }, { startTurn: 2.4 }])
      expect(liftLimit.attempt({ rigMass: 5, startHeight: 0.3, endHeight: 1, startReach: 0.3, ...beyond }).ok).toBe(false)
    const codes = liftLimit({ rigMass: 30, startHeight: 0, endHeight: 1.3, startReach: 0.5 }).cautions.map((c) => c.code)
    expect(codes).toEqual(expect.arrayContaining(["take-it-off", "lifting-only", "over-limit", "over-reference", "too-heavy-for-three"]))
  })
})
