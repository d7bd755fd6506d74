import { type Caution, caution, type SiOf } from "../solver/index.js"
import type { ConductorDescription } from "./conductor.js"
import { FUMES, PVC, SHORT_FAULT } from "./sources.js"
import { inAir, ratedCurrentOf, SHORT_LIMIT, steadyOf } from "./withstand.js"

/** The temperature past which no insulation of small wires lasts, °C: from here on it burns off. */
export const BURNS_OFF = 300

/** Conductor temperature of a size alone in still air at a current, °C; null where it burns its insulation off. */
function warmth(size: SiOf<ConductorDescription>, current: number): number | null {
  const wire = inAir(size)
  const steady = steadyOf(wire, current)
  const temperature = steady === null ? null : wire.ambientTemperature + steady.conductor
  return temperature !== null && temperature <= BURNS_OFF ? temperature : null
}

/** The caution of what burning insulation gives off. */
export const fumesCaution = (): Caution<"fumes"> =>
  caution(
    "fumes",
    "warning",
    "Overheated insulation gives off smoke that hurts eyes and lungs, PVC's with hydrogen chloride in it: cut the current at the pack, get out of the rig and into fresh air, and do not power it again before the wire is replaced.",
    FUMES,
  )

/** Cautions of a current that the size does not bear even alone in still air; `path` names the current, `wire` says which. */
export function wireCautions(
  size: SiOf<ConductorDescription>,
  path: string,
  current: number,
  wire = "this wire",
): Caution<"fumes" | "wire-burns" | "wire-overloaded">[] {
  const rated = ratedCurrentOf(inAir(size))
  if (!(current > rated)) return []
  const hot = warmth(size, current)
  const values = { [path]: current, wire, ratedInAir: rated }
  const more = `{${path} current} is more than {wire} bears for good even alone in still air at 25 °C ({ratedInAir current} with 80 °C insulation)`
  const burns = `${more}: it heats past 300 °C and burns its insulation off. Take a thicker wire or less current.`
  const overloaded = `${more}: it would settle at {settles temperature °C}. Take a thicker wire or less current; wireHeating tells for the place it lies in.`
  if (hot === null) return [caution("wire-burns", "warning", burns as string, SHORT_FAULT, values), fumesCaution()]
  return [caution("wire-overloaded", "warning", overloaded as string, PVC, { ...values, settles: hot })]
}

/** The caution of a short-time limit beyond the published one of the commonest insulation. */
export function raisedLimit(faultTemperatureLimit: number): Caution<"limit-raised">[] {
  if (!(faultTemperatureLimit > SHORT_LIMIT)) return []
  return [
    caution(
      "limit-raised",
      "caution",
      "{given.faultTemperatureLimit temperature °C} in a short fault is more than PVC insulation bears (160 °C): it holds only for wire whose datasheet says so.",
      SHORT_FAULT,
      { "given.faultTemperatureLimit": faultTemperatureLimit },
    ),
  ]
}
