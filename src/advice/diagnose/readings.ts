// What a maker can read on a built rig: a number with a phone, a meter or a scale, or what is plainly seen, heard or felt.
import type { Angle, Current, Force, Length, Ratio, Resistance, Temperature, Time, Voltage } from "../../quantity/index.js"

/** Which motion, and which way it goes. */
export interface OnMotion {
  /** Motion read on; left out, the first one. [text of 1 to 100 characters; optional] */
  motion?: string | null
  /** Way of the motion [out or back; default out] */
  way?: "out" | "back"
}

/** How long a motion takes. */
export interface TimeReading extends OnMotion {
  type: "time"
  /** Time from start to end [t_r; 1 ms to 1 h] */
  value: Time
  /** Uncertainty of the time [st_r; 0.1 ms to 1 h; optional] */
  uncertainty?: Time | null
}

/** Angle between both ends of what the first mechanism of a motion shows. */
export interface SwingReading {
  type: "swing"
  /** Motion read on; left out, the first one. [text of 1 to 100 characters; optional] */
  motion?: string | null
  /** Angle between both ends [th_r; 0 to 36000°] */
  value: Angle
  /** Uncertainty of the angle [sth_r; 0.001° to 360°; optional] */
  uncertainty?: Angle | null
}

/** By how much an array, slide or line gets longer or shorter from end to end. */
export interface ReachReading {
  type: "reach"
  /** Motion read on; left out, the first one. [text of 1 to 100 characters; optional] */
  motion?: string | null
  /** Change of length between both ends [s_r; 0 to 100 m] */
  value: Length
  /** Uncertainty of the length [ss_r; 0.01 mm to 10 m; optional] */
  uncertainty?: Length | null
}

/** When a voltage or current is read, and with which motion. */
export interface WhenPowered extends OnMotion {
  /**
   * Whether the motion runs (its mean), stands still at rest, or is switched on and does not move. [moving, rest or
   * stalled; default moving]
   */
  during?: "moving" | "rest" | "stalled"
}

/** A voltage at a source or bus; at a motion's bus it is that of its drives' terminals. */
export interface VoltageReading extends WhenPowered {
  type: "voltage"
  /** Source or bus read at [text of 1 to 100 characters] */
  at: string
  /** Before the converter of that bus, or behind it. [output or input; default output] */
  side?: "output" | "input"
  /** Voltage [U_r; 0 to 1000 V] */
  value: Voltage
  /** Uncertainty of the voltage [sU_r; 0.01 mV to 100 V; optional] */
  uncertainty?: Voltage | null
}

/** Voltage lost along the run of a bus: one meter held to both ends of it. */
export interface DropReading extends WhenPowered {
  type: "voltage-drop"
  /** Bus that the run leads to [text of 1 to 100 characters] */
  along: string
  /** Voltage lost, both wires together [dU_r; 0 to 1000 V] */
  value: Voltage
  /** Uncertainty of the voltage lost [sdU_r; 0.01 mV to 100 V; optional] */
  uncertainty?: Voltage | null
}

/** A current. */
export interface CurrentReading extends WhenPowered {
  type: "current"
  /** Source or bus whose run it flows through; left out, that of all drives of the motion. [text of 1 to 100 characters; optional] */
  at?: string | null
  /** Current [I_r; 0 to 1000 A] */
  value: Current
  /** Uncertainty of the current [sI_r; 0.01 mA to 100 A; optional] */
  uncertainty?: Current | null
}

/** Pull at the tip of one mechanism, its rod, line or horn taken off, moved slowly by hand with a luggage scale. */
export interface ForceReading extends OnMotion {
  type: "force"
  /** Mechanism pulled at; left out, the first one. [text of 1 to 100 characters; optional] */
  mechanism?: string | null
  /** Place on its way out: 0 is the start, 1 the end. [p_r; 0 to 1; default 0.5] */
  place?: Ratio
  /** Pull, square to the arm [F_r; 0 to 10 kN] */
  value: Force
  /** Uncertainty of the pull [sF_r; 0.1 mN to 1000 N; optional] */
  uncertainty?: Force | null
}

/** Direct-current resistance of one cell, by a cell tester or from two loads. */
export interface CellResistanceReading {
  type: "cell-resistance"
  /** Pack it is in [text of 1 to 100 characters] */
  source: string
  /** Resistance of one cell [Rc_r; 10 µΩ to 100 Ω] */
  value: Resistance
  /** Uncertainty of the resistance [sRc_r; 10 µΩ to 10 Ω; optional] */
  uncertainty?: Resistance | null
}

/** Temperature of the cells. */
export interface CellTemperatureReading {
  type: "cell-temperature"
  /** Pack it is in [text of 1 to 100 characters] */
  source: string
  /** Temperature of the cells [T_r; −40 to 80 °C] */
  value: Temperature
  /** Uncertainty of the temperature, in degrees [sT_r; 0.1 to 20; default 2] */
  uncertainty?: number
}

/** It does not move at all, switched on. */
export interface DoesNotMove extends OnMotion {
  type: "does-not-move"
}

/** It stops on its way. */
export interface StopsAt extends OnMotion {
  type: "stops-at"
  /** Angle covered until it stops [th_s; 0 to 36000°; optional] */
  angle?: Angle | null
  /** Travel of its rod or line until it stops [s_s; 0 to 100 m; optional] */
  stroke?: Length | null
  /** Share of its way until it stops [p_s; 0 to 1; optional] */
  share?: Ratio | null
}

/** It moves off, then the supply switches off. */
export interface SwitchesOff extends OnMotion {
  type: "switches-off"
}

/** One side of a mirrored pair takes longer. */
export interface OneSideSlower extends OnMotion {
  type: "one-side-slower"
  /** By how much; left out, clearly so. [dt_r; 1 ms to 1 h; optional] */
  value?: Time | null
  /** Uncertainty of the difference [sdt_r; 0.1 ms to 1 h; optional] */
  uncertainty?: Time | null
}

/** Fine at home, slow in the cold. */
export interface SlowInTheCold extends OnMotion {
  type: "slow-in-the-cold"
  /** Temperature out there [T_o; −40 to 40 °C] */
  temperature: Temperature
  /** Times as long as at home; left out, clearly longer. [k_t; 0.1 to 100; optional] */
  times?: number | null
}

/** It goes the wrong way, or one of a pair does. */
export interface WrongWay {
  type: "wrong-way"
  /** Motion read on; left out, the first one. [text of 1 to 100 characters; optional] */
  motion?: string | null
  /** What goes the wrong way [all or one-of-a-pair; default all] */
  what?: "all" | "one-of-a-pair"
}

/** A part that gets clearly warmer than it should. */
export interface WarmPart {
  type: "warm"
  /** Part [source, wire, contact, converter or drive] */
  part: "source" | "wire" | "contact" | "converter" | "drive"
  /** Source, bus or motion it belongs to [text of 1 to 100 characters] */
  at: string
}

/** A sound. */
export interface SoundReading {
  type: "sound"
  /** Motion read on; left out, the first one. [text of 1 to 100 characters; optional] */
  motion?: string | null
  /** What is heard [gritty, clicking, squeaking or humming] */
  sound: "gritty" | "clicking" | "squeaking" | "humming"
}

/** One reading. */
export type RigReading =
  | TimeReading
  | SwingReading
  | ReachReading
  | VoltageReading
  | DropReading
  | CurrentReading
  | ForceReading
  | CellResistanceReading
  | CellTemperatureReading
  | DoesNotMove
  | StopsAt
  | SwitchesOff
  | OneSideSlower
  | SlowInTheCold
  | WrongWay
  | WarmPart
  | SoundReading
