import { type Caution, caution, commonPractice, type Issue, inconsistent, type Solver, solver } from "../../solver/index.js"
import { areaOf, sizeFields, sizeIssues, sizeSources, touchCaution } from "../conductor.js"
import { bundledCurrent } from "../limits.js"
import { wireCautions } from "../overload.js"
import { CIRCULAR_MILS, DISTRIBUTOR, FUSE_PLACE, RAILROADS } from "../sources.js"
import { solve } from "./kernel.js"
import {
  type LedRun,
  type LedRunCaution,
  type LedRunInput,
  type LedRunRefusal,
  type LedTrace,
  type Run,
  singleResistance,
  wayDown,
} from "./line.js"
import type { Si } from "./types.js"

/** Drop up to which it hardly matters how the lights draw, of the feed. */
const NEAR_EVEN = 0.05

function cautions(si: Si, out: LedRun): Caution<LedRunCaution>[] {
  const found: Caution<LedRunCaution>[] = []
  const highest = Math.max(...si.feeds.map((f) => f.sourceVoltage))
  if (out.maxDrop > NEAR_EVEN * highest)
    found.push(
      caution(
        "constant-current",
        "note",
        "Lights are taken to draw the same current at any voltage, though they lose up to {maxDrop voltage}: this errs to the safe side, as strips with resistors draw less where they dim.",
        commonPractice,
        { maxDrop: out.maxDrop },
      ),
    )
  if (out.dimmed.length > 0)
    found.push(
      caution(
        "dim",
        "caution",
        "{dimmedShare ratio %} of the run is below {given.dimVoltage voltage}, first from {dimmed.0.from length} to {dimmed.0.to length}: feed it at both ends or inject in the middle of that stretch; feeding both ends of one even run quarters the drop.",
        DISTRIBUTOR,
        {
          dimmedShare: out.dimmedShare as number,
          "given.dimVoltage": si.dimVoltage as number,
          "dimmed.0.from": (out.dimmed[0] as LedRun["dimmed"][number]).from,
          "dimmed.0.to": (out.dimmed[0] as LedRun["dimmed"][number]).to,
        },
      ),
    )
  const back = Math.min(...out.feeds.map((f) => f.current))
  if (back < -1e-9)
    found.push(
      caution(
        "source-fed-back",
        "warning",
        "The run feeds {fedBack current} back into its feed at {position length}: join feeds of one supply only, or separate the positive conductor between supplies and join the returns.",
        commonPractice,
        { fedBack: -back, position: (out.feeds.find((f) => f.current === back) as LedRun["feeds"][number]).position },
      ),
    )
  if (si.feeds.length > 1)
    found.push(
      caution(
        "fuse-each-feed",
        "warning",
        "Each feed can drive the whole run's fault current: fuse every feed at its source for its own wire.",
        FUSE_PLACE,
      ),
    )
  if (si.trackResistance === null) {
    const burning = wireCautions(si, "maxCurrent", out.maxCurrent)
    found.push(...burning)
    if (burning.every((c) => c.code === "burns") && out.maxCurrent > bundledCurrent(areaOf(si)))
      found.push(
        caution(
          "thin-wire",
          "caution",
          "The run carries {maxCurrent current}, more than 700 circular mils per ampere allow ({bundled current}): check its temperature with wireHeating.",
          CIRCULAR_MILS,
          { maxCurrent: out.maxCurrent, bundled: bundledCurrent(areaOf(si)) },
        ),
      )
  }
  return [...found, ...touchCaution("highest", highest)]
}

function check(si: Si): Issue[] {
  const found: Issue[] = []
  if (si.trackResistance === null) found.push(...sizeIssues(si))
  si.feeds.forEach(({ position }, i) => {
    if (position > si.length)
      found.push(
        inconsistent(["feeds", i, "position"], "{position length m}", "at most the run's {length length m}", {
          position,
          length: si.length,
        }),
      )
    if (si.feeds.findIndex((f) => f.position === position) < i)
      found.push(inconsistent(["feeds", i, "position"], "{position length m} twice", "a place of its own", { position }))
  })
  return found
}

/**
 * Where a run of lights dims: fed at one end, at both, or at points along it.
 *
 * Formula: with the loop resistance r = 2·r₁ (both conductors) and the load spread as w = I/L, the voltage obeys V″ =
 * r·w between feeds; each feed gives I_f = (E − V)/R. Fed at one end the far end loses I·R/2, fed at both the middle
 * loses I·R/8 (R = r·L). With n lights in equal sections the sums are taken light by light: the far end of one feed
 * loses (1 + 1/n) times as much. L is the length, I the current of all lights, r₁ the resistance of one conductor (Ω/m;
 * by size or as `trackResistance`, at 20 °C, warmed to T), E and R the voltage and resistance of each feed. Valid for lights of
 * constant current, both conductors alike, each feeder out and back alike.
 *
 * **Inputs**
 * - `length`: length of the run [L; 1 mm to 1000 m]
 * - `current`: current of all lights [I; 0.1 mA to 1000 A]
 * - `lightCount`: lights, each at its section's end [n; whole 1 to 5000; optional]
 * - `trackResistance`: resistance per length of one track [r_1; 0.001 mΩ/m to 1000 Ω/m; optional]
 * - `awg`: wire gauge (AWG) [g; whole −3 to 40; optional]
 * - `area`: cross-section [A_w; 0.0001 to 1000 mm²; optional]
 * - `material`: conductor metal [copper or aluminium; default copper]
 * - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 * - `conductorTemperature`: conductor temperature [T; −50 to 200 °C; default 20 °C]
 * - `feeds`: feeds [list of 1 to 50]
 *   - `position`: distance from the start [x_f; 0 to 1000 m]
 *   - `sourceVoltage`: voltage of its source [E_f; 10 mV to 1000 V]
 *   - `feederResistance`: feeder resistance, out and back [R_f; 0 to 100 Ω; default 0]
 * - `dimVoltage`: dim voltage [V_d; 10 mV to 1000 V; optional]
 * - exactly one of `awg`, `area` and `trackResistance`
 *
 * **Results**
 *
 * `minVoltage`: minimum voltage at a light [V_low; V]; `minVoltagePosition`: where it is, from the start [x_low; m];
 * `maxDrop`: maximum voltage drop from the highest feed [U; V]; `loopResistance`: loop resistance per length [r_l;
 * Ω/m]; `feeds`: feeds [list]; `maxCurrent`: maximum current in the run [I_max; A]; `loadPower`: power of the lights
 * [P_l; W]; `runHeat`: heat in the run [P_r; W]; `feederHeat`: heat in the feeders [P_f; W]; `profile`: voltage along
 * the run [list]; `dimmed`: dimmed stretches [list]; `dimmedShare`: dimmed share of the run [d; as a fraction].
 *
 * **Symbols of the working**
 *
 * r_s: one conductor, warm [Ω/m]; spread: 1 for an even load, 0 light by light; E_o: voltages of the feeds in order
 * along the run [V]; R_o: and their resistances [Ω]; a_s: current at the start of each span [A]; l_s: length of each
 * span [m]; s_w: direction of each span on the way to the lowest light; a_w: current at the start of each [A]; l_w:
 * length of each [m]; l_d: lengths of the dimmed stretches [m].
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
 * - V. K. Mehta, R. Mehta: Principles of Power System, chapter 13, D.C. distribution (uniformly loaded distributor)
 *   (not verified against the document)
 * - L. Bell: Power Distribution for Electric Railroads, 1897, Fig. 6 and text
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-voltage` where the run would lose all its voltage
 * @example
 * ```ts
 * import { ledRun } from 'alula/wire'
 * const string = { length: '4 m', current: '2.4 A', lightCount: 48, awg: 22, dimVoltage: '4.5 V' } as const
 * const one = ledRun({ ...string, feeds: [{ position: 0, sourceVoltage: '5 V' }] })
 * one.minVoltage // => 4.481
 * const both = ledRun({ ...string, feeds: [{ position: 0, sourceVoltage: '5 V' }, { position: '4 m', sourceVoltage: '5 V' }] })
 * both.minVoltage // => 4.873
 * ```
 */
export const ledRun: Solver<LedRunInput, LedRun, LedRunRefusal, LedRunCaution> = /* @__PURE__ */ solver<
  LedRunInput,
  LedRun,
  LedRunRefusal,
  LedRunCaution,
  LedTrace
>("ledRun", "Where a run of lights dims", solve, () => ({
  input: {
    length: { kind: "length", symbol: "L", label: "length of the run", min: "1 mm", max: 1000, typical: [0.5, 10] },
    current: { kind: "current", symbol: "I", label: "current of all lights", min: "0.1 mA", max: 1000, typical: [0.2, 5] },
    lightCount: {
      kind: "number",
      symbol: "n",
      label: "lights, each at its section's end",
      whole: true,
      min: 1,
      max: 5000,
      typical: [5, 60],
      default: null,
    },
    trackResistance: {
      kind: "resistancePerLength",
      symbol: "r_1",
      label: "resistance per length of one track",
      min: 1e-6,
      max: 1000,
      typical: [0.02, 0.5],
      default: null,
    },
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
    feeds: {
      kind: "list",
      label: "feeds",
      min: 1,
      max: 50,
      of: {
        kind: "group",
        label: "feed",
        fields: {
          position: { kind: "length", symbol: "x_f", label: "distance from the start", min: 0, max: 1000, typical: [0, 0.5] },
          sourceVoltage: { kind: "voltage", symbol: "E_f", label: "voltage of its source", min: "10 mV", max: 1000, typical: [4.8, 13] },
          feederResistance: {
            kind: "resistance",
            symbol: "R_f",
            label: "feeder resistance, out and back",
            min: 0,
            max: 100,
            typical: [0, 0.3],
            default: 0,
          },
        },
      },
    },
    dimVoltage: {
      kind: "voltage",
      symbol: "V_d",
      label: "dim voltage",
      min: "10 mV",
      max: 1000,
      typical: [3, 11],
      default: null,
    },
  },
  output: {
    minVoltage: { kind: "voltage", symbol: "V_low", label: "minimum voltage at a light" },
    minVoltagePosition: { kind: "length", symbol: "x_low", label: "where it is, from the start" },
    maxDrop: { kind: "voltage", symbol: "U", label: "maximum voltage drop from the highest feed" },
    loopResistance: { kind: "resistancePerLength", symbol: "r_l", label: "loop resistance per length" },
    feeds: {
      kind: "list",
      label: "feeds",
      of: {
        kind: "group",
        label: "feed",
        fields: {
          position: { kind: "length", label: "distance from the start" },
          current: { kind: "current", symbol: "I_f", label: "current" },
          voltage: { kind: "voltage", label: "voltage at the run" },
        },
      },
    },
    maxCurrent: { kind: "current", symbol: "I_max", label: "maximum current in the run" },
    loadPower: { kind: "power", symbol: "P_l", label: "power of the lights" },
    runHeat: { kind: "power", symbol: "P_r", label: "heat in the run" },
    feederHeat: { kind: "power", symbol: "P_f", label: "heat in the feeders" },
    profile: {
      kind: "list",
      label: "voltage along the run",
      of: {
        kind: "group",
        label: "place",
        fields: { position: { kind: "length", label: "distance from the start" }, voltage: { kind: "voltage", label: "voltage" } },
      },
    },
    dimmed: {
      kind: "list",
      label: "dimmed stretches",
      of: { kind: "group", label: "stretch", fields: { from: { kind: "length", label: "from" }, to: { kind: "length", label: "to" } } },
    },
    dimmedShare: { kind: "ratio", symbol: "d", label: "dimmed share of the run", unit: "%" },
  },
  example: {
    length: "4 m",
    current: "2.4 A",
    awg: 22,
    feeds: [{ position: 0, sourceVoltage: "5 V", feederResistance: "40 mohm" }],
    dimVoltage: "4.5 V",
  },
  formulae: [
    { symbol: "r_s", kind: "resistancePerLength", meaning: "one conductor, warm", given: singleResistance },
    { symbol: "r_l", meaning: "both conductors", is: "2 * r_s" },
    {
      symbol: "spread",
      kind: "number",
      meaning: "1 for an even load, 0 light by light",
      given: (si) => (si.lightCount === null ? 1 : 0),
    },
    {
      symbol: "E_o",
      kind: "voltage",
      meaning: "voltages of the feeds in order along the run",
      given: (_si, _out, { run }) => (run as Run).order.map((f) => f.sourceVoltage),
    },
    {
      symbol: "R_o",
      kind: "resistance",
      meaning: "and their resistances",
      given: (_si, _out, { run }) => (run as Run).order.map((f) => f.feederResistance),
    },
    { solved: "I_f", meaning: "currents of the feeds in that order" },
    { left: "sum(I_f)", right: "I", meaning: "the feeds together give what the lights take" },
    {
      symbol: "a_s",
      kind: "current",
      meaning: "current at the start of each span",
      given: (_si, _out, { run }) => (run as Run).spans.map((s) => s.current),
    },
    {
      symbol: "l_s",
      kind: "length",
      meaning: "length of each span",
      given: (_si, _out, { run }) => (run as Run).spans.map((s) => s.length),
    },
    { symbol: "P_f", meaning: "heat in the feeders", is: "sum(R_o .* I_f .* I_f)" },
    {
      symbol: "P_r",
      meaning: "heat in the run, the square of the current integrated",
      is: "r_l * sum(a_s .* a_s .* l_s - (spread * I / L) * a_s .* l_s .* l_s + (spread * I / L)^2 / 3 * l_s .* l_s .* l_s)",
    },
    { symbol: "P_l", meaning: "power of the lights", is: "sum(E_o .* I_f) - P_r - P_f" },
    { symbol: "I_max", meaning: "largest current in the run", is: "max(max(abs(a_s)), max(abs(a_s - (spread * I / L) * l_s)))" },
    {
      symbol: "s_w",
      kind: "number",
      meaning: "direction of each span on the way to the lowest light",
      given: (_si, _out, trace) => wayDown(trace as LedTrace).map((w) => w.sign),
    },
    {
      symbol: "a_w",
      kind: "current",
      meaning: "current at the start of each",
      given: (_si, _out, trace) => wayDown(trace as LedTrace).map((w) => w.current),
    },
    {
      symbol: "l_w",
      kind: "length",
      meaning: "length of each",
      given: (_si, _out, trace) => wayDown(trace as LedTrace).map((w) => w.length),
    },
    {
      symbol: "V_low",
      meaning: "first feed's voltage less what is lost on the way",
      is: "E_o[1] - R_o[1] * I_f[1] - r_l * sum(s_w .* (a_w .* l_w - (spread * I / L) / 2 * l_w .* l_w))",
    },
    { symbol: "x_low", meaning: "how far that is along the run", is: "min(x_f) + sum(s_w .* l_w)" },
    { symbol: "U", meaning: "lost from the highest feed", is: "max(E_f) - V_low" },
    {
      symbol: "l_d",
      kind: "length",
      meaning: "lengths of the dimmed stretches",
      given: (_, out) => [0, ...out.dimmed.map((d) => d.to - d.from)],
    },
    { symbol: "d", meaning: "dimmed part", is: "sum(l_d) / L", when: "has_dimVoltage" },
  ],
  sources: [...sizeSources, DISTRIBUTOR, RAILROADS],
  either: [{ exactlyOne: ["awg", "area", "trackResistance"] }],
  check,
  cautions,
}))
