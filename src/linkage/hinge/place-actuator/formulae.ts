import type { Formula, SiOf, Step } from "../../../solver/index.js"
import type { PlaceActuator, PlaceActuatorInput } from "./types.js"

const poseSteps = (p: string, where: string): Formula[] => [
  {
    symbol: `phi_${p}`,
    kind: "angle",
    meaning: `angle at the hinge between the pivots ${where}`,
    is: `2 * atan(sqrt((L_${p}^2 - (D - r)^2) / ((D + r)^2 - L_${p}^2)))`,
  },
  { symbol: `lever_${p}`, kind: "length", meaning: `lever arm ${where}`, is: `D * r * sin(phi_${p}) / L_${p}` },
]

const transmission = (p: string) => `atan2(D * sin(phi_${p}) / D, abs(r - D * cos(phi_${p})) / D)`

const force = 'equalText(objective, "min-force")'
const swing = 'equalText(objective, "max-swing")'

/** The working of placeActuator: the search is taken from the solver, what it found is worked out. */
export const placeActuatorFormulae: readonly Step<SiOf<PlaceActuatorInput>, PlaceActuator>[] = [
  { solved: "x_b", meaning: "fixed pivot outward, by branch and bound" },
  { solved: "y_b", meaning: "fixed pivot up, by branch and bound" },
  { solved: "x_p", meaning: "moving pivot along the arm, by branch and bound" },
  { solved: "y_p", meaning: "moving pivot to the left of the arm, by branch and bound" },
  {
    symbol: "b",
    kind: "number",
    meaning: "1 raised by extending, −1 by retracting",
    given: (_, out) => (out.raisedBy === "extending" ? 1 : -1),
  },
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "D", meaning: "fixed pivot from the hinge", is: "sqrt((x_b - x_h)^2 + (y_b - y_h)^2)" },
  { symbol: "r", meaning: "moving pivot from the hinge", is: "sqrt(x_p^2 + y_p^2)" },
  { symbol: "beta", meaning: "angle from the arm to the moving pivot", is: "atan2(y_p / r, x_p / r)" },
  { symbol: "L_1", kind: "length", meaning: "retracted length", is: "L_r" },
  ...poseSteps("1", "retracted"),
  { symbol: "L_2", kind: "length", meaning: "extended length", is: "L_r + S" },
  ...poseSteps("2", "extended"),
  {
    left: "(x_b - x_h)^2 + (y_b - y_h)^2 + x_p^2 + y_p^2",
    right: "L_r^2 + 2 * D * r * cos(phi_1)",
    meaning: "cosine rule for the pivots found",
  },
  { symbol: "sigma", meaning: "swing", is: "phi_2 - phi_1" },
  {
    symbol: "theta_0",
    kind: "angle",
    meaning: "low end of the swing, up to whole turns",
    is: "atan2((y_b - y_h) / D, (x_b - x_h) / D) - beta + (b == 1 ? phi_1 : -phi_2)",
  },
  {
    symbol: "theta_l",
    meaning: "low end of the swing, in the turn asked for",
    is: "theta_0 + 2 * pi * round(((t_1 + t_2) / 2 - theta_0) / (2 * pi))",
  },
  { symbol: "theta_h", meaning: "high end of the swing", is: "theta_l + sigma" },
  { symbol: "l_min", meaning: "minimum lever arm, at an end of the stroke", is: "min(lever_1, lever_2)" },
  {
    symbol: "tau_min",
    meaning: "minimum transmission angle, at an end of the stroke",
    is: `min(${transmission("1")}, ${transmission("2")})`,
  },
  { symbol: "c", meaning: "length left to the nearer dead point", is: "min(L_r - abs(D - r), D + r - L_2)" },
  { symbol: "A_x", kind: "moment", meaning: "moment of the weights, arm level", is: "g_n * sum(m_w .* r_w .* map(a_w, cos))" },
  { symbol: "A_y", kind: "moment", meaning: "moment of the weights, arm upright", is: "g_n * sum(m_w .* r_w .* map(a_w, sin))" },
  { symbol: "A", kind: "moment", meaning: "their largest moment", is: "sqrt(A_x^2 + A_y^2)" },
  { symbol: "s_0", kind: "number", meaning: "direction of the centre of gravity, with the lean", is: "atan2(A_y / A, A_x / A) + lambda" },
  { solved: "s_p", meaning: "extension at peak force, by search over the stroke" },
  { symbol: "L_p", kind: "length", meaning: "length at peak force", is: "L_r + s_p" },
  ...poseSteps("p", "at peak force"),
  { left: "(L_r + s_p)^2 + 2 * D * r * cos(phi_p)", right: "D^2 + r^2", meaning: "cosine rule at peak force" },
  { symbol: "theta_p", meaning: "arm angle at peak force", is: "theta_l + (b == 1 ? phi_p - phi_1 : phi_2 - phi_p)" },
  {
    symbol: "delta",
    kind: "angle",
    meaning: "centre of gravity off level at peak force",
    is: "abs(theta_p + s_0 - pi * round((theta_p + s_0) / pi))",
  },
  { symbol: "F_max", meaning: "peak force at the worst lean", is: "A * cos(max(0, delta - Lambda)) / lever_p" },
  { symbol: "n", meaning: "force rating over peak force", is: "F_r / F_max" },
  { solved: "F_b", meaning: "no placement needs less, proved by the search", when: force },
  { symbol: "g_a", meaning: "gap to the proven optimum", is: "1 - F_b / F_max", when: force },
  { left: "F_max * (1 - g_a)", right: "F_b", meaning: "best, gap and bound belong together", when: force },
  { solved: "sigma_b", meaning: "no placement swings more, proved by the search", when: swing },
  { symbol: "g_a", meaning: "gap to the proven optimum", is: "sigma_b / sigma - 1", when: swing },
  { left: "sigma * (1 + g_a)", right: "sigma_b", meaning: "best, gap and bound belong together", when: swing },
]
