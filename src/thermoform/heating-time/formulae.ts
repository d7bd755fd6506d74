import { at, type SiOf, type Step } from "../../solver/index.js"
import { CARSLAW, CODATA } from "../sources.js"
import { arrival, heatPath, propertiesOf, surfaceTime, type Variant } from "./heating.js"
import { earliestSurface, type HeatingProblem, heatingProblem, limitOf, settledShare } from "./problem.js"
import type { HeatingTime, HeatingTimeInput } from "./types.js"

type Si = SiOf<HeatingTimeInput>
type HeatStep = Step<Si, HeatingTime>

/** Which spot, when, under which drive: what a sum of modes is written for. */
interface Sum {
  readonly problem: HeatingProblem
  readonly variant: Variant
  readonly equivalent: number
  readonly time: number
  readonly spot: number
}

function coreSum(si: Si, variant: Variant, source: number): Sum | null {
  const problem = heatingProblem(si)
  const equivalent = problem.equivalentOf(source)
  const met = arrival(problem.part(variant), equivalent, problem.target, problem.swings)
  return met && { problem, variant, equivalent, time: met.time, spot: met.coreSpot }
}

/** Before this the surface follows the half-space solution, which is no sum. */
const afterStart = (sum: Sum) => (sum.time < sum.problem.part(sum.variant).response.earliest ? null : sum)

const sums: Readonly<Record<string, (si: Si, out: HeatingTime) => Sum | null>> = {
  core: (si) => coreSum(si, "usual", si.sourceTemperature),
  slow: (si) => coreSum(si, "slow", si.sourceTemperature),
  fast: (si) => coreSum(si, "fast", si.sourceTemperature),
  hot: (si, out) => {
    const core = coreSum(si, "usual", si.sourceTemperature)
    const met = core && arrival(core.problem.part("usual"), core.equivalent, core.problem.target, core.problem.swings)
    return core && met && { ...core, time: out.peakSurfaceTime, spot: met.hottestSpot }
  },
  skin: (si) => {
    const problem = heatingProblem(si)
    const equivalent = problem.equivalentOf(si.sourceTemperature)
    const met = surfaceTime(problem.part("usual"), equivalent, problem.limit, problem.swings)
    return met && afterStart({ problem, variant: "usual", equivalent, ...met })
  },
  quick: (si) => {
    const problem = heatingProblem(si)
    const equivalent = problem.equivalentOf(si.sourceTemperature)
    const met = earliestSurface(problem, equivalent)
    return met && afterStart({ problem, equivalent, ...met })
  },
  limit: (si) => {
    const problem = heatingProblem(si)
    const { time, equivalent, variant } = limitOf(problem)
    const { surfaces } = problem.part(variant)
    if (time === null || equivalent === null) return null
    return { problem, variant, equivalent, time, spot: surfaces[surfaces.length - 1] as number }
  },
  early: (si, out) =>
    out.advisedSourceTemperature === null ? null : coreSum(si, "fast", out.advisedSourceTemperature + si.sourceTemperatureError),
  late: (si, out) =>
    out.advisedSourceTemperature === null ? null : coreSum(si, "slow", out.advisedSourceTemperature - si.sourceTemperatureError),
}

/** Steps that hand one sum of modes to the working: a flag, the settled temperature, rates and amplitudes, and its own time. */
function sumSteps(name: string, meaning: string): HeatStep[] {
  const of = (si: Si, out: HeatingTime) => (sums[name] as (typeof sums)[string])(si, out)
  const series = (si: Si, out: HeatingTime) => {
    const sum = of(si, out)
    if (!sum) return null
    const part = sum.problem.part(sum.variant)
    const drive = part.drive(sum.equivalent)
    return { time: sum.time, steady: part.response.steady(sum.spot, drive), ...part.response.series(sum.time, sum.spot, drive) }
  }
  return [
    { symbol: `has_${name}`, kind: "number", meaning: `${meaning}: known as a sum`, given: (si, out) => (of(si, out) ? 1 : 0) },
    {
      symbol: `T_${name}`,
      kind: "temperature",
      meaning: `${meaning}: settled temperature`,
      given: (si, out) => series(si, out)?.steady ?? 0,
    },
    { symbol: `b_${name}`, kind: "number", meaning: `${meaning}: decay rates, 1/s`, given: (si, out) => series(si, out)?.rates ?? [0] },
    { symbol: `a_${name}`, kind: "number", meaning: `${meaning}: amplitudes, K`, given: (si, out) => series(si, out)?.amplitudes ?? [0] },
  ]
}

function shareAt(si: Si, out: HeatingTime): number {
  const sum = sums.limit?.(si, out)
  return sum ? sum.problem.part(sum.variant).response.steady(sum.spot, { outside: 1, inside: 0, initial: [] }) : 1
}

const radiantText = (source: string) => `(epsilon * 5.670374419e-8 W/(m^2 K^4) * (${source}^4 - T_m^4) + h_r * T_m + h_c * T_room) / h`
const sumText = (name: string, time: string) => `T_${name} + sum(a_${name} .* map(-b_${name} * (${time} / s), exp)) * K`
const property = (
  symbol: string,
  kind: "thermalConductivity" | "density" | "specificHeat",
  key: "conductivity" | "density" | "specificHeat",
) =>
  ({
    symbol,
    kind,
    meaning: `${key === "specificHeat" ? "specific heat, heat of melting included" : key} used`,
    given: (si: Si, out: HeatingTime) => propertiesOf(si.material, si, out.coreTemperature - si.startTemperature, "usual")[key],
  }) as const

/** The working of heatingTime. */
export const heatThroughFormulae: readonly HeatStep[] = [
  {
    symbol: "T_l",
    kind: "temperature",
    meaning: "core wanted, or lower forming temperature on its safe side",
    given: (_, out) => out.coreTemperature,
  },
  { symbol: "T_u", kind: "temperature", meaning: "surface limit, safe side", given: (_, out) => out.surfaceTemperatureLimit },
  property("k_p", "thermalConductivity", "conductivity"),
  property("rho_p", "density", "density"),
  property("c_p", "specificHeat", "specificHeat"),
  { symbol: "L", kind: "length", meaning: "length of the Biot number", given: (si) => heatPath(si) },
  { symbol: "h_c", kind: "heatTransferCoefficient", meaning: "film given or typical", given: (si) => heatingProblem(si).convection },
  { symbol: "h", meaning: "film at the heated face", is: "h_c", when: 'not equalText(heatSource, "radiant")' },
  { symbol: "T_e", meaning: "equivalent air temperature", is: "T_src", when: 'not equalText(heatSource, "radiant")' },
  {
    symbol: "T_m",
    kind: "temperature",
    meaning: "temperature at which radiation is taken",
    is: "(T_start + T_u) / 2",
    when: 'equalText(heatSource, "radiant")',
  },
  {
    symbol: "h_r",
    kind: "heatTransferCoefficient",
    meaning: "radiation as a film",
    is: "4 * epsilon * 5.670374419e-8 W/(m^2 K^4) * T_m^3",
    when: 'equalText(heatSource, "radiant")',
    source: CODATA,
  },
  { symbol: "h", meaning: "film at the heated face", is: "h_c + h_r", when: 'equalText(heatSource, "radiant")' },
  {
    symbol: "T_e",
    meaning: "equivalent air temperature",
    is: radiantText("T_src"),
    when: 'equalText(heatSource, "radiant")',
  },
  { symbol: "Bi", meaning: "Biot number", is: "h * L / k_p" },
  ...sumSteps("core", "coldest spot"),
  { solved: "t", meaning: "time until the coldest spot is at the lower forming temperature" },
  { left: sumText("core", "t"), right: "T_l", meaning: "the coldest spot is there", source: at(CARSLAW, "chapters 3 and 7") },
  { symbol: "Fo", meaning: "Fourier number", is: "k_p * t / (rho_p * c_p * L^2)" },
  ...sumSteps("fast", "coldest spot, fast end"),
  { solved: "t_fast", meaning: "time at the fast end of the spread" },
  { left: sumText("fast", "t_fast"), right: "T_l", meaning: "the coldest spot is there" },
  ...sumSteps("slow", "coldest spot, slow end"),
  { solved: "t_slow", meaning: "time at the slow end of the spread" },
  { left: sumText("slow", "t_slow"), right: "T_l", meaning: "the coldest spot is there" },
  ...sumSteps("hot", "hottest surface"),
  { symbol: "t_hot", kind: "time", meaning: "when the surface is hottest on the way", given: (_, out) => out.peakSurfaceTime },
  { symbol: "T_hot", meaning: "hottest surface on the way", is: sumText("hot", "t_hot") },
  ...sumSteps("skin", "surface"),
  { solved: "t_u", meaning: "time at which the surface passes its limit" },
  { left: sumText("skin", "t_u"), right: "T_u", meaning: "the surface is at its limit", when: "has_skin == 1" },
  ...sumSteps("quick", "surface quickest to heat"),
  { solved: "t_u1", meaning: "earliest time at which a surface passes its limit" },
  { left: sumText("quick", "t_u1"), right: "T_u", meaning: "the surface is at its limit", when: "has_quick == 1" },
  ...sumSteps("limit", "surface at the hottest source"),
  { symbol: "t_lim", kind: "time", meaning: "time at the hottest source", given: (si, out) => sums.limit?.(si, out)?.time ?? 1 },
  {
    symbol: "f_lim",
    kind: "number",
    meaning: "share of the source in that surface's settled temperature",
    given: (si, out) => shareAt(si, out),
  },
  { solved: "T_lim", meaning: "hottest source that works" },
  ...(["not ", ""] as const).map(
    (radiant): HeatStep => ({
      left: `f_lim * (${radiant ? "T_lim" : radiantText("T_lim")}) + (1 - f_lim) * T_room + sum(a_limit .* map(-b_limit * (t_lim / s), exp)) * K`,
      right: "T_u",
      meaning: "the quickest surface is at its limit as the slowest core arrives",
      when: `has_limit == 1 and ${radiant}equalText(heatSource, "radiant")`,
    }),
  ),
  {
    symbol: "capped",
    kind: "number",
    meaning: "1 where the onset of charring holds the source down",
    given: (_, out) => (out.maxSourceNote === "scorch" ? 1 : 0),
  },
  {
    symbol: "f_cap",
    kind: "number",
    meaning: "share of the source in the heated face's settled temperature",
    given: (si) => settledShare(heatingProblem(si)),
  },
  {
    symbol: "T_cap",
    kind: "temperature",
    meaning: "onset of charring, or hottest published surface",
    given: (si) => heatingProblem(si).ceiling,
  },
  ...(["not ", ""] as const).map(
    (radiant): HeatStep => ({
      left: `f_cap * (${radiant ? "T_lim" : radiantText("T_lim")}) + (1 - f_cap) * T_room`,
      right: "T_cap",
      meaning: "a surface left in the heat settles at the onset of charring",
      when: `capped == 1 and ${radiant}equalText(heatSource, "radiant")`,
    }),
  ),
  ...sumSteps("early", "coldest spot, fast end, advised source hot by its error"),
  ...sumSteps("late", "coldest spot, slow end, advised source cold by its error"),
  {
    symbol: "T_adv",
    meaning: "source on the safe side",
    is: "T_u - dT_src",
    when: 'has_early == 1 and not equalText(heatSource, "radiant")',
  },
  {
    symbol: "T_adv",
    meaning: "source on the safe side: the heater under which a surface settles at its limit",
    is: "((T_u * h - h_r * T_m - h_c * T_room) / (epsilon * 5.670374419e-8 W/(m^2 K^4)) + T_m^4)^(1/4) - dT_src",
    when: 'has_early == 1 and equalText(heatSource, "radiant")',
  },
  { solved: "t_a1", meaning: "earliest time at the advised source" },
  { left: sumText("early", "t_a1"), right: "T_l", meaning: "the coldest spot is there", when: "has_early == 1" },
  { solved: "t_a2", meaning: "time at the advised source that is surely enough" },
  { left: sumText("late", "t_a2"), right: "T_l", meaning: "the coldest spot is there", when: "has_late == 1" },
]
