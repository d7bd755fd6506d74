// Descriptions of a motor driver.
import type { Fields, OutFields } from "../../solver/index.js"
import type { MotorDriver, MotorDriverInput } from "./types.js"

export const motorDriverFields = (): Fields<MotorDriverInput> => ({
  supplyVoltage: { kind: "voltage", symbol: "V", label: "supply voltage", min: 1, max: 200, typical: [8, 20] },
  current: { kind: "current", symbol: "I", label: "motor current", min: "1 mA", max: 500, typical: [0.3, 3] },
  bridge: {
    kind: "variant",
    label: "bridge",
    of: {
      bipolar: {
        label: "bipolar transistors",
        fields: {
          totalDrop: { kind: "voltage", symbol: "V_d", label: "drop of both transistors", min: 0, max: 10, typical: [1.5, 4] },
        },
      },
      mosfet: {
        label: "field-effect transistors",
        fields: {
          switchResistance: {
            kind: "resistance",
            symbol: "R_s",
            label: "resistance of one switch",
            min: "0.1 mohm",
            max: 10,
            typical: ["10 mohm", "300 mohm"],
          },
          warmFactor: {
            kind: "number",
            symbol: "f_h",
            label: "resistance hot over cold",
            min: 1,
            max: 2.5,
            typical: [1, 1.6],
            default: 1.4,
          },
        },
      },
    },
  },
  switching: {
    kind: "group",
    label: "switching",
    fields: {
      frequency: { kind: "frequency", symbol: "f", label: "switching frequency", min: 10, max: 1e6, typical: [5e3, 3e4] },
      duty: { kind: "ratio", symbol: "D", label: "duty cycle", min: 0.01, max: 1, typical: [0.7, 1], unit: "%" },
      riseTime: { kind: "time", symbol: "t_r", label: "rise and fall time", min: 0, max: 1e-4, typical: [5e-8, 1e-6] },
      deadTime: { kind: "time", symbol: "t_d", label: "dead time", min: 0, max: 1e-4, typical: [0, 5e-7], default: 0 },
      diodeDrop: { kind: "voltage", symbol: "V_f", label: "drop of its diodes", min: 0, max: 3, typical: [0.6, 1.2], default: 1 },
    },
    default: null,
  },
  supplyWindow: {
    kind: "group",
    label: "supply that it works on",
    fields: {
      low: { kind: "voltage", symbol: "V_l", label: "lowest", min: 0.5, max: 200, typical: [2, 6] },
      high: { kind: "voltage", symbol: "V_h", label: "highest", min: 0.5, max: 250, typical: [24, 45] },
    },
    default: null,
  },
  ratedCurrent: { kind: "current", symbol: "I_r", label: "continuous current", min: "1 mA", max: 500, typical: [1, 5], default: null },
  currentLimit: { kind: "current", symbol: "I_l", label: "current limit", min: "1 mA", max: 1000, typical: [2, 10], default: null },
  windingResistance: {
    kind: "resistance",
    symbol: "R_w",
    label: "winding resistance",
    min: "1 mohm",
    max: 1e4,
    typical: [0.5, 5],
    default: null,
  },
  whenDisabled: {
    kind: "choice",
    label: "motor while the driver is disabled",
    options: { coasts: "leads open: it runs on", brakes: "leads joined: it brakes" },
    default: "coasts",
  },
  standbyCurrent: { kind: "current", symbol: "I_q", label: "standby current", min: 0, max: 5, typical: [0, 0.02], default: 0 },
  thermalResistance: {
    kind: "thermalResistance",
    symbol: "R_th",
    label: "chip to air",
    min: 0.01,
    max: 1000,
    typical: [10, 60],
    default: null,
  },
  ambientTemperature: { kind: "temperature", symbol: "T_a", label: "air at the driver", min: -40, max: 85, typical: [10, 40], default: 25 },
  chipTemperatureLimit: {
    kind: "temperature",
    symbol: "T_m",
    label: "chip switches off",
    min: 80,
    max: 200,
    typical: [125, 175],
    default: 150,
  },
})

export const motorDriverOutput = (): OutFields<MotorDriver> => ({
  motorVoltage: { kind: "voltage", symbol: "V_m", label: "voltage at the motor" },
  drop: { kind: "voltage", symbol: "V_x", label: "drop of the bridge" },
  conductionLoss: { kind: "power", symbol: "P_c", label: "conduction loss" },
  switchingLoss: { kind: "power", symbol: "P_s", label: "switching loss" },
  heat: { kind: "power", symbol: "P", label: "heat in the driver" },
  motorPower: { kind: "power", symbol: "P_m", label: "power to the motor" },
  supplyCurrent: { kind: "current", symbol: "I_s", label: "supply current" },
  efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", unit: "%" },
  standbyPower: { kind: "power", symbol: "P_q", label: "standby power" },
  chipTemperature: { kind: "temperature", symbol: "T_c", label: "chip temperature" },
  utilisation: { kind: "ratio", symbol: "u", label: "current against continuous current", unit: "%" },
  startCurrent: { kind: "current", symbol: "I_st", label: "start-up current" },
  brakingCurrent: { kind: "current", symbol: "I_b", label: "braking current" },
  reversingCurrent: { kind: "current", symbol: "I_v", label: "current on reversing at speed" },
})
