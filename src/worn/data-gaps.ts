import type { Source } from "../solver/index.js"

/** Parts of the body that a closing gap can crush. */
export type CrushPart = "finger" | "toes" | "hand-wrist-fist" | "arm" | "foot" | "leg" | "head" | "body"

/** Least gap that does not crush, m (ISO 13854, 2017, table 1; legs as quoted by AUVA, Safety distances). */
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

export const crushGapSource: Source = {
  title: "ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body",
  by: "ISO",
  edition: "2017",
  where: "table 1 (formerly EN 349)",
}
