import {
  at,
  type Caution,
  caution,
  commonPractice,
  type Issue,
  inconsistent,
  isNoSolution,
  type NoSolution,
  refuse,
  type Solver,
  solver,
} from "../../solver/index.js"
import { heatCautions, touchCautions } from "../hazards.js"
import { type ConverterPoint, converterOutput, inputBound } from "../limit.js"
import { BOOST_DATASHEET, CONSTANT_POWER_EFFECTS, POWER_ELECTRONICS } from "../sources.js"
import { limitFormulae } from "./formulae.js"
import { type ConverterLimitInput, currentAtBound, dropOutCurrent, type LimitTrace, type Si, sourceOf, specOf } from "./problem.js"
import type { ConverterLimit, ConverterLimitCaution, ConverterLimitRefusal } from "./types.js"

export type { ConverterLimit, ConverterLimitCaution, ConverterLimitRefusal } from "./types.js"

/** Source voltages, of those offered, from which the load is served. */
const offered = (si: Si, sourceVoltage: number): Readonly<Record<string, number>> =>
  sourceVoltage > 0 && sourceVoltage <= 1000 && !isNoSolution(answer({ ...si, sourceVoltage })) ? { sourceVoltage } : {}

function cannotRun(si: Si): NoSolution<"input-too-high" | "insufficient-current" | "insufficient-voltage"> {
  const { sourceVoltage, maxInputVoltage, minInputVoltage, sourceResistance, quiescentCurrent } = si
  const idle = sourceVoltage - sourceResistance * quiescentCurrent
  if (maxInputVoltage !== null && sourceVoltage > maxInputVoltage)
    return refuse(
      "input-too-high",
      "The source gives {given.sourceVoltage voltage} and the converter may have {given.maxInputVoltage voltage} at most: {shortBy voltage} too much. Take a converter for this voltage.",
      sourceVoltage - maxInputVoltage,
      {},
      offered(si, maxInputVoltage),
      { "given.sourceVoltage": sourceVoltage, "given.maxInputVoltage": maxInputVoltage },
    )
  if (idle < minInputVoltage || idle <= 0) {
    const needed = 1.001 * (minInputVoltage + sourceResistance * quiescentCurrent)
    return refuse(
      "insufficient-voltage",
      "The converter needs {given.minInputVoltage voltage} at its input and gets {idle voltage} before any load is on. Take a source of {needed voltage} or more, or less resistance.",
      minInputVoltage > idle ? minInputVoltage - idle : needed - sourceVoltage,
      { idle, needed },
      offered(si, needed),
      { "given.minInputVoltage": minInputVoltage },
    )
  }
  const room = Math.min(si.inputCurrentLimit ?? Number.POSITIVE_INFINITY, (idle - minInputVoltage) / sourceResistance + quiescentCurrent)
  return refuse(
    "insufficient-current",
    "The input can take {room current} and the converter itself uses {given.quiescentCurrent current}: nothing is left for the load. Take a source or an input limit that gives more.",
    // at the very limit nothing is left either: a microampere would be
    Math.max(quiescentCurrent - room, 1e-6),
    { room },
    {},
    { "given.quiescentCurrent": quiescentCurrent },
  )
}

/** Refusal of a converter that is asked for what its kind cannot do; null where it can. */
function wrongKind(
  si: Si,
  point: ConverterPoint,
): { readonly code: string; readonly shortBy: number; readonly sourceVoltage: number } | null {
  const { outputVoltage, sourceResistance, quiescentCurrent } = si
  // source voltage at which the input stands at a voltage while the set one holds
  const sourceFor = (input: number) =>
    input + sourceResistance * (quiescentCurrent + (outputVoltage * si.loadCurrent) / (point.efficiency * input))
  if (si.topology === "buck" && point.outputVoltage > point.inputVoltage)
    return {
      code: "cannot-boost",
      shortBy: point.outputVoltage - point.inputVoltage,
      sourceVoltage: sourceFor(1.001 * outputVoltage),
    }
  if (si.topology === "boost" && point.limitedBy === "none" && point.inputVoltage > outputVoltage)
    return {
      code: "cannot-buck",
      shortBy: point.inputVoltage - outputVoltage,
      sourceVoltage: sourceFor(0.999 * outputVoltage),
    }
  return null
}

/** The answer without its refusals named: what runs, or null. */
function answer(si: Si, trace?: Partial<LimitTrace>): ConverterLimit | NoSolution {
  const spec = specOf(si)
  const bound = inputBound(spec, sourceOf(si))
  if (trace) Object.assign(trace, { bound } satisfies LimitTrace)
  const point = converterOutput(spec, sourceOf(si), si.loadCurrent)
  if (bound === null || point === null || wrongKind(si, point)) return NO_ANSWER
  const outputPower = point.outputVoltage * si.loadCurrent
  const inputPower = point.inputVoltage * point.inputCurrent
  const unbounded = bound.power === Number.POSITIVE_INFINITY
  const byInput = unbounded ? Number.POSITIVE_INFINITY : currentAtBound(spec, bound)
  const holds = Math.min(byInput, dropOutCurrent(si) ?? Number.POSITIVE_INFINITY, si.outputCurrentLimit ?? Number.POSITIVE_INFINITY)
  return {
    ...point,
    outputPower,
    inputPower,
    heat: inputPower - outputPower,
    lineHeat: si.sourceResistance * point.inputCurrent ** 2,
    maxOutputPower: unbounded ? null : point.efficiency * bound.power,
    fullVoltageCurrent: holds === Number.POSITIVE_INFINITY ? null : holds,
  }
}

const NO_ANSWER: NoSolution = { noSolution: "none", message: "", at: {}, shortBy: 0, nearest: {}, values: {} }

function solve(si: Si, trace?: Partial<LimitTrace>): ConverterLimit | NoSolution<ConverterLimitRefusal> {
  const out = answer(si, trace)
  if (!isNoSolution(out)) return out
  const point = converterOutput(specOf(si), sourceOf(si), si.loadCurrent)
  const wrong = point && wrongKind(si, point)
  if (!point || !wrong) return cannotRun(si)
  return wrong.code === "cannot-boost"
    ? refuse(
        "cannot-boost",
        "A step-down cannot hold {output voltage} from the {input voltage} that stand at its input under this load. Take a source of more voltage or less resistance, or a converter that steps up.",
        wrong.shortBy,
        { input: point.inputVoltage, output: point.outputVoltage },
        offered(si, wrong.sourceVoltage),
      )
    : refuse(
        "cannot-buck",
        "A step-up set to {given.outputVoltage voltage} passes the {input voltage} at its input straight through to the load, which may not stand it. Take a step-down, or a source of less voltage.",
        wrong.shortBy,
        { input: point.inputVoltage },
        offered(si, wrong.sourceVoltage),
        { "given.outputVoltage": si.outputVoltage },
      )
}

function cautions(si: Si, out: ConverterLimit): Caution<ConverterLimitCaution>[] {
  const found: Caution<ConverterLimitCaution>[] = [
    ...touchCautions(Math.max(si.sourceVoltage, si.outputVoltage)),
    ...heatCautions(out.heat),
  ]
  if (si.topology === null && out.outputVoltage > 0)
    found.push(
      caution(
        "type-assumed",
        "caution",
        "This holds only for a converter that can step {way}: {inputVoltage voltage} stand at its input and {given.outputVoltage voltage} are set. Say which kind it is (topology).",
        at(POWER_ELECTRONICS, "chapter 2: what each topology can do"),
        {
          way: out.inputVoltage < si.outputVoltage ? "up" : "down",
          inputVoltage: out.inputVoltage,
          "given.outputVoltage": si.outputVoltage,
        },
      ),
    )
  if (out.limitedBy === "input-voltage" || out.limitedBy === "source-power")
    found.push(
      caution(
        "hiccup",
        "caution",
        "At this bound a real converter or battery often switches off and tries again instead of holding {outputVoltage voltage}: the load jerks or never starts.",
        CONSTANT_POWER_EFFECTS,
        { outputVoltage: out.outputVoltage },
      ),
    )
  if (out.limitedBy === "output-current" && si.outputCurrentLimit !== null)
    found.push(
      caution(
        "output-collapsed",
        "caution",
        "The load asks for {given.loadCurrent current}, more than the converter's output limit of {given.outputCurrentLimit current}: its output collapses. A motor stands still and heats; a converter may hiccup.",
        commonPractice,
        { "given.loadCurrent": si.loadCurrent, "given.outputCurrentLimit": si.outputCurrentLimit },
      ),
    )
  const plain = si.topology !== "buck-boost" && out.limitedBy !== "none" && out.outputVoltage > 0
  if (plain && out.outputVoltage < out.inputVoltage && si.outputVoltage > out.inputVoltage)
    found.push(
      caution(
        "straight-through",
        "warning",
        "A plain step-up cannot put out {outputVoltage voltage}, less than the {inputVoltage voltage} at its input: inductor and diode pass the current straight through, and no limit of the converter acts there. Fuse it.",
        at(POWER_ELECTRONICS, "chapter 2: boost topology"),
        { outputVoltage: out.outputVoltage, inputVoltage: out.inputVoltage },
      ),
    )
  const loads = si.efficiency.map((p) => p.outputCurrent)
  if (si.loadCurrent < (loads[0] as number) || si.loadCurrent > (loads[loads.length - 1] as number))
    found.push(
      caution(
        "outside-range",
        "note",
        "{given.loadCurrent current} lies outside the efficiency curve; its end value was used.",
        commonPractice,
        { "given.loadCurrent": si.loadCurrent },
      ),
    )
  return found
}

function check(si: Si): Issue[] {
  return si.efficiency.flatMap((point, i) => {
    const before = si.efficiency[i - 1]
    return before === undefined || point.outputCurrent > before.outputCurrent
      ? []
      : [
          inconsistent(["efficiency", i, "outputCurrent"], "{outputCurrent current} after {before current}", "loads in rising order", {
            outputCurrent: point.outputCurrent,
            before: before.outputCurrent,
          }),
        ]
  })
}

/**
 * What a converter's output falls to when its input, its source or its output limit binds.
 *
 * Formula: V_0 = E − R·I_q; while no limit binds V = V_set and I_x = 2·P_d/(V_0 + √(V_0² − 4·R·P_d)) with P_d =
 * V_set·I/η(I). Otherwise I_x is the smallest of I_lim − I_q (input current), (V_0 − V_min)/R (minimum input voltage) and
 * V_0/(2R) (the source's own maximum power), and V = η(I)·V_in·I_x / I, with V_in = V_0 − R·I_x and I_in = I_q + I_x.
 * E is the source's open-circuit voltage, R the resistance of source, wires and contacts, I the load current, I_q the
 * no-load input current, η the efficiency, read off the curve by straight lines. A load current above the output's
 * limit cannot be carried: V = 0. A step-down is refused where its output would lie above its input, a step-up where
 * its input lies above the set voltage. Valid for steady direct current and a load whose current does not depend on its
 * voltage (a motor at a given force).
 *
 * **Inputs**
 * - `outputVoltage`: set output voltage [V_set; 10 mV to 1000 V]
 * - `loadCurrent`: load current [I; 0 to 1000 A]
 * - `sourceVoltage`: source voltage, open circuit [E; 10 mV to 1000 V]
 * - `sourceResistance`: resistance of source, wires and contacts [R; 0 to 1000 Ω; default 0]
 * - `inputCurrentLimit`: input current limit [I_lim; 0.1 mA to 1000 A; optional]
 * - `outputCurrentLimit`: output current limit [I_ol; 0.1 mA to 1000 A; optional]
 * - `efficiency`: efficiency over output current [list of 1 to 1000]
 *   - `outputCurrent`: output current [I_e; 0 to 1000 A]
 *   - `efficiency`: efficiency [eta_e; 1 to 100 %]
 * - `quiescentCurrent`: no-load input current [I_q; 0 to 100 A; default 0]
 * - `minInputVoltage`: minimum input voltage [V_min; 0 to 1000 V; default 0]
 * - `maxInputVoltage`: maximum input voltage [V_max; 10 mV to 1000 V; optional]
 * - `topology`: what it can do with its input voltage [boost, buck or buck-boost; optional]
 *
 * **Results**
 *
 * `outputVoltage`: output voltage [V; V]; `inputVoltage`: voltage at the input [V_in; V]; `inputCurrent`: input
 * current [I_in; A]; `efficiency`: efficiency at this load [eta; as a fraction]; `outputPower`: power to the load
 * [P_out; W]; `inputPower`: power into the converter [P_in; W]; `heat`: heat in the converter [P_h; W]; `lineHeat`:
 * heat in source and wires [P_l; W]; `limitedBy`: limited by [text]; `maxOutputPower`: maximum output power here [P_a;
 * W]; `fullVoltageCurrent`: load current the set voltage holds to [I_h; A].
 *
 * **Symbols of the working**
 *
 * bound: input bound: 1 current, 2 minimum voltage, 3 source power, 0 none; binds: what binds: 0 nothing, 1 the input
 * bound, 2 the output limit; V_0: input voltage without load [V]; P_d: power the load asks for, before the efficiency
 * [W]; I_b: current at the input limit [A]; I_x: current for that power (the root at the higher voltage) [A]; eta_h:
 * efficiency where the set voltage just holds; byInput: what ends the set voltage first: 1 the input bound, 2 the
 * drop-out of a step-down, 0 the output limit.
 *
 * **Sources**
 * - Texas Instruments: LMR62014 datasheet SNVS735B, 2013, page 12
 * - R. W. Erickson, D. Maksimović: Fundamentals of Power Electronics, 2nd, 2001, chapters 2 and 3: topologies, losses
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `input-too-high`, `insufficient-voltage` or `insufficient-current` where it cannot run at all;
 * `cannot-boost` or `cannot-buck` where its type cannot do what is asked
 * @example
 * ```ts
 * import { converterLimit } from 'alula/converter'
 * const fed = converterLimit({
 *   outputVoltage: '12 V', loadCurrent: '1.5 A', sourceVoltage: '5.1 V', sourceResistance: '120 mohm',
 *   inputCurrentLimit: '2.4 A', efficiency: [{ outputCurrent: '0.2 A', efficiency: '90 %' }, { outputCurrent: '1.5 A', efficiency: '85 %' }],
 * })
 * fed.limitedBy // => 'input-current'
 * fed.outputVoltage // => 6.544
 * fed.fullVoltageCurrent // => 0.8424
 * ```
 */
export const converterLimit: Solver<ConverterLimitInput, ConverterLimit, ConverterLimitRefusal, ConverterLimitCaution> =
  /* @__PURE__ */ solver<ConverterLimitInput, ConverterLimit, ConverterLimitRefusal, ConverterLimitCaution, LimitTrace>(
    "converterLimit",
    "What a converter's output falls to at its limits",
    solve,
    () => ({
      input: {
        outputVoltage: { kind: "voltage", symbol: "V_set", label: "set output voltage", min: "10 mV", max: 1000, typical: [3, 24] },
        loadCurrent: { kind: "current", symbol: "I", label: "load current", min: 0, max: 1000, typical: [0, 5] },
        sourceVoltage: { kind: "voltage", symbol: "E", label: "source voltage, open circuit", min: "10 mV", max: 1000, typical: [3, 15] },
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
          min: "0.1 mA",
          max: 1000,
          typical: [1, 6],
          default: null,
        },
        outputCurrentLimit: {
          kind: "current",
          symbol: "I_ol",
          label: "output current limit",
          min: "0.1 mA",
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
              outputCurrent: { kind: "current", symbol: "I_e", label: "output current", min: 0, max: 1000, typical: [0, 5] },
              efficiency: { kind: "ratio", symbol: "eta_e", label: "efficiency", min: "1 %", max: 1, typical: ["70 %", "95 %"] },
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
        minInputVoltage: {
          kind: "voltage",
          symbol: "V_min",
          label: "minimum input voltage",
          min: 0,
          max: 1000,
          typical: [0, 4.5],
          default: 0,
        },
        maxInputVoltage: {
          kind: "voltage",
          symbol: "V_max",
          label: "maximum input voltage",
          min: "10 mV",
          max: 1000,
          typical: [16, 40],
          default: null,
        },
        topology: {
          kind: "choice",
          label: "what it can do with its input voltage",
          options: { boost: "raise it (boost)", buck: "lower it (buck)", "buck-boost": "both" },
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
        maxOutputPower: { kind: "power", symbol: "P_a", label: "maximum output power here" },
        fullVoltageCurrent: { kind: "current", symbol: "I_h", label: "load current the set voltage holds to" },
      },
      example: {
        outputVoltage: "12 V",
        loadCurrent: "1.5 A",
        sourceVoltage: "5.1 V",
        sourceResistance: "120 mohm",
        inputCurrentLimit: "2.4 A",
        efficiency: [
          { outputCurrent: "0.2 A", efficiency: "90 %" },
          { outputCurrent: "1.5 A", efficiency: "85 %" },
        ],
      },
      formulae: limitFormulae,
      sources: [BOOST_DATASHEET, POWER_ELECTRONICS],
      check,
      cautions,
    }),
  )
