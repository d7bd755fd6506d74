import type { NoSolution } from "../../solver/index.js"
import { solveFactored } from "../lu.js"
import type { MechanismSi } from "./data.js"
import { compile, type Model } from "./model.js"
import type { MotionRefusal } from "./output.js"
import { jacobian } from "./rows.js"
import { isHalt, motion, type Pose } from "./solve.js"

/** Largest row sums of the Jacobian and of its inverse. */
export function norms(model: Model, pose: Pose): { readonly direct: number; readonly inverse: number } {
  const n = model.unknowns
  const j = jacobian(model, pose.q, pose.drive)
  const rowSum = new Float64Array(n)
  const unit = new Float64Array(n)
  let direct = 0
  for (let i = 0; i < n; i++) {
    let sum = 0
    for (let k = 0; k < n; k++) sum += Math.abs(j[i * n + k] as number)
    direct = Math.max(direct, sum)
    // one column of the inverse at a time
    unit[i] = 1
    const column = solveFactored(pose.factors, unit)
    unit[i] = 0
    for (let k = 0; k < n; k++) rowSum[k] = (rowSum[k] as number) + Math.abs(column[k] as number)
  }
  return { direct, inverse: rowSum.reduce((most, v) => Math.max(most, v), 0) }
}

/** All poses of a mechanism's motion with its compiled model; the plain kernel for envelopes and couplings. */
export function mechanismMotion(
  si: MechanismSi,
  steps: number,
): { readonly model: Model; readonly poses: readonly Pose[]; readonly first: Pose } | NoSolution<MotionRefusal> {
  const model = compile(si)
  const poses = motion(model, steps)
  if (isHalt(poses)) return poses.refusal
  return { model, poses: steps === 0 ? poses.slice(1) : poses, first: poses[0] as Pose }
}

/**
 * What may be changed where a mechanism cannot reach a pose: each driver's start and end, to just before what was reached;
 * clear of the dead point by so many radians, or by that share of the length.
 */
export function driverKnobs(si: MechanismSi, steps: number, clearance = 1e-3): Record<string, number> {
  const halt = motion(compile(si), steps)
  if (!isHalt(halt)) return {}
  const paths = [...si.cranks.map((_, i) => `cranks.${i}`), ...si.actuators.map((_, i) => `actuators.${i}`)]
  return Object.fromEntries(
    halt.reached.flatMap((reached, i) => {
      const clear = i < si.cranks.length ? clearance : clearance * reached
      const value = reached - Math.sign((halt.towards[i] as number) - reached) * clear
      return [`${paths[i]}.start`, `${paths[i]}.end`].map((key) => [key, value])
    }),
  )
}
