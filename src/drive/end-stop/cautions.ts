// Hazards of an arm that runs into its stop.

import { type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { ISO_13854 } from "../sources.js"
import type { EndStop, EndStopCaution, EndStopInput } from "./types.js"

export function cautions(si: SiOf<EndStopInput>, out: EndStop): Caution<EndStopCaution>[] {
  const found: Caution<EndStopCaution>[] = [
    caution(
      "pinch",
      "warning",
      "A finger or hand between arm and stop takes {peakForce force}: keep the stop inside or covered, the gap too small or too wide for hands, and have it checked by a qualified person under the local rules.",
      ISO_13854,
      { peakForce: out.peakForce },
    ),
    caution(
      "rigid-arm",
      "note",
      "Arm, hinge and frame are taken as rigid: they give as well, so that the real force is lower, and what is bolted to the tip swings on and strains its fixing. Check the fixings for the deceleration given.",
    ),
  ]
  if (out.utilisation !== null && out.utilisation > 1)
    found.push(
      caution(
        "over-force",
        "warning",
        "{peakForce force} at a stop rated for {given.ratedForce force}: it can break, and the arm then runs on into whatever is behind it. Meet it more slowly, or make it softer with more way.",
        commonPractice,
        { peakForce: out.peakForce, "given.ratedForce": si.ratedForce as number },
      ),
    )
  if (out.reboundSpeed > 0.5 * si.speed)
    found.push(
      caution(
        "snap-back",
        "warning",
        "The stop throws the arm back at {reboundSpeed angularSpeed deg/s}, more than half as fast as it came, against gears and hands: use a stop that takes energy away, such as soft rubber, felt or a damper.",
        commonPractice,
        { reboundSpeed: out.reboundSpeed },
      ),
    )
  if (si.drivingTorque > 0)
    found.push(
      caution(
        "drive-pushes",
        "caution",
        "The drive goes on pushing with {restForce force} against the stop, stalled, hot and with gears loaded: put a limit switch before the stop, and keep the stop for when it fails.",
        commonPractice,
        { restForce: out.restForce },
      ),
    )
  return found
}
