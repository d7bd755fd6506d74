import type { Formula, SiOf, Step } from "../../../solver/index.js"
import { gustOf } from "../load.js"
import { pullsOnlyStep, springSteps } from "../spring-steps.js"
import type { Peak } from "./peaks.js"
import type { HingeActuator, HingeActuatorInput, HingeTrace } from "./types.js"

type Si = SiOf<HingeActuatorInput>

/** Steps from the length `L_<p>` to the pose's angle, lever arm and transmission angle. */
const poseSteps = (p: string, where: string): Formula[] => [
  { symbol: `q_${p}`, kind: "length", meaning: `distance of the pivots ${where}`, is: `sqrt(L_${p}^2 + o^2)` },
  {
    symbol: `phi_${p}`,
    kind: "angle",
    meaning: `angle at the hinge between the pivots ${where}`,
    is: `2 * atan(sqrt((q_${p} - (D - r)) * (q_${p} + D - r) / ((D + r - q_${p}) * (D + r + q_${p}))))`,
  },
  { symbol: `theta_${p}`, kind: "angle", meaning: `arm angle ${where}`, is: `theta_s + b * phi_${p}` },
  { symbol: `l_${p}`, kind: "length", meaning: `lever arm dL/dθ ${where}`, is: `b * D * r * sin(phi_${p}) / L_${p}` },
  {
    symbol: `tau_${p}`,
    kind: "angle",
    meaning: `transmission angle ${where}`,
    is: `atan2(D * sin(phi_${p}) / D, abs(r - D * cos(phi_${p})) / D)`,
  },
]

/** Factor on the weights, and a gust: at the chosen extension there is neither. */
const times = (p: string) => (p === "c" ? "" : `k_${p} * `)
const gustMoment = (p: string) => (p === "c" ? "" : ` + e_${p} * F_g * r_g`)
const gustForce = (p: string, along: string) => (p === "c" ? "" : ` ${along.startsWith("-") ? "-" : "+"} e_${p} * F_g * ${along.slice(1)}`)

/** Steps from the pose to the moments and the static force. */
const staticSteps = (p: string, where: string): Formula[] => {
  return [
    {
      symbol: `M_${p}`,
      kind: "moment",
      meaning: `moment of the weights ${where}`,
      is: `${times(p)}g_n * sum(m_w .* r_w .* map(theta_${p} + a_w + lambda, cos))`,
    },
    ...springSteps(p, where),
    { symbol: `F_${p}`, kind: "force", meaning: `force without friction ${where}`, is: `(M_${p}${gustMoment(p)} - N_${p}) / l_${p}` },
  ]
}

/** Steps from the static force to the forces against pin friction. */
const frictionSteps = (p: string, where: string): Formula[] => [
  { symbol: `u_${p}`, kind: "number", meaning: `thrust outward ${where}`, is: `(x_h + r * cos(theta_${p} + beta) - x_b) / L_${p}` },
  { symbol: `v_${p}`, kind: "number", meaning: `thrust upward ${where}`, is: `(y_h + r * sin(theta_${p} + beta) - y_b) / L_${p}` },
  {
    symbol: `A_${p}`,
    kind: "force",
    meaning: `all forces on the arm but the hinge's, outward, ${where}`,
    is: `F_${p} * u_${p} - ${times(p)}g_n * sum(m_w) * sin(lambda)${gustForce(p, `+sin(theta_${p})`)} + (has_springs ? sum(T_${p} ./ Z_${p} .* X_${p}) : 0 N)`,
  },
  {
    symbol: `B_${p}`,
    kind: "force",
    meaning: `all forces on the arm but the hinge's, up, ${where}`,
    is: `F_${p} * v_${p} - ${times(p)}g_n * sum(m_w) * cos(lambda)${gustForce(p, `-cos(theta_${p})`)} + (has_springs ? sum(T_${p} ./ Z_${p} .* Y_${p}) : 0 N)`,
  },
  {
    symbol: `J_${p}`,
    kind: "area",
    meaning: `quadratic for the force against friction ${where}`,
    is: `l_${p}^2 - rho^2 * (u_${p}^2 + v_${p}^2)`,
  },
  { symbol: `K_${p}`, kind: "force", meaning: `its linear part ${where}`, is: `u_${p} * A_${p} + v_${p} * B_${p}` },
  {
    symbol: `Q_${p}`,
    kind: "force",
    meaning: `half the distance of its roots ${where}`,
    is: `rho * sqrt((rho * K_${p})^2 + J_${p} * (A_${p}^2 + B_${p}^2 + C_a^2)) / J_${p}`,
  },
  { symbol: `E_${p}`, kind: "force", meaning: `force while extending ${where}`, is: `F_${p} + rho^2 * K_${p} / J_${p} + Q_${p}` },
  { symbol: `R_${p}`, kind: "force", meaning: `force while retracting ${where}`, is: `F_${p} + rho^2 * K_${p} / J_${p} - Q_${p}` },
]

const closure = (p: string, s: string) => ({
  left: `(L_r + ${s})^2 + o^2`,
  right: `D^2 + r^2 - 2 * D * r * cos(theta_${p} - theta_s)`,
})

/** Steps from an extension that the search found, with the loads that are worst there, to the static force. */
const peakSteps = (p: string, where: string, peak: (trace: HingeTrace) => Peak): Step<Si, HingeActuator, HingeTrace>[] => [
  { solved: `s_${p}`, meaning: `extension ${where}: there the derivative of the force is 0, or the stroke or a cord's pull ends` },
  {
    symbol: `k_${p}`,
    kind: "number",
    meaning: `weight over weight at rest ${where}`,
    given: (_si, _out, trace) => peak(trace as HingeTrace).loads.loadFactor ?? 1,
  },
  {
    symbol: `e_${p}`,
    kind: "number",
    meaning: `gust ${where}: 1 pushes the arm down, −1 up, 0 none`,
    given: (_si, _out, trace) => Math.sign(gustOf(peak(trace as HingeTrace).loads)),
  },
  { symbol: `L_${p}`, kind: "length", meaning: `length ${where}`, is: `L_r + s_${p}` },
  ...poseSteps(p, where),
  { ...closure(p, `s_${p}`), meaning: `cosine rule ${where}` },
  ...staticSteps(p, where),
]

/** The working of hingeActuator, in order. */
export const hingeActuatorFormulae: readonly Step<Si, HingeActuator, HingeTrace>[] = [
  { symbol: "b", kind: "number", meaning: "sign of the assembly branch", given: ({ assembly }) => (assembly === "clockwise" ? -1 : 1) },
  pullsOnlyStep,
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "D", kind: "length", meaning: "distance hinge–fixed pivot", is: "sqrt((x_b - x_h)^2 + (y_b - y_h)^2)" },
  {
    symbol: "psi",
    kind: "angle",
    meaning: "direction of the fixed pivot less the moving pivot's angle",
    is: "atan2((y_b - y_h) / D, (x_b - x_h) / D) - beta",
  },
  { symbol: "theta_s", meaning: "dead point at the shortest length", is: "psi - 2 * pi * ceil(psi / (2 * pi) - 0.5)" },
  { symbol: "theta_l", meaning: "dead point at the longest length", is: "theta_s + b * pi" },
  { symbol: "L_min", meaning: "shortest length", is: "sqrt(max(abs(D - r) - o, 0 m) * (abs(D - r) + o))" },
  { symbol: "L_max", meaning: "longest length", is: "sqrt((D + r - o) * (D + r + o))" },
  { symbol: "c_d", meaning: "length left to the nearer dead point", is: "min(L_r - L_min, L_max - L_r - S)" },
  { symbol: "L_1", kind: "length", meaning: "retracted length", is: "L_r" },
  ...poseSteps("1", "retracted"),
  { symbol: "L_2", kind: "length", meaning: "extended length", is: "L_r + S" },
  ...poseSteps("2", "extended"),
  { symbol: "sigma", meaning: "swing", is: "abs(theta_2 - theta_1)" },
  { symbol: "tau_min", meaning: "minimum transmission angle, at an end of the stroke", is: "min(tau_1, tau_2)" },
  { symbol: "rho", kind: "length", meaning: "friction radius of the hinge pin", is: "mu * d_h / 2" },
  { symbol: "C_a", kind: "force", meaning: "load of the force across the swing on both bearings", is: "2 * F_a * r_a / s_b" },
  { symbol: "L_c", meaning: "length at the chosen extension", is: "L_r + s_c", when: "has_extension" },
  { symbol: "L_c", meaning: "length at half the stroke", is: "L_r + S / 2", when: "not has_extension" },
  ...poseSteps("c", "at the chosen extension"),
  ...staticSteps("c", "at the chosen extension"),
  ...frictionSteps("c", "at the chosen extension"),
  { symbol: "theta_o", meaning: "mirrored in the line hinge–fixed pivot", is: "2 * theta_s - theta_c" },
  {
    symbol: "F_any",
    meaning: "weights square to the lever arm, springs against",
    is: "(g_n * sqrt(sum(m_w .* r_w .* map(a_w, cos))^2 + sum(m_w .* r_w .* map(a_w, sin))^2) + abs(N_c)) / abs(l_c)",
  },
  { symbol: "H_x", meaning: "hinge force on the arm, outward", is: "-A_c" },
  { symbol: "H_y", meaning: "hinge force on the arm, up", is: "-B_c" },
  { symbol: "H", meaning: "hinge force", is: "sqrt(H_x^2 + H_y^2)" },
  { symbol: "H_b", meaning: "loads of both bearings, at most", is: "sqrt(H^2 + C_a^2)" },
  { symbol: "M_f", meaning: "friction moment of the hinge pin", is: "rho * H_b" },
  { symbol: "F_t", meaning: "side load on the rod", is: "max(abs(E_c), abs(R_c)) * (o + mu * d_a) / L_c" },
  ...peakSteps("h", "at peak force while raising", (trace) => trace.raising),
  ...frictionSteps("h", "at peak force while raising"),
  { symbol: "F_up", meaning: "peak force while raising", is: "b == 1 ? abs(E_h) : abs(R_h)" },
  ...peakSteps("d", "at peak force while lowering", (trace) => trace.lowering),
  ...frictionSteps("d", "at peak force while lowering"),
  { symbol: "F_dn", meaning: "peak force while lowering", is: "b == 1 ? abs(R_d) : abs(E_d)" },
  { symbol: "F_max", meaning: "peak force, raising or lowering", is: "max(F_up, F_dn)" },
  { symbol: "s_p", meaning: "extension at peak force", is: "F_up >= F_dn ? s_h : s_d" },
  { symbol: "theta_p", meaning: "arm angle at peak force", is: "F_up >= F_dn ? theta_h : theta_d" },
  ...peakSteps("q", "at the largest holding force", (trace) => trace.hold),
  { symbol: "F_hold", meaning: "largest holding force", is: "abs(F_q)" },
  {
    symbol: "n_u",
    meaning: "unpowered holding force over the largest needed",
    is: "F_u / F_hold",
    when: "has_holdingForce and F_hold > 0 N",
  },
]
