// What the standard's categories of contacts are tried with, on direct voltage.
import type { Source } from "../../solver/index.js"
import { CONTACT_CATEGORIES, CONTROL_CONTACTS } from "../sources.js"

/** Category of a contact's rating on direct voltage. */
export interface ContactRating {
  readonly label: string
  /** Current that it makes and breaks now and then, against its rated one. */
  readonly switches: number
  /** Time constant of the circuit that it is tried with, s; `perWatt` where it goes with the rated power. */
  readonly timeConstant: number
  /** Time constant for each watt of rated power, s/W, up to `timeConstant`. */
  readonly perWatt?: number
  readonly source: Source
}

/**
 * Utilization categories on direct voltage: DC-1 to DC-5 are those of contactors, DC-12 and DC-13 those of control switches. Of the
 * last two the standard gives the time to 95 % of the current, three time constants.
 */
export const contactCategories = {
  "dc-1": { label: "DC-1: heaters", switches: 1.5, timeConstant: 1e-3, source: CONTACT_CATEGORIES },
  "dc-3": {
    label: "DC-3: shunt and permanent-magnet motors, reversed and stopped at speed",
    switches: 4,
    timeConstant: 2.5e-3,
    source: CONTACT_CATEGORIES,
  },
  "dc-5": { label: "DC-5: series motors, reversed and stopped at speed", switches: 4, timeConstant: 15e-3, source: CONTACT_CATEGORIES },
  "dc-12": { label: "DC-12: resistive", switches: 1, timeConstant: 1e-3 / 3, source: CONTROL_CONTACTS },
  "dc-13": { label: "DC-13: magnets", switches: 1, timeConstant: 0.1, perWatt: 2e-3, source: CONTROL_CONTACTS },
} as const satisfies Readonly<Record<string, ContactRating>>

/** Name of a {@link contactCategories} entry. */
export type ContactCategory = keyof typeof contactCategories
