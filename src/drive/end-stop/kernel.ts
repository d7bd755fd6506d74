// What happens between meeting a stop and standing still, the drive still pushing.

import { isNoSolution, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import type { EndStop, EndStopInput, EndStopRefusal } from "./types.js"

type Si = SiOf<EndStopInput>
type Stopped = Pick<EndStop, "stoppingLength" | "stoppingTime" | "peakForce" | "reboundSpeed">

/** Mass, speed and push as they are felt at the stop. */
const feltOf = ({ inertia, speed, drivingTorque, stopRadius }: Si) => ({
  mass: inertia / stopRadius ** 2,
  speed: speed * stopRadius,
  push: drivingTorque / stopRadius,
})

function spring(si: Si, stop: Extract<Si["stop"], { type: "spring" }>): Stopped | NoSolution<EndStopRefusal> {
  const { mass, speed, push } = feltOf(si)
  const { stiffness, travel, returnedShare } = stop
  // ½·m·v² + F·x = ½·k·x²
  const stoppingLength = (push + Math.hypot(push, speed * Math.sqrt(stiffness * mass))) / stiffness
  if (travel !== null && !(stoppingLength <= travel)) {
    const spare = stiffness * travel - 2 * push
    const slower: Record<string, number> = spare > 0 ? { speed: (0.999 * Math.sqrt((travel * spare) / mass)) / si.stopRadius } : {}
    return refuse(
      "bottoms-out",
      "The stop is solid {shortBy length} too soon: it would have to yield {stoppingLength length}, and can yield {given.stop.travel length}. Beyond that the blow is as hard as metal on metal. Meet it more slowly, make it stiffer or deeper, or switch the drive off before it.",
      stoppingLength - travel,
      { stoppingLength },
      slower,
      { "given.stop.travel": travel },
    )
  }
  const rate = Math.sqrt(stiffness / mass)
  const back = (returnedShare * stiffness * stoppingLength ** 2) / 2 - push * stoppingLength
  return {
    stoppingLength,
    // a quarter of a swing, and what the push adds
    stoppingTime: (Math.PI / 2 + Math.atan((push * rate) / stiffness / speed)) / rate,
    peakForce: stiffness * stoppingLength,
    reboundSpeed: Math.sqrt((2 * Math.max(0, back)) / si.inertia),
  }
}

function absorber(si: Si, { stroke, absorberEfficiency }: Extract<Si["stop"], { type: "absorber" }>): Stopped {
  const { mass, speed, push } = feltOf(si)
  const mean = (mass * speed ** 2) / 2 / stroke + push
  return { stoppingLength: stroke, stoppingTime: (2 * stroke) / speed, peakForce: mean / absorberEfficiency, reboundSpeed: 0 }
}

export function kernel(si: Si): EndStop | NoSolution<EndStopRefusal> {
  const stopped = si.stop.type === "spring" ? spring(si, si.stop) : absorber(si, si.stop)
  if (isNoSolution(stopped)) return stopped
  const { stoppingLength, peakForce } = stopped
  const { mass, push } = feltOf(si)
  const kineticEnergy = (si.inertia * si.speed ** 2) / 2
  const drivingWork = push * stoppingLength
  const energy = kineticEnergy + drivingWork
  const peakDeceleration = (peakForce * si.stopRadius - si.drivingTorque) / si.inertia
  return {
    transmits: "push-only",
    kineticEnergy,
    drivingWork,
    energy,
    stoppingLength,
    stoppingAngle: stoppingLength / si.stopRadius,
    stoppingTime: stopped.stoppingTime,
    peakForce,
    meanForce: energy / stoppingLength,
    restForce: push,
    peakDeceleration,
    reboundSpeed: stopped.reboundSpeed,
    effectiveMass: mass,
    hingeForce: si.mass === null ? null : Math.abs(peakForce - si.mass * si.centreRadius * peakDeceleration),
    meanHeat: energy * si.strikeRate,
    utilisation: si.ratedForce === null ? null : peakForce / si.ratedForce,
  }
}
