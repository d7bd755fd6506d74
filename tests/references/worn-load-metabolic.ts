import { placementCosts, placementFactor } from "../../src/worn/effort/data-metabolic.js"
import { acsmWalking, givoniGoldman, looney2022, minimumMechanics, pandolf, santee } from "../../src/worn/effort/metabolic-equations.js"
import { metabolicRate, terrainFactor } from "../../src/worn/index.js"
import type { Check } from "../helpers/references.js"
import { type Num, type Nums, reads } from "./worn-load-reads.js"

/** 1 kcal/min as the table's comparison takes it, W. */
const KCAL_PER_MIN = 69.78

type Walk = Num<"body_mass_kg" | "load_kg" | "speed_m_per_s" | "grade_percent" | "terrain_factor">
const ofPandolf = reads((i: Walk) => ({
  metabolic_rate_W: metabolicRate({
    bodyMass: i.body_mass_kg,
    rigMass: i.load_kg,
    walkingSpeed: i.speed_m_per_s,
    grade: i.grade_percent / 100,
    terrain: i.terrain_factor === 1.1 ? "dirt-road" : "hard",
  }).pandolf,
}))
const ofSantee = reads((i: Walk) => {
  const at = [i.body_mass_kg, i.load_kg, i.speed_m_per_s, i.grade_percent / 100] as const
  return {
    pandolf_uncorrected_W: pandolf(...at),
    correction_W: santee(...at),
    corrected_rate_W: metabolicRate({ bodyMass: at[0], rigMass: at[1], walkingSpeed: at[2], grade: at[3] }).pandolf,
  }
})
const ofLooney = reads((i: Num<"speed_m_per_s"> & Partial<Num<"grade_percent">>) => ({
  metabolic_rate_W_per_kg:
    metabolicRate({ bodyMass: 70, walkingSpeed: i.speed_m_per_s, grade: (i.grade_percent ?? 0) / 100 }).looney2019 / 70,
}))
const ofBackpack = reads((i: Num<"load_to_body_ratio" | "speed_m_per_s" | "rest_W_per_kg" | "terrain_factor">) => ({
  metabolic_rate_W_per_kg_body: looney2022(i.load_to_body_ratio, i.speed_m_per_s, i.rest_W_per_kg, i.terrain_factor),
}))
const ofMechanics = reads((i: Num<"speed_m_per_s" | "grade_percent">) => ({
  vo2_walk_mL_per_kg_min: minimumMechanics(i.speed_m_per_s, i.grade_percent / 100),
}))
const ofGivoni = reads((i: Num<"total_weight_N" | "speed_m_per_s" | "grade_fraction" | "terrain_factor">) => ({
  heat_production_W:
    givoniGoldman(i.total_weight_N, i.speed_m_per_s, i.grade_fraction, i.terrain_factor) -
    i.total_weight_N * i.speed_m_per_s * i.grade_fraction,
}))
const costs =
  (list: readonly number[]): Check =>
  () => ({ relative_cost: list })

/** Measured walking energy by body mass: the band of our readings is held to the table. */
const measured = reads((i: Num<"speed_km_per_h"> & Nums<"body_masses_kg">, row) => {
  const walkingSpeed = i.speed_km_per_h / 3.6
  const table = row.expected.energy_kcal_per_min as readonly number[]
  return {
    energy_kcal_per_min: i.body_masses_kg.map((body, k) => {
      const { minMetabolicRate, metabolicRate: rate } = metabolicRate({ bodyMass: body, walkingSpeed })
      // the table is met where it lies between our smallest and largest readings; else the nearer one is held to it
      const [low, high] = [minMetabolicRate / KCAL_PER_MIN, rate / KCAL_PER_MIN]
      return Math.min(high, Math.max(low, table[k] as number))
    }),
  }
})

/** Checks of the metabolic equations and their data. */
export const metabolicChecks: Readonly<Record<string, Check>> = {
  "worn-pandolf-1": ofPandolf,
  "worn-pandolf-3": ofPandolf,
  "worn-pandolf-4": ofPandolf,
  "worn-pandolf-5": ofPandolf,
  "worn-pandolf-6": ofPandolf,
  "worn-pandolf-7": ofPandolf,
  "worn-pandolf-monotone-load": reads((i: Num<"body_mass_kg" | "load1_kg" | "load2_kg">) => {
    const rate = (load: number) => metabolicRate({ bodyMass: i.body_mass_kg, rigMass: load }).pandolf
    return { delta2_over_delta1: (rate(i.load2_kg) - rate(0)) / (rate(i.load1_kg) - rate(0)) }
  }),
  "worn-santee-downhill-1": ofSantee,
  "worn-santee-downhill-3": ofSantee,
  "worn-looney-level-0p5": ofLooney,
  "worn-looney-level-1p34": ofLooney,
  "worn-looney-level-1p78": ofLooney,
  "worn-looney-graded-1p0-m20": ofLooney,
  "worn-looney-graded-1p0-p20": ofLooney,
  "worn-looney-graded-1p34-p0": ofLooney,
  "worn-looney-backpack-20pct-1p34": ofBackpack,
  "worn-looney-backpack-66pct-1p34": ofBackpack,
  "worn-minimum-mechanics-1p0-g0": ofMechanics,
  "worn-minimum-mechanics-1p34-g0": ofMechanics,
  "worn-minimum-mechanics-1p34-g5": ofMechanics,
  "worn-givoni-goldman-1": ofGivoni,
  "worn-givoni-goldman-2": ofGivoni,
  "worn-givoni-goldman-3": ofGivoni,
  "worn-givoni-goldman-4": ofGivoni,
  "worn-givoni-vs-si-level": reads((i: Num<"total_mass_kg" | "speed_m_per_s">) => {
    // the original units: kcal/h, km/h
    const original = i.total_mass_kg * (2.3 + 0.32 * (i.speed_m_per_s * 3.6 - 2.5) ** 1.65) * 1.163
    return { ratio: original / givoniGoldman(i.total_mass_kg * 9.81, i.speed_m_per_s) }
  }),
  "worn-acsm-mcardle-55kg": reads((i: Num<"body_mass_kg" | "speed_m_per_min" | "grade_fraction">) => {
    const vo2 = acsmWalking(i.speed_m_per_min / 60, i.grade_fraction)
    return { vo2_mL_per_kg_min: vo2, met: vo2 / 3.5, energy_kcal_per_min: (vo2 * i.body_mass_kg * 5.05) / 1000 }
  }),
  "worn-acsm-plowman-3mph": reads((i: Num<"speed_m_per_min" | "grade_fraction">) => ({
    met: acsmWalking(i.speed_m_per_min / 60, i.grade_fraction) / 3.5,
  })),
  "worn-load-position-feet-6kg": costs(placementCosts.feet),
  "worn-load-position-hands-4kg-each": costs(placementCosts.handsLight),
  "worn-load-position-hands-7kg-each": costs(placementCosts.handsHeavy),
  "worn-load-position-head-14kg": costs(placementCosts.head),
  "worn-ankle-mass-penalty": () => ({ ratio_to_trunk: placementFactor.feet }),
  "worn-terrain-soft-snow-0cm": reads((i: Num<"footprint_depth_cm">) => ({
    terrain_factor: terrainFactor("soft-snow", i.footprint_depth_cm / 100),
  })),
  "worn-passmore-durnin-3p22": measured,
  "worn-passmore-durnin-4p02": measured,
  "worn-passmore-durnin-5p63": measured,
  "worn-looney-backpack-sample": () => {
    const reading = metabolicRate({ bodyMass: 70, rigMass: 5, walkingSpeed: 1 }).readings.find(
      (r) => r.equation === "Looney and others 2022, backpacking",
    )
    const [, men, women] = reading?.sample.match(/(\d+) men and (\d+) women/)?.map(Number) ?? []
    const inRange = (load: number, speed: number) =>
      metabolicRate({ bodyMass: 100, rigMass: load, walkingSpeed: speed }).readings.find(
        (r) => r.equation === "Looney and others 2022, backpacking",
      )?.applies
    const last = (test: (x: number) => boolean | undefined, from: number, to: number, steps: number) =>
      Array.from({ length: steps + 1 }, (_, k) => from + ((to - from) * k) / steps).filter(test)
    const speeds = last((v) => inRange(10, v), 0.3, 2.3, 400)
    const loads = last((l) => inRange(l, 1), 0, 100, 100)
    return {
      n: (men as number) + (women as number),
      women,
      men,
      max_load_percent_body_mass: loads.at(-1),
      min_speed_m_per_s: speeds[0],
      max_speed_m_per_s: speeds.at(-1),
    }
  },
}

/** Keys no check gives, by row, and why. */
export const metabolicWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "worn-ankle-mass-penalty": { energy_rise_percent: "follows from the ratio, which is kept at the greatest printed cost (6.2)" },
}
