// The largest force over the stroke, in each way of travel and at rest.

import { brent } from "../../../numeric/index.js"
import type { HingeGeometry } from "../geometry.js"
import { type HingeLoads, type HingeStatics, hingeStaticsAt } from "../load.js"
import { type HingeSlopes, hingeSlopesAt, slackAngles } from "../slopes.js"

/** A pose at which a force is largest in size, and the loads that make it so. */
export interface Peak {
  readonly angle: number
  readonly length: number
  /** Size of the force, N. */
  readonly size: number
  readonly loads: HingeLoads
}

/** The three forces of a pose. */
const FORCES = ["extendForce", "retractForce", "force"] as const
type Which = (typeof FORCES)[number]

interface Node {
  readonly angle: number
  readonly at: HingeStatics
}

/** Share of the swing kept from an angle at which a force jumps: to either side of it, never on it. */
const ASIDE = 1e-9

/** Poses on every stretch of the swing on which nothing jumps. */
function stretches(g: HingeGeometry, loads: HingeLoads, samples: readonly Node[]): Node[][] {
  const first = samples[0] as Node
  const last = samples[samples.length - 1] as Node
  const way = Math.sign(last.angle - first.angle)
  const jumps = slackAngles(g, loads, first.angle, last.angle).sort((a, b) => way * (a - b))
  if (jumps.length === 0) return [samples as Node[]]
  const aside = ASIDE * Math.abs(last.angle - first.angle)
  const node = (angle: number): Node => ({ angle, at: hingeStaticsAt(g, loads, angle) })
  const found: Node[][] = []
  let rest = samples as Node[]
  for (const jump of jumps) {
    const before = rest.filter(({ angle }) => way * (jump - angle) > aside)
    const after = rest.filter(({ angle }) => way * (angle - jump) > aside)
    found.push([...before, node(jump - way * aside)])
    rest = [node(jump + way * aside), ...after]
  }
  found.push(rest)
  // an end of the stroke may lie as near to a jump: what is beyond it is no pose of the stroke
  return found.map((nodes) => nodes.filter(({ angle }) => way * (angle - first.angle) >= 0 && way * (last.angle - angle) >= 0))
}

/**
 * Where each force is largest in size over the swing, whichever of the `cases` of loads works: at an end, beside a jump, or where
 * its derivative in closed form changes sign between two poses (bracketed root).
 */
export function peaksOver(
  g: HingeGeometry,
  cases: readonly HingeLoads[],
  samplesOf: (loads: HingeLoads) => readonly Node[],
): Record<Which, Peak> {
  const best: Partial<Record<Which, Peak>> = {}
  const parts = cases.map((loads) => ({ loads, nodes: stretches(g, loads, samplesOf(loads)) }))
  const offer = (which: Which, { angle, at }: Node, loads: HingeLoads) => {
    const size = Math.abs(at[which])
    const so = best[which]
    if (so === undefined || size > so.size) best[which] = { angle, length: at.length, size, loads }
  }
  for (const { loads, nodes } of parts)
    for (const stretch of nodes) for (const node of stretch) for (const which of FORCES) offer(which, node, loads)
  const tops = { ...best } as Record<Which, Peak>
  for (const { loads, nodes } of parts)
    for (const stretch of nodes) {
      const slopes: (HingeSlopes | undefined)[] = []
      const slopeAt = (i: number): HingeSlopes => {
        slopes[i] ??= hingeSlopesAt(g, loads, (stretch[i] as Node).angle, (stretch[i] as Node).at)
        return slopes[i] as HingeSlopes
      }
      for (const which of FORCES) {
        const top = 0.9 * tops[which].size
        for (let i = 0; i < stretch.length; i++) {
          const here = (stretch[i] as Node).at[which]
          const sign = here < 0 ? -1 : 1
          if (sign * here < top) continue
          for (const next of [i - 1, i + 1]) {
            const other = stretch[next]
            // each gap between two poses once, from its higher end
            if (other === undefined || sign * other.at[which] > sign * here || (sign * other.at[which] === sign * here && next < i))
              continue
            const from = (stretch[i] as Node).angle
            const turn = Math.sign(other.angle - from)
            if (!(sign * turn * slopeAt(i)[which] > 0 && sign * turn * slopeAt(next)[which] < 0)) continue
            const slope = (angle: number) => hingeSlopesAt(g, loads, angle, hingeStaticsAt(g, loads, angle))[which]
            const root = brent(slope, from, other.angle, 1e-10 * Math.abs(other.angle - from))
            if (root) offer(which, { angle: root.x, at: hingeStaticsAt(g, loads, root.x) }, loads)
          }
        }
      }
    }
  return best as Record<Which, Peak>
}
