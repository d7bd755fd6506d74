import type { Density, Force, ForcePerLength, Length, Moment } from "../../quantity/index.js"
import { type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import type { ConditionInput } from "../condition.js"
import { type HandlingCase, handlingCases } from "../data-loads.js"
import { densityOf } from "../material-choice.js"
import { type SectionInput, sectionOf } from "../section.js"
import type { BeamCurve, BeamExtreme, BeamProblem, BeamState } from "./curve.js"

/** A force at one place. */
export interface PointLoad {
  /** Force across the beam, positive downwards. [P_i; −10 to 10 kN] */
  force: Force
  /** Distance from the start of the beam. [a_i; 0 to 100 m] */
  position: Length
}
/** A load spread over a stretch, running straight from one value to another. */
export interface SpreadLoad {
  /** Load per length at its start, positive downwards. [q_i; −10 to 10 N/mm] */
  startLoad: ForcePerLength
  /** Load per length at its end. [q_j; −10 to 10 N/mm] */
  endLoad: ForcePerLength
  /** Where it starts, from the start of the beam. [s_i; 0 to 100 m] */
  start: Length
  /** Where it ends. [e_i; 0 to 100 m] */
  end: Length
}
/** A moment at one place. */
export interface MomentLoad {
  /** Moment, positive where it turns what lies beyond it downwards. [C_i; −10000 to 10000 N m] */
  moment: Moment
  /** Distance from the start of the beam. [b_i; 0 to 100 m] */
  position: Length
}

/** How a beam is held. */
export type BeamSupport = "cantilever" | "simple"

/** What loads a beam. */
export interface BeamLoads {
  /** Forces at places. [list of 0 to 200; default none] */
  forces?: readonly PointLoad[]
  /** Spread loads [list of 0 to 200; default none] */
  distributedLoads?: readonly SpreadLoad[]
  /** Moments at places. [list of 0 to 200; default none] */
  moments?: readonly MomentLoad[]
}

/** Input of the beam solver. */
export interface BeamInput extends ConditionInput, BeamLoads {
  /** Whole length. [L; 10 mm to 100 m] */
  length: Length
  /** Clamped at its start, or resting on two supports. [cantilever or simple] */
  support: BeamSupport
  /** Distance between two supports, the first at the start; the whole length where left out. [S_g; 10 mm to 100 m; optional] */
  span?: Length | null
  /** Cross-section. [group] */
  section: SectionInput
  /** Density, instead of the heavy end of the material's range. [rho_g; 1 to 25000 kg/m³; optional] */
  density?: Density | null
  /** Whether its own weight, lying level, is added. [yes or no; default yes] */
  countsOwnWeight?: boolean
  /** How it is handled; multiplies every load. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** The fault of a place beyond the end of a beam. */
export const beyondEnd = (si: { readonly length: number }, path: readonly (string | number)[], x: number): Issue[] =>
  x <= si.length
    ? []
    : [inconsistent(path, "{place length}", "a place within the length of {length length}", { place: x, length: si.length })]

/** Faults of what loads a beam found at `path`: places beyond its end, spread loads that spread nowhere. */
export function loadFaults(
  si: Pick<SiOf<BeamInput>, "length" | "forces" | "moments" | "distributedLoads">,
  path: readonly string[] = [],
): Issue[] {
  const faults: Issue[] = []
  for (const [i, p] of si.forces.entries()) faults.push(...beyondEnd(si, [...path, "forces", i, "position"], p.position))
  for (const [i, c] of si.moments.entries()) faults.push(...beyondEnd(si, [...path, "moments", i, "position"], c.position))
  for (const [i, s] of si.distributedLoads.entries()) {
    const end = [...path, "distributedLoads", i, "end"]
    faults.push(...beyondEnd(si, end, s.end))
    if (!(s.end - s.start >= 1e-6))
      faults.push(inconsistent(end, "{end length}", "beyond its start at {start length}", { end: s.end, start: s.start }))
  }
  return faults
}

/** Standard gravity, m/s². */
export const gravity = 9.80665

/** Density a beam's own weight is calculated with, kg/m³; 0 where it is not counted or not known. */
export function ownDensity(si: Pick<SiOf<BeamInput>, "countsOwnWeight" | "density" | "material">): number {
  return si.countsOwnWeight ? densityOf(si) : 0
}

/** The beam with every load on it, handling and own weight included. */
export function beamProblem(si: SiOf<BeamInput>, modulus: number): BeamProblem {
  const section = sectionOf(si.section)
  const factor = handlingCases[si.handling].factor
  const weight = ownDensity(si) * (section.weightArea ?? 0) * gravity * factor
  const spreads = si.distributedLoads.map((s) => ({ ...s, startLoad: s.startLoad * factor, endLoad: s.endLoad * factor }))
  return {
    length: si.length,
    span: si.support === "cantilever" ? null : (si.span ?? si.length),
    stiffness: modulus * section.secondMoment,
    forces: si.forces.map((p) => ({ force: p.force * factor, position: p.position })),
    distributedLoads: weight > 0 ? [...spreads, { startLoad: weight, endLoad: weight, start: 0, end: si.length }] : spreads,
    couples: si.moments.map((c) => ({ moment: c.moment * factor, position: c.position })),
  }
}

/** Which side of its place a value was taken from: a load at the very place may count or not. */
export function sideOf(curve: BeamCurve, what: keyof BeamState, found: BeamExtreme): 1 | -1 {
  return curve.at(found.at, -1)[what] === found.value ? -1 : 1
}
