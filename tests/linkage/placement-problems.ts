import fc from "fast-check"
import {
  type HingeGeometry,
  hingeAngleAt,
  hingeLengthRange,
  hingeLeverAt,
  type PlaceActuatorInput,
  placeActuator,
  standardGravity,
} from "../../src/linkage/index.js"
import type { SiOf } from "../../src/solver/index.js"
import { between } from "./uniform.js"

/** A placement problem, plain SI. */
export type Problem = SiOf<PlaceActuatorInput>

/** Anchors and branch of a placement, as a maker would mark them. */
export interface Anchors {
  readonly base: { readonly x: number; readonly y: number }
  readonly pin: { readonly x: number; readonly y: number }
  readonly branch: 1 | -1
}

/** What a placement does, reckoned through the hinge's own kernel; null where it breaks a limit. */
export function judged(p: Problem, { base, pin, branch }: Anchors, poses = 65): { swing: number; force: number; low: number } | null {
  const g: HingeGeometry = {
    hinge: p.hinge,
    fixedPivot: base,
    movingPivot: { radius: Math.hypot(pin.x, pin.y), angle: Math.atan2(pin.y, pin.x) },
    axisOffset: 0,
  }
  const { shortest, longest } = hingeLengthRange(g)
  const extended = p.retractedLength + p.stroke
  if (
    p.retractedLength - shortest < p.minDeadPointMargin ||
    longest - extended < p.minDeadPointMargin ||
    longest <= extended ||
    p.retractedLength <= shortest
  )
    return null
  const angleAt = (length: number) => hingeAngleAt(g, length, branch) as number
  const [start, end] = [angleAt(p.retractedLength), angleAt(extended)]
  const [bottom, top] = [Math.min(start, end), Math.max(start, end)]
  const swing = top - bottom
  if (swing < p.swing || (p.maxSwing !== null && swing > p.maxSwing)) return null
  // the low end may be written in any turn
  const middle = (p.lowAngle.from + p.lowAngle.to) / 2
  const low = bottom + 2 * Math.PI * Math.round((middle - bottom) / (2 * Math.PI))
  if (low < p.lowAngle.from || low > p.lowAngle.to) return null
  let force = 0
  for (let i = 0; i < poses; i++) {
    const length = p.retractedLength + (p.stroke * i) / (poses - 1)
    const angle = angleAt(length)
    const lever = Math.abs(hingeLeverAt(g, angle))
    if (
      lever < p.minLever ||
      (p.maxLever !== null && lever > p.maxLever) ||
      lever < Math.sin(p.minTransmissionAngle) * g.movingPivot.radius
    )
      return null
    force = Math.max(force, worstMoment(p, angle) / lever)
  }
  return { swing, force, low }
}

/** Largest size of the weights' moment for any lean the wearer may take. */
function worstMoment(p: Problem, angle: number): number {
  let [x, y] = [0, 0]
  for (const w of p.masses) {
    x += w.mass * w.radius * Math.cos(angle + w.angle + p.frameTilt)
    y += w.mass * w.radius * Math.sin(angle + w.angle + p.frameTilt)
  }
  const size = standardGravity * Math.hypot(x, y)
  // the moment turns over at level: if the lean can bring the centre of gravity there, that is the worst
  const offLevel = Math.atan2(Math.abs(y), Math.abs(x))
  return size * (offLevel <= p.tiltEitherWay ? 1 : Math.cos(offLevel - p.tiltEitherWay))
}

/** Anchors somewhere in the regions, from four shares between 0 and 1. */
export function anchorsAt(p: Problem, [a, b, c, d]: readonly [number, number, number, number], branch: 1 | -1): Anchors {
  const { fixedPivotRegion: f, movingPivotRegion: m } = p
  return {
    base: { x: f.left + a * (f.right - f.left), y: f.bottom + b * (f.top - f.bottom) },
    pin: { x: m.left + c * (m.right - m.left), y: m.bottom + d * (m.top - m.bottom) },
    branch,
  }
}

/** Random problems around a placement that works, so that most have an answer. */
export const problems: fc.Arbitrary<Problem> = fc
  .record({
    retractedLength: between(0.1, 0.3),
    strokeShare: between(0.15, 0.6),
    direction: between(-Math.PI, Math.PI),
    pinDirection: between(-1.5, 1.5),
    radius: between(0.03, 0.12),
    middle: between(-0.6, 0.6),
    baseSize: fc.tuple(between(0.01, 0.15), between(0.01, 0.15)),
    pinSize: fc.tuple(between(0.005, 0.08), between(0.005, 0.08)),
    corner: fc.tuple(between(0.1, 0.9), between(0.1, 0.9), between(0.1, 0.9), between(0.1, 0.9)),
    masses: fc.array(fc.record({ mass: between(0.1, 3), radius: between(0.1, 1), angle: between(-0.4, 0.4) }), {
      minLength: 1,
      maxLength: 2,
    }),
    hinge: fc.record({ x: between(-0.2, 0.2), y: between(-0.2, 0.2) }),
    frameTilt: between(-0.4, 0.4),
    tiltEitherWay: fc.oneof(fc.constant(0), between(0, 0.5)),
    lowRoom: between(0.02, 0.5),
    swingShare: between(0.6, 0.98),
    raisedBy: fc.constantFrom<Problem["raisedBy"]>("either", "extending", "retracting"),
    maxLever: fc.oneof(fc.constant(null), between(0.03, 0.12)),
    swingRoom: fc.oneof(fc.constant(null), between(1.01, 1.3)),
    limits: fc.record({ minLever: between(0, 0.01), minTransmissionAngle: between(0, 0.25), minDeadPointMargin: between(0.0005, 0.004) }),
  })
  .map((r): Problem | null => {
    // a triangle whose length runs through the actuator's: the distance that puts the pin square to it half way
    const stroke = r.retractedLength * r.strokeShare
    const half = r.retractedLength + stroke / 2
    const distance = Math.sqrt(half ** 2 + r.radius ** 2 + 2 * half * r.radius * Math.sin(r.middle))
    const base = { x: r.hinge.x + distance * Math.cos(r.direction), y: r.hinge.y + distance * Math.sin(r.direction) }
    const pin = { x: r.radius * Math.cos(r.pinDirection), y: r.radius * Math.sin(r.pinDirection) }
    const around = (at: { x: number; y: number }, [w, h]: readonly [number, number], cx: number, cy: number) => ({
      left: at.x - cx * w,
      right: at.x + (1 - cx) * w,
      bottom: at.y - cy * h,
      top: at.y + (1 - cy) * h,
    })
    const bare: Problem = {
      ...placeActuator.read({ ...placeActuator.example, maxBoxes: 20000, frontPoints: 0 }),
      hinge: r.hinge,
      retractedLength: r.retractedLength,
      stroke,
      ratedForce: 1e6,
      masses: r.masses,
      frameTilt: r.frameTilt,
      tiltEitherWay: r.tiltEitherWay,
      fixedPivotRegion: around(base, r.baseSize, r.corner[0], r.corner[1]),
      movingPivotRegion: around(pin, r.pinSize, r.corner[2], r.corner[3]),
      lowAngle: { from: -Math.PI, to: Math.PI },
      swing: 1e-6,
      raisedBy: r.raisedBy,
      maxLever: r.maxLever,
      ...r.limits,
    }
    const known = judged(bare, { base, pin, branch: r.raisedBy === "retracting" ? -1 : 1 })
    return (
      known && {
        ...bare,
        lowAngle: { from: known.low - r.lowRoom, to: known.low + r.lowRoom },
        swing: known.swing * r.swingShare,
        maxSwing: r.swingRoom === null ? null : known.swing * r.swingRoom,
      }
    )
  })
  .filter((p) => p !== null)

/** Branches a problem allows. */
export const branchesOf = (p: Problem): readonly (1 | -1)[] => (p.raisedBy === "either" ? [1, -1] : p.raisedBy === "extending" ? [1] : [-1])
