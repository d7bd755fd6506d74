// A worm and its wheel: the one stage that can hold a load by itself.
import { wormFields } from "../../drive/gear-train/fields.js"
import type { WormStage } from "../../drive/index.js"
import { type GearParts, gearParts, gearsOf } from "./gear.js"
import type { TransmissionMember } from "./transmission.js"

/** A worm and its wheel. Give its friction, or its efficiency as a datasheet prints it. */
export interface WormElement extends Omit<WormStage, "type" | "module">, GearParts {
  type: "worm"
}

const { module: _, ...stage } = wormFields

/** A worm and its wheel; its axes cross, so that its output has no other way than the wheel's own. */
export const worm: TransmissionMember<WormElement> = {
  type: "worm",
  label: "worm and wheel",
  fields: { ...stage, ...gearParts },
  either: [{ exactlyOne: ["friction", "wormEfficiency"] }],
  build: (si) => gearsOf([{ ...si, module: null }], si),
}
