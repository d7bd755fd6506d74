import { goldenMinimum } from "../numeric/index.js"
import type { PassageKind, PassagePlace } from "./data-access.js"

/** Space taken, in metres: width side to side, ahead of and behind the spine's axis, height. */
export interface Box {
  readonly width: number
  readonly front: number
  readonly back: number
  readonly height: number
}

/** Corridor width for a right-angle turn between two equal corridors, facing the way one goes: `across` is the width, `along` front to back. */
export function cornerWidth(across: number, along: number): number {
  return Math.max(across, (across + along / 2) / Math.SQRT2)
}

/** Largest amount by which both sides of a car exceed the box at the best angle to stand in it; negative where it does not fit. */
export function carMargin(across: number, along: number, width: number, depth: number): number {
  const spare = (angle: number) => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    return Math.min(width - across * c - along * s, depth - across * s - along * c)
  }
  const steps = 32
  let best = Math.max(spare(0), spare(Math.PI / 2))
  for (let k = 0; k < steps; k++) {
    const [a, b] = [(k * Math.PI) / 2 / steps, ((k + 1) * Math.PI) / 2 / steps]
    best = Math.max(best, spare(goldenMinimum((x) => -spare(x), a, b)))
  }
  return best
}

/** Diameter swept on the spot: twice the way to the farthest corner from the spine's axis. */
export function turningOf(box: Box): number {
  return 2 * Math.hypot(box.width / 2, Math.max(box.front, box.back))
}

const sidewaysKinds: readonly PassageKind[] = ["door", "route", "corner", "lift", "aisle"]

/** The better way through a place and what it leaves to spare, m. */
export function passing(box: Box, place: PassagePlace, allowance: number): { readonly way: string; readonly margin: number } {
  const along = box.front + box.back
  const clear = place.width === null ? Number.POSITIVE_INFINITY : place.width - 2 * allowance
  const ways: (readonly [string, number])[] = []
  if (place.kind === "turning") ways.push(["turning", clear - turningOf(box)])
  else {
    const needed = place.kind === "corner" ? cornerWidth : (across: number) => across
    ways.push(["facing", clear - needed(box.width, along)])
    // edging sideways is for level ground only
    if (sidewaysKinds.includes(place.kind)) ways.push(["sideways", clear - needed(along, box.width)])
  }
  const others: number[] = []
  if (place.height !== null) others.push(place.height - allowance - box.height)
  if (place.carWidth !== null && place.carDepth !== null)
    others.push(carMargin(box.width, along, place.carWidth - 2 * allowance, place.carDepth - 2 * allowance))
  const reckoned = ways.map(([way, spare]) => [way, Math.min(spare, ...others)] as const)
  // facing comes first wherever it fits; where nothing does, the nearest miss is told
  const [way, margin] = reckoned.find(([, m]) => m >= 0) ?? reckoned.reduce((best, one) => (one[1] > best[1] ? one : best))
  return { way: margin >= 0 ? way : "no", margin }
}

/** Worst spare of three sides, both sorted. */
export function boxMargin(sides: readonly number[], room: readonly number[]): number {
  const [a, b] = [sides, room].map((list) => [...list].sort((x, y) => y - x)) as [number[], number[]]
  return Math.min(...a.map((side, i) => (b[i] as number) - side))
}
