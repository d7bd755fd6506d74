// Paths into a whole rig's document and its results: checked by compiling this file with the other tests.
import type { Move, MoveInput, Rig } from "../../src/rig/index.js"
import { assessRig, move } from "../../src/rig/index.js"
import { inputPlaces, type PathTo, solveFor, sweep, type ValueAt } from "../../src/study/index.js"

export const inputs: readonly PathTo<MoveInput>[] = [
  "motions.0.wanted.duration",
  "motions.1.mechanisms.0.mount.forward",
  "motions.0.drive.count",
  "power.sources.0.series",
  "posture.leanForward",
]
export const outputs: readonly PathTo<Move>[] = ["outDuration", "out.peakCurrent", "out.energy.winding"]
export const height: ValueAt<Rig, "motions.0.mechanisms.0.mount.height"> = "1.2 m"
// @ts-expect-error no such place
export const noPlace: PathTo<Rig> = "motions.0.mechanisms.0.mount.forwards"
// @ts-expect-error a mass is no length
export const noLength: ValueAt<Rig, "motions.0.mechanisms.0.mount.forward"> = "3 kg"

export async function studies(): Promise<unknown> {
  const rig = await sweep(move, move.example, { "motions.0.drive.count": [1, 2] }, { outputs: ["outDuration", "out.energy.winding"] })
  const winding: readonly (number | null)[] = rig.outputs["out.energy.winding"]
  const all = await sweep(move, move.example, { "motions.0.wanted.duration": ["3 s"] })
  const peak: readonly (number | null)[] = all.outputs["back.peakCurrent"]
  const few = await solveFor(move, move.example, { vary: "motions.0.drive.count", target: { output: "outDuration", atMost: "9 s" } })
  const count: number | undefined = few.hits[0]?.value
  // @ts-expect-error no such place
  await sweep(move, move.example, { "motions.0.drive.counts": [1, 2] })
  // @ts-expect-error a mass is no length
  await sweep(assessRig, assessRig.example, { "motions.0.mechanisms.0.mount.forward": ["1 kg"] })
  // @ts-expect-error no such value of the result
  await solveFor(assessRig, assessRig.example, { vary: "posture.leanLeft", target: { output: "marginals", atMost: 1 } })
  return [winding, peak, count, inputPlaces(move, move.example), inputPlaces(assessRig, assessRig.example)]
}
