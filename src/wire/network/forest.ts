// A spanning forest of a network, swept up for currents and down for voltages.
import { isDemand, type TwoPole } from "./types.js"

/** A spanning forest that takes the smallest resistances first; what closes loops are links. */
export interface Forest {
  /** Branch to the parent node, −1 at a root, and 1 where it points to the parent, −1 where it points away. */
  readonly up: Int32Array
  readonly sign: Int8Array
  readonly parent: Int32Array
  /** Nodes from the roots outwards. */
  readonly order: Int32Array
  /** Root of each node. */
  readonly root: Int32Array
  readonly links: Int32Array
}

/** The spanning forest of a network, the reference node a root. */
export function forestOf(nodes: number, branches: readonly TwoPole[], reference: number): Forest {
  const group = new Int32Array(nodes)
  for (let i = 0; i < nodes; i++) group[i] = i
  const find = (i: number): number => {
    let at = i
    while (group[at] !== at) {
      group[at] = group[group[at] as number] as number
      at = group[at] as number
    }
    return at
  }
  const firm: number[] = []
  const ohms = new Float64Array(branches.length)
  for (let i = 0; i < branches.length; i++) {
    const b = branches[i] as TwoPole
    ohms[i] = b.resistance
    if (!isDemand(b)) firm.push(i)
  }
  firm.sort((a, b) => (ohms[a] as number) - (ohms[b] as number) || a - b)
  const links: number[] = []
  // tree branches at each node, as linked lists: two ends each
  const [first, next] = [new Int32Array(nodes).fill(-1), new Int32Array(2 * branches.length)]
  for (const i of firm) {
    const { from, to } = branches[i] as TwoPole
    const a = find(from)
    const b = find(to)
    if (a === b) {
      links.push(i)
      continue
    }
    group[a] = b
    next[2 * i] = first[from] as number
    first[from] = 2 * i
    next[2 * i + 1] = first[to] as number
    first[to] = 2 * i + 1
  }
  const forest = {
    up: new Int32Array(nodes).fill(-1),
    sign: new Int8Array(nodes),
    parent: new Int32Array(nodes).fill(-1),
    order: new Int32Array(nodes),
    root: new Int32Array(nodes).fill(-1),
    links: Int32Array.from(links),
  }
  let [seen, done] = [0, 0]
  for (let k = -1; k < nodes; k++) {
    const start = k < 0 ? reference : k
    if (forest.root[start] !== -1) continue
    forest.root[start] = start
    forest.order[seen++] = start
    for (; done < seen; done++) {
      const at = forest.order[done] as number
      for (let end = first[at] as number; end !== -1; end = next[end] as number) {
        const branch = end >> 1
        const { from, to } = branches[branch] as TwoPole
        const node = from === at ? to : from
        if (forest.root[node] !== -1) continue
        forest.root[node] = start
        forest.up[node] = branch
        forest.sign[node] = from === node ? 1 : -1
        forest.parent[node] = at
        forest.order[seen++] = node
      }
    }
  }
  return forest
}

/** Two loads in series with nothing between them that fixes the voltage, if there are such. */
export function inSeries(branches: readonly TwoPole[], { root }: Forest): readonly [number, number] | null {
  const apart = branches.some((b) => isDemand(b) && root[b.from] !== root[b.to])
  if (!apart) return null
  const live = new Set(branches.filter((b) => b.emf !== 0).map((b) => root[b.from]))
  const into = new Map<number, number>()
  const outOf = new Map<number, number>()
  branches.forEach((b, i) => {
    const [from, to] = [root[b.from] as number, root[b.to] as number]
    if (!isDemand(b) || from === to) return
    if (!live.has(to)) into.set(to, i)
    if (!live.has(from)) outOf.set(from, i)
  })
  for (const [island, one] of into) {
    const second = outOf.get(island)
    if (second !== undefined) return [one, second]
  }
  return null
}
