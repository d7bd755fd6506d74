/** How the ends of a column are held. */
export type ColumnEnds = "pinnedPinned" | "fixedFree" | "fixedPinned" | "fixedFixed"

/** End constants C of a column: that of theory and that to design by. */
export interface ColumnEndsData {
  readonly label: string
  readonly theory: number
  /** Conservative value: no real clamp is rigid. */
  readonly design: number
}

/** End constants (R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 2015, table 4-2, from memory). */
export const columnEnds: Readonly<Record<ColumnEnds, ColumnEndsData>> = {
  pinnedPinned: { label: "both ends may turn", theory: 1, design: 1 },
  fixedFree: { label: "one end clamped, the other free", theory: 1 / 4, design: 1 / 4 },
  fixedPinned: { label: "one end clamped, the other may turn", theory: 2.046, design: 1 },
  fixedFixed: { label: "both ends clamped", theory: 4, design: 1 },
}
