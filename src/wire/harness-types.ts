import type { Current, Length, Power, Resistance, Temperature, Voltage } from "../quantity/index.js"
import type { ConductorSize } from "./conductor.js"

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
  /** Name. */
  readonly name: string
  /** Against the ground node, V; null where nothing ties it to that node. */
  readonly voltage: number | null
}

/** State of one wire, contact, closed switch or fuse. */
export interface HarnessBranch {
  /** Name. */
  readonly name: string
  /** `wire`, `contact`, `switch` or `fuse`. */
  readonly type: string
  /** From node. */
  readonly from: string
  /** To node. */
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
  /** Name. */
  readonly name: string
  /** `current`, `resistance` or `power`. */
  readonly type: string
  /** Whether a source reaches it. */
  readonly fed: boolean
  /** Voltage. */
  readonly voltage: number
  /** Current. */
  readonly current: number
  /** Power. */
  readonly power: number
  /** Voltage of its return side against ground, V: what signals between loads are shifted by. */
  readonly returnVoltage: number
}

/** State of one source. */
export interface HarnessSupply {
  /** Name. */
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
  /** Nodes. */
  readonly nodes: readonly HarnessNode[]
  /** Sources. */
  readonly supplies: readonly HarnessSupply[]
  /** Wires, contacts, switches, fuses. */
  readonly branches: readonly HarnessBranch[]
  /** Loads. */
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
  /** Iterations. */
  readonly iterations: number
  /** Largest error of Kirchhoff's laws, relative. */
  readonly residual: number
}
