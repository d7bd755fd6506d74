// Extension springs and elastic cords of every mechanism: they pull, and hang slack below their free length.
import type { springTension } from "../../linkage/index.js"

/** Stiffness and free length of a cord, whatever it runs between. */
export const cordFields = {
  stiffness: { kind: "forcePerLength", symbol: "k_s", label: "stiffness", min: 0.01, max: 1e6, typical: ["0.05 N/mm", "2 N/mm"] },
  freeLength: { kind: "length", symbol: "L_s", label: "free length", min: 0, max: 5, typical: ["20 mm", "0.3 m"] },
} as const

/** A cord as its tension is asked for. */
export const cordOf = <S extends { readonly stiffness: number; readonly freeLength: number }>(cord: S) =>
  ({ ...cord, preload: 0, pullsOnly: true }) satisfies Parameters<typeof springTension>[0]
