import { brent } from "../numeric/index.js"
import type { HeatFlux, HeatTransferCoefficient, Length, Ratio, Temperature } from "../quantity/index.js"
import { type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { type Plastic, plasticOptions, plastics } from "./data.js"
import { STEFAN_BOLTZMANN } from "./heating.js"

/** Input of {@link softening}. */
export interface SofteningInput {
  /** The plastic. */
  plastic: Plastic
  /** Thickness of the part. */
  thickness: Length
  /** Where it is left. */
  place: "hotCar" | "stageLight" | "sun"
  /** Air around it, instead of the place's usual. */
  air?: Temperature | null
  /** Light falling on it, instead of the place's usual. */
  irradiance?: HeatFlux | null
  /** Part of the light that is taken up: 0.9 for dark paint, 0.3 for white. */
  absorptance?: Ratio
  /** Emissivity of its surface for heat. */
  emissivity?: Ratio
  /** Film coefficient of the air alone. */
  film?: HeatTransferCoefficient
  /** Faces that lose heat: 1 where it lies on a seat or a lining. */
  faces?: number
  /** Temperature of the part at the start. */
  start?: Temperature
}

/** Result of {@link softening}. */
export interface Softening {
  /** Temperature the part settles at, °C. */
  readonly partTemperature: number
  /** Lowest published set temperature: bends open above it, °C. */
  readonly setTemperature: number
  /** Lowest published service temperature: it creeps under its own load above it, °C. */
  readonly serviceTemperature: number
  /** Set temperature less the part's, K; negative where it softens. */
  readonly margin: number
  /** `keeps its shape`, `creeps` or `softens`. */
  readonly verdict: string
  /** Time constant, s. */
  readonly timeConstant: number
  /** Time until it softens, s; null where it never does. */
  readonly timeToSoften: number | null
  /** Iterations. */
  readonly iterations: number
  /** Heat taken up less heat lost at the settled temperature, W/m². */
  readonly residual: number
}

type Si = SiOf<SofteningInput>

/** What usually surrounds a part there; the hot end, to be on the safe side. */
export const places: Readonly<Record<Si["place"], { readonly air: number; readonly irradiance: number; readonly source: string }>> = {
  hotCar: {
    air: 76,
    irradiance: 700,
    source: "cabin air up to 76 °C on a summer's day (Grundstein et al., 2009, from memory); sun through glass: common practice",
  },
  stageLight: { air: 30, irradiance: 1000, source: "a 1 kW lamp at about 2 m; common practice, no source" },
  sun: { air: 38, irradiance: 1000, source: "ASTM G173 reference sun, about 1000 W/m²" },
}

const airOf = (si: Si) => si.air ?? places[si.place].air
const lightOf = (si: Si) => si.irradiance ?? places[si.place].irradiance

function solve(si: Si): Softening | NoSolution {
  const { plastic, thickness, absorptance, emissivity, film, faces, start } = si
  const [air, light] = [airOf(si), lightOf(si)]
  const data = plastics[plastic]
  const [setTemperature, serviceTemperature] = [data.set.low, data.service.low]
  if (!(start < setTemperature))
    return refuse(
      "already-soft",
      `At ${start} °C the part is already above its set temperature of ${setTemperature} °C.`,
      start - setTemperature,
      { start },
      { start: setTemperature - 20 },
    )
  const gain = absorptance * light
  const black = emissivity * STEFAN_BOLTZMANN
  const surplus = (t: number) => gain - faces * (film * (t - air) + black * ((t + 273.15) ** 4 - (air + 273.15) ** 4))
  const found = gain === 0 ? { x: air, residual: 0, iterations: 0 } : brent(surplus, air, air + gain / (faces * film) + 1, 1e-13)
  const partTemperature = found ? found.x : air
  const exchange = faces * (film + 4 * black * (Math.max(partTemperature, start) + 273.15) ** 3)
  const timeConstant = (data.density.low * data.specificHeat.low * thickness) / exchange
  const softens = partTemperature > setTemperature
  return {
    partTemperature,
    setTemperature,
    serviceTemperature,
    margin: setTemperature - partTemperature,
    verdict: softens ? "softens" : partTemperature > serviceTemperature ? "creeps" : "keeps its shape",
    timeConstant,
    timeToSoften: softens ? timeConstant * Math.log((partTemperature - start) / (partTemperature - setTemperature)) : null,
    iterations: found?.iterations ?? 0,
    residual: Math.abs(found?.residual ?? 0),
  }
}

function cautions(si: Si, out: Softening): Caution[] {
  const found: Caution[] = []
  if (out.verdict !== "keeps its shape")
    found.push(
      caution(
        out.verdict === "softens" ? "softens" : "creeps",
        out.verdict === "softens" ? "warning" : "caution",
        `The part settles near ${Math.round(out.partTemperature)} °C; it ${out.verdict === "softens" ? `loses its shape above ${out.setTemperature} °C` : `may sag under load above ${out.serviceTemperature} °C`}. Anything that hangs over people may come down: take it out of the heat, or support it.`,
        out.verdict === "softens" ? plastics[si.plastic].set.source : plastics[si.plastic].service.source,
      ),
    )
  if (out.partTemperature > 48)
    found.push(
      caution(
        "hot-to-wear",
        "warning",
        "Too hot to put on: skin burns in 10 min at 48 °C, in 1 min at 51 °C. Let it cool first.",
        "ISO 13732-1, 2006, thresholds for contact of 1 min and longer (from memory)",
      ),
    )
  found.push(
    caution(
      "place-estimate",
      "note",
      "Air and light are the hot end of the usual, as if the place were at its hottest from the start: measure where it matters.",
      places[si.place].source,
    ),
  )
  return found
}

/**
 * Whether a finished part keeps its shape in a hot car, in the sun or under stage lights.
 *
 * Formula: a·E = n·(h·(T − T_air) + ε·σ·(T⁴ − T_air⁴)), solved for T; time constant τ = ρ·c·s/(n·(h + 4·ε·σ·T³)) with the radiation
 * at its strongest, and t = τ·ln((T − T₀)/(T − T_set)): both on the short side. a absorptance (default 0.9), E light (W/m²), n faces
 * that lose heat (default 2), h film (W/(m²·K), default 5), ε emissivity (default 0.9), s thickness (m), ρ·c the least heat
 * capacity published. Valid for thin parts (warm all through).
 *
 * Sources: Incropera et al., Fundamentals of Heat and Mass Transfer, 6th ed., 2007, 1.2 and 5.1.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `already-soft`
 * @example
 * ```ts
 * import { softening } from 'alula/thermoform'
 * const rib = softening({ plastic: 'pvc', thickness: '2.9 mm', place: 'hotCar' })
 * rib.verdict // => 'softens'
 * ```
 */
export const softening: Solver<SofteningInput, Softening> = /* @__PURE__ */ solver<SofteningInput, Softening>({
  name: "softening",
  title: "Whether a finished part keeps its shape in heat and light",
  input: {
    plastic: { kind: "choice", label: "plastic", options: plasticOptions },
    thickness: { kind: "length", symbol: "s_t", label: "thickness", min: "0.1 mm", max: "50 mm", typical: ["1 mm", "8 mm"] },
    place: {
      kind: "choice",
      label: "place",
      options: { hotCar: "closed car in the sun", stageLight: "close to a stage lamp", sun: "in the sun outdoors" },
    },
    air: { kind: "temperature", symbol: "T_air_given", label: "air", min: -20, max: 120, typical: [20, 80], default: null },
    irradiance: { kind: "heatFlux", symbol: "E_given", label: "light", min: 0, max: 20000, typical: [0, 2000], default: null },
    absorptance: { kind: "ratio", symbol: "a", label: "absorptance", min: 0, max: 1, default: 0.9 },
    emissivity: { kind: "ratio", symbol: "epsilon", label: "emissivity", min: 0, max: 1, default: 0.9 },
    film: { kind: "heatTransferCoefficient", symbol: "h", label: "film of the air", min: 1, max: 200, typical: [3, 30], default: 5 },
    faces: { kind: "number", symbol: "n_f", label: "faces that lose heat", whole: true, min: 1, max: 2, default: 2 },
    start: { kind: "temperature", symbol: "T_0", label: "part at the start", min: -20, max: 120, typical: [10, 30], default: 20 },
  },
  output: {
    partTemperature: { kind: "temperature", symbol: "T", label: "part settles at" },
    setTemperature: { kind: "temperature", symbol: "T_set", label: "softens from" },
    serviceTemperature: { kind: "temperature", symbol: "T_service", label: "creeps from" },
    margin: { kind: "temperatureDifference", symbol: "m_T", label: "margin to softening" },
    verdict: { kind: "text", label: "verdict" },
    timeConstant: { kind: "time", symbol: "tau", label: "time constant" },
    timeToSoften: { kind: "time", symbol: "t_soft", label: "soft after" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "heatFlux", label: "residual" },
  },
  example: { plastic: "pvc", thickness: "2.9 mm", place: "hotCar" },
  formulae: [
    { symbol: "T_air", kind: "temperature", meaning: "air, given or usual", given: airOf },
    { symbol: "E", kind: "heatFlux", meaning: "light, given or usual", given: lightOf },
    { symbol: "T_set", kind: "temperature", meaning: "lowest published set temperature", given: (_, out) => out.setTemperature },
    {
      symbol: "T_service",
      kind: "temperature",
      meaning: "lowest published service temperature",
      given: (_, out) => out.serviceTemperature,
    },
    { symbol: "rho_p", kind: "density", meaning: "lowest published density", given: (si) => plastics[si.plastic].density.low },
    {
      symbol: "c_p",
      kind: "specificHeat",
      meaning: "lowest published specific heat",
      given: (si) => plastics[si.plastic].specificHeat.low,
    },
    {
      symbol: "sigma",
      kind: "number",
      meaning: "Stefan–Boltzmann constant, W/(m²·K⁴)",
      given: () => STEFAN_BOLTZMANN,
      source: "CODATA 2018",
    },
    { solved: "T", meaning: "temperature at which gain and loss are alike" },
    {
      left: "a * E + n_f * (h * T_air + epsilon * sigma * W/(m^2 K^4) * T_air^4)",
      right: "n_f * (h * T + epsilon * sigma * W/(m^2 K^4) * T^4)",
      meaning: "heat taken up is heat lost",
      source: "Incropera et al., 2007, 1.2",
    },
    { symbol: "m_T", meaning: "margin", is: "T_set - T" },
    { symbol: "tau", meaning: "time constant", is: "rho_p * c_p * s_t / (n_f * (h + 4 * epsilon * sigma * W/(m^2 K^4) * max(T, T_0)^3))" },
    { symbol: "t_soft", meaning: "time until it softens", is: "tau * log((T - T_0) / (T - T_set))", when: "T > T_set" },
  ],
  sources: [
    { title: "Fundamentals of Heat and Mass Transfer", by: "Incropera, DeWitt, Bergman, Lavine", edition: "6th, 2007", where: "1.2, 5.1" },
  ],
  solve,
  cautions,
})
