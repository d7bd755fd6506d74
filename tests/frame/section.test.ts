import { describe, expect, it } from "vitest"
import { type ShapeInput, shearModulusOf, tubeSection } from "../../src/frame/index.js"

/** Strip integration of area, second moment and first moment of a shape given by its width at height y. */
function strips(widthAt: (y: number) => number, top: number, kinks: readonly number[], n = 4000) {
  const edges = [...new Set([-top, ...kinks.flatMap((k) => [-k, k]), top])].sort((a, b) => a - b)
  let [area, second, first] = [0, 0, 0]
  edges.slice(1).forEach((to, i) => {
    const from = edges[i] as number
    // cosine spacing: the width of a ring rises like a square root at each kink
    for (let k = 0; k < n; k++) {
      const [a, b] = [k, k + 1].map((j) => from + ((to - from) * (1 - Math.cos((Math.PI * j) / n))) / 2) as [number, number]
      const y = (a + b) / 2
      const slice = widthAt(y) * (b - a)
      area += slice
      second += slice * (y ** 2 + (b - a) ** 2 / 12)
      if (y > 0) first += slice * y
    }
  })
  return { area, second, first }
}

/**
 * Torsion constant of a rectangle, hollow where `wall` is given, by finite differences on Prandtl's stress function:
 * ∇²φ = −2, φ = 0 outside, constant in the hole by the circulation theorem; J = 2·∫φ.
 */
function membrane(width: number, height: number, wall: number | null, cells: number): number {
  const step = Math.min(width, height) / cells
  const [nx, ny] = [Math.round(width / step), Math.round(height / step)]
  const w = wall === null ? Number.POSITIVE_INFINITY : Math.round(wall / step)
  const inHole = (i: number, j: number) => i >= w && i <= nx - w && j >= w && j <= ny - w
  const relax = (source: number, hole: number) => {
    const phi = new Float64Array((nx + 1) * (ny + 1))
    const id = (i: number, j: number) => i * (ny + 1) + j
    for (let i = 0; i <= nx; i++) for (let j = 0; j <= ny; j++) if (inHole(i, j)) phi[id(i, j)] = hole
    const omega = 2 / (1 + Math.sin(Math.PI / Math.max(nx, ny)))
    for (let sweep = 0; sweep < 12 * Math.max(nx, ny); sweep++) {
      let most = 0
      for (let i = 1; i < nx; i++)
        for (let j = 1; j < ny; j++) {
          if (inHole(i, j)) continue
          const k = id(i, j)
          const around = phi[k - 1]! + phi[k + 1]! + phi[id(i - 1, j)]! + phi[id(i + 1, j)]!
          const change = omega * ((around + source * step ** 2) / 4 - phi[k]!)
          phi[k] = phi[k]! + change
          most = Math.max(most, Math.abs(change))
        }
      if (most < 1e-13 * width * height) break
    }
    let [sum, edge] = [0, 0]
    for (let i = 0; i <= nx; i++) for (let j = 0; j <= ny; j++) if (!inHole(i, j)) sum += phi[id(i, j)]! * step ** 2
    // outward slope times length along the rim of the hole
    if (wall !== null) {
      for (let i = w; i <= nx - w; i++) edge += 2 * (phi[id(i, w - 1)]! - phi[id(i, w)]!)
      for (let j = w; j <= ny - w; j++) edge += 2 * (phi[id(w - 1, j)]! - phi[id(w, j)]!)
    }
    return { sum, edge }
  }
  const loaded = relax(2, 0)
  if (wall === null) return 2 * loaded.sum
  const raised = relax(0, 1)
  // cells of the nodes outside the rim end, and the slopes lie, half a step outside it
  const ring = (width - 2 * wall + step) * (height - 2 * wall + step)
  const level = (-2 * ring - loaded.edge) / raised.edge
  return 2 * (loaded.sum + level * (raised.sum + ring))
}

const worst = (pairs: readonly (readonly [number, number])[]) => Math.max(...pairs.map(([a, b]) => Math.abs(a / b - 1)))
const thinToSolid = [0.02, 0.1, 0.25, 0.45, null]

describe("tubeSection against other routes", () => {
  it("rings: area and moments by strips, torsion by Bredt's formula for ever thinner walls", () => {
    const pairs: [number, number][] = []
    for (const outsideDiameter of [0.0005, 0.02, 0.1, 1.5])
      for (const part of thinToSolid) {
        const wall = part === null ? null : part * outsideDiameter
        const out = tubeSection({ outsideDiameter, wall })
        const ro = outsideDiameter / 2
        const ri = wall === null ? 0 : ro - wall
        const chord = (r: number, y: number) => 2 * Math.sqrt(Math.max(0, r * r - y * y))
        const sums = strips((y) => chord(ro, y) - chord(ri, y), ro, [ri])
        pairs.push([out.area, sums.area], [out.secondMoment, sums.second], [out.firstMoment, sums.first])
      }
    expect(worst(pairs)).toBeLessThan(2e-6)
    const bredt = [1e-2, 1e-3, 1e-4].map((part) => {
      const thin = tubeSection({ outsideDiameter: 0.1, wall: part * 0.1 })
      const middle = 0.1 * (1 - part)
      const enclosed = (Math.PI / 4) * middle ** 2
      return Math.abs(thin.torsionConstant / ((4 * enclosed ** 2 * part * 0.1) / (Math.PI * middle)) - 1)
    })
    expect(bredt[0]).toBeLessThan(2e-4)
    expect(bredt[2]).toBeLessThan(2e-8)
  })

  it("rectangles: area and moments by strips", () => {
    const pairs: [number, number][] = []
    for (const [width, height] of [
      [0.02, 0.02],
      [0.005, 0.04],
      [0.3, 0.01],
    ] as const)
      for (const part of thinToSolid) {
        const wall = part === null ? null : part * Math.min(width, height)
        const out = tubeSection({ width, height, wall })
        const inner = wall === null ? 0 : height / 2 - wall
        const sums = strips((y) => (wall !== null && Math.abs(y) < inner ? 2 * wall : width), height / 2, wall === null ? [] : [inner])
        pairs.push([out.area, sums.area], [out.secondMoment, sums.second], [out.firstMoment, sums.first])
      }
    expect(worst(pairs)).toBeLessThan(2e-6)
  })

  it("solid rectangles: torsion by finite differences and by the textbook table", () => {
    const pairs = [1, 1.5, 2, 4].map((ratio): [number, number] => {
      const [coarse, fine] = [24, 48].map((n) => membrane(ratio, 1, null, n)) as [number, number]
      return [tubeSection({ width: ratio / 4, height: 1 / 4 }).torsionConstant * 4 ** 4, (4 * fine - coarse) / 3]
    })
    expect(worst(pairs)).toBeLessThan(2e-5)
    // Timoshenko and Goodier, Theory of Elasticity, article 109: k1 and k2 of a/b, printed to 3 figures, from memory
    const table = [
      [1, 0.1406, 0.208],
      [1.2, 0.166, 0.219],
      [1.5, 0.196, 0.231],
      [2, 0.229, 0.246],
      [2.5, 0.249, 0.258],
      [3, 0.263, 0.267],
      [4, 0.281, 0.282],
      [5, 0.291, 0.291],
      [10, 0.312, 0.312],
    ] as const
    for (const [ratio, k1, k2] of table) {
      const out = tubeSection({ width: 0.1 * ratio, height: 0.1 })
      expect(Math.abs(out.torsionConstant / (ratio * 1e-4) - k1), `k1 at ${ratio}`).toBeLessThan(6e-4)
      expect(Math.abs(out.torsionModulus / (ratio * 1e-3) - k2), `k2 at ${ratio}`).toBeLessThan(6e-4)
    }
  })

  it("hollow rectangles: Bredt is near the full solution and below it", () => {
    for (const [ratio, part, off] of [
      [1, 0.05, 0.03],
      [1, 0.1, 0.06],
      [2, 0.1, 0.05],
    ] as const) {
      const full = membrane(ratio, 1, part, 80)
      const bredt = tubeSection({ width: ratio, height: 1, wall: part }).torsionConstant
      expect(bredt / full).toBeGreaterThan(1 - off)
      expect(bredt / full).toBeLessThan(1)
    }
  })

  it("turning a rectangle over swaps nothing that should not change", () => {
    const a = tubeSection({ width: 0.01, height: 0.03, wall: 0.001, torque: 2 })
    const b = tubeSection({ width: 0.03, height: 0.01, wall: 0.001, torque: 2 })
    expect(b.area).toBeCloseTo(a.area, 15)
    expect(b.torsionStress).toBeCloseTo(a.torsionStress, 3)
    expect(b.secondMoment).toBeLessThan(a.secondMoment)
  })

  it("equivalent stresses: nothing but torsion, nothing but bending, and the shear force of a thin ring", () => {
    const torsion = tubeSection({ outsideDiameter: 0.02, wall: 0.001, torque: 5 })
    expect(torsion.vonMisesStress / torsion.torsionStress).toBeCloseTo(Math.sqrt(3), 12)
    expect(torsion.trescaStress / torsion.torsionStress).toBeCloseTo(2, 12)
    const bending = tubeSection({ outsideDiameter: 0.02, wall: 0.001, moment: -5 })
    expect(bending.vonMisesStress).toBe(bending.bendingStress)
    const thin = tubeSection({ outsideDiameter: 0.1, wall: 1e-5, shearForce: 10 })
    expect((thin.shearStress * thin.area) / 10).toBeCloseTo(2, 6)
    const solid = tubeSection({ outsideDiameter: 0.1, shearForce: 10 })
    expect((solid.shearStress * solid.area) / 10).toBeCloseTo(4 / 3, 12)
    const bar = tubeSection({ width: 0.02, height: 0.05, shearForce: 10 })
    expect((bar.shearStress * bar.area) / 10).toBeCloseTo(3 / 2, 12)
  })

  it("isotropic shear modulus at the ends of Poisson's ratio", () => {
    expect(shearModulusOf(3, 0.5)).toBeCloseTo(1, 12)
    expect(shearModulusOf(3, 0)).toBe(1.5)
  })

  it("scaling every length by s scales area by s², moments of area by s⁴", () => {
    const shapes: ShapeInput[] = [
      { outsideDiameter: 0.02, wall: 0.001 },
      { width: 0.02, height: 0.03 },
      { width: 0.02, height: 0.03, wall: 0.002 },
    ]
    for (const shape of shapes) {
      const big = Object.fromEntries(Object.entries(shape).map(([k, v]) => [k, 3 * (v as number)])) as ShapeInput
      const [a, b] = [tubeSection(shape), tubeSection(big)]
      expect(b.area / a.area).toBeCloseTo(9, 9)
      expect(b.secondMoment / a.secondMoment).toBeCloseTo(81, 9)
      expect(b.torsionConstant / a.torsionConstant).toBeCloseTo(81, 9)
      expect(b.torsionModulus / a.torsionModulus).toBeCloseTo(27, 9)
    }
  })

  it("refuses what has no one answer", () => {
    const codes = (input: unknown) => {
      const outcome = tubeSection.attempt(input)
      return !outcome.ok && "issues" in outcome.error ? outcome.error.issues.map((i) => `${i.code} ${i.path.join(".")}`) : []
    }
    expect(codes({})).toEqual(["inconsistent pipe"])
    expect(codes({ outsideDiameter: 0.02, pipe: "1" })).toEqual(["inconsistent outsideDiameter"])
    expect(codes({ outsideDiameter: 0.02, wall: 0.01 })).toEqual(["inconsistent wall"])
    expect(codes({ width: 0.02 })).toEqual(["inconsistent height"])
    expect(codes({ pipe: "1", wall: 0.001 })).toEqual(["inconsistent wall"])
    expect(codes({ outsideDiameter: 0.02, length: 1, torque: 1, material: "carbon-pultruded" })).toEqual(["inconsistent shearModulus"])
    expect(tubeSection.attempt({ outsideDiameter: 0.02, wall: 0.00999 }).ok).toBe(true)
  })

  it("refuses a material above its limit and names the limit", () => {
    const outcome = tubeSection.attempt({ pipe: "1/2", material: "pvc-pipe", materialTemperature: 61 })
    expect(outcome.ok).toBe(false)
    if (!outcome.ok)
      expect(outcome.error.toJSON()).toMatchObject({ noSolution: "too-hot", shortBy: 1, nearest: { materialTemperature: 60 } })
    expect(tubeSection.attempt({ pipe: "1/2", material: "pvc-pipe", materialTemperature: 60 }).ok).toBe(true)
  })
})
