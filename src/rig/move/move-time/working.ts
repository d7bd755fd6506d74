import { gaussFive } from "../../../numeric/index.js"
import { isNoSolution, type SiOf } from "../../../solver/index.js"
import type { RigDocument } from "../../document/document.js"
import { armModel } from "../../motion/arms.js"
import { type Direction, movePoint, solveMove } from "../move.js"
import { raiseDirection, wholeMove } from "../summary.js"

type Si = SiOf<RigDocument>
type Arms = NonNullable<Si["hinged"]>

/** The slowest point of the raise, where the working checks the motor's equation. */
export function slowestOf(rig: Si): { readonly current: number; readonly voltage: number; readonly speed: number } {
  const { model } = wholeMove(rig)
  const up = raiseDirection(rig)
  const solved = solveMove(model, up)
  if (isNoSolution(solved)) return { current: 0, voltage: 0, speed: 0 }
  const slowest = solved.points.reduce((a, b) => (b.speed < a.speed ? b : a))
  return { current: slowest.current, voltage: slowest.supply.voltage, speed: slowest.speed }
}

/** Steps and speeds at the five Gauss points between the splits, for the working's own sum of h/v. */
export function fineGrid(rig: Si, isRaise: boolean): { readonly widths: number[]; readonly speeds: number[] } {
  const { model } = wholeMove(rig)
  const up = raiseDirection(rig)
  const direction: Direction = isRaise ? up : up === 1 ? -1 : 1
  const solved = solveMove(model, direction)
  const [widths, speeds]: [number[], number[]] = [[], []]
  if (isNoSolution(solved)) return { widths, speeds }
  // two panels in each part: five points in one are 4e-9 off where the circuit's current is near its peak
  for (let i = 1; i < solved.splits.length; i++) {
    const [a, b] = [solved.splits[i - 1] as number, solved.splits[i] as number]
    for (const centre of [a + (b - a) / 4, b - (b - a) / 4])
      for (const [x, w] of gaussFive) {
        const point = movePoint(model, centre + (x * (b - a)) / 4, direction)
        widths.push((w * Math.abs(b - a)) / 4)
        speeds.push(point?.speed ?? 0)
      }
  }
  return { widths, speeds }
}

/** Rod length and angle between the pivots at both ends of the stroke. */
export function ends(rig: Si): readonly [{ length: number; angle: number }, { length: number; angle: number }] {
  const arms = rig.hinged as Arms
  const { hinge, fixedPivot, movingPivot, actuator } = arms
  const arm = armModel(arms)
  const toPivot = Math.atan2(fixedPivot.y - hinge.y, fixedPivot.x - hinge.x)
  const at = (stroke: number) => ({
    length: actuator.retractedLength + stroke,
    angle: (arm.angleAt(stroke) ?? 0) + movingPivot.angle - toPivot,
  })
  return [at(0), at(actuator.stroke)]
}
