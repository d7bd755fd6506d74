import type { LimitedBy } from "../limit.js"

/** Result of {@link converterLimit}. */
export interface ConverterLimit {
  /** Output voltage [V; V] */
  readonly outputVoltage: number
  /** Voltage at the converter's input. [V_in; V] */
  readonly inputVoltage: number
  /** Current from the source. [I_in; A] */
  readonly inputCurrent: number
  /** Efficiency at this load current, quiescent current not counted. [eta; as a fraction] */
  readonly efficiency: number
  /** Power to the load [P_out; W] */
  readonly outputPower: number
  /** Power into the converter [P_in; W] */
  readonly inputPower: number
  /** Heat in the converter [P_h; W] */
  readonly heat: number
  /** Heat in source, wires and contacts before it. [P_l; W] */
  readonly lineHeat: number
  /** What binds: `none`, `input-current`, `output-current`, `source-power` or `input-voltage`. [text] */
  readonly limitedBy: LimitedBy
  /** Maximum power the input side can feed to the output at this efficiency; null where nothing bounds it. [P_a; W] */
  readonly maxOutputPower: number | null
  /** Maximum load current at which the set voltage still holds; null where nothing bounds it. [I_h; A] */
  readonly fullVoltageCurrent: number | null
}

/** Reasons for which {@link converterLimit} refuses. */
export type ConverterLimitRefusal = "cannot-boost" | "cannot-buck" | "input-too-high" | "insufficient-current" | "insufficient-voltage"

/** Hazards and limits of validity that go with an answer of {@link converterLimit}. */
export type ConverterLimitCaution =
  | "burns"
  | "hiccup"
  | "output-collapsed"
  | "outside-range"
  | "straight-through"
  | "touch-voltage"
  | "type-assumed"
