import { type Issue, inconsistent, type Solver, solver } from "../../solver/index.js"
import { areaOf, metalSteps, nominalResistance, resistanceSteps, sizeIssues, sizeRules, sizeSources } from "../conductor.js"
import { laidFaults, pathSteps, ratedSteps } from "../laid.js"
import { AWG, CLASSES, CONVECTION, HEAT_TRANSFER, PTC_DERATING, PTC_LIMITS, PTC_SHEETS, SKIN, THERMAL_RELAY } from "../sources.js"
import { withstandSources } from "../withstand.js"
import { cautions } from "./cautions.js"
import { RATED_AT } from "./data.js"
import { ptcInput, ptcOutput } from "./fields.js"
import { faultOf, holdShare, solve, testOf, tripOf } from "./kernel.js"
import type { ResettableFuse, ResettableFuseCaution, ResettableFuseInput, Si } from "./types.js"

export type { HoldPoint, ResettableFuse, ResettableFuseCaution, ResettableFuseInput } from "./types.js"

function check(si: Si): Issue[] {
  const faults: Issue[] = [...sizeIssues(si), ...laidFaults(si)]
  const [trip, test] = [tripOf(si), testOf(si)]
  if (!(trip > si.holdCurrent))
    faults.push(
      inconsistent(["tripCurrent"], "{trip current}", "more than the hold current, {holdCurrent current}", {
        trip,
        holdCurrent: si.holdCurrent,
      }),
    )
  if (!(test > trip))
    faults.push(inconsistent(["testCurrent"], "{test current}", "more than the trip current, {trip current}", { test, trip }))
  if (!(si.minResistance <= si.maxResistance))
    faults.push(
      inconsistent(["minResistance"], "{minResistance resistance}", "no more than the {maxResistance resistance} after a trip", {
        minResistance: si.minResistance,
        maxResistance: si.maxResistance,
      }),
    )
  if (!(si.minDeviceTemperature <= si.maxDeviceTemperature))
    faults.push(
      inconsistent(
        ["minDeviceTemperature"],
        "{minDeviceTemperature temperature °C}",
        "no more than the warmest, {maxDeviceTemperature temperature °C}",
        { minDeviceTemperature: si.minDeviceTemperature, maxDeviceTemperature: si.maxDeviceTemperature },
      ),
    )
  const curve = si.holdCurve
  if (curve === null) return faults
  let ordered = true
  for (let i = 1; i < curve.length; i++) {
    const [before, point] = [curve[i - 1], curve[i]] as [(typeof curve)[number], (typeof curve)[number]]
    if (!(point.temperature > before.temperature)) {
      ordered = false
      faults.push(inconsistent(["holdCurve", i, "temperature"], "no warmer than the point before", "points from cold to warm"))
    }
    if (!(point.share < before.share))
      faults.push(inconsistent(["holdCurve", i, "share"], "no less than the point before", "less the warmer it is"))
  }
  const [first, last] = [curve[0], curve.at(-1)] as [(typeof curve)[number], (typeof curve)[number]]
  if (!(first.temperature <= si.minDeviceTemperature && last.temperature >= si.maxDeviceTemperature))
    faults.push(inconsistent(["holdCurve"], "points that end before", "points from the coldest to the warmest air around it"))
  // sheets print amperes, of which these are to be shares; some rate at 20 or 25 °C
  const rated = ordered ? holdShare(si, RATED_AT).low : 1
  if (first.temperature <= RATED_AT && last.temperature >= RATED_AT && !(Math.abs(rated - 1) <= 0.05))
    faults.push(
      inconsistent(["holdCurve"], "{rated ratio %} at 23 °C", "shares of the hold current at 23 °C, within 5 % of 100 % there", { rated }),
    )
  return faults
}

/**
 * Whether a resettable fuse (a polymer part whose resistance leaps as it gets hot) holds the load, and trips before its wire is ruined.
 *
 * Formula: it holds I_n·k_T in the warmest place and trips for sure at I_t·k_T in the coldest, k_T by its own curve or the lowest and
 * highest of published tables, against 23 °C. Between the two it may do either, so the wire has to bear the second for good. Time to
 * trip t = τ·ln(I²/(I² − I_t²·k_T²)), τ set by the longest printed time at the test current; up to the current that trips within 5 s
 * the wire has to bear it for good, above that it stays within its short-time limit until then (see {@link fuseCoordination}).
 * Drop I·R, from a new part's resistance to that after a trip.
 *
 * Valid from −40 to 85 °C for parts in still air within their rated voltage and breaking current. The law holds the part's resistance
 * constant as it warms; it rises, so a real part trips sooner.
 *
 * **Inputs**
 * - `holdCurrent`: hold current at 23 °C [I_n; 1 mA to 100 A]
 * - `tripCurrent`: trip current at 23 °C [I_t; 1 mA to 300 A; optional]
 * - `testCurrent`: current of the printed time to trip [I_p; 1 mA to 1000 A; optional]
 * - `tripTime`: longest time to trip at that current [t_n; 1 ms to 10 min]
 * - `minResistance`: resistance of a new part, at least [R_lo; 0 to 1000 Ω]
 * - `maxResistance`: resistance after a trip, at most [R_hi; 0.1 mΩ to 1000 Ω]
 * - `maxVoltage`: rated voltage [U_m; 1 to 600 V]
 * - `maxFaultCurrent`: current it may break [I_b; 1 to 1000 A; default 40 A]
 * - `trippedPower`: heat while tripped [P_d; 1 mW to 100 W; optional]
 * - `holdCurve`: hold current by temperature [list of 2 to 50; optional]
 *   - `temperature`: air temperature [T_k1; −60 to 150 °C]
 *   - `share`: hold current over that at 23 °C [f_k1; 0.01 to 4]
 * - `sourceVoltage`: voltage of the full pack [U_s; 0.1 to 600 V]
 * - `current`: steady current [I; 0.1 mA to 300 A]
 * - `faultCurrent`: short-circuit current [I_f; 1 mA to 10000 A; optional]
 * - `minDeviceTemperature`: coldest air around it [T_lo; −40 to 85 °C; default 0]
 * - `maxDeviceTemperature`: warmest air around it [T_hi; −40 to 85 °C; default 40 °C]
 * - `awg`: wire gauge (AWG) [g; whole −3 to 40; optional]
 * - `area`: cross-section [A_w; 0.0001 to 1000 mm²; optional]
 * - `material`: conductor metal [copper or aluminium; default copper]
 * - `stranding`: stranding [solid, stranded, class2, class2-tinned, class5 or class5-tinned; default solid]
 * - `arrangement`: where it lies [free-air, bundle or padding; default free-air]
 * - `wires`: loaded wires together [n_w; whole 1 to 100; default 1]
 * - `ambientTemperature`: ambient temperature [T_a; −40 to 100 °C; default 25 °C]
 * - `skinTemperature`: skin under the padding [T_k; 20 to 42 °C; default 35 °C]
 * - `insulationThickness`: insulation wall [t_i; 0 to 20 mm; default 0.4 mm]
 * - `insulationConductivity`: insulation conductivity [k_i; 0.01 to 10 W/(m·K); default 0.17 W/(m·K)]
 * - `bundleConductivity`: conductivity across the bundle [k_b; 0.01 to 10 W/(m·K); default 0.15 W/(m·K)]
 * - `emissivity`: emissivity of the surface [e_s; 0 to 1; default 0.9]
 * - `paddingThickness`: padding over the wire [t_p; 0.1 mm to 1 m; default 10 mm]
 * - `paddingConductivity`: padding conductivity [k_p; 0.01 to 10 W/(m·K); default 0.04 W/(m·K)]
 * - `paddingSurface`: padding's surface to the air [h_p; 1 to 1000 W/(m²·K); default 8 W/(m²·K)]
 * - `insulationRating`: insulation rating [T_r; above −40 to 300 °C; default 80 °C]
 * - `datasheetAmpacity`: ampacity by the wire's datasheet [I_w; 0.1 mA to 1000 A; optional]
 * - `faultTemperatureLimit`: conductor temperature limit in a short fault [T_f; 70 to 350 °C; default 160 °C]
 * - exactly one of `awg` and `area`
 *
 * **Results**
 *
 * `holdLimit`: holds in the warmest place [I_h; A]; `requiredHoldCurrent`: hold current needed at 23 °C [I_q; A];
 * `tripLimit`: may carry for good in the coldest place [I_c; A]; `slowCurrent`: may carry for 5 s in the coldest place
 * [I_5; A]; `ampacity`: ampacity [I_r; A]; `continuousCurrent`: continuous current of the wire [I_z; A];
 * `carriesLoad`: carries the load [yes or no]; `protectsWire`: protects the wire beyond 5 s [yes or no];
 * `tripDuration`: trips at the fault current within [t_f; s]; `survivesFault`: wire survives any fault until it trips
 * [yes or no]; `withinRating`: within its voltage and breaking current [yes or no]; `coordinated`: passes these checks
 * [yes or no]; `drop`: voltage drop at the steady current [U_lo to U_hi; V]; `heat`: heat in it after a trip, at most
 * [P; W]; `trippedCurrent`: current while tripped [I_x; A].
 *
 * **Symbols of the working**
 *
 * k_h: share of the hold current left in the warmest place; k_c: current over that at 23 °C in the coldest place; I_a:
 * trip current at 23 °C [A]; I_e: current of the printed time [A]; tau: time constant of its warming [s]; I_g:
 * strongest fault [A]; A: cross-section [m²]; rho: resistivity of the metal at 20 °C [Ω m]; alpha: temperature
 * coefficient at 20 °C [1/K]; k_s: longer by the lay of the strands; r_n: maximum resistance of the nominal conductor
 * (0: not an IEC class) [Ω/m]; r_20: resistance per length at 20 °C [Ω/m]; n: wires that share the outer surface;
 * inAir: 1 in still air, 0 under padding; T_0: surroundings: the air [°C]; d: conductor diameter [m]; D_w: over the
 * insulation [m]; D: outer diameter of one wire [m]; R_i: through one metre of insulation [K/W]; R_b: no bundle around
 * it [K/W]; z: depth of the axis, the surface film as more padding [m]; dT_r: rise at the rating [K]; P_r: heat of one
 * metre at that current [W]; dT_o: surface over the surroundings then [K]; h_o: surface coefficient then, by the same
 * formulae [W/(m²·K)].
 *
 * **Sources**
 * - ASTM International: ASTM B258, Standard specification for standard nominal diameters and cross-sectional areas of
 *   AWG sizes of solid round wires, 2018, clause 5 (0.0050 in at 36 AWG, 0.4600 in at 4/0, ratio 92 over 39 steps)
 *   (not verified against the document)
 * - IEC: IEC 60028, International standard of resistance for copper, 1925, clauses 1 and 2 (1/58 Ω·mm²/m, 0.00393/K at
 *   20 °C, 8.89 g/cm³)
 * - IEC: IEC 60889, Hard-drawn aluminium wire for overhead line conductors, 1987, clause 3 (28.264 nΩ·m, 0.00403/K at
 *   20 °C, 2.703 g/cm³) (not verified against the document)
 * - IEC: IEC 60228, Conductors of insulated cables, 2004, tables 2 and 3 (class 2 stranded, class 5 flexible; maximum
 *   resistance at 20 °C)
 * - Datasheets of radial and chip polymer resettable fuses, electrical characteristics at 23 °C, trip at twice the
 *   hold current (1.75 to 3 times), time to trip at five times; resistance new and one hour after a trip
 * - Datasheets of polymer resettable fuses, thermal derating (1206 chip; 99 V radial; 30 V radial and high-current as
 *   quoted), hold current by air temperature
 * - Comparison of polymer resettable fuses with one-time fuses, they break 40 A at up to 60 V, and go on leaking up to
 *   some hundred mA while tripped
 * - IEC: IEC 60255-149, Measuring relays and protection equipment, functional requirements for thermal electrical
 *   relays, 2013, time to operate from cold: tau·ln(I²/(I² − I_θ²)) (not verified against the document)
 * - IEC: IEC 60364-4-43, Protection against overcurrent, 2008, clause 434.5.2 and table 43A (no heat lost, up to 5 s;
 *   160 °C for PVC) (not verified against the document)
 * - IEC: IEC 60364-5-54, Earthing arrangements and protective conductors, 2011, Annex A, table A.54.1 (heat capacity,
 *   β; K = 226 copper, 148 aluminium)
 * - S. W. Churchill, H. H. S. Chu: Correlating equations for laminar and turbulent free convection from a horizontal
 *   cylinder, Int. J. Heat Mass Transfer 18, 1975, page 1049 (not verified against the document)
 * - F. P. Incropera et al.: Fundamentals of Heat and Mass Transfer, 6th, 2007, tables 4.1 (cylinder midway between
 *   planes, half of it) and A.4 (air) (not verified against the document)
 * - ISO: ISO 7730, Ergonomics of the thermal environment: predicted mean vote, 2005, equation 1 (skin temperature of a
 *   person at rest, 35.7 °C less 0.028 K per W/m² of heat made) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { resettableFuse } from 'alula/wire'
 * const part = { holdCurrent: '2.5 A', tripTime: '10.3 s', minResistance: '25 mohm', maxResistance: '70 mohm', maxVoltage: '30 V' }
 * const eyes = resettableFuse({ ...part, sourceVoltage: '12.6 V', current: '1.8 A', faultCurrent: '35 A', awg: 14 })
 * eyes.carriesLoad // => true
 * eyes.tripLimit // => 6.075
 * eyes.coordinated // => true
 * ```
 */
export const resettableFuse: Solver<ResettableFuseInput, ResettableFuse, never, ResettableFuseCaution> = /* @__PURE__ */ solver<
  ResettableFuseInput,
  ResettableFuse,
  never,
  ResettableFuseCaution
>("resettableFuse", "Whether a resettable fuse, its load and its wire go together", solve, () => ({
  input: ptcInput,
  output: ptcOutput,
  example: {
    holdCurrent: "9 A",
    tripTime: "20 s",
    minResistance: "5 mohm",
    maxResistance: "20 mohm",
    maxVoltage: "30 V",
    trippedPower: "4 W",
    sourceVoltage: "12.6 V",
    current: "4 A",
    faultCurrent: "40 A",
    awg: 10,
  },
  formulae: [
    {
      symbol: "k_h",
      kind: "number",
      meaning: "share of the hold current left in the warmest place",
      given: (si) => holdShare(si, si.maxDeviceTemperature).low,
      source: PTC_DERATING,
    },
    {
      symbol: "k_c",
      kind: "number",
      meaning: "current over that at 23 °C in the coldest place",
      given: (si) => holdShare(si, si.minDeviceTemperature).high,
      source: PTC_DERATING,
    },
    { symbol: "I_h", meaning: "held in the warmest place", is: "I_n * k_h" },
    { symbol: "I_q", meaning: "rating needed at 23 °C", is: "I / k_h" },
    { symbol: "I_a", kind: "current", meaning: "trip current at 23 °C", given: tripOf, source: PTC_SHEETS },
    { symbol: "I_e", kind: "current", meaning: "current of the printed time", given: testOf, source: PTC_SHEETS },
    { symbol: "I_c", meaning: "carried for good in the coldest place, at most", is: "I_a * k_c" },
    {
      symbol: "tau",
      kind: "time",
      meaning: "time constant of its warming",
      is: "t_n / log(I_e^2 / (I_e^2 - I_a^2))",
      source: THERMAL_RELAY,
    },
    { symbol: "I_5", meaning: "trips in 5 s", is: "I_c / sqrt(1 - exp(-(5 s) / tau))", source: THERMAL_RELAY },
    { symbol: "I_g", kind: "current", meaning: "strongest fault", given: faultOf, source: PTC_LIMITS },
    { symbol: "t_f", meaning: "time to trip", is: "tau * log(I_g^2 / (I_g^2 - I_c^2))", when: "I_g > I_c", source: THERMAL_RELAY },
    { symbol: "A", kind: "area", meaning: "cross-section", given: areaOf, source: AWG },
    ...metalSteps,
    {
      symbol: "r_n",
      kind: "resistancePerLength",
      meaning: "maximum resistance of the nominal conductor (0: not an IEC class)",
      given: (si) => nominalResistance(areaOf(si), si.stranding) ?? 0,
      source: CLASSES,
    },
    ...resistanceSteps,
    ...pathSteps,
    ...ratedSteps,
    { symbol: "I_z", meaning: "current the wire bears for good", is: "I_r", when: "not has_datasheetAmpacity" },
    {
      symbol: "I_z",
      meaning: "current the wire bears for good, its datasheet's where less",
      is: "min(I_r, I_w)",
      when: "has_datasheetAmpacity",
    },
    { symbol: "U_lo", meaning: "drop of a new part", is: "I * R_lo" },
    { symbol: "U_hi", meaning: "drop after a trip", is: "I * R_hi" },
    { symbol: "P", meaning: "heat after a trip", is: "I^2 * R_hi" },
    { symbol: "I_x", meaning: "current while tripped", is: "P_d / U_s", when: "has_trippedPower" },
  ],
  sources: [...sizeSources, PTC_SHEETS, PTC_DERATING, PTC_LIMITS, THERMAL_RELAY, ...withstandSources, CONVECTION, HEAT_TRANSFER, SKIN],
  either: sizeRules,
  check,
  cautions,
}))
