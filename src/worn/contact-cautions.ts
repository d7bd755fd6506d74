import { type Caution, caution, type SiOf } from "../solver/index.js"
import type { ContactSeverity, ContactSeverityInput } from "./contact-severity.js"
import { doorForces } from "./data-contact.js"
import { notClearance } from "./not-clearance.js"

/** Hazards and limits of a contact. */
export function contactCautions(si: SiOf<ContactSeverityInput>, out: ContactSeverity): Caution[] {
  const found: Caution[] = [
    notClearance(
      "a blunt blow against the published onset of pain in healthy adult workers",
      "children, eyes, throat, points, edges, cutting, hair and clothing caught, a fall after the blow, or a public that did not agree to be struck",
      "ISO/TS 15066, 2016, annex A (from memory); its limits are for trained workers",
    ),
  ]
  if (out.transientLimit === null)
    found.push(
      caution(
        "head-contact",
        "warning",
        "Contact with the head or face is not permitted at all; the comparison with the clamping limit only shows how bad it would be. Keep moving parts above or away from every head.",
        "ISO/TS 15066, 2016, table A.2 (from memory)",
      ),
    )
  if (out.severity > 1)
    found.push(
      caution(
        "above-limit",
        "warning",
        `This contact is ${out.severity.toFixed(1)} times a published limit of pain: someone can be hurt. Slow the motion, lighten the tip, pad it or keep people out of reach.`,
        "ISO/TS 15066, 2016, tables A.2 and A.3 (from memory)",
      ),
    )
  if (out.bottomed)
    found.push(
      caution(
        "padding-used-up",
        "warning",
        `The padding is used up before the blow ends and turns hard; it would need about ${Math.ceil((out.paddingNeeded as number) * 1000)} mm.`,
        "Gibson and Ashby 1997, chapter 5 (from memory)",
      ),
    )
  if (si.approach === 0)
    found.push(
      caution(
        "no-approach",
        "caution",
        "Reckoned for someone who stands still: a person who walks into the part adds about 1.6 m/s; put that in as `approach`.",
        "ISO 13855, 2010, walking speed 1600 mm/s (from memory)",
      ),
    )
  if (si.contactArea === null)
    found.push(
      caution(
        "no-area",
        "caution",
        "Without the area of contact the pressure is not judged; on edges, corners and points the pressure governs, not the force.",
        "ISO/TS 15066, 2016, table A.2",
      ),
    )
  if (si.driveMoment === null)
    found.push(
      caution("no-clamping", "caution", "Without the drive's moment the force on someone caught between part and body is not judged."),
    )
  if (out.clampingForce !== null && out.clampingForce > doorForces.static)
    found.push(
      caution(
        "door-limit",
        "caution",
        "The drive holds someone with more than the 150 N that powered doors may keep up: a quick release is needed.",
        "EN 12453, 2017 (from memory), by analogy",
      ),
    )
  return found
}
