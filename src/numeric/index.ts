export { type Asking, answered, type Judged } from "./asking.js"
export { type BoundedSearch, branchAndBound, type Certified } from "./branch-and-bound.js"
export {
  integralOf,
  integralOver,
  integralTo,
  nodesAndWeights,
  type Piece,
  type Piecewise,
  pieceAt,
  piecewise,
  valueAt,
} from "./chebyshev.js"
export { cholesky } from "./cholesky.js"
export {
  type Distribution,
  incompleteBeta,
  normalQuantile,
  normalShare,
  quantile,
  quantileRanks,
  shareInterval,
  studentQuantile,
} from "./distributions.js"
export { type EvolutionOptions, type Evolved, evolution, type Tried } from "./evolution.js"
export { dominates, frontOf } from "./front.js"
export { gaussFive } from "./gauss.js"
export { type GlobalMinimum, type GlobalOptions, globalMinimum } from "./global.js"
export { interpolate } from "./interpolate.js"
export { type Covariance, covariance, type LeastSquares, type LeastSquaresOptions, leastSquares } from "./least-squares.js"
export { solveLinear } from "./linear.js"
export { type Integral, type Integrand, integrate, integrateVector } from "./quadrature.js"
export { mixed, seeded } from "./random.js"
export { brent, goldenMinimum, type Root, theRoot } from "./roots.js"
export { type SimplexOptions, simplex } from "./simplex.js"
export { type SingularValues, singularValues } from "./singular.js"
export { SOBOL_DIMENSIONS, sobolPoints } from "./sobol.js"
export { type VarianceIndices, varianceIndices } from "./variance.js"
