import { formatQuantity } from "../../quantity/index.js"
import type { Result, SiOf } from "../../solver/index.js"
import {
  type CarriedLoad,
  carriedLoad,
  heatStress,
  metabolicRate,
  strapPressure,
  usualWalkingSpeed,
  wearSchedule,
} from "../../worn/index.js"
import type { RigDocument } from "../document/document.js"
import { always, type Check } from "./checks.js"
import { atMost, byMargin, type Found, findBy, lacking } from "./finding.js"
import type { CarriedPose, Situation } from "./situation.js"

type Si = SiOf<RigDocument>
type Wearer = NonNullable<Si["wearer"]>

/** A finding that needs wearer and mass. */
function onLoad(s: Situation, make: (wearer: Wearer, load: number) => Found): Found {
  if (!s.rig.wearer) return lacking("wearer")
  const load = s.mass()
  return load === null ? lacking("parts") : make(s.rig.wearer, load)
}

/** A finding that needs the centre of mass in every pose too. */
function onPoses(s: Situation, make: (wearer: Wearer, load: number, poses: readonly CarriedPose[]) => Found): Found {
  return onLoad(s, (wearer, load) => {
    const poses = s.poses()
    return poses ? make(wearer, load, poses) : lacking("mount")
  })
}

const carried = (s: Situation, make: (out: Result<CarriedLoad>) => Found): Found =>
  onPoses(s, (wearer, load, poses) => findBy(carriedLoad, "parts", { ...wearer, rigMass: load, poses }, make))

const degrees = (angle: number) => formatQuantity("angle", angle, "°")

/** Checks of the body that carries it. */
export const bodyChecks: readonly Check[] = [
  {
    id: "load-share",
    title: "share of body mass carried",
    applies: always,
    find: (s) =>
      carried(s, (out) => {
        const limit = out.massAtLimit / (s.rig.wearer as Wearer).bodyMass
        return atMost(
          out.massShare,
          limit,
          "ratio",
          `The rig is ${formatQuantity("ratio", out.massShare, "%")} of the wearer's body mass; ${formatQuantity("ratio", limit, "%")} is the guidance kept to here (${formatQuantity("mass", out.massAtLimit)}).`,
          "published load-carriage guidance, compared in alula/worn carriedLoad",
        )
      }),
  },
  {
    id: "lean",
    title: "forward lean for balance",
    applies: always,
    find: (s) =>
      carried(s, (out) =>
        atMost(
          Math.abs(out.maxTrunkLean),
          (10 * Math.PI) / 180,
          "angle",
          `To stay balanced the wearer leans ${degrees(out.maxTrunkLean)} (pose '${out.maxLeanPose}'), calculated from balance: no published law of lean exists for such loads.`,
        ),
      ),
  },
  {
    id: "side-balance",
    title: "balance from side to side",
    applies: always,
    find: (s) =>
      carried(s, (out) =>
        atMost(
          Math.max(out.maxFootShare, 1 - out.maxFootShare),
          0.6,
          "ratio",
          `The more loaded foot carries ${formatQuantity("ratio", Math.max(out.maxFootShare, 1 - out.maxFootShare), "%")} of the weight.`,
        ),
      ),
  },
  {
    id: "straps",
    title: "pressure under the straps",
    applies: always,
    find: (s) => {
      const { straps } = s.rig
      if (!straps) return lacking("straps")
      return onLoad(s, (_, load) => {
        const { strapWidth } = straps
        return findBy(strapPressure, "straps", { ...straps, rigMass: load }, (out) =>
          atMost(
            Math.max(out.maxPressure, out.beltPressure),
            out.pressureLimit,
            "pressure",
            `Under straps ${formatQuantity("length", strapWidth)} wide the shoulder is pressed with up to ${formatQuantity("pressure", out.maxPressure)}, under the hip belt with ${formatQuantity("pressure", out.beltPressure)}; straps ${formatQuantity("length", out.suggestedWidth)} wide are advised.`,
            "common practice, not settled: see alula/worn strapPressure",
          ),
        )
      })
    },
  },
  {
    id: "schedule",
    title: "wear schedule",
    applies: always,
    find: (s) => {
      const { schedule } = s.rig
      if (!schedule) return lacking("schedule")
      return onPoses(s, ({ bodyMass, stature }, load, poses) => {
        // the back's moment in balance, unless the document gives its own
        const given = schedule.backMoment
        const balance = given === null ? carriedLoad.attempt({ bodyMass, stature, rigMass: load, poses }) : null
        const backMoment = balance?.ok ? Math.abs(balance.value.backMomentLeaning) : given
        return findBy(wearSchedule, "schedule", { ...schedule, bodyMass, rigMass: load, backMoment }, (out) => {
          const least = out.maxRig.low
            ? ` Up to ${formatQuantity("mass", out.maxRig.low.rigMass)} the whole plan stays within the stricter published limit.`
            : ""
          const rests = out.resting.count ? ` ${out.resting.count} rests of ${formatQuantity("time", out.restDuration)} are advised.` : ""
          return byMargin(
            out.peakStrain.high,
            1,
            "ratio",
            // the solver's own verdict counts the mass as well, and is never contradicted
            Math.min(1 - out.peakStrain.high, out.massAtLimit / load - 1, out.bearable ? Number.POSITIVE_INFINITY : -1e-9),
            `${out.bearable ? "The plan stays within the stricter published limit." : `Strain passes the stricter published limit${out.firstLimit ? ` after ${formatQuantity("time", out.firstLimit.time)}, during '${out.firstLimit.during}'` : ""}.`}${rests}${least}`,
            "published endurance limits, compared in alula/worn wearSchedule",
          )
        })
      })
    },
  },
  {
    id: "heat-stress",
    title: "heat stress (WBGT)",
    applies: always,
    find: (s) => {
      const { heat, schedule } = s.rig
      if (!heat) return lacking("heat")
      return onLoad(s, ({ bodyMass, stature }, load) => {
        // the fastest walk of the plan governs; without a plan, a stroll
        const plan = schedule?.plan ?? []
        const walked = plan.filter(({ activity }) => activity === "walking" || activity === "stage")
        const walkingSpeed = Math.max(0.8, ...walked.map((p) => p.walkingSpeed ?? usualWalkingSpeed))
        return findBy(metabolicRate, "schedule", { bodyMass, rigMass: load, walkingSpeed }, (work) =>
          findBy(heatStress, "heat", { ...heat, metabolicRate: work.metabolicRate, bodyMass, stature }, (out) =>
            byMargin(
              out.effectiveWbgt,
              out.wbgtLimit,
              "temperature",
              out.wbgtMargin / 10,
              `Walking with it takes ${formatQuantity("power", work.metabolicRate)}; the day's heat counts as ${formatQuantity("temperature", out.effectiveWbgt)} in this clothing, the limit at that work is ${formatQuantity("temperature", out.wbgtLimit)}.`,
              "ISO 7243, 2017, compared with a second limit in alula/worn heatStress",
            ),
          ),
        )
      })
    },
  },
]
