import { theRoot } from "../numeric/index.js"
import type { HeatFlux, HeatTransferCoefficient, Length, Ratio, Temperature } from "../quantity/index.js"
import { at, type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, type Source, solver, tried } from "../solver/index.js"
import { type Plastic, plasticOptions, plastics } from "./data.js"
import { STEFAN_BOLTZMANN } from "./heating-time/heating.js"
import { CODATA, HOT_CAR, HOT_SURFACES, INCROPERA, practice, SUNLIGHT } from "./sources.js"

/** Input of {@link softening}. */
export interface SofteningInput {
  /** Plastic [one of 12 words] */
  material: Plastic
  /** Thickness of the part. [s_t; 0.1 to 50 mm] */
  thickness: Length
  /** Where it is left. [hot-car, stage-light or sun] */
  place: "hot-car" | "stage-light" | "sun"
  /** Air around it, instead of the place's usual. [T_air_given; −20 to 120 °C; optional] */
  ambientTemperature?: Temperature | null
  /** Light falling on it, instead of the place's usual. [E_given; 0 to 20 kW/m²; optional] */
  irradiance?: HeatFlux | null
  /** Part of the light that is taken up: 0.9 for dark paint, 0.3 for white. [a; 0 to 1; default 0.9] */
  absorptance?: Ratio
  /** Emissivity of its surface for heat. [epsilon; 0 to 1; default 0.9] */
  emissivity?: Ratio
  /** Film coefficient of the air alone. [h; 1 to 200 W/(m²·K); default 5 W/(m²·K)] */
  filmCoefficient?: HeatTransferCoefficient
  /** Faces that lose heat: 1 where it lies on a seat or a lining. [n_f; whole 1 to 2; default 2] */
  faces?: number
  /** Temperature of the part at the start. [T_0; −20 to 120 °C; default 20 °C] */
  startTemperature?: Temperature
}

/** Reasons for which {@link softening} can refuse. */
export type SofteningRefusal = "already-soft"

/** Hazards and limits that an answer of {@link softening} can carry. */
export type SofteningCaution = "burns" | "creeps" | "place-estimate" | "softens"

/** Result of {@link softening}. */
export interface Softening {
  /** Temperature the part settles at. [T; °C] */
  readonly materialTemperature: number
  /** Lowest published set temperature: bends open above it. [T_set; °C] */
  readonly setTemperature: number
  /** Lowest published service temperature: it creeps under its own load above it. [T_service; °C] */
  readonly serviceTemperature: number
  /** Set temperature less the part's; negative where it softens. [m_T; K] */
  readonly temperatureMargin: number
  /** `keeps its shape`, `creeps` or `softens`. [text] */
  readonly verdict: string
  /** Time constant [tau; s] */
  readonly timeConstant: number
  /** Time until it softens; null where it never does. [t_soft; s] */
  readonly softeningTime: number | null
  /** Iterations [number] */
  readonly iterations: number
  /** Heat taken up less heat lost at the settled temperature. [W/m²] */
  readonly residual: number
}

type Si = SiOf<SofteningInput>

/** What usually surrounds a part there; the hot end, to be on the safe side. */
export const places: Readonly<Record<Si["place"], { readonly air: number; readonly irradiance: number; readonly source: Source }>> = {
  // cabin air on a summer's day; sun through glass
  "hot-car": { air: 76, irradiance: 700, source: HOT_CAR },
  // a 1 kW lamp at about 2 m
  "stage-light": { air: 30, irradiance: 1000, source: practice },
  sun: { air: 38, irradiance: 1000, source: SUNLIGHT },
}

const airOf = (si: Si) => si.ambientTemperature ?? places[si.place].air
const lightOf = (si: Si) => si.irradiance ?? places[si.place].irradiance

function kernel(si: Si): Softening | NoSolution<SofteningRefusal> {
  const { material, thickness, absorptance, emissivity, filmCoefficient, faces, startTemperature } = si
  const [air, light] = [airOf(si), lightOf(si)]
  const data = plastics[material]
  const [setTemperature, serviceTemperature] = [data.set.low, data.service.low]
  if (!(startTemperature < setTemperature))
    return refuse(
      "already-soft",
      "At {given.startTemperature temperature °C} the part is already above {set temperature °C}, where it loses its shape: let it cool first.",
      Math.max(startTemperature - setTemperature, Number.EPSILON),
      { set: setTemperature },
      { startTemperature: setTemperature - 20 },
      { "given.startTemperature": startTemperature },
    )
  const gain = absorptance * light
  const black = emissivity * STEFAN_BOLTZMANN
  const surplus = (t: number) => gain - faces * (filmCoefficient * (t - air) + black * ((t + 273.15) ** 4 - (air + 273.15) ** 4))
  // nothing taken up leaves it at the air; else the film alone, which radiation can only help, bounds it from above
  const found =
    gain === 0 ? null : theRoot(surplus, air, air + gain / (faces * filmCoefficient) + 1, 1e-13, "temperature of a part in the sun")
  const materialTemperature = found?.x ?? air
  const exchange = faces * (filmCoefficient + 4 * black * (Math.max(materialTemperature, startTemperature) + 273.15) ** 3)
  const timeConstant = (data.density.low * data.specificHeat.low * thickness) / exchange
  const softens = materialTemperature > setTemperature
  return {
    materialTemperature,
    setTemperature,
    serviceTemperature,
    temperatureMargin: setTemperature - materialTemperature,
    verdict: softens ? "softens" : materialTemperature > serviceTemperature ? "creeps" : "keeps its shape",
    timeConstant,
    softeningTime: softens
      ? timeConstant * Math.log((materialTemperature - startTemperature) / (materialTemperature - setTemperature))
      : null,
    iterations: found?.iterations ?? 0,
    residual: Math.abs(found?.residual ?? 0),
  }
}

/** Skin burns on longer contact from here, °C (10 min). */
const TOO_HOT = 48

function cautions(si: Si, out: Softening): Caution<SofteningCaution>[] {
  const found: Caution<SofteningCaution>[] = []
  if (out.verdict === "softens")
    found.push(
      caution(
        "softens",
        "warning",
        "The part settles near {materialTemperature temperature °C}; it loses its shape above {setTemperature temperature °C}. Anything that hangs over people may come down: take it out of the heat, or support it.",
        plastics[si.material].set.sources[0] ?? practice,
        { materialTemperature: out.materialTemperature, setTemperature: out.setTemperature },
      ),
    )
  if (out.verdict === "creeps")
    found.push(
      caution(
        "creeps",
        "caution",
        "The part settles near {materialTemperature temperature °C}; it may sag under load above {serviceTemperature temperature °C}. Anything that hangs over people may come down: take it out of the heat, or support it.",
        plastics[si.material].service.sources[0] ?? practice,
        { materialTemperature: out.materialTemperature, serviceTemperature: out.serviceTemperature },
      ),
    )
  if (out.materialTemperature > TOO_HOT)
    found.push(
      caution(
        "burns",
        "warning",
        "Too hot to put on: skin burns in 10 min at 48 °C, in 1 min at 51 °C, a child's sooner. Let it cool first.",
        HOT_SURFACES,
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

const solve = (si: Si): Softening | NoSolution<SofteningRefusal> => tried(kernel(si), si, softening.input, kernel)

/**
 * Whether a finished part keeps its shape in a hot car, in the sun or under stage lights.
 *
 * Formula: a·E = n·(h·(T − T_air) + ε·σ·(T⁴ − T_air⁴)), solved for T; time constant τ = ρ·c·s/(n·(h + 4·ε·σ·T³)) with
 * the radiation at its strongest, and t = τ·ln((T − T₀)/(T − T_set)): both on the short side. a absorptance, E light, n
 * faces that lose heat, h film, ε emissivity, s thickness, ρ·c the lowest heat capacity published. Valid for thin parts
 * (warm all through).
 *
 * **Inputs**
 * - `material`: plastic [one of 12 words]
 * - `thickness`: thickness [s_t; 0.1 to 50 mm]
 * - `place`: place [hot-car, stage-light or sun]
 * - `ambientTemperature`: ambient temperature [T_air_given; −20 to 120 °C; optional]
 * - `irradiance`: light [E_given; 0 to 20 kW/m²; optional]
 * - `absorptance`: absorptance [a; 0 to 1; default 0.9]
 * - `emissivity`: emissivity [epsilon; 0 to 1; default 0.9]
 * - `filmCoefficient`: film of the air [h; 1 to 200 W/(m²·K); default 5 W/(m²·K)]
 * - `faces`: faces that lose heat [n_f; whole 1 to 2; default 2]
 * - `startTemperature`: start temperature of the part [T_0; −20 to 120 °C; default 20 °C]
 *
 * **Results**
 *
 * `materialTemperature`: settled material temperature [T; °C]; `setTemperature`: softening temperature [T_set; °C];
 * `serviceTemperature`: service temperature [T_service; °C]; `temperatureMargin`: margin to softening [m_T; K];
 * `verdict`: verdict [text]; `timeConstant`: time constant [tau; s]; `softeningTime`: time to soften [t_soft; s];
 * `iterations`: iterations [number]; `residual`: residual [W/m²].
 *
 * **Symbols of the working**
 *
 * T_air: air, given or usual [°C]; E: light, given or usual [W/m²]; rho_p: lowest published density [kg/m³]; c_p:
 * lowest published specific heat [J/(kg·K)]; sigma: Stefan–Boltzmann constant, W/(m²·K⁴).
 *
 * **Sources**
 * - F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine: Fundamentals of Heat and Mass Transfer, 6th, 2007,
 *   1.2, 5.1 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `already-soft`
 * @example
 * ```ts
 * import { softening } from 'alula/thermoform'
 * const rib = softening({ material: 'pvc', thickness: '2.9 mm', place: 'hot-car' })
 * rib.verdict // => 'softens'
 * ```
 */
export const softening: Solver<SofteningInput, Softening, SofteningRefusal, SofteningCaution> = /* @__PURE__ */ solver<
  SofteningInput,
  Softening,
  SofteningRefusal,
  SofteningCaution
>("softening", "Whether a finished part keeps its shape in heat and light", solve, () => ({
  input: {
    material: { kind: "choice", label: "plastic", options: plasticOptions },
    thickness: { kind: "length", symbol: "s_t", label: "thickness", min: "0.1 mm", max: "50 mm", typical: ["1 mm", "8 mm"] },
    place: {
      kind: "choice",
      label: "place",
      options: { "hot-car": "closed car in the sun", "stage-light": "close to a stage lamp", sun: "in the sun outdoors" },
    },
    ambientTemperature: {
      kind: "temperature",
      symbol: "T_air_given",
      label: "ambient temperature",
      min: -20,
      max: 120,
      typical: [20, 80],
      default: null,
    },
    irradiance: { kind: "heatFlux", symbol: "E_given", label: "light", min: 0, max: 20000, typical: [0, 2000], default: null },
    absorptance: { kind: "ratio", symbol: "a", label: "absorptance", min: 0, max: 1, default: 0.9 },
    emissivity: { kind: "ratio", symbol: "epsilon", label: "emissivity", min: 0, max: 1, default: 0.9 },
    filmCoefficient: {
      kind: "heatTransferCoefficient",
      symbol: "h",
      label: "film of the air",
      min: 1,
      max: 200,
      typical: [3, 30],
      default: 5,
    },
    faces: { kind: "number", symbol: "n_f", label: "faces that lose heat", whole: true, min: 1, max: 2, default: 2 },
    startTemperature: {
      kind: "temperature",
      symbol: "T_0",
      label: "start temperature of the part",
      min: -20,
      max: 120,
      typical: [10, 30],
      default: 20,
    },
  },
  output: {
    materialTemperature: { kind: "temperature", symbol: "T", label: "settled material temperature" },
    setTemperature: { kind: "temperature", symbol: "T_set", label: "softening temperature" },
    serviceTemperature: { kind: "temperature", symbol: "T_service", label: "service temperature" },
    temperatureMargin: { kind: "temperatureDifference", symbol: "m_T", label: "margin to softening" },
    verdict: { kind: "text", label: "verdict" },
    timeConstant: { kind: "time", symbol: "tau", label: "time constant" },
    softeningTime: { kind: "time", symbol: "t_soft", label: "time to soften" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "heatFlux", label: "residual" },
  },
  example: { material: "pvc", thickness: "2.9 mm", place: "hot-car" },
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
    { symbol: "rho_p", kind: "density", meaning: "lowest published density", given: (si) => plastics[si.material].density.low },
    {
      symbol: "c_p",
      kind: "specificHeat",
      meaning: "lowest published specific heat",
      given: (si) => plastics[si.material].specificHeat.low,
    },
    {
      symbol: "sigma",
      kind: "number",
      meaning: "Stefan–Boltzmann constant, W/(m²·K⁴)",
      given: () => STEFAN_BOLTZMANN,
      source: CODATA,
    },
    { solved: "T", meaning: "temperature at which gain and loss are alike" },
    {
      left: "a * E + n_f * (h * T_air + epsilon * sigma * W/(m^2 K^4) * T_air^4)",
      right: "n_f * (h * T + epsilon * sigma * W/(m^2 K^4) * T^4)",
      meaning: "heat taken up is heat lost",
      source: at(INCROPERA, "1.2"),
    },
    { symbol: "m_T", meaning: "margin", is: "T_set - T" },
    {
      symbol: "tau",
      meaning: "time constant",
      is: "rho_p * c_p * s_t / (n_f * (h + 4 * epsilon * sigma * W/(m^2 K^4) * max(T, T_0)^3))",
    },
    { symbol: "t_soft", meaning: "time until it softens", is: "tau * log((T - T_0) / (T - T_set))", when: "T > T_set" },
  ],
  sources: [at(INCROPERA, "1.2, 5.1")],
  cautions,
}))
