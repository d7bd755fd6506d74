// A line on a drum: its layers, and what one torque and one speed of the drum do on each of them.
import { interpolate } from "../../numeric/index.js"
import { bandOf, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { bentStrength } from "./data.js"
import type { Winch, WinchInput, WinchLayer, WinchRefusal } from "./types.js"

type Si = SiOf<WinchInput>

/** Whole numbers are met within this. */
const WHOLE = 1e-9

/** How the line lies: turns in a layer, radius of the first, rise to the next. */
export function coilOf(si: Pick<Si, "drumDiameter" | "lineDiameter" | "drumWidth" | "turnsPerLayer" | "layerRise">) {
  const turns = si.turnsPerLayer ?? Math.floor((si.drumWidth as number) / si.lineDiameter + WHOLE)
  return { turns, first: (si.drumDiameter + si.lineDiameter) / 2, rise: si.layerRise * si.lineDiameter }
}
export type Coil = ReturnType<typeof coilOf>

export const radiusOf = ({ first, rise }: Coil, layer: number): number => first + (layer - 1) * rise

/** Line in so many full layers. */
export const lengthOf = ({ turns, first, rise }: Coil, layers: number): number =>
  Math.PI * turns * layers * (2 * first + rise * (layers - 1))

/** Layer in which so much line ends. */
function layerOf({ turns, first, rise }: Coil, length: number): number {
  const b = 2 * first - rise
  return Math.max(1, Math.ceil((Math.sqrt(b ** 2 + (4 * rise * length) / (Math.PI * turns)) - b) / (2 * rise) - WHOLE))
}

/** Turns that so much line makes on the drum. */
export function turnsOf(coil: Coil, length: number): number {
  const full = layerOf(coil, length) - 1
  return coil.turns * full + (length - lengthOf(coil, full)) / (2 * Math.PI * radiusOf(coil, full + 1))
}

/** Line that fits below the rim: whole layers only. */
export function capacityOf(si: Si): number | null {
  if (si.flangeDiameter === null) return null
  const coil = coilOf(si)
  const layers = Math.floor((si.flangeDiameter - si.drumDiameter - 2 * si.lineDiameter) / (2 * coil.rise) + WHOLE) + 1
  return lengthOf(coil, layers)
}

function layerResult(si: Si, layer: number): WinchLayer {
  const radius = radiusOf(coilOf(si), layer)
  const back = si.backwardEfficiency ?? si.efficiency
  const { torque, speed, dragTorque } = si
  return {
    layer,
    radius,
    raiseTorque: (si.pull * radius) / si.efficiency + dragTorque,
    lowerTorque: dragTorque - si.pull * radius * back,
    holdingTorque: si.pull * radius,
    liftingPull: torque === null ? null : (Math.max(0, torque - dragTorque) * si.efficiency) / radius,
    loweringPull: torque === null ? null : (torque + dragTorque) / (radius * back),
    lineSpeed: speed === null ? null : speed * radius,
  }
}

/** Share of its strength that a wire rope keeps round the drum; null for fibre. */
export const bentShareOf = (si: Pick<Si, "lineType" | "drumDiameter" | "lineDiameter">): number | null =>
  si.lineType === "wire-rope" ? interpolate(bentStrength, si.drumDiameter / si.lineDiameter) : null

/** Ratio of what is there to what is asked, where both are known. */
const factor = (capacity: number | null, demand: number | null) =>
  capacity === null || demand === null || demand <= 0 ? null : capacity / demand

export function kernel(si: Si): Winch | NoSolution<WinchRefusal> {
  const { pull, travel, torque, speed } = si
  const coil = coilOf(si)
  const capacity = capacityOf(si)
  if (capacity !== null && si.lineLength > capacity * (1 + WHOLE))
    return refuse(
      "does-not-fit",
      "The drum is full before all line is on it: {capacity length} fit below the rim of its flanges, {shortBy length} less than asked for. Take a shorter or thinner line, or a wider drum with higher flanges.",
      si.lineLength - capacity,
      { capacity },
      { lineLength: capacity },
    )
  const [innerLayer, outerLayer] = [layerOf(coil, si.lineLength - travel), layerOf(coil, si.lineLength)]
  const layers = Array.from({ length: outerLayer - innerLayer + 1 }, (_, k) => layerResult(si, innerLayer + k))
  const [paidOut, woundIn] = [layers[0] as WinchLayer, layers.at(-1) as WinchLayer]
  if (torque !== null && !(torque >= woundIn.raiseTorque))
    return refuse(
      "insufficient-torque",
      "The winch stalls on layer {outerLayer}: {given.torque moment} at the drum wind in at most {liftingPull force} there, and {given.pull force} are asked for; {shortBy moment} are missing. Gear it down, take a thinner drum, or put less line on it.",
      woundIn.raiseTorque - torque,
      { outerLayer, liftingPull: woundIn.liftingPull as number },
      { torque: woundIn.raiseTorque * 1.001, pull: (woundIn.liftingPull as number) * 0.999 },
      { "given.torque": torque, "given.pull": pull },
    )
  const [woundTurns, safetyTurns] = [turnsOf(coil, si.lineLength), turnsOf(coil, si.lineLength - travel)]
  const drumTurns = woundTurns - safetyTurns
  const back = si.backwardEfficiency ?? si.efficiency
  const loadWork = pull * travel
  const dragWork = si.dragTorque * 2 * Math.PI * drumTurns
  const [raiseWork, lowerWork] = [loadWork / si.efficiency + dragWork, dragWork - loadWork * back]
  const bentStrengthShare = bentShareOf(si)
  const strength = si.lineStrength === null ? null : si.lineStrength * (bentStrengthShare ?? 1)
  return {
    transmits: "pull-only",
    turnsPerLayer: coil.turns,
    outerLayer,
    innerLayer,
    woundTurns,
    safetyTurns,
    drumTurns,
    woundDiameter: 2 * woundIn.radius + si.lineDiameter,
    capacity,
    diameterRatio: (si.drumDiameter + si.lineDiameter) / si.lineDiameter,
    raiseTorque: woundIn.raiseTorque,
    lowerTorque: woundIn.lowerTorque,
    requiredHoldingTorque: woundIn.holdingTorque,
    holdingSafetyFactor: factor(si.holdingTorque, woundIn.holdingTorque),
    liftingPull: bandOf(woundIn.liftingPull, paidOut.liftingPull),
    lineSpeed: bandOf(paidOut.lineSpeed, woundIn.lineSpeed),
    duration: speed === null ? null : (2 * Math.PI * drumTurns) / speed,
    raisePower: speed === null ? null : woundIn.raiseTorque * speed,
    loadWork,
    raiseWork,
    lowerWork,
    raiseLoss: raiseWork - loadWork,
    lowerLoss: lowerWork + loadWork,
    bentStrengthShare,
    lineSafetyFactor: factor(strength, pull),
    stallSafetyFactor: factor(strength, paidOut.liftingPull),
    // rope friction: each turn on the drum leaves the fixing less to hold
    fixingPull: pull * Math.exp(-2 * Math.PI * si.lineFriction * safetyTurns),
    paidOut,
    woundIn,
    layers,
  }
}
