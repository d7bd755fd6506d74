import { at, inconsistent, optionsFrom, type Solver, solver } from "../../../solver/index.js"
import {
  bodySurfaceSource,
  childHeatSource,
  clothingOverSource,
  metabolicClassSource,
  nioshHeatSource,
  wbgtSource,
} from "../../sources-around.js"
import { wearerFields } from "../../wearer.js"
import {
  adjustmentOf,
  clothingAdjustments,
  type HeatClass,
  heatClasses,
  nioshHeat,
  publishedAdjustment,
  standardRest,
  standardSurface,
} from "../data-heat.js"
import { heatCautions } from "./cautions.js"
import type { HeatStress, HeatStressCaution, HeatStressInput, Si } from "./types.js"

export type { HeatStress, HeatStressInput } from "./types.js"

/** WBGT of three thermometers, °C; without `ambientTemperature` it is out of the sun. */
export function wbgtOf(wetBulb: number, globe: number, air: number | null): number {
  return air === null ? 0.7 * wetBulb + 0.3 * globe : 0.7 * wetBulb + 0.2 * globe + 0.1 * air
}

/** NIOSH limit for a metabolic rate in W, °C. */
export function nioshLimit(rate: number, acclimatized: boolean): number {
  const { offset, slope } = nioshHeat[acclimatized ? "acclimatized" : "notAcclimatized"]
  return offset - slope * Math.log10(rate)
}

/** Maximum rate whose class still allows this heat, W; 0 where none does, 10 kW where the highest class does. */
function classRate(effective: number, acclimatized: boolean): number {
  const allowed = heatClasses.filter((c) => effective <= (acclimatized ? c.acclimatized : c.notAcclimatized))
  return Math.min(allowed.at(-1)?.upTo ?? 0, 10000)
}

/** Body surface by Du Bois, m². */
export function bodySurface(mass: number, stature: number): number {
  return 0.007184 * mass ** 0.425 * (100 * stature) ** 0.725
}

function solve(si: Si): HeatStress {
  const { metabolicRate, acclimatized, bodyMass, stature } = si
  const wbgt = si.wbgt ?? wbgtOf(si.wetBulbTemperature as number, si.globeTemperature as number, si.ambientTemperature)
  const effectiveWbgt = wbgt + adjustmentOf(si)
  const surface = bodyMass === null || stature === null ? null : bodySurface(bodyMass, stature)
  // the same watts are harder work for a small body; a large one is given nothing for its size
  const scale = surface === null ? 1 : Math.max(1, standardSurface / surface)
  const standardMetabolicRate = metabolicRate * scale
  const restMetabolicRate = si.restMetabolicRate ?? Math.min(metabolicRate, standardRest / scale)
  const metabolicClass = heatClasses.findIndex((c) => standardMetabolicRate <= c.upTo)
  const row = heatClasses[metabolicClass] as HeatClass
  const classLimit = acclimatized ? row.acclimatized : row.notAcclimatized
  const curveLimit = nioshLimit(standardMetabolicRate, acclimatized)
  const wbgtLimit = Math.min(classLimit, curveLimit)
  const { offset, slope } = nioshHeat[acclimatized ? "acclimatized" : "notAcclimatized"]
  const metabolicRateAtLimit = Math.min(10 ** ((offset - effectiveWbgt) / slope), classRate(effectiveWbgt, acclimatized)) / scale
  return {
    wbgt,
    effectiveWbgt,
    bodySurface: surface,
    standardMetabolicRate,
    metabolicClass,
    classLimit,
    curveLimit,
    wbgtLimit,
    wbgtMargin: wbgtLimit - effectiveWbgt,
    restMetabolicRate,
    metabolicRateAtLimit,
    workShare:
      metabolicRateAtLimit >= metabolicRate
        ? 1
        : metabolicRateAtLimit <= restMetabolicRate
          ? 0
          : (metabolicRateAtLimit - restMetabolicRate) / (metabolicRate - restMetabolicRate),
    exceeded: !(effectiveWbgt <= wbgtLimit),
  }
}

const temperature = (symbol: string, label: string, typical: readonly [number, number]) =>
  ({ kind: "temperature", symbol, label, min: -20, max: 60, typical }) as const

/**
 * Whether it is too hot for this rig at this pace, by WBGT against metabolic rate and clothing.
 *
 * WBGT = 0.7·t_nw + 0.2·t_g + 0.1·t_a in the sun, 0.7·t_nw + 0.3·t_g out of it (t_nw natural wet bulb, t_g black globe,
 * t_a air, °C). The clothing's adjustment is added (that of vapour-tight clothing unless given) and the sum held
 * against the lower of the ISO 7243 limit for the class of metabolic rate and the NIOSH curve 56.7 − 11.5·log₁₀ M for
 * the acclimatized or 59.9 − 14.1·log₁₀ M for others (M in W). M is the metabolic rate of a standard person of 1.8 m²
 * at the same work: with mass and stature, the wearer's own times max(1, 1.8 m²/S), S by Du Bois. A hood adds 1 K, and
 * an adjustment of one's own counts only where it is higher than the published one. `workShare` is the part of the hour
 * whose mean rate meets curve and class, resting at `restMetabolicRate` in the same heat. Valid for 100 to 600 W, healthy
 * adults.
 *
 * **Inputs**
 * - `metabolicRate`: metabolic rate [M; 60 to 1200 W]
 * - `wbgt`: WBGT as measured [t_m; −20 to 60 °C; optional]
 * - `wetBulbTemperature`: natural wet bulb [t_nw; −20 to 60 °C; optional]
 * - `globeTemperature`: black globe [t_g; −20 to 90 °C; optional]
 * - `ambientTemperature`: air, with the sun out [t_a; −20 to 60 °C; optional]
 * - `clothing`: clothing [work-clothes, cloth-coverall, double-layer, vapour-barrier or vapour-barrier-over-clothes;
 *   default vapour-barrier]
 * - `hooded`: hood, mask or closed head [yes or no; default no]
 * - `clothingAdjustment`: own adjustment for clothing [d_o; 0 to 20 K; optional]
 * - `acclimatized`: acclimatized [yes or no; default no]
 * - `restMetabolicRate`: metabolic rate at rest [M_r; 40 to 250 W; optional]
 * - `bodyMass`: body mass [m_w; 20 to 300 kg; optional]
 * - `stature`: stature [H; 800 mm to 2.5 m; optional]
 * - exactly one of `wbgt` and `wetBulbTemperature` with `globeTemperature`
 * - `ambientTemperature` only beside `wetBulbTemperature` with `globeTemperature`
 * - `bodyMass` and `stature` only together
 *
 * **Results**
 *
 * `wbgt`: WBGT [t_w; °C]; `effectiveWbgt`: WBGT with clothing [t_e; °C]; `bodySurface`: body surface area [S_d; m²];
 * `standardMetabolicRate`: metabolic rate of a standard person at this work [M_s; W]; `metabolicClass`: class of
 * metabolic rate [n_c]; `classLimit`: limit by class [t_i; °C]; `curveLimit`: limit by curve [t_n; °C]; `wbgtLimit`:
 * limit [t_l; °C]; `wbgtMargin`: margin [d_t; K]; `restMetabolicRate`: metabolic rate while resting [M_q; W];
 * `metabolicRateAtLimit`: mean rate at the limit [M_l; W]; `workShare`: share of each hour in the rig [q_w; as a
 * fraction]; `exceeded`: limit exceeded [yes or no].
 *
 * **Symbols of the working**
 *
 * d_p: published clothing adjustment, hood included [K]; d_c: adjustment used [K]; k_s: a standard person; a_o: offset
 * of the curve; a_s: slope of the curve; M_c: highest rate whose class allows this heat [W].
 *
 * **Sources**
 * - ISO: ISO 7243, Ergonomics of the thermal environment: assessment of heat stress using the WBGT index, 2017, table
 *   A.1 and clothing adjustment annex (read 2026-11-28)
 * - ISO: ISO 8996, Determination of metabolic rate, 2021, classes, for a standard person of 1.8 m² (not verified
 *   against the document)
 * - NIOSH: Criteria for a recommended standard: occupational exposure to heat and hot environments, publication
 *   2016-106, 2016, section 8.1 and table 3-2 (read 2026-11-28)
 * - Ministry of Labour, Brazil: Regulatory standard NR-9, annex III, occupational exposure to heat, 2019, clothing
 *   table: vapour barrier 10 K, over work clothes 12 K, hood 1 K more (read 2026-11-28)
 * - D. Du Bois, E. F. Du Bois: A formula to estimate the approximate surface area if height and weight be known,
 *   Archives of Internal Medicine 17, 863–871, 1916, 0.007184·m^0.425·H^0.725, kg and cm (not verified against the
 *   document)
 * - American Academy of Pediatrics: Restraints on activities at different levels of heat stress, table 1, withdrawn in
 *   2011
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { heatStress } from 'alula/worn'
 * const evening = heatStress({ metabolicRate: '300 W', wetBulbTemperature: '20 degC', globeTemperature: '25 degC', clothing: 'double-layer' })
 * evening.wbgt // => 21.5
 * evening.wbgtLimit // => 24.97
 * evening.exceeded // => false
 * ```
 */
export const heatStress: Solver<HeatStressInput, HeatStress, never, HeatStressCaution> = /* @__PURE__ */ solver<
  HeatStressInput,
  HeatStress,
  never,
  HeatStressCaution
>("heatStress", "Is it too hot to wear it", solve, () => ({
  input: {
    metabolicRate: { kind: "power", symbol: "M", label: "metabolic rate", min: 60, max: 1200, typical: [100, 600] },
    wbgt: { ...temperature("t_m", "WBGT as measured", [10, 35]), default: null },
    wetBulbTemperature: { ...temperature("t_nw", "natural wet bulb", [5, 30]), default: null },
    globeTemperature: { kind: "temperature", symbol: "t_g", label: "black globe", min: -20, max: 90, typical: [10, 55], default: null },
    ambientTemperature: { ...temperature("t_a", "air, with the sun out", [10, 40]), default: null },
    clothing: {
      kind: "choice",
      label: "clothing",
      options: optionsFrom(clothingAdjustments, (key) => clothingAdjustments[key].label),
      default: "vapour-barrier",
    },
    hooded: { kind: "flag", label: "hood, mask or closed head", default: false },
    clothingAdjustment: {
      kind: "temperatureDifference",
      symbol: "d_o",
      label: "own adjustment for clothing",
      min: 0,
      max: 20,
      typical: [0, 12],
      default: null,
    },
    acclimatized: { kind: "flag", label: "acclimatized", default: false },
    restMetabolicRate: {
      kind: "power",
      symbol: "M_r",
      label: "metabolic rate at rest",
      min: 40,
      max: 250,
      typical: [60, 150],
      default: null,
    },
    bodyMass: { ...wearerFields.bodyMass, default: null },
    stature: { ...wearerFields.stature, default: null },
  },
  output: {
    wbgt: { kind: "temperature", symbol: "t_w", label: "WBGT" },
    effectiveWbgt: { kind: "temperature", symbol: "t_e", label: "WBGT with clothing" },
    bodySurface: { kind: "area", symbol: "S_d", label: "body surface area" },
    standardMetabolicRate: { kind: "power", symbol: "M_s", label: "metabolic rate of a standard person at this work", unit: "W" },
    metabolicClass: { kind: "number", symbol: "n_c", label: "class of metabolic rate" },
    classLimit: { kind: "temperature", symbol: "t_i", label: "limit by class" },
    curveLimit: { kind: "temperature", symbol: "t_n", label: "limit by curve" },
    wbgtLimit: { kind: "temperature", symbol: "t_l", label: "limit" },
    wbgtMargin: { kind: "temperatureDifference", symbol: "d_t", label: "margin" },
    restMetabolicRate: { kind: "power", symbol: "M_q", label: "metabolic rate while resting", unit: "W" },
    metabolicRateAtLimit: { kind: "power", symbol: "M_l", label: "mean rate at the limit", unit: "W" },
    workShare: { kind: "ratio", symbol: "q_w", label: "share of each hour in the rig", unit: "%" },
    exceeded: { kind: "flag", label: "limit exceeded" },
  },
  example: { metabolicRate: "300 W", wetBulbTemperature: "20 degC", globeTemperature: "25 degC", clothing: "double-layer" },
  formulae: [
    { symbol: "t_w", meaning: "WBGT as measured", is: "t_m", when: "has_wbgt" },
    {
      symbol: "t_w",
      meaning: "WBGT out of the sun",
      is: "0.7 * t_nw + 0.3 * t_g",
      when: "has_wetBulbTemperature and not has_ambientTemperature",
      source: wbgtSource,
    },
    {
      symbol: "t_w",
      meaning: "WBGT in the sun",
      is: "0.7 * t_nw + 0.2 * t_g + 0.1 * t_a",
      when: "has_wetBulbTemperature and has_ambientTemperature",
      source: wbgtSource,
    },
    {
      symbol: "d_p",
      kind: "temperatureDifference",
      meaning: "published clothing adjustment, hood included",
      given: (si) => publishedAdjustment(si.clothing, si.hooded),
      source: at(wbgtSource, "clothing adjustment annex"),
    },
    { symbol: "d_c", kind: "temperatureDifference", meaning: "adjustment used", is: "d_p", when: "not has_clothingAdjustment" },
    {
      symbol: "d_c",
      kind: "temperatureDifference",
      meaning: "adjustment used: an own one counts where it is higher",
      is: "max(d_o, d_p)",
      when: "has_clothingAdjustment",
    },
    { symbol: "t_e", meaning: "WBGT with clothing", is: "t_w + d_c" },
    { symbol: "k_s", kind: "number", meaning: "a standard person", is: "1", when: "not has_bodyMass" },
    {
      symbol: "S_d",
      meaning: "body surface",
      is: "0.007184 m^2 * (m_w / kg)^0.425 * (H / cm)^0.725",
      when: "has_bodyMass",
      source: bodySurfaceSource,
    },
    {
      symbol: "k_s",
      kind: "number",
      meaning: "how much harder the same watts are for a small body",
      is: "max(1, 1.8 m^2 / S_d)",
      when: "has_bodyMass",
      source: metabolicClassSource,
    },
    { symbol: "M_s", meaning: "metabolic rate of a standard person at this work", is: "M * k_s" },
    { symbol: "M_q", meaning: "resting as given", is: "M_r", when: "has_restMetabolicRate" },
    { symbol: "M_q", meaning: "rest of a standard person, scaled", is: "min(M, 115 W / k_s)", when: "not has_restMetabolicRate" },
    {
      symbol: "n_c",
      kind: "number",
      meaning: "class of metabolic rate",
      given: (_, out) => out.metabolicClass,
      source: metabolicClassSource,
    },
    {
      symbol: "t_i",
      kind: "temperature",
      meaning: "limit of the class",
      given: (_, out) => out.classLimit,
      source: at(wbgtSource, "table A.1"),
    },
    {
      symbol: "a_o",
      kind: "number",
      meaning: "offset of the curve",
      is: "acclimatized ? 56.7 : 59.9",
      source: at(nioshHeatSource, "section 8.1"),
    },
    {
      symbol: "a_s",
      kind: "number",
      meaning: "slope of the curve",
      is: "acclimatized ? 11.5 : 14.1",
      source: at(nioshHeatSource, "section 8.1"),
    },
    { symbol: "t_n", meaning: "limit of the curve", is: "(a_o - a_s * log10(M_s / (1 W)) + 273.15) * (1 K)" },
    { symbol: "t_l", meaning: "the lower", is: "min(t_i, t_n)" },
    { symbol: "d_t", meaning: "margin", is: "t_l - t_e" },
    {
      symbol: "M_c",
      kind: "power",
      meaning: "highest rate whose class allows this heat",
      given: (si, out) => classRate(out.effectiveWbgt, si.acclimatized),
      source: at(wbgtSource, "table A.1"),
    },
    {
      symbol: "M_l",
      meaning: "mean rate of this wearer that meets curve and class at this heat",
      is: "min(10^((a_o - (t_e / (1 K) - 273.15)) / a_s) * (1 W), M_c) / k_s",
    },
    {
      symbol: "q_w",
      meaning: "share of each hour in the rig",
      is: "M_l >= M ? 1 : (M_l <= M_q ? 0 : (M_l - M_q) / (M - M_q))",
    },
  ],
  sources: [wbgtSource, metabolicClassSource, nioshHeatSource, clothingOverSource, bodySurfaceSource, childHeatSource],
  either: [
    { exactlyOne: ["wbgt", ["wetBulbTemperature", "globeTemperature"]] },
    { given: "ambientTemperature", needs: [["wetBulbTemperature", "globeTemperature"]] },
    { together: ["bodyMass", "stature"] },
  ],
  check: ({ wetBulbTemperature, globeTemperature, metabolicRate, restMetabolicRate }) => {
    const faults = []
    if (wetBulbTemperature !== null && globeTemperature !== null && wetBulbTemperature > globeTemperature)
      faults.push(
        inconsistent(
          ["wetBulbTemperature"],
          "a wet bulb of {wetBulbTemperature temperature °C} above the globe",
          "no more than the globe's {globeTemperature temperature °C}: a wet wick is never the warmer of the two",
          { wetBulbTemperature, globeTemperature },
        ),
      )
    if (restMetabolicRate !== null && !(restMetabolicRate <= metabolicRate))
      faults.push(
        inconsistent(["restMetabolicRate"], "{restMetabolicRate power W} at rest", "no more than the rate of {metabolicRate power W}", {
          restMetabolicRate,
          metabolicRate,
        }),
      )
    return faults
  },
  cautions: heatCautions,
}))
