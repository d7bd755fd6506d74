import { at, type Caution, caution, type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { linearLimit } from "../beam/index.js"
import { beyondEnd, loadFaults } from "../beam/loads.js"
import { pullDown, unknownCautions } from "../beam/strength.js"
import { conditionCautions, farthest, marginCautions } from "../condition.js"
import { motionCautions } from "../data-loads.js"
import { sectionFaults } from "../section.js"
import { GERE, MATTIASSON, TIMOSHENKO_GERE } from "../sources.js"
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
  const deflection = farthest(out.maxDeflection)
  if (deflection > (linearLimit / 3) * longest)
    found.push(
      caution(
        "bends-far",
        "caution",
        "It bends by {deflection length} on a longest stretch of {longest length}, so far that the straight-beam formula is off by 5 % or more.",
        MATTIASSON,
        { deflection, longest },
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
  const pull = pullDown(out.places.map((p) => p.reaction ?? 0))
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
  found.push(...unknownCautions(si, out))
  return found
}

/** Smallest distance between two supports, m. */
const apart = 1e-3

export function continuousBeamFaults(si: Si): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"])]
  for (const [i, s] of si.supports.entries()) {
    faults.push(...beyondEnd(si, ["supports", i, "position"], s.position))
    const near = si.supports.slice(0, i).find((other) => Math.abs(other.position - s.position) < apart)
    if (near)
      faults.push(
        inconsistent(["supports", i, "position"], "{place length}", "at least 1 mm away from the support at {other length}", {
          place: s.position,
          other: near.position,
        }),
      )
  }
  faults.push(...loadFaults(si))
  return faults
}
