import type { Current, Temperature } from "../quantity/index.js"
import { type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import {
  areaOf,
  type ConductorDescription,
  resistance20,
  sizeCautions,
  sizeFields,
  sizeIssues,
  sizeRules,
  sizeSources,
  sizeSteps,
} from "./conductor.js"
import { metals } from "./data.js"
import { type Laid, laidFaults, laidFields, pathSteps, ratedSteps, startOf, steadySteps, together } from "./laid.js"
import { burnsCaution, fumesCaution, raisedLimit } from "./overload.js"
import { ADIABATIC, CONVECTION, HEAT_TRANSFER, PVC, SHORT_FAULT, SKIN } from "./sources.js"
import { adiabaticSteps, adiabaticTime, judge, SHORT_LIMIT, shortLimitField, TOUCH_LIMIT } from "./withstand.js"

/** Input of {@link wireHeating}. */
export interface WireHeatingInput extends ConductorDescription, Laid {
  /** Steady current in each wire. [I; 0 to 1000 A] */
  current: Current
  /** Fault current, for the time it takes to ruin the insulation. [I_f; 0.1 mA to 100000 A; optional] */
  faultCurrent?: Current | null
  /** Conductor temperature a short fault may reach. [T_f; 70 to 350 °C; default 160 °C] */
  faultTemperatureLimit?: Temperature
}

/** Result of {@link wireHeating}. */
export interface WireHeating {
  /** Conductor temperature [T_c; °C] */
  readonly conductorTemperature: number
  /** Temperature of the wire's or bundle's outer surface. [T_s; °C] */
  readonly surfaceTemperature: number
  /** Conductor over its surroundings: the air, or the skin under padding. [dT_c; K] */
  readonly conductorRise: number
  /** Outer surface over the same. [dT_s; K] */
  readonly surfaceRise: number
  /** Heat of one metre of wire [P_m; W] */
  readonly heatPerMetre: number
  /** Current at which the conductor reaches the insulation's rating here. [I_r; A] */
  readonly ampacity: number
  /** Part of that current in use. [u; as a fraction] */
  readonly utilisation: number
  /** Whether the wire bears the current for good here: its conductor stays within the insulation's rating. [yes or no] */
  readonly bears: boolean
  /** How fast the conductor warms at first, K per second, no heat lost. [g_T] */
  readonly initialHeatingRate: number
  /** Time the fault current needs from this steady state to the fault limit, no heat lost. [t_f; s] */
  readonly faultDuration: number | null
  /** Iterations of the heat balance. [number] */
  readonly iterations: number
  /** What is left of the heat balance. [number] */
  readonly residual: number
}

/** Reasons for which {@link wireHeating} refuses. */
export type WireHeatingRefusal = "thermal-runaway"

/** Hazards and limits of validity that go with an answer of {@link wireHeating}. */
export type WireHeatingCaution =
  | "aluminium-ends"
  | "bundle-model"
  | "burns"
  | "fumes"
  | "hot-conductor"
  | "limit-raised"
  | "not-adiabatic"
  | "one-sided"
  | "outside-range"
  | "over-rating"

type Si = SiOf<WireHeatingInput>

function solve(si: Si): WireHeating | NoSolution<WireHeatingRefusal> {
  const start = startOf(si)
  const alpha = metals[si.material].coefficient
  const base = si.current ** 2 * resistance20(si)
  const { most: ampacity, bears, steady } = judge(si, si.current)
  if (steady === null)
    return refuse(
      "thermal-runaway",
      "{current current} heats this wire past 300 °C: its insulation burns, with fumes that hurt. Here it bears {nearest.current current} for good ({given.insulationRating temperature °C} insulation).",
      si.current - ampacity,
      { current: si.current },
      // a billionth less, so that rounding cannot refuse it again
      { current: ampacity * (1 - 1e-9) },
      { "given.insulationRating": si.insulationRating },
    )
  const conductorTemperature = start + steady.conductor
  return {
    conductorTemperature,
    surfaceTemperature: start + steady.surface,
    conductorRise: steady.conductor,
    surfaceRise: steady.surface,
    heatPerMetre: base * (1 + alpha * (conductorTemperature - 20)),
    ampacity,
    utilisation: si.current / ampacity,
    bears,
    initialHeatingRate: (base * (1 + alpha * (start - 20))) / (metals[si.material].heatCapacity * areaOf(si)),
    faultDuration: si.faultCurrent === null ? null : adiabaticTime(si, si.faultCurrent, conductorTemperature, si.faultTemperatureLimit),
    iterations: steady.iterations,
    residual: steady.residual,
  }
}

function cautions(si: Si, out: WireHeating): Caution<WireHeatingCaution>[] {
  const found: Caution<WireHeatingCaution>[] = sizeCautions(si, out.conductorTemperature)
  if (!out.bears)
    found.push(
      caution(
        "over-rating",
        "warning",
        "The conductor reaches {conductorTemperature temperature °C} and its insulation is rated {given.insulationRating temperature °C}: it softens, ages and can short or burn. Take a thicker wire or less current.",
        PVC,
        { conductorTemperature: out.conductorTemperature, "given.insulationRating": si.insulationRating },
      ),
    )
  if (out.conductorTemperature > Math.max(si.insulationRating, SHORT_LIMIT)) found.push(fumesCaution())
  if (out.surfaceTemperature > TOUCH_LIMIT) found.push(burnsCaution("surfaceTemperature", out.surfaceTemperature))
  if (si.arrangement === "padding")
    found.push(
      caution(
        "one-sided",
        "note",
        "The wire is taken to start at the skin's temperature and the body to carry no heat away, which errs to the safe side; folds and more layers than stated err the other way.",
        HEAT_TRANSFER,
      ),
    )
  if (together(si) > 1)
    found.push(
      caution(
        "bundle-model",
        "note",
        "The bundle is taken as a round body of even heat and conductivity; the wire in its middle is calculated, and 20 % either way is usual.",
      ),
    )
  if (out.conductorTemperature > 200)
    found.push(caution("outside-range", "note", "Resistance is taken linear in temperature; its constants hold to about 200 °C."))
  if (out.faultDuration !== null && out.faultDuration > 5)
    found.push(
      caution(
        "not-adiabatic",
        "note",
        "The fault time of {faultDuration time} neglects heat lost to the surroundings; it is meant for up to 5 s and is on the safe side beyond.",
        SHORT_FAULT,
        { faultDuration: out.faultDuration },
      ),
    )
  return [...found, ...raisedLimit(si.faultCurrent === null ? 0 : si.faultTemperatureLimit)]
}

/**
 * How hot a wire gets: alone in air, in a bundle, or under padding; and how soon a fault ruins it.
 *
 * Formula: in steady state n·I²·r₂₀·(1 + α·(T_c − 20 °C)) leaves through the outer surface of diameter D: π·D·h·(T_s −
 * T_0) in free air, with Churchill and Chu's convection and radiation in h, or (T_s − T_0)·π·k_p/ln(8·z/(π·D)) under
 * padding (half a cylinder midway between planes, z its depth with k_p/h_p added). Inside, T_c = T_s +
 * q·(ln(D_w/d)/(2π·k_i) + n/(4π·k_b)); a bundle has D = 1.2·√n·D_w. Short faults: t = K²·A²·ln((β + T_f)/(β +
 * T_c))/I_f², K² = Q·(β + 20 °C)/ρ₂₀. I is the current of each wire, n the loaded wires together, T_a the air,
 * insulation wall 0.4 mm of 0.17 W/(m·K), bundle 0.15 W/(m·K), padding 10 mm of 0.04 W/(m·K) under 8 W/(m²·K),
 * emissivity 0.9, rating 80 °C, fault limit 160 °C. T_0 is the air, or under padding the skin where that is warmer.
 * Valid for still air and long straight wires. Several wires are a bundle or lie under padding: `wires` above 1 alone
 * in air is refused as input.
 *
 * **Inputs**
 * - `current`: current in each wire [I; 0 to 1000 A]
 * - `awg`: wire gauge (AWG) [g; whole −3 to 40; optional]
 * - `area`: cross-section [A_w; 0.0001 to 1000 mm²; optional]
 * - `material`: conductor metal [copper or aluminium; default copper]
 * - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 * - `arrangement`: where it lies [free-air, bundle or padding; default free-air]
 * - `wires`: loaded wires together [n_w; whole 1 to 100; default 1]
 * - `ambientTemperature`: ambient temperature [T_a; −40 to 100 °C; default 25 °C]
 * - `skinTemperature`: skin under the padding [T_k; 20 to 42 °C; default 35 °C]
 * - `insulationThickness`: insulation wall [t_i; 0 to 20 mm; default 0.4 mm]
 * - `insulationConductivity`: insulation conductivity [k_i; 0.01 to 10 W/(m·K); default 0.17 W/(m·K)]
 * - `bundleConductivity`: conductivity across the bundle [k_b; 0.01 to 10 W/(m·K); default 0.15 W/(m·K)]
 * - `emissivity`: emissivity of the surface [e_s; 0 to 1; default 0.9]
 * - `paddingThickness`: padding over the wire [t_p; 0.1 mm to 1 m; default 10 mm]
 * - `paddingConductivity`: padding conductivity [k_p; 0.01 to 10 W/(m·K); default 0.04 W/(m·K)]
 * - `paddingSurface`: padding's surface to the air [h_p; 1 to 1000 W/(m²·K); default 8 W/(m²·K)]
 * - `insulationRating`: insulation rating [T_r; above −40 to 300 °C; default 80 °C]
 * - `faultCurrent`: fault current [I_f; 0.1 mA to 100000 A; optional]
 * - `faultTemperatureLimit`: conductor temperature limit in a short fault [T_f; 70 to 350 °C; default 160 °C]
 * - exactly one of `awg` and `area`
 *
 * **Results**
 *
 * `conductorTemperature`: conductor temperature [T_c; °C]; `surfaceTemperature`: outer surface [T_s; °C];
 * `conductorRise`: temperature rise of the conductor [dT_c; K]; `surfaceRise`: temperature rise of the surface [dT_s;
 * K]; `heatPerMetre`: heat of one metre of wire [P_m; W]; `ampacity`: ampacity [I_r; A]; `utilisation`: utilisation of
 * the ampacity [u; as a fraction]; `bears`: bears the current for good [yes or no]; `initialHeatingRate`: initial
 * heating rate, K/s [g_T]; `faultDuration`: fault duration to the limit [t_f; s]; `iterations`: iterations [number];
 * `residual`: residual of the heat balance [number].
 *
 * **Symbols of the working**
 *
 * rho: resistivity of the metal at 20 °C [Ω m]; alpha: temperature coefficient at 20 °C [1/K]; k_s: longer by the lay
 * of the strands; r_n: maximum resistance of the nominal conductor (0: not an IEC class) [Ω/m]; d_g: diameter of the
 * gauge [m]; A: cross-section of the gauge [m²]; r_20: resistance per length at 20 °C [Ω/m]; n: wires that share the
 * outer surface; inAir: 1 in still air, 0 under padding; T_0: surroundings: the air [°C]; d: conductor diameter [m];
 * D_w: over the insulation [m]; D: outer diameter of one wire [m]; R_i: through one metre of insulation [K/W]; R_b: no
 * bundle around it [K/W]; z: depth of the axis, the surface film as more padding [m]; T: the conductor's temperature
 * [°C]; r: resistance per length, warm [Ω/m]; T_m: film temperature [°C]; k_a: conductivity of air [W/(m·K)]; nu:
 * kinematic viscosity of air [m²/s]; Ra: Rayleigh number; h: convection and radiation [W/(m²·K)]; dT_r: rise at the
 * rating [K]; P_r: heat of one metre at that current [W]; dT_o: surface over the surroundings then [K]; h_o: surface
 * coefficient then, by the same formulae [W/(m²·K)]; Q: heat capacity by volume, J/(K·m³); beta: reciprocal
 * temperature coefficient at 0 °C, °C.
 *
 * **Sources**
 * - ASTM International: ASTM B258, Standard specification for standard nominal diameters and cross-sectional areas of
 *   AWG sizes of solid round wires, 2018, clause 5 (0.0050 in at 36 AWG, 0.4600 in at 4/0, ratio 92 over 39 steps)
 *   (not verified against the document)
 * - IEC: IEC 60028, International standard of resistance for copper, 1925, clauses 1 and 2 (1/58 Ω·mm²/m, 0.00393/K at
 *   20 °C, 8.89 g/cm³)
 * - IEC: IEC 60889, Hard-drawn aluminium wire for overhead line conductors, 1987, clause 3 (28.264 nΩ·m, 0.00403/K at
 *   20 °C, 2.703 g/cm³) (not verified against the document)
 * - IEC: IEC 60228, Conductors of insulated cables, 2004, tables 2 and 3 (class 2 stranded, class 5 flexible; maximum
 *   resistance at 20 °C)
 * - S. W. Churchill, H. H. S. Chu: Correlating equations for laminar and turbulent free convection from a horizontal
 *   cylinder, Int. J. Heat Mass Transfer 18, 1975, page 1049 (not verified against the document)
 * - F. P. Incropera et al.: Fundamentals of Heat and Mass Transfer, 6th, 2007, tables 4.1 (cylinder midway between
 *   planes, half of it) and A.4 (air) (not verified against the document)
 * - IEC: IEC 60364-5-54, Earthing arrangements and protective conductors, 2011, Annex A, table A.54.1 (heat capacity,
 *   β; K = 226 copper, 148 aluminium)
 * - IEC: IEC 60364-4-43, Protection against overcurrent, 2008, clause 434.5.2 and table 43A (no heat lost, up to 5 s;
 *   160 °C for PVC) (not verified against the document)
 * - ISO: ISO 7730, Ergonomics of the thermal environment: predicted mean vote, 2005, equation 1 (skin temperature of a
 *   person at rest, 35.7 °C less 0.028 K per W/m² of heat made) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `thermal-runaway` past 300 °C, naming the current the insulation allows here
 * @example
 * ```ts
 * import { wireHeating } from 'alula/wire'
 * const free = wireHeating({ current: '6 A', awg: 20 })
 * free.conductorTemperature // => 37.07
 * const hidden = wireHeating({ current: '6 A', awg: 20, arrangement: 'padding' })
 * hidden.conductorTemperature > free.conductorTemperature // => true
 * ```
 */
export const wireHeating: Solver<WireHeatingInput, WireHeating, WireHeatingRefusal, WireHeatingCaution> = /* @__PURE__ */ solver<
  WireHeatingInput,
  WireHeating,
  WireHeatingRefusal,
  WireHeatingCaution
>("wireHeating", "How hot a wire gets", solve, () => ({
  input: {
    current: { kind: "current", symbol: "I", label: "current in each wire", min: 0, max: 1000, typical: [0.5, 8] },
    ...sizeFields,
    ...laidFields,
    faultCurrent: { kind: "current", symbol: "I_f", label: "fault current", min: "0.1 mA", max: 1e5, typical: [20, 300], default: null },
    faultTemperatureLimit: shortLimitField,
  },
  output: {
    conductorTemperature: { kind: "temperature", symbol: "T_c", label: "conductor temperature" },
    surfaceTemperature: { kind: "temperature", symbol: "T_s", label: "outer surface" },
    conductorRise: { kind: "temperatureDifference", symbol: "dT_c", label: "temperature rise of the conductor" },
    surfaceRise: { kind: "temperatureDifference", symbol: "dT_s", label: "temperature rise of the surface" },
    heatPerMetre: { kind: "power", symbol: "P_m", label: "heat of one metre of wire" },
    ampacity: { kind: "current", symbol: "I_r", label: "ampacity" },
    utilisation: { kind: "ratio", symbol: "u", label: "utilisation of the ampacity", unit: "%" },
    bears: { kind: "flag", label: "bears the current for good" },
    initialHeatingRate: { kind: "number", symbol: "g_T", label: "initial heating rate, K/s" },
    faultDuration: { kind: "time", symbol: "t_f", label: "fault duration to the limit" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "number", label: "residual of the heat balance" },
  },
  example: { current: "6 A", awg: 20, ambientTemperature: 30, insulationRating: 80, faultCurrent: "60 A" },
  formulae: [
    ...sizeSteps,
    ...pathSteps,
    ...steadySteps,
    ...ratedSteps,
    { symbol: "u", meaning: "part of it in use", is: "I / I_r" },
    ...adiabaticSteps,
    {
      symbol: "g_T",
      meaning: "first rise, no heat lost",
      is: "I^2 * r_20 * (1 + alpha * (T_0 - 293.15 K)) / (Q * J/(K m^3) * A) * s / K",
    },
    {
      symbol: "t_f",
      meaning: "time to the fault limit, no heat lost",
      is: "max(0, log((beta + T_f / K - 273.15) / (beta + T_c / K - 273.15))) * Q * J/(K m^3) * (beta + 20) * K / rho * A^2 / I_f^2",
      when: "has_faultCurrent",
    },
  ],
  sources: [...sizeSources, CONVECTION, HEAT_TRANSFER, ADIABATIC, SHORT_FAULT, SKIN],
  either: sizeRules,
  check: (si) => [...sizeIssues(si), ...laidFaults(si)],
  cautions,
}))
