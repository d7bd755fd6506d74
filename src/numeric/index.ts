export { interpolate } from "./interpolate.js"
export { solveLinear } from "./linear.js"
export { type Integral, type Integrand, integrate, integrateVector } from "./quadrature.js"
export { brent, goldenMinimum, type Root } from "./roots.js"
