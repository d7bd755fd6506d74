import { at, bandField, type Fields, optionsFrom, type SiOf, type Solver, solver } from "../../solver/index.js"
import { conditionFields, conditionRules, conditionSteps } from "../condition.js"
import { columnEnds, END_CONSTANTS } from "../data-columns.js"
import { handlingCases, handlingField } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import { sectionFields, sectionRules, sectionSteps } from "../section.js"
import { SHIGLEY, SP_8007 } from "../sources.js"
import { cautions, check } from "./cautions.js"
import { solve, weakSection } from "./kernel.js"
import type { Column, ColumnCaution, ColumnInput, ColumnRefusal } from "./types.js"

export { eulerStress, johnsonStress, transitionSlenderness } from "./kernel.js"
export type { Column, ColumnCaution, ColumnInput, ColumnRefusal } from "./types.js"

/** Field descriptions of how long a column is and how its ends are held. */
export const endFields: Fields<Pick<ColumnInput, "length" | "ends" | "endConstant">> = {
  length: { kind: "length", symbol: "L", label: "length", min: "1 mm", max: 100, typical: [0.2, 2] },
  ends: { kind: "choice", label: "ends", options: optionsFrom(columnEnds, (key) => columnEnds[key].label), default: "pinned-pinned" },
  endConstant: { kind: "number", symbol: "C_g", label: "end constant", min: 0.1, max: 4, typical: [0.25, 2], default: null },
}

const strong = "has_strength or has_material"
const ends = (symbol: string, e: string, s: string, what: string) => [
  {
    symbol: `${symbol}_1`,
    kind: "number" as const,
    meaning: `transition, ${what}`,
    is: `sqrt(2 * pi^2 * C_e * ${e} / ${s})`,
    when: strong,
  },
]

/**
 * Load under which a straight member buckles.
 *
 * Formula: with r = √(I/A) and λ = L/r, Euler C·π²·E/λ² above λ₁ = √(2·π²·C·E/S) and Johnson S·(1 − S·λ²/(4·π²·C·E))
 * below it; a thin round wall buckles at γ·E·t/(R·√(3·(1 − ν²))) if that is less. L is the length, C the end constant
 * (the conservative 1 unless given, or 1/4 with a free end), E the modulus and S the strength at the temperature and
 * after the duration of the load, I the minimum second moment, A the area. The load is multiplied by the factor of
 * `handling`. Valid for straight members pushed along their middle.
 *
 * **Inputs**
 * - `length`: length [L; 1 mm to 100 m]
 * - `ends`: ends [pinned-pinned, fixed-free, fixed-pinned or fixed-fixed; default pinned-pinned]
 * - `endConstant`: end constant [C_g; 0.1 to 4; optional]
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
 * - `load`: axial load [F; 1 mN to 1000 kN; optional]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 * - at least one of `material` and `modulus`
 *
 * **Results**
 *
 * `endConstant`: end constant [C_e]; `radiusOfGyration`: minimum radius of gyration [r; m]; `slenderness`: slenderness
 * [lambda]; `transitionSlenderness`: slenderness where Euler takes over [lambda_1]; `eulerStress`: Euler's stress
 * [sigma_E; Pa]; `johnsonStress`: Johnson's stress [sigma_J; Pa]; `wallBucklingStress`: local buckling stress
 * [sigma_w; Pa]; `criticalStress`: critical stress [sigma_c; Pa]; `criticalLoad`: critical load [F_c to F_u; N];
 * `governedBy`: governed by [text]; `safetyFactor`: safety factor [n_s to n_u].
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
 * end [Pa]; E_u: modulus, other end [Pa]; I_w: minimum second moment [m⁴]; k_m: factor of handling; nu: Poisson's
 * ratio of a thin round wall, -1 where none applies; mu_1: transition, other end; sigma_b: Euler's holds [Pa];
 * sigma_m: Euler's stress, other end [Pa]; k_w: wall buckling stress against the modulus.
 *
 * **Sources**
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 10th, 2015, sections 4-11 to 4-13, table
 *   4-2 (not verified against the document)
 * - NASA: Buckling of thin-walled circular cylinders, SP-8007, 1968, section 4 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's temperature limit
 * @example
 * ```ts
 * import { column } from 'alula/frame'
 * const strut = column({ length: '400 mm', section: { outsideDiameter: '20 mm', wall: '1.5 mm' }, modulus: '68900 MPa', strength: '241 MPa' })
 * strut.slenderness // => 60.955
 * strut.criticalLoad.low // => 14094
 * strut.governedBy // => 'Johnson'
 * ```
 */
export const column: Solver<ColumnInput, Column, ColumnRefusal, ColumnCaution> = /* @__PURE__ */ solver<
  ColumnInput,
  Column,
  ColumnRefusal,
  ColumnCaution
>("column", "Buckling load of a strut", solve, () => ({
  input: {
    ...endFields,
    section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
    ...conditionFields,
    load: { kind: "force", symbol: "F", label: "axial load", min: "1 mN", max: 1e6, typical: [20, 800], default: null },
    handling: handlingField,
  },
  output: {
    endConstant: { kind: "number", symbol: "C_e", label: "end constant" },
    radiusOfGyration: { kind: "length", symbol: "r", label: "minimum radius of gyration" },
    slenderness: { kind: "number", symbol: "lambda", label: "slenderness" },
    transitionSlenderness: { kind: "number", symbol: "lambda_1", label: "slenderness where Euler takes over" },
    eulerStress: { kind: "pressure", symbol: "sigma_E", label: "Euler's stress" },
    johnsonStress: { kind: "pressure", symbol: "sigma_J", label: "Johnson's stress" },
    wallBucklingStress: { kind: "pressure", symbol: "sigma_w", label: "local buckling stress" },
    criticalStress: { kind: "pressure", symbol: "sigma_c", label: "critical stress" },
    criticalLoad: bandField("force", "critical load", { symbols: ["F_c", "F_u"] }),
    governedBy: { kind: "text", label: "governed by" },
    safetyFactor: bandField("number", "safety factor", { symbols: ["n_s", "n_u"] }),
  },
  example: {
    length: "400 mm",
    section: { outsideDiameter: "20 mm", wall: "1.5 mm" },
    material: "aluminium-6061",
    load: "300 N",
    handling: "walking",
  },
  formulae: [
    ...sectionSteps<SiOf<ColumnInput>, Column>((si) => si.section, false, true),
    ...conditionSteps<SiOf<ColumnInput>, Column>(),
    { symbol: "I_w", kind: "secondMoment", meaning: "minimum second moment", is: "I", when: "not has_width" },
    {
      symbol: "I_w",
      kind: "secondMoment",
      meaning: "minimum second moment of the rectangle",
      is: "min(I, (h_w * b_w^3 - h_i * b_i^3) / 12)",
      when: "has_width",
    },
    {
      symbol: "C_e",
      kind: "number",
      meaning: "end constant",
      given: (si) => si.endConstant ?? columnEnds[si.ends].design,
      source: END_CONSTANTS,
    },
    { symbol: "k_m", kind: "number", meaning: "factor of handling", given: (si) => handlingCases[si.handling].factor },
    {
      symbol: "nu",
      kind: "number",
      meaning: "Poisson's ratio of a thin round wall, -1 where none applies",
      given: (si) => (si.material === null || !weakSection(si.section).tube ? -1 : (frameMaterials[si.material].poisson ?? -1)),
    },
    { symbol: "r", meaning: "minimum radius of gyration", is: "sqrt(I_w / A)" },
    { symbol: "lambda", meaning: "slenderness", is: "L / r" },
    ...ends("lambda", "E", "S", "safe end"),
    ...ends("mu", "E_u", "S_u", "other end"),
    { symbol: "sigma_E", meaning: "Euler's stress", is: "C_e * pi^2 * E / lambda^2" },
    {
      symbol: "sigma_J",
      meaning: "Johnson's stress",
      is: "S * (1 - S * lambda^2 / (4 * pi^2 * C_e * E))",
      when: `(${strong}) ? lambda < lambda_1 : false`,
    },
    { symbol: "sigma_b", kind: "pressure", meaning: "Euler's holds", is: "sigma_E" },
    { symbol: "sigma_b", kind: "pressure", meaning: "Johnson's holds", is: "lambda < lambda_1 ? sigma_J : sigma_E", when: strong },
    { symbol: "sigma_m", kind: "pressure", meaning: "Euler's stress, other end", is: "C_e * pi^2 * E_u / lambda^2" },
    {
      symbol: "sigma_m",
      kind: "pressure",
      meaning: "stress, other end",
      is: "lambda < mu_1 ? S_u * (1 - S_u * lambda^2 / (4 * pi^2 * C_e * E_u)) : sigma_m",
      when: strong,
    },
    {
      symbol: "k_w",
      kind: "number",
      meaning: "wall buckling stress against the modulus",
      is: "(1 - 0.901 * (1 - exp(-sqrt((D_o + D_i) / 2 / (D_o - D_i)) / 16))) * (D_o - D_i) / 2 / ((D_o + D_i) / 4 * sqrt(3 * (1 - nu^2)))",
      when: "nu > -1",
      source: SP_8007,
    },
    { symbol: "sigma_w", meaning: "local buckling stress", is: "k_w * E", when: "nu > -1" },
    { symbol: "sigma_c", meaning: "fails at", is: "sigma_b" },
    { symbol: "sigma_c", meaning: "local buckling may govern", is: "min(sigma_b, sigma_w)", when: "nu > -1" },
    { symbol: "sigma_m", kind: "pressure", meaning: "local buckling may govern", is: "min(sigma_m, k_w * E_u)", when: "nu > -1" },
    { symbol: "F_c", meaning: "critical load, minimum", is: "sigma_c * A" },
    { symbol: "F_u", meaning: "critical load, maximum", is: "sigma_m * A" },
    { symbol: "n_s", meaning: "safety factor, minimum", is: "F_c / (k_m * F)", when: "has_load" },
    { symbol: "n_u", meaning: "safety factor, maximum", is: "F_u / (k_m * F)", when: "has_load" },
  ],
  sources: [at(SHIGLEY, "sections 4-11 to 4-13, table 4-2"), SP_8007],
  either: conditionRules,
  check,
  cautions,
}))
