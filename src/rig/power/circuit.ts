import { type ConverterSpec, converterOutput } from "../../converter/index.js"
import { openCircuitVoltage, resistanceFactor } from "../../pack/index.js"
import type { SiOf } from "../../solver/index.js"
import type { RigDocument } from "../document/document.js"
import { runResistance } from "../supply/tree.js"

/** What the supply does at one current; powers in W. */
export interface CircuitPoint {
  /** Voltage at the actuators, V. */
  readonly voltage: number
  /** Current from the source, A. */
  readonly sourceCurrent: number
  /** Power the source gives at its open-circuit voltage, W. */
  readonly sourcePower: number
  /** Lost inside the source (cells, bank), W. */
  readonly sourceLoss: number
  /** Lost between source and converter (or actuators), W. */
  readonly lineLoss: number
  readonly converterLoss: number
  /** Lost between converter and actuators, W. */
  readonly loadLineLoss: number
  /** Limit that binds: `none`, or the converter's or bank's. */
  readonly limitedBy: string
}

/** A supply seen from the actuators: what it gives at a total current. */
export type Circuit = (current: number) => CircuitPoint | null

/** Resistances and voltages of a rig's supply chain, SI. */
export interface SupplyChain {
  /** Open-circuit voltage of pack or bank, V. */
  readonly openVoltage: number
  /** Resistance inside the source, Ω. */
  readonly sourceResistance: number
  /** Maximum current of the source itself (a bank's limit), A; null where none is known. */
  readonly sourceLimit: number | null
  /** Wires, contacts, switch and fuse up to the converter, Ω. */
  readonly lineResistance: number
  readonly converter: ConverterSpec | null
  /** Wires and contacts from converter to actuators, Ω. */
  readonly loadResistance: number
}

/** The supply chain of a rig document that has a source and wiring. */
export function supplyChain(rig: SiOf<RigDocument>): SupplyChain {
  const { pack, bank, converter, wiring } = rig
  if (!pack && !bank) throw new RangeError("A supply chain without a source: its faults are found before.")
  const line = wiring ? runResistance(wiring.source) + wiring.switchResistance + wiring.fuseResistance : 0
  const load = wiring?.load ? runResistance(wiring.load) : 0
  const source = pack
    ? {
        openVoltage: pack.series * openCircuitVoltage(pack.chemistry, pack.stateOfCharge),
        sourceResistance:
          (pack.series * pack.cellResistance * resistanceFactor(pack.chemistry, pack.temperature)) / pack.parallel + pack.extraResistance,
        sourceLimit: null,
      }
    : { openVoltage: bank?.voltage ?? 0, sourceResistance: bank?.resistance ?? 0, sourceLimit: bank?.currentLimit ?? null }
  // without a converter both runs are in series with the actuators
  return { ...source, lineResistance: line, converter, loadResistance: load }
}

/** Which parts of the chain a circuit takes into account: the time waterfall adds them one by one. */
export interface ChainParts {
  readonly sourceResistance: boolean
  readonly wires: boolean
  readonly limits: boolean
}

const whole: ChainParts = { sourceResistance: true, wires: true, limits: true }

/** A supply of fixed voltage and no resistance. */
export function stiff(voltage: number): Circuit {
  return (current) => ({
    voltage,
    sourceCurrent: current,
    sourcePower: voltage * current,
    sourceLoss: 0,
    lineLoss: 0,
    converterLoss: 0,
    loadLineLoss: 0,
    limitedBy: "none",
  })
}

/** The circuit of a supply chain, whole or in part. */
export function circuitOf(chain: SupplyChain, parts: ChainParts = whole): Circuit {
  const sourceResistance = parts.sourceResistance ? chain.sourceResistance : 0
  const lineResistance = parts.wires ? chain.lineResistance : 0
  const loadResistance = parts.wires ? chain.loadResistance : 0
  const { openVoltage, converter } = chain
  const limit = parts.limits ? chain.sourceLimit : null

  if (!converter)
    return (current) => {
      const trips = limit !== null && current > limit
      return {
        voltage: trips ? 0 : openVoltage - current * (sourceResistance + lineResistance + loadResistance),
        sourceCurrent: current,
        sourcePower: openVoltage * current,
        sourceLoss: current ** 2 * sourceResistance,
        lineLoss: current ** 2 * lineResistance,
        converterLoss: 0,
        loadLineLoss: current ** 2 * loadResistance,
        limitedBy: trips ? "source-current" : "none",
      }
    }

  const spec: ConverterSpec = {
    ...converter,
    inputCurrentLimit: parts.limits ? lesser(converter.inputCurrentLimit, limit) : null,
    outputCurrentLimit: parts.limits ? converter.outputCurrentLimit : null,
  }
  const source = { sourceVoltage: openVoltage, sourceResistance: sourceResistance + lineResistance }
  return (current) => {
    const point = converterOutput(spec, source, current)
    if (!point) return null
    const { inputCurrent, inputVoltage, outputVoltage, limitedBy } = point
    return {
      voltage: outputVoltage - current * loadResistance,
      sourceCurrent: inputCurrent,
      sourcePower: openVoltage * inputCurrent,
      sourceLoss: inputCurrent ** 2 * sourceResistance,
      lineLoss: inputCurrent ** 2 * lineResistance,
      converterLoss: inputVoltage * inputCurrent - outputVoltage * current,
      loadLineLoss: current ** 2 * loadResistance,
      limitedBy,
    }
  }
}

function lesser(a: number | null, b: number | null): number | null {
  return a === null ? b : b === null ? a : Math.min(a, b)
}
