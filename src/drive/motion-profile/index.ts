import { at, type Solver, solver } from "../../solver/index.js"
import { ISO_10218, MOVE_PROFILES, S_CURVES } from "../sources.js"
import { cautions } from "./cautions.js"
import { check, input, outputFields } from "./fields.js"
import { formulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { MotionProfile, MotionProfileCaution, MotionProfileInput } from "./types.js"

export { drawMotionProfile } from "./drawing.js"
export type { LimitedMove, MotionProfile, MotionProfileCaution, MotionProfileInput, MoveTorques, TimedMove } from "./types.js"

/**
 * Peak speed, acceleration, torque and time of a move from rest to rest, with straight or rounded ramps, out and back.
 *
 * Formula: a swing θ in a time t with shares f_a and f_d for speeding up and slowing down has ω = θ/(t·(1 − (f_a + f_d)/2)); a ramp
 * of time t_a, rounded in a share b of it, has α = ω/(t_a·(1 − b/2)) and jerk α/(b·t_a/2). Within limits ω_l and α_l reached in a
 * time t_l: t_a = ω/α_l + t_l, where ω·t_a ≤ θ with ω = ω_l, else ω from ω·(ω/α_l + t_l) = θ; where even that leaves no full
 * acceleration, t_a = 2·√(ω·t_l/α_l). Torque J·α + T_L + T_f speeding up, T_L + T_f at steady speed, T_L + T_f − J·α slowing down,
 * with −T_L on the way back. Rms over the cycle √(Σ∫T²dt/(2·(t + t_r))), ∫α²dt = α²·t_a·(1 − 2b/3).
 *
 * Valid for a rigid arm and a load that is steady over the swing: for gravity take the heaviest position.
 *
 * **Inputs**
 * - `swing`: swing [theta; 0.1° to 10000 rev]
 * - `timing`: what sets the pace [by its type: duration or limits]
 *   - `duration`: a set time
 *     - `duration`: time of the move [t_s; 1 ms to 1 h]
 *     - `accelerationShare`: share of it speeding up [f_a; 1 to 99 %; default 33.3333 %]
 *     - `decelerationShare`: share of it slowing down [f_d; 1 to 99 %; default 33.3333 %]
 *     - `jerkShare`: rounded share of each ramp [f_j; 1 to 100 %; optional]
 *   - `limits`: limits of speed and acceleration
 *     - `maxSpeed`: speed allowed [omega_l; 0.00095493 to 100000 rpm]
 *     - `maxAcceleration`: acceleration allowed [alpha_l; 0.00572958 to 5.72958e7 °/s²]
 *     - `jerkTime`: time to reach it [t_l; 1 ms to 60 s; optional]
 * - `inertia`: inertia about the shaft [J; 0 to 100000 kg m²]
 * - `loadTorque`: torque of the load [T_L; −100000 to 100000 N m; default 0]
 * - `frictionTorque`: torque of friction [T_f; 0 to 100000 N m; default 0]
 * - `restDuration`: rest after each move [t_r; 0 to 24 h; default 0]
 * - `holdsAtRest`: drive holds the load at rest [yes or no; default no]
 * - `tipRadius`: radius of the tip [R; 1 mm to 20 m; optional]
 *
 * **Results**
 *
 * `duration`: time of the move [t; s]; `accelerationTime`: time speeding up [t_a; s]; `cruiseTime`: time at steady
 * speed [t_c; s]; `decelerationTime`: time slowing down [t_d; s]; `peakSpeed`: peak speed [omega; rad/s];
 * `peakAcceleration`: peak acceleration [alpha_a; rad/s²]; `peakDeceleration`: peak deceleration [alpha_d; rad/s²];
 * `peakJerk`: peak jerk, rad/s³ [j]; `shortened`: too short to reach the speed allowed [yes or no]; `out`: move out
 * [group]; `back`: move back [group]; `peakTorque`: peak torque, both ways [T_p; N m]; `rmsTorque`: rms torque with
 * rests [T_rms; N m]; `frictionHeat`: heat of friction in a move [Q_f; J]; `peakEnergy`: energy of motion at peak
 * speed [E_p; J]; `tipSpeed`: peak speed of the tip [v_t; m/s].
 *
 * **Symbols of the working**
 *
 * timed: 1 where the time is set; short: 1 where the speed allowed is not reached; b: share of each ramp in which the
 * acceleration changes; rounded: 1 where ramps are rounded; full: 1 where full acceleration is reached; t_e: time to
 * reach it, none where the ramps are straight [s]; T_o: steady torque out [N m]; T_b: steady torque back [N m]; held:
 * torque held at rest, friction taking its part [N m].
 *
 * **Sources**
 * - How to calculate velocity from triangular and trapezoidal move profiles, read 2026
 * - Jerk-limited S-curve equations, read 2026, verification table
 * - ISO: ISO 10218-1, Robotics: safety requirements, 2025, reduced speed (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { motionProfile } from 'alula/drive'
 * const beat = motionProfile({
 *   swing: '60 deg', timing: { type: 'duration', duration: '2 s', jerkShare: 0.5 },
 *   inertia: '0.35 kg m2', loadTorque: '4 N m', frictionTorque: '0.5 N m', restDuration: '4 s', tipRadius: '900 mm',
 * })
 * beat.peakSpeed // => 0.7854
 * beat.peakTorque // => 5.05
 * ```
 */
export const motionProfile: Solver<MotionProfileInput, MotionProfile, never, MotionProfileCaution> = /* @__PURE__ */ solver<
  MotionProfileInput,
  MotionProfile,
  never,
  MotionProfileCaution
>("motionProfile", "Peak speed, torque and time of a move out and back", solve, () => ({
  input,
  output: outputFields(),
  example: {
    swing: "60 deg",
    timing: { type: "duration", duration: "2 s", jerkShare: 0.5 },
    inertia: "0.35 kg m2",
    loadTorque: "4 N m",
    frictionTorque: "0.5 N m",
    restDuration: "4 s",
    tipRadius: "900 mm",
  },
  formulae,
  sources: [MOVE_PROFILES, S_CURVES, at(ISO_10218, "reduced speed")],
  check,
  cautions,
}))
