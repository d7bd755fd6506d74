import type { SiOf, Step } from "../../../solver/index.js"
import type { Counterbalance, CounterbalanceInput } from "./types.js"

const spring = 'not equalText(element, "gas-strut")'
const strut = 'equalText(element, "gas-strut")'
const POSES = 181

/** The working of counterbalance: all 181 poses of the swing as lists. */
export const counterbalanceFormulae: readonly Step<SiOf<CounterbalanceInput>, Counterbalance>[] = [
  { symbol: "k", meaning: "stiffness as given", is: "k_g", when: 'equalText(element, "cord") or has_stiffness' },
  { symbol: "k", meaning: "rate of the helical spring", is: "G * d_w^4 / (8 * D_m^3 * N_a)", when: "has_coil" },
  {
    symbol: "F_i",
    kind: "force",
    meaning: "initial tension, 0 for a cord or strut",
    given: ({ element }) => (element.type === "spring" ? element.preload : 0),
  },
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "A_x", kind: "moment", meaning: "moment of the weights, arm level", is: "g_n * sum(m_w .* r_w .* map(a_w, cos))" },
  { symbol: "A_y", kind: "moment", meaning: "moment of the weights, arm upright", is: "g_n * sum(m_w .* r_w .* map(a_w, sin))" },
  { symbol: "A", kind: "moment", meaning: "their largest moment", is: "sqrt(A_x^2 + A_y^2)" },
  {
    symbol: "alpha",
    kind: "number",
    meaning: "direction of the centre of gravity from the arm",
    is: "A == 0 N m ? 0 : atan2(A_y / A, A_x / A)",
  },
  { symbol: "c", kind: "length", meaning: "fixed end from the hinge", is: "sqrt((x_b - x_h)^2 + (y_b - y_h)^2)" },
  { symbol: "k_i", meaning: "stiffness for perfect balance without free length", is: "A / (r * c)" },
  {
    symbol: "psi",
    kind: "number",
    meaning: "fixed end less its ideal direction",
    is: "atan2((y_b - y_h) / c, (x_b - x_h) / c) - (pi / 2 - lambda - alpha + beta)",
  },
  { symbol: "gamma", meaning: "the same within half a turn", is: "psi - 2 * pi * ceil(psi / (2 * pi) - 0.5)" },
  {
    symbol: "n_p",
    kind: "number",
    meaning: "poses of the swing, from 0 to 1",
    given: () => Array.from({ length: POSES }, (_, i) => i / (POSES - 1)),
  },
  { symbol: "theta_a", kind: "angle", meaning: "arm angles", is: "theta_1 + (theta_2 - theta_1) * n_p" },
  { symbol: "X_a", kind: "length", meaning: "moving end, outward", is: "r * map(theta_a + beta, cos)" },
  { symbol: "Y_a", kind: "length", meaning: "moving end, up", is: "r * map(theta_a + beta, sin)" },
  { symbol: "x_a", kind: "length", meaning: "lengths of the element", is: "map((x_b - x_h - X_a) .^ 2 + (y_b - y_h - Y_a) .^ 2, sqrt)" },
  {
    symbol: "T_a",
    kind: "force",
    meaning: "pull of the spring; slack below its free length",
    is: "map(x_a - x_0, f(t) = (t <= 0 m ? 0 N : F_i + k * t))",
    when: spring,
  },
  {
    symbol: "T_a",
    kind: "force",
    meaning: "pull of the strut, which pushes",
    is: "-F_1 ./ (1 - (1 - 1 / p_1) * (x_1 - x_a) / s_1)",
    when: strut,
  },
  { symbol: "G_a", kind: "moment", meaning: "moments of the weights", is: "A * map(theta_a + alpha + lambda, cos)" },
  {
    symbol: "B_a",
    kind: "moment",
    meaning: "moments of the element",
    is: "T_a .* ((y_b - y_h) * X_a - (x_b - x_h) * Y_a) ./ map(x_a, f(t) = (t == 0 m ? 1 m : t))",
  },
  { symbol: "M_u", meaning: "largest moment of the weights", is: "max(map(G_a, abs))" },
  { symbol: "M_a", meaning: "largest unbalanced moment", is: "max(map(G_a - B_a, abs))" },
  { symbol: "eta", meaning: "share balanced", is: "M_u == 0 N m ? 0 : 1 - M_a / M_u" },
  { solved: "theta_r", meaning: "pose of the largest unbalanced moment" },
  { symbol: "X_r", kind: "length", meaning: "moving end there, outward", is: "r * cos(theta_r + beta)" },
  { symbol: "Y_r", kind: "length", meaning: "moving end there, up", is: "r * sin(theta_r + beta)" },
  { symbol: "x_r", kind: "length", meaning: "length there", is: "sqrt((x_b - x_h - X_r)^2 + (y_b - y_h - Y_r)^2)" },
  { symbol: "T_r", kind: "force", meaning: "pull there", is: "x_r <= x_0 ? 0 N : F_i + k * (x_r - x_0)", when: spring },
  { symbol: "T_r", kind: "force", meaning: "pull there", is: "-F_1 / (1 - (1 - 1 / p_1) * (x_1 - x_r) / s_1)", when: strut },
  {
    symbol: "M_r",
    meaning: "unbalanced moment at that arm angle",
    is: "A * cos(theta_r + alpha + lambda) - (x_r == 0 m ? 0 N m : T_r * ((y_b - y_h) * X_r - (x_b - x_h) * Y_r) / x_r)",
  },
  {
    left: "A + abs(A * cos(theta_r + alpha + lambda) - M_r) + M_a",
    right: "A + abs(A * cos(theta_r + alpha + lambda) - M_r) + abs(M_r)",
    meaning: "the largest unbalanced moment is the one at θ_r",
  },
  {
    symbol: "d_l",
    kind: "number",
    meaning: "centre of gravity off level at each pose",
    is: "map(theta_a + alpha + lambda, f(t) = abs(t - 2 * pi * round(t / (2 * pi))))",
  },
  {
    symbol: "M_l",
    meaning: "largest unbalanced moment at the worst lean",
    is: "max(map(B_a, d_l, f(b, t) = max(abs(A * cos(max(0, t - Lambda)) - b), abs(A * cos(min(pi, t + Lambda)) - b))))",
  },
  { symbol: "T_max", meaning: "maximum force", is: "max(map(T_a, abs))" },
  {
    symbol: "W",
    meaning: "stored energy",
    is: "max(map(x_a - x_0, f(t) = (t <= 0 m ? 0 J : F_i * t + k * t^2 / 2)))",
    when: spring,
  },
  { symbol: "W", meaning: "stored energy", is: "F_1 * max(x_1 - x_a)", when: `${strut} and p_1 == 1` },
  {
    symbol: "W",
    meaning: "stored energy: the area under the strut's force",
    is: "-F_1 * s_1 / (1 - 1 / p_1) * log1p(-(1 - 1 / p_1) * max(x_1 - x_a) / s_1)",
    when: `${strut} and p_1 > 1`,
  },
]
