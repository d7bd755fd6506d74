import { type Circuit, circuitOf, supplyChain } from "../../rig/power/circuit.js"
import { armsWith, familySizes, mechanicalParts, type SearchPlan, suppliedRig } from "./goals.js"
import {
  boundTime,
  budgetRefusal,
  currentRefusal,
  dayRefusal,
  mechanicalRefusal,
  type Reason,
  type Refusal,
  raiseOrRefusal,
  reasonFamily,
  type Supply,
  suppliesOf,
  supplyRefusal,
  type Wire,
  wireRefusal,
  wiresOf,
} from "./limits.js"
import { type Mechanics, mechanicsOf } from "./profile.js"

/** The combination that misses a limit by the smallest amount. */
export interface Miss {
  readonly got: number
  readonly limit: number
  readonly mechanical: number
  readonly supply: number
  readonly wire: number
}

/** What a reason ruled out. */
export interface Tally {
  combinations: number
  /** Members of the reason's family it touched. */
  members: number[]
  closest: Miss | null
}

/** A combination found, by the numbers of its parts. */
export interface Found {
  readonly cost: number
  readonly mass: number
  /** Raise time in whole steps: what is compared. */
  readonly step: number
  readonly raiseTime: number
  readonly mechanical: number
  readonly supply: number
  readonly wire: number
}

/** A share of a search that can be worked off anywhere: every `stride`-th mechanical family from `first` on. */
export interface SearchTask {
  readonly plan: SearchPlan
  readonly first: number
  readonly stride: number
  /** What was already found. */
  readonly front: readonly Found[]
}

/** What came of a task. */
export interface SearchPart {
  readonly front: readonly Found[]
  readonly considered: number
  /** Combinations whose raise time was calculated in full. */
  readonly evaluated: number
  /** Combinations left out because a bound proves them dominated. */
  readonly pruned: number
  readonly rejected: Readonly<Partial<Record<Reason, Tally>>>
}

/** How far a running task is. */
export interface ScanState {
  considered: number
  evaluated: number
  found: number
}

// prices and masses are sums: rounded, so that the order of adding cannot tell equal ones apart
const roundPrice = (price: number) => Math.round(price * 1e6) / 1e6
const roundMass = (mass: number) => Math.round(mass * 1e9) / 1e9

/** Whether a combination of at least these figures is dominated: no better in any and worse in one. */
export function isDominated(front: readonly Found[], cost: number, mass: number, step: number): boolean {
  for (const one of front)
    if (one.cost <= cost && one.mass <= mass && one.step <= step && (one.cost < cost || one.mass < mass || one.step < step)) return true
  return false
}

/** Adds a combination that nothing in the front dominates, and takes out what it dominates; equals stay together. */
export function addFound(front: Found[], found: Found): void {
  if (isDominated(front, found.cost, found.mass, found.step)) return
  const kept = front.filter((one) => !isDominated([found], one.cost, one.mass, one.step))
  front.length = 0
  front.push(...kept, found)
}

/** Whether a miss is nearer to its limit than the nearest so far. */
export function isNearer({ got, limit }: Pick<Miss, "got" | "limit">, than: Miss | null): boolean {
  const off = (a: number, b: number) => Math.abs(a - b) / Math.abs(b)
  if (!Number.isFinite(got) || !Number.isFinite(limit) || limit === 0) return false
  return than === null || off(got, limit) < off(than.got, than.limit)
}

/** Counts what is ruled out, and by what. */
class Rejections {
  readonly tallies: Partial<Record<Reason, Tally>> = {}
  readonly #touched: Partial<Record<Reason, Set<number>>> = {}

  add({ reason, got, limit }: Refusal, combinations: number, place: Pick<Miss, "mechanical" | "supply" | "wire">): void {
    this.tallies[reason] ??= { combinations: 0, members: [], closest: null }
    const tally = this.tallies[reason]
    tally.combinations += combinations
    this.#touched[reason] ??= new Set()
    const family = reasonFamily[reason]
    if (family !== "budget") this.#touched[reason].add(place[family])
    if (isNearer({ got, limit }, tally.closest)) tally.closest = { got, limit, ...place }
  }

  closed(): Partial<Record<Reason, Tally>> {
    for (const [reason, tally] of Object.entries(this.tallies) as [Reason, Tally][])
      tally.members = [...(this.#touched[reason] ?? [])].sort((a, b) => a - b)
    return this.tallies
  }
}

/** Pairs of mechanics and supply looked at between two yields; a wire calculated in full counts as some of them. */
const BREATH = 256
const FULL = 16

/** Works off a task in small steps; each yield is a chance to breathe, to report or to stop. */
export function* scan(task: SearchTask): Generator<ScanState, SearchPart> {
  const { plan, first, stride } = task
  const { catalogue, goals, rig } = plan
  const sizes = familySizes(plan)
  const supplies = suppliesOf(plan, sizes.supply)
  const wires = wiresOf(plan)
  const leastWire = { cost: Math.min(...wires.map((w) => w.cost)), mass: Math.min(...wires.map((w) => w.mass)) }
  const circuits = new Map<number, Circuit>()
  const circuitAt = (supply: Supply, wire: Wire): Circuit => {
    const key = supply.index * wires.length + wire.index
    const known = circuits.get(key)
    if (known) return known
    const made = circuitOf(supplyChain(suppliedRig(plan, supply.parts, catalogue.wires[wire.index] as SearchPlan["catalogue"]["wires"][0])))
    circuits.set(key, made)
    return made
  }
  const stepOf = (seconds: number) => Math.round(seconds / goals.timeStep)
  const front = [...task.front]
  const rejections = new Rejections()
  const state: ScanState = { considered: 0, evaluated: 0, found: front.length }
  let pruned = 0

  for (let mechanical = first; mechanical < sizes.mechanical; mechanical += stride) {
    const chosen = mechanicalParts(plan, mechanical)
    const { actuator, placement, spring } = chosen
    const mechanics = mechanicsOf(armsWith(plan, chosen))
    const unfit = mechanicalRefusal(plan, chosen, mechanics)
    if (unfit) {
      const combinations = sizes.supply * sizes.wire
      rejections.add(unfit, combinations, { mechanical, supply: -1, wire: -1 })
      state.considered += combinations
      yield state
      continue
    }
    const { raise } = mechanics as Mechanics
    const count = rig.hinged?.count ?? 1
    const ownCost = count * (actuator.price + placement.price + (spring?.price ?? 0))
    const ownMass = count * (actuator.mass + placement.mass + (spring?.mass ?? 0))
    let since = 0
    for (const supply of supplies) {
      const [cost, mass] = [ownCost + supply.cost, ownMass + supply.mass]
      const [leastCost, leastMass] = [roundPrice(cost + leastWire.cost), roundMass(mass + leastWire.mass)]
      state.considered += wires.length
      const refused =
        supplyRefusal(plan, supply, mechanics as Mechanics, actuator.ratedVoltage) ?? budgetRefusal(plan, leastCost, leastMass)
      const least = refused ? 0 : stepOf(boundTime(raise, supply))
      if (refused) rejections.add(refused, wires.length, { mechanical, supply: supply.index, wire: -1 })
      else if (isDominated(front, leastCost, leastMass, least)) pruned += wires.length
      else
        for (const wire of wires) {
          since += FULL
          const place = { mechanical, supply: supply.index, wire: wire.index }
          const [total, whole] = [roundPrice(cost + wire.cost), roundMass(mass + wire.mass)]
          const known =
            wireRefusal(plan, wire) ?? budgetRefusal(plan, total, whole) ?? currentRefusal(plan, supply, wire, mechanics as Mechanics)
          if (known) {
            rejections.add(known, 1, place)
            continue
          }
          if (isDominated(front, total, whole, least)) {
            pruned++
            continue
          }
          state.evaluated++
          const circuit = circuitAt(supply, wire)
          const raiseTime = raiseOrRefusal(plan, supply, circuit, raise)
          if (typeof raiseTime !== "number") {
            rejections.add(raiseTime, 1, place)
            continue
          }
          const step = stepOf(raiseTime)
          // dominated whatever else may speak against it
          if (isDominated(front, total, whole, step)) continue
          const late = dayRefusal(plan, supply, wire, circuit, mechanics as Mechanics, raiseTime)
          if (late) rejections.add(late, 1, place)
          else addFound(front, { cost: total, mass: whole, step, raiseTime, ...place })
          state.found = front.length
        }
      if (++since >= BREATH) {
        since = 0
        yield state
      }
    }
    yield state
  }
  return { front, considered: state.considered, evaluated: state.evaluated, pruned, rejected: rejections.closed() }
}
