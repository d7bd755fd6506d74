import { explicitPair } from "./explicit.js"
import { radau } from "./stiff.js"
import {
  allFinite,
  type Dense,
  type OdeOptions,
  type OdeProblem,
  type OdeStop,
  type OdeStretch,
  type Setting,
  type Stepper,
} from "./types.js"
import { watchOf } from "./watch.js"

/** A stiff step is dense to order 3 only: an event farther inside it than this is met by a step that ends there. */
const NEAR_AN_END = 1e-3

/**
 * Integrates from t0 until the end, forwards or backwards, or the first event. `seen` is called for every accepted step, after
 * which the states of that step are gone.
 *
 * An event that is zero at t0 does not stop the run until it has left zero and comes again; where both directions count, one within
 * rounding of zero counts as zero. After an event put the state exactly on its surface and begin anew. Several at one instant are told
 * together (`crossed`).
 *
 * @param seen - told of every step with a function that writes the state at any time of [ta, tb]; the last ends at the event
 * @throws RangeError where tolerances, step sizes or lengths make no sense
 */
export function integrate(
  problem: OdeProblem,
  t0: number,
  y0: Float64Array,
  end: number,
  options: OdeOptions = {},
  seen?: (ta: number, tb: number, at: Dense) => void,
): OdeStretch {
  const { size, events } = problem
  const { relative, absolute, maxStep, maxCalls } = checked(size, t0, y0, end, options)
  const method = options.method ?? "auto"
  let [calls, steps, stiffSteps] = [0, 0, 0]
  const slope = (at: number, state: Float64Array, dy: Float64Array) => {
    calls++
    problem.slope(at, state, dy)
  }
  const setting: Setting = { size, slope, relative, absolute }
  let stiff = method === "stiff"
  const steppers: { explicit?: Stepper; stiff?: Stepper } = {}
  const chosen = (): Stepper => {
    if (stiff) steppers.stiff ??= radau(setting)
    else steppers.explicit ??= explicitPair(setting)
    return (stiff ? steppers.stiff : steppers.explicit) as Stepper
  }
  let stepper = chosen()

  const [y, dy, out] = [Float64Array.from(y0), new Float64Array(size), new Float64Array(size)]
  let t = t0
  const stopped = (kind: OdeStop["kind"], crossed: readonly number[] = []): OdeStretch => ({
    t,
    y,
    stop: { kind, event: crossed[0] ?? null },
    crossed: [...crossed],
    calls,
    steps,
    stiffSteps,
  })
  const sense = Math.sign(end - t0)
  if (sense === 0) return stopped("end")
  const watch = events === undefined || events.count === 0 ? null : watchOf(events, size)
  if (watch !== null && !watch.start(t, y)) return stopped("not-a-number")
  slope(t, y, dy)
  if (!allFinite(dy) || !allFinite(y)) return stopped("not-a-number")

  // the step in hand, for its dense output
  let [from, length, sound] = [t, 0, true]
  const dense = (at: number, into: Float64Array): boolean => stepper.dense((at - from) / length, into)
  const at: Dense = (time, into) => {
    sound = dense(time, into) && sound
  }

  const largest = Math.min(maxStep, Math.abs(end - t0))
  let h = sense * Math.min(options.firstStep ?? firstStep(setting, t, y, dy, sense, stiff ? 3 : 8, largest), largest)
  if (!Number.isFinite(h)) return stopped("not-a-number")
  let [undefinedBefore, shortened] = [false, 0]
  for (;;) {
    if (calls >= maxCalls) return stopped("too-many-calls")
    const last = (t + (shortened > 0 ? 1 : 1.01) * h - end) * sense >= 0
    if (last) h = end - t
    else if (Math.abs(h) <= 10 * Number.EPSILON * Math.abs(t)) return stopped(undefinedBefore ? "not-a-number" : "step-too-small")
    const error = stepper.attempt(t, y, dy, h)
    if (!(error <= 1)) {
      undefinedBefore = Number.isNaN(error)
      // the last step may be shorter than what is still a step elsewhere: so may those it is cut into
      if (t + h * stepper.growth === t) return stopped(undefinedBefore ? "not-a-number" : "step-too-small")
      h *= stepper.growth
      continue
    }
    const next = last ? end : t + h
    ;[from, length] = [t, h]
    const met = watch === null ? Number.POSITIVE_INFINITY : watch.look(t, next, dense)
    if (Number.isNaN(met)) {
      undefinedBefore = true
      h /= 4
      stepper.restart()
      if (t + h === t) return stopped("not-a-number")
      continue
    }
    const share = (met - t) / h
    if (stiff && Number.isFinite(met) && share > NEAR_AN_END && share < 1 - NEAR_AN_END && shortened < 3) {
      shortened++
      h *= share * (1 + NEAR_AN_END / 4)
      continue
    }
    steps++
    if (stiff) stiffSteps++
    ;[undefinedBefore, shortened] = [false, 0]
    if (watch !== null && Number.isFinite(met)) {
      dense(met, out)
      seen?.(t, met, at)
      if (!sound) return stopped("not-a-number")
      t = met
      y.set(out)
      return stopped("event", watch.crossed)
    }
    seen?.(t, next, at)
    if (!sound) return stopped("not-a-number")
    watch?.pass()
    stepper.accept()
    t = next
    y.set(stepper.next)
    dy.set(stepper.nextSlope)
    if (last) return stopped("end")
    h = sense * Math.min(Math.abs(h * stepper.growth), maxStep)
    if (method === "auto" && stepper.tired) {
      stiff = !stiff
      stepper = chosen()
      stepper.restart()
    }
  }
}

function checked(size: number, t0: number, y0: Float64Array, end: number, options: OdeOptions) {
  const { relative = 1e-8, absolute = 1e-10, maxStep = Number.POSITIVE_INFINITY, maxCalls = 1_000_000, firstStep } = options
  const fail = (what: string): never => {
    throw new RangeError(`integrate: ${what}.`)
  }
  if (y0.length !== size) fail(`the state has ${y0.length} numbers, the problem ${size}`)
  if (!Number.isFinite(t0) || !Number.isFinite(end)) fail("start and end must be finite")
  if (!(relative >= 1e-14 && relative <= 0.1)) fail(`relative must lie from 1e-14 to 0.1, not ${relative}`)
  if (typeof absolute !== "number" && absolute.length !== size) fail(`absolute has ${absolute.length} numbers, the problem ${size}`)
  const each = typeof absolute === "number" ? new Float64Array(size).fill(absolute) : Float64Array.from(absolute)
  if (!each.every((a) => a > 0 && Number.isFinite(a))) fail("absolute must be above 0")
  if (!(maxStep > 0)) fail(`maxStep must be above 0, not ${maxStep}`)
  if (firstStep !== undefined && !(firstStep > 0)) fail(`firstStep must be above 0, not ${firstStep}`)
  if (!(maxCalls >= 1)) fail(`maxCalls must be at least 1, not ${maxCalls}`)
  return { relative, absolute: each, maxStep, maxCalls }
}

/** A step to begin with, from two slopes (Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I, II.4). */
function firstStep(
  { size, slope, relative, absolute }: Setting,
  t: number,
  y: Float64Array,
  dy: Float64Array,
  sense: number,
  order: number,
  largest: number,
): number {
  const norm = (value: (i: number) => number) => {
    let sum = 0
    for (let i = 0; i < size; i++) sum += (value(i) / ((absolute[i] as number) + relative * Math.abs(y[i] as number))) ** 2
    return Math.sqrt(sum / Math.max(size, 1))
  }
  const [d0, d1] = [norm((i) => y[i] as number), norm((i) => dy[i] as number)]
  const guess = Math.min(d0 < 1e-5 || d1 < 1e-5 ? 1e-6 : 0.01 * (d0 / d1), largest)
  const [point, there] = [new Float64Array(size), new Float64Array(size)]
  for (let i = 0; i < size; i++) point[i] = (y[i] as number) + sense * guess * (dy[i] as number)
  slope(t + sense * guess, point, there)
  const d2 = norm((i) => (there[i] as number) - (dy[i] as number)) / guess
  // where the slope is no number there, a small step finds out how far it may go
  if (!Number.isFinite(d2)) return guess * 1e-3
  const largestRate = Math.max(d1, d2)
  return Math.min(100 * guess, largestRate <= 1e-15 ? Math.max(1e-6, guess * 1e-3) : (0.01 / largestRate) ** (1 / order))
}
