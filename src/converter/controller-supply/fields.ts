// Descriptions of a controller's supply.
import type { Fields, OutFields } from "../../solver/index.js"
import type { ControllerSupply, ControllerSupplyInput } from "./types.js"

const outputVoltage = {
  kind: "voltage",
  symbol: "V_o",
  label: "output voltage",
  min: 0.8,
  max: 60,
  typical: [4.9, 5.2],
} as const

export const controllerSupplyFields = (): Fields<ControllerSupplyInput> => ({
  sourceVoltage: {
    kind: "group",
    label: "source voltage",
    fields: {
      low: { kind: "voltage", symbol: "V_0", label: "source voltage, lowest charge", min: 1, max: 100, typical: [6.5, 11] },
      high: { kind: "voltage", symbol: "V_f", label: "source voltage, freshly charged", min: 1, max: 100, typical: [12, 13] },
    },
  },
  sourceResistance: {
    kind: "resistance",
    symbol: "R_0",
    label: "resistance shared with the motors",
    min: "0.1 mohm",
    max: 100,
    typical: ["50 mohm", "300 mohm"],
  },
  motorCurrent: { kind: "current", symbol: "I_m", label: "motors, starting", min: 0, max: 1000, typical: [2, 12] },
  controllerCurrent: { kind: "current", symbol: "I_c", label: "controller and receiver", min: "0.1 mA", max: 20, typical: [0.05, 0.4] },
  feed: {
    kind: "variant",
    label: "fed by",
    of: {
      direct: { label: "the motors' supply itself", fields: {} },
      linear: {
        label: "a linear regulator",
        fields: {
          outputVoltage,
          dropout: { kind: "voltage", symbol: "V_d", label: "dropout voltage", min: 0, max: 5, typical: [0.3, 2], default: 1.5 },
        },
      },
      switching: {
        label: "a step-down converter",
        fields: {
          outputVoltage,
          minInputVoltage: { kind: "voltage", symbol: "V_m", label: "lowest input", min: 0.5, max: 100, typical: [5.5, 6.5] },
          efficiency: {
            kind: "ratio",
            symbol: "eta",
            label: "efficiency",
            min: 0.1,
            max: 1,
            typical: [0.75, 0.95],
            default: 0.85,
            unit: "%",
          },
        },
      },
    },
  },
  supplyWindow: {
    kind: "group",
    label: "supply that the controller is made for",
    fields: {
      low: { kind: "voltage", symbol: "V_l", label: "lowest", min: 0.5, max: 60, typical: [4.4, 4.8] },
      high: { kind: "voltage", symbol: "V_h", label: "highest", min: 0.8, max: 100, typical: [13, 16] },
    },
  },
  resetVoltage: { kind: "voltage", symbol: "V_r", label: "reset voltage", min: 0.5, max: 60, typical: [2.7, 4.3] },
  signal: {
    kind: "group",
    label: "signal",
    fields: {
      highOutput: { kind: "voltage", symbol: "V_oh", label: "high, sent", min: 0.1, max: 60, typical: [2.9, 3.2] },
      lowOutput: { kind: "voltage", symbol: "V_ol", label: "low, sent", min: 0, max: 30, typical: [0.1, 0.4] },
      highThreshold: { kind: "voltage", symbol: "V_ih", label: "read as high from", min: 0.1, max: 60, typical: [2, 2.6] },
      lowThreshold: { kind: "voltage", symbol: "V_il", label: "read as low up to", min: 0, max: 30, typical: [0.6, 1] },
      groundResistance: {
        kind: "resistance",
        symbol: "R_g",
        label: "ground shared with the motors",
        min: 0,
        max: 10,
        typical: [0, "60 mohm"],
      },
    },
    default: null,
  },
})

export const controllerSupplyOutput = (): OutFields<ControllerSupply> => ({
  restVoltage: { kind: "voltage", symbol: "V_1", label: "supply, motors at rest" },
  dipVoltage: { kind: "voltage", symbol: "V_2", label: "supply, motors starting" },
  controllerRestVoltage: { kind: "voltage", symbol: "U_1", label: "controller, motors at rest" },
  controllerDipVoltage: { kind: "voltage", symbol: "U_2", label: "controller, motors starting" },
  controllerMaxVoltage: { kind: "voltage", symbol: "U_f", label: "controller, freshly charged" },
  resetMargin: { kind: "voltage", symbol: "M_r", label: "above its reset" },
  lowMargin: { kind: "voltage", symbol: "M_l", label: "above its lowest supply" },
  highMargin: { kind: "voltage", symbol: "M_h", label: "below its highest supply" },
  maxMotorCurrent: { kind: "current", symbol: "I_x", label: "motor current without a reset" },
  groundShift: { kind: "voltage", symbol: "V_g", label: "ground moved by the motors" },
  signalHighMargin: { kind: "voltage", symbol: "N_h", label: "signal margin, high" },
  signalLowMargin: { kind: "voltage", symbol: "N_l", label: "signal margin, low" },
})
