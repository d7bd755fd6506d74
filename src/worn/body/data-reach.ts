/** Bone-to-bone shoulder breadth over stature: women of ANSUR II, 365.35 / 1628.5 mm, the narrower of both sexes. */
export const shoulderBreadth = 0.2244

/** Furthest bend of the elbow and furthest the upper arm goes behind the shoulders, rad. */
export const jointLimits = { elbow: (150 * Math.PI) / 180, behind: (45 * Math.PI) / 180 } as const

/** What the hand does: a fingertip that presses, or a fist that grips at its middle. */
export type Handling = "press" | "grip"
/** Part of the hand's length that counts. */
export const handParts: Readonly<Record<Handling, number>> = { press: 1, grip: 0.5 }

/** Largest force to work a control with one hand, N: 5 lbf. */
export const switchForce = 5 * 4.4482216152605
