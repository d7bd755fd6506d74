import { gaussFive } from "../../numeric/index.js"
import { type Direction, type MoveModel, movePoint } from "./move.js"

/** A move calculated fast, for searches that try thousands: no kinks located, no energies. */
export interface QuickMove {
  readonly time: number
  readonly peakForce: number
  /** Current of all actuators together: maximum, and mean over time, A. */
  readonly peakCurrent: number
  readonly meanCurrent: number
  readonly peakSourceCurrent: number
  readonly meanSourceCurrent: number
  readonly minVoltage: number
  /** Voltage at the actuators, mean over time, V. */
  readonly meanVoltage: number
  /** Heat in the supply's parts over the move, J. */
  readonly sourceLoss: number
  readonly lineLoss: number
  readonly converterLoss: number
  readonly loadLineLoss: number
  readonly winding: number
  /** Angles at both ends of the stroke, rad. */
  readonly from: number
  readonly to: number
}

/** Calculates a move at Gauss points in `panels` equal parts of the stroke; null where it stalls, opens or passes a dead point. */
export function quickMove(model: MoveModel, direction: Direction, panels = 4): QuickMove | null {
  const { arms, constants } = model
  const stroke = arms.actuator.stroke
  const ends = [movePoint(model, 0, direction), movePoint(model, stroke, direction)] as const
  const [first, last] = ends
  if (!first || !last || !(first.lever * last.lever > 0)) return null
  const sums = { time: 0, current: 0, drawn: 0, voltage: 0, source: 0, line: 0, converter: 0, load: 0, winding: 0 }
  let peakForce = Math.max(first.force, last.force)
  let peakCurrent = arms.count * Math.max(first.current, last.current)
  let peakSourceCurrent = Math.max(first.supply.sourceCurrent, last.supply.sourceCurrent)
  let minVoltage = Math.min(first.supply.voltage, last.supply.voltage)
  if (!(first.speed > 0 && last.speed > 0)) return null
  const width = stroke / panels
  for (let i = 0; i < panels; i++)
    for (const [x, weight] of gaussFive) {
      const point = movePoint(model, width * (i + 0.5 + x / 2), direction)
      if (!point || !(point.speed > 0) || !(point.lever * first.lever > 0)) return null
      const { supply, current, force, speed } = point
      const seconds = (weight * width) / 2 / speed
      const total = arms.count * current
      sums.time += seconds
      sums.current += total * seconds
      sums.drawn += supply.sourceCurrent * seconds
      sums.voltage += supply.voltage * seconds
      sums.source += supply.sourceLoss * seconds
      sums.line += supply.lineLoss * seconds
      sums.converter += supply.converterLoss * seconds
      sums.load += supply.loadLineLoss * seconds
      sums.winding += arms.count * current ** 2 * constants.windingResistance * seconds
      peakForce = Math.max(peakForce, force)
      peakCurrent = Math.max(peakCurrent, total)
      peakSourceCurrent = Math.max(peakSourceCurrent, supply.sourceCurrent)
      minVoltage = Math.min(minVoltage, supply.voltage)
    }
  const [from, to] = direction === 1 ? [first.angle, last.angle] : [last.angle, first.angle]
  return {
    time: sums.time,
    peakForce,
    peakCurrent,
    meanCurrent: sums.current / sums.time,
    peakSourceCurrent,
    meanSourceCurrent: sums.drawn / sums.time,
    minVoltage,
    meanVoltage: sums.voltage / sums.time,
    sourceLoss: sums.source,
    lineLoss: sums.line,
    converterLoss: sums.converter,
    loadLineLoss: sums.load,
    winding: sums.winding,
    from,
    to,
  }
}
