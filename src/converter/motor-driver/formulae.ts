// The working of a motor driver.
import type { Step } from "../../solver/index.js"
import { DRIVER_LOSSES } from "../sources.js"
import type { MotorDriver, Si } from "./types.js"

export const motorDriverFormulae = (): readonly Step<Si, MotorDriver>[] => [
  { symbol: "bipolar", kind: "number", meaning: "1 for a bridge that takes volts", given: (si) => (si.bridge.type === "bipolar" ? 1 : 0) },
  { symbol: "D_t", kind: "number", meaning: "duty cycle", given: (si) => si.switching?.duty ?? 1 },
  { symbol: "V_b", kind: "voltage", meaning: "volts that the path takes", is: "V_d", when: "bipolar == 1" },
  { symbol: "V_b", kind: "voltage", meaning: "volts that the path takes", is: "0 V", when: "bipolar == 0" },
  { symbol: "R_b", kind: "resistance", meaning: "ohms that the path takes: two switches, warm", is: "2 * R_s * f_h", when: "bipolar == 0" },
  { symbol: "R_b", kind: "resistance", meaning: "ohms that the path takes", is: "0 ohm", when: "bipolar == 1" },
  { symbol: "V_x", meaning: "drop of the bridge", is: "V_b + R_b * I" },
  { symbol: "V_m", meaning: "mean voltage at the motor", is: "D_t * V - V_x" },
  { symbol: "P_c", meaning: "conduction loss", is: "V_x * I", source: DRIVER_LOSSES },
  {
    symbol: "P_s",
    meaning: "two edges and two dead times in a period",
    is: "(V * I * t_r + 2 * V_f * I * t_d) * f",
    when: "has_switching",
    source: DRIVER_LOSSES,
  },
  { symbol: "P_s", meaning: "not switched", is: "0 W", when: "not has_switching" },
  { symbol: "P_q", meaning: "standby power", is: "V * I_q" },
  { symbol: "P", meaning: "heat in the driver", is: "P_c + P_s + P_q" },
  { symbol: "P_m", meaning: "power to the motor", is: "V_m * I" },
  { symbol: "I_s", meaning: "supply current: power in is power out and heat", is: "(P_m + P) / V" },
  { symbol: "eta", meaning: "efficiency", is: "P_m / (P_m + P)" },
  { symbol: "T_c", meaning: "chip temperature", is: "T_a + R_th * P", when: "has_thermalResistance" },
  { symbol: "u", meaning: "current against continuous current", is: "I / I_r", when: "has_ratedCurrent" },
  {
    symbol: "E",
    kind: "voltage",
    meaning: "what the motor makes by turning",
    is: "max(0 V, V_m - I * R_w)",
    when: "has_windingResistance",
  },
  { symbol: "I_st", meaning: "start-up current", is: "max(0 V, V - V_b) / (R_w + R_b)", when: "has_windingResistance" },
  { symbol: "I_b", meaning: "braking current", is: "max(0 V, E - V_b) / (R_w + R_b)", when: "has_windingResistance" },
  { symbol: "I_v", meaning: "supply and motor in a row", is: "max(0 V, V + E - V_b) / (R_w + R_b)", when: "has_windingResistance" },
]
