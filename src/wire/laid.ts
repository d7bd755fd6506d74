import type { HeatTransferCoefficient, Length, Ratio, Temperature, ThermalConductivity } from "../quantity/index.js"
import { type Fields, type Issue, inconsistent, type SiOf, type Step } from "../solver/index.js"
import { areaOf, type ConductorDescription, warmStep } from "./conductor.js"
import { airPrandtl, type HeatPath, stefanBoltzmann } from "./heat.js"
import { CONVECTION, HEAT_TRANSFER, SKIN, VISCOSITY } from "./sources.js"

/** Where the wire lies. */
export type Arrangement = "free-air" | "bundle" | "padding"

/** How a wire is laid, and what its insulation bears. */
export interface Laid {
  /**
   * Where it lies: alone in still air, in a bundle in still air, or under padding against the body. [free-air, bundle
   * or padding; default free-air]
   */
  arrangement?: Arrangement
  /** Loaded wires lying together (bundle and padding). [n_w; whole 1 to 100; default 1] */
  wires?: number
  /** Temperature of the air around. [T_a; −40 to 100 °C; default 25 °C] */
  ambientTemperature?: Temperature
  /** Skin under padding: where the wire lies before any current, however cold the air. [T_k; 20 to 42 °C; default 35 °C] */
  skinTemperature?: Temperature
  /** Insulation wall [t_i; 0 to 20 mm; default 0.4 mm] */
  insulationThickness?: Length
  /** Thermal conductivity of the insulation. [k_i; 0.01 to 10 W/(m·K); default 0.17 W/(m·K)] */
  insulationConductivity?: ThermalConductivity
  /** Thermal conductivity across a bundle of wires. [k_b; 0.01 to 10 W/(m·K); default 0.15 W/(m·K)] */
  bundleConductivity?: ThermalConductivity
  /** Emissivity of the outer surface. [e_s; 0 to 1; default 0.9] */
  emissivity?: Ratio
  /** Padding over the wire [t_p; 0.1 mm to 1 m; default 10 mm] */
  paddingThickness?: Length
  /** Thermal conductivity of the padding. [k_p; 0.01 to 10 W/(m·K); default 0.04 W/(m·K)] */
  paddingConductivity?: ThermalConductivity
  /** Heat transfer from the padding's outer side to the air. [h_p; 1 to 1000 W/(m²·K); default 8 W/(m²·K)] */
  paddingSurface?: HeatTransferCoefficient
  /** Temperature the insulation is rated for. [T_r; above −40 to 300 °C; default 80 °C] */
  insulationRating?: Temperature
}

/** A wire and how it is laid, in SI. */
export type LaidWire = SiOf<ConductorDescription & Laid>

/** Bundle diameter over wire diameter and the root of their number: round wires fill about 70 % of the circle. */
const bundleSpread = 1.2

/** Wires that share the outer surface. */
export const together = (si: Pick<LaidWire, "arrangement" | "wires">): number => (si.arrangement === "free-air" ? 1 : si.wires)

/** Temperature of a laid wire without current, °C: under padding it lies against the skin, whatever the air. */
export const startOf = (si: Pick<LaidWire, "arrangement" | "ambientTemperature" | "skinTemperature">): number =>
  si.arrangement === "padding" ? Math.max(si.ambientTemperature, si.skinTemperature) : si.ambientTemperature

/** Faults of how a wire is laid: several wires are never alone in air, and a rating below the surroundings means nothing. */
export function laidFaults(si: SiOf<Laid>): Issue[] {
  const { arrangement, wires, insulationRating, ambientTemperature, skinTemperature } = si
  const found: Issue[] = []
  if (arrangement === "free-air" && wires > 1)
    found.push(inconsistent(["wires"], "{wires} wires, each alone in still air", "1, or the arrangement 'bundle' or 'padding'", { wires }))
  if (!(insulationRating > ambientTemperature))
    found.push(
      inconsistent(
        ["insulationRating"],
        "{insulationRating temperature °C}",
        "more than the air around ({ambientTemperature temperature °C})",
        { insulationRating, ambientTemperature },
      ),
    )
  else if (!(insulationRating > startOf(si)))
    found.push(
      inconsistent(
        ["insulationRating"],
        "{insulationRating temperature °C}",
        "more than the skin under the padding ({skinTemperature temperature °C})",
        {
          insulationRating,
          skinTemperature,
        },
      ),
    )
  return found
}

/** Thermal path of one wire of the arrangement. */
export function heatPath(si: LaidWire): HeatPath {
  const wires = together(si)
  const bare = Math.sqrt((4 * areaOf(si)) / Math.PI)
  const wire = bare + 2 * si.insulationThickness
  const outerDiameter = wires === 1 ? wire : bundleSpread * Math.sqrt(wires) * wire
  const insulation = Math.log(wire / bare) / (2 * Math.PI * si.insulationConductivity)
  const bundle = wires === 1 ? 0 : wires / (4 * Math.PI * si.bundleConductivity)
  const depth = outerDiameter / 2 + si.paddingThickness + si.paddingConductivity / si.paddingSurface
  const outer = si.arrangement === "padding" ? Math.log((8 * depth) / (Math.PI * outerDiameter)) / (Math.PI * si.paddingConductivity) : null
  return { outerDiameter, wires, inner: insulation + bundle, outer, ambient: startOf(si), emissivity: si.emissivity }
}

/** Field descriptions of {@link Laid}. */
export const laidFields: Fields<Laid> = {
  arrangement: {
    kind: "choice",
    label: "where it lies",
    options: { "free-air": "alone in still air", bundle: "in a bundle in still air", padding: "under padding against the body" },
    default: "free-air",
  },
  wires: { kind: "number", symbol: "n_w", label: "loaded wires together", whole: true, min: 1, max: 100, typical: [1, 8], default: 1 },
  ambientTemperature: {
    kind: "temperature",
    symbol: "T_a",
    label: "ambient temperature",
    min: -40,
    max: 100,
    typical: [0, 40],
    default: 25,
  },
  skinTemperature: {
    kind: "temperature",
    symbol: "T_k",
    label: "skin under the padding",
    min: 20,
    max: 42,
    typical: [30, 37],
    default: 35,
  },
  insulationThickness: {
    kind: "length",
    symbol: "t_i",
    label: "insulation wall",
    min: 0,
    max: "20 mm",
    typical: ["0.2 mm", "1 mm"],
    default: "0.4 mm",
  },
  insulationConductivity: {
    kind: "thermalConductivity",
    symbol: "k_i",
    label: "insulation conductivity",
    min: 0.01,
    max: 10,
    typical: [0.15, 0.3],
    default: 0.17,
  },
  bundleConductivity: {
    kind: "thermalConductivity",
    symbol: "k_b",
    label: "conductivity across the bundle",
    min: 0.01,
    max: 10,
    typical: [0.1, 0.3],
    default: 0.15,
  },
  emissivity: { kind: "ratio", symbol: "e_s", label: "emissivity of the surface", min: 0, max: 1, typical: [0.6, 0.95], default: 0.9 },
  paddingThickness: {
    kind: "length",
    symbol: "t_p",
    label: "padding over the wire",
    min: "0.1 mm",
    max: 1,
    typical: ["2 mm", "30 mm"],
    default: "10 mm",
  },
  paddingConductivity: {
    kind: "thermalConductivity",
    symbol: "k_p",
    label: "padding conductivity",
    min: 0.01,
    max: 10,
    typical: [0.03, 0.08],
    default: 0.04,
  },
  paddingSurface: {
    kind: "heatTransferCoefficient",
    symbol: "h_p",
    label: "padding's surface to the air",
    min: 1,
    max: 1000,
    typical: [5, 15],
    default: 8,
  },
  insulationRating: {
    kind: "temperature",
    symbol: "T_r",
    label: "insulation rating",
    above: -40,
    max: 300,
    typical: [70, 150],
    default: 80,
  },
}

/** Steps from the size to the outer surface and to what the heat passes inside. */
export const pathSteps: readonly Step<SiOf<Laid>, unknown>[] = [
  { symbol: "n", kind: "number", meaning: "wires that share the outer surface", given: together },
  { symbol: "inAir", kind: "number", meaning: "1 in still air, 0 under padding", given: (si) => (si.arrangement === "padding" ? 0 : 1) },
  { symbol: "T_0", kind: "temperature", meaning: "surroundings: the air", is: "T_a", when: "inAir == 1" },
  {
    symbol: "T_0",
    kind: "temperature",
    meaning: "surroundings: the skin, or warmer air",
    is: "max(T_a, T_k)",
    when: "inAir == 0",
    source: SKIN,
  },
  { symbol: "d", kind: "length", meaning: "conductor diameter", is: "sqrt(4 * A / pi)" },
  { symbol: "D_w", kind: "length", meaning: "over the insulation", is: "d + 2 * t_i" },
  { symbol: "D", kind: "length", meaning: "outer diameter of one wire", is: "D_w", when: "n == 1" },
  { symbol: "D", kind: "length", meaning: "outer diameter of the bundle", is: "1.2 * sqrt(n) * D_w", when: "n > 1" },
  { symbol: "R_i", kind: "thermalResistance", meaning: "through one metre of insulation", is: "log(D_w / d) / (2 * pi * k_i * 1 m)" },
  { symbol: "R_b", kind: "thermalResistance", meaning: "no bundle around it", is: "0 K/W", when: "n == 1" },
  {
    symbol: "R_b",
    kind: "thermalResistance",
    meaning: "from the middle of the bundle, for one wire's heat",
    is: "n / (4 * pi * k_b * 1 m)",
    when: "n > 1",
  },
  {
    symbol: "z",
    kind: "length",
    meaning: "depth of the axis, the surface film as more padding",
    is: "D / 2 + t_p + k_p / h_p",
    when: "inAir == 0",
  },
]

/** Steps to the temperatures at the current I. */
export const steadySteps: readonly Step<SiOf<Laid>, unknown>[] = [
  { solved: "dT_s", meaning: "surface over the surroundings" },
  { solved: "dT_c", meaning: "conductor over the surroundings" },
  { symbol: "T_s", kind: "temperature", meaning: "outer surface", is: "T_0 + dT_s" },
  { symbol: "T_c", kind: "temperature", meaning: "conductor", is: "T_0 + dT_c" },
  { symbol: "T", kind: "temperature", meaning: "the conductor's temperature", is: "T_c" },
  warmStep,
  { symbol: "P_m", kind: "power", meaning: "heat of one metre", is: "I^2 * r * 1 m" },
  { left: "dT_c", right: "dT_s + P_m * (R_i + R_b)", meaning: "what falls inside" },
  { symbol: "T_m", kind: "temperature", meaning: "film temperature", is: "T_0 + dT_s / 2", when: "inAir == 1" },
  {
    symbol: "k_a",
    kind: "thermalConductivity",
    meaning: "conductivity of air",
    is: "0.0263 W/(m K) * (T_m / (300 K))^0.865",
    when: "inAir == 1",
    source: HEAT_TRANSFER,
  },
  {
    symbol: "nu",
    kind: "thermalDiffusivity",
    meaning: "kinematic viscosity of air",
    is: "1.716e-5 Pa s * (T_m / (273.15 K))^1.5 * (273.15 + 110.4) / (T_m / K + 110.4) * 287.05 J/(kg K) * T_m / (101325 Pa)",
    when: "inAir == 1",
    source: VISCOSITY,
  },
  {
    symbol: "Ra",
    kind: "number",
    meaning: "Rayleigh number",
    is: `9.80665 m/s^2 * dT_s * D^3 * ${airPrandtl} / (T_m * nu^2)`,
    when: "inAir == 1",
  },
  {
    symbol: "h",
    kind: "heatTransferCoefficient",
    meaning: "convection and radiation",
    is: `(0.6 + 0.387 * Ra^(1/6) / (1 + (0.559 / ${airPrandtl})^(9/16))^(8/27))^2 * k_a / D + e_s * ${stefanBoltzmann} W/(m^2 K^4) * (T_s^2 + T_0^2) * (T_s + T_0)`,
    when: "inAir == 1",
    source: CONVECTION,
  },
  { left: "n * P_m", right: "pi * D * 1 m * h * dT_s", meaning: "heat made is heat given off to the air", when: "inAir == 1" },
  {
    left: "n * P_m",
    right: "dT_s * pi * k_p * 1 m / log(8 * z / (pi * D))",
    meaning: "heat made is heat led through the padding, to one side",
    when: "inAir == 0",
    source: HEAT_TRANSFER,
  },
]

/** Steps that prove the current at the insulation's rating. */
export const ratedSteps: readonly Step<SiOf<Laid>, unknown>[] = [
  { solved: "I_r", meaning: "current that reaches the rating" },
  { symbol: "dT_r", kind: "temperatureDifference", meaning: "rise at the rating", is: "T_r - T_0" },
  {
    symbol: "P_r",
    kind: "power",
    meaning: "heat of one metre at that current",
    is: "I_r^2 * r_20 * (1 + alpha * (T_r - 293.15 K)) * 1 m",
  },
  { symbol: "dT_o", kind: "temperatureDifference", meaning: "surface over the surroundings then", is: "dT_r - P_r * (R_i + R_b)" },
  {
    left: "n * I_r^2 * r_20 * (1 + alpha * (T_r - 293.15 K)) * 1 m",
    right: "dT_o * pi * k_p * 1 m / log(8 * z / (pi * D))",
    meaning: "heat balance at the rating",
    when: "inAir == 0",
    within: 1e-8,
  },
  {
    symbol: "h_o",
    kind: "heatTransferCoefficient",
    meaning: "surface coefficient then, by the same formulae",
    is: filmText("dT_o"),
    when: "inAir == 1",
    source: CONVECTION,
  },
  {
    left: "n * I_r^2 * r_20 * (1 + alpha * (T_r - 293.15 K)) * 1 m",
    right: "pi * D * 1 m * h_o * dT_o",
    meaning: "heat balance at the rating",
    when: "inAir == 1",
    within: 1e-8,
  },
]

/** The surface coefficient as one formula of a rise. */
function filmText(rise: string): string {
  const film = `(T_0 + ${rise} / 2)`
  const nu = `(1.716e-5 Pa s * (${film} / (273.15 K))^1.5 * (273.15 + 110.4) / (${film} / K + 110.4) * 287.05 J/(kg K) * ${film} / (101325 Pa))`
  const rayleigh = `(9.80665 m/s^2 * ${rise} * D^3 * ${airPrandtl} / (${film} * ${nu}^2))`
  const nusselt = `(0.6 + 0.387 * ${rayleigh}^(1/6) / (1 + (0.559 / ${airPrandtl})^(9/16))^(8/27))^2`
  return `${nusselt} * 0.0263 W/(m K) * (${film} / (300 K))^0.865 / D + e_s * ${stefanBoltzmann} W/(m^2 K^4) * ((T_0 + ${rise})^2 + T_0^2) * (2 * T_0 + ${rise})`
}
