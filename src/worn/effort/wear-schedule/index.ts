import { bandField, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../../solver/index.js"
import { publishedShare } from "../../load/data-load.js"
import { CHILD_PACKS, FREY_LAW_2012, HALL, NIOSH_1993, PASSMORE } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import { enduranceSources, jointTorques, nioshShares, recoveryTime, workPart } from "../data-endurance.js"
import { lightestWalker } from "../data-metabolic.js"
import { tooLight } from "../metabolic-rate/index.js"
import { wearScheduleCautions } from "./cautions.js"
import { wearScheduleSteps } from "./formulae.js"
import { aerobicPower, allowance, firstLimit, heaviest, heaviestLoad, isWalked, isWorn, rateOf, restsNeeded, strains } from "./strain.js"
import type { WearSchedule, WearScheduleCaution, WearScheduleInput, WearScheduleRefusal } from "./types.js"

export type { PartWorn, WearActivity, WearPart, WearSchedule, WearScheduleInput } from "./types.js"

/** Share of the aerobic capacity published for work of that length, s. */
const shareFor = (worn: number): number => (nioshShares.find((n) => worn <= n.upTo * (1 + 1e-9)) ?? nioshShares[2]).share

/** Highest aerobic capacity taken, mL/(kg·min). */
const HIGHEST_CAPACITY = 90
/** Lightest rig taken, kg. */
const LIGHTEST = wearerFields.rigMass.min

/** Refusal of a plan whose hardest part asks for more than the wearer's aerobic power; null for others. */
function beyondCapacity(si: SiOf<WearScheduleInput>): NoSolution<WearScheduleRefusal> | null {
  const power = aerobicPower(si)
  const worn = si.plan.filter(isWorn)
  const hardestWith = (load: number) => Math.max(...worn.map((p) => rateOf(si, p, load)))
  const most = hardestWith(si.rigMass)
  if (most <= power) return null
  const hardest = worn.find((p) => rateOf(si, p, si.rigMass) === most) as (typeof worn)[number]
  // a billionth more, so that rounding cannot refuse it again
  const maxOxygenUptake = (si.maxOxygenUptake * most * (1 + 1e-9)) / power
  const lightEnough = (load: number) => hardestWith(load) <= power
  const published = Math.min(si.rigMass, publishedShare(si.bodyMass) * si.bodyMass)
  const rigMass = lightEnough(LIGHTEST) ? heaviest(published, lightEnough).load : 0
  return refuse(
    "insufficient-capacity",
    "'{part}' asks for {metabolicRate power W}, {shortBy power W} more than the wearer's maximum aerobic power: slow down, lighten the rig or leave it out.",
    most - power,
    { metabolicRate: most },
    { ...(rigMass >= LIGHTEST ? { rigMass } : {}), ...(maxOxygenUptake <= HIGHEST_CAPACITY ? { maxOxygenUptake } : {}) },
    { part: hardest.name },
  )
}

function solve(si: SiOf<WearScheduleInput>): WearSchedule | NoSolution<WearScheduleRefusal> {
  const refused = tooLight(si.bodyMass, beyondCapacity({ ...si, bodyMass: lightestWalker }) === null) ?? beyondCapacity(si)
  if (refused) return refused
  const power = aerobicPower(si)
  const worn = si.plan.filter(isWorn)
  const massAtLimit = publishedShare(si.bodyMass) * si.bodyMass
  const strain = strains(si, si.rigMass)
  const duration = si.plan.reduce((sum, p) => sum + p.duration, 0)
  const wornTime = worn.reduce((sum, p) => sum + p.duration, 0)
  const { listed, count } = restsNeeded(si)
  const restDuration = si.recoveryTimeConstant * Math.log(1 / si.resumeStrain)
  const peakStrain = Math.max(...strain)
  let clock = 0
  const first = firstLimit(si, si.rigMass)
  return {
    duration,
    wornDuration: wornTime,
    peakStrain: { low: Math.max(...strains(si, si.rigMass, "lenient")), high: peakStrain },
    endStrain: strain.at(-1) as number,
    bearable: first === null && si.rigMass <= massAtLimit,
    massAtLimit,
    maxUnbrokenDuration: Math.min(...worn.map((p) => allowance(si, p, si.rigMass))),
    restDuration,
    meanShare: worn.reduce((sum, p) => sum + p.duration * rateOf(si, p, si.rigMass), 0) / (wornTime * power),
    shareLimit: shareFor(wornTime),
    firstLimit: first,
    rests: listed,
    resting: { count, total: count * restDuration },
    maxRig: { low: heaviestLoad(si, "strict"), high: heaviestLoad(si, "lenient") },
    plan: si.plan.map((part, i) => {
      const startTime = clock
      clock += part.duration
      const metabolicRate = rateOf(si, part, si.rigMass)
      return {
        name: part.name,
        activity: part.activity,
        startTime,
        endTime: clock,
        metabolicRate,
        capacityShare: metabolicRate / power,
        maxDuration: isWorn(part) ? allowance(si, part, si.rigMass) : null,
        strain: strain[i] as number,
      }
    }),
  }
}

const heaviestFields = {
  rigMass: { kind: "mass", label: "mass" },
  massShare: { kind: "ratio", label: "share of body mass", unit: "%" },
  boundBy: { kind: "text", label: "limited by" },
  iterations: { kind: "number", label: "iterations" },
  residual: { kind: "number", label: "residual" },
} as const

const span = (label: string) => ({ kind: "time", label }) as const

/**
 * A day with the rig on: how the strain adds up, when to rest and for how long, and how heavy a rig may be for it.
 *
 * Strain rises by dt/T while the rig is worn and fades as e^(−t/τ) while it is off; 1 is the limit. T is the shortest
 * of: p·(7200/q − 7020 s), the part p of the time to exhaustion of whole-body work, q the metabolic rate (largest of
 * the published equations, level hard ground) over the wearer's aerobic capacity (unless given, that of an untrained
 * adult); the time for which the share q is published as acceptable (50 % 1 h, 40 % 2 h, 33 % 8 h, log T straight
 * between); and, where a moment is given, the same part of the holding time of the back, 22.69·(M/M_m)^−2.27 s, M_m its
 * strength (unless given, women's mean). The first two disagree widely for gentle work: `peakStrain.low` and
 * `maxRig.high` show what the longer one says. Stage work costs 1.5 times walking at its speed, sitting 1 MET on
 * the whole mass. Rests of τ·ln(1/r) bring the strain down to r. The heaviest load within the limit is bisected, the
 * moment in proportion, and never above the published share of body mass (15 %, below 45 kg 10 %). Valid for healthy
 * adults from 36 kg, 30 to 100 % of the capacity; more mass never gives longer wear.
 *
 * Stage factor and capacity are common practice, without a source.
 *
 * **Inputs**
 * - `bodyMass`: body mass [m_w; 20 to 300 kg]
 * - `rigMass`: rig mass [m_r; 10 g to 150 kg]
 * - `plan`: plan [list of 1 to 200]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `activity`: activity [standing, walking, stage, sitting or off]
 *   - `duration`: duration [t; 60 s to 12 h]
 *   - `walkingSpeed`: walking speed [v; 0 to 2.5 m/s; optional]
 * - `maxOxygenUptake`: maximum oxygen uptake, mL/(kg·min) [c_o; 10 to 90; default 30]
 * - `backMoment`: moment the back holds [M_b; 0 to 500 N m; optional]
 * - `backStrength`: strength of the back [M_m; 10 to 600 N m; default 130 N m]
 * - `stageFactor`: cost of stage work [k_s; 1 to 4; default 1.5]
 * - `workShare`: share of the time to exhaustion [p_w; 0.1 to 1; default 0.333333]
 * - `recoveryTimeConstant`: time constant of recovery [tau; 10 min to 6 h; default 22.2167 min]
 * - `resumeStrain`: strain at which a rest ends [r; 0.05 to 0.9; default 0.5]
 *
 * **Results**
 *
 * `duration`: length of the plan [t_d; s]; `wornDuration`: of it with the rig on [t_w; s]; `peakStrain`: peak strain
 * [S_l to S_m; as a fraction]; `endStrain`: strain at the end [S_e; as a fraction]; `bearable`: within the stricter
 * published limit [yes or no]; `massAtLimit`: mass at the published share of body mass [m_l; kg];
 * `maxUnbrokenDuration`: maximum unbroken wear, hardest part [T_m; s]; `restDuration`: length of one rest [t_r; s];
 * `meanShare`: mean share of the capacity [q_m; as a fraction]; `shareLimit`: published acceptable share for that time
 * [q_l; as a fraction]; `firstLimit`: limit first reached [group]; `rests`: rests to put in [list]; `resting`: rests
 * in all [group]; `maxRig`: maximum rig within the published limits [group]; `plan`: parts [list].
 *
 * **Symbols of the working**
 *
 * w: 1 where the rig is on; M_k: metabolic rate of each part, by metabolicRate; sitting and off: 1 MET [W]; b_t:
 * durations in s; P_o: maximum aerobic power (5.0 kcal/L) [W]; q_k: share of the capacity; e_b: effort of the back;
 * R_b: strain per second by the back; K_k: work period by Kamon in s; N_k: work time by the shares of 50, 40 and 33 %
 * for 1, 2 and 8 h, in s; R_k: strain per second, breath or back, stricter limit; R_l: the same by the more lenient
 * limit; c_k: time off so far over the time constant; S_k: strain after each part.
 *
 * **Sources**
 * - L. A. Frey Law, K. G. Avin: Endurance time is joint-specific: a modelling and meta-analysis investigation,
 *   Ergonomics 53, 2010, power models by joint (not verified against the document)
 * - A. T. Johnson (after E. Kamon 1981): Biomechanics and Exercise Physiology, 1991, equations 2.6.1 to 2.6.4, table
 *   2.2.2
 * - K. El ahrache, D. Imbeau, B. Farbos: Percentile values for determining maximum endurance times for static muscular
 *   work, Int. J. Ind. Ergon. 36, 2006, models compared, Rohmert 1960 among them (not verified against the document)
 * - W. Rohmert: Problems of determination of rest allowances, Applied Ergonomics 4, 1973, rest after a static hold
 *   (not verified against the document)
 * - T. R. Waters and others: Revised NIOSH equation for the design and evaluation of manual lifting tasks, Ergonomics
 *   36, 1993, energy criterion: 50, 40 and 33 % of the aerobic capacity for 1, 2 and 8 h (not verified against the
 *   document)
 * - L. A. Frey-Law, J. M. Looft, J. Heitsman: A three-compartment muscle fatigue model accurately predicts
 *   joint-specific maximum endurance times for sustained isometric tasks, J. Biomech. 45, 2012, recovery rate of the
 *   trunk (not verified against the document)
 * - S. J. Hall: Basic Biomechanics, 6th, 2012, chapter 9: 15 % of body mass; problem 9.1: lever arm of the back
 *   muscles
 * - American Academy of Pediatrics; American Occupational Therapy Association: Backpack guidance for children: no more
 *   than 10 to 20 % of body mass, 2018
 * - R. Passmore, J. V. G. A. Durnin: Human energy expenditure, Physiol. Rev. 35, 1955, energy of walking by body mass,
 *   36 to 91 kg
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-capacity`, by how much and what load or capacity it would take; `outside-data` below 36 kg
 * @example
 * ```ts
 * import { wearSchedule } from 'alula/worn'
 * const day = wearSchedule({
 *   bodyMass: '60 kg', rigMass: '9 kg',
 *   plan: [
 *     { name: 'procession', activity: 'walking', duration: '90 min' },
 *     { name: 'break', activity: 'off', duration: '30 min' },
 *     { name: 'way back', activity: 'walking', duration: '90 min' },
 *   ],
 * })
 * day.bearable // => false
 * ```
 */
export const wearSchedule: Solver<WearScheduleInput, WearSchedule, WearScheduleRefusal, WearScheduleCaution> = /* @__PURE__ */ solver<
  WearScheduleInput,
  WearSchedule,
  WearScheduleRefusal,
  WearScheduleCaution
>("wearSchedule", "When to rest, and how heavy a rig may be for the day", solve, () => ({
  input: {
    bodyMass: wearerFields.bodyMass,
    rigMass: wearerFields.rigMass,
    plan: {
      kind: "list",
      label: "plan",
      min: 1,
      max: 200,
      of: {
        kind: "group",
        label: "part",
        fields: {
          name: { kind: "text", label: "name", min: 1, max: 100 },
          activity: {
            kind: "choice",
            label: "activity",
            options: { standing: "standing", walking: "walking", stage: "on stage", sitting: "sitting, rig on", off: "rig off" },
          },
          duration: { kind: "time", symbol: "t", label: "duration", min: 60, max: "12 h", typical: ["5 min", "2 h"] },
          walkingSpeed: { ...wearerFields.walkingSpeed, default: null },
        },
      },
    },
    maxOxygenUptake: {
      kind: "number",
      symbol: "c_o",
      label: "maximum oxygen uptake, mL/(kg·min)",
      min: 10,
      max: HIGHEST_CAPACITY,
      typical: [22, 45],
      default: 30,
    },
    backMoment: { kind: "moment", symbol: "M_b", label: "moment the back holds", min: 0, max: 500, typical: [2, 40], default: null },
    backStrength: {
      kind: "moment",
      symbol: "M_m",
      label: "strength of the back",
      min: 10,
      max: 600,
      typical: [100, 240],
      default: jointTorques.backExtension.female,
    },
    stageFactor: { kind: "number", symbol: "k_s", label: "cost of stage work", min: 1, max: 4, typical: [1.2, 2], default: 1.5 },
    workShare: {
      kind: "ratio",
      symbol: "p_w",
      label: "share of the time to exhaustion",
      min: 0.1,
      max: 1,
      typical: [0.2, 0.5],
      default: workPart,
    },
    recoveryTimeConstant: {
      kind: "time",
      symbol: "tau",
      label: "time constant of recovery",
      min: "10 min",
      max: "6 h",
      typical: ["15 min", "1 h"],
      default: recoveryTime,
    },
    resumeStrain: {
      kind: "ratio",
      symbol: "r",
      label: "strain at which a rest ends",
      min: 0.05,
      max: 0.9,
      typical: [0.2, 0.7],
      default: 0.5,
    },
  },
  output: {
    duration: { kind: "time", symbol: "t_d", label: "length of the plan" },
    wornDuration: { kind: "time", symbol: "t_w", label: "of it with the rig on" },
    peakStrain: bandField("ratio", "peak strain", {
      symbols: ["S_l", "S_m"],
      labels: ["peak strain, more lenient limit", "peak strain, stricter limit"],
      unit: "%",
    }),
    endStrain: { kind: "ratio", symbol: "S_e", label: "strain at the end", unit: "%" },
    bearable: { kind: "flag", label: "within the stricter published limit" },
    massAtLimit: { kind: "mass", symbol: "m_l", label: "mass at the published share of body mass" },
    maxUnbrokenDuration: { kind: "time", symbol: "T_m", label: "maximum unbroken wear, hardest part" },
    restDuration: { kind: "time", symbol: "t_r", label: "length of one rest" },
    meanShare: { kind: "ratio", symbol: "q_m", label: "mean share of the capacity", unit: "%" },
    shareLimit: { kind: "ratio", symbol: "q_l", label: "published acceptable share for that time", unit: "%" },
    firstLimit: {
      kind: "group",
      label: "limit first reached",
      fields: { time: span("after"), wornDuration: span("worn until then"), during: { kind: "text", label: "during" } },
    },
    rests: {
      kind: "list",
      label: "rests to put in",
      of: {
        kind: "group",
        label: "rest",
        fields: { time: span("at"), during: { kind: "text", label: "during" }, duration: span("for") },
      },
    },
    resting: { kind: "group", label: "rests in all", fields: { count: { kind: "number", label: "number" }, total: span("together") } },
    maxRig: {
      kind: "group",
      label: "maximum rig within the published limits",
      fields: {
        low: { kind: "group", label: "maximum rig, stricter limit", fields: heaviestFields },
        high: { kind: "group", label: "maximum rig, more lenient limit", fields: heaviestFields },
      },
    },
    plan: {
      kind: "list",
      label: "parts",
      of: {
        kind: "group",
        label: "part",
        fields: {
          name: { kind: "text", label: "name" },
          activity: { kind: "text", label: "activity" },
          startTime: span("start"),
          endTime: span("end"),
          metabolicRate: { kind: "power", label: "metabolic rate", unit: "W" },
          capacityShare: { kind: "ratio", label: "share of the capacity", unit: "%" },
          maxDuration: span("unbroken at most"),
          strain: { kind: "ratio", label: "strain at the end", unit: "%" },
        },
      },
    },
  },
  example: {
    bodyMass: "60 kg",
    rigMass: "6 kg",
    plan: [
      { name: "procession", activity: "walking", duration: "60 min" },
      { name: "break", activity: "off", duration: "30 min" },
      { name: "dance", activity: "stage", duration: "15 min", walkingSpeed: "0.6 m/s" },
      { name: "photographs", activity: "standing", duration: "20 min" },
    ],
  },
  formulae: wearScheduleSteps,
  sources: [...enduranceSources, NIOSH_1993, FREY_LAW_2012, HALL, CHILD_PACKS, PASSMORE],
  check: ({ plan }) => {
    const faults = []
    if (!plan.some(isWorn)) faults.push(inconsistent(["plan"], "no part with the rig on", "at least one part with the rig on"))
    const total = plan.reduce((sum, p) => sum + p.duration, 0)
    if (!(total <= 86400)) faults.push(inconsistent(["plan"], "{total time h} in all", "no more than 24 h", { total }))
    plan.forEach((part, i) => {
      if (part.walkingSpeed !== null && part.walkingSpeed > 0 && !isWalked(part))
        faults.push(
          inconsistent(
            ["plan", i, "walkingSpeed"],
            "{walkingSpeed speed m/s} in a part that is not walked",
            "no speed, or the activity 'walking' or 'stage'",
            {
              walkingSpeed: part.walkingSpeed,
            },
          ),
        )
    })
    return faults
  },
  cautions: wearScheduleCautions,
}))
