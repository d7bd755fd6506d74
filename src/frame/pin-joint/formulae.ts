import { at, type SiOf, type Step } from "../../solver/index.js"
import { strengthSteps } from "../condition.js"
import { boltClasses, bolts } from "../data-bolts.js"
import { handlingCases } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import { pipes } from "../data-pipes.js"
import { shapeSection } from "../section.js"
import { EN_1993, ISO_261, ISO_898, ROARK, SHIGLEY } from "../sources.js"
import { throughHole } from "../through-hole.js"
import { nutFactor, type PinJointInput, pinOf, plasticReserve } from "./parts.js"
import type { PinJoint } from "./types.js"

type Si = SiOf<PinJointInput>
type PinStep = Step<Si, PinJoint>

const sectionOfTube = (si: Si) => (si.tube === null ? null : shapeSection(si.tube))
const wallOf = ({ tube }: Si) => (tube === null ? 0 : tube.pipe === null ? (tube.wall ?? 0) : pipes[tube.pipe].wall)
// any hole does: only the member's own sizes are read
const sizes = (si: Si) => (si.tube === null ? null : throughHole(si.tube, 1e-9, si.hole))
const known = "(has_strength or has_material)"
const whole = `${known} and s_f == 0`

/** The working of a pin joint. */
export const pinJointFormulae: readonly PinStep[] = [
  { symbol: "k_m", kind: "number", meaning: "factor of handling", given: (si) => handlingCases[si.handling].factor },
  {
    symbol: "d_b",
    kind: "length",
    meaning: "diameter of the bolt, 0 where it is none",
    given: (si) => (si.bolt ? bolts[si.bolt].diameter : 0),
    source: ISO_261,
  },
  {
    symbol: "A_t",
    kind: "area",
    meaning: "stress area of its thread",
    given: (si) => (si.bolt ? bolts[si.bolt].stressArea : 0),
    source: at(ISO_898, "table 4"),
  },
  {
    symbol: "R_m",
    kind: "pressure",
    meaning: "tensile strength of the bolt",
    given: (si) => boltClasses[si.boltClass].tensile,
    source: at(ISO_898, "table 3"),
  },
  {
    symbol: "R_p",
    kind: "pressure",
    meaning: "proof stress of the bolt",
    given: (si) => boltClasses[si.boltClass].proof,
    source: at(ISO_898, "table 3"),
  },
  {
    symbol: "a_v",
    kind: "number",
    meaning: "shear ratio of the bolt",
    given: (si) => boltClasses[si.boltClass].shearRatio,
    source: at(EN_1993, "table 3.4"),
  },
  {
    symbol: "s_f",
    kind: "number",
    meaning: "1 where the fibres split, else 0",
    given: (si) => (si.material && frameMaterials[si.material].splits ? 1 : 0),
  },
  ...strengthSteps<Si, PinJoint>(),
  { symbol: "d", meaning: "diameter of the bolt", is: "d_b", when: "has_bolt" },
  { symbol: "d", meaning: "diameter of the pin", is: "d_g", when: "not has_bolt" },
  { symbol: "A_s", meaning: "sheared area of shank or pin", is: "pi / 4 * d^2" },
  { symbol: "A_s", meaning: "sheared area of the thread", is: "A_t", when: "has_bolt and threadSheared" },
  {
    symbol: "A_0",
    kind: "area",
    meaning: "area of the member without the hole, 0 where it is none",
    given: (si) => sectionOfTube(si)?.area ?? 0,
  },
  { symbol: "I_0", kind: "secondMoment", meaning: "its second moment", given: (si) => sectionOfTube(si)?.secondMoment ?? 0 },
  { symbol: "c_0", kind: "length", meaning: "its outermost fibre", given: (si) => sectionOfTube(si)?.fibre ?? 0 },
  { symbol: "w_0", kind: "length", meaning: "its wall, 0 for a bar", given: wallOf },
  { symbol: "z_d", kind: "length", meaning: "its depth along the bending", given: (si) => sizes(si)?.depth ?? 0 },
  {
    symbol: "z_r",
    kind: "length",
    meaning: "length of the hole through it",
    given: (si) => (si.hole === "outer-fibre" ? (sizes(si)?.depth ?? 0) : (sizes(si)?.across ?? 0)),
  },
  { symbol: "t_h", kind: "length", meaning: "material along the hole", is: "w_0 > 0 m ? 2 * w_0 : z_r", when: "has_tube" },
  { symbol: "t_b", kind: "length", meaning: "bearing thickness", is: "t_g", when: "has_thickness" },
  { symbol: "t_b", kind: "length", meaning: "bearing thickness", is: "t_h", when: "not has_thickness" },
  { symbol: "F_1", kind: "force", meaning: "force on each pin as handled", is: "k_m * F / n" },
  { symbol: "tau_p", meaning: "shear stress in a pin", is: "F_1 / (k_p * A_s)" },
  {
    symbol: "M_p",
    meaning: "bending moment in a pin between its cheeks",
    is: "F_1 / 8 * (t_b + 4 * c_p + 2 * a_c)",
    when: "has_cheekThickness",
    source: at(EN_1993, "figure 3.11"),
  },
  { symbol: "sigma_p", meaning: "bending stress in a pin", is: "M_p / (pi / 32 * (4 * A_s / pi)^1.5)", when: "has_cheekThickness" },
  { symbol: "S_y", kind: "pressure", meaning: "yield or proof stress of pin or bolt", given: (si) => pinOf(si).yield },
  { symbol: "sigma_l", meaning: "bearing stress", is: "F_1 / (d * t_b)" },
  { symbol: "tau_e", meaning: "tear-out stress on two strips", is: "F_1 / (2 * t_b * (e_d - d / 2))", when: "has_edgeDistance" },
  { symbol: "A_n", meaning: "area beside the hole", is: "A_0 - d * t_h", when: "has_tube" },
  { symbol: "I_n", meaning: "hole on the neutral axis", is: "I_0 - t_h * d^3 / 12", when: 'has_tube and equalText(hole, "neutral-axis")' },
  {
    symbol: "I_n",
    meaning: "hole through the outermost fibres",
    is: "I_0 - (w_0 > 0 m ? 2 * (d * w_0 * ((z_d - w_0) / 2)^2 + d * w_0^3 / 12) : d * z_d^3 / 12)",
    when: 'has_tube and equalText(hole, "outer-fibre")',
  },
  { symbol: "M_n", meaning: "bending moment the holed section takes", is: "S * I_n / c_0", when: `has_tube and ${known}` },
  { symbol: "F_p", meaning: "proof load", is: "A_t * R_p", when: "has_bolt" },
  { symbol: "F_m", meaning: "breaking load", is: "A_t * R_m", when: "has_bolt" },
  { symbol: "F_q", meaning: "clamp force as given", is: "F_s", when: "has_clampForce" },
  {
    symbol: "F_q",
    meaning: "clamp force from the torque",
    is: `M_s / (${nutFactor} * d)`,
    when: "has_tighteningTorque",
    source: at(SHIGLEY, "table 8-15"),
  },
  {
    symbol: "F_c",
    meaning: "tube crushes",
    is: "pi * S * b_c * w_0^2 / (6 * (z_d - w_0) / 2)",
    when: `has_clampWidth and ${whole}`,
    source: ROARK,
  },
  { symbol: "n_p", meaning: "margin of a plain pin", is: "S_p / sqrt(3) / tau_p", when: "not has_bolt" },
  { symbol: "n_p", meaning: "margin of a bolt", is: "a_v * R_m / tau_p", when: "has_bolt" },
  {
    symbol: "n_v",
    meaning: "margin in bending and shear together",
    is: `1 / sqrt((sigma_p / (${plasticReserve} * S_y))^2 + 1 / n_p^2)`,
    when: "has_cheekThickness",
    source: at(EN_1993, "table 3.10"),
  },
  { symbol: "n_l", meaning: "margin in bearing", is: "S / sigma_l", when: whole },
  { symbol: "n_e", meaning: "margin against tearing out", is: "S_s / tau_e", when: `has_edgeDistance and ${whole}` },
  {
    symbol: "n_c",
    meaning: "margin, crushing",
    is: "F_c / F_q",
    when: `has_clampWidth and (has_clampForce or has_tighteningTorque) and ${whole}`,
  },
  { symbol: "n_t", meaning: "margin of the bolt's pull", is: "F_p / F_q", when: "has_tighteningTorque" },
  { symbol: "n_s", meaning: "minimum margin so far: pin", is: "n_p" },
  { symbol: "n_s", meaning: "bending counts", is: "min(n_s, n_v)", when: "has_cheekThickness" },
  { symbol: "n_s", meaning: "bearing counts", is: "min(n_s, n_l)", when: whole },
  { symbol: "n_s", meaning: "tearing out counts", is: "min(n_s, n_e)", when: `has_edgeDistance and ${whole}` },
  {
    symbol: "n_s",
    meaning: "crushing counts",
    is: "min(n_s, n_c)",
    when: `has_clampWidth and (has_clampForce or has_tighteningTorque) and ${whole}`,
  },
  { symbol: "n_s", meaning: "tightening counts", is: "min(n_s, n_t)", when: "has_tighteningTorque" },
]
