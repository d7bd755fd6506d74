// The best linkage at its poses, for poseSvg and poseText.
import type { PosePicture } from "../pose-picture.js"
import { placeOf } from "./dyads.js"
import type { FourBarSynthesis, Si, SynthesisedFourBar } from "./types.js"

/** A linkage found, drawn at every pose of its task; the last pose in full, the earlier ones faint. */
export function fourBarSynthesisPicture(si: Pick<Si, "poses">, out: Pick<FourBarSynthesis, "solutions">, listed = 0): PosePicture {
  const found = out.solutions[listed] as SynthesisedFourBar
  const lines = si.poses.map((pose, i) => ({
    label: `pose ${i + 1}`,
    closed: false,
    style: i === si.poses.length - 1 ? ("part" as const) : ("earlier" as const),
    points: [found.inputPivot, placeOf(pose, found.inputPin), placeOf(pose, found.outputPin), found.outputPivot],
  }))
  const origins = { label: "coupler's origin", style: "path" as const, points: si.poses.map(({ x, y }) => ({ x, y })) }
  return {
    title: "Four-bar through its poses",
    description: `Input link, coupler and output link at ${si.poses.length} poses; the dotted line joins the places of the coupler's origin`,
    lines: [...lines, origins],
    pivots: [found.inputPivot, found.outputPivot],
  }
}
