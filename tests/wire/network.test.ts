import fc from "fast-check"
import { abs, lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { largestShare, layOut, type Network, settle, solveNetwork, type TwoPole, unloaded } from "../../src/wire/network/index.js"

const ohms = (from: number, to: number, resistance: number): TwoPole => ({ from, to, resistance, emf: 0, current: null, power: null })
const cell = (to: number, emf: number, resistance: number, from = 0): TwoPole => ({ from, to, resistance, emf, current: null, power: null })
const draws = (from: number, power: number, to = 0): TwoPole => ({ from, to, resistance: 0, emf: 0, current: null, power })
const takes = (from: number, current: number, to = 0): TwoPole => ({ from, to, resistance: 0, emf: 0, current, power: null })
const laidOut = (nodes: number, branches: readonly TwoPole[]) => layOut(nodes, branches, 0) as Network

/** Whether a symmetric matrix is positive definite: Cholesky's pivots. */
function definite(matrix: readonly (readonly number[])[]): boolean {
  const a = matrix.map((row) => [...row])
  for (let k = 0; k < a.length; k++) {
    const top = a[k] as number[]
    if (!((top[k] as number) > 0)) return false
    for (let i = k + 1; i < a.length; i++) {
      const row = a[i] as number[]
      const part = (row[k] as number) / (top[k] as number)
      for (let j = k; j < a.length; j++) row[j] = (row[j] as number) - part * (top[j] as number)
    }
  }
  return true
}

/**
 * Node voltages by Newton's method on the dense nodal equations (mathjs lusolve), the power raised in small shares from nothing
 * so that no step can jump to the other state; null where a share does not settle.
 */
function dense(nodes: number, branches: readonly TwoPole[], shares: readonly number[]): { volts: number[]; stable: boolean } | null {
  const size = nodes - 1
  const matrixAt = (volts: readonly number[], share: number) => {
    const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0))
    const left = new Array<number>(size).fill(0)
    for (const { from, to, resistance, emf, current, power } of branches) {
      const [a, b] = [from - 1, to - 1]
      const v = (a < 0 ? 0 : (volts[a] as number)) - (b < 0 ? 0 : (volts[b] as number))
      const through = current ?? (power === null ? (v + emf) / resistance : (share * power) / v)
      const slope = current !== null ? 0 : power === null ? 1 / resistance : (-share * power) / v ** 2
      for (const [row, sign] of [
        [a, 1],
        [b, -1],
      ] as const) {
        if (row < 0) continue
        left[row] = (left[row] as number) + sign * through
        const line = matrix[row] as number[]
        if (a >= 0) line[a] = (line[a] as number) + sign * slope
        if (b >= 0) line[b] = (line[b] as number) - sign * slope
      }
    }
    return { matrix, left }
  }
  let volts = new Array<number>(size).fill(1)
  let stable = true
  for (const share of shares) {
    let settled = false
    for (let k = 0; k < 60 && !settled; k++) {
      const { matrix, left } = matrixAt(volts, share)
      const step = (lusolve(matrix, left) as number[][]).map((r) => r[0] as number)
      volts = volts.map((v, i) => v - (step[i] as number))
      if (volts.some((v) => !Number.isFinite(v))) return null
      settled = Math.max(...(abs(step) as number[])) < 1e-12
    }
    if (!settled) return null
    stable = definite(matrixAt(volts, share).matrix)
  }
  return { volts, stable }
}

const spread = (to: number, steps = 8) => Array.from({ length: steps + 1 }, (_, k) => (to * k) / steps)

/** Nodes 1 … n joined by a tree, some further links, several sources, loads of all sorts to ground and between nodes. */
const networks = fc.integer({ min: 2, max: 9 }).chain((n) => {
  const node = fc.integer({ min: 1, max: n })
  const small = fc.double({ min: -3, max: 0, noNaN: true }).map((x) => 10 ** x)
  return fc
    .record({
      tree: fc.tuple(...Array.from({ length: n - 1 }, (_, k) => fc.tuple(fc.integer({ min: 1, max: k + 1 }), small))),
      links: fc.array(fc.tuple(node, node, small), { maxLength: 5 }),
      cells: fc.array(fc.tuple(node, fc.double({ min: 9, max: 13, noNaN: true }), small), { minLength: 1, maxLength: 3 }),
      warm: fc.array(fc.tuple(node, fc.double({ min: 2, max: 1e7, noNaN: true })), { maxLength: 3 }),
      steady: fc.array(fc.tuple(node, fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 2 }),
      powers: fc.array(fc.tuple(node, fc.double({ min: 0.5, max: 30, noNaN: true })), { minLength: 1, maxLength: 4 }),
    })
    .map(({ tree, links, cells, warm, steady, powers }) => ({
      nodes: n + 1,
      branches: [
        ...cells.map(([at, e, r]) => cell(at, e, r)),
        ...tree.map(([to, r], k) => ohms(k + 2, to, r)),
        ...links.filter(([a, b]) => a !== b).map(([a, b, r]) => ohms(a, b, r)),
        ...warm.map(([at, r]) => ohms(at, 0, r)),
        ...steady.map(([at, i]) => takes(at, i)),
        ...powers.map(([at, p]) => draws(at, p)),
      ],
    }))
})

describe("the network kernel", () => {
  it("settles where dense Newton steps by mathjs settle when the power is raised from nothing, and that state holds its voltage", () => {
    let [answers, refusals, worst] = [0, 0, 0]
    fc.assert(
      fc.property(networks, ({ nodes, branches }) => {
        const found = solveNetwork(nodes, branches, 0)
        if ("fault" in found) {
          if (found.fault !== "too-much-power") return
          refusals++
          const below = dense(nodes, branches, spread(found.scale * 0.999))
          expect(below?.stable).toBe(true)
          // past the limit no state holds its voltage
          const above = dense(nodes, branches, spread(found.scale * 1.002))
          expect(above?.stable ?? false).toBe(false)
          return
        }
        const other = dense(nodes, branches, spread(1))
        if (other === null || !other.stable) return
        answers++
        other.volts.forEach((v, i) => {
          worst = Math.max(worst, Math.abs(v - (found.voltages[i + 1] as number)))
        })
        expect(found.residual).toBeLessThan(1e-11)
      }),
      { numRuns: 150, seed: 51 },
    )
    expect([answers > 50, refusals > 15]).toEqual([true, true])
    expect(worst).toBeLessThan(1e-9)
  })

  it("is on the branch of the higher voltage right up to the fold, against the closed form", () => {
    const net = (power: number) => [cell(1, 12, 0.2), draws(1, power)]
    for (const nearer of [1e-1, 1e-3, 1e-5, 1e-7, 1e-9]) {
      const found = solveNetwork(2, net(180 * (1 - nearer)), 0)
      if ("fault" in found) throw new Error(`refused ${nearer} below the limit`)
      // V = E/2 · (1 + √(1 − P/P_most))
      expect(Math.abs((found.voltages[1] as number) - 6 * (1 + Math.sqrt(nearer)))).toBeLessThan(1e-15 / Math.sqrt(nearer) + 1e-9)
      const above = solveNetwork(2, net(180 * (1 + nearer)), 0)
      expect("fault" in above && above.fault === "too-much-power" ? above.scale * (1 + nearer) : 0).toBeCloseTo(1, 9)
    }
  })

  it("meets milliohms with megohms, and ideal contacts", () => {
    // 12 V behind a micro-ohm, an ideal contact, two 10 MΩ in series: 0.6 µA
    const found = solveNetwork(4, [cell(1, 12, 1e-6), ohms(1, 2, 0), ohms(2, 3, 1e7), ohms(3, 0, 1e7)], 0)
    if ("fault" in found) throw new Error(found.fault)
    expect(Math.abs((found.currents[1] as number) / 6e-7 - 1)).toBeLessThan(1e-12)
    expect(found.voltages[3]).toBeCloseTo(6, 12)
    // two contacts side by side share as their resistances, a nano-ohm beside a milliohm
    const shared = solveNetwork(3, [cell(1, 12, 0.05), ohms(1, 2, 1e-9), ohms(1, 2, 1e-3), takes(2, 10)], 0)
    if ("fault" in shared) throw new Error(shared.fault)
    expect(Math.abs((shared.currents[2] as number) / (10 / (1 + 1e6)) - 1)).toBeLessThan(1e-3)
    expect((shared.currents[1] as number) + (shared.currents[2] as number)).toBeCloseTo(10, 12)
  })

  it("gives a ring of a thousand even loads the voltages of its halves in closed form, and its steady state again when laid out once", () => {
    const n = 1000
    const [r, inner, each] = [4e-4, 0.003, 0.02]
    const ring = (law: (at: number) => TwoPole) => [
      cell(1, 12.6, inner),
      ...Array.from({ length: n }, (_, i) => ohms(1 + i, 1 + ((i + 1) % n), r)),
      ...Array.from({ length: n }, (_, i) => law(1 + i)),
    ]
    const found = solveNetwork(
      n + 1,
      ring((at) => takes(at, each)),
      0,
    )
    if ("fault" in found) throw new Error(found.fault)
    // node k of n even loads: the drop from the feed is r·i·k·(n − k)/2
    for (const k of [1, 7, 250, 500, 999])
      expect((found.voltages[1] as number) - (found.voltages[1 + k] as number)).toBeCloseTo((r * each * k * (n - k)) / 2, 10)
    expect(found.voltages[1]).toBeCloseTo(12.6 - inner * n * each, 10)
    // power loads: every one draws its own, and the same layout settles other powers without being laid out anew
    const net = laidOut(
      n + 1,
      ring((at) => draws(at, 0.06)),
    )
    unloaded(net, true)
    expect(settle(net, 1)).toBeLessThan(8)
    const first = net.volts[500] as number
    net.power.fill(0.12, 1 + n)
    expect(settle(net, 1)).not.toBeNull()
    expect(net.volts[500] as number).toBeLessThan(first)
    net.power.fill(0.06, 1 + n)
    unloaded(net, true)
    settle(net, 1)
    expect(net.volts[500]).toBe(first)
    const taken = Array.from({ length: n }, (_, i) => (net.amps[1 + n + i] as number) * (net.volts[1 + i] as number))
    for (const p of taken) expect(Math.abs(p / 0.06 - 1)).toBeLessThan(1e-12)
    net.power.fill(6, 1 + n)
    const limit = largestShare(net)
    unloaded(net, true)
    expect(settle(net, limit * (1 - 1e-7))).not.toBeNull()
    expect(settle(net, limit * (1 + 1e-7))).toBeNull()
  })
})
