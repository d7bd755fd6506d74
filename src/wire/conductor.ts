import type { Area, Length, Temperature } from "../quantity/index.js"
import {
  type Caution,
  caution,
  type Either,
  type Fields,
  type Issue,
  inconsistent,
  type SiOf,
  type Solver,
  type Source,
  type Step,
  solver,
} from "../solver/index.js"
import { layFactor, type Metal, metals, nominalConductors, type Stranding, strandings } from "./data.js"
import { ALUMINIUM, ALUMINIUM_ENDS, AWG, CLASSES, COPPER, LAY, PVC, TOUCH } from "./sources.js"

/** What every wire is described by. Give the size as `awg` or as `area`, not both. */
export interface ConductorDescription {
  /** American wire gauge number; 0, −1, −2, −3 stand for 1/0, 2/0, 3/0, 4/0. [g; whole −3 to 40; optional] */
  awg?: number | null
  /** Cross-section; the nominal one for the IEC classes. [A_w; 0.0001 to 1000 mm²; optional] */
  area?: Area | null
  /** Conductor metal [copper or aluminium; default copper] */
  material?: Metal
  /** How the conductor is made up. [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid] */
  stranding?: Stranding
}

/** Input of {@link conductor}. */
export interface ConductorInput extends ConductorDescription {
  /** Conductor temperature, not that of the room. [T; −50 to 200 °C; default 20 °C] */
  conductorTemperature?: Temperature
  /** Length of one conductor. [L; 0 to 1000 m; default 1 m] */
  length?: Length
}

/** Result of {@link conductor}. */
export interface Conductor {
  /** Cross-section of metal; nominal for the IEC classes. [A; m²] */
  readonly area: number
  /** Diameter of a solid round wire of that area. [d; m] */
  readonly diameter: number
  /** Resistance per length at 20 °C [r_20; Ω/m] */
  readonly resistancePerLength20: number
  /** Resistance per length at the conductor's temperature. [r; Ω/m] */
  readonly resistancePerLength: number
  /** Resistance of one conductor of the length given. [R; Ω] */
  readonly resistance: number
  /** Metal mass per length [m_l; kg/m] */
  readonly massPerLength: number
  /** Mass of the metal of one conductor. [m_w; kg] */
  readonly mass: number
}

/** Hazards and limits of validity that go with an answer of {@link conductor}. */
export type ConductorCaution = "aluminium-ends" | "hot-conductor" | "stranded"

/** Diameter of an American wire gauge size, m (ASTM B258). */
export function awgDiameter(awg: number): number {
  return 0.127e-3 * 92 ** ((36 - awg) / 39)
}

/** Cross-section of an American wire gauge size, m² (ASTM B258). */
export function awgArea(awg: number): number {
  return (Math.PI / 4) * awgDiameter(awg) ** 2
}

/** Maximum resistance at 20 °C of an IEC class, Ω/m; null for other strandings or no such nominal area. */
export function nominalResistance(area: number, stranding: Stranding): number | null {
  if (stranding === "solid" || stranding === "stranded") return null
  const row = nominalConductors.find((n) => Math.abs(n.area * 1e-6 - area) <= 1e-9 * area)
  return row ? row[stranding] / 1000 : null
}

/** Cross-section of a size, m². */
export function areaOf(si: Pick<SiOf<ConductorDescription>, "awg" | "area">): number {
  return si.awg === null ? (si.area as number) : awgArea(si.awg)
}

/** Resistance per length at 20 °C, Ω/m. */
export function resistance20(si: SiOf<ConductorDescription>): number {
  const area = areaOf(si)
  return nominalResistance(area, si.stranding) ?? (strandFactor(si.stranding) * metals[si.material].resistivity) / area
}

/** Resistance at a temperature over that at 20 °C. */
export function temperatureFactor(metal: Metal, temperature: number): number {
  return 1 + metals[metal].coefficient * (temperature - 20)
}

function strandFactor(stranding: Stranding): number {
  return stranding === "stranded" ? layFactor : 1
}

/** A size is a gauge or an area. */
export const sizeRules = [{ exactlyOne: ["awg", "area"] }] as const satisfies readonly Either[]

/** Faults of a size: IEC classes only at their nominal areas, in copper. */
export function sizeIssues(si: SiOf<ConductorDescription>): Issue[] {
  const { awg, area, material, stranding } = si
  if (stranding === "solid" || stranding === "stranded") return []
  const found: Issue[] = []
  if (material !== "copper") found.push(inconsistent(["material"], "'{material}'", "copper with the IEC classes", { material }))
  if (nominalResistance(areaOf(si), stranding) === null) {
    const expected = "a nominal area of IEC 60228: 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10 or 16 mm²"
    if (awg === null) found.push(inconsistent(["area"], "{area area mm²}", expected, { area: area as number }))
    else found.push(inconsistent(["awg"], "AWG {awg}", expected, { awg }))
  }
  return found
}

/** Field descriptions every wire shares. */
export const sizeFields: Fields<ConductorDescription> = {
  awg: { kind: "number", symbol: "g", label: "wire gauge (AWG)", whole: true, min: -3, max: 40, typical: [10, 28], default: null },
  area: {
    kind: "area",
    symbol: "A_w",
    label: "cross-section",
    min: "0.0001 mm2",
    max: "1000 mm2",
    typical: ["0.1 mm2", "6 mm2"],
    default: null,
  },
  material: { kind: "choice", label: "conductor metal", options: { copper: "copper", aluminium: "aluminium" }, default: "copper" },
  stranding: { kind: "choice", label: "stranding", options: strandings, default: "solid" },
}

/** Constants of copper and of aluminium have a document each. */
const metalSource: Source = { title: "IEC 60028 (copper), IEC 60889 (aluminium)", by: "IEC", verified: "not-seen" }

/** Constants of the metal and of its stranding. */
export const metalSteps: readonly Step<Pick<SiOf<ConductorDescription>, "material" | "stranding">, unknown>[] = [
  {
    symbol: "rho",
    kind: "resistivity",
    meaning: "resistivity of the metal at 20 °C",
    given: (si) => metals[si.material].resistivity,
    source: metalSource,
  },
  {
    symbol: "alpha",
    kind: "perTemperature",
    meaning: "temperature coefficient at 20 °C",
    given: (si) => metals[si.material].coefficient,
    source: metalSource,
  },
  {
    symbol: "k_s",
    kind: "number",
    meaning: "longer by the lay of the strands",
    given: (si) => strandFactor(si.stranding),
    source: LAY,
  },
]

/** Resistance per length at 20 °C from the area A, or off the table. */
export const resistanceSteps: readonly Step<unknown, unknown>[] = [
  { symbol: "r_20", kind: "resistancePerLength", meaning: "resistance per length at 20 °C", is: "k_s * rho / A", when: "r_n == 0 ohm/m" },
  {
    symbol: "r_20",
    kind: "resistancePerLength",
    meaning: "resistance per length at 20 °C, off the table",
    is: "r_n",
    when: "r_n > 0 ohm/m",
  },
]

/** Steps from a size to its area A and its resistance per length r_20. */
export const sizeSteps: readonly Step<SiOf<ConductorDescription>, unknown>[] = [
  ...metalSteps,
  {
    symbol: "r_n",
    kind: "resistancePerLength",
    meaning: "maximum resistance of the nominal conductor (0: not an IEC class)",
    given: (si) => nominalResistance(areaOf(si), si.stranding) ?? 0,
    source: CLASSES,
  },
  {
    symbol: "d_g",
    kind: "length",
    meaning: "diameter of the gauge",
    is: "0.127 mm * 92^((36 - g) / 39)",
    when: "has_awg",
    source: AWG,
  },
  { symbol: "A", kind: "area", meaning: "cross-section of the gauge", is: "pi / 4 * d_g^2", when: "has_awg" },
  { symbol: "A", kind: "area", meaning: "cross-section as given", is: "A_w", when: "has_area" },
  ...resistanceSteps,
]

/** Step from r_20 to r at the temperature T. */
export const warmStep: Step<unknown, unknown> = {
  symbol: "r",
  kind: "resistancePerLength",
  meaning: "resistance per length, warm",
  is: "r_20 * (1 + alpha * (T - 293.15 K))",
}

/** Sources every wire shares. */
export const sizeSources: readonly Source[] = [AWG, COPPER, ALUMINIUM, CLASSES]

/** Cautions that go with any conductor size and temperature. */
export function sizeCautions(
  si: Pick<SiOf<ConductorDescription>, "material">,
  temperature: number,
): Caution<"aluminium-ends" | "hot-conductor">[] {
  const found: Caution<"aluminium-ends" | "hot-conductor">[] = []
  if (temperature > 70)
    found.push(
      caution(
        "hot-conductor",
        "warning",
        "Many hook-up wire insulations are rated 70 to 105 °C and skin is burnt well below that: check the insulation's rating and keep the wire off the body.",
        PVC,
      ),
    )
  if (si.material === "aluminium")
    found.push(
      caution(
        "aluminium-ends",
        "warning",
        "Aluminium needs connectors made for it: under plain screws and crimps it creeps and oxidises, and the joint heats.",
        ALUMINIUM_ENDS,
      ),
    )
  return found
}

/** Voltage from which a bare part is a hazard to a wearer, whose skin is wet with sweat, V (IEC 60598-1, clause 8.2.3). */
const WET_TOUCH = 30

/** A nominal area counted as solid metal. */
export function solidCautions(si: Pick<SiOf<ConductorDescription>, "area" | "stranding">): Caution<"stranded">[] {
  if (si.area === null || si.stranding !== "solid") return []
  return [
    caution(
      "stranded",
      "note",
      "Calculated for solid metal of this area; a flexible stranded conductor of the same nominal area may have 8 to 16 % more resistance: choose stranding 'class5'.",
      CLASSES,
    ),
  ]
}

/** The caution of a voltage too high for bare parts near a sweating wearer, if it is; `path` names it in the input. */
export function touchCaution(path: string, volts: number): Caution<"touch-voltage">[] {
  if (!(volts > WET_TOUCH)) return []
  const text: string = `{${path} voltage} is above 30 V, the limit for bare parts where skin may be wet: a wearer sweats. Insulate every joint and contact, keep to local wiring rules, and have a qualified person build and check it.`
  return [caution("touch-voltage", "warning", text, TOUCH, { [path]: volts })]
}

function solve(si: SiOf<ConductorInput>): Conductor {
  const area = areaOf(si)
  const resistancePerLength20 = resistance20(si)
  const resistancePerLength = resistancePerLength20 * temperatureFactor(si.material, si.conductorTemperature)
  const massPerLength = metals[si.material].density * area
  return {
    area,
    diameter: Math.sqrt((4 * area) / Math.PI),
    resistancePerLength20,
    resistancePerLength,
    resistance: resistancePerLength * si.length,
    massPerLength,
    mass: massPerLength * si.length,
  }
}

/**
 * Area, resistance and weight of one conductor.
 *
 * Formula: d = 0.127 mm · 92^((36 − g)/39) and A = π/4·d² from the gauge number g, or A as given; r₂₀ = k·ρ₂₀/A, or the
 * maximum resistance of the nominal conductor for the IEC classes; r = r₂₀·(1 + α·(T − 20 °C)); R = r·L, where ρ₂₀ is
 * the metal's resistivity at 20 °C, α its temperature coefficient, k = 1.02 for stranded wire (lay), T the conductor
 * temperature and L the length. Mass counts the metal only. Valid for direct current between −50 and 200 °C. IEC 60228
 * corrects temperature with 0.004/K; 0.00393/K is used here (0.4 % apart at 90 °C).
 *
 * **Inputs**
 * - `awg`: wire gauge (AWG) [g; whole −3 to 40; optional]
 * - `area`: cross-section [A_w; 0.0001 to 1000 mm²; optional]
 * - `material`: conductor metal [copper or aluminium; default copper]
 * - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 * - `conductorTemperature`: conductor temperature [T; −50 to 200 °C; default 20 °C]
 * - `length`: length [L; 0 to 1000 m; default 1 m]
 * - exactly one of `awg` and `area`
 *
 * **Results**
 *
 * `area`: cross-section [A; m²]; `diameter`: diameter as a solid wire [d; m]; `resistancePerLength20`: resistance per
 * length at 20 °C [r_20; Ω/m]; `resistancePerLength`: resistance per length, warm [r; Ω/m]; `resistance`: resistance
 * [R; Ω]; `massPerLength`: metal mass per length [m_l; kg/m]; `mass`: metal mass [m_w; kg].
 *
 * **Symbols of the working**
 *
 * rho: resistivity of the metal at 20 °C [Ω m]; alpha: temperature coefficient at 20 °C [1/K]; k_s: longer by the lay
 * of the strands; r_n: maximum resistance of the nominal conductor (0: not an IEC class) [Ω/m]; d_g: diameter of the
 * gauge [m]; density: density of the metal [kg/m³].
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
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { conductor } from 'alula/wire'
 * const wire = conductor({ area: '1.5 mm2', stranding: 'class5', length: '2 m' })
 * wire.resistance // => 0.0266
 * conductor({ awg: 20 }).area // => 5.176e-7
 * ```
 */
export const conductor: Solver<ConductorInput, Conductor, never, ConductorCaution> = /* @__PURE__ */ solver<
  ConductorInput,
  Conductor,
  never,
  ConductorCaution
>("conductor", "Area, resistance and weight of a conductor", solve, () => ({
  input: {
    ...sizeFields,
    conductorTemperature: {
      kind: "temperature",
      symbol: "T",
      label: "conductor temperature",
      min: -50,
      max: 200,
      typical: [-10, 70],
      default: 20,
    },
    length: { kind: "length", symbol: "L", label: "length", min: 0, max: 1000, typical: [0.1, 5], default: 1 },
  },
  output: {
    area: { kind: "area", symbol: "A", label: "cross-section", unit: "mm²" },
    diameter: { kind: "length", symbol: "d", label: "diameter as a solid wire" },
    resistancePerLength20: { kind: "resistancePerLength", symbol: "r_20", label: "resistance per length at 20 °C" },
    resistancePerLength: { kind: "resistancePerLength", symbol: "r", label: "resistance per length, warm" },
    resistance: { kind: "resistance", symbol: "R", label: "resistance" },
    massPerLength: { kind: "linearDensity", symbol: "m_l", label: "metal mass per length" },
    mass: { kind: "mass", symbol: "m_w", label: "metal mass" },
  },
  example: { awg: 20, conductorTemperature: 40, length: "2.5 m" },
  formulae: [
    ...sizeSteps,
    warmStep,
    { symbol: "d", meaning: "diameter of a solid wire of that area", is: "sqrt(4 * A / pi)" },
    { symbol: "R", meaning: "resistance of the length", is: "r * L" },
    {
      symbol: "density",
      kind: "density",
      meaning: "density of the metal",
      given: (si) => metals[si.material].density,
      source: metalSource,
    },
    { symbol: "m_l", meaning: "metal mass per length", is: "density * A" },
    { symbol: "m_w", meaning: "metal mass", is: "m_l * L" },
  ],
  sources: sizeSources,
  either: sizeRules,
  check: sizeIssues,
  cautions: (si) => [...sizeCautions(si, si.conductorTemperature), ...solidCautions(si)],
}))
