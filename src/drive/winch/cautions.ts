// Hazards of a winch: what draws in, what falls, what breaks, and what comes off the drum.
import { at, type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { ALBERTA_OHS, EN_14492, HOISTING_ROPES, ISO_12100, OSHA_CRANES } from "../sources.js"
import { smallestDrum } from "./data.js"
import type { Winch, WinchCaution, WinchInput } from "./types.js"

type Si = SiOf<WinchInput>

/** Rim left above the line, in its diameters. */
const RIM = 1.5
const [LEAST_TURNS, WANTED_TURNS] = [2, 5]
/** Breaking force over pull, for hoisting. */
export const LEAST_FACTOR = 5
const PEOPLE_FACTOR = 10
const LEAST_HOLDING = 1.25

export function cautions(si: Si, out: Winch): Caution<WinchCaution>[] {
  return [
    caution(
      "drawn-in",
      "warning",
      "Drum and line draw in fingers, hair, cords and cloth: cover the drum and the place where the line runs on, keep a switch within reach of wearer and helper, and have machinery near people checked by a qualified person under the local rules.",
      at(ISO_12100, "clause 6.3"),
    ),
    caution(
      "pull-only",
      "caution",
      "A line only pulls: a weight or a spring has to keep it tight while it pays out. Slack, it jumps off its turns, tangles and winds on the wrong way round, and then jerks.",
      commonPractice,
    ),
    ...ofHolding(si, out),
    ...ofLine(out),
    ...ofDrum(si, out),
  ]
}

function ofHolding(si: Si, out: Winch): Caution<WinchCaution>[] {
  if (si.holdingTorque === null)
    return out.lowerTorque < 0
      ? [
          caution(
            "back-driven",
            "warning",
            "Without power the load pulls the line off again: nothing is named that holds the drum. Give it a brake or a self-locking gear for {requiredHoldingTorque moment} at the drum, with a margin, and keep people clear of what falls.",
            commonPractice,
            { requiredHoldingTorque: out.requiredHoldingTorque },
          ),
        ]
      : []
  if (si.holdingTorque < out.requiredHoldingTorque)
    return [
      caution(
        "back-driven",
        "warning",
        "What holds the drum gives {given.holdingTorque moment}, and on the outer layer the line pulls with {requiredHoldingTorque moment}: the load runs off. Use a stronger brake, or less line on the drum, and keep people clear of what falls.",
        commonPractice,
        { "given.holdingTorque": si.holdingTorque, requiredHoldingTorque: out.requiredHoldingTorque },
      ),
    ]
  return (out.holdingSafetyFactor as number) < LEAST_HOLDING
    ? [
        caution(
          "thin-holding-margin",
          "warning",
          "The brake holds with a safety factor of {holdingSafetyFactor}: 1.25 is asked of holding brakes, since wear, oil and jolts take their part. Use a stronger one where anybody can be under the load.",
          at(OSHA_CRANES, "paragraph (f)(2), holding brakes"),
          { holdingSafetyFactor: out.holdingSafetyFactor as number },
        ),
      ]
    : []
}

function ofLine(out: Winch): Caution<WinchCaution>[] {
  const found: Caution<WinchCaution>[] = []
  const { lineSafetyFactor, stallSafetyFactor } = out
  if (lineSafetyFactor === null)
    found.push(
      caution(
        "strength-not-judged",
        "note",
        "Without the line's breaking force its strength is not judged: it needs five times the pull, and ten times where anybody is under it.",
        HOISTING_ROPES,
      ),
    )
  else if (lineSafetyFactor < LEAST_FACTOR)
    found.push(
      caution(
        "thin-line",
        "warning",
        "The line has a safety factor of {lineSafetyFactor}, and 5 is the minimum for hoisting, 10 with people under it. A line that breaks whips back and lets the load fall: use a stronger one, and keep people out of its line.",
        HOISTING_ROPES,
        { lineSafetyFactor },
      ),
    )
  else if (lineSafetyFactor < PEOPLE_FACTOR)
    found.push(
      caution(
        "thin-line",
        "caution",
        "The line has a safety factor of {lineSafetyFactor}: 10 is asked where people are hoisted, and wise where anybody stands under the load. Knots and splices take their part too: count the strength with them.",
        HOISTING_ROPES,
        { lineSafetyFactor },
      ),
    )
  if (stallSafetyFactor !== null && stallSafetyFactor < 1)
    found.push(
      caution(
        "breaks-its-line",
        "warning",
        "If something catches, the winch pulls with {liftingPull.high force} on the inner layer and breaks its own line. Limit its torque or current, or use a stronger line.",
        commonPractice,
        { "liftingPull.high": out.liftingPull?.high as number },
      ),
    )
  return found
}

function ofDrum(si: Si, out: Winch): Caution<WinchCaution>[] {
  const found: Caution<WinchCaution>[] = []
  const { safetyTurns, fixingPull, diameterRatio } = out
  if (safetyTurns < LEAST_TURNS)
    found.push(
      caution(
        "few-safety-turns",
        "warning",
        "Only {safetyTurns} turns stay on the drum, and two is the minimum: {fixingPull force} reach the line's fixing there, which can let go. Put more line on, or stop earlier.",
        { ...at(OSHA_CRANES, "paragraph (h)(2)(iii)(a)"), verified: "seen" },
        { safetyTurns, fixingPull },
      ),
    )
  else if (safetyTurns < WANTED_TURNS)
    found.push(
      caution(
        "few-safety-turns",
        "caution",
        "{safetyTurns} turns stay on the drum: keep five, unless the makers of line and drum say otherwise. Slippery fibre lines need more. {fixingPull force} reach the fixing.",
        ALBERTA_OHS,
        { safetyTurns, fixingPull },
      ),
    )
  const { ratio, source } = smallestDrum[si.lineType]
  if (diameterRatio < ratio)
    found.push(
      caution(
        "small-drum",
        "caution",
        "The drum is small for this line: drum and line come to {diameterRatio} line diameters, and {ratio} is usual. The line wears and weakens where it bends: use a larger drum or a thinner line, and change it early.",
        source,
        { diameterRatio, ratio },
      ),
    )
  if (si.flangeDiameter !== null && si.flangeDiameter - out.woundDiameter < 2 * RIM * si.lineDiameter)
    found.push(
      caution(
        "near-rim",
        "caution",
        "The line lies up to {woundDiameter length} on flanges of {given.flangeDiameter length}: less than one and a half lines below the rim it climbs over. Take higher flanges or less line.",
        EN_14492,
        { woundDiameter: out.woundDiameter, "given.flangeDiameter": si.flangeDiameter },
      ),
    )
  if (out.outerLayer > 1)
    found.push(
      caution(
        "uneven-layers",
        "note",
        "With {outerLayer} layers the figures hold for line laid turn by turn: led on at an angle or slack it heaps up on one side, and under pull it wedges between the turns below. Guide it on, and keep it tight.",
        commonPractice,
        { outerLayer: out.outerLayer },
      ),
    )
  return found
}
