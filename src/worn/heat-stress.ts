import type { Power, Temperature, TemperatureDifference } from "../quantity/index.js"
import { type Caution, caution, inconsistent, optionsFrom, type SiOf, type Solver, solver } from "../solver/index.js"
import { takeItOff } from "./care.js"
import { clothingAdjustments, type HeatClass, type HeatClothing, heatClasses, heatSources, nioshHeat } from "./data-heat.js"

/** Input of {@link heatStress}. Give `wbgt` from a meter, or `wetBulb` and `globe`. */
export interface HeatStressInput {
  /** Metabolic rate with the rig on (from metabolicRate), averaged over an hour. */
  rate: Power
  /** WBGT as a meter shows it. */
  wbgt?: Temperature | null
  /** Natural wet bulb temperature: a wet wick in the open, not the psychrometric one. */
  wetBulb?: Temperature | null
  /** Temperature in a black globe. */
  globe?: Temperature | null
  /** Air temperature in the shade; with the sun out. */
  air?: Temperature | null
  /** What is worn under and as the rig. */
  clothing?: HeatClothing
  /** Adjustment of one's own, in place of the table's. */
  adjustment?: TemperatureDifference | null
  /** Whether the wearer has worked a week or more in such heat. */
  acclimatized?: boolean
  /** Metabolic rate while resting. */
  restRate?: Power
}

/** Result of {@link heatStress}. */
export interface HeatStress {
  /** WBGT, and with the clothing's adjustment, °C. */
  readonly wbgt: number
  /** WBGT with clothing. */
  readonly effective: number
  /** Class of metabolic rate, 0 to 4. */
  readonly metabolicClass: number
  /** Limit by the class, by the NIOSH curve, and the lower of them, °C. */
  readonly classLimit: number
  /** Limit by curve. */
  readonly curveLimit: number
  /** Limit. */
  readonly limit: number
  /** Limit less effective WBGT, K; negative where it is exceeded. */
  readonly margin: number
  /** Mean metabolic rate over an hour that meets curve and class at this heat, W. */
  readonly rateAtLimit: number
  /** Part of each hour with the rig on that meets it, resting in the same heat; 0 where not even rest does. */
  readonly workShare: number
  /** Whether it is too hot to do this unbroken. */
  readonly exceeded: boolean
}

/** WBGT of three thermometers, °C; without `air` it is out of the sun. */
export function wbgtOf(wetBulb: number, globe: number, air: number | null): number {
  return air === null ? 0.7 * wetBulb + 0.3 * globe : 0.7 * wetBulb + 0.2 * globe + 0.1 * air
}

/** NIOSH limit for a metabolic rate in W, °C. */
export function nioshLimit(rate: number, acclimatized: boolean): number {
  const { offset, slope } = nioshHeat[acclimatized ? "acclimatized" : "notAcclimatized"]
  return offset - slope * Math.log10(rate)
}

/** Greatest rate whose class still allows this heat, W; 0 where none does, 10 kW where the highest class does. */
function classRate(effective: number, acclimatized: boolean): number {
  const allowed = heatClasses.filter((c) => effective <= (acclimatized ? c.acclimatized : c.notAcclimatized))
  return Math.min(allowed.at(-1)?.upTo ?? 0, 10000)
}

function solve(si: SiOf<HeatStressInput>): HeatStress {
  const { rate, restRate, acclimatized } = si
  const wbgt = si.wbgt ?? wbgtOf(si.wetBulb as number, si.globe as number, si.air)
  const effective = wbgt + (si.adjustment ?? clothingAdjustments[si.clothing].adjustment)
  const metabolicClass = heatClasses.findIndex((c) => rate <= c.upTo)
  const row = heatClasses[metabolicClass] as HeatClass
  const classLimit = acclimatized ? row.acclimatized : row.notAcclimatized
  const curveLimit = nioshLimit(rate, acclimatized)
  const limit = Math.min(classLimit, curveLimit)
  const { offset, slope } = nioshHeat[acclimatized ? "acclimatized" : "notAcclimatized"]
  const rateAtLimit = Math.min(10 ** ((offset - effective) / slope), classRate(effective, acclimatized))
  return {
    wbgt,
    effective,
    metabolicClass,
    classLimit,
    curveLimit,
    limit,
    margin: limit - effective,
    rateAtLimit,
    workShare: rateAtLimit >= rate ? 1 : rateAtLimit <= restRate ? 0 : (rateAtLimit - restRate) / (rate - restRate),
    exceeded: !(effective <= limit),
  }
}

function cautions(si: SiOf<HeatStressInput>, out: HeatStress): Caution[] {
  const found: Caution[] = [
    takeItOff,
    caution(
      "heat-can-kill",
      "warning",
      "Heat illness comes quickly inside a costume. Confusion, staggering, stopped sweating or collapse is an emergency: cool the wearer and call for help. Someone outside the costume watches, with water and shade; sweat that cannot evaporate makes every limit too high.",
      "NIOSH 2016; watcher and water: common practice, no source",
    ),
  ]
  if (out.exceeded)
    found.push(
      caution(
        "too-hot",
        "warning",
        `The effective WBGT of ${out.effective.toFixed(1)} °C is over the limit of ${out.limit.toFixed(1)} °C: wear the rig ${out.workShare > 0 ? `no more than ${Math.floor(60 * out.workShare)} min of each hour, resting out of it in the shade` : "not at all"}, or at a cooler hour.`,
        "ISO 7243:2017, table A.1; NIOSH 2016, section 8.1",
      ),
    )
  if (Math.abs(out.classLimit - out.curveLimit) > 1)
    found.push(
      caution(
        "limits-disagree",
        "note",
        `The class gives ${out.classLimit.toFixed(0)} °C and the curve ${out.curveLimit.toFixed(1)} °C; the lower counts.`,
        "ISO 7243:2017 against NIOSH 2016",
      ),
    )
  if (si.adjustment === null && si.clothing !== "vapourBarrier")
    found.push(
      caution(
        "costumes-are-tight",
        "caution",
        "Foam, plastic sheet and closed panels keep sweat in: a costume is nearer the vapour-tight suit (+11 K) than work clothes.",
        "ISO 7243:2017, clothing adjustment annex; common practice for costumes, no source",
      ),
    )
  if (!(si.rate >= 100 && si.rate <= 600))
    found.push(
      caution(
        "outside-range",
        "caution",
        "The limits were drawn for work of 100 to 600 W; beyond that they are only carried on, and hard work in heat is cut short by the heart.",
        "NIOSH 2016, section 8.1 (range from memory)",
      ),
    )
  if (si.acclimatized)
    found.push(
      caution(
        "acclimatized",
        "note",
        "Acclimatized means a week or more of such work in such heat, kept up; a parade once a year is not.",
        "ISO 7243:2017",
      ),
    )
  return found
}

const temperature = (symbol: string, label: string, typical: readonly [number, number]) =>
  ({ kind: "temperature", symbol, label, min: -20, max: 60, typical }) as const

/**
 * Whether it is too hot for this rig at this pace, by WBGT against metabolic rate and clothing.
 *
 * WBGT = 0.7·t_nw + 0.2·t_g + 0.1·t_a in the sun, 0.7·t_nw + 0.3·t_g out of it (t_nw natural wet bulb, t_g black globe, t_a
 * air, °C). The clothing's adjustment is added (default: vapour-tight, 11 K) and the sum held against the lower of the
 * ISO 7243 limit for the class of metabolic rate and the NIOSH curve 56.7 − 11.5·log₁₀ M for the acclimatized or
 * 59.9 − 14.1·log₁₀ M for others (M in W, default not acclimatized). `workShare` is the part of the hour whose mean rate
 * meets curve and class, resting at `restRate` (default 115 W) in the same heat. Valid for 100 to 600 W, healthy adults.
 *
 * Sources: ISO 7243:2017; ISO 8996:2021; NIOSH 2016, section 8.1 (limit for the unacclimatized from memory).
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { heatStress } from 'alula/worn'
 * const evening = heatStress({ rate: '300 W', wetBulb: '20 degC', globe: '25 degC', clothing: 'doubleLayer' })
 * evening.wbgt // => 21.5
 * evening.limit // => 24.97
 * evening.exceeded // => false
 * ```
 */
export const heatStress: Solver<HeatStressInput, HeatStress> = /* @__PURE__ */ solver<HeatStressInput, HeatStress>({
  name: "heatStress",
  title: "Is it too hot to wear it",
  input: {
    rate: { kind: "power", symbol: "M", label: "metabolic rate", min: 60, max: 1200, typical: [100, 600] },
    wbgt: { ...temperature("t_m", "WBGT as measured", [10, 35]), default: null },
    wetBulb: { ...temperature("t_nw", "natural wet bulb", [5, 30]), default: null },
    globe: { kind: "temperature", symbol: "t_g", label: "black globe", min: -20, max: 90, typical: [10, 55], default: null },
    air: { ...temperature("t_a", "air, with the sun out", [10, 40]), default: null },
    clothing: {
      kind: "choice",
      label: "clothing",
      options: optionsFrom(clothingAdjustments, (key) => clothingAdjustments[key].label),
      default: "vapourBarrier",
    },
    adjustment: {
      kind: "temperatureDifference",
      symbol: "d_o",
      label: "adjustment of one's own",
      min: 0,
      max: 20,
      typical: [0, 12],
      default: null,
    },
    acclimatized: { kind: "flag", label: "acclimatized", default: false },
    restRate: { kind: "power", symbol: "M_r", label: "rate at rest", min: 60, max: 250, typical: [100, 150], default: 115 },
  },
  output: {
    wbgt: { kind: "temperature", symbol: "t_w", label: "WBGT" },
    effective: { kind: "temperature", symbol: "t_e", label: "WBGT with clothing" },
    metabolicClass: { kind: "number", symbol: "n_c", label: "class of metabolic rate" },
    classLimit: { kind: "temperature", symbol: "t_i", label: "limit by class" },
    curveLimit: { kind: "temperature", symbol: "t_n", label: "limit by curve" },
    limit: { kind: "temperature", symbol: "t_l", label: "limit" },
    margin: { kind: "temperatureDifference", symbol: "d_t", label: "margin" },
    rateAtLimit: { kind: "power", symbol: "M_l", label: "mean rate at the limit", unit: "W" },
    workShare: { kind: "ratio", symbol: "q_w", label: "part of each hour in the rig", unit: "%" },
    exceeded: { kind: "flag", label: "limit exceeded" },
  },
  example: { rate: "300 W", wetBulb: "20 degC", globe: "25 degC", clothing: "doubleLayer" },
  formulae: [
    { symbol: "t_w", meaning: "WBGT as measured", is: "t_m", when: "has_wbgt" },
    {
      symbol: "t_w",
      meaning: "WBGT out of the sun",
      is: "0.7 * t_nw + 0.3 * t_g",
      when: "has_wetBulb and not has_air",
      source: "ISO 7243:2017",
    },
    {
      symbol: "t_w",
      meaning: "WBGT in the sun",
      is: "0.7 * t_nw + 0.2 * t_g + 0.1 * t_a",
      when: "has_wetBulb and has_air",
      source: "ISO 7243:2017",
    },
    {
      symbol: "d_c",
      kind: "temperatureDifference",
      meaning: "clothing adjustment",
      given: (si) => si.adjustment ?? clothingAdjustments[si.clothing].adjustment,
      source: "ISO 7243:2017, clothing adjustment annex",
    },
    { symbol: "t_e", meaning: "WBGT with clothing", is: "t_w + d_c" },
    { symbol: "n_c", kind: "number", meaning: "class of metabolic rate", given: (_, out) => out.metabolicClass, source: "ISO 8996:2021" },
    {
      symbol: "t_i",
      kind: "temperature",
      meaning: "limit of the class",
      given: (_, out) => out.classLimit,
      source: "ISO 7243:2017, table A.1",
    },
    { symbol: "a_o", kind: "number", meaning: "offset of the curve", is: "acclimatized ? 56.7 : 59.9", source: "NIOSH 2016" },
    { symbol: "a_s", kind: "number", meaning: "slope of the curve", is: "acclimatized ? 11.5 : 14.1", source: "NIOSH 2016" },
    { symbol: "t_n", meaning: "limit of the curve", is: "(a_o - a_s * log10(M / (1 W)) + 273.15) * (1 K)" },
    { symbol: "t_l", meaning: "the lower", is: "min(t_i, t_n)" },
    { symbol: "d_t", meaning: "margin", is: "t_l - t_e" },
    {
      symbol: "M_c",
      kind: "power",
      meaning: "greatest rate whose class allows this heat",
      given: (si, out) => classRate(out.effective, si.acclimatized),
      source: "ISO 7243:2017, table A.1",
    },
    {
      symbol: "M_l",
      meaning: "mean rate that meets curve and class at this heat",
      is: "min(10^((a_o - (t_e / (1 K) - 273.15)) / a_s) * (1 W), M_c)",
    },
    { symbol: "q_w", meaning: "part of each hour in the rig", is: "M_l >= M ? 1 : (M_l <= M_r ? 0 : (M_l - M_r) / (M - M_r))" },
  ],
  sources: heatSources,
  check: ({ wbgt, wetBulb, globe, air, rate, restRate }) => {
    const faults = []
    const parts = wetBulb !== null || globe !== null || air !== null
    if (wbgt !== null && parts) faults.push(inconsistent(["wbgt"], "wbgt beside its parts", "either wbgt, or wetBulb and globe"))
    if (wbgt === null && wetBulb === null) faults.push(inconsistent(["wetBulb"], "no wbgt and no wetBulb", "wbgt, or wetBulb and globe"))
    if (wbgt === null && globe === null) faults.push(inconsistent(["globe"], "no wbgt and no globe", "wbgt, or wetBulb and globe"))
    if (!(restRate <= rate)) faults.push(inconsistent(["restRate"], `${restRate} W`, `no more than the rate of ${rate} W`))
    return faults
  },
  solve,
  cautions,
})
