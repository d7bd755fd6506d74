import type { SiOf } from "../../../solver/index.js"
import type { Point } from "../geometry.js"
import { standardGravity } from "../load.js"
import type { Placement, PlaceProblem } from "./model.js"
import { searchPlacement } from "./search.js"
import type { FrontPoint, PlaceActuatorInput } from "./types.js"

type Si = SiOf<PlaceActuatorInput>

/** The search's problem, the hinge moved to the origin. */
export function problemOf(si: Si): PlaceProblem {
  const { hinge, baseRegion: b, lean, retracted, stroke } = si
  let [along, across] = [0, 0]
  for (const w of si.weights) {
    along += w.mass * w.radius * Math.cos(w.angle)
    across += w.mass * w.radius * Math.sin(w.angle)
  }
  return {
    retracted,
    extended: retracted + stroke,
    amplitude: standardGravity * Math.hypot(along, across),
    phase: Math.atan2(across, along) + lean,
    leanEitherWay: si.leanEitherWay,
    baseRegion: { left: b.left - hinge.x, right: b.right - hinge.x, bottom: b.bottom - hinge.y, top: b.top - hinge.y },
    pinRegion: si.pinRegion,
    lowFrom: si.lowAngle.from,
    lowTo: si.lowAngle.to,
    mostSwing: si.mostSwing ?? Number.POSITIVE_INFINITY,
    leastLever: si.leastLever,
    mostLever: si.mostLever ?? Number.POSITIVE_INFINITY,
    leastSine: Math.sin(si.leastTransmission),
    // at a dead point itself no force is enough
    clearance: Math.max(si.clearance, 1e-6 * (retracted + stroke)),
    branches: si.raisedBy === "either" ? [1, -1] : si.raisedBy === "extending" ? [1] : [-1],
  }
}

const clampTo = (low: number, high: number, x: number) => Math.min(high, Math.max(low, x))

/** Anchors of a placement, put back inside the regions where the last rounding left them a hair outside. */
export function anchorsOf(si: Si, found: Placement): { readonly base: Point; readonly pin: Point } {
  const { hinge, baseRegion: b, pinRegion: r } = si
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

/** Least peak force for rising swings between the wanted one and the most the rating allows. */
export function frontOf(si: Si, problem: PlaceProblem, best: Placement): { readonly front: FrontPoint[]; readonly explored: number } {
  const { gap, boxes, forceRating, frontPoints, swing } = si
  if (frontPoints === 0) return { front: [], explored: 0 }
  const widest = searchPlacement(problem, { seek: "most swing", swing, force: forceRating, gap, budget: boxes }, best)
  let explored = widest.explored
  let known = widest.best?.found ?? best
  const most = known.swing
  const front: FrontPoint[] = []
  // from the widest swing down: each answer is allowed at the next, smaller swing too
  for (let i = frontPoints - 1; i >= 0; i--) {
    const leastSwing = frontPoints === 1 ? swing : swing + ((most - swing) * i) / (frontPoints - 1)
    const start = known.swing >= leastSwing ? known : null
    const search = searchPlacement(problem, { seek: "least force", swing: leastSwing, force: forceRating, gap, budget: boxes }, start)
    explored += search.explored
    if (search.best === null) continue
    known = search.best.found
    const { base, pin } = anchorsOf(si, known)
    front.unshift({
      swing: known.swing,
      peakForce: search.best.value,
      leastSwing,
      forceBound: search.bound,
      baseX: base.x,
      baseY: base.y,
      pinX: pin.x,
      pinY: pin.y,
    })
  }
  // a wider swing for less force leaves the narrower one out
  const kept = front.filter(
    (a) =>
      !front.some((b) => b !== a && b.swing >= a.swing && b.peakForce <= a.peakForce && (b.swing > a.swing || b.peakForce < a.peakForce)),
  )
  return { front: kept, explored }
}
