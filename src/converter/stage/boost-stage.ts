import { type NoSolution, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import { BOOST_CALCULATION, BOOST_DATASHEET } from "../sources.js"
import { type StageInput, type StageResult, stageCautions, stageFields, stageOutput } from "./fields.js"
import { continuousRipple, continuousTriangle, restingTriangle, type Stage } from "./kernel.js"
import { limitSteps, rippleSteps, stageResult, triangleSteps } from "./result.js"

/** Input of {@link boostStage}. */
export type BoostStageInput = StageInput

/** Result of {@link boostStage}. */
export type BoostStage = StageResult

/** Reasons for which {@link boostStage} refuses. */
export type BoostStageRefusal = "input-too-high"

/** Hazards and limits of validity that go with an answer of {@link boostStage}. */
export type BoostStageCaution = "burns" | "limit-spread" | "long-duty" | "resting-current" | "switch-limit" | "touch-voltage"

type Si = SiOf<BoostStageInput>

/** Output voltage with the losses that the diode or the efficiency stand for, V. */
const raised = (si: Si) => (si.diodeVoltage === null ? si.outputVoltage / si.efficiency : si.outputVoltage + si.diodeVoltage)

function stageOf(si: Si): Stage {
  const on = si.inputVoltage - si.switchVoltage
  const off = raised(si) - si.inputVoltage
  return { on, off, inductance: si.inductance * (1 - si.inductanceTolerance), frequency: si.frequency }
}

function solve(si: Si): BoostStage | NoSolution<BoostStageRefusal> {
  const stage = stageOf(si)
  const { inputVoltage, outputVoltage, switchVoltage } = si
  if (!(stage.on > 0))
    return refuse(
      "input-too-high",
      "The switch takes {given.switchVoltage voltage} of the {given.inputVoltage voltage} that come in: nothing is left across the inductor. Take a better switch or more input voltage.",
      switchVoltage - 0.999 * inputVoltage,
      {},
      outputVoltage > inputVoltage ? { switchVoltage: 0.999 * inputVoltage } : {},
      { "given.switchVoltage": switchVoltage, "given.inputVoltage": inputVoltage },
    )
  if (!(outputVoltage > inputVoltage))
    return refuse(
      "input-too-high",
      "A step-up cannot turn {given.inputVoltage voltage} into {given.outputVoltage voltage}: the output must lie above the input. Take a step-down (see buckStage), or a stage that does both.",
      1.001 * inputVoltage - outputVoltage,
      {},
      1.001 * inputVoltage <= 1000 ? { outputVoltage: 1.001 * inputVoltage } : {},
      { "given.inputVoltage": inputVoltage, "given.outputVoltage": outputVoltage },
    )
  const { rest, ripple } = continuousRipple(stage)
  const boundaryCurrent = (ripple / 2) * rest
  const lf = stage.inductance * stage.frequency
  const wave =
    si.outputCurrent >= boundaryCurrent
      ? continuousTriangle(stage, si.outputCurrent / rest)
      : restingTriangle(stage, Math.sqrt(2 * lf * si.outputCurrent * stage.off) / stage.on)
  const inputCurrent = wave.mean
  // the diode's current is the falling part of the triangle; what differs from its mean flows in the capacitor
  const square = wave.continuous
    ? wave.fallDuty * (wave.mean ** 2 * wave.duty + wave.ripple ** 2 / 12)
    : wave.peak ** 2 * wave.fallDuty * (1 / 3 - wave.fallDuty / 4)
  const atPeak = (limit: number) => (limit >= ripple ? (limit - ripple / 2) * rest : (limit ** 2 * lf) / (2 * stage.off))
  const atValley = (limit: number) => (limit + ripple / 2) * rest
  return stageResult(si, stage, wave, {
    boundaryCurrent,
    inputCurrent,
    capacitorSquare: square,
    meanCurrent: si.outputCurrent / rest,
    atPeak,
    atValley,
  })
}

/**
 * Duty, ripple, switch currents and maximum output of a step-up (boost) stage.
 *
 * Formula: with V_x = V_out + V_d, or V_out/η where no diode voltage is given, V_on = V_in − V_sw and V_off = V_x −
 * V_in: D = V_off/(V_on + V_off), ΔI = V_on·D/(L·f), boundary I_b = ΔI/2·(1 − D). Continuous: I_L = I/(1 − D); resting
 * (I < I_b): D = √(2·L·f·I·V_off)/V_on. Peak I_L + ΔI/2, valley I_L − ΔI/2. Maximum output from a peak limit (I_lim −
 * ΔI/2)·(1 − D), from a valley limit (I_lim + ΔI/2)·(1 − D). V_in, V_out the input and output voltage, I the output
 * current, L the inductance (less its tolerance), f the frequency, η the efficiency, V_sw the switch's voltage. Losses
 * are those of η or of the two voltages; valid in steady state with constant frequency. The inductance suggested is
 * V_on·D/(f·K·I_L) with this same duty D, losses included; makers' short formula V_in·(V_out − V_in)/(K·I_L·f·V_out)
 * leaves the losses out of the duty and comes out a little lower.
 *
 * **Inputs**
 * - `inputVoltage`: input voltage [V_in; 10 mV to 1000 V]
 * - `outputVoltage`: output voltage [V_out; 10 mV to 1000 V]
 * - `outputCurrent`: output current [I; 1 µA to 1000 A]
 * - `inductance`: inductance [L; 1 nH to 10000 H]
 * - `frequency`: switching frequency [f; 1 Hz to 1000 MHz]
 * - `inductanceTolerance`: inductance tolerance, downward [e_L; 0 to 0.9; default 0]
 * - `efficiency`: efficiency taken [eta; 5 to 100 %; default 90 %]
 * - `diodeVoltage`: voltage across the diode [V_d; 0 to 100 V; optional]
 * - `switchVoltage`: voltage across the switch [V_sw; 0 to 100 V; default 0]
 * - `switchCurrentLimit`: switch current limit [I_lim; 0.1 mA to 1000 A; optional]
 * - `limitType`: current that the limit acts on [peak or valley; default peak]
 * - `rippleRatio`: ripple to suggest an inductance for [K; 1 to 200 %; default 30 %]
 *
 * **Results**
 *
 * `duty`: duty [D; as a fraction]; `fallDuty`: falling part of the period [D_2; as a fraction]; `continuous`:
 * continuous conduction [yes or no]; `slope`: slope of the rising current, A/s [g]; `rippleCurrent`: ripple, peak to
 * peak [dI; A]; `inductorCurrent`: mean inductor current [I_L; A]; `peakCurrent`: peak current [I_pk; A];
 * `valleyCurrent`: valley current [I_v; A]; `rmsCurrent`: inductor current, RMS [I_rms; A]; `capacitorCurrent`: output
 * capacitor current, RMS [I_c; A]; `boundaryCurrent`: output current at the edge of discontinuous conduction [I_b; A];
 * `inputCurrent`: input current [I_in; A]; `estimatedEfficiency`: efficiency as estimated [eta_e; as a fraction];
 * `maxOutputCurrent`: maximum output current [I_g; A]; `withinLimit`: within the switch limit [yes or no];
 * `suggestedInductance`: inductance for the ripple asked (losses in the duty) [L_s; H].
 *
 * **Symbols of the working**
 *
 * V_x: output with its losses, by the efficiency [V]; V_on: across the inductor, switch on [V]; V_off: across it,
 * switch off [V]; L_e: minimum inductance [H]; D_c: duty in continuous conduction; D_r: the rest of the period; dI_c:
 * ripple in continuous conduction [A]; ccm: 1 in continuous conduction; I_0: mean inductor current in continuous
 * conduction [A]; way: limit: 0 none, 1 peak, 2 peak in discontinuous conduction, 3 valley.
 *
 * **Sources**
 * - Texas Instruments: LMR62014 datasheet SNVS735B, 2013, page 12
 * - Texas Instruments: Basic Calculation of a Boost Converter's Power Stage, SLVA372, equations 1 to 5 (not verified
 *   against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `input-too-high` where the output does not lie above the input
 * @example
 * ```ts
 * import { boostStage } from 'alula/converter'
 * const stage = boostStage({
 *   inputVoltage: '5 V', outputVoltage: '12 V', outputCurrent: '1.5 A', inductance: '3.3 uH', frequency: '500 kHz',
 *   efficiency: '93 %', switchCurrentLimit: '6 A',
 * })
 * stage.duty // => 0.6125
 * stage.peakCurrent // => 4.799
 * stage.maxOutputCurrent // => 1.965
 * ```
 */
export const boostStage: Solver<BoostStageInput, BoostStage, BoostStageRefusal, BoostStageCaution> = /* @__PURE__ */ solver<
  BoostStageInput,
  BoostStage,
  BoostStageRefusal,
  BoostStageCaution
>("boostStage", "Duty, ripple and maximum current of a step-up stage", solve, () => ({
  input: {
    inputVoltage: { kind: "voltage", symbol: "V_in", label: "input voltage", min: "10 mV", max: 1000, typical: [2.5, 9] },
    outputVoltage: { kind: "voltage", symbol: "V_out", label: "output voltage", min: "10 mV", max: 1000, typical: [10, 24] },
    ...stageFields,
  },
  output: stageOutput,
  example: {
    inputVoltage: "5 V",
    outputVoltage: "12 V",
    outputCurrent: "1.5 A",
    inductance: "3.3 uH",
    frequency: "500 kHz",
    efficiency: "93 %",
    switchCurrentLimit: "6 A",
  },
  formulae: [
    {
      symbol: "V_x",
      kind: "voltage",
      meaning: "output with its losses, by the efficiency",
      is: "V_out / eta",
      when: "not has_diodeVoltage",
    },
    { symbol: "V_x", kind: "voltage", meaning: "output with the diode", is: "V_out + V_d", when: "has_diodeVoltage" },
    { symbol: "V_on", kind: "voltage", meaning: "across the inductor, switch on", is: "V_in - V_sw" },
    { symbol: "V_off", kind: "voltage", meaning: "across it, switch off", is: "V_x - V_in" },
    ...rippleSteps,
    { symbol: "I_b", meaning: "output current at the edge of discontinuous conduction", is: "dI_c / 2 * D_r" },
    { symbol: "D", meaning: "duty in discontinuous conduction", is: "sqrt(2 * L_e * f * I * V_off) / V_on", when: "ccm == 0" },
    { symbol: "I_0", kind: "current", meaning: "mean inductor current in continuous conduction", is: "I / D_r" },
    ...triangleSteps,
    { symbol: "I_c", meaning: "ripple current of the output capacitor", is: "sqrt(D_2 * (I_L^2 * D + dI^2 / 12))", when: "ccm == 1" },
    { symbol: "I_c", meaning: "ripple current of the output capacitor", is: "I_pk * sqrt(D_2 * (1 / 3 - D_2 / 4))", when: "ccm == 0" },
    { symbol: "I_in", meaning: "input current", is: "I_L" },
    ...limitSteps(stageOf),
    { symbol: "I_g", meaning: "maximum output from the peak limit", is: "(I_lim - dI_c / 2) * D_r", when: "way == 1" },
    { symbol: "I_g", meaning: "maximum output from the peak limit", is: "I_lim^2 * L_e * f / (2 * V_off)", when: "way == 2" },
    { symbol: "I_g", meaning: "maximum output from the valley limit", is: "(I_lim + dI_c / 2) * D_r", when: "way == 3" },
  ],
  sources: [BOOST_DATASHEET, BOOST_CALCULATION],
  cautions: (si, out) => stageCautions(si, out),
}))
