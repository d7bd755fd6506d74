import { describe, expect, it } from "vitest"
import { pandolf } from "../../src/worn/effort/metabolic-equations.js"
import { metabolicRate } from "../../src/worn/index.js"

/** Pandolf in the newton form of Johnson 1991, equation 5.5.5, heat plus climbing power; rounded coefficients. */
function pandolfNewton(body: number, load: number, speed: number, grade: number): number {
  const [b, l] = [body * 9.81, load * 9.81]
  return 0.15 * b + 0.2 * (b + l) * (l / b) ** 2 + 0.102 * (b + l) * (1.5 * speed ** 2 + 35 * speed * grade)
}

/** Givoni and Goldman in their original units, kcal/h and km/h, level (from memory). */
const givoniOriginal = (total: number, speed: number) => total * (2.3 + 0.32 * (speed * 3.6 - 2.5) ** 1.65) * (4184 / 3600)

const grid = (from: number, to: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)

describe("metabolicRate by second routes", () => {
  it("Pandolf agrees with the newton form to its rounding, over body, load, speed and grade", () => {
    let worst = 0
    for (const body of grid(40, 110, 7))
      for (const share of grid(0, 0.6, 6))
        for (const speed of grid(0, 2, 8))
          for (const grade of grid(0, 0.2, 4)) {
            const kg = pandolf(body, share * body, speed, grade)
            worst = Math.max(worst, Math.abs(pandolfNewton(body, share * body, speed, grade) / kg - 1))
          }
    // 0.15·9.81 = 1.47 against 1.5: the printed coefficients themselves differ by 2 %
    expect(worst).toBeLessThan(0.0191)
    expect(worst).toBeGreaterThan(0)
  })

  it("Givoni and Goldman agrees with its original units on the level within 3.1 %", () => {
    let worst = 0
    for (const total of grid(40, 160, 6))
      for (const walkingSpeed of grid(0.75, 2.5, 35)) {
        const { givoniGoldman } = metabolicRate({ bodyMass: total, walkingSpeed })
        worst = Math.max(worst, Math.abs((givoniGoldman as number) / givoniOriginal(total, walkingSpeed) - 1))
      }
    expect(worst).toBeLessThan(0.031)
  })

  it("never falls when mass is added, anywhere on the level or uphill", () => {
    for (const body of grid(40, 120, 4))
      for (const walkingSpeed of grid(0, 2.5, 10))
        for (const grade of [0, 0.05, 0.2])
          for (const place of ["rigMass", "headMass", "handMass", "footMass"] as const) {
            let before = 0
            for (const mass of grid(0, 40, 16)) {
              const { metabolicRate: rate } = metabolicRate({ bodyMass: body, walkingSpeed, grade, [place]: mass })
              expect(rate).toBeGreaterThanOrEqual(before)
              before = rate
            }
          }
  })

  it("meets its limits: standing unloaded, the level value of the graded equation, downhill corrections", () => {
    const standing = metabolicRate({ bodyMass: 70 })
    expect(standing.pandolf).toBeCloseTo(105, 10)
    expect(standing.looney2019).toBeCloseTo(1.44 * 70, 10)
    expect([standing.acsm, standing.minimumMechanics, standing.givoniGoldman]).toEqual([null, null, null])
    expect(metabolicRate({ bodyMass: 70, walkingSpeed: 1.2 }).looney2019).toBeCloseTo(70 * (1.44 + 1.94 * 1.2 ** 0.43 + 0.24 * 1.2 ** 4), 9)
    const downhill = metabolicRate({ bodyMass: 70, walkingSpeed: 1.34, grade: -0.06 })
    expect(downhill.metabolicRate).toBeLessThan(metabolicRate({ bodyMass: 70, walkingSpeed: 1.34 }).metabolicRate)
    expect([downhill.acsm, downhill.givoniGoldman, downhill.looney2022]).toEqual([null, null, null])
  })

  it("says which equations a case lies outside of, and what the answer is not", () => {
    const codes = (input: Parameters<typeof metabolicRate>[0]) => metabolicRate(input).cautions.map((c) => c.code)
    expect(codes({ bodyMass: 60, rigMass: 6, walkingSpeed: 0.9 })).not.toContain("outside-range")
    expect(codes({ bodyMass: 60, rigMass: 35, walkingSpeed: 0.9 })).toContain("outside-range")
    expect(codes({ bodyMass: 60, rigMass: 100, walkingSpeed: 2.4, grade: 0.44 })).toContain("outside-range")
    expect(codes({ bodyMass: 36, walkingSpeed: 1 })).toContain("small-wearer")
    expect(codes({ bodyMass: 70, headMass: 3 })).toContain("heavy-head")
    expect(codes({ bodyMass: 70, headMass: 2.5 })).not.toContain("heavy-head")
    expect(codes({ bodyMass: 70 })).toContain("take-it-off")
  })
})
