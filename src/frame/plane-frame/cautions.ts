import { at, type Caution, caution } from "../../solver/index.js"
import { linearLimit } from "../beam/index.js"
import { pullDown } from "../beam/strength.js"
import { conditionCautions, leastSafetyFactor, marginCautions } from "../condition.js"
import { motionCautions } from "../data-loads.js"
import { densityOf } from "../material-choice.js"
import { EN_1993_1, GERE, MATTIASSON, TIMOSHENKO_STABILITY, VIDOSIC } from "../sources.js"
import { wallCaution } from "../thin-wall.js"
import type { PlaneFrame, PlaneFrameCaution, Si } from "./types.js"

/** Factor below which sway adds to the moments more than a tenth. */
const FIRST_ORDER = 10

/** Cautions of every material or bare figure in the frame, once each, with the paths of the first member made of it. */
function materialsTold(si: Si): Caution<PlaneFrameCaution>[] {
  const keys = si.members.map(({ material, modulus, strength }) => JSON.stringify([material, modulus, strength]))
  return si.members.flatMap(({ material, modulus, strength }, i) => {
    if (keys.indexOf(keys[i] as string) !== i) return []
    const { materialTemperature, duration } = si
    return conditionCautions({ material, modulus, strength, materialTemperature, duration }).map((c) => ({
      ...c,
      values: Object.fromEntries(
        Object.entries(c.values).map(([name, v]) => [
          name.startsWith("given.") ? name.replace(/^given\.(strength|modulus)$/, `given.members.${i}.$1`) : `members.${i}.${name}`,
          v,
        ]),
      ),
    }))
  })
}

function stabilityTold({ stability }: PlaneFrame): Caution<PlaneFrameCaution>[] {
  if (stability === null || stability.bucklingFactor >= FIRST_ORDER) return []
  const values = { "stability.bucklingFactor": stability.bucklingFactor }
  return [
    stability.bucklingFactor < leastSafetyFactor
      ? caution(
          "buckles",
          "warning",
          "The whole frame buckles in its plane at {stability.bucklingFactor} times this load, below the 3 that is usual: it folds up suddenly onto whoever is beneath. Brace it, shorten or stiffen what is pushed, or hold its foot against turning.",
          TIMOSHENKO_STABILITY,
          values,
        )
      : caution(
          "second-order",
          "caution",
          "It buckles at {stability.bucklingFactor} times this load: below 10, sway adds to moments and movements, which is not counted. Brace or stiffen it.",
          at(EN_1993_1, "clause 5.2.1(3): second-order effects count below 10"),
          values,
        ),
  ]
}

export function planeFrameCautions(si: Si, out: PlaneFrame): Caution<PlaneFrameCaution>[] {
  const found: Caution<PlaneFrameCaution>[] = [...marginCautions(out.safetyFactor), ...stabilityTold(out), ...materialsTold(si)]
  const thin = out.members.filter((m) => m.wallSafetyFactor !== null && m.wallSafetyFactor < leastSafetyFactor)
  if (thin.length) {
    const { name, wallSafetyFactor } = thin.reduce((a, b) => ((b.wallSafetyFactor as number) < (a.wallSafetyFactor as number) ? b : a))
    found.push(wallCaution(name, wallSafetyFactor as number))
  }
  const longest = Math.max(...out.members.map((m) => m.length))
  if (out.maxDisplacement > (linearLimit / 3) * longest)
    found.push(
      caution(
        "bends-far",
        "caution",
        "A node moves by {maxDisplacement length} and the longest member is {longest length}: so far that straight-beam formulae are off by 5 % or more.",
        MATTIASSON,
        { maxDisplacement: out.maxDisplacement, longest },
      ),
    )
  const pull = pullDown(out.supports.map((s) => s.up ?? 0))
  if (pull > 0)
    found.push(
      caution(
        "lifts-off",
        "caution",
        "A support would have to pull the frame down by {pull force}: unless it is held there it lifts off, and the others carry more than shown.",
        at(GERE, "chapter 4 (statics of beams)"),
        { pull },
      ),
    )
  if (si.supports.some((s) => s.type === "clamped"))
    found.push(
      caution(
        "rigid-clamp",
        "note",
        "A clamped support counts as perfectly rigid; real sockets and brackets turn a little, so the frame moves more. Give it as a pinned support and a spring with a turning stiffness.",
        at(GERE, "section 10.2 (fixed supports)"),
      ),
    )
  found.push(
    caution(
      "in-its-plane",
      "note",
      "Only what happens in its plane is told, with joints and welds as strong as their members: hold it sideways too, and judge the joints by themselves.",
      at(GERE, "chapter 4 (plane structures)"),
    ),
  )
  found.push(...motionCautions(si.handling))
  if (si.countsOwnWeight && si.members.some((m) => !(densityOf(m) > 0)))
    found.push(
      caution(
        "weight-unknown",
        "note",
        "The own weight of some members is not counted: name a material or a density, or add it as a load.",
      ),
    )
  if (si.members.some((m) => m.material === null && m.strength === null))
    found.push(
      caution(
        "strength-unknown",
        "caution",
        "No safety factor is told of members whose strength is not known: give it, or name the material. A safety factor of 3 or more is usual above people.",
        VIDOSIC,
      ),
    )
  return found
}
