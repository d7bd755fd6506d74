// Judges sizes as beam or column and takes the lightest that will do.
import { isNoSolution, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { type BeamInput, beam } from "../beam/index.js"
import { type ColumnInput, column } from "../column/index.js"
import { conditionOf, farthest, leastStress } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import { densityOf } from "../material-choice.js"
import { sectionOf } from "../section.js"
import { wallBuckling } from "../thin-wall.js"
import type { Fail, Looked, MemberSize, MemberSizeRefusal, MemberSizeTrace, Si, Size } from "./types.js"

/** Depths looked at where none is given, m. */
const [THINNEST, DEEPEST] = [1e-4, 2]
/** Step from one depth to the next. */
const STEP = 1.05

const shared = (si: Si, { section, made }: Size) => {
  const { materialTemperature, duration, handling } = si
  const { material, modulus, strength } = made
  return { section, material, modulus, strength, materialTemperature, duration, handling }
}

/** The size as {@link beam} takes it. */
export function beamOf(si: Si, size: Size): SiOf<BeamInput> | null {
  if (si.member.type !== "beam") return null
  const { type: _, ...member } = si.member
  return { ...member, ...shared(si, size), density: size.made.density, countsOwnWeight: si.countsOwnWeight }
}

/** The size as {@link column} takes it. */
export function columnOf(si: Si, size: Size): SiOf<ColumnInput> | null {
  if (si.member.type !== "column") return null
  const { type: _, ...member } = si.member
  return { ...member, ...shared(si, size) }
}

/** Modulus of a size as it stands, Pa; 0 where it is too hot. */
export function modulusOf({ materialTemperature, duration }: Si, { made }: Size): number {
  const { material, modulus, strength } = made
  const condition = conditionOf({ material, modulus, strength, materialTemperature, duration })
  return isNoSolution(condition) ? 0 : condition.modulus
}

/** Local buckling stress of a thin round wall over the bending stress. */
function wallMargin({ section, made }: Size, modulus: number, stress: number | null): number | null {
  const wall = wallBuckling(sectionOf(section), made.material, modulus)
  return wall === null || stress === null || !(stress > leastStress) ? null : wall.bending / stress
}

export function judge(si: Si, size: Size): Looked {
  const section = sectionOf(size.section)
  const [asBeam, asColumn] = [beamOf(si, size), columnOf(si, size)]
  const [bent, pushed] = [asBeam && beam.si(asBeam), asColumn && column.si(asColumn)]
  const tooHot = isNoSolution(bent) || isNoSolution(pushed)
  const [b, c] = [isNoSolution(bent) ? null : bent, isNoSolution(pushed) ? null : pushed]
  const safetyFactor = (b?.safetyFactor ?? c?.safetyFactor)?.low ?? null
  const wallSafetyFactor = b && wallMargin(size, b.modulus, b.bendingStress)
  const maxDeflection = b && farthest(b.maxDeflection)
  const asked = (margin: number | null) => (margin === null ? 0 : si.minSafetyFactor / margin)
  const excesses: [Fail, number][] = [
    [asColumn ? "buckling" : "strength", asked(safetyFactor)],
    ["wall", asked(wallSafetyFactor)],
    ["deflection", maxDeflection === null || si.deflectionLimit === null ? 0 : maxDeflection / si.deflectionLimit],
    ["temperature", tooHot ? Number.POSITIVE_INFINITY : 0],
  ]
  const [worst, excess] = excesses.reduce((most, one) => (one[1] > most[1] ? one : most))
  return {
    name: size.name,
    size,
    mass: densityOf(size.made) * (section.weightArea as number) * si.member.length,
    depth: 2 * (section.fibre as number),
    safetyFactor,
    wallSafetyFactor,
    maxDeflection,
    fails: excesses.flatMap(([fail, by]) => (by > 1 ? [fail] : [])),
    worst,
    excess,
    beam: b,
    column: c,
  }
}

const noShape = { pipe: null, outsideDiameter: null, width: null, height: null, wall: null, secondMoment: null, fibre: null, area: null }

/** Sizes of a search without a list: one for every depth, from the thinnest that its wall allows. */
function byDepth(si: Si): { readonly thinnest: number; at(depth: number): Size } | null {
  const { search } = si
  if (search.type === "stock") return null
  const { type, wall, material, modulus, strength, density } = search
  const made = { material, modulus, strength, density }
  const width = search.type === "rectangular" ? search.width : null
  const name = `${type === "round" ? "round" : "rectangular"} ${wall === null ? "bar" : "tube"}`
  return {
    thinnest: wall === null ? THINNEST : Math.max(THINNEST, 2.01 * wall),
    at: (depth) => ({
      name,
      made,
      section: { ...noShape, wall, ...(width === null ? { outsideDiameter: depth } : { width, height: depth }) },
    }),
  }
}

/** The thinnest depth that will do, looked for in steps of 5 %, or the best of those that will not. */
function thinnest(si: Si, { thinnest: from, at }: { readonly thinnest: number; at(depth: number): Size }): Looked {
  const look = (depth: number) => judge(si, at(depth))
  let [below, best] = [from, look(from)]
  for (let depth = from; ; depth = Math.min(depth * STEP, DEEPEST)) {
    const found = look(depth)
    if (found.excess < best.excess) best = found
    if (found.fails.length === 0) {
      if (depth === from) return found
      let [fails, does] = [below, depth]
      while (does - fails > 1e-12 * does) {
        const middle = (fails + does) / 2
        if (middle <= fails || middle >= does) break
        if (look(middle).fails.length) fails = middle
        else does = middle
      }
      return look(does)
    }
    if (depth >= DEEPEST) return best
    below = depth
  }
}

/** Every size, lightest first, and of equal mass in the order given. */
function lookedAt(si: Si): readonly Looked[] {
  const free = byDepth(si)
  if (free) return [thinnest(si, free)]
  return si.search.type === "stock"
    ? si.search.sizes.map((size) => judge(si, { name: size.name, section: size.section, made: size })).sort((a, b) => a.mass - b.mass)
    : []
}

function none(si: Si, all: readonly Looked[]): NoSolution<MemberSizeRefusal> {
  const best = all.reduce((least, one) => (one.excess < least.excess ? one : least))
  const { name, depth, worst } = best
  const at = { depth }
  if (worst === "temperature") {
    const limit = Math.max(...all.map((l) => (l.size.made.material === null ? 0 : frameMaterials[l.size.made.material].limit)))
    return refuse(
      "no-candidate",
      "No size will do: all are too hot at {given.materialTemperature temperature}, for figures of their materials hold up to {limit temperature} at most. Keep it cooler, or take another material.",
      si.materialTemperature - limit,
      { limit },
      { materialTemperature: limit },
      { "given.materialTemperature": si.materialTemperature },
    )
  }
  if (worst === "deflection") {
    const maxDeflection = best.maxDeflection as number
    return refuse(
      "no-candidate",
      "No size is stiff enough: {name}, {depth length} deep, comes nearest and still bends by {maxDeflection length}, {shortBy length} more than asked for. Take a deeper section, a stiffer material or a shorter member, or prop it.",
      maxDeflection - (si.deflectionLimit as number),
      { ...at, maxDeflection },
      { deflectionLimit: maxDeflection },
      { name },
    )
  }
  const safetyFactor = (worst === "wall" ? best.wallSafetyFactor : best.safetyFactor) as number
  return refuse(
    "no-candidate",
    "No size is strong enough: {name}, {depth length} deep, comes nearest with a safety factor of {safetyFactor} against {against}, {shortBy} less than asked for. Take a deeper section, a thicker wall, a stronger material or a shorter member, or prop it.",
    si.minSafetyFactor - safetyFactor,
    { ...at, safetyFactor },
    { minSafetyFactor: safetyFactor },
    { name, against: worst === "wall" ? "buckling of its wall" : worst === "buckling" ? "buckling" : "breaking or yielding" },
  )
}

/** Second moment and section modulus that the limits ask for, at the stiffness and own weight of the size chosen. */
function required(si: Si, { size, beam: b, column: c }: Looked): Pick<MemberSize, "requiredSecondMoment" | "requiredSectionModulus"> {
  if (b)
    return {
      requiredSecondMoment:
        si.deflectionLimit === null ? null : (sectionOf(size.section).secondMoment * farthest(b.maxDeflection)) / si.deflectionLimit,
      requiredSectionModulus: (si.minSafetyFactor * Math.abs(b.maxMoment)) / (b.strength as number),
    }
  const { load, length } = si.member as Extract<Si["member"], { type: "column" }>
  const { endConstant } = c as NonNullable<typeof c>
  const wanted = si.minSafetyFactor * load * handlingCases[si.handling].factor
  return { requiredSecondMoment: (wanted * length ** 2) / (endConstant * Math.PI ** 2 * modulusOf(si, size)), requiredSectionModulus: null }
}

export function kernel(si: Si, trace?: Partial<MemberSizeTrace>): MemberSize | NoSolution<MemberSizeRefusal> {
  const all = lookedAt(si)
  const chosen = all.find((l) => l.fails.length === 0)
  if (!chosen) return none(si, all)
  if (trace) Object.assign(trace, { chosen } satisfies MemberSizeTrace)
  return {
    name: chosen.name,
    depth: chosen.depth,
    mass: chosen.mass,
    ...required(si, chosen),
    beam: chosen.beam,
    column: chosen.column,
    candidates: all.map((l) => ({
      name: l.name,
      verdict: l === chosen ? "chosen" : l.fails.length ? l.fails.join(",") : "heavier",
      mass: l.mass,
      depth: l.depth,
      safetyFactor: l.safetyFactor,
      wallSafetyFactor: l.wallSafetyFactor,
      maxDeflection: l.maxDeflection,
    })),
  }
}
