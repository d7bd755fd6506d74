import type { SiOf, Step } from "../../solver/index.js"
import type { BeamProblem } from "../beam/curve.js"
import { gravity, ownDensity } from "../beam/loads.js"
import { deflectionSteps, stressSteps } from "../beam/strength.js"
import { conditionSteps } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { sectionSteps } from "../section.js"
import type { ContinuousBeam, ContinuousBeamInput, ContinuousBeamTrace, Found } from "./types.js"

type Si = SiOf<ContinuousBeamInput>
type BeamStep = Step<Si, ContinuousBeam, ContinuousBeamTrace>
type Which = "moment" | "shear" | "sag" | "stiffSag"

const orNothing = <T>(list: readonly T[], none: T): readonly T[] => (list.length ? list : [none])
const nothing = { force: 0, moment: 0, position: 0 }
/** Loads of the stretch in which an extreme lies, its end moments apart. */
const stretchOf = (trace: Partial<ContinuousBeamTrace>, which: Which) => (trace[which] as Found).stretch
const forcesOf = (s: BeamProblem) => orNothing(s.forces, nothing)
const couplesOf = (s: BeamProblem) => orNothing(s.couples.slice(1, -1), nothing)
const spreadsOf = (s: BeamProblem) => orNothing(s.distributedLoads, { startLoad: 0, endLoad: 0, start: 0, end: s.length })

/** The part of x beyond each place, to a power: Macaulay's bracket. */
const beyond = (x: string, places: string, power: number) => `((${x} - ${places}) .* (${places} < ${x})).^${power}`

/** What a stretch is loaded by, held at and bent to, with symbols that end in `t`; `what` it is asked for. */
function stretchSteps(which: Which, t: string, what: string): BeamStep[] {
  const given = (symbol: string, kind: "length" | "force" | "moment" | "forcePerLength" | "number", meaning: string) => ({
    symbol: `${symbol}_${t}`,
    kind,
    meaning: `${meaning}, ${what}`,
  })
  const from =
    (read: (s: BeamProblem) => number | readonly number[]) => (_si: Si, _out: ContinuousBeam, trace: Partial<ContinuousBeamTrace>) =>
      read(stretchOf(trace, which))
  const counts =
    (places: (s: BeamProblem) => readonly { readonly position: number }[]) =>
    (_si: Si, _out: ContinuousBeam, trace: Partial<ContinuousBeamTrace>) => {
      const { extreme, side, stretch } = trace[which] as Found
      return places(stretch).map(({ position }) => (position < extreme.at || (position === extreme.at && side === 1) ? 1 : 0))
    }
  return [
    { ...given("o", "length", "start of the stretch"), given: (_si, _out, trace) => (trace[which] as Found).start },
    { ...given("l", "length", "length of the stretch"), given: from((s) => s.length) },
    { ...given("P", "force", "forces on it as handled"), given: from((s) => forcesOf(s).map((p) => p.force)) },
    { ...given("a", "length", "their places on it"), given: from((s) => forcesOf(s).map((p) => p.position)) },
    { ...given("n", "number", "1 for those left of the place asked for, else 0"), given: counts(forcesOf) },
    { ...given("C", "moment", "moments on it as handled"), given: from((s) => couplesOf(s).map((c) => c.moment)) },
    { ...given("b", "length", "their places on it"), given: from((s) => couplesOf(s).map((c) => c.position)) },
    { ...given("m", "number", "1 for those left of the place asked for, else 0"), given: counts(couplesOf) },
    { ...given("u", "forcePerLength", "spread loads at their start"), given: from((s) => spreadsOf(s).map((q) => q.startLoad)) },
    { ...given("w", "forcePerLength", "spread loads at their end"), given: from((s) => spreadsOf(s).map((q) => q.endLoad)) },
    { ...given("s", "length", "where they start"), given: from((s) => spreadsOf(s).map((q) => q.start)) },
    { ...given("e", "length", "where they end"), given: from((s) => spreadsOf(s).map((q) => q.end)) },
    { ...given("A", "moment", "bending moment at its start"), given: from((s) => (s.couples[0] as { moment: number }).moment) },
    { ...given("B", "moment", "bending moment at its end"), given: from((s) => -(s.couples.at(-1) as { moment: number }).moment) },
    {
      symbol: `R_${t}`,
      kind: "force",
      meaning: `force that holds its start up, ${what}`,
      is: `(sum(P_${t} .* (l_${t} - a_${t})) - sum(C_${t}) + sum((u_${t} + w_${t}) .* (e_${t} - s_${t}) .* (l_${t} - s_${t})) / 2 - sum((u_${t} / 6 + w_${t} / 3) .* (e_${t} - s_${t}).^2) + B_${t} - A_${t}) / l_${t}`,
    },
  ]
}

/** Spread loads integrated `n` times up to x, factored by the length that lies before x. */
const spreadPart = (x: string, t: string, n: number) => {
  const factorial = [1, 1, 2, 6, 24, 120]
  const covered = `(${beyond(x, `s_${t}`, 1)} - ${beyond(x, `e_${t}`, 1)})`
  const terms = (weight: (k: number) => number) =>
    Array.from({ length: n }, (_, k) =>
      [`${weight(k)}`, ...(n - 1 - k ? [beyond(x, `s_${t}`, n - 1 - k)] : []), ...(k ? [beyond(x, `e_${t}`, k)] : [])].join(" .* "),
    ).join(" + ")
  const even = `sum(u_${t} .* ${covered} .* (${terms(() => 1)})) / ${factorial[n]}`
  const tilted = `sum((w_${t} - u_${t}) ./ (e_${t} - s_${t}) .* ${covered}.^2 .* (${terms((k) => k + 1)})) / ${factorial[n + 1]}`
  return `${even} + ${tilted}`
}
const momentAt = (x: string, t: string) =>
  `A_${t} + R_${t} * ${x} - sum(P_${t} .* ${beyond(x, `a_${t}`, 1)}) + sum(C_${t} .* m_${t}) - (${spreadPart(x, t, 2)})`
const shearAt = (x: string, t: string, counted = `n_${t}`) => `R_${t} - sum(P_${t} .* ${counted}) - (${spreadPart(x, t, 1)})`
/** E·I times the deflection, less what the straight line between its ends gives. */
const bentAt = (x: string, t: string) =>
  `-A_${t} * ${x}^2 / 2 - R_${t} * ${x}^3 / 6 + sum(P_${t} .* ${beyond(x, `a_${t}`, 3)}) / 6 - sum(C_${t} .* ${beyond(x, `b_${t}`, 2)}) / 2 + ${spreadPart(x, t, 4)}`
const sagSteps = (t: string, modulus: string, place: string, symbol: string, meaning: string): BeamStep[] => [
  {
    symbol,
    kind: "length",
    meaning,
    is: `f_${t} + (g_${t} - f_${t}) * ${place} / l_${t} + (${bentAt(place, t)} - (${bentAt(`l_${t}`, t)}) * ${place} / l_${t}) / (${modulus} * I)`,
  },
]
const slopeAt = (x: string, t: string) =>
  `(g_${t} - f_${t}) / l_${t} + (-A_${t} * ${x} - R_${t} * ${x}^2 / 2 + sum(P_${t} .* ${beyond(x, `a_${t}`, 2)}) / 2 - sum(C_${t} .* ${beyond(x, `b_${t}`, 1)}) + ${spreadPart(x, t, 3)} - (${bentAt(`l_${t}`, t)}) / l_${t}) / (E * I)`
const turns = (symbol: string, which: Which, meaning: string): BeamStep => ({
  symbol,
  kind: "number",
  meaning,
  given: (_si, _out, trace) => ((trace[which] as Found).extreme.iterations > 0 ? 1 : 0),
})
const settledSteps = (which: Which, t: string, what: string): BeamStep[] =>
  ([0, 1] as const).map((k) => ({
    symbol: `${k === 0 ? "f" : "g"}_${t}`,
    kind: "length" as const,
    meaning: `deflection of its ${k === 0 ? "start" : "end"}, ${what}`,
    given: (_si: Si, _out: ContinuousBeam, trace: Partial<ContinuousBeamTrace>) =>
      (stretchOf(trace, which).settled as readonly [number, number])[k],
  }))

const reactionsOf = (out: ContinuousBeam) => out.places.filter((p) => p.reaction !== null)
const balance: BeamStep[] = [
  { symbol: "k_m", meaning: "factor of handling", kind: "number", given: (si) => handlingCases[si.handling].factor },
  { symbol: "rho", kind: "density", meaning: "density, heavy end, 0 where own weight is not counted", given: (si) => ownDensity(si) },
  {
    symbol: "A_o",
    kind: "area",
    meaning: "area that the weight corresponds to, 0 where unknown",
    given: (_si, _out, { section }) => section?.weightArea ?? 0,
  },
  { symbol: "W_o", meaning: "own weight", is: `rho * A_o * ${gravity} m/s^2 * L` },
  { symbol: "P_g", kind: "force", meaning: "forces", given: (si) => orNothing(si.forces, nothing).map((p) => p.force) },
  { symbol: "a_P", kind: "length", meaning: "their places", given: (si) => orNothing(si.forces, nothing).map((p) => p.position) },
  { symbol: "C_g", kind: "moment", meaning: "moments", given: (si) => orNothing(si.moments, nothing).map((c) => c.moment) },
  {
    symbol: "Q_g",
    kind: "force",
    meaning: "spread loads",
    given: (si) => [0, ...si.distributedLoads.map((q) => ((q.startLoad + q.endLoad) / 2) * (q.end - q.start))],
  },
  {
    symbol: "H_g",
    kind: "moment",
    meaning: "their moments about the start",
    given: (si) => [
      0,
      ...si.distributedLoads.map(
        (q) => ((q.startLoad + q.endLoad) / 2) * (q.end - q.start) * q.start + (q.startLoad / 6 + q.endLoad / 3) * (q.end - q.start) ** 2,
      ),
    ],
  },
  { symbol: "R_i", kind: "force", meaning: "reactions", given: (_si, out) => reactionsOf(out).map((p) => p.reaction as number) },
  { symbol: "x_i", kind: "length", meaning: "their places", given: (_si, out) => reactionsOf(out).map((p) => p.position) },
  {
    symbol: "N_i",
    kind: "moment",
    meaning: "moments of the supports",
    given: (_si, out) => [0, ...out.places.map((p) => p.holdingMoment ?? 0)],
  },
  {
    symbol: "F_s",
    kind: "force",
    meaning: "size of the loads",
    is: "k_m * (sum(abs(P_g)) + sum(abs(Q_g)) + sum(abs(C_g)) / L + W_o) + sum(abs(R_i))",
  },
  {
    left: "F_s + sum(R_i)",
    right: "F_s + k_m * (sum(P_g) + sum(Q_g) + W_o)",
    meaning: "the supports carry the loads",
  },
  {
    left: "F_s * L + sum(abs(N_i)) + sum(R_i .* x_i) - sum(N_i)",
    right: "F_s * L + sum(abs(N_i)) + k_m * (sum(P_g .* a_P) + sum(C_g) + sum(H_g) + W_o * L / 2)",
    meaning: "and keep them from turning about the start",
  },
]

const answers: BeamStep[] = [
  ...stretchSteps("moment", "M", "where the moment is largest"),
  { solved: "x_M", meaning: "place of the maximum moment" },
  { symbol: "M_x", meaning: "maximum moment", is: momentAt("(x_M - o_M)", "M") },
  turns("g_n", "moment", "1 where the moment turns between loads, else 0"),
  { symbol: "V_M", kind: "force", meaning: "shear force there", is: shearAt("(x_M - o_M)", "M", "(a_M < (x_M - o_M))") },
  { left: "abs(M_x) + g_n * V_M * L", right: "abs(M_x) + 0 * x_M * V_M", meaning: "no shear force where the moment turns" },
  ...stretchSteps("shear", "V", "where the shear force is largest"),
  {
    symbol: "x_V",
    kind: "length",
    meaning: "place on it of the maximum shear force",
    given: (_si, _out, { shear }) => (shear as Found).extreme.at,
  },
  { symbol: "V_x", meaning: "maximum shear force", is: shearAt("x_V", "V") },
  ...stretchSteps("sag", "y", "where the deflection is largest"),
  ...settledSteps("sag", "y", "where the deflection is largest"),
  { solved: "x_y", meaning: "place of the maximum deflection" },
  ...sagSteps("y", "E", "(x_y - o_y)", "y_x", "maximum deflection, soft end of the range"),
  turns("g_s", "sag", "1 where the deflection turns between loads, else 0"),
  { symbol: "theta_y", kind: "angle", meaning: "slope there", is: slopeAt("(x_y - o_y)", "y") },
  { left: "abs(y_x) + g_s * theta_y * L", right: "abs(y_x) + 0 * x_y", meaning: "no slope where the deflection turns" },
  ...stretchSteps("stiffSag", "z", "where it is largest at the stiff end of the range"),
  ...settledSteps("stiffSag", "z", "where it is largest at the stiff end of the range"),
  {
    symbol: "x_z",
    kind: "length",
    meaning: "place on it of the maximum deflection, stiff end of the range",
    given: (_si, _out, { stiffSag }) => (stiffSag as Found).extreme.at,
  },
  ...sagSteps("z", "E_u", "x_z", "y_z", "maximum deflection, stiff end of the range"),
  ...deflectionSteps<Si, ContinuousBeam, ContinuousBeamTrace>(),
  ...stressSteps<Si, ContinuousBeam, ContinuousBeamTrace>(),
]

/** The working of a beam on several supports. */
export const continuousBeamFormulae: readonly BeamStep[] = [
  ...sectionSteps<Si, ContinuousBeam>((si) => si.section, false, true),
  ...conditionSteps<Si, ContinuousBeam>(),
  ...balance,
  ...answers,
]
