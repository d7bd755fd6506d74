import { commonPractice, inconsistent, type SiOf, type Solver, solver } from "../../../solver/index.js"
import {
  beaufortSource,
  bodyCentreSource,
  functionalBaseSource,
  gustSafetySource,
  gustSource,
  huntSource,
  melbourneSource,
  pedestrianWindSource,
  standingDragSource,
  swaySource,
} from "../../sources-around.js"
import { wearerFields } from "../../wearer.js"
import { bodyCentreShare, overturnFactor, standingDragArea, usableFoot } from "../data-balance.js"
import { beaufortForce, pedestrianWind } from "../data-wind.js"
import { windFields } from "../wind-fields.js"
import { tipCautions } from "./cautions.js"
import type { Overturning, OverturningCaution, OverturningInput } from "./types.js"

export type { Overturning, OverturningInput, WindFrom } from "./types.js"

const GRAVITY = 9.80665

function edgeOf(si: SiOf<OverturningInput>): number {
  if (si.edgeDistance !== null) return si.edgeDistance
  const base = si.footLength + si.stagger
  if (si.windFrom === "side") return si.stanceWidth / 2
  return si.windFrom === "front" ? si.heelShare * base + si.weightOffset : (1 - si.heelShare) * base - si.weightOffset
}

/** Moments of drag per square of air speed, kg, of the rig and of the wearer's body: half the density times drag area times height. */
function momentsPerSpeed2(si: SiOf<OverturningInput>): { readonly rig: number; readonly body: number } {
  const half = si.airDensity / 2
  return { rig: half * si.dragArea * si.forceHeight, body: half * si.bodyDragArea * bodyCentreShare * si.stature }
}

function solve(si: SiOf<OverturningInput>): Overturning {
  const { gustFactor, walkingSpeed, windSpeed, safetyFactor } = si
  const weight = (si.bodyMass + si.rigMass) * GRAVITY
  const edgeDistance = edgeOf(si)
  const usableEdgeDistance = si.usableShare * edgeDistance
  const { rig, body } = momentsPerSpeed2(si)
  const gustSpeed = gustFactor * windSpeed
  const air = gustSpeed + walkingSpeed
  const restoringMoment = weight * usableEdgeDistance
  const restoringMomentRigid = weight * edgeDistance
  // walking alone may already be too much: then there is no wind to wait for and the answer is zero
  const meanOf = (speed: number) => Math.max(0, (speed - walkingSpeed) / gustFactor)
  const own = pedestrianWind.unbalancingGust ** -2
  const windFor = (moment: number, factor: number) => meanOf(1 / Math.sqrt(own + (factor * rig) / moment))
  const tipWindSpeed = windFor(restoringMoment, safetyFactor)
  const publishedTipWindSpeed = windFor(weight * (usableFoot * edgeDistance), overturnFactor)
  const foldWindSpeed = Math.min(tipWindSpeed, publishedTipWindSpeed, pedestrianWind.unpleasant)
  const windMoment = rig * air ** 2
  const bodyUtilisation = own * air ** 2
  return {
    edgeDistance,
    usableEdgeDistance,
    weight,
    gustSpeed,
    windMoment,
    bodyMoment: body * air ** 2,
    restoringMoment,
    restoringMomentRigid,
    rigUtilisation: windMoment / restoringMoment,
    rigUtilisationRigid: windMoment / restoringMomentRigid,
    bodyUtilisation,
    utilisation: bodyUtilisation + (safetyFactor * windMoment) / restoringMoment,
    fold: windSpeed >= foldWindSpeed,
    tipWindSpeed,
    publishedTipWindSpeed,
    tipWindSpeedRigid: rig > 0 ? meanOf(Math.sqrt(restoringMomentRigid / rig)) : null,
    bodyWindSpeed: meanOf(pedestrianWind.unbalancingGust),
    foldWindSpeed,
    foldBeaufort: beaufortForce(foldWindSpeed),
    requiredEdgeDistance: bodyUtilisation < 1 ? (safetyFactor * windMoment) / (weight * si.usableShare * (1 - bodyUtilisation)) : null,
  }
}

/**
 * Whether a gust on open panels tips the wearer, and the wind speed at which to fold.
 *
 * Formula: the gust bears on the rig with M_w = ½·ρ·A_d·h·(G·v + w)², held by M_r = s·(m_w + m_r)·g·e. What the wind
 * does to the wearer's own body is not held against the stance, since people lean into it, but against the published
 * limit for people on foot, a gust of 15 m/s; that both shares add up is a rule of our own, on the safe side of taking
 * the worse of the two: q = (u/15 m/s)² + k·M_w/M_r with u = G·v + w, and it is time to fold where q reaches 1, at a
 * mean wind of (1/√(1/(15 m/s)² + k·½·ρ·A_d·h/M_r) − w)/G, at the same with the published s = 0.6 and k = 1.5, or at 10
 * m/s, whichever comes first. Here A_d is the panels' drag area and h the height of their force, G the gust factor, w
 * the walking speed, m_w and m_r the masses, g standard gravity, e the distance from the weight's line to the edge
 * tipped over: a·B + x for wind from the front, (1 − a)·B − x from behind (B foot length, plus stagger; a heel share; x
 * weight offset), half the stance width from either side. s is the usable share and k the safety factor (default:
 * common practice). The body's own moment ½·ρ·A_b·0.56·H·u² (A_b the body's drag area, H stature) and the stiff-body
 * answer for the rig, without s and k, stand beside it. Quasi-static; for standing adults on level ground. The 15 m/s
 * are for frail people; nobody was tested above 12.5 m/s.
 *
 * **Inputs**
 * - `bodyMass`: body mass [m_w; 20 to 300 kg]
 * - `rigMass`: rig mass [m_r; 0 to 150 kg]
 * - `dragArea`: drag area of the panels [A_d; 0 to 50 m²]
 * - `forceHeight`: height of the panels' force [h; 0 to 10 m]
 * - `windSpeed`: mean wind speed [v_w; 0 to 40 m/s]
 * - `windFrom`: wind from [front, behind or side; default front]
 * - `gustFactor`: gust factor [G; 1 to 3; default 1.66]
 * - `walkingSpeed`: walking speed against the wind [v_b; 0 to 10 m/s; default 1.4 m/s]
 * - `footLength`: length of the foot [L_f; 1 cm to 400 mm; default 240 mm]
 * - `stagger`: one foot ahead of the other [x_s; 0 to 1.5 m; default 0]
 * - `stanceWidth`: stance over the outsides of the feet [b; 1 cm to 1.5 m; default 300 mm]
 * - `heelShare`: weight within the base, from its rear edge [a_h; 0 to 1; default 0.36]
 * - `weightOffset`: weight forward of the body's line [x_w; −1 to 1 m; default 0]
 * - `usableShare`: usable part of the way to the edge [s_u; 1 to 100 %; default 60 %]
 * - `edgeDistance`: distance to the edge, in place of the stance [e_o; 0.01 mm to 2 m; optional]
 * - `safetyFactor`: safety factor [k; 1 to 10; default 1.5]
 * - `stature`: stature [H; 800 mm to 2.5 m; default 1.7 m]
 * - `bodyDragArea`: drag area of the body [A_b; 0 to 3 m²; default 0.84 m²]
 * - `airDensity`: density of the air [rho; 0.1 to 2 kg/m³; default 1.225 kg/m³]
 *
 * **Results**
 *
 * `edgeDistance`: distance to the edge of the feet [e; m]; `usableEdgeDistance`: usable distance [e_u; m]; `weight`:
 * weight of wearer and rig [W; N]; `gustSpeed`: peak gust [v_g; m/s]; `windMoment`: moment of the gust on the rig
 * about the ground [M_w; N m]; `bodyMoment`: moment of the gust on the body about the ground [M_b; N m];
 * `restoringMoment`: restoring moment within the usable distance [M_r; N m]; `restoringMomentRigid`: restoring moment
 * of a stiff body [M_s; N m]; `rigUtilisation`: utilisation by the rig [r; as a fraction]; `rigUtilisationRigid`:
 * utilisation by the rig, stiff body [r_s; as a fraction]; `bodyUtilisation`: utilisation by the body alone [q_b; as a
 * fraction]; `utilisation`: utilisation, body and rig together with the safety factor [q; as a fraction]; `fold`: fold
 * the panels [yes or no]; `tipWindSpeed`: mean wind that uses up the stance [v_p; m/s]; `publishedTipWindSpeed`: the
 * same with the published share and factor [v_q; m/s]; `tipWindSpeedRigid`: mean wind that tips a stiff body with the
 * rig [v_s; m/s]; `bodyWindSpeed`: mean wind at the limit of a person without a rig [v_b0; m/s]; `foldWindSpeed`: mean
 * wind at which to fold [v_f; m/s]; `foldBeaufort`: Beaufort force at which to fold [B_f]; `requiredEdgeDistance`:
 * minimum distance to the edge in this wind [e_n; m].
 *
 * **Symbols of the working**
 *
 * u: air against wearer and rig [m/s]; K: rig's moment of drag per square of air speed [kg].
 *
 * **Sources**
 * - M. B. King, J. O. Judge, L. Wolfson: Functional base of support decreases with age, Journal of Gerontology 49(6),
 *   M258–M263, 1994, about 60 % of the foot's length in young adults, less with age (not verified against the
 *   document)
 * - A. T. Johnson: Biomechanics and Exercise Physiology, 1991, section 2.2.1, after Davidovits 1975: centre of mass at
 *   0.56 of stature
 * - S. F. Hoerner: Fluid-Dynamic Drag, 1965, chapter 3: standing person, about 9 ft² of drag area (not verified
 *   against the document)
 * - E. M. Strube and others: The effect of military load carriage on postural sway, forward trunk lean, and pelvic
 *   girdle motion, Int. J. Exercise Science 10, 25–36, 2017, abstract: 20 cadets, packs of 16.0 and 20.5 kg
 * - B. A. Harper, J. D. Kepert, J. D. Ginger: Guidelines for converting between various wind averaging periods in
 *   tropical cyclone conditions, WMO/TD-No. 1555, 2010, table 1.1, in-land, 3 s gust in a 10 min mean: 1.66 (not
 *   verified against the document)
 * - S. Murakami, Y. Iwasa, Y. Morikawa: Study on acceptable criteria for assessing strong wind at ground level, J.
 *   Wind Eng. Ind. Aerodyn. 24, 1–18, 1986, daily largest gusts of 10, 15 and 20 m/s (not verified against the
 *   document)
 * - City of Melbourne, after W. H. Melbourne: Pedestrian wind criteria, 2021, safety: 3 s gust of 20 m/s
 * - J. C. R. Hunt, E. C. Poulton, J. C. Mumford: The effects of wind on people: new criteria based on wind tunnel
 *   experiments, Building and Environment 11, 15–28, 1976, abstract: nobody was tested above 12.5 m/s
 * - World Meteorological Organization: Beaufort scale of wind force, WMO code 1100, limits in m/s, ten-minute mean at
 *   10 m over open ground
 * - A. D. Penwarden: Acceptable wind speeds in towns, Building Science 8, 259–267, 1973, abstract: discomfort from 5
 *   m/s, definitely unpleasant from 10, dangerous from 20
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { overturning } from 'alula/worn'
 * const parade = overturning({ bodyMass: '62 kg', rigMass: '8 kg', dragArea: '1.15 m2', forceHeight: '1.6 m', windSpeed: '4 m/s' })
 * parade.rigUtilisation // => 2.047
 * parade.foldWindSpeed // => 1.800
 * parade.fold // => true
 * ```
 */
export const overturning: Solver<OverturningInput, Overturning, never, OverturningCaution> = /* @__PURE__ */ solver<
  OverturningInput,
  Overturning,
  never,
  OverturningCaution
>("overturning", "Whether a gust tips the wearer, and when to fold", solve, () => ({
  input: {
    bodyMass: wearerFields.bodyMass,
    rigMass: { ...wearerFields.rigMass, min: 0 },
    dragArea: { kind: "area", symbol: "A_d", label: "drag area of the panels", min: 0, max: 50, typical: [0.1, 3] },
    forceHeight: { kind: "length", symbol: "h", label: "height of the panels' force", min: 0, max: 10, typical: [1, 2.5] },
    windSpeed: windFields.windSpeed,
    windFrom: {
      kind: "choice",
      label: "wind from",
      options: { front: "the front", behind: "behind", side: "either side" },
      default: "front",
    },
    gustFactor: windFields.gustFactor,
    walkingSpeed: windFields.walkingSpeed,
    footLength: {
      kind: "length",
      symbol: "L_f",
      label: "length of the foot",
      min: "1 cm",
      max: 0.4,
      typical: [0.22, 0.29],
      default: 0.24,
    },
    stagger: { kind: "length", symbol: "x_s", label: "one foot ahead of the other", min: 0, max: 1.5, typical: [0, 0.6], default: 0 },
    stanceWidth: {
      kind: "length",
      symbol: "b",
      label: "stance over the outsides of the feet",
      min: "1 cm",
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
      label: "weight forward of the body's line",
      min: -1,
      max: 1,
      typical: [-0.05, 0.05],
      default: 0,
    },
    usableShare: {
      kind: "ratio",
      symbol: "s_u",
      label: "usable part of the way to the edge",
      min: "1 %",
      max: 1,
      typical: [0.4, 0.8],
      default: usableFoot,
    },
    edgeDistance: {
      kind: "length",
      symbol: "e_o",
      label: "distance to the edge, in place of the stance",
      min: "0.01 mm",
      max: 2,
      typical: [0.05, 0.3],
      default: null,
    },
    safetyFactor: { kind: "number", symbol: "k", label: "safety factor", min: 1, max: 10, typical: [1, 2], default: overturnFactor },
    stature: { ...wearerFields.stature, default: 1.7 },
    bodyDragArea: {
      kind: "area",
      symbol: "A_b",
      label: "drag area of the body",
      min: 0,
      max: 3,
      typical: [0.5, 1.2],
      default: standingDragArea,
    },
    airDensity: windFields.airDensity,
  },
  output: {
    edgeDistance: { kind: "length", symbol: "e", label: "distance to the edge of the feet" },
    usableEdgeDistance: { kind: "length", symbol: "e_u", label: "usable distance" },
    weight: { kind: "force", symbol: "W", label: "weight of wearer and rig" },
    gustSpeed: { kind: "speed", symbol: "v_g", label: "peak gust" },
    windMoment: { kind: "moment", symbol: "M_w", label: "moment of the gust on the rig about the ground" },
    bodyMoment: { kind: "moment", symbol: "M_b", label: "moment of the gust on the body about the ground" },
    restoringMoment: { kind: "moment", symbol: "M_r", label: "restoring moment within the usable distance" },
    restoringMomentRigid: { kind: "moment", symbol: "M_s", label: "restoring moment of a stiff body" },
    rigUtilisation: { kind: "ratio", symbol: "r", label: "utilisation by the rig", unit: "%" },
    rigUtilisationRigid: { kind: "ratio", symbol: "r_s", label: "utilisation by the rig, stiff body", unit: "%" },
    bodyUtilisation: { kind: "ratio", symbol: "q_b", label: "utilisation by the body alone", unit: "%" },
    utilisation: { kind: "ratio", symbol: "q", label: "utilisation, body and rig together with the safety factor", unit: "%" },
    fold: { kind: "flag", label: "fold the panels" },
    tipWindSpeed: { kind: "speed", symbol: "v_p", label: "mean wind that uses up the stance" },
    publishedTipWindSpeed: { kind: "speed", symbol: "v_q", label: "the same with the published share and factor" },
    tipWindSpeedRigid: { kind: "speed", symbol: "v_s", label: "mean wind that tips a stiff body with the rig" },
    bodyWindSpeed: { kind: "speed", symbol: "v_b0", label: "mean wind at the limit of a person without a rig" },
    foldWindSpeed: { kind: "speed", symbol: "v_f", label: "mean wind at which to fold" },
    foldBeaufort: { kind: "number", symbol: "B_f", label: "Beaufort force at which to fold" },
    requiredEdgeDistance: { kind: "length", symbol: "e_n", label: "minimum distance to the edge in this wind" },
  },
  example: { bodyMass: "62 kg", rigMass: "8 kg", dragArea: "1.15 m2", forceHeight: "1.6 m", windSpeed: "4 m/s" },
  formulae: [
    { symbol: "e", meaning: "distance to the edge as given", is: "e_o", when: "has_edgeDistance" },
    {
      symbol: "e",
      meaning: "distance to the heels",
      is: "a_h * (L_f + x_s) + x_w",
      when: 'not has_edgeDistance and equalText(windFrom, "front")',
    },
    {
      symbol: "e",
      meaning: "distance to the toes",
      is: "(1 - a_h) * (L_f + x_s) - x_w",
      when: 'not has_edgeDistance and equalText(windFrom, "behind")',
    },
    {
      symbol: "e",
      meaning: "distance to the outside of the foot",
      is: "b / 2",
      when: 'not has_edgeDistance and equalText(windFrom, "side")',
    },
    { symbol: "e_u", meaning: "distance the wearer can use", is: "s_u * e", source: functionalBaseSource },
    { symbol: "W", meaning: "weight of wearer and rig", is: "(m_w + m_r) * 9.80665 m/s^2" },
    { symbol: "v_g", meaning: "peak gust", is: "G * v_w", source: gustSource },
    { symbol: "u", kind: "speed", meaning: "air against wearer and rig", is: "v_g + v_b" },
    { symbol: "K", kind: "mass", meaning: "rig's moment of drag per square of air speed", is: "rho / 2 * A_d * h" },
    { symbol: "M_w", meaning: "moment of the gust on the rig", is: "K * u^2" },
    {
      symbol: "M_b",
      meaning: "moment of the gust on the body, at its centre of mass",
      is: "rho / 2 * A_b * 0.56 * H * u^2",
      source: bodyCentreSource,
    },
    { symbol: "M_r", meaning: "restoring moment within the usable distance", is: "W * e_u" },
    { symbol: "M_s", meaning: "restoring moment of a stiff body", is: "W * e" },
    { symbol: "r", meaning: "rig against what can hold", is: "M_w / M_r" },
    { symbol: "r_s", meaning: "rig against a stiff body", is: "M_w / M_s" },
    {
      symbol: "q_b",
      meaning: "wind on a person alone against the published limit",
      is: "(u / (15 m/s))^2",
      source: gustSafetySource,
    },
    { symbol: "q", meaning: "body and rig together, added by a rule of our own", is: "q_b + k * M_w / M_r", source: commonPractice },
    {
      symbol: "v_p",
      meaning: "mean wind that uses up the stance",
      is: "max(0 m/s, (1 / sqrt(1 / (15 m/s)^2 + k * K / M_r) - v_b) / G)",
    },
    {
      symbol: "v_q",
      meaning: "the same with the published share and factor",
      is: "max(0 m/s, (1 / sqrt(1 / (15 m/s)^2 + 1.5 * K / (0.6 * M_s)) - v_b) / G)",
      source: functionalBaseSource,
    },
    {
      symbol: "v_s",
      meaning: "mean wind that tips a stiff body with the rig",
      is: "max(0 m/s, (sqrt(M_s / K) - v_b) / G)",
      when: "K > 0 kg",
    },
    { symbol: "v_b0", meaning: "mean wind at the limit of a person without a rig", is: "max(0 m/s, (15 m/s - v_b) / G)" },
    { symbol: "v_f", meaning: "mean wind at which to fold", is: "min(v_p, v_q, 10 m/s)", source: pedestrianWindSource },
    {
      symbol: "B_f",
      kind: "number",
      meaning: "Beaufort force at which to fold",
      given: (_, out) => beaufortForce(out.foldWindSpeed),
      source: beaufortSource,
    },
    {
      symbol: "e_n",
      meaning: "distance to the edge needed in this wind",
      is: "k * M_w / (W * s_u * (1 - q_b))",
      when: "q_b < 1",
    },
  ],
  sources: [
    functionalBaseSource,
    bodyCentreSource,
    standingDragSource,
    swaySource,
    gustSource,
    gustSafetySource,
    melbourneSource,
    huntSource,
    beaufortSource,
    pedestrianWindSource,
  ],
  check: (si) =>
    edgeOf(si) <= 0
      ? [
          inconsistent(
            ["weightOffset"],
            "{weightOffset length} ahead of the body's line, outside the feet",
            "an offset that keeps the weight over the feet",
            { weightOffset: si.weightOffset },
          ),
        ]
      : [],
  cautions: tipCautions,
}))
