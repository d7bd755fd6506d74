// The working of a controller's supply.
import type { Step } from "../../solver/index.js"
import { CONSTANT_POWER } from "../sources.js"
import { needOf } from "./kernel.js"
import type { ControllerSupply, Si } from "./types.js"

const plain = "converts == 0"
const converts = "converts == 1"
/** Supply and controller at a motor current: `1` at rest, `2` starting. */
const state = (n: 1 | 2, motors: string, when: string): Step<Si, ControllerSupply>[] => [
  { symbol: `S_${n}`, kind: "voltage", meaning: `what the motors leave, ${when}`, is: `V_0 - R_0 * ${motors}` },
  { symbol: `V_${n}`, meaning: `supply, ${when}`, is: `max(0 V, S_${n} - R_0 * I_c)`, when: plain },
  {
    symbol: `Q_${n}`,
    kind: "number",
    meaning: "discriminant with the converter's constant power, against the square of the voltage",
    is: `1 - 4 * R_0 * P_c / S_${n}^2`,
    when: converts,
    source: CONSTANT_POWER,
  },
  {
    symbol: `B_${n}`,
    kind: "voltage",
    meaning: "higher of both balances, 0 where there is none",
    is: `Q_${n} < 0 ? 0 V : S_${n} * (1 + sqrt(Q_${n})) / 2`,
    when: converts,
    source: CONSTANT_POWER,
  },
  {
    symbol: `V_${n}`,
    meaning: `supply, ${when}; the converter off below its lowest input`,
    is: `B_${n} >= V_m ? B_${n} : S_${n}`,
    when: converts,
  },
  { symbol: `U_${n}`, meaning: `controller, ${when}`, is: `V_${n}`, when: "straight == 1" },
  { symbol: `U_${n}`, meaning: `controller, ${when}`, is: `min(V_o, max(0 V, V_${n} - V_d))`, when: "straight == 0 and converts == 0" },
  { symbol: `U_${n}`, meaning: `controller, ${when}`, is: `B_${n} >= V_m ? V_o : 0 V`, when: converts },
]

export const controllerSupplyFormulae = (): readonly Step<Si, ControllerSupply>[] => [
  { symbol: "straight", kind: "number", meaning: "1 on the motors' own supply", given: (si) => (si.feed.type === "direct" ? 1 : 0) },
  { symbol: "converts", kind: "number", meaning: "1 behind a step-down converter", given: (si) => (si.feed.type === "switching" ? 1 : 0) },
  { symbol: "P_c", kind: "power", meaning: "power that the converter takes", is: "V_o * I_c / eta", when: converts },
  ...state(1, "(0 A)", "motors at rest"),
  ...state(2, "I_m", "motors starting"),
  { symbol: "U_f", meaning: "controller, freshly charged", is: "V_f", when: "straight == 1" },
  { symbol: "U_f", meaning: "controller, freshly charged", is: "V_o", when: "straight == 0" },
  { symbol: "M_r", meaning: "above its reset", is: "U_2 - V_r" },
  { symbol: "M_l", meaning: "above its lowest supply", is: "U_2 - V_l" },
  { symbol: "M_h", meaning: "below its highest supply", is: "V_h - U_f" },
  { symbol: "V_n", kind: "voltage", meaning: "supply at which it just does not reset", given: (si) => needOf(si).voltage },
  { symbol: "I_n", kind: "current", meaning: "current that its feed takes there", is: "I_c", when: plain },
  { symbol: "I_n", kind: "current", meaning: "current that its feed takes there", is: "P_c / V_n", when: converts },
  { symbol: "I_x", meaning: "motor current without a reset", is: "(V_0 - V_n) / R_0 - I_n" },
  { symbol: "V_g", meaning: "ground moved by the motors", is: "I_m * R_g", when: "has_signal" },
  { symbol: "N_h", meaning: "signal margin, high", is: "V_oh - V_ih - V_g", when: "has_signal" },
  { symbol: "N_l", meaning: "signal margin, low", is: "V_il - V_ol - V_g", when: "has_signal" },
]
