import type { Current, Frequency, Inductance, Ratio, Voltage } from "../../quantity/index.js"
import { at, type Caution, caution, commonPractice, type Fields, type OutFields, type SiOf } from "../../solver/index.js"
import { heatCautions, touchCautions } from "../hazards.js"
import { BOOST_CALCULATION, POWER_ELECTRONICS, RESTING_CURRENT } from "../sources.js"

/** Input of a step-up or step-down stage. */
export interface StageInput {
  /** Input voltage [V_in; 10 mV to 1000 V] */
  inputVoltage: Voltage
  /** Output voltage [V_out; 10 mV to 1000 V] */
  outputVoltage: Voltage
  /** Output current [I; 1 µA to 1000 A] */
  outputCurrent: Current
  /** Inductance [L; 1 nH to 10000 H] */
  inductance: Inductance
  /** Switching frequency [f; 1 Hz to 1000 MHz] */
  frequency: Frequency
  /** What the inductance may be short of its value. [e_L; 0 to 0.9; default 0] */
  inductanceTolerance?: Ratio
  /** Efficiency taken for the losses while no diode voltage is given. [eta; 5 to 100 %; default 90 %] */
  efficiency?: Ratio
  /**
   * Voltage across the diode (or the second switch) while it conducts; null takes the losses from `efficiency`. [V_d; 0
   * to 100 V; optional]
   */
  diodeVoltage?: Voltage | null
  /** Voltage across the switch while it is on. [V_sw; 0 to 100 V; default 0] */
  switchVoltage?: Voltage
  /** Switch current limit [I_lim; 0.1 mA to 1000 A; optional] */
  switchCurrentLimit?: Current | null
  /** Whether that limit watches the peak or the valley of the inductor current. [peak or valley; default peak] */
  limitType?: "peak" | "valley"
  /** Ripple against the mean inductor current to suggest an inductance for. [K; 1 to 200 %; default 30 %] */
  rippleRatio?: Ratio
}

/** Result of a step-up or step-down stage. */
export interface StageResult {
  /** Part of the period the switch is on. [D; as a fraction] */
  readonly duty: number
  /** Part of the period the inductor current falls. [D_2; as a fraction] */
  readonly fallDuty: number
  /** Whether the inductor current never rests. [yes or no] */
  readonly continuous: boolean
  /** How fast the inductor current rises. [g] */
  readonly slope: number
  /** Ripple of the inductor current, peak to peak. [dI; A] */
  readonly rippleCurrent: number
  /** Mean inductor current [I_L; A] */
  readonly inductorCurrent: number
  /** Peak of the inductor and switch current. [I_pk; A] */
  readonly peakCurrent: number
  /** Valley of the inductor current. [I_v; A] */
  readonly valleyCurrent: number
  /** Root mean square of the inductor current. [I_rms; A] */
  readonly rmsCurrent: number
  /** Root mean square of the current in the output capacitor. [I_c; A] */
  readonly capacitorCurrent: number
  /** Output current below which the inductor current rests each period. [I_b; A] */
  readonly boundaryCurrent: number
  /** Input current [I_in; A] */
  readonly inputCurrent: number
  /** Output power over input power as these losses have it. [eta_e; as a fraction] */
  readonly estimatedEfficiency: number
  /** Maximum output current the switch limit allows. [I_g; A] */
  readonly maxOutputCurrent: number | null
  /** Whether the output current is within it. [yes or no] */
  readonly withinLimit: boolean | null
  /** Inductance for the ripple ratio asked for: by the duty that counts the losses, which makers' short formula leaves out. [L_s; H] */
  readonly suggestedInductance: number
}

/** Descriptions that step-up and step-down share. */
export const stageFields: Omit<Fields<StageInput>, "inputVoltage" | "outputVoltage"> = {
  outputCurrent: { kind: "current", symbol: "I", label: "output current", min: "1 uA", max: 1000, typical: [0.05, 3] },
  inductance: { kind: "inductance", symbol: "L", label: "inductance", min: "1 nH", max: 1e4, typical: ["1 uH", "47 uH"] },
  frequency: { kind: "frequency", symbol: "f", label: "switching frequency", min: 1, max: 1e9, typical: ["100 kHz", "2 MHz"] },
  inductanceTolerance: {
    kind: "ratio",
    symbol: "e_L",
    label: "inductance tolerance, downward",
    min: 0,
    max: 0.9,
    typical: [0, "30 %"],
    default: 0,
  },
  efficiency: { kind: "ratio", symbol: "eta", label: "efficiency taken", min: 0.05, max: 1, typical: ["80 %", "96 %"], default: "90 %" },
  diodeVoltage: { kind: "voltage", symbol: "V_d", label: "voltage across the diode", min: 0, max: 100, typical: [0.1, 0.7], default: null },
  switchVoltage: { kind: "voltage", symbol: "V_sw", label: "voltage across the switch", min: 0, max: 100, typical: [0, 0.4], default: 0 },
  switchCurrentLimit: {
    kind: "current",
    symbol: "I_lim",
    label: "switch current limit",
    min: "0.1 mA",
    max: 1000,
    typical: [1, 10],
    default: null,
  },
  limitType: {
    kind: "choice",
    label: "current that the limit acts on",
    options: { peak: "the peak", valley: "the valley" },
    default: "peak",
  },
  rippleRatio: {
    kind: "ratio",
    symbol: "K",
    label: "ripple to suggest an inductance for",
    min: 0.01,
    max: 2,
    typical: ["20 %", "50 %"],
    default: "30 %",
  },
}

/** Result descriptions that step-up and step-down share. */
export const stageOutput: OutFields<StageResult> = {
  duty: { kind: "ratio", symbol: "D", label: "duty", unit: "%" },
  fallDuty: { kind: "ratio", symbol: "D_2", label: "falling part of the period", unit: "%" },
  continuous: { kind: "flag", label: "continuous conduction" },
  slope: { kind: "number", symbol: "g", label: "slope of the rising current, A/s" },
  rippleCurrent: { kind: "current", symbol: "dI", label: "ripple, peak to peak" },
  inductorCurrent: { kind: "current", symbol: "I_L", label: "mean inductor current" },
  peakCurrent: { kind: "current", symbol: "I_pk", label: "peak current" },
  valleyCurrent: { kind: "current", symbol: "I_v", label: "valley current" },
  rmsCurrent: { kind: "current", symbol: "I_rms", label: "inductor current, RMS" },
  capacitorCurrent: { kind: "current", symbol: "I_c", label: "output capacitor current, RMS" },
  boundaryCurrent: { kind: "current", symbol: "I_b", label: "output current at the edge of discontinuous conduction" },
  inputCurrent: { kind: "current", symbol: "I_in", label: "input current" },
  estimatedEfficiency: { kind: "ratio", symbol: "eta_e", label: "efficiency as estimated", unit: "%" },
  maxOutputCurrent: { kind: "current", symbol: "I_g", label: "maximum output current" },
  withinLimit: { kind: "flag", label: "within the switch limit" },
  suggestedInductance: { kind: "inductance", symbol: "L_s", label: "inductance for the ripple asked (losses in the duty)" },
}

/** Cautions that step-up and step-down share. */
export function stageCautions(
  si: SiOf<StageInput>,
  out: StageResult,
): Caution<"burns" | "limit-spread" | "long-duty" | "resting-current" | "switch-limit" | "touch-voltage">[] {
  const outputPower = si.outputVoltage * si.outputCurrent
  const found: Caution<"burns" | "limit-spread" | "long-duty" | "resting-current" | "switch-limit" | "touch-voltage">[] = [
    ...touchCautions(Math.max(si.inputVoltage, si.outputVoltage)),
    ...heatCautions(outputPower / out.estimatedEfficiency - outputPower),
  ]
  if (out.maxOutputCurrent !== null && out.withinLimit === false)
    found.push(
      caution(
        "switch-limit",
        "caution",
        "The switch limit allows {maxOutputCurrent current}; asked for are {given.outputCurrent current}: the output voltage falls, or the converter stops and tries again.",
        BOOST_CALCULATION,
        { maxOutputCurrent: out.maxOutputCurrent, "given.outputCurrent": si.outputCurrent },
      ),
    )
  if (!out.continuous)
    found.push(
      caution(
        "resting-current",
        "note",
        "The inductor current falls to zero in each period (discontinuous conduction). Losses are not counted in this mode beyond the voltages given, and many parts skip pulses here.",
        RESTING_CURRENT,
      ),
    )
  if (out.duty > 0.85)
    found.push(
      caution(
        "long-duty",
        "caution",
        "The switch is on for {duty ratio %} of the period: many parts end at 85 %, losses rise steeply and the real output stays below this.",
        at(POWER_ELECTRONICS, "chapter 3: losses limit a step-up"),
        { duty: out.duty },
      ),
    )
  if (si.switchCurrentLimit !== null)
    found.push(
      caution(
        "limit-spread",
        "note",
        "Use the minimum switch limit of the part's datasheet, not the typical one: they differ by 20 to 40 %, and a hot inductor saturates earlier.",
        commonPractice,
      ),
    )
  return found
}
