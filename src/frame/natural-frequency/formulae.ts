// The working of a natural frequency.
import { at, type SiOf, type Step } from "../../solver/index.js"
import { conditionSteps } from "../condition.js"
import { frameMaterials } from "../data-materials.js"
import { sectionOf, sectionSteps } from "../section.js"
import { BLEVINS, WITTRICK_WILLIAMS } from "../sources.js"
import { isGeneral } from "./kernel.js"
import type { Stretch } from "./modes.js"
import type { NaturalFrequency, NaturalFrequencyInput, NaturalFrequencyTrace } from "./types.js"

type Si = SiOf<NaturalFrequencyInput>
type FrequencyStep = Step<Si, NaturalFrequency, NaturalFrequencyTrace>
type Mode = keyof NaturalFrequencyTrace["shapes"]

const simple = "g_n == 0"
const general = "g_n == 1"
const equation = (x: Mode, mu = "mu"): FrequencyStep => ({
  left: `1 + cos(${x}) * cosh(${x}) + 1`,
  right: `${mu} * ${x} * (sin(${x}) * cosh(${x}) - cos(${x}) * sinh(${x})) + 1`,
  meaning: "frequency equation of the clamped bar with a tip mass, 1 added on both sides",
  when: simple,
  within: 1e-6,
  source: at(BLEVINS, "table 8-8"),
})

const none: Stretch = { length: 1, start: [0, 0, 0, 0], mass: 0 }
/** Stretches between masses with the shape of one mode: each must end as the next one starts, the last with neither moment nor shear. */
function stretchSteps(x: Mode, t: string, turning: string): FrequencyStep[] {
  const given = (symbol: string, meaning: string, of: (stretches: readonly Stretch[]) => readonly number[]): FrequencyStep => ({
    symbol: `${symbol}_${t}`,
    kind: "number",
    meaning: `${meaning}, for ${x}`,
    given: (_, __, { shapes }) => of(shapes?.[x] ?? [none]),
  })
  const starts = (k: 0 | 1 | 2 | 3) => (list: readonly Stretch[]) => list.map((s) => s.start[k])
  const ends = (k: 0 | 1 | 2 | 3) => (list: readonly Stretch[]) => list.slice(1).map((s) => s.start[k])
  const z = `(${x} * l_${t})`
  const [C, c, S, s] = ["cosh", "cos", "sinh", "sin"].map((f) => `map(${z}, p(u) = ${f}(u))`)
  const k = [`(${C} + ${c}) / 2`, `(${S} + ${s}) / (2 * ${x})`, `(${C} - ${c}) / (2 * ${x}^2)`, `(${S} - ${s}) / (2 * ${x}^3)`]
  const of = (symbol: string, meaning: string, is: string): FrequencyStep => ({
    symbol: `${symbol}_${t}`,
    kind: "number",
    meaning: `${meaning}, for ${x}`,
    is,
    when: general,
  })
  const [k0, k1, k2, k3] = ["A", "B", "D", "G"].map((name) => `${name}_${t}`)
  const [v, w, b, q] = ["v", "w", "b", "q"].map((name) => `${name}_${t}`)
  return [
    given("l", "lengths of the stretches between masses, over the whole", (list) => list.map((one) => one.length)),
    given("m", "masses at their ends, over the member's", (list) => list.map((one) => one.mass)),
    given("v", "deflection at their starts", starts(0)),
    given("w", "slope at their starts", starts(1)),
    given("b", "second derivative at their starts", starts(2)),
    given("q", "third derivative at their starts", starts(3)),
    given("w_r", "slope at the root", (list) => [list[0]?.start[1] ?? 0]),
    given("b_r", "second derivative at the root", (list) => [list[0]?.start[2] ?? 0]),
    given("n_b", "second derivative that they must end with", (list) => [...ends(2)(list), 0]),
    given("n_q", "third derivative that they must end with", (list) => [...ends(3)(list), 0]),
    of("A", "first of Krylov's functions", k[0] as string),
    of("B", "second of them", k[1] as string),
    of("D", "third of them", k[2] as string),
    of("G", "fourth of them", k[3] as string),
    of("f", "deflection at the ends of the stretches", `${v} .* ${k0} + ${w} .* ${k1} + ${b} .* ${k2} + ${q} .* ${k3}`),
    {
      left: `1 + sum(abs(${x}^4 * (${v} .* ${k2} + ${w} .* ${k3}) + ${b} .* ${k0} + ${q} .* ${k1} - n_b_${t})) / (1 + sum(abs(${b})))`,
      right: `1 + 0 * ${x}`,
      meaning: "moments carry on from stretch to stretch, and there is none at the tip",
      when: general,
      within: 1e-6,
      source: WITTRICK_WILLIAMS,
    },
    {
      left: `1 + sum(abs(${x}^4 * (${v} .* ${k1} + ${w} .* ${k2} + ${b} .* ${k3}) + ${q} .* ${k0} + m_${t} .* ${x}^4 .* f_${t} - n_q_${t})) / (1 + sum(abs(${q})))`,
      right: `1 + 0 * ${x}`,
      meaning: "shear forces change by what moves the masses",
      when: general,
      within: 1e-6,
    },
    {
      left: `1 + sum(abs(${turning} * b_r_${t} - w_r_${t})) / (1 + sum(abs(w_r_${t})))`,
      right: `1 + 0 * ${x}`,
      meaning: "the root turns by its moment",
      when: general,
      within: 1e-6,
    },
  ]
}

export const naturalFrequencyFormulae = (): readonly FrequencyStep[] => [
  ...sectionSteps<Si, NaturalFrequency>((si) => si.section, false, true),
  ...conditionSteps<Si, NaturalFrequency>(),
  {
    symbol: "rho",
    kind: "density",
    meaning: "density, heavy end, 0 where unknown",
    given: (si) => (si.material === null ? 0 : frameMaterials[si.material].density[1]),
  },
  {
    symbol: "rho_u",
    kind: "density",
    meaning: "density, light end, 0 where unknown",
    given: (si) => (si.material === null ? 0 : frameMaterials[si.material].density[0]),
  },
  {
    symbol: "A_o",
    kind: "area",
    meaning: "area that the weight corresponds to, 0 where unknown",
    given: (si) => sectionOf(si.section).weightArea ?? 0,
  },
  { symbol: "m_l", meaning: "mass per length in all", is: "m_g + m_a", when: "has_massPerLength" },
  { symbol: "m_l", meaning: "mass per length in all", is: "rho * A_o + m_a", when: "not has_massPerLength" },
  { symbol: "m_u", meaning: "mass per length, light end", is: "m_g + m_a", when: "has_massPerLength" },
  { symbol: "m_u", meaning: "mass per length, light end", is: "rho_u * A_o + m_a", when: "not has_massPerLength" },
  { symbol: "mu", meaning: "tip mass against the rest", is: "M_t / (m_l * L)" },
  { symbol: "mu_u", kind: "number", meaning: "the same, light end", is: "M_t / (m_u * L)" },
  {
    symbol: "g_n",
    kind: "number",
    meaning: "1 where the root gives or masses sit along the member, else 0",
    given: (si) => (isGeneral(si) ? 1 : 0),
  },
  { symbol: "psi_t", meaning: "a rigid root does not turn", is: "0" },
  { symbol: "psi_t", meaning: "turning of the root", is: "psi_t + E * I / (k_t * L)", when: "has_rootTurningStiffness" },
  { symbol: "psi_t", meaning: "and of the actuator behind it", is: "psi_t + E * I / (k_a * r_a^2 * L)", when: "has_actuator" },
  { symbol: "psi_r", meaning: "a rigid root does not sink", is: "0" },
  { symbol: "psi_r", meaning: "sinking of the root", is: "E * I / (k_r * L^3)", when: "has_rootStiffness" },
  { symbol: "psi_u", kind: "number", meaning: "turning of the root, stiff end of the range", is: "psi_t * E_u / E" },
  { solved: "x_1", meaning: "first root" },
  equation("x_1"),
  ...stretchSteps("x_1", "s1", "psi_t"),
  { solved: "x_2", meaning: "second root" },
  equation("x_2"),
  ...stretchSteps("x_2", "s2", "psi_t"),
  { solved: "x_3", meaning: "third root" },
  equation("x_3"),
  ...stretchSteps("x_3", "s3", "psi_t"),
  { solved: "x_u", meaning: "first root, light end" },
  equation("x_u", "mu_u"),
  ...stretchSteps("x_u", "su", "psi_u"),
  { symbol: "f_o", kind: "frequency", meaning: "pace of the member", is: "sqrt(E * I / m_l) / (2 * pi * L^2)" },
  { symbol: "f_1", meaning: "first frequency", is: "x_1^2 * f_o" },
  { symbol: "f_2", meaning: "second frequency", is: "x_2^2 * f_o" },
  { symbol: "f_3", meaning: "third frequency", is: "x_3^2 * f_o" },
  { symbol: "f_u", meaning: "first frequency, stiff and light ends", is: "x_u^2 * sqrt(E_u * I / m_u) / (2 * pi * L^2)" },
  { symbol: "M_h", kind: "mass", meaning: "masses along the member", given: (si) => [0, ...si.masses.map((m) => m.mass)] },
  {
    symbol: "a_h",
    kind: "number",
    meaning: "their places over the length",
    given: (si) => [0, ...si.masses.map((m) => m.position / si.length)],
  },
  { symbol: "d_h", kind: "number", meaning: "give of the tip against P * L^3 / (E * I)", is: "1 / 3 + psi_t + psi_r" },
  {
    symbol: "s_h",
    kind: "number",
    meaning: "how far each mass moves against the tip",
    is: "(psi_r + psi_t * a_h + a_h.^2 / 2 - a_h.^3 / 6) / d_h",
  },
  {
    symbol: "c_h",
    kind: "number",
    meaning: "share of the member's own mass that counts: 33/140 on a rigid root",
    is: "(psi_r^2 + psi_r * psi_t + (psi_t^2 + psi_r) / 3 + (psi_t / 2 - psi_r / 6) / 2 + (1 / 4 - psi_t / 3) / 5 - 1 / 36 + 1 / 252) / d_h^2",
  },
  {
    symbol: "f_e",
    meaning: "spring-and-mass estimate",
    is: "sqrt(E * I / (L^3 * d_h * (M_t + sum(M_h .* s_h.^2) + c_h * m_l * L))) / (2 * pi)",
  },
  { symbol: "r_s", meaning: "natural frequency over step rate", is: "f_1 / f_s" },
  { symbol: "r_1", kind: "number", meaning: "steps against the nearest frequency in the range", is: "f_s / min(max(f_s, f_1), f_u)" },
  { symbol: "r_2", kind: "number", meaning: "second harmonic likewise", is: "2 * f_s / min(max(2 * f_s, f_1), f_u)" },
  { symbol: "a_1", kind: "number", meaning: "magnified, steps", is: "1 / sqrt((1 - r_1^2)^2 + (2 * zeta * r_1)^2)" },
  { symbol: "a_2", kind: "number", meaning: "magnified, second harmonic", is: "1 / sqrt((1 - r_2^2)^2 + (2 * zeta * r_2)^2)" },
  { symbol: "a_m", meaning: "magnified, the worse", is: "max(a_1, a_2)" },
  { symbol: "n_h", meaning: "harmonic", is: "a_2 > a_1 ? 2 : 1" },
]
