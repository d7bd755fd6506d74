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
  /** Minimum time the series answers by itself; before it the half-space solution does. */
  readonly earliest: number
  /** The same body of one layer with another heat capacity, whose modes only fade faster or slower. */
  withHeatCapacity(heatCapacity: number): Response
}

const MOST_MODES = 400
/** exp(−37) is below the rounding of a double. */
const GONE = 37

/** Phase of J₀ − iY₀ counted on from −π/2 at 0, so that zeros can be counted. */
function phase(j0: number, y0: number, z: number): number {
  const near = z - Math.PI / 4
  const raw = Math.atan2(y0, j0)
  return raw + 2 * Math.PI * Math.round((near - raw) / (2 * Math.PI))
}

const zerosBetween = (from: number, to: number) => Math.floor(to / Math.PI - 0.5) - Math.floor(from / Math.PI - 0.5)

/** A solution shot outwards from the inner face, edge by edge. */
interface Shot {
  /** Value at each edge. */
  readonly u: Float64Array
  /** Conductivity times slope at each edge. */
  readonly q: Float64Array
  /** Zeros passed. */
  zeros: number
  /** Integral of heat capacity times its square over the body: the mode's norm, and how fast its phase grows. */
  norm: number
}

const newShot = (body: Body): Shot => ({
  u: new Float64Array(body.layers.length + 1),
  q: new Float64Array(body.layers.length + 1),
  zeros: 0,
  norm: 0,
})

/** Carries a solution with wave number w (1/√s) across the first `length` of layer j, from edge j of the shot to edge j + 1. */
function across(body: Body, j: number, x: number, length: number, w: number, from: Shot, to: Shot): void {
  const { conductivity: k, heatCapacity } = body.layers[j] as Layer
  const m = w * Math.sqrt(heatCapacity / k)
  const u = from.u[j] as number
  const g = (from.q[j] as number) / (k * m)
  if (body.shape === "plane") {
    const [c, s] = [Math.cos(m * length), Math.sin(m * length)]
    const first = Math.atan2(-g, u)
    to.u[j + 1] = u * c + g * s
    to.q[j + 1] = k * m * (g * c - u * s)
    to.zeros += zerosBetween(first, first + m * length)
    return
  }
  const z2 = m * (x + length)
  const two = bessel(z2)
  if (x === 0) {
    // regular at the axis
    to.u[j + 1] = two.j0
    to.q[j + 1] = -k * m * two.j1
    to.zeros += zerosBetween(-Math.PI / 2, phase(two.j0, two.y0, z2))
    return
  }
  const z1 = m * x
  const one = bessel(z1)
  const det = 2 / (Math.PI * z1)
  const a = (-u * one.y1 - g * one.y0) / det
  const b = (one.j0 * g + one.j1 * u) / det
  const turn = Math.atan2(b, a)
  to.u[j + 1] = a * two.j0 + b * two.y0
  to.q[j + 1] = -k * m * (a * two.j1 + b * two.y1)
  to.zeros += zerosBetween(phase(one.j0, one.y0, z1) - turn, phase(two.j0, two.y0, z2) - turn)
}

/** Shoots from the inner face across all layers. */
function shoot(body: Body, w: number, shot: Shot): void {
  const round = body.shape === "cylinder"
  shot.u[0] = 1
  shot.q[0] = body.start === 0 && round ? 0 : body.inside
  shot.zeros = 0
  shot.norm = 0
  let x = body.start
  for (let j = 0; j < body.layers.length; j++) {
    const { thickness, conductivity: k, heatCapacity } = body.layers[j] as Layer
    across(body, j, x, thickness, w, shot, shot)
    const m = w * Math.sqrt(heatCapacity / k)
    const [ua, ub] = [shot.u[j] as number, shot.u[j + 1] as number]
    const [ga, gb] = [(shot.q[j] as number) / (k * m), (shot.q[j + 1] as number) / (k * m)]
    const end = x + thickness
    shot.norm += round
      ? (heatCapacity * (end * end * (ub * ub + gb * gb) - x * x * (ua * ua + ga * ga))) / 2
      : (heatCapacity * (thickness * (ua * ua + ga * ga) - (ub * gb - ua * ga) / m)) / 2
    x = end
  }
}

/** Angle from 0 to π whose cotangent is y/x, for an x that is told to be positive or not. */
const arccot = (y: number, x: number) => Math.atan2(Math.abs(x), x < 0 ? -y : y)

/**
 * How far the phase of the shot solution (Prüfer's angle, zeros counted) is past that of eigenvalue n: negative below the
 * eigenvalue, positive above it, so that the one below is a sure lower end to search from; and how fast it grows with w.
 */
function phaseBeyond(body: Body, n: number, w: number, shot: Shot): { readonly beyond: number; readonly slope: number } {
  shoot(body, w, shot)
  const { zeros, norm } = shot
  const u = shot.u[shot.u.length - 1] as number
  const q = shot.q[shot.q.length - 1] as number
  const { conductivity: k, heatCapacity } = body.layers[body.layers.length - 1] as Layer
  // any scale of the slope leaves the sign alone; the last layer's own keeps the phase nearly straight
  const scale = w * Math.sqrt(k * heatCapacity)
  const reach = body.shape === "cylinder" ? body.layers.reduce((x, l) => x + l.thickness, body.start) : 1
  // zeros and sign can only disagree within rounding of a zero at the face: the count decides
  const odd = zeros % 2 === 1
  const [x, y] = odd ? [Math.max(0, -u), -q] : [Math.max(0, u), q]
  const film = body.outside / scale
  return {
    beyond: Math.PI * (zeros - n) + arccot(y / scale, x) - arccot(-film, 1),
    // the slope q/u falls by norm/u² as w² grows
    slope: ((2 * w * norm) / (reach * scale) + (u * q) / (scale * w)) / (u * u + (q / scale) ** 2) + film / (1 + film * film) / w,
  }
}

/**
 * Eigenvalue n (from 0), left in the shot: the phase rises through it once, and is a half turn short of it at the eigenvalue before.
 * Newton's steps on the phase, inside a bracket that only narrows; one that leaves it, or no longer halves the phase, is halved instead.
 */
function findRoot(body: Body, n: number, previous: number, spacing: number, shot: Shot): number {
  let [low, high] = [previous, Number.POSITIVE_INFINITY]
  let w = previous + (n === 0 ? spacing / 2 : spacing)
  let before = Number.POSITIVE_INFINITY
  for (;;) {
    const { beyond, slope } = phaseBeyond(body, n, w, shot)
    if (beyond < 0) low = w
    else high = w
    const step = beyond / slope
    const next = w - step
    if (beyond === 0 || Math.abs(step) <= 2 * Number.EPSILON * w) return w
    const slow = Math.abs(beyond) > before / 2
    before = Math.abs(beyond)
    if (next > low && next < high && !slow) w = next
    else if (high === Number.POSITIVE_INFINITY) w = low + spacing
    else {
      const middle = (low + high) / 2
      // between two neighbouring doubles there is nothing left
      if (middle <= low || middle >= high) return w
      w = middle
    }
  }
}

function makeMode(body: Body, root: number, points: readonly number[], shot: Shot): Mode {
  const { u, q, norm } = shot
  const round = body.shape === "cylinder"
  const w2 = root * root
  const between = newShot(body)
  let x = body.start
  const overlapInitial: number[] = []
  const at = points.map(() => 0)
  body.layers.forEach(({ thickness }, j) => {
    const end = x + thickness
    overlapInitial.push(((round ? x : 1) * (q[j] as number) - (round ? end : 1) * (q[j + 1] as number)) / w2 / norm)
    const last = j === body.layers.length - 1
    points.forEach((p, i) => {
      if (p < x || (p >= end && !last)) return
      if (p > x && p < end) across(body, j, x, p - x, root, shot, between)
      at[i] = (p === x ? u[j] : p >= end ? u[j + 1] : between.u[j + 1]) as number
    })
    x = end
  })
  return {
    root,
    rate: w2,
    at,
    overlapInside: ((round ? body.start : 1) * body.inside * (u[0] as number)) / w2 / norm,
    overlapOutside: ((round ? x : 1) * body.outside * (u[u.length - 1] as number)) / w2 / norm,
    overlapInitial,
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

/** The modes of a body, found as they are needed. */
interface Modes {
  readonly found: readonly Mode[]
  /** How many there are after making sure of all that have not faded at a time. */
  upTo(time: number): number
}

function modesOf(body: Body, points: readonly number[], spacing: number): Modes {
  const found: Mode[] = []
  const shot = newShot(body)
  return {
    found,
    upTo(time) {
      for (;;) {
        const last = found[found.length - 1]
        if (found.length >= MOST_MODES || (last && last.rate * time > GONE)) return found.length
        const root = findRoot(body, found.length, last ? last.root : 0, spacing, shot)
        found.push(makeMode(body, root, points, shot))
      }
    },
  }
}

const travelOf = (body: Body) => body.layers.reduce((sum, l) => sum + l.thickness * Math.sqrt(l.heatCapacity / l.conductivity), 0)

/**
 * Transient conduction through a layered plane or round body between two fluids, by the series of its own modes. The eigenvalues
 * are bracketed by the phase of the shooting solution and solved, none missed, doubled or interpolated; film at the outer face must be above 0
 * or that at the inner one.
 *
 * @param body - layers and films
 * @param points - places to report, measured as the layers are (from the axis for a round body)
 */
export function conduct(body: Body, points: readonly number[]): Response {
  return respond(body, points, steadyShares(body, points), modesOf(body, points, Math.PI / travelOf(body)), 1)
}

/** @param pace - how many times faster the body's modes fade than those it is given */
function respond(body: Body, points: readonly number[], shares: readonly number[], modes: Modes, pace: number): Response {
  const end = body.layers.reduce((x, l) => x + l.thickness, body.start)
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
  const crossing = travelOf(body) ** 2
  const earliest = (crossing * GONE) / ((MOST_MODES - 1) * Math.PI) ** 2
  return {
    crossing,
    earliest,
    steady,
    at(time, drive) {
      if (time < earliest) return points.map((_, i) => early(time, i, drive))
      const paced = pace * time
      const count = modes.upTo(paced)
      return points.map((_, i) => {
        let sum = steady(i, drive)
        for (let n = 0; n < count; n++) {
          const mode = modes.found[n] as Mode
          const fall = mode.rate * paced
          if (fall > GONE) break
          sum += amplitude(mode, i, drive) * Math.exp(-fall)
        }
        return sum
      })
    },
    series(time, point, drive) {
      const count = modes.upTo(pace * time)
      const kept = modes.found.slice(0, count).filter((m) => m.rate * pace * time <= GONE)
      const used = kept.length ? kept : modes.found.slice(0, 1)
      return { rates: used.map((m) => m.rate * pace), amplitudes: used.map((m) => amplitude(m, point, drive)) }
    },
    withHeatCapacity(heatCapacity) {
      const layer = body.layers[0] as Layer
      const layers = [{ ...layer, heatCapacity }]
      return respond({ ...body, layers }, points, shares, modes, (pace * layer.heatCapacity) / heatCapacity)
    },
  }
}
