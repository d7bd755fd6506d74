import { solveLinear } from "../numeric/index.js"

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
  | { readonly fault: "no-resistance"; readonly branch: number }
  | { readonly fault: "in-series"; readonly branches: readonly [number, number] }
  | { readonly fault: "no-voltage"; readonly branch: number; readonly shortBy: number }
  | { readonly fault: "too-much-power"; readonly scale: number }

interface Tree {
  /** Branch to the parent node, −1 at a root, and its direction: 1 where it points to the parent. */
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
  return reckon(nodes, branches, tree, off)
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
    if (!((resistances[k]?.[k] as number) > 0)) return { fault: "no-resistance", branch: (loops[k] as { link: number }).link }

  const load: LoopLoad = { resistances, drive, firm, powers: powers.map((p) => (branches[p.link] as TwoPole).power as number) }
  const idle = unloaded(load)
  if (idle === null) {
    const least = loops.slice(0, firm).reduce((a, b) => (loopResistance(branches, b) < loopResistance(branches, a) ? b : a))
    return { fault: "no-resistance", branch: least.link }
  }
  const dead = idle.open.findIndex((v) => !(v > 0))
  if (dead >= 0) {
    const branch = (powers[dead] as { link: number }).link
    return { fault: "no-voltage", branch, shortBy: Math.max(-(idle.open[dead] as number), Number.MIN_VALUE) }
  }
  const found = newton(load, 1, startOf(load, 1, idle))
  if (found === null) return { fault: "too-much-power", scale: largestScale(load, idle) }

  const currents = fixedCurrent.map((c, i) =>
    (share[i] as { loop: number; sign: number }[]).reduce((sum, s) => sum + s.sign * (found.x[s.loop] as number), c),
  )
  return stateOf(nodes, branches, tree, off, currents, found.iterations)
}

const loopResistance = (branches: readonly TwoPole[], { parts }: { parts: readonly { branch: number }[] }) =>
  parts.reduce((sum, { branch }) => sum + (branches[branch] as TwoPole).resistance, 0)

/** Solves a symmetric system scaled to a unit diagonal, so that milliohms and megohms may meet in one network. */
function solveScaled(matrix: readonly (readonly number[])[], rhs: readonly number[]): number[] | null {
  const scale = matrix.map((row, k) => 1 / Math.sqrt(Math.abs(row[k] as number) || 1))
  const scaled = matrix.map((row, k) => row.map((r, l) => r * (scale[k] as number) * (scale[l] as number)))
  const y = solveLinear(
    scaled,
    rhs.map((b, k) => b * (scale[k] as number)),
  )
  return y?.map((v, k) => v * (scale[k] as number)) ?? null
}

/** Loops with their resistances and driving voltages; the last ones carry a load of constant power each. */
interface LoopLoad {
  readonly resistances: readonly (readonly number[])[]
  readonly drive: readonly number[]
  /** How many loops, the first, carry no power load. */
  readonly firm: number
  readonly powers: readonly number[]
}

/** Currents without power loads, and the open voltage at each of these loads. */
interface Idle {
  readonly inner: readonly number[]
  readonly open: readonly number[]
}

/** The unloaded state; null where a loop has no resistance. */
function unloaded({ resistances, drive, firm, powers }: LoopLoad): Idle | null {
  const inner = solveScaled(
    resistances.slice(0, firm).map((r) => r.slice(0, firm)),
    drive.slice(0, firm),
  )
  if (inner === null) return null
  // the power loops carry nothing; their open voltage is what their loop leaves over
  const open = powers.map((_, p) => inner.reduce((v, x, k) => v - (resistances[firm + p]?.[k] as number) * x, drive[firm + p] as number))
  return { inner, open }
}

const startOf = ({ powers }: LoopLoad, scale: number, { inner, open }: Idle): number[] => [
  ...inner,
  ...open.map((v, p) => (scale * (powers[p] as number)) / v),
]

/** Solves with the loop matrix about the currents x: P/x is 2P/x₀ − (P/x₀²)·x there, a source and a negative resistance. */
function solveAbout({ resistances, firm, powers }: LoopLoad, scale: number, x: readonly number[], rhs: readonly number[]): number[] | null {
  return solveScaled(
    resistances.map((row, k) =>
      k < firm ? row : row.map((r, l) => (k === l ? r - (scale * (powers[k - firm] as number)) / (x[k] as number) ** 2 : r)),
    ),
    rhs,
  )
}

/** Loop currents with the power loads at a scale, by Newton's method from a start; null where there is no state. */
function newton(load: LoopLoad, scale: number, start: readonly number[]): { x: readonly number[]; iterations: number } | null {
  const { resistances, drive, firm, powers } = load
  const power = (k: number) => (k < firm ? 0 : scale * (powers[k - firm] as number))
  const volts = Math.max(...drive.map(Math.abs))
  const met = (x: readonly number[]) =>
    drive.every((d, k) => {
      const fall = (resistances[k] as readonly number[]).reduce((sum, r, l) => sum + r * (x[l] as number), 0)
      return Math.abs(d - fall - (k < firm ? 0 : power(k) / (x[k] as number))) <= 1e-12 * volts
    })
  let x = start
  if (powers.length === 0) return { x, iterations: 1 }
  let before = Number.POSITIVE_INFINITY
  for (let iterations = 1; iterations <= 100; iterations++) {
    const at = x
    const next = solveAbout(
      load,
      scale,
      at,
      drive.map((d, k) => (k < firm ? d : d - (2 * power(k)) / (at[k] as number))),
    )
    if (next === null || next.some((v, k) => !Number.isFinite(v) || (k >= firm && !(v > 0)))) return null
    const size = Math.max(...next.map(Math.abs))
    const step = Math.max(...next.map((v, k) => Math.abs(v - (at[k] as number))))
    x = next
    // where the two roots nearly meet, rounding keeps the step from closing; the equations then decide
    if (step <= 1e-14 * size || (step > before / 2 && step < 1e-4 * size && met(x))) return { x, iterations }
    before = step
  }
  return met(x) ? { x, iterations: 100 } : null
}

/**
 * Largest share of the power loads that has a state. Where the two states of a constant-power
 * network meet, the slope dx/dscale grows as 1/√(limit − scale), so its inverse square runs straight into the limit.
 */
function largestScale(load: LoopLoad, idle: Idle): number {
  const { firm, powers } = load
  const slopeAt = (scale: number, x: readonly number[]) =>
    solveAbout(
      load,
      scale,
      x,
      x.map((v, k) => (k < firm ? 0 : -(powers[k - firm] as number) / v)),
    )
  let [low, high] = [0, 1]
  let state: readonly number[] = startOf(load, 0, idle)
  let slope: readonly number[] | null = null
  /** Limit as the last two states foretell it. */
  let limit = Number.NaN
  // unloaded, each load's current grows as its power over its open voltage
  let [lastScale, lastSquare] = [0, 1 / Math.max(...idle.open.map((v, p) => (powers[p] as number) / v)) ** 2]
  for (let tries = 0; tries < 200 && high - low > 1e-12 * high; tries++) {
    const foretold = limit > low && limit <= high ? limit - low : Number.NaN
    // the line is wrong by the square of what is left
    if (foretold <= 1e-7 * low) return limit
    // closer each time: a tenth of what is left, a hundredth, …
    const next = Number.isNaN(foretold) ? (low + high) / 2 : low + foretold * (1 - 10 ** -Math.min(4, 1 + tries / 2))
    const along = slope
    const start =
      along === null || Number.isNaN(foretold)
        ? startOf(load, next, idle)
        : state.map((v, k) => v + 2 * (along[k] as number) * foretold * (1 - Math.sqrt((limit - next) / foretold)))
    const found = newton(load, next, start)
    if (found === null) {
      high = next
      limit = Number.NaN
      continue
    }
    low = next
    state = found.x
    slope = slopeAt(low, state)
    const square = slope === null ? 0 : 1 / Math.max(...slope.slice(firm).map(Math.abs)) ** 2
    limit = low + (square * (low - lastScale)) / (lastSquare - square)
    ;[lastScale, lastSquare] = [low, square]
  }
  return low
}

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
