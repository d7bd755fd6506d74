import { at, type Source } from "../solver/index.js"
import { SHIGLEY } from "./sources.js"

/** Where the end constants come from. */
export const END_CONSTANTS: Source = /* @__PURE__ */ at(SHIGLEY, "table 4-2")

/** How the ends of a column are held. */
export type ColumnEnds = "pinned-pinned" | "fixed-free" | "fixed-pinned" | "fixed-fixed"

/** End constants C of a column: that of theory and that to design by. */
export interface ColumnEndsData {
  readonly label: string
  readonly theory: number
  /** Conservative value: no real clamp is rigid. */
  readonly design: number
  /** Value published for well-made clamps where the load is well known. */
  readonly recommended: number
}

/** End constants (`END_CONSTANTS`); theory by the exact roots, where the table rounds 2.046 to 2. */
export const columnEnds: Readonly<Record<ColumnEnds, ColumnEndsData>> = {
  "pinned-pinned": { label: "both ends may turn", theory: 1, design: 1, recommended: 1 },
  "fixed-free": { label: "one end clamped, the other free", theory: 1 / 4, design: 1 / 4, recommended: 1 / 4 },
  "fixed-pinned": { label: "one end clamped, the other may turn", theory: 2.046, design: 1, recommended: 1.2 },
  "fixed-fixed": { label: "both ends clamped", theory: 4, design: 1, recommended: 1.2 },
}
