import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { areaOf, sizeIssues, sizeSources } from "./conductor.js"
import { bladeFuse, bladeRatings, metals, preeceConstants, pulseFractions, pulseShapes } from "./data.js"
import { type FuseCoordination, type FuseCoordinationInput, fuseInput, fuseOutput } from "./fuse-fields.js"
import { adiabaticConstant, adiabaticSteps, fusingCurrent } from "./limits.js"

type Si = SiOf<FuseCoordinationInput>

/** Part of the melting integral a pulse may have, by how many pulses are to be outlived; the chart ends at 100 000. */
export function pulseFraction(pulses: number): number {
  return (pulseFractions.find((p) => pulses <= p.pulses) ?? (pulseFractions.at(-1) as { fraction: number })).fraction
}

/** Adiabatic factor of a conductor, A·√s/m²: K·√ln((β + T_f)/(β + T_i)), K = √(Q·(β + 20)/ρ₂₀). */
export function adiabaticFactor(metal: Si["metal"], initial: number, final: number): number {
  const { beta } = metals[metal]
  return adiabaticConstant(metals[metal]) * Math.sqrt(Math.log((beta + final) / (beta + initial)))
}

function solve(si: Si): FuseCoordination {
  const factor = adiabaticFactor(si.metal, si.initialTemperature, si.faultLimit)
  const wireWithstand = (factor * areaOf(si)) ** 2
  const longCurrent = bladeFuse.longMultiple * si.fuse
  const overloadIntegral = (bladeFuse.overload.multiple * si.fuse) ** 2 * bladeFuse.overload.longest
  const leastRating = si.current / (si.loading * si.temperatureFactor)
  const greatestRating = si.wireRating / bladeFuse.longMultiple
  const pulseIntegral = si.inrushPeak === null ? null : pulseShapes[si.inrushShape].factor * si.inrushPeak ** 2 * si.inrushTime
  const neededIntegral = pulseIntegral === null ? null : pulseIntegral / pulseFraction(si.pulses)
  const carriesLoad = si.fuse >= leastRating
  const protectsWire = si.fuse <= greatestRating
  const survivesOverload = overloadIntegral <= wireWithstand || bladeFuse.overload.multiple * si.fuse <= si.wireRating
  const passesInrush = neededIntegral === null || si.meltingIntegral === null ? null : si.meltingIntegral >= neededIntegral
  const hot = si.fuseResistance * si.hotFactor
  return {
    leastRating,
    greatestRating,
    suggestedRating: bladeRatings.find((r) => r >= leastRating && r <= greatestRating) ?? null,
    carriesLoad,
    protectsWire,
    survivesOverload,
    passesInrush,
    coordinated: carriesLoad && protectsWire && survivesOverload && passesInrush !== false,
    longCurrent,
    adiabaticFactor: factor / 1e6,
    wireWithstand,
    overloadIntegral,
    pulseIntegral,
    neededIntegral,
    meltingCurrent: fusingCurrent(Math.sqrt((4 * areaOf(si)) / Math.PI), preeceConstants[si.metal]),
    drop: si.current * hot,
    heat: si.current ** 2 * hot,
  }
}

function cautions(si: Si, out: FuseCoordination): Caution[] {
  const amps = (a: number) => formatQuantity("current", a)
  const found: Caution[] = [
    caution(
      "fuse-ahead",
      "warning",
      "A fuse guards only what lies behind it: put it within 18 cm of the pack's positive pole, one for each pack, and have a qualified person check the build. Meeting these figures is no permission.",
      "ABYC E-11, clause 11.10 (overcurrent protection within 7 in of the source; by way of suppliers' summaries)",
    ),
  ]
  if (!out.protectsWire)
    found.push(
      caution(
        "wire-unprotected",
        "warning",
        `The fuse may carry ${amps(out.longCurrent)} for ten minutes and more; the wire bears ${amps(si.wireRating)}. Take a fuse of ${amps(out.greatestRating)} at most, or a thicker wire.`,
        "ISO 8820-3, 2015 (135 % within 600 s at most; from memory)",
      ),
    )
  if (!out.carriesLoad)
    found.push(
      caution(
        "fuse-too-small",
        "caution",
        `At ${amps(si.current)} the fuse will open in time: it needs ${amps(out.leastRating)} at least.`,
        "Fuse characteristics, Fuseology, 2017 (75 % rerating at 25 °C)",
      ),
    )
  if (!out.survivesOverload)
    found.push(
      caution(
        "overload-burns",
        "warning",
        `At twice its rating the fuse may take ${bladeFuse.overload.longest} s; the wire's insulation is ruined before.`,
        "ISO 8820-3, 2015 (200 % within 5 s; from memory) and IEC 60364-5-54, 2011, Annex A",
      ),
    )
  if (out.passesInrush === false)
    found.push(
      caution(
        "nuisance",
        "caution",
        "The inrush wears the fuse out: take a slower fuse or a soft start, not simply a larger fuse that leaves the wire bare.",
        "Fuse characteristics, pulse energy, Fuseology, 2017, page 12",
      ),
    )
  return found
}

/**
 * Whether a fuse carries the load, outlives the inrush and opens before its wire is ruined.
 *
 * Formula: least rating I/(a·K_T); greatest rating I_w/1.35, because a blade fuse may carry 135 % for 600 s;
 * at 200 % it may take 5 s, so (2·I_n)²·5 s ≤ k²·A² with k = √(Q·(β + 20 °C)/ρ₂₀ · ln((β + T_f)/(β + T_i)));
 * inrush f·Î²·t ≤ F(N)·I²t_melt, f by shape (square 1, half sine and exponential ½, triangle ⅓, parabola ⅕) and F by
 * the number of pulses (0.48 for 100 … 0.22 for 100 000, where its chart and the input end). I is the steady current (A), a the loading (default
 * 0.75), K_T the temperature factor (default 1), I_w what the wire may carry (A), I_n the fuse rating (A), A the
 * cross-section, T_i and T_f the temperatures before and after (°C, default 70 and 160). Fuse resistance 5 mΩ
 * cold, 1.4 times that hot. Valid for blade fuses on direct current within their rated voltage.
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
 * ```
 */
export const fuseCoordination: Solver<FuseCoordinationInput, FuseCoordination> = /* @__PURE__ */ solver<
  FuseCoordinationInput,
  FuseCoordination
>({
  name: "fuseCoordination",
  title: "Whether fuse, wire, load and inrush go together",
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
    { symbol: "I_lo", meaning: "least rating", is: "I / (a * K_T)", source: "Fuseology, 2017 (rerating)" },
    { symbol: "I_hi", meaning: "greatest rating", is: "I_w / 1.35", source: "ISO 8820-3, 2015" },
    {
      symbol: "I_b",
      meaning: "smallest usual blade rating between",
      given: (_, out) => out.suggestedRating ?? 0,
      kind: "current",
      source: "ISO 8820-3, 2015",
    },
    { symbol: "I_135", meaning: "current it may carry for minutes", is: "1.35 * I_n", source: "ISO 8820-3, 2015" },
    ...adiabaticSteps,
    {
      symbol: "rho",
      kind: "resistivity",
      meaning: "resistivity at 20 °C",
      given: (si) => metals[si.metal].resistivity,
      source: "IEC 60028, IEC 60889",
    },
    {
      symbol: "k",
      meaning: "adiabatic factor",
      is: "sqrt(Q * (beta + 20) / (rho / (ohm m)) * log((beta + T_f / K - 273.15) / (beta + T_i / K - 273.15))) / 1e6",
      source: "IEC 60364-5-54, Annex A",
    },
    { symbol: "A", kind: "area", meaning: "cross-section", given: areaOf, source: "ASTM B258" },
    { symbol: "W", meaning: "what the wire withstands", is: "(k * A / (1 mm^2))^2 * (1 ampere)^2 * 1 s" },
    { symbol: "W_o", meaning: "200 % for 5 s", is: "(2 * I_n)^2 * 5 s", source: "ISO 8820-3, 2015" },
    {
      symbol: "f_p",
      kind: "number",
      meaning: "shape of the inrush",
      given: (si) => pulseShapes[si.inrushShape].factor,
      source: "Fuseology, 2017, page 12",
    },
    {
      symbol: "F_N",
      kind: "number",
      meaning: "part of the melting integral allowed",
      given: (si) => pulseFraction(si.pulses),
      source: "Fuseology, 2017, page 12",
    },
    { symbol: "W_p", meaning: "I²t of one inrush", is: "f_p * I_p^2 * t_p", when: "has_inrushPeak" },
    { symbol: "M_n", meaning: "melting I²t needed", is: "W_p / F_N", when: "has_inrushPeak" },
    {
      symbol: "C",
      kind: "number",
      meaning: "Preece's constant, A per inch^1.5",
      given: (si) => preeceConstants[si.metal],
      source: "Preece's law",
    },
    {
      symbol: "I_m",
      meaning: "melts the bare wire in still air",
      is: "C * (sqrt(4 * A / pi) / (25.4 mm))^1.5 * 1 ampere",
      source: "Preece's law",
    },
    { symbol: "U", meaning: "voltage lost in the hot fuse", is: "I * R_f * k_f" },
    { symbol: "P", meaning: "heat in it", is: "I * U" },
  ],
  sources: [
    ...sizeSources,
    {
      title: "ISO 8820-3, Road vehicles, Fuse-links with tabs (blade type)",
      by: "ISO",
      edition: "2015",
      where: "time-current limits (from memory)",
    },
    {
      title: "IEC 60364-5-54, Earthing arrangements and protective conductors",
      by: "IEC",
      edition: "2011",
      where: "Annex A (from memory)",
    },
    { title: "Fuse characteristics, terms and consideration factors (Fuseology)", by: "Littelfuse", edition: "2017", where: "page 12" },
  ],
  check: (si) => [
    ...sizeIssues(si),
    ...(si.faultLimit > si.initialTemperature
      ? []
      : [inconsistent(["faultLimit"], `${si.faultLimit} °C`, `more than the ${si.initialTemperature} °C before the fault`)]),
  ],
  solve,
  cautions,
})
