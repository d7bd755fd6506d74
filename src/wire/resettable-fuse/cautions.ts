import { type Caution, caution } from "../../solver/index.js"
import { hotSurface, raisedLimit } from "../overload.js"
import { PTC_LIMITS, PTC_SHEETS, SHORT_FAULT, THERMAL_RELAY } from "../sources.js"
import { faultOf } from "./kernel.js"
import type { ResettableFuse, ResettableFuseCaution, Si } from "./types.js"

export function cautions(si: Si, out: ResettableFuse): Caution<ResettableFuseCaution>[] {
  const found: Caution<ResettableFuseCaution>[] = [
    caution(
      "still-live",
      "warning",
      "Tripped, it still lets some current through, is hot, and switches on by itself once it has cooled: what it feeds can move again unasked. Unplug the pack before reaching in, and keep a one-time fuse at the pack's positive pole; this is no substitute for it.",
      PTC_LIMITS,
    ),
    caution(
      "trip-time",
      "note",
      "Times are drawn through one point of its sheet by the law of thermal relays, for the slowest part: where its sheet prints a curve of time to trip, that counts.",
      THERMAL_RELAY,
    ),
  ]
  if (si.sourceVoltage > si.maxVoltage)
    found.push(
      caution(
        "over-voltage",
        "warning",
        "The pack has {given.sourceVoltage voltage} and the part stands against {given.maxVoltage voltage}: tripped, it breaks down and burns. Take one rated above the full pack.",
        PTC_SHEETS,
        { "given.sourceVoltage": si.sourceVoltage, "given.maxVoltage": si.maxVoltage },
      ),
    )
  const fault = faultOf(si)
  if (si.faultCurrent === null)
    found.push(
      caution(
        "fault-not-given",
        "warning",
        "Whether it can break a short circuit is not judged, and a full pack may drive far more than the {given.maxFaultCurrent current} looked at here: give faultCurrent, the full voltage over the resistance of pack and wires.",
        PTC_LIMITS,
        { "given.maxFaultCurrent": si.maxFaultCurrent },
      ),
    )
  if (fault > si.maxFaultCurrent)
    found.push(
      caution(
        "fault-current",
        "warning",
        "A short circuit of {fault current} is more than the {given.maxFaultCurrent current} it may break: it can burst or burn. Put a one-time fuse of that breaking capacity before it.",
        PTC_LIMITS,
        { fault, "given.maxFaultCurrent": si.maxFaultCurrent },
      ),
    )
  if (!out.carriesLoad)
    found.push(
      caution(
        "trips-in-use",
        "caution",
        "At {given.maxDeviceTemperature temperature °C} it holds {holdLimit current}, and {given.current current} trip it in time: take one rated for {requiredHoldCurrent current} at 23 °C, or keep it cooler.",
        PTC_SHEETS,
        {
          "given.maxDeviceTemperature": si.maxDeviceTemperature,
          holdLimit: out.holdLimit,
          "given.current": si.current,
          requiredHoldCurrent: out.requiredHoldCurrent,
        },
      ),
    )
  if (!out.protectsWire)
    found.push(
      caution(
        "wire-unprotected",
        "warning",
        "In the cold it may carry {tripLimit current} for good and {slowCurrent current} for 5 s; the wire bears {continuousCurrent current} for good. Take a smaller or faster part, or a thicker wire.",
        PTC_SHEETS,
        { tripLimit: out.tripLimit, slowCurrent: out.slowCurrent, continuousCurrent: out.continuousCurrent },
      ),
    )
  else if (!out.survivesFault)
    found.push(
      caution(
        "fault-burns",
        "warning",
        "In a fault of up to {fault current} the wire's insulation passes {given.faultTemperatureLimit temperature °C} before the part trips. Take a smaller or faster part, or a thicker wire.",
        SHORT_FAULT,
        { fault, "given.faultTemperatureLimit": si.faultTemperatureLimit },
      ),
    )
  if (out.tripDuration === null)
    found.push(
      caution(
        "may-not-trip",
        "warning",
        "A short circuit of {fault current} may never trip it in the cold, where it may carry {tripLimit current} for good: the fault goes on heating. Take a smaller part.",
        PTC_SHEETS,
        { fault, tripLimit: out.tripLimit },
      ),
    )
  return [...found, ...hotSurface(si, si.current), ...raisedLimit(si.faultTemperatureLimit)]
}
