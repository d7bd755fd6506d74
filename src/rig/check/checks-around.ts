// Checks of what is around the wearer: doors, wind, hands, people in the way, and what the rig may weigh and cost.
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import { commonPractice, type Source } from "../../solver/index.js"
import { contactSeverity, overturning, passage, reach, windLoad } from "../../worn/index.js"
import { ownParts } from "../run/carrying.js"
import { coordinatesAt } from "../run/motion-model.js"
import { CONTACT_LIMITS } from "../sources.js"
import { carriedMass, inBody, roomsOf, strikeOf, unposed } from "./carried.js"
import { asked, blocked, type Found, lacking, poseless, type RigCheck } from "./check.js"
import type { Judged, Run } from "./conditions.js"
import { type Measured, type NotMade, worstOf } from "./finding.js"
import { CARRIED, POSED, RIDDEN, WORN_BY } from "./paths.js"

const length = (l: number) => formatQuantity("length", l)
const document: Source = { title: "the document", verified: "practice" }
const compared = (solver: string): Source => ({ title: `published values, compared in alula/worn ${solver}`, verified: "practice" })
const about = (subject: string, result: Measured | NotMade): readonly Found[] => [{ subject, result }]

/** Highest arm: where its hinge is, how steeply it stands, and how many arms there are. */
function arms(rig: Judged): { readonly hingeHeight: number; readonly elevation: number; readonly panels: number } {
  let [hingeHeight, elevation, panels, top] = [0, 0, 0, Number.NEGATIVE_INFINITY]
  for (const motion of rig.motions)
    for (const travel of [0, motion.span]) {
      const q = coordinatesAt(motion, travel)
      ownParts(motion, travel / motion.span).forEach((part, i) => {
        const pose = part.mechanism.pose(q[i] as number)
        if (travel === 0) panels += part.count
        const tip = inBody(part, pose.tip)
        if (!(tip[2] > top)) return
        const hinge = inBody(part, pose.pins[0]?.at ?? pose.centre)
        top = tip[2]
        hingeHeight = Math.max(0, hinge[2])
        elevation = Math.atan2(tip[2] - hinge[2], Math.hypot(tip[0] - hinge[0], tip[1] - hinge[1]))
      })
    }
  return { hingeHeight, elevation, panels }
}

/** Room of somebody without a rig: a packed rig is judged beside it. */
const SOMEBODY = { width: 0.6, forward: 0.3, backward: 0.3, height: 1.8 }

/** Checks of doors, wind, reach and people. */
export const aroundChecks: readonly RigCheck[] = [
  {
    id: "tip-over",
    title: "tipping over in the wind",
    severity: "safety",
    reads: [...WORN_BY, ...CARRIED, "wind", "stance"],
    worsens: { "wind.windSpeed": "up" },
    find: (rig) => {
      const { wearer, wind, stance } = rig.rig
      if (!wearer) return about("wearer", lacking("wearer", "Nothing says who wears it."))
      if (!wind) return about("wearer", lacking("wind", "Nothing says how large the arms are and how hard it may blow."))
      const rigMass = carriedMass(rig)
      if (rigMass === null) return about("wearer", lacking("parts", "No part is listed: what is carried is not known."))
      const motion = unposed(rig)
      if (motion !== null) return about("wearer", poseless(motion))
      const load = windLoad.attempt({ ...wind, ...arms(rig) })
      if (!load.ok) return about("wearer", { verdict: "cannot be judged", missing: null, because: null, sentence: load.error.message })
      const { windSpeed, gustFactor, walkingSpeed } = wind
      const input = {
        ...stance,
        bodyMass: wearer.bodyMass,
        stature: wearer.stature,
        rigMass,
        dragArea: load.value.dragArea,
        forceHeight: load.value.forceHeight,
        windSpeed,
        gustFactor,
        walkingSpeed,
      }
      return about(
        "wearer",
        asked(overturning, input, "arms where they reach highest, wind on their full width", (tip) => ({
          relation: "at-least",
          kind: "speed",
          value: tip.foldWindSpeed,
          limit: windSpeed,
          sentence: `Fold the arms when the wind reaches ${formatQuantity("speed", tip.foldWindSpeed, "m/s")} (Beaufort ${tip.foldBeaufort}); ${formatQuantity("speed", windSpeed, "m/s")} is expected.`,
          condition: "arms where they reach highest, wind on their full width",
          source: compared("overturning"),
          cautions: load.value.cautions,
        })),
      )
    },
  },
  {
    id: "ways",
    title: "passes doors and routes",
    severity: "function",
    reads: [...POSED, "venue", "wearer.stature"],
    worsens: { "venue.allowance": "up" },
    find: (rig) => {
      const { venue, wearer } = rig.rig
      if (!venue) return about("rig", lacking("venue", "Nothing says where it has to go."))
      if (!wearer) return about("rig", lacking("wearer", "Nothing says who wears it."))
      const motion = unposed(rig)
      if (motion !== null) return about("rig", poseless(motion))
      const [folded, raised] = roomsOf(rig, wearer.stature, venue)
      const names = venue.own.map((p) => p.name)
      return about(
        "rig",
        asked(
          passage,
          { folded, raised, ownPlaces: venue.own, packed: venue.packed, allowance: venue.allowance },
          "folded, facing or edging sideways",
          (out) => {
            const places = out.places.filter((p) => names.includes(p.place) || (venue.kinds as readonly string[]).includes(p.type))
            const never = places.filter((p) => p.folded === "no")
            const sideways = places.filter((p) => p.folded === "sideways")
            const hardest = never.length ? never : sideways.length ? sideways : places
            const worst = [...hardest].sort((a, b) => a.foldedMargin - b.foldedMargin)[0]
            const list = (some: typeof places) =>
              `${some
                .slice(0, 4)
                .map((p) => p.place)
                .join(", ")}${some.length > 4 ? " and others" : ""}`
            const fold = places.filter((p) => p.folded !== "no" && p.raised === "no")
            const how = never.length
              ? `Folded it does not pass: ${list(never)} (the ${worst?.foldedBy} of ${worst?.place}).`
              : sideways.length
                ? `Folded it passes only by edging sideways: ${list(sideways)}.`
                : `Folded it passes everywhere judged, closest at the ${worst?.foldedBy} of ${worst?.place}.`
            return {
              relation: "at-most",
              kind: "length",
              // edging sideways uses all the room there is
              value: worst ? worst.foldedRoom - (worst.folded === "sideways" ? 0 : worst.foldedMargin) : null,
              limit: worst ? worst.foldedRoom : null,
              permitted: worst !== undefined && never.length === 0,
              sentence: `${how}${fold.length ? ` Fold for: ${list(fold)}.` : ""}`,
              condition: "folded, facing or edging sideways",
              source: compared("passage"),
            }
          },
        ),
      )
    },
  },
  {
    id: "packed-size",
    title: "packed size and mass",
    severity: "function",
    reads: ["venue.packed", "day.flies"],
    worsens: { "venue.packed.length": "up", "venue.packed.width": "up", "venue.packed.height": "up", "venue.packed.mass": "up" },
    find: (rig) => {
      const packed = rig.rig.venue?.packed ?? null
      if (!rig.rig.day.flies) return []
      if (!packed) return about("rig", lacking("venue.packed", "It has to go by air, and nothing says how large and heavy it is packed."))
      const condition = "as checked baggage"
      return about(
        "rig",
        asked(passage, { folded: SOMEBODY, packed }, condition, (out) => {
          const sides = packed.length + packed.width + packed.height
          const common = { relation: "at-most", condition, source: compared("passage") } as const
          const size = sides + (out.checkedMargin as number)
          const heaviest = packed.mass + (out.checkedMassMargin as number)
          const ask = "Carriers differ: ask yours."
          return worstOf([
            {
              ...common,
              kind: "length",
              value: sides,
              limit: size,
              sentence: `Packed, length, width and height come to ${length(sides)}; checked baggage may have ${length(size)}. ${ask}`,
            },
            {
              ...common,
              kind: "mass",
              value: packed.mass,
              limit: heaviest,
              sentence: `Packed it weighs ${formatQuantity("mass", packed.mass)}; checked baggage may weigh ${formatQuantity("mass", heaviest)}. ${ask}`,
            },
          ]) as Measured
        }),
      )
    },
  },
  {
    id: "reach",
    title: "switch within reach",
    severity: "safety",
    reads: ["reach", "wearer.stature"],
    worsens: {},
    find: (rig) => {
      const { reach: place, wearer } = rig.rig
      if (!place) return about("switch", lacking("reach", "Nothing says where the switch is that stops it."))
      if (!wearer) return about("switch", lacking("wearer", "Nothing says who wears it."))
      return about(
        "switch",
        asked(reach, { ...place, stature: wearer.stature }, "standing", (out) => ({
          relation: "at-most",
          kind: "length",
          value: out.distance,
          limit: out.maxDistance,
          sentence: `The switch is ${length(out.distance)} from the shoulder; a hand works at up to ${length(out.maxDistance)}.`,
          condition: "standing",
          source: compared("reach"),
        })),
      )
    },
  },
  {
    id: "contact",
    title: "if it strikes or presses somebody",
    severity: "safety",
    reads: [...RIDDEN, "contact"],
    worsens: { "contact.approachSpeed": "up" },
    find: (rig) => {
      const { contact } = rig.rig
      return rig.motions.map((motion, i): Found => {
        if (!contact) return { subject: motion.name, result: lacking("contact", "Nothing says which part of a body it could strike.") }
        const runs = rig.runs[i] as readonly Run[]
        if (runs.some((run) => run.stop))
          return { subject: motion.name, result: blocked(`${motion.name} is stopped on its way: see there first.`, "passes", motion.name) }
        const strike = strikeOf(runs)
        if (!strike || !(strike.armLength > 0 && strike.armMass > 0))
          return {
            subject: motion.name,
            result: {
              verdict: "cannot be judged",
              missing: null,
              because: null,
              sentence: `Nothing of ${motion.name} moves that has a mass and a length.`,
            },
          }
        const { condition, tipSpeed, armLength, armMass, driveMoment } = strike
        return {
          subject: motion.name,
          result: asked(
            contactSeverity,
            { ...contact, armMass, armLength, swingSpeed: tipSpeed / armLength, peakDriveMoment: driveMoment },
            condition,
            (out) => ({
              relation: "at-most",
              kind: "ratio",
              value: out.utilisation,
              limit: 1,
              permitted: out.withinLimits && !out.forbidden,
              sentence: `The tip of ${strike.part.name} moves at up to ${formatQuantity("speed", out.contactSpeed)} and strikes with up to ${formatQuantity("force", out.peakForce)}; its drives can press with ${formatQuantity("force", driveMoment / armLength)} there: ${out.verdict}.`,
              condition,
              source: CONTACT_LIMITS,
            }),
          ),
        }
      })
    },
  },
]

/** Checks of what it may weigh, cost and count. */
export const budgetChecks: readonly RigCheck[] = [
  {
    id: "mass",
    title: "mass of the whole rig",
    severity: "wish",
    reads: [...CARRIED, "budget.mass"],
    worsens: { "budget.mass": "down", "parts[].mass": "up", "parts[].count": "up" },
    find: (rig) => {
      const limit = rig.rig.budget?.mass ?? null
      if (limit === null) return []
      const mass = carriedMass(rig)
      return about(
        "rig",
        mass === null
          ? lacking("parts", "No part is listed: what is carried is not known.")
          : {
              relation: "at-most",
              kind: "mass",
              value: mass,
              limit,
              sentence: `All parts together come to ${formatQuantity("mass", mass)}; ${formatQuantity("mass", limit)} is wanted.`,
              condition: "everything worn",
              source: document,
            },
      )
    },
  },
  {
    id: "price",
    title: "price of all parts",
    severity: "wish",
    reads: ["parts[].count", "parts[].price", "budget.price"],
    worsens: { "budget.price": "down", "parts[].price": "up", "parts[].count": "up" },
    find: (rig) => {
      const limit = rig.rig.budget?.price ?? null
      if (limit === null) return []
      if (!rig.rig.parts.length) return about("rig", lacking("parts", "No part is listed: what it costs is not known."))
      const price = rig.rig.parts.reduce((sum, p) => sum + p.count * p.price, 0)
      return about("rig", {
        relation: "at-most",
        kind: "number",
        value: price,
        limit,
        sentence: `The parts listed cost ${formatNumber(Math.round(price))} of ${formatNumber(Math.round(limit))}.`,
        condition: "parts listed, moving masses without a price left out",
        source: document,
      })
    },
  },
  {
    id: "part-count",
    title: "number of parts",
    severity: "wish",
    reads: ["parts[].count", "budget.parts"],
    worsens: { "budget.parts": "down", "parts[].count": "up" },
    find: (rig) => {
      const limit = rig.rig.budget?.parts ?? null
      if (limit === null) return []
      if (!rig.rig.parts.length) return about("rig", lacking("parts", "No part is listed."))
      const count = rig.rig.parts.reduce((sum, p) => sum + p.count, 0)
      return about("rig", {
        relation: "at-most",
        kind: "number",
        value: count,
        limit,
        sentence: `${count} parts are to be made or bought.`,
        condition: "parts listed",
        source: commonPractice,
      })
    },
  },
]
