// What motorSwitching takes and gives back.
import type { Capacitance, Current, Energy, Inductance, Resistance, Speed, Time, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { ContactCategory } from "./data.js"

/** What every switch in the motor's path has. */
interface MotorContact {
  /** Contacts of it that the motor's current goes through: two in a reversing switch. [n_c; whole 1 to 4; default 1] */
  contacts?: number
  /** Resistance of one closed contact. [R_c; 0 to 10 Ω] */
  contactResistance: Resistance
  /** Rated current of its category, at direct voltage; a rating for mains says nothing here. [I_r; 1 mA to 1000 A] */
  ratedCurrent: Current
  /** Direct voltage rated for [V_r; 1 to 1000 V] */
  ratedVoltage: Voltage
  /**
   * Utilization category of that rating; DC-12 where its datasheet prints a resistive rating only. [dc-1, dc-3, dc-5,
   * dc-12 or dc-13; default dc-12]
   */
  category?: ContactCategory
}
/** A switch that turns the motor's leads round. */
export interface ReversingSwitch extends MotorContact {
  /** It turns the motor's leads round. */
  type: "reversing-switch"
  /**
   * Whether it can be turned over with the motor still turning; nothing but an interlock or a pause keeps that away.
   * [yes or no; default yes]
   */
  reversesAtSpeed?: boolean
}
/** A switch that the moving part opens at an end of its travel. */
export interface LimitSwitch extends MotorContact {
  /** The moving part opens it at an end of its travel. */
  type: "limit-switch"
  /** Drop of the diode across it, which lets the motor come back from that end; none if left out. [V_d; 0 to 3 V; optional] */
  diodeDrop?: Voltage | null
}
/** A latching button that opens the motor's supply itself. */
export interface EmergencyStopSwitch extends MotorContact {
  /** A latching button that opens the motor's supply itself. */
  type: "emergency-stop"
}
/** A relay or contactor. */
export interface MotorRelay extends MotorContact {
  /** A relay or contactor. */
  type: "relay"
  /** Current of its coil while it is closed, at the supply voltage. [I_c; 0 to 20 A] */
  coilCurrent: Current
  /** Whether its contacts stay as they are when its coil loses power. [yes or no; default no] */
  latching?: boolean
}
/** One switch in a motor's path. */
export type MotorSwitch = ReversingSwitch | LimitSwitch | EmergencyStopSwitch | MotorRelay

/** A driver behind these switches, which loses its supply as they open. */
export interface DriverBehind {
  /** Capacitance across its supply, behind the switches. [C; 1 nF to 100 F] */
  inputCapacitance: Capacitance
  /** Highest supply voltage that it bears. [V_m; 1 to 2000 V] */
  voltageLimit: Voltage
  /** Energy of motion, and of what comes down meanwhile, that the motor may send back as it is slowed. [E_r; 0 to 277.778 Wh; default 0] */
  returnedEnergy?: Energy
  /** Standby current [I_q; 0 to 5 A; default 0] */
  standbyCurrent?: Current
}

/** What moves while somebody wants it stopped. */
export interface StoppedPart {
  /** Speed of the fastest point, such as the tip. [v; 1 mm/s to 50 m/s] */
  tipSpeed: Speed
  /** From the need to stop until the contact opens: seeing it, reaching the button, a relay letting go. [t_1; 0 to 60 s] */
  reactionDuration: Time
  /** From the contact opening until it stands, slowing evenly. [t_2; 0 to 60 s] */
  stoppingDuration: Time
}

/** Input of {@link motorSwitching}. */
export interface MotorSwitchingInput {
  /** Supply voltage [V; 1 to 1000 V] */
  supplyVoltage: Voltage
  /** Running current [I; 1 mA to 1000 A] */
  runningCurrent: Current
  /** Current of the stalled motor at this supply voltage, which is also what it takes from standstill. [I_s; 1 mA to 10000 A] */
  stallCurrent: Current
  /** Inductance of the motor's winding. [L; 0 to 10 H; optional] */
  inductance?: Inductance | null
  /** Current at which a driver or supply in the chain limits; left out where nothing does. [I_l; 1 mA to 10000 A; optional] */
  currentLimit?: Current | null
  /** Switches in one row with the motor. [list of 1 to 12] */
  switches: readonly MotorSwitch[]
  /** Driver behind the switches [group; optional] */
  driver?: DriverBehind | null
  /** What pressing the emergency stop does. [opens-supply, signal-only or none] */
  emergencyStop: "opens-supply" | "signal-only" | "none"
  /**
   * What the motor's leads do while a switch is open: nothing, or they are joined and the motor brakes itself. [coasts
   * or brakes; default coasts]
   */
  whenOpened?: "coasts" | "brakes"
  /** Whether the drive holds its load by itself without power: a gear that locks, a brake, a latch. [yes or no] */
  holdsUnpowered: boolean
  /** What moves [group; optional] */
  moving?: StoppedPart | null
}

/** Why {@link motorSwitching} can refuse. */
export type MotorSwitchingRefusal = "insufficient-voltage"

/** Hazards and limits of validity that go with an answer of {@link motorSwitching}. */
export type MotorSwitchingCaution =
  | "arc-outlasts-rating"
  | "brake-does-not-hold"
  | "closes-on-capacitor"
  | "latching-relay"
  | "limit-diodes"
  | "limit-not-safe"
  | "no-emergency-stop"
  | "over-current"
  | "over-rating"
  | "over-voltage"
  | "pumps-up"
  | "reverses-at-speed"
  | "runs-on"
  | "stop-by-signal"
  | "stop-lets-go"
  | "stuck-at-end"
  | "touch-voltage"
  | "welded-contact"

/** Result of {@link motorSwitching}. */
export interface MotorSwitching {
  /** Resistance of all closed contacts in the motor's path. [R_x; Ω] */
  readonly resistance: number
  /** Drop of the contacts [V_x; V] */
  readonly drop: number
  /** Voltage behind the switches [V_t; V] */
  readonly motorVoltage: number
  /** Drop as the motor comes back from an end through a limit switch's diode, the worst of them; null without diodes. [V_e; V] */
  readonly endDrop: number | null
  /** Heat in the contacts [P; W] */
  readonly heat: number
  /** Current as the motor starts. [I_st; A] */
  readonly startCurrent: number
  /** Current as the motor is reversed at speed; null where no switch can do that. [I_v; A] */
  readonly reversingCurrent: number | null
  /** Largest current that a contact may have to make or break. [I_x; A] */
  readonly switchedCurrent: number
  /** Current round the joined leads as the running motor brakes; null where they stay open. [I_b; A] */
  readonly brakingCurrent: number | null
  /** How fast the motor's current can change; null without an inductance. [tau; s] */
  readonly timeConstant: number | null
  /** Energy of the winding's field, which the arc has to take at least, the supply adding to it; null without an inductance. [W; J] */
  readonly fieldEnergy: number | null
  /** Switched current against what the weakest contact may make and break by its category. [u; as a fraction] */
  readonly utilisation: number
  /** Running current against the smallest rated current. [u_c; as a fraction] */
  readonly carryingUtilisation: number
  /** Supply against the lowest voltage rating [u_V; as a fraction] */
  readonly voltageUtilisation: number
  /** Time constant against the shortest that a contact's category is tried with; null without an inductance. [u_t; as a fraction] */
  readonly arcUtilisation: number | null
  /** Standby power [P_q; W] */
  readonly standbyPower: number
  /** Voltage at the driver after a switch has opened ahead of it; null without a driver. [V_p; V] */
  readonly pumpedVoltage: number | null
  /** How far the fastest point still goes; null where it is not told how fast. [s; m] */
  readonly runOn: number | null
}

export type Si = SiOf<MotorSwitchingInput>
