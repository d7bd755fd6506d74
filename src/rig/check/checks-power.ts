// Checks of the power tree: every source, run, fuse, switch, converter and controller with everything drawing at once.
import { chemistries, openCircuitVoltage } from "../../pack/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice, type Source } from "../../solver/index.js"
import { fuseCoordination, wireHeating } from "../../wire/index.js"
import { BLADE_FUSES, PORTABLE_CELLS } from "../sources.js"
import type { RigSi } from "../whole/faults.js"
import { asked, blocked, type Found, lacking, type RigCheck } from "./check.js"
import type { Judged } from "./conditions.js"
import type { Measured, NotMade } from "./finding.js"

type Power = NonNullable<RigSi["power"]>
type BusSi = Power["buses"][number]
type Run = NonNullable<BusSi["run"]>

const amps = (i: number) => formatQuantity("current", i)
const volts = (v: number) => formatQuantity("voltage", v)
const sheet = (of: string): Source => ({ title: `the ${of}'s datasheet`, verified: "practice" })

/** The worst of a number over the conditions, with the condition's name. */
function over(rig: Judged, of: (supply: NonNullable<Judged["supplies"]>[number]) => number, most = true) {
  let [value, condition] = [most ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, ""]
  for (const supply of rig.supplies ?? []) {
    const here = of(supply)
    if (most ? here > value : here < value) [value, condition] = [here, supply.condition]
  }
  return { value, condition: `everything at once, ${condition}` }
}

/** Whether the supply has a state under every condition. */
const runs = (rig: Judged) => (rig.supplies ?? []).every(({ state }) => state.failed < 0)

const STANDS = "The supply cannot carry everything at once: see there first."

/** A finding for each bus that a question concerns. */
function onBuses(rig: Judged, find: (bus: BusSi, index: number, power: Power) => Measured | NotMade | null): Found[] {
  const { power } = rig.rig
  if (!power) return []
  return power.buses.flatMap((bus, i): Found[] => {
    if (!runs(rig)) return [{ subject: bus.name, result: blocked(STANDS) }]
    const result = find(bus, i, power)
    return result ? [{ subject: bus.name, result }] : []
  })
}

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

/** Lowest and highest voltage of a source over its charge. */
function rangeOf(source: Power["sources"][number]): { readonly low: number; readonly high: number } {
  if (source.type !== "cells") return { low: source.voltage, high: source.voltage }
  const { cellCutOffVoltage, cellFullVoltage } = chemistries[source.chemistry]
  return { low: source.series * cellCutOffVoltage, high: source.series * cellFullVoltage }
}

/** Source that a bus branches from without a converter between; null behind one. */
function directSource(power: Power, bus: BusSi): Power["sources"][number] | null {
  let from = bus.from
  for (let round = 0; round <= power.buses.length; round++) {
    const source = power.sources.find((s) => s.name === from)
    if (source) return source
    const above = power.buses.find((b) => b.name === from)
    if (!above || above.converter) return null
    from = above.from
  }
  return null
}

/** Checks of the power tree. */
export const powerChecks: readonly RigCheck[] = [
  {
    id: "supply-carries",
    title: "carries everything at once",
    severity: "function",
    find: (rig) => {
      const { power } = rig.rig
      if (!power)
        return rig.motions.map((motion) => ({
          subject: motion.name,
          result: lacking("power", "Nothing says what feeds it: no sources, no buses."),
        }))
      const failed = (rig.supplies ?? []).find(
        ({ state }) => state.failed >= 0 || state.limits.some((l) => l === "source-current" || l === "output-current"),
      )
      const at = failed
        ? failed.state.failed >= 0
          ? failed.state.failed
          : failed.state.limits.findIndex((l) => l === "source-current" || l === "output-current")
        : -1
      return [
        {
          subject: at >= 0 ? (failed?.model.names[at] as string) : "power",
          result: {
            relation: "rule",
            kind: "number",
            value: null,
            limit: null,
            permitted: !failed,
            sentence: failed
              ? `With everything drawing its most at once the supply gives up at ${failed.model.names[at]}: take a stronger source, thicker wire or a larger converter, or let the motions run one after another.`
              : "With everything drawing its most at once the supply stands.",
            condition: failed ? failed.condition : "everything at once, under every condition",
            source: commonPractice,
          },
        },
      ]
    },
  },
  {
    id: "motion-bus",
    title: "is fed",
    severity: "function",
    find: (rig) =>
      rig.rig.power
        ? rig.rig.motions.flatMap((motion, i): Found[] =>
            motion.bus === null
              ? [
                  {
                    subject: motion.name,
                    result: lacking(
                      `motions[${i}].bus`,
                      `Nothing says which bus feeds ${motion.name}: its current is in no wire, fuse or cell below.`,
                    ),
                  },
                ]
              : [],
          )
        : [],
  },
  {
    id: "source-current",
    title: "current of the source",
    severity: "safety",
    find: (rig) => {
      const { power } = rig.rig
      if (!power) return []
      return power.sources.map((source, s): Found => {
        if (!runs(rig)) return { subject: source.name, result: blocked(STANDS) }
        const { value, condition } = over(rig, ({ state }) => state.sourceAmps[s] as number)
        if (source.type !== "cells")
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
        if (source.cellCurrent === null)
          return {
            subject: source.name,
            result: lacking(
              `power.sources[${s}].cellCurrent`,
              `Nothing says how much current a cell of ${source.name} may give: up to ${amps(value / source.parallel)} are drawn from each.`,
            ),
          }
        const each = value / source.parallel
        return {
          subject: source.name,
          result: {
            relation: "at-most",
            kind: "current",
            value: each,
            limit: source.cellCurrent,
            sentence: `Each cell of ${source.name} gives up to ${amps(each)}; it is rated for ${amps(source.cellCurrent)}.`,
            condition,
            source: PORTABLE_CELLS,
          },
        }
      })
    },
  },
  {
    id: "bank-sleep",
    title: "stays awake at rest",
    severity: "function",
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
    id: "wire-heat",
    title: "temperature of the wire",
    severity: "safety",
    find: (rig) =>
      onBuses(rig, (bus, i) => {
        const { run } = bus
        if (!run) return null
        const { value: current, condition } = runCurrent(rig, i)
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
  {
    id: "converter-window",
    title: "input voltage of the converter",
    severity: "safety",
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
    find: (rig) =>
      (rig.rig.power?.loads ?? []).flatMap((load): Found[] => {
        if (load.type !== "controller") return []
        if (!runs(rig)) return [{ subject: load.name, result: blocked(STANDS) }]
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
