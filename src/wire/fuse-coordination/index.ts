import { type Caution, caution, type Issue, inconsistent, type Solver, solver } from "../../solver/index.js"
import { areaOf, metalSteps, nominalResistance, resistanceSteps, sizeIssues, sizeRules, sizeSources } from "../conductor.js"
import { bladeFuse, bladeRatings, FUSE_WITHIN, preeceConstants, pulseFractions, pulseShapes } from "../data.js"
import { laidFaults, pathSteps, ratedSteps } from "../laid.js"
import { hotSurface, raisedLimit } from "../overload.js"
import {
  ADIABATIC,
  AWG,
  BLADE,
  CLASSES,
  CONVECTION,
  FUSE_PLACE,
  FUSEOLOGY,
  HEAT_TRANSFER,
  LARGE_BLADE,
  PREECE,
  SHORT_FAULT,
  SKIN,
} from "../sources.js"
import { adiabaticFactor, adiabaticSteps, guards, longFuse, meltingCurrent, ratedCurrentOf, shortLimit } from "../withstand.js"
import { type FuseCoordination, type FuseCoordinationCaution, type FuseCoordinationInput, fuseInput, fuseOutput } from "./fields.js"
import type { Si } from "./types.js"

/** Part of the melting integral a pulse may have, by how many pulses are to be outlived; the chart ends at 100 000. */
export function pulseFraction(pulses: number): number {
  return (pulseFractions.find((p) => pulses <= p.pulses) ?? (pulseFractions.at(-1) as { fraction: number })).fraction
}

/** Conductor temperature when the fault starts, °C: the worst the insulation allows, unless it is known. */
const startOfFault = (si: Si) => si.initialConductorTemperature ?? si.insulationRating

function solve(si: Si): FuseCoordination {
  const factor = adiabaticFactor(si.material, startOfFault(si), shortLimit(si))
  const ampacity = ratedCurrentOf(si)
  const continuousCurrent = Math.min(ampacity, si.datasheetAmpacity ?? ampacity)
  const melting = meltingCurrent(si)
  const minFuseRating = si.current / (si.utilisationLimit * si.temperatureFactor)
  const maxFuseRating = longFuse(si, continuousCurrent)
  const inrushIntegral =
    si.peakInrushCurrent === null ? null : pulseShapes[si.inrushShape].factor * si.peakInrushCurrent ** 2 * si.inrushDuration
  const requiredMeltingIntegral = inrushIntegral === null ? null : inrushIntegral / pulseFraction(si.pulses)
  const passesInrush =
    requiredMeltingIntegral === null || si.meltingIntegral === null ? null : si.meltingIntegral >= requiredMeltingIntegral
  const judge = (fuse: number) => {
    const carriesLoad = fuse >= minFuseRating
    const { long: protectsWire, overload: survivesOverload } = guards(fuse, si, shortLimit(si), startOfFault(si), continuousCurrent)
    return {
      carriesLoad,
      protectsWire,
      survivesOverload,
      coordinated: carriesLoad && protectsWire && survivesOverload && passesInrush !== false,
    }
  }
  const hot = si.fuseResistance * si.hotFactor
  return {
    minFuseRating,
    maxFuseRating,
    suggestedFuseRating: bladeRatings.find((rating) => judge(rating).coordinated) ?? null,
    ampacity,
    continuousCurrent,
    ...judge(si.fuseRating),
    passesInrush,
    sustainedFuseCurrent: bladeFuse.longMultiple * si.fuseRating,
    adiabaticFactor: factor / 1e6,
    wireWithstand: (factor * areaOf(si)) ** 2,
    letThroughIntegral: (bladeFuse.overload.multiple * si.fuseRating) ** 2 * bladeFuse.overload.longest,
    inrushIntegral,
    requiredMeltingIntegral,
    fusingCurrent: melting,
    drop: si.current * hot,
    heat: si.current ** 2 * hot,
  }
}

function cautions(si: Si, out: FuseCoordination): Caution<FuseCoordinationCaution>[] {
  const found: Caution<FuseCoordinationCaution>[] = []
  if (!(si.unfusedLength !== null && si.unfusedLength <= FUSE_WITHIN))
    found.push(
      caution(
        "fuse-ahead",
        "warning",
        "A fuse guards only what lies behind it: put it within 18 cm of the pack's positive pole, one for each pack, rated for the pack's voltage on direct current and for its short-circuit current (a lesser one may go on arcing). Have a qualified person check the build. Meeting these figures is no permission.",
        FUSE_PLACE,
      ),
    )
  if (!out.protectsWire)
    found.push(
      caution(
        "wire-unprotected",
        "warning",
        "The fuse may carry {sustainedFuseCurrent current} for ten minutes and more; the wire bears {continuousCurrent current} for good and melts bare at {fusingCurrent current}. Take a fuse of {maxFuseRating current} at most, or a thicker wire.",
        BLADE,
        {
          sustainedFuseCurrent: out.sustainedFuseCurrent,
          continuousCurrent: out.continuousCurrent,
          fusingCurrent: out.fusingCurrent,
          maxFuseRating: out.maxFuseRating,
        },
      ),
    )
  if (!out.carriesLoad)
    found.push(
      caution(
        "fuse-too-small",
        "caution",
        "At {given.current current} a {given.fuseRating current} fuse will open in time: it needs {minFuseRating current} at least.",
        FUSEOLOGY,
        { "given.current": si.current, "given.fuseRating": si.fuseRating, minFuseRating: out.minFuseRating },
      ),
    )
  if (!out.survivesOverload)
    found.push(
      caution(
        "overload-burns",
        "warning",
        "At twice its rating of {given.fuseRating current} the fuse may take 5 s; the wire's insulation passes {given.faultTemperatureLimit temperature °C} before. Take a smaller fuse or a thicker wire.",
        SHORT_FAULT,
        { "given.fuseRating": si.fuseRating, "given.faultTemperatureLimit": si.faultTemperatureLimit },
      ),
    )
  if (out.passesInrush === false)
    found.push(
      caution(
        "nuisance",
        "caution",
        "The inrush wears the fuse out: it needs {requiredMeltingIntegral meltingIntegral} of melting I²t and has {given.meltingIntegral meltingIntegral}. Take a slower fuse or a soft start, not simply a larger fuse that leaves the wire bare.",
        FUSEOLOGY,
        { requiredMeltingIntegral: out.requiredMeltingIntegral as number, "given.meltingIntegral": si.meltingIntegral as number },
      ),
    )
  if (si.fuseRating > bladeFuse.largest)
    found.push(
      caution(
        "slow-fuse",
        "warning",
        "A blade fuse of {given.fuseRating current} is of a larger, slower type than these times hold for (up to 40 A): at twice its rating it may take 50 s. Judge it by its own time-current curve.",
        LARGE_BLADE,
        { "given.fuseRating": si.fuseRating },
      ),
    )
  return [...found, ...hotSurface(si, si.current), ...raisedLimit(si.faultTemperatureLimit)]
}

/**
 * Whether a fuse carries the load, outlives the inrush and opens before its wire is ruined.
 *
 * Formula: smallest rating I/(a·K_T); largest rating I_c/1.35, because a blade fuse may carry 135 % for 600 s, with I_c
 * the current that brings the conductor to its insulation's rating where it lies (see {@link wireHeating}), or the
 * wire's own datasheet rating where that is less, or its fusing current. At 200 % the fuse may take 5 s: the conductor,
 * heated by 2·I_n from T_i on and cooled by what its surface sheds, must stay at or below T_f that long. With no heat
 * lost that would be (2·I_n)²·5 s ≤ k²·A², k = √(Q·(β + 20 °C)/ρ₂₀ · ln((β + T_f)/(β + T_i))), which is shown beside
 * it; inrush f·Î²·t ≤ F·I²t_melt, f by shape (square 1, half sine and exponential ½, triangle ⅓, parabola ⅕) and F by
 * the number of pulses (0.48 for 100 … 0.22 for 100 000, where its chart and the input end). I is the steady current, a
 * the loading, K_T the temperature factor, I_n the fuse rating, A the cross-section, T_i and T_f the temperatures
 * before and after. Only these two points of the fuse's curve are judged: between them a blade fuse may carry 160 % for
 * as long as 50 s, which is not. Fuse resistance 5 mΩ cold, 1.4 times that hot. How the wire is laid as in {@link
 * wireHeating}. Valid for blade fuses to 40 A on direct current within their rated voltage.
 *
 * **Inputs**
 * - `fuseRating`: fuse rating [I_n; 0.1 mA to 1000 A]
 * - `current`: steady current [I; 0.1 mA to 1000 A]
 * - `datasheetAmpacity`: ampacity by the wire's datasheet [I_w; 0.1 mA to 1000 A; optional]
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
 * - `unfusedLength`: unfused wire from the pack's pole [L_f; 0 to 100 m; optional]
 * - `utilisationLimit`: utilisation limit of the fuse [a; 1 to 100 %; default 75 %]
 * - `temperatureFactor`: temperature factor of the fuse [K_T; 1 to 150 %; default 100 %]
 * - `peakInrushCurrent`: inrush peak [I_p; 0.1 mA to 100000 A; optional]
 * - `inrushDuration`: inrush time [t_in; 0.001 ms to 100 s; default 20 ms]
 * - `inrushShape`: inrush shape [square, half-sine, triangle, parabola or exponential; default exponential]
 * - `pulses`: inrush pulses to survive [N; whole 1 to 100000; default 10000]
 * - `meltingIntegral`: melting I²t of the fuse [M; 1e−9 to 1e9 A²·s; optional]
 * - `fuseResistance`: cold resistance of the fuse [R_f; 0 to 100 Ω; default 5 mΩ]
 * - `hotFactor`: hot over cold resistance [k_f; 1 to 10; default 1.4]
 * - `initialConductorTemperature`: conductor temperature before the fault [T_i; −50 to 200 °C; optional]
 * - `faultTemperatureLimit`: conductor temperature limit in a short fault [T_f; 70 to 350 °C; default 160 °C]
 * - exactly one of `awg` and `area`
 *
 * **Results**
 *
 * `minFuseRating`: minimum rating for the load [I_lo; A]; `maxFuseRating`: maximum rating for the wire [I_hi; A];
 * `suggestedFuseRating`: smallest standard blade rating that passes [I_b; A]; `ampacity`: ampacity [I_r; A];
 * `continuousCurrent`: continuous current of the wire [I_c; A]; `carriesLoad`: carries the load [yes or no];
 * `protectsWire`: protects the wire at 135 % [yes or no]; `survivesOverload`: wire survives 200 % until the fuse opens
 * [yes or no]; `passesInrush`: survives the inrush [yes or no]; `coordinated`: passes these checks [yes or no];
 * `sustainedFuseCurrent`: current the fuse may carry for minutes [I_135; A]; `adiabaticFactor`: adiabatic factor,
 * A·√s/mm² [k]; `wireWithstand`: wire withstand, no heat lost [W; A² s]; `letThroughIntegral`: fuse let-through at 200
 * % [W_o; A² s]; `inrushIntegral`: I²t of one inrush [W_p; A² s]; `requiredMeltingIntegral`: melting I²t needed [M_n;
 * A² s]; `fusingCurrent`: fusing current of the bare wire [I_m; A]; `drop`: voltage drop in the fuse [U; V]; `heat`:
 * heat in the fuse [P; W].
 *
 * **Symbols of the working**
 *
 * A: cross-section [m²]; rho: resistivity of the metal at 20 °C [Ω m]; alpha: temperature coefficient at 20 °C [1/K];
 * k_s: longer by the lay of the strands; r_n: maximum resistance of the nominal conductor (0: not an IEC class) [Ω/m];
 * r_20: resistance per length at 20 °C [Ω/m]; n: wires that share the outer surface; inAir: 1 in still air, 0 under
 * padding; T_0: surroundings: the air [°C]; d: conductor diameter [m]; D_w: over the insulation [m]; D: outer diameter
 * of one wire [m]; R_i: through one metre of insulation [K/W]; R_b: no bundle around it [K/W]; z: depth of the axis,
 * the surface film as more padding [m]; dT_r: rise at the rating [K]; P_r: heat of one metre at that current [W];
 * dT_o: surface over the surroundings then [K]; h_o: surface coefficient then, by the same formulae [W/(m²·K)]; C:
 * Preece's constant, A per inch^1.5; I_x: smallest usual blade rating that passes (0: none) [A]; Q: heat capacity by
 * volume, J/(K·m³); beta: reciprocal temperature coefficient at 0 °C, °C; T_b: before the fault, as given [°C]; f_p:
 * shape of the inrush; F_N: part of the melting integral allowed.
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
 * - ISO: ISO 8820-3, Road vehicles, Fuse-links with tabs (blade type), 2015, time-current limits, types C and F (110 %
 *   for 100 h; 135 % for 0.75 s to 600 s; 200 % for 0.15 s to 5 s) (not verified against the document)
 * - Littelfuse: Fuse characteristics, terms and consideration factors (Fuseology), 2017, page 12 (75 % rerating at 25
 *   °C; pulse energy, charts 1 and 2)
 * - IEC: IEC 60364-4-43, Protection against overcurrent, 2008, clause 434.5.2 and table 43A (no heat lost, up to 5 s;
 *   160 °C for PVC) (not verified against the document)
 * - IEC: IEC 60364-5-54, Earthing arrangements and protective conductors, 2011, Annex A, table A.54.1 (heat capacity,
 *   β; K = 226 copper, 148 aluminium)
 * - W. H. Preece: On the heating effects of electric currents, no. II, Proc. R. Soc. 43, 1887, 280; constants as in
 *   tables of fuse equations, A per inch^1.5: copper 10244, aluminium 7585, tin 1642
 * - Littelfuse: MAXI blade fuses, series 299, datasheet, time-current limits (135 % for 60 s to 1800 s; 200 % for 2 s
 *   to 50 s)
 * - American Boat and Yacht Council: E-11, AC and DC electrical systems on boats, clause 11.10 (overcurrent protection
 *   within 7 in of the source), by way of suppliers' summaries
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
 * import { fuseCoordination } from 'alula/wire'
 * const pair = fuseCoordination({ fuseRating: '7.5 A', current: '4 A', awg: 20, datasheetAmpacity: '11 A' })
 * pair.coordinated // => true
 * pair.minFuseRating // => 5.333
 * pair.maxFuseRating // => 8.148
 * fuseCoordination({ fuseRating: '30 A', current: '4 A', awg: 28 }).coordinated // => false
 * ```
 */
export const fuseCoordination: Solver<FuseCoordinationInput, FuseCoordination, never, FuseCoordinationCaution> = /* @__PURE__ */ solver<
  FuseCoordinationInput,
  FuseCoordination,
  never,
  FuseCoordinationCaution
>("fuseCoordination", "Whether fuse, wire, load and inrush go together", solve, () => ({
  input: fuseInput,
  output: fuseOutput,
  example: {
    fuseRating: "7.5 A",
    current: "4 A",
    awg: 20,
    datasheetAmpacity: "11 A",
    peakInrushCurrent: "18 A",
    inrushDuration: "60 ms",
    meltingIntegral: "60 A2 s",
  },
  formulae: [
    { symbol: "I_lo", meaning: "smallest rating", is: "I / (a * K_T)", source: FUSEOLOGY },
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
    { symbol: "I_c", meaning: "current the wire bears for good", is: "I_r", when: "not has_datasheetAmpacity" },
    {
      symbol: "I_c",
      meaning: "current the wire bears for good, its datasheet's where less",
      is: "min(I_r, I_w)",
      when: "has_datasheetAmpacity",
    },
    {
      symbol: "C",
      kind: "number",
      meaning: "Preece's constant, A per inch^1.5",
      given: (si) => preeceConstants[si.material],
      source: PREECE,
    },
    {
      symbol: "I_m",
      meaning: "fusing current of the bare wire in still air",
      is: "C * (sqrt(4 * A / pi) / (25.4 mm))^1.5 * 1 ampere",
      source: PREECE,
    },
    { symbol: "I_hi", meaning: "largest rating", is: "min(I_c, I_m) / 1.35", source: BLADE },
    {
      symbol: "I_x",
      meaning: "smallest usual blade rating that passes (0: none)",
      given: (_, out) => out.suggestedFuseRating ?? 0,
      kind: "current",
      source: BLADE,
    },
    { symbol: "I_b", meaning: "rating to suggest", is: "I_x", when: "I_x > 0 ampere" },
    { symbol: "I_135", meaning: "current it may carry for minutes", is: "1.35 * I_n", source: BLADE },
    ...adiabaticSteps,
    { symbol: "T_b", kind: "temperature", meaning: "before the fault, as given", is: "T_i", when: "has_initialConductorTemperature" },
    { symbol: "T_b", kind: "temperature", meaning: "before the fault: the rating", is: "T_r", when: "not has_initialConductorTemperature" },
    {
      symbol: "k",
      meaning: "adiabatic factor",
      is: "sqrt(Q * (beta + 20) / (rho / (ohm m)) * log((beta + max(T_f, T_r) / K - 273.15) / (beta + T_b / K - 273.15))) / 1e6",
      source: ADIABATIC,
    },
    { symbol: "W", meaning: "wire withstand, no heat lost", is: "(k * A / (1 mm^2))^2 * (1 ampere)^2 * 1 s" },
    { symbol: "W_o", meaning: "200 % for 5 s", is: "(2 * I_n)^2 * 5 s", source: BLADE },
    {
      symbol: "f_p",
      kind: "number",
      meaning: "shape of the inrush",
      given: (si) => pulseShapes[si.inrushShape].factor,
      source: FUSEOLOGY,
    },
    {
      symbol: "F_N",
      kind: "number",
      meaning: "part of the melting integral allowed",
      given: (si) => pulseFraction(si.pulses),
      source: FUSEOLOGY,
    },
    { symbol: "W_p", meaning: "I²t of one inrush", is: "f_p * I_p^2 * t_in", when: "has_peakInrushCurrent" },
    { symbol: "M_n", meaning: "melting I²t needed", is: "W_p / F_N", when: "has_peakInrushCurrent" },
    { symbol: "U", meaning: "voltage lost in the hot fuse", is: "I * R_f * k_f" },
    { symbol: "P", meaning: "heat in it", is: "I * U" },
  ],
  sources: [...sizeSources, BLADE, FUSEOLOGY, SHORT_FAULT, ADIABATIC, PREECE, LARGE_BLADE, FUSE_PLACE, CONVECTION, HEAT_TRANSFER, SKIN],
  either: sizeRules,
  check: (si) => [...sizeIssues(si), ...laidFaults(si), ...faultIssues(si)],
  cautions,
}))

function faultIssues(si: Si): Issue[] {
  const { initialConductorTemperature, faultTemperatureLimit } = si
  if (initialConductorTemperature === null || shortLimit(si) > initialConductorTemperature) return []
  return [
    inconsistent(
      ["faultTemperatureLimit"],
      "{faultTemperatureLimit temperature °C}",
      "more than the {initialConductorTemperature temperature °C} before the fault",
      {
        faultTemperatureLimit,
        initialConductorTemperature,
      },
    ),
  ]
}
