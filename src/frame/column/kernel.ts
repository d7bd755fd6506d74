import { isNoSolution, type NoSolution, type SiOf } from "../../solver/index.js"
import { conditionOf } from "../condition.js"
import { columnEnds } from "../data-columns.js"
import { handlingCases } from "../data-loads.js"
import { type Section, type SectionInput, sectionOf } from "../section.js"
import { wallBuckling } from "../thin-wall.js"
import type { Column, ColumnInput, ColumnRefusal } from "./types.js"

/** Euler's stress (Pa): C·π²·E / λ². */
export function eulerStress(modulus: number, endConstant: number, slenderness: number): number {
  return (endConstant * Math.PI ** 2 * modulus) / slenderness ** 2
}

/** Johnson's stress (Pa): S·(1 − S·λ² / (4·π²·C·E)). */
export function johnsonStress(modulus: number, strength: number, endConstant: number, slenderness: number): number {
  return strength * (1 - (strength * slenderness ** 2) / (4 * Math.PI ** 2 * endConstant * modulus))
}

/** Slenderness √(2·π²·C·E / S) at which both curves meet, at half the strength. */
export function transitionSlenderness(modulus: number, strength: number, endConstant: number): number {
  return Math.sqrt((2 * Math.PI ** 2 * endConstant * modulus) / strength)
}

/** The section about its weak axis: a rectangle buckles across its shorter side. */
export function weakSection(section: SiOf<SectionInput>): Section {
  const { width, height } = section
  return sectionOf(
    width !== null && height !== null ? { ...section, width: Math.max(width, height), height: Math.min(width, height) } : section,
  )
}

export function solve(si: SiOf<ColumnInput>): Column | NoSolution<ColumnRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const section = weakSection(si.section)
  const area = section.area as number
  const endConstant = si.endConstant ?? columnEnds[si.ends].design
  const radiusOfGyration = Math.sqrt(section.secondMoment / area)
  const slenderness = si.length / radiusOfGyration
  const fails = (modulus: number, strength: number | null) => {
    const euler = eulerStress(modulus, endConstant, slenderness)
    const transition = strength === null ? null : transitionSlenderness(modulus, strength, endConstant)
    const holds = strength !== null && transition !== null && slenderness < transition
    const johnson = holds ? johnsonStress(modulus, strength, endConstant, slenderness) : null
    const whole = johnson ?? euler
    const wall = wallBuckling(section, si.material, modulus)?.axial ?? null
    return { euler, transition, johnson, wall, whole, critical: wall === null ? whole : Math.min(whole, wall) }
  }
  const low = fails(condition.modulus, condition.strength)
  const most = fails(condition.maxModulus, condition.maxStrength)
  const criticalLoad = { low: low.critical * area, high: most.critical * area }
  const pushed = si.load === null ? 0 : si.load * handlingCases[si.handling].factor
  const governedBy = low.critical < low.whole ? "wall" : low.johnson === null ? "Euler" : "Johnson"
  return {
    endConstant,
    radiusOfGyration,
    slenderness,
    transitionSlenderness: low.transition,
    eulerStress: low.euler,
    johnsonStress: low.johnson,
    wallBucklingStress: low.wall,
    criticalStress: low.critical,
    criticalLoad,
    governedBy,
    safetyFactor: pushed > 0 ? { low: criticalLoad.low / pushed, high: criticalLoad.high / pushed } : null,
  }
}
