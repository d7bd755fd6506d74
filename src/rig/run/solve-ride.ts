// A ride solved: its time, its energies and the most that is met on its way, from polynomials between the kinks.
import { integralOver, integralTo, type Piecewise, piecewise } from "../../numeric/index.js"
import type { Limit, SupplyModel } from "../supply/tree.js"
import { LET_GO } from "./effort-curve.js"
import { atEffort, formChanges, LOOKS, type Ride, type Stop, stopBefore, tabledPoint, travelOf } from "./ride.js"

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
  /** The parts of its energy, and its time, over a metre or radian of travel. */
  readonly perTravel: Piecewise
  /** Estimated error of its time, s. */
  readonly error: number
  readonly evaluations: number
  readonly met: Met
  /** What stops it after all, at a place that no look met; null where nothing does. */
  readonly stop: Stop | null
}

/** What was met on the way, at every place that was evaluated. */
export interface Met {
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

function integrand(one: Ride, met: Met): (travel: number, out: Float64Array) => number {
  const { motion, feed, supply, drawn } = one
  const { drives } = motion
  return (travel, out) => {
    const { rate, current, voltage, effort, limitedBy, trouble, form } = tabledPoint(one, travel)
    if (trouble !== "none") return -1
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
    const winding = drives * (current - one.line.circuitCurrent) ** 2 * one.line.windingResistance
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
    return form
  }
}

/** Energy of motion against the energy moved: where no energy is moved at all, whatever moves has all of it. */
export function inertiaShare({ totals, met }: Pick<SolvedRide, "totals" | "met">): number {
  const moved = Math.max(Math.abs(totals.work), totals.source - totals.others - totals.loads)
  return moved > 0 ? met.kinetic / moved : met.kinetic > 0 ? 1 : 0
}

/** Last coefficients that are let go of the time. */
const TIME = 1e-12
/** Those of energies, and how little of the largest an energy may be and still be held to its own. */
const ENERGY = 1e-11
const LEAST = 1e-3

/** Solves a ride that nothing was seen to stop: travels evenly spread, times and energies by polynomials between the kinks. */
export function solveRide(one: Ride, samples = 40): SolvedRide {
  const { motion, way, curve } = one
  const { span } = motion
  const met: Met = {
    peakEffort: Number.NEGATIVE_INFINITY,
    peakCurrent: 0,
    peakSourceCurrent: 0,
    minVoltage: Number.POSITIVE_INFINITY,
    kinetic: 0,
    limitedBy: "none",
  }
  const f = integrand(one, met)
  const size = integrals.length
  const middle = new Float64Array(size)
  f(span / 2, middle)
  const largest = Math.max(...middle.subarray(1, size - 1).map(Math.abs))
  const perTravel = piecewise(f, 0, span, {
    nodes: 16,
    relative: integrals.map((_, i) => (i === 0 ? TIME : ENERGY)),
    floor: integrals.map((_, i) => (i === 0 || i === size - 1 ? (middle[0] as number) : LEAST * largest)),
    splits: formChanges(one),
  })
  for (const effort of curve ? [curve.maxEffort, curve.minEffort] : []) {
    if (atEffort(one, effort).trouble !== "none") break
    one.effort.inertia = 0
    note(one, met)
  }
  const { pieces } = perTravel
  const total = (component: number) => pieces.reduce((sum, piece) => sum + integralOver(piece, size, component), 0)
  const duration = total(0)
  const travels = Array.from({ length: samples + 1 }, (_, i) => travelOf(one, (span * i) / samples))
  // pieces in order, travels too: each is passed once
  let [before, next] = [0, 0]
  const fromLow = Array.from({ length: samples + 1 }, (_, i) => {
    const x = (span * i) / samples
    for (let piece = pieces[next]; piece && next < pieces.length - 1 && piece.b <= x; piece = pieces[next]) {
      before += integralOver(piece, size, 0)
      next++
    }
    const piece = pieces[next]
    return i === samples || !piece ? duration : before + integralTo(piece, size, 0, x)
  })
  const times = way === 1 ? fromLow : fromLow.map((time) => duration - time).reverse()
  const { failed } = perTravel
  return {
    travels,
    times,
    totals: Object.fromEntries(integrals.map((name, i) => [name, total(i)])) as Record<IntegralName, number>,
    perTravel,
    error: (perTravel.rest * TIME + (curve?.table?.rest ?? 0) * LET_GO[0]) * duration,
    evaluations: perTravel.evaluations,
    met,
    stop: failed === null ? null : stopBefore(one, failed, span / LOOKS),
  }
}
