// Handling, pressure angle, radius of curvature and efforts of a cam.
import { type NoSolution, refuse } from "../../solver/index.js"
import { standardGravity } from "../hinge/load.js"
import { riseAt } from "./laws.js"
import type { CamDrive, CamExtremes, Si } from "./types.js"

/** Places of the rise looked at for extremes. */
const PLACES = 721

/** Shape of the cam at a turn: rise, lever arm, its slope, pressure angle and radius of the roller centre's path. */
export function shapeAt(si: Si, angle: number) {
  const { s, v, a } = riseAt(si.law, angle / si.riseAngle)
  const displacement = si.lift * s
  const lever = (si.lift * v) / si.riseAngle
  const leverSlope = (si.lift * a) / si.riseAngle ** 2
  // roller centre in the cam's own turning axes: offset across the slide, height along it
  const height = Math.sqrt((si.primeRadius - si.offset) * (si.primeRadius + si.offset)) + displacement
  const pressureAngle = Math.atan2(lever - si.offset, height)
  // speed of the roller centre against the cam, and how fast it bends
  const [along, across] = [lever - si.offset, height]
  const bend = across ** 2 + along ** 2 + along * lever - across * leverSlope
  const radius = Math.hypot(along, across) ** 3 / bend
  return { displacement, lever, leverSlope, height, pressureAngle, radius }
}

/** How many times the side force weighs in the friction of a guide that the roller overhangs. */
export const guideFactor = (si: Si): number => (si.guideFriction * (2 * si.overhang + si.guideLength)) / si.guideLength

/** Force towards the cam along the slide, upright, with the follower's own weight and inertia. */
function followerForce(si: Si, displacement: number, leverSlope: number): number {
  const acceleration = leverSlope * si.camSpeed ** 2
  return si.load + si.preload + si.springRate * displacement + si.followerMass * (standardGravity + acceleration)
}

function extremesOf(si: Si): CamExtremes & { readonly jam: number; readonly jamAngle: number } {
  const k = guideFactor(si)
  let [maxPressureAngle, minRadius, maxSpeed, maxAcceleration, maxEffort] = [0, Number.MAX_VALUE, 0, 0, 0]
  let [minContact, jam, jamAngle] = [Number.MAX_VALUE, Number.NEGATIVE_INFINITY, 0]
  for (let i = 0; i < PLACES; i++) {
    const angle = (si.riseAngle * i) / (PLACES - 1)
    const { displacement, lever, leverSlope, pressureAngle, radius } = shapeAt(si, angle)
    const force = followerForce(si, displacement, leverSlope)
    const lost = k * Math.tan(Math.abs(pressureAngle))
    maxPressureAngle = Math.max(maxPressureAngle, Math.abs(pressureAngle))
    if (radius > 0) minRadius = Math.min(minRadius, radius)
    maxSpeed = Math.max(maxSpeed, lever * Math.abs(si.camSpeed))
    maxAcceleration = Math.max(maxAcceleration, Math.abs(leverSlope) * si.camSpeed ** 2)
    minContact = Math.min(minContact, force)
    if (lost > jam) [jam, jamAngle] = [lost, angle]
    if (lost < 1) maxEffort = Math.max(maxEffort, Math.abs((force * lever) / (1 - lost)))
  }
  return { maxPressureAngle, minRadius, maxSpeed, maxAcceleration, maxEffort, minContact, jam, jamAngle }
}

export type CamRefusal = "undercut" | "jammed"

export function solve(si: Si): CamDrive | NoSolution<CamRefusal> {
  const { jam, jamAngle, ...rise } = extremesOf(si)
  if (si.rollerRadius >= rise.minRadius)
    return refuse(
      "undercut",
      "The roller's centre must round a bend of {minRadius length}, and the roller is {shortBy length} too large for it: the cam would be cut away there. Take a smaller roller, a larger prime radius, a smaller lift or a longer rise.",
      // a roller that just fits comes to a point, which is no cam either
      si.rollerRadius - rise.minRadius * (1 - POINTED),
      {},
      { rollerRadius: rise.minRadius * (1 - POINTED) },
      { minRadius: rise.minRadius },
    )
  if (jam >= 1)
    return refuse(
      "jammed",
      "At {camAngle angle °} of the cam the guide's friction takes {taken ratio %} of the push: the follower jams. Lengthen the guide, shorten the overhang, make it slide more easily, or flatten the rise.",
      jam - 1,
      { camAngle: jamAngle },
      { guideFriction: (si.guideFriction / jam) * (1 - POINTED) },
      { taken: jam },
    )
  const { displacement, lever, leverSlope, pressureAngle } = shapeAt(si, si.camAngle)
  const force = followerForce(si, displacement, leverSlope)
  const lost = guideFactor(si) * Math.tan(Math.abs(pressureAngle))
  const push = force / (1 - lost)
  return {
    transmits: "push-only",
    displacement,
    lever,
    leverSlope,
    speed: lever * si.camSpeed,
    acceleration: leverSlope * si.camSpeed ** 2,
    pressureAngle,
    followerForce: force,
    contactForce: push / Math.cos(pressureAngle),
    sideForce: push * Math.tan(pressureAngle),
    effort: force * lever,
    risingEffort: push * lever,
    returningEffort: (force * lever) / (1 + lost),
    inertia: si.followerMass * lever ** 2,
    inertiaSlope: 2 * si.followerMass * lever * leverSlope,
    rise,
  }
}

/** Share by which a value named as nearest stays clear of the limit. */
const POINTED = 1e-3
