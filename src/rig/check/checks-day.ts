// Checks of the day on one charge: its energy, and whether the sources may fly.
import { airTravel, chemistries, runtime } from "../../pack/index.js"
import { formatQuantity } from "../../quantity/index.js"
import type { Source } from "../../solver/index.js"
import { feedOf, rideOf, type Situation } from "../run/situation.js"
import { solveRide } from "../run/solve-ride.js"
import type { RigSi } from "../whole/faults.js"
import { asked, blocked, type Found, lacking, type RigCheck } from "./check.js"
import type { Judged, Run } from "./conditions.js"
import { RIDDEN } from "./paths.js"
import { directSource, sourceNameOf, unsummed } from "./power-tree.js"

type PowerSi = NonNullable<RigSi["power"]>
type SourceSi = PowerSi["sources"][number]

interface Moves {
  readonly energy: number
  readonly time: number
}

const known = new WeakMap<Situation, Map<string, Moves>>()

/** Energy that a source gives for one out and back of each motion that hangs on it, each alone, and the time that takes. */
function movesOf(rig: Judged, source: string): Moves {
  const stated = rig.situations[0] as Situation
  const before = known.get(stated) ?? new Map<string, Moves>()
  known.set(stated, before)
  const moves = before.get(source) ?? ridden(rig, source)
  before.set(source, moves)
  return moves
}

function ridden(rig: Judged, source: string): Moves {
  const power = rig.rig.power as PowerSi
  // what draws at rest is counted over the whole day
  const quiet: RigSi = { ...rig.rig, power: { ...power, loads: [] } }
  const at = { ...(rig.situations[0] as Judged["situations"][number]), rig: quiet }
  let [energy, time] = [0, 0]
  rig.motions.forEach((_, i) => {
    if (sourceNameOf(power, rig.rig.motions[i]?.bus ?? null) !== source) return
    for (const way of [1, -1] as const) {
      const { totals } = solveRide(rideOf(at, i, way, feedOf(at, i, undefined, false)), 1)
      energy += totals.source
      time += totals.time
    }
  })
  return { energy, time }
}

/** Voltage of a cell at which the day ends: its own cut-off, or where a converter right behind the cells gives up before. */
function cutOffOf(power: PowerSi, source: Extract<SourceSi, { readonly type: "cells" }>): number {
  const inputs = power.buses.flatMap((bus) =>
    bus.converter && directSource(power, bus)?.name === source.name ? [bus.converter.minInputVoltage / source.series] : [],
  )
  return Math.max(chemistries[source.chemistry].cellCutOffVoltage, ...inputs)
}

const airSource: Source = { title: "Air travel rules, read on the day that alula/pack airTravel names", verified: "practice" }

/** Whether a source may fly: a bank and cells on a cable are spares. */
function flight(source: SourceSi) {
  if (source.type === "mains-supply") return null
  if (source.type === "bank") return { input: { type: "lithium-ion" as const, energy: source.energy, carriedAs: "power-bank" as const } }
  const { cellNominalVoltage, lithiumIon } = chemistries[source.chemistry]
  const nominalVoltage = source.series * cellNominalVoltage
  const capacity = source.parallel * source.cellCapacity
  const carriedAs = "spare" as const
  if (source.chemistry === "lead") return { input: { type: "lead" as const, nominalVoltage, capacity, carriedAs } }
  return { input: { type: lithiumIon ? ("lithium-ion" as const) : ("dry" as const), energy: nominalVoltage * capacity, carriedAs } }
}

/** Checks of the day. */
export const dayChecks: readonly RigCheck[] = [
  {
    id: "day-energy",
    title: "energy for the day",
    severity: "function",
    reads: [...RIDDEN, "day.hours", "day.moves", "power.sources[].cellCapacity", "power.sources[].energy"],
    worsens: { "day.moves": "up", "day.reserve": "up", "power.sources[].cellCapacity": "down", "power.sources[].energy": "down" },
    find: (rig) => {
      const { power, day } = rig.rig
      if (!power) return []
      return power.sources.flatMap((source): Found[] => {
        if (source.type === "mains-supply") return []
        const { hours, moves } = day
        const why = unsummed(rig)
        if (why) return [{ subject: source.name, result: why }]
        if (hours === null)
          return [{ subject: source.name, result: lacking("day.hours", "Nothing says how long the rig is out on one charge.") }]
        const driven = rig.rig.motions.flatMap((motion, i) => (sourceNameOf(power, motion.bus) === source.name ? [i] : []))
        if (driven.length && moves === null)
          return [{ subject: source.name, result: lacking("day.moves", "Nothing says how often its motions go out and back.") }]
        const stands = driven.find((i) => (rig.runs[i] as readonly Run[]).some((run) => run.stop))
        if (stands !== undefined) {
          const motion = rig.rig.motions[stands]?.name ?? ""
          return [{ subject: source.name, result: blocked(`${motion} is stopped on its way: see there first.`, "passes", motion) }]
        }
        const times = moves ?? 0
        const { energy, time } = movesOf(rig, source.name)
        const s = power.sources.indexOf(source)
        const rest = (rig.resting?.sourceAmps[s] ?? 0) as number
        const voltage = source.type === "cells" ? source.series * chemistries[source.chemistry].cellNominalVoltage : source.voltage
        const moving = times * energy
        const still = rest * voltage * hours
        const needed = moving + still
        const text = `${times} times out and back take ${formatQuantity("energy", moving)}, what draws all day ${formatQuantity("energy", still)}`
        if (times * time > hours)
          return [
            {
              subject: source.name,
              result: {
                relation: "at-most",
                kind: "time",
                value: times * time,
                limit: hours,
                sentence: `${times} times out and back alone take ${formatQuantity("time", times * time)}; the day has ${formatQuantity("time", hours)}.`,
                condition: "one motion after another",
                source: { title: "the document", verified: "practice" },
              },
            },
          ]
        if (!(needed > 0))
          return [
            { subject: source.name, result: lacking("day.moves", `Nothing draws on ${source.name}: neither moves nor loads are given.`) },
          ]
        if (source.type === "bank")
          return [
            {
              subject: source.name,
              result: {
                relation: "at-most",
                kind: "energy",
                value: needed,
                limit: source.energy * (1 - day.reserve),
                sentence: `${text}; ${source.name} gives ${formatQuantity("energy", source.energy)}, of which ${formatQuantity("ratio", day.reserve, "%")} is kept.`,
                condition: "on one charge",
                source: { title: "the document", verified: "practice" },
              },
            },
          ]
        const cells = {
          series: source.series,
          parallel: source.parallel,
          chemistry: source.chemistry,
          cellCapacity: source.cellCapacity,
          cellResistance: source.cellResistance,
          interconnectResistance: source.extraResistance,
          cellCutOffVoltage: cutOffOf(power, source),
          cellTemperature: Math.min(source.temperature, day.coldest ?? source.temperature),
        }
        const pattern = [{ name: "the day", duration: hours, power: needed / hours }]
        return [
          {
            subject: source.name,
            result: asked(runtime, { ...cells, pattern }, "from full, at the coldest stated", (out) => ({
              relation: "at-least",
              kind: "time",
              value: out.runtime * (1 - day.reserve),
              limit: hours,
              sentence: `${text}: fully charged ${source.name} lasts ${formatQuantity("time", out.runtime)}, ${formatQuantity("ratio", day.reserve, "%")} kept in reserve.`,
              condition: "from full, at the coldest stated",
              source: { title: "alula/pack runtime", verified: "practice" },
            })),
          },
        ]
      })
    },
  },
  {
    id: "flight",
    title: "may fly",
    severity: "function",
    reads: [
      "day.flies",
      "power.sources[].name",
      "power.sources[].type",
      "power.sources[].chemistry",
      "power.sources[].series",
      "power.sources[].parallel",
      "power.sources[].cellCapacity",
      "power.sources[].energy",
    ],
    worsens: { "power.sources[].cellCapacity": "up", "power.sources[].energy": "up" },
    find: (rig) => {
      const { power, day } = rig.rig
      if (!power || !day.flies) return []
      return power.sources.flatMap((source): Found[] => {
        const asks = flight(source)
        if (!asks) return []
        return [
          {
            subject: source.name,
            result: asked(airTravel, asks.input, "carried as a spare, in the cabin", (out) => ({
              relation: "rule",
              kind: "energy",
              value: out.energy,
              limit: null,
              permitted: out.rule === "free" && out.withinMaxCount,
              sentence: out.verdict,
              condition: "carried as a spare, in the cabin",
              source: airSource,
            })),
          },
        ]
      })
    },
  },
]
