import { type NoSolution, refuse } from "../../solver/index.js"
import { type Factors, factor, rankOf, solveFactored, solveTransposed } from "../lu.js"
import type { Model } from "./model.js"
import type { MotionRefusal } from "./output.js"
import { jacobian, rowBias, rowDrive, rowValue, sub, turned } from "./rows.js"

/** A solved pose: all coordinates, the factored Jacobian there, and how it was reached. */
export interface Pose {
  readonly q: Float64Array
  /** Driver values, rad or m. */
  readonly drive: readonly number[]
  readonly factors: Factors
  readonly iterations: number
  /** Largest constraint error, m. */
  readonly residual: number
}

/** Pivot ratio under which a pose counts as singular. */
const SINGULAR = 1e-9

const values = (model: Model, q: Float64Array, drive: readonly number[]) => model.rows.map((row) => rowValue(row, q, drive))
const largest = (list: ArrayLike<number>) => Array.from(list).reduce((most, v) => Math.max(most, Math.abs(v)), 0)

function moved(model: Model, q: Float64Array, step: Float64Array, by: number): Float64Array {
  const next = q.slice()
  model.columns.forEach((column, point) => {
    if (column < 0) return
    next[2 * point] = (next[2 * point] as number) + by * (step[column] as number)
    next[2 * point + 1] = (next[2 * point + 1] as number) + by * (step[column + 1] as number)
  })
  return next
}

/** Newton's method on the constraints, halving steps that do not help; null where it does not settle. */
function newton(model: Model, from: Float64Array, drive: readonly number[], most: number): Pose | null {
  let q = from
  let r = values(model, q, drive)
  let error = largest(r)
  const small = 0.01 * model.rounding
  for (let iterations = 0; ; iterations++) {
    const factors = factor(jacobian(model, q, drive), model.unknowns)
    const isSettled = error <= model.rounding
    // one more step while it still pays: the last digits cost little
    if (error <= small || iterations >= most) return isSettled ? { q, drive, factors, iterations, residual: error } : null
    if (factors.sign === 0) return isSettled ? { q, drive, factors, iterations, residual: error } : null
    const step = solveFactored(factors, r)
    let by = -1
    let next = moved(model, q, step, by)
    let left = values(model, next, drive)
    while (!(largest(left) < error) && by < -1e-4) {
      by /= 2
      next = moved(model, q, step, by)
      left = values(model, next, drive)
    }
    const after = largest(left)
    if (!(after < error)) return isSettled ? { q, drive, factors, iterations, residual: error } : null
    q = next
    r = left
    error = after
  }
}

/** Velocities of all points for driver rates (or, with `bias`, accelerations). */
export function pointRates(model: Model, pose: Pose, rates: readonly number[], bias?: readonly number[]): Float64Array {
  const right = model.rows.map((row, i) =>
    bias ? -(bias[i] as number) : "driver" in row ? -rowDrive(row, pose.q, pose.drive) * (rates[row.driver] as number) : 0,
  )
  const step = solveFactored(pose.factors, right)
  return moved(model, new Float64Array(pose.q.length), step, 1)
}

/** Accelerations of all points for driver rates and their changes. */
export function pointAccelerations(
  model: Model,
  pose: Pose,
  v: Float64Array,
  rates: readonly number[],
  changes: readonly number[],
): Float64Array {
  const bias = model.rows.map((row) => {
    const [rate, change] = "driver" in row ? [rates[row.driver] as number, changes[row.driver] as number] : [0, 0]
    return rowBias(row, pose.q, v, pose.drive, rate, change)
  })
  return pointRates(model, pose, rates, bias)
}

/** Forces on all points, couples of the torques included. */
export function allForces(model: Model, q: Float64Array): Float64Array {
  const f = model.forces.slice()
  for (const { from, to, torque } of model.torques) {
    const [fx, fy] = couple(q, from, to, torque)
    f[2 * to] = (f[2 * to] as number) + fx
    f[2 * to + 1] = (f[2 * to + 1] as number) + fy
    f[2 * from] = (f[2 * from] as number) - fx
    f[2 * from + 1] = (f[2 * from + 1] as number) - fy
  }
  return f
}

/** Force at `to` (and its opposite at `from`) that makes a torque. */
export function couple(q: Float64Array, from: number, to: number, torque: number): [number, number] {
  const [vx, vy] = sub(q, from, to)
  const squared = vx * vx + vy * vy
  return [(-vy * torque) / squared, (vx * torque) / squared]
}

/** What each constraint carries under forces on all points: multipliers λ with Jᵀ·λ = −F. */
export function multipliers(model: Model, pose: Pose, f: Float64Array = allForces(model, pose.q)): Float64Array {
  const right = new Float64Array(model.unknowns)
  model.columns.forEach((column, point) => {
    if (column < 0) return
    right[column] = -(f[2 * point] as number)
    right[column + 1] = -(f[2 * point + 1] as number)
  })
  return solveTransposed(pose.factors, right)
}

/** Torque or force that each driver must exert, positive with its own motion; by virtual work. */
export function driverEfforts(model: Model, pose: Pose, lambda: Float64Array): number[] {
  const efforts = model.drivers.map(() => 0)
  model.rows.forEach((row, i) => {
    if ("driver" in row) efforts[row.driver] = -(lambda[i] as number) * rowDrive(row, pose.q, pose.drive)
  })
  return efforts
}

/** Every coordinate moved by fixed pseudo-random numbers: away from special poses, or to another starting place. */
function shaken(q: Float64Array, by: number, from = 1): Float64Array {
  let seed = from * 7919
  return q.map((v) => {
    seed = (seed * 16807) % 2147483647
    return v + by * (seed / 2147483647 - 0.5)
  })
}

/** Under- and over-constrained mechanisms, named. */
export function countFault(model: Model): NoSolution<"over-constrained" | "under-constrained"> | null {
  const { rows, unknowns, drivers } = model
  const q = shaken(model.sketch, 0.02 * model.size)
  const drive = drivers.map((d) => d.sketch)
  const rank = rankOf(jacobian(model, q, drive), rows.length, unknowns)
  const at = { unknowns, constraints: rows.length, independent: rank }
  if (rank < unknowns) {
    const free = unknowns - rank
    const idle = rows.length - rank
    return refuse(
      "under-constrained",
      idle
        ? "Motions left free: {shortBy}. There are {independent} independent constraints for {unknowns} coordinates, and {idle} more that only repeat others; add drivers, bars or pivots."
        : "Motions left free: {shortBy}. There are {independent} independent constraints for {unknowns} coordinates; add drivers, bars or pivots.",
      free,
      at,
      {},
      { idle },
    )
  }
  if (rows.length > rank) {
    const spare = rows.length - rank
    return refuse(
      "over-constrained",
      "Constraints too many: {shortBy}. There are {constraints} constraints for {unknowns} coordinates; leave out drivers or bars.",
      spare,
      at,
    )
  }
  return null
}

/** A refusal and, for what may be changed, how far the drivers came and which way they were going. */
export interface Halt {
  readonly refusal: NoSolution<MotionRefusal>
  readonly reached: readonly number[]
  readonly towards: readonly number[]
}
export const isHalt = (value: object): value is Halt => "refusal" in value

const singular = (shortBy: number) =>
  refuse(
    "singular",
    "On the way the mechanism comes to a singular pose: from there it can move on in more than one way, and the drivers do not decide which. Drive it another way, or stop short of this pose.",
    shortBy,
  )
/** Travel that drivers lack, rad or m: rounded up to five places, as near as a dead point can be told. */
const lacking = (from: readonly number[], to: readonly number[]) =>
  Math.ceil(largest(to.map((v, i) => v - (from[i] as number))) * 1e5) / 1e5

/** Step of all drivers, as a share of the way, under which a motion counts as stuck. */
const STUCK = 1e-10

/** Weightings tried for the change of the Jacobian. */
const WEIGHTINGS = 6

/**
 * Whether the Jacobian stays regular between two poses: where |J⁻¹·ΔJ| is smaller than one, no matrix between the two is
 * singular, so that neither one loop nor several at once can pass a toggle. Smaller than one in some weighting of the
 * coordinates is enough (L. Collatz, 1942): plain at first, then each coordinate by what the others do to it, so that a long
 * link which a short crank swings far does not count as near a toggle.
 */
function staysRegular(model: Model, from: Pose, to: Pose): boolean {
  const n = model.unknowns
  const [a, b] = [jacobian(model, from.q, from.drive), jacobian(model, to.q, to.drive)]
  const change = new Float64Array(n * n)
  const column = new Float64Array(n)
  for (let k = 0; k < n; k++) {
    let moves = false
    for (let i = 0; i < n; i++) {
      column[i] = (b[i * n + k] as number) - (a[i * n + k] as number)
      moves ||= column[i] !== 0
    }
    if (!moves) continue
    solveFactored(from.factors, column).forEach((v, i) => {
      change[i * n + k] = Math.abs(v)
    })
  }
  let weights = new Float64Array(n).fill(1)
  for (let tries = 0; tries < WEIGHTINGS; tries++) {
    const sums = new Float64Array(n)
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) sums[i] = (sums[i] as number) + (change[i * n + k] as number) * (weights[k] as number)
    if (sums.every((sum, i) => sum <= 0.9 * (weights[i] as number))) return true
    weights = sums
  }
  return false
}

/**
 * How far rounding alone may put points off: that of the constraints, as much as the pose blows it up. Where that is more than
 * a small share of the step, the step says too little about the way it went.
 */
function blur(model: Model, pose: Pose, reach: number): number {
  const error = 1e-15 * largest(pose.q)
  const signs = shaken(new Float64Array(model.unknowns), 1).map((v) => error * Math.sign(v))
  return 10 * model.rounding + Math.min(10 * largest(solveFactored(pose.factors, signs)), 0.03 * reach)
}

/**
 * Whether a step kept to its branch: the points go on nearly as they came, and half way along the curve that both ends
 * suggest the parts still fit. Where two branches cross, a step that changes over turns off sharply instead.
 */
function goesOn(model: Model, from: Pose, to: Pose, flow: Float64Array, rates: readonly number[], noise: number): boolean {
  const reach = largest(flow)
  const after = pointRates(model, to, rates)
  if (!(largest(after.map((v, i) => v - (flow[i] as number))) <= 0.5 * reach + noise)) return false
  const middle = from.q.map((v, i) => (v + (to.q[i] as number)) / 2 + ((flow[i] as number) - (after[i] as number)) / 8)
  const drive = from.drive.map((v, i) => (v + (to.drive[i] as number)) / 2)
  const off = solveFactored(from.factors, values(model, middle, drive))
  return largest(off) <= 2e-3 * reach + noise
}

/** Follows one branch from a pose to other driver values; steps shrink where the way is not certain. */
function follow(model: Model, start: Pose, target: readonly number[], asked: readonly number[] = target): Pose | Halt {
  let here = start
  let done = 0
  let step = 1
  let iterations = start.iterations
  const origin = start.drive
  const between = (t: number) => origin.map((a, i) => a + t * ((target[i] as number) - a))
  if (target.every((v, i) => v === origin[i])) return start
  for (let tries = 0; done < 1; tries++) {
    const goal = Math.min(1, done + step)
    const drive = goal === 1 ? [...target] : between(goal)
    const rates = drive.map((v, i) => v - (here.drive[i] as number))
    const flow = pointRates(model, here, rates)
    const guess = here.q.map((v, i) => v + (flow[i] as number))
    const next = newton(model, guess, drive, 12)
    const reach = largest(flow)
    const noise = blur(model, here, reach)
    const isSure =
      next !== null &&
      next.factors.sign === here.factors.sign &&
      largest(next.q.map((v, i) => v - (guess[i] as number))) <= 0.25 * reach + noise &&
      keepsSides(model, next) &&
      goesOn(model, here, next, flow, rates, noise) &&
      staysRegular(model, here, next)
    if (isSure) {
      iterations += next.iterations
      here = { ...next, iterations }
      done = goal
      step = Math.min(1, step * 2)
      if (here.factors.pivotRatio < SINGULAR)
        return {
          refusal: singular(lacking(origin, asked)),
          reached: here.drive,
          towards: origin.map((v, i) => 2 * (here.drive[i] as number) - v),
        }
      continue
    }
    step = (goal - done) / 2
    if (step > STUCK && tries < 20000) continue
    // stuck: is there anything beyond, or does the way end here?
    const beyond = newton(model, guess, between(Math.min(1, done + 1e-6)), 40)
    const isNear = beyond !== null && largest(beyond.q.map((v, i) => v - (here.q[i] as number))) < 0.01 * model.size
    const left = lacking(here.drive, asked)
    const refusal = isNear
      ? singular(left)
      : refuse(
          "dead-point",
          "The drivers cannot go all the way: the mechanism comes to a dead point, beyond which its parts no longer reach.",
          left,
        )
    return { refusal, reached: here.drive, towards: target }
  }
  return here
}

/** A crank's line has the angle asked for, not its opposite. */
function keepsSides(model: Model, pose: Pose): boolean {
  return model.rows.every((row) => {
    if (row.kind !== "crank") return true
    const [vx, vy] = sub(pose.q, row.from, row.to)
    const [wx, wy] = turned(row, pose.q, pose.drive[row.driver] as number)
    return vx * wx + vy * wy > 0
  })
}

/** Places round the sketch tried at each distance where it does not close by itself. */
const SHAKES = 12

/** The first pose: by Newton's method from the sketch, or from places around it, the nearest to the sketch. */
function firstPose(model: Model): Pose | null {
  const settings = [model.drivers.map((d) => d.sketch), model.drivers.map((d) => d.start)]
  const closed = (from: Float64Array) =>
    settings.flatMap((drive) => {
      const pose = newton(model, from, drive, 100)
      return pose !== null && keepsSides(model, pose) ? [pose] : []
    })
  const offSketch = (pose: Pose) => largest(pose.q.map((v, i) => v - (model.sketch[i] as number)))
  const [direct] = closed(model.sketch)
  if (direct) return direct
  const bars = model.rows.filter((row) => row.kind === "bar").length
  for (const share of [0.1, 0.3, 1, 3]) {
    const found: Pose[] = []
    for (let k = 1; k <= SHAKES; k++) {
      const moved = shaken(model.sketch, (share * model.size) / bars, k)
      // pivots stand where they are
      for (const [point, column] of model.columns.entries())
        if (column < 0) moved.set(model.sketch.subarray(2 * point, 2 * point + 2), 2 * point)
      found.push(...closed(moved).filter((pose) => pose.factors.pivotRatio >= SINGULAR))
    }
    if (found.length) return found.reduce((a, b) => (offSketch(b) < offSketch(a) ? b : a))
  }
  return null
}

/** The pose at the start: assembled near the sketch, then brought to the drivers' start values. */
export function assemble(model: Model): Pose | Halt {
  const fault = countFault(model)
  if (fault) return { refusal: fault, reached: [], towards: [] }
  const first = firstPose(model)
  if (first === null) {
    const sketched = model.drivers.map((d) => d.sketch)
    const refusal = refuse(
      "cannot-close",
      "No pose was found that puts the parts together, neither from the sketch, where the worst misses by {shortBy length}, nor from {places} places around it. Check lengths and sketch.",
      largest(values(model, model.sketch, sketched)),
      {},
      {},
      { places: 4 * SHAKES },
    )
    return { refusal, reached: [], towards: [] }
  }
  const { pivotRatio } = first.factors
  if (pivotRatio < SINGULAR) return { refusal: singular(SINGULAR - pivotRatio), reached: [], towards: [] }
  return follow(
    model,
    first,
    model.drivers.map((d) => d.start),
  )
}

/** Poses at `steps` + 1 equally spaced settings of all drivers from start to end, along one branch; both ends alone where steps is 0. */
export function motion(model: Model, steps: number): readonly Pose[] | Halt {
  const first = assemble(model)
  if (isHalt(first)) return first
  const poses = [first]
  const count = Math.max(1, steps)
  for (let k = 1; k <= count; k++) {
    const next = settle(model, poses[k - 1] as Pose, k / count)
    if (isHalt(next)) return next
    poses.push(next)
  }
  return poses
}

/** The pose at a share of the motion, followed from another one. */
export function settle(model: Model, from: Pose, share: number): Pose | Halt {
  return follow(
    model,
    from,
    model.drivers.map((d) => (share === 1 ? d.end : d.start + share * (d.end - d.start))),
    model.drivers.map((d) => d.end),
  )
}
