// Checks of the start: do the drives move off from rest against the load at its hardest, and does the supply stand their inrush.
import { startUp } from "../../converter/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { inertiaIn } from "../run/effort-curve.js"
import type { MotionModel } from "../run/motion-model.js"
import { asked, lacking, type RigCheck } from "./check.js"
import { effortKind, onMotions } from "./checks-motion.js"
import type { Judged, Run } from "./conditions.js"
import { type Measured, type NotMade, worstOf } from "./finding.js"
import { RIDDEN } from "./paths.js"
import { type BusSi, type Power, sheet, sourceNameOf } from "./power-tree.js"
import { type StandingStart, standingStart } from "./standing-start.js"

/** Times the hardest load that a drive standing still should give: gusts, cold grease and worn cells come on top. Common practice, no source. */
const START_FACTOR = 1.3

/** A start under one condition: one ride stands for both ways, since what it draws hangs on the feed alone. */
interface Start {
  readonly run: Run
  readonly start: StandingStart
  /** Current of one drive that its load takes, A, and the most that it has to bring up to speed, both on either way. */
  readonly load: number
  readonly inertia: number
}

const found = new WeakMap<readonly Run[], readonly Start[]>()

function startsOf(motion: MotionModel, runs: readonly Run[]): readonly Start[] {
  const known = found.get(runs)
  if (known) return known
  const starts = runs
    .filter((run) => run.way === 1)
    .map((run): Start => {
      const both = runs.filter(({ condition }) => condition === run.condition)
      return {
        run,
        start: standingStart(motion, run.ride.feed),
        load: Math.max(0, ...both.map(({ quick }) => quick?.peakCurrent ?? 0)),
        inertia: Math.max(0, ...both.map(mostInertia)),
      }
    })
  found.set(runs, starts)
  return starts
}

/** Places at which a way is looked at for its inertia. */
const LOOKS = 40

function mostInertia({ ride: { motion, curve } }: Run): number {
  const table = curve?.table
  return table ? Math.max(...Array.from({ length: LOOKS + 1 }, (_, k) => inertiaIn(table, (motion.span * k) / LOOKS))) : 0
}

/** What is missing before a start can be judged, or null. */
function unfed(rig: Judged, motion: MotionModel, i: number): NotMade | null {
  const { power } = rig.rig
  if (!power) return lacking("power", `Nothing says what feeds ${motion.name}: how hard it starts is not known.`)
  if (rig.rig.motions[i]?.bus === null)
    return lacking(`motions[${i}].bus`, `Nothing says which bus feeds ${motion.name}: how hard it starts is not known.`)
  return null
}

const amps = (i: number) => formatQuantity("current", i)

function starts(rig: Judged, motion: MotionModel, i: number, runs: readonly Run[]): Measured | NotMade {
  const lacks = unfed(rig, motion, i)
  if (lacks) return lacks
  const kind = effortKind(motion)
  const weakest = startsOf(motion, runs).reduce((a, b) => (b.start.effort < a.start.effort ? b : a))
  // stopped anywhere, on either way, it has to move off again
  const need = Math.max(0, ...runs.map((run) => run.quick?.peakEffort ?? 0))
  const value = weakest.start.effort
  return {
    relation: "at-least",
    kind,
    value,
    limit: START_FACTOR * need,
    sentence: `Standing still on this supply each drive of ${motion.name} gives ${formatQuantity(kind, value)}; its load takes up to ${formatQuantity(kind, need)}, and ${START_FACTOR} times that is asked for, since gusts, cold grease and worn cells come on top.`,
    condition: `stopped where it is hardest, ${weakest.run.condition}`,
    source: commonPractice,
  }
}

/** Limit of whatever holds the current of a bus: its converter or the nearest one above, or the source. */
function statedLimit(power: Power, named: string): { readonly bus: BusSi; readonly index: number; readonly current: number | null } {
  let bus = power.buses.find((b) => b.name === named) as BusSi
  while (!bus.converter) {
    const above = power.buses.find((b) => b.name === bus.from)
    if (!above) break
    bus = above
  }
  const source = power.sources.find((s) => s.name === sourceNameOf(power, named))
  const current = bus.converter ? bus.converter.outputCurrentLimit : source && source.type !== "cells" ? source.currentLimit : null
  return { bus, index: power.buses.indexOf(bus), current }
}

/** Field by which the document states what turns inside a drive. */
const inertiaField: Readonly<Record<string, string>> = {
  "linear-actuator": "reflectedMass",
  gearmotor: "rotorInertia",
  "hobby-servo": "inertia",
}

/** Buses from one on towards its source, up to the converter or source that holds their voltage. */
function segment(power: Power, named: string): readonly BusSi[] {
  const list: BusSi[] = []
  let bus = power.buses.find((b) => b.name === named)
  while (bus) {
    list.push(bus)
    const { converter, from } = bus
    bus = converter ? undefined : power.buses.find((b) => b.name === from)
  }
  return list
}

/** A controller that starts anew while the drives stand still under current, their voltage `low` where a limit holds it down. */
function resets(power: Power, named: string, run: Run, { state, held }: StandingStart, low: number): Controller | null {
  const { feed } = run.ride
  if (!("model" in feed) || !state) return null
  const root = (name: string) => segment(power, name).at(-1)?.name
  const voltageAt = (name: string): number => {
    const volts = state.volts[feed.model.names.indexOf(name)] as number
    if (!held) return volts
    if (root(name) === root(named)) return Math.min(volts, low)
    // behind a converter of its own, that starves with what feeds it
    const own = segment(power, name).at(-1) as BusSi
    if (!own.converter || !power.buses.some((b) => b.name === own.from)) return volts
    return voltageAt(own.from) < own.converter.minInputVoltage ? 0 : volts
  }
  return (
    power.loads.find(
      (load): load is Controller =>
        load.type === "controller" && feed.model.names.includes(load.bus) && voltageAt(load.bus) < load.resetVoltage,
    ) ?? null
  )
}

type Controller = Extract<Power["loads"][number], { readonly type: "controller" }>

function inrush(rig: Judged, motion: MotionModel, i: number, runs: readonly Run[]): Measured | NotMade {
  const lacks = unfed(rig, motion, i)
  if (lacks) return lacks
  const power = rig.rig.power as Power
  const named = rig.rig.motions[i]?.bus as string
  // a full pack draws the most, a tired one drops the lowest
  return worstOf(startsOf(motion, runs).map((one) => underOne(rig, power, named, motion, i, one))) as Measured | NotMade
}

/** The start under one condition. */
function underOne(rig: Judged, power: Power, named: string, motion: MotionModel, i: number, one: Start): Measured | NotMade {
  const { start } = one
  const { bus, index, current: stated } = statedLimit(power, named)
  // held down, by its own limit or by what the source can bring
  const limit = start.held ? start.current : stated
  if (limit !== null && start.inrush > limit) {
    const type = rig.rig.motions[i]?.drive.type ?? ""
    if (bus.limitAction === null)
      return lacking(
        `power.buses[${index}].limitAction`,
        `Standing still the drives of ${motion.name} would draw ${amps(start.inrush)}, more than the ${amps(limit)} that ${bus.name} gets, and nothing says whether what feeds it holds the current there or switches off.`,
      )
    if (bus.limitAction !== "hold" && motion.drive.inertia === 0)
      return lacking(
        `motions[${i}].drive${inertiaField[type] ? `.${inertiaField[type]}` : ""}`,
        `Standing still the drives of ${motion.name} would draw ${amps(start.inrush)}, more than the ${amps(limit)} at which what feeds ${bus.name} switches off, and nothing says what turns inside the drive: how long the start takes is not known.`,
      )
  }
  return ofStart(power, named, motion, bus, one, limit)
}

/** A start as the domain judges it: any drive is a rotary motor with a back-EMF of 1 V·s/rad in a unit of travel of its own. */
function ofStart(
  power: Power,
  named: string,
  motion: MotionModel,
  bus: BusSi,
  { run, start, load, inertia }: Start,
  limit: number | null,
): Measured | NotMade {
  const { line } = start
  const condition = `standing still, ${run.condition}`
  const input = {
    sourceVoltage: start.openVoltage,
    sourceResistance: start.feedResistance,
    currentLimit: limit,
    limitAction: bus.limitAction ?? "hold",
    onTime: bus.onTime,
    offTime: bus.offTime,
    motors: motion.drives,
    windingResistance: line.windingResistance,
    backEmfConstant: 1,
    inertia: Math.max(inertia / line.backEmfConstant ** 2, LEAST_INERTIA),
    loadTorque: load,
  } as const
  return asked(startUp, input, condition, (out) => {
    const reset = resets(power, named, run, start, out.minVoltage)
    const how = !out.starts
      ? "and never start"
      : out.outcome === "starts"
        ? "and start freely"
        : out.outcome === "starts-after-hiccups"
          ? `and start by jerks, the supply switching off and on ${out.tries} times`
          : "and start only as fast as that limit lets them"
    const held = limit !== null && out.inrushCurrent > limit
    return {
      relation: limit === null ? "rule" : "at-most",
      kind: "current",
      // what is held down flows at the limit
      value: held ? limit : out.inrushCurrent,
      limit,
      permitted: out.starts && reset === null,
      sentence: `Standing still the drives of ${motion.name} would draw ${amps(out.inrushCurrent)}${limit === null ? "" : `, and get at most ${amps(limit)}`}, ${how}.${reset ? ` Meanwhile ${reset.name} falls below ${formatQuantity("voltage", reset.resetVoltage)} and starts anew.` : ""}`,
      condition,
      source: limit === null ? commonPractice : sheet("supply"),
    }
  })
}

/** Smallest inertia that the domain's start takes, kg·m². */
const LEAST_INERTIA = 1e-10

/** Checks of the start of each motion. */
export const startChecks: readonly RigCheck[] = [
  {
    id: "starts",
    title: "starts against its load",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) => onMotions(rig, (motion, i, runs) => starts(rig, motion, i, runs)),
  },
  {
    id: "inrush",
    title: "current at the start",
    severity: "function",
    reads: [
      ...RIDDEN,
      "power.buses[].limitAction",
      "power.buses[].onTime",
      "power.buses[].offTime",
      "power.loads[].name",
      "power.loads[].resetVoltage",
    ],
    worsens: { "power.loads[].resetVoltage": "up" },
    find: (rig) => onMotions(rig, (motion, i, runs) => inrush(rig, motion, i, runs)),
  },
]
