import type { Source } from "../../solver/index.js"
import { EL_AHRACHE, FREY_LAW_2010, KAMON, ROHMERT_1973 } from "../sources-load.js"

/** Joints with a power law of their own, and muscle in general. */
export type Joint = "general" | "ankle" | "knee" | "trunk" | "shoulder" | "elbow" | "hand-grip"

/** Static holding time in seconds = b0·f^b1, f the share of the maximum force. */
export interface PowerLaw {
  readonly label: string
  readonly b0: number
  readonly b1: number
}

/**
 * Power laws: joints by L. A. Frey Law and K. G. Avin 2010 (the abstract confirms the ranking), general by Kamon as printed in Johnson 1991, equation 2.6.3.
 */
export const powerLaws: Readonly<Record<Joint, PowerLaw>> = {
  general: { label: "muscle in general", b0: 11.4, b1: -2.42 },
  ankle: { label: "ankle", b0: 34.71, b1: -2.06 },
  knee: { label: "knee", b0: 19.38, b1: -1.88 },
  trunk: { label: "trunk (back)", b0: 22.69, b1: -2.27 },
  shoulder: { label: "shoulder", b0: 14.86, b1: -1.83 },
  elbow: { label: "elbow", b0: 17.98, b1: -2.21 },
  "hand-grip": { label: "hand grip", b0: 33.55, b1: -1.61 },
}

/** Holding time by a power law, s. */
export const holdingTime = (joint: Joint, effort: number): number => powerLaws[joint].b0 * effort ** powerLaws[joint].b1

/** A published model of holding time, in minutes, kept to show the spread. */
export interface EnduranceModel {
  readonly label: string
  /** Only for this joint; null for muscle in general. */
  readonly joint: Joint | null
  /** Minimum effort it is used at here. */
  readonly from: number
  minutes(effort: number): number
}

/** General and shoulder models, after the comparison of El ahrache, Imbeau and Farbos 2006. */
export const enduranceModels: Readonly<Record<string, EnduranceModel>> = {
  rohmert1960: { label: "Rohmert 1960", joint: null, from: 0.15, minutes: (f) => -1.5 + 2.1 / f - 0.6 / f ** 2 + 0.1 / f ** 3 },
  huijgens1981: { label: "Huijgens 1981", joint: null, from: 0.16, minutes: (f) => 0.865 * ((1 - f) / (f - 0.15)) ** (1 / 1.4) },
  sato1984: { label: "Sato 1984", joint: null, from: 0.1, minutes: (f) => 0.3802 * (f - 0.04) ** -1.44 },
  manenica1986: { label: "Manenica 1986", joint: null, from: 0.15, minutes: (f) => 14.88 * Math.exp(-4.48 * f) },
  sjogaard1986: { label: "Sjøgaard 1986", joint: null, from: 0.05, minutes: (f) => 0.2997 * f ** -2.14 },
  rose1992: { label: "Rose 1992", joint: null, from: 0.15, minutes: (f) => 7.96 * Math.exp(-4.16 * f) },
  satoShoulder1984: { label: "Sato 1984, shoulder", joint: "shoulder", from: 0.1, minutes: (f) => 0.398 * f ** -1.29 },
  rohmertShoulder1986: { label: "Rohmert 1986, shoulder", joint: "shoulder", from: 0.15, minutes: (f) => 0.2955 * f ** -1.658 },
}

/** Effort whose time by Rohmert's curve is `hold` (s): its cubic in 1/f has one real root, found by Cardano's formula. */
export function rohmertEffort(hold: number): number {
  const half = hold / 12 - 5.5
  const root = Math.sqrt(half ** 2 + 27)
  const w = half >= 0 ? Math.cbrt(half + root) : 3 / Math.cbrt(root - half)
  return 1 / (2 + w - 3 / w)
}

/** Maximum torque of joints, N·m, average adults under 40, at 45°, 90° and 135° (Kamon 1981, in Johnson 1991, table 2.2.2). */
export const jointTorques = {
  shoulderFlexion: { male: [67, 68, 47], female: [29, 30, 21] },
  elbowFlexion: { male: [52, 85, 60], female: [24, 43, 23] },
  kneeExtension: { male: [135, 196, 174], female: [93, 130, 136] },
  /** At 90° only. */
  backExtension: { male: 240, female: 130 },
} as const

/** Rest after a static hold, s: Kamon (1080 s is a fixed time), for effort above 0.15. */
export function restKamon(hold: number, endurance: number, effort: number): number {
  return 1080 * (hold / endurance) ** 1.4 * (effort - 0.15) ** 0.5
}

/** Rest after a static hold, s: Rohmert's allowance, 18 times the hold. */
export function restRohmert(hold: number, endurance: number, effort: number): number {
  return 18 * (hold / endurance) ** 1.4 * (effort - 0.15) ** 0.5 * hold
}

/** Whole-body work: time to exhaustion for a share of the maximum oxygen uptake, s (Kamon 1981). */
export const exhaustionTime = (share: number): number => 7200 / share - 7020
/** The part of it that Kamon recommends as a work period. */
export const workPart = 1 / 3
/** Rest after work above half of the maximum oxygen uptake, s (Kamon 1981); negative below 0.561. */
export const restAfterWork = (share: number): number => 528 * Math.log(share - 0.5) + 1476

/** Share of the maximum oxygen uptake for work up to 1, 2 and 8 hours (NIOSH lifting criteria, Waters and others 1993). */
export const nioshShares = [
  { upTo: 3600, share: 0.5 },
  { upTo: 7200, share: 0.4 },
  { upTo: 28800, share: 0.33 },
] as const

/** Work time acceptable at a share of the maximum oxygen uptake by those shares, s: its logarithm runs straight between them and on. */
export function nioshTime(share: number): number {
  const [hour, two, eight] = nioshShares
  const [a, b] = share >= two.share ? [hour, two] : [two, eight]
  return a.upTo * (b.upTo / a.upTo) ** ((share - a.share) / (b.share - a.share))
}

/** Time constant of recovery, s: 1/R of the three-compartment fatigue model for the trunk (Frey Law and others 2012). */
export const recoveryTime = 1333

/** Sources on endurance. */
export const enduranceSources: readonly Source[] = [FREY_LAW_2010, KAMON, EL_AHRACHE, ROHMERT_1973]
