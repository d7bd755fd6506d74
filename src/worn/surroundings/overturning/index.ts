import { inconsistent, type Solver, solver } from "../../../solver/index.js"
import {
  beaufortSource,
  bodyCentreSource,
  functionalBaseSource,
  gustSafetySource,
  gustSource,
  huntSource,
  melbourneSource,
  pedestrianWindSource,
  pendulumSource,
  proportionsSource,
  standingDragSource,
  swaySource,
} from "../../sources-around.js"
import { tipCautions } from "./cautions.js"
import { overturningFields, overturningOutput } from "./fields.js"
import { overturningFormulae } from "./formulae.js"
import { edgeOf, solve } from "./kernel.js"
import type { Overturning, OverturningCaution, OverturningInput, OverturningRefusal } from "./types.js"

export type { Overturning, OverturningInput, WindFrom } from "./types.js"

/**
 * Whether a gust on open panels, a push or uneven ground tips the wearer, and the wind speed at which to fold.
 *
 * Formula: the gust bears on the rig with M_w = ½·ρ·A_d·l·(G·v + w)², held by M_r = (m_w + m_r)·g·d. What the wind
 * does to the wearer's own body is not held against the stance, since people lean into it, but against the published
 * limit for people on foot, a gust of 15 m/s; that both shares add up is a rule of our own, on the safe side of taking
 * the worse of the two: q = (u/15 m/s)² + k·(M_w + M_p)/M_r with u = G·v + w, and it is time to fold where q reaches 1,
 * at the same with the published s = 0.6 and k = 1.5, or at 10 m/s, whichever comes first. Here A_d is the panels' drag
 * area, G the gust factor, w the walking speed, m_w and m_r the masses, g standard gravity, k the safety factor (default:
 * common practice) and s the usable share of e, the distance from the weight's line to the edge tipped over: a·B + x for
 * wind from the front, (1 − a)·B − x from behind (B foot length plus stagger, a heel share, x weight offset), half the
 * stance width from either side. On level ground d = s·e and l is the height h of the panels' force. On a slope that is
 * seen the wearer stands plumb: the ground falls at σ = atan(tan β·cos φ) towards that edge, which lies nearer and lower.
 * A drop that is not seen tilts body and feet together by δ = atan(step/B), the centre of mass at the height z with them:
 * d = s·e·cos(σ + δ) − z·sin δ, l = h·cos δ + s·e·sin(σ + δ). A push F_p and a bump of the mass m_b at the speed v_k, all
 * of whose momentum the wearer takes, act at shoulder height or as given: M_p = (F_p + m_b·v_k·√(g/z))·(h_p·cos δ +
 * s·e·sin(σ + δ)), the bump by the inverted pendulum's condition for dynamic stability (centre of mass plus its speed
 * times √(z/g) within the edge, no step taken). The body's own moment ½·ρ·A_b·0.56·H·u² (A_b the body's drag area, H
 * stature) and the stiff-body answer for the rig, without s and k, stand beside it. For standing adults on firm ground.
 * The 15 m/s are for frail people; nobody was tested above 12.5 m/s.
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
 * - `slope`: slope of the ground [beta; 0 to 30°; default 0]
 * - `slopeDirection`: downhill from the side tipped over [phi_s; −180° to 180°; default 0]
 * - `stepHeight`: unseen drop across the feet [s_h; 0 to 500 mm; optional]
 * - `pushForce`: steady push [F_p; 0 to 2000 N; default 0]
 * - `pushHeight`: height of the push [h_g; 100 mm to 3 m; optional]
 * - `bumpMass`: mass that bumps into the wearer [m_b; 100 g to 300 kg; optional]
 * - `bumpSpeed`: speed of the bump [v_k; 0 to 10 m/s; optional]
 * - `rigCentreHeight`: height of the rig's centre of mass [h_c; 100 mm to 5 m; optional]
 * - `stature`: stature [H; 800 mm to 2.5 m; default 1.7 m]
 * - `bodyDragArea`: drag area of the body [A_b; 0 to 3 m²; default 0.84 m²]
 * - `airDensity`: density of the air [rho; 0.1 to 2 kg/m³; default 1.225 kg/m³]
 * - at most one of `edgeDistance` and `stepHeight`
 * - `bumpMass` and `bumpSpeed` only together
 *
 * **Results**
 *
 * `edgeDistance`: distance to the edge of the feet [e; m]; `usableEdgeDistance`: usable distance [e_u; m]; `weight`:
 * weight of wearer and rig [W; N]; `leverArm`: level reach of the weight within the usable distance [d_u; m];
 * `centreHeight`: height of the centre of mass of wearer and rig [z_c; m]; `pushMoment`: moment of push and bump about
 * the ground [M_p; N m]; `pushUtilisation`: utilisation by push and bump [r_p; as a fraction]; `pushForceLimit`:
 * steady push that this stance holds in this wind [F_l; N]; `bumpSpeedLimit`: speed of the bump that this stance holds
 * in this wind [v_l; m/s]; `stepHeightLimit`: unseen drop that uses up the stance by itself [s_l; m]; `gustSpeed`:
 * peak gust [v_g; m/s]; `windMoment`: moment of the gust on the rig about the usable edge [M_w; N m]; `bodyMoment`:
 * moment of the gust on the body about the ground [M_b; N m]; `restoringMoment`: restoring moment within the usable
 * distance [M_r; N m]; `restoringMomentRigid`: restoring moment of a stiff body [M_s; N m]; `rigUtilisation`:
 * utilisation by the rig [r; as a fraction]; `rigUtilisationRigid`: utilisation by the rig, stiff body [r_s; as a
 * fraction]; `bodyUtilisation`: utilisation by the body alone [q_b; as a fraction]; `utilisation`: utilisation, body,
 * rig and push together with the safety factor [q; as a fraction]; `fold`: fold the panels [yes or no];
 * `tipWindSpeed`: mean wind that uses up the stance [v_p; m/s]; `publishedTipWindSpeed`: the same with the published
 * share and factor [v_q; m/s]; `tipWindSpeedRigid`: mean wind that tips a stiff body with the rig [v_s; m/s];
 * `bodyWindSpeed`: mean wind at the limit of a person without a rig [v_b0; m/s]; `foldWindSpeed`: mean wind at which
 * to fold [v_f; m/s]; `foldBeaufort`: Beaufort force at which to fold [B_f]; `requiredEdgeDistance`: minimum distance
 * to the edge in this wind [e_n; m].
 *
 * **Symbols of the working**
 *
 * h_r: shoulder height, where nothing else is given [m]; h_p: height of the push [m]; z_r: height of the rig's centre
 * [m]; b_s: slope towards the side tipped over [rad]; B: length of the stance that way [m]; b_d: tilt of the body by
 * the unseen drop [rad]; d_s: the same to the edge itself [m]; d_q: the same to the published share of the edge [m];
 * y_u: how far the usable edge lies lower [m]; y_q: the same at the published share [m]; u: air against wearer and rig
 * [m/s]; K: rig's moment of drag per square of air speed [kg]; K_q: the same at the published share [kg]; K_s: the
 * same about the edge itself [kg]; c_s: an inverted pendulum sways from a bump as from this times its momentum [Hz];
 * F_e: push, and bump as a steady force [N]; p_u: lever of the push about the usable edge [m]; p_q: the same at the
 * published share [m]; F_d: drag of the rig [N]; N_h: what each length of edge holds [N]; k_g: what each length of
 * edge adds to the levers; M_d: what the tilt takes of the weight's hold [N m]; M_h: moment of the drag at the height
 * of the feet [N m]; M_g: moment of the push at the height of the feet [N m]; e_l: usable distance, at most the
 * published share [m].
 *
 * **Sources**
 * - M. B. King, J. O. Judge, L. Wolfson: Functional base of support decreases with age, Journal of Gerontology 49(6),
 *   M258–M263, 1994, about 60 % of the foot's length in young adults, less with age (not verified against the
 *   document)
 * - A. T. Johnson: Biomechanics and Exercise Physiology, 1991, section 2.2.1, after Davidovits 1975: centre of mass at
 *   0.56 of stature
 * - R. Drillis, R. Contini: Body segment parameters, New York University report 1166-03, as in Winter, Biomechanics
 *   and Motor Control of Human Movement, fig. 4.1, 1966, segment lengths as fractions of stature (not verified against
 *   the document)
 * - A. L. Hof, M. G. J. Gazendam, W. E. Sinke: The condition for dynamic stability, Journal of Biomechanics 38, 1–8,
 *   2005, abstract: centre of mass plus its speed times √(l/g) within the base
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
 * @throws NoSolutionError `cannot-balance` with the drop that can be stood on
 * @example
 * ```ts
 * import { overturning } from 'alula/worn'
 * const parade = overturning({ bodyMass: '62 kg', rigMass: '8 kg', dragArea: '1.15 m2', forceHeight: '1.6 m', windSpeed: '4 m/s' })
 * parade.rigUtilisation // => 2.047
 * parade.foldWindSpeed // => 1.800
 * parade.fold // => true
 * ```
 */
export const overturning: Solver<OverturningInput, Overturning, OverturningRefusal, OverturningCaution> = /* @__PURE__ */ solver<
  OverturningInput,
  Overturning,
  OverturningRefusal,
  OverturningCaution
>("overturning", "Whether a gust, a push or uneven ground tips the wearer, and when to fold", solve, () => ({
  input: overturningFields(),
  output: overturningOutput(),
  example: { bodyMass: "62 kg", rigMass: "8 kg", dragArea: "1.15 m2", forceHeight: "1.6 m", windSpeed: "4 m/s" },
  formulae: overturningFormulae(),
  sources: [
    functionalBaseSource,
    bodyCentreSource,
    proportionsSource,
    pendulumSource,
    standingDragSource,
    swaySource,
    gustSource,
    gustSafetySource,
    melbourneSource,
    huntSource,
    beaufortSource,
    pedestrianWindSource,
  ],
  either: [{ atMostOne: ["edgeDistance", "stepHeight"] }, { together: ["bumpMass", "bumpSpeed"] }],
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
