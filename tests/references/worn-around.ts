import type { Check } from "../helpers/references.js"
import { accessChecks } from "./worn-around-access.js"
import { contactChecks } from "./worn-around-contact.js"
import { touchChecks } from "./worn-around-touch.js"
import { windChecks } from "./worn-around-wind.js"

/** Checks of the published values on what happens around the wearer. */
export const aroundChecks: Readonly<Record<string, Check>> = { ...windChecks, ...contactChecks, ...touchChecks, ...accessChecks }

/** Keys no check gives, by row, and why. */
export const aroundWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {}
