// An arm moved by a crank over a coupler: what a four-bar linkage and a servo with its pushrod have in common.
import { type Assembly, closedPose, fourBarPose, fourBarRates, fourBarToggles, wrapAngle } from "../../linkage/index.js"
import { type NoSolution, refuse } from "../../solver/index.js"
import { type ArmModel, addArm, armLine, armMoment, hingeReaction } from "./arm.js"
import { addBody, effortBeyond, massCentre, type PlaneBody, weightMoment } from "./body.js"
import { emptyState, type Mechanism, type Reaction, type Triple } from "./mechanism.js"
import { turningPart } from "./moving.js"

/** A crank, a coupler and the arm that they move. */
export interface CrankedArm {
  readonly arm: ArmModel
  /** Pivot of the crank. */
  readonly pivot: { readonly x: number; readonly y: number }
  readonly crank: number
  readonly coupler: number
  /** Where the coupler takes hold of the arm. */
  readonly movingPivot: { readonly radius: number; readonly angle: number }
  readonly assembly: Assembly
  /** Coordinate at the start, and angle of the crank where the coordinate is 0. */
  readonly start: number
  readonly zero: number
  readonly crankBody: PlaneBody
  readonly couplerBody: PlaneBody
  /** Names of pivot, crank and coupler. */
  readonly names: { readonly pivot: string; readonly crank: string; readonly coupler: string; readonly pin: string }
}

const HALF_TURN = Math.PI
/** Nearest that a crank comes to where its pin meets the hinge, rad: there the arm is free to turn. */
const FREE = 1e-11
/** Travel of the crank up to which links close at one place only, rad: rounding of their lengths leaves as much. */
const ONE_PLACE = 1e-6

/** Angles of the crank around `start` between which the links close; infinite where they close all the way round. */
function crankRange(ground: number, crank: number, coupler: number, output: number, start: number): readonly [low: number, high: number] {
  const { extended, folded: inLine } = fourBarToggles(ground, crank, coupler, output)
  const folded = inLine === null ? null : Math.max(inLine, FREE)
  const within = wrapAngle(start)
  const turns = start - within
  if (extended === null && folded === null) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  if (folded === null) return [turns - (extended as number), turns + (extended as number)]
  const last = extended ?? 2 * HALF_TURN - folded
  if (within >= 0 || extended === null) {
    const first = within < 0 ? turns - 2 * HALF_TURN : turns
    return [first + folded, first + last]
  }
  return [turns - last, turns - folded]
}

/** The mechanism. Coordinate: turn of the crank from where `zero` has it. */
export function crankedArm(part: CrankedArm): Mechanism | NoSolution {
  const { arm, pivot, crank, coupler, movingPivot, assembly, crankBody, couplerBody, names } = part
  const output = movingPivot.radius
  const line = Math.atan2(arm.hinge.y - pivot.y, arm.hinge.x - pivot.x)
  const ground = Math.hypot(arm.hinge.x - pivot.x, arm.hinge.y - pivot.y)
  // angle of the crank from the line of the fixed pivots, less the coordinate
  const before = part.zero - line
  const apart = fourBarPose(ground, crank, coupler, output, part.start + before, assembly)
  if (typeof apart === "number")
    return refuse(
      "cannot-close",
      "At the start the coupler misses its pin by {shortBy length}: change its length, or where the crank starts.",
      // pins that coincide leave the arm free: a hair of length parts them
      Math.max(apart, 1e-6),
      { startAngle: part.start },
    )
  const range = crankRange(ground, crank, coupler, output, part.start + before)
  // it closes at the start: rounding must not leave that outside
  const [low, high] = [Math.min(range[0] - before, part.start), Math.max(range[1] - before, part.start)]
  if (high - low < ONE_PLACE)
    return refuse(
      "cannot-close",
      "The links close at one place only, where they lie in one line: no turn of the {crank} is left. Change one length by more than {shortBy length}, so that they reach past each other.",
      1e-6 * (ground + crank + coupler + output),
      { startAngle: part.start },
      {},
      { crank: names.crank },
    )
  // the diagonal from the arm's hinge to the crank pin, followed without leaps
  const diagonal = (t2: number) => {
    const [x, y] = [ground * Math.cos(t2), ground * Math.sin(t2)]
    return crank < ground ? HALF_TURN + Math.atan2(-crank * Math.sin(t2), ground - crank * Math.cos(t2)) : t2 + Math.atan2(y, crank - x)
  }
  const side = assembly === "open" ? HALF_TURN / 2 : -HALF_TURN / 2
  /** Angle of the output, and of the arm, in the mechanism's own frame. */
  const followed = (t2: number, outputAngle: number) => {
    const middle = diagonal(t2) - side
    return middle + wrapAngle(outputAngle - middle) + line - movingPivot.angle
  }
  const at: Mechanism["at"] = (q, state) => {
    const t2 = q + before
    const { couplerAngle, outputAngle } = closedPose(ground, crank, coupler, output, t2, assembly)
    const { couplerRate, outputRate, couplerBend, outputBend } = fourBarRates(crank, coupler, output, t2, couplerAngle, outputAngle)
    const angle = q + part.zero
    const [cx, cy] = [crank * Math.cos(angle), crank * Math.sin(angle)]
    addBody(state, crankBody, angle, 0, 0, 0, 0, 1, 0)
    addBody(state, couplerBody, couplerAngle + line, -cy, cx, -cx, -cy, couplerRate, couplerBend)
    addArm(state, arm, outputAngle + line - movingPivot.angle, outputRate, outputBend)
  }
  return {
    travel: "angle",
    start: part.start,
    low,
    high,
    deadPoints: [low, high].filter(Number.isFinite),
    shows: "angle",
    at,
    pose(q) {
      const t2 = q + before
      const { couplerAngle, outputAngle } = closedPose(ground, crank, coupler, output, t2, assembly)
      const { outputRate } = fourBarRates(crank, coupler, output, t2, couplerAngle, outputAngle)
      const angle = followed(t2, outputAngle)
      const { from, tip, tipRate } = armLine(arm, angle, outputRate)
      const turned = q + part.zero
      const base: Triple = [pivot.x, pivot.y, 0]
      const crankPin: Triple = [pivot.x + crank * Math.cos(turned), pivot.y + crank * Math.sin(turned), 0]
      const held = angle + movingPivot.angle
      const pin: Triple = [from[0] + output * Math.cos(held), from[1] + output * Math.sin(held), 0]
      return {
        parts: [
          { name: "arm", points: [from, tip], closed: false },
          { name: "horn of the arm", points: [from, pin], closed: false },
          { name: names.crank, points: [base, crankPin], closed: false },
          { name: names.coupler, points: [crankPin, pin], closed: false },
        ],
        pins: [
          { name: "hinge", at: from },
          { name: names.pivot, at: base },
          { name: names.pin, at: crankPin },
          { name: "moving pivot", at: pin },
        ],
        tip,
        tipRate,
        ...massCentre([
          { body: arm, x: from[0], y: from[1], angle },
          { body: crankBody, x: pivot.x, y: pivot.y, angle: turned },
          { body: couplerBody, x: crankPin[0], y: crankPin[1], angle: couplerAngle + line },
        ]),
        shown: angle,
      }
    },
    carries(q) {
      const t2 = q + before
      const { couplerAngle, outputAngle } = closedPose(ground, crank, coupler, output, t2, assembly)
      const { outputRate, outputBend } = fourBarRates(crank, coupler, output, t2, couplerAngle, outputAngle)
      const hinge: Triple = [arm.hinge.x, arm.hinge.y, 0]
      return turningPart([0, 0, 1], followed(t2, outputAngle), hinge, { rate: outputRate, bend: outputBend }, ["hinge"])
    },
    reactions(q, effort, down): readonly Reaction[] {
      const t2 = q + before
      const { couplerAngle, outputAngle } = closedPose(ground, crank, coupler, output, t2, assembly)
      const [armAngle, along] = [outputAngle + line - movingPivot.angle, couplerAngle + line]
      const [ox, oy] = [output * Math.cos(outputAngle + line), output * Math.sin(outputAngle + line)]
      const [bx, by] = [coupler * Math.cos(along), coupler * Math.sin(along)]
      // what the coupler gives the arm: it balances the arm about its hinge, and the coupler about the crank pin
      const [about, across] = [-armMoment(arm, armAngle, down), weightMoment(couplerBody, along, down)]
      const size = ox * by - oy * bx
      let [fx, fy] = [(bx * about - ox * across) / size, (by * about - oy * across) / size]
      // an effort beyond what holds everything pushes along the coupler
      const state = emptyState()
      at(q, state)
      const beyond = effortBeyond(effort, state, down)
      if (beyond !== 0) {
        const thrust = beyond / (crank * Math.sin(couplerAngle - t2))
        fx += (thrust * bx) / coupler
        fy += (thrust * by) / coupler
      }
      // across the plane the coupler rests on both its pins
      const share = couplerBody.mass === 0 ? 0 : couplerBody.along / coupler
      const pushed: Triple = [fx, fy, share * down[2]]
      const given: Triple = [couplerBody.mass * down[0] - fx, couplerBody.mass * down[1] - fy, (couplerBody.mass - share) * down[2]]
      const held: Triple = [given[0] + crankBody.mass * down[0], given[1] + crankBody.mass * down[1], given[2] + crankBody.mass * down[2]]
      return [
        { name: "hinge", force: hingeReaction(arm, armAngle, down, pushed) },
        { name: names.pivot, force: held },
        { name: names.pin, force: given },
        { name: "moving pivot", force: pushed },
      ]
    },
  }
}
