// Modes of a bar on springs at its root with masses along it, in units of its length, its stiffness E·I and its mass: exact, by counting.
import { brent, type Root } from "../../numeric/index.js"

/** A mass against the bar's own, at a share of its length. */
export interface Lump {
  readonly at: number
  readonly mass: number
}
/** A bar: how far its root gives (0 where rigid), against the bar's own E·I/L and E·I/L³, and what it carries, the tip included. */
export interface Bar {
  readonly turning: number
  readonly sinking: number
  readonly lumps: readonly Lump[]
}
/** A stretch between masses, and its state at the start: deflection, slope, and their second and third derivatives. */
export interface Stretch {
  readonly length: number
  readonly start: readonly [number, number, number, number]
  /** Mass at its end. */
  readonly mass: number
}

/** Masses nearer to one another than this share of the length are one. */
const APART = 1e-6
/** Masses nearer than this are one for a count: the stiffness of a stretch, 12/l³, would round away that of all others. */
const COUNTED_APART = 1e-2

/** Places of the masses from the root on, the tip last, each with what sits there. */
export function placesOf(lumps: readonly Lump[], apart = APART): readonly Lump[] {
  const found: { at: number; mass: number }[] = [{ at: 0, mass: 0 }]
  for (const { at, mass } of [...lumps].sort((a, b) => a.at - b.at)) {
    const last = found.at(-1) as { at: number; mass: number }
    if (at - last.at < apart) last.mass += mass
    else found.push({ at: 1 - at < apart ? 1 : at, mass })
  }
  if ((found.at(-1) as Lump).at < 1) found.push({ at: 1, mass: 0 })
  return found
}

/** (cosh z + cos z)/2, (sinh z + sin z)/2z, (cosh z − cos z)/2z², (sinh z − sin z)/2z³: by their power series where terms would cancel. */
export function krylov(z: number): readonly [number, number, number, number] {
  if (z > 1) {
    const [C, c, S, s] = [Math.cosh(z), Math.cos(z), Math.sinh(z), Math.sin(z)]
    return [(C + c) / 2, (S + s) / (2 * z), (C - c) / (2 * z ** 2), (S - s) / (2 * z ** 3)]
  }
  const fourth = z ** 4
  const series = (k: number) => {
    let [term, sum] = [1, 0]
    for (let i = 1; i <= k; i++) term /= i
    for (let n = k; n <= k + 20; n += 4) {
      sum += term
      term *= fourth / ((n + 1) * (n + 2) * (n + 3) * (n + 4))
    }
    return sum
  }
  return [series(0), series(1), series(2), series(3)]
}

type State = readonly [number, number, number, number]
/** The state at the end of a stretch of length l, for the root x. */
function carried([v, t, b, q]: State, l: number, x: number): State {
  const [k0, k1, k2, k3] = krylov(x * l)
  const f = x ** 4
  return [
    v * k0 + t * l * k1 + b * l ** 2 * k2 + q * l ** 3 * k3,
    f * l ** 3 * v * k3 + t * k0 + b * l * k1 + q * l ** 2 * k2,
    f * (v * l ** 2 * k2 + t * l ** 3 * k3) + b * k0 + q * l * k1,
    f * (v * l * k1 + t * l ** 2 * k2 + b * l ** 3 * k3) + q * k0,
  ]
}

/** Bending stiffness of a stretch that swings, as functions of its ends' movements; by plane elements where it is short against the wave. */
function swinging(l: number, x: number) {
  const z = x * l
  if (z < 0.1) {
    const f = x ** 4 * l
    return {
      a: 12 / l ** 3 - (13 * f) / 35,
      b: 6 / l ** 2 - (11 * f * l) / 210,
      c: 4 / l - (f * l ** 2) / 105,
      d: -12 / l ** 3 - (9 * f) / 70,
      e: 6 / l ** 2 + (13 * f * l) / 420,
      g: 2 / l + (f * l ** 2) / 140,
    }
  }
  const [C, c, S, s] = [Math.cosh(z), Math.cos(z), Math.sinh(z), Math.sin(z)]
  const below = 1 - c * C
  return {
    a: (x ** 3 * (c * S + s * C)) / below,
    b: (x ** 2 * s * S) / below,
    c: (x * (s * C - c * S)) / below,
    d: (-(x ** 3) * (S + s)) / below,
    e: (x ** 2 * (C - c)) / below,
    g: (x * (S - s)) / below,
  }
}

/** Modes of a stretch between clamped ends below z: cos z·cosh z = 1 (W. H. Wittrick, F. W. Williams, 1971). */
function clampedModes(z: number): number {
  const n = Math.floor(z / Math.PI)
  const sign = Math.sign(1 - Math.cosh(z) * Math.cos(z)) || 1
  return n - (1 - (n % 2 ? -1 : 1) * sign) / 2
}

/** Modes below the root x, masses near to one another taken as one. */
export function modesBelow({ turning, sinking, lumps }: Bar, x: number): number {
  const places = placesOf(lumps, COUNTED_APART)
  const size = 2 * places.length
  const rows = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  const put = (i: number, j: number, v: number) => {
    const row = rows[i] as number[]
    row[j] = (row[j] as number) + v
    if (i !== j) (rows[j] as number[])[i] = row[j] as number
  }
  let count = 0
  places.slice(1).forEach(({ at }, i) => {
    const l = at - (places[i] as Lump).at
    count += clampedModes(x * l)
    const { a, b, c, d, e, g } = swinging(l, x)
    const k = 2 * i
    put(k, k, a)
    put(k, k + 1, b)
    put(k, k + 2, d)
    put(k, k + 3, e)
    put(k + 1, k + 1, c)
    put(k + 1, k + 2, -e)
    put(k + 1, k + 3, g)
    put(k + 2, k + 2, a)
    put(k + 2, k + 3, -b)
    put(k + 3, k + 3, c)
  })
  places.forEach(({ mass }, i) => {
    put(2 * i, 2 * i, -mass * x ** 4)
  })
  if (sinking > 0) put(0, 0, 1 / sinking)
  if (turning > 0) put(1, 1, 1 / turning)
  const free = rows.map((_, i) => i).filter((i) => i > 1 || (i === 0 ? sinking > 0 : turning > 0))
  for (const [k, p] of free.entries()) {
    const top = rows[p] as number[]
    const pivot = top[p] === 0 ? Number.MIN_VALUE : (top[p] as number)
    if (pivot < 0) count++
    // each stretch joins neighbours only
    for (const i of free.slice(k + 1, k + 4)) {
      const ratio = (top[i] as number) / pivot
      if (ratio === 0) continue
      const row = rows[i] as number[]
      for (const j of free.slice(k + 1, k + 4)) row[j] = (row[j] as number) - ratio * (top[j] as number)
    }
  }
  return count
}

/** Roots of the bare clamped bar, a little above: springs and masses only lower them. */
const highest = { 1: 1.8752, 2: 4.6942, 3: 7.8549 } as const

/** Both ways in which the root can give, carried to the tip: it sinks by its force and turns by its moment, or not at all. */
function carriedToTip({ turning, sinking, lumps }: Bar, x: number) {
  const places = placesOf(lumps)
  const fourth = x ** 4
  const rootMass = (places[0] as Lump).mass
  const run = (root: State) => {
    let state: State = [root[0], root[1], root[2], root[3] + rootMass * fourth * root[0]]
    const starts: State[] = []
    places.slice(1).forEach(({ at, mass }, i) => {
      starts.push(state)
      const [v, t, b, q] = carried(state, at - (places[i] as Lump).at, x)
      state = [v, t, b, q + mass * fourth * v]
    })
    return { starts, end: state }
  }
  return {
    places,
    sunk: run([sinking / (1 + sinking), 0, 0, -1 / (1 + sinking)]),
    turned: run([0, turning / (1 + turning), 1 / (1 + turning), 0]),
  }
}

/** What no mix of both ways takes away of moment and shear force at the tip; nothing at a root. */
function tipRest(bar: Bar, x: number): number {
  const { sunk, turned } = carriedToTip(bar, x)
  return sunk.end[2] * turned.end[3] - sunk.end[3] * turned.end[2]
}

/** Shape of a mode: every stretch with its state at the start, 1 at its largest; and what is left of moment and shear force at the tip. */
export function shapeOf(bar: Bar, x: number): { readonly stretches: readonly Stretch[]; readonly left: number } {
  const { places, sunk, turned } = carriedToTip(bar, x)
  const pick = Math.abs(sunk.end[2]) + Math.abs(turned.end[2]) > 0 ? 2 : 3
  const [p, r] = [turned.end[pick], -sunk.end[pick]]
  const mix = (a: State, b: State): State => [p * a[0] + r * b[0], p * a[1] + r * b[1], p * a[2] + r * b[2], p * a[3] + r * b[3]]
  const starts = sunk.starts.map((s, i) => mix(s, turned.starts[i] as State))
  const end = mix(sunk.end, turned.end)
  const size = Math.max(...[...starts, end].map((s) => Math.abs(s[0])), Number.MIN_VALUE)
  const scaled = ([v, t, b, q]: State): State => [v / size, t / size, b / size, q / size]
  return {
    stretches: starts.map((start, i) => ({
      length: (places[i + 1] as Lump).at - (places[i] as Lump).at,
      start: scaled(start),
      mass: (places[i + 1] as Lump).mass,
    })),
    left: end[3] / size / Math.max(1, ...starts.map((s) => Math.abs(s[3]) / size)),
  }
}

/**
 * Root of a mode (1, 2, 3): about where it is by halving between counts, and exactly by the tip's own conditions, since
 * a count rounds away what is soft beside a stiff stretch.
 */
export function barRoot(bar: Bar, mode: 1 | 2 | 3): Root {
  let [low, high, iterations] = [0, highest[mode] as number, 0]
  for (; iterations < 120 && high - low > 2e-15 * high; iterations++) {
    const middle = (low + high) / 2
    if (modesBelow(bar, middle) >= mode) high = middle
    else low = middle
  }
  let x = (low + high) / 2
  for (let apart = 1e-14; apart < 10; apart *= 2) {
    const found = brent((at) => tipRest(bar, at), x / (1 + apart), x * (1 + apart), 0)
    if (found === null) continue
    x = found.x
    iterations += found.iterations
    break
  }
  return { x, residual: shapeOf(bar, x).left, iterations }
}
