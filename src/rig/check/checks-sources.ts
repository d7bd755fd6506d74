// Checks of sources, converters and what must keep running on them, with everything drawing at once.
import { dischargeLimitFactor, openCircuitVoltage } from "../../pack/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { MOTORS, PORTABLE_CELLS } from "../sources.js"
import { type Found, lacking, type RigCheck } from "./check.js"
import type { Run, Supplied } from "./conditions.js"
import { POSED, RIDDEN, SUPPLIED } from "./paths.js"
import { type BusSi, directSource, givesUp, onBuses, over, rangeOf, sheet, unsummed } from "./power-tree.js"

const amps = (i: number) => formatQuantity("current", i)
const volts = (v: number) => formatQuantity("voltage", v)

/** Checks of sources, converters and controllers. */
export const sourceChecks: readonly RigCheck[] = [
  {
    id: "supply-carries",
    title: "carries everything at once",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) => {
      const { power } = rig.rig
      if (!power)
        return rig.motions.map((motion) => ({
          subject: motion.name,
          result: lacking("power", "Nothing says what feeds it: no sources, no buses."),
        }))
      const why = unsummed(rig)
      if (why?.missing) return [{ subject: "power", result: why }]
      const failed = givesUp(rig)
      return [
        {
          subject: failed?.bus ?? "power",
          result: {
            relation: "rule",
            kind: "number",
            value: null,
            limit: null,
            permitted: !failed,
            sentence: failed
              ? `With everything drawing its most at once the supply gives up at ${failed.bus}: take a stronger source, thicker wire or a larger converter, or let the motions run one after another.`
              : "With everything drawing its most at once the supply stands.",
            condition: failed ? failed.condition : "everything at once, under every condition",
            source: commonPractice,
          },
        },
      ]
    },
  },
  {
    id: "source-current",
    title: "current of the source",
    severity: "safety",
    reads: [...RIDDEN, "power.sources[].cellCurrent"],
    worsens: { "power.sources[].cellCurrent": "down" },
    find: (rig) => {
      const { power } = rig.rig
      if (!power) return []
      const why = unsummed(rig)
      return power.sources.map((source, s): Found => {
        if (why) return { subject: source.name, result: why }
        if (source.type !== "cells") {
          const { value, condition } = over(rig, ({ state }) => state.sourceAmps[s] as number)
          return {
            subject: source.name,
            result: {
              relation: "at-most",
              kind: "current",
              value,
              limit: source.currentLimit,
              sentence: `${source.name} gives up to ${amps(value)}; it is made for ${amps(source.currentLimit)}.`,
              condition,
              source: sheet("source"),
            },
          }
        }
        const { cellCurrent, parallel, chemistry } = source
        if (cellCurrent === null)
          return {
            subject: source.name,
            result: lacking(
              `power.sources[${s}].cellCurrent`,
              `Nothing says how much current a cell of ${source.name} may give: up to ${amps(over(rig, ({ state }) => state.sourceAmps[s] as number).value / parallel)} are drawn from each.`,
            ),
          }
        // a cold cell may give a share of its current only: each condition against its own limit
        const limitAt = (supply: Supplied) => {
          const cells = supply.power.sources[s]
          return cells?.type === "cells" ? cellCurrent * dischargeLimitFactor(chemistry, cells.temperature) : cellCurrent
        }
        const worst = (rig.supplies ?? []).reduce((x, y) =>
          (y.state.sourceAmps[s] as number) / limitAt(y) > (x.state.sourceAmps[s] as number) / limitAt(x) ? y : x,
        )
        const [each, limit] = [(worst.state.sourceAmps[s] as number) / parallel, limitAt(worst)]
        return {
          subject: source.name,
          result: {
            relation: "at-most",
            kind: "current",
            value: each,
            limit,
            sentence: `Each cell of ${source.name} gives up to ${amps(each)}; it is rated for ${amps(cellCurrent)}${limit < cellCurrent ? `, and at its temperature for ${amps(limit)}` : ""}.`,
            condition: `everything at once, ${worst.condition}`,
            source: PORTABLE_CELLS,
          },
        }
      })
    },
  },
  {
    id: "returned-current",
    title: "current that comes back",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) => {
      const { power } = rig.rig
      if (!power) return []
      return rig.motions.flatMap((motion, i): Found[] => {
        const back = Math.min(...(rig.runs[i] as readonly Run[]).map((run) => run.quick?.minCurrent ?? 0))
        const bus = power.buses.find((b) => b.name === rig.rig.motions[i]?.bus)
        if (!(back < 0) || !bus) return []
        const source = directSource(power, bus)
        return [
          {
            subject: motion.name,
            result: {
              relation: "rule",
              kind: "current",
              value: motion.drives * back,
              limit: null,
              permitted: source?.type === "cells",
              sentence:
                source?.type === "cells"
                  ? `Where its load drives ${motion.name}, up to ${amps(-motion.drives * back)} come back and charge ${source.name}: not below freezing, and not into full cells.`
                  : `Where its load drives ${motion.name}, up to ${amps(-motion.drives * back)} come back, and nothing on ${bus.name} takes them: the voltage rises until something clamps or breaks. Take gears that lock, a brake resistor or a pack behind the bus.`,
              condition: "where the load drives the motor",
              source: MOTORS,
            },
          },
        ]
      })
    },
  },
  {
    id: "bank-sleep",
    title: "stays awake at rest",
    severity: "function",
    reads: [...POSED, ...SUPPLIED, "power.sources[].sleepCurrent"],
    worsens: { "power.sources[].sleepCurrent": "up" },
    find: (rig) =>
      (rig.rig.power?.sources ?? []).flatMap((source, s): Found[] => {
        if (source.type !== "bank") return []
        const { power } = rig.rig
        if (source.sleepCurrent === null || !power)
          return [
            {
              subject: source.name,
              result: lacking(
                `power.sources[${s}].sleepCurrent`,
                `Nothing says below which current ${source.name} switches itself off: between moves it may go to sleep.`,
              ),
            },
          ]
        const rest = (rig.resting?.sourceAmps[s] ?? 0) as number
        return [
          {
            subject: source.name,
            result: {
              relation: "at-least",
              kind: "current",
              value: rest,
              limit: source.sleepCurrent,
              sentence: `At rest ${amps(rest)} are drawn from ${source.name}, which switches itself off below ${amps(source.sleepCurrent)}.`,
              condition: "at rest, nothing moving",
              source: sheet("bank"),
            },
          },
        ]
      }),
  },
  {
    id: "converter-window",
    title: "input voltage of the converter",
    severity: "safety",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) =>
      onBuses(rig, (bus, i, power) => {
        const { converter } = bus
        if (!converter) return null
        const source = directSource(power, bus)
        const low = over(rig, ({ state }) => state.inputVolts[i] as number, false)
        const high = source ? rangeOf(source).high : over(rig, ({ state }) => state.inputVolts[i] as number).value
        const middle = (converter.minInputVoltage + converter.maxInputVoltage) / 2
        const value = high - middle > middle - low.value ? high : low.value
        return {
          relation: "within",
          kind: "voltage",
          value,
          limit: middle,
          halfWidth: (converter.maxInputVoltage - converter.minInputVoltage) / 2,
          sentence: `The converter of ${bus.name} sees from ${volts(low.value)} under load to ${volts(high)} at rest; it takes ${volts(converter.minInputVoltage)} to ${volts(converter.maxInputVoltage)}.`,
          condition: low.condition,
          source: sheet("converter"),
        }
      }),
  },
  {
    id: "converter-limit",
    title: "converter holds its voltage",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) =>
      onBuses(rig, (bus, i) => {
        const { converter } = bus
        if (!converter) return null
        const { value, condition } = over(rig, ({ state }) => state.volts[i] as number, false)
        // a regulated voltage is exact but for rounding
        const holds = value >= converter.outputVoltage * (1 - 1e-9)
        return {
          relation: "rule",
          kind: "voltage",
          value,
          limit: null,
          permitted: holds,
          sentence: holds
            ? `The converter of ${bus.name} holds its ${volts(converter.outputVoltage)}.`
            : `With everything drawing at once the converter of ${bus.name} falls to ${volts(value)} of its ${volts(converter.outputVoltage)}: a limit of its own or of its source holds it down, and everything on it slows.`,
          condition,
          source: sheet("converter"),
        }
      }),
  },
  {
    id: "over-voltage",
    title: "voltage at the drives",
    severity: "function",
    reads: [
      ...POSED,
      "motions[].bus",
      "power.sources[].name",
      "power.sources[].type",
      "power.sources[].chemistry",
      "power.sources[].series",
      "power.sources[].voltage",
      "power.buses[].name",
      "power.buses[].from",
      "power.buses[].converter",
    ],
    worsens: { "power.sources[].voltage": "up", "power.sources[].series": "up", "power.buses[].converter.outputVoltage": "up" },
    find: (rig) =>
      rig.motions.flatMap((motion, i): Found[] => {
        const { power } = rig.rig
        const bus = power?.buses.find((b) => b.name === rig.rig.motions[i]?.bus)
        if (!power || !bus) return []
        let at: BusSi | undefined = bus
        while (at && !at.converter) at = power.buses.find((b) => b.name === at?.from)
        const source = directSource(power, bus)
        const most = at?.converter
          ? at.converter.outputVoltage
          : source?.type === "cells"
            ? source.series * openCircuitVoltage(source.chemistry, 1)
            : (source?.voltage ?? 0)
        const { ratedVoltage } = motion.drive
        return [
          {
            subject: motion.name,
            result: {
              relation: "at-most",
              kind: "voltage",
              value: most,
              limit: 1.1 * ratedVoltage,
              sentence: `Fresh and without load the supply gives ${volts(most)} to the drives of ${motion.name}, rated ${volts(ratedVoltage)}; up to a tenth more is usual.`,
              condition: "fully charged, without load",
              source: commonPractice,
            },
          },
        ]
      }),
  },
  {
    id: "controller-voltage",
    title: "controller keeps running",
    severity: "function",
    reads: [...RIDDEN, "power.loads[].name", "power.loads[].resetVoltage"],
    worsens: { "power.loads[].resetVoltage": "up" },
    find: (rig) =>
      (rig.rig.power?.loads ?? []).flatMap((load): Found[] => {
        if (load.type !== "controller") return []
        const why = unsummed(rig)
        if (why) return [{ subject: load.name, result: why }]
        const { value, condition } = over(rig, ({ model, state }) => state.volts[model.names.indexOf(load.bus)] as number, false)
        return [
          {
            subject: load.name,
            result: {
              relation: "at-least",
              kind: "voltage",
              value,
              limit: load.resetVoltage,
              sentence: `${load.name} still gets ${volts(value)} with everything drawing at once; below ${volts(load.resetVoltage)} it starts anew.`,
              condition,
              source: sheet("controller"),
            },
          },
        ]
      }),
  },
]
