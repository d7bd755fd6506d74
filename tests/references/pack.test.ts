import { interpolate } from "../../src/numeric/index.js"
import {
  airRules,
  airTravel,
  type Chemistry,
  capacityFactor,
  cargoRules,
  chargeRateLimit,
  chargeTime,
  chemistries,
  curveOf,
  dischargeLimitFactor,
  genericCells,
  nickelChargeFactor,
  openCircuitVoltage,
  peukert,
  peukertExponent,
  powerBank,
} from "../../src/pack/index.js"
import { type Check, referenceTests } from "../helpers/references.js"
import { answer, at, curve, level, list, pack, run, source, strings } from "./pack-helpers.js"

const HOUR = 3600

/** Mean of a chemistry's curve, as the discharge without resistance gives it. */
const meanVoltage = (chemistry: Chemistry) => {
  const cell = curveOf(chemistry)
  const out = run(
    1,
    0,
    { current: 1 },
    {
      curve: curve(
        cell.map(([s]) => s),
        cell.map(([, v]) => v),
      ),
    },
  )
  return out.energy / out.charge
}
const curveRow =
  (chemistry: Chemistry, voltages: string, mean?: string): Check =>
  (inputs) => ({
    [voltages]: list(inputs, "soc").map((s) => openCircuitVoltage(chemistry, s)),
    ...(mean === undefined ? {} : { [mean]: meanVoltage(chemistry) }),
  })

const cells: Record<string, Check> = {
  "cell-21700-high-power": () => {
    const cell = genericCells["21700-power"]
    const kind = chemistries[cell.chemistry]
    return {
      nominal_V: kind.nominalVoltage,
      charge_V: kind.fullVoltage,
      cutoff_V: kind.cutOffVoltage,
      capacity_Ah: cell.capacity / HOUR,
      // the direct-current resistance is taken as twice the 1 kHz one
      ac_impedance_mohm_max: (cell.resistance / 2) * 1000,
      max_continuous_A: cell.maxCurrent,
      max_charge_A: cell.maxChargeCurrent,
      mass_g_max: cell.cellMass * 1000,
    }
  },
  "cell-agm-12v-5ah": () => {
    const cell = genericCells["agm-5ah"]
    const battery = pack(6, 1, 2, 5, { ...cell })
    return { internal_resistance_mohm: battery.resistance * 1000, mass_kg: battery.mass, capacity_20h_Ah: battery.capacity / HOUR }
  },
  "cell-alkaline-aa": (inputs) => {
    const cell = genericCells["aa-alkaline"]
    // the reading itself must come out of the resistance kept
    const loaded = source(at(inputs, "open_circuit_V"), cell.resistance, { loadResistance: at(inputs, "load_ohm") })
    return { r_from_load_ohm: (at(inputs, "open_circuit_V") - loaded.voltage) / loaded.current }
  },
  "cell-alkaline-aa-rate": (inputs) => {
    const [first, second] = list(inputs, "current_mA").map((i) => i / 1000) as [number, number]
    const rated = { capacity: 2.9 * HOUR, ratedTime: (2.9 / first) * HOUR, exponent: 1.243 }
    return { capacity_mAh: [first, second].map((current) => answer(peukert, { ...rated, current }).delivered / 3.6) }
  },
  "cell-alkaline-aa-rate-exponent": (inputs) => {
    const [q1, q2] = list(inputs, "capacity_mAh") as [number, number]
    const [i1, i2] = list(inputs, "current_mA") as [number, number]
    return { peukert_k: peukertExponent(q1, q1 / i1, q2, q2 / i2) }
  },
  "cell-lead-acid-count": () => ({ cell_V: pack(6, 1, chemistries.lead.nominalVoltage, 1).nominalVoltage / 6 }),
  "cell-nimh-a-large": () => {
    const cell = genericCells["a-nimh"]
    return {
      nominal_V: chemistries.nimh.nominalVoltage,
      rated_capacity_mAh: cell.capacity / 3.6,
      ac_impedance_mohm: (cell.resistance / 2) * 1000,
      mass_g: cell.cellMass * 1000,
    }
  },
  "pb-pack-cell-nimh-lfat-a": () => nickel("a-nimh"),
  "pb-pack-cell-nimh-aaa": () => nickel("aaa-nimh"),
  "pb-pack-cell-21700-40tg": (inputs) => {
    const cell = genericCells["21700-power"]
    const one = pack(1, 1, at(inputs, "nominal_V"), at(inputs, "capacity_Ah"), { cellMass: at(inputs, "mass_kg") })
    return {
      energy_Wh: one.energy / HOUR,
      specific_energy_Wh_per_kg: (one.specificEnergy as number) / HOUR,
      ac_resistance_max_mohm: (cell.resistance / 2) * 1000,
      max_discharge_A: cell.maxCurrent,
      max_charge_A: cell.maxChargeCurrent,
    }
  },
  "pb-pack-cell-21700-50s": (inputs) => {
    const cell = genericCells["21700-energy"]
    return {
      energy_Wh: pack(1, 1, at(inputs, "nominal_V"), at(inputs, "capacity_Ah")).energy / HOUR,
      rated_capacity_Ah: cell.capacity / HOUR,
      max_continuous_A: cell.maxCurrent,
      mass_max_g: cell.cellMass * 1000,
    }
  },
  "pb-pack-cell-lfp-26650-3300": () => {
    const cell = genericCells["26650-lfp"]
    const hour = cell.capacity / HOUR
    return {
      max_charge_mA: cell.maxChargeCurrent * 1000,
      max_charge_C: cell.maxChargeCurrent / hour,
      max_discharge_A: cell.maxCurrent,
      max_discharge_C: cell.maxCurrent / hour,
      resistance_max_mohm: (cell.resistance / 2) * 1000,
      mass_g: cell.cellMass * 1000,
      cutoff_V: chemistries.lfp.cutOffVoltage,
    }
  },
  "pb-pack-chem-alkaline": () => ({
    nominal_V: chemistries.alkaline.nominalVoltage,
    fresh_open_circuit_V: openCircuitVoltage("alkaline", 1),
    cutoff_V: chemistries.alkaline.cutOffVoltage,
  }),
  "pb-pack-chem-ico": () => ({ nominal_V: chemistries.lco.nominalVoltage, full_V: chemistries.lco.fullVoltage }),
  "pb-pack-chem-lead-acid-cutoffs": () => ({ cell_10h_V: chemistries.lead.cutOffVoltage }),
  "pb-pack-chem-lfp": () => ({
    nominal_V: chemistries.lfp.nominalVoltage,
    full_V: chemistries.lfp.fullVoltage,
    mean_ocv_V: meanVoltage("lfp"),
  }),
  "pb-pack-chem-nimh": () => {
    const charge = (rate: number) =>
      answer(chargeTime, { series: 1, parallel: 1, chemistry: "nimh", capacity: HOUR, resistance: 0, chargeCurrent: rate }).time / HOUR
    return {
      nominal_V: chemistries.nimh.nominalVoltage,
      cutoff_V: chemistries.nimh.cutOffVoltage,
      standard_charge_h: Number(charge(0.1).toPrecision(12)),
      rapid_charge_h: Number(charge(1).toPrecision(12)),
    }
  },
  "pb-pack-chem-nmc": () => ({
    nominal_V: chemistries.nmc.nominalVoltage,
    full_V: chemistries.nmc.fullVoltage,
    cutoff_V: chemistries.nmc.cutOffVoltage,
    mean_ocv_V: meanVoltage("nmc"),
  }),
}

function nickel(name: "a-nimh" | "aaa-nimh") {
  const cell = genericCells[name]
  return { impedance_1kHz_mohm: (cell.resistance / 2) * 1000, standard_charge_mA: cell.capacity / 3.6 / 10, mass_g: cell.cellMass * 1000 }
}

const curves: Record<string, Check> = {
  "ocv-chen-rinconmora-lipo": curveRow("lco", "ocv_V"),
  "pb-pack-ocv-lipo-chen-rincon-mora": curveRow("lco", "ocv_V"),
  "ocv-dense21-apr18650": curveRow("lfp", "ocv_V"),
  "ocv-lut10-apr18650": curveRow("lfp", "ocv_V"),
  "pb-pack-ocv-lfp-18650-21pt": curveRow("lfp", "ocv_V", "mean_ocv_0_to_1_V"),
  "ocv-lut10-m50t": curveRow("nmc", "ocv_V"),
  "pb-pack-ocv-nmc-21700-energy-21pt": curveRow("nmc", "ocv_V", "mean_ocv_0_to_1_V"),
  "ocv-lead-acid-12v": (inputs) => ({ rest_voltage_V: list(inputs, "soc").map((s) => 6 * openCircuitVoltage("lead", s)) }),
  "ocv-lfp-plateau-flatness": (inputs) => ({
    lfp_mV: 1000 * (openCircuitVoltage("lfp", at(inputs, "soc_high")) - openCircuitVoltage("lfp", at(inputs, "soc_low"))),
  }),
}
for (const id of ["pb-pack-ocv-lut10-lfp-18650", "pb-pack-ocv-lut10-nmc-21700-power"])
  curves[id] = (inputs) => {
    const voltages = list(inputs, "breakpoint_ocv_V")
    const table = list(inputs, "breakpoint_soc").map((s, i) => [s, voltages[i] as number] as const)
    return { ocv_V: list(inputs, "soc").map((s) => interpolate(table, s)) }
  }
for (const id of ["nmc-18650-power", "nmc-21700-energy", "nmc-21700-power"])
  curves[`pb-pack-ocv-${id}-21pt-mean-bias`] = (inputs) => {
    const out = run(1, 0, { current: 1 }, { curve: curve(list(inputs, "soc"), list(inputs, "ocv_V")) })
    return { mean_21pt_V: out.energy / out.charge }
  }

const charging: Record<string, Check> = {
  "charge-21700-cccv-times": (inputs) => {
    const ideal = list(inputs, "capacity_Ah").map((q, k) => simpleHours(q, list(inputs, "charge_current_A")[k] as number))
    return { ideal_time_h: ideal, overhead_factor: list(inputs, "time_min").map((t, k) => t / 60 / (ideal[k] as number)) }
  },
  "charge-agm": () => ({ cycle_V_min: 6 * chemistries.lead.fullVoltage }),
  "charge-cccv-reference": (inputs) => {
    const out = answer(chargeTime, {
      series: 1,
      parallel: 1,
      capacity: at(inputs, "capacity_Ah") * HOUR,
      resistance: at(inputs, "internal_resistance_ohm"),
      chargeCurrent: at(inputs, "cc_current_A"),
      chargeVoltage: at(inputs, "cv_voltage_V"),
      endCurrent: at(inputs, "cutoff_current_A"),
      curve: curve(list(inputs, "ocv_soc"), list(inputs, "ocv_V")),
    })
    return {
      cc_time_h: out.currentTime / HOUR,
      cv_time_h: out.voltageTime / HOUR,
      soc_at_cv_start: out.changeOverCharge,
      soc_at_end: out.endCharge,
    }
  },
  "charge-liion-temperature-current-limit": (inputs) => ({
    max_charge_current_A: [2, 10, 30].map((t) => (chargeRateLimit("nmc", t) as number) * at(inputs, "capacity_Ah")),
  }),
  "pb-pack-charge-temp-18650": (inputs) => chargeBands("nmc", at(inputs, "capacity_mAh")),
  "pb-pack-charge-temp-lfp": (inputs) => chargeBands("lfp", at(inputs, "capacity_mAh")),
  "charge-nimh-tenth-c": (inputs) => {
    const factors = list(inputs, "rate_It").map(nickelChargeFactor)
    return { charge_factor: factors, implied_efficiency: factors.map((f) => 1 / f) }
  },
  "charge-no-charge-below-zero": (inputs) => ({
    charging_allowed_generic: list(inputs, "temperature_degC").map((t) => (chargeRateLimit("nmc", t) as number) > 0),
  }),
  "charge-power-flow-car-battery": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_ohm"), { current: at(inputs, "charge_current_A") })
    return { loss_W: out.heat, chemical_power_W: out.power + out.heat, discharge_terminal_voltage_V: out.voltage }
  },
  "pb-pack-charge-allowed-below-zero": () => ({ min_charge_degC: Array.from({ length: 5 }, () => chemistries.nmc.coldestCharge) }),
  "pb-pack-charge-cccv-closed-form": (inputs) => {
    const capacity = at(inputs, "capacity_Ah")
    const out = answer(chargeTime, {
      series: 1,
      parallel: 1,
      capacity: capacity * HOUR,
      resistance: at(inputs, "resistance_ohm"),
      chargeCurrent: at(inputs, "current_A"),
      chargeVoltage: at(inputs, "Vmax_V"),
      endCurrent: at(inputs, "cutoff_A"),
      curve: curve([0, 1], [at(inputs, "V0_V"), at(inputs, "V0_V") + at(inputs, "k_V")]),
    })
    return {
      soc_end_cc: out.changeOverCharge,
      time_cc_h: out.currentTime / HOUR,
      time_cv_h: out.voltageTime / HOUR,
      total_h: out.time / HOUR,
      charge_in_cv_Ah: (out.endCharge - out.changeOverCharge) * capacity,
      soc_end: out.endCharge,
    }
  },
  "pb-pack-charge-termination": () => ({ limit_V: chemistries.nmc.fullVoltage }),
  "pb-pack-charge-time-40tg": printedChargeTime,
  "pb-pack-charge-time-50s": printedChargeTime,
}

function simpleHours(ampereHours: number, chargeCurrent: number): number {
  return answer(chargeTime, { series: 1, parallel: 1, capacity: ampereHours * HOUR, resistance: 0.03, chargeCurrent }).simpleTime / HOUR
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

const packs: Record<string, Check> = {
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
    return { operating_current_A: out.current, max_deliverable_power_W: out.greatestPower }
  },
  "pack-emf-heavy-load": resistiveLoad,
  "pack-emf-light-load": resistiveLoad,
  "pack-flashlight-bulb": resistiveLoad,
  "pack-starter-motor-corroded": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_ohm"), {
      linkResistance: at(inputs, "added_resistance_ohm"),
      loadResistance: at(inputs, "load_resistance_ohm"),
    })
    return { current_A: out.current, load_voltage_V: out.voltage, load_power_W: out.power }
  },
  "pack-nicd-vs-alkaline-power": (inputs) => ({
    load_power_W: list(inputs, "emf_V").map(
      (emf, k) =>
        source(emf, list(inputs, "internal_resistance_ohm")[k] as number, { loadResistance: at(inputs, "load_resistance_ohm") }).power,
    ),
  }),
  "pb-pack-terminal-voltage-dry-cell": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "resistance_ohm"), { current: at(inputs, "current_A") })
    return { terminal_V: out.voltage, cell_power_W: out.power + out.heat, load_power_W: out.power }
  },
  "pack-laptop-3s4p": (inputs) => {
    const out = pack(3, 4, at(inputs, "cell_voltage_V"), at(inputs, "cell_capacity_Ah"))
    return {
      cells_series: Math.round(at(inputs, "pack_voltage_V") / (out.nominalVoltage / 3)),
      cells_parallel: Math.round(at(inputs, "pack_capacity_Ah") / (out.capacity / HOUR / 4)),
      cells_total: out.cells,
      energy_Wh: out.energy / HOUR,
    }
  },
  "pack-parallel-current-sharing-energy": (inputs) => {
    const out = source(at(inputs, "emf_V"), at(inputs, "internal_resistance_each_ohm"), {
      parallel: at(inputs, "cells_parallel"),
      loadResistance: at(inputs, "load_resistance_ohm"),
    })
    return { load_current_A: out.current, per_cell_current_A: out.cellCurrent, terminal_voltage_V: out.voltage }
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
    return { pack_V: out.nominalVoltage, pack_mAh: out.capacity / 3.6, energy_Wh: out.energy / HOUR, cells: out.cells }
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
  return { current_A: out.current, terminal_voltage_V: out.voltage, load_power_W: out.power }
}
function leadTemperature(inputs: object) {
  return { capacity_fraction: list(inputs, "temperature_degC").map((t) => capacityFactor("lead", t)) }
}

const parallel: Record<string, Check> = {
  "pack-parallel-equal-emf-split": (inputs) => {
    const { shares } = strings([4, 4], [at(inputs, "r1_relative"), at(inputs, "r2_relative")], { current: 1 })
    const [low, high] = shares.map((s) => s.current) as [number, number]
    return { share_low_resistance_cell: low, share_high_resistance_cell: high, ratio: low / high }
  },
  "pack-parallel-equalising-inrush": (inputs) => {
    const out = strings([at(inputs, "E1_V"), at(inputs, "E2_V")], [at(inputs, "r1_ohm"), at(inputs, "r2_ohm")], {})
    return { current_A: out.worstCharging, loss_W: out.heat }
  },
  "pack-parallel-two-cells-under-load": (inputs) => {
    const out = strings([at(inputs, "E1_V"), at(inputs, "E2_V")], [at(inputs, "r1_ohm"), at(inputs, "r2_ohm")], {
      current: at(inputs, "load_current_A"),
    })
    return { terminal_voltage_V: out.voltage, current1_A: out.shares[0]?.current, current2_A: out.shares[1]?.current }
  },
  "pack-parallel-unequal-millman": (inputs) => {
    const out = strings([at(inputs, "E1_V"), at(inputs, "E2_V")], [at(inputs, "R1_ohm"), at(inputs, "R2_ohm")], {
      loadResistance: at(inputs, "load_resistance_ohm"),
    })
    return {
      node_voltage_V: out.voltage,
      current_source1_A: out.shares[0]?.current,
      current_source2_A: out.shares[1]?.current,
      load_current_A: out.loadCurrent,
    }
  },
  "pb-pack-parallel-100V-95V": (inputs) => {
    const out = strings(list(inputs, "emf_V"), list(inputs, "resistance_ohm"), { loadResistance: at(inputs, "load_ohm") })
    return { terminal_V: out.voltage, current_A: out.shares.map((s) => s.current) }
  },
  "pb-pack-parallel-circulating": (inputs) => ({
    current_A: strings(list(inputs, "emf_V"), list(inputs, "resistance_ohm"), {}).worstCharging,
  }),
  "pb-pack-parallel-split-equal-emf": (inputs) => {
    const emf = at(inputs, "emf_V")
    const out = strings([emf, emf], list(inputs, "resistance_ohm"), { current: at(inputs, "load_A") })
    return { current_A: out.shares.map((s) => s.current), terminal_V: out.voltage, equivalent_ohm: out.resistance }
  },
}

const air: Record<string, Check> = {
  "pb-pack-air-classify": (inputs) => {
    const built = list(inputs, "series").map((s, k) =>
      pack(s, list(inputs, "parallel")[k] as number, list(inputs, "cell_V")[k] as number, list(inputs, "cell_Ah")[k] as number),
    )
    return { energy_Wh: built.map((p) => p.energy / HOUR), transport: built.map((p) => answer(airTravel, { energy: p.energy }).band) }
  },
  "pb-pack-air-count-limits": () => ({
    max_portable_devices: answer(airTravel, { energy: HOUR, carried: "in-device" }).most,
    max_spare_batteries_up_to_100Wh: answer(airTravel, { energy: HOUR, carried: "spare" }).most,
  }),
  "pb-pack-air-limits": () => ({
    free_limit_Wh: airRules.freeEnergy / HOUR,
    airline_approval_limit_Wh: airRules.approvalEnergy / HOUR,
    max_spares_over_100_Wh: airRules.mostLargeSpares,
    lithium_metal_limit_g: airRules.freeLithium * 1000,
    lithium_metal_approval_limit_g: airRules.approvalLithium * 1000,
  }),
  "pb-pack-air-max-ah-table": (inputs) => {
    const out = list(inputs, "nominal_V").map((nominalVoltage) => answer(airTravel, { nominalVoltage, energy: HOUR }))
    return {
      max_Ah_100Wh: out.map((o) => (o.freeCapacity as number) / HOUR),
      max_Ah_160Wh: out.map((o) => (o.approvalCapacity as number) / HOUR),
    }
  },
  "powerbank-max-under-100Wh": (inputs) => ({
    max_mAh: list(inputs, "nominal_V").map(
      (nominalVoltage) => (answer(airTravel, { nominalVoltage, energy: at(inputs, "limit_Wh") * HOUR }).freeCapacity as number) / 3.6,
    ),
  }),
  "pb-pack-air-powerbank-is-spare": () => ({ counts_as_spare: airRules.powerBankIsSpare }),
  "pb-pack-cargo-limits": () => ({
    small_cell_limit_Wh: cargoRules.smallCellEnergy / HOUR,
    small_battery_limit_Wh: cargoRules.smallBatteryEnergy / HOUR,
    max_state_of_charge: cargoRules.mostCharge,
    passenger_aircraft: cargoRules.onPassengerAircraft ? "allowed" : "forbidden",
    cargo_net_limit_kg: cargoRules.netMassOnCargoAircraft,
  }),
  "pb-pack-wh-definition": (inputs) => ({
    energy_Wh: list(inputs, "nominal_V").map(
      (nominalVoltage, k) =>
        (answer(airTravel, { nominalVoltage, capacity: (list(inputs, "capacity_Ah")[k] as number) * HOUR }).energy as number) / HOUR,
    ),
  }),
  "transport-cargo-soc": () => ({
    max_soc_fraction: cargoRules.mostCharge,
    passenger_aircraft: cargoRules.onPassengerAircraft,
    max_net_mass_kg_cargo_IB: cargoRules.netMassOnCargoAircraft,
  }),
  "transport-cells-under-limit": (inputs) => {
    const [v, q] = [at(inputs, "cell_V"), at(inputs, "cell_Ah")]
    const cell = pack(1, 1, v, q).energy
    return {
      cell_Wh: cell / HOUR,
      pack_Wh: pack(at(inputs, "cells_series"), at(inputs, "cells_parallel"), v, q).energy / HOUR,
      max_cells_100Wh: Math.floor(airRules.freeEnergy / cell),
      max_cells_160Wh: Math.floor(airRules.approvalEnergy / cell),
    }
  },
  "transport-small-cell-battery": () => ({
    cell_Wh_max: cargoRules.smallCellEnergy / HOUR,
    battery_Wh_max: cargoRules.smallBatteryEnergy / HOUR,
  }),
  "transport-smart-luggage": () => ({
    wh_max_nonremovable: airRules.fixedBaggageEnergy / HOUR,
    lithium_metal_g_max_nonremovable: airRules.fixedBaggageLithium * 1000,
  }),
  "transport-spare-rules": () => ({
    spares_le100_max: airRules.mostSpares,
    spares_100_160_max: airRules.mostLargeSpares,
    devices_max: airRules.mostDevices,
    spares_in_checked_baggage: airRules.sparesInHold,
    over_160: answer(airTravel, { energy: 161 * HOUR }).band !== "forbidden",
  }),
  "transport-wh-bands": (inputs) => {
    const words: Record<string, string> = { free: "allowed", approval: "operator approval", forbidden: "cargo only" }
    return { band: list(inputs, "energy_Wh").map((wh) => words[answer(airTravel, { energy: wh * HOUR }).band]) }
  },
}

const rated = (input: object) => answer(peukert, input)
const peukerts: Record<string, Check> = {
  "pb-pack-leadacid-exponent-1p3ah": (inputs) => {
    const [times, amounts] = [list(inputs, "time_h"), list(inputs, "capacity_Ah")]
    const input = { capacity: 1.3 * HOUR, ratedTime: 20 * HOUR, secondCapacity: 0.85 * HOUR, secondTime: HOUR }
    const predicted = (k: number) => rated({ ...input, current: (amounts[k] as number) / (times[k] as number) }).time / HOUR
    return {
      peukert_exponent: rated({ ...input, current: 1 }).exponent,
      predicted_10h_point_h: predicted(1),
      predicted_5h_point_h: predicted(2),
    }
  },
  "pb-pack-leadacid-rate-table": (inputs) => ({
    current_A: list(inputs, "time_h").map(
      (t, k) =>
        rated({ capacity: (list(inputs, "capacity_Ah")[k] as number) * HOUR, ratedTime: t * HOUR, current: 1, exponent: 1.2 }).ratedCurrent,
    ),
  }),
  "pb-pack-peukert-exponent-lfp": twoDischarges,
  "pb-pack-peukert-exponent-nmc": twoDischarges,
  "runtime-peukert-liion-nmc": (inputs) => {
    const [q1, q2] = [at(inputs, "q_C20_Ah"), at(inputs, "q_2C_Ah")]
    return { peukert_k: peukertExponent(q1, q1, q2, q2 / at(inputs, "current_ratio")) }
  },
  "pb-pack-peukert-rated-form": (inputs) => {
    const out = rated({
      capacity: at(inputs, "rated_capacity_Ah") * HOUR,
      ratedTime: at(inputs, "rated_time_h") * HOUR,
      current: at(inputs, "current_A"),
      exponent: at(inputs, "k"),
    })
    return { time_h: out.time / HOUR, time_min: out.time / 60 }
  },
  "pb-pack-peukert-rated-identity": (inputs) => {
    const input = {
      capacity: at(inputs, "rated_capacity_Ah") * HOUR,
      ratedTime: at(inputs, "rated_time_h") * HOUR,
      exponent: at(inputs, "k"),
    }
    const at10 = rated({ ...input, current: 10 })
    return {
      time_h: rated({ ...input, current: at(inputs, "current_A") }).time / HOUR,
      time_at_10A_h: at10.time / HOUR,
      charge_at_10A_Ah: at10.delivered / HOUR,
    }
  },
  "pb-pack-peukert-simple-form": (inputs) => ({
    time_h: oneAmpere(at(inputs, "peukert_capacity_Ah"), at(inputs, "k"), at(inputs, "current_A")),
  }),
  "peukert-agm-exponents": (inputs) => {
    const [currents, times] = [list(inputs, "current_A"), list(inputs, "time_h")]
    const charge = (k: number) => (currents[k] as number) * (times[k] as number)
    return { peukert_k: [1, 2, 3].map((k) => peukertExponent(charge(0), times[0] as number, charge(k), times[k] as number)) }
  },
  "peukert-naive-10A": (inputs) => {
    const hours = oneAmpere(at(inputs, "capacity_Ah"), at(inputs, "peukert_k"), at(inputs, "current_A"))
    return { i_to_k: at(inputs, "capacity_Ah") / hours, naive_form_h: hours }
  },
  "peukert-naive-form-trap": (inputs) => ({
    naive_form_h: oneAmpere(at(inputs, "capacity_Ah"), at(inputs, "peukert_k"), at(inputs, "current_A")),
    rated_form_h:
      rated({
        capacity: at(inputs, "capacity_Ah") * HOUR,
        ratedTime: at(inputs, "rated_hours_h") * HOUR,
        exponent: at(inputs, "peukert_k"),
        current: at(inputs, "current_A"),
      }).time / HOUR,
  }),
  "peukert-rated-form-10A": (inputs) => {
    const out = rated({
      capacity: at(inputs, "capacity_Ah") * HOUR,
      ratedTime: at(inputs, "rated_hours_h") * HOUR,
      exponent: at(inputs, "peukert_k"),
      current: at(inputs, "current_A"),
    })
    return { runtime_h: out.time / HOUR, delivered_Ah: out.delivered / HOUR }
  },
  "peukert-shifted-form-equivalence": (inputs) => {
    const hours =
      rated({
        capacity: at(inputs, "C_Ah") * HOUR,
        ratedTime: at(inputs, "R_h") * HOUR,
        exponent: at(inputs, "n"),
        current: at(inputs, "I_A"),
      }).time / HOUR
    return { form1_h: hours, form2_h: hours }
  },
  "peukert-sla40-exponent": (inputs) => {
    const [times, amounts] = [list(inputs, "time_h"), list(inputs, "capacity_Ah")]
    const k = (i: number) => peukertExponent(amounts[0] as number, times[0] as number, amounts[i] as number, times[i] as number)
    return { peukert_k_20_10: k(1), peukert_k_20_5: k(2), peukert_k_20_1: k(3) }
  },
}

/** The form t = C/I^k: its capacity is the one at 1 A, that is, rated for as many hours as ampere-hours. */
function oneAmpere(ampereHours: number, exponent: number, current: number): number {
  return answer(peukert, { capacity: ampereHours * HOUR, ratedTime: ampereHours * HOUR, exponent, current }).time / HOUR
}
function twoDischarges(inputs: object) {
  const [i1, t1, i2, t2] = [at(inputs, "current1_A"), at(inputs, "time1_h"), at(inputs, "current2_A"), at(inputs, "time2_h")]
  return { peukert_exponent: peukertExponent(i1 * t1, t1, i2 * t2, t2) }
}

const banks: Record<string, Check> = {
  "pb-pack-powerbank-5V": (inputs) => {
    const out = list(inputs, "efficiency").map((bankEfficiency) =>
      answer(powerBank, {
        capacity: at(inputs, "capacity_mAh") * 3.6,
        cellVoltage: at(inputs, "cell_V"),
        portVoltage: at(inputs, "output_V"),
        bankEfficiency,
        power: 5,
      }),
    )
    return { energy_Wh: (out[0]?.cellEnergy as number) / HOUR, output_mAh: out.map((o) => o.portCharge / 3.6) }
  },
  "pb-pack-powerbank-runtime": (inputs) => ({
    time_h:
      (answer(powerBank, {
        capacity: (at(inputs, "energy_Wh") / 3.7) * HOUR,
        portVoltage: at(inputs, "output_V"),
        bankEfficiency: at(inputs, "efficiency"),
        current: at(inputs, "current_A"),
      }).runtime as number) / HOUR,
  }),
  "powerbank-10000mAh": (inputs) => {
    const out = list(inputs, "efficiency").map((bankEfficiency) =>
      answer(powerBank, {
        capacity: at(inputs, "cell_capacity_mAh") * 3.6,
        cellVoltage: at(inputs, "cell_voltage_V"),
        portVoltage: at(inputs, "output_voltage_V"),
        bankEfficiency,
        power: 5,
      }),
    )
    return { output_mAh: out.map((o) => o.portCharge / 3.6), cell_energy_Wh: (out[0]?.cellEnergy as number) / HOUR }
  },
}

const runs: Record<string, Check> = {
  "pb-pack-run-constant-current-10A": (inputs) => {
    const out = run(
      at(inputs, "capacity_Ah"),
      at(inputs, "resistance_ohm"),
      { current: at(inputs, "current_A") },
      {
        cutOffVoltage: at(inputs, "cutoff_V"),
        curve: curve(list(inputs, "soc"), list(inputs, "ocv_V")),
      },
    )
    return { soc_end: out.endCharge, runtime_h: out.runtime / HOUR, energy_Wh: out.energy / HOUR }
  },
  "pb-pack-run-constant-power-40W": (inputs) => {
    const out = run(
      at(inputs, "capacity_Ah"),
      at(inputs, "resistance_ohm"),
      { power: at(inputs, "power_W") },
      {
        cutOffVoltage: at(inputs, "cutoff_V"),
        curve: curve(list(inputs, "soc"), list(inputs, "ocv_V")),
      },
    )
    return {
      runtime_h: out.runtime / HOUR,
      energy_delivered_Wh: out.energy / HOUR,
      start_current_A: out.startCurrent,
      end_current_A: out.endCurrent,
      soc_end: out.endCharge,
    }
  },
  "pb-pack-runtime-200Ah": (inputs) => ({
    time_h: list(inputs, "current_A").map((current) =>
      Number((run(at(inputs, "capacity_Ah"), 0, { current }, { curve: level(12) }).runtime / HOUR).toPrecision(12)),
    ),
  }),
  "pb-pack-runtime-headlight-27W": (inputs) => {
    const out = run(at(inputs, "capacity_Ah"), 0, { power: at(inputs, "power_W") }, { curve: level(at(inputs, "voltage_V")) })
    return { time_h: out.runtime / HOUR, energy_MJ: out.energy / 1e6 }
  },
  "runtime-aaa-resistor": (inputs) => ({
    runtime_h: list(inputs, "load_resistance_ohm").map(
      (loadResistance) => run(at(inputs, "capacity_Ah"), 0, { loadResistance }, { curve: level(at(inputs, "voltage_V")) }).runtime / HOUR,
    ),
  }),
  "runtime-constant-current-reference": (inputs) => {
    const out = onTable(inputs, { current: at(inputs, "current_A") })
    return { runtime_h: out.runtime / HOUR, end_soc: out.endCharge, energy_delivered_Wh: out.energy / HOUR }
  },
  "runtime-constant-power-reference": (inputs) => constantPower(inputs),
  "runtime-constant-power-double": (inputs) => {
    const out = constantPower(inputs)
    return { ...out, ratio_to_15W: out.runtime_h / (onTable(inputs, { power: 15 }).runtime / HOUR) }
  },
  "runtime-constant-resistance-reference": (inputs) => {
    const out = onTable(inputs, { loadResistance: at(inputs, "load_resistance_ohm") })
    return { runtime_h: out.runtime / HOUR, end_soc: out.endCharge }
  },
  "runtime-duty-cycle-mean-power": (inputs) => {
    const shares = list(inputs, "duty_fraction")
    // rounds so short that the last one's share does not show
    const pattern = list(inputs, "current_A").map((current, k) => ({ current, duration: 0.1 * (shares[k] as number) }))
    const out = run(4, 0.02, {}, { pattern })
    return { mean_current_A: out.meanCurrent, rms_current_A: out.rmsCurrent }
  },
  "runtime-pack-scaling-invariance": (inputs) => {
    const [series, parallelCells] = [at(inputs, "cells_series"), at(inputs, "cells_parallel")]
    const out = run(
      at(inputs, "capacity_Ah"),
      at(inputs, "internal_resistance_cell_ohm"),
      { power: at(inputs, "power_W") },
      {
        series,
        parallel: parallelCells,
        cutOffVoltage: at(inputs, "cutoff_terminal_V") / series,
        curve: curve(list(inputs, "ocv_soc"), list(inputs, "ocv_V")),
      },
    )
    const { resistance } = pack(series, parallelCells, 3.6, 4.2, { resistance: at(inputs, "internal_resistance_cell_ohm") })
    return { runtime_h: out.runtime / HOUR, pack_resistance_ohm: resistance, start_current_A: out.startCurrent }
  },
}
for (const id of ["lfp-1c", "lfp-c2", "nmc-1c", "nmc-c2"])
  runs[`pb-pack-predict-${id}`] = (inputs) => {
    const resistance = at(inputs, "resistance_mohm") / 1000
    // the slow discharge's own drop is put back, so that the curve is one without load
    const voltages = list(inputs, "voltage_c20_V").map((v) => v + at(inputs, "current_c20_A") * resistance)
    const out = run(
      at(inputs, "capacity_c20_Ah"),
      resistance,
      { current: at(inputs, "current_A") },
      {
        cutOffVoltage: at(inputs, "cutoff_V"),
        curve: curve(list(inputs, "soc"), voltages),
      },
    )
    const [hours, wattHours] = [out.runtime / HOUR, out.energy / HOUR]
    return { measured_runtime_h: hours, measured_energy_Wh: wattHours, model_runtime_h: hours, model_energy_Wh: wattHours }
  }

function onTable(inputs: object, load: object) {
  return run(at(inputs, "capacity_Ah"), at(inputs, "internal_resistance_ohm"), load, {
    cutOffVoltage: at(inputs, "cutoff_terminal_V"),
    curve: curve(list(inputs, "ocv_soc"), list(inputs, "ocv_V")),
  })
}
function constantPower(inputs: object) {
  const out = onTable(inputs, { power: at(inputs, "power_W") })
  return {
    runtime_h: out.runtime / HOUR,
    end_soc: out.endCharge,
    start_current_A: out.startCurrent,
    end_current_A: out.endCurrent,
    energy_delivered_Wh: out.energy / HOUR,
  }
}

/** Why single values of a checked row are left out. */
const size = "generic cells carry no dimensions"
const notKept = "not among the figures kept of a generic cell"
const dense = "needs the dense data, which are not kept here"
const temperatures = "temperature limits of one cell are not kept"

referenceTests(
  "pack",
  { ...cells, ...curves, ...charging, ...packs, ...parallel, ...air, ...peukerts, ...banks, ...runs },
  {
    "cell-21700-high-power": { standard_charge_A: notKept, diameter_mm_max: size, height_mm_max: size },
    "cell-agm-12v-5ah": { max_discharge_5s_A: notKept, discharge_degC_min: temperatures, charge_degC_min: temperatures },
    "cell-alkaline-aa": { r_from_short_ohm: "the larger of the two published resistances is kept, on the safe side" },
    "cell-nimh-a-large": { average_capacity_mAh: "the rated (least) capacity is kept" },
    "pb-pack-cell-nimh-lfat-a": {
      average_mAh: "the rated (least) capacity is kept",
      charge_standard_degC: temperatures,
      charge_rapid_degC: temperatures,
      discharge_degC: temperatures,
    },
    "pb-pack-cell-nimh-aaa": {
      average_mAh: "the rated (least) capacity is kept",
      charge_standard_degC: temperatures,
      charge_rapid_degC: temperatures,
      discharge_degC: temperatures,
    },
    "pb-pack-cell-21700-40tg": { energy_density_Wh_per_L: size },
    "pb-pack-cell-21700-50s": { max_with_80C_cut_A: notKept, diameter_max_mm: size, height_max_mm: size },
    "pb-pack-cell-lfp-26650-3300": { pulse_10s_A: notKept, pulse_C: notKept },
    "pb-pack-chem-ico": { cutoff_V: "the row's own note: practical packs stop at 3.0 V, which is kept", max_charge_current_C: notKept },
    "pb-pack-chem-lead-acid-cutoffs": {
      cell_20h_V: "one least voltage is kept, that of the 10 h rate",
      cell_5h_V: "one least voltage is kept, that of the 10 h rate",
      cell_1h_V: "one least voltage is kept, that of the 10 h rate",
    },
    "pb-pack-chem-lfp": { cutoff_V: "a range; its upper, safer end is kept and checked with the 26650 cell" },
    "pb-pack-chem-nimh": { standard_charge_C: "an input of chargeTime", rapid_charge_C: "an input of chargeTime" },
    "ocv-dense21-apr18650": { mean_V: dense },
    "ocv-lead-acid-12v": { specific_gravity: "no solver reads a hydrometer" },
    "ocv-lfp-plateau-flatness": { nmc_mV: "of another cell than the one curve kept" },
    "pb-pack-ocv-lut10-lfp-18650": { max_error_against_data_V: dense, mean_error_against_data_V: dense },
    "pb-pack-ocv-lut10-nmc-21700-power": { max_error_against_data_V: dense, mean_error_against_data_V: dense },
    "pb-pack-ocv-nmc-18650-power-21pt-mean-bias": { mean_full_V: dense },
    "pb-pack-ocv-nmc-21700-energy-21pt-mean-bias": { mean_full_V: dense },
    "pb-pack-ocv-nmc-21700-power-21pt-mean-bias": { mean_full_V: dense },
    "charge-agm": {
      float_V_min: "chargeTime charges once and does not float",
      float_V_max: "chargeTime charges once and does not float",
      cycle_V_max: "the lower end of the range is kept",
      float_compensation_mV_per_degC: "chargeTime takes the charge voltage as given",
      cycle_compensation_mV_per_degC: "chargeTime takes the charge voltage as given",
      time_full_from_100pct_float_h: "chargeTime charges once and does not float",
      time_full_from_100pct_cycle_h: "the sheet names no current to reckon with",
    },
    "charge-power-flow-car-battery": { terminal_voltage_V: "packUnderLoad discharges only" },
    "pb-pack-charge-allowed-below-zero": {
      max_charge_degC: "upper ends differ from sheet to sheet; the strictest is checked by charge-no-charge-below-zero",
      cells: "names of the sheets",
    },
    "pb-pack-charge-cccv-closed-form": { tau_h: "an intermediate of the row, not an answer" },
    "pb-pack-charge-termination": {
      taper_fraction_of_C: "a range; endCurrent is an input, its default the upper end",
      precharge_below_V: "chargeTime does not charge deeply emptied cells",
      precharge_fraction: "chargeTime does not charge deeply emptied cells",
    },
    "pb-pack-charge-time-40tg": { printed_time_min: "measured by the maker; the ratio to it is checked" },
    "pb-pack-charge-time-50s": { printed_time_min: "measured by the maker; the ratio to it is checked" },
    "pack-car-battery-energy": { mass_increase_kg: "no solver reckons relativity" },
    "pack-constant-power-two-roots": { rejected_current_A: "the greater root is never an answer" },
    "pack-laptop-3s4p": { equivalent_lithium_content_g: "the old measure in grams of lithium is no longer a passenger rule" },
    "pb-pack-energy-12V-55Ah": { defined_Ah: "current times time, the definition" },
    "pb-pack-leadacid-rate-table": { fraction_of_20h: "a quotient of the inputs" },
    "pb-pack-run-constant-power-40W": { naive_runtime_h: "reckoned from the curve's mean; simpleEstimate uses the nominal voltage" },
  },
)
