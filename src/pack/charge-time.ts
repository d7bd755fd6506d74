import {
  type Caution,
  caution,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import {
  type ChargeTimeInput,
  changeOverByBisection,
  endByBisection,
  heatByQuadrature,
  setUp,
  storedByQuadrature,
  straightPieces,
  tailByQuadrature,
} from "./charge-problem.js"
import { chemistries } from "./chemistry.js"
import { chargeRateLimit, lithiumSources, temperatureLimitSource } from "./data.js"
import { chargeAt, emfAt } from "./discharge.js"
import { packCautions, packFields, packResistanceSteps } from "./fields.js"
import { curveFaults, curveField } from "./open-circuit.js"

/** Result of {@link chargeTime}. */
export interface ChargeTime {
  /** Time, s. */
  readonly time: number
  /** Part of it at constant current, s. */
  readonly currentTime: number
  /** Part of it at constant voltage, s. */
  readonly voltageTime: number
  /** Charge when the charger changes over, 0 to 1. */
  readonly changeOverCharge: number
  /** Charge when it stops, 0 to 1. */
  readonly endCharge: number
  /** Energy into the pack, J. */
  readonly energy: number
  /** Part of it lost as heat by the resistance, J. */
  readonly heat: number
  /** Charge over current, which no charger meets, s. */
  readonly simpleTime: number
  /** Time against that. */
  readonly overhead: number
  /** Shortest time to expect by datasheets, s; null but for lithium. */
  readonly likelyLeast: number | null
  /** Longest time to expect by datasheets, s; null but for lithium. */
  readonly likelyMost: number | null
}

type Si = SiOf<ChargeTimeInput>

/** Charge put in over charge gained of nickel-metal hydride at a rate (multiples of the capacity per hour): 1.6 at 0.1, 1.2 at 1. */
export function nickelChargeFactor(rate: number): number {
  const share = Math.min(1, Math.max(0, Math.log10(rate / 0.1)))
  return 1.6 - 0.4 * share
}

function solve(si: Si): ChargeTime | NoSolution {
  const { rechargeable, coldestCharge, lithiumIon, label } = chemistries[si.chemistry]
  if (!rechargeable) return refuse("not-rechargeable", `Cells of this kind (${label}) must not be charged: they can leak or burst.`, 0)
  if (lithiumIon && coldestCharge !== null && si.temperature < coldestCharge)
    return refuse(
      "too-cold-to-charge",
      `At ${si.temperature.toFixed(1)} °C lithium cells must not be charged: lithium plates out inside. Warm them to at least ${coldestCharge} °C first.`,
      coldestCharge - si.temperature,
      { temperature: si.temperature },
      { temperature: coldestCharge },
    )
  const { curve, capacity, resistance, limit, end } = setUp(si)
  const { chargeCurrent, startCharge } = si
  const simpleTime = (capacity * (1 - startCharge)) / chargeCurrent
  if (si.chemistry === "nimh") {
    const factor = nickelChargeFactor(chargeCurrent / (capacity / 3600))
    const time = factor * simpleTime
    if (!(time > 0)) return refuse("already-full", "The pack is full already.", 0, { startCharge })
    const heat = chargeCurrent ** 2 * resistance * time
    // the charge that is not taken up turns to heat at the cell's voltage
    const stored = straightPieces(curve, startCharge, 1).reduce(
      (sum, { a, b }) => sum + (capacity * (b - a) * (emfAt(curve, a) + emfAt(curve, b))) / 2,
      0,
    )
    return {
      time,
      currentTime: time,
      voltageTime: 0,
      changeOverCharge: 1,
      endCharge: 1,
      energy: stored * factor + heat,
      heat,
      simpleTime,
      overhead: factor,
      likelyLeast: null,
      likelyMost: null,
    }
  }
  const emf = emfAt(curve, startCharge)
  if (!(emf < limit - end * resistance) || startCharge >= 1)
    return refuse(
      "already-full",
      `The pack already stands at ${emf.toPrecision(4)} V; a charger that holds ${limit.toPrecision(4)} V and stops at ${end.toPrecision(3)} A has nothing to do.`,
      Math.max(0, emf - (limit - end * resistance)),
      { startCharge, openCircuitVoltage: emf },
    )
  const changeOverCharge = Math.max(startCharge, chargeAt(curve, limit - chargeCurrent * resistance))
  const endCharge = Math.max(changeOverCharge, chargeAt(curve, limit - Math.min(end, chargeCurrent) * resistance))
  const currentTime = (capacity * (changeOverCharge - startCharge)) / chargeCurrent
  let [voltageTime, stored, heat] = [0, 0, chargeCurrent ** 2 * resistance * currentTime]
  for (const { a, b } of straightPieces(curve, startCharge, changeOverCharge))
    stored += (capacity * (b - a) * (emfAt(curve, a) + emfAt(curve, b))) / 2
  for (const { a, b } of straightPieces(curve, changeOverCharge, endCharge)) {
    const [low, high] = [emfAt(curve, a), emfAt(curve, b)]
    // the last piece ends at the stopping current, whatever rounding makes of the difference
    const from = limit - low
    const to = Math.max(limit - high, Math.min(end, chargeCurrent) * resistance)
    // ∫ ds/(V − E) over a straight piece: its length over the logarithmic mean of V − E
    const mean = from - to > 1e-9 * from ? (from - to) / Math.log(from / to) : (from + to) / 2
    voltageTime += (capacity * resistance * (b - a)) / mean
    stored += (capacity * (b - a) * (low + high)) / 2
    heat += (capacity * (b - a) * (from + to)) / 2
  }
  const time = currentTime + voltageTime
  return {
    time,
    currentTime,
    voltageTime,
    changeOverCharge,
    endCharge,
    energy: stored + heat,
    heat,
    simpleTime,
    overhead: time / simpleTime,
    likelyLeast: lithiumIon ? Math.max(time, 1.25 * simpleTime) : null,
    likelyMost: lithiumIon ? Math.max(time, 2 * simpleTime) : null,
  }
}

function check(si: Si): Issue[] {
  const faults = curveFaults(si.curve)
  if (si.endCurrent !== null && !(si.endCurrent < si.chargeCurrent))
    faults.push(inconsistent(["endCurrent"], `${si.endCurrent} A`, "less than the charging current"))
  const { fullVoltage } = chemistries[si.chemistry]
  if (si.chargeVoltage !== null && si.chargeVoltage > fullVoltage * 1.1)
    faults.push(inconsistent(["chargeVoltage"], `${si.chargeVoltage} V`, `not far above the ${fullVoltage} V of this chemistry`))
  return faults
}

function cautions(si: Si): Caution[] {
  const found = packCautions({ ...si, cutOffVoltage: null })
  const { fullVoltage, lithiumIon, coldestCharge } = chemistries[si.chemistry]
  const rate = si.chargeCurrent / ((si.capacity * si.parallel) / 3600)
  const allowed = chargeRateLimit(si.chemistry, si.temperature)
  if (coldestCharge !== null && si.temperature < coldestCharge)
    found.push(
      caution(
        "cold-charge",
        "warning",
        `Below ${coldestCharge} °C cells of this kind must not be charged at the usual rate: they take up little, gas and can vent. Warm them first.`,
        si.chemistry === "nimh"
          ? "Nickel metal hydride individual data sheets, 2005 (charging 0 to 45 °C)"
          : "lead-acid charging limit, from memory",
      ),
    )
  if (allowed !== null && rate > allowed)
    found.push(
      caution(
        "charge-rate",
        "warning",
        allowed === 0
          ? "Makers of ordinary cells forbid charging at this temperature (45 °C and above): let the cells cool."
          : `The rate of ${rate.toFixed(2)} times the capacity per hour is above the ${allowed} that ordinary cells allow at this temperature; only the sheet of your own cell can allow more.`,
        temperatureLimitSource.title,
      ),
    )
  if (si.chargeVoltage !== null && si.chargeVoltage > fullVoltage + 1e-9 && lithiumIon)
    found.push(
      caution(
        "over-charge",
        "warning",
        `More than ${fullVoltage} V a cell over-charges it, which can set it on fire. Use a charger made for this chemistry and number of cells in series.`,
        lithiumSources.cells,
      ),
    )
  if (lithiumIon)
    found.push(
      caution(
        "charge-time-is-least",
        "note",
        "One resistance makes the last part too short: datasheets print 1.25 to 2 times charge over current, the more the faster the charge. Charge off the body, watched, on something that does not burn.",
        "INR21700 datasheets (charge times); common practice for the place",
      ),
    )
  return found
}

const { cutOffVoltage: _, ...chargeFields } = packFields

/**
 * How long a charger takes that gives a constant current, then holds a constant voltage.
 *
 * Formula: constant current I until E(s) + I·R = V_ch, t₁ = Q·(s_c − s₀)/I; then the voltage V_ch is held and
 * the current (V_ch − E)/R falls until it is I_e, t₂ = Q·R·∫ds/(V_ch − E). Q = n_p·Q_c (C), E = n_s·U(s) (V),
 * R = r_c·k_T·n_s/n_p + R_l (Ω), V_ch n_s times the cell's charge voltage (V), I_e the stopping current (A,
 * default a twentieth of Q per hour), s₀ the charge at the start (default 0). Nickel-metal hydride takes a
 * constant current only, for 1.6 times charge over current at 0.1 of the capacity per hour and 1.2 times at 1
 * (in between by the logarithm of the rate).
 *
 * Valid as a lower limit: polarisation makes the last part longer. Datasheets print 1.25 to 2 times charge over
 * current for lithium cells, given as the likely range. Lead-acid is reckoned the same way, to 2.42 V a cell.
 *
 * Sources: INR21700 datasheets of 4.0 and 5.0 Ah (charge times at two rates); Nickel Metal Hydride Handbook data
 * sheets, 2005 (0.1 It for 16 h, 1 It for 1.2 h).
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-cold-to-charge`, `not-rechargeable` or `already-full`
 * @example
 * ```ts
 * import { chargeTime, genericCells } from 'alula/pack'
 * const { capacity, resistance } = genericCells['18650-standard']
 * const night = chargeTime({ series: 3, parallel: 2, capacity, resistance, chargeCurrent: '2 A' })
 * night.time / 3600 // => 2.747
 * night.likelyMost / 3600 // => 5.2
 * ```
 */
export const chargeTime: Solver<ChargeTimeInput, ChargeTime> = /* @__PURE__ */ solver<ChargeTimeInput, ChargeTime>({
  name: "chargeTime",
  title: "How long charging takes",
  input: {
    ...chargeFields,
    chargeCurrent: { kind: "current", symbol: "I", label: "charging current", min: "1 mA", max: 1000, typical: [0.5, 6] },
    startCharge: { kind: "ratio", symbol: "s_0", label: "charge at the start", min: 0, max: 1, typical: [0, 0.6], unit: "%", default: 0 },
    chargeVoltage: {
      kind: "voltage",
      symbol: "V_c",
      label: "charge voltage of a cell",
      above: 0,
      max: 20,
      typical: [3.6, 4.2],
      default: null,
    },
    endCurrent: {
      kind: "current",
      symbol: "I_e",
      label: "stopping current",
      min: "0.1 mA",
      max: 1000,
      typical: [0.05, 0.4],
      default: null,
    },
    curve: curveField,
  },
  output: {
    time: { kind: "time", symbol: "t", label: "time" },
    currentTime: { kind: "time", symbol: "t_1", label: "at constant current" },
    voltageTime: { kind: "time", symbol: "t_2", label: "at constant voltage" },
    changeOverCharge: { kind: "ratio", symbol: "s_c", label: "charge at the change-over", unit: "%" },
    endCharge: { kind: "ratio", symbol: "s_e", label: "charge at the end", unit: "%" },
    energy: { kind: "energy", symbol: "W", label: "energy put in", unit: "Wh" },
    heat: { kind: "energy", symbol: "W_h", label: "of it heat in the resistance", unit: "Wh" },
    simpleTime: { kind: "time", symbol: "t_s", label: "charge over current" },
    overhead: { kind: "ratio", symbol: "k_o", label: "time against that" },
    likelyLeast: { kind: "time", symbol: "t_l", label: "to expect, at least" },
    likelyMost: { kind: "time", symbol: "t_m", label: "to expect, at most" },
  },
  example: { series: 3, parallel: 2, capacity: "2.6 Ah", resistance: "80 mohm", chargeCurrent: "2 A", startCharge: 0.1 },
  formulae: [
    { symbol: "Q", kind: "charge", meaning: "capacity of the pack", is: "Q_c * n_p" },
    ...packResistanceSteps,
    { symbol: "nickel", kind: "number", meaning: "1 for nickel-metal hydride", given: (si) => (si.chemistry === "nimh" ? 1 : 0) },
    { symbol: "lithium", kind: "number", meaning: "1 for lithium", given: (si) => (chemistries[si.chemistry].lithiumIon ? 1 : 0) },
    { symbol: "t_s", meaning: "charge over current", is: "Q * (1 - s_0) / I" },
    { solved: "s_c", meaning: "charge at the change-over" },
    {
      symbol: "s_b",
      kind: "ratio",
      meaning: "the same by bisection of E + I·R against the charge voltage",
      given: (si) => changeOverByBisection(si),
    },
    { left: "s_c", right: "s_b", meaning: "change-over where E + I·R reaches the charge voltage", within: 1e-8, when: "nickel == 0" },
    { left: "s_c", right: "1", meaning: "no change-over: charged at constant current", when: "nickel == 1" },
    { symbol: "t_1", meaning: "time at constant current", is: "Q * (s_c - s_0) / I", when: "nickel == 0" },
    {
      symbol: "k_n",
      kind: "number",
      meaning: "charge put in over charge gained",
      given: (si) => nickelChargeFactor(si.chargeCurrent / ((si.capacity * si.parallel) / 3600)),
      source: "Nickel Metal Hydride Handbook data sheets, 2005",
    },
    { symbol: "t_1", meaning: "time at constant current", is: "k_n * t_s", when: "nickel == 1" },
    { solved: "s_e", meaning: "charge at the end" },
    { solved: "t_2", meaning: "time at constant voltage" },
    { symbol: "t_q", kind: "time", meaning: "the same by quadrature of Q·R/(V − E)", given: (si, out) => tailByQuadrature(si, out) },
    { left: "t_2", right: "t_q", meaning: "time at constant voltage against quadrature", within: 1e-7 },
    {
      symbol: "s_f",
      kind: "ratio",
      meaning: "charge at which the current has fallen to the stopping current, by bisection",
      given: (si, out) => endByBisection(si, out),
    },
    { left: "s_e", right: "s_f", meaning: "it stops at the stopping current", within: 1e-8 },
    { symbol: "t", meaning: "time", is: "t_1 + t_2" },
    { symbol: "k_o", meaning: "time against charge over current", is: "t / t_s" },
    { solved: "W_h", meaning: "heat in the resistance" },
    { symbol: "W_q", kind: "energy", meaning: "heat by quadrature of current squared", given: (si, out) => heatByQuadrature(si, out) },
    { left: "W_h + 1e-9 J", right: "W_q + 1e-9 J", meaning: "heat against quadrature", within: 1e-7 },
    {
      symbol: "W_s",
      kind: "energy",
      meaning: "energy stored, by quadrature of the open-circuit voltage",
      given: (si, out) => storedByQuadrature(si, out),
    },
    {
      symbol: "k_w",
      kind: "number",
      meaning: "charge put in for each that is kept",
      given: (si, out) => (si.chemistry === "nimh" ? out.overhead : 1),
    },
    { symbol: "W", meaning: "energy put in", is: "W_s * k_w + W_h" },
    { symbol: "t_l", meaning: "to expect, at least", is: "max(t, 1.25 * t_s)", when: "lithium == 1" },
    { symbol: "t_m", meaning: "to expect, at most", is: "max(t, 2 * t_s)", when: "lithium == 1" },
  ],
  sources: [
    { title: "INR21700 cell datasheets of 4.0 Ah and 5.0 Ah", where: "charge times" },
    { title: "Nickel Metal Hydride Handbook, individual data sheets", edition: "2005", where: "standard and rapid charge" },
  ],
  check,
  solve,
  cautions,
})
