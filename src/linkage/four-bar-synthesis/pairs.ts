// Two links and the coupler between them: whether they pass the poses in order on one branch, and how well.
import type { Assembly } from "../four-bar/pose.js"
import type { Point } from "../hinge/geometry.js"
import type { Dyad } from "./dyads.js"
import type { Si } from "./types.js"

/** What a pair of links does between the first pose and the last. */
export interface Passage {
  readonly branch: Assembly
  /** Angles of the input link at the poses, from the line of the fixed pivots, running on in order. */
  readonly inputAngles: readonly number[]
  readonly minTransmissionAngle: number
}

export type Defect = "changeBranch" | "outOfOrder"

const TURN = 2 * Math.PI

/** Acute angle between coupler and output with the input pin `f` from the output pivot; negative where they cannot meet. */
function transmissionAt(f: number, b: number, c: number): number {
  const product = (b + c + f) * (b + c - f) * (f + b - c) * (f - b + c)
  return product > 0 ? Math.atan2(Math.sqrt(product), Math.abs(b ** 2 + c ** 2 - f ** 2)) : -1
}

/** Minimum transmission angle while the input turns from one angle to another; negative where the linkage does not close all the way. */
function leastOnWay(d: number, a: number, b: number, c: number, from: number, to: number): number {
  const [low, high] = [Math.min(from, to), Math.max(from, to)]
  const reach = (angle: number) => Math.sqrt((d - a) ** 2 + 4 * d * a * Math.sin(angle / 2) ** 2)
  const passes = (angle: number) => Math.ceil((low - angle) / TURN) <= (high - angle) / TURN
  // the distance from input pin to output pivot is shortest and longest at the ends or on the line of the fixed pivots
  const nearest = passes(0) ? Math.abs(d - a) : Math.min(reach(low), reach(high))
  const farthest = passes(Math.PI) ? d + a : Math.max(reach(low), reach(high))
  return Math.min(transmissionAt(nearest, b, c), transmissionAt(farthest, b, c))
}

/** Turn from one angle to another in one direction, without the whole turns. */
function turnOf(from: number, to: number, sense: 1 | -1): number {
  const turn = (sense * (to - from)) % TURN
  return turn < 0 ? turn + TURN : turn
}

/** Side of the line from input pin to output pivot on which the output pin lies at every pose; 0 where it changes or lies on it. */
function sideOf(drive: Dyad, follow: Dyad): number {
  let side = 0
  for (let i = 0; i < drive.places.length; i++) {
    const [a, b] = [drive.places[i] as Point, follow.places[i] as Point]
    const here = Math.sign((follow.pivot.x - a.x) * (b.y - a.y) - (follow.pivot.y - a.y) * (b.x - a.x))
    if (here === 0 || (i > 0 && here !== side)) return 0
    side = here
  }
  return side
}

/** How a pair of links passes the poses, or what is wrong with it. */
export function passageOf(si: Si, drive: Dyad, follow: Dyad, ground: number, coupler: number): Passage | Defect {
  // an output pin that changes over to the other side of the diagonal is only got there by taking the linkage apart
  const side = sideOf(drive, follow)
  if (side === 0) return "changeBranch"
  const groundAngle = Math.atan2(follow.pivot.y - drive.pivot.y, follow.pivot.x - drive.pivot.x)
  const first = (drive.directions[0] as number) - groundAngle
  const ways = ([1, -1] as const).map((sense) => {
    const turns = drive.directions.map((direction) => turnOf(first, direction - groundAngle, sense))
    return {
      sense,
      inputAngles: turns.map((turn) => first + sense * turn),
      inOrder: turns.every((turn, i) => i === 0 || turn > (turns[i - 1] as number)),
      minTransmissionAngle: leastOnWay(ground, drive.length, coupler, follow.length, first, first + sense * Math.max(...turns)),
    }
  })
  const closing = ways.filter((way) => way.minTransmissionAngle > 0)
  const wanted = closing
    .filter(({ sense, inOrder }) => inOrder && (si.turns === "either" || (si.turns === "counter-clockwise") === (sense === 1)))
    .sort((p, q) => q.minTransmissionAngle - p.minTransmissionAngle)[0]
  if (!wanted) return closing.length ? "outOfOrder" : "changeBranch"
  const { inputAngles, minTransmissionAngle } = wanted
  return { branch: side > 0 ? "open" : "crossed", inputAngles, minTransmissionAngle }
}
