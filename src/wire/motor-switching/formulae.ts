// The working of motorSwitching.
import type { Step } from "../../solver/index.js"
import { CONTACT_CATEGORIES } from "../sources.js"
import { bridged, closed, reversesAtSpeed, standbyCurrent, switchable, triedWith } from "./kernel.js"
import type { MotorSwitching, Si } from "./types.js"

export const motorSwitchingFormulae = (): readonly Step<Si, MotorSwitching>[] => [
  { symbol: "R_k", kind: "resistance", meaning: "each switch, closed", given: (si) => si.switches.map(closed) },
  { symbol: "I_k", kind: "current", meaning: "what each may switch by its category", given: (si) => si.switches.map(switchable) },
  { symbol: "A_k", kind: "current", meaning: "their rated currents", given: (si) => si.switches.map((s) => s.ratedCurrent) },
  { symbol: "V_k", kind: "voltage", meaning: "their rated voltages", given: (si) => si.switches.map((s) => s.ratedVoltage) },
  {
    symbol: "t_k",
    kind: "time",
    meaning: "time constant that each is tried with",
    given: (si) => si.switches.map(triedWith),
    source: CONTACT_CATEGORIES,
  },
  { symbol: "diodes", kind: "number", meaning: "limit switches with a diode", given: (si) => bridged(si).length },
  {
    symbol: "D_k",
    kind: "voltage",
    meaning: "their drops",
    given: (si) => [0, ...bridged(si).map(([volts]) => volts)],
  },
  {
    symbol: "B_k",
    kind: "resistance",
    meaning: "the contacts that they stand in for",
    given: (si) => [0, ...bridged(si).map(([, ohms]) => ohms)],
  },
  { symbol: "turned", kind: "number", meaning: "1 where it can be reversed at speed", given: (si) => (reversesAtSpeed(si) ? 1 : 0) },
  { symbol: "I_w", kind: "current", meaning: "current of coils and of a driver that waits", given: standbyCurrent },
  { symbol: "R_x", meaning: "all closed contacts", is: "sum(R_k)" },
  { symbol: "V_x", meaning: "their drop", is: "I * R_x" },
  { symbol: "V_t", meaning: "what is left behind them", is: "V - V_x" },
  {
    symbol: "V_e",
    meaning: "coming back from an end: a diode in place of its switch, the worst of them",
    is: "V_x + max(subset(D_k - I * B_k, index(2:(diodes + 1))))",
    when: "diodes > 0",
  },
  { symbol: "P", meaning: "heat in the contacts", is: "I * V_x" },
  { symbol: "I_st", meaning: "what the motor takes from standstill, as far as it is let", is: "min(I_s, I_l)", when: "has_currentLimit" },
  { symbol: "I_st", meaning: "what the motor takes from standstill", is: "I_s", when: "not has_currentLimit" },
  {
    symbol: "I_v",
    meaning: "supply and turning motor in a row: (V + V − I·V/I_s)/(V/I_s), as far as it is let",
    is: "min(2 * I_s - I, I_l)",
    when: "has_currentLimit and turned == 1",
  },
  { symbol: "I_v", meaning: "supply and turning motor in a row", is: "2 * I_s - I", when: "not has_currentLimit and turned == 1" },
  { symbol: "I_x", meaning: "largest switched current", is: "max(I_st, I_v)", when: "turned == 1" },
  { symbol: "I_x", meaning: "largest switched current", is: "I_st", when: "turned == 0" },
  { symbol: "I_b", meaning: "the turning motor alone, its leads joined", is: "I_s - I", when: 'equalText(whenOpened, "brakes")' },
  { symbol: "tau", meaning: "inductance over the winding's resistance, V/I_s", is: "L * I_s / V", when: "has_inductance" },
  { symbol: "W", meaning: "energy of the winding's field", is: "L * I_x^2 / 2", when: "has_inductance" },
  { symbol: "u", meaning: "switched current against the weakest contact", is: "I_x / min(I_k)" },
  { symbol: "u_c", meaning: "running current against the smallest rating", is: "I / min(A_k)" },
  { symbol: "u_V", meaning: "supply against the lowest voltage rating", is: "V / min(V_k)" },
  { symbol: "u_t", meaning: "time constant against the shortest tried with", is: "tau / min(t_k)", when: "has_inductance" },
  { symbol: "P_q", meaning: "standby power", is: "V * I_w" },
  {
    symbol: "V_p",
    meaning: "what comes back goes into the driver's capacitance",
    is: "sqrt(V^2 + 2 * (W + E_r) / C)",
    when: "has_driver and has_inductance",
  },
  {
    symbol: "V_p",
    meaning: "what comes back goes into the driver's capacitance",
    is: "sqrt(V^2 + 2 * E_r / C)",
    when: "has_driver and not has_inductance",
  },
  { symbol: "s", meaning: "way on at full speed, then slowing evenly", is: "v * (t_1 + t_2 / 2)", when: "has_moving" },
]
