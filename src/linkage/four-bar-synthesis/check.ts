// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import { countAlong, mostPinsOnLine } from "./dyads.js"
import type { Si } from "./types.js"

/** Most links tried: their pairs grow with the square. */
const MOST_LINKS = 400

/** A region whose edges are the wrong way round. */
function edgeFault(region: string, edge: "right" | "top", at: number, other: "left" | "bottom", otherAt: number): Issue {
  const [path, otherPath] = [`${region}.${edge}`, `${region}.${other}`]
  const [received, expected]: string[] = [`{${path} length}`, `at least {${otherPath} length}, its opposite edge`]
  return inconsistent([region, edge], received as string, expected as string, { [path]: at, [otherPath]: otherAt })
}

export function synthesisFaults(si: Si): Issue[] {
  const found: Issue[] = []
  for (const name of ["fixedPivotRegion", "movingPivotRegion"] as const) {
    const { left, right, bottom, top } = si[name]
    if (right < left) found.push(edgeFault(name, "right", right, "left", left))
    if (top < bottom) found.push(edgeFault(name, "top", top, "bottom", bottom))
  }
  const { low, high } = si.linkLengths
  if (high <= low)
    found.push(
      inconsistent(["linkLengths", "high"], "{linkLengths.high length}", "more than {linkLengths.low length}, the shortest link", {
        "linkLengths.high": high,
        "linkLengths.low": low,
      }),
    )
  si.poses.forEach((pose, i) => {
    const before = si.poses.slice(0, i).some((p) => p.x === pose.x && p.y === pose.y && p.angle === pose.angle)
    if (before) found.push(inconsistent(["poses", i], "the same pose a second time", "poses that differ"))
  })
  if (found.length) return found
  const { left, right, bottom, top } = si.fixedPivotRegion
  const pivots = countAlong(left, right, si.step) * countAlong(bottom, top, si.step)
  const links = pivots * (si.poses.length === 2 ? mostPinsOnLine(si.movingPivotRegion, si.step) : 1)
  if (links > MOST_LINKS)
    found.push(
      inconsistent(
        ["step"],
        "{step length}, which gives up to {links} links to pair",
        "a step that gives at most {most}, or a smaller region",
        {
          step: si.step,
          links,
          most: MOST_LINKS,
        },
      ),
    )
  return found
}
