/** An integral with its estimated error. */
export interface Integral {
  readonly value: number
  /** Estimated absolute error. */
  readonly error: number
  readonly evaluations: number
}

// Gauss 7 / Kronrod 15 abscissae and weights on [-1, 1]: R. Piessens et al., QUADPACK, 1983
const XK = [
  0.991455371120812639206854697526329, 0.949107912342758524526189684047851, 0.864864423359769072789712788640926,
  0.741531185599394439863864773280788, 0.58608723546769113029414469225873, 0.405845151377397166906606412076961,
  0.207784955007898467600689403773245, 0,
]
const WK = [
  0.02293532201052922496373200805897, 0.063092092629978553290700663189204, 0.104790010322250183839876322541518,
  0.140653259715525918745189590510238, 0.16900472663926790282829543385556, 0.190350578064785409913256402421014,
  0.204432940075298892414161999234649, 0.209482141084727828012999174891714,
]
const WG = [
  0.129484966168869693270611432679082, 0.27970539148927666790146777142378, 0.381830050505118944950369775488975,
  0.417959183673469387755102040816327,
]

/** Vector integrand: writes its components for abscissa x into `out`. */
export type Integrand = (x: number, out: Float64Array) => void

interface Panel {
  readonly a: number
  readonly b: number
  readonly value: Float64Array
  readonly error: number
}

function panel(f: Integrand, a: number, b: number, size: number, buffer: Float64Array): Panel {
  const mid = (a + b) / 2
  const half = (b - a) / 2
  const kronrod = new Float64Array(size)
  const gauss = new Float64Array(size)
  for (let i = 0; i < 8; i++) {
    for (const sign of i === 7 ? [0] : [-1, 1]) {
      f(mid + sign * half * (XK[i] as number), buffer)
      for (let j = 0; j < size; j++) {
        const y = buffer[j] as number
        kronrod[j] = (kronrod[j] as number) + (WK[i] as number) * y
        if (i % 2 === 1) gauss[j] = (gauss[j] as number) + (WG[(i - 1) / 2] as number) * y
      }
    }
  }
  let largest = 0
  for (let j = 0; j < size; j++) {
    kronrod[j] = (kronrod[j] as number) * half
    largest = Math.max(largest, Math.abs(kronrod[j] as number))
  }
  // the first component is held by its own difference, which holds where it is zero too
  const first = Math.abs(kronrod[0] as number)
  let error = Math.abs((kronrod[0] as number) - (gauss[0] as number) * half)
  for (let j = 1; j < size; j++) {
    const difference = Math.abs((kronrod[j] as number) - (gauss[j] as number) * half)
    if (difference === 0) continue
    // a component that all but cancels is not held to digits it does not have
    error = Math.max(error, (difference / Math.max(Math.abs(kronrod[j] as number), largest * 1e-3)) * first)
  }
  return { a, b, value: kronrod, error }
}

/**
 * Integrates a vector function over [a, b] by globally adaptive Gauss–Kronrod quadrature; the largest
 * relative error among the components, taken of the first one, steers the refinement. Split the range at known kinks and
 * add the parts: a kink closer than 0.43 % of a panel's width to the panel's end lies outside its outermost point, and
 * no estimate can see it.
 */
export function integrateVector(
  f: Integrand,
  a: number,
  b: number,
  size: number,
  relative = 1e-10,
  most = 400,
): { readonly value: Float64Array; readonly error: number; readonly evaluations: number } {
  const buffer = new Float64Array(size)
  const panels = [panel(f, a, b, size, buffer)]
  let evaluations = 15
  for (;;) {
    let [total, error, worst] = [0, 0, 0]
    panels.forEach((p, i) => {
      total += p.value[0] as number
      error += p.error
      if (p.error > (panels[worst] as Panel).error) worst = i
    })
    const split = panels[worst] as Panel
    const narrow = Math.abs(split.b - split.a) <= 1e-13 * (Math.abs(split.a) + Math.abs(split.b))
    if (!(error > relative * Math.abs(total)) || panels.length >= most || narrow) {
      const value = new Float64Array(size)
      for (const p of panels) for (let j = 0; j < size; j++) value[j] = (value[j] as number) + (p.value[j] as number)
      return { value, error, evaluations }
    }
    const mid = (split.a + split.b) / 2
    panels.splice(worst, 1, panel(f, split.a, mid, size, buffer), panel(f, mid, split.b, size, buffer))
    evaluations += 30
  }
}

/** Integrates a scalar function over [a, b]; see {@link integrateVector}. */
export function integrate(f: (x: number) => number, a: number, b: number, relative = 1e-10): Integral {
  const whole = integrateVector(
    (x, out) => {
      out[0] = f(x)
    },
    a,
    b,
    1,
    relative,
  )
  return { value: whole.value[0] as number, error: whole.error, evaluations: whole.evaluations }
}
