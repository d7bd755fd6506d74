import { type Caution, caution, type Issue, inconsistent, type NoSolution, refuse, type Solver, solver, tried } from "../../solver/index.js"
import { plasticOptions, plastics } from "../data.js"
import { heatingCautions } from "../forming-window.js"
import { CRAWFORD_FORMING, DOME, DRAW_RATIOS, practice } from "../sources.js"
import { areas, baseRadius, cornerThinning, least, wallAngle } from "./geometry.js"
import type { Drape, DrapeCaution, DrapeInput, DrapeRefusal, Si, Size } from "./types.js"

export type { Drape, DrapeInput } from "./types.js"

const shrink = (si: Si, key: "shrinkageAlong" | "shrinkageAcross") =>
  si[key] ?? plastics[si.material][key === "shrinkageAlong" ? "shrinkage" : "shrinkageAcross"].high

function kernel(si: Si): Drape | NoSolution<DrapeRefusal> {
  const { thickness, width, breadth, depth, plugWidth, plugBreadth, finishedLength, finishedWidth } = si
  const { open, formed } = areas(si)
  const plug = plugWidth !== null && plugBreadth !== null ? plugWidth * plugBreadth : null
  const smallest = Math.min(width, breadth ?? width)
  if (plug !== null && !(open - plug > 0.01 * open))
    return refuse(
      "does-not-fit",
      "A plug of {plugArea area} leaves no sheet in an opening of {openArea area} to draw the walls from: make it smaller.",
      Math.max(plug - 0.99 * open, Number.EPSILON * open),
      { plugArea: plug, openArea: open },
      { plugWidth: width * 0.9, plugBreadth: (breadth as number) * 0.9 },
    )
  return {
    openArea: open,
    formedArea: formed,
    arealDrawRatio: formed / open,
    linearDrawRatio: depth / smallest,
    meanThickness: (thickness * open) / formed,
    minThickness: least(si),
    plugThickness: plug === null ? null : (thickness * (open - plug)) / (formed - open),
    blankLength: finishedLength === null ? null : finishedLength / (1 - shrink(si, "shrinkageAlong")),
    blankWidth: finishedWidth === null ? null : finishedWidth / (1 - shrink(si, "shrinkageAcross")),
  }
}
/** Sizes as a maker says them. */
const sizes: Readonly<Record<Size, string>> = {
  breadth: "shorter side",
  baseDiameter: "base diameter",
  fillet: "fillet",
  plugWidth: "longer side of a plug",
  plugBreadth: "shorter side of a plug",
}

function check(si: Si): Issue[] {
  const faults: Issue[] = []
  const only = (key: Size, forms: readonly Si["shape"][], needed: boolean) => {
    const fits = forms.includes(si.shape)
    if (!fits && si[key] !== null) faults.push(inconsistent([key], "a {size}", "none for a {shape}", { size: sizes[key], shape: si.shape }))
    if (fits && needed && si[key] === null)
      faults.push(inconsistent([key], "nothing", "the {size} of a {shape}", { size: sizes[key], shape: si.shape }))
  }
  only("breadth", ["box"], true)
  only("baseDiameter", ["frustum"], true)
  only("fillet", ["cup", "frustum"], false)
  only("plugWidth", ["box"], false)
  only("plugBreadth", ["box"], false)
  const { width, breadth, baseDiameter, fillet, plugWidth, plugBreadth } = si
  if (si.shape === "frustum" && baseDiameter !== null && !(baseDiameter < 0.98 * width))
    faults.push(
      inconsistent(["baseDiameter"], "{baseDiameter length}", "less than 0.98 of the rim, {width length}", { baseDiameter, width }),
    )
  if (breadth !== null && breadth > width)
    faults.push(inconsistent(["breadth"], "{breadth length}", "no more than the longer side, {width length}", { breadth, width }))
  if (plugWidth !== null && plugBreadth !== null && breadth !== null && (plugWidth > width || plugBreadth > breadth))
    faults.push(
      inconsistent(
        ["plugWidth"],
        "a plug of {plugWidth length} × {plugBreadth length}",
        "a plug that goes into {width length} × {breadth length}",
        { plugWidth, plugBreadth, width, breadth },
      ),
    )
  if ((si.shape === "cup" || si.shape === "frustum") && fillet !== null && !(baseDiameter === null && si.shape === "frustum")) {
    const most = (0.9 * baseRadius(si)) / Math.tan(wallAngle(si) / 2)
    if (!(fillet < most)) faults.push(inconsistent(["fillet"], "{fillet length}", "less than {most length}", { fillet, most }))
  }
  return faults
}

/** Below this share of the sheet a place is too thin to trust. */
const THIN = 1 / 4

function cautions(si: Si, out: Drape): Caution<DrapeCaution>[] {
  const { shrinkage, shrinkageOf } = plastics[si.material]
  const found: Caution<DrapeCaution>[] = [
    ...heatingCautions(si.material, si.material === "low-temp-polyester"),
    caution(
      "two-draw-ratios",
      "note",
      "Draw ratio here is areal unless called linear; some guides mean depth over width by it.",
      DRAW_RATIOS,
    ),
  ]
  if (out.minThickness === null)
    found.push(
      caution(
        "corners-thinner",
        "caution",
        "Corners come out thinner than the mean of {meanThickness length}, often a third of it: form a trial piece, cut it open and measure.",
        practice,
        { meanThickness: out.meanThickness },
      ),
    )
  else if (out.minThickness < THIN * si.thickness)
    found.push(
      caution(
        "very-thin",
        "caution",
        "The thinnest place keeps {minThickness length}, less than a quarter of the sheet: use a larger fillet, a plug, more taper or thicker sheet.",
        practice,
        { minThickness: out.minThickness },
      ),
    )
  if (out.linearDrawRatio > 1)
    found.push(
      caution(
        "deep-draw",
        "caution",
        "Deeper than it is wide ({linearDrawRatio} times): plain vacuum or drape forming tears or webs; use a plug or split the part.",
        practice,
        { linearDrawRatio: out.linearDrawRatio },
      ),
    )
  const guessed = (out.blankLength !== null && si.shrinkageAlong === null) || (out.blankWidth !== null && si.shrinkageAcross === null)
  if (guessed)
    found.push(
      shrinkageOf === "sheet"
        ? caution(
            "shrinkage-spread",
            "note",
            "Shrinkage varies by grade, direction and heat; the blank is for the highest published. Heat a marked square of the same sheet and measure it.",
            shrinkage.sources[0] ?? practice,
          )
        : caution(
            "shrinkage-of-mouldings",
            "caution",
            "Only the shrinkage of mouldings was found for this plastic; sheet heated free may shrink by several per cent along its extrusion and the blank come out short. Heat a marked square of the same sheet first, and give its shrinkage.",
            shrinkage.sources[0] ?? practice,
          ),
    )
  return found
}

const solve = (si: Si): Drape | NoSolution<DrapeRefusal> => tried(kernel(si), si, drape.input, kernel, check, drape.either)

/**
 * How far a sheet is stretched over or into a simple form, how thin it gets, and what blank to cut.
 *
 * Formula: areal draw ratio A/A₀, mean thickness s·A₀/A. Areas: cup πr² + 2πrH; frustum π(r₁ + r₂)·√(H² + (r₁ − r₂)²) + πr₂²; cone
 * the same with r₂ = 0; dome π(r² + H²); box lw + 2H(l + w). Thinnest: dome s/(1 + (H/r)²)² at the top; cup and frustum: the free
 * bubble thins evenly as it lays itself on the wall, s·½·exp(−(H − r)/r) or s·½(1 + cos β)·(r₂(1 + cos β)/r₁)^(1/cos β − 1) as it touches
 * the base (β wall angle), then by dV = −t·dA_laid into the corner down to the fillet. Plug: s·(A₀ − A_plug)/A_wall. Blank:
 * finished/(1 − shrinkage), left out the highest published in that direction. Lengths in m. Valid for sheet that stretches freely and does not slide once it touches; not known
 * for cups shallower than their radius.
 *
 * **Inputs**
 * - `material`: plastic [one of 12 words]
 * - `thickness`: sheet [s_t; 0.1 to 50 mm]
 * - `shape`: form [cup, frustum, cone, dome or box]
 * - `width`: rim diameter or longer side [w_1; 5 mm to 5 m]
 * - `breadth`: shorter side [w_2; 5 mm to 5 m; optional]
 * - `baseDiameter`: base diameter [w_b; 1 mm to 5 m; optional]
 * - `depth`: depth [H_d; 1 mm to 5 m]
 * - `fillet`: fillet at the base [r_f; 0.2 mm to 1 m; optional]
 * - `plugWidth`: plug, longer side [p_1; 1 mm to 5 m; optional]
 * - `plugBreadth`: plug, shorter side [p_2; 1 mm to 5 m; optional]
 * - `finishedLength`: finished length [f_1; 1 mm to 10 m; optional]
 * - `finishedWidth`: finished width [f_2; 1 mm to 10 m; optional]
 * - `shrinkageAlong`: shrinkage along [q_1given; −0.2 to 0.5; optional]
 * - `shrinkageAcross`: shrinkage across [q_2given; −0.2 to 0.5; optional]
 * - `plugWidth` and `plugBreadth` only together
 *
 * **Results**
 *
 * `openArea`: open area [A_0; m²]; `formedArea`: formed area [A_f; m²]; `arealDrawRatio`: areal draw ratio [ADR];
 * `linearDrawRatio`: linear draw ratio [LDR]; `meanThickness`: mean thickness [s_mean; m]; `minThickness`: minimum
 * thickness [s_least; m]; `plugThickness`: thickness with a plug [s_plug; m]; `blankLength`: blank length [b_1; m];
 * `blankWidth`: blank width [b_2; m].
 *
 * **Symbols of the working**
 *
 * touches: 1 where the bubble touches the base while it still hangs free; I_corner: integral of thinning into the
 * corner; beta: wall angle from the horizontal, rad; q_1: shrinkage along; q_2: shrinkage across.
 *
 * **Sources**
 * - R. J. Crawford: Plastics Engineering, 3rd, 1998, 4.4, example 4.7 (not verified against the document)
 * - R. Hill: A theory of the plastic bulging of a metal diaphragm by lateral pressure, Phil. Mag. 41, 1950 (not
 *   verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `does-not-fit`
 * @example
 * ```ts
 * import { drape } from 'alula/thermoform'
 * const box = drape({ material: 'hips', thickness: '2 mm', shape: 'box', width: '150 mm', breadth: '100 mm', depth: '60 mm' })
 * box.arealDrawRatio // => 3.000
 * box.meanThickness * 1000 // => 0.6667
 * ```
 */
export const drape: Solver<DrapeInput, Drape, DrapeRefusal, DrapeCaution> = /* @__PURE__ */ solver<
  DrapeInput,
  Drape,
  DrapeRefusal,
  DrapeCaution
>("drape", "How thin a sheet gets over a form, and what blank to cut", solve, () => ({
  input: {
    material: { kind: "choice", label: "plastic", options: plasticOptions },
    thickness: { kind: "length", symbol: "s_t", label: "sheet", min: "0.1 mm", max: "50 mm", typical: ["1 mm", "6 mm"] },
    shape: {
      kind: "choice",
      label: "form",
      options: { cup: "straight cup", frustum: "tapered cup", cone: "full cone", dome: "free-blown dome", box: "rectangular box" },
    },
    width: { kind: "length", symbol: "w_1", label: "rim diameter or longer side", min: "5 mm", max: 5, typical: ["50 mm", "500 mm"] },
    breadth: { kind: "length", symbol: "w_2", label: "shorter side", min: "5 mm", max: 5, typical: ["50 mm", "300 mm"], default: null },
    baseDiameter: {
      kind: "length",
      symbol: "w_b",
      label: "base diameter",
      min: "1 mm",
      max: 5,
      typical: ["20 mm", "200 mm"],
      default: null,
    },
    depth: { kind: "length", symbol: "H_d", label: "depth", min: "1 mm", max: 5, typical: ["10 mm", "300 mm"] },
    fillet: {
      kind: "length",
      symbol: "r_f",
      label: "fillet at the base",
      min: "0.2 mm",
      max: 1,
      typical: ["1 mm", "10 mm"],
      default: null,
    },
    plugWidth: {
      kind: "length",
      symbol: "p_1",
      label: "plug, longer side",
      min: "1 mm",
      max: 5,
      typical: ["50 mm", "400 mm"],
      default: null,
    },
    plugBreadth: {
      kind: "length",
      symbol: "p_2",
      label: "plug, shorter side",
      min: "1 mm",
      max: 5,
      typical: ["50 mm", "200 mm"],
      default: null,
    },
    finishedLength: {
      kind: "length",
      symbol: "f_1",
      label: "finished length",
      min: "1 mm",
      max: 10,
      typical: ["0.1 m", "1 m"],
      default: null,
    },
    finishedWidth: {
      kind: "length",
      symbol: "f_2",
      label: "finished width",
      min: "1 mm",
      max: 10,
      typical: ["0.1 m", "1 m"],
      default: null,
    },
    shrinkageAlong: {
      kind: "ratio",
      symbol: "q_1given",
      label: "shrinkage along",
      min: -0.2,
      max: 0.5,
      typical: [0, 0.05],
      default: null,
    },
    shrinkageAcross: {
      kind: "ratio",
      symbol: "q_2given",
      label: "shrinkage across",
      min: -0.2,
      max: 0.5,
      typical: [-0.01, 0.05],
      default: null,
    },
  },
  output: {
    openArea: { kind: "area", symbol: "A_0", label: "open area" },
    formedArea: { kind: "area", symbol: "A_f", label: "formed area" },
    arealDrawRatio: { kind: "number", symbol: "ADR", label: "areal draw ratio" },
    linearDrawRatio: { kind: "number", symbol: "LDR", label: "linear draw ratio" },
    meanThickness: { kind: "length", symbol: "s_mean", label: "mean thickness" },
    minThickness: { kind: "length", symbol: "s_least", label: "minimum thickness" },
    plugThickness: { kind: "length", symbol: "s_plug", label: "thickness with a plug" },
    blankLength: { kind: "length", symbol: "b_1", label: "blank length" },
    blankWidth: { kind: "length", symbol: "b_2", label: "blank width" },
  },
  example: {
    material: "hips",
    thickness: "2 mm",
    shape: "cup",
    width: "80 mm",
    depth: "60 mm",
    fillet: "8 mm",
    finishedLength: "120 mm",
    finishedWidth: "120 mm",
  },
  formulae: [
    { symbol: "A_0", meaning: "opening of a box", is: "w_1 * w_2", when: 'equalText(shape, "box")' },
    { symbol: "A_0", meaning: "round opening", is: "pi * w_1^2 / 4", when: 'not equalText(shape, "box")' },
    { symbol: "A_f", meaning: "box", is: "A_0 + 2 * H_d * (w_1 + w_2)", when: 'equalText(shape, "box")' },
    { symbol: "A_f", meaning: "cup", is: "A_0 + pi * w_1 * H_d", when: 'equalText(shape, "cup")' },
    { symbol: "A_f", meaning: "cap of a ball", is: "A_0 + pi * H_d^2", when: 'equalText(shape, "dome")' },
    { symbol: "A_f", meaning: "cone", is: "pi * w_1 / 2 * sqrt(H_d^2 + w_1^2 / 4)", when: 'equalText(shape, "cone")' },
    {
      symbol: "A_f",
      meaning: "tapered cup with base",
      is: "pi * (w_1 + w_b) / 2 * sqrt(H_d^2 + (w_1 - w_b)^2 / 4) + pi * w_b^2 / 4",
      when: 'equalText(shape, "frustum")',
    },
    { symbol: "ADR", meaning: "areal draw ratio", is: "A_f / A_0" },
    { symbol: "LDR", meaning: "depth over the smaller side of a box", is: "H_d / min(w_1, w_2)", when: 'equalText(shape, "box")' },
    { symbol: "LDR", meaning: "depth over rim diameter", is: "H_d / w_1", when: 'not equalText(shape, "box")' },
    { symbol: "s_mean", meaning: "mean thickness, volume kept", is: "s_t / ADR" },
    {
      symbol: "s_least",
      meaning: "top of a free-blown dome",
      is: "s_t / (1 + (2 * H_d / w_1)^2)^2",
      when: 'equalText(shape, "dome")',
      source: DOME,
    },
    {
      symbol: "touches",
      kind: "number",
      meaning: "1 where the bubble touches the base while it still hangs free",
      given: (si, out) => (out.minThickness !== null && si.shape !== "dome" ? 1 : 0),
    },
    {
      symbol: "I_corner",
      kind: "number",
      meaning: "integral of thinning into the corner",
      given: (si, out) => (out.minThickness !== null && si.shape !== "dome" ? cornerThinning(si) : 0),
    },
    {
      symbol: "s_least",
      meaning: "corner of a cup",
      is: "s_t / 2 * exp(-(H_d - w_1 / 2) / (w_1 / 2)) * exp(-I_corner)",
      when: 'touches == 1 and equalText(shape, "cup")',
    },
    {
      symbol: "beta",
      kind: "number",
      meaning: "wall angle from the horizontal, rad",
      is: "atan(2 * H_d / (w_1 - w_b))",
      when: 'equalText(shape, "frustum")',
    },
    {
      symbol: "s_least",
      meaning: "corner of a tapered cup",
      is: "s_t * (1 + cos(beta)) / 2 * (w_b * (1 + cos(beta)) / w_1)^(1 / cos(beta) - 1) * exp(-I_corner)",
      when: 'touches == 1 and equalText(shape, "frustum")',
      source: CRAWFORD_FORMING,
    },
    {
      symbol: "s_plug",
      meaning: "walls drawn from the sheet beside the plug",
      is: "s_t * (A_0 - p_1 * p_2) / (A_f - A_0)",
      when: "has_plugWidth",
      source: CRAWFORD_FORMING,
    },
    { symbol: "q_1", kind: "ratio", meaning: "shrinkage along", given: (si) => shrink(si, "shrinkageAlong") },
    { symbol: "q_2", kind: "ratio", meaning: "shrinkage across", given: (si) => shrink(si, "shrinkageAcross") },
    { symbol: "b_1", meaning: "blank length", is: "f_1 / (1 - q_1)", when: "has_finishedLength" },
    { symbol: "b_2", meaning: "blank width", is: "f_2 / (1 - q_2)", when: "has_finishedWidth" },
  ],
  sources: [CRAWFORD_FORMING, DOME],
  either: [{ together: ["plugWidth", "plugBreadth"] }],
  check,
  cautions,
}))
