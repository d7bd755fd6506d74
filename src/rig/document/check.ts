import { type Issue, issue, type SiOf } from "../../solver/index.js"
import type { RigDocument } from "./document.js"

type Si = SiOf<RigDocument>

function missing(path: string, label: string): Issue {
  return issue("missing", [path], "nothing", label)
}

/** Faults of a rig document that has to move: what is missing or does not go together. */
export function checkMove(rig: Si): Issue[] {
  const found: Issue[] = []
  const { hinged, pack, bank, wiring } = rig
  if (!hinged) found.push(missing("hinged", "arms on hinges"))
  if (!pack && !bank) found.push(missing("pack", "a cell pack, or a bank in its place"))
  if (!wiring) found.push(missing("wiring", "wires, switch and fuse"))
  return [...found, ...checkParts(rig)]
}

/** Faults between fields that are there, whatever else is missing. */
export function checkParts(rig: Si): Issue[] {
  const found: Issue[] = []
  const { hinged, converter } = rig
  if (hinged) {
    const { actuator } = hinged
    const at = ["hinged", "actuator"]
    if (!(actuator.ratedSpeed < actuator.noLoadSpeed))
      found.push(issue("inconsistent", [...at, "ratedSpeed"], `${actuator.ratedSpeed} m/s`, "less than the speed without load"))
    if (!(actuator.ratedCurrent > actuator.noLoadCurrent))
      found.push(issue("inconsistent", [...at, "ratedCurrent"], `${actuator.ratedCurrent} A`, "more than the current without load"))
    const { hinge, fixedPivot } = hinged
    if (hinge.x === fixedPivot.x && hinge.y === fixedPivot.y)
      found.push(issue("inconsistent", ["hinged", "fixedPivot"], "the hinge's own place", "a fixed pivot away from the hinge"))
    const { spring } = hinged
    if (spring && spring.fixedPivot.x === hinge.x && spring.fixedPivot.y === hinge.y)
      found.push(issue("inconsistent", ["hinged", "spring", "fixedPivot"], "the hinge's own place", "a fixed end away from the hinge"))
  }
  if (converter) {
    if (!(converter.minInputVoltage < converter.maxInputVoltage))
      found.push(
        issue("inconsistent", ["converter", "maxInputVoltage"], `${converter.maxInputVoltage} V`, "more than the minimum input voltage"),
      )
    const loads = converter.efficiency.map((p) => p.outputCurrent)
    if (loads.some((load, i) => i > 0 && !(load > (loads[i - 1] as number))))
      found.push(issue("inconsistent", ["converter", "efficiency"], "loads out of order", "loads that rise from point to point"))
  }
  return found
}
