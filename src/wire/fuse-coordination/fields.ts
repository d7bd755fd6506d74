import type { Current, Length, MeltingIntegral, Ratio, Resistance, Temperature, Time } from "../../quantity/index.js"
import type { Fields, OutFields } from "../../solver/index.js"
import { type ConductorDescription, sizeFields } from "../conductor.js"
import type { PulseShape } from "../data.js"
import { type Laid, laidFields } from "../laid.js"
import { ampacityField, shortLimitField } from "../withstand.js"

/** Input of {@link fuseCoordination}. */
export interface FuseCoordinationInput extends ConductorDescription, Laid {
  /** Rated current of the fuse. [I_n; 0.1 mA to 1000 A] */
  fuseRating: Current
  /** Steady current of the circuit. [I; 0.1 mA to 1000 A] */
  current: Current
  /**
   * Current the wire's own datasheet allows, where that is less than the heat balance of how it is laid. [I_w; 0.1 mA
   * to 1000 A; optional]
   */
  datasheetAmpacity?: Current | null
  /** Wire between the pack's positive pole and the fuse. [L_f; 0 to 100 m; optional] */
  unfusedLength?: Length | null
  /** Part of its rating a fuse may carry for good. [a; 1 to 100 %; default 75 %] */
  utilisationLimit?: Ratio
  /** What warm surroundings leave of the rating. [K_T; 1 to 150 %; default 100 %] */
  temperatureFactor?: Ratio
  /** Inrush peak [I_p; 0.1 mA to 100000 A; optional] */
  peakInrushCurrent?: Current | null
  /** How long the inrush lasts; its time constant where it decays exponentially. [t_in; 0.001 ms to 100 s; default 20 ms] */
  inrushDuration?: Time
  /** Inrush shape [square, half-sine, triangle, parabola or exponential; default exponential] */
  inrushShape?: PulseShape
  /** How many such pulses the fuse must outlive. [N; whole 1 to 100000; default 10000] */
  pulses?: number
  /** Melting integral from the fuse's sheet. [M; 1e−9 to 1e9 A²·s; optional] */
  meltingIntegral?: MeltingIntegral | null
  /** Cold resistance of the fuse [R_f; 0 to 100 Ω; default 5 mΩ] */
  fuseResistance?: Resistance
  /** Resistance at rated current over the cold one. [k_f; 1 to 10; default 1.4] */
  hotFactor?: number
  /** Conductor temperature when the fault starts; the insulation's rating when left out. [T_i; −50 to 200 °C; optional] */
  initialConductorTemperature?: Temperature | null
  /** Conductor temperature a short fault may reach. [T_f; 70 to 350 °C; default 160 °C] */
  faultTemperatureLimit?: Temperature
}

/** Result of {@link fuseCoordination}. */
export interface FuseCoordination {
  /** Smallest fuse rating that carries the steady current. [I_lo; A] */
  readonly minFuseRating: number
  /** Largest fuse rating the wire bears at 135 %. [I_hi; A] */
  readonly maxFuseRating: number
  /** Smallest usual blade rating that passes every check here; null where none does. [I_b; A] */
  readonly suggestedFuseRating: number | null
  /** Current at which the conductor reaches its insulation's rating where it lies. [I_r; A] */
  readonly ampacity: number
  /** Current the wire bears for good: that, or its own datasheet's where that is less. [I_c; A] */
  readonly continuousCurrent: number
  /** The fuse carries the steady current. [yes or no] */
  readonly carriesLoad: boolean
  /** The wire bears 135 % of the fuse's rating for good. [yes or no] */
  readonly protectsWire: boolean
  /** The wire bears 200 % of the rating as long as the fuse may take to open, heat loss counted. [yes or no] */
  readonly survivesOverload: boolean
  /** The fuse outlives the inrush; null where inrush or melting integral is not given. [yes or no] */
  readonly passesInrush: boolean | null
  /** Every check that could be made is passed. [yes or no] */
  readonly coordinated: boolean
  /** Current the fuse may carry for many minutes: 135 % of its rating. [I_135; A] */
  readonly sustainedFuseCurrent: number
  /** Adiabatic factor k of the wire, in A·√s/mm². [k] */
  readonly adiabaticFactor: number
  /** What the wire withstands in a short fault, no heat lost: k²·A². [W; A² s] */
  readonly wireWithstand: number
  /** What the fuse may let through at 200 % of its rating. [W_o; A² s] */
  readonly letThroughIntegral: number
  /** I²·t of one inrush pulse. [W_p; A² s] */
  readonly inrushIntegral: number | null
  /** Melting integral the fuse needs for that many pulses. [M_n; A² s] */
  readonly requiredMeltingIntegral: number | null
  /** Current that melts the bare wire in still air in the end: no rating. [I_m; A] */
  readonly fusingCurrent: number
  /** Voltage lost in the hot fuse at the steady current. [U; V] */
  readonly drop: number
  /** Heat in the fuse at the steady current. [P; W] */
  readonly heat: number
}

/** Hazards and limits of validity that go with an answer of {@link fuseCoordination}. */
export type FuseCoordinationCaution =
  | "burns"
  | "fuse-ahead"
  | "fuse-too-small"
  | "limit-raised"
  | "nuisance"
  | "overload-burns"
  | "slow-fuse"
  | "wire-unprotected"

/** Input descriptions of a fuse and its wire. */
export const fuseInput: Fields<FuseCoordinationInput> = {
  fuseRating: { kind: "current", symbol: "I_n", label: "fuse rating", min: "0.1 mA", max: 1000, typical: [2, 30] },
  current: { kind: "current", symbol: "I", label: "steady current", min: "0.1 mA", max: 1000, typical: [0.5, 20] },
  datasheetAmpacity: ampacityField,
  ...sizeFields,
  ...laidFields,
  unfusedLength: {
    kind: "length",
    symbol: "L_f",
    label: "unfused wire from the pack's pole",
    min: 0,
    max: 100,
    typical: [0.05, 0.3],
    default: null,
  },
  utilisationLimit: {
    kind: "ratio",
    symbol: "a",
    label: "utilisation limit of the fuse",
    min: "1 %",
    max: 1,
    typical: ["60 %", "80 %"],
    default: "75 %",
  },
  temperatureFactor: {
    kind: "ratio",
    symbol: "K_T",
    label: "temperature factor of the fuse",
    min: "1 %",
    max: 1.5,
    typical: ["80 %", "100 %"],
    default: 1,
  },
  peakInrushCurrent: { kind: "current", symbol: "I_p", label: "inrush peak", min: "0.1 mA", max: 1e5, typical: [5, 80], default: null },
  inrushDuration: {
    kind: "time",
    symbol: "t_in",
    label: "inrush time",
    min: 1e-6,
    max: 100,
    typical: ["2 ms", "300 ms"],
    default: "20 ms",
  },
  inrushShape: {
    kind: "choice",
    label: "inrush shape",
    options: {
      square: "square",
      "half-sine": "half sine",
      triangle: "straight ramp or triangle",
      parabola: "parabolic decay",
      exponential: "exponential decay",
    },
    default: "exponential",
  },
  pulses: {
    kind: "number",
    symbol: "N",
    label: "inrush pulses to survive",
    whole: true,
    min: 1,
    max: 100000,
    typical: [100, 100000],
    default: 10000,
  },
  meltingIntegral: {
    kind: "meltingIntegral",
    symbol: "M",
    label: "melting I²t of the fuse",
    min: 1e-9,
    max: 1e9,
    typical: [5, 500],
    default: null,
  },
  fuseResistance: {
    kind: "resistance",
    symbol: "R_f",
    label: "cold resistance of the fuse",
    min: 0,
    max: 100,
    typical: ["2 mohm", "50 mohm"],
    default: "5 mohm",
  },
  hotFactor: { kind: "number", symbol: "k_f", label: "hot over cold resistance", min: 1, max: 10, typical: [1.2, 1.6], default: 1.4 },
  initialConductorTemperature: {
    kind: "temperature",
    symbol: "T_i",
    label: "conductor temperature before the fault",
    min: -50,
    max: 200,
    typical: [30, 90],
    default: null,
  },
  faultTemperatureLimit: shortLimitField,
}

/** Result descriptions. */
export const fuseOutput: OutFields<FuseCoordination> = {
  minFuseRating: { kind: "current", symbol: "I_lo", label: "minimum rating for the load" },
  maxFuseRating: { kind: "current", symbol: "I_hi", label: "maximum rating for the wire" },
  suggestedFuseRating: { kind: "current", symbol: "I_b", label: "smallest standard blade rating that passes" },
  ampacity: { kind: "current", symbol: "I_r", label: "ampacity" },
  continuousCurrent: { kind: "current", symbol: "I_c", label: "continuous current of the wire" },
  carriesLoad: { kind: "flag", label: "carries the load" },
  protectsWire: { kind: "flag", label: "protects the wire at 135 %" },
  survivesOverload: { kind: "flag", label: "wire survives 200 % until the fuse opens" },
  passesInrush: { kind: "flag", label: "survives the inrush" },
  coordinated: { kind: "flag", label: "passes these checks" },
  sustainedFuseCurrent: { kind: "current", symbol: "I_135", label: "current the fuse may carry for minutes" },
  adiabaticFactor: { kind: "number", symbol: "k", label: "adiabatic factor, A·√s/mm²" },
  wireWithstand: { kind: "meltingIntegral", symbol: "W", label: "wire withstand, no heat lost" },
  letThroughIntegral: { kind: "meltingIntegral", symbol: "W_o", label: "fuse let-through at 200 %" },
  inrushIntegral: { kind: "meltingIntegral", symbol: "W_p", label: "I²t of one inrush" },
  requiredMeltingIntegral: { kind: "meltingIntegral", symbol: "M_n", label: "melting I²t needed" },
  fusingCurrent: { kind: "current", symbol: "I_m", label: "fusing current of the bare wire" },
  drop: { kind: "voltage", symbol: "U", label: "voltage drop in the fuse" },
  heat: { kind: "power", symbol: "P", label: "heat in the fuse" },
}
