// The working of an over-centre latch: snap-over point, stored energy, holding force.
import type { Step } from "../../solver/index.js"
import { cosineRule, equilibrium, springRate } from "../sources.js"
import type { OverCentreLatch, Si } from "./types.js"

const lengthAt = (angle: string) => `sqrt((d - r)^2 + 4 * d * r * cos(${angle} / 2)^2)`
/** Length, tension and moment of the spring at an angle. */
const at = (name: string, angle: string, where: string): Step<Si, OverCentreLatch>[] => [
  { symbol: `x_${name}`, kind: "length", meaning: `length of the spring ${where}`, is: lengthAt(angle), source: cosineRule },
  {
    symbol: `F_${name}`,
    kind: "force",
    meaning: `its tension ${where}`,
    is: `x_${name} <= x_0 ? 0 N : F_0 + k * (x_${name} - x_0)`,
    source: springRate,
  },
  {
    symbol: `M_${name}`,
    kind: "moment",
    meaning: `its moment ${where}, counter-clockwise`,
    is: `F_${name} * d * r * sin(${angle}) / x_${name}`,
  },
]

export const latchFormulae = (): readonly Step<Si, OverCentreLatch>[] => [
  { solved: "theta_s", meaning: "snap-over point: spring and load balance there" },
  ...at("s", "theta_s", "at the snap-over point"),
  { symbol: "F_m", meaning: "largest tension, on the dead centre", is: "F_0 + k * (d + r - x_0)", source: springRate },
  {
    left: "F_m * r + abs(M_l) + F_s * d * r * sin(theta_s) / x_s + M_l",
    right: "F_m * r + abs(M_l)",
    meaning: "moments of spring and load at the snap-over point cancel (the same sum added to both sides keeps the comparison to scale)",
    source: equilibrium,
  },
  { symbol: "W_s", meaning: "energy stored there", is: "x_s <= x_0 ? 0 J : F_0 * (x_s - x_0) + k * (x_s - x_0)^2 / 2" },
  { symbol: "J", meaning: "inertia of the lever", is: "m_l * l_c^2" },
  ...at("c", "(-theta_c)", "on the clockwise stop"),
  ...at("k", "theta_k", "on the counter-clockwise stop"),
  { symbol: "F_h", meaning: "smaller holding force at the handle", is: "min(-(M_c + M_l), M_k + M_l) / R_h", source: equilibrium },
]
