import type { Source } from "../../solver/index.js"
import { ADP_3_90, CHILD_PACKS, FM_21_18, HALL } from "../sources-load.js"

/** A published statement on how much may be carried, as a share of body mass. */
export interface LoadGuidance {
  readonly who: string
  readonly massShare: number
  readonly source: Source
}

/** Published guidance, minimum share first. None of it was written for costumes. */
export const loadGuidance: readonly LoadGuidance[] = [
  { who: "children, low figure", massShare: 0.1, source: CHILD_PACKS },
  { who: "adults, posture kept; children, trunk lean kept", massShare: 0.15, source: HALL },
  { who: "children, high figure", massShare: 0.2, source: CHILD_PACKS },
  { who: "trained soldiers, alert and agile", massShare: 0.3, source: ADP_3_90 },
  { who: "trained soldiers, marching", massShare: 0.45, source: FM_21_18 },
]

/** Body mass below which a wearer is taken for a child or a very light adult, kg: common practice; 5 % of the women of the survey are below 51 kg. */
export const lightWearer = 45

/** Published share of body mass that counts for a wearer: 10 % below {@link lightWearer}, 15 % from there on. */
export function publishedShare(bodyMass: number): number {
  return (loadGuidance[bodyMass < lightWearer ? 0 : 1] as LoadGuidance).massShare
}

/** Total sway a standing adult recovers from, rad: fore and aft, side to side (after Nashner; tables differ by about 0.5°). */
export const stability = { foreAft: (12.5 * Math.PI) / 180, sideToSide: (16 * Math.PI) / 180 } as const

/** Moment of head-borne weight about the atlanto-occipital joint above which performance falls, N·m (2023 guidance). */
export const headMoment = 1.34

/** Largest mass on the head for a centre that far from the atlanto-occipital joint, kg. */
export function headMassLimit(offset: number, gravity = 9.80665): number {
  return headMoment / (gravity * offset)
}

/** Compression of the low back above which NIOSH asks for action, N (Work Practices Guide 1981, kept in 1993). */
export const backCompressionLimit = 3400

/**
 * Walking: force of one harmonic as a fraction of the static weight, for the harmonic's own frequency (M. R. Willford and
 * P. Young, A design guide for footfall induced vibration of structures, CCIP-016, 2006, table 4.3, design values).
 */
export function walkingFactor(harmonic: 1 | 2 | 3 | 4, frequency: number): number {
  switch (harmonic) {
    case 1:
      return Math.min(0.56, 0.41 * (frequency - 0.95))
    case 2:
      return 0.069 + 0.0056 * frequency
    case 3:
      return 0.033 + 0.0064 * frequency
    default:
      return 0.013 + 0.0065 * frequency
  }
}

/** Peak of the force of four harmonics at two steps a second, as a multiple of the static weight, should all of them meet. */
export const walkingPeak = ([1, 2, 3, 4] as const).reduce<number>((sum, h) => sum + walkingFactor(h, 2 * h), 1)

/**
 * A mass on a spring and damper whose base is shaken harmonically: force passed on over that of the base's acceleration, and travel
 * against the base over the sag under that force at rest; for the frequency over the natural one (S. S. Rao, Mechanical Vibrations).
 */
export function baseMotion(frequencyRatio: number, dampingRatio: number): { readonly force: number; readonly travel: number } {
  const drag = 2 * dampingRatio * frequencyRatio
  const travel = 1 / Math.hypot(1 - frequencyRatio ** 2, drag)
  return { force: travel * Math.hypot(1, drag), travel }
}

/** Pull of a muscle that balances forces (N) at their arms (m) with its own arm (m). */
export function muscleForce(forces: readonly number[], arms: readonly number[], muscleArm: number): number {
  return forces.reduce((sum, force, i) => sum + force * (arms[i] as number), 0) / muscleArm
}
