// The kernel: SI numbers in, values or a refusal out.

import { type NoSolution, refuse, type SiOf } from "../../../solver/index.js"
import { type HingeGeometry, hingeAngleAt, hingeLengthRange } from "../geometry.js"
import { type HingeLoads, type HingeStatics, hingeStaticsAt, standardGravity, weightFactors } from "../load.js"
import { peaksOver } from "./peaks.js"
import type { HingeActuator, HingeActuatorInput, HingeActuatorRefusal, HingeTrace, Pose } from "./types.js"

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
  bearingLoad: (2 * si.sideForce * si.sideForceRadius) / si.bearingSpan,
})

/** Loads at their worst: weight as a step lands and as the body drops, each with a gust from either side. */
function casesOf(si: SiOf<HingeActuatorInput>, rest: HingeLoads): HingeLoads[] {
  const { loadFactor, gustForce, gustRadius } = si
  const gusts = gustForce > 0 ? [gustForce, -gustForce] : [0]
  return weightFactors(loadFactor).flatMap((factor) =>
    gusts.map((force) => (factor === 1 && force === 0 ? rest : { ...rest, loadFactor: factor, gust: { force, radius: gustRadius } })),
  )
}

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

export function kernel(si: SiOf<HingeActuatorInput>, trace?: Partial<HingeTrace>): HingeActuator | NoSolution<HingeActuatorRefusal> {
  const { retractedLength, stroke, pinFriction, endPinDiameter, axisOffset, holdingForce, movingPivot } = si
  const g = geometryOf(si)
  const branch = branchOf(si.assembly)
  const blocked = strokeRefusal(g, retractedLength, stroke)
  if (blocked) return blocked
  const loads = loadsOf(si)
  const posed = (extension: number): Pose => {
    // inside the free range the triangle always closes
    const angle = hingeAngleAt(g, retractedLength + extension, branch) as number
    return { extension, angle, at: hingeStaticsAt(g, loads, angle) }
  }
  const samples: Pose[] = []
  for (let i = 0; i < POSES; i++) samples.push(posed((stroke * i) / (POSES - 1)))
  const [start, end] = [samples[0] as Pose, samples[POSES - 1] as Pose]
  // the end pins push along their own line, longer than the rod where its axis misses the pivot
  const lockOf = ({ at: { length, lever } }: Pose) =>
    (loads.frictionRadius * (1 + 1e-6) * Math.hypot(length, axisOffset)) / length - Math.abs(lever)
  const locked = samples.find((pose) => lockOf(pose) > 0)
  if (locked)
    return refuse(
      "jammed",
      "At an extension of {extension length} the lever arm of {arm length} lies within the friction circle of the hinge pin, {frictionRadius length}: no force moves the arm.",
      lockOf(locked),
      { extension: locked.extension, angle: locked.angle, lever: locked.at.lever, frictionRadius: loads.frictionRadius },
      {},
      { arm: Math.abs(locked.at.lever) },
    )
  const middlePose = posed(si.extension ?? stroke / 2)
  const here = middlePose.at
  const cases = casesOf(si, loads)
  const peaks = peaksOver(g, cases, (worst) =>
    worst === loads ? samples : samples.map(({ angle }) => ({ angle, at: hingeStaticsAt(g, worst, angle) })),
  )
  const hold = peaks.force
  const [raising, lowering] = branch === 1 ? [peaks.extendForce, peaks.retractForce] : [peaks.retractForce, peaks.extendForce]
  const peak = raising.size >= lowering.size ? raising : lowering
  if (trace) Object.assign(trace, { raising, lowering, hold } satisfies HingeTrace)
  const extensionOf = ({ length }: { readonly length: number }) => Math.min(stroke, Math.max(0, length - retractedLength))
  const requiredHoldingForce = hold.size
  const { shortest, longest } = hingeLengthRange(g)
  const distance = Math.hypot(g.fixedPivot.x - g.hinge.x, g.fixedPivot.y - g.hinge.y)
  const transmissionAt = ({ length, lever }: HingeStatics) => {
    const cos = (distance ** 2 + movingPivot.radius ** 2 - length ** 2 - axisOffset ** 2) / (2 * distance)
    return Math.atan2(Math.abs(lever) * length, Math.abs(movingPivot.radius ** 2 - distance * cos))
  }
  let [across, along] = [0, 0]
  for (const w of si.masses) {
    across += w.mass * w.radius * Math.cos(w.angle)
    along += w.mass * w.radius * Math.sin(w.angle)
  }
  const bearingLoad = Math.hypot(here.reaction.x, here.reaction.y, loads.bearingLoad ?? 0)
  const middle = (start.angle + (hingeAngleAt(g, retractedLength, branch === 1 ? -1 : 1) as number)) / 2
  return {
    angle: middlePose.angle,
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
    frictionMoment: loads.frictionRadius * bearingLoad,
    bearingLoad,
    sideLoad:
      (Math.max(Math.abs(here.extendForce), Math.abs(here.retractForce)) * (axisOffset + pinFriction * endPinDiameter)) / here.length,
    otherAssemblyAngle: 2 * middle - middlePose.angle,
    retractedAngle: start.angle,
    extendedAngle: end.angle,
    swing: Math.abs(end.angle - start.angle),
    peakForce: peak.size,
    peakForceExtension: extensionOf(peak),
    peakForceAngle: peak.angle,
    peakRaisingForce: raising.size,
    peakRaisingExtension: extensionOf(raising),
    peakLoweringForce: lowering.size,
    peakLoweringExtension: extensionOf(lowering),
    requiredHoldingForce,
    requiredHoldingExtension: extensionOf(hold),
    holdingSafetyFactor: holdingForce === null || requiredHoldingForce === 0 ? null : holdingForce / requiredHoldingForce,
    holdsUnpowered: holdingForce === null ? null : holdingForce >= requiredHoldingForce,
    minTransmissionAngle: Math.min(transmissionAt(start.at), transmissionAt(end.at)),
    minLength: shortest,
    maxLength: longest,
    minLengthAngle: middle,
    maxLengthAngle: middle + branch * Math.PI,
    deadPointMargin: Math.min(retractedLength - shortest, longest - retractedLength - stroke),
    poses: samples.map(({ extension, angle, at }) => ({
      extension,
      angle,
      lever: at.lever,
      force: at.force,
      extendForce: at.extendForce,
      retractForce: at.retractForce,
    })),
  }
}
