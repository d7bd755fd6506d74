// A power tree laid out, and its voltages for the currents that the drives set by their efforts.
import type { ConverterSpec, LimitedBy } from "../../converter/index.js"
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

/** The tree at one set of currents; written anew by every call of `settle`. */
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
  /** Demand at each bus and source as it is summed up: I = wants + leans·V. */
  readonly wants: Float64Array
  readonly leans: Float64Array
  readonly sourceWants: Float64Array
  readonly sourceLeans: Float64Array
  /** What holds each bus down, its own or one above it. */
  readonly limits: Limit[]
  /** Largest step of a voltage in the last pass, V. */
  moved: number
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
  /** Whether currents answer to voltages otherwise than in proportion: converters, loads of constant power. */
  readonly bends: boolean
}

/** Resistance of a run both ways, contacts included: wire.voltageDrop's own sum. */
export function runResistance(
  run: Pick<SiOf<SupplyRun>, "length" | "awg" | "area" | "contacts" | "contactResistance" | "temperature">,
): number {
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

/** The part of a tree that hangs on the same source as a bus. */
export function treeOf(tree: SiOf<PowerTree>, bus: string): SiOf<PowerTree> {
  const root = (name: string): string => {
    const up = tree.buses.find((b) => b.name === name)
    return up ? root(up.from) : name
  }
  const source = root(bus)
  const buses = tree.buses.filter((b) => root(b.name) === source)
  const names = buses.map((b) => b.name)
  return { sources: tree.sources.filter((s) => s.name === source), buses, loads: tree.loads.filter((l) => names.includes(l.bus)) }
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
    const limit = sourceLimit(tree, model, i)
    const own = bus.converter.inputCurrentLimit
    return {
      ...bus.converter,
      inputCurrentLimit: parts.limits ? (own === null ? limit : limit === null ? own : Math.min(own, limit)) : null,
      outputCurrentLimit: parts.limits ? bus.converter.outputCurrentLimit : null,
    }
  })
  return {
    ...model,
    converters,
    breaks: tree.buses.map((bus) => bus.converter?.efficiency.map((p) => p.outputCurrent) ?? []),
    bends: model.power.some((p) => p > 0) || converters.some((c) => c !== null),
  }
}

/** What a limited source gives at most holds what a converter takes in from it, whatever plain buses lie between. */
function sourceLimit(
  tree: SiOf<PowerTree>,
  { above, sourceOf: of, sources }: { readonly above: Int32Array; readonly sourceOf: Int32Array; readonly sources: readonly SourceModel[] },
  bus: number,
): number | null {
  for (let up = above[bus] as number; up !== -1; up = above[up] as number) if ((tree.buses[up] as SiOf<Bus>).converter) return null
  return (sources[of[bus] as number] as SourceModel).currentLimit
}

/** A state to be written by `settle`. */
export function supplyState({ names, sources }: Pick<SupplyModel, "names" | "sources">): SupplyState {
  const n = names.length
  return {
    volts: new Float64Array(n),
    inputVolts: new Float64Array(n),
    runAmps: new Float64Array(n),
    outAmps: new Float64Array(n),
    sourceAmps: new Float64Array(sources.length),
    powerAmps: new Float64Array(n),
    wants: new Float64Array(n),
    leans: new Float64Array(n),
    sourceWants: new Float64Array(sources.length),
    sourceLeans: new Float64Array(sources.length),
    limits: new Array<Limit>(n).fill("none"),
    moved: 0,
    failed: -1,
  }
}
