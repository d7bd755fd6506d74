import type {
  Density,
  HeatTransferCoefficient,
  Length,
  Ratio,
  SpecificHeat,
  Temperature,
  TemperatureDifference,
  ThermalConductivity,
} from "../quantity/index.js"
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
import { contactTemperature } from "./closed-forms.js"
import { type Plastic, plastics } from "./data.js"
import { heatingCautions, safeWindow } from "./forming-window.js"
import { heatThroughFormulae } from "./heat-through-formulae.js"
import { arrival, coreTime, drySand, heatPath, peakCore, propertiesOf } from "./heating.js"
import { films, type HeatingProblem, heatingProblem, limitOf } from "./heating-problem.js"
import { partFaults, partFields, propertyFields } from "./part.js"

/** Input of {@link heatThrough}. */
export interface HeatThroughInput {
  /** What is heated. */
  form: "sheet" | "rod" | "tube"
  /** Thickness of the sheet, or wall of the tube. */
  thickness?: Length | null
  /** Outer diameter of the rod or tube. */
  diameter?: Length | null
  /** The plastic. */
  plastic: Plastic
  /** What the tube is filled with. */
  filling?: "empty" | "drySand"
  /** Temperature of the sand when it is poured; left out, it starts as cold as the part. */
  sandTemperature?: Temperature | null
  /** What heats it. */
  source: "oven" | "heatGun" | "hotPlate" | "radiant"
  /** Temperature of the air, plate or heating element. */
  sourceTemperature: Temperature
  /** Core temperature wanted; left out, the lower forming temperature. Give the usual one for sharp bends and time to work. */
  coreTemperature?: Temperature | null
  /** Faces of a sheet that the source reaches: 1 or 2. */
  faces?: number
  /** Film coefficient at the heated face, radiation of the oven included; for a radiant heater that of the air alone. */
  film?: HeatTransferCoefficient | null
  /** Radiant heater: emissivity of element and sheet together with the share of the heater that the sheet sees. */
  emissivity?: Ratio
  /** Temperature of the part at the start. */
  start?: Temperature
  /** Temperature of the room, which cools the back of a sheet on a hot plate or under a radiant heater. */
  room?: Temperature
  /** How far off the source's temperature may be. */
  sourceError?: TemperatureDifference
  /** Conductivity of the plastic, instead of the table's. */
  conductivity?: ThermalConductivity | null
  /** Density of the plastic, instead of the table's. */
  density?: Density | null
  /** Specific heat of the plastic, heat of melting included, instead of the table's. */
  specificHeat?: SpecificHeat | null
}

/** Result of {@link heatThrough}. */
export interface HeatThrough {
  /** Core temperature to be reached, °C. */
  readonly coreTarget: number
  /** Surface temperature not to be passed, °C. */
  readonly surfaceLimit: number
  /** Time until the core is there, s. */
  readonly time: number
  /** The same with the plastic's properties at the fast end of their spread, s. */
  readonly timeShort: number
  /** The same at the slow end, s. */
  readonly timeLong: number
  /** Hottest surface on the way, °C. */
  readonly hottest: number
  /** When it is that hot, s. */
  readonly hottestTime: number
  /** When the surface passes its limit, s; null where it never does. */
  readonly surfaceTime: number | null
  /** Whether the surface passes its limit before the core is ready. */
  readonly surfaceFirst: boolean
  /** Hottest source with which the surface meets its limit just as the core arrives, °C. */
  readonly sourceLimit: number | null
  /** `solved`; `none`: no source does; `beyond`: any source up to 2000 °C does; `not-sought`: preheated sand. */
  readonly sourceLimitKind: string
  /** Source temperature to set, °C: with it no surface passes its limit however long it takes, the source's error allowed for; null where none is safe. */
  readonly advisedSource: number | null
  /** Earliest time at the advised source, s: fast plastic, source hot by its error. */
  readonly advisedTimeShort: number | null
  /** Time at the advised source after which the core is there whatever the spread, s. */
  readonly advisedTimeLong: number | null
  /** Film coefficient at the heated face, W/(m²·K). */
  readonly film: number
  /** Air temperature that would heat alike, °C: that of the source, except for a radiant heater. */
  readonly equivalent: number
  /** Biot number on the half thickness, thickness, radius or wall. */
  readonly biot: number
  /** Fourier number at `time` on the same length. */
  readonly fourier: number
  /** Iterations. */
  readonly iterations: number
  /** Core temperature less target at `time`, K. */
  readonly residual: number
}

type Si = SiOf<HeatThroughInput>

function solve(si: Si): HeatThrough | NoSolution {
  const problem = heatingProblem(si)
  const { target, limit, film, swings } = problem
  const equivalent = problem.equivalentOf(si.sourceTemperature)
  const usual = problem.part("usual")
  const found = arrival(usual, equivalent, target, limit, swings)
  const slow = coreTime(problem.part("slow"), equivalent, target, swings)
  const fast = coreTime(problem.part("fast"), equivalent, target, swings)
  if (!found || !slow || !fast) {
    const parts = found ? (slow ? "fast" : "slow") : "usual"
    const peak = peakCore(problem.part(parts), equivalent, swings)
    const drive = usual.drive(0)
    const share = usual.response.steady(usual.plastic[0] as number, { outside: 1, inside: 0, initial: drive.initial.map(() => 0) })
    const needed = problem.sourceOf((target + 5 - (1 - share) * drive.inside) / share)
    return refuse(
      "never-hot-enough",
      `The coldest part of the plastic never gets above ${peak.toFixed(1)} °C${parts === "usual" ? "" : ` with properties at the ${parts} end of their spread`}; forming needs ${target} °C.`,
      Math.max(0, target - peak),
      { core: peak },
      Number.isFinite(needed) && needed > si.sourceTemperature ? { sourceTemperature: needed } : {},
    )
  }
  const { kind, equivalent: limited } = limitOf(problem)
  const sourceLimit = limited === null ? null : problem.sourceOf(limited)
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
    surfaceTime: found.surfaceTime,
    surfaceFirst: found.surfaceTime !== null && found.surfaceTime < found.time,
    sourceLimit,
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

function advise(si: Si, problem: HeatingProblem, hottestSource: number): { source: number; short: number; long: number } | null {
  if (problem.swings) return null
  const { target } = problem
  const source = hottestSource - si.sourceError
  const long = coreTime(problem.part("slow"), problem.equivalentOf(source - si.sourceError), target, false)
  const short = coreTime(problem.part("fast"), problem.equivalentOf(hottestSource), target, false)
  return long && short ? { source, short: short.time, long: long.time } : null
}

function check(si: Si): Issue[] {
  const faults = partFaults(si)
  if (si.sandTemperature !== null && si.filling !== "drySand")
    faults.push(inconsistent(["sandTemperature"], "a sand temperature", "a tube filled with sand"))
  if (si.form !== "sheet" && si.faces !== 2)
    faults.push(inconsistent(["faces"], String(si.faces), "2, for a round part, which is heated all round"))
  if (si.source === "hotPlate" && !(si.form === "sheet" && si.faces === 1))
    faults.push(inconsistent(["faces"], String(si.faces), "a sheet with 1 face on a hot plate"))
  const { from, to } = safeWindow(si.plastic)
  const { low } = plastics[si.plastic].lower
  if (si.coreTemperature !== null && !(si.coreTemperature >= low && si.coreTemperature <= to - 1))
    faults.push(inconsistent(["coreTemperature"], `${si.coreTemperature} °C`, `from ${low} to ${to - 1} °C, inside the forming window`))
  const target = si.coreTemperature ?? from
  if (!(si.start < target - 1))
    faults.push(inconsistent(["start"], `${si.start} °C`, `a start colder than the core is to get, ${target} °C`))
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
  const found = heatingCautions(si.plastic)
  if (out.surfaceFirst)
    found.unshift(
      caution(
        "surface-first",
        "warning",
        `The surface passes ${out.surfaceLimit} °C after ${Math.round(out.surfaceTime as number)} s, before the core is ready: it blisters, scorches or fumes. Use the advised, cooler source for longer.`,
        "the limits named by formingWindow",
      ),
    )
  if (si.filling === "drySand")
    found.push(
      caution(
        "hot-sand",
        "warning",
        "Only bone-dry sand: damp sand makes steam that can blow the plugs and the sand out. Hot sand runs into gloves and shoes and burns deeply; plug both ends, and let it cool in the pipe before emptying.",
        "Incropera et al., table A.3 (dry sand; damp sand conducts 5 to 10 times better); burn advice: common practice, no source",
      ),
    )
  if (si.sandTemperature !== null && si.sandTemperature > out.surfaceLimit)
    found.push(
      caution(
        "sand-above-limit",
        "warning",
        `Sand at ${Math.round(si.sandTemperature)} °C is above the plastic's limit of ${out.surfaceLimit} °C; only the cold wall keeps the bore near ${Math.round(boreContact(si))} °C at first.`,
        "Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, 2.15 (contact temperature)",
      ),
    )
  if (out.advisedSource === null)
    found.push(
      caution(
        "no-safe-source",
        "caution",
        "No single source temperature is surely hot enough and surely not too hot with this uncertainty: measure the temperature better, heat both faces, or use thinner stock.",
        "the spread of the figures named by formingWindow",
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
    caution(
      "film-estimate",
      "note",
      `Heat transfer ${si.film === null ? "is a typical figure" : "is as given"} and properties are those at room temperature: times may be off by a third. Time a scrap of the same stock.`,
      si.film === null ? films[si.source].source : "R. J. Crawford, Plastics Engineering, 3rd ed., 1998, table 1.8 (room temperature)",
    ),
  )
  return found
}

/**
 * How long a sheet, rod or tube takes to heat through, and whether its surface overheats first.
 *
 * Formula: one-dimensional transient conduction, T(x, t) = T_steady(x) + Σ aₙ(x)·exp(−bₙ·t), with the decay rates bₙ (1/s) solved
 * from the film condition k·∂T/∂n = h·(T_e − T) at the heated face (for a sheet heated from both faces ζ·tan ζ = Bi and
 * b = ζ²·α/L²), layer by layer where a tube is full of sand. The coldest spot of the plastic (mid-plane, back, axis, bore) must
 * reach the lower forming temperature, or the one asked for. T_e is the source's temperature; for a radiant heater it is
 * T_e = (ε·σ·(T_s⁴ − T_m⁴) + 4·ε·σ·T_m⁴ + h_c·T_room)/h with h = h_c + 4·ε·σ·T_m³ and T_m (K) halfway between the start and
 * the surface limit. Symbols: L thickness or radius (m), k conductivity (W/(m·K)), α = k/(ρ·c) diffusivity (m²/s), h film
 * (W/(m²·K); default 25 oven, 60 heat gun, 500 hot plate, 8 beside a radiant heater), ε emissivity (default 0.9), start and
 * room 20 °C, source error 5 K. The advised source is the one under which a surface left in the heat settles at its limit, less the error. The heat of melting of crystalline plastics is spread over the rise. Valid for Biot numbers
 * from 0.001 to 1000, properties constant.
 *
 * Sources: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed., 1959, 3.11, 7.7 and 2.7; Incropera et al., Fundamentals of
 * Heat and Mass Transfer, 6th ed., 2007, 5.5 and 5.6.
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
export const heatThrough: Solver<HeatThroughInput, HeatThrough> = /* @__PURE__ */ solver<HeatThroughInput, HeatThrough>({
  name: "heatThrough",
  title: "How long a part heats through, and whether its surface scorches first",
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
      options: { oven: "circulating oven", heatGun: "heat gun", hotPlate: "hot plate", radiant: "radiant heater" },
    },
    sourceTemperature: { kind: "temperature", symbol: "T_src", label: "air, plate or element", min: 0, max: 1200, typical: [110, 180] },
    coreTemperature: { kind: "temperature", symbol: "T_core", label: "core wanted", min: 20, max: 300, typical: [107, 130], default: null },
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
    surfaceFirst: { kind: "flag", label: "surface overheats first" },
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
  sources: [
    { title: "Conduction of Heat in Solids", by: "H. S. Carslaw and J. C. Jaeger", edition: "2nd, 1959", where: "2.7, 3.11, 7.7" },
    {
      title: "Fundamentals of Heat and Mass Transfer",
      by: "Incropera, DeWitt, Bergman, Lavine",
      edition: "6th, 2007",
      where: "5.5, 5.6, table 1.1",
    },
  ],
  check,
  solve,
  cautions,
})
