import type { Length, Ratio } from "../../quantity/index.js"
import { at, type Caution, caution, type SiOf, type Solver, solver, without } from "../../solver/index.js"
import { ANSUR } from "../sources-load.js"
import { wearerFields } from "../wearer.js"
import { type SurveyDimension, type SurveyStatistics, survey } from "./data-survey.js"

/** A dimension of the survey that is a length. */
export type BodyLength = Exclude<SurveyDimension, "bodyMass">

/** Input of {@link bodyDimension}. */
export interface BodyDimensionInput {
  /** Sex of the survey's sample. [female or male] */
  sex: "female" | "male"
  /** Dimension [one of 27 words] */
  dimension: BodyLength
  /** Share of people who are smaller. [p; 0.01 to 0.99] */
  percentile: Ratio
  /** Stature of the wearer, where known: the percentile is then among people of that stature. [H; 1.3 to 2.2 m; optional] */
  stature?: Length | null
}

/** Hazards and limits that an answer of {@link bodyDimension} can carry. */
export type BodyDimensionCaution = "army-sample" | "outside-range" | "tail" | "weak-correlation"

/** Result of {@link bodyDimension}. */
export interface BodyDimension {
  /** Standard deviations from the mean [z] */
  readonly deviates: number
  /** Mean and standard deviation: of all, or of those of that stature. [x_m; m] */
  readonly mean: number
  /** Standard deviation [x_s; m] */
  readonly standardDeviation: number
  /** The dimension at the percentile. [x; m] */
  readonly value: number
  /** 5th, 50th and 95th percentile of all who were measured. [x_5; m] */
  readonly p5: number
  /** 50th percentile, measured [x_50; m] */
  readonly p50: number
  /** 95th percentile, measured [x_95; m] */
  readonly p95: number
  /** Iterations [number] */
  readonly iterations: number
  /** Residual [number] */
  readonly residual: number
}

/** Standard normal distribution by the Maclaurin series of erf; for |z| up to 4 every digit is right. */
function normal(z: number): number {
  const x = z / Math.SQRT2
  let [term, sum] = [x, x]
  for (let k = 1; k < 200 && Math.abs(term) > 1e-18; k++) {
    term *= (-x * x) / k
    sum += term / (2 * k + 1)
  }
  return 0.5 + sum / Math.sqrt(Math.PI)
}

/** Deviates of a percentile, by Newton from the middle. */
function deviatesOf(percentile: number): { readonly z: number; readonly iterations: number } {
  let z = 0
  for (let iterations = 1; iterations <= 60; iterations++) {
    const slope = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
    const step = (percentile - normal(z)) / slope
    // the step is held so that the start from the middle cannot overshoot the tail
    z += Math.max(-1, Math.min(1, step))
    if (Math.abs(step) < 1e-15 * Math.max(1, Math.abs(z))) return { z, iterations }
  }
  return { z, iterations: 60 }
}

const statistics = (si: SiOf<BodyDimensionInput>): SurveyStatistics => survey[si.dimension][si.sex]

function solve(si: SiOf<BodyDimensionInput>): BodyDimension {
  const [allMean, allSd, p5, p50, p95, correlation] = statistics(si)
  const height = survey.stature[si.sex]
  const { z, iterations } = deviatesOf(si.percentile)
  const mean = (si.stature === null ? allMean : allMean + ((correlation * allSd) / height[1]) * (1000 * si.stature - height[0])) / 1000
  const standardDeviation = (allSd * Math.sqrt(si.stature === null ? 1 : 1 - correlation ** 2)) / 1000
  return {
    deviates: z,
    mean,
    standardDeviation,
    value: mean + z * standardDeviation,
    p5: p5 / 1000,
    p50: p50 / 1000,
    p95: p95 / 1000,
    iterations,
    residual: normal(z) - si.percentile,
  }
}

function cautions(si: SiOf<BodyDimensionInput>): Caution<BodyDimensionCaution>[] {
  const found: Caution<BodyDimensionCaution>[] = [
    caution(
      "army-sample",
      "note",
      "Soldiers of 2012: the public is heavier, older and more varied, and children are not in it. Measure the wearer wherever it matters; the smallest and the largest wearer both have to fit.",
      ANSUR,
    ),
  ]
  if (si.percentile < 0.05 || si.percentile > 0.95)
    found.push(
      caution(
        "tail",
        "caution",
        "Beyond the 5th and 95th percentile a normal curve is only a guess; girths and breadths have a longer tail upwards.",
        at(ANSUR, "percentiles against mean and standard deviation"),
      ),
    )
  const correlation = statistics(si)[5]
  if (si.stature !== null && correlation < 0.7)
    found.push(
      caution(
        "weak-correlation",
        "caution",
        "Stature says little about this dimension (correlation {correlation}): measure it rather than scale it from stature.",
        ANSUR,
        { correlation },
      ),
    )
  if (si.stature !== null && Math.abs(1000 * si.stature - survey.stature[si.sex][0]) > 2.5 * survey.stature[si.sex][1])
    found.push(caution("outside-range", "caution", "Hardly anyone of that stature was measured: the answer is extrapolated.", ANSUR))
  return found
}

const lengths = without(survey, "bodyMass")
const options = Object.fromEntries(Object.entries(lengths).map(([key, row]) => [key, row.label])) as Record<BodyLength, string>
const metres = (symbol: string, label: string) => ({ kind: "length", symbol, label }) as const

/**
 * A body dimension at a percentile, from the open survey's statistics.
 *
 * Value = mean + z·sd, z the standard normal deviate of the percentile: (1 + erf(z/√2))/2 = percentile. With the wearer's
 * stature H given, mean and sd are those of people of that stature: mean + r·sd/sd_H·(H − mean_H) and sd·√(1 − r²), r the
 * correlation with stature. The measured 5th, 50th and 95th percentiles stand beside it. Valid from the 1st to the 99th
 * percentile of adults like those measured (1986 women, 4082 men).
 *
 * **Inputs**
 * - `sex`: sex [female or male]
 * - `dimension`: dimension [one of 27 words]
 * - `percentile`: share who are smaller [p; 0.01 to 0.99]
 * - `stature`: stature [H; 1.3 to 2.2 m; optional]
 *
 * **Results**
 *
 * `deviates`: standard deviations from the mean [z]; `mean`: mean [x_m; m]; `standardDeviation`: standard deviation
 * [x_s; m]; `value`: dimension [x; m]; `p5`: 5th percentile, measured [x_5; m]; `p50`: 50th percentile, measured
 * [x_50; m]; `p95`: 95th percentile, measured [x_95; m]; `iterations`: iterations [number]; `residual`: residual
 * [number].
 *
 * **Symbols of the working**
 *
 * a: mean of all, in mm; b: standard deviation of all, in mm; r: correlation with stature; h_a: mean stature, in mm;
 * h_b: its standard deviation, in mm.
 *
 * **Sources**
 * - C. C. Gordon and others: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public files,
 *   NATICK/TR-15/007, 2014, statistics of every measured person: mean, sample standard deviation, 5th, 50th and 95th
 *   percentile, correlation with stature
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { bodyDimension } from 'alula/worn'
 * const shoulder = bodyDimension({ sex: 'female', dimension: 'shoulder-height', percentile: '5 %' })
 * shoulder.value // => 1.240
 * shoulder.p5 // => 1.242
 * ```
 */
export const bodyDimension: Solver<BodyDimensionInput, BodyDimension, never, BodyDimensionCaution> = /* @__PURE__ */ solver<
  BodyDimensionInput,
  BodyDimension,
  never,
  BodyDimensionCaution
>("bodyDimension", "How large people are there", solve, () => ({
  input: {
    sex: { kind: "choice", label: "sex", options: { female: "women", male: "men" } },
    dimension: { kind: "choice", label: "dimension", options },
    percentile: { kind: "ratio", symbol: "p", label: "share who are smaller", min: 0.01, max: 0.99, typical: [0.05, 0.95] },
    // narrower: a straight line through soldiers says nothing of children
    stature: { ...wearerFields.stature, min: 1.3, max: 2.2, default: null },
  },
  output: {
    deviates: { kind: "number", symbol: "z", label: "standard deviations from the mean" },
    mean: metres("x_m", "mean"),
    standardDeviation: metres("x_s", "standard deviation"),
    value: metres("x", "dimension"),
    p5: metres("x_5", "5th percentile, measured"),
    p50: metres("x_50", "50th percentile, measured"),
    p95: metres("x_95", "95th percentile, measured"),
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "number", label: "residual" },
  },
  example: { sex: "female", dimension: "shoulder-height", percentile: 0.05 },
  formulae: [
    { solved: "z", meaning: "deviate of the percentile" },
    { left: "(1 + erf(z / sqrt(2))) / 2", right: "p", meaning: "normal distribution" },
    { symbol: "a", kind: "number", meaning: "mean of all, in mm", given: (si) => statistics(si)[0], source: ANSUR },
    { symbol: "b", kind: "number", meaning: "standard deviation of all, in mm", given: (si) => statistics(si)[1], source: ANSUR },
    { symbol: "r", kind: "number", meaning: "correlation with stature", given: (si) => statistics(si)[5], source: ANSUR },
    { symbol: "h_a", kind: "number", meaning: "mean stature, in mm", given: (si) => survey.stature[si.sex][0], source: ANSUR },
    {
      symbol: "h_b",
      kind: "number",
      meaning: "its standard deviation, in mm",
      given: (si) => survey.stature[si.sex][1],
      source: ANSUR,
    },
    { symbol: "x_m", meaning: "mean of all", is: "a * (1 mm)", when: "not has_stature" },
    { symbol: "x_s", meaning: "standard deviation of all", is: "b * (1 mm)", when: "not has_stature" },
    { symbol: "x_m", meaning: "mean at that stature", is: "(a + r * b / h_b * (H / (1 mm) - h_a)) * (1 mm)", when: "has_stature" },
    { symbol: "x_s", meaning: "standard deviation at that stature", is: "b * sqrt(1 - r^2) * (1 mm)", when: "has_stature" },
    { symbol: "x", meaning: "dimension at the percentile", is: "x_m + z * x_s" },
    { symbol: "x_5", kind: "length", meaning: "5th percentile as measured", given: (si) => statistics(si)[2] / 1000, source: ANSUR },
    { symbol: "x_50", kind: "length", meaning: "50th percentile as measured", given: (si) => statistics(si)[3] / 1000, source: ANSUR },
    { symbol: "x_95", kind: "length", meaning: "95th percentile as measured", given: (si) => statistics(si)[4] / 1000, source: ANSUR },
  ],
  sources: [ANSUR],
  cautions,
}))
