import type { Current, Length, Resistance, Temperature, Voltage } from "../quantity/index.js"
import { type Caution, caution, type SiOf, type Solver, solver } from "../solver/index.js"
import {
  areaOf,
  type ConductorSize,
  resistance20,
  sizeCautions,
  sizeFields,
  sizeIssues,
  sizeSources,
  sizeSteps,
  temperatureFactor,
  touchCaution,
  warmStep,
} from "./conductor.js"
import { wireCautions } from "./overload.js"
import { KIRCHHOFF } from "./sources.js"
import { withstandSources } from "./withstand.js"

/** Input of {@link voltageDrop}. Give the size as `awg` or as `area`, not both. */
export interface VoltageDropInput extends ConductorSize {
  /** Current in the run. */
  current: Current
  /** Length one way, from source to load. */
  length: Length
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

function solve(si: SiOf<VoltageDropInput>): VoltageDrop {
  const { current, length, conductors, contacts, voltage } = si
  const wireResistance = resistance20(si) * temperatureFactor(si.metal, si.temperature) * conductors * length
  const contactResistance = contacts * si.contactResistance
  const resistance = wireResistance + contactResistance
  const drop = current * resistance
  return {
    area: areaOf(si),
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
  const found = sizeCautions(si, si.temperature)
  if (out.loadVoltage !== null && out.loadVoltage < 0)
    found.push(
      caution(
        "no-such-current",
        "warning",
        "The drop of {drop voltage} is larger than the source's {given.voltage voltage}: the run cannot carry this current.",
        KIRCHHOFF,
        { drop: out.drop, "given.voltage": si.voltage as number },
      ),
    )
  return [...found, ...wireCautions(si, "given.current", si.current), ...touchCaution("given.voltage", si.voltage ?? 0)]
}

/**
 * Voltage lost in a run of wire, out and back, contacts included.
 *
 * Formula: R = r·n·L + k·R_c with r = r₂₀·(1 + α·(T − 20 °C)), then U = I·R and P = I²·R, where r₂₀ is
 * the conductor's resistance per length at 20 °C (Ω/m; see {@link conductor}), α its metal's temperature
 * coefficient (1/K), T the conductor temperature (°C, default 20), n the conductors in the path (default
 * 2: out and back), L the one-way length (m), k the contacts (default 0) and R_c the resistance of each
 * (Ω, default 5 mΩ). Valid for direct current between −50 and 200 °C.
 *
 * Sources: ASTM B258 (2018), clause 5; IEC 60028 (1925), clause 1; IEC 60889 (1987), clause 3;
 * IEC 60228 (2004), tables 2 and 3. Whether the wire bears the current for good is asked of the same rule as in
 * {@link wireHeating}, alone in still air at 25 °C with 80 °C insulation: a run in a bundle or under padding bears less.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { voltageDrop } from 'alula/wire'
 * const run = voltageDrop({ current: '4 A', length: '1.2 m', awg: 20, voltage: '12 V' })
 * run.drop // => 0.3198
 * run.dropRatio // => 0.02665
 * ```
 */
export const voltageDrop: Solver<VoltageDropInput, VoltageDrop> = /* @__PURE__ */ solver<VoltageDropInput, VoltageDrop>(
  "voltageDrop",
  "How much voltage a run of wire loses",
  solve,
  () => ({
    input: {
      current: { kind: "current", symbol: "I", label: "current", min: 0, max: 1000, typical: [0.5, 15] },
      length: { kind: "length", symbol: "L", label: "length one way", min: 0, max: 1000, typical: [0.1, 5] },
      ...sizeFields,
      temperature: {
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
      voltage: { kind: "voltage", symbol: "U_s", label: "source voltage", min: "10 mV", max: 1000, typical: [3, 24], default: null },
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
      ...sizeSteps,
      warmStep,
      { symbol: "R_w", meaning: "resistance of the wire, warm, all conductors", is: "r * n * L" },
      { symbol: "R_c", meaning: "resistance of the contacts", is: "k * R_1" },
      { symbol: "R", meaning: "resistance of the path", is: "R_w + R_c" },
      { symbol: "U", meaning: "voltage lost", is: "I * R" },
      { symbol: "u", meaning: "loss against the source", is: "U / U_s", when: "has_voltage" },
      { symbol: "U_l", meaning: "voltage at the load", is: "U_s - U", when: "has_voltage" },
      { symbol: "P", meaning: "heat in the run", is: "I^2 * R" },
    ],
    sources: [...sizeSources, ...withstandSources],
    check: sizeIssues,
    cautions,
  }),
)
