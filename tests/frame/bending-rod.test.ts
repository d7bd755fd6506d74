import { describe, expect, it } from "vitest"
import { bendingRod, elastica, handlingLoad } from "../../src/frame/index.js"

/**
 * The rod by Runge-Kutta and bisection on the slope of the tip, run from the free tip to the clamp over a unit length:
 * θ'' = −α·cos θ, no curvature at the tip, no slope at the clamp.
 */
function shoot(alpha: number, n = 2000) {
  const run = (tip: number) => {
    let [theta, bend, x, y] = [tip, 0, 0, 0]
    const h = 1 / n
    const rate = (t: number, b: number) => [b, -alpha * Math.cos(t), Math.cos(t), Math.sin(t)] as const
    for (let i = 0; i < n; i++) {
      const a = rate(theta, bend)
      const b = rate(theta + (h / 2) * a[0], bend + (h / 2) * a[1])
      const c = rate(theta + (h / 2) * b[0], bend + (h / 2) * b[1])
      const d = rate(theta + h * c[0], bend + h * c[1])
      const step = (k: 0 | 1 | 2 | 3) => (h / 6) * (a[k] + 2 * b[k] + 2 * c[k] + d[k])
      ;[theta, bend, x, y] = [theta + step(0), bend + step(1), x + step(2), y + step(3)]
    }
    return { clamp: theta, tip, x, y }
  }
  let [low, high] = [0, Math.PI / 2]
  for (let i = 0; i < 60; i++) {
    const mid = (low + high) / 2
    if (run(mid).clamp < 0) low = mid
    else high = mid
  }
  return run((low + high) / 2)
}

describe("elastica against shooting", () => {
  it("slope, drop and reach over the range", () => {
    let most = 0
    for (const alpha of [1e-3, 0.03, 0.3, 0.6756366714, 1, 3, 8, 20, 40]) {
      const [out, shot] = [elastica(alpha), shoot(alpha)]
      most = Math.max(most, Math.abs(out.tipSlope / shot.tip - 1), Math.abs(out.drop / shot.y - 1), Math.abs(out.reach - shot.x))
    }
    expect(most).toBeLessThan(1e-8)
  })

  it("energy: what the force gives up is what the rod stores, to the top of the range", () => {
    for (const alpha of [0.5, 5, 50, 100]) {
      const n = 4000
      let work = 0
      for (let i = 0; i < n; i++) {
        // trapezoids in the square root of the load
        const at = (j: number) => ((i + j) / n) * Math.sqrt(alpha)
        const [a, b] = [at(0), at(1)]
        const rise = elastica(b ** 2).drop - elastica(a ** 2).drop
        work += ((a ** 2 + b ** 2) / 2) * rise
      }
      // first integral: κ² = 2·α·(sin θ_tip − sin θ), so U = ∫ α·(sin θ_tip − sin θ) ds = α·(sin θ_tip − drop)
      const { tipSlope, drop } = elastica(alpha)
      expect(Math.abs(work / (alpha * (Math.sin(tipSlope) - drop)) - 1)).toBeLessThan(1e-5)
    }
  })

  it("small loads: the straight-beam formulas, and no step where they take over", () => {
    for (const alpha of [1e-12, 0.9999e-8, 1.0001e-8, 1e-5]) {
      const out = elastica(alpha)
      expect(Math.abs(out.tipSlope / (alpha / 2) - 1)).toBeLessThan(1e-9)
      expect(Math.abs(out.drop / (alpha / 3) - 1)).toBeLessThan(1e-9)
    }
  })
})

describe("bendingRod", () => {
  const rod = { length: 0.9, section: { outsideDiameter: 0.004 }, material: "glass-pultruded" } as const

  it("drops less than the straight-beam formula says, more with more force, and never further than its length", () => {
    let before = 0
    for (const force of [0.01, 0.1, 0.5, 1, 2, 5, 10]) {
      const out = bendingRod({ ...rod, force })
      expect(out.tipDrop.high).toBeGreaterThan(before)
      expect(out.tipDrop.high).toBeLessThan(Math.min(out.straightDrop, 0.9))
      expect(out.tipDrop.low).toBeLessThan(out.tipDrop.high)
      before = out.tipDrop.high
    }
  })

  it("the moment is taken from the stiffer end, which reaches further: the safe side", () => {
    const out = bendingRod({ ...rod, force: 3 })
    expect(out.clampMoment).toBeGreaterThan(3 * out.tipReach)
  })

  it("refuses what hangs straight down and names the force it still answers", () => {
    const outcome = bendingRod.attempt({ ...rod, force: 1000 })
    expect(outcome.ok).toBe(false)
    if (outcome.ok || !("nearest" in outcome.error)) return
    expect(outcome.error.noSolution).toBe("hangs-down")
    expect(bendingRod.attempt({ ...rod, force: (outcome.error.nearest.force as number) * (1 - 1e-12) }).ok).toBe(true)
  })
})

describe("handlingLoad", () => {
  it("a weight falling onto a spring, stepped in time", () => {
    for (const [dropHeight, staticDeflection] of [
      [0, 0.002],
      [0.01, 0.002],
      [0.3, 0.02],
    ] as const) {
      const g = 9.80665
      const stiffness = g / staticDeflection
      let [y, v, most] = [0, Math.sqrt(2 * g * dropHeight), 0]
      const dt = 1e-6
      while (v >= 0) {
        v += (g - stiffness * (y + (v * dt) / 2)) * dt
        y += v * dt
        most = Math.max(most, y)
      }
      const out = handlingLoad({ weight: 10, dropHeight, staticDeflection })
      expect(Math.abs(out.loadFactor / (most / staticDeflection) - 1)).toBeLessThan(2e-3)
      expect(out.maxDeflection).toBeCloseTo(out.loadFactor * staticDeflection, 12)
    }
  })

  it("walking: no phases of the four harmonics exceed it, and one setting reaches it", () => {
    for (const stepRate of [1, 1.5, 2, 2.8]) {
      const { loadFactor } = handlingLoad({ weight: 1, stepRate })
      const dlf = [
        Math.min(0.56, 0.41 * (stepRate - 0.95)),
        0.069 + 0.0056 * 2 * stepRate,
        0.033 + 0.0064 * 3 * stepRate,
        0.013 + 0.0065 * 4 * stepRate,
      ]
      const most = (phase: number) => {
        let top = 0
        for (let t = 0; t < 400; t++)
          top = Math.max(top, 1 + dlf.reduce((s, a, n) => s + a * Math.cos(((n + 1) * 2 * Math.PI * t) / 400 + phase * n), 0))
        return top
      }
      expect(most(0)).toBeCloseTo(loadFactor, 12)
      for (const phase of [0.3, 1, 2, 3]) expect(most(phase)).toBeLessThanOrEqual(loadFactor + 1e-12)
    }
  })
})
