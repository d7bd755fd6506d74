// A belt on two pulleys.
import { input as beltFields } from "../../drive/belt-drive/fields.js"
import { type BeltDriveInput, beltDrive } from "../../drive/index.js"
import type { Force, Length, Ratio } from "../../quantity/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import { rigid, type TransmissionMember } from "./transmission.js"

/** A belt: toothed, flat, round, or in V-grooves. */
export interface BeltElement {
  type: "belt"
  /** Belt [by its type: toothed, flat, v or round] */
  belt: BeltDriveInput["belt"]
  /** Distance between the shafts. [C; 5 mm to 50 m] */
  centreDistance: Length
  /** Pull in each strand at rest: what it can carry before it slips, or a toothed belt's teeth climb. [F_0; 1 mN to 1000 kN] */
  pretension: Force
  /** Share of the work that bending the belt and the bearings leave. [eta; 50 to 100 %; default 95 %] */
  efficiency?: Ratio
  /** The same where the load drives; as the other way when left out. [eta_g; 30 to 100 %; optional] */
  backwardEfficiency?: Ratio | null
}

const asked = ({ belt, centreDistance, pretension, efficiency, backwardEfficiency }: SiOf<BeltElement>) => ({
  belt,
  centreDistance,
  pretension,
  efficiency,
  backwardEfficiency,
  torque: 0,
  inputSpeed: null,
  linearDensity: 0,
  creep: 0,
})

/** A belt; crossed, it turns the driven pulley the other way. */
export const belt: TransmissionMember<BeltElement> = {
  type: "belt",
  label: "belt on two pulleys",
  fields: {
    belt: beltFields.belt,
    centreDistance: beltFields.centreDistance,
    pretension: beltFields.pretension,
    efficiency: beltFields.efficiency,
    backwardEfficiency: beltFields.backwardEfficiency,
  },
  check: (si) => domainFaults(beltDrive, asked(si)),
  build(si) {
    const out = beltDrive.si(asked(si))
    if (isNoSolution(out)) return out
    const ratio = (out.reverses ? -1 : 1) / out.ratio
    return {
      ...rigid,
      takes: "angle",
      gives: "angle",
      out: (travel) => ratio * travel,
      ratio: () => ratio,
      forward: si.efficiency,
      backward: si.backwardEfficiency ?? si.efficiency,
      transmits: out.transmits,
      strength: out.maxTorque,
    }
  },
}
