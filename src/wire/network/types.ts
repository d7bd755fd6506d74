// What a network is made of, what it settles at, and why it may have no state.

/** A two-pole of a direct-current network; its current flows `from` → `to` through it. */
export interface TwoPole {
  readonly from: number
  readonly to: number
  /** V_from − V_to = resistance · current − emf, Ω and V. */
  readonly resistance: number
  readonly emf: number
  /** Fixed current, A, or fixed power taken, W; both null for a plain resistance or source. */
  readonly current: number | null
  readonly power: number | null
}

/** State of a network. */
export interface NetworkState {
  /** Node voltages against the reference; null where nothing ties the node to it. */
  readonly voltages: readonly (number | null)[]
  /** Current of each two-pole, A. */
  readonly currents: readonly number[]
  /** Voltage across each two-pole, V_from − V_to, V; 0 for a load nothing feeds. */
  readonly drops: readonly number[]
  /** Whether a source can reach the two-pole. */
  readonly fed: readonly boolean[]
  readonly iterations: number
  /** Largest error of Kirchhoff's two laws, against the largest current and the largest source voltage. */
  readonly residual: number
}

/** Why a network has no state. */
export type NetworkFault =
  | { readonly fault: "short-circuit"; readonly branch: number }
  | { readonly fault: "in-series"; readonly branches: readonly [number, number] }
  | { readonly fault: "reversed" | "insufficient-voltage"; readonly branch: number; readonly shortBy: number }
  | { readonly fault: "too-much-power"; readonly scale: number }

/** Whether a two-pole asks for a current or a power, whatever its voltage. */
export const isDemand = (b: TwoPole): boolean => b.current !== null || b.power !== null
