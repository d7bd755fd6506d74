import { type Solver, solver } from "../../solver/index.js"
import { camLaws, guideBinding } from "../sources.js"
import { camCautions, camFaults } from "./cautions.js"
import { camFields, camOutput } from "./fields.js"
import { camFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { CamDrive, CamDriveCaution, CamDriveInput, CamDriveRefusal } from "./types.js"

export { camDrivePicture } from "./picture.js"
export type { CamDrive, CamDriveCaution, CamDriveInput, CamDriveRefusal, CamExtremes, CamLaw } from "./types.js"

/**
 * A plate cam that lifts a roller follower: lever arm over the turn, constant or tailored, efforts both ways, pressure angle,
 * and whether the cam can be cut.
 *
 * Formula: rise s = h·f(θ/β) by the law chosen, lever arm r = ds/dθ; pressure angle tan α = (r − o)/(√(R_p² − o²) + s). The guide,
 * overhung by L_o and long L_g, rubs with µ·(2·L_o + L_g)/L_g times the side force: moment while lifting T = P·r/(1 − c),
 * while letting down P·r/(1 + c), c = µ·(2·L_o + L_g)/L_g·tan|α|, with P load, spring, weight and inertia along an upright slide.
 * The path of the roller's centre bends with ρ = (y² + (r − o)²)^1.5/(y² + (r − o)² + (r − o)·r − y·dr/dθ), y = √(R_p² − o²) + s; a
 * roller as large as the smallest ρ undercuts the cam. The rise run backward is the return. Extremes are looked for at 721
 * places of the rise. A cam only pushes: what brings the follower back is its load or its spring. Its shaft bears the contact
 * force, its guide the side force. Valid for a stiff follower that stays on its cam; friction of roller and cam shaft is left out.
 *
 * Refuses `undercut` and, where the guide takes the whole push, `jammed`.
 *
 * **Inputs**
 * - `law`: law of the rise [uniform, parabolic, harmonic, cycloidal, polynomial-345 or polynomial-4567; default
 *   cycloidal]
 * - `lift`: lift [h; 0.1 mm to 1 m]
 * - `riseAngle`: turn of the cam for the rise [beta; 1° to 360°]
 * - `camAngle`: turn of the cam from the start [theta; 0 to 360°]
 * - `primeRadius`: prime radius [R_p; 1 mm to 2 m]
 * - `offset`: offset of the slide line [o; −2 to 2 m; default 0]
 * - `rollerRadius`: radius of the roller [r_r; 0 to 1 m; default 0]
 * - `camSpeed`: speed of the cam [omega; −9549.3 to 9549.3 rpm; default 0]
 * - `load`: load on the follower [F_l; 0 to 100 kN; default 0]
 * - `followerMass`: mass of the follower [m_f; 0 to 100 kg; default 0]
 * - `preload`: preload of the return spring [F_0; 0 to 100 kN; default 0]
 * - `springRate`: rate of the return spring [k; 0 to 10000 N/mm; default 0]
 * - `guideFriction`: friction of the guide [mu; 0 to 1; default 0]
 * - `guideLength`: length of the guide [L_g; 1 mm to 2 m; default 40 mm]
 * - `overhang`: roller to guide [L_o; 0 to 2 m; default 0]
 * - `pressureLimit`: largest pressure angle wanted [alpha_l; 5° to 80°; default 30°]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `displacement`: rise of the follower [s_f; m]; `lever`: lever arm: travel per radian
 * [r; m]; `leverSlope`: change of the lever arm per radian [r_s; m]; `speed`: speed of the follower [v; m/s];
 * `acceleration`: acceleration of the follower [a; m/s²]; `pressureAngle`: pressure angle [alpha; rad];
 * `followerForce`: force towards the cam [P; N]; `contactForce`: force on the roller while lifting [F_c; N];
 * `sideForce`: force across the guide while lifting [F_s; N]; `effort`: moment that holds it [T; N m]; `risingEffort`:
 * moment while lifting [T_r; N m]; `returningEffort`: moment while letting down [T_b; N m]; `inertia`: inertia at the
 * cam [J; kg m²]; `inertiaSlope`: change of the inertia per radian [J_s; kg m²]; `rise`: over the whole rise [group].
 *
 * **Symbols of the working**
 *
 * u: share of the rise; n_h: 1 in the first half of the rise, 2 in the second; s_u: rise over lift; v_u: its change
 * over the share of the rise; a_u: the change of that; y: roller centre along the slide, from the cam centre [m]; g_n:
 * standard gravity [m/s²]; c: share of the push that the guide's friction takes.
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapter 8 (cam laws, pressure angle, radius of
 *   curvature, follower jump) (not verified against the document)
 * - H. A. Rothbart (McGraw-Hill): Cam Design Handbook, 2004, forces on a translating roller follower in its guide (not
 *   verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the cam cannot be cut or the follower jams
 * @example
 * ```ts
 * import { camDrive } from 'alula/linkage'
 * const eyelid = camDrive({ lift: '20 mm', riseAngle: '60 deg', camAngle: '15 deg', primeRadius: '60 mm', load: '5 N' })
 * eyelid.displacement // => 0.0018169
 * ```
 */
export const camDrive: Solver<CamDriveInput, CamDrive, CamDriveRefusal, CamDriveCaution> = /* @__PURE__ */ solver<
  CamDriveInput,
  CamDrive,
  CamDriveRefusal,
  CamDriveCaution
>("camDrive", "A cam that lifts a follower", solve, () => ({
  input: camFields(),
  output: camOutput(),
  example: {
    law: "cycloidal",
    lift: "12 mm",
    riseAngle: "120 deg",
    camAngle: "40 deg",
    primeRadius: "40 mm",
    offset: "3 mm",
    rollerRadius: "6 mm",
    camSpeed: 4,
    load: "8 N",
    followerMass: "120 g",
    preload: "3 N",
    springRate: "200 N/m",
    guideFriction: 0.2,
    guideLength: "40 mm",
    overhang: "25 mm",
  },
  formulae: camFormulae(),
  sources: [camLaws, guideBinding],
  check: camFaults,
  cautions: camCautions,
}))
