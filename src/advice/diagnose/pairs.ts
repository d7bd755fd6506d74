// Two faults together, where none explains the readings alone.

import type { Built } from "./built.js"
import { type Noise, noiseAbout, whitened } from "./chance.js"
import type { Fault } from "./fault.js"
import { showing } from "./predict.js"
import { type Explanation, explained, FAR, type Task, type Tried, tryAt } from "./weigh.js"

/** Pairs of faults that may explain what none does alone, most plausible first. */
export function faultPairs(task: Task, singles: readonly Explanation[]): Explanation[] {
  const wanted = new Map<
    string,
    { readonly faults: readonly [Fault, Fault]; readonly sizes: readonly [number, number]; readonly guess: number; readonly noise: Noise }
  >()
  for (const base of [...singles].sort((a, b) => a.misfit - b.misfit).slice(0, 8)) {
    const [fault] = base.faults
    if (!fault) continue
    const rest = whitened(task.taken, base.shows, base.noise)
    const own = slopeOf(task, base.built, fault, base, rest)
    for (const other of task.faults) {
      if (other === fault) continue
      const guess = guessPair(task, base, rest, own, other)
      if (!guess) continue
      const key = [fault.name, other.name].sort().join("+")
      const found = wanted.get(key)
      if (!found || guess.misfit < found.guess)
        wanted.set(key, {
          faults: [fault, other],
          sizes: [(base.sizes[0] as number) + guess.step, guess.size],
          guess: guess.misfit,
          noise: base.noise,
        })
    }
  }
  const likely = [...wanted.values()].sort((a, b) => a.guess - b.guess).slice(0, 14)
  return likely.flatMap((one) => fittedPair(task, one) ?? []).sort((a, b) => a.score - b.score)
}

/** By how much each reading, in standard deviations, moves for 1 of a fault's size. */
function slopeOf(task: Task, built: Built, fault: Fault, base: Explanation, rest: Float64Array): Float64Array | null {
  if (!fault.row.size) return null
  const step = 0.05 * fault.row.usual
  const moved = tryAt(task, [fault], [(base.sizes[0] as number) + step], base.noise)
  return moved && built ? moved.z.map((v, i) => (v - (rest[i] as number)) / step) : null
}

/** What a second fault would leave, if readings went in proportion to sizes. */
function guessPair(task: Task, base: Explanation, rest: Float64Array, own: Float64Array | null, other: Fault) {
  let best: { misfit: number; size: number; step: number } | null = null
  const [low, high] = other.range
  const tries = other.row.size ? [0.4 * other.row.usual, 1.5 * other.row.usual, ...(low < 0 ? [-0.6 * other.row.usual] : [])] : [1]
  for (const at of tries) {
    if (at < low || at > high) continue
    const built = other.site.apply(base.built, at)
    if (!built) continue
    const shows = showing(built, task.taken.list, task.asked)
    const z = whitened(task.taken, shows, base.noise)
    const missed = shows.misses.reduce((sum, m) => sum + m * m, 0)
    const slope = z.map((v, i) => (v - (rest[i] as number)) / at)
    const { x, y } = twoUnknowns(rest, slope, own)
    // half to twice the size tried: beyond that, proportion says nothing
    const size = other.row.size ? Math.min(Math.max(x, at > 0 ? 0 : 2.5 * at), at > 0 ? 2.5 * at : 0, high) : 1
    const misfit = rest.reduce((sum, v, i) => sum + (v + (slope[i] as number) * size + (own ? (own[i] as number) * y : 0)) ** 2, missed)
    if (size !== 0 && (!best || misfit < best.misfit)) best = { misfit, size, step: y }
  }
  return best
}

/** Sizes x and y for which rest + a·x + b·y is smallest. */
function twoUnknowns(rest: Float64Array, a: Float64Array, b: Float64Array | null): { readonly x: number; readonly y: number } {
  let [aa, ab, bb, ar, br] = [1e-12, 0, 1e-12, 0, 0]
  rest.forEach((r, i) => {
    const [p, q] = [a[i] as number, b ? (b[i] as number) : 0]
    aa += p * p
    ab += p * q
    bb += q * q
    ar -= p * r
    br -= q * r
  })
  const det = aa * bb - ab * ab
  // one does what the other does: the second alone
  if (!b || det < 1e-4 * aa * bb) return { x: ar / aa, y: 0 }
  return { x: (ar * bb - br * ab) / det, y: (br * aa - ar * ab) / det }
}

const within = ({ range, row }: Fault, size: number) => (row.size ? Math.min(range[1], Math.max(range[0], size)) : 1)

/** Two faults, their sizes fitted together (Gauss and Newton, damped), then again in their own noise. */
function fittedPair(
  task: Task,
  {
    faults,
    sizes: start,
    noise: first,
  }: { readonly faults: readonly [Fault, Fault]; readonly sizes: readonly [number, number]; readonly noise: Noise },
): Explanation | null {
  let noise = first
  let sizes: readonly number[] = faults.map((one, i) => within(one, start[i] as number))
  let widths: readonly number[] = [0, 0]
  for (const rounds of [6, 3]) {
    let tried = tryAt(task, faults, sizes, noise)
    if (!tried) return null
    let damping = 1e-2
    for (let k = 0; k < rounds; k++) {
      const now: Tried = tried
      const slopes = faults.map((one, i) => stepSlope(task, faults, sizes, i, now, noise, one))
      const penalty = faults.map((one, i) => (one.row.size ? 2 / (one.row.usual ** 2 + (sizes[i] as number) ** 2) : 1))
      const sum = (p: Float64Array | null, q: Float64Array | null) => (p && q ? p.reduce((s, v, i) => s + v * (q[i] as number), 0) : 0)
      const [a, b] = slopes as [Float64Array | null, Float64Array | null]
      const [haa, hab, hbb] = [sum(a, a) + (penalty[0] as number), sum(a, b), sum(b, b) + (penalty[1] as number)]
      const ga = -sum(a, now.z) - (penalty[0] as number) * (faults[0].row.size ? (sizes[0] as number) : 0)
      const gb = -sum(b, now.z) - (penalty[1] as number) * (faults[1].row.size ? (sizes[1] as number) : 0)
      const plainDet = haa * hbb - hab * hab
      widths = [Math.sqrt(hbb / plainDet), Math.sqrt(haa / plainDet)]
      let moved: Tried | null = null
      let next = sizes
      for (let t = 0; t < 4 && !moved; t++) {
        const [da, db] = [haa * (1 + damping), hbb * (1 + damping)]
        const det = da * db - hab * hab
        next = [
          within(faults[0], (sizes[0] as number) + (ga * db - gb * hab) / det),
          within(faults[1], (sizes[1] as number) + (gb * da - ga * hab) / det),
        ]
        const there = tryAt(task, faults, next, noise)
        if (there && there.cost < now.cost) moved = there
        else damping *= 10
      }
      if (!moved) break
      damping = Math.max(1e-4, damping / 5)
      const gained = now.cost - moved.cost
      sizes = next
      tried = moved
      if (gained < 0.02) break
    }
    if (rounds === 3 || tried.misfit > FAR) {
      if (faults.some((one, i) => one.row.size && Math.abs(sizes[i] as number) < 1e-3 * one.row.usual)) return null
      return explained(task, faults, sizes, tried, widths, noise)
    }
    noise = noiseAbout(tried.built, task.taken, task.strayings, task.asked)
  }
  return null
}

function stepSlope(
  task: Task,
  faults: readonly Fault[],
  sizes: readonly number[],
  which: number,
  now: Tried,
  noise: Noise,
  fault: Fault,
): Float64Array | null {
  if (!fault.row.size) return null
  const step = (sizes[which] as number) + 0.03 * fault.row.usual <= fault.range[1] ? 0.03 * fault.row.usual : -0.03 * fault.row.usual
  const moved = tryAt(
    task,
    faults,
    sizes.map((s, i) => (i === which ? s + step : s)),
    noise,
  )
  return moved ? moved.z.map((v, i) => (v - (now.z[i] as number)) / step) : null
}
