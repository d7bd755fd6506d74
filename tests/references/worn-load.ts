import type { Check } from "../helpers/references.js"
import { bodyChecks, bodyWithout } from "./worn-load-body.js"
import { metabolicChecks, metabolicWithout } from "./worn-load-metabolic.js"
import { workChecks } from "./worn-load-work.js"

/** Checks of the published values on loads a body carries. */
export const loadChecks: Readonly<Record<string, Check>> = { ...metabolicChecks, ...bodyChecks, ...workChecks }

/** Keys no check gives, by row, and why. */
export const loadWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = { ...metabolicWithout, ...bodyWithout }
