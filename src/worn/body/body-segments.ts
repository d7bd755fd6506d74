import type { Length, Mass } from "../../quantity/index.js"
import { type Caution, caution, type SiOf, type Solver, solver } from "../../solver/index.js"
import { DAVIDOVITS, DE_LEVA } from "../sources-load.js"
import { wearerFields } from "../wearer.js"
import { centreHeight, isPart, type SegmentTable, segmentRows, segmentSources, segmentTables } from "./data-segments.js"

/** Input of {@link bodySegments}. */
export interface BodySegmentsInput {
  /** Body mass [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Stature [H; 800 mm to 2.5 m] */
  stature: Length
  /** Published table. [de-leva-female, de-leva-male or winter; default de-leva-female] */
  table?: SegmentTable
}

/** One segment of a wearer. */
export interface BodySegment {
  /** Name [text] */
  readonly name: string
  /** How many there are. [number] */
  readonly count: number
  /** Mass of one [kg] */
  readonly mass: number
  /** Length [m] */
  readonly length: number
  /** Centre of mass below the upper end. [m] */
  readonly centre: number
  /** Height of the centre standing, arms hanging. [m] */
  readonly height: number
  /**
   * Moments of inertia about the centre: about a front-to-back, a side-to-side and the long axis; null where the table
   * has none. [kg m²]
   */
  readonly sagittal: number | null
  /** Inertia, side-to-side axis [kg m²] */
  readonly transverse: number | null
  /** Inertia, long axis [kg m²] */
  readonly longitudinal: number | null
}

/** Hazards and limits that an answer of {@link bodySegments} can carry. */
export type BodySegmentsCaution = "adults-only" | "means-of-samples" | "outside-range"

/** Result of {@link bodySegments}. */
export interface BodySegments {
  /** Height of the whole body's centre of mass, standing. [z_c; m] */
  readonly centreHeight: number
  /** The same over stature. [q_c; as a fraction] */
  readonly centreRatio: number
  /** Mass of one arm with hand, and of one leg with foot. [m_a; kg] */
  readonly armMass: number
  /** One leg [m_l; kg] */
  readonly legMass: number
  /** Mass of head and trunk. [m_t; kg] */
  readonly trunkMass: number
  /** Sum of the table's mass fractions. [f_s] */
  readonly sum: number
  /** Segments that make up the body, then parts of the trunk. [list] */
  readonly segments: readonly BodySegment[]
  /** Parts of the trunk [list] */
  readonly trunkParts: readonly BodySegment[]
}

const arms = ["upper arm", "forearm", "hand"]
const legs = ["thigh", "shank", "leg", "foot"]

/** Height of the standing body's centre over stature by one table. */
function centreRatioOf(table: SegmentTable): number {
  const whole = segmentRows[table].filter((r) => !isPart(r.name))
  return whole.reduce((a, r) => a + r.count * r.mass * centreHeight(r), 0) / whole.reduce((a, r) => a + r.count * r.mass, 0)
}

function solve(si: SiOf<BodySegmentsInput>): BodySegments {
  const { bodyMass, stature } = si
  const rows = segmentRows[si.table]
  const whole = rows.filter((r) => !isPart(r.name))
  const sum = whole.reduce((total, r) => total + r.count * r.mass, 0)
  const share = (names: readonly string[]) => rows.filter((r) => names.includes(r.name)).reduce((total, r) => total + r.mass, 0)
  const centreRatio = centreRatioOf(si.table)
  const [arm, leg] = [share(arms), share(legs)]
  const segment = (r: (typeof rows)[number]): BodySegment => {
    const inertia = (radius: number | null) => (radius === null ? null : r.mass * bodyMass * (radius * r.length * stature) ** 2)
    return {
      name: r.name,
      count: r.count,
      mass: r.mass * bodyMass,
      length: r.length * stature,
      centre: r.centre * r.length * stature,
      height: centreHeight(r) * stature,
      sagittal: inertia(r.sagittal),
      transverse: inertia(r.transverse),
      longitudinal: inertia(r.longitudinal),
    }
  }
  return {
    centreHeight: centreRatio * stature,
    centreRatio,
    armMass: arm * bodyMass,
    legMass: leg * bodyMass,
    trunkMass: (sum - 2 * arm - 2 * leg) * bodyMass,
    sum,
    segments: whole.map(segment),
    trunkParts: rows.filter((r) => isPart(r.name)).map(segment),
  }
}

function cautions(si: SiOf<BodySegmentsInput>, out: BodySegments): Caution<BodySegmentsCaution>[] {
  const ratios = (Object.keys(segmentRows) as SegmentTable[]).map(centreRatioOf)
  const found: Caution<BodySegmentsCaution>[] = [
    caution(
      "means-of-samples",
      "note",
      "Means of small samples (students; cadavers in Winter): people differ. The three tables put the centre of mass at {lowest ratio %} to {highest ratio %} of stature; this one at {centreRatio ratio %}. End points differ between tables, so do not mix them.",
      DAVIDOVITS,
      { lowest: Math.min(...ratios), highest: Math.max(...ratios), centreRatio: out.centreRatio },
    ),
  ]
  if (si.bodyMass / si.stature ** 2 > 30 || si.bodyMass / si.stature ** 2 < 18.5)
    found.push(
      caution(
        "outside-range",
        "caution",
        "The build lies outside the samples (fit students): trunk and thigh shares are off by more than usual.",
        DE_LEVA,
      ),
    )
  if (si.bodyMass < 40 || si.stature < 1.45)
    found.push(
      caution(
        "adults-only",
        "warning",
        "The tables are of adults: children have larger heads and shorter legs. Do not use them for a child.",
      ),
    )
  return found
}

const mass = (symbol: string, label: string) => ({ kind: "mass", symbol, label }) as const
const length = (label: string) => ({ kind: "length", label }) as const
const inertia = (label: string) => ({ kind: "momentOfInertia", label }) as const
const list = (label: string) =>
  ({
    kind: "list",
    label,
    of: {
      kind: "group",
      label: "segment",
      fields: {
        name: { kind: "text", label: "name" },
        count: { kind: "number", label: "number" },
        mass: { kind: "mass", label: "mass of one" },
        length: length("length"),
        centre: length("centre below the upper end"),
        height: length("height of the centre"),
        sagittal: inertia("inertia, front-to-back axis"),
        transverse: inertia("inertia, side-to-side axis"),
        longitudinal: inertia("inertia, long axis"),
      },
    },
  }) as const

const column = (of: (r: (typeof segmentRows)["winter"][number]) => number) => (si: SiOf<BodySegmentsInput>) =>
  segmentRows[si.table].filter((r) => !isPart(r.name)).map(of)

/**
 * Masses, centres and radii of gyration of a wearer's body segments, from published proportions.
 *
 * Each segment: mass = fraction · body mass, length = fraction · stature, centre = fraction · length below its upper
 * end, inertia = mass · (radius fraction · length)². The body's centre standing is Σ n·f·z / Σ n·f, n the number, f the
 * mass fraction and z the height of the segment's centre over stature. Tables: de Leva for women and men, Winter for
 * both; masses are as printed (de Leva's for women add up to 99.99 %). Valid for adults of ordinary build.
 *
 * **Inputs**
 * - `bodyMass`: body mass [m_w; 20 to 300 kg]
 * - `stature`: stature [H; 800 mm to 2.5 m]
 * - `table`: table [de-leva-female, de-leva-male or winter; default de-leva-female]
 *
 * **Results**
 *
 * `centreHeight`: height of the centre of mass [z_c; m]; `centreRatio`: over stature [q_c; as a fraction]; `armMass`:
 * one arm [m_a; kg]; `legMass`: one leg [m_l; kg]; `trunkMass`: head and trunk [m_t; kg]; `sum`: sum of the fractions
 * [f_s]; `segments`: segments [list]; `trunkParts`: parts of the trunk [list].
 *
 * **Symbols of the working**
 *
 * n: number of each segment; f: mass fraction of one; z: height of its centre over stature, standing; w_a: 1 for the
 * arm's segments; w_l: 1 for the leg's segments.
 *
 * **Sources**
 * - P. de Leva: Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, J. Biomech. 29, 1996, table 4:
 *   masses, centres and radii
 * - P. de Leva: Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, J. Biomech. 29, 1996, lengths of
 *   segments, the shank, mean stature of the samples (not verified against the document)
 * - D. A. Winter: Biomechanics and Motor Control of Human Movement, 4th, 2009, table 4.1
 * - R. Drillis, R. Contini: Body Segment Parameters, New York University report 1166-03 (reproduced by Winter, figure
 *   4.1), 1966, segment lengths as fractions of stature (not verified against the document)
 * - C. C. Gordon and others: 2012 Anthropometric Survey of U.S. Army Personnel (ANSUR II), public files,
 *   NATICK/TR-15/007, 2014, statistics of every measured person: mean, sample standard deviation, 5th, 50th and 95th
 *   percentile, correlation with stature
 * - A. T. Johnson (after Davidovits 1975): Biomechanics and Exercise Physiology, 1991, section 2.2.1: centre of mass
 *   at 56 % of stature
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { bodySegments } from 'alula/worn'
 * const body = bodySegments({ bodyMass: '60 kg', stature: '1.65 m', table: 'winter' })
 * body.armMass // => 3
 * body.sum // => 1
 * ```
 */
export const bodySegments: Solver<BodySegmentsInput, BodySegments, never, BodySegmentsCaution> = /* @__PURE__ */ solver<
  BodySegmentsInput,
  BodySegments,
  never,
  BodySegmentsCaution
>("bodySegments", "How mass is spread over a wearer's body", solve, () => ({
  input: {
    bodyMass: wearerFields.bodyMass,
    stature: wearerFields.stature,
    table: { kind: "choice", label: "table", options: segmentTables, default: "de-leva-female" },
  },
  output: {
    centreHeight: { kind: "length", symbol: "z_c", label: "height of the centre of mass" },
    centreRatio: { kind: "ratio", symbol: "q_c", label: "over stature", unit: "%" },
    armMass: mass("m_a", "one arm"),
    legMass: mass("m_l", "one leg"),
    trunkMass: mass("m_t", "head and trunk"),
    sum: { kind: "number", symbol: "f_s", label: "sum of the fractions" },
    segments: list("segments"),
    trunkParts: list("parts of the trunk"),
  },
  example: { bodyMass: "60 kg", stature: "1.65 m" },
  formulae: [
    { symbol: "n", kind: "number", meaning: "number of each segment", given: column((r) => r.count) },
    { symbol: "f", kind: "number", meaning: "mass fraction of one", given: column((r) => r.mass), source: DE_LEVA },
    { symbol: "z", kind: "number", meaning: "height of its centre over stature, standing", given: column(centreHeight) },
    { symbol: "w_a", kind: "number", meaning: "1 for the arm's segments", given: column((r) => (arms.includes(r.name) ? 1 : 0)) },
    { symbol: "w_l", kind: "number", meaning: "1 for the leg's segments", given: column((r) => (legs.includes(r.name) ? 1 : 0)) },
    { symbol: "f_s", meaning: "sum of the fractions", is: "sum(n .* f)" },
    { symbol: "q_c", meaning: "height of the centre over stature", is: "sum(n .* f .* z) / f_s" },
    { symbol: "z_c", meaning: "height of the centre", is: "q_c * H" },
    { symbol: "m_a", meaning: "one arm", is: "sum(w_a .* f) * m_w" },
    { symbol: "m_l", meaning: "one leg", is: "sum(w_l .* f) * m_w" },
    { symbol: "m_t", meaning: "head and trunk", is: "f_s * m_w - 2 * m_a - 2 * m_l" },
  ],
  sources: [...segmentSources, DAVIDOVITS],
  cautions,
}))
