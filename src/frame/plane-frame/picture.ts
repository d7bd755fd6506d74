// The picture of a frame: as it stands, as it bends (exaggerated), its bending moments on the side that is stretched, supports and loads.
import { element, extent, label, type Point, pathThrough, svg } from "../../drawing/index.js"
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import { isNoSolution } from "../../solver/index.js"
import { beamCurve } from "../beam/curve.js"
import { nodeOf, shares, wayOf } from "./build.js"
import { kernel } from "./kernel.js"
import type { PlaneFrameTrace, Si } from "./types.js"

const [WIDTH, HEIGHT, EDGE, HEAD] = [640, 480, 70, 46]
/** Sizes of what is drawn beside the members, in the picture's own units. */
const [SWAY, MOMENT, ARROW, PARTS] = [36, 44, 34, 24]
const ink = { member: "#1d3557", bent: "#b5541c", moment: "#2a7f62", load: "#6a4c93" } as const
const text = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "#222" }

/** An exaggeration that reads well: 1, 2 or 5 times a power of ten, no more than asked for. */
function round(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most))
  return ([5, 2, 1].find((m) => m * power <= most) ?? 1) * power
}

/** An arrow whose point lies at `to`, drawn the way that (x, y) points on the page. */
function arrow(to: Point, x: number, y: number): string {
  const size = Math.hypot(x, y)
  if (!(size > 0)) return ""
  const [ux, uy] = [x / size, y / size]
  const tail = { x: to.x - ARROW * ux, y: to.y - ARROW * uy }
  const wing = (side: number) => ({ x: to.x - 9 * ux + side * 4 * uy, y: to.y - 9 * uy - side * 4 * ux })
  return element("path", {
    d: `${pathThrough([tail, to])}${pathThrough([wing(1), to, wing(-1)])}`,
    fill: "none",
    stroke: ink.load,
    "stroke-width": 2,
  })
}

/**
 * Draws a frame as one SVG picture: members with their names, the shape they bend to, exaggerated, bending moments on the stretched
 * side, supports and loads.
 *
 * @param si - input of planeFrame in SI, as its `read` gives it
 * @returns null where the frame is refused
 */
export function drawPlaneFrame(si: Si): string | null {
  const trace: Partial<PlaneFrameTrace> = {}
  const out = kernel(si, trace)
  if (isNoSolution(out) || !trace.soft) return null
  const { frame } = trace.soft
  const [xs, ys] = [extent(si.nodes.map((n) => n.x)), extent(si.nodes.map((n) => n.y))]
  const scale = Math.min((WIDTH - 2 * EDGE) / (xs[1] - xs[0]), (HEIGHT - HEAD - 2 * EDGE) / (ys[1] - ys[0]))
  const place = ({ x, y }: Point): Point => ({
    x: WIDTH / 2 + scale * (x - (xs[0] + xs[1]) / 2),
    y: HEAD + (HEIGHT - HEAD) / 2 - scale * (y - (ys[0] + ys[1]) / 2),
  })
  const members = si.members.map((member, i) => {
    const way = wayOf(si, member)
    const curve = beamCurve(frame.stretchOf(i))
    const start = si.nodes[way.from] as Point
    const [from, to] = [frame.moves[way.from], frame.moves[way.to]] as [
      readonly [number, number, number],
      readonly [number, number, number],
    ]
    const alongAt = (move: readonly [number, number, number]) => move[0] * way.cos + move[1] * way.sin
    const points = Array.from({ length: PARTS + 1 }, (_, k) => {
      const x = (way.length * k) / PARTS
      const { deflection, moment } = curve.at(x, k === 0 ? 1 : -1)
      return { x, deflection, moment, along: alongAt(from) + ((alongAt(to) - alongAt(from)) * k) / PARTS }
    })
    const at = (x: number, across = 0): Point => ({
      x: start.x + x * way.cos + across * way.sin,
      y: start.y + x * way.sin - across * way.cos,
    })
    return { member, way, points, at }
  })
  const most = (of: (p: (typeof members)[number]["points"][number]) => number) =>
    Math.max(...members.flatMap((m) => m.points.map((p) => Math.abs(of(p)))))
  const moved = Math.max(
    most((p) => p.deflection),
    most((p) => p.along),
  )
  const sway = moved > 0 ? round(SWAY / scale / moved) : 0
  const momentMost = most((p) => p.moment)
  const perMoment = momentMost > 0 ? MOMENT / scale / momentMost : 0
  const drawn = members.map(({ member, way, points, at }) => {
    const middle = place(at(way.length / 2))
    return [
      element("path", {
        d: pathThrough([at(0), ...points.map((p) => at(p.x, perMoment * p.moment)), at(way.length)].map(place), true),
        fill: ink.moment,
        "fill-opacity": 0.18,
        stroke: ink.moment,
        "stroke-width": 1,
      }),
      element("path", { d: pathThrough([at(0), at(way.length)].map(place)), stroke: ink.member, "stroke-width": 3 }),
      element("path", {
        d: pathThrough(points.map((p) => place(at(p.x + sway * p.along, sway * p.deflection)))),
        fill: "none",
        stroke: ink.bent,
        "stroke-width": 2,
        "stroke-dasharray": "6 4",
      }),
      label(middle.x + 6, middle.y - 6, member.name, text),
    ].join("")
  })
  const joints = members.flatMap(({ member, way, at }) =>
    (
      [
        ["startJoint", 0.04],
        ["endJoint", 0.96],
      ] as const
    ).flatMap(([key, share]) =>
      member[key] === "pinned"
        ? [
            element("circle", {
              cx: place(at(share * way.length)).x,
              cy: place(at(share * way.length)).y,
              r: 4,
              fill: "#fff",
              stroke: ink.member,
              "stroke-width": 1.5,
            }),
          ]
        : [],
    ),
  )
  const supports = si.supports.map((s) => {
    const p = place(si.nodes[nodeOf(si, s.node)] as Point)
    if (s.type === "clamped") return element("rect", { x: p.x - 11, y: p.y - 6, width: 22, height: 12, fill: ink.member })
    const turned = s.type === "roller" && s.holds === "sideways"
    const tip = turned
      ? [p, { x: p.x - 14, y: p.y - 9 }, { x: p.x - 14, y: p.y + 9 }]
      : [p, { x: p.x - 9, y: p.y + 14 }, { x: p.x + 9, y: p.y + 14 }]
    return element("path", {
      d: pathThrough(tip, true),
      fill: s.type === "pinned" ? ink.member : "#fff",
      stroke: ink.member,
      "stroke-width": 1.5,
      "stroke-dasharray": s.type === "spring" ? "3 2" : undefined,
    })
  })
  const loads = si.loads.flatMap((l) => {
    if (l.type === "node") return [arrow(place(si.nodes[nodeOf(si, l.node)] as Point), l.right, -l.up)]
    if (l.type === "moment") return []
    const found = members.find((m) => m.member.name === l.member)
    if (!found) return []
    const [across, along] = shares(found.way, l.direction)
    const { cos, sin } = found.way
    const force = (x: number, size: number) =>
      arrow(place(found.at(x)), size * (along * cos + across * sin), -size * (along * sin - across * cos))
    if (l.type === "force") return [force(l.position, l.force)]
    return [0, 0.25, 0.5, 0.75, 1].map((k) => force(l.start + k * (l.end - l.start), l.startLoad + k * (l.endLoad - l.startLoad)))
  })
  const told = `bent shape (dashed) ${formatNumber(sway)} times, moments up to ${formatQuantity("moment", momentMost)} on the stretched side`
  return svg(
    {
      title: "Plane frame",
      description: `${out.members.map((m) => `${m.name}: moment ${formatQuantity("moment", m.maxMoment)}`).join("; ")}; ${told}`,
      width: WIDTH,
      height: HEIGHT,
    },
    label(12, 20, "Plane frame", { ...text, "font-size": 14, "font-weight": 600 }),
    label(12, 38, told, text),
    ...drawn,
    ...joints,
    ...supports,
    ...loads,
  )
}
