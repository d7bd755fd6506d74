// What a diagnosis is asked and what it tells.
import type { Rig, RigDrive, RigMechanism, RigTransmission, Typed } from "../../rig/index.js"
import type { RigReading } from "./readings.js"

/** Input of the {@link diagnosis} solver. */
export interface DiagnosisInput<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism> {
  /** The rig as planned [group] */
  rig: Rig<D, T, M>
  /** What was read on the built one, one motion moving at a time. [list of 1 to 60] */
  readings: readonly RigReading[]
  /**
   * How far its parts stray from their datasheets, against the usual few per cent: 0.5 for parts that were measured, 2
   * for parts without a datasheet. [k_s; 0.1 to 5; default 1]
   */
  straying?: number
}

/** What readings come to. */
export type DiagnosisOutcome = "as-planned" | "one-fault" | "two-faults" | "unexplained"

/** One explanation of what was read. */
export interface Candidate {
  /** Each fault and its place, as `contact@actuators`; one or two. [list, each text] */
  readonly faults: readonly string[]
  /** In words, with the size each has. [text] */
  readonly explanation: string
  /** How to make sure of it, and how to mend it. [text] */
  readonly todo: string
  /** Size of each fault, SI. [list, each number] */
  readonly sizes: readonly number[]
  /** Sum of squares of what is left unexplained, in uncertainties. [number] */
  readonly misfit: number
  /** Share of builds with exactly this that would read farther off. [as a fraction] */
  readonly chance: number
  /** Share of plausibility among the explanations that fit; 0 where this one does not. [as a fraction] */
  readonly plausibility: number
  /** The same if all faults were met equally often: what the readings alone say. [as a fraction] */
  readonly byReadings: number
  /** What these readings cannot tell it from. [list, each text] */
  readonly sameAs: readonly string[]
}

/** One reading against the plan and the best explanation. */
export interface Departure {
  /** Reading [text] */
  readonly reading: string
  /** Read [text] */
  readonly read: string
  /** Planned [text] */
  readonly planned: string
  /** Best explanation [text] */
  readonly explained: string
  /** How far it is from the best explanation, in uncertainties; 99 where farther. [number] */
  readonly apart: number
}

/** The reading that is expected to tell most for the time it takes. */
export interface NextReading {
  /** Type [text] */
  readonly type: string
  /** What [text] */
  readonly label: string
  /** How [text] */
  readonly how: string
  /** Time it takes, tools at hand. [s] */
  readonly duration: number
  /** Tool [text] */
  readonly tool: string
  /** What it is expected to tell: 1 bit settles an even choice between two. [number] */
  readonly information: number
  /** What the first explanation says it will show. [text] */
  readonly first: string
  /** What the next one says that says otherwise. [text] */
  readonly second: string
}

/** Result of {@link diagnose}. */
export interface Diagnosis {
  /** What it comes to, and what to do next. [text] */
  readonly verdict: string
  /** Whether nothing need be wrong, one fault or two explain the readings, or none that is known. [text] */
  readonly outcome: DiagnosisOutcome
  /** Readings used [n_r] */
  readonly readings: number
  /** Misfit of the rig as planned. [X_0] */
  readonly plannedMisfit: number
  /** Misfit of the best explanation. [X_1] */
  readonly bestMisfit: number
  /** Explanations [list] */
  readonly candidates: readonly Candidate[]
  /** Readings [list] */
  readonly departures: readonly Departure[]
  /** Read next [group] */
  readonly next: NextReading | null
}
