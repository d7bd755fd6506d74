// Faults between the fields of a frame.
import { type Issue, inconsistent } from "../../solver/index.js"
import { conditionOf } from "../condition.js"
import { sectionOf, wholeSectionFaults } from "../section.js"
import { holdsOf, nodeOf, rangedOf, wayOf } from "./build.js"
import type { Si } from "./types.js"

/** Most materials of uncertain stiffness: each doubles the number of frames to solve. */
export const MOST_RANGED = 3
/**
 * Most that one part may give against another. Rounding of the stiffest part beside the softest grows by the cube of the members in a
 * row, as a row's own softness does: up to here it stays below a thousandth or so of the buckling factor.
 */
export const mostUnlike = (members: number): number => Math.min(1e10, 1e-3 / Number.EPSILON / members ** 3)
/** Shortest member, m. */
const SHORTEST = 1e-3

const firstOf = (names: readonly string[], i: number) => names.indexOf(names[i] as string) === i

function nameFaults(si: Si): Issue[] {
  const faults: Issue[] = []
  const nodes = si.nodes.map((n) => n.name)
  const members = si.members.map((m) => m.name)
  for (const [i, name] of nodes.entries()) {
    if (!firstOf(nodes, i)) faults.push(inconsistent(["nodes", i, "name"], "{name}", "a name that no other node has", { name }))
    else if (!si.members.some((m) => m.from === name || m.to === name))
      faults.push(inconsistent(["nodes", i, "name"], "{name}", "a node at which a member ends", { name }))
  }
  const unknown = (path: readonly (string | number)[], name: string, known: readonly string[], what: string) => {
    if (!known.includes(name))
      faults.push(inconsistent(path, "{name}", "one of the {what}: {known}", { name, what, known: known.join(", ") }))
  }
  for (const [i, { name, from, to }] of si.members.entries()) {
    if (!firstOf(members, i)) faults.push(inconsistent(["members", i, "name"], "{name}", "a name that no other member has", { name }))
    unknown(["members", i, "from"], from, nodes, "nodes")
    unknown(["members", i, "to"], to, nodes, "nodes")
    if (from === to) faults.push(inconsistent(["members", i, "to"], "{to}", "another node than its start", { to }))
  }
  for (const [i, { node }] of si.supports.entries()) unknown(["supports", i, "node"], node, nodes, "nodes")
  for (const [i, load] of si.loads.entries())
    if (load.type === "node") unknown(["loads", i, "node"], load.node, nodes, "nodes")
    else unknown(["loads", i, "member"], load.member, members, "members")
  return faults
}

/** Faults of a frame whose names are all known. */
function placeFaults(si: Si): Issue[] {
  const faults: Issue[] = []
  for (const [i, member] of si.members.entries()) {
    const { length } = wayOf(si, member)
    if (!(length >= SHORTEST))
      faults.push(
        inconsistent(["members", i, "to"], "{length length} away", "at least {shortest length} away from the start", {
          length,
          shortest: SHORTEST,
        }),
      )
  }
  const holds = holdsOf(si)
  for (const [k, h] of holds.entries())
    if (holds.slice(0, k).some((other) => other.node === h.node && other.way === h.way && other.support !== h.support))
      faults.push(
        inconsistent(["supports", h.support, "node"], "{name}", "a node that no other support holds in the same way", {
          name: si.supports[h.support]?.node as string,
        }),
      )
  const lengths = new Map(si.members.map((m) => [m.name, wayOf(si, m).length]))
  for (const [i, load] of si.loads.entries()) {
    if (load.type === "node") {
      const n = nodeOf(si, load.node)
      const turns =
        holds.some((h) => h.node === n && h.way === 2) ||
        si.members.some((m) => (m.from === load.node && m.startJoint === "rigid") || (m.to === load.node && m.endJoint === "rigid"))
      if (load.moment !== 0 && !turns)
        faults.push(
          inconsistent(["loads", i, "moment"], "{moment moment}", "no moment where only pinned ends meet", { moment: load.moment }),
        )
      continue
    }
    const length = lengths.get(load.member) as number
    const field = load.type === "spread" ? "end" : "position"
    const place = load.type === "spread" ? load.end : load.position
    if (place > length)
      faults.push(inconsistent(["loads", i, field], "{place length}", "a place within the length of {length length}", { place, length }))
    if (load.type === "spread" && !(load.end - load.start >= 1e-6))
      faults.push(
        inconsistent(["loads", i, "end"], "{end length}", "beyond its start at {start length}", { end: load.end, start: load.start }),
      )
  }
  return faults
}

/** How far each part of the frame gives for a newton, m/N. */
export function gives(si: Si): readonly number[] {
  const { materialTemperature, duration } = si
  const size = Math.max(...si.members.map((m) => wayOf(si, m).length))
  return [
    ...si.members.flatMap((member) => {
      const { material, modulus: given, strength } = member
      const condition = conditionOf({ material, modulus: given, strength, materialTemperature, duration })
      const section = sectionOf(member.section)
      const { length } = wayOf(si, member)
      // too hot is the kernel's to say
      if (!("modulus" in condition) || section.area === null) return []
      const bent =
        member.startJoint === "pinned" && member.endJoint === "pinned" ? [] : [length ** 3 / (3 * condition.modulus * section.secondMoment)]
      return [length / (condition.modulus * section.area), ...bent]
    }),
    ...holdsOf(si).flatMap((h) => (h.flexibility > 0 ? [h.flexibility * (h.way === 2 ? size ** 2 : 1)] : [])),
  ]
}

export function planeFrameFaults(si: Si): Issue[] {
  const faults = nameFaults(si)
  if (faults.length === 0) faults.push(...placeFaults(si))
  for (const [i, { section }] of si.members.entries()) faults.push(...wholeSectionFaults(section, ["members", i, "section"]))
  const ranged = rangedOf(si.members).length
  if (ranged > MOST_RANGED)
    faults.push(
      inconsistent(["members"], "{ranged} materials whose stiffness has a range", "at most {most}: give the modulus of some", {
        ranged,
        most: MOST_RANGED,
      }),
    )
  if (faults.length) return faults
  const all = gives(si)
  const ratio = Math.max(...all) / Math.min(...all)
  const most = mostUnlike(si.members.length)
  if (ratio > most)
    faults.push(
      inconsistent(
        ["members"],
        "members and springs of which one gives {ratio} times as much as another",
        "at most {most} times: count a very stiff one as part of its neighbours, or leave a very soft one out",
        { ratio, most },
      ),
    )
  return faults
}
