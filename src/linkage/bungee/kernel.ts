// Force and energy of an elastic cord on its measured curve, straight between readings.
import { type NoSolution, refuse, tried } from "../../solver/index.js"
import { bungeeFaults } from "./check.js"
import { bungeeFields } from "./fields.js"
import type { Bungee, BungeeRefusal, Si } from "./types.js"

/** A stretch of the curve of one cord, as far as it is used. */
export interface Piece {
  readonly from: number
  readonly to: number
  readonly low: number
  readonly high: number
  /** Force gained for elongation. */
  readonly slope: number
}

export const elongationOf = (si: Si): number => Math.max(0, si.length / si.slackLength - 1)

/** Pieces of the curve from slack up to the elongation in use. */
export function piecesOf(si: Si): Piece[] {
  const elongation = elongationOf(si)
  const pieces: Piece[] = []
  let [from, low] = [0, 0]
  for (const { elongation: end, force } of si.readings) {
    if (from >= elongation) break
    const slope = (force - low) / (end - from)
    const to = Math.min(end, elongation)
    pieces.push({ from, to, low, high: to === end ? force : low + slope * (to - from), slope })
    ;[from, low] = [end, force]
  }
  return pieces
}

export function solve(si: Si): Bungee | NoSolution<BungeeRefusal> {
  return tried(kernel(si), si, bungeeFields(), kernel, bungeeFaults)
}

function kernel(si: Si): Bungee | NoSolution<BungeeRefusal> {
  const { slackLength, length, readings, cords, lossShare, elongationLimit } = si
  const elongation = elongationOf(si)
  const last = readings.at(-1)?.elongation as number
  if (elongation > last)
    return refuse(
      "beyond-curve",
      "Stretched by {elongation ratio %}, the cord is past its last reading, {last ratio %}, by {shortBy ratio %}: nothing says what it pulls there, and it may be about to break. Measure further on a scrap piece, behind a guard, or use a longer cord.",
      elongation - last,
      { elongation, last },
      { length: slackLength * (1 + last) * (1 - 1e-9), slackLength: (length / (1 + last)) * (1 + 1e-9) },
    )
  const pieces = piecesOf(si)
  const here = pieces.at(-1)
  const force = cords * (here?.high ?? 0)
  const storedEnergy = cords * slackLength * pieces.reduce((sum, p) => sum + ((p.low + p.high) / 2) * (p.to - p.from), 0)
  return {
    transmits: "pull-only",
    elongation,
    force,
    returningForce: lossShare === null ? null : force * (1 - lossShare),
    stiffness: (cords * (here?.slope ?? 0)) / slackLength,
    storedEnergy,
    returnedEnergy: lossShare === null ? null : storedEnergy * (1 - lossShare),
    lengthLimit: slackLength * (1 + elongationLimit),
    utilisation: elongation / elongationLimit,
  }
}
