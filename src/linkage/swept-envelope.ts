import type { Length, Time } from "../quantity/index.js"
import { type Caution, caution, inconsistent, isNoSolution, type NoSolution, type SiOf, type Solver, solver } from "../solver/index.js"
import { pinchCaution } from "./hazards.js"
import type { Point } from "./hinge.js"
import { withNearest } from "./nearest.js"
import { convexOutline } from "./outline.js"
import { mechanismFaults } from "./planar-check.js"
import type { MechanismInput } from "./planar-data.js"
import { mechanismFields } from "./planar-fields.js"
import { driverKnobs } from "./planar-motion.js"
import { type Pose, pointRates } from "./planar-solve.js"
import { convexHull, jalon, marchingSquares, reducedSpeed } from "./sources.js"
import { sweptFormulae } from "./swept-formulae.js"
import { sweptMotion } from "./swept-motion.js"
import { nextCorners, type OutlineCorner, tracedOutline } from "./swept-outline.js"
import { moving, pointAt, profileOf, sweptPieces } from "./swept-strips.js"

/** Input of {@link sweptEnvelope}: a mechanism with drivers that move from start (folded) to end (raised). */
export interface SweptEnvelopeInput extends MechanismInput {
  /** How far parts stand out around the lines between their pins: half their width, cloth or feathers. */
  halfWidth?: Length
  /** Time of the whole move, all drivers at constant rate. */
  duration: Time
  /** Point whose path and speed are wanted. */
  tip: string
  /** Poses in each half of the move. */
  steps?: number
  /** Strips of the profile. */
  strips?: number
  /** Grid cells that the outline is traced on, along its longer side. */
  grid?: number
}

/** Result of {@link sweptEnvelope}; nothing of the mechanism leaves outline or profile. */
export interface SweptEnvelope {
  /** Width of all parts at the start, m. */
  readonly spanFolded: number
  /** Height of all parts at the start, m. */
  readonly heightFolded: number
  /** Width half way, m. */
  readonly spanMid: number
  /** Height half way, m. */
  readonly heightMid: number
  /** Width at the end, m. */
  readonly spanRaised: number
  /** Height at the end, m. */
  readonly heightRaised: number
  /** Left limit of everything swept, allowance for what lies between poses included, m. */
  readonly left: number
  /** Right limit, m. */
  readonly right: number
  /** Lower limit, m. */
  readonly bottom: number
  /** Upper limit, m. */
  readonly top: number
  /** Width of everything swept, m. */
  readonly sweptSpan: number
  /** Height of everything swept, m. */
  readonly sweptHeight: number
  /** Area inside the outline, holes filled in, m². */
  readonly outlineArea: number
  /** The outline stands off what is swept by no more than this, m. */
  readonly outlineAllowance: number
  /** Length of the tip's path, m. */
  readonly tipPath: number
  /** Greatest tip speed at the poses calculated, m/s. */
  readonly peakTipSpeed: number
  /** Outline around everything swept, counter-clockwise, part by part, holes filled in. */
  readonly outline: readonly OutlineCorner[]
  /** Lowest and highest place swept in each strip, left to right; null where nothing passes. */
  readonly profile: readonly { readonly from: number; readonly to: number; readonly bottom: number | null; readonly top: number | null }[]
  /** Place (m) and speed (m/s) of the tip at every pose asked for. */
  readonly tip: readonly { readonly x: number; readonly y: number; readonly speed: number }[]
  /** Allowance for what points do between poses, m. */
  readonly errorEstimate: number
}

function solve(si: SiOf<SweptEnvelopeInput>): SweptEnvelope | NoSolution {
  const out = kernel(si)
  return isNoSolution(out) ? withNearest(out, sweptEnvelope, kernel, si, driverKnobs(si, 2 * si.steps)) : out
}

function kernel(si: SiOf<SweptEnvelopeInput>): SweptEnvelope | NoSolution {
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
interface Extent {
  readonly span: number
  readonly height: number
}

function cautions(_si: SiOf<SweptEnvelopeInput>, out: SweptEnvelope): Caution[] {
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
 * Formula: poses by the constraint equations of `planarLinkage` at 2·steps + 1 settings (default 40 in
 * each half), with more between them until the way from pose to pose is resolved; limits = extreme pins ± (w + ε), with
 * w the half width of the parts (m, default 0) and ε = max |p₋ − 2p + p₊|/6 a third more than a parabola through three poses
 * strays from the straight line between them. Outline
 * and profile hold the convex pieces that each bar sweeps from pose to pose, grown by w + ε. The outline is traced on a
 * grid (default 80 cells along the longer side) and grown by √2 cells more; the profile gives the lowest and
 * highest place in each of `strips` strips (default 24). Tip speed |ṗ| with all drivers at constant rate over `duration` (s). Nothing
 * of the mechanism leaves either. Rigid parts without play.
 *
 * Refuses as `planarLinkage` does, and `unresolved` where the motion turns so sharply that 2048 poses do not show its path.
 *
 * Source: J. García de Jalón, E. Bayo, Kinematic and Dynamic Simulation of Multibody Systems (Springer, 1994), chapters 2 and 3;
 * A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions, Inf. Proc. Letters 9 (1979); W. E. Lorensen,
 * H. E. Cline, Marching cubes, Computer Graphics 21 (1987), in the plane.
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
export const sweptEnvelope: Solver<SweptEnvelopeInput, SweptEnvelope> = /* @__PURE__ */ solver<SweptEnvelopeInput, SweptEnvelope>(
  "sweptEnvelope",
  "The room a moving mechanism takes",
  solve,
  () => ({
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
      tip: { kind: "text", label: "tip" },
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
      peakTipSpeed: { kind: "speed", symbol: "v_t", label: "greatest tip speed" },
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
      return names.includes(si.tip)
        ? []
        : [inconsistent(["tip"], "'{tip}'", "a point ({points})", { tip: si.tip, points: names.join(", ") })]
    },
    cautions,
  }),
)
