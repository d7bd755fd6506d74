import { largestScale, type PowerLoops, powerCurrents, solveScaled, withoutFirm } from "./power-loads.js"

/** A two-pole of a direct-current network; its current flows `from` → `to` through it. */
export interface TwoPole {
  readonly from: number
  readonly to: number
  /** V_from − V_to = resistance · current − emf, Ω and V. */
  readonly resistance: number
  readonly emf: number
  /** Fixed current, A, or fixed power taken, W; both null for a plain resistance or source. */
  readonly current: number | null
  readonly power: number | null
}

/** State of a network. */
export interface NetworkState {
  /** Node voltages against the reference; null where nothing ties the node to it. */
  readonly voltages: readonly (number | null)[]
  /** Current of each two-pole, A. */
  readonly currents: readonly number[]
  /** Voltage across each two-pole, V_from − V_to, V; 0 for a load nothing feeds. */
  readonly drops: readonly number[]
  /** Whether a source can reach the two-pole. */
  readonly fed: readonly boolean[]
  readonly iterations: number
  /** Largest error of Kirchhoff's two laws, against the largest current and the largest source voltage. */
  readonly residual: number
}

/** Why a network has no state. */
export type NetworkFault =
  | { readonly fault: "short-circuit"; readonly branch: number }
  | { readonly fault: "in-series"; readonly branches: readonly [number, number] }
  | { readonly fault: "reversed" | "insufficient-voltage"; readonly branch: number; readonly shortBy: number }
  | { readonly fault: "too-much-power"; readonly scale: number }

interface Tree {
  /** Assembly to the parent node, −1 at a root, and its direction: 1 where it points to the parent. */
  readonly up: readonly number[]
  readonly parent: readonly number[]
  readonly depth: readonly number[]
  readonly order: readonly number[]
  readonly component: readonly number[]
  readonly links: readonly number[]
}

const isDemand = (b: TwoPole) => b.current !== null || b.power !== null

/** A spanning forest that takes the smallest resistances first; what closes loops are links. */
function forest(nodes: number, branches: readonly TwoPole[], reference: number): Tree {
  const root = Array.from({ length: nodes }, (_, i) => i)
  const find = (i: number): number => {
    let at = i
    while (root[at] !== at) {
      root[at] = root[root[at] as number] as number
      at = root[at] as number
    }
    return at
  }
  const near: { node: number; branch: number }[][] = Array.from({ length: nodes }, () => [])
  const links: number[] = []
  const firm = branches.map((_, i) => i).filter((i) => !isDemand(branches[i] as TwoPole))
  firm.sort((a, b) => (branches[a] as TwoPole).resistance - (branches[b] as TwoPole).resistance || a - b)
  for (const i of firm) {
    const { from, to } = branches[i] as TwoPole
    if (find(from) === find(to)) {
      links.push(i)
      continue
    }
    root[find(from)] = find(to)
    near[from]?.push({ node: to, branch: i })
    near[to]?.push({ node: from, branch: i })
  }
  const [up, parent, depth] = [new Array<number>(nodes).fill(-1), new Array<number>(nodes).fill(-1), new Array<number>(nodes).fill(0)]
  const component = new Array<number>(nodes).fill(-1)
  const order: number[] = []
  for (const start of [reference, ...root.keys()]) {
    if (component[start] !== -1) continue
    component[start] = start
    const queue = [start]
    for (let q = 0; q < queue.length; q++) {
      const at = queue[q] as number
      order.push(at)
      for (const { node, branch } of near[at] as { node: number; branch: number }[]) {
        if (component[node] !== -1) continue
        component[node] = start
        up[node] = branch
        parent[node] = at
        depth[node] = (depth[at] as number) + 1
        queue.push(node)
      }
    }
  }
  return { up, parent, depth, order, component, links }
}

/** Tree branches from node a to node b, each with +1 where its current runs along. */
function pathOf(tree: Tree, branches: readonly TwoPole[], a: number, b: number): { branch: number; sign: number }[] {
  const path: { branch: number; sign: number }[] = []
  let [x, y] = [a, b]
  const step = (node: number, along: number) => {
    const branch = tree.up[node] as number
    path.push({ branch, sign: (branches[branch] as TwoPole).from === node ? along : -along })
    return tree.parent[node] as number
  }
  while (x !== y) {
    if ((tree.depth[x] as number) >= (tree.depth[y] as number)) x = step(x, 1)
    else y = step(y, -1)
  }
  return path
}

/** Two loads in series with nothing between them that fixes the voltage, if there are such. */
function inSeries(branches: readonly TwoPole[], tree: Tree): readonly [number, number] | null {
  const live = new Set(branches.filter((b) => b.emf !== 0).map((b) => tree.component[b.from]))
  const into = new Map<number, number>()
  const outOf = new Map<number, number>()
  branches.forEach((b, i) => {
    const [from, to] = [tree.component[b.from] as number, tree.component[b.to] as number]
    if (!isDemand(b) || from === to) return
    if (!live.has(to)) into.set(to, i)
    if (!live.has(from)) outOf.set(from, i)
  })
  for (const [island, first] of into) {
    const second = outOf.get(island)
    if (second !== undefined) return [first, second]
  }
  return null
}

/**
 * Currents and voltages of a direct-current network by loop analysis: a spanning tree of the smallest
 * resistances, one unknown current for each loop that a link closes. Kirchhoff's current law holds by
 * construction, and no resistance is ever divided by, so ideal contacts are fine. Constant-power
 * loads by Newton's method from the unloaded state, which reaches the root at the higher voltage.
 */
export function solveNetwork(nodes: number, branches: readonly TwoPole[], reference: number): NetworkState | NetworkFault {
  const tree = forest(nodes, branches, reference)
  const pair = inSeries(branches, tree)
  if (pair !== null) return { fault: "in-series", branches: pair }
  const demands = branches.map(isDemand)
  if (!demands.includes(true)) return reckon(nodes, branches, tree, demands)
  // a load is fed where, with every load off, its two ends are tied and stand apart in voltage
  const open = reckon(nodes, branches, tree, demands)
  if ("fault" in open) return open
  const volts = Math.max(...branches.map((b) => Math.abs(b.emf)))
  const off = branches.map(
    (b, i) => isDemand(b) && (tree.component[b.from] !== tree.component[b.to] || Math.abs(open.across[i] as number) <= 1e-12 * volts),
  )
  const found = reckon(nodes, branches, tree, off)
  if (!("fault" in found) || found.fault !== "insufficient-voltage") return found
  // what the sources alone put across it tells a load the wrong way round from one whose voltage the others use up
  const unloaded = open.across[found.branch] as number
  return unloaded < 0 ? { fault: "reversed", branch: found.branch, shortBy: -unloaded } : found
}

/** The state with the loads marked `off` left out. */
function reckon(
  nodes: number,
  branches: readonly TwoPole[],
  tree: Tree,
  off: readonly boolean[],
): (NetworkState & { readonly across: readonly number[] }) | NetworkFault {
  const loop = (i: number) => {
    const { from, to } = branches[i] as TwoPole
    return { link: i, parts: [{ branch: i, sign: 1 }, ...pathOf(tree, branches, to, from)] }
  }
  const demands = branches.map((_, i) => i).filter((i) => isDemand(branches[i] as TwoPole) && !off[i])
  const fixed = demands.filter((i) => (branches[i] as TwoPole).current !== null).map(loop)
  const powers = demands.filter((i) => (branches[i] as TwoPole).power !== null).map(loop)
  const loops = [...tree.links.map(loop), ...powers]
  const firm = tree.links.length

  // loop resistances and driving voltages; fixed currents act as voltages through shared resistances
  const share = branches.map(() => [] as { loop: number; sign: number }[])
  loops.forEach(({ parts }, k) => {
    for (const { branch, sign } of parts) share[branch]?.push({ loop: k, sign })
  })
  const resistances = loops.map(() => new Array<number>(loops.length).fill(0))
  const drive = new Array<number>(loops.length).fill(0)
  const fixedCurrent = new Array<number>(branches.length).fill(0)
  for (const { link, parts } of fixed)
    for (const { branch, sign } of parts)
      fixedCurrent[branch] = (fixedCurrent[branch] as number) + sign * ((branches[link] as TwoPole).current as number)
  branches.forEach(({ resistance, emf }, i) => {
    for (const a of share[i] as { loop: number; sign: number }[]) {
      drive[a.loop] = (drive[a.loop] as number) + a.sign * (emf - resistance * (fixedCurrent[i] as number))
      const row = resistances[a.loop] as number[]
      for (const b of share[i] as { loop: number; sign: number }[]) row[b.loop] = (row[b.loop] as number) + a.sign * b.sign * resistance
    }
  })
  for (let k = 0; k < firm; k++)
    if (!((resistances[k]?.[k] as number) > 0)) return { fault: "short-circuit", branch: (loops[k] as { link: number }).link }

  const among = resistances.slice(0, firm).map((r) => r.slice(0, firm))
  if (solveScaled(among, drive.slice(0, firm)) === null) {
    const least = loops.slice(0, firm).reduce((a, b) => (loopResistance(branches, b) < loopResistance(branches, a) ? b : a))
    return { fault: "short-circuit", branch: least.link }
  }
  const load: PowerLoops = {
    ...withoutFirm(resistances, drive, firm),
    powers: powers.map((p) => (branches[p.link] as TwoPole).power as number),
  }
  const dead = load.open.findIndex((v) => !(v > 0))
  if (dead >= 0) {
    const branch = (powers[dead] as { link: number }).link
    return { fault: "insufficient-voltage", branch, shortBy: Math.max(-(load.open[dead] as number), Number.MIN_VALUE) }
  }
  const found = powerCurrents(load, 1)
  if (found === null) return { fault: "too-much-power", scale: largestScale(load) }
  const left = drive.slice(0, firm).map((d, k) => found.x.reduce((sum, x, p) => sum - (resistances[k]?.[firm + p] as number) * x, d))
  const x = [...(solveScaled(among, left) as number[]), ...found.x]

  const currents = fixedCurrent.map((c, i) =>
    (share[i] as { loop: number; sign: number }[]).reduce((sum, s) => sum + s.sign * (x[s.loop] as number), c),
  )
  return stateOf(nodes, branches, tree, off, currents, found.iterations)
}

const loopResistance = (branches: readonly TwoPole[], { parts }: { parts: readonly { branch: number }[] }) =>
  parts.reduce((sum, { branch }) => sum + (branches[branch] as TwoPole).resistance, 0)

function stateOf(
  nodes: number,
  branches: readonly TwoPole[],
  tree: Tree,
  off: readonly boolean[],
  currents: readonly number[],
  iterations: number,
): NetworkState & { readonly across: readonly number[] } {
  const held = new Array<number>(nodes).fill(0)
  for (const node of tree.order) {
    const branch = tree.up[node] as number
    if (branch < 0) continue
    const { from, resistance, emf } = branches[branch] as TwoPole
    const drop = resistance * (currents[branch] as number) - emf
    held[node] = (held[tree.parent[node] as number] as number) + (from === node ? drop : -drop)
  }
  const across = branches.map((b) => (held[b.from] as number) - (held[b.to] as number))
  const drops = across.map((v, i) => (off[i] ? 0 : v))
  const net = new Array<number>(nodes).fill(0)
  let [volts, amps, worst] = [0, 0, 0]
  branches.forEach((b, i) => {
    const current = currents[i] as number
    net[b.from] = (net[b.from] as number) - current
    net[b.to] = (net[b.to] as number) + current
    volts = Math.max(volts, Math.abs(b.emf))
    amps = Math.max(amps, Math.abs(current))
    if (off[i] || b.current !== null) return
    const law = b.power === null ? b.resistance * current - b.emf : b.power / current
    worst = Math.max(worst, Math.abs((drops[i] as number) - law))
  })
  const [reference] = tree.order
  return {
    voltages: held.map((v, i) => (tree.component[i] === reference ? v : null)),
    currents,
    drops,
    across,
    fed: off.map((o) => !o),
    iterations,
    residual: Math.max(volts > 0 ? worst / volts : worst, amps > 0 ? Math.max(...net.map(Math.abs)) / amps : 0),
  }
}
