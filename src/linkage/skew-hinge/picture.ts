// The swinging part as it is seen from the front or from the wearer's left, for poseSvg and poseText.
import type { SiOf } from "../../solver/index.js"
import type { PosePicture } from "../pose-picture.js"
import type { BodyVector } from "../space.js"
import { placeAt } from "./kernel.js"
import type { SkewHingeInput } from "./types.js"

/** Hinge, masses and tip at both ends of the swing and where it is asked for; from the front, the wearer's left is on the right. */
export function skewHingePicture(si: SiOf<SkewHingeInput>, from: "front" | "left" = "front"): PosePicture {
  const seen = (p: BodyVector) => ({ x: from === "front" ? p.left : -p.forward, y: p.up })
  const arm = (swing: number, style: "part" | "earlier", label: string) => ({
    label,
    style,
    points: [seen(si.hinge), ...si.masses.map((m) => seen(placeAt(si, m, swing))), seen(placeAt(si, si.tip, swing))],
  })
  const path = Array.from({ length: 61 }, (_, k) => seen(placeAt(si, si.tip, si.swingFrom + ((si.swingTo - si.swingFrom) * k) / 60)))
  return {
    title: from === "front" ? "Skew hinge, from the front" : "Skew hinge, from the wearer's left",
    description: "Hinge, masses and tip where asked for in full, both ends of the swing faint; dotted: path of the tip",
    lines: [
      arm(si.swingFrom, "earlier", "one end of the swing"),
      arm(si.swingTo, "earlier", "other end of the swing"),
      arm(si.swing, "part", "as asked for"),
      { label: "path of the tip", style: "path" as const, points: path },
    ],
    pivots: [seen(si.hinge)],
  }
}
