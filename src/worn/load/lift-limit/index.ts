import { interpolate } from "../../../numeric/index.js"
import { at, type NoSolution, optionsFrom, refuse, type SiOf, type Solver, type Step, solver } from "../../../solver/index.js"
import { ISO_11228_1, NIOSH_1994, NIOSH_TABLES, TEAM_LIFTS } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import {
  type Coupling,
  couplingTable,
  frequencyTable,
  knuckleHeight,
  type LiftDuration,
  liftRange,
  liftSources,
  loadConstant,
  referenceMasses,
  teamShares,
} from "../data-lift.js"
import { cautions } from "./cautions.js"
import type { LiftLimit, LiftLimitCaution, LiftLimitInput, LiftLimitRefusal } from "./types.js"

export type { LiftLimit, LiftLimitCaution, LiftLimitInput, LiftLimitRefusal } from "./types.js"

/** Multipliers of the revised NIOSH equation, lengths in m, angles in rad. */
export const liftFactors = {
  reach: (reach: number): number => 0.25 / Math.max(reach, 0.25),
  height: (height: number): number => 1 - 0.3 * Math.abs(height - 0.75),
  distance: (distance: number): number => 0.82 + 0.045 / Math.max(distance, 0.25),
  turn: (turn: number): number => 1 - (0.0032 * turn * 180) / Math.PI,
  frequency: (rate: number, duration: LiftDuration): number => {
    const { rates, factors } = frequencyTable[duration]
    return interpolate(
      rates.map((r, i) => [r, factors[i] as number] as const),
      rate,
    )
  },
  coupling: (coupling: Coupling, height: number): number => couplingTable[coupling][height < knuckleHeight ? "below" : "above"],
}

/** Recommended weight limit from its multipliers. */
export function recommendedWeight(factors: readonly number[], constant: number = loadConstant): number {
  return factors.reduce((product, factor) => product * factor, constant)
}

/** Most lifts a minute the tables cover for a height of the hands. */
const mostLifts = (duration: LiftDuration, height: number): number =>
  height < knuckleHeight ? frequencyTable[duration].below : (frequencyTable[duration].rates.at(-1) as number)

/** Smallest team that may lift a load of so many recommended masses; null where none of those that guidance tells of may. */
function peopleFor(load: number): number | null {
  const found = teamShares.findIndex((share, i) => load <= share * (i + 1) * (1 + 1e-9))
  return found < 0 ? null : found + 1
}

function solve(si: SiOf<LiftLimitInput>): LiftLimit | NoSolution<LiftLimitRefusal> {
  const { rigMass, startHeight, endHeight, startReach, startTurn, endTurn, liftRate, duration, coupling } = si
  const endReach = si.endReach ?? startReach
  const least = Math.min(mostLifts(duration, startHeight), mostLifts(duration, endHeight))
  if (!(liftRate <= least))
    return refuse(
      "outside-data",
      "{liftRate} lifts a minute is more than the equation allows for such lifts: {nearest.liftRate} at most.",
      liftRate - least,
      { liftRate },
      { liftRate: least },
    )
  const distanceFactor = liftFactors.distance(Math.abs(endHeight - startHeight))
  const ends = [
    { reach: startReach, height: startHeight, turn: startTurn },
    { reach: endReach, height: endHeight, turn: endTurn },
  ].map(({ reach, height, turn }) => [
    liftFactors.reach(reach),
    liftFactors.height(height),
    liftFactors.turn(turn),
    liftFactors.frequency(liftRate, duration),
    liftFactors.coupling(coupling, height),
  ])
  const [start, end] = ends as [number[], number[]]
  const [startLimit, endLimit] = [recommendedWeight([...start, distanceFactor]), recommendedWeight([...end, distanceFactor])]
  const massLimit = Math.min(startLimit, endLimit)
  const referenceMass = referenceMasses[si.lifter].mass
  const recommendedMass = Math.min(massLimit, referenceMass)
  return {
    startReachFactor: start[0] as number,
    startHeightFactor: start[1] as number,
    startTurnFactor: start[2] as number,
    startFrequencyFactor: start[3] as number,
    startCouplingFactor: start[4] as number,
    distanceFactor,
    startLimit,
    endLimit,
    massLimit,
    liftingIndex: rigMass / massLimit,
    referenceMass,
    recommendedMass,
    peopleCount: peopleFor(rigMass / recommendedMass),
  }
}

type LiftStep = Step<SiOf<LiftLimitInput>, LiftLimit>
const factorSteps = (end: "1" | "2", limit: string): readonly LiftStep[] => {
  const height = (si: SiOf<LiftLimitInput>) => (end === "1" ? si.startHeight : si.endHeight)
  const where = end === "1" ? "at the start" : "at the end"
  return [
    { symbol: `k_h${end}`, kind: "number", meaning: `reach, ${where}`, is: `25 cm / max(H_${end}, 25 cm)` },
    { symbol: `k_v${end}`, kind: "number", meaning: `height, ${where}`, is: `1 - 0.003 * abs(V_${end} - 75 cm) / (1 cm)` },
    { symbol: `k_a${end}`, kind: "number", meaning: `turn, ${where}`, is: `1 - 0.0032 * A_${end} * 180 / pi` },
    {
      symbol: `k_f${end}`,
      kind: "number",
      meaning: `frequency, ${where}`,
      given: (si) => liftFactors.frequency(si.liftRate, si.duration),
      source: at(NIOSH_1994, "table 5"),
    },
    {
      symbol: `k_c${end}`,
      kind: "number",
      meaning: `coupling, ${where}`,
      given: (si) => liftFactors.coupling(si.coupling, height(si)),
      source: at(NIOSH_TABLES, "table 7"),
    },
    {
      symbol: limit,
      kind: "mass",
      meaning: `recommended weight limit, ${where}`,
      is: `(23 kg) * k_h${end} * k_v${end} * k_d * k_a${end} * k_f${end} * k_c${end}`,
      source: NIOSH_1994,
    },
  ]
}

const factor = (symbol: string, label: string) => ({ kind: "number", symbol, label }) as const
const mass = (symbol: string, label: string) => ({ kind: "mass", symbol, label }) as const

/**
 * How heavy a rig may be to lift on and off, by the revised NIOSH equation. Never for wearing it.
 *
 * Limit = 23 kg · HM · VM · DM · AM · FM · CM at the start and at the end, the lower counts: HM = 25/H (H reach in cm,
 * at least 25), VM = 1 − 0.003·|V − 75| (V height of the hands in cm), DM = 0.82 + 4.5/D (D distance in cm, at least
 * 25), AM = 1 − 0.0032·A (A turn in degrees), FM from lifts a minute, duration and height, CM from the hold. Lifting
 * index: load over limit. `recommendedMass` is the lower of limit and ISO reference mass; two people together count for
 * two thirds of their sum, three for half. Valid for two-handed lifts by
 * adults, reach to 63 cm, hands to 175 cm, turn to 135°.
 *
 * **Inputs**
 * - `rigMass`: rig mass lifted [m_r; 10 g to 150 kg]
 * - `startHeight`: hands at the start [V_1; 0 to 1.75 m]
 * - `endHeight`: hands at the end [V_2; 0 to 1.75 m]
 * - `startReach`: reach at the start [H_1; 100 to 630 mm]
 * - `endReach`: reach at the end [H_g; 100 to 630 mm; optional]
 * - `startTurn`: turn at the start [A_1; 0 to 135°; default 0]
 * - `endTurn`: turn at the end [A_2; 0 to 135°; default 0]
 * - `liftRate`: lifts a minute [f; 0.2 to 15; default 0.2]
 * - `duration`: going on for [short, medium or long; default short]
 * - `coupling`: hold [good, fair or poor; default fair]
 * - `lifter`: lifter [anyone, men-adult, men-other, women-adult or women-other; default anyone]
 *
 * **Results**
 *
 * `startReachFactor`: reach factor, start [k_h1]; `startHeightFactor`: height factor, start [k_v1]; `startTurnFactor`:
 * turn factor, start [k_a1]; `startFrequencyFactor`: frequency factor, start [k_f1]; `startCouplingFactor`: hold
 * factor, start [k_c1]; `distanceFactor`: distance factor [k_d]; `startLimit`: limit at the start [m_1; kg];
 * `endLimit`: limit at the end [m_2; kg]; `massLimit`: limit [m_l; kg]; `liftingIndex`: lifting index [n_l];
 * `referenceMass`: reference mass [m_i; kg]; `recommendedMass`: for one pair of hands [m_p; kg]; `peopleCount`: people
 * [n_p].
 *
 * **Symbols of the working**
 *
 * H_2: reach at the end [m]; k_h2: reach, at the end; k_v2: height, at the end; k_a2: turn, at the end; k_f2:
 * frequency, at the end; k_c2: coupling, at the end.
 *
 * **Sources**
 * - T. R. Waters, V. Putz-Anderson, A. Garg: Applications manual for the revised NIOSH lifting equation, publication
 *   94-110, 1994, sections 1.2 and 1.3
 * - T. R. Waters, V. Putz-Anderson, A. Garg: Applications manual for the revised NIOSH lifting equation, publication
 *   94-110, 1994, table 5 (up to 2 and 8 h) and table 7 (not verified against the document)
 * - ISO: ISO 11228-1, Ergonomics: manual handling, lifting, lowering and carrying, 2021, reference masses by sex and
 *   age (not verified against the document)
 * - Health and Safety Executive: Manual handling: Manual Handling Operations Regulations 1992, guidance on regulations
 *   (L23), paragraphs 119 and 120: two people two thirds, three people half of the sum of what they manage singly
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `outside-data` with the most lifts a minute
 * @example
 * ```ts
 * import { liftLimit } from 'alula/worn'
 * const up = liftLimit({ rigMass: '9 kg', startHeight: '0.75 m', endHeight: '1.3 m', startReach: '0.4 m' })
 * up.massLimit // => 10.82
 * up.liftingIndex // => 0.8314
 * ```
 */
export const liftLimit: Solver<LiftLimitInput, LiftLimit, LiftLimitRefusal, LiftLimitCaution> = /* @__PURE__ */ solver<
  LiftLimitInput,
  LiftLimit,
  LiftLimitRefusal,
  LiftLimitCaution
>("liftLimit", "How heavy a rig may be to lift on and off", solve, () => ({
  input: {
    rigMass: { ...wearerFields.rigMass, label: "rig mass lifted" },
    startHeight: { kind: "length", symbol: "V_1", label: "hands at the start", min: 0, max: liftRange.height, typical: [0, 1] },
    endHeight: { kind: "length", symbol: "V_2", label: "hands at the end", min: 0, max: liftRange.height, typical: [1, 1.6] },
    startReach: { kind: "length", symbol: "H_1", label: "reach at the start", min: 0.1, max: liftRange.reach, typical: [0.25, 0.6] },
    endReach: {
      kind: "length",
      symbol: "H_g",
      label: "reach at the end",
      min: 0.1,
      max: liftRange.reach,
      typical: [0.25, 0.6],
      default: null,
    },
    startTurn: {
      kind: "angle",
      symbol: "A_1",
      label: "turn at the start",
      min: 0,
      max: liftRange.asymmetry,
      typical: [0, 1.5],
      default: 0,
    },
    endTurn: { kind: "angle", symbol: "A_2", label: "turn at the end", min: 0, max: liftRange.asymmetry, typical: [0, 1.5], default: 0 },
    liftRate: { kind: "number", symbol: "f", label: "lifts a minute", min: 0.2, max: 15, typical: [0.2, 4], default: 0.2 },
    duration: {
      kind: "choice",
      label: "going on for",
      options: { short: "up to 1 h", medium: "up to 2 h", long: "up to 8 h" },
      default: "short",
    },
    coupling: { kind: "choice", label: "hold", options: optionsFrom(couplingTable, (key) => couplingTable[key].label), default: "fair" },
    lifter: {
      kind: "choice",
      label: "lifter",
      options: optionsFrom(referenceMasses, (key) => referenceMasses[key].label),
      default: "anyone",
    },
  },
  output: {
    startReachFactor: factor("k_h1", "reach factor, start"),
    startHeightFactor: factor("k_v1", "height factor, start"),
    startTurnFactor: factor("k_a1", "turn factor, start"),
    startFrequencyFactor: factor("k_f1", "frequency factor, start"),
    startCouplingFactor: factor("k_c1", "hold factor, start"),
    distanceFactor: factor("k_d", "distance factor"),
    startLimit: mass("m_1", "limit at the start"),
    endLimit: mass("m_2", "limit at the end"),
    massLimit: mass("m_l", "limit"),
    liftingIndex: factor("n_l", "lifting index"),
    referenceMass: mass("m_i", "reference mass"),
    recommendedMass: mass("m_p", "for one pair of hands"),
    peopleCount: factor("n_p", "people"),
  },
  example: { rigMass: "9 kg", startHeight: "0.75 m", endHeight: "1.3 m", startReach: "0.4 m" },
  formulae: [
    { symbol: "k_d", meaning: "distance", is: "0.82 + 4.5 cm / max(abs(V_2 - V_1), 25 cm)" },
    { symbol: "H_2", kind: "length", meaning: "reach at the end", is: "H_1", when: "not has_endReach" },
    { symbol: "H_2", kind: "length", meaning: "reach at the end", is: "H_g", when: "has_endReach" },
    ...factorSteps("1", "m_1"),
    ...factorSteps("2", "m_2"),
    { symbol: "m_l", meaning: "the lower", is: "min(m_1, m_2)" },
    { symbol: "n_l", meaning: "lifting index", is: "m_r / m_l" },
    { symbol: "m_i", kind: "mass", meaning: "reference mass", given: (si) => referenceMasses[si.lifter].mass, source: ISO_11228_1 },
    { symbol: "m_p", meaning: "for one pair of hands", is: "min(m_l, m_i)" },
    {
      symbol: "n_p",
      meaning: "people: one up to this mass, two up to 4/3 of it, three up to 3/2",
      is: "1 + (m_r / m_p > 1 + 1e-9) + (m_r / m_p > 4 / 3 * (1 + 1e-9))",
      when: "m_r / m_p <= 3 / 2 * (1 + 1e-9)",
      source: TEAM_LIFTS,
    },
  ],
  sources: liftSources,
  cautions,
}))
