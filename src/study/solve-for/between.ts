// What lies between two tries: brought as near to each other as numbers stand, or to where the result comes nearest.
import type { Refused } from "../answer.js"
import type { Told } from "../run.js"

/** A value tried. */
export interface Try {
  readonly x: number
  readonly told: Told
  /** The result less the value asked for; null where it is refused or no number is asked for. */
  readonly off: number | null
  readonly meets: boolean
  readonly refused: Refused | null
}

/** How values are tried. */
export interface Tries {
  at(x: number): Try
  /** Lets others run where it has worked for a while. */
  rest(): Promise<void>
}

/** Most tries between two: three for each of a number's digits in base two. */
const MOST = 200

/**
 * Two tries brought together to the last digits: the last that is like the first, and the first that is not. A number that the
 * result crosses is closed in on by its straight line too, in few tries where it is smooth.
 */
export async function shrunk(
  tries: Tries,
  from: Try,
  to: Try,
  isLike: (middle: Try) => boolean,
): Promise<readonly [like: Try, other: Try]> {
  let [a, b] = [from, to]
  let [wa, wb] = [a.off ?? Number.NaN, b.off ?? Number.NaN]
  // at zero digits have no end
  const enough = Number.EPSILON ** 2 * Math.abs(to.x - from.x)
  for (let i = 0; i < MOST; i++) {
    const width = b.x - a.x
    if (Math.abs(width) <= enough) break
    // every third try halves, for where the straight line closes in from one side only
    const isLine = i % 3 !== 2 && ((wa < 0 && wb > 0) || (wa > 0 && wb < 0))
    const half = a.x + width / 2
    const line = isLine ? a.x - (wa * width) / (wb - wa) : half
    const x = Math.min(a.x, b.x) < line && line < Math.max(a.x, b.x) ? line : half
    if (x === a.x || x === b.x) break
    const middle = tries.at(x)
    if (isLike(middle)) {
      a = middle
      wa = middle.off ?? Number.NaN
      // an end that stays counts for less, so that the line does not stick to it
      wb /= 2
    } else {
      b = middle
      wb = middle.off ?? Number.NaN
      wa /= 2
      // the value itself
      if (middle.off === 0) break
    }
    if (i % 16 === 15) await tries.rest()
  }
  return [a, b]
}

const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * The try between two at which the result comes nearest to the value asked for from one side; the first that is on the other
 * side ends the search. Null where it is refused on the way.
 */
export async function leastNear(tries: Tries, from: Try, to: Try, side: number): Promise<Try | null> {
  let [a, b] = [from.x, to.x]
  const at = (x: number) => tries.at(x)
  const worth = (one: Try) => side * (one.off as number)
  let [c, d] = [at(b - GOLDEN * (b - a)), at(a + GOLDEN * (b - a))]
  for (let i = 0; i < 80; i++) {
    if (c.off === null || d.off === null) return null
    if (worth(c) <= 0) return c
    if (worth(d) <= 0) return d
    // closer the result no longer changes in its digits
    if (b - a <= 1e-9 * (Math.abs(a) + Math.abs(b))) break
    if (worth(c) < worth(d)) {
      b = d.x
      d = c
      c = at(b - GOLDEN * (b - a))
    } else {
      a = c.x
      c = d
      d = at(a + GOLDEN * (b - a))
    }
    if (i % 16 === 15) await tries.rest()
  }
  if (c.off === null || d.off === null) return null
  return worth(c) < worth(d) ? c : d
}
