import type { Source } from "../../solver/index.js"
import { ANSUR, DE_LEVA, DE_LEVA_LENGTHS, DRILLIS, WINTER } from "../sources-load.js"
import { survey } from "./data-survey.js"

/** Sources of the segment tables. */
export const segmentSources: readonly Source[] = [DE_LEVA, DE_LEVA_LENGTHS, WINTER, DRILLIS, ANSUR]

/** Published tables of body segments. */
export type SegmentTable = "de-leva-female" | "de-leva-male" | "winter"

/** Labels of the tables. */
export const segmentTables: Readonly<Record<SegmentTable, string>> = {
  "de-leva-female": "de Leva 1996, women",
  "de-leva-male": "de Leva 1996, men",
  winter: "Winter 2009, both sexes",
}

/** One segment of a table. */
export interface SegmentRow {
  readonly name: string
  /** 2 for limbs, 1 for the rest. */
  readonly count: 1 | 2
  /** Mass of one, as a fraction of body mass. */
  readonly mass: number
  /** Centre of mass from the proximal (upper) end, as a fraction of the length. */
  readonly centre: number
  /** Radii of gyration about the centre, as fractions of the length; Winter prints only the one about a side-to-side axis. */
  readonly sagittal: number | null
  readonly transverse: number | null
  readonly longitudinal: number | null
  /** Length over stature. */
  readonly length: number
  /** Height of the upper end when standing, arms hanging, over stature; a foot lies flat at its own height. */
  readonly top: number
}

/** Body dimensions as fractions of stature (Drillis and Contini 1966). */
export const statureFractions = {
  eyeHeight: 0.936,
  chinHeight: 0.87,
  shoulderHeight: 0.818,
  elbowHeight: 0.63,
  hipHeight: 0.53,
  wristHeight: 0.485,
  fingertipHeight: 0.377,
  kneeHeight: 0.285,
  ankleHeight: 0.039,
  shoulderWidth: 0.259,
  hipWidth: 0.191,
  upperArmLength: 0.186,
  forearmLength: 0.146,
  handLength: 0.108,
  footLength: 0.152,
  footBreadth: 0.055,
} as const

type Columns = readonly [mass: number, centre: number, sagittal: number, transverse: number, longitudinal: number, lengthMm: number]

/** de Leva, table 4: per cent of body mass, then centre and radii in per cent of the length, length in mm; women, men. */
const deLeva: Readonly<Record<string, readonly [Columns, Columns]>> = {
  head: [
    [6.68, 58.94, 33.0, 35.9, 31.8, 200.2],
    [6.94, 59.76, 36.2, 37.6, 31.2, 203.3],
  ],
  trunk: [
    [42.57, 41.51, 35.7, 33.9, 17.1, 529.3],
    [43.46, 44.86, 37.2, 34.7, 19.1, 531.9],
  ],
  "upper trunk": [
    [15.45, 20.77, 74.6, 50.2, 71.8, 142.5],
    [15.96, 29.99, 71.6, 45.4, 65.9, 170.7],
  ],
  "middle trunk": [
    [14.65, 45.12, 43.3, 35.4, 41.5, 205.3],
    [16.33, 45.02, 48.2, 38.3, 46.8, 215.5],
  ],
  "lower trunk": [
    [12.47, 49.2, 43.3, 40.2, 44.4, 181.5],
    [11.17, 61.15, 61.5, 55.1, 58.7, 145.7],
  ],
  "upper arm": [
    [2.55, 57.54, 27.8, 26.0, 14.8, 275.1],
    [2.71, 57.72, 28.5, 26.9, 15.8, 281.7],
  ],
  forearm: [
    [1.38, 45.59, 26.1, 25.7, 9.4, 264.3],
    [1.62, 45.74, 27.6, 26.5, 12.1, 268.9],
  ],
  hand: [
    [0.56, 74.74, 53.1, 45.4, 33.5, 78.0],
    [0.61, 79.0, 62.8, 51.3, 40.1, 86.2],
  ],
  thigh: [
    [14.78, 36.12, 36.9, 36.4, 16.2, 368.5],
    [14.16, 40.95, 32.9, 32.9, 14.9, 422.2],
  ],
  shank: [
    [4.81, 44.16, 27.1, 26.7, 9.3, 432.3],
    [4.33, 44.59, 25.5, 24.9, 10.3, 434.0],
  ],
  foot: [
    [1.29, 40.14, 29.9, 27.9, 13.9, 228.3],
    [1.37, 44.15, 25.7, 24.5, 12.4, 258.1],
  ],
}

/** Mean stature of the de Leva samples, mm, and mid-shoulder to mid-hip distance, mm (women, men). */
const deLevaStature = [1735, 1741] as const
const deLevaShoulder = [497.9, 515.5] as const
const limbs = ["upper arm", "forearm", "hand", "thigh", "shank", "foot"]

function deLevaRows(sex: 0 | 1): readonly SegmentRow[] {
  const per = (mm: number) => mm / deLevaStature[sex]
  const length = (name: string) => per((deLeva[name] as readonly [Columns, Columns])[sex][5])
  const ankle = statureFractions.ankleHeight
  const knee = ankle + length("shank")
  const hip = knee + length("thigh")
  const shoulder = hip + per(deLevaShoulder[sex])
  const elbow = shoulder - length("upper arm")
  const navel = hip + length("lower trunk")
  const xiphoid = navel + length("middle trunk")
  const tops: Readonly<Record<string, number>> = {
    head: 1,
    trunk: xiphoid + length("upper trunk"),
    "upper trunk": xiphoid + length("upper trunk"),
    "middle trunk": xiphoid,
    "lower trunk": navel,
    "upper arm": shoulder,
    forearm: elbow,
    hand: elbow - length("forearm"),
    thigh: hip,
    shank: knee,
    foot: ankle / 2,
  }
  return Object.entries(deLeva).map(([name, sexes]) => {
    const [mass, centre, sagittal, transverse, longitudinal] = sexes[sex]
    return {
      name,
      count: limbs.includes(name) ? 2 : 1,
      mass: mass / 100,
      centre: centre / 100,
      sagittal: sagittal / 100,
      transverse: transverse / 100,
      longitudinal: longitudinal / 100,
      length: length(name),
      top: tops[name] as number,
    }
  })
}

const s = statureFractions
const winterRow = (
  name: string,
  count: 1 | 2,
  mass: number,
  centre: number,
  transverse: number | null,
  length: number,
  top: number,
): SegmentRow => ({
  name,
  count,
  mass,
  centre,
  sagittal: null,
  transverse,
  longitudinal: null,
  length,
  top,
})

/** Height of the L4–L5 joint over stature: the iliac crest, mean of the women's and men's ratios of the open survey. */
const lowBackHeight =
  (survey["iliac-crest-height"].female[0] / survey.stature.female[0] + survey["iliac-crest-height"].male[0] / survey.stature.male[0]) / 2

/** Winter, table 4.1: trunk, head and neck run from shoulder to hip; the pelvis from L4–L5 to the hip. */
const winterRows: readonly SegmentRow[] = [
  /* @__PURE__ */ winterRow("trunk, head and neck", 1, 0.578, 0.34, 0.503, s.shoulderHeight - s.hipHeight, s.shoulderHeight),
  /* @__PURE__ */ winterRow("pelvis", 1, 0.142, 0.105, null, lowBackHeight - s.hipHeight, lowBackHeight),
  /* @__PURE__ */ winterRow("upper arm", 2, 0.028, 0.436, 0.322, s.upperArmLength, s.shoulderHeight),
  /* @__PURE__ */ winterRow("forearm", 2, 0.016, 0.43, 0.303, s.forearmLength, s.shoulderHeight - s.upperArmLength),
  /* @__PURE__ */ winterRow("hand", 2, 0.006, 0.506, 0.297, s.handLength, s.shoulderHeight - s.upperArmLength - s.forearmLength),
  /* @__PURE__ */ winterRow("thigh", 2, 0.1, 0.433, 0.323, s.hipHeight - s.kneeHeight, s.hipHeight),
  /* @__PURE__ */ winterRow("leg", 2, 0.0465, 0.433, 0.302, s.kneeHeight - s.ankleHeight, s.kneeHeight),
  /* @__PURE__ */ winterRow("foot", 2, 0.0145, 0.5, 0.475, s.footLength, s.ankleHeight / 2),
]

/** The rows of every table; parts of the trunk are listed beside the whole (see {@link isPart}). */
export const segmentRows: Readonly<Record<SegmentTable, readonly SegmentRow[]>> = {
  "de-leva-female": /* @__PURE__ */ deLevaRows(0),
  "de-leva-male": /* @__PURE__ */ deLevaRows(1),
  winter: winterRows,
}

/** Winter's trunk and head by parts, as fractions of body mass. */
export const winterTrunk = { headNeck: 0.081, thorax: 0.216, abdomen: 0.139, pelvis: 0.142 } as const

/** Winter's compound segments: mass, centre from the upper (proximal) end, radius of gyration about the centre. */
export const winterCompounds = {
  totalLeg: { mass: 0.161, centre: 0.447, radius: 0.326 },
  /** Head, arms and trunk, measured from the hip upwards to the shoulder. */
  headArmsTrunk: { mass: 0.678, centre: 0.626, radius: 0.496 },
} as const

const parts = ["upper trunk", "middle trunk", "lower trunk", "pelvis"]
/** Whether a row is a part of another row, so that sums leave it out. */
export const isPart = (name: string): boolean => parts.includes(name)

/** Height of a row's centre when standing, over stature. */
export function centreHeight(row: SegmentRow): number {
  return row.name === "foot" ? row.top : row.top - row.centre * row.length
}

/** What a standing body is above the hips and above the low back, as fractions of body mass and stature. */
export interface UpperBody {
  readonly hipHeight: number
  /** Mass above the hips and its centre's height above them. */
  readonly upperMass: number
  readonly upperHeight: number
  /** Height of the low-back joint above the hips, mass above it and its centre's height above the hips. */
  readonly backHeight: number
  readonly backMass: number
  readonly backCentre: number
}

const lowerNames = ["thigh", "shank", "leg", "foot"]

function upperBodyOf(table: SegmentTable): UpperBody {
  const rows = segmentRows[table]
  const hipHeight = (rows.find((r) => r.name === "thigh") as SegmentRow).top
  const pelvis = rows.find((r) => r.name === "lower trunk" || r.name === "pelvis") as SegmentRow
  const upper = rows.filter((r) => !isPart(r.name) && !lowerNames.includes(r.name))
  const upperMass = upper.reduce((sum, r) => sum + r.count * r.mass, 0)
  const moment = upper.reduce((sum, r) => sum + r.count * r.mass * (centreHeight(r) - hipHeight), 0)
  const backMass = upperMass - pelvis.mass
  return {
    hipHeight,
    upperMass,
    upperHeight: moment / upperMass,
    backHeight: pelvis.top - hipHeight,
    backMass,
    backCentre: (moment - pelvis.mass * (centreHeight(pelvis) - hipHeight)) / backMass,
  }
}

/** {@link UpperBody} by table. */
export const upperBodies: Readonly<Record<SegmentTable, UpperBody>> = {
  "de-leva-female": /* @__PURE__ */ upperBodyOf("de-leva-female"),
  "de-leva-male": /* @__PURE__ */ upperBodyOf("de-leva-male"),
  winter: /* @__PURE__ */ upperBodyOf("winter"),
}
