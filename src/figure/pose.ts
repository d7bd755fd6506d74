// Where a motion goes: its first and last pose, the way of each tip, and the wearer behind it.
import { element, label, type Point, pathThrough, svg } from "../drawing/index.js"
import { formatQuantity } from "../quantity/index.js"
import type { Judgement } from "../rig/check/assess.js"
import { inBody } from "../rig/check/carried.js"
import { assessRig, type Rig, type RigDrive, type RigKit, type RigMechanism, type RigTransmission, type Typed } from "../rig/index.js"
import type { Triple } from "../rig/mechanisms/mechanism.js"
import { coordinatesAt, type MotionModel } from "../rig/run/motion-model.js"
import type { Figure } from "./figure.js"

/** A picture and what is to be said under it. */
export interface Picture {
  readonly svg: string
  readonly caption: string
}

/** A line of a pose in the wearer's axes; a leading one reaches the tip. */
interface Line {
  readonly points: readonly Triple[]
  readonly closed: boolean
  readonly leads: boolean
}

/** Travels at which tips are followed: the first and the last among them. */
const PLACES = 24

type Axes = readonly [across: (p: Triple) => number, up: (p: Triple) => number]
const views = {
  front: [(p) => p[1], (p) => p[2]],
  side: [(p) => p[0], (p) => p[2]],
  above: [(p) => -p[1], (p) => p[0]],
} as const satisfies Readonly<Record<string, Axes>>
type View = keyof typeof views
const seen: Readonly<Record<View, string>> = {
  front: "Seen from the front",
  side: "Seen from the wearer's right side",
  above: "Seen from above, ahead is up",
}

/** Where everything is at some travels: lines of the first and the last, and each tip's way. */
function posesOf(motion: MotionModel): { readonly first: Line[]; readonly last: Line[]; readonly ways: Triple[][] } {
  const ways: Triple[][] = motion.parts.map(() => [])
  const [first, last]: [Line[], Line[]] = [[], []]
  for (let k = 0; k <= PLACES; k++) {
    const at = coordinatesAt(motion, (motion.span * k) / PLACES)
    motion.parts.forEach((part, i) => {
      const { mechanism } = part
      const q = at[i] as number
      // a motion that is stopped may be sent where its mechanism cannot stand
      if (!(q >= mechanism.low && q <= mechanism.high)) return
      const pose = mechanism.pose(q)
      const tip = inBody(part, pose.tip)
      if (!tip.every(Number.isFinite)) return
      ;(ways[i] as Triple[]).push(tip)
      if (k > 0 && k < PLACES) return
      for (const { points, closed } of pose.parts) {
        const placed = points.map((p) => inBody(part, p))
        if (!placed.flat().every(Number.isFinite)) continue
        const leads = points.some((p) => Math.hypot(p[0] - pose.tip[0], p[1] - pose.tip[1], p[2] - pose.tip[2]) < 1e-6)
        ;(k === 0 ? first : last).push({ points: placed, closed, leads })
      }
    })
  }
  return { first, last, ways }
}

/** The view in which the tips sweep most. */
function viewOf(ways: readonly (readonly Triple[])[]): View {
  const sweep = (view: View) => {
    const [across, up] = views[view]
    const range = (way: readonly Triple[], of: (p: Triple) => number) => Math.max(...way.map(of)) - Math.min(...way.map(of))
    return ways.reduce((sum, way) => sum + (way.length ? range(way, across) + range(way, up) : 0), 0)
  }
  // from above a wearer is hardest to make out
  return (["front", "side", "above"] as const).reduce((a, b) => (sweep(b) > sweep(a) * (b === "above" ? 1.2 : 1.001) ? b : a))
}

/** Outline of somebody who stands, as a share of stature: a plain shape to see size and place by. */
function figureOf(view: View, stature: number): readonly Triple[][] {
  if (view === "above") return []
  const at = (across: number, up: number): Triple =>
    view === "front" ? [0, across * stature, up * stature] : [across * stature, 0, up * stature]
  // half an outline from the neck down, its width apart from its height
  const outline =
    view === "front"
      ? ([
          [0.03, 0.87],
          [0.035, 0.84],
          [0.125, 0.815],
          [0.13, 0.76],
          [0.1, 0.66],
          [0.088, 0.6],
          [0.1, 0.5],
          [0.085, 0.27],
          [0.07, 0],
          [0.03, 0],
          [0.028, 0.27],
          [0.008, 0.46],
        ] as const)
      : ([
          [0.03, 0.87],
          [0.035, 0.84],
          [0.06, 0.8],
          [0.07, 0.72],
          [0.06, 0.6],
          [0.065, 0.5],
          [0.05, 0.27],
          [0.04, 0.03],
          [0.075, 0],
        ] as const)
  const body = [...outline, ...outline.map(([x, y]) => [view === "side" && y === 0 ? -0.03 : -x, y] as const).reverse()]
  const head = Array.from({ length: 24 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 24
    return at(0.048 * Math.cos(angle), 0.93 + 0.07 * Math.sin(angle))
  })
  return [body.map(([x, y]) => at(x, y)), head]
}

/** How it looks by itself; a page's own style goes before it. */
const looks: Readonly<Record<string, Readonly<Record<string, string | number>>>> = {
  figure: { fill: "currentColor", "fill-opacity": 0.08, stroke: "currentColor", "stroke-opacity": 0.3 },
  start: { fill: "none", stroke: "currentColor", "stroke-width": 1.3, "stroke-opacity": 0.75 },
  end: { fill: "none", stroke: "#3d7bb8", "stroke-width": 3 },
  way: { fill: "none", stroke: "#c2571a", "stroke-width": 2.4, "stroke-dasharray": "0.1 6", "stroke-linecap": "round" },
}

const BARS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10]

/** The picture of a motion; null where it cannot be posed at all. */
export function sweptPicture(motion: MotionModel, stature: number | null): Picture | null {
  const { first, last, ways } = posesOf(motion)
  if (!ways.some((way) => way.length)) return null
  const view = viewOf(ways)
  const [across, up] = views[view]
  const figure = stature === null ? [] : figureOf(view, stature)
  const all = [...figure.flat(), ...[...first, ...last].flatMap((l) => l.points), ...ways.flat()]
  const [xs, ys] = [all.map(across), all.map(up)]
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const [most, edge, band] = [600, 22, 40]
  const scale = Math.min((most - 2 * edge) / Math.max(right - left, 1e-3), (520 - 2 * edge) / Math.max(high - low, 1e-3))
  const width = Math.max(320, (right - left) * scale + 2 * edge)
  const height = (high - low) * scale + 2 * edge + band
  const shift = (width - (right - left) * scale) / 2
  const at = (p: Triple): Point => ({ x: shift + (across(p) - left) * scale, y: edge + (high - up(p)) * scale })
  const draw = (points: readonly Triple[], closed: boolean, kind: string) =>
    element("path", { d: pathThrough(points.map(at), closed), class: kind, ...looks[kind] })
  const lines = (list: readonly Line[], when: "start" | "end") =>
    element("g", { class: when, ...looks[when] }, ...list.map((l) => draw(l.points, l.closed, l.leads ? "leading" : "other")))
  const bar = BARS.filter((length) => length * scale <= 0.3 * width).pop() ?? (BARS[0] as number)
  const picture = svg(
    {
      title: `Poses of ${motion.name}`,
      description: `${seen[view]}: thin lines where it starts, thick lines where it ends, dots along the way of each tip${figure.length ? ", the wearer as a plain shape" : ""}.`,
      width,
      height,
    },
    ...figure.map((points) => draw(points, true, "figure")),
    lines(first, "start"),
    ...ways.filter((way) => way.length > 1).map((way) => draw(way, false, "way")),
    lines(last, "end"),
    element("path", {
      d: `M${edge} ${(height - 14).toFixed(1)}v-5v5h${(bar * scale).toFixed(1)}v-5`,
      class: "scale",
      fill: "none",
      stroke: "currentColor",
    }),
    label(edge + bar * scale + 8, height - 12, formatQuantity("length", bar), {
      class: "word",
      fill: "currentColor",
      "font-family": "system-ui, sans-serif",
      "font-size": 13,
    }),
  )
  return { svg: picture, caption: `${seen[view]}. Thin: start. Thick: end. Dots: the way of each tip.` }
}

/**
 * Where a motion goes: thin where it starts, thick where it ends, dots along the way of each tip, the wearer as a plain shape
 * behind it, seen from where it sweeps most.
 *
 * @param rig - a rig document of version 2
 * @param motion - its name; the first one where left out
 * @param kit - verbs over members of one's own, from `rigWith`
 * @returns the picture; null where the motion cannot be posed
 * @throws InputError naming every fault of the document
 * @throws RangeError where there is no motion of that name
 * @example
 * ```ts
 * import { assessRig } from 'alula/rig'
 * import { poseFigure } from 'alula/figure'
 * poseFigure(assessRig.example).title // => 'Poses of wings'
 * ```
 */
export function poseFigure<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>(
  rig: Rig<D, T, M>,
  motion: string | null = null,
  kit: Pick<RigKit<D, T, M>, "assess"> = { assess: assessRig } as unknown as Pick<RigKit<D, T, M>, "assess">,
): Figure | null {
  const { assess } = kit as unknown as { readonly assess: RigKit<Typed, Typed, Typed>["assess"] }
  const trace: Partial<Judgement> = {}
  assess.si(assess.read(rig), trace)
  if (!trace.judged) throw new TypeError("poseFigure: the kit is not one that rigWith made")
  const { motions, rig: si } = trace.judged
  const model = motion === null ? motions[0] : motions.find((one) => one.name === motion)
  if (!model) throw new RangeError(`There is no motion "${motion}": one of ${motions.map((one) => one.name).join(", ")}.`)
  const picture = sweptPicture(model, si.wearer?.stature ?? null)
  return picture && { title: `Poses of ${model.name}`, svg: picture.svg, alternative: picture.caption }
}
