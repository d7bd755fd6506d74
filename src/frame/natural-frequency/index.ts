import { at, type SiOf, type Solver, solver } from "../../solver/index.js"
import { conditionFields, conditionRules, conditionSteps } from "../condition.js"
import { frameMaterials } from "../data-materials.js"
import { sectionFields, sectionOf, sectionRules, sectionSteps } from "../section.js"
import { BLEVINS, FOOTFALL, THOMSON } from "../sources.js"
import { cautions, check } from "./cautions.js"
import { solve } from "./kernel.js"
import type { NaturalFrequency, NaturalFrequencyCaution, NaturalFrequencyInput, NaturalFrequencyRefusal } from "./types.js"

export { cantileverRoot, magnification } from "./kernel.js"
export type { NaturalFrequency, NaturalFrequencyCaution, NaturalFrequencyInput, NaturalFrequencyRefusal } from "./types.js"

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
