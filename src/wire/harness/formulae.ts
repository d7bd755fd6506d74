// Steps from a harness's answer back to its sums.
import type { SiOf, Step } from "../../solver/index.js"
import { TELLEGEN } from "../sources.js"
import type { Harness, HarnessInput } from "./types.js"

/** Heats of contacts, switches and fuses in the order of the result. */
const contactList = (out: Harness, what: "resistance" | "current") => out.branches.filter((b) => b.type !== "wire").map((b) => b[what])
const wireList = (out: Harness, what: "resistance" | "current") => out.branches.filter((b) => b.type === "wire").map((b) => b[what])

/** Steps of {@link harness}. */
export const harnessFormulae: readonly Step<SiOf<HarnessInput>, Harness>[] = [
  { solved: "I_s", meaning: "currents of the sources" },
  { solved: "I_l", meaning: "currents of the loads" },
  { solved: "V_l", meaning: "voltages at the loads" },
  {
    symbol: "V_r",
    kind: "voltage",
    meaning: "voltages of the loads' return sides",
    given: (_, out) => out.loads.map((l) => l.returnVoltage),
  },
  { symbol: "n_w", kind: "number", meaning: "wires", given: (_, out) => wireList(out, "current").length },
  {
    symbol: "n_c",
    kind: "number",
    meaning: "contacts, closed switches and fuses",
    given: (_, out) => contactList(out, "current").length,
  },
  { symbol: "R_w", kind: "resistance", meaning: "resistances of the wires", given: (_, out) => wireList(out, "resistance") },
  { symbol: "I_w", kind: "current", meaning: "currents of the wires", given: (_, out) => wireList(out, "current") },
  {
    symbol: "R_c",
    kind: "resistance",
    meaning: "resistances of contacts, closed switches and fuses",
    given: (_, out) => contactList(out, "resistance"),
  },
  { symbol: "I_c", kind: "current", meaning: "their currents", given: (_, out) => contactList(out, "current") },
  { symbol: "P_s", meaning: "power of the sources", is: "sum(E_s .* I_s)" },
  { symbol: "P_i", meaning: "heat inside the sources", is: "sum(R_s .* I_s .* I_s)" },
  { symbol: "P_l", meaning: "power of the loads", is: "sum(V_l .* I_l)" },
  { symbol: "P_w", meaning: "heat in wires", is: "sum(R_w .* I_w .* I_w)", when: "n_w > 0" },
  { symbol: "P_w", meaning: "no wires", is: "0 W", when: "n_w == 0" },
  { symbol: "P_c", meaning: "heat in contacts, switches and fuses", is: "sum(R_c .* I_c .* I_c)", when: "n_c > 0" },
  { symbol: "P_c", meaning: "no contacts", is: "0 W", when: "n_c == 0" },
  { symbol: "P_k", meaning: "heat in the worst of them", is: "max(R_c .* I_c .* I_c)", when: "n_c > 0" },
  { symbol: "V_low", meaning: "lowest load voltage", is: "min(V_l)" },
  { symbol: "U_r", meaning: "maximum shift between returns, ground included", is: "max(max(V_r), 0 V) - min(min(V_r), 0 V)" },
  {
    left: "P_s",
    right: "P_l + P_w + P_c + P_i",
    meaning: "what the sources give is used or lost (Tellegen)",
    source: TELLEGEN,
  },
  { left: "sum(E_s .* I_s)", right: "sum(V_l .* I_l) + P_w + P_c + sum(R_s .* I_s .* I_s)", meaning: "the same, current by current" },
]
