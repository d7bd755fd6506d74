import { theRoot } from "../numeric/index.js"
import { halfSpaceRise } from "./conduction.js"
import { bessel, erfc } from "./special.js"

/** Shapes with one coordinate: a wall heated from both faces, a long rod, a ball. */
export type Shape = "wall" | "rod" | "ball"

/** Zero number n of J₀ or J₁, near where McMahon's expansion puts it. */
function besselZero(order: 0 | 1, n: number): number {
  const about = order === 0 ? (n - 0.25) * Math.PI + 0.05 : (n + 0.25) * Math.PI - 0.05
  return theRoot((z) => (order === 0 ? bessel(z).j0 : bessel(z).j1), about - 0.3, about + 0.3, 1e-15, `zero ${n} of a Bessel function`).x
}

/**
 * Eigenvalue number n (from 1), rad: ζ·tan ζ = Bi (wall), ζ·J₁/J₀ = Bi (rod), 1 − ζ·cot ζ = Bi (ball), solved, never interpolated.
 * The Biot number is on the half thickness or the radius; Infinity stands for a surface held at the fluid's temperature.
 *
 * @throws RangeError for a Biot number that is not above 0, or an n that is not a whole number from 1 on
 */
export function eigenvalue(shape: Shape, biot: number, n: number): number {
  if (!(biot > 0) || !(Number.isInteger(n) && n >= 1)) throw new RangeError(`eigenvalue ${n} for a Biot number of ${biot}`)
  const at = (f: (z: number) => number, low: number, high: number) =>
    theRoot(f, low, high, 1e-16 * high, `eigenvalue ${n} for a Biot number of ${biot}`).x
  // the equations are divided by 1 + Bi so that both ends of the range of Bi are well scaled
  if (shape === "wall") {
    if (biot === Number.POSITIVE_INFINITY) return (n - 0.5) * Math.PI
    return at((z) => (z * Math.sin(z) - biot * Math.cos(z)) / (1 + biot), (n - 1) * Math.PI, (n - 0.5) * Math.PI)
  }
  if (shape === "ball") {
    if (biot === Number.POSITIVE_INFINITY) return n * Math.PI
    const low = n === 1 ? 1e-3 * Math.sqrt(Math.min(1, biot)) : (n - 1) * Math.PI
    return at((z) => ((1 - biot) * Math.sin(z) - z * Math.cos(z)) / (1 + biot), low, n * Math.PI)
  }
  if (biot === Number.POSITIVE_INFINITY) return besselZero(0, n)
  const f = (z: number) => {
    const { j0, j1 } = bessel(z)
    return (z * j1 - biot * j0) / (1 + biot)
  }
  return at(f, n === 1 ? 1e-3 * Math.sqrt(Math.min(1, biot)) : besselZero(1, n - 1), besselZero(0, n))
}

/** Amplitude of the mode with eigenvalue ζ for a uniform start. */
export function modeAmplitude(shape: Shape, zeta: number): number {
  if (shape === "rod") {
    const { j0, j1 } = bessel(zeta)
    return (2 * j1) / (zeta * (j0 * j0 + j1 * j1))
  }
  const s = Math.sin(zeta)
  return shape === "wall" ? (4 * s) / (2 * zeta + Math.sin(2 * zeta)) : (4 * (s - zeta * Math.cos(zeta))) / (2 * zeta - Math.sin(2 * zeta))
}

function profile(shape: Shape, zeta: number, at: number | "mean"): number {
  if (at === "mean") {
    if (shape === "wall") return Math.sin(zeta) / zeta
    return shape === "rod" ? (2 * bessel(zeta).j1) / zeta : (3 * (Math.sin(zeta) - zeta * Math.cos(zeta))) / zeta ** 3
  }
  const z = zeta * at
  if (shape === "wall") return Math.cos(z)
  if (shape === "rod") return z === 0 ? 1 : bessel(z).j0
  return z === 0 ? 1 : Math.sin(z) / z
}

/**
 * Unaccomplished temperature change (T − T∞)/(Tᵢ − T∞) after a step of the fluid, by the full series.
 *
 * @param shape - wall, rod or ball
 * @param biot - Biot number on half thickness or radius
 * @param fourier - Fourier number on the same length
 * @param at - place from 0 (centre) to 1 (surface), or `mean` over the volume
 */
export function temperatureRatio(shape: Shape, biot: number, fourier: number, at: number | "mean"): number {
  // below this the series needs hundreds of terms and the half-space solution is exact to its own curvature
  if (fourier < 1e-5 && at !== "mean" && at > 0.5) {
    const curvature = shape === "wall" ? 0 : shape === "rod" ? 1 : 2
    const spread = at ** (-curvature / 2)
    const unit = { thickness: 1, conductivity: 1, heatCapacity: 1 }
    if (biot === Number.POSITIVE_INFINITY) return 1 - spread * erfc((1 - at) / (2 * Math.sqrt(fourier)))
    return 1 - spread * halfSpaceRise(biot, unit, fourier, 1 - at, curvature)
  }
  let sum = 0
  for (let n = 1; n < 2000; n++) {
    const zeta = eigenvalue(shape, biot, n)
    const fall = zeta * zeta * fourier
    if (fall > 40) break
    sum += modeAmplitude(shape, zeta) * profile(shape, zeta, at) * Math.exp(-fall)
  }
  return sum
}

/**
 * Fourier number at which the ratio at a place has fallen to `ratio`; inverts {@link temperatureRatio}.
 *
 * @throws RangeError for a ratio that is not between 0 and 1, or that the place has fallen past at once
 */
export function fourierFor(shape: Shape, biot: number, ratio: number, at: number | "mean"): number {
  const zeta = eigenvalue(shape, biot, 1)
  const late = (40 + Math.log(2)) / zeta ** 2
  const f = (log: number) => temperatureRatio(shape, biot, Math.exp(log), at) - ratio
  return Math.exp(theRoot(f, Math.log(1e-6), Math.log(late), 1e-14, `no Fourier number gives a ratio of ${ratio} there`).x)
}
