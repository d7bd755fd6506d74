// The kernel: SI numbers in, values out.
import { DAY, leadTopping, type Standing, standingCells, standingFactor, YEAR, yearlyAgeing } from "./data.js"
import type { PackStorage, Si } from "./types.js"

/** One end of the range at the temperature of the place: what goes in the first day, and the rate after it, with the circuit's. */
function lossOf(si: Si, standing: Standing) {
  const factor = standingFactor(si.cells, si.storageTemperature, standing.temperature)
  return { firstDay: standing.firstDay * factor, rate: standing.rate * factor }
}

/** What the cells lose by themselves in a time, share of a full charge. */
function lost({ firstDay, rate }: ReturnType<typeof lossOf>, time: number): number {
  return firstDay * Math.min(1, time / DAY) + rate * time
}

/** Time in which a charge is lost by the cells and the circuit together. */
export function timeToLose(si: Si, share: number, end: "low" | "high"): number {
  const { firstDay, rate } = lossOf(si, standingCells[si.cells][end])
  const steady = rate + si.circuitCurrent / si.capacity
  const inFirstDay = share / (firstDay / DAY + steady)
  return inFirstDay <= DAY ? inFirstDay : (share - firstDay) / steady
}

export function solve(si: Si): PackStorage {
  const { low, high } = standingCells[si.cells]
  const selfDischarge = { low: lost(lossOf(si, low), si.duration), high: lost(lossOf(si, high), si.duration) }
  const circuitShare = (si.circuitCurrent * si.duration) / si.capacity
  const left = (loss: number) => Math.max(0, si.startStateOfCharge - loss - circuitShare)
  const untilLow = timeToLose(si, Math.max(0, si.startStateOfCharge - si.minStateOfCharge), "high")
  const lead = si.cells === "lead-sealed" || si.cells === "lead-flooded"
  return {
    stateOfCharge: { low: left(selfDischarge.high), high: left(selfDischarge.low) },
    selfDischarge,
    circuitShare,
    topUpInterval: lead
      ? Math.min(untilLow, leadTopping.interval / Math.max(1, standingFactor(si.cells, si.storageTemperature, leadTopping.temperature)))
      : untilLow,
    capacityShare:
      si.cells === "lithium"
        ? Math.max(0, 1 - yearlyAgeing(si.startStateOfCharge, si.storageTemperature) * Math.sqrt(si.duration / YEAR))
        : null,
  }
}
