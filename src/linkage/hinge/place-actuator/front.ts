// A problem from its input, pivots from a placement, and the front of swing against force.

import type { SiOf } from "../../../solver/index.js"
import type { Point } from "../geometry.js"
import { weightFactors } from "../load.js"
import { envelopeOf } from "./envelope.js"
import type { Placement, PlaceProblem } from "./model.js"
import { searchPlacement } from "./search.js"
import type { FrontPoint, PlaceActuatorInput } from "./types.js"

type Si = SiOf<PlaceActuatorInput>

/** The search's problem, the hinge moved to the origin. */
export function problemOf(si: Si): PlaceProblem {
  const { hinge, fixedPivotRegion: b, retractedLength, stroke, keepOut } = si
  return {
    retractedLength,
    extendedLength: retractedLength + stroke,
    loads: envelopeOf({
      hinge,
      massSets: si.otherMasses === null ? [si.masses] : [si.masses, si.otherMasses],
      factors: weightFactors(si.loadFactor),
      gustMoment: si.gustForce * si.gustRadius,
      springs: si.springs ?? [],
      frameTilt: si.frameTilt,
      tiltEitherWay: si.tiltEitherWay,
    }),
    fixedPivotRegion: { left: b.left - hinge.x, right: b.right - hinge.x, bottom: b.bottom - hinge.y, top: b.top - hinge.y },
    movingPivotRegion: si.movingPivotRegion,
    lowFrom: si.lowAngle.from,
    lowTo: si.lowAngle.to,
    maxSwing: si.maxSwing ?? Number.POSITIVE_INFINITY,
    minLever: si.minLever,
    maxLever: si.maxLever ?? Number.POSITIVE_INFINITY,
    minTransmissionSine: Math.sin(si.minTransmissionAngle),
    // at a dead point itself no force is enough
    minDeadPointMargin: Math.max(si.minDeadPointMargin, 1e-6 * (retractedLength + stroke)),
    branches: si.raisedBy === "either" ? [1, -1] : si.raisedBy === "extending" ? [1] : [-1],
    pivotError: si.pivotTolerance,
    lengthError: si.lengthTolerance,
    keepOut:
      keepOut === null
        ? null
        : {
            polygons: keepOut.map(({ corners }) => corners.map(({ x, y }) => ({ x: x - hinge.x, y: y - hinge.y }))),
            halfWidth: si.actuatorWidth / 2,
          },
  }
}

const clampTo = (low: number, high: number, x: number) => Math.min(high, Math.max(low, x))

/** Pivots of a placement, put back inside the regions where the last rounding left them a hair outside. */
export function pivotsOf(si: Si, found: Placement): { readonly base: Point; readonly pin: Point } {
  const { hinge, fixedPivotRegion: b, movingPivotRegion: r } = si
  return {
    base: {
      x: clampTo(b.left, b.right, hinge.x + found.distance * Math.cos(found.baseAngle)),
      y: clampTo(b.bottom, b.top, hinge.y + found.distance * Math.sin(found.baseAngle)),
    },
    pin: {
      x: clampTo(r.left, r.right, found.radius * Math.cos(found.pinAngle)),
      y: clampTo(r.bottom, r.top, found.radius * Math.sin(found.pinAngle)),
    },
  }
}

/** Minimum peak force for rising swings between the wanted one and the most the rating allows. */
export function frontOf(si: Si, problem: PlaceProblem, best: Placement): { readonly front: FrontPoint[]; readonly explored: number } {
  const { gapLimit, maxBoxes, ratedForce, frontPoints, swing } = si
  if (frontPoints === 0) return { front: [], explored: 0 }
  const widest = searchPlacement(problem, { objective: "max-swing", swing, force: ratedForce, gap: gapLimit, budget: maxBoxes }, best)
  let explored = widest.explored
  let known = widest.best?.found ?? best
  const most = known.swing
  const front: FrontPoint[] = []
  // from the widest swing down: each answer is allowed at the next, smaller swing too
  for (let i = frontPoints - 1; i >= 0; i--) {
    const minSwing = frontPoints === 1 ? swing : swing + ((most - swing) * i) / (frontPoints - 1)
    const start = known.swing >= minSwing ? known : null
    const search = searchPlacement(
      problem,
      { objective: "min-force", swing: minSwing, force: ratedForce, gap: gapLimit, budget: maxBoxes },
      start,
    )
    explored += search.explored
    if (search.best === null) continue
    known = search.best.found
    const { base, pin } = pivotsOf(si, known)
    front.unshift({
      swing: known.swing,
      peakForce: search.best.value,
      minSwing,
      forceBound: search.bound,
      fixedPivotX: base.x,
      fixedPivotY: base.y,
      movingPivotX: pin.x,
      movingPivotY: pin.y,
    })
  }
  // a wider swing for less force leaves the narrower one out
  const kept = front.filter(
    (a) =>
      !front.some((b) => b !== a && b.swing >= a.swing && b.peakForce <= a.peakForce && (b.swing > a.swing || b.peakForce < a.peakForce)),
  )
  return { front: kept, explored }
}
