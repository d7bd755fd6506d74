// The search: every pair of links tried, those that pass ranked.

import { type NoSolution, refuse } from "../../solver/index.js"
import { type Dyad, dyadsOf } from "./dyads.js"
import { type Passage, passageOf } from "./pairs.js"
import type { FourBarSynthesis, FourBarSynthesisRefusal, Si, SynthesisedFourBar, SynthesisTally } from "./types.js"

/** Smallest transmission limit that can be asked for, rad. */
export const LEAST_LIMIT = Math.PI / 1800

interface Found {
  readonly drive: Dyad
  readonly follow: Dyad
  readonly ground: number
  readonly coupler: number
  readonly passage: Passage
  readonly size: number
}

/** Whether one linkage is better than another: by what is sought, then by the other measure. */
function isBetter(si: Si, p: Found, q: Found): boolean {
  const [sizes, angles] = [q.size - p.size, p.passage.minTransmissionAngle - q.passage.minTransmissionAngle]
  const [first, second] = si.objective === "smallest" ? [sizes, angles] : [angles, sizes]
  return first > 0 || (first === 0 && second > 0)
}

/** The linkage as it is told. */
function told(si: Si, { drive, follow, ground, coupler, passage, size }: Found): SynthesisedFourBar {
  const line = Math.atan2(follow.pin.y - drive.pin.y, follow.pin.x - drive.pin.x)
  const { inputAngles, branch, minTransmissionAngle } = passage
  return {
    inputPivot: drive.pivot,
    outputPivot: follow.pivot,
    inputPin: drive.pin,
    outputPin: follow.pin,
    ground,
    input: drive.length,
    coupler,
    output: follow.length,
    branch,
    groundAngle: Math.atan2(follow.pivot.y - drive.pivot.y, follow.pivot.x - drive.pivot.x),
    inputAngles,
    inputTravel: (inputAngles[si.poses.length - 1] as number) - (inputAngles[0] as number),
    minTransmissionAngle,
    size,
    pointRadius: Math.hypot(drive.pin.x, drive.pin.y),
    pointAngle: Math.atan2(-drive.pin.y, -drive.pin.x) - line,
    axisAngle: -line,
  }
}

/** Tries every pair of links. */
function searched(si: Si): { readonly best: readonly Found[]; readonly tally: SynthesisTally; readonly nearest: number } {
  const links = dyadsOf(si)
  const { low, high } = si.linkLengths
  const tally = { pairs: 0, outOfLength: 0, changeBranch: 0, outOfOrder: 0, poorTransmission: 0, passed: 0 }
  const best: Found[] = []
  let nearest = 0
  for (const drive of links)
    for (const follow of links) {
      if (drive === follow) continue
      tally.pairs++
      const ground = Math.hypot(follow.pivot.x - drive.pivot.x, follow.pivot.y - drive.pivot.y)
      const coupler = Math.hypot(follow.pin.x - drive.pin.x, follow.pin.y - drive.pin.y)
      if (ground < low || ground > high || coupler < low || coupler > high) {
        tally.outOfLength++
        continue
      }
      const passage = passageOf(si, drive, follow, ground, coupler)
      if (typeof passage === "string") {
        tally[passage]++
        continue
      }
      nearest = Math.max(nearest, passage.minTransmissionAngle)
      if (passage.minTransmissionAngle < si.transmissionLimit) {
        tally.poorTransmission++
        continue
      }
      tally.passed++
      const found = { drive, follow, ground, coupler, passage, size: ground + drive.length + coupler + follow.length }
      const place = best.findIndex((other) => isBetter(si, found, other))
      if (place >= 0) best.splice(place, 0, found)
      else if (best.length < si.listed) best.push(found)
      if (best.length > si.listed) best.pop()
    }
  return { best, tally: { links: links.length, ...tally }, nearest }
}

/** Why most pairs fail. */
function causeOf({ pairs, outOfLength, changeBranch, outOfOrder }: SynthesisTally): string {
  if (pairs === 0) return "fewer than two links have their pins in the region and a length that is allowed"
  if (outOfLength >= Math.max(changeBranch, outOfOrder)) return "most have fixed pivots or pins too close together or too far apart"
  return changeBranch >= outOfOrder
    ? "most would have to be taken apart between two poses"
    : "most pass the poses in another order, or turn the other way"
}

/** The best linkages within the regions, or why there is none. */
export function solve(si: Si): FourBarSynthesis | NoSolution<FourBarSynthesisRefusal> {
  const { best, tally, nearest } = searched(si)
  const solutions = best.map((found) => told(si, found))
  const [first] = solutions
  if (!first)
    return tally.poorTransmission > 0
      ? refuse(
          "poor-transmission",
          "Linkages among the {pairs} pairs of links pass the poses in order on one branch, but the best falls to a transmission angle of {best angle °}, {shortBy angle °} below the limit. Give the pivots wider regions or a smaller step, or move a pose.",
          si.transmissionLimit - nearest,
          { pairs: tally.pairs },
          nearest >= LEAST_LIMIT ? { transmissionLimit: nearest } : {},
          { best: nearest },
        )
      : refuse(
          "no-candidate",
          "None of {pairs} pairs of links passes the poses in order on one branch: {cause}. Give the pivots wider regions or a smaller step, allow other lengths, or move a pose.",
          1,
          { pairs: tally.pairs },
          {},
          { cause: causeOf(tally) },
        )
  const { minTransmissionAngle, size, ground, input, coupler, output, inputTravel } = first
  return { minTransmissionAngle, size, ground, input, coupler, output, inputTravel, solutions, tried: tally }
}
