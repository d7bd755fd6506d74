import { inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import {
  areaOf,
  type ConductorDescription,
  metalSteps,
  nominalResistance,
  resistance20,
  resistanceSteps,
  sizeFields,
  sizeSources,
  temperatureFactor,
} from "../conductor.js"
import { bladeFuse, nominalConductors } from "../data.js"
import { type LaidWire, laidFaults, laidFields, pathSteps, ratedSteps, startOf, steadySteps } from "../laid.js"
import { AWG, BLADE, CLASSES, CONVECTION, HEAT_TRANSFER, SHORT_FAULT, SKIN } from "../sources.js"
import { BURNS_OFF, guards, judge, largestFuse, shortLimit, shortLimitField } from "../withstand.js"
import { cautions } from "./cautions.js"
import type { ConductorSize, ConductorSizeCaution, ConductorSizeInput, ConductorSizeRefusal, Looked, Si } from "./types.js"

export type { ConductorSize, ConductorSizeCaution, ConductorSizeInput, ConductorSizeRefusal, SizeCandidate } from "./types.js"

/** Gauges offered: the even ones, and 1/0, 2/0, 3/0, 4/0. */
const gauges = [30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3]

function sizesOf(si: Si): SiOf<ConductorDescription>[] {
  const common = { material: si.material, stranding: si.stranding }
  return si.sizeSystem === "awg"
    ? gauges.map((awg) => ({ ...common, awg, area: null }))
    : nominalConductors.map((n) => ({ ...common, awg: null, area: n.area * 1e-6 }))
}

/** Resistance of the whole path with its conductor at a temperature, Ω. */
const pathResistance = (si: Si, wire: LaidWire, temperature: number) =>
  resistance20(wire) * temperatureFactor(si.material, temperature) * si.conductors * si.length

function look(si: Si, size: SiOf<ConductorDescription>): Looked {
  const wire: LaidWire = { ...si, ...size }
  const start = startOf(wire)
  const { most: ampacity, bears, steady: rises } = judge(wire, si.current)
  const resistance = rises === null ? 0 : pathResistance(si, wire, start + rises.conductor)
  const dropShare = rises === null ? null : (si.current * resistance) / si.sourceVoltage
  const guarded = si.fuseRating === null ? null : guards(si.fuseRating, wire, shortLimit(si))
  const fails = [
    dropShare !== null && dropShare <= si.dropLimit ? null : "drop",
    bears ? null : "temperature",
    guarded === null || (guarded.long && guarded.overload) ? null : "fuse",
  ].filter((f) => f !== null)
  return { wire, rises, resistance, awg: size.awg, area: areaOf(size), dropShare, ampacity, fails: fails.join(",") }
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

function solve(si: Si): ConductorSize | NoSolution<ConductorSizeRefusal> {
  const { looked, found } = lookThrough(si)
  const last = looked[looked.length - 1] as Looked
  if (found) return chosen(si, last, looked)
  const outcome = last.dropShare === null ? "burns its insulation" : "keeps its insulation"
  return refuse(
    "no-candidate",
    "Even the thickest size here ({area area mm²}) fails by {by}: it drops {dropShare ratio %}, {outcome} and bears {ampacity current} for good. Use several in parallel with a fuse each, a higher voltage or a shorter run.",
    shortOf(si, last),
    { area: last.area, current: si.current },
    nearestOf(si, last),
    {
      by: last.fails.replaceAll(",", ", "),
      outcome,
      ampacity: last.ampacity,
      dropShare: (si.current * pathResistance(si, last.wire, Math.min(BURNS_OFF, hotOf(last)))) / si.sourceVoltage,
    },
  )
}

/** Conductor temperature of a size, °C; without end where it burns. */
const hotOf = ({ wire, rises }: Looked) => (rises === null ? Number.POSITIVE_INFINITY : startOf(wire) + rises.conductor)

/** By how much the thickest size misses: current first, then the fuse's, in A; then the drop. */
function shortOf(si: Si, last: Looked): number {
  if (last.ampacity < si.current) return si.current - last.ampacity
  if (last.fails.includes("fuse")) return (si.fuseRating as number) - largestFuse(last.wire, shortLimit(si))
  return (last.dropShare as number) - si.dropLimit
}

/** What the thickest size bears, all rules together, tried: current, length and fuse, each named only where it must change. */
function nearestOf(si: Si, last: Looked): Record<string, number> {
  // a billionth less, so that rounding cannot refuse it again
  const below = (value: number) => value * (1 - 1e-9)
  const cooler = last.ampacity < si.current
  const current = cooler ? below(last.ampacity) : si.current
  const warm = last.rises === null || cooler ? si.insulationRating : startOf(last.wire) + last.rises.conductor
  const drop = current * pathResistance(si, last.wire, warm)
  const allowed = si.dropLimit * si.sourceVoltage
  const fuseRating = last.fails.includes("fuse") ? below(largestFuse(last.wire, shortLimit(si))) : si.fuseRating
  const nearest = {
    ...(cooler ? { current } : {}),
    ...(drop > allowed ? { length: below((si.length * allowed) / drop) } : {}),
    ...(fuseRating !== null && fuseRating !== si.fuseRating ? { fuseRating } : {}),
  }
  return lookThrough({ ...si, ...nearest }).found ? nearest : {}
}

function chosen(si: Si, one: Looked, looked: readonly Looked[]): ConductorSize {
  const rises = one.rises as Exclude<Looked["rises"], null>
  const start = startOf(one.wire)
  const before = looked[looked.length - 2]
  const drop = si.current * one.resistance
  return {
    awg: one.awg,
    area: one.area,
    decidedBy: before?.fails.split(",")[0] ?? "none",
    conductorTemperature: start + rises.conductor,
    surfaceTemperature: start + rises.surface,
    conductorRise: rises.conductor,
    surfaceRise: rises.surface,
    resistance: one.resistance,
    drop,
    dropShare: drop / si.sourceVoltage,
    ampacity: one.ampacity,
    sustainedFuseCurrent: si.fuseRating === null ? null : bladeFuse.longMultiple * si.fuseRating,
    heat: si.current * drop,
    candidates: looked.map(({ awg, area, dropShare, ampacity, fails }) => ({ awg, area, dropShare, ampacity, fails })),
  }
}

/**
 * Smallest conductor that meets drop, temperature and fuse together.
 *
 * Formula: from the smallest size up, each at the temperature it reaches (see {@link wireHeating}): drop I·r(T)·n·L ≤
 * u·U_s, rated current I_r ≥ I, and I_r ≥ 1.35·I_fuse, because a blade fuse may carry 135 % of its rating for many
 * minutes; at 2·I_fuse, for which it may take 5 s, the conductor stays at or below its short-time limit, heat loss
 * counted. I is the current, L the one-way length, n the conductors in the path, U_s the supply voltage, u the maximum
 * drop (default: common practice). Gauges are the even ones and 1/0 to 4/0; metric sizes those of IEC 60228. Valid for
 * direct current in still air. The way it is laid and its insulation are as in {@link wireHeating}.
 *
 * **Inputs**
 * - `current`: steady current [I; 1 mA to 1000 A]
 * - `length`: length one way [L; 0 to 1000 m]
 * - `sourceVoltage`: supply voltage [U_s; 10 mV to 1000 V]
 * - `dropLimit`: maximum drop [u_m; 0.01 to 100 %; default 3 %]
 * - `conductors`: conductors in the path [n_c; whole 1 to 2; default 2]
 * - `sizeSystem`: sizes [awg or metric; default awg]
 * - `material`: conductor metal [copper or aluminium; default copper]
 * - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 * - `fuseRating`: fuse rating [I_n; 0.1 mA to 1000 A; optional]
 * - `faultTemperatureLimit`: conductor temperature limit in a short fault [T_f; 70 to 350 °C; default 160 °C]
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
 *
 * **Results**
 *
 * `awg`: gauge (AWG) [g]; `area`: cross-section [A; m²]; `decidedBy`: decided by [text]; `conductorTemperature`:
 * conductor temperature [T_c; °C]; `surfaceTemperature`: outer surface [T_s; °C]; `conductorRise`: temperature rise of
 * the conductor [dT_c; K]; `surfaceRise`: temperature rise of the surface [dT_s; K]; `resistance`: resistance of the
 * path [R_w; Ω]; `drop`: voltage drop [U; V]; `dropShare`: voltage drop over source voltage [u; as a fraction];
 * `ampacity`: ampacity [I_r; A]; `sustainedFuseCurrent`: current the fuse may carry for minutes [I_135; A]; `heat`:
 * heat of the run [P; W]; `candidates`: sizes compared [list].
 *
 * **Symbols of the working**
 *
 * g_x: gauge chosen from the list (0: a metric size); A_w: metric size chosen (0: a gauge) [m²]; rho: resistivity of
 * the metal at 20 °C [Ω m]; alpha: temperature coefficient at 20 °C [1/K]; k_s: longer by the lay of the strands; r_n:
 * maximum resistance of the nominal conductor (0: not an IEC class) [Ω/m]; d_g: diameter of the gauge [m]; r_20:
 * resistance per length at 20 °C [Ω/m]; n: wires that share the outer surface; inAir: 1 in still air, 0 under padding;
 * T_0: surroundings: the air [°C]; d: conductor diameter [m]; D_w: over the insulation [m]; D: outer diameter of one
 * wire [m]; R_i: through one metre of insulation [K/W]; R_b: no bundle around it [K/W]; z: depth of the axis, the
 * surface film as more padding [m]; T: the conductor's temperature [°C]; r: resistance per length, warm [Ω/m]; P_m:
 * heat of one metre [W]; T_m: film temperature [°C]; k_a: conductivity of air [W/(m·K)]; nu: kinematic viscosity of
 * air [m²/s]; Ra: Rayleigh number; h: convection and radiation [W/(m²·K)]; dT_r: rise at the rating [K]; P_r: heat of
 * one metre at that current [W]; dT_o: surface over the surroundings then [K]; h_o: surface coefficient then, by the
 * same formulae [W/(m²·K)].
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
 * - ISO: ISO 8820-3, Road vehicles, Fuse-links with tabs (blade type), 2015, time-current limits, types C and F (110 %
 *   for 100 h; 135 % for 0.75 s to 600 s; 200 % for 0.15 s to 5 s) (not verified against the document)
 * - IEC: IEC 60364-4-43, Protection against overcurrent, 2008, clause 434.5.2 and table 43A (no heat lost, up to 5 s;
 *   160 °C for PVC) (not verified against the document)
 * - S. W. Churchill, H. H. S. Chu: Correlating equations for laminar and turbulent free convection from a horizontal
 *   cylinder, Int. J. Heat Mass Transfer 18, 1975, page 1049 (not verified against the document)
 * - F. P. Incropera et al.: Fundamentals of Heat and Mass Transfer, 6th, 2007, tables 4.1 (cylinder midway between
 *   planes, half of it) and A.4 (air) (not verified against the document)
 * - ISO: ISO 7730, Ergonomics of the thermal environment: predicted mean vote, 2005, equation 1 (skin temperature of a
 *   person at rest, 35.7 °C less 0.028 K per W/m² of heat made) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `no-candidate` where even the thickest fails, naming the current, length and fuse it would bear
 * @example
 * ```ts
 * import { conductorSize } from 'alula/wire'
 * const wire = conductorSize({ current: '4 A', length: '2 m', sourceVoltage: '12 V', fuseRating: '7.5 A' })
 * wire.awg // => 18
 * wire.decidedBy // => 'drop'
 * ```
 */
export const conductorSize: Solver<ConductorSizeInput, ConductorSize, ConductorSizeRefusal, ConductorSizeCaution> = /* @__PURE__ */ solver<
  ConductorSizeInput,
  ConductorSize,
  ConductorSizeRefusal,
  ConductorSizeCaution
>("conductorSize", "Smallest conductor for drop, temperature and fuse", solve, () => ({
  input: {
    current: { kind: "current", symbol: "I", label: "steady current", min: "1 mA", max: 1000, typical: [0.5, 15] },
    length: { kind: "length", symbol: "L", label: "length one way", min: 0, max: 1000, typical: [0.2, 5] },
    sourceVoltage: { kind: "voltage", symbol: "U_s", label: "supply voltage", min: "10 mV", max: 1000, typical: [5, 24] },
    dropLimit: {
      kind: "ratio",
      symbol: "u_m",
      label: "maximum drop",
      min: "0.01 %",
      max: 1,
      typical: ["1 %", "10 %"],
      default: "3 %",
    },
    conductors: { kind: "number", symbol: "n_c", label: "conductors in the path", whole: true, min: 1, max: 2, default: 2 },
    sizeSystem: { kind: "choice", label: "sizes", options: { awg: "wire gauges (AWG)", metric: "metric (IEC 60228)" }, default: "awg" },
    material: sizeFields.material,
    stranding: sizeFields.stranding,
    fuseRating: { kind: "current", symbol: "I_n", label: "fuse rating", min: "0.1 mA", max: 1000, typical: [2, 20], default: null },
    faultTemperatureLimit: shortLimitField,
    ...laidFields,
  },
  output: {
    awg: { kind: "number", symbol: "g", label: "gauge (AWG)" },
    area: { kind: "area", symbol: "A", label: "cross-section", unit: "mm²" },
    decidedBy: { kind: "text", label: "decided by" },
    conductorTemperature: { kind: "temperature", symbol: "T_c", label: "conductor temperature" },
    surfaceTemperature: { kind: "temperature", symbol: "T_s", label: "outer surface" },
    conductorRise: { kind: "temperatureDifference", symbol: "dT_c", label: "temperature rise of the conductor" },
    surfaceRise: { kind: "temperatureDifference", symbol: "dT_s", label: "temperature rise of the surface" },
    resistance: { kind: "resistance", symbol: "R_w", label: "resistance of the path" },
    drop: { kind: "voltage", symbol: "U", label: "voltage drop" },
    dropShare: { kind: "ratio", symbol: "u", label: "voltage drop over source voltage", unit: "%" },
    ampacity: { kind: "current", symbol: "I_r", label: "ampacity" },
    sustainedFuseCurrent: { kind: "current", symbol: "I_135", label: "current the fuse may carry for minutes" },
    heat: { kind: "power", symbol: "P", label: "heat of the run" },
    candidates: {
      kind: "list",
      label: "sizes compared",
      of: {
        kind: "group",
        label: "size",
        fields: {
          awg: { kind: "number", label: "gauge (AWG)" },
          area: { kind: "area", label: "cross-section", unit: "mm²" },
          dropShare: { kind: "ratio", label: "drop", unit: "%" },
          ampacity: { kind: "current", label: "rated current" },
          fails: { kind: "text", label: "fails" },
        },
      },
    },
  },
  example: { current: "4 A", length: "2 m", sourceVoltage: "12 V", fuseRating: "7.5 A" },
  formulae: [
    {
      symbol: "g_x",
      kind: "number",
      meaning: "gauge chosen from the list (0: a metric size)",
      given: (_, out) => out.awg ?? 0,
      source: AWG,
    },
    { symbol: "g", meaning: "gauge", is: "g_x", when: 'equalText(sizeSystem, "awg")' },
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
    { symbol: "u", meaning: "voltage drop over supply voltage", is: "U / U_s" },
    { symbol: "I_135", meaning: "current the fuse may let flow", is: "1.35 * I_n", when: "has_fuseRating", source: BLADE },
    { symbol: "P", meaning: "heat of the run", is: "I * U" },
  ],
  sources: [...sizeSources, BLADE, SHORT_FAULT, CONVECTION, HEAT_TRANSFER, SKIN],
  check: (si) => [
    ...laidFaults(si),
    ...(si.stranding.startsWith("class") && (si.sizeSystem !== "metric" || si.material !== "copper")
      ? [
          inconsistent(
            ["stranding"],
            "'{stranding}' with {sizeSystem} sizes of {material}",
            "solid or stranded; the IEC classes go with metric copper",
            { stranding: si.stranding, sizeSystem: si.sizeSystem, material: si.material },
          ),
        ]
      : []),
  ],
  cautions,
}))
