import { type Solver, solver } from "../../solver/index.js"
import { storedEnergySource } from "../sources.js"
import { bungeeCautions } from "./cautions.js"
import { bungeeFaults } from "./check.js"
import { bungeeFields, bungeeOutput } from "./fields.js"
import { bungeeFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { Bungee, BungeeCaution, BungeeInput, BungeeRefusal } from "./types.js"

export { drawBungee } from "./drawing.js"
export type { Bungee, BungeeCaution, BungeeInput, BungeeRefusal, CordReading } from "./types.js"

/**
 * Elastic cord on its own measured curve: force, energy and stiffness at the length in use, and what comes back.
 *
 * Formula: e = L/L₀ − 1; between readings the force of a cord goes in a straight line, from zero at its slack length on. Energy is
 * the area under that line, stiffness its slope over L₀. Letting back, force and energy are less by the share lost in a cycle.
 *
 * Valid for slow stretching of a cord that has been pulled before, within its readings.
 *
 * **Inputs**
 * - `slackLength`: slack length [L_0; 1 mm to 100 m]
 * - `length`: length in use [L; 1 mm to 100 m]
 * - `readings`: readings of one cord [list of 1 to 40]
 *   - `elongation`: elongation [e_k; 0.1 % to 10]
 *   - `force`: force [F_k; 0 to 100 kN]
 * - `cords`: cords side by side [N; whole 1 to 100; default 1]
 * - `lossShare`: energy lost in a cycle [h; 0 to 95 %; optional]
 * - `elongationLimit`: elongation allowed [e_m; 1 % to 10; default 100 %]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `elongation`: elongation [e; as a fraction]; `force`: force, loading [F; N];
 * `returningForce`: force, unloading [F_b; N]; `stiffness`: stiffness there [k; N/m]; `storedEnergy`: energy put in
 * [W; J]; `returnedEnergy`: energy given back [W_b; J]; `lengthLimit`: length allowed [L_m; m]; `utilisation`:
 * elongation against what is allowed [u; as a fraction].
 *
 * **Symbols of the working**
 *
 * e_i: pieces of the curve in use: from; e_j: to; F_i: force of one cord, from [N]; F_j: to [N]; m_e: slope of the
 * last piece, by elongation [N].
 *
 * **Sources**
 * - ISO: ISO 12100, Safety of machinery: general principles for design, risk assessment and risk reduction, 2010,
 *   clause 6.3.5.4 (isolation and energy dissipation) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `beyond-curve` where it is stretched past its last reading
 * @example
 * ```ts
 * import { bungee } from 'alula/linkage'
 * const cord = bungee({
 *   slackLength: '400 mm', length: '600 mm',
 *   readings: [{ elongation: '20 %', force: '22 N' }, { elongation: '60 %', force: '42 N' }, { elongation: '110 %', force: '78 N' }],
 * })
 * cord.force // => 37
 * cord.storedEnergy // => 4.42
 * ```
 */
export const bungee: Solver<BungeeInput, Bungee, BungeeRefusal, BungeeCaution> = /* @__PURE__ */ solver<
  BungeeInput,
  Bungee,
  BungeeRefusal,
  BungeeCaution
>("bungee", "Elastic cord on its measured curve", solve, () => ({
  input: bungeeFields(),
  output: bungeeOutput(),
  example: {
    slackLength: "400 mm",
    length: "600 mm",
    readings: [
      { elongation: "20 %", force: "22 N" },
      { elongation: "60 %", force: "42 N" },
      { elongation: "110 %", force: "78 N" },
    ],
    cords: 2,
    lossShare: "20 %",
  },
  formulae: bungeeFormulae(),
  sources: [storedEnergySource],
  check: bungeeFaults,
  cautions: bungeeCautions,
}))
