import type { NoSolution } from "../solver/index.js"
import { solveFactored } from "./lu.js"
import type { MechanismSi } from "./planar-data.js"
import { compile, type Model } from "./planar-model.js"
import { jacobian, rowGradient } from "./planar-rows.js"
import { couple, motion, type Pose } from "./planar-solve.js"

/** Greatest row sums of the Jacobian and of its inverse. */
export function norms(model: Model, pose: Pose): { readonly direct: number; readonly inverse: number } {
  const n = model.unknowns
  const rowSums = (get: (i: number, j: number) => number) =>
    Math.max(...Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => Math.abs(get(i, j))).reduce((a, b) => a + b, 0)))
  const j = jacobian(model, pose.q, pose.drive)
  const columns = Array.from({ length: n }, (_, k) =>
    solveFactored(
      pose.factors,
      Array.from({ length: n }, (_, i) => (i === k ? 1 : 0)),
    ),
  )
  return { direct: rowSums((i, k) => j[i * n + k] as number), inverse: rowSums((i, k) => columns[k]?.[i] as number) }
}

/** Force that every pin exerts on every bar it belongs to. */
export function pinForces(model: Model, pose: Pose, lambda: Float64Array) {
  const held = model.bodies.map((members) => new Map(members.map((point) => [point, [0, 0] as [number, number]])))
  const give = (body: number, point: number, fx: number, fy: number) => {
    const force = held[body]?.get(point)
    if (!force) return
    force[0] -= fx
    force[1] -= fy
  }
  model.rows.forEach((row, i) => {
    const l = lambda[i] as number
    rowGradient(row, pose.q, pose.drive, (point, gx, gy, isReference) => {
      if (row.kind === "actuator") return
      give(isReference && row.kind === "crank" ? row.refBody : row.body, point, l * gx, l * gy)
    })
  })
  for (const { from, to, body, torque } of model.torques) {
    const [fx, fy] = couple(pose.q, from, to, torque)
    give(body, to, fx, fy)
    give(body, from, -fx, -fy)
  }
  return held
}

/** All poses of a mechanism's motion with its compiled model; the plain kernel for envelopes and couplings. */
export function mechanismMotion(si: MechanismSi, steps: number): { readonly model: Model; readonly poses: readonly Pose[] } | NoSolution {
  const model = compile(si)
  const poses = motion(model, steps)
  return "noSolution" in poses ? poses : { model, poses }
}
