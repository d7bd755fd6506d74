import type { Certified } from "../numeric/index.js"
import { type NoSolution, refuse } from "../solver/index.js"
import { leverArm, type Placement, type PlaceProblem } from "./place-model.js"
import { partsOf } from "./place-region.js"
import { searchPlacement } from "./place-search.js"

interface Wanted {
  readonly stroke: number
  readonly swing: number
  readonly gap: number
  readonly boxes: number
  readonly clearance: number
  readonly leastTransmission: number
  readonly mostSwing: number | null
  readonly mostLever: number | null
}

/** A limit may be kept to the last digit or not: what is offered keeps a millionth from it. */
const CLEAR = 1e-6

/** Says why no placement was found, by how much, and what may help: values still to be tried. */
export function placementRefusal(p: PlaceProblem, wanted: Wanted, search: Certified<Placement>): NoSolution {
  const { swing, gap, boxes, leastTransmission } = wanted
  const [bases, pins] = [partsOf(p.baseRegion), partsOf(p.pinRegion)]
  const reach = Math.max(...bases.map((b) => b.far)) + Math.max(...pins.map((b) => b.far))
  const needed = p.extended + p.clearance
  if (reach < needed) {
    const off = (needed - reach) * (1 + CLEAR)
    return refuse(
      "regions-too-near",
      "Even the far corners of the regions give the extended actuator only {reach length} of the {needed length} it needs before the dead point, {shortBy length} too little.",
      needed - reach,
      { reach, needed },
      { retracted: p.retracted - off, stroke: wanted.stroke - off, clearance: wanted.clearance - off },
    )
  }
  const near = (parts: typeof bases) => Math.min(...parts.map((b) => b.near))
  const far = (parts: typeof bases) => Math.max(...parts.map((b) => b.far))
  const apart = Math.max(near(bases) - far(pins), near(pins) - far(bases))
  const room = p.retracted - p.clearance
  if (apart > room)
    return refuse(
      "regions-too-far",
      "The regions' distances from the hinge differ by at least {apart length}, {shortBy length} more than the {room length} that the retracted actuator takes up before the dead point.",
      apart - room,
      { apart, room },
      { retracted: apart + p.clearance + 0.02 * p.retracted, clearance: p.retracted - apart * (1 + CLEAR) },
    )
  if (!search.isClosed)
    return refuse(
      "not-found",
      "No placement was found in {boxes} search boxes, and none excluded: allow more boxes, or widen regions and limits.",
      swing,
      { boxes: search.explored },
      { boxes: 10 * boxes },
    )
  const any: PlaceProblem = { ...p, lowFrom: -Math.PI, lowTo: Math.PI }
  const loose: PlaceProblem = {
    ...any,
    leastLever: 0,
    mostLever: Number.POSITIVE_INFINITY,
    leastSine: 0,
    mostSwing: Number.POSITIVE_INFINITY,
  }
  const goal = { force: Number.POSITIVE_INFINITY, gap, budget: boxes }
  // what the limits as they stand leave of the swing
  const kept = searchPlacement(p, { ...goal, gap: 1e-3, seek: "most swing", swing: 1e-3 }).best?.found.swing
  const lessSwing: Readonly<Record<string, number>> = kept === undefined ? {} : { swing: kept * (1 - CLEAR) }
  const widest = searchPlacement(loose, { ...goal, gap: 1e-4, seek: "most swing", swing: 0 })
  const most = widest.best?.found.swing ?? 0
  if (most < swing) {
    const mostSwing = Math.min(swing, Math.max(0, -widest.bound))
    return refuse(
      "swing-out-of-reach",
      "No placement in the regions swings more than {mostSwing angle °}; {given.swing angle °} are wanted.",
      swing - most,
      { mostSwing },
      lessSwing,
      { "given.swing": swing },
    )
  }
  const offRange = (low: number) => Math.abs(low - Math.min(p.lowTo, Math.max(p.lowFrom, low)))
  const widened = (low: number) => (low < p.lowFrom ? { "lowAngle.from": low - CLEAR } : { "lowAngle.to": low + CLEAR })
  const range = { "given.lowAngle.from": p.lowFrom, "given.lowAngle.to": p.lowTo }
  const turned = searchPlacement(any, { ...goal, seek: "least force", swing })
  if (turned.best) {
    const { low } = turned.best.found
    return refuse(
      "limits-exclude-all",
      "No placement has the low end of its swing between {given.lowAngle.from angle °} and {given.lowAngle.to angle °}; with every other limit kept, one has it at {low angle °}.",
      offRange(low),
      { low },
      { ...widened(low), ...lessSwing },
      range,
    )
  }
  const weaker = searchPlacement({ ...loose, lowFrom: p.lowFrom, lowTo: p.lowTo }, { ...goal, seek: "least force", swing })
  const without = weaker.best?.found
  if (!without) {
    // the widest swing is at hand where even this last search stays empty
    const { low } = (searchPlacement(loose, { ...goal, seek: "least force", swing }, widest.best?.found).best ?? widest.best)?.found ?? {
      low: 0,
    }
    return refuse(
      "limits-exclude-all",
      "The regions allow a swing of {most angle °}, but none of {given.swing angle °} with its low end between {given.lowAngle.from angle °} and {given.lowAngle.to angle °}; one has it at {low angle °}.",
      offRange(low),
      { most, low },
      { ...widened(low), ...lessSwing },
      { ...range, "given.swing": swing },
    )
  }
  const [u, v] = [without.distance + without.radius, Math.abs(without.distance - without.radius)]
  const lever = Math.min(leverArm(u, v, p.retracted), leverArm(u, v, p.extended))
  const transmission = Math.asin(Math.min(1, lever / without.radius))
  const longest = leverArm(u, v, Math.min(p.extended, Math.max(p.retracted, Math.sqrt(u * v))))
  const short = [p.leastLever - lever, leastTransmission - transmission, without.swing - p.mostSwing, longest - p.mostLever]
  return refuse(
    "limits-exclude-all",
    "Lever-arm, transmission-angle or swing limits exclude every placement; without them one has lever arms of {lever length} to {longest length}, a least transmission angle of {transmission angle °} and {swung angle °} of swing.",
    short.find((missing) => missing > 0) ?? gap,
    { lever, longest, transmission, swung: without.swing },
    {
      leastLever: lever * (1 - CLEAR),
      leastTransmission: transmission - CLEAR,
      ...(wanted.mostSwing === null ? {} : { mostSwing: without.swing + CLEAR }),
      ...(wanted.mostLever === null ? {} : { mostLever: longest * (1 + CLEAR) }),
      ...lessSwing,
    },
  )
}
