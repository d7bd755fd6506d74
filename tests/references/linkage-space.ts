import { foldingChain, skewHinge, standardGravity } from "../../src/linkage/index.js"
import type { Check, RowInputs } from "../helpers/references.js"

const DEG = Math.PI / 180
type Triple = [number, number, number]
const body = ([forward, left, up]: Triple) => ({ forward, left, up })

/** Where a hinge at the origin, or elsewhere, takes a tip. */
function swung(tip: Triple, axis: Triple, degrees: number, hinge: Triple = [0, 0, 0]): Triple {
  const out = skewHinge({
    hinge: body(hinge),
    axis: body(axis),
    tip: body(tip),
    masses: [{ mass: 1, ...body(tip) }],
    swing: degrees * DEG,
    swingTo: 1,
  })
  return [out.tipForward, out.tipLeft, out.tipUp]
}
const named = (prefix: string, [x, y, z]: Triple, scale = 1) => ({
  [`${prefix}_x`]: x * scale,
  [`${prefix}_y`]: y * scale,
  [`${prefix}_z`]: z * scale,
})
const metres = (mm: Triple) => mm.map((x) => x / 1000) as Triple
const result: Check = (n) => named("result", swung(n.vector, n.axis, n.angle_deg))

/** A chain of the row's panels with alternating folds: as much each way from the span line. */
function zigzag(lengths: readonly number[], degrees: number, masses: readonly number[] = []) {
  return foldingChain({
    segments: lengths.map((length, i) => ({
      length: length / 1000,
      mass: masses[i] ?? 0,
      foldedAngle: 0,
      ratio: i === 0 ? 1 : i % 2 ? -2 : 2,
    })),
    driverTravel: 1.6,
    position: (degrees * DEG) / 1.6,
  })
}

/** Checks of the rows on turns in space and on folding chains. */
export const spaceChecks: Readonly<Record<string, Check>> = {
  "rodrigues-diagonal-120": result,
  "rodrigues-rosetta-18deg": result,
  "rodrigues-rosetta-sweep": (n: RowInputs) =>
    Object.assign(
      {},
      ...(n.angles_deg as number[]).map((angle) => {
        const [x, y, z] = swung(n.vector, n.axis, angle)
        return { [`x_${angle}`]: x, [`y_${angle}`]: y, [`z_${angle}`]: z }
      }),
    ),
  "rodrigues-rosetta-target": (n) => {
    const [[a, b, c], [d, e, f]] = [n.vector as Triple, n.target as Triple]
    const axis: Triple = [b * f - c * e, c * d - a * f, a * e - b * d]
    return named("result", swung(n.vector, axis, Math.atan2(Math.hypot(...axis), a * d + b * e + c * f) / DEG))
  },
  "rodrigues-skew-1": (n) => named("result_mm", swung(metres(n.vector_mm), n.axis, n.angle_deg), 1000),
  "hinge-skew-offset-axis": (n) => {
    const tip = swung(metres(n.point_mm), n.hinge_axis, n.angle_deg, metres(n.hinge_point_mm))
    const out = skewHinge({
      hinge: body(metres(n.hinge_point_mm)),
      axis: body(n.hinge_axis),
      tip: body(metres(n.point_mm)),
      masses: [{ mass: 1, forward: 0, left: 0, up: 0 }],
      swing: 0,
      swingTo: 1,
    })
    return { ...named("tip_mm", tip, 1000), swing_radius_mm: out.swingRadius * 1000 }
  },
  "hinge-skew-two-fold": (n) => {
    const v = metres(n.vector_mm)
    const one = swung(swung(v, n.axis_1, n.angle_1_deg), n.axis_2, n.angle_2_deg)
    const other = swung(swung(v, n.axis_2, n.angle_2_deg), n.axis_1, n.angle_1_deg)
    return { ...named("first_then_second_mm", one, 1000), ...named("second_then_first_mm", other, 1000) }
  },
  "folding-chain-geared-2to1": (n) =>
    Object.assign(
      {},
      ...(n.root_angles_deg as number[]).map((angle) => {
        const out = zigzag(n.panel_mm, angle)
        return { [`tip_x_${angle}_mm`]: out.tipX * 1000, [`tip_y_${angle}_mm`]: out.tipY * 1000 }
      }),
    ),
  "folding-chain-zigzag": (n) => {
    const out = zigzag(new Array<number>(n.links).fill(n.link_mm), n.fold_deg)
    return { reach_mm: out.tipX * 1000, width_mm: (out.joints[1]?.y as number) * 1000, reach_rate_mm_per_rad: out.tipRateX * 1000 }
  },
  "folding-chain-hinge-torque": (n) => {
    const out = foldingChain({
      segments: (n.panel_mm as number[]).map((length, i) => ({
        length: length / 1000,
        mass: n.panel_N[i] / standardGravity,
        foldedAngle: i ? 0 : n.angle_deg * DEG,
        ratio: i ? 0 : 1,
      })),
      driverTravel: 1,
      position: 0,
    })
    return { root_torque_N_mm: (out.joints[0]?.gravityMoment as number) * 1000 }
  },
}
