// Tensions of a quadrant's cables over its travel, turned and brought back.
import { bandAcross, type NoSolution, refuse, tried } from "../../solver/index.js"
import { gravityMomentAt, standardGravity } from "../hinge/load.js"
import { quadrantFaults } from "./check.js"
import { quadrantFields } from "./fields.js"
import type { CableQuadrant, CableQuadrantRefusal, QuadrantPose, Si } from "./types.js"

const POSES = 61

/** Friction circle of the pivot, m: the cables' pulls and the weight are added as if they all pulled one way. */
const frictionRadius = (si: Si) => (si.pinFriction * si.pinDiameter) / 2
const weightOf = (si: Si) => standardGravity * si.masses.reduce((sum, { mass }) => sum + mass, 0)
const loadAt = (si: Si, angle: number) => gravityMomentAt(si.masses, angle, si.frameTilt) + si.loadMoment

/** Tensions while it turns (sense 1) and comes back (sense −1): of the opening cable, and of what pulls the other way. */
export function tensionsAt(si: Si, angle: number, sense: 1 | -1, pretension = si.pretension): { opening: number; other: number } {
  const { radius: r1, returnedBy: back } = si
  const rub = sense * frictionRadius(si)
  const moment = loadAt(si, angle) + sense * si.opposingMoment + rub * weightOf(si)
  if (back.type === "spring") {
    const other = pretension + back.springRate * back.radius * (angle - si.startAngle)
    return { opening: (moment + other * (back.radius + rub)) / (r1 - rub), other }
  }
  const [k1, k2, r2] = [si.cableStiffness, back.stiffness, back.radius]
  const other = (pretension * r1) / r2
  // the drive held, the quadrant gives by an angle that tightens one cable and eases the other
  const give = (moment + rub * (pretension + other)) / (k1 * r1 * (r1 - rub) + k2 * r2 * (r2 + rub))
  return { opening: pretension + k1 * r1 * give, other: other - k2 * r2 * give }
}

/** Angles at which the load or a tension can be largest or smallest: both ends, and where its slope is zero. */
export function turningAngles(si: Si): number[] {
  const { startAngle, travel, returnedBy: back } = si
  const end = startAngle + travel
  // load = level·cos q − upright·sin q + a constant
  let [level, upright] = [0, 0]
  for (const { mass, radius, angle } of si.masses) {
    level += standardGravity * mass * radius * Math.cos(angle + si.frameTilt)
    upright += standardGravity * mass * radius * Math.sin(angle + si.frameTilt)
  }
  const [size, phase] = [Math.hypot(level, upright), Math.atan2(upright, level)]
  const rub = frictionRadius(si)
  const slopes = back.type === "spring" ? [0, ...[rub, -rub].map((r) => back.springRate * back.radius * (back.radius + r))] : [0]
  const found = [startAngle, end]
  for (const slope of slopes) {
    if (!(slope <= size) || size === 0) continue
    const first = Math.asin(slope / size)
    for (const base of [first, Math.PI - first])
      for (let turn = -3; turn <= 3; turn++) {
        const angle = base - phase + 2 * Math.PI * turn
        if (angle > startAngle && angle < end) found.push(angle)
      }
  }
  return found
}

/** Minimum pretension at which neither pull ever falls to nothing; every tension grows in step with it. */
function requiredPretension(si: Si, angles: readonly number[]): number {
  let needed = 0
  for (const angle of angles)
    for (const sense of [1, -1] as const) {
      const [none, one] = [tensionsAt(si, angle, sense, 0), tensionsAt(si, angle, sense, 1)]
      for (const key of ["opening", "other"] as const) needed = Math.max(needed, -none[key] / (one[key] - none[key]))
    }
  return needed
}

function poseAt(si: Si, angle: number): QuadrantPose {
  const [turning, back] = [tensionsAt(si, angle, 1), tensionsAt(si, angle, -1)]
  const net = (t: { opening: number; other: number }) => t.opening * si.radius - t.other * si.returnedBy.radius
  return {
    angle,
    cableTravel: si.radius * (angle - si.startAngle),
    loadMoment: loadAt(si, angle),
    openingMoment: net(turning),
    returningMoment: net(back),
    openingTension: turning.opening,
    returningTension: back.opening,
    springOpening: turning.other,
    springReturning: back.other,
  }
}

export function solve(si: Si): CableQuadrant | NoSolution<CableQuadrantRefusal> {
  return tried(kernel(si), si, quadrantFields(), kernel, quadrantFaults)
}

function kernel(si: Si): CableQuadrant | NoSolution<CableQuadrantRefusal> {
  const { radius: r1, travel, returnedBy: back } = si
  const rimLeft = back.type === "cable" ? back.rimAngle - back.wrap - travel : null
  const short = Math.max(travel - si.wrap, -(rimLeft ?? 0))
  if (short > 0)
    return refuse(
      "runs-off-rim",
      "A cable runs off the end of its rim {shortBy angle °} before the quadrant has turned by {given.travel angle °}: past that its lever arm falls away. Give the rim more arc, or turn less.",
      short,
      {},
      { travel: travel - short, ...(rimLeft === null || rimLeft >= 0 ? { wrap: travel } : {}) },
      { "given.travel": travel },
    )
  const angles = turningAngles(si)
  const required = requiredPretension(si, angles)
  if (required > si.pretension)
    return refuse(
      "goes-slack",
      "A cable goes slack: {required force} of pretension would keep it taut, {shortBy force} more than there is. A slack cable jumps off its rim and jerks when it comes taut. Tension it more, use a stronger return spring, or take load off.",
      required - si.pretension,
      { required },
      { pretension: 1.001 * required },
    )
  const loads = angles.map((angle) => loadAt(si, angle))
  const all = angles.flatMap((angle) => [tensionsAt(si, angle, 1), tensionsAt(si, angle, -1)])
  const [opening, other] = [all.map((t) => t.opening), all.map((t) => t.other)]
  const loadMoment = bandAcross(loads)
  const rate = back.type === "spring" ? back.springRate : back.stiffness
  const [openingTension, returningTension] = [bandAcross(opening), bandAcross(other)]
  const rotationalStiffness = si.cableStiffness * r1 ** 2 + rate * back.radius ** 2
  return {
    transmits: back.type === "cable" ? "both-ways" : "pull-only",
    cableTravel: r1 * travel,
    returnTravel: back.radius * travel,
    wrapLeft: si.wrap - travel,
    rimLeft,
    inertia: si.masses.reduce((sum, { mass, radius }) => sum + mass * radius ** 2, 0),
    loadMoment,
    openingTension,
    returningTension,
    requiredPretension: required,
    rotationalStiffness,
    tipDeflection:
      si.tipRadius === null ? null : (si.tipRadius * (loadMoment.high - loadMoment.low + 2 * si.opposingMoment)) / rotationalStiffness,
    storedEnergy: openingTension.high ** 2 / (2 * si.cableStiffness) + returningTension.high ** 2 / (2 * rate),
    poses: Array.from({ length: POSES }, (_, k) => poseAt(si, si.startAngle + (travel * k) / (POSES - 1))),
  }
}
