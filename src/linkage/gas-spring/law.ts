// Force of a gas spring over its stroke, shared by all that is pushed by one: the gas keeps p·V as the rod takes its room.

/** Force at a compression for the force extended, the progression and the stroke: F₁/(1 − (1 − 1/p)·s/S), N. */
export const gasForce = (extended: number, progression: number, compression: number, stroke: number): number =>
  extended / (1 - ((1 - 1 / progression) * compression) / stroke)

/** Work of that force from extended to a compression, J. */
export function gasWork(extended: number, progression: number, compression: number, stroke: number): number {
  const taken = 1 - 1 / progression
  return taken === 0 ? extended * compression : ((-extended * stroke) / taken) * Math.log1p((-taken * compression) / stroke)
}
