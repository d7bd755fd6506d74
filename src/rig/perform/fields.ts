// Descriptions of how a performance is played and of what it tells.
import type { AnyField, OutFields } from "../../solver/index.js"
import type { Perform } from "./types.js"

/** Description of `stage`. */
export const stageField: AnyField = {
  kind: "group",
  label: "how it is played",
  default: {},
  fields: {
    duration: { kind: "time", symbol: "t_f", label: "time that is followed", min: "10 ms", max: "24 h", default: null },
    restitution: { kind: "ratio", symbol: "e_s", label: "share of the speed that comes back from a stop", min: 0, max: 0.95, default: 0 },
    restartTime: { kind: "time", symbol: "t_k", label: "time a controller takes to start anew", min: "10 ms", max: "5 min", default: 2 },
    rampTime: { kind: "time", symbol: "t_u", label: "time a ramped driver takes to full voltage", min: 0, max: "1 min", default: 0.5 },
    steps: {
      kind: "group",
      label: "steps of the wearer",
      default: null,
      fields: {
        stepRate: { kind: "frequency", symbol: "f_s", label: "steps per second", min: 1, max: 2.8, default: 2 },
        shake: { kind: "ratio", symbol: "a_s", label: "acceleration up and down against gravity's", min: 0, max: 1, default: null },
      },
    },
    gust: {
      kind: "group",
      label: "a gust",
      default: null,
      fields: {
        at: { kind: "time", symbol: "t_g", label: "when it begins", min: 0, max: "24 h" },
        duration: { kind: "time", symbol: "d_g", label: "how long it lasts", min: "50 ms", max: "5 min" },
        windSpeed: { kind: "speed", symbol: "v_g", label: "wind speed at its height", min: 0, max: 40 },
        from: {
          kind: "angle",
          symbol: "psi_g",
          label: "where it comes from, ahead towards the left",
          min: "-360 deg",
          max: "360 deg",
          default: 0,
        },
      },
    },
  },
}

const columns = <K extends "number" | "time" | "ratio" | "speed" | "angularSpeed" | "current" | "voltage" | "force" | "moment">(
  kind: K,
  label: string,
) => ({ kind: "list", label, of: { kind, label } }) as const

/** Descriptions of a performance. */
export const performOutput: OutFields<Perform> = {
  duration: { kind: "time", symbol: "t_all", label: "time followed" },
  times: columns("time", "times"),
  motions: {
    kind: "list",
    label: "motions",
    of: {
      kind: "group",
      label: "motion",
      fields: {
        name: { kind: "text", label: "motion" },
        travel: columns("ratio", "share of its way"),
        speed: columns("speed", "speed of the rod"),
        turning: columns("angularSpeed", "speed of the shaft"),
        current: columns("current", "current of all its drives"),
        voltage: columns("voltage", "voltage at its drives"),
        force: columns("force", "force of one rod"),
        torque: columns("moment", "torque of one shaft"),
        peakForce: { kind: "force", label: "maximum force of one rod" },
        peakTorque: { kind: "moment", label: "maximum torque of one shaft" },
        peakCurrent: { kind: "current", label: "maximum current of all its drives" },
      },
    },
  },
  buses: {
    kind: "list",
    label: "buses",
    of: {
      kind: "group",
      label: "bus",
      fields: {
        name: { kind: "text", label: "bus" },
        voltage: columns("voltage", "voltage"),
        minVoltage: { kind: "voltage", label: "minimum voltage" },
        minTime: { kind: "time", label: "time of the minimum" },
      },
    },
  },
  sources: {
    kind: "list",
    label: "sources",
    of: {
      kind: "group",
      label: "source",
      fields: {
        name: { kind: "text", label: "source" },
        current: columns("current", "current"),
        peakCurrent: { kind: "current", label: "maximum current" },
        charge: columns("ratio", "charge left"),
      },
    },
  },
  events: {
    kind: "list",
    label: "what happens",
    of: {
      kind: "group",
      label: "event",
      fields: {
        time: { kind: "time", label: "time", unit: "s" },
        type: { kind: "text", label: "kind of event" },
        subject: { kind: "text", label: "about" },
        sentence: { kind: "text", label: "what happens" },
        speed: { kind: "speed", label: "speed of the fastest tip" },
        energy: { kind: "energy", label: "energy at the stop" },
        voltage: { kind: "voltage", label: "voltage" },
        current: { kind: "current", label: "current" },
        place: { kind: "ratio", label: "share of its way", unit: "%" },
      },
    },
  },
  steps: {
    kind: "list",
    label: "steps of the programme",
    of: {
      kind: "group",
      label: "step",
      fields: {
        motion: { kind: "text", label: "motion" },
        begin: { kind: "time", label: "begins", unit: "s" },
        from: { kind: "ratio", label: "from", unit: "%" },
        to: { kind: "ratio", label: "to", unit: "%" },
        duration: { kind: "time", label: "time it takes", unit: "s" },
        slot: { kind: "time", label: "time that the programme leaves it", unit: "s" },
        reached: { kind: "ratio", label: "reached", unit: "%" },
        quasiStatic: { kind: "time", label: "time found without inertia", unit: "s" },
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
      drivers: { kind: "energy", label: "drivers and circuits of the drives" },
      winding: { kind: "energy", label: "windings" },
      drive: { kind: "energy", label: "gears and screw inside the drives" },
      friction: { kind: "energy", label: "friction of transmissions and mechanisms" },
      lifting: { kind: "energy", label: "against weights, springs, wind and steps" },
      stops: { kind: "energy", label: "taken by the stops" },
      motion: { kind: "energy", label: "still in motion at the end" },
      residual: { kind: "number", label: "energy balance error" },
    },
  },
  evaluations: { kind: "number", label: "times that the state's slope was asked for" },
}
