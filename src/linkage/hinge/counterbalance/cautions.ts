import { type Caution, caution, type SiOf } from "../../../solver/index.js"
import { pinchCaution } from "../../hazards.js"
import { exactBalance, gasLaw, ownResult, powerLoss, storedEnergySource } from "../../sources.js"
import type { Counterbalance, CounterbalanceCaution, CounterbalanceInput } from "./types.js"

/** Hazards and limits of validity of a counterbalance. */
export function balanceCautions(si: SiOf<CounterbalanceInput>, out: Counterbalance): Caution<CounterbalanceCaution>[] {
  const found: Caution<CounterbalanceCaution>[] = [pinchCaution("Arm, element and frame")]
  if (out.maxForce > 0)
    found.push(
      caution(
        "stored-energy",
        "warning",
        "The element stores up to {storedEnergy energy} whether or not there is power, and pulls or pushes with up to {maxForce force}: if an end lets go, or the arm loses its mass (a panel taken off), it is thrown. Tether both ends, wear eye protection, unload it before taking anything apart; never open a gas strut.",
        storedEnergySource,
        { storedEnergy: out.storedEnergy, maxForce: out.maxForce },
      ),
    )
  if (out.maxTiltedUnbalancedMoment > 0)
    found.push(
      caution(
        "falls-unpowered",
        "warning",
        "Balance is not perfect: without power up to {maxTiltedUnbalancedMoment moment} turn the arm down or up with the wearer leaning as given. What holds it must hold that, both ways.",
        powerLoss,
        { maxTiltedUnbalancedMoment: out.maxTiltedUnbalancedMoment },
      ),
    )
  if (out.offloadShare < 0)
    found.push(
      caution(
        "makes-worse",
        "caution",
        "The actuator has to give more moment with this element ({maxUnbalancedMoment moment}) than without it ({maxGravityMoment moment}).",
        ownResult,
        { maxUnbalancedMoment: out.maxUnbalancedMoment, maxGravityMoment: out.maxGravityMoment },
      ),
    )
  if (out.maxTiltedUnbalancedMoment > 1.25 * out.maxUnbalancedMoment && out.maxTiltedUnbalancedMoment > 0.1 * out.maxGravityMoment)
    found.push(
      caution(
        "lean-spoils-balance",
        "note",
        "The fixed end leans with the wearer, so the balance is lost as they do: up to {maxTiltedUnbalancedMoment moment} are left, {maxUnbalancedMoment moment} at the usual lean.",
        exactBalance,
        { maxTiltedUnbalancedMoment: out.maxTiltedUnbalancedMoment, maxUnbalancedMoment: out.maxUnbalancedMoment },
      ),
    )
  if (si.element.type === "cord")
    found.push(
      caution(
        "cord-is-not-a-spring",
        "note",
        "Elastic cord is not linear, gives back less than it took, creeps and ages: measure its force at the lengths it will have, and count on losing a good part of it in a season.",
      ),
    )
  if (si.element.type === "gas-strut")
    found.push(
      caution(
        "strut-varies",
        "note",
        "A gas strut's force rises by about a third of a per cent per kelvin, and its seal's friction makes it push harder going in than coming out.",
        gasLaw,
      ),
    )
  return found
}
