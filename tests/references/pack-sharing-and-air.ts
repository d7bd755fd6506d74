import { airTravel, powerBankRules, smallLithium, transportRules } from "../../src/pack/index.js"
import type { Check } from "../helpers/references.js"
import { answer, at, list, pack, strings } from "./pack-helpers.js"

const HOUR = 3600
const { passenger: ion, sent } = transportRules["lithium-ion"]
const { passenger: metal } = transportRules["lithium-metal"]

/** Checks by row id. */
export const parallel: Record<string, Check> = {
  "pack-parallel-equal-emf-split": (inputs) => {
    const { strings: shares } = strings([4, 4], [at(inputs, "r1_relative"), at(inputs, "r2_relative")], { current: 1 })
    const [low, high] = shares.map((s) => s.current) as [number, number]
    return { share_low_resistance_cell: low, share_high_resistance_cell: high, ratio: low / high }
  },
  "pack-parallel-equalising-inrush": (inputs) => {
    const out = strings([at(inputs, "E1_V"), at(inputs, "E2_V")], [at(inputs, "r1_ohm"), at(inputs, "r2_ohm")], {})
    return { current_A: out.maxStringChargeCurrent, loss_W: out.heat }
  },
  "pack-parallel-two-cells-under-load": (inputs) => {
    const out = strings([at(inputs, "E1_V"), at(inputs, "E2_V")], [at(inputs, "r1_ohm"), at(inputs, "r2_ohm")], {
      current: at(inputs, "load_current_A"),
    })
    return { terminal_voltage_V: out.terminalVoltage, current1_A: out.strings[0]?.current, current2_A: out.strings[1]?.current }
  },
  "pack-parallel-unequal-millman": (inputs) => {
    const out = strings([at(inputs, "E1_V"), at(inputs, "E2_V")], [at(inputs, "R1_ohm"), at(inputs, "R2_ohm")], {
      loadResistance: at(inputs, "load_resistance_ohm"),
    })
    return {
      node_voltage_V: out.terminalVoltage,
      current_source1_A: out.strings[0]?.current,
      current_source2_A: out.strings[1]?.current,
      load_current_A: out.loadCurrent,
    }
  },
  "pb-pack-parallel-100V-95V": (inputs) => {
    const out = strings(list(inputs, "emf_V"), list(inputs, "resistance_ohm"), { loadResistance: at(inputs, "load_ohm") })
    return { terminal_V: out.terminalVoltage, current_A: out.strings.map((s) => s.current) }
  },
  "pb-pack-parallel-circulating": (inputs) => ({
    current_A: strings(list(inputs, "emf_V"), list(inputs, "resistance_ohm"), {}).maxStringChargeCurrent,
  }),
  "pb-pack-parallel-split-equal-emf": (inputs) => {
    const emf = at(inputs, "emf_V")
    const out = strings([emf, emf], list(inputs, "resistance_ohm"), { current: at(inputs, "load_A") })
    return { current_A: out.strings.map((s) => s.current), terminal_V: out.terminalVoltage, equivalent_ohm: out.resistance }
  },
}

/** Checks by row id. */
export const air: Record<string, Check> = {
  "pb-pack-air-classify": (inputs) => {
    const built = list(inputs, "series").map((s, k) =>
      pack(s, list(inputs, "parallel")[k] as number, list(inputs, "cell_V")[k] as number, list(inputs, "cell_Ah")[k] as number),
    )
    return { energy_Wh: built.map((p) => p.energy / HOUR), transport: built.map((p) => answer(airTravel, { energy: p.energy }).rule) }
  },
  "pb-pack-air-count-limits": () => ({
    max_portable_devices: answer(airTravel, { energy: HOUR, carriedAs: "in-device" }).maxCount,
    max_spare_batteries_up_to_100Wh: answer(airTravel, { energy: HOUR, carriedAs: "spare" }).maxCount,
  }),
  "pb-pack-air-limits": () => ({
    free_limit_Wh: ion.energy.free / HOUR,
    airline_approval_limit_Wh: ion.energy.approval / HOUR,
    max_spares_over_100_Wh: ion.largeSpares,
    lithium_metal_limit_g: metal.lithium.free * 1000,
    lithium_metal_approval_limit_g: metal.lithium.approval * 1000,
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
  "pb-pack-air-powerbank-is-spare": () => ({ counts_as_spare: powerBankRules.countsAsSpare }),
  "pb-pack-cargo-limits": () => ({
    small_cell_limit_Wh: smallLithium.cellEnergy / HOUR,
    small_battery_limit_Wh: smallLithium.batteryEnergy / HOUR,
    max_state_of_charge: sent.maxStateOfCharge,
    passenger_aircraft: sent.onPassengerAircraft ? "allowed" : "forbidden",
    cargo_net_limit_kg: smallLithium.netMass,
  }),
  "pb-pack-wh-definition": (inputs) => ({
    energy_Wh: list(inputs, "nominal_V").map(
      (nominalVoltage, k) =>
        (answer(airTravel, { nominalVoltage, capacity: (list(inputs, "capacity_Ah")[k] as number) * HOUR }).energy as number) / HOUR,
    ),
  }),
  "transport-cargo-soc": () => ({
    max_soc_fraction: sent.maxStateOfCharge,
    passenger_aircraft: sent.onPassengerAircraft,
    max_net_mass_kg_cargo_IB: smallLithium.netMass,
  }),
  "transport-cells-under-limit": (inputs) => {
    const [v, q] = [at(inputs, "cell_V"), at(inputs, "cell_Ah")]
    const cell = pack(1, 1, v, q).energy
    return {
      cell_Wh: cell / HOUR,
      pack_Wh: pack(at(inputs, "cells_series"), at(inputs, "cells_parallel"), v, q).energy / HOUR,
      max_cells_100Wh: Math.floor(ion.energy.free / cell),
      max_cells_160Wh: Math.floor(ion.energy.approval / cell),
    }
  },
  "transport-small-cell-battery": () => ({
    cell_Wh_max: smallLithium.cellEnergy / HOUR,
    battery_Wh_max: smallLithium.batteryEnergy / HOUR,
  }),
  "transport-smart-luggage": () => ({
    wh_max_nonremovable: ion.fixedInBaggage.energy / HOUR,
    lithium_metal_g_max_nonremovable: metal.fixedInBaggage.lithium * 1000,
  }),
  "transport-spare-rules": () => ({
    spares_le100_max: ion.spares,
    spares_100_160_max: ion.largeSpares,
    devices_max: ion.devices,
    spares_in_checked_baggage: ion.sparesInHold,
    over_160: answer(airTravel, { energy: 161 * HOUR }).rule !== "forbidden",
  }),
  "transport-wh-bands": (inputs) => {
    const words: Record<string, string> = { free: "allowed", approval: "operator approval", forbidden: "cargo only" }
    return { band: list(inputs, "energy_Wh").map((wh) => words[answer(airTravel, { energy: wh * HOUR }).rule]) }
  },
  "transport-dry-cells-passenger": () => {
    const kinds = ["dry", "nickel"] as const
    const none = kinds.every((type) => airTravel({ type, count: 1000 }).withinMaxCount && airTravel({ type }).maxCount === null)
    return {
      quantity_limit: none ? "none" : "some",
      terminals_protected: kinds.every((type) => airTravel({ type }).cautions.some((c) => c.code === "terminals-covered")),
    }
  },
  "transport-nimh-air-a199": () => {
    const { sentAs, cautions } = airTravel({ type: "nickel" })
    return {
      un3496_used_by_air: transportRules.nickel.sent.byAir,
      restricted: !sentAs.startsWith("By air not restricted"),
      short_circuit_protection_required: cautions.some((c) => c.code === "terminals-covered"),
    }
  },
  "transport-nimh-sea-sp963": () => {
    const { hazardClass, papersFromMass, withEquipment } = transportRules.nickel.sent
    return { class: hazardClass, document_from_kg_gross: papersFromMass, in_equipment_regulated: withEquipment !== null }
  },
  "transport-un-number-map": () => {
    const { lead, nickel } = transportRules
    return {
      un_number: [lead.sent.spillable, nickel.sent.spillable, lead.sent.alone, nickel.sent.alone, sent.alone, sent.withEquipment],
    }
  },
  "transport-un2800-air": () => ({ class: transportRules.lead.sent.hazardClass }),
}

/** Why single values of these rows are left out. */
export const airWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "transport-dry-cells-passenger": { charger_counts_as_protection: "stands in the words of the caution" },
  "transport-nimh-sea-sp963": { button_cells_regulated: "packs of button cells are not told apart" },
  "transport-un2800-air": {
    limited_quantity: "papers of the sender",
    packing_instruction: "papers of the sender; named in the source",
    net_limit_per_package: "papers of the sender",
    special_provisions: "papers of the sender; A67 is what airTravel.sentAs tells",
  },
}
