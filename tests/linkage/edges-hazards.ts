import {
  counterbalance,
  fourBar,
  fourBarLimits,
  hingeActuator,
  placeActuator,
  planarLinkage,
  scissor,
  sliderCrank,
  sweptEnvelope,
  tetheredFan,
} from "../../src/linkage/index.js"
import type { Edges } from "../helpers/edges.js"

const closing = [
  counterbalance,
  fourBar,
  fourBarLimits,
  hingeActuator,
  placeActuator,
  planarLinkage,
  scissor,
  sliderCrank,
  sweptEnvelope,
  tetheredFan,
]

/** Hazards that no input takes away: links close on fingers whatever their lengths, arms and fans come down. */
export const edges: Edges = {
  cautions: [
    ...closing.map((solver) => ({ solver, code: "pinch", severity: "warning" as const, shown: {}, notShown: null })),
    ...[placeActuator, tetheredFan].map((solver) => ({
      solver,
      code: "falls-unpowered",
      severity: "warning" as const,
      shown: {},
      notShown: null,
    })),
  ],
  refusals: [],
  faults: [],
  numbers: {},
}
