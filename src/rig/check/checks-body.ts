// Checks of the body that carries it: share of body mass, balance, straps, the day's wearing and its heat.
import { formatQuantity } from "../../quantity/index.js"
import { commonPractice, type Result, type Source } from "../../solver/index.js"
import {
  type CarriedLoad,
  carriedLoad,
  heatStress,
  metabolicRate,
  strapPressure,
  usualWalkingSpeed,
  wearSchedule,
} from "../../worn/index.js"
import type { RigSi } from "../whole/faults.js"
import { carriedMass, carriedPoses, unposed } from "./carried.js"
import { asked, type Found, lacking, poseless, type RigCheck } from "./check.js"
import type { Judged } from "./conditions.js"
import type { Measured, NotMade } from "./finding.js"
import { CARRIED, CENTRED, WORN_BY } from "./paths.js"

type Wearer = NonNullable<RigSi["wearer"]>

const compared = (solver: string): Source => ({ title: `published limits, compared in alula/worn ${solver}`, verified: "practice" })

/** A finding about the wearer. */
const about = (result: Measured | NotMade): readonly Found[] => [{ subject: "wearer", result }]

/** A finding that needs wearer and mass. */
function onLoad(rig: Judged, make: (wearer: Wearer, mass: number) => Measured | NotMade): readonly Found[] {
  const { wearer } = rig.rig
  if (!wearer) return about(lacking("wearer", "Nothing says who wears it."))
  const mass = carriedMass(rig)
  return about(mass === null ? lacking("parts", "No part is listed: what is carried is not known.") : make(wearer, mass))
}

const carried = (rig: Judged, make: (out: Result<CarriedLoad>, wearer: Wearer) => Measured) =>
  onLoad(rig, (wearer, rigMass) => {
    const motion = unposed(rig)
    if (motion !== null) return poseless(motion)
    return asked(carriedLoad, { ...wearer, rigMass, poses: carriedPoses(rig) }, "the worse of all motions in and out", (out) =>
      make(out, wearer),
    )
  })

const WALKING = 0.8

/** Checks of the body. */
export const bodyChecks: readonly RigCheck[] = [
  {
    id: "load-share",
    title: "share of body mass carried",
    severity: "safety",
    reads: [...WORN_BY, ...CENTRED],
    worsens: { "parts[].mass": "up", "parts[].count": "up" },
    find: (rig) =>
      carried(rig, (out, wearer) => {
        const limit = out.massAtLimit / wearer.bodyMass
        return {
          relation: "at-most",
          kind: "ratio",
          value: out.massShare,
          limit,
          sentence: `The rig is ${formatQuantity("ratio", out.massShare, "%")} of the wearer's body mass; ${formatQuantity("ratio", limit, "%")} is the guidance kept to here (${formatQuantity("mass", out.massAtLimit)}).`,
          condition: "everything worn",
          source: compared("carriedLoad"),
        }
      }),
  },
  {
    id: "lean",
    title: "lean for balance",
    severity: "function",
    reads: [...WORN_BY, ...CENTRED],
    worsens: {},
    find: (rig) =>
      carried(rig, (out) => ({
        relation: "at-most",
        kind: "angle",
        value: Math.abs(out.maxTrunkLean),
        limit: (10 * Math.PI) / 180,
        sentence: `To stay balanced the wearer leans ${formatQuantity("angle", out.maxTrunkLean, "°")}, calculated from balance: no published law of lean exists for such loads.`,
        condition: out.maxLeanPose,
        source: commonPractice,
      })),
  },
  {
    id: "side-balance",
    title: "balance from side to side",
    severity: "function",
    reads: [...WORN_BY, ...CENTRED],
    worsens: {},
    find: (rig) =>
      carried(rig, (out) => {
        const value = Math.max(out.maxFootShare, 1 - out.maxFootShare)
        return {
          relation: "at-most",
          kind: "ratio",
          value,
          limit: 0.6,
          reference: 0.5,
          sentence: `The more loaded foot carries ${formatQuantity("ratio", value, "%")} of the weight.`,
          condition: "the worse of all motions in and out",
          source: commonPractice,
        }
      }),
  },
  {
    id: "straps",
    title: "pressure under the straps",
    severity: "safety",
    reads: ["wearer", ...CARRIED, "straps"],
    worsens: { "straps.strapWidth": "down", "straps.pressureLimit": "down", "parts[].mass": "up", "parts[].count": "up" },
    find: (rig) => {
      const { straps } = rig.rig
      if (!straps) return about(lacking("straps", "Nothing says how it hangs on the body."))
      return onLoad(rig, (_, rigMass) =>
        asked(strapPressure, { ...straps, rigMass }, "everything worn, standing", (out) => ({
          relation: "at-most",
          kind: "pressure",
          value: Math.max(out.maxPressure, out.beltPressure),
          limit: out.pressureLimit,
          sentence: `Under straps ${formatQuantity("length", straps.strapWidth)} wide the shoulder is pressed with up to ${formatQuantity("pressure", out.maxPressure)}, under the hip belt with ${formatQuantity("pressure", out.beltPressure)}; straps ${formatQuantity("length", out.suggestedWidth)} wide are advised.`,
          condition: "everything worn, standing",
          source: compared("strapPressure"),
        })),
      )
    },
  },
  {
    id: "schedule",
    title: "the day's wearing",
    severity: "safety",
    reads: [...WORN_BY, ...CENTRED, "schedule"],
    worsens: {},
    find: (rig) => {
      const { schedule } = rig.rig
      if (!schedule) return about(lacking("schedule", "Nothing says how long it is worn, and when the wearer rests."))
      return onLoad(rig, ({ bodyMass, stature }, rigMass) => {
        const motion = schedule.backMoment === null ? unposed(rig) : null
        if (motion !== null) return poseless(motion)
        // the back's moment in balance, unless the document gives its own
        const balance = schedule.backMoment === null ? carriedLoad.attempt({ bodyMass, stature, rigMass, poses: carriedPoses(rig) }) : null
        const backMoment = balance?.ok ? Math.abs(balance.value.backMomentLeaning) : schedule.backMoment
        return asked(wearSchedule, { ...schedule, bodyMass, rigMass, backMoment }, "over the plan", (out) => {
          const rests = out.resting.count ? ` ${out.resting.count} rests of ${formatQuantity("time", out.restDuration)} are advised.` : ""
          return {
            relation: "at-most",
            kind: "ratio",
            value: Math.max(out.peakStrain.high, rigMass / out.massAtLimit),
            limit: 1,
            // the solver's own verdict counts more than one number tells
            permitted: out.bearable,
            sentence: `${out.bearable ? "The plan stays within the stricter published limit." : `Strain passes the stricter published limit${out.firstLimit ? ` after ${formatQuantity("time", out.firstLimit.time)}, during '${out.firstLimit.during}'` : ""}.`}${rests}`,
            condition: "over the plan",
            source: compared("wearSchedule"),
          }
        })
      })
    },
  },
  {
    id: "heat-stress",
    title: "heat on the wearer",
    severity: "safety",
    reads: [...WORN_BY, ...CARRIED, "heat", "schedule"],
    worsens: { "parts[].mass": "up", "heat.wetBulbTemperature": "up", "heat.globeTemperature": "up" },
    find: (rig) => {
      const { heat, schedule } = rig.rig
      if (!heat) return about(lacking("heat", "Nothing says how warm the day is and what is worn."))
      return onLoad(rig, ({ bodyMass, stature }, rigMass) => {
        const plan = schedule?.plan ?? []
        const walked = plan.filter(({ activity }) => activity === "walking" || activity === "stage")
        const walkingSpeed = Math.max(WALKING, ...walked.map((p) => p.walkingSpeed ?? usualWalkingSpeed))
        const work = metabolicRate.attempt({ bodyMass, rigMass, walkingSpeed })
        if (!work.ok) return { verdict: "cannot be judged", missing: null, because: null, sentence: work.error.message }
        // work on a stage costs more than the walk alone, as wearSchedule counts it
        const rate = work.value.metabolicRate * (plan.some((p) => p.activity === "stage") ? (schedule?.stageFactor ?? 1) : 1)
        return asked(heatStress, { ...heat, metabolicRate: rate, bodyMass, stature }, "at the hardest work of the plan", (out) => ({
          relation: "at-most",
          kind: "temperature",
          value: out.effectiveWbgt,
          limit: out.wbgtLimit,
          sentence: `The hardest work of the plan takes ${formatQuantity("power", rate)}; the day's heat counts as ${formatQuantity("temperature", out.effectiveWbgt)} in this clothing, the limit at that work is ${formatQuantity("temperature", out.wbgtLimit)}.`,
          condition: "at the hardest work of the plan",
          source: { title: "ISO 7243, Ergonomics of the thermal environment", edition: "2017", where: "annex A", verified: "not-seen" },
        }))
      })
    },
  },
]
