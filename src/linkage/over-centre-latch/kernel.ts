// Spring, moments, snap-over point, forces and energies of an over-centre latch.

import { brent, integrate } from "../../numeric/index.js"
import { type NoSolution, refuse, tried } from "../../solver/index.js"
import { springEnergy, springTension } from "../hinge/load.js"
import { latchFaults } from "./check.js"
import { latchFields } from "./fields.js"
import type { LatchPose, LatchSide, OverCentreLatch, OverCentreLatchRefusal, Si } from "./types.js"

/** Places between the stops that are listed. */
const POSES = 121

const spring = (si: Si) => ({ stiffness: si.springRate, freeLength: si.freeLength, preload: si.preload, pullsOnly: true })

/** Spring at an angle of the pin past the dead centre, the pin then being farthest from the fixed end. */
export function springAt(si: Si, angle: number): { length: number; force: number; arm: number } {
  const { fixedPivotDistance: d, movingPivotRadius: r } = si
  const length = Math.sqrt((d - r) ** 2 + 4 * d * r * Math.cos(angle / 2) ** 2)
  return { length, force: springTension(spring(si), length), arm: (d * r * Math.sin(angle)) / length }
}

/** Moment of spring and load on the lever, counter-clockwise: away from the dead centre on either side. */
export function momentAt(si: Si, angle: number): number {
  const { force, arm } = springAt(si, angle)
  return force * arm + si.loadMoment
}

/** Moment by which the pivot's friction holds the lever: the pivot carries the spring's pull. */
const frictionAt = (si: Si, angle: number) => ((si.pinFriction * si.pinDiameter) / 2) * springAt(si, angle).force

/** Angle between two where a moment that rises through nothing does so. */
function crossing(moment: (angle: number) => number, low: number, high: number): number | null {
  return moment(low) < 0 && moment(high) > 0 ? (brent(moment, low, high, 1e-15)?.x ?? null) : null
}

function sideOf(si: Si, stop: number, snap: number, band: OverCentreLatch["band"]): LatchSide {
  const sense = Math.sign(stop)
  const holding = sense * momentAt(si, stop)
  const against = (angle: number) => sense * momentAt(si, angle) + frictionAt(si, angle)
  const angles = Array.from({ length: POSES }, (_, k) => stop + ((snap - stop) * k) / (POSES - 1))
  // from where friction can no longer hold it the lever runs to its stop
  const [from, to] = sense > 0 ? [band.high, stop] : [stop, band.low]
  const releasedEnergy = Math.max(0, integrate((angle) => sense * momentAt(si, angle) - frictionAt(si, angle), from, to, 1e-12).value)
  const [low, high] = [Math.min(stop, snap), Math.max(stop, snap)]
  const inertia = si.leverMass * si.leverCentre ** 2
  return {
    angle: stop,
    holdingMoment: holding,
    holdingForce: holding / si.handleRadius,
    releaseForce: against(stop) / si.handleRadius,
    tripForce: Math.max(...angles.map(against)) / si.handleRadius,
    tripWork: integrate(against, low, high, 1e-12).value,
    releasedEnergy,
    strikeSpeed: inertia > 0 ? Math.sqrt((2 * releasedEnergy) / inertia) * si.handleRadius : null,
  }
}

export function solve(si: Si): OverCentreLatch | NoSolution<OverCentreLatchRefusal> {
  return tried(kernel(si), si, latchFields(), kernel, latchFaults)
}

function kernel(si: Si): OverCentreLatch | NoSolution<OverCentreLatchRefusal> {
  const [low, high] = [-si.clockwiseStop, si.counterStop]
  const snap = crossing((angle) => momentAt(si, angle), low, high)
  if (snap === null) {
    // told without friction, which shaking takes away
    const short = Math.max(momentAt(si, low), -momentAt(si, high), NO_MOMENT)
    return refuse(
      "does-not-hold",
      "On one of its stops the lever is pushed back over centre instead of held: {shortBy moment} are missing there. Set that stop farther past the dead centre, take a stronger spring, or lessen the load.",
      short,
      {},
      { loadMoment: Math.sign(si.loadMoment) * Math.max(0, Math.abs(si.loadMoment) - short) * (1 - CLEAR) },
    )
  }
  const rubs = frictionAt(si, snap) > 0
  const band = {
    low: crossing((angle) => momentAt(si, angle) + frictionAt(si, angle), low, snap) ?? (rubs ? low : snap),
    high: crossing((angle) => momentAt(si, angle) - frictionAt(si, angle), snap, high) ?? (rubs ? high : snap),
  }
  const [clockwise, counter] = [sideOf(si, low, snap, band), sideOf(si, high, snap, band)]
  return {
    snapAngle: snap,
    // the spring is longest on the dead centre, which lies between the stops
    maxSpringForce: springAt(si, 0).force,
    storedEnergy: springEnergy(spring(si), springAt(si, snap).length),
    inertia: si.leverMass * si.leverCentre ** 2,
    minHoldingForce: Math.min(clockwise.holdingForce, counter.holdingForce),
    band,
    clockwise,
    counter,
    poses: Array.from({ length: POSES }, (_, k): LatchPose => {
      const angle = low + ((high - low) * k) / (POSES - 1)
      return { angle, springForce: springAt(si, angle).force, moment: momentAt(si, angle) }
    }),
  }
}

/** Moment told as missing where there is just none. */
const NO_MOMENT = 1e-9
/** Share by which a value named as nearest stays clear of the limit. */
const CLEAR = 1e-3
