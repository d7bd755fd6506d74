// Whether a motion is slow enough for what is found without its inertia.
import { formatQuantity } from "../../quantity/index.js"
import { COUPLING_SHARE, type Coupling, mostCoupled } from "../run/coupling.js"
import type { MotionModel } from "../run/motion-model.js"
import { tabledPoint } from "../run/ride.js"
import { inertiaShare, note, solveRide } from "../run/solve-ride.js"
import { blocked } from "./check.js"
import { FULL, type Judged, type Run } from "./conditions.js"
import { type Measured, type NotMade, verdictOf } from "./finding.js"

/** Places at which a way is looked at. */
const LOOKS = 40

/** One run of each way for every posture: what the motion itself asks is the same whatever feeds it. */
export const ofPostures = (runs: readonly Run[]): readonly Run[] =>
  runs.filter((run, i) => runs.findIndex(({ way, ride }) => way === run.way && ride.around === run.ride.around) === i)

/** Share of the energy moved that may be motion, for a time found without it; common practice, no source. */
export const INERTIA_SHARE = 0.05

/** Share of the energy moved that is motion where a motion is quickest, found once for its runs. */
export function quickestShare(motion: MotionModel, runs: readonly Run[]): { readonly run: Run; readonly share: number } {
  const known = shareOf.get(runs)
  if (known) return known
  // motion goes with the square of the speed: the quickest of each way, in every posture, since that changes the energy moved
  const quickest = ofPostures(runs).map(({ way, ride }) =>
    runs
      .filter((run) => run.way === way && run.ride.around === ride.around)
      .reduce((a, b) => ((b.quick?.duration ?? 0) < (a.quick?.duration ?? 0) ? b : a)),
  )
  const shares = quickest.map((run) => {
    const solved = solveRide(run.ride, 1)
    // the fastest place may lie between those of the quadrature, or at an end
    for (let k = 0; k <= LOOKS; k++) if (tabledPoint(run.ride, (motion.span * k) / LOOKS).trouble === "none") note(run.ride, solved.met)
    return { run, share: inertiaShare(solved) }
  })
  const most = shares.reduce((a, b) => (b.share > a.share ? b : a))
  shareOf.set(runs, most)
  return most
}

const shareOf = new WeakMap<readonly Run[], { readonly run: Run; readonly share: number }>()

/** A finding that stands on times, currents or efforts found without inertia: no promise where that is not small. */
export function slowEnough(motion: MotionModel, runs: readonly Run[], result: Measured | NotMade | null): Measured | NotMade | null {
  if (!result || "verdict" in result || verdictOf(result) === "falls short") return result
  if (quickestShare(motion, runs).share <= INERTIA_SHARE) return result
  const sentence = `${result.sentence} That is found without inertia, which is no longer small here: see there first.`
  return { ...blocked(sentence, "inertia", motion.name), measured: result }
}

const coupled = new WeakMap<Judged, Map<number, Coupling>>()

/** The same of motions mounted on motions: no promise where each gives the other more motion than can be left out. */
export function apartEnough(rig: Judged, index: number, result: Measured | NotMade | null): Measured | NotMade | null {
  const motion = rig.motions[index]
  if (!motion?.tie || result === null || "verdict" in result || verdictOf(result) === "falls short") return result
  const known = coupled.get(rig) ?? new Map<number, Coupling>()
  coupled.set(rig, known)
  const { share, other } = known.get(index) ?? mostCoupled({ rig: quickest(rig), motions: rig.motions }, index)
  known.set(index, { share, other })
  if (share <= COUPLING_SHARE) return result
  return {
    verdict: "cannot be judged",
    missing: null,
    because: null,
    sentence: `${motion.name} and ${other} hang together and may move at once: up to ${formatQuantity("ratio", share, "%")} of the energy moved would be motion that one gives the other, and only ${formatQuantity("ratio", COUPLING_SHARE, "%")} can be left out here. Have the programme move one after the other, slow one down, or move less mass.`,
    measured: result,
  }
}

/** A rig's cells full: its motions are quickest then. */
const quickest = ({ rig, conditions }: Judged) => conditions.find(({ name }) => name.endsWith(FULL))?.rig ?? rig
