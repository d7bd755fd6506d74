import { type Caution, caution, type SiOf } from "../solver/index.js"
import type { ConductorDescription } from "./conductor.js"
import { type LaidWire, startOf } from "./laid.js"
import { BURNS, FUMES, PVC, SHORT_FAULT } from "./sources.js"
import { inAir, judge, SHORT_LIMIT, touchCurrentOf } from "./withstand.js"

/** The caution of what burning insulation gives off. */
export const fumesCaution = (): Caution<"fumes"> =>
  caution(
    "fumes",
    "warning",
    "Overheated insulation gives off smoke that hurts eyes and lungs, PVC's with hydrogen chloride in it: cut the current at the pack, get out of the rig and into fresh air, and do not power it again before the wire is replaced.",
    FUMES,
  )

/** The caution of a surface that burns skin held against it for hours; `path` names its temperature. */
export function burnsCaution(path: string, surface: number): Caution<"burns"> {
  const text = `The outer surface reaches {${path} temperature °C}: skin held against more than 43 °C for hours is burnt, whatever the material. Keep it off the wearer.`
  return caution("burns", "warning", text as string, BURNS, { [path]: surface })
}

/** The same of a wire that lies as described, at a current for good. */
export function hotSurface(wire: LaidWire, current: number): Caution<"burns">[] {
  if (!(current > touchCurrentOf(wire))) return []
  const { steady } = judge(wire, current)
  return steady === null ? [] : [burnsCaution("surface", startOf(wire) + steady.surface)]
}

/** Cautions of a current that the size does not bear even alone in still air; `path` names the current, `wire` says which. */
export function wireCautions(
  size: SiOf<ConductorDescription>,
  path: string,
  current: number,
  wire = "this wire",
): Caution<"burns" | "fumes" | "wire-burns" | "wire-overloaded">[] {
  const laid = inAir(size)
  const { most, bears, steady } = judge(laid, current)
  if (bears) return touchable(laid, path, current, wire)
  const values = { [path]: current, wire, ratedInAir: most }
  const more = `{${path} current} is more than {wire} bears for good even alone in still air at 25 °C ({ratedInAir current} with 80 °C insulation)`
  const burns = `${more}: it heats past 300 °C and burns its insulation off. Take a thicker wire or less current.`
  const overloaded = `${more}: it would settle at {settles temperature °C}. Take a thicker wire or less current; wireHeating tells for the place it lies in.`
  if (steady === null) return [caution("wire-burns", "warning", burns as string, SHORT_FAULT, values), fumesCaution()]
  return [
    caution("wire-overloaded", "warning", overloaded as string, PVC, { ...values, settles: laid.ambientTemperature + steady.conductor }),
    ...touchable(laid, path, current, wire),
  ]
}

/** The caution of a size that skin does not bear for hours even where it lies alone in still air. */
function touchable(laid: LaidWire, path: string, current: number, wire: string): Caution<"burns">[] {
  const [burns] = hotSurface(laid, current)
  if (!burns) return []
  const text = `At {${path} current} the surface of {wire} reaches {surface temperature °C} even alone in still air at 25 °C: skin held against more than 43 °C for hours is burnt. Keep it off the wearer, or take a thicker wire.`
  return [caution("burns", "warning", text as string, BURNS, { [path]: current, wire, surface: burns.values.surface as number })]
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
