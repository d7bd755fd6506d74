import type { Current, Length, Ratio, Temperature, Voltage } from "../quantity/index.js"
import {
  type Caution,
  caution,
  commonPractice,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import {
  areaOf,
  type ConductorSize,
  metalSteps,
  nominalResistance,
  resistance20,
  resistanceSteps,
  sizeCautions,
  sizeFields,
  sizeSources,
  temperatureFactor,
  touchCaution,
} from "./conductor.js"
import { bladeFuse, type Metal, nominalConductors, type Stranding } from "./data.js"
import { type Laid, type LaidWire, laidFaults, laidFields, pathSteps, ratedSteps, startOf, steadySteps } from "./laid.js"
import { BURNS_OFF, raisedLimit } from "./overload.js"
import { AWG, BLADE, BURNS, CLASSES, CONVECTION, HEAT_TRANSFER, SHORT_FAULT, SKIN } from "./sources.js"
import { guards, largestFuse, ratedCurrentOf, SHORT_LIMIT, shortLimit, steadyOf } from "./withstand.js"

/** Input of {@link sizeConductor}. */
export interface SizeConductorInput extends Laid {
  /** Steady current. */
  current: Current
  /** Length one way. */
  length: Length
  /** Voltage of the supply. */
  voltage: Voltage
  /** Maximum drop allowed, against that voltage. */
  greatestDrop?: Ratio
  /** Conductors in the current path: 2 counts out and back. */
  conductors?: number
  /** Sizes to choose from. */
  series?: "awg" | "metric"
  /** Conductor metal. */
  metal?: Metal
  /** How the conductor is made up; the IEC classes go with the metric sizes. */
  stranding?: Stranding
  /** Fuse ahead of the wire. */
  fuse?: Current | null
  /** Conductor temperature a short fault may reach. */
  faultLimit?: Temperature
}

/** One size that was looked at. */
export interface SizeCandidate {
  /** Gauge, or null in the metric series. */
  readonly awg: number | null
  /** Cross-section, m². */
  readonly area: number
  /** Drop against the supply voltage at its own temperature; null where it burns. */
  readonly dropRatio: number | null
  /** Current at which it reaches its insulation's rating, A. */
  readonly ratedCurrent: number
  /** Rules it fails, of `drop`, `temperature` and `fuse`, joined by commas; empty where it meets all. */
  readonly fails: string
}

/** Result of {@link sizeConductor}. */
export interface SizeConductor {
  /** Gauge chosen; null in the metric series. */
  readonly awg: number | null
  /** Cross-section chosen, m². */
  readonly area: number
  /** Rule the next smaller size fails, of `drop`, `temperature` and `fuse`; `none` where the smallest size does. */
  readonly decidedBy: string
  /** Conductor temperature, °C. */
  readonly temperature: number
  /** Temperature of the outer surface, °C. */
  readonly surfaceTemperature: number
  /** Conductor over its surroundings, K. */
  readonly rise: number
  /** Surface over its surroundings, K. */
  readonly surfaceRise: number
  /** Resistance of the path, warm, Ω. */
  readonly resistance: number
  /** Voltage lost, V. */
  readonly drop: number
  /** Against the supply. */
  readonly dropRatio: number
  /** Current at which it reaches its insulation's rating, A. */
  readonly ratedCurrent: number
  /** Current the fuse may let flow for many minutes, A; null without a fuse. */
  readonly fuseCurrent: number | null
  /** Heat of the whole run, W. */
  readonly heat: number
  /** Every size looked at, smallest first, up to the one chosen. */
  readonly candidates: readonly SizeCandidate[]
}

type Si = SiOf<SizeConductorInput>

/** Gauges offered: the even ones, and 1/0, 2/0, 3/0, 4/0. */
const gauges = [30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3]

function sizesOf(si: Si): SiOf<ConductorSize>[] {
  const common = { metal: si.metal, stranding: si.stranding }
  return si.series === "awg"
    ? gauges.map((awg) => ({ ...common, awg, area: null }))
    : nominalConductors.map((n) => ({ ...common, awg: null, area: n.area * 1e-6 }))
}

interface Looked extends SizeCandidate {
  readonly wire: LaidWire
  /** Surface and conductor over the surroundings, K; null where it burns. */
  readonly rises: { readonly surface: number; readonly conductor: number } | null
  readonly resistance: number
}

/** Resistance of the whole path with its conductor at a temperature, Ω. */
const pathResistance = (si: Si, wire: LaidWire, temperature: number) =>
  resistance20(wire) * temperatureFactor(si.metal, temperature) * si.conductors * si.length

function look(si: Si, size: SiOf<ConductorSize>): Looked {
  const wire: LaidWire = { ...si, ...size }
  const start = startOf(wire)
  const steady = steadyOf(wire, si.current)
  const rises = steady !== null && start + steady.conductor <= BURNS_OFF ? steady : null
  const ratedCurrent = ratedCurrentOf(wire)
  const resistance = rises === null ? 0 : pathResistance(si, wire, start + rises.conductor)
  const dropRatio = rises === null ? null : (si.current * resistance) / si.voltage
  const guarded = si.fuse === null ? null : guards(si.fuse, wire, shortLimit(si))
  const fails = [
    dropRatio !== null && dropRatio <= si.greatestDrop ? null : "drop",
    ratedCurrent >= si.current ? null : "temperature",
    guarded === null || (guarded.long && guarded.overload) ? null : "fuse",
  ].filter((f) => f !== null)
  return { wire, rises, resistance, awg: size.awg, area: areaOf(size), dropRatio, ratedCurrent, fails: fails.join(",") }
}

/** Every size up to the first that meets all rules, and whether it does. */
function lookThrough(si: Si): { readonly looked: readonly Looked[]; readonly found: boolean } {
  const looked: Looked[] = []
  for (const size of sizesOf(si)) {
    const one = look(si, size)
    looked.push(one)
    if (one.fails === "") return { looked, found: true }
  }
  return { looked, found: false }
}

function solve(si: Si): SizeConductor | NoSolution {
  const { looked, found } = lookThrough(si)
  const last = looked[looked.length - 1] as Looked
  if (found) return chosen(si, last, looked)
  const outcome = last.dropRatio === null ? "burns its insulation" : "keeps its insulation"
  return refuse(
    "no-size",
    "Even the thickest size here ({area area mm²}) fails by {by}: it drops {dropRatio ratio %}, {outcome} and bears {ratedCurrent current} for good. Use several in parallel with a fuse each, a higher voltage or a shorter run.",
    shortOf(si, last),
    { area: last.area, current: si.current },
    nearestOf(si, last),
    {
      by: last.fails.replaceAll(",", ", "),
      outcome,
      ratedCurrent: last.ratedCurrent,
      dropRatio: (si.current * pathResistance(si, last.wire, Math.min(BURNS_OFF, hotOf(last)))) / si.voltage,
    },
  )
}

/** Conductor temperature of a size, °C; without end where it burns. */
const hotOf = ({ wire, rises }: Looked) => (rises === null ? Number.POSITIVE_INFINITY : startOf(wire) + rises.conductor)

/** By how much the thickest size misses: current first, then the fuse's, in A; then the drop. */
function shortOf(si: Si, last: Looked): number {
  if (last.ratedCurrent < si.current) return si.current - last.ratedCurrent
  if (last.fails.includes("fuse")) return (si.fuse as number) - largestFuse(last.wire, shortLimit(si))
  return (last.dropRatio as number) - si.greatestDrop
}

/** What the thickest size bears, all rules together, tried: current, length and fuse, each named only where it must change. */
function nearestOf(si: Si, last: Looked): Record<string, number> {
  // a billionth less, so that rounding cannot refuse it again
  const below = (value: number) => value * (1 - 1e-9)
  const cooler = last.ratedCurrent < si.current
  const current = cooler ? below(last.ratedCurrent) : si.current
  const warm = last.rises === null || cooler ? si.rating : startOf(last.wire) + last.rises.conductor
  const drop = current * pathResistance(si, last.wire, warm)
  const allowed = si.greatestDrop * si.voltage
  const fuse = last.fails.includes("fuse") ? below(largestFuse(last.wire, shortLimit(si))) : si.fuse
  const nearest = {
    ...(cooler ? { current } : {}),
    ...(drop > allowed ? { length: below((si.length * allowed) / drop) } : {}),
    ...(fuse !== null && fuse !== si.fuse ? { fuse } : {}),
  }
  return lookThrough({ ...si, ...nearest }).found ? nearest : {}
}

function chosen(si: Si, one: Looked, looked: readonly Looked[]): SizeConductor {
  const rises = one.rises as Exclude<Looked["rises"], null>
  const start = startOf(one.wire)
  const before = looked[looked.length - 2]
  const drop = si.current * one.resistance
  return {
    awg: one.awg,
    area: one.area,
    decidedBy: before?.fails.split(",")[0] ?? "none",
    temperature: start + rises.conductor,
    surfaceTemperature: start + rises.surface,
    rise: rises.conductor,
    surfaceRise: rises.surface,
    resistance: one.resistance,
    drop,
    dropRatio: drop / si.voltage,
    ratedCurrent: one.ratedCurrent,
    fuseCurrent: si.fuse === null ? null : bladeFuse.longMultiple * si.fuse,
    heat: si.current * drop,
    candidates: looked.map(({ awg, area, dropRatio, ratedCurrent, fails }) => ({ awg, area, dropRatio, ratedCurrent, fails })),
  }
}

function cautions(si: Si, out: SizeConductor): Caution[] {
  const found = sizeCautions(
    { awg: out.awg, area: out.awg === null ? out.area : null, metal: si.metal, stranding: si.stranding },
    out.temperature,
  )
  if (si.fuse === null)
    found.push(
      caution(
        "no-fuse",
        "warning",
        "No fuse was named: this wire bears the current meant, not a short. Put a fuse at the source and size the wire for 135 % of it; have a qualified person check the build.",
        BLADE,
      ),
    )
  if (out.surfaceTemperature > 43)
    found.push(
      caution(
        "touch-temperature",
        "warning",
        "The wire's surface reaches {surfaceTemperature temperature °C}: too hot to lie against skin for hours.",
        BURNS,
        { surfaceTemperature: out.surfaceTemperature },
      ),
    )
  if (out.area < 0.2e-6)
    found.push(
      caution(
        "thin",
        "note",
        "Wire of {area area mm²}, thinner than 0.2 mm², breaks easily where it flexes or is pulled: a moving wire wants more for strength alone.",
        commonPractice,
        { area: out.area },
      ),
    )
  return [...found, ...raisedLimit(si.fuse === null ? 0 : si.faultLimit), ...touchCaution("given.voltage", si.voltage)]
}

/**
 * Smallest conductor that meets drop, temperature and fuse together.
 *
 * Formula: from the smallest size up, each at the temperature it reaches (see {@link wireHeating}): drop I·r(T)·n·L ≤ u·U_s,
 * rated current I_r ≥ I, and I_r ≥ 1.35·I_fuse, because a blade fuse may carry 135 % of its rating for many minutes;
 * at 2·I_fuse, for which it may take 5 s, the conductor stays at or below its short-time limit, heat loss counted.
 * I is the current (A), L the one-way length (m), n the conductors in the path (default 2), U_s the supply voltage (V),
 * u the maximum drop (default 3 %: common practice, no source). Gauges are the even ones and 1/0 to 4/0; metric sizes
 * those of IEC 60228. Valid for direct current in still air. The way it is laid and its insulation are as in {@link wireHeating}.
 *
 * Sources: ASTM B258 (2018); IEC 60228 (2004); Churchill and Chu (1975); ISO 8820-3 (2015).
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `no-size` where even the thickest fails, naming the current, length and fuse it would bear
 * @example
 * ```ts
 * import { sizeConductor } from 'alula/wire'
 * const wire = sizeConductor({ current: '4 A', length: '2 m', voltage: '12 V', fuse: '7.5 A' })
 * wire.awg // => 18
 * wire.decidedBy // => 'drop'
 * ```
 */
export const sizeConductor: Solver<SizeConductorInput, SizeConductor> = /* @__PURE__ */ solver<SizeConductorInput, SizeConductor>(
  "sizeConductor",
  "Smallest conductor for drop, temperature and fuse",
  solve,
  () => ({
    input: {
      current: { kind: "current", symbol: "I", label: "steady current", min: "1 mA", max: 1000, typical: [0.5, 15] },
      length: { kind: "length", symbol: "L", label: "length one way", min: 0, max: 1000, typical: [0.2, 5] },
      voltage: { kind: "voltage", symbol: "U_s", label: "supply voltage", min: "10 mV", max: 1000, typical: [5, 24] },
      greatestDrop: {
        kind: "ratio",
        symbol: "u_m",
        label: "maximum drop",
        min: "0.01 %",
        max: 1,
        typical: ["1 %", "10 %"],
        default: "3 %",
      },
      conductors: { kind: "number", symbol: "n_c", label: "conductors in the path", whole: true, min: 1, max: 2, default: 2 },
      series: { kind: "choice", label: "sizes", options: { awg: "wire gauges (AWG)", metric: "metric (IEC 60228)" }, default: "awg" },
      metal: sizeFields.metal,
      stranding: sizeFields.stranding,
      fuse: { kind: "current", symbol: "I_n", label: "fuse ahead of it", min: "0.1 mA", max: 1000, typical: [2, 20], default: null },
      faultLimit: {
        kind: "temperature",
        symbol: "T_f",
        label: "conductor limit in a short fault",
        min: 70,
        max: 350,
        typical: [140, 250],
        default: SHORT_LIMIT,
      },
      ...laidFields,
    },
    output: {
      awg: { kind: "number", symbol: "g", label: "gauge (AWG)" },
      area: { kind: "area", symbol: "A", label: "cross-section", unit: "mm²" },
      decidedBy: { kind: "text", label: "decided by" },
      temperature: { kind: "temperature", symbol: "T_c", label: "conductor temperature" },
      surfaceTemperature: { kind: "temperature", symbol: "T_s", label: "outer surface" },
      rise: { kind: "temperatureDifference", symbol: "dT_c", label: "conductor over its surroundings" },
      surfaceRise: { kind: "temperatureDifference", symbol: "dT_s", label: "surface over its surroundings" },
      resistance: { kind: "resistance", symbol: "R_w", label: "resistance of the path" },
      drop: { kind: "voltage", symbol: "U", label: "voltage lost" },
      dropRatio: { kind: "ratio", symbol: "u", label: "against the supply", unit: "%" },
      ratedCurrent: { kind: "current", symbol: "I_r", label: "current that reaches the rating" },
      fuseCurrent: { kind: "current", symbol: "I_135", label: "current the fuse may let flow" },
      heat: { kind: "power", symbol: "P", label: "heat of the run" },
      candidates: {
        kind: "list",
        label: "sizes looked at",
        of: {
          kind: "group",
          label: "size",
          fields: {
            awg: { kind: "number", label: "gauge (AWG)" },
            area: { kind: "area", label: "cross-section", unit: "mm²" },
            dropRatio: { kind: "ratio", label: "drop", unit: "%" },
            ratedCurrent: { kind: "current", label: "rated current" },
            fails: { kind: "text", label: "fails" },
          },
        },
      },
    },
    example: { current: "4 A", length: "2 m", voltage: "12 V", fuse: "7.5 A" },
    formulae: [
      {
        symbol: "g_x",
        kind: "number",
        meaning: "gauge chosen from the list (0: a metric size)",
        given: (_, out) => out.awg ?? 0,
        source: AWG,
      },
      { symbol: "g", meaning: "gauge", is: "g_x", when: 'equalText(series, "awg")' },
      {
        symbol: "A_w",
        kind: "area",
        meaning: "metric size chosen (0: a gauge)",
        given: (_, out) => (out.awg === null ? out.area : 0),
        source: CLASSES,
      },
      ...metalSteps,
      {
        symbol: "r_n",
        kind: "resistancePerLength",
        meaning: "maximum resistance of the nominal conductor (0: not an IEC class)",
        given: (si, out) => nominalResistance(out.area, si.stranding) ?? 0,
        source: CLASSES,
      },
      {
        symbol: "d_g",
        kind: "length",
        meaning: "diameter of the gauge",
        is: "0.127 mm * 92^((36 - g) / 39)",
        when: "A_w == 0 m^2",
        source: AWG,
      },
      { symbol: "A", meaning: "cross-section of the gauge", is: "pi / 4 * d_g^2", when: "A_w == 0 m^2" },
      { symbol: "A", meaning: "cross-section of the metric size", is: "A_w", when: "A_w > 0 m^2" },
      ...resistanceSteps,
      ...pathSteps,
      ...steadySteps,
      ...ratedSteps,
      { symbol: "R_w", meaning: "resistance of the path, warm", is: "r * n_c * L" },
      { symbol: "U", meaning: "voltage lost", is: "I * R_w" },
      { symbol: "u", meaning: "against the supply", is: "U / U_s" },
      { symbol: "I_135", meaning: "current the fuse may let flow", is: "1.35 * I_n", when: "has_fuse", source: BLADE },
      { symbol: "P", meaning: "heat of the run", is: "I * U" },
    ],
    sources: [...sizeSources, BLADE, SHORT_FAULT, CONVECTION, HEAT_TRANSFER, SKIN],
    check: (si) => [
      ...laidFaults(si),
      ...(si.stranding.startsWith("class") && (si.series !== "metric" || si.metal !== "copper")
        ? [
            inconsistent(
              ["stranding"],
              "'{stranding}' with {series} sizes of {metal}",
              "solid or stranded; the IEC classes go with metric copper",
              { stranding: si.stranding, series: si.series, metal: si.metal },
            ),
          ]
        : []),
    ],
    cautions,
  }),
)
