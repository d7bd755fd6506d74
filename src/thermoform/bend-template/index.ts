import type { Point } from "../../drawing/index.js"
import { type Caution, caution, type Issue, inconsistent, type NoSolution, refuse, type Solver, solver, tried } from "../../solver/index.js"
import { arcPath, offset, overbent, pathThroughPoints, pointsOf, withRuns } from "../curve.js"
import { BURN_TIMES, practice, SAND_BENDING } from "../sources.js"
import { springbacks } from "../tables.js"
import type { BendTemplate, BendTemplateCaution, BendTemplateInput, BendTemplateRefusal, Finished, Si } from "./types.js"

export type { BendPoint, BendTemplate, BendTemplateInput, TemplatePoint } from "./types.js"

/** How far a chord of the template may leave the curve, m. */
const ERROR = 5e-5
const STATIONS = 480

function finished(si: Si): Finished {
  if (si.shape === "arc") {
    const radius = si.radius as number
    return { path: arcPath(radius, si.angle as number, ERROR), leastRadius: radius }
  }
  const { leastRadius, ...path } = pathThroughPoints(si.points, STATIONS)
  return { path, leastRadius }
}

/** Headings and steps of the finished bend, as the working adds them up. */
export function finishedSteps(si: Si): {
  readonly lengths: readonly number[]
  readonly turns: readonly number[]
  readonly leastRadius: number
} {
  const { path, leastRadius } = finished(si)
  const differences = (list: readonly number[]) => list.slice(1).map((v, i) => v - (list[i] as number))
  return { lengths: differences(path.along), turns: differences(path.heading), leastRadius }
}

/** Curves straighter than this count as straight: their radius is only shown to this size, m. */
const STRAIGHT = 1e4

function kernel(si: Si): BendTemplate | NoSolution<BendTemplateRefusal> {
  const { outsideDiameter, springback, straightRun } = si
  const { path, leastRadius: sharpest } = finished(si)
  const minRadius = Math.min(sharpest, STRAIGHT)
  const factor = 1 / (1 - springback)
  const minJigRadius = minRadius * (1 - springback)
  const minEdgeRadius = minJigRadius - outsideDiameter / 2
  if (!(minEdgeRadius > 0))
    return refuse(
      "too-tight",
      "In the jig the centreline turns at {minJigRadius length} radius, no more than half the tube's {given.outsideDiameter length}: the jig's edge would have no radius left. Bend it wider.",
      Math.max(-minEdgeRadius, Number.EPSILON * outsideDiameter),
      { radius: minRadius, minJigRadius },
      {
        ...(si.shape === "arc" ? { radius: (5 * outsideDiameter) / (1 - springback) } : {}),
        outsideDiameter: minJigRadius,
      },
      { "given.outsideDiameter": outsideDiameter },
    )
  const jig = withRuns(overbent(path, factor), straightRun)
  const last = path.heading.length - 1
  const turn = (path.heading[last] as number) - (path.heading[0] as number)
  // an arc stands upright, its middle level; a curve stays as it was drawn
  const tilt = si.shape === "arc" ? -(turn * factor) / 2 : 0
  const inside = si.shape === "arc" || si.side === "left" ? outsideDiameter / 2 : -outsideDiameter / 2
  const middle = pointsOf(jig, { x: 0, y: 0 }, tilt)
  const side = offset(middle, jig.heading, inside, tilt)
  const all = [...middle, ...side]
  const [left, bottom] = [Math.min(...all.map((p) => p.x)), Math.min(...all.map((p) => p.y))]
  const placed = (points: readonly Point[]) => points.map((p) => ({ x: p.x - left, y: p.y - bottom }))
  const edge = placed(side)
  const [a, b] = [edge[0] as Point, edge[edge.length - 1] as Point]
  const span = (key: "x" | "y") => Math.max(...edge.map((p) => p[key])) - Math.min(...edge.map((p) => p[key]))
  return {
    turn,
    jigTurn: turn * factor,
    minRadius,
    minJigRadius,
    minEdgeRadius,
    length: path.along[last] as number,
    chord: Math.hypot(b.x - a.x, b.y - a.y),
    width: span("x"),
    height: span("y"),
    edge,
    centreline: placed(middle),
  }
}

function check({ shape, radius, angle, points }: Si): Issue[] {
  const faults: Issue[] = []
  if (shape === "arc") {
    if (radius === null) faults.push(inconsistent(["radius"], "nothing", "the radius of the arc"))
    if (angle === null) faults.push(inconsistent(["angle"], "nothing", "the angle of the arc"))
    if (points.length) faults.push(inconsistent(["points"], "points", "no points for an arc"))
    return faults
  }
  if (radius !== null) faults.push(inconsistent(["radius"], "a radius", "no radius for a curve through points"))
  if (angle !== null) faults.push(inconsistent(["angle"], "an angle", "no angle for a curve through points"))
  if (points.length < 3) faults.push(inconsistent(["points"], "too few points", "at least 3 points"))
  points.forEach((p, i) => {
    const before = points[i - 1]
    if (before && !(Math.hypot(p.x - before.x, p.y - before.y) >= 1e-3))
      faults.push(inconsistent(["points", i], "a point on the one before it", "a point at least 1 mm from the one before it"))
  })
  return faults
}

function cautions({ springback, outsideDiameter }: Si, out: BendTemplate): Caution<BendTemplateCaution>[] {
  const found: Caution<BendTemplateCaution>[] = [
    caution("true-scale", "note", "Print at 100 %, without fitting to the page, and measure the 100 mm bar before cutting."),
    caution(
      "springback-guess",
      "note",
      "Springback of {given.springback ratio %} is built in: bend one piece of the same stock, held until set, and correct the figure.",
      springbacks.heated.sources[0] ?? practice,
      { "given.springback": springback },
    ),
    caution(
      "burns",
      "warning",
      "The tube is hot enough to burn in seconds (5 s at 60 °C) and to scorch paper tape and soft wood: screw stops to the board, wear gloves, work in moving air.",
      BURN_TIMES,
    ),
  ]
  if (out.minRadius < 5 * outsideDiameter)
    found.push(
      caution(
        "tight-radius",
        "caution",
        "Down to {minRadius length} radius, tighter than five diameters: see tubeBend for wrinkling and thinning.",
        SAND_BENDING,
        { minRadius: out.minRadius },
      ),
    )
  if (Math.abs(out.jigTurn) > Math.PI)
    found.push(caution("closed-jig", "note", "The jig turns more than half round: make it in parts so that the bend comes off."))
  return found
}

const solve = (si: Si): BendTemplate | NoSolution<BendTemplateRefusal> => tried(kernel(si), si, bendTemplate.input, kernel, check)

/**
 * The edge of a jig for a bent tube: a circular arc or a free curve, opened up for springback and set off by half the tube.
 *
 * Formula: along the centreline s the heading h of the finished curve becomes h(0) + (h − h(0))/(1 − q) in the jig, the
 * length unchanged, so an arc of radius R and angle θ becomes R·(1 − q) and θ/(1 − q); the edge lies D/2 to the side. A
 * free curve is the cubic spline through its points that bends at its ends as the circle through the last three does. D
 * outer diameter, q springback. Valid for bends in one plane whose springback is even along them. The points leave the
 * true curve by at most 0.05 mm on an arc.
 *
 * Springback is common practice, without a source.
 *
 * **Inputs**
 * - `shape`: shape [arc or curve]
 * - `outsideDiameter`: outside diameter [D; 1 to 300 mm]
 * - `radius`: centreline radius [R_given; 5 mm to 100 m; optional]
 * - `angle`: angle [theta; 0.1° to 350°; optional]
 * - `points`: points of the centreline [list of 0 to 200; default none]
 *   - `x`: to the right [x_p; −100 to 100 m]
 *   - `y`: upwards [y_p; −100 to 100 m]
 * - `side`: side of the jig [left or right; default left]
 * - `springback`: springback [q; 0 to 0.6; default 0.03]
 * - `straightRun`: straight run at each end [l_run; 0 to 2 m; default 60 mm]
 *
 * **Results**
 *
 * `turn`: finished bend turns [phi; rad]; `jigTurn`: jig turns [phi_jig; rad]; `minRadius`: minimum radius finished
 * [R; m]; `minJigRadius`: minimum radius in the jig [R_jig; m]; `minEdgeRadius`: minimum radius of the edge [R_edge;
 * m]; `length`: length of the bend [l; m]; `chord`: end to end of the edge [c_edge; m]; `width`: width of the edge
 * [w_edge; m]; `height`: height of the edge [h_edge; m]; `edge`: edge [list]; `centreline`: centreline [list].
 *
 * **Symbols of the working**
 *
 * dl: steps along the finished centreline [m]; dphi: turn of each step [rad].
 *
 * **Sources**
 * - Plane geometry of offset curves
 * - common practice, no source
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-tight` where the curve is tighter than the tube
 * @example
 * ```ts
 * import { bendTemplate } from 'alula/thermoform'
 * const jig = bendTemplate({ shape: 'arc', outsideDiameter: '26.7 mm', radius: '250 mm', angle: '60 deg', springback: '4 %' })
 * jig.minJigRadius // => 0.2400
 * jig.minEdgeRadius // => 0.22665
 * ```
 */
export const bendTemplate: Solver<BendTemplateInput, BendTemplate, BendTemplateRefusal, BendTemplateCaution> = /* @__PURE__ */ solver<
  BendTemplateInput,
  BendTemplate,
  BendTemplateRefusal,
  BendTemplateCaution
>("bendTemplate", "The edge of a jig for a bent tube, springback included", solve, () => ({
  input: {
    shape: { kind: "choice", label: "shape", options: { arc: "circular arc", curve: "free curve" } },
    outsideDiameter: { kind: "length", symbol: "D", label: "outside diameter", min: "1 mm", max: "300 mm", typical: ["15 mm", "60 mm"] },
    radius: {
      kind: "length",
      symbol: "R_given",
      label: "centreline radius",
      min: "5 mm",
      max: 100,
      typical: ["100 mm", "1 m"],
      default: null,
    },
    angle: {
      kind: "angle",
      symbol: "theta",
      label: "angle",
      min: "0.1 deg",
      max: "350 deg",
      typical: ["20 deg", "120 deg"],
      default: null,
    },
    points: {
      kind: "list",
      label: "points of the centreline",
      min: 0,
      max: 200,
      of: {
        kind: "group",
        label: "point",
        fields: {
          x: { kind: "length", symbol: "x_p", label: "to the right", min: -100, max: 100 },
          y: { kind: "length", symbol: "y_p", label: "upwards", min: -100, max: 100 },
        },
      },
      default: [],
    },
    side: { kind: "choice", label: "side of the jig", options: { left: "left", right: "right" }, default: "left" },
    springback: { kind: "ratio", symbol: "q", label: "springback", min: 0, max: 0.6, typical: [0, 0.1], default: 0.03 },
    straightRun: {
      kind: "length",
      symbol: "l_run",
      label: "straight run at each end",
      min: 0,
      max: 2,
      typical: [0, "100 mm"],
      default: "60 mm",
    },
  },
  output: {
    turn: { kind: "angle", symbol: "phi", label: "finished bend turns" },
    jigTurn: { kind: "angle", symbol: "phi_jig", label: "jig turns" },
    minRadius: { kind: "length", symbol: "R", label: "minimum radius finished" },
    minJigRadius: { kind: "length", symbol: "R_jig", label: "minimum radius in the jig" },
    minEdgeRadius: { kind: "length", symbol: "R_edge", label: "minimum radius of the edge" },
    length: { kind: "length", symbol: "l", label: "length of the bend" },
    chord: { kind: "length", symbol: "c_edge", label: "end to end of the edge" },
    width: { kind: "length", symbol: "w_edge", label: "width of the edge" },
    height: { kind: "length", symbol: "h_edge", label: "height of the edge" },
    edge: {
      kind: "list",
      label: "edge",
      of: {
        kind: "group",
        label: "point",
        fields: { x: { kind: "length", symbol: "x_e", label: "x" }, y: { kind: "length", symbol: "y_e", label: "y" } },
      },
    },
    centreline: {
      kind: "list",
      label: "centreline",
      of: {
        kind: "group",
        label: "point",
        fields: { x: { kind: "length", symbol: "x_c", label: "x" }, y: { kind: "length", symbol: "y_c", label: "y" } },
      },
    },
  },
  example: { shape: "arc", outsideDiameter: "26.7 mm", radius: "250 mm", angle: "60 deg" },
  formulae: [
    { symbol: "dl", kind: "length", meaning: "steps along the finished centreline", given: (si) => finishedSteps(si).lengths },
    { symbol: "dphi", kind: "angle", meaning: "turn of each step", given: (si) => finishedSteps(si).turns },
    { symbol: "l", meaning: "length of the bend", is: "sum(dl)" },
    { symbol: "phi", meaning: "turn of the finished bend", is: "sum(dphi)" },
    { symbol: "phi_jig", meaning: "turn in the jig", is: "phi / (1 - q)" },
    {
      symbol: "R",
      kind: "length",
      meaning: "minimum radius of the finished centreline",
      given: (si) => Math.min(finishedSteps(si).leastRadius, STRAIGHT),
    },
    { symbol: "R_jig", meaning: "minimum radius in the jig, length kept", is: "R * (1 - q)" },
    { symbol: "R_edge", meaning: "edge inside the bend", is: "R_jig - D / 2" },
    { symbol: "x_e", kind: "length", meaning: "edge, to the right", given: (_, out) => out.edge.map((p) => p.x) },
    { symbol: "y_e", kind: "length", meaning: "edge, upwards", given: (_, out) => out.edge.map((p) => p.y) },
    { symbol: "w_edge", meaning: "width", is: "max(x_e) - min(x_e)" },
    { symbol: "h_edge", meaning: "height", is: "max(y_e) - min(y_e)" },
    {
      symbol: "c_edge",
      meaning: "end to end of an arc's edge: chord and two runs",
      is: "2 * R_edge * sin(phi_jig / 2) + 2 * l_run * cos(phi_jig / 2)",
      when: 'equalText(shape, "arc") and R_edge * sin(phi_jig / 2) + l_run * cos(phi_jig / 2) > 0 m',
    },
    {
      symbol: "c_edge",
      meaning: "end to end of the edge",
      is: "sqrt((x_e[size(x_e)[1]] - x_e[1])^2 + (y_e[size(y_e)[1]] - y_e[1])^2)",
      when: 'equalText(shape, "curve") or R_edge * sin(phi_jig / 2) + l_run * cos(phi_jig / 2) <= 0 m',
    },
  ],
  sources: [{ title: "Plane geometry of offset curves", verified: "practice" }, practice],
  check,
  cautions,
}))
