import {
  at,
  bandAcross,
  bandField,
  type Caution,
  caution,
  type Fields,
  type Issue,
  inconsistent,
  isNoSolution,
  type NoSolution,
  type SiOf,
  type Solver,
  solver,
} from "../../solver/index.js"
import { conditionCautions, conditionFields, conditionOf, conditionRules, farthest, marginCautions } from "../condition.js"
import { handlingCases, handlingField, motionCautions } from "../data-loads.js"
import { densityField } from "../material-choice.js"
import { sectionFaults, sectionFields, sectionOf, sectionRules } from "../section.js"
import { FOOTFALL, GERE, MACAULAY, MATTIASSON, TIMOSHENKO_GERE } from "../sources.js"
import { beamCurve } from "./curve.js"
import { beamFormulae } from "./formulae.js"
import { type BeamInput, type BeamLoads, beamProblem, beyondEnd, gravity, loadFaults, ownDensity } from "./loads.js"
import { pullDown, strengthOf, strengthOutput, unknownCautions } from "./strength.js"
import type { Beam, BeamCaution, BeamRefusal, BeamTrace } from "./types.js"

export type { BeamInput } from "./loads.js"
export type { Beam, BeamCaution, BeamRefusal } from "./types.js"

function solve(si: SiOf<BeamInput>, trace?: Partial<BeamTrace>): Beam | NoSolution<BeamRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const section = sectionOf(si.section)
  const curve = beamCurve(beamProblem(si, condition.modulus))
  const [moment, shear, sag] = [curve.greatest("moment"), curve.greatest("shear"), curve.greatest("deflection")]
  if (trace) Object.assign(trace, { section, curve, moment, shear, sag } satisfies BeamTrace)
  const end = curve.at(si.length, -1)
  return {
    reactionStart: curve.reactionStart,
    reactionEnd: curve.reactionEnd,
    clampMoment: curve.reactionEnd === null ? curve.at(0, -1).moment : null,
    maxMoment: moment.value,
    maxMomentPosition: moment.at,
    maxShearForce: shear.value,
    maxDeflection: bandAcross([sag.value, (sag.value * condition.modulus) / condition.maxModulus]),
    maxDeflectionPosition: sag.at,
    endDeflection: end.deflection,
    endSlope: end.slope,
    weight: ownDensity(si) * (section.weightArea ?? 0) * gravity * si.length,
    loadFactor: handlingCases[si.handling].factor,
    ...strengthOf(section, condition, moment.value, shear.value),
    iterations: moment.iterations + sag.iterations,
    residual: sag.residual,
  }
}

/** Load parameter P·L²/(E·I) at which the straight-beam formula overstates a cantilever's tip drop by 5 %. */
export const linearLimit = 0.6756366714

function cautions(si: SiOf<BeamInput>, out: Beam, { section }: Partial<BeamTrace>): Caution<BeamCaution>[] {
  const found: Caution<BeamCaution>[] = [...marginCautions(out.safetyFactor), ...conditionCautions(si)]
  const deflection = farthest(out.maxDeflection)
  if (deflection > (linearLimit / 3) * si.length)
    found.push(
      caution(
        "bends-far",
        "caution",
        "It bends by {deflection length} on {given.length length}, so far that the straight-beam formula is off by 5 % or more: use bendingRod for a rod with one load at its tip.",
        MATTIASSON,
        { deflection, "given.length": si.length },
      ),
    )
  if (section?.fibre && si.length < 20 * section.fibre)
    found.push(
      caution(
        "short-beam",
        "note",
        "Shorter than ten times its depth: it also deflects by shear, which is not counted.",
        at(TIMOSHENKO_GERE, "section 6.9; the factor of ten is common practice"),
      ),
    )
  const pull = out.reactionEnd === null ? 0 : pullDown([out.reactionStart, out.reactionEnd])
  if (pull > 0)
    found.push(
      caution(
        "lifts-off",
        "caution",
        "A support would have to pull the beam down by {pull force}: unless it is held there it lifts off and tips.",
        at(GERE, "chapter 4 (statics of beams)"),
        { pull },
      ),
    )
  found.push(...motionCautions(si.handling))
  found.push(...unknownCautions(si, out))
  return found
}

function check(si: SiOf<BeamInput>): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"])]
  if (si.span !== null) {
    if (si.support === "cantilever") faults.push(inconsistent(["span"], "a span", "no span for a cantilever"))
    faults.push(...beyondEnd(si, ["span"], si.span))
  }
  faults.push(...loadFaults(si))
  return faults
}

const place = (symbol: string, label: string) => ({ kind: "length", symbol, label, min: 0, max: 100, typical: [0, 0.5] }) as const
const perLength = (symbol: string, label: string) =>
  ({ kind: "forcePerLength", symbol, label, min: -1e4, max: 1e4, typical: [0, 60] }) as const

/** Field descriptions of how long a beam is and how it is held. */
export const spanFields: Fields<Pick<BeamInput, "length" | "support" | "span">> = {
  length: { kind: "length", symbol: "L", label: "length", min: "10 mm", max: 100, typical: [0.5, 2] },
  support: {
    kind: "choice",
    label: "held",
    options: { cantilever: "clamped at its start, free at its end", simple: "resting on two supports" },
  },
  span: {
    kind: "length",
    symbol: "S_g",
    label: "distance between supports",
    min: "10 mm",
    max: 100,
    typical: [0.3, 0.5],
    default: null,
  },
}

/** Field descriptions of what loads a beam. */
export const loadFields: Fields<BeamLoads> = {
  forces: {
    kind: "list",
    label: "forces",
    min: 0,
    of: {
      kind: "group",
      label: "force",
      fields: {
        force: { kind: "force", symbol: "P_i", label: "force", min: -1e4, max: 1e4, typical: [-20, 60] },
        position: place("a_i", "place"),
      },
    },
    max: 200,
    default: [],
  },
  distributedLoads: {
    kind: "list",
    label: "spread loads",
    min: 0,
    of: {
      kind: "group",
      label: "spread load",
      fields: {
        startLoad: perLength("q_i", "load at its start"),
        endLoad: perLength("q_j", "load at its end"),
        start: place("s_i", "start"),
        end: place("e_i", "end"),
      },
    },
    max: 200,
    default: [],
  },
  moments: {
    kind: "list",
    label: "moments",
    min: 0,
    of: {
      kind: "group",
      label: "moment",
      fields: {
        moment: { kind: "moment", symbol: "C_i", label: "moment", min: -1e4, max: 1e4, typical: [-5, 5] },
        position: place("b_i", "place"),
      },
    },
    max: 200,
    default: [],
  },
}

/**
 * How far a beam sags, what it is stressed to and how near that is to its strength.
 *
 * Formula: E·I·v'''' = w with the loads added up as singularity functions; M = −E·I·v'', V = −E·I·v''', σ = |M|·c/I, τ
 * = |V|·Q/(I·b). v is the deflection (m, down), M the bending moment (N·m, sagging positive), V the shear force, E the
 * modulus at the temperature and after the duration of the load, I the second moment, c the outermost fibre. Every load
 * is multiplied by the factor of `handling`; own weight counts unless `countsOwnWeight` is false. Ranges: `maxDeflection` is
 * that of the stiffest and the softest, `safetyFactor` that of the weakest and the strongest material in the published
 * range. Valid for straight slender beams whose end drops less than about a fifth of the length, stressed elastically.
 *
 * **Inputs**
 * - `length`: length [L; 10 mm to 100 m]
 * - `support`: held [cantilever or simple]
 * - `span`: distance between supports [S_g; 10 mm to 100 m; optional]
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
 * - `density`: density, instead of the material's [rho_g; 1 to 25000 kg/m³; optional]
 * - `forces`: forces [list of 0 to 200; default none]
 *   - `force`: force [P_i; −10 to 10 kN]
 *   - `position`: place [a_i; 0 to 100 m]
 * - `distributedLoads`: spread loads [list of 0 to 200; default none]
 *   - `startLoad`: load at its start [q_i; −10 to 10 N/mm]
 *   - `endLoad`: load at its end [q_j; −10 to 10 N/mm]
 *   - `start`: start [s_i; 0 to 100 m]
 *   - `end`: end [e_i; 0 to 100 m]
 * - `moments`: moments [list of 0 to 200; default none]
 *   - `moment`: moment [C_i; −10000 to 10000 N m]
 *   - `position`: place [b_i; 0 to 100 m]
 * - `countsOwnWeight`: own weight counts [yes or no; default yes]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 * - at least one of `material` and `modulus`
 *
 * **Results**
 *
 * `reactionStart`: first support carries [R_a; N]; `reactionEnd`: second support carries [R_b; N]; `clampMoment`:
 * moment at the clamp [M_0; N m]; `maxMoment`: maximum moment [M_x; N m]; `maxMomentPosition`: at [x_M; m];
 * `maxShearForce`: maximum shear force [V_x; N]; `maxDeflection`: maximum deflection [y_l to y_h; m];
 * `maxDeflectionPosition`: at [x_y; m]; `endDeflection`: deflection of the end [y_e; m]; `endSlope`: slope of the end
 * [theta_e; rad]; `weight`: own weight [W_o; N]; `loadFactor`: handling factor [k_m]; `bendingStress`: bending stress
 * [sigma; Pa]; `shearStress`: shear stress [tau; Pa]; `modulus`: modulus used [E; Pa]; `strength`: strength used [S;
 * Pa]; `stiffnessFactor`: stiffness left, heat [f_E]; `strengthFactor`: strength left, heat [f_S]; `creepFactor`:
 * stiffness factor after creep [f_c]; `safetyFactor`: safety factor [n_s to n_u]; `iterations`: search steps [number];
 * `residual`: slope error where deflection is largest [rad].
 *
 * **Symbols of the working**
 *
 * D_p: outside diameter of the pipe, 0 where it is none [m]; t_p: minimum wall of the pipe, 0 where it is none [m];
 * D_o: outside diameter [m]; D_i: inside diameter [m]; A: area of the ring [m²]; I: second moment of the ring [m⁴]; c:
 * neutral axis to outermost fibre [m]; h_i: height inside [m]; Q: first moment of half the ring [m³]; b_n: material at
 * the neutral axis [m]; E_l: minimum modulus at 23 °C [Pa]; E_h: maximum modulus at 23 °C [Pa]; S_l: minimum strength
 * at 23 °C, 0 where unknown [Pa]; S_h: maximum strength at 23 °C, 0 where unknown [Pa]; S_o: shear strength where the
 * material has its own, else 0 [Pa]; S_u: strength, other end [Pa]; S_s: shear strength, safe end [Pa]; S_su: shear
 * strength, other end [Pa]; E_u: modulus, other end [Pa]; rho: density, heavy end, 0 where own weight is not counted
 * [kg/m³]; A_o: area that the weight corresponds to, 0 where unknown [m²]; P_g: forces [N]; a_P: their places [m];
 * C_g: moments [N m]; a_C: their places [m]; q_s: spread loads at their start [N/m]; q_e: spread loads at their end
 * [N/m]; s_q: where they start [m]; e_q: where they end [m]; S_b: place of the second support, 0 where there is none
 * [m]; P: forces as handled [N]; C: moments as handled [N m]; q_1: spread loads as handled, start [N/m]; q_2: spread
 * loads as handled, end [N/m]; w_o: own weight per length as handled [N/m]; r_q: rise of the spread loads [Pa]; F_t:
 * whole load [N]; M_t: moment of the loads about the start [N m]; R_2: second support [N]; c_2: constant from the
 * clamp [N m]; k_1: constant from the clamp: no slope there [N m]; n_C: 1 for moments left of x_M, else 0; n_P: 1 for
 * forces left of the maximum shear, else 0; n_b: 1 for a support left of the maximum shear, else 0; x_V: place of the
 * maximum shear force [m]; g_M: 1 where the moment turns between loads, else 0; g_y: 1 where the deflection turns
 * between loads, else 0; V_M: shear force there [N]; y_x: maximum deflection, soft end of the range [m]; theta_y:
 * slope there [rad]; y_z: the same, stiff end of the range [m].
 *
 * **Sources**
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, chapters 5 and 9, appendix G
 * - W. H. Macaulay: Note on the deflection of beams, Messenger of Mathematics 48, 1919, pages 129-130 (not verified
 *   against the document)
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's temperature limit
 * @example
 * ```ts
 * import { beam } from 'alula/frame'
 * const spar = beam({
 *   length: '600 mm', support: 'cantilever', section: { secondMoment: '36000 mm4' }, modulus: '2.9 GPa',
 *   forces: [{ force: '20 N', position: '600 mm' }],
 * })
 * spar.maxDeflection.high // => 0.013793
 * spar.endSlope // => 0.034483
 * spar.clampMoment // => -12
 * ```
 */
export const beam: Solver<BeamInput, Beam, BeamRefusal, BeamCaution> = /* @__PURE__ */ solver<
  BeamInput,
  Beam,
  BeamRefusal,
  BeamCaution,
  BeamTrace
>("beam", "How far a beam sags and whether it holds", solve, () => ({
  input: {
    ...spanFields,
    section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
    ...conditionFields,
    density: densityField,
    ...loadFields,
    countsOwnWeight: { kind: "flag", label: "own weight counts", default: true },
    handling: handlingField,
  },
  output: {
    reactionStart: { kind: "force", symbol: "R_a", label: "first support carries" },
    reactionEnd: { kind: "force", symbol: "R_b", label: "second support carries" },
    clampMoment: { kind: "moment", symbol: "M_0", label: "moment at the clamp" },
    maxMoment: { kind: "moment", symbol: "M_x", label: "maximum moment" },
    maxMomentPosition: { kind: "length", symbol: "x_M", label: "  at" },
    maxShearForce: { kind: "force", symbol: "V_x", label: "maximum shear force" },
    maxDeflection: bandField("length", "maximum deflection", {
      symbols: ["y_l", "y_h"],
      labels: ["maximum deflection, low end", "maximum deflection, high end"],
    }),
    maxDeflectionPosition: { kind: "length", symbol: "x_y", label: "  at" },
    endDeflection: { kind: "length", symbol: "y_e", label: "deflection of the end" },
    endSlope: { kind: "angle", symbol: "theta_e", label: "slope of the end" },
    weight: { kind: "force", symbol: "W_o", label: "own weight" },
    loadFactor: { kind: "number", symbol: "k_m", label: "handling factor" },
    ...strengthOutput,
    iterations: { kind: "number", label: "search steps" },
    residual: { kind: "angle", label: "slope error where deflection is largest" },
  },
  example: {
    length: "900 mm",
    support: "cantilever",
    section: { outsideDiameter: "20 mm", wall: "1.5 mm" },
    material: "aluminium-6061",
    forces: [
      { force: "12 N", position: "450 mm" },
      { force: "8 N", position: "300 mm" },
    ],
    distributedLoads: [{ startLoad: "20 N/m", endLoad: "5 N/m", start: 0, end: "500 mm" }],
    moments: [{ moment: "1.5 N m", position: "400 mm" }],
    handling: "walking",
  },
  formulae: beamFormulae,
  sources: [at(GERE, "chapters 5 and 9, appendix G"), MACAULAY, FOOTFALL],
  either: conditionRules,
  check,
  cautions,
}))
