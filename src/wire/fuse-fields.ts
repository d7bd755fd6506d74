import type { Current, MeltingIntegral, Ratio, Resistance, Temperature, Time } from "../quantity/index.js"
import type { Fields, OutFields } from "../solver/index.js"
import { type ConductorSize, sizeFields } from "./conductor.js"
import type { PulseShape } from "./data.js"

/** Input of {@link fuseCoordination}. */
export interface FuseCoordinationInput extends ConductorSize {
  /** Rated current of the fuse. */
  fuse: Current
  /** Steady current of the circuit. */
  current: Current
  /** Current the wire may carry for good where it lies (see wireHeating). */
  wireRating: Current
  /** Part of its rating a fuse may carry for good. */
  loading?: Ratio
  /** What warm surroundings leave of the rating. */
  temperatureFactor?: Ratio
  /** Peak of the inrush. */
  inrushPeak?: Current | null
  /** How long the inrush lasts; its time constant where it decays exponentially. */
  inrushTime?: Time
  /** Shape of the inrush. */
  inrushShape?: PulseShape
  /** How many such pulses the fuse must outlive. */
  pulses?: number
  /** Melting integral from the fuse's sheet. */
  meltingIntegral?: MeltingIntegral | null
  /** Cold resistance of the fuse. */
  fuseResistance?: Resistance
  /** Resistance at rated current over the cold one. */
  hotFactor?: number
  /** Conductor temperature when the fault starts. */
  initialTemperature?: Temperature
  /** Conductor temperature a short fault may reach. */
  faultLimit?: Temperature
}

/** Result of {@link fuseCoordination}. */
export interface FuseCoordination {
  /** Least fuse rating that carries the steady current, A. */
  readonly leastRating: number
  /** Greatest fuse rating the wire bears at 135 %, A. */
  readonly greatestRating: number
  /** Smallest usual blade rating between the two, A; null where none fits. */
  readonly suggestedRating: number | null
  /** The fuse carries the steady current. */
  readonly carriesLoad: boolean
  /** The wire bears 135 % of the fuse's rating for good. */
  readonly protectsWire: boolean
  /** The wire bears 200 % of the rating as long as the fuse may take to open. */
  readonly survivesOverload: boolean
  /** The fuse outlives the inrush; null where inrush or melting integral is not given. */
  readonly passesInrush: boolean | null
  /** Everything known is in order. */
  readonly coordinated: boolean
  /** Current the fuse may carry for many minutes: 135 % of its rating, A. */
  readonly longCurrent: number
  /** Adiabatic factor k of the wire, in A·√s/mm². */
  readonly adiabaticFactor: number
  /** What the wire withstands in a short fault, k²·A², A²·s. */
  readonly wireWithstand: number
  /** What 200 % of the rating may let through, A²·s. */
  readonly overloadIntegral: number
  /** I²·t of one inrush pulse, A²·s. */
  readonly pulseIntegral: number | null
  /** Melting integral the fuse needs for that many pulses, A²·s. */
  readonly neededIntegral: number | null
  /** Current that melts the bare wire in still air in the end, A: no rating. */
  readonly meltingCurrent: number
  /** Voltage lost in the hot fuse at the steady current, V. */
  readonly drop: number
  /** Heat in the fuse at the steady current, W. */
  readonly heat: number
}

/** Input descriptions of a fuse and its wire. */
export const fuseInput: Fields<FuseCoordinationInput> = {
  fuse: { kind: "current", symbol: "I_n", label: "fuse rating", above: 0, max: 1000, typical: [2, 30] },
  current: { kind: "current", symbol: "I", label: "steady current", above: 0, max: 1000, typical: [0.5, 20] },
  wireRating: { kind: "current", symbol: "I_w", label: "current the wire may carry", above: 0, max: 1000, typical: [2, 30] },
  ...sizeFields,
  loading: {
    kind: "ratio",
    symbol: "a",
    label: "part of its rating the fuse may carry",
    above: 0,
    max: 1,
    typical: ["60 %", "80 %"],
    default: "75 %",
  },
  temperatureFactor: {
    kind: "ratio",
    symbol: "K_T",
    label: "temperature factor of the fuse",
    above: 0,
    max: 1.5,
    typical: ["80 %", "100 %"],
    default: 1,
  },
  inrushPeak: { kind: "current", symbol: "I_p", label: "inrush peak", above: 0, max: 1e5, typical: [5, 80], default: null },
  inrushTime: { kind: "time", symbol: "t_p", label: "inrush time", above: 0, max: 100, typical: ["2 ms", "300 ms"], default: "20 ms" },
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
    label: "pulses to outlive",
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
    above: 0,
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
  hotFactor: { kind: "number", symbol: "k_f", label: "hot over cold resistance", min: 1, max: 5, typical: [1.2, 1.6], default: 1.4 },
  initialTemperature: {
    kind: "temperature",
    symbol: "T_i",
    label: "conductor before the fault",
    min: -50,
    max: 200,
    typical: [30, 90],
    default: 70,
  },
  faultLimit: {
    kind: "temperature",
    symbol: "T_f",
    label: "conductor limit in a short fault",
    min: -50,
    max: 300,
    typical: [140, 250],
    default: 160,
  },
}

/** Result descriptions. */
export const fuseOutput: OutFields<FuseCoordination> = {
  leastRating: { kind: "current", symbol: "I_lo", label: "least rating for the load" },
  greatestRating: { kind: "current", symbol: "I_hi", label: "greatest rating for the wire" },
  suggestedRating: { kind: "current", symbol: "I_b", label: "usual blade rating between" },
  carriesLoad: { kind: "flag", label: "carries the load" },
  protectsWire: { kind: "flag", label: "protects the wire at 135 %" },
  survivesOverload: { kind: "flag", label: "wire outlives 200 %" },
  passesInrush: { kind: "flag", label: "outlives the inrush" },
  coordinated: { kind: "flag", label: "all in order" },
  longCurrent: { kind: "current", symbol: "I_135", label: "current it may carry for minutes" },
  adiabaticFactor: { kind: "number", symbol: "k", label: "adiabatic factor, A·√s/mm²" },
  wireWithstand: { kind: "meltingIntegral", symbol: "W", label: "what the wire withstands" },
  overloadIntegral: { kind: "meltingIntegral", symbol: "W_o", label: "what 200 % may let through" },
  pulseIntegral: { kind: "meltingIntegral", symbol: "W_p", label: "I²t of one inrush" },
  neededIntegral: { kind: "meltingIntegral", symbol: "M_n", label: "melting I²t needed" },
  meltingCurrent: { kind: "current", symbol: "I_m", label: "melts the bare wire" },
  drop: { kind: "voltage", symbol: "U", label: "voltage lost in the fuse" },
  heat: { kind: "power", symbol: "P", label: "heat in the fuse" },
}
