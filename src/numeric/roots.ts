/** A root, how it was reached and what is left. */
export interface Root {
  readonly x: number
  /** f(x), the residual. */
  readonly residual: number
  readonly iterations: number
}

/**
 * Root of a continuous f in [a, b] where f(a) and f(b) differ in sign, by Brent's method
 * (R. P. Brent, Algorithms for Minimization without Derivatives, 1973, chapter 4).
 *
 * @returns the root, or null where the ends do not bracket one, where f is no number on the way, or where the bracket has
 * not closed within `most` steps: never a place that is only near
 */
export function brent(f: (x: number) => number, a: number, b: number, tolerance = 1e-14, most = 200): Root | null {
  let fa = f(a)
  let fb = f(b)
  if (fa === 0) return { x: a, residual: 0, iterations: 0 }
  if (fb === 0) return { x: b, residual: 0, iterations: 0 }
  // by signs: a product of tiny values would underflow
  if (!((fa < 0 && fb > 0) || (fa > 0 && fb < 0))) return null
  let [c, fc, d, e] = [a, fa, b - a, b - a]
  for (let iterations = 1; iterations <= most; iterations++) {
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      d = e = b - a
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const tol = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2
    const half = (c - b) / 2
    if (Math.abs(half) <= tol || fb === 0) return { x: b, residual: fb, iterations }
    if (Math.abs(e) >= tol && Math.abs(fa) > Math.abs(fb)) {
      const s = fb / fa
      let p: number
      let q: number
      if (a === c) {
        p = 2 * half * s
        q = 1 - s
      } else {
        const r = fb / fc
        const t = fa / fc
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1))
        q = (t - 1) * (r - 1) * (s - 1)
      }
      if (p > 0) q = -q
      else p = -p
      if (2 * p < Math.min(3 * half * q - Math.abs(tol * q), Math.abs(e * q))) {
        e = d
        d = p / q
      } else d = e = half
    } else d = e = half
    a = b
    fa = fb
    b += Math.abs(d) > tol ? d : half > 0 ? tol : -tol
    fb = f(b)
    // a place where f is no number is no root, and nothing beyond it is known
    if (Number.isNaN(fb)) return null
  }
  return null
}

/**
 * Root by {@link brent} in a range whose ends theory says bracket one.
 *
 * @param asked - what the root is, for the error
 * @throws RangeError where there is none after all: then the theory or its range is wrong, and no other number may stand in
 */
export function theRoot(f: (x: number) => number, a: number, b: number, tolerance: number, asked: string): Root {
  const found = brent(f, a, b, tolerance)
  if (found === null) throw new RangeError(`No root found: ${asked}.`)
  return found
}

/** Minimum of a unimodal f on [a, b] by golden-section search; returns the abscissa. */
export function goldenMinimum(f: (x: number) => number, a: number, b: number, tolerance = 1e-10): number {
  const ratio = (Math.sqrt(5) - 1) / 2
  let [c, d] = [b - ratio * (b - a), a + ratio * (b - a)]
  let [fc, fd] = [f(c), f(d)]
  while (Math.abs(b - a) > tolerance * (1 + Math.abs(a) + Math.abs(b))) {
    if (fc < fd) {
      b = d
      d = c
      fd = fc
      c = b - ratio * (b - a)
      fc = f(c)
    } else {
      a = c
      c = d
      fc = fd
      d = a + ratio * (b - a)
      fd = f(d)
    }
  }
  return (a + b) / 2
}
