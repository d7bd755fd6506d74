// What an answer warns of, and where it stops being valid.

import { type Caution, caution } from "../../../solver/index.js"
import { fallsCaution, pinchCaution } from "../../hazards.js"
import { byMoments, ownResult } from "../../sources.js"
import type { Si, TetheredFan, TetheredFanCaution } from "./types.js"

/** What an answer warns of. */
export function cautions(si: Si, out: TetheredFan): Caution<TetheredFanCaution>[] {
  const found: Caution<TetheredFanCaution>[] = [pinchCaution("Neighbouring vanes"), fallsCaution("The fan")]
  if (!out.staysTaut)
    found.push(
      caution(
        "vanes-fall-forward",
        "warning",
        "Somewhere on the sweep the weight of a vane turns it ahead of its thread: it falls forward with a jerk and the angles given there do not hold. Stop the driver earlier or give each vane an elastic return (returnMoment).",
        byMoments,
      ),
    )
  if (out.maxTipGap > -si.overlap)
    found.push(
      caution(
        "gaps-at-tips",
        "note",
        "At the chosen angle the tips stand up to {maxTipGap length} apart; an overlap of {given.overlap length} was wanted.",
        ownResult,
        { maxTipGap: out.maxTipGap, "given.overlap": si.overlap },
      ),
    )
  if (si.threads === null && out.threads.some((thread) => thread < 0.005))
    found.push(
      caution(
        "short-threads",
        "note",
        "A thread of {shortest length} is hard to tie to length: a larger attachRadius makes all threads longer and errors smaller in angle.",
        undefined,
        { shortest: Math.min(...out.threads) },
      ),
    )
  return found
}
