import type { Certified } from "../../../numeric/index.js"
import { type NoSolution, refuse } from "../../../solver/index.js"
import { TURN } from "./box.js"
import { buildOf, leastLevers, lowEnds, mostLever, mostSwing } from "./build.js"
import { clearanceOf, offPlace } from "./keep-out.js"
import type { PlaceGoal } from "./local.js"
import type { KeepOut, Placement, PlaceProblem } from "./model.js"
import { partsOf } from "./region.js"
import { searchPlacement } from "./search.js"
import type { PlaceActuatorRefusal } from "./types.js"

interface Wanted {
  readonly stroke: number
  readonly swing: number
  readonly gapLimit: number
  readonly maxBoxes: number
  readonly maxSwing: number | null
  readonly maxLever: number | null
}

/** A limit may be kept to the last digit or not: what is offered keeps a millionth from it. */
const CLEAR = 1e-6

/** Says why no placement was found, by how much, and what may help: values still to be tried. */
export function placementRefusal(p: PlaceProblem, wanted: Wanted, search: Certified<Placement>): NoSolution<PlaceActuatorRefusal> {
  const { swing, gapLimit, maxBoxes } = wanted
  const [bases, pins] = [partsOf(p.fixedPivotRegion), partsOf(p.movingPivotRegion)]
  const reach = Math.max(...bases.map((b) => b.far)) + Math.max(...pins.map((b) => b.far))
  // what the tolerances may take away at either dead point
  const off = 2 * p.pivotError + p.lengthError
  const needed = p.extendedLength + p.minDeadPointMargin + off
  if (reach < needed)
    return refuse(
      "regions-too-near",
      "Even the far corners of the regions give the extended actuator only {reach length} of the {needed length} it needs before the dead point, {shortBy length} too little.",
      needed - reach,
      { reach, needed },
      { retractedLength: 0.8 * reach - wanted.stroke },
    )
  const near = (parts: typeof bases) => Math.min(...parts.map((b) => b.near))
  const far = (parts: typeof bases) => Math.max(...parts.map((b) => b.far))
  const apart = Math.max(near(bases) - far(pins), near(pins) - far(bases))
  const room = p.retractedLength - p.minDeadPointMargin - off
  if (apart > room)
    return refuse(
      "regions-too-far",
      "The regions' distances from the hinge differ by at least {apart length}, {shortBy length} more than the {room length} that the retracted actuator takes up before the dead point.",
      apart - room,
      { apart, room },
      { retractedLength: 1.5 * apart + p.minDeadPointMargin + off },
    )
  if (!search.isClosed)
    return refuse(
      "no-candidate",
      "No placement was found in {maxBoxes} search boxes, and none excluded: allow more boxes, or widen regions and limits.",
      swing,
      { maxBoxes: search.explored },
      { maxBoxes: 10 * maxBoxes },
    )
  // wide enough that the low ends of all builds of any placement lie in it in some turn
  const any: PlaceProblem = { ...p, lowFrom: -1.5 * Math.PI, lowTo: 1.5 * Math.PI }
  const loose: PlaceProblem = {
    ...any,
    keepOut: null,
    minLever: 0,
    maxLever: Number.POSITIVE_INFINITY,
    minTransmissionSine: 0,
    maxSwing: Number.POSITIVE_INFINITY,
  }
  const goal = { force: Number.POSITIVE_INFINITY, gap: gapLimit, budget: maxBoxes }
  // what the limits as they stand leave of the swing
  const kept = searchPlacement(p, { ...goal, gap: 1e-3, objective: "max-swing", swing: 1e-3 }).best?.found.swing
  const lessSwing: Readonly<Record<string, number>> = kept === undefined ? {} : { swing: kept * (1 - CLEAR) }
  const widest = searchPlacement(loose, { ...goal, gap: 1e-4, objective: "max-swing", swing: 0 })
  const most = widest.best?.found.swing ?? 0
  if (most < swing) {
    const maxSwing = Math.min(swing, Math.max(0, -widest.bound))
    return refuse(
      "insufficient-swing",
      "No placement in the regions swings more than {maxSwing angle °}; {given.swing angle °} are wanted.",
      swing - most,
      { maxSwing },
      lessSwing,
      { "given.swing": swing },
    )
  }
  const turned = searchPlacement(any, { ...goal, objective: "min-force", swing })
  if (turned.best) {
    const { found } = turned.best
    const ends = lowEnds(buildOf(p, found.distance, found.radius), found)
    const turns = TURN * Math.round((p.lowFrom + p.lowTo - ends[0] - ends[1]) / 2 / TURN)
    const [below, above] = [p.lowFrom - ends[0] - turns, ends[1] + turns - p.lowTo]
    return refuse(
      "low-end-out-of-range",
      "No placement has the low end of its swing between {given.lowAngle.from angle °} and {given.lowAngle.to angle °}; with every other limit kept, one has it {shortBy angle °} outside.",
      Math.max(below, above),
      {},
      {
        ...(below > 0 ? { "lowAngle.from": p.lowFrom - below - CLEAR } : {}),
        ...(above > 0 ? { "lowAngle.to": p.lowTo + above + CLEAR } : {}),
        ...lessSwing,
      },
      { "given.lowAngle.from": p.lowFrom, "given.lowAngle.to": p.lowTo },
    )
  }
  if (p.keepOut !== null && searchPlacement({ ...p, keepOut: null }, { ...goal, objective: "min-force", swing }).best)
    return refuse(
      "parts-in-the-way",
      "Every placement that swings {given.swing angle °} within the other limits brings the actuator too near to a part that it has to keep clear of; it is {shortBy angle °} too much for them.",
      swing - (kept ?? 0),
      {},
      { ...narrower(p, p.keepOut, { ...goal, objective: "min-force", swing }), ...lessSwing },
      { "given.swing": swing },
    )
  // one placement that keeps none of the softer limits says what each would have to be
  const without = searchPlacement({ ...loose, lowFrom: p.lowFrom, lowTo: p.lowTo }, { ...goal, objective: "min-force", swing }).best?.found
  const offered = without ? softened(p, wanted, without) : {}
  return refuse(
    "limits-exclude-all",
    "The limits on low end, lever arm, transmission angle and swing together exclude every placement with a swing of {given.swing angle °}; it is {shortBy angle °} too much for them.",
    swing - (kept ?? 0),
    {},
    { ...offered, ...lessSwing },
    { "given.swing": swing },
  )
}

/** A width of the actuator with which a placement would keep clear. */
function narrower(p: PlaceProblem, keepOut: KeepOut, goal: PlaceGoal): Record<string, number> {
  const thin = searchPlacement({ ...p, keepOut: { ...keepOut, halfWidth: 0 } }, goal).best?.found
  if (thin === undefined) return {}
  const off = offPlace(p.pivotError, thin.distance) + offPlace(p.pivotError, thin.radius)
  const left = clearanceOf(keepOut, buildOf(p, thin.distance, thin.radius), thin) - off
  return left > 0 ? { actuatorWidth: 2 * left * (1 - CLEAR) } : {}
}

/** Limits that a placement would keep. */
function softened(p: PlaceProblem, { maxSwing, maxLever }: Wanted, found: Placement): Record<string, number> {
  const build = buildOf(p, found.distance, found.radius)
  const { lever, sine } = leastLevers(build)
  return {
    minLever: lever * (1 - CLEAR),
    minTransmissionAngle: Math.asin(Math.min(1, sine)) - CLEAR,
    ...(maxSwing === null ? {} : { maxSwing: mostSwing(build) + CLEAR }),
    ...(maxLever === null ? {} : { maxLever: mostLever(build) * (1 + CLEAR) }),
  }
}
