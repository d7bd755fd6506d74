// A network laid out: what stays the same while its sources and loads change.
import { type Elimination, eliminationOf, slotOf } from "./elimination.js"
import { type Forest, forestOf } from "./forest.js"
import { isDemand, type TwoPole } from "./types.js"

/** Resistance up to which a loop counts as having none, Ω, and what an ideal contact counts as in the sums of conductances. */
const NONE = 1e-15
const IDEAL = 1e-20

/** Two-poles of one sort: their numbers, nodes, rows (−1 for a fixed node) and the slots of their ties. */
export interface Sort {
  readonly of: Int32Array
  readonly from: Int32Array
  readonly to: Int32Array
  readonly rowFrom: Int32Array
  readonly rowTo: Int32Array
  /** Place among the ties; −1 − row where the other end is fixed; `NOWHERE` for none. */
  readonly slot: Int32Array
}

/** Slot of a two-pole that ties nothing. */
export const NOWHERE = 0x7fffffff

/**
 * A network laid out. `emf`, `fixed` and `power` may be set anew before it is settled; `fed` says which loads take part,
 * `amps` and `volts` hold the state found.
 */
export interface Network {
  readonly forest: Forest
  readonly elimination: Elimination
  readonly links: Sort
  readonly currents: Sort
  readonly powers: Sort
  readonly resistance: Float64Array
  readonly emf: Float64Array
  /** Fixed currents, A, and powers, W, of the loads. */
  readonly fixed: Float64Array
  readonly power: Float64Array
  readonly fed: Uint8Array
  readonly firmTies: Float64Array
  readonly firmGround: Float64Array
  readonly ties: Float64Array
  readonly ground: Float64Array
  readonly amps: Float64Array
  readonly volts: Float64Array
  /** Scratch: current from each node to its parent, and steps of the rows. */
  readonly flow: Float64Array
  readonly step: Float64Array
}

/** Lays a network out, or names the link whose loop has no resistance. */
export function layOut(nodes: number, branches: readonly TwoPole[], reference: number): Network | { readonly shorted: number } {
  const forest = forestOf(nodes, branches, reference)
  // the links come by their resistance: where a loop has none, its link has none either
  const [least] = forest.links
  if (least !== undefined && !((branches[least] as TwoPole).resistance > NONE)) return { shorted: least }
  const { root, up } = forest
  const count = branches.length
  const pairs = new Int32Array(2 * count)
  const [resistance, emf, fixed, power, fed] = [
    new Float64Array(count),
    new Float64Array(count),
    new Float64Array(count),
    new Float64Array(count),
    new Uint8Array(count),
  ]
  const [currents, powers]: [number[], number[]] = [[], []]
  for (let i = 0; i < count; i++) {
    const b = branches[i] as TwoPole
    resistance[i] = b.resistance
    emf[i] = b.emf
    const inside = root[b.from] === root[b.to]
    fed[i] = inside || !isDemand(b) ? 1 : 0
    if (b.current !== null) {
      fixed[i] = b.current
      currents.push(i)
      continue
    }
    if (b.power !== null) {
      power[i] = b.power
      powers.push(i)
    }
    if (!inside) continue
    pairs[2 * i] = b.from
    pairs[2 * i + 1] = b.to
  }
  const elimination = eliminationOf(nodes, up, pairs)
  const { rows, turn, other } = elimination
  const slotOfBranch = (b: TwoPole) => {
    if (root[b.from] !== root[b.to]) return NOWHERE
    const a = turn[b.from] as number
    const c = turn[b.to] as number
    if (a >= 0 && c >= 0) return slotOf(elimination, a, c)
    return a >= 0 || c >= 0 ? -1 - Math.max(a, c) : NOWHERE
  }
  const sort = (of: ArrayLike<number>, tied: boolean): Sort => {
    const n = of.length
    const s = {
      of: new Int32Array(n),
      from: new Int32Array(n),
      to: new Int32Array(n),
      rowFrom: new Int32Array(n),
      rowTo: new Int32Array(n),
      slot: new Int32Array(n),
    }
    for (let k = 0; k < n; k++) {
      const b = branches[of[k] as number] as TwoPole
      s.of[k] = of[k] as number
      s.from[k] = b.from
      s.to[k] = b.to
      s.rowFrom[k] = turn[b.from] as number
      s.rowTo[k] = turn[b.to] as number
      s.slot[k] = tied ? slotOfBranch(b) : NOWHERE
    }
    return s
  }
  const [firmTies, firmGround] = [new Float64Array(other.length), new Float64Array(rows)]
  for (let i = 0; i < count; i++) {
    const b = branches[i] as TwoPole
    if (!isDemand(b)) bump(firmTies, firmGround, slotOfBranch(b), 1 / Math.max(b.resistance, IDEAL))
  }
  return {
    forest,
    elimination,
    links: sort(forest.links, false),
    currents: sort(currents, false),
    powers: sort(powers, true),
    resistance,
    emf,
    fixed,
    power,
    fed,
    firmTies,
    firmGround,
    ties: new Float64Array(other.length),
    ground: new Float64Array(rows),
    amps: new Float64Array(count),
    volts: new Float64Array(nodes),
    flow: new Float64Array(nodes),
    step: new Float64Array(rows),
  }
}

/** Adds a conductance to the tie in a slot. */
export function bump(ties: Float64Array, ground: Float64Array, slot: number, conductance: number): void {
  if (slot === NOWHERE) return
  if (slot >= 0) ties[slot] = (ties[slot] as number) + conductance
  else ground[-1 - slot] = (ground[-1 - slot] as number) + conductance
}
