import { describe, expect, it } from "vitest"
import {
  integralOf,
  integralOver,
  integralTo,
  integrate,
  nodesAndWeights,
  type Piece,
  type Piecewise,
  piecewise,
  valueAt,
} from "../../src/numeric/index.js"

const one =
  (f: (x: number) => number, form: (x: number) => number = () => 0) =>
  (x: number, out: Float64Array) => {
    out[0] = f(x)
    return form(x)
  }
const options = { nodes: 16, relative: [1e-13], floor: [0] }
const at = (table: Piecewise, x: number) => {
  const piece = table.pieces.find((p) => x >= p.a && x <= p.b)
  if (!piece) throw new RangeError(`no piece at ${x}`)
  return valueAt(piece, 1, 0, x)
}
const whole = (table: Piecewise) => table.pieces.reduce((sum, p) => sum + integralOver(p, 1, 0), 0)
const fine = (a: number, b: number) => Array.from({ length: 1001 }, (_, i) => a + ((b - a) * i) / 1000)

describe("piecewise polynomials", () => {
  // closed forms of the integrals: any table of integrals
  const smooth: readonly (readonly [string, (x: number) => number, (x: number) => number, number, number])[] = [
    ["e^x", Math.exp, Math.exp, -1, 3],
    ["1/(1 + 25x²)", (x) => 1 / (1 + 25 * x * x), (x) => Math.atan(5 * x) / 5, -1, 1],
    ["cos 40x", (x) => Math.cos(40 * x), (x) => Math.sin(40 * x) / 40, 0, 2],
    ["√x", Math.sqrt, (x) => (2 * x ** 1.5) / 3, 0, 1],
  ]
  it.each(smooth)("meet %s between its nodes, and its integral to every place", (_, f, primitive, a, b) => {
    const table = piecewise(one(f), a, b, options)
    expect(table.failed).toBeNull()
    for (const x of fine(a, b)) expect(Math.abs(at(table, x) - f(x))).toBeLessThan(2e-7 * (f === Math.sqrt ? 1 : 1e-5))
    expect(whole(table)).toBeCloseTo(primitive(b) - primitive(a), 12)
    let before = 0
    for (const piece of table.pieces) {
      for (const share of [0, 0.137, 0.5, 0.9, 1]) {
        const x = piece.a + share * (piece.b - piece.a)
        expect(before + integralTo(piece, 1, 0, x)).toBeCloseTo(primitive(x) - primitive(a), 12)
      }
      before += integralTo(piece, 1, 0, piece.b)
    }
  })

  it("have weights that make every power up to their number right: 2/(k + 1) or nothing on −1 to 1", () => {
    const table = piecewise(
      one((x) => x),
      -1,
      1,
      options,
    )
    const [piece] = table.pieces
    if (!piece) throw new RangeError("no piece")
    const nodes = nodesAndWeights(piece, 1)
    for (let k = 0; k < 16; k++) expect(nodes.reduce((sum, [x, w]) => sum + w * x ** k, 0)).toBeCloseTo(k % 2 ? 0 : 2 / (k + 1), 14)
  })

  it("split where the form changes, found or told, and meet both sides", () => {
    // the outermost of sixteen nodes lie a quarter of a hundredth inside: what changes beyond them has to be told
    for (const kink of [0.3, 1e-4, 0.77777, 0.9971, 0.9991]) {
      const f = (x: number) => (x < kink ? Math.exp(x) : 5 - 3 * x)
      const form = (x: number) => (x < kink ? 1 : 2)
      for (const splits of kink > 0.0025 && kink < 0.9975 ? [[], [kink]] : [[kink]]) {
        const table = piecewise(one(f, form), 0, 1, { ...options, splits })
        const edges = table.pieces.map((p) => p.b)
        expect(Math.min(...edges.map((edge) => Math.abs(edge - kink)))).toBeLessThan(1e-12)
        for (const x of fine(0, 1)) if (Math.abs(x - kink) > 1e-9) expect(at(table, x)).toBeCloseTo(f(x), 11)
      }
    }
  })

  it("agree with adaptive quadrature on a vector, each component by its own digits", () => {
    const f = (x: number, out: Float64Array) => {
      out[0] = 1 / (0.02 + (x - 0.4) ** 2)
      out[1] = Math.sin(9 * x) * 1e-3
      return 0
    }
    const table = piecewise(f, 0, 1, { nodes: 16, relative: [1e-13, 1e-13], floor: [0, 0] })
    const buffer = new Float64Array(2)
    for (const k of [0, 1]) {
      const second = integrate(
        (x) => {
          f(x, buffer)
          return buffer[k] as number
        },
        0,
        1,
        1e-13,
      ).value
      const first = table.pieces.reduce((sum, p) => sum + integralOver(p, 2, k), 0)
      expect(Math.abs(first / second - 1)).toBeLessThan(1e-12)
    }
    expect(table.rest).toBeLessThanOrEqual(1)
  })

  it("tell the place where a function has no value, and say what is left where they are stopped", () => {
    const stops = piecewise(
      one(Math.exp, (x) => (x > 0.6 ? -1 : 0)),
      0,
      1,
      options,
    )
    expect(stops.failed).toBeGreaterThan(0.6)
    // stopped at a change of form, beyond which there is no value
    const both = piecewise(
      one(Math.exp, (x) => (x > 0.6 ? -1 : x > 0.3 ? 1 : 0)),
      0,
      1,
      { ...options, most: 4 },
    )
    expect(both.failed).toBeGreaterThan(0.6)
    const rough = piecewise(
      one((x) => Math.abs(x - 0.31)),
      0,
      1,
      { ...options, most: 100 },
    )
    expect(rough.rest).toBeGreaterThan(1)
    expect(rough.evaluations).toBeLessThan(200)
  })

  it("integrate a function of what they hold from their nodes, and say so where nodes do not tell it", () => {
    // u = e^x on [−1, 1], so that ∫ du/dx · f(u) dx = ∫ f(u) du: a function of u times u has a closed form
    const [piece] = piecewise(one(Math.exp), -1, 1, { ...options, nodes: 24 }).pieces as [Piece]
    const whole = integralOf(piece, 1, 0, (u) => u / (1 + u * u), 1e-10)
    expect(whole).toBeCloseTo(Math.atan(Math.E) - Math.atan(1 / Math.E), 12)
    expect(integralOf(piece, 1, 0, (u) => Math.abs(u - 1), 1e-10)).toBeNull()
    expect(integralOf(piece, 1, 0, (u) => (u > 2 ? Number.NaN : u), 1e-10)).toBeNull()
    expect(integralOf(piece, 1, 0, (u) => 1 / (u - Math.exp(piece.b) - 1e-3), 1e-10)).toBeNull()
  })
})
