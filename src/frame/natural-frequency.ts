import { type Root, theRoot } from "../numeric/index.js"
import type { Frequency, Length, LinearDensity, Mass, Ratio } from "../quantity/index.js"
import {
  at,
  type Caution,
  caution,
  commonPractice,
  type Issue,
  inconsistent,
  isNoSolution,
  type NoSolution,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import { type ConditionInput, conditionCautions, conditionFields, conditionOf, conditionRules, conditionSteps } from "./condition.js"
import { frameMaterials } from "./data-materials.js"
import { type SectionInput, sectionFaults, sectionFields, sectionOf, sectionRules, sectionSteps } from "./section.js"
import { BLEVINS, FOOTFALL, THOMSON } from "./sources.js"

/** Input of {@link naturalFrequency}. */
export interface NaturalFrequencyInput extends ConditionInput {
  /** Length from the clamp to the tip. [L; 10 mm to 20 m] */
  length: Length
  /** Cross-section. [group] */
  section: SectionInput
  /** Mass of the member per length, instead of that of material and section. [m_g; 0.01 g/m to 1000 kg/m; optional] */
  massPerLength?: LinearDensity | null
  /** What it carries along its length: skin, wires, lights. [m_a; 0 to 1000 kg/m; default 0] */
  addedMass?: LinearDensity
  /** Mass at the tip [M_t; 0 to 100 kg; default 0] */
  tipMass?: Mass
  /** Steps per second of the wearer. [f_s; 0.5 to 4 Hz; default 2 Hz] */
  stepRate?: Frequency
  /** Damping ratio [zeta; 0.001 to 0.5; default 0.02] */
  damping?: Ratio
}

/** Result of {@link naturalFrequency}. */
export interface NaturalFrequency {
  /** Mass per length in all, at the heavy end of the material's density. [m_l; kg/m] */
  readonly massPerLength: number
  /** The same at the light end. [m_u; kg/m] */
  readonly minMassPerLength: number
  /** Tip mass against the mass along the length. [mu] */
  readonly massRatio: number
  /** First root of the frequency equation, β·L. [x_1] */
  readonly firstRoot: number
  /** Second root [x_2] */
  readonly secondRoot: number
  /** Third root [x_3] */
  readonly thirdRoot: number
  /** First frequency, at the soft and heavy ends of the material's ranges. [f_1; Hz] */
  readonly frequency: number
  /** First root at the light end of the density. [x_u] */
  readonly firstRootLight: number
  /** First frequency at the stiff and light ends. [f_u; Hz] */
  readonly maxFrequency: number
  /** Second frequency [f_2; Hz] */
  readonly secondFrequency: number
  /** Third frequency [f_3; Hz] */
  readonly thirdFrequency: number
  /** First frequency by the spring-and-lump estimate. [f_e; Hz] */
  readonly estimate: number
  /** First frequency against the step rate. [r_s] */
  readonly stepRatio: number
  /** How much the shake of a step or its second harmonic is magnified, at the worst frequency in the range. [a_m] */
  readonly amplification: number
  /** Which harmonic of the steps that is. [n_h] */
  readonly harmonic: number
  /** Steps taken to find the roots. [number] */
  readonly iterations: number
  /** What is left of the first frequency equation, per cosh. [number] */
  readonly residual: number
}

/** Reasons for which {@link naturalFrequency} refuses. */
export type NaturalFrequencyRefusal = "too-hot"

/** Hazards and limits of validity that go with an answer of {@link naturalFrequency}. */
export type NaturalFrequencyCaution =
  | "bare"
  | "brittle"
  | "cold-brittle"
  | "creep"
  | "modulus-above-published"
  | "no-material"
  | "rigid-root"
  | "shaken-by-steps"
  | "slower-than-steps"
  | "strength-above-published"
  | "warm-plastic"
  | "welds-weaken"

/** sin x·cosh x − cos x·sinh x over cosh x; by its power series where the terms would cancel. */
function tipTerm(x: number): number {
  if (x > 0.5) return Math.sin(x) - Math.cos(x) * Math.tanh(x)
  const fourth = x ** 4
  return (((2 / 3) * x ** 3) / Math.cosh(x)) * (1 - (fourth / 210) * (1 - (fourth / 1980) * (1 - fourth / 8190)))
}

/**
 * Root `mode` (1, 2, 3) of 1 + cos x·cosh x − μ·x·(sin x·cosh x − cos x·sinh x) = 0, the frequency equation of a clamped
 * bar with a tip mass of μ times its own.
 */
export function cantileverRoot(massRatio: number, mode: 1 | 2 | 3): Root {
  const f = (x: number) => 1 / Math.cosh(x) + Math.cos(x) - massRatio * x * tipTerm(x)
  // between the roots of the clamped-pinned bar (heavy tip) and those of the clamped-free one (bare tip)
  const ends = { 1: [1e-6, 1.8752], 2: [3.9266, 4.6942], 3: [7.0685, 7.8549] } as const
  const [low, high] = ends[mode]
  // f changes sign there for every mass ratio from 0 to 1e15
  return theRoot(f, low, high, 1e-16, "mode of a cantilever")
}

/** Mass per length with everything carried, at the light (0) or heavy (1) end of the density. */
function massPerLengthOf(si: SiOf<NaturalFrequencyInput>, end: 0 | 1 = 1): number {
  const own = si.material === null ? 0 : frameMaterials[si.material].density[end] * (sectionOf(si.section).weightArea ?? 0)
  return (si.massPerLength ?? own) + si.addedMass
}

/** Magnification of a steady shake at r times the natural frequency. */
export function magnification(ratio: number, damping: number): number {
  return 1 / Math.hypot(1 - ratio ** 2, 2 * damping * ratio)
}

function solve(si: SiOf<NaturalFrequencyInput>): NaturalFrequency | NoSolution<NaturalFrequencyRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const { secondMoment } = sectionOf(si.section)
  const massPerLength = massPerLengthOf(si)
  const mass = massPerLength * si.length
  const massRatio = si.tipMass / mass
  const [first, second, third] = [cantileverRoot(massRatio, 1), cantileverRoot(massRatio, 2), cantileverRoot(massRatio, 3)]
  const minMassPerLength = massPerLengthOf(si, 0)
  const light = cantileverRoot(si.tipMass / (minMassPerLength * si.length), 1)
  const pace = (modulus: number, perLength: number) => Math.sqrt((modulus * secondMoment) / perLength) / (2 * Math.PI * si.length ** 2)
  const low = pace(condition.modulus, massPerLength)
  const [frequency, maxFrequency] = [first.x ** 2 * low, light.x ** 2 * pace(condition.maxModulus, minMassPerLength)]
  // the harmonic may meet any frequency in the range: take the one nearest to it
  const shaken = (harmonic: number) => {
    const shake = harmonic * si.stepRate
    return magnification(shake / Math.min(Math.max(shake, frequency), maxFrequency), si.damping)
  }
  const [one, two] = [shaken(1), shaken(2)]
  return {
    massPerLength,
    minMassPerLength,
    massRatio,
    firstRoot: first.x,
    firstRootLight: light.x,
    secondRoot: second.x,
    thirdRoot: third.x,
    frequency,
    maxFrequency,
    secondFrequency: second.x ** 2 * low,
    thirdFrequency: third.x ** 2 * low,
    estimate: Math.sqrt((3 * condition.modulus * secondMoment) / (si.length ** 3 * (si.tipMass + (33 / 140) * mass))) / (2 * Math.PI),
    stepRatio: frequency / si.stepRate,
    amplification: Math.max(one, two),
    harmonic: two > one ? 2 : 1,
    iterations: first.iterations + second.iterations + third.iterations + light.iterations,
    residual: first.residual,
  }
}

function cautions(si: SiOf<NaturalFrequencyInput>, out: NaturalFrequency): Caution<NaturalFrequencyCaution>[] {
  const found: Caution<NaturalFrequencyCaution>[] = [
    ...conditionCautions(si),
    caution(
      "rigid-root",
      "note",
      "The root counts as rigid: a hinge, an actuator's rod or a clamp that yields lowers the frequencies further; a root ten times as stiff as the member still takes a sixth off. Shake a sample and count.",
      at(BLEVINS, "table 8-1 (spring-hinged root)"),
    ),
  ]
  if (out.amplification > 2)
    found.push(
      caution(
        "shaken-by-steps",
        "warning",
        "Walking shakes it near its own frequency of {frequency frequency} to {maxFrequency frequency} (harmonic {harmonic} of the steps): it can swing {amplification} times as far as the shake, may hit people and works its joints loose. Stiffen or shorten it, or take mass off the tip.",
        at(THOMSON, "chapter 3 (steady forced vibration with damping)"),
        { frequency: out.frequency, maxFrequency: out.maxFrequency, harmonic: out.harmonic, amplification: out.amplification },
      ),
    )
  if (out.stepRatio < 1)
    found.push(
      caution(
        "slower-than-steps",
        "caution",
        "Its own frequency of {frequency frequency} lies below the step rate of {given.stepRate frequency}: starting, stopping and slow steps pass through it. Stiffen or shorten it.",
        commonPractice,
        { frequency: out.frequency, "given.stepRate": si.stepRate },
      ),
    )
  if (si.tipMass === 0 && si.addedMass === 0)
    found.push(caution("bare", "note", "Only the bare member is counted; skin, lights and wires lower its frequency."))
  return found
}

function check(si: SiOf<NaturalFrequencyInput>): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"])]
  if (faults.length === 0 && !(massPerLengthOf(si) >= 1e-6))
    faults.push(inconsistent(["massPerLength"], "no mass along the length", "massPerLength, addedMass, or a material with a shape"))
  return faults
}

const equation = (x: string, mu = "mu") => ({
  left: `1 + cos(${x}) * cosh(${x}) + 1`,
  right: `${mu} * ${x} * (sin(${x}) * cosh(${x}) - cos(${x}) * sinh(${x})) + 1`,
  meaning: "frequency equation of the clamped bar with a tip mass, 1 added on both sides",
  within: 1e-6,
  source: at(BLEVINS, "table 8-8"),
})

/**
 * How fast a clamped member swings by itself, against the steps of the wearer.
 *
 * Formula: fᵢ = xᵢ²/(2·π·L²)·√(E·I/m), xᵢ the roots of 1 + cos x·cosh x = μ·x·(sin x·cosh x − cos x·sinh x) with μ =
 * M/(m·L); L is the length, M the tip mass, m the mass per length (kg/m; of material and section unless given, plus
 * `addedMass`), E the modulus at the temperature, I the second moment. Estimate: √(3·E·I/(L³·(M +
 * 33/140·m·L)))/(2·π). A shake at r times the frequency is magnified by 1/√((1 − r²)² + (2·ζ·r)²), ζ the damping ratio
 * (default: common practice), for the steps and their second harmonic. Frequencies are those of the soft and heavy ends
 * of the material's ranges, `maxFrequency` of the stiff and light ends. Valid for slender members with the tip mass
 * close to the tip.
 *
 * **Inputs**
 * - `length`: length [L; 10 mm to 20 m]
 * - `section`: section [group]
 *   - `pipe`: standard pipe [one of 11 words; optional]
 *   - `outsideDiameter`: outside diameter [D; 0.1 mm to 2 m; optional]
 *   - `width`: width [b_w; 0.1 mm to 2 m; optional]
 *   - `height`: height [h_w; 0.1 mm to 2 m; optional]
 *   - `wall`: wall [t_w; 0.01 mm to 1 m; optional]
 *   - `secondMoment`: second moment of area [I_g; 1e−6 mm⁴ to 1 m⁴; optional]
 *   - `fibre`: distance to the outermost fibre [c_g; 0.01 mm to 1 m; optional]
 *   - `area`: area [A_g; 0.01 mm² to 1 m²; optional]
 *   - exactly one of `pipe`, `outsideDiameter`, `width` with `height` and `secondMoment`
 *   - `wall` only beside `outsideDiameter` or `width` with `height`
 *   - `fibre` only beside `secondMoment`
 *   - `area` only beside `secondMoment`
 * - `material`: material [one of 17 words; optional]
 * - `modulus`: Young's modulus [E_g; 1 MPa to 1000 GPa; optional]
 * - `strength`: yield or breaking stress [S_g; 0.1 MPa to 10 GPa; optional]
 * - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 * - `duration`: time the load stands [t_l; 0 to 1000 h; default 0]
 * - `massPerLength`: mass per length of the member [m_g; 0.01 g/m to 1000 kg/m; optional]
 * - `addedMass`: carried along its length [m_a; 0 to 1000 kg/m; default 0]
 * - `tipMass`: mass at the tip [M_t; 0 to 100 kg; default 0]
 * - `stepRate`: steps per second [f_s; 0.5 to 4 Hz; default 2 Hz]
 * - `damping`: damping ratio [zeta; 0.001 to 0.5; default 0.02]
 * - at least one of `material` and `modulus`
 *
 * **Results**
 *
 * `massPerLength`: mass per length in all [m_l; kg/m]; `minMassPerLength`: mass per length, light end [m_u; kg/m];
 * `massRatio`: tip mass against the rest [mu]; `firstRoot`: first root [x_1]; `firstRootLight`: first root, light end
 * [x_u]; `secondRoot`: second root [x_2]; `thirdRoot`: third root [x_3]; `frequency`: first frequency, minimum [f_1;
 * Hz]; `maxFrequency`: first frequency, maximum [f_u; Hz]; `secondFrequency`: second frequency [f_2; Hz];
 * `thirdFrequency`: third frequency [f_3; Hz]; `estimate`: first frequency, spring-and-mass estimate [f_e; Hz];
 * `stepRatio`: natural frequency over step rate [r_s]; `amplification`: amplification of the shake [a_m]; `harmonic`:
 * governing harmonic of the steps [n_h]; `iterations`: search steps [number]; `residual`: error of the frequency
 * equation [number].
 *
 * **Symbols of the working**
 *
 * D_p: outside diameter of the pipe, 0 where it is none [m]; t_p: minimum wall of the pipe, 0 where it is none [m];
 * D_o: outside diameter [m]; D_i: inside diameter [m]; A: area of the ring [m²]; I: second moment of the ring [m⁴]; c:
 * neutral axis to outermost fibre [m]; b_i: width inside [m]; h_i: height inside [m]; Q: first moment of half the ring
 * [m³]; b_n: material at the neutral axis [m]; E_l: minimum modulus at 23 °C [Pa]; E_h: maximum modulus at 23 °C [Pa];
 * S_l: minimum strength at 23 °C, 0 where unknown [Pa]; S_h: maximum strength at 23 °C, 0 where unknown [Pa]; S_o:
 * shear strength where the material has its own, else 0 [Pa]; f_E: stiffness left at the temperature; f_S: strength
 * left at the temperature; f_c: stiffness and strength left after the load has stood; S: strength, safe end [Pa]; S_u:
 * strength, other end [Pa]; S_s: shear strength, safe end [Pa]; S_su: shear strength, other end [Pa]; E: modulus, safe
 * end [Pa]; E_u: modulus, other end [Pa]; rho: density, heavy end, 0 where unknown [kg/m³]; rho_u: density, light end,
 * 0 where unknown [kg/m³]; A_o: area that the weight corresponds to, 0 where unknown [m²]; mu_u: the same, light end;
 * f_o: pace of the member [Hz]; r_1: steps against the nearest frequency in the range; r_2: second harmonic likewise;
 * a_1: magnified, steps; a_2: magnified, second harmonic.
 *
 * **Sources**
 * - R. D. Blevins: Formulas for Natural Frequency and Mode Shape, 1979, tables 8-1 and 8-8 (not verified against the
 *   document)
 * - W. T. Thomson: Theory of Vibration with Applications, 5th, 1998, chapter 3 (not verified against the document)
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's temperature limit
 * @example
 * ```ts
 * import { naturalFrequency } from 'alula/frame'
 * const boom = naturalFrequency({
 *   length: '600 mm', section: { secondMoment: '36000 mm4' }, modulus: '2.9 GPa', massPerLength: '0.45 kg/m', tipMass: '0.27 kg',
 * })
 * boom.firstRoot // => 1.24791741
 * boom.frequency // => 10.48656638
 * boom.stepRatio // => 5.243
 * ```
 */
export const naturalFrequency: Solver<NaturalFrequencyInput, NaturalFrequency, NaturalFrequencyRefusal, NaturalFrequencyCaution> =
  /* @__PURE__ */ solver<NaturalFrequencyInput, NaturalFrequency, NaturalFrequencyRefusal, NaturalFrequencyCaution>(
    "naturalFrequency",
    "Whether walking shakes it at its own frequency",
    solve,
    () => ({
      input: {
        length: { kind: "length", symbol: "L", label: "length", min: "10 mm", max: 20, typical: [0.3, 2] },
        section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
        ...conditionFields,
        massPerLength: {
          kind: "linearDensity",
          symbol: "m_g",
          label: "mass per length of the member",
          min: "0.01 g/m",
          max: 1000,
          typical: [0.05, 0.5],
          default: null,
        },
        addedMass: {
          kind: "linearDensity",
          symbol: "m_a",
          label: "carried along its length",
          min: 0,
          max: 1000,
          typical: [0, 0.3],
          default: 0,
        },
        tipMass: { kind: "mass", symbol: "M_t", label: "mass at the tip", min: 0, max: 100, typical: [0, 0.5], default: 0 },
        stepRate: { kind: "frequency", symbol: "f_s", label: "steps per second", min: 0.5, max: 4, typical: [1.4, 2.4], default: 2 },
        damping: { kind: "ratio", symbol: "zeta", label: "damping ratio", min: 0.001, max: 0.5, typical: [0.005, 0.05], default: 0.02 },
      },
      output: {
        massPerLength: { kind: "linearDensity", symbol: "m_l", label: "mass per length in all" },
        minMassPerLength: { kind: "linearDensity", symbol: "m_u", label: "mass per length, light end" },
        massRatio: { kind: "number", symbol: "mu", label: "tip mass against the rest" },
        firstRoot: { kind: "number", symbol: "x_1", label: "first root" },
        firstRootLight: { kind: "number", symbol: "x_u", label: "first root, light end" },
        secondRoot: { kind: "number", symbol: "x_2", label: "second root" },
        thirdRoot: { kind: "number", symbol: "x_3", label: "third root" },
        frequency: { kind: "frequency", symbol: "f_1", label: "first frequency, minimum" },
        maxFrequency: { kind: "frequency", symbol: "f_u", label: "first frequency, maximum" },
        secondFrequency: { kind: "frequency", symbol: "f_2", label: "second frequency" },
        thirdFrequency: { kind: "frequency", symbol: "f_3", label: "third frequency" },
        estimate: { kind: "frequency", symbol: "f_e", label: "first frequency, spring-and-mass estimate" },
        stepRatio: { kind: "number", symbol: "r_s", label: "natural frequency over step rate" },
        amplification: { kind: "number", symbol: "a_m", label: "amplification of the shake" },
        harmonic: { kind: "number", symbol: "n_h", label: "governing harmonic of the steps" },
        iterations: { kind: "number", label: "search steps" },
        residual: { kind: "number", label: "error of the frequency equation" },
      },
      example: {
        length: "900 mm",
        section: { outsideDiameter: "16 mm", wall: "1 mm" },
        material: "aluminium-6061",
        addedMass: "60 g/m",
        tipMass: "80 g",
      },
      formulae: [
        ...sectionSteps<SiOf<NaturalFrequencyInput>, NaturalFrequency>((si) => si.section, false, true),
        ...conditionSteps<SiOf<NaturalFrequencyInput>, NaturalFrequency>(),
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
        { solved: "x_1", meaning: "first root" },
        equation("x_1"),
        { solved: "x_2", meaning: "second root" },
        equation("x_2"),
        { solved: "x_3", meaning: "third root" },
        equation("x_3"),
        { solved: "x_u", meaning: "first root, light end" },
        equation("x_u", "mu_u"),
        { symbol: "f_o", kind: "frequency", meaning: "pace of the member", is: "sqrt(E * I / m_l) / (2 * pi * L^2)" },
        { symbol: "f_1", meaning: "first frequency", is: "x_1^2 * f_o" },
        { symbol: "f_2", meaning: "second frequency", is: "x_2^2 * f_o" },
        { symbol: "f_3", meaning: "third frequency", is: "x_3^2 * f_o" },
        { symbol: "f_u", meaning: "first frequency, stiff and light ends", is: "x_u^2 * sqrt(E_u * I / m_u) / (2 * pi * L^2)" },
        { symbol: "f_e", meaning: "spring-and-mass estimate", is: "sqrt(3 * E * I / (L^3 * (M_t + 33 / 140 * m_l * L))) / (2 * pi)" },
        { symbol: "r_s", meaning: "natural frequency over step rate", is: "f_1 / f_s" },
        { symbol: "r_1", kind: "number", meaning: "steps against the nearest frequency in the range", is: "f_s / min(max(f_s, f_1), f_u)" },
        { symbol: "r_2", kind: "number", meaning: "second harmonic likewise", is: "2 * f_s / min(max(2 * f_s, f_1), f_u)" },
        { symbol: "a_1", kind: "number", meaning: "magnified, steps", is: "1 / sqrt((1 - r_1^2)^2 + (2 * zeta * r_1)^2)" },
        { symbol: "a_2", kind: "number", meaning: "magnified, second harmonic", is: "1 / sqrt((1 - r_2^2)^2 + (2 * zeta * r_2)^2)" },
        { symbol: "a_m", meaning: "magnified, the worse", is: "max(a_1, a_2)" },
        { symbol: "n_h", meaning: "harmonic", is: "a_2 > a_1 ? 2 : 1" },
      ],
      sources: [BLEVINS, THOMSON, FOOTFALL],
      either: conditionRules,
      check,
      cautions,
    }),
  )
