// What is wrong with the built rig: the solver, and the verb on a rig.

import type { Rig, Typed } from "../../rig/index.js"
import { FITTING, METERS } from "../../rig/sources.js"
import { exampleRig } from "../../rig/whole/example.js"
import type { RigSi } from "../../rig/whole/faults.js"
import { rigFields } from "../../rig/whole/fields.js"
import {
  type AnyFields,
  type Caution,
  caution,
  type Fields,
  type NoSolution,
  type OutFields,
  type Result,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../../solver/index.js"
import { answer, weigh } from "./answer.js"
import { asPlanned, members } from "./built.js"
import { whitened } from "./chance.js"
import { readingFaults } from "./check.js"
import { faultsOf } from "./faults.js"
import { Asked, motionOf, type ReadingSi, taken } from "./predict.js"
import { readingField } from "./reading-fields.js"
import type { RigReading } from "./readings.js"
import { scaled, strayings } from "./straying.js"
import type { Diagnosis, DiagnosisInput } from "./types.js"
import { type Explanation, taskOf } from "./weigh.js"

export type { Candidate, Departure, Diagnosis, DiagnosisInput, DiagnosisOutcome, NextReading } from "./types.js"

/** Reason for which a diagnosis is refused. */
export type DiagnosisRefusal = "plan-does-not-move"
/** Cautions of a diagnosis. */
export type DiagnosisCaution = "measure-safely" | "plausible-not-proved"

type Input = DiagnosisInput<Typed, Typed, Typed>

interface Trace {
  /** What is left of each reading by the plan and by the best explanation, in uncertainties. */
  readonly byPlan: readonly number[]
  readonly byBest: readonly number[]
}

/** A diagnosis of readings on a rig whose faults have been found. */
export function solve(si: SiOf<Input>, trace?: Partial<Trace>): Diagnosis | NoSolution<DiagnosisRefusal> {
  const rig = si.rig as unknown as RigSi
  const readings = si.readings as readonly ReadingSi[]
  const planned = asPlanned(rig)
  const asked = new Asked(planned)
  for (const reading of readings) {
    const index = motionOf(planned, "motion" in reading ? reading : {})
    for (const way of [1, -1] as const) {
      const { reached } = asked.passage(index, way)
      if (reached < 1)
        return refuse(
          "plan-does-not-move",
          "By its document {motion} itself stops on its way, {shortBy ratio %} of it before the end: nothing read on the built one can be compared with that. Assess the plan first.",
          Math.max(1 - reached, 1e-9),
          {},
          {},
          { motion: rig.motions[index]?.name ?? "" },
        )
    }
  }
  const task = taskOf(planned, taken(readings, planned), scaled(strayings(planned), si.straying), faultsOf(planned))
  const weighed = weigh(task)
  const found = answer(task, weighed)
  if (trace) {
    const rest = (one: Explanation) => [...whitened(task.taken, one.shows, one.noise), ...one.shows.misses]
    Object.assign(trace, { byPlan: rest(weighed.planned), byBest: rest(weighed.best ?? weighed.planned) })
  }
  return found
}

function cautions(): Caution<DiagnosisCaution>[] {
  return [
    caution(
      "measure-safely",
      "warning",
      "Measure on a moving rig with hands, hair and meter leads clear of it, and with somebody at the switch; never bridge or lengthen a fuse to take a reading, and hold nothing switched on that does not move for longer than a second or two.",
      METERS,
    ),
    caution(
      "plausible-not-proved",
      "note",
      "A ranking of known faults, not a proof: look before you buy, and take the reading named if one is. How often each fault is met is common practice, without a source.",
    ),
  ]
}

const output: OutFields<Diagnosis> = {
  verdict: { kind: "text", label: "verdict" },
  outcome: { kind: "text", label: "outcome" },
  readings: { kind: "number", symbol: "n_r", label: "readings used" },
  plannedMisfit: { kind: "number", symbol: "X_0", label: "misfit of the plan" },
  bestMisfit: { kind: "number", symbol: "X_1", label: "misfit of the best explanation" },
  candidates: {
    kind: "list",
    label: "explanations",
    of: {
      kind: "group",
      label: "explanation",
      fields: {
        explanation: { kind: "text", label: "explanation" },
        plausibility: { kind: "ratio", label: "plausibility", unit: "%" },
        byReadings: { kind: "ratio", label: "by the readings alone", unit: "%" },
        chance: { kind: "ratio", label: "share of such builds that read farther off", unit: "%" },
        misfit: { kind: "number", label: "misfit" },
        todo: { kind: "text", label: "what to do" },
        faults: { kind: "list", label: "faults", of: { kind: "text", label: "fault" } },
        sizes: { kind: "list", label: "sizes (SI)", of: { kind: "number", label: "size" } },
        sameAs: { kind: "list", label: "not told from", of: { kind: "text", label: "explanation" } },
      },
    },
  },
  departures: {
    kind: "list",
    label: "readings",
    of: {
      kind: "group",
      label: "reading",
      fields: {
        reading: { kind: "text", label: "reading" },
        read: { kind: "text", label: "read" },
        planned: { kind: "text", label: "planned" },
        explained: { kind: "text", label: "best explanation" },
        apart: { kind: "number", label: "uncertainties apart" },
      },
    },
  },
  next: {
    kind: "group",
    label: "read next",
    fields: {
      type: { kind: "text", label: "type" },
      label: { kind: "text", label: "what" },
      how: { kind: "text", label: "how" },
      tool: { kind: "text", label: "tool" },
      duration: { kind: "time", label: "time it takes", unit: "min" },
      information: { kind: "number", label: "expected information, bits" },
      first: { kind: "text", label: "first explanation says" },
      second: { kind: "text", label: "the next one that differs says" },
    },
  },
}

/**
 * Weighs what can be wrong with a built rig, one fault alone or two together, against what was read on it; the solver behind
 * {@link diagnose}, with one input object.
 *
 * Each row of a table of faults stands for every source, run, converter, load, drive, element and mechanism of the document that
 * can have it, with one size. Its best size gives the lowest X = zᵀz, where z is the difference between readings and what the
 * rig so built would show, whitened by the covariance of tools (with the gain that readings of one tool share) and of good
 * parts that stray. Plausibility is the likelihood with the size integrated out (Laplace), times how often the fault is met.
 * An explanation fits where at least two in a hundred such builds would read farther off (the χ² distribution of X). Where no
 * single fault fits, pairs are tried; a pair is named alone only with two readings to spare. A healthy rig is called faulty
 * only where something wrong is 20 times more likely than nothing, or the plan itself is as good as impossible (1 in 200).
 * Uncertainties, usual sizes and how often faults are met are common practice, no source.
 *
 * Valid for readings taken with one motion moving and all others still, on a rig whose plan itself moves.
 *
 * **Inputs**
 * - `rig`: the rig as planned [group]
 * - `readings`: what was read on the built one [list of 1 to 60]
 * - `straying`: how far parts stray, against the usual [k_s; 0.1 to 5; default 1]
 *
 * **Results**
 *
 * `verdict`: verdict [text]; `outcome`: outcome [text]; `readings`: readings used [n_r]; `plannedMisfit`: misfit of
 * the plan [X_0]; `bestMisfit`: misfit of the best explanation [X_1]; `candidates`: explanations [list]; `departures`:
 * readings [list]; `next`: read next [group].
 *
 * **Symbols of the working**
 *
 * z_0: what the plan leaves of each reading, in uncertainties.
 *
 * **Sources**
 * - W. H. Press and others: Numerical Recipes, 3rd edition, 2007, chapter 15 (χ² fitting, maximum likelihood with
 *   priors) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of document and readings
 * @throws NoSolutionError `plan-does-not-move` where the rig as planned stops on its way
 * @example
 * ```ts
 * import { diagnosis } from 'alula/advice'
 * const found = diagnosis(diagnosis.example)
 * found.outcome // => 'one-fault'
 * found.candidates[0].faults // => ['contact@actuators']
 * ```
 */
export const diagnosis: Solver<DiagnosisInput, Diagnosis, DiagnosisRefusal, DiagnosisCaution> = /* @__PURE__ */ solver<
  Input,
  Diagnosis,
  DiagnosisRefusal,
  DiagnosisCaution,
  Trace
>("diagnosis", "What is wrong with the built rig", solve, () => ({
  // each member's fields were checked against its interface where it is written
  input: {
    rig: { kind: "group", label: "the rig as planned", fields: rigFields(members) },
    readings: { kind: "list", label: "what was read on the built one", of: readingField, min: 1, max: 60 },
    straying: {
      kind: "number",
      symbol: "k_s",
      label: "how far parts stray, against the usual",
      min: 0.1,
      max: 5,
      default: 1,
    },
  } as AnyFields as unknown as Fields<Input>,
  output,
  example: {
    rig: exampleRig as unknown as Rig<Typed, Typed, Typed>,
    readings: [
      { type: "time", value: "11.6 s" },
      { type: "time", way: "back", value: "10.5 s" },
      { type: "voltage", at: "pack", during: "rest", value: "12.1 V" },
      { type: "voltage", at: "pack", value: "11.9 V" },
      { type: "voltage", at: "actuators", value: "10.5 V" },
    ],
  },
  formulae: [
    {
      symbol: "z_0",
      kind: "number",
      meaning: "what the plan leaves of each reading, in uncertainties",
      given: (_, __, trace) => trace.byPlan ?? [],
    },
    { symbol: "z_1", kind: "number", meaning: "what the best explanation leaves", given: (_, __, trace) => trace.byBest ?? [] },
    { symbol: "n_r", meaning: "readings used: each with what it leaves as a number and as something seen", is: "sum(z_0 .* 0 + 1) / 2" },
    { symbol: "X_0", meaning: "misfit of the plan", is: "sum(z_0 .^ 2)" },
    { symbol: "X_1", meaning: "misfit of the best explanation", is: "sum(z_1 .^ 2)" },
  ],
  sources: [FITTING],
  check: (si) => readingFaults(si.rig as unknown as RigSi, si.readings as readonly ReadingSi[]),
  cautions,
})) as unknown as Solver<DiagnosisInput, Diagnosis, DiagnosisRefusal, DiagnosisCaution>

/**
 * What is wrong with the built rig: which faults explain what was read on it, alone or two together, or that none on the list
 * does; and the reading that would tell most, for the time it takes. See {@link diagnosis}.
 *
 * @param rig - the document as planned
 * @param readings - what was read, each with its uncertainty where it is known
 * @throws InputError naming every fault of document and readings
 * @throws NoSolutionError where the rig as planned cannot move
 */
export function diagnose(rig: Rig, readings: readonly RigReading[]): Result<Diagnosis, DiagnosisCaution> {
  return diagnosis({ rig, readings })
}
