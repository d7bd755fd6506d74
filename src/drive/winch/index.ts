import { at, type NoSolution, type SiOf, type Solver, solver, tried } from "../../solver/index.js"
import { ALBERTA_OHS, EN_14492, HOISTING_ROPES, KHURMI, OSHA_CRANES, WINCH_RATIOS } from "../sources.js"
import { cautions } from "./cautions.js"
import { BENT_STRENGTH } from "./data.js"
import { check, either, input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { Winch, WinchCaution, WinchInput, WinchRefusal } from "./types.js"

export { drawWinch } from "./drawing.js"
export type { Winch, WinchCaution, WinchInput, WinchLayer, WinchRefusal } from "./types.js"

const solve = (si: SiOf<WinchInput>): Winch | NoSolution<WinchRefusal> => tried(kernel(si), si, winch.input, kernel, check, winch.either)

/**
 * Pull, speed, torque both ways and holding of a line on a drum, on its first and last layer, and what stays on the drum.
 *
 * Formula: layer k lies at r_k = (D + d)/2 + (k − 1)·e·d and holds n turns; N layers hold π·n·N·(2·r₁ + e·d·(N − 1)). Torque to
 * wind in F·r/η + T_d, to pay out T_d − F·r·η_b (below zero: held back), to hold F·r; pull of a torque (T − T_d)·η/r. The outer
 * layer asks the most torque and holding, the inner one gives the minimum speed and the most pull. Of the pull
 * F·e^(−2π·µ·t_s) reaches the line's fixing behind t_s turns.
 *
 * Valid for line laid turn by turn; the slope of the turns is left out. The pull is the same over the travel: give the largest.
 *
 * **Inputs**
 * - `pull`: pull in the line [F; 10 mN to 1000 kN]
 * - `drumDiameter`: bare drum [D; 3 mm to 5 m]
 * - `lineDiameter`: line [d; 0.1 to 100 mm]
 * - `lineType`: kind of line [wire-rope or fibre-rope]
 * - `drumWidth`: width between the flanges [W; 0.5 mm to 10 m; optional]
 * - `turnsPerLayer`: turns in one layer [n_g; whole 1 to 10000; optional]
 * - `layerRise`: rise of a layer against the line [e; 0.8 to 1; default 1]
 * - `lineLength`: line on the drum, wound in [L; 10 mm to 500 m]
 * - `travel`: line paid out [s; 1 mm to 500 m]
 * - `flangeDiameter`: flanges [D_f; 4 mm to 10 m; optional]
 * - `lineStrength`: breaking force of the line [F_b; 0.1 N to 10000 kN; optional]
 * - `lineFriction`: friction of line on drum [mu; 0 to 1; default 0.1]
 * - `efficiency`: efficiency winding in [eta; 30 to 100 %; default 95 %]
 * - `backwardEfficiency`: efficiency, load pulling out [eta_g; 5 to 100 %; optional]
 * - `dragTorque`: drag at the drum [T_d; 0 to 100000 N m; default 0]
 * - `torque`: torque at the drum [T; 0.1 mN m to 1e7 N m; optional]
 * - `speed`: speed of the drum [omega; 0.0095493 to 10000 rpm; optional]
 * - `holdingTorque`: torque that a brake holds at the drum [T_c; 0.1 mN m to 1e7 N m; optional]
 * - exactly one of `drumWidth` and `turnsPerLayer`
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `turnsPerLayer`: turns in one layer [n]; `outerLayer`: outer layer, wound in [N_w];
 * `innerLayer`: inner layer, paid out [N_p]; `woundTurns`: turns on the drum, wound in [t_w]; `safetyTurns`: turns
 * left on the drum [t_s]; `drumTurns`: turns for the travel [t]; `woundDiameter`: diameter over the line [D_w; m];
 * `capacity`: line that fits [L_c; m]; `diameterRatio`: drum and line against line [lambda]; `raiseTorque`: torque to
 * wind in [T_R; N m]; `lowerTorque`: torque to pay out [T_L; N m]; `requiredHoldingTorque`: torque to hold [T_h; N m];
 * `holdingSafetyFactor`: safety factor, holding [S_h]; `liftingPull`: pull at the torque given [F_o to F_i; N];
 * `lineSpeed`: speed of the line [v_i to v_o; m/s]; `duration`: time for the travel [t_m; s]; `raisePower`: power to
 * wind in [P; W]; `loadWork`: work on the load [E_l; J]; `raiseWork`: work to wind in [E_R; J]; `lowerWork`: work to
 * pay out [E_L; J]; `raiseLoss`: lost winding in [Q_R; J]; `lowerLoss`: lost paying out [Q_L; J]; `bentStrengthShare`:
 * strength left on the drum [k_b; as a fraction]; `lineSafetyFactor`: safety factor of the line [S_l];
 * `stallSafetyFactor`: safety factor of the line, stalled [S_s]; `fixingPull`: pull on the line's fixing [F_x; N];
 * `paidOut`: paid out [group]; `woundIn`: wound in [group]; `layers`: layers on the way [list].
 *
 * **Symbols of the working**
 *
 * r_1: radius of the first layer [m]; h: rise of a layer [m]; b: diameter of the first layer, less one rise [m]; r_o:
 * radius of the outer layer [m]; r_i: radius of the inner layer [m]; N_f: layers that fit; eta_b: efficiency, load
 * pulling out, as given; wire: 1 for wire rope; k_0: strength that a bend of D/d leaves a wire rope; F_k: strength of
 * the line on the drum [N].
 *
 * **Sources**
 * - R. S. Khurmi, J. K. Gupta: Theory of Machines, 2005, section 11.16 (ratio of tensions) (not verified against the
 *   document)
 * - Sheave size and wire rope strength, read 2026, tables A and B
 * - What is the D/d ratio and how is it calculated?, read 2026, 18 for loads, 22 for people
 * - Virginia: Code of Virginia, section 45.1-161.154, Hoisting ropes, read 2026, 5 for materials, 10 for people (read
 *   2026-11-29)
 * - Alberta: Occupational Health and Safety Code, part 21 Rigging, 2009, section 299, rope wound on a drum (read
 *   2026-11-29)
 * - OSHA: 29 CFR 1910.179, Overhead and gantry cranes, 2026 (not verified against the document; read 2026-11-29)
 * - CEN: EN 14492-1, Cranes: power driven winches and hoists, part 1: power driven winches, 2006 (not verified against
 *   the document; read 2026-11-29)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `does-not-fit` where the line is more than the drum holds, `insufficient-torque` where it stalls
 * @example
 * ```ts
 * import { winch } from 'alula/drive'
 * const fan = winch({
 *   pull: '90 N', drumDiameter: '30 mm', lineDiameter: '1.5 mm', lineType: 'fibre-rope', drumWidth: '15 mm',
 *   lineLength: '2.4 m', travel: '1.1 m', torque: '3 N m', speed: '20 rpm',
 * })
 * fan.raiseTorque // => 1.776
 * fan.requiredHoldingTorque // => 1.688
 * fan.safetyTurns // => 12.86
 * fan.transmits // => 'pull-only'
 * ```
 */
export const winch: Solver<WinchInput, Winch, WinchRefusal, WinchCaution> = /* @__PURE__ */ solver<
  WinchInput,
  Winch,
  WinchRefusal,
  WinchCaution
>("winch", "A line on a drum: pull, speed and holding by layer", solve, () => ({
  input,
  either,
  output,
  example: {
    pull: "90 N",
    drumDiameter: "30 mm",
    lineDiameter: "1.5 mm",
    lineType: "wire-rope",
    drumWidth: "15 mm",
    lineLength: "2.4 m",
    travel: "1.1 m",
    flangeDiameter: "120 mm",
    lineStrength: "1.5 kN",
    torque: "20 N m",
    dragTorque: "20 mN m",
    speed: "20 rpm",
    holdingTorque: "2.4 N m",
  },
  formulae,
  sources: [
    at(KHURMI, "section 11.16 (ratio of tensions)"),
    BENT_STRENGTH,
    WINCH_RATIOS,
    HOISTING_ROPES,
    ALBERTA_OHS,
    OSHA_CRANES,
    EN_14492,
  ],
  check,
  cautions,
}))
