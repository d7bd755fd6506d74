import { type DutyCycleInput, dutyCycle } from "../../drive/index.js"
import { type BeamInput, beam, type PinJointInput, pinJoint } from "../../frame/index.js"
import type { Frequency, Length, Mass } from "../../quantity/index.js"
import type { AnyField, AnyFields, Either, Fields } from "../../solver/index.js"
import { type HeatingTimeInput, heatingTime, type TubeBendInput, tubeBend } from "../../thermoform/index.js"
import {
  type ContactSeverityInput,
  type CrushPart,
  contactSeverity,
  type GapBar,
  type HeatStressInput,
  heatStress,
  type OverturningInput,
  type OwnPlace,
  overturning,
  type PackedSize,
  type PassageKind,
  passage,
  pinchGap,
  type ReachInput,
  reach,
  type StrapPressureInput,
  strapPressure,
  type WearScheduleInput,
  type WindLoadInput,
  wearerFields,
  wearSchedule,
  windLoad,
} from "../../worn/index.js"
import { type Embedded, embed } from "./embed.js"

/** Whoever wears it. */
export interface RigWearer {
  /** Body mass [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Stature [H; 800 mm to 2.5 m] */
  stature: Length
}

/** A part carried, other than the moving masses. */
export interface RigPart {
  /** Part [text of 1 to 100 characters] */
  name: string
  /** Mass of one [m_part; 0 to 60 kg] */
  mass: Mass
  /** How many [n_part; whole 1 to 10000; default 1] */
  count?: number
  /** Price of one, in the maker's own currency. [c_part; 0 to 1000000; default 0] */
  price?: number
  /** Ahead of the hips; negative behind. [f_part; −2 to 2 m] */
  forward: Length
  /** Left of the middle [l_part; −3 to 3 m; default 0] */
  left?: Length
  /** Above the ground, wearer standing. [h_part; 0 to 4 m] */
  height: Length
}

/** The spar of one arm: a cantilever from the hinge that carries the arm's masses. */
export interface RigSpar
  extends Pick<BeamInput, "length" | "section" | "material" | "modulus" | "strength" | "materialTemperature" | "duration" | "handling"> {
  /** Sag at the tip that still looks right. [sp_lim; 0.1 mm to 2 m] */
  sagLimit: Length
  /** Mass counted at the tip for its own swing in step with walking. [sp_tip; 0 to 20 kg; default 0] */
  tipMass?: Mass
  /** Step rate [sp_f_s; 1 to 2.8 Hz; default 2 Hz] */
  stepRate?: Frequency
}

/** A part bent hot from tube. */
export interface RigFormedPart {
  /** Part [text of 1 to 100 characters] */
  name: string
  /** Bend [group] */
  bend: TubeBendInput
  /** Heating [group] */
  heat: HeatingTimeInput
}

/** Where it has to go, and what it takes up beside the arms. */
export interface RigVenue {
  /** Ahead of and behind the wearer's middle. [ve_f; 0 to 3 m] */
  front: Length
  /** Behind the middle [ve_b; 0 to 3 m] */
  back: Length
  /** Width of wearer and rig with the arms left out. [ve_w; 1 mm to 3 m; default 600 mm] */
  bodyWidth?: Length
  /** Own places [list of 0 to 100; default none] */
  own?: readonly OwnPlace[]
  /**
   * Kinds of published place it has to pass too. [list of 0 to 8, each door, route, corner, stair, lift, turning,
   * headroom or aisle; optional, with a default of its own]
   */
  kinds?: readonly PassageKind[]
  /** Packed [group; optional] */
  packed?: PackedSize | null
  /** Room on every side [pa_a; 0 to 500 mm; default 25 mm] */
  allowance?: Length
}

/** Fixed things the arm moves past, in the plane of motion. */
export interface RigPinch {
  /** Largest part of a body that can get into the gap [finger, toes, hand-wrist-fist, arm, foot, head or body; default arm] */
  reachable?: CrushPart
  /** Fixed bars [list of 1 to 50] */
  fixed: readonly GapBar[]
  /** Thickness of the arm [pi_a; 0 to 500 mm; default 30 mm] */
  armThickness?: Length
  /** Thickness of the fixed things [pi_b; 0 to 500 mm; default 30 mm] */
  fixedThickness?: Length
}

/** What may be spent. */
export interface RigBudget {
  /** Mass [bu_m; 0.1 g to 100 kg; optional] */
  mass?: Mass | null
  /** Price [bu_c; 0.01 to 1e7; optional] */
  price?: number | null
  /** Parts [bu_n; whole 1 to 1000000; optional] */
  parts?: number | null
}

/** Sections of a rig document beyond arms and electrics. */
export interface RigSections {
  /** Wearer [group; optional] */
  wearer?: RigWearer | null
  /** Parts carried, moving masses left out [list of 0 to 300; default none] */
  parts?: readonly RigPart[]
  /** Spar of one arm [group; optional] */
  spar?: RigSpar | null
  /** Hinge pin [group; optional] */
  pin?: Omit<PinJointInput, "force"> | null
  /** Parts formed hot [list of 0 to 60; default none] */
  formed?: readonly RigFormedPart[]
  /** Straps [group; optional] */
  straps?: Omit<StrapPressureInput, "rigMass"> | null
  /** The day's wearing [group; optional] */
  schedule?: Omit<WearScheduleInput, "bodyMass" | "rigMass"> | null
  /** Heat [group; optional] */
  heat?: Omit<HeatStressInput, "metabolicRate" | "bodyMass" | "stature"> | null
  /** Wind on one arm [group; optional] */
  wind?: Omit<WindLoadInput, "swingSpeed" | "panels" | "hingeHeight" | "elevation"> | null
  /** Stance [group; optional] */
  stance?: Omit<
    OverturningInput,
    "bodyMass" | "rigMass" | "dragArea" | "forceHeight" | "windSpeed" | "gustFactor" | "walkingSpeed" | "stature"
  > | null
  /** Where it has to go [group; optional] */
  venue?: RigVenue | null
  /** Switch [group; optional] */
  reach?: Omit<ReachInput, "stature"> | null
  /** Fixed things the arm passes [group; optional] */
  pinch?: RigPinch | null
  /** If an arm strikes somebody [group; optional] */
  contact?: Omit<
    ContactSeverityInput,
    "armMass" | "armLength" | "swingSpeed" | "strikeRadius" | "movingMass" | "movingSpeed" | "peakDriveMoment"
  > | null
  /** Duty of the actuators [group; optional] */
  duty?: Pick<
    DutyCycleInput,
    | "ratedDuty"
    | "ratedRunDuration"
    | "timeConstant"
    | "restDuration"
    | "temperatureLimit"
    | "ratedAmbientTemperature"
    | "ambientTemperature"
  > | null
  /** What may be spent [group; optional] */
  budget?: RigBudget | null
}

const group = <T>(label: string, fields: Fields<T>) => ({ kind: "group", label, fields, default: null }) as const
// the embedded descriptions are checked where their solvers define them; checking them here again is too much for the compiler
const section = (label: string, fields: AnyFields, either: readonly Either[] = []) =>
  ({ kind: "group", label, fields, either, default: null }) as const
const whole = (label: string, { fields, either }: Embedded) => section(label, fields, either)
const sparFields = embed(beam, "sp", "support", "span", "forces", "distributedLoads", "moments", "density", "countsOwnWeight")
const passageFields = embed(passage, "pa")
const pinchFields = embed(pinchGap, "pi")

const described = {
  wearer: group<RigWearer>("wearer", {
    bodyMass: wearerFields.bodyMass,
    stature: wearerFields.stature,
  }),
  parts: {
    kind: "list",
    label: "parts carried, moving masses left out",
    min: 0,
    max: 300,
    default: [],
    of: {
      kind: "group",
      label: "part",
      fields: {
        name: { kind: "text", label: "part", min: 1, max: 100 },
        mass: { kind: "mass", symbol: "m_part", label: "mass of one", min: 0, max: 60 },
        count: { kind: "number", symbol: "n_part", label: "how many", whole: true, min: 1, max: 10000, default: 1 },
        price: { kind: "number", symbol: "c_part", label: "price of one", min: 0, max: 1e6, default: 0 },
        forward: { kind: "length", symbol: "f_part", label: "ahead of the hips", min: -2, max: 2 },
        left: { kind: "length", symbol: "l_part", label: "left of the middle", min: -3, max: 3, default: 0 },
        height: { kind: "length", symbol: "h_part", label: "above the ground", min: 0, max: 4 },
      },
    },
  },
  spar: section(
    "spar of one arm",
    {
      ...sparFields.fields,
      sagLimit: { kind: "length", symbol: "sp_lim", label: "acceptable sag", min: "0.1 mm", max: 2 },
      tipMass: { kind: "mass", symbol: "sp_tip", label: "mass counted at the tip", min: 0, max: 20, default: 0 },
      stepRate: { ...wearerFields.stepRate, symbol: "sp_f_s" },
    },
    sparFields.either,
  ),
  pin: whole("hinge pin", embed(pinJoint, "pj", "force")),
  formed: {
    kind: "list",
    label: "parts formed hot",
    min: 0,
    max: 60,
    default: [],
    of: {
      kind: "group",
      label: "formed part",
      fields: {
        name: { kind: "text", label: "part", min: 1, max: 100 },
        bend: { kind: "group", label: "bend", ...embed(tubeBend, "tb") },
        heat: { kind: "group", label: "heating", ...embed(heatingTime, "ht") },
      },
    },
  },
  straps: whole("straps", embed(strapPressure, "st", "rigMass")),
  schedule: whole("the day's wearing", embed(wearSchedule, "ws", "bodyMass", "rigMass")),
  heat: whole("heat", embed(heatStress, "he", "metabolicRate", "bodyMass", "stature")),
  wind: whole("wind on one arm", embed(windLoad, "wi", "swingSpeed", "panels", "hingeHeight", "elevation")),
  stance: whole(
    "stance",
    embed(overturning, "to", "bodyMass", "rigMass", "dragArea", "forceHeight", "windSpeed", "gustFactor", "walkingSpeed", "stature"),
  ),
  venue: section("where it has to go", {
    front: { kind: "length", symbol: "ve_f", label: "ahead of the middle", min: 0, max: 3 },
    back: { kind: "length", symbol: "ve_b", label: "behind the middle", min: 0, max: 3 },
    bodyWidth: { kind: "length", symbol: "ve_w", label: "width without the arms", min: "1 mm", max: 3, default: 0.6 },
    own: passageFields.fields.ownPlaces as AnyField,
    kinds: {
      kind: "list",
      label: "kinds of published place to pass",
      min: 0,
      max: 8,
      default: ["door"],
      of: {
        kind: "choice",
        label: "kind",
        options: {
          door: "doors",
          route: "corridors and routes",
          corner: "corners",
          stair: "stairs",
          lift: "lifts",
          turning: "turning spaces",
          headroom: "headroom",
          aisle: "aisles and vehicles",
        },
      },
    },
    packed: passageFields.fields.packed as AnyField,
    allowance: passageFields.fields.allowance as AnyField,
  }),
  reach: whole("switch", embed(reach, "re", "stature")),
  pinch: section("fixed things the arm passes", {
    reachable: {
      kind: "choice",
      label: "largest part of a body that can get into the gap",
      options: { finger: "finger", toes: "toes", "hand-wrist-fist": "hand or fist", arm: "arm", foot: "foot", head: "head", body: "body" },
      default: "arm",
    },
    fixed: pinchFields.fields.fixedBars as AnyField,
    armThickness: { kind: "length", symbol: "pi_a", label: "thickness of the arm", min: 0, max: 0.5, default: 0.03 },
    fixedThickness: { kind: "length", symbol: "pi_b", label: "thickness of the fixed things", min: 0, max: 0.5, default: 0.03 },
  }),
  contact: whole(
    "if an arm strikes somebody",
    embed(contactSeverity, "co", "armMass", "armLength", "swingSpeed", "strikeRadius", "movingMass", "movingSpeed", "peakDriveMoment"),
  ),
  duty: whole("duty of the actuators", embed(dutyCycle, "du", "runDuration", "currentUtilisation", "restTimeConstant")),
  budget: group<RigBudget>("what may be spent", {
    mass: { kind: "mass", symbol: "bu_m", label: "mass", min: "0.1 g", max: 100, default: null },
    price: { kind: "number", symbol: "bu_c", label: "price", min: 0.01, max: 1e7, default: null },
    parts: { kind: "number", symbol: "bu_n", label: "parts", whole: true, min: 1, max: 1e6, default: null },
  }),
} satisfies Readonly<Record<keyof RigSections, unknown>>

/** Descriptions of those sections; each group above is checked against its own interface, all together are too much for the compiler. */
export const sectionFields: Fields<RigSections> = described as unknown as Fields<RigSections>
