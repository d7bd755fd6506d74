import { describe, expect, it } from "vitest"
import {
  contactPressures,
  contactRegions,
  doorForces,
  noContact,
  usableFoam,
  walkingApproach,
} from "../../src/worn/contact/data-contact.js"
import { crushGaps, entryGaps } from "../../src/worn/contact/data-gaps.js"
import { coldTouch, contactTimes, ecmaTouch, iecTouch, isoTouch, medicalTouch, painThreshold } from "../../src/worn/contact/data-touch.js"
import {
  clothingAdjustments,
  heatClasses,
  hoodAdjustment,
  nioshHeat,
  standardRest,
  standardSurface,
} from "../../src/worn/effort/data-heat.js"
import { contactSeverity, heatStress, overturning, passage, pinchGap, touchTemperature, windLoad } from "../../src/worn/index.js"
import {
  ada,
  adaLifts,
  aircraftAisle,
  baggage,
  container,
  europeanLifts,
  ibc,
  irc,
  liftHeight,
  passagePlaces,
  roadVehicle,
  ukDoors,
  ukDwellingDoors,
  ukLift,
  ukStairs,
  vehicleDoors,
} from "../../src/worn/surroundings/data-access.js"
import { bodyCentreShare, heavyRigSway, overturnFactor, standingDragArea, usableFoot } from "../../src/worn/surroundings/data-balance.js"
import {
  beaufortForce,
  beaufortScale,
  beaufortSpeed,
  dragCoefficients,
  dragSpread,
  gustOverLand,
  pedestrianWind,
} from "../../src/worn/surroundings/data-wind.js"

// Each table here is a second copy, typed from the source named beside it, so that one cell a few per cent off is seen.

describe("tables of what is around the wearer, held to a second copy of their sources", () => {
  it("heat: ISO 8996:2021 classes, ISO 7243:2017 table A.1, NIOSH 2016 section 8.1 and table 3-2, NR-9 annex III", () => {
    expect(heatClasses.map((c) => [c.rate, c.upTo, c.acclimatized, c.notAcclimatized])).toEqual([
      [115, 125, 33, 32],
      [180, 235, 30, 29],
      [300, 360, 28, 26],
      [415, 465, 26, 23],
      [520, Number.POSITIVE_INFINITY, 25, 20],
    ])
    expect(Object.values(clothingAdjustments).map((c) => c.adjustment)).toEqual([0, 0, 3, 11, 12])
    expect(nioshHeat).toEqual({ acclimatized: { offset: 56.7, slope: 11.5 }, notAcclimatized: { offset: 59.9, slope: 14.1 } })
    expect([hoodAdjustment, standardSurface, standardRest]).toEqual([1, 1.8, 115])
  })

  it("wind: WMO code 1100, WMO/TD-No. 1555, Penwarden 1973, Lawson 1990, Melbourne, Hunt 1976", () => {
    expect(beaufortScale.map((b) => [b.low, b.high])).toEqual([
      [0, 0.2],
      [0.3, 1.5],
      [1.6, 3.3],
      [3.4, 5.4],
      [5.5, 7.9],
      [8, 10.7],
      [10.8, 13.8],
      [13.9, 17.1],
      [17.2, 20.7],
      [20.8, 24.4],
      [24.5, 28.4],
      [28.5, 32.6],
      [32.7, null],
    ])
    expect(beaufortScale.map((b) => b.force)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
    // just past what is printed for a force the next one counts
    for (const { force, high } of beaufortScale) {
      if (high === null) continue
      expect([beaufortForce(high), beaufortForce(high + 0.01)]).toEqual([force, force + 1])
    }
    expect(beaufortSpeed(4)).toBeCloseTo(0.836 * 8, 12)
    expect(gustOverLand).toBe(1.66)
    expect(pedestrianWind).toEqual({
      discomfort: 5,
      unpleasant: 10,
      dangerous: 20,
      lawson: { sitting: 4, standing: 6, walking: 8, businessWalking: 10 },
      unbalancingGust: 15,
      melbourneGust: 20,
      melbourneExceedance: 0.001,
      tested: 12.5,
    })
  })

  it("drag: White table 7.3, Matthews figure 5.13(b), the endless plate", () => {
    for (const [ratio, drag] of [
      [1, 1.18],
      [5, 1.2],
      [10, 1.3],
      [20, 1.5],
      [1e9, 1.98],
    ] as const) {
      const { low, high } = dragSpread("flat", ratio, 1)
      // the table is the lower end from 5 on, except where the formula 1.1 + 0.02·(n + 1/n) is
      expect(low).toBeCloseTo(ratio > 30 ? 1.98 : Math.min(drag, 1.1 + 0.02 * (ratio + 1 / ratio), 1.28), 6)
      expect(high).toBeCloseTo(ratio > 30 ? 2 : Math.max(drag, 1.1 + 0.02 * (ratio + 1 / ratio), 1.28), 6)
    }
    for (const [ratio, drag] of [
      [1, 0.63],
      [10, 0.82],
      [40, 0.98],
      [1e12, 1.2],
    ] as const)
      expect(dragSpread("pole", ratio, 1)).toEqual({ low: expect.closeTo(drag, 6), high: expect.closeTo(drag, 6) })
    // Matthews 2002, figure 5.13(b); Munson 2009, figures 9.19 and 9.20
    expect(dragCoefficients).toEqual({
      squarePlate: 1.17,
      longPlate: 1.98,
      nasaPlate: 1.28,
      bowlOpen: 1.42,
      bowlConvex: 0.38,
      troughOpen: 2.3,
      troughConvex: 1.2,
      munsonBowlOpen: 1.42,
      munsonThinPlate2d: 1.9,
      munsonSquareRod2d: 2.2,
    })
    expect(dragSpread("trough", 1, 2)).toEqual({ low: 1.2, high: 2.3 })
    expect(dragSpread("bowl", 1, 2)).toEqual({ low: 0.38, high: 1.42 })
    expect(dragSpread("flat", 2, 1)).toEqual(dragSpread("flat", 1, 2))
  })

  it("standing people: King 1994, Davidovits 1975, Hoerner 1965, Strube 2017", () => {
    expect([usableFoot, overturnFactor, bodyCentreShare, standingDragArea]).toEqual([0.6, 1.5, 0.56, 0.84])
    expect(heavyRigSway).toEqual({ from: 16, to: 20.5, riseLow: 0.16, riseHigh: 0.52 })
  })

  it("contact: ISO/TS 15066 tables A.2 and A.3, EN 12453, ISO 13855", () => {
    // N, transient over clamping, N/mm, kg, N/cm²
    const published: Record<string, readonly (number | null)[]> = {
      "skull-forehead": [130, null, 150, 4.4, 110],
      face: [65, null, 75, 4.4, 110],
      neck: [150, 2, 50, 1.2, 140],
      "back-shoulders": [210, 2, 35, 40, 160],
      chest: [140, 2, 25, 40, 120],
      abdomen: [110, 2, 10, 40, 140],
      pelvis: [180, 2, 25, 40, 210],
      "upper-arm-elbow": [150, 2, 30, 3, 190],
      "forearm-wrist": [160, 2, 40, 2, 180],
      "hand-finger": [140, 2, 75, 0.6, 190],
      "thigh-knee": [220, 2, 50, 75, 220],
      "lower-leg": [130, 2, 60, 75, 210],
    }
    expect(
      Object.fromEntries(
        Object.entries(contactRegions).map(([k, r]) => [k, [r.force, r.transient, r.stiffness / 1e3, r.mass, r.pressure / 1e4]]),
      ),
    ).toEqual(published)
    expect(Object.values(contactPressures)).toEqual([
      130, 110, 110, 140, 210, 160, 210, 120, 170, 140, 210, 190, 220, 190, 180, 200, 190, 250, 220, 220, 210,
    ])
    expect(doorForces).toEqual({ dynamic: 400, dynamicWide: 1400, dynamicTime: 0.75, static: 150 })
    expect([usableFoam, walkingApproach, noContact]).toEqual([0.6, 1.6, ["skull-forehead", "face", "neck"]])
  })

  it("gaps: ISO 13854 table 1 (legs by AUVA); what gets in: ISO 13857 tables 4 and 7, EN 1176-1", () => {
    expect(Object.values(crushGaps)).toEqual([0.025, 0.05, 0.1, 0.12, 0.12, 0.18, 0.3, 0.5])
    expect(Object.values(entryGaps)).toEqual([0.004, 0.005, 0.012, 0.02, 0.015, 0.035, 0.089, 0.089])
  })

  it("touch: ISO 13732-1, IEC 62368-1 table 38, ECMA-287, IEC 60601-1 table 24, NASA 2010, ColdSurf", () => {
    const each = (metal: number, glass: number, plastic: number, wood: number) => ({ metal, "coated-metal": metal, glass, plastic, wood })
    expect(isoTouch).toEqual({
      metal1s: 65,
      metal10s: 55,
      minute: each(51, 56, 60, 60),
      tenMinutes: each(48, 48, 48, 48),
      eightHours: each(43, 43, 43, 43),
    })
    expect(iecTouch).toEqual({
      wornLow: 43,
      wornHigh: 48,
      held: each(48, 48, 48, 48),
      minute: each(51, 56, 60, 60),
      tenSeconds: each(60, 71, 77, 107),
      second: each(70, 80, 94, 140),
      secondGlassThirdEdition: 85,
    })
    expect(ecmaTouch).toEqual({ continuous: 43, tenSeconds: { metal: 55, other: 65 }, second: { metal: 65, other: 85 } })
    expect(medicalTouch).toEqual({ underMinute: each(51, 56, 60, 60), tenMinutes: 48, longer: 43, secondEdition: 41 })
    expect([contactTimes, painThreshold, coldTouch]).toEqual([
      { industrial: 5, consumer: 60 },
      { chest: 42, foot: 45 },
      { pain: 15, numbness: 7, frostbite: 0 },
    ])
  })

  it("places: ADA Standards, Approved Documents, building codes, EN 81-70, vehicles, aircraft, roads, baggage, container", () => {
    // clear width, height and a lift's car, mm
    const mm = (m: number | null) => (m === null ? null : Math.round(m * 1e4) / 10)
    const rows = passagePlaces.map((p) => [p.place, mm(p.width), mm(p.height), mm(p.carWidth), mm(p.carDepth)])
    expect(rows).toEqual([
      ["UK door, existing building", 750, 2000, null, null],
      ["UK door, new building", 800, 2000, null, null],
      ["US door", 812.8, 1981.2, null, null],
      ["US accessible route", 914.4, 2032, null, null],
      ["right-angle turn in a 36 in route", 914.4, 2032, null, null],
      ["US escape corridor", 1117.6, 2032, null, null],
      ["right-angle turn in a 44 in corridor", 1117.6, 2032, null, null],
      ["right-angle turn in a 1200 mm corridor", 1200, 2000, null, null],
      ["US turning space", 1524, 2032, null, null],
      ["house stair between rails", 685.8, 2032, null, null],
      ["UK public stair between rails", 1000, 2000, null, null],
      ["US public stair", 1117.6, 2032, null, null],
      ["lift 1100 × 1400", 800, 2000, 1100, 1400],
      ["US lift, side door", 914.4, 2000, 1727.2, 1295.4],
      ["US limited-use lift", 812.8, 2000, 1066.8, 1371.6],
      ["small van doorway", null, 1422.4, null, null],
      ["bus doorway", null, 1727.2, null, null],
      ["aircraft aisle", 381, null, null, null],
    ])
    expect([mm(roadVehicle.width), mm(roadVehicle.clearance), mm(ada.floorWidth), mm(ada.headroom)]).toEqual([2590.8, 4114.8, 762, 2032])
    // inches, from the same standards
    const inches = (value: unknown): unknown =>
      typeof value === "number"
        ? Math.round((value / 0.0254) * 1e6) / 1e6
        : Array.isArray(value)
          ? value.map(inches)
          : Object.fromEntries(Object.entries(value as object).map(([k, v]) => [k, inches(v)]))
    const { floorSlope, ...lengths } = ada
    expect(floorSlope).toBe(1 / 48)
    expect(inches(lengths)).toEqual({
      routeWidth: 36,
      pointWidth: 32,
      pointLength: 24,
      pointSpacing: 48,
      passingSquare: 60,
      passingInterval: 2400,
      passingStem: 48,
      floorWidth: 30,
      floorLength: 48,
      turnAround: { element: 48, tight: [42, 48, 42], wide: [36, 60, 36] },
      turningCircle: 60,
      turningT: { square: 60, width: 36, arm: 12, base: 24 },
      headroom: 80,
      closer: 78,
      protrusion: { most: 4, from: 27, to: 80 },
      doorWidth: 32,
      deepDoorWidth: 36,
      alcove: { forward: 36, forwardDeeperThan: 24, parallel: 60, parallelDeeperThan: 15 },
      reachHigh: 48,
      reachLow: 15,
    })
    const { existing, ...cars } = adaLifts
    const { leastArea, ...existingCar } = existing
    expect(leastArea / 0.3048 ** 2).toBeCloseTo(15, 9)
    expect(inches({ ...cars, existing: existingCar })).toEqual({
      centreDoor: { width: 80, depth: 51, door: 42 },
      sideDoor: { width: 68, depth: 51, door: 36 },
      deep: { width: 54, depth: 80, door: 36 },
      square: { width: 60, depth: 60, door: 36 },
      toDoor: 54,
      limitedUse: { width: 42, depth: 54, door: 32 },
      limitedUseSquare: { width: 51, depth: 51, door: 36 },
      existing: { width: 36, depth: 54 },
      existingSide: 48,
      residence: { width: 36, depth: 48 },
    })
    expect(inches({ ibc, irc, vehicleDoors, aircraftAisle })).toEqual({
      ibc: { door: 32, doorHeight: 80, corridor: 44, smallCorridor: 36, stair: 44, smallStair: 36 },
      irc: { stair: 36, belowOneRail: 31.5, belowBothRails: 27, headroom: 80, riser: 7.75, tread: 10 },
      vehicleDoors: { small: 56, large: 68 },
      aircraftAisle: { below: 15, above: 20 },
    })
    expect([ukLift, liftHeight, ukStairs]).toEqual([
      { width: 1.1, depth: 1.4, door: 0.8, landing: 1.5 },
      2,
      { betweenWalls: 1.2, betweenRails: 1, headroom: 2 },
    ])
    expect(europeanLifts.map((l) => [l.load, l.width, l.depth, l.mostArea])).toEqual([
      [450, 1, 1.3, 1.3],
      [630, 1.1, 1.4, 1.66],
      [1000, 1.1, 2.1, 2.4],
      [1000, 1.6, 1.4, 2.4],
      [1275, 2, 1.4, 2.95],
    ])
    expect(Object.values(ukDoors).map((d) => [d.built, d.existing])).toEqual([
      [0.8, 0.75],
      [0.8, 0.75],
      [0.825, 0.775],
      [1, 0.775],
    ])
    expect(ukDwellingDoors.map((d) => [d.door, d.corridor, d.approach])).toEqual([
      [0.75, 0.9, "head on"],
      [0.75, 1.2, "not head on"],
      [0.775, 1.05, "not head on"],
      [0.8, 0.9, "not head on"],
    ])
    expect(baggage).toEqual({ cabin: [0.56, 0.45, 0.25], checkedSum: 1.58, checkedSumInches: 62, mass: 23 })
    expect(container).toEqual({ length: 5.9, width: 2.35, height: 2.39, doorWidth: 2.34, doorHeight: 2.28 })
  })
})

interface Limited {
  readonly kind?: string
  readonly min?: unknown
  readonly max?: unknown
  readonly above?: unknown
  readonly default?: unknown
  readonly fields?: Readonly<Record<string, Limited>>
  readonly of?: Limited
}

/** Limits and default of every field with numbers, path by path. */
function limitsOf(fields: Readonly<Record<string, Limited>>, path = ""): Record<string, readonly unknown[]> {
  return Object.fromEntries(
    Object.entries(fields).flatMap(([key, f]) => {
      const at = path ? `${path}.${key}` : key
      const own = "min" in f || "max" in f || "above" in f ? [[at, [f.above ?? f.min, f.max, f.default]] as const] : []
      return [...own, ...Object.entries({ ...limitsOf(f.fields ?? {}, at), ...limitsOf(f.of?.fields ?? {}, at) })]
    }),
  )
}

describe("limits and defaults of the fields, as the trade's own range", () => {
  const of = (solver: { readonly input: unknown }) => limitsOf(solver.input as Readonly<Record<string, Limited>>)
  const wind = { windSpeed: [0, 40, undefined], gustFactor: [1, 3, 1.66], walkingSpeed: [0, 10, 1.4], airDensity: [0.1, 2, 1.225] }

  it("heatStress", () => {
    expect(of(heatStress)).toEqual({
      metabolicRate: [60, 1200, undefined],
      wbgt: [-20, 60, null],
      wetBulbTemperature: [-20, 60, null],
      globeTemperature: [-20, 90, null],
      ambientTemperature: [-20, 60, null],
      clothingAdjustment: [0, 20, null],
      restMetabolicRate: [40, 250, null],
      bodyMass: [20, 300, null],
      stature: [0.8, 2.5, null],
    })
  })
  it("windLoad and overturning", () => {
    expect(of(windLoad)).toEqual({
      ...wind,
      span: ["1 mm", 5, undefined],
      chord: ["1 mm", 5, undefined],
      dragCoefficient: [0.01, 4, null],
      swingSpeed: [0, 50, 0],
      panels: [1, 20, 2],
      hingeHeight: [0, 5, 1.35],
      elevation: ["-90 deg", "90 deg", "30 deg"],
    })
    expect(of(overturning)).toEqual({
      ...wind,
      bodyMass: [20, 300, undefined],
      rigMass: [0, 150, undefined],
      dragArea: [0, 50, undefined],
      forceHeight: [0, 10, undefined],
      footLength: ["1 cm", 0.4, 0.24],
      stagger: [0, 1.5, 0],
      stanceWidth: ["1 cm", 1.5, 0.3],
      heelShare: [0, 1, 0.36],
      weightOffset: [-1, 1, 0],
      usableShare: ["1 %", 1, 0.6],
      edgeDistance: ["0.01 mm", 2, null],
      safetyFactor: [1, 10, 1.5],
      stature: [0.8, 2.5, 1.7],
      bodyDragArea: [0, 3, 0.84],
      slope: [0, "30°", 0],
      slopeDirection: ["-180°", "180°", 0],
      stepHeight: [0, 0.5, null],
      pushForce: [0, 2000, 0],
      pushHeight: [0.1, 3, null],
      bumpMass: [0.1, 300, null],
      bumpSpeed: [0, 10, null],
      rigCentreHeight: [0.1, 5, null],
    })
  })
  it("contactSeverity and touchTemperature", () => {
    expect(of(contactSeverity)).toEqual({
      armMass: [0.001, 100, null],
      armLength: [0.01, 10, null],
      swingSpeed: [0, 50, null],
      strikeRadius: [0.01, 10, null],
      movingMass: [0.001, 1000, null],
      movingSpeed: [0, 50, null],
      approachSpeed: [0, 10, 0],
      paddingStiffness: ["0.001 N/mm", "1000 N/mm", null],
      paddingThickness: ["0.1 mm", 1, null],
      usablePaddingShare: [0.01, 1, 0.6],
      contactArea: ["0.01 mm2", 1, null],
      peakDriveMoment: [0, 1e5, null],
    })
    expect(of(touchTemperature)).toEqual({
      surfaceTemperature: [-40, 300, undefined],
      contactDuration: ["1 ms", "24 h", "8 h"],
      measuredAmbientTemperature: [-40, 60, 25],
      ambientTemperature: [-40, 60, 25],
    })
  })
  it("passage and pinchGap", () => {
    const body = (mark: string) => ({
      [`${mark}.width`]: ["1 mm", 20, undefined],
      [`${mark}.forward`]: [0, 10, undefined],
      [`${mark}.backward`]: [0, 10, undefined],
      [`${mark}.height`]: ["1 mm", 20, undefined],
    })
    expect(of(passage)).toEqual({
      ...body("folded"),
      ...body("raised"),
      "packed.length": ["1 mm", 20, undefined],
      "packed.width": ["1 mm", 20, undefined],
      "packed.height": ["1 mm", 20, undefined],
      "packed.mass": ["0.1 g", 500, undefined],
      ownPlaces: [0, 100, []],
      "ownPlaces.name": [1, 100, undefined],
      "ownPlaces.width": ["1 mm", 100, undefined],
      "ownPlaces.height": ["1 mm", 100, null],
      allowance: [0, 0.5, "25 mm"],
      corridorWidth: ["1 mm", 100, "60 in"],
    })
    const bar = (mark: string) => Object.fromEntries(["x1", "y1", "x2", "y2"].map((k) => [`${mark}.${k}`, [-10, 10, undefined]]))
    expect(of(pinchGap)).toEqual({
      movingBars: [1, 50, undefined],
      ...bar("movingBars"),
      fixedBars: [1, 50, undefined],
      ...bar("fixedBars"),
      poses: [2, 40, undefined],
      "poses.x": [-10, 10, undefined],
      "poses.y": [-10, 10, undefined],
      "poses.angle": ["-2 rev", "2 rev", undefined],
      movingThickness: [0, 1, "20 mm"],
      fixedThickness: [0, 1, "20 mm"],
    })
  })
})
