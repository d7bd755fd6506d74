import { type Solver, solver } from "../../solver/index.js"
import { gasLaw, gasSpringProgression, gasSpringReadings } from "../sources.js"
import { gasSpringCautions } from "./cautions.js"
import { gasSpringEither, gasSpringFaults, gasSpringFields, gasSpringOutput } from "./fields.js"
import { gasSpringFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { GasSpring, GasSpringCaution, GasSpringInput } from "./types.js"

export { drawGasSpring } from "./drawing.js"
export { gasForce, gasWork } from "./law.js"
export type { ExtensionSpeed, GasSpring, GasSpringCaution, GasSpringInput } from "./types.js"

/**
 * A gas spring over its stroke: force in and out, at its temperature, stiffness, energy and the time it takes to extend.
 *
 * Formula: the rod takes room from the gas, which keeps p·V: its push is G = G₁/(1 − (1 − 1/p)·s/s₁), with the progression p given
 * or V₀/(V₀ − π/4·d²·s₁), and G₁ = (F₁ + F_r)·T/293.15 K, as F₁ is read while it extends. Extending it gives G − F_r, compressing
 * takes G + F_r; pressed at once, before heat gets out, G₁·(G/G₁)^1.4 + F_r. Energy is the area −G₁·s₁/(1 − 1/p)·ln(1 − (1 − 1/p)·s/s₁).
 *
 * Valid for slow motion away from the damping at its ends, and a friction that does not change over the stroke.
 *
 * **Inputs**
 * - `force`: force extended [F_1; 1 N to 100 kN]
 * - `stroke`: stroke [s_1; 1 mm to 5 m]
 * - `compression`: compression [s; 0 to 5 m]
 * - `progression`: progression [p_1; 1 to 3; optional]
 * - `rodDiameter`: diameter of the rod [d; 0.5 to 200 mm; optional]
 * - `gasVolume`: room of the gas, extended [V_0; 1 mm³ to 100 L; optional]
 * - `frictionForce`: friction [F_r; 0 to 10 kN; default 0]
 * - `materialTemperature`: temperature of the gas [T; −60 to 150 °C; default 20 °C]
 * - `extensionSpeed`: extension speed [group; optional]
 *   - `low`: slowest [v_l; 1 mm/s to 10 m/s]
 *   - `high`: fastest [v_h; 1 mm/s to 10 m/s]
 * - exactly one of `progression` and `rodDiameter` with `gasVolume`
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `progression`: progression [p; as a fraction]; `extendingForce`: force extending
 * [F_e; N]; `compressingForce`: force compressing [F_c; N]; `forceExtended`: force with the rod out [F_1T; N];
 * `forceCompressed`: force to push the rod all in [F_2T; N]; `fastForce`: force compressing, at once [F_f; N];
 * `stiffness`: stiffness [k; N/m]; `forcePerTemperature`: force gained by warmth [f_T; 1/K]; `storedEnergy`: energy
 * stored by the compression [W; J]; `compressingWork`: work to compress it [W_c; J]; `returnedWork`: work given back
 * [W_e; J]; `frictionWork`: work lost, in and out [W_f; J]; `extensionDuration`: time to extend over the stroke [s].
 *
 * **Symbols of the working**
 *
 * G_1: push of the gas extended, friction added, at its temperature [N]; c: share of the gas's room that the stroke
 * takes; G: push of the gas here [N].
 *
 * **Sources**
 * - Explanation of gas strut force, read 2026, method of measurement: F1 and F2 extending, F3 and F4 compressing
 * - Gas spring and the difference from an ordinary spring, read 2026, progression 1.2 to 1.4
 * - ideal gas at constant volume: 1/293 per kelvin at 20 °C
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { gasSpring } from 'alula/linkage'
 * const strut = gasSpring({ force: '200 N', progression: 1.33, stroke: '100 mm', compression: '50 mm' })
 * strut.extendingForce // => 228.3
 * strut.storedEnergy // => 10.68
 * ```
 */
export const gasSpring: Solver<GasSpringInput, GasSpring, never, GasSpringCaution> = /* @__PURE__ */ solver<
  GasSpringInput,
  GasSpring,
  never,
  GasSpringCaution
>("gasSpring", "Force and energy of a gas spring over its stroke", solve, () => ({
  input: gasSpringFields(),
  either: gasSpringEither,
  output: gasSpringOutput(),
  example: {
    force: "200 N",
    progression: 1.33,
    stroke: "100 mm",
    compression: "50 mm",
    frictionForce: "15 N",
    materialTemperature: "5 degC",
    extensionSpeed: { low: "0.15 m/s", high: "0.4 m/s" },
  },
  formulae: gasSpringFormulae(),
  sources: [gasSpringReadings, gasSpringProgression, gasLaw],
  check: gasSpringFaults,
  cautions: gasSpringCautions,
}))
