// The kernel: SI numbers in, values out.
import { ratedCurrentOf, SHORT, shortLimit, withstands } from "../withstand.js"
import { publishedShare, shareIn, TEST_RATIO, TRIP_RATIO } from "./data.js"
import type { ResettableFuse, Si } from "./types.js"

export const tripOf = (si: Si) => si.tripCurrent ?? TRIP_RATIO * si.holdCurrent
export const testOf = (si: Si) => si.testCurrent ?? TEST_RATIO * si.holdCurrent
/** Strongest fault that is looked at, A: where none is given, the strongest that it may break. */
export const faultOf = (si: Si) => si.faultCurrent ?? si.maxFaultCurrent

/** Hold current at an air temperature over the rated one: the lowest and the highest. */
export function holdShare(si: Si, temperature: number) {
  if (si.holdCurve === null) return publishedShare(temperature)
  const share = shareIn(
    si.holdCurve.map((point) => [point.temperature, point.share] as const),
    temperature,
  )
  return { low: share, high: share }
}

/** Time constant of its warming, s: what makes the slowest part of its sheet trip at the test current just then. */
export function timeConstant(si: Si): number {
  return si.tripTime / -Math.log1p(-((tripOf(si) / testOf(si)) ** 2))
}

/** Longest time to trip at a current, s, with the current that trips it for sure; infinite up to that. */
export const timeToTrip = (constant: number, current: number, trip: number): number =>
  current > trip ? -constant * Math.log1p(-((trip / current) ** 2)) : Number.POSITIVE_INFINITY

/** Currents between two, in equal ratios. */
const between = (low: number, high: number, count: number) =>
  Array.from({ length: count }, (_, i) => low * (high / low) ** (i / (count - 1)))

export function solve(si: Si): ResettableFuse {
  const holdLimit = si.holdCurrent * holdShare(si, si.maxDeviceTemperature).low
  const tripLimit = tripOf(si) * holdShare(si, si.minDeviceTemperature).high
  const constant = timeConstant(si)
  const slowCurrent = tripLimit / Math.sqrt(-Math.expm1(-SHORT / constant))
  const ampacity = ratedCurrentOf(si)
  const continuousCurrent = Math.min(ampacity, si.datasheetAmpacity ?? ampacity)
  const fault = faultOf(si)
  const carriesLoad = si.current <= holdLimit
  const protectsWire = Math.min(slowCurrent, fault) <= continuousCurrent
  // what trips in less than 5 s has the wire's short-time limit; both curves are smooth in between
  const short = fault > slowCurrent ? between(slowCurrent * (1 + 1e-9), fault, 9) : []
  const survivesFault =
    protectsWire && short.every((current) => withstands(si, current, timeToTrip(constant, current, tripLimit), shortLimit(si)))
  const bearsVoltage = si.sourceVoltage <= si.maxVoltage
  const withinRating = bearsVoltage && si.faultCurrent === null ? null : bearsVoltage && fault <= si.maxFaultCurrent
  const time = timeToTrip(constant, fault, tripLimit)
  return {
    holdLimit,
    requiredHoldCurrent: si.current / holdShare(si, si.maxDeviceTemperature).low,
    tripLimit,
    slowCurrent,
    ampacity,
    continuousCurrent,
    carriesLoad,
    protectsWire,
    tripDuration: Number.isFinite(time) ? time : null,
    survivesFault,
    withinRating,
    coordinated: carriesLoad && protectsWire && survivesFault && withinRating === true && Number.isFinite(time),
    drop: { low: si.current * si.minResistance, high: si.current * si.maxResistance },
    heat: si.current ** 2 * si.maxResistance,
    trippedCurrent: si.trippedPower === null ? null : si.trippedPower / si.sourceVoltage,
  }
}
