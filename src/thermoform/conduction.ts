import { bessel, erfc, erfcx } from "./special.js"

/** A layer of a sheet (counted across its thickness) or of a round body (counted from the axis out). */
export interface Layer {
  /** Thickness, m. */
  readonly thickness: number
  /** Conductivity, W/(m·K). */
  readonly conductivity: number
  /** Density times specific heat, J/(m³·K). */
  readonly heatCapacity: number
}

/** A layered body that takes heat through its two faces. */
export interface Body {
  readonly shape: "plane" | "cylinder"
  /** Inner radius of a round body, 0 where it is solid to the axis; 0 for a plane. */
  readonly start: number
  readonly layers: readonly Layer[]
  /** Film coefficient at the inner and the outer face, W/(m²·K); 0 stands for an insulated face or an axis. */
  readonly inside: number
  readonly outside: number
}

/** Temperatures that drive a body, °C. */
export interface Drive {
  readonly inside: number
  readonly outside: number
  /** Initial temperature of each layer. */
  readonly initial: readonly number[]
}

/** One mode: decay rate (1/s), its shape at the asked points, and its overlap with each cause. */
interface Mode {
  readonly root: number
  readonly rate: number
  readonly at: readonly number[]
  readonly overlapInside: number
  readonly overlapOutside: number
  readonly overlapInitial: readonly number[]
}

/** Temperatures over time at chosen points of a body. */
export interface Response {
  /** Temperature of every point at a time, °C. */
  at(time: number, drive: Drive): number[]
  /** Final temperature of a point. */
  steady(point: number, drive: Drive): number
  /** The decay rates (1/s) and amplitudes (K) that matter at a time, for one point. */
  series(time: number, point: number, drive: Drive): { readonly rates: readonly number[]; readonly amplitudes: readonly number[] }
  /** Time in which heat crosses the body, s: the square of the sum of thickness over root of diffusivity. */
  readonly crossing: number
  /** Least time the series answers by itself; before it the half-space solution does. */
  readonly earliest: number
}

const MOST_MODES = 400
/** exp(−37) is below the rounding of a double. */
const GONE = 37

interface Edge {
  readonly u: number
  /** Conductivity times slope. */
  readonly q: number
}

/** Phase of J₀ − iY₀ counted on from −π/2 at 0, so that zeros can be counted. */
function phase(j0: number, y0: number, z: number): number {
  const near = z - Math.PI / 4
  const raw = Math.atan2(y0, j0)
  return raw + 2 * Math.PI * Math.round((near - raw) / (2 * Math.PI))
}

const zerosBetween = (from: number, to: number) => Math.floor(to / Math.PI - 0.5) - Math.floor(from / Math.PI - 0.5)

/** Carries a solution with wave number w (1/√s) across one layer. */
function across(body: Body, layer: Layer, x: number, length: number, w: number, start: Edge): { end: Edge; zeros: number } {
  const { conductivity: k, heatCapacity } = layer
  const m = w * Math.sqrt(heatCapacity / k)
  const g = start.q / (k * m)
  if (body.shape === "plane") {
    const [c, s] = [Math.cos(m * length), Math.sin(m * length)]
    const first = Math.atan2(-g, start.u)
    return { end: { u: start.u * c + g * s, q: k * m * (g * c - start.u * s) }, zeros: zerosBetween(first, first + m * length) }
  }
  const z2 = m * (x + length)
  const two = bessel(z2)
  if (x === 0) {
    // regular at the axis
    return { end: { u: two.j0, q: -k * m * two.j1 }, zeros: zerosBetween(-Math.PI / 2, phase(two.j0, two.y0, z2)) }
  }
  const z1 = m * x
  const one = bessel(z1)
  const det = 2 / (Math.PI * z1)
  const a = (-start.u * one.y1 - g * one.y0) / det
  const b = (one.j0 * g + one.j1 * start.u) / det
  const turn = Math.atan2(b, a)
  return {
    end: { u: a * two.j0 + b * two.y0, q: -k * m * (a * two.j1 + b * two.y1) },
    zeros: zerosBetween(phase(one.j0, one.y0, z1) - turn, phase(two.j0, two.y0, z2) - turn),
  }
}

/** The solution shot from the inner face: its edges, layer by layer, and how many zeros it has passed. */
function shoot(body: Body, w: number): { edges: Edge[]; zeros: number } {
  let edge: Edge = { u: 1, q: body.start === 0 && body.shape === "cylinder" ? 0 : body.inside }
  const edges = [edge]
  let zeros = 0
  let x = body.start
  for (const layer of body.layers) {
    const passed = across(body, layer, x, layer.thickness, w, edge)
    zeros += passed.zeros
    edge = passed.end
    edges.push(edge)
    x += layer.thickness
  }
  return { edges, zeros }
}

/** Angle from 0 to π whose cotangent is y/x, for an x that is told to be positive or not. */
const arccot = (y: number, x: number) => Math.atan2(Math.abs(x), x < 0 ? -y : y)

/**
 * How far the phase of the shot solution (Prüfer's angle, zeros counted) is past that of eigenvalue n: negative below the
 * eigenvalue, positive above it, so that the one below is a sure lower end to search from.
 */
function phaseBeyond(body: Body, n: number, w: number): number {
  const { edges, zeros } = shoot(body, w)
  const { u, q } = edges[edges.length - 1] as Edge
  const { conductivity: k, heatCapacity } = body.layers[body.layers.length - 1] as Layer
  // any scale of the slope leaves the sign alone; the last layer's own keeps the phase nearly straight
  const scale = w * Math.sqrt(k * heatCapacity)
  // zeros and sign can only disagree within rounding of a zero at the face: the count decides
  const odd = zeros % 2 === 1
  const [x, y] = odd ? [Math.max(0, -u), -q] : [Math.max(0, u), q]
  return Math.PI * (zeros - n) + arccot(y / scale, x) - arccot(-body.outside / scale, 1)
}

/**
 * Where a rising function passes 0, between ends at which it is below 0 and not below 0: secants with the end that stays put
 * weighed down (Illinois), halved where they stall. It stays inside its bracket, so that there is nothing it could fall back to.
 */
function risingRoot(f: (x: number) => number, from: number, to: number): number {
  let [low, high, fLow, fHigh] = [from, to, f(from), f(to)]
  let side = 0
  while (high - low > 4 * Number.EPSILON * high && fHigh !== 0) {
    const secant = high - (fHigh * (high - low)) / (fHigh - fLow)
    const x = Math.abs(side) < 4 && secant > low && secant < high ? secant : (low + high) / 2
    // between two neighbouring doubles there is nothing left
    if (x <= low || x >= high) break
    const value = f(x)
    if (value < 0) {
      ;[low, fLow] = [x, value]
      side = side < 0 ? side - 1 : -1
      if (side < -1) fHigh /= 2
    } else {
      ;[high, fHigh] = [x, value]
      side = side > 0 ? side + 1 : 1
      if (side > 1) fLow /= 2
    }
  }
  return high
}

/** Eigenvalue n (from 0): the phase rises through it once, and is a half turn short of it at the eigenvalue before. */
function findRoot(body: Body, n: number, previous: number, spacing: number): number {
  const phase = (w: number) => phaseBeyond(body, n, w)
  let low = previous
  if (n === 0) for (low = spacing * 1e-9; phase(low) >= 0; ) low /= 1024
  let high = low + 1.2 * spacing
  while (phase(high) < 0) {
    low = high
    high += spacing
  }
  return risingRoot(phase, low, high)
}

function makeMode(body: Body, root: number, points: readonly number[]): Mode {
  const { edges } = shoot(body, root)
  const round = body.shape === "cylinder"
  const w2 = root * root
  let norm = 0
  let x = body.start
  const overlapInitial: number[] = []
  const at = points.map(() => 0)
  body.layers.forEach((layer, j) => {
    const { thickness, conductivity: k, heatCapacity } = layer
    const m = root * Math.sqrt(heatCapacity / k)
    const [a, b] = [edges[j] as Edge, edges[j + 1] as Edge]
    const end = x + thickness
    const [ga, gb] = [a.q / (k * m), b.q / (k * m)]
    norm += round
      ? (heatCapacity * (end * end * (b.u * b.u + gb * gb) - x * x * (a.u * a.u + ga * ga))) / 2
      : (heatCapacity * (thickness * (a.u * a.u + ga * ga) - (b.u * gb - a.u * ga) / m)) / 2
    overlapInitial.push(((round ? x * a.q : a.q) - (round ? end * b.q : b.q)) / w2)
    const last = j === body.layers.length - 1
    points.forEach((p, i) => {
      if (p < x || (p >= end && !last)) return
      at[i] = p === x ? a.u : p >= end ? b.u : across(body, layer, x, p - x, root, a).end.u
    })
    x = end
  })
  const [first, lastEdge] = [edges[0] as Edge, edges[edges.length - 1] as Edge]
  return {
    root,
    rate: w2,
    at,
    overlapInside: ((round ? body.start : 1) * body.inside * first.u) / w2 / norm,
    overlapOutside: ((round ? x : 1) * body.outside * lastEdge.u) / w2 / norm,
    overlapInitial: overlapInitial.map((v) => v / norm),
  }
}

/** Share of the outer drive in the final temperature at each point; the rest is the inner one's. */
function steadyShares(body: Body, points: readonly number[]): number[] {
  const round = body.shape === "cylinder"
  if (body.inside === 0 || (round && body.start === 0)) return points.map(() => 1)
  const resistance = (from: number, to: number, k: number) => (round ? Math.log(to / from) : to - from) / k
  const film = 1 / ((round ? body.start : 1) * body.inside)
  let total = film
  let x = body.start
  const before = points.map(() => film)
  for (const { thickness, conductivity } of body.layers) {
    points.forEach((p, i) => {
      if (p > x) before[i] = (before[i] as number) + resistance(x, Math.min(p, x + thickness), conductivity)
    })
    total += resistance(x, x + thickness, conductivity)
    x += thickness
  }
  if (body.outside === 0) return points.map(() => 0)
  total += 1 / ((round ? x : 1) * body.outside)
  return before.map((r) => r / total)
}

/**
 * Rise of a half-space's surface, or at a depth, towards a fluid, as a fraction (Carslaw and Jaeger, Conduction of Heat in Solids,
 * 2nd ed., 1959, 2.7 (1)), with the curvature of a cylinder to first order: the film is met as if weaker by k/(2r).
 */
export function halfSpaceRise(film: number, layer: Layer, time: number, depth = 0, curvature = 0): number {
  const { conductivity: k, heatCapacity } = layer
  const root = Math.sqrt((k / heatCapacity) * time)
  if (root === 0) return 0
  const reduced = (film - (k * curvature) / 2) / k
  const eta = depth / (2 * root)
  const near = reduced * root
  if (Math.abs(near) < 1e-6) {
    const ierfc = Math.exp(-eta * eta) / Math.sqrt(Math.PI) - eta * erfc(eta)
    return (film / k) * 2 * root * ierfc
  }
  return (film / k / reduced) * (erfc(eta) - Math.exp(-eta * eta) * erfcx(eta + near))
}

/**
 * Transient conduction through a layered plane or round body between two fluids, by the series of its own modes. The eigenvalues
 * are bracketed by the phase of the shooting solution and solved, none missed, doubled or interpolated; film at the outer face must be above 0
 * or that at the inner one.
 *
 * @param body - layers and films
 * @param points - places to report, measured as the layers are (from the axis for a round body)
 */
export function conduct(body: Body, points: readonly number[]): Response {
  const travel = body.layers.reduce((sum, l) => sum + l.thickness * Math.sqrt(l.heatCapacity / l.conductivity), 0)
  const spacing = Math.PI / travel
  const end = body.layers.reduce((x, l) => x + l.thickness, body.start)
  const shares = steadyShares(body, points)
  const modes: Mode[] = []
  const ensure = (time: number): number => {
    for (;;) {
      const last = modes[modes.length - 1]
      if (modes.length >= MOST_MODES || (last && last.rate * time > GONE)) return modes.length
      const root = findRoot(body, modes.length, last ? last.root : 0, spacing)
      modes.push(makeMode(body, root, points))
    }
  }
  const amplitude = (mode: Mode, point: number, { inside, outside, initial }: Drive) => {
    let sum = -mode.overlapInside * inside - mode.overlapOutside * outside
    for (let j = 0; j < initial.length; j++) sum += (mode.overlapInitial[j] as number) * (initial[j] as number)
    return sum * (mode.at[point] as number)
  }
  const steady = (point: number, { inside, outside }: Drive) => {
    const share = shares[point] as number
    return share * outside + (1 - share) * inside
  }
  const early = (time: number, point: number, drive: Drive): number => {
    const p = points[point] as number
    let x = body.start
    for (let j = 0; j < body.layers.length; j++) {
      const layer = body.layers[j] as Layer
      const top = x + layer.thickness
      const here = drive.initial[j] as number
      const next = body.layers[j + 1]
      if (next && Math.abs(p - top) < 1e-12) {
        const [e1, e2] = [layer, next].map((l) => Math.sqrt(l.conductivity * l.heatCapacity)) as [number, number]
        return (e1 * here + e2 * (drive.initial[j + 1] as number)) / (e1 + e2)
      }
      if (p <= top) {
        const curve = body.shape === "cylinder" ? 1 / end : 0
        const outer = next ? 0 : halfSpaceRise(body.outside, layer, time, top - p, curve)
        const inner = j > 0 || body.inside === 0 ? 0 : halfSpaceRise(body.inside, layer, time, p - x, curve && -1 / Math.max(x, 1e-9))
        return here + outer * (drive.outside - here) + inner * (drive.inside - here)
      }
      x = top
    }
    return drive.initial[drive.initial.length - 1] as number
  }
  const crossing = travel * travel
  const earliest = (crossing * GONE) / ((MOST_MODES - 1) * Math.PI) ** 2
  return {
    crossing,
    earliest,
    steady,
    at(time, drive) {
      if (time < earliest) return points.map((_, i) => early(time, i, drive))
      const count = ensure(time)
      return points.map((_, i) => {
        let sum = steady(i, drive)
        for (let n = 0; n < count; n++) {
          const mode = modes[n] as Mode
          const fall = mode.rate * time
          if (fall > GONE) break
          sum += amplitude(mode, i, drive) * Math.exp(-fall)
        }
        return sum
      })
    },
    series(time, point, drive) {
      const count = ensure(time)
      const kept = modes.slice(0, count).filter((m) => m.rate * time <= GONE)
      const used = kept.length ? kept : modes.slice(0, 1)
      return { rates: used.map((m) => m.rate), amplitudes: used.map((m) => amplitude(m, point, drive)) }
    },
  }
}
