import { describe, expect, it } from "vitest"
import { cantileverRoot, magnification, naturalFrequency } from "../../src/frame/index.js"
import { assemble, elementMass, elementStiffness, evenNodes, leastEigenvalue, without } from "./elements.js"

/** First root of a unit cantilever with a tip mass by finite elements with consistent mass. */
function elementRoot(massRatio: number, n = 24): number {
  const mass = assemble(evenNodes(n), elementMass)
  mass[2 * n]![2 * n]! += massRatio
  return leastEigenvalue(without(assemble(evenNodes(n), elementStiffness), [0, 1]), without(mass, [0, 1])) ** 0.25
}

const ratios = [0, 1e-4, 0.01, 0.1, 0.5, 1, 3, 10, 100, 1000]

describe("naturalFrequency against other routes", () => {
  it("first root by finite elements over all tip masses", () => {
    const most = Math.max(...ratios.map((mu) => Math.abs(cantileverRoot(mu, 1).x / elementRoot(mu) - 1)))
    expect(most).toBeLessThan(1e-7)
  })

  it("lies between Dunkerley's lower and Rayleigh's upper bound", () => {
    for (const mu of [...ratios, 1e6, 1e9]) {
      const square = cantileverRoot(mu, 1).x ** 4
      const dunkerley = 1 / (1 / 1.8751040687 ** 4 + mu / 3)
      // shape of a tip load, y = x²·(3 − x)/2: kinetic 33/140, strain energy 3
      const rayleigh = 3 / (mu + 33 / 140)
      expect(square).toBeGreaterThanOrEqual(dunkerley * (1 - 1e-9))
      expect(square).toBeLessThanOrEqual(rayleigh * (1 + 1e-12))
    }
  })

  it("heavy tips: a spring and a lump; the higher roots those of a bar clamped and pinned", () => {
    const heavy = cantileverRoot(1e9, 1).x
    expect(Math.abs((heavy ** 4 * 1e9) / 3 - 1)).toBeLessThan(1e-9)
    // tan x = tanh x
    for (const mode of [2, 3] as const) {
      const { x } = cantileverRoot(1e8, mode)
      expect(Math.abs(Math.tan(x) - Math.tanh(x))).toBeLessThan(1e-6)
    }
  })

  it("the power series joins the closed form of the tip term", () => {
    // either side of the switch at 0.5, mass ratios found backwards from the equation in long form
    for (const x of [0.4999, 0.5001]) {
      const term = Math.sin(x) * Math.cosh(x) - Math.cos(x) * Math.sinh(x)
      const mu = (1 + Math.cos(x) * Math.cosh(x)) / (x * term)
      expect(Math.abs(cantileverRoot(mu, 1).x / x - 1)).toBeLessThan(1e-13)
    }
  })

  it("magnification by stepping the equation of motion", () => {
    for (const [r, zeta] of [
      [0.5, 0.05],
      [1, 0.05],
      [1.7, 0.1],
    ] as const) {
      // y'' + 2ζy' + y = cos rt, run until the start has died away
      let [y, v, most] = [0, 0, 0]
      const dt = 0.002
      const push = (t: number, p: number, q: number) => Math.cos(r * t) - 2 * zeta * q - p
      for (let t = 0; t < 260; t += dt) {
        const k1 = push(t, y, v)
        const k2 = push(t + dt / 2, y + (dt / 2) * v, v + (dt / 2) * k1)
        y += dt * v + (dt ** 2 / 2) * k1
        v += dt * k2
        if (t > 230) most = Math.max(most, Math.abs(y))
      }
      expect(Math.abs(magnification(r, zeta) / most - 1)).toBeLessThan(3e-3)
    }
  })
})

describe("naturalFrequency", () => {
  const boom = { length: 0.9, section: { outsideDiameter: 0.016, wall: 0.001 }, material: "aluminium-6061" } as const

  it("longer, softer or heavier is slower", () => {
    const bare = naturalFrequency(boom)
    expect(naturalFrequency({ ...boom, length: 1.8 }).frequency / bare.frequency).toBeCloseTo(1 / 4, 10)
    expect(naturalFrequency({ ...boom, tipMass: 0.1 }).frequency).toBeLessThan(bare.frequency)
    expect(naturalFrequency({ ...boom, addedMass: 0.1 }).frequency).toBeLessThan(bare.frequency)
    expect(naturalFrequency({ ...boom, material: "polycarbonate" }).frequency).toBeLessThan(bare.frequency)
    expect(bare.maxFrequency).toBeGreaterThan(bare.frequency)
  })

  it("warns where the steps or their second harmonic fall into the range, not where they are far", () => {
    const at = (stepRate: number, f: number) => {
      const { frequency } = naturalFrequency(boom)
      const length = 0.9 * Math.sqrt(frequency / f)
      return naturalFrequency({ ...boom, length, stepRate })
    }
    expect(at(2, 2).amplification).toBeCloseTo(25, 6)
    expect(at(2, 2).harmonic).toBe(1)
    expect(at(2, 4).harmonic).toBe(2)
    expect(at(2, 4).cautions.map((c) => c.code)).toContain("shaken-by-steps")
    expect(at(2, 12).cautions.map((c) => c.code)).not.toContain("shaken-by-steps")
    expect(at(2, 1).cautions.map((c) => c.code)).toContain("slower-than-steps")
  })

  it("wants a mass along the length", () => {
    const outcome = naturalFrequency.attempt({ length: 1, section: { secondMoment: 1e-9 }, modulus: 1e9 })
    expect(!outcome.ok && "issues" in outcome.error && outcome.error.issues.map((i) => i.path.join("."))).toEqual(["massPerLength"])
  })
})
