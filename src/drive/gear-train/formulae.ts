// The working of gearTrain, from the ratios and efficiencies of its stages on.
import type { SiOf, Step } from "../../solver/index.js"
import { BEVAN } from "../sources.js"
import { letThrough, letThroughReturning, whollyFrom } from "./kernel.js"
import type { GearTrain, GearTrainInput } from "./types.js"

export const formulae: readonly Step<SiOf<GearTrainInput>, GearTrain>[] = [
  { symbol: "r_k", kind: "number", meaning: "ratio of each stage", given: (_, out) => out.stages.map((s) => s.ratio), source: BEVAN },
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
  { symbol: "f_k", kind: "number", meaning: "turns of the input for one of each stage's output", given: (_, out) => whollyFrom(out) },
  {
    symbol: "J_k",
    kind: "momentOfInertia",
    meaning: "inertia turning with each stage's output",
    given: (si) => si.stages.map((s) => s.inertia),
  },
  { symbol: "beta_k", kind: "angle", meaning: "play at each stage's output", given: (si) => si.stages.map((s) => s.backlash) },
  {
    symbol: "d_k",
    kind: "number",
    meaning: "torque let through by each stage with the motion reversed, against one without loss",
    given: (si, out) => letThroughReturning(si, out),
  },
  { symbol: "helps", kind: "number", meaning: "1 where the load helps", given: (si) => (si.torque < 0 ? 1 : 0) },
  { symbol: "locked", kind: "number", meaning: "1 where a stage locks", given: (_, out) => (out.locksAtFriction ? 1 : 0) },
  { symbol: "aligned", kind: "number", meaning: "1 where all axes are parallel", given: (_, out) => (out.reverses === null ? 0 : 1) },
  { symbol: "sense", kind: "number", meaning: "−1 where the output turns the other way", given: (_, out) => (out.reverses ? -1 : 1) },
  { symbol: "i", meaning: "ratio", is: "prod(r_k)" },
  { symbol: "eta", meaning: "efficiency, load against the motion", is: "prod(e_k)" },
  { symbol: "eta_b", meaning: "efficiency, load driving", is: "prod(b_k)", when: "locked == 0" },
  { symbol: "T_1", meaning: "torque at the input, load against the motion", is: "T / (i * eta) + T_d", when: "helps == 0" },
  {
    symbol: "c_k",
    kind: "number",
    meaning: "torque let through by each stage, against one without loss",
    given: (_, out) => letThrough(out),
  },
  { symbol: "T_1", meaning: "torque at the input, load helping", is: "T * prod(c_k) / i + T_d", when: "helps == 1" },
  { symbol: "T_r", meaning: "motion reversed under the same load", is: "-T * prod(d_k) / i + T_d" },
  { symbol: "T_b", meaning: "torque that drives it back", is: "T_d * i / eta_b", when: "locked == 0" },
  { symbol: "T_h", meaning: "torque on the mounting: all torques on the housing balance", is: "sense * T - T_1", when: "aligned == 1" },
  { symbol: "J_1", meaning: "inertia at the input: equal kinetic energy", is: "J_0 + sum(J_k ./ f_k.^2) + J_L / i^2" },
  { symbol: "J_2", meaning: "inertia at the output", is: "J_1 * i^2" },
  { symbol: "beta", meaning: "play at the output: that of each stage by the ratio still to come", is: "sum(beta_k .* f_k) / i" },
  { symbol: "s", meaning: "play at the tip", is: "beta * R", when: "has_tipRadius" },
  { symbol: "omega_2", meaning: "speed of the output", is: "omega_1 / i", when: "has_inputSpeed" },
  { symbol: "P_1", meaning: "power in", is: "T_1 * omega_1", when: "has_inputSpeed" },
  { symbol: "P_2", meaning: "power out", is: "T * omega_2", when: "has_inputSpeed" },
  { symbol: "P_h", meaning: "heat in the gears", is: "P_1 - P_2", when: "has_inputSpeed" },
]
