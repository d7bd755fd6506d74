import { packStorage, type StandingKind, standingFactor } from "../../src/pack/index.js"
import { leadTopping } from "../../src/pack/pack-storage/data.js"
import type { Check } from "../helpers/references.js"
import { answer, at, list } from "./pack-helpers.js"

const YEAR = 365 * 86400
const stood = (cells: StandingKind, duration: number, storageTemperature: number, more: object = {}) =>
  answer(packStorage, { cells, capacity: 3600, duration, storageTemperature, ...more })
const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8
/** The sheet counts whole months of its year. */
const months = (count: number) => (count * YEAR) / 12

/** Checks by row id. */
export const storage: Record<string, Check> = {
  "selfdis-agm-compound": (inputs) => {
    const left = list(inputs, "months").map((n) => stood("lead-sealed", months(n), 25).stateOfCharge.high)
    return { linear_fraction: left }
  },
  "selfdis-12v-4ah-storage": (inputs) => ({
    capacity_fraction: list(inputs, "months").map((n) => stood("lead-sealed", months(n), 20).stateOfCharge.low),
  }),
  "sla-12v-28ah-storage": (inputs) => {
    const left = list(inputs, "month").map((n) => stood("lead-sealed", months(n), 25).stateOfCharge.high)
    return { residual_fraction: left, mean_loss_per_month: left.map((f, k) => 1 - f ** (1 / (list(inputs, "month")[k] as number))) }
  },
  "selfdis-flooded-weekly": (inputs) => {
    const lost = (weeks: number) => at(inputs, "capacity_Ah") * stood("lead-flooded", weeks * 7 * 86400, celsius(80)).selfDischarge.high
    return { loss_Ah_per_week: lost(1), loss_Ah: lost(at(inputs, "weeks")) }
  },
  "selfdis-alkaline-temperature": (inputs) => ({
    alkaline_percent_per_year: list(inputs, "temperature_degF").map((t) => 100 * stood("alkaline", YEAR, celsius(t)).selfDischarge.low),
  }),
  "selfdis-nimh-temperature-factor": () => {
    const first = stood("nickel", 86400, 20).selfDischarge.high
    const month = stood("nickel", 86400 + months(1), 20).selfDischarge.high - first
    return {
      first_24h_percent_max: 100 * (first - month / (365 / 12)),
      per_month_percent_max: 100 * month,
      factor_40_over_20degC: standingFactor("nickel", 40, 20),
    }
  },
  "lead-storage-topping": () => ({
    interval_month: stood("lead-sealed", 0, 25, { minStateOfCharge: 0 }).topUpInterval / months(1),
    voltage_min_V_per_cell: leadTopping.cellVoltage,
    block_12V_V: 6 * leadTopping.cellVoltage,
  }),
  "liion-calendar-100pct": (inputs) => ({
    fraction: list(inputs, "temperature_degC").map(
      (t, k) =>
        stood("lithium", months(list(inputs, "time_month")[k] as number), t, { startStateOfCharge: at(inputs, "state_of_charge") })
          .capacityShare,
    ),
  }),
}

/** Why single values of these rows are left out. */
export const storageWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "selfdis-agm-compound": { compound_fraction: "the sheets draw the loss straight, and so does packStorage" },
  "selfdis-alkaline-temperature": {
    temperature_degC: "a conversion of the inputs",
    nimh_percent_per_day_room: "a mean over the first weeks: nickel loses most in the first day",
  },
}
