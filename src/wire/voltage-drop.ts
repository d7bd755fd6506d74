import type { Current, Length, Resistance, Temperature, Voltage } from "../quantity/index.js"
import { type Caution, caution, type SiOf, type Solver, solver } from "../solver/index.js"
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
  solidCautions,
  temperatureFactor,
  touchCaution,
  warmStep,
} from "./conductor.js"
import { wireCautions } from "./overload.js"
import { KIRCHHOFF } from "./sources.js"
import { withstandSources } from "./withstand.js"

/** Input of {@link voltageDrop}. Give the size as `awg` or as `area`, not both. */
export interface VoltageDropInput extends ConductorDescription {
  /** Current in the run. [I; 0 to 1000 A] */
  current: Current
  /** Length one way, from source to load. [L; 0 to 1000 m] */
  length: Length
  /** Conductor temperature, not that of the room. [T; −50 to 200 °C; default 20 °C] */
  conductorTemperature?: Temperature
  /** Conductors in the current path: 2 counts out and back. [n; whole 1 to 2; default 2] */
  conductors?: number
  /** Contacts in the path (plugs, switches, screw terminals). [k; whole 0 to 1000; default 0] */
  contacts?: number
  /** Resistance of one contact [R_1; 0 to 100 Ω; default 5 mΩ] */
  contactResistance?: Resistance
  /** Voltage at the source end, for the drop in per cent. [U_s; 10 mV to 1000 V; optional] */
  sourceVoltage?: Voltage | null
}

/** Result of {@link voltageDrop}. */
export interface VoltageDrop {
  /** Conductor cross-section. [A; m²] */
  readonly area: number
  /** Resistance of the wire in the path. [R_w; Ω] */
  readonly wireResistance: number
  /** Resistance of the contacts in the path. [R_c; Ω] */
  readonly contactResistance: number
  /** Whole resistance of the path. [R; Ω] */
  readonly resistance: number
  /** Voltage lost between source and load. [U; V] */
  readonly drop: number
  /** Drop as a fraction of the source voltage, where that was given. [u; as a fraction] */
  readonly dropShare: number | null
  /** Voltage left at the load, where the source voltage was given. [U_l; V] */
  readonly loadVoltage: number | null
  /** Heat given off by the run. [P; W] */
  readonly heat: number
}

/** Hazards and limits of validity that go with an answer of {@link voltageDrop}. */
export type VoltageDropCaution =
  | "aluminium-ends"
  | "burns"
  | "fumes"
  | "hot-conductor"
  | "insufficient-current"
  | "stranded"
  | "touch-voltage"
  | "wire-burns"
  | "wire-overloaded"

function solve(si: SiOf<VoltageDropInput>): VoltageDrop {
  const { current, length, conductors, contacts, sourceVoltage } = si
  const wireResistance = resistance20(si) * temperatureFactor(si.material, si.conductorTemperature) * conductors * length
  const contactResistance = contacts * si.contactResistance
  const resistance = wireResistance + contactResistance
  const drop = current * resistance
  return {
    area: areaOf(si),
    wireResistance,
    contactResistance,
    resistance,
    drop,
    dropShare: sourceVoltage === null ? null : drop / sourceVoltage,
    loadVoltage: sourceVoltage === null ? null : sourceVoltage - drop,
    heat: current * drop,
  }
}

function cautions(si: SiOf<VoltageDropInput>, out: VoltageDrop): Caution<VoltageDropCaution>[] {
  const found: Caution<VoltageDropCaution>[] = [...sizeCautions(si, si.conductorTemperature), ...solidCautions(si)]
  if (out.loadVoltage !== null && out.loadVoltage < 0)
    found.push(
      caution(
        "insufficient-current",
        "warning",
        "The drop of {drop voltage} is larger than the source's {given.sourceVoltage voltage}: the run cannot carry this current.",
        KIRCHHOFF,
        { drop: out.drop, "given.sourceVoltage": si.sourceVoltage as number },
      ),
    )
  return [...found, ...wireCautions(si, "given.current", si.current), ...touchCaution("given.sourceVoltage", si.sourceVoltage ?? 0)]
}

/**
 * Voltage lost in a run of wire, out and back, contacts included.
 *
 * Formula: R = r·n·L + k·R_c with r = r₂₀·(1 + α·(T − 20 °C)), then U = I·R and P = I²·R, where r₂₀ is the conductor's
 * resistance per length at 20 °C (Ω/m; see {@link conductor}), α its metal's temperature coefficient, T the conductor
 * temperature, n the conductors in the path, L the one-way length, k the contacts and R_c the resistance of each. Valid
 * for direct current between −50 and 200 °C.
 *
 * Whether the wire bears the current for good, and skin its surface, is asked of the same rule as in {@link wireHeating}, alone
 * in still air at 25 °C with 80 °C insulation: a run in a bundle or under padding bears less.
 *
 * **Inputs**
 * - `current`: current [I; 0 to 1000 A]
 * - `length`: length one way [L; 0 to 1000 m]
 * - `awg`: wire gauge (AWG) [g; whole −3 to 40; optional]
 * - `area`: cross-section [A_w; 0.0001 to 1000 mm²; optional]
 * - `material`: conductor metal [copper or aluminium; default copper]
 * - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 * - `conductorTemperature`: conductor temperature [T; −50 to 200 °C; default 20 °C]
 * - `conductors`: conductors in the path [n; whole 1 to 2; default 2]
 * - `contacts`: contacts in the path [k; whole 0 to 1000; default 0]
 * - `contactResistance`: resistance of one contact [R_1; 0 to 100 Ω; default 5 mΩ]
 * - `sourceVoltage`: source voltage [U_s; 10 mV to 1000 V; optional]
 * - exactly one of `awg` and `area`
 *
 * **Results**
 *
 * `area`: cross-section [A; m²]; `wireResistance`: wire resistance [R_w; Ω]; `contactResistance`: contact resistance
 * [R_c; Ω]; `resistance`: path resistance [R; Ω]; `drop`: voltage drop [U; V]; `dropShare`: relative drop [u; as a
 * fraction]; `loadVoltage`: voltage at the load [U_l; V]; `heat`: heat in the run [P; W].
 *
 * **Symbols of the working**
 *
 * rho: resistivity of the metal at 20 °C [Ω m]; alpha: temperature coefficient at 20 °C [1/K]; k_s: longer by the lay
 * of the strands; r_n: maximum resistance of the nominal conductor (0: not an IEC class) [Ω/m]; d_g: diameter of the
 * gauge [m]; r_20: resistance per length at 20 °C [Ω/m]; r: resistance per length, warm [Ω/m].
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
 * - IEC: IEC 60364-4-43, Protection against overcurrent, 2008, clause 434.5.2 and table 43A (no heat lost, up to 5 s;
 *   160 °C for PVC) (not verified against the document)
 * - IEC: IEC 60364-5-54, Earthing arrangements and protective conductors, 2011, Annex A, table A.54.1 (heat capacity,
 *   β; K = 226 copper, 148 aluminium)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { voltageDrop } from 'alula/wire'
 * const run = voltageDrop({ current: '4 A', length: '1.2 m', awg: 20, sourceVoltage: '12 V' })
 * run.drop // => 0.3198
 * run.dropShare // => 0.02665
 * ```
 */
export const voltageDrop: Solver<VoltageDropInput, VoltageDrop, never, VoltageDropCaution> = /* @__PURE__ */ solver<
  VoltageDropInput,
  VoltageDrop,
  never,
  VoltageDropCaution
>("voltageDrop", "How much voltage a run of wire loses", solve, () => ({
  input: {
    current: { kind: "current", symbol: "I", label: "current", min: 0, max: 1000, typical: [0.5, 15] },
    length: { kind: "length", symbol: "L", label: "length one way", min: 0, max: 1000, typical: [0.1, 5] },
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
    conductors: { kind: "number", symbol: "n", label: "conductors in the path", whole: true, min: 1, max: 2, default: 2 },
    contacts: {
      kind: "number",
      symbol: "k",
      label: "contacts in the path",
      whole: true,
      min: 0,
      max: 1000,
      typical: [0, 12],
      default: 0,
    },
    contactResistance: {
      kind: "resistance",
      symbol: "R_1",
      label: "resistance of one contact",
      min: 0,
      max: 100,
      typical: ["1 mohm", "50 mohm"],
      default: "5 mohm",
    },
    sourceVoltage: { kind: "voltage", symbol: "U_s", label: "source voltage", min: "10 mV", max: 1000, typical: [3, 24], default: null },
  },
  output: {
    area: { kind: "area", symbol: "A", label: "cross-section", unit: "mm²" },
    wireResistance: { kind: "resistance", symbol: "R_w", label: "wire resistance" },
    contactResistance: { kind: "resistance", symbol: "R_c", label: "contact resistance" },
    resistance: { kind: "resistance", symbol: "R", label: "path resistance" },
    drop: { kind: "voltage", symbol: "U", label: "voltage drop" },
    dropShare: { kind: "ratio", symbol: "u", label: "relative drop", unit: "%" },
    loadVoltage: { kind: "voltage", symbol: "U_l", label: "voltage at the load" },
    heat: { kind: "power", symbol: "P", label: "heat in the run" },
  },
  example: { current: "4 A", length: "1.2 m", awg: 20, sourceVoltage: "12 V" },
  formulae: [
    ...sizeSteps,
    warmStep,
    { symbol: "R_w", meaning: "resistance of the wire, warm, all conductors", is: "r * n * L" },
    { symbol: "R_c", meaning: "resistance of the contacts", is: "k * R_1" },
    { symbol: "R", meaning: "resistance of the path", is: "R_w + R_c" },
    { symbol: "U", meaning: "voltage lost", is: "I * R" },
    { symbol: "u", meaning: "voltage drop over source voltage", is: "U / U_s", when: "has_sourceVoltage" },
    { symbol: "U_l", meaning: "voltage at the load", is: "U_s - U", when: "has_sourceVoltage" },
    { symbol: "P", meaning: "heat in the run", is: "I^2 * R" },
  ],
  sources: [...sizeSources, ...withstandSources],
  either: sizeRules,
  check: sizeIssues,
  cautions,
}))
