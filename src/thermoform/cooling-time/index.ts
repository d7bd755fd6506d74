import {
  at,
  type Caution,
  caution,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type Solver,
  type Step,
  solver,
  tried,
} from "../../solver/index.js"
import { plastics } from "../data.js"
import { safeWindow, vapourCautions, windowCautions } from "../forming-window.js"
import { heatPath, propertiesOf, type Variant } from "../heating-time/heating.js"
import { partFaults, partFields, propertyFields } from "../part.js"
import { CARSLAW, CRAWFORD, FORMING_TABLE, HAND_BENDING, HOT_SURFACES, INCROPERA, practice, SAND_BENDING } from "../sources.js"
import { cooling, coolingFilms, type Stage, stageTime } from "./cooling.js"
import type { CoolingTime, CoolingTimeCaution, CoolingTimeInput, CoolingTimeRefusal, Si } from "./types.js"

export type { CoolingTime, CoolingTimeInput } from "./types.js"

/** A release temperature nearer to the room's than this is too long to wait for, K. */
const CLEAR = 1

function kernel(si: Si): CoolingTime | NoSolution<CoolingTimeRefusal> {
  const { formed, formable, release, film, faces } = cooling(si)
  const working = stageTime(si, "air", "usual")
  const workingSafe = stageTime(si, "air", "skin")
  const hold = stageTime(si, "jig", "usual")
  const holdSafe = stageTime(si, "jig", "slow")
  if (!(si.ambientTemperature < release - CLEAR) || !working || !workingSafe || !hold || !holdSafe)
    return refuse(
      "never-reached",
      "With {given.ambientTemperature temperature °C} around it the part never cools below its release temperature of {releaseTemperature temperature °C}: cool it in a colder room or in water.",
      Math.max(si.ambientTemperature - release + CLEAR, Number.EPSILON),
      { releaseTemperature: release },
      { ambientTemperature: release - 10 },
      { "given.ambientTemperature": si.ambientTemperature },
    )
  return {
    formingTemperature: formed,
    minFormingTemperature: formable,
    releaseTemperature: release,
    workingTime: working.time,
    plannedWorkingTime: workingSafe.time,
    holdTime: hold.time,
    plannedHoldTime: holdSafe.time,
    filmCoefficient: film,
    biotNumber: (film * heatPath({ ...si, faces })) / propertiesOf(si.material, si, formed - si.ambientTemperature, "usual").conductivity,
    iterations: hold.iterations,
    residual: hold.residual,
  }
}

function check(si: Si): Issue[] {
  const faults = partFaults(si)
  const { formed, formable, release } = cooling(si)
  if (si.shape !== "sheet" && si.faces !== 1)
    faults.push(inconsistent(["faces"], "{faces}", "1, for a round part, which has one outer face", { faces: si.faces }))
  if (!(formed > formable + 1))
    faults.push(
      inconsistent(
        ["formingTemperature"],
        "{formingTemperature temperature °C}",
        "more than 1 K above the lower forming temperature, {minFormingTemperature temperature °C}",
        {
          formingTemperature: formed,
          minFormingTemperature: formable,
        },
      ),
    )
  if (!(release < formable - 1))
    faults.push(
      inconsistent(
        ["releaseTemperature"],
        "{releaseTemperature temperature °C}",
        "more than 1 K below the lower forming temperature, {minFormingTemperature temperature °C}",
        { releaseTemperature: release, minFormingTemperature: formable },
      ),
    )
  return faults
}

/** Less time than this to bring a part to the jig wants everything at hand, s. */
const SHORT = 20

function cautions(si: Si, out: CoolingTime): Caution<CoolingTimeCaution>[] {
  const { high } = safeWindow(si.material)
  const found: Caution<CoolingTimeCaution>[] = []
  if (out.formingTemperature > high)
    found.push(
      caution(
        "overheated",
        "warning",
        "At {formingTemperature temperature °C} the plastic is above the {limit temperature °C} its surface may reach: it blisters, scorches or gives off fumes. Do not heat it so far; if it happened, keep away from the fumes and let it cool outdoors.",
        plastics[si.material].upper.sources[0] ?? FORMING_TABLE,
        { formingTemperature: out.formingTemperature, limit: high },
      ),
    )
  if (si.material !== "low-temp-polyester" || out.formingTemperature > high) found.push(...vapourCautions(si.material))
  found.push(
    caution(
      "release-late",
      "caution",
      "Let go only when the inside is set too: the core is warmer than the surface your hand feels, and a bend let go warm springs open by up to half its angle.",
      HAND_BENDING,
    ),
    caution(
      "burns",
      "warning",
      "At release the inside may still be hot enough to burn on longer touch (48 °C for 10 min, 51 °C for 1 min): keep gloves on.",
      HOT_SURFACES,
    ),
  )
  if (out.plannedWorkingTime < SHORT)
    found.push(
      caution(
        "short-working-time",
        "caution",
        "Only {plannedWorkingTime time s} remain to bring it to the jig: have the jig beside the heat, {advice}.",
        practice,
        {
          plannedWorkingTime: out.plannedWorkingTime,
          advice:
            si.shape === "tube" && si.filling === "empty"
              ? "heat it through to the usual temperature, or fill the tube"
              : "and heat it through to the usual temperature",
        },
      ),
    )
  if (si.filling === "dry-sand")
    found.push(
      caution(
        "hot-sand",
        "warning",
        "The sand stays hot long after the pipe feels cool and burns when it runs out: leave it in until it is cold right through.",
        SAND_BENDING,
      ),
    )
  if (si.cooling === "water")
    found.push(
      caution(
        "quench",
        "caution",
        "Water on a hot bend makes steam and freezes stress into acrylic and polycarbonate, which may craze later; never quench a sand-filled pipe from its open end.",
      ),
    )
  if (si.material === "low-temp-polyester")
    found.push(
      caution(
        "supercools",
        "note",
        "This plastic stays workable for minutes below its melting point, until it turns cloudy as it crystallises; the working time here stops at the melting point.",
      ),
    )
  found.push(
    caution(
      "film-estimate",
      "note",
      "Cooling depends on draughts and on what the part touches: metal jigs are faster at first, foam and wood slower. Time a scrap.",
      si.filmCoefficient === null ? coolingFilms[si.cooling].source : CRAWFORD,
    ),
  )
  found.push(...windowCautions(si.material))
  return found
}

function cooledSteps(name: string, stage: Stage, variant: Variant): Step<Si, CoolingTime>[] {
  const series = (si: Si) => {
    const met = stageTime(si, stage, variant)
    if (!met) return { holds: 0, rates: [0], amplitudes: [0] }
    const part = cooling(si).part(stage, variant)
    const { rates, amplitudes } = part.response.series(met.time, met.spot, part.drive(si.ambientTemperature))
    return { holds: met.time >= part.response.earliest ? 1 : 0, rates, amplitudes }
  }
  return [
    { symbol: `b_${name}`, kind: "number", meaning: "decay rates, 1/s", given: (si) => series(si).rates },
    { symbol: `a_${name}`, kind: "number", meaning: "amplitudes at the spot that decides, K", given: (si) => series(si).amplitudes },
    {
      symbol: `sum_${name}`,
      kind: "number",
      meaning: "1 where the sum holds; 0 for times so short that the half-space solution stands in",
      given: (si) => series(si).holds,
    },
    { solved: name, meaning: "time until it is down to that temperature" },
    {
      left: `T_room + sum(a_${name} .* map(-b_${name} * (${name} / s), exp)) * K`,
      right: stage === "air" ? "T_from" : "T_release",
      meaning:
        stage === "air" ? "the coldest surface is at the lower forming temperature" : "the warmest spot is at the release temperature",
      when: `sum_${name} == 1`,
      source: at(CARSLAW, "chapters 3 and 7"),
    },
  ]
}

const solve = (si: Si): CoolingTime | NoSolution<CoolingTimeRefusal> => tried(kernel(si), si, coolingTime.input, kernel, check)

/**
 * How long a hot part can be worked, and how long the jig must hold it.
 *
 * Formula: transient conduction as in {@link heatingTime}, T = T_room + Σ aₙ·exp(−bₙ·t), from a part that is at the
 * forming temperature all through. Working time: until the coldest surface, cooled by the room's air (15 W/(m²·K),
 * radiation included) on all outer faces, is down to the lower forming temperature; hold: until the warmest spot,
 * cooled in the jig through `faces` faces, is down to the release temperature. Film coefficients in W/(m²·K): still air
 * 10, fan 30, water 500. The safe figures take the spread of the plastic's properties: the minimum heat and conductivity
 * for working, the slowest core for holding. Valid for Biot numbers from 0.001 to 1000, properties constant.
 *
 * **Inputs**
 * - `shape`: form [sheet, rod or tube]
 * - `thickness`: thickness or wall [s_t; 0.1 to 100 mm; optional]
 * - `outsideDiameter`: outside diameter [D; 1 to 300 mm; optional]
 * - `material`: plastic [one of 12 words]
 * - `filling`: filling [empty or dry-sand; default empty]
 * - `formingTemperature`: forming temperature [T_given; 30 to 260 °C; optional]
 * - `ambientTemperature`: ambient temperature (room or water) [T_room; −20 to 60 °C; default 20 °C]
 * - `cooling`: cooled in the jig by [still-air, fan or water; default still-air]
 * - `filmCoefficient`: film coefficient in the jig [h_given; 0.5 to 20000 W/(m²·K); optional]
 * - `faces`: faces cooled in the jig [n_f; whole 1 to 2; default 1]
 * - `releaseTemperature`: release temperature [T_rgiven; 0 to 150 °C; optional]
 * - `conductivity`: conductivity [k_given; 0.01 to 500 W/(m·K); optional]
 * - `density`: density [rho_given; 20 to 9000 kg/m³; optional]
 * - `specificHeat`: specific heat [c_given; 100 to 10000 J/(kg·K); optional]
 *
 * **Results**
 *
 * `formingTemperature`: forming temperature [T_f; °C]; `minFormingTemperature`: minimum forming temperature [T_from;
 * °C]; `releaseTemperature`: release temperature [T_release; °C]; `workingTime`: working time in the open [t_work; s];
 * `plannedWorkingTime`: working time to plan with [t_work_safe; s]; `holdTime`: time in the jig [t_hold; s];
 * `plannedHoldTime`: time in the jig to plan with [t_hold_safe; s]; `filmCoefficient`: film coefficient in the jig [h;
 * W/(m²·K)]; `biotNumber`: Biot number in the jig [Bi]; `iterations`: iterations [number]; `residual`: residual [K].
 *
 * **Symbols of the working**
 *
 * L: length of the Biot number [m]; k_p: conductivity used [W/(m·K)]; b_t_work: decay rates, 1/s; a_t_work: amplitudes
 * at the spot that decides, K; sum_t_work: 1 where the sum holds; 0 for times so short that the half-space solution
 * stands in; b_t_work_safe: decay rates, 1/s; a_t_work_safe: amplitudes at the spot that decides, K; sum_t_work_safe:
 * 1 where the sum holds; 0 for times so short that the half-space solution stands in; b_t_hold: decay rates, 1/s;
 * a_t_hold: amplitudes at the spot that decides, K; sum_t_hold: 1 where the sum holds; 0 for times so short that the
 * half-space solution stands in; b_t_hold_safe: decay rates, 1/s; a_t_hold_safe: amplitudes at the spot that decides,
 * K; sum_t_hold_safe: 1 where the sum holds; 0 for times so short that the half-space solution stands in.
 *
 * **Sources**
 * - H. S. Carslaw and J. C. Jaeger: Conduction of Heat in Solids, 2nd, 1959, chapters 3 and 7 (not verified against
 *   the document)
 * - F. P. Incropera, D. P. DeWitt, T. L. Bergman, A. S. Lavine: Fundamentals of Heat and Mass Transfer, 6th, 2007,
 *   table 1.1 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `never-reached` where the surroundings are too warm
 * @example
 * ```ts
 * import { coolingTime } from 'alula/thermoform'
 * const pipe = coolingTime({ shape: 'tube', outsideDiameter: '26.7 mm', thickness: '2.9 mm', material: 'pvc', formingTemperature: '130 degC' })
 * pipe.releaseTemperature // => 67
 * ```
 */
export const coolingTime: Solver<CoolingTimeInput, CoolingTime, CoolingTimeRefusal, CoolingTimeCaution> = /* @__PURE__ */ solver<
  CoolingTimeInput,
  CoolingTime,
  CoolingTimeRefusal,
  CoolingTimeCaution
>("coolingTime", "How long a hot part can be worked, and how long the jig must hold it", solve, () => ({
  input: {
    ...partFields,
    formingTemperature: {
      kind: "temperature",
      symbol: "T_given",
      label: "forming temperature",
      min: 30,
      max: 260,
      typical: [110, 180],
      default: null,
    },
    ambientTemperature: {
      kind: "temperature",
      symbol: "T_room",
      label: "ambient temperature (room or water)",
      min: -20,
      max: 60,
      typical: [5, 35],
      default: 20,
    },
    cooling: {
      kind: "choice",
      label: "cooled in the jig by",
      options: { "still-air": "still air", fan: "a fan", water: "water" },
      default: "still-air",
    },
    filmCoefficient: {
      kind: "heatTransferCoefficient",
      symbol: "h_given",
      label: "film coefficient in the jig",
      min: 0.5,
      max: 20000,
      typical: [5, 100],
      default: null,
    },
    faces: { kind: "number", symbol: "n_f", label: "faces cooled in the jig", whole: true, min: 1, max: 2, default: 1 },
    releaseTemperature: {
      kind: "temperature",
      symbol: "T_rgiven",
      label: "release temperature",
      min: 0,
      max: 150,
      typical: [40, 80],
      default: null,
    },
    ...propertyFields,
  },
  output: {
    formingTemperature: { kind: "temperature", symbol: "T_f", label: "forming temperature" },
    minFormingTemperature: { kind: "temperature", symbol: "T_from", label: "minimum forming temperature" },
    releaseTemperature: { kind: "temperature", symbol: "T_release", label: "release temperature" },
    workingTime: { kind: "time", symbol: "t_work", label: "working time in the open" },
    plannedWorkingTime: { kind: "time", symbol: "t_work_safe", label: "working time to plan with" },
    holdTime: { kind: "time", symbol: "t_hold", label: "time in the jig" },
    plannedHoldTime: { kind: "time", symbol: "t_hold_safe", label: "time in the jig to plan with" },
    filmCoefficient: { kind: "heatTransferCoefficient", symbol: "h", label: "film coefficient in the jig" },
    biotNumber: { kind: "number", symbol: "Bi", label: "Biot number in the jig" },
    iterations: { kind: "number", label: "iterations" },
    residual: { kind: "temperatureDifference", label: "residual" },
  },
  example: { shape: "tube", outsideDiameter: "26.7 mm", thickness: "2.9 mm", material: "pvc", formingTemperature: "130 degC" },
  formulae: [
    { symbol: "T_f", kind: "temperature", meaning: "forming temperature, given or usual", given: (si) => cooling(si).formed },
    { symbol: "T_from", kind: "temperature", meaning: "lower forming temperature, safe side", given: (si) => cooling(si).formable },
    {
      symbol: "T_release",
      kind: "temperature",
      meaning: "release temperature, given or safe side of set",
      given: (si) => cooling(si).release,
    },
    { symbol: "h", kind: "heatTransferCoefficient", meaning: "film in the jig, given or typical", given: (si) => cooling(si).film },
    { symbol: "L", kind: "length", meaning: "length of the Biot number", given: (si) => heatPath(si) },
    {
      symbol: "k_p",
      kind: "thermalConductivity",
      meaning: "conductivity used",
      given: (si) => propertiesOf(si.material, si, cooling(si).formed - si.ambientTemperature, "usual").conductivity,
    },
    { symbol: "Bi", meaning: "Biot number", is: "h * L / k_p" },
    ...cooledSteps("t_work", "air", "usual"),
    ...cooledSteps("t_work_safe", "air", "skin"),
    ...cooledSteps("t_hold", "jig", "usual"),
    ...cooledSteps("t_hold_safe", "jig", "slow"),
  ],
  sources: [at(CARSLAW, "chapters 3 and 7"), INCROPERA],
  check,
  cautions,
}))
