import type { Current, HeatTransferCoefficient, Length, Ratio, Temperature, ThermalConductivity } from "../quantity/index.js"
import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import {
  areaOf,
  type ConductorSize,
  resistance20,
  sizeCautions,
  sizeFields,
  sizeIssues,
  sizeSources,
  sizeSteps,
  warmStep,
} from "./conductor.js"
import { metals } from "./data.js"
import { airPrandtl, type HeatPath, heatAtRise, steadyRise, stefanBoltzmann } from "./heat.js"

/** Where the wire lies. */
export type Arrangement = "free-air" | "bundle" | "padding"

/** Input of {@link wireHeating}. */
export interface WireHeatingInput extends ConductorSize {
  /** Steady current in each wire. */
  current: Current
  /** Where it lies: alone in still air, in a bundle in still air, or under padding against the body. */
  arrangement?: Arrangement
  /** Loaded wires lying together (bundle and padding). */
  wires?: number
  /** Temperature of the air around. */
  ambient?: Temperature
  /** Insulation wall. */
  insulationThickness?: Length
  /** Thermal conductivity of the insulation. */
  insulationConductivity?: ThermalConductivity
  /** Thermal conductivity across a bundle of wires. */
  bundleConductivity?: ThermalConductivity
  /** Emissivity of the outer surface. */
  emissivity?: Ratio
  /** Padding over the wire. */
  paddingThickness?: Length
  /** Thermal conductivity of the padding. */
  paddingConductivity?: ThermalConductivity
  /** Heat transfer from the padding's outer side to the air. */
  paddingSurface?: HeatTransferCoefficient
  /** Temperature the insulation is rated for. */
  rating?: Temperature
  /** Fault current, for the time it takes to ruin the insulation. */
  faultCurrent?: Current | null
  /** Conductor temperature a short fault may reach. */
  faultLimit?: Temperature
}

/** Result of {@link wireHeating}. */
export interface WireHeating {
  /** Conductor temperature, °C. */
  readonly temperature: number
  /** Temperature of the wire's or bundle's outer surface, °C. */
  readonly surfaceTemperature: number
  /** Conductor over the air around, K. */
  readonly rise: number
  /** Outer surface over the air around, K. */
  readonly surfaceRise: number
  /** Heat of one metre of one wire, W. */
  readonly heatPerMetre: number
  /** Current at which the conductor reaches the insulation's rating here, A. */
  readonly ratedCurrent: number
  /** Part of that current in use. */
  readonly use: number
  /** How fast the conductor warms at first, K per second, no heat lost. */
  readonly firstRise: number
  /** Time the fault current needs from this steady state to the fault limit, s, no heat lost. */
  readonly faultTime: number | null
  readonly iterations: number
  readonly residual: number
}

type Si = SiOf<WireHeatingInput>

/** Bundle diameter over wire diameter and the root of their number: round wires fill about 70 % of the circle. */
const bundleSpread = 1.2

const together = (si: Si) => (si.arrangement === "free-air" ? 1 : si.wires)

/** Thermal path of one wire of the arrangement. */
export function heatPath(si: Si): HeatPath {
  const wires = together(si)
  const bare = Math.sqrt((4 * areaOf(si)) / Math.PI)
  const wire = bare + 2 * si.insulationThickness
  const outerDiameter = wires === 1 ? wire : bundleSpread * Math.sqrt(wires) * wire
  const insulation = Math.log(wire / bare) / (2 * Math.PI * si.insulationConductivity)
  const bundle = wires === 1 ? 0 : wires / (4 * Math.PI * si.bundleConductivity)
  const depth = outerDiameter / 2 + si.paddingThickness + si.paddingConductivity / si.paddingSurface
  const outer = si.arrangement === "padding" ? Math.log((8 * depth) / (Math.PI * outerDiameter)) / (Math.PI * si.paddingConductivity) : null
  return { outerDiameter, wires, inner: insulation + bundle, outer, ambient: si.ambient, emissivity: si.emissivity }
}

const ratedCurrentOf = (si: Si, path: HeatPath) =>
  Math.sqrt(heatAtRise(path, si.rating - si.ambient) / (resistance20(si) * (1 + metals[si.metal].coefficient * (si.rating - 20))))

function solve(si: Si): WireHeating | NoSolution {
  const path = heatPath(si)
  const alpha = metals[si.metal].coefficient
  const r20 = resistance20(si)
  const base = si.current ** 2 * r20
  const ratedCurrent = ratedCurrentOf(si, path)
  const steady = steadyRise(path, { base, alpha })
  if (steady === null || steady.conductor + si.ambient > 300) {
    const amps = (a: number) => formatQuantity("current", a)
    return refuse(
      "too-hot",
      `${amps(si.current)} heats this wire past 300 °C: its insulation burns. Here it reaches its ${formatQuantity("temperature", si.rating)} rating at ${amps(ratedCurrent)}.`,
      Math.max(0, si.current - ratedCurrent),
      { current: si.current },
      { current: ratedCurrent },
    )
  }
  const { area, heatCapacity, beta, resistivity } = { area: areaOf(si), ...metals[si.metal] }
  const temperature = si.ambient + steady.conductor
  const heatPerMetre = base * (1 + alpha * (temperature - 20))
  const adiabatic = (heatCapacity * (beta + 20)) / resistivity
  const room = Math.log((beta + si.faultLimit) / (beta + temperature))
  return {
    temperature,
    surfaceTemperature: si.ambient + steady.surface,
    rise: steady.conductor,
    surfaceRise: steady.surface,
    heatPerMetre,
    ratedCurrent,
    use: si.current / ratedCurrent,
    firstRise: (base * (1 + alpha * (si.ambient - 20))) / (heatCapacity * area),
    faultTime: si.faultCurrent === null ? null : Math.max(0, (adiabatic * area ** 2 * room) / si.faultCurrent ** 2),
    iterations: steady.iterations,
    residual: steady.residual,
  }
}

function cautions(si: Si, out: WireHeating): Caution[] {
  const found = sizeCautions({ ...si, stranding: si.stranding === "solid" ? "stranded" : si.stranding }, out.temperature)
  const degrees = (t: number) => formatQuantity("temperature", t)
  if (out.temperature > si.rating)
    found.push(
      caution(
        "over-rating",
        "warning",
        `The conductor reaches ${degrees(out.temperature)} and its insulation is rated ${degrees(si.rating)}: it softens, ages and can short or burn. Take a thicker wire or less current.`,
        "IEC 60227-1, 2007, clause 3.4 (conductor temperature of PVC insulation)",
      ),
    )
  if (out.surfaceTemperature > 43)
    found.push(
      caution(
        "touch-temperature",
        "warning",
        `The outer surface reaches ${degrees(out.surfaceTemperature)}: skin held against more than 43 °C for hours is burnt, whatever the material. Keep it off the wearer.`,
        "ISO 13732-1, 2006, clause 5.7 (burn threshold 43 °C for contact of 8 h and longer)",
      ),
    )
  if (si.arrangement === "padding")
    found.push(
      caution(
        "one-sided",
        "note",
        "The body side is taken to carry no heat away, which errs to the safe side; folds and more layers than stated err the other way.",
        "F. P. Incropera et al., Fundamentals of Heat and Mass Transfer, 2007, table 4.1 (cylinder midway between planes, half of it)",
      ),
    )
  if (together(si) > 1)
    found.push(
      caution(
        "bundle-model",
        "note",
        "The bundle is taken as a round body of even heat and conductivity; the wire in its middle is reckoned, and 20 % either way is usual.",
      ),
    )
  if (out.temperature > 200)
    found.push(caution("outside-range", "note", "Resistance is taken linear in temperature; its constants hold to about 200 °C."))
  if (out.faultTime !== null && out.faultTime > 5)
    found.push(
      caution(
        "not-adiabatic",
        "note",
        "The fault time neglects heat lost to the surroundings; it is meant for up to 5 s and is on the safe side beyond.",
        "IEC 60364-4-43, 2008, clause 434.5.2",
      ),
    )
  return found
}

/**
 * How hot a wire gets: alone in air, in a bundle, or under padding; and how soon a fault ruins it.
 *
 * Formula: in steady state n·I²·r₂₀·(1 + α·(T_c − 20 °C)) leaves through the outer surface of diameter D:
 * π·D·h·(T_s − T_a) in free air, with Churchill and Chu's convection and radiation in h, or
 * (T_s − T_a)·π·k_p/ln(8·z/(π·D)) under padding (half a cylinder midway between planes, z its depth with
 * k_p/h_p added). Inside, T_c = T_s + q·(ln(D_w/d)/(2π·k_i) + n/(4π·k_b)); a bundle has D = 1.2·√n·D_w.
 * Short faults: t = K²·A²·ln((β + T_f)/(β + T_c))/I_f², K² = Q·(β + 20 °C)/ρ₂₀. I is the current of each
 * wire (A), n the loaded wires together (default 1), T_a the air (°C, default 25), insulation wall 0.4 mm
 * of 0.17 W/(m·K), bundle 0.15 W/(m·K), padding 10 mm of 0.04 W/(m·K) under 8 W/(m²·K), emissivity 0.9,
 * rating 80 °C, fault limit 160 °C. Valid for still air and long straight wires.
 *
 * Sources: Churchill and Chu, 1975; Incropera et al., 2007, table 4.1; IEC 60364-5-54 (2011), Annex A.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` past 300 °C, naming the current the insulation allows here
 * @example
 * ```ts
 * import { wireHeating } from 'alula/wire'
 * const free = wireHeating({ current: '6 A', awg: 20 })
 * free.temperature // => 37.07
 * const hidden = wireHeating({ current: '6 A', awg: 20, arrangement: 'padding' })
 * hidden.temperature > free.temperature // => true
 * ```
 */
export const wireHeating: Solver<WireHeatingInput, WireHeating> = /* @__PURE__ */ solver<WireHeatingInput, WireHeating>({
  name: "wireHeating",
  title: "How hot a wire gets",
  input: {
    current: { kind: "current", symbol: "I", label: "current in each wire", min: 0, max: 1000, typical: [0.5, 8] },
    ...sizeFields,
    arrangement: {
      kind: "choice",
      label: "where it lies",
      options: { "free-air": "alone in still air", bundle: "in a bundle in still air", padding: "under padding against the body" },
      default: "free-air",
    },
    wires: { kind: "number", symbol: "n_w", label: "loaded wires together", whole: true, min: 1, max: 100, typical: [1, 8], default: 1 },
    ambient: { kind: "temperature", symbol: "T_a", label: "air around", min: -40, max: 100, typical: [0, 40], default: 25 },
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
    rating: { kind: "temperature", symbol: "T_r", label: "insulation rating", above: -40, max: 300, typical: [70, 150], default: 80 },
    faultCurrent: { kind: "current", symbol: "I_f", label: "fault current", above: 0, max: 1e5, typical: [20, 300], default: null },
    faultLimit: {
      kind: "temperature",
      symbol: "T_f",
      label: "conductor limit in a short fault",
      min: 70,
      max: 300,
      typical: [140, 250],
      default: 160,
    },
  },
  output: {
    temperature: { kind: "temperature", symbol: "T_c", label: "conductor temperature" },
    surfaceTemperature: { kind: "temperature", symbol: "T_s", label: "outer surface" },
    rise: { kind: "temperatureDifference", symbol: "dT_c", label: "conductor over the air" },
    surfaceRise: { kind: "temperatureDifference", symbol: "dT_s", label: "surface over the air" },
    heatPerMetre: { kind: "power", symbol: "P_m", label: "heat of one metre of wire" },
    ratedCurrent: { kind: "current", symbol: "I_r", label: "current that reaches the rating" },
    use: { kind: "ratio", symbol: "u", label: "part of it in use", unit: "%" },
    firstRise: { kind: "number", symbol: "g_T", label: "first rise, K/s" },
    faultTime: { kind: "time", symbol: "t_f", label: "fault time to the limit" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "number", label: "residual of the heat balance" },
  },
  example: { current: "6 A", awg: 20, ambient: 30, rating: 80, faultCurrent: "60 A" },
  formulae: [
    ...sizeSteps,
    { symbol: "n", kind: "number", meaning: "wires that share the outer surface", given: together },
    { symbol: "inAir", kind: "number", meaning: "1 in still air, 0 under padding", given: (si) => (si.arrangement === "padding" ? 0 : 1) },
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
    { solved: "dT_s", meaning: "surface over the air" },
    { solved: "dT_c", meaning: "conductor over the air" },
    { symbol: "T_s", meaning: "outer surface", is: "T_a + dT_s" },
    { symbol: "T_c", meaning: "conductor", is: "T_a + dT_c" },
    { symbol: "T", kind: "temperature", meaning: "the conductor's temperature", is: "T_c" },
    warmStep,
    { symbol: "P_m", meaning: "heat of one metre", is: "I^2 * r * 1 m" },
    { left: "dT_c", right: "dT_s + P_m * (R_i + R_b)", meaning: "what falls inside" },
    { symbol: "T_m", kind: "temperature", meaning: "film temperature", is: "T_a + dT_s / 2", when: "inAir == 1" },
    {
      symbol: "k_a",
      kind: "thermalConductivity",
      meaning: "conductivity of air",
      is: "0.0263 W/(m K) * (T_m / (300 K))^0.865",
      when: "inAir == 1",
      source: "Incropera et al., 2007, table A.4 (fit)",
    },
    {
      symbol: "nu",
      kind: "thermalDiffusivity",
      meaning: "kinematic viscosity of air",
      is: "1.716e-5 Pa s * (T_m / (273.15 K))^1.5 * (273.15 + 110.4) / (T_m / K + 110.4) * 287.05 J/(kg K) * T_m / (101325 Pa)",
      when: "inAir == 1",
      source: "Sutherland's formula; ideal gas",
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
      is: `(0.6 + 0.387 * Ra^(1/6) / (1 + (0.559 / ${airPrandtl})^(9/16))^(8/27))^2 * k_a / D + e_s * ${stefanBoltzmann} W/(m^2 K^4) * (T_s^2 + T_a^2) * (T_s + T_a)`,
      when: "inAir == 1",
      source: "Churchill and Chu, 1975; Stefan–Boltzmann law",
    },
    { left: "n * P_m", right: "pi * D * 1 m * h * dT_s", meaning: "heat made is heat given off to the air", when: "inAir == 1" },
    {
      symbol: "z",
      kind: "length",
      meaning: "depth of the axis, the surface film as more padding",
      is: "D / 2 + t_p + k_p / h_p",
      when: "inAir == 0",
    },
    {
      left: "n * P_m",
      right: "dT_s * pi * k_p * 1 m / log(8 * z / (pi * D))",
      meaning: "heat made is heat led through the padding, to one side",
      when: "inAir == 0",
      source: "Incropera et al., 2007, table 4.1",
    },
    { solved: "I_r", meaning: "current that reaches the rating" },
    { symbol: "dT_r", kind: "temperatureDifference", meaning: "rise at the rating", is: "T_r - T_a" },
    {
      symbol: "P_r",
      kind: "power",
      meaning: "heat of one metre at that current",
      is: "I_r^2 * r_20 * (1 + alpha * (T_r - 293.15 K)) * 1 m",
    },
    { symbol: "dT_o", kind: "temperatureDifference", meaning: "surface over the air then", is: "dT_r - P_r * (R_i + R_b)" },
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
      source: "Churchill and Chu, 1975",
    },
    {
      left: "n * I_r^2 * r_20 * (1 + alpha * (T_r - 293.15 K)) * 1 m",
      right: "pi * D * 1 m * h_o * dT_o",
      meaning: "heat balance at the rating",
      when: "inAir == 1",
      within: 1e-8,
    },
    { symbol: "u", meaning: "part of it in use", is: "I / I_r" },
    {
      symbol: "Q",
      kind: "number",
      meaning: "heat capacity by volume, J/(K·m³)",
      given: (si) => metals[si.metal].heatCapacity,
      source: "IEC 60364-5-54, Annex A",
    },
    {
      symbol: "beta",
      kind: "number",
      meaning: "reciprocal temperature coefficient at 0 °C, °C",
      given: (si) => metals[si.metal].beta,
      source: "IEC 60364-5-54, Annex A",
    },
    {
      symbol: "g_T",
      meaning: "first rise, no heat lost",
      is: "I^2 * r_20 * (1 + alpha * (T_a - 293.15 K)) / (Q * J/(K m^3) * A) * s / K",
    },
    {
      symbol: "t_f",
      meaning: "time to the fault limit, no heat lost",
      is: "max(0, log((beta + T_f / K - 273.15) / (beta + T_c / K - 273.15))) * Q * J/(K m^3) * (beta + 20) * K / rho * A^2 / I_f^2",
      when: "has_faultCurrent",
    },
  ],
  sources: [
    ...sizeSources,
    {
      title: "Correlating equations for laminar and turbulent free convection from a horizontal cylinder",
      by: "S. W. Churchill, H. H. S. Chu",
      edition: "1975",
    },
    { title: "Fundamentals of Heat and Mass Transfer", by: "F. P. Incropera et al.", edition: "6th, 2007", where: "tables 4.1 and A.4" },
    { title: "IEC 60364-5-54, Earthing arrangements and protective conductors", by: "IEC", edition: "2011", where: "Annex A" },
  ],
  check: (si) => [
    ...sizeIssues(si),
    ...(si.rating > si.ambient ? [] : [inconsistent(["rating"], `${si.rating} °C`, `more than the air around (${si.ambient} °C)`)]),
  ],
  solve,
  cautions,
})

/** The surface coefficient as one formula of a rise. */
function filmText(rise: string): string {
  const film = `(T_a + ${rise} / 2)`
  const nu = `(1.716e-5 Pa s * (${film} / (273.15 K))^1.5 * (273.15 + 110.4) / (${film} / K + 110.4) * 287.05 J/(kg K) * ${film} / (101325 Pa))`
  const rayleigh = `(9.80665 m/s^2 * ${rise} * D^3 * ${airPrandtl} / (${film} * ${nu}^2))`
  const nusselt = `(0.6 + 0.387 * ${rayleigh}^(1/6) / (1 + (0.559 / ${airPrandtl})^(9/16))^(8/27))^2`
  return `${nusselt} * 0.0263 W/(m K) * (${film} / (300 K))^0.865 / D + e_s * ${stefanBoltzmann} W/(m^2 K^4) * ((T_a + ${rise})^2 + T_a^2) * (2 * T_a + ${rise})`
}
