// The working of the best linkage: its pins at the poses, its lengths, and the minimum transmission angle on the way.
import type { Step } from "../../solver/index.js"
import { cosineRule, nortonLoop, nortonSynthesis } from "../sources.js"
import type { FourBarSynthesis, Si, SynthesisedFourBar } from "./types.js"

const given = (symbol: string, meaning: string, of: (best: SynthesisedFourBar) => number): Step<Si, FourBarSynthesis> => ({
  symbol,
  kind: "length",
  meaning,
  given: (_, out) => of(out.solutions[0] as SynthesisedFourBar),
})

const distances = "map((X_# - x_#) .^ 2 + (Y_# - y_#) .^ 2, sqrt)"

/** The same steps for the input link A and the output link B. */
const link = (name: "A" | "B", length: "a" | "c", which: string): Step<Si, FourBarSynthesis>[] => [
  {
    symbol: `X_${name}`,
    kind: "length",
    meaning: `pin of the ${which} link at the poses, x`,
    is: `x_p + u_${name} * map(alpha_p, cos) - v_${name} * map(alpha_p, sin)`,
  },
  {
    symbol: `Y_${name}`,
    kind: "length",
    meaning: `pin of the ${which} link at the poses, y`,
    is: `y_p + u_${name} * map(alpha_p, sin) + v_${name} * map(alpha_p, cos)`,
  },
  { symbol: length, meaning: `${which} link, at the first pose`, is: `sqrt((X_${name}[1] - x_${name})^2 + (Y_${name}[1] - y_${name})^2)` },
  {
    left: `max(${distances.replaceAll("#", name)})`,
    right: length,
    meaning: `the ${which} link is no longer at any other pose`,
    source: nortonSynthesis,
  },
  {
    left: `min(${distances.replaceAll("#", name)})`,
    right: length,
    meaning: `the ${which} link is no shorter at any other pose`,
    source: nortonSynthesis,
  },
]

const reach = (angle: string) => `sqrt((d - a)^2 + 4 * d * a * sin((${angle}) / 2)^2)`
const transmission = (f: string) =>
  `atan2(sqrt(((b + c + ${f}) * (b + c - ${f}) * (${f} + b - c) * (${f} - b + c)) / m^4), abs(b^2 + c^2 - ${f}^2) / m^2)`

export const synthesisFormulae = (): readonly Step<Si, FourBarSynthesis>[] => [
  given("x_A", "fixed pivot of the input link, x", (best) => best.inputPivot.x),
  given("y_A", "fixed pivot of the input link, y", (best) => best.inputPivot.y),
  given("x_B", "fixed pivot of the output link, x", (best) => best.outputPivot.x),
  given("y_B", "fixed pivot of the output link, y", (best) => best.outputPivot.y),
  given("u_A", "pin of the input link along the coupler's x axis", (best) => best.inputPin.x),
  given("v_A", "pin of the input link along the coupler's y axis", (best) => best.inputPin.y),
  given("u_B", "pin of the output link along the coupler's x axis", (best) => best.outputPin.x),
  given("v_B", "pin of the output link along the coupler's y axis", (best) => best.outputPin.y),
  ...link("A", "a", "input"),
  ...link("B", "c", "output"),
  { symbol: "d", meaning: "distance of the fixed pivots", is: "sqrt((x_B - x_A)^2 + (y_B - y_A)^2)" },
  { symbol: "b", meaning: "coupler, pin to pin", is: "sqrt((u_B - u_A)^2 + (v_B - v_A)^2)" },
  { symbol: "L_s", meaning: "sum of the four lengths", is: "a + b + c + d" },
  {
    symbol: "theta_i",
    kind: "number",
    meaning: "angles of the input link at the poses, from the line of the fixed pivots, running on",
    given: (_, out) => (out.solutions[0] as SynthesisedFourBar).inputAngles,
  },
  { symbol: "n_p", kind: "number", meaning: "poses", given: (si) => si.poses.length },
  {
    left: "d * a + max(abs((x_B - x_A) * (X_A - x_A) + (y_B - y_A) * (Y_A - y_A) - d * a * map(theta_i, cos)))",
    right: "d * a",
    meaning: "the input link stands at these angles",
    source: nortonLoop,
  },
  { symbol: "Delta", meaning: "turn of the input link", is: "theta_i[n_p] - theta_i[1]" },
  { symbol: "theta_l", kind: "number", meaning: "lower end of the turn", is: "min(theta_i[1], theta_i[n_p])" },
  { symbol: "theta_h", kind: "number", meaning: "upper end of the turn", is: "max(theta_i[1], theta_i[n_p])" },
  {
    symbol: "f_l",
    kind: "length",
    meaning: "minimum distance from input pin to output pivot on the way",
    is: `ceil(theta_l / (2 * pi)) <= theta_h / (2 * pi) ? abs(d - a) : min(${reach("theta_l")}, ${reach("theta_h")})`,
    source: cosineRule,
  },
  {
    symbol: "f_h",
    kind: "length",
    meaning: "maximum distance from input pin to output pivot on the way",
    is: `ceil((theta_l - pi) / (2 * pi)) <= (theta_h - pi) / (2 * pi) ? d + a : max(${reach("theta_l")}, ${reach("theta_h")})`,
    source: cosineRule,
  },
  {
    symbol: "mu",
    meaning: "minimum transmission angle on the way",
    is: `min(${transmission("f_l")}, ${transmission("f_h")})`,
    source: cosineRule,
  },
]
