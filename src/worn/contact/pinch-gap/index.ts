import { type Solver, solver } from "../../../solver/index.js"
import { crushGapSource, entrapmentSource, mechanics, openingSource } from "../../sources-around.js"
import { closingPlaces, nearestAt, type PoseSi } from "../../surroundings/bar-distance.js"
import { type CrushPart, crushGaps, entryGaps } from "../data-gaps.js"
import { pinchCautions } from "./cautions.js"
import type { PinchGap, PinchGapCaution, PinchGapInput, Si, Stretch } from "./types.js"

export type { CrushFinding, GapBar, MovingPose, PinchGap, PinchGapInput } from "./types.js"

/** Agreement sought between the gap found and the proven one, m, and the most places to look at. */
const SOUGHT = 1e-5
const MOST = 4000
/** A gap that changes by no more than this in the whole motion, m, stands still. */
const STILL = 1e-6
/** Even steps in each leg to begin with. */
const STEPS = 24

function solve(si: Si): PinchGap {
  const reach = Math.max(...si.movingBars.flatMap((b) => [Math.hypot(b.x1, b.y1), Math.hypot(b.x2, b.y2)]))
  // no point of the part moves faster than this along a leg, so the distance cannot change faster
  const fastest = si.poses.slice(1).map((q, i) => {
    const p = si.poses[i] as PoseSi
    return Math.hypot(q.x - p.x, q.y - p.y) + reach * Math.abs(q.angle - p.angle)
  })
  let evaluations = 0
  let [least, leastAt, most] = [Number.POSITIVE_INFINITY, 0, 0]
  const distance = (at: number) => {
    evaluations++
    const { distance: d } = nearestAt(si, at)
    if (d < least) [least, leastAt] = [d, at]
    most = Math.max(most, d)
    return d
  }
  const stretch = (a: number, b: number, fa: number, fb: number, leg: number): Stretch => ({
    a,
    b,
    fa,
    fb,
    bound: Math.max(0, (fa + fb - (fastest[leg] as number) * (b - a)) / 2),
  })
  let open: Stretch[] = []
  fastest.forEach((_, leg) => {
    const values = Array.from({ length: STEPS + 1 }, (_v, k) => distance(leg + k / STEPS))
    for (let k = 0; k < STEPS; k++)
      open.push(stretch(leg + k / STEPS, leg + (k + 1) / STEPS, values[k] as number, values[k + 1] as number, leg))
  })
  // halve, round by round, every stretch that could still hide a smaller gap
  let certain = least
  while (true) {
    open = open.filter((s) => s.bound < least - SOUGHT)
    certain = Math.min(least, ...open.map((s) => s.bound))
    if (open.length === 0 || evaluations + open.length > MOST) break
    open = open.flatMap((s) => {
      const mid = (s.a + s.b) / 2
      const fm = distance(mid)
      const leg = Math.min(Math.floor(s.a), fastest.length - 1)
      return [stretch(s.a, mid, s.fa, fm, leg), stretch(mid, s.b, fm, s.fb, leg)]
    })
  }
  if (open.length === 0) certain = Math.max(0, least - SOUGHT)
  const thick = (si.movingThickness + si.fixedThickness) / 2
  const nearest = nearestAt(si, leastAt)
  const provenMinGap = certain - thick
  const places = closingPlaces(si, fastest, STILL)
  const parts = (Object.entries(crushGaps) as [CrushPart, number][]).map(([part, minGap]) => ({
    part,
    minGap,
    shortBy: minGap - provenMinGap,
    entryGap: entryGaps[part],
    // what is proven to stay wide enough crushes nothing; a gap that never lets the part in, or never closes there, neither
    crushes: provenMinGap < minGap && places.some((p) => p.open - thick > entryGaps[part] && p.closed - thick < minGap),
  }))
  return {
    minGap: least - thick,
    maxGap: most - thick,
    motionShare: leastAt,
    movingX: nearest.ax,
    movingY: nearest.ay,
    fixedX: nearest.bx,
    fixedY: nearest.by,
    provenMinGap,
    crushes: parts.some((p) => p.crushes),
    parts,
    errorEstimate: least - certain,
    evaluations,
  }
}

const barFields = {
  x1: { kind: "length", symbol: "x_1", label: "first end, across", min: -10, max: 10 },
  y1: { kind: "length", symbol: "y_1", label: "first end, up", min: -10, max: 10 },
  x2: { kind: "length", symbol: "x_2", label: "other end, across", min: -10, max: 10 },
  y2: { kind: "length", symbol: "y_2", label: "other end, up", min: -10, max: 10 },
} as const

/**
 * Smallest gap between a moving part and what it moves against, through the whole motion, against the published gaps that
 * do not crush.
 *
 * Formula: gap = min over the motion and all pairs of bars of the distance between their middles, less half of both
 * thicknesses t_m and t_f. The motion goes evenly from pose to pose (x, y in m, angle in rad). Since no point moves
 * faster than |Δp| + ρ·|Δθ| along a leg (ρ the farthest point from the part's origin), stretches of the motion are
 * halved until no smaller gap than the proven one can hide in any of them, to 10 µm or 4000 places, whichever comes
 * first; the findings use the proven gap. A part of the body can be crushed where, somewhere along the bars, the gap
 * opens wide enough to let it in and closes to less than its minimum gap; a narrow gap that stands still crushes nothing,
 * and one that never opens past 89 mm does not reach a head. Rigid parts drawn in one plane; crushing only.
 *
 * **Inputs**
 * - `movingBars`: moving bars [list of 1 to 50]
 *   - `x1`: first end, across [x_1; −10 to 10 m]
 *   - `y1`: first end, up [y_1; −10 to 10 m]
 *   - `x2`: other end, across [x_2; −10 to 10 m]
 *   - `y2`: other end, up [y_2; −10 to 10 m]
 * - `fixedBars`: fixed bars [list of 1 to 50]
 *   - `x1`: first end, across [x_1; −10 to 10 m]
 *   - `y1`: first end, up [y_1; −10 to 10 m]
 *   - `x2`: other end, across [x_2; −10 to 10 m]
 *   - `y2`: other end, up [y_2; −10 to 10 m]
 * - `poses`: poses [list of 2 to 40]
 *   - `x`: origin, across [x_p; −10 to 10 m]
 *   - `y`: origin, up [y_p; −10 to 10 m]
 *   - `angle`: turn [theta_p; −2 to 2 rev]
 * - `movingThickness`: thickness of the moving bars [t_m; 0 to 1 m; default 20 mm]
 * - `fixedThickness`: thickness of the fixed bars [t_f; 0 to 1 m; default 20 mm]
 *
 * **Results**
 *
 * `minGap`: minimum gap found [d; m]; `maxGap`: maximum gap [d_o; m]; `motionShare`: place in the motion [s];
 * `movingX`: nearest point of the moving bar, across [x_m; m]; `movingY`: nearest point of the moving bar, up [y_m;
 * m]; `fixedX`: nearest point of the fixed bar, across [x_f; m]; `fixedY`: nearest point of the fixed bar, up [y_f;
 * m]; `provenMinGap`: proven minimum gap [d_c; m]; `crushes`: can crush [yes or no]; `parts`: parts of the body
 * [list]; `errorEstimate`: gap not proven [m]; `evaluations`: places looked at [number].
 *
 * **Symbols of the working**
 *
 * s_d: gap not proven [m]; D: distance of the part's middles at s, calculated again [m].
 *
 * **Sources**
 * - ISO: ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body, 2017, table 1
 *   (formerly EN 349)
 * - ISO: ISO 13857, Safety of machinery: safety distances to prevent hazard zones being reached, 2019, tables 4 and 7,
 *   slots (not verified against the document)
 * - CEN: EN 1176-1, Playground equipment and surfacing: general safety requirements, 2017, entrapment of head and
 *   neck: probes of 89 mm and more (not verified against the document)
 * - moments and geometry of rigid bodies
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { pinchGap } from 'alula/worn'
 * const spar = pinchGap({
 *   movingBars: [{ x1: 0, y1: 0, x2: '0.6 m', y2: 0 }],
 *   fixedBars: [{ x1: '0.1 m', y1: '-0.3 m', x2: '0.1 m', y2: '-0.05 m' }],
 *   poses: [{ x: 0, y: 0, angle: '60 deg' }, { x: 0, y: 0, angle: '0 deg' }],
 * })
 * spar.minGap // => 0.03
 * spar.crushes // => true
 * ```
 */
export const pinchGap: Solver<PinchGapInput, PinchGap, never, PinchGapCaution> = /* @__PURE__ */ solver<
  PinchGapInput,
  PinchGap,
  never,
  PinchGapCaution
>("pinchGap", "What a closing gap can crush", solve, () => ({
  input: {
    movingBars: { kind: "list", label: "moving bars", min: 1, max: 50, of: { kind: "group", label: "bar", fields: barFields } },
    fixedBars: { kind: "list", label: "fixed bars", min: 1, max: 50, of: { kind: "group", label: "bar", fields: barFields } },
    poses: {
      kind: "list",
      label: "poses",
      min: 2,
      max: 40,
      of: {
        kind: "group",
        label: "pose",
        fields: {
          x: { kind: "length", symbol: "x_p", label: "origin, across", min: -10, max: 10 },
          y: { kind: "length", symbol: "y_p", label: "origin, up", min: -10, max: 10 },
          angle: { kind: "angle", symbol: "theta_p", label: "turn", min: "-2 rev", max: "2 rev" },
        },
      },
    },
    movingThickness: {
      kind: "length",
      symbol: "t_m",
      label: "thickness of the moving bars",
      min: 0,
      max: 1,
      typical: [0, 0.04],
      default: "20 mm",
    },
    fixedThickness: {
      kind: "length",
      symbol: "t_f",
      label: "thickness of the fixed bars",
      min: 0,
      max: 1,
      typical: [0, 0.04],
      default: "20 mm",
    },
  },
  output: {
    minGap: { kind: "length", symbol: "d", label: "minimum gap found" },
    maxGap: { kind: "length", symbol: "d_o", label: "maximum gap" },
    motionShare: { kind: "number", symbol: "s", label: "place in the motion" },
    movingX: { kind: "length", symbol: "x_m", label: "nearest point of the moving bar, across" },
    movingY: { kind: "length", symbol: "y_m", label: "nearest point of the moving bar, up" },
    fixedX: { kind: "length", symbol: "x_f", label: "nearest point of the fixed bar, across" },
    fixedY: { kind: "length", symbol: "y_f", label: "nearest point of the fixed bar, up" },
    provenMinGap: { kind: "length", symbol: "d_c", label: "proven minimum gap" },
    crushes: { kind: "flag", label: "can crush" },
    parts: {
      kind: "list",
      label: "parts of the body",
      of: {
        kind: "group",
        label: "part",
        fields: {
          part: { kind: "text", label: "part" },
          minGap: { kind: "length", label: "published minimum gap" },
          shortBy: { kind: "length", label: "short by" },
          entryGap: { kind: "length", label: "narrowest gap it gets into" },
          crushes: { kind: "flag", label: "can be crushed" },
        },
      },
    },
    errorEstimate: { kind: "length", label: "gap not proven" },
    evaluations: { kind: "number", label: "places looked at" },
  },
  example: {
    movingBars: [{ x1: 0, y1: 0, x2: "0.6 m", y2: 0 }],
    fixedBars: [
      { x1: "0.1 m", y1: "-0.3 m", x2: "0.1 m", y2: "-0.05 m" },
      { x1: "-0.2 m", y1: "-0.3 m", x2: "0.1 m", y2: "-0.3 m" },
    ],
    poses: [
      { x: 0, y: 0, angle: "60 deg" },
      { x: 0, y: 0, angle: "0 deg" },
    ],
  },
  formulae: [
    { solved: "d", meaning: "minimum gap found through the motion" },
    { symbol: "d_o", kind: "length", meaning: "largest gap met on the way", given: (_, out) => out.maxGap },
    { symbol: "s", kind: "number", meaning: "place in the motion where the gap is smallest", given: (_, out) => out.motionShare },
    { solved: "x_m", meaning: "nearest point of the moving bar" },
    { solved: "y_m", meaning: "nearest point of the moving bar" },
    { solved: "x_f", meaning: "nearest point of the fixed bar" },
    { solved: "y_f", meaning: "nearest point of the fixed bar" },
    {
      left: "d + (t_m + t_f) / 2",
      right: "sqrt((x_f - x_m)^2 + (y_f - y_m)^2)",
      meaning: "the gap and half of both thicknesses make the distance of the nearest points",
    },
    { symbol: "s_d", kind: "length", meaning: "gap not proven", given: (_, out) => out.errorEstimate },
    { symbol: "d_c", meaning: "proven minimum gap", is: "d - s_d" },
    {
      symbol: "D",
      kind: "length",
      meaning: "distance of the part's middles at s, calculated again",
      given: (si, out) => nearestAt(si, out.motionShare).distance,
    },
    { left: "d + (t_m + t_f) / 2", right: "D", meaning: "that is the distance in the pose at s" },
  ],
  sources: [crushGapSource, openingSource, entrapmentSource, mechanics],
  cautions: pinchCautions,
}))
