import { integrate } from "../../numeric/index.js"
import type { SiOf } from "../../solver/index.js"
import type { DrapeInput } from "./types.js"

type Si = SiOf<DrapeInput>
const PI = Math.PI

/** Angle of the wall from the horizontal. */
export function wallAngle({ shape, width, baseDiameter, depth }: Si): number {
  return shape === "frustum" ? Math.atan2(depth, (width - (baseDiameter as number)) / 2) : PI / 2
}

/** Radius of the flat base. */
export const baseRadius = ({ shape, width, baseDiameter }: Si): number => (shape === "frustum" ? (baseDiameter as number) : width) / 2

/** Thickness of the free bubble as it touches the base, as a fraction of the sheet; null where the form is too shallow for it. */
function atTouch(si: Si): number | null {
  const angle = wallAngle(si)
  const [rim, foot] = [si.width / 2, baseRadius(si)]
  if (si.shape === "cup") return si.depth >= foot ? Math.exp(-(si.depth - foot) / foot) / 2 : null
  const touch = foot * (1 + Math.cos(angle))
  return touch <= rim ? ((1 + Math.cos(angle)) / 2) * (touch / rim) ** (1 / Math.cos(angle) - 1) : null
}

/** Logarithm of the further thinning while the bubble closes into the corner down to the fillet. */
export function cornerThinning(si: Si): number {
  const angle = wallAngle(si)
  const foot = baseRadius(si)
  const t = Math.tan(angle / 2)
  const lift = 1 - Math.cos(angle)
  // areas and laid rings, over 2π: flat disc b and wall ring w bound a band of radius rho
  const rate = (rho: number) => {
    const b = Math.max(0, foot - rho * t)
    const w = foot + rho * t * Math.cos(angle)
    const area = rho * (b * angle + rho * lift)
    const slope = b * angle - rho * t * angle + 2 * rho * lift
    return ((b + w) * t - slope) / area
  }
  return integrate(rate, si.fillet as number, foot / t).value
}

/** Area of the opening and of the formed surface. */
export function areas(si: Si): { readonly open: number; readonly formed: number } {
  const { shape, width, breadth, depth } = si
  const r = width / 2
  if (shape === "box") {
    const b = breadth as number
    return { open: width * b, formed: width * b + 2 * depth * (width + b) }
  }
  const open = PI * r * r
  if (shape === "cup") return { open, formed: open + 2 * PI * r * depth }
  if (shape === "dome") return { open, formed: PI * (r * r + depth * depth) }
  const foot = shape === "cone" ? 0 : baseRadius(si)
  return { open, formed: PI * (r + foot) * Math.hypot(depth, r - foot) + PI * foot * foot }
}

/** Minimum thickness, m; null where no sum is known. */
export function least(si: Si): number | null {
  const { shape, thickness, width, depth, fillet } = si
  if (shape === "dome") return thickness / (1 + (depth / (width / 2)) ** 2) ** 2
  if ((shape === "cup" || shape === "frustum") && fillet !== null) {
    const touch = atTouch(si)
    return touch === null ? null : thickness * touch * Math.exp(-cornerThinning(si))
  }
  return null
}
