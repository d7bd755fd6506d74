// Checks of the gaps between what moves and fixed things beside it.
import { formatQuantity } from "../../quantity/index.js"
import { pinchGap } from "../../worn/index.js"
import type { MechanismPose, Triple } from "../mechanisms/mechanism.js"
import { coordinatesAt, type MotionModel } from "../run/motion-model.js"
import { CRUSH_GAPS } from "../sources.js"
import type { RigSi } from "../whole/faults.js"
import { asked, lacking, type RigCheck } from "./check.js"
import type { Judged } from "./conditions.js"
import { type Measured, type NotMade, worstOf } from "./finding.js"
import { POSED } from "./paths.js"

type MechanismSi = RigSi["motions"][number]["mechanisms"][number]
type FixedSi = NonNullable<MechanismSi["pinch"]>

const length = (l: number) => formatQuantity("length", l)
const condition = "over the whole travel"

/** Poses in which a part is handed on; between them its place and angle change evenly. */
const POSES = 33

/** One straight piece of an outline, through the motion. */
interface Piece {
  readonly name: string
  readonly from: readonly Triple[]
  readonly to: readonly Triple[]
}

/** Straight pieces of what a mechanism moves, over its whole travel; null where it has no outline or the motion cannot be posed. */
function piecesOf(motion: MotionModel, part: MotionModel["parts"][number]): readonly Piece[] | null {
  const index = motion.parts.indexOf(part)
  const { mechanism } = part
  const poses: MechanismPose[] = []
  for (let k = 0; k < POSES; k++) {
    const q = coordinatesAt(motion, (motion.span * k) / (POSES - 1))[index] as number
    if (!(q >= mechanism.low && q <= mechanism.high)) return null
    poses.push(mechanism.pose(q))
  }
  const first = poses[0] as MechanismPose
  return first.parts.flatMap((line, l) =>
    line.points.slice(line.closed ? 0 : 1).map((_, k, all): Piece => {
      const [a, b] = line.closed ? [k, (k + 1) % all.length] : [k, k + 1]
      const at = (n: number) => poses.map((pose) => pose.parts[l]?.points[n] as Triple)
      return { name: line.name, from: at(a), to: at(b) }
    }),
  )
}

/** Whether a piece stays in the mechanism's plane. */
const isFlat = ({ from, to }: Piece) => [...from, ...to].every((p) => Math.abs(p[2]) < 1e-9)
const longOf = (p: Triple, q: Triple) => Math.hypot(q[0] - p[0], q[1] - p[1])
/** Whether a piece keeps its length, as a stiff bar does. */
const isBar = ({ from, to }: Piece) => {
  const long = longOf(from[0] as Triple, to[0] as Triple)
  return from.every((p, k) => Math.abs(longOf(p, to[k] as Triple) - long) < 1e-6 * (1 + long))
}
const moves = ({ from, to }: Piece) =>
  [from, to].some((points) => points.some((p) => Math.hypot(p[0] - (points[0] as Triple)[0], p[1] - (points[0] as Triple)[1]) > 1e-9))

function gapOf(piece: Piece, fixed: FixedSi, hinge: Triple | null, left: readonly string[]): Measured | NotMade | null {
  const [a, b] = [piece.from[0] as Triple, piece.to[0] as Triple]
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  // beside its hinge every arm pinches
  const startsThere = hinge !== null && Math.hypot(a[0] - hinge[0], a[1] - hinge[1]) < 1e-9
  const begins = startsThere ? fixed.hingeZone : 0
  if (!(long > begins)) return null
  let turned = Number.NaN
  const poses = piece.from.map((p, k) => {
    const q = piece.to[k] as Triple
    const raw = Math.atan2(q[1] - p[1], q[0] - p[0])
    // angles without jumps of a whole turn
    turned = Number.isNaN(turned) ? raw : turned + Math.atan2(Math.sin(raw - turned), Math.cos(raw - turned))
    return { x: p[0], y: p[1], angle: turned }
  })
  return asked(
    pinchGap,
    {
      movingBars: [{ x1: begins, y1: 0, x2: long, y2: 0 }],
      fixedBars: fixed.fixed,
      poses,
      movingThickness: fixed.armThickness,
      fixedThickness: fixed.fixedThickness,
    },
    condition,
    (out) => {
      const part = out.parts.find((p) => p.part === fixed.reachable)
      if (!part)
        return {
          verdict: "cannot be judged",
          missing: null,
          because: null,
          sentence: `No minimum gap is published for ${fixed.reachable}.`,
        }
      const rest = left.length ? ` The gaps beside ${left.join(" and ")} are not judged: it changes its length.` : ""
      const common = { kind: "length", value: out.provenMinGap, condition, source: CRUSH_GAPS } as const
      // a gap that does not close on this part, or never lets it in, is no crushing gap however narrow
      return !part.crushes && out.provenMinGap < part.minGap
        ? {
            ...common,
            relation: "rule",
            limit: null,
            permitted: true,
            sentence: `The gap beside ${piece.name} stays as narrow as ${length(out.provenMinGap)}, but nowhere does it open for a ${part.part} and close on it.${rest}`,
          }
        : {
            ...common,
            relation: "at-least",
            limit: part.minGap,
            sentence: `Through the travel the gap beside ${piece.name} closes to ${length(out.provenMinGap)}; ${length(part.minGap)} leave room for the part that can get there (${part.part}).${rest}`,
          }
    },
  )
}

/** Gaps of one mechanism, piece by piece, or why they are not judged. */
function gapsOf(motion: MotionModel, one: MechanismSi, pinch: FixedSi, path: string): readonly (Measured | NotMade)[] {
  const unjudged = (sentence: string): readonly NotMade[] => [{ verdict: "cannot be judged", missing: null, because: null, sentence }]
  const part = motion.parts.find((p) => p.name === one.name)
  const pieces = part && piecesOf(motion, part)
  if (!part || !pieces) return unjudged(`${one.name} cannot be posed over its whole travel: see there first.`)
  const moving = pieces.filter(moves)
  const bars = moving.filter(isBar)
  const pin = part.mechanism.pose(part.start).pins[0]?.at ?? null
  if (!bars.length || moving.some((piece) => !isFlat(piece)))
    return unjudged(
      `The outline of ${one.name} leaves the plane or changes its shape: its gaps are not judged here. Measure them in slow motion, nobody's hands near it.`,
    )
  // a rod that grows longer is no bar of the mechanism
  const left = [...new Set(moving.filter((piece) => !bars.includes(piece)).map((piece) => piece.name))]
  const found = bars.map((piece) => gapOf(piece, pinch, pin, left)).filter((result) => result !== null)
  return found.length ? found : [lacking(`${path}.pinch.hingeZone`, `All of ${one.name} lies within what is not judged around its hinge.`)]
}

function gaps(rig: Judged, motion: MotionModel, i: number): Measured | NotMade | null {
  const said = rig.rig.motions[i]?.mechanisms ?? []
  return worstOf(
    said.flatMap((one, m) => {
      const path = `motions[${i}].mechanisms[${m}]`
      return one.pinch
        ? gapsOf(motion, one, one.pinch, path)
        : [lacking(`${path}.pinch`, `Nothing says which fixed things ${one.name} moves past.`)]
    }),
  )
}

/** Checks of gaps. */
export const gapChecks: readonly RigCheck[] = [
  {
    id: "pinch",
    title: "gaps that close",
    severity: "safety",
    reads: [...POSED],
    worsens: {},
    find: (rig) =>
      rig.motions.flatMap((motion, i) => {
        const result = gaps(rig, motion, i)
        return result ? [{ subject: motion.name, result }] : []
      }),
  },
]
