import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { Result, SiOf } from "../../solver/index.js"
import { contactSeverity, overturning, passage, pinchGap, reach, type WindLoad, type WornEnvelope, windLoad } from "../../worn/index.js"
import type { RigDocument } from "../document/document.js"
import { always, type Check } from "./checks.js"
import { atLeast, atMost, byMargin, type Found, findBy, lacking, onMove } from "./finding.js"
import type { Situation } from "./situation.js"

type Si = SiOf<RigDocument>

const hinged = ({ rig }: Situation) => rig.hinged !== null
const tipRadius = (rig: Si) => Math.max(0, ...(rig.hinged?.masses.map((m) => m.radius) ?? []))
const length = (l: number) => formatQuantity("length", l)

/** Wind on all arms or panels, the arms raised. */
function onWind(s: Situation, make: (wind: Result<WindLoad>) => Found): Found {
  const { wind, mount, hinged: arms } = s.rig
  if (!wind) return lacking("wind")
  if (!mount) return lacking("mount")
  const ends = s.ends()
  const raise = ends ? ends[1] : 0
  return findBy(
    windLoad,
    "wind",
    {
      ...wind,
      panels: arms?.count ?? 1,
      hingeHeight: mount.height + (arms?.hinge.y ?? 0),
      // an arm swung past the vertical stands as high as its mirror image before it
      elevation: Math.asin(Math.sin(raise)),
    },
    make,
  )
}

/** What wearer and rig take up, arms in one place. */
function envelope(s: Situation, angle: number | null): WornEnvelope {
  const { venue, wearer, mount, hinged: arms } = s.rig
  const { front, back, bodyWidth } = venue as NonNullable<Si["venue"]>
  const { stature } = wearer as NonNullable<Si["wearer"]>
  if (!arms || angle === null) return { width: bodyWidth, forward: front, backward: back, height: stature }
  const reachOut = Math.max(0, arms.hinge.x + tipRadius(s.rig) * Math.cos(angle))
  const top = (mount?.height ?? 0) + arms.hinge.y + tipRadius(s.rig) * Math.sin(angle)
  return { width: Math.max(bodyWidth, 2 * reachOut), forward: front, backward: back, height: Math.max(stature, top) }
}

/** Checks of what is around the wearer: wind, ways, hands, crowds. */
export const aroundChecks: readonly Check[] = [
  {
    id: "wind-holding",
    title: "holding force in a gust, unpowered",
    applies: hinged,
    find: (s) =>
      onWind(s, (wind) => {
        const arms = s.rig.hinged as NonNullable<Si["hinged"]>
        const arm = s.arm()
        const ends = s.ends()
        if (!arm || !ends) return lacking("hinged", "the linkage does not close at both ends of the stroke")
        // weight, a walking bounce and the gust at their worst together; the gust across the arm, wherever it stands
        const bounce = 0.43
        let force = 0
        for (let i = 0; i <= 20; i++) {
          const angle = ends[0] + ((ends[1] - ends[0]) * i) / 20
          force = Math.max(force, (Math.abs(arm.momentAt(angle)) * (1 + bounce) + wind.hingeMoment.high) / Math.abs(arm.leverAt(angle)))
        }
        const limit = arms.actuator.holdingForce
        if (!(limit > 0)) return lacking("hinged.actuator.holdingForce")
        return atMost(
          force,
          limit,
          "force",
          `Weight, the bounce of walking and the gust at their worst together put ${formatQuantity("force", force)} on each rod, which holds ${formatQuantity("force", limit)} without power.`,
          "the actuator's datasheet; a walking factor of 0.43 is common practice",
        )
      }),
  },
  {
    id: "tip-over",
    title: "tipping over in the wind",
    applies: always,
    find: (s) => {
      const { wearer, wind, stance } = s.rig
      if (!wearer) return lacking("wearer")
      const load = s.mass()
      if (load === null) return lacking("parts")
      return onWind(s, (out) => {
        const { windSpeed: speed, gustFactor, walkingSpeed } = wind as NonNullable<typeof wind>
        const input = {
          ...stance,
          bodyMass: wearer.bodyMass,
          stature: wearer.stature,
          rigMass: load,
          dragArea: out.dragArea,
          forceHeight: out.forceHeight,
          windSpeed: speed,
          gustFactor,
          walkingSpeed,
        }
        return findBy(overturning, "stance", input, (tip) =>
          atLeast(
            tip.foldWindSpeed,
            speed,
            "speed",
            `Fold the arms when the wind reaches ${formatQuantity("speed", tip.foldWindSpeed, "m/s")} (Beaufort ${tip.foldBeaufort}); ${formatQuantity("speed", speed, "m/s")} is expected.`,
            "moment about the feet: see alula/worn overturning",
          ),
        )
      })
    },
  },
  {
    id: "ways",
    title: "clearance through doors and routes",
    applies: always,
    find: (s) => {
      if (!s.rig.venue) return lacking("venue")
      if (!s.rig.wearer) return lacking("wearer")
      if (s.rig.hinged && !s.rig.mount) return lacking("mount")
      const ends = s.ends()
      const { own, packed, allowance } = s.rig.venue
      const input = {
        folded: envelope(s, ends?.[0] ?? null),
        raised: ends ? envelope(s, ends[1]) : null,
        ownPlaces: own,
        packed,
        allowance,
      }
      const { kinds } = s.rig.venue
      const names = own.map((p) => p.name)
      return findBy(passage, "venue", input, (out) => {
        const judged = out.places.filter((p) => names.includes(p.place) || (kinds as readonly string[]).includes(p.type))
        if (!judged.length) return lacking("venue.own", "no place to pass is named")
        const list = (places: readonly { readonly place: string }[]) =>
          `${places
            .slice(0, 4)
            .map((p) => p.place)
            .join(", ")}${places.length > 4 ? " and others" : ""}`
        const blocked = judged.filter((p) => p.folded === "no")
        const sideways = judged.filter((p) => p.folded === "sideways")
        const fold = judged.filter((p) => p.folded !== "no" && p.raised === "no")
        // no way through is worse than edging sideways, and that worse than facing, whatever is to spare
        const hardest = blocked.length ? blocked : sideways.length ? sideways : judged
        const least = hardest.reduce((x, y) => (y.foldedMargin < x.foldedMargin ? y : x))
        const why = blocked.length
          ? `Folded it does not pass: ${list(blocked)} (the ${least.foldedBy} of ${least.place}).`
          : sideways.length
            ? `Folded it passes only by edging sideways: ${list(sideways)}.`
            : `Folded it passes everywhere judged, closest at the ${least.foldedBy} of ${least.place}.`
        return byMargin(
          least.foldedRoom - least.foldedMargin,
          least.foldedRoom,
          "length",
          least.folded === "sideways" ? 0 : least.foldedMargin / least.foldedRoom,
          `${why}${fold.length ? ` Fold for: ${list(fold)}.` : ""}`,
          "published clear widths: see alula/worn passage",
        )
      })
    },
  },
  {
    id: "baggage",
    title: "packed size and mass",
    applies: ({ rig }) => rig.venue?.packed != null,
    find: (s) =>
      findBy(
        passage,
        "venue",
        { folded: { width: 0.6, forward: 0.3, backward: 0.3, height: 1.8 }, packed: s.rig.venue?.packed ?? null },
        (out) => {
          const margin = Math.min(out.checkedMargin ?? 0, out.checkedMassMargin === null ? 0 : out.checkedMassMargin / 20)
          return byMargin(
            out.checkedMargin ?? 0,
            0,
            "length",
            margin,
            margin >= 0
              ? `Packed it goes as checked baggage with ${length(out.checkedMargin ?? 0)} to spare.`
              : "Packed it is too large or too heavy for checked baggage.",
            "published baggage limits: see alula/worn passage; ask the carrier",
          )
        },
      ),
  },
  {
    id: "reach",
    title: "switch within reach",
    applies: always,
    find: (s) => {
      if (!s.rig.reach) return lacking("reach")
      if (!s.rig.wearer) return lacking("wearer")
      return findBy(reach, "reach", { ...s.rig.reach, stature: s.rig.wearer.stature }, (out) =>
        atMost(
          out.distance,
          out.maxDistance,
          "length",
          `The switch is ${length(out.distance)} from the shoulder; a hand works at up to ${length(out.maxDistance)}.`,
          "anthropometric reach: see alula/worn reach",
        ),
      )
    },
  },
  {
    id: "pinch",
    title: "pinch gaps",
    applies: hinged,
    find: (s) => {
      const { pinch, hinged: arms } = s.rig
      if (!pinch) return lacking("pinch")
      const arm = s.arm()
      const ends = s.ends()
      if (!arm || !arms || !ends) return lacking("hinged", "the linkage does not close at both ends of the stroke")
      const poses = Array.from({ length: 25 }, (_, i) => ({
        x: arms.hinge.x,
        y: arms.hinge.y,
        angle: ends[0] + ((ends[1] - ends[0]) * i) / 24,
      }))
      // beside the hinge itself every arm pinches: the arm counts from one lever beyond it
      const moving = [{ x1: Math.min(2 * arms.movingPivot.radius, tipRadius(s.rig) / 2), y1: 0, x2: tipRadius(s.rig), y2: 0 }]
      return findBy(
        pinchGap,
        "pinch",
        { movingBars: moving, fixedBars: pinch.fixed, poses, movingThickness: pinch.armThickness, fixedThickness: pinch.fixedThickness },
        (out) => {
          const part = out.parts.find((p) => p.part === pinch.reachable)
          if (!part) return lacking("pinch.reachable")
          // a gap that does not close on this part, or never lets it in, is no crushing gap however narrow
          if (!part.crushes && out.provenMinGap < part.minGap)
            return byMargin(
              out.provenMinGap,
              part.minGap,
              "length",
              1,
              `The gap stays as narrow as ${length(out.provenMinGap)}, but nowhere does it open for a ${part.part} and close on it.`,
              "ISO 13854, 2017, table 1",
            )
          return atLeast(
            out.provenMinGap,
            part.minGap,
            "length",
            `Through the swing the gap closes to ${length(out.provenMinGap)}; ${length(part.minGap)} leaves room for the part that can get there (${part.part}).`,
            "ISO 13854, 2017, table 1",
          )
        },
      )
    },
  },
  {
    id: "contact",
    title: "contact force",
    applies: hinged,
    find: (s) => {
      const { contact, hinged: arms } = s.rig
      if (!contact) return lacking("contact")
      return onMove(s, (move) => {
        const arm = s.arm()
        if (!arm || !arms) return lacking("hinged")
        const swing = Math.max(...[...move.raise.curve, ...move.lower.curve].map((p) => p.speed / Math.abs(arm.leverAt(p.angle))))
        const mass = arms.masses.reduce((sum, m) => sum + m.mass, 0)
        return findBy(contactSeverity, "contact", { ...contact, armMass: mass, armLength: tipRadius(s.rig), swingSpeed: swing }, (out) =>
          // where no contact is allowed there is no share of a limit to be under
          atMost(
            out.utilisation,
            out.forbidden ? 0 : 1,
            "ratio",
            `The tip moves at ${formatQuantity("speed", out.contactSpeed)} and strikes with up to ${formatQuantity("force", out.peakForce)}, ${formatNumber(out.utilisation)} of the published onset of pain: ${out.verdict}.`,
            "ISO/TS 15066, 2016: see alula/worn contactSeverity",
          ),
        )
      })
    },
  },
]

/** Checks of what it may weigh, cost and count. */
export const budgetChecks: readonly Check[] = [
  {
    id: "mass",
    title: "mass of the whole rig",
    applies: always,
    find: (s) => {
      const limit = s.rig.budget?.mass ?? null
      if (limit === null) return lacking("budget.mass")
      const mass = s.mass()
      return mass === null
        ? lacking("parts")
        : atMost(mass, limit, "mass", `All parts together come to ${formatQuantity("mass", mass)}.`, "the document")
    },
  },
  {
    id: "price",
    title: "price of all parts",
    applies: always,
    find: ({ rig }) => {
      const limit = rig.budget?.price ?? null
      if (limit === null) return lacking("budget.price")
      if (!rig.parts.length) return lacking("parts")
      const price = rig.parts.reduce((sum, p) => sum + p.count * p.price, 0)
      return atMost(
        price,
        limit,
        "number",
        `The parts listed cost ${formatNumber(Math.round(price))} of ${formatNumber(Math.round(limit))}.`,
        "the document",
      )
    },
  },
  {
    id: "part-count",
    title: "number of parts",
    applies: always,
    find: ({ rig }) => {
      const limit = rig.budget?.parts ?? null
      if (limit === null) return lacking("budget.parts")
      if (!rig.parts.length) return lacking("parts")
      const parts = rig.parts.reduce((sum, p) => sum + p.count, 0) + (rig.hinged ? rig.hinged.count * rig.hinged.masses.length : 0)
      return atMost(parts, limit, "number", `${parts} parts are to be made or bought.`, "the document")
    },
  },
]
