// Gauss–Legendre abscissae and weights on [−1, 1]: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 25.4

/** Abscissae and weights of five points. */
export const gaussFive = [
  [-0.906179845938664, 0.2369268850561891],
  [-0.5384693101056831, 0.4786286704993665],
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.4786286704993665],
  [0.906179845938664, 0.2369268850561891],
] as const
