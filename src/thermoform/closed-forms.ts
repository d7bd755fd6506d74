import { STEFAN_BOLTZMANN } from "./heating-time/heating.js"
import { erfc } from "./special.js"

/** What two bodies pressed together settle at on their common face, °C, from their effusivities √(k·ρ·c) in any one unit. */
export function contactTemperature(effusivity1: number, temperature1: number, effusivity2: number, temperature2: number): number {
  return (effusivity1 * temperature1 + effusivity2 * temperature2) / (effusivity1 + effusivity2)
}

/** Rise at a depth x (m) of a thick body under a constant absorbed flux, K (Carslaw and Jaeger, 1959, 2.9 (7)). */
export function fluxedBodyRise(flux: number, conductivity: number, diffusivity: number, time: number, depth = 0): number {
  const reach = 2 * Math.sqrt(diffusivity * time)
  const eta = depth / reach
  return (flux / conductivity) * ((reach * Math.exp(-eta * eta)) / Math.sqrt(Math.PI) - depth * erfc(eta))
}

/**
 * Rise in a sheet under the same constant absorbed flux on both faces, K, at `at` (0 middle, 1 face) for half thickness L
 * (Carslaw and Jaeger, 1959, 3.8 (3)).
 */
export function fluxedSheetRise(
  flux: number,
  conductivity: number,
  diffusivity: number,
  halfThickness: number,
  time: number,
  at: number,
): number {
  const fo = (diffusivity * time) / halfThickness ** 2
  let sum = fo + (3 * at * at - 1) / 6
  for (let n = 1; n < 5000; n++) {
    const fall = (n * Math.PI) ** 2 * fo
    if (fall > 40) break
    sum -= ((2 * (n % 2 ? -1 : 1)) / (n * Math.PI) ** 2) * Math.exp(-fall) * Math.cos(n * Math.PI * at)
  }
  return ((flux * halfThickness) / conductivity) * sum
}

/** Time for a thin sheet between two radiant heaters to warm from T₁ to T₂ (all in K), s: the integral of dT/(T_h⁴ − T⁴). */
export function radiantSheetTime(
  heatCapacity: number,
  thickness: number,
  emissivity: number,
  heater: number,
  from: number,
  to: number,
): number {
  const part = (t: number) => Math.log((heater + t) / (heater - t)) / 4 + Math.atan(t / heater) / 2
  return ((heatCapacity * thickness) / (2 * emissivity * STEFAN_BOLTZMANN * heater ** 3)) * (part(to) - part(from))
}

/** Length over which a sheet heated along a line is warm beside it, m: √(k·s/(2·h)). */
export function lineHeatLength(conductivity: number, thickness: number, film: number): number {
  return Math.sqrt((conductivity * thickness) / (2 * film))
}
