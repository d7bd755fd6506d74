/** Parts of the body that a closing gap can crush. */
export type CrushPart = "finger" | "toes" | "hand-wrist-fist" | "arm" | "foot" | "leg" | "head" | "body"

/** Minimum gap that does not crush, m (ISO 13854, 2017, table 1; legs as quoted by AUVA, Safety distances). */
export const crushGaps: Readonly<Record<CrushPart, number>> = {
  finger: 0.025,
  toes: 0.05,
  "hand-wrist-fist": 0.1,
  arm: 0.12,
  foot: 0.12,
  leg: 0.18,
  head: 0.3,
  body: 0.5,
}

/**
 * Narrowest gap that a part gets into at all, m: slots of ISO 13857 (2019), tables 4 and 7, past which they must stand further
 * off; head and body by the probe of EN 1176-1 (2017), which is a small child's.
 */
export const entryGaps: Readonly<Record<CrushPart, number>> = {
  finger: 0.004,
  toes: 0.005,
  "hand-wrist-fist": 0.012,
  arm: 0.02,
  foot: 0.015,
  leg: 0.035,
  head: 0.089,
  body: 0.089,
}
