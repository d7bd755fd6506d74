import { type Caution, caution, type SiOf } from "../solver/index.js"
import { takeItOff } from "./care.js"
import { occlusionPressure, testedWidths } from "./data-straps.js"
import type { StrapPressure, StrapPressureInput } from "./strap-pressure.js"

/** What goes with an answer of strapPressure. */
export function strapPressureCautions(si: SiOf<StrapPressureInput>, out: StrapPressure): Caution[] {
  const kPa = (pressure: number) => (pressure / 1000).toFixed(1)
  const found: Caution[] = [takeItOff]
  if (out.againstLimit > 1)
    found.push(
      caution(
        "over-limit",
        "warning",
        `Up to ${kPa(out.pressureMost)} kPa under a strap, over the limit of ${kPa(si.limit)} kPa: widen the straps to ${(1000 * out.widthChosen).toFixed(0)} mm, shift load to the belt, bring the rig closer to the back or make it lighter.`,
        "limit: common practice, not confirmed by a primary source",
      ),
    )
  found.push(
    caution(
      "limit-not-settled",
      "note",
      `The limit is an unsettled figure: skin blood flow stops near ${kPa(occlusionPressure)} kPa, children of 12 to 14 carry 13 kPa at 10 % of body mass, and adults' straps exceed the irritation threshold threefold with 10 kg. Padding and short pauses count for more than the number.`,
      "Macias and others 2008; Holewijn 1990; 14 kPa: common practice, no source",
    ),
    caution(
      "belt-share-not-settled",
      "note",
      "The share a hip belt takes is measured at about 30 % for one framed pack and claimed at up to 80 %: it depends on frame, hips and fit. Try it with a spring balance.",
      "Lafiandra and Harman 2004 (from memory, not confirmed)",
    ),
  )
  if (out.beltSlips)
    found.push(
      caution(
        "belt-slips",
        "warning",
        "The belt's tension does not hold its share by friction: it slides down and the shoulders take the rest. Tighten it, widen it or rest it on the hip bones.",
        "equilibrium with Coulomb friction; no credit taken for the shape of the hips",
      ),
    )
  if (out.upperPush <= 0)
    found.push(
      caution(
        "hangs-back",
        "caution",
        "The upper edge pulls away from the back: the shoulder straps alone keep the rig from tipping, and are tighter for it. Bring the centre of mass closer or raise the upper anchors.",
        "equilibrium of the rig",
      ),
    )
  if (out.widthChosen > testedWidths.best)
    found.push(
      caution(
        "wider-than-tested",
        "caution",
        "Straps wider than 80 mm have not been compared: they ride on the neck and the arm. Take load off the shoulders instead.",
        "shoulder strap widths of 5 to 8 cm under 20 kg, 2017",
      ),
    )
  if (si.beltTension < 30 || si.beltTension > 120)
    found.push(
      caution(
        "belt-tension-untried",
        "note",
        "Belt tensions of 30 to 120 N were studied; others are an extrapolation.",
        "Wettenschwiler and others 2015",
      ),
    )
  return found
}
