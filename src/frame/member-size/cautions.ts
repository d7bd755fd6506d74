import { type Caution, type Issue, inconsistent } from "../../solver/index.js"
import { beam } from "../beam/index.js"
import { beyondEnd, loadFaults } from "../beam/loads.js"
import { column } from "../column/index.js"
import { leastSafetyFactor } from "../condition.js"
import { wholeSectionFaults } from "../section.js"
import { wallCaution } from "../thin-wall.js"
import { beamOf, columnOf } from "./kernel.js"
import type { MemberSize, MemberSizeCaution, MemberSizeTrace, Si } from "./types.js"

/** A name in a message of the size chosen, as a path in this solver's own input or result. */
function pathOf(si: Si, name: string, part: "beam" | "column", index: number): string {
  if (!name.startsWith("given."))
    return (name.split(".")[0] as string) in (part === "beam" ? beam : column).output ? `${part}.${name}` : name
  const field = name.slice("given.".length)
  if (field in si) return name
  if (field in si.member) return `given.member.${field}`
  return si.search.type === "stock" ? `given.search.sizes.${index}.${field}` : `given.search.${field}`
}

export function memberSizeCautions(si: Si, out: MemberSize, { chosen }: Partial<MemberSizeTrace>): Caution<MemberSizeCaution>[] {
  if (!chosen) return []
  const { size } = chosen
  const [asBeam, asColumn] = [beamOf(si, size), columnOf(si, size)]
  const told = asBeam ? beam.attempt(asBeam) : column.attempt(asColumn)
  const index = si.search.type === "stock" ? si.search.sizes.findIndex((s) => s.section === size.section) : 0
  // a size is described so well that stress, weight and strength are never unknown
  const found = (told.ok ? told.value.cautions : []).map((c) => ({
    ...c,
    values: Object.fromEntries(Object.entries(c.values).map(([name, v]) => [pathOf(si, name, asBeam ? "beam" : "column", index), v])),
  })) as Caution<MemberSizeCaution>[]
  const margin = chosen.wallSafetyFactor
  if (margin !== null && margin < leastSafetyFactor) found.push(wallCaution(out.name, margin))
  return found
}

export function memberSizeFaults(si: Si): Issue[] {
  const { member, search } = si
  const faults: Issue[] = []
  if (member.type === "beam") {
    if (member.span !== null) {
      if (member.support === "cantilever") faults.push(inconsistent(["member", "span"], "a span", "no span for a cantilever"))
      faults.push(...beyondEnd(member, ["member", "span"], member.span))
    }
    faults.push(...loadFaults(member, ["member"]))
  } else if (si.deflectionLimit !== null)
    faults.push(inconsistent(["deflectionLimit"], "a deflection", "no acceptable deflection for a column"))
  if (search.type === "rectangular" && search.wall !== null && !(search.wall < search.width / 2))
    faults.push(
      inconsistent(["search", "wall"], "{wall length}", "less than half of {width length}; leave wall out for a solid bar", {
        wall: search.wall,
        width: search.width,
      }),
    )
  if (search.type === "stock")
    for (const [i, { section }] of search.sizes.entries()) faults.push(...wholeSectionFaults(section, ["search", "sizes", i, "section"]))
  return faults
}
