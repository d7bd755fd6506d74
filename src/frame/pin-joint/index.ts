import { at, isNoSolution, type NoSolution, optionsFrom, refuse, type Solver, solver, tried } from "../../solver/index.js"
import { conditionFields } from "../condition.js"
import { boltClasses, bolts } from "../data-bolts.js"
import { handlingCases, handlingField } from "../data-loads.js"
import { shapeFields, shapeRules } from "../section.js"
import { EN_1993, GERE, ISO_898, ROARK, SHIGLEY } from "../sources.js"
import { throughHole } from "../through-hole.js"
import { cautions, check, WIDEST } from "./cautions.js"
import { pinJointFormulae } from "./formulae.js"
import type { PinJointInput } from "./parts.js"
import { bendingOf, memberStrength, pinOf, plasticReserve, squeezeOf } from "./parts.js"
import type { PinJoint, PinJointCaution, PinJointRefusal, Si } from "./types.js"

export type { PinJoint, PinJointCaution, PinJointRefusal } from "./types.js"

function kernel(si: Si): PinJoint | NoSolution<PinJointRefusal> {
  const strength = memberStrength(si)
  if (isNoSolution(strength)) return strength
  const pin = pinOf(si)
  const { diameter } = pin
  const hole = si.tube === null ? null : throughHole(si.tube, diameter, si.hole)
  if (hole && !(hole.width > diameter && hole.netArea > 0 && hole.netSecondMoment > 0))
    return refuse(
      "does-not-fit",
      "A hole of {pinDiameter length} leaves nothing to count on of a member {width length} wide: take a pin thinner by {shortBy length}, or a wider member.",
      diameter - hole.width / WIDEST,
      { pinDiameter: diameter, width: hole.width },
      si.bolt === null ? { pinDiameter: hole.width / WIDEST } : {},
    )
  const thickness = si.thickness ?? hole?.thickness ?? 0
  const force = si.force * handlingCases[si.handling].factor
  const each = force / si.pins
  const pinShearStress = each / (si.shearPlanes * pin.area)
  const bearingStress = each / (diameter * thickness)
  const tearOutStress = si.edgeDistance === null ? null : each / (2 * thickness * (si.edgeDistance - diameter / 2))
  const clampForce = squeezeOf(si, diameter)
  const crushForce =
    hole?.ring && si.clampWidth !== null && strength.bearing !== null
      ? (Math.PI * strength.bearing * si.clampWidth * hole.ring.wall ** 2) / (6 * hole.ring.meanRadius)
      : null
  const bolt = si.bolt === null ? null : { area: bolts[si.bolt].stressArea, ...boltClasses[si.boltClass] }
  const margin = (allowed: number | null, stress: number | null) => (allowed === null || stress === null ? null : allowed / stress)
  const pinShearSafetyFactor = pin.strength / pinShearStress
  const bending = bendingOf(si, each, thickness)
  const pinBendingSafetyFactor = bending && 1 / Math.hypot(bending.stress / (plasticReserve * pin.yield), 1 / pinShearSafetyFactor)
  const bearingSafetyFactor = margin(strength.bearing, bearingStress)
  const tearOutSafetyFactor = margin(strength.shear, tearOutStress)
  const crushSafetyFactor = margin(crushForce, clampForce)
  const proofLoad = bolt && bolt.area * bolt.proof
  const tighteningSafetyFactor = si.tighteningTorque === null ? null : margin(proofLoad, clampForce)
  const modes: [string, number | null][] = [
    ["pin shear", pinShearSafetyFactor],
    ["pin bending", pinBendingSafetyFactor],
    ["bearing", bearingSafetyFactor],
    ["tear-out", tearOutSafetyFactor],
    ["crushing", crushSafetyFactor],
    ["tightening", tighteningSafetyFactor],
  ]
  const [governs, safetyFactor] = modes.reduce<[string, number]>(
    (least, [name, factor]) => (factor !== null && factor < least[1] ? [name, factor] : least),
    ["pin shear", pinShearSafetyFactor],
  )
  return {
    pinDiameter: diameter,
    shearArea: pin.area,
    pinShearStress,
    pinMoment: bending?.moment ?? null,
    pinBendingStress: bending?.stress ?? null,
    bearingStress,
    tearOutStress,
    netArea: hole?.netArea ?? null,
    netSecondMoment: hole?.netSecondMoment ?? null,
    netMoment: hole && strength.along !== null ? (strength.along * hole.netSecondMoment) / hole.fibre : null,
    proofLoad,
    breakingLoad: bolt && bolt.area * bolt.tensile,
    clampForce,
    crushForce,
    pinShearSafetyFactor,
    pinBendingSafetyFactor,
    bearingSafetyFactor,
    tearOutSafetyFactor,
    crushSafetyFactor,
    tighteningSafetyFactor,
    safetyFactor,
    governedBy: governs,
  }
}

const solve = (si: Si): PinJoint | NoSolution<PinJointRefusal> => tried(kernel(si), si, pinJoint.input, kernel, check, pinJoint.either)

/**
 * Whether a pinned, bolted or clamped joint holds.
 *
 * Formula: a pin between two cheeks of thickness a, with gaps c beside a middle of thickness t, bends by M = F/(8·n)·(t + 4·c + 2·a), its
 * margin with 1.5·W·S in bending and the shear strength taken together by the root of their squares. Each of n pins carries F/n; τ = F/(n·k·A) in k planes of the sheared area A (m²; the thread's nominal stress
 * area or the shank's), bearing σ = F/(n·d·t), tear-out τ = F/(2·n·t·(e − d/2)) with the edge distance e; a hole takes
 * 2·d·w from a tube's area. A ring of mean radius R and wall w squeezed over the width b begins to flatten at
 * π·S·b·w²/(6·R). Bolt pull from a torque T: T/(0.2·d). Allowed: bolts (of the weakest class unless given) 0.5 or 0.6
 * of their tensile strength, plain pins S/√3 (of mild steel unless given), members their yield stress in bearing and
 * S/√3 in shear at the temperature and duration. The force is multiplied by the factor of `handling`. Valid where the
 * pins fit closely and share the force.
 *
 * **Inputs**
 * - `force`: force across the pins [F; 1 mN to 1000 kN]
 * - `pins`: pins [n; whole 1 to 20; default 1]
 * - `bolt`: bolt [M3, M4, M5, M6, M8 or M10; optional]
 * - `boltClass`: bolt class [4.6, 5.6, 8.8, 10.9 or A2-70; default 4.6]
 * - `pinDiameter`: pin diameter [d_g; 0.1 to 100 mm; optional]
 * - `pinStrength`: yield stress of the pin [S_p; 1 MPa to 3 GPa; default 220 MPa]
 * - `shearPlanes`: shear planes [k_p; whole 1 to 10; default 2]
 * - `threadSheared`: thread lies in a shear plane [yes or no; default yes]
 * - `thickness`: bearing thickness [t_g; 0.05 to 200 mm; optional]
 * - `cheekThickness`: thickness of each cheek [a_c; 0.05 to 200 mm; optional]
 * - `gap`: gap beside each cheek [c_p; 0 to 200 mm; default 0]
 * - `tube`: tube or bar [group; optional]
 *   - `pipe`: standard pipe [one of 11 words; optional]
 *   - `outsideDiameter`: outside diameter [D; 0.1 mm to 2 m; optional]
 *   - `width`: width [b_w; 0.1 mm to 2 m; optional]
 *   - `height`: height [h_w; 0.1 mm to 2 m; optional]
 *   - `wall`: wall [t_w; 0.01 mm to 1 m; optional]
 *   - exactly one of `pipe`, `outsideDiameter` and `width` with `height`
 *   - `wall` only beside `outsideDiameter` or `width` with `height`
 * - `hole`: hole goes through [outer-fibre or neutral-axis; default outer-fibre]
 * - `edgeDistance`: hole centre to the end [e_d; 0.1 mm to 1 m; optional]
 * - `material`: material [one of 17 words; optional]
 * - `strength`: yield or breaking stress [S_g; 0.1 MPa to 10 GPa; optional]
 * - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 * - `duration`: time the load stands [t_l; 0 to 1000 h; default 0]
 * - `clampWidth`: clamp width along the tube [b_c; 0.5 mm to 1 m; optional]
 * - `clampForce`: clamp force [F_s; 1 mN to 1000 kN; optional]
 * - `tighteningTorque`: tightening torque [M_s; 1 mN m to 1000 N m; optional]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 * - exactly one of `bolt` and `pinDiameter`
 * - at least one of `thickness` and `tube`
 * - at most one of `tighteningTorque` and `clampForce`
 * - `tighteningTorque` only beside `bolt`
 *
 * **Results**
 *
 * `pinDiameter`: diameter in the hole [d; m]; `shearArea`: sheared area [A_s; m²]; `pinShearStress`: shear stress in a
 * pin [tau_p; Pa]; `pinMoment`: bending moment in a pin [M_p; N m]; `pinBendingStress`: bending stress in a pin
 * [sigma_p; Pa]; `bearingStress`: bearing stress on the hole [sigma_l; Pa]; `tearOutStress`: tear-out stress [tau_e;
 * Pa]; `netArea`: area beside the hole [A_n; m²]; `netSecondMoment`: second moment at the hole [I_n; m⁴]; `netMoment`:
 * bending moment it takes there [M_n; N m]; `proofLoad`: proof load of a bolt [F_p; N]; `breakingLoad`: breaking load
 * of a bolt [F_m; N]; `clampForce`: clamp force [F_q; N]; `crushForce`: tube crushes at [F_c; N];
 * `pinShearSafetyFactor`: margin, pin shear [n_p]; `pinBendingSafetyFactor`: margin, pin bending [n_v];
 * `bearingSafetyFactor`: margin, bearing [n_l]; `tearOutSafetyFactor`: margin, tear-out [n_e]; `crushSafetyFactor`:
 * margin, crushing [n_c]; `tighteningSafetyFactor`: margin, tightening [n_t]; `safetyFactor`: safety factor, minimum
 * [n_s]; `governedBy`: governed by [text].
 *
 * **Symbols of the working**
 *
 * k_m: factor of handling; d_b: diameter of the bolt, 0 where it is none [m]; A_t: stress area of its thread [m²];
 * R_m: tensile strength of the bolt [Pa]; R_p: proof stress of the bolt [Pa]; a_v: shear ratio of the bolt; s_f: 1
 * where the fibres split, else 0; S_l: minimum strength at 23 °C, 0 where unknown [Pa]; S_h: maximum strength at 23
 * °C, 0 where unknown [Pa]; S_o: shear strength where the material has its own, else 0 [Pa]; f_E: stiffness left at
 * the temperature; f_S: strength left at the temperature; f_c: stiffness and strength left after the load has stood;
 * S: strength, safe end [Pa]; S_u: strength, other end [Pa]; S_s: shear strength, safe end [Pa]; S_su: shear strength,
 * other end [Pa]; A_0: area of the member without the hole, 0 where it is none [m²]; I_0: its second moment [m⁴]; c_0:
 * its outermost fibre [m]; w_0: its wall, 0 for a bar [m]; z_d: its depth along the bending [m]; z_r: length of the
 * hole through it [m]; t_h: material along the hole [m]; t_b: bearing thickness [m]; F_1: force on each pin as handled
 * [N]; S_y: yield or proof stress of pin or bolt [Pa].
 *
 * **Sources**
 * - J. M. Gere, B. J. Goodno: Mechanics of Materials, 7th, 2009, section 1.6
 * - ISO: ISO 898-1, Mechanical properties of fasteners: bolts, screws and studs, 2009, table 3, clause 9.1.6.1
 * - CEN: EN 1993-1-8, Design of steel structures: joints, 2005, tables 3.3, 3.4 and 3.10, clause 3.13.2 (not verified
 *   against the document)
 * - W. C. Young, R. G. Budynas: Roark's Formulas for Stress and Strain, 8th, 2012, table 9.2, case 1 (not verified
 *   against the document)
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 10th, 2015, table 8-15 (not verified
 *   against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-hot` above the material's limit; `does-not-fit` where nothing is left beside the hole
 * @example
 * ```ts
 * import { pinJoint } from 'alula/frame'
 * const hinge = pinJoint({ force: '900 N', bolt: 'M6', tube: { outsideDiameter: '20 mm', wall: '1.5 mm' }, material: 'aluminium-6061' })
 * hinge.bearingStress // => 5.00e7
 * hinge.pinShearStress // => 2.24e7
 * hinge.governedBy // => 'bearing'
 * ```
 */
export const pinJoint: Solver<PinJointInput, PinJoint, PinJointRefusal, PinJointCaution> = /* @__PURE__ */ solver<
  PinJointInput,
  PinJoint,
  PinJointRefusal,
  PinJointCaution
>("pinJoint", "Whether a pinned or clamped joint holds", solve, () => ({
  input: {
    force: { kind: "force", symbol: "F", label: "force across the pins", min: "1 mN", max: 1e6, typical: [50, 2000] },
    pins: { kind: "number", symbol: "n", label: "pins", whole: true, min: 1, max: 20, typical: [1, 3], default: 1 },
    bolt: { kind: "choice", label: "bolt", options: optionsFrom(bolts), default: null },
    boltClass: {
      kind: "choice",
      label: "bolt class",
      options: optionsFrom(boltClasses, (key) => boltClasses[key].label),
      default: "4.6",
    },
    pinDiameter: {
      kind: "length",
      symbol: "d_g",
      label: "pin diameter",
      min: "0.1 mm",
      max: "100 mm",
      typical: ["3 mm", "8 mm"],
      default: null,
    },
    pinStrength: {
      kind: "pressure",
      symbol: "S_p",
      label: "yield stress of the pin",
      min: "1 MPa",
      max: "3 GPa",
      typical: ["100 MPa", "600 MPa"],
      default: "220 MPa",
    },
    shearPlanes: { kind: "number", symbol: "k_p", label: "shear planes", whole: true, min: 1, max: 10, typical: [1, 2], default: 2 },
    threadSheared: { kind: "flag", label: "thread lies in a shear plane", default: true },
    thickness: {
      kind: "length",
      symbol: "t_g",
      label: "bearing thickness",
      min: "0.05 mm",
      max: "200 mm",
      typical: ["1 mm", "12 mm"],
      default: null,
    },
    cheekThickness: {
      kind: "length",
      symbol: "a_c",
      label: "thickness of each cheek",
      min: "0.05 mm",
      max: "200 mm",
      typical: ["2 mm", "8 mm"],
      default: null,
    },
    gap: {
      kind: "length",
      symbol: "c_p",
      label: "gap beside each cheek",
      min: 0,
      max: "200 mm",
      typical: [0, "4 mm"],
      default: 0,
    },
    tube: { kind: "group", label: "tube or bar", fields: shapeFields, either: shapeRules, default: null },
    hole: {
      kind: "choice",
      label: "hole goes through",
      options: { "outer-fibre": "the tension and compression faces", "neutral-axis": "the sides, on the neutral axis" },
      default: "outer-fibre",
    },
    edgeDistance: {
      kind: "length",
      symbol: "e_d",
      label: "hole centre to the end",
      min: "0.1 mm",
      max: 1,
      typical: ["8 mm", "30 mm"],
      default: null,
    },
    material: conditionFields.material,
    strength: conditionFields.strength,
    materialTemperature: conditionFields.materialTemperature,
    duration: conditionFields.duration,
    clampWidth: {
      kind: "length",
      symbol: "b_c",
      label: "clamp width along the tube",
      min: "0.5 mm",
      max: 1,
      typical: ["10 mm", "40 mm"],
      default: null,
    },
    clampForce: { kind: "force", symbol: "F_s", label: "clamp force", min: "1 mN", max: 1e6, typical: [50, 2000], default: null },
    tighteningTorque: {
      kind: "moment",
      symbol: "M_s",
      label: "tightening torque",
      min: "1 mN m",
      max: 1000,
      typical: [0.5, 10],
      default: null,
    },
    handling: handlingField,
  },
  output: {
    pinDiameter: { kind: "length", symbol: "d", label: "diameter in the hole" },
    shearArea: { kind: "area", symbol: "A_s", label: "sheared area", unit: "mm²" },
    pinShearStress: { kind: "pressure", symbol: "tau_p", label: "shear stress in a pin" },
    pinMoment: { kind: "moment", symbol: "M_p", label: "bending moment in a pin" },
    pinBendingStress: { kind: "pressure", symbol: "sigma_p", label: "bending stress in a pin" },
    bearingStress: { kind: "pressure", symbol: "sigma_l", label: "bearing stress on the hole" },
    tearOutStress: { kind: "pressure", symbol: "tau_e", label: "tear-out stress" },
    netArea: { kind: "area", symbol: "A_n", label: "area beside the hole", unit: "mm²" },
    netSecondMoment: { kind: "secondMoment", symbol: "I_n", label: "second moment at the hole", unit: "mm⁴" },
    netMoment: { kind: "moment", symbol: "M_n", label: "bending moment it takes there" },
    proofLoad: { kind: "force", symbol: "F_p", label: "proof load of a bolt" },
    breakingLoad: { kind: "force", symbol: "F_m", label: "breaking load of a bolt" },
    clampForce: { kind: "force", symbol: "F_q", label: "clamp force" },
    crushForce: { kind: "force", symbol: "F_c", label: "tube crushes at" },
    pinShearSafetyFactor: { kind: "number", symbol: "n_p", label: "margin, pin shear" },
    pinBendingSafetyFactor: { kind: "number", symbol: "n_v", label: "margin, pin bending" },
    bearingSafetyFactor: { kind: "number", symbol: "n_l", label: "margin, bearing" },
    tearOutSafetyFactor: { kind: "number", symbol: "n_e", label: "margin, tear-out" },
    crushSafetyFactor: { kind: "number", symbol: "n_c", label: "margin, crushing" },
    tighteningSafetyFactor: { kind: "number", symbol: "n_t", label: "margin, tightening" },
    safetyFactor: { kind: "number", symbol: "n_s", label: "safety factor, minimum" },
    governedBy: { kind: "text", label: "governed by" },
  },
  example: {
    force: "300 N",
    bolt: "M6",
    tube: { outsideDiameter: "20 mm", wall: "1.5 mm" },
    material: "aluminium-6061",
    edgeDistance: "18 mm",
    clampWidth: "20 mm",
    tighteningTorque: "1 N m",
    handling: "walking",
  },
  formulae: pinJointFormulae,
  sources: [
    at(GERE, "section 1.6"),
    at(ISO_898, "table 3, clause 9.1.6.1"),
    at(EN_1993, "tables 3.3, 3.4 and 3.10, clause 3.13.2"),
    ROARK,
    at(SHIGLEY, "table 8-15"),
  ],
  either: [
    { exactlyOne: ["bolt", "pinDiameter"] },
    { atLeastOne: ["thickness", "tube"] },
    { atMostOne: ["tighteningTorque", "clampForce"] },
    { given: "tighteningTorque", needs: ["bolt"] },
  ],
  check,
  cautions,
}))
