import type { Certified } from "../numeric/index.js"
import { formatQuantity } from "../quantity/index.js"
import { type NoSolution, refuse } from "../solver/index.js"
import { leverArm, type Placement, type PlaceProblem } from "./place-model.js"
import { partsOf } from "./place-region.js"
import { searchPlacement } from "./place-search.js"

interface Wanted {
  readonly swing: number
  readonly gap: number
  readonly boxes: number
  readonly leastTransmission: number
}

/** Says why no placement was found, by how much, and the nearest that would do. */
export function placementRefusal(
  p: PlaceProblem,
  { swing, gap, boxes, leastTransmission }: Wanted,
  search: Certified<Placement>,
): NoSolution {
  const mm = (length: number) => formatQuantity("length", length)
  const deg = (angle: number) => formatQuantity("angle", angle)
  const [bases, pins] = [partsOf(p.baseRegion), partsOf(p.pinRegion)]
  const reach = Math.max(...bases.map((b) => b.far)) + Math.max(...pins.map((b) => b.far))
  const needed = p.extended + p.clearance
  if (reach < needed)
    return refuse(
      "regions-too-near",
      `Even the far corners of the regions give the extended actuator only ${mm(reach)} of the ${mm(needed)} it needs before the dead point.`,
      needed - reach,
      { reach, extended: p.extended },
      { extended: reach - p.clearance },
    )
  const near = (parts: typeof bases) => Math.min(...parts.map((b) => b.near))
  const far = (parts: typeof bases) => Math.max(...parts.map((b) => b.far))
  const apart = Math.max(near(bases) - far(pins), near(pins) - far(bases))
  const room = p.retracted - p.clearance
  if (apart > room)
    return refuse(
      "regions-too-far",
      `The regions' distances from the hinge differ by at least ${mm(apart)}, the retracted actuator takes up at most ${mm(room)} before the dead point.`,
      apart - room,
      { apart, retracted: p.retracted },
      { retracted: apart + p.clearance },
    )
  if (!search.isClosed)
    return refuse(
      "not-found",
      `No placement was found in ${search.explored} boxes, and none excluded: allow more boxes, or widen regions and limits.`,
      swing,
      { boxes: search.explored },
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
  const widest = searchPlacement(loose, { ...goal, gap: 1e-4, seek: "most swing", swing: 0 })
  const most = widest.best?.found.swing ?? 0
  if (most < swing) {
    const mostSwing = Math.min(swing, Math.max(0, -widest.bound))
    return refuse(
      "swing-out-of-reach",
      `No placement in the regions swings more than ${deg(mostSwing)}, wanted are ${deg(swing)}.`,
      swing - most,
      { swing, mostSwing },
      { swing: most },
    )
  }
  const offRange = (low: number) => Math.abs(low - Math.min(p.lowTo, Math.max(p.lowFrom, low)))
  const turned = searchPlacement(any, { ...goal, seek: "least force", swing })
  if (turned.best) {
    const { low } = turned.best.found
    return refuse(
      "limits-exclude-all",
      `No placement has the low end of its swing between ${deg(p.lowFrom)} and ${deg(p.lowTo)}; with every other limit kept, one has it at ${deg(low)}.`,
      offRange(low),
      { from: p.lowFrom, to: p.lowTo },
      { lowAngle: low },
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
      `The regions allow a swing of ${deg(most)}, but none of ${deg(swing)} with its low end between ${deg(p.lowFrom)} and ${deg(p.lowTo)}; one has it at ${deg(low)}.`,
      offRange(low),
      { from: p.lowFrom, to: p.lowTo, swing },
      { lowAngle: low },
    )
  }
  const [u, v] = [without.distance + without.radius, Math.abs(without.distance - without.radius)]
  const lever = Math.min(leverArm(u, v, p.retracted), leverArm(u, v, p.extended))
  const sine = Math.min(1, lever / without.radius)
  const [levers, angles, excess] = [p.leastLever - lever, leastTransmission - Math.asin(sine), without.swing - p.mostSwing]
  const tooLong = leverArm(u, v, Math.min(p.extended, Math.max(p.retracted, Math.sqrt(u * v)))) - p.mostLever
  return refuse(
    "limits-exclude-all",
    `Lever-arm, transmission-angle or swing limits exclude every placement; without them one has a least lever arm of ${mm(lever)}, a least transmission angle of ${deg(Math.asin(sine))} and ${deg(without.swing)} of swing.`,
    [levers, angles, excess, tooLong].find((short) => short > 0) ?? 0,
    { leastLever: p.leastLever, leastTransmission },
    { leastLever: lever, leastTransmission: Math.asin(sine), swing: without.swing },
  )
}
