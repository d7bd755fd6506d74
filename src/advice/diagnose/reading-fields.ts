// Descriptions of what can be read.
import type { VariantField } from "../../solver/index.js"
import type { RigReading } from "./readings.js"

const named = (label: string) => ({ kind: "text", label, min: 1, max: 100 }) as const
const motion = { ...named("motion read on"), default: null } as const
const way = {
  kind: "choice",
  label: "way of the motion",
  options: { out: "out, from the start of its drive's travel", back: "back to the start" },
  default: "out",
} as const
const during = {
  kind: "choice",
  label: "when it is read",
  options: { moving: "while it moves, on average", rest: "at rest, power on", stalled: "switched on, and it does not move" },
  default: "moving",
} as const

/** Description of one reading. */
export const readingField: VariantField<RigReading> = {
  kind: "variant",
  label: "reading",
  of: {
    time: {
      label: "time of a motion",
      fields: {
        motion,
        way,
        value: { kind: "time", symbol: "t_r", label: "time from start to end", min: "1 ms", max: "1 h" },
        uncertainty: { kind: "time", symbol: "st_r", label: "uncertainty of the time", min: "0.1 ms", max: "1 h", default: null },
      },
    },
    swing: {
      label: "swing",
      fields: {
        motion,
        value: { kind: "angle", symbol: "th_r", label: "angle between both ends", min: 0, max: "36000 deg" },
        uncertainty: { kind: "angle", symbol: "sth_r", label: "uncertainty of the angle", min: "0.001 deg", max: "360 deg", default: null },
      },
    },
    reach: {
      label: "change of length",
      fields: {
        motion,
        value: { kind: "length", symbol: "s_r", label: "change of length between both ends", min: 0, max: 100 },
        uncertainty: { kind: "length", symbol: "ss_r", label: "uncertainty of the length", min: "0.01 mm", max: 10, default: null },
      },
    },
    voltage: {
      label: "voltage at a source or bus",
      fields: {
        motion,
        way,
        during,
        at: named("source or bus read at"),
        side: {
          kind: "choice",
          label: "side of the converter",
          options: { output: "at the bus, behind its converter", input: "before its converter" },
          default: "output",
        },
        value: { kind: "voltage", symbol: "U_r", label: "voltage", min: 0, max: 1000 },
        uncertainty: { kind: "voltage", symbol: "sU_r", label: "uncertainty of the voltage", min: "0.01 mV", max: 100, default: null },
      },
    },
    "voltage-drop": {
      label: "voltage lost along a run",
      fields: {
        motion,
        way,
        during,
        along: named("bus that the run leads to"),
        value: { kind: "voltage", symbol: "dU_r", label: "voltage lost, both wires together", min: 0, max: 1000 },
        uncertainty: {
          kind: "voltage",
          symbol: "sdU_r",
          label: "uncertainty of the voltage lost",
          min: "0.01 mV",
          max: 100,
          default: null,
        },
      },
    },
    current: {
      label: "current",
      fields: {
        motion,
        way,
        during,
        at: { ...named("source or bus whose run it flows through"), default: null },
        value: { kind: "current", symbol: "I_r", label: "current", min: 0, max: 1000 },
        uncertainty: { kind: "current", symbol: "sI_r", label: "uncertainty of the current", min: "0.01 mA", max: 100, default: null },
      },
    },
    force: {
      label: "pull at a luggage scale",
      fields: {
        motion,
        way,
        mechanism: { ...named("mechanism pulled at"), default: null },
        place: { kind: "ratio", symbol: "p_r", label: "place on its way out", min: 0, max: 1, default: 0.5 },
        value: { kind: "force", symbol: "F_r", label: "pull, square to the arm", min: 0, max: 10000 },
        uncertainty: { kind: "force", symbol: "sF_r", label: "uncertainty of the pull", min: 1e-4, max: 1000, default: null },
      },
    },
    "cell-resistance": {
      label: "resistance of one cell",
      fields: {
        source: named("pack it is in"),
        value: { kind: "resistance", symbol: "Rc_r", label: "resistance of one cell", min: 1e-5, max: 100 },
        uncertainty: { kind: "resistance", symbol: "sRc_r", label: "uncertainty of the resistance", min: 1e-5, max: 10, default: null },
      },
    },
    "cell-temperature": {
      label: "temperature of the cells",
      fields: {
        source: named("pack it is in"),
        value: { kind: "temperature", symbol: "T_r", label: "temperature of the cells", min: -40, max: 80 },
        uncertainty: {
          kind: "number",
          symbol: "sT_r",
          label: "uncertainty of the temperature, in degrees",
          min: 0.1,
          max: 20,
          default: 2,
        },
      },
    },
    "does-not-move": { label: "does not move", fields: { motion, way } },
    "stops-at": {
      label: "stops on its way",
      either: [{ exactlyOne: ["angle", "stroke", "share"] }],
      fields: {
        motion,
        way,
        angle: { kind: "angle", symbol: "th_s", label: "angle covered until it stops", min: 0, max: "36000 deg", default: null },
        stroke: { kind: "length", symbol: "s_s", label: "travel of its rod or line until it stops", min: 0, max: 100, default: null },
        share: { kind: "ratio", symbol: "p_s", label: "share of its way until it stops", min: 0, max: 1, default: null },
      },
    },
    "switches-off": { label: "moves, then the supply switches off", fields: { motion, way } },
    "one-side-slower": {
      label: "one side is slower",
      fields: {
        motion,
        way,
        value: { kind: "time", symbol: "dt_r", label: "by how much", min: "1 ms", max: "1 h", default: null },
        uncertainty: { kind: "time", symbol: "sdt_r", label: "uncertainty of the difference", min: "0.1 ms", max: "1 h", default: null },
      },
    },
    "slow-in-the-cold": {
      label: "fine at home, slow in the cold",
      fields: {
        motion,
        way,
        temperature: { kind: "temperature", symbol: "T_o", label: "temperature out there", min: -40, max: 40 },
        times: { kind: "number", symbol: "k_t", label: "times as long as at home", min: 0.1, max: 100, default: null },
      },
    },
    "wrong-way": {
      label: "goes the wrong way",
      fields: {
        motion,
        what: {
          kind: "choice",
          label: "what goes the wrong way",
          options: { all: "all of it", "one-of-a-pair": "one of a pair" },
          default: "all",
        },
      },
    },
    warm: {
      label: "warmer than it should be",
      fields: {
        part: {
          kind: "choice",
          label: "part",
          options: {
            source: "cells, bank or plugged-in supply",
            wire: "wire, all along",
            contact: "plug, crimp, switch or fuse",
            converter: "converter",
            drive: "drive",
          },
        },
        at: named("source, bus or motion it belongs to"),
      },
    },
    sound: {
      label: "sound",
      fields: {
        motion,
        sound: {
          kind: "choice",
          label: "what is heard",
          options: {
            gritty: "gritty or grinding",
            clicking: "clicking, or slipping with a jerk",
            squeaking: "squeaking or rubbing",
            humming: "humming, and it hardly moves",
          },
        },
      },
    },
  },
}
