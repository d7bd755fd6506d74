import { formatQuantity } from "../quantity/index.js"
import { type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { continuousRipple, continuousTriangle, restingTriangle, type Stage } from "./stage.js"
import { type StageInput, type StageResult, stageCautions, stageFields, stageOutput } from "./stage-fields.js"

/** Input of {@link boostStage}. */
export type BoostStageInput = StageInput

/** Result of {@link boostStage}. */
export type BoostStage = StageResult

type Si = SiOf<BoostStageInput>

/** Output voltage with the losses that the diode or the efficiency stand for, V. */
const raised = (si: Si) => (si.diodeVoltage === null ? si.outputVoltage / si.efficiency : si.outputVoltage + si.diodeVoltage)

function stageOf(si: Si): Stage {
  const on = si.inputVoltage - si.switchVoltage
  const off = raised(si) - si.inputVoltage
  return { on, off, inductance: si.inductance * (1 - si.inductanceTolerance), frequency: si.frequency }
}

function solve(si: Si): BoostStage | NoSolution {
  const stage = stageOf(si)
  const volts = (v: number) => formatQuantity("voltage", v)
  if (!(stage.off > 0) || !(stage.on > 0))
    return refuse(
      "not-a-step-up",
      `A step-up cannot turn ${volts(si.inputVoltage)} into ${volts(si.outputVoltage)}: the output must lie above the input, and the switch must leave some of it.`,
      Math.max(0, -stage.off, -stage.on),
      { inputVoltage: si.inputVoltage, outputVoltage: si.outputVoltage },
      stage.on > 0
        ? { outputVoltage: 1.001 * (si.diodeVoltage === null ? si.inputVoltage * si.efficiency : si.inputVoltage - si.diodeVoltage) }
        : { switchVoltage: 0.999 * si.inputVoltage },
    )
  const { rest, ripple, duty } = continuousRipple(stage)
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
  const greatestOutput = si.switchLimit === null ? null : si.limitKind === "peak" ? atPeak(si.switchLimit) : atValley(si.switchLimit)
  return {
    duty: wave.duty,
    fallDuty: wave.fallDuty,
    continuous: wave.continuous,
    slope: stage.on / stage.inductance,
    ripple: wave.ripple,
    inductorCurrent: wave.mean,
    peakCurrent: wave.peak,
    valleyCurrent: wave.valley,
    rmsCurrent: wave.rms,
    capacitorCurrent: Math.sqrt(square),
    boundaryCurrent,
    inputCurrent,
    estimatedEfficiency: (si.outputVoltage * si.outputCurrent) / (si.inputVoltage * inputCurrent),
    greatestOutput,
    withinLimit: greatestOutput === null ? null : si.outputCurrent <= greatestOutput,
    suggestedInductance: (stage.on * duty) / (stage.frequency * si.rippleRatio * (si.outputCurrent / rest)),
  }
}

/**
 * Duty, ripple, switch currents and greatest output of a step-up (boost) stage.
 *
 * Formula: with V_x = V_out + V_d, or V_out/η where no diode voltage is given, V_on = V_in − V_sw and V_off = V_x − V_in:
 * D = V_off/(V_on + V_off), ΔI = V_on·D/(L·f), boundary I_b = ΔI/2·(1 − D). Continuous: I_L = I/(1 − D); resting
 * (I < I_b): D = √(2·L·f·I·V_off)/V_on. Peak I_L + ΔI/2, valley I_L − ΔI/2. Greatest output from a peak limit
 * (I_lim − ΔI/2)·(1 − D), from a valley limit (I_lim + ΔI/2)·(1 − D). V_in, V_out the input and output voltage (V),
 * I the output current (A), L the inductance (H, less its tolerance, default 0), f the frequency (Hz), η the efficiency
 * (default 0.9), V_sw the switch's voltage (default 0). Losses are those of η or of the two voltages; valid in steady
 * state with constant frequency.
 *
 * Sources: LMR62014 datasheet SNVS735B (2013), page 12; Basic Calculation of a Boost Converter's Power Stage, SLVA372.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `not-a-step-up` where the output does not lie above the input
 * @example
 * ```ts
 * import { boostStage } from 'alula/converter'
 * const stage = boostStage({
 *   inputVoltage: '5 V', outputVoltage: '12 V', outputCurrent: '1.5 A', inductance: '3.3 uH', frequency: '500 kHz',
 *   efficiency: '93 %', switchLimit: '6 A',
 * })
 * stage.duty // => 0.6125
 * stage.peakCurrent // => 4.799
 * stage.greatestOutput // => 1.965
 * ```
 */
export const boostStage: Solver<BoostStageInput, BoostStage> = /* @__PURE__ */ solver<BoostStageInput, BoostStage>({
  name: "boostStage",
  title: "Duty, ripple and greatest current of a step-up stage",
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
    switchLimit: "6 A",
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
    { symbol: "L_e", kind: "inductance", meaning: "least inductance", is: "L * (1 - e_L)" },
    { symbol: "g", meaning: "slope of the rising current", is: "V_on / L_e * s / A" },
    { symbol: "D_c", kind: "ratio", meaning: "duty while the current never rests", is: "V_off / (V_on + V_off)" },
    { symbol: "D_r", kind: "ratio", meaning: "the rest of the period", is: "V_on / (V_on + V_off)" },
    { symbol: "dI_c", kind: "current", meaning: "ripple then", is: "V_on * D_c / (L_e * f)" },
    { symbol: "I_b", meaning: "output current at which it just rests", is: "dI_c / 2 * D_r" },
    { symbol: "ccm", kind: "number", meaning: "1 while the current never rests", given: (_, out) => (out.continuous ? 1 : 0) },
    { symbol: "D", meaning: "duty", is: "D_c", when: "ccm == 1" },
    { symbol: "D", meaning: "duty, the current resting each period", is: "sqrt(2 * L_e * f * I * V_off) / V_on", when: "ccm == 0" },
    { symbol: "D_2", meaning: "falling part", is: "D * V_on / V_off" },
    { symbol: "dI", meaning: "ripple", is: "V_on * D / (L_e * f)" },
    { symbol: "I_L", meaning: "mean inductor current", is: "I / D_r", when: "ccm == 1" },
    { symbol: "I_L", meaning: "mean inductor current", is: "dI * (D + D_2) / 2", when: "ccm == 0" },
    { symbol: "I_pk", meaning: "peak", is: "I_L + dI / 2", when: "ccm == 1" },
    { symbol: "I_pk", meaning: "peak", is: "dI", when: "ccm == 0" },
    { symbol: "I_v", meaning: "valley", is: "I_L - dI / 2", when: "ccm == 1" },
    { symbol: "I_v", meaning: "the current rests", is: "0 A", when: "ccm == 0" },
    { symbol: "I_rms", meaning: "root mean square of the triangle", is: "sqrt((D + D_2) * (I_pk^2 + I_pk * I_v + I_v^2) / 3)" },
    { symbol: "I_c", meaning: "ripple current of the output capacitor", is: "sqrt(D_2 * (I_L^2 * D + dI^2 / 12))", when: "ccm == 1" },
    { symbol: "I_c", meaning: "ripple current of the output capacitor", is: "I_pk * sqrt(D_2 * (1 / 3 - D_2 / 4))", when: "ccm == 0" },
    { symbol: "I_in", meaning: "input current", is: "I_L" },
    { symbol: "eta_e", meaning: "output power over input power", is: "V_out * I / (V_in * I_in)" },
    {
      symbol: "way",
      kind: "number",
      meaning: "limit: 0 none, 1 peak, 2 peak with a resting current, 3 valley",
      given: (si) => limitWay(si),
    },
    { symbol: "I_g", meaning: "greatest output from the peak limit", is: "(I_lim - dI_c / 2) * D_r", when: "way == 1" },
    { symbol: "I_g", meaning: "greatest output from the peak limit", is: "I_lim^2 * L_e * f / (2 * V_off)", when: "way == 2" },
    { symbol: "I_g", meaning: "greatest output from the valley limit", is: "(I_lim + dI_c / 2) * D_r", when: "way == 3" },
    { symbol: "L_s", meaning: "inductance for the ripple asked for", is: "V_on * D_c / (f * K * I / D_r)" },
  ],
  sources: [
    { title: "LMR62014 datasheet SNVS735B", by: "Texas Instruments", edition: "2013", where: "page 12" },
    {
      title: "Basic Calculation of a Boost Converter's Power Stage, SLVA372",
      by: "Texas Instruments",
      where: "equations 1 to 5 (from memory)",
    },
  ],
  solve,
  cautions: (si, out) => stageCautions(si, out),
})

function limitWay(si: Si): number {
  if (si.switchLimit === null) return 0
  if (si.limitKind === "valley") return 3
  return si.switchLimit >= continuousRipple(stageOf(si)).ripple ? 1 : 2
}
