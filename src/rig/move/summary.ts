import type { OutFields, SiOf } from "../../solver/index.js"
import type { RigDocument } from "../document/document.js"
import { armModel } from "../motion/arms.js"
import { type Circuit, circuitOf, type SupplyChain, stiff, supplyChain } from "../power/circuit.js"
import { constantsOf, type Direction, type MoveModel, moveSeconds, type SolvedMove } from "./move.js"

/** One step of where the seconds go. */
export interface WaterfallStep {
  /** What this step adds to the calculation. [text] */
  readonly label: string
  /** Time of the move with it and all before it. [s] */
  readonly time: number
  /** Seconds it adds (negative: saves). [s] */
  readonly added: number
}

/** One point of a move's curves. */
export interface MovePoint {
  /** Time [s] */
  readonly time: number
  /** Stroke [m] */
  readonly stroke: number
  /** Angle [rad] */
  readonly angle: number
  /** Force [N] */
  readonly force: number
  /** Current [A] */
  readonly current: number
  /** Voltage [V] */
  readonly voltage: number
  /** Speed [m/s] */
  readonly speed: number
}

/** Where the energy of a move goes, J; the parts add up to what the source gives. */
export interface EnergyAccount {
  /** Given by the source at its open-circuit voltage. [J] */
  readonly source: number
  /** Rise of potential energy of arms and springs (negative when lowering). [J] */
  readonly lifted: number
  /** Hinge friction [J] */
  readonly hingeFriction: number
  /** Gears and screw [J] */
  readonly gearsAndScrew: number
  /** Winding [J] */
  readonly winding: number
  /** Wires to the actuators [J] */
  readonly loadWires: number
  /** Converter [J] */
  readonly converter: number
  /** Wires, switch and fuse [J] */
  readonly sourceWires: number
  /** Inside the source [J] */
  readonly insideSource: number
  /** Energy balance error, as a fraction of the largest part. [number] */
  readonly residual: number
}

/** A move one way. */
export interface Move {
  /** Time up or time down [s] */
  readonly time: number
  /** Maximum force against the motion at one rod, and the arm angle there. [N] */
  readonly peakForce: number
  /** Arm angle there [rad] */
  readonly peakForceAngle: number
  /** Maximum current of all actuators together. [A] */
  readonly peakCurrent: number
  /** Maximum current of the source [A] */
  readonly peakSourceCurrent: number
  /** Minimum voltage at the actuators [V] */
  readonly minVoltage: number
  /** Slowest rod speed [m/s] */
  readonly minSpeed: number
  /** Share of the time in which a limit of converter or bank binds. [as a fraction] */
  readonly limitedShare: number
  /** The limit that binds, or `none`. [text] */
  readonly limitedBy: string
  /** Peak kinetic energy of the arms against the energy moved: the quasi-static answer is good while small. [as a fraction] */
  readonly inertiaShare: number
  /** Where the seconds go [list] */
  readonly waterfall: readonly WaterfallStep[]
  /** Energy of the move [group] */
  readonly energy: EnergyAccount
  /** Curve [list] */
  readonly curve: readonly MovePoint[]
}

type Si = SiOf<RigDocument>
type Arms = NonNullable<Si["hinged"]>

function modelOf(rig: Si, circuit: Circuit, breaks: readonly number[]): MoveModel {
  const arms = rig.hinged as Arms
  return { arms, arm: armModel(arms), constants: constantsOf(arms), circuit, breaks }
}

/** The whole model of a rig that has arms, a source and wiring. */
export function wholeMove(rig: Si): { readonly model: MoveModel; readonly chain: SupplyChain } {
  const chain = supplyChain(rig)
  return { model: modelOf(rig, circuitOf(chain), chain.converter?.efficiency.map((p) => p.outputCurrent) ?? []), chain }
}

/** Rod direction of the raise. */
export function raiseDirection(rig: Si): Direction {
  return rig.hinged?.raised === "retracted" ? -1 : 1
}

function waterfall(rig: Si, chain: SupplyChain, direction: Direction, time: number): WaterfallStep[] {
  const { actuator } = rig.hinged as Arms
  const seconds = (circuit: Circuit) =>
    moveSeconds(modelOf(rig, circuit, chain.converter?.efficiency.map((p) => p.outputCurrent) ?? []), direction)
  const stages: readonly (readonly [string, number | null])[] = [
    ["without load, at rated voltage", actuator.stroke / actuator.noLoadSpeed],
    ["the load, at rated voltage", seconds(stiff(actuator.ratedVoltage))],
    [
      chain.converter ? "converter's own output voltage" : "source voltage and sag",
      seconds(circuitOf(chain, { sourceResistance: true, wires: false, limits: false })),
    ],
    ["wires and contacts", seconds(circuitOf(chain, { sourceResistance: true, wires: true, limits: false }))],
    [chain.converter ? "converter limit" : "source limit", time],
  ]
  const steps: WaterfallStep[] = []
  let before = 0
  for (const [label, at] of stages) {
    // a stage that would stall by itself is passed over: its seconds show in the next one
    if (at === null) continue
    steps.push({ label, time: at, added: at - before })
    before = at
  }
  return steps
}

/** A solved move as a maker reads it. */
export function summary(rig: Si, model: MoveModel, chain: SupplyChain, solved: SolvedMove, direction: Direction): Move {
  const { points, totals, times } = solved
  const { count, hingeFriction } = model.arms
  const peak = points.reduce((a, b) => (b.force > a.force ? b : a))
  const [first, last] = [points[0], points[points.length - 1]] as [(typeof points)[0], (typeof points)[0]]
  const lifted = count * (model.arm.energyAt(last.angle) - model.arm.energyAt(first.angle))
  const friction = count * hingeFriction * Math.abs(last.angle - first.angle)
  const parts = [
    lifted,
    friction,
    totals.drive,
    totals.winding,
    totals.loadLineLoss,
    totals.converterLoss,
    totals.lineLoss,
    totals.sourceLoss,
  ]
  const largest = Math.max(totals.source, ...parts.map(Math.abs))
  const kinetic = Math.max(...points.map((p) => (count * model.arm.inertia * (p.speed / p.lever) ** 2) / 2))
  const limits = [...new Set(points.map((p) => p.supply.limitedBy).filter((l) => l !== "none"))]
  return {
    time: totals.time,
    peakForce: peak.force,
    peakForceAngle: peak.angle,
    peakCurrent: Math.max(...points.map((p) => count * p.current)),
    peakSourceCurrent: Math.max(...points.map((p) => p.supply.sourceCurrent)),
    minVoltage: Math.min(...points.map((p) => p.supply.voltage)),
    minSpeed: Math.min(...points.map((p) => p.speed)),
    limitedShare: totals.limited / totals.time,
    limitedBy: limits[0] ?? "none",
    inertiaShare: kinetic / Math.max(Math.abs(lifted), totals.source),
    waterfall: waterfall(rig, chain, direction, totals.time),
    energy: {
      source: totals.source,
      lifted,
      hingeFriction: friction,
      gearsAndScrew: totals.drive,
      winding: totals.winding,
      loadWires: totals.loadLineLoss,
      converter: totals.converterLoss,
      sourceWires: totals.lineLoss,
      insideSource: totals.sourceLoss,
      residual: (totals.source - parts.reduce((a, b) => a + b, 0)) / largest,
    },
    curve: points.map((p, i) => ({
      time: times[i] as number,
      stroke: p.stroke,
      angle: p.angle,
      force: p.force,
      current: p.current,
      voltage: p.supply.voltage,
      speed: p.speed,
    })),
  }
}

/** Descriptions of a move's fields. */
export const moveFields = (up: string): OutFields<Move> => ({
  time: { kind: "time", label: `time ${up}` },
  peakForce: { kind: "force", label: "maximum force at one rod" },
  peakForceAngle: { kind: "angle", label: "arm angle there" },
  peakCurrent: { kind: "current", label: "maximum current, all actuators" },
  peakSourceCurrent: { kind: "current", label: "maximum current of the source" },
  minVoltage: { kind: "voltage", label: "minimum voltage at the actuators" },
  minSpeed: { kind: "speed", label: "slowest rod speed" },
  limitedShare: { kind: "ratio", label: "share of the time at a limit", unit: "%" },
  limitedBy: { kind: "text", label: "limit that binds" },
  inertiaShare: { kind: "ratio", label: "energy of motion against energy moved", unit: "%" },
  waterfall: {
    kind: "list",
    label: "where the seconds go",
    of: {
      kind: "group",
      label: "step",
      fields: {
        label: { kind: "text", label: "with" },
        time: { kind: "time", label: "time", unit: "s" },
        added: { kind: "time", label: "added", unit: "s" },
      },
    },
  },
  energy: {
    kind: "group",
    label: "energy of the move",
    fields: {
      source: { kind: "energy", label: "from the source" },
      lifted: { kind: "energy", label: "lifted" },
      hingeFriction: { kind: "energy", label: "hinge friction" },
      gearsAndScrew: { kind: "energy", label: "gears and screw" },
      winding: { kind: "energy", label: "winding" },
      loadWires: { kind: "energy", label: "wires to the actuators" },
      converter: { kind: "energy", label: "converter" },
      sourceWires: { kind: "energy", label: "wires, switch and fuse" },
      insideSource: { kind: "energy", label: "inside the source" },
      residual: { kind: "number", label: "energy balance error" },
    },
  },
  curve: {
    kind: "list",
    label: "curve",
    of: {
      kind: "group",
      label: "point",
      fields: {
        time: { kind: "time", label: "time", unit: "s" },
        stroke: { kind: "length", label: "stroke", unit: "mm" },
        angle: { kind: "angle", label: "angle" },
        force: { kind: "force", label: "force" },
        current: { kind: "current", label: "current" },
        voltage: { kind: "voltage", label: "voltage" },
        speed: { kind: "speed", label: "speed" },
      },
    },
  },
})
