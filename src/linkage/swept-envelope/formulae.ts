import type { SiOf, Step } from "../../solver/index.js"
import { type Pose, pointRates } from "../planar/solve.js"
import type { SweptMotion, SweptTrace } from "./motion.js"
import { nextCorners } from "./outline.js"
import { moving } from "./strips.js"
import type { SweptEnvelope, SweptEnvelopeInput } from "./types.js"

type Found = Partial<SweptTrace>
const motionOf = ({ moved }: Found) => moved as SweptMotion
/** Coordinates of all body points in one pose, or in all. */
const places = (axis: 0 | 1, which?: (last: number) => number) => (_si: unknown, _out: unknown, trace: Found) => {
  const { model, poses } = motionOf(trace)
  const list = which ? [poses[which(poses.length - 1)] as Pose] : poses
  return list.flatMap((pose) => moving(model).map((i) => pose.q[2 * i + axis] as number))
}
const size = (symbol: string, axis: 0 | 1, stage: string, meaning: string, which: (last: number) => number) => [
  {
    symbol: `${axis ? "y" : "x"}_${stage}`,
    kind: "length" as const,
    meaning: `${axis ? "heights" : "places"} of all pins, ${meaning}`,
    given: places(axis, which),
  },
  {
    symbol,
    meaning: `${axis ? "height" : "span"} ${meaning}`,
    is: `max(${axis ? "y" : "x"}_${stage}) - min(${axis ? "y" : "x"}_${stage}) + 2 * w`,
  },
]

/** Steps of the tip from pose to pose along an axis. */
const tipSteps = (axis: 0 | 1) => (si: SiOf<SweptEnvelopeInput>, _out: unknown, trace: Found) => {
  const { model, poses } = motionOf(trace)
  const i = 2 * model.names.indexOf(si.tip) + axis
  return poses.slice(1).map(({ q }, k) => (q[i] as number) - ((poses[k] as Pose).q[i] as number))
}
const tipSpeeds = (si: SiOf<SweptEnvelopeInput>, _out: unknown, trace: Found) => {
  const { model, poses } = motionOf(trace)
  const i = 2 * model.names.indexOf(si.tip)
  const rates = trace.rates as readonly number[]
  return poses.map((pose) => {
    const v = pointRates(model, pose, rates)
    return Math.hypot(v[i] as number, v[i + 1] as number)
  })
}

/** Formulae of `sweptEnvelope`. */
export const sweptFormulae: readonly Step<SiOf<SweptEnvelopeInput>, SweptEnvelope, SweptTrace>[] = [
  ...size("S_0", 0, "f", "folded", () => 0),
  ...size("H_0", 1, "f", "folded", () => 0),
  ...size("S_1", 0, "h", "half way", (last) => last / 2),
  ...size("H_1", 1, "h", "half way", (last) => last / 2),
  ...size("S_2", 0, "r", "raised", (last) => last),
  ...size("H_2", 1, "r", "raised", (last) => last),
  { symbol: "x_all", kind: "length", meaning: "places of all pins in all poses", given: places(0) },
  { symbol: "y_all", kind: "length", meaning: "heights of all pins in all poses", given: places(1) },
  { symbol: "eps", kind: "length", meaning: "allowance between poses", given: (_, out) => out.errorEstimate },
  { symbol: "x_l", meaning: "left limit", is: "min(x_all) - w - eps" },
  { symbol: "x_r", meaning: "right limit", is: "max(x_all) + w + eps" },
  { symbol: "y_b", meaning: "lower limit", is: "min(y_all) - w - eps" },
  { symbol: "y_t", meaning: "upper limit", is: "max(y_all) + w + eps" },
  { symbol: "S", meaning: "span swept", is: "x_r - x_l" },
  { symbol: "H", meaning: "height swept", is: "y_t - y_b" },
  { symbol: "x_o", kind: "length", meaning: "outline corners, x", given: (_, out) => out.outline.map((p) => p.x) },
  { symbol: "y_o", kind: "length", meaning: "outline corners, y", given: (_, out) => out.outline.map((p) => p.y) },
  {
    symbol: "x_n",
    kind: "length",
    meaning: "next corners, x",
    given: (_, out) => nextCorners(out.outline).map((p) => p.x),
  },
  {
    symbol: "y_n",
    kind: "length",
    meaning: "next corners, y",
    given: (_, out) => nextCorners(out.outline).map((p) => p.y),
  },
  { symbol: "a_o", meaning: "outline stands off by at most", is: "(1 + sqrt(2)) * max(S, H) / n_g" },
  { symbol: "A", meaning: "area by the corners", is: "sum(x_o .* y_n - x_n .* y_o) / 2" },
  { symbol: "d_x", kind: "length", meaning: "tip's steps in x, between all poses", given: tipSteps(0) },
  { symbol: "d_y", kind: "length", meaning: "tip's steps in y, between all poses", given: tipSteps(1) },
  { symbol: "L_t", meaning: "path of the tip", is: "sum(map(d_x .* d_x + d_y .* d_y, g(q) = sqrt(q)))" },
  { symbol: "v_all", kind: "speed", meaning: "tip speed in all poses", given: tipSpeeds },
  { symbol: "v_t", meaning: "maximum tip speed", is: "max(v_all)" },
]
