import type { Area, Density, Length, Mass, Ratio, Speed } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import {
  bodyCentreShare,
  functionalBaseSource,
  heavyRigSway,
  proportionsSource,
  stabilitySource,
  standingDragSource,
} from "./data-balance.js"
import { beaufortForce, beaufortSource, gustSource, pedestrianWind, pedestrianWindSource } from "./data-wind.js"
import { notClearance } from "./not-clearance.js"
import { windFields } from "./wind-fields.js"

/** Where the wind comes from, as the wearer faces. */
export type WindFrom = "front" | "behind" | "side"

/** Input of {@link tipOver}. */
export interface TipOverInput {
  /** Mass of the wearer. */
  bodyMass: Mass
  /** Mass of the rig. */
  rigMass: Mass
  /** Drag area of the open panels (coefficient times area): `dragArea` of windLoad. */
  dragArea: Area
  /** Height of the panels' force above the ground: `forceHeight` of windLoad. */
  forceHeight: Length
  /** Mean wind speed, as forecasts give it. */
  wind: Speed
  /** Side the wind comes from. */
  from?: WindFrom
  /** Peak gust over mean wind. */
  gustFactor?: number
  /** Speed of the wearer against the wind. */
  walking?: Speed
  /** Length of the foot. */
  footLength?: Length
  /** How far one foot stands ahead of the other. */
  stagger?: Length
  /** Width of the stance, over the outsides of the feet. */
  stanceWidth?: Length
  /** Where the body's weight falls within the fore-aft base, from its rear edge. */
  heelShare?: Ratio
  /** How far the weight of wearer and rig together falls ahead of the body's own line when upright; negative behind. */
  weightOffset?: Length
  /** Part of the way to the edge that a standing person can use. */
  usableShare?: Ratio
  /** Distance from the weight's line to the edge tipped over, in place of the stance. */
  edge?: Length | null
  /** Restoring moment to be had over the wind's moment. */
  safetyFactor?: number
  /** Stature of the wearer. */
  stature?: Length
  /** Drag area of the wearer's own body. */
  bodyDragArea?: Area
  /** Density of the air. */
  airDensity?: Density
}

/** Result of {@link tipOver}. */
export interface TipOver {
  /** Distance from the weight's line to the edge of the feet, m. */
  readonly edge: number
  /** Distance the wearer can use of it, m. */
  readonly usableEdge: number
  /** Weight of wearer and rig, N. */
  readonly weight: number
  /** Moment of the gust about the ground, N·m, the wearer's body included. */
  readonly windMoment: number
  /** Moment that holds upright within the usable edge, N·m. */
  readonly restoring: number
  /** The same for a stiff body that uses the whole edge, N·m. */
  readonly restoringRigid: number
  /** Wind moment over usable restoring moment. */
  readonly ratio: number
  /** Wind moment over the stiff body's restoring moment. */
  readonly ratioRigid: number
  /** Whether the gust is past what the stance holds with the safety factor. */
  readonly fold: boolean
  /** Mean wind at which the gust uses up the usable edge and safety factor, m/s; zero where walking alone does. */
  readonly tipWind: number
  /** Mean wind at which a stiff body would go over, without safety factor, m/s: the far end of the spread, never a limit to work to. */
  readonly tipWindRigid: number
  /** Mean wind at which to fold, m/s: the lower of `tipWind` and 10 m/s. */
  readonly foldWind: number
  /** Beaufort force to which `foldWind` belongs. */
  readonly foldBeaufort: number
  /** Base needed on the side tipped over to hold this wind with the safety factor: distance from the weight's line to the edge, m. */
  readonly edgeNeeded: number
}

const GRAVITY = 9.80665

function edgeOf(si: SiOf<TipOverInput>): number {
  if (si.edge !== null) return si.edge
  const base = si.footLength + si.stagger
  if (si.from === "side") return si.stanceWidth / 2
  return si.from === "front" ? si.heelShare * base + si.weightOffset : (1 - si.heelShare) * base - si.weightOffset
}

/** Moment of drag per square of air speed, kg: half the density times drag areas times their heights. */
function momentPerSpeed2(si: SiOf<TipOverInput>): number {
  return (si.airDensity / 2) * (si.dragArea * si.forceHeight + si.bodyDragArea * bodyCentreShare * si.stature)
}

function solve(si: SiOf<TipOverInput>): TipOver {
  const { gustFactor, walking, wind, safetyFactor } = si
  const weight = (si.bodyMass + si.rigMass) * GRAVITY
  const edge = edgeOf(si)
  const usableEdge = si.usableShare * edge
  const perSpeed2 = momentPerSpeed2(si)
  const windMoment = perSpeed2 * (gustFactor * wind + walking) ** 2
  const restoring = weight * usableEdge
  const restoringRigid = weight * edge
  // walking alone may already be too much: then there is no wind to wait for and the answer is zero
  const windFor = (moment: number) => Math.max(0, (Math.sqrt(moment / perSpeed2) - walking) / gustFactor)
  const tipWind = windFor(restoring / safetyFactor)
  const foldWind = Math.min(tipWind, pedestrianWind.unpleasant)
  return {
    edge,
    usableEdge,
    weight,
    windMoment,
    restoring,
    restoringRigid,
    ratio: windMoment / restoring,
    ratioRigid: windMoment / restoringRigid,
    fold: wind >= foldWind,
    tipWind,
    tipWindRigid: windFor(restoringRigid),
    foldWind,
    foldBeaufort: beaufortForce(foldWind),
    edgeNeeded: (safetyFactor * windMoment) / (weight * si.usableShare),
  }
}

function cautions(si: SiOf<TipOverInput>, out: TipOver): Caution[] {
  const found: Caution[] = [
    notClearance(
      "the moment that one steady gust needs to bring a standing adult over the edge of the feet",
      "a step at the wrong moment, slopes, kerbs, wet ground, a crowd's push, a gust from another side, fatigue, age, alcohol or a wearer who is a child",
      "King, Judge and Wolfson 1994 (from memory): the usable base shrinks with age",
    ),
  ]
  if (out.fold)
    found.push(
      caution(
        "fold-now",
        "warning",
        "At this wind the panels should be folded: a gust can tip or turn the wearer, and a wearer who falls with a rig on can be hurt badly.",
        "moments about the edge of the feet; Penwarden 1973 (10 m/s definitely unpleasant)",
      ),
    )
  if (out.tipWind === 0)
    found.push(
      caution(
        "never-open",
        "warning",
        "Walking alone uses up what this stance can hold: do not walk with the panels open.",
        "moments about the edge of the feet",
      ),
    )
  if (si.edge === null && si.from !== "side" && si.stagger === 0)
    found.push(
      caution(
        "stance",
        "note",
        "With the feet side by side, wind from the front or from behind has the shortest edge: one foot well ahead of the other helps most.",
        "moments about the edge of the feet",
      ),
    )
  if (si.usableShare > 0.6)
    found.push(
      caution(
        "usable-share",
        "caution",
        "Young adults use about 60 % of the foot's length without stepping, older people less; a larger share is not supported.",
        "King, Judge and Wolfson 1994, Journal of Gerontology 49 (from memory)",
      ),
    )
  if (si.rigMass >= heavyRigSway.from)
    found.push(
      caution(
        "loaded-sway",
        "caution",
        "With packs of 16 to 20.5 kg standing cadets swayed 16 to 52 % faster: under such a rig less of the stance is left for the wind.",
        "Strube and others 2017 (20 cadets)",
      ),
    )
  if (si.safetyFactor < 1.5)
    found.push(
      caution(
        "safety-factor",
        "caution",
        "A factor of 1.5 against overturning is common practice; less leaves nothing for what the estimate misses.",
      ),
    )
  return found
}

/**
 * Whether a gust on open panels tips the wearer, and the wind speed at which to fold.
 *
 * Formula: M_w = ½·ρ·(A_d·h + A_b·0.56·H)·(G·v + w)²; it is held by M_r = s·(m_b + m_r)·g·e. The wind to fold at is
 * v_f = min(10 m/s, (√(M_r / (k·½·ρ·(A_d·h + A_b·0.56·H))) − w)/G), zero where walking alone is too much. Here A_d is the
 * panels' drag area (m²) and h the height of their force (m), A_b the body's own drag area (m², default 0.84), H the
 * stature (m, default 1.7), G the gust factor (default 1.66), w the walking speed (m/s, default 1.4), m_b and m_r the
 * masses (kg), g standard gravity, e the distance from the weight's line to the edge tipped over (m): a·B + x for wind
 * from the front, (1 − a)·B − x from behind (B foot length, default 0.24 m, plus stagger, default 0; a heel share,
 * default 0.36; x weight offset, default 0), half the stance width (default 0.3 m) from the side. s is the usable share
 * (default 0.6) and k the safety factor (default 1.5, common practice). The stiff-body answer, without s and k, is shown
 * as the far end of the spread. Quasi-static; for standing adults on level ground.
 *
 * Sources: King, Judge and Wolfson 1994; limits of stability after Nashner; Penwarden 1973; WMO/TD-No. 1555.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { tipOver } from 'alula/worn'
 * const parade = tipOver({ bodyMass: '62 kg', rigMass: '8 kg', dragArea: '1.15 m2', forceHeight: '1.6 m', wind: '4 m/s' })
 * parade.ratio // => 2.937
 * parade.foldWind // => 1.464
 * parade.fold // => true
 * ```
 */
export const tipOver: Solver<TipOverInput, TipOver> = /* @__PURE__ */ solver<TipOverInput, TipOver>({
  name: "tipOver",
  title: "Whether a gust tips the wearer, and when to fold",
  input: {
    bodyMass: { kind: "mass", symbol: "m_b", label: "mass of the wearer", min: 20, max: 250, typical: [45, 100] },
    rigMass: { kind: "mass", symbol: "m_r", label: "mass of the rig", min: 0, max: 100, typical: [0.5, 15] },
    dragArea: { kind: "area", symbol: "A_d", label: "drag area of the panels", min: 0, max: 50, typical: [0.1, 3] },
    forceHeight: { kind: "length", symbol: "h", label: "height of the panels' force", min: 0, max: 10, typical: [1, 2.5] },
    wind: windFields.wind,
    from: { kind: "choice", label: "wind from", options: { front: "the front", behind: "behind", side: "the side" }, default: "front" },
    gustFactor: windFields.gustFactor,
    walking: windFields.walking,
    footLength: { kind: "length", symbol: "L_f", label: "length of the foot", above: 0, max: 0.4, typical: [0.22, 0.29], default: 0.24 },
    stagger: { kind: "length", symbol: "x_s", label: "one foot ahead of the other", min: 0, max: 1.5, typical: [0, 0.6], default: 0 },
    stanceWidth: {
      kind: "length",
      symbol: "b",
      label: "stance over the outsides of the feet",
      above: 0,
      max: 1.5,
      typical: [0.2, 0.7],
      default: 0.3,
    },
    heelShare: {
      kind: "ratio",
      symbol: "a_h",
      label: "weight within the base, from its rear edge",
      min: 0,
      max: 1,
      typical: [0.3, 0.5],
      default: 0.36,
    },
    weightOffset: {
      kind: "length",
      symbol: "x_w",
      label: "weight ahead of the body's line",
      min: -1,
      max: 1,
      typical: [-0.05, 0.05],
      default: 0,
    },
    usableShare: {
      kind: "ratio",
      symbol: "s_u",
      label: "usable part of the way to the edge",
      above: 0,
      max: 1,
      typical: [0.4, 0.8],
      default: 0.6,
    },
    edge: {
      kind: "length",
      symbol: "e_o",
      label: "distance to the edge, in place of the stance",
      above: 0,
      max: 2,
      typical: [0.05, 0.3],
      default: null,
    },
    safetyFactor: { kind: "number", symbol: "k", label: "safety factor", min: 1, max: 10, typical: [1, 2], default: 1.5 },
    stature: { kind: "length", symbol: "H", label: "stature", min: 0.8, max: 2.5, typical: [1.5, 1.95], default: 1.7 },
    bodyDragArea: { kind: "area", symbol: "A_b", label: "drag area of the body", min: 0, max: 3, typical: [0.5, 1.2], default: 0.84 },
    airDensity: windFields.airDensity,
  },
  output: {
    edge: { kind: "length", symbol: "e", label: "distance to the edge of the feet" },
    usableEdge: { kind: "length", symbol: "e_u", label: "usable distance" },
    weight: { kind: "force", symbol: "W", label: "weight of wearer and rig" },
    windMoment: { kind: "moment", symbol: "M_w", label: "moment of the gust about the ground" },
    restoring: { kind: "moment", symbol: "M_r", label: "moment that can hold" },
    restoringRigid: { kind: "moment", symbol: "M_s", label: "moment of a stiff body" },
    ratio: { kind: "ratio", symbol: "r", label: "gust against what can hold", unit: "%" },
    ratioRigid: { kind: "ratio", symbol: "r_s", label: "gust against a stiff body", unit: "%" },
    fold: { kind: "flag", label: "fold the panels" },
    tipWind: { kind: "speed", symbol: "v_p", label: "mean wind that uses up the stance" },
    tipWindRigid: { kind: "speed", symbol: "v_s", label: "mean wind that tips a stiff body" },
    foldWind: { kind: "speed", symbol: "v_f", label: "mean wind at which to fold" },
    foldBeaufort: { kind: "number", symbol: "B_f", label: "Beaufort force at which to fold" },
    edgeNeeded: { kind: "length", symbol: "e_n", label: "distance to the edge needed in this wind" },
  },
  example: { bodyMass: "62 kg", rigMass: "8 kg", dragArea: "1.15 m2", forceHeight: "1.6 m", wind: "4 m/s" },
  formulae: [
    { symbol: "e", meaning: "distance to the edge as given", is: "e_o", when: "has_edge" },
    {
      symbol: "e",
      meaning: "distance to the heels",
      is: "a_h * (L_f + x_s) + x_w",
      when: 'not has_edge and equalText(from, "front")',
    },
    {
      symbol: "e",
      meaning: "distance to the toes",
      is: "(1 - a_h) * (L_f + x_s) - x_w",
      when: 'not has_edge and equalText(from, "behind")',
    },
    { symbol: "e", meaning: "distance to the outside of the foot", is: "b / 2", when: 'not has_edge and equalText(from, "side")' },
    { symbol: "e_u", meaning: "distance the wearer can use", is: "s_u * e", source: "King, Judge and Wolfson 1994" },
    { symbol: "W", meaning: "weight of wearer and rig", is: "(m_b + m_r) * 9.80665 m/s^2" },
    {
      symbol: "K",
      kind: "mass",
      meaning: "moment of drag per square of air speed",
      is: "rho / 2 * (A_d * h + A_b * 0.56 * H)",
      source: "body drag at its centre of mass, 0.56 of stature",
    },
    { symbol: "M_w", meaning: "moment of the gust", is: "K * (G * v_w + v_b)^2" },
    { symbol: "M_r", meaning: "moment that can hold", is: "W * e_u" },
    { symbol: "M_s", meaning: "moment of a stiff body", is: "W * e" },
    { symbol: "r", meaning: "gust against what can hold", is: "M_w / M_r" },
    { symbol: "r_s", meaning: "gust against a stiff body", is: "M_w / M_s" },
    { symbol: "v_p", meaning: "mean wind that uses up the stance", is: "max(0 m/s, (sqrt(M_r / (k * K)) - v_b) / G)" },
    { symbol: "v_s", meaning: "mean wind that tips a stiff body", is: "max(0 m/s, (sqrt(M_s / K) - v_b) / G)" },
    { symbol: "v_f", meaning: "mean wind at which to fold", is: "min(v_p, 10 m/s)", source: "Penwarden 1973" },
    {
      symbol: "B_f",
      kind: "number",
      meaning: "Beaufort force at which to fold",
      given: (_, out) => beaufortForce(out.foldWind),
      source: "WMO code 1100",
    },
    { symbol: "e_n", meaning: "distance to the edge needed in this wind", is: "k * M_w / (W * s_u)" },
  ],
  sources: [functionalBaseSource, stabilitySource, proportionsSource, standingDragSource, gustSource, beaufortSource, pedestrianWindSource],
  check: (si) => {
    if (edgeOf(si) <= 0)
      return [inconsistent(["weightOffset"], "weight that falls outside the feet", "an offset that keeps the weight over the feet")]
    if (momentPerSpeed2(si) === 0)
      return [
        inconsistent(["dragArea"], "nothing for the wind to hold on to", "a drag area and height above zero, of the panels or of the body"),
      ]
    return []
  },
  solve,
  cautions,
})
