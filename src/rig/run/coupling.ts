// What two motions do to each other's inertia where one is mounted on the other and both may move at once.
import { emptyState } from "../mechanisms/mechanism.js"
import { type Stand, standsOf } from "./carrying.js"
import { coordinatesAt, type MotionModel, slopesAt, type Way } from "./motion-model.js"
import { QUICK_LOOKS } from "./quick.js"
import { firstStop, type Ride, tabledPoint, travelOf } from "./ride.js"
import { feedOf, rideOf, type Situation } from "./situation.js"
import { standingSo } from "./slowest.js"
import { type SolvedRide, solveRide } from "./solve-ride.js"

/** Share of the energy moved up to which two motions are taken one without the other; common practice, no source. */
export const COUPLING_SHARE = 0.05

/** Places of a travel that are looked at. */
const LOOKS = 40

/** How much two motions share, against the energy that one of them moves. */
export interface Coupling {
  readonly share: number
  /** The other motion. */
  readonly other: string
}

interface Pace {
  /** Highest rate of its drives, m/s or rad/s. */
  readonly rate: number
  /** Energy that it moves on the way that moves less, J. */
  readonly moved: number
}

/** Pace of a motion both ways; null where something stops it. */
function paceOf(at: Situation, index: number): Pace | null {
  const feed = feedOf(at, index)
  let [rate, moved] = [0, Number.POSITIVE_INFINITY]
  for (const way of [1, -1] as const satisfies readonly Way[]) {
    const one: Ride = rideOf(at, index, way, feed)
    if (firstStop(one)) return null
    const { totals, stop }: SolvedRide = solveRide(one, 0)
    if (stop) return null
    moved = Math.min(moved, Math.max(Math.abs(totals.work), totals.source - totals.others - totals.loads))
    for (let k = 0; k <= LOOKS; k++) rate = Math.max(rate, tabledPoint(one, travelOf(one, (one.motion.span * k) / LOOKS)).rate)
  }
  return { rate, moved }
}

/** Largest inertia of a motion's mechanisms at its drives: with what rides on them, or only that. */
function largestInertia(motion: MotionModel, bare: MotionModel | null): number {
  const state = emptyState()
  const inertiaAt = ({ parts }: MotionModel, travel: number) => {
    const [q, slopes] = [coordinatesAt(motion, travel), slopesAt(motion, travel)]
    return parts.reduce((sum, { mechanism, count }, i) => {
      Object.assign(state, emptyState())
      mechanism.at(q[i] as number, state)
      return sum + count * state.inertia * (slopes[i] as number) ** 2
    }, 0)
  }
  let most = 0
  for (let k = 0; k <= LOOKS; k++) {
    const travel = (motion.span * k) / LOOKS
    const inertia = inertiaAt(motion, travel) - (bare ? inertiaAt(bare, travel) : 0)
    // at a dead point a mechanism has no finite pace and none is needed
    if (Number.isFinite(inertia)) most = Math.max(most, inertia)
  }
  return most
}

/** A rig while its motions stand somewhere, and the paces found there. */
interface Stood {
  readonly at: Situation
  readonly paces: Map<number, Pace | null>
}

const known = new WeakMap<readonly MotionModel[], Map<string, Stood>>()

/** One rig standing somewhere is put together once, whichever of its motions is asked about. */
function stood(whole: Pick<Situation, "rig" | "motions">, stand: Stand): Stood {
  const list = known.get(whole.motions) ?? new Map<string, Stood>()
  known.set(whole.motions, list)
  const key = stand?.join(" ") ?? ""
  const found = list.get(key) ?? { at: standingSo(whole, stand, QUICK_LOOKS), paces: new Map<number, Pace | null>() }
  list.set(key, found)
  return found
}

function paceIn({ at, paces }: Stood, index: number): Pace | null {
  const found = paces.has(index) ? (paces.get(index) ?? null) : paceOf(at, index)
  paces.set(index, found)
  return found
}

/**
 * Energy of motion that is there only because two motions move at once, at most (Cauchy and Schwarz), against the energy that one
 * of them moves: T = T_a + 2·√(T_a·T_c), T_a what the carried masses have from being carried, T_c from their own motion.
 */
function couplingOf(one: Stood, bare: readonly MotionModel[], index: number): Coupling {
  const { rig, motions, together } = one.at
  const carriers = (i: number): readonly number[] => {
    const on = rig.motions.findIndex(({ name }) => name === rig.motions[i]?.on)
    return on < 0 ? [] : [on, ...carriers(on)]
  }
  return motions.reduce<Coupling>((worst, partner, k) => {
    const isCarrier = carriers(index).includes(k)
    // neither rides on the other, or they never move at the same time
    if (!isCarrier && !carriers(k).includes(index)) return worst
    if (!together.some((set) => set.includes(index) && set.includes(k))) return worst
    const [own, other] = [paceIn(one, index), paceIn(one, k)]
    if (!own || !other) return worst
    const [lower, upper] = isCarrier ? [k, index] : [index, k]
    const [carries, rides] = isCarrier ? [other, own] : [own, other]
    const carried = (largestInertia(motions[lower] as MotionModel, bare[lower] ?? null) * carries.rate ** 2) / 2
    const riding = (largestInertia(motions[upper] as MotionModel, null) * rides.rate ** 2) / 2
    const share = (carried + 2 * Math.sqrt(carried * riding)) / own.moved
    return share > worst.share ? { share, other: partner.name } : worst
  }, NONE)
}

const NONE: Coupling = { share: 0, other: "" }

/** The closest coupling of a motion, wherever all stand. */
export function mostCoupled(whole: Pick<Situation, "rig" | "motions">, index: number): Coupling {
  const { rig, motions } = whole
  if (!motions[index]?.tie) return NONE
  const bare = motions.map((motion) => motion.tie?.carrying.motions[motion.tie.index] ?? motion)
  return standsOf(rig)
    .map(({ stand }) => couplingOf(stood(whole, stand), bare, index))
    .reduce((a, b) => (b.share > a.share ? b : a))
}
