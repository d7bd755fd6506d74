// A frame as its maker describes it, turned into members, holds and loads of the solver for frames.
import { isNoSolution, type NoSolution } from "../../solver/index.js"
import { gravity } from "../beam/loads.js"
import { type Condition, conditionOf } from "../condition.js"
import { handlingCases } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import type { FrameSystem, SystemHold, SystemMember } from "../frame-system.js"
import { densityOf } from "../material-choice.js"
import { type Section, sectionOf } from "../section.js"
import type { LoadDirection, Si, SiMember } from "./types.js"

/** A member's place: length, and cosine and sine of the way from start to end. */
export interface Way {
  readonly from: number
  readonly to: number
  readonly length: number
  readonly cos: number
  readonly sin: number
}

export const nodeOf = (si: Si, name: string) => si.nodes.findIndex((n) => n.name === name)

export function wayOf(si: Si, member: SiMember): Way {
  const [from, to] = [nodeOf(si, member.from), nodeOf(si, member.to)]
  const [a, b] = [si.nodes[from], si.nodes[to]] as [Si["nodes"][number], Si["nodes"][number]]
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  return { from, to, length, cos: (b.x - a.x) / length, sin: (b.y - a.y) / length }
}

/** A load's shares across a member (to the right of the way from start to end) and along it. */
export function shares({ cos, sin }: Pick<Way, "cos" | "sin">, direction: LoadDirection): readonly [across: number, along: number] {
  if (direction === "down") return [cos, -sin]
  if (direction === "right") return [sin, cos]
  return direction === "across" ? [1, 0] : [0, 1]
}

/** A member with its figures as it stands. */
export interface Made {
  readonly member: SiMember
  readonly way: Way
  readonly section: Section
  readonly condition: Condition
}

/** Every member with its figures, or a refusal for the one that bears the lowest temperature. */
export function madeOf(si: Si): readonly Made[] | NoSolution<"too-hot"> {
  const { materialTemperature, duration } = si
  const limitOf = (m: SiMember) => (m.material === null ? Number.POSITIVE_INFINITY : frameMaterials[m.material].limit)
  const state = (m: SiMember) => {
    const { material, modulus, strength } = m
    return conditionOf({ material, modulus, strength, materialTemperature, duration })
  }
  const coolest = state(si.members.reduce((a, b) => (limitOf(b) < limitOf(a) ? b : a)))
  if (isNoSolution(coolest)) return coolest
  return si.members.map((member) => ({
    member,
    way: wayOf(si, member),
    section: sectionOf(member.section),
    condition: state(member) as Condition,
  }))
}

/** Materials whose stiffness has a range, each of which may lie at either end of it. */
export const rangedOf = (members: readonly Pick<SiMember, "material" | "modulus">[]): readonly string[] => [
  ...new Set(
    members.flatMap(({ material, modulus }) => {
      if (material === null || modulus !== null) return []
      const [low, high] = frameMaterials[material].modulus
      return low < high ? [material] : []
    }),
  ),
]

const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)

function memberOf(si: Si, { member, way, section, condition }: Made, isStiff: boolean): SystemMember {
  const modulus = isStiff ? condition.maxModulus : condition.modulus
  const factor = handlingCases[si.handling].factor
  const own = si.countsOwnWeight ? densityOf(member) * (section.weightArea as number) * gravity * factor : 0
  const on = si.loads.flatMap((l) => (l.type !== "node" && l.member === member.name ? [l] : []))
  const forces = on.flatMap((l) => (l.type === "force" ? [{ ...l, force: l.force * factor, share: shares(way, l.direction) }] : []))
  const spreads = on.flatMap((l) => (l.type === "spread" ? [{ ...l, share: shares(way, l.direction), factor }] : []))
  if (own > 0)
    spreads.push({
      ...{ type: "spread", member: member.name, startLoad: own, endLoad: own, start: 0, end: way.length, direction: "down" },
      share: shares(way, "down"),
      factor: 1,
    })
  const part = (k: 0 | 1) =>
    spreads
      .filter((s) => s.share[k] !== 0)
      .map((s) => ({
        startLoad: s.startLoad * s.factor * s.share[k],
        endLoad: s.endLoad * s.factor * s.share[k],
        start: s.start,
        end: s.end,
      }))
  return {
    from: way.from,
    to: way.to,
    bending: modulus * section.secondMoment,
    stretch: 1 / (modulus * (section.area as number)),
    turnsAtFrom: member.startJoint === "pinned",
    turnsAtTo: member.endJoint === "pinned",
    forces: forces.map((l) => ({ force: l.force * l.share[0], position: l.position })),
    distributedLoads: part(0),
    // the beam counts moments clockwise
    couples: on.flatMap((l) => (l.type === "moment" ? [{ moment: -l.moment * factor, position: l.position }] : [])),
    alongForces: forces.map((l) => ({ force: l.force * l.share[1], position: l.position })),
    alongLoads: part(1),
  }
}

/** Ways in which the supports hold, each with the place of its support. */
export function holdsOf(si: Si): readonly (SystemHold & { readonly support: number })[] {
  return si.supports.flatMap((s, support) => {
    const node = nodeOf(si, s.node)
    const hold = (way: 0 | 1 | 2, flexibility = 0) => ({ node, way, flexibility, support })
    if (s.type === "roller") return [hold(s.holds === "sideways" ? 0 : 1)]
    if (s.type !== "spring") return [hold(0), hold(1), ...(s.type === "clamped" ? [hold(2)] : [])]
    const soft = [s.sidewaysStiffness, s.upStiffness, s.turningStiffness]
    return soft.flatMap((k, way) => (k === null ? [] : [hold(way as 0 | 1 | 2, 1 / k)]))
  })
}

/** The frame with the materials named in `stiff` at the stiff end of their range, the others at the soft end. */
export function systemOf(si: Si, made: readonly Made[], stiff: readonly string[]): FrameSystem {
  const factor = handlingCases[si.handling].factor
  return {
    nodes: si.nodes.map(({ x, y }) => ({ x, y })),
    members: made.map((m) => memberOf(si, m, m.member.modulus === null && stiff.includes(m.member.material ?? ""))),
    holds: holdsOf(si),
    loads: si.nodes.map(({ name }) => {
      const here = si.loads.flatMap((l) => (l.type === "node" && l.node === name ? [l] : []))
      return [factor * sum(here.map((l) => l.right)), factor * sum(here.map((l) => l.up)), factor * sum(here.map((l) => l.moment))] as const
    }),
  }
}
