import type { MechanismSi } from "./data.js"

interface Line {
  readonly from: number
  readonly to: number
}
/** One constraint equation; every one is scaled to metres. */
export type Row =
  | (Line & { readonly kind: "bar"; readonly length: number; readonly body: number })
  | (Line & {
      readonly kind: "carried"
      readonly point: number
      readonly body: number
      readonly axis: 0 | 1
      readonly p: number
      readonly q: number
    })
  | (Line & { readonly kind: "slider"; readonly point: number; readonly body: number; readonly length: number; readonly offset: number })
  | (Line & {
      readonly kind: "crank"
      readonly driver: number
      readonly body: number
      readonly refBody: number
      readonly refFrom: number
      readonly refTo: number
      readonly scale: number
    })
  | (Line & { readonly kind: "actuator"; readonly driver: number; readonly scale: number })

/** A driver as compiled: its value in the sketch, at start and end, and its rates. */
export interface Driver {
  readonly name: string
  readonly kind: "crank" | "actuator"
  readonly from: number
  readonly to: number
  readonly sketch: number
  readonly start: number
  readonly end: number
  readonly speed: number
  readonly acceleration: number
}

/** A mechanism ready to be solved: coordinates of all points (x, y in turn) and constraint rows. */
export interface Model {
  readonly names: readonly string[]
  readonly sketch: Float64Array
  /** Column of a point's x in the Jacobian; −1 for a pivot. */
  readonly columns: Int32Array
  readonly unknowns: number
  readonly rows: readonly Row[]
  readonly drivers: readonly Driver[]
  /** Member points of each bar's body: both ends, then what it carries. */
  readonly bodies: readonly (readonly number[])[]
  /** Forces on all points, N, torques as couples not included. */
  readonly forces: Float64Array
  readonly torques: readonly { readonly from: number; readonly to: number; readonly body: number; readonly torque: number }[]
  /** Sum of all bar lengths, m. */
  readonly size: number
  /** Constraint error that is no more than rounding, m. */
  readonly rounding: number
}

/** A bar's or driver's name, from its ends where it has none. */
export const barName = (bar: { readonly name: string | null; readonly from: string; readonly to: string }) =>
  bar.name ?? `${bar.from}-${bar.to}`

/** Body that holds two points, −1 for the ground, null where none does. */
export function bodyOf(bodies: readonly (readonly number[])[], pivots: number, a: number, b: number): number | null {
  if (a < pivots && b < pivots) return -1
  const found = bodies.findIndex((members) => members.includes(a) && members.includes(b))
  return found < 0 ? null : found
}

/** Member points of each bar: its ends, then what it carries. */
export function bodiesOf(si: MechanismSi, at: ReadonlyMap<string, number>): number[][] {
  const bodies = si.bars.map((bar) => [at.get(bar.from) as number, at.get(bar.to) as number])
  for (const one of si.carried) {
    const [from, to] = [at.get(one.from) as number, at.get(one.to) as number]
    bodies.find((b) => b.slice(0, 2).includes(from) && b.slice(0, 2).includes(to))?.push(at.get(one.point) as number)
  }
  return bodies
}

/** Builds the constraint rows of a mechanism that has no faults. */
export function compile(si: MechanismSi): Model {
  const all = [...si.pivots, ...si.points]
  const pivots = si.pivots.length
  const at = new Map(all.map((p, i) => [p.name, i]))
  const index = (name: string) => at.get(name) as number
  const sketch = Float64Array.from(all.flatMap((p) => [p.x, p.y]))
  const vector = (from: number, to: number) =>
    [(sketch[2 * to] as number) - (sketch[2 * from] as number), (sketch[2 * to + 1] as number) - (sketch[2 * from + 1] as number)] as const
  const distance = (from: number, to: number) => Math.hypot(...vector(from, to))
  const bodies = bodiesOf(si, at)
  const bodyFor = (a: number, b: number) => bodyOf(bodies, pivots, a, b) as number
  const rows: Row[] = []
  // a given length counts for whatever is measured along that bar
  const lengths = si.bars.map((bar) => bar.length ?? distance(index(bar.from), index(bar.to)))
  si.bars.forEach((bar, body) => {
    rows.push({ kind: "bar", from: index(bar.from), to: index(bar.to), length: lengths[body] as number, body })
  })
  const place = new Map<string, readonly [number, number]>()
  for (const one of si.carried) {
    const [point, from, to] = [index(one.point), index(one.from), index(one.to)]
    const body = bodies.findIndex((b) => b.slice(0, 2).includes(from) && b.slice(0, 2).includes(to))
    const length = lengths[body] as number
    const [ux, uy] = vector(from, to)
    const [px, py] = vector(from, point)
    const u = Math.hypot(ux, uy)
    const along = one.along ?? (ux * px + uy * py) / u
    const across = one.across ?? (ux * py - uy * px) / u
    const [p, q] = [along / length, across / length]
    rows.push({ kind: "carried", from, to, point, body, axis: 0, p, q }, { kind: "carried", from, to, point, body, axis: 1, p, q })
    // its place in the body's own frame (from, to as the bar has them)
    place.set(`${body} ${point}`, bodies[body]?.[0] === from ? [along, across] : [length - along, -across])
  }
  const inBody = (body: number, point: number): readonly [number, number] => {
    if (body < 0) return [sketch[2 * point] as number, sketch[2 * point + 1] as number]
    const members = bodies[body] as readonly number[]
    return point === members[0]
      ? [0, 0]
      : point === members[1]
        ? [lengths[body] as number, 0]
        : (place.get(`${body} ${point}`) as readonly [number, number])
  }
  const lineLength = (body: number, from: number, to: number) => {
    const [a, b] = [inBody(body, from), inBody(body, to)]
    return Math.hypot(b[0] - a[0], b[1] - a[1])
  }
  for (const one of si.sliders) {
    const [point, from, to] = [index(one.point), index(one.from), index(one.to)]
    const [ux, uy] = vector(from, to)
    const [px, py] = vector(from, point)
    const body = bodyFor(from, to)
    rows.push({
      kind: "slider",
      from,
      to,
      point,
      body,
      length: lineLength(body, from, to),
      offset: one.offset ?? (ux * py - uy * px) / Math.hypot(ux, uy),
    })
  }
  const drivers: Driver[] = []
  const size = lengths.reduce((sum, l) => sum + l, 0)
  for (const one of si.cranks) {
    const [from, to] = [index(one.from), index(one.to)]
    const refFrom = one.referenceFrom === null ? -1 : index(one.referenceFrom)
    const refTo = one.referenceTo === null ? -1 : index(one.referenceTo)
    const [vx, vy] = vector(from, to)
    const [ux, uy] = refFrom < 0 ? [1, 0] : vector(refFrom, refTo)
    const sketched = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy)
    const start = one.start ?? sketched
    rows.push({
      kind: "crank",
      driver: drivers.length,
      from,
      to,
      refFrom,
      refTo,
      body: bodyFor(from, to),
      refBody: refFrom < 0 ? -1 : bodyFor(refFrom, refTo),
      scale: Math.hypot(ux, uy),
    })
    // the sketch is brought to the start the short way round
    const sketchAngle = sketched + 2 * Math.PI * Math.round((start - sketched) / (2 * Math.PI))
    drivers.push({
      name: barName(one),
      kind: "crank",
      from,
      to,
      sketch: sketchAngle,
      start,
      end: one.end ?? start,
      speed: one.speed,
      acceleration: one.acceleration,
    })
  }
  for (const one of si.actuators) {
    const [from, to] = [index(one.from), index(one.to)]
    const sketched = distance(from, to)
    const start = one.start ?? sketched
    rows.push({ kind: "actuator", driver: drivers.length, from, to, scale: sketched })
    drivers.push({
      name: barName(one),
      kind: "actuator",
      from,
      to,
      sketch: sketched,
      start,
      end: one.end ?? start,
      speed: one.speed,
      acceleration: one.acceleration,
    })
  }
  const forces = new Float64Array(sketch.length)
  for (const load of si.loads) {
    const i = 2 * index(load.point)
    forces[i] = (forces[i] as number) + load.forceX
    forces[i + 1] = (forces[i + 1] as number) + load.forceY
  }
  return {
    names: all.map((p) => p.name),
    sketch,
    columns: Int32Array.from(all.map((_, i) => (i < pivots ? -1 : 2 * (i - pivots)))),
    unknowns: 2 * si.points.length,
    rows,
    drivers,
    bodies,
    forces,
    torques: si.torques.map((t) => ({ from: index(t.from), to: index(t.to), body: bodyFor(index(t.from), index(t.to)), torque: t.torque })),
    size,
    rounding: 1e-13 * size + 1e-15 * sketch.reduce((most, v) => Math.max(most, Math.abs(v)), 0),
  }
}
