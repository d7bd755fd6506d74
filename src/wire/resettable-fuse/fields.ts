import { bandField, type Fields, type OutFields } from "../../solver/index.js"
import { sizeFields } from "../conductor.js"
import { laidFields } from "../laid.js"
import { ampacityField, shortLimitField } from "../withstand.js"
import type { ResettableFuse, ResettableFuseInput } from "./types.js"

/** Input descriptions. */
export const ptcInput: Fields<ResettableFuseInput> = {
  holdCurrent: { kind: "current", symbol: "I_n", label: "hold current at 23 °C", min: "1 mA", max: 100, typical: [0.5, 9] },
  tripCurrent: { kind: "current", symbol: "I_t", label: "trip current at 23 °C", min: "1 mA", max: 300, typical: [20, 30], default: null },
  testCurrent: {
    kind: "current",
    symbol: "I_p",
    label: "current of the printed time to trip",
    min: "1 mA",
    max: 1000,
    typical: [40, 60],
    default: null,
  },
  tripTime: { kind: "time", symbol: "t_n", label: "longest time to trip at that current", min: "1 ms", max: 600, typical: [2, 20] },
  minResistance: {
    kind: "resistance",
    symbol: "R_lo",
    label: "resistance of a new part, at least",
    min: 0,
    max: 1000,
    typical: ["10 mohm", "20 mohm"],
  },
  maxResistance: {
    kind: "resistance",
    symbol: "R_hi",
    label: "resistance after a trip, at most",
    min: "0.1 mohm",
    max: 1000,
    typical: ["50 mohm", "100 mohm"],
  },
  maxVoltage: { kind: "voltage", symbol: "U_m", label: "rated voltage", min: 1, max: 600, typical: [16, 60] },
  maxFaultCurrent: { kind: "current", symbol: "I_b", label: "current it may break", min: 1, max: 1000, typical: [40, 100], default: 40 },
  trippedPower: { kind: "power", symbol: "P_d", label: "heat while tripped", min: "1 mW", max: 100, typical: [0.5, 5], default: null },
  holdCurve: {
    kind: "list",
    label: "hold current by temperature",
    min: 2,
    max: 50,
    default: null,
    of: {
      kind: "group",
      label: "point",
      fields: {
        temperature: { kind: "temperature", symbol: "T_k1", label: "air temperature", min: -60, max: 150, typical: [-40, 85] },
        share: { kind: "ratio", symbol: "f_k1", label: "hold current over that at 23 °C", min: 0.01, max: 4, typical: [0.4, 1.6] },
      },
    },
  },
  sourceVoltage: { kind: "voltage", symbol: "U_s", label: "voltage of the full pack", min: 0.1, max: 600, typical: [5, 25] },
  current: { kind: "current", symbol: "I", label: "steady current", min: "0.1 mA", max: 300, typical: [0.2, 6] },
  faultCurrent: {
    kind: "current",
    symbol: "I_f",
    label: "short-circuit current",
    min: "1 mA",
    max: 10000,
    typical: [30, 40],
    default: null,
  },
  minDeviceTemperature: {
    kind: "temperature",
    symbol: "T_lo",
    label: "coldest air around it",
    min: -40,
    max: 85,
    typical: [-10, 20],
    default: 0,
  },
  maxDeviceTemperature: {
    kind: "temperature",
    symbol: "T_hi",
    label: "warmest air around it",
    min: -40,
    max: 85,
    typical: [25, 60],
    default: 40,
  },
  ...sizeFields,
  ...laidFields,
  datasheetAmpacity: ampacityField,
  faultTemperatureLimit: shortLimitField,
}

/** Result descriptions. */
export const ptcOutput: OutFields<ResettableFuse> = {
  holdLimit: { kind: "current", symbol: "I_h", label: "holds in the warmest place" },
  requiredHoldCurrent: { kind: "current", symbol: "I_q", label: "hold current needed at 23 °C" },
  tripLimit: { kind: "current", symbol: "I_c", label: "may carry for good in the coldest place" },
  slowCurrent: { kind: "current", symbol: "I_5", label: "may carry for 5 s in the coldest place" },
  ampacity: { kind: "current", symbol: "I_r", label: "ampacity" },
  continuousCurrent: { kind: "current", symbol: "I_z", label: "continuous current of the wire" },
  carriesLoad: { kind: "flag", label: "carries the load" },
  protectsWire: { kind: "flag", label: "protects the wire beyond 5 s" },
  tripDuration: { kind: "time", symbol: "t_f", label: "trips at the fault current within" },
  survivesFault: { kind: "flag", label: "wire survives any fault until it trips" },
  withinRating: { kind: "flag", label: "within its voltage and breaking current" },
  coordinated: { kind: "flag", label: "passes these checks" },
  drop: bandField("voltage", "voltage drop at the steady current", {
    symbols: ["U_lo", "U_hi"],
    labels: ["drop of a new part, at least", "drop after a trip, at most"],
  }),
  heat: { kind: "power", symbol: "P", label: "heat in it after a trip, at most" },
  trippedCurrent: { kind: "current", symbol: "I_x", label: "current while tripped" },
}
