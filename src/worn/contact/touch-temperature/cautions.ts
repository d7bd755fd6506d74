import { at, type Caution, caution, type SiOf } from "../../../solver/index.js"
import { notClearance } from "../../not-clearance.js"
import { burnCurveSource, childScaldSource, coldTouchSource, isoTouchSource, painSource, touchRoomSource } from "../../sources-around.js"
import { coldTouch, iecTouch } from "../data-touch.js"
import type { TouchTemperature, TouchTemperatureCaution, TouchTemperatureInput } from "./types.js"

/** Materials that draw heat fast enough to freeze skin on touch. */
const conducts = (material: string) => material === "metal" || material === "coated-metal"

/** Hazards and limits of touching a surface. */
export function touchCautions(si: SiOf<TouchTemperatureInput>, out: TouchTemperature): Caution<TouchTemperatureCaution>[] {
  const found: Caution<TouchTemperatureCaution>[] = [
    notClearance(
      "one surface against published burn thresholds for healthy adult skin",
      "old or numb skin, sleep, pressure that cuts off the blood, contact with about a tenth of the body's skin or of the head, or with the vital areas of the face (all outside the standard's scope), a fault that heats the part further, or skin under a strap that cannot be pulled away",
      at({ ...isoTouchSource, verified: "seen" }, "scope"),
    ),
    caution(
      "adults-only",
      "warning",
      "The limits and times are for adult skin. Children's skin burns faster, and nobody prints by how much: keep anything warm out of a child's reach and off a child's body.",
      childScaldSource,
    ),
  ]
  if (out.tooHot)
    found.push(
      caution(
        "too-hot",
        "warning",
        "{temperatureInUse temperature °C} is above {limit.low temperature °C}, the lowest published limit for this material and time: skin can be burnt. Space it off the body, spread or remove the heat, or guard it.",
        at(isoTouchSource, "lowest of ISO 13732-1, IEC 62368-1, ECMA-287 and IEC 60601-1"),
        { temperatureInUse: out.temperatureInUse, "limit.low": out.limit.low },
      ),
    )
  else if (out.painful)
    found.push(
      caution(
        "painful",
        "caution",
        "At {temperatureInUse temperature °C} lasting contact hurts at the chest and back (from 42 °C), below any burn limit: discomfort means take it off.",
        painSource,
        { temperatureInUse: out.temperatureInUse },
      ),
    )
  if (si.contactDuration < LONG && out.temperatureInUse > iecTouch.wornLow)
    found.push(
      caution(
        "short-contact",
        "caution",
        "At {temperatureInUse temperature °C} this is judged for a contact of {given.contactDuration time} only; worn against the body for hours the limit is 43 °C.",
        isoTouchSource,
        { temperatureInUse: out.temperatureInUse, "given.contactDuration": si.contactDuration },
      ),
    )
  if (out.minTemperature <= coldTouch.frostbite && conducts(si.material))
    found.push(
      caution(
        "cold-metal",
        "warning",
        "Metal at {minTemperature temperature °C} can freeze bare skin in a short touch and hold it fast: cover it, or wear gloves. A finger freezes once its own skin is at 0 °C.",
        coldTouchSource,
        { minTemperature: out.minTemperature },
      ),
    )
  else if (out.minTemperature <= coldTouch.pain)
    found.push(
      caution(
        "cold-surface",
        "caution",
        "At {minTemperature temperature °C} lasting touch is painful (skin at 15 °C) and numbs (skin at 7 °C), and numb fingers work no buckle: cover what hands and skin must touch.",
        coldTouchSource,
        { minTemperature: out.minTemperature },
      ),
    )
  if (si.ambientTemperature > si.measuredAmbientTemperature)
    found.push(
      caution(
        "warmer-surroundings",
        "note",
        "Where it is worn is warmer than where it was measured; the difference is added here, though the equipment standard compares the value measured at 25 °C without it.",
        touchRoomSource,
      ),
    )
  if (si.contactDuration < 0.5)
    found.push(
      caution(
        "shorter-than-scope",
        "caution",
        "ISO 13732-1 covers contact of 0.5 s and longer; a shorter touch is judged as if it were 1 s.",
        at({ ...isoTouchSource, verified: "seen" }, "scope"),
      ),
    )
  if (out.burnTime !== null && out.burnTime < 1)
    found.push(
      caution("curve-extrapolated", "caution", "The burn time is below one second, where the curves are only extended.", burnCurveSource),
    )
  return found
}

/** Contact from which what is worn is judged, s. */
const LONG = 8 * 3600
