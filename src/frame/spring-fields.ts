// Descriptions of what a support or root gives by; rigid or free, as the solver says, where left out.

/** Force for each length. */
export const stiffnessField = (symbol: string, label: string, typical: readonly [number, number] = [500, 1e5]) =>
  ({ kind: "forcePerLength", symbol, label, min: 10, max: 1e9, typical, default: null }) as const

/** Moment for each angle. */
export const turningStiffnessField = (label: string, typical: readonly [number, number] = [20, 5000]) =>
  ({ kind: "rotationalStiffness", symbol: "k_t", label, min: 0.1, max: 1e9, typical, default: null }) as const
