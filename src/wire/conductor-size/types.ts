// What goes in and what comes out.
import type { Current, Length, Ratio, Temperature, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Metal, Stranding } from "../data.js"
import type { Laid, LaidWire } from "../laid.js"

/** Input of {@link conductorSize}. */
export interface ConductorSizeInput extends Laid {
  /** Steady current [I; 1 mA to 1000 A] */
  current: Current
  /** Length one way [L; 0 to 1000 m] */
  length: Length
  /** Supply voltage [U_s; 10 mV to 1000 V] */
  sourceVoltage: Voltage
  /** Maximum drop allowed, against that voltage. [u_m; 0.01 to 100 %; default 3 %] */
  dropLimit?: Ratio
  /** Conductors in the current path: 2 counts out and back. [n_c; whole 1 to 2; default 2] */
  conductors?: number
  /** Sizes to choose from. [awg or metric; default awg] */
  sizeSystem?: "awg" | "metric"
  /** Conductor metal [copper or aluminium; default copper] */
  material?: Metal
  /**
   * How the conductor is made up; the IEC classes go with the metric sizes. [solid, stranded, class2, class2-tinned,
   * class5 or class5-tinned; default solid]
   */
  stranding?: Stranding
  /** Fuse ahead of the wire. [I_n; 0.1 mA to 1000 A; optional] */
  fuseRating?: Current | null
  /** Conductor temperature a short fault may reach. [T_f; 70 to 350 °C; default 160 °C] */
  faultTemperatureLimit?: Temperature
}

/** One size that was looked at. */
export interface SizeCandidate {
  /** Gauge, or null in the metric series. [number] */
  readonly awg: number | null
  /** Cross-section [m²] */
  readonly area: number
  /** Drop against the supply voltage at its own temperature; null where it burns. [as a fraction] */
  readonly dropShare: number | null
  /** Current at which it reaches its insulation's rating. [A] */
  readonly ampacity: number
  /** Rules it fails, of `drop`, `temperature` and `fuse`, joined by commas; empty where it meets all. [text] */
  readonly fails: string
}

/** Result of {@link conductorSize}. */
export interface ConductorSize {
  /** Gauge chosen; null in the metric series. [g] */
  readonly awg: number | null
  /** Cross-section chosen. [A; m²] */
  readonly area: number
  /** Rule the next smaller size fails, of `drop`, `temperature` and `fuse`; `none` where the smallest size does. [text] */
  readonly decidedBy: string
  /** Conductor temperature [T_c; °C] */
  readonly conductorTemperature: number
  /** Temperature of the outer surface. [T_s; °C] */
  readonly surfaceTemperature: number
  /** Temperature rise of the conductor [dT_c; K] */
  readonly conductorRise: number
  /** Temperature rise of the surface [dT_s; K] */
  readonly surfaceRise: number
  /** Resistance of the path, warm. [R_w; Ω] */
  readonly resistance: number
  /** Voltage drop [U; V] */
  readonly drop: number
  /** Voltage drop over source voltage [u; as a fraction] */
  readonly dropShare: number
  /** Current at which it reaches its insulation's rating. [I_r; A] */
  readonly ampacity: number
  /** Current the fuse may let flow for many minutes; null without a fuse. [I_135; A] */
  readonly sustainedFuseCurrent: number | null
  /** Heat of the whole run. [P; W] */
  readonly heat: number
  /** Every size looked at, smallest first, up to the one chosen. [list] */
  readonly candidates: readonly SizeCandidate[]
}

/** Reasons for which {@link conductorSize} refuses. */
export type ConductorSizeRefusal = "no-candidate"

/** Hazards and limits of validity that go with an answer of {@link conductorSize}. */
export type ConductorSizeCaution =
  | "aluminium-ends"
  | "burns"
  | "hot-conductor"
  | "limit-raised"
  | "stranded"
  | "thin-wire"
  | "touch-voltage"
  | "unfused-wire"

export type Si = SiOf<ConductorSizeInput>

export interface Looked extends SizeCandidate {
  readonly wire: LaidWire
  /** Surface and conductor over the surroundings, K; null where it burns. */
  readonly rises: { readonly surface: number; readonly conductor: number } | null
  readonly resistance: number
}
