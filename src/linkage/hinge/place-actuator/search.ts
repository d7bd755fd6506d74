// Branch and bound over all placements.

import { branchAndBound, type Certified } from "../../../numeric/index.js"
import { type Box, boxesOf, startBoxes, swingBound } from "./box.js"
import { localSearch, type PlaceGoal } from "./local.js"
import type { Placement, PlaceProblem } from "./model.js"

/** Searches one goal; values are forces, or swings with their sign turned. */
export function searchPlacement(p: PlaceProblem, goal: PlaceGoal, start: Placement | null = null): Certified<Placement> {
  const { extendedLength } = p
  const seeksForce = goal.objective === "min-force"
  const { cutDown, forceBound, split } = boxesOf(p, goal.swing)
  const { tried, atSwing, towards, improve, begin } = localSearch(p, goal)
  let improvements = 0
  let looked = 0
  const known = start === null ? null : begin(start)
  let latest = known?.found ?? null
  return branchAndBound<Box, Placement>({
    boxes: cutDown(startBoxes(p)),
    bound: (box) => {
      const force = forceBound(box)
      if (seeksForce) return force
      if (force > goal.force) return null
      return -swingBound(p, box) - 1e-9
    },
    sample: (box, best) => {
      const [v, w] = [(box.v0 + box.v1) / 2, (box.w0 + box.w1) / 2]
      let hit = tried((box.u0 + box.u1) / 2, v, w, box, best)
      const u = seeksForce ? atSwing(box.u0, box.u1, v) : box.u1
      if (u !== null) hit = tried(u, v, w, box, hit?.value ?? best) ?? hit
      looked++
      if (hit === null && latest !== null && ((!seeksForce && looked < 300) || looked % 16 === 0)) hit = towards(latest, box, best)
      if (hit && improvements < (seeksForce ? 40 : 8) && !(hit.value > best - 1e-3 * Math.abs(best))) {
        improvements++
        hit = improve(hit, box)
      }
      if (hit) latest = hit.found
      return hit
    },
    isSmall: ({ u0, u1, v0, v1, w0, w1, a0, a1 }) =>
      u1 - u0 + v1 - v0 <= 1e-9 * extendedLength && w1 - w0 <= 1e-9 && (p.keepOut === null || a1 - a0 <= 1e-9),
    split,
    gap: goal.gap,
    budget: goal.budget,
    start: known,
    ...(goal.enough === undefined ? {} : { target: goal.enough }),
  })
}
