import { chemistries } from "../../pack/index.js"
import { type Either, type Fields, type GroupField, optionsFrom } from "../../solver/index.js"
import type { RigDocument, RigPoint, RigRun } from "./document.js"
import { sectionFields } from "./sections.js"

const point = (label: string, x: string, y: string): GroupField<RigPoint> => ({
  kind: "group",
  label,
  fields: {
    x: { kind: "length", symbol: x, label: `${label}, outward`, min: -5, max: 5 },
    y: { kind: "length", symbol: y, label: `${label}, upward`, min: -5, max: 5 },
  },
})

const run = (label: string, key: string): GroupField<RigRun> => ({
  kind: "group",
  label,
  either: [{ exactlyOne: ["awg", "area"] }],
  fields: {
    length: { kind: "length", symbol: `L_${key}`, label: "length one way", min: 0, max: 50 },
    awg: { kind: "number", symbol: `g_${key}`, label: "wire gauge (AWG)", whole: true, min: -3, max: 40, default: null },
    area: { kind: "area", symbol: `A_${key}`, label: "cross-section", min: "0.0001 mm2", max: "1000 mm2", default: null },
    contacts: { kind: "number", symbol: `k_${key}`, label: "contacts in the path", whole: true, min: 0, max: 100, default: 0 },
    contactResistance: { kind: "resistance", symbol: `Rc_${key}`, label: "resistance of one contact", min: 0, max: 10, default: "5 mohm" },
    temperature: { kind: "temperature", symbol: `Tw_${key}`, label: "wire temperature", min: -50, max: 200, default: 25 },
  },
})

/** Descriptions of every field of a rig document. */
export const rigFields: Fields<RigDocument> = {
  ...sectionFields,
  version: { kind: "number", symbol: "n_doc", label: "document version", whole: true, min: 1, max: 1 },
  name: { kind: "text", label: "name of the rig", min: 1, max: 100 },
  note: { kind: "text", label: "note", min: 0, max: 5000, default: "" },
  hinged: {
    kind: "group",
    label: "arms on hinges",
    default: null,
    fields: {
      count: { kind: "number", symbol: "n", label: "like arms", whole: true, min: 1, max: 16, default: 1 },
      hinge: point("hinge", "x_h", "y_h"),
      fixedPivot: point("fixed pivot", "x_a", "y_a"),
      movingPivot: {
        kind: "group",
        label: "moving pivot",
        fields: {
          radius: { kind: "length", symbol: "r_p", label: "moving pivot from the hinge", min: "1 mm", max: 2 },
          angle: { kind: "angle", symbol: "phi_p", label: "moving pivot from the arm", min: "-360 deg", max: "360 deg" },
        },
      },
      axisOffset: { kind: "length", symbol: "e", label: "axis offset of the rod", min: 0, max: 0.2, default: 0 },
      assembly: {
        kind: "choice",
        label: "side of the moving pivot",
        options: { "counter-clockwise": "counter-clockwise", clockwise: "clockwise" },
        default: "counter-clockwise",
      },
      raised: {
        kind: "choice",
        label: "arms are up with the rod",
        options: { extended: "extended", retracted: "retracted" },
        default: "extended",
      },
      masses: {
        kind: "list",
        label: "masses on one arm",
        min: 1,
        max: 60,
        of: {
          kind: "group",
          label: "mass",
          fields: {
            name: { kind: "text", label: "part", min: 1, max: 100 },
            mass: { kind: "mass", symbol: "m_i", label: "mass", min: "0.1 g", max: 50 },
            radius: { kind: "length", symbol: "r_i", label: "distance from the hinge", min: 0, max: 5 },
            angle: { kind: "angle", symbol: "phi_i", label: "angle from the arm", min: "-360 deg", max: "360 deg", default: 0 },
          },
        },
      },
      hingeFriction: { kind: "moment", symbol: "M_f", label: "hinge friction", min: 0, max: 100, default: 0 },
      frameTilt: { kind: "angle", symbol: "beta", label: "lean of the frame", min: "-90 deg", max: "90 deg", default: 0 },
      spring: {
        kind: "group",
        label: "helper spring",
        default: null,
        fields: {
          stiffness: { kind: "forcePerLength", symbol: "k_s", label: "stiffness", min: 0.01, max: 1e6 },
          freeLength: { kind: "length", symbol: "L_s", label: "free length", min: 0, max: 5 },
          fixedPivot: point("spring's fixed end", "x_s", "y_s"),
          radius: { kind: "length", symbol: "r_s", label: "spring's arm end from the hinge", min: "1 mm", max: 5 },
          angle: { kind: "angle", symbol: "phi_s", label: "spring's arm end from the arm", min: "-360 deg", max: "360 deg", default: 0 },
        },
      },
      actuator: {
        kind: "group",
        label: "linear actuator",
        fields: {
          retractedLength: { kind: "length", symbol: "L_0", label: "retracted length", min: "1 mm", max: 3 },
          stroke: { kind: "length", symbol: "S", label: "stroke", min: "1 mm", max: 2 },
          ratedVoltage: { kind: "voltage", symbol: "V_r", label: "rated voltage", min: "10 mV", max: 100 },
          noLoadSpeed: { kind: "speed", symbol: "v_0", label: "speed without load", min: "0.01 mm/s", max: 2 },
          noLoadCurrent: { kind: "current", symbol: "I_0", label: "current without load", min: 0, max: 50 },
          ratedForce: { kind: "force", symbol: "F_r", label: "rated force", min: "1 mN", max: 20000 },
          ratedSpeed: { kind: "speed", symbol: "v_r", label: "speed at rated force", min: "0.01 mm/s", max: 2 },
          ratedCurrent: { kind: "current", symbol: "I_r", label: "current at rated force", min: "0.1 mA", max: 100 },
          holdingForce: { kind: "force", symbol: "F_hold", label: "holding force without power", min: 0, max: 50000, default: 0 },
        },
      },
    },
  },
  pack: {
    kind: "group",
    label: "cell pack",
    default: null,
    fields: {
      chemistry: { kind: "choice", label: "chemistry", options: optionsFrom(chemistries, (key) => chemistries[key].label) },
      series: { kind: "number", symbol: "N_s", label: "cells in series", whole: true, min: 1, max: 30 },
      parallel: { kind: "number", symbol: "N_p", label: "strings in parallel", whole: true, min: 1, max: 50 },
      cellCapacity: { kind: "charge", symbol: "Q_c", label: "charge of one cell", min: "1 mAh", max: "200 Ah" },
      cellResistance: { kind: "resistance", symbol: "R_c", label: "direct-current resistance of one cell", min: 0, max: 10 },
      stateOfCharge: { kind: "ratio", symbol: "z", label: "charge left", min: 0, max: 1, default: 0.8 },
      temperature: { kind: "temperature", symbol: "T_c", label: "temperature of the cells", min: -20, max: 60, default: 25 },
      cellCurrent: { kind: "current", symbol: "I_c", label: "maximum current of one cell", min: "0.1 mA", max: 200, default: null },
      extraResistance: { kind: "resistance", symbol: "R_x", label: "holders, welds and protection circuit", min: 0, max: 10, default: 0 },
    },
  },
  bank: {
    kind: "group",
    label: "USB battery bank",
    default: null,
    fields: {
      voltage: { kind: "voltage", symbol: "V_b", label: "voltage at the socket", min: "10 mV", max: 60, default: 5 },
      currentLimit: { kind: "current", symbol: "I_b", label: "maximum current", min: "0.1 mA", max: 50 },
      resistance: { kind: "resistance", symbol: "R_b", label: "resistance of socket and regulator", min: 0, max: 10, default: "50 mohm" },
      energy: { kind: "energy", symbol: "E_b", label: "energy at the socket on one charge", min: 3.6, max: "2 kWh" },
    },
  },
  converter: {
    kind: "group",
    label: "converter",
    default: null,
    fields: {
      outputVoltage: { kind: "voltage", symbol: "V_o", label: "output voltage", min: "10 mV", max: 100 },
      inputCurrentLimit: { kind: "current", symbol: "I_il", label: "input current limit", min: "0.1 mA", max: 100, default: null },
      outputCurrentLimit: { kind: "current", symbol: "I_ol", label: "output current limit", min: "0.1 mA", max: 100, default: null },
      efficiency: {
        kind: "list",
        label: "efficiency over output current",
        min: 1,
        max: 40,
        of: {
          kind: "group",
          label: "point",
          fields: {
            outputCurrent: { kind: "current", symbol: "I_e", label: "output current", min: 0, max: 100 },
            efficiency: { kind: "ratio", symbol: "eta_e", label: "efficiency", min: "1 %", max: 1 },
          },
        },
      },
      quiescentCurrent: { kind: "current", symbol: "I_q", label: "own current without load", min: 0, max: 5, default: 0 },
      minInputVoltage: { kind: "voltage", symbol: "V_in_min", label: "minimum input voltage", min: 0, max: 100 },
      maxInputVoltage: { kind: "voltage", symbol: "V_in_max", label: "maximum input voltage", min: "10 mV", max: 100 },
    },
  },
  wiring: {
    kind: "group",
    label: "wires, switch and fuse",
    default: null,
    fields: {
      source: run("run from the source", "s"),
      load: { ...run("run to the actuators", "l"), default: null },
      switchResistance: { kind: "resistance", symbol: "R_sw", label: "switch resistance", min: 0, max: 10, default: "10 mohm" },
      fuseResistance: { kind: "resistance", symbol: "R_fu", label: "fuse resistance, hot", min: 0, max: 10, default: 0 },
      fuseRating: { kind: "current", symbol: "I_fu", label: "fuse rating", min: "0.1 mA", max: 200, default: null },
      switchRating: {
        kind: "current",
        symbol: "I_sw",
        label: "direct current the switch is rated for",
        min: "0.1 mA",
        max: 200,
        default: null,
      },
      dropLimit: { kind: "ratio", symbol: "u_max", label: "share wires and contacts may take", min: "0.01 %", max: 1, default: 0.05 },
      insulation: {
        kind: "temperature",
        symbol: "T_ins",
        label: "temperature the insulation is rated for",
        min: 40,
        max: 260,
        default: 70,
      },
      ambientTemperature: {
        kind: "temperature",
        symbol: "T_wa",
        label: "ambient temperature of the wires",
        min: -40,
        max: 100,
        default: 25,
      },
    },
  },
  brief: {
    kind: "group",
    label: "what is wanted",
    default: null,
    fields: {
      stageTime: { kind: "time", symbol: "t_stage", label: "time on stage, up and down", min: "1 ms", max: "1 d", default: null },
      raiseTime: { kind: "time", symbol: "t_raise", label: "time for the raise", min: "1 ms", max: "1 h", default: null },
      swing: { kind: "angle", symbol: "theta_w", label: "swing wanted", min: "0.01 deg", max: "360 deg", default: null },
    },
  },
}

/** One source feeds the rig. */
export const rigRules = [{ atMostOne: ["pack", "bank"] }] as const satisfies readonly Either[]
