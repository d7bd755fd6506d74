/** Bessel functions of the first and second kind, orders 0 and 1, of one argument. */
export interface Bessel {
  readonly j0: number
  readonly j1: number
  readonly y0: number
  readonly y1: number
}

const EULER = 0.57721566490153286

/** Hankel's asymptotic expansions of both orders (Abramowitz and Stegun, 1964, 9.2.5 to 9.2.10), for x above 25. */
function hankel(x: number): Bessel {
  const z = 1 / (8 * x)
  let [p0, q0, p1, q1, t0, t1] = [1, 0, 1, 0, 1, 1]
  // alternate terms belong to P and Q, whose signs change in pairs; from 25 on they shrink for far longer than is needed
  for (let k = 1, sign = 1; Math.abs(t1) > 1e-18; k += 2, sign = -sign) {
    const [first, second] = [(2 * k - 1) ** 2, (2 * k + 1) ** 2]
    t0 *= (-first * z) / k
    t1 *= ((4 - first) * z) / k
    q0 += sign * t0
    q1 += sign * t1
    t0 *= (-second * z) / (k + 1)
    t1 *= ((4 - second) * z) / (k + 1)
    p0 -= sign * t0
    p1 -= sign * t1
  }
  const chi = x - Math.PI / 4
  const size = Math.sqrt(2 / (Math.PI * x))
  const [c, s] = [size * Math.cos(chi), size * Math.sin(chi)]
  // the phase of order 1 is a quarter turn behind
  return { j0: p0 * c - q0 * s, y0: p0 * s + q0 * c, j1: p1 * s + q1 * c, y1: q1 * s - p1 * c }
}

/**
 * J₀, J₁, Y₀ and Y₁ of x > 0, to about 1e-14 of their amplitude: downward recurrence with Neumann's series
 * (Abramowitz and Stegun, 1964, 9.1.46 and 9.1.88) below 25, Hankel's expansion above.
 */
export function bessel(x: number): Bessel {
  if (x > 25) return hankel(x)
  const step = 2 / x
  // twice this order lies where Jₙ(x) is below 1e-17 for every x up to 25
  let k = Math.ceil((10 + 4.9 * Math.sqrt(x) + 1.27 * x) / 2)
  // J₂ₖ and J₂ₖ₊₁ up to a factor
  let [here, above] = [1e-280, 0]
  let [sum, even, odd] = [0, 0, 0]
  for (let sign = k % 2 ? 1 : -1; ; sign = -sign) {
    sum += here
    even += (sign * here) / k
    const below = 2 * k * step * here - above
    k -= 1
    if (k === 0) {
      above = below
      here = step * below - here
      break
    }
    odd += (sign * below * (2 * k + 1)) / (k * (k + 1))
    here = (2 * k + 1) * step * below - here
    above = below
    if (Math.abs(here) > 1e200) {
      here *= 1e-200
      above *= 1e-200
      sum *= 1e-200
      even *= 1e-200
      odd *= 1e-200
    }
  }
  const scale = 1 / (here + 2 * sum)
  const [j0, j1] = [here * scale, above * scale]
  const log = Math.log(x / 2) + EULER
  const y0 = (2 / Math.PI) * (log * j0 + 2 * even * scale)
  const y1 = (2 / Math.PI) * ((log - 1) * j1 - j0 / x - odd * scale)
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
