// Short steps above what a cell may give for as long as it lasts.
import { type Caution, caution } from "../../solver/index.js"
import { dischargeLimitFactor } from "../data.js"
import { emfAt, loadCurrent } from "../discharge.js"
import { LITHIUM_SAFETY, PULSE_SHEETS } from "../sources.js"
import { problemOf } from "./problem.js"
import type { PulseCaution, Runtime, Si } from "./types.js"

/** Fields of what a sheet allows for a short while. */
export const pulseFields = {
  cellPulseCurrent: {
    kind: "current",
    symbol: "I_p",
    label: "pulse current of a cell",
    min: "0.1 mA",
    max: 5000,
    typical: [35, 60],
    default: null,
  },
  cellPulseDuration: {
    kind: "time",
    symbol: "t_p",
    label: "longest pulse",
    min: "1 ms",
    max: "10 min",
    typical: ["1 s", "30 s"],
    default: null,
  },
} as const

/** What a cell gives in a round: its largest current, that of equal heat, and the longest stretch above a limit, s. */
function roundOf(si: Si, out: Runtime, limit: number) {
  const { curve, resistance, loads, start } = problemOf(si)
  const ends = [emfAt(curve, start), emfAt(curve, out.endStateOfCharge)]
  const currents = loads.map((load) => Math.max(...ends.map((emf) => loadCurrent(load, emf, resistance))) / si.parallel)
  const durations = loads.map((load) => load.duration)
  const squares = currents.reduce((sum, current, i) => sum + current ** 2 * (durations[i] as number), 0)
  const rest = currents.findIndex((current) => current <= limit)
  let [longest, stretch] = [rest < 0 ? out.runtime : 0, 0]
  // from a step within the limit on, once round
  for (let k = 1; rest >= 0 && k <= loads.length; k++) {
    const i = (rest + k) % loads.length
    stretch = (currents[i] as number) > limit ? stretch + (durations[i] as number) : 0
    longest = Math.max(longest, stretch)
  }
  return {
    cellCurrent: Math.max(...currents),
    sameHeat: Math.sqrt(squares / durations.reduce((sum, duration) => sum + duration, 0)),
    longest,
  }
}

/** What is said of a pattern whose cell has a published limit for pulses. */
export function pulseCautions(si: Si, out: Runtime, limit: number): Caution<PulseCaution>[] {
  const { cellPulseCurrent, cellPulseDuration } = si
  if (cellPulseCurrent === null || cellPulseDuration === null) return []
  const allowed = cellPulseCurrent * dischargeLimitFactor(si.chemistry, si.cellTemperature)
  const { cellCurrent, sameHeat, longest } = roundOf(si, out, limit)
  const found: Caution<PulseCaution>[] = []
  if (!(cellCurrent > limit)) return found
  if (cellCurrent > allowed)
    found.push(
      caution(
        "over-pulse",
        "warning",
        "At its peak a cell gives {cellCurrent current}, above the {allowed current} that it may give even as a pulse at this temperature: it overheats. Use more in parallel or another cell.",
        LITHIUM_SAFETY,
        { cellCurrent, allowed },
      ),
    )
  // rounding of a sum of steps is not to make a pulse too long
  if (longest > cellPulseDuration * (1 + 1e-9))
    found.push(
      caution(
        "pulse-too-long",
        "warning",
        "A cell gives more than its continuous {limit current} for {longest time} on end, and pulses are published for {given.cellPulseDuration time} at most: shorten the move, or use more in parallel.",
        PULSE_SHEETS,
        { limit, longest, "given.cellPulseDuration": cellPulseDuration },
      ),
    )
  if (sameHeat > limit)
    found.push(
      caution(
        "pulse-heat",
        "warning",
        "Over a round the cells heat as a steady {sameHeat current} would, above the continuous {limit current}: longer rests between the pulses, or more in parallel.",
        LITHIUM_SAFETY,
        { sameHeat, limit },
      ),
    )
  if (found.length === 0)
    found.push(
      caution(
        "pulse",
        "caution",
        "Peaks of {cellCurrent current} a cell, above the continuous {limit current}, count as pulses of at most {longest time}: a stuck move makes them last, so set the fuse and the cut-out to the continuous limit, and feel that the cells stay cool.",
        PULSE_SHEETS,
        { cellCurrent, limit, longest },
      ),
    )
  return found
}
