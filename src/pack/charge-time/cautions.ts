// Hazards of a charge, and where its answer ends.
import { type Caution, caution } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { chargeRateLimit, hottestCharge, temperatureLimitSource } from "../data.js"
import { fullTouchCautions, rechargeableHazard, temperatureCautions } from "../fields.js"
import {
  CELL_SHEETS,
  CHARGE_TIMES,
  LEAD_CHARGE_TIMES,
  LEAD_CHARGING,
  LEAD_FULL_TIMES,
  LITHIUM_SAFETY,
  NICKEL_ENDS,
  NICKEL_SHEETS,
  PACK_SHEETS,
  TEMPERATURE_LIMITS,
} from "../sources.js"
import { chargeLimitShift, nickelTermination } from "./ends.js"
import { chargeTolerance } from "./kernel.js"
import type { ChargeTime, ChargeTimeCaution, Si } from "./types.js"

function rateFaults(si: Si): Caution<ChargeTimeCaution>[] {
  const { coldestCharge, lithiumIon } = chemistries[si.chemistry]
  const rate = si.chargeCurrent / ((si.cellCapacity * si.parallel) / 3600)
  const allowed = chargeRateLimit(si.chemistry, si.cellTemperature)
  const source = lithiumIon ? temperatureLimitSource : si.chemistry === "nimh" ? NICKEL_SHEETS : LEAD_CHARGING
  if (coldestCharge !== null && si.cellTemperature < coldestCharge)
    return [
      caution(
        "cold-charge",
        "warning",
        "Below {coldest temperature °C} cells of this kind must not be charged at the usual rate: they take up little, gas and can vent. Warm them first.",
        si.chemistry === "nimh" ? NICKEL_SHEETS : LEAD_CHARGE_TIMES,
        { coldest: coldestCharge },
      ),
    ]
  if (allowed === 0)
    return [
      caution(
        "too-hot-to-charge",
        "warning",
        "At {given.cellTemperature temperature °C} the strictest makers forbid charging, and none in the sun or under padding is safe: let the cells cool to {hottest temperature °C} or less, unless the datasheet of your own cell says more.",
        lithiumIon ? CELL_SHEETS : TEMPERATURE_LIMITS,
        { "given.cellTemperature": si.cellTemperature, hottest: hottestCharge[si.chemistry] as number },
      ),
    ]
  return rate > allowed
    ? [
        caution(
          "charge-rate",
          "warning",
          "{rate} times the capacity per hour is above the {allowed} that ordinary cells of this kind take at this temperature: they heat, and can vent. Only the datasheet of your own cell can allow more.",
          source,
          { rate, allowed },
        ),
      ]
    : []
}

export function cautions(si: Si, out: ChargeTime): Caution<ChargeTimeCaution>[] {
  const stated = Math.max(si.cellChargeVoltage ?? 0, si.openCircuitCurve?.at(-1)?.voltage ?? 0) * si.series
  const found: Caution<ChargeTimeCaution>[] = [
    rechargeableHazard(si.chemistry),
    ...fullTouchCautions(si, stated),
    ...temperatureCautions(si),
    ...rateFaults(si),
  ]
  const { cellFullVoltage: fullVoltage, lithiumIon } = chemistries[si.chemistry]
  const highest = fullVoltage + chargeTolerance(si.chemistry) + chargeLimitShift(si.chemistry, si.cellTemperature)
  if (si.cellChargeVoltage !== null && si.cellChargeVoltage > highest + 1e-9)
    found.push(
      lithiumIon
        ? caution(
            "over-charge",
            "warning",
            "More than {highest voltage} a cell over-charges it, which can set it on fire. Use a charger made for this chemistry and number of cells in series.",
            si.chemistry === "lfp" ? PACK_SHEETS : LITHIUM_SAFETY,
            { highest },
          )
        : caution(
            "over-charge",
            "warning",
            "More than {highest voltage} a cell makes a lead battery gas at this temperature: hydrogen that a spark explodes, heat, and acid mist. Use a charger made for sealed lead, in the open air.",
            LEAD_CHARGING,
            { highest },
          ),
    )
  if (lithiumIon && out.likelyDuration)
    found.push(
      caution(
        "charge-time-is-minimum",
        "note",
        "One resistance makes the last part too short: by datasheets expect {likelyDuration.low time} to {likelyDuration.high time}. Charge off the body, watched, on something that does not burn.",
        CHARGE_TIMES,
        { "likelyDuration.low": out.likelyDuration.low, "likelyDuration.high": out.likelyDuration.high },
      ),
    )
  if (si.chemistry === "lead" && out.likelyDuration)
    found.push(
      caution(
        "lead-tail",
        "caution",
        "{minDuration time} leaves out the last part, which no stronger charger shortens: expect {likelyDuration.low time} to {likelyDuration.high time}, and stop sooner only now and then, for a lead battery that is never full wears out. Charge in the open air, away from sparks.",
        LEAD_FULL_TIMES,
        {
          minDuration: out.minDuration,
          "likelyDuration.low": out.likelyDuration.low,
          "likelyDuration.high": out.likelyDuration.high,
        },
      ),
    )
  const rate = si.chargeCurrent / ((si.cellCapacity * si.parallel) / 3600)
  if (si.chemistry === "nimh" && rate < 0.1)
    found.push(
      caution(
        "slow-nickel",
        "note",
        "Below a tenth of the capacity per hour nickel cells take up less still: {minDuration time} is at least, and they may never fill.",
        NICKEL_SHEETS,
        { minDuration: out.minDuration },
      ),
    )
  if (out.termination) {
    const { timer, voltageDip } = out.termination
    const { timerOnlyRate, heatingRate, maxTemperature } = nickelTermination
    found.push(
      voltageDip === null
        ? caution(
            "nickel-timer",
            "caution",
            "Up to {limit} times the capacity per hour nothing shows that nickel cells are full, so only a timer can end this charge: set {termination.timer time} at most, and less where they may be fuller than stated.",
            NICKEL_ENDS,
            { limit: timerOnlyRate, "termination.timer": timer },
          )
        : caution(
            "nickel-end",
            "warning",
            "At {rate} times the capacity per hour the charger must stop by itself, or the cells overheat and vent: at a fall of {termination.voltageDip voltage} from the peak, at {hottest temperature °C}, as they warm by {low temperatureDifference K} to {high temperatureDifference K} a minute, or after {termination.timer time}, whichever comes first.",
            NICKEL_ENDS,
            {
              rate,
              "termination.voltageDip": voltageDip,
              hottest: maxTemperature,
              low: heatingRate.low * 60,
              high: heatingRate.high * 60,
              "termination.timer": timer,
            },
          ),
    )
  }
  return found
}
