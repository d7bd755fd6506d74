import { type Caution, caution, inconsistent, isNoSolution, type NoSolution, type SiOf, type Solver, solver } from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { withNearest } from "../nearest.js"
import { jalon, norton, virtualWork } from "../sources.js"
import { mechanismFaults } from "./check.js"
import type { MechanismInput } from "./data.js"
import { mechanismFields } from "./fields.js"
import { barName, type Model } from "./model.js"
import { driverKnobs, mechanismMotion, norms, pinForces } from "./motion.js"
import { type PlanarLinkage, type PlanarLinkageCaution, type PlanarLinkageRefusal, planarOutput } from "./output.js"
import { allForces, driverEfforts, multipliers, type Pose, pointAccelerations, pointRates } from "./solve.js"

/** Input of {@link planarLinkage}. */
export interface PlanarLinkageInput extends MechanismInput {
  /** Settings of the motion that are listed between start and end; with 0 the end alone is answered. [n; whole 0 to 720; default 0] */
  steps?: number
  /** Point whose path is wanted. [text of 1 to 100 characters; optional] */
  trace?: string | null
}

const at = (q: Float64Array, point: number) => [q[2 * point] as number, q[2 * point + 1] as number] as const
const between = (q: Float64Array, from: number, to: number) => {
  const [a, b] = [at(q, from), at(q, to)]
  return [b[0] - a[0], b[1] - a[1]] as const
}
const cross = (a: readonly [number, number], b: readonly [number, number]) => a[0] * b[1] - a[1] * b[0]
const dot = (a: readonly [number, number], b: readonly [number, number]) => a[0] * b[0] + a[1] * b[1]

/** Effort of a driver told apart by its kind. */
const effortOf = (kind: "crank" | "actuator", effort: number) => ({
  torque: kind === "crank" ? effort : null,
  force: kind === "actuator" ? effort : null,
})

function solve(si: SiOf<PlanarLinkageInput>, trace?: Partial<PlanarTrace>): PlanarLinkage | NoSolution<PlanarLinkageRefusal> {
  const out = kernel(si, trace)
  return isNoSolution(out) ? withNearest(out, planarLinkage, (changed) => kernel(changed), si, driverKnobs(si, si.steps)) : out
}

function kernel(si: SiOf<PlanarLinkageInput>, trace?: Partial<PlanarTrace>): PlanarLinkage | NoSolution<PlanarLinkageRefusal> {
  const moved = mechanismMotion(si, si.steps)
  if ("noSolution" in moved) return moved
  const { model, poses } = moved
  const pose = poses[poses.length - 1] as Pose
  const rates = model.drivers.map((d) => d.speed)
  const changes = model.drivers.map((d) => d.acceleration)
  const v = pointRates(model, pose, rates)
  const a = pointAccelerations(model, pose, v, rates, changes)
  const lambda = multipliers(model, pose)
  const { direct, inverse } = norms(model, pose)
  if (trace) Object.assign(trace, { model, pose, direct, inverse } satisfies PlanarTrace)
  const effortsAt = poses.map((p) => driverEfforts(model, p, p === pose ? lambda : multipliers(model, p)))
  const traced = si.trace === null ? -1 : model.names.indexOf(si.trace)
  const sliderRows = model.rows.flatMap((row, i) => (row.kind === "slider" ? [{ row, lambda: lambda[i] as number }] : []))
  return {
    mobility: model.unknowns - (model.rows.length - model.drivers.length),
    conditioning: 1 / (direct * inverse),
    points: model.names.map((name, i) => {
      const [[x, y], [speedX, speedY], [accelerationX, accelerationY]] = [at(pose.q, i), at(v, i), at(a, i)]
      return { name, x, y, speedX, speedY, accelerationX, accelerationY }
    }),
    bars: si.bars.map((bar, k) => {
      const [from, to] = (model.bodies[k] as readonly number[]).slice(0, 2) as [number, number]
      const [line, rate, change] = [between(pose.q, from, to), between(v, from, to), between(a, from, to)]
      const squared = dot(line, line)
      return {
        name: barName(bar),
        angle: Math.atan2(line[1], line[0]),
        speed: cross(line, rate) / squared,
        acceleration: cross(line, change) / squared,
        length: Math.sqrt(squared),
      }
    }),
    sliders: sliderRows.map(({ row, lambda: sideForce }, k) => {
      const [line, rate, change] = [pose.q, v, a].map((q) => between(q, row.from, row.to)) as [Pair, Pair, Pair]
      const [reach, reachRate, reachChange] = [pose.q, v, a].map((q) => between(q, row.from, row.point)) as [Pair, Pair, Pair]
      const slider = si.sliders[k]
      return {
        name: slider?.name ?? `${slider?.point} on ${slider?.from}-${slider?.to}`,
        position: dot(line, reach) / row.length,
        speed: (dot(rate, reach) + dot(line, reachRate)) / row.length,
        acceleration: (dot(change, reach) + 2 * dot(rate, reachRate) + dot(line, reachChange)) / row.length,
        sideForce,
      }
    }),
    drivers: model.drivers.map((d, i) => ({
      name: d.name,
      angle: d.kind === "crank" ? (pose.drive[i] as number) : null,
      length: d.kind === "actuator" ? (pose.drive[i] as number) : null,
      ...effortOf(d.kind, effortsAt[poses.length - 1]?.[i] as number),
    })),
    pins: pinForces(model, pose, lambda).flatMap((members, k) =>
      [...members].map(([point, [forceX, forceY]]) => ({
        bar: barName(si.bars[k] as (typeof si.bars)[number]),
        point: model.names[point] as string,
        forceX,
        forceY,
        force: Math.hypot(forceX, forceY),
      })),
    ),
    path: traced < 0 ? [] : poses.map((p) => ({ x: at(p.q, traced)[0], y: at(p.q, traced)[1] })),
    efforts: poses.flatMap((_, step) =>
      model.drivers.map((d, i) => ({ step, driver: d.name, ...effortOf(d.kind, effortsAt[step]?.[i] as number) })),
    ),
    iterations: pose.iterations,
    residual: pose.residual,
  }
}
type Pair = readonly [number, number]

/** What the kernel found on its way, for the working. */
interface PlanarTrace {
  readonly model: Model
  /** The end pose. */
  readonly pose: Pose
  readonly direct: number
  readonly inverse: number
}

/** Forward route: work of all loads for a unit motion of each driver, at the end pose. */
function workOf({ model, pose }: PlanarTrace): number[] {
  const force = allForces(model, pose.q)
  return model.drivers.map((_, k) => {
    const unit = pointRates(
      model,
      pose,
      model.drivers.map((_, i) => (i === k ? 1 : 0)),
    )
    return unit.reduce((sum, u, i) => sum + u * (force[i] as number), 0)
  })
}

function cautions(si: SiOf<PlanarLinkageInput>, out: PlanarLinkage): Caution<PlanarLinkageCaution>[] {
  return [
    pinchCaution("The bars of a linkage"),
    ...(si.loads.length + si.torques.length > 0 ? [fallsCaution("A load that the drivers hold")] : []),
    ...(out.conditioning < 1e-3
      ? [
          caution(
            "near-singular",
            "caution",
            "The mechanism is close to a pose where the drivers lose hold of it (conditioning {conditioning}, under 0.001): forces in bars and pins grow without limit there, and small errors of length move points a lot.",
            jalon,
            { conditioning: out.conditioning },
          ),
        ]
      : []),
  ]
}

/**
 * Any planar mechanism of pins, bars, sliders and drivers, given as data: pose, motion along one
 * branch, velocities, accelerations, path of a point, pin forces and driver effort.
 *
 * Formula: the coordinates of all moving points satisfy one equation per bar, (|Δ|² − l²)/(2·l) = 0, two per carried
 * point, one per slider, (line × reach)/l = h, and one per driver. Newton's method from the sketch, or from places
 * around it where it does not close; then the motion is followed in steps that shrink until the points' paths go on
 * smoothly from step to step and the change of the Jacobian J, J⁻¹·ΔJ, stays below one, so that neither one loop nor
 * several at once pass a toggle in a step. Branches that cross at less than a few degrees may be taken for one another.
 * J·q̇ = −∂Φ/∂t gives velocities, once more differentiated accelerations; Jᵀ·λ = −F gives what every constraint
 * carries, and the effort of each driver by virtual work. Mobility f = 2·points − bars − 2·carried − sliders. Lengths
 * left out are those of the sketch. Angles in rad from the x axis, torque in N·m counter-clockwise, forces in N.
 * Friction, mass and play are left out: give weights as loads. A force at a pin belongs to no single bar.
 *
 * Refuses `under-constrained`, `over-constrained`, `singular`, `cannot-close` and `dead-point` where the
 * motion ends before its drivers do. Redundant bars that only fit at
 * exact lengths, such as a third parallel crank, count as over-constrained.
 *
 * **Inputs**
 * - `pivots`: fixed pivots [list of 1 to 60]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `x`: x [x; −1 to 1 km]
 *   - `y`: y [y; −1 to 1 km]
 * - `points`: moving points, as sketched [list of 1 to 60]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `x`: x [x; −1 to 1 km]
 *   - `y`: y [y; −1 to 1 km]
 * - `bars`: bars [list of 1 to 200]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `length`: length [l; 0.01 mm to 1 km; optional]
 * - `carried`: points fixed to a bar [list of 0 to 100; default none]
 *   - `point`: point [text of 1 to 100 characters]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `along`: along the bar [u; −1 to 1 km; optional]
 *   - `across`: to the left of the bar [w; −1 to 1 km; optional]
 * - `sliders`: sliders [list of 0 to 100; default none]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `point`: point [text of 1 to 100 characters]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `offset`: to the left of the line [h; −1 to 1 km; optional]
 * - `cranks`: rotary drivers [list of 0 to 20; default none]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `referenceFrom`: reference line from [text of 1 to 100 characters; optional]
 *   - `referenceTo`: reference line to [text of 1 to 100 characters; optional]
 *   - `start`: angle at the start [theta_0; −57295.8° to 57295.8°; optional]
 *   - `end`: angle at the end [theta_1; −57295.8° to 57295.8°; optional]
 *   - `speed`: speed [omega; −9549.3 to 9549.3 rpm; default 0]
 *   - `acceleration`: acceleration [alpha; −5.72958e7 to 5.72958e7 °/s²; default 0]
 *   - `referenceFrom` and `referenceTo` only together
 * - `actuators`: linear drivers [list of 0 to 20; default none]
 *   - `name`: name [text of 1 to 100 characters; optional]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `start`: length at the start [s_0; 0.01 mm to 1 km; optional]
 *   - `end`: length at the end [s_1; 0.01 mm to 1 km; optional]
 *   - `speed`: speed [v; −1000 to 1000 m/s; default 0]
 *   - `acceleration`: acceleration [a; −1000000 to 1000000 m/s²; default 0]
 * - `loads`: forces [list of 0 to 200; default none]
 *   - `point`: point [text of 1 to 100 characters]
 *   - `forceX`: force along x [F_x; −1000 to 1000 kN; default 0]
 *   - `forceY`: force along y [F_y; −1000 to 1000 kN; default 0]
 * - `torques`: torques [list of 0 to 100; default none]
 *   - `from`: from point [text of 1 to 100 characters]
 *   - `to`: to point [text of 1 to 100 characters]
 *   - `torque`: torque [M; −1000000 to 1000000 N m]
 * - `steps`: steps listed of the motion [n; whole 0 to 720; default 0]
 * - `trace`: point to trace [text of 1 to 100 characters; optional]
 *
 * **Results**
 *
 * `mobility`: degrees of freedom without drivers [f]; `conditioning`: distance from singular [kappa; as a fraction];
 * `points`: points [list]; `bars`: bars [list]; `sliders`: sliders [list]; `drivers`: drivers [list]; `pins`: force of
 * the pins on the bars [list]; `path`: path [list]; `efforts`: driver effort over the motion [list]; `iterations`:
 * iterations [number]; `residual`: largest constraint error [m].
 *
 * **Symbols of the working**
 *
 * n_p: moving points; n_b: bars; n_c: carried points; n_s: sliders; N_J: largest row sum of the Jacobian; N_I: largest
 * row sum of its inverse; l_b: length of each bar as given or sketched [m]; x_b: each bar's run in x, solved [m]; y_b:
 * each bar's run in y, solved [m]; Q: effort of each driver, N·m or N; W: work of all loads per unit motion of each
 * driver, N·m or N.
 *
 * **Sources**
 * - J. García de Jalón, E. Bayo (Springer): Kinematic and Dynamic Simulation of Multibody Systems, 1994, chapters 2
 *   and 3 (natural coordinates; position, velocity and acceleration problems) (not verified against the document)
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the mechanism is under- or over-constrained, singular or cannot be assembled
 * @example
 * ```ts
 * import { planarLinkage } from 'alula/linkage'
 * const wing = planarLinkage({
 *   pivots: [{ name: 'O', x: 0, y: 0 }, { name: 'Q', x: '90 mm', y: 0 }],
 *   points: [{ name: 'A', x: 0, y: '25 mm' }, { name: 'B', x: '70 mm', y: '57 mm' }],
 *   bars: [
 *     { from: 'O', to: 'A', length: '25 mm' },
 *     { from: 'A', to: 'B', length: '80 mm' },
 *     { from: 'Q', to: 'B', length: '60 mm' },
 *   ],
 *   cranks: [{ from: 'O', to: 'A', start: '70 deg', speed: 3 }],
 * })
 * wing.bars[2].angle // => 1.73577
 * wing.bars[2].speed // => 0.900015
 * ```
 */
export const planarLinkage: Solver<PlanarLinkageInput, PlanarLinkage, PlanarLinkageRefusal, PlanarLinkageCaution> = /* @__PURE__ */ solver<
  PlanarLinkageInput,
  PlanarLinkage,
  PlanarLinkageRefusal,
  PlanarLinkageCaution,
  PlanarTrace
>("planarLinkage", "Any flat mechanism of pins, bars, sliders and drivers", solve, () => ({
  input: {
    ...mechanismFields,
    steps: {
      kind: "number",
      symbol: "n",
      label: "steps listed of the motion",
      whole: true,
      min: 0,
      max: 720,
      typical: [0, 24],
      default: 0,
    },
    trace: { kind: "text", label: "point to trace", min: 1, max: 100, default: null },
  },
  output: planarOutput,
  example: {
    pivots: [
      { name: "O", x: 0, y: 0 },
      { name: "Q", x: "90 mm", y: 0 },
    ],
    points: [
      { name: "A", x: "9 mm", y: "23 mm" },
      { name: "B", x: "80 mm", y: "59 mm" },
    ],
    bars: [
      { name: "crank", from: "O", to: "A" },
      { name: "rod", from: "A", to: "B" },
      { name: "wing", from: "Q", to: "B" },
    ],
    cranks: [{ from: "O", to: "A", end: "130 deg", speed: 2 }],
    loads: [{ point: "B", forceY: "-3 N" }],
    steps: 8,
  },
  formulae: [
    { symbol: "n_p", kind: "number", meaning: "moving points", given: (si) => si.points.length },
    { symbol: "n_b", kind: "number", meaning: "bars", given: (si) => si.bars.length },
    { symbol: "n_c", kind: "number", meaning: "carried points", given: (si) => si.carried.length },
    { symbol: "n_s", kind: "number", meaning: "sliders", given: (si) => si.sliders.length },
    { symbol: "f", meaning: "coordinates less constraints", is: "2 * n_p - n_b - 2 * n_c - n_s" },
    { symbol: "N_J", kind: "number", meaning: "largest row sum of the Jacobian", given: (_si, _out, { direct }) => direct as number },
    { symbol: "N_I", kind: "number", meaning: "largest row sum of its inverse", given: (_si, _out, { inverse }) => inverse as number },
    { symbol: "kappa", meaning: "distance from singular", is: "1 / (N_J * N_I)" },
    {
      symbol: "l_b",
      kind: "length",
      meaning: "length of each bar as given or sketched",
      given: (_si, _out, { model }) => (model as Model).rows.flatMap((row) => (row.kind === "bar" ? [row.length] : [])),
    },
    {
      symbol: "x_b",
      kind: "length",
      meaning: "each bar's run in x, solved",
      given: (_, out) => out.bars.map((b) => b.length * Math.cos(b.angle)),
    },
    {
      symbol: "y_b",
      kind: "length",
      meaning: "each bar's run in y, solved",
      given: (_, out) => out.bars.map((b) => b.length * Math.sin(b.angle)),
    },
    { left: "sum(x_b .* x_b) + sum(y_b .* y_b)", right: "sum(l_b .* l_b)", meaning: "every bar has its length" },
    {
      symbol: "Q",
      kind: "number",
      meaning: "effort of each driver, N·m or N",
      given: (_, out) => out.drivers.map((d) => d.torque ?? d.force ?? 0),
    },
    {
      symbol: "W",
      kind: "number",
      meaning: "work of all loads per unit motion of each driver, N·m or N",
      given: (_si, _out, trace) => workOf(trace as PlanarTrace),
    },
    {
      left: "1 + sum(abs(Q)) + sum(Q)",
      right: "1 + sum(abs(Q)) - sum(W)",
      meaning: "virtual work of drivers and loads adds up to zero",
      source: virtualWork,
    },
  ],
  sources: [jalon, norton],
  check: (si) => {
    const faults = mechanismFaults(si)
    if (faults.length || si.trace === null) return faults
    const names = [...si.pivots, ...si.points].map((p) => p.name)
    return names.includes(si.trace)
      ? []
      : [inconsistent(["trace"], "'{trace}'", "a point ({points})", { trace: si.trace, points: names.join(", ") })]
  },
  cautions,
}))
