// What bungee takes and gives back.
import type { Force, Length, Ratio } from "../../quantity/index.js"
import type { SiOf, Transmits } from "../../solver/index.js"

/** One reading of an elastic cord, stretched slowly. */
export interface CordReading {
  /** How much longer it is than slack, against its slack length. [e_k; 0.1 % to 10] */
  elongation: Ratio
  /** Force [F_k; 0 to 100 kN] */
  force: Force
}

/** Input of {@link bungee}. */
export interface BungeeInput {
  /** Slack length [L_0; 1 mm to 100 m] */
  slackLength: Length
  /** Length to which it is stretched, in use. [L; 1 mm to 100 m] */
  length: Length
  /** Force of one cord by elongation, as measured or as its maker states it, from the smallest on. [list of 1 to 40] */
  readings: readonly CordReading[]
  /** Cords side by side [N; whole 1 to 100; default 1] */
  cords?: number
  /** Share of the energy put in that does not come back. [h; 0 to 95 %; optional] */
  lossShare?: Ratio | null
  /** Elongation that its maker allows in use. [e_m; 1 % to 10; default 100 %] */
  elongationLimit?: Ratio
}

/** Result of {@link bungee}. */
export interface Bungee {
  /** A cord never pushes: `pull-only`. [text] */
  readonly transmits: Transmits
  /** Elongation [e; as a fraction] */
  readonly elongation: number
  /** Force, loading [F; N] */
  readonly force: number
  /** Force while it is let back; null without a loss. [F_b; N] */
  readonly returningForce: number | null
  /** Stiffness there [k; N/m] */
  readonly stiffness: number
  /** Energy put in [W; J] */
  readonly storedEnergy: number
  /** Energy given back; null without a loss. [W_b; J] */
  readonly returnedEnergy: number | null
  /** Length allowed [L_m; m] */
  readonly lengthLimit: number
  /** Elongation against what is allowed [u; as a fraction] */
  readonly utilisation: number
}

/** Why {@link bungee} can refuse. */
export type BungeeRefusal = "beyond-curve"

/** Hazards and limits of validity that go with an answer of {@link bungee}. */
export type BungeeCaution = "stored-energy" | "ages" | "loss-unknown" | "over-stretched"

export type Si = SiOf<BungeeInput>
