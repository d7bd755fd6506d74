// Power trees for the second route, and their state found by another model: the network solver, converters iterated outside.
import type { PowerTree } from "../../../src/rig/supply/document.js"
import { settle } from "../../../src/rig/supply/settle.js"
import { type SupplyModel, type SupplyState, supplyModel, supplyState } from "../../../src/rig/supply/tree.js"
import type { SiOf } from "../../../src/solver/index.js"
import { type NetworkState, solveNetwork, type TwoPole } from "../../../src/wire/network/index.js"

export type Tree = SiOf<PowerTree>
type Bus = Tree["buses"][number]
type Converter = NonNullable<Bus["converter"]>
type Load = Tree["loads"][number]

export const bank = (over: object = {}): Tree["sources"][number] => ({
  type: "bank",
  name: "lantern bank",
  voltage: 12,
  currentLimit: 50,
  resistance: 0.05,
  energy: 1e5,
  sleepCurrent: null,
  sleepDelay: null,
  ...over,
})

export const bus = (name: string, from: string, resistance = 0, converter: Converter | null = null): Bus => ({
  name,
  from,
  run: null,
  switchResistance: resistance,
  switchRating: null,
  fuseResistance: 0,
  fuseRating: null,
  limitAction: null,
  onTime: 0.01,
  offTime: 0.3,
  converter,
})

export const converter = (over: Partial<Converter> = {}): Converter => ({
  outputVoltage: 5,
  inputCurrentLimit: null,
  outputCurrentLimit: null,
  efficiency: [{ outputCurrent: 1, efficiency: 0.9 }],
  quiescentCurrent: 0,
  minInputVoltage: 6,
  maxInputVoltage: 40,
  ...over,
})

export const heater = (bus: string, resistance: number): Load => ({ type: "resistive", name: `heater ${bus}`, bus, resistance })
export const regulated = (bus: string, power: number): Load => ({ type: "constant-power", name: `sound ${bus}`, bus, power })
export const lights = (bus: string, current: number): Load => ({ type: "lights", name: `lights ${bus}`, bus, current })

/** The rig's own answer. */
export function stateOf(tree: Tree, drawn: readonly number[]): { model: SupplyModel; state: SupplyState } {
  const model = supplyModel(tree)
  const state = supplyState(model)
  settle(model, Float64Array.from(drawn), state)
  return { model, state }
}

/** State by the second route. */
export interface SecondState {
  readonly volts: readonly number[]
  readonly inputVolts: readonly number[]
  readonly runAmps: readonly number[]
  /** Converters held below their own output. */
  readonly held: boolean
}

/** Efficiency on its own straight line between the two points about a current. */
function efficiencyOf({ efficiency }: Converter, amps: number): number {
  const right = efficiency.findIndex((p) => p.outputCurrent >= amps)
  if (right === 0 || efficiency.length === 1) return (efficiency[0] as { efficiency: number }).efficiency
  if (right === -1) return (efficiency.at(-1) as { efficiency: number }).efficiency
  const [p, q] = [efficiency[right - 1], efficiency[right]] as [Converter["efficiency"][number], Converter["efficiency"][number]]
  const w = (amps - p.outputCurrent) / (q.outputCurrent - p.outputCurrent)
  return p.efficiency * (1 - w) + q.efficiency * w
}

/**
 * Node voltages by the network solver, which takes loads of constant power by itself; each converter a current taken at its input
 * and a stiff voltage at its output, both brought half way to what the other asks, time and again. Null where it has no state.
 */
export function secondState(tree: Tree, drawn: readonly number[], rounds = 900): SecondState | null {
  const { sources, buses, loads } = tree
  const sourceNode = (name: string) => 1 + sources.findIndex((s) => s.name === name)
  const outNode = (i: number) => 1 + sources.length + i
  const inNode = (i: number) => ((buses[i] as Bus).converter ? 1 + sources.length + buses.length + i : outNode(i))
  const fromNode = (b: Bus) => {
    const up = buses.findIndex((one) => one.name === b.from)
    return up >= 0 ? outNode(up) : sourceNode(b.from)
  }
  const plain = (from: number, to: number, resistance: number, emf = 0): TwoPole => ({
    from,
    to,
    resistance,
    emf,
    current: null,
    power: null,
  })
  const takes = (node: number, current: number | null, power: number | null): TwoPole => ({
    from: node,
    to: 0,
    resistance: 0,
    emf: 0,
    current,
    power,
  })
  const fixed: TwoPole[] = sources.map((s, k) => {
    if (s.type === "cells") throw new Error("banks and supplies only")
    return plain(0, 1 + k, s.resistance, s.voltage)
  })
  const runs = buses.map((b, i) => plain(fromNode(b), inNode(i), b.switchResistance))
  for (const [i, amps] of drawn.entries()) if (amps !== 0) fixed.push(takes(outNode(i), amps, null))
  for (const load of loads) {
    const node = outNode(buses.findIndex((b) => b.name === load.bus))
    if (load.type === "resistive") fixed.push(plain(node, 0, load.resistance))
    else if (load.type === "constant-power") fixed.push(takes(node, null, load.power))
    else fixed.push(takes(node, load.current, null))
  }
  const inside = buses.flatMap((b, i) => (b.converter ? [{ i, spec: b.converter }] : []))
  const taken = inside.map((c) => c.spec.quiescentCurrent)
  const output = inside.map((c) => c.spec.outputVoltage)
  // current up to which a converter keeps its input above the minimum
  const cap = inside.map((c) => c.spec.inputCurrentLimit ?? Number.POSITIVE_INFINITY)
  const nodes = 1 + sources.length + 2 * buses.length
  let net: NetworkState | null = null
  let held = false
  for (let round = 0; round < rounds; round++) {
    const outs = inside.map((c, k) => plain(0, outNode(c.i), 0, output[k] as number))
    const ins = inside.map((c, k) => takes(inNode(c.i), taken[k] as number, null))
    const solved = solveNetwork(nodes, [...fixed, ...runs, ...outs, ...ins], 0)
    if ("fault" in solved) return null
    net = solved
    let moved = 0
    held = false
    inside.forEach(({ i, spec }, k) => {
      const vin = solved.voltages[inNode(i)] as number
      const amps = Math.max(0, solved.currents[fixed.length + runs.length + k] as number)
      const eta = efficiencyOf(spec, amps)
      const demand = spec.quiescentCurrent + (spec.outputVoltage * amps) / (eta * vin)
      const r = Math.max(1e-3, (buses[i] as Bus).switchResistance)
      const most = spec.inputCurrentLimit ?? Number.POSITIVE_INFINITY
      if (vin < spec.minInputVoltage) cap[k] = (taken[k] as number) - (spec.minInputVoltage - vin) / (4 * r)
      else if (Number.isFinite(cap[k] as number))
        cap[k] = Math.min(most, Math.max(cap[k] as number, taken[k] as number) + (vin - spec.minInputVoltage) / (4 * r))
      const wanted = Math.max(spec.quiescentCurrent, Math.min(demand, cap[k] as number))
      const binds = wanted < demand * (1 - 1e-12)
      held ||= binds
      const volts =
        binds && amps > 0
          ? Math.min(spec.outputVoltage, (eta * vin * ((taken[k] as number) - spec.quiescentCurrent)) / amps)
          : spec.outputVoltage
      moved = Math.max(moved, Math.abs(wanted - (taken[k] as number)), Math.abs(volts - (output[k] as number)))
      taken[k] = ((taken[k] as number) + wanted) / 2
      output[k] = ((output[k] as number) + volts) / 2
    })
    if (moved < 1e-12) break
    if (round === rounds - 1) return null
  }
  if (!net) return null
  const found = net
  return {
    volts: buses.map((_, i) => found.voltages[outNode(i)] as number),
    inputVolts: buses.map((_, i) => found.voltages[inNode(i)] as number),
    runAmps: runs.map((_, i) => found.currents[fixed.length + i] as number),
    held,
  }
}

/** A tree up to three levels deep, drawn at random, with the currents that drives draw. `heavy` multiplies its powers. */
export function drawnTree(random: () => number, converters = true, heavy = 1): { tree: Tree; drawn: number[] } {
  const between = (a: number, b: number) => a + (b - a) * random()
  const count = 1 + Math.floor(random() * 3)
  const sources = Array.from({ length: count }, (_, k) =>
    bank({ name: `source ${k}`, voltage: between(9, 24), resistance: between(0.01, 0.4), currentLimit: 50 }),
  )
  const buses: Bus[] = []
  const level: number[] = []
  const total = count + Math.floor(random() * 6)
  for (let i = 0; i < total; i++) {
    const ups = buses.map((_, k) => k).filter((k) => (level[k] as number) < 3)
    const up = i < count || random() < 0.3 ? null : ups[Math.floor(random() * ups.length)]
    const from = up === null || up === undefined ? `source ${i % count}` : (buses[up] as Bus).name
    level.push(up === null || up === undefined ? 1 : (level[up] as number) + 1)
    const spec =
      converters && random() < 0.4
        ? converter({
            outputVoltage: between(4, 12),
            minInputVoltage: between(0.5, 3),
            quiescentCurrent: between(0, 0.02),
            efficiency: [
              { outputCurrent: 0.1, efficiency: between(0.6, 0.8) },
              { outputCurrent: between(0.5, 1), efficiency: between(0.85, 0.95) },
              { outputCurrent: 4, efficiency: between(0.8, 0.9) },
            ],
          })
        : null
    buses.push(bus(`bus ${i}`, from, random() < 0.15 ? 0 : between(0.02, 0.6), spec))
  }
  const loads: Load[] = []
  for (const b of buses) {
    if (random() < 0.3) loads.push(regulated(b.name, heavy * between(0.2, 4)))
    if (random() < 0.3) loads.push(heater(b.name, between(4, 60)))
    if (random() < 0.3) loads.push(lights(b.name, between(0.05, 0.5)))
  }
  return { tree: { sources, buses, loads }, drawn: buses.map(() => (random() < 0.5 ? between(0, 1.2) : 0)) }
}
