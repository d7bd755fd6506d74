import { inSeries } from "./forest.js"
import { layOut, type Network } from "./layout.js"
import { largestShare, settle, unloaded } from "./settle.js"
import type { NetworkFault, NetworkState, TwoPole } from "./types.js"

export { layOut, type Network } from "./layout.js"
export { largestShare, settle, unloaded } from "./settle.js"
export type { NetworkFault, NetworkState, TwoPole } from "./types.js"

/**
 * Currents and voltages of a direct-current network: currents are summed up and voltages down a spanning tree of the smallest
 * resistances, so that no current is ever a difference of near equals over a small resistance; what closes loops and what
 * the loads ask for is found by Newton's method on the sparse network. Loads of constant power settle on the state at the
 * higher voltage.
 */
export function solveNetwork(nodes: number, branches: readonly TwoPole[], reference: number): NetworkState | NetworkFault {
  const net = layOut(nodes, branches, reference)
  if ("shorted" in net) return { fault: "short-circuit", branch: net.shorted }
  const pair = inSeries(branches, net.forest)
  if (pair !== null) return { fault: "in-series", branches: pair }
  const { fed, powers } = net
  const seen = (i: number) => {
    const { from, to } = branches[i] as TwoPole
    return (net.volts[from] as number) - (net.volts[to] as number)
  }
  // a load is fed where, with every load off, its two ends are tied and stand apart in voltage
  unloaded(net, false)
  const volts = net.emf.reduce((most, e) => Math.max(most, Math.abs(e)), 0)
  const alone = new Map<number, number>()
  for (const list of [net.currents.of, powers.of])
    for (const i of list) {
      alone.set(i, seen(i))
      if (!(Math.abs(seen(i)) > 1e-12 * volts)) fed[i] = 0
    }
  if (net.currents.of.length > 0) unloaded(net, true)
  for (const i of powers.of)
    if (fed[i] && !(seen(i) > 0)) {
      // what the sources alone put across it tells a load the wrong way round from one whose voltage the others use up
      const [sources, left] = [alone.get(i) as number, seen(i)]
      if (sources < 0) return { fault: "reversed", branch: i, shortBy: -sources }
      return { fault: "insufficient-voltage", branch: i, shortBy: Math.max(-left, Number.MIN_VALUE) }
    }
  let iterations: number | null = 1
  if (powers.of.some((i) => fed[i] === 1)) {
    iterations = settle(net, 1)
    if (iterations === null) {
      // where loads lift one another's voltage, the whole may settle only from a state near by
      const scale = largestShare(net)
      iterations = settle(net, 1)
      if (iterations === null) return { fault: "too-much-power", scale }
    }
  }
  return stateOf(net, branches, iterations)
}

function stateOf(net: Network, branches: readonly TwoPole[], iterations: number): NetworkState {
  const { forest, amps, volts, fed, emf } = net
  const left = new Float64Array(volts.length)
  const [currents, drops, took]: [number[], number[], boolean[]] = [[], [], []]
  let most = 0
  let largest = 0
  let worst = 0
  for (let i = 0; i < branches.length; i++) {
    const b = branches[i] as TwoPole
    const current = amps[i] as number
    const across = (volts[b.from] as number) - (volts[b.to] as number)
    left[b.from] = (left[b.from] as number) - current
    left[b.to] = (left[b.to] as number) + current
    most = Math.max(most, Math.abs(emf[i] as number))
    largest = Math.max(largest, Math.abs(current))
    currents.push(current)
    took.push(fed[i] === 1)
    drops.push(fed[i] === 1 ? across : 0)
    if (fed[i] === 0 || b.current !== null) continue
    const law = b.power === null ? b.resistance * current - b.emf : b.power / current
    worst = Math.max(worst, Math.abs(across - law))
  }
  let off = 0
  const voltages: (number | null)[] = []
  const reference = forest.order[0] as number
  for (let n = 0; n < volts.length; n++) {
    off = Math.max(off, Math.abs(left[n] as number))
    voltages.push(forest.root[n] === reference ? (volts[n] as number) : null)
  }
  return {
    voltages,
    currents,
    drops,
    fed: took,
    iterations,
    residual: Math.max(most > 0 ? worst / most : worst, largest > 0 ? off / largest : 0),
  }
}
