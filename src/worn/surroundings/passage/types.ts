// What goes in and what comes out.
import type { Length, Mass } from "../../../quantity/index.js"
import type { SiOf } from "../../../solver/index.js"

/** Space taken by wearer and rig together, as swept through the motion meant. */
export interface WornEnvelope {
  /** Whole width, side to side. [1 mm to 20 m] */
  width: Length
  /** Furthest point ahead of the spine's axis. [0 to 10 m] */
  forward: Length
  /** Furthest point behind it. [0 to 10 m] */
  backward: Length
  /** Height above the floor. [1 mm to 20 m] */
  height: Length
}

/** The rig off the body, packed. */
export interface PackedSize {
  /** Length [l_p; 1 mm to 20 m] */
  length: Length
  /** Width [w_p; 1 mm to 20 m] */
  width: Length
  /** Height [h_p; 1 mm to 20 m] */
  height: Length
  /** Mass [m_p; 0.1 g to 500 kg] */
  mass: Mass
}

/** A place of one's own. */
export interface OwnPlace {
  /** Name [text of 1 to 100 characters] */
  name: string
  /** How it is passed; `lift` is not among them: give its door and its car as a turning space. [door, route, corner, stair or turning] */
  type: "door" | "route" | "corner" | "stair" | "turning"
  /** Clear width; diameter of a turning space. [w_o; 1 mm to 100 m] */
  width: Length
  /** Clear height [h_o; 1 mm to 100 m; optional] */
  height?: Length | null
}

/** Input of {@link passage}. */
export interface PassageInput {
  /** Wearer and rig with everything folded. [group] */
  folded: WornEnvelope
  /** The same with the wings raised or spread; left out where they are never open indoors. [group; optional] */
  raised?: WornEnvelope | null
  /** The rig packed for transport. [group; optional] */
  packed?: PackedSize | null
  /** Places of one's own, measured. [list of 0 to 100; default none] */
  ownPlaces?: readonly OwnPlace[]
  /** Room kept on every side for sway, hands and not scraping. [a; 0 to 500 mm; default 25 mm] */
  allowance?: Length
  /** Corridor in which somebody comes the other way. [c; 1 mm to 100 m; default 60 in] */
  corridorWidth?: Length
}

/** How one place is passed. */
export interface PlaceFinding {
  /** Place [text] */
  readonly place: string
  /** Type [text] */
  readonly type: string
  /** How the folded rig gets through: `facing`, `sideways`, `turning` or `no`. [text] */
  readonly folded: string
  /** Spare size that way, the allowance already taken off; negative where no way fits. [m] */
  readonly foldedMargin: number
  /** What is tightest that way: `width` of the place, its `height`, or a lift's `car`. [text] */
  readonly foldedBy: string
  /** Clear size of the place there. [m] */
  readonly foldedRoom: number
  /** Raised [text] */
  readonly raised: string | null
  /** Spare, raised [m] */
  readonly raisedMargin: number | null
  /** What is tightest, raised. [text] */
  readonly raisedBy: string | null
  /** Source [text] */
  readonly source: string
}

/** Hazards and limits that an answer of {@link passage} can carry. */
export type PassageCaution =
  | "blocked"
  | "blocks-corridor"
  | "fold-for"
  | "headroom"
  | "not-a-clearance"
  | "road-size"
  | "sideways"
  | "smaller-raised"

/** Result of {@link passage}. */
export interface Passage {
  /** Diameter swept by turning on the spot, folded. [D_f; m] */
  readonly foldedTurningDiameter: number
  /** Swept turning on the spot, raised [D_r; m] */
  readonly raisedTurningDiameter: number | null
  /** Corridor width needed for a right-angle turn facing forwards, folded. [C_f; m] */
  readonly foldedCornerWidth: number
  /** Corridor for a right-angle turn, raised [C_r; m] */
  readonly raisedCornerWidth: number | null
  /** Width left in the corridor beside the folded rig. [R_f; m] */
  readonly corridorMargin: number
  /** Corridor margin, raised [R_r; m] */
  readonly raisedCorridorMargin: number | null
  /** Spare size in cabin baggage; the worst of the three sides. [x_c; m] */
  readonly cabinMargin: number | null
  /** Spare length within the sum of sides of checked baggage. [x_h; m] */
  readonly checkedMargin: number | null
  /** Spare mass of checked baggage [x_m; kg] */
  readonly checkedMassMargin: number | null
  /** Spare size through the door and inside a 20 ft container; the worst of the three sides. [x_k; m] */
  readonly containerMargin: number | null
  /** Places the folded rig does not pass. [list, each text] */
  readonly blocked: readonly string[]
  /** Places the folded rig passes only by edging sideways. [list, each text] */
  readonly sideways: readonly string[]
  /** Places it passes folded but not raised. [list, each text] */
  readonly foldFor: readonly string[]
  /** Places [list] */
  readonly places: readonly PlaceFinding[]
}

export type Si = SiOf<PassageInput>
