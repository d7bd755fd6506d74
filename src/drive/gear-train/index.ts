import { at, type Solver, solver } from "../../solver/index.js"
import { BEVAN, GEARMOTOR_FAQ, KHURMI, SHIGLEY } from "../sources.js"
import { cautions } from "./cautions.js"
import { check, input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { GearTrain, GearTrainInput } from "./types.js"

export type { GearStage, GearStageResult, GearTrain, GearTrainInput, PlanetaryPath } from "./types.js"

/**
 * Ratio, efficiency both ways, locking, play, inertia and torques of a gear train: spur, planetary and worm stages in any order.
 *
 * Formula: a stage of z₁ driving and z₂ driven teeth has r = z₂/z₁ and, by mesh efficiency η_m (default 0.97), η = η_m both
 * ways. A planetary stage with k = ring/sun teeth and both meshes η₀ = η_m² (Willis: ω_S + k·ω_R = (1 + k)·ω_C) has
 * r = 1 + k and η = (1 + k·η₀)/(1 + k) from sun to carrier, r = 1/(1 + k) and η = (1 + k)/(1 + k/η₀) back; r = 1 + 1/k and
 * η = (k + η₀)/(k + 1) from ring to carrier; r = k and η₀ from sun to ring, which turns the other way. A worm with lead angle γ
 * (rad), friction μ and pressure angle α (rad, default 20°) has η = (cos α − μ·tan γ)/(cos α + μ·cot γ) driving and
 * η = (cos α − μ·cot γ)/(cos α + μ·tan γ) driven back: it locks where that is not above zero. `selfLocking` asks that it still
 * locks with half of μ. With i = Πr: T₁ = T/(i·Πη) + T_d against a load T (N·m), T₁ = T·Πη_b/i + T_d with one that helps (T < 0),
 * T_d the drag at the input (default 0); where a stage locks, the input has to drive the load down. Play at the output
 * Σβ_k·f_k/i (rad), inertia at the input J₀ + ΣJ_k/f_k² + J_L/i² (kg·m²), f_k the turns of the input for one of stage k's output.
 * Force along the pitch circle 2T/(m·z), shared by the planets.
 *
 * Valid at steady speed, for gears in their rated range; rigid shafts, evenly loaded planets. The same in both directions of rotation.
 *
 * Sources: Bevan, The Theory of Machines, chapters 10 and 11; Khurmi and Gupta, Theory of Machines, chapter 13; Shigley's
 * Mechanical Engineering Design, 10th ed. 2015, section 13-17.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { gearTrain } from 'alula/drive'
 * const wing = gearTrain({
 *   stages: [
 *     { type: 'planetary', drivingTeeth: 12, drivenTeeth: 48 },
 *     { type: 'worm', drivingTeeth: 1, drivenTeeth: 30, leadAngle: '4 deg', friction: 0.1 },
 *   ],
 *   torque: '6 N m',
 * })
 * wing.ratio // => 150
 * wing.efficiency // => 0.375
 * wing.inputTorque // => 0.1067
 * wing.locksAtFriction // => true
 * wing.selfLocking // => false
 * ```
 */
export const gearTrain: Solver<GearTrainInput, GearTrain> = /* @__PURE__ */ solver<GearTrainInput, GearTrain>(
  "gearTrain",
  "What a gear train makes of speed and torque, and whether it holds",
  solve,
  () => ({
    input,
    output,
    example: {
      stages: [
        { type: "planetary", drivingTeeth: 12, drivenTeeth: 48, module: "0.5 mm", backlash: "0.5 deg" },
        { type: "worm", drivingTeeth: 1, drivenTeeth: 30, leadAngle: "4 deg", friction: 0.1, module: "1 mm", backlash: "0.3 deg" },
      ],
      torque: "6 N m",
      dragTorque: "2 mN m",
      inputSpeed: "5000 rpm",
      inputInertia: "20 g cm2",
      loadInertia: "0.4 kg m2",
      tipRadius: "900 mm",
    },
    formulae,
    sources: [at(BEVAN, "chapters 10 and 11"), at(KHURMI, "chapter 13"), at(SHIGLEY, "section 13-17"), at(GEARMOTOR_FAQ, "answer 2.1.3")],
    check,
    cautions,
  }),
)
