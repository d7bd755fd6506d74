import type { Fields, OutFields } from "../../solver/index.js"
import { sizeFields, sizeRules } from "../conductor.js"
import type { Harness, HarnessInput } from "./types.js"

const text = (label: string) => ({ kind: "text", label, min: 1, max: 100 }) as const
const told = (label: string) => ({ kind: "text", label }) as const
const ends = { name: text("name"), from: text("from node"), to: text("to node") }
const contactFields = {
  ...ends,
  resistance: {
    kind: "resistance",
    symbol: "R_k",
    label: "contact resistance",
    min: 0,
    max: 100,
    typical: ["1 mohm", "50 mohm"],
    default: "5 mohm",
  },
  ratedCurrent: { kind: "current", symbol: "I_k", label: "rated current", min: "0.1 mA", max: 1000, typical: [1, 20], default: null },
} as const

/** Input descriptions of a harness. */
export const harnessInput: Fields<HarnessInput> = {
  sources: {
    kind: "list",
    label: "batteries and supplies",
    min: 1,
    max: 100,
    of: {
      kind: "group",
      label: "source",
      fields: {
        name: text("name"),
        positive: text("node at the positive pole"),
        negative: text("node at the negative pole"),
        sourceVoltage: { kind: "voltage", symbol: "E_s", label: "open-circuit voltage", min: "10 mV", max: 1000, typical: [3, 24] },
        sourceResistance: {
          kind: "resistance",
          symbol: "R_s",
          label: "internal resistance",
          min: 0,
          max: 1000,
          typical: ["10 mohm", "300 mohm"],
          default: 0,
        },
      },
    },
  },
  wires: {
    kind: "list",
    label: "wires",
    min: 0,
    max: 1000,
    default: [],
    of: {
      kind: "group",
      label: "wire",
      either: sizeRules,
      fields: {
        ...ends,
        ...sizeFields,
        length: { kind: "length", symbol: "L", label: "length", min: 0, max: 1000, typical: [0.1, 5] },
        conductorTemperature: {
          kind: "temperature",
          symbol: "T",
          label: "conductor temperature",
          min: -50,
          max: 200,
          typical: [-10, 70],
          default: 20,
        },
      },
    },
  },
  contacts: {
    kind: "list",
    label: "contacts",
    min: 0,
    max: 1000,
    default: [],
    of: { kind: "group", label: "contact", fields: contactFields },
  },
  switches: {
    kind: "list",
    label: "switches",
    min: 0,
    max: 1000,
    default: [],
    of: {
      kind: "group",
      label: "switch",
      fields: {
        ...contactFields,
        resistance: { ...contactFields.resistance, default: "10 mohm" },
        closed: { kind: "flag", label: "closed", default: true },
      },
    },
  },
  fuses: {
    kind: "list",
    label: "fuses",
    min: 0,
    max: 1000,
    default: [],
    of: {
      kind: "group",
      label: "fuse",
      fields: {
        ...ends,
        fuseRating: { kind: "current", symbol: "I_f", label: "rated current", min: "0.1 mA", max: 1000, typical: [1, 20] },
        resistance: {
          kind: "resistance",
          symbol: "R_f",
          label: "cold resistance",
          min: 0,
          max: 100,
          typical: ["2 mohm", "100 mohm"],
          default: "5 mohm",
        },
        hotFactor: {
          kind: "number",
          symbol: "k_f",
          label: "hot over cold resistance",
          min: 1,
          max: 10,
          typical: [1.2, 1.6],
          default: 1.4,
        },
      },
    },
  },
  currentLoads: {
    kind: "list",
    label: "loads of constant current",
    min: 0,
    max: 1000,
    default: [],
    of: {
      kind: "group",
      label: "load",
      fields: { ...ends, current: { kind: "current", symbol: "I_1", label: "current", min: 0, max: 1000, typical: [0.1, 5] } },
    },
  },
  resistanceLoads: {
    kind: "list",
    label: "loads of constant resistance",
    min: 0,
    max: 1000,
    default: [],
    of: {
      kind: "group",
      label: "load",
      fields: {
        ...ends,
        resistance: { kind: "resistance", symbol: "R_1", label: "resistance", min: "1 mohm", max: 1e7, typical: [2, 100] },
      },
    },
  },
  powerLoads: {
    kind: "list",
    label: "loads of constant power",
    min: 0,
    max: 1000,
    default: [],
    of: {
      kind: "group",
      label: "load",
      fields: { ...ends, power: { kind: "power", symbol: "P_1", label: "power", min: 0, max: 1e5, typical: [0.5, 15] } },
    },
  },
  powerShare: {
    kind: "ratio",
    symbol: "s_p",
    label: "part of their power the constant-power loads draw",
    min: 0,
    max: 1,
    typical: [0.1, 1],
    default: 1,
  },
  ground: { kind: "text", label: "node that voltages are counted from", min: 1, max: 100, default: null },
}

/** Result descriptions of a harness. */
export const harnessOutput: OutFields<Harness> = {
  nodes: {
    kind: "list",
    label: "nodes",
    of: { kind: "group", label: "node", fields: { name: told("name"), voltage: { kind: "voltage", symbol: "V_n", label: "voltage" } } },
  },
  sources: {
    kind: "list",
    label: "sources",
    of: {
      kind: "group",
      label: "source",
      fields: {
        name: told("name"),
        sourceVoltage: { kind: "voltage", label: "open-circuit voltage" },
        current: { kind: "current", symbol: "I_s", label: "current given" },
        heat: { kind: "power", label: "heat inside" },
      },
    },
  },
  branches: {
    kind: "list",
    label: "wires, contacts, switches, fuses",
    of: {
      kind: "group",
      label: "branch",
      fields: {
        name: told("name"),
        type: told("type"),
        from: told("from node"),
        to: told("to node"),
        resistance: { kind: "resistance", label: "resistance" },
        current: { kind: "current", label: "current" },
        drop: { kind: "voltage", label: "voltage drop" },
        heat: { kind: "power", label: "heat" },
      },
    },
  },
  loads: {
    kind: "list",
    label: "loads",
    of: {
      kind: "group",
      label: "load",
      fields: {
        name: told("name"),
        type: told("type"),
        fed: { kind: "flag", label: "fed" },
        voltage: { kind: "voltage", symbol: "V_l", label: "voltage" },
        current: { kind: "current", symbol: "I_l", label: "current" },
        power: { kind: "power", label: "power" },
        returnVoltage: { kind: "voltage", label: "return side against ground" },
      },
    },
  },
  sourcePower: { kind: "power", symbol: "P_s", label: "power of the sources" },
  loadPower: { kind: "power", symbol: "P_l", label: "power of the loads" },
  wireHeat: { kind: "power", symbol: "P_w", label: "heat in wires" },
  contactHeat: { kind: "power", symbol: "P_c", label: "heat in contacts, switches, fuses" },
  sourceHeat: { kind: "power", symbol: "P_i", label: "heat inside the sources" },
  minLoadVoltage: { kind: "voltage", symbol: "V_low", label: "minimum load voltage" },
  maxReturnShift: { kind: "voltage", symbol: "U_r", label: "maximum shift between returns" },
  hottestContact: { kind: "text", label: "hottest contact" },
  maxContactHeat: { kind: "power", symbol: "P_k", label: "heat in that contact" },
  iterations: { kind: "number", label: "iterations" },
  residual: { kind: "number", label: "maximum error of Kirchhoff's laws, relative" },
}
