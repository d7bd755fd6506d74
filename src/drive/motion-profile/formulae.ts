// The working of motionProfile.
import type { SiOf, Step } from "../../solver/index.js"
import { rampsOf } from "./kernel.js"
import type { MotionProfile, MotionProfileInput } from "./types.js"

export const formulae: readonly Step<SiOf<MotionProfileInput>, MotionProfile>[] = [
  { symbol: "timed", kind: "number", meaning: "1 where the time is set", given: (si) => (si.timing.type === "duration" ? 1 : 0) },
  { symbol: "short", kind: "number", meaning: "1 where the speed allowed is not reached", given: (_, out) => (out.shortened ? 1 : 0) },
  { symbol: "b", kind: "number", meaning: "share of each ramp in which the acceleration changes", given: (si) => rampsOf(si).jerkShare },
  { symbol: "rounded", kind: "number", meaning: "1 where ramps are rounded", given: (_, out) => (out.peakJerk === null ? 0 : 1) },
  { symbol: "full", kind: "number", meaning: "1 where full acceleration is reached", given: (si) => (rampsOf(si).jerkShare < 1 ? 1 : 0) },
  {
    symbol: "t_e",
    kind: "time",
    meaning: "time to reach it, none where the ramps are straight",
    given: (si) => (si.timing.type === "limits" ? (si.timing.jerkTime ?? 0) : 0),
  },
  { symbol: "t_a", meaning: "time speeding up", is: "f_a * t_s", when: "timed == 1" },
  { symbol: "t_d", meaning: "time slowing down", is: "f_d * t_s", when: "timed == 1" },
  { symbol: "t_c", meaning: "time at steady speed", is: "max(t_s - t_a - t_d, 0 s)", when: "timed == 1" },
  { symbol: "omega", meaning: "peak speed", is: "theta / (t_s * (1 - (f_a + f_d) / 2)) ", when: "timed == 1" },
  { symbol: "omega", meaning: "peak speed as allowed", is: "omega_l", when: "timed == 0 and short == 0" },
  {
    symbol: "omega",
    meaning: "peak speed of a short move that reaches the acceleration allowed: ω·(ω/α + t) is the swing",
    is: "2 * theta / (t_e + sqrt(t_e^2 + 4 * theta / alpha_l))",
    when: "timed == 0 and short == 1 and full == 1",
  },
  {
    symbol: "omega",
    meaning: "peak speed of a move too short for that: 2·j·t³ is the swing",
    is: "alpha_l / t_l * cbrt(theta * t_l / (2 * alpha_l))^2",
    when: "timed == 0 and short == 1 and full == 0",
  },
  {
    symbol: "t_a",
    meaning: "time speeding up: full acceleration and the rounded ends",
    is: "omega / alpha_l + t_e",
    when: "timed == 0 and full == 1",
  },
  {
    symbol: "t_a",
    meaning: "time speeding up, all of it rounded",
    is: "2 * sqrt(omega * t_l / alpha_l)",
    when: "timed == 0 and full == 0",
  },
  { symbol: "t_d", meaning: "time slowing down, the same", is: "t_a", when: "timed == 0" },
  { symbol: "t_c", meaning: "time at steady speed", is: "max(theta / omega - t_a, 0 s)", when: "timed == 0 and short == 0" },
  { symbol: "t_c", meaning: "time at steady speed", is: "0 s", when: "timed == 0 and short == 1" },
  { symbol: "t", meaning: "time of the move", is: "t_a + t_c + t_d" },
  { symbol: "alpha_a", meaning: "peak acceleration", is: "omega / (t_a * (1 - b / 2))" },
  { symbol: "alpha_d", meaning: "peak deceleration", is: "omega / (t_d * (1 - b / 2))" },
  {
    symbol: "j",
    meaning: "peak jerk",
    is: "max(alpha_a / (b / 2 * t_a), alpha_d / (b / 2 * t_d)) * s^3",
    when: "rounded == 1",
  },
  { symbol: "T_o", kind: "moment", meaning: "steady torque out", is: "T_L + T_f" },
  { symbol: "T_b", kind: "moment", meaning: "steady torque back", is: "T_f - T_L" },
  {
    symbol: "T_p",
    meaning: "peak torque, both ways",
    is: "max(abs(T_o + J * alpha_a), abs(T_o), abs(T_o - J * alpha_d), abs(T_b + J * alpha_a), abs(T_b), abs(T_b - J * alpha_d))",
  },
  {
    symbol: "held",
    kind: "moment",
    meaning: "torque held at rest, friction taking its part",
    given: (si) => (si.holdsAtRest ? Math.max(0, Math.abs(si.loadTorque) - si.frictionTorque) : 0),
  },
  {
    symbol: "T_rms",
    meaning: "rms torque over both moves and rests; a ramp's rounded ends count a third",
    is: "sqrt((2 * J^2 * (1 - 2 * b / 3) * (alpha_a^2 * t_a + alpha_d^2 * t_d) + t * (T_o^2 + T_b^2) + 2 * t_r * held^2) / (2 * (t + t_r)))",
  },
  { symbol: "Q_f", meaning: "heat of friction in a move", is: "T_f * theta" },
  { symbol: "E_p", meaning: "energy of motion at peak speed", is: "J * omega^2 / 2" },
  { symbol: "v_t", meaning: "peak speed of the tip", is: "omega * R", when: "has_tipRadius" },
]
