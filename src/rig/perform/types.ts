// What a performance is asked with, and what it tells.
import type { Angle, Frequency, Ratio, Speed, Time } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Rig, RigDrive, RigMechanism, RigTransmission, Typed } from "../whole/document.js"
import type { RigSi } from "../whole/faults.js"

/** Steps of the wearer. */
export interface StageSteps {
  /** Steps per second [f_s; 1 to 2.8 Hz; default 2 Hz] */
  stepRate?: Frequency
  /** Acceleration of the body up and down against gravity's; left out, that of walking at this rate. [a_s; 0 to 1; optional] */
  shake?: Ratio | null
}

/** A gust that swells and dies away, steady in its direction. */
export interface StageGust {
  /** When it begins [t_g; 0 to 24 h] */
  at: Time
  /** How long it lasts [d_g; 50 ms to 5 min] */
  duration: Time
  /** Wind speed at its height. [v_g; 0 to 40 m/s] */
  windSpeed: Speed
  /** Direction that it comes from, from straight ahead towards the left. [psi_g; −360° to 360°; default 0] */
  from?: Angle
}

/** How a performance is played. */
export interface Stage {
  /** Time that is followed; left out, until everything rests. [t_f; 10 ms to 24 h; optional] */
  duration?: Time | null
  /** Share of the speed with which a motion comes back from its stop. [e_s; 0 to 0.95; default 0] */
  restitution?: Ratio
  /** Time that a controller takes to start anew. [t_k; 10 ms to 5 min; default 2 s] */
  restartTime?: Time
  /** Time in which a ramped driver goes from rest to full voltage. [t_u; 0 to 1 min; default 0.5 s] */
  rampTime?: Time
  /** Steps of the wearer [group; optional] */
  steps?: StageSteps | null
  /** A gust [group; optional] */
  gust?: StageGust | null
}

/** A rig, and how it is played. */
export interface PerformInput<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>
  extends Rig<D, T, M> {
  /** How it is played [group; optional, with a default of its own] */
  stage?: Stage
}

export type StageSi = SiOf<Stage>
export type PerformSi = RigSi & { readonly stage: StageSi }

/** What happened. */
export interface PerformEvent {
  /** Time from the start of the programme. [s] */
  readonly time: number
  /** What kind of thing happened. [text] */
  readonly type: EventType
  /** Motion, bus, source or controller. [text] */
  readonly subject: string
  /** What happened, in a sentence. [text] */
  readonly sentence: string
  /** Fastest tip at a stop, m/s, and the energy that it took; null elsewhere. [m/s] */
  readonly speed: number | null
  /** Energy at the stop [J] */
  readonly energy: number | null
  /** Voltage of its bus, where that is what happened; null elsewhere. [V] */
  readonly voltage: number | null
  /** Current asked of it, where that is what happened; null elsewhere. [A] */
  readonly current: number | null
  /** Place on its way, as a share of its drive's travel; null where none moves. [as a fraction] */
  readonly place: number | null
}

/** Kinds of things that happen. */
export type EventType =
  | "starts"
  | "arrives"
  | "strikes"
  | "stops-short"
  | "slips"
  | "slack"
  | "restarts"
  | "works-again"
  | "overload"
  | "limited"
  | "switches-off"
  | "collapses"
  | "tries-again"
  | "empty"

/** One motion in time; lists go with `times`. */
export interface MotionTrace {
  /** Motion [text] */
  readonly name: string
  /** Way from the start of its drive's travel, as a share of it. [list, each as a fraction] */
  readonly travel: readonly number[]
  /** Rod or shaft of the drive; null for the other kind. [list, each m/s] */
  readonly speed: readonly number[] | null
  /** Speed of the shaft [list, each rad/s] */
  readonly turning: readonly number[] | null
  /** All drives together, as drawn from the bus. [list, each A] */
  readonly current: readonly number[]
  /** Voltage at its drives [list, each V] */
  readonly voltage: readonly number[]
  /** Towards growing travel, at one drive's output. [list, each N] */
  readonly force: readonly number[] | null
  /** Torque of one shaft [list, each N m] */
  readonly torque: readonly number[] | null
  /** Maximum force of one rod [N] */
  readonly peakForce: number | null
  /** Maximum torque of one shaft [N m] */
  readonly peakTorque: number | null
  /** Maximum current of all its drives [A] */
  readonly peakCurrent: number
}

/** One bus in time. */
export interface BusTrace {
  /** Bus [text] */
  readonly name: string
  /** Voltage [list, each V] */
  readonly voltage: readonly number[]
  /** Minimum voltage [V] */
  readonly minVoltage: number
  /** When it was lowest. [s] */
  readonly minTime: number
}

/** One source in time. */
export interface SourceTrace {
  /** Source [text] */
  readonly name: string
  /** Current [list, each A] */
  readonly current: readonly number[]
  /** Maximum current [A] */
  readonly peakCurrent: number
  /** Charge left; null for what is plugged in. [list, each as a fraction] */
  readonly charge: readonly number[] | null
}

/** One step of the programme as it was played. */
export interface PlayedStep {
  /** Motion [text] */
  readonly motion: string
  /** Begins [s] */
  readonly begin: number
  /** From [as a fraction] */
  readonly from: number
  /** To [as a fraction] */
  readonly to: number
  /** Time that it took; null where it did not arrive. [s] */
  readonly duration: number | null
  /** Time that the programme leaves it; null where nothing follows. [s] */
  readonly slot: number | null
  /** Share of its drive's travel where it was at the end of its slot. [as a fraction] */
  readonly reached: number
  /** Time found without inertia; null where that finds it stopped. [s] */
  readonly quasiStatic: number | null
}

/** Where the energy went, J. */
export interface PerformEnergy {
  /** From the sources [J] */
  readonly source: number
  /** Inside the sources [J] */
  readonly insideSource: number
  /** Wires, contacts, switches and fuses [J] */
  readonly wires: number
  /** Converters [J] */
  readonly converters: number
  /** Lights, controllers and other loads [J] */
  readonly loads: number
  /** Drivers and circuits of the drives [J] */
  readonly drivers: number
  /** Windings [J] */
  readonly winding: number
  /** Gears and screw inside the drives [J] */
  readonly drive: number
  /** Friction of transmissions and mechanisms [J] */
  readonly friction: number
  /** Against weights, springs, wind and steps. [J] */
  readonly lifting: number
  /** Taken by the stops [J] */
  readonly stops: number
  /** Still in motion at the end. [J] */
  readonly motion: number
  /** Energy balance error [number] */
  readonly residual: number
}

/** A rig performed. */
export interface Perform {
  /** Time followed [t_all; s] */
  readonly duration: number
  /** Times [list, each s] */
  readonly times: readonly number[]
  /** Motions [list] */
  readonly motions: readonly MotionTrace[]
  /** Buses [list] */
  readonly buses: readonly BusTrace[]
  /** Sources [list] */
  readonly sources: readonly SourceTrace[]
  /** What happens [list] */
  readonly events: readonly PerformEvent[]
  /** Steps of the programme [list] */
  readonly steps: readonly PlayedStep[]
  /** Energy [group] */
  readonly energy: PerformEnergy
  /** How often the state's slope was asked for. [number] */
  readonly evaluations: number
}

/** Reasons for which a performance is not told to its end. */
export type PerformRefusal = "not-followed" | "cannot-close"

/** Hazards that go with a performance. */
export type PerformCaution = "pinch" | "strikes" | "inertia-unknown" | "slack" | "no-supply-stated" | "not-as-slow" | "cells"
