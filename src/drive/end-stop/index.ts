import { type NoSolution, type SiOf, type Solver, solver, tried } from "../../solver/index.js"
import { ABSORBER_FORMULAE, ISO_13854, ROTATIONAL_IMPACT } from "../sources.js"
import { cautions } from "./cautions.js"
import { input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { EndStop, EndStopCaution, EndStopInput, EndStopRefusal } from "./types.js"

export { drawEndStop } from "./drawing.js"
export type { AbsorberStop, EndStop, EndStopCaution, EndStopInput, EndStopRefusal, SpringStop } from "./types.js"

const solve = (si: SiOf<EndStopInput>): EndStop | NoSolution<EndStopRefusal> => tried(kernel(si), si, endStop.input, kernel)

/**
 * Energy, way and force of an arm that runs into its stop while the drive still pushes, and how it is thrown back.
 *
 * Formula: at the stop's radius r the arm is a mass J/r² at ω·r, pushed by F₀ = T/r. A spring of stiffness k yields
 * x = (F₀ + √(F₀² + k·J·ω²))/k, its force F = k·x in a time (π/2 + atan(F₀/(ω·r·√(k·m_e))))·√(m_e/k); a share f_r of its energy
 * comes back: ω_b = √((f_r·k·x² − 2·F₀·x)/J). An absorber of stroke x takes E = ½·J·ω² + F₀·x with a mean force E/x and a peak of
 * E/(x·η). On the hinge |F − m₁·r_c·α| with α = (F·r − T)/J: nothing where the stop sits at the centre of percussion.
 *
 * Valid for a rigid arm; friction in the hinge, which helps, is left out.
 *
 * **Inputs**
 * - `inertia`: inertia about the hinge [J; 0.01 g cm² to 1e8 kg m²]
 * - `speed`: speed on meeting the stop [omega; 0.00572958 °/s to 95493 rpm]
 * - `drivingTorque`: torque pushing on [T; 0 to 1e8 N m; default 0]
 * - `stopRadius`: radius of the stop [r; 1 mm to 100 m]
 * - `stop`: stop [by its type: spring or absorber]
 *   - `spring`: a spring or buffer
 *     - `stiffness`: stiffness [k; 1 N/m to 1e9 N/mm]
 *     - `travel`: available travel [x_m; 10 µm to 10 m; optional]
 *     - `returnedShare`: energy given back [f_r; 0 to 100 %; default 100 %]
 *   - `absorber`: a shock absorber
 *     - `stroke`: stroke [x_s; 10 µm to 10 m]
 *     - `absorberEfficiency`: mean over peak force [eta_s; 0.2 to 1; default 0.85]
 * - `mass`: mass of the arm [m_1; 1 mg to 1000000 kg; optional]
 * - `centreRadius`: radius of its centre of mass [r_c; 0 to 100 m; default 0]
 * - `strikeRate`: strikes [n; 0 to 60000 1/min; default 0]
 * - `ratedForce`: rated force of the stop [F_r; 1 mN to 1000000 kN; optional]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `kineticEnergy`: energy of motion [E_k; J]; `drivingWork`: work of the drive
 * meanwhile [E_d; J]; `energy`: energy into the stop [E; J]; `stoppingLength`: stopping length [x; m];
 * `stoppingAngle`: stopping angle [phi; rad]; `stoppingTime`: stopping time [t; s]; `peakForce`: peak force at the
 * stop [F; N]; `meanForce`: mean force at the stop [F_m; N]; `restForce`: force at rest, drive pushing [F_0; N];
 * `peakDeceleration`: peak deceleration [alpha; rad/s²]; `reboundSpeed`: speed thrown back [omega_b; rad/s];
 * `effectiveMass`: effective mass at the stop [m_e; kg]; `hingeForce`: force on the hinge [F_h; N]; `meanHeat`: heat
 * of the stop [P; W]; `utilisation`: peak force against rated [u; as a fraction].
 *
 * **Symbols of the working**
 *
 * springy: 1 for a spring; v: speed at the stop [m/s].
 *
 * **Sources**
 * - Rotational impact: buffers for turning bodies, read 2026, worked example, swing bridge
 * - Calculation bases for the design of industrial shock absorbers, read 2026
 * - ISO: ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body, 2017 (not verified
 *   against the document; read 2026-11-28)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `bottoms-out` where a spring cannot yield so far
 * @example
 * ```ts
 * import { endStop } from 'alula/drive'
 * const stop = endStop({
 *   inertia: '0.35 kg m2', speed: '0.8 rad/s', drivingTorque: '5 N m', stopRadius: '80 mm',
 *   stop: { type: 'spring', stiffness: '20 N/mm', travel: '12 mm', returnedShare: 0.5 },
 * })
 * stop.stoppingLength // => 0.007704
 * stop.peakForce // => 154.1
 * ```
 */
export const endStop: Solver<EndStopInput, EndStop, EndStopRefusal, EndStopCaution> = /* @__PURE__ */ solver<
  EndStopInput,
  EndStop,
  EndStopRefusal,
  EndStopCaution
>("endStop", "How hard an arm meets its stop", solve, () => ({
  input,
  output,
  example: {
    inertia: "0.35 kg m2",
    speed: "0.8 rad/s",
    drivingTorque: "5 N m",
    stopRadius: "80 mm",
    stop: { type: "spring", stiffness: "20 N/mm", travel: "12 mm", returnedShare: 0.5 },
    mass: "1.3 kg",
    centreRadius: "350 mm",
    strikeRate: "2 1/min",
    ratedForce: "300 N",
  },
  formulae,
  sources: [ROTATIONAL_IMPACT, ABSORBER_FORMULAE, ISO_13854],
  cautions,
}))
