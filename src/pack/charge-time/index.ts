import { bandField, type Issue, inconsistent, type Solver, solver, without } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { packFields } from "../fields.js"
import { curveFaults, curveField } from "../open-circuit.js"
import { CHARGE_TIMES, LEAD_CHARGE_TIMES, LEAD_CHARGING, LEAD_FULL_TIMES, NICKEL_ENDS, NICKEL_SHEETS } from "../sources.js"
import { cautions } from "./cautions.js"
import { chargeFormulae } from "./formulae.js"
import { highestChargeVoltage, solve } from "./kernel.js"
import type { ChargeTimeInput } from "./problem.js"
import type { ChargeTime, ChargeTimeCaution, ChargeTimeRefusal, Si } from "./types.js"

export type { ChargeTime } from "./types.js"

function check(si: Si): Issue[] {
  const faults = curveFaults(si.openCircuitCurve)
  const { chargeCurrent, terminationCurrent, cellChargeVoltage } = si
  if (terminationCurrent !== null && !(terminationCurrent < chargeCurrent))
    faults.push(
      inconsistent(["terminationCurrent"], "{terminationCurrent current}", "less than the charging current, {chargeCurrent current}", {
        terminationCurrent,
        chargeCurrent,
      }),
    )
  if (cellChargeVoltage !== null && si.chemistry === "nimh")
    faults.push(inconsistent(["cellChargeVoltage"], "a charge voltage", "none: nickel cells are charged by their current alone"))
  else if (cellChargeVoltage !== null && cellChargeVoltage > highestChargeVoltage(si))
    faults.push(
      inconsistent(["cellChargeVoltage"], "{cellChargeVoltage voltage}", "not far above the {full voltage} of this chemistry", {
        cellChargeVoltage,
        full: chemistries[si.chemistry].cellFullVoltage,
      }),
    )
  return faults
}

const chargeFields = without(packFields, "cellCutOffVoltage")

/**
 * How long a charger takes that gives a constant current, then holds a constant voltage.
 *
 * Formula: constant current I until E + I·R = V_ch, t₁ = Q·(s_c − s₀)/I; then the voltage V_ch is held and the current
 * (V_ch − E)/R falls until it is I_e, t₂ = Q·R·∫ds/(V_ch − E). Q = n_p·Q_c, E = n_s·U, R = r_c·k_T·n_s/n_p + R_l, V_ch
 * n_s times the cell's charge voltage, I_e the stopping current, s₀ the charge at the start. Nickel-metal hydride takes
 * a constant current only, for 1.6 times charge over current at 0.1 of the capacity per hour and 1.2 times at 1 (in
 * between by the logarithm of the rate).
 *
 * Valid as a lower limit: polarisation makes the last part longer. Datasheets of lithium cells print 20 min (from empty) to
 * 2 h more than charge over current, given as the likely range. Lead-acid is calculated the same way, to 2.42 V a cell
 * at 25 °C and 5 mV/K less in the warm, more in the cold, and takes far longer: by sheets 16 h from empty and 10 h from half, or, with a
 * weak charger, 1.1 times charge over current and 4 h; three quarters of the sheets' hours at least. Nickel is ended by a
 * timer, 1.6 times charge over current at 0.1 of the capacity per hour and 1.5 times from 0.3 on, and above that rate by the first
 * sign of a full pack too.
 *
 * **Inputs**
 * - `series`: cells in series [n_s; whole 1 to 200]
 * - `parallel`: cells in parallel [n_p; whole 1 to 200]
 * - `chemistry`: cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc]
 * - `cellCapacity`: capacity of one cell [Q_c; 1 mAh to 1000 Ah]
 * - `cellResistance`: resistance of one cell [r_c; 0 to 100 Ω]
 * - `interconnectResistance`: interconnect resistance (links and leads) [R_l; 0 to 100 Ω; default 0]
 * - `cellTemperature`: cell temperature [T; −40 to 80 °C; default 25 °C]
 * - `chargeCurrent`: charging current [I; 1 mA to 1000 A]
 * - `startStateOfCharge`: state of charge at the start [s_0; 0 to 100 %; default 0]
 * - `cellChargeVoltage`: charge voltage of a cell [V_c; 10 mV to 20 V; optional]
 * - `terminationCurrent`: termination current [I_e; 0.1 mA to 1000 A; optional]
 * - `openCircuitCurve`: open-circuit curve of a cell [list of 2 to 2000; optional]
 *   - `stateOfCharge`: state of charge [s_u; 0 to 1]
 *   - `voltage`: open-circuit voltage [U_u; 10 mV to 20 V]
 *
 * **Results**
 *
 * `minDuration`: minimum charging time [t; s]; `constantCurrentDuration`: time at constant current [t_1; s];
 * `constantVoltageDuration`: time at constant voltage [t_2; s]; `changeOverStateOfCharge`: state of charge at the
 * change-over [s_c; as a fraction]; `endStateOfCharge`: state of charge at the end [s_e; as a fraction]; `energy`:
 * energy put in [W; J]; `heat`: heat in the resistance [W_h; J]; `simpleDuration`: simple duration: charge over
 * current [t_s; s]; `durationRatio`: minimum time over charge over current [k_o; as a fraction]; `chargeIn`: charge
 * put in, losses included [Q_i; C]; `likelyDuration`: charging time to expect by datasheets [t_l to t_m; s];
 * `termination`: what ends a nickel charge [group].
 *
 * **Symbols of the working**
 *
 * Q: capacity of the pack [C]; k_T: resistance at this temperature against 25 °C; R: resistance of the pack [Ω];
 * nickel: 1 for nickel-metal hydride; lithium: 1 for lithium; s_b: the same by bisection of E + I·R against the charge
 * voltage; k_n: charge put in over charge gained; t_q: the same by quadrature of Q·R/(V − E) [s]; s_f: charge at which
 * the current has fallen to the stopping current, by bisection; W_q: heat by quadrature of current squared [J]; W_s:
 * energy stored, by quadrature of the open-circuit voltage [J]; k_w: charge put in for each that is kept; k_r: charge
 * put in over charge gained, losses included; k_x: charge after which a timer stops, over the charge to gain; shows: 1
 * where a full pack shows in its voltage.
 *
 * **Sources**
 * - Lithium cell datasheets (21700 of 4.0 and 5.0 Ah, 18650 of 2.6 Ah, 26650 LFP, polymer of 1.3 and 6 Ah), charging
 *   times at 0.2 to 1.5 times the capacity per hour: 20 min to 2 h over charge over current
 * - Nickel metal hydride handbook, individual data sheets, 2005, standard and rapid charge, 0 to 45 and 0 to 40 °C
 * - Charging pages for nickel-metal hydride cells (a battery seller's, a model car federation's of 2007, BU-408 as
 *   quoted), 5 h at 0.3 of the capacity per hour by timer; at 1, 3 mV a cell, 1 to 2 K a minute, 42 °C or 1.5 h;
 *   nothing to measure at 0.1 to 0.3
 * - 12 V 5 Ah AGM battery data sheet, charging table: 16 h from empty, 10 h from half; cycle setting -30 mV/K for six
 *   cells, none needed from 15 to 35 °C
 * - Battery University (Cadex): BU-403, Charging lead acid, as quoted by a charging page: 12 to 16 h for sealed
 *   batteries, 8 to 10 h with high currents but without full topping charge
 * - Sealed lead-acid charging and discharging instructions, 2.40 to 2.45 V a cell in cycles; at most 0.3 of the
 *   capacity per hour; 1.1 times the charge drawn
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-cold`, `not-rechargeable`, `insufficient-voltage` or `already-full`
 * @example
 * ```ts
 * import { chargeTime, genericCells } from 'alula/pack'
 * const { cellCapacity, cellResistance } = genericCells['18650-standard']
 * const night = chargeTime({ series: 3, parallel: 2, cellCapacity, cellResistance, chargeCurrent: '2 A' })
 * night.minDuration / 3600 // => 2.696
 * night.likelyDuration?.high // => 16560
 * ```
 */
export const chargeTime: Solver<ChargeTimeInput, ChargeTime, ChargeTimeRefusal, ChargeTimeCaution> = /* @__PURE__ */ solver<
  ChargeTimeInput,
  ChargeTime,
  ChargeTimeRefusal,
  ChargeTimeCaution
>("chargeTime", "How long charging takes", solve, () => ({
  input: {
    ...chargeFields,
    chargeCurrent: { kind: "current", symbol: "I", label: "charging current", min: "1 mA", max: 1000, typical: [0.5, 6] },
    startStateOfCharge: {
      kind: "ratio",
      symbol: "s_0",
      label: "state of charge at the start",
      min: 0,
      max: 1,
      typical: [0, 0.6],
      unit: "%",
      default: 0,
    },
    cellChargeVoltage: {
      kind: "voltage",
      symbol: "V_c",
      label: "charge voltage of a cell",
      min: "10 mV",
      max: 20,
      typical: [3.6, 4.2],
      default: null,
    },
    terminationCurrent: {
      kind: "current",
      symbol: "I_e",
      label: "termination current",
      min: "0.1 mA",
      max: 1000,
      typical: [0.05, 0.4],
      default: null,
    },
    openCircuitCurve: curveField,
  },
  output: {
    minDuration: { kind: "time", symbol: "t", label: "minimum charging time" },
    constantCurrentDuration: { kind: "time", symbol: "t_1", label: "time at constant current" },
    constantVoltageDuration: { kind: "time", symbol: "t_2", label: "time at constant voltage" },
    changeOverStateOfCharge: { kind: "ratio", symbol: "s_c", label: "state of charge at the change-over", unit: "%" },
    endStateOfCharge: { kind: "ratio", symbol: "s_e", label: "state of charge at the end", unit: "%" },
    energy: { kind: "energy", symbol: "W", label: "energy put in", unit: "Wh" },
    heat: { kind: "energy", symbol: "W_h", label: "heat in the resistance", unit: "Wh" },
    simpleDuration: { kind: "time", symbol: "t_s", label: "simple duration: charge over current" },
    durationRatio: { kind: "ratio", symbol: "k_o", label: "minimum time over charge over current" },
    chargeIn: { kind: "charge", symbol: "Q_i", label: "charge put in, losses included", unit: "Ah" },
    likelyDuration: bandField("time", "charging time to expect by datasheets", {
      symbols: ["t_l", "t_m"],
      labels: ["minimum to expect by datasheets", "maximum to expect by datasheets"],
    }),
    termination: {
      kind: "group",
      label: "what ends a nickel charge",
      fields: {
        timer: { kind: "time", symbol: "t_x", label: "longest time on the charger" },
        voltageDip: { kind: "voltage", symbol: "U_d", label: "fall of the voltage from its peak" },
      },
    },
  },
  example: { series: 3, parallel: 2, cellCapacity: "2.6 Ah", cellResistance: "80 mohm", chargeCurrent: "2 A", startStateOfCharge: 0.1 },
  formulae: chargeFormulae,
  sources: [CHARGE_TIMES, NICKEL_SHEETS, NICKEL_ENDS, LEAD_CHARGE_TIMES, LEAD_FULL_TIMES, LEAD_CHARGING],
  check,
  cautions,
}))
