import { type Caution, caution } from "../solver/index.js"
import { HOT_SURFACES, TOUCH_VOLTAGE } from "./sources.js"

/** Voltage above which bare parts can hurt wet or sweating skin, V; where it stays dry it is the second. */
const wetTouchVoltage = 30
const dryTouchVoltage = 60

/** Heat above which a converter of a few square centimetres gets too hot to wear, W: common practice. */
const hotParts = 1

/** The caution for a voltage that can hurt by touch. */
export function touchCautions(highest: number): Caution<"touch-voltage">[] {
  return highest > wetTouchVoltage
    ? [
        caution(
          "touch-voltage",
          "warning",
          "{highest voltage} is above the {wet voltage} at which bare parts can hurt wet or sweating skin ({dry voltage} where it stays dry). Cover every live part, follow the local wiring rules, and have a qualified person build it.",
          TOUCH_VOLTAGE,
          { highest, wet: wetTouchVoltage, dry: dryTouchVoltage },
        ),
      ]
    : []
}

/** The caution for heat in a converter that can burn. */
export function heatCautions(heat: number): Caution<"burns">[] {
  return heat > hotParts
    ? [
        caution(
          "burns",
          "warning",
          "{heat power} turns to heat in the converter: its parts can burn skin and scorch padding. Mount it off the body, where air passes, behind a cover that stays cool, and feel it with the power off before it is worn.",
          HOT_SURFACES,
          { heat },
        ),
      ]
    : []
}
