import type { SiOf, Step } from "../../../solver/index.js"
import { pullsOnlyStep, springSteps } from "../spring-steps.js"
import type { WorstLoad } from "./envelope.js"
import type { PlaceTrace } from "./kernel.js"
import type { PlaceActuator, PlaceActuatorInput } from "./types.js"

type PlaceStep = Step<SiOf<PlaceActuatorInput>, PlaceActuator, PlaceTrace>

const poseSteps = (p: string, where: string, D = "D", r = "r"): PlaceStep[] => [
  {
    symbol: `phi_${p}`,
    kind: "angle",
    meaning: `angle at the hinge between the pivots ${where}`,
    is: `2 * atan(sqrt((L_${p}^2 - (${D} - ${r})^2) / ((${D} + ${r})^2 - L_${p}^2)))`,
  },
  { symbol: `lever_${p}`, kind: "length", meaning: `lever arm ${where}`, is: `${D} * ${r} * sin(phi_${p}) / L_${p}` },
]

/** Steps from an arm angle, and the load that is worst there, to the moment that holds it. */
const loadSteps = (p: string, where: string, worst: (trace: PlaceTrace) => WorstLoad): PlaceStep[] => [
  {
    symbol: `k_${p}`,
    kind: "number",
    meaning: `weight over weight at rest ${where}`,
    given: (_si, _out, trace) => worst(trace as PlaceTrace).factor,
  },
  {
    symbol: `e_${p}`,
    kind: "number",
    meaning: `gust ${where}: 1 pushes the arm down, −1 up`,
    given: (_si, _out, trace) => worst(trace as PlaceTrace).gust,
  },
  {
    symbol: `j_${p}`,
    kind: "number",
    meaning: `masses ${where}: 0 the first, 1 those at other times`,
    given: (_si, _out, trace) => worst(trace as PlaceTrace).set,
  },
  { symbol: `lambda_${p}`, kind: "angle", meaning: `lean ${where}`, given: (_si, _out, trace) => worst(trace as PlaceTrace).lean },
  {
    symbol: `M_${p}`,
    kind: "moment",
    meaning: `moment of the weights ${where}`,
    is: `k_${p} * g_n * sum(m_w .* r_w .* map(theta_${p} + a_w + lambda_${p}, cos))`,
    when: `j_${p} == 0`,
  },
  {
    symbol: `M_${p}`,
    kind: "moment",
    meaning: `moment of the weights ${where}`,
    is: `k_${p} * g_n * sum(m_o .* r_o .* map(theta_${p} + a_o + lambda_${p}, cos))`,
    when: `j_${p} == 1`,
  },
  ...springSteps(p, where),
]

const transmission = (p: string) => `atan2(D * sin(phi_${p}) / D, abs(r - D * cos(phi_${p})) / D)`

const force = 'equalText(objective, "min-force")'
const swing = 'equalText(objective, "max-swing")'

/** Lever arm of a triangle, as text. */
const leverText = (D: string, r: string, L: string) => `sqrt(((${D} + ${r})^2 - ${L}^2) * (${L}^2 - (${D} - ${r})^2)) / (2 * ${L})`

/** Fall of the angle at the hinge with the square of a pivot's distance, as text. */
const slope = (own: string, other: string, p: string) => `(${own}^2 - ${other}^2 + L_${p}^2) / (4 * ${own}^3 * ${other} * sin(phi_${p}))`

/** The pivots nearest and farthest, the lengths shortest and longest: where the worst lever arm lies. */
const corners = ["D - d_p", "D + d_p"].flatMap((D) =>
  ["r - d_p", "r + d_p"].flatMap((r) => ["(L_1 - d_l)", "(L_2 + d_l)"].map((L) => ({ D: `(${D})`, r: `(${r})`, L }))),
)

/** The working of placeActuator: the search is taken from the solver, what it found is worked out. */
export const placeActuatorFormulae: readonly PlaceStep[] = [
  pullsOnlyStep,
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
  { solved: "s_p", meaning: "extension at peak force, by search over the stroke" },
  { symbol: "L_p", kind: "length", meaning: "length at peak force", is: "L_r + s_p" },
  ...poseSteps("p", "at peak force"),
  { left: "(L_r + s_p)^2 + 2 * D * r * cos(phi_p)", right: "D^2 + r^2", meaning: "cosine rule at peak force" },
  { symbol: "theta_p", meaning: "arm angle at peak force", is: "theta_l + (b == 1 ? phi_p - phi_1 : phi_2 - phi_p)" },
  ...loadSteps("p", "at peak force", (trace) => trace.drawn),
  { symbol: "F_max", meaning: "peak force under the worst load", is: "abs(M_p + e_p * F_g * r_g - N_p) / lever_p" },
  { solved: "D_v", meaning: "fixed pivot from the hinge in the worst build, by branch and bound within the tolerances" },
  { solved: "r_v", meaning: "moving pivot from the hinge in the worst build, likewise" },
  { solved: "L_v", meaning: "length at its peak force, likewise" },
  ...poseSteps("v", "in the worst build", "D_v", "r_v"),
  { left: "L_v^2 + 2 * D_v * r_v * cos(phi_v)", right: "D_v^2 + r_v^2", meaning: "cosine rule in the worst build" },
  {
    symbol: "delta_v",
    kind: "angle",
    meaning: "turn of the arm there by pivots off across their lines, at most asin(d_p/D) + asin(d_p/r) either way",
    given: (_si, _out, trace) => (trace as PlaceTrace).turned,
  },
  { symbol: "theta_v", meaning: "arm angle there", is: "theta_l + (b == 1 ? phi_v - phi_1 : phi_2 - phi_v) + delta_v" },
  ...loadSteps("v", "in the worst build", (trace) => trace.worst),
  {
    symbol: "D_u",
    kind: "length",
    meaning: "fixed pivot from the hinge in the corner of the tolerances with the smallest swing",
    given: (_si, _out, trace) => (trace as PlaceTrace).tight.distance,
  },
  {
    symbol: "r_u",
    kind: "length",
    meaning: "moving pivot from the hinge in that corner",
    given: (_si, _out, trace) => (trace as PlaceTrace).tight.radius,
  },
  { symbol: "L_s", kind: "length", meaning: "retracted length at its longest", is: "L_1 + d_l" },
  ...poseSteps("s", "in that corner, retracted", "D_u", "r_u"),
  { symbol: "L_t", kind: "length", meaning: "extended length at its shortest", is: "L_2 - d_l" },
  ...poseSteps("t", "in that corner, extended", "D_u", "r_u"),
  {
    symbol: "e_D",
    kind: "number",
    meaning: "what the tangent there falls by on the way to the other fixed pivot",
    is: `min(0, (${slope("D_u", "r_u", "s")} - ${slope("D_u", "r_u", "t")}) * ((2 * D - D_u)^2 - D_u^2))`,
  },
  {
    symbol: "e_r",
    kind: "number",
    meaning: "what the tangent there falls by on the way to the other moving pivot",
    is: `min(0, (${slope("r_u", "D_u", "s")} - ${slope("r_u", "D_u", "t")}) * ((2 * r - r_u)^2 - r_u^2))`,
  },
  {
    symbol: "sigma_v",
    meaning: "a swing that no build stays below: convex in D² and r², it lies above its tangent in that corner",
    is: "max(0, phi_t - phi_s + e_D + e_r)",
  },
  { symbol: "l_v", meaning: "minimum lever arm of any build", is: `min(${corners.map(({ D, r, L }) => leverText(D, r, L)).join(", ")})` },
  {
    symbol: "tau_v",
    meaning: "minimum transmission angle of any build",
    is: `asin(min(1, ${corners.map(({ D, r, L }) => `${leverText(D, r, L)} / ${r}`).join(", ")}))`,
  },
  { symbol: "c_v", meaning: "length left to the nearer dead point in any build", is: "c - 2 * d_p - d_l" },
  { symbol: "F_v", meaning: "peak force of the worst build", is: "abs(M_v + e_v * F_g * r_g - N_v) / lever_v" },
  { symbol: "n", meaning: "force rating over peak force, worst build", is: "F_r / F_v", when: "F_v > 0 N" },
  { solved: "F_b", meaning: "no placement needs less, proved by the search", when: force },
  { symbol: "g_a", meaning: "gap to the proven optimum", is: "F_v == 0 N ? 0 : 1 - F_b / F_v", when: force },
  { left: "F_v * (1 - g_a)", right: "F_b", meaning: "best, gap and bound belong together", when: force },
  { solved: "sigma_b", meaning: "no placement swings more, proved by the search", when: swing },
  { symbol: "g_a", meaning: "gap to the proven optimum", is: "sigma_b / sigma_v - 1", when: swing },
  { left: "sigma_v * (1 + g_a)", right: "sigma_b", meaning: "best, gap and bound belong together", when: swing },
]
