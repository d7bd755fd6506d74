// The kernel: SI numbers in, values or a refusal out.

import { type NoSolution, refuse } from "../../solver/index.js"
import type { LedRunRefusal, LedTrace } from "./line.js"
import { dimmedOf, type LedRun, lowest, profileOf, runOf, type Span } from "./line.js"
import type { Si } from "./types.js"

/** A current of the lights that leaves some voltage everywhere, tried; none where no smaller one does. */
function nearestCurrent(si: Si, lowestVoltage: number): Record<string, number> {
  // every voltage is linear in the current, so the lowest falls from its value at no load
  const idle = lowest(si, runOf({ ...si, current: 0 })).voltage
  const current = si.current * (idle / (idle - lowestVoltage)) * (1 - 1e-9)
  return current > 0 && lowest(si, runOf({ ...si, current })).voltage > 0 ? { current } : {}
}

export function solve(si: Si, trace?: Partial<LedTrace>): LedRun | NoSolution<LedRunRefusal> {
  const run = runOf(si)
  const low = lowest(si, run)
  if (trace) Object.assign(trace, { run, low } satisfies LedTrace)
  const minVoltagePosition = (run.spans[low.span] as Span).start + low.s
  if (!(low.voltage > 0))
    return refuse(
      "insufficient-voltage",
      "The run would lose all its voltage {position length} from the start: it is short of {shortBy voltage} there and cannot carry this current.",
      // exactly nothing left is refused too, and any voltage at all would be an answer
      Math.max(-low.voltage, Number.MIN_VALUE),
      { position: minVoltagePosition },
      nearestCurrent(si, low.voltage),
    )
  const profile = profileOf(si, run)
  const feeds = run.order.map((f, j) => {
    const current = run.currents[j] as number
    return { position: f.position, current, voltage: f.sourceVoltage - f.feederResistance * current }
  })
  const runHeat = run.spans.reduce(
    (sum, { current: a, length: l }) => sum + run.r * (a ** 2 * l - a * run.spread * l ** 2 + (run.spread ** 2 * l ** 3) / 3),
    0,
  )
  const feederHeat = run.order.reduce((sum, f, j) => sum + f.feederResistance * (run.currents[j] as number) ** 2, 0)
  const dimmed = si.dimVoltage === null ? [] : dimmedOf(si, run, si.dimVoltage, profile)
  return {
    minVoltage: low.voltage,
    minVoltagePosition,
    maxDrop: Math.max(...si.feeds.map((f) => f.sourceVoltage)) - low.voltage,
    loopResistance: run.r,
    feeds,
    maxCurrent: Math.max(...run.spans.flatMap((s) => [Math.abs(s.current), Math.abs(s.current - run.spread * s.length)])),
    loadPower: run.order.reduce((sum, f, j) => sum + f.sourceVoltage * (run.currents[j] as number), 0) - runHeat - feederHeat,
    runHeat,
    feederHeat,
    profile,
    dimmed,
    dimmedShare: si.dimVoltage === null ? null : dimmed.reduce((sum, d) => sum + d.to - d.from, 0) / si.length,
  }
}
