import { type HingeGeometry, hingePinAt } from "./geometry.js"
import { gustOf, type HingeLoads, type HingeStatics, springAt, standardGravity } from "./load.js"

/** How the forces of a pose change with the arm's angle, N/rad. */
export interface HingeSlopes {
  readonly force: number
  readonly extendForce: number
  readonly retractForce: number
}

/**
 * Derivatives of a pose's forces with the arm's angle, in closed form. Of the force E against friction by its own balance
 * |l|·E ∓ M = ±ρ·√(|E·u + W|² + c²), differentiated as it stands. Where a cord goes slack they jump: {@link slackAngles}.
 */
export function hingeSlopesAt(g: HingeGeometry, loads: HingeLoads, armAngle: number, at: HingeStatics): HingeSlopes {
  const { length, lever } = at
  const pin = hingePinAt(g, armAngle)
  const rx = pin.x - g.hinge.x
  const ry = pin.y - g.hinge.y
  const qx = pin.x - g.fixedPivot.x
  const qy = pin.y - g.fixedPivot.y
  const leverSlope = (rx * rx + ry * ry - rx * qx - ry * qy - lever * lever) / length
  const ux = qx / length
  const uy = qy / length
  const uxSlope = (-ry - ux * lever) / length
  const uySlope = (rx - uy * lever) / length
  const factor = loads.loadFactor ?? 1
  let momentSlope = 0
  for (const w of loads.masses) momentSlope -= w.mass * w.radius * Math.sin(armAngle + w.angle + loads.frameTilt)
  momentSlope *= standardGravity * factor
  const gust = gustOf(loads)
  // reaction = −(F·u + W), so that the other loads W follow from it
  const wx = -at.reaction.x - at.force * ux
  const wy = -at.reaction.y - at.force * uy
  let wxSlope = gust * Math.cos(armAngle)
  let wySlope = gust * Math.sin(armAngle)
  for (const spring of loads.springs) {
    const { length: z, tension, x, y } = springAt(g.hinge, spring, armAngle)
    if (z === 0) continue
    const px = spring.radius * Math.cos(armAngle + spring.angle)
    const py = spring.radius * Math.sin(armAngle + spring.angle)
    const dx = spring.fixedPivot.x - g.hinge.x - px
    const dy = spring.fixedPivot.y - g.hinge.y - py
    const zSlope = (dx * py - dy * px) / z
    const rate = spring.pullsOnly && z <= spring.freeLength ? 0 : spring.stiffness
    const shareSlope = ((rate - tension / z) * zSlope) / z
    const share = tension / z
    const fx = shareSlope * dx + share * py
    const fy = shareSlope * dy - share * px
    wxSlope += fx
    wySlope += fy
    momentSlope -= -py * y - px * x + px * fy - py * fx
  }
  const sign = lever < 0 ? -1 : 1
  const rho = loads.frictionRadius
  const across = loads.bearingLoad ?? 0
  const slope = (force: number, friction: number) => {
    const hx = force * ux + wx
    const hy = force * uy + wy
    const load = friction === 0 ? 1 : Math.sqrt(hx * hx + hy * hy + across * across) || 1
    const own = (hx * ux + hy * uy) / load
    const rest = (hx * (force * uxSlope + wxSlope) + hy * (force * uySlope + wySlope)) / load
    return (sign * (momentSlope - leverSlope * force) + friction * rest) / (Math.abs(lever) - friction * own)
  }
  return { force: slope(at.force, 0), extendForce: slope(at.extendForce, rho), retractForce: slope(at.retractForce, -rho) }
}

/** Arm angles between two others at which a cord or spring that only pulls comes to its free length. */
export function slackAngles(g: HingeGeometry, { springs }: HingeLoads, from: number, to: number): number[] {
  const low = Math.min(from, to)
  const high = Math.max(from, to)
  return springs.flatMap((spring) => {
    if (!spring.pullsOnly) return []
    const x = spring.fixedPivot.x - g.hinge.x
    const y = spring.fixedPivot.y - g.hinge.y
    const distance = Math.sqrt(x * x + y * y)
    const cos = (distance ** 2 + spring.radius ** 2 - spring.freeLength ** 2) / (2 * distance * spring.radius)
    if (!(Math.abs(cos) <= 1)) return []
    const middle = Math.atan2(y, x) - spring.angle
    return [Math.acos(cos), -Math.acos(cos)].flatMap((off) => {
      const first = middle + off + 2 * Math.PI * Math.ceil((low - middle - off) / (2 * Math.PI))
      return first < high ? [first] : []
    })
  })
}
