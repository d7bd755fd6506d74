// Checks of motions without power: held against the wind, and how hard they fall where nothing holds them.
import { formatQuantity } from "../../quantity/index.js"
import { contactSeverity, windLoad } from "../../worn/index.js"
import { type Fall, fallsUnpowered, worstFalls } from "../run/falls.js"
import { HOLDS, heldAt } from "../run/holding.js"
import { type MotionModel, type Surroundings, standing } from "../run/motion-model.js"
import { CONTACT_LIMITS } from "../sources.js"
import { asked, blocked, type Found, lacking, poseless, type RigCheck } from "./check.js"
import { effortKind, heldWalking, WALKING_BOUNCE } from "./checks-motion.js"
import { type Judged, posturesOf } from "./conditions.js"
import { type Measured, type NotMade, worstOf } from "./finding.js"
import { STOOD } from "./paths.js"
import { sheet } from "./power-tree.js"

const placeOf = (motion: MotionModel, travel: number) => formatQuantity(motion.drive.travel === "length" ? "length" : "angle", travel)

/** Field by which each mechanism states what the wind meets. */
const areaFields = ["panels", "frontArea", "area"] as const

/** Path of the area that the first of a motion's mechanisms to state none leaves open; null where each states one. */
function openArea(rig: Judged, i: number): string | null {
  const said = rig.rig.motions[i]?.mechanisms ?? []
  const area = (one: object, field: string) => (one as Readonly<Record<string, unknown>>)[field]
  const states = (one: object) =>
    areaFields.some((field) => {
      const value = area(one, field)
      return Array.isArray(value) ? value.length > 0 : typeof value === "number" && value > 0
    })
  const at = said.findIndex((one) => !states(one))
  if (at < 0) return null
  const field = areaFields.find((name) => area(said[at] ?? {}, name) !== undefined)
  return `motions[${i}].mechanisms[${at}]${field ? `.${field}` : ""}`
}

/** Largest effort that one drive has to hold in a wind from any side, while the wearer walks or stands. */
function heldInWind(rig: Judged, motion: MotionModel, pressure: number) {
  let [effort, travel, stands, trouble] = [0, 0, "", false]
  for (const { name, posture } of posturesOf(rig.rig))
    for (const factor of [1 + WALKING_BOUNCE, 1 - WALKING_BOUNCE]) {
      const still = standing(posture, factor)
      const blown = (wind: Surroundings["wind"]): Surroundings => ({ ...still, wind })
      for (let k = 0; k <= HOLDS; k++) {
        const at = (motion.span * k) / HOLDS
        const calm = heldAt(motion, at, still)
        if (calm === null) {
          trouble = true
          continue
        }
        // it grows with the pressure's parts ahead and to the side: the worst direction is that of both together
        const ahead = (heldAt(motion, at, blown([pressure, 0, 0])) ?? calm) - calm
        const aside = (heldAt(motion, at, blown([0, pressure, 0])) ?? calm) - calm
        const here = Math.abs(calm) + Math.hypot(ahead, aside)
        if (here > effort) [effort, travel, stands] = [here, at, name]
      }
    }
  return { effort, travel, stands, trouble }
}

function windHolding(rig: Judged): readonly Found[] {
  const { wind } = rig.rig
  if (!wind)
    return [{ subject: "rig", result: lacking("wind", "Nothing says how hard it may blow: whether the drives hold is not known.") }]
  const load = windLoad.attempt(wind)
  if (!load.ok)
    return [{ subject: "rig", result: { verdict: "cannot be judged", missing: null, because: null, sentence: load.error.message } }]
  const pressure = load.value.pressure * load.value.drag.high
  return rig.motions.map((motion, i): Found => {
    const { name: subject } = motion
    const { effort, travel, stands, trouble } = heldInWind(rig, motion, pressure)
    if (trouble) return { subject, result: poseless(subject) }
    const kind = effortKind(motion)
    const { holdingEffort: limit } = motion.drive
    const holds = effort <= limit
    // where what is stated is too much already, that is told first
    const open = openArea(rig, i)
    if (open && holds) return { subject, result: lacking(open, `Nothing says what area of ${subject} the wind meets.`) }
    if (holds && rig.rig.motions.some(({ on }) => on === subject))
      return {
        subject,
        result: {
          verdict: "cannot be judged",
          missing: null,
          because: null,
          sentence: `What is mounted on ${subject} stands in the wind as well, and what that asks of its drives is not found: fold it before it blows.`,
        },
      }
    const gust = formatQuantity("speed", load.value.relativeSpeed)
    const sentence = `In gusts of ${gust}, walking counted, each drive of ${subject} has to hold up to ${formatQuantity(kind, effort)} without power${
      holds
        ? ", and holds it"
        : limit > 0
          ? `, and holds ${formatQuantity(kind, limit)}: the wind moves it. Fold it, stay out of that wind, or take a stronger drive or a brake`
          : ", and its datasheet promises nothing: the wind moves it. Fold it, stay out of that wind, or take a drive that locks itself or a brake"
    }.`
    const common = {
      kind,
      value: effort,
      sentence,
      condition: `stopped at ${placeOf(motion, travel)}, ${stands ? `${stands}, ` : ""}wind from the worst side`,
      source: sheet("drive"),
      cautions: load.value.cautions,
    }
    return {
      subject,
      result: Number.isFinite(limit)
        ? { ...common, relation: "at-most", limit }
        : { ...common, relation: "rule", limit: null, permitted: true },
    }
  })
}

/** A fall, with how the wearer stands and moves then. */
interface Stood {
  readonly fall: Fall
  readonly stands: string
}

/** The fastest fall of each part however the wearer stands; walking, where it stays while they stand still. */
function fallsOf(rig: Judged, motion: MotionModel): { readonly falls: readonly Stood[]; readonly massless: boolean } {
  let massless = false
  const under = (factor: number, walks: string) => {
    const fastest = new Map<Fall["part"], Stood>()
    for (const { name, posture } of posturesOf(rig.rig)) {
      const found = worstFalls(motion, standing(posture, factor))
      massless ||= found.massless
      const stands = [name, walks].filter(Boolean).join(", ")
      for (const fall of found.falls)
        if (fall.tipSpeed > (fastest.get(fall.part)?.fall.tipSpeed ?? 0)) fastest.set(fall.part, { fall, stands })
    }
    return [...fastest.values()]
  }
  const still = under(1, "")
  const falls = still.length || massless ? still : [1 + WALKING_BOUNCE, 1 - WALKING_BOUNCE].flatMap((factor) => under(factor, "walking"))
  return { falls, massless }
}

function powerLost(rig: Judged, motion: MotionModel, i: number): Measured | NotMade {
  const { name, drive } = motion
  const { contact } = rig.rig
  const { effort: held, trouble } = heldWalking(rig, motion)
  if (trouble) return poseless(name)
  const stays = (why: string): Measured => ({
    relation: "rule",
    kind: "energy",
    value: 0,
    limit: null,
    permitted: true,
    sentence: `Where power is lost the motion of ${name} stays where it is: ${why}.`,
    condition: "let go anywhere on its travel",
    source: sheet("drive"),
  })
  if (held <= drive.holdingEffort) return stays("its drives hold it")
  const { falls, massless } = fallsOf(rig, motion)
  if (massless)
    return lacking(
      `motions[${i}].mechanisms`,
      `Without power ${name} runs by itself, and nothing that moves states a mass: how fast is not known.`,
    )
  const [first] = falls
  // friction wears and is shaken loose: it is not counted on
  if (!first)
    return blocked(
      `Where power is lost nothing but friction keeps the motion of ${name} where it is, and that is not counted on: see there first.`,
      "holds-unpowered",
      name,
    )
  const said = ({ fall }: Stood) =>
    `Where power is lost the motion of ${name} may run ${fall.way === 1 ? "out" : "back"} by itself: let go at ${placeOf(motion, fall.from)} of its drive's travel, the tip of ${fall.part.name} comes to ${formatQuantity("speed", fall.tipSpeed)} with ${formatQuantity("energy", fall.energy)} in all that moves, the drive's own friction not counted`
  if (!contact) {
    const fastest = falls.reduce((a, b) => (b.fall.tipSpeed > a.fall.tipSpeed ? b : a), first)
    return lacking("contact", `${said(fastest)}. Nothing says which part of a body it could strike.`)
  }
  const caution = fallsUnpowered(motion, held)
  // a heavy part that is slower may strike harder than the fastest tip
  const blows = falls.map((one): Measured | NotMade => {
    const { armLength, armMass, tipSpeed, weightMoment, from } = one.fall
    const condition = `let go at ${placeOf(motion, from)} of its drive's travel${one.stands ? `, ${one.stands}` : ""}`
    return asked(
      contactSeverity,
      { ...contact, armMass, armLength, swingSpeed: tipSpeed / armLength, peakDriveMoment: weightMoment },
      condition,
      (out) => ({
        relation: "at-most",
        kind: "ratio",
        value: out.utilisation,
        limit: 1,
        permitted: out.withinLimits && !out.forbidden,
        sentence: `${said(one)}. It would strike with up to ${formatQuantity("force", out.peakForce)}: ${out.verdict}. Keep people clear of it, and take a drive that locks itself, a brake or a counterweight.`,
        condition,
        source: CONTACT_LIMITS,
        cautions: [caution],
      }),
    )
  })
  return worstOf(blows) as Measured | NotMade
}

/** Checks of what holds and what falls without power. */
export const unpoweredChecks: readonly RigCheck[] = [
  {
    id: "wind-holding",
    title: "holds against the wind",
    severity: "safety",
    reads: [...STOOD, "wind"],
    worsens: {
      "wind.windSpeed": "up",
      "wind.gustFactor": "up",
      "wind.walkingSpeed": "up",
      "wind.airDensity": "up",
      "wind.dragCoefficient": "up",
      "motions[].drive.holdingForce": "down",
      "motions[].drive.holdingTorque": "down",
    },
    find: windHolding,
  },
  {
    id: "power-lost",
    title: "where power is lost",
    severity: "safety",
    reads: [...STOOD, "contact"],
    worsens: { "motions[].drive.holdingForce": "down", "motions[].drive.holdingTorque": "down", "contact.approachSpeed": "up" },
    find: (rig) => rig.motions.map((motion, i) => ({ subject: motion.name, result: powerLost(rig, motion, i) })),
  },
]
