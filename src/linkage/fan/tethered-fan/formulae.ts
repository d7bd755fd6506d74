import type { SiOf, Step } from "../../../solver/index.js"
import { standardGravity } from "../../hinge/load.js"
import { distanceAt, FAN_STEPS } from "./pose.js"
import type { FanTrace, TetheredFan, TetheredFanInput } from "./types.js"

type Si = SiOf<TetheredFanInput>

/** Neighbours' values, each thread's leader and follower. */
const leaders = (list: readonly number[]) => list.slice(0, -1)
const followers = (list: readonly number[]) => list.slice(1)

function gapText(distance: string, width: string): string {
  return `max(2 * ${distance} * map((theta_a - theta_b) / 2, sin) - ${width} * map((theta_a - theta_b) / 2, cos) + p * map((theta_a + theta_b) / 2 - psi, sin))`
}

function leadLevers(si: Si, out: TetheredFan): number[] {
  const { attachRadius: rho, pitch, pitchAngle } = si
  return leaders(out.angles).map((leader, i) => {
    const follower = out.angles[i + 1] as number
    const d = distanceAt(si, leader, follower)
    return d === 0 ? 0 : (rho * rho * Math.sin(leader - follower) + rho * pitch * Math.sin(leader - pitchAngle)) / d
  })
}

/** The working of tetheredFan, in order. */
export const tetheredFanFormulae: readonly Step<Si, TetheredFan, FanTrace>[] = [
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "alpha", meaning: "even step between vanes", is: "sigma / (n_v - 1)" },
  { symbol: "theta_a", kind: "angle", meaning: "vanes that pull", given: (_, out) => leaders(out.angles) },
  { symbol: "theta_b", kind: "angle", meaning: "vanes that are pulled", given: (_, out) => followers(out.angles) },
  { symbol: "t_a", kind: "length", meaning: "thread lengths", given: (_, out) => out.threads },
  {
    symbol: "k_t",
    kind: "number",
    meaning: "1 where the thread is taut",
    given: (_si, _out, { taut }) => (taut as readonly boolean[]).map((is) => (is ? 1 : 0)),
  },
  { symbol: "i_v", kind: "number", meaning: "vanes counted from 0", given: ({ vanes }) => Array.from({ length: vanes }, (_, i) => i) },
  {
    symbol: "d",
    kind: "length",
    meaning: "distance of the thread's ends",
    is: "map((rho * (map(theta_a, cos) - map(theta_b, cos)) - p * cos(psi)) .^ 2 + (rho * (map(theta_a, sin) - map(theta_b, sin)) - p * sin(psi)) .^ 2, sqrt)",
  },
  {
    symbol: "d_t",
    kind: "length",
    meaning: "the same, 1 m standing in where the thread is slack and has no part",
    is: "k_t .* d + (1 - k_t) * 1 m",
  },
  { left: "sum(k_t .* d .^ 2)", right: "sum(k_t .* t_a .^ 2)", meaning: "taut threads are as long as their ends are apart" },
  { symbol: "T_a", kind: "force", meaning: "tensions, by balance from the last vane to the first", given: (_, out) => out.tensions },
  { symbol: "T_b", kind: "force", meaning: "tension of the next thread", given: (_, out) => [...followers(out.tensions), 0] },
  {
    symbol: "h_a",
    kind: "length",
    meaning: "lever arm about the pulled vane's pivot",
    is: "(rho^2 * map(theta_a - theta_b, sin) + rho * p * map(theta_b - psi, sin)) ./ d_t",
  },
  {
    symbol: "k_a",
    kind: "length",
    meaning: "lever arm about the pulling vane's pivot",
    is: "(rho^2 * map(theta_a - theta_b, sin) + rho * p * map(theta_a - psi, sin)) ./ d_t",
  },
  { symbol: "k_b", kind: "length", meaning: "the next thread's", given: (si, out) => [...followers(leadLevers(si, out)), 0] },
  {
    symbol: "G",
    kind: "moment",
    meaning: "weight and return of the pulled vanes",
    is: "g_n * m_v * c * map(theta_b + lambda, cos) + M_r",
  },
  {
    left: "sum(k_t .* G .^ 2)",
    right: "sum(k_t .* (T_a .* h_a - T_b .* k_b) .^ 2)",
    meaning: "every vane on a taut thread is in balance",
  },
  { symbol: "M_d", meaning: "moment at the driven vane", is: "g_n * m_v * c * cos(theta_a[1] + lambda) + T_a[1] * k_a[1]" },
  { symbol: "s_0", meaning: "largest root gap", is: gapText("R_0", "w_0") },
  { symbol: "s_1", meaning: "largest tip gap", is: gapText("R", "w_1") },
  { symbol: "m_t", meaning: "mass of the fan", is: "n_v * m_v" },
  {
    symbol: "M_t",
    meaning: "moment of the fan's weight about the first pivot",
    is: "g_n * m_v * (c * cos(theta_a[1] + lambda) + c * sum(map(theta_b + lambda, cos)) + p * cos(psi + lambda) * sum(i_v))",
  },
  { solved: "theta_p", meaning: "driver angle of the largest moment, of the sweep's poses" },
  {
    symbol: "j_p",
    kind: "number",
    meaning: "number of that pose",
    given: ({ foldedAngle, openAngle }, out) => Math.round(((out.peakDriverAngle - foldedAngle) / (openAngle - foldedAngle)) * FAN_STEPS),
  },
  {
    left: "2 * pi + theta_p",
    right: `2 * pi + theta_f + (theta_o - theta_f) * j_p / ${FAN_STEPS}`,
    meaning: "the sweep's poses are even",
  },
  {
    symbol: "M_j",
    kind: "moment",
    meaning: "moment of the first thread at that pose",
    given: (si, out, { peakMoment }) =>
      (peakMoment as number) - standardGravity * si.mass * si.centre * Math.cos(out.peakDriverAngle + si.frameTilt),
  },
  { symbol: "M_p", meaning: "largest moment at the driven vane", is: "abs(g_n * m_v * c * cos(theta_p + lambda) + M_j)" },
]
