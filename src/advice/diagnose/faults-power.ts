// What can be wrong with the power tree.
import type { SiOf } from "../../solver/index.js"
import { type Built, type Power, withEntry } from "./built.js"
import type { FaultRow, Site } from "./fault.js"

type Cells = Extract<Power["sources"][number], { readonly type: "cells" }>
type Limited = Exclude<Power["sources"][number], Cells>
type Bus = Power["buses"][number]
type Converter = NonNullable<Bus["converter"]>

/** Sites at every pack that passes. */
const atCells = (
  passes: (cells: Cells) => boolean,
  change: (cells: Cells, size: number) => Partial<Cells> | null,
  range?: (cells: Cells) => readonly [number, number],
): FaultRow["sites"] =>
  at("sources", (source, i) =>
    source.type === "cells" && passes(source)
      ? {
          at: source.name,
          ...(range ? { range: range(source) } : {}),
          apply(built, size) {
            let fits = true
            const made = withEntry(built, "sources", i, (one) => {
              const changed = one.type === "cells" ? change(one, size) : null
              if (!changed) fits = false
              return { ...one, ...changed } as typeof one
            })
            return fits ? made : null
          },
        }
      : null,
  )

function at<K extends "sources" | "buses" | "loads">(list: K, make: (one: Power[K][number], index: number) => Site | null) {
  return ({ power }: Built): Site[] => ((power?.[list] ?? []) as readonly Power[K][number][]).flatMap((one, i) => make(one, i) ?? [])
}

const atLimited = (change: (one: Limited, size: number) => Partial<Limited>): FaultRow["sites"] =>
  at("sources", (source, i) =>
    source.type === "cells"
      ? null
      : {
          at: source.name,
          apply: (built, size) =>
            withEntry(built, "sources", i, (one) => (one.type === "cells" ? one : ({ ...one, ...change(one, size) } as typeof one))),
        },
  )

const atBus = (passes: (bus: Bus) => boolean, change: (built: Built, index: number, size: number) => Built): FaultRow["sites"] =>
  at("buses", (bus, i) => (passes(bus) ? { at: bus.name, apply: (built, size) => change(built, i, size) } : null))

const atConverter = (
  passes: (converter: Converter) => boolean,
  change: (converter: Converter, size: number) => Partial<SiOf<Converter>>,
): FaultRow["sites"] =>
  atBus(
    (bus) => bus.converter !== null && passes(bus.converter),
    (built, i, size) =>
      withEntry(built, "buses", i, (bus) => ({ ...bus, converter: bus.converter && { ...bus.converter, ...change(bus.converter, size) } })),
  )

const hasRun = (bus: Bus) => bus.run !== null || bus.switchResistance > 0 || bus.fuseResistance > 0 || bus.fuseRating !== null

/** Rows of sources, runs, converters and loads. */
export const powerRows: readonly FaultRow[] = [
  {
    id: "tired-cells",
    label: (name) => `tired cells in ${name}`,
    size: { label: "extra resistance of each cell", kind: "ratio" },
    path: "power.sources[].cellResistance",
    usual: 1.2,
    range: [0, 8],
    prior: 1,
    todo: (name) => `Read the resistance of each cell of ${name}; replace all of them together, never one alone.`,
    sites: atCells(
      () => true,
      (cells, size) => ({ cellResistance: cells.cellResistance * (1 + size) }),
    ),
  },
  {
    id: "low-charge",
    label: (name) => `${name} less charged than planned`,
    size: { label: "charge missing", kind: "ratio" },
    path: "power.sources[].stateOfCharge",
    usual: 0.35,
    range: [0, 1],
    prior: 1,
    todo: (name) => `Charge ${name} fully with its own charger and try again; read its voltage at rest an hour later.`,
    sites: atCells(
      (cells) => cells.stateOfCharge > 0.02,
      (cells, size) => ({ stateOfCharge: Math.max(0, cells.stateOfCharge - size) }),
      (cells) => [0, cells.stateOfCharge],
    ),
  },
  {
    id: "cold-cells",
    label: (name) => `${name} colder than planned`,
    size: { label: "colder by", kind: "degrees" },
    path: "power.sources[].temperature",
    usual: 12,
    range: [0, 45],
    prior: 0.8,
    todo: (name) => `Hold a thermometer to ${name}; carry it close to the body until just before the show.`,
    sites: atCells(
      (cells) => cells.temperature > -18,
      (cells, size) => ({ temperature: Math.max(-20, cells.temperature - size) }),
      (cells) => [0, Math.min(45, cells.temperature + 20)],
    ),
  },
  {
    id: "cell-missing",
    label: (name) => `${name} has a dead cell, or one fewer in series than planned`,
    size: null,
    path: "power.sources[].series",
    usual: 1,
    range: [1, 1],
    prior: 0.3,
    todo: (name) => `Read the voltage of every cell of ${name}: one near 0 V is dead. Take the pack out of use; do not charge it.`,
    sites: atCells(
      (cells) => cells.series > 1,
      (cells) => ({ series: cells.series - 1 }),
    ),
  },
  {
    id: "string-missing",
    label: (name) => `a parallel string of ${name} does not connect`,
    size: null,
    path: "power.sources[].parallel",
    usual: 1,
    range: [1, 1],
    prior: 0.3,
    todo: (name) => `Look at welds and holders of every string of ${name}, the pack disconnected; a string with no current is loose.`,
    sites: atCells(
      (cells) => cells.parallel > 1,
      (cells) => ({ parallel: cells.parallel - 1 }),
    ),
  },
  {
    id: "limit-low",
    label: (name) => `${name} gives less current than stated: low-power mode, wrong socket or lead, or worn`,
    size: { label: "share of its limit that is missing", kind: "ratio" },
    path: "power.sources[].currentLimit",
    usual: 0.4,
    range: [0, 0.9],
    prior: 1.2,
    todo: (name) =>
      `Use the socket of ${name} that is marked for most current with a short thick lead, charge it, and end its low-power mode by its button.`,
    sites: atLimited((one, size) => ({ currentLimit: one.currentLimit * (1 - size) })),
  },
  {
    id: "voltage-low",
    label: (name) => `${name} gives another voltage than stated`,
    size: { label: "voltage missing", kind: "ratio" },
    path: "power.sources[].voltage",
    usual: 0.1,
    range: [-0.4, 0.5],
    prior: 0.5,
    todo: (name) => `Read the voltage of ${name} at rest; set it, or take the supply that the plan names.`,
    sites: atLimited((one, size) => ({ voltage: one.voltage * (1 - size) })),
  },
  {
    id: "asleep",
    label: (name) => `${name} is asleep, off or empty`,
    size: null,
    path: "power.sources[] gives nothing",
    usual: 1,
    range: [1, 1],
    prior: 0.8,
    todo: (name) => `Wake ${name} by its button or charger and read its voltage; a bank that sleeps again needs a small steady load.`,
    sites: at("sources", (source) => ({ at: source.name, apply: (built) => ({ ...built, dead: [...built.dead, source.name] }) })),
  },
  {
    id: "open-circuit",
    label: (name) => `the run to ${name} is open: blown fuse, loose plug, broken wire or switch off`,
    size: null,
    path: "power.buses[].run carries nothing",
    usual: 1,
    range: [1, 1],
    prior: 1.2,
    todo: (name) =>
      `Follow the run to ${name} with a voltmeter from its source on: it is open where the voltage vanishes. A blown fuse has a cause; find it before you replace it by a like one.`,
    sites: at("buses", (bus) => ({ at: bus.name, apply: (built) => ({ ...built, dead: [...built.dead, bus.name] }) })),
  },
  {
    id: "contact",
    label: (name) => `a bad contact in the run to ${name}: crimp, plug, switch or fuse holder`,
    size: { label: "extra resistance", kind: "resistance" },
    path: "power.buses[].switchResistance",
    usual: 0.5,
    range: [0, 6],
    prior: 1.2,
    todo: (name) =>
      `Read the voltage lost across each plug, crimp, switch and fuse on the way to ${name} while it moves; make the one anew that takes most. It is the one that gets warm.`,
    sites: atBus(hasRun, (built, i, size) => {
      const bus = built.power?.buses[i] as Bus
      const made = withEntry(built, "buses", i, (one) => ({ ...one, switchResistance: one.switchResistance + size }))
      return { ...made, contacts: { ...built.contacts, [bus.name]: (built.contacts[bus.name] ?? 0) + size } }
    }),
  },
  {
    id: "thin-wire",
    label: (name) => `the wire to ${name} is thinner or longer than planned`,
    size: { label: "extra resistance of the wire", kind: "ratio" },
    path: "power.buses[].run.length",
    usual: 1.5,
    range: [0, 30],
    prior: 0.7,
    todo: (name) =>
      `Read gauge and length of the wire to ${name}; a wire that is warm all along is too thin. Take the planned gauge, or go one up.`,
    sites: atBus(
      (bus) => bus.run !== null && bus.run.length > 0,
      (built, i, size) =>
        withEntry(built, "buses", i, (one) => ({ ...one, run: one.run && { ...one.run, length: one.run.length * (1 + size) } })),
    ),
  },
  {
    id: "converter-setting",
    label: (name) => `the converter of ${name} is set to another voltage`,
    size: { label: "voltage missing", kind: "ratio" },
    path: "power.buses[].converter.outputVoltage",
    usual: 0.15,
    range: [-0.4, 0.6],
    prior: 1,
    todo: (name) =>
      `Read the converter's output at ${name} at rest, nothing connected that minds; set it to the planned voltage and secure its screw.`,
    sites: atConverter(
      () => true,
      (one, size) => ({ outputVoltage: one.outputVoltage * (1 - size) }),
    ),
  },
  {
    id: "converter-limit",
    label: (name) => `the converter of ${name} comes to its current limit too early`,
    size: { label: "share of its limit that is missing", kind: "ratio" },
    path: "power.buses[].converter.inputCurrentLimit, outputCurrentLimit",
    usual: 0.4,
    range: [0, 0.9],
    prior: 0.8,
    todo: (name) =>
      `Turn the converter of ${name} up to its stated limit, cool it, or take one of a higher rating: modules seldom give for long what is printed on them.`,
    sites: atConverter(
      (one) => one.inputCurrentLimit !== null || one.outputCurrentLimit !== null,
      (one, size) => ({
        inputCurrentLimit: one.inputCurrentLimit && one.inputCurrentLimit * (1 - size),
        outputCurrentLimit: one.outputCurrentLimit && one.outputCurrentLimit * (1 - size),
      }),
    ),
  },
  {
    id: "converter-loss",
    label: (name) => `the converter of ${name} loses more than stated`,
    size: { label: "share of its efficiency that is lost", kind: "ratio" },
    path: "power.buses[].converter.efficiency",
    usual: 0.15,
    range: [0, 0.7],
    prior: 0.6,
    todo: (name) => `Feel the converter of ${name}: it is hot. Take one whose datasheet states the efficiency at this voltage and current.`,
    sites: atConverter(
      () => true,
      (one, size) => ({ efficiency: one.efficiency.map((p) => ({ ...p, efficiency: p.efficiency * (1 - size) })) }),
    ),
  },
  {
    id: "load-heavy",
    label: (name) => `${name} draws more than planned`,
    size: { label: "extra share of what it draws", kind: "ratio" },
    path: "power.loads[].current, power, resistance",
    usual: 1,
    range: [0, 20],
    prior: 0.4,
    todo: (name) => `Unplug ${name} and try again; read its current alone.`,
    sites: at("loads", (load, i) => ({
      at: load.name,
      apply: (built, size) =>
        withEntry(built, "loads", i, (one) =>
          one.type === "constant-power"
            ? { ...one, power: one.power * (1 + size) }
            : one.type === "resistive"
              ? { ...one, resistance: one.resistance / (1 + size) }
              : { ...one, current: one.current * (1 + size) },
        ),
    })),
  },
]
