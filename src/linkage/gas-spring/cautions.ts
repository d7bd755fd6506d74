// Hazards and limits of a gas spring.
import { type Caution, caution } from "../../solver/index.js"
import { gasLaw, gasSpringProgression, storedEnergySource } from "../sources.js"
import type { GasSpring, GasSpringCaution, Si } from "./types.js"

/** Temperatures that most makers allow, °C. */
const [COLDEST, HOTTEST] = [-30, 80]
const USUAL = { low: 1.2, high: 1.4 }

export function gasSpringCautions(si: Si, out: GasSpring) {
  const { materialTemperature: temperature } = si
  return [
    caution(
      "stored-energy",
      "warning",
      "The spring holds {storedEnergy energy} here with or without power, and pushes out with {extendingForce force}: an arm that loses its mass, or an end that lets go, is thrown. Fit and take it off with the rod all the way out, tether its ends, and keep faces out of its line.",
      storedEnergySource,
      { storedEnergy: out.storedEnergy, extendingForce: out.extendingForce },
    ),
    caution(
      "under-pressure",
      "warning",
      "It stays under high pressure for good, rod in or out: never open, drill, weld, crush or burn it, do not scratch or bend the rod, and hand it to those who let the gas off.",
      storedEnergySource,
    ),
    caution(
      "force-varies",
      "note",
      "Its force changes by {forcePerTemperature perTemperature %/K}, is some per cent off from one piece to the next, and falls over the years as gas is lost: keep a margin at the coldest, and see that a weak or empty one lets nothing fall on anybody.",
      gasLaw,
      { forcePerTemperature: out.forcePerTemperature },
    ),
    ...(temperature < COLDEST || temperature > HOTTEST
      ? [
          caution(
            "outside-range",
            "caution",
            "{given.materialTemperature temperature °C} is outside the {coldest temperature °C} to {hottest temperature °C} that most makers allow: seals leak, and the hot gas pushes harder than the parts were made for.",
            undefined,
            { "given.materialTemperature": temperature, coldest: COLDEST, hottest: HOTTEST },
          ),
        ]
      : []),
    ...(out.progression < USUAL.low || out.progression > USUAL.high
      ? [
          caution(
            "unusual-progression",
            "note",
            "Usual gas springs have a progression of {low} to {high}, this one {progression}: look at the datasheet again, or measure both ends of the stroke.",
            gasSpringProgression,
            { ...USUAL, progression: out.progression },
          ),
        ]
      : []),
    ...(out.returnedWork < 0 || out.extendingForce <= 0
      ? [
          caution(
            "sticks",
            "warning",
            "Friction is larger than the push of the gas here: it stays where it is instead of extending. Check both forces, or take a stronger spring.",
          ),
        ]
      : []),
  ] satisfies Caution<GasSpringCaution>[]
}
