import { chebyshevPoints, fourBar, freudenstein, scissor } from "../../src/linkage/index.js"
import type { Check } from "../helpers/references.js"

type Numbers = Readonly<Record<string, number>>
const DEG = Math.PI / 180
const g = 9.80665
/** The angle's name nearest to the published one. */
const near = (angle: number, published: unknown) => angle / DEG - 360 * Math.round((angle / DEG - (published as number)) / 360)

/** Three-point generator of a function over ranges of angle, its points spaced after Chebyshev. */
const generator =
  (f: (x: number) => number): Check =>
  (inputs) => {
    const n = inputs as Numbers
    const [x0, x1] = [n.x_start as number, n.x_end as number]
    const xs = chebyshevPoints(x0, x1, 3)
    const onRange = (share: number, start: number, range: number) => (start + range * share) * DEG
    const thetas = xs.map((x) => onRange((x - x0) / (x1 - x0), n.theta_start_deg as number, n.theta_range_deg as number))
    const phis = xs.map((x) => onRange((f(x) - f(x0)) / (f(x1) - f(x0)), n.phi_start_deg as number, n.phi_range_deg as number))
    const out = freudenstein({ ground: 1, inputAngles: thetas, outputAngles: phis })
    const [phi1, phi2, phi3] = phis.map((phi) => phi / DEG)
    return {
      k1: out.k1,
      k2: out.k2,
      k3: out.k3,
      crank_over_ground: out.input,
      coupler_over_ground: out.coupler,
      rocker_over_ground: out.output,
      phi1_deg: phi1,
      phi2_deg: phi2,
      phi3_deg: phi3,
    }
  }

/** Coupler point of a crank-rocker at several crank angles. */
const path: Check = (inputs) => {
  const n = inputs as unknown as Numbers & { crank_deg: number[] }
  return Object.fromEntries(
    n.crank_deg.flatMap((crank) => {
      const out = fourBar({
        ground: (n.ground_mm as number) / 1000,
        input: (n.crank_mm as number) / 1000,
        coupler: (n.coupler_mm as number) / 1000,
        output: (n.rocker_mm as number) / 1000,
        inputAngle: crank * DEG,
        pointRadius: Math.hypot(n.point_along_mm as number, n.point_across_mm as number) / 1000,
        pointAngle: Math.atan2(n.point_across_mm as number, n.point_along_mm as number),
      })
      return [
        [`x_${crank}_mm`, (out.pointX as number) * 1000],
        [`y_${crank}_mm`, (out.pointY as number) * 1000],
      ]
    }),
  )
}

/** Checks of the rows on synthesis, coupler paths and toggles. */
export const furtherChecks: Readonly<Record<string, Check>> = {
  "synthesis-freudenstein-log10": generator(Math.log10),
  "synthesis-freudenstein-x1p5": generator((x) => x ** 1.5),
  "coupler-path-numeric-2": path,
  "coupler-path-numeric-3": path,
  "toggle-fourbar-instant-centres": (inputs, { expected }) => {
    const n = inputs as Numbers
    const mm = (key: string) => (n[key] as number) / 1000
    const out = fourBar({
      ground: mm("ground_mm"),
      input: mm("crank_mm"),
      coupler: mm("coupler_mm"),
      output: mm("rocker_mm"),
      inputAngle: (n.crank_deg as number) * DEG,
    })
    return {
      torque_gain: Math.abs(out.mechanicalAdvantage as number),
      rocker_deg: near(out.outputAngle, expected.rocker_deg),
      coupler_deg: near(out.couplerAngle, expected.coupler_deg),
      transmission_deg: out.transmissionAngle / DEG,
    }
  },
  "folding-scissor-travel-10-to-45": (inputs) => {
    const n = inputs as Numbers
    const out = scissor({
      cells: n.stages as number,
      armLength: (n.link_mm as number) / 1000,
      foldedAngle: (n.closed_deg as number) * DEG,
      extendedAngle: (n.open_deg as number) * DEG,
    })
    const travel = out.spanExtended - out.spanFolded
    return {
      height_closed_mm: out.spanFolded * 1000,
      height_open_mm: out.spanExtended * 1000,
      travel_mm: travel * 1000,
      base_travel_mm: out.driverStroke * 1000,
      mean_multiplication: travel / out.driverStroke,
    }
  },
  "toggle-scissor-base-actuator": (inputs) => {
    const n = inputs as Numbers
    const angle = (n.angle_deg as number) * DEG
    const out = scissor({
      cells: 1,
      armLength: 1,
      foldedAngle: angle,
      extendedAngle: angle + 0.1,
      tipMass: (n.load_N as number) / g,
      armsMass: (n.frame_N as number) / g,
    })
    return { base_force_N: out.forceFolded }
  },
  "toggle-scissor-cotangent": () => {
    const ratio = (degrees: number) =>
      scissor({ cells: 1, armLength: 1, foldedAngle: degrees * DEG, extendedAngle: degrees * DEG + 0.1, push: 1 }).forceFolded
    return { force_ratio_45: ratio(45), force_ratio_10: ratio(10) }
  },
}

/** Expected keys that no solver calculates, and why. */
export const furtherWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "toggle-scissor-base-actuator": { centre_pin_force_N: "an actuator between the centre pins is another drive than between base joints" },
}
