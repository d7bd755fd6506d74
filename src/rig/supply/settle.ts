// Voltages of a power tree for the currents that drives draw at its buses: the state at the higher voltages.
import { efficiencyAt, inputBound } from "../../converter/index.js"
import type { Limit, SourceModel, SupplyModel, SupplyState } from "./tree.js"

const PASSES = 100
/** Step of the voltages, against the largest, at which a state counts as found. */
const SETTLED = 1e-13

/**
 * Voltages of a tree for the currents that drives draw at its buses.
 *
 * First as if no limit bound: every converter holds its output, and is a load of constant power to what is above it. Demands are
 * summed towards the sources and voltages handed outwards, loads of constant power by their tangents (Newton); their currents
 * grow ever faster as the voltage falls, so that from open circuit every pass comes down to the state at the higher voltages
 * and never passes it. Where that has no state or breaks a limit, converters are held at their limits one after another.
 */
export function settle(model: SupplyModel, drawn: Float64Array, state: SupplyState): void {
  if (!(regulated(model, drawn, state) && keepsLimits(model, state)) && model.converters.some((c) => c !== null))
    limited(model, drawn, state)
  if (state.failed < 0) tripped(model, state)
}

/** Open circuit: nothing flows. */
function open({ order, above, sourceOf, sources, converters }: SupplyModel, state: SupplyState): void {
  const { volts, inputVolts, runAmps, limits } = state
  state.failed = -1
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number
    const up = above[i] as number
    inputVolts[i] = up === -1 ? (sources[sourceOf[i] as number] as SourceModel).openVoltage : (volts[up] as number)
    volts[i] = converters[i]?.outputVoltage ?? (inputVolts[i] as number)
    runAmps[i] = 0
    limits[i] = "none"
  }
}

function fails(state: SupplyState, bus: number, limit: Limit): false {
  state.failed = bus
  state.limits[bus] = limit
  return false
}

/**
 * One pass: demands inwards, voltages outwards. `held` converters take the current they were given; others what their output
 * asks. False where the demand has no end. The largest step of a voltage comes in `state.moved`.
 */
function pass(model: SupplyModel, drawn: Float64Array, state: SupplyState, held: boolean): boolean {
  const { order, above, sourceOf, sources, resistance, converters, steady, power, conductance } = model
  const { volts, inputVolts, runAmps, outAmps, sourceAmps, powerAmps, wants, leans, sourceWants, sourceLeans } = state
  const n = order.length
  sourceWants.fill(0)
  sourceLeans.fill(0)
  for (let i = 0; i < n; i++) {
    wants[i] = (drawn[i] as number) + (steady[i] as number)
    leans[i] = conductance[i] as number
  }
  for (let k = n - 1; k >= 0; k--) {
    const i = order[k] as number
    const watts = power[i] as number
    if (watts > 0) {
      const v = volts[i] as number
      if (!(v > 0)) return fails(state, i, "too-much-power")
      wants[i] = (wants[i] as number) + (2 * watts) / v
      leans[i] = (leans[i] as number) - watts / (v * v)
    }
    let [want, lean] = [wants[i] as number, leans[i] as number]
    const spec = converters[i]
    if (spec) {
      if (held) [want, lean] = [runAmps[i] as number, 0]
      else {
        // a converter takes no power back
        const amps = Math.max(0, want + lean * spec.outputVoltage)
        const taken = (spec.outputVoltage * amps) / efficiencyAt(spec.efficiency, amps)
        const v = inputVolts[i] as number
        if (!(v > 0)) return fails(state, i, "too-much-power")
        ;[want, lean] = [spec.quiescentCurrent + (2 * taken) / v, -taken / (v * v)]
      }
      // what its input asks, until the way outwards
      runAmps[i] = want
      powerAmps[i] = lean
    }
    const share = 1 + lean * (resistance[i] as number)
    if (!(share > 0)) return fails(state, i, "too-much-power")
    const up = above[i] as number
    const s = sourceOf[i] as number
    if (up === -1) {
      sourceWants[s] = (sourceWants[s] as number) + want / share
      sourceLeans[s] = (sourceLeans[s] as number) + lean / share
    } else {
      wants[up] = (wants[up] as number) + want / share
      leans[up] = (leans[up] as number) + lean / share
    }
  }
  for (let s = 0; s < sources.length; s++) {
    const { openVoltage, resistance: inside } = sources[s] as SourceModel
    const share = 1 + (sourceLeans[s] as number) * inside
    if (!(share > 0)) return fails(state, sourceOf.indexOf(s), "too-much-power")
    sourceAmps[s] = ((sourceWants[s] as number) + (sourceLeans[s] as number) * openVoltage) / share
  }
  let moved = 0
  for (let k = 0; k < n; k++) {
    const i = order[k] as number
    const up = above[i] as number
    const s = sourceOf[i] as number
    const { openVoltage, resistance: inside } = sources[s] as SourceModel
    const from = up === -1 ? openVoltage - inside * (sourceAmps[s] as number) : (volts[up] as number)
    const spec = converters[i]
    const [want, lean] = spec ? [runAmps[i] as number, powerAmps[i] as number] : [wants[i] as number, leans[i] as number]
    const amps = (want + lean * from) / (1 + lean * (resistance[i] as number))
    const input = from - (resistance[i] as number) * amps
    moved = Math.max(moved, Math.abs(input - (inputVolts[i] as number)))
    inputVolts[i] = input
    runAmps[i] = amps
    if (!spec) volts[i] = input
    outAmps[i] = (wants[i] as number) + (leans[i] as number) * (volts[i] as number)
  }
  state.moved = moved
  return true
}

/** Current of the loads of constant power at each bus. */
function powers({ power }: SupplyModel, { powerAmps, volts }: SupplyState): void {
  for (let i = 0; i < power.length; i++) powerAmps[i] = (power[i] as number) > 0 ? (power[i] as number) / (volts[i] as number) : 0
}

const scaleOf = ({ sources }: SupplyModel) => sources.reduce((most, s) => Math.max(most, s.openVoltage), 0)

/** The state with every converter at its own voltage. */
function regulated(model: SupplyModel, drawn: Float64Array, state: SupplyState): boolean {
  open(model, state)
  const settled = SETTLED * scaleOf(model)
  for (let k = 0; k < PASSES; k++) {
    if (!pass(model, drawn, state, false)) return false
    if (!model.bends || state.moved <= settled) {
      powers(model, state)
      return true
    }
  }
  return fails(state, model.order[model.order.length - 1] as number, "too-much-power")
}

/** Whether every converter is within its limits. */
function keepsLimits({ converters, order, above, sourceOf, sources }: SupplyModel, { inputVolts, runAmps, outAmps }: SupplyState): boolean {
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number
    const spec = converters[i]
    if (!spec) continue
    const within =
      (inputVolts[i] as number) >= spec.minInputVoltage * (1 - 1e-12) &&
      restVoltage({ converters, above, sourceOf, sources }, i) <= spec.maxInputVoltage &&
      (spec.inputCurrentLimit === null || (runAmps[i] as number) <= spec.inputCurrentLimit * (1 + 1e-12)) &&
      (spec.outputCurrentLimit === null || (outAmps[i] as number) <= spec.outputCurrentLimit)
    if (!within) return false
  }
  return true
}

/** Voltage at a bus's input while nothing flows, V. */
export function restVoltage(
  { converters, above, sourceOf, sources }: Pick<SupplyModel, "converters" | "above" | "sourceOf" | "sources">,
  bus: number,
): number {
  for (let up = above[bus] as number; up !== -1; up = above[up] as number) {
    const spec = converters[up]
    if (spec) return spec.outputVoltage
  }
  return (sources[sourceOf[bus] as number] as SourceModel).openVoltage
}

/** The state with converters held at their limits: each in turn for what the others draw, until none moves. */
function limited(model: SupplyModel, drawn: Float64Array, state: SupplyState): void {
  const { order, converters, path } = model
  const { volts, inputVolts, runAmps, wants, leans, limits } = state
  open(model, state)
  const settled = 1e-12 * scaleOf(model)
  for (let round = 0; round < 10 * PASSES; round++) {
    let moved = 0
    for (let k = order.length - 1; k >= 0; k--) {
      const i = order[k] as number
      const spec = converters[i]
      if (!spec) continue
      if (!pass(model, drawn, state, true)) return
      moved = Math.max(moved, state.moved)
      const r = path[i] as number
      const bound = inputBound(spec, {
        sourceVoltage: (inputVolts[i] as number) + r * (runAmps[i] as number),
        sourceResistance: r,
      })
      if (bound === null) {
        // at rest it would work: the others leave it too little
        const rest = restVoltage(model, i)
        const starts = inputBound(spec, { sourceVoltage: rest, sourceResistance: r }) !== null
        fails(state, i, starts ? "too-much-power" : "no-input")
        return
      }
      const [want, lean] = [wants[i] as number, leans[i] as number]
      const amps = Math.max(0, want + lean * spec.outputVoltage)
      let output = spec.outputVoltage
      let taken = 0
      if (spec.outputCurrentLimit !== null && amps > spec.outputCurrentLimit) {
        // a load beyond the limit cannot be carried: off until it is taken away
        limits[i] = "output-current"
        output = 0
      } else {
        const demand = (output * amps) / efficiencyAt(spec.efficiency, amps)
        if (demand <= bound.power) {
          limits[i] = "none"
          const idle = (inputVolts[i] as number) + r * ((runAmps[i] as number) - spec.quiescentCurrent)
          taken = (2 * demand) / (idle + Math.sqrt(Math.max(0, idle * idle - 4 * r * demand)))
        } else {
          limits[i] = bound.limitedBy
          taken = bound.current
          const given = bound.power * efficiencyAt(spec.efficiency, Math.max(0, want + lean * (volts[i] as number)))
          const under = want * want + 4 * lean * given
          if (under < 0) {
            fails(state, i, "too-much-power")
            return
          }
          output = (2 * given) / (want + Math.sqrt(under))
        }
      }
      moved = Math.max(moved, Math.abs(output - (volts[i] as number)))
      volts[i] = output
      runAmps[i] = spec.quiescentCurrent + taken
    }
    if (moved <= settled) {
      powers(model, state)
      return
    }
  }
  fails(state, order[order.length - 1] as number, "too-much-power")
}

/** Sources past their limits give nothing; what is held down holds down what is behind it. */
function tripped({ order, above, sourceOf, sources }: SupplyModel, { sourceAmps, volts, limits }: SupplyState): void {
  for (let k = 0; k < order.length; k++) {
    const i = order[k] as number
    const { currentLimit } = sources[sourceOf[i] as number] as SourceModel
    if (currentLimit !== null && (sourceAmps[sourceOf[i] as number] as number) > currentLimit * (1 + 1e-12)) {
      volts[i] = 0
      limits[i] = "source-current"
    } else if (limits[i] === "none") {
      const up = above[i] as number
      if (up !== -1) limits[i] = limits[up] as Limit
    }
  }
}
