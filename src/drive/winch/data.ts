// Static strength that bending leaves a wire rope, and the drums that lines are given.
import { at, type Source } from "../../solver/index.js"
import { RIGGING, SHEAVE_SIZE, WINCH_RATIOS } from "../sources.js"

/** Share of a wire rope's strength that is left over a sheave, by sheave to rope diameter; SHEAVE_SIZE, tables A and B. */
export const bentStrength: readonly (readonly [ratio: number, share: number])[] = [
  [1, 0.5],
  [2, 0.65],
  [4, 0.75],
  [6, 0.79],
  [8, 0.83],
  [10, 0.86],
  [15, 0.89],
  [20, 0.91],
  [30, 0.93],
  [40, 0.95],
]
export const BENT_STRENGTH: Source = at(SHEAVE_SIZE, "tables A and B")

/** Smallest drum and line against the line, (D + d)/d, and who says so. */
export const smallestDrum: Readonly<Record<"wire-rope" | "fibre-rope", { readonly ratio: number; readonly source: Source }>> = {
  "wire-rope": { ratio: 18, source: WINCH_RATIOS },
  "fibre-rope": { ratio: 8, source: at(RIGGING, "p. 56: six to eight times, from which the larger is taken") },
}
