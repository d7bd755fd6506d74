import type { Current, Ratio, Resistance, Voltage } from "../quantity/index.js"
import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { type ConverterSpec, converterOutput, efficiencyAt, type InputBound, inputBound, type LimitedBy } from "./limit.js"

/** One point of an efficiency curve. */
export interface EfficiencyPoint {
  /** Output current. */
  load: Current
  /** Efficiency there, as a fraction. */
  efficiency: Ratio
}

/** Input of {@link converterLimit}. */
export interface ConverterLimitInput {
  /** Output voltage the converter is set to. */
  outputVoltage: Voltage
  /** Current the load draws; set by its force or torque, not by the voltage. */
  loadCurrent: Current
  /** Open-circuit voltage of the source. */
  sourceVoltage: Voltage
  /** Resistance of source, wires and contacts together. */
  sourceResistance?: Resistance
  /** Greatest current the converter takes in. */
  inputCurrentLimit?: Current | null
  /** Greatest current the converter gives out. */
  outputCurrentLimit?: Current | null
  /** Efficiency over output current, in rising order of load. */
  efficiency: readonly EfficiencyPoint[]
  /** Input current with no load. */
  quiescentCurrent?: Current
  /** Least input voltage it works at. */
  minimumInput?: Voltage
  /** Greatest input voltage it may have. */
  maximumInput?: Voltage | null
}

/** Result of {@link converterLimit}. */
export interface ConverterLimit {
  /** Voltage at the output, V. */
  readonly outputVoltage: number
  /** Voltage at the converter's input, V. */
  readonly inputVoltage: number
  /** Current from the source, A. */
  readonly inputCurrent: number
  /** Efficiency at this load current, quiescent current not counted. */
  readonly efficiency: number
  /** Power to the load, W. */
  readonly outputPower: number
  /** Power into the converter, W. */
  readonly inputPower: number
  /** Heat in the converter, W. */
  readonly heat: number
  /** Heat in source, wires and contacts before it, W. */
  readonly lineHeat: number
  /** What binds: `none`, `input-current`, `output-current`, `source-power` or `input-voltage`. */
  readonly limitedBy: LimitedBy
  /** Greatest power the input side can feed to the output at this efficiency, W; null where nothing bounds it. */
  readonly availablePower: number | null
  /** Greatest load current at which the set voltage still holds, A; null where nothing bounds it. */
  readonly fullVoltageCurrent: number | null
}

const specOf = (si: SiOf<ConverterLimitInput>): ConverterSpec => ({
  ...si,
  maximumInput: si.maximumInput ?? Number.POSITIVE_INFINITY,
})
const sourceOf = (si: SiOf<ConverterLimitInput>) => ({ voltage: si.sourceVoltage, resistance: si.sourceResistance })

/** First load current at which the demand reaches the bound, segment by segment of the efficiency curve. */
function currentAtBound(spec: ConverterSpec, bound: InputBound): number {
  const curve = spec.efficiency
  const crossing = (intercept: number, slope: number) => (bound.power * intercept) / (spec.outputVoltage - bound.power * slope)
  const first = curve[0] as ConverterSpec["efficiency"][number]
  let low = first
  const early = crossing(first.efficiency, 0)
  if (early <= first.load) return early
  for (const high of curve.slice(1)) {
    const slope = (high.efficiency - low.efficiency) / (high.load - low.load)
    if ((spec.outputVoltage * high.load) / high.efficiency >= bound.power) return crossing(low.efficiency - slope * low.load, slope)
    low = high
  }
  return crossing(low.efficiency, 0)
}

function cannotRun(si: SiOf<ConverterLimitInput>): NoSolution {
  const volts = (v: number) => formatQuantity("voltage", v)
  const idle = si.sourceVoltage - si.sourceResistance * si.quiescentCurrent
  const at = { sourceVoltage: si.sourceVoltage }
  if (si.maximumInput !== null && si.sourceVoltage > si.maximumInput) {
    const over = si.sourceVoltage - si.maximumInput
    return refuse(
      "input-too-high",
      `The source gives ${volts(si.sourceVoltage)} and the converter may have ${volts(si.maximumInput)} at most: ${volts(over)} too much.`,
      over,
      at,
      { sourceVoltage: si.maximumInput },
    )
  }
  const least = si.minimumInput + si.sourceResistance * si.quiescentCurrent
  if (idle < si.minimumInput || idle <= 0)
    return refuse(
      "input-too-low",
      `The converter needs ${volts(si.minimumInput)} at its input and gets ${volts(idle)} before any load is on.`,
      Math.max(0, si.minimumInput - idle),
      at,
      { sourceVoltage: least * 1.001 },
    )
  const room = Math.min(
    si.inputCurrentLimit ?? Number.POSITIVE_INFINITY,
    (idle - si.minimumInput) / si.sourceResistance + si.quiescentCurrent,
  )
  return refuse(
    "no-input-current",
    `The input can take ${formatQuantity("current", room)} and the converter itself uses ${formatQuantity("current", si.quiescentCurrent)}: nothing is left for the load.`,
    Math.max(0, si.quiescentCurrent - room),
    { ...at, inputCurrent: room },
  )
}

function solve(si: SiOf<ConverterLimitInput>): ConverterLimit | NoSolution {
  const spec = specOf(si)
  const bound = inputBound(spec, sourceOf(si))
  const point = converterOutput(spec, sourceOf(si), si.loadCurrent)
  if (bound === null || point === null) return cannotRun(si)
  const outputPower = point.outputVoltage * si.loadCurrent
  const inputPower = point.inputVoltage * point.inputCurrent
  const unbounded = bound.power === Number.POSITIVE_INFINITY
  const byInput = unbounded ? Number.POSITIVE_INFINITY : currentAtBound(spec, bound)
  const holds = Math.min(byInput, si.outputCurrentLimit ?? Number.POSITIVE_INFINITY)
  return {
    ...point,
    outputPower,
    inputPower,
    heat: inputPower - outputPower,
    lineHeat: si.sourceResistance * point.inputCurrent ** 2,
    availablePower: unbounded ? null : point.efficiency * bound.power,
    fullVoltageCurrent: holds === Number.POSITIVE_INFINITY ? null : holds,
  }
}

function cautions(si: SiOf<ConverterLimitInput>, out: ConverterLimit): Caution[] {
  const found: Caution[] = []
  if (out.limitedBy === "input-voltage" || out.limitedBy === "source-power")
    found.push(
      caution(
        "hiccup",
        "caution",
        "At this bound a real converter or battery often switches off and tries again instead of holding a lower output: the load jerks or never starts.",
        "S. Singh et al., Constant power loads and their effects in DC distributed power systems, 2017 (from memory)",
      ),
    )
  if (out.limitedBy === "output-current")
    found.push(
      caution(
        "output-collapsed",
        "caution",
        "The load asks for more than the converter's output limit: its output collapses. A motor stands still and heats; a converter may hiccup.",
      ),
    )
  if (out.limitedBy !== "none" && out.outputVoltage > 0 && out.outputVoltage < out.inputVoltage && si.outputVoltage > out.inputVoltage)
    found.push(
      caution(
        "straight-through",
        "warning",
        "A plain step-up cannot put out less than its input: inductor and diode pass the current straight through, and no limit of the converter acts there. Fuse it.",
        "R. W. Erickson and D. Maksimović, Fundamentals of Power Electronics, chapter 2 (boost topology; from memory)",
      ),
    )
  const loads = si.efficiency.map((p) => p.load)
  if (si.loadCurrent < (loads[0] as number) || si.loadCurrent > (loads[loads.length - 1] as number))
    found.push(caution("outside-curve", "note", "The load current lies outside the efficiency curve; its end value was used."))
  return found
}

/**
 * What a converter's output falls to when its input, its source or its output limit binds.
 *
 * Formula: V_0 = E − R·I_q; while no limit binds V = V_set and I_x = 2·P_d/(V_0 + √(V_0² − 4·R·P_d))
 * with P_d = V_set·I/η(I). Otherwise I_x is the smallest of I_lim − I_q (input current),
 * (V_0 − V_min)/R (least input voltage) and V_0/(2R) (the source's own greatest power), and
 * V = η(I)·V_in·I_x / I, with V_in = V_0 − R·I_x and I_in = I_q + I_x. E is the source's open-circuit
 * voltage (V), R the resistance of source, wires and contacts (Ω, default 0), I the load current (A),
 * I_q the no-load input current (A, default 0), η the efficiency, read off the curve by straight lines.
 * A load current above the output's limit cannot be carried: V = 0. Valid for steady direct current
 * and a load whose current does not depend on its voltage (a motor at a given force).
 *
 * Sources: energy balance of the converter; LMR62014 datasheet SNVS735B (2013), page 12, and the
 * TPS61022 thread 1026761 (2021) for limits that sit on the input side of a step-up.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `input-too-high`, `input-too-low` or `no-input-current` where it cannot run at all
 * @example
 * ```ts
 * import { converterLimit } from 'alula/converter'
 * const fed = converterLimit({
 *   outputVoltage: '12 V', loadCurrent: '1.5 A', sourceVoltage: '5.1 V', sourceResistance: '120 mohm',
 *   inputCurrentLimit: '2.4 A', efficiency: [{ load: '0.2 A', efficiency: '90 %' }, { load: '1.5 A', efficiency: '85 %' }],
 * })
 * fed.limitedBy // => 'input-current'
 * fed.outputVoltage // => 6.544
 * fed.fullVoltageCurrent // => 0.8424
 * ```
 */
export const converterLimit: Solver<ConverterLimitInput, ConverterLimit> = /* @__PURE__ */ solver<ConverterLimitInput, ConverterLimit>({
  name: "converterLimit",
  title: "What a converter's output falls to at its limits",
  input: {
    outputVoltage: { kind: "voltage", symbol: "V_set", label: "set output voltage", above: 0, max: 1000, typical: [3, 24] },
    loadCurrent: { kind: "current", symbol: "I", label: "load current", min: 0, max: 1000, typical: [0, 5] },
    sourceVoltage: { kind: "voltage", symbol: "E", label: "source voltage, open circuit", above: 0, max: 1000, typical: [3, 15] },
    sourceResistance: {
      kind: "resistance",
      symbol: "R",
      label: "resistance of source, wires and contacts",
      min: 0,
      max: 1000,
      typical: ["20 mohm", "1 ohm"],
      default: 0,
    },
    inputCurrentLimit: {
      kind: "current",
      symbol: "I_lim",
      label: "input current limit",
      above: 0,
      max: 1000,
      typical: [1, 6],
      default: null,
    },
    outputCurrentLimit: {
      kind: "current",
      symbol: "I_ol",
      label: "output current limit",
      above: 0,
      max: 1000,
      typical: [1, 6],
      default: null,
    },
    efficiency: {
      kind: "list",
      label: "efficiency over output current",
      min: 1,
      max: 1000,
      of: {
        kind: "group",
        label: "point",
        fields: {
          load: { kind: "current", symbol: "I_e", label: "output current", min: 0, max: 1000, typical: [0, 5] },
          efficiency: { kind: "ratio", symbol: "eta_e", label: "efficiency", above: 0, max: 1, typical: ["70 %", "95 %"] },
        },
      },
    },
    quiescentCurrent: {
      kind: "current",
      symbol: "I_q",
      label: "no-load input current",
      min: 0,
      max: 100,
      typical: [0, "20 mA"],
      default: 0,
    },
    minimumInput: { kind: "voltage", symbol: "V_min", label: "least input voltage", min: 0, max: 1000, typical: [0, 4.5], default: 0 },
    maximumInput: {
      kind: "voltage",
      symbol: "V_max",
      label: "greatest input voltage",
      above: 0,
      max: 1000,
      typical: [16, 40],
      default: null,
    },
  },
  output: {
    outputVoltage: { kind: "voltage", symbol: "V", label: "output voltage" },
    inputVoltage: { kind: "voltage", symbol: "V_in", label: "voltage at the input" },
    inputCurrent: { kind: "current", symbol: "I_in", label: "input current" },
    efficiency: { kind: "ratio", symbol: "eta", label: "efficiency at this load", unit: "%" },
    outputPower: { kind: "power", symbol: "P_out", label: "power to the load" },
    inputPower: { kind: "power", symbol: "P_in", label: "power into the converter" },
    heat: { kind: "power", symbol: "P_h", label: "heat in the converter" },
    lineHeat: { kind: "power", symbol: "P_l", label: "heat in source and wires" },
    limitedBy: { kind: "text", label: "limited by" },
    availablePower: { kind: "power", symbol: "P_a", label: "greatest output power here" },
    fullVoltageCurrent: { kind: "current", symbol: "I_h", label: "load current the set voltage holds to" },
  },
  example: {
    outputVoltage: "12 V",
    loadCurrent: "1.5 A",
    sourceVoltage: "5.1 V",
    sourceResistance: "120 mohm",
    inputCurrentLimit: "2.4 A",
    efficiency: [
      { load: "0.2 A", efficiency: "90 %" },
      { load: "1.5 A", efficiency: "85 %" },
    ],
  },
  formulae: [
    {
      symbol: "eta",
      kind: "ratio",
      meaning: "efficiency at the load current, off the curve",
      given: (si) => efficiencyAt(si.efficiency, si.loadCurrent),
    },
    { symbol: "bound", kind: "number", meaning: "input bound: 1 current, 2 least voltage, 3 source power, 0 none", given: boundCode },
    {
      symbol: "binds",
      kind: "number",
      meaning: "what binds: 0 nothing, 1 the input bound, 2 the output limit",
      given: (_, out) => bindCode(out),
    },
    { symbol: "V_0", kind: "voltage", meaning: "input voltage without load", is: "E - R * I_q" },
    { symbol: "P_d", kind: "power", meaning: "power the load asks for, before the efficiency", is: "V_set * I / eta" },
    { symbol: "I_b", kind: "current", meaning: "current at the input limit", is: "I_lim - I_q", when: "bound == 1" },
    { symbol: "I_b", kind: "current", meaning: "current at the least input voltage", is: "(V_0 - V_min) / R", when: "bound == 2" },
    { symbol: "I_b", kind: "current", meaning: "current at the source's greatest power", is: "V_0 / (2 * R)", when: "bound == 3" },
    { symbol: "P_a", meaning: "greatest power to the output", is: "eta * (V_0 - R * I_b) * I_b", when: "bound > 0" },
    {
      symbol: "I_x",
      kind: "current",
      meaning: "current for that power (the root at the higher voltage)",
      is: "2 * P_d / (V_0 + sqrt(V_0^2 - 4 * R * P_d))",
      when: "binds == 0",
    },
    { symbol: "I_x", kind: "current", meaning: "current at the bound", is: "I_b", when: "binds == 1" },
    { symbol: "I_x", kind: "current", meaning: "no power goes out", is: "0 A", when: "binds == 2" },
    { symbol: "V_in", meaning: "voltage at the input", is: "V_0 - R * I_x" },
    { symbol: "I_in", meaning: "input current", is: "I_q + I_x" },
    { symbol: "V", meaning: "the set voltage holds", is: "V_set", when: "binds == 0" },
    { symbol: "V", meaning: "output at which power balances", is: "eta * V_in * I_x / I", when: "binds == 1" },
    { symbol: "V", meaning: "output collapsed", is: "0 V", when: "binds == 2" },
    { symbol: "P_out", meaning: "power to the load", is: "V * I" },
    { symbol: "P_in", meaning: "power into the converter", is: "V_in * I_in" },
    { symbol: "P_h", meaning: "heat in the converter", is: "P_in - P_out" },
    { symbol: "P_l", meaning: "heat before the converter", is: "R * I_in^2" },
    {
      symbol: "eta_h",
      kind: "ratio",
      meaning: "efficiency where the set voltage just holds",
      given: (si, out) => (out.fullVoltageCurrent === null ? 0 : efficiencyAt(si.efficiency, out.fullVoltageCurrent)),
    },
    {
      symbol: "byInput",
      kind: "number",
      meaning: "whether the input bound comes before the output limit",
      given: (si, out) => (out.fullVoltageCurrent === null ? -1 : out.fullVoltageCurrent === si.outputCurrentLimit ? 0 : 1),
    },
    { symbol: "I_h", meaning: "load current the set voltage holds to", is: "eta_h * (V_0 - R * I_b) * I_b / V_set", when: "byInput == 1" },
    { symbol: "I_h", meaning: "load current the set voltage holds to", is: "I_ol", when: "byInput == 0" },
  ],
  sources: [
    {
      title: "LMR62014 datasheet SNVS735B (boost input current and switch limit)",
      by: "Texas Instruments",
      edition: "2013",
      where: "page 12",
    },
    {
      title: "Fundamentals of Power Electronics (power balance of a converter)",
      by: "R. W. Erickson, D. Maksimović",
      edition: "2nd, 2001",
      where: "chapter 3 (from memory)",
    },
  ],
  check: (si) =>
    si.efficiency.flatMap((point, i) => {
      const before = si.efficiency[i - 1]
      return before === undefined || point.load > before.load
        ? []
        : [inconsistent(["efficiency", i, "load"], `${point.load} A after ${before.load} A`, "loads in rising order")]
    }),
  solve,
  cautions,
})

function boundCode(si: SiOf<ConverterLimitInput>): number {
  const bound = inputBound(specOf(si), sourceOf(si))
  if (bound === null || bound.power === Number.POSITIVE_INFINITY) return 0
  return bound.limitedBy === "input-current" ? 1 : bound.limitedBy === "input-voltage" ? 2 : 3
}

function bindCode(out: ConverterLimit): number {
  return out.limitedBy === "none" ? 0 : out.limitedBy === "output-current" ? 2 : 1
}
