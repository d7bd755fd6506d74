import type { Current, Temperature } from "../quantity/index.js"
import { type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { areaOf, type ConductorSize, resistance20, sizeCautions, sizeFields, sizeIssues, sizeSources, sizeSteps } from "./conductor.js"
import { metals } from "./data.js"
import { type Laid, laidFaults, laidFields, pathSteps, ratedSteps, startOf, steadySteps, together } from "./laid.js"
import { BURNS_OFF, fumesCaution, raisedLimit } from "./overload.js"
import { ADIABATIC, BURNS, CONVECTION, HEAT_TRANSFER, PVC, SHORT_FAULT, SKIN } from "./sources.js"
import { adiabaticConstant, adiabaticSteps, ratedCurrentOf, SHORT_LIMIT, steadyOf } from "./withstand.js"

/** Input of {@link wireHeating}. */
export interface WireHeatingInput extends ConductorSize, Laid {
  /** Steady current in each wire. */
  current: Current
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
  /** Conductor over its surroundings: the air, or the skin under padding, K. */
  readonly rise: number
  /** Outer surface over the same, K. */
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
  /** Iterations of the heat balance. */
  readonly iterations: number
  /** What is left of the heat balance. */
  readonly residual: number
}

type Si = SiOf<WireHeatingInput>

function solve(si: Si): WireHeating | NoSolution {
  const start = startOf(si)
  const alpha = metals[si.metal].coefficient
  const base = si.current ** 2 * resistance20(si)
  const ratedCurrent = ratedCurrentOf(si)
  const steady = steadyOf(si, si.current)
  if (steady === null || steady.conductor + start > BURNS_OFF)
    return refuse(
      "too-hot",
      "{current current} heats this wire past 300 °C: its insulation burns, with fumes that hurt. Here it bears {nearest.current current} for good ({given.rating temperature °C} insulation).",
      si.current - ratedCurrent,
      { current: si.current },
      // a billionth less, so that rounding cannot refuse it again
      { current: ratedCurrent * (1 - 1e-9) },
      { "given.rating": si.rating },
    )
  const { area, heatCapacity, beta } = { area: areaOf(si), ...metals[si.metal] }
  const temperature = start + steady.conductor
  const room = Math.log((beta + si.faultLimit) / (beta + temperature))
  return {
    temperature,
    surfaceTemperature: start + steady.surface,
    rise: steady.conductor,
    surfaceRise: steady.surface,
    heatPerMetre: base * (1 + alpha * (temperature - 20)),
    ratedCurrent,
    use: si.current / ratedCurrent,
    firstRise: (base * (1 + alpha * (start - 20))) / (heatCapacity * area),
    faultTime:
      si.faultCurrent === null ? null : Math.max(0, ((adiabaticConstant(metals[si.metal]) * area) ** 2 * room) / si.faultCurrent ** 2),
    iterations: steady.iterations,
    residual: steady.residual,
  }
}

function cautions(si: Si, out: WireHeating): Caution[] {
  const found = sizeCautions({ ...si, stranding: si.stranding === "solid" ? "stranded" : si.stranding }, out.temperature)
  if (out.temperature > si.rating)
    found.push(
      caution(
        "over-rating",
        "warning",
        "The conductor reaches {temperature temperature °C} and its insulation is rated {given.rating temperature °C}: it softens, ages and can short or burn. Take a thicker wire or less current.",
        PVC,
        { temperature: out.temperature, "given.rating": si.rating },
      ),
    )
  if (out.temperature > Math.max(si.rating, SHORT_LIMIT)) found.push(fumesCaution())
  if (out.surfaceTemperature > 43)
    found.push(
      caution(
        "touch-temperature",
        "warning",
        "The outer surface reaches {surfaceTemperature temperature °C}: skin held against more than 43 °C for hours is burnt, whatever the material. Keep it off the wearer.",
        BURNS,
        { surfaceTemperature: out.surfaceTemperature },
      ),
    )
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
  if (out.temperature > 200)
    found.push(caution("outside-range", "note", "Resistance is taken linear in temperature; its constants hold to about 200 °C."))
  if (out.faultTime !== null && out.faultTime > 5)
    found.push(
      caution(
        "not-adiabatic",
        "note",
        "The fault time of {faultTime time} neglects heat lost to the surroundings; it is meant for up to 5 s and is on the safe side beyond.",
        SHORT_FAULT,
        { faultTime: out.faultTime },
      ),
    )
  return [...found, ...raisedLimit(si.faultCurrent === null ? 0 : si.faultLimit)]
}

/**
 * How hot a wire gets: alone in air, in a bundle, or under padding; and how soon a fault ruins it.
 *
 * Formula: in steady state n·I²·r₂₀·(1 + α·(T_c − 20 °C)) leaves through the outer surface of diameter D:
 * π·D·h·(T_s − T_0) in free air, with Churchill and Chu's convection and radiation in h, or
 * (T_s − T_0)·π·k_p/ln(8·z/(π·D)) under padding (half a cylinder midway between planes, z its depth with
 * k_p/h_p added). Inside, T_c = T_s + q·(ln(D_w/d)/(2π·k_i) + n/(4π·k_b)); a bundle has D = 1.2·√n·D_w.
 * Short faults: t = K²·A²·ln((β + T_f)/(β + T_c))/I_f², K² = Q·(β + 20 °C)/ρ₂₀. I is the current of each
 * wire (A), n the loaded wires together (default 1), T_a the air (°C, default 25), insulation wall 0.4 mm
 * of 0.17 W/(m·K), bundle 0.15 W/(m·K), padding 10 mm of 0.04 W/(m·K) under 8 W/(m²·K), emissivity 0.9,
 * rating 80 °C, fault limit 160 °C. T_0 is the air, or under padding the skin (default 35 °C) where that is warmer. Valid for still air and long straight wires.
 * Several wires are a bundle or lie under padding: `wires` above 1 alone in air is refused as input.
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
export const wireHeating: Solver<WireHeatingInput, WireHeating> = /* @__PURE__ */ solver<WireHeatingInput, WireHeating>(
  "wireHeating",
  "How hot a wire gets",
  solve,
  () => ({
    input: {
      current: { kind: "current", symbol: "I", label: "current in each wire", min: 0, max: 1000, typical: [0.5, 8] },
      ...sizeFields,
      ...laidFields,
      faultCurrent: { kind: "current", symbol: "I_f", label: "fault current", min: "0.1 mA", max: 1e5, typical: [20, 300], default: null },
      faultLimit: {
        kind: "temperature",
        symbol: "T_f",
        label: "conductor limit in a short fault",
        min: 70,
        max: 350,
        typical: [140, 250],
        default: SHORT_LIMIT,
      },
    },
    output: {
      temperature: { kind: "temperature", symbol: "T_c", label: "conductor temperature" },
      surfaceTemperature: { kind: "temperature", symbol: "T_s", label: "outer surface" },
      rise: { kind: "temperatureDifference", symbol: "dT_c", label: "conductor over its surroundings" },
      surfaceRise: { kind: "temperatureDifference", symbol: "dT_s", label: "surface over its surroundings" },
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
    check: (si) => [...sizeIssues(si), ...laidFaults(si)],
    cautions,
  }),
)
