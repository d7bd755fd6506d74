import type { Source } from "../solver/index.js"
import type { Figure, Plastic } from "./data.js"
import {
  ACRYLIC_SHRINKAGE,
  HAND_BENDING,
  LINE_HEATER,
  PC_DRYING,
  PC_DRYING_TABLE,
  PETG_SHEET,
  PVC_FOAM_FORMING,
  PVC_FOAM_GUIDE,
  PVC_SHEET,
  practice,
} from "./sources.js"

/** Smallest field bends of plastic conduit by outer diameter, m. */
export interface ConduitBend {
  readonly size: string
  readonly outsideDiameter: number
  /** With a one-shot bender, to the centreline. */
  readonly oneShot: number
  /** Other bends. */
  readonly other: number
}

const INCH = 0.0254
const bend = (size: string, diameter: number, oneShot: number, other: number): ConduitBend => ({
  size,
  outsideDiameter: diameter * INCH,
  oneShot: oneShot * INCH,
  other: other * INCH,
})

/** National Electrical Code, chapter 9, table 2, to which 352.24 refers PVC conduit; outer diameters of ASTM D1785. */
export const conduitBends: readonly ConduitBend[] = [
  bend("1/2", 0.84, 4, 4),
  bend("3/4", 1.05, 4.5, 5),
  bend("1", 1.315, 5.75, 6),
  bend("1-1/4", 1.66, 7.25, 8),
  bend("1-1/2", 1.9, 8.25, 10),
  bend("2", 2.375, 9.5, 12),
  bend("2-1/2", 2.875, 10.5, 15),
  bend("3", 3.5, 13, 18),
  bend("3-1/2", 4, 15, 21),
  bend("4", 4.5, 16, 24),
  bend("5", 5.563, 24, 30),
  bend("6", 6.625, 30, 36),
]

/** Hot-sand bending of small PVC pipe, a boat owner's practice. */
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
  /** Minimum centreline radius in outer diameters. */
  leastRadius: 5,
  /** s. */
  soak: 120,
  /** s. */
  hold: 1800,
}

/** Largest bend of an empty pipe without support inside, rad (30°, a pipe maker's guidance). */
export const unsupportedBend: number = Math.PI / 6

/** Part of the angle that is lost when a bend is let go. */
export const springbacks: Readonly<Record<"heated" | "cold", Figure>> = {
  heated: {
    value: 0.03,
    low: 0,
    high: 0.05,
    sources: [practice],
  },
  cold: {
    value: 0.5,
    low: 0.42,
    high: 0.58,
    sources: [HAND_BENDING],
  },
}

/** What a bend along a line asks of a sheet. */
export interface LineRule {
  /** Minimum inside radius, in thicknesses. */
  readonly radius: number
  /** Border between line and edge, in thicknesses; null where no maker publishes one. */
  readonly border: number | null
  readonly source: Source
  /** From this thickness on both faces are heated, m. */
  readonly bothFrom: number
  readonly bothSource: Source
}

const expandedLine: LineRule = { radius: 3, border: 20, source: PVC_FOAM_GUIDE, bothFrom: 0.005, bothSource: PVC_FOAM_GUIDE }
const solidLine: LineRule = { radius: 2, border: null, source: practice, bothFrom: INCH / 8, bothSource: LINE_HEATER }
/** The rule of a plastic: a maker's for expanded PVC, the trade's for the rest. */
export const lineRule = (plastic: Plastic): LineRule => (plastic === "pvc-foam" ? expandedLine : solidLine)

/** Drying of one plastic before forming. */
export interface Drying {
  /** `always`, `when damp` or `no`. */
  readonly needed: string
  /** Oven temperature, °C. */
  readonly temperature: Figure
  /** Hours by thickness (m): the shorter published schedule and the longer. One entry holds for any thickness. */
  readonly short: readonly (readonly [thickness: number, hours: number])[]
  readonly long: readonly (readonly [thickness: number, hours: number])[]
  readonly sources: readonly Source[]
}

const hours = (short: number, long: number): Pick<Drying, "short" | "long"> => ({ short: [[0.003, short]], long: [[0.003, long]] })
const oven = (value: number, low: number, high: number, ...sources: Source[]): Figure => ({ value, low, high, sources })

/** Takes up almost no water: surface water is dried off below the set temperature. */
const noDrying: Drying = { needed: "no", temperature: oven(60, 50, 65, practice), ...hours(0, 0), sources: [practice] }

/** Drying schedules by plastic; never hotter than the plastic's own lowest set temperature. */
export const dryings: Readonly<Record<Plastic, Drying>> = {
  // resin dries 2 h at 75 °C; finished pipe must stay below its deflection temperature, and so takes longer
  pvc: { needed: "when damp", temperature: oven(65, 60, 65, practice), ...hours(2, 4), sources: [PVC_SHEET, practice] },
  "pvc-foam": { ...noDrying, temperature: oven(50, 40, 55, practice), sources: [PVC_FOAM_FORMING] },
  "pmma-cast": { needed: "when damp", temperature: oven(80, 75, 80, ACRYLIC_SHRINKAGE), ...hours(24, 24), sources: [ACRYLIC_SHRINKAGE] },
  // it sets from 75 °C down: dried cooler than the published 80 °C, and so longer than the published 24 h
  "pmma-extruded": {
    needed: "when damp",
    temperature: oven(70, 65, 72, practice),
    ...hours(24, 48),
    sources: [ACRYLIC_SHRINKAGE, practice],
  },
  petg: { ...noDrying, sources: [PETG_SHEET] },
  // resin is dried 2 to 4 h at 80 °C; sheet loses its shape from 77 °C
  abs: { needed: "when damp", temperature: oven(72, 68, 75, practice), ...hours(3, 6), sources: [practice] },
  pc: {
    needed: "always",
    temperature: oven(121, 110, 125, PC_DRYING, PC_DRYING_TABLE),
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
    sources: [PC_DRYING_TABLE, PC_DRYING],
  },
  hips: noDrying,
  hdpe: noDrying,
  pp: noDrying,
  "eva-foam": { ...noDrying, temperature: oven(40, 30, 42, practice) },
  "low-temp-polyester": { ...noDrying, temperature: oven(30, 20, 33, practice) },
}

/** Moisture of polycarbonate: at rest in a room, and where it blisters, as fractions. */
export const polycarbonateMoisture: { readonly atRest: number; readonly blisters: number } = { atRest: 0.002, blisters: 0.0005 }
