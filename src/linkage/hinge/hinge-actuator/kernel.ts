// The kernel: SI numbers in, values or a refusal out.

import { goldenMinimum } from "../../../numeric/index.js"
import { type NoSolution, refuse, type SiOf } from "../../../solver/index.js"
import { type HingeGeometry, hingeAngleAt, hingeLengthRange } from "../geometry.js"
import { type HingeLoads, hingeStaticsAt, standardGravity } from "../load.js"
import type { HingeActuator, HingeActuatorInput, HingeActuatorRefusal, Pose } from "./types.js"

/** Poses listed over the stroke. */
const POSES = 33

const branchOf = (turns: "counter-clockwise" | "clockwise"): 1 | -1 => (turns === "clockwise" ? -1 : 1)

/** Geometry of the hinge an input describes. */
function geometryOf(si: SiOf<HingeActuatorInput>): HingeGeometry {
  const { hinge, fixedPivot, movingPivot, axisOffset } = si
  return { hinge, fixedPivot, movingPivot, axisOffset }
}

const loadsOf = (si: SiOf<HingeActuatorInput>): HingeLoads => ({
  masses: si.masses,
  springs: si.springs ?? [],
  frameTilt: si.frameTilt,
  frictionRadius: (si.pinFriction * si.hingePinDiameter) / 2,
})

/** Refuses a stroke that runs into a dead point, with where and by how much; null where it is free. */
function strokeRefusal(g: HingeGeometry, retracted: number, stroke: number): NoSolution<"cannot-close" | "dead-point"> | null {
  const { shortest, longest } = hingeLengthRange(g)
  const extended = retracted + stroke
  // closer than a millionth to a dead point the lever arm is lost in rounding
  const margin = 1e-6 * longest
  const shortBy = Math.max(shortest + margin - retracted, extended - longest + margin)
  if (shortBy <= 0) return null
  const at = { minLength: shortest, maxLength: longest, retractedLength: retracted, extended }
  if (retracted >= longest || extended <= shortest)
    return refuse(
      "cannot-close",
      "The pivots are between {minLength length} and {maxLength length} apart, an actuator of {retractedLength length} to {extended length} fits nowhere: it is {shortBy length} off.",
      shortBy,
      at,
    )
  const end = extended > longest - margin ? "longest" : "shortest"
  const deadPoint = end === "longest" ? longest : shortest
  const extension = Math.min(stroke, Math.max(0, deadPoint - retracted))
  return refuse(
    "dead-point",
    "The stroke runs into the dead point at the {end} length, {deadPoint length}, at an extension of {extension length}: {shortBy length} too far.",
    shortBy,
    { ...at, deadPoint, extension },
    {},
    { end },
  )
}

/** Where `f` is largest over the stroke: every hump of the samples that could hold the peak is climbed by golden section. */
function peakOver(at: (extension: number) => Pose, samples: readonly Pose[], f: (pose: Pose) => number): Pose {
  const values = samples.map(f)
  const top = Math.max(...values)
  let peak = samples[values.indexOf(top)] as Pose
  values.forEach((here, i) => {
    if (here < (values[i - 1] ?? 0) || here < (values[i + 1] ?? 0) || here < 0.9 * top) return
    const low = samples[Math.max(0, i - 1)] as Pose
    const high = samples[Math.min(samples.length - 1, i + 1)] as Pose
    const refined = at(goldenMinimum((extension) => -f(at(extension)), low.extension, high.extension, 1e-7 * high.extension))
    if (f(refined) > f(peak)) peak = refined
  })
  return peak
}

export function kernel(si: SiOf<HingeActuatorInput>): HingeActuator | NoSolution<HingeActuatorRefusal> {
  const { retractedLength, stroke, pinFriction, endPinDiameter, axisOffset, holdingForce, movingPivot } = si
  const g = geometryOf(si)
  const branch = branchOf(si.assembly)
  const blocked = strokeRefusal(g, retractedLength, stroke)
  if (blocked) return blocked
  const loads = loadsOf(si)
  const at = (extension: number): Pose => {
    // inside the free range the triangle always closes
    const angle = hingeAngleAt(g, retractedLength + extension, branch) as number
    return { extension, angle, ...hingeStaticsAt(g, loads, angle) }
  }
  const samples = Array.from({ length: POSES }, (_, i) => at((stroke * i) / (POSES - 1)))
  const [start, end] = [samples[0] as Pose, samples[POSES - 1] as Pose]
  // the end pins push along their own line, longer than the rod where its axis misses the pivot
  const lockOf = ({ length, lever }: Pose) =>
    (loads.frictionRadius * (1 + 1e-6) * Math.hypot(length, axisOffset)) / length - Math.abs(lever)
  const locked = samples.find((pose) => lockOf(pose) > 0)
  if (locked)
    return refuse(
      "jammed",
      "At an extension of {extension length} the lever arm of {arm length} lies within the friction circle of the hinge pin, {frictionRadius length}: no force moves the arm.",
      lockOf(locked),
      { extension: locked.extension, angle: locked.angle, lever: locked.lever, frictionRadius: loads.frictionRadius },
      {},
      { arm: Math.abs(locked.lever) },
    )
  const here = at(si.extension ?? stroke / 2)
  const moving = (pose: Pose) => Math.max(Math.abs(pose.extendForce), Math.abs(pose.retractForce))
  const peak = peakOver(at, samples, moving)
  const hold = peakOver(at, samples, (pose) => Math.abs(pose.force))
  const requiredHoldingForce = Math.abs(hold.force)
  const { shortest, longest } = hingeLengthRange(g)
  const distance = Math.hypot(g.fixedPivot.x - g.hinge.x, g.fixedPivot.y - g.hinge.y)
  const transmissionAt = (pose: Pose) => {
    const cos = (distance ** 2 + movingPivot.radius ** 2 - pose.length ** 2 - axisOffset ** 2) / (2 * distance)
    return Math.atan2(Math.abs(pose.lever) * pose.length, Math.abs(movingPivot.radius ** 2 - distance * cos))
  }
  let [across, along] = [0, 0]
  for (const w of si.masses) {
    across += w.mass * w.radius * Math.cos(w.angle)
    along += w.mass * w.radius * Math.sin(w.angle)
  }
  const middle = (start.angle + (hingeAngleAt(g, retractedLength, branch === 1 ? -1 : 1) as number)) / 2
  return {
    angle: here.angle,
    length: here.length,
    lever: here.lever,
    transmissionAngle: transmissionAt(here),
    gravityMoment: here.gravityMoment,
    springMoment: here.springMoment,
    force: here.force,
    extendForce: here.extendForce,
    retractForce: here.retractForce,
    anyTiltForce: (standardGravity * Math.hypot(across, along) + Math.abs(here.springMoment)) / Math.abs(here.lever),
    reactionX: here.reaction.x,
    reactionY: here.reaction.y,
    reaction: Math.hypot(here.reaction.x, here.reaction.y),
    frictionMoment: loads.frictionRadius * Math.hypot(here.reaction.x, here.reaction.y),
    sideLoad: (moving(here) * (axisOffset + pinFriction * endPinDiameter)) / here.length,
    otherAssemblyAngle: 2 * middle - here.angle,
    retractedAngle: start.angle,
    extendedAngle: end.angle,
    swing: Math.abs(end.angle - start.angle),
    peakForce: moving(peak),
    peakForceExtension: peak.extension,
    peakForceAngle: peak.angle,
    requiredHoldingForce,
    requiredHoldingExtension: hold.extension,
    holdingSafetyFactor: holdingForce === null || requiredHoldingForce === 0 ? null : holdingForce / requiredHoldingForce,
    holdsUnpowered: holdingForce === null ? null : holdingForce >= requiredHoldingForce,
    minTransmissionAngle: Math.min(transmissionAt(start), transmissionAt(end)),
    minLength: shortest,
    maxLength: longest,
    minLengthAngle: middle,
    maxLengthAngle: middle + branch * Math.PI,
    deadPointMargin: Math.min(retractedLength - shortest, longest - retractedLength - stroke),
    poses: samples.map(({ extension, angle, lever, force, extendForce, retractForce }) => ({
      extension,
      angle,
      lever,
      force,
      extendForce,
      retractForce,
    })),
  }
}
