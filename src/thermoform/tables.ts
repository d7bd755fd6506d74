import type { Figure, Plastic } from "./data.js"

/** Smallest field bends of plastic conduit by outer diameter, m. */
export interface ConduitBend {
  readonly size: string
  readonly diameter: number
  /** With a one-shot bender, to the centreline. */
  readonly oneShot: number
  /** Other bends. */
  readonly other: number
}

const INCH = 0.0254
const bend = (size: string, diameter: number, oneShot: number, other: number): ConduitBend => ({
  size,
  diameter: diameter * INCH,
  oneShot: oneShot * INCH,
  other: other * INCH,
})

/** NEC (NFPA 70), chapter 9, table 2, to which 352.24 refers PVC conduit; from secondary copies, the last sizes from memory. */
export const conduitBends: readonly ConduitBend[] = [
  bend("1/2", 0.84, 4, 4),
  bend("3/4", 1.05, 4.5, 5),
  bend("1", 1.315, 5.75, 6),
  bend("2", 2.375, 9.5, 12),
  bend("2-1/2", 2.875, 10.5, 15),
  bend("3", 3.5, 13, 18),
  bend("3-1/2", 4, 15, 21),
  bend("4", 4.5, 16, 24),
  bend("5", 5.563, 24, 30),
  bend("6", 6.625, 30, 36),
]

/** Hot-sand bending of small PVC pipe (Practical Sailor, Using heat to bend PVC pipe, quoted; common practice). */
export const sandBending: {
  readonly sand: number
  readonly pipe: number
  readonly leastRadius: number
  readonly soak: number
  readonly hold: number
} = {
  /** Temperature of the sand, °C (450 °F). */
  sand: (450 - 32) / 1.8,
  /** Temperature of the pipe, °C (200 °F). */
  pipe: (200 - 32) / 1.8,
  /** Least centreline radius in outer diameters. */
  leastRadius: 5,
  /** s. */
  soak: 120,
  /** s. */
  hold: 1800,
}

/** Largest bend of an empty pipe without support inside, rad (30°; pipe maker's guidance reproduced by U.S. Plastic Corp.). */
export const unsupportedBend: number = Math.PI / 6

/** Part of the angle that is lost when a bend is let go. */
export const springbacks: Readonly<Record<"heated" | "cold", Figure>> = {
  heated: {
    value: 0.03,
    low: 0,
    high: 0.05,
    source: "common practice, no source: almost none when held until set; try one bend and measure",
  },
  cold: {
    value: 0.5,
    low: 0.42,
    high: 0.58,
    source: "B. Bamford, Bending conduit/tubing using hand benders, Albany Technical College, 2012 (60° relaxes to 30°)",
  },
}

/** Drying of one plastic before forming. */
export interface Drying {
  /** `always`, `when damp` or `no`. */
  readonly needed: string
  /** Oven temperature, °C. */
  readonly temperature: Figure
  /** Hours by thickness (m): the shorter published schedule and the longer. One entry holds for any thickness. */
  readonly short: readonly (readonly [thickness: number, hours: number])[]
  readonly long: readonly (readonly [thickness: number, hours: number])[]
  readonly source: string
}

const noDrying: Drying = {
  needed: "no",
  temperature: { value: 60, low: 50, high: 70, source: "common practice, no source" },
  short: [[0.003, 0]],
  long: [[0.003, 0]],
  source: "takes up almost no water; dry surface water off (common practice, no source)",
}
const acrylicDrying: Drying = {
  needed: "when damp",
  temperature: { value: 80, low: 75, high: 80, source: "Ultra Acrylics, Shrinkage, 2006, predrying (176 °F)" },
  short: [[0.003, 24]],
  long: [[0.003, 24]],
  source: "Ultra Acrylics, Shrinkage, 2006, predrying (24 h at 80 °C suits most damp sheets)",
}

/** Drying schedules by plastic. */
export const dryings: Readonly<Record<Plastic, Drying>> = {
  pvc: {
    needed: "when damp",
    temperature: { value: 65, low: 60, high: 65, source: "below the deflection temperature of 67 °C, so that pipe keeps its shape" },
    short: [[0.003, 2]],
    long: [[0.003, 4]],
    source: "AZoM, article 770 (resin: 2 h at 75 °C); longer because finished pipe must stay cooler (common practice)",
  },
  pmmaCast: acrylicDrying,
  pmmaExtruded: acrylicDrying,
  petg: { ...noDrying, source: "PETG sheet maker's data via Knowde (no pre-drying)" },
  abs: {
    needed: "when damp",
    temperature: { value: 80, low: 75, high: 85, source: "from memory" },
    short: [[0.003, 2]],
    long: [[0.003, 4]],
    source: "resin suppliers' 2 to 4 h at 80 °C (from memory)",
  },
  pc: {
    needed: "always",
    temperature: { value: 121, low: 110, high: 125, source: "HighLine Polycarbonate, 2012 (250 °F); Palram, PALSUN user manual (125 °C)" },
    short: [
      [0.001, 1.5],
      [0.002, 4],
      [0.003, 7],
      [0.004, 12],
      [0.005, 18],
      [0.006, 26],
      [0.008, 45],
    ],
    long: [
      [0.118 * INCH, 12],
      [0.236 * INCH, 30],
      [0.375 * INCH, 40],
    ],
    source: "Palram, PALSUN user manual, p. 32; HighLine Polycarbonate, Drying polycarbonate sheet, 2012",
  },
  hips: noDrying,
  hdpe: noDrying,
  pp: noDrying,
  evaFoam: { ...noDrying, temperature: { value: 40, low: 30, high: 45, source: "below its set temperature" } },
  lowTempPolyester: { ...noDrying, temperature: { value: 30, low: 20, high: 35, source: "below its set temperature" } },
}

/** Moisture of polycarbonate: at rest in a room, and where it blisters (HighLine Polycarbonate, 2012), as fractions. */
export const polycarbonateMoisture: { readonly atRest: number; readonly blisters: number } = { atRest: 0.002, blisters: 0.0005 }
