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
 * All roots of f in [a, b], where theory says how many there are: the range is divided finer until that many changes of sign
 * are told apart, each bracket then closed by {@link brent}.
 *
 * @param count - roots that theory says lie between a and b, none of them double
 * @param finest - parts at most
 * @returns exactly `count` roots by rising x, or null where so many were not told apart
 */
export function rootsOf(f: (x: number) => number, a: number, b: number, count: number, finest = 65536): Root[] | null {
  for (let parts = Math.max(8, 4 * count); parts <= finest; parts *= 2) {
    const at = (k: number) => (k === parts ? b : a + ((b - a) * k) / parts)
    const values = Array.from({ length: parts + 1 }, (_, k) => f(at(k)))
    const found: Root[] = []
    for (let k = 0; k < parts; k++) {
      const [left, right] = [values[k] as number, values[k + 1] as number]
      // a root on a division belongs to the part at its left, once
      if (right === 0 || (k === 0 && left === 0)) found.push({ x: right === 0 ? at(k + 1) : a, residual: 0, iterations: 0 })
      if (right === 0 || left === 0) continue
      const root = brent(f, at(k), at(k + 1))
      if (root) found.push(root)
    }
    if (found.length === count) return found
    // more than theory allows: noise, or a theory that does not hold here
    if (found.length > count) return null
  }
  return null
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
