// The first power-up, one safe step at a time, with what a meter should show at each.
import type { Judged } from "../../rig/check/conditions.js"
import { settle } from "../../rig/supply/settle.js"
import { sourceOf, supplyModel, supplyState } from "../../rig/supply/tree.js"
import type { SheetReading, SheetStep } from "./content.js"
import { hasFuse, hasSwitch } from "./wiring.js"

type Power = NonNullable<Judged["rig"]["power"]>

const volts = (where: string, value: number | null): SheetReading => ({ where, quantity: "voltage", value })
const amps = (where: string, value: number | null): SheetReading => ({ where, quantity: "current", value })
const OFF = "a reading is a tenth or more off, anything gets warm, smells or smokes"

/** What meters show on a tree while drives draw so much at its buses. */
function readings(power: Power, drawn: readonly number[]): SheetReading[] {
  const model = supplyModel(power)
  const state = supplyState(model)
  settle(model, Float64Array.from(drawn), state)
  const fails = state.failed >= 0
  return [
    ...model.names.flatMap((name, i) => {
      const held = fails ? null : (state.volts[i] as number)
      return model.converters[i]
        ? [volts(`${name}, converter in`, fails ? null : (state.inputVolts[i] as number)), volts(`${name}, converter out`, held)]
        : [volts(name, held)]
    }),
    ...model.sources.map(({ name }, s) => amps(`out of ${name}`, fails ? null : (state.sourceAmps[s] as number))),
  ]
}

/** Whether a fuse or a switch lies between a bus and its source. */
function isCut(power: Power, name: string): boolean {
  const bus = power.buses.find((b) => b.name === name)
  return bus !== undefined && (hasFuse(bus) || hasSwitch(bus) || isCut(power, bus.from))
}

/** Whether a fuse lies between a bus and its source. */
function isFused(power: Power, name: string): boolean {
  const bus = power.buses.find((b) => b.name === name)
  return bus !== undefined && (hasFuse(bus) || isFused(power, bus.from))
}

/** What each bus gives to drives: those of one set moving, the others standing still. */
function drawn(judged: Judged, moving: readonly number[]): number[] | null {
  const { power, motions } = judged.rig
  const at = (power?.buses ?? []).map(() => 0)
  const stated = judged.conditions[0]?.name
  for (const [i, model] of judged.motions.entries()) {
    const bus = power?.buses.findIndex((b) => b.name === motions[i]?.bus) ?? -1
    if (bus < 0) continue
    const runs = judged.runs[i]?.filter((run) => run.condition === stated) ?? []
    if (moving.includes(i) && runs.some((run) => !run.quick)) return null
    const each = moving.includes(i) ? Math.max(...runs.map((run) => run.quick?.peakCurrent ?? 0)) : model.drive.standbyCurrent
    at[bus] = (at[bus] as number) + model.drives * each
  }
  return at
}

/** Steps of the first power-up; none without a supply. */
export function firstPowerOf(judged: Judged): SheetStep[] {
  const { power, motions } = judged.rig
  if (!power) return []
  const bare: Power = { ...power, loads: [] }
  const nothing = power.buses.map(() => 0)
  const together = judged.situations[0]?.together.filter((set) => set.length > 1) ?? []
  const names = (set: readonly number[]) => set.map((i) => motions[i]?.name ?? "").join(" and ")
  const moved = (title: string, act: string, set: readonly number[]): SheetStep => {
    const loose = set.filter((i) => motions[i]?.bus === null)
    const now = drawn(judged, set)
    return {
      title,
      act: loose.length ? `${act} The document names no bus for ${names(loose)}: its current is in no reading.` : act,
      readings: loose.length ? [] : now ? readings(power, now) : power.sources.map(({ name }) => amps(`out of ${name}`, null)),
      stop: "the current stays above the reading, something binds, a line goes slack or anything comes near a person",
    }
  }
  // all that lies behind a fuse or a switch is dead while both are open
  const dead = new Set(power.buses.filter((bus) => isCut(power, bus.name)).map((bus) => bus.name))
  const apart = readings(bare, nothing).filter((r) => r.quantity === "voltage")
  // a run whose cells or supply meet no fuse on the way to it
  const bareRuns = power.buses.filter((bus) => !isFused(power, bus.name)).map((bus) => bus.name)
  const fuseFirst = bareRuns.length
    ? ` The document names no fuse on the way to ${bareRuns.join(" and ")}: put one at the source, sized for the wire, before anything is connected.`
    : ""
  const sleepy = power.sources.filter((s) => s.type === "bank" && (s.sleepCurrent ?? 0) > 0).map((s) => s.name)
  return [
    {
      title: "No source connected",
      act: `Fuses out, switches off, drives and loads unplugged. Measure the resistance from plus to minus at every bus, with the meter both ways round: it must be open, or rise while a capacitor charges.${fuseFirst}`,
      readings: [],
      stop: "a bus shows a steady low resistance: find the short circuit first",
    },
    {
      title: "The source alone",
      act: "Measure at its plug, nothing connected, red to plus. A negative reading means that the plug is wired the wrong way round.",
      readings: power.sources.map((source) => volts(source.name, sourceOf(source).openVoltage)),
      stop: "the sign is wrong, or the voltage is far from the reading: the readings hold for the charge that the document states",
    },
    {
      title: "Source connected, fuses out, switches off",
      act: "Connect the source and measure at every bus. A bench supply set to the source's voltage, its current limit just above the readings, is the safer source for all that follows.",
      readings: apart.map((r) => (dead.has(r.where.replace(/, converter (in|out)$/, "")) ? { ...r, value: 0 } : r)),
      stop: "a bus that should be dead shows a voltage: something goes round its fuse or switch",
    },
    {
      title: "Fuses in, switches on, nothing connected",
      act:
        "With the switches off put one fuse in after the other, from the source on; then switch on. Set every converter to its voltage now, before anything is behind it. " +
        "Current is measured in line: off, the plus wire opened behind its fuse, the meter in its ampere socket between the two ends, then on. Never touch plus and minus with it: on amperes a meter is a short circuit. Put the lead back to volts after each reading. A clamp meter for direct current, or the bench supply's own, needs no opening." +
        (sleepy.length ? ` With so little drawn ${sleepy.join(" and ")} may go to sleep: wake it before each reading.` : ""),
      readings: readings(bare, nothing),
      stop: OFF,
    },
    {
      title: "Loads connected, drives not",
      act: "Switch off, connect the loads one by one, plus to plus, and switch on after each.",
      readings: readings(power, nothing),
      stop: OFF,
    },
    {
      title: "Drives connected, standing still",
      act: "Switch off, lay the arms down where they can fall no further, connect the drives, keep everybody clear, a second person at the switch. Switch on and move nothing.",
      readings: readings(power, drawn(judged, []) ?? nothing),
      stop: `${OFF}, or a drive moves by itself`,
    },
    ...motions.map((motion, i) =>
      moved(
        `${motion.name}: first move`,
        `A short touch of the switch first: it must go the way it is meant to. Else switch off, wait until all is still, and swap the two leads of each drive that goes the wrong way, between it and its reversing switch or driver: never those that feed the driver, which reversed polarity destroys (a hobby servo is turned round in its controller). Then out and back once, slowly watched, with nobody in reach. The readings are those while it draws most on the way; in the first moment a meter may show more.`,
        [i],
      ),
    ),
    ...together.map((set) =>
      moved(
        `${names(set)} together`,
        "Let them run at once, as they will on stage. The readings are the highest that all can draw together.",
        set,
      ),
    ),
    {
      title: "Stop and power lost",
      act: "Half way, let go of the switch: it must stop. Then put something soft under the arms, hands out of every gap, and cut the power at the main switch, or at the source's plug where there is none. What should stay must stay, what may fall must fall where nobody stands.",
      readings: [],
      stop: "anything runs on, or falls on somebody",
    },
  ]
}
