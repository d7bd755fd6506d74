// What goes in and what comes out.
import type { BackEmfConstant, Current, Moment, MomentOfInertia, Resistance, Time, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"

/** What a supply does at its current limit. */
export type LimitAction = "hold" | "hiccup" | "latch"

/** Input of {@link startUp}. */
export interface StartUpInput {
  /** Supply voltage, open circuit [E; 10 mV to 1000 V] */
  sourceVoltage: Voltage
  /** Resistance of supply, wires and contacts. [R_s; 0 to 1000 Ω; default 0] */
  sourceResistance?: Resistance
  /** Current at which the supply limits. [I_lim; 0.1 mA to 1000 A; optional] */
  currentLimit?: Current | null
  /** What it does there: holds the current, switches off and tries again, or stays off. [hold, hiccup or latch; default hold] */
  limitAction?: LimitAction
  /** How long it lets more than its limit flow before it switches off. [t_on; 0 to 100 s; default 10 ms] */
  onTime?: Time
  /** How long it waits before it tries again. [t_off; 0 to 16.6667 min; default 300 ms] */
  offTime?: Time
  /** Motors that start together. [n; whole 1 to 100; default 1] */
  motors?: number
  /** Resistance of one motor's winding. [R_m; 1 mΩ to 10 kΩ] */
  windingResistance: Resistance
  /** Back-EMF of one motor per angular speed; its torque per ampere is the same number. [k; 1e−5 to 100 V s/rad] */
  backEmfConstant: BackEmfConstant
  /** Inertia at one motor's shaft. [J; 0.001 g cm² to 1000 kg m²] */
  inertia: MomentOfInertia
  /** Friction and load torque at one motor's shaft. [T; 0 to 1000 N m] */
  loadTorque: Moment
  /** Voltage below which something else on the supply resets. [V_r; 10 mV to 1000 V; optional] */
  resetVoltage?: Voltage | null
}

/** Result of {@link startUp}. */
export interface StartUp {
  /** Whether the motors ever reach their speed. [yes or no] */
  readonly starts: boolean
  /** `starts`, `starts-limited`, `starts-after-hiccups`, `stalls`, `hiccups` or `latches-off`. [text] */
  readonly outcome: string
  /** Current with the motors still standing and nothing limiting. [I_in; A] */
  readonly inrushCurrent: number
  /** Lowest voltage at the motors during the start; 0 where the supply switches off. [V_low; V] */
  readonly minVoltage: number
  /** Current once they run; null where they never start. [I_run; A] */
  readonly runningCurrent: number | null
  /** Speed once they run; null where the load is too much at any current. [w; rad/s] */
  readonly runningSpeed: number | null
  /** Time constant of the start [tau; s] */
  readonly timeConstant: number
  /** Time for which more than the limit would flow in a free start; null where the limit is never met or never left. [t_o; s] */
  readonly overLimitDuration: number | null
  /** Time to 95 % of the running speed; null where they never start. [t_s; s] */
  readonly startDuration: number | null
  /** How often the supply tries. [N] */
  readonly tries: number
  /** Whether the voltage falls below `resetVoltage`; null without one. [yes or no] */
  readonly resets: boolean | null
}

/** Hazards and limits of validity that go with an answer of {@link startUp}. */
export type StartUpCaution = "brown-out" | "jerks" | "never-starts" | "times-vary" | "touch-voltage"

export type Si = SiOf<StartUpInput>

export interface One {
  /** Resistance as one motor sees it, Ω. */
  readonly resistance: number
  /** Limit as one motor sees it, A. */
  readonly limit: number
  readonly stall: number
  /** Steady current, A. */
  readonly load: number
  readonly tau: number
}
