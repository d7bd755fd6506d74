import type { Certified } from "../../../numeric/index.js"
import { type NoSolution, refuse } from "../../../solver/index.js"
import { leverArm, type Placement, type PlaceProblem } from "./model.js"
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
  const needed = p.extendedLength + p.minDeadPointMargin
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
  const room = p.retractedLength - p.minDeadPointMargin
  if (apart > room)
    return refuse(
      "regions-too-far",
      "The regions' distances from the hinge differ by at least {apart length}, {shortBy length} more than the {room length} that the retracted actuator takes up before the dead point.",
      apart - room,
      { apart, room },
      { retractedLength: 1.5 * apart + p.minDeadPointMargin },
    )
  if (!search.isClosed)
    return refuse(
      "no-candidate",
      "No placement was found in {maxBoxes} search boxes, and none excluded: allow more boxes, or widen regions and limits.",
      swing,
      { maxBoxes: search.explored },
      { maxBoxes: 10 * maxBoxes },
    )
  const any: PlaceProblem = { ...p, lowFrom: -Math.PI, lowTo: Math.PI }
  const loose: PlaceProblem = {
    ...any,
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
    const { low } = turned.best.found
    return refuse(
      "low-end-out-of-range",
      "No placement has the low end of its swing between {given.lowAngle.from angle °} and {given.lowAngle.to angle °}; with every other limit kept, one has it {shortBy angle °} outside.",
      Math.abs(low - Math.min(p.lowTo, Math.max(p.lowFrom, low))),
      {},
      { ...(low < p.lowFrom ? { "lowAngle.from": low - CLEAR } : { "lowAngle.to": low + CLEAR }), ...lessSwing },
      { "given.lowAngle.from": p.lowFrom, "given.lowAngle.to": p.lowTo },
    )
  }
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

/** Limits that a placement would keep. */
function softened(p: PlaceProblem, { maxSwing, maxLever }: Wanted, found: Placement): Record<string, number> {
  const [u, v] = [found.distance + found.radius, Math.abs(found.distance - found.radius)]
  const lever = Math.min(leverArm(u, v, p.retractedLength), leverArm(u, v, p.extendedLength))
  const longest = leverArm(u, v, Math.min(p.extendedLength, Math.max(p.retractedLength, Math.sqrt(u * v))))
  return {
    minLever: lever * (1 - CLEAR),
    minTransmissionAngle: Math.asin(Math.min(1, lever / found.radius)) - CLEAR,
    ...(maxSwing === null ? {} : { maxSwing: found.swing + CLEAR }),
    ...(maxLever === null ? {} : { maxLever: longest * (1 + CLEAR) }),
  }
}
