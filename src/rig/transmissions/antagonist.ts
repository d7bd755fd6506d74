// Two cables that pull against each other, so that a pulley turns both ways.
import type { Force, Length } from "../../quantity/index.js"
import { type Issue, inconsistent, isNoSolution, refuse, type SiOf } from "../../solver/index.js"
import { type CableRun, cableRun, cableRunFaults, cableRunFields, cableRunRules } from "./cable.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A pair of like cables on like routes, from a driving pulley to a driven one or to a slide. */
export interface AntagonistElement extends CableRun {
  type: "antagonist"
  /** Driving pulley, to the middle of the cable. [D_1; 4 mm to 2 m] */
  drivingDiameter: Length
  /** Driven pulley, to the middle of the cable; left out, the pair moves a slide along a line. [D_2; 4 mm to 2 m; optional] */
  drivenDiameter?: Length | null
  /** Pull in each cable at rest. [T_0; 0.1 N to 100 kN] */
  pretension: Force
}

const pulley = { kind: "length", min: "4 mm", max: 2, typical: ["20 mm", "120 mm"] } as const

/** A pair as an element that moves its output both ways: its pretension rubs in every bend, load or none. */
export const antagonist: TransmissionMember<AntagonistElement> = {
  type: "antagonist",
  label: "pair of cables that pull both ways",
  fields: {
    ...cableRunFields,
    drivingDiameter: { ...pulley, symbol: "D_1", label: "driving pulley" },
    drivenDiameter: { ...pulley, symbol: "D_2", label: "driven pulley", default: null },
    pretension: { kind: "force", symbol: "T_0", label: "pretension of each cable", min: "0.1 N", max: 1e5, typical: [10, 150] },
  },
  either: cableRunRules,
  check: (si) => [...cableRunFaults(si), ...tightPulleys(si)],
  build(si) {
    const run = cableRun(si)
    if (isNoSolution(run)) return run
    const { forward, backward, compliance, strength } = run
    const { pretension, drivingDiameter, drivenDiameter } = si
    const spare = strength - pretension
    if (!(spare > 0))
      return refuse(
        "breaks",
        "A pretension of {pretension force} is {shortBy force} more than the cable bears at its far end, bent as it is and pulled through its bends: {strength force}. Tension it less, bend it less, or take a stronger cable.",
        Math.max(-spare, 1e-6 * strength),
        { pretension, strength },
      )
    const [driving, driven] = [drivingDiameter / 2, drivenDiameter === null ? 1 : drivenDiameter / 2]
    const ratio = driving / driven
    return {
      ...rigid,
      takes: "angle",
      gives: drivenDiameter === null ? "length" : "angle",
      out: (travel) => ratio * travel,
      ratio: () => ratio,
      forward,
      backward,
      // what the tight cable needs beyond its pretension's share, less what the slack one helps, both at pretension
      drag: pretension * driving * (1 / forward - backward),
      transmits: "both-ways",
      // one tightens as the other eases
      compliance: compliance / 2 / driven ** 2,
      // past twice the pretension the slack cable hangs loose and jumps off
      strength: Math.min(2 * pretension, spare) * driven,
    }
  },
}

/** Pulleys smaller than the cable that bends round them. */
function tightPulleys(si: SiOf<AntagonistElement>): Issue[] {
  return (["drivingDiameter", "drivenDiameter"] as const).flatMap((name) => {
    const across = si[name]
    return across === null || across >= si.diameter
      ? []
      : [
          inconsistent([name], "a pulley {across length} across", "at least the cable's own {diameter length}", {
            across,
            diameter: si.diameter,
          }),
        ]
  })
}
