import { at, type Caution, caution, type SiOf } from "../../../solver/index.js"
import { notClearance } from "../../not-clearance.js"
import { adaSource, mechanics, partMSource, roadSource } from "../../sources-around.js"
import { ada, roadVehicle } from "../data-access.js"
import type { Passage, PassageCaution, PassageInput } from "./types.js"

const list = (places: readonly string[]) => places.join(", ")

/** Hazards and limits of getting through places. */
export function passageCautions(si: SiOf<PassageInput>, out: Passage): Caution<PassageCaution>[] {
  const found: Caution<PassageCaution>[] = [
    notClearance(
      "sizes against minimum clear widths that codes publish",
      "the real place, which may be narrower, furniture, other people, a wearer who cannot see or stoop, or an escape where nothing may slow the way out",
      partMSource,
    ),
  ]
  if (out.blocked.length)
    found.push(
      caution("blocked", "caution", "Folded it does not pass: {blockedPlaces}. Plan another way, or take it off first.", adaSource, {
        blockedPlaces: list(out.blocked),
      }),
    )
  if (out.sideways.length)
    found.push(
      caution(
        "sideways",
        "caution",
        "Folded it passes only by edging sideways: {sidewaysPlaces}. That needs somebody to guide the wearer, and it is no way out in a hurry.",
        mechanics,
        { sidewaysPlaces: list(out.sideways) },
      ),
    )
  if (out.foldFor.length)
    found.push(caution("fold-for", "caution", "Fold before: {foldPlaces}.", adaSource, { foldPlaces: list(out.foldFor) }))
  const beside = Math.min(out.corridorMargin, out.raisedCorridorMargin ?? out.corridorMargin)
  if (beside < ada.floorWidth)
    found.push(
      caution(
        "blocks-corridor",
        "warning",
        "The corridor beside the wearer is left with less than the 30 in (762 mm) an occupied wheelchair needs: nobody gets past. Never stand so in a way of escape.",
        at(adaSource, "305.3"),
      ),
    )
  const [wide, high] = [Math.max(si.folded.width, si.raised?.width ?? 0), Math.max(si.folded.height, si.raised?.height ?? 0)] as const
  if (high > ada.headroom)
    found.push(
      caution(
        "headroom",
        "warning",
        "At {high length m} it is higher than 80 in (2032 mm): it strikes lintels, signs and lamps, and outdoors branches and overhead lines, which can kill.",
        at(adaSource, "307.4"),
        { high },
      ),
    )
  if (wide > roadVehicle.width || high > roadVehicle.clearance)
    found.push(
      caution(
        "road-size",
        "warning",
        "At {wide length m} wide and {high length m} high it is larger than any vehicle a US road is kept clear for (2.59 m wide, 4.11 m high): it fills the lane and may meet wires and bridges. Ask the road's authority.",
        roadSource,
        { wide, high },
      ),
    )
  if (si.raised !== null && (si.raised.width < si.folded.width || si.raised.height < si.folded.height))
    found.push(
      caution(
        "smaller-raised",
        "note",
        "Raised it is narrower or lower than folded: give the raised size as swept through the whole motion.",
        mechanics,
      ),
    )
  return found
}
