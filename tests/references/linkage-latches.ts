import { overCentreLatch } from "../../src/linkage/index.js"
import type { Check, RowInputs } from "../helpers/references.js"

const DEG = Math.PI / 180

/**
 * A symmetrical toggle pushed at its knee: pivot, knee and sliding end make a triangle of equal links, the spring standing for the
 * second one. Output over input follows from its force and its moment about the pivot.
 */
function toggleGain(degrees: number): number {
  const angle = degrees * DEG
  const out = overCentreLatch({
    fixedPivotDistance: 2 * Math.cos(angle),
    movingPivotRadius: 1,
    freeLength: 0,
    springRate: 1,
    clockwiseStop: 0.2,
    counterStop: Math.PI - angle,
    handleRadius: 1,
  })
  const { springForce, moment } = out.poses.at(-1) as (typeof out.poses)[number]
  return (springForce * Math.cos(angle)) / (moment / Math.cos(angle))
}

const gains: Check = (n: RowInputs) =>
  Object.fromEntries((n.angles_deg as number[]).map((angle) => [`gain_${angle}deg`, toggleGain(angle)]))

/** Checks of the rows on toggles and over-centre latches. */
export const latchChecks: Readonly<Record<string, Check>> = {
  "toggle-symmetric-numeric": gains,
  "toggle-multiplier-table": gains,
  "toggle-half-at-45-deg": gains,
  "toggle-overcentre-latch-numeric": (n) => {
    const { counter, poses } = overCentreLatch({
      fixedPivotDistance: n.pivot_to_anchor_mm / 1000,
      movingPivotRadius: n.arm_mm / 1000,
      freeLength: n.free_length_mm / 1000,
      springRate: n.spring_rate_N_per_mm * 1000,
      clockwiseStop: n.past_centre_deg * DEG,
      counterStop: n.past_centre_deg * DEG,
      handleRadius: n.handle_mm / 1000,
    })
    return {
      spring_force_N: poses.at(-1)?.springForce,
      holding_torque_N_mm: counter.holdingMoment * 1000,
      release_force_N: counter.releaseForce,
    }
  },
}
