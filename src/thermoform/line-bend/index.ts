import { type NoSolution, type Solver, solver, tried } from "../../solver/index.js"
import { plasticOptions, plastics } from "../data.js"
import { LINE_HEATER, PVC_FOAM_GUIDE, practice } from "../sources.js"
import { lineRule } from "../tables.js"
import { cautions } from "./cautions.js"
import { check, kernel, STILL_AIR } from "./kernel.js"
import type { LineBend, LineBendCaution, LineBendInput, LineBendRefusal, Si } from "./types.js"

const solve = (si: Si): LineBend | NoSolution<LineBendRefusal> => tried(kernel(si), si, lineBend.input, kernel, check, lineBend.either)
const WHERE = "theta < 175 / 180 * pi"

/**
 * A bend of sheet along a line: what to cut, where the heater lies, how wide a band must be soft, how tight the bend may be.
 *
 * Formula: length of the bend (R + K·s)·θ with R the inside radius, s the thickness and K the depth of the fibre that keeps its length
 * (a half in soft plastic); band to soften: that and a thickness to either side; outside setback (R + s)·tan(θ/2), inside setback
 * R·tan(θ/2); deduction 2·(R + s)·tan(θ/2) − (R + K·s)·θ; flat part of a leg = leg − what the bend takes of it: a setback to a mould line
 * (none from 175° on), R + s to the back of the bend (from 90° on), nothing to where it begins; stretch of the outer face
 * (1 − K)·s/(R + K·s); warmth beside the band falls to 37 % over √(k·s/(2·h)), h = 10 W/(m²·K). Valid for bends acute and obtuse, made
 * round a jig or by hand over an even radius. How long the line takes to soften is no part of it: see `heatingTime` for a band much
 * wider than the sheet is thick, and time a scrap.
 *
 * Refuses `does-not-fit` where a leg is shorter than the bend itself reaches.
 *
 * **Inputs**
 * - `material`: plastic [one of 12 words]
 * - `thickness`: thickness [s_t; 0.3 to 30 mm]
 * - `insideRadius`: inside radius [R_i; 0.1 mm to 1 m]
 * - `angle`: angle of the bend, from flat [theta; 1° to 180°]
 * - `legA`: leg A, as measured [A_leg; 1 mm to 10 m; optional]
 * - `legB`: leg B, as measured [B_leg; 1 mm to 10 m; optional]
 * - `legMeasure`: legs measured to [outside, inside, bend or straight; default outside]
 * - `neutralShare`: depth of the neutral fibre [K_n; 0.25 to 0.6; default 0.5]
 * - `heaterWidth`: width laid open by the heater [w_h; 1 mm to 0.5 m; optional]
 * - `faces`: faces heated [n_f; whole 1 to 2; default 2]
 * - `legA` and `legB` only together
 *
 * **Results**
 *
 * `minRadius`: minimum inside radius [R_least; m]; `wideEnough`: radius is wide enough [yes or no]; `outerStrain`:
 * stretch of the outer face [epsilon; as a fraction]; `bendLength`: length of the bend [l_bend; m]; `softWidth`: width
 * to be soft [w_soft; m]; `spreadLength`: warmth beside the band [l_warm; m]; `outsideSetback`: outside setback
 * [l_out; m]; `insideSetback`: inside setback [l_in; m]; `deduction`: bend deduction [l_less; m]; `straightA`: flat
 * part of leg A [l_A; m]; `straightB`: flat part of leg B [l_B; m]; `flatLength`: flat length to cut [l_flat; m];
 * `heaterLine`: edge of leg A to the heater's middle [l_line; m]; `minBorder`: minimum border [l_border; m].
 *
 * **Symbols of the working**
 *
 * m_R: minimum inside radius in thicknesses; k_p: conductivity of the plastic [W/(m·K)]; h_air: film in still air,
 * radiation included [W/(m²·K)]; l_reach: what the bend takes of a leg as measured [m]; m_b: minimum border in
 * thicknesses, 0 where none is published.
 *
 * **Sources**
 * - an expanded PVC panel maker: Usage and fabrication guidelines: thermoforming, bending from 250 °F, air ovens 260
 *   to 280 °F; 30 to 50 s per mm, radius 3 and border 20 gauges, both sides from 5 to 10 mm
 * - The Plastics Distributor and Fabricator: Problem-free line bending of acrylic sheet, March/April 2000, straight
 *   wire heater: sheet thicker than 1/8 in is turned over midway
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `does-not-fit`
 * @example
 * ```ts
 * import { lineBend } from 'alula/thermoform'
 * const antennaFoot = lineBend({ material: 'pvc-foam', thickness: '3 mm', insideRadius: '9 mm', angle: '90 deg', legA: '80 mm', legB: '100 mm' })
 * antennaFoot.flatLength // => 0.1725
 * antennaFoot.softWidth // => 0.02249
 * ```
 */
export const lineBend: Solver<LineBendInput, LineBend, LineBendRefusal, LineBendCaution> = /* @__PURE__ */ solver<
  LineBendInput,
  LineBend,
  LineBendRefusal,
  LineBendCaution
>("lineBend", "What to cut, heat and leave for a bend of sheet along a line", solve, () => ({
  input: {
    material: { kind: "choice", label: "plastic", options: plasticOptions },
    thickness: { kind: "length", symbol: "s_t", label: "thickness", min: "0.3 mm", max: "30 mm", typical: ["1 mm", "10 mm"] },
    insideRadius: { kind: "length", symbol: "R_i", label: "inside radius", min: "0.1 mm", max: "1 m", typical: ["3 mm", "40 mm"] },
    angle: {
      kind: "angle",
      symbol: "theta",
      label: "angle of the bend, from flat",
      min: "1 deg",
      max: "180 deg",
      typical: ["20 deg", "140 deg"],
    },
    legA: {
      kind: "length",
      symbol: "A_leg",
      label: "leg A, as measured",
      min: "1 mm",
      max: 10,
      typical: ["0.15 m", "0.5 m"],
      default: null,
    },
    legB: {
      kind: "length",
      symbol: "B_leg",
      label: "leg B, as measured",
      min: "1 mm",
      max: 10,
      typical: ["0.15 m", "0.5 m"],
      default: null,
    },
    legMeasure: {
      kind: "choice",
      label: "legs measured to",
      options: {
        outside: "mould line of the outer faces",
        inside: "mould line of the inner faces",
        bend: "back of the bend",
        straight: "where the bend begins",
      },
      default: "outside",
    },
    neutralShare: { kind: "ratio", symbol: "K_n", label: "depth of the neutral fibre", min: 0.25, max: 0.6, default: 0.5 },
    heaterWidth: { kind: "length", symbol: "w_h", label: "width laid open by the heater", min: "1 mm", max: "0.5 m", default: null },
    faces: { kind: "number", symbol: "n_f", label: "faces heated", whole: true, min: 1, max: 2, default: 2 },
  },
  output: {
    minRadius: { kind: "length", symbol: "R_least", label: "minimum inside radius" },
    wideEnough: { kind: "flag", label: "radius is wide enough" },
    outerStrain: { kind: "ratio", symbol: "epsilon", label: "stretch of the outer face", unit: "%" },
    bendLength: { kind: "length", symbol: "l_bend", label: "length of the bend" },
    softWidth: { kind: "length", symbol: "w_soft", label: "width to be soft" },
    spreadLength: { kind: "length", symbol: "l_warm", label: "warmth beside the band" },
    outsideSetback: { kind: "length", symbol: "l_out", label: "outside setback" },
    insideSetback: { kind: "length", symbol: "l_in", label: "inside setback" },
    deduction: { kind: "length", symbol: "l_less", label: "bend deduction" },
    straightA: { kind: "length", symbol: "l_A", label: "flat part of leg A" },
    straightB: { kind: "length", symbol: "l_B", label: "flat part of leg B" },
    flatLength: { kind: "length", symbol: "l_flat", label: "flat length to cut" },
    heaterLine: { kind: "length", symbol: "l_line", label: "edge of leg A to the heater's middle" },
    minBorder: { kind: "length", symbol: "l_border", label: "minimum border" },
  },
  example: { material: "pvc-foam", thickness: "3 mm", insideRadius: "10 mm", angle: "90 deg", legA: "0.2 m", legB: "0.3 m" },
  formulae: [
    {
      symbol: "m_R",
      kind: "number",
      meaning: "minimum inside radius in thicknesses",
      given: (si) => lineRule(si.material).radius,
      source: PVC_FOAM_GUIDE,
    },
    { symbol: "R_least", meaning: "minimum inside radius", is: "m_R * s_t" },
    { symbol: "epsilon", meaning: "stretch of the outer face", is: "(1 - K_n) * s_t / (R_i + K_n * s_t)" },
    { symbol: "l_bend", meaning: "length of the bend along the neutral fibre", is: "(R_i + K_n * s_t) * theta" },
    { symbol: "w_soft", meaning: "the bend and a thickness to either side", is: "l_bend + 2 * s_t", source: practice },
    {
      symbol: "k_p",
      kind: "thermalConductivity",
      meaning: "conductivity of the plastic",
      given: (si) => plastics[si.material].conductivity.value,
    },
    {
      symbol: "h_air",
      kind: "heatTransferCoefficient",
      meaning: "film in still air, radiation included",
      given: () => STILL_AIR,
      source: practice,
    },
    { symbol: "l_warm", meaning: "fin length of a sheet that cools on both faces", is: "sqrt(k_p * s_t / (2 * h_air))" },
    { symbol: "l_out", meaning: "where the bend begins to the outer mould line", is: "(R_i + s_t) * tan(theta / 2)", when: WHERE },
    { symbol: "l_in", meaning: "where the bend begins to the inner mould line", is: "R_i * tan(theta / 2)", when: WHERE },
    { symbol: "l_less", meaning: "both outside setbacks less the bend", is: "2 * l_out - l_bend", when: WHERE },
    ...(
      [
        ["outside", "(R_i + s_t) * tan(theta / 2)"],
        ["inside", "R_i * tan(theta / 2)"],
        ["bend", "R_i + s_t"],
        ["straight", "0 * R_i"],
      ] as const
    ).map(([measure, is]) => ({
      symbol: "l_reach",
      kind: "length" as const,
      meaning: "what the bend takes of a leg as measured",
      is,
      when: `has_legA and equalText(legMeasure, "${measure}")`,
    })),
    { symbol: "l_A", meaning: "flat part of leg A", is: "A_leg - l_reach", when: "has_legA" },
    { symbol: "l_B", meaning: "flat part of leg B", is: "B_leg - l_reach", when: "has_legA" },
    { symbol: "l_flat", meaning: "flat length to cut", is: "l_A + l_bend + l_B", when: "has_legA" },
    { symbol: "l_line", meaning: "edge to the middle of the bend", is: "l_A + l_bend / 2", when: "has_legA" },
    {
      symbol: "m_b",
      kind: "number",
      meaning: "minimum border in thicknesses, 0 where none is published",
      given: (si) => lineRule(si.material).border ?? 0,
      source: PVC_FOAM_GUIDE,
    },
    { symbol: "l_border", meaning: "minimum border", is: "m_b * s_t", when: "m_b > 0" },
  ],
  sources: [PVC_FOAM_GUIDE, LINE_HEATER],
  either: [{ together: ["legA", "legB"] }],
  check,
  cautions,
}))
