import { theRoot } from "../../numeric/index.js"

/** A clamped rod bent far by a force at its tip: shape figures against its length. */
export interface Elastica {
  /** Slope of the tip, rad. */
  readonly tipSlope: number
  /** Drop of the tip over the length. */
  readonly drop: number
  /** Distance of the tip from the clamp along the first direction, over the length. */
  readonly reach: number
  readonly iterations: number
  /** What is left of the load equation, relative. */
  readonly residual: number
}

/** Largest load parameter answered: beyond it the rod hangs nearly straight down. */
export const greatestLoadParameter = 100

let rule: { readonly nodes: readonly number[]; readonly weights: readonly number[] } | undefined

/** Gauss–Legendre nodes and weights on 0 to 1, 48 points, by Newton's method on the Legendre polynomial. */
export function legendreRule(): { readonly nodes: readonly number[]; readonly weights: readonly number[] } {
  if (rule) return rule
  const n = 48
  const [nodes, weights]: [number[], number[]] = [[], []]
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5))
    let slope = 1
    for (let k = 0; k < 8; k++) {
      let [p0, p1] = [1, x]
      for (let j = 2; j <= n; j++) [p0, p1] = [p1, ((2 * j - 1) * x * p1 - (j - 1) * p0) / j]
      slope = (n * (x * p1 - p0)) / (x * x - 1)
      x -= p1 / slope
    }
    nodes.push((1 - x) / 2)
    weights.push(1 / ((1 - x * x) * slope * slope))
  }
  rule = { nodes, weights }
  return rule
}

/**
 * K(k) − F(φ₀, k), and the same integral weighted by the drop of each piece, for a tip slope: sin φ₀ = 1/(k·√2) and
 * k² = (1 + sin θ)/2. The substitution sin u = (k'/k)·sinh s, u = π/2 − φ, takes the peak out of both integrands.
 */
export function ellipticParts(tipSlope: number): { first: number; falling: number } {
  const sine = Math.sin(tipSlope)
  const k = Math.sqrt((1 + sine) / 2)
  // √((1 − sin θ)/2) without cancellation near a right angle
  const rest = Math.sin((Math.PI / 2 - tipSlope) / 2)
  const end = Math.asinh((k / rest) * Math.sqrt(sine / (1 + sine)))
  let [first, falling] = [0, 0]
  const { nodes, weights } = legendreRule()
  nodes.forEach((node, i) => {
    const bent = (rest * Math.sinh(node * end)) ** 2
    const weight = ((weights[i] as number) * end) / Math.sqrt(k ** 2 - bent)
    first += weight
    falling += weight * (sine - 2 * bent)
  })
  return { first, falling }
}

/**
 * Shape of a clamped rod under the load parameter α = P·L²/(E·I), P across the undeformed rod at its tip: √α = K − F, drop/L
 * = 1 − 2·(E − E(φ₀))/√α, reach/L = √(2·sin θ/α). α from 0 to 100.
 */
export function elastica(loadParameter: number): Elastica {
  // the straight-beam formulas are right to α² of themselves
  if (loadParameter < 1e-8) return { tipSlope: loadParameter / 2, drop: loadParameter / 3, reach: 1, iterations: 0, residual: 0 }
  const root = Math.sqrt(loadParameter)
  // the ends of the search belong to load parameters of 2e-12 and 225
  const found = theRoot((slope) => ellipticParts(slope).first / root - 1, 1e-12, Math.PI / 2 - 1e-6, 1e-20, "slope of an elastica")
  const { first, falling } = ellipticParts(found.x)
  return {
    tipSlope: found.x,
    drop: falling / first,
    reach: Math.sqrt((2 * Math.sin(found.x)) / loadParameter),
    iterations: found.iterations,
    residual: found.residual,
  }
}
