import { at, type Caution, caution, type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { linearLimit } from "../beam/index.js"
import { conditionCautions, marginCautions } from "../condition.js"
import { motionCautions } from "../data-loads.js"
import { sectionFaults } from "../section.js"
import { GERE, MATTIASSON, TIMOSHENKO_GERE, VIDOSIC } from "../sources.js"
import { placesOf } from "./kernel.js"
import type { ContinuousBeam, ContinuousBeamCaution, ContinuousBeamInput, ContinuousBeamTrace } from "./types.js"

type Si = SiOf<ContinuousBeamInput>

export function continuousBeamCautions(
  si: Si,
  out: ContinuousBeam,
  { section }: Partial<ContinuousBeamTrace>,
): Caution<ContinuousBeamCaution>[] {
  const found: Caution<ContinuousBeamCaution>[] = [...marginCautions(out.safetyFactor), ...conditionCautions(si)]
  const places = placesOf(si)
  const stretches = places.slice(1).map((to, i) => to - (places[i] as number))
  const [longest, shortest] = [Math.max(...stretches), Math.min(...stretches)]
  if (Math.abs(out.maxDeflection) > (linearLimit / 3) * longest)
    found.push(
      caution(
        "bends-far",
        "caution",
        "It bends by {maxDeflection length} on a longest stretch of {longest length}, so far that the straight-beam formula is off by 5 % or more.",
        MATTIASSON,
        { maxDeflection: out.maxDeflection, longest },
      ),
    )
  if (section?.fibre && shortest < 20 * section.fibre)
    found.push(
      caution(
        "short-beam",
        "note",
        "Its shortest stretch, {shortest length}, is less than ten times its depth: there it also deflects by shear, which is not counted and shifts load to other supports.",
        at(TIMOSHENKO_GERE, "section 6.9; the factor of ten is common practice"),
        { shortest },
      ),
    )
  const pull = -Math.min(...out.places.map((p) => p.reaction ?? 0))
  if (pull > 0)
    found.push(
      caution(
        "lifts-off",
        "caution",
        "A support would have to pull the beam down by {pull force}: unless it is held there it lifts off, and the others carry more than shown.",
        at(GERE, "chapter 4 (statics of beams)"),
        { pull },
      ),
    )
  if (si.supports.some((s) => s.type === "clamped"))
    found.push(
      caution(
        "rigid-clamp",
        "note",
        "A clamped support counts as perfectly rigid; real sockets and brackets turn a little, so the beam sags more and moments shift to the spans. Give such a support as a spring with a turning stiffness.",
        at(GERE, "section 10.2 (fixed supports)"),
      ),
    )
  found.push(...motionCautions(si.handling))
  if (si.countsOwnWeight && !(out.weight > 0))
    found.push(
      caution("weight-unknown", "note", "Its own weight is not counted: name a material or a density and a shape, or add it as a load."),
    )
  if (out.safetyFactor === null && out.bendingStress === null)
    found.push(
      caution(
        "stress-unknown",
        "caution",
        "No stress is worked out: give the distance to the outermost fibre. A safety factor of 3 or more is usual above people.",
        VIDOSIC,
      ),
    )
  return found
}

/** Smallest distance between two supports, m. */
const apart = 1e-3

export function continuousBeamFaults(si: Si): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"])]
  const beyond = (path: readonly (string | number)[], x: number) => {
    if (!(x <= si.length))
      faults.push(inconsistent(path, "{place length}", "a place within the length of {length length}", { place: x, length: si.length }))
  }
  for (const [i, s] of si.supports.entries()) {
    beyond(["supports", i, "position"], s.position)
    const near = si.supports.slice(0, i).find((other) => Math.abs(other.position - s.position) < apart)
    if (near)
      faults.push(
        inconsistent(["supports", i, "position"], "{place length}", "at least 1 mm away from the support at {other length}", {
          place: s.position,
          other: near.position,
        }),
      )
  }
  for (const [i, p] of si.forces.entries()) beyond(["forces", i, "position"], p.position)
  for (const [i, c] of si.moments.entries()) beyond(["moments", i, "position"], c.position)
  for (const [i, s] of si.distributedLoads.entries()) {
    beyond(["distributedLoads", i, "end"], s.end)
    if (!(s.end - s.start >= 1e-6))
      faults.push(
        inconsistent(["distributedLoads", i, "end"], "{end length}", "beyond its start at {start length}", { end: s.end, start: s.start }),
      )
  }
  return faults
}
