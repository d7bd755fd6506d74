import {
  at,
  type Caution,
  caution,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type Solver,
  solver,
  tried,
} from "../../solver/index.js"
import { contactTemperature } from "../closed-forms.js"
import { plastics } from "../data.js"
import { heatingCautions, safeWindow, windowCautions } from "../forming-window.js"
import { partFaults, partFields, propertyFields } from "../part.js"
import { CARSLAW, CRAWFORD, FORMING_TABLE, INCROPERA, practice } from "../sources.js"
import { heatThroughFormulae } from "./formulae.js"
import { arrival, coreTime, drySand, heatPath, peakCore, propertiesOf, surfaceTime } from "./heating.js"
import { earliestSurface, films, type HeatingProblem, heatingProblem, limitOf } from "./problem.js"
import type { HeatThrough, HeatThroughInput, Si } from "./types.js"

export type { HeatThrough, HeatThroughInput } from "./types.js"

/** A core that only just creeps up to its target never surely gets there: it must settle this far above it, K. */
const CLEAR = 1e-3

function kernel(si: Si): HeatThrough | NoSolution {
  const problem = heatingProblem(si)
  const { target, limit, film, swings } = problem
  const equivalent = problem.equivalentOf(si.sourceTemperature)
  const usual = problem.part("usual")
  const peak = Math.min(...(["usual", "slow", "fast"] as const).map((variant) => peakCore(problem.part(variant), equivalent, swings)))
  const found = arrival(usual, equivalent, target, swings)
  const slow = coreTime(problem.part("slow"), equivalent, target, swings)
  const fast = coreTime(problem.part("fast"), equivalent, target, swings)
  if (!(peak > target + CLEAR) || !found || !slow || !fast) return neverHot(problem, peak)
  const { kind, equivalent: limited } = limitOf(problem)
  const skin = earliestSurface(problem, equivalent)
  // a source at which even a surface left in the heat settles at its limit: whatever the plastic's spread, no time is too long
  const advised = advise(si, problem, problem.sourceOf(limit))
  const { conductivity, density, specificHeat } = propertiesOf(si.plastic, si, target - si.start, "usual")
  const length = heatPath(si)
  return {
    coreTarget: target,
    surfaceLimit: limit,
    time: found.time,
    timeShort: fast.time,
    timeLong: slow.time,
    hottest: found.hottest,
    hottestTime: found.hottestTime,
    surfaceTime: surfaceTime(usual, equivalent, limit, swings)?.time ?? null,
    surfaceTimeShort: skin?.time ?? null,
    surfaceFirst: skin !== null && skin.time < slow.time,
    sourceLimit: limited === null ? null : problem.sourceOf(limited),
    sourceLimitKind: kind,
    advisedSource: advised?.source ?? null,
    advisedTimeShort: advised?.short ?? null,
    advisedTimeLong: advised?.long ?? null,
    film,
    equivalent,
    biot: (film * length) / conductivity,
    fourier: (conductivity * found.time) / (density * specificHeat * length ** 2),
    iterations: found.iterations,
    residual: found.residual,
  }
}

function neverHot(problem: HeatingProblem, peak: number): NoSolution {
  const { target } = problem
  const part = problem.part("slow")
  const drive = part.drive(0)
  const share = part.response.steady(part.plastic[0] as number, { outside: 1, inside: 0, initial: drive.initial.map(() => 0) })
  const needed = problem.sourceOf((target + 5 - (1 - share) * drive.inside) / share)
  return refuse(
    "never-hot-enough",
    "The coldest part of the plastic never gets above {core temperature °C}, and forming needs {target temperature °C}: use a hotter source, heat both faces, or insulate the back.",
    Math.max(target - peak, CLEAR),
    { core: peak, target },
    Number.isFinite(needed) ? { sourceTemperature: needed } : {},
  )
}

function advise(si: Si, problem: HeatingProblem, hottestSource: number): { source: number; short: number; long: number } | null {
  if (problem.swings) return null
  const { target } = problem
  const source = hottestSource - si.sourceError
  const long = coreTime(problem.part("slow"), problem.equivalentOf(source - si.sourceError), target, false)
  const short = coreTime(problem.part("fast"), problem.equivalentOf(hottestSource), target, false)
  return long && short ? { source, short: short.time, long: long.time } : null
}

/** Water boils, °C. */
const BOILING = 100

function check(si: Si): Issue[] {
  const faults = partFaults(si)
  if (si.sandTemperature !== null && si.filling !== "drySand")
    faults.push(inconsistent(["sandTemperature"], "a sand temperature", "a tube filled with sand"))
  if (si.form !== "sheet" && si.faces !== 2)
    faults.push(inconsistent(["faces"], "{faces}", "2, for a round part, which is heated all round", { faces: si.faces }))
  if (si.source === "hotPlate" && !(si.form === "sheet" && si.faces === 1))
    faults.push(inconsistent(["source"], "a hot plate", "a sheet with 1 face on the plate"))
  if (si.source === "waterBath" && !(si.sourceTemperature <= BOILING))
    faults.push(
      inconsistent(["sourceTemperature"], "{sourceTemperature temperature °C}", "no more than 100 °C in a water bath", {
        sourceTemperature: si.sourceTemperature,
      }),
    )
  const { from, to } = safeWindow(si.plastic)
  const { low } = plastics[si.plastic].lower
  const { coreTemperature, start } = si
  if (coreTemperature !== null && !(coreTemperature >= low && coreTemperature <= to - 1))
    faults.push(
      inconsistent(
        ["coreTemperature"],
        "{coreTemperature temperature °C}",
        "from {lowest temperature °C} to {highest temperature °C}, inside the forming window",
        { coreTemperature, lowest: low, highest: to - 1 },
      ),
    )
  const target = coreTemperature ?? from
  if (!(start < target - 1))
    faults.push(
      inconsistent(["start"], "{start temperature °C}", "a start colder than the core is to get, {target temperature °C}", {
        start,
        target,
      }),
    )
  return faults
}

/** Temperature of the bore just after hot sand meets it. */
function boreContact(si: Si): number {
  const { conductivity, density, specificHeat } = propertiesOf(si.plastic, si, 1e9, "usual")
  const effusivity = (k: number, rho: number, c: number) => Math.sqrt(k * rho * c)
  return contactTemperature(
    effusivity(drySand.conductivity, drySand.density, drySand.specificHeat),
    si.sandTemperature ?? si.start,
    effusivity(conductivity, density, specificHeat),
    si.start,
  )
}

function cautions(si: Si, out: HeatThrough): Caution[] {
  const found = heatingCautions(si.plastic, si.source === "waterBath")
  const { ceiling } = safeWindow(si.plastic)
  if (out.equivalent > ceiling)
    found.unshift(
      caution(
        "source-chars",
        "warning",
        "The source would bring a surface left in it to {equivalent temperature °C}, past the {ceiling temperature °C} where this plastic begins to char or its surface is spoilt: a few moments too long, a thin edge or a fold is enough. Use a cooler source.",
        plastics[si.plastic].scorch?.sources[0] ?? FORMING_TABLE,
        { equivalent: out.equivalent, ceiling },
      ),
    )
  if (out.surfaceFirst && out.surfaceTimeShort !== null)
    found.unshift(
      caution(
        "surface-first",
        "warning",
        "A surface may pass {surfaceLimit temperature °C} after {surfaceTimeShort time}, before the core is surely ready at {timeLong time}: it blisters, scorches or fumes. Use the advised, cooler source for longer.",
        practice,
        { surfaceLimit: out.surfaceLimit, surfaceTimeShort: out.surfaceTimeShort, timeLong: out.timeLong },
      ),
    )
  else if (out.surfaceTimeShort !== null)
    found.push(
      caution(
        "take-out-in-time",
        "caution",
        "Take it out between {timeLong time} and {surfaceTimeShort time}: after that a surface may pass {surfaceLimit temperature °C}. At the advised source no time is too long.",
        practice,
        { timeLong: out.timeLong, surfaceTimeShort: out.surfaceTimeShort, surfaceLimit: out.surfaceLimit },
      ),
    )
  if (si.filling === "drySand")
    found.push(
      caution(
        "hot-sand",
        "warning",
        "Only bone-dry sand: damp sand makes steam that can blow the plugs and the sand out. Hot sand runs into gloves and shoes and burns deeply; plug both ends, and let it cool in the pipe before emptying.",
        practice,
      ),
    )
  if (si.sandTemperature !== null && si.sandTemperature > out.surfaceLimit)
    found.push(
      caution(
        "sand-above-limit",
        "warning",
        "Sand at {given.sandTemperature temperature °C} is above the plastic's limit of {surfaceLimit temperature °C}; only the cold wall keeps the bore near {bore temperature °C} at first.",
        at(CARSLAW, "2.15"),
        { "given.sandTemperature": si.sandTemperature, surfaceLimit: out.surfaceLimit, bore: boreContact(si) },
      ),
    )
  if (out.advisedSource === null)
    found.push(
      caution(
        "no-safe-source",
        "caution",
        "No single source temperature is surely hot enough and surely not too hot with this uncertainty: measure the temperature better, heat both faces, or use thinner stock.",
        practice,
      ),
    )
  if (si.source === "radiant" || si.source === "heatGun")
    found.push(
      caution(
        "uneven",
        "caution",
        "A radiant heater or a heat gun heats unevenly and goes on heating past the limit: judge by the hottest spot with a surface thermometer, keep moving, stop at the surface limit even where the times say longer.",
      ),
    )
  found.push(
    si.film === null
      ? caution(
          "film-estimate",
          "note",
          "Heat transfer is a typical figure, {film heatTransferCoefficient}, and properties are those at room temperature: times may be off by a third. Time a scrap of the same stock.",
          films[si.source].source,
          { film: out.film },
        )
      : caution(
          "film-estimate",
          "note",
          "Properties are those at room temperature: times may be off by a third. Time a scrap of the same stock.",
          CRAWFORD,
        ),
  )
  found.push(...windowCautions(si.plastic))
  return found
}

const solve = (si: Si): HeatThrough | NoSolution => tried(kernel(si), si, heatThrough.input, kernel, check)

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
 * - `form`: form [sheet, rod or tube]
 * - `thickness`: thickness or wall [s_t; 0.1 to 100 mm; optional]
 * - `diameter`: outer diameter [D; 1 to 300 mm; optional]
 * - `plastic`: plastic [one of 11 words]
 * - `filling`: filling [empty or drySand; default empty]
 * - `sandTemperature`: sand when poured [T_sand; 0 to 300 °C; optional]
 * - `source`: heated by [oven, heatGun, hotPlate, radiant or waterBath]
 * - `sourceTemperature`: air, plate, element or water [T_src; 0 to 1200 °C]
 * - `coreTemperature`: core wanted [T_core; 20 to 300 °C; optional]
 * - `faces`: faces heated [n_f; whole 1 to 2; default 2]
 * - `film`: film coefficient [h_given; 0.5 to 20000 W/(m²·K); optional]
 * - `emissivity`: effective emissivity [epsilon; 0.05 to 1; default 0.9]
 * - `start`: part at the start [T_start; −20 to 150 °C; default 20 °C]
 * - `room`: room [T_room; −20 to 50 °C; default 20 °C]
 * - `sourceError`: error of the source's temperature [dT_src; 0 to 50 K; default 5 K]
 * - `conductivity`: conductivity [k_given; 0.01 to 500 W/(m·K); optional]
 * - `density`: density [rho_given; 20 to 9000 kg/m³; optional]
 * - `specificHeat`: specific heat [c_given; 100 to 10000 J/(kg·K); optional]
 *
 * **Results**
 *
 * `coreTarget`: core to reach [T_l; °C]; `surfaceLimit`: surface not to pass [T_u; °C]; `time`: time until the core is
 * there [t; s]; `timeShort`: at the fast end of the spread [t_fast; s]; `timeLong`: at the slow end of the spread
 * [t_slow; s]; `hottest`: hottest surface on the way [T_hot; °C]; `hottestTime`: reached after [t_hot; s];
 * `surfaceTime`: surface passes its limit after [t_u; s]; `surfaceTimeShort`: at the earliest after [t_u1; s];
 * `surfaceFirst`: surface may overheat first [yes or no]; `sourceLimit`: hottest source that works [T_lim; °C];
 * `sourceLimitKind`: hottest source [text]; `advisedSource`: set the source to [T_adv; °C]; `advisedTimeShort`: then
 * ready at the earliest after [t_a1; s]; `advisedTimeLong`: and surely after [t_a2; s]; `film`: film coefficient [h;
 * W/(m²·K)]; `equivalent`: equivalent air temperature [T_e; °C]; `biot`: Biot number [Bi]; `fourier`: Fourier number
 * [Fo]; `iterations`: iterations [number]; `residual`: residual [K].
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
 * @throws NoSolutionError `never-hot-enough` where the core never gets warm enough
 * @example
 * ```ts
 * import { heatThrough } from 'alula/thermoform'
 * const pipe = heatThrough({
 *   form: 'tube', diameter: '26.67 mm', thickness: '2.87 mm', plastic: 'pvc', source: 'oven', sourceTemperature: '130 degC',
 *   conductivity: 0.16, density: 1400, specificHeat: 900,
 * })
 * pipe.time // => 244.6
 * pipe.surfaceFirst // => false
 * ```
 */
export const heatThrough: Solver<HeatThroughInput, HeatThrough> = /* @__PURE__ */ solver<HeatThroughInput, HeatThrough>(
  "heatThrough",
  "How long a part heats through, and whether its surface scorches first",
  solve,
  () => ({
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
      source: {
        kind: "choice",
        label: "heated by",
        options: {
          oven: "circulating oven",
          heatGun: "heat gun",
          hotPlate: "hot plate",
          radiant: "radiant heater",
          waterBath: "water bath",
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
        label: "core wanted",
        min: 20,
        max: 300,
        typical: [107, 130],
        default: null,
      },
      faces: { kind: "number", symbol: "n_f", label: "faces heated", whole: true, min: 1, max: 2, default: 2 },
      film: {
        kind: "heatTransferCoefficient",
        symbol: "h_given",
        label: "film coefficient",
        min: 0.5,
        max: 20000,
        typical: [10, 100],
        default: null,
      },
      emissivity: { kind: "ratio", symbol: "epsilon", label: "effective emissivity", min: 0.05, max: 1, default: 0.9 },
      start: { kind: "temperature", symbol: "T_start", label: "part at the start", min: -20, max: 150, typical: [10, 30], default: 20 },
      room: { kind: "temperature", symbol: "T_room", label: "room", min: -20, max: 50, typical: [10, 30], default: 20 },
      sourceError: {
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
      coreTarget: { kind: "temperature", symbol: "T_l", label: "core to reach" },
      surfaceLimit: { kind: "temperature", symbol: "T_u", label: "surface not to pass" },
      time: { kind: "time", symbol: "t", label: "time until the core is there" },
      timeShort: { kind: "time", symbol: "t_fast", label: "at the fast end of the spread" },
      timeLong: { kind: "time", symbol: "t_slow", label: "at the slow end of the spread" },
      hottest: { kind: "temperature", symbol: "T_hot", label: "hottest surface on the way" },
      hottestTime: { kind: "time", symbol: "t_hot", label: "reached after" },
      surfaceTime: { kind: "time", symbol: "t_u", label: "surface passes its limit after" },
      surfaceTimeShort: { kind: "time", symbol: "t_u1", label: "at the earliest after" },
      surfaceFirst: { kind: "flag", label: "surface may overheat first" },
      sourceLimit: { kind: "temperature", symbol: "T_lim", label: "hottest source that works" },
      sourceLimitKind: { kind: "text", label: "hottest source" },
      advisedSource: { kind: "temperature", symbol: "T_adv", label: "set the source to" },
      advisedTimeShort: { kind: "time", symbol: "t_a1", label: "then ready at the earliest after" },
      advisedTimeLong: { kind: "time", symbol: "t_a2", label: "and surely after" },
      film: { kind: "heatTransferCoefficient", symbol: "h", label: "film coefficient" },
      equivalent: { kind: "temperature", symbol: "T_e", label: "equivalent air temperature" },
      biot: { kind: "number", symbol: "Bi", label: "Biot number" },
      fourier: { kind: "number", symbol: "Fo", label: "Fourier number" },
      iterations: { kind: "number", label: "iterations" },
      residual: { kind: "temperatureDifference", label: "residual" },
    },
    example: { form: "tube", diameter: "26.7 mm", thickness: "2.9 mm", plastic: "pvc", source: "oven", sourceTemperature: "130 degC" },
    formulae: heatThroughFormulae,
    sources: [at(CARSLAW, "2.7, 3.11, 7.7"), at(INCROPERA, "5.5, 5.6, table 1.1")],
    check,
    cautions,
  }),
)
