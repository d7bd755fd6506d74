import {
  at,
  bandField,
  bandOf,
  type Caution,
  caution,
  inconsistent,
  isNoSolution,
  type NoSolution,
  type SiOf,
  type Solver,
  solver,
} from "../../solver/index.js"
import {
  type Condition,
  conditionFields,
  conditionOf,
  conditionSteps,
  leastStress,
  marginCautions,
  materialCautions,
  modulusCautions,
} from "../condition.js"
import { frameMaterials } from "../data-materials.js"
import { sectionFaults, sectionSteps, shapeFields, shapeRules, shapeSection } from "../section.js"
import { ASTM_D1785, BREDT, ELASTICITY, GERE, SP_8007 } from "../sources.js"
import { wallBuckling } from "../thin-wall.js"
import type { TubeSection, TubeSectionCaution, TubeSectionInput, TubeSectionRefusal } from "./types.js"

export type { TubeSection, TubeSectionCaution, TubeSectionInput, TubeSectionRefusal } from "./types.js"

/** Shear modulus of an isotropic material, Pa: E / (2·(1 + ν)). */
export function shearModulusOf(modulus: number, poisson: number): number {
  return modulus / (2 * (1 + poisson))
}

const factorOf = (own: boolean, strength: number | null, shear: number | null, along: number, across: number, vonMises: number) => {
  if (strength === null || shear === null || !(vonMises > leastStress)) return null
  const use = own ? Math.max(along / strength, across / shear) : vonMises / strength
  return 1 / use
}

function solve(si: SiOf<TubeSectionInput>): TubeSection | NoSolution<TubeSectionRefusal> {
  const section = shapeSection(si)
  const condition: Condition | NoSolution<TubeSectionRefusal> = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const data = si.material === null ? null : frameMaterials[si.material]
  const { secondMoment } = section
  const [area, fibre, firstMoment] = [section.area as number, section.fibre as number, section.firstMoment as number]
  const [torsionConstant, torsionModulus] = [section.torsionConstant as number, section.torsionModulus as number]
  const poisson = data?.poisson ?? null
  const modulus = condition.modulus > 0 ? condition.modulus : null
  const shearModulus = si.shearModulus ?? (poisson === null || modulus === null ? null : shearModulusOf(modulus, poisson))
  const bendingStress = (Math.abs(si.moment) * fibre) / secondMoment
  const axialStress = Math.abs(si.axialForce) / area
  const torsionStress = Math.abs(si.torque) / torsionModulus
  const shearStress = (Math.abs(si.shearForce) * firstMoment) / (secondMoment * (section.shearWidth as number))
  const [along, across] = [bendingStress + axialStress, torsionStress + shearStress]
  const equivalent = (k: number) => Math.max(Math.hypot(along, k * torsionStress), Math.hypot(axialStress, k * across))
  const vonMisesStress = equivalent(Math.sqrt(3))
  const buckling = modulus === null ? null : wallBuckling(section, si.material, modulus)
  const own = data !== null && data.shear !== null
  return {
    area,
    secondMoment,
    sectionModulus: secondMoment / fibre,
    radiusOfGyration: Math.sqrt(secondMoment / area),
    firstMoment,
    torsionConstant,
    torsionModulus,
    massPerLength: data && data.density[1] * (section.weightArea as number),
    shearModulus,
    bendingStress,
    axialStress,
    torsionStress,
    shearStress,
    vonMisesStress,
    trescaStress: equivalent(2),
    twist: si.length === null || shearModulus === null ? null : (si.torque * si.length) / (shearModulus * torsionConstant),
    axialBucklingStress: buckling?.axial ?? null,
    bendingBucklingStress: buckling?.bending ?? null,
    safetyFactor: bandOf(
      factorOf(own, condition.strength, condition.shearStrength, along, across, vonMisesStress),
      factorOf(own, condition.maxStrength, condition.maxShearStrength, along, across, vonMisesStress),
    ),
  }
}

function cautions(si: SiOf<TubeSectionInput>, out: TubeSection): Caution<TubeSectionCaution>[] {
  const found: Caution<TubeSectionCaution>[] = [...modulusCautions(si), ...materialCautions(si)]
  found.push(...marginCautions(out.safetyFactor))
  if (si.pipe !== null)
    found.push(
      caution(
        "min-wall",
        "note",
        "Calculated at the minimum wall a pipe of this size may have; its mass is given at the mean wall.",
        ASTM_D1785,
      ),
    )
  const buckling = out.bendingBucklingStress
  if (buckling !== null && out.axialBucklingStress !== null) {
    const used = Math.max(out.bendingStress / buckling, out.axialStress / out.axialBucklingStress)
    if (used > 1 / 3)
      found.push(
        caution(
          "wall-buckling",
          "warning",
          "The stress is {used ratio %} of that at which this thin wall buckles, above a third: a dent or a clamp makes it fold suddenly. Take a thicker wall.",
          SP_8007,
          { used },
        ),
      )
  }
  if (si.width !== null && si.wall !== null && si.wall > 0.1 * Math.min(si.width, si.height as number))
    found.push(
      caution(
        "thick-wall",
        "note",
        "Torsion is calculated for a thin closed wall; this one of {given.wall length} is thicker than a tenth of the side.",
        BREDT,
        { "given.wall": si.wall },
      ),
    )
  return found
}

const poissonKnown = (si: SiOf<TubeSectionInput>) =>
  si.material !== null && frameMaterials[si.material].poisson !== null ? (frameMaterials[si.material].poisson as number) : -1

/**
 * What a tube's or bar's section is worth, and the stresses in it.
 *
 * Formulae, ring of outside diameter D and inside diameter d: A = π/4·(D² − d²), I = π/64·(D⁴ − d⁴), J = 2·I, Q = (D³ −
 * d³)/12; rectangle b × h, inside b_i × h_i: I = (b·h³ − b_i·h_i³)/12, torsion by Bredt (thin closed wall) or
 * Saint-Venant's series (solid bar). Stresses from the moment M, torque T, shear force V and axial force N: σ = M·c/I +
 * N/A, τ = T/W_t and V·Q/(I·b), σ_v = √(σ² + 3·τ²) at the worse of the outermost fibre and the neutral axis. Twist φ =
 * T·L/(G·J) over the length L. A thin round wall buckles at γ·E·t/(R·√(3·(1 − ν²))). Temperature and duration of the
 * load reduce the material's figures. Standard pipe is calculated at its minimum wall. Valid for elastic stresses in
 * sections whose shape holds.
 *
 * **Inputs**
 * - `pipe`: standard pipe [one of 11 words; optional]
 * - `outsideDiameter`: outside diameter [D; 0.1 mm to 2 m; optional]
 * - `width`: width [b_w; 0.1 mm to 2 m; optional]
 * - `height`: height [h_w; 0.1 mm to 2 m; optional]
 * - `wall`: wall [t_w; 0.01 mm to 1 m; optional]
 * - `material`: material [one of 17 words; optional]
 * - `modulus`: Young's modulus [E_g; 1 MPa to 1000 GPa; optional]
 * - `strength`: yield or breaking stress [S_g; 0.1 MPa to 10 GPa; optional]
 * - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 * - `duration`: time the load stands [t_l; 0 to 1000 h; default 0]
 * - `shearModulus`: shear modulus [G_g; 1 MPa to 400 GPa; optional]
 * - `moment`: bending moment [M_b; −1000000 to 1000000 N m; default 0]
 * - `torque`: torque [M_t; −1000000 to 1000000 N m; default 0]
 * - `shearForce`: shear force [V; −1000 to 1000 kN; default 0]
 * - `axialForce`: axial force [F_a; −1000 to 1000 kN; default 0]
 * - `length`: length that twists [L; 0 to 100 m; optional]
 * - exactly one of `pipe`, `outsideDiameter` and `width` with `height`
 * - `wall` only beside `outsideDiameter` or `width` with `height`
 *
 * **Results**
 *
 * `area`: area [A; m²]; `secondMoment`: second moment of area [I; m⁴]; `sectionModulus`: section modulus [W_b; m³];
 * `radiusOfGyration`: radius of gyration [r; m]; `firstMoment`: first moment of half the area [Q; m³];
 * `torsionConstant`: torsion constant [J; m⁴]; `torsionModulus`: torsion section modulus [W_t; m³]; `massPerLength`:
 * mass per length [m_l; kg/m]; `shearModulus`: shear modulus [G; Pa]; `bendingStress`: bending stress [sigma_b; Pa];
 * `axialStress`: axial stress [sigma_a; Pa]; `torsionStress`: torsion stress [tau_t; Pa]; `shearStress`: shear stress
 * [tau_v; Pa]; `vonMisesStress`: equivalent stress (von Mises) [sigma_v; Pa]; `trescaStress`: equivalent stress
 * (Tresca) [sigma_t; Pa]; `twist`: twist [phi; rad]; `axialBucklingStress`: wall buckles at, end load [sigma_ca; Pa];
 * `bendingBucklingStress`: wall buckles at, bending [sigma_cb; Pa]; `safetyFactor`: safety factor [n_s to n_u].
 *
 * **Symbols of the working**
 *
 * D_p: outside diameter of the pipe, 0 where it is none [m]; t_p: minimum wall of the pipe, 0 where it is none [m];
 * D_o: outside diameter [m]; D_i: inside diameter [m]; c: neutral axis to outermost fibre [m]; b_i: width inside [m];
 * h_i: height inside [m]; b_n: material at the neutral axis [m]; A_m: area inside the wall's middle line [m²]; a_s:
 * long side [m]; b_s: short side [m]; k_5: series for the stiffness; k_2: series for the stress; E_l: minimum modulus
 * at 23 °C [Pa]; E_h: maximum modulus at 23 °C [Pa]; S_l: minimum strength at 23 °C, 0 where unknown [Pa]; S_h:
 * maximum strength at 23 °C, 0 where unknown [Pa]; S_o: shear strength where the material has its own, else 0 [Pa];
 * f_E: stiffness left at the temperature; f_S: strength left at the temperature; f_c: stiffness and strength left
 * after the load has stood; S: strength, safe end [Pa]; S_u: strength, other end [Pa]; S_s: shear strength, safe end
 * [Pa]; S_su: shear strength, other end [Pa]; E: modulus, safe end [Pa]; E_u: modulus, other end [Pa]; rho: density,
 * heavy end, 0 where unknown [kg/m³]; A_w: area that the weight corresponds to: pipe at its mean wall [m²]; nu:
 * Poisson's ratio, -1 where none applies; g_k: knock-down term; sigma_k: classical buckling stress of the wall [Pa].
 *
 * **Sources**
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, chapters 3, 5 and 7
 * - NASA: Buckling of thin-walled circular cylinders, SP-8007, 1968, section 4 (not verified against the document)
 * - S. P. Timoshenko, J. N. Goodier: Theory of Elasticity, 3rd, 1970, article 109 (not verified against the document)
 * - R. Bredt: Kritische Bemerkungen zur Drehungselastizität, Zeitschrift des Vereines deutscher Ingenieure 40, 1896,
 *   pages 785-790 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's temperature limit
 * @example
 * ```ts
 * import { tubeSection } from 'alula/frame'
 * const spar = tubeSection({ outsideDiameter: '20 mm', wall: '1.5 mm', material: 'aluminium-6061', moment: '15 N m', torque: '9 N m' })
 * spar.bendingStress // => 39955738
 * spar.vonMisesStress // => 45027830
 * spar.safetyFactor.low // => 5.36
 * ```
 */
export const tubeSection: Solver<TubeSectionInput, TubeSection, TubeSectionRefusal, TubeSectionCaution> = /* @__PURE__ */ solver<
  TubeSectionInput,
  TubeSection,
  TubeSectionRefusal,
  TubeSectionCaution
>("tubeSection", "Section properties and stresses of a tube or bar", solve, () => ({
  input: {
    ...shapeFields,
    ...conditionFields,
    shearModulus: {
      kind: "pressure",
      symbol: "G_g",
      label: "shear modulus",
      min: "1 MPa",
      max: "400 GPa",
      typical: ["1 GPa", "30 GPa"],
      default: null,
    },
    moment: { kind: "moment", symbol: "M_b", label: "bending moment", min: -1e6, max: 1e6, typical: [0, 40], default: 0 },
    torque: { kind: "moment", symbol: "M_t", label: "torque", min: -1e6, max: 1e6, typical: [0, 20], default: 0 },
    shearForce: { kind: "force", symbol: "V", label: "shear force", min: -1e6, max: 1e6, typical: [0, 200], default: 0 },
    axialForce: { kind: "force", symbol: "F_a", label: "axial force", min: -1e6, max: 1e6, typical: [0, 500], default: 0 },
    length: { kind: "length", symbol: "L", label: "length that twists", min: 0, max: 100, typical: [0.2, 2], default: null },
  },
  output: {
    area: { kind: "area", symbol: "A", label: "area", unit: "mm²" },
    secondMoment: { kind: "secondMoment", symbol: "I", label: "second moment of area", unit: "mm⁴" },
    sectionModulus: { kind: "volume", symbol: "W_b", label: "section modulus", unit: "mm³" },
    radiusOfGyration: { kind: "length", symbol: "r", label: "radius of gyration" },
    firstMoment: { kind: "volume", symbol: "Q", label: "first moment of half the area", unit: "mm³" },
    torsionConstant: { kind: "secondMoment", symbol: "J", label: "torsion constant", unit: "mm⁴" },
    torsionModulus: { kind: "volume", symbol: "W_t", label: "torsion section modulus", unit: "mm³" },
    massPerLength: { kind: "linearDensity", symbol: "m_l", label: "mass per length" },
    shearModulus: { kind: "pressure", symbol: "G", label: "shear modulus" },
    bendingStress: { kind: "pressure", symbol: "sigma_b", label: "bending stress" },
    axialStress: { kind: "pressure", symbol: "sigma_a", label: "axial stress" },
    torsionStress: { kind: "pressure", symbol: "tau_t", label: "torsion stress" },
    shearStress: { kind: "pressure", symbol: "tau_v", label: "shear stress" },
    vonMisesStress: { kind: "pressure", symbol: "sigma_v", label: "equivalent stress (von Mises)" },
    trescaStress: { kind: "pressure", symbol: "sigma_t", label: "equivalent stress (Tresca)" },
    twist: { kind: "angle", symbol: "phi", label: "twist" },
    axialBucklingStress: { kind: "pressure", symbol: "sigma_ca", label: "wall buckles at, end load" },
    bendingBucklingStress: { kind: "pressure", symbol: "sigma_cb", label: "wall buckles at, bending" },
    safetyFactor: bandField("number", "safety factor", { symbols: ["n_s", "n_u"] }),
  },
  example: { outsideDiameter: "20 mm", wall: "1.5 mm", material: "aluminium-6061", moment: "15 N m", torque: "9 N m", length: "600 mm" },
  formulae: [
    ...sectionSteps<SiOf<TubeSectionInput>, TubeSection>((si) => si, true, false),
    ...conditionSteps<SiOf<TubeSectionInput>, TubeSection>(),
    { symbol: "W_b", meaning: "section modulus", is: "I / c" },
    { symbol: "r", meaning: "radius of gyration", is: "sqrt(I / A)" },
    {
      symbol: "rho",
      kind: "density",
      meaning: "density, heavy end, 0 where unknown",
      given: (si) => (si.material === null ? 0 : frameMaterials[si.material].density[1]),
    },
    {
      symbol: "A_w",
      kind: "area",
      meaning: "area that the weight corresponds to: pipe at its mean wall",
      given: (si) => shapeSection(si).weightArea as number,
    },
    { symbol: "m_l", meaning: "mass per length", is: "rho * A_w", when: "has_material" },
    { symbol: "nu", kind: "number", meaning: "Poisson's ratio, -1 where none applies", given: poissonKnown },
    { symbol: "G", meaning: "shear modulus as given", is: "G_g", when: "has_shearModulus" },
    { symbol: "G", meaning: "shear modulus, isotropic", is: "E / (2 * (1 + nu))", when: "not has_shearModulus and nu > -1" },
    { symbol: "sigma_b", meaning: "bending stress", is: "abs(M_b) * c / I" },
    { symbol: "sigma_a", meaning: "axial stress", is: "abs(F_a) / A" },
    { symbol: "tau_t", meaning: "torsion stress", is: "abs(M_t) / W_t" },
    { symbol: "tau_v", meaning: "shear stress at the neutral axis", is: "abs(V) * Q / (I * b_n)" },
    {
      symbol: "sigma_v",
      meaning: "von Mises, at the outermost fibre or the neutral axis",
      is: "max(sqrt((sigma_b + sigma_a)^2 + 3 * tau_t^2), sqrt(sigma_a^2 + 3 * (tau_t + tau_v)^2))",
    },
    {
      symbol: "sigma_t",
      meaning: "Tresca, likewise",
      is: "max(sqrt((sigma_b + sigma_a)^2 + 4 * tau_t^2), sqrt(sigma_a^2 + 4 * (tau_t + tau_v)^2))",
    },
    { symbol: "phi", meaning: "twist", is: "M_t * L / (G * J)", when: "has_length and (has_shearModulus or nu > -1)" },
    {
      symbol: "g_k",
      kind: "number",
      meaning: "knock-down term",
      is: "1 - exp(-sqrt((D_o + D_i) / 2 / (D_o - D_i)) / 16)",
      when: "nu > -1 and (has_pipe or (has_outsideDiameter and has_wall))",
      source: SP_8007,
    },
    {
      symbol: "sigma_k",
      kind: "pressure",
      meaning: "classical buckling stress of the wall",
      is: "E * (D_o - D_i) / 2 / ((D_o + D_i) / 4 * sqrt(3 * (1 - nu^2)))",
      when: "nu > -1 and (has_pipe or (has_outsideDiameter and has_wall))",
    },
    {
      symbol: "sigma_ca",
      meaning: "knocked down, end load",
      is: "(1 - 0.901 * g_k) * sigma_k",
      when: "nu > -1 and (has_pipe or (has_outsideDiameter and has_wall))",
      source: SP_8007,
    },
    {
      symbol: "sigma_cb",
      meaning: "knocked down, bending",
      is: "(1 - 0.731 * g_k) * sigma_k",
      when: "nu > -1 and (has_pipe or (has_outsideDiameter and has_wall))",
      source: SP_8007,
    },
    {
      symbol: "n_s",
      meaning: "safety factor, safe end",
      is: "S_o > 0 Pa ? 1 / max((sigma_b + sigma_a) / S, (tau_t + tau_v) / S_s) : S / sigma_v",
      when: "(has_strength or has_material) and sigma_v > 1 Pa",
    },
    {
      symbol: "n_u",
      meaning: "safety factor, other end",
      is: "S_o > 0 Pa ? 1 / max((sigma_b + sigma_a) / S_u, (tau_t + tau_v) / S_su) : S_u / sigma_v",
      when: "(has_strength or has_material) and sigma_v > 1 Pa",
    },
  ],
  sources: [at(GERE, "chapters 3, 5 and 7"), SP_8007, ELASTICITY, BREDT],
  either: shapeRules,
  check: (si) => [
    ...sectionFaults(si),
    ...(si.length !== null && si.shearModulus === null && poissonKnown(si) < 0
      ? [inconsistent(["shearModulus"], "nothing", "a shear modulus, or an isotropic material: the twist over a length needs one")]
      : []),
  ],
  cautions,
}))
