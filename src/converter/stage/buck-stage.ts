import { type NoSolution, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import { BUCK_CALCULATION, BUCK_DATASHEET, RESTING_CURRENT } from "../sources.js"
import { type StageInput, type StageResult, stageCautions, stageFields, stageOutput } from "./fields.js"
import { continuousRipple, continuousTriangle, restingTriangle, type Stage } from "./kernel.js"
import { limitSteps, rippleSteps, stageResult, triangleSteps } from "./result.js"

/** Input of {@link buckStage}. */
export type BuckStageInput = StageInput

/** Result of {@link buckStage}. */
export type BuckStage = StageResult

/** Reasons for which {@link buckStage} refuses. */
export type BuckStageRefusal = "insufficient-voltage"

/** Hazards and limits of validity that go with an answer of {@link buckStage}. */
export type BuckStageCaution = "burns" | "limit-spread" | "long-duty" | "resting-current" | "switch-limit" | "touch-voltage"

type Si = SiOf<BuckStageInput>

function stageOf(si: Si): Stage {
  const on = si.inputVoltage - si.switchVoltage - (si.diodeVoltage === null ? si.outputVoltage / si.efficiency : si.outputVoltage)
  const off = si.diodeVoltage === null ? si.outputVoltage / si.efficiency : si.outputVoltage + si.diodeVoltage
  return { on, off, inductance: si.inductance * (1 - si.inductanceTolerance), frequency: si.frequency }
}

function solve(si: Si): BuckStage | NoSolution<BuckStageRefusal> {
  const stage = stageOf(si)
  if (!(stage.on > 0)) {
    const { inputVoltage, outputVoltage } = si
    const needed = 1.001 * (inputVoltage - stage.on)
    const lower = 0.999 * (inputVoltage - si.switchVoltage) * (si.diodeVoltage === null ? si.efficiency : 1)
    return refuse(
      "insufficient-voltage",
      "A step-down cannot turn {given.inputVoltage voltage} into {given.outputVoltage voltage}: with the losses it needs more than {needed voltage} at its input. Take a step-up (see boostStage), or a lower output.",
      needed - inputVoltage,
      { needed },
      { ...(needed <= 1000 ? { inputVoltage: needed } : {}), ...(lower >= 0.01 ? { outputVoltage: lower } : {}) },
      { "given.inputVoltage": inputVoltage, "given.outputVoltage": outputVoltage },
    )
  }
  const { ripple } = continuousRipple(stage)
  const boundaryCurrent = ripple / 2
  const lf = stage.inductance * stage.frequency
  const wave =
    si.outputCurrent >= boundaryCurrent
      ? continuousTriangle(stage, si.outputCurrent)
      : restingTriangle(stage, Math.sqrt((2 * lf * si.outputCurrent * stage.off) / (stage.on * (stage.on + stage.off))))
  const inputCurrent = (wave.duty * (wave.peak + wave.valley)) / 2
  const both = wave.duty + wave.fallDuty
  const square = wave.continuous ? wave.ripple ** 2 / 12 : wave.peak ** 2 * both * (1 / 3 - both / 4)
  const atPeak = (limit: number) => (limit >= ripple ? limit - ripple / 2 : ((limit ** 2 * lf) / 2) * (1 / stage.on + 1 / stage.off))
  const atValley = (limit: number) => limit + ripple / 2
  return stageResult(si, stage, wave, {
    boundaryCurrent,
    inputCurrent,
    capacitorSquare: square,
    meanCurrent: si.outputCurrent,
    atPeak,
    atValley,
  })
}

/**
 * Duty, ripple, switch currents and maximum output of a step-down (buck) stage.
 *
 * Formula: V_on = V_in − V_sw − V_out and V_off = V_out + V_d; where no diode voltage is given V_out/η stands for V_out
 * in both and V_d = 0. D = V_off/(V_on + V_off), ΔI = V_on·D/(L·f), boundary I_b = ΔI/2. Resting (I < I_b): D =
 * √(2·L·f·I·V_off/(V_on·(V_on + V_off))). Peak I + ΔI/2, valley I − ΔI/2, RMS √(I² + ΔI²/12). Maximum output from a
 * peak limit I_lim − ΔI/2, from a valley limit I_lim + ΔI/2. V_in, V_out the input and output voltage, I the output
 * current, L the inductance (less its tolerance), f the frequency, η the efficiency, V_sw the switch's voltage. The
 * inductance suggested takes this duty, losses included. Valid in steady state with constant frequency.
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
 * V_off: across the inductor, switch off, losses by the efficiency [V]; V_on: switch on, losses by the efficiency [V];
 * L_e: minimum inductance [H]; D_c: duty in continuous conduction; D_r: the rest of the period; dI_c: ripple in
 * continuous conduction [A]; ccm: 1 in continuous conduction; I_0: mean inductor current in continuous conduction [A];
 * way: limit: 0 none, 1 peak, 2 peak in discontinuous conduction, 3 valley.
 *
 * **Sources**
 * - Texas Instruments: TPS54331 datasheet SLVS839C, 2010, equations 8 to 10
 * - Texas Instruments: TPS54061 datasheet SLVSBB7C, 2014, page 24, equations 30 to 33
 * - Texas Instruments: Basic Calculation of a Buck Converter's Power Stage, SLVA477, equations 1 to 5 (not verified
 *   against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-voltage` where the input does not lie far enough above the output
 * @example
 * ```ts
 * import { buckStage } from 'alula/converter'
 * const stage = buckStage({
 *   inputVoltage: '12.6 V', outputVoltage: '5 V', outputCurrent: '2 A', inductance: '10 uH', frequency: '400 kHz', switchCurrentLimit: '4 A',
 * })
 * stage.duty // => 0.4409
 * stage.rippleCurrent // => 0.7765
 * stage.maxOutputCurrent // => 3.612
 * ```
 */
export const buckStage: Solver<BuckStageInput, BuckStage, BuckStageRefusal, BuckStageCaution> = /* @__PURE__ */ solver<
  BuckStageInput,
  BuckStage,
  BuckStageRefusal,
  BuckStageCaution
>("buckStage", "Duty, ripple and maximum current of a step-down stage", solve, () => ({
  input: {
    inputVoltage: { kind: "voltage", symbol: "V_in", label: "input voltage", min: "10 mV", max: 1000, typical: [8, 24] },
    outputVoltage: { kind: "voltage", symbol: "V_out", label: "output voltage", min: "10 mV", max: 1000, typical: [3, 6] },
    ...stageFields,
  },
  output: stageOutput,
  example: {
    inputVoltage: "12.6 V",
    outputVoltage: "5 V",
    outputCurrent: "2 A",
    inductance: "10 uH",
    frequency: "400 kHz",
    switchCurrentLimit: "4 A",
  },
  formulae: [
    {
      symbol: "V_off",
      kind: "voltage",
      meaning: "across the inductor, switch off, losses by the efficiency",
      is: "V_out / eta",
      when: "not has_diodeVoltage",
    },
    { symbol: "V_off", kind: "voltage", meaning: "across the inductor, switch off", is: "V_out + V_d", when: "has_diodeVoltage" },
    {
      symbol: "V_on",
      kind: "voltage",
      meaning: "switch on, losses by the efficiency",
      is: "V_in - V_sw - V_out / eta",
      when: "not has_diodeVoltage",
    },
    { symbol: "V_on", kind: "voltage", meaning: "switch on", is: "V_in - V_sw - V_out", when: "has_diodeVoltage" },
    ...rippleSteps,
    { symbol: "I_b", meaning: "output current at the edge of discontinuous conduction", is: "dI_c / 2" },
    {
      symbol: "D",
      meaning: "duty in discontinuous conduction",
      is: "sqrt(2 * L_e * f * I * V_off / (V_on * (V_on + V_off)))",
      when: "ccm == 0",
    },
    { symbol: "I_0", kind: "current", meaning: "mean inductor current in continuous conduction", is: "I" },
    ...triangleSteps,
    { symbol: "I_c", meaning: "ripple current of the output capacitor", is: "dI / sqrt(12)", when: "ccm == 1" },
    {
      symbol: "I_c",
      meaning: "ripple current of the output capacitor",
      is: "I_pk * sqrt((D + D_2) * (1 / 3 - (D + D_2) / 4))",
      when: "ccm == 0",
    },
    { symbol: "I_in", meaning: "input current", is: "D * (I_pk + I_v) / 2" },
    ...limitSteps(stageOf),
    { symbol: "I_g", meaning: "maximum output from the peak limit", is: "I_lim - dI_c / 2", when: "way == 1" },
    {
      symbol: "I_g",
      meaning: "maximum output from the peak limit",
      is: "I_lim^2 * L_e * f / 2 * (1 / V_on + 1 / V_off)",
      when: "way == 2",
    },
    { symbol: "I_g", meaning: "maximum output from the valley limit", is: "I_lim + dI_c / 2", when: "way == 3" },
  ],
  sources: [BUCK_DATASHEET, RESTING_CURRENT, BUCK_CALCULATION],
  cautions: (si, out) => stageCautions(si, out),
}))
