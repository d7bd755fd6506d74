// The kernel: SI numbers in, a placement or a refusal out.

import type { Certified } from "../../../numeric/index.js"
import { type NoSolution, refuse } from "../../../solver/index.js"
import { wrapAngle } from "../geometry.js"
import { buildOf, type LeastSwing, leastLevers, leastSwing } from "./build.js"
import type { WorstLoad } from "./envelope.js"
import { angleAt, drawnPeak, worstPeak } from "./force.js"
import { frontOf, pivotsOf, problemOf } from "./front.js"
import { lowAngleOf } from "./local.js"
import { leverArm, type Placement, type PlaceProblem, swingBetween } from "./model.js"
import { placementRefusal } from "./refusal.js"
import { searchPlacement } from "./search.js"
import type { PlaceActuator, PlaceActuatorRefusal, Si } from "./types.js"

/** The loads that are worst at the peaks, for the working. */
export interface PlaceTrace {
  readonly drawn: WorstLoad
  readonly worst: WorstLoad
  /** Turn of the arm in the worst build by pivots off across their lines, rad. */
  readonly turned: number
  /** The corner of the tolerances where the smallest swing was worked out. */
  readonly tight: LeastSwing
}

/** The minimum peak force; where a rating lies between what was proved and what was found, the search goes on for one within it. */
function leastForce(problem: PlaceProblem, { swing, gapLimit, maxBoxes, ratedForce }: Si): Certified<Placement> {
  const goal = { objective: "min-force", swing, force: Number.POSITIVE_INFINITY, gap: gapLimit, budget: maxBoxes } as const
  const first = searchPlacement(problem, goal)
  if (first.best === null || first.best.value <= ratedForce || first.bound > ratedForce) return first
  const further = searchPlacement(problem, { ...goal, gap: 1e-9, budget: 8 * maxBoxes, enough: ratedForce }, first.best.found)
  const best = further.best ?? first.best
  const bound = Math.min(Math.max(first.bound, further.bound), best.value)
  return { best, bound, explored: first.explored + further.explored, isClosed: bound >= best.value * (1 - gapLimit) }
}

/** Transmission angle of a motion at a length. */
const transmissionAt = (distance: number, radius: number, length: number) =>
  Math.atan2(leverArm(distance + radius, distance - radius, length) * length, Math.abs((radius ** 2 + length ** 2 - distance ** 2) / 2))

export function kernel(si: Si, trace?: Partial<PlaceTrace>): PlaceActuator | NoSolution<PlaceActuatorRefusal> {
  const problem = problemOf(si)
  const { retractedLength, stroke, ratedForce, gapLimit, maxBoxes, hinge } = si
  const extended = retractedLength + stroke
  const least = leastForce(problem, si)
  if (least.best === null) return placementRefusal(problem, si, least)
  if (least.best.value > ratedForce) {
    const at = { peakForce: least.best.value, forceBound: least.bound }
    const rating = { "given.ratedForce": ratedForce }
    return least.bound > ratedForce
      ? refuse(
          "insufficient-force",
          "The best placement found needs {peakForce force}, {shortBy force} above the actuator's rating of {given.ratedForce force}; none of the allowed placements needs less than {forceBound force}.",
          at.peakForce - ratedForce,
          at,
          { ratedForce: at.peakForce },
          rating,
        )
      : refuse(
          "undecided",
          "The best placement found needs {peakForce force}, {shortBy force} above the actuator's rating of {given.ratedForce force}; whether another is within it is still open, as none is proved to need more than {forceBound force}. Allow more boxes.",
          at.peakForce - ratedForce,
          at,
          { ratedForce: at.peakForce },
          rating,
        )
  }
  const seeksForce = si.objective === "min-force"
  const widest = seeksForce
    ? null
    : searchPlacement(
        problem,
        { objective: "max-swing", swing: si.swing, force: ratedForce, gap: gapLimit, budget: maxBoxes },
        least.best.found,
      )
  const search = widest ?? least
  const widestFound = widest?.best?.found
  // many placements may swing as far: of those, the one with the minimum force
  const eased = widestFound
    ? searchPlacement(
        problem,
        { objective: "min-force", swing: widestFound.swing, force: ratedForce, gap: gapLimit, budget: maxBoxes },
        widestFound,
      )
    : null
  const found = (eased ?? search).best?.found ?? least.best.found
  const { front, explored } = frontOf(si, problem, least.best.found)
  const { base, pin } = pivotsOf(si, found)
  const [distance, radius] = [Math.hypot(base.x - hinge.x, base.y - hinge.y), Math.hypot(pin.x, pin.y)]
  const [u, v] = [distance + radius, Math.abs(distance - radius)]
  // as the pivots give it, in the turn that was asked for
  const stands = Math.atan2(base.y - hinge.y, base.x - hinge.x) - Math.atan2(pin.y, pin.x)
  const placement: Placement = { ...found, distance, radius, apart: found.apart + wrapAngle(stands - found.apart) }
  const swing = swingBetween(u, v, retractedLength, extended)
  const drawn = drawnPeak(problem, placement)
  const { peak: worst } = worstPeak(problem, placement)
  const build = buildOf(problem, distance, radius)
  const levers = leastLevers(build)
  const tight = leastSwing(build)
  const leastSwung = tight.swing
  if (trace)
    Object.assign(trace, {
      drawn: problem.loads.worst(drawn.angle),
      worst: problem.loads.worst(worst.angle),
      turned: worst.angle - angleAt(placement, worst.distance, worst.radius, worst.length),
      tight,
    } satisfies PlaceTrace)
  const low = lowAngleOf(problem, placement)
  const forceBound = seeksForce ? Math.min(search.bound, worst.force) : null
  const swingBound = seeksForce ? null : Math.max(-search.bound, leastSwung)
  const achieved = forceBound === null ? (swingBound as number) / leastSwung - 1 : worst.force === 0 ? 0 : 1 - forceBound / worst.force
  return {
    fixedPivot: base,
    movingPivot: { radius, angle: Math.atan2(pin.y, pin.x) },
    movingPivotX: pin.x,
    movingPivotY: pin.y,
    raisedBy: found.branch === 1 ? "extending" : "retracting",
    fixedPivotDistance: distance,
    lowAngle: low,
    highAngle: low + swing,
    swing,
    peakForce: drawn.force,
    peakForceExtension: drawn.length - retractedLength,
    peakForceAngle: drawn.angle,
    minLever: Math.min(leverArm(u, v, retractedLength), leverArm(u, v, extended)),
    minTransmissionAngle: Math.min(transmissionAt(distance, radius, retractedLength), transmissionAt(distance, radius, extended)),
    deadPointMargin: Math.min(retractedLength - v, u - extended),
    worstBuild: {
      peakForce: worst.force,
      fixedPivotDistance: worst.distance,
      movingPivotRadius: worst.radius,
      length: worst.length,
      angle: worst.angle,
      swing: leastSwung,
      minLever: levers.lever,
      minTransmissionAngle: Math.asin(Math.min(1, levers.sine)),
      deadPointMargin: Math.min(retractedLength - v, u - extended) - 2 * si.pivotTolerance - si.lengthTolerance,
    },
    safetyFactor: worst.force === 0 ? null : ratedForce / worst.force,
    forceBound,
    swingBound,
    gap: achieved,
    certified: search.isClosed,
    iterations: least.explored + (widest?.explored ?? 0) + (eased?.explored ?? 0) + explored,
    residual: forceBound === null ? (swingBound as number) - leastSwung : worst.force - forceBound,
    front,
  }
}
