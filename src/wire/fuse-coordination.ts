import { type Caution, caution, type Issue, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { areaOf, metalSteps, nominalResistance, resistanceSteps, sizeIssues, sizeSources } from "./conductor.js"
import { bladeFuse, bladeRatings, FUSE_WITHIN, preeceConstants, pulseFractions, pulseShapes } from "./data.js"
import { type FuseCoordination, type FuseCoordinationInput, fuseInput, fuseOutput } from "./fuse-fields.js"
import { laidFaults, pathSteps, ratedSteps } from "./laid.js"
import { raisedLimit } from "./overload.js"
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
} from "./sources.js"
import { adiabaticFactor, adiabaticSteps, meltingCurrent, ratedCurrentOf, shortLimit, withstands } from "./withstand.js"

type Si = SiOf<FuseCoordinationInput>

/** Part of the melting integral a pulse may have, by how many pulses are to be outlived; the chart ends at 100 000. */
export function pulseFraction(pulses: number): number {
  return (pulseFractions.find((p) => pulses <= p.pulses) ?? (pulseFractions.at(-1) as { fraction: number })).fraction
}

/** Conductor temperature when the fault starts, °C: the worst the insulation allows, unless it is known. */
const startOfFault = (si: Si) => si.initialTemperature ?? si.rating

function solve(si: Si): FuseCoordination {
  const factor = adiabaticFactor(si.metal, startOfFault(si), shortLimit(si))
  const ratedCurrent = ratedCurrentOf(si)
  const wireCurrent = Math.min(ratedCurrent, si.wireRating ?? ratedCurrent)
  const melting = meltingCurrent(si)
  const leastRating = si.current / (si.loading * si.temperatureFactor)
  const greatestRating = Math.min(wireCurrent, melting) / bladeFuse.longMultiple
  const pulseIntegral = si.inrushPeak === null ? null : pulseShapes[si.inrushShape].factor * si.inrushPeak ** 2 * si.inrushTime
  const neededIntegral = pulseIntegral === null ? null : pulseIntegral / pulseFraction(si.pulses)
  const passesInrush = neededIntegral === null || si.meltingIntegral === null ? null : si.meltingIntegral >= neededIntegral
  const judge = (fuse: number) => {
    const carriesLoad = fuse >= leastRating
    const protectsWire = fuse <= greatestRating
    const { multiple, longest } = bladeFuse.overload
    const survivesOverload = withstands(si, multiple * fuse, longest, shortLimit(si), startOfFault(si))
    return {
      carriesLoad,
      protectsWire,
      survivesOverload,
      coordinated: carriesLoad && protectsWire && survivesOverload && passesInrush !== false,
    }
  }
  const hot = si.fuseResistance * si.hotFactor
  return {
    leastRating,
    greatestRating,
    suggestedRating: bladeRatings.find((rating) => judge(rating).coordinated) ?? null,
    ratedCurrent,
    wireCurrent,
    ...judge(si.fuse),
    passesInrush,
    longCurrent: bladeFuse.longMultiple * si.fuse,
    adiabaticFactor: factor / 1e6,
    wireWithstand: (factor * areaOf(si)) ** 2,
    overloadIntegral: (bladeFuse.overload.multiple * si.fuse) ** 2 * bladeFuse.overload.longest,
    pulseIntegral,
    neededIntegral,
    meltingCurrent: melting,
    drop: si.current * hot,
    heat: si.current ** 2 * hot,
  }
}

function cautions(si: Si, out: FuseCoordination): Caution[] {
  const found: Caution[] = []
  if (!(si.fromPole !== null && si.fromPole <= FUSE_WITHIN))
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
        "The fuse may carry {longCurrent current} for ten minutes and more; the wire bears {wireCurrent current} for good and melts bare at {meltingCurrent current}. Take a fuse of {greatestRating current} at most, or a thicker wire.",
        BLADE,
        {
          longCurrent: out.longCurrent,
          wireCurrent: out.wireCurrent,
          meltingCurrent: out.meltingCurrent,
          greatestRating: out.greatestRating,
        },
      ),
    )
  if (!out.carriesLoad)
    found.push(
      caution(
        "fuse-too-small",
        "caution",
        "At {given.current current} a {given.fuse current} fuse will open in time: it needs {leastRating current} at least.",
        FUSEOLOGY,
        { "given.current": si.current, "given.fuse": si.fuse, leastRating: out.leastRating },
      ),
    )
  if (!out.survivesOverload)
    found.push(
      caution(
        "overload-burns",
        "warning",
        "At twice its rating of {given.fuse current} the fuse may take 5 s; the wire's insulation passes {given.faultLimit temperature °C} before. Take a smaller fuse or a thicker wire.",
        SHORT_FAULT,
        { "given.fuse": si.fuse, "given.faultLimit": si.faultLimit },
      ),
    )
  if (out.passesInrush === false)
    found.push(
      caution(
        "nuisance",
        "caution",
        "The inrush wears the fuse out: it needs {neededIntegral meltingIntegral} of melting I²t and has {given.meltingIntegral meltingIntegral}. Take a slower fuse or a soft start, not simply a larger fuse that leaves the wire bare.",
        FUSEOLOGY,
        { neededIntegral: out.neededIntegral as number, "given.meltingIntegral": si.meltingIntegral as number },
      ),
    )
  if (si.fuse > bladeFuse.largest)
    found.push(
      caution(
        "slow-fuse",
        "warning",
        "A blade fuse of {given.fuse current} is of a larger, slower type than these times hold for (up to 40 A): at twice its rating it may take 50 s. Judge it by its own time-current curve.",
        LARGE_BLADE,
        { "given.fuse": si.fuse },
      ),
    )
  return [...found, ...raisedLimit(si.faultLimit)]
}

/**
 * Whether a fuse carries the load, outlives the inrush and opens before its wire is ruined.
 *
 * Formula: smallest rating I/(a·K_T); largest rating I_c/1.35, because a blade fuse may carry 135 % for 600 s, with I_c
 * the current that brings the conductor to its insulation's rating where it lies (see {@link wireHeating}), or the wire's
 * own datasheet rating where that is less, or its fusing current. At 200 % the fuse may take 5 s: the conductor, heated by
 * 2·I_n from T_i on and cooled by what its surface sheds, must stay at or below T_f that long. With no heat lost that would
 * be (2·I_n)²·5 s ≤ k²·A², k = √(Q·(β + 20 °C)/ρ₂₀ · ln((β + T_f)/(β + T_i))), which is shown beside it;
 * inrush f·Î²·t ≤ F(N)·I²t_melt, f by shape (square 1, half sine and exponential ½, triangle ⅓, parabola ⅕) and F by
 * the number of pulses (0.48 for 100 … 0.22 for 100 000, where its chart and the input end). I is the steady current (A), a the loading (default
 * 0.75), K_T the temperature factor (default 1), I_n the fuse rating (A), A the cross-section, T_i and T_f the temperatures
 * before (°C, default the insulation's rating, 80) and after (default 160). Only these two points of the fuse's curve are
 * judged: between them a blade fuse may carry 160 % for as long as 50 s, which is not. Fuse resistance 5 mΩ cold, 1.4 times that
 * hot. How the wire is laid as in {@link wireHeating}. Valid for blade fuses to 40 A on direct current within their rated voltage.
 *
 * Sources: ISO 8820-3 (2015), time-current limits; IEC 60364-5-54 (2011), Annex A; Fuseology (2017), page 12.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { fuseCoordination } from 'alula/wire'
 * const pair = fuseCoordination({ fuse: '7.5 A', current: '4 A', awg: 20, wireRating: '11 A' })
 * pair.coordinated // => true
 * pair.leastRating // => 5.333
 * pair.greatestRating // => 8.148
 * fuseCoordination({ fuse: '30 A', current: '4 A', awg: 28 }).coordinated // => false
 * ```
 */
export const fuseCoordination: Solver<FuseCoordinationInput, FuseCoordination> = /* @__PURE__ */ solver<
  FuseCoordinationInput,
  FuseCoordination
>("fuseCoordination", "Whether fuse, wire, load and inrush go together", solve, () => ({
  input: fuseInput,
  output: fuseOutput,
  example: {
    fuse: "7.5 A",
    current: "4 A",
    awg: 20,
    wireRating: "11 A",
    inrushPeak: "18 A",
    inrushTime: "60 ms",
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
    { symbol: "I_c", meaning: "current the wire bears for good", is: "I_r", when: "not has_wireRating" },
    { symbol: "I_c", meaning: "current the wire bears for good, its datasheet's where less", is: "min(I_r, I_w)", when: "has_wireRating" },
    {
      symbol: "C",
      kind: "number",
      meaning: "Preece's constant, A per inch^1.5",
      given: (si) => preeceConstants[si.metal],
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
      given: (_, out) => out.suggestedRating ?? 0,
      kind: "current",
      source: BLADE,
    },
    { symbol: "I_b", meaning: "rating to suggest", is: "I_x", when: "I_x > 0 ampere" },
    { symbol: "I_135", meaning: "current it may carry for minutes", is: "1.35 * I_n", source: BLADE },
    ...adiabaticSteps,
    { symbol: "T_b", kind: "temperature", meaning: "before the fault, as given", is: "T_i", when: "has_initialTemperature" },
    { symbol: "T_b", kind: "temperature", meaning: "before the fault: the rating", is: "T_r", when: "not has_initialTemperature" },
    {
      symbol: "k",
      meaning: "adiabatic factor",
      is: "sqrt(Q * (beta + 20) / (rho / (ohm m)) * log((beta + max(T_f, T_r) / K - 273.15) / (beta + T_b / K - 273.15))) / 1e6",
      source: ADIABATIC,
    },
    { symbol: "W", meaning: "what the wire withstands, no heat lost", is: "(k * A / (1 mm^2))^2 * (1 ampere)^2 * 1 s" },
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
    { symbol: "W_p", meaning: "I²t of one inrush", is: "f_p * I_p^2 * t_in", when: "has_inrushPeak" },
    { symbol: "M_n", meaning: "melting I²t needed", is: "W_p / F_N", when: "has_inrushPeak" },
    { symbol: "U", meaning: "voltage lost in the hot fuse", is: "I * R_f * k_f" },
    { symbol: "P", meaning: "heat in it", is: "I * U" },
  ],
  sources: [...sizeSources, BLADE, FUSEOLOGY, SHORT_FAULT, ADIABATIC, PREECE, LARGE_BLADE, FUSE_PLACE, CONVECTION, HEAT_TRANSFER, SKIN],
  check: (si) => [...sizeIssues(si), ...laidFaults(si), ...faultIssues(si)],
  cautions,
}))

function faultIssues(si: Si): Issue[] {
  const { initialTemperature, faultLimit } = si
  if (initialTemperature === null || shortLimit(si) > initialTemperature) return []
  return [
    inconsistent(["faultLimit"], "{faultLimit temperature °C}", "more than the {initialTemperature temperature °C} before the fault", {
      faultLimit,
      initialTemperature,
    }),
  ]
}
