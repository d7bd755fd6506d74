import type { Angle, AngularSpeed, Density, Length, Speed } from "../../quantity/index.js"
import { type Band, bandField, type Caution, caution, inconsistent, type SiOf, type Solver, solver } from "../../solver/index.js"
import { notClearance } from "../not-clearance.js"
import {
  beaufortSource,
  cengelSource,
  dragSource,
  gustSafetySource,
  gustSource,
  melbourneSource,
  pedestrianWindSource,
  whiteSource,
} from "../sources-around.js"
import { beaufortForce, dragSpread, gustOverLand, type PanelShape, pedestrianWind } from "./data-wind.js"
import type { GustCaution } from "./wind-cautions.js"
import { gustCautions } from "./wind-cautions.js"
import { windFields } from "./wind-fields.js"

/** Input of {@link windLoad}. */
export interface WindLoadInput {
  /** Length of one panel from its hinge outwards. [L; 1 mm to 5 m] */
  span: Length
  /** Width of the panel across its span. [c; 1 mm to 5 m] */
  chord: Length
  /** Mean wind speed, as forecasts give it (ten minutes, 10 m high). [v_w; 0 to 40 m/s] */
  windSpeed: Speed
  /** Shape as the wind meets it. [flat, trough, bowl or pole; default flat] */
  shape?: PanelShape
  /** An own drag coefficient; the loads use the published highest where that is more. [C_o; 0.01 to 4; optional] */
  dragCoefficient?: number | null
  /** Peak gust over mean wind. [G; 1 to 3; default 1.66] */
  gustFactor?: number
  /** Walking speed against the wind [v_b; 0 to 10 m/s; default 1.4 m/s] */
  walkingSpeed?: Speed
  /** Speed at which the panel swings into the wind about its hinge. [omega; 0 to 477.465 rpm; default 0] */
  swingSpeed?: AngularSpeed
  /** Panels alike, both counted as met by the wind. [n; whole 1 to 20; default 2] */
  panels?: number
  /** Height of the hinge above the ground. [h; 0 to 5 m; default 1.35 m] */
  hingeHeight?: Length
  /** Panel's angle above the horizontal: 0 spread sideways, 90° straight up. [phi; −90° to 90°; default 30°] */
  elevation?: Angle
  /** Density of the air [rho; 0.1 to 2 kg/m³; default 1.225 kg/m³] */
  airDensity?: Density
}

/** Hazards and limits that an answer of {@link windLoad} can carry. */
export type WindLoadCaution =
  | "drag-below-published"
  | "drag-spread"
  | "low-gust-factor"
  | "not-a-clearance"
  | "uncomfortable-wind"
  | GustCaution

/** Result of {@link windLoad}. */
export interface WindLoad {
  /**
   * Drag coefficient: lowest published one for the shape or the own one, and the highest, or the own one where that is
   * more; the loads use the high one. [C_l to C_h]
   */
  readonly drag: Band
  /** Peak gust [v_g; m/s] */
  readonly gustSpeed: number
  /** Speed of the air against the panel at its hinge: gust and walking added. [v_r; m/s] */
  readonly relativeSpeed: number
  /** Speed of the air against the panel's tip. [v_t; m/s] */
  readonly tipSpeed: number
  /** Dynamic pressure at the hinge. [q; Pa] */
  readonly pressure: number
  /** Force on one panel by either coefficient: build for the high one. [F_l to F; N] */
  readonly force: Band
  /** Moment of one panel's force about its hinge by either coefficient: build for the high one. [M_l to M; N m] */
  readonly hingeMoment: Band
  /** Force of all panels [F_t; N] */
  readonly totalForce: number
  /** Moment of all panels about the ground. [M_g; N m] */
  readonly groundMoment: number
  /** Height of the whole force above the ground. [h_F; m] */
  readonly forceHeight: number
  /** Drag area of all panels (coefficient times area). [A_d; m²] */
  readonly dragArea: number
  /** Beaufort force of the mean wind [B] */
  readonly beaufort: number
}

function coefficients({ shape, span, chord, dragCoefficient }: SiOf<WindLoadInput>): Band {
  const published = dragSpread(shape, span, chord)
  // an own figure never makes the wind weaker than what is published
  return dragCoefficient === null ? published : { low: dragCoefficient, high: Math.max(dragCoefficient, published.high) }
}

/** Distance of the force from the hinge, m; half the span where nothing swings. */
function forceLever({ span, windSpeed, gustFactor, walkingSpeed, swingSpeed }: SiOf<WindLoadInput>): number {
  const u = gustFactor * windSpeed + walkingSpeed
  const fastest = Math.max(u, swingSpeed * span)
  // scaled by the faster of the two, so that the faintest breath of air has a lever too
  const [a, b] = fastest > 0 ? [u / fastest, (swingSpeed * span) / fastest] : [1, 0]
  return (span * (a ** 2 / 2 + (2 * a * b) / 3 + b ** 2 / 4)) / (a ** 2 + a * b + b ** 2 / 3)
}

function solve(si: SiOf<WindLoadInput>): WindLoad {
  const { span, chord, walkingSpeed, swingSpeed, panels, hingeHeight, elevation, airDensity } = si
  const { low, high } = coefficients(si)
  const gustSpeed = si.gustFactor * si.windSpeed
  const u = gustSpeed + walkingSpeed
  // the air meets a strip at distance r from the hinge with u + swing·r: speeds add, then square
  const strips = (airDensity / 2) * chord * (u ** 2 * span + u * swingSpeed * span ** 2 + (swingSpeed ** 2 * span ** 3) / 3)
  const stripMoments =
    (airDensity / 2) * chord * ((u ** 2 * span ** 2) / 2 + (2 * u * swingSpeed * span ** 3) / 3 + (swingSpeed ** 2 * span ** 4) / 4)
  const force = high * strips
  const hingeMoment = high * stripMoments
  const groundMoment = panels * (force * hingeHeight + hingeMoment * Math.sin(elevation))
  return {
    drag: { low, high },
    gustSpeed,
    relativeSpeed: u,
    tipSpeed: u + swingSpeed * span,
    pressure: (airDensity / 2) * u ** 2,
    force: { low: low * strips, high: force },
    hingeMoment: { low: low * stripMoments, high: hingeMoment },
    totalForce: panels * force,
    groundMoment,
    forceHeight: hingeHeight + forceLever(si) * Math.sin(elevation),
    dragArea: panels * high * span * chord,
    beaufort: beaufortForce(si.windSpeed),
  }
}

function cautions(si: SiOf<WindLoadInput>, out: WindLoad): Caution<WindLoadCaution>[] {
  const found: Caution<WindLoadCaution>[] = [
    notClearance(
      "the steady drag of broadside panels in one gust",
      "flutter, gusts round corners and between buildings, a panel that catches the wind on one side only, or what happens when something breaks",
    ),
  ]
  if (si.dragCoefficient === null && out.drag.high > out.drag.low)
    found.push(
      caution(
        "drag-spread",
        "note",
        "Published drag coefficients for this shape run from {drag.low} to {drag.high}; the loads use the highest.",
        whiteSource,
        { "drag.low": out.drag.low, "drag.high": out.drag.high },
      ),
    )
  if (si.dragCoefficient !== null && si.dragCoefficient < out.drag.high)
    found.push(
      caution(
        "drag-below-published",
        "caution",
        "The drag coefficient given, {given.dragCoefficient}, is below the highest published one for this shape, {drag.high}: the loads keep to the published one, and your own gives only the lower force and moment beside them.",
        whiteSource,
        { "given.dragCoefficient": si.dragCoefficient, "drag.high": out.drag.high },
      ),
    )
  found.push(...gustCautions(out.gustSpeed))
  if (out.gustSpeed < pedestrianWind.unbalancingGust && si.windSpeed >= pedestrianWind.discomfort)
    found.push(
      caution(
        "uncomfortable-wind",
        "caution",
        "A mean wind from 5 m/s is felt as uncomfortable and from 10 m/s as definitely unpleasant by people without a panel; fold early.",
        pedestrianWindSource,
      ),
    )
  if (si.gustFactor < gustOverLand)
    found.push(
      caution(
        "low-gust-factor",
        "caution",
        "Over land a 3 s gust reaches about 1.66 times the ten-minute mean, more between buildings; a lower factor fits only a speed that is itself a gust.",
        gustSource,
      ),
    )
  return found
}

/**
 * Drag of a wing's panels in a gust: force, moment about the hinge and about the ground, with the spread of the
 * published drag coefficients.
 *
 * Formula: u = G·v + w, then by strips of the swinging panel F = ½·ρ·C·c·(u²·L + u·ω·L² + ω²·L³/3) and M =
 * ½·ρ·C·c·(u²·L²/2 + 2·u·ω·L³/3 + ω²·L⁴/4); about the ground M_g = n·(F·h + M·sin φ). Here v is the mean wind, G the
 * gust factor, w the walking speed against the wind, ω the swing of the panel into the wind, L the span and c the
 * chord, ρ the air density, C the drag coefficient (the highest published for the shape, or one's own where that is
 * more), n the panels, h the hinge height and φ the raise above horizontal. Wind and motion add before squaring. The
 * panel is taken broadside to the wind, which is its worst, with its whole rectangle L·c as area. Valid for sharp-edged
 * shapes in steady air; flat panels up to any side ratio, poles from length/diameter 1.
 *
 * **Inputs**
 * - `span`: span from the hinge [L; 1 mm to 5 m]
 * - `chord`: width of the panel [c; 1 mm to 5 m]
 * - `windSpeed`: mean wind speed [v_w; 0 to 40 m/s]
 * - `shape`: shape [flat, trough, bowl or pole; default flat]
 * - `dragCoefficient`: own drag coefficient [C_o; 0.01 to 4; optional]
 * - `gustFactor`: gust factor [G; 1 to 3; default 1.66]
 * - `walkingSpeed`: walking speed against the wind [v_b; 0 to 10 m/s; default 1.4 m/s]
 * - `swingSpeed`: swing speed into the wind [omega; 0 to 477.465 rpm; default 0]
 * - `panels`: panels [n; whole 1 to 20; default 2]
 * - `hingeHeight`: height of the hinge [h; 0 to 5 m; default 1.35 m]
 * - `elevation`: elevation above horizontal [phi; −90° to 90°; default 30°]
 * - `airDensity`: density of the air [rho; 0.1 to 2 kg/m³; default 1.225 kg/m³]
 *
 * **Results**
 *
 * `drag`: drag coefficient, published or own [C_l to C_h]; `gustSpeed`: peak gust [v_g; m/s]; `relativeSpeed`: air
 * against the panel at its hinge [v_r; m/s]; `tipSpeed`: air against the tip [v_t; m/s]; `pressure`: dynamic pressure
 * [q; Pa]; `force`: force on one panel [F_l to F; N]; `hingeMoment`: moment of one panel about its hinge [M_l to M; N
 * m]; `totalForce`: force of all panels [F_t; N]; `groundMoment`: moment about the ground [M_g; N m]; `forceHeight`:
 * height of the force [h_F; m]; `dragArea`: drag area [A_d; m²]; `beaufort`: Beaufort force of the mean wind [B].
 *
 * **Symbols of the working**
 *
 * F_1: force for a drag coefficient of one, by strips [N]; M_1: hinge moment for a drag coefficient of one, by strips
 * [N m]; x_F: distance of the force from the hinge, half the span where nothing swings [m].
 *
 * **Sources**
 * - F. M. White: Fluid Mechanics, 7th edition, 2011, table 7.3, rectangular plate normal to the stream (not verified
 *   against the document)
 * - Y. A. Çengel, J. M. Cimbala: Fluid Mechanics: Fundamentals and Applications, 2006, table 11-2, rectangular plate
 *   (not verified against the document)
 * - C. Matthews: Aeronautical Engineer's Data Book, 2002, figure 5.13(b), p. 95
 * - B. A. Harper, J. D. Kepert, J. D. Ginger: Guidelines for converting between various wind averaging periods in
 *   tropical cyclone conditions, WMO/TD-No. 1555, 2010, table 1.1, in-land, 3 s gust in a 10 min mean: 1.66 (not
 *   verified against the document)
 * - World Meteorological Organization: Beaufort scale of wind force, WMO code 1100, limits in m/s, ten-minute mean at
 *   10 m over open ground
 * - A. D. Penwarden: Acceptable wind speeds in towns, Building Science 8, 259–267, 1973, abstract: discomfort from 5
 *   m/s, definitely unpleasant from 10, dangerous from 20
 * - S. Murakami, Y. Iwasa, Y. Morikawa: Study on acceptable criteria for assessing strong wind at ground level, J.
 *   Wind Eng. Ind. Aerodyn. 24, 1–18, 1986, daily largest gusts of 10, 15 and 20 m/s (not verified against the
 *   document)
 * - City of Melbourne, after W. H. Melbourne: Pedestrian wind criteria, 2021, safety: 3 s gust of 20 m/s
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { windLoad } from 'alula/worn'
 * const gusty = windLoad({ span: '0.9 m', chord: '0.5 m', windSpeed: '5.4 m/s', walkingSpeed: '0 m/s' })
 * gusty.drag.high // => 1.28
 * gusty.force.high // => 28.35
 * gusty.groundMoment // => 89.3
 * ```
 */
export const windLoad: Solver<WindLoadInput, WindLoad, never, WindLoadCaution> = /* @__PURE__ */ solver<
  WindLoadInput,
  WindLoad,
  never,
  WindLoadCaution
>("windLoad", "What the wind does to a panel, its hinge and its wearer", solve, () => ({
  input: {
    span: { kind: "length", symbol: "L", label: "span from the hinge", min: "1 mm", max: 5, typical: [0.2, 2] },
    chord: { kind: "length", symbol: "c", label: "width of the panel", min: "1 mm", max: 5, typical: [0.1, 1] },
    windSpeed: windFields.windSpeed,
    shape: {
      kind: "choice",
      label: "shape",
      options: {
        flat: "flat panel",
        trough: "half-round trough",
        bowl: "hollow bowl",
        pole: "round pole across the wind",
      },
      default: "flat",
    },
    dragCoefficient: {
      kind: "number",
      symbol: "C_o",
      label: "own drag coefficient",
      min: 0.01,
      max: 4,
      typical: [1, 2.3],
      default: null,
    },
    gustFactor: windFields.gustFactor,
    walkingSpeed: windFields.walkingSpeed,
    swingSpeed: {
      kind: "angularSpeed",
      symbol: "omega",
      label: "swing speed into the wind",
      min: 0,
      max: 50,
      typical: [0, 3],
      default: 0,
    },
    panels: { kind: "number", symbol: "n", label: "panels", whole: true, min: 1, max: 20, typical: [1, 4], default: 2 },
    hingeHeight: { kind: "length", symbol: "h", label: "height of the hinge", min: 0, max: 5, typical: [0.8, 1.6], default: 1.35 },
    elevation: { kind: "angle", symbol: "phi", label: "elevation above horizontal", min: "-90 deg", max: "90 deg", default: "30 deg" },
    airDensity: windFields.airDensity,
  },
  output: {
    drag: bandField("number", "drag coefficient, published or own", {
      symbols: ["C_l", "C_h"],
      labels: ["minimum drag coefficient", "maximum drag coefficient"],
    }),
    gustSpeed: { kind: "speed", symbol: "v_g", label: "peak gust" },
    relativeSpeed: { kind: "speed", symbol: "v_r", label: "air against the panel at its hinge" },
    tipSpeed: { kind: "speed", symbol: "v_t", label: "air against the tip" },
    pressure: { kind: "pressure", symbol: "q", label: "dynamic pressure" },
    force: bandField("force", "force on one panel", {
      symbols: ["F_l", "F"],
      labels: ["minimum force on one panel", "maximum force on one panel"],
    }),
    hingeMoment: bandField("moment", "moment of one panel about its hinge", {
      symbols: ["M_l", "M"],
      labels: ["minimum moment about the hinge", "maximum moment about the hinge"],
    }),
    totalForce: { kind: "force", symbol: "F_t", label: "force of all panels" },
    groundMoment: { kind: "moment", symbol: "M_g", label: "moment about the ground" },
    forceHeight: { kind: "length", symbol: "h_F", label: "height of the force" },
    dragArea: { kind: "area", symbol: "A_d", label: "drag area" },
    beaufort: { kind: "number", symbol: "B", label: "Beaufort force of the mean wind" },
  },
  example: { span: "0.9 m", chord: "0.5 m", windSpeed: "5.4 m/s" },
  formulae: [
    {
      symbol: "C_l",
      kind: "number",
      meaning: "own drag coefficient, or the lowest published one of the shape",
      given: (si) => coefficients(si).low,
      source: whiteSource,
    },
    {
      symbol: "C_h",
      kind: "number",
      meaning: "highest published drag coefficient of the shape, or an own one above it",
      given: (si) => coefficients(si).high,
      source: whiteSource,
    },
    { symbol: "v_g", meaning: "peak gust", is: "G * v_w", source: gustSource },
    { symbol: "v_r", meaning: "air against the panel at its hinge: speeds add before squaring", is: "v_g + v_b" },
    { symbol: "v_t", meaning: "air against the tip", is: "v_r + omega * L" },
    { symbol: "q", meaning: "dynamic pressure", is: "rho / 2 * v_r^2" },
    {
      symbol: "F_1",
      kind: "force",
      meaning: "force for a drag coefficient of one, by strips",
      is: "rho / 2 * c * (v_r^2 * L + v_r * omega * L^2 + omega^2 * L^3 / 3)",
    },
    {
      symbol: "M_1",
      kind: "moment",
      meaning: "hinge moment for a drag coefficient of one, by strips",
      is: "rho / 2 * c * (v_r^2 * L^2 / 2 + 2 * v_r * omega * L^3 / 3 + omega^2 * L^4 / 4)",
    },
    { symbol: "F", meaning: "force on one panel", is: "C_h * F_1" },
    { symbol: "F_l", meaning: "force by the lowest coefficient", is: "C_l * F_1" },
    { symbol: "M", meaning: "moment about the hinge", is: "C_h * M_1" },
    { symbol: "M_l", meaning: "moment by the lowest coefficient", is: "C_l * M_1" },
    { symbol: "F_t", meaning: "force of all panels", is: "n * F" },
    { symbol: "M_g", meaning: "moment about the ground", is: "n * (F * h + M * sin(phi))" },
    {
      symbol: "x_F",
      kind: "length",
      meaning: "distance of the force from the hinge, half the span where nothing swings",
      given: forceLever,
    },
    { symbol: "h_F", meaning: "height of the force", is: "h + x_F * sin(phi)" },
    { symbol: "A_d", meaning: "drag area", is: "n * C_h * L * c" },
    {
      symbol: "B",
      kind: "number",
      meaning: "Beaufort force of the mean wind",
      given: (si) => beaufortForce(si.windSpeed),
      source: beaufortSource,
    },
  ],
  sources: [whiteSource, cengelSource, dragSource, gustSource, beaufortSource, pedestrianWindSource, gustSafetySource, melbourneSource],
  check: ({ span, hingeHeight, elevation }) =>
    hingeHeight + span * Math.sin(elevation) < 0
      ? [inconsistent(["elevation"], "a panel that reaches below the ground", "a raise that keeps the tip at or above the ground")]
      : [],
  cautions,
}))
