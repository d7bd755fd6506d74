// Forces at one pose: loads, weights and inertia of the bars, friction at the pins.
import { solveLinear } from "../../numeric/index.js"
import type { Model } from "./model.js"
import { rowGradient, sub } from "./rows.js"
import { allForces, couple, driverEfforts, multipliers, type Pose, pointAccelerations, pointRates } from "./solve.js"

/** A mass on a bar, its centre at p along and q to the left of the line `from`–`to`, as shares of its length. */
export interface BarMass {
  readonly body: number
  readonly from: number
  readonly to: number
  readonly p: number
  readonly q: number
  readonly mass: number
  /** About its own centre, kg·m². */
  readonly inertia: number
}

/** What loads the mechanism besides its forces and torques. */
export interface Burden {
  readonly masses: readonly BarMass[]
  /** Gravity in the plane, m/s². */
  readonly gravity: readonly [number, number]
  /** Coefficient of friction times half the pins' diameter, m. */
  readonly frictionRadius: number
  /** Rates of the drivers that tell which way each pin turns; their size does not matter. */
  readonly sense: readonly number[]
  /** Speeds and accelerations of the drivers. */
  readonly rates: readonly number[]
  readonly changes: readonly number[]
}

/** Forces on the two ends of a bar that stand for a load on the bar itself, N. */
interface BodyLoad {
  readonly body: number
  readonly from: number
  readonly to: number
  readonly force: readonly [number, number, number, number]
}

/** All forces of a pose. */
export interface PoseForces {
  readonly v: Float64Array
  readonly a: Float64Array
  readonly lambda: Float64Array
  /** Force of each pin on each bar. */
  readonly pins: readonly Map<number, [number, number]>[]
  readonly efforts: readonly number[]
  /** Force and relative speed of every rubbing pin multiplied, N/s: times the friction radius it is the power lost. */
  readonly rubbing: number
  /** Loads on points and bars with weight, inertia and friction, N. */
  readonly applied: Float64Array
}

/** Weight and inertia of the masses at accelerations `a`. */
function massLoads({ masses, gravity }: Burden, q: Float64Array, a: Float64Array): BodyLoad[] {
  return masses.map(({ body, from, to, p, q: s, mass, inertia }) => {
    const [ax, ay] = sub(a, from, to)
    const [vx, vy] = sub(q, from, to)
    const fx = mass * (gravity[0] - (a[2 * from] as number) - p * ax + s * ay)
    const fy = mass * (gravity[1] - (a[2 * from + 1] as number) - p * ay - s * ax)
    // statically the same as the force at the centre
    const [ox, oy] = [p * fx + s * fy, p * fy - s * fx]
    const spin = (vx * ay - vy * ax) / (vx * vx + vy * vy)
    const [cx, cy] = couple(q, from, to, -inertia * spin)
    return { body, from, to, force: [fx - ox - cx, fy - oy - cy, ox + cx, oy + cy] as const }
  })
}

function addTo(f: Float64Array, loads: readonly BodyLoad[]): Float64Array {
  for (const { from, to, force } of loads)
    for (const [i, k] of [2 * from, 2 * from + 1, 2 * to, 2 * to + 1].entries()) f[k] = (f[k] as number) + (force[i] as number)
  return f
}

/** Force that every pin exerts on every bar it belongs to. */
function pinForces(model: Model, pose: Pose, lambda: Float64Array, loads: readonly BodyLoad[]): Map<number, [number, number]>[] {
  const held = model.bodies.map((members) => new Map(members.map((point) => [point, [0, 0] as [number, number]])))
  const give = (body: number, point: number, fx: number, fy: number) => {
    const force = held[body]?.get(point)
    if (!force) return
    force[0] -= fx
    force[1] -= fy
  }
  model.rows.forEach((row, i) => {
    const l = lambda[i] as number
    rowGradient(row, pose.q, pose.drive, (point, gx, gy, isReference) => {
      if (row.kind === "actuator") return
      give(isReference && row.kind === "crank" ? row.refBody : row.body, point, l * gx, l * gy)
    })
  })
  for (const { from, to, body, torque } of model.torques) {
    const [fx, fy] = couple(pose.q, from, to, torque)
    give(body, to, fx, fy)
    give(body, from, -fx, -fy)
  }
  for (const { body, from, to, force } of loads) {
    give(body, from, force[0], force[1])
    give(body, to, force[2], force[3])
  }
  return held
}

/** Angular speed of every bar. */
export function barSpeeds(model: Model, pose: Pose, v: Float64Array): number[] {
  return model.bodies.map(([from, to]) => {
    const [x, y] = sub(pose.q, from as number, to as number)
    const [dx, dy] = sub(v, from as number, to as number)
    return (x * dy - y * dx) / (x * x + y * y)
  })
}

type Pair = readonly [number, number]

/** A pin between two bodies: the bar that turns on it, and the body that holds it (−1 for the frame). */
interface Joint {
  readonly point: number
  readonly body: number
  readonly holder: number
}

function joints(model: Model): Joint[] {
  return model.names.flatMap((_, point) => {
    const here = model.bodies.flatMap((members, body) => (members.includes(point) ? [body] : []))
    const holder = (model.columns[point] as number) < 0 ? -1 : (here.shift() as number)
    return here.map((body) => ({ point, body, holder }))
  })
}

/** Rounds of putting the friction of the forces found into the next ones: settled by then wherever a pin is small in its levers. */
const ROUNDS = 40
/** Newton steps where that settles too slowly, as near a lock. */
const STEPS = 60

/**
 * Forces p ≥ 0 at the pins that their own friction leaves: pᵢ = |bᵢ + Σ Gᵢⱼ·pⱼ|. By Newton's method from no friction upwards: the right
 * side is convex in p, so that the first balance met is the one that grows out of the frictionless one. Null where there is none.
 */
function balanced(base: readonly Pair[], response: readonly (readonly Pair[])[]): number[] | null {
  let p = base.map(() => 0)
  for (let step = 0; step < STEPS; step++) {
    const forces = base.map(([x, y], i): Pair => {
      let [fx, fy] = [x, y]
      for (const [j, column] of response.entries()) {
        const [gx, gy] = column[i] as Pair
        fx += gx * (p[j] as number)
        fy += gy * (p[j] as number)
      }
      return [fx, fy]
    })
    const sizes = forces.map(([x, y]) => Math.hypot(x, y))
    const slopes = forces.map(([x, y], i) =>
      response.map((column, j) => {
        const [gx, gy] = column[i] as Pair
        const size = sizes[i] as number
        return (size === 0 ? 0 : (x * gx + y * gy) / size) - (i === j ? 1 : 0)
      }),
    )
    const by = solveLinear(
      slopes,
      sizes.map((size, i) => (p[i] as number) - size),
    )
    if (by === null) return null
    p = p.map((v, i) => v + (by[i] as number))
    const scale = p.reduce((so, v) => Math.max(so, Math.abs(v)), 0)
    if (!(scale < Number.POSITIVE_INFINITY)) return null
    if (by.every((v) => Math.abs(v) <= 1e-13 * scale)) return p.every((v) => v >= -1e-9 * scale) ? p : null
  }
  return null
}

/** Forces of a pose; null where friction at the pins leaves no balance. */
export function forcesAt(model: Model, burden: Burden, pose: Pose): PoseForces | null {
  const v = pointRates(model, pose, burden.rates)
  const a = pointAccelerations(model, pose, v, burden.rates, burden.changes)
  const own = massLoads(burden, pose.q, a)
  const resting = addTo(allForces(model, pose.q), own)
  const solve = (friction: readonly BodyLoad[]) => {
    const f = friction.length === 0 ? resting : addTo(resting.slice(), friction)
    const lambda = multipliers(model, pose, f)
    return { applied: f, lambda, pins: pinForces(model, pose, lambda, [...own, ...friction]) }
  }
  let found = solve([])
  let rubbing = 0
  if (burden.frictionRadius > 0 && burden.sense.some((rate) => rate !== 0)) {
    const turning = barSpeeds(model, pose, pointRates(model, pose, burden.sense))
    const apart = (speeds: readonly number[], { body, holder }: Joint) =>
      (speeds[body] as number) - (holder < 0 ? 0 : (speeds[holder] as number))
    const most = turning.reduce((so, w) => Math.max(so, Math.abs(w)), 0)
    // two bars that turn together do not rub
    const pins = joints(model).filter((pin) => Math.abs(apart(turning, pin)) > 1e-12 * most)
    const vectorsOf = ({ pins: held }: typeof found) => pins.map(({ body, point }) => (held[body] as Map<number, Pair>).get(point) as Pair)
    const sizesOf = (forces: typeof found) => vectorsOf(forces).map(([x, y]) => Math.hypot(x, y))
    const rub = (pressed: readonly number[]) =>
      solve(
        pins.flatMap((pin, i) => {
          const torque = -Math.sign(apart(turning, pin)) * burden.frictionRadius * (pressed[i] as number)
          if (torque === 0) return []
          return (
            [
              [pin.body, torque],
              [pin.holder, -torque],
            ] as const
          ).flatMap(([body, share]) => {
            if (body < 0) return []
            const [from, to] = model.bodies[body] as readonly [number, number]
            const [cx, cy] = couple(pose.q, from, to, share)
            return [{ body, from, to, force: [-cx, -cy, cx, cy] as const }]
          })
        }),
      )
    const base = found
    let pressed = sizesOf(base)
    const scale = pressed.reduce((so, f) => Math.max(so, f), 0)
    const settles = (within: number) => {
      found = rub(pressed)
      const next = sizesOf(found)
      const largest = next.reduce((so, f) => Math.max(so, f), 0)
      const off = next.reduce((so, f, i) => Math.max(so, Math.abs(f - (pressed[i] as number))), 0)
      if (off <= within * largest) return true
      pressed = next
      return false
    }
    let isSettled = false
    for (let round = 0; round < ROUNDS && !isSettled; round++) isSettled = settles(1e-13)
    if (!isSettled) {
      const unloaded = vectorsOf(base)
      const response = pins.map((_, j) =>
        vectorsOf(rub(pins.map((_, i) => (i === j ? scale : 0)))).map(([x, y], i): Pair => {
          const [x0, y0] = unloaded[i] as Pair
          return [(x - x0) / scale, (y - y0) / scale]
        }),
      )
      const forces = balanced(unloaded, response)
      if (forces === null) return null
      pressed = forces
      if (!settles(1e-9)) return null
    }
    const speeds = barSpeeds(model, pose, v)
    rubbing = pins.reduce((sum, pin, i) => sum + (pressed[i] as number) * Math.sign(apart(turning, pin)) * apart(speeds, pin), 0)
  }
  return { v, a, ...found, efforts: driverEfforts(model, pose, found.lambda), rubbing }
}
