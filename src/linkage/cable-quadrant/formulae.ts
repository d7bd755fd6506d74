// The working of cableQuadrant, at the angles where its tensions turn.
import type { Step } from "../../solver/index.js"
import { equilibrium, journalFriction, springRate } from "../sources.js"
import { turningAngles } from "./kernel.js"
import type { CableQuadrant, Si } from "./types.js"

const bySpring = "sprung == 1"
const byCable = "sprung == 0"
/** Both tensions while it turns (`x`, +) and comes back (`n`, −). */
const both = (name: "x" | "n", sign: "+" | "-"): Step<Si, CableQuadrant>[] => {
  const other = sign === "+" ? "-" : "+"
  const what = sign === "+" ? "turning" : "coming back"
  return [
    {
      symbol: `m_${name}`,
      kind: "moment",
      meaning: `moment to balance, ${what}`,
      is: `M_k ${sign} M_d ${sign} rho * W`,
      source: equilibrium,
    },
    {
      symbol: `S_k${name}`,
      kind: "force",
      meaning: "tension of the spring",
      is: "T_0 + k_2 * r_2 * (q_k - q_0)",
      when: bySpring,
      source: springRate,
    },
    {
      symbol: `T_k${name}`,
      kind: "force",
      meaning: `tension of the opening cable, ${what}`,
      is: `(m_${name} + S_k${name} * (r_2 ${sign} rho)) / (r_1 ${other} rho)`,
      when: bySpring,
    },
    {
      symbol: `g_${name}`,
      kind: "angle",
      meaning: `how far the quadrant gives, ${what}`,
      is: `(m_${name} ${sign} rho * (T_0 + T_0 * r_1 / r_2)) / (k_1 * r_1 * (r_1 ${other} rho) + k_2 * r_2 * (r_2 ${sign} rho))`,
      when: byCable,
    },
    {
      symbol: `T_k${name}`,
      kind: "force",
      meaning: `tension of the opening cable, ${what}`,
      is: `T_0 + k_1 * r_1 * g_${name}`,
      when: byCable,
    },
    {
      symbol: `S_k${name}`,
      kind: "force",
      meaning: `tension of the second cable, ${what}`,
      is: `T_0 * r_1 / r_2 - k_2 * r_2 * g_${name}`,
      when: byCable,
    },
  ]
}

export const quadrantFormulae = (): readonly Step<Si, CableQuadrant>[] => [
  { symbol: "sprung", kind: "number", meaning: "1 with a return spring", given: (si) => (si.returnedBy.type === "spring" ? 1 : 0) },
  { symbol: "s_1", meaning: "travel of the opening cable", is: "r_1 * q_t" },
  { symbol: "s_2", meaning: "travel of spring or second cable", is: "r_2 * q_t" },
  { symbol: "w_l", meaning: "arc of the opening cable left", is: "w_1 - q_t" },
  { symbol: "w_r", meaning: "arc of the second cable's rim left", is: "w_m - w_2 - q_t", when: byCable },
  { symbol: "J", meaning: "inertia of the masses", is: "sum(m_w .* r_w.^2)" },
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "W", kind: "force", meaning: "weight on the pivot", is: "sum(m_w) * g_n" },
  { symbol: "rho", kind: "length", meaning: "friction circle of the pivot", is: "mu * d_p / 2", source: journalFriction },
  { symbol: "M_c", kind: "moment", meaning: "moment of the weights, arm level", is: "g_n * sum(m_w .* r_w .* map(a_w + lambda, cos))" },
  { symbol: "M_s", kind: "moment", meaning: "their moment across it", is: "g_n * sum(m_w .* r_w .* map(a_w + lambda, sin))" },
  { symbol: "q_k", kind: "angle", meaning: "both ends, and where a tension turns", given: turningAngles },
  {
    symbol: "M_k",
    kind: "moment",
    meaning: "load moment there",
    is: "M_c * map(q_k, cos) - M_s * map(q_k, sin) + M_l",
    source: equilibrium,
  },
  ...both("x", "+"),
  ...both("n", "-"),
  { symbol: "M_x", meaning: "largest load moment", is: "max(M_k)" },
  { symbol: "M_n", meaning: "smallest load moment", is: "min(M_k)" },
  { symbol: "T_x", meaning: "largest tension of the opening cable", is: "max(max(T_kx), max(T_kn))" },
  { symbol: "T_n", meaning: "its smallest", is: "min(min(T_kx), min(T_kn))" },
  { symbol: "S_x", meaning: "largest tension of spring or second cable", is: "max(max(S_kx), max(S_kn))" },
  { symbol: "S_n", meaning: "its smallest", is: "min(min(S_kx), min(S_kn))" },
  {
    symbol: "T_r",
    meaning: "spring: coming back, the opening cable just keeps taut",
    is: "max(0 N, max((rho * W + M_d - M_k) / (r_2 - rho) - k_2 * r_2 * (q_k - q_0)), max(-(M_k + M_d + rho * W) / (r_2 + rho) - k_2 * r_2 * (q_k - q_0)))",
    when: bySpring,
  },
  {
    symbol: "a_x",
    kind: "forcePerLength",
    meaning: "what the cables give, turning",
    is: "(k_1 * r_1 * (r_1 - rho) + k_2 * r_2 * (r_2 + rho)) / r_1^2",
    when: byCable,
  },
  {
    symbol: "a_n",
    kind: "forcePerLength",
    meaning: "what they give, coming back",
    is: "(k_1 * r_1 * (r_1 + rho) + k_2 * r_2 * (r_2 - rho)) / r_1^2",
    when: byCable,
  },
  {
    symbol: "c",
    kind: "length",
    meaning: "sum of pulls for each of pretension, on the friction circle",
    is: "rho * (1 + r_1 / r_2)",
    when: byCable,
  },
  {
    symbol: "T_r",
    meaning: "two cables: pretension at which the looser of both just keeps taut",
    is: "max(0 N, max(m_x) * k_2 * r_2 / (r_1^2 * a_x * r_1 / r_2 - k_2 * r_2 * c), max(m_n) * k_2 * r_2 / (r_1^2 * a_n * r_1 / r_2 + k_2 * r_2 * c), -min(m_x) * k_1 * r_1 / (r_1^2 * a_x + k_1 * r_1 * c), -min(m_n) * k_1 * r_1 / (r_1^2 * a_n - k_1 * r_1 * c))",
    when: byCable,
  },
  { symbol: "K", meaning: "stiffness at the pivot, drive held", is: "k_1 * r_1^2 + k_2 * r_2^2" },
  {
    symbol: "y",
    meaning: "play of the tip from the load's change and its two senses",
    is: "R * (M_x - M_n + 2 * M_d) / K",
    when: "has_tipRadius",
  },
  { symbol: "W_e", meaning: "energy stored, at most", is: "T_x^2 / (2 * k_1) + S_x^2 / (2 * k_2)" },
]
