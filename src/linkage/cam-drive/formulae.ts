// The working of a cam at one turn.
import type { Step } from "../../solver/index.js"
import { camLaws, guideBinding } from "../sources.js"
import type { CamDrive, CamLaw, Si } from "./types.js"

const law = (name: CamLaw, s: string, v: string, a: string): Step<Si, CamDrive>[] =>
  (
    [
      ["s_u", s, "rise over lift"],
      ["v_u", v, "its change over the share of the rise"],
      ["a_u", a, "the change of that"],
    ] as const
  ).map(([symbol, is, meaning]) => ({ symbol, kind: "number" as const, meaning, is, when: `equalText(law, "${name}")`, source: camLaws }))

export const camFormulae = (): readonly Step<Si, CamDrive>[] => [
  { symbol: "u", kind: "number", meaning: "share of the rise", is: "theta / beta" },
  {
    symbol: "n_h",
    kind: "number",
    meaning: "1 in the first half of the rise, 2 in the second",
    given: (si) => (si.camAngle / si.riseAngle <= 0.5 ? 1 : 2),
  },
  ...law("uniform", "u", "1", "0"),
  ...law("parabolic", "n_h == 1 ? 2 * u^2 : 1 - 2 * (1 - u)^2", "n_h == 1 ? 4 * u : 4 * (1 - u)", "n_h == 1 ? 4 : -4"),
  ...law("harmonic", "sin(pi * u / 2)^2", "pi / 2 * sin(pi * u)", "pi^2 / 2 * cos(pi * u)"),
  ...law("cycloidal", "u - sin(2 * pi * u) / (2 * pi)", "2 * sin(pi * u)^2", "2 * pi * sin(2 * pi * u)"),
  ...law("polynomial-345", "u^3 * (10 - 15 * u + 6 * u^2)", "30 * u^2 * (1 - u)^2", "60 * u * (1 - u) * (1 - 2 * u)"),
  ...law("polynomial-4567", "u^4 * (35 - 84 * u + 70 * u^2 - 20 * u^3)", "140 * u^3 * (1 - u)^3", "420 * u^2 * (1 - u)^2 * (1 - 2 * u)"),
  { symbol: "s_f", meaning: "rise", is: "h * s_u" },
  { symbol: "r", meaning: "lever arm", is: "h * v_u / beta" },
  { symbol: "r_s", meaning: "change of the lever arm", is: "h * a_u / beta^2" },
  { symbol: "v", meaning: "speed", is: "r * omega" },
  { symbol: "a", meaning: "acceleration", is: "r_s * omega^2" },
  { symbol: "y", kind: "length", meaning: "roller centre along the slide, from the cam centre", is: "sqrt((R_p - o) * (R_p + o)) + s_f" },
  { symbol: "alpha", meaning: "pressure angle", is: "atan2((r - o) / m, y / m)", source: camLaws },
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "P", meaning: "load, spring, weight and inertia", is: "F_l + F_0 + k * s_f + m_f * (g_n + a)" },
  {
    symbol: "c",
    kind: "number",
    meaning: "share of the push that the guide's friction takes",
    is: "mu * (2 * L_o + L_g) / L_g * tan(abs(alpha))",
    source: guideBinding,
  },
  { symbol: "F_c", meaning: "force on the roller", is: "P / (1 - c) / cos(alpha)", source: guideBinding },
  { symbol: "F_s", meaning: "force across the guide", is: "P / (1 - c) * tan(alpha)" },
  { symbol: "T", meaning: "moment that holds", is: "P * r" },
  { symbol: "T_r", meaning: "moment while lifting", is: "P * r / (1 - c)" },
  { symbol: "T_b", meaning: "moment while letting down", is: "P * r / (1 + c)" },
  { symbol: "J", meaning: "inertia of the follower at the cam", is: "m_f * r^2" },
  { symbol: "J_s", meaning: "its change per radian", is: "2 * m_f * r * r_s" },
]
