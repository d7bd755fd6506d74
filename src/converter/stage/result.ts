import type { SiOf, Step } from "../../solver/index.js"
import type { StageInput, StageResult } from "./fields.js"
import { continuousRipple, type Stage, type Triangle } from "./kernel.js"

type Si = SiOf<StageInput>

/** What a step-up and a step-down calculate each in their own way, SI. */
interface Own {
  readonly boundaryCurrent: number
  readonly inputCurrent: number
  /** Square of the output capacitor's current, A². */
  readonly capacitorSquare: number
  /** Mean inductor current while it never rests, A. */
  readonly meanCurrent: number
  /** Maximum output for a limit of the peak and of the valley, A. */
  readonly atPeak: (limit: number) => number
  readonly atValley: (limit: number) => number
}

/** The result of a stage from its triangle of inductor current. */
export function stageResult(si: Si, stage: Stage, wave: Triangle, own: Own): StageResult {
  const maxOutputCurrent =
    si.switchCurrentLimit === null ? null : (si.limitType === "peak" ? own.atPeak : own.atValley)(si.switchCurrentLimit)
  return {
    duty: wave.duty,
    fallDuty: wave.fallDuty,
    continuous: wave.continuous,
    slope: stage.on / stage.inductance,
    rippleCurrent: wave.ripple,
    inductorCurrent: wave.mean,
    peakCurrent: wave.peak,
    valleyCurrent: wave.valley,
    rmsCurrent: wave.rms,
    capacitorCurrent: Math.sqrt(own.capacitorSquare),
    boundaryCurrent: own.boundaryCurrent,
    inputCurrent: own.inputCurrent,
    estimatedEfficiency: (si.outputVoltage * si.outputCurrent) / (si.inputVoltage * own.inputCurrent),
    maxOutputCurrent,
    withinLimit: maxOutputCurrent === null ? null : si.outputCurrent <= maxOutputCurrent,
    suggestedInductance: (stage.on * continuousRipple(stage).duty) / (stage.frequency * si.rippleRatio * own.meanCurrent),
  }
}

/** Steps from the voltages across the inductor to the ripple of a current that never rests. */
export const rippleSteps: readonly Step<Si, StageResult>[] = [
  { symbol: "L_e", kind: "inductance", meaning: "minimum inductance", is: "L * (1 - e_L)" },
  { symbol: "g", meaning: "slope of the rising current", is: "V_on / L_e * s / A" },
  { symbol: "D_c", kind: "ratio", meaning: "duty in continuous conduction", is: "V_off / (V_on + V_off)" },
  { symbol: "D_r", kind: "ratio", meaning: "the rest of the period", is: "V_on / (V_on + V_off)" },
  { symbol: "dI_c", kind: "current", meaning: "ripple in continuous conduction", is: "V_on * D_c / (L_e * f)" },
  { symbol: "ccm", kind: "number", meaning: "1 in continuous conduction", given: (_, out) => (out.continuous ? 1 : 0) },
  { symbol: "D", meaning: "duty", is: "D_c", when: "ccm == 1" },
]

/** Steps of the triangle: from the duty `D`, and the mean current `I_0` while it never rests, to its root mean square. */
export const triangleSteps: readonly Step<Si, StageResult>[] = [
  { symbol: "D_2", meaning: "falling part", is: "D * V_on / V_off" },
  { symbol: "dI", meaning: "ripple", is: "V_on * D / (L_e * f)" },
  { symbol: "I_L", meaning: "mean inductor current", is: "I_0", when: "ccm == 1" },
  { symbol: "I_L", meaning: "mean inductor current", is: "dI * (D + D_2) / 2", when: "ccm == 0" },
  { symbol: "I_pk", meaning: "peak", is: "I_L + dI / 2", when: "ccm == 1" },
  { symbol: "I_pk", meaning: "peak", is: "dI", when: "ccm == 0" },
  { symbol: "I_v", meaning: "valley", is: "I_L - dI / 2", when: "ccm == 1" },
  { symbol: "I_v", meaning: "discontinuous conduction", is: "0 A", when: "ccm == 0" },
  { symbol: "I_rms", meaning: "root mean square of the triangle", is: "sqrt((D + D_2) * (I_pk^2 + I_pk * I_v + I_v^2) / 3)" },
]

/** Steps from the input current to the efficiency and to which limit there is. */
export const limitSteps = (stageOf: (si: Si) => Stage): readonly Step<Si, StageResult>[] => [
  { symbol: "eta_e", meaning: "output power over input power", is: "V_out * I / (V_in * I_in)" },
  {
    symbol: "way",
    kind: "number",
    meaning: "limit: 0 none, 1 peak, 2 peak in discontinuous conduction, 3 valley",
    given: (si) => {
      if (si.switchCurrentLimit === null) return 0
      if (si.limitType === "valley") return 3
      return si.switchCurrentLimit >= continuousRipple(stageOf(si)).ripple ? 1 : 2
    },
  },
  { symbol: "L_s", meaning: "inductance for the ripple asked for, with the duty that counts the losses", is: "V_on * D_c / (f * K * I_0)" },
]
