// The working of a frame: balance of the whole, its weakest member, its farthest node.
import { at, type Step } from "../../solver/index.js"
import { gravity } from "../beam/loads.js"
import { conditionOf } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { densityOf } from "../material-choice.js"
import { sectionOf } from "../section.js"
import { GERE } from "../sources.js"
import { nodeOf, shares, wayOf } from "./build.js"
import type { PlaneFrame, PlaneFrameTrace, Si, SiMember } from "./types.js"

type FrameStep = Step<Si, PlaneFrame, PlaneFrameTrace>

/** A load by its resultant: forces to the right and up, and the moment about the origin. */
type Resultant = readonly [right: number, up: number, moment: number]
function resultants(si: Si): readonly Resultant[] {
  return si.loads.map((l): Resultant => {
    if (l.type === "node") {
      const { x, y } = si.nodes[nodeOf(si, l.node)] as Si["nodes"][number]
      return [l.right, l.up, l.moment + x * l.up - y * l.right]
    }
    if (l.type === "moment") return [0, 0, l.moment]
    const member = si.members.find((m) => m.name === l.member) as SiMember
    const way = wayOf(si, member)
    const { x, y } = si.nodes[way.from] as Si["nodes"][number]
    const [size, first] =
      l.type === "force"
        ? [l.force, l.force * l.position]
        : [
            ((l.startLoad + l.endLoad) / 2) * (l.end - l.start),
            ((l.startLoad + l.endLoad) / 2) * (l.end - l.start) * l.start + (l.startLoad / 6 + l.endLoad / 3) * (l.end - l.start) ** 2,
          ]
    const [across, along] = shares(way, l.direction)
    const [right, up] = [along * way.cos + across * way.sin, along * way.sin - across * way.cos]
    return [size * right, size * up, size * (x * up - y * right) + first * (way.cos * up - way.sin * right)]
  })
}
const loadsOf = (k: 0 | 1 | 2) => (si: Si) => [0, ...resultants(si).map((r) => r[k])]
const heldOf = (key: "right" | "up" | "moment") => (_: Si, out: PlaneFrame) => out.supports.map((s) => s[key] ?? 0)
const placeOf = (key: "x" | "y") => (si: Si) => si.supports.map((s) => si.nodes[nodeOf(si, s.node)]?.[key] as number)
const middleOf = (si: Si) =>
  si.members.map((m) => {
    const { from, to } = wayOf(si, m)
    return ((si.nodes[from]?.x as number) + (si.nodes[to]?.x as number)) / 2
  })

/** Members that the safety factor is told of. */
const judged =
  <T>(of: (member: SiMember, forces: PlaneFrame["members"][number], si: Si) => T) =>
  (si: Si, out: PlaneFrame) => {
    const found = si.members.flatMap((m, i) => {
      const forces = out.members[i] as PlaneFrame["members"][number]
      return forces.safetyFactor === null ? [] : [of(m, forces, si)]
    })
    return found
  }
const orOne = (list: readonly number[], none: number) => (list.length ? list : [none])
const stateOf = ({ material, modulus, strength }: SiMember, { materialTemperature, duration }: Si) =>
  conditionOf({ material, modulus, strength, materialTemperature, duration }) as { strength: number; shearStrength: number }

const perMember = (
  symbol: string,
  kind: "force" | "moment" | "area" | "secondMoment" | "length" | "pressure" | "volume",
  meaning: string,
  of: (member: SiMember, forces: PlaneFrame["members"][number], si: Si) => number,
  none = 0,
): FrameStep => ({ symbol, kind, meaning, given: (si, out) => orOne(judged(of)(si, out), none) })
const figures = (m: SiMember) => sectionOf(m.section)

export const planeFrameFormulae = (): readonly FrameStep[] => [
  { symbol: "k_m", meaning: "factor of handling", kind: "number", given: (si) => handlingCases[si.handling].factor },
  {
    symbol: "rho_o",
    kind: "density",
    meaning: "densities of the members, heavy end, 0 where own weight is not counted",
    given: (si) => si.members.map((m) => (si.countsOwnWeight ? densityOf(m) : 0)),
  },
  {
    symbol: "A_o",
    kind: "area",
    meaning: "areas that their weight corresponds to",
    given: (si) => si.members.map((m) => figures(m).weightArea as number),
  },
  { symbol: "L_o", kind: "length", meaning: "their lengths", given: (_, out) => out.members.map((m) => m.length) },
  { symbol: "x_o", kind: "length", meaning: "where their middles are", given: middleOf },
  { symbol: "W_i", kind: "force", meaning: "their weights", is: `rho_o .* A_o .* L_o * ${gravity} m/s^2` },
  { symbol: "W_o", meaning: "own weight", is: "sum(W_i)" },
  { symbol: "R_h", kind: "force", meaning: "what the supports exert to the right", given: heldOf("right") },
  { symbol: "R_v", kind: "force", meaning: "what they exert upwards", given: heldOf("up") },
  { symbol: "R_t", kind: "moment", meaning: "what they turn with", given: heldOf("moment") },
  { symbol: "x_r", kind: "length", meaning: "where they are, to the right", given: placeOf("x") },
  { symbol: "y_r", kind: "length", meaning: "where they are, upwards", given: placeOf("y") },
  { symbol: "F_h", kind: "force", meaning: "loads to the right", given: loadsOf(0) },
  { symbol: "F_v", kind: "force", meaning: "loads upwards", given: loadsOf(1) },
  { symbol: "F_t", kind: "moment", meaning: "moments of the loads about the origin", given: loadsOf(2) },
  {
    symbol: "F_s",
    kind: "force",
    meaning: "size of loads and reactions",
    is: "k_m * (sum(abs(F_h)) + sum(abs(F_v)) + W_o) + sum(abs(R_h)) + sum(abs(R_v)) + 1e-9 N",
  },
  {
    symbol: "M_s",
    kind: "moment",
    meaning: "size of their moments",
    is: "F_s * (max(abs(x_r)) + max(abs(y_r)) + max(L_o)) + k_m * sum(abs(F_t)) + sum(abs(R_t))",
  },
  { left: "F_s + sum(R_h) + k_m * sum(F_h)", right: "F_s", meaning: "forces to the right balance", source: at(GERE, "chapter 4") },
  { left: "F_s + sum(R_v) + k_m * sum(F_v)", right: "F_s + k_m * W_o", meaning: "forces upwards balance" },
  {
    left: "M_s + sum(R_t) + sum(x_r .* R_v) - sum(y_r .* R_h) + k_m * sum(F_t)",
    right: "M_s + k_m * sum(x_o .* W_i)",
    meaning: "moments about the origin balance",
  },
  {
    symbol: "n_k",
    kind: "number",
    meaning: "members that a safety factor is told of",
    given: (si, out) => judged(() => 1)(si, out).length,
  },
  perMember("N_m", "force", "their largest pull or push", (_, f) => Math.max(f.maxPull, f.maxPush)),
  perMember("M_m", "moment", "their largest moment", (_, f) => f.maxMoment),
  perMember("V_m", "force", "their largest shear force", (_, f) => f.maxShearForce),
  perMember("A_m", "area", "their areas", (m) => figures(m).area as number, 1),
  perMember("I_m", "secondMoment", "their second moments", (m) => figures(m).secondMoment, 1),
  perMember("c_m", "length", "their outermost fibres", (m) => figures(m).fibre as number, 1),
  perMember("Q_m", "volume", "their first moments, 0 where not known", (m) => figures(m).firstMoment ?? 0),
  perMember("b_m", "length", "their widths at the neutral axis, 1 m where not known", (m) => figures(m).shearWidth ?? 1, 1),
  perMember("S_m", "pressure", "their strengths, safe end", (m, _, si) => stateOf(m, si).strength, 1),
  perMember("S_v", "pressure", "their shear strengths, safe end", (m, _, si) => stateOf(m, si).shearStrength, 1),
  {
    symbol: "sigma_m",
    kind: "pressure",
    meaning: "their stresses, the largest of pull or push and of bending added",
    is: "N_m ./ A_m + abs(M_m) .* c_m ./ I_m",
    source: at(GERE, "section 5.12 (axial loads with bending)"),
  },
  { symbol: "tau_m", kind: "pressure", meaning: "their shear stresses", is: "V_m .* Q_m ./ (I_m .* b_m)" },
  { symbol: "n_s", meaning: "lowest safety factor", is: "1 / max(max(sigma_m ./ S_m), max(tau_m ./ S_v))", when: "n_k > 0" },
  {
    symbol: "u_h",
    kind: "length",
    meaning: "movements of the nodes to the right",
    given: (_, __, t) => (t.farthest ?? []).map(([x]) => x),
  },
  { symbol: "u_v", kind: "length", meaning: "movements of the nodes upwards", given: (_, __, t) => (t.farthest ?? []).map(([, y]) => y) },
  { symbol: "u_x", meaning: "farthest movement of a node", is: "sqrt(max(u_h.^2 + u_v.^2))" },
]
