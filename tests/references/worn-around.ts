import type { Check } from "../helpers/references.js"
import { accessChecks } from "./worn-around-access.js"
import { contactChecks } from "./worn-around-contact.js"
import { heatChecks } from "./worn-around-heat.js"
import { touchChecks } from "./worn-around-touch.js"
import { windChecks } from "./worn-around-wind.js"

/** Checks of the published values on what happens around the wearer. */
export const aroundChecks: Readonly<Record<string, Check>> = {
  ...windChecks,
  ...contactChecks,
  ...touchChecks,
  ...accessChecks,
  ...heatChecks,
}

/** Keys no check gives, by row, and why. */
export const aroundWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "wind-tunnel-hunt-tests": {
    people: "size of the sample",
    task_speeds_m_per_s: "speeds of single tests",
    verbal_speed_min_m_per_s: "lower end of the tests",
  },
  "scald-full-thickness-burn-foundation": {
    time_s: "scalding water, whole seconds; tests/worn/touch-temperature.test.ts holds the curve to it within a factor of two",
  },
}
