// A power tree laid out, and its voltages for the currents that the drives set by their efforts.
import { type ConverterSpec, converterOutput, type LimitedBy } from "../../converter/index.js"
import { openCircuitVoltage, resistanceFactor } from "../../pack/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { voltageDrop } from "../../wire/index.js"
import type { Bus, PowerSource, PowerTree, SupplyRun } from "./document.js"

/** A source as a circuit. */
export interface SourceModel {
  readonly name: string
  readonly openVoltage: number
  readonly resistance: number
  /** Current beyond which it gives nothing, A; null where none is known. */
  readonly currentLimit: number | null
  /** Whether it takes current back. */
  readonly accepts: boolean
}

/** Which parts of the tree count: a waterfall of time adds them one by one. */
export interface SupplyParts {
  readonly sourceResistance: boolean
  readonly wires: boolean
  readonly limits: boolean
}

export const allParts: SupplyParts = { sourceResistance: true, wires: true, limits: true }

/** What holds a bus down. */
export type Limit = LimitedBy | "source-current" | "no-input" | "too-much-power"

/** The tree at one set of currents; written anew by every call of {@link settle}. */
export interface SupplyState {
  /** Voltage at each bus, and at the end of its run before a converter, V. */
  readonly volts: Float64Array
  readonly inputVolts: Float64Array
  /** Current through each bus's run, and out of its converter (the same without one), A. */
  readonly runAmps: Float64Array
  readonly outAmps: Float64Array
  /** Current of each source, A. */
  readonly sourceAmps: Float64Array
  /** Current of the loads of constant power at each bus, A. */
  readonly powerAmps: Float64Array
  /** What holds each bus down, its own or one above it. */
  readonly limits: Limit[]
  /** First bus at which the tree finds no state, with why; −1 where it has one. */
  failed: number
}

/** A tree ready to be settled. */
export interface SupplyModel {
  readonly sources: readonly SourceModel[]
  readonly names: readonly string[]
  /** Source that feeds each bus, and the bus above it; −1 right at the source. */
  readonly sourceOf: Int32Array
  readonly above: Int32Array
  /** Buses from the sources outwards. */
  readonly order: Int32Array
  readonly resistance: Float64Array
  /** Resistance from the last regulated voltage (source or converter) to the end of the run. */
  readonly path: Float64Array
  readonly converters: readonly (ConverterSpec | null)[]
  /** Steady currents, powers and conductances at each bus. */
  readonly steady: Float64Array
  readonly power: Float64Array
  readonly conductance: Float64Array
  /** Currents at which a bus's efficiency curve bends, by bus. */
  readonly breaks: readonly (readonly number[])[]
  /** Whether a state needs more than one pass: currents that answer to voltages. */
  readonly coupled: boolean
}

/** Resistance of a run both ways, contacts included: wire.voltageDrop's own sum. */
export function runResistance(run: SiOf<SupplyRun>): number {
  const out = voltageDrop.si({
    current: 1,
    length: run.length,
    awg: run.awg,
    area: run.area,
    material: "copper",
    stranding: "solid",
    conductorTemperature: run.temperature,
    conductors: 2,
    contacts: run.contacts,
    contactResistance: run.contactResistance,
    sourceVoltage: null,
  })
  if (isNoSolution(out)) throw new RangeError("A run of wire without a resistance: its faults are found before.")
  return out.resistance
}

/** A source as a circuit, at its own charge and temperature. */
export function sourceOf(si: SiOf<PowerSource>): SourceModel {
  if (si.type === "cells")
    return {
      name: si.name,
      openVoltage: si.series * openCircuitVoltage(si.chemistry, si.stateOfCharge),
      resistance: (si.series * si.cellResistance * resistanceFactor(si.chemistry, si.temperature)) / si.parallel + si.extraResistance,
      currentLimit: null,
      accepts: true,
    }
  return { name: si.name, openVoltage: si.voltage, resistance: si.resistance, currentLimit: si.currentLimit, accepts: false }
}

/** Lays a tree out whose names have been found to hang together. */
export function supplyModel(tree: SiOf<PowerTree>, parts: SupplyParts = allParts): SupplyModel {
  const sources = tree.sources.map((one) => {
    const model = sourceOf(one)
    return {
      ...model,
      resistance: parts.sourceResistance ? model.resistance : 0,
      currentLimit: parts.limits ? model.currentLimit : null,
    }
  })
  const count = tree.buses.length
  const at = new Map(tree.buses.map((bus, i) => [bus.name, i]))
  const model = {
    sources,
    names: tree.buses.map((bus) => bus.name),
    sourceOf: new Int32Array(count).fill(-1),
    above: new Int32Array(count),
    order: new Int32Array(count),
    resistance: new Float64Array(count),
    path: new Float64Array(count),
    steady: new Float64Array(count),
    power: new Float64Array(count),
    conductance: new Float64Array(count),
  }
  tree.buses.forEach((bus, i) => {
    model.above[i] = at.get(bus.from) ?? -1
    model.resistance[i] = parts.wires ? (bus.run ? runResistance(bus.run) : 0) + bus.switchResistance + bus.fuseResistance : 0
  })
  let placed = 0
  for (let round = 0; round < count && placed < count; round++)
    for (let i = 0; i < count; i++) {
      if (model.sourceOf[i] !== -1) continue
      const above = model.above[i] as number
      const source =
        above === -1 ? tree.sources.findIndex((s) => s.name === (tree.buses[i] as SiOf<Bus>).from) : (model.sourceOf[above] as number)
      if (source === -1) continue
      model.sourceOf[i] = source
      model.order[placed++] = i
    }
  if (placed < count) throw new RangeError("A bus without a source: its faults are found before.")
  for (const i of model.order) {
    const above = model.above[i] as number
    const before =
      above === -1
        ? (sources[model.sourceOf[i] as number] as SourceModel).resistance
        : (tree.buses[above] as SiOf<Bus>).converter
          ? 0
          : (model.path[above] as number)
    model.path[i] = before + (model.resistance[i] as number)
  }
  for (const load of tree.loads) {
    const i = at.get(load.bus) as number
    if (load.type === "constant-power") model.power[i] = (model.power[i] as number) + load.power
    else if (load.type === "resistive") model.conductance[i] = (model.conductance[i] as number) + 1 / load.resistance
    else model.steady[i] = (model.steady[i] as number) + load.current
  }
  const converters = tree.buses.map((bus, i): ConverterSpec | null => {
    if (!bus.converter) return null
    const limit = bankLimit(tree, model, i)
    const own = bus.converter.inputCurrentLimit
    return {
      ...bus.converter,
      inputCurrentLimit: parts.limits ? (own === null ? limit : limit === null ? own : Math.min(own, limit)) : null,
      outputCurrentLimit: parts.limits ? bus.converter.outputCurrentLimit : null,
    }
  })
  const fixed = model.power.every((p) => p === 0) && model.conductance.every((g) => g === 0)
  const fed = new Int32Array(sources.length)
  converters.forEach((c, i) => {
    if (c) fed[model.sourceOf[i] as number] = (fed[model.sourceOf[i] as number] as number) + 1
  })
  return {
    ...model,
    converters,
    breaks: tree.buses.map((bus) => bus.converter?.efficiency.map((p) => p.outputCurrent) ?? []),
    coupled: !fixed || fed.some((n) => n > 1),
  }
}

/** A limited source that feeds one converter and nothing else is held by what the converter takes in. */
function bankLimit(
  tree: SiOf<PowerTree>,
  { above, sourceOf: of }: { readonly above: Int32Array; readonly sourceOf: Int32Array },
  bus: number,
): number | null {
  const source = tree.sources[of[bus] as number] as SiOf<PowerSource>
  if (source.type === "cells") return null
  const first = tree.buses.flatMap((one, i) => (of[i] === of[bus] && (above[i] === -1 || !one.converter) ? [i] : []))
  return above[bus] === -1 && first.every((i) => i === bus || above[i] !== -1) && first.filter((i) => above[i] === -1).length === 1
    ? source.currentLimit
    : null
}

/** A state to be written by {@link settle}. */
export function supplyState({ names, sources }: Pick<SupplyModel, "names" | "sources">): SupplyState {
  const n = names.length
  return {
    volts: new Float64Array(n),
    inputVolts: new Float64Array(n),
    runAmps: new Float64Array(n),
    outAmps: new Float64Array(n),
    sourceAmps: new Float64Array(sources.length),
    powerAmps: new Float64Array(n),
    limits: new Array<Limit>(n).fill("none"),
    failed: -1,
  }
}

/** Passes after which currents that answer to voltages count as beyond what the tree can carry. */
const PASSES = 3000
const SETTLED = 1e-14

/**
 * Voltages of a tree for the currents that drives draw at its buses. Currents are summed towards the sources and voltages
 * handed outwards; each converter and each load of constant power is answered in closed form, on the branch of the higher
 * voltage, for what the others draw. From open circuit every pass lowers the voltages, so that what they come to rest at is
 * the state at the higher voltages.
 */
export function settle(model: SupplyModel, drawn: Float64Array, state: SupplyState): void {
  const { order, above, sourceOf: of, sources, resistance, path, converters, steady, power, conductance } = model
  const { volts, inputVolts, runAmps, outAmps, sourceAmps, powerAmps, limits } = state
  const n = order.length
  state.failed = -1
  for (let k = 0; k < n; k++) {
    const i = order[k] as number
    const up = above[i] as number
    const open = up === -1 ? (sources[of[i] as number] as SourceModel).openVoltage : (volts[up] as number)
    inputVolts[i] = open
    volts[i] = converters[i]?.outputVoltage ?? open
    runAmps[i] = 0
    powerAmps[i] = 0
    limits[i] = "none"
  }
  let before = Number.POSITIVE_INFINITY
  for (let pass = 0; pass < PASSES; pass++) {
    let moved = 0
    for (let i = 0; i < n; i++) outAmps[i] = (drawn[i] as number) + (steady[i] as number)
    sourceAmps.fill(0)
    for (let k = n - 1; k >= 0; k--) {
      const i = order[k] as number
      let amps = (outAmps[i] as number) + (volts[i] as number) * (conductance[i] as number)
      const watts = power[i] as number
      if (watts > 0) {
        // what the others leave of the voltage, behind the resistance up to here
        const r = converters[i] ? 0 : (path[i] as number)
        const alone = (volts[i] as number) + r * (powerAmps[i] as number)
        const under = alone * alone - 4 * r * watts
        if (under < 0) {
          state.failed = i
          limits[i] = "too-much-power"
          return
        }
        powerAmps[i] = (2 * watts) / (alone + Math.sqrt(under))
        amps += powerAmps[i] as number
      }
      outAmps[i] = amps
      const spec = converters[i]
      let taken = amps
      if (spec) {
        const r = path[i] as number
        const source = { sourceVoltage: (inputVolts[i] as number) + r * (runAmps[i] as number), sourceResistance: r }
        const point = converterOutput(spec, source, amps)
        if (point === null) {
          state.failed = i
          limits[i] = "no-input"
          return
        }
        taken = point.inputCurrent
        moved = Math.max(moved, Math.abs(point.outputVoltage - (volts[i] as number)))
        volts[i] = point.outputVoltage
        limits[i] = point.limitedBy
      }
      runAmps[i] = taken
      const up = above[i] as number
      if (up === -1) sourceAmps[of[i] as number] = (sourceAmps[of[i] as number] as number) + taken
      else outAmps[up] = (outAmps[up] as number) + taken
    }
    for (let k = 0; k < n; k++) {
      const i = order[k] as number
      const up = above[i] as number
      const s = of[i] as number
      const { openVoltage, resistance: inside } = sources[s] as SourceModel
      const from = up === -1 ? openVoltage - inside * (sourceAmps[s] as number) : (volts[up] as number)
      const input = from - (resistance[i] as number) * (runAmps[i] as number)
      moved = Math.max(moved, Math.abs(input - (inputVolts[i] as number)))
      inputVolts[i] = input
      if (!converters[i]) volts[i] = input
    }
    // without currents that answer to voltages a second pass changes nothing
    if (!model.coupled && pass >= 1) break
    if (moved <= SETTLED * 100 || (moved >= before && moved < 1e-11)) break
    if (pass === PASSES - 1) {
      state.failed = order[n - 1] as number
      limits[state.failed] = "too-much-power"
      return
    }
    before = moved
  }
  for (let k = 0; k < n; k++) {
    const i = order[k] as number
    const { currentLimit } = sources[of[i] as number] as SourceModel
    if (currentLimit !== null && (sourceAmps[of[i] as number] as number) > currentLimit * (1 + 1e-12)) {
      volts[i] = 0
      limits[i] = "source-current"
    } else if (limits[i] === "none") {
      const up = above[i] as number
      if (up !== -1) limits[i] = limits[up] as Limit
    }
  }
}
