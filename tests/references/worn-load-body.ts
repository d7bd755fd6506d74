import { switchForce } from "../../src/worn/body/data-reach.js"
import { type SegmentTable, segmentRows, statureFractions, winterCompounds, winterTrunk } from "../../src/worn/body/data-segments.js"
import { type BodyLength, bodyDimension, bodySegments, breakaway, carriedLoad, strapPressure, survey } from "../../src/worn/index.js"
import { baseMotion, headMassLimit, loadGuidance, muscleForce, stability, walkingFactor } from "../../src/worn/load/data-load.js"
import {
  childStraps,
  hipBeltShare,
  mmHg,
  occlusionPressure,
  strapPressureLimit,
  testedWidths,
  throatRelease,
} from "../../src/worn/load/data-straps.js"
import type { Check } from "../helpers/references.js"
import { type Num, reads, table } from "./worn-load-reads.js"

const person = { bodyMass: 60, stature: 1.65 }
const rowOf = (of: SegmentTable, name: string) => segmentRows[of].find((r) => r.name === name) as (typeof segmentRows)["winter"][number]

/** A de Leva row, read back from the solver's masses, lengths and inertias. */
const deLeva = (name: string): Check => {
  const one = (sex: "Female" | "Male") => {
    const { segments, trunkParts } = bodySegments({ ...person, table: sex === "Female" ? "de-leva-female" : "de-leva-male" })
    const s = [...segments, ...trunkParts].find((r) => r.name === name) as (typeof segments)[number]
    const radius = (inertia: number | null) => (100 * Math.sqrt((inertia as number) / s.mass)) / s.length
    const key = sex.toLowerCase()
    return {
      [`mass_percent_${key}`]: (100 * s.mass) / person.bodyMass,
      [`com_percent_${key}`]: (100 * s.centre) / s.length,
      [`rg_sagittal_percent_${key}`]: radius(s.sagittal),
      [`rg_transverse_percent_${key}`]: radius(s.transverse),
      [`rg_longitudinal_percent_${key}`]: radius(s.longitudinal),
    }
  }
  return () => ({ ...one("Female"), ...one("Male") })
}

const winter = (name: string): Check => {
  const r = rowOf("winter", name)
  return table({ mass_fraction: r.mass, com_proximal: r.centre, com_distal: 1 - r.centre, rg_com: r.transverse })
}
const parallelAxis = (name: string): Check => {
  const { transverse, centre } = rowOf("winter", name)
  return table({ rg_proximal: Math.hypot(transverse as number, centre) })
}
const fractions = (names: readonly string[]) => names.reduce((sum, name) => sum + rowOf("winter", name).mass, 0)

const surveyNames: Readonly<Record<string, BodyLength>> = {
  acromialheight: "shoulder-height",
  axillaheight: "axilla-height",
  balloffootlength: "ball-of-foot-length",
  biacromialbreadth: "biacromial-breadth",
  bideltoidbreadth: "bideltoid-breadth",
  cervicaleheight: "neck-height",
  chestbreadth: "chest-breadth",
  chestcircumference: "chest-circumference",
  chestdepth: "chest-depth",
  footbreadthhorizontal: "foot-breadth",
  footlength: "foot-length",
  headbreadth: "head-breadth",
  headcircumference: "head-circumference",
  headlength: "head-length",
  hipbreadth: "hip-breadth",
  iliocristaleheight: "iliac-crest-height",
  interscyei: "across-back",
  overheadfingertipreachsitting: "overhead-reach-sitting",
  span: "span",
  stature: "stature",
  suprasternaleheight: "suprasternale-height",
  tenthribheight: "tenth-rib-height",
  thumbtipreach: "thumbtip-reach",
  trochanterionheight: "trochanter-height",
  waistbacklength: "waist-back-length",
  waistcircumference: "waist-circumference",
  wristheight: "wrist-height",
}
const femaleOnly = ["biacromialbreadth", "chestbreadth", "waistcircumference"]
const maleOnly = ["footbreadthhorizontal", "footlength", "overheadfingertipreachsitting"]

const surveyed = (sex: "female" | "male", dimension: BodyLength): Check => {
  const out = bodyDimension({ sex, dimension, percentile: 0.5 })
  return table({
    mean_mm: 1000 * out.mean,
    sd_mm: 1000 * out.standardDeviation,
    p5_mm: 1000 * out.p5,
    p50_mm: 1000 * out.p50,
    p95_mm: 1000 * out.p95,
  })
}
const surveyChecks = Object.fromEntries(
  Object.entries(surveyNames).flatMap(([id, dimension]) => [
    ...(maleOnly.includes(id) ? [] : [[`worn-ansur2-female-${id}`, surveyed("female", dimension)] as const]),
    ...(femaleOnly.includes(id) ? [] : [[`worn-ansur2-male-${id}`, surveyed("male", dimension)] as const]),
  ]),
)
const ratio = (of: BodyLength) => survey[of].female[0] / survey.stature.female[0]
const guidance = (index: number) => (loadGuidance[index] as (typeof loadGuidance)[number]).massShare
const straps = strapPressure.read(strapPressure.example)
const strapsWith = (change: object) => strapPressure.si({ ...straps, ...change }) as ReturnType<typeof strapPressure>

/** Checks of body, load and straps. */
export const bodyChecks: Readonly<Record<string, Check>> = {
  "worn-deleva-foot": deLeva("foot"),
  "worn-deleva-forearm": deLeva("forearm"),
  "worn-deleva-hand": deLeva("hand"),
  "worn-deleva-head": deLeva("head"),
  "worn-deleva-lower-trunk": deLeva("lower trunk"),
  "worn-deleva-middle-trunk": deLeva("middle trunk"),
  "worn-deleva-thigh": deLeva("thigh"),
  "worn-deleva-trunk": deLeva("trunk"),
  "worn-deleva-upper-arm": deLeva("upper arm"),
  "worn-deleva-sum-female": () => ({ total_percent: 100 * bodySegments({ ...person, table: "de-leva-female" }).sum }),
  "worn-deleva-trunk-sum-female": () => ({
    trunk_percent:
      (100 * bodySegments({ ...person, table: "de-leva-female" }).trunkParts.reduce((sum, r) => sum + r.mass, 0)) / person.bodyMass,
  }),
  "worn-winter-foot": winter("foot"),
  "worn-winter-forearm": winter("forearm"),
  "worn-winter-hand": winter("hand"),
  "worn-winter-leg": winter("leg"),
  "worn-winter-thigh": winter("thigh"),
  "worn-winter-trunk-head-neck": () => {
    // the printed proximal end is the hip; ours is the upper end
    const r = rowOf("winter", "trunk, head and neck")
    return { mass_fraction: r.mass, com_proximal: 1 - r.centre, com_distal: r.centre, rg_com: r.transverse }
  },
  "worn-winter-total-leg": () => {
    const { mass, centre, radius } = winterCompounds.totalLeg
    return { mass_fraction: mass, com_proximal: centre, com_distal: 1 - centre, rg_com: radius }
  },
  "worn-winter-trunk-parts": () => {
    const { headNeck, thorax, abdomen, pelvis } = winterTrunk
    return { head_neck: headNeck, thorax, abdomen, pelvis, trunk: thorax + abdomen + pelvis }
  },
  "worn-winter-parallel-axis-foot": parallelAxis("foot"),
  "worn-winter-parallel-axis-hand": parallelAxis("hand"),
  "worn-winter-parallel-axis-leg": parallelAxis("leg"),
  "worn-winter-parallel-axis-thigh": parallelAxis("thigh"),
  "worn-winter-parallel-axis-upper-arm": parallelAxis("upper arm"),
  "worn-winter-parallel-axis-hat": () => ({
    rg_proximal: Math.hypot(winterCompounds.headArmsTrunk.radius, winterCompounds.headArmsTrunk.centre),
  }),
  "worn-winter-sum-arm": () => ({ mass_fraction: fractions(["upper arm", "forearm", "hand"]) }),
  "worn-winter-sum-leg": () => ({ mass_fraction: fractions(["thigh", "leg", "foot"]) }),
  "worn-winter-sum-body": () => ({ mass_fraction: bodySegments({ ...person, table: "winter" }).sum }),
  "worn-winter-sum-trunk": () => ({ mass_fraction: winterTrunk.thorax + winterTrunk.abdomen + rowOf("winter", "pelvis").mass }),
  "worn-winter-sum-trunk-head": () => ({ mass_fraction: Object.values(winterTrunk).reduce((a, b) => a + b, 0) }),
  "worn-com-height-fraction": () => ({ com_height_fraction: bodySegments({ ...person, table: "de-leva-male" }).centreRatio }),
  "worn-stature-proportions": table(
    Object.fromEntries(
      Object.entries(statureFractions).map(([key, value]) => [`${key.replace(/[A-Z]/g, (c) => `_${c.toLowerCase()}`)}_fraction`, value]),
    ),
  ),
  "worn-stature-proportions-chain": () => {
    const { shoulderHeight, hipHeight, upperArmLength, forearmLength, handLength } = statureFractions
    const arm = upperArmLength + forearmLength + handLength
    return { hip_to_shoulder_fraction: shoulderHeight - hipHeight, arm_fraction: arm, fingertip_height_fraction: shoulderHeight - arm }
  },
  ...surveyChecks,
  "worn-ansur2-male-mass": () => {
    const [mean_kg, sd_kg, p5_kg, p50_kg, p95_kg] = survey.bodyMass.male
    return { mean_kg, sd_kg, p5_kg, p50_kg, p95_kg }
  },
  "worn-ansur2-female-corr-biacromial": table({ r: survey["biacromial-breadth"].female[5] }),
  "worn-ansur2-male-corr-biacromial": table({ r: survey["biacromial-breadth"].male[5] }),
  "worn-ansur2-male-corr-shoulder": table({ r: survey["shoulder-height"].male[5] }),
  "worn-ansur2-female-ratios": () => ({
    acromial_height: ratio("shoulder-height"),
    biacromial_breadth: ratio("biacromial-breadth"),
    iliocristale_height: ratio("iliac-crest-height"),
    foot_length: ratio("foot-length"),
    foot_breadth: ratio("foot-breadth"),
    span: ratio("span"),
  }),
  "worn-child-limits": table({ aap_low: guidance(0), aap_high: guidance(2), aota: guidance(0) }),
  "worn-child-trunk-lean-criterion": table({ max_load_fraction: guidance(1), significant_at_fraction: guidance(2) }),
  "worn-hall-15-percent": () => ({ load_fraction_body_mass: carriedLoad(carriedLoad.example).shareLimit }),
  "worn-doctrine-30-percent": table({ load_fraction_body_mass: guidance(3) }),
  "worn-doctrine-emergency": table({ threshold_fraction: guidance(4) }),
  "worn-doctrine-loads-consistency": reads((i: Num<"fighting_lb" | "approach_lb">) => ({
    body_from_fighting_lb: i.fighting_lb / guidance(3),
    body_from_approach_lb: i.approach_lb / guidance(4),
  })),
  "worn-doctrine-loads-lb": table({ fighting_fraction: guidance(3), approach_fraction: guidance(4) }),
  "worn-load-fraction-identity": reads((i: Num<"body_mass_kg" | "fraction">) => ({
    max_load_kg: carriedLoad({
      ...(carriedLoad.example as object),
      bodyMass: i.body_mass_kg,
      shareLimit: i.fraction,
    } as typeof carriedLoad.example).massAtLimit,
  })),
  "worn-hall-l5s1": reads(
    (
      i: Num<"head_N" | "head_arm_cm" | "trunk_N" | "trunk_arm_cm" | "arms_N" | "arms_arm_cm" | "box_N" | "box_arm_cm" | "muscle_arm_cm">,
    ) => ({
      muscle_N: muscleForce(
        [i.head_N, i.trunk_N, i.arms_N, i.box_N],
        [i.head_arm_cm, i.trunk_arm_cm, i.arms_arm_cm, i.box_arm_cm],
        i.muscle_arm_cm,
      ),
    }),
  ),
  "worn-hall-biceps": reads((i: Num<"weight_N" | "arm_cm" | "muscle_arm_cm">) => ({
    muscle_N: muscleForce([i.weight_N], [i.arm_cm], i.muscle_arm_cm),
  })),
  "worn-hall-seesaw": reads((i: Num<"f1_N" | "d1_m" | "f2_N" | "d2_m">) => ({
    torque_Nm: muscleForce([i.f1_N, -i.f2_N], [i.d1_m, i.d2_m], 1),
  })),
  "worn-os-back-force": reads(
    (i: Num<"upper_body_mass_kg" | "box_mass_kg" | "r_upper_body_m" | "r_box_m" | "r_muscle_m" | "g_m_per_s2">) => {
      const weights = [i.upper_body_mass_kg * i.g_m_per_s2, i.box_mass_kg * i.g_m_per_s2] as const
      const force = muscleForce(weights, [i.r_upper_body_m, i.r_box_m], i.r_muscle_m)
      return { back_force_N: force, ratio_to_supported_weight: force / (weights[0] + weights[1]) }
    },
  ),
  "worn-os-biceps": reads((i: Num<"forearm_mass_kg" | "book_mass_kg" | "r1_m" | "r2_m" | "r3_m" | "g_m_per_s2">) => {
    const weights = [i.forearm_mass_kg * i.g_m_per_s2, i.book_mass_kg * i.g_m_per_s2] as const
    const force = muscleForce(weights, [i.r2_m, i.r3_m], i.r1_m)
    const weight = weights[0] + weights[1]
    return { biceps_N: force, ratio_to_weight: force / weight, elbow_N: force - weight }
  }),
  "worn-head-mass-at-5cm": reads((i: Num<"offset_cm" | "g_m_per_s2">) => ({ mass_kg: headMassLimit(i.offset_cm / 100, i.g_m_per_s2) })),
  "worn-head-mass-at-8cm": reads((i: Num<"offset_cm" | "g_m_per_s2">) => ({ mass_kg: headMassLimit(i.offset_cm / 100, i.g_m_per_s2) })),
  "worn-los-sway": table({ ap_total_deg: (stability.foreAft * 180) / Math.PI, ml_total_deg: (stability.sideToSide * 180) / Math.PI }),
  ...Object.fromEntries(
    ([1, 2, 3, 4] as const).map((harmonic) => [
      `walking-dlf-harmonic-${harmonic}`,
      reads((i: Num<"harmonic_frequency_Hz">) => ({ load_factor: walkingFactor(harmonic, i.harmonic_frequency_Hz) })),
    ]),
  ),
  "worn-capstan-one-turn": reads((i: Num<"mu" | "wrap_rad">) => ({
    ratio: strapsWith({ shoulderFriction: i.mu, wrapAngle: i.wrap_rad }).tensionRatio,
  })),
  "worn-capstan-shoulder": reads((i: Num<"mu" | "wrap_rad">) => ({
    ratio: strapsWith({ shoulderFriction: i.mu, wrapAngle: i.wrap_rad }).tensionRatio,
  })),
  "worn-strap-pressure-identity": reads((i: Num<"strap_tension_N" | "radius_m" | "width_m">) => ({
    pressure_kPa: strapsWith({ beltTension: i.strap_tension_N, hipRadius: i.radius_m, beltWidth: i.width_m }).beltPressure / 1000,
  })),
  "worn-strap-pressure-14kPa": () => ({
    pressure_kPa: (straps.pressureLimit === strapPressureLimit ? straps.pressureLimit : Number.NaN) / 1000,
  }),
  "worn-strap-pressure-children-right": table({
    pressure_mmHg: childStraps.right,
    pressure_kPa: childStraps.right.map((p) => (p * mmHg) / 1000),
  }),
  "worn-strap-pressure-children-left": table({ pressure_mmHg: childStraps.left }),
  "cords-en71-noose-and-length": () => ({ separates_at_or_below_N: breakaway(breakaway.example).pullLimit as number }),
  "walking-base-motion-rao-3-4": (i) => ({
    transmissibility: baseMotion(i.frequency_rad_s / i.natural_frequency_rad_s, i.damping_ratio).force,
  }),
  "cords-weakly-attached-25N": table({ break_away_max_N: throatRelease }),
  "release-ada-operable-part": table({ force_N: switchForce }),
  "worn-strap-width-optimum": table({ widths_cm: testedWidths.widths.map((w) => 100 * w), best_width_cm: 100 * testedWidths.best }),
  "worn-skin-occlusion-threshold": table({ pressure_kPa: occlusionPressure / 1000 }),
  "worn-hip-belt-share": () => ({ lower_back_fraction: straps.beltShare, shoulders_upper_back_fraction: 1 - hipBeltShare }),
  "worn-hip-belt-share-sum": () => {
    const out = strapsWith({})
    return { total: (out.beltLoad + out.shoulderLoad) / (straps.rigMass * 9.80665) }
  },
}

const radii = "only the radius about the centre is kept; those about the ends follow from it and differ in the last digit printed"
/** Keys no check gives, by row, and why. */
export const bodyWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  ...Object.fromEntries(
    ["foot", "forearm", "hand", "leg", "thigh", "trunk-head-neck", "total-leg"].map((id) => [
      `worn-winter-${id}`,
      { rg_proximal: radii, rg_distal: radii },
    ]),
  ),
  "worn-doctrine-emergency": { feasible_fraction: "an emergency figure for soldiers, kept out of the guidance shown to makers" },
  "worn-doctrine-loads-lb": {
    fighting_load_lb: "the shares are kept, not the pounds",
    approach_march_load_lb: "the shares are kept, not the pounds",
  },
  "cords-en71-noose-and-length": {
    cord_length_max_mm: "no solver judges the length of a cord",
    noose_perimeter_max_mm: "no solver judges a loop",
    cord_thickness_min_mm: "no solver judges a cord",
    cot_cord_max_mm: "no solver judges a cord",
  },
  "release-ada-operable-part": {
    one_hand: "said in words by the caution `try-it-on` of reach",
    tight_grasp_pinch_or_twist: "said in words by the caution `try-it-on` of reach",
  },
  "worn-strap-pressure-children-right": { se_mmHg: "standard errors are not kept" },
  "worn-strap-pressure-children-left": { se_mmHg: "standard errors are not kept" },
}
