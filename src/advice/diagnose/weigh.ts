// How well faults explain readings: each at its best size, one alone or two together.
import type { Built } from "./built.js"
import { beyond, type Noise, noiseAbout, whitened } from "./chance.js"
import type { Fault } from "./fault.js"
import { Asked, type Showing, showing, type Taken } from "./predict.js"
import type { Straying } from "./straying.js"

/** Everything that stays the same while faults are tried. */
export interface Task {
  readonly planned: Built
  readonly asked: Asked
  readonly taken: Taken
  readonly strayings: readonly Straying[]
  readonly faults: readonly Fault[]
  /** Noise about the plan. */
  readonly noise: Noise
  /** Sum of all priors. */
  readonly priors: number
}

export function taskOf(planned: Built, taken: Taken, strayings: Task["strayings"], faults: readonly Fault[]): Task {
  const asked = new Asked(planned)
  return {
    planned,
    asked,
    taken,
    strayings,
    faults,
    noise: noiseAbout(planned, taken, strayings, asked),
    priors: faults.reduce((sum, one) => sum + one.row.prior, 0),
  }
}

/** Readings explained by no fault, one or two. */
export interface Explanation {
  readonly faults: readonly Fault[]
  readonly sizes: readonly number[]
  readonly built: Built
  readonly shows: Showing
  /** Sum of squares of what is left, in standard deviations. */
  readonly misfit: number
  /** Share of builds with exactly this that would be farther off. */
  readonly chance: number
  /** −2 ln of how likely the readings are with these faults whatever their size, and the same with how common they are. */
  readonly byReadings: number
  readonly score: number
  /** Standard deviation of each size. */
  readonly widths: readonly number[]
  readonly noise: Noise
}

/** A rig with faults of some sizes; null where nothing of it fits together. */
export const builtWith = (task: Task, faults: readonly Fault[], sizes: readonly number[]): Built | null =>
  faults.reduce<Built | null>((built, one, i) => built && one.site.apply(built, sizes[i] as number), task.planned)

/** −2 ln of how plausible a size is, but for its norm: a spread with wide shoulders, since bad contacts come in all sizes. */
const sizeCost = ({ row }: Fault, size: number) => (row.size ? 2 * Math.log(1 + (size / row.usual) ** 2) : 0)
const isTwoSided = ({ range }: Fault) => range[0] < 0

/** A rig with faults of some sizes, held against the readings. */
export interface Tried {
  readonly built: Built
  readonly shows: Showing
  readonly z: Float64Array
  readonly misfit: number
  readonly cost: number
}

/** Holds faults of some sizes against the readings; null where nothing of the rig fits together. */
export function tryAt(task: Task, faults: readonly Fault[], sizes: readonly number[], noise: Noise): Tried | null {
  const built = builtWith(task, faults, sizes)
  if (!built) return null
  const shows = showing(built, task.taken.list, task.asked)
  const z = whitened(task.taken, shows, noise)
  const misfit = z.reduce((sum, v) => sum + v * v, 0) + shows.misses.reduce((sum, v) => sum + v * v, 0)
  return { built, shows, z, misfit, cost: misfit + faults.reduce((sum, one, i) => sum + sizeCost(one, sizes[i] as number), 0) }
}

const HOPELESS = 1e9
/** What two faults at once cost beside their own priors: about one in twenty builds that fail has two. Common practice, no source. */
const TWO = 0.05
/** Below this chance something does not explain the readings. */
export const UNFIT = 0.02

/** Numbers beyond the sizes that were fitted, and what is seen against an explanation; one at least, or whatever a size leaves would fit. */
function spare({ values }: Taken, shows: Showing, sizes: number): number {
  const numbers = values.filter((v) => v !== null).length
  const seen = shows.misses.reduce((sum, m) => sum + (m > 0 ? 1 : 0), 0)
  return Math.max(1, Math.max(0, numbers - sizes) + seen)
}

/** What faults of some sizes come to. */
export function explained(
  task: Task,
  faults: readonly Fault[],
  sizes: readonly number[],
  tried: Tried,
  widths: readonly number[],
  noise: Noise,
): Explanation {
  const free = faults.filter((one) => one.row.size).length
  const seen = faults.reduce((sum, one, i) => {
    if (!one.row.size) return sum
    const share = ((isTwoSided(one) ? 1 : 2) * Math.sqrt(2 / Math.PI) * (widths[i] as number)) / one.row.usual
    return sum - 2 * Math.log(Math.min(1, share))
  }, tried.cost + noise.logDet)
  const common = faults.reduce((sum, one) => sum - 2 * Math.log(one.row.prior / task.priors), faults.length > 1 ? -2 * Math.log(TWO) : 0)
  const equal = faults.length * 2 * Math.log(task.faults.length) + (faults.length > 1 ? -2 * Math.log(TWO) : 0)
  return {
    faults,
    sizes,
    built: tried.built,
    shows: tried.shows,
    misfit: tried.misfit,
    chance: beyond(tried.misfit, spare(task.taken, tried.shows, free)),
    byReadings: seen + (faults.length ? equal : 0),
    score: seen + common,
    widths,
    noise,
  }
}

/** The rig as planned, held against the readings. */
export function noFault(task: Task): Explanation {
  const tried = tryAt(task, [], [], task.noise) as Tried
  return explained(task, [], [], tried, [], task.noise)
}

/** Sizes looked at from none outward, finer near none: those of one sign. */
function side(end: number, usual: number): readonly number[] {
  const points = 11
  return Array.from({ length: points }, (_, i) => end * ((i + 1) / points) ** (usual >= Math.abs(end) ? 1 : 2.2))
}

/** Once twice this much worse than the best so far, larger sizes are not looked at. */
const GIVE_UP = 400

/** Costs of sizes on both sides of none, in order of size. */
function lookedAt({ range: [low, high], row }: Fault, cost: (size: number) => number): readonly (readonly [size: number, cost: number])[] {
  const none = [0, cost(0)] as const
  const looked = (sizes: readonly number[]) => {
    const found: (readonly [number, number])[] = []
    let [least, bad] = [none[1], 0]
    for (const size of sizes) {
      const here = cost(size)
      found.push([size, here])
      least = Math.min(least, here)
      bad = here > least + GIVE_UP ? bad + 1 : 0
      if (bad > 1) break
    }
    return found
  }
  return [...(low < 0 ? looked(side(low, row.usual)).reverse() : []), none, ...looked(side(high, row.usual))]
}

/** Best size of one fault among others that are held. */
function bestOf(task: Task, faults: readonly Fault[], sizes: readonly number[], which: number, noise: Noise, near?: number): number {
  const fault = faults[which] as Fault
  const cost = (size: number) =>
    tryAt(
      task,
      faults,
      sizes.map((s, i) => (i === which ? size : s)),
      noise,
    )?.cost ?? HOPELESS
  const about =
    near === undefined
      ? null
      : [near - 0.25 * Math.abs(near) - 0.02 * fault.row.usual, near, near + 0.25 * Math.abs(near) + 0.02 * fault.row.usual]
  const looked = about
    ? about.filter((size) => size >= fault.range[0] && size <= fault.range[1]).map((size) => [size, cost(size)] as const)
    : lookedAt(fault, cost)
  const points = looked.map(([size]) => size)
  const costs = looked.map(([, c]) => c)
  let best = 0
  costs.forEach((c, i) => {
    if (c < (costs[best] as number)) best = i
  })
  let [low, high] = [points[Math.max(0, best - 1)] as number, points[Math.min(points.length - 1, best + 1)] as number]
  let [size, least] = [points[best] as number, costs[best] as number]
  // golden section, with the best point so far kept
  const ratio = (Math.sqrt(5) - 1) / 2
  let [a, b] = [high - ratio * (high - low), low + ratio * (high - low)]
  let [fa, fb] = [cost(a), cost(b)]
  for (let k = 0; k < 10; k++) {
    if (fa < least) [size, least] = [a, fa]
    if (fb < least) [size, least] = [b, fb]
    if (fa <= fb) {
      high = b
      ;[b, fb] = [a, fa]
      a = high - ratio * (high - low)
      fa = cost(a)
    } else {
      low = a
      ;[a, fa] = [b, fb]
      b = low + ratio * (high - low)
      fb = cost(b)
    }
  }
  return size
}

/** How well a size is known: half of the sizes about it that fit nearly as well. */
function widthOf(task: Task, faults: readonly Fault[], sizes: readonly number[], which: number, tried: Tried, noise: Noise): number {
  const fault = faults[which] as Fault
  const size = sizes[which] as number
  const [low, high] = fault.range
  const misfit = (at: number) =>
    tryAt(
      task,
      faults,
      sizes.map((s, i) => (i === which ? at : s)),
      noise,
    )?.misfit ?? HOPELESS
  const plain = tried.shows.misses.every((m) => m === 0) && task.taken.values.every((v) => v !== null)
  const step = 0.02 * Math.min(fault.row.usual, high - low)
  const to = size + step <= high ? size + step : size - step
  if (plain) {
    const moved = tryAt(
      task,
      faults,
      sizes.map((s, i) => (i === which ? to : s)),
      noise,
    )
    if (moved) {
      const slope = moved.z.reduce((sum, v, i) => sum + ((v - (tried.z[i] as number)) / step) ** 2, 0)
      return 1 / Math.sqrt(slope + 1 / fault.row.usual ** 2)
    }
  }
  const reach = (end: number) => {
    if (misfit(end) <= tried.misfit + 1) return end
    let [inside, outside] = [size, end]
    for (let k = 0; k < 7; k++) {
      const mid = (inside + outside) / 2
      if (misfit(mid) <= tried.misfit + 1) inside = mid
      else outside = mid
    }
    return (inside + outside) / 2
  }
  const width = (reach(high) - reach(low)) / 2
  return Math.min(Math.max(width, 1e-6 * (high - low)), Math.max(Math.abs(size), fault.row.usual) / Math.sqrt(2 * Math.PI))
}

/** One fault at its best size; null where it cannot be there at all. */
function single(task: Task, fault: Fault, noise: Noise, near?: number): Explanation | null {
  const size = fault.row.size ? bestOf(task, [fault], [0], 0, noise, near) : 1
  const tried = tryAt(task, [fault], [size], noise)
  if (!tried) return null
  const widths = [fault.row.size ? widthOf(task, [fault], [size], 0, tried, noise) : 0]
  return explained(task, [fault], [size], tried, widths, noise)
}

/** How many explanations are held against the noise about themselves instead of the plan's. */
const AGAIN = 8

/** Misfit beyond which nothing is worth another look. */
export const FAR = 1e3

/** Every single fault at its best size, most plausible first. */
export function singleFaults(task: Task): Explanation[] {
  const first = task.faults.flatMap((fault) => single(task, fault, task.noise) ?? []).sort((a, b) => a.score - b.score)
  return first.map((one, i) => (i < AGAIN && one.misfit < FAR ? again(task, one) : one)).sort((a, b) => a.score - b.score)
}

/** The same with the noise of parts as it is on a rig with these faults: a stiff rig strays further. */
function again(task: Task, one: Explanation): Explanation {
  const noise = noiseAbout(one.built, task.taken, task.strayings, task.asked)
  const [fault] = one.faults
  if (!fault) return one
  return single(task, fault, noise, fault.row.size ? one.sizes[0] : undefined) ?? one
}
