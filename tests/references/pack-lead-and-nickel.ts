import { brent } from "../../src/numeric/index.js"
import {
  type Chemistry,
  chargeRateLimit,
  chargeTime,
  chemistries,
  dischargeLimitFactor,
  genericCells,
  packHealth,
  packUnderLoad,
  peukert,
  peukertExponent,
  runtime,
} from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"
import type { Check } from "../helpers/references.js"
import { leadHours } from "./pack-charging.js"
import { answer, at, list, pack } from "./pack-helpers.js"

const HOUR = 3600
/** Highest and lowest whole degree at which something is allowed. */
const range = (allowed: (t: number) => boolean) => {
  const all = Array.from({ length: 131 }, (_, i) => i - 40).filter(allowed)
  return [all[0], all.at(-1)]
}
const limits = (chemistry: Chemistry) => {
  const [charge_min_degC, charge_max_degC] = range((t) => chargeRateLimit(chemistry, t) > 0)
  const [discharge_min_degC, discharge_max_degC] = range((t) => dischargeLimitFactor(chemistry, t) > 0)
  return { charge_min_degC, charge_max_degC, discharge_min_degC, discharge_max_degC }
}

/** Exponent through the 20 h and 1 h points of a sheet, and the currents it predicts for 10 h and 5 h. */
function exponentOf(inputs: object) {
  const [slow, fast] = [at(inputs, "current_20h_A"), at(inputs, "current_1h_A")]
  const exponent = peukertExponent(20 * slow, 20, fast, 1)
  const currentFor = (hours: number) =>
    (
      brent((current) => answer(peukert, { capacity: 20 * slow * HOUR, current, exponent }).duration - hours * HOUR, slow, fast) as {
        x: number
      }
    ).x
  return { exponent, predicted_10h_A: currentFor(10), predicted_5h_A: currentFor(5) }
}

/** Checks by row id. */
export const leadAndNickel: Record<string, Check> = {
  "agm-charge-time-half-discharged": (inputs) => ({
    cycle_time_h: leadHours(1 - at(inputs, "depth_of_discharge")).high,
    max_charge_C: chargeRateLimit("lead", 25),
  }),
  "lead-discharge-limits-flooded": (inputs) => {
    const { cellMaxCurrent, cellCapacity } = genericCells["agm-5ah"]
    const rate = cellMaxCurrent / (cellCapacity / HOUR)
    return { max_continuous_C: rate, max_continuous_A: rate * at(inputs, "capacity_Ah") }
  },
  "lead-recharge-factor-110": (inputs) => {
    const chargeCurrent = chargeRateLimit("lead", 25) * at(inputs, "capacity_Ah")
    const returned = 1.1 * at(inputs, "discharged_Ah") * HOUR
    const out = answer(chargeTime, { series: 6, parallel: 1, chemistry: "lead", cellCapacity: returned, cellResistance: 0, chargeCurrent })
    const given = at(inputs, "discharged_Ah") * HOUR
    const full = answer(chargeTime, { series: 6, parallel: 1, chemistry: "lead", cellCapacity: given, cellResistance: 0, chargeCurrent })
    return { charge_in_Ah: full.chargeIn / HOUR, max_initial_A: chargeCurrent, time_at_max_h: out.simpleDuration / HOUR }
  },
  "lfp-4s-per-cell": (inputs) => {
    const series = at(inputs, "cells_series")
    return { cutoff_V_per_cell: pack(series, 1, 3.2, at(inputs, "capacity_Ah"), { chemistry: "lfp" }).cutOffVoltage / series }
  },
  "liion-cccv-stages": () => {
    const out = answer(chargeTime, { series: 1, parallel: 1, cellCapacity: HOUR, cellResistance: 0.01, chargeCurrent: 1 })
    return {
      limit_V: chemistries.nmc.cellFullVoltage,
      timer_after_limit_h: ((out.likelyDuration?.high as number) - out.simpleDuration) / HOUR,
    }
  },
  "lto-4p2ah-specific-energy": (inputs) => ({
    Wh_per_kg:
      (pack(1, 1, at(inputs, "nominal_V"), at(inputs, "capacity_Ah"), { cellMass: at(inputs, "mass_kg") }).specificEnergy as number) / HOUR,
  }),
  "short-circuit-from-one-load": (inputs) => {
    const [open, load] = [at(inputs, "open_V"), at(inputs, "load_A")]
    const out = packUnderLoad.si(
      packUnderLoad.read({
        series: 1,
        parallel: 1,
        cellCapacity: HOUR,
        cellResistance: (open - at(inputs, "loaded_V")) / load,
        openCircuitVoltage: open,
        current: 100 * load,
      }),
    )
    const read = answer(packHealth, {
      series: 1,
      parallel: 1,
      lightVoltage: open,
      heavyCurrent: load,
      heavyVoltage: at(inputs, "loaded_V"),
    })
    return { resistance_mohm: 1000 * read.resistance, short_circuit_A: isNoSolution(out) ? out.at.shortCircuit : null }
  },
  "sla-12v-28ah-exponent": exponentOf,
  "sla-12v-40ah-exponent": (inputs) => {
    const out = exponentOf(inputs)
    // printed: 3.7 A for 10 h, 6.6 A for 5 h
    return { ...out, error_10h_fraction: out.predicted_10h_A / 3.7 - 1, error_5h_fraction: out.predicted_5h_A / 6.6 - 1 }
  },
  "sla-12v-4ah-one-hour-fraction": (inputs) => ({
    fraction: list(inputs, "twenty_hour_Ah").map((rated, k) => {
      const hour = list(inputs, "one_hour_Ah")[k] as number
      const input = { capacity: rated * HOUR, secondCapacity: hour * HOUR, secondDuration: HOUR, current: hour }
      return answer(peukert, input).deliveredCharge / HOUR / rated
    }),
  }),
  "sla-12v-40ah-specific-energy": (inputs) => {
    const block = pack(6, 1, 2, at(inputs, "capacity_Ah"), { chemistry: "lead", cellMass: at(inputs, "mass_kg") / 6 })
    return { Wh_per_kg: (block.specificEnergy as number) / HOUR }
  },
  "sla-12v-40ah-rate-table": (inputs) => {
    const charges = list(inputs, "current_A").map((current) => {
      const cells = { series: 6, parallel: 1, chemistry: "lead", cellCapacity: 40 * HOUR, cellResistance: 0.001 }
      return answer(runtime, { ...cells, pattern: [{ current }] }).deliveredCharge / HOUR
    })
    return { capacity_Ah: charges, fraction_of_20h: charges.map((charge) => charge / (charges[0] as number)) }
  },
  "temp-limits-liion": () => ({ ...limits("nmc"), charge_below_0: chargeRateLimit("nmc", -0.1) > 0 }),
  "temp-limits-nickel": () => ({ ...limits("nimh"), rate_0_to_5_C: chargeRateLimit("nimh", 3) }),
}

const charger = "a setting of the charger, which chargeTime does not have"
const rate = "a second figure for fast charging, which is not kept"

const storage = "advice for storing, which no solver of a charge gives"

/** Why single values of these rows are left out. */
export const leadAndNickelWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "agm-charge-time-half-discharged": {
    float_time_h: "chargeTime charges once and does not float",
  },
  "lead-discharge-limits-flooded": { recommended_below_C: "advice beside the limit", storage_min_V_per_cell: "no solver stores batteries" },
  "nimh-racing-delta-peak": { storage_charge_min: storage, storage_charge_max: storage },
  "lfp-4s-per-cell": {
    charge_V_per_cell: "below the 3.65 V kept, which other sheets print",
    taper_C: charger,
    resistance_mohm_max: "of the whole block with its circuit",
  },
  "liion-cccv-stages": {
    precharge_below_V: charger,
    precharge_C: charger,
    constant_current_min_C: charger,
    constant_current_max_C: charger,
    end_current_min_C: charger,
    end_current_max_C: charger,
  },
  "sla-12v-40ah-specific-energy": { Wh_per_lb: "the same in another unit, rounded" },
  "temp-limits-liion": {
    fast_charge_min_degC: rate,
    fast_charge_max_degC: rate,
    best_charge_min_degC: "advice within the limits",
    best_charge_max_degC: "advice within the limits",
  },
  "temp-limits-nickel": {
    rate_minus18_to_0_C: "makers' own sheets forbid it, which chargeRateLimit follows",
    acceptance_45degC: "nickelChargeFactor does not depend on temperature",
    acceptance_60degC: "nickelChargeFactor does not depend on temperature",
  },
}
