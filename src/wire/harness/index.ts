import { type Issue, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver, tried } from "../../solver/index.js"
import { resistance20, sizeIssues, sizeSources, temperatureFactor } from "../conductor.js"
import { type NetworkFault, type NetworkState, solveNetwork, type TwoPole } from "../network/index.js"
import { KIRCHHOFF, LOOPS, TELLEGEN } from "../sources.js"
import { withstandSources } from "../withstand.js"
import { harnessCautions } from "./cautions.js"
import { harnessInput, harnessOutput } from "./fields.js"
import { harnessFormulae } from "./formulae.js"
import type { Harness, HarnessBranch, HarnessCaution, HarnessInput, HarnessRefusal } from "./types.js"

type Si = SiOf<HarnessInput>
interface Part {
  readonly name: string
  readonly type: string
  readonly ends: readonly [string, string]
  readonly pole: TwoPole
}

/** Every two-pole of the input in a fixed order: sources, wires, contacts, switches, fuses, loads. */
function partsOf(si: Si): { parts: Part[]; names: string[] } {
  const names: string[] = []
  const places = new Map<string, number>()
  const node = (name: string) => {
    const known = places.get(name)
    if (known !== undefined) return known
    places.set(name, names.length)
    return names.push(name) - 1
  }
  const parts: Part[] = []
  const add = (type: string, name: string, from: string, to: string, law: Partial<TwoPole>) =>
    parts.push({
      name,
      type,
      ends: [from, to],
      pole: { resistance: 0, emf: 0, current: null, power: null, ...law, from: node(from), to: node(to) },
    })
  for (const s of si.sources) add("source", s.name, s.negative, s.positive, { resistance: s.sourceResistance, emf: s.sourceVoltage })
  for (const w of si.wires)
    add("wire", w.name, w.from, w.to, { resistance: resistance20(w) * temperatureFactor(w.material, w.conductorTemperature) * w.length })
  for (const c of si.contacts) add("contact", c.name, c.from, c.to, { resistance: c.resistance })
  for (const c of si.switches) {
    node(c.from)
    node(c.to)
    if (c.closed) add("switch", c.name, c.from, c.to, { resistance: c.resistance })
  }
  for (const f of si.fuses) add("fuse", f.name, f.from, f.to, { resistance: f.resistance * f.hotFactor })
  for (const l of si.currentLoads) add("current", l.name, l.from, l.to, { current: l.current })
  for (const l of si.resistanceLoads) add("resistance", l.name, l.from, l.to, { resistance: l.resistance })
  for (const l of si.powerLoads)
    add("power", l.name, l.from, l.to, l.power * si.powerShare > 0 ? { power: l.power * si.powerShare } : { current: 0 })
  return { parts, names }
}

const loadTypes = ["current", "resistance", "power"]
const groundOf = (si: Si) => si.ground ?? (si.sources[0] as Si["sources"][number]).negative

const solve = (si: Si): Harness | NoSolution<HarnessRefusal> => tried(solved(si), si, harnessInput, solved)

function solved(si: Si): Harness | NoSolution<HarnessRefusal> {
  const { parts, names } = partsOf(si)
  const ground = names.indexOf(groundOf(si))
  const found = solveNetwork(
    names.length,
    parts.map((p) => p.pole),
    ground,
  )
  return "fault" in found ? refused(si, parts, found) : harnessOf(parts, names, found)
}

/** Resistance of a very good contact, Ω: what a loop without any lacks at the minimum. */
const GOOD_CONTACT = 1e-3

function refused(si: Si, parts: readonly Part[], found: NetworkFault): NoSolution<HarnessRefusal> {
  const name = (i: number) => (parts[i] as Part).name
  switch (found.fault) {
    case "short-circuit": {
      return refuse(
        "short-circuit",
        "The loop closed by '{branch}' has no resistance: its current is not defined. Give its source, wires or contacts the resistance they have: a very good contact has {shortBy resistance}.",
        GOOD_CONTACT,
        {},
        {},
        { branch: name(found.branch) },
      )
    }
    case "in-series": {
      const [a, b] = found.branches
      const [first, second] = [parts[a]?.pole.current ?? 0, parts[b]?.pole.current ?? 0]
      return refuse(
        "loads-in-series",
        "Loads '{first}' and '{second}' stand in series with nothing between them that fixes the voltage.",
        // two loads that ask for the same current still leave the voltage between them open
        Math.abs(first - second) || Math.max(first, second),
        {},
        {},
        { first: name(a), second: name(b) },
      )
    }
    case "reversed":
      return refuse(
        "reversed",
        "Load '{load}' is connected the wrong way round: the sources put {shortBy voltage} across it against its direction. Swap its two ends.",
        found.shortBy,
        {},
        {},
        { load: name(found.branch) },
      )
    case "insufficient-voltage":
      return refuse(
        "insufficient-voltage",
        "Load '{load}' gets no voltage: on the way to it the constant currents lose {shortBy voltage} more than the sources give. Take thicker or shorter wire, or loads that draw less.",
        found.shortBy,
        {},
        {},
        { load: name(found.branch) },
      )
    default: {
      const power = si.powerShare * si.powerLoads.reduce((sum, l) => sum + l.power, 0)
      return refuse(
        "insufficient-power",
        "The constant-power loads ask for {power power} together; the most there is for them in these proportions is {available power}, short by {shortBy power}. Take thicker or shorter wire, or turn all of them down ('powerShare').",
        power * (1 - found.scale),
        { power, available: found.scale * power },
        // a millionth less: at the limit itself rounding decides
        { powerShare: si.powerShare * found.scale * (1 - 1e-6) },
      )
    }
  }
}

function harnessOf(parts: readonly Part[], names: readonly string[], state: NetworkState): Harness {
  const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
  const states = parts.map(({ name, type, ends, pole }, i) => ({
    name,
    type,
    ends,
    pole,
    current: state.currents[i] as number,
    drop: state.drops[i] as number,
    fed: state.fed[i] as boolean,
  }))
  const sources = states
    .filter((s) => s.type === "source")
    .map((s) => ({ name: s.name, sourceVoltage: s.pole.emf, current: s.current, heat: s.pole.resistance * s.current ** 2 }))
  const branches = states
    .filter((s) => s.type !== "source" && !loadTypes.includes(s.type))
    .map((s) => ({
      name: s.name,
      type: s.type,
      from: s.ends[0],
      to: s.ends[1],
      resistance: s.pole.resistance,
      current: s.current,
      drop: s.pole.resistance * s.current,
      heat: s.pole.resistance * s.current ** 2,
    }))
  const loads = states
    .filter((s) => loadTypes.includes(s.type))
    .map((s) => ({
      name: s.name,
      type: s.type,
      fed: s.fed,
      voltage: s.drop,
      current: s.fed ? s.current : 0,
      power: s.fed ? s.drop * s.current : 0,
      returnVoltage: state.voltages[s.pole.to] ?? 0,
    }))
  const contacts = branches.filter((b) => b.type !== "wire")
  const worst = contacts.reduce<HarnessBranch | null>((a, b) => (a === null || b.heat > a.heat ? b : a), null)
  const returns = loads.map((l) => l.returnVoltage)
  return {
    nodes: names.map((name, i) => ({ name, voltage: state.voltages[i] as number | null })),
    sources,
    branches,
    loads,
    sourcePower: sum(sources.map((s) => s.sourceVoltage * s.current)),
    loadPower: sum(loads.map((l) => l.power)),
    wireHeat: sum(branches.filter((b) => b.type === "wire").map((b) => b.heat)),
    contactHeat: sum(contacts.map((b) => b.heat)),
    sourceHeat: sum(sources.map((s) => s.heat)),
    minLoadVoltage: Math.min(...loads.map((l) => l.voltage)),
    maxReturnShift: Math.max(0, ...returns) - Math.min(0, ...returns),
    hottestContact: worst?.name ?? null,
    maxContactHeat: worst?.heat ?? null,
    iterations: state.iterations,
    residual: state.residual,
  }
}

function check(si: Si): Issue[] {
  const lists = ["sources", "wires", "contacts", "switches", "fuses", "currentLoads", "resistanceLoads", "powerLoads"] as const
  const seen = new Set<string>()
  const found: Issue[] = []
  for (const list of lists)
    si[list].forEach((item, i) => {
      if (seen.has(item.name)) found.push(inconsistent([list, i, "name"], "'{name}' again", "a name of its own", { name: item.name }))
      seen.add(item.name)
      const end = "positive" in item ? "negative" : "to"
      const [a, b] = "positive" in item ? [item.positive, item.negative] : [item.from, item.to]
      if (a === b) found.push(inconsistent([list, i, end], "'{node}' at both ends", "another node", { node: b }))
    })
  si.wires.forEach((wire, i) => {
    for (const { path, received, expected, values = {} } of sizeIssues(wire)) {
      const placed = Object.fromEntries(Object.entries(values).map(([key, value]) => [`wires.${i}.${key}`, value]))
      found.push(inconsistent(["wires", i, ...path], received as string, expected as string, placed))
    }
  })
  if (si.currentLoads.length + si.resistanceLoads.length + si.powerLoads.length === 0)
    found.push(inconsistent(["currentLoads"], "no load in any list", "at least one load"))
  if (si.ground !== null && !partsOf(si).names.includes(si.ground))
    found.push(inconsistent(["ground"], "'{ground}'", "a node that something is connected to", { ground: si.ground }))
  return found
}

/**
 * Voltages, currents and losses of a whole harness, looped ones too.
 *
 * Formula: Kirchhoff's laws. At every node Σ I = 0; around every loop Σ (E − R·I) = Σ V_load. A spanning tree of the
 * smallest resistances leaves one unknown current for each loop; loads of constant power add V·I = P and are solved by
 * Newton's method from the unloaded state, which reaches the root at the higher voltage. E are the sources'
 * open-circuit voltages and R the resistances: inside the sources, of wires (length, size, temperature), contacts,
 * closed switches and fuses (cold resistance, times 1.4 hot). Voltages count from `ground` (the first source's negative
 * pole unless given). Loads that no source reaches are off. Valid for steady direct current.
 *
 * Every wire is also asked whether it bears its current, and what the fuse ahead of it may let flow (135 % for minutes, 200 %
 * for 5 s), by the same rule as in {@link fuseCoordination}, alone in still air at 25 °C with 80 °C insulation.
 *
 * **Inputs**
 * - `sources`: batteries and supplies [list of 1 to 100]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `positive`: node at the positive pole [text of 1 to 100 characters]
 *   - `negative`: node at the negative pole [text of 1 to 100 characters]
 *   - `sourceVoltage`: open-circuit voltage [E_s; 10 mV to 1000 V]
 *   - `sourceResistance`: internal resistance [R_s; 0 to 1000 Ω; default 0]
 * - `wires`: wires [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `awg`: wire gauge (AWG) [g; whole −3 to 40; optional]
 *   - `area`: cross-section [A_w; 0.0001 to 1000 mm²; optional]
 *   - `material`: conductor metal [copper or aluminium; default copper]
 *   - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 *   - `length`: length [L; 0 to 1000 m]
 *   - `conductorTemperature`: conductor temperature [T; −50 to 200 °C; default 20 °C]
 *   - exactly one of `awg` and `area`
 * - `contacts`: contacts [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `resistance`: contact resistance [R_k; 0 to 100 Ω; default 5 mΩ]
 *   - `ratedCurrent`: rated current [I_k; 0.1 mA to 1000 A; optional]
 * - `switches`: switches [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `resistance`: contact resistance [R_k; 0 to 100 Ω; default 10 mΩ]
 *   - `ratedCurrent`: rated current [I_k; 0.1 mA to 1000 A; optional]
 *   - `closed`: closed [yes or no; default yes]
 * - `fuses`: fuses [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `fuseRating`: rated current [I_f; 0.1 mA to 1000 A]
 *   - `resistance`: cold resistance [R_f; 0 to 100 Ω; default 5 mΩ]
 *   - `hotFactor`: hot over cold resistance [k_f; 1 to 10; default 1.4]
 * - `currentLoads`: loads of constant current [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `current`: current [I_1; 0 to 1000 A]
 * - `resistanceLoads`: loads of constant resistance [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `resistance`: resistance [R_1; 1 mΩ to 10000 kΩ]
 * - `powerLoads`: loads of constant power [list of 0 to 1000; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `from`: from node [text of 1 to 100 characters]
 *   - `to`: to node [text of 1 to 100 characters]
 *   - `power`: power [P_1; 0 to 100 kW]
 * - `powerShare`: part of their power the constant-power loads draw [s_p; 0 to 1; default 1]
 * - `ground`: node that voltages are counted from [text of 1 to 100 characters; optional]
 *
 * **Results**
 *
 * `nodes`: nodes [list]; `sources`: sources [list]; `branches`: wires, contacts, switches, fuses [list]; `loads`:
 * loads [list]; `sourcePower`: power of the sources [P_s; W]; `loadPower`: power of the loads [P_l; W]; `wireHeat`:
 * heat in wires [P_w; W]; `contactHeat`: heat in contacts, switches, fuses [P_c; W]; `sourceHeat`: heat inside the
 * sources [P_i; W]; `minLoadVoltage`: minimum load voltage [V_low; V]; `maxReturnShift`: maximum shift between returns
 * [U_r; V]; `hottestContact`: hottest contact [text]; `maxContactHeat`: heat in that contact [P_k; W]; `iterations`:
 * iterations [number]; `residual`: maximum error of Kirchhoff's laws, relative [number].
 *
 * **Symbols of the working**
 *
 * V_r: voltages of the loads' return sides [V]; n_w: wires; n_c: contacts, closed switches and fuses; R_w: resistances
 * of the wires [Ω]; I_w: currents of the wires [A]; R_c: resistances of contacts, closed switches and fuses [Ω]; I_c:
 * their currents [A].
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
 * - G. Kirchhoff: Kirchhoff's laws, 1845
 * - L. O. Chua, P.-M. Lin: Computer-Aided Analysis of Electronic Circuits, 1975, chapter 4 (loop analysis by tree and
 *   links) (not verified against the document)
 * - B. D. H. Tellegen: A general network theorem, with applications, Philips Research Reports 7, 1952 (not verified
 *   against the document)
 * - IEC: IEC 60364-4-43, Protection against overcurrent, 2008, clause 434.5.2 and table 43A (no heat lost, up to 5 s;
 *   160 °C for PVC) (not verified against the document)
 * - IEC: IEC 60364-5-54, Earthing arrangements and protective conductors, 2011, Annex A, table A.54.1 (heat capacity,
 *   β; K = 226 copper, 148 aluminium)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-power` naming the most power there is, `short-circuit`,
 * `loads-in-series`, `reversed` or `insufficient-voltage`
 * @example
 * ```ts
 * import { harness } from 'alula/wire'
 * const net = harness({
 *   sources: [{ name: 'pack', positive: 'p', negative: '0', sourceVoltage: '12.6 V', sourceResistance: '60 mohm' }],
 *   fuses: [{ name: 'fuse', from: 'p', to: 'f', fuseRating: '7.5 A' }],
 *   wires: [
 *     { name: 'out', from: 'f', to: 'a', length: '1.2 m', awg: 20 },
 *     { name: 'back', from: 'b', to: '0', length: '1.2 m', awg: 20 },
 *   ],
 *   currentLoads: [{ name: 'left wing', from: 'a', to: 'b', current: '2 A' }],
 *   powerLoads: [{ name: 'lantern', from: 'a', to: 'b', power: '6 W' }],
 * })
 * net.minLoadVoltage // => 12.23
 * net.maxReturnShift // => 0.09954
 * ```
 */
export const harness: Solver<HarnessInput, Harness, HarnessRefusal, HarnessCaution> = /* @__PURE__ */ solver<
  HarnessInput,
  Harness,
  HarnessRefusal,
  HarnessCaution
>("harness", "Voltages, currents and losses of a harness", solve, () => ({
  input: harnessInput,
  output: harnessOutput,
  example: {
    sources: [{ name: "pack", positive: "p", negative: "0", sourceVoltage: "12.6 V", sourceResistance: "60 mohm" }],
    fuses: [{ name: "fuse", from: "p", to: "f", fuseRating: "7.5 A" }],
    switches: [{ name: "switch", from: "f", to: "s" }],
    wires: [
      { name: "out", from: "s", to: "a", length: "1.2 m", awg: 20 },
      { name: "back", from: "b", to: "0", length: "1.2 m", awg: 20 },
    ],
    contacts: [{ name: "plug", from: "a", to: "c", ratedCurrent: "3 A" }],
    currentLoads: [{ name: "left wing", from: "a", to: "b", current: "2 A" }],
    powerLoads: [{ name: "lantern", from: "c", to: "b", power: "6 W" }],
    resistanceLoads: [{ name: "hand warmer", from: "c", to: "b", resistance: "30 ohm" }],
  },
  formulae: harnessFormulae,
  sources: [...sizeSources, KIRCHHOFF, LOOPS, TELLEGEN, ...withstandSources],
  check,
  cautions: harnessCautions,
}))
