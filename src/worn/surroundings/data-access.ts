import { at, type Source } from "../../solver/index.js"
import { adaSource, aisleSource, ibcSource, ircSource, liftSource, partKSource, partMSource, vehicleSource } from "../sources-around.js"

const inch = (value: number) => value * 0.0254
const mm = (value: number) => value / 1000

/** Rules of the ADA Standards, m. */
export const ada = {
  routeWidth: inch(36),
  pointWidth: inch(32),
  pointLength: inch(24),
  pointSpacing: inch(48),
  passingSquare: inch(60),
  passingInterval: inch(12 * 200),
  passingStem: inch(48),
  floorWidth: inch(30),
  floorLength: inch(48),
  floorSlope: 1 / 48,
  turnAround: {
    element: inch(48),
    tight: [inch(42), inch(48), inch(42)],
    wide: [inch(36), inch(60), inch(36)],
  },
  turningCircle: inch(60),
  turningT: { square: inch(60), width: inch(36), arm: inch(12), base: inch(24) },
  headroom: inch(80),
  closer: inch(78),
  protrusion: { most: inch(4), from: inch(27), to: inch(80) },
  doorWidth: inch(32),
  deepDoorWidth: inch(36),
  alcove: { forward: inch(36), forwardDeeperThan: inch(24), parallel: inch(60), parallelDeeperThan: inch(15) },
  reachHigh: inch(48),
  reachLow: inch(15),
} as const

/** Lift cars of the ADA Standards and the ABA, m (table 407.4.1, in part not verified). */
export const adaLifts = {
  centreDoor: { width: inch(80), depth: inch(51), door: inch(42) },
  sideDoor: { width: inch(68), depth: inch(51), door: inch(36) },
  deep: { width: inch(54), depth: inch(80), door: inch(36) },
  square: { width: inch(60), depth: inch(60), door: inch(36) },
  toDoor: inch(54),
  limitedUse: { width: inch(42), depth: inch(54), door: inch(32) },
  limitedUseSquare: { width: inch(51), depth: inch(51), door: inch(36) },
  existing: { width: inch(36), depth: inch(54), leastArea: 15 * 0.3048 ** 2 },
  existingSide: inch(48),
  residence: { width: inch(36), depth: inch(48) },
} as const

/** Common lift of European and UK buildings, m. */
export const ukLift = { width: mm(1100), depth: mm(1400), door: mm(800), landing: mm(1500) } as const

/** Car types 1 to 5 of EN 81-70 with the maximum area for their load (EN 81-20), not verified. */
export const europeanLifts = [
  { load: 450, width: 1, depth: 1.3, mostArea: 1.3 },
  { load: 630, width: 1.1, depth: 1.4, mostArea: 1.66 },
  { load: 1000, width: 1.1, depth: 2.1, mostArea: 2.4 },
  { load: 1000, width: 1.6, depth: 1.4, mostArea: 2.4 },
  { load: 1275, width: 2, depth: 1.4, mostArea: 2.95 },
] as const

/** Minimum height of a lift's entrance, m (EN 81-20, not verified). */
export const liftHeight = 2

/** Minimum clear door widths in UK buildings other than dwellings, m. */
export const ukDoors = {
  straight: { built: mm(800), existing: mm(750) },
  "right angle 1500 route": { built: mm(800), existing: mm(750) },
  "right angle 1200 route": { built: mm(825), existing: mm(775) },
  "external public": { built: mm(1000), existing: mm(775) },
} as const

/** Pairs of clear door and corridor in UK dwellings, m. */
export const ukDwellingDoors = [
  { door: mm(750), corridor: mm(900), approach: "head on" },
  { door: mm(750), corridor: mm(1200), approach: "not head on" },
  { door: mm(775), corridor: mm(1050), approach: "not head on" },
  { door: mm(800), corridor: mm(900), approach: "not head on" },
] as const

/** Means of escape, m (International Building Code). */
export const ibc = {
  door: inch(32),
  doorHeight: inch(80),
  corridor: inch(44),
  smallCorridor: inch(36),
  stair: inch(44),
  smallStair: inch(36),
} as const

/** Stairs of houses, m (International Residential Code). */
export const irc = {
  stair: inch(36),
  belowOneRail: inch(31.5),
  belowBothRails: inch(27),
  headroom: inch(80),
  riser: inch(7.75),
  tread: inch(10),
} as const

/** Stairs of UK public buildings, m; headroom not verified. */
export const ukStairs = { betweenWalls: mm(1200), betweenRails: mm(1000), headroom: 2 } as const

/** Doorway heights of vehicles, m. */
export const vehicleDoors = { small: inch(56), large: inch(68) } as const

/** Aircraft aisles for 20 seats and more, m: below and above 25 in from the floor. */
export const aircraftAisle = { below: inch(15), above: inch(20) } as const

/** Baggage, m and kg, and the inside of a 20 ft container, m (approximate). */
export const baggage = {
  cabin: [0.56, 0.45, 0.25],
  checkedSum: 1.58,
  checkedSumInches: 62,
  mass: 23,
} as const
/** Inside, and the smaller door that everything must come through (not verified). */
export const container = { length: 5.9, width: 2.35, height: 2.39, doorWidth: 2.34, doorHeight: 2.28 } as const

/** Width of a US traffic lane's widest vehicle and the usual clearance height, m: a walker this wide or high fills the road. */
export const roadVehicle = { width: inch(102), clearance: 13.5 * 0.3048 } as const

/** How a place is passed. */
export type PassageKind = "door" | "route" | "corner" | "stair" | "lift" | "turning" | "headroom" | "aisle"

/** A place to get through: clear width and height, and for lifts the car. */
export interface PassagePlace {
  readonly place: string
  readonly type: PassageKind
  /** Clear width (diameter for a turning space), m; null where only the height is ruled. */
  readonly width: number | null
  readonly height: number | null
  /** Inside of a lift's car, m. */
  readonly carWidth: number | null
  readonly carDepth: number | null
  readonly source: Source
}

const opening = (type: PassageKind, place: string, width: number | null, height: number | null, source: Source): PassagePlace => ({
  place,
  type,
  width,
  height,
  carWidth: null,
  carDepth: null,
  source,
})
const lift = (place: string, car: { readonly width: number; readonly depth: number }, door: number, source: Source): PassagePlace => ({
  place,
  type: "lift",
  width: door,
  height: liftHeight,
  carWidth: car.width,
  carDepth: car.depth,
  source,
})

/** Minimum clear sizes of places, as published. A real place may be narrower: old buildings, furniture, crowds. */
export const passagePlaces: readonly PassagePlace[] = [
  opening(
    "door",
    "UK door, existing building",
    ukDoors.straight.existing,
    ukStairs.headroom,
    at(partMSource, "volume 2, table 2; height common practice"),
  ),
  opening(
    "door",
    "UK door, new building",
    ukDoors.straight.built,
    ukStairs.headroom,
    at(partMSource, "volume 2, table 2; height common practice"),
  ),
  opening("door", "US door", ada.doorWidth, ada.closer, at(adaSource, "404.2.3, 307.4 (78 in under a closer)")),
  opening("route", "US accessible route", ada.routeWidth, ada.headroom, at(adaSource, "403.5.1, 307.4")),
  opening("corner", "right-angle turn in a 36 in route", ada.routeWidth, ada.headroom, at(adaSource, "403.5.1")),
  opening("route", "US escape corridor", ibc.corridor, ibc.doorHeight, at(ibcSource, "1020")),
  opening("corner", "right-angle turn in a 44 in corridor", ibc.corridor, ibc.doorHeight, at(ibcSource, "1020")),
  opening("corner", "right-angle turn in a 1200 mm corridor", 1.2, ukStairs.headroom, at(partMSource, "volume 1; height common practice")),
  opening("turning", "US turning space", ada.turningCircle, ada.headroom, at(adaSource, "304.3.1")),
  opening("stair", "house stair between rails", irc.belowBothRails, irc.headroom, at(ircSource, "R311.7")),
  opening("stair", "UK public stair between rails", ukStairs.betweenRails, ukStairs.headroom, partKSource),
  opening("stair", "US public stair", ibc.stair, irc.headroom, at(ibcSource, "1011.2")),
  lift("lift 1100 × 1400", ukLift, ukLift.door, at(liftSource, "EN 81-70 type 2; Approved Document M")),
  lift("US lift, side door", adaLifts.sideDoor, adaLifts.sideDoor.door, at(adaSource, "table 407.4.1")),
  lift("US limited-use lift", adaLifts.limitedUse, adaLifts.limitedUse.door, at(adaSource, "408.4.1")),
  opening("headroom", "small van doorway", null, vehicleDoors.small, vehicleSource),
  opening("headroom", "bus doorway", null, vehicleDoors.large, vehicleSource),
  opening("aisle", "aircraft aisle", aircraftAisle.below, null, at(aisleSource, "table, below 25 in from the floor")),
]
