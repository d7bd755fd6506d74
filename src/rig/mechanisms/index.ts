import { fan } from "./fan.js"
import { foldingChainMechanism } from "./folding-chain.js"
import { fourBarMechanism } from "./four-bar.js"
import { hinge } from "./hinge.js"
import { pushrod } from "./pushrod.js"
import { scissorMechanism } from "./scissor.js"
import { skewHingeMechanism } from "./skew-hinge.js"
import { skewHingeRod } from "./skew-hinge-rod.js"
import { sliderCrankMechanism } from "./slider-crank.js"
import { turnedArm } from "./turned-arm.js"

/** Every mechanism the rig knows; to add one, write its file and a line here. */
export const mechanisms = {
  hinge,
  "turned-arm": turnedArm,
  "skew-hinge": skewHingeMechanism,
  "skew-hinge-rod": skewHingeRod,
  "four-bar": fourBarMechanism,
  pushrod,
  "slider-crank": sliderCrankMechanism,
  scissor: scissorMechanism,
  fan,
  "folding-chain": foldingChainMechanism,
} as const
