// A belt on two pulleys: its run, its strands, and the pull at which it slips or its teeth climb over.
import { theRoot } from "../../numeric/index.js"
import { type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import type { BeltDrive, BeltDriveInput, BeltDriveRefusal } from "./types.js"

type Si = SiOf<BeltDriveInput>
type Belt = Si["belt"]

/** How a belt runs over pulleys of these radii, so far apart. */
function run(r1: number, r2: number, crossed: boolean, distance: number) {
  // how far the strands lean from the line of the shafts
  const lean = Math.asin((crossed ? r1 + r2 : r2 - r1) / distance)
  const drivenWrap = Math.PI + 2 * lean
  const drivingWrap = crossed ? drivenWrap : Math.PI - 2 * lean
  return { r1, r2, crossed, lean, drivingWrap, drivenWrap, length: 2 * distance * Math.cos(lean) + r1 * drivingWrap + r2 * drivenWrap }
}

/** Pulleys as pitch radii, and how the belt runs between them. */
export function runOf({ belt, centreDistance }: Pick<Si, "belt" | "centreDistance">) {
  const [r1, r2] =
    belt.type === "toothed"
      ? [(belt.pitch * belt.drivingTeeth) / (2 * Math.PI), (belt.pitch * belt.drivenTeeth) / (2 * Math.PI)]
      : [belt.drivingDiameter / 2, belt.drivenDiameter / 2]
  return run(r1, r2, "crossed" in belt && belt.crossed, centreDistance)
}

/** Ratio of the strands' pulls, centrifugal part off, at which it slips; null for teeth, which do not. */
function gripOf(belt: Belt, wrap: number): number | null {
  if (belt.type === "toothed") return null
  return Math.exp((belt.friction * wrap) / (belt.type === "flat" ? 1 : Math.sin(belt.grooveAngle / 2)))
}

/** Teeth of the next belt that is long enough, and the distance at which it fits. */
function fitting({ belt, centreDistance }: Si): Pick<BeltDrive, "beltTeeth" | "fittingDistance"> {
  if (belt.type !== "toothed") return { beltTeeth: null, fittingDistance: null }
  const { r1, r2, length } = runOf({ belt, centreDistance })
  const beltTeeth = Math.ceil(length / belt.pitch - 1e-9)
  const over = (distance: number) => run(r1, r2, false, distance).length - beltTeeth * belt.pitch
  // a belt grows by no less than 0.3 of what the shafts are moved apart
  const root = theRoot(over, centreDistance * (1 - 1e-6), centreDistance + 5 * belt.pitch, 0, "where a belt of whole teeth fits")
  return { beltTeeth, fittingDistance: root.x }
}

export function kernel(si: Si): BeltDrive | NoSolution<BeltDriveRefusal> {
  const { belt, pretension, torque, inputSpeed, creep } = si
  const { r1, r2, crossed, lean, drivingWrap, drivenWrap, length } = runOf(si)
  const ratio = r2 / r1
  const beltSpeed = inputSpeed === null ? null : inputSpeed * r1
  const centrifugalTension = si.linearDensity * (beltSpeed ?? 0) ** 2
  const pull = Math.abs(torque) / r2
  const wrap = Math.min(drivingWrap, drivenWrap)
  const grip = gripOf(belt, wrap)
  // shafts set fast keep the strands' sum: what one gains the other loses
  const grasp = grip === null ? 1 : 1 - 2 / (grip + 1)
  const maxPull = 2 * grasp * Math.max(0, pretension - centrifugalTension)
  const requiredPretension = pull / (2 * grasp) + centrifugalTension
  if (!(pull <= maxPull)) {
    const nearest = { pretension: requiredPretension * 1.001, torque: Math.sign(torque) * maxPull * r2 * 0.999 }
    const at = { maxPull, pull }
    const given = { "given.pretension": pretension }
    return grip === null
      ? refuse(
          "skips",
          "The slack strand hangs loose at this torque and the teeth climb over each other: {given.pretension force} of pretension carry at most {maxPull force}, and {pull force} are asked for, {shortBy force} too much. Tighten the belt, or use larger pulleys.",
          pull - maxPull,
          at,
          nearest,
          given,
        )
      : refuse(
          "slips",
          "The belt slips: {given.pretension force} of pretension hold at most {maxPull force}, and {pull force} are asked for, {shortBy force} too much. Tighten it, give it more wrap, or use larger pulleys.",
          pull - maxPull,
          at,
          nearest,
          given,
        )
  }
  const [tightTension, slackTension] = [pretension + pull / 2, pretension - pull / 2]
  const [tight, slack] = [tightTension - centrifugalTension, slackTension - centrifugalTension]
  const back = si.backwardEfficiency ?? si.efficiency
  const driving = (load: number) => (load < 0 ? (load * back) / ratio : load / (ratio * si.efficiency))
  const inputTorque = driving(torque)
  const outputSpeed = inputSpeed === null ? null : (inputSpeed / ratio) * (torque < 0 ? 1 / (1 - creep) : 1 - creep)
  const inputPower = inputSpeed === null ? null : inputTorque * inputSpeed
  const outputPower = outputSpeed === null ? null : torque * outputSpeed
  return {
    transmits: "both-ways",
    ratio,
    reverses: crossed,
    length,
    ...fitting(si),
    drivingWrap,
    drivenWrap,
    teethInMesh: belt.type === "toothed" ? (Math.min(belt.drivingTeeth, belt.drivenTeeth) * wrap) / (2 * Math.PI) : null,
    inputTorque,
    returnTorque: driving(-torque),
    pull,
    maxPull,
    maxTorque: maxPull * r2,
    utilisation: maxPull > 0 ? pull / maxPull : 0,
    slipMargin: maxPull - pull,
    requiredPretension,
    tightTension,
    slackTension,
    centrifugalTension,
    // two pulls that lean to either side of the line of the shafts
    shaftForce: Math.sqrt(tight ** 2 + slack ** 2 + 2 * tight * slack * Math.cos(2 * lean)),
    beltSpeed,
    outputSpeed,
    inputPower,
    outputPower,
    heat: inputPower === null || outputPower === null ? null : inputPower - outputPower,
  }
}
