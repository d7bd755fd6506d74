/** A rectangle in which a pivot may be, m. */
export interface Region {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}

/**
 * The part of a region in one quadrant about the hinge, mirrored into the first one. There, a circle about
 * the hinge cuts it in a single arc.
 */
export interface RegionPart {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
  /** Signs that put it back. */
  readonly signX: 1 | -1
  readonly signY: 1 | -1
  /** Minimum and maximum distance from the hinge. */
  readonly near: number
  readonly far: number
}

/** Angles of an arc, rad; empty where from exceeds to. */
export interface Arc {
  from: number
  to: number
}

/** Splits a region (already relative to the hinge) at the axes through the hinge. */
export function partsOf({ left, right, bottom, top }: Region): RegionPart[] {
  const cuts = (low: number, high: number): (readonly [number, number])[] =>
    low < 0 && high > 0
      ? [
          [low, 0],
          [0, high],
        ]
      : [[low, high]]
  return cuts(left, right).flatMap(([x, xx]) =>
    cuts(bottom, top).map(([y, yy]): RegionPart => {
      const [signX, signY] = [xx <= 0 ? -1 : 1, yy <= 0 ? -1 : 1] as const
      const [x0, x1] = signX === 1 ? [x, xx] : [-xx, -x]
      const [y0, y1] = signY === 1 ? [y, yy] : [-yy, -y]
      return { x0, x1, y0, y1, signX, signY, near: Math.hypot(x0, y0), far: Math.hypot(x1, y1) }
    }),
  )
}

/**
 * Angles at which points of the part lie between the distances `near` and `far` from the hinge; exact
 * where the two are equal, otherwise an enclosure of them.
 */
export function arcOf(part: RegionPart, near: number, far: number, into: Arc): Arc {
  const { x0, x1, y0, y1, signX, signY } = part
  // at distance d: x0 ≤ d·cos a ≤ x1 and y0 ≤ d·sin a ≤ y1, each limit taken where it allows most
  const low = Math.max(near <= x1 ? 0 : Math.acos(x1 / near), y0 === 0 ? 0 : Math.asin(Math.min(1, y0 / far)))
  const high = Math.min(x0 >= far ? 0 : Math.acos(x0 / far), near <= y1 ? Math.PI / 2 : Math.asin(y1 / near))
  if (signX === 1) {
    into.from = signY === 1 ? low : -high
    into.to = signY === 1 ? high : -low
  } else {
    into.from = signY === 1 ? Math.PI - high : low - Math.PI
    into.to = signY === 1 ? Math.PI - low : high - Math.PI
  }
  return into
}
