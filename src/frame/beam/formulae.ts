import type { SiOf, Step } from "../../solver/index.js"
import { conditionSteps } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { sectionSteps } from "../section.js"
import type { BeamExtreme } from "./curve.js"
import { type BeamInput, ownDensity, sideOf } from "./loads.js"
import { deflectionSteps, stressSteps } from "./strength.js"
import type { Beam, BeamTrace } from "./types.js"

type Si = SiOf<BeamInput>
type BeamStep = Step<Si, Beam, BeamTrace>

const nothing = { force: 0, moment: 0, position: 0 }
const orNothing = <T>(list: readonly T[], none: T): readonly T[] => (list.length ? list : [none])
const forcesOf = (si: Si) => orNothing(si.forces, nothing)
const momentsOf = (si: Si) => orNothing(si.moments, nothing)
const spreadsOf = (si: Si) => orNothing(si.distributedLoads, { startLoad: 0, endLoad: 0, start: 0, end: si.length })
const spanOf = (si: Si) => (si.support === "cantilever" ? 0 : (si.span ?? si.length))

/** 1 for each place that lies left of where the extreme of `what` was found, else 0. */
const leftOf = (trace: Partial<BeamTrace>, what: "moment" | "shear", places: readonly number[]): number[] => {
  const { curve, [what]: found } = trace as BeamTrace
  const side = sideOf(curve, what, found)
  return places.map((a) => (a < found.at || (a === found.at && side === 1) ? 1 : 0))
}
const turnsInside = (found: BeamExtreme | undefined) => ((found as BeamExtreme).iterations > 0 ? 1 : 0)

/** The part of x beyond each place, to a power: Macaulay's bracket. */
const beyond = (x: string, places: string, power: number) => `((${x} - ${places}) .* (${places} < ${x})).^${power}`
/** Spread loads integrated `n` times up to x, factored by the length that lies before x; own weight runs the whole length. */
const spreadPart = (x: string, n: number) => {
  const factorial = [1, 1, 2, 6, 24, 120]
  const covered = `(${beyond(x, "s_q", 1)} - ${beyond(x, "e_q", 1)})`
  const terms = (weight: (k: number) => number) =>
    Array.from({ length: n }, (_, k) =>
      [`${weight(k)}`, ...(n - 1 - k ? [beyond(x, "s_q", n - 1 - k)] : []), ...(k ? [beyond(x, "e_q", k)] : [])].join(" .* "),
    ).join(" + ")
  const even = `sum(q_1 .* ${covered} .* (${terms(() => 1)})) / ${factorial[n]}`
  const tilted = `sum(r_q .* ${covered}.^2 .* (${terms((k) => k + 1)})) / ${factorial[n + 1]}`
  return `${even} + ${tilted} + w_o * ${x}^${n} / ${factorial[n]}`
}
/** Support beyond which x lies, to a power. */
const support = (x: string, power: number) => `R_2 * max(${x} - S_b, 0 m)^${power}`

const loadsAt = (x: string) => `sum(P .* ${beyond(x, "a_P", 3)}) / 6 - sum(C .* ${beyond(x, "a_C", 2)}) / 2 + ${spreadPart(x, 4)}`
const deflectionAt = (x: string) =>
  `(k_1 * L * ${x} + c_2 * ${x}^2 / 2 - R_a * ${x}^3 / 6 - ${support(x, 3)} / 6 + ${loadsAt(x)}) / (E * I)`
const slopeAt = (x: string) =>
  `(k_1 * L + c_2 * ${x} - R_a * ${x}^2 / 2 + sum(P .* ${beyond(x, "a_P", 2)}) / 2 - sum(C .* ${beyond(x, "a_C", 1)}) - ${support(x, 2)} / 2 + ${spreadPart(x, 3)}) / (E * I)`
const momentAt = (x: string) =>
  `-(c_2 - R_a * ${x} + sum(P .* ${beyond(x, "a_P", 1)}) - sum(C .* n_C) - ${support(x, 1)} + ${spreadPart(x, 2)})`
const shearAt = (x: string, forces: string, held: string) => `R_a - sum(P .* ${forces}) + R_2 * ${held} - (${spreadPart(x, 1)})`

const loads: BeamStep[] = [
  { symbol: "k_m", meaning: "factor of handling", kind: "number", given: (si) => handlingCases[si.handling].factor },
  {
    symbol: "rho",
    kind: "density",
    meaning: "density, heavy end, 0 where own weight is not counted",
    given: (si) => ownDensity(si),
  },
  {
    symbol: "A_o",
    kind: "area",
    meaning: "area that the weight corresponds to, 0 where unknown",
    given: (_si, _out, { section }) => section?.weightArea ?? 0,
  },
  { symbol: "P_g", kind: "force", meaning: "forces", given: (si) => forcesOf(si).map((p) => p.force) },
  { symbol: "a_P", kind: "length", meaning: "their places", given: (si) => forcesOf(si).map((p) => p.position) },
  { symbol: "C_g", kind: "moment", meaning: "moments", given: (si) => momentsOf(si).map((c) => c.moment) },
  { symbol: "a_C", kind: "length", meaning: "their places", given: (si) => momentsOf(si).map((c) => c.position) },
  { symbol: "q_s", kind: "forcePerLength", meaning: "spread loads at their start", given: (si) => spreadsOf(si).map((s) => s.startLoad) },
  { symbol: "q_e", kind: "forcePerLength", meaning: "spread loads at their end", given: (si) => spreadsOf(si).map((s) => s.endLoad) },
  { symbol: "s_q", kind: "length", meaning: "where they start", given: (si) => spreadsOf(si).map((s) => s.start) },
  { symbol: "e_q", kind: "length", meaning: "where they end", given: (si) => spreadsOf(si).map((s) => s.end) },
  { symbol: "S_b", kind: "length", meaning: "place of the second support, 0 where there is none", given: spanOf },
  { symbol: "P", kind: "force", meaning: "forces as handled", is: "k_m * P_g" },
  { symbol: "C", kind: "moment", meaning: "moments as handled", is: "k_m * C_g" },
  { symbol: "q_1", kind: "forcePerLength", meaning: "spread loads as handled, start", is: "k_m * q_s" },
  { symbol: "q_2", kind: "forcePerLength", meaning: "spread loads as handled, end", is: "k_m * q_e" },
  { symbol: "W_o", meaning: "own weight", is: "rho * A_o * 9.80665 m/s^2 * L" },
  { symbol: "w_o", kind: "forcePerLength", meaning: "own weight per length as handled", is: "k_m * W_o / L" },
  { symbol: "r_q", kind: "pressure", meaning: "rise of the spread loads", is: "(q_2 - q_1) ./ (e_q - s_q)" },
]

const statics: BeamStep[] = [
  { symbol: "F_t", kind: "force", meaning: "whole load", is: "sum(P) + sum((q_1 + q_2) .* (e_q - s_q)) / 2 + w_o * L" },
  {
    symbol: "M_t",
    kind: "moment",
    meaning: "moment of the loads about the start",
    is: "sum(P .* a_P) + sum(C) + sum((q_1 + q_2) .* (e_q - s_q) .* s_q) / 2 + sum((q_1 / 6 + q_2 / 3) .* (e_q - s_q).^2) + w_o * L^2 / 2",
  },
  { symbol: "R_b", meaning: "second support", is: "M_t / S_b", when: 'equalText(support, "simple")' },
  { symbol: "R_2", kind: "force", meaning: "second support", is: "M_t / S_b", when: 'equalText(support, "simple")' },
  { symbol: "R_2", kind: "force", meaning: "no second support", is: "0 * F_t", when: 'equalText(support, "cantilever")' },
  { symbol: "R_a", meaning: "first support or clamp", is: "F_t - R_2" },
  { symbol: "M_0", meaning: "moment at the clamp", is: "-M_t", when: 'equalText(support, "cantilever")' },
  { symbol: "c_2", kind: "moment", meaning: "constant from the clamp", is: "M_t", when: 'equalText(support, "cantilever")' },
  { symbol: "c_2", kind: "moment", meaning: "no moment at a support", is: "0 * M_t", when: 'equalText(support, "simple")' },
  {
    symbol: "k_1",
    kind: "moment",
    meaning: "constant from the clamp: no slope there",
    is: "0 * M_t",
    when: 'equalText(support, "cantilever")',
  },
  {
    symbol: "k_1",
    kind: "moment",
    meaning: "constant from the second support: no deflection there",
    is: `(R_a * S_b^3 / 6 - (${loadsAt("S_b")})) / (S_b * L)`,
    when: 'equalText(support, "simple")',
  },
]

const curve: BeamStep[] = [
  {
    symbol: "n_C",
    kind: "number",
    meaning: "1 for moments left of x_M, else 0",
    given: (si, _, trace) =>
      leftOf(
        trace,
        "moment",
        momentsOf(si).map((c) => c.position),
      ),
  },
  {
    symbol: "n_P",
    kind: "number",
    meaning: "1 for forces left of the maximum shear, else 0",
    given: (si, _, trace) =>
      leftOf(
        trace,
        "shear",
        forcesOf(si).map((p) => p.position),
      ),
  },
  {
    symbol: "n_b",
    kind: "number",
    meaning: "1 for a support left of the maximum shear, else 0",
    given: (si, _, trace) => leftOf(trace, "shear", [spanOf(si)])[0] as number,
  },
  {
    symbol: "x_V",
    kind: "length",
    meaning: "place of the maximum shear force",
    given: (_si, _out, { shear }) => (shear as BeamExtreme).at,
  },
  {
    symbol: "g_M",
    kind: "number",
    meaning: "1 where the moment turns between loads, else 0",
    given: (_si, _out, { moment }) => turnsInside(moment),
  },
  {
    symbol: "g_y",
    kind: "number",
    meaning: "1 where the deflection turns between loads, else 0",
    given: (_si, _out, { sag }) => turnsInside(sag),
  },
  { solved: "x_M", meaning: "place of the maximum moment" },
  { symbol: "M_x", meaning: "maximum moment", is: momentAt("x_M") },
  { symbol: "V_M", kind: "force", meaning: "shear force there", is: shearAt("x_M", "(a_P < x_M)", "(S_b < x_M)") },
  {
    left: "abs(M_x) + g_M * V_M * L",
    right: "abs(M_x) + 0 * x_M * V_M",
    meaning: "no shear force where the moment turns",
  },
  { symbol: "V_x", meaning: "maximum shear force", is: shearAt("x_V", "n_P", "n_b") },
  { solved: "x_y", meaning: "place of the maximum deflection" },
  { symbol: "y_x", kind: "length", meaning: "maximum deflection, soft end of the range", is: deflectionAt("x_y") },
  { symbol: "theta_y", kind: "angle", meaning: "slope there", is: slopeAt("x_y") },
  { left: "abs(y_x) + g_y * theta_y * L", right: "abs(y_x) + 0 * x_y", meaning: "no slope where the deflection turns" },
  { symbol: "y_z", kind: "length", meaning: "the same, stiff end of the range", is: "y_x * E / E_u" },
  ...deflectionSteps<Si, Beam, BeamTrace>(),
  { symbol: "y_e", meaning: "deflection of the end", is: deflectionAt("L") },
  { symbol: "theta_e", meaning: "slope of the end", is: slopeAt("L") },
]

/** The working of a beam. */
export const beamFormulae: readonly BeamStep[] = [
  ...sectionSteps<Si, Beam>((si) => si.section, false, true),
  ...conditionSteps<Si, Beam>(),
  ...loads,
  ...statics,
  ...curve,
  ...stressSteps<Si, Beam, BeamTrace>(),
]
