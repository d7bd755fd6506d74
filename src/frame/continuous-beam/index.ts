import { at, bandField, type Solver, solver } from "../../solver/index.js"
import { loadFields } from "../beam/index.js"
import { strengthOutput } from "../beam/strength.js"
import { conditionFields, conditionRules } from "../condition.js"
import { handlingField } from "../data-loads.js"
import { densityField } from "../material-choice.js"
import { sectionFields, sectionRules } from "../section.js"
import { FOOTFALL, GERE, HIBBELER_STRUCTURES, MACAULAY } from "../sources.js"
import { stiffnessField, turningStiffnessField } from "../spring-fields.js"
import { continuousBeamCautions, continuousBeamFaults } from "./cautions.js"
import { continuousBeamFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { ContinuousBeam, ContinuousBeamCaution, ContinuousBeamInput, ContinuousBeamRefusal, ContinuousBeamTrace } from "./types.js"

export type {
  BeamPlace,
  BeamRest,
  BeamSpan,
  ClampedRest,
  ContinuousBeam,
  ContinuousBeamCaution,
  ContinuousBeamInput,
  ContinuousBeamRefusal,
  PinnedRest,
  SpringRest,
} from "./types.js"

const position = { kind: "length", symbol: "a_s", label: "place", min: 0, max: 100, typical: [0, 1.2] } as const

/**
 * A beam on any number of supports: propped, over several spans, overhanging, on springs. What each support carries, how far it
 * sags, what it is stressed to.
 *
 * Formula: E·I·v'''' = w between the supports; at each of them deflection, slope and moment carry on, a rigid support does not move, a
 * clamped one does not turn, a spring gives by R/k (and turns by M/k_t). M = −E·I·v'', V = −E·I·v''', σ = |M|·c/I, τ = |V|·Q/(I·b). v is
 * the deflection (m, down), M the bending moment (N·m, sagging positive). Every load is multiplied by the factor of `handling`; own
 * weight counts unless `countsOwnWeight` is false. Deflection is that of the softest material in its published range, moment and shear those of
 * whichever end of the range gives more (with springs they differ). Valid for straight slender beams of one section, supports that
 * also hold down, and small deflections.
 *
 * Refuses `unstable` where nothing keeps it from turning.
 *
 * **Inputs**
 * - `length`: length [L; 10 mm to 100 m]
 * - `supports`: supports [list of 1 to 30]
 *   - `pinned`: holds, and lets the beam turn
 *     - `position`: place [a_s; 0 to 100 m]
 *   - `clamped`: clamped: holds it against turning too
 *     - `position`: place [a_s; 0 to 100 m]
 *   - `spring`: a spring, or a bracket that gives
 *     - `position`: place [a_s; 0 to 100 m]
 *     - `stiffness`: force for each length it gives [k_s; 10 N/m to 1000000 N/mm; optional]
 *     - `turningStiffness`: moment for each angle it turns [k_t; 0.1 to 1e9 N m/rad; optional]
 *     - at least one of `stiffness` and `turningStiffness`
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
 * `places`: ends and supports [list]; `spans`: spans and overhangs [list]; `maxMoment`: maximum moment [M_x; N m];
 * `maxMomentPosition`: at [x_M; m]; `maxShearForce`: maximum shear force [V_x; N]; `maxDeflection`: maximum deflection
 * [y_l to y_h; m]; `maxDeflectionPosition`: at [x_y; m]; `weight`: own weight [W_o; N]; `loadFactor`: handling factor
 * [k_m]; `bendingStress`: bending stress [sigma; Pa]; `shearStress`: shear stress [tau; Pa]; `modulus`: modulus used
 * [E; Pa]; `strength`: strength used [S; Pa]; `stiffnessFactor`: stiffness left, heat [f_E]; `strengthFactor`:
 * strength left, heat [f_S]; `creepFactor`: stiffness factor after creep [f_c]; `safetyFactor`: safety factor [n_s to
 * n_u].
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
 * C_g: moments [N m]; Q_g: spread loads [N]; H_g: their moments about the start [N m]; R_i: reactions [N]; x_i: their
 * places [m]; N_i: moments of the supports [N m]; F_s: size of the loads [N]; o_M: start of the stretch, where the
 * moment is largest [m]; l_M: length of the stretch, where the moment is largest [m]; P_M: forces on it as handled,
 * where the moment is largest [N]; a_M: their places on it, where the moment is largest [m]; n_M: 1 for those left of
 * the place asked for, else 0, where the moment is largest; C_M: moments on it as handled, where the moment is largest
 * [N m]; b_M: their places on it, where the moment is largest [m]; m_M: 1 for those left of the place asked for, else
 * 0, where the moment is largest; u_M: spread loads at their start, where the moment is largest [N/m]; w_M: spread
 * loads at their end, where the moment is largest [N/m]; s_M: where they start, where the moment is largest [m]; e_M:
 * where they end, where the moment is largest [m]; A_M: bending moment at its start, where the moment is largest [N
 * m]; B_M: bending moment at its end, where the moment is largest [N m]; R_M: force that holds its start up, where the
 * moment is largest [N]; g_n: 1 where the moment turns between loads, else 0; V_M: shear force there [N]; o_V: start
 * of the stretch, where the shear force is largest [m]; l_V: length of the stretch, where the shear force is largest
 * [m]; P_V: forces on it as handled, where the shear force is largest [N]; a_V: their places on it, where the shear
 * force is largest [m]; n_V: 1 for those left of the place asked for, else 0, where the shear force is largest; C_V:
 * moments on it as handled, where the shear force is largest [N m]; b_V: their places on it, where the shear force is
 * largest [m]; m_V: 1 for those left of the place asked for, else 0, where the shear force is largest; u_V: spread
 * loads at their start, where the shear force is largest [N/m]; w_V: spread loads at their end, where the shear force
 * is largest [N/m]; s_V: where they start, where the shear force is largest [m]; e_V: where they end, where the shear
 * force is largest [m]; A_V: bending moment at its start, where the shear force is largest [N m]; B_V: bending moment
 * at its end, where the shear force is largest [N m]; R_V: force that holds its start up, where the shear force is
 * largest [N]; x_V: place on it of the maximum shear force [m]; o_y: start of the stretch, where the deflection is
 * largest [m]; l_y: length of the stretch, where the deflection is largest [m]; P_y: forces on it as handled, where
 * the deflection is largest [N]; a_y: their places on it, where the deflection is largest [m]; n_y: 1 for those left
 * of the place asked for, else 0, where the deflection is largest; C_y: moments on it as handled, where the deflection
 * is largest [N m]; b_y: their places on it, where the deflection is largest [m]; m_y: 1 for those left of the place
 * asked for, else 0, where the deflection is largest; u_y: spread loads at their start, where the deflection is
 * largest [N/m]; w_y: spread loads at their end, where the deflection is largest [N/m]; s_y: where they start, where
 * the deflection is largest [m]; e_y: where they end, where the deflection is largest [m]; A_y: bending moment at its
 * start, where the deflection is largest [N m]; B_y: bending moment at its end, where the deflection is largest [N m];
 * R_y: force that holds its start up, where the deflection is largest [N]; f_y: deflection of its start, where the
 * deflection is largest [m]; g_y: deflection of its end, where the deflection is largest [m]; y_x: maximum deflection,
 * soft end of the range [m]; g_s: 1 where the deflection turns between loads, else 0; theta_y: slope there [rad]; o_z:
 * start of the stretch, where it is largest at the stiff end of the range [m]; l_z: length of the stretch, where it is
 * largest at the stiff end of the range [m]; P_z: forces on it as handled, where it is largest at the stiff end of the
 * range [N]; a_z: their places on it, where it is largest at the stiff end of the range [m]; n_z: 1 for those left of
 * the place asked for, else 0, where it is largest at the stiff end of the range; C_z: moments on it as handled, where
 * it is largest at the stiff end of the range [N m]; b_z: their places on it, where it is largest at the stiff end of
 * the range [m]; m_z: 1 for those left of the place asked for, else 0, where it is largest at the stiff end of the
 * range; u_z: spread loads at their start, where it is largest at the stiff end of the range [N/m]; w_z: spread loads
 * at their end, where it is largest at the stiff end of the range [N/m]; s_z: where they start, where it is largest at
 * the stiff end of the range [m]; e_z: where they end, where it is largest at the stiff end of the range [m]; A_z:
 * bending moment at its start, where it is largest at the stiff end of the range [N m]; B_z: bending moment at its
 * end, where it is largest at the stiff end of the range [N m]; R_z: force that holds its start up, where it is
 * largest at the stiff end of the range [N]; f_z: deflection of its start, where it is largest at the stiff end of the
 * range [m]; g_z: deflection of its end, where it is largest at the stiff end of the range [m]; x_z: place on it of
 * the maximum deflection, stiff end of the range [m]; y_z: maximum deflection, stiff end of the range [m].
 *
 * **Sources**
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, chapters 5, 9 and 10
 * - R. C. Hibbeler: Structural Analysis, 8th, 2012, chapters 10 and 11 (continuous beams) (not verified against the
 *   document)
 * - W. H. Macaulay: Note on the deflection of beams, Messenger of Mathematics 48, 1919, pages 129-130 (not verified
 *   against the document)
 * - M. R. Willford, P. Young: A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's temperature limit, `unstable` on one support that lets it turn
 * @example
 * ```ts
 * import { continuousBeam } from 'alula/frame'
 * const rail = continuousBeam({
 *   length: '1.8 m', section: { secondMoment: '36000 mm4' }, modulus: '2.9 GPa',
 *   supports: [{ type: 'pinned', position: 0 }, { type: 'pinned', position: '600 mm' }, { type: 'pinned', position: '1.2 m' }, { type: 'pinned', position: '1.8 m' }],
 *   distributedLoads: [{ startLoad: '50 N/m', endLoad: '50 N/m', start: 0, end: '1.8 m' }],
 * })
 * rail.places[1].reaction // => 33
 * rail.maxMoment // => -1.8
 * ```
 */
export const continuousBeam: Solver<ContinuousBeamInput, ContinuousBeam, ContinuousBeamRefusal, ContinuousBeamCaution> =
  /* @__PURE__ */ solver<ContinuousBeamInput, ContinuousBeam, ContinuousBeamRefusal, ContinuousBeamCaution, ContinuousBeamTrace>(
    "continuousBeam",
    "How far a beam on several supports sags and whether it holds",
    solve,
    () => ({
      input: {
        length: { kind: "length", symbol: "L", label: "length", min: "10 mm", max: 100, typical: [1.2, 2] },
        supports: {
          kind: "list",
          label: "supports",
          of: {
            kind: "variant",
            label: "support",
            of: {
              pinned: { label: "holds, and lets the beam turn", fields: { position } },
              clamped: { label: "clamped: holds it against turning too", fields: { position } },
              spring: {
                label: "a spring, or a bracket that gives",
                fields: {
                  position,
                  stiffness: stiffnessField("k_s", "force for each length it gives"),
                  turningStiffness: turningStiffnessField("moment for each angle it turns"),
                },
                either: [{ atLeastOne: ["stiffness", "turningStiffness"] }],
              },
            },
          },
          min: 1,
          max: 30,
        },
        section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
        ...conditionFields,
        density: densityField,
        ...loadFields,
        countsOwnWeight: { kind: "flag", label: "own weight counts", default: true },
        handling: handlingField,
      },
      output: {
        places: {
          kind: "list",
          label: "ends and supports",
          of: {
            kind: "group",
            label: "place",
            fields: {
              position: { kind: "length", symbol: "x_p", label: "place" },
              reaction: { kind: "force", symbol: "R_p", label: "support carries" },
              holdingMoment: { kind: "moment", symbol: "N_p", label: "holds against turning with" },
              bendingMoment: { kind: "moment", symbol: "M_p", label: "bending moment" },
              deflection: { kind: "length", symbol: "y_p", label: "deflection" },
              slope: { kind: "angle", symbol: "theta_p", label: "slope" },
            },
          },
        },
        spans: {
          kind: "list",
          label: "spans and overhangs",
          of: {
            kind: "group",
            label: "span",
            fields: {
              start: { kind: "length", symbol: "x_1", label: "from" },
              end: { kind: "length", symbol: "x_2", label: "to" },
              maxSagging: { kind: "moment", symbol: "M_s", label: "maximum sagging moment" },
              maxSaggingPosition: { kind: "length", symbol: "x_s", label: "  at" },
              maxHogging: { kind: "moment", symbol: "M_h", label: "maximum hogging moment" },
              maxDeflection: { kind: "length", symbol: "y_s", label: "maximum deflection" },
              maxDeflectionPosition: { kind: "length", symbol: "x_d", label: "  at" },
            },
          },
        },
        maxMoment: { kind: "moment", symbol: "M_x", label: "maximum moment" },
        maxMomentPosition: { kind: "length", symbol: "x_M", label: "  at" },
        maxShearForce: { kind: "force", symbol: "V_x", label: "maximum shear force" },
        maxDeflection: bandField("length", "maximum deflection", {
          symbols: ["y_l", "y_h"],
          labels: ["maximum deflection, low end", "maximum deflection, high end"],
        }),
        maxDeflectionPosition: { kind: "length", symbol: "x_y", label: "  at" },
        weight: { kind: "force", symbol: "W_o", label: "own weight" },
        loadFactor: { kind: "number", symbol: "k_m", label: "handling factor" },
        ...strengthOutput,
      },
      example: {
        length: "1.8 m",
        supports: [
          { type: "clamped", position: 0 },
          { type: "pinned", position: "800 mm" },
          { type: "spring", position: "1.5 m", stiffness: "20 N/mm" },
        ],
        section: { outsideDiameter: "16 mm", wall: "1 mm" },
        material: "aluminium-6061",
        forces: [
          { force: "25 N", position: "1.8 m" },
          { force: "40 N", position: "400 mm" },
        ],
        distributedLoads: [{ startLoad: "20 N/m", endLoad: "5 N/m", start: "100 mm", end: "1.2 m" }],
        moments: [{ moment: "1.5 N m", position: "1.1 m" }],
        handling: "walking",
      },
      formulae: continuousBeamFormulae,
      sources: [at(GERE, "chapters 5, 9 and 10"), at(HIBBELER_STRUCTURES, "chapters 10 and 11 (continuous beams)"), MACAULAY, FOOTFALL],
      either: conditionRules,
      check: continuousBeamFaults,
      cautions: continuousBeamCautions,
    }),
  )
