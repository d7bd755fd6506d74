// Checks of each run of the power tree: wire, fuse and switch, with everything drawing at once.
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { fuseCoordination, wireHeating } from "../../wire/index.js"
import { BLADE_FUSES } from "../sources.js"
import { asked, lacking, type RigCheck } from "./check.js"
import type { Judged } from "./conditions.js"
import { RIDDEN } from "./paths.js"
import { type BusSi, directSource, onBuses, over, type Power, sheet } from "./power-tree.js"

type Run = NonNullable<BusSi["run"]>

const amps = (i: number) => formatQuantity("current", i)

/** Current through a bus's run, at its worst. */
const runCurrent = (rig: Judged, i: number) => over(rig, ({ state }) => state.runAmps[i] as number)

/** Nearest fuse on the way from a bus to its source, before any converter: what protects its run. */
function fuseOf(power: Power, bus: BusSi): { readonly rating: number; readonly bus: BusSi } | null {
  let here: BusSi | undefined = bus
  while (here) {
    if (here.fuseRating !== null) return { rating: here.fuseRating, bus: here }
    const above: BusSi | undefined = power.buses.find((b) => b.name === here?.from)
    here = above?.converter ? undefined : above
  }
  return null
}

const heated = (run: Run, current: number) => ({
  awg: run.awg,
  area: run.area,
  current,
  ambientTemperature: run.ambientTemperature,
  insulationRating: run.insulation,
})

/** What the heat of a wire hangs on beside its current. */
const HEATED = ["power.buses[].run.ambientTemperature", "power.buses[].run.insulation"]

/** Checks of runs, fuses and switches. */
export const runChecks: readonly RigCheck[] = [
  {
    id: "wire-heat",
    title: "temperature of the wire",
    severity: "safety",
    reads: [...RIDDEN, ...HEATED],
    worsens: { "power.buses[].run.insulation": "down" },
    find: (rig) =>
      onBuses(rig, (bus, i) => {
        const { run } = bus
        if (!run) return null
        const { value: current, condition } = runCurrent(rig, i)
        if (run.ambientTemperature >= run.insulation)
          return {
            relation: "at-most",
            kind: "temperature",
            value: run.ambientTemperature,
            limit: run.insulation,
            permitted: false,
            sentence: `The air round the wire to ${bus.name} is at ${formatQuantity("temperature", run.ambientTemperature)} already; its insulation is good to ${formatQuantity("temperature", run.insulation)}.`,
            condition,
            source: sheet("wire"),
          }
        return asked(wireHeating, heated(run, current), condition, (out) => ({
          relation: "at-most",
          kind: "temperature",
          value: out.conductorTemperature,
          limit: run.insulation,
          reference: run.ambientTemperature,
          permitted: out.bears,
          sentence: `If ${amps(current)} flowed on and on, the wire to ${bus.name} would reach ${formatQuantity("temperature", out.conductorTemperature)}; its insulation is good to ${formatQuantity("temperature", run.insulation)}.`,
          condition,
          source: sheet("wire"),
        }))
      }),
  },
  {
    id: "fuse-carries",
    title: "fuse carries the current",
    severity: "function",
    reads: [...RIDDEN, ...HEATED, "power.buses[].fuseRating"],
    worsens: { "power.buses[].fuseRating": "down" },
    find: (rig) =>
      onBuses(rig, (bus, i) => {
        const { run, fuseRating } = bus
        if (!run || fuseRating === null) return null
        const { value: current, condition } = runCurrent(rig, i)
        return asked(fuseCoordination, { ...heated(run, current), fuseRating }, condition, (out) => ({
          relation: "at-least",
          kind: "current",
          value: fuseRating,
          limit: out.minFuseRating,
          sentence: `The fuse of ${bus.name} is ${amps(fuseRating)}; to carry ${amps(current)} for long it takes ${amps(out.minFuseRating)}.`,
          condition,
          source: BLADE_FUSES,
        }))
      }),
  },
  {
    id: "fuse-protects",
    title: "fuse protects the wire",
    severity: "safety",
    reads: [...RIDDEN, ...HEATED, "power.buses[].fuseRating"],
    worsens: { "power.buses[].fuseRating": "up", "power.buses[].run.insulation": "down" },
    find: (rig) =>
      onBuses(rig, (bus, i, power) => {
        const { run } = bus
        if (!run) return null
        const fuse = fuseOf(power, bus)
        if (!fuse)
          return directSource(power, bus)?.type === "cells"
            ? lacking(
                `power.buses[${i}].fuseRating`,
                `No fuse protects the run to ${bus.name}: cells feed a short circuit with hundreds of amperes.`,
              )
            : lacking(
                `power.buses[${i}].fuseRating`,
                `No fuse is named for the run to ${bus.name}; a converter or bank may limit the current, its datasheet must say so.`,
              )
        const { value: current, condition } = runCurrent(rig, i)
        return asked(fuseCoordination, { ...heated(run, current), fuseRating: fuse.rating }, condition, (out) => ({
          relation: "at-most",
          kind: "current",
          value: fuse.rating,
          limit: out.maxFuseRating,
          sentence: `The run to ${bus.name} hangs on a fuse of ${amps(fuse.rating)}${fuse.bus === bus ? "" : ` at ${fuse.bus.name}`}; up to ${amps(out.maxFuseRating)} protect its wire.`,
          condition,
          source: BLADE_FUSES,
        }))
      }),
  },
  {
    id: "switch-current",
    title: "current of the switch",
    severity: "safety",
    reads: [...RIDDEN, "power.buses[].switchRating"],
    worsens: { "power.buses[].switchRating": "down" },
    find: (rig) =>
      onBuses(rig, (bus, i) => {
        if (bus.switchRating === null)
          return bus.switchResistance > 0
            ? lacking(`power.buses[${i}].switchRating`, `Nothing says which direct current the switch of ${bus.name} is rated for.`)
            : null
        const { value, condition } = runCurrent(rig, i)
        return {
          relation: "at-most",
          kind: "current",
          value,
          limit: bus.switchRating,
          sentence: `The switch of ${bus.name} breaks up to ${amps(value)}; it is rated for ${amps(bus.switchRating)} of direct current (a rating for alternating current does not count).`,
          condition,
          source: sheet("switch"),
        }
      }),
  },
  {
    id: "drop",
    title: "voltage taken by the run",
    severity: "function",
    reads: [...RIDDEN, "power.buses[].run.dropLimit"],
    worsens: { "power.buses[].run.dropLimit": "down" },
    find: (rig) =>
      onBuses(rig, (bus, i, power) => {
        const { run } = bus
        if (!run) return null
        const { value, condition } = over(rig, ({ model, state }) => {
          const drop = (state.runAmps[i] as number) * (model.resistance[i] as number)
          return drop / ((state.inputVolts[i] as number) + drop)
        })
        return {
          relation: "at-most",
          kind: "ratio",
          value,
          limit: run.dropLimit,
          sentence: `Wire, contacts, switch and fuse of ${bus.name} take ${formatQuantity("ratio", value, "%")} of the voltage at ${power.sources.some((s) => s.name === bus.from) ? "the source" : bus.from}.`,
          condition,
          source: commonPractice,
        }
      }),
  },
]
