import { type Solver, solver } from "../../solver/index.js"
import { equilibrium, journalFriction, springRate } from "../sources.js"
import { quadrantCautions } from "./cautions.js"
import { quadrantFaults } from "./check.js"
import { quadrantFields, quadrantOutput } from "./fields.js"
import { quadrantFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { CableQuadrant, CableQuadrantCaution, CableQuadrantInput, CableQuadrantRefusal } from "./types.js"

export { cableQuadrantPicture } from "./picture.js"
export type {
  CableQuadrant,
  CableQuadrantCaution,
  CableQuadrantInput,
  CableQuadrantRefusal,
  QuadrantPose,
  ReturnCable,
  ReturnSpring,
} from "./types.js"

/**
 * An arm on a quadrant that one cable turns against a return spring, or two opposed cables turn both ways: tensions, pretension,
 * wrap and play.
 *
 * Formula: the load moment M = Σ m·g·r·cos(q + a + λ) + M_l, and M_d against every motion. With a spring S = T₀ + k₂·r₂·(q − q₀)
 * the cable pulls (M ± M_d + S·(r₂ ± ρ) ± ρ·W)/(r₁ ∓ ρ), with ρ = μ·d_p/2; the upper sign turns, the lower comes back. Two cables
 * stand under T₀ and T₀·r₁/r₂; the drive held, the quadrant gives by g = (M ± M_d ± ρ·(W + T₀ + T₀·r₁/r₂))/(k₁·r₁·(r₁ ∓ ρ) +
 * k₂·r₂·(r₂ ± ρ)), which tightens one by k₁·r₁·g and eases the other by k₂·r₂·g. Inertia is that of the masses, at every angle
 * the same.
 *
 * Valid for rims of constant radius, a drive that pays one cable out as it takes the other in, slow motion, and a pivot that
 * bears weight and pulls as if they all went one way: friction is not underestimated.
 *
 * Refuses `runs-off-rim` where a rim has not arc enough, `goes-slack` where the pretension does not keep both taut.
 *
 * **Inputs**
 * - `radius`: radius of the opening cable [r_1; 1 mm to 2 m]
 * - `startAngle`: angle at the start [q_0; −180° to 180°]
 * - `travel`: angle of travel [q_t; 1° to 330°]
 * - `wrap`: arc of the opening cable at the start [w_1; 0 to 360°]
 * - `cableStiffness`: stiffness of the opening cable [k_1; 1 N/m to 10000 N/mm]
 * - `pretension`: pretension [T_0; 0 to 100 kN]
 * - `returnedBy`: what brings it back [by its type: spring or cable]
 *   - `spring`: a return spring
 *     - `radius`: radius of the spring's rim [r_2; 1 mm to 2 m]
 *     - `springRate`: rate of the spring [k_2; 1 N/m to 10000 N/mm]
 *   - `cable`: a second cable
 *     - `radius`: radius of the second cable [r_2; 1 mm to 2 m]
 *     - `stiffness`: stiffness of the second cable [k_2; 1 N/m to 10000 N/mm]
 *     - `wrap`: arc of the second cable at the start [w_2; 0 to 360°]
 *     - `rimAngle`: arc of its rim [w_m; 1° to 360°]
 * - `masses`: masses on the arm [list of 1 to 20]
 *   - `mass`: mass [m_w; 0 to 200 kg]
 *   - `radius`: distance from the hinge [r_w; 0 to 20 m]
 *   - `angle`: angle from the arm [a_w; −572.958° to 572.958°; default 0]
 * - `frameTilt`: lean of the frame [lambda; −90° to 90°; default 0]
 * - `loadMoment`: constant moment, downward [M_l; −10000 to 10000 N m; default 0]
 * - `opposingMoment`: moment against every motion [M_d; 0 to 10000 N m; default 0]
 * - `pinFriction`: friction of the pivot [mu; 0 to 1; default 0]
 * - `pinDiameter`: diameter of the pivot [d_p; 0 to 1 m; default 0]
 * - `tipRadius`: pivot to the tip [R; 1 mm to 20 m; optional]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `cableTravel`: travel of the opening cable [s_1; m]; `returnTravel`: travel of spring
 * or second cable [s_2; m]; `wrapLeft`: arc of the opening cable left at the end [w_l; rad]; `rimLeft`: arc of the
 * second cable's rim left at the end [w_r; rad]; `inertia`: inertia of the masses [J; kg m²]; `loadMoment`: load
 * moment over the travel [M_n to M_x; N m]; `openingTension`: tension of the opening cable [T_n to T_x; N];
 * `returningTension`: tension of spring or second cable [S_n to S_x; N]; `requiredPretension`: pretension that keeps
 * both taut [T_r; N]; `rotationalStiffness`: stiffness at the pivot, drive held [K; N m/rad]; `tipDeflection`: play of
 * the tip under the load [y; m]; `storedEnergy`: energy stored, at most [W_e; J]; `poses`: over the travel [list].
 *
 * **Symbols of the working**
 *
 * sprung: 1 with a return spring; g_n: standard gravity [m/s²]; W: weight on the pivot [N]; rho: friction circle of
 * the pivot [m]; M_c: moment of the weights, arm level [N m]; M_s: their moment across it [N m]; q_k: both ends, and
 * where a tension turns [rad]; M_k: load moment there [N m]; m_x: moment to balance, turning [N m]; S_kx: tension of
 * the spring [N]; T_kx: tension of the opening cable, turning [N]; g_x: how far the quadrant gives, turning [rad];
 * m_n: moment to balance, coming back [N m]; S_kn: tension of the spring [N]; T_kn: tension of the opening cable,
 * coming back [N]; a_x: what the cables give, turning [N/m]; a_n: what they give, coming back [N/m]; c: sum of pulls
 * for each of pretension, on the friction circle [m].
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, chapter 5 (equilibrium of a rigid body)
 *   (not verified against the document)
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, section 8.7 (journal bearings) (not
 *   verified against the document)
 * - R. G. Budynas, J. K. Nisbett (McGraw-Hill): Shigley's Mechanical Engineering Design, 10th ed., 2015, chapter 10
 *   (rate of a helical spring) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where a cable runs off its rim or goes slack
 * @example
 * ```ts
 * import { cableQuadrant } from 'alula/linkage'
 * const tail = cableQuadrant({
 *   radius: '50 mm', startAngle: '-30 deg', travel: '60 deg', wrap: '120 deg', cableStiffness: '60 N/mm', pretension: '70 N',
 *   returnedBy: { type: 'cable', radius: '50 mm', stiffness: '60 N/mm', wrap: '20 deg', rimAngle: '200 deg' },
 *   masses: [{ mass: '0.8 kg', radius: '350 mm' }],
 * })
 * tail.loadMoment.high // => 2.746
 * tail.requiredPretension // => 27.46
 * ```
 */
export const cableQuadrant: Solver<CableQuadrantInput, CableQuadrant, CableQuadrantRefusal, CableQuadrantCaution> = /* @__PURE__ */ solver<
  CableQuadrantInput,
  CableQuadrant,
  CableQuadrantRefusal,
  CableQuadrantCaution
>("cableQuadrant", "An arm on a quadrant, turned by cables", solve, () => ({
  input: quadrantFields(),
  output: quadrantOutput(),
  example: {
    radius: "50 mm",
    startAngle: "-30 deg",
    travel: "60 deg",
    wrap: "120 deg",
    cableStiffness: "60 N/mm",
    pretension: "70 N",
    returnedBy: { type: "cable", radius: "50 mm", stiffness: "60 N/mm", wrap: "20 deg", rimAngle: "200 deg" },
    masses: [
      { mass: "0.6 kg", radius: "250 mm" },
      { mass: "0.2 kg", radius: "650 mm", angle: "5 deg" },
    ],
    frameTilt: "5 deg",
    opposingMoment: "0.1 N m",
    pinFriction: 0.15,
    pinDiameter: "8 mm",
    tipRadius: "800 mm",
  },
  formulae: quadrantFormulae(),
  sources: [equilibrium, journalFriction, springRate],
  check: quadrantFaults,
  cautions: quadrantCautions,
}))
