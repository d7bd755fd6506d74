// Motions mounted on motions: where the carried ones sit while the others stand, and what they weigh on what carries them.
import type { Mechanism, MechanismPose, Triple } from "../mechanisms/mechanism.js"
import { type Frame, framedBy, type Masses, type Moving, massesIn, placedBy, seenFrom, turnedBy } from "../mechanisms/moving.js"
import { pointSpread, spreadAlong, spreadSum } from "../mechanisms/spread.js"
import { cross, dot, plus, scaled, size } from "../mechanisms/triple.js"
import type { RigSi } from "../whole/faults.js"
import { type Carrying, coordinatesAt, type MotionModel, type MovedPart, type Seat, type Tie } from "./motion-parts.js"

/** Where each motion of a rig stands, as a share of its drive's travel; null: at its start. */
export type Stand = readonly number[] | null

/** Puts motions on those that carry them. */
export function carried(rig: RigSi, motions: readonly MotionModel[]): readonly MotionModel[] {
  if (rig.motions.every(({ on }) => on === null)) return motions
  const seats = motions.map(({ parts }, m) => parts.map((part) => seatOf(rig, motions, m, part)))
  const riders = motions.map(({ parts }, m) =>
    parts.map((carrier, p) =>
      seats.flatMap((list, motion) =>
        list.flatMap((seat, part) =>
          seat?.motion === m && seat.part === p ? [{ motion, part, each: (motions[motion]?.parts[part]?.count ?? 0) / carrier.count }] : [],
        ),
      ),
    ),
  )
  const carrying: Carrying = { motions, seats, riders }
  return motions.map((motion, index) => {
    const tied = rig.motions[index]?.on !== null || riders[index]?.some((list) => list.length > 0)
    if (!tied) return motion
    const tie: Tie = { carrying, index }
    return { ...motion, tie, parts: partsAt(tie, null) }
  })
}

/** The part that carries one: on its own side of the body where what carries it is mirrored. */
function seatOf(rig: RigSi, motions: readonly MotionModel[], m: number, part: MovedPart): Seat | null {
  const { on, onMechanism } = rig.motions[m] as RigSi["motions"][number]
  if (on === null) return null
  const motion = rig.motions.findIndex(({ name }) => name === on)
  const parts = motions[motion]?.parts ?? []
  const name = onMechanism ?? parts[0]?.name
  const same = parts.findIndex((one) => one.name === name && one.mirrored === part.mirrored)
  return { motion, part: same >= 0 ? same : parts.findIndex((one) => one.name === name) }
}

const known = new WeakMap<Carrying, WeakMap<object, Map<string, readonly MovedPart[]>>>()

/** Parts of a motion while all stand somewhere, each with what it carries; `laden` false: as if it carried nothing. */
export function partsAt({ carrying, index }: Tie, stand: Stand, laden = true): readonly MovedPart[] {
  const stands = known.get(carrying) ?? new WeakMap<object, Map<string, readonly MovedPart[]>>()
  known.set(carrying, stands)
  const lists = stands.get(stand ?? carrying) ?? new Map<string, readonly MovedPart[]>()
  stands.set(stand ?? carrying, lists)
  const key = `${index} ${laden}`
  const found = lists.get(key)
  if (found) return found
  const parts = (carrying.motions[index] as MotionModel).parts.map((part, p): MovedPart => {
    const seat = { motion: index, part: p }
    const frame = frameAt(carrying, seat, stand)
    const load = laden ? loadOn(carrying, seat, stand) : null
    return { ...part, frame, mechanism: load ? ladenWith(part.mechanism, load) : part.mechanism }
  })
  lists.set(key, parts)
  return parts
}

/** Parts of a motion without what they carry, all motions at the same share of their travel. */
export const ownParts = ({ tie, parts }: MotionModel, share: number): readonly MovedPart[] =>
  tie
    ? partsAt(
        tie,
        tie.carrying.motions.map(() => share),
        false,
      )
    : parts

const partOf = ({ motions }: Carrying, { motion, part }: Seat) => motions[motion]?.parts[part] as MovedPart

/** Coordinate of a part where its motion stands; no farther than it can be posed. */
function coordinateOf(carrying: Carrying, seat: Seat, stand: Stand): number {
  const motion = carrying.motions[seat.motion] as MotionModel
  const { low, high } = partOf(carrying, seat).mechanism
  const q = coordinatesAt(motion, motion.span * (stand?.[seat.motion] ?? 0))[seat.part] as number
  return Math.min(high, Math.max(low, q))
}

const movingAt = (carrying: Carrying, seat: Seat, stand: Stand): Moving =>
  partOf(carrying, seat).mechanism.carries?.(coordinateOf(carrying, seat, stand)) as Moving

/** Frame of a part in the wearer's axes. */
function frameAt(carrying: Carrying, seat: Seat, stand: Stand): Frame {
  const carrier = carrying.seats[seat.motion]?.[seat.part]
  const { frame } = partOf(carrying, seat)
  if (!carrier) return frame
  const own = seenFrom(partOf(carrying, carrier).frame, frame)
  return framedBy(frameAt(carrying, carrier, stand), framedBy(movingAt(carrying, carrier, stand).frame, own))
}

/** What rides on a part, in its own frame while it shows 0. */
export interface Load extends Masses {
  readonly tips: readonly Triple[]
  /** Each rider's mass and where its centre is. */
  readonly points: readonly { readonly mass: number; readonly at: Triple }[]
}

/** What one part and all that rides on it weigh, in its own frame. */
function massesOf(carrying: Carrying, seat: Seat, stand: Stand): Masses & { readonly tips: readonly Triple[] } {
  const q = coordinateOf(carrying, seat, stand)
  const { mechanism } = partOf(carrying, seat)
  const { mass, centre, spread, tip } = mechanism.pose(q)
  const own: Masses = { mass, first: scaled(centre, mass), spread: spread ?? pointSpread(mass, centre) }
  const load = loadOn(carrying, seat, stand)
  if (!load) return { ...own, tips: [tip] }
  const { frame } = movingAt(carrying, seat, stand)
  return { ...together(own, massesIn(frame, load)), tips: [tip, ...load.tips.map((t) => placedBy(frame, t))] }
}

const together = (a: Masses, b: Masses, times = 1): Masses => ({
  mass: a.mass + times * b.mass,
  first: plus(a.first, b.first, times),
  spread: spreadSum(a.spread, b.spread, times),
})

/** What rides on a part while all stand somewhere; null where nothing does. */
export function loadOn(carrying: Carrying, seat: Seat, stand: Stand): Load | null {
  const riders = carrying.riders[seat.motion]?.[seat.part] ?? []
  if (riders.length === 0) return null
  let all: Masses = { mass: 0, first: [0, 0, 0], spread: pointSpread(0, [0, 0, 0]) }
  const [tips, points]: [Triple[], Load["points"][number][]] = [[], []]
  for (const rider of riders) {
    const own = seenFrom(partOf(carrying, seat).frame, partOf(carrying, rider).frame)
    const { tips: ends, ...masses } = massesOf(carrying, rider, stand)
    const placed = massesIn(own, masses)
    all = together(all, placed, rider.each)
    points.push({ mass: placed.mass * rider.each, at: scaled(placed.first, 1 / placed.mass) })
    tips.push(...ends.map((t) => placedBy(own, t)))
  }
  return { ...all, tips, points }
}

/** Masses that ride on a motion's first laden part, each as far from its hinge as it comes. */
export function ridingMasses({ tie }: MotionModel): readonly { readonly mass: number; readonly radius: number }[] {
  if (!tie) return []
  const { carrying, index } = tie
  const part = carrying.riders[index]?.findIndex((list) => list.length > 0) ?? -1
  if (part < 0) return []
  const seat = { motion: index, part }
  const { mechanism, start } = partOf(carrying, seat)
  const hinge = mechanism.carries?.(start).frame
  const [first, last] = [0, 1].map(
    (share) =>
      loadOn(
        carrying,
        seat,
        carrying.motions.map(() => share),
      ) as Load,
  ) as [Load, Load]
  const from = mechanism.pose(start).pins[0]?.at ?? [0, 0, 0]
  const radius = ({ points }: Load, i: number) => (hinge ? size(plus(placedBy(hinge, points[i]?.at ?? [0, 0, 0]), from, -1)) : 0)
  return first.points.map(({ mass }, i) => ({ mass, radius: Math.max(radius(first, i), radius(last, i)) }))
}

/** A mechanism with masses on the part that carries them: they stand still on it. */
function ladenWith(mechanism: Mechanism, load: Load): Mechanism {
  const { carries } = mechanism
  if (!carries) throw new RangeError("A mechanism that carries nothing: its faults are found before.")
  const moved = ({ frame }: Moving) => massesIn({ ...frame, at: [0, 0, 0] }, load)
  return {
    ...mechanism,
    at(q, state) {
      mechanism.at(q, state)
      const moving = carries(q)
      const { turn, rate, turnBend, rateBend } = moving
      const { mass, first, spread } = moved(moving)
      const speed = cross(turn, first)
      const [x, y, z] = plus(speed, rate, mass)
      state.massX += x
      state.massY += y
      state.massZ += z
      const square = spread.xx + spread.yy + spread.zz
      state.inertia += mass * dot(rate, rate) + 2 * dot(rate, speed) + square * dot(turn, turn) - dot(turn, spreadAlong(spread, turn))
      state.inertiaSlope +=
        2 *
        (mass * dot(rate, rateBend) +
          dot(rateBend, speed) +
          dot(rate, plus(cross(turnBend, first), cross(turn, speed))) +
          square * dot(turn, turnBend) -
          dot(turn, spreadAlong(spread, turnBend)))
    },
    pose(q) {
      const bare = mechanism.pose(q)
      const { frame, turn, rate } = carries(q)
      const all = massesIn(frame, load)
      const mass = bare.mass + all.mass
      const from = bare.pins[0]?.at ?? bare.centre
      const far = ({ tip }: Pick<MechanismPose, "tip">) => size(plus(tip, from, -1))
      const ends = load.tips.map((t) => ({ tip: placedBy(frame, t), tipRate: plus(rate, cross(turn, turnedBy(frame, t))) }))
      const { tip, tipRate } = ends.reduce<Pick<MechanismPose, "tip" | "tipRate">>((a, b) => (far(b) > far(a) ? b : a), bare)
      return {
        ...bare,
        tip,
        tipRate,
        mass,
        centre: scaled(plus(scaled(bare.centre, bare.mass), all.first), 1 / mass),
        spread: spreadSum(bare.spread ?? pointSpread(bare.mass, bare.centre), all.spread),
      }
    },
    // what it carries hangs on the part's own joints; an effort that holds it up comes with the effort
    reactions(q, effort, down) {
      const { pins } = carries(q)
      return mechanism
        .reactions(q, effort, down)
        .map((one) => (pins.includes(one.name) ? { ...one, force: plus(one.force, down, load.mass) } : one))
    },
  }
}

/** Where motions stand that carry others or are carried, and how that is told. */
export interface NamedStand {
  readonly name: string
  readonly stand: Stand
}

const ends = ["start", "end"] as const

/** Motions standing at each end, told of those that count. */
export function standName({ motions }: RigSi, stand: Stand, counts: (index: number) => boolean): string {
  const told = ends.flatMap((end, share) => {
    const names = motions.flatMap(({ name }, i) => (counts(i) && (stand?.[i] ?? 0) === share ? [name] : []))
    const [last, ...before] = names.reverse()
    const list = before.length ? `${before.reverse().join(", ")} and ${last}` : last
    return last ? [`${list} at the ${end} of ${before.length ? "their" : "its"} travel`] : []
  })
  return told.join(", ")
}

/** Each motion's outermost carrier. */
export function rootsOf({ motions }: RigSi): readonly number[] {
  const rootOf = (i: number): number => {
    const on = motions[i]?.on ?? null
    return on === null ? i : rootOf(motions.findIndex(({ name }) => name === on))
  }
  return motions.map((_, i) => rootOf(i))
}

/**
 * Ends of their travel at which carrying and carried motions may stand: each motion meets every combination of the others' that
 * it hangs together with. Its own place does not count for itself, so that the outermost one's is left to follow from the rest.
 */
export function standsOf(rig: RigSi): readonly NamedStand[] {
  const { motions } = rig
  const on = motions.flatMap((motion, i) => (motion.on === null ? [] : [i]))
  if (on.length === 0) return [{ name: "", stand: null }]
  const roots = rootsOf(rig)
  const tied = (i: number) => on.some((k) => roots[k] === roots[i])
  return Array.from({ length: 2 ** on.length }, (_, number) => {
    const stand = motions.map(() => 0)
    on.forEach((i, k) => {
      const end = (number >> k) & 1
      stand[i] = end
      const root = roots[i] as number
      stand[root] = (stand[root] as number) ^ end
    })
    return { name: standName(rig, stand, tied), stand }
  })
}
