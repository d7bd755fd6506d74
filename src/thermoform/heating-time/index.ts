import { at, bandField, type Issue, inconsistent, type NoSolution, refuse, type Solver, solver, tried } from "../../solver/index.js"
import { plastics } from "../data.js"
import { safeWindow } from "../forming-window.js"
import { partFaults, partFields, propertyFields } from "../part.js"
import { CARSLAW, INCROPERA } from "../sources.js"
import { cautions } from "./cautions.js"
import { heatThroughFormulae } from "./formulae.js"
import { arrival, coreTime, heatPath, peakCore, propertiesOf, surfaceTime } from "./heating.js"
import { earliestSurface, type HeatingProblem, heatingProblem, limitOf } from "./problem.js"
import type { HeatingTime, HeatingTimeCaution, HeatingTimeInput, HeatingTimeRefusal, Si } from "./types.js"

export type { HeatingTime, HeatingTimeInput } from "./types.js"

/** A core that only just creeps up to its target never surely gets there: it must settle this far above it, K. */
const CLEAR = 1e-3

function kernel(si: Si): HeatingTime | NoSolution<HeatingTimeRefusal> {
  const problem = heatingProblem(si)
  const { target, limit, film, swings } = problem
  const equivalentTemperature = problem.equivalentOf(si.sourceTemperature)
  const usual = problem.part("usual")
  const peak = Math.min(
    ...(["usual", "slow", "fast"] as const).map((variant) => peakCore(problem.part(variant), equivalentTemperature, swings)),
  )
  const found = arrival(usual, equivalentTemperature, target, swings)
  const slow = coreTime(problem.part("slow"), equivalentTemperature, target, swings)
  const fast = coreTime(problem.part("fast"), equivalentTemperature, target, swings)
  if (!(peak > target + CLEAR) || !found || !slow || !fast) return neverHot(problem, peak)
  const { kind, equivalent: limited } = limitOf(problem)
  const skin = earliestSurface(problem, equivalentTemperature)
  // a source at which even a surface left in the heat settles at its limit: whatever the plastic's spread, no time is too long
  const advised = advise(si, problem, problem.sourceOf(limit))
  const { conductivity, density, specificHeat } = propertiesOf(si.material, si, target - si.startTemperature, "usual")
  const length = heatPath(si)
  return {
    coreTemperature: target,
    surfaceTemperatureLimit: limit,
    time: found.time,
    timeRange: { low: fast.time, high: slow.time },
    peakSurfaceTemperature: found.hottest,
    peakSurfaceTime: found.hottestTime,
    surfaceLimitTime: surfaceTime(usual, equivalentTemperature, limit, swings)?.time ?? null,
    minSurfaceLimitTime: skin?.time ?? null,
    overheatsFirst: skin !== null && skin.time < slow.time,
    maxSourceTemperature: limited === null ? null : problem.sourceOf(limited),
    maxSourceNote: kind,
    advisedSourceTemperature: advised?.source ?? null,
    advisedTime: advised ? { low: advised.short, high: advised.long } : null,
    filmCoefficient: film,
    equivalentTemperature,
    biotNumber: (film * length) / conductivity,
    fourierNumber: (conductivity * found.time) / (density * specificHeat * length ** 2),
    iterations: found.iterations,
    residual: found.residual,
  }
}

function neverHot(problem: HeatingProblem, peak: number): NoSolution<HeatingTimeRefusal> {
  const { target } = problem
  const part = problem.part("slow")
  const drive = part.drive(0)
  const share = part.response.steady(part.plastic[0] as number, { outside: 1, inside: 0, initial: drive.initial.map(() => 0) })
  const needed = problem.sourceOf((target + 5 - (1 - share) * drive.inside) / share)
  return refuse(
    "never-reached",
    "The coldest part of the plastic never gets above {core temperature °C}, and forming needs {target temperature °C}: use a hotter source, heat both faces, or insulate the back.",
    Math.max(target - peak, CLEAR),
    { core: peak, target },
    Number.isFinite(needed) ? { sourceTemperature: needed } : {},
  )
}

function advise(si: Si, problem: HeatingProblem, hottestSource: number): { source: number; short: number; long: number } | null {
  if (problem.swings) return null
  const { target } = problem
  const source = hottestSource - si.sourceTemperatureError
  const long = coreTime(problem.part("slow"), problem.equivalentOf(source - si.sourceTemperatureError), target, false)
  const short = coreTime(problem.part("fast"), problem.equivalentOf(hottestSource), target, false)
  return long && short ? { source, short: short.time, long: long.time } : null
}

/** Water boils, °C. */
const BOILING = 100

function check(si: Si): Issue[] {
  const faults = partFaults(si)
  if (si.sandTemperature !== null && si.filling !== "dry-sand")
    faults.push(inconsistent(["sandTemperature"], "a sand temperature", "a tube filled with sand"))
  if (si.shape !== "sheet" && si.faces !== 2)
    faults.push(inconsistent(["faces"], "{faces}", "2, for a round part, which is heated all round", { faces: si.faces }))
  if (si.heatSource === "hot-plate" && !(si.shape === "sheet" && si.faces === 1))
    faults.push(inconsistent(["heatSource"], "a hot plate", "a sheet with 1 face on the plate"))
  if (si.heatSource === "water-bath" && !(si.sourceTemperature <= BOILING))
    faults.push(
      inconsistent(["sourceTemperature"], "{sourceTemperature temperature °C}", "no more than 100 °C in a water bath", {
        sourceTemperature: si.sourceTemperature,
      }),
    )
  const window = safeWindow(si.material)
  const { low } = plastics[si.material].lower
  const { coreTemperature, startTemperature } = si
  if (coreTemperature !== null && !(coreTemperature >= low && coreTemperature <= window.high - 1))
    faults.push(
      inconsistent(
        ["coreTemperature"],
        "{coreTemperature temperature °C}",
        "from {lowest temperature °C} to {highest temperature °C}, inside the forming window",
        { coreTemperature, lowest: low, highest: window.high - 1 },
      ),
    )
  const target = coreTemperature ?? window.low
  if (!(startTemperature < target - 1))
    faults.push(
      inconsistent(
        ["startTemperature"],
        "{startTemperature temperature °C}",
        "a start colder than the core is to get, {target temperature °C}",
        {
          startTemperature,
          target,
        },
      ),
    )
  return faults
}

const solve = (si: Si): HeatingTime | NoSolution<HeatingTimeRefusal> => tried(kernel(si), si, heatingTime.input, kernel, check)

/**
 * How long a sheet, rod or tube takes to heat through, and whether its surface overheats first.
 *
 * Formula: one-dimensional transient conduction, T(x, t) = T_steady(x) + Σ aₙ(x)·exp(−bₙ·t), with the decay rates bₙ
 * (1/s) solved from the film condition k·∂T/∂n = h·(T_e − T) at the heated face (for a sheet heated from both faces
 * ζ·tan ζ = Bi and b = ζ²·α/L²), layer by layer where a tube is full of sand. The coldest spot of the plastic
 * (mid-plane, back, axis, bore) must reach the lower forming temperature, or the one asked for. T_e is the source's
 * temperature; for a radiant heater it is T_e = (ε·σ·(T_s⁴ − T_m⁴) + 4·ε·σ·T_m⁴ + h_c·T_room)/h with h = h_c +
 * 4·ε·σ·T_m³ and T_m halfway between the start and the surface limit. Symbols: L thickness or radius, k conductivity, α
 * = k/(ρ·c) diffusivity (m²/s), h film, ε emissivity, start and room 20 °C, source error 5 K. The hottest source is the
 * one with which the surface quickest to heat within the spread meets its limit just as the slowest core arrives, and
 * no hotter than the onset of charring. The advised source is the one under which a surface left in the heat settles at
 * its limit, less the error. The heat of melting of crystalline plastics is spread over the rise. Valid for Biot
 * numbers from 0.001 to 1000, properties constant.
 *
 * **Inputs**
 * - `shape`: form [sheet, rod or tube]
 * - `thickness`: thickness or wall [s_t; 0.1 to 100 mm; optional]
 * - `outsideDiameter`: outside diameter [D; 1 to 300 mm; optional]
 * - `material`: plastic [one of 12 words]
 * - `filling`: filling [empty or dry-sand; default empty]
 * - `sandTemperature`: sand when poured [T_sand; 0 to 300 °C; optional]
 * - `heatSource`: heated by [oven, heat-gun, hot-plate, radiant or water-bath]
 * - `sourceTemperature`: air, plate, element or water [T_src; 0 to 1200 °C]
 * - `coreTemperature`: core temperature wanted [T_core; 20 to 300 °C; optional]
 * - `faces`: faces heated [n_f; whole 1 to 2; default 2]
 * - `filmCoefficient`: film coefficient [h_given; 0.5 to 20000 W/(m²·K); optional]
 * - `emissivity`: effective emissivity [epsilon; 0.05 to 1; default 0.9]
 * - `startTemperature`: start temperature of the part [T_start; −20 to 150 °C; default 20 °C]
 * - `ambientTemperature`: ambient temperature [T_room; −20 to 50 °C; default 20 °C]
 * - `sourceTemperatureError`: error of the source's temperature [dT_src; 0 to 50 K; default 5 K]
 * - `conductivity`: conductivity [k_given; 0.01 to 500 W/(m·K); optional]
 * - `density`: density [rho_given; 20 to 9000 kg/m³; optional]
 * - `specificHeat`: specific heat [c_given; 100 to 10000 J/(kg·K); optional]
 *
 * **Results**
 *
 * `coreTemperature`: core temperature to reach [T_l; °C]; `surfaceTemperatureLimit`: surface temperature limit [T_u;
 * °C]; `time`: time until the core is there [t; s]; `timeRange`: spread of the heating time [t_fast to t_slow; s];
 * `peakSurfaceTemperature`: peak surface temperature [T_hot; °C]; `peakSurfaceTime`: time of the peak surface
 * temperature [t_hot; s]; `surfaceLimitTime`: time the surface passes its limit [t_u; s]; `minSurfaceLimitTime`:
 * earliest time a surface passes its limit [t_u1; s]; `overheatsFirst`: surface overheats first [yes or no];
 * `maxSourceTemperature`: maximum source temperature [T_lim; °C]; `maxSourceNote`: note on the maximum source
 * temperature [text]; `advisedSourceTemperature`: advised source temperature [T_adv; °C]; `advisedTime`: heating time
 * at the advised source temperature [t_a1 to t_a2; s]; `filmCoefficient`: film coefficient [h; W/(m²·K)];
 * `equivalentTemperature`: equivalent air temperature [T_e; °C]; `biotNumber`: Biot number [Bi]; `fourierNumber`:
 * Fourier number [Fo]; `iterations`: iterations [number]; `residual`: residual [K].
 *
 * **Symbols of the working**
 *
 * k_p: conductivity used [W/(m·K)]; rho_p: density used [kg/m³]; c_p: specific heat, heat of melting included used
 * [J/(kg·K)]; L: length of the Biot number [m]; h_c: film given or typical [W/(m²·K)]; T_m: temperature at which
 * radiation is taken [°C]; h_r: radiation as a film [W/(m²·K)]; has_core: coldest spot: known as a sum; b_core:
 * coldest spot: decay rates, 1/s; a_core: coldest spot: amplitudes, K; has_fast: coldest spot, fast end: known as a
 * sum; T_fast: coldest spot, fast end: settled temperature [°C]; b_fast: coldest spot, fast end: decay rates, 1/s;
 * a_fast: coldest spot, fast end: amplitudes, K; has_slow: coldest spot, slow end: known as a sum; T_slow: coldest
 * spot, slow end: settled temperature [°C]; b_slow: coldest spot, slow end: decay rates, 1/s; a_slow: coldest spot,
 * slow end: amplitudes, K; has_hot: hottest surface: known as a sum; b_hot: hottest surface: decay rates, 1/s; a_hot:
 * hottest surface: amplitudes, K; has_skin: surface: known as a sum; T_skin: surface: settled temperature [°C];
 * b_skin: surface: decay rates, 1/s; a_skin: surface: amplitudes, K; has_quick: surface quickest to heat: known as a
 * sum; T_quick: surface quickest to heat: settled temperature [°C]; b_quick: surface quickest to heat: decay rates,
 * 1/s; a_quick: surface quickest to heat: amplitudes, K; has_limit: surface at the hottest source: known as a sum;
 * T_limit: surface at the hottest source: settled temperature [°C]; b_limit: surface at the hottest source: decay
 * rates, 1/s; a_limit: surface at the hottest source: amplitudes, K; t_lim: time at the hottest source [s]; f_lim:
 * share of the source in that surface's settled temperature; capped: 1 where the onset of charring holds the source
 * down; f_cap: share of the source in the heated face's settled temperature; T_cap: onset of charring, or hottest
 * published surface [°C]; has_early: coldest spot, fast end, advised source hot by its error: known as a sum; T_early:
 * coldest spot, fast end, advised source hot by its error: settled temperature [°C]; b_early: coldest spot, fast end,
 * advised source hot by its error: decay rates, 1/s; a_early: coldest spot, fast end, advised source hot by its error:
 * amplitudes, K; has_late: coldest spot, slow end, advised source cold by its error: known as a sum; T_late: coldest
 * spot, slow end, advised source cold by its error: settled temperature [°C]; b_late: coldest spot, slow end, advised
 * source cold by its error: decay rates, 1/s; a_late: coldest spot, slow end, advised source cold by its error:
 * amplitudes, K.
 *
 * **Sources**
 * - H. S. Carslaw and J. C. Jaeger: Conduction of Heat in Solids, 2nd, 1959, 2.7, 3.11, 7.7 (not verified against the
 *   document)
 * - F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine: Fundamentals of Heat and Mass Transfer, 6th, 2007,
 *   5.5, 5.6, table 1.1 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `never-reached` where the core never gets warm enough
 * @example
 * ```ts
 * import { heatingTime } from 'alula/thermoform'
 * const pipe = heatingTime({
 *   shape: 'tube', outsideDiameter: '26.67 mm', thickness: '2.87 mm', material: 'pvc', heatSource: 'oven', sourceTemperature: '130 degC',
 *   conductivity: 0.16, density: 1400, specificHeat: 900,
 * })
 * pipe.time // => 244.6
 * pipe.overheatsFirst // => false
 * ```
 */
export const heatingTime: Solver<HeatingTimeInput, HeatingTime, HeatingTimeRefusal, HeatingTimeCaution> = /* @__PURE__ */ solver<
  HeatingTimeInput,
  HeatingTime,
  HeatingTimeRefusal,
  HeatingTimeCaution
>("heatingTime", "How long a part heats through, and whether its surface scorches first", solve, () => ({
  input: {
    ...partFields,
    sandTemperature: {
      kind: "temperature",
      symbol: "T_sand",
      label: "sand when poured",
      min: 0,
      max: 300,
      typical: [20, 150],
      default: null,
    },
    heatSource: {
      kind: "choice",
      label: "heated by",
      options: {
        oven: "circulating oven",
        "heat-gun": "heat gun",
        "hot-plate": "hot plate",
        radiant: "radiant heater",
        "water-bath": "water bath",
      },
    },
    sourceTemperature: {
      kind: "temperature",
      symbol: "T_src",
      label: "air, plate, element or water",
      min: 0,
      max: 1200,
      typical: [110, 180],
    },
    coreTemperature: {
      kind: "temperature",
      symbol: "T_core",
      label: "core temperature wanted",
      min: 20,
      max: 300,
      typical: [107, 130],
      default: null,
    },
    faces: { kind: "number", symbol: "n_f", label: "faces heated", whole: true, min: 1, max: 2, default: 2 },
    filmCoefficient: {
      kind: "heatTransferCoefficient",
      symbol: "h_given",
      label: "film coefficient",
      min: 0.5,
      max: 20000,
      typical: [10, 100],
      default: null,
    },
    emissivity: { kind: "ratio", symbol: "epsilon", label: "effective emissivity", min: 0.05, max: 1, default: 0.9 },
    startTemperature: {
      kind: "temperature",
      symbol: "T_start",
      label: "start temperature of the part",
      min: -20,
      max: 150,
      typical: [10, 30],
      default: 20,
    },
    ambientTemperature: {
      kind: "temperature",
      symbol: "T_room",
      label: "ambient temperature",
      min: -20,
      max: 50,
      typical: [10, 30],
      default: 20,
    },
    sourceTemperatureError: {
      kind: "temperatureDifference",
      symbol: "dT_src",
      label: "error of the source's temperature",
      min: 0,
      max: 50,
      default: 5,
    },
    ...propertyFields,
  },
  output: {
    coreTemperature: { kind: "temperature", symbol: "T_l", label: "core temperature to reach" },
    surfaceTemperatureLimit: { kind: "temperature", symbol: "T_u", label: "surface temperature limit" },
    time: { kind: "time", symbol: "t", label: "time until the core is there" },
    timeRange: bandField("time", "spread of the heating time", {
      symbols: ["t_fast", "t_slow"],
      labels: ["minimum heating time", "maximum heating time"],
    }),
    peakSurfaceTemperature: { kind: "temperature", symbol: "T_hot", label: "peak surface temperature" },
    peakSurfaceTime: { kind: "time", symbol: "t_hot", label: "time of the peak surface temperature" },
    surfaceLimitTime: { kind: "time", symbol: "t_u", label: "time the surface passes its limit" },
    minSurfaceLimitTime: { kind: "time", symbol: "t_u1", label: "earliest time a surface passes its limit" },
    overheatsFirst: { kind: "flag", label: "surface overheats first" },
    maxSourceTemperature: { kind: "temperature", symbol: "T_lim", label: "maximum source temperature" },
    maxSourceNote: { kind: "text", label: "note on the maximum source temperature" },
    advisedSourceTemperature: { kind: "temperature", symbol: "T_adv", label: "advised source temperature" },
    advisedTime: bandField("time", "heating time at the advised source temperature", {
      symbols: ["t_a1", "t_a2"],
      labels: ["minimum heating time, advised source", "maximum heating time, advised source"],
    }),
    filmCoefficient: { kind: "heatTransferCoefficient", symbol: "h", label: "film coefficient" },
    equivalentTemperature: { kind: "temperature", symbol: "T_e", label: "equivalent air temperature" },
    biotNumber: { kind: "number", symbol: "Bi", label: "Biot number" },
    fourierNumber: { kind: "number", symbol: "Fo", label: "Fourier number" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "temperatureDifference", label: "residual" },
  },
  example: {
    shape: "tube",
    outsideDiameter: "26.7 mm",
    thickness: "2.9 mm",
    material: "pvc",
    heatSource: "oven",
    sourceTemperature: "130 degC",
  },
  formulae: heatThroughFormulae,
  sources: [at(CARSLAW, "2.7, 3.11, 7.7"), at(INCROPERA, "5.5, 5.6, table 1.1")],
  check,
  cautions,
}))
