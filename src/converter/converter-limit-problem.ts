import type { Current, Ratio, Resistance, Voltage } from "../quantity/index.js"
import type { SiOf } from "../solver/index.js"
import type { ConverterSpec, InputBound } from "./limit.js"

/** One point of an efficiency curve. */
export interface EfficiencyPoint {
  /** Output current. */
  load: Current
  /** Efficiency there, as a fraction. */
  efficiency: Ratio
}

/** Input of {@link converterLimit}. */
export interface ConverterLimitInput {
  /** Output voltage the converter is set to. */
  outputVoltage: Voltage
  /** Current the load draws; set by its force or torque, not by the voltage. */
  loadCurrent: Current
  /** Open-circuit voltage of the source. */
  sourceVoltage: Voltage
  /** Resistance of source, wires and contacts together. */
  sourceResistance?: Resistance
  /** Greatest current the converter takes in. */
  inputCurrentLimit?: Current | null
  /** Greatest current the converter gives out. */
  outputCurrentLimit?: Current | null
  /** Efficiency over output current, in rising order of load. */
  efficiency: readonly EfficiencyPoint[]
  /** Input current with no load. */
  quiescentCurrent?: Current
  /** Least input voltage it works at. */
  minimumInput?: Voltage
  /** Greatest input voltage it may have. */
  maximumInput?: Voltage | null
  /** What the converter can do with its input voltage; left out, it is taken to do whatever is asked, with a caution. */
  topology?: "step-up" | "step-down" | "step-up-down" | null
}

/** The input in SI. */
export type Si = SiOf<ConverterLimitInput>

/** Converter and source of an input. */
export const specOf = (si: Si): ConverterSpec => ({
  ...si,
  maximumInput: si.maximumInput ?? Number.POSITIVE_INFINITY,
})
export const sourceOf = (si: Si) => ({ voltage: si.sourceVoltage, resistance: si.sourceResistance })

/** First load current at which the demand reaches the bound, segment by segment of the efficiency curve. */
export function currentAtBound(spec: ConverterSpec, bound: InputBound): number {
  const curve = spec.efficiency
  const crossing = (intercept: number, slope: number) => (bound.power * intercept) / (spec.outputVoltage - bound.power * slope)
  const first = curve[0] as ConverterSpec["efficiency"][number]
  let low = first
  const early = crossing(first.efficiency, 0)
  if (early <= first.load) return early
  for (const high of curve.slice(1)) {
    const slope = (high.efficiency - low.efficiency) / (high.load - low.load)
    if ((spec.outputVoltage * high.load) / high.efficiency >= bound.power) return crossing(low.efficiency - slope * low.load, slope)
    low = high
  }
  return crossing(low.efficiency, 0)
}

/** Load current at which a step-down's input has sunk to the set voltage; null for other converters and stiff sources. */
export function dropOutCurrent(si: Si): number | null {
  if (si.topology !== "step-down" || !(si.sourceResistance > 0)) return null
  const current = (si.sourceVoltage - si.sourceResistance * si.quiescentCurrent - si.outputVoltage) / si.sourceResistance
  return currentAtBound(specOf(si), { current, power: si.outputVoltage * current, limitedBy: "input-voltage" })
}
