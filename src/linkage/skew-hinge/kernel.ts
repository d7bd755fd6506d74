// Swing, loads and friction about an axis in space.
import { drivenMoment } from "../driven-moment.js"
import { standardGravity } from "../hinge/load.js"
import { type BodyVector, cross, dot, plus, scaled, size, turnedAbout } from "../space.js"
import type { Si, SkewHinge, SkewHingePose } from "./types.js"

/** Poses listed, both ends included. */
const POSES = 61

/** Height that is rounding, m: straight to the right is a half turn, not minus one. */
const LEVEL = 1e-12

/** Unit vector of the axis. */
export const axisOf = (si: Si): BodyVector => scaled(si.axis, 1 / size(si.axis))

/** Where a point of the part is at a swing. */
export function placeAt(si: Si, point: BodyVector, swing: number): BodyVector {
  return plus(si.hinge, turnedAbout(axisOf(si), swing, plus(point, si.hinge, -1)))
}

/** Straight up, in body axes: a trunk that leans forward has its chest turned to the ground. */
export function upright({ forwardLean, leftLean }: Pick<Si, "forwardLean" | "leftLean">): BodyVector {
  return {
    forward: -Math.sin(forwardLean),
    left: -Math.cos(forwardLean) * Math.sin(leftLean),
    up: Math.cos(forwardLean) * Math.cos(leftLean),
  }
}

/** Sum of mass times place from the hinge, before any swing. */
function firstMoment(si: Si): BodyVector {
  return si.masses.reduce<BodyVector>((sum, m) => plus(sum, plus(m, si.hinge, -1), m.mass), { forward: 0, left: 0, up: 0 })
}

/** Largest size of a cosine wave between two angles: at an end, or at a crest on the way. */
function crestBetween(amplitude: number, crest: number, from: number, to: number): number {
  const [low, high] = [Math.min(from, to), Math.max(from, to)]
  const ends = Math.max(Math.abs(Math.cos(low - crest)), Math.abs(Math.cos(high - crest)))
  return amplitude * (Math.ceil((low - crest) / Math.PI) <= (high - crest) / Math.PI ? 1 : ends)
}

export function solve(si: Si): SkewHinge {
  const axis = axisOf(si)
  const vertical = upright(si)
  const mass = si.masses.reduce((sum, m) => sum + m.mass, 0)
  const rest = firstMoment(si)
  const momentAt = (swing: number) => standardGravity * dot(vertical, cross(axis, turnedAbout(axis, swing, rest)))
  const here = turnedAbout(axis, si.swing, rest)
  const effort = momentAt(si.swing)
  // what the frame gives: the weight, and the moment of the weights about the hinge point
  const reaction = scaled(vertical, standardGravity * mass)
  const moment = scaled(cross(here, vertical), standardGravity)
  const across = plus(reaction, axis, -dot(reaction, axis))
  const couple = scaled(cross(moment, axis), 1 / si.bearingSpan)
  const bearingLoad = size(plus(scaled(across, 0.5), couple)) + size(plus(scaled(across, 0.5), couple, -1))
  const thrust = Math.abs(dot(reaction, axis))
  const frictionRadius = (si.pinFriction * si.pinDiameter) / 2
  const [turningEffort, returningEffort] = [1, -1].map((sense) =>
    drivenMoment(effort, sense, frictionRadius, bearingLoad + thrust, si.driveRadius),
  ) as [number, number]
  const tip = placeAt(si, si.tip, si.swing)
  const toTip = plus(tip, si.hinge, -1)
  const level = standardGravity * dot(vertical, cross(axis, rest))
  const quarter = -standardGravity * (dot(vertical, rest) - dot(vertical, axis) * dot(axis, rest))
  return {
    tipForward: tip.forward,
    tipLeft: tip.left,
    tipUp: tip.up,
    swingRadius: size(cross(axis, toTip)),
    effort,
    turningEffort,
    returningEffort,
    maxEffort: crestBetween(Math.hypot(level, quarter), Math.atan2(quarter, level), si.swingFrom, si.swingTo),
    bearingLoad,
    thrust,
    inertia: si.masses.reduce((sum, m) => sum + m.mass * size(cross(axis, plus(m, si.hinge, -1))) ** 2, 0),
    reactionForce: size(reaction),
    reactionMoment: size(moment),
    frontReach: Math.hypot(toTip.left, toTip.up),
    frontAngle: Math.atan2(Math.abs(toTip.up) < LEVEL ? 0 : toTip.up, toTip.left),
    tipAhead: toTip.forward,
    reaction,
    moment,
    perAcceleration: cross(axis, here),
    path: Array.from({ length: POSES }, (_, k): SkewHingePose => {
      const swing = si.swingFrom + ((si.swingTo - si.swingFrom) * k) / (POSES - 1)
      return { swing, ...placeAt(si, si.tip, swing), effort: momentAt(swing) }
    }),
  }
}
