import { element, label, type Point, pathThrough, svg } from "../../../drawing/index.js"
import { displayNumber } from "../../../solver/index.js"
import { statureFractions, upperBodies } from "../../body/data-segments.js"
import { carriedLoad } from "./index.js"
import type { CarriedLoadInput, PoseCarried } from "./types.js"

const ink = "#1d3557"
const load = "#b5541c"
const faint = "#8a8f98"
const text = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "#222" }
const strong = { ...text, "font-weight": 600 }
const middle = { "text-anchor": "middle" } as const

/** Pixels to the metre. */
const SCALE = 130
const PANEL = 260
const HEAD = 62
const FOOT = 150

const line = (points: readonly Point[], stroke: string, width: number, dash?: string) =>
  element("path", {
    d: pathThrough(points),
    fill: "none",
    stroke,
    "stroke-width": width,
    "stroke-linecap": "round",
    "stroke-linejoin": "round",
    "stroke-dasharray": dash,
  })

/** An arrow downwards from a point. */
function weightArrow(at: Point, length: number, stroke: string): string {
  const tip = { x: at.x, y: at.y + length }
  return (
    line([at, tip], stroke, 2) +
    element("path", {
      d: pathThrough(
        [
          { x: tip.x - 4, y: tip.y - 7 },
          { x: tip.x + 4, y: tip.y - 7 },
          { x: tip.x, y: tip.y + 1 },
        ],
        true,
      ),
      fill: stroke,
    })
  )
}

interface Place {
  readonly stature: number
  readonly forward: number
  readonly height: number
  readonly mass: string
}

/** Wearer and rig in one pose, facing right, the legs upright and the trunk leaning as balance asks. */
function panel(pose: PoseCarried, place: Place, ground: number): string {
  const { stature, forward, height } = place
  const hipHeight = upperBodies.winter.hipHeight * stature
  const centre = PANEL / 2
  const on = (x: number, z: number): Point => ({ x: centre + SCALE * x, y: ground - SCALE * z })
  /** A point of the trunk or the rig, given standing upright, after the lean about the hips. */
  const lean = (x: number, z: number): Point => {
    const [s, c] = [Math.sin(pose.trunkLean), Math.cos(pose.trunkLean)]
    return on(x * c + (z - hipHeight) * s, hipHeight - x * s + (z - hipHeight) * c)
  }
  const f = statureFractions
  const shoulder = f.shoulderHeight * stature
  const [hip, ankle, toe] = [on(0, hipHeight), on(0, f.ankleHeight * stature), on(0.11 * stature, 0.01)]
  const rig = lean(forward, height)
  const head = lean(0, f.eyeHeight * stature)
  const angle = (pose.trunkLean * 180) / Math.PI
  const arc = 0.32
  return [
    line([on(-0.85, 0), on(0.85, 0)], faint, 1.5),
    // the vertical through the hips, where the weight above them comes to lie
    line([on(0, 0), on(0, stature * 1.08)], faint, 1, "3 4"),
    line([hip, ankle, toe], ink, 7),
    line([hip, lean(0, shoulder)], ink, 9),
    line([lean(0, shoulder), head], ink, 5),
    line([lean(0, shoulder), lean(0.06, f.elbowHeight * stature), lean(0.16, f.wristHeight * stature + 0.04)], ink, 5),
    element("circle", { cx: head.x, cy: head.y, r: 0.062 * stature * SCALE, fill: ink }),
    line([lean(0, Math.min(Math.max(height, hipHeight), shoulder)), rig], load, 3, "6 3"),
    element("circle", { cx: rig.x, cy: rig.y, r: 8, fill: load }),
    weightArrow(rig, 42, load),
    label(rig.x + (rig.x > centre ? 13 : -13), rig.y + 4, place.mass, {
      ...strong,
      fill: load,
      "text-anchor": rig.x > centre ? "start" : "end",
    }),
    element("circle", { cx: hip.x, cy: hip.y, r: 5, fill: "#fff", stroke: ink, "stroke-width": 2 }),
    Math.abs(angle) >= 0.5 ? line([on(0, hipHeight + arc), lean(0, hipHeight + arc)], "#2a7f62", 2) : "",
    label(centre + 40, ground - SCALE * (hipHeight + arc * 1.1), degreesText(Math.abs((angle * Math.PI) / 180)), {
      ...strong,
      fill: "#2a7f62",
    }),
  ].join("")
}

const degreesText = (angle: number) => displayNumber({ kind: "angle" }, angle)

/** What stands below a pose: lean and feet in words, moments as bars against the largest of all poses. */
function figures(pose: PoseCarried, ground: number, largest: number): string {
  const direction = pose.trunkLean > 0 ? "forwards" : pose.trunkLean < 0 ? "backwards" : ""
  const degrees = degreesText(Math.abs(pose.trunkLean))
  const bars = [
    { what: "hips and low back, straight", moment: Math.abs(pose.hipMoment), fill: load },
    { what: "low back, leaning", moment: Math.abs(pose.backMomentLeaning), fill: ink },
  ]
  return [
    label(PANEL / 2, ground + 26, pose.name, { ...strong, "font-size": 13, ...middle }),
    label(PANEL / 2, ground + 45, `lean for balance ${degrees} ${direction}`.trimEnd(), { ...text, ...middle }),
    ...bars.flatMap(({ what, moment, fill }, i) => [
      label(14, ground + 66 + 32 * i, `${what} ${displayNumber({ kind: "moment" }, moment)}`, text),
      element("rect", { x: 14, y: ground + 71 + 32 * i, width: ((PANEL - 40) * moment) / (largest || 1), height: 7, fill }),
    ]),
    label(14, ground + 132, `on the left foot ${displayNumber({ kind: "ratio", unit: "%" }, pose.leftShare)} of the weight`, text),
  ].join("")
}

/**
 * Side view of load, lean and moments, one figure a pose, as one SVG picture to scale: the wearer faces right, the dot is the
 * rig's centre of mass with its weight, the dashed vertical goes through the hips.
 *
 * @param input - as for {@link carriedLoad}
 * @param title - name of the picture
 * @returns SVG text
 * @throws InputError and NoSolutionError as carriedLoad does
 */
export function carriedLoadSideView(input: CarriedLoadInput, title = "Load, lean and moments"): string {
  const si = carriedLoad.read(input)
  const result = carriedLoad(input)
  const tallest = Math.max(si.stature * 1.1, ...si.poses.map((p) => p.up + 0.25))
  const ground = HEAD + SCALE * tallest
  const largest = Math.max(...result.poses.flatMap((p) => [Math.abs(p.hipMoment), Math.abs(p.backMomentLeaning)]))
  const width = Math.max(2, si.poses.length) * PANEL
  const mass = displayNumber({ kind: "mass" }, si.rigMass)
  const share = displayNumber({ kind: "ratio", unit: "%" }, result.massShare)
  return svg(
    {
      title,
      description: `A rig of ${mass}, ${share} of body mass. ${result.poses
        .map((p) => `${p.name}: lean ${degreesText(p.trunkLean)}`)
        .join("; ")}.`,
      width,
      height: ground + FOOT,
    },
    element("rect", { width, height: ground + FOOT, fill: "#fff" }),
    label(14, 24, title, { ...strong, "font-size": 15 }),
    label(14, 44, `rig ${mass}, ${share} of body mass; an estimate of balance, no clearance: pain or numbness means take it off`, text),
    ...result.poses.map((pose, i) => {
      const { forward, up } = si.poses[i] as (typeof si.poses)[number]
      return element(
        "g",
        { transform: `translate(${i * PANEL} 0)` },
        panel(pose, { stature: si.stature, forward, height: up, mass }, ground),
        figures(pose, ground, largest),
      )
    }),
  )
}
