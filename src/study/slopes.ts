// How a result changes with each input at one place.
import type { Bench } from "./bench.js"
import type { SpreadPlace } from "./spread.js"

/** Slopes of one value of the result; NaN where there is none. */
export interface Slopes {
  readonly base: number
  readonly slope: readonly number[]
  /** Whether it rises to the one side as it falls to the other; null where only one side answers. */
  readonly isSmooth: readonly (boolean | null)[]
}

/** Steps against the range varied: the second one half the first, so that the error of both can be taken out. */
const STEP = 2e-3

/** Slopes by central differences of two widths (L. F. Richardson's extrapolation), one-sided where only one side has an answer. */
export async function slopesOf(bench: Bench, places: readonly SpreadPlace[], width: number): Promise<(k: number) => Slopes> {
  const here = places.map(({ value, box: [low, high], whole }) => {
    const at = value ?? (low + high) / 2
    return whole ? Math.round(at) : at
  })
  const steps = places.map(({ box: [low, high], whole }, j) =>
    whole ? 1 : Math.max((high - low) * STEP, Math.abs(here[j] as number) * 1e-9),
  )
  const offsets = [1, -1, 0.5, -0.5]
  const rows = [
    here,
    ...places.flatMap(({ whole }, j) =>
      offsets.map((t) => here.map((v, i) => (i === j ? v + (whole ? Math.sign(t) : t) * (steps[j] as number) : v))),
    ),
  ]
  const { values } = await bench.try(rows)
  return (k) => {
    const at = (row: number) => values[row * width + k] as number
    const base = at(0)
    const sides = places.map(({ whole }, j) => {
      const h = steps[j] as number
      const [up, down, nearUp, nearDown] = [0, 1, 2, 3].map((i) => at(1 + 4 * j + i)) as [number, number, number, number]
      const [rise, fall] = [(up - base) / h, (base - down) / h]
      if (Number.isNaN(rise) || Number.isNaN(fall)) return { slope: Number.isNaN(rise) ? fall : rise, isSmooth: null }
      const wide = (rise + fall) / 2
      if (whole) return { slope: wide, isSmooth: Math.abs(rise - fall) <= 0.1 * Math.max(Math.abs(rise), Math.abs(fall)) }
      const near = (nearUp - nearDown) / h
      // a curve bends the sides apart in step with h, a kink does so at any h
      const bend = Math.abs(rise - fall)
      const nearBend = Math.abs((nearUp - 2 * base + nearDown) / (h / 2))
      const isSmooth = nearBend <= 0.75 * bend || bend <= 1e-3 * Math.max(Math.abs(rise), Math.abs(fall), 1e-12 * Math.abs(base / h))
      return { slope: isSmooth ? (4 * near - wide) / 3 : wide, isSmooth }
    })
    return { base, slope: sides.map(({ slope }) => slope), isSmooth: sides.map(({ isSmooth }) => isSmooth) }
  }
}
