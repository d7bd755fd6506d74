// What drives that stand still under current draw and give on their feed: the start of a motion, or one that is held.
import type { DriveLine } from "../drives/drive.js"
import type { MotionModel } from "../run/motion-model.js"
import type { Feed } from "../run/ride.js"
import { settle } from "../supply/settle.js"
import { type SupplyState, supplyState } from "../supply/tree.js"

/** All drives of a motion standing still under current. */
export interface StandingStart {
  /** Voltage at the drives before they draw anything, V, and resistance of what feeds them from the last regulated voltage on, Ω. */
  readonly openVoltage: number
  readonly feedResistance: number
  /** Current that all would draw together if nothing limited it, and that they get, A. */
  readonly inrush: number
  readonly current: number
  /** Effort that one gives at that current, N or N·m. */
  readonly effort: number
  /** Whether a limit of the supply holds that current down. */
  readonly held: boolean
  /** Its line at that voltage. */
  readonly line: DriveLine
  /** The tree while they draw it; null without one. */
  readonly state: SupplyState | null
}

/** Settles the feed for a current of all drives together; the voltage there, or null where the supply finds no state. */
function voltageAt(feed: Feed, current: number, state: SupplyState | null, drawn: Float64Array): number | null {
  if (!("model" in feed) || !state) return "voltage" in feed ? feed.voltage : null
  drawn.set(feed.others)
  drawn[feed.bus] = (drawn[feed.bus] as number) + current
  settle(feed.model, drawn, state)
  return state.failed >= 0 ? null : (state.volts[feed.bus] as number)
}

/** Puts all drives of a motion on their feed while none of them turns. */
export function standingStart(motion: MotionModel, feed: Feed): StandingStart {
  const { drive, drives } = motion
  const { effortConstant, backEmfConstant, windingResistance, frictionCurrent, circuitCurrent } = drive
  const line: DriveLine = { effortConstant, backEmfConstant, windingResistance, frictionCurrent, circuitCurrent }
  const state = "model" in feed ? supplyState(feed.model) : null
  const drawn = new Float64Array("model" in feed ? feed.model.names.length : 0)
  const openVoltage = voltageAt(feed, 0, state, drawn) ?? 0
  const feedResistance = "model" in feed ? (feed.model.converters[feed.bus] ? 0 : (feed.model.path[feed.bus] as number)) : 0
  const standing = windingResistance / drives
  const circuits = drives * circuitCurrent
  const inrush = (openVoltage + circuits * standing) / (standing + feedResistance)
  // standing still they are a resistance beside their circuits: the most that the supply still gives them
  let [low, high] = [0, inrush]
  for (let k = 0; k < 60 && high - low > 1e-12 * inrush; k++) {
    const mid = (low + high) / 2
    const volts = voltageAt(feed, mid, state, drawn)
    if (volts !== null && volts >= (mid - circuits) * standing) low = mid
    else high = mid
  }
  const beyond = voltageAt(feed, low * (1 + 1e-6), state, drawn)
  const held = beyond === null || ("model" in feed && state !== null && state.limits[feed.bus] !== "none")
  const voltage = voltageAt(feed, low, state, drawn) ?? 0
  if (voltage > drive.minVoltage) drive.lineAt?.(voltage, line)
  const each = Math.min(low / drives, drive.currentLimit ?? Number.POSITIVE_INFINITY)
  const effort = voltage > drive.minVoltage ? Math.max(0, (each - line.circuitCurrent - line.frictionCurrent) * line.effortConstant) : 0
  return { openVoltage, feedResistance, inrush, current: each * drives, effort, held, line, state }
}
