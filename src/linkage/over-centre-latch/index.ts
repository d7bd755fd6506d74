import { type Solver, solver } from "../../solver/index.js"
import { equilibrium, snapOver } from "../sources.js"
import { latchCautions } from "./cautions.js"
import { latchFaults } from "./check.js"
import { latchFields, latchOutput } from "./fields.js"
import { latchFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { OverCentreLatch, OverCentreLatchCaution, OverCentreLatchInput, OverCentreLatchRefusal } from "./types.js"

export { overCentreLatchPicture } from "./picture.js"
export type {
  LatchPose,
  LatchSide,
  OverCentreLatch,
  OverCentreLatchCaution,
  OverCentreLatchInput,
  OverCentreLatchRefusal,
} from "./types.js"

/**
 * A lever that a spring holds on either side of its dead centre: where it snaps over, how firmly each side holds, what trips it,
 * and the energy the snap lets loose.
 *
 * Formula: with the pin θ past the dead centre, where fixed end, pivot and pin lie in line and the spring is longest, its length is
 * x = √((d − r)² + 4·d·r·cos²(θ/2)), its tension F = F₀ + k·(x − x₀), never less than nothing, and its moment F·d·r·sin θ/x drives the lever
 * away from the dead centre. The lever goes over where that moment and the load's cancel. On a stop it is held by their sum; the
 * handle must give that and the pivot's friction µ·d_p/2·F to start it, and the largest of it on the way to trip it. The energy
 * let loose is the work of both moments from where friction loses its hold to the stop, less friction. Inertia is the same at every
 * angle, so its slope is zero. Valid for a lever moved by hand or drive to its snap-over point, a stop that does not give, and a
 * friction that the spring's pull alone makes.
 *
 * Refuses `does-not-hold` where the load outweighs the spring on a stop.
 *
 * **Inputs**
 * - `fixedPivotDistance`: pivot to the spring's fixed end [d; 1 mm to 5 m]
 * - `movingPivotRadius`: pivot to pin [r; 0.5 mm to 5 m]
 * - `freeLength`: free length of the spring [x_0; 0 to 10 m]
 * - `springRate`: rate of the spring [k; 1 N/m to 10000 N/mm]
 * - `preload`: initial tension of the spring [F_0; 0 to 100 kN; default 0]
 * - `clockwiseStop`: clockwise stop, past the dead centre [theta_c; 0.1° to 179°]
 * - `counterStop`: counter-clockwise stop, past the dead centre [theta_k; 0.1° to 179°]
 * - `loadMoment`: moment of the load, counter-clockwise [M_l; −10000 to 10000 N m; default 0]
 * - `handleRadius`: pivot to handle [R_h; 1 mm to 5 m]
 * - `leverMass`: mass of the lever [m_l; 0 to 100 kg; default 0]
 * - `leverCentre`: pivot to the lever's centre of gravity [l_c; 0 to 5 m; default 0]
 * - `pinFriction`: friction of the pivot [mu; 0 to 1; default 0]
 * - `pinDiameter`: diameter of the pivot [d_p; 0 to 100 mm; default 0]
 *
 * **Results**
 *
 * `snapAngle`: snap-over point, from the dead centre [theta_s; rad]; `maxSpringForce`: largest tension of the spring
 * [F_m; N]; `storedEnergy`: energy stored at the snap-over point [W_s; J]; `inertia`: inertia of the lever [J; kg m²];
 * `minHoldingForce`: smaller holding force, at the handle [F_h; N]; `band`: held by friction [rad]; `clockwise`: on
 * the clockwise stop [group]; `counter`: on the counter-clockwise stop [group]; `poses`: from stop to stop [list].
 *
 * **Symbols of the working**
 *
 * x_s: length of the spring at the snap-over point [m]; F_s: its tension at the snap-over point [N]; M_s: its moment
 * at the snap-over point, counter-clockwise [N m]; x_c: length of the spring on the clockwise stop [m]; F_c: its
 * tension on the clockwise stop [N]; M_c: its moment on the clockwise stop, counter-clockwise [N m]; x_k: length of
 * the spring on the counter-clockwise stop [m]; F_k: its tension on the counter-clockwise stop [N]; M_k: its moment on
 * the counter-clockwise stop, counter-clockwise [N m].
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, chapter 5 (equilibrium of a rigid body)
 *   (not verified against the document)
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, section 3.3 (toggle positions) (not verified
 *   against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the lever does not stay on both stops
 * @example
 * ```ts
 * import { overCentreLatch } from 'alula/linkage'
 * const catch_ = overCentreLatch({
 *   fixedPivotDistance: '60 mm', movingPivotRadius: '20 mm', freeLength: '40 mm', springRate: '800 N/m',
 *   clockwiseStop: '25 deg', counterStop: '40 deg', handleRadius: '80 mm',
 * })
 * catch_.snapAngle // => 0
 * catch_.maxSpringForce // => 32
 * ```
 */
export const overCentreLatch: Solver<OverCentreLatchInput, OverCentreLatch, OverCentreLatchRefusal, OverCentreLatchCaution> =
  /* @__PURE__ */ solver<OverCentreLatchInput, OverCentreLatch, OverCentreLatchRefusal, OverCentreLatchCaution>(
    "overCentreLatch",
    "A lever that a spring holds on either side of its dead centre",
    solve,
    () => ({
      input: latchFields(),
      output: latchOutput(),
      example: {
        fixedPivotDistance: "60 mm",
        movingPivotRadius: "20 mm",
        freeLength: "40 mm",
        springRate: "800 N/m",
        preload: "2 N",
        clockwiseStop: "25 deg",
        counterStop: "40 deg",
        loadMoment: "40 mN m",
        handleRadius: "80 mm",
        leverMass: "60 g",
        leverCentre: "35 mm",
        pinFriction: 0.2,
        pinDiameter: "4 mm",
      },
      formulae: latchFormulae(),
      sources: [equilibrium, snapOver],
      check: latchFaults,
      cautions: latchCautions,
    }),
  )
