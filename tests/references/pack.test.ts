import { referenceTests } from "../helpers/references.js"
import { ages } from "./pack-age.js"
import { cells, curves } from "./pack-cells.js"
import { charging, packs } from "./pack-charging.js"
import { leadAndNickel, leadAndNickelWithout } from "./pack-lead-and-nickel.js"
import { peukerts } from "./pack-peukert.js"
import { banks, runs } from "./pack-runs.js"
import { air, airWithout, parallel } from "./pack-sharing-and-air.js"
import { storage, storageWithout } from "./pack-storage.js"

/** Why single values of a checked row are left out. */
const size = "generic cells carry no dimensions"
const notKept = "not among the figures kept of a generic cell"
const dense = "needs the dense data, which are not kept here"
const temperatures = "temperature limits of one cell are not kept"

referenceTests(
  "pack",
  {
    ...cells,
    ...curves,
    ...charging,
    ...packs,
    ...parallel,
    ...air,
    ...peukerts,
    ...banks,
    ...runs,
    ...leadAndNickel,
    ...ages,
    ...storage,
  },
  {
    ...leadAndNickelWithout,
    ...storageWithout,
    ...airWithout,
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
    "pb-pack-cell-21700-b": { energy_density_Wh_per_L: size },
    "pb-pack-cell-21700-c": { max_with_80C_cut_A: notKept, diameter_max_mm: size, height_max_mm: size },
    "pb-pack-cell-lfp-26650-3300": { pulse_10s_A: notKept, pulse_C: notKept },
    "pb-pack-chem-ico": { cutoff_V: "the row's own note: practical packs stop at 3.0 V, which is kept", max_charge_current_C: notKept },
    "pb-pack-chem-lead-acid-cutoffs": {
      cell_20h_V: "one least voltage is kept, that of the 10 h rate",
      cell_5h_V: "one least voltage is kept, that of the 10 h rate",
      cell_1h_V: "one least voltage is kept, that of the 10 h rate",
    },
    "pb-pack-chem-lfp": { cutoff_V: "a range; its upper, safer end is kept and checked with the 26650 cell" },
    "pb-pack-chem-nimh": { standard_charge_C: "an input of chargeTime", rapid_charge_C: "an input of chargeTime" },
    "ocv-dense21-lfp-18650": { mean_V: dense },
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
      float_compensation_mV_per_degC: "chargeTime charges once and does not float",
      time_full_from_100pct_float_h: "chargeTime charges once and does not float",
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
    "pb-pack-charge-time-b": { printed_time_min: "measured by the maker; the ratio to it is checked" },
    "pb-pack-charge-time-c": { printed_time_min: "measured by the maker; the ratio to it is checked" },
    "pack-car-battery-energy": { mass_increase_kg: "no solver reckons relativity" },
    "pack-constant-power-two-roots": { rejected_current_A: "the greater root is never an answer" },
    "pack-laptop-3s4p": { equivalent_lithium_content_g: "the old measure in grams of lithium is no longer a passenger rule" },
    "pb-pack-energy-12V-55Ah": { defined_Ah: "current times time, the definition" },
    "pb-pack-leadacid-rate-table": { fraction_of_20h: "a quotient of the inputs" },
    "pb-pack-run-constant-power-40W": { naive_runtime_h: "reckoned from the curve's mean; simpleEstimate uses the nominal voltage" },
  },
)
