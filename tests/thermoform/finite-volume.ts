import type { Body, Drive } from "../../src/thermoform/conduction.js"

/**
 * Temperatures of a layered body by finite volumes: cell-centred, second order in space, an L-stable two-stage Runge–Kutta
 * (γ = 1 − 1/√2) in time on a grid graded towards the start. Shares nothing with the series solution but the problem's description.
 */
function march(
  body: Body,
  drive: Drive,
  end: number,
  cells: number,
  steps: number,
): { faces: [number, number]; interfaces: number[]; cells: number[] } {
  const round = body.shape === "cylinder"
  const dx: number[] = []
  const k: number[] = []
  const c: number[] = []
  let t: number[] = []
  const total = body.layers.reduce((s, l) => s + l.thickness, 0)
  const cuts: number[] = []
  body.layers.forEach((layer, j) => {
    const n = Math.max(8, 2 * Math.round((cells * layer.thickness) / total / 2))
    for (let i = 0; i < n; i++) {
      dx.push(layer.thickness / n)
      k.push(layer.conductivity)
      c.push(layer.heatCapacity)
      t.push(drive.initial[j] as number)
    }
    cuts.push(dx.length)
  })
  const n = dx.length
  const left: number[] = []
  let x = body.start
  for (let i = 0; i < n; i++) {
    left.push(x)
    x += dx[i] as number
  }
  const area = (r: number) => (round ? r : 1)
  // conductance between neighbours: half cells in series, by the exact law of the shape
  const half = (r: number, from: number, to: number, ki: number) => (round ? (r > 0 || from > 0 ? Math.log(to / from) : 0) : to - from) / ki
  const mass = dx.map((d, i) => (c[i] as number) * (round ? ((left[i] as number) + d / 2) * d : d))
  const link: number[] = []
  for (let i = 0; i + 1 < n; i++) {
    const middle = (left[i] as number) + (dx[i] as number) / 2
    const face = left[i + 1] as number
    const next = face + (dx[i + 1] as number) / 2
    link.push(1 / (half(face, middle, face, k[i] as number) + half(face, face, next, k[i + 1] as number)))
  }
  const edge = (film: number, r: number, resistance: number) => (film === 0 || area(r) === 0 ? 0 : 1 / (1 / (film * area(r)) + resistance))
  const firstHalf = half(body.start, body.start || 1e-300, (body.start || 1e-300) + (dx[0] as number) / 2, k[0] as number)
  const lastHalf = half(x, x - (dx[n - 1] as number) / 2, x, k[n - 1] as number)
  const inner = edge(body.inside, body.start, firstHalf)
  const outer = edge(body.outside, x, lastHalf)
  const rate = (v: readonly number[]) =>
    v.map((vi, i) => {
      let q = 0
      if (i > 0) q += (link[i - 1] as number) * ((v[i - 1] as number) - vi)
      else q += inner * (drive.inside - vi)
      if (i + 1 < n) q += (link[i] as number) * ((v[i + 1] as number) - vi)
      else q += outer * (drive.outside - vi)
      return q / (mass[i] as number)
    })
  // solves (1 − h·J)·y = r
  const implicit = (r: readonly number[], h: number) => {
    const diag: number[] = []
    const rhs = [...r]
    const up = (i: number) => (i + 1 < n ? (-h * (link[i] as number)) / (mass[i] as number) : 0)
    const down = (i: number) => (i > 0 ? (-h * (link[i - 1] as number)) / (mass[i] as number) : 0)
    for (let i = 0; i < n; i++) {
      const out = (i > 0 ? (link[i - 1] as number) : inner) + (i + 1 < n ? (link[i] as number) : outer)
      diag[i] = 1 + (h * out) / (mass[i] as number)
      if (i > 0) {
        const m = down(i) / (diag[i - 1] as number)
        diag[i] = (diag[i] as number) - m * up(i - 1)
        rhs[i] = (rhs[i] as number) - m * (rhs[i - 1] as number)
      }
    }
    const y = new Array<number>(n).fill(0)
    for (let i = n - 1; i >= 0; i--) y[i] = ((rhs[i] as number) - (i + 1 < n ? up(i) * (y[i + 1] as number) : 0)) / (diag[i] as number)
    return y
  }
  const g = 1 - Math.SQRT1_2
  for (let s = 0; s < steps; s++) {
    const h = end * (((s + 1) / steps) ** 4 - (s / steps) ** 4)
    const k1 = implicit(rate(t), g * h)
    const middle = t.map((v, i) => v + (1 - g) * h * (k1[i] as number))
    const k2 = implicit(rate(middle), g * h)
    t = t.map((v, i) => v + h * ((1 - g) * (k1[i] as number) + g * (k2[i] as number)))
  }
  // an insulated face or an axis: even extension through the face, to second order
  const flat = (a: number, b: number) => (9 * a - b) / 8
  const first =
    inner === 0
      ? flat(t[0] as number, t[1] as number)
      : drive.inside + (inner / (body.inside * area(body.start))) * ((t[0] as number) - drive.inside)
  const last =
    outer === 0
      ? flat(t[n - 1] as number, t[n - 2] as number)
      : drive.outside + (outer / (body.outside * area(x))) * ((t[n - 1] as number) - drive.outside)
  const interfaces = cuts.slice(0, -1).map((i) => {
    const here = left[i] as number
    const a = 1 / half(here, here - (dx[i - 1] as number) / 2, here, k[i - 1] as number)
    const b = 1 / half(here, here, here + (dx[i] as number) / 2, k[i] as number)
    return (a * (t[i - 1] as number) + b * (t[i] as number)) / (a + b)
  })
  return { faces: [first, last], interfaces, cells: t }
}

/** Inner face, every interface and outer face, extrapolated from two grids. */
export function finiteVolume(body: Body, drive: Drive, time: number, cells = 160, steps = 240): number[] {
  const [coarse, fine] = [march(body, drive, time, cells, steps), march(body, drive, time, 2 * cells, 2 * steps)]
  const spots = (m: typeof coarse) => [m.faces[0], ...m.interfaces, m.faces[1]]
  const [a, b] = [spots(coarse), spots(fine)]
  return b.map((v, i) => v + (v - (a[i] as number)) / 3)
}
