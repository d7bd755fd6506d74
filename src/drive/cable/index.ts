import { type NoSolution, type SiOf, type Solver, solver, tried } from "../../solver/index.js"
import { CABLE_LOST_MOTION, CABLE_STRETCH, KHURMI, SHEAVE_EFFICIENCY } from "../sources.js"
import { BENT_STRENGTH } from "../winch/data.js"
import { cautions } from "./cautions.js"
import { check, either, input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { Cable, CableCaution, CableInput, CableRefusal } from "./types.js"

export { type CableConstruction, cableConstructions } from "./data.js"
export { drawCable } from "./drawing.js"
export type {
  Cable,
  CableCaution,
  CableInput,
  CablePulley,
  CableRefusal,
  CableSpan,
  PulleyRoute,
  SheathBend,
  SheathedRoute,
} from "./types.js"

const solve = (si: SiOf<CableInput>): Cable | NoSolution<CableRefusal> => tried(kernel(si), si, input, kernel, check, either)

/**
 * A pull cable in a sheath (Bowden cable) or over pulleys: force at the drive both ways, stretch, lost motion and safety factor.
 *
 * Formula: in a sheath the tension grows by e^(μ·Σθ) while pulling and falls by as much while paying out; only the sum of the bends
 * counts. Over a pulley the moments about its pin give (x − 1)² = k²·(1 + x² − 2·x·cos φ) for the ratio x of both tensions, with
 * k = μ·d_p/D_p, and bending the cable takes its own share. Stretch is F_m·L/(E·A) with F_m the mean of both ends' tensions, the
 * sheath shortens by F_m/k_s, and a slack cable takes up Σθ·(D_i − d) in its bends. Published stretch factors give E·A by construction.
 *
 * Valid for slow motion and a cable that stays taut. The mean of both ends' tensions suits bends spread over the length, or in its
 * middle; with all bends at the drive the cable stretches less, at the far end more.
 *
 * **Inputs**
 * - `force`: tension at the far end [F; 1 mN to 1000 kN]
 * - `travel`: travel of the far end [s_2; 0.1 mm to 100 m]
 * - `length`: length of the cable [L; 10 mm to 1000 m]
 * - `diameter`: diameter of the cable [d; 0.1 to 100 mm]
 * - `construction`: construction of a wire cable [1x7-galvanised, 1x19-galvanised, 7x7-galvanised, 7x19-galvanised,
 *   1x19-stainless, 7x7-stainless or 7x19-stainless; optional]
 * - `area`: area of its section [A; 0.001 to 10000 mm²; optional]
 * - `modulus`: modulus of the cable [E; 0.1 to 500 GPa; optional]
 * - `breakingForce`: breaking force [F_b; 1 N to 100000 kN]
 * - `minBendRadius`: minimum bend radius of the cable [r_m; 0.5 mm to 10 m; optional]
 * - `route`: route [by its type: sheath or pulleys]
 *   - `sheath`: in a sheath
 *     - `bends`: bends, from the far end [list of 1 to 12]
 *       - `angle`: angle of the bend [theta; 0 to 1080°]
 *       - `radius`: radius of the bend [r_b; 0.5 mm to 10 m]
 *     - `friction`: friction in the sheath [mu; 0 to 1]
 *     - `sheathRate`: stiffness of the sheath, end to end [k_s; 100 N/m to 1e7 N/mm; optional]
 *     - `sheathBore`: bore of the sheath [D_i; 0.1 to 200 mm; optional]
 *   - `pulleys`: over pulleys
 *     - `pulleys`: pulleys, from the far end [list of 1 to 12]
 *       - `angle`: wrap on the pulley [phi; 0 to 360°]
 *       - `pulleyDiameter`: diameter of the pulley, to the middle of the cable [D_p; 1 mm to 2 m]
 *       - `pinDiameter`: diameter of its pin [d_p; 0.1 mm to 1 m]
 *       - `bearingFriction`: friction of its bearing [mu_p; 0 to 1]
 *       - `bendingLoss`: tension lost by bending the cable [c_p; 0 to 30 %; default 2 %]
 * - exactly one of `construction` and `area` with `modulus`
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `turnedAngle`: total angle of bends [theta_t; rad]; `pullingForce`: force at the
 * drive, pulling [F_1; N]; `payingOutForce`: force at the drive, paying out [F_3; N]; `efficiency`: efficiency,
 * pulling [eta; as a fraction]; `backwardEfficiency`: efficiency, paying out [eta_b; as a fraction]; `stretch`:
 * stretch of the cable [x_c; m]; `sheathShortening`: shortening of the sheath [x_s; m]; `lostMotion`: lost motion
 * under load [x; m]; `driveTravel`: travel of the drive, from slack [s_1; m]; `reversalLoss`: lost motion on reversing
 * [b_r; m]; `slackPlay`: slack taken up in the bends [b_s; m]; `workIn`: work of the drive [W_1; J]; `workOut`: work
 * at the far end [W_2; J]; `frictionWork`: work lost, pulling [W_f; J]; `returnedWork`: work given back, paying out
 * [W_3; J]; `storedEnergy`: energy stored, at most [W_e; J]; `minRadius`: tightest radius [r_t; m]; `bendRatio`:
 * tightest bend, diameter over the cable's [D_d]; `strengthShare`: strength left in the tightest bend [f_b; as a
 * fraction]; `safetyFactor`: safety factor of the cable [S]; `bendUtilisation`: minimum bend radius against the
 * tightest [u; as a fraction]; `spans`: tension, from the far end [list].
 *
 * **Symbols of the working**
 *
 * sheathed: 1 for a cable in a sheath; rated: 1 where the stiffness of the sheath is given; bored: 1 where the bore of
 * the sheath is given; g: tension grown in the sheath; k_p: friction circle of each pin over its pulley; q_p: half of
 * what both tensions' ratio and its reciprocal exceed two, from the moments about each pin; G_c: stretch factor of the
 * construction, per cent; K: axial stiffness by construction [N]; F_m: mean tension, pulling [N].
 *
 * **Sources**
 * - R. S. Khurmi, J. K. Gupta: Theory of Machines, 2005 (not verified against the document)
 * - W. Steuernagel: Accounting for lost motion, Machine Design, 2007, backlash, deflection
 * - Wire rope stretch, read 2026, G factor table
 * - Sheave size and wire rope strength, read 2026, tables A and B
 * - Efficiency of the rope, read 2026, per sheave
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `breaks` where the pull is more than the cable bears in its tightest bend
 * @example
 * ```ts
 * import { cable } from 'alula/drive'
 * const tendon = cable({
 *   force: '60 N', travel: '30 mm', length: '1.4 m', diameter: '1.5 mm', construction: '7x7-stainless', breakingForce: '1.5 kN',
 *   route: { type: 'sheath', friction: 0.1, bends: [{ angle: '90 deg', radius: '120 mm' }, { angle: '60 deg', radius: '90 mm' }] },
 * })
 * tendon.pullingForce // => 77.96
 * tendon.payingOutForce // => 46.18
 * tendon.transmits // => 'pull-only'
 * ```
 */
export const cable: Solver<CableInput, Cable, CableRefusal, CableCaution> = /* @__PURE__ */ solver<
  CableInput,
  Cable,
  CableRefusal,
  CableCaution
>("cable", "A pull cable in a sheath or over pulleys", solve, () => ({
  input,
  either,
  output,
  check,
  example: {
    force: "60 N",
    travel: "30 mm",
    length: "1.4 m",
    diameter: "1.5 mm",
    construction: "7x7-stainless",
    breakingForce: "1.5 kN",
    minBendRadius: "75 mm",
    route: {
      type: "sheath",
      friction: 0.1,
      bends: [
        { angle: "90 deg", radius: "120 mm" },
        { angle: "60 deg", radius: "90 mm" },
      ],
      sheathRate: "150 N/mm",
      sheathBore: "2 mm",
    },
  },
  formulae,
  sources: [KHURMI, CABLE_LOST_MOTION, CABLE_STRETCH, BENT_STRENGTH, SHEAVE_EFFICIENCY],
  cautions,
}))
