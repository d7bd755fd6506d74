// The kernel: SI numbers in, values or a refusal out.

import { fill, type NoSolution, refuse } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { type CellSi, judgeOf, type Miss, type PackCandidate } from "./candidates.js"
import type { PackSize, PackSizeRefusal, Si } from "./types.js"

/** Judges every cell at every number in series that could serve, one at a time. */
function* judgeAll(si: Si): Generator<PackCandidate | Miss> {
  for (const cell of si.cells) {
    const { cellFullVoltage: fullVoltage } = chemistries[cell.chemistry]
    const mostSeries = Math.floor(si.maxVoltage / fullVoltage + 1e-9)
    if (mostSeries < 1)
      yield {
        loser: () => ({
          name: cell.name,
          series: 0,
          reason: fill("one full cell has {full voltage}, more than the maximum voltage", { full: fullVoltage }),
        }),
        frees: "maxVoltage",
      }
    const judged = judgeOf(cell, si)
    // fewer in series than full cells could ever reach the minimum voltage with are not worth a line
    for (let series = Math.max(1, Math.floor(si.minVoltage / fullVoltage)); series <= mostSeries; series++) yield judged(series)
  }
}

/** Each limit at its most forgiving, within the limits of its field. */
const forgiving = {
  maxVoltage: 500,
  minVoltage: 1e-3,
  maxMass: 1000,
  transportEnergyLimit: 3.6e8,
  maxParallel: 200,
  cellTemperature: 25,
  energy: 1,
  peakCurrent: 1e-3,
} as const

/** The limit whose change alone, the smallest in proportion, lets some pack fit; null where no single one does. */
function nearestChange(si: Si): { readonly field: string; readonly value: number; readonly by: number } | null {
  const fits = (field: string, value: number) => {
    for (const judged of judgeAll({ ...si, [field]: value })) if (!("frees" in judged)) return true
    return false
  }
  let best: { field: string; value: number; by: number; share: number } | null = null
  for (const [field, limit] of Object.entries(forgiving)) {
    const own = si[field as keyof typeof forgiving]
    if (own === null || !(field === "minVoltage" || field === "maxVoltage" || own !== limit) || !fits(field, limit)) continue
    let [near, far] = [own, limit as number]
    for (let k = 0; k < 14; k++) {
      // by halves of the ratio, since some limits are thousands of times the value; temperatures may be negative
      const between = field === "cellTemperature" ? (near + far) / 2 : Math.sqrt(near * far)
      const mid = field === "maxParallel" ? Math.round(between) : between
      if (fits(field, mid)) far = mid
      else near = mid
    }
    const by = Math.abs(far - own)
    const share = by / Math.max(Math.abs(own), 1e-9)
    if (best === null || share < best.share) best = { field, value: far, by, share }
  }
  return best
}

export function solve(si: Si): PackSize | NoSolution<PackSizeRefusal> {
  const choices: PackCandidate[] = []
  const misses: Miss[] = []
  for (const judged of judgeAll(si)) "frees" in judged ? misses.push(judged) : choices.push(judged)
  const measure = (c: PackCandidate) =>
    si.rankBy === "mass" ? c.mass : si.rankBy === "cells" ? c.cellCount : (c.price ?? Number.POSITIVE_INFINITY)
  choices.sort((a, b) => measure(a) - measure(b) || a.mass - b.mass || a.cellCount - b.cellCount)
  const [best] = choices
  if (!best) {
    const change = nearestChange(si)
    const { name, reason } = (misses.find((m) => change && m.frees === change.field) ?? (misses[0] as Miss)).loser()
    return refuse(
      "no-candidate",
      change
        ? "No cell of the catalogue meets everything; {name}, for one: {reason}. A pack is found with {field} changed alone."
        : "No cell of the catalogue meets everything, whatever single limit is changed; {name}, for one: {reason}. Ask for less, or add other cells.",
      change ? change.by : si.energy,
      {},
      change ? { [change.field]: change.value } : {},
      change ? { name, reason, field: change.field } : { name, reason },
    )
  }
  const units = { mass: "kg", cells: "cells", price: "of price" }[si.rankBy]
  return {
    bestCell: best.name,
    series: best.series,
    parallel: best.parallel,
    energy: best.energy,
    mass: best.mass,
    candidates: choices.map((c, i) => ({ ...c, lostBy: i === 0 ? "" : lostBy(measure(c) - measure(best), units, c) })),
    rejected: misses.map((m) => m.loser()),
  }
}

function lostBy(excess: number, units: string, choice: PackCandidate): string {
  if (!Number.isFinite(excess)) return "no price given"
  return excess > 0
    ? fill("{excess} {units} more ({setBy} sets its {parallel} in parallel)", {
        excess,
        units,
        setBy: choice.setBy,
        parallel: choice.parallel,
      })
    : "equal, but heavier or more cells"
}

/** The chosen cell, as it was offered. */
export function bestCell(si: Si, out: PackSize): CellSi {
  return si.cells.find((cell) => cell.name === out.bestCell) as CellSi
}
