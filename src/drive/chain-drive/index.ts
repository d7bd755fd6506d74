import { at, type Solver, solver } from "../../solver/index.js"
import { CHAIN_FACTORS, ISO_10823, KHURMI } from "../sources.js"
import { cautions } from "./cautions.js"
import { check, input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { ChainDrive, ChainDriveCaution, ChainDriveInput } from "./types.js"

export { drawChainDrive } from "./drawing.js"
export type { ChainDrive, ChainDriveCaution, ChainDriveInput } from "./types.js"

/**
 * Links, distance, ripple, tension and strength of a roller chain on two sprockets.
 *
 * Formula: links X₀ = 2·C/p + (z₁ + z₂)/2 + ((z₂ − z₁)/2π)²·p/C, taken up to the next even number X; the distance that fits it is
 * p/4·(X_f + √(X_f² − 8·((z₂ − z₁)/2π)²)) with X_f = X − (z₁ + z₂)/2. Mean pull 2π·|T|/(p·z₂), peak |T|/(r₂·cos(π/z₂)) where the
 * chain runs nearest to the shaft; its speed rises and falls by (π/z₁)·(1/sin(π/z₁) − 1/tan(π/z₁)). T₁ = T/(i·η) with the load
 * against it, T·η_b/i with the load driving.
 *
 * Valid for a chain whose other strand hangs slack; the links by this formula are within a tenth of one where the shafts stand
 * 30 pitches apart and more, up to a ratio of nine.
 *
 * **Inputs**
 * - `pitch`: pitch [p; 2 to 150 mm]
 * - `drivingTeeth`: teeth of the driving sprocket [z_1; whole 6 to 300]
 * - `drivenTeeth`: teeth of the driven sprocket [z_2; whole 6 to 300]
 * - `centreDistance`: distance between the shafts [C; 10 mm to 50 m]
 * - `torque`: torque at the driven shaft [T; −1000000 to 1000000 N m]
 * - `inputSpeed`: speed of the driving shaft [omega_1; 0 to 10000 rpm; optional]
 * - `shockFactor`: jolts against the steady pull [K; 1 to 5; default 1.5]
 * - `linearDensity`: mass of a length of chain [q; 0 to 100 kg/m; default 0]
 * - `breakingForce`: breaking force [F_b; 1 N to 100000 kN; optional]
 * - `efficiency`: efficiency [eta; 50 to 100 %; default 96 %]
 * - `backwardEfficiency`: efficiency, load driving [eta_g; 30 to 100 %; optional]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `ratio`: ratio [i]; `drivingDiameter`: pitch circle, driving sprocket [D_1; m];
 * `drivenDiameter`: pitch circle, driven sprocket [D_2; m]; `exactLinks`: links at the distance asked for [X_0];
 * `links`: links [X]; `length`: length of the chain [L; m]; `fittingDistance`: distance at which it fits [C_f; m];
 * `smallWrap`: wrap on the smaller sprocket [theta; rad]; `speedRipple`: rise and fall of its speed [delta; as a
 * fraction]; `inputTorque`: torque at the driving shaft [T_1; N m]; `returnTorque`: torque at the driving shaft,
 * motion reversed [T_r; N m]; `pull`: mean pull [F; N]; `peakPull`: peak pull [F_p; N]; `centrifugalTension`:
 * centrifugal part [F_c; N]; `workingTension`: working tension [F_w; N]; `safetyFactor`: safety factor [S];
 * `shaftForce`: force on each shaft [F_s; N]; `chainSpeed`: speed of the chain [v; m/s]; `outputSpeed`: speed of the
 * driven shaft [omega_2; rad/s]; `inputPower`: power in [P_1; W]; `outputPower`: power out [P_2; W]; `heat`: heat
 * [P_h; W].
 *
 * **Symbols of the working**
 *
 * helps: 1 where the load helps; judged: 1 where the strength is judged; k: for the strands' lean; X_f: links of both
 * strands; eta_b: efficiency, load driving, as given.
 *
 * **Sources**
 * - ISO: ISO 10823, Guidelines for the selection of roller chain drives, 2004, sprockets, centre distance and number
 *   of links (not verified against the document)
 * - R. S. Khurmi, J. K. Gupta: Theory of Machines, 2005, chapter 11 (not verified against the document)
 * - R. S. Khurmi, J. K. Gupta: A Textbook of Machine Design, 2005, table 21.5, roller chains: from 7 at 50 rev/min on
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { chainDrive } from 'alula/drive'
 * const neck = chainDrive({
 *   pitch: '6.35 mm', drivingTeeth: 17, drivenTeeth: 34, centreDistance: '220 mm', torque: '8 N m', breakingForce: '3.5 kN',
 * })
 * neck.links // => 96
 * neck.fittingDistance // => 0.2232
 * neck.safetyFactor // => 9.994
 * ```
 */
export const chainDrive: Solver<ChainDriveInput, ChainDrive, never, ChainDriveCaution> = /* @__PURE__ */ solver<
  ChainDriveInput,
  ChainDrive,
  never,
  ChainDriveCaution
>("chainDrive", "A roller chain on two sprockets: links, tension and strength", kernel, () => ({
  input,
  output,
  example: {
    pitch: "6.35 mm",
    drivingTeeth: 17,
    drivenTeeth: 34,
    centreDistance: "220 mm",
    torque: "8 N m",
    inputSpeed: "120 rpm",
    linearDensity: 0.14,
    breakingForce: "3.5 kN",
  },
  formulae,
  sources: [ISO_10823, at(KHURMI, "chapter 11"), CHAIN_FACTORS],
  check,
  cautions,
}))
