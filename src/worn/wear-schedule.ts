import type { Mass, Moment, Ratio, Speed, Time } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { takeItOff } from "./care.js"
import { enduranceSources, jointTorques, nioshShares, recoveryTime, workPart } from "./data-endurance.js"
import { loadGuidance } from "./data-load.js"
import {
  aerobicPower,
  allowance,
  backEffort,
  type FirstLimit,
  firstLimit,
  type HeaviestLoad,
  heaviestLoad,
  isWorn,
  type Rest,
  rateOf,
  restsNeeded,
  strains,
} from "./wear-strain.js"

/** What is done in a part of the day; in `off` the rig is taken off and set down. */
export type WearActivity = "standing" | "walking" | "stage" | "sitting" | "off"

/** One part of the day. */
export interface WearPart {
  /** Name of the part. */
  name: string
  /** What is done. */
  activity: WearActivity
  /** How long. */
  duration: Time
  /** Walking speed, in `walking` and `stage`. */
  speed?: Speed
}

/** Input of {@link wearSchedule}. */
export interface WearScheduleInput {
  /** Wearer's body mass, undressed. */
  bodyMass: Mass
  /** Mass of the rig. */
  load: Mass
  /** The day, part by part. */
  plan: readonly WearPart[]
  /** Greatest oxygen uptake, mL per kg of body mass and minute. */
  capacity?: number
  /** Moment the back holds with this load (`backMomentLeaning` of carriedLoad); null leaves the back out. */
  moment?: Moment | null
  /** Greatest moment of the back. */
  strength?: Moment
  /** Cost of a stage performance against plain walking at its speed. */
  stageFactor?: number
  /** Part of the time to exhaustion that counts as bearable. */
  workPart?: Ratio
  /** Time constant in which strain fades while the rig is off. */
  recovery?: Time
  /** Strain at which a rest ends. */
  resumeAt?: Ratio
}

/** One part of the day, worked out. */
export interface PartWorn {
  readonly name: string
  readonly activity: string
  readonly start: number
  readonly end: number
  /** Metabolic rate, W. */
  readonly rate: number
  /** Share of the aerobic capacity. */
  readonly capacityShare: number
  /** Unbroken time that uses the wearer up, s; null while the rig is off. */
  readonly allowance: number | null
  /** Strain at the end, without extra rests. */
  readonly strain: number
}

/** Result of {@link wearSchedule}. */
export interface WearSchedule {
  /** Length of the plan, and of it with the rig on, s. */
  readonly duration: number
  readonly worn: number
  /** Largest strain, and the last, without extra rests; 1 is the most that is bearable. */
  readonly peakStrain: number
  readonly endStrain: number
  /** Largest strain by the more lenient of the published limits on whole-body work. */
  readonly peakLenient: number
  /** Whether the plan is bearable as it stands, by this reckoning. */
  readonly bearable: boolean
  /** Longest unbroken wear in the hardest part, s. */
  readonly unbroken: number
  /** Length of one rest with the rig off, s. */
  readonly restLength: number
  /** Mean share of the aerobic capacity while the rig is on. */
  readonly meanShare: number
  /** Share that is published for so many hours of work. */
  readonly shareLimit: number
  /** When the strain first reaches 1; null where it never does. */
  readonly first: FirstLimit | null
  /** Rests that keep the strain at or below 1 (the first hundred). */
  readonly rests: readonly Rest[]
  /** How many rests in all, and how long together, s. */
  readonly resting: { readonly count: number; readonly total: number }
  /** Heaviest load with which the whole plan is bearable; null where not even none is. */
  readonly heaviest: HeaviestLoad | null
  /** The same by the more lenient of the published limits: the spread, not a recommendation. */
  readonly heaviestLenient: HeaviestLoad | null
  readonly parts: readonly PartWorn[]
}

/** Share of the aerobic capacity published for work of that length, s. */
const shareFor = (worn: number): number => (nioshShares.find((n) => worn <= n.upTo) ?? nioshShares[2]).share

function solve(si: SiOf<WearScheduleInput>): WearSchedule | NoSolution {
  const power = aerobicPower(si)
  const worn = si.plan.filter(isWorn)
  const hardest = worn.reduce((a, b) => (rateOf(si, b, si.load) > rateOf(si, a, si.load) ? b : a))
  const most = rateOf(si, hardest, si.load)
  if (!(most <= power)) {
    const least = (60000 * most) / (si.bodyMass * 20920)
    return refuse(
      "beyond-capacity",
      `'${hardest.name}' asks for ${most.toFixed(0)} W, more than the wearer's greatest aerobic power of ${power.toFixed(0)} W: slow down, lighten the rig or leave it out.`,
      most - power,
      { rate: most },
      { capacity: least },
    )
  }
  const strain = strains(si, si.load)
  const duration = si.plan.reduce((sum, p) => sum + p.duration, 0)
  const wornTime = worn.reduce((sum, p) => sum + p.duration, 0)
  const { listed, count } = restsNeeded(si)
  const restLength = si.recovery * Math.log(1 / si.resumeAt)
  const peakStrain = Math.max(...strain)
  let clock = 0
  const first = firstLimit(si, si.load)
  return {
    duration,
    worn: wornTime,
    peakStrain,
    endStrain: strain.at(-1) as number,
    peakLenient: Math.max(...strains(si, si.load, "lenient")),
    bearable: first === null,
    unbroken: Math.min(...worn.map((p) => allowance(si, p, si.load))),
    restLength,
    meanShare: worn.reduce((sum, p) => sum + p.duration * rateOf(si, p, si.load), 0) / (wornTime * power),
    shareLimit: shareFor(wornTime),
    first,
    rests: listed,
    resting: { count, total: count * restLength },
    heaviest: heaviestLoad(si, "strict"),
    heaviestLenient: heaviestLoad(si, "lenient"),
    parts: si.plan.map((part, i) => {
      const start = clock
      clock += part.duration
      const rate = rateOf(si, part, si.load)
      return {
        name: part.name,
        activity: part.activity,
        start,
        end: clock,
        rate,
        capacityShare: rate / power,
        allowance: isWorn(part) ? allowance(si, part, si.load) : null,
        strain: strain[i] as number,
      }
    }),
  }
}

function cautions(si: SiOf<WearScheduleInput>, out: WearSchedule): Caution[] {
  const hours = (seconds: number) => `${(seconds / 3600).toFixed(1)} h`
  const found: Caution[] = [takeItOff]
  if (out.first)
    found.push(
      caution(
        "not-bearable",
        "warning",
        `The strain reaches its limit after ${hours(out.first.after)}, in '${out.first.during}': take the rig off for the rests listed, share it between wearers${out.heaviest ? `, or bring it down to ${out.heaviest.load.toFixed(1)} kg` : ""}.`,
        "E. Kamon 1981 (work period one third of the time to exhaustion)",
      ),
    )
  if (out.heaviest === null)
    found.push(
      caution(
        "no-load-is-bearable",
        "warning",
        `By the stricter of the published limits this plan is too much even without a rig: put in breaks with the rig off, shorten it or slow it down.${out.heaviestLenient ? ` The more lenient one bears ${out.heaviestLenient.load.toFixed(1)} kg; it is no recommendation.` : ""}`,
        "E. Kamon 1981 against NIOSH lifting criteria, Waters and others 1993",
      ),
    )
  if (out.resting.total > out.worn)
    found.push(
      caution(
        "more-rest-than-wear",
        "warning",
        "The rests come to more than the time worn: this is no schedule but a sign that the rig is too heavy for the wearer.",
        "E. Kamon 1981 (work period one third of the time to exhaustion)",
      ),
    )
  if (out.meanShare > out.shareLimit)
    found.push(
      caution(
        "over-share",
        "warning",
        `On average ${(100 * out.meanShare).toFixed(0)} % of the aerobic capacity for ${hours(out.worn)}; ${(100 * out.shareLimit).toFixed(0)} % is published for so long. The stricter of this and the strain counts.`,
        "NIOSH lifting criteria, Waters and others 1993 (from memory)",
      ),
    )
  if (out.parts.some((p) => p.allowance !== null && p.capacityShare < 0.3))
    found.push(
      caution(
        "gentle-work-extrapolated",
        "caution",
        "Below 30 % of the capacity the time to exhaustion is extrapolated; skin, joints and patience give out before breath does. Take the rig off every hour all the same.",
        "E. Kamon 1981, equation 2.6.1 in Johnson 1991; hourly pause: common practice, no source",
      ),
    )
  const effort = backEffort(si, si.load)
  if (effort === null)
    found.push(
      caution(
        "back-left-out",
        "caution",
        "No moment was given, so the back is left out: only breath is reckoned. Take `backMomentLeaning` from carriedLoad.",
        "common practice, no source",
      ),
    )
  else if (effort < 0.15)
    found.push(
      caution(
        "back-extrapolated",
        "caution",
        "The back holds less than 15 % of its strength, where holding times are extrapolated.",
        "Frey Law and Avin 2010 (from memory)",
      ),
    )
  if (si.load > (loadGuidance[1] as (typeof loadGuidance)[number]).share * si.bodyMass)
    found.push(
      caution(
        "over-15-percent",
        "warning",
        "The rig is more than 15 % of body mass, above textbook advice for adults whatever the schedule says.",
        "S. J. Hall, Basic Biomechanics, 2012, chapter 9",
      ),
    )
  found.push(
    caution(
      "recovery-assumed",
      "note",
      "How fast strain fades is taken from a model of muscle fatigue (time constant about 22 min for the trunk) and the fitness from untrained adults: rehearse, ask the wearer, and prefer more rest. Heat, cold, drink and blisters are not counted.",
      "three-compartment fatigue model, Frey Law and others 2012 (from memory)",
    ),
  )
  return found
}

const heaviestFields = {
  load: { kind: "mass", label: "mass" },
  share: { kind: "ratio", label: "share of body mass", unit: "%" },
  iterations: { kind: "number", label: "iterations" },
  residual: { kind: "number", label: "residual" },
} as const

const span = (label: string) => ({ kind: "time", label }) as const

/**
 * A day with the rig on: how the strain adds up, when to rest and for how long, and how heavy a rig the day would bear.
 *
 * Strain rises by dt/T while the rig is worn and fades as e^(−t/τ) while it is off (τ default 1333 s); 1 is the most that is
 * bearable. T is the shortest of: p·(7200/q − 7020 s), the part p (default 1/3) of the time to exhaustion of whole-body work,
 * q the metabolic rate (largest of the published equations, level hard ground) over the wearer's aerobic capacity (default
 * 30 mL/(kg·min), an untrained adult); the time for which the share q is published as acceptable (50 % 1 h, 40 % 2 h,
 * 33 % 8 h, log T straight between); and, where a moment is given, the same part of the holding time of the back,
 * 22.69·(M/M_m)^−2.27 s, M_m its strength (default 130 N·m, women's mean). The first two disagree widely for gentle work:
 * `peakLenient` and `heaviestLenient` show what the longer one says. Walking speed is 0.9 m/s by default,
 * stage work costs 1.5 times walking at its speed, sitting 1 MET on the whole mass. Rests of τ·ln(1/r) bring the strain down
 * to r (default 1/2). The heaviest bearable load is bisected between nothing and body mass, the moment in proportion.
 * Valid for healthy adults, 30 to 100 % of the capacity; more mass never gives longer wear.
 *
 * Sources: Kamon 1981 in Johnson 1991, equation 2.6.1; Frey Law and Avin 2010; Frey Law and others 2012 (recovery, from
 * memory); NIOSH lifting criteria (Waters and others 1993, from memory); stage factor and capacity: common practice.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `beyond-capacity`, by how much and what capacity it would take
 * @example
 * ```ts
 * import { wearSchedule } from 'alula/worn'
 * const day = wearSchedule({
 *   bodyMass: '60 kg', load: '9 kg',
 *   plan: [
 *     { name: 'procession', activity: 'walking', duration: '90 min' },
 *     { name: 'break', activity: 'off', duration: '30 min' },
 *     { name: 'way back', activity: 'walking', duration: '90 min' },
 *   ],
 * })
 * day.bearable // => false
 * ```
 */
export const wearSchedule: Solver<WearScheduleInput, WearSchedule> = /* @__PURE__ */ solver<WearScheduleInput, WearSchedule>({
  name: "wearSchedule",
  title: "When to rest, and how heavy a rig the day would bear",
  input: {
    bodyMass: { kind: "mass", symbol: "m_w", label: "body mass", min: 20, max: 200, typical: [45, 110] },
    load: { kind: "mass", symbol: "m_r", label: "mass of the rig", above: 0, max: 150, typical: [1, 15] },
    plan: {
      kind: "list",
      label: "plan",
      min: 1,
      max: 200,
      of: {
        kind: "group",
        label: "part",
        fields: {
          name: { kind: "text", label: "name" },
          activity: {
            kind: "choice",
            label: "activity",
            options: { standing: "standing", walking: "walking", stage: "on stage", sitting: "sitting, rig on", off: "rig off" },
          },
          duration: { kind: "time", symbol: "t", label: "duration", min: 60, max: "12 h", typical: ["5 min", "2 h"] },
          speed: { kind: "speed", symbol: "v", label: "walking speed", min: 0, max: 2.5, typical: [0.4, 1.3], default: 0.9 },
        },
      },
    },
    capacity: {
      kind: "number",
      symbol: "c_o",
      label: "greatest oxygen uptake, mL/(kg·min)",
      min: 10,
      max: 90,
      typical: [22, 45],
      default: 30,
    },
    moment: { kind: "moment", symbol: "M_b", label: "moment the back holds", min: 0, max: 500, typical: [2, 40], default: null },
    strength: {
      kind: "moment",
      symbol: "M_m",
      label: "strength of the back",
      min: 10,
      max: 600,
      typical: [100, 240],
      default: jointTorques.backExtension.female,
    },
    stageFactor: { kind: "number", symbol: "k_s", label: "cost of stage work", min: 1, max: 4, typical: [1.2, 2], default: 1.5 },
    workPart: {
      kind: "ratio",
      symbol: "p_w",
      label: "bearable part of exhaustion",
      min: 0.1,
      max: 1,
      typical: [0.2, 0.5],
      default: workPart,
    },
    recovery: {
      kind: "time",
      symbol: "tau",
      label: "time constant of recovery",
      min: "10 min",
      max: "6 h",
      typical: ["15 min", "1 h"],
      default: recoveryTime,
    },
    resumeAt: { kind: "ratio", symbol: "r", label: "strain at which a rest ends", min: 0.05, max: 0.9, typical: [0.2, 0.7], default: 0.5 },
  },
  output: {
    duration: { kind: "time", symbol: "t_d", label: "length of the plan" },
    worn: { kind: "time", symbol: "t_w", label: "of it with the rig on" },
    peakStrain: { kind: "ratio", symbol: "S_m", label: "largest strain", unit: "%" },
    endStrain: { kind: "ratio", symbol: "S_e", label: "strain at the end", unit: "%" },
    peakLenient: { kind: "ratio", symbol: "S_l", label: "largest strain, lenient limits", unit: "%" },
    bearable: { kind: "flag", label: "bearable as planned, by this reckoning" },
    unbroken: { kind: "time", symbol: "T_m", label: "longest unbroken wear, hardest part" },
    restLength: { kind: "time", symbol: "t_r", label: "length of one rest" },
    meanShare: { kind: "ratio", symbol: "q_m", label: "mean share of the capacity", unit: "%" },
    shareLimit: { kind: "ratio", symbol: "q_l", label: "published for so long", unit: "%" },
    first: {
      kind: "group",
      label: "limit first reached",
      fields: { after: span("after"), worn: span("worn until then"), during: { kind: "text", label: "during" } },
    },
    rests: {
      kind: "list",
      label: "rests to put in",
      of: { kind: "group", label: "rest", fields: { at: span("at"), during: { kind: "text", label: "during" }, duration: span("for") } },
    },
    resting: { kind: "group", label: "rests in all", fields: { count: { kind: "number", label: "number" }, total: span("together") } },
    heaviest: { kind: "group", label: "heaviest rig the plan bears", fields: heaviestFields },
    heaviestLenient: { kind: "group", label: "the same by lenient limits", fields: heaviestFields },
    parts: {
      kind: "list",
      label: "parts",
      of: {
        kind: "group",
        label: "part",
        fields: {
          name: { kind: "text", label: "name" },
          activity: { kind: "text", label: "activity" },
          start: span("start"),
          end: span("end"),
          rate: { kind: "power", label: "metabolic rate", unit: "W" },
          capacityShare: { kind: "ratio", label: "share of the capacity", unit: "%" },
          allowance: span("unbroken at most"),
          strain: { kind: "ratio", label: "strain at the end", unit: "%" },
        },
      },
    },
  },
  example: {
    bodyMass: "60 kg",
    load: "6 kg",
    plan: [
      { name: "procession", activity: "walking", duration: "60 min" },
      { name: "break", activity: "off", duration: "30 min" },
      { name: "dance", activity: "stage", duration: "15 min", speed: "0.6 m/s" },
      { name: "photographs", activity: "standing", duration: "20 min" },
    ],
  },
  formulae: [
    { symbol: "w", kind: "number", meaning: "1 where the rig is on", given: (si) => si.plan.map((p) => (isWorn(p) ? 1 : 0)) },
    {
      symbol: "M_k",
      kind: "power",
      meaning: "metabolic rate of each part, by metabolicRate",
      given: (si) => si.plan.map((p) => rateOf(si, p, si.load)),
      source: "metabolicRate; sitting and off: 1 MET",
    },
    { symbol: "b_t", kind: "number", meaning: "durations in s", is: "t / (1 s)" },
    { symbol: "P_o", kind: "power", meaning: "greatest aerobic power (5.0 kcal/L)", is: "c_o * m_w / kg * 5 * 4184 / 60000 * (1 W)" },
    { symbol: "q_k", kind: "number", meaning: "share of the capacity", is: "M_k / P_o" },
    { symbol: "e_b", kind: "number", meaning: "effort of the back", is: "M_b / M_m", when: "has_moment" },
    {
      symbol: "R_b",
      kind: "number",
      meaning: "strain per second by the back",
      is: "e_b < 1e-6 ? 0 : 1 / (p_w * 22.69 * e_b^(-2.27))",
      when: "has_moment",
      source: "Frey Law and Avin 2010",
    },
    { symbol: "R_b", kind: "number", meaning: "back left out", is: "0", when: "not has_moment" },
    {
      symbol: "K_k",
      kind: "number",
      meaning: "work period by Kamon in s",
      is: "p_w * (7200 ./ q_k - 7020)",
      source: "Johnson 1991, equation 2.6.1",
    },
    {
      symbol: "N_k",
      kind: "number",
      meaning: "work time by the shares of 50, 40 and 33 % for 1, 2 and 8 h, in s",
      is: "map(q_k, f(z) = z >= 0.4 ? 3600 * 2^((z - 0.5) / (-0.1)) : 7200 * 4^((z - 0.4) / (-0.07)))",
      source: "Waters and others 1993",
    },
    {
      symbol: "R_k",
      kind: "number",
      meaning: "strain per second, breath or back, stricter limit",
      is: "map(1:size(q_k)[1], f(i) = max(1 / min(K_k[i], N_k[i]), R_b))",
    },
    {
      symbol: "R_l",
      kind: "number",
      meaning: "the same by the more lenient limit",
      is: "map(1:size(q_k)[1], f(i) = max(1 / max(K_k[i], N_k[i]), R_b))",
    },
    { symbol: "t_d", meaning: "length of the plan", is: "sum(t)" },
    { symbol: "t_w", meaning: "of it with the rig on", is: "sum(w .* b_t) * (1 s)" },
    { symbol: "c_k", kind: "number", meaning: "time off so far over the time constant", is: "cumsum((1 - w) .* b_t) / (tau / (1 s))" },
    {
      symbol: "S_k",
      kind: "number",
      meaning: "strain after each part",
      is: "map(-c_k, exp) .* cumsum(w .* b_t .* R_k .* map(c_k, exp))",
    },
    { symbol: "S_m", meaning: "largest strain", is: "max(S_k)" },
    {
      symbol: "S_l",
      meaning: "largest strain, lenient limits",
      is: "max(map(-c_k, exp) .* cumsum(w .* b_t .* R_l .* map(c_k, exp)))",
    },
    { symbol: "S_e", meaning: "strain at the end", is: "S_k[size(S_k)[1]]" },
    { symbol: "T_m", meaning: "longest unbroken wear in the hardest part", is: "1 / max(w .* R_k) * (1 s)" },
    { symbol: "t_r", meaning: "length of one rest", is: "tau * log(1 / r)" },
    { symbol: "q_m", meaning: "mean share of the capacity, rig on", is: "sum(w .* b_t .* q_k) / sum(w .* b_t)" },
    {
      symbol: "q_l",
      meaning: "published for so long",
      is: "t_w / (1 s) <= 3600 ? 0.5 : (t_w / (1 s) <= 7200 ? 0.4 : 0.33)",
      source: "Waters and others 1993",
    },
  ],
  sources: enduranceSources,
  check: ({ plan }) => {
    const faults = []
    if (!plan.some(isWorn)) faults.push(inconsistent(["plan"], "no part with the rig on", "at least one part with the rig on"))
    const total = plan.reduce((sum, p) => sum + p.duration, 0)
    if (!(total <= 86400)) faults.push(inconsistent(["plan"], `${(total / 3600).toFixed(1)} h in all`, "no more than a day"))
    return faults
  },
  solve,
  cautions,
})
