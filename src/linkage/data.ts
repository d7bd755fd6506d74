import type { Source } from "../solver/index.js"

/** Textbook of the four-bar and slider-crank relations. */
export const norton: Source = {
  title: "Design of Machinery",
  by: "R. L. Norton (McGraw-Hill)",
  edition: "5th ed., 2012",
  where: "chapters 2, 4, 6 and 7 (from memory; relations re-derived)",
}
