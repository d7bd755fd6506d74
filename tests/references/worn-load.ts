import type { Check } from "../helpers/references.js"
import { metabolicChecks, metabolicWithout } from "./worn-load-metabolic.js"

/** Checks of the published values on loads a body carries. */
export const loadChecks: Readonly<Record<string, Check>> = { ...metabolicChecks }

/** Keys no check gives, by row, and why. */
export const loadWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = { ...metabolicWithout }
