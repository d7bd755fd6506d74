// The working of endStop.
import type { SiOf, Step } from "../../solver/index.js"
import type { EndStop, EndStopInput } from "./types.js"

export const formulae: readonly Step<SiOf<EndStopInput>, EndStop>[] = [
  { symbol: "springy", kind: "number", meaning: "1 for a spring", given: (si) => (si.stop.type === "spring" ? 1 : 0) },
  { symbol: "m_e", meaning: "effective mass at the stop", is: "J / r^2" },
  { symbol: "F_0", meaning: "push at the stop", is: "T / r" },
  { symbol: "v", kind: "speed", meaning: "speed at the stop", is: "omega * r" },
  { symbol: "E_k", meaning: "energy of motion", is: "J * omega^2 / 2" },
  {
    symbol: "x",
    meaning: "how far the spring yields: energy and push against ½·k·x²",
    is: "(F_0 + sqrt(F_0^2 + 2 * k * E_k)) / k",
    when: "springy == 1",
  },
  { symbol: "x", meaning: "stroke of the absorber", is: "x_s", when: "springy == 0" },
  { symbol: "E_d", meaning: "work of the drive meanwhile", is: "F_0 * x" },
  { symbol: "E", meaning: "energy into the stop", is: "E_k + E_d" },
  { symbol: "phi", meaning: "stopping angle", is: "x / r" },
  { symbol: "F", meaning: "peak force of the spring", is: "k * x", when: "springy == 1" },
  { symbol: "F", meaning: "peak force of the absorber", is: "E / (x * eta_s)", when: "springy == 0" },
  { symbol: "F_m", meaning: "mean force", is: "E / x" },
  {
    symbol: "t",
    meaning: "a quarter of a swing on the spring, and what the push adds",
    is: "(pi / 2 + atan(F_0 / (v * sqrt(k * m_e)))) * sqrt(m_e / k)",
    when: "springy == 1",
  },
  { symbol: "t", meaning: "time at even deceleration", is: "2 * x / v", when: "springy == 0" },
  { symbol: "alpha", meaning: "peak deceleration", is: "(F * r - T) / J" },
  {
    symbol: "omega_b",
    meaning: "speed thrown back: what the spring returns, less the drive's work",
    is: "sqrt(2 * max(f_r * k * x^2 / 2 - F_0 * x, 0 N m) / J)",
    when: "springy == 1",
  },
  { symbol: "omega_b", meaning: "not thrown back", is: "0 / s", when: "springy == 0" },
  {
    symbol: "F_h",
    meaning: "force on the hinge: the stop's, less what slows the mass",
    is: "abs(F - m_1 * r_c * alpha)",
    when: "has_mass",
  },
  { symbol: "P", meaning: "heat of the stop", is: "E * n" },
  { symbol: "u", meaning: "peak force against rated", is: "F / F_r", when: "has_ratedForce" },
]
