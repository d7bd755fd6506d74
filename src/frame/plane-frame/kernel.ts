import { isNoSolution, type NoSolution, refuse } from "../../solver/index.js"
import { type BeamSpread, beamCurve } from "../beam/curve.js"
import { gravity } from "../beam/loads.js"
import { leastStress } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { looseness, type SolvedFrame, type SystemMember, solveFrame } from "../frame-system.js"
import { densityOf } from "../material-choice.js"
import { wallBuckling } from "../thin-wall.js"
import { bucklingFactor } from "./buckling.js"
import { holdsOf, type Made, madeOf, rangedOf, systemOf } from "./build.js"
import type { MemberForces, PlaneFrame, PlaneFrameRefusal, PlaneFrameTrace, Si, SolvedAt } from "./types.js"

/** Largest and smallest pull along a member, N: at its ends, where loads lie, and where the load along it changes its sign. */
export function pulls(
  { alongForces, alongLoads }: SystemMember,
  length: number,
  pullStart: number,
): readonly [most: number, least: number] {
  const passed = (q: BeamSpread, x: number) => {
    const d = Math.min(Math.max(x - q.start, 0), q.end - q.start)
    return q.startLoad * d + ((q.endLoad - q.startLoad) * d ** 2) / 2 / (q.end - q.start)
  }
  const pullAt = (x: number, counts: (position: number) => boolean) =>
    pullStart -
    alongForces.reduce((sum, f) => sum + (counts(f.position) ? f.force : 0), 0) -
    alongLoads.reduce((sum, q) => sum + passed(q, x), 0)
  const places = [0, length, ...alongForces.map((f) => f.position), ...alongLoads.flatMap((q) => [q.start, q.end])].sort((a, b) => a - b)
  const found = places.flatMap((x) => [pullAt(x, (p) => p < x), pullAt(x, (p) => p <= x)])
  places.slice(1).forEach((to, i) => {
    const from = places[i] as number
    const loadAt = (x: number) =>
      alongLoads.reduce(
        (sum, q) =>
          sum + (from >= q.start && to <= q.end ? q.startLoad + ((q.endLoad - q.startLoad) * (x - q.start)) / (q.end - q.start) : 0),
        0,
      )
    const [a, b] = [loadAt(from), loadAt(to)]
    if (a > 0 !== b > 0 && a !== b) {
      const x = from + ((to - from) * a) / (a - b)
      found.push(pullAt(x, (p) => p <= from))
    }
  })
  return [Math.max(...found), Math.min(...found)]
}

interface Peaks {
  readonly pull: number
  readonly push: number
  readonly shear: number
  readonly moment: { readonly value: number; readonly at: number }
  readonly deflection: number
}

/** The largest of everything along one member in one solved frame. */
function peaksOf({ system, frame }: SolvedAt, index: number): Peaks {
  const stretch = frame.stretchOf(index)
  const curve = beamCurve(stretch)
  const [most, least] = pulls(
    system.members[index] as SystemMember,
    stretch.length,
    (frame.ends[index] as SolvedFrame["ends"][number]).pullStart,
  )
  const moment = curve.greatest("moment")
  return {
    pull: Math.max(0, most),
    push: Math.max(0, 0 - least),
    shear: Math.abs(curve.greatest("shear").value),
    moment: { value: moment.value, at: moment.at },
    deflection: Math.abs(curve.greatest("deflection").value),
  }
}

/** The larger of two beyond rounding, so that symmetry gives one answer: the first. */
const larger = <T>(a: T, b: T, size: (one: T) => number) => (size(b) > size(a) * (1 + 1e-9) ? b : a)

function forcesOf({ member, way, section, condition }: Made, all: readonly Peaks[]): MemberForces {
  const most = (of: (p: Peaks) => number) => Math.max(...all.map(of))
  const [maxPull, maxPush, maxShearForce] = [most((p) => p.pull), most((p) => p.push), most((p) => p.shear)]
  const moment = all.map((p) => p.moment).reduce((a, b) => larger(a, b, (m) => Math.abs(m.value)))
  const along = Math.max(maxPull, maxPush) / (section.area as number)
  const stress = along + (Math.abs(moment.value) * (section.fibre as number)) / section.secondMoment
  const shearStress =
    section.firstMoment === null || section.shearWidth === null
      ? null
      : (maxShearForce * section.firstMoment) / (section.secondMoment * section.shearWidth)
  const { strength, shearStrength } = condition
  const isStressed = Math.max(stress, shearStress ?? 0) > leastStress
  const wall = isStressed ? wallBuckling(section, member.material, condition.modulus) : null
  return {
    name: member.name,
    length: way.length,
    maxPull,
    maxPush,
    maxShearForce,
    maxMoment: moment.value,
    maxMomentPosition: moment.at,
    maxDeflection: most((p) => p.deflection),
    stress,
    shearStress,
    safetyFactor:
      strength === null || shearStrength === null || !isStressed
        ? null
        : 1 / Math.max(stress / strength, (shearStress ?? 0) / shearStrength),
    wallSafetyFactor: wall && wall.axial / Math.max(stress, leastStress),
  }
}

/** Every choice of which materials stand at the stiff end of their range; all at the soft end first. */
const choices = (materials: readonly string[]): readonly (readonly string[])[] =>
  Array.from({ length: 2 ** materials.length }, (_, bits) => materials.filter((_, k) => (bits >> k) & 1))

const ways = ["slide sideways", "move up and down", "turn"] as const

export function kernel(si: Si, trace?: Partial<PlaneFrameTrace>): PlaneFrame | NoSolution<PlaneFrameRefusal> {
  const made = madeOf(si)
  if (isNoSolution(made)) return made
  const loose = looseness(systemOf(si, made, []))
  if (loose !== null)
    return refuse(
      "unstable",
      "Nothing keeps the frame still: node {name} can {move}, and the frame has {motions} such motions in all. Add a support or a brace, or make a joint rigid.",
      loose.motions,
      { motions: loose.motions },
      {},
      { name: (si.nodes[loose.node] as Si["nodes"][number]).name, move: ways[loose.way] },
    )
  const solved = choices(rangedOf(si.members)).map((stiff): SolvedAt => {
    const system = systemOf(si, made, stiff)
    return { system, frame: solveFrame(system) }
  })
  const soft = solved[0] as SolvedAt
  const peaks = solved.map((s) => made.map((_, i) => peaksOf(s, i)))
  const members = made.map((m, i) =>
    forcesOf(
      m,
      peaks.map((p) => p[i] as Peaks),
    ),
  )
  const reach = (moves: SolvedFrame["moves"]) => Math.max(...moves.map(([x, y]) => Math.hypot(x, y)))
  const farthest = solved.map((s) => s.frame.moves).reduce((a, b) => larger(a, b, reach))
  if (trace) Object.assign(trace, { soft, farthest } satisfies PlaneFrameTrace)
  const known = members.flatMap((m) => (m.safetyFactor === null ? [] : [{ name: m.name, safetyFactor: m.safetyFactor }]))
  const weakest = known.length ? known.reduce((a, b) => (b.safetyFactor < a.safetyFactor ? b : a)) : null
  const rounding = 1e-9 * Math.max(...members.map((m) => Math.max(m.maxPull, m.maxPush, m.maxShearForce)))
  const factors = solved.flatMap((s) => {
    // a member counts as pushed by its largest push, pulled by its smallest pull, all along
    const pushes = made.map((_, i) => {
      const stretch = s.frame.stretchOf(i)
      const { pullStart } = s.frame.ends[i] as SolvedFrame["ends"][number]
      return -pulls(s.system.members[i] as SystemMember, stretch.length, pullStart)[1]
    })
    const factor = bucklingFactor(s.system, pushes, rounding)
    return factor === null ? [] : [factor]
  })
  const holds = holdsOf(si)
  const turnsAt = (n: number) =>
    holds.some((h) => h.node === n && h.way === 2) ||
    soft.system.members.some((m) => (m.from === n && !m.turnsAtFrom) || (m.to === n && !m.turnsAtTo))
  return {
    nodes: si.nodes.map(({ name }, n) => {
      const [right, up, turn] = (soft.frame.moves[n] as SolvedFrame["moves"][number]).map((moved, way) =>
        holds.some((h) => h.node === n && h.way === way && h.flexibility === 0) ? 0 : moved,
      ) as [number, number, number]
      return { name, right, up, turn: turnsAt(n) ? turn : null }
    }),
    supports: si.supports.map((s, support) => {
      const exerted = (way: 0 | 1 | 2) => {
        const k = holds.findIndex((h) => h.support === support && h.way === way)
        return k < 0 ? null : (soft.frame.reactions[k] as number)
      }
      return { node: s.node, right: exerted(0), up: exerted(1), moment: exerted(2) }
    }),
    members,
    safetyFactor: weakest?.safetyFactor ?? null,
    weakest: weakest?.name ?? "",
    stability: factors.length ? { bucklingFactor: Math.min(...factors) } : null,
    maxDisplacement: reach(farthest),
    weight: si.countsOwnWeight
      ? made.reduce((sum, m) => sum + densityOf(m.member) * (m.section.weightArea as number) * m.way.length, 0) * gravity
      : 0,
    loadFactor: handlingCases[si.handling].factor,
  }
}
