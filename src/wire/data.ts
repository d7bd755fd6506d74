import type { Source } from "../solver/index.js"

/** A conductor metal: resistivity at 20 °C and its temperature coefficient there. */
export interface ConductorMetal {
  readonly label: string
  /** Resistivity at 20 °C, Ω·m. */
  readonly resistivity: number
  /** Temperature coefficient of resistance at constant mass, referred to 20 °C, 1/K. */
  readonly coefficient: number
  readonly source: string
}

/** Metals of wire. */
export type Metal = "copper" | "aluminium"

/** Conductor metals, each with its source. */
export const metals: Readonly<Record<Metal, ConductorMetal>> = {
  copper: {
    label: "annealed copper",
    resistivity: 1 / 58e6,
    coefficient: 0.00393,
    source: "IEC 60028, International standard of resistance for copper, 1925, clause 1 (1/58 Ω·mm²/m, 0.00393/K at 20 °C)",
  },
  aluminium: {
    label: "hard-drawn aluminium",
    resistivity: 28.264e-9,
    coefficient: 0.00403,
    source: "IEC 60889, Hard-drawn aluminium wire, 1987, clause 3 (28.264 nΩ·m, 0.00403/K at 20 °C)",
  },
}

/** ASTM B258: American wire gauge by its geometric series. */
export const awgSource: Source = {
  title: "ASTM B258, Standard specification for standard nominal diameters and cross-sectional areas of AWG sizes of solid round wires",
  by: "ASTM International",
  edition: "2018",
  where: "clause 5 (0.0050 in at 36 AWG, 0.4600 in at 4/0, ratio 92 over 39 steps)",
}
