// Check of motions that may start at the same moment: all their drives stand still under current at once.
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { settle } from "../supply/settle.js"
import { allParts, supplyModel, supplyState } from "../supply/tree.js"
import { blocked, type Found, lacking, type RigCheck } from "./check.js"
import type { Judged } from "./conditions.js"
import { type Measured, type NotMade, worstOf } from "./finding.js"
import { RIDDEN } from "./paths.js"
import { type Power, sheet, sourceNameOf, unsummed } from "./power-tree.js"

const amps = (i: number) => formatQuantity("current", i)
const volts = (v: number) => formatQuantity("voltage", v)

/** Everything that may start at once under one condition. */
interface Start {
  readonly power: Power
  readonly set: readonly number[]
  readonly names: string
  readonly condition: string
}

/** The tree with drives standing still under current in it: a winding is a resistor, what holds a current down a steady draw. */
function standingTree({ rig, motions }: Judged, { power, set }: Start): Power {
  const loads = set.flatMap((i): Power["loads"][number][] => {
    const { drive, drives, name } = motions[i] as Judged["motions"][number]
    const bus = rig.motions[i]?.bus as string
    const stall = drive.circuitCurrent + drive.ratedVoltage / drive.windingResistance
    if (drive.currentLimit !== null && drive.currentLimit < stall)
      return [{ type: "lights", name, bus, current: drives * drive.currentLimit }]
    return [
      { type: "resistive", name, bus, resistance: drive.windingResistance / drives },
      { type: "lights", name: `${name}: circuits`, bus, current: drives * drive.circuitCurrent },
    ]
  })
  return { ...power, loads: [...power.loads, ...loads] }
}

/** A current that something limits, while nothing does. */
interface Limited {
  readonly what: string
  readonly current: number
  readonly limit: number
  /** Bus whose document says what happens at that limit; −1 where none does. */
  readonly bus: number
}

function ofStart(rig: Judged, start: Start): Measured | NotMade | null {
  const { power, set, names, condition } = start
  const tree = standingTree(rig, start)
  const model = supplyModel(tree, { ...allParts, limits: false })
  const drawn = new Float64Array(model.names.length)
  rig.motions.forEach(({ drive, drives }, i) => {
    const bus = model.names.indexOf(rig.rig.motions[i]?.bus ?? "")
    if (bus >= 0 && !set.includes(i)) drawn[bus] = (drawn[bus] as number) + drives * drive.standbyCurrent
  })
  const state = supplyState(model)
  settle(model, drawn, state)
  const common = { condition: `standing still, ${condition}`, source: sheet("supply") }
  const apart = "Let them start one after another, or take a stronger supply."
  if (state.failed >= 0)
    return {
      ...common,
      relation: "rule",
      kind: "current",
      value: null,
      limit: null,
      permitted: false,
      sentence: `Where ${names} start at the same moment the supply gives up at ${model.names[state.failed]}. ${apart}`,
    }
  const limits: Limited[] = [
    ...power.sources.flatMap((source, s): Limited[] =>
      source.type === "cells" || source.currentLimit === null
        ? []
        : [
            {
              what: source.name,
              current: state.sourceAmps[s] as number,
              limit: source.currentLimit,
              bus: power.buses.findIndex((bus) => bus.from === source.name),
            },
          ],
    ),
    ...power.buses.flatMap(({ name, converter }, bus): Limited[] => {
      const of = (current: number, limit: number | null | undefined): Limited[] =>
        limit === null || limit === undefined ? [] : [{ what: `the converter of ${name}`, current, limit, bus }]
      return [
        ...of(state.outAmps[bus] as number, converter?.outputCurrentLimit),
        ...of(state.runAmps[bus] as number, converter?.inputCurrentLimit),
      ]
    }),
  ]
  const currents = limits.map(({ what, current, limit, bus }): Measured | NotMade => {
    const said = `Where ${names} start at the same moment they would draw ${amps(current)} from ${what}, which gives ${amps(limit)}`
    const action = power.buses[bus]?.limitAction ?? null
    if (current > limit && action === null)
      return lacking(`power.buses[${bus}].limitAction`, `${said}, and nothing says what it does then. ${apart}`)
    if (current > limit && action === "hold")
      return blocked(`${said} and holds it there: whether all of them start on that is not known. ${apart}`, "inrush", names)
    return {
      ...common,
      relation: "at-most",
      kind: "current",
      value: current,
      limit,
      sentence: current > limit ? `${said}, and switches off. ${apart}` : `${said}.`,
    }
  })
  const controllers = power.loads.flatMap((load): Measured[] => {
    if (load.type !== "controller") return []
    const value = state.volts[model.names.indexOf(load.bus)] as number
    return [
      {
        ...common,
        relation: "at-least",
        kind: "voltage",
        value,
        limit: load.resetVoltage,
        sentence: `Where ${names} start at the same moment ${load.name} still gets ${volts(value)}; below ${volts(load.resetVoltage)} it starts anew.${value < load.resetVoltage ? ` ${apart}` : ""}`,
        source: value < load.resetVoltage ? sheet("controller") : commonPractice,
      },
    ]
  })
  return worstOf([...currents, ...controllers])
}

/** Sets of motions on one source that may start at once, under every condition. */
function startsOf(rig: Judged): readonly Start[] {
  const found = rig.situations.flatMap(({ rig: at, together }, c) =>
    together.flatMap((set): Start[] => {
      const power = at.power as Power
      const sources = new Set(set.map((i) => sourceNameOf(power, rig.rig.motions[i]?.bus ?? null)))
      return [...sources].flatMap((source): Start[] => {
        const own = set.filter((i) => sourceNameOf(power, rig.rig.motions[i]?.bus ?? null) === source)
        if (own.length < 2) return []
        const names = own.map((i) => rig.motions[i]?.name ?? "")
        const last = names.pop()
        return [{ power, set: own, names: `${names.join(", ")} and ${last}`, condition: rig.conditions[c]?.name ?? "" }]
      })
    }),
  )
  return found
}

/** Check of starts at the same moment. */
export const togetherChecks: readonly RigCheck[] = [
  {
    id: "start-together",
    title: "current when all start together",
    severity: "function",
    reads: [...RIDDEN, "power.buses[].limitAction", "power.loads[].name", "power.loads[].resetVoltage"],
    worsens: { "power.loads[].resetVoltage": "up" },
    find: (rig) => {
      if (!rig.rig.power || rig.rig.motions.length < 2) return []
      const why = unsummed(rig)
      if (why?.missing) return [{ subject: "power", result: why }]
      const starts = startsOf(rig)
      const results = starts.map((start) => ofStart(rig, start)).filter((result) => result !== null)
      const worst = worstOf(results)
      return worst ? [{ subject: "power", result: worst } satisfies Found] : []
    },
  },
]
