// The working of gearmotor: the motor's constants as dcMotor works them, then the gears.
import type { SiOf, Step } from "../../solver/index.js"
import { dcMotor } from "../dc-motor/index.js"
import { letThrough, letThroughReturning, whollyFrom } from "../gear-train/kernel.js"
import type { Gearmotor, GearmotorInput } from "./types.js"

type OwnStep = Step<SiOf<GearmotorInput>, Gearmotor>
const constants = ["k_E", "k_T", "R_20", "R_w"]

export const formulae = (): readonly OwnStep[] => [
  ...dcMotor.formulae.flatMap((step): OwnStep[] => ("is" in step && constants.includes(step.symbol) ? [step] : [])),
  { symbol: "r_k", kind: "number", meaning: "ratio of each stage", given: (_, out) => out.stages.map((s) => s.ratio) },
  {
    symbol: "e_k",
    kind: "number",
    meaning: "its efficiency, load against the motion",
    given: (_, out) => out.stages.map((s) => s.efficiency),
  },
  {
    symbol: "b_k",
    kind: "number",
    meaning: "its efficiency, load driving",
    given: (_, out) => out.stages.map((s) => s.backwardEfficiency),
  },
  {
    symbol: "J_k",
    kind: "momentOfInertia",
    meaning: "inertia turning with each stage's output",
    given: (si) => si.stages.map((s) => s.inertia),
  },
  {
    symbol: "d_k",
    kind: "number",
    meaning: "torque let through by each stage with the motion reversed, against one without loss",
    given: (si, out) => letThroughReturning(si, out),
  },
  { symbol: "f_k", kind: "number", meaning: "turns of the motor for one of each stage's output", given: (_, out) => whollyFrom(out) },
  {
    symbol: "g_k",
    kind: "number",
    meaning: "efficiency from the motor to each stage's output",
    given: (_, out) => {
      let passed = 1
      return out.stages.map((s) => {
        passed *= s.efficiency
        return passed
      })
    },
  },
  {
    symbol: "c_k",
    kind: "number",
    meaning: "torque let through by each stage, against one without loss",
    given: (_, out) => letThrough(out),
  },
  { symbol: "helps", kind: "number", meaning: "1 where the load helps", given: (si) => (si.torque < 0 ? 1 : 0) },
  { symbol: "locked", kind: "number", meaning: "1 where a stage locks", given: (_, out) => (out.locksAtFriction ? 1 : 0) },
  {
    symbol: "starts",
    kind: "number",
    meaning: "1 where there is inertia to start",
    given: (_, out) => (out.startAcceleration === null ? 0 : 1),
  },
  { symbol: "draws", kind: "number", meaning: "1 where power is taken for a load", given: (_, out) => (out.efficiency === null ? 0 : 1) },
  { symbol: "i", meaning: "ratio", is: "prod(r_k)" },
  { symbol: "eta", meaning: "efficiency of the gears", is: "prod(e_k)" },
  { symbol: "T_m", meaning: "torque at the motor, load against the motion", is: "T / (i * eta) + T_d", when: "helps == 0" },
  { symbol: "T_m", meaning: "torque at the motor, load helping", is: "T * prod(c_k) / i + T_d", when: "helps == 1" },
  { symbol: "T_r", meaning: "torque at the motor, motion reversed under the same load", is: "-T * prod(d_k) / i + T_d" },
  { symbol: "drives", kind: "number", meaning: "1 where the load drives the motor", given: (_, out) => (out.motorTorque < 0 ? 1 : 0) },
  { symbol: "I", meaning: "current", is: "I_0 + T_m / k_T", when: "drives == 0" },
  { symbol: "I", meaning: "current, the motor a generator that gains nothing", is: "I_0 + T_m / max(k_T, k_E)", when: "drives == 1" },
  { symbol: "omega_m", meaning: "speed of the motor", is: "(V_m - I * R_w) / k_E" },
  { symbol: "omega_2", meaning: "speed of the output", is: "omega_m / i" },
  { symbol: "P_e", meaning: "power taken", is: "V_m * I" },
  { symbol: "P_2", meaning: "power to the load", is: "T * omega_2" },
  { symbol: "P_w", meaning: "heat in the winding", is: "I^2 * R_w" },
  { symbol: "P_f", meaning: "heat by friction in the motor", is: "P_e - P_w - T_m * omega_m" },
  { symbol: "P_g", meaning: "heat in the gears", is: "T_m * omega_m - P_2" },
  { symbol: "eta_t", meaning: "efficiency", is: "P_2 / P_e", when: "draws == 1" },
  { symbol: "I_st", meaning: "current at standstill", is: "V_m / R_w" },
  { symbol: "T_sm", kind: "moment", meaning: "torque at the motor at standstill", is: "k_T * (I_st - I_0)" },
  { symbol: "T_st", meaning: "stall torque at the output", is: "max(T_sm - T_d, 0 N m) * i * eta" },
  { symbol: "I_d", kind: "current", meaning: "current that friction and drag take", is: "I_0 + T_d / k_T" },
  { symbol: "omega_f", meaning: "no-load speed of the output", is: "max(V_m - I_d * R_w, 0 V) / k_E / i" },
  { symbol: "T_be", meaning: "torque of best efficiency", is: "k_T * max(sqrt(I_d * I_st) - I_d, 0 A) * i * eta" },
  { symbol: "eta_be", meaning: "best efficiency", is: "eta * k_T / k_E * max(1 - sqrt(I_d / I_st), 0)^2" },
  { symbol: "eta_b", kind: "number", meaning: "efficiency of the gears, load driving", is: "prod(b_k)", when: "locked == 0" },
  { symbol: "T_b", meaning: "torque that drives it back", is: "(T_d + k_T * I_0) * i / eta_b", when: "locked == 0" },
  {
    symbol: "omega_b",
    meaning: "back-drive speed, leads shorted: the back-emf drives the current that brakes",
    is: "max(abs(T) * eta_b / i - T_d - k_T * I_0, 0 N m) / k_T * R_w / k_E / i",
    when: "locked == 0",
  },
  { symbol: "omega_b", meaning: "none where it locks", is: "0 / s", when: "locked == 1" },
  { symbol: "J_m", kind: "momentOfInertia", meaning: "inertia at the motor", is: "J_0 + sum(J_k ./ f_k.^2) + J_L / i^2" },
  { symbol: "J_2", meaning: "inertia at the output", is: "J_m * i^2" },
  {
    symbol: "shares",
    kind: "number",
    meaning: "1 where the rotor has a share of the inertia",
    given: (_, out) => (out.rotorShare > 0 ? 1 : 0),
  },
  { symbol: "s_r", meaning: "rotor's share of the inertia", is: "J_0 / J_m", when: "shares == 1" },
  { symbol: "s_r", meaning: "none of it is the rotor's", is: "0", when: "shares == 0" },
  {
    symbol: "alpha_2",
    meaning: "acceleration from rest, through the gears' losses",
    is: "(T_sm - T_m) / (i * (J_0 + sum(J_k ./ (f_k.^2 .* g_k)) + J_L / (i^2 * eta)))",
    when: "starts == 1",
  },
  { symbol: "tau", meaning: "mechanical time constant", is: "R_w * J_m / (k_T * k_E)" },
]
