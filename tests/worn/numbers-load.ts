import { centreHeight, isPart, type SegmentRow, type SegmentTable, segmentRows } from "../../src/worn/body/data-segments.js"
import { metabolicRate, type SurveyDimension, survey } from "../../src/worn/index.js"
import type { Numbers } from "../helpers/edges.js"

const G = 9.80665
const lower = ["thigh", "shank", "leg", "foot"]
const tables = Object.keys(segmentRows) as SegmentTable[]

/** Height of the standing body's centre over stature, by one table. */
function centre(table: SegmentTable): number {
  let [mass, moment] = [0, 0]
  for (const r of segmentRows[table]) {
    if (isPart(r.name)) continue
    mass += r.count * r.mass
    moment += r.count * r.mass * centreHeight(r)
  }
  return moment / mass
}

interface Carried {
  readonly bodyMass: number
  readonly stature: number
  readonly rigMass: number
  readonly footSpacing: number
  readonly poses: readonly { readonly forward: number; readonly left: number; readonly up: number }[]
}

/** How far the weight above the hips is from being held by a lean: summed segment by segment, kg·m, least over the tables. */
function heldAbove(si: Carried, height: number): number {
  const byTable = tables.map((table) => {
    const rows = segmentRows[table]
    const hip = (rows.find((r) => r.name === "thigh") as SegmentRow).top * si.stature
    const body = rows
      .filter((r) => !isPart(r.name) && !lower.includes(r.name))
      .reduce((sum, r) => sum + r.count * r.mass * si.bodyMass * (centreHeight(r) * si.stature - hip), 0)
    return body + si.rigMass * (height - hip)
  })
  return Math.min(...byTable)
}

/** Share of the weight that stands outside the feet, as metres of the rig's own offset: moments about the nearer foot. */
const beyondFoot = (si: Carried, left: number) =>
  (si.rigMass * (Math.abs(left) - si.footSpacing / 2) - (si.bodyMass * si.footSpacing) / 2) / si.rigMass

const failing = (si: Carried, fails: (p: Carried["poses"][number]) => boolean) => si.poses.find(fails) as Carried["poses"][number]

interface Lift {
  readonly liftRate: number
  readonly duration: "short" | "medium" | "long"
  readonly startHeight: number
  readonly endHeight: number
}
/** Last lifts a minute with a multiplier in table 5 of the manual: hands below 75 cm, and from 75 cm. */
const lastRate = { short: [12, 15], medium: [10, 12], long: [8, 10] } as const
const mostLifts = (si: Lift) => lastRate[si.duration][Math.min(si.startHeight, si.endHeight) < 0.75 ? 0 : 1]

interface Worn {
  readonly bodyMass: number
  readonly rigMass: number
  readonly maxOxygenUptake: number
  readonly stageFactor: number
  readonly plan: readonly { readonly activity: string; readonly duration: number; readonly walkingSpeed: number | null }[]
}
/** Metabolic rate of the hardest part with the rig on, W; 5 kcal of 4184 J to the litre of oxygen. */
function hardest(si: Worn): number {
  const watt = (ml: number) => (ml * 5 * 4184) / 60000
  const walking = (speed: number) => metabolicRate({ bodyMass: si.bodyMass, rigMass: si.rigMass, walkingSpeed: speed }).metabolicRate
  const rates = si.plan
    .filter((p) => p.activity !== "off")
    .map((p) => {
      if (p.activity === "sitting") return watt(3.5 * (si.bodyMass + si.rigMass))
      return p.activity === "standing" ? walking(0) : (p.activity === "stage" ? si.stageFactor : 1) * walking(p.walkingSpeed ?? 0.9)
    })
  return Math.max(...rates)
}

interface Hung {
  readonly centreOffset: number
  readonly upperAnchor: number
  readonly lowerAnchor: number
  readonly upperAngle: number
  readonly lowerAngle: number
  readonly shoulderFriction: number
  readonly wrapAngle: number
}
/** Height of the upper anchors at which the lower straps, tightened by friction, no longer tip the rig. */
const anchorThatHolds = (si: Hung) =>
  (Math.exp(si.shoulderFriction * si.wrapAngle) * Math.cos(si.lowerAngle) * -si.lowerAnchor) / Math.cos(si.upperAngle)
/** Offset at which the straps that keep the rig from tipping carry all of its weight: moments about the belt over upward pull. */
const offsetThatHangs = (si: Hung) =>
  (Math.cos(si.upperAngle) * si.upperAnchor + Math.cos(si.lowerAngle) * si.lowerAnchor) /
  (Math.sin(si.upperAngle) + Math.sin(si.lowerAngle))

interface Reached {
  readonly stature: number
  readonly forward: number
  readonly outward: number
  readonly up: number
  readonly handling: string
  readonly reserve: number
}
const bones = (si: Reached) => [0.186 * si.stature, (0.146 + (si.handling === "grip" ? 0.5 : 1) * 0.108) * si.stature] as const
const fromShoulder = (si: Reached) => [si.forward, si.outward - 0.1122 * si.stature, si.up - 0.818 * si.stature] as const
const furthest = (si: Reached) => (1 - si.reserve) * (bones(si)[0] + bones(si)[1])
/** Third side of the triangle of both bones with the elbow bent by 150°: level and upward parts summed. */
const bent = (si: Reached) => Math.hypot(bones(si)[0] - bones(si)[1] * Math.cos(Math.PI / 6), bones(si)[1] * Math.sin(Math.PI / 6))

/** How far the best way of holding the elbow is outside its limits: turned about the line to the hand in small steps, then finer. */
function outside(si: Reached): number {
  const hand = fromShoulder(si)
  const [upper, fore] = bones(si)
  const d = Math.hypot(...hand)
  const n = hand.map((v) => v / d)
  const along = (upper ** 2 - fore ** 2 + d ** 2) / (2 * d)
  const off = Math.sqrt(upper ** 2 - along ** 2)
  // two directions square to the line
  const spare = Math.abs(n[0] as number) < 0.7 ? [1, 0, 0] : [0, 1, 0]
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, i) => sum + v * (b[i] as number), 0)
  const p0 = spare.map((v, i) => v - dot(spare, n) * (n[i] as number))
  const p = p0.map((v) => v / Math.hypot(...p0))
  const q = [0, 1, 2].map(
    (i) => (n[(i + 1) % 3] as number) * (p[(i + 2) % 3] as number) - (n[(i + 2) % 3] as number) * (p[(i + 1) % 3] as number),
  )
  const slack = (turn: number) => {
    const elbow = n.map((v, i) => along * v + off * (Math.cos(turn) * (p[i] as number) + Math.sin(turn) * (q[i] as number)))
    const u = elbow.map((v) => v / upper)
    const f = hand.map((v, i) => (v - (elbow[i] as number)) / fore)
    const behind = (u[0] as number) + Math.SQRT1_2 * Math.min(1, 1 - (u[2] as number))
    return Math.min(behind, (f[0] as number) - dot(f, u) * (u[0] as number) + 1e-9)
  }
  let [best, step] = [0, Math.PI / 3600]
  for (let k = -3600; k < 3600; k++) if (slack(k * step) > slack(best)) best = k * step
  while (step > 1e-15) {
    for (const turn of [best - step, best + step]) if (slack(turn) > slack(best)) best = turn
    step *= 0.7
  }
  return -slack(best)
}

/** Second computations of the numbers in messages that are neither in the result nor in the input. */
export const loadNumbers: Numbers = {
  "bodyDimension.weak-correlation.correlation": (si: { sex: "female" | "male"; dimension: SurveyDimension }) =>
    survey[si.dimension][si.sex][5],
  "bodySegments.means-of-samples.lowest": () => Math.min(...tables.map(centre)),
  "bodySegments.means-of-samples.highest": () => Math.max(...tables.map(centre)),
  "carriedLoad.small-wearer.light": () => 45,
  "wearSchedule.small-wearer.light": () => 45,
  "metabolicRate.heavy-head.most": () => 1.34 / 0.05 / G,
  "metabolicRate.outside-data.shortBy": (si: Worn) => 36 - si.bodyMass,
  "metabolicRate.outside-data.lightest": () => 36,
  "wearSchedule.outside-data.shortBy": (si: Worn) => 36 - si.bodyMass,
  "wearSchedule.outside-data.lightest": () => 36,
  "endurance.models-disagree.shortest": (_: unknown, out: { readings: readonly { enduranceTime: number }[] }) =>
    Math.min(...out.readings.map((r) => r.enduranceTime)),
  "endurance.models-disagree.longest": (_: unknown, out: { readings: readonly { enduranceTime: number }[] }) =>
    Math.max(...out.readings.map((r) => r.enduranceTime)),
  "endurance.insufficient-strength.shortBy": (si: { moment: number; maxMoment: number }) => si.moment - si.maxMoment,
  "liftLimit.outside-data.shortBy": (si: Lift) => si.liftRate - mostLifts(si),
  "liftLimit.too-heavy-for-three.teamLimit": (_: unknown, out: { massLimit: number; referenceMass: number }) =>
    (3 * Math.min(out.massLimit, out.referenceMass)) / 2,
  "strapPressure.throat.throatRelease": () => 25,
  "strapPressure.limit-not-settled.occlusion": () => 30 * 133.322,
  "strapPressure.limit-not-settled.child": () => 98 * 133.322,
  "strapPressure.hangs-back.shortBy": (si: Hung) => si.centreOffset - offsetThatHangs(si),
  "strapPressure.cannot-balance.shortBy": (si: Hung) => anchorThatHolds(si) - si.upperAnchor,
  "carriedLoad.cannot-balance.shortBy": (si: Carried) => -heldAbove(si, failing(si, (p) => heldAbove(si, p.up) <= 0).up) / si.rigMass,
  "carriedLoad.cannot-balance.at.up": (si: Carried) => failing(si, (p) => heldAbove(si, p.up) <= 0).up,
  "carriedLoad.tips-sideways.shortBy": (si: Carried) => beyondFoot(si, failing(si, (p) => beyondFoot(si, p.left) > 0).left),
  "carriedLoad.tips-sideways.at.left": (si: Carried) => failing(si, (p) => beyondFoot(si, p.left) > 0).left,
  "wearSchedule.insufficient-capacity.shortBy": (si: Worn) => hardest(si) - (si.maxOxygenUptake * si.bodyMass * 5 * 4184) / 60000,
  "wearSchedule.insufficient-capacity.at.metabolicRate": hardest,
  "wearSchedule.plan.1.walkingSpeed.walkingSpeed": (si: Worn) => si.plan[1]?.walkingSpeed as number,
  "wearSchedule.plan.total": (si: Worn) => si.plan.reduce((sum, p) => sum + p.duration, 0),
  "reach.try-it-on.switchForce": () => 5 * 0.45359237 * G,
  "reach.out-of-reach.shortBy": (si: Reached) => Math.hypot(...fromShoulder(si)) - furthest(si),
  "reach.out-of-reach.at.distance": (si: Reached) => Math.hypot(...fromShoulder(si)),
  "reach.out-of-reach.maxDistance": furthest,
  "reach.too-close.shortBy": (si: Reached) => bent(si) - Math.hypot(...fromShoulder(si)),
  "reach.too-close.at.distance": (si: Reached) => Math.hypot(...fromShoulder(si)),
  "reach.behind-the-shoulder.shortBy": outside,
  "reach.behind-the-shoulder.at.distance": (si: Reached) => Math.hypot(...fromShoulder(si)),
}
