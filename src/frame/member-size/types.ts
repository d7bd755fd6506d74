// What memberSize takes and gives back.
import type { Force, Length, Temperature, Time } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Beam, BeamCaution } from "../beam/index.js"
import type { BeamLoads, BeamSupport } from "../beam/loads.js"
import type { Column, ColumnCaution } from "../column/index.js"
import type { ColumnEnds } from "../data-columns.js"
import type { HandlingCase } from "../data-loads.js"
import type { MaterialChoice } from "../material-choice.js"
import type { SectionInput } from "../section.js"

/** A member that is bent: clamped at its start, or resting on two supports. */
export interface BentMember extends BeamLoads {
  /** It is bent. */
  type: "beam"
  /** Whole length. [L; 10 mm to 100 m] */
  length: Length
  /** Clamped at its start, or resting on two supports. [cantilever or simple] */
  support: BeamSupport
  /** Distance between two supports, the first at the start; the whole length where left out. [S_g; 10 mm to 100 m; optional] */
  span?: Length | null
}
/** A member that is pushed along its middle. */
export interface PushedMember {
  /** It is pushed along its middle. */
  type: "column"
  /** Length between the ends. [L; 1 mm to 100 m] */
  length: Length
  /** How the ends are held. [pinned-pinned, fixed-free, fixed-pinned or fixed-fixed; default pinned-pinned] */
  ends?: ColumnEnds
  /** End constant C, instead of the conservative one for `ends`. [C_g; 0.1 to 4; optional] */
  endConstant?: number | null
  /** Axial load [F; 1 mN to 1000 kN] */
  load: Force
}

/** One size on the rack. */
export interface StockSize extends MaterialChoice {
  /** Name it is listed under. [text of 1 to 100 characters] */
  name: string
  /** Section; of another shape give second moment, fibre and area. [group] */
  section: SectionInput
}
/** Sizes to choose from. */
export interface StockSearch {
  /** A list of sizes. */
  type: "stock"
  /** Sizes, in any order. [list of 1 to 200] */
  sizes: readonly StockSize[]
}
/** A round tube or bar of whatever diameter it takes. */
export interface RoundSearch extends MaterialChoice {
  /** A round tube or bar. */
  type: "round"
  /** Wall; leave out for a solid bar. [t_w; 0.01 to 500 mm; optional] */
  wall?: Length | null
}
/** A rectangular tube or bar of a set width and whatever height it takes. */
export interface RectangularSearch extends MaterialChoice {
  /** A rectangular tube or bar. */
  type: "rectangular"
  /** Width across the load. [b_w; 0.1 mm to 2 m] */
  width: Length
  /** Wall; leave out for a solid bar. [t_w; 0.01 to 500 mm; optional] */
  wall?: Length | null
}

/** Input of {@link memberSize}. */
export interface MemberSizeInput {
  /** What the member has to do. [by its type: beam or column] */
  member: BentMember | PushedMember
  /** Where the size is looked for. [by its type: stock, round or rectangular] */
  search: StockSearch | RoundSearch | RectangularSearch
  /** Safety factor that it must have, at the weak end of the material's range. [n_r; 0.1 to 100; default 3] */
  minSafetyFactor?: number
  /** Deflection that a beam may have, at the soft end of the material's range. [y_r; 0.01 mm to 50 m; optional] */
  deflectionLimit?: Length | null
  /** Temperature of the member: plastics in the sun or near lamps are hotter than the air. [T; −40 to 200 °C; default 23 °C] */
  materialTemperature?: Temperature
  /** How long the load stands without a rest, for creep. [t_l; 0 to 1000 h; default 0] */
  duration?: Time
  /** Whether a beam's own weight, lying level, is added. [yes or no; default yes] */
  countsOwnWeight?: boolean
  /** How it is handled; multiplies every load. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** One size that was looked at. */
export interface SizeLookedAt {
  /** Name [text] */
  readonly name: string
  /**
   * `chosen`; `heavier` where it would do as well; else what it fails, of `strength`, `deflection`, `wall`, `buckling`
   * and `temperature`, joined by commas. [text]
   */
  readonly verdict: string
  /** Mass of the whole member. [kg] */
  readonly mass: number
  /** Depth along the load. [m] */
  readonly depth: number
  /** Minimum safety factor of its stress or buckling load; null where nothing stresses it, or it is too hot. [number] */
  readonly safetyFactor: number | null
  /** Local buckling stress of a thin round wall over its bending stress; null where it does not apply. [number] */
  readonly wallSafetyFactor: number | null
  /** Maximum deflection of a beam, either way, at the worse end of its range; null for a column, or where it is too hot. [m] */
  readonly maxDeflection: number | null
}

/** Result of {@link memberSize}. */
export interface MemberSize {
  /** Size chosen: the lightest that will do. [text] */
  readonly name: string
  /** Its depth along the load: diameter or height. [d_c; m] */
  readonly depth: number
  /** Mass of the whole member. [m_c; kg] */
  readonly mass: number
  /**
   * Second moment that the deflection limit (a column: Euler's load) asks for, with the stiffness and own weight of the
   * size chosen; null without a limit. [I_r; m⁴]
   */
  readonly requiredSecondMoment: number | null
  /** Section modulus that the bending stress asks for, likewise; null for a column. [W_r; m³] */
  readonly requiredSectionModulus: number | null
  /** The size chosen as a beam, in full; null for a column. [group] */
  readonly beam: Beam | null
  /** The size chosen as a column, in full; null for a beam. [group] */
  readonly column: Column | null
  /** Every size looked at, lightest first, each with why it was passed over. [list] */
  readonly candidates: readonly SizeLookedAt[]
}

/** Reasons for which {@link memberSize} refuses. */
export type MemberSizeRefusal = "no-candidate"

/** Hazards and limits of validity that go with an answer of {@link memberSize}: those of the size chosen, as beam or column. */
export type MemberSizeCaution =
  | Exclude<BeamCaution, "stress-unknown" | "weight-unknown">
  | Exclude<ColumnCaution, "euler-only">
  | "wall-buckling"

export type Si = SiOf<MemberSizeInput>
/** A size as beam and column take it. */
export interface Size {
  readonly name: string
  readonly section: SiOf<SectionInput>
  readonly made: SiOf<MaterialChoice>
}
/** What of a size falls short. */
export type Fail = "strength" | "deflection" | "wall" | "buckling" | "temperature"
/** A size, judged. */
export interface Looked extends Omit<SizeLookedAt, "verdict"> {
  readonly size: Size
  readonly fails: readonly Fail[]
  /** What falls short most, and by how many times. */
  readonly worst: Fail
  readonly excess: number
  readonly beam: Beam | null
  readonly column: Column | null
}
/** What the kernel found on its way, for cautions and formulae. */
export interface MemberSizeTrace {
  readonly chosen: Looked
}
