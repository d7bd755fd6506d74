// A roller chain on two sprockets: whole links, pulls, and what its corners do.
import type { SiOf } from "../../solver/index.js"
import type { ChainDrive, ChainDriveInput } from "./types.js"

type Si = SiOf<ChainDriveInput>

/** Tension below this part of the breaking force counts as none. */
const NEXT_TO_NOTHING = 1e-6

/** Half the angle from tooth to tooth. */
const half = (teeth: number) => Math.PI / teeth
export const pitchDiameter = (pitch: number, teeth: number): number => pitch / Math.sin(half(teeth))
/** Over the tips of the teeth of a standard sprocket. */
export const tipDiameter = (pitch: number, teeth: number): number => pitch * (0.6 + 1 / Math.tan(half(teeth)))

export function kernel(si: Si): ChainDrive {
  const { pitch, drivingTeeth, drivenTeeth, centreDistance, torque, inputSpeed } = si
  const ratio = drivenTeeth / drivingTeeth
  const [drivingDiameter, drivenDiameter] = [pitchDiameter(pitch, drivingTeeth), pitchDiameter(pitch, drivenTeeth)]
  // links of both strands, half of all teeth, and what the strands' lean adds
  const mean = (drivingTeeth + drivenTeeth) / 2
  const lean = ((drivenTeeth - drivingTeeth) / (2 * Math.PI)) ** 2
  const exactLinks = (2 * centreDistance) / pitch + mean + (lean * pitch) / centreDistance
  const links = 2 * Math.ceil(exactLinks / 2 - 1e-9)
  const free = links - mean
  const corner = half(drivingTeeth)
  const pull = (2 * Math.PI * Math.abs(torque)) / (pitch * drivenTeeth)
  const peakPull = Math.abs(torque) / ((drivenDiameter / 2) * Math.cos(half(drivenTeeth)))
  const chainSpeed = inputSpeed === null ? null : (inputSpeed * pitch * drivingTeeth) / (2 * Math.PI)
  const centrifugalTension = si.linearDensity * (chainSpeed ?? 0) ** 2
  const workingTension = peakPull * si.shockFactor + centrifugalTension
  const { breakingForce } = si
  const back = si.backwardEfficiency ?? si.efficiency
  const driving = (load: number) => (load < 0 ? (load * back) / ratio : load / (ratio * si.efficiency))
  const inputTorque = driving(torque)
  const outputSpeed = inputSpeed === null ? null : inputSpeed / ratio
  const inputPower = inputSpeed === null ? null : inputTorque * inputSpeed
  const outputPower = outputSpeed === null ? null : torque * outputSpeed
  return {
    transmits: "both-ways",
    ratio,
    drivingDiameter,
    drivenDiameter,
    exactLinks,
    links,
    length: links * pitch,
    fittingDistance: (pitch / 4) * (free + Math.sqrt(free ** 2 - 8 * lean)),
    smallWrap: Math.PI - 2 * Math.asin(Math.abs(drivenDiameter - drivingDiameter) / 2 / centreDistance),
    speedRipple: corner * (1 / Math.sin(corner) - 1 / Math.tan(corner)),
    inputTorque,
    returnTorque: driving(-torque),
    pull,
    peakPull,
    centrifugalTension,
    workingTension,
    safetyFactor: breakingForce !== null && workingTension > NEXT_TO_NOTHING * breakingForce ? breakingForce / workingTension : null,
    shaftForce: peakPull * si.shockFactor,
    chainSpeed,
    outputSpeed,
    inputPower,
    outputPower,
    heat: inputPower === null || outputPower === null ? null : inputPower - outputPower,
  }
}
