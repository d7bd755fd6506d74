import { bandField, type Solver, solver } from "../../solver/index.js"
import { conditionFields, conditionRules } from "../condition.js"
import { sectionFields, sectionRules } from "../section.js"
import { BLEVINS, FOOTFALL, THOMSON, WITTRICK_WILLIAMS } from "../sources.js"
import { stiffnessField, turningStiffnessField } from "../spring-fields.js"
import { cautions, check } from "./cautions.js"
import { naturalFrequencyFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type {
  NaturalFrequency,
  NaturalFrequencyCaution,
  NaturalFrequencyInput,
  NaturalFrequencyRefusal,
  NaturalFrequencyTrace,
} from "./types.js"

export { cantileverRoot, magnification } from "./kernel.js"
export type {
  HoldingActuator,
  MassAlong,
  NaturalFrequency,
  NaturalFrequencyCaution,
  NaturalFrequencyInput,
  NaturalFrequencyRefusal,
} from "./types.js"

/**
 * How fast a member swings by itself that is clamped or sprung at its root and carries masses, against the steps of the wearer.
 *
 * Formula: fᵢ = xᵢ²/(2·π·L²)·√(E·I/m), xᵢ the roots of 1 + cos x·cosh x = μ·x·(sin x·cosh x − cos x·sinh x) with μ =
 * M/(m·L); L is the length, M the tip mass, m the mass per length (kg/m; of material and section unless given, plus
 * `addedMass`), E the modulus at the temperature, I the second moment. Estimate: √(3·E·I/(L³·(M +
 * 33/140·m·L)))/(2·π). A root that gives turns by M/k, 1/k = 1/k_t + 1/(k_a·r_a²) with an actuator of stiffness k_a on a lever arm r_a, and
 * sinks by V/k_r; with it, or masses along the member, the roots are those of the exact stiffness of the stretches between the masses, and
 * the estimate counts every mass by the shape that a force at the tip gives. A shake at r times the frequency is magnified by 1/√((1 − r²)² + (2·ζ·r)²), ζ the damping ratio
 * (default: common practice), for the steps and their second harmonic. Frequencies are those of the soft and heavy ends
 * of the material's ranges, `frequency.high` of the stiff and light ends. Valid for slender members with the tip mass
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
 * - `masses`: masses along it [list of 0 to 20; default none]
 *   - `mass`: mass [M_i; 0 to 100 kg]
 *   - `position`: place [a_i; 0 to 20 m]
 * - `rootTurningStiffness`: moment for each angle the root turns [k_t; 0.1 to 1e9 N m/rad; optional]
 * - `rootStiffness`: force for each length the root gives [k_r; 10 N/m to 1000000 N/mm; optional]
 * - `actuator`: actuator that holds it [group; optional]
 *   - `stiffness`: force for each length it gives [k_a; 10 N/m to 1000000 N/mm]
 *   - `leverArm`: lever arm about the hinge [r_a; 1 mm to 10 m]
 * - `stepRate`: steps per second [f_s; 0.5 to 4 Hz; default 2 Hz]
 * - `damping`: damping ratio [zeta; 0.001 to 0.5; default 0.02]
 * - at least one of `material` and `modulus`
 *
 * **Results**
 *
 * `massPerLength`: mass per length in all [m_u to m_l; kg/m]; `massRatio`: tip mass against the rest [mu];
 * `rootTurning`: root's turning against the member's bending [psi_t]; `rootSinking`: root's sinking against the
 * member's bending [psi_r]; `firstRoot`: first root [x_u to x_1]; `secondRoot`: second root [x_2]; `thirdRoot`: third
 * root [x_3]; `frequency`: first frequency [f_1 to f_u; Hz]; `secondFrequency`: second frequency [f_2; Hz];
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
 * g_n: 1 where the root gives or masses sit along the member, else 0; psi_u: turning of the root, stiff end of the
 * range; l_s1: lengths of the stretches between masses, over the whole, for x_1; m_s1: masses at their ends, over the
 * member's, for x_1; v_s1: deflection at their starts, for x_1; w_s1: slope at their starts, for x_1; b_s1: second
 * derivative at their starts, for x_1; q_s1: third derivative at their starts, for x_1; w_r_s1: slope at the root, for
 * x_1; b_r_s1: second derivative at the root, for x_1; n_b_s1: second derivative that they must end with, for x_1;
 * n_q_s1: third derivative that they must end with, for x_1; A_s1: first of Krylov's functions, for x_1; B_s1: second
 * of them, for x_1; D_s1: third of them, for x_1; G_s1: fourth of them, for x_1; f_s1: deflection at the ends of the
 * stretches, for x_1; l_s2: lengths of the stretches between masses, over the whole, for x_2; m_s2: masses at their
 * ends, over the member's, for x_2; v_s2: deflection at their starts, for x_2; w_s2: slope at their starts, for x_2;
 * b_s2: second derivative at their starts, for x_2; q_s2: third derivative at their starts, for x_2; w_r_s2: slope at
 * the root, for x_2; b_r_s2: second derivative at the root, for x_2; n_b_s2: second derivative that they must end
 * with, for x_2; n_q_s2: third derivative that they must end with, for x_2; A_s2: first of Krylov's functions, for
 * x_2; B_s2: second of them, for x_2; D_s2: third of them, for x_2; G_s2: fourth of them, for x_2; f_s2: deflection at
 * the ends of the stretches, for x_2; l_s3: lengths of the stretches between masses, over the whole, for x_3; m_s3:
 * masses at their ends, over the member's, for x_3; v_s3: deflection at their starts, for x_3; w_s3: slope at their
 * starts, for x_3; b_s3: second derivative at their starts, for x_3; q_s3: third derivative at their starts, for x_3;
 * w_r_s3: slope at the root, for x_3; b_r_s3: second derivative at the root, for x_3; n_b_s3: second derivative that
 * they must end with, for x_3; n_q_s3: third derivative that they must end with, for x_3; A_s3: first of Krylov's
 * functions, for x_3; B_s3: second of them, for x_3; D_s3: third of them, for x_3; G_s3: fourth of them, for x_3;
 * f_s3: deflection at the ends of the stretches, for x_3; l_su: lengths of the stretches between masses, over the
 * whole, for x_u; m_su: masses at their ends, over the member's, for x_u; v_su: deflection at their starts, for x_u;
 * w_su: slope at their starts, for x_u; b_su: second derivative at their starts, for x_u; q_su: third derivative at
 * their starts, for x_u; w_r_su: slope at the root, for x_u; b_r_su: second derivative at the root, for x_u; n_b_su:
 * second derivative that they must end with, for x_u; n_q_su: third derivative that they must end with, for x_u; A_su:
 * first of Krylov's functions, for x_u; B_su: second of them, for x_u; D_su: third of them, for x_u; G_su: fourth of
 * them, for x_u; f_su: deflection at the ends of the stretches, for x_u; f_o: pace of the member [Hz]; M_h: masses
 * along the member [kg]; a_h: their places over the length; d_h: give of the tip against P * L^3 / (E * I); s_h: how
 * far each mass moves against the tip; c_h: share of the member's own mass that counts: 33/140 on a rigid root; r_1:
 * steps against the nearest frequency in the range; r_2: second harmonic likewise; a_1: magnified, steps; a_2:
 * magnified, second harmonic.
 *
 * **Sources**
 * - R. D. Blevins: Formulas for Natural Frequency and Mode Shape, 1979, tables 8-1 and 8-8 (not verified against the
 *   document)
 * - W. T. Thomson: Theory of Vibration with Applications, 5th, 1998, chapter 3 (not verified against the document)
 * - W. H. Wittrick, F. W. Williams: A general algorithm for computing natural frequencies of elastic structures,
 *   Quart. J. Mech. Appl. Math. 24, 1971, pages 263-284 (not verified against the document)
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
 * boom.firstRoot.high // => 1.24791741
 * boom.frequency.low // => 10.48656638
 * boom.stepRatio // => 5.243
 * ```
 */
export const naturalFrequency: Solver<NaturalFrequencyInput, NaturalFrequency, NaturalFrequencyRefusal, NaturalFrequencyCaution> =
  /* @__PURE__ */ solver<NaturalFrequencyInput, NaturalFrequency, NaturalFrequencyRefusal, NaturalFrequencyCaution, NaturalFrequencyTrace>(
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
        masses: {
          kind: "list",
          label: "masses along it",
          of: {
            kind: "group",
            label: "mass",
            fields: {
              mass: { kind: "mass", symbol: "M_i", label: "mass", min: 0, max: 100, typical: [0.02, 0.5] },
              position: { kind: "length", symbol: "a_i", label: "place", min: 0, max: 20, typical: [0.1, 0.3] },
            },
          },
          min: 0,
          max: 20,
          default: [],
        },
        rootTurningStiffness: turningStiffnessField("moment for each angle the root turns", [50, 5000]),
        rootStiffness: stiffnessField("k_r", "force for each length the root gives", [1e3, 1e6]),
        actuator: {
          kind: "group",
          label: "actuator that holds it",
          fields: {
            stiffness: {
              kind: "forcePerLength",
              symbol: "k_a",
              label: "force for each length it gives",
              min: 10,
              max: 1e9,
              typical: [1e4, 1e6],
            },
            leverArm: { kind: "length", symbol: "r_a", label: "lever arm about the hinge", min: "1 mm", max: 10, typical: [0.03, 0.15] },
          },
          default: null,
        },
        stepRate: { kind: "frequency", symbol: "f_s", label: "steps per second", min: 0.5, max: 4, typical: [1.4, 2.4], default: 2 },
        damping: { kind: "ratio", symbol: "zeta", label: "damping ratio", min: 0.001, max: 0.5, typical: [0.005, 0.05], default: 0.02 },
      },
      output: {
        massPerLength: bandField("linearDensity", "mass per length in all", { symbols: ["m_u", "m_l"] }),
        massRatio: { kind: "number", symbol: "mu", label: "tip mass against the rest" },
        rootTurning: { kind: "number", symbol: "psi_t", label: "root's turning against the member's bending" },
        rootSinking: { kind: "number", symbol: "psi_r", label: "root's sinking against the member's bending" },
        firstRoot: bandField("number", "first root", { symbols: ["x_u", "x_1"] }),
        secondRoot: { kind: "number", symbol: "x_2", label: "second root" },
        thirdRoot: { kind: "number", symbol: "x_3", label: "third root" },
        frequency: bandField("frequency", "first frequency", { symbols: ["f_1", "f_u"] }),
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
      formulae: naturalFrequencyFormulae(),
      sources: [BLEVINS, THOMSON, WITTRICK_WILLIAMS, FOOTFALL],
      either: conditionRules,
      check,
      cautions,
    }),
  )
