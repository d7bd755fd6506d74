import type { SiOf } from "../../../solver/index.js"
import { publishedShare } from "../../load/data-load.js"
import { exhaustionTime, holdingTime, nioshTime } from "../data-endurance.js"
import { oxygenEnergy } from "../data-metabolic.js"
import { plannedRate } from "../metabolic-rate/index.js"
import type { FirstLimit, MaxRig, Rest, WearScheduleInput } from "./types.js"

type Si = SiOf<WearScheduleInput>
type Part = Si["plan"][number]

/** Watts for one MET (3.5 mL of oxygen per kg and minute) and kilogram. */
const perMet = (3.5 * oxygenEnergy) / 60000

/** Maximum aerobic power of the wearer, W. */
export function aerobicPower(si: Si): number {
  return (si.maxOxygenUptake * si.bodyMass * oxygenEnergy) / 60000
}

/** Walking speed where a part that walks names none, m/s (common practice: a crowd's pace). */
export const usualWalkingSpeed = 0.9

/** Whether a part is walked, on a stage or off it: the others have no speed. */
export const isWalked = (part: Part): boolean => part.activity === "walking" || part.activity === "stage"

/** Metabolic rate of one part of the plan, W, with a load. */
export function rateOf(si: Si, part: Part, load: number): number {
  switch (part.activity) {
    case "walking":
      return plannedRate(si.bodyMass, load, part.walkingSpeed ?? usualWalkingSpeed)
    case "stage":
      return si.stageFactor * plannedRate(si.bodyMass, load, part.walkingSpeed ?? usualWalkingSpeed)
    case "standing":
      return plannedRate(si.bodyMass, load, 0)
    case "sitting":
      return perMet * (si.bodyMass + load)
    default:
      return perMet * si.bodyMass
  }
}

/** Whether the rig is worn in a part of the plan. */
export const isWorn = (part: Part): boolean => part.activity !== "off"

/** Static effort of the back, as a share of its strength, with a load; null where no moment is given. */
export function backEffort(si: Si, load: number): number | null {
  return si.backMoment === null ? null : ((si.backMoment / si.rigMass) * load) / si.backStrength
}

/** Which published limit on whole-body work counts: the shorter of the two at every share, or the longer. */
export type Reading = "strict" | "lenient"

/** Unbroken time in which a part uses the wearer up, s, whichever of breath and back is first; 0 beyond the capacity. */
export function allowance(si: Si, part: Part, load: number, reading: Reading = "strict"): number {
  const share = rateOf(si, part, load) / aerobicPower(si)
  const times = share <= 1 ? [si.workShare * exhaustionTime(share), nioshTime(share)] : [0]
  const aerobic = reading === "strict" ? Math.min(...times) : Math.max(...times)
  const effort = backEffort(si, load)
  // below a millionth of the strength nothing is held
  return effort === null || effort < 1e-6 ? aerobic : Math.min(aerobic, si.workShare * holdingTime("trunk", effort))
}

/** Strain after each part of the plan without extra rests: worn time over its allowance, fading while the rig is off. */
export function strains(si: Si, load: number, reading: Reading = "strict"): readonly number[] {
  let strain = 0
  // parts alike in activity and speed share an allowance
  const known = new Map<string, number>()
  const allowed = (part: Part) => {
    const key = `${part.activity} ${part.walkingSpeed}`
    const time = known.get(key) ?? allowance(si, part, load, reading)
    known.set(key, time)
    return time
  }
  return si.plan.map((part) => {
    strain = isWorn(part) ? strain + part.duration / allowed(part) : strain * Math.exp(-part.duration / si.recoveryTimeConstant)
    return strain
  })
}

/** Finds {@link FirstLimit}; null where the plan stays within the limit. */
export function firstLimit(si: Si, load: number): FirstLimit | null {
  let [strain, after, worn] = [0, 0, 0]
  for (const part of si.plan) {
    if (isWorn(part)) {
      const allowed = allowance(si, part, load)
      const left = (1 - strain) * allowed
      if (!(left >= part.duration)) return { time: after + left, wornDuration: worn + left, during: part.name }
      strain += part.duration / allowed
      worn += part.duration
    } else strain *= Math.exp(-part.duration / si.recoveryTimeConstant)
    after += part.duration
  }
  return null
}

/** Longest list of rests that is written out. */
const MOST_LISTED = 100

/** Rests, each as the strain reaches 1, down to `resumeStrain`. */
export function restsNeeded(si: Si): { readonly listed: readonly Rest[]; readonly count: number } {
  const duration = si.recoveryTimeConstant * Math.log(1 / si.resumeStrain)
  const listed: Rest[] = []
  let [strain, clock, count] = [0, 0, 0]
  for (const part of si.plan) {
    if (!isWorn(part)) {
      strain *= Math.exp(-part.duration / si.recoveryTimeConstant)
      clock += part.duration
      continue
    }
    const allowed = allowance(si, part, si.rigMass)
    const over = strain + part.duration / allowed - 1
    // a rest is due each time the strain has risen by 1 − resumeAt again
    const due = over > 1e-12 ? Math.ceil(over / (1 - si.resumeStrain) - 1e-12) : 0
    for (let i = 0; i < due && listed.length < MOST_LISTED; i++)
      listed.push({ time: clock + (1 - strain + i * (1 - si.resumeStrain)) * allowed + i * duration, during: part.name, duration })
    count += due
    strain += part.duration / allowed - due * (1 - si.resumeStrain)
    clock += part.duration + due * duration
  }
  return { listed, count }
}

/** Largest load up to `most` with which `allowed` holds, by bisection; its safe end, with the steps taken. `allowed(0)` must hold. */
export function heaviest(most: number, allowed: (load: number) => boolean): { readonly load: number; readonly iterations: number } {
  if (allowed(most)) return { load: most, iterations: 0 }
  let [low, high, iterations] = [0, most, 0]
  while (high - low > 1e-12 * high && iterations < 100) {
    const middle = (low + high) / 2
    if (allowed(middle)) low = middle
    else high = middle
    iterations++
  }
  return { load: low, iterations }
}

/** Finds {@link MaxRig}; null where not even an empty harness is within the limit. */
export function heaviestLoad(si: Si, reading: Reading): MaxRig | null {
  const peak = (load: number) => Math.max(...strains(si, load, reading))
  if (!(peak(0) <= 1)) return null
  const most = publishedShare(si.bodyMass) * si.bodyMass
  const { load, iterations } = heaviest(most, (tried) => peak(tried) <= 1)
  return {
    rigMass: load,
    massShare: load / si.bodyMass,
    boundBy: load === most ? "published share of body mass" : "strain",
    iterations,
    residual: peak(load) - 1,
  }
}
