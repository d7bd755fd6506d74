import type { Length, Mass } from "../quantity/index.js"
import { at, citation, type SiOf, type Solver, type Source, solver } from "../solver/index.js"
import { baggage, container, type PassagePlace, passagePlaces } from "./data-access.js"
import { passageCautions } from "./passage-cautions.js"
import { boxMargin, cornerWidth, passing, turningOf } from "./passage-geometry.js"
import {
  adaSource,
  aisleSource,
  baggageSource,
  containerSource,
  ibcSource,
  ircSource,
  liftSource,
  partKSource,
  partMSource,
  roadSource,
  vehicleSource,
} from "./sources-around.js"

/** Space taken by wearer and rig together, as swept through the motion meant. */
export interface WornEnvelope {
  /** Whole width, side to side. */
  width: Length
  /** Furthest point ahead of the spine's axis. */
  front: Length
  /** Furthest point behind it. */
  back: Length
  /** Height above the floor. */
  height: Length
}

/** The rig off the body, packed. */
export interface PackedSize {
  /** Length. */
  length: Length
  /** Width. */
  width: Length
  /** Height. */
  height: Length
  /** Mass. */
  mass: Mass
}

/** A place of one's own. */
export interface OwnPlace {
  /** Name. */
  name: string
  /** How it is passed; `lift` is not among them: give its door and its car as a turning space. */
  kind: "door" | "route" | "corner" | "stair" | "turning"
  /** Clear width; diameter of a turning space. */
  width: Length
  /** Clear height. */
  height?: Length | null
}

/** Input of {@link passage}. */
export interface PassageInput {
  /** Wearer and rig with everything folded. */
  folded: WornEnvelope
  /** The same with the wings raised or spread; left out where they are never open indoors. */
  raised?: WornEnvelope | null
  /** The rig packed for transport. */
  packed?: PackedSize | null
  /** Places of one's own, measured. */
  own?: readonly OwnPlace[]
  /** Room kept on every side for sway, hands and not scraping. */
  allowance?: Length
  /** Corridor in which somebody comes the other way. */
  corridor?: Length
}

/** How one place is passed. */
export interface PlaceFinding {
  /** Place. */
  readonly place: string
  /** Kind. */
  readonly kind: string
  /** How the folded rig gets through: `facing`, `sideways`, `turning` or `no`. */
  readonly folded: string
  /** Spare size that way, m, the allowance already taken off; negative where no way fits. */
  readonly foldedMargin: number
  /** What is tightest that way: `width` of the place, its `height`, or a lift's `car`. */
  readonly foldedBy: string
  /** Clear size of the place there, m. */
  readonly foldedRoom: number
  /** Raised. */
  readonly raised: string | null
  /** Spare, raised. */
  readonly raisedMargin: number | null
  /** What is tightest, raised. */
  readonly raisedBy: string | null
  /** Source. */
  readonly source: string
}

/** Result of {@link passage}. */
export interface Passage {
  /** Diameter swept by turning on the spot, folded, m. */
  readonly foldedTurning: number
  /** Swept turning on the spot, raised. */
  readonly raisedTurning: number | null
  /** Corridor width needed for a right-angle turn facing forwards, folded, m. */
  readonly foldedCorner: number
  /** Corridor for a right-angle turn, raised. */
  readonly raisedCorner: number | null
  /** Width left in the corridor beside the folded rig, m. */
  readonly leftBeside: number
  /** Left in the corridor, raised. */
  readonly raisedLeftBeside: number | null
  /** Spare size in cabin baggage, m; the worst of the three sides. */
  readonly cabinMargin: number | null
  /** Spare length within the sum of sides of checked baggage, m. */
  readonly checkedMargin: number | null
  /** Spare mass in checked baggage, kg. */
  readonly checkedMassMargin: number | null
  /** Spare size through the door and inside a 20 ft container, m; the worst of the three sides. */
  readonly containerMargin: number | null
  /** Places the folded rig does not pass. */
  readonly blocked: readonly string[]
  /** Places the folded rig passes only by edging sideways. */
  readonly sideways: readonly string[]
  /** Places it passes folded but not raised. */
  readonly foldFor: readonly string[]
  /** Places. */
  readonly places: readonly PlaceFinding[]
}

type Si = SiOf<PassageInput>

const asGiven: Source = { title: "measured, as given", verified: "practice" }

function solve(si: Si): Passage {
  const { folded, raised, packed, allowance, corridor } = si
  const all: readonly PassagePlace[] = [
    ...passagePlaces,
    ...si.own.map((o) => ({
      place: o.name,
      kind: o.kind,
      width: o.width,
      height: o.height,
      carWidth: null,
      carDepth: null,
      source: asGiven,
    })),
  ]
  const found = all.map((place): PlaceFinding => {
    const now = passing(folded, place, allowance)
    const up = raised === null ? null : passing(raised, place, allowance)
    return {
      place: place.place,
      kind: place.kind,
      folded: now.way,
      foldedMargin: now.margin,
      foldedBy: now.by,
      foldedRoom: now.room,
      raised: up?.way ?? null,
      raisedMargin: up?.margin ?? null,
      raisedBy: up?.by ?? null,
      source: citation(place.source),
    }
  })
  const sides = packed === null ? [] : [packed.length, packed.width, packed.height]
  return {
    foldedTurning: turningOf(folded),
    raisedTurning: raised && turningOf(raised),
    foldedCorner: cornerWidth(folded.width, folded.front + folded.back),
    raisedCorner: raised && cornerWidth(raised.width, raised.front + raised.back),
    leftBeside: corridor - folded.width,
    raisedLeftBeside: raised && corridor - raised.width,
    cabinMargin: packed && boxMargin(sides, baggage.cabin),
    checkedMargin: packed && baggage.checkedSum - packed.length - packed.width - packed.height,
    checkedMassMargin: packed && baggage.mass - packed.mass,
    containerMargin: packed && boxMargin(sides, [container.length, container.doorWidth, container.doorHeight]),
    blocked: found.filter((f) => f.folded === "no").map((f) => f.place),
    sideways: found.filter((f) => f.folded === "sideways").map((f) => f.place),
    foldFor: found.filter((f) => f.folded !== "no" && f.raised === "no").map((f) => f.place),
    places: found,
  }
}

const envelopeFields = (mark: string) =>
  ({
    width: { kind: "length", symbol: `w_${mark}`, label: "width", min: "1 mm", max: 20, typical: [0.5, 2] },
    front: { kind: "length", symbol: `f_${mark}`, label: "ahead of the spine", min: 0, max: 10, typical: [0.2, 0.5] },
    back: { kind: "length", symbol: `b_${mark}`, label: "behind the spine", min: 0, max: 10, typical: [0.2, 0.8] },
    height: { kind: "length", symbol: `h_${mark}`, label: "height", min: "1 mm", max: 20, typical: [1.6, 2.5] },
  }) as const

/**
 * Where wearer and rig get through, folded and raised: doors, routes, corners, lifts, stairs, turning spaces, vehicles,
 * aisles, and the packed rig in cabin, hold and container.
 *
 * Formula: with width w, depth d = f + b ahead of and behind the spine's axis (all m), turning on the spot sweeps
 * 2·√((w/2)² + max(f, b)²); a right-angle turn between equal corridors needs max(w, (w + d/2)/√2); a door or route needs w
 * facing or d sideways (never sideways on stairs); a car needs w·cos φ + d·sin φ and w·sin φ + d·cos φ at the best angle φ.
 * The allowance (m, default 25 mm, common practice) is kept on every side and above. The corridor in which people pass is
 * 60 in by default. Published sizes are least clear sizes. Facing comes before sideways wherever it fits, and `foldedBy` names what is tightest; nobody is taken to stoop.
 * Valid for rigid, upright boxes in walls square to each other.
 *
 * Sources: ADA Standards (2010), Approved Documents K and M, IBC, IRC, EN 81-70, T502.2.2, 14 CFR 25.815, baggage guidance.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { passage } from 'alula/worn'
 * const moth = passage({
 *   folded: { width: '0.7 m', front: '0.25 m', back: '0.4 m', height: '1.9 m' },
 *   raised: { width: '2.4 m', front: '0.3 m', back: '0.6 m', height: '2.3 m' },
 * })
 * moth.foldedTurning // => 1.063
 * moth.foldedCorner // => 0.7248
 * moth.raisedTurning // => 2.683
 * ```
 */
export const passage: Solver<PassageInput, Passage> = /* @__PURE__ */ solver<PassageInput, Passage>(
  "passage",
  "Where wearer and rig get through",
  solve,
  () => ({
    input: {
      folded: { kind: "group", label: "folded", fields: envelopeFields("f") },
      raised: { kind: "group", label: "raised", fields: envelopeFields("r"), default: null },
      packed: {
        kind: "group",
        label: "packed",
        fields: {
          length: { kind: "length", symbol: "l_p", label: "length", min: "1 mm", max: 20, typical: [0.3, 2] },
          width: { kind: "length", symbol: "w_p", label: "width", min: "1 mm", max: 20, typical: [0.2, 1] },
          height: { kind: "length", symbol: "h_p", label: "height", min: "1 mm", max: 20, typical: [0.1, 0.6] },
          mass: { kind: "mass", symbol: "m_p", label: "mass", min: "0.1 g", max: 500, typical: [2, 30] },
        },
        default: null,
      },
      own: {
        kind: "list",
        label: "own places",
        max: 100,
        of: {
          kind: "group",
          label: "place",
          fields: {
            name: { kind: "text", label: "name" },
            kind: {
              kind: "choice",
              label: "how it is passed",
              options: { door: "door", route: "route", corner: "right-angle turn", stair: "stair", turning: "turning space" },
            },
            width: { kind: "length", symbol: "w_o", label: "clear width", min: "1 mm", max: 100, typical: [0.6, 3] },
            height: { kind: "length", symbol: "h_o", label: "clear height", min: "1 mm", max: 100, typical: [1.8, 3], default: null },
          },
        },
        default: [],
      },
      allowance: { kind: "length", symbol: "a", label: "room on every side", min: 0, max: 0.5, typical: [0, 0.05], default: "25 mm" },
      corridor: {
        kind: "length",
        symbol: "c",
        label: "corridor people pass in",
        min: "1 mm",
        max: 100,
        typical: [0.9, 3],
        default: "60 in",
      },
    },
    output: {
      foldedTurning: { kind: "length", symbol: "D_f", label: "swept turning on the spot, folded" },
      raisedTurning: { kind: "length", symbol: "D_r", label: "swept turning on the spot, raised" },
      foldedCorner: { kind: "length", symbol: "C_f", label: "corridor for a right-angle turn, folded" },
      raisedCorner: { kind: "length", symbol: "C_r", label: "corridor for a right-angle turn, raised" },
      leftBeside: { kind: "length", symbol: "R_f", label: "left in the corridor, folded" },
      raisedLeftBeside: { kind: "length", symbol: "R_r", label: "left in the corridor, raised" },
      cabinMargin: { kind: "length", symbol: "x_c", label: "spare as cabin baggage" },
      checkedMargin: { kind: "length", symbol: "x_h", label: "spare in the sum of sides of checked baggage" },
      checkedMassMargin: { kind: "mass", symbol: "x_m", label: "spare mass of checked baggage" },
      containerMargin: { kind: "length", symbol: "x_k", label: "spare in a 20 ft container" },
      blocked: { kind: "list", label: "does not pass folded", of: { kind: "text", label: "place" } },
      sideways: { kind: "list", label: "passes only sideways", of: { kind: "text", label: "place" } },
      foldFor: { kind: "list", label: "fold for", of: { kind: "text", label: "place" } },
      places: {
        kind: "list",
        label: "places",
        of: {
          kind: "group",
          label: "place",
          fields: {
            place: { kind: "text", label: "place" },
            kind: { kind: "text", label: "kind" },
            folded: { kind: "text", label: "folded" },
            foldedMargin: { kind: "length", label: "spare, folded" },
            foldedBy: { kind: "text", label: "tightest at, folded" },
            foldedRoom: { kind: "length", label: "clear size there, folded" },
            raised: { kind: "text", label: "raised" },
            raisedMargin: { kind: "length", label: "spare, raised" },
            raisedBy: { kind: "text", label: "tightest at, raised" },
            source: { kind: "text", label: "source" },
          },
        },
      },
    },
    example: {
      folded: { width: "0.7 m", front: "0.25 m", back: "0.4 m", height: "1.9 m" },
      raised: { width: "2.4 m", front: "0.3 m", back: "0.6 m", height: "2.3 m" },
      packed: { length: "1.1 m", width: "0.5 m", height: "0.3 m", mass: "9 kg" },
      own: [{ name: "stage door of the lantern hall", kind: "door", width: "0.86 m", height: "2 m" }],
    },
    formulae: [
      { symbol: "D_f", meaning: "twice the way from spine to farthest corner, folded", is: "2 * sqrt((w_f / 2)^2 + max(f_f, b_f)^2)" },
      { symbol: "C_f", meaning: "corridor for a right-angle turn, folded", is: "max(w_f, (w_f + (f_f + b_f) / 2) / sqrt(2))" },
      { symbol: "R_f", meaning: "left in the corridor, folded", is: "c - w_f" },
      { symbol: "D_r", meaning: "the same, raised", is: "2 * sqrt((w_r / 2)^2 + max(f_r, b_r)^2)", when: "has_raised" },
      {
        symbol: "C_r",
        meaning: "corridor for a right-angle turn, raised",
        is: "max(w_r, (w_r + (f_r + b_r) / 2) / sqrt(2))",
        when: "has_raised",
      },
      { symbol: "R_r", meaning: "left in the corridor, raised", is: "c - w_r", when: "has_raised" },
      {
        symbol: "x_c",
        meaning: "worst spare of three sides, longest against longest, in 56 × 45 × 25 cm",
        is: "min(0.56 m - max(l_p, w_p, h_p), 0.45 m - (l_p + w_p + h_p - max(l_p, w_p, h_p) - min(l_p, w_p, h_p)), 0.25 m - min(l_p, w_p, h_p))",
        when: "has_packed",
        source: at(baggageSource, "cabin baggage guide size"),
      },
      { symbol: "x_h", meaning: "spare in the sum of sides", is: "1.58 m - l_p - w_p - h_p", when: "has_packed" },
      { symbol: "x_m", meaning: "spare mass", is: "23 kg - m_p", when: "has_packed" },
      {
        symbol: "x_k",
        meaning: "worst spare of three sides in 5.90 × 2.34 × 2.28 m: the door is smaller than the inside",
        is: "min(5.9 m - max(l_p, w_p, h_p), 2.34 m - (l_p + w_p + h_p - max(l_p, w_p, h_p) - min(l_p, w_p, h_p)), 2.28 m - min(l_p, w_p, h_p))",
        when: "has_packed",
        source: containerSource,
      },
    ],
    sources: [
      adaSource,
      partMSource,
      partKSource,
      ibcSource,
      ircSource,
      liftSource,
      vehicleSource,
      aisleSource,
      baggageSource,
      containerSource,
      roadSource,
    ],
    cautions: passageCautions,
  }),
)
