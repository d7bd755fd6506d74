import type { FourBarSynthesisInput } from "../../src/linkage/index.js"
import { solveLinear } from "../../src/numeric/index.js"

export interface Point {
  readonly x: number
  readonly y: number
}
export interface Task extends FourBarSynthesisInput {
  readonly poses: readonly { readonly x: number; readonly y: number; readonly angle: number }[]
  readonly fixedPivotRegion: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }
  readonly movingPivotRegion: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number }
  readonly step: number
  readonly linkLengths: { readonly low: number; readonly high: number }
  readonly transmissionLimit: number
}

export const turned = ({ x, y }: Point, angle: number): Point => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
})

/** Pins at one distance from a fixed pivot in all poses, from the distances' squares: linear in the pin once the first is taken off. */
export function pinsByDistances(task: Task, pivot: Point): Point[] {
  // |P + R·u − O|² = |w|² + 2·u·(Rᵀw) + |u|², w = P − O
  const rows = task.poses.map(({ x, y, angle }) => {
    const w = { x: x - pivot.x, y: y - pivot.y }
    const seen = turned(w, -angle)
    return [2 * seen.x, 2 * seen.y, w.x ** 2 + w.y ** 2] as const
  })
  const [first, ...others] = rows as [readonly [number, number, number], ...(readonly [number, number, number])[]]
  const a = others.map((row) => [row[0] - first[0], row[1] - first[1]] as const)
  const b = others.map((row) => first[2] - row[2])
  const { left, right, bottom, top } = task.movingPivotRegion
  const isIn = (p: Point) => p.x >= left && p.x <= right && p.y >= bottom && p.y <= top
  if (others.length === 2) {
    const pin = solveLinear(a, b)
    return pin ? [{ x: pin[0] as number, y: pin[1] as number }].filter(isIn) : []
  }
  const [[p, q], [r]] = [a[0] as readonly [number, number], b as [number]]
  const size = Math.hypot(p, q)
  // from the place nearest to the middle of the region on, a step at a time either way
  const centre = { x: (left + right) / 2, y: (bottom + top) / 2 }
  const off = (r - p * centre.x - q * centre.y) / size
  const foot = { x: centre.x + (off * p) / size, y: centre.y + (off * q) / size }
  return Array.from({ length: 201 }, (_, i) => ((i - 100) * task.step) / size)
    .map((s) => ({ x: foot.x - s * q, y: foot.y + s * p }))
    .filter(isIn)
}

/** Ways round that the input link may turn: 1 is counter-clockwise. */
const sensesOf = ({ turns = "either" }: Task): readonly (1 | -1)[] =>
  turns === "either" ? [1, -1] : turns === "counter-clockwise" ? [1] : [-1]

interface Link {
  readonly pivot: Point
  readonly pin: Point
  readonly length: number
  readonly places: readonly Point[]
}

/** Every link from a place on the grid whose pin and length are allowed. */
export function linksOf(task: Task): Link[] {
  const { fixedPivotRegion: f, step, linkLengths } = task
  const links: Link[] = []
  for (let x = f.left; x <= f.right + 1e-9; x += step)
    for (let y = f.bottom; y <= f.top + 1e-9; y += step)
      for (const pin of pinsByDistances(task, { x, y })) {
        const places = task.poses.map((pose) => {
          const p = turned(pin, pose.angle)
          return { x: pose.x + p.x, y: pose.y + p.y }
        })
        const length = Math.hypot((places[0] as Point).x - x, (places[0] as Point).y - y)
        if (length >= linkLengths.low && length <= linkLengths.high) links.push({ pivot: { x, y }, pin, length, places })
      }
  return links
}

/** Largest minimum transmission angle of any pair, refined between the steps; negative where none passes. */
export function bestTransmission(task: Task): number {
  const { low, high } = task.linkLengths
  const links = linksOf(task)
  let best = -1
  for (const drive of links)
    for (const follow of links) {
      const ground = Math.hypot(drive.pivot.x - follow.pivot.x, drive.pivot.y - follow.pivot.y)
      const coupler = Math.hypot(drive.pin.x - follow.pin.x, drive.pin.y - follow.pin.y)
      if (drive === follow || ground < low || ground > high || coupler < low || coupler > high) continue
      const atPoses = Math.min(...drive.places.map((a, i) => acute(a, follow.places[i] as Point, follow.pivot)))
      if (atPoses <= best) continue
      for (const sense of sensesOf(task)) best = Math.max(best, stepped(drive, follow, coupler, sense, true))
    }
  return best
}

/** Acute angle at a pin between the lines to two others. */
function acute(a: Point, b: Point, o: Point): number {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, b.x - o.x, b.y - o.y]
  return Math.atan2(Math.abs(ux * vy - uy * vx), Math.abs(ux * vx + uy * vy))
}

/**
 * The best pair by stepping the input link from pose to pose and carrying the output along by the nearest of two assemblies:
 * the value sought, or null where none passes.
 */
export function bruteForce(task: Task, smallest: boolean): { best: number; passed: number; near: number } | null {
  const { linkLengths, transmissionLimit } = task
  const links = linksOf(task)
  let [best, passed, near] = [smallest ? Number.POSITIVE_INFINITY : 0, 0, 0]
  const isAllowed = (length: number) => length >= linkLengths.low && length <= linkLengths.high
  for (const drive of links)
    for (const follow of links) {
      const ground = Math.hypot(drive.pivot.x - follow.pivot.x, drive.pivot.y - follow.pivot.y)
      const coupler = Math.hypot(drive.pin.x - follow.pin.x, drive.pin.y - follow.pin.y)
      if (drive === follow || !isAllowed(ground) || !isAllowed(coupler)) continue
      const least = Math.max(...sensesOf(task).map((sense) => stepped(drive, follow, coupler, sense)))
      if (Math.abs(least - transmissionLimit) < 2e-3) near++
      if (least < transmissionLimit) continue
      passed++
      const size = ground + coupler + drive.length + follow.length
      best = smallest ? Math.min(best, size) : Math.max(best, least)
    }
  return passed ? { best, passed, near } : null
}

/** Least transmission angle while the input is stepped one way round through the poses; −1 where it jams, misses a pose or their order. */
function stepped(drive: Link, follow: Link, coupler: number, sense: 1 | -1, refined = false): number {
  const angleOf = (p: Point, o: Point) => Math.atan2(p.y - o.y, p.x - o.x)
  const start = angleOf(drive.places[0] as Point, drive.pivot)
  const turns = drive.places.map((p) => (((sense * (angleOf(p, drive.pivot) - start)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI))
  turns[0] = 0
  for (let i = 1; i < turns.length; i++) if ((turns[i] as number) <= (turns[i - 1] as number)) return -1
  /** The output pin with the input turned so far: the assembly nearest to where it was. */
  const next = (turn: number, was: Point): { a: Point; b: Point } | null => {
    const angle = start + sense * turn
    const a = { x: drive.pivot.x + drive.length * Math.cos(angle), y: drive.pivot.y + drive.length * Math.sin(angle) }
    const reach = Math.hypot(follow.pivot.x - a.x, follow.pivot.y - a.y)
    // law of cosines at the input pin
    const cosine = (coupler ** 2 + reach ** 2 - follow.length ** 2) / (2 * coupler * reach)
    if (!(Math.abs(cosine) < 1)) return null
    const line = angleOf(follow.pivot, a)
    const [one, other] = [Math.acos(cosine), -Math.acos(cosine)].map((t) => ({
      x: a.x + coupler * Math.cos(line + t),
      y: a.y + coupler * Math.sin(line + t),
    })) as [Point, Point]
    return { a, b: Math.hypot(one.x - was.x, one.y - was.y) < Math.hypot(other.x - was.x, other.y - was.y) ? one : other }
  }
  const least = { value: Number.POSITIVE_INFINITY, turn: 0, b: follow.places[0] as Point }
  let b = least.b
  const whole = turns.at(-1) as number
  const size = whole / Math.max(8, Math.ceil(whole / 0.02))
  for (let i = 1; i < turns.length; i++) {
    const [from, to] = [turns[i - 1] as number, turns[i] as number]
    const steps = Math.max(4, Math.ceil((to - from) / size))
    for (let k = i === 1 ? 0 : 1; k <= steps; k++) {
      const turn = from + ((to - from) * k) / steps
      const pose = next(turn, b)
      if (!pose) return -1
      b = pose.b
      const value = acute(pose.a, b, follow.pivot)
      if (value < least.value) Object.assign(least, { value, turn, b })
    }
    const wanted = follow.places[i] as Point
    if (Math.hypot(b.x - wanted.x, b.y - wanted.y) > 1e-6) return -1
  }
  if (!refined) return least.value
  const value = (turn: number) => {
    const pose = next(turn, least.b)
    return pose ? acute(pose.a, pose.b, follow.pivot) : -1
  }
  let [low, high] = [Math.max(0, least.turn - size), Math.min(whole, least.turn + size)]
  for (let i = 0; i < 60; i++) {
    const [p, q] = [low + (high - low) / 3, high - (high - low) / 3]
    if (value(p) < value(q)) high = q
    else low = p
  }
  return Math.min(least.value, value((low + high) / 2))
}
