import {
  type Chemistry,
  capacityFactor,
  chargeRateLimit,
  chargeTime,
  chargeVoltageShift,
  chemistries,
  dischargeLimitFactor,
  genericCells,
  nickelChargeFactor,
  nickelTermination,
} from "../../src/pack/index.js"
import type { Check } from "../helpers/references.js"
import { answer, at, curve, list, pack, source } from "./pack-helpers.js"

const HOUR = 3600

/** Checks by row id. */
export const charging: Record<string, Check> = {
  "charge-21700-cccv-times": (inputs) => {
    const ideal = list(inputs, "capacity_Ah").map((q, k) => simpleHours(q, list(inputs, "charge_current_A")[k] as number))
    return { ideal_time_h: ideal, overhead_factor: list(inputs, "time_min").map((t, k) => t / 60 / (ideal[k] as number)) }
  },
  "charge-agm": () => ({
    cycle_V_min: 6 * chemistries.lead.cellFullVoltage,
    cycle_compensation_mV_per_degC: 6000 * (chargeVoltageShift("lead", 26) - chargeVoltageShift("lead", 25)),
    time_full_from_100pct_cycle_h: leadHours(0).high,
  }),
  "charge-cccv-reference": (inputs) => {
    const out = answer(chargeTime, {
      series: 1,
      parallel: 1,
      cellCapacity: at(inputs, "capacity_Ah") * HOUR,
      cellResistance: at(inputs, "internal_resistance_ohm"),
      chargeCurrent: at(inputs, "cc_current_A"),
      cellChargeVoltage: at(inputs, "cv_voltage_V"),
      terminationCurrent: at(inputs, "cutoff_current_A"),
      openCircuitCurve: curve(list(inputs, "ocv_soc"), list(inputs, "ocv_V")),
    })
    return {
      cc_time_h: out.constantCurrentDuration / HOUR,
      cv_time_h: out.constantVoltageDuration / HOUR,
      soc_at_cv_start: out.changeOverStateOfCharge,
      soc_at_end: out.endStateOfCharge,
    }
  },
  "charge-liion-temperature-current-limit": (inputs) => ({
    max_charge_current_A: [2, 10, 30].map((t) => (chargeRateLimit("nmc", t) as number) * at(inputs, "capacity_Ah")),
  }),
  "pb-pack-charge-temp-18650": (inputs) => chargeBands("nmc", at(inputs, "capacity_mAh")),
  "pb-pack-charge-temp-lfp": (inputs) => chargeBands("lfp", at(inputs, "capacity_mAh")),
  "temp-charge-voltage-compensation": (inputs) => {
    const shiftAt = (fahrenheit: number) => at(inputs, "cells") * chargeVoltageShift("lead", (fahrenheit - 32) / 1.8)
    return { adjusted_voltage_V: at(inputs, "set_voltage_V") + shiftAt(at(inputs, "temperature_degF")) - shiftAt(80) }
  },
  "nimh-dtdt-cutoff": (inputs) => {
    const { low, high } = nickelTermination.heatingRate
    const hours = (nickelTimer(at(inputs, "rate_C")).termination?.timer as number) / HOUR
    return { rate_degF_per_min: [low, high].map((rate) => rate * 60 * 1.8), charge_h: hours }
  },
  "nimh-five-hour-timer": (inputs) => {
    const rate = 1 / at(inputs, "rate_divisor")
    return { rate_C: rate, charge_factor: rate * ((nickelTimer(rate).termination?.timer as number) / HOUR) }
  },
  "nimh-racing-delta-peak": (inputs) => ({
    delta_peak_mV: 1000 * (nickelTimer(chargeRateLimit("nimh", 25), at(inputs, "cells")).termination?.voltageDip as number),
    max_rate_C: chargeRateLimit("nimh", 25),
    cutout_degC_max: nickelTermination.maxTemperature,
  }),
  "charge-nimh-tenth-c": (inputs) => {
    const factors = list(inputs, "rate_It").map(nickelChargeFactor)
    return { charge_factor: factors, implied_efficiency: factors.map((f) => 1 / f) }
  },
  "charge-no-charge-below-zero": (inputs) => ({
    charging_allowed_generic: list(inputs, "temperature_degC").map((t) => (chargeRateLimit("nmc", t) as number) > 0),
  }),
  "charge-power-flow-car-battery": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_ohm"), { current: at(inputs, "charge_current_A") })
    return { loss_W: out.heat, chemical_power_W: out.power + out.heat, discharge_terminal_voltage_V: out.terminalVoltage }
  },
  "pb-pack-charge-allowed-below-zero": () => ({ min_charge_degC: Array.from({ length: 5 }, () => chemistries.nmc.coldestCharge) }),
  "pb-pack-charge-cccv-closed-form": (inputs) => {
    const capacity = at(inputs, "capacity_Ah")
    const out = answer(chargeTime, {
      series: 1,
      parallel: 1,
      cellCapacity: capacity * HOUR,
      cellResistance: at(inputs, "resistance_ohm"),
      chargeCurrent: at(inputs, "current_A"),
      cellChargeVoltage: at(inputs, "Vmax_V"),
      terminationCurrent: at(inputs, "cutoff_A"),
      openCircuitCurve: curve([0, 1], [at(inputs, "V0_V"), at(inputs, "V0_V") + at(inputs, "k_V")]),
    })
    return {
      soc_end_cc: out.changeOverStateOfCharge,
      time_cc_h: out.constantCurrentDuration / HOUR,
      time_cv_h: out.constantVoltageDuration / HOUR,
      total_h: out.minDuration / HOUR,
      charge_in_cv_Ah: (out.endStateOfCharge - out.changeOverStateOfCharge) * capacity,
      soc_end: out.endStateOfCharge,
    }
  },
  "pb-pack-charge-termination": () => ({ limit_V: chemistries.nmc.cellFullVoltage }),
  "pb-pack-charge-time-b": printedChargeTime,
  "pb-pack-charge-time-c": printedChargeTime,
}

/** Hours on the charger of a 12 V 5 Ah battery at the most that its sheet allows. */
export function leadHours(startStateOfCharge: number) {
  const cell = genericCells["agm-5ah"]
  const { chemistry, cellCapacity, cellResistance, cellMaxChargeCurrent: chargeCurrent } = cell
  const { likelyDuration } = answer(chargeTime, {
    series: 6,
    parallel: 1,
    chemistry,
    cellCapacity,
    cellResistance,
    chargeCurrent,
    startStateOfCharge,
  })
  return { low: (likelyDuration?.low as number) / HOUR, high: (likelyDuration?.high as number) / HOUR }
}
function nickelTimer(rate: number, series = 1) {
  return answer(chargeTime, {
    series,
    parallel: 1,
    chemistry: "nimh",
    cellCapacity: 2 * HOUR,
    cellResistance: 0.03,
    chargeCurrent: 2 * rate,
  })
}
function simpleHours(ampereHours: number, chargeCurrent: number): number {
  return (
    answer(chargeTime, { series: 1, parallel: 1, cellCapacity: ampereHours * HOUR, cellResistance: 0.03, chargeCurrent }).simpleDuration /
    HOUR
  )
}
function printedChargeTime(inputs: object, row: { readonly expected: Readonly<Record<string, unknown>> }) {
  const least = list(inputs, "current_A").map((i) => simpleHours(at(inputs, "capacity_Ah"), i) * 60)
  const printed = list(row.expected, "printed_time_min")
  return { constant_current_minimum_min: least, ratio: printed.map((t, k) => t / (least[k] as number)) }
}
function chargeBands(chemistry: Chemistry, milliampereHours: number) {
  const rates = [2, 10, 30].map((t) => chargeRateLimit(chemistry, t) as number)
  return { max_charge_mA: rates.map((rate) => rate * milliampereHours), c_rate: rates }
}

/** Checks by row id. */
export const packs: Record<string, Check> = {
  "pack-16s-mixed-taps": (inputs) => {
    const [v, q] = [at(inputs, "battery_voltage_V"), at(inputs, "capacity_each_Ah")]
    const [a, b] = [pack(2, 2, v, q), pack(1, 4, v, q)]
    return {
      voltage_2s2p_V: a.nominalVoltage,
      capacity_2s2p_Ah: a.capacity / HOUR,
      voltage_1s4p_V: b.nominalVoltage,
      capacity_1s4p_Ah: b.capacity / HOUR,
      energy_both_Wh: a.energy === b.energy ? a.energy / HOUR : Number.NaN,
    }
  },
  "pack-21700-energy": (inputs) => ({
    energy_Wh: list(inputs, "capacity_Ah").map((q, k) => pack(1, 1, list(inputs, "nominal_voltage_V")[k] as number, q).energy / HOUR),
  }),
  "pack-21700-specific-energy": (inputs) => ({
    specific_energy_Wh_per_kg:
      (pack(1, 1, 3.6, at(inputs, "energy_Wh") / 3.6, { cellMass: at(inputs, "mass_kg") }).specificEnergy as number) / HOUR,
  }),
  "pack-series-weakest-capacity": (inputs) => {
    const groups = (inputs.groups_Ah as unknown as readonly (readonly number[])[]).map((cells) => cells.reduce((a, b) => a + b))
    const out = pack(3, 2, 3.6, 2.5, { groupCapacities: groups.map((q) => q * HOUR) })
    return { pack_capacity_Ah: out.capacity / HOUR, naive_mean_Ah: (out.capacity + out.strandedCharge / 3) / HOUR }
  },
  "pb-pack-series-weakest": (inputs) => {
    const out = pack(4, 1, 3.6, 2.5, { groupCapacities: list(inputs, "cell_Ah").map((q) => q * HOUR) })
    return { pack_Ah: out.capacity / HOUR, stranded_Ah: out.strandedCharge / HOUR }
  },
  "pack-2s-1100mAh": (inputs) => {
    const out = pack(at(inputs, "cells_series"), 1, 3.7, at(inputs, "capacity_Ah"))
    return { energy_Wh: out.energy / HOUR, nominal_cell_voltage_V: out.nominalVoltage / at(inputs, "cells_series") }
  },
  "pack-car-battery-energy": (inputs) => {
    const { energy } = pack(1, 1, at(inputs, "voltage_V"), at(inputs, "charge_Ah"))
    return { energy_J: energy, energy_Wh: energy / HOUR }
  },
  "pack-constant-power-two-roots": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_ohm"), { power: at(inputs, "load_power_W") })
    return { operating_current_A: out.current, max_deliverable_power_W: out.maxPower }
  },
  "pack-emf-heavy-load": resistiveLoad,
  "pack-emf-light-load": resistiveLoad,
  "pack-flashlight-bulb": resistiveLoad,
  "pack-starter-motor-corroded": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_ohm"), {
      interconnectResistance: at(inputs, "added_resistance_ohm"),
      loadResistance: at(inputs, "load_resistance_ohm"),
    })
    return { current_A: out.current, load_voltage_V: out.terminalVoltage, load_power_W: out.power }
  },
  "pack-nicd-vs-alkaline-power": (inputs) => ({
    load_power_W: list(inputs, "emf_V").map(
      (emf, k) =>
        source(emf, list(inputs, "internal_resistance_ohm")[k] as number, { loadResistance: at(inputs, "load_resistance_ohm") }).power,
    ),
  }),
  "pb-pack-terminal-voltage-dry-cell": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "resistance_ohm"), { current: at(inputs, "current_A") })
    return { terminal_V: out.terminalVoltage, cell_power_W: out.power + out.heat, load_power_W: out.power }
  },
  "pack-laptop-3s4p": (inputs) => {
    const out = pack(3, 4, at(inputs, "cell_voltage_V"), at(inputs, "cell_capacity_Ah"))
    return {
      cells_series: Math.round(at(inputs, "pack_voltage_V") / (out.nominalVoltage / 3)),
      cells_parallel: Math.round(at(inputs, "pack_capacity_Ah") / (out.capacity / HOUR / 4)),
      cells_total: out.cellCount,
      energy_Wh: out.energy / HOUR,
    }
  },
  "pack-parallel-current-sharing-energy": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_each_ohm"), {
      parallel: at(inputs, "cells_parallel"),
      loadResistance: at(inputs, "load_resistance_ohm"),
    })
    return { load_current_A: out.current, per_cell_current_A: out.cellCurrent, terminal_voltage_V: out.terminalVoltage }
  },
  "pack-sla-12v-8p3ah": (inputs) => ({ energy_Wh: pack(1, 1, at(inputs, "voltage_V"), at(inputs, "capacity_Ah")).energy / HOUR }),
  "pb-pack-energy-12V-55Ah": (inputs) => ({ energy_kWh: pack(1, 1, at(inputs, "voltage_V"), at(inputs, "capacity_Ah")).energy / 3.6e6 }),
  "pb-pack-energy-12V-65Ah": (inputs) => ({ energy_MJ: pack(1, 1, at(inputs, "voltage_V"), at(inputs, "capacity_Ah")).energy / 1e6 }),
  "pb-pack-discharge-temp-18650": () => {
    const factors = (chemistry: Chemistry) => [0, 25, 60].map((t) => dischargeLimitFactor(chemistry, t))
    const [nmc, lfp] = [factors("nmc"), factors("lfp")]
    return {
      nmc_2600_mA: nmc.map((f) => f * 7800),
      nmc_c_rate: nmc.map((f) => (f * 7800) / 2600),
      lfp_4000_mA: lfp.map((f) => f * 8000),
      lfp_c_rate: lfp.map((f) => (f * 8000) / 4000),
    }
  },
  "pb-pack-powerbank-cells": (inputs) => {
    const out = pack(1, at(inputs, "parallel"), at(inputs, "cell_V"), at(inputs, "cell_mAh") / 1000)
    return { pack_mAh: out.capacity / 3.6, energy_Wh: out.energy / HOUR }
  },
  "pb-pack-sp-2p-strings": (inputs) => ({ pack_mAh: pack(1, at(inputs, "parallel"), 3.7, at(inputs, "cell_mAh") / 1000).capacity / 3.6 }),
  "pb-pack-sp-3s1p-lipo": (inputs) => {
    const out = pack(at(inputs, "series"), at(inputs, "parallel"), at(inputs, "cell_V"), 1, { chemistry: "lco" })
    return { pack_V: out.nominalVoltage, full_V: out.fullVoltage }
  },
  "pb-pack-sp-4s2p-2p4Ah": (inputs) => {
    const out = pack(at(inputs, "series"), at(inputs, "parallel"), at(inputs, "cell_V"), at(inputs, "cell_mAh") / 1000)
    return { pack_V: out.nominalVoltage, pack_mAh: out.capacity / 3.6, energy_Wh: out.energy / HOUR, cells: out.cellCount }
  },
  "pb-pack-sp-4s2p-3p7V": (inputs) => {
    const out = pack(at(inputs, "series"), at(inputs, "parallel"), at(inputs, "cell_V"), 1)
    return { pack_V: out.nominalVoltage, capacity_ratio: out.capacity / HOUR }
  },
  "pb-pack-sp-5s-3p6V-2Ah": (inputs) => {
    const out = pack(at(inputs, "series"), at(inputs, "parallel"), at(inputs, "cell_V"), at(inputs, "cell_mAh") / 1000)
    return { pack_V: out.nominalVoltage, pack_mAh: out.capacity / 3.6 }
  },
  "pb-pack-temp-leadacid-40ah": leadTemperature,
  "temp-sla40-capacity": leadTemperature,
  "temp-liion-capacity-limits": (inputs) => ({
    capacity_fraction_min: list(inputs, "temperature_degC").map((t) => capacityFactor("nmc", t)),
  }),
}

function resistiveLoad(inputs: object) {
  const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_ohm"), { loadResistance: at(inputs, "load_resistance_ohm") })
  return { current_A: out.current, terminal_voltage_V: out.terminalVoltage, load_power_W: out.power }
}
function leadTemperature(inputs: object) {
  return { capacity_fraction: list(inputs, "temperature_degC").map((t) => capacityFactor("lead", t)) }
}
