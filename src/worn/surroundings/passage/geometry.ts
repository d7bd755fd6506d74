import { goldenMinimum } from "../../../numeric/index.js"
import type { PassageKind, PassagePlace } from "../data-access.js"

/** Space taken, in metres: width side to side, ahead of and behind the spine's axis, height. */
export interface Box {
  readonly width: number
  readonly forward: number
  readonly backward: number
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
  return 2 * Math.hypot(box.width / 2, Math.max(box.forward, box.backward))
}

const sidewaysKinds: readonly PassageKind[] = ["door", "route", "corner", "lift", "aisle"]

/** What decides how a place is passed: its clear width, its height, or the inside of a lift's car. */
export type Governing = "width" | "height" | "car"

/** How a box gets through a place. */
export interface Passing {
  /** `facing`, `sideways`, `turning`, or `no`. */
  readonly way: string
  /** What is left to spare, m. */
  readonly margin: number
  /** What is tightest. */
  readonly by: Governing
  /** Clear size of the place there, m. */
  readonly room: number
}

/** The way through a place: facing wherever that fits, else sideways; where nothing fits, the nearest miss. */
export function passing(box: Box, place: PassagePlace, allowance: number): Passing {
  const along = box.forward + box.backward
  const others: Omit<Passing, "way">[] = []
  if (place.height !== null) others.push({ margin: place.height - allowance - box.height, by: "height", room: place.height })
  if (place.carWidth !== null && place.carDepth !== null) {
    const margin = carMargin(box.width, along, place.carWidth - 2 * allowance, place.carDepth - 2 * allowance)
    others.push({ margin, by: "car", room: place.carDepth })
  }
  const way = (name: string, needed: number): Passing => {
    const across: Omit<Passing, "way">[] =
      place.width === null ? [] : [{ margin: place.width - 2 * allowance - needed, by: "width", room: place.width }]
    const [first, ...rest] = [...across, ...others]
    return { way: name, ...rest.reduce((least, one) => (one.margin < least.margin ? one : least), first as Omit<Passing, "way">) }
  }
  const needed = place.type === "corner" ? cornerWidth : (across: number) => across
  const ways = place.type === "turning" ? [way("turning", turningOf(box))] : [way("facing", needed(box.width, along))]
  // edging sideways is for level ground only
  if (sidewaysKinds.includes(place.type)) ways.push(way("sideways", needed(along, box.width)))
  const fits = ways.find((w) => w.margin >= 0)
  return fits ?? { ...ways.reduce((best, one) => (one.margin > best.margin ? one : best)), way: "no" }
}

/** Worst spare of three sides, both sorted. */
export function boxMargin(sides: readonly number[], room: readonly number[]): number {
  const [a, b] = [sides, room].map((list) => [...list].sort((x, y) => y - x)) as [number[], number[]]
  return Math.min(...a.map((side, i) => (b[i] as number) - side))
}
