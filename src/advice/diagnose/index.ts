import { formatNumber, formatQuantity } from "../../quantity/index.js"
import { checkMove } from "../../rig/document/check.js"
import type { RigDocument } from "../../rig/document/document.js"
import { demoRig } from "../../rig/document/example.js"
import { rigFields, rigRules } from "../../rig/document/fields.js"
import { FITTING, METERS } from "../../rig/sources.js"
import {
  type Caution,
  caution,
  type Issue,
  issue,
  type NoSolution,
  type Result,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../../solver/index.js"
import { type FaultName, faults } from "./faults.js"
import { type Measured, measuredFields } from "./measured.js"
import { type MeasureName, measures, type Showing } from "./measures.js"
import { asPlanned, type Explanation, faultPairs, type Readings, singleFaults, tellingMeasure, uncertaintyOf } from "./weigh.js"

/** Input of the {@link diagnosis} solver. */
export interface DiagnosisInput {
  /** The rig as planned [group] */
  rig: RigDocument
  /** What was measured [group] */
  measured: Measured
}

/** One explanation of what was measured. */
export interface Candidate {
  /** Names of its fault, or two. [list, each text] */
  readonly faults: readonly string[]
  /** In words, with the size each needs. [text] */
  readonly explanation: string
  /** Size of each fault, SI. [list, each number] */
  readonly sizes: readonly number[]
  /** Σ((measured − predicted)/uncertainty)². [number] */
  readonly misfit: number
  /** Share of plausibility among all explanations tried. [as a fraction] */
  readonly plausibility: number
}

/** A measurement that would tell the two most plausible explanations apart. */
export interface NextMeasure {
  /** Measure [text] */
  readonly name: string
  /** What [text] */
  readonly label: string
  /** How [text] */
  readonly how: string
  /** What the first and the second explanation say it will show, as a maker reads it. [text] */
  readonly first: string
  /** Second explanation says [text] */
  readonly second: string
  /** How far apart they are, in uncertainties. [number] */
  readonly apart: number
}

/** Result of {@link diagnose}. */
export interface Diagnosis {
  /** One sentence. [text] */
  readonly verdict: string
  /** Readings used [n_r] */
  readonly readings: number
  /** Misfit of the rig as planned. [X_0] */
  readonly plannedMisfit: number
  /** Whether the rig as planned already explains the readings. [yes or no] */
  readonly asPlanned: boolean
  /** Misfit of the most plausible explanation. [X_1] */
  readonly bestMisfit: number
  /** Explanations [list] */
  readonly candidates: readonly Candidate[]
  /** Measure next [group] */
  readonly next: NextMeasure | null
}

type Si = SiOf<DiagnosisInput>

const names = Object.keys(measures) as MeasureName[]

function readingsOf(measured: Si["measured"]): Readings {
  const list = names.flatMap((name) => {
    const reading = measured[name]
    return reading ? [{ name, value: reading.value, uncertainty: reading.uncertainty }] : []
  })
  return { list, warmest: measured.warmest === "notFelt" ? null : measured.warmest, spread: measured.spread }
}

function sizeText(name: FaultName, size: number): string {
  const { kind } = faults[name]
  if (kind === "ratio") return formatQuantity(kind, size, "%")
  return kind === "number" ? formatNumber(size, 2) : formatQuantity(kind, size, undefined, 2)
}

function inWords(one: Explanation): string {
  return one.faults
    .map((name, i) => `${faults[name].label}: ${faults[name].parameter} ${sizeText(name, one.sizes[i] as number)}`)
    .join("; and ")
}

const shownMeasure = (name: MeasureName, shows: Showing) => formatQuantity(measures[name].kind, shows.values[name])

/** All explanations of some readings, most plausible first. */
export function explanations(rig: Si["rig"], readings: Readings): Explanation[] {
  const singles = singleFaults(rig, readings)
  const best = singles[0]
  // pairs are tried only where no single fault explains the readings: more misfit than noise gives one time in a thousand
  const n = readings.list.length
  const isExplained = best !== undefined && best.misfit <= n + 3.1 * Math.sqrt(2 * n)
  return isExplained ? singles : [...singles, ...faultPairs(rig, readings, singles)].sort((a, b) => a.score - b.score)
}

function solve({ rig, measured }: Si): Diagnosis | NoSolution {
  const readings = readingsOf(measured)
  const planned = asPlanned(rig, readings)
  if (!planned)
    return refuse(
      "plan-does-not-move",
      "the rig as planned stalls or cannot move, so that nothing measured on it can be compared: assess the plan first",
      0,
    )
  const all = explanations(rig, readings)
  const [best, second] = all
  if (!best) return refuse("no-fault-applies", "no known fault applies to this rig", 0)
  const n = readings.list.length
  // one of several faults always fits noise a little better than none: it must do so clearly to be named
  const isAsPlanned = planned.misfit <= n + 2 * Math.sqrt(2 * n) && planned.score <= best.score + 6
  const weights = all.map((e) => Math.exp((best.score - e.score) / 2))
  const sum = weights.reduce((a, b) => a + b, 0)
  const taken = readings.list.map((r) => r.name)
  const telling = second ? tellingMeasure(best.shows, second.shows, taken, readings.spread) : null
  const share = (weights[0] as number) / sum
  const verdict = isAsPlanned
    ? "What was measured is what the plan says, within its uncertainty: nothing need be wrong."
    : `Most plausible (${formatQuantity("ratio", share, "%")}): ${inWords(best)}.${share < 0.8 && second ? ` Next: ${inWords(second)}.` : ""}`
  return {
    verdict,
    readings: n,
    plannedMisfit: planned.misfit,
    asPlanned: isAsPlanned,
    bestMisfit: best.misfit,
    candidates: all.slice(0, 12).map((e, i) => ({
      faults: e.faults,
      explanation: inWords(e),
      sizes: e.sizes,
      misfit: e.misfit,
      plausibility: (weights[i] as number) / sum,
    })),
    next:
      telling && second
        ? {
            name: telling.name,
            label: measures[telling.name].label,
            how: measures[telling.name].how,
            first: shownMeasure(telling.name, best.shows),
            second: shownMeasure(telling.name, second.shows),
            apart: telling.apart,
          }
        : null,
  }
}

function check({ rig, measured }: Si): Issue[] {
  const found: Issue[] = checkMove(rig).map((i) => ({ ...i, path: ["rig", ...i.path], message: `rig.${i.message}` }))
  if (!names.some((name) => measured[name])) found.push(issue("missing", ["measured"], "no measured value", "at least one measured value"))
  return found
}

function cautions(): Caution[] {
  return [
    caution(
      "measure-safely",
      "warning",
      "Measure on a moving rig with hands, hair and meter leads clear of it, and with somebody at the switch; never bridge or lengthen a fuse to take a reading.",
      METERS,
    ),
    caution(
      "plausible-not-proved",
      "note",
      "A ranking of known faults, not a proof: look before you buy, and take the measurement named if one is.",
    ),
  ]
}

/** Lists handed to the working: readings, what the explanation predicts, uncertainties. */
function lists({ rig, measured }: Si, which: "planned" | "best"): { read: number[]; shown: number[]; sigma: number[]; extra: number } {
  const readings = readingsOf(measured)
  const one = which === "planned" ? asPlanned(rig, readings) : explanations(rig, readings)[0]
  const read = readings.list.map((r) => r.value)
  const shown = readings.list.map((r) => one?.shows.values[r.name] ?? 0)
  const sigma = readings.list.map((r) => uncertaintyOf(r, readings.spread))
  const sum = read.reduce((s, v, i) => s + ((v - (shown[i] as number)) / (sigma[i] as number)) ** 2, 0)
  // the warmest part's soft penalty is no reading: it is handed over as it stands
  return { read, shown, sigma, extra: (one?.misfit ?? 0) - sum }
}

/**
 * Ranks the single faults and pairs of faults that explain what was measured on a built rig; the
 * solver behind {@link diagnose}, with one input object.
 *
 * Each fault has one size (a resistance, a share of mass …). Its best size gives the lowest χ² + (size/usual)² −
 * 2·ln(prior), where χ² = Σ((m − p)/σ)² over the readings m, their predictions p by the coupled move, and σ² =
 * uncertainty² + (spread·m)² (spread for what strays with datasheets). Plausibility is exp(−score/2), shared out. Pairs
 * are tried only where no single fault explains the readings, and cost 6 more. Usual sizes, priors and the cost of a
 * pair are common practice, no source.
 *
 * Valid for rigs of hinged arms on linear actuators whose plan itself moves.
 *
 * **Inputs**
 * - `rig`: the rig as planned [group]
 * - `measured`: what was measured [group]
 *
 * **Results**
 *
 * `verdict`: verdict [text]; `readings`: readings used [n_r]; `plannedMisfit`: misfit of the plan [X_0]; `asPlanned`:
 * the plan explains it [yes or no]; `bestMisfit`: misfit of the best explanation [X_1]; `candidates`: explanations
 * [list]; `next`: measure next [group].
 *
 * **Symbols of the working**
 *
 * m_r: readings, SI; s_r: their uncertainties, with the parts' spread; p_0: what the plan predicts; w_0: penalty of
 * the warmest part, plan; p_1: what the best explanation predicts; w_1: penalty of the warmest part, best explanation.
 *
 * **Sources**
 * - W. H. Press and others: Numerical Recipes, 3rd edition, 2007, chapter 15 (χ² fitting, maximum likelihood with
 *   priors) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of document and readings
 * @throws NoSolutionError `plan-does-not-move` where the rig as planned stalls
 * @example
 * ```ts
 * import { diagnosis } from 'alula/advice'
 * const found = diagnosis(diagnosis.example)
 * found.candidates[0].faults // => ['sourceContact']
 * ```
 */
export const diagnosis: Solver<DiagnosisInput, Diagnosis> = /* @__PURE__ */ solver<DiagnosisInput, Diagnosis>(
  "diagnosis",
  "What is wrong with the built rig",
  solve,
  () => ({
    input: {
      rig: { kind: "group", label: "the rig as planned", fields: rigFields, either: rigRules },
      measured: { kind: "group", label: "what was measured", fields: measuredFields },
    },
    output: {
      verdict: { kind: "text", label: "verdict" },
      readings: { kind: "number", symbol: "n_r", label: "readings used" },
      plannedMisfit: { kind: "number", symbol: "X_0", label: "misfit of the plan" },
      asPlanned: { kind: "flag", label: "the plan explains it" },
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
            misfit: { kind: "number", label: "misfit" },
            faults: { kind: "list", label: "faults", of: { kind: "text", label: "fault" } },
            sizes: { kind: "list", label: "sizes (SI)", of: { kind: "number", label: "size" } },
          },
        },
      },
      next: {
        kind: "group",
        label: "measure next",
        fields: {
          name: { kind: "text", label: "measure" },
          label: { kind: "text", label: "what" },
          how: { kind: "text", label: "how" },
          first: { kind: "text", label: "first explanation says" },
          second: { kind: "text", label: "second explanation says" },
          apart: { kind: "number", label: "uncertainties apart" },
        },
      },
    },
    example: {
      rig: demoRig,
      measured: {
        raiseTime: { value: "15.8 s" },
        lowerTime: { value: "11.2 s" },
        swing: { value: "91 deg" },
        restVoltage: { value: "10.95 V" },
        sourceSag: { value: "0.17 V" },
        sourceDrop: { value: "2.27 V" },
        actuatorVoltage: { value: "8.5 V" },
      },
    },
    formulae: [
      { symbol: "m_r", kind: "number", meaning: "readings, SI", given: (si) => lists(si, "planned").read },
      { symbol: "s_r", kind: "number", meaning: "their uncertainties, with the parts' spread", given: (si) => lists(si, "planned").sigma },
      { symbol: "p_0", kind: "number", meaning: "what the plan predicts", given: (si) => lists(si, "planned").shown },
      { symbol: "w_0", kind: "number", meaning: "penalty of the warmest part, plan", given: (si) => lists(si, "planned").extra },
      { symbol: "p_1", kind: "number", meaning: "what the best explanation predicts", given: (si) => lists(si, "best").shown },
      { symbol: "w_1", kind: "number", meaning: "penalty of the warmest part, best explanation", given: (si) => lists(si, "best").extra },
      { symbol: "n_r", meaning: "readings used", is: "sum(s_r ./ s_r)" },
      { symbol: "X_0", meaning: "misfit of the plan", is: "sum(((m_r - p_0) ./ s_r) .^ 2) + w_0" },
      { symbol: "X_1", meaning: "misfit of the best explanation", is: "sum(((m_r - p_1) ./ s_r) .^ 2) + w_1" },
    ],
    sources: [FITTING],
    check,
    cautions,
  }),
)

/**
 * What is wrong with the built rig: ranks the faults that explain what was measured and names the
 * cheapest measurement that would tell the first two apart. See {@link diagnosis}.
 *
 * @param rig - the document as planned
 * @param measured - any subset of the measures, each with its uncertainty
 * @throws InputError naming every fault of document and readings
 * @throws NoSolutionError where the rig as planned cannot move
 */
export function diagnose(rig: RigDocument, measured: Measured): Result<Diagnosis> {
  return diagnosis({ rig, measured })
}
