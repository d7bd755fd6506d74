import type { Area, Current, Length, Resistance, Temperature, Voltage } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { awgSource, type Metal, metals } from "./data.js"

/** Input of {@link voltageDrop}. Give the size as `awg` or as `area`, not both. */
export interface VoltageDropInput {
  /** Current in the run. */
  current: Current
  /** Length one way, from source to load. */
  length: Length
  /** American wire gauge number; 0, −1, −2, −3 stand for 1/0, 2/0, 3/0, 4/0. */
  awg?: number | null
  /** Cross-section of the conductor. */
  area?: Area | null
  /** Conductor metal. */
  metal?: Metal
  /** Conductor temperature, not that of the room. */
  temperature?: Temperature
  /** Conductors in the current path: 2 counts out and back. */
  conductors?: number
  /** Contacts in the path (plugs, switches, screw terminals). */
  contacts?: number
  /** Resistance of one contact. */
  contactResistance?: Resistance
  /** Voltage at the source end, for the drop in per cent. */
  voltage?: Voltage | null
}

/** Result of {@link voltageDrop}. */
export interface VoltageDrop {
  /** Conductor cross-section, m². */
  readonly area: number
  /** Resistance of the wire in the path, Ω. */
  readonly wireResistance: number
  /** Resistance of the contacts in the path, Ω. */
  readonly contactResistance: number
  /** Whole resistance of the path, Ω. */
  readonly resistance: number
  /** Voltage lost between source and load, V. */
  readonly drop: number
  /** Drop as a fraction of the source voltage, where that was given. */
  readonly dropRatio: number | null
  /** Voltage left at the load, V, where the source voltage was given. */
  readonly loadVoltage: number | null
  /** Heat given off by the run, W. */
  readonly heat: number
}

/** Cross-section of an American wire gauge size, m² (ASTM B258). */
export function awgArea(awg: number): number {
  const diameter = 0.127e-3 * 92 ** ((36 - awg) / 39)
  return (Math.PI / 4) * diameter ** 2
}

function solve(si: SiOf<VoltageDropInput>): VoltageDrop {
  const { current, length, awg, metal, temperature, conductors, contacts, voltage } = si
  const area = awg === null ? (si.area as number) : awgArea(awg)
  const { resistivity, coefficient } = metals[metal]
  const wireResistance = (resistivity * (1 + coefficient * (temperature - 20)) * conductors * length) / area
  const contactResistance = contacts * si.contactResistance
  const resistance = wireResistance + contactResistance
  const drop = current * resistance
  return {
    area,
    wireResistance,
    contactResistance,
    resistance,
    drop,
    dropRatio: voltage === null ? null : drop / voltage,
    loadVoltage: voltage === null ? null : voltage - drop,
    heat: current * drop,
  }
}

function cautions(si: SiOf<VoltageDropInput>, out: VoltageDrop): Caution[] {
  const found: Caution[] = []
  if (si.temperature > 70)
    found.push(
      caution(
        "hot-conductor",
        "warning",
        "Many hook-up wire insulations are rated 70 to 105 °C and skin is burnt well below that: check the insulation's rating and keep the wire off the body.",
        "IEC 60227-1, 2007, clause 3.4 (70 °C PVC) and ISO 13732-1, 2006 (burn thresholds)",
      ),
    )
  if (si.awg === null && si.area !== null)
    found.push(
      caution(
        "stranded",
        "note",
        "Computed for solid metal of this area; a flexible stranded conductor of the same nominal area may have 8 to 16 % more resistance.",
        "IEC 60228, 2004, tables 1 and 3 (maximum resistance of classes 1 and 5)",
      ),
    )
  if (out.loadVoltage !== null && out.loadVoltage < 0)
    found.push(
      caution(
        "no-such-current",
        "warning",
        "The drop is larger than the source voltage: the run cannot carry this current.",
        "Kirchhoff's voltage law",
      ),
    )
  return found
}

/**
 * Voltage lost in a run of wire, out and back, contacts included.
 *
 * Formula: R = ρ₂₀·(1 + α·(T − 20 °C))·n·L / A + k·R_c, then U = I·R and P = I²·R, where ρ₂₀ is the
 * metal's resistivity at 20 °C (Ω·m), α its temperature coefficient (1/K), T the conductor temperature
 * (°C, default 20), n the conductors in the path (default 2), L the one-way length (m), A the
 * cross-section (m²; from the gauge number g by d = 0.127 mm · 92^((36 − g)/39)), k the contacts
 * (default 0) and R_c the resistance of each (Ω, default 5 mΩ). Valid for direct current in solid
 * conductors between −50 and 200 °C.
 *
 * Sources: ASTM B258 (2018), clause 5; IEC 60028 (1925), clause 1; IEC 60889 (1987), clause 3.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { voltageDrop } from 'alula/wire'
 * const run = voltageDrop({ current: '4 A', length: '1.2 m', awg: 20, voltage: '12 V' })
 * run.drop // => 0.3190
 * run.dropRatio // => 0.02658
 * ```
 */
export const voltageDrop: Solver<VoltageDropInput, VoltageDrop> = /* @__PURE__ */ solver<VoltageDropInput, VoltageDrop>({
  name: "voltageDrop",
  title: "How much voltage a run of wire loses",
  input: {
    current: { kind: "current", symbol: "I", label: "current", min: 0, max: 1000, typical: [0.5, 15] },
    length: { kind: "length", symbol: "L", label: "length one way", min: 0, max: 1000, typical: [0.1, 5] },
    awg: { kind: "number", symbol: "g", label: "wire gauge (AWG)", whole: true, min: -3, max: 40, typical: [10, 28], default: null },
    area: { kind: "area", symbol: "A_w", label: "cross-section", above: 0, max: "1000 mm2", typical: ["0.1 mm2", "6 mm2"], default: null },
    metal: { kind: "choice", label: "conductor metal", options: { copper: "copper", aluminium: "aluminium" }, default: "copper" },
    temperature: { kind: "temperature", symbol: "T", label: "conductor temperature", min: -50, max: 200, typical: [-10, 70], default: 20 },
    conductors: { kind: "number", symbol: "n", label: "conductors in the path", whole: true, min: 1, max: 2, default: 2 },
    contacts: { kind: "number", symbol: "k", label: "contacts in the path", whole: true, min: 0, max: 1000, typical: [0, 12], default: 0 },
    contactResistance: {
      kind: "resistance",
      symbol: "R_1",
      label: "resistance of one contact",
      min: 0,
      max: 100,
      typical: ["1 mohm", "50 mohm"],
      default: "5 mohm",
    },
    voltage: { kind: "voltage", symbol: "U_s", label: "source voltage", above: 0, max: 1000, typical: [3, 24], default: null },
  },
  output: {
    area: { kind: "area", symbol: "A", label: "cross-section", unit: "mm²" },
    wireResistance: { kind: "resistance", symbol: "R_w", label: "wire resistance" },
    contactResistance: { kind: "resistance", symbol: "R_c", label: "contact resistance" },
    resistance: { kind: "resistance", symbol: "R", label: "path resistance" },
    drop: { kind: "voltage", symbol: "U", label: "voltage drop" },
    dropRatio: { kind: "ratio", symbol: "u", label: "drop against source", unit: "%" },
    loadVoltage: { kind: "voltage", symbol: "U_l", label: "voltage at the load" },
    heat: { kind: "power", symbol: "P", label: "heat in the run" },
  },
  example: { current: "4 A", length: "1.2 m", awg: 20, voltage: "12 V" },
  formulae: [
    {
      symbol: "rho",
      kind: "resistivity",
      meaning: "resistivity of the metal at 20 °C",
      given: (si) => metals[si.metal].resistivity,
      source: "IEC 60028 (copper), IEC 60889 (aluminium)",
    },
    {
      symbol: "alpha",
      kind: "perTemperature",
      meaning: "temperature coefficient at 20 °C",
      given: (si) => metals[si.metal].coefficient,
      source: "IEC 60028 (copper), IEC 60889 (aluminium)",
    },
    {
      symbol: "d",
      kind: "length",
      meaning: "diameter of the gauge",
      is: "0.127 mm * 92^((36 - g) / 39)",
      when: "has_awg",
      source: "ASTM B258, clause 5",
    },
    { symbol: "A", meaning: "cross-section of the gauge", is: "pi / 4 * d^2", when: "has_awg" },
    { symbol: "A", meaning: "cross-section as given", is: "A_w", when: "has_area" },
    { symbol: "R_w", meaning: "resistance of the wire, warm, all conductors", is: "rho * (1 + alpha * (T - 293.15 K)) * n * L / A" },
    { symbol: "R_c", meaning: "resistance of the contacts", is: "k * R_1" },
    { symbol: "R", meaning: "resistance of the path", is: "R_w + R_c" },
    { symbol: "U", meaning: "voltage lost", is: "I * R" },
    { symbol: "u", meaning: "loss against the source", is: "U / U_s", when: "has_voltage" },
    { symbol: "U_l", meaning: "voltage at the load", is: "U_s - U", when: "has_voltage" },
    { symbol: "P", meaning: "heat in the run", is: "I^2 * R" },
  ],
  sources: [
    awgSource,
    { title: "IEC 60028, International standard of resistance for copper", by: "IEC", edition: "1925", where: "clause 1" },
    { title: "IEC 60889, Hard-drawn aluminium wire for overhead line conductors", by: "IEC", edition: "1987", where: "clause 3" },
  ],
  check: ({ awg, area }) => {
    if (awg !== null && area !== null) return [inconsistent(["area"], "both awg and area", "only one of awg and area")]
    if (awg === null && area === null) return [inconsistent(["awg"], "neither awg nor area", "one of awg and area")]
    return []
  },
  solve,
  cautions,
})
