// Where the holes are: those of the frame from pins that stay where they are, those of the arm from pins that turn with it.
import { bolts } from "../../frame/data-bolts.js"
import type { Judged } from "../../rig/check/conditions.js"
import type { MechanismPose, Triple } from "../../rig/mechanisms/mechanism.js"
import { coordinatesAt, type MotionModel } from "../../rig/run/motion-model.js"
import type { SheetCut, SheetHole, SheetPlate } from "./content.js"

type MotionSi = Judged["rig"]["motions"][number]
/** Places along the travel at which pins are compared. */
const LOOKS = 9
/** Distance within which a pin counts as staying where it is, m. */
const STAYS = 1e-6

const apart = (a: Triple, b: Triple) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
const isFlat = (points: readonly Triple[]) => points.every((p) => Math.abs(p[2] - (points[0] as Triple)[2]) < STAYS)
const isEven = (lengths: readonly number[]) => Math.max(...lengths) - Math.min(...lengths) < STAYS

/** Poses of one mechanism of a motion over its travel; none where it cannot follow. */
function posesOf(motion: MotionModel, index: number): readonly MechanismPose[] {
  const part = motion.parts[index]
  if (!part) return []
  const poses: MechanismPose[] = []
  for (let k = 0; k < LOOKS; k++) {
    const q = coordinatesAt(motion, (motion.span * k) / (LOOKS - 1))[index] as number
    if (!(q >= part.mechanism.low && q <= part.mechanism.high)) return []
    poses.push(part.mechanism.pose(q))
  }
  return poses
}

/** Diameter of the hinge's pin. */
function pinOf({ pin }: MotionSi): number | null {
  if (!pin) return null
  return pin.bolt ? bolts[pin.bolt].diameter : pin.pinDiameter
}

interface Pin {
  readonly name: string
  readonly at: Triple
}

/** Pins that share a place are one hole: feathers on one bolt. */
function merged(pins: readonly Pin[]): Pin[] {
  const places: Pin[][] = []
  for (const pin of pins) {
    const same = places.find(([first]) => first && apart(first.at, pin.at) < STAYS)
    if (same) same.push(pin)
    else places.push([pin])
  }
  return places.flatMap((same) => {
    const [first, last] = [same[0], same.at(-1)]
    if (!first || !last) return []
    return [{ name: same.length > 2 ? `${first.name} to ${last.name}` : same.map((p) => p.name).join(", "), at: first.at }]
  })
}

/** Holes on a plate, from its first one. */
function holes(pins: readonly Pin[], hinge: number | null): SheetHole[] {
  const [first] = pins
  if (!first) return []
  return pins.map(({ name, at }) => ({ name, x: at[0] - first.at[0], y: at[1] - first.at[1], pin: name === "hinge" ? hinge : null }))
}

/** The arm laid along x: its own pivots from its hinge; null where it has no further one. */
function armHoles(poses: readonly MechanismPose[], pin: number | null): SheetHole[] {
  const turning = (pose: MechanismPose) => {
    const hinge = pose.pins.find((p) => p.name === "hinge")
    const moving = pose.pins.find((p) => p.name === "moving pivot")
    if (!hinge || !moving) return null
    const line = Math.atan2(pose.tip[1] - hinge.at[1], pose.tip[0] - hinge.at[0])
    const [dx, dy] = [moving.at[0] - hinge.at[0], moving.at[1] - hinge.at[1]]
    return { x: dx * Math.cos(line) + dy * Math.sin(line), y: dy * Math.cos(line) - dx * Math.sin(line) }
  }
  const places = poses.map(turning)
  const [first] = places
  // a pin that slides along its arm is no hole
  if (!first || places.some((p) => !p || Math.hypot(p.x - first.x, p.y - first.y) > STAYS)) return []
  return [
    { name: "hinge", x: 0, y: 0, pin },
    { name: "moving pivot", ...first, pin: null },
  ]
}

/** Every part of a motion once: a mirrored one is there twice, left and right alike. */
function eachPart(judged: Judged): readonly {
  readonly motion: MotionSi
  readonly one: MotionSi["mechanisms"][number]
  readonly poses: readonly MechanismPose[]
}[] {
  return judged.motions.flatMap((model, i) => {
    const motion = judged.rig.motions[i] as MotionSi
    let at = 0
    return motion.mechanisms.map((one) => {
      const poses = posesOf(model, at)
      at += one.mirrored ? 2 : 1
      return { motion, one, poses }
    })
  })
}

/** Plates and arms to drill. */
export function platesOf(judged: Judged): SheetPlate[] {
  return eachPart(judged).flatMap(({ motion, one, poses }) => {
    const [first] = poses
    if (!first) return []
    const counted = { count: one.count, mirrored: one.mirrored ? one.count / 2 : 0 }
    const pin = pinOf(motion)
    const fixed = first.pins.filter(({ name, at }) =>
      poses.every((pose) => apart(at, pose.pins.find((p) => p.name === name)?.at ?? [Number.NaN, 0, 0]) < STAYS),
    )
    const frame = isFlat(fixed.map((p) => p.at)) ? holes(merged(fixed), pin) : []
    const arm = armHoles(poses, pin)
    const title = `${one.name} of ${motion.name}`
    return [
      ...(frame.length > 1 ? [{ name: `frame plate, ${title}`, ...counted, holes: frame }] : []),
      ...(arm.length > 1 ? [{ name: `arm, ${title}`, ...counted, holes: arm }] : []),
    ]
  })
}

/** Rods that keep their length while they move, pin to pin. */
export function rodsOf(judged: Judged): SheetCut[] {
  return eachPart(judged).flatMap(({ motion, one, poses }) => {
    const [first] = poses
    if (!first) return []
    return first.parts.flatMap((line, l): SheetCut[] => {
      if (!/^(rod|coupler)$/.test(line.name) || line.points.length !== 2) return []
      const lengths = poses.map((pose) => {
        const [a, b] = pose.parts[l]?.points ?? []
        return a && b ? apart(a, b) : Number.NaN
      })
      if (!isEven(lengths)) return []
      return [
        { what: `${line.name}, ${one.name}`, count: one.count, length: lengths[0] as number, of: motion.name, measured: "from pin to pin" },
      ]
    })
  })
}
