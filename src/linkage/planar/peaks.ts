// Largest forces over a whole motion, and the pose nearest to singular.
import { type Burden, forcesAt, type PoseForces } from "./forces.js"
import type { Model } from "./model.js"
import { norms } from "./motion.js"
import { sub } from "./rows.js"
import { type Halt, isHalt, type Pose, settle } from "./solve.js"

/** A pose of the motion with its forces. */
export interface Sample {
  /** Share of the motion: 0 start, 1 end. */
  readonly share: number
  readonly pose: Pose
  readonly forces: PoseForces
}

/** Friction at the pins finds no balance at a pose of the motion. */
export interface Jam {
  readonly jam: Pose
  readonly share: number
}

/** Shares of the motion at which forces are looked at first. */
const LOOKS = 24
/** Halvings round each peak: a force that shoots up near a toggle is found though it lasts a ten-thousandth of the motion. */
const HALVINGS = 10
/** Neighbours this near to a peak, as a share of it: from there a parabola through the three finds its top. */
const FLAT = 1e-4
const VERTICES = 2

/** Sizes of all that has a peak, in one order: pins of every bar, tension and compression of every bar, guides, drivers, nearness to singular. */
export function sizesOf(model: Model, { pose, forces }: Pick<Sample, "pose" | "forces">): number[] {
  const { direct, inverse } = norms(model, pose)
  return [
    ...forces.pins.flatMap((members) => [...members.values()].map(([x, y]) => Math.hypot(x, y))),
    ...forces.pins.flatMap((members, body) => {
      const [from, to] = model.bodies[body] as readonly [number, number]
      const [x, y] = sub(pose.q, from, to)
      const length = Math.hypot(x, y)
      const pulls = [to, from].map((end, i) => {
        const [fx, fy] = members.get(end) as [number, number]
        return ((1 - 2 * i) * (fx * x + fy * y)) / length
      })
      return [Math.max(0, ...pulls), Math.max(0, ...pulls.map((pull) => -pull))]
    }),
    ...model.rows.flatMap((row, i) => (row.kind === "slider" ? [Math.abs(forces.lambda[i] as number)] : [])),
    ...forces.efforts.map(Math.abs),
    direct * inverse,
  ]
}

/** Samples of the whole motion, closer together round every peak; `known` poses lie at even shares of it. */
export function samplesOf(model: Model, burden: Burden, first: Pose, known: readonly Pose[]): Sample[] | Halt | Jam {
  const found: (Sample & { readonly sizes: number[] })[] = []
  const add = (share: number, pose: Pose): Jam | null => {
    const forces = forcesAt(model, burden, pose)
    if (forces === null) return { jam: pose, share }
    const sizes = sizesOf(model, { pose, forces })
    found.push({ share, pose, forces, sizes })
    return null
  }
  const steps = known.length - 1
  const listed = steps === 0 ? [first, known[0] as Pose] : known
  const stands = model.drivers.every((d) => d.start === d.end)
  for (const [k, pose] of (stands ? listed.slice(-1) : listed).entries()) {
    const jam = add(stands ? 1 : k / (listed.length - 1), pose)
    if (jam) return jam
  }
  if (stands) return found
  const between = (a: Sample, b: Sample): Halt | Jam | null => {
    const share = (a.share + b.share) / 2
    const pose = settle(model, a.pose, share)
    return isHalt(pose) ? pose : add(share, pose)
  }
  const sort = () => found.sort((a, b) => a.share - b.share)
  for (let gaps = listed.length - 1; gaps < LOOKS; gaps *= 2) {
    const before = [...found]
    for (let k = 1; k < before.length; k++) {
      const stop = between(before[k - 1] as Sample, before[k] as Sample)
      if (stop) return stop
    }
    sort()
  }
  const tops = () =>
    (found[0]?.sizes ?? []).map((_, k) => {
      let top = 0
      found.forEach(({ sizes }, i) => {
        if ((sizes[k] as number) > ((found[top] as (typeof found)[number]).sizes[k] as number)) top = i
      })
      return top
    })
  for (let round = 0; round < HALVINGS; round++) {
    const gaps = new Set<number>()
    for (const [k, top] of tops().entries()) {
      const size = found[top]?.sizes[k] as number
      for (const i of [top - 1, top]) {
        const other = found[i === top ? top + 1 : i]
        if (other !== undefined && size - (other.sizes[k] as number) > FLAT * size) gaps.add(i)
      }
    }
    if (gaps.size === 0) break
    const before = [...found]
    for (const i of gaps) {
      const stop = between(before[i] as Sample, before[i + 1] as Sample)
      if (stop) return stop
    }
    sort()
  }
  for (let round = 0; round < VERTICES; round++) {
    const places = new Map<number, Pose>()
    for (const [k, top] of tops().entries()) {
      const [a, b, c] = [found[top - 1], found[top], found[top + 1]]
      if (a === undefined || b === undefined || c === undefined) continue
      const [left, right] = [b.share - a.share, c.share - b.share]
      const [rise, fall] = [(b.sizes[k] as number) - (a.sizes[k] as number), (b.sizes[k] as number) - (c.sizes[k] as number)]
      const bend = rise * right + fall * left
      const off = bend > 0 ? (rise * right ** 2 - fall * left ** 2) / (2 * bend) : 0
      if (Math.abs(off) > 1e-3 * Math.min(left, right)) places.set(b.share + off, b.pose)
    }
    for (const [share, from] of places) {
      const pose = settle(model, from, share)
      const stop = isHalt(pose) ? pose : add(share, pose)
      if (stop) return stop
    }
    sort()
  }
  return found
}

/** The sample at which each size is largest, and that size. */
export function peaksOf(model: Model, samples: readonly Sample[]): { readonly size: number; readonly at: Sample }[] {
  const sizes = samples.map((sample) => sizesOf(model, sample))
  return (sizes[0] ?? []).map((_, k) => {
    let top = 0
    sizes.forEach((list, i) => {
      if ((list[k] as number) > ((sizes[top] as number[])[k] as number)) top = i
    })
    return { size: (sizes[top] as number[])[k] as number, at: samples[top] as Sample }
  })
}
