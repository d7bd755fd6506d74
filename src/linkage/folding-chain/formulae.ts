// The working of a folding chain at the position asked for, segment by segment as lists.
import type { Step } from "../../solver/index.js"
import { journalFriction, virtualWork } from "../sources.js"
import { shareInPlane } from "./kernel.js"
import type { FoldingChain, Si } from "./types.js"

/** Sum over everything from a joint outward. */
const outward = (list: string) => `(sum(${list}) - cumsum(${list}) + ${list})`
const driven = (way: string) =>
  `map(M_j + ${way} * map(n_a, sign) .* W_j * r_f, ${way} * map(n_a, sign) .* c_j, f(u, s) = u / (1 - sign(u / (N m)) * s))`

export const chainFormulae = (): readonly Step<Si, FoldingChain>[] => [
  {
    symbol: "q_j",
    kind: "angle",
    meaning: "angles of the joints",
    is: "alpha_s + phi_t * n_s .* map(p_s, p_e, f(a, b) = min(b, max(a, p)) - a)",
  },
  {
    symbol: "n_a",
    kind: "number",
    meaning: "turn of each joint per turn of the driver, 0 for one that stands still",
    given: (_, out) => out.joints.map((joint) => joint.ratio),
  },
  { symbol: "theta_j", kind: "angle", meaning: "directions of the segments", is: "cumsum(q_j)" },
  { symbol: "w_j", kind: "number", meaning: "turn of each segment per turn of the driver", is: "cumsum(n_a)" },
  { symbol: "X_e", kind: "length", meaning: "outer ends, x", is: "cumsum(L_s .* map(theta_j, cos))" },
  { symbol: "Y_e", kind: "length", meaning: "outer ends, y", is: "cumsum(L_s .* map(theta_j, sin))" },
  { symbol: "X_j", kind: "length", meaning: "joints, x", is: "X_e - L_s .* map(theta_j, cos)" },
  { symbol: "Y_j", kind: "length", meaning: "joints, y", is: "Y_e - L_s .* map(theta_j, sin)" },
  { symbol: "X_c", kind: "length", meaning: "centres of gravity, x", is: "X_j + k_s .* L_s .* map(theta_j, cos)" },
  { symbol: "Y_c", kind: "length", meaning: "centres of gravity, y", is: "Y_j + k_s .* L_s .* map(theta_j, sin)" },
  { symbol: "n_e", kind: "number", meaning: "number of segments", given: (si) => si.segments.length },
  { symbol: "x_t", meaning: "tip, x", is: "X_e[n_e]" },
  { symbol: "y_t", meaning: "tip, y", is: "Y_e[n_e]" },
  { symbol: "U_e", kind: "length", meaning: "travel of the outer ends per radian, x", is: "-cumsum(L_s .* w_j .* map(theta_j, sin))" },
  { symbol: "V_e", kind: "length", meaning: "travel of the outer ends per radian, y", is: "cumsum(L_s .* w_j .* map(theta_j, cos))" },
  { symbol: "x_r", meaning: "travel of the tip, x", is: "U_e[n_e]" },
  { symbol: "y_r", meaning: "travel of the tip, y", is: "V_e[n_e]" },
  {
    symbol: "U_c",
    kind: "length",
    meaning: "travel of the centres of gravity, x",
    is: "U_e + (1 - k_s) .* L_s .* w_j .* map(theta_j, sin)",
  },
  {
    symbol: "V_c",
    kind: "length",
    meaning: "travel of the centres of gravity, y",
    is: "V_e - (1 - k_s) .* L_s .* w_j .* map(theta_j, cos)",
  },
  { symbol: "g_n", kind: "acceleration", meaning: "standard gravity", is: "9.80665 m/s^2" },
  { symbol: "k_p", kind: "number", meaning: "share of gravity in the plane: cosine of its tilt", given: (si) => shareInPlane(si) },
  { symbol: "g_x", kind: "acceleration", meaning: "its part in the plane, x", is: "g_n * k_p * sin(lambda)" },
  { symbol: "g_y", kind: "acceleration", meaning: "its part in the plane, y", is: "g_n * k_p * cos(lambda)" },
  {
    symbol: "T",
    meaning: "moment that holds: work against gravity per radian of the driver",
    is: "g_x * (sum(m_s .* U_c) + m_t * x_r) + g_y * (sum(m_s .* V_c) + m_t * y_r)",
    source: virtualWork,
  },
  {
    symbol: "M_j",
    kind: "moment",
    meaning: "moments that hold everything outward of each joint",
    is: `g_y * (${outward("(m_s .* X_c)")} + m_t * x_t - X_j .* (${outward("m_s")} + m_t)) - g_x * (${outward("(m_s .* Y_c)")} + m_t * y_t - Y_j .* (${outward("m_s")} + m_t))`,
  },
  { symbol: "W_j", kind: "force", meaning: "weights on the pins", is: `g_n * (${outward("m_s")} + m_t)` },
  { symbol: "r_f", kind: "length", meaning: "friction radius of the pins", is: "mu * d_p / 2", source: journalFriction },
  {
    symbol: "c_j",
    kind: "number",
    meaning: "friction radius over lever arm of the drive, 0 where it has none",
    is: "map(R_s, f(R) = R == 0 m ? 0 : r_f / R)",
  },
  { symbol: "T_s", meaning: "moment while spreading", is: `sum(n_a .* ${driven("1")})`, source: virtualWork },
  { symbol: "T_f", meaning: "moment while folding", is: `sum(n_a .* ${driven("-1")})`, source: virtualWork },
  {
    symbol: "J",
    meaning: "inertia at the driver, segments as slender rods",
    is: "sum(m_s .* (U_c .^ 2 + V_c .^ 2)) + m_t * (x_r^2 + y_r^2) + sum(m_s .* L_s .^ 2 .* w_j .^ 2) / 12",
  },
  { symbol: "P_e", kind: "length", meaning: "change of U_e per radian", is: "-cumsum(L_s .* w_j .^ 2 .* map(theta_j, cos))" },
  { symbol: "Q_e", kind: "length", meaning: "change of V_e per radian", is: "-cumsum(L_s .* w_j .^ 2 .* map(theta_j, sin))" },
  {
    symbol: "J_r",
    meaning: "change of the inertia per radian",
    is: "2 * (sum(m_s .* (U_c .* (P_e + (1 - k_s) .* L_s .* w_j .^ 2 .* map(theta_j, cos)) + V_c .* (Q_e + (1 - k_s) .* L_s .* w_j .^ 2 .* map(theta_j, sin)))) + m_t * (x_r * P_e[n_e] + y_r * Q_e[n_e]))",
  },
  { symbol: "F_x", meaning: "force of the frame, x", is: "g_x * (sum(m_s) + m_t)" },
  { symbol: "F_y", meaning: "force of the frame, y", is: "g_y * (sum(m_s) + m_t)" },
  { symbol: "M_0", meaning: "moment of the frame", is: "M_j[1]" },
  {
    symbol: "T_w",
    kind: "moment",
    meaning: "the largest moment among the poses of the travel, either sign",
    given: (_, out) =>
      out.poses.flatMap((pose) => [pose.spreadEffort, pose.foldEffort]).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a)),
  },
  { symbol: "T_m", meaning: "its size", is: "abs(T_w)" },
  { solved: "r_m", meaning: "largest distance of a corner over the travel, found pose by pose" },
  {
    left: "r_m + max(0 m, sqrt(x_t^2 + y_t^2) - r_m)",
    right: "r_m",
    meaning: "the tip is nowhere farther out",
  },
]
