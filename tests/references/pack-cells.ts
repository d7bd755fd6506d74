import { interpolate } from "../../src/numeric/index.js"
import {
  type Chemistry,
  chargeTime,
  chemistries,
  curveOf,
  genericCells,
  openCircuitVoltage,
  peukert,
  peukertExponent,
} from "../../src/pack/index.js"
import type { Check } from "../helpers/references.js"
import { answer, at, curve, list, pack, run, source } from "./pack-helpers.js"

const HOUR = 3600

/** Mean of a chemistry's curve, as the discharge without resistance gives it. */
const meanVoltage = (chemistry: Chemistry) => {
  const cell = curveOf(chemistry)
  const out = run(
    1,
    0,
    { current: 1 },
    {
      openCircuitCurve: curve(
        cell.map(([s]) => s),
        cell.map(([, v]) => v),
      ),
    },
  )
  return out.deliveredEnergy / out.deliveredCharge
}
const curveRow =
  (chemistry: Chemistry, voltages: string, mean?: string): Check =>
  (inputs) => ({
    [voltages]: list(inputs, "soc").map((s) => openCircuitVoltage(chemistry, s)),
    ...(mean === undefined ? {} : { [mean]: meanVoltage(chemistry) }),
  })

/** Checks by row id. */
export const cells: Record<string, Check> = {
  "cell-21700-high-power": () => {
    const cell = genericCells["21700-power"]
    const kind = chemistries[cell.chemistry]
    return {
      nominal_V: kind.cellNominalVoltage,
      charge_V: kind.cellFullVoltage,
      cutoff_V: kind.cellCutOffVoltage,
      capacity_Ah: cell.cellCapacity / HOUR,
      // the direct-current resistance is taken as twice the 1 kHz one
      ac_impedance_mohm_max: (cell.cellResistance / 2) * 1000,
      max_continuous_A: cell.cellMaxCurrent,
      max_charge_A: cell.cellMaxChargeCurrent,
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
    const loaded = source(at(inputs, "open_circuit_V"), cell.cellResistance, { loadResistance: at(inputs, "load_ohm") })
    return { r_from_load_ohm: (at(inputs, "open_circuit_V") - loaded.terminalVoltage) / loaded.current }
  },
  "cell-alkaline-aa-rate": (inputs) => {
    const [first, second] = list(inputs, "current_mA").map((i) => i / 1000) as [number, number]
    const rated = { capacity: 2.9 * HOUR, ratedDuration: (2.9 / first) * HOUR, exponent: 1.243 }
    return { capacity_mAh: [first, second].map((current) => answer(peukert, { ...rated, current }).deliveredCharge / 3.6) }
  },
  "cell-alkaline-aa-rate-exponent": (inputs) => {
    const [q1, q2] = list(inputs, "capacity_mAh") as [number, number]
    const [i1, i2] = list(inputs, "current_mA") as [number, number]
    return { peukert_k: peukertExponent(q1, q1 / i1, q2, q2 / i2) }
  },
  "cell-lead-acid-count": () => ({ cell_V: pack(6, 1, chemistries.lead.cellNominalVoltage, 1).nominalVoltage / 6 }),
  "cell-nimh-a-large": () => {
    const cell = genericCells["a-nimh"]
    return {
      nominal_V: chemistries.nimh.cellNominalVoltage,
      rated_capacity_mAh: cell.cellCapacity / 3.6,
      ac_impedance_mohm: (cell.cellResistance / 2) * 1000,
      mass_g: cell.cellMass * 1000,
    }
  },
  "pb-pack-cell-nimh-lfat-a": () => nickel("a-nimh"),
  "pb-pack-cell-nimh-aaa": () => nickel("aaa-nimh"),
  "pb-pack-cell-21700-b": (inputs) => {
    const cell = genericCells["21700-power"]
    const one = pack(1, 1, at(inputs, "nominal_V"), at(inputs, "capacity_Ah"), { cellMass: at(inputs, "mass_kg") })
    return {
      energy_Wh: one.energy / HOUR,
      specific_energy_Wh_per_kg: (one.specificEnergy as number) / HOUR,
      ac_resistance_max_mohm: (cell.cellResistance / 2) * 1000,
      max_discharge_A: cell.cellMaxCurrent,
      max_charge_A: cell.cellMaxChargeCurrent,
    }
  },
  "pb-pack-cell-21700-c": (inputs) => {
    const cell = genericCells["21700-energy"]
    return {
      energy_Wh: pack(1, 1, at(inputs, "nominal_V"), at(inputs, "capacity_Ah")).energy / HOUR,
      rated_capacity_Ah: cell.cellCapacity / HOUR,
      max_continuous_A: cell.cellMaxCurrent,
      mass_max_g: cell.cellMass * 1000,
    }
  },
  "pb-pack-cell-lfp-26650-3300": () => {
    const cell = genericCells["26650-lfp"]
    const hour = cell.cellCapacity / HOUR
    return {
      max_charge_mA: cell.cellMaxChargeCurrent * 1000,
      max_charge_C: cell.cellMaxChargeCurrent / hour,
      max_discharge_A: cell.cellMaxCurrent,
      max_discharge_C: cell.cellMaxCurrent / hour,
      resistance_max_mohm: (cell.cellResistance / 2) * 1000,
      mass_g: cell.cellMass * 1000,
      cutoff_V: chemistries.lfp.cellCutOffVoltage,
    }
  },
  "pb-pack-chem-alkaline": () => ({
    nominal_V: chemistries.alkaline.cellNominalVoltage,
    fresh_open_circuit_V: openCircuitVoltage("alkaline", 1),
    cutoff_V: chemistries.alkaline.cellCutOffVoltage,
  }),
  "pb-pack-chem-ico": () => ({ nominal_V: chemistries.lco.cellNominalVoltage, full_V: chemistries.lco.cellFullVoltage }),
  "pb-pack-chem-lead-acid-cutoffs": () => ({ cell_10h_V: chemistries.lead.cellCutOffVoltage }),
  "pb-pack-chem-lfp": () => ({
    nominal_V: chemistries.lfp.cellNominalVoltage,
    full_V: chemistries.lfp.cellFullVoltage,
    mean_ocv_V: meanVoltage("lfp"),
  }),
  "pb-pack-chem-nimh": () => {
    const charge = (rate: number) =>
      answer(chargeTime, { series: 1, parallel: 1, chemistry: "nimh", cellCapacity: HOUR, cellResistance: 0, chargeCurrent: rate })
        .minDuration / HOUR
    return {
      nominal_V: chemistries.nimh.cellNominalVoltage,
      cutoff_V: chemistries.nimh.cellCutOffVoltage,
      standard_charge_h: Number(charge(0.1).toPrecision(12)),
      rapid_charge_h: Number(charge(1).toPrecision(12)),
    }
  },
  "pb-pack-chem-nmc": () => ({
    nominal_V: chemistries.nmc.cellNominalVoltage,
    full_V: chemistries.nmc.cellFullVoltage,
    cutoff_V: chemistries.nmc.cellCutOffVoltage,
    mean_ocv_V: meanVoltage("nmc"),
  }),
}

function nickel(name: "a-nimh" | "aaa-nimh") {
  const cell = genericCells[name]
  return {
    impedance_1kHz_mohm: (cell.cellResistance / 2) * 1000,
    standard_charge_mA: cell.cellCapacity / 3.6 / 10,
    mass_g: cell.cellMass * 1000,
  }
}

/** Checks by row id. */
export const curves: Record<string, Check> = {
  "ocv-chen-rinconmora-lipo": curveRow("lco", "ocv_V"),
  "pb-pack-ocv-lipo-chen-rincon-mora": curveRow("lco", "ocv_V"),
  "ocv-dense21-lfp-18650": curveRow("lfp", "ocv_V"),
  "ocv-lut10-lfp-18650": curveRow("lfp", "ocv_V"),
  "pb-pack-ocv-lfp-18650-21pt": curveRow("lfp", "ocv_V", "mean_ocv_0_to_1_V"),
  "ocv-lut10-21700-energy": curveRow("nmc", "ocv_V"),
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
    const out = run(1, 0, { current: 1 }, { openCircuitCurve: curve(list(inputs, "soc"), list(inputs, "ocv_V")) })
    return { mean_21pt_V: out.deliveredEnergy / out.deliveredCharge }
  }
