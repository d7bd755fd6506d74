// The laws of rise: displacement over lift and its first two derivatives by the share of the rise.
import type { CamLaw } from "./types.js"

export interface Rise {
  readonly s: number
  readonly v: number
  readonly a: number
}

const TURN = 2 * Math.PI

const laws: Readonly<Record<CamLaw, (u: number) => Rise>> = {
  uniform: (u) => ({ s: u, v: 1, a: 0 }),
  parabolic: (u) => (u <= 0.5 ? { s: 2 * u ** 2, v: 4 * u, a: 4 } : { s: 1 - 2 * (1 - u) ** 2, v: 4 * (1 - u), a: -4 }),
  harmonic: (u) => ({
    s: Math.sin((Math.PI * u) / 2) ** 2,
    v: (Math.PI / 2) * Math.sin(Math.PI * u),
    a: (Math.PI ** 2 / 2) * Math.cos(Math.PI * u),
  }),
  cycloidal: (u) => ({ s: u - Math.sin(TURN * u) / TURN, v: 2 * Math.sin(Math.PI * u) ** 2, a: TURN * Math.sin(TURN * u) }),
  "polynomial-345": (u) => ({
    s: u ** 3 * (10 - 15 * u + 6 * u ** 2),
    v: 30 * u ** 2 * (1 - u) ** 2,
    a: 60 * u * (1 - u) * (1 - 2 * u),
  }),
  "polynomial-4567": (u) => ({
    s: u ** 4 * (35 - 84 * u + 70 * u ** 2 - 20 * u ** 3),
    v: 140 * u ** 3 * (1 - u) ** 3,
    a: 420 * u ** 2 * (1 - u) ** 2 * (1 - 2 * u),
  }),
}

export const riseAt = (law: CamLaw, u: number): Rise => laws[law](u)
