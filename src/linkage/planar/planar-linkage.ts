import { type Issue, inconsistent, isNoSolution, type NoSolution, type Solver, solver, withNearest } from "../../solver/index.js"
import { jalon, journalFriction, norton } from "../sources.js"
import { planarCautions } from "./cautions.js"
import { massFaults, mechanismFaults } from "./check.js"
import { planarFormulae } from "./formulae.js"
import { type PlanarLinkageInput, planarFields, type Si } from "./input.js"
import { kernel, type PlanarTrace } from "./kernel.js"
import { driverKnobs } from "./motion.js"
import { type PlanarLinkage, type PlanarLinkageCaution, type PlanarLinkageRefusal, planarOutput } from "./output.js"

export type { LinkageMass, PlanarLinkageInput } from "./input.js"

function solve(si: Si, trace?: Partial<PlanarTrace>): PlanarLinkage | NoSolution<PlanarLinkageRefusal> {
  const out = kernel(si, trace)
  if (!isNoSolution(out)) return out
  return withNearest(out, planarLinkage, (changed) => kernel(changed), si, { ...driverKnobs(si, si.steps), ...out.nearest })
}

function check(si: Si): readonly Issue[] {
  const faults = [...mechanismFaults(si), ...massFaults(si)]
  if (faults.length || si.trace === null) return faults
  const names = [...si.pivots, ...si.points].map((p) => p.name)
  return names.includes(si.trace)
    ? []
    : [inconsistent(["trace"], "'{trace}'", "a point ({points})", { trace: si.trace, points: names.join(", ") })]
}

/**
 * Any planar mechanism of pins, bars, sliders and drivers, given as data: pose, motion along one
 * branch, velocities, accelerations, path of a point, pin forces and driver effort.
 *
 * Formula: the coordinates of all moving points satisfy one equation per bar, (|Δ|² − l²)/(2·l) = 0, two per carried
 * point, one per slider, (line × reach)/l = h, and one per driver. Newton's method from the sketch, or from places
 * around it where it does not close; then the motion is followed in steps that shrink until the points' paths go on
 * smoothly from step to step and the change of the Jacobian J, J⁻¹·ΔJ, stays below one, so that neither one loop nor
 * several at once pass a toggle in a step. Branches that cross at less than a few degrees may be taken for one another.
 * J·q̇ = −∂Φ/∂t gives velocities, once more differentiated accelerations; Jᵀ·λ = −F gives what every constraint
 * carries, and the effort of each driver by virtual work. Mobility f = 2·points − bars − 2·carried − sliders. Lengths
 * left out are those of the sketch. Angles in rad from the x axis, torque in N·m counter-clockwise, forces in N.
 * Weights g·m and inertia −m·a, −I·α of the masses load every pose, at the drivers' speeds and accelerations as given all the
 * way; friction at a pin takes ρ·|F| against the turning of its bars, ρ = µ·d/2, found together with the forces (at a pin of
 * several bars, each rubs on the first listed, or on the frame). Peaks are sought over the whole motion, whatever is listed of it: at
 * 24 poses at least, and ever closer ones round each peak seen there; a force that comes and goes between two of them can be
 * missed. A guide rubs nothing; play is left out. A force at a pin belongs to no
 * single bar.
 *
 * Refuses `under-constrained`, `over-constrained`, `singular`, `cannot-close`, `dead-point` where the
 * motion ends before its drivers do, and `jammed` where friction at the pins finds no balance. Redundant bars that only fit at
 * exact lengths, such as a third parallel crank, count as over-constrained.
 *
 * **Inputs**
 * - `pivots`: fixed pivots [list of 1 to 60]
 * - `points`: moving points, as sketched [list of 1 to 60]
 * - `bars`: bars [list of 1 to 200]
 * - `carried`: points fixed to a bar [list of 0 to 100; default none]
 * - `sliders`: sliders [list of 0 to 100; default none]
 * - `cranks`: rotary drivers [list of 0 to 20; default none]
 * - `actuators`: linear drivers [list of 0 to 20; default none]
 * - `loads`: forces [list of 0 to 200; default none]
 * - `torques`: torques [list of 0 to 100; default none]
 * - `masses`: masses of the bars [list of 0 to 200; default none]
 * - `gravity`: gravity in the plane [g_p; 0 to 20 m/s²; default 9.80665 m/s²]
 * - `frameTilt`: lean of the frame [lambda; −183.346° to 183.346°; default 0]
 * - `pinFriction`: coefficient of friction at the pins [mu; 0 to 1; default 0]
 * - `pinDiameter`: pin diameter [d_p; 0 to 200 mm; default 0]
 * - `steps`: steps listed of the motion [n; whole 0 to 720; default 0]
 * - `trace`: point to trace [text of 1 to 100 characters; optional]
 *
 * **Results**
 *
 * `mobility`: degrees of freedom without drivers [f]; `conditioning`: distance from singular [kappa; as a fraction];
 * `minConditioning`: smallest distance from singular on the way [kappa_m; as a fraction]; `minConditioningShare`:
 * where on the way that is [s_m; as a fraction]; `frictionLoss`: power lost in friction at the pins [P_f; W];
 * `points`: points [list]; `bars`: bars [list]; `sliders`: sliders [list]; `drivers`: drivers [list]; `pins`: force of
 * the pins on the bars [list]; `pinPeaks`: largest force of the pins on the bars [list]; `barPeaks`: largest pull and
 * push of the bars [list]; `sliderPeaks`: largest side force of the sliders [list]; `driverPeaks`: largest driver
 * effort [list]; `path`: path [list]; `efforts`: driver effort over the motion [list]; `iterations`: iterations
 * [number]; `residual`: largest constraint error [m].
 *
 * **Symbols of the working**
 *
 * n_p: moving points; n_b: bars; n_c: carried points; n_s: sliders; N_J: largest row sum of the Jacobian; N_I: largest
 * row sum of its inverse; N_m: both row sums multiplied at the pose nearest to singular; rho_p: friction radius of the
 * pins [m]; N_f: force times turning speed of all pins that rub, N/s; l_b: length of each bar as given or sketched
 * [m]; x_b: each bar's run in x, solved [m]; y_b: each bar's run in y, solved [m]; Q: effort of each driver, N·m or N;
 * W: work of loads, weights, inertia and friction per unit motion of each driver, N·m or N.
 *
 * **Sources**
 * - J. García de Jalón, E. Bayo (Springer): Kinematic and Dynamic Simulation of Multibody Systems, 1994, chapters 2
 *   and 3 (natural coordinates; position, velocity and acceleration problems) (not verified against the document)
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, section 8.7 (journal bearings) (not
 *   verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the mechanism is under- or over-constrained, singular or cannot be assembled
 * @example
 * ```ts
 * import { planarLinkage } from 'alula/linkage'
 * const wing = planarLinkage({
 *   pivots: [{ name: 'O', x: 0, y: 0 }, { name: 'Q', x: '90 mm', y: 0 }],
 *   points: [{ name: 'A', x: 0, y: '25 mm' }, { name: 'B', x: '70 mm', y: '57 mm' }],
 *   bars: [
 *     { from: 'O', to: 'A', length: '25 mm' },
 *     { from: 'A', to: 'B', length: '80 mm' },
 *     { from: 'Q', to: 'B', length: '60 mm' },
 *   ],
 *   cranks: [{ from: 'O', to: 'A', start: '70 deg', speed: 3 }],
 * })
 * wing.bars[2].angle // => 1.73577
 * wing.bars[2].speed // => 0.900015
 * ```
 */
export const planarLinkage: Solver<PlanarLinkageInput, PlanarLinkage, PlanarLinkageRefusal, PlanarLinkageCaution> = /* @__PURE__ */ solver<
  PlanarLinkageInput,
  PlanarLinkage,
  PlanarLinkageRefusal,
  PlanarLinkageCaution,
  PlanarTrace
>("planarLinkage", "Any flat mechanism of pins, bars, sliders and drivers", solve, () => ({
  input: planarFields(),
  output: planarOutput,
  example: {
    pivots: [
      { name: "O", x: 0, y: 0 },
      { name: "Q", x: "90 mm", y: 0 },
    ],
    points: [
      { name: "A", x: "9 mm", y: "23 mm" },
      { name: "B", x: "80 mm", y: "59 mm" },
    ],
    bars: [
      { name: "crank", from: "O", to: "A" },
      { name: "rod", from: "A", to: "B" },
      { name: "wing", from: "Q", to: "B" },
    ],
    cranks: [{ from: "O", to: "A", end: "130 deg", speed: 2 }],
    loads: [{ point: "B", forceY: "-3 N" }],
    masses: [
      { from: "A", to: "B", mass: "60 g" },
      { from: "Q", to: "B", mass: "150 g", along: "40 mm", across: "5 mm", inertia: "0.0002 kg m2" },
    ],
    pinFriction: 0.15,
    pinDiameter: "4 mm",
    steps: 8,
  },
  formulae: planarFormulae,
  sources: [jalon, norton, journalFriction],
  check,
  cautions: planarCautions,
}))
