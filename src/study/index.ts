/**
 * Verbs that act on any solver, because a solver describes itself: what if, what must this be.
 *
 * @packageDocumentation
 */
export type { PathTo, ResultAt, Sort, ValueAt } from "./paths.js"
export {
  type ChoicePlace,
  type FlagPlace,
  type InputPlace,
  inputPlaces,
  isNumberPlace,
  type NumberPlace,
  type OutputPlace,
  outputPlaces,
  type TextPlace,
} from "./places.js"
