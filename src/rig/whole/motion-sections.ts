// What a motion and its mechanisms say for checks of their own: the duty a drive is rated for, fixed things that an arm passes.
import type { DutyCycleInput } from "../../drive/index.js"
import type { Length, Time } from "../../quantity/index.js"
import type { AnyField, AnyFields, AnyGroup } from "../../solver/index.js"
import { type RigPinch, sectionFields } from "../document/sections.js"

/** The duty that a drive's maker allows, and how it rests. */
export interface DriveDuty
  extends Pick<
    DutyCycleInput,
    "ratedDuty" | "ratedRunDuration" | "timeConstant" | "temperatureLimit" | "ratedAmbientTemperature" | "ambientTemperature"
  > {
  /**
   * Shortest rest between two times out and back; left out, the day's moves are spread evenly over its hours. [du_t_2;
   * 0 to 100 h; optional]
   */
  restDuration?: Time | null
}

/** Fixed things that a mechanism moves past, in its own plane: x outward, y upward. */
export interface FixedThings extends RigPinch {
  /** Distance from its hinge within which every arm pinches and nothing is judged. [pi_h; 0 to 5 m; default 100 mm] */
  hingeZone?: Length
}

const sections = sectionFields as unknown as AnyFields
const fieldsOf = (key: string) => (sections[key] as unknown as AnyGroup).fields
const rest = fieldsOf("duty").restDuration as AnyField

/** Description of a drive's duty. */
export const dutyField: AnyField = {
  ...(sections.duty as AnyField),
  label: "duty of the drive",
  fields: { ...fieldsOf("duty"), restDuration: { ...rest, label: "shortest rest between runs", default: null } },
} as AnyField

/** Description of fixed things. */
export const fixedThingsField: AnyField = {
  ...(sections.pinch as AnyField),
  label: "fixed things it moves past, in its own plane",
  fields: {
    ...fieldsOf("pinch"),
    hingeZone: { kind: "length", symbol: "pi_h", label: "not judged around its hinge", min: 0, max: 5, default: "100 mm" },
  },
} as AnyField
