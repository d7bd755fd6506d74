// The working of a skew hinge, coordinate by coordinate.
import type { Step } from "../../solver/index.js"
import { equilibrium, journalFriction, rotationFormula } from "../sources.js"
import type { Si, SkewHinge } from "./types.js"

type Steps = Step<Si, SkewHinge>[]
const AXES = [
  ["f", "l", "u"],
  ["l", "u", "f"],
  ["u", "f", "l"],
] as const

/** A vector turned about the axis: v·cos θ + (e × v)·sin θ + e·(e·v)·(1 − cos θ). */
const turned = (to: string, from: string, kind: "length" | "number" | "mass", meaning: string): Steps => {
  const along = `(f_e * f_${from} + l_e * l_${from} + u_e * u_${from})`
  return AXES.map(([i, j, k]) => ({
    symbol: `${i}_${to}`,
    kind,
    meaning: `${meaning}, ${i}`,
    is: `${i}_${from} * cos(theta) + (${j}_e * ${k}_${from} - ${k}_e * ${j}_${from}) * sin(theta) + ${i}_e * ${along} * (1 - cos(theta))`,
    source: rotationFormula,
  }))
}
const crossed = (a: string, b: string) =>
  AXES.map(([, j, k]) => `(${j}_${a} * ${k}_${b} - ${k}_${a} * ${j}_${b})`) as [string, string, string]
const length = (parts: readonly string[]) => `sqrt(${parts.map((part) => `${part}^2`).join(" + ")})`

/** One friction direction: the load on the bearings grows with the force of the drive. */
const driven = (symbol: string, sign: "+" | "-"): Steps => [
  { symbol: `${symbol}_0`, kind: "moment", meaning: "before the drive's own force counts", is: `M ${sign} rho * (F_b + F_a)` },
  { symbol, meaning: "moment of the drive", is: `${symbol}_0`, when: "R_d == 0 m" },
  {
    symbol,
    meaning: "moment of the drive",
    is: `${symbol}_0 / (1 ${sign === "+" ? "-" : "+"} sign(${symbol}_0 / (N m)) * rho / R_d)`,
    when: "R_d > 0 m",
  },
]

export const skewFormulae = (): readonly Step<Si, SkewHinge>[] => [
  ...AXES.map(([i]) => ({
    symbol: `${i}_e`,
    kind: "number" as const,
    meaning: `unit axis, ${i}`,
    is: `${i}_a / sqrt(f_a^2 + l_a^2 + u_a^2)`,
  })),
  ...AXES.map(([i]) => ({
    symbol: `${i}_r`,
    kind: "length" as const,
    meaning: `hinge to tip before any swing, ${i}`,
    is: `${i}_t - ${i}_h`,
  })),
  ...turned("d", "r", "length", "hinge to tip"),
  ...AXES.map(([i]) => ({ symbol: `${i}_p`, meaning: `tip, ${i}`, is: `${i}_h + ${i}_d` })),
  { symbol: "r_s", meaning: "distance of the tip from the axis", is: length(crossed("e", "d")) },
  { symbol: "r_f", meaning: "hinge to tip, seen from the front", is: "sqrt(l_d^2 + u_d^2)" },
  { symbol: "beta_f", meaning: "direction to the tip, seen from the front", is: "atan2(abs(u_d / m) < 1e-12 ? 0 : u_d / m, l_d / m)" },
  { symbol: "m_s", kind: "mass", meaning: "mass carried", is: "sum(m_w)" },
  ...AXES.map(([i]) => ({
    symbol: `${i}_k`,
    kind: "number" as const,
    meaning: `mass times place from the hinge before any swing, kg m, ${i}`,
    is: `(sum(m_w .* ${i}_w) - m_s * ${i}_h) / (kg m)`,
  })),
  ...turned("c", "k", "number", "mass times place from the hinge, kg m"),
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "f_v", kind: "number", meaning: "straight up in body axes, forward", is: "-sin(lambda_f)" },
  { symbol: "l_v", kind: "number", meaning: "straight up in body axes, left", is: "-cos(lambda_f) * sin(lambda_l)" },
  { symbol: "u_v", kind: "number", meaning: "straight up in body axes, up", is: "cos(lambda_f) * cos(lambda_l)" },
  {
    symbol: "M",
    meaning: "moment about the axis that holds",
    is: `g_n * (kg m) * (${crossed("e", "c")
      .map((part, i) => `${"flu"[i]}_v * ${part}`)
      .join(" + ")})`,
    source: equilibrium,
  },
  { symbol: "F_h", meaning: "force of the frame", is: "m_s * g_n" },
  ...crossed("c", "v").map((part, i) => ({
    symbol: `${"flu"[i]}_m`,
    kind: "moment" as const,
    meaning: `moment of the frame, ${"flu"[i]}`,
    is: `g_n * (kg m) * ${part}`,
  })),
  { symbol: "M_h", meaning: "moment of the frame", is: length(["f_m", "l_m", "u_m"]), source: equilibrium },
  { symbol: "n_v", kind: "number", meaning: "part of straight up along the axis", is: "f_e * f_v + l_e * l_v + u_e * u_v" },
  { symbol: "F_a", meaning: "load along the axis", is: "F_h * abs(n_v)" },
  ...AXES.map(([i]) => ({
    symbol: `${i}_x`,
    kind: "force" as const,
    meaning: `half the load across the axis, ${i}`,
    is: `F_h * (${i}_v - n_v * ${i}_e) / 2`,
  })),
  ...crossed("m", "e").map((part, i) => ({
    symbol: `${"flu"[i]}_y`,
    kind: "force" as const,
    meaning: `couple on the bearings, ${"flu"[i]}`,
    is: `${part} / s_b`,
  })),
  {
    symbol: "F_b",
    meaning: "loads on both bearings",
    is: `${length(["(f_x + f_y)", "(l_x + l_y)", "(u_x + u_y)"])} + ${length(["(f_x - f_y)", "(l_x - l_y)", "(u_x - u_y)"])}`,
    source: equilibrium,
  },
  { symbol: "rho", kind: "length", meaning: "friction radius", is: "mu * d_p / 2", source: journalFriction },
  ...driven("M_t", "+"),
  ...driven("M_r", "-"),
  {
    symbol: "J",
    meaning: "inertia about the axis",
    is: "sum(m_w .* ((f_w - f_h) .^ 2 + (l_w - l_h) .^ 2 + (u_w - u_h) .^ 2 - (f_e * (f_w - f_h) + l_e * (l_w - l_h) + u_e * (u_w - u_h)) .^ 2))",
  },
  { symbol: "f_d", meaning: "tip forward of the hinge", is: "f_p - f_h" },
  {
    symbol: "A_c",
    kind: "moment",
    meaning: "holding moment before any swing",
    is: `g_n * (kg m) * (${crossed("e", "k")
      .map((part, i) => `${"flu"[i]}_v * ${part}`)
      .join(" + ")})`,
  },
  {
    symbol: "A_s",
    kind: "moment",
    meaning: "holding moment a quarter turn on",
    is: "-g_n * (kg m) * (f_v * f_k + l_v * l_k + u_v * u_k - n_v * (f_e * f_k + l_e * l_k + u_e * u_k))",
  },
  { symbol: "theta_c", kind: "number", meaning: "swing at which it is largest", is: "atan2(A_s / (N m), A_c / (N m))" },
  {
    symbol: "M_m",
    meaning: "largest holding moment over the swing",
    is: "sqrt(A_c^2 + A_s^2) * (ceil((min(theta_1, theta_2) - theta_c) / pi) <= (max(theta_1, theta_2) - theta_c) / pi ? 1 : max(abs(cos(theta_1 - theta_c)), abs(cos(theta_2 - theta_c))))",
  },
]
