import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, type SiOf } from "../solver/index.js"
import type { Counterbalance, CounterbalanceInput } from "./counterbalance.js"
import { pinchCaution } from "./hazards.js"

/** Hazards and limits of validity of a counterbalance. */
export function balanceCautions(si: SiOf<CounterbalanceInput>, out: Counterbalance): Caution[] {
  const found = [pinchCaution("Arm, element and frame")]
  found.push(
    caution(
      "stored-energy",
      "warning",
      `The element stores up to ${formatQuantity("energy", out.storedEnergy)} whether or not there is power, and pulls with up to ${formatQuantity("force", out.greatestForce)}: if an end lets go, or the arm loses its mass (a panel taken off), it is thrown. Tether both ends, wear eye protection, unload it before taking anything apart; never open a gas strut.`,
      "ISO 12100, 2010, clause 6.3.5.4 (energy dissipation, from memory)",
    ),
  )
  if (out.residual > 0)
    found.push(
      caution(
        "moves-unpowered",
        "warning",
        `Balance is not perfect: without power up to ${formatQuantity("moment", out.leanResidual)} turn the arm down or up with the wearer leaning as given. What holds it must hold that, both ways.`,
        "ISO 12100, 2010, clause 6.2.11.5 (interruption of power supply, from memory)",
      ),
    )
  if (out.offload < 0)
    found.push(
      caution(
        "makes-worse",
        "caution",
        "The actuator has to give more moment with this element than without it.",
        "this answer's own residual",
      ),
    )
  if (out.leanResidual > 1.25 * out.residual && out.leanResidual > 0.1 * out.unbalanced)
    found.push(
      caution(
        "lean-spoils-balance",
        "note",
        `The fixed end leans with the wearer, so the balance is lost as they do: up to ${formatQuantity("moment", out.leanResidual)} are left.`,
        "M. J. French, M. B. Widden, Proc. IMechE Part C 214(3), 2000, 501–508 (anchor straight above the pivot)",
      ),
    )
  if (si.element === "cord")
    found.push(
      caution(
        "cord-is-not-a-spring",
        "note",
        "Elastic cord is not linear, gives back less than it took, creeps and ages: measure its force at the lengths it will have, and count on losing a good part of it in a season.",
      ),
    )
  if (si.element === "gas strut")
    found.push(
      caution(
        "strut-varies",
        "note",
        "A gas strut's force rises by about a third of a per cent per kelvin, and its seal's friction makes it push harder going in than coming out.",
        "ideal gas at constant volume: 1/293 per kelvin at 20 °C",
      ),
    )
  return found
}
