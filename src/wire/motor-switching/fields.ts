// Descriptions of the switches in a motor's path.
import { type Fields, type OutFields, optionsFrom } from "../../solver/index.js"
import { contactCategories } from "./data.js"
import type { MotorSwitching, MotorSwitchingInput } from "./types.js"

const contact = {
  contacts: {
    kind: "number",
    symbol: "n_c",
    label: "contacts in the motor's path",
    whole: true,
    min: 1,
    max: 4,
    typical: [1, 2],
    default: 1,
  },
  contactResistance: {
    kind: "resistance",
    symbol: "R_c",
    label: "resistance of one contact",
    min: 0,
    max: 10,
    typical: ["5 mohm", "100 mohm"],
  },
  ratedCurrent: { kind: "current", symbol: "I_r", label: "rated current", min: "1 mA", max: 1000, typical: [3, 20] },
  ratedVoltage: { kind: "voltage", symbol: "V_r", label: "direct voltage rated for", min: 1, max: 1000, typical: [20, 60] },
  category: { kind: "choice", label: "utilization category", options: optionsFrom(contactCategories), default: "dc-12" },
} as const

export const motorSwitchingFields = (): Fields<MotorSwitchingInput> => ({
  supplyVoltage: { kind: "voltage", symbol: "V", label: "supply voltage", min: 1, max: 1000, typical: [8, 24] },
  runningCurrent: { kind: "current", symbol: "I", label: "running current", min: "1 mA", max: 1000, typical: [0.3, 2.5] },
  stallCurrent: { kind: "current", symbol: "I_s", label: "stall current", min: "1 mA", max: 10000, typical: [3, 15] },
  inductance: { kind: "inductance", symbol: "L", label: "inductance of the motor", min: 0, max: 10, typical: [1e-4, 5e-3], default: null },
  currentLimit: {
    kind: "current",
    symbol: "I_l",
    label: "current limit of the chain",
    min: "1 mA",
    max: 10000,
    typical: [3, 20],
    default: null,
  },
  switches: {
    kind: "list",
    label: "switches",
    min: 1,
    max: 12,
    of: {
      kind: "variant",
      label: "switch",
      of: {
        "reversing-switch": {
          label: "reversing switch",
          fields: { ...contact, reversesAtSpeed: { kind: "flag", label: "can be turned over at speed", default: true } },
        },
        "limit-switch": {
          label: "limit switch",
          fields: {
            ...contact,
            diodeDrop: { kind: "voltage", symbol: "V_d", label: "drop of its diode", min: 0, max: 3, typical: [0.5, 1], default: null },
          },
        },
        "emergency-stop": { label: "emergency stop", fields: contact },
        relay: {
          label: "relay or contactor",
          fields: {
            ...contact,
            coilCurrent: { kind: "current", symbol: "I_c", label: "coil current", min: 0, max: 20, typical: [0.02, 0.2] },
            latching: { kind: "flag", label: "stays as it is without coil power", default: false },
          },
        },
      },
    },
  },
  driver: {
    kind: "group",
    label: "driver behind the switches",
    fields: {
      inputCapacitance: { kind: "capacitance", symbol: "C", label: "input capacitance", min: "1 nF", max: 100, typical: [1e-4, 5e-3] },
      voltageLimit: { kind: "voltage", symbol: "V_m", label: "highest voltage that it bears", min: 1, max: 2000, typical: [28, 60] },
      returnedEnergy: { kind: "energy", symbol: "E_r", label: "energy sent back", min: 0, max: 1e6, typical: [0, 2], default: 0 },
      standbyCurrent: { kind: "current", symbol: "I_q", label: "standby current", min: 0, max: 5, typical: [0, 0.05], default: 0 },
    },
    default: null,
  },
  emergencyStop: {
    kind: "choice",
    label: "emergency stop",
    options: {
      "opens-supply": "opens the motor's supply itself",
      "signal-only": "tells a controller to stop",
      none: "there is none",
    },
  },
  whenOpened: {
    kind: "choice",
    label: "motor while a switch is open",
    options: { coasts: "leads open: it runs on", brakes: "leads joined: it brakes" },
    default: "coasts",
  },
  holdsUnpowered: { kind: "flag", label: "holds its load unpowered" },
  moving: {
    kind: "group",
    label: "what moves",
    fields: {
      tipSpeed: { kind: "speed", symbol: "v", label: "speed of the fastest point", min: "1 mm/s", max: 50, typical: [0.1, 2] },
      reactionDuration: { kind: "time", symbol: "t_1", label: "until the contact opens", min: 0, max: 60, typical: [0.3, 2] },
      stoppingDuration: { kind: "time", symbol: "t_2", label: "from there until it stands", min: 0, max: 60, typical: [0, 1] },
    },
    default: null,
  },
})

export const motorSwitchingOutput = (): OutFields<MotorSwitching> => ({
  resistance: { kind: "resistance", symbol: "R_x", label: "resistance of the closed contacts" },
  drop: { kind: "voltage", symbol: "V_x", label: "drop of the contacts" },
  motorVoltage: { kind: "voltage", symbol: "V_t", label: "voltage behind the switches" },
  endDrop: { kind: "voltage", symbol: "V_e", label: "drop coming back from an end" },
  heat: { kind: "power", symbol: "P", label: "heat in the contacts" },
  startCurrent: { kind: "current", symbol: "I_st", label: "start-up current" },
  reversingCurrent: { kind: "current", symbol: "I_v", label: "current on reversing at speed" },
  switchedCurrent: { kind: "current", symbol: "I_x", label: "largest switched current" },
  brakingCurrent: { kind: "current", symbol: "I_b", label: "braking current" },
  timeConstant: { kind: "time", symbol: "tau", label: "time constant of the motor" },
  fieldEnergy: { kind: "energy", symbol: "W", label: "energy of the winding's field" },
  utilisation: { kind: "ratio", symbol: "u", label: "switched current against the weakest contact", unit: "%" },
  carryingUtilisation: { kind: "ratio", symbol: "u_c", label: "running current against the smallest rating", unit: "%" },
  voltageUtilisation: { kind: "ratio", symbol: "u_V", label: "supply against the lowest voltage rating", unit: "%" },
  arcUtilisation: { kind: "ratio", symbol: "u_t", label: "time constant against the shortest tried with", unit: "%" },
  standbyPower: { kind: "power", symbol: "P_q", label: "standby power" },
  pumpedVoltage: { kind: "voltage", symbol: "V_p", label: "voltage at the driver, supply opened" },
  runOn: { kind: "length", symbol: "s", label: "way on until it stands" },
})
