// A ride solved: its time, its energies and the most that is met on its way, by adaptive quadrature between the kinks.
import { integrateVector } from "../../numeric/index.js"
import type { Limit, SupplyModel } from "../supply/tree.js"
import { type firstStop, kinks, LOOKS, type Ride, ridePoint, stopBetween, travelOf } from "./ride.js"

/** Parts of the energy of a ride, J, in this order; `time` first, s, and `limited`, s at a limit, last. */
export const integrals = [
  "time",
  "source",
  "insideSource",
  "wires",
  "converters",
  "loads",
  "others",
  "winding",
  "drive",
  "work",
  "limited",
] as const
export type IntegralName = (typeof integrals)[number]

/** A ride solved. */
export interface SolvedRide {
  readonly travels: readonly number[]
  readonly times: readonly number[]
  readonly totals: Readonly<Record<IntegralName, number>>
  readonly splits: readonly number[]
  readonly error: number
  readonly evaluations: number
  readonly met: Met
  /** What stops it after all, at a place that no look met; null where nothing does. */
  readonly stop: ReturnType<typeof firstStop>
}

/** What was met on the way, at every place that was evaluated. */
export interface Met {
  /** First place along the way that stops it after all; infinite where none does. */
  first: number
  peakEffort: number
  /** Current of one drive, and of the source that feeds it, A. */
  peakCurrent: number
  peakSourceCurrent: number
  minVoltage: number
  /** Energy of motion, J. */
  kinetic: number
  limitedBy: Limit
}

/** Notes the state of a ride at the place looked at last. */
export function note({ motion, point, effort, feed, supply }: Ride, met: Met): void {
  const { drives } = motion
  met.peakEffort = Math.max(met.peakEffort, point.effort)
  met.peakCurrent = Math.max(met.peakCurrent, point.current)
  met.minVoltage = Math.min(met.minVoltage, point.voltage)
  met.kinetic = Math.max(met.kinetic, (drives * effort.inertia * point.rate * point.rate) / 2)
  const fed = "model" in feed && supply ? (supply.sourceAmps[feed.model.sourceOf[feed.bus] as number] as number) : drives * point.current
  met.peakSourceCurrent = Math.max(met.peakSourceCurrent, fed)
  if (met.limitedBy === "none") met.limitedBy = point.limitedBy
}

function integrand(one: Ride, met: Met): (travel: number, out: Float64Array) => void {
  const { motion, feed, supply, drawn } = one
  const { drives } = motion
  return (travel, out) => {
    const { rate, current, voltage, effort, limitedBy, trouble } = ridePoint(one, travel)
    if (trouble !== "none") {
      met.first = Math.min(met.first, one.way === 1 ? travel : motion.span - travel)
      out.fill(Number.NaN)
      return
    }
    note(one, met)
    const per = 1 / rate
    let [source, inside, wires, converters, loads, others] = [drives * voltage * current, 0, 0, 0, 0, 0]
    if ("model" in feed && supply) {
      const { model } = feed
      source = 0
      for (let s = 0; s < model.sources.length; s++) {
        const amps = supply.sourceAmps[s] as number
        const { openVoltage, resistance } = model.sources[s] as SupplyModel["sources"][number]
        source += openVoltage * amps
        inside += amps * amps * resistance
      }
      for (let i = 0; i < model.names.length; i++) {
        const amps = supply.runAmps[i] as number
        const volts = supply.volts[i] as number
        wires += amps * amps * (model.resistance[i] as number)
        if (model.converters[i]) converters += (supply.inputVolts[i] as number) * amps - volts * (supply.outAmps[i] as number)
        loads +=
          volts * (model.steady[i] as number) + volts * volts * (model.conductance[i] as number) + volts * (supply.powerAmps[i] as number)
        others += volts * ((drawn[i] as number) - (i === feed.bus ? drives * current : 0))
      }
    }
    const winding = drives * current * current * one.line.windingResistance
    const work = drives * effort * rate
    out[0] = per
    out[1] = source * per
    out[2] = inside * per
    out[3] = wires * per
    out[4] = converters * per
    out[5] = loads * per
    out[6] = others * per
    out[7] = winding * per
    // what the winding turns into motion and the output does not give on: gears and screw
    out[8] = (drives * current * voltage - winding - work) * per
    out[9] = work * per
    out[10] = limitedBy === "none" ? 0 : per
  }
}

/** Solves a ride that nothing was seen to stop: travels evenly spread, times and energies by adaptive quadrature between the kinks. */
export function solveRide(one: Ride, samples = 40): SolvedRide {
  const { span } = one.motion
  const bends = kinks(one)
  const met: Met = {
    first: Number.POSITIVE_INFINITY,
    peakEffort: Number.NEGATIVE_INFINITY,
    peakCurrent: 0,
    peakSourceCurrent: 0,
    minVoltage: Number.POSITIVE_INFINITY,
    kinetic: 0,
    limitedBy: "none",
  }
  const f = integrand(one, met)
  const size = integrals.length
  const totals = new Float64Array(size)
  const travels = Array.from({ length: samples + 1 }, (_, i) => travelOf(one, (span * i) / samples))
  const times = [0]
  const splits = [travels[0] as number]
  let [error, evaluations] = [0, 0]
  for (let i = 1; i < travels.length; i++) {
    const [from, to] = [travels[i - 1] as number, travels[i] as number]
    const inside = bends.filter((b) => (b - from) * (b - to) < 0).sort((a, b) => one.way * (a - b))
    const edges = [from, ...inside, to]
    for (let k = 1; k < edges.length; k++) {
      const [a, b] = [edges[k - 1] as number, edges[k] as number]
      const part = integrateVector(f, Math.min(a, b), Math.max(a, b), size, 1e-12)
      for (let j = 0; j < size; j++) totals[j] = (totals[j] as number) + (part.value[j] as number)
      error += part.error
      evaluations += part.evaluations
      splits.push(b)
    }
    times.push(totals[0] as number)
  }
  return {
    travels,
    times,
    totals: Object.fromEntries(integrals.map((name, i) => [name, totals[i] as number])) as Record<IntegralName, number>,
    splits,
    error,
    evaluations,
    met,
    stop: met.first < span ? stopBetween(one, Math.max(0, met.first - span / LOOKS), met.first) : null,
  }
}
