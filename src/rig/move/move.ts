import { type ActuatorConstants, actuatorConstants } from "../../drive/index.js"
import { goldenMinimum, integrateVector, theRoot } from "../../numeric/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import type { HingedArms } from "../document/document.js"
import type { ArmModel } from "../motion/arms.js"
import type { Circuit, CircuitPoint } from "../power/circuit.js"

/** What drives one move: arms, actuator constants and a supply. */
export interface MoveModel {
  readonly arms: SiOf<HingedArms>
  readonly arm: ArmModel
  readonly constants: ActuatorConstants
  readonly circuit: Circuit
  /** Total currents at which the supply's efficiency curve bends, A. */
  readonly breaks: readonly number[]
}

/** Direction of the rod: out or in. */
export type Direction = 1 | -1

/** Everything about one position of a move. */
export interface MovePoint {
  readonly stroke: number
  readonly angle: number
  readonly lever: number
  /** Force against the motion at one rod, N; negative where the load helps. */
  readonly force: number
  /** Current of one actuator, A. */
  readonly current: number
  /** Speed of the rod, m/s. */
  readonly speed: number
  readonly supply: CircuitPoint
}

/** Constants of the rig's actuator. */
export function constantsOf(arms: SiOf<HingedArms>): ActuatorConstants {
  return actuatorConstants(arms.actuator)
}

/** Force against the motion at one rod, N: F = d·(dU/dθ)/(dL/dθ) + M_f/|dL/dθ|. */
export function opposingForce(model: MoveModel, angle: number, lever: number, direction: Direction): number {
  return (direction * model.arm.momentAt(angle)) / lever + model.arms.hingeFriction / Math.abs(lever)
}

/** Voltage, current and speed at a force against the motion; a helping load never takes the current below friction. */
function electrics(model: MoveModel, force: number): { current: number; speed: number; supply: CircuitPoint | null } {
  const { constants, circuit, arms } = model
  // a self-locking screw takes a helping load up as friction: the motor still turns it
  const current = constants.frictionCurrent + Math.max(0, force) / constants.forceConstant
  const supply = circuit(current * arms.count)
  return { current, supply, speed: supply ? (supply.voltage - current * constants.windingResistance) / constants.backEmfConstant : 0 }
}

/** The state of a move at a rod position, or null where the mechanism cannot close or no supply is possible. */
export function movePoint(model: MoveModel, stroke: number, direction: Direction): MovePoint | null {
  const angle = model.arm.angleAt(stroke)
  if (angle === null) return null
  const lever = model.arm.leverAt(angle)
  const force = opposingForce(model, angle, lever, direction)
  const { current, speed, supply } = electrics(model, force)
  return supply && { stroke, angle, lever, force, current, speed, supply }
}

/** The state at a position between two at which the mechanism closes: it closes there too, and its supply is the same. */
function pointWithin(model: MoveModel, stroke: number, direction: Direction): MovePoint {
  const point = movePoint(model, stroke, direction)
  if (!point) throw new RangeError(`No state of the move at a stroke of ${stroke} m.`)
  return point
}

/** Maximum force the actuator can move at all on this supply, N. */
export function stallForce(model: MoveModel): number {
  const speedAt = (force: number) => electrics(model, force).speed
  const idle = electrics(model, 0)
  if (!idle.supply || !(idle.speed > 0)) return 0
  // a supply's voltage never rises with its current, so a current that the winding alone takes all of it for has no speed left
  const high = (model.constants.forceConstant * idle.supply.voltage) / model.constants.windingResistance
  return theRoot(speedAt, 0, high, 1e-9, "force at which the actuator stalls").x
}

const SAMPLES = 160

/** Where the move's equations change form (a limit starts to bind, a spring goes slack): there the range is split. */
function kinks(model: MoveModel, direction: Direction, strokes: readonly number[]): number[] {
  const segment = (current: number) => model.breaks.filter((b) => current > b).length
  const signature = (stroke: number): string => {
    const point = movePoint(model, stroke, direction)
    if (!point) return "open"
    return `${point.supply.limitedBy} ${point.force > 0} ${model.arm.springStretchAt(point.angle) > 0} ${model.arms.hingeFriction > 0 ? point.lever > 0 : ""} ${segment(point.current * model.arms.count)}`
  }
  const found: number[] = []
  let before = strokes[0] as number
  let form = signature(before)
  for (const stroke of strokes.slice(1)) {
    const here = signature(stroke)
    if (here !== form) {
      let [low, high] = [before, stroke]
      while (high - low > 1e-13 * (1 + high)) {
        const mid = (low + high) / 2
        if (mid <= low || mid >= high) break
        if (signature(mid) === form) low = mid
        else high = mid
      }
      found.push((low + high) / 2)
    }
    before = stroke
    form = here
  }
  return found
}

/** Quantities integrated over the time of a move, in this order. */
export const integrals = [
  "time",
  "source",
  "sourceLoss",
  "lineLoss",
  "converterLoss",
  "loadLineLoss",
  "winding",
  "drive",
  "rod",
  "limited",
] as const
type IntegralName = (typeof integrals)[number]

/** A move solved: points, times and energies. */
export interface SolvedMove {
  readonly points: readonly MovePoint[]
  /** Time at each point, s. */
  readonly times: readonly number[]
  readonly totals: Readonly<Record<IntegralName, number>>
  /** Abscissae at which the range was split. */
  readonly splits: readonly number[]
  readonly error: number
  readonly evaluations: number
}

function integrandOf(model: MoveModel, direction: Direction): (stroke: number, out: Float64Array) => void {
  const { count } = model.arms
  const { windingResistance } = model.constants
  return (stroke, out) => {
    const point = movePoint(model, stroke, direction)
    if (!point) {
      out.fill(Number.NaN)
      return
    }
    const { current, force, speed, supply } = point
    const perMetre = 1 / speed
    const winding = count * current ** 2 * windingResistance
    const rod = count * force * speed
    out[0] = perMetre
    out[1] = supply.sourcePower * perMetre
    out[2] = supply.sourceLoss * perMetre
    out[3] = supply.lineLoss * perMetre
    out[4] = supply.converterLoss * perMetre
    out[5] = supply.loadLineLoss * perMetre
    out[6] = winding * perMetre
    // what the winding turns into motion and the rod does not give on: gears and screw
    out[7] = (count * current * supply.voltage - winding - rod) * perMetre
    out[8] = rod * perMetre
    out[9] = supply.limitedBy === "none" ? 0 : perMetre
  }
}

/** Strokes of a move in order of travel. */
function travel(stroke: number, direction: Direction, samples: number): number[] {
  const steps = Array.from({ length: samples + 1 }, (_, i) => (stroke * i) / samples)
  return direction === 1 ? steps : steps.reverse()
}

/** Looks for a place where the move cannot be: triangle open, dead point passed, no supply, stall. */
function obstacle(model: MoveModel, direction: Direction): NoSolution | null {
  const stroke = model.arms.actuator.stroke
  const strokes = travel(stroke, 1, SAMPLES)
  const points: MovePoint[] = []
  for (const s of strokes) {
    const angle = model.arm.angleAt(s)
    if (angle === null) {
      const length = model.arms.actuator.retractedLength + s
      return refuse(
        "cannot-close",
        `the actuator cannot reach: at ${mm(length)} between pins (stroke ${mm(s)}) hinge and pivots form no triangle`,
        length,
        { stroke: s, length },
      )
    }
    const lever = model.arm.leverAt(angle)
    const first = points[0]?.lever ?? lever
    if (!(lever * first > 0))
      return refuse(
        "dead-point",
        `the actuator passes a dead point at stroke ${mm(s)}: its line runs through the hinge and it cannot turn the arm`,
        Math.abs(lever),
        { stroke: s, angle },
      )
    const point = movePoint(model, s, direction)
    if (!point)
      return refuse("no-supply", `the converter gives no output at stroke ${mm(s)}: its input is outside its limits`, 0, {
        stroke: s,
        angle,
      })
    points.push(point)
  }
  const slowest = points.reduce((a, b) => (b.speed < a.speed ? b : a))
  const step = stroke / SAMPLES
  const near = (s: number) => pointWithin(model, s, direction)
  const refined = near(goldenMinimum((s) => near(s).speed, Math.max(0, slowest.stroke - step), Math.min(stroke, slowest.stroke + step)))
  const worst = refined.speed < slowest.speed ? refined : slowest
  if (worst.speed > 0) return null
  const most = stallForce(model)
  return refuse(
    "insufficient-force",
    `the actuator stalls at ${formatQuantity("angle", worst.angle)} (stroke ${mm(worst.stroke)}): it needs ${formatQuantity("force", worst.force)} and this supply lets it give ${formatQuantity("force", most)}`,
    Math.max(0, worst.force - most),
    { stroke: worst.stroke, angle: worst.angle, force: worst.force, available: most },
    most > 0 ? { force: most, massFactor: most / worst.force } : {},
  )
}

const mm = (metres: number) => formatQuantity("length", metres, "mm")

/** Seconds of a move only, for the waterfall; null where it stalls. */
export function moveSeconds(model: MoveModel, direction: Direction): number | null {
  const stroke = model.arms.actuator.stroke
  const strokes = travel(stroke, 1, 48)
  for (const s of strokes) if (!((movePoint(model, s, direction)?.speed ?? 0) > 0)) return null
  const splits = [0, ...kinks(model, direction, strokes), stroke]
  // between two samples it may stall too
  let [total, stalls] = [0, false]
  for (let i = 1; i < splits.length; i++) {
    const part = integrateVector(
      (s, out) => {
        const { speed } = pointWithin(model, s, direction)
        if (!(speed > 0)) stalls = true
        out[0] = 1 / speed
      },
      splits[i - 1] as number,
      splits[i] as number,
      1,
      1e-10,
    )
    total += part.value[0] as number
  }
  return stalls ? null : total
}

/** Solves a move: points evenly spread over the stroke, times and energies by adaptive quadrature between kinks. */
export function solveMove(model: MoveModel, direction: Direction, samples = 40): SolvedMove | NoSolution {
  const blocked = obstacle(model, direction)
  if (blocked) return blocked
  const stroke = model.arms.actuator.stroke
  const bends = kinks(model, direction, travel(stroke, 1, SAMPLES))
  const integrand = integrandOf(model, direction)
  const strokes = travel(stroke, direction, samples)
  const totals = new Float64Array(integrals.length)
  const times = [0]
  const splits = [strokes[0] as number]
  let [error, evaluations] = [0, 0]
  for (let i = 1; i < strokes.length; i++) {
    const [from, to] = [strokes[i - 1] as number, strokes[i] as number]
    const inside = bends.filter((b) => (b - from) * (b - to) < 0).sort((a, b) => direction * (a - b))
    const edges = [from, ...inside, to]
    for (let k = 1; k < edges.length; k++) {
      const [low, high] = [Math.min(edges[k - 1] as number, edges[k] as number), Math.max(edges[k - 1] as number, edges[k] as number)]
      const part = integrateVector(integrand, low, high, integrals.length, 1e-12)
      for (let j = 0; j < totals.length; j++) totals[j] = (totals[j] as number) + (part.value[j] as number)
      error += part.error
      evaluations += part.evaluations
      splits.push(edges[k] as number)
    }
    times.push(totals[0] as number)
  }
  const named = Object.fromEntries(integrals.map((name, i) => [name, totals[i] as number])) as Record<IntegralName, number>
  return { points: strokes.map((s) => movePoint(model, s, direction) as MovePoint), times, totals: named, splits, error, evaluations }
}
