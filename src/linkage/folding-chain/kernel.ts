// Places, loads, efforts and inertia of a folding chain.
import { drivenMoment } from "../driven-moment.js"
import type { Point } from "../hinge/geometry.js"
import { standardGravity } from "../hinge/load.js"
import type { ChainBox, ChainJoint, ChainPose, FoldingChain, Si } from "./types.js"

/** Poses of the travel that are listed, folded and spread included. */
export const POSES = 61

/** Where the chain is at a share of the travel, and how fast it goes for a turn of the driver. */
export interface ChainPlace {
  /** Joints, and the tip last. */
  readonly joints: readonly Point[]
  /** Direction of each segment. */
  readonly angles: readonly number[]
  /** Turn of each joint for a turn of the driver. */
  readonly ratios: readonly number[]
  /** Turn of each segment for a turn of the driver. */
  readonly rates: readonly number[]
}

type Segment = Pick<Si["segments"][number], "foldedAngle" | "ratio" | "startsAt" | "endsAt">

/** Angle of a joint from the segment before it. */
export const jointAngle = (s: Segment, driverTravel: number, position: number): number =>
  s.foldedAngle + s.ratio * driverTravel * (Math.min(s.endsAt, Math.max(s.startsAt, position)) - s.startsAt)

/** Turn of a joint for a turn of the driver; at the very end of the travel those that have just arrived still count as turning. */
export const jointRatio = (s: Segment, position: number): number =>
  position >= s.startsAt && (position < s.endsAt || (position === 1 && s.endsAt === 1)) ? s.ratio : 0

export function placeAt(si: Si, position: number): ChainPlace {
  const [joints, angles, ratios, rates]: [Point[], number[], number[], number[]] = [[{ x: 0, y: 0 }], [], [], []]
  let [angle, rate] = [0, 0]
  si.segments.forEach((s, i) => {
    angle += jointAngle(s, si.driverTravel, position)
    const ratio = jointRatio(s, position)
    rate += ratio
    const { x, y } = joints[i] as Point
    joints.push({ x: x + s.length * Math.cos(angle), y: y + s.length * Math.sin(angle) })
    angles.push(angle)
    ratios.push(ratio)
    rates.push(rate)
  })
  return { joints, angles, ratios, rates }
}

interface Mover {
  readonly mass: number
  readonly at: Point
  /** Travel for a turn of the driver, and its change. */
  readonly rate: Point
  readonly change: Point
  /** Joint that carries it. */
  readonly joint: number
}

/** Masses of the chain at a place, with their travel for a turn of the driver. */
function moversOf(si: Si, { joints, angles, rates }: ChainPlace): Mover[] {
  const movers: Mover[] = []
  let rate: Point = { x: 0, y: 0 }
  let change: Point = { x: 0, y: 0 }
  si.segments.forEach((s, i) => {
    const [angle, w, joint] = [angles[i] as number, rates[i] as number, joints[i] as Point]
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    const along = (distance: number, mass: number): Mover => ({
      mass,
      joint: i,
      at: { x: joint.x + distance * cos, y: joint.y + distance * sin },
      rate: { x: rate.x - distance * w * sin, y: rate.y + distance * w * cos },
      change: { x: change.x - distance * w ** 2 * cos, y: change.y - distance * w ** 2 * sin },
    })
    movers.push(along(s.centreShare * s.length, s.mass))
    const end = along(s.length, i === si.segments.length - 1 ? si.tipMass : 0)
    movers.push(end)
    ;[rate, change] = [end.rate, end.change]
  })
  return movers
}

/** Share of gravity that acts in the plane of folding: none at all where it is level, which a rounded right angle must not spoil. */
export function shareInPlane({ planeTilt }: Pick<Si, "planeTilt">): number {
  const share = Math.cos(planeTilt)
  return Math.abs(share) < 1e-15 ? 0 : share
}

/** Pull of gravity in the plane, upward positive, along x and y, and across it. */
function gravityOf(si: Si): { readonly x: number; readonly y: number; readonly side: number } {
  const inPlane = standardGravity * shareInPlane(si)
  return {
    x: inPlane * Math.sin(si.frameTilt),
    y: inPlane * Math.cos(si.frameTilt),
    side: standardGravity * Math.sin(si.planeTilt),
  }
}

function jointsAt(si: Si, place: ChainPlace): ChainJoint[] {
  const movers = moversOf(si, place)
  const g = gravityOf(si)
  const frictionRadius = (si.pinFriction * si.pinDiameter) / 2
  const turned = place.angles.map((angle, i) => angle - (i ? (place.angles[i - 1] as number) : 0))
  return si.segments.map((s, i) => {
    const [{ x, y }, ratio] = [place.joints[i] as Point, place.ratios[i] as number]
    let [outward, momentX, momentY] = [0, 0, 0]
    for (const { mass, at, joint } of movers) {
      if (joint < i) continue
      outward += mass
      momentX += mass * (at.x - x)
      momentY += mass * (at.y - y)
    }
    const gravityMoment = g.y * momentX - g.x * momentY
    const pinLoad = standardGravity * outward
    const [spreadMoment, foldMoment] = [1, -1].map((way) =>
      drivenMoment(gravityMoment, way * Math.sign(ratio), frictionRadius, pinLoad, s.driveRadius),
    ) as [number, number]
    return {
      x,
      y,
      angle: turned[i] as number,
      ratio,
      gravityMoment,
      sideMoment: Math.abs(g.side) * Math.hypot(momentX, momentY),
      pinLoad,
      spreadMoment,
      foldMoment,
      driveForce: s.driveRadius === 0 ? null : Math.max(Math.abs(spreadMoment), Math.abs(foldMoment)) / s.driveRadius,
    }
  })
}

/** Moments at the driver by virtual work, and the inertia it feels. */
function effortsAt(si: Si, place: ChainPlace, joints: readonly ChainJoint[]) {
  const movers = moversOf(si, place)
  const work = (of: (joint: ChainJoint) => number) => joints.reduce((sum, joint) => sum + joint.ratio * of(joint), 0)
  let [inertia, inertiaSlope] = [0, 0]
  for (const { mass, rate, change } of movers) {
    inertia += mass * (rate.x ** 2 + rate.y ** 2)
    inertiaSlope += 2 * mass * (rate.x * change.x + rate.y * change.y)
  }
  // each segment about its own middle, as a slender rod
  si.segments.forEach((s, i) => {
    inertia += ((s.mass * s.length ** 2) / 12) * (place.rates[i] as number) ** 2
  })
  return {
    effort: work((joint) => joint.gravityMoment),
    spreadEffort: work((joint) => joint.spreadMoment),
    foldEffort: work((joint) => joint.foldMoment),
    inertia,
    inertiaSlope,
  }
}

/** Corners of every segment. */
export function cornersAt(si: Si, { joints, angles }: ChainPlace): Point[] {
  return si.segments.flatMap((s, i) => {
    const [{ x, y }, angle] = [joints[i] as Point, angles[i] as number]
    const [cos, sin, half] = [Math.cos(angle), Math.sin(angle), s.width / 2]
    return [
      [0, half],
      [s.length, half],
      [s.length, -half],
      [0, -half],
    ].map(([u, v]) => ({ x: x + (u as number) * cos - (v as number) * sin, y: y + (u as number) * sin + (v as number) * cos }))
  })
}

function boxOf(points: readonly Point[]): ChainBox {
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)]
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) }
}

export function solve(si: Si): FoldingChain {
  const place = placeAt(si, si.position)
  const joints = jointsAt(si, place)
  const here = effortsAt(si, place, joints)
  const tip = place.joints.at(-1) as Point
  const end = moversOf(si, place).at(-1) as Mover
  const g = gravityOf(si)
  const mass = si.segments.reduce((sum, s) => sum + s.mass, si.tipMass)
  const places = Array.from({ length: POSES }, (_, k) => placeAt(si, k / (POSES - 1)))
  const corners = places.map((at) => cornersAt(si, at))
  const poses = places.map((at, k): ChainPose => {
    const { effort, spreadEffort, foldEffort, inertia } = effortsAt(si, at, jointsAt(si, at))
    const { x, y } = at.joints.at(-1) as Point
    return { driverAngle: (si.driverTravel * k) / (POSES - 1), tipX: x, tipY: y, effort, spreadEffort, foldEffort, inertia }
  })
  return {
    transmits: "both-ways",
    tipX: tip.x,
    tipY: tip.y,
    tipRateX: end.rate.x,
    tipRateY: end.rate.y,
    ...here,
    reactionX: mass * g.x,
    reactionY: mass * g.y,
    reactionMoment: (joints[0] as ChainJoint).gravityMoment,
    maxEffort: Math.max(...poses.flatMap((p) => [Math.abs(p.spreadEffort), Math.abs(p.foldEffort)])),
    maxReach: Math.max(...corners.flat().map((p) => Math.hypot(p.x, p.y))),
    joints,
    spreadOrder: si.segments
      .map((_, i) => i)
      .sort((a, b) => (si.segments[a]?.startsAt as number) - (si.segments[b]?.startsAt as number))
      .map((i) => i + 1),
    folded: boxOf(corners[0] as Point[]),
    spread: boxOf(corners[POSES - 1] as Point[]),
    swept: boxOf(corners.flat()),
    poses,
  }
}
