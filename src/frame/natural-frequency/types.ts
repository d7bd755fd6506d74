import type { ForcePerLength, Frequency, Length, LinearDensity, Mass, Ratio, RotationalStiffness } from "../../quantity/index.js"
import type { Band } from "../../solver/index.js"
import type { ConditionInput } from "../condition.js"
import type { SectionInput } from "../section.js"
import type { Stretch } from "./modes.js"

/** A mass at one place. */
export interface MassAlong {
  /** Mass [M_i; 0 to 100 kg] */
  mass: Mass
  /** Distance from the root. [a_i; 0 to 20 m] */
  position: Length
}

/** What keeps a hinged member from turning: a rod, a cable or a servo's arm. */
export interface HoldingActuator {
  /** Force for each length that it gives. [k_a; 10 N/m to 1000000 N/mm] */
  stiffness: ForcePerLength
  /** Lever arm of that force about the hinge. [r_a; 1 mm to 10 m] */
  leverArm: Length
}

/** Input of {@link naturalFrequency}. */
export interface NaturalFrequencyInput extends ConditionInput {
  /** Length from the clamp to the tip. [L; 10 mm to 20 m] */
  length: Length
  /** Cross-section. [group] */
  section: SectionInput
  /** Mass of the member per length, instead of that of material and section. [m_g; 0.01 g/m to 1000 kg/m; optional] */
  massPerLength?: LinearDensity | null
  /** What it carries along its length: skin, wires, lights. [m_a; 0 to 1000 kg/m; default 0] */
  addedMass?: LinearDensity
  /** Mass at the tip [M_t; 0 to 100 kg; default 0] */
  tipMass?: Mass
  /** Masses along the member: lights, servos, joints. [list of 0 to 20; default none] */
  masses?: readonly MassAlong[]
  /** Moment for each angle that hinge or root turns; rigid where left out. [k_t; 0.1 to 1e9 N m/rad; optional] */
  rootTurningStiffness?: RotationalStiffness | null
  /** Force for each length that the root gives across the member; rigid where left out. [k_r; 10 N/m to 1000000 N/mm; optional] */
  rootStiffness?: ForcePerLength | null
  /** What keeps it from turning about its hinge, in series with the root's own turning. [group; optional] */
  actuator?: HoldingActuator | null
  /** Steps per second of the wearer. [f_s; 0.5 to 4 Hz; default 2 Hz] */
  stepRate?: Frequency
  /** Damping ratio [zeta; 0.001 to 0.5; default 0.02] */
  damping?: Ratio
}

/** Result of {@link naturalFrequency}. */
export interface NaturalFrequency {
  /** Mass per length in all, at the light and the heavy end of the material's density. [m_u to m_l; kg/m] */
  readonly massPerLength: Band
  /** Tip mass against the mass along the length, at the heavy end. [mu] */
  readonly massRatio: number
  /** How far the root turns against the member bending, E·I/(k·L); 0 where rigid. [psi_t] */
  readonly rootTurning: number
  /** How far the root sinks against the member bending, E·I/(k·L³); 0 where rigid. [psi_r] */
  readonly rootSinking: number
  /** First root of the frequency equation, β·L, at the light and the heavy end of the density. [x_u to x_1] */
  readonly firstRoot: Band
  /** Second root [x_2] */
  readonly secondRoot: number
  /** Third root [x_3] */
  readonly thirdRoot: number
  /**
   * First frequency: soft and heavy, and stiff and light. The second, the third and the estimate are those of the low
   * end. [f_1 to f_u; Hz]
   */
  readonly frequency: Band
  /** Second frequency [f_2; Hz] */
  readonly secondFrequency: number
  /** Third frequency [f_3; Hz] */
  readonly thirdFrequency: number
  /** First frequency by the spring-and-lump estimate. [f_e; Hz] */
  readonly estimate: number
  /** Low end of the first frequency against the step rate. [r_s] */
  readonly stepRatio: number
  /** How much the shake of a step or its second harmonic is magnified, at the worst frequency in the range. [a_m] */
  readonly amplification: number
  /** Which harmonic of the steps that is. [n_h] */
  readonly harmonic: number
  /** Steps taken to find the roots. [number] */
  readonly iterations: number
  /** What is left of the first frequency equation, per cosh. [number] */
  readonly residual: number
}

/** Reasons for which {@link naturalFrequency} refuses. */
export type NaturalFrequencyRefusal = "too-hot"

/** Hazards and limits of validity that go with an answer of {@link naturalFrequency}. */
export type NaturalFrequencyCaution =
  | "bare"
  | "brittle"
  | "cold-brittle"
  | "creep"
  | "modulus-above-published"
  | "no-material"
  | "rigid-root"
  | "shaken-by-steps"
  | "slower-than-steps"
  | "soft-root"
  | "strength-above-published"
  | "warm-plastic"
  | "welds-weaken"

/** What the kernel found on its way: the shapes of its modes, for the working. */
export interface NaturalFrequencyTrace {
  readonly shapes: Readonly<Record<"x_1" | "x_2" | "x_3" | "x_u", readonly Stretch[]>>
}
