/** Bessel functions of the first and second kind, orders 0 and 1, of one argument. */
export interface Bessel {
  readonly j0: number
  readonly j1: number
  readonly y0: number
  readonly y1: number
}

const EULER = 0.57721566490153286

/** Hankel's asymptotic expansion, order 0 or 1 (Abramowitz and Stegun, 1964, 9.2.5 to 9.2.10). */
function hankel(order: 0 | 1, x: number): readonly [j: number, y: number] {
  const mu = 4 * order * order
  let [p, q, term] = [1, 0, 1]
  for (let k = 1; k < 60; k++) {
    const next = (term * (mu - (2 * k - 1) ** 2)) / (k * 8 * x)
    // the expansion diverges in the end: stop at its least term
    if (Math.abs(next) >= Math.abs(term) || Math.abs(next) < 1e-18) break
    term = next
    const sign = k % 4 < 2 ? 1 : -1
    if (k % 2) q += sign * term
    else p += (k % 4 === 2 ? -1 : 1) * term
  }
  const chi = x - (order / 2 + 0.25) * Math.PI
  const size = Math.sqrt(2 / (Math.PI * x))
  return [size * (p * Math.cos(chi) - q * Math.sin(chi)), size * (p * Math.sin(chi) + q * Math.cos(chi))]
}

/**
 * J₀, J₁, Y₀ and Y₁ of x > 0, to about 1e-14 of their amplitude: downward recurrence with Neumann's series
 * (Abramowitz and Stegun, 1964, 9.1.46 and 9.1.88) below 25, Hankel's expansion above.
 */
export function bessel(x: number): Bessel {
  if (x > 25) {
    const [j0, y0] = hankel(0, x)
    const [j1, y1] = hankel(1, x)
    return { j0, j1, y0, y1 }
  }
  const start = 2 * Math.ceil((x + 12 + 7 * Math.cbrt(x)) / 2) + 8
  let [above, here] = [0, 1e-280]
  let [sum, even, odd, j0, j1] = [0, 0, 0, 0, 0]
  for (let n = start; n >= 0; n--) {
    // here is Jₙ up to a factor
    if (n === 0) j0 = here
    else if (n === 1) j1 = here
    if (n % 2 === 0) {
      sum += (n === 0 ? 1 : 2) * here
      if (n > 0) even += ((n / 2) % 2 ? -1 : 1) * (here / (n / 2))
    } else if (n > 1) {
      const k = (n - 1) / 2
      odd += ((k % 2 ? -1 : 1) * here * n) / (k * (k + 1))
    }
    const below = ((2 * n) / x) * here - above
    above = here
    here = below
    if (Math.abs(here) > 1e200) {
      here *= 1e-200
      above *= 1e-200
      sum *= 1e-200
      even *= 1e-200
      odd *= 1e-200
      j0 *= 1e-200
      j1 *= 1e-200
    }
  }
  j0 /= sum
  j1 /= sum
  const log = Math.log(x / 2) + EULER
  const y0 = (2 / Math.PI) * log * j0 - ((4 / Math.PI) * even) / sum
  const y1 = (-2 / (Math.PI * x)) * j0 + (2 / Math.PI) * (log - 1) * j1 - ((2 / Math.PI) * odd) / sum
  return { j0, j1, y0, y1 }
}

/** Scaled complementary error function, exp(x²)·erfc(x), which neither overflows nor loses digits for large x. */
export function erfcx(x: number): number {
  if (x < 0) return 2 * Math.exp(x * x) - erfcx(-x)
  if (x < 1.5) {
    // erf by its series without alternating signs (Abramowitz and Stegun, 1964, 7.1.6)
    let [term, sum] = [x, x]
    for (let n = 1; Math.abs(term) > 1e-18 * sum; n++) {
      term *= (2 * x * x) / (2 * n + 1)
      sum += term
    }
    return Math.exp(x * x) - (2 / Math.sqrt(Math.PI)) * sum
  }
  // continued fraction (Abramowitz and Stegun, 1964, 7.1.14), from its tail
  let tail = x
  for (let n = Math.ceil(30 + 250 / (x * x)); n >= 1; n--) tail = x + n / 2 / tail
  return 1 / (Math.sqrt(Math.PI) * tail)
}

/** Complementary error function. */
export function erfc(x: number): number {
  return x < 0 ? 2 - erfc(-x) : Math.exp(-x * x) * erfcx(x)
}
