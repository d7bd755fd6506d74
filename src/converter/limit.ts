/** A converter as its sheet states it; plain SI numbers. */
export interface ConverterSpec {
  /** Output voltage it holds while no limit binds, V. */
  readonly outputVoltage: number
  /** Maximum current it takes from its source, A; null where none is stated. */
  readonly inputCurrentLimit: number | null
  /** Maximum current it gives, A; null where none is stated. */
  readonly outputCurrentLimit: number | null
  /** Efficiency over output current (`load`, A), sorted by load; straight lines between, ends held. */
  readonly efficiency: readonly { readonly outputCurrent: number; readonly efficiency: number }[]
  /** Input current with nothing connected to the output, A. */
  readonly quiescentCurrent: number
  /** Minimum and maximum input voltage it works at, V. */
  readonly minInputVoltage: number
  readonly maxInputVoltage: number
}

/** A source behind its own resistance and that of its wires (Thévenin). */
export interface SourceLine {
  /** Open-circuit voltage, V. */
  readonly sourceVoltage: number
  /** Resistance of source, wires and contacts together, Ω. */
  readonly sourceResistance: number
}

/** What holds a converter's output down. */
export type LimitedBy = "none" | "input-current" | "output-current" | "source-power" | "input-voltage"

/** Operating point of a converter between a source and a load current. */
export interface ConverterPoint {
  /** Voltage at the output, V. */
  readonly outputVoltage: number
  /** Voltage at the converter's input terminals, V. */
  readonly inputVoltage: number
  /** Current from the source, A. */
  readonly inputCurrent: number
  /** Output power over input power less the quiescent part. */
  readonly efficiency: number
  readonly limitedBy: LimitedBy
}

/** The most a source and a converter's input can be made to give. */
export interface InputBound {
  /** Input current beyond the quiescent part at that bound, A. */
  readonly current: number
  /** Power there, before the efficiency, W. */
  readonly power: number
  readonly limitedBy: Exclude<LimitedBy, "none" | "output-current">
}

/** Efficiency at an output current: straight lines between the stated points, ends held. */
export function efficiencyAt(curve: ConverterSpec["efficiency"], load: number): number {
  let low = curve[0] as { readonly outputCurrent: number; readonly efficiency: number }
  if (load <= low.outputCurrent) return low.efficiency
  for (let i = 1; i < curve.length; i++) {
    const high = curve[i] as { readonly outputCurrent: number; readonly efficiency: number }
    if (load <= high.outputCurrent) {
      const part = (load - low.outputCurrent) / (high.outputCurrent - low.outputCurrent)
      return low.efficiency + part * (high.efficiency - low.efficiency)
    }
    low = high
  }
  return low.efficiency
}

/**
 * The bound on input power: current limit, minimum input voltage or the source's own maximum power,
 * whichever comes first; null where the converter cannot run at all.
 */
export function inputBound(spec: ConverterSpec, source: SourceLine): InputBound | null {
  const { sourceVoltage, sourceResistance } = source
  const idle = sourceVoltage - sourceResistance * spec.quiescentCurrent
  if (!(idle >= spec.minInputVoltage) || !(sourceVoltage <= spec.maxInputVoltage) || !(idle > 0)) return null
  let limitedBy: InputBound["limitedBy"] = "source-power"
  let current = sourceResistance > 0 ? idle / (2 * sourceResistance) : Number.POSITIVE_INFINITY
  const atLeastInput = sourceResistance > 0 ? (idle - spec.minInputVoltage) / sourceResistance : Number.POSITIVE_INFINITY
  if (atLeastInput < current) {
    current = atLeastInput
    limitedBy = "input-voltage"
  }
  if (spec.inputCurrentLimit !== null && spec.inputCurrentLimit - spec.quiescentCurrent < current) {
    current = spec.inputCurrentLimit - spec.quiescentCurrent
    limitedBy = "input-current"
  }
  return current > 0
    ? { current, power: current === Number.POSITIVE_INFINITY ? current : (idle - sourceResistance * current) * current, limitedBy }
    : null
}

/**
 * Operating point for a load current that the load sets by force (a motor's torque, a current sink).
 *
 * While no limit binds the output holds its voltage and V_out·I = η·V_in·(I_in − I_q) with
 * V_in = E − R·I_in. Where the input side can give no more, the output falls until the power
 * balances at that bound. A load current above the output's limit cannot be carried at all: the
 * output collapses to 0 V.
 *
 * @param loadCurrent - A, not negative: a converter takes no power back
 * @returns null where no output is possible: source below the minimum or above the maximum input, or
 * the quiescent current alone beyond what the input can take
 */
export function converterOutput(spec: ConverterSpec, source: SourceLine, loadCurrent: number): ConverterPoint | null {
  const bound = inputBound(spec, source)
  if (bound === null) return null
  const efficiency = efficiencyAt(spec.efficiency, loadCurrent)
  const idle = source.sourceVoltage - source.sourceResistance * spec.quiescentCurrent
  const at = (outputVoltage: number, current: number, limitedBy: LimitedBy): ConverterPoint => ({
    outputVoltage,
    inputVoltage: idle - source.sourceResistance * current,
    inputCurrent: spec.quiescentCurrent + current,
    efficiency,
    limitedBy,
  })
  if (spec.outputCurrentLimit !== null && loadCurrent > spec.outputCurrentLimit) return at(0, 0, "output-current")
  const demand = (spec.outputVoltage * loadCurrent) / efficiency
  if (demand > bound.power) return at((efficiency * bound.power) / loadCurrent, bound.current, bound.limitedBy)
  // the smaller root, in the form that also holds for a stiff source
  const root = Math.sqrt(Math.max(0, idle ** 2 - 4 * source.sourceResistance * demand))
  return at(spec.outputVoltage, (2 * demand) / (idle + root), "none")
}
