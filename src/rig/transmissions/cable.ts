// A pull cable in a sheath or over pulleys.
import { USUAL_FACTOR } from "../../drive/cable/cautions.js"
import { input as cableFields } from "../../drive/cable/fields.js"
import { type CableInput, type CableRefusal, cable as domainCable } from "../../drive/index.js"
import type { Area, Force, Length, Pressure } from "../../quantity/index.js"
import { type Either, isNoSolution, type NoSolution, type SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A cable and the way it runs, whatever it moves. */
export interface CableRun {
  /** Length of the cable [L; 10 mm to 1000 m] */
  length: Length
  /** Diameter of the cable [d; 0.1 to 100 mm] */
  diameter: Length
  /**
   * Construction of a wire cable, for its stretch; or area and modulus of another. [1x7-galvanised, 1x19-galvanised,
   * 7x7-galvanised, 7x19-galvanised, 1x19-stainless, 7x7-stainless or 7x19-stainless; optional]
   */
  construction?: CableInput["construction"]
  /** Area of its section [A; 0.001 to 10000 mm²; optional] */
  area?: Area | null
  /** Modulus of the cable [E; 0.1 to 500 GPa; optional] */
  modulus?: Pressure | null
  /** Breaking force [F_b; 1 N to 100000 kN] */
  breakingForce: Force
  /** Route [by its type: sheath or pulleys] */
  route: CableInput["route"]
}

/** A pull cable. */
export interface CableElement extends CableRun {
  type: "cable"
}

export const cableRunFields = {
  length: cableFields.length,
  diameter: cableFields.diameter,
  construction: cableFields.construction,
  area: cableFields.area,
  modulus: cableFields.modulus,
  breakingForce: cableFields.breakingForce,
  route: cableFields.route,
}
export const cableRunRules = [{ exactlyOne: ["construction", ["area", "modulus"]] }] as const satisfies readonly Either[]

const asked = ({ length, diameter, construction, area, modulus, breakingForce, route }: SiOf<CableRun>, force: number) => ({
  length,
  diameter,
  construction,
  area,
  modulus,
  breakingForce,
  route,
  minBendRadius: null,
  travel: 1e-3,
  force,
})

export const cableRunFaults = (si: SiOf<CableRun>) => domainFaults(domainCable, asked(si, 1))

/** What a cable makes of the tension at its far end. */
export interface RunOfCable {
  readonly forward: number
  readonly backward: number
  /** Lost motion at its far end for a tension of 1 there, m/N. */
  readonly compliance: number
  /** Tension at its far end at which it breaks in its tightest bend, pulled. */
  readonly strength: number
  /** Slack in its sheath's bends, m. */
  readonly play: number
}

/** A cable that a motion pulls; refused where its bends leave next to nothing of the pull. */
export function cableRun(si: SiOf<CableRun>): RunOfCable | NoSolution<CableRefusal> {
  // everything is in proportion to the tension, as long as it holds
  const force = 1e-6 * si.breakingForce
  const out = domainCable.si(asked(si, force))
  if (isNoSolution(out)) return out
  return {
    forward: out.efficiency,
    backward: out.backwardEfficiency,
    compliance: out.lostMotion / force,
    strength: out.safetyFactor * force,
    play: out.slackPlay ?? 0,
  }
}

/** A pull cable; forward pulls. */
export const cable: TransmissionMember<CableElement> = {
  type: "cable",
  label: "pull cable",
  fields: cableRunFields,
  either: cableRunRules,
  check: cableRunFaults,
  build(si) {
    const run = cableRun(si)
    if (isNoSolution(run)) return run
    const { play, ...rest } = run
    return {
      ...rigid,
      ...rest,
      takes: "length",
      gives: "length",
      out: (travel) => travel,
      ratio: () => 1,
      safetyFactor: USUAL_FACTOR,
      transmits: "pull-only",
      backlash: play,
    }
  },
}
