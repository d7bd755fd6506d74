// The lean at the hips that brings the weight above them back over them.
import type { SiOf } from "../../../solver/index.js"
import { type SegmentTable, upperBodies } from "../../body/data-segments.js"
import type { Balance, CarriedLoadInput } from "./types.js"

export const GRAVITY = 9.80665

/** First moment of the weight above the hips about them, by a table, kg·m; where it is not positive no lean balances. */
export function momentAbove(si: SiOf<CarriedLoadInput>, table: SegmentTable, height: number): number {
  const { hipHeight, upperMass, upperHeight } = upperBodies[table]
  return upperMass * si.bodyMass * upperHeight * si.stature + si.rigMass * (height - hipHeight * si.stature)
}

/** Lean at the hips that brings the weight above them back over them: tan φ = −m·x / (f·M·h + m·z), x and z the rig's centre
 * ahead of and above the hips. */
export function balance(si: SiOf<CarriedLoadInput>, table: SegmentTable, forward: number, height: number): Balance {
  const { bodyMass, stature, rigMass } = si
  const { hipHeight, backHeight, backMass, backCentre } = upperBodies[table]
  const up = height - hipHeight * stature
  const down = momentAbove(si, table, height)
  const lean = Math.atan2(-rigMass * forward, down)
  const [s, c] = [Math.sin(lean), Math.cos(lean)]
  const back = backHeight * stature
  return {
    lean,
    backLeaning: GRAVITY * (backMass * bodyMass * (backCentre * stature - back) * s + rigMass * (forward * c + (up - back) * s)),
    residual: Math.abs(down * s + rigMass * forward * c) / (down + rigMass * Math.abs(forward)),
  }
}
