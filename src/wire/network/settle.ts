// A network settled for its loads by Newton's method, on sweeps of its tree.
import { backSubstitute, eliminate } from "./elimination.js"
import { bump, type Network, type Sort } from "./layout.js"

/** Currents summed from the tree's ends inwards, voltages from its roots outwards: both of Kirchhoff's laws hold in the tree. */
function sweep(net: Network): void {
  const { flow, volts, amps, resistance, emf } = net
  const { order, parent, up, sign } = net.forest
  flow.fill(0)
  pour(flow, amps, net.links)
  pour(flow, amps, net.currents)
  pour(flow, amps, net.powers)
  for (let n = order.length - 1; n >= 0; n--) {
    const node = order[n] as number
    const branch = up[node] as number
    if (branch < 0) continue
    const current = flow[node] as number
    amps[branch] = (sign[node] as number) * current
    const above = parent[node] as number
    flow[above] = (flow[above] as number) + current
  }
  for (let n = 0; n < order.length; n++) {
    const node = order[n] as number
    const branch = up[node] as number
    volts[node] =
      branch < 0
        ? 0
        : (volts[parent[node] as number] as number) +
          (resistance[branch] as number) * (flow[node] as number) -
          (sign[node] as number) * (emf[branch] as number)
  }
}

/** Takes the currents of some two-poles from where they start to where they end. */
function pour(flow: Float64Array, amps: Float64Array, { of, from, to }: Sort): void {
  for (let n = 0; n < of.length; n++) {
    const current = amps[of[n] as number] as number
    const a = from[n] as number
    const b = to[n] as number
    flow[a] = (flow[a] as number) - current
    flow[b] = (flow[b] as number) + current
  }
}

const across = (volts: Float64Array, { from, to }: Sort, n: number) =>
  (volts[from[n] as number] as number) - (volts[to[n] as number] as number)

/** What a link's law lacks, V. */
function lack({ volts, amps, emf, resistance, links }: Network, n: number): number {
  const i = links.of[n] as number
  return across(volts, links, n) + (emf[i] as number) - (resistance[i] as number) * (amps[i] as number)
}

/** Sets a current on its way from one row to another, as what the rows get. */
function push(step: Float64Array, { rowFrom, rowTo }: Sort, n: number, current: number): void {
  const a = rowFrom[n] as number
  const b = rowTo[n] as number
  if (a >= 0) step[a] = (step[a] as number) - current
  if (b >= 0) step[b] = (step[b] as number) + current
}

/** Change of the voltage across a two-pole. */
function change(step: Float64Array, { rowFrom, rowTo }: Sort, n: number): number {
  const a = rowFrom[n] as number
  const b = rowTo[n] as number
  return (a < 0 ? 0 : (step[a] as number)) - (b < 0 ? 0 : (step[b] as number))
}

/** Ties as they are at the state: what holds, less what a load of constant power takes away as its voltage falls. */
function weigh(net: Network, share: number): boolean {
  const { ties, ground, powers, power, fed, volts } = net
  if (share === 0) return eliminate(net.elimination, net.firmGround, net.firmTies)
  ties.set(net.firmTies)
  ground.set(net.firmGround)
  for (let n = 0; n < powers.of.length; n++) {
    const i = powers.of[n] as number
    if (fed[i] === 0) continue
    const v = across(volts, powers, n)
    bump(ties, ground, powers.slot[n] as number, (-share * (power[i] as number)) / (v * v))
  }
  return eliminate(net.elimination, ground, ties)
}

/** One step of Newton's method at the state, on ties already weighed, and swept; the maximum change of a voltage. */
function improve(net: Network, share: number): number {
  const { step, amps, power, powers, fed, resistance, links, volts } = net
  step.fill(0)
  for (let n = 0; n < links.of.length; n++) push(step, links, n, lack(net, n) / (resistance[links.of[n] as number] as number))
  if (share > 0)
    for (let n = 0; n < powers.of.length; n++) {
      const i = powers.of[n] as number
      if (fed[i] === 1) push(step, powers, n, (share * (power[i] as number)) / across(volts, powers, n) - (amps[i] as number))
    }
  backSubstitute(net.elimination, step)
  for (let n = 0; n < links.of.length; n++) {
    const i = links.of[n] as number
    amps[i] = (amps[i] as number) + (change(step, links, n) + lack(net, n)) / (resistance[i] as number)
  }
  if (share > 0)
    for (let n = 0; n < powers.of.length; n++) {
      const i = powers.of[n] as number
      if (fed[i] === 0) continue
      const v = across(volts, powers, n)
      amps[i] = ((share * (power[i] as number)) / v) * (1 - change(step, powers, n) / v)
    }
  sweep(net)
  let most = 0
  for (let k = 0; k < step.length; k++) most = Math.max(most, Math.abs(step[k] as number))
  return most
}

/** Largest error of a link's or a power load's law, V. */
function worst(net: Network, share: number): number {
  const { links, powers, fed, power, amps, volts } = net
  let most = 0
  for (let n = 0; n < links.of.length; n++) most = Math.max(most, Math.abs(lack(net, n)))
  if (share > 0)
    for (let n = 0; n < powers.of.length; n++) {
      const i = powers.of[n] as number
      if (fed[i] === 1) most = Math.max(most, Math.abs((share * (power[i] as number)) / (amps[i] as number) - across(volts, powers, n)))
    }
  return most
}

/** Largest voltage of a source, V. */
function sourceVolts({ emf }: Network): number {
  let most = 0
  for (let i = 0; i < emf.length; i++) most = Math.max(most, Math.abs(emf[i] as number))
  return most
}

/** The state without power loads, the fixed currents of the loads that are fed on or off. */
export function unloaded(net: Network, withCurrents: boolean): void {
  const { amps, currents, fed, fixed } = net
  amps.fill(0)
  if (withCurrents) for (const i of currents.of) if (fed[i] === 1) amps[i] = fixed[i] as number
  sweep(net)
  if (net.links.of.length === 0) return
  const enough = 1e-15 * sourceVolts(net)
  // resistances alone hold at any voltage
  weigh(net, 0)
  let before = Number.POSITIVE_INFINITY
  for (let tries = 0; tries < 6; tries++) {
    improve(net, 0)
    const error = worst(net, 0)
    if (!(error > enough && error < before / 2)) return
    before = error
  }
}

/** Whether every power load that is fed has voltage and current its own way. */
function runs({ powers, fed, volts, amps }: Network): boolean {
  for (let n = 0; n < powers.of.length; n++) {
    const i = powers.of[n] as number
    if (fed[i] === 1 && !(across(volts, powers, n) > 0 && (amps[i] as number) > 0)) return false
  }
  return true
}

/**
 * Settles the power loads at a share of their powers from the state the network is in; the steps it took, or null where they do
 * not settle. From a state at higher voltage Newton's steps come down to the state and never pass it where every load lowers
 * every other's voltage (a load's current is convex in its voltage); and what settles with every sum positive is the state at
 * the higher voltages, of which there is only one.
 */
export function settle(net: Network, share: number): number | null {
  const volts = sourceVolts(net)
  let before = Number.POSITIVE_INFINITY
  for (let steps = 1; steps <= 100; steps++) {
    if (!weigh(net, share)) return null
    const moved = improve(net, share)
    if (!Number.isFinite(moved) || !runs(net)) return null
    // each step is at most this part of the one before
    const part = moved / before
    if (moved <= 1e-14 * volts || (steps > 1 && part < 1e-2 && moved * part * part <= 1e-15 * volts)) return steps
    // where the two states nearly meet, rounding keeps the step from closing; the laws then decide
    if (part > 0.5 && moved < 1e-4 * volts && worst(net, share) <= 1e-12 * volts) return steps
    before = moved
  }
  return worst(net, share) <= 1e-12 * volts ? 100 : null
}

/**
 * How the power loads' voltages answer to their share at a settled state, V: the fastest fall, and how fast that grows at no
 * share at all; null where the network does not hold its voltage.
 */
function fall(net: Network, share: number): { readonly slope: number; readonly bend: number } | null {
  const { step, powers, power, fed, volts } = net
  if (!weigh(net, share)) return null
  const count = powers.of.length
  step.fill(0)
  for (let n = 0; n < count; n++) {
    const i = powers.of[n] as number
    if (fed[i] === 1) push(step, powers, n, (power[i] as number) / across(volts, powers, n))
  }
  backSubstitute(net.elimination, step)
  let [slope, steepest] = [0, 0]
  for (let n = 0; n < count; n++) {
    const rate = fed[powers.of[n] as number] === 1 ? Math.abs(change(step, powers, n)) : 0
    if (rate > slope) [slope, steepest] = [rate, n]
  }
  if (share > 0) return { slope, bend: 0 }
  const first = step.slice()
  step.fill(0)
  for (let n = 0; n < count; n++) {
    const i = powers.of[n] as number
    if (fed[i] === 1) push(step, powers, n, (-2 * (power[i] as number) * change(first, powers, n)) / across(volts, powers, n) ** 2)
  }
  backSubstitute(net.elimination, step)
  return { slope, bend: Math.abs(change(step, powers, steepest)) }
}

/**
 * Largest share of the power loads that settles, up to 1; the network is left there. Where the two states of a constant-power
 * network meet, the slope dV/dshare grows as 1/√(limit − share), so its inverse square runs straight into the limit.
 */
export function largestShare(net: Network): number {
  unloaded(net, true)
  const [amps, volts] = [net.amps.slice(), net.volts.slice()]
  let [low, high] = [0, 1]
  const start = fall(net, 0) as { readonly slope: number; readonly bend: number }
  let [lastShare, lastSquare] = [0, start.slope ** -2]
  /** Limit as the last two states foretell it; at no load as slope and bend do. */
  let limit = start.slope / (2 * start.bend)
  /** What is left of the way to the foretold limit. */
  let left = 0.1
  for (let tries = 0; tries < 200 && high - low > 1e-12 * high; tries++) {
    const foretold = limit > low && limit <= high ? limit - low : Number.NaN
    // the line is wrong by the square of what is left
    if (foretold <= 1e-7 * low) return limit
    const next = Number.isNaN(foretold) ? (low + high) / 2 : low + foretold * (1 - left)
    const answer = settle(net, next) === null ? null : fall(net, next)
    if (answer === null) {
      high = next
      limit = Number.NaN
      left = 0.1
      net.amps.set(amps)
      net.volts.set(volts)
      continue
    }
    // closer each time, as the line gets straighter
    if (low > 0) left = Math.max(1e-4, left / 4)
    low = next
    amps.set(net.amps)
    volts.set(net.volts)
    const square = answer.slope ** -2
    limit = low + (square * (low - lastShare)) / (lastSquare - square)
    ;[lastShare, lastSquare] = [low, square]
  }
  return low
}
