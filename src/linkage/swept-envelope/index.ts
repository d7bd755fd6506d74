import {
  type Caution,
  caution,
  inconsistent,
  isNoSolution,
  type NoSolution,
  type SiOf,
  type Solver,
  solver,
  withNearest,
} from "../../solver/index.js"
import { pinchCaution } from "../hazards.js"
import type { Point } from "../hinge/geometry.js"
import { convexOutline } from "../outline.js"
import { mechanismFaults } from "../planar/check.js"
import { mechanismFields } from "../planar/fields.js"
import { driverKnobs } from "../planar/motion.js"
import { type Pose, pointRates } from "../planar/solve.js"
import { convexHull, jalon, marchingSquares, reducedSpeed } from "../sources.js"
import { sweptFormulae } from "./formulae.js"
import { type SweptTrace, sweptMotion } from "./motion.js"
import { nextCorners, tracedOutline } from "./outline.js"
import { moving, pointAt, profileOf, sweptPieces } from "./strips.js"
import type { Extent, SweptEnvelope, SweptEnvelopeCaution, SweptEnvelopeInput, SweptEnvelopeRefusal } from "./types.js"

export type { SweptEnvelope, SweptEnvelopeCaution, SweptEnvelopeInput, SweptEnvelopeRefusal } from "./types.js"

function solve(si: SiOf<SweptEnvelopeInput>, trace?: Partial<SweptTrace>): SweptEnvelope | NoSolution<SweptEnvelopeRefusal> {
  const out = kernel(si, trace)
  if (!isNoSolution(out)) return out
  // closer to a dead point the motion turns too sharply to be resolved
  return withNearest(out, sweptEnvelope, (changed) => kernel(changed), si, driverKnobs(si, 2 * si.steps, 1e-2))
}

function kernel(si: SiOf<SweptEnvelopeInput>, trace?: Partial<SweptTrace>): SweptEnvelope | NoSolution<SweptEnvelopeRefusal> {
  const moved = sweptMotion(si)
  if (isNoSolution(moved)) return moved
  const { model, poses, allowance: errorEstimate, every } = moved
  const middle = (poses.length - 1) / 2
  const members = moving(model)
  const extent = (pose: Pose) => {
    const [xs, ys] = [members.map((i) => pointAt(pose, i).x), members.map((i) => pointAt(pose, i).y)]
    return { span: Math.max(...xs) - Math.min(...xs) + 2 * si.halfWidth, height: Math.max(...ys) - Math.min(...ys) + 2 * si.halfWidth }
  }
  const [folded, mid, raised] = [0, middle, poses.length - 1].map((k) => extent(poses[k] as Pose)) as [Extent, Extent, Extent]
  const radius = si.halfWidth + errorEstimate
  const swept = poses.flatMap((pose) => members.map((i) => pointAt(pose, i)))
  const core = convexOutline(swept)
  const [xs, ys] = [core.map((p) => p.x), core.map((p) => p.y)]
  const [left, right, bottom, top] = [
    Math.min(...xs) - radius,
    Math.max(...xs) + radius,
    Math.min(...ys) - radius,
    Math.max(...ys) + radius,
  ]
  const cell = Math.max(right - left, top - bottom) / si.grid
  const pieces = sweptPieces(model, poses)
  const outline = tracedOutline(pieces, radius, cell)
  const following = nextCorners(outline)
  const tipIndex = model.names.indexOf(si.tip)
  const rates = model.drivers.map((d) => (d.end - d.start) / si.duration)
  const course = poses.map((pose) => {
    const v = pointRates(model, pose, rates)
    return { ...pointAt(pose, tipIndex), speed: Math.hypot(v[2 * tipIndex] as number, v[2 * tipIndex + 1] as number) }
  })
  const tip = course.filter((_, k) => k % every === 0)
  if (trace) Object.assign(trace, { moved, rates } satisfies SweptTrace)
  return {
    spanFolded: folded.span,
    heightFolded: folded.height,
    spanMid: mid.span,
    heightMid: mid.height,
    spanRaised: raised.span,
    heightRaised: raised.height,
    left,
    right,
    bottom,
    top,
    sweptSpan: right - left,
    sweptHeight: top - bottom,
    outlineArea: outline.reduce((sum, p, i) => {
      const q = following[i] as Point
      return sum + (p.x * q.y - q.x * p.y) / 2
    }, 0),
    outlineAllowance: (1 + Math.SQRT2) * cell,
    tipPath: course.slice(1).reduce((sum, p, i) => sum + Math.hypot(p.x - (course[i] as Point).x, p.y - (course[i] as Point).y), 0),
    peakTipSpeed: Math.max(...course.map((t) => t.speed)),
    outline,
    profile: profileOf(pieces, radius, left, right, si.strips),
    tip,
    errorEstimate,
  }
}

function cautions(_si: SiOf<SweptEnvelopeInput>, out: SweptEnvelope): Caution<SweptEnvelopeCaution>[] {
  return [
    pinchCaution("The moving parts"),
    // what does not move takes no more room than it is drawn with
    ...(out.peakTipSpeed > 0
      ? [
          caution(
            "clear-space",
            "note",
            "The outline holds the parts alone: people move towards a moving creature, cloth and feathers swing wider than the frame, and the wearer turns. Keep more room than this and somebody to watch it.",
          ),
        ]
      : []),
    ...(out.peakTipSpeed > 0.25
      ? [
          caution(
            "fast-tip",
            "warning",
            "The tip reaches {peakTipSpeed speed}: beyond 0.25 m/s, the speed that people are thought to be able to get out of the way of, nobody may be within reach.",
            reducedSpeed,
            { peakTipSpeed: out.peakTipSpeed },
          ),
        ]
      : []),
  ]
}

/**
 * The room a moving mechanism takes: outline and profile of everything it sweeps, span and height
 * folded, half way and raised, path and speed of its tip.
 *
 * Formula: poses by the constraint equations of `planarLinkage` at 2·steps + 1 settings, with more between them until
 * the way from pose to pose is resolved; limits = extreme pins ± (w + ε), with w the half width of the parts and ε =
 * max |p₋ − 2p + p₊|/6 a third more than a parabola through three poses strays from the straight line between them.
 * Outline and profile hold the convex pieces that each bar sweeps from pose to pose, grown by w + ε. The outline is
 * traced on a grid and grown by √2 cells more; the profile gives the lowest and highest place in each of `strips`
 * strips. Tip speed |ṗ| with all drivers at constant rate over `duration`. Nothing of the mechanism leaves either.
 * Rigid parts without play.
 *
 * Refuses as `planarLinkage` does, and `unresolved` where the motion turns so sharply that 2048 poses do not show its path.
 *
 * **Inputs**
 * - `pivots`: fixed pivots [list of 1 to 60]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `x`: x [x; −100 to 100 m]
 *   - `y`: y [y; −100 to 100 m]
 * - `points`: moving points, as sketched [list of 1 to 60]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `x`: x [x; −100 to 100 m]
 *   - `y`: y [y; −100 to 100 m]
 * - `bars`: bars [list of 1 to 200]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `length`: length [l; 0.01 mm to 100 m; optional]
 * - `carried`: points fixed to a bar [list of 0 to 100; default none]
 *   - `point`: point [text of 1 to 100 characters]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `along`: along the bar [u; −100 to 100 m; optional]
 *   - `across`: to the left of the bar [w; −100 to 100 m; optional]
 * - `sliders`: sliders [list of 0 to 100; default none]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `point`: point [text of 1 to 100 characters]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `offset`: to the left of the line [h; −100 to 100 m; optional]
 * - `cranks`: rotary drivers [list of 0 to 20; default none]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `referenceFrom`: reference line from [text of 1 to 100 characters; optional]
 *   - `referenceTo`: reference line to [text of 1 to 100 characters; optional]
 *   - `start`: angle at the start [theta_0; −57295.8° to 57295.8°; optional]
 *   - `end`: angle at the end [theta_1; −57295.8° to 57295.8°; optional]
 *   - `speed`: speed [omega; −9549.3 to 9549.3 rpm; default 0]
 *   - `acceleration`: acceleration [alpha; −5.72958e7 to 5.72958e7 °/s²; default 0]
 *   - `referenceFrom` and `referenceTo` only together
 * - `actuators`: linear drivers [list of 0 to 20; default none]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `start`: length at the start [s_0; 0.01 mm to 100 m; optional]
 *   - `end`: length at the end [s_1; 0.01 mm to 100 m; optional]
 *   - `speed`: speed [v; −1000 to 1000 m/s; default 0]
 *   - `acceleration`: acceleration [a; −1000000 to 1000000 m/s²; default 0]
 * - `loads`: forces [list of 0 to 200; default none]
 *   - `point`: point [text of 1 to 100 characters]
 *   - `forceX`: force along x [F_x; −1000 to 1000 kN; default 0]
 *   - `forceY`: force along y [F_y; −1000 to 1000 kN; default 0]
 * - `torques`: torques [list of 0 to 100; default none]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `torque`: torque [M; −1000000 to 1000000 N m]
 * - `halfWidth`: half width of the parts [w; 0 to 10 m; default 0]
 * - `duration`: time of the whole move [t; 1 ms to 277.778 h]
 * - `tip`: tip [text of 1 to 100 characters]
 * - `steps`: poses in each half [n; whole 1 to 200; default 40]
 * - `strips`: strips of the profile [n_s; whole 1 to 200; default 24]
 * - `grid`: grid cells of the outline [n_g; whole 8 to 200; default 80]
 *
 * **Results**
 *
 * `spanFolded`: span folded [S_0; m]; `heightFolded`: height folded [H_0; m]; `spanMid`: span half way [S_1; m];
 * `heightMid`: height half way [H_1; m]; `spanRaised`: span raised [S_2; m]; `heightRaised`: height raised [H_2; m];
 * `left`: left limit [x_l; m]; `right`: right limit [x_r; m]; `bottom`: lower limit [y_b; m]; `top`: upper limit [y_t;
 * m]; `sweptSpan`: span swept [S; m]; `sweptHeight`: height swept [H; m]; `outlineArea`: area of the outline [A; m²];
 * `outlineAllowance`: outline stands off by at most [a_o; m]; `tipPath`: path of the tip [L_t; m]; `peakTipSpeed`:
 * maximum tip speed [v_t; m/s]; `outline`: outline [list]; `profile`: profile [list]; `tip`: tip [list];
 * `errorEstimate`: allowance between poses [m].
 *
 * **Symbols of the working**
 *
 * x_f: places of all pins, folded [m]; y_f: heights of all pins, folded [m]; x_h: places of all pins, half way [m];
 * y_h: heights of all pins, half way [m]; y_r: heights of all pins, raised [m]; x_all: places of all pins in all poses
 * [m]; y_all: heights of all pins in all poses [m]; eps: allowance between poses [m]; x_o: outline corners, x [m];
 * y_o: outline corners, y [m]; x_n: next corners, x [m]; y_n: next corners, y [m]; d_x: tip's steps in x, between all
 * poses [m]; d_y: tip's steps in y, between all poses [m]; v_all: tip speed in all poses [m/s].
 *
 * **Sources**
 * - J. García de Jalón, E. Bayo (Springer): Kinematic and Dynamic Simulation of Multibody Systems, 1994, chapters 2
 *   and 3 (natural coordinates; position, velocity and acceleration problems) (not verified against the document)
 * - A. M. Andrew (Information Processing Letters 9): Another efficient algorithm for convex hulls in two dimensions,
 *   1979, pages 216–219 (not verified against the document)
 * - W. E. Lorensen, H. E. Cline (Computer Graphics 21): Marching cubes: a high resolution 3D surface construction
 *   algorithm, 1987, pages 163–169, applied in the plane (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the mechanism is under- or over-constrained, singular or cannot be assembled
 * @example
 * ```ts
 * import { sweptEnvelope } from 'alula/linkage'
 * const arm = sweptEnvelope({
 *   pivots: [{ name: 'hip', x: 0, y: 0 }],
 *   points: [{ name: 'tip', x: '1 m', y: 0 }],
 *   bars: [{ from: 'hip', to: 'tip' }],
 *   cranks: [{ from: 'hip', to: 'tip', start: 0, end: '90 deg' }],
 *   duration: '2 s', tip: 'tip',
 * })
 * arm.spanMid // => 0.70711
 * arm.peakTipSpeed // => 0.7854
 * ```
 */
export const sweptEnvelope: Solver<SweptEnvelopeInput, SweptEnvelope, SweptEnvelopeRefusal, SweptEnvelopeCaution> = /* @__PURE__ */ solver<
  SweptEnvelopeInput,
  SweptEnvelope,
  SweptEnvelopeRefusal,
  SweptEnvelopeCaution,
  SweptTrace
>("sweptEnvelope", "The room a moving mechanism takes", solve, () => ({
  input: {
    ...mechanismFields,
    halfWidth: {
      kind: "length",
      symbol: "w",
      label: "half width of the parts",
      min: 0,
      max: "10 m",
      typical: ["5 mm", "100 mm"],
      default: 0,
    },
    duration: { kind: "time", symbol: "t", label: "time of the whole move", min: "1 ms", max: 1e6, typical: [1, 20] },
    tip: { kind: "text", label: "tip", min: 1, max: 100 },
    steps: { kind: "number", symbol: "n", label: "poses in each half", whole: true, min: 1, max: 200, typical: [4, 40], default: 40 },
    strips: {
      kind: "number",
      symbol: "n_s",
      label: "strips of the profile",
      whole: true,
      min: 1,
      max: 200,
      typical: [4, 24],
      default: 24,
    },
    grid: {
      kind: "number",
      symbol: "n_g",
      label: "grid cells of the outline",
      whole: true,
      min: 8,
      max: 200,
      typical: [20, 80],
      default: 80,
    },
  },
  output: {
    spanFolded: { kind: "length", symbol: "S_0", label: "span folded" },
    heightFolded: { kind: "length", symbol: "H_0", label: "height folded" },
    spanMid: { kind: "length", symbol: "S_1", label: "span half way" },
    heightMid: { kind: "length", symbol: "H_1", label: "height half way" },
    spanRaised: { kind: "length", symbol: "S_2", label: "span raised" },
    heightRaised: { kind: "length", symbol: "H_2", label: "height raised" },
    left: { kind: "length", symbol: "x_l", label: "left limit" },
    right: { kind: "length", symbol: "x_r", label: "right limit" },
    bottom: { kind: "length", symbol: "y_b", label: "lower limit" },
    top: { kind: "length", symbol: "y_t", label: "upper limit" },
    sweptSpan: { kind: "length", symbol: "S", label: "span swept" },
    sweptHeight: { kind: "length", symbol: "H", label: "height swept" },
    outlineArea: { kind: "area", symbol: "A", label: "area of the outline" },
    outlineAllowance: { kind: "length", symbol: "a_o", label: "outline stands off by at most" },
    tipPath: { kind: "length", symbol: "L_t", label: "path of the tip" },
    peakTipSpeed: { kind: "speed", symbol: "v_t", label: "maximum tip speed" },
    outline: {
      kind: "list",
      label: "outline",
      of: {
        kind: "group",
        label: "corner",
        fields: { part: { kind: "number", label: "part" }, x: { kind: "length", label: "x" }, y: { kind: "length", label: "y" } },
      },
    },
    profile: {
      kind: "list",
      label: "profile",
      of: {
        kind: "group",
        label: "strip",
        fields: {
          from: { kind: "length", label: "from x" },
          to: { kind: "length", label: "to x" },
          bottom: { kind: "length", label: "lowest" },
          top: { kind: "length", label: "highest" },
        },
      },
    },
    tip: {
      kind: "list",
      label: "tip",
      of: {
        kind: "group",
        label: "place",
        fields: { x: { kind: "length", label: "x" }, y: { kind: "length", label: "y" }, speed: { kind: "speed", label: "speed" } },
      },
    },
    errorEstimate: { kind: "length", label: "allowance between poses" },
  },
  example: {
    pivots: [
      { name: "O", x: 0, y: 0 },
      { name: "Q", x: "90 mm", y: 0 },
    ],
    points: [
      { name: "A", x: "9 mm", y: "23 mm" },
      { name: "B", x: "80 mm", y: "59 mm" },
    ],
    bars: [
      { name: "crank", from: "O", to: "A" },
      { name: "rod", from: "A", to: "B" },
      { name: "wing", from: "Q", to: "B" },
    ],
    cranks: [{ from: "O", to: "A", end: "130 deg" }],
    halfWidth: "10 mm",
    duration: "4 s",
    tip: "B",
    steps: 8,
    strips: 8,
  },
  formulae: sweptFormulae,
  sources: [jalon, convexHull, marchingSquares],
  check: (si) => {
    const faults = mechanismFaults(si)
    if (faults.length) return faults
    const names = [...si.pivots, ...si.points].map((p) => p.name)
    return names.includes(si.tip) ? [] : [inconsistent(["tip"], "'{tip}'", "a point ({points})", { tip: si.tip, points: names.join(", ") })]
  },
  cautions,
}))
