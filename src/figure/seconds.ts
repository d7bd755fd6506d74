// Where the seconds of a move go, step by step.
import { stepChart } from "../drawing/index.js"
import { formatQuantity } from "../quantity/index.js"
import type { Move } from "../rig/index.js"
import type { Figure } from "./figure.js"

/**
 * Where the seconds of one way of a move go: a bar for each step, beginning where the one before ended.
 *
 * @param move - what `move` returned
 * @param way - the way out, or the way back
 * @example
 * ```ts
 * import { move } from 'alula/rig'
 * import { secondsFigure } from 'alula/figure'
 * secondsFigure(move(move.example)).title // => 'Where the seconds go, out'
 * ```
 */
export function secondsFigure(move: Move, way: "out" | "back" = "out"): Figure {
  const whole = move[way].duration
  // what rounding leaves of nothing is nothing
  const told = move[way].waterfall.map((step) => (Math.abs(step.added) > 1e-9 * whole ? step : { ...step, added: 0 }))
  const steps = told.map(({ label, duration, added }) => ({ label, total: duration, added }))
  const shown = (seconds: number) => formatQuantity("time", seconds, "s")
  const title = `Where the seconds go, ${way}`
  return {
    title,
    svg: stepChart(title, steps, shown),
    alternative: `${told.map(({ label, added }, i) => `${label}: ${i === 0 ? "" : added < 0 ? "less " : "more by "}${shown(Math.abs(added))}`).join("; ")}; ${shown(whole)} in all.`,
  }
}
