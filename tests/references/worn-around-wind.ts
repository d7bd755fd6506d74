import { overturning, windLoad } from "../../src/worn/index.js"
import { bodyCentreShare, heavyRigSway } from "../../src/worn/surroundings/data-balance.js"
import {
  beaufortScale,
  beaufortSpeed,
  cengelPlateDrag,
  dragCoefficients,
  pedestrianWind,
  poleDragCoefficient,
  whitePlateDrag,
} from "../../src/worn/surroundings/data-wind.js"
import type { Check } from "../helpers/references.js"

const beaufortRow: Check = ({ beaufort }) => {
  const row = beaufortScale.find(({ force }) => force === beaufort)
  return { min_m_s: row?.low, max_m_s: row?.high }
}
const beaufortFormula: Check = ({ beaufort }) => ({ speed_m_s: beaufortSpeed(beaufort), speed_m_per_s: beaufortSpeed(beaufort) })
const shape =
  (key: keyof typeof dragCoefficients): Check =>
  () => ({ drag_coefficient: dragCoefficients[key] })
const white: Check = ({ aspect_ratio }) => ({ drag_coefficient: whitePlateDrag(aspect_ratio) })
const cengel: Check = ({ aspect_ratio }) => ({ drag_coefficient: cengelPlateDrag(aspect_ratio) })
const pole =
  (ratio: number): Check =>
  () => ({ drag_coefficient: poleDragCoefficient(ratio) })

/** One panel in steady wind. */
const steady = { panels: 1, gustFactor: 1, walkingSpeed: 0 } as const
const panel: Check = (i) => {
  const load = windLoad({
    ...steady,
    span: i.span_m,
    chord: i.chord_m,
    windSpeed: i.speed_m_s,
    dragCoefficient: i.drag_coefficient,
    airDensity: i.air_density_kg_m3,
  })
  // an own coefficient below the published one gives the lower force and moment
  return { pressure_Pa: load.pressure, force_N: load.force.low, hinge_moment_N_m: load.hingeMoment.low }
}

const psfPerPa = 0.3048 ** 2 / (0.45359237 * 9.80665)

/** Wind, drag and tipping rows. */
export const windChecks: Readonly<Record<string, Check>> = {
  ...Object.fromEntries([1, 2, 3, 5, 6, 8, 10, 11].map((force) => [`beaufort-${force}`, beaufortRow])),
  ...Object.fromEntries([2, 4, 6, 8].map((force) => [`beaufort-formula-${force}`, beaufortFormula])),
  "worn-beaufort-formula": beaufortFormula,
  "worn-beaufort-bands": ({ force }) => {
    const bands = (force as readonly number[]).map((f) => beaufortScale.find((b) => b.force === f))
    return { low_m_per_s: bands.map((b) => b?.low), high_m_per_s: bands.map((b) => b?.high) }
  },
  "drag-cengel-plate-ar1": cengel,
  "drag-cengel-plate-ar5": cengel,
  "drag-cengel-plate-ar20": cengel,
  "drag-white-plate-ar1": white,
  "drag-white-plate-ar5": white,
  "drag-white-plate-ar10": white,
  "drag-white-plate-ar20": white,
  "drag-cylinder-cross-inf": pole(Number.POSITIVE_INFINITY),
  "drag-cylinder-cross-ld1": pole(1),
  "drag-cylinder-cross-ld10": pole(10),
  "drag-cylinder-cross-ld40": pole(40),
  "drag-hollow-hemisphere-open-downstream": () => ({
    drag_coefficient: windLoad({ span: 0.4, chord: 0.4, windSpeed: 5, shape: "bowl" }).drag.low,
  }),
  "drag-hollow-hemisphere-open-upstream": () => ({
    drag_coefficient: windLoad({ span: 0.4, chord: 0.4, windSpeed: 5, shape: "bowl" }).drag.high,
  }),
  "drag-hollow-semicylinder-open-downstream": () => ({
    drag_coefficient: windLoad({ span: 0.9, chord: 0.4, windSpeed: 5, shape: "trough" }).drag.low,
  }),
  "drag-hollow-semicylinder-open-upstream": () => ({
    drag_coefficient: windLoad({ span: 0.9, chord: 0.4, windSpeed: 5, shape: "trough" }).drag.high,
  }),
  "drag-munson-hollow-hemisphere-open": shape("munsonBowlOpen"),
  "drag-munson-rectangle-2d-square": shape("munsonSquareRod2d"),
  "drag-munson-rectangle-2d-thin": shape("munsonThinPlate2d"),
  "drag-long-plate": shape("longPlate"),
  "drag-square-plate": shape("squarePlate"),
  "drag-nasa-flat-plate": () => ({ drag_coefficient: windLoad({ span: 0.5, chord: 0.5, windSpeed: 5 }).drag.high }),
  "dynamic-pressure-0613": (i) => ({
    pressure_Pa: windLoad({ ...steady, span: 1, chord: 1, windSpeed: i.speed_m_s, airDensity: i.air_density_kg_m3 }).pressure,
  }),
  "dynamic-pressure-00256": () => ({
    // 100 mph is past the speeds windLoad takes (nobody is outdoors): a quarter of it, four squared times the pressure
    pressure_psf: 16 * windLoad({ ...steady, span: 1, chord: 1, windSpeed: "25 mph" }).pressure * psfPerPa,
  }),
  "relative-wind-walking": (i) => ({
    force_N: windLoad({
      panels: 1,
      gustFactor: 1,
      span: i.area_m2,
      chord: 1,
      windSpeed: i.wind_m_s,
      walkingSpeed: i.walking_m_s,
      dragCoefficient: i.drag_coefficient,
      airDensity: i.air_density_kg_m3,
    }).force.low,
  }),
  "wind-on-panel-B3": panel,
  "wind-on-panel-B4": panel,
  "worn-wind-panel-force": (i) => ({
    force_N: windLoad({
      ...steady,
      span: i.area_m2,
      chord: 1,
      windSpeed: i.speed_m_per_s,
      dragCoefficient: i.cd,
      airDensity: i.rho_kg_per_m3,
    }).force.low,
  }),
  "worn-wind-panel-overturn": (i) => {
    // drag area and speed that give the row's force: F = ρ/2 · A · v²
    const [airDensity, wind] = [1.21, 10]
    const tip = overturning({
      bodyMass: i.body_mass_kg,
      rigMass: i.rig_mass_kg,
      dragArea: i.force_N / ((airDensity / 2) * wind ** 2),
      forceHeight: i.height_m,
      windSpeed: wind,
      walkingSpeed: 0,
      gustFactor: 1,
      edgeDistance: i.com_to_edge_m,
      bodyDragArea: 0,
      airDensity,
    })
    // the row's g is 9.81, ours the standard 9.80665
    const g = i.g_m_per_s2 / 9.80665
    return { wind_moment_Nm: tip.windMoment, restoring_Nm: tip.restoringMomentRigid * g, ratio: tip.rigUtilisationRigid / g }
  },
  "worn-wind-penwarden": () => ({
    discomfort_m_per_s: pedestrianWind.discomfort,
    unpleasant_m_per_s: pedestrianWind.unpleasant,
    dangerous_m_per_s: pedestrianWind.dangerous,
  }),
  "worn-wind-lawson-comfort": () => ({
    sitting_m_per_s: pedestrianWind.lawson.sitting,
    standing_m_per_s: pedestrianWind.lawson.standing,
    walking_m_per_s: pedestrianWind.lawson.walking,
    business_walking_m_per_s: pedestrianWind.lawson.businessWalking,
  }),
  "worn-wind-melbourne-gust": () => ({
    gust_m_per_s: pedestrianWind.melbourneGust,
    exceedance_percent: 100 * pedestrianWind.melbourneExceedance,
    hours_per_year: pedestrianWind.melbourneExceedance * 8760,
  }),
  "worn-com-height-fraction": () => ({ com_height_fraction: bodyCentreShare }),
  "worn-strube-sway": ({ loads_kg }) =>
    loads_kg[0] === heavyRigSway.from && loads_kg[1] === heavyRigSway.to
      ? { rise_percent_low: 100 * heavyRigSway.riseLow, rise_percent_high: 100 * heavyRigSway.riseHigh }
      : {},
  "wind-force-on-standing-person": (i) => {
    const height = 0.56 * 1.7
    const force = (i.speed_m_per_s as number[]).map(
      (wind) =>
        overturning({
          ...{ bodyMass: i.mass_kg, rigMass: 0, dragArea: 0, forceHeight: 0, gustFactor: 1, walkingSpeed: 0, stature: 1.7 },
          bodyDragArea: i.drag_area_m2,
          airDensity: i.density_kg_per_m3,
          windSpeed: wind,
        }).bodyMoment / height,
    )
    const share = force.map((f) => f / (i.mass_kg * 9.80665))
    return { force_N: force, weight_fraction: share, lean_deg: share.map((x) => (Math.atan(x) * 180) / Math.PI) }
  },
  "wind-tunnel-hunt-tests": () => ({ verbal_speed_max_m_per_s: pedestrianWind.tested }),
}
