import {
  enduranceModels,
  exhaustionTime,
  jointTorques,
  powerLaws,
  restAfterWork,
  restKamon,
  restRohmert,
  workPart,
} from "../../src/worn/effort/data-endurance.js"
import { clothingAdjustments, heatClasses } from "../../src/worn/effort/data-heat.js"
import { type EnduranceInput, endurance, heatStress, liftLimit, metabolicRate } from "../../src/worn/index.js"
import { couplingTable, liftRange, loadConstant, referenceMasses } from "../../src/worn/load/data-lift.js"
import { liftFactors, recommendedWeight } from "../../src/worn/load/lift-limit/index.js"
import type { Check } from "../helpers/references.js"
import { type Num, type Nums, reads, table } from "./worn-load-reads.js"

type Joint = EnduranceInput["joint"]
const hold = (joint: Joint, effort: number) => endurance({ joint, effort })

const freyLaw = (joint: Joint): Check =>
  reads((i: Nums<"fractions_mvc">) =>
    Object.fromEntries(i.fractions_mvc.map((f) => [`endurance_s_at_${String(f).replace(".", "p")}`, hold(joint, f).jointEnduranceTime])),
  )
const model = (name: string): Check =>
  reads((i: Nums<"fractions_mvc">) => {
    const { label, joint } = enduranceModels[name] as (typeof enduranceModels)[string]
    return Object.fromEntries(
      i.fractions_mvc.map((f) => [
        `endurance_min_at_${String(f).replace(".", "p")}`,
        (hold(joint ?? "general", f).readings.find((r) => r.model === label)?.enduranceTime as number) / 60,
      ]),
    )
  })
const kamon = reads((i: Num<"fraction_mvc">) => ({ endurance_s: hold("general", i.fraction_mvc).generalEnduranceTime }))
const rohmert = reads((i: Num<"fraction_mvc">) => ({
  endurance_min: (hold("general", i.fraction_mvc).rohmertEnduranceTime as number) / 60,
}))
const dynamic = reads((i: Num<"fraction_vo2max">) => ({
  time_to_exhaustion_s: exhaustionTime(i.fraction_vo2max),
  recommended_work_period_s: workPart * exhaustionTime(i.fraction_vo2max),
}))
const heat = (rate: number, acclimatized: boolean) =>
  heatStress({ metabolicRate: rate, wbgt: 20, clothing: "work-clothes", acclimatized, restMetabolicRate: 100 })
const heatClass = reads((i: Num<"metabolic_rate_W">) => ({
  acclimatized_degC: heat(i.metabolic_rate_W, true).classLimit,
  not_acclimatized_degC: heat(i.metabolic_rate_W, false).classLimit,
}))

const lift = (change: object) => liftLimit({ rigMass: 5, startHeight: 0.75, endHeight: 1, startReach: 0.25, coupling: "good", ...change })
const hm = reads((i: Num<"h_cm">) => ({ hm: lift({ startReach: i.h_cm / 100 }).startReachFactor }))
const vm = reads((i: Num<"v_cm">) => ({ vm: lift({ startHeight: i.v_cm / 100 }).startHeightFactor }))
const dm = reads((i: Num<"d_cm">) => ({ dm: lift({ startHeight: 0, endHeight: i.d_cm / 100 }).distanceFactor }))
const am = reads((i: Num<"asymmetry_deg">) => ({ am: lift({ startTurn: `${i.asymmetry_deg} deg` }).startTurnFactor }))
const fm = (duration: "short" | "medium" | "long") =>
  reads((i: Nums<"lifts_per_min">) => ({ fm: i.lifts_per_min.map((rate) => lift({ liftRate: rate, duration }).startFrequencyFactor) }))
/** A worked example in pounds from its printed multipliers; the manual divides by the rounded limit. */
const example = reads((i: Num<"load_lb" | "hm" | "vm" | "dm" | "am" | "fm" | "cm">) => {
  const limit = recommendedWeight([i.hm, i.vm, i.dm, i.am, i.fm, i.cm], 51)
  return { rwl_lb: limit, lifting_index: i.load_lb / (Math.round(10 * limit) / 10) }
})

/** Checks of endurance, heat and lifting. */
export const workChecks: Readonly<Record<string, Check>> = {
  "worn-freylaw-ankle": freyLaw("ankle"),
  "worn-freylaw-elbow": freyLaw("elbow"),
  "worn-freylaw-hand-grip": freyLaw("hand-grip"),
  "worn-freylaw-knee": freyLaw("knee"),
  "worn-freylaw-shoulder": freyLaw("shoulder"),
  "worn-freylaw-trunk": freyLaw("trunk"),
  "worn-freylaw-ranking": reads((i: Num<"fraction_mvc">) => ({
    order: (Object.keys(powerLaws) as Joint[])
      .filter((j) => j !== "general")
      .sort((a, b) => hold(b, i.fraction_mvc).jointEnduranceTime - hold(a, i.fraction_mvc).jointEnduranceTime)
      .map((j) => (j === "hand-grip" ? "hand_grip" : j)),
  })),
  "worn-freylaw-shoulder-last": reads((i: Nums<"fractions_mvc">) => ({
    shoulder_is_min: Number(
      i.fractions_mvc.every((f) =>
        (["ankle", "knee", "trunk", "elbow", "hand-grip"] as const).every(
          (j) => hold(j, f).jointEnduranceTime > hold("shoulder", f).jointEnduranceTime,
        ),
      ),
    ),
  })),
  "worn-met-huijgens-1981": model("huijgens1981"),
  "worn-met-manenica-1986": model("manenica1986"),
  "worn-met-rohmert-shoulder-1986": model("rohmertShoulder1986"),
  "worn-met-rose-1992": model("rose1992"),
  "worn-met-sato-1984": model("sato1984"),
  "worn-met-sato-shoulder-1984": model("satoShoulder1984"),
  "worn-met-sjogaard-1986": model("sjogaard1986"),
  ...Object.fromEntries([15, 30, 40, 50, 70, 100].map((f) => [`worn-static-kamon-${f}`, kamon])),
  ...Object.fromEntries([20, 30, 50, 70, 100].map((f) => [`worn-rohmert-poly-${f}`, rohmert])),
  "worn-static-kamon-min-form": table({ coefficient_s: powerLaws.general.b0 }),
  "worn-static-below-20-percent": reads((i: Num<"fraction_mvc">) => ({
    endurance_min: hold("general", i.fraction_mvc).enduranceTime / 60,
  })),
  "worn-static-rest-kamon": reads((i: Num<"hold_s" | "fraction_mvc" | "endurance_s">) => ({
    rest_s: restKamon(i.hold_s, i.endurance_s, i.fraction_mvc),
  })),
  "worn-static-rest-rohmert": reads((i: Num<"hold_s" | "fraction_mvc" | "endurance_s">) => ({
    rest_allowance_percent: (100 * restRohmert(i.hold_s, i.endurance_s, i.fraction_mvc)) / i.hold_s,
  })),
  "worn-kamon-dynamic-100": dynamic,
  "worn-kamon-dynamic-50": dynamic,
  "worn-kamon-dynamic-rest": reads((i: Num<"fraction_vo2max">) => ({ rest_s: restAfterWork(i.fraction_vo2max) })),
  "worn-joint-torque-kamon": () => {
    const { shoulderFlexion, elbowFlexion, backExtension, kneeExtension } = jointTorques
    return {
      shoulder_flexion_male_Nm: shoulderFlexion.male,
      shoulder_flexion_female_Nm: shoulderFlexion.female,
      elbow_flexion_male_Nm: elbowFlexion.male,
      elbow_flexion_female_Nm: elbowFlexion.female,
      back_extension_male_90deg_Nm: backExtension.male,
      back_extension_female_90deg_Nm: backExtension.female,
      knee_extension_male_Nm: kneeExtension.male,
      knee_extension_female_Nm: kneeExtension.female,
    }
  },
  "worn-wbgt-indoor": reads((i: Num<"tnw_degC" | "tg_degC">) => ({
    wbgt_degC: heatStress({ metabolicRate: 200, wetBulbTemperature: i.tnw_degC, globeTemperature: i.tg_degC }).wbgt,
  })),
  "worn-wbgt-outdoor-example": reads((i: Num<"tnw_degC" | "tg_degC" | "ta_degC">) => ({
    wbgt_degC: heatStress({
      metabolicRate: 200,
      wetBulbTemperature: i.tnw_degC,
      globeTemperature: i.tg_degC,
      ambientTemperature: i.ta_degC,
    }).wbgt,
  })),
  "worn-wbgt-twa": reads((i: Num<"work_W" | "work_min" | "rest_W" | "rest_min">) => {
    // the heat at which that much work an hour is the limit: the share found must bring back the mean
    const mean = (share: number) => share * i.work_W + (1 - share) * i.rest_W
    const limit = heat(mean(i.work_min / (i.work_min + i.rest_min)), true).curveLimit
    const out = heatStress({
      metabolicRate: i.work_W,
      restMetabolicRate: i.rest_W,
      wbgt: limit,
      clothing: "work-clothes",
      acclimatized: true,
    })
    return { mean_W: mean(out.workShare) }
  }),
  "worn-iso7243-class-0": heatClass,
  "worn-iso7243-class-1": heatClass,
  "worn-iso7243-class-2": heatClass,
  "worn-iso7243-classes-3-4": reads((i: Nums<"metabolic_rate_W">) => ({
    acclimatized_degC: i.metabolic_rate_W.map((rate) => heat(rate, true).classLimit),
    not_acclimatized_degC: i.metabolic_rate_W.map((rate) => heat(rate, false).classLimit),
  })),
  "worn-iso-metabolic-classes": table(Object.fromEntries(heatClasses.map((c, i) => [`class${i}_W`, c.rate]))),
  "worn-clothing-adjustment": () => ({
    work_clothes_K: clothingAdjustments["work-clothes"].adjustment,
    cloth_coverall_K: clothingAdjustments["cloth-coverall"].adjustment,
    double_layer_K: clothingAdjustments["double-layer"].adjustment,
    vapour_barrier_coverall_K: clothingAdjustments["vapour-barrier"].adjustment,
  }),
  "worn-niosh-rel-300": reads((i: Num<"metabolic_rate_W">) => ({ rel_degC: heat(i.metabolic_rate_W, true).curveLimit })),
  "worn-niosh-rel-band": reads((i: Nums<"metabolic_rate_W">) => ({
    rel_degC: i.metabolic_rate_W.map((rate) => heat(rate, true).curveLimit),
  })),
  "worn-mph-to-m-per-min": reads((i: Num<"speed_mph">) => ({
    speed_m_per_min: 60 * metabolicRate.read({ bodyMass: 70, walkingSpeed: `${i.speed_mph} mph` }).walkingSpeed,
  })),
  "worn-niosh-hm-30cm": hm,
  "worn-niosh-hm-40cm": hm,
  "worn-niosh-hm-63cm": hm,
  "worn-niosh-vm-0cm": vm,
  "worn-niosh-vm-75cm": vm,
  "worn-niosh-vm-150cm": vm,
  "worn-niosh-vm-175cm": vm,
  "worn-niosh-dm-25cm": dm,
  "worn-niosh-dm-40cm": dm,
  "worn-niosh-dm-100cm": dm,
  "worn-niosh-dm-175cm": dm,
  "worn-niosh-am-0": am,
  "worn-niosh-am-30": am,
  "worn-niosh-am-45": am,
  "worn-niosh-am-135": am,
  "worn-niosh-fm-short": fm("short"),
  "worn-niosh-fm-medium": fm("medium"),
  "worn-niosh-fm-long": fm("long"),
  "worn-niosh-cm": () => ({
    good: couplingTable.good.below,
    fair_v_below_75cm: liftFactors.coupling("fair", 0.749),
    fair_v_from_75cm: liftFactors.coupling("fair", 0.75),
    poor: couplingTable.poor.above,
  }),
  "worn-niosh-load-constant": table({ lc_kg: loadConstant, lc_lb: loadConstant / 0.45359237 }),
  "worn-niosh-validity": table({
    max_h_cm: 100 * liftRange.reach,
    max_v_cm: 100 * liftRange.height,
    max_asymmetry_deg: (liftRange.asymmetry * 180) / Math.PI,
    max_h_in: liftRange.reach / 0.0254,
  }),
  "worn-niosh-ccohs-worked": reads((i: Num<"lc_kg" | "hm" | "vm" | "dm" | "am" | "fm" | "cm">) => ({
    rwl_kg: recommendedWeight([i.hm, i.vm, i.dm, i.am, i.fm, i.cm], i.lc_kg),
  })),
  "worn-niosh-ex1-origin": example,
  "worn-niosh-ex1-destination": example,
  "worn-niosh-ex2-origin": example,
  "worn-niosh-ex2-destination": example,
  "worn-niosh-ex3-origin": example,
  "worn-iso11228-reference-mass": table({
    men_20_45_kg: referenceMasses["men-adult"].mass,
    women_20_45_kg: referenceMasses["women-adult"].mass,
    men_under20_over45_kg: referenceMasses["men-other"].mass,
    women_under20_over45_kg: referenceMasses["women-other"].mass,
  }),
}
