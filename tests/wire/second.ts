/** A wire's heat written a second time, by bisection and time stepping, for tests to compare with. */

export interface Size {
  readonly awg: number | null
  readonly area: number | null
  readonly material: "copper" | "aluminium"
  readonly stranding: string
}
export interface Place {
  readonly arrangement: string
  readonly wires: number
  readonly ambientTemperature: number
  readonly skinTemperature: number
  readonly insulationThickness: number
  readonly insulationConductivity: number
  readonly bundleConductivity: number
  readonly emissivity: number
  readonly paddingThickness: number
  readonly paddingConductivity: number
  readonly paddingSurface: number
}

/** Alone in still air at 25 °C: 0.4 mm of PVC. */
export const inStillAir: Place = {
  arrangement: "free-air",
  wires: 1,
  ambientTemperature: 25,
  skinTemperature: 35,
  insulationThickness: 0.0004,
  insulationConductivity: 0.17,
  bundleConductivity: 0.15,
  emissivity: 0.9,
  paddingThickness: 0.01,
  paddingConductivity: 0.04,
  paddingSurface: 8,
}

/** IEC 60228, tables 2 and 3, typed again: Ω/km of class 2, its tinned, class 5, its tinned. */
export const nominalOhms: readonly (readonly [number, number, number, number, number])[] = [
  [0.5, 36.0, 36.7, 39.0, 40.1],
  [0.75, 24.5, 24.8, 26.0, 26.7],
  [1.0, 18.1, 18.2, 19.5, 20.0],
  [1.5, 12.1, 12.2, 13.3, 13.7],
  [2.5, 7.41, 7.56, 7.98, 8.21],
  [4.0, 4.61, 4.7, 4.95, 5.09],
  [6.0, 3.08, 3.11, 3.3, 3.39],
  [10.0, 1.83, 1.84, 1.91, 1.95],
  [16.0, 1.15, 1.16, 1.21, 1.24],
]

export const areaOf = ({ awg, area }: Pick<Size, "awg" | "area">): number =>
  awg === null ? (area as number) : (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - awg) / 39)) ** 2

export const perMetre20 = (size: Size): number => {
  const area = areaOf(size)
  const column = ["class2", "class2-tinned", "class5", "class5-tinned"].indexOf(size.stranding)
  if (column >= 0) return (nominalOhms.find(([a]) => Math.abs(a - area * 1e6) < 1e-6)?.[column + 1] as number) / 1000
  return ((size.material === "copper" ? 1 / 58e6 : 28.264e-9) * (size.stranding === "stranded" ? 1.02 : 1)) / area
}
export const perMetre = (size: Size, t: number): number =>
  perMetre20(size) * (1 + (size.material === "copper" ? 0.00393 : 0.00403) * (t - 20))

/** Surface coefficient: Churchill–Chu and radiation. */
export function film(d: number, ta: number, ts: number, e: number): number {
  const mean = (ta + ts) / 2 + 273.15
  const mu = (1.716e-5 * Math.sqrt(mean / 273.15) * mean) / 273.15 / ((mean + 110.4) / 383.55)
  const density = 101325 / 287.05 / mean
  const grashof = (9.80665 * (ts - ta) * d * d * d) / mean / (mu / density) ** 2
  const pr = 707 / 1000
  const nu = (0.6 + (0.387 * (grashof * pr) ** (1 / 6)) / (1 + (0.559 / pr) ** 0.5625) ** (8 / 27)) ** 2
  const [s, a] = [ts + 273.15, ta + 273.15]
  return (nu * 0.0263 * (mean / 300) ** 0.865) / d + (ts === ta ? 0 : (e * 5.670374419e-8 * (s ** 4 - a ** 4)) / (ts - ta))
}

/** Where the wire lies without current. */
export const startOf = (p: Place): number =>
  p.arrangement === "padding" && p.ambientTemperature < p.skinTemperature ? p.skinTemperature : p.ambientTemperature

/** Heat one metre of one wire gives off for good with its conductor at `tc`, and its surface then. */
export function flow(size: Size, p: Place, tc: number): { readonly watts: number; readonly surface: number } {
  const start = startOf(p)
  const n = p.arrangement === "free-air" ? 1 : p.wires
  const bare = 2 * Math.sqrt(areaOf(size) / Math.PI)
  const wire = bare + 2 * p.insulationThickness
  const outer = n > 1 ? wire * 1.2 * Math.sqrt(n) : wire
  const inside = Math.log(wire / bare) / p.insulationConductivity / 2 / Math.PI + (n > 1 ? n / p.bundleConductivity / 4 / Math.PI : 0)
  const z = outer / 2 + p.paddingThickness + p.paddingConductivity / p.paddingSurface
  const given = (ts: number) =>
    p.arrangement === "padding"
      ? ((ts - start) * Math.PI * p.paddingConductivity) / Math.log((8 * z) / Math.PI / outer)
      : Math.PI * outer * film(outer, start, ts, p.emissivity) * (ts - start)
  let [a, b] = [start, tc]
  for (let k = 0; k < 100 && b - a > 1e-14 * b; k++) {
    const mid = (a + b) / 2
    if (given(mid) * inside < n * (tc - mid)) a = mid
    else b = mid
  }
  return { watts: given(a) / n, surface: a }
}

/** Current that holds the conductor at `tc` for good. */
export const currentFor = (size: Size, p: Place, tc: number): number => Math.sqrt(flow(size, p, tc).watts / perMetre(size, tc))

/** Conductor temperature at which a current is balanced, below 1000 °C. */
export function settles(size: Size, p: Place, current: number): number {
  let [low, high] = [startOf(p), 1000]
  for (let k = 0; k < 200; k++) {
    const mid = (low + high) / 2
    if (current ** 2 * perMetre(size, mid) > flow(size, p, mid).watts) low = mid
    else high = mid
  }
  return low
}

/** Conductor temperature after some seconds at a current, by Runge–Kutta steps of a lump that sheds as in steady state. */
export function heated(size: Size, p: Place, current: number, seconds: number, from: number, steps = 400): number {
  const stored = (size.material === "copper" ? 3.45e6 : 2.5e6) * areaOf(size)
  const rate = (t: number) => (current ** 2 * perMetre(size, t) - flow(size, p, Math.max(t, startOf(p))).watts) / stored
  const h = seconds / steps
  let t = Math.max(from, startOf(p))
  for (let k = 0; k < steps && t < 2000; k++) {
    const a = rate(t)
    const b = rate(t + (h / 2) * a)
    const c = rate(t + (h / 2) * b)
    t += (h / 6) * (a + 2 * b + 2 * c + rate(t + h * c))
  }
  return t
}

/** Preece: current that melts the bare wire, from the diameter in inches. */
export const melts = (size: Size): number =>
  ({ copper: 10244, aluminium: 7585 })[size.material] * ((2 * Math.sqrt(areaOf(size) / Math.PI)) / 0.0254) ** 1.5

const fuses = new Map<string, number>()

/** Largest blade fuse for a wire: 135 % for good at its rating, 200 % for 5 s from its rating to the limit. */
export function largestFuse(size: Size, p: Place, rating: number, limit: number): number {
  const key = JSON.stringify([size, p, rating, limit])
  const known = fuses.get(key)
  if (known !== undefined) return known
  const long = Math.min(currentFor(size, p, rating), melts(size)) / 1.35
  let most = long
  if (heated(size, p, 2 * long, 5, rating) > limit) {
    let [low, high] = [0, long]
    for (let k = 0; k < 44; k++) {
      const mid = (low + high) / 2
      if (heated(size, p, 2 * mid, 5, rating) > limit) high = mid
      else low = mid
    }
    most = low
  }
  fuses.set(key, most)
  return most
}
