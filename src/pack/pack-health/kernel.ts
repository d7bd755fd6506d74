// The kernel: SI numbers in, values or a refusal out.

import { type NoSolution, refuse } from "../../solver/index.js"
import { capacityFactor, chemistries, resistanceFactor } from "../chemistry.js"
import { capacityShareByDuration } from "../data-rate.js"
import { ageFields } from "../fields.js"
import type { PackHealth, PackHealthRefusal, Si } from "./types.js"

/** Share of the printed capacity under which a pack counts as worn, and resistance against new above which it does. */
export const worn = { capacityShare: 0.8, resistanceRatio: 2 } as const

/** Temperatures at which printed figures are measured, °C; elsewhere the carrying over is not in the uncertainties. */
export const inTestRoom = (temperature: number): boolean => temperature >= 15 && temperature <= 25

/** Factor from the half-width of an even spread to an uncertainty of about 95 %. */
export const widen = 2 / Math.sqrt(3)

/** `sound` or `worn` where the whole band lies on one side of the limit. */
const side = (value: number, uncertainty: number, limit: number, wornBelow: boolean) => {
  const over = wornBelow ? limit - value : value - limit
  return over > uncertainty ? "worn" : over < -uncertainty ? "sound" : "cannot-tell"
}

/** What each figure says of the pack. */
export function verdictsOf(out: Omit<PackHealth, "verdict">): readonly string[] {
  const found: string[] = []
  if (out.capacityShare !== null && out.capacityShareUncertainty !== null)
    found.push(side(out.capacityShare, out.capacityShareUncertainty, worn.capacityShare, true))
  if (out.resistanceRatio !== null && out.resistanceRatioUncertainty !== null)
    found.push(side(out.resistanceRatio, out.resistanceRatioUncertainty, worn.resistanceRatio, false))
  return found
}

/** Voltages without load that so many cells can have, V. */
export const voltagesOf = ({ series, chemistry }: Si) => ({
  lowest: series * chemistries[chemistry].cellCutOffVoltage,
  highest: series * chemistries[chemistry].cellFullVoltage,
})

/** Whether the voltage is one that so many cells can have, within what the readings may be off by. */
export function voltageFits(si: Si, out: Omit<PackHealth, "verdict">): boolean {
  const { lowest, highest } = voltagesOf(si)
  const off = si.voltageUncertainty + si.lightCurrent * out.resistanceUncertainty
  return out.openCircuitVoltage >= lowest - off && out.openCircuitVoltage <= highest + off
}

/** Whether the cells are no better against new ones than any can be. */
export const figuresFit = (out: Omit<PackHealth, "verdict">): boolean =>
  (out.capacityShare ?? 0) - (out.capacityShareUncertainty ?? 0) <= ageFields.capacityShare.max &&
  (out.resistanceRatio ?? 1) + (out.resistanceRatioUncertainty ?? 0) >= ageFields.resistanceRatio.min

export function solve(si: Si): PackHealth | NoSolution<PackHealthRefusal> {
  const { series, parallel, chemistry, lightCurrent, heavyCurrent, lightVoltage } = si
  const step = heavyCurrent - lightCurrent
  const resistance = (lightVoltage - si.heavyVoltage) / step
  if (!(resistance > si.interconnectResistance))
    return refuse(
      "links-exceed-reading",
      "The two readings make {resistance resistance} in all, no more than the {given.interconnectResistance resistance} given for links and leads: nothing is left for the cells. Read both voltages at the same place, and give only the links that lie behind it.",
      si.interconnectResistance - 0.99 * resistance,
      { resistance },
      { interconnectResistance: 0 },
      { "given.interconnectResistance": si.interconnectResistance },
    )
  const resistanceUncertainty =
    (widen / step) *
    Math.hypot(Math.SQRT2 * si.voltageUncertainty, resistance * si.currentUncertainty * Math.hypot(lightCurrent, heavyCurrent))
  const perCell = parallel / (series * resistanceFactor(chemistry, si.cellTemperature))
  const cellResistance = (resistance - si.interconnectResistance) * perCell
  const cellResistanceUncertainty = resistanceUncertainty * perCell
  const duration = si.dischargeDuration
  const dischargedCharge = si.dischargeCurrent === null || duration === null ? null : si.dischargeCurrent * duration
  const cellCapacity =
    dischargedCharge === null || duration === null
      ? null
      : dischargedCharge / (parallel * capacityFactor(chemistry, si.cellTemperature) * capacityShareByDuration(chemistry, duration / 3600))
  const cellCapacityUncertainty =
    cellCapacity === null || duration === null
      ? null
      : widen * cellCapacity * Math.hypot(si.currentUncertainty, si.durationUncertainty / duration)
  const rated = si.ratedCellCapacity
  const fresh = si.newCellResistance
  const out = {
    resistance,
    resistanceUncertainty,
    openCircuitVoltage: lightVoltage + lightCurrent * resistance,
    cellResistance,
    cellResistanceUncertainty,
    dischargedCharge,
    cellCapacity,
    cellCapacityUncertainty,
    capacityShare: cellCapacity === null || rated === null ? null : cellCapacity / rated,
    capacityShareUncertainty: cellCapacityUncertainty === null || rated === null ? null : cellCapacityUncertainty / rated,
    resistanceRatio: fresh === null ? null : cellResistance / fresh,
    resistanceRatioUncertainty: fresh === null ? null : cellResistanceUncertainty / fresh,
  }
  const verdicts = verdictsOf(out)
  const found = ["worn", "cannot-tell", "sound"].find((word) => verdicts.includes(word)) ?? "not-judged"
  const trusted = inTestRoom(si.cellTemperature) && voltageFits(si, out) && figuresFit(out)
  return { ...out, verdict: found === "sound" && !trusted ? "cannot-tell" : found }
}
