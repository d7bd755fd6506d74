import type { Current, Ratio, Resistance, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { ConverterSpec, InputBound } from "../limit.js"

/** One point of an efficiency curve. */
export interface EfficiencyPoint {
  /** Output current [I_e; 0 to 1000 A] */
  outputCurrent: Current
  /** Efficiency there, as a fraction. [eta_e; 1 to 100 %] */
  efficiency: Ratio
}

/** Input of {@link converterLimit}. */
export interface ConverterLimitInput {
  /** Output voltage the converter is set to. [V_set; 10 mV to 1000 V] */
  outputVoltage: Voltage
  /** Current the load draws; set by its force or torque, not by the voltage. [I; 0 to 1000 A] */
  loadCurrent: Current
  /** Source voltage, open circuit [E; 10 mV to 1000 V] */
  sourceVoltage: Voltage
  /** Resistance of source, wires and contacts together. [R; 0 to 1000 Ω; default 0] */
  sourceResistance?: Resistance
  /** Maximum current the converter takes in. [I_lim; 0.1 mA to 1000 A; optional] */
  inputCurrentLimit?: Current | null
  /** Maximum current the converter gives out. [I_ol; 0.1 mA to 1000 A; optional] */
  outputCurrentLimit?: Current | null
  /** Efficiency over output current, in rising order of load. [list of 1 to 1000] */
  efficiency: readonly EfficiencyPoint[]
  /** No-load input current [I_q; 0 to 100 A; default 0] */
  quiescentCurrent?: Current
  /** Minimum input voltage it works at. [V_min; 0 to 1000 V; default 0] */
  minInputVoltage?: Voltage
  /** Maximum input voltage it may have. [V_max; 10 mV to 1000 V; optional] */
  maxInputVoltage?: Voltage | null
  /**
   * What the converter can do with its input voltage; left out, it is taken to do whatever is asked, with a caution.
   * [boost, buck or buck-boost; optional]
   */
  topology?: "boost" | "buck" | "buck-boost" | null
}

/** The input in SI. */
export type Si = SiOf<ConverterLimitInput>

/** Converter and source of an input. */
export const specOf = (si: Si): ConverterSpec => ({
  ...si,
  maxInputVoltage: si.maxInputVoltage ?? Number.POSITIVE_INFINITY,
})
export const sourceOf = (si: Si) => ({ sourceVoltage: si.sourceVoltage, sourceResistance: si.sourceResistance })

/** First load current at which the demand reaches the bound, segment by segment of the efficiency curve. */
export function currentAtBound(spec: ConverterSpec, bound: InputBound): number {
  const curve = spec.efficiency
  const crossing = (intercept: number, slope: number) => (bound.power * intercept) / (spec.outputVoltage - bound.power * slope)
  const first = curve[0] as ConverterSpec["efficiency"][number]
  let low = first
  const early = crossing(first.efficiency, 0)
  if (early <= first.outputCurrent) return early
  for (const high of curve.slice(1)) {
    const slope = (high.efficiency - low.efficiency) / (high.outputCurrent - low.outputCurrent)
    if ((spec.outputVoltage * high.outputCurrent) / high.efficiency >= bound.power)
      return crossing(low.efficiency - slope * low.outputCurrent, slope)
    low = high
  }
  return crossing(low.efficiency, 0)
}

/** Load current at which a step-down's input has sunk to the set voltage; null for other converters and stiff sources. */
export function dropOutCurrent(si: Si): number | null {
  if (si.topology !== "buck" || !(si.sourceResistance > 0)) return null
  const current = (si.sourceVoltage - si.sourceResistance * si.quiescentCurrent - si.outputVoltage) / si.sourceResistance
  return currentAtBound(specOf(si), { current, power: si.outputVoltage * current, limitedBy: "input-voltage" })
}

/** What the kernel found on its way, for the formulae. */
export interface LimitTrace {
  readonly bound: InputBound | null
}
