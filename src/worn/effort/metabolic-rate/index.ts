import {
  type Caution,
  caution,
  inconsistent,
  type NoSolution,
  optionsFrom,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { headMassLimit } from "../../load/data-load.js"
import { HEAD_MASS, LOONEY_2022, PANDOLF, PASSMORE, PLACEMENT, SANTEE, TERRAIN } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import {
  lightestWalker,
  type MetabolicEquation,
  metabolicSamples,
  oxygenEnergy,
  placementFactor,
  terrainFactor,
  terrains,
} from "../data-metabolic.js"
import {
  acsmWalking,
  givoniGoldman,
  looney2019,
  looney2022,
  minimumMechanics,
  pandolf,
  santee,
  supineRest,
} from "../metabolic-equations.js"
import { metabolicRateSteps } from "./formulae.js"
import type { MetabolicRate, MetabolicRateCaution, MetabolicRateInput, MetabolicRateRefusal } from "./types.js"

export type { MetabolicRate, MetabolicRateInput, MetabolicReading } from "./types.js"

const GRAVITY = 9.80665
/** Watts for one millilitre of oxygen a minute. */
const perOxygen = oxygenEnergy / 60000

/** What is too slow to be walking, m/s, and too flat to be a slope: the equations part at exactly zero. */
const still = (speed: number) => (speed < 1e-3 ? 0 : speed)
const level = (grade: number) => (Math.abs(grade) < 1e-6 ? 0 : grade)

function readings(si: SiOf<MetabolicRateInput>, load: number): Partial<Record<MetabolicEquation, number>> {
  const { bodyMass, standingRate } = si
  const [speed, grade] = [still(si.walkingSpeed), level(si.grade)]
  const factor = terrainFactor(si.terrain, si.snowDepth)
  const total = bodyMass + load
  const walking = speed > 0
  return {
    pandolf: pandolf(bodyMass, load, speed, grade, factor) - (walking && grade < 0 ? santee(bodyMass, load, speed, grade, factor) : 0),
    looney2019: looney2019(speed, grade) * total,
    ...(grade === 0 ? { looney2022: looney2022(load / bodyMass, speed, standingRate, factor) * bodyMass } : {}),
    ...(walking && grade >= 0 ? { acsm: acsmWalking(speed, grade) * total * perOxygen } : {}),
    ...(walking ? { minimumMechanics: (supineRest * bodyMass + minimumMechanics(speed, grade) * total) * perOxygen } : {}),
    ...(speed >= 0.7 && grade >= 0 ? { givoniGoldman: givoniGoldman(total * GRAVITY, speed, grade, factor) } : {}),
  }
}

function applies(name: MetabolicEquation, si: SiOf<MetabolicRateInput>, load: number): boolean {
  const { speed, grade, share, terrain } = metabolicSamples[name]
  return (
    si.walkingSpeed >= speed[0] &&
    si.walkingSpeed <= speed[1] &&
    level(si.grade) >= grade[0] &&
    level(si.grade) <= grade[1] &&
    load / si.bodyMass <= share &&
    (terrain || terrainFactor(si.terrain, si.snowDepth) === 1)
  )
}

/** Refusal of a wearer lighter than any the equations were compared with; null for others. `answers`: whether one just heavy enough gets an answer. */
export function tooLight(bodyMass: number, answers = true): NoSolution<MetabolicRateRefusal> | null {
  if (bodyMass >= lightestWalker) return null
  return refuse(
    "outside-data",
    "The published equations are of adults, and the lightest walker they were compared with weighed {lightest mass}: this wearer is {shortBy mass} lighter. A child's body works harder for its mass, so no figure is given. Let an adult of {lightest mass} or more wear the rig, and keep children out of it.",
    lightestWalker - bodyMass,
    { bodyMass },
    answers ? { bodyMass: lightestWalker } : {},
    { lightest: lightestWalker },
  )
}

function solve(si: SiOf<MetabolicRateInput>): MetabolicRate | NoSolution<MetabolicRateRefusal> {
  const refused = tooLight(si.bodyMass)
  if (refused) return refused
  const { head, hands, feet } = placementFactor
  const equivalentMass = si.rigMass + head * si.headMass + hands * si.handMass + feet * si.footMass
  const rates = readings(si, equivalentMass)
  const said = Object.entries(rates) as [MetabolicEquation, number][]
  const all = said.map(([, rate]) => rate)
  const [lowest, rate] = [Math.min(...all), Math.max(...all)]
  return {
    equivalentMass,
    pandolf: rates.pandolf as number,
    looney2019: rates.looney2019 as number,
    looney2022: rates.looney2022 ?? null,
    acsm: rates.acsm ?? null,
    minimumMechanics: rates.minimumMechanics ?? null,
    givoniGoldman: rates.givoniGoldman ?? null,
    minMetabolicRate: lowest,
    metabolicRate: rate,
    spreadRatio: rate / lowest,
    met: rate / (3.5 * perOxygen * si.bodyMass),
    readings: said.map(([name, one]) => ({
      equation: metabolicSamples[name].label,
      metabolicRate: one,
      applies: applies(name, si, equivalentMass),
      sample: metabolicSamples[name].sample,
    })),
  }
}

function cautions(si: SiOf<MetabolicRateInput>, out: MetabolicRate): Caution<MetabolicRateCaution>[] {
  const found: Caution<MetabolicRateCaution>[] = [takeItOff]
  const outside = out.readings.filter((r) => !r.applies)
  if (outside.length === out.readings.length)
    found.push(
      caution(
        "outside-range",
        "warning",
        "No equation was fitted to such a case: every reading is an extrapolation. Measure a real rehearsal before relying on it.",
        LOONEY_2022,
      ),
    )
  else if (outside.length)
    found.push(
      caution(
        "outside-range",
        "caution",
        "Outside the published range of: {outside}. Their readings are kept for comparison, and the largest of all is used.",
        LOONEY_2022,
        { outside: outside.map((r) => r.equation).join("; ") },
      ),
    )
  if (out.spreadRatio > 1.25)
    found.push(
      caution(
        "equations-disagree",
        "caution",
        "The equations differ by a factor of {spreadRatio} here (single readings are off by up to 27 %); plan with the largest.",
        PASSMORE,
        { spreadRatio: out.spreadRatio },
      ),
    )
  if (si.bodyMass < 50)
    found.push(
      caution(
        "small-wearer",
        "caution",
        "The equations read low for light walkers (down to 27 % below measurement at 36 kg) and none was fitted to children.",
        PASSMORE,
      ),
    )
  if (si.headMass > headMassLimit(0.05))
    found.push(
      caution(
        "heavy-head",
        "warning",
        "More than {most mass} on the head, even with its centre only 5 cm off the joint of the neck: the neck tires and is at risk in a stumble. Carry it on the shoulders.",
        HEAD_MASS,
        { most: headMassLimit(0.05) },
      ),
    )
  found.push(
    caution(
      "fit-adults",
      "note",
      "The samples are fit young adults, mostly men, with compact packs: a wide costume, dancing, wind, stairs and heat cost more.",
      PANDOLF,
    ),
  )
  return found
}

const mass = (symbol: string, label: string) => ({ kind: "mass", symbol, label, min: 0, max: 60, typical: [0, 2], default: 0 }) as const
const power = (symbol: string, label: string) => ({ kind: "power" as const, symbol, label, unit: "W" as const })

/**
 * Metabolic rate of a wearer who stands or walks with the rig on, as six published equations give it.
 *
 * With body mass m_w, equivalent load m_e = trunk + 1.3·head + 2.0·hands + 6.2·feet, speed v, grade G and terrain
 * factor η:
 *
 * - Pandolf: 1.5·m_w + 2·(m_w + m_e)·(m_e/m_w)² + η·(m_w + m_e)·(1.5·v² + 35·v·G), less Santee's correction downhill;
 * - Looney and others 2019, graded walking: (m_w + m_e)·(1.44 + 1.94·v^0.43 + 0.24·v⁴ + 34·v·G·(1 − 1.05^(1 − 1.1^(100·G + 32))));
 * - Looney and others 2022, backpacking, level: m_w·{M_s + [0.19 + η·(1.78·v^0.58 + 0.27·v⁴)]·(1 + 1.96·(m_e/m_w)^1.36)}, M_s
 *   standing rate (W/kg);
 * - ACSM: 3.5 + 6·v + 108·v·G mL/(kg·min), minimum mechanics and Givoni–Goldman likewise, 5.0 kcal per litre of oxygen.
 *
 * `metabolicRate` is the largest reading, because none of them was fitted to costumes; `minMetabolicRate` and `spreadRatio` show how far they part.
 * Valid for adults from 36 kg, 0 to about 2 m/s, loads to 66 % of body mass; each reading says whether the case is in its
 * range. A lighter wearer, a child as a rule, is refused: no equation was fitted to one.
 *
 * **Inputs**
 * - `bodyMass`: body mass [m_w; 20 to 300 kg]
 * - `rigMass`: rig mass on the trunk [m_t; 0 to 150 kg; default 0]
 * - `headMass`: load on the head [m_h; 0 to 60 kg; default 0]
 * - `handMass`: load in the hands [m_a; 0 to 60 kg; default 0]
 * - `footMass`: load on the feet [m_f; 0 to 60 kg; default 0]
 * - `walkingSpeed`: walking speed [v; 0 to 2.5 m/s; default 0]
 * - `grade`: grade [G; −0.4 to 0.45; default 0]
 * - `terrain`: surface underfoot [hard, dirt-road, light-brush, heavy-brush, swamp, loose-sand or soft-snow; default
 *   hard]
 * - `snowDepth`: footprint depth in soft snow [d_s; 0 to 500 mm; default 0]
 * - `standingRate`: standing rate, W/kg [M_s; 0.8 to 2; default 1.05]
 *
 * **Results**
 *
 * `equivalentMass`: equivalent trunk load [m_e; kg]; `pandolf`: Pandolf and others 1977 [M_P; W]; `looney2019`: Looney
 * and others 2019, graded walking [M_L; W]; `looney2022`: Looney and others 2022, backpacking [M_B; W]; `acsm`: ACSM
 * walking [M_A; W]; `minimumMechanics`: minimum mechanics [M_M; W]; `givoniGoldman`: Givoni and Goldman [M_G; W];
 * `minMetabolicRate`: lowest reading [M_0; W]; `metabolicRate`: rate to plan with [M; W]; `spreadRatio`: maximum over
 * minimum [q; as a fraction]; `met`: rate in MET [q_m]; `readings`: readings [list].
 *
 * **Symbols of the working**
 *
 * eta: terrain factor; b: body mass in kg; c: mass moved in kg; x: speed in m/s; below 1 mm/s is standing; p: grade in
 * per cent; k_o: watts for 1 mL of oxygen a minute (5.0 kcal/L); w_g: 1 where Givoni and Goldman holds: from 0.7 m/s,
 * not downhill.
 *
 * **Sources**
 * - K. B. Pandolf, B. Givoni, R. F. Goldman: Predicting energy expenditure with loads while standing or walking very
 *   slowly, J. Appl. Physiol. 43, 1977, equation
 * - D. P. Looney and others: Estimating energy expenditure during level, uphill, and downhill walking, Med. Sci.
 *   Sports Exerc. 51, 2019, graded walking equation
 * - D. P. Looney and others: Modeling the metabolic costs of heavy military backpacking, Med. Sci. Sports Exerc. 54,
 *   2022, equations 2 and 4
 * - American College of Sports Medicine: ACSM's Guidelines for Exercise Testing and Prescription, 9th, 2014 (equation
 *   as quoted in McArdle, Katch and Katch, Exercise Physiology, chapter 10), walking equation
 * - L. W. Ludlow, P. G. Weyand: Walking economy is predictably determined by speed, grade, and gravitational load, J.
 *   Appl. Physiol. 123, 2017, table 4
 * - A. T. Johnson (after B. Givoni and R. F. Goldman, 1971): Biomechanics and Exercise Physiology, 1991, equation
 *   5.5.1
 * - W. R. Santee and others: Downhill correction to the load-carriage equation of Pandolf and others, 2001, downhill
 *   correction
 * - R. G. Soule, R. F. Goldman: Terrain coefficients for energy cost prediction, J. Appl. Physiol. 32, 1972 (reprinted
 *   in Johnson 1991, table 5.5.1), terrain factors (not verified against the document)
 * - R. G. Soule, R. F. Goldman: Energy cost of loads carried on the head, hands, or feet, J. Appl. Physiol. 27, 1969
 *   (reprinted in Johnson 1991, table 2.5.1), cost of a kilogram by where it is carried
 * - R. Passmore, J. V. G. A. Durnin: Human energy expenditure, Physiol. Rev. 35, 1955, energy of walking by body mass,
 *   36 to 91 kg
 * - A. M. Madison and others: Preliminary head-supported mass performance guidance for dismounted soldier
 *   environments, Mil. Med. 188, 2023, moment of 134 N·cm about the joint of head and neck
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `outside-data` below 36 kg of body mass
 * @example
 * ```ts
 * import { metabolicRate } from 'alula/worn'
 * const walk = metabolicRate({ bodyMass: '70 kg', rigMass: '20 kg', walkingSpeed: '1.34 m/s' })
 * walk.pandolf // => 362.1
 * walk.metabolicRate // => 397.3
 * ```
 */
export const metabolicRate: Solver<MetabolicRateInput, MetabolicRate, MetabolicRateRefusal, MetabolicRateCaution> = /* @__PURE__ */ solver<
  MetabolicRateInput,
  MetabolicRate,
  MetabolicRateRefusal,
  MetabolicRateCaution
>("metabolicRate", "How hard the body works, standing or walking with the rig on", solve, () => ({
  input: {
    bodyMass: wearerFields.bodyMass,
    rigMass: { ...wearerFields.rigMass, symbol: "m_t", label: "rig mass on the trunk", min: 0, default: 0 },
    headMass: mass("m_h", "load on the head"),
    handMass: mass("m_a", "load in the hands"),
    footMass: mass("m_f", "load on the feet"),
    walkingSpeed: { ...wearerFields.walkingSpeed, default: 0 },
    grade: { kind: "ratio", symbol: "G", label: "grade", min: -0.4, max: 0.45, typical: [-0.1, 0.1], default: 0 },
    terrain: {
      kind: "choice",
      label: "surface underfoot",
      options: optionsFrom(terrains, (key) => terrains[key].label),
      default: "hard",
    },
    snowDepth: { kind: "length", symbol: "d_s", label: "footprint depth in soft snow", min: 0, max: 0.5, typical: [0, 0.2], default: 0 },
    standingRate: { kind: "number", symbol: "M_s", label: "standing rate, W/kg", min: 0.8, max: 2, typical: [1, 1.5], default: 1.05 },
  },
  output: {
    equivalentMass: { kind: "mass", symbol: "m_e", label: "equivalent trunk load" },
    pandolf: power("M_P", "Pandolf and others 1977"),
    looney2019: power("M_L", "Looney and others 2019, graded walking"),
    looney2022: power("M_B", "Looney and others 2022, backpacking"),
    acsm: power("M_A", "ACSM walking"),
    minimumMechanics: power("M_M", "minimum mechanics"),
    givoniGoldman: power("M_G", "Givoni and Goldman"),
    minMetabolicRate: power("M_0", "lowest reading"),
    metabolicRate: power("M", "rate to plan with"),
    spreadRatio: { kind: "ratio", symbol: "q", label: "maximum over minimum", unit: "x" },
    met: { kind: "number", symbol: "q_m", label: "rate in MET" },
    readings: {
      kind: "list",
      label: "readings",
      of: {
        kind: "group",
        label: "reading",
        fields: {
          equation: { kind: "text", label: "equation" },
          metabolicRate: { kind: "power", label: "rate", unit: "W" },
          applies: { kind: "flag", label: "in its range" },
          sample: { kind: "text", label: "sample" },
        },
      },
    },
  },
  example: { bodyMass: "60 kg", rigMass: "9 kg", walkingSpeed: "0.9 m/s" },
  formulae: metabolicRateSteps,
  check: ({ terrain, snowDepth }) =>
    snowDepth > 0 && terrain !== "soft-snow"
      ? [
          inconsistent(
            ["snowDepth"],
            "a footprint depth of {snowDepth length mm} on a surface that is not soft snow",
            "soft snow as the surface, or no footprint depth",
            { snowDepth },
          ),
        ]
      : [],
  sources: [...Object.values(metabolicSamples).map((s) => s.source), SANTEE, TERRAIN, PLACEMENT, PASSMORE, HEAD_MASS],
  cautions,
}))

/** Metabolic rate to plan with, W: {@link metabolicRate} without its ceremony, on the level and a hard floor. */
export function plannedRate(bodyMass: number, rigMass: number, walkingSpeed: number): number {
  const si = {
    bodyMass,
    rigMass,
    headMass: 0,
    handMass: 0,
    footMass: 0,
    walkingSpeed,
    grade: 0,
    terrain: "hard",
    snowDepth: 0,
    standingRate: 1.05,
  } as const
  return Math.max(...Object.values(readings(si, rigMass)))
}
