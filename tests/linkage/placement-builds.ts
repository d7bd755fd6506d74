import { type HingeGeometry, hingeAngleAt, hingeLengthRange, hingeLeverAt, hingeStaticsAt } from "../../src/linkage/index.js"
import type { Anchors, Problem } from "./placement-problems.js"

/** How far a build is off, each between −1 and 1 of what the tolerances allow. */
export interface Off {
  readonly distance: number
  readonly radius: number
  readonly baseTurn: number
  readonly pinTurn: number
  readonly retracted: number
  readonly extended: number
}

export const asDrawn: Off = { distance: 0, radius: 0, baseTurn: 0, pinTurn: 0, retracted: 0, extended: 0 }

/** All builds with every error at one of its ends. */
export const extremes: readonly Off[] = Array.from({ length: 64 }, (_, i) => {
  const [distance, radius, baseTurn, pinTurn, retracted, extended] = [0, 1, 2, 3, 4, 5].map((bit) => ((i >> bit) & 1 ? 1 : -1)) as number[]
  return { distance, radius, baseTurn, pinTurn, retracted, extended } as Off
})

/** The hinge of one build. */
export function built(p: Problem, { base, pin }: Anchors, off: Off): HingeGeometry {
  const e = p.pivotTolerance
  const moved = (x: number, y: number, along: number, across: number) => {
    const size = Math.hypot(x, y)
    const angle = Math.atan2(y, x) + across * Math.asin(e / size)
    return { radius: size + along * e, angle }
  }
  const fixed = moved(base.x - p.hinge.x, base.y - p.hinge.y, off.distance, off.baseTurn)
  return {
    hinge: p.hinge,
    fixedPivot: { x: p.hinge.x + fixed.radius * Math.cos(fixed.angle), y: p.hinge.y + fixed.radius * Math.sin(fixed.angle) },
    movingPivot: moved(pin.x, pin.y, off.radius, off.pinTurn),
    axisOffset: 0,
  }
}

/** Largest force that any of the loads asks at a pose, by hingeActuator's own balance; leans in even steps. */
export function forceAt(p: Problem, g: HingeGeometry, angle: number, leans = 9): number {
  let worst = 0
  for (const masses of p.otherMasses === null ? [p.masses] : [p.masses, p.otherMasses])
    for (const loadFactor of [p.loadFactor, Math.max(0, 2 - p.loadFactor)])
      for (const force of [p.gustForce, -p.gustForce])
        for (let i = 0; i < leans; i++) {
          const frameTilt = p.frameTilt + p.tiltEitherWay * ((2 * i) / (leans - 1) - 1)
          const loads = {
            masses,
            springs: p.springs ?? [],
            frameTilt,
            frictionRadius: 0,
            loadFactor,
            gust: { force, radius: p.gustRadius },
          }
          worst = Math.max(worst, Math.abs(hingeStaticsAt(g, loads, angle).force))
        }
  return worst
}

/** What one build of a placement does; null where it breaks a limit. */
export function builtOut(
  p: Problem,
  at: Anchors,
  off: Off,
  poses = 33,
): { readonly swing: number; readonly force: number; readonly low: number } | null {
  const g = built(p, at, off)
  const [retracted, extended] = [
    p.retractedLength + off.retracted * p.lengthTolerance,
    p.retractedLength + p.stroke + off.extended * p.lengthTolerance,
  ]
  const { shortest, longest } = hingeLengthRange(g)
  const slack = 1e-9
  if (retracted - shortest < p.minDeadPointMargin - slack || longest - extended < p.minDeadPointMargin - slack) return null
  if (!(extended > retracted)) return null
  const angleAt = (length: number) => hingeAngleAt(g, length, at.branch) as number
  const [start, end] = [angleAt(retracted), angleAt(extended)]
  const bottom = Math.min(start, end)
  const swing = Math.abs(end - start)
  if (swing < p.swing - slack || (p.maxSwing !== null && swing > p.maxSwing + slack)) return null
  const middle = (p.lowAngle.from + p.lowAngle.to) / 2
  const low = bottom + 2 * Math.PI * Math.round((middle - bottom) / (2 * Math.PI))
  if (low < p.lowAngle.from - slack || low > p.lowAngle.to + slack) return null
  let force = 0
  for (let i = 0; i < poses; i++) {
    const angle = angleAt(retracted + ((extended - retracted) * i) / (poses - 1))
    const lever = Math.abs(hingeLeverAt(g, angle))
    if (lever < p.minLever - slack || (p.maxLever !== null && lever > p.maxLever + slack)) return null
    if (lever < Math.sin(p.minTransmissionAngle) * g.movingPivot.radius - slack) return null
    force = Math.max(force, forceAt(p, g, angle))
  }
  return { swing, force, low }
}

/** Distance of a point from a polygon, 0 inside: by the angle its corners turn through as seen from the point. */
export function outOf(corners: readonly { readonly x: number; readonly y: number }[], x: number, y: number): number {
  let [turned, nearest] = [0, Number.POSITIVE_INFINITY]
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] as typeof a
    const [ax, ay, bx, by] = [a.x - x, a.y - y, b.x - x, b.y - y]
    turned += Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
    for (let k = 0; k <= 60; k++) nearest = Math.min(nearest, Math.hypot(ax + (k / 60) * (bx - ax), ay + (k / 60) * (by - ay)))
  })
  return Math.abs(turned) > Math.PI ? 0 : nearest
}

/** How near the line of a build's rod comes to the parts, in steps along rod and stroke; `fine` of either. */
export function nearestPart(p: Problem, at: Anchors, off: Off, fine: number): number {
  const g = built(p, at, off)
  const [retracted, extended] = [
    p.retractedLength + off.retracted * p.lengthTolerance,
    p.retractedLength + p.stroke + off.extended * p.lengthTolerance,
  ]
  let nearest = Number.POSITIVE_INFINITY
  for (let i = 0; i <= fine; i++) {
    const angle = (hingeAngleAt(g, retracted + ((extended - retracted) * i) / fine, at.branch) as number) + g.movingPivot.angle
    const [x, y] = [g.hinge.x + g.movingPivot.radius * Math.cos(angle), g.hinge.y + g.movingPivot.radius * Math.sin(angle)]
    for (let k = 0; k <= fine; k++)
      for (const { corners } of p.keepOut ?? [])
        nearest = Math.min(
          nearest,
          outOf(corners, g.fixedPivot.x + (k / fine) * (x - g.fixedPivot.x), g.fixedPivot.y + (k / fine) * (y - g.fixedPivot.y)),
        )
  }
  return nearest
}
