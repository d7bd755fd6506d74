// What a move of one motion tells.
import type { OutFields } from "../../solver/index.js"
import type { Rig, RigDrive, RigMechanism, RigTransmission, Typed } from "../whole/document.js"

/** A rig, and which of its motions is asked about. */
export interface MoveInput<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>
  extends Rig<D, T, M> {
  /** Name of the motion; left out, the first one. [text of 1 to 100 characters; optional] */
  motion?: string | null
}

/** One step of where the seconds go. */
export interface WayStep {
  /** What this step takes into account. [text] */
  readonly label: string
  /** Time with it and all before it. [s] */
  readonly duration: number
  /** Seconds it adds in this order; negative: saves. [s] */
  readonly added: number
  /** Seconds that mending it alone would save; null where it cannot be mended alone. [s] */
  readonly saved: number | null
}

/** Where the energy of one way goes, J; the parts add up to what the sources give at their open-circuit voltages. */
export interface WayEnergy {
  /** From the sources [J] */
  readonly source: number
  /** Inside the sources [J] */
  readonly insideSource: number
  /** Wires, contacts, switches and fuses [J] */
  readonly wires: number
  /** Converters [J] */
  readonly converters: number
  /** Lights, controllers and other loads [J] */
  readonly loads: number
  /** Other motions at the same time [J] */
  readonly others: number
  /** Windings [J] */
  readonly winding: number
  /** Gears and screw inside the drives [J] */
  readonly drive: number
  /** Work at the drives' outputs [J] */
  readonly work: number
  /** Energy balance error, as a fraction of the largest part. [number] */
  readonly residual: number
}

/** One place on the way. */
export interface WayPoint {
  /** Time [s] */
  readonly time: number
  /** Rod of the drive; null for a shaft. [m] */
  readonly stroke: number | null
  /** Shaft of the drive; null for a rod. [rad] */
  readonly turned: number | null
  /** Angle of the first mechanism; null where it shows a length. [rad] */
  readonly angle: number | null
  /** Length of the first mechanism; null where it shows an angle. [m] */
  readonly span: number | null
  /** Force against the motion at one rod; null for a shaft. [N] */
  readonly force: number | null
  /** Torque against the motion at one shaft; null for a rod. [N m] */
  readonly torque: number | null
  /** Current [A] */
  readonly current: number
  /** Voltage [V] */
  readonly voltage: number
}

/** A motion one way. */
export interface WayMove {
  /** Time out or time back [s] */
  readonly duration: number
  /** Maximum force at one rod; null for a shaft. [N] */
  readonly peakForce: number | null
  /** Maximum torque at one shaft; null for a rod. [N m] */
  readonly peakTorque: number | null
  /** Maximum current, all drives [A] */
  readonly peakCurrent: number
  /** Maximum current of the source [A] */
  readonly peakSourceCurrent: number
  /** Minimum voltage at the drives [V] */
  readonly minVoltage: number
  /** Share of the time in which a limit binds. [as a fraction] */
  readonly limitedShare: number
  /** The limit that binds, or `none`. [text] */
  readonly limitedBy: string
  /** Energy of motion against the energy moved: the answer is good while small. [as a fraction] */
  readonly inertiaShare: number
  /** Where the seconds go [list] */
  readonly waterfall: readonly WayStep[]
  /** Energy [group] */
  readonly energy: WayEnergy
  /** Curve [list] */
  readonly curve: readonly WayPoint[]
}

/** Result of a move. */
export interface Move {
  /** Time out [t_out; s] */
  readonly outDuration: number
  /** Time back [t_back; s] */
  readonly backDuration: number
  /** Out and back [t_both; s] */
  readonly cycleDuration: number
  /** What costs most seconds on the way out. [text] */
  readonly limit: string
  /** Where the motions stand that carry it or that it carries: both times are those of the slowest case; empty without any. [text] */
  readonly condition: string
  /** Out [group] */
  readonly out: WayMove
  /** Back [group] */
  readonly back: WayMove
  /** Estimated error of both times together. [s] */
  readonly errorEstimate: number
  /** Points evaluated [number] */
  readonly evaluations: number
}

/** Reasons for which a move is refused. */
export type MoveRefusal =
  | "cannot-close"
  | "dead-point"
  | "jammed"
  | "slack"
  | "insufficient-effort"
  | "insufficient-power"
  | "no-supply"
  | "coupled"

/** Hazards that go with a move. */
export type MoveCaution = "pinch" | "falls-unpowered" | "cells" | "bank-may-switch-off" | "inertia" | "no-supply-stated" | "no-fuse"

const way = (word: string): OutFields<WayMove> => ({
  duration: { kind: "time", label: `time ${word}` },
  peakForce: { kind: "force", label: "maximum force at one rod" },
  peakTorque: { kind: "moment", label: "maximum torque at one shaft" },
  peakCurrent: { kind: "current", label: "maximum current, all drives" },
  peakSourceCurrent: { kind: "current", label: "maximum current of the source" },
  minVoltage: { kind: "voltage", label: "minimum voltage at the drives" },
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
        duration: { kind: "time", label: "time", unit: "s" },
        added: { kind: "time", label: "added", unit: "s" },
        saved: { kind: "time", label: "saved by mending it alone", unit: "s" },
      },
    },
  },
  energy: {
    kind: "group",
    label: "energy",
    fields: {
      source: { kind: "energy", label: "from the sources" },
      insideSource: { kind: "energy", label: "inside the sources" },
      wires: { kind: "energy", label: "wires, contacts, switches and fuses" },
      converters: { kind: "energy", label: "converters" },
      loads: { kind: "energy", label: "lights, controllers and other loads" },
      others: { kind: "energy", label: "other motions at the same time" },
      winding: { kind: "energy", label: "windings" },
      drive: { kind: "energy", label: "gears and screw inside the drives" },
      work: { kind: "energy", label: "work at the drives' outputs" },
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
        stroke: { kind: "length", label: "rod of the drive", unit: "mm" },
        turned: { kind: "angle", label: "shaft of the drive" },
        angle: { kind: "angle", label: "angle" },
        span: { kind: "length", label: "length", unit: "mm" },
        force: { kind: "force", label: "force" },
        torque: { kind: "moment", label: "torque" },
        current: { kind: "current", label: "current" },
        voltage: { kind: "voltage", label: "voltage" },
      },
    },
  },
})

/** Descriptions of a move's results. */
export const moveOutput: OutFields<Move> = {
  outDuration: { kind: "time", symbol: "t_out", label: "time out" },
  backDuration: { kind: "time", symbol: "t_back", label: "time back" },
  cycleDuration: { kind: "time", symbol: "t_both", label: "out and back" },
  limit: { kind: "text", label: "costs most" },
  condition: { kind: "text", label: "where the others stand" },
  out: { kind: "group", label: "out", fields: way("out") },
  back: { kind: "group", label: "back", fields: way("back") },
  errorEstimate: { kind: "time", label: "estimated error of the times" },
  evaluations: { kind: "number", label: "points evaluated" },
}
