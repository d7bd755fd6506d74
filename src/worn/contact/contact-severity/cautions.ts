import { at, type Caution, caution, type SiOf } from "../../../solver/index.js"
import { notClearance } from "../../not-clearance.js"
import { approachSource, contactSource, doorForceSource, foamSource } from "../../sources-around.js"
import { doorForces, usableFoam, walkingApproach } from "../data-contact.js"
import type { ContactSeverity, ContactSeverityCaution, ContactSeverityInput } from "./types.js"

/** Hazards and limits of a contact. */
export function contactCautions(si: SiOf<ContactSeverityInput>, out: ContactSeverity): Caution<ContactSeverityCaution>[] {
  const found: Caution<ContactSeverityCaution>[] = [
    notClearance(
      "a blunt blow against the published onset of pain in healthy adult workers",
      "children, eyes, throat, points, edges, cutting, hair and clothing caught, a fall after the blow, or a public that did not agree to be struck",
      at(contactSource, "annex A: limits for trained workers"),
    ),
  ]
  if (out.transientLimit === null)
    found.push(
      caution(
        "head-contact",
        "warning",
        "Contact with the head or face is not permitted at all; the comparison with the clamping limit only shows how bad it would be. Keep moving parts above or away from every head.",
        at(contactSource, "table A.2"),
      ),
    )
  if (si.region === "neck")
    found.push(
      caution(
        "neck-contact",
        "warning",
        "Nothing may strike or press a neck: throat, airway and arteries take harm that no pain limit tells of, and the published number is for the muscles at its side and back. Keep moving parts, straps and cords away from every neck.",
      ),
    )
  if (out.utilisation > 1)
    found.push(
      caution(
        "over-limit",
        "warning",
        "This contact is {utilisation} times a published limit of pain: someone can be hurt. Slow the motion, lighten the tip, pad it or keep people out of reach.",
        at(contactSource, "tables A.2 and A.3"),
        { utilisation: out.utilisation },
      ),
    )
  if (out.bottomed)
    found.push(
      caution(
        "padding-used-up",
        "warning",
        "The padding is used up before the blow ends and turns hard; it would need to be more than {requiredPaddingThickness length mm} thick.",
        foamSource,
        { requiredPaddingThickness: out.requiredPaddingThickness as number },
      ),
    )
  if (si.paddingStiffness !== null && si.usablePaddingShare > usableFoam)
    found.push(
      caution(
        "usable-padding",
        "caution",
        "Foams turn hard between 60 and 80 % of their thickness; no more than 60 % is counted here, not the {given.usablePaddingShare ratio %} given.",
        foamSource,
        { "given.usablePaddingShare": si.usablePaddingShare },
      ),
    )
  if (si.approachSpeed < walkingApproach)
    found.push(
      caution(
        "slow-approach",
        "caution",
        "A person who walks into the part comes on at about 1.6 m/s; here {given.approachSpeed speed m/s} is counted. Put the person's speed in as `approach`.",
        approachSource,
        { "given.approachSpeed": si.approachSpeed },
      ),
    )
  if (si.contactArea === null)
    found.push(
      caution(
        "no-area",
        "caution",
        "Without the area of contact the pressure is not judged; on edges, corners and points the pressure governs, not the force.",
        at(contactSource, "table A.2"),
      ),
    )
  if (si.peakDriveMoment === null)
    found.push(
      caution("no-clamping", "caution", "Without the drive's moment the force on someone caught between part and body is not judged."),
    )
  if (out.clampingForce !== null && out.clampingForce > doorForces.static)
    found.push(
      caution(
        "door-limit",
        "caution",
        "The drive holds someone with {clampingForce force N}, more than the 150 N that powered doors may keep up: a quick release is needed.",
        doorForceSource,
        { clampingForce: out.clampingForce },
      ),
    )
  return found
}
