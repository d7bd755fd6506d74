import type { Current, Length, Power, Ratio, Resistance, Temperature, Voltage } from "../../quantity/index.js"
import type { ConductorDescription } from "../conductor.js"

/** A battery or supply of a {@link HarnessInput}. */
export interface HarnessSource {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node at the positive pole [text of 1 to 100 characters] */
  positive: string
  /** Node at the negative pole [text of 1 to 100 characters] */
  negative: string
  /** Open-circuit voltage [E_s; 10 mV to 1000 V] */
  sourceVoltage: Voltage
  /** Internal resistance [R_s; 0 to 1000 Ω; default 0] */
  sourceResistance?: Resistance
}

/** One conductor between two nodes; out and back are two wires. */
export interface HarnessWire extends ConductorDescription {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node at one end. [text of 1 to 100 characters] */
  from: string
  /** Node at the other end. [text of 1 to 100 characters] */
  to: string
  /** Length of this conductor. [L; 0 to 1000 m] */
  length: Length
  /** Conductor temperature [T; −50 to 200 °C; default 20 °C] */
  conductorTemperature?: Temperature
}

/** A plug, terminal or splice between two nodes. */
export interface HarnessContact {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node on one side. [text of 1 to 100 characters] */
  from: string
  /** Node on the other side. [text of 1 to 100 characters] */
  to: string
  /** Contact resistance [R_k; 0 to 100 Ω; default 5 mΩ or default 10 mΩ] */
  resistance?: Resistance
  /** Rated current [I_k; 0.1 mA to 1000 A; optional] */
  ratedCurrent?: Current | null
}

/** A switch between two nodes. */
export interface HarnessSwitch extends HarnessContact {
  /** Whether it is closed. [yes or no; default yes] */
  closed?: boolean
}

/** A fuse between two nodes. */
export interface HarnessFuse {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node on one side. [text of 1 to 100 characters] */
  from: string
  /** Node on the other side. [text of 1 to 100 characters] */
  to: string
  /** Rated current [I_f; 0.1 mA to 1000 A] */
  fuseRating: Current
  /** Cold resistance from its sheet. [R_f; 0 to 100 Ω; default 5 mΩ] */
  resistance?: Resistance
  /** Resistance at rated current over the cold one. [k_f; 1 to 10; default 1.4] */
  hotFactor?: number
}

/** A load that draws a current whatever its voltage (an actuator at a given force, an LED driver). */
export interface HarnessCurrentLoad {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node at its positive side. [text of 1 to 100 characters] */
  from: string
  /** Node at its return side. [text of 1 to 100 characters] */
  to: string
  /** Current drawn. [I_1; 0 to 1000 A] */
  current: Current
}

/** A load of constant resistance (a heater, a filament). */
export interface HarnessResistanceLoad {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node at its positive side. [text of 1 to 100 characters] */
  from: string
  /** Node at its return side. [text of 1 to 100 characters] */
  to: string
  /** Resistance [R_1; 1 mΩ to 10000 kΩ] */
  resistance: Resistance
}

/** A load of constant power (a converter, a sound amplifier at steady level). */
export interface HarnessPowerLoad {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** Node at its positive side. [text of 1 to 100 characters] */
  from: string
  /** Node at its return side. [text of 1 to 100 characters] */
  to: string
  /** Power drawn. [P_1; 0 to 100 kW] */
  power: Power
}

/** Input of {@link harness}: nodes are named by what is connected to them. */
export interface HarnessInput {
  /** Batteries and supplies [list of 1 to 100] */
  sources: readonly HarnessSource[]
  /** Conductors. [list of 0 to 1000; default none] */
  wires?: readonly HarnessWire[]
  /** Plugs, terminals and splices. [list of 0 to 1000; default none] */
  contacts?: readonly HarnessContact[]
  /** Switches [list of 0 to 1000; default none] */
  switches?: readonly HarnessSwitch[]
  /** Fuses [list of 0 to 1000; default none] */
  fuses?: readonly HarnessFuse[]
  /** Loads of constant current [list of 0 to 1000; default none] */
  currentLoads?: readonly HarnessCurrentLoad[]
  /** Loads of constant resistance [list of 0 to 1000; default none] */
  resistanceLoads?: readonly HarnessResistanceLoad[]
  /** Loads of constant power [list of 0 to 1000; default none] */
  powerLoads?: readonly HarnessPowerLoad[]
  /** Part of their power that all loads of constant power draw: lights dimmed, amplifiers turned down. [s_p; 0 to 1; default 1] */
  powerShare?: Ratio
  /** Node that voltages are counted from; the first source's negative pole when left out. [text of 1 to 100 characters; optional] */
  ground?: string | null
}

/** Voltage of a node. */
export interface HarnessNode {
  /** Name [text] */
  readonly name: string
  /** Against the ground node; null where nothing ties it to that node. [V_n; V] */
  readonly voltage: number | null
}

/** State of one wire, contact, closed switch or fuse. */
export interface HarnessBranch {
  /** Name [text] */
  readonly name: string
  /** `wire`, `contact`, `switch` or `fuse`. [text] */
  readonly type: string
  /** From node [text] */
  readonly from: string
  /** To node [text] */
  readonly to: string
  /** Resistance [Ω] */
  readonly resistance: number
  /** Current [A] */
  readonly current: number
  /** Voltage drop [V] */
  readonly drop: number
  /** Heat [W] */
  readonly heat: number
}

/** State of one load. */
export interface HarnessLoad {
  /** Name [text] */
  readonly name: string
  /** `current`, `resistance` or `power`. [text] */
  readonly type: string
  /** Whether a source reaches it. [yes or no] */
  readonly fed: boolean
  /** Voltage [V_l; V] */
  readonly voltage: number
  /** Current [I_l; A] */
  readonly current: number
  /** Power [W] */
  readonly power: number
  /** Voltage of its return side against ground: what signals between loads are shifted by. [V] */
  readonly returnVoltage: number
}

/** State of one source. */
export interface HarnessSupply {
  /** Name [text] */
  readonly name: string
  /** Open-circuit voltage [V] */
  readonly sourceVoltage: number
  /** Current it gives; negative where it is being fed. [I_s; A] */
  readonly current: number
  /** Heat inside [W] */
  readonly heat: number
}

/** Result of {@link harness}. */
export interface Harness {
  /** Nodes [list] */
  readonly nodes: readonly HarnessNode[]
  /** Sources [list] */
  readonly sources: readonly HarnessSupply[]
  /** Wires, contacts, switches, fuses [list] */
  readonly branches: readonly HarnessBranch[]
  /** Loads [list] */
  readonly loads: readonly HarnessLoad[]
  /** Power of all sources' open-circuit voltages. [P_s; W] */
  readonly sourcePower: number
  /** Power of all loads. [P_l; W] */
  readonly loadPower: number
  /** Heat in wires [P_w; W] */
  readonly wireHeat: number
  /** Heat in contacts, switches, fuses [P_c; W] */
  readonly contactHeat: number
  /** Heat inside the sources [P_i; W] */
  readonly sourceHeat: number
  /** Lowest voltage at any load. [V_low; V] */
  readonly minLoadVoltage: number
  /** Largest difference between the return sides of loads, the ground node included. [U_r; V] */
  readonly maxReturnShift: number
  /** Contact, switch or fuse that heats most; null where there is none. [text] */
  readonly hottestContact: string | null
  /** Heat in that contact [P_k; W] */
  readonly maxContactHeat: number | null
  /** Iterations [number] */
  readonly iterations: number
  /** Maximum error of Kirchhoff's laws, relative [number] */
  readonly residual: number
}

/** Reasons for which {@link harness} refuses. */
export type HarnessRefusal = "insufficient-power" | "insufficient-voltage" | "loads-in-series" | "reversed" | "short-circuit"

/** Hazards and limits of validity that go with an answer of {@link harness}. */
export type HarnessCaution =
  | "burns"
  | "fumes"
  | "fuse-above-wire"
  | "fuse-near-rating"
  | "fuse-overloaded"
  | "hot-connector"
  | "load-off"
  | "reversed-load"
  | "source-fed-back"
  | "thin-wire"
  | "touch-voltage"
  | "unfused-wire"
  | "warm-connector"
  | "wire-burns"
  | "wire-overloaded"
