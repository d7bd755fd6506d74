// The kernel: SI numbers in, values or a refusal out.

import { type NoSolution, refuse } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { chargeAt, emfAt } from "../discharge.js"
import { LEAD_RETURN, leadDuration, nickelTermination, nickelTimerFactor } from "./ends.js"
import { setUp, straightPieces } from "./problem.js"
import type { ChargeTime, ChargeTimeRefusal, Si } from "./types.js"

/** Charge put in over charge gained of nickel-metal hydride at a rate (multiples of the capacity per hour): 1.6 at 0.1, 1.2 at 1. */
export function nickelChargeFactor(rate: number): number {
  const share = Math.min(1, Math.max(0, Math.log10(rate / 0.1)))
  return 1.6 - 0.4 * share
}

/** What the last part of a lithium charge adds to charge over current by datasheets, s: from empty at least, at most. */
export const tail = { low: 20 * 60, high: 2 * 3600 } as const

/** Voltage above the chemistry's own at which a cell is over-charged, V: the tolerance that its datasheets print. */
export const chargeTolerance = (chemistry: Si["chemistry"]) => (chemistry === "lfp" ? 0.05 : chemistry === "lead" ? 0.2 / 6 : 0)

/** Highest charge voltage of a cell that is taken for meant, V. */
export const highestChargeVoltage = (si: Si) => Math.min(20, 1.1 * chemistries[si.chemistry].cellFullVoltage)

export function solve(si: Si): ChargeTime | NoSolution<ChargeTimeRefusal> {
  const { rechargeable, coldestCharge, lithiumIon, label } = chemistries[si.chemistry]
  if (!rechargeable)
    return refuse(
      "not-rechargeable",
      "Cells of this kind ({label}) must not be charged, not even with {shortBy current}: they can leak or burst. Take cells that are made for charging.",
      si.chargeCurrent,
      {},
      {},
      { label },
    )
  if (lithiumIon && coldestCharge !== null && si.cellTemperature < coldestCharge)
    return refuse(
      "too-cold",
      "At {given.cellTemperature temperature °C} lithium cells must not be charged: lithium plates out inside. Warm them to at least {nearest.cellTemperature temperature °C} first.",
      coldestCharge - si.cellTemperature,
      {},
      { cellTemperature: coldestCharge },
      { "given.cellTemperature": si.cellTemperature },
    )
  const { curve, capacity, resistance, limit, end } = setUp(si)
  const { chargeCurrent, startStateOfCharge } = si
  const simpleDuration = (capacity * (1 - startStateOfCharge)) / chargeCurrent
  const full = (greatest: number) =>
    refuse(
      "already-full",
      "At {given.startStateOfCharge ratio %} of its charge the pack is full for this charger, which has nothing to do from {maxStartStateOfCharge ratio %} on.",
      startStateOfCharge - 0.99 * greatest,
      { maxStartStateOfCharge: greatest },
      { startStateOfCharge: 0.99 * greatest },
      { "given.startStateOfCharge": startStateOfCharge },
    )
  if (si.chemistry === "nimh") {
    if (startStateOfCharge >= 1) return full(1)
    const rate = chargeCurrent / (capacity / 3600)
    const factor = nickelChargeFactor(rate)
    const minDuration = factor * simpleDuration
    const heat = chargeCurrent ** 2 * resistance * minDuration
    // the charge that is not taken up turns to heat at the cell's voltage
    const stored = straightPieces(curve, startStateOfCharge, 1).reduce(
      (sum, { a, b }) => sum + (capacity * (b - a) * (emfAt(curve, a) + emfAt(curve, b))) / 2,
      0,
    )
    return {
      minDuration,
      constantCurrentDuration: minDuration,
      constantVoltageDuration: 0,
      changeOverStateOfCharge: 1,
      endStateOfCharge: 1,
      energy: stored * factor + heat,
      heat,
      simpleDuration,
      durationRatio: factor,
      chargeIn: capacity * (1 - startStateOfCharge) * factor,
      likelyDuration: null,
      termination: {
        timer: nickelTimerFactor(rate) * simpleDuration,
        voltageDip: rate > nickelTermination.timerOnlyRate ? si.series * nickelTermination.voltageDip : null,
      },
    }
  }
  const stop = Math.min(end, chargeCurrent)
  const room = limit - stop * resistance
  const [, empty] = curve[0] as readonly [number, number]
  if (!(empty < room)) {
    const cellChargeVoltage = (1.001 * (emfAt(curve, startStateOfCharge) + stop * resistance)) / si.series
    return refuse(
      "insufficient-voltage",
      "A charger that holds {held voltage} and stops at {stop current} cannot charge even an empty pack, which has {empty voltage}. Set the charge voltage of this chemistry.",
      cellChargeVoltage * si.series - limit,
      { held: limit, stop, empty },
      startStateOfCharge < 1 && cellChargeVoltage <= highestChargeVoltage(si) ? { cellChargeVoltage } : {},
    )
  }
  const maxStartStateOfCharge = chargeAt(curve, room)
  if (startStateOfCharge >= maxStartStateOfCharge) return full(maxStartStateOfCharge)
  const changeOverStateOfCharge = Math.max(startStateOfCharge, chargeAt(curve, limit - chargeCurrent * resistance))
  const endStateOfCharge = Math.max(changeOverStateOfCharge, chargeAt(curve, room))
  const constantCurrentDuration = (capacity * (changeOverStateOfCharge - startStateOfCharge)) / chargeCurrent
  let [voltageTime, stored, heat] = [0, 0, chargeCurrent ** 2 * resistance * constantCurrentDuration]
  for (const { a, b } of straightPieces(curve, startStateOfCharge, changeOverStateOfCharge))
    stored += (capacity * (b - a) * (emfAt(curve, a) + emfAt(curve, b))) / 2
  for (const { a, b } of straightPieces(curve, changeOverStateOfCharge, endStateOfCharge)) {
    const [low, high] = [emfAt(curve, a), emfAt(curve, b)]
    // the last piece ends at the stopping current, whatever rounding makes of the difference
    const from = limit - low
    const to = Math.max(limit - high, stop * resistance)
    // ∫ ds/(V − E) over a straight piece: its length over the logarithmic mean of V − E
    const mean = from - to > 1e-9 * from ? (from - to) / Math.log1p((from - to) / to) : (from + to) / 2
    voltageTime += (capacity * resistance * (b - a)) / mean
    stored += (capacity * (b - a) * (low + high)) / 2
    heat += (capacity * (b - a) * (from + to)) / 2
  }
  const time = constantCurrentDuration + voltageTime
  const likely = lithiumIon
    ? { low: simpleDuration + tail.low * (1 - startStateOfCharge), high: simpleDuration + tail.high }
    : leadDuration(1 - startStateOfCharge, simpleDuration)
  return {
    minDuration: time,
    constantCurrentDuration,
    constantVoltageDuration: voltageTime,
    changeOverStateOfCharge,
    endStateOfCharge,
    energy: stored + heat,
    heat,
    simpleDuration,
    durationRatio: time / simpleDuration,
    chargeIn: capacity * (endStateOfCharge - startStateOfCharge) * (lithiumIon ? 1 : LEAD_RETURN),
    likelyDuration: { low: Math.max(time, likely.low), high: Math.max(time, likely.high) },
    termination: null,
  }
}
