import { passage, reach } from "../../src/worn/index.js"
import {
  ada,
  adaLifts,
  aircraftAisle,
  baggage,
  container,
  europeanLifts,
  ibc,
  irc,
  passagePlaces,
  roadVehicle,
  ukDoors,
  ukDwellingDoors,
  ukLift,
  ukStairs,
  vehicleDoors,
} from "../../src/worn/surroundings/data-access.js"
import { carMargin } from "../../src/worn/surroundings/passage/geometry.js"
import type { Check } from "../helpers/references.js"

const inch = (m: number) => Number((m / 0.0254).toFixed(6))
const inches = (list: readonly number[]) => list.map(inch)
const mm = (m: number) => Number((m * 1000).toFixed(6))
const foot2 = (m2: number) => Number((m2 / 0.3048 ** 2).toFixed(9))
const cars = [adaLifts.centreDoor, adaLifts.sideDoor, adaLifts.deep, adaLifts.square]

/** The clear width the solver really uses at a place. */
const widthAt = (name: string): number => {
  const place = passagePlaces.find((p) => p.place === name)
  const body = { width: 0.5, forward: 0.25, backward: 0.25, height: 1.5 }
  const found = passage({ folded: body, allowance: 0 }).places.find((p) => p.place === name)
  if (!place?.width || !found) throw new Error(`no place ${name}`)
  // facing and sideways are alike for a square body: spare and body make the clear width
  if (Math.abs(found.foldedMargin + 0.5 - place.width) > 1e-9 && place.height === null)
    throw new Error(`${name} is not reckoned by its width`)
  return place.width
}

const lift = (car: { readonly width: number; readonly depth: number; readonly door: number; readonly landing: number }) => ({
  car_width_mm: mm(car.width),
  car_depth_mm: mm(car.depth),
  width_mm: mm(car.width),
  depth_mm: mm(car.depth),
  door_mm: mm(car.door),
  landing_mm: mm(car.landing),
})

/** Access rows. */
export const accessChecks: Readonly<Record<string, Check>> = {
  "access-ada-clear-floor": () => ({
    width_in: inch(ada.floorWidth),
    length_in: inch(ada.floorLength),
    slope_max_ratio: Number((1 / ada.floorSlope).toFixed(6)),
  }),
  "pb-worn-access-clear-floor": () => ({
    width_in: inch(ada.floorWidth),
    length_in: inch(ada.floorLength),
    width_mm: mm(ada.floorWidth),
    length_mm: mm(ada.floorLength),
  }),
  "access-ada-elevator": () => ({
    door_in: cars.map((c) => inch(c.door)),
    width_in: cars.map((c) => inch(c.width)),
    depth_wall_to_return_in: cars.map((c) => inch(c.depth)),
  }),
  "pb-worn-lift-standard-us": () => ({
    depth_in: inch(adaLifts.sideDoor.depth),
    depth_to_door_in: inch(adaLifts.toDoor),
    width_side_door_in: inch(adaLifts.sideDoor.width),
    width_centre_door_in: inch(adaLifts.centreDoor.width),
    door_in: inch(adaLifts.sideDoor.door),
  }),
  "pb-worn-lift-limited-use": () => ({
    width_in: inch(adaLifts.limitedUse.width),
    depth_in: inch(adaLifts.limitedUse.depth),
    alt_width_in: inch(adaLifts.limitedUseSquare.width),
    alt_depth_in: inch(adaLifts.limitedUseSquare.depth),
    alt_door_in: inch(adaLifts.limitedUseSquare.door),
    door_in: inch(adaLifts.limitedUse.door),
    existing_min_area_ft2: foot2(adaLifts.existing.leastArea),
    existing_plan_area_ft2: foot2(adaLifts.existing.width * adaLifts.existing.depth),
  }),
  "pb-worn-lift-private": () => ({
    private_width_in: inch(adaLifts.residence.width),
    private_depth_in: inch(adaLifts.residence.depth),
    existing_in: inch(adaLifts.existingSide),
  }),
  "access-ada-residence-lift": () => ({ width_in: inch(adaLifts.residence.width), depth_in: inch(adaLifts.residence.depth) }),
  "access-ada-headroom": () => ({
    clear_height_in: inch(ada.headroom),
    door_closer_in: inch(ada.closer),
    protrusion_in_max: inch(ada.protrusion.most),
    protrusion_band_in_low: inch(ada.protrusion.from),
    protrusion_band_in_high: inch(ada.protrusion.to),
  }),
  "pb-worn-access-headroom": () => ({ height_in: inch(ada.headroom), height_mm: mm(ada.headroom), at_closer_in: inch(ada.closer) }),
  "access-ada-route": () => ({
    route_width_in: inch(widthAt("US accessible route")),
    reduced_width_in: inch(ada.pointWidth),
    reduced_max_length_in: inch(ada.pointLength),
    separation_in: inch(ada.pointSpacing),
    passing_space_in: inch(ada.passingSquare),
    passing_interval_ft: inch(ada.passingInterval) / 12,
  }),
  "pb-worn-access-route-width": () => ({
    clear_in: inch(ada.routeWidth),
    at_point_in: inch(ada.pointWidth),
    point_max_length_in: inch(ada.pointLength),
    point_spacing_in: inch(ada.pointSpacing),
    clear_mm: mm(ada.routeWidth),
    at_point_mm: mm(ada.pointWidth),
  }),
  "pb-worn-access-passing": () => ({
    square_in: inch(ada.passingSquare),
    max_interval_ft: inch(ada.passingInterval) / 12,
    t_stem_min_in: inch(ada.passingStem),
  }),
  "pb-worn-access-passing-remainder": (i) => ({
    left_in: (i.span_in as number[]).map((span) =>
      inch(
        passage({ folded: { width: `${span} in`, forward: 0.3, backward: 0.3, height: 1.8 }, corridorWidth: `${i.corridor_in} in` })
          .corridorMargin,
      ),
    ),
  }),
  "parade-road-vehicle-envelope": () => ({ width_m: roadVehicle.width, height_m: roadVehicle.clearance }),
  "access-ada-turn": () => {
    const [approach, turn, leave] = inches(ada.turnAround.tight)
    return { approach_in: approach, turn_in: turn, leave_in: leave, waived_at_in: inch(ada.turnAround.wide[1]) }
  },
  "pb-worn-access-180-turn": () => ({ option_a_in: inches(ada.turnAround.tight), option_b_in: inches(ada.turnAround.wide) }),
  "access-ada-turning": () => ({
    circle_diameter_in: inch(widthAt("US turning space")),
    t_square_in: inch(ada.turningT.square),
    t_arm_width_in: inch(ada.turningT.width),
    t_arm_clear_in: inch(ada.turningT.arm),
    t_base_clear_in: inch(ada.turningT.base),
  }),
  "pb-worn-access-turning": () => ({
    diameter_in: inch(ada.turningCircle),
    diameter_mm: mm(ada.turningCircle),
    t_square_in: inch(2 * ada.turningT.arm + ada.turningT.width),
  }),
  "pb-worn-access-alcove": () => ({
    forward_in: inch(ada.alcove.forward),
    forward_if_deeper_than_in: inch(ada.alcove.forwardDeeperThan),
    parallel_in: inch(ada.alcove.parallel),
    parallel_if_deeper_than_in: inch(ada.alcove.parallelDeeperThan),
  }),
  "access-ada-vehicle-door": () => ({
    clear_height_in: [inch(vehicleDoors.small), inch(vehicleDoors.large)],
    clear_height_mm: [mm(vehicleDoors.small), mm(vehicleDoors.large)],
  }),
  "access-cabin-baggage": () => ({
    length_cm: baggage.cabin[0] * 100,
    width_cm: baggage.cabin[1] * 100,
    height_cm: baggage.cabin[2] * 100,
    checked_linear_in_max: baggage.checkedSumInches,
    checked_linear_cm_max: baggage.checkedSum * 100,
    mass_kg_max: baggage.mass,
  }),
  "pb-worn-cabin-bag-iata": () => ({ size_cm: baggage.cabin.map((side) => side * 100) }),
  "access-container-internal": () => ({
    length_mm: mm(container.length),
    width_mm: mm(container.width),
    height_mm: mm(container.height),
  }),
  "access-diagonal-fit": (i) => {
    // longest bar of no thickness: where the spare size of the car passes zero
    const [w, d] = [i.width_mm / 1000, i.depth_mm / 1000]
    let [fits, not] = [0, w + d]
    for (let k = 0; k < 60; k++) {
      const mid = (fits + not) / 2
      if (carMargin(mid, 0, w, d) >= 0) fits = mid
      else not = mid
    }
    return { diagonal_mm: fits * 1000 }
  },
  "access-ibc-egress": () => ({
    door_clear_in: inch(ibc.door),
    door_height_in: inch(ibc.doorHeight),
    corridor_in: inch(ibc.corridor),
    corridor_under_50_occ_in: inch(ibc.smallCorridor),
  }),
  "access-lift-1100x1400": () => lift(ukLift),
  "pb-worn-lift-uk": () => lift(ukLift),
  "access-partm-doors": (i) => {
    const rows = (i.approach as (keyof typeof ukDoors)[]).map((a) => ukDoors[a])
    return { new_mm: rows.map((r) => mm(r.built)), existing_mm: rows.map((r) => mm(r.existing)) }
  },
  "access-partm-dwelling-doors": (i) => ({
    clear_opening_mm: (i.corridor_mm as number[]).map((corridor, k) => {
      const row = ukDwellingDoors.find((r) => mm(r.corridor) === corridor && r.approach === i.approach[k])
      return row && mm(row.door)
    }),
  }),
  "pb-worn-door-corridor-uk": (i) => ({
    corridor_mm: (i.door_clear_mm as number[]).map((door, k) => {
      const row = ukDwellingDoors.find((r) => mm(r.door) === door && r.approach === i.approach[k])
      return row && mm(row.corridor)
    }),
  }),
  "pb-worn-aisle-aircraft": () => ({
    below_25in_height_in: inch(widthAt("aircraft aisle")),
    above_25in_height_in: inch(aircraftAisle.above),
    below_mm: mm(aircraftAisle.below),
    above_mm: mm(aircraftAisle.above),
  }),
  "pb-worn-lift-en81-70": (i) => {
    const rows = (i.rated_load_kg as number[]).map((_, k) => europeanLifts[k])
    if (rows.some((r, k) => r?.load !== i.rated_load_kg[k] || r?.width !== i.width_m[k] || r?.depth !== i.depth_m[k])) return {}
    return { area_m2: rows.map((r) => (r?.width ?? 0) * (r?.depth ?? 0)), max_area_m2: rows.map((r) => r?.mostArea) }
  },
  "pb-worn-stairs-commercial": () => ({
    width_in: inch(ibc.stair),
    width_under_50_people_in: inch(ibc.smallStair),
    width_mm: mm(ibc.stair),
    narrow_mm: mm(ibc.smallStair),
  }),
  "pb-worn-stairs-uk": () => ({
    between_walls_mm: mm(ukStairs.betweenWalls),
    between_handrails_mm: mm(widthAt("UK public stair between rails")),
  }),
  "worn-door-width": () => ({
    clear_width_in: inch(widthAt("US door")),
    clear_width_mm: mm(ada.doorWidth),
    deep_wall_in: inch(ada.deepDoorWidth),
  }),
  "worn-reach-ranges": () => {
    // the seated helper's band ends where the flag of the solver turns
    const seated = (height: number) => reach({ stature: 1.7, forward: 0.25, outward: 0.2, up: height }).reachableSeated
    const turns = (inside: number, outside: number) => {
      let [a, b] = [inside, outside]
      for (let k = 0; k < 50; k++) {
        const mid = (a + b) / 2
        if (seated(mid)) a = mid
        else b = mid
      }
      return a
    }
    const high = turns(1, 1.4)
    return { high_in: inch(high), low_in: inch(ada.reachLow), high_mm: mm(high), low_mm: mm(ada.reachLow) }
  },
  "worn-stairs-width": () => ({
    clear_width_in: inch(irc.stair),
    clear_width_mm: mm(irc.stair),
    below_rail_one_side_in: inch(irc.belowOneRail),
    below_rail_both_in: inch(widthAt("house stair between rails")),
    headroom_mm: mm(irc.headroom),
    max_riser_in: inch(irc.riser),
    min_tread_in: inch(irc.tread),
  }),
}
