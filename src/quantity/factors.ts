// Exact ratios that units of several kinds share.
import type { Factor } from "./units-of.js"

export const PI: number = Math.PI
export const one: Factor = [1, 1]
export const milli: Factor = [1, 1000]
export const micro: Factor = [1, 1e6]
export const nano: Factor = [1, 1e9]
export const kilo: Factor = [1000, 1]
export const mega: Factor = [1e6, 1]
// 1 lbf = 0.45359237 kg × 9.80665 m/s² exactly
export const lbf: Factor = [8896443230521, 2e12]
export const degF: Factor = [5, 9, -160 / 9]
