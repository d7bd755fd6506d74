import { interpolate } from "../numeric/index.js"
import type { FrameMaterialData } from "./data-materials.js"

/** Load durations the creep lines are drawn over: 0.1 h to 1000 h. */
export const longestDuration = 3.6e6

/**
 * Modulus at the temperature of deflection under load: 1.8 MPa over the 0.2 % flexural strain at
 * which ISO 75-1 (2020), clause 3, defines the test.
 */
export const modulusAtHdt: number = 1.8e6 / 0.002

/** Stiffness left at a temperature (°C), as a fraction of that at 23 °C. */
export function stiffnessFactor(data: FrameMaterialData, temperature: number): number {
  if (data.hdt === null || temperature <= 23) return 1
  return 1 - (1 - modulusAtHdt / data.modulus[0]) * ((temperature - 23) / (data.hdt - 23))
}

/** Strength left at a temperature (°C), as a fraction of that at 23 °C. */
export function strengthFactor(data: FrameMaterialData, temperature: number): number {
  return data.derating ? interpolate(data.derating, temperature) : stiffnessFactor(data, temperature)
}

/** Stiffness left after a load has stood for some time (s), as a fraction of that under a short load. */
export function creepFactor(data: FrameMaterialData, duration: number): number {
  return data.creep ? interpolate(data.creep, Math.log10(Math.max(duration / 3600, 0.1))) : 1
}
