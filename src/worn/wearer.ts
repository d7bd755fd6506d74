// The wearer, described once: every solver that asks for a body takes its fields from here, and so does the rig.
import type { Frequency, Length, Mass, Speed } from "../quantity/index.js"
import type { Fields } from "../solver/index.js"

/** What solvers ask of a body and of what it wears. */
interface Wearer {
  bodyMass: Mass
  /** All that is worn, from a lantern of 10 g to what nobody carries. */
  rigMass: Mass
  stature: Length
  /** Walking on the level, both feet counted. The default is the mean of people on floors (`PACE`). */
  stepRate?: Frequency
  walkingSpeed: Speed
}

/**
 * Fields of the wearer. Mass and stature from a child of five or six to the largest adults; the steps are those that published
 * footfall loads cover.
 */
export const wearerFields = {
  bodyMass: { kind: "mass", symbol: "m_w", label: "body mass", min: 20, max: 300, typical: [45, 110] },
  rigMass: { kind: "mass", symbol: "m_r", label: "rig mass", min: 0.01, max: 150, typical: [1, 20] },
  stature: { kind: "length", symbol: "H", label: "stature", min: 0.8, max: 2.5, typical: [1.5, 1.95] },
  stepRate: { kind: "frequency", symbol: "f_s", label: "step rate", min: 1, max: 2.8, typical: [1.4, 2.2], default: 2 },
  walkingSpeed: { kind: "speed", symbol: "v", label: "walking speed", min: 0, max: 2.5, typical: [0, 1.6] },
} as const satisfies Fields<Wearer>
