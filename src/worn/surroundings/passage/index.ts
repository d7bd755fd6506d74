import { at, citation, type Solver, type Source, solver } from "../../../solver/index.js"
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
} from "../../sources-around.js"
import { baggage, container, type PassagePlace, passagePlaces } from "../data-access.js"
import { passageCautions } from "./cautions.js"
import { boxMargin, cornerWidth, passing, turningOf } from "./geometry.js"
import type { Passage, PassageCaution, PassageInput, PlaceFinding, Si } from "./types.js"

export type { OwnPlace, PackedSize, Passage, PassageInput, PlaceFinding, WornEnvelope } from "./types.js"

const asGiven: Source = { title: "measured, as given", verified: "practice" }

function solve(si: Si): Passage {
  const { folded, raised, packed, allowance, corridorWidth } = si
  const all: readonly PassagePlace[] = [
    ...passagePlaces,
    ...si.ownPlaces.map((o) => ({
      place: o.name,
      type: o.type,
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
      type: place.type,
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
    foldedTurningDiameter: turningOf(folded),
    raisedTurningDiameter: raised && turningOf(raised),
    foldedCornerWidth: cornerWidth(folded.width, folded.forward + folded.backward),
    raisedCornerWidth: raised && cornerWidth(raised.width, raised.forward + raised.backward),
    corridorMargin: corridorWidth - folded.width,
    raisedCorridorMargin: raised && corridorWidth - raised.width,
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
    forward: { kind: "length", symbol: `f_${mark}`, label: "forward of the spine", min: 0, max: 10, typical: [0.2, 0.5] },
    backward: { kind: "length", symbol: `b_${mark}`, label: "behind the spine", min: 0, max: 10, typical: [0.2, 0.8] },
    height: { kind: "length", symbol: `h_${mark}`, label: "height", min: "1 mm", max: 20, typical: [1.6, 2.5] },
  }) as const

/**
 * Where wearer and rig get through, folded and raised: doors, routes, corners, lifts, stairs, turning spaces, vehicles,
 * aisles, and the packed rig in cabin, hold and container.
 *
 * Formula: with width w, depth d = f + b ahead of and behind the spine's axis, turning on the spot sweeps 2·√((w/2)² +
 * max(f, b)²); a right-angle turn between equal corridors needs max(w, (w + d/2)/√2); a door or route needs w facing or
 * d sideways (never sideways on stairs); a car needs w·cos φ + d·sin φ and w·sin φ + d·cos φ at the best angle φ. The
 * allowance (default: common practice) is kept on every side and above. Published sizes are smallest clear sizes. Facing
 * comes before sideways wherever it fits, and `foldedBy` names what is tightest; nobody is taken to stoop. Valid for
 * rigid, upright boxes in walls square to each other.
 *
 * **Inputs**
 * - `folded`: folded [group]
 *   - `width`: width [w_f; 1 mm to 20 m]
 *   - `forward`: forward of the spine [f_f; 0 to 10 m]
 *   - `backward`: behind the spine [b_f; 0 to 10 m]
 *   - `height`: height [h_f; 1 mm to 20 m]
 * - `raised`: raised [group; optional]
 *   - `width`: width [w_r; 1 mm to 20 m]
 *   - `forward`: forward of the spine [f_r; 0 to 10 m]
 *   - `backward`: behind the spine [b_r; 0 to 10 m]
 *   - `height`: height [h_r; 1 mm to 20 m]
 * - `packed`: packed [group; optional]
 *   - `length`: length [l_p; 1 mm to 20 m]
 *   - `width`: width [w_p; 1 mm to 20 m]
 *   - `height`: height [h_p; 1 mm to 20 m]
 *   - `mass`: mass [m_p; 0.1 g to 500 kg]
 * - `ownPlaces`: own places [list of 0 to 100; default none]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `type`: how it is passed [door, route, corner, stair or turning]
 *   - `width`: clear width [w_o; 1 mm to 100 m]
 *   - `height`: clear height [h_o; 1 mm to 100 m; optional]
 * - `allowance`: room on every side [a; 0 to 500 mm; default 25 mm]
 * - `corridorWidth`: corridor people pass in [c; 1 mm to 100 m; default 60 in]
 *
 * **Results**
 *
 * `foldedTurningDiameter`: swept turning on the spot, folded [D_f; m]; `raisedTurningDiameter`: swept turning on the
 * spot, raised [D_r; m]; `foldedCornerWidth`: corridor for a right-angle turn, folded [C_f; m]; `raisedCornerWidth`:
 * corridor for a right-angle turn, raised [C_r; m]; `corridorMargin`: corridor margin, folded [R_f; m];
 * `raisedCorridorMargin`: corridor margin, raised [R_r; m]; `cabinMargin`: spare as cabin baggage [x_c; m];
 * `checkedMargin`: spare in the sum of sides of checked baggage [x_h; m]; `checkedMassMargin`: spare mass of checked
 * baggage [x_m; kg]; `containerMargin`: spare in a 20 ft container [x_k; m]; `blocked`: does not pass folded [list,
 * each text]; `sideways`: passes only sideways [list, each text]; `foldFor`: fold for [list, each text]; `places`:
 * places [list].
 *
 * **Sources**
 * - U.S. Department of Justice: ADA Standards for Accessible Design, 2010, 304, 305, 307, 308, 403, 404, 407, 408
 *   (read 2026-11-28)
 * - HM Government: Approved Document M, Access to and use of buildings, 2015, volume 2, table 2; volume 1, door and
 *   corridor widths; lifts (read 2026-11-28)
 * - HM Government: Approved Documents K and M, stairs, 2013, access stairs of buildings other than dwellings (not
 *   verified against the document)
 * - ICC: International Building Code, 2018–2021, 1010 and 1020 doors and corridors, 1011.2 stairs (not verified
 *   against the document)
 * - ICC: International Residential Code, 2018, R311.7.1–R311.7.5 stairs (read 2026-11-28)
 * - CEN: EN 81-70, Accessibility to lifts, and EN 81-20, Safety rules for lifts, 2018 and 2014, EN 81-70 table 3, EN
 *   81-20 table 6; car entrance at least 2 m high (not verified against the document)
 * - U.S. Access Board: Accessibility Guidelines for Transportation Vehicles, 2016, T502.2.2 (read 2026-11-28)
 * - FAA: 14 CFR 25.815, Width of aisle, 2024, table (read 2026-11-28)
 * - IATA and carriers: Passenger baggage guidance, 2023, cabin 56 × 45 × 25 cm; checked 62 in or 158 cm in all, 23 kg
 *   (not verified against the document)
 * - a freight carrier's page: How many pallets fit in a container, inside of a 20 ft container, approximate; its door
 *   is smaller, about 2.34 × 2.28 m
 * - FHWA: 23 CFR 658.15, width limitation, 2010, 102 in; clearance heights are the states' own, usually 13 ft 6 in
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { passage } from 'alula/worn'
 * const moth = passage({
 *   folded: { width: '0.7 m', forward: '0.25 m', backward: '0.4 m', height: '1.9 m' },
 *   raised: { width: '2.4 m', forward: '0.3 m', backward: '0.6 m', height: '2.3 m' },
 * })
 * moth.foldedTurningDiameter // => 1.063
 * moth.foldedCornerWidth // => 0.7248
 * moth.raisedTurningDiameter // => 2.683
 * ```
 */
export const passage: Solver<PassageInput, Passage, never, PassageCaution> = /* @__PURE__ */ solver<
  PassageInput,
  Passage,
  never,
  PassageCaution
>("passage", "Where wearer and rig get through", solve, () => ({
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
    ownPlaces: {
      kind: "list",
      label: "own places",
      min: 0,
      max: 100,
      of: {
        kind: "group",
        label: "place",
        fields: {
          name: { kind: "text", label: "name", min: 1, max: 100 },
          type: {
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
    corridorWidth: {
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
    foldedTurningDiameter: { kind: "length", symbol: "D_f", label: "swept turning on the spot, folded" },
    raisedTurningDiameter: { kind: "length", symbol: "D_r", label: "swept turning on the spot, raised" },
    foldedCornerWidth: { kind: "length", symbol: "C_f", label: "corridor for a right-angle turn, folded" },
    raisedCornerWidth: { kind: "length", symbol: "C_r", label: "corridor for a right-angle turn, raised" },
    corridorMargin: { kind: "length", symbol: "R_f", label: "corridor margin, folded" },
    raisedCorridorMargin: { kind: "length", symbol: "R_r", label: "corridor margin, raised" },
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
          type: { kind: "text", label: "type" },
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
    folded: { width: "0.7 m", forward: "0.25 m", backward: "0.4 m", height: "1.9 m" },
    raised: { width: "2.4 m", forward: "0.3 m", backward: "0.6 m", height: "2.3 m" },
    packed: { length: "1.1 m", width: "0.5 m", height: "0.3 m", mass: "9 kg" },
    ownPlaces: [{ name: "stage door of the lantern hall", type: "door", width: "0.86 m", height: "2 m" }],
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
}))
