import type { Current, Length, Power, Resistance, Temperature, Voltage } from "../quantity/index.js"
import { formatQuantity } from "../quantity/index.js"
import {
  type Caution,
  caution,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import { areaOf, type ConductorSize, resistance20, sizeFields, sizeIssues, sizeSources, temperatureFactor } from "./conductor.js"
import { chassisCurrent } from "./limits.js"
import { type NetworkState, solveNetwork, type TwoPole } from "./network.js"

/** A battery or supply of a {@link HarnessInput}. */
export interface HarnessSource {
  /** Its name. */
  name: string
  /** Node at its positive pole. */
  positive: string
  /** Node at its negative pole. */
  negative: string
  /** Open-circuit voltage. */
  voltage: Voltage
  /** Internal resistance. */
  resistance?: Resistance
}

/** One conductor between two nodes; out and back are two wires. */
export interface HarnessWire extends ConductorSize {
  /** Its name. */
  name: string
  /** Node at one end. */
  from: string
  /** Node at the other end. */
  to: string
  /** Length of this conductor. */
  length: Length
  /** Conductor temperature. */
  temperature?: Temperature
}

/** A plug, terminal or splice between two nodes. */
export interface HarnessContact {
  /** Its name. */
  name: string
  /** Node on one side. */
  from: string
  /** Node on the other side. */
  to: string
  /** Resistance of the contact. */
  resistance?: Resistance
  /** Current it is rated for. */
  rating?: Current | null
}

/** A switch between two nodes. */
export interface HarnessSwitch extends HarnessContact {
  /** Whether it is closed. */
  closed?: boolean
}

/** A fuse between two nodes. */
export interface HarnessFuse {
  /** Its name. */
  name: string
  /** Node on one side. */
  from: string
  /** Node on the other side. */
  to: string
  /** Rated current. */
  rating: Current
  /** Cold resistance from its sheet. */
  resistance?: Resistance
  /** Resistance at rated current over the cold one. */
  hotFactor?: number
}

/** A load that draws a current whatever its voltage (an actuator at a given force, an LED driver). */
export interface HarnessCurrentLoad {
  /** Its name. */
  name: string
  /** Node at its positive side. */
  from: string
  /** Node at its return side. */
  to: string
  /** Current drawn. */
  current: Current
}

/** A load of constant resistance (a heater, a filament). */
export interface HarnessResistanceLoad {
  /** Its name. */
  name: string
  /** Node at its positive side. */
  from: string
  /** Node at its return side. */
  to: string
  /** Resistance. */
  resistance: Resistance
}

/** A load of constant power (a converter, a sound amplifier at steady level). */
export interface HarnessPowerLoad {
  /** Its name. */
  name: string
  /** Node at its positive side. */
  from: string
  /** Node at its return side. */
  to: string
  /** Power drawn. */
  power: Power
}

/** Input of {@link harness}: nodes are named by what is connected to them. */
export interface HarnessInput {
  /** Batteries and supplies. */
  sources: readonly HarnessSource[]
  /** Conductors. */
  wires?: readonly HarnessWire[]
  /** Plugs, terminals and splices. */
  contacts?: readonly HarnessContact[]
  /** Switches. */
  switches?: readonly HarnessSwitch[]
  /** Fuses. */
  fuses?: readonly HarnessFuse[]
  /** Loads of constant current. */
  currentLoads?: readonly HarnessCurrentLoad[]
  /** Loads of constant resistance. */
  resistanceLoads?: readonly HarnessResistanceLoad[]
  /** Loads of constant power. */
  powerLoads?: readonly HarnessPowerLoad[]
  /** Node that voltages are counted from; the first source's negative pole when left out. */
  ground?: string | null
}

/** Voltage of a node. */
export interface HarnessNode {
  readonly name: string
  /** Against the ground node, V; null where nothing ties it to that node. */
  readonly voltage: number | null
}

/** State of one wire, contact, closed switch or fuse. */
export interface HarnessBranch {
  readonly name: string
  /** `wire`, `contact`, `switch` or `fuse`. */
  readonly type: string
  readonly from: string
  readonly to: string
  /** Its resistance as it is, Ω. */
  readonly resistance: number
  /** Current from `from` to `to`, A. */
  readonly current: number
  /** Voltage lost, V. */
  readonly drop: number
  /** Heat, W. */
  readonly heat: number
}

/** State of one load. */
export interface HarnessLoad {
  readonly name: string
  /** `current`, `resistance` or `power`. */
  readonly type: string
  /** Whether a source reaches it. */
  readonly fed: boolean
  readonly voltage: number
  readonly current: number
  readonly power: number
  /** Voltage of its return side against ground, V: what signals between loads are shifted by. */
  readonly returnVoltage: number
}

/** State of one source. */
export interface HarnessSupply {
  readonly name: string
  /** Open-circuit voltage, V. */
  readonly voltage: number
  /** Current it gives, A; negative where it is being fed. */
  readonly current: number
  /** Heat inside it, W. */
  readonly heat: number
}

/** Result of {@link harness}. */
export interface Harness {
  readonly nodes: readonly HarnessNode[]
  readonly supplies: readonly HarnessSupply[]
  readonly branches: readonly HarnessBranch[]
  readonly loads: readonly HarnessLoad[]
  /** Power of all sources' open-circuit voltages, W. */
  readonly sourcePower: number
  /** Power of all loads, W. */
  readonly loadPower: number
  /** Heat in wires, W. */
  readonly wireHeat: number
  /** Heat in contacts, switches and fuses, W. */
  readonly contactHeat: number
  /** Heat inside the sources, W. */
  readonly sourceHeat: number
  /** Lowest voltage at any load, V. */
  readonly lowestLoadVoltage: number
  /** Largest difference between the return sides of loads, the ground node included, V. */
  readonly returnShift: number
  /** Contact, switch or fuse that heats most; null where there is none. */
  readonly worstContact: string | null
  /** Heat in it, W. */
  readonly worstContactHeat: number | null
  readonly iterations: number
  /** Largest error of Kirchhoff's laws, relative. */
  readonly residual: number
}

type Si = SiOf<HarnessInput>
interface Part {
  readonly name: string
  readonly type: string
  readonly ends: readonly [string, string]
  readonly pole: TwoPole
}

/** Every two-pole of the input in a fixed order: sources, wires, contacts, switches, fuses, loads. */
function partsOf(si: Si): { parts: Part[]; names: string[] } {
  const names: string[] = []
  const node = (name: string) => {
    const known = names.indexOf(name)
    return known >= 0 ? known : names.push(name) - 1
  }
  const parts: Part[] = []
  const add = (type: string, name: string, from: string, to: string, law: Partial<TwoPole>) =>
    parts.push({
      name,
      type,
      ends: [from, to],
      pole: { resistance: 0, emf: 0, current: null, power: null, ...law, from: node(from), to: node(to) },
    })
  for (const s of si.sources) add("source", s.name, s.negative, s.positive, { resistance: s.resistance, emf: s.voltage })
  for (const w of si.wires)
    add("wire", w.name, w.from, w.to, { resistance: resistance20(w) * temperatureFactor(w.metal, w.temperature) * w.length })
  for (const c of si.contacts) add("contact", c.name, c.from, c.to, { resistance: c.resistance })
  for (const c of si.switches) {
    node(c.from)
    node(c.to)
    if (c.closed) add("switch", c.name, c.from, c.to, { resistance: c.resistance })
  }
  for (const f of si.fuses) add("fuse", f.name, f.from, f.to, { resistance: f.resistance * f.hotFactor })
  for (const l of si.currentLoads) add("current", l.name, l.from, l.to, { current: l.current })
  for (const l of si.resistanceLoads) add("resistance", l.name, l.from, l.to, { resistance: l.resistance })
  for (const l of si.powerLoads) add("power", l.name, l.from, l.to, l.power > 0 ? { power: l.power } : { current: 0 })
  return { parts, names }
}

const loadTypes = ["current", "resistance", "power"]
const groundOf = (si: Si) => si.ground ?? (si.sources[0] as Si["sources"][number]).negative

function solve(si: Si): Harness | NoSolution {
  const { parts, names } = partsOf(si)
  const found = solveNetwork(
    names.length,
    parts.map((p) => p.pole),
    names.indexOf(groundOf(si)),
  )
  return "fault" in found ? refused(si, parts, found) : harnessOf(parts, names, found)
}

function refused(si: Si, parts: readonly Part[], found: Exclude<ReturnType<typeof solveNetwork>, NetworkState>): NoSolution {
  const name = (i: number) => `'${(parts[i] as Part).name}'`
  switch (found.fault) {
    case "no-resistance":
      return refuse(
        "no-resistance",
        `The loop closed by ${name(found.branch)} has no resistance: its current is not defined. Give its source, wires or contacts the resistance they have.`,
        0,
      )
    case "in-series":
      return refuse(
        "loads-in-series",
        `Loads ${name(found.branches[0])} and ${name(found.branches[1])} stand in series with nothing between them that fixes the voltage.`,
        0,
      )
    case "no-voltage":
      return refuse("no-voltage", `Load ${name(found.branch)} gets no voltage in its direction: check which way round it is connected.`, 0)
    default: {
      const power = si.powerLoads.reduce((sum, l) => sum + l.power, 0)
      const available = found.scale * power
      const watts = (p: number) => formatQuantity("power", p)
      return refuse(
        "power-beyond-source",
        `The constant-power loads ask for ${watts(power)} together; the greatest power available to them in these proportions is ${watts(available)}, short by ${watts(power - available)}.`,
        power - available,
        { power },
        { power: available, scale: found.scale },
      )
    }
  }
}

function harnessOf(parts: readonly Part[], names: readonly string[], state: NetworkState): Harness {
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
  const states = parts.map((part, i) => ({
    ...part,
    current: state.currents[i] as number,
    drop: state.drops[i] as number,
    fed: state.fed[i] as boolean,
  }))
  const supplies = states
    .filter((s) => s.type === "source")
    .map((s) => ({ name: s.name, voltage: s.pole.emf, current: s.current, heat: s.pole.resistance * s.current ** 2 }))
  const branches = states
    .filter((s) => s.type !== "source" && !loadTypes.includes(s.type))
    .map((s) => ({
      name: s.name,
      type: s.type,
      from: s.ends[0],
      to: s.ends[1],
      resistance: s.pole.resistance,
      current: s.current,
      drop: s.pole.resistance * s.current,
      heat: s.pole.resistance * s.current ** 2,
    }))
  const loads = states
    .filter((s) => loadTypes.includes(s.type))
    .map((s) => ({
      name: s.name,
      type: s.type,
      fed: s.fed,
      voltage: s.drop,
      current: s.fed ? s.current : 0,
      power: s.fed ? s.drop * s.current : 0,
      returnVoltage: state.voltages[s.pole.to] ?? 0,
    }))
  const contacts = branches.filter((b) => b.type !== "wire")
  const worst = contacts.reduce<HarnessBranch | null>((a, b) => (a === null || b.heat > a.heat ? b : a), null)
  const returns = loads.map((l) => l.returnVoltage)
  return {
    nodes: names.map((name, i) => ({ name, voltage: state.voltages[i] as number | null })),
    supplies,
    branches,
    loads,
    sourcePower: sum(supplies.map((s) => s.voltage * s.current)),
    loadPower: sum(loads.map((l) => l.power)),
    wireHeat: sum(branches.filter((b) => b.type === "wire").map((b) => b.heat)),
    contactHeat: sum(contacts.map((b) => b.heat)),
    sourceHeat: sum(supplies.map((s) => s.heat)),
    lowestLoadVoltage: Math.min(...loads.map((l) => l.voltage)),
    returnShift: Math.max(0, ...returns) - Math.min(0, ...returns),
    worstContact: worst?.name ?? null,
    worstContactHeat: worst?.heat ?? null,
    iterations: state.iterations,
    residual: state.residual,
  }
}

/** First wire that a source's positive pole reaches without passing a fuse or a load. */
function unfusedWire(si: Si): string | null {
  const reached = new Set(si.sources.map((s) => s.positive))
  const joints = [...si.contacts, ...si.switches]
  for (let grown = true; grown; ) {
    grown = false
    for (const { from, to } of joints)
      if (reached.has(from) !== reached.has(to)) {
        reached.add(from).add(to)
        grown = true
      }
  }
  return si.wires.find((w) => (reached.has(w.from) || reached.has(w.to)) && w.length > 0.18)?.name ?? null
}

function cautions(si: Si, out: Harness): Caution[] {
  const found: Caution[] = []
  const unfused = unfusedWire(si)
  if (unfused !== null)
    found.push(
      caution(
        "unfused-wire",
        "warning",
        `Wire '${unfused}' leaves a source with no fuse ahead of it: a short in it burns along the wearer's body. Put the fuse within 18 cm of the positive pole, and have a qualified person check the build.`,
        "ABYC E-11, 2018, clause 11.10.1 (overcurrent protection within 7 in of the source; from memory)",
      ),
    )
  const current = (a: number) => formatQuantity("current", a)
  const branch = (name: string) => out.branches.find((b) => b.name === name)
  for (const fuse of si.fuses) {
    const carried = Math.abs(branch(fuse.name)?.current ?? 0)
    if (carried > 0.75 * fuse.rating)
      found.push(
        caution(
          carried > fuse.rating ? "fuse-overloaded" : "fuse-near-rating",
          carried > fuse.rating ? "warning" : "caution",
          `Fuse '${fuse.name}' carries ${current(carried)} of its ${current(fuse.rating)}: above 75 % it may open in time, and it may also carry 135 % for many minutes while wires heat.`,
          "Fuse characteristics, Littelfuse Fuseology, 2017 (75 % rerating); ISO 8820-3, 2015 (135 %; from memory)",
        ),
      )
  }
  for (const contact of [...si.contacts, ...si.switches]) {
    const state = branch(contact.name)
    const carried = Math.abs(state?.current ?? 0)
    if (contact.rating !== null && carried > contact.rating)
      found.push(
        caution(
          "hot-connector",
          "warning",
          `Contact '${contact.name}' carries ${current(carried)} and is rated ${current(contact.rating)}: it heats, ages and can burn or melt. Use a larger one.`,
          "IEC 60512-5-2, 2002 (current-temperature derating of connectors; from memory)",
        ),
      )
    else if ((state?.heat ?? 0) > 0.5)
      found.push(
        caution(
          "hot-connector",
          "caution",
          `Contact '${contact.name}' gives off ${formatQuantity("power", state?.heat ?? 0)}: a small connector gets too hot to touch, and its resistance rises as it ages.`,
        ),
      )
  }
  for (const wire of si.wires) {
    const carried = Math.abs(branch(wire.name)?.current ?? 0)
    if (carried > chassisCurrent(areaOf(wire)))
      found.push(
        caution(
          "thin-wire",
          "caution",
          `Wire '${wire.name}' carries ${current(carried)}, more than 700 circular mils per ampere allow (${current(chassisCurrent(areaOf(wire)))}): check its temperature with wireHeating before it lies in a bundle or under padding.`,
          "Handbook of Electronic Tables and Formulas (700 circular mils per ampere)",
        ),
      )
  }
  for (const s of out.supplies)
    if (s.current < -1e-9)
      found.push(
        caution(
          "source-fed-back",
          "warning",
          `Source '${s.name}' is being fed ${current(-s.current)} by another: lithium cells charged this way have no charger watching them. Never join unequal packs directly.`,
          "IEC 62133-2, 2017 (charging of lithium cells within stated limits; from memory)",
        ),
      )
  for (const l of out.loads)
    if (!l.fed)
      found.push(caution("load-off", "note", `Load '${l.name}' has no closed path to a source: it is off.`, "Kirchhoff's current law"))
  for (const l of out.loads)
    if (l.fed && l.voltage < 0 && l.type !== "resistance")
      found.push(
        caution(
          "reversed-load",
          "warning",
          `Load '${l.name}' sees ${formatQuantity("voltage", l.voltage)}: its current cannot flow this way.`,
          "Kirchhoff's voltage law",
        ),
      )
  return found
}

function check(si: Si): Issue[] {
  const lists = ["sources", "wires", "contacts", "switches", "fuses", "currentLoads", "resistanceLoads", "powerLoads"] as const
  const seen = new Set<string>()
  const found: Issue[] = []
  for (const list of lists)
    si[list].forEach((item, i) => {
      if (seen.has(item.name)) found.push(inconsistent([list, i, "name"], `'${item.name}' again`, "a name of its own"))
      seen.add(item.name)
      const [a, b] = "positive" in item ? [item.positive, item.negative] : [item.from, item.to]
      if (a === b) found.push(inconsistent([list, i, "positive" in item ? "negative" : "to"], `'${b}' at both ends`, "another node"))
    })
  si.wires.forEach((wire, i) => {
    for (const { path, received, expected } of sizeIssues(wire)) found.push(inconsistent(["wires", i, ...path], received, expected))
  })
  if (si.currentLoads.length + si.resistanceLoads.length + si.powerLoads.length === 0)
    found.push(inconsistent(["currentLoads"], "no load in any list", "at least one load"))
  if (si.ground !== null && !partsOf(si).names.includes(si.ground))
    found.push(inconsistent(["ground"], `'${si.ground}'`, "a node that something is connected to"))
  return found
}

const text = (label: string) => ({ kind: "text", label }) as const
const ends = { name: text("name"), from: text("from node"), to: text("to node") }
const contactFields = {
  ...ends,
  resistance: {
    kind: "resistance",
    symbol: "R_k",
    label: "contact resistance",
    min: 0,
    max: 100,
    typical: ["1 mohm", "50 mohm"],
    default: "5 mohm",
  },
  rating: { kind: "current", symbol: "I_k", label: "rated current", above: 0, max: 1000, typical: [1, 20], default: null },
} as const

/** Heats of contacts, switches and fuses in the order of the result. */
const contactList = (out: Harness, what: "resistance" | "current") => out.branches.filter((b) => b.type !== "wire").map((b) => b[what])
const wireList = (out: Harness, what: "resistance" | "current") => out.branches.filter((b) => b.type === "wire").map((b) => b[what])

/**
 * Voltages, currents and losses of a whole harness, looped ones too.
 *
 * Formula: Kirchhoff's laws. At every node Σ I = 0; around every loop Σ (E − R·I) = Σ V_load. A spanning
 * tree of the smallest resistances leaves one unknown current for each loop; loads of constant power
 * add V·I = P and are solved by Newton's method from the unloaded state, which reaches the root at the
 * higher voltage. E are the sources' open-circuit voltages (V) and R the resistances (Ω): inside the
 * sources (default 0), of wires (length, size, temperature), contacts (default 5 mΩ), closed switches
 * (default 10 mΩ) and fuses (cold resistance, default 5 mΩ, times 1.4 hot). Voltages count from `ground`
 * (default: the first source's negative pole). Loads that no source reaches are off. Valid for steady
 * direct current.
 *
 * Sources: G. Kirchhoff, 1845; L. O. Chua, P.-M. Lin, Computer-Aided Analysis of Electronic Circuits,
 * 1975, chapter 4 (loop analysis by tree and links; from memory).
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `power-beyond-source` naming the greatest power available, `no-resistance`,
 * `loads-in-series` or `no-voltage`
 * @example
 * ```ts
 * import { harness } from 'alula/wire'
 * const net = harness({
 *   sources: [{ name: 'pack', positive: 'p', negative: '0', voltage: '12.6 V', resistance: '60 mohm' }],
 *   fuses: [{ name: 'fuse', from: 'p', to: 'f', rating: '7.5 A' }],
 *   wires: [
 *     { name: 'out', from: 'f', to: 'a', length: '1.2 m', awg: 20 },
 *     { name: 'back', from: 'b', to: '0', length: '1.2 m', awg: 20 },
 *   ],
 *   currentLoads: [{ name: 'left wing', from: 'a', to: 'b', current: '2 A' }],
 *   powerLoads: [{ name: 'lantern', from: 'a', to: 'b', power: '6 W' }],
 * })
 * net.lowestLoadVoltage // => 12.23
 * net.returnShift // => 0.09954
 * ```
 */
export const harness: Solver<HarnessInput, Harness> = /* @__PURE__ */ solver<HarnessInput, Harness>({
  name: "harness",
  title: "Voltages, currents and losses of a harness",
  input: {
    sources: {
      kind: "list",
      label: "batteries and supplies",
      min: 1,
      max: 100,
      of: {
        kind: "group",
        label: "source",
        fields: {
          name: text("name"),
          positive: text("node at the positive pole"),
          negative: text("node at the negative pole"),
          voltage: { kind: "voltage", symbol: "E_s", label: "open-circuit voltage", above: 0, max: 1000, typical: [3, 24] },
          resistance: {
            kind: "resistance",
            symbol: "R_s",
            label: "internal resistance",
            min: 0,
            max: 1000,
            typical: ["10 mohm", "300 mohm"],
            default: 0,
          },
        },
      },
    },
    wires: {
      kind: "list",
      label: "wires",
      max: 1000,
      default: [],
      of: {
        kind: "group",
        label: "wire",
        fields: {
          ...ends,
          ...sizeFields,
          length: { kind: "length", symbol: "L", label: "length", min: 0, max: 1000, typical: [0.1, 5] },
          temperature: {
            kind: "temperature",
            symbol: "T",
            label: "conductor temperature",
            min: -50,
            max: 200,
            typical: [-10, 70],
            default: 20,
          },
        },
      },
    },
    contacts: { kind: "list", label: "contacts", max: 1000, default: [], of: { kind: "group", label: "contact", fields: contactFields } },
    switches: {
      kind: "list",
      label: "switches",
      max: 1000,
      default: [],
      of: {
        kind: "group",
        label: "switch",
        fields: {
          ...contactFields,
          resistance: { ...contactFields.resistance, default: "10 mohm" },
          closed: { kind: "flag", label: "closed", default: true },
        },
      },
    },
    fuses: {
      kind: "list",
      label: "fuses",
      max: 1000,
      default: [],
      of: {
        kind: "group",
        label: "fuse",
        fields: {
          ...ends,
          rating: { kind: "current", symbol: "I_f", label: "rated current", above: 0, max: 1000, typical: [1, 20] },
          resistance: {
            kind: "resistance",
            symbol: "R_f",
            label: "cold resistance",
            min: 0,
            max: 100,
            typical: ["2 mohm", "100 mohm"],
            default: "5 mohm",
          },
          hotFactor: {
            kind: "number",
            symbol: "k_f",
            label: "hot over cold resistance",
            min: 1,
            max: 5,
            typical: [1.2, 1.6],
            default: 1.4,
          },
        },
      },
    },
    currentLoads: {
      kind: "list",
      label: "loads of constant current",
      max: 1000,
      default: [],
      of: {
        kind: "group",
        label: "load",
        fields: { ...ends, current: { kind: "current", symbol: "I_1", label: "current", min: 0, max: 1000, typical: [0.1, 5] } },
      },
    },
    resistanceLoads: {
      kind: "list",
      label: "loads of constant resistance",
      max: 1000,
      default: [],
      of: {
        kind: "group",
        label: "load",
        fields: {
          ...ends,
          resistance: { kind: "resistance", symbol: "R_1", label: "resistance", min: "1 mohm", max: 1e7, typical: [2, 100] },
        },
      },
    },
    powerLoads: {
      kind: "list",
      label: "loads of constant power",
      max: 1000,
      default: [],
      of: {
        kind: "group",
        label: "load",
        fields: { ...ends, power: { kind: "power", symbol: "P_1", label: "power", min: 0, max: 1e5, typical: [0.5, 15] } },
      },
    },
    ground: { kind: "text", label: "node that voltages are counted from", default: null },
  },
  output: {
    nodes: {
      kind: "list",
      label: "nodes",
      of: { kind: "group", label: "node", fields: { name: text("name"), voltage: { kind: "voltage", symbol: "V_n", label: "voltage" } } },
    },
    supplies: {
      kind: "list",
      label: "sources",
      of: {
        kind: "group",
        label: "source",
        fields: {
          name: text("name"),
          voltage: { kind: "voltage", label: "open-circuit voltage" },
          current: { kind: "current", symbol: "I_s", label: "current given" },
          heat: { kind: "power", label: "heat inside" },
        },
      },
    },
    branches: {
      kind: "list",
      label: "wires, contacts, switches, fuses",
      of: {
        kind: "group",
        label: "branch",
        fields: {
          name: text("name"),
          type: text("type"),
          from: text("from node"),
          to: text("to node"),
          resistance: { kind: "resistance", label: "resistance" },
          current: { kind: "current", label: "current" },
          drop: { kind: "voltage", label: "voltage lost" },
          heat: { kind: "power", label: "heat" },
        },
      },
    },
    loads: {
      kind: "list",
      label: "loads",
      of: {
        kind: "group",
        label: "load",
        fields: {
          name: text("name"),
          type: text("type"),
          fed: { kind: "flag", label: "fed" },
          voltage: { kind: "voltage", symbol: "V_l", label: "voltage" },
          current: { kind: "current", symbol: "I_l", label: "current" },
          power: { kind: "power", label: "power" },
          returnVoltage: { kind: "voltage", label: "return side against ground" },
        },
      },
    },
    sourcePower: { kind: "power", symbol: "P_s", label: "power of the sources" },
    loadPower: { kind: "power", symbol: "P_l", label: "power of the loads" },
    wireHeat: { kind: "power", symbol: "P_w", label: "heat in wires" },
    contactHeat: { kind: "power", symbol: "P_c", label: "heat in contacts, switches, fuses" },
    sourceHeat: { kind: "power", symbol: "P_i", label: "heat inside the sources" },
    lowestLoadVoltage: { kind: "voltage", symbol: "V_low", label: "lowest load voltage" },
    returnShift: { kind: "voltage", symbol: "U_r", label: "greatest shift between returns" },
    worstContact: { kind: "text", label: "contact that heats most" },
    worstContactHeat: { kind: "power", symbol: "P_k", label: "heat in it" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "number", label: "largest error of Kirchhoff's laws, relative" },
  },
  example: {
    sources: [{ name: "pack", positive: "p", negative: "0", voltage: "12.6 V", resistance: "60 mohm" }],
    fuses: [{ name: "fuse", from: "p", to: "f", rating: "7.5 A" }],
    switches: [{ name: "switch", from: "f", to: "s" }],
    wires: [
      { name: "out", from: "s", to: "a", length: "1.2 m", awg: 20 },
      { name: "back", from: "b", to: "0", length: "1.2 m", awg: 20 },
    ],
    contacts: [{ name: "plug", from: "a", to: "c", rating: "3 A" }],
    currentLoads: [{ name: "left wing", from: "a", to: "b", current: "2 A" }],
    powerLoads: [{ name: "lantern", from: "c", to: "b", power: "6 W" }],
    resistanceLoads: [{ name: "hand warmer", from: "c", to: "b", resistance: "30 ohm" }],
  },
  formulae: [
    { solved: "I_s", meaning: "currents of the sources" },
    { solved: "I_l", meaning: "currents of the loads" },
    { solved: "V_l", meaning: "voltages at the loads" },
    {
      symbol: "V_r",
      kind: "voltage",
      meaning: "voltages of the loads' return sides",
      given: (_, out) => out.loads.map((l) => l.returnVoltage),
    },
    { symbol: "n_w", kind: "number", meaning: "wires", given: (_, out) => wireList(out, "current").length },
    {
      symbol: "n_c",
      kind: "number",
      meaning: "contacts, closed switches and fuses",
      given: (_, out) => contactList(out, "current").length,
    },
    { symbol: "R_w", kind: "resistance", meaning: "resistances of the wires", given: (_, out) => wireList(out, "resistance") },
    { symbol: "I_w", kind: "current", meaning: "currents of the wires", given: (_, out) => wireList(out, "current") },
    {
      symbol: "R_c",
      kind: "resistance",
      meaning: "resistances of contacts, closed switches and fuses",
      given: (_, out) => contactList(out, "resistance"),
    },
    { symbol: "I_c", kind: "current", meaning: "their currents", given: (_, out) => contactList(out, "current") },
    { symbol: "P_s", meaning: "power of the sources", is: "sum(E_s .* I_s)" },
    { symbol: "P_i", meaning: "heat inside the sources", is: "sum(R_s .* I_s .* I_s)" },
    { symbol: "P_l", meaning: "power of the loads", is: "sum(V_l .* I_l)" },
    { symbol: "P_w", meaning: "heat in wires", is: "sum(R_w .* I_w .* I_w)", when: "n_w > 0" },
    { symbol: "P_w", meaning: "no wires", is: "0 W", when: "n_w == 0" },
    { symbol: "P_c", meaning: "heat in contacts, switches and fuses", is: "sum(R_c .* I_c .* I_c)", when: "n_c > 0" },
    { symbol: "P_c", meaning: "no contacts", is: "0 W", when: "n_c == 0" },
    { symbol: "P_k", meaning: "heat in the worst of them", is: "max(R_c .* I_c .* I_c)", when: "n_c > 0" },
    { symbol: "V_low", meaning: "lowest load voltage", is: "min(V_l)" },
    { symbol: "U_r", meaning: "greatest shift between returns, ground included", is: "max(max(V_r), 0 V) - min(min(V_r), 0 V)" },
    {
      left: "P_s",
      right: "P_l + P_w + P_c + P_i",
      meaning: "what the sources give is used or lost (Tellegen)",
      source: "B. D. H. Tellegen, 1952",
    },
    { left: "sum(E_s .* I_s)", right: "sum(V_l .* I_l) + P_w + P_c + sum(R_s .* I_s .* I_s)", meaning: "the same, current by current" },
  ],
  sources: [
    ...sizeSources,
    { title: "Kirchhoff's laws", by: "G. Kirchhoff", edition: "1845" },
    { title: "A general network theorem, with applications", by: "B. D. H. Tellegen", edition: "1952" },
  ],
  check,
  solve,
  cautions,
})
