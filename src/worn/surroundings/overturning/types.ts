// What goes in and what comes out.

import type { Angle, Area, Density, Force, Length, Mass, Ratio, Speed } from "../../../quantity/index.js"
import type { GustCaution } from "../wind-cautions.js"

/** Where the wind comes from, as the wearer faces. */
export type WindFrom = "front" | "behind" | "side"

/** Input of {@link overturning}. */
export interface OverturningInput {
  /** Body mass [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Rig mass [m_r; 0 to 150 kg] */
  rigMass: Mass
  /** Drag area of the open panels (coefficient times area): `dragArea` of windLoad. [A_d; 0 to 50 m²] */
  dragArea: Area
  /** Height of the panels' force above the ground: `forceHeight` of windLoad. [h; 0 to 10 m] */
  forceHeight: Length
  /** Mean wind speed, as forecasts give it. [v_w; 0 to 40 m/s] */
  windSpeed: Speed
  /** Side the wind comes from. [front, behind or side; default front] */
  windFrom?: WindFrom
  /** Peak gust over mean wind. [G; 1 to 3; default 1.66] */
  gustFactor?: number
  /** Walking speed against the wind [v_b; 0 to 10 m/s; default 1.4 m/s] */
  walkingSpeed?: Speed
  /** Length of the foot [L_f; 1 cm to 400 mm; default 240 mm] */
  footLength?: Length
  /** How far one foot stands ahead of the other. [x_s; 0 to 1.5 m; default 0] */
  stagger?: Length
  /** Width of the stance, over the outsides of the feet. [b; 1 cm to 1.5 m; default 300 mm] */
  stanceWidth?: Length
  /** Where the body's weight falls within the fore-aft base, from its rear edge. [a_h; 0 to 1; default 0.36] */
  heelShare?: Ratio
  /**
   * How far the weight of wearer and rig together falls ahead of the body's own line when upright; negative behind.
   * [x_w; −1 to 1 m; default 0]
   */
  weightOffset?: Length
  /** Part of the way to the edge that a standing person can use. [s_u; 1 to 100 %; default 60 %] */
  usableShare?: Ratio
  /** Distance from the weight's line to the edge tipped over, in place of the stance. [e_o; 0.01 mm to 2 m; optional] */
  edgeDistance?: Length | null
  /** Restoring moment to be had over the wind's moment. [k; 1 to 10; default 1.5] */
  safetyFactor?: number
  /** Slope of the ground; the wearer sees it and stands plumb. [beta; 0 to 30°; default 0] */
  slope?: Angle
  /**
   * Where downhill lies: 0 straight towards the side tipped over, a right angle along it, half a turn away from it.
   * [phi_s; −180° to 180°; default 0]
   */
  slopeDirection?: Angle
  /**
   * Kerb, hole or cable under one foot, unseen: how far the ground drops across the feet towards the side tipped over.
   * [s_h; 0 to 500 mm; optional]
   */
  stepHeight?: Length | null
  /** Someone leaning or pressing on the wearer, towards the side tipped over. [F_p; 0 to 2000 N; default 0] */
  pushForce?: Force
  /** Height of the push and the bump above the ground; the shoulders when left out. [h_g; 100 mm to 3 m; optional] */
  pushHeight?: Length | null
  /** Someone or something that runs into the wearer and stops there: its mass. [m_b; 100 g to 300 kg; optional] */
  bumpMass?: Mass | null
  /** And its speed. [v_k; 0 to 10 m/s; optional] */
  bumpSpeed?: Speed | null
  /** Height of the rig's centre of mass above the ground; the shoulders when left out. [h_c; 100 mm to 5 m; optional] */
  rigCentreHeight?: Length | null
  /** Stature of the wearer. [H; 800 mm to 2.5 m; default 1.7 m] */
  stature?: Length
  /** Drag area of the wearer's own body. [A_b; 0 to 3 m²; default 0.84 m²] */
  bodyDragArea?: Area
  /** Density of the air [rho; 0.1 to 2 kg/m³; default 1.225 kg/m³] */
  airDensity?: Density
}

/** Reasons for which {@link overturning} can refuse. */
export type OverturningRefusal = "cannot-balance"

/** Hazards and limits that an answer of {@link overturning} can carry. */
export type OverturningCaution =
  | "beyond-tests"
  | "fold-now"
  | "ground-helps"
  | "light-wearer"
  | "loaded-sway"
  | "low-push"
  | "never-open"
  | "no-push"
  | "not-a-clearance"
  | "push-over"
  | "safety-factor"
  | "shares-added"
  | "slope"
  | "stance"
  | "unseen-drop"
  | "usable-share"
  | GustCaution

/** Result of {@link overturning}. */
export interface Overturning {
  /** Distance from the weight's line to the edge of the feet. [e; m] */
  readonly edgeDistance: number
  /** Distance the wearer can use of it. [e_u; m] */
  readonly usableEdgeDistance: number
  /** Level distance from the weight's line to the usable edge, on this ground. [d_u; m] */
  readonly leverArm: number
  /** Height of the centre of mass of wearer and rig [z_c; m] */
  readonly centreHeight: number
  /** Moment of push and bump about the usable edge; a bump as the steady force from which a pendulum sways as far. [M_p; N m] */
  readonly pushMoment: number
  /** Utilisation by push and bump [r_p; as a fraction] */
  readonly pushUtilisation: number
  /**
   * Steady push that stance, wind and safety factor leave room for, by the stricter of the given and the published
   * share and factor; null where the push acts no higher than the edge, on ground that rises that way. [F_l; N]
   */
  readonly pushForceLimit: number | null
  /** What the steady push leaves of it, as the speed of a bump of the mass given. [v_l; m/s] */
  readonly bumpSpeedLimit: number | null
  /** Unseen drop that tips the wearer without wind or push, at no more than the published share of the edge. [s_l; m] */
  readonly stepHeightLimit: number | null
  /** Weight of wearer and rig [W; N] */
  readonly weight: number
  /** Peak gust [v_g; m/s] */
  readonly gustSpeed: number
  /** Moment of the gust on the rig about the usable edge [M_w; N m] */
  readonly windMoment: number
  /** Moment of the gust on the wearer's own body about the ground; people lean into it, up to the gusts published as safe. [M_b; N m] */
  readonly bodyMoment: number
  /** Moment that the wearer holds within the usable edge. [M_r; N m] */
  readonly restoringMoment: number
  /** The same for a stiff body that uses the whole edge. [M_s; N m] */
  readonly restoringMomentRigid: number
  /** Utilisation by the rig [r; as a fraction] */
  readonly rigUtilisation: number
  /** The rig's wind moment over the stiff body's restoring moment. [r_s; as a fraction] */
  readonly rigUtilisationRigid: number
  /** What the air's speed takes of a person alone: its square over that of the 15 m/s gust published as the limit. [q_b; as a fraction] */
  readonly bodyUtilisation: number
  /** That and the rig's share with the safety factor, together; fold from 1. [q; as a fraction] */
  readonly utilisation: number
  /** Whether the wind is past the one to fold at. [yes or no] */
  readonly fold: boolean
  /** Mean wind at which stance and safety factor as given are used up; zero where walking alone does. [v_p; m/s] */
  readonly tipWindSpeed: number
  /** The same with the published usable share of 0.6 and the safety factor of 1.5. [v_q; m/s] */
  readonly publishedTipWindSpeed: number
  /**
   * Mean wind at which the rig alone would take a stiff body over, without safety factor: the far end of the spread,
   * never a limit to work to; absent where the panels catch no wind. [v_s; m/s]
   */
  readonly tipWindSpeedRigid: number | null
  /** Mean wind at which gusts reach what is published as safe for a person without a rig. [v_b0; m/s] */
  readonly bodyWindSpeed: number
  /** Mean wind at which to fold: the lowest of `tipWindSpeed`, `publishedTipWindSpeed` and 10 m/s. [v_f; m/s] */
  readonly foldWindSpeed: number
  /** Beaufort force to which `foldWindSpeed` belongs. [B_f] */
  readonly foldBeaufort: number
  /**
   * Distance from the weight's line to the edge that holds this wind with the safety factor; absent where the wind is
   * too much for a person alone. [e_n; m]
   */
  readonly requiredEdgeDistance: number | null
}
