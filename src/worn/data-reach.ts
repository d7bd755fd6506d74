import type { Source } from "../solver/index.js"

/** Bone-to-bone shoulder breadth over stature: women of ANSUR II, 365.35 / 1628.5 mm, the narrower of both sexes. */
export const shoulderBreadth = 0.2244

/** Furthest bend of the elbow and furthest the upper arm goes behind the shoulders, rad. */
export const jointLimits = { elbow: (150 * Math.PI) / 180, behind: (45 * Math.PI) / 180 } as const

/** What the hand does: a fingertip that presses, or a fist that grips at its middle. */
export type Handling = "press" | "grip"
/** Part of the hand's length that counts. */
export const handParts: Readonly<Record<Handling, number>> = { press: 1, grip: 0.5 }

export const ansurSource: Source = {
  title: "2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), NATICK/TR-15/007",
  by: "C. C. Gordon and others",
  edition: "2014",
  where: "biacromial breadth and stature, women",
}
export const jointSource: Source = {
  title: "Joint Motion: Method of Measuring and Recording",
  by: "American Academy of Orthopaedic Surgeons",
  edition: "1965",
  where: "elbow flexion 150°, shoulder horizontal extension 45° (from memory)",
}
